package contest

import (
	"cmp"
	"iter"
	"slices"
	"strconv"
	"strings"

	"example.com/ribface/grade"
	"example.com/ribface/internal/fault"
	"example.com/ribface/internal/text"
	"example.com/ribface/internal/text/fixed"
	"example.com/ribface/placing"
	"example.com/ribface/placing/class"
)

// Feedback tells one member what was missed and what it cost. Its parts are in the
// order of the classes of the format.
type Feedback struct {
	Member   Member                            `json:"member"`
	Scored   Points                            `json:"scored"` // of the cards given
	Of       Points                            `json:"of"`     // the most that those cards could have scored
	Placings []PlacingFeedback                 `json:"placings"`
	Quality  []EstimateFeedback[grade.Quality] `json:"quality"`
	Yield    []EstimateFeedback[grade.Yield]   `json:"yield"`
	Hand     []Item                            `json:"hand"`
}

// PlacingFeedback is what one placing card missed. [PlacingFeedback.Missed] says
// why the official placing has it the other way.
type PlacingFeedback struct {
	Class    string           `json:"class"`
	Official placing.Official `json:"official"`
	Card     placing.Card     `json:"card"`
	Scored   Points           `json:"scored"`
	Faults   []placing.Fault  `json:"faults"` // pairs that the card reverses, and what each costs
}

// Missed is a pair of exhibits that a card turned round: what the official placing
// has over what, what turning it cost, and the reasons for the official placing.
type Missed struct {
	placing.Fault
	Why class.PairReasons `json:"why"`
}

// String gives the pair with its cost and the reasons, as "3 over 1, costs 4: 3 goes
// over 1 on quality. 3 had more marbling."
func (m Missed) String() string {
	return strconv.Itoa(m.Upper) + " over " + strconv.Itoa(m.Lower) + ", costs " + strconv.Itoa(m.Points) + ": " + m.Why.Spoken()
}

// Missed returns the pairs that the card reverses, those of the official first
// exhibit first, each with the reasons for the official placing of it from the
// graded class, whoever made that placing; see [class.Graded.Why]. A card without
// an order, and one that misses nothing, give none. A class of another size and a
// policy that does not check give a [*placing.FieldError].
func (p PlacingFeedback) Missed(g class.Graded, policy class.Policy) ([]Missed, error) {
	if n := p.Official.Order().Len(); g.Len() != n {
		return nil, &fault.FieldError{Field: "class", Value: strconv.Itoa(g.Len()) + " exhibits", Allowed: "the " + strconv.Itoa(n) + " of the official placing", Err: fault.ErrRange}
	}
	var all []Missed
	for f := range p.Official.Faults(p.Card.Order) {
		why, err := g.Why(policy, f.Upper, f.Lower)
		if err != nil {
			return nil, err
		}
		all = append(all, Missed{f, why})
	}
	return all, nil
}

// EstimateFeedback is how far one estimate of a quality or yield grade was off.
type EstimateFeedback[V comparable] struct {
	Class   string       `json:"class"`
	Exhibit int          `json:"exhibit"`
	Key     V            `json:"key"`
	Answer  V            `json:"answer,omitzero"` // zero where there is a mark
	Mark    placing.Mark `json:"mark,omitzero"`
	Off     int          `json:"off"` // lines of the ladder or steps of the rule between the two; over 0 for a quality that is too good and a yield that is too high
	Lost    Points       `json:"lost"`
	Split   YieldSplit   `json:"split,omitzero"` // why a yield was off; not set where the card or the key lacks the measures for it
}

// YieldSplit splits the error of an estimated yield grade exactly into what each
// measure did: the four contributions and the rest add up to the error. Each is a
// number of yield grades, over 0 where it made the estimate too high. The zero
// YieldSplit is not set.
type YieldSplit struct {
	Error  grade.Yield `json:"error"`  // estimate less key
	Fat    grade.Yield `json:"fat"`    // 2.50 for each inch of fat too much
	KPH    grade.Yield `json:"kph"`    // 0.20 for each percent too much
	Weight grade.Yield `json:"weight"` // 0.0038 for each pound too much
	Ribeye grade.Yield `json:"ribeye"` // -0.32 for each square inch too much

	// Rest is what the measures on the card do not explain: the member's own
	// arithmetic and rounding, and an official yield that was rounded.
	Rest grade.Yield `json:"rest"`
}

// IsValid reports whether the split is set.
func (s YieldSplit) IsValid() bool { return s.Error.IsSet() }

// Parts yields the five parts with their names ("fat", "KPH", "weight", "ribeye",
// "arithmetic and rounding"), the greatest first whichever way it goes; parts of one
// size in the order of the fields. It yields nothing for a split that is not set.
func (s YieldSplit) Parts() iter.Seq2[string, grade.Yield] {
	type part struct {
		name string
		of   grade.Yield
	}
	var parts []part
	if s.IsValid() {
		parts = []part{{"fat", s.Fat}, {"KPH", s.KPH}, {"weight", s.Weight}, {"ribeye", s.Ribeye}, {"arithmetic and rounding", s.Rest}}
		slices.SortStableFunc(parts, func(a, b part) int { return cmp.Compare(size(b.of), size(a.of)) })
	}
	return func(yield func(string, grade.Yield) bool) {
		for _, p := range parts {
			if !yield(p.name, p.of) {
				return
			}
		}
	}
}

// size is how large a difference of yields is, in units of a yield.
func size(y grade.Yield) int64 { return max(y.Units(), -y.Units()) }

// SplitYield splits the error of an estimate. The key needs its four measures; the
// card needs one measure or more, and a measure that it does not give is taken to
// be the official one, as for a weight that is posted. A preliminary yield grade
// stands for the fat where that is not given. The estimated yield is the
// one on the card, or that of the equation for the card's measures where the card
// has none; the official yield is found in the same way. Where something is missing,
// the split is not set. A measure that is out of range gives a [*placing.FieldError].
func SplitYield(key, card Facts) (YieldSplit, error) {
	key, err := key.withFat()
	if err != nil {
		return YieldSplit{}, fault.In("official facts", err)
	}
	if card, err = card.withFat(); err != nil || !key.measured() || card.measures() == (grade.Measures{}) {
		return YieldSplit{}, err
	}
	right, err := key.measures().Terms()
	if err != nil {
		return YieldSplit{}, fault.In("official facts", err)
	}
	said, err := grade.Measures{
		Fat:    cmp.Or(card.Fat, key.Fat),
		Ribeye: cmp.Or(card.Ribeye, key.Ribeye),
		KPH:    cmp.Or(card.KPH, key.KPH),
		Weight: cmp.Or(card.Weight, key.Weight),
	}.Terms()
	if err != nil {
		return YieldSplit{}, err
	}
	off, d := cmp.Or(card.Yield, said.Sum()).Sub(cmp.Or(key.Yield, right.Sum())), said.Sub(right)
	return YieldSplit{Error: off, Fat: d.Fat, KPH: d.KPH, Weight: d.Weight, Ribeye: d.Ribeye, Rest: off.Sub(d.Sum())}, nil
}

// Feedback tells one member what was missed on the cards given, which are those of
// that member alone; cards of others, and cards that the contest does not take or
// has twice, give a [*placing.FieldError]. Cards may be in any order.
func (c *Contest) Feedback(member string, placings []PlacingCard, estimates []Estimate, hand []HandScore) (Feedback, error) {
	c = c.ready()
	f := Feedback{Member: Member{ID: member}, Scored: whole(0), Of: whole(0)}
	t := c.Tally()
	take := func(err error, items ...Item) error {
		for _, i := range items {
			if err == nil && i.IsValid() && i.Member.ID != member {
				err = inMember(i.Member, &fault.FieldError{Field: "member", Value: strconv.Quote(i.Member.ID), Allowed: strconv.Quote(member) + " alone", Err: fault.ErrUnknown})
			}
		}
		if err != nil {
			return err
		}
		for _, i := range items {
			if i.IsValid() {
				f.Scored, f.Of = f.Scored.Add(i.Points), f.Of.Add(i.Of)
			}
		}
		return t.Add(items...)
	}
	for _, p := range placings {
		item, err := c.Placing(p)
		if err := take(err, item); err != nil {
			return Feedback{}, err
		}
		o := c.class[p.Class].official
		f.Placings = append(f.Placings, PlacingFeedback{p.Class, o, p.Card, item.Points, slices.Collect(o.Faults(p.Card.Order))})
	}
	for _, e := range estimates {
		q, y, err := c.Estimate(e)
		if err := take(err, q, y); err != nil {
			return Feedback{}, err
		}
		key, said := c.class[e.Class].facts[e.Exhibit], e.Facts
		if q.IsValid() {
			fb := EstimateFeedback[grade.Quality]{Class: e.Class, Exhibit: e.Exhibit, Key: key.Quality, Answer: said.Quality, Mark: said.Marks.Quality, Lost: q.Of.Sub(q.Points)}
			if fb.Answer != 0 {
				_, fb.Off, _ = c.scoring.Quality.loss(fb.Key, fb.Answer)
			}
			f.Quality = append(f.Quality, fb)
		}
		if y.IsValid() {
			fb := EstimateFeedback[grade.Yield]{Class: e.Class, Exhibit: e.Exhibit, Key: key.Yield, Answer: said.Yield, Mark: said.Marks.Yield, Lost: y.Of.Sub(y.Points)}
			if fb.Answer.IsSet() {
				_, steps := c.scoring.Yield.loss(fb.Key, fb.Answer)
				fb.Off = int(steps)
				if fb.Split, err = SplitYield(*key, said); err != nil {
					return Feedback{}, inMember(e.Member, inClass(e.Class, fault.In("exhibit "+strconv.Itoa(e.Exhibit), err)))
				}
			}
			f.Yield = append(f.Yield, fb)
		}
	}
	for _, h := range hand {
		item, err := c.Hand(h)
		if err := take(err, item); err != nil {
			return Feedback{}, err
		}
		if item.IsValid() {
			f.Hand = append(f.Hand, item)
		}
	}
	if r := t.members[member]; r != nil {
		f.Member = r.member
	}
	at := func(component int, class string) int { return c.slotAt[slotKey{component, class}] }
	bySlot(f.Placings, func(p PlacingFeedback) (int, int) { return at(c.class[p.Class].part[KindPlacing]-1, p.Class), 0 })
	bySlot(f.Quality, func(q EstimateFeedback[grade.Quality]) (int, int) {
		return at(c.class[q.Class].part[KindQuality]-1, q.Class), q.Exhibit
	})
	bySlot(f.Yield, func(y EstimateFeedback[grade.Yield]) (int, int) {
		return at(c.class[y.Class].part[KindYield]-1, y.Class), y.Exhibit
	})
	bySlot(f.Hand, func(i Item) (int, int) { return at(c.part[i.Component], i.Class), 0 })
	return f, nil
}

// bySlot sorts by the place of a class in the format, then by exhibit.
func bySlot[T any](list []T, place func(T) (slot, exhibit int)) {
	slices.SortFunc(list, func(a, b T) int {
		slotA, exhibitA := place(a)
		slotB, exhibitB := place(b)
		return cmp.Or(cmp.Compare(slotA, slotB), cmp.Compare(exhibitA, exhibitB))
	})
}

// String gives the feedback as plain text, one line for each thing missed.
func (f Feedback) String() string {
	var b strings.Builder
	line := func(parts ...string) { b.WriteString(strings.Join(parts, "") + "\n") }
	line("member ", f.Member.ID, ": ", f.Scored.String(), " of ", f.Of.String(), " points on these cards")
	for _, p := range f.Placings {
		if !p.Card.Order.IsValid() {
			line("class ", p.Class, ": ", cmp.Or(p.Card.Mark, placing.Blank).String(), ", ", p.Scored.String(), "; official ", p.Official.String())
			continue
		}
		line("class ", p.Class, ": placed ", p.Card.Order.String(), ", official ", p.Official.String(), ": ", p.Scored.String())
		for _, v := range p.Faults {
			line("  ", strconv.Itoa(v.Upper), " goes over ", strconv.Itoa(v.Lower), ": reversed, costs ", strconv.Itoa(v.Points))
		}
	}
	for _, q := range f.Quality {
		if q.Answer == 0 || q.Off != 0 {
			line(missed(q, "quality ", q.Answer.String(), q.Key.String(), off(q.Off, "line", "too good")))
		}
	}
	for _, y := range f.Yield {
		if y.Answer.IsSet() && y.Answer == y.Key {
			continue
		}
		line(missed(y, "yield ", y.Answer.String(), y.Key.String(), off(y.Off, "step", "too high")))
		for name, of := range y.Split.Parts() {
			if y.Answer.IsSet() && of.Units() != 0 {
				line("  ", name, " ", fixed.Signed(of.Units(), 8))
			}
		}
	}
	for _, h := range f.Hand {
		line(h.where(), ": ", h.Points.String(), " of ", h.Of.String())
	}
	return b.String()
}

// missed puts an estimate that was off into words.
func missed[V comparable](e EstimateFeedback[V], what, answer, key, off string) string {
	var none V
	if e.Answer == none {
		answer, off = e.Mark.String(), ""
	} else {
		off += ", "
	}
	return "class " + e.Class + ", exhibit " + strconv.Itoa(e.Exhibit) + ": " + what + answer + ", official " + key + ": " + off + "loses " + e.Lost.String()
}

// off puts a signed number of steps into words.
func off(n int, unit, above string) string {
	switch {
	case n == 0:
		return "same step"
	case n < 0:
		n, above = -n, "too low"
	}
	return text.Count(n, unit) + " " + above
}
