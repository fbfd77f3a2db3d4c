package contest

import (
	"cmp"
	"slices"
	"strconv"

	"example.com/ribface/internal/fault"
	"example.com/ribface/placing"
)

// Scoring says how cards are scored. The zero Scoring scores placings by the published
// rules and refuses estimates, for which the caller gives ladders.
type Scoring struct {
	Placing placing.CardRules `json:"placing,omitzero"`
	Quality QualityRule       `json:"quality,omitzero"`
	Yield   YieldRule         `json:"yield,omitzero"`
}

// worker is embedded by what works and is no value.
type worker = fault.Worker

// clone copies what a caller could change.
func (r Scoring) clone() Scoring {
	r.Quality.Ladder, r.Yield.Ladder, r.Yield.Off = r.Quality.Ladder.clone(), r.Yield.Ladder.clone(), slices.Clone(r.Yield.Off)
	return r
}

// Contest is a format with its official answers, ready to score cards. It does not
// change after [NewContest] and may be used by several goroutines.
type Contest struct {
	worker
	name    string
	format  Format
	scoring Scoring
	class   map[string]*key
	slots   []slot
	slotAt  map[slotKey]int
	part    map[string]int // components by name
}

// key is what the contest knows of one class.
type key struct {
	official placing.Official
	facts    [maxExhibit + 1]*Facts
	part     [KindHand]int // by kind the component, from 1; 0 for none
}

// exhibit gives the facts of an exhibit; nil where there are none.
func (k *key) exhibit(n int) *Facts {
	if k == nil || n < 1 || n > maxExhibit {
		return nil
	}
	return k.facts[n]
}

// slot is one class of one component: what every member is expected to hand in.
type slot struct {
	component int
	class     string
	exhibits  uint64 // a bit for each exhibit, bit 0 for a class as a whole
	least, of int64  // the fewest units of points of one item, and the most, its value
}

type slotKey struct {
	component int
	class     string
}

// Item is one scored answer of one member: a placing, one exhibit's quality or
// yield estimate, or a score given by hand. The zero Item is nothing scored.
type Item struct {
	Member    Member `json:"member"`
	Component string `json:"component"`
	Class     string `json:"class,omitzero"`
	Exhibit   int    `json:"exhibit,omitzero"` // 0 for a class as a whole
	Points    Points `json:"points"`           // scored; below 0 only for a placing
	Of        Points `json:"of"`               // the most that could be scored
}

// IsValid reports whether the item is something scored.
func (i Item) IsValid() bool { return i.Component != "" }

// NewContest puts a format, the rules and the official answers together. Every
// class of a placing component needs its official placing, every class of a grading
// component at least one exhibit with an official grade, and the values of the
// items must add up to the value of the component: 50 for each placing class, the
// value of the ladder for each exhibit. A yield that is not given is computed from
// the measures. Rows of another contest, classes that no component has, and
// anything given twice are refused. The error tells of every row at fault, with
// paths as "placings[1].cuts", "facts[2].facts.quality" and those of the format and
// the rules; see [placing.Problems].
//
// The name is that of the contest column of the sheets; it may be empty.
func NewContest(name string, f Format, r Scoring, placings []OfficialPlacing, facts []OfficialFacts) (*Contest, error) {
	if err := fault.Join(fault.At("contest", "", checkName("contest", name, false)), fault.At("format", "", f.Check())); err != nil {
		return nil, err
	}
	c := &Contest{name: name, format: f.clone(), scoring: r.clone(), class: map[string]*key{}, slotAt: map[slotKey]int{}, part: map[string]int{}}
	for i, comp := range c.format.Components {
		c.part[comp.Name] = i
		for _, class := range comp.classes() {
			if comp.Kind == KindHand {
				break
			}
			if c.class[class] == nil {
				c.class[class] = &key{}
			}
			c.class[class].part[comp.Kind] = i + 1
		}
	}
	var all []error
	for i, p := range placings {
		all = append(all, fault.At(nth("placings", i), "", c.setPlacing(p)))
	}
	for i, o := range facts {
		all = append(all, fault.At(nth("facts", i), "", c.setFacts(o)))
	}
	all = append(all, c.checkRules())
	if err := fault.Join(all...); err != nil {
		return nil, err
	}
	for i := range c.format.Components {
		all = append(all, fault.At(nth("format.components", i), "", c.addSlots(i)))
	}
	if err := fault.Join(all...); err != nil {
		return nil, err
	}
	return c, nil
}

// checkRules checks the rules for quality and yield where there are any to score.
func (c *Contest) checkRules() error {
	var quality, yield error
	for _, k := range c.class {
		if k.part[KindQuality] > 0 {
			quality = fault.At("rules.quality", "", c.scoring.Quality.check())
		}
		if k.part[KindYield] > 0 {
			yield = fault.At("rules.yield", "", c.scoring.Yield.Check())
		}
	}
	return fault.Join(quality, yield)
}

// setPlacing keeps the official placing of a class.
func (c *Contest) setPlacing(p OfficialPlacing) error {
	k, err := c.find(p.Contest, p.Class)
	if err != nil {
		return err
	}
	switch {
	case k.part[KindPlacing] == 0:
		err = &fault.FieldError{Path: "class", Field: "official placing", Allowed: "the class of a placing component", Err: fault.ErrUnknown}
	case k.official.IsValid():
		err = &fault.FieldError{Path: "class", Field: "official placing", Value: p.Order.String(), Allowed: "one for each class", Err: fault.ErrRepeated}
	default:
		k.official, err = placing.NewOfficial(p.Order, p.Cuts)
	}
	return inClass(p.Class, err)
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
		return nil, &fault.FieldError{Path: "contest", Field: "contest", Value: strconv.Quote(contest), Allowed: strconv.Quote(c.name), Err: fault.ErrUnknown}
	}
	if k, ok := c.class[name]; ok {
		return k, nil
	}
	return nil, &fault.FieldError{Path: "class", Field: "class", Value: strconv.Quote(name), Allowed: "a class of the contest", Err: fault.ErrUnknown}
}

// setFacts keeps the official facts of one exhibit.
func (c *Contest) setFacts(o OfficialFacts) error {
	k, err := c.find(o.Contest, o.Class)
	if err != nil {
		return err
	}
	if err := fault.At("exhibit", "", checkExhibit(o.Exhibit)); err != nil {
		return inClass(o.Class, err)
	}
	refuse := func(path string, err error) error {
		return inClass(o.Class, fault.At(path, "exhibit "+strconv.Itoa(o.Exhibit), err))
	}
	quality, yield := k.part[KindQuality] > 0, k.part[KindYield] > 0
	switch {
	case k.facts[o.Exhibit] != nil:
		return refuse("exhibit", &fault.FieldError{Allowed: "each exhibit once", Err: fault.ErrRepeated})
	case !quality && !yield:
		return refuse("class", &fault.FieldError{Allowed: "the class of a grading component", Err: fault.ErrUnknown})
	}
	f := o.Facts
	if w, err := f.withFat(); err == nil && w.measured() && !f.Yield.IsSet() {
		f.Yield, _ = w.measures().Yield() // measures out of range give none
	}
	var all []error
	if quality && f.Quality == 0 {
		all = append(all, refuse("facts.quality", &fault.FieldError{Field: "official quality", Allowed: "a quality grade", Err: fault.ErrMissing}))
	} else if quality {
		_, _, err := c.scoring.Quality.loss(f.Quality, f.Quality)
		all = append(all, refuse("facts.quality", err))
	}
	if yield && !f.Yield.IsSet() {
		all = append(all, refuse("facts.yield", &fault.FieldError{Field: "official yield", Allowed: "a yield grade, or the four measures", Err: fault.ErrMissing}))
	} else if yield {
		all = append(all, refuse("facts.yield", checkYield(f.Yield)))
	}
	if err := fault.Join(all...); err != nil {
		return err
	}
	k.facts[o.Exhibit] = &f
	return nil
}

// addSlots adds what is expected of a member for a component.
func (c *Contest) addSlots(i int) error {
	comp := &c.format.Components[i]
	var sum int64
	var all []error
	bare := false // a class without facts, which is told once for quality and yield
	classes := comp.classes()
	for _, name := range classes {
		s := slot{component: i, class: name, exhibits: 1}
		switch comp.Kind {
		case KindPlacing:
			if !c.class[name].official.IsValid() {
				all = append(all, inClass(name, &fault.FieldError{Path: "classes", Field: "official placing", Allowed: "one for each class", Err: fault.ErrMissing}))
			}
			s.least, s.of = int64(min(c.class[name].official.Worst(), 0))*onePoint, placing.FullScore*onePoint
			sum += s.of
		case KindHand:
			s.of = comp.Value.Units() / int64(len(classes))
			sum += s.of
		default:
			s.of = c.scoring.Yield.Value.Units()
			if comp.Kind == KindQuality {
				s.of = c.scoring.Quality.Ladder.Value.Units()
			}
			s.exhibits = 0
			for e, f := range c.class[name].facts {
				if f != nil {
					s.exhibits |= 1 << e
					sum += s.of
				}
			}
			if bare = bare || s.exhibits == 0; s.exhibits == 0 && (comp.Kind == KindQuality || c.class[name].part[KindQuality] == 0) {
				all = append(all, inClass(name, &fault.FieldError{Path: "classes", Field: "official facts", Allowed: "one exhibit or more", Err: fault.ErrMissing}))
			}
		}
		c.slotAt[slotKey{i, name}] = len(c.slots)
		c.slots = append(c.slots, s)
	}
	if all == nil && !bare && sum != comp.Value.Units() {
		return &fault.FieldError{Path: "value", Field: "component " + strconv.Quote(comp.Name) + ": value", Value: comp.Value.String(), Allowed: PointsUnits(sum).String() + ", the sum of its items", Err: fault.ErrRange}
	}
	return fault.Join(all...)
}

// Format returns the format, with fresh slices.
func (c *Contest) Format() Format { return c.ready().format.clone() }

// Scoring returns how cards are scored, with fresh slices.
func (c *Contest) Scoring() Scoring { return c.ready().scoring.clone() }

// ready is the contest itself, or one without any class where there is none.
func (c *Contest) ready() *Contest {
	if c == nil {
		return &Contest{}
	}
	return c
}

// Official returns the official placing of a class; ok is false for a class without
// one.
func (c *Contest) Official(class string) (o placing.Official, ok bool) {
	if k := c.ready().class[class]; k != nil {
		o = k.official
	}
	return o, o.IsValid()
}

// Facts returns the official facts of an exhibit; ok is false for an exhibit
// without any.
func (c *Contest) Facts(class string, exhibit int) (f Facts, ok bool) {
	key := c.ready().class[class].exhibit(exhibit)
	if key == nil {
		return Facts{}, false
	}
	return *key, true
}

func (c *Contest) item(m Member, component int, class string, exhibit int, scored Points, of int64) (Item, error) {
	if m.ID == "" {
		return Item{}, fault.At("member.id", "", checkName("member", m.ID, true))
	}
	return Item{m, c.format.Components[component].Name, class, exhibit, scored, PointsUnits(of)}, nil
}

// Placing scores a placing card. A card of another contest, of a class without a
// placing component, without a member, or one that [placing.CardRules.Score]
// refuses gives a [*placing.FieldError].
func (c *Contest) Placing(card PlacingCard) (Item, error) {
	c = c.ready()
	k, err := c.find(card.Contest, card.Class)
	if err != nil {
		return Item{}, inMember(card.Member, err)
	}
	if k.part[KindPlacing] == 0 {
		return Item{}, inMember(card.Member, &fault.FieldError{Path: "class", Field: "class", Value: strconv.Quote(card.Class), Allowed: "a placing class", Err: fault.ErrUnknown})
	}
	s, err := c.scoring.Placing.Score(k.official, card.Card)
	if err != nil {
		return Item{}, inMember(card.Member, inClass(card.Class, fault.At("card", "", err)))
	}
	return c.item(card.Member, k.part[KindPlacing]-1, card.Class, 0, whole(s), placing.FullScore*onePoint)
}

// Estimate scores a grading card of one exhibit: its quality and its yield, each
// the zero Item where the contest does not ask for it or the card says nothing of
// it. A card of another contest, class or exhibit, one without a member, and
// answers that the rules refuse give an error that tells of all of them, with paths as
// "facts.quality", and then neither is scored; see [placing.Problems].
func (c *Contest) Estimate(e Estimate) (quality, yield Item, err error) {
	c = c.ready()
	k, err := c.find(e.Contest, e.Class)
	if err != nil {
		return Item{}, Item{}, inMember(e.Member, err)
	}
	key, f := k.exhibit(e.Exhibit), &e.Facts
	if key == nil {
		return Item{}, Item{}, inMember(e.Member, inClass(e.Class, &fault.FieldError{Path: "exhibit", Field: "exhibit", Value: strconv.Itoa(e.Exhibit), Allowed: "an exhibit with official facts", Err: fault.ErrUnknown}))
	}
	var refused error
	// add makes an item of what an answer scored.
	add := func(kind Kind, path string, scored Points, of Points, err error) Item {
		var item Item
		if err == nil {
			path = ""
			item, err = c.item(e.Member, k.part[kind]-1, e.Class, e.Exhibit, scored, of.Units())
		}
		if err != nil && (path != "" || refused == nil) { // a member at fault is told once
			refused = fault.Join(refused, inMember(e.Member, inClass(e.Class, fault.At(path, "exhibit "+strconv.Itoa(e.Exhibit), err))))
		}
		return item
	}
	if k.part[KindQuality] > 0 && (f.Quality != 0 || f.Marks.Quality != 0) {
		s, err := c.scoring.Quality.score(key.Quality, f.Quality, f.Marks.Quality)
		quality = add(KindQuality, "facts.quality", s, c.scoring.Quality.Ladder.Value, err)
	}
	if k.part[KindYield] > 0 && (f.Yield.IsSet() || f.Marks.Yield != 0) {
		s, err := c.scoring.Yield.score(key.Yield, f.Yield, f.Marks.Yield)
		if f.Yield.IsSet() {
			err = cmp.Or(checkYield(f.Yield), err)
		}
		yield = add(KindYield, "facts.yield", s, c.scoring.Yield.Value, err)
	}
	if refused != nil {
		return Item{}, Item{}, refused
	}
	return quality, yield, nil
}

// Hand takes a score that people gave. It must be 0 to the value of its class: the
// value of the component shared evenly by its classes. A blank scores 0, as does
// any other mark. A score of another contest, component or class, or without a
// member, and a score with a mark, give a [*placing.FieldError]; one with neither
// score nor mark gives the zero Item.
func (c *Contest) Hand(h HandScore) (Item, error) {
	c = c.ready()
	refuse := func(path string, err error) (Item, error) {
		return Item{}, inMember(h.Member, fault.At(path, "", err))
	}
	if h.Contest != c.name {
		_, err := c.find(h.Contest, "")
		return refuse("", err)
	}
	p, ok := c.part[h.Component]
	if !ok || c.format.Components[p].Kind != KindHand {
		return refuse("component", &fault.FieldError{Field: "component", Value: strconv.Quote(h.Component), Allowed: "a component that is scored by hand", Err: fault.ErrUnknown})
	}
	n, ok := c.slotAt[slotKey{p, h.Class}]
	if !ok {
		return refuse("class", &fault.FieldError{Field: "class", Value: strconv.Quote(h.Class), Allowed: "a class of the component " + strconv.Quote(h.Component), Err: fault.ErrUnknown})
	}
	of := c.slots[n].of
	switch score := h.Score.Units(); {
	case h.Score.IsSet() && h.Mark != 0:
		return refuse("score", both(h.Component, h.Score.String(), h.Mark))
	case h.Mark != 0:
		if _, err := h.Mark.MarshalText(); err != nil {
			return refuse("mark", err)
		}
		return c.item(h.Member, p, h.Class, 0, whole(0), of)
	case !h.Score.IsSet():
		return Item{}, nil
	case score < 0 || score > of:
		return refuse("score", &fault.FieldError{Field: h.Component, Value: h.Score.String(), Allowed: "0 to " + PointsUnits(of).String(), Err: fault.ErrRange})
	}
	return c.item(h.Member, p, h.Class, 0, h.Score, of)
}
