package class

import (
	"fmt"
	"slices"
	"sort"

	"example.com/ribface/grade"
	"example.com/ribface/internal/fault"
	"example.com/ribface/internal/text"
	"example.com/ribface/internal/text/fixed"
	"example.com/ribface/maturity"
	"example.com/ribface/placing"
)

// Reversal is the smallest change of one factor of one exhibit that turns a pair
// round, everything else as it is.
type Reversal struct {
	Exhibit int         `json:"exhibit"` // whose factor changes
	Trait   grade.Trait `json:"trait"`   // marbling, fat, ribeye, KPH or weight
	From    string      `json:"from"`    // what it is, with its unit
	To      string      `json:"to"`      // what it would be
	Change  string      `json:"change"`  // with its sign, as "-0.12 in" or "+45 points"

	// Effect is how large the change is on one scale: the change of the yield, or
	// what the policy counts the marbling for. It is over 0.
	Effect grade.Yield `json:"effect,omitzero"`

	Exhibits []Exhibit     `json:"exhibits"` // the class with the change made, as it would be graded
	Order    placing.Order `json:"order"`    // how the policy would then place the class
}

// Reversals returns, for two exhibits that the policy tells apart, the smallest
// change of each single factor of each of the two that would turn their decision
// round, the smallest effect first. Changes are exact to 0.0001 of a unit and to
// a point of marbling, and stay within the limits of the measures. A factor that
// cannot turn the pair is not listed. With a posted weight, weight is no factor.
//
// What turns is the policy's decision on the pair; Order shows the placing of the
// whole class, in which a cycle may still hold the pair as it was.
//
// An exhibit that is not in the class, one given twice, a policy that does not
// check and one with a grid, by which a better measure may be worth less, give a
// [*placing.FieldError].
func (g Graded) Reversals(p Policy, a, b int) ([]Reversal, error) {
	if err := g.pair(a, b); err != nil {
		return nil, err
	}
	if err := p.checkWhatIf(); err != nil {
		return nil, err
	}
	p = p.clone()
	d := g.decide(&p, a, b)
	if d.Ground == 0 {
		return nil, nil
	}
	var all []Reversal
	for _, e := range [...]int{d.Lower, d.Upper} {
		for _, t := range [...]grade.Trait{grade.TraitMarbling, grade.TraitFat, grade.TraitRibeye, grade.TraitKPH, grade.TraitWeight} {
			if t == grade.TraitWeight && g.given.Posted.IsSet() {
				continue
			}
			if r, ok := g.reversal(&p, d, e, t); ok {
				all = append(all, r)
			}
		}
	}
	slices.SortStableFunc(all, func(a, b Reversal) int { return a.Effect.Compare(b.Effect) })
	return all, nil
}

// decide decides a pair by a policy without a grid.
func (g Graded) decide(p *Policy, a, b int) Decision {
	x, y := p.profile(g.assessed[a-1], g.given.Walk, a), p.profile(g.assessed[b-1], g.given.Walk, b)
	return p.prefer(&x, &y)
}

// checkWhatIf refuses a policy that the questions of what if cannot be asked of.
func (p Policy) checkWhatIf() error {
	if err := p.Check(); err != nil {
		return err
	}
	if p.Grid != nil {
		return &fault.FieldError{Path: "grid", Field: "policy: grid", Value: p.Grid.Name, Allowed: "a policy without a grid, on which a better measure may be worth less", Err: fault.ErrRange}
	}
	return nil
}

// lever moves one factor of a carcass by n steps toward better or worse.
type lever struct {
	most int // steps that stay within the limits
	move func(c *grade.Carcass, n int)
	show func(c *grade.Carcass) string
	step func(n int) string // a signed change
}

// newLever is the lever on a trait, within the limits of the measures, which hold for
// adjusted fat too, and over the scale of marbling.
func newLever(c grade.Carcass, t grade.Trait, better bool) lever {
	limits := grade.CarcassLimits()
	least, most := limits.Least, limits.Most
	sign := int64(-1)
	if better == (t == grade.TraitMarbling || t == grade.TraitRibeye) { // of which more is better
		sign = 1
	}
	switch t {
	case grade.TraitMarbling:
		l := leverOn(c, func(c *grade.Carcass) *grade.Marbling { return &c.Marbling }, func(m grade.Marbling) int64 { return int64(m) },
			func(n int64) grade.Marbling { return grade.Marbling(n) }, grade.Devoid.At(0), grade.Abundant.At(100), sign)
		l.step = func(n int) string { return fixed.Plus(sign, text.Count(int(sign)*n, "point")) }
		return l
	case grade.TraitFat:
		adjust := c.FatAdjust.Units()
		lo, hi := grade.ThicknessUnits(least.Fat.Units()+max(-adjust, 0)), grade.ThicknessUnits(most.Fat.Units()-max(adjust, 0))
		return leverOn(c, func(c *grade.Carcass) *grade.Thickness { return &c.Measures.Fat }, grade.Thickness.Units, grade.ThicknessUnits, lo, hi, sign)
	case grade.TraitRibeye:
		return leverOn(c, func(c *grade.Carcass) *grade.Area { return &c.Measures.Ribeye }, grade.Area.Units, grade.AreaUnits, least.Ribeye, most.Ribeye, sign)
	case grade.TraitKPH:
		return leverOn(c, func(c *grade.Carcass) *grade.Share { return &c.Measures.KPH }, grade.Share.Units, grade.ShareUnits, least.KPH, most.KPH, sign)
	default:
		return leverOn(c, func(c *grade.Carcass) *grade.Weight { return &c.Measures.Weight }, grade.Weight.Units, grade.WeightUnits, least.Weight, most.Weight, sign)
	}
}

// leverOn is the lever on the field of a carcass that at finds.
func leverOn[T fmt.Stringer](c grade.Carcass, at func(*grade.Carcass) *T, units func(T) int64, of func(int64) T, least, most T, sign int64) lever {
	now := units(*at(&c))
	room := units(most) - now
	if sign < 0 {
		room = now - units(least)
	}
	return lever{
		int(room),
		func(c *grade.Carcass, n int) { *at(c) = of(now + sign*int64(n)) },
		func(c *grade.Carcass) string { return (*at(c)).String() },
		func(n int) string { return fixed.Plus(sign, of(sign*int64(n)).String()) },
	}
}

func (g Graded) reversal(p *Policy, d Decision, e int, t grade.Trait) (Reversal, bool) {
	c := g.exhibits[e-1].Carcass
	l := newLever(c, t, e == d.Lower)
	other := d.Upper + d.Lower - e
	still := p.profile(g.assessed[other-1], g.given.Walk, other)
	moved := func(n int) grade.Assessment {
		c := c
		l.move(&c, n)
		a, _ := g.given.Rules.Assess(c) // the lever stays within the limits
		return a
	}
	turned := func(n int) bool {
		now := p.profile(moved(n), g.given.Walk, e)
		after := p.prefer(&now, &still)
		return after.Ground != 0 && after.Upper == d.Lower
	}
	// The policy only ever takes a better measure for the better, so the first
	// step that turns the pair is found by halving. More marbling can lower a dark
	// cutter's grade; its points are tried one by one.
	n := 1
	if t == grade.TraitMarbling {
		for n <= l.most && !turned(n) {
			n++
		}
	} else {
		n += sort.Search(l.most, func(i int) bool { return turned(i + 1) })
	}
	if n > l.most {
		return Reversal{}, false
	}
	a := moved(n)
	r := Reversal{Exhibit: e, Trait: t, From: l.show(&c), To: l.show(&a.Carcass), Change: l.step(n)}
	if t == grade.TraitMarbling {
		r.Effect = yieldOf(max(p.marblingWorth(n), smallest))
	} else {
		n := units(a.Yield) - units(g.assessed[e-1].Yield)
		r.Effect = yieldOf(max(n, -n))
	}
	changed := g
	changed.exhibits, changed.assessed = slices.Clone(g.exhibits), slices.Clone(g.assessed)
	changed.exhibits[e-1].Carcass, changed.assessed[e-1] = a.Carcass, a
	placed, _ := changed.Place(*p)
	r.Exhibits, r.Order = changed.exhibits, placed.Order
	return r, true
}

// CouldReverse returns the decisions of the policy that could go the other way
// when every figure of every exhibit is an estimate that may be off by the
// tolerances, each exhibit on its own. It is exact: a pair is listed if and only
// if some figures within the tolerances turn it. The walk is taken as it stands.
// With a posted weight no weight is uncertain. Decisions are in the order of
// their exhibits' numbers; a pair that the policy cannot tell apart is left out.
//
// Bad tolerances, a policy that does not check and one with a grid give a
// [*placing.FieldError].
func (g Graded) CouldReverse(p Policy, t grade.Tolerances) ([]Decision, error) {
	if err := p.checkWhatIf(); err != nil {
		return nil, err
	}
	if err := t.Check(); err != nil {
		return nil, err
	}
	if g.given.Posted.IsSet() {
		t.Weight = grade.Weight{}
	}
	p = p.clone()
	best, worst := make([][]profile, g.Len()), make([][]profile, g.Len())
	for i, a := range g.assessed {
		e, _ := g.given.Rules.Estimate(a.Carcass, t) // what was graded can be estimated
		m, _ := a.Carcass.Adjusted()
		lean, fat, _ := t.Span(m)
		for _, q := range possible(g.given.Rules, a, t) {
			best[i] = append(best[i], p.extreme(a, g.given.Walk, i+1, q, q.Most, lean, e.Least))
			worst[i] = append(worst[i], p.extreme(a, g.given.Walk, i+1, q, q.Least, fat, e.Most))
		}
	}
	var all []Decision
	for a := 1; a < g.Len(); a++ {
		for b := a + 1; b <= g.Len(); b++ {
			d := g.decide(&p, a, b)
			if d.Ground != 0 && p.turns(worst[d.Upper-1], best[d.Lower-1], d.Lower) {
				all = append(all, d)
			}
		}
	}
	return all, nil
}

// span is one quality that the tolerances allow, with the marbling that can have it
// in one maturity group.
type span struct {
	grade.QualityRange
	maturity maturity.Score // of the group
}

// possible lists the qualities that the tolerances allow, by maturity group: the
// bottom of a class and top Choice ask for the group besides.
func possible(r grade.Rules, a grade.Assessment, t grade.Tolerances) []span {
	kept := func(s maturity.Score, by int) maturity.Score {
		return min(max(s+maturity.Score(by), maturity.A.At(0)), maturity.E.At(100))
	}
	type evidence struct {
		overall  maturity.Score
		skeletal maturity.Group // a bullock's is looked at besides
	}
	tried := map[evidence]bool{}
	var all []span
	off := t.Maturity
	t.Maturity = 0
	for bone := -off; bone <= off; bone++ {
		for lean := -off; lean <= off; lean++ {
			c := a.Carcass
			c.Maturity.Skeletal = kept(c.Maturity.Skeletal, bone)
			if c.Maturity.Lean != 0 {
				c.Maturity.Lean = kept(c.Maturity.Lean, lean)
			}
			overall, err := r.Overall(c.Maturity)
			s := evidence{overall, c.Maturity.Skeletal.Group()}
			if err != nil || tried[s] {
				continue
			}
			tried[s] = true
			e, _ := r.Estimate(c, t)
			for _, q := range e.Qualities {
				n := slices.IndexFunc(all, func(s span) bool { return s.Quality == q.Quality && s.maturity.Group() == overall.Group() })
				if n < 0 {
					all = append(all, span{q, overall})
					continue
				}
				all[n].Least, all[n].Most = min(all[n].Least, q.Least), max(all[n].Most, q.Most)
			}
		}
	}
	return all
}

// extreme is the profile of an exhibit at one end of its tolerances.
func (p *Policy) extreme(a grade.Assessment, w Walk, number int, q span, marbling grade.Marbling, m grade.Measures, y grade.Yield) profile {
	a.Quality, a.Maturity, a.Carcass.Marbling, a.Yield = q.Quality, q.maturity, marbling, y
	a.Carcass.Measures, a.Carcass.FatAdjust = m, grade.Thickness{}
	return p.profile(a, w, number)
}

// turns reports whether any of the lower's best puts it over any of the upper's
// worst.
func (p *Policy) turns(upper, lower []profile, number int) bool {
	for i := range upper {
		for j := range lower {
			if d := p.prefer(&upper[i], &lower[j]); d.Ground != 0 && d.Upper == number {
				return true
			}
		}
	}
	return false
}
