package class

import (
	"cmp"
	"fmt"
	"slices"
	"strconv"

	"example.com/ribface/grade"
	"example.com/ribface/internal/text"
	"example.com/ribface/maturity/cite"
)

// Ground is what decides a pair of exhibits. The zero Ground is none: the policy
// cannot tell the two apart.
type Ground uint8

// The grounds. Tier, Advantage and Bottom come with every policy; the others
// decide within a tier and are listed by [Policy.Ties].
const (
	ByTier      Ground = 1 + iota // the better quality tier
	ByAdvantage                   // a yield advantage that overcomes quality
	ByBottom                      // the other one belongs at the bottom
	ByColor                       // no dark cutter, or less dark
	ByMarbling                    // more marbling
	ByYield                       // the lower yield, exact
	ByMuscling                    // heavier muscled over the sites of the walk; without any, more ribeye for the weight
	ByTrimness                    // trimmer over the sites of the walk; without any, less fat at the rib
)

var grounds = text.Enum{Kind: "ground", Names: []string{"", "quality tier", "yield advantage", "bottom of the class", "lean color", "marbling", "yield", "muscling", "trimness"}}

// String gives the name; "unset" for zero.
func (g Ground) String() string { return grounds.String(int(g)) }

// IsValid reports whether g is one of the named grounds.
func (g Ground) IsValid() bool { return grounds.IsValid(int(g)) }

// Advantage lets a carcass that is so much lower in yield go over one that is up
// to so many tiers better in quality.
type Advantage struct {
	Tiers int           // greatest gap that it overcomes
	Yield grade.Yield   // least difference in the exact yields that does
	Cite  cite.Citation // where the rule comes from
}

// Policy is how a class is placed, as data. The zero Policy is refused; start
// from [DefaultPolicy].
type Policy struct {
	Name string

	// Tiers are the quality tiers from the best down, each a list of trade tiers
	// that count as one. Every tier of the trade must stand in it once.
	Tiers     [][]grade.Tier
	TiersCite cite.Citation

	// Advantages are in order of tiers and of yield, both rising. A gap over the
	// last is never overcome. Within a tier, the first advantage overcomes the
	// grounds in Ties that come before yield: what outweighs a whole tier
	// outweighs a part of one (derived). Without any, quality always comes first.
	Advantages []Advantage

	// Bottom is the tier that goes to the bottom with all tiers under it,
	// whatever the yield; zero for none.
	Bottom     grade.Tier
	BottomCite cite.Citation

	// Ties are the grounds that decide between two of one tier, in order.
	Ties     []Ground
	TiesCite cite.Citation

	// Close is the margin under which a decision is reported as close, a matter
	// of taste.
	Close     grade.Yield
	CloseCite cite.Citation
}

// DefaultPolicy returns the default policy, in fresh slices:
//
//   - Quality tiers, from Prime down, come first; 1 is Prime, 2 high and average
//     Choice, 3 low Choice, 4 Select, 5 Standard, 6 what is under it (published:
//     uni-placing-notes, course notes of low authority).
//   - A yield advantage of 1.5 goes over one tier, 2.0 over two (same source);
//     between 1.5 and 2.0 with a gap of two quality stays first (derived).
//   - Standard goes to the bottom (from memory).
//   - Within a tier: lean color (derived, so that a dark cutter's marbling does
//     not put it over sound ones), then marbling, yield, muscling, trimness
//     (common practice, no source).
//   - A margin under 0.3 of a yield grade is called close (our own choice).
func DefaultPolicy() Policy {
	notes := cite.Citation{Standing: cite.Published, IDs: "uni-placing-notes"}
	return Policy{
		Name:       "quality first, with yield advantage",
		Tiers:      [][]grade.Tier{{grade.PrimeTier}, {grade.TopChoice}, {grade.LowChoice}, {grade.SelectTier}, {grade.StandardTier}, {grade.BelowStandard}},
		TiersCite:  notes,
		Advantages: []Advantage{{1, 3 * grade.OneGrade / 2, notes}, {2, 2 * grade.OneGrade, notes}},
		Bottom:     grade.StandardTier,
		BottomCite: cite.Citation{Standing: cite.Memory},
		Ties:       []Ground{ByColor, ByMarbling, ByYield, ByMuscling, ByTrimness},
		TiesCite:   cite.Citation{Standing: cite.CommonPractice},
		Close:      3 * grade.OneGrade / 10,
	}
}

func (p Policy) clone() Policy {
	p.Tiers = slices.Clone(p.Tiers)
	for i := range p.Tiers {
		p.Tiers[i] = slices.Clone(p.Tiers[i])
	}
	p.Advantages, p.Ties = slices.Clone(p.Advantages), slices.Clone(p.Ties)
	return p
}

// Check returns a [*FieldError] for the first rule of the policy that makes no
// sense; nil when there is none.
func (p Policy) Check() error {
	seen := map[grade.Tier]bool{}
	for i, group := range p.Tiers {
		field := "policy: tiers " + strconv.Itoa(i+1)
		if len(group) == 0 {
			return &FieldError{Field: field, Allowed: "one tier or more", Err: ErrMissing}
		}
		for _, t := range group {
			if !t.IsValid() {
				return &FieldError{Field: field, Value: t.String(), Allowed: "the tiers of the trade", Err: ErrUnknown}
			}
			if seen[t] {
				return &FieldError{Field: field, Value: t.String(), Allowed: "every tier once", Err: ErrRepeated}
			}
			seen[t] = true
		}
	}
	for t := grade.BelowStandard; t <= grade.PrimeTier; t++ {
		if !seen[t] {
			return &FieldError{Field: "policy: tiers", Value: t.String() + " is not listed", Allowed: "every tier once", Err: ErrMissing}
		}
	}
	last := Advantage{}
	for i, a := range p.Advantages {
		field := "policy: advantage " + strconv.Itoa(i+1)
		if a.Tiers <= last.Tiers || a.Tiers > len(p.Tiers) {
			return &FieldError{Field: field + ": tiers", Value: strconv.Itoa(a.Tiers), Allowed: fmt.Sprintf("over %d, up to the %d tiers", last.Tiers, len(p.Tiers)), Err: ErrRange}
		}
		if a.Yield <= last.Yield || a.Yield > 10*grade.OneGrade {
			return &FieldError{Field: field + ": yield", Value: a.Yield.String(), Allowed: "over " + last.Yield.String() + ", up to 10", Err: ErrRange}
		}
		last = a
	}
	if p.Bottom != 0 && !p.Bottom.IsValid() {
		return &FieldError{Field: "policy: bottom", Value: p.Bottom.String(), Allowed: "a tier of the trade, or none", Err: ErrUnknown}
	}
	used := map[Ground]bool{}
	for _, g := range p.Ties {
		if g < ByColor || !g.IsValid() {
			return &FieldError{Field: "policy: ties", Value: g.String(), Allowed: "lean color, marbling, yield, muscling, trimness", Err: ErrUnknown}
		}
		if used[g] {
			return &FieldError{Field: "policy: ties", Value: g.String(), Allowed: "every ground once", Err: ErrRepeated}
		}
		used[g] = true
	}
	if p.Close < 0 || p.Close > 10*grade.OneGrade {
		return &FieldError{Field: "policy: close", Value: p.Close.String(), Allowed: "0 to 10", Err: ErrRange}
	}
	return nil
}

// Rules explains the policy line by line, each with its source and standing.
func (p Policy) Rules() []cite.Step {
	var steps []cite.Step
	add := func(name, rule string, c cite.Citation) {
		steps = append(steps, cite.Step{Name: name, Rule: rule, Cite: c})
	}
	list := ""
	for i, group := range p.Tiers {
		if i > 0 {
			list += "; "
		}
		list += strconv.Itoa(i + 1)
		for _, t := range group {
			list += " " + t.String()
		}
	}
	add("quality", "the better tier goes over: "+list, p.TiersCite)
	for _, a := range p.Advantages {
		add("yield advantage", "a yield lower by "+a.Yield.String()+" or more goes over a carcass up to "+text.Count(a.Tiers, "tier")+" better", a.Cite)
	}
	if p.Bottom != 0 {
		add("bottom", p.Bottom.String()+" and under goes to the bottom, whatever its yield", p.BottomCite)
	}
	list = ""
	for i, g := range p.Ties {
		if i > 0 {
			list += ", "
		}
		list += g.String()
	}
	if list != "" {
		add("within a tier", "in order: "+list, p.TiesCite)
	}
	add("close", "a margin under "+p.Close.String()+" of a yield grade is close", p.CloseCite)
	return steps
}

// lift returns the yield advantage that overcomes a gap of so many tiers, 0 for
// within a tier; ok is false where none does.
func (p *Policy) lift(tiers int) (y grade.Yield, ok bool) {
	for _, a := range p.Advantages {
		if tiers <= a.Tiers {
			return a.Yield, true
		}
	}
	return 0, false
}

// worth returns what a gap of so many tiers is worth in yield: what overcomes it,
// beyond the last advantage half a grade more for every tier, and without any
// advantage one grade a tier.
func (p *Policy) worth(tiers int) grade.Yield {
	if tiers == 0 {
		return 0
	}
	if y, ok := p.lift(tiers); ok {
		return y
	}
	if n := len(p.Advantages); n > 0 {
		last := p.Advantages[n-1]
		return last.Yield + grade.Yield(tiers-last.Tiers)*grade.OneGrade/2
	}
	return grade.Yield(tiers) * grade.OneGrade
}

// marblingWorth is what so many points of marbling are worth in yield: a hundred
// are worth one tier.
func (p *Policy) marblingWorth(points int) grade.Yield {
	return grade.Yield(points) * p.worth(1) / 100
}

// colorWorth is what so many thirds of the reduction for dark cutting are worth:
// the whole of it one tier.
func (p *Policy) colorWorth(thirds int) grade.Yield { return grade.Yield(thirds) * p.worth(1) / 3 }

// profile is what a policy looks at in one exhibit.
type profile struct {
	number   int
	tier     int // from the best, from 0
	bottom   bool
	dark     int
	marbling int
	yield    grade.Yield
	muscling int64 // the more the better
	trimness int64 // the more the better
}

func (p *Policy) profile(a grade.Assessment, w Walk, number int) profile {
	tier := a.Quality.Tier()
	m, _ := a.Carcass.Adjusted()
	need, _ := m.Weight.RequiredRibeye()
	f := profile{
		number:   number,
		tier:     slices.IndexFunc(p.Tiers, func(group []grade.Tier) bool { return slices.Contains(group, tier) }),
		bottom:   tier <= p.Bottom,
		dark:     int(a.Carcass.Lean.Dark),
		marbling: int(a.Carcass.Marbling),
		yield:    a.Yield,
		muscling: int64(m.Ribeye - need),
		trimness: -int64(m.Fat),
	}
	if sum, looked := w.total(number, false); looked > 0 {
		f.muscling = -int64(sum)
	}
	if sum, looked := w.total(number, true); looked > 0 {
		f.trimness = int64(sum)
	}
	return f
}

// by compares two profiles on one ground of the ties: over 0 where a is better.
func (a *profile) by(b *profile, g Ground) int {
	switch g {
	case ByColor:
		return cmp.Compare(b.dark, a.dark)
	case ByMarbling:
		return cmp.Compare(a.marbling, b.marbling)
	case ByYield:
		return cmp.Compare(b.yield, a.yield)
	case ByMuscling:
		return cmp.Compare(a.muscling, b.muscling)
	default:
		return cmp.Compare(a.trimness, b.trimness)
	}
}

// Decision is what the policy says of one pair of exhibits.
type Decision struct {
	Upper, Lower int    // Upper goes over Lower by the policy; by the lower number where it cannot tell
	Ground       Ground // what decides; zero where nothing does

	// Margin is how firmly, in yield grades: how far the yields would have to
	// move to turn the pair, for a pair that yield can turn. Within a tier,
	// marbling counts at a hundredth of a tier a point. It is 0 only where the
	// policy cannot tell the two apart.
	Margin grade.Yield
	Firm   bool // no yield could turn the pair
	Close  bool // the margin is under the policy's Close

	Tiers int         // tiers by which Upper is the better in quality; negative where Lower is
	Lead  grade.Yield // by how much Upper is the lower in yield; negative where Lower is
}

// smallest is the least margin of a pair that is decided.
const smallest grade.Yield = 1

// prefer decides a pair.
func (p *Policy) prefer(a, b *profile) Decision {
	if a.number > b.number {
		a, b = b, a
	}
	d := p.weigh(a, b)
	d.Close = !d.Firm && d.Margin < p.Close
	return d
}

func (p *Policy) weigh(a, b *profile) Decision {
	over := func(u, l *profile, g Ground, margin grade.Yield, firm bool) Decision {
		return Decision{Upper: u.number, Lower: l.number, Ground: g, Margin: max(margin, smallest), Firm: firm, Tiers: l.tier - u.tier, Lead: l.yield - u.yield}
	}
	if a.bottom != b.bottom {
		if a.bottom {
			a, b = b, a
		}
		return over(a, b, ByBottom, p.worth(max(b.tier-a.tier, 1))+max(b.yield-a.yield, 0), true)
	}
	if a.tier != b.tier {
		if a.tier > b.tier {
			a, b = b, a
		}
		gap := b.tier - a.tier
		advantage := a.yield - b.yield // of b
		lift, ok := p.lift(gap)
		switch {
		case !ok:
			return over(a, b, ByTier, p.worth(gap)+max(-advantage, 0), true)
		case advantage >= lift:
			return over(b, a, ByAdvantage, advantage-lift, false)
		default:
			return over(a, b, ByTier, lift-advantage, false)
		}
	}
	for _, g := range p.Ties {
		c := a.by(b, g)
		if c == 0 {
			continue
		}
		if c < 0 {
			a, b = b, a
		}
		return p.within(a, b, g, over)
	}
	return Decision{Upper: a.number, Lower: b.number, Lead: b.yield - a.yield}
}

// within decides a pair of one tier, a over b by the ground.
func (p *Policy) within(a, b *profile, g Ground, over func(u, l *profile, g Ground, margin grade.Yield, firm bool) Decision) Decision {
	var margin grade.Yield
	switch g {
	case ByColor:
		margin = p.colorWorth(b.dark - a.dark)
	case ByMarbling:
		margin = p.marblingWorth(a.marbling - b.marbling)
	case ByYield:
		return over(a, b, g, b.yield-a.yield, false)
	}
	advantage := a.yield - b.yield // of b
	lift, ok := p.lift(0)
	switch {
	case advantage <= 0:
		return over(a, b, g, margin-advantage, false)
	case !ok:
		return over(a, b, g, margin, false)
	case advantage >= lift:
		return over(b, a, ByAdvantage, advantage-lift, false)
	default:
		return over(a, b, g, min(margin, lift-advantage), false)
	}
}
