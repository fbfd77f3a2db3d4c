package class

import (
	"cmp"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"example.com/ribface/grade"
	"example.com/ribface/grade/price"
	"example.com/ribface/internal/fault"
	"example.com/ribface/internal/text"
	"example.com/ribface/maturity"
	"example.com/ribface/maturity/cite"
)

// Ground is what decides a pair of exhibits. The zero Ground is none: the policy
// cannot tell the two apart.
type Ground uint8

// The grounds. Those from ByColor to ByTrimness and those from ByDark on may stand
// in [Policy.Ties].
const (
	ByTier      Ground = 1 + iota // the better quality tier
	ByAdvantage                   // a yield advantage that overcomes quality
	ByBottom                      // the other one belongs at the bottom
	ByColor                       // no dark cutter or less dark; then the brighter lean, where both were looked at
	ByMarbling                    // more marbling
	ByYield                       // the lower yield, exact
	ByMuscling                    // heavier muscled over the sites of the walk; without any, more ribeye for the weight
	ByTrimness                    // trimmer over the sites of the walk; without any, less fat at the rib
	ByCeiling                     // the rule of Choice against Select, where it says other than the tiers and advantages do
	ByValue                       // worth more on the grid
	ByDark                        // no dark cutter, or less dark
	ByTexture                     // the finer lean, where both were looked at
	ByFirmness                    // the firmer lean, where both were looked at
)

var grounds = text.Enum[Ground]{Kind: "ground", Names: []string{"", "quality tier", "yield advantage", "bottom of the class", "lean color", "marbling", "yield", "muscling", "trimness", "Choice against Select", "value", "dark cutting", "texture", "firmness"}}

// String gives the name; "unset" for zero.
func (g Ground) String() string { return grounds.String(g) }

// MarshalText gives the name; the zero value is empty text.
func (g Ground) MarshalText() ([]byte, error) { return grounds.Marshal(g) }

// UnmarshalText reads what [Ground.String] writes, in any case; empty text gives the
// zero value. On error the receiver is left as it was.
func (g *Ground) UnmarshalText(b []byte) error { return grounds.Unmarshal(g, b) }

// tieGrounds may stand in Policy.Ties.
var tieGrounds = []Ground{ByColor, ByMarbling, ByYield, ByMuscling, ByTrimness, ByDark, ByTexture, ByFirmness}

// Advantage lets a carcass that is so much lower in yield go over one that is up
// to so many tiers better in quality.
type Advantage struct {
	Tiers int           `json:"tiers"` // greatest gap that it overcomes
	Yield grade.Yield   `json:"yield"` // least difference in the exact yields that does
	Cite  cite.Citation `json:"cite"`  // where the rule comes from
}

// Policy is how a class is placed, as data. [Graded.Decide] says how its settings
// work together. The zero Policy is refused; start from one of the named ones,
// [DefaultPolicy], [NotesPolicy], [CutabilityPolicy] or [ValuePolicy]. A yield that is
// not set counts as 0.
//
// A policy goes through encoding/json and comes back equal; one with a value that has
// no name is not written. Reading refuses a setting that it does not know.
type Policy struct {
	Name string `json:"name"`

	// Grid prices the carcasses, and the more valuable goes over: per head, or
	// with ByCwt by the price per cwt. A policy with a grid has no other setting
	// than Close.
	Grid  *price.Offer `json:"grid,omitzero"`
	ByCwt bool         `json:"by_cwt,omitzero"`

	// Bottom is the tier that goes to the bottom with all tiers under it; zero
	// for none. BottomGroup is the maturity group that does, with all older ones,
	// and BottomDark the dark cutting that does, with all darker; zero for none.
	Bottom          grade.Tier     `json:"bottom,omitzero"`
	BottomCite      cite.Citation  `json:"bottom_cite,omitzero"`
	BottomGroup     maturity.Group `json:"bottom_group,omitzero"`
	BottomGroupCite cite.Citation  `json:"bottom_group_cite,omitzero"`
	BottomDark      grade.DarkCut  `json:"bottom_dark,omitzero"`
	BottomDarkCite  cite.Citation  `json:"bottom_dark_cite,omitzero"`

	// Tiers are the quality tiers from the best down, each a list of trade tiers
	// that count as one. Every tier of the trade must stand in it once.
	Tiers     [][]grade.Tier `json:"tiers,omitzero"`
	TiersCite cite.Citation  `json:"tiers_cite,omitzero"`

	// TopGroup is the oldest maturity group of top Choice: an older carcass of
	// that tier counts as low Choice. Zero for any.
	TopGroup     maturity.Group `json:"top_group,omitzero"`
	TopGroupCite cite.Citation  `json:"top_group_cite,omitzero"`

	// Advantages are in order of tiers and of yield, both rising. A gap over the
	// last is never overcome.
	Advantages []Advantage `json:"advantages,omitzero"`

	// Ceiling is the yield under which no Select goes over a Choice, in whole
	// tenths; zero for none. A Choice that is not top Choice and has the ceiling
	// or more goes under any Select whose yield is under LeanSelect; zero for
	// none.
	Ceiling     grade.Yield   `json:"ceiling,omitzero"`
	LeanSelect  grade.Yield   `json:"lean_select,omitzero"`
	CeilingCite cite.Citation `json:"ceiling_cite,omitzero"`

	// Exchange is what 100 points of marbling are worth in yield between two of
	// one tier, to 6 places; zero for no exchange. A dark cutter's marbling counts
	// Darkness points lower for each third of the reduction, 0 to 500.
	Exchange     grade.Yield   `json:"exchange,omitzero"`
	Darkness     int           `json:"darkness,omitzero"`
	ExchangeCite cite.Citation `json:"exchange_cite,omitzero"`

	// Ties are the grounds that decide between two of one tier, in order: all of
	// them without an exchange, and with one what it leaves equal.
	Ties     []Ground      `json:"ties,omitzero"`
	TiesCite cite.Citation `json:"ties_cite,omitzero"`

	// Close is the margin under which a decision is close, a matter of taste. With
	// Walk the walk over the carcasses decides such a pair.
	Close     grade.Yield   `json:"close,omitzero"`
	CloseCite cite.Citation `json:"close_cite,omitzero"`
	Walk      bool          `json:"walk,omitzero"`
	WalkCite  cite.Citation `json:"walk_cite,omitzero"`
}

// units counts a yield in units of 1e-8 of a grade.
func units(y grade.Yield) int64 { return y.Units() }

// yieldOf is the yield of so many units.
func yieldOf(n int64) grade.Yield { return grade.YieldUnits(n) }

// oneGrade is a yield grade in units.
const oneGrade int64 = 100_000_000

var (
	beefSlides    = cite.Citation{Standing: cite.Published, IDs: "uni-beef-judging-slides"}
	carcassSlides = cite.Citation{Standing: cite.Published, IDs: "uni-carcass-placing-slides"}
	courseNotes   = cite.Citation{Standing: cite.Published, IDs: "uni-placing-notes"}
)

func tradeTiers() [][]grade.Tier {
	return [][]grade.Tier{{grade.PrimeTier}, {grade.TopChoice}, {grade.LowChoice}, {grade.SelectTier}, {grade.StandardTier}, {grade.BelowStandard}}
}

// DefaultPolicy returns the policy that places as a coach would, in fresh slices.
// Its rules, in order:
//
//  1. Bottom: Standard and under (published: uni-beef-judging-slides), C or older
//     (published: uni-carcass-placing-slides) and dark cutters of two thirds or
//     more (from memory) stay under all others, whatever their yield. Among
//     themselves they go by the rules below.
//  2. Tiers: Prime; top Choice, which is high and average Choice of group A
//     (common practice, no source); other Choice; Select; Standard; what is under
//     it. The better tier goes over unless the lower one has the yield advantage
//     that lifts it: 1.5 over one tier, 2.0 over two (published:
//     uni-placing-notes, of low authority), 3.0 over three (our own figure).
//  3. Choice against Select (published: uni-beef-judging-slides): no Select goes
//     over a Choice of yield grade 3.5 or better, which is a yield under 3.6,
//     since tenths drop decimals; other Choice of 3.6 or higher goes under a
//     Select of yield grade 1 or 2, which is a yield under 3.0.
//  4. Within a tier one exchange: 100 points of marbling for half a yield grade
//     (our own figure). A dark cutter's marbling counts 100 points lower for each
//     third (derived: a third of Choice is 100 points).
//  5. Where the margin is under 0.3 (our own figure) the walk decides, whoever is
//     trimmer and heavier muscled over the sites looked at; then what is left of
//     rule 2 or 4; then color, texture and firmness (terms published:
//     uni-beef-judging-slides). Rule 3 is no matter for the walk.
func DefaultPolicy() Policy {
	return Policy{
		Name:            "coach",
		Bottom:          grade.StandardTier,
		BottomCite:      beefSlides,
		BottomGroup:     maturity.C,
		BottomGroupCite: carcassSlides,
		BottomDark:      grade.DarkTwoThirds,
		BottomDarkCite:  cite.Citation{Standing: cite.Memory},
		Tiers:           tradeTiers(),
		TiersCite:       courseNotes,
		TopGroup:        maturity.A,
		TopGroupCite:    cite.Citation{Standing: cite.CommonPractice},
		Advantages:      []Advantage{{1, yieldOf(3 * oneGrade / 2), courseNotes}, {2, yieldOf(2 * oneGrade), courseNotes}, {3, yieldOf(3 * oneGrade), cite.Citation{}}},
		Ceiling:         yieldOf(36 * oneGrade / 10),
		LeanSelect:      yieldOf(3 * oneGrade),
		CeilingCite:     beefSlides,
		Exchange:        yieldOf(oneGrade / 2),
		Darkness:        100,
		Ties:            []Ground{ByColor, ByTexture, ByFirmness},
		TiesCite:        beefSlides,
		Close:           yieldOf(3 * oneGrade / 10),
		Walk:            true,
		WalkCite:        beefSlides,
	}
}

// NotesPolicy returns the policy of the course notes (published:
// uni-placing-notes, of low authority), in fresh slices: the six tiers, a yield
// advantage of 1.5 over one tier and 2.0 over two, Standard at the bottom. A gap
// of three tiers is never overcome. Within a tier the first of dark cutting,
// marbling, yield, muscling and trimness in which two differ decides (common
// practice, no source), unless it comes before yield and the other has the first
// yield advantage: what outweighs a tier outweighs a part of one (derived).
func NotesPolicy() Policy {
	return Policy{
		Name:       "course notes",
		Bottom:     grade.StandardTier,
		BottomCite: cite.Citation{Standing: cite.Memory},
		Tiers:      tradeTiers(),
		TiersCite:  courseNotes,
		Advantages: []Advantage{{1, yieldOf(3 * oneGrade / 2), courseNotes}, {2, yieldOf(2 * oneGrade), courseNotes}},
		Ties:       []Ground{ByDark, ByMarbling, ByYield, ByMuscling, ByTrimness},
		TiesCite:   cite.Citation{Standing: cite.CommonPractice},
		Close:      yieldOf(3 * oneGrade / 10),
	}
}

// CutabilityPolicy returns strict cutability, in fresh slices: the lower yield goes
// over, and of equal yields the more marbling. A class all of Choice or all of
// Select is decided on cutability (published: uni-beef-judging-slides); that no
// quality stands against it is what makes it strict, and is our own.
func CutabilityPolicy() Policy {
	return Policy{
		Name:      "strict cutability",
		Tiers:     [][]grade.Tier{slices.Concat(tradeTiers()...)},
		Ties:      []Ground{ByYield, ByMarbling},
		TiesCite:  beefSlides,
		Close:     yieldOf(3 * oneGrade / 10),
		CloseCite: cite.Citation{},
	}
}

// ValuePolicy returns value on a price grid: the carcass that is worth more per
// head goes over (published: uni-beef-judging-slides, carcasses are ranked on
// value). Where the amounts come from is told by the terms.
func ValuePolicy(grid price.Offer) Policy {
	t := clonedTerms(grid)
	return Policy{Name: "value", Grid: &t, Close: yieldOf(3 * oneGrade / 10)}
}

func clonedTerms(t price.Offer) price.Offer {
	t.Tiers, t.Yield, t.Weight, t.Attributes = slices.Clone(t.Tiers), slices.Clone(t.Yield), slices.Clone(t.Weight), slices.Clone(t.Attributes)
	return t
}

func (p Policy) clone() Policy {
	p.Tiers = slices.Clone(p.Tiers)
	for i := range p.Tiers {
		p.Tiers[i] = slices.Clone(p.Tiers[i])
	}
	p.Advantages, p.Ties = slices.Clone(p.Advantages), slices.Clone(p.Ties)
	if p.Grid != nil {
		t := clonedTerms(*p.Grid)
		p.Grid = &t
	}
	return p
}

// UnmarshalJSON reads a policy that encoding/json has written; a setting that is not
// there is not set, whatever the receiver had. The error tells of every setting that
// cannot be read and of every name that is no setting; the receiver is then left as
// it was, as it is by null.
func (p *Policy) UnmarshalJSON(b []byte) error {
	if string(b) == "null" {
		return nil
	}
	var v Policy
	if err := text.Struct(b, &v); err != nil {
		return fault.In("policy", err)
	}
	*p = v
	return nil
}

// IsZero reports whether no rule of the policy is set, whatever its name.
func (p Policy) IsZero() bool {
	return p.Grid == nil && !p.ByCwt && p.Bottom == 0 && p.BottomGroup == 0 && p.BottomDark == 0 && p.Tiers == nil && p.TopGroup == 0 && p.Advantages == nil &&
		units(p.Ceiling) == 0 && units(p.LeanSelect) == 0 && units(p.Exchange) == 0 && p.Darkness == 0 && p.Ties == nil && units(p.Close) == 0 && !p.Walk
}

// refusals collects what is wrong with a policy.
type refusals []error

func (r *refusals) add(path, field, value, allowed string, reason error) {
	*r = append(*r, &fault.FieldError{Path: path, Field: "policy: " + field, Value: value, Allowed: allowed, Err: reason})
}

// nth is the path of an element of a list, from 0.
func nth(list string, i int) string { return list + "[" + strconv.Itoa(i) + "]" }

// Check returns a [*placing.FieldError] for every rule of the policy that makes no
// sense, with the JSON name of the setting as its path; nil when there is none.
func (p Policy) Check() error {
	var all refusals
	if n := units(p.Close); n < 0 || n > 10*oneGrade {
		all.add("close", "close", p.Close.String(), "0 to 10", fault.ErrRange)
	}
	if p.Grid != nil {
		bare := p
		bare.Grid, bare.ByCwt, bare.Close = nil, false, grade.Yield{}
		if !bare.IsZero() {
			all.add("grid", "grid", p.Grid.Name, "no other rule beside it", fault.ErrRange)
		}
		_, err := price.New(*p.Grid)
		return fault.Join(append(all, fault.At("grid", "policy: grid", err))...)
	}
	p.checkTiers(&all)
	p.checkBottom(&all)
	p.checkTies(&all)
	return fault.Join(all...)
}

func (p *Policy) checkTiers(all *refusals) {
	seen := map[grade.Tier]bool{}
	for i, group := range p.Tiers {
		field := "tiers " + strconv.Itoa(i+1)
		if len(group) == 0 {
			all.add(nth("tiers", i), field, "", "one tier or more", fault.ErrMissing)
		}
		for j, t := range group {
			path := nth(nth("tiers", i), j)
			switch {
			case !t.IsValid():
				all.add(path, field, t.String(), "the tiers of the trade", fault.ErrUnknown)
			case seen[t]:
				all.add(path, field, t.String(), "every tier once", fault.ErrRepeated)
			}
			seen[t] = true
		}
	}
	var left []grade.Tier
	for t := grade.PrimeTier; t >= grade.BelowStandard; t-- {
		if !seen[t] {
			left = append(left, t)
		}
	}
	if left != nil {
		all.add("tiers", "tiers", named(left, ", ")+" not listed", "every tier once", fault.ErrMissing)
	}
	last := Advantage{}
	for i, a := range p.Advantages {
		path, field := nth("advantages", i), "advantage "+strconv.Itoa(i+1)
		if a.Tiers <= last.Tiers || a.Tiers > len(p.Tiers) {
			all.add(path+".tiers", field+": tiers", strconv.Itoa(a.Tiers), fmt.Sprintf("over %d, up to the %d tiers", last.Tiers, len(p.Tiers)), fault.ErrRange)
			a.Tiers = last.Tiers // the next is held to the last that is none at fault
		}
		if units(a.Yield) <= units(last.Yield) || units(a.Yield) > 10*oneGrade {
			all.add(path+".yield", field+": yield", a.Yield.String(), "over "+yieldOf(units(last.Yield)).String()+", up to 10", fault.ErrRange)
			a.Yield = last.Yield
		}
		last = a
	}
}

func (p *Policy) checkBottom(all *refusals) {
	if p.Bottom != 0 && !p.Bottom.IsValid() {
		all.add("bottom", "bottom", p.Bottom.String(), "a tier of the trade, or none", fault.ErrUnknown)
	}
	if g := p.BottomGroup; g != 0 && !g.IsValid() {
		all.add("bottom_group", "bottom group", g.String(), "A to E, or none", fault.ErrUnknown)
	}
	if p.BottomDark != 0 && !p.BottomDark.IsValid() {
		all.add("bottom_dark", "bottom dark", p.BottomDark.String(), "one third, two thirds or full, or none", fault.ErrUnknown)
	}
	if g := p.TopGroup; g != 0 && !g.IsValid() {
		all.add("top_group", "top group", g.String(), "A to E, or none", fault.ErrUnknown)
	}
	n := units(p.Ceiling)
	top, low, sel := p.tierOf(grade.TopChoice), p.tierOf(grade.LowChoice), p.tierOf(grade.SelectTier)
	switch {
	case n < 0 || n > 10*oneGrade || n%(oneGrade/10) != 0:
		all.add("ceiling", "ceiling", p.Ceiling.String(), "0 to 10 in whole tenths", fault.ErrRange)
	case n != 0 && sel >= 0 && max(top, low) >= sel:
		all.add("ceiling", "ceiling", p.Ceiling.String(), "none unless Select is a tier under Choice", fault.ErrRange)
	}
	if lean := units(p.LeanSelect); lean < 0 || lean > max(n, 0) {
		all.add("lean_select", "lean select", p.LeanSelect.String(), "0 to the ceiling", fault.ErrRange)
	}
}

func (p *Policy) checkTies(all *refusals) {
	if n := units(p.Exchange); n < 0 || n > 10*oneGrade || n%100 != 0 {
		all.add("exchange", "exchange", p.Exchange.String(), "0 to 10 with at most 6 places", fault.ErrRange)
	}
	if p.Darkness < 0 || p.Darkness > 500 {
		all.add("darkness", "darkness", strconv.Itoa(p.Darkness), "0 to 500 points", fault.ErrRange)
	}
	used := map[Ground]bool{}
	for i, g := range p.Ties {
		switch {
		case !slices.Contains(tieGrounds, g):
			all.add(nth("ties", i), "ties", g.String(), named(tieGrounds, ", "), fault.ErrUnknown)
		case used[g]:
			all.add(nth("ties", i), "ties", g.String(), "every ground once", fault.ErrRepeated)
		}
		used[g] = true
	}
}

// Steps explains the policy line by line, each with its source and standing. A
// setting that is not set, or 0, has no line.
func (p Policy) Steps() []cite.Step {
	var steps []cite.Step
	add := func(name, rule string, c cite.Citation) {
		steps = append(steps, cite.Step{Name: name, Rule: rule, Cite: c})
	}
	if p.Grid != nil {
		by := "per head"
		if p.ByCwt {
			by = "per cwt"
		}
		add("value", "the carcass worth more "+by+" goes over, on the grid "+strconv.Quote(p.Grid.Name), p.Grid.Cite)
	} else {
		p.rules(add)
	}
	if units(p.Close) == 0 {
		return steps // no pair is close, and the walk has no say
	}
	add("close", "a margin under "+p.Close.String()+" of a yield grade is close", p.CloseCite)
	if p.Walk {
		add("walk", "a close pair goes to the one that is trimmer and heavier muscled over the sites looked at", p.WalkCite)
	}
	return steps
}

func (p *Policy) rules(add func(name, rule string, c cite.Citation)) {
	if p.Bottom != 0 {
		add("bottom", p.Bottom.String()+" and under goes to the bottom, whatever its yield", p.BottomCite)
	}
	if p.BottomGroup != 0 {
		add("bottom", "maturity "+p.BottomGroup.String()+" or older goes to the bottom", p.BottomGroupCite)
	}
	if p.BottomDark != 0 {
		add("bottom", "a dark cutter of "+p.BottomDark.String()+" or more goes to the bottom", p.BottomDarkCite)
	}
	var tiers []string
	for i, group := range p.Tiers {
		tiers = append(tiers, strings.TrimSpace(strconv.Itoa(i+1)+" "+named(group, " ")))
	}
	add("quality", "the better tier goes over: "+strings.Join(tiers, "; "), p.TiersCite)
	if p.TopGroup != 0 {
		add("top Choice", "older than group "+p.TopGroup.String()+" counts as low choice", p.TopGroupCite)
	}
	for _, a := range p.Advantages {
		add("yield advantage", "a yield lower by "+a.Yield.String()+" or more goes over a carcass up to "+text.Count(a.Tiers, "tier")+" better", a.Cite)
	}
	if units(p.Ceiling) != 0 {
		add("Choice against Select", "no Select goes over a Choice with a yield under "+p.Ceiling.String(), p.CeilingCite)
	}
	if units(p.LeanSelect) != 0 {
		add("Choice against Select", "a Choice that is not top Choice, with a yield of "+p.Ceiling.String()+" or more, goes under a Select with a yield under "+p.LeanSelect.String(), p.CeilingCite)
	}
	if units(p.Exchange) != 0 {
		rule := "100 points of marbling against " + p.Exchange.String() + " of a yield grade"
		if p.Darkness != 0 {
			rule += "; a dark cutter's marbling counts " + text.Count(p.Darkness, "point") + " lower for each third"
		}
		add("within a tier", rule, p.ExchangeCite)
	}
	if len(p.Ties) > 0 {
		add("within a tier", "in order: "+named(p.Ties, ", "), p.TiesCite)
	}
}

// tierOf returns the place of a trade tier among the tiers, from 0 for the best.
func (p *Policy) tierOf(t grade.Tier) int {
	return slices.IndexFunc(p.Tiers, func(group []grade.Tier) bool { return slices.Contains(group, t) })
}

// lift returns the yield advantage that overcomes a gap of so many tiers, 0 for
// within a tier; ok is false where none does.
func (p *Policy) lift(tiers int) (yield int64, ok bool) {
	for _, a := range p.Advantages {
		if tiers <= a.Tiers {
			return units(a.Yield), true
		}
	}
	return 0, false
}

// tierWorth is what one tier is worth in yield: the first advantage, and without
// any a whole grade.
func (p *Policy) tierWorth() int64 {
	if len(p.Advantages) > 0 {
		return units(p.Advantages[0].Yield)
	}
	return oneGrade
}

// marblingWorth is what so many points of marbling are worth in yield: by the
// exchange, and without one a hundred are worth one tier.
func (p *Policy) marblingWorth(points int) int64 {
	return int64(points) * cmp.Or(units(p.Exchange), p.tierWorth()) / 100
}
