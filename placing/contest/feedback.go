package contest

import (
	"cmp"
	"slices"
	"strconv"
	"strings"

	"example.com/ribface/grade"
	"example.com/ribface/internal/fault"
	"example.com/ribface/internal/text/fixed"
	"example.com/ribface/placing"
	"example.com/ribface/placing/class"
)

// Feedback tells one member what was missed and what it cost. Its parts are in the
// order of the classes of the format.
type Feedback struct {
	Member   Member            `json:"member"`
	Scored   Points            `json:"scored"` // of the cards given
	Of       Points            `json:"of"`     // the most that those cards could have scored
	Placings []PlacingFeedback `json:"placings"`
	Quality  []QualityFeedback `json:"quality"`
	Yield    []YieldFeedback   `json:"yield"`
	Hand     []Item            `json:"hand"`
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

// QualityFeedback is how far one estimate of a quality grade was off.
type QualityFeedback struct {
	Class   string        `json:"class"`
	Exhibit int           `json:"exhibit"`
	Key     grade.Quality `json:"key"`
	Answer  grade.Quality `json:"answer,omitzero"` // zero where there is a mark
	Mark    placing.Mark  `json:"mark,omitzero"`
	Lines   int           `json:"lines"` // lines of the ladder between the two; over 0 for an answer that is too good
	Lost    Points        `json:"lost"`
}

// YieldFeedback is how far one estimate of a yield grade was off and what drove it.
type YieldFeedback struct {
	Class   string       `json:"class"`
	Exhibit int          `json:"exhibit"`
	Key     grade.Yield  `json:"key"`
	Answer  grade.Yield  `json:"answer,omitzero"` // not set where there is a mark
	Mark    placing.Mark `json:"mark,omitzero"`
	Steps   int64        `json:"steps"` // steps of the rule between the two; over 0 for an answer that is too high
	Lost    Points       `json:"lost"`
	Split   YieldSplit   `json:"split,omitzero"` // why; not set where the card or the key lacks the measures for it
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

// SplitPart is one contribution to the error of an estimated yield.
type SplitPart struct {
	Name  string      `json:"name"` // "fat", "KPH", "weight", "ribeye" or "arithmetic and rounding"
	Yield grade.Yield `json:"yield"`
}

// Parts returns the five parts, the greatest first whichever way it goes; parts of
// one size in the order of the fields. It returns nothing for a split that is not
// set.
func (s YieldSplit) Parts() []SplitPart {
	if !s.IsValid() {
		return nil
	}
	parts := []SplitPart{{"fat", s.Fat}, {"KPH", s.KPH}, {"weight", s.Weight}, {"ribeye", s.Ribeye}, {"arithmetic and rounding", s.Rest}}
	slices.SortStableFunc(parts, func(a, b SplitPart) int { return cmp.Compare(size(b.Yield), size(a.Yield)) })
	return parts
}

// size is how large a difference of yields is, in units of a yield.
func size(y grade.Yield) int64 { return max(y.Units(), -y.Units()) }

// SplitYield splits the error of an estimate. The key needs its four measures; the
// card needs one measure or more, and a measure that it does not give is taken to
// be the official one, as for a weight that is posted. A preliminary yield grade
// stands for the fat where that is not given. The estimated yield is the
// one on the card, or that of the equation for the card's measures where the card
// has none; the official yield is found in the same way. Where something is
// missing, ok is false. A measure that is out of range gives a [*placing.FieldError].
func SplitYield(key, card Facts) (split YieldSplit, ok bool, err error) {
	if key, err = key.withFat(); err != nil {
		return YieldSplit{}, false, fault.In("official facts", err)
	}
	if card, err = card.withFat(); err != nil {
		return YieldSplit{}, false, err
	}
	if !key.measured() || card.measures() == (grade.Measures{}) {
		return YieldSplit{}, false, nil
	}
	right, err := key.measures().Terms()
	if err != nil {
		return YieldSplit{}, false, fault.In("official facts", err)
	}
	said := grade.Measures{
		Fat:    cmp.Or(card.Fat, key.Fat),
		Ribeye: cmp.Or(card.Ribeye, key.Ribeye),
		KPH:    cmp.Or(card.KPH, key.KPH),
		Weight: cmp.Or(card.Weight, key.Weight),
	}
	terms, err := said.Terms()
	if err != nil {
		return YieldSplit{}, false, err
	}
	off := cmp.Or(card.Yield, terms.Sum()).Sub(cmp.Or(key.Yield, right.Sum()))
	d := terms.Sub(right)
	return YieldSplit{
		Error: off,
		Fat:   d.Fat, KPH: d.KPH, Weight: d.Weight, Ribeye: d.Ribeye,
		Rest: off.Sub(d.Sum()),
	}, true, nil
}

// Feedback tells one member what was missed on the cards given, which are those of
// that member alone; cards of others, and cards that the contest does not take or
// has twice, give a [*placing.FieldError]. Cards may be in any order.
func (c *Contest) Feedback(member string, placings []PlacingCard, estimates []Estimate, hand []HandScore) (Feedback, error) {
	c = c.ready()
	f := Feedback{Member: Member{ID: member}, Scored: whole(0), Of: whole(0)}
	t := c.Tally()
	take := func(items ...Item) error {
		for _, i := range items {
			if i.IsValid() && i.Member.ID != member {
				return inMember(i.Member, &fault.FieldError{Field: "member", Value: strconv.Quote(i.Member.ID), Allowed: strconv.Quote(member) + " alone", Err: fault.ErrUnknown})
			}
		}
		if err := t.Add(items...); err != nil {
			return err
		}
		for _, i := range items {
			if i.IsValid() {
				f.Scored, f.Of = f.Scored.Add(i.Points), f.Of.Add(i.Of)
			}
		}
		return nil
	}
	for _, p := range placings {
		item, err := c.Placing(p)
		if err := cmp.Or(err, take(item)); err != nil {
			return Feedback{}, err
		}
		o := c.class[p.Class].official
		f.Placings = append(f.Placings, PlacingFeedback{p.Class, o, p.Card, item.Points, slices.Collect(o.Faults(p.Card.Order))})
	}
	for _, e := range estimates {
		q, y, err := c.Estimate(e)
		if err := cmp.Or(err, take(q, y)); err != nil {
			return Feedback{}, err
		}
		key := c.class[e.Class].facts[e.Exhibit]
		if q.IsValid() {
			fb := QualityFeedback{Class: e.Class, Exhibit: e.Exhibit, Key: key.Quality, Answer: e.Facts.Quality, Mark: e.Facts.Marks.Quality, Lost: q.Of.Sub(q.Points)}
			if fb.Answer != 0 {
				_, fb.Lines, _ = c.rules.Quality.Loss(fb.Key, fb.Answer)
			}
			f.Quality = append(f.Quality, fb)
		}
		if y.IsValid() {
			fb := YieldFeedback{Class: e.Class, Exhibit: e.Exhibit, Key: key.Yield, Answer: e.Facts.Yield, Mark: e.Facts.Marks.Yield, Lost: y.Of.Sub(y.Points)}
			if fb.Answer.IsSet() {
				_, fb.Steps = c.rules.Yield.loss(fb.Key, fb.Answer)
				if fb.Split, _, err = SplitYield(*key, e.Facts); err != nil {
					return Feedback{}, inMember(e.Member, inClass(e.Class, fault.In("exhibit "+strconv.Itoa(e.Exhibit), err)))
				}
			}
			f.Yield = append(f.Yield, fb)
		}
	}
	for _, h := range hand {
		item, err := c.Hand(h)
		if err := cmp.Or(err, take(item)); err != nil {
			return Feedback{}, err
		}
		if item.IsValid() {
			f.Hand = append(f.Hand, item)
		}
	}
	if r := t.members[member]; r != nil {
		f.Member = r.member
	}
	slices.SortFunc(f.Placings, func(a, b PlacingFeedback) int { return c.order(KindPlacing, a.Class, b.Class, 0, 0) })
	slices.SortFunc(f.Quality, func(a, b QualityFeedback) int {
		return c.order(KindQuality, a.Class, b.Class, a.Exhibit, b.Exhibit)
	})
	slices.SortFunc(f.Yield, func(a, b YieldFeedback) int { return c.order(KindYield, a.Class, b.Class, a.Exhibit, b.Exhibit) })
	slices.SortFunc(f.Hand, func(a, b Item) int {
		return cmp.Compare(c.slotAt[slotKey{c.part[a.Component], a.Class}], c.slotAt[slotKey{c.part[b.Component], b.Class}])
	})
	return f, nil
}

// order compares two classes of a kind by their place in the format, then exhibits.
func (c *Contest) order(k Kind, a, b string, exhibitA, exhibitB int) int {
	at := func(name string) int {
		part := c.class[name].place
		switch k {
		case KindQuality:
			part = c.class[name].quality
		case KindYield:
			part = c.class[name].yielded
		}
		return c.slotAt[slotKey{part, name}]
	}
	return cmp.Or(cmp.Compare(at(a), at(b)), cmp.Compare(exhibitA, exhibitB))
}

// String gives the feedback as plain text, one line for each thing missed.
func (f Feedback) String() string {
	var b strings.Builder
	line := func(parts ...string) {
		for _, p := range parts {
			b.WriteString(p)
		}
		b.WriteByte('\n')
	}
	line("member ", f.Member.ID, ": ", f.Scored.String(), " of ", f.Of.String(), " points on these cards")
	for _, p := range f.Placings {
		if !p.Card.Order.IsValid() {
			mark := cmp.Or(p.Card.Mark, placing.Blank)
			line("class ", p.Class, ": ", mark.String(), ", ", p.Scored.String(), "; official ", p.Official.String())
			continue
		}
		line("class ", p.Class, ": placed ", p.Card.Order.String(), ", official ", p.Official.String(), ": ", p.Scored.String())
		for _, v := range p.Faults {
			line("  ", strconv.Itoa(v.Upper), " goes over ", strconv.Itoa(v.Lower), ": reversed, costs ", strconv.Itoa(v.Points))
		}
	}
	for _, q := range f.Quality {
		where := "class " + q.Class + ", exhibit " + strconv.Itoa(q.Exhibit) + ": quality "
		switch {
		case q.Answer == 0:
			line(where, q.Mark.String(), ", official ", q.Key.String(), ": loses ", q.Lost.String())
		case q.Lines != 0:
			line(where, q.Answer.String(), ", official ", q.Key.String(), ": ", off(int64(q.Lines), "line", "too good", "too low"), ", loses ", q.Lost.String())
		}
	}
	for _, y := range f.Yield {
		where := "class " + y.Class + ", exhibit " + strconv.Itoa(y.Exhibit) + ": yield "
		switch {
		case !y.Answer.IsSet():
			line(where, y.Mark.String(), ", official ", y.Key.String(), ": loses ", y.Lost.String())
			continue
		case y.Answer == y.Key:
			continue
		}
		line(where, y.Answer.String(), ", official ", y.Key.String(), ": ", off(y.Steps, "step", "too high", "too low"), ", loses ", y.Lost.String())
		for _, p := range y.Split.Parts() {
			if p.Yield.Units() != 0 {
				line("  ", p.Name, " ", fixed.Signed(p.Yield.Units(), 8))
			}
		}
	}
	for _, h := range f.Hand {
		line(h.where(), ": ", h.Points.String(), " of ", h.Of.String())
	}
	return b.String()
}

// off puts a signed number of steps into words.
func off(n int64, unit, above, below string) string {
	way, many := above, ""
	if n < 0 {
		n, way = -n, below
	}
	if n == 0 {
		return "same step"
	}
	if n > 1 {
		many = "s"
	}
	return strconv.FormatInt(n, 10) + " " + unit + many + " " + way
}
