package contest

import (
	"strconv"

	"example.com/ribface/grade"
	"example.com/ribface/placing"
)

// Rules say how cards are scored. The zero Rules score placings by the published
// rules and refuse estimates, for which the caller gives ladders.
type Rules struct {
	Placing placing.CardRules
	Quality QualityRule
	Yield   YieldRule
}

// Contest is a format with its official answers, ready to score cards. It does not
// change after [NewContest] and may be used by several goroutines.
type Contest struct {
	name   string
	format Format
	rules  Rules
	class  map[string]*key
	slots  []slot
	slotAt map[slotKey]int
	part   map[string]int // components by name
}

// key is what the contest knows of one class.
type key struct {
	official                placing.Official
	facts                   [MaxExhibit + 1]*Facts
	place, quality, yielded int // component, or -1
}

// slot is one class of one component: what every member is expected to hand in.
type slot struct {
	component int
	class     string
	exhibits  uint64 // a bit for each exhibit, bit 0 for a class as a whole
	least, of Points // the fewest points of one item, and the most, its value
}

type slotKey struct {
	component int
	class     string
}

// Item is one scored answer of one member: a placing, one exhibit's quality or
// yield estimate, or a score given by hand. The zero Item is nothing scored.
type Item struct {
	Member    Member
	Component string
	Class     string
	Exhibit   int    // 0 for a class as a whole
	Points    Points // scored; below 0 only for a placing
	Of        Points // the most that could be scored
}

// IsValid reports whether the item is something scored.
func (i Item) IsValid() bool { return i.Component != "" }

// NewContest puts a format, the rules and the official answers together. Every
// class of a placing component needs its official placing, every class of a grading
// component at least one exhibit with an official grade, and the values of the
// items must add up to the value of the component: 50 for each placing class, the
// value of the ladder for each exhibit. A yield that is not given is computed from
// the measures. Rows of another contest, classes that no component has, and
// anything given twice give a [*FieldError].
//
// The name is that of the contest column of the sheets; it may be empty.
func NewContest(name string, f Format, r Rules, placings []OfficialPlacing, facts []OfficialFacts) (*Contest, error) {
	if err := checkName("contest", name, false); err != nil {
		return nil, err
	}
	if err := f.Check(); err != nil {
		return nil, err
	}
	c := &Contest{name: name, format: f.clone(), rules: r, class: map[string]*key{}, slotAt: map[slotKey]int{}, part: map[string]int{}}
	for i := range c.format.Components {
		comp := &c.format.Components[i]
		c.part[comp.Name] = i
		for _, name := range comp.classes() {
			if comp.Kind == KindHand {
				continue
			}
			k := c.class[name]
			if k == nil {
				k = &key{place: -1, quality: -1, yielded: -1}
				c.class[name] = k
			}
			switch comp.Kind {
			case KindPlacing:
				k.place = i
			case KindQuality:
				k.quality = i
			default:
				k.yielded = i
			}
		}
	}
	for _, p := range placings {
		k, err := c.find(p.Contest, p.Class)
		if err != nil {
			return nil, err
		}
		field := "class " + strconv.Quote(p.Class) + ": official placing"
		switch {
		case k.place < 0:
			return nil, &FieldError{Field: field, Allowed: "the class of a placing component", Err: ErrUnknown}
		case k.official.IsValid():
			return nil, &FieldError{Field: field, Value: p.Order.String(), Allowed: "one for each class", Err: ErrRepeated}
		}
		if k.official, err = placing.NewOfficial(p.Order, p.Cuts); err != nil {
			return nil, inClass(p.Class, err)
		}
	}
	for _, o := range facts {
		k, err := c.find(o.Contest, o.Class)
		if err != nil {
			return nil, err
		}
		if err := c.setFacts(k, o); err != nil {
			return nil, inClass(o.Class, err)
		}
	}
	for i := range c.format.Components {
		if err := c.addSlots(i); err != nil {
			return nil, err
		}
	}
	return c, nil
}

// clone copies what a caller could change.
func (f Format) clone() Format {
	f.Components = append([]Component(nil), f.Components...)
	for i := range f.Components {
		f.Components[i].Classes = append([]string(nil), f.Components[i].Classes...)
	}
	for _, ties := range [...]*[]TieBreak{&f.Ties, &f.TeamTies} {
		*ties = append([]TieBreak(nil), *ties...)
		for i := range *ties {
			(*ties)[i].Components = append([]string(nil), (*ties)[i].Components...)
		}
	}
	return f
}

func (c *Contest) find(contest, name string) (*key, error) {
	if contest != c.name {
		return nil, &FieldError{Field: "contest", Value: strconv.Quote(contest), Allowed: strconv.Quote(c.name), Err: ErrUnknown}
	}
	if k, ok := c.class[name]; ok {
		return k, nil
	}
	return nil, &FieldError{Field: "class", Value: strconv.Quote(name), Allowed: "a class of the contest", Err: ErrUnknown}
}

// setFacts keeps the official facts of one exhibit.
func (c *Contest) setFacts(k *key, o OfficialFacts) error {
	if err := checkExhibit(o.Exhibit); err != nil {
		return err
	}
	where := "exhibit " + strconv.Itoa(o.Exhibit)
	if k.facts[o.Exhibit] != nil {
		return &FieldError{Field: where, Allowed: "each exhibit once", Err: ErrRepeated}
	}
	f := o.Facts
	if !f.Yield.Given {
		if w, err := f.withFat(); err == nil && w.measured() {
			if y, err := w.measures().Yield(); err == nil {
				f.Yield = Give(y)
			}
		}
	}
	if k.quality >= 0 {
		if !f.Quality.Given {
			return &FieldError{Field: where + ": official quality", Allowed: "a quality grade", Err: ErrMissing}
		}
		if _, _, err := c.rules.Quality.Loss(f.Quality.Value, f.Quality.Value); err != nil {
			return inField(where, err)
		}
	}
	if k.yielded >= 0 {
		if !f.Yield.Given {
			return &FieldError{Field: where + ": official yield", Allowed: "a yield grade, or the four measures", Err: ErrMissing}
		}
		if err := checkYield(f.Yield.Value); err != nil {
			return inField(where, err)
		}
		if err := c.rules.Yield.Check(); err != nil {
			return err
		}
	}
	if k.quality < 0 && k.yielded < 0 {
		return &FieldError{Field: where, Allowed: "the class of a grading component", Err: ErrUnknown}
	}
	k.facts[o.Exhibit] = &f
	return nil
}

// addSlots adds what is expected of a member for a component.
func (c *Contest) addSlots(i int) error {
	comp := &c.format.Components[i]
	var sum Points
	classes := comp.classes()
	for _, name := range classes {
		s := slot{component: i, class: name, exhibits: 1}
		switch comp.Kind {
		case KindPlacing:
			if !c.class[name].official.IsValid() {
				return &FieldError{Field: "class " + strconv.Quote(name) + ": official placing", Allowed: "one for each class", Err: ErrMissing}
			}
			s.least, s.of = Points(min(c.class[name].official.Worst(), 0))*Point, placing.FullScore*Point
			sum += s.of
		case KindHand:
			s.of = comp.Value / Points(len(classes))
			sum += s.of
		default:
			s.of = c.rules.Yield.Value
			if comp.Kind == KindQuality {
				s.of = c.rules.Quality.Ladder.value
			}
			s.exhibits = 0
			for e, f := range c.class[name].facts {
				if f != nil {
					s.exhibits |= 1 << e
					sum += s.of
				}
			}
			if s.exhibits == 0 {
				return &FieldError{Field: "class " + strconv.Quote(name) + ": official facts", Allowed: "one exhibit or more", Err: ErrMissing}
			}
		}
		c.slotAt[slotKey{i, name}] = len(c.slots)
		c.slots = append(c.slots, s)
	}
	if sum != comp.Value {
		return &FieldError{Field: "component " + strconv.Quote(comp.Name) + ": value", Value: comp.Value.String(), Allowed: sum.String() + ", the sum of its items", Err: ErrRange}
	}
	return nil
}

func inClass(name string, err error) error { return inField("class "+strconv.Quote(name), err) }

// Format returns the format, with fresh slices.
func (c *Contest) Format() Format { return c.format.clone() }

// Rules returns the rules.
func (c *Contest) Rules() Rules { return c.rules }

// Official returns the official placing of a class; ok is false for a class without
// one.
func (c *Contest) Official(class string) (o placing.Official, ok bool) {
	k := c.class[class]
	if k == nil || !k.official.IsValid() {
		return placing.Official{}, false
	}
	return k.official, true
}

// Facts returns the official facts of an exhibit; ok is false for an exhibit
// without any.
func (c *Contest) Facts(class string, exhibit int) (f Facts, ok bool) {
	k := c.class[class]
	if k == nil || exhibit < 1 || exhibit > MaxExhibit || k.facts[exhibit] == nil {
		return Facts{}, false
	}
	return *k.facts[exhibit], true
}

func (c *Contest) item(m Member, component int, class string, exhibit int, scored, of Points) (Item, error) {
	if m.ID == "" {
		return Item{}, checkName("member", m.ID, true)
	}
	return Item{m, c.format.Components[component].Name, class, exhibit, scored, of}, nil
}

// Placing scores a placing card. A card of another contest, of a class without a
// placing component, without a member, or one that [placing.CardRules.Score]
// refuses gives a [*FieldError].
func (c *Contest) Placing(card PlacingCard) (Item, error) {
	k, err := c.find(card.Contest, card.Class)
	if err != nil {
		return Item{}, inMember(card.Member, err)
	}
	if k.place < 0 {
		return Item{}, inMember(card.Member, &FieldError{Field: "class", Value: strconv.Quote(card.Class), Allowed: "a placing class", Err: ErrUnknown})
	}
	s, err := c.rules.Placing.Score(k.official, card.Card)
	if err != nil {
		return Item{}, inMember(card.Member, inClass(card.Class, err))
	}
	return c.item(card.Member, k.place, card.Class, 0, Points(s)*Point, placing.FullScore*Point)
}

// Estimate scores a grading card of one exhibit: its quality and its yield, each
// the zero Item where the contest does not ask for it or the card says nothing of
// it. A card of another contest, class or exhibit, one without a member, and an
// answer that the rules refuse give a [*FieldError], and then neither is scored.
func (c *Contest) Estimate(e Estimate) (quality, yield Item, err error) {
	k, err := c.find(e.Contest, e.Class)
	if err != nil {
		return Item{}, Item{}, inMember(e.Member, err)
	}
	if e.Exhibit < 1 || e.Exhibit > MaxExhibit || k.facts[e.Exhibit] == nil {
		return Item{}, Item{}, inMember(e.Member, inClass(e.Class, &FieldError{Field: "exhibit", Value: strconv.Itoa(e.Exhibit), Allowed: "an exhibit with official facts", Err: ErrUnknown}))
	}
	key := k.facts[e.Exhibit]
	refused := func(err error) (Item, Item, error) {
		return Item{}, Item{}, inMember(e.Member, inClass(e.Class, inField("exhibit "+strconv.Itoa(e.Exhibit), err)))
	}
	if k.quality >= 0 && e.Facts.Quality != (Answer[grade.Quality]{}) {
		s, err := c.rules.Quality.Score(key.Quality.Value, e.Facts.Quality)
		if err != nil {
			return refused(err)
		}
		if quality, err = c.item(e.Member, k.quality, e.Class, e.Exhibit, s, c.rules.Quality.Ladder.value); err != nil {
			return refused(err)
		}
	}
	if k.yielded >= 0 && e.Facts.Yield != (Answer[grade.Yield]{}) {
		if e.Facts.Yield.Given {
			if err := checkYield(e.Facts.Yield.Value); err != nil {
				return refused(err)
			}
		}
		s, err := c.rules.Yield.score(key.Yield.Value, e.Facts.Yield)
		if err != nil {
			return refused(err)
		}
		if yield, err = c.item(e.Member, k.yielded, e.Class, e.Exhibit, s, c.rules.Yield.Value); err != nil {
			return refused(err)
		}
	}
	return quality, yield, nil
}

// Hand takes a score that people gave. It must be 0 to the value of its class: the
// value of the component shared evenly by its classes. A blank scores 0, as does
// any other mark. A score of another contest, component or class, or without a
// member, gives a [*FieldError]; an empty one gives the zero Item.
func (c *Contest) Hand(h HandScore) (Item, error) {
	if h.Contest != c.name {
		_, err := c.find(h.Contest, "")
		return Item{}, inMember(h.Member, err)
	}
	at, ok := c.part[h.Component]
	if !ok || c.format.Components[at].Kind != KindHand {
		return Item{}, inMember(h.Member, &FieldError{Field: "component", Value: strconv.Quote(h.Component), Allowed: "a component that is scored by hand", Err: ErrUnknown})
	}
	n, ok := c.slotAt[slotKey{at, h.Class}]
	if !ok {
		return Item{}, inMember(h.Member, &FieldError{Field: "class", Value: strconv.Quote(h.Class), Allowed: "a class of the component " + strconv.Quote(h.Component), Err: ErrUnknown})
	}
	of := c.slots[n].of
	switch {
	case h.Score == Answer[Points]{}:
		return Item{}, nil
	case !h.Score.Given:
		if _, err := h.Score.Mark.AppendText(nil); err != nil {
			return Item{}, inMember(h.Member, err)
		}
		return c.item(h.Member, at, h.Class, 0, 0, of)
	case h.Score.Value < 0 || h.Score.Value > of:
		return Item{}, inMember(h.Member, &FieldError{Field: h.Component, Value: h.Score.Value.String(), Allowed: "0 to " + of.String(), Err: ErrRange})
	}
	return c.item(h.Member, at, h.Class, 0, h.Score.Value, of)
}
