package class

import (
	"cmp"
	"slices"
	"strconv"

	"example.com/ribface/grade"
	"example.com/ribface/grade/price"
	"example.com/ribface/internal/fault"
	"example.com/ribface/internal/text"
)

// Decision is what the policy says of one pair of exhibits.
type Decision struct {
	Upper  int    `json:"upper"`           // goes over Lower by the policy; the lower number where it cannot tell
	Lower  int    `json:"lower"`           // the other
	Ground Ground `json:"ground,omitzero"` // what decides; zero where nothing does

	// Margin is how far the yields of the two would have to move, both moves added
	// together and everything else as it is, to turn the pair. It is at least
	// 0.00000001 for a pair that yields can turn, and not set for a firm pair and
	// one that the policy cannot tell apart.
	Margin grade.Yield `json:"margin,omitzero"`
	Firm   bool        `json:"firm"`  // no yield could turn the pair
	Close  bool        `json:"close"` // not firm, and the margin is under the policy's Close

	Tiers int         `json:"tiers"`         // tiers by which Upper is the better in quality; negative where Lower is
	Lead  grade.Yield `json:"lead,omitzero"` // by how much Upper is the lower in yield; negative where Lower is
}

// smallest is the least margin of a pair that is decided and not firm.
const smallest int64 = 1

// profile is what a policy looks at in one exhibit.
type profile struct {
	number   int
	tier     int // from the best, from 0
	bottom   bool
	choice   bool // of any part
	top      bool // top Choice by the policy
	selected bool // Select
	dark     int
	color    int // 0 where it was not looked at, as texture and firmness
	texture  int
	firmness int
	marbling int
	counted  int   // marbling as the exchange counts it
	yield    int64 // in units
	muscling int64 // the more the better
	trimness int64 // the more the better

	// Places over the sites of the walk, added up: from the fattest and from the
	// heaviest muscled, with the numbers of sites.
	fat, muscle           int64
	fatLooks, muscleLooks int64

	bands []worth // with a grid: what the exhibit is worth by its yield
	value price.Value
}

// worth is what an exhibit is worth with a yield from one end of a band to the
// other, in units.
type worth struct {
	from, to int64
	value    price.Value
}

func (p *Policy) profile(a grade.Assessment, w Walk, number int) profile {
	trade := a.Quality.Tier()
	c := a.Carcass
	m, _ := c.Adjusted()
	need, _ := m.Weight.RequiredRibeye()
	group := a.Maturity.Group()
	old := p.TopGroup != 0 && group > p.TopGroup
	f := profile{
		number:   number,
		bottom:   trade <= p.Bottom || p.BottomGroup != 0 && group >= p.BottomGroup || p.BottomDark != 0 && c.Lean.Dark >= p.BottomDark,
		choice:   trade == grade.TopChoice || trade == grade.LowChoice,
		top:      trade == grade.TopChoice && !old,
		selected: trade == grade.SelectTier,
		dark:     int(c.Lean.Dark),
		color:    int(c.Lean.Color),
		texture:  int(c.Lean.Texture),
		firmness: int(c.Lean.Firmness),
		marbling: int(c.Marbling),
		counted:  int(c.Marbling) - p.Darkness*int(c.Lean.Dark),
		yield:    units(a.Yield),
		muscling: m.Ribeye.Units() - need.Units(),
		trimness: -m.Fat.Units(),
	}
	if trade == grade.TopChoice && old {
		trade = grade.LowChoice
	}
	f.tier = p.tierOf(trade)
	f.fat, f.fatLooks = w.total(number, true)
	f.muscle, f.muscleLooks = w.total(number, false)
	if f.muscleLooks > 0 {
		f.muscling = -f.muscle
	}
	if f.fatLooks > 0 {
		f.trimness = f.fat
	}
	return f
}

// profiles looks at every exhibit of the class, exhibit 1 first. The policy must
// check. An exhibit for which the policy's grid has no price gives an error.
func (g Graded) profiles(p *Policy) ([]profile, error) {
	all := make([]profile, g.Len())
	for i, a := range g.assessed {
		all[i] = p.profile(a, g.given.Walk, i+1)
	}
	if p.Grid == nil {
		return all, nil
	}
	var problems []error
	grid, _ := price.New(*p.Grid) // it checks
	for i, a := range g.assessed {
		v, err := grid.Value(a)
		if err != nil {
			problems = append(problems, fault.At(g.path(i+1), "exhibit "+strconv.Itoa(i+1), err))
			continue
		}
		all[i].value = v
		for _, b := range p.Grid.Yield {
			// A yield inside the band, or the end that belongs to it.
			w := worth{from: units(b.From), to: units(b.To)}
			at := w.from
			switch {
			case !b.To.IsSet():
				w.to = mostYield
				at++
			case w.to-w.from > 1:
				at++
			case p.Grid.YieldEdge == price.EdgeLower:
				at = w.to
			}
			moved := a
			moved.Yield = yieldOf(at)
			w.value, _ = grid.Value(moved) // priced as it is, but for the band, and that has a price
			all[i].bands = append(all[i].bands, w)
		}
	}
	if err := fault.Join(problems...); err != nil {
		return nil, err
	}
	return all, nil
}

// mostYield is over every yield that measures within their limits can have.
const mostYield = 1000 * oneGrade

// by compares two profiles on one ground of the ties: over 0 where a is better.
func (a *profile) by(b *profile, g Ground) int {
	seen := func(x, y int) int {
		if x == 0 || y == 0 {
			return 0
		}
		return cmp.Compare(x, y)
	}
	switch g {
	case ByColor:
		return cmp.Or(cmp.Compare(b.dark, a.dark), seen(a.color, b.color))
	case ByDark:
		return cmp.Compare(b.dark, a.dark)
	case ByTexture:
		return seen(a.texture, b.texture)
	case ByFirmness:
		return seen(a.firmness, b.firmness)
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

// walked says whom the walk favors: over 0 for a, under 0 for b, 0 for neither, and
// by what. The mean place of the two over the sites of fat and that over the sites
// of muscling count alike.
func (a *profile) walked(b *profile) (favor int, g Ground) {
	trim, muscle := a.fat-b.fat, b.muscle-a.muscle
	if a.fatLooks > 0 && a.muscleLooks > 0 {
		trim, muscle = trim*a.muscleLooks, muscle*a.fatLooks
	}
	favor = cmp.Compare(trim+muscle, 0)
	g = ByTrimness
	if int64(favor)*muscle > int64(favor)*trim {
		g = ByMuscling
	}
	return favor, g
}

// Decide returns what the policy says of two exhibits of the class, whatever the
// placing makes of it. In full, for a pair a and b, where Y is the exact yield:
//
//   - Grid: the one that is worth more goes over, ground ByValue.
//   - Bottom: where one of the two belongs to the bottom the other goes over, firm,
//     ground ByBottom. An exhibit belongs there by its trade tier (Bottom), its
//     overall maturity (BottomGroup) or its dark cutting (BottomDark).
//   - Tiers: where b is in a lower tier, its advantage is Y(a) - Y(b). It needs the
//     Yield of the first of Advantages whose Tiers are no fewer than the gap. With
//     that or more b goes over, ground ByAdvantage; with less a does, ground
//     ByTier. Without such an entry a goes over, firm, ground ByTier.
//   - Ceiling, for a Choice a and a Select b: with Y(a) under Ceiling a goes over.
//     Otherwise, where a is not top Choice and Y(b) is under LeanSelect, b does.
//     Otherwise they go by the tiers. The ground is ByCeiling where the tiers alone
//     would have it the other way.
//   - One tier with Exchange: the worth of a is its marbling, less Darkness for
//     each third of dark cutting, times Exchange / 100, less Y(a). The greater
//     worth goes over, the ground being the one of ByMarbling and ByYield that
//     speaks for the winner by more, of equal ones ByMarbling; ByDark stands for
//     marbling where the winner has no more of it but for the dark cutting. Equal
//     worth leaves it to Ties.
//   - One tier without: the first of Ties in which the two differ. Where that
//     ground comes before ByYield, or ByYield is no ground of the policy, the other
//     one goes over with the Yield of the first of Advantages or more, ground
//     ByAdvantage.
//
// The walk, with Walk: under the tiers and the exchange there is a line, the
// advantage needed or equal worth. Where the two are less than Close from it, the
// one that the walk favors goes over: whose mean place from the fattest over the
// sites of fat less its mean place from the heaviest over the sites of muscling is
// the greater, in halves of a place; a group of sites that nobody looked at counts
// nothing. The ground is ByMuscling or ByTrimness, whichever speaks for it by more,
// of equal ones ByTrimness. Where the walk favors neither, the line stands. So a
// walk moves the line by Close.
//
// The margin is the distance from that line: by tiers | Y(a) - Y(b) - needed |, by
// exchange the difference in worth, either way with the line moved by Close against
// the one whom the walk favors. With a ceiling it is the least of the ways round,
// written with c and s for the yields of Choice and Select, C and S for Ceiling and
// LeanSelect, n for the advantage needed:
//
//   - Choice over: max(C-c, 0) + max(s-S, 0) where LeanSelect applies, or
//     max(C-c, n-(c-s)) where an advantage does. Where neither does it is firm.
//   - Select over: c-C, or max(S-s, c-s-n, 0), each of the two latter where it
//     applies.
//
// By ties: the difference in yield for ByYield; 0.00000001 for what decides after
// it; else the distance from the first advantage, and without any the pair is firm.
// On a grid: the least that the two yields must move, added, to bands of yield in
// which the other is worth more; where there are none it is firm. A margin of 0
// becomes 0.00000001: a line may stand on either side.
//
// An exhibit that is not in the class, one given twice, a policy that does not
// check and a grid without a price for an exhibit give a [*placing.FieldError].
func (g Graded) Decide(p Policy, a, b int) (Decision, error) {
	if err := g.pair(a, b); err != nil {
		return Decision{}, err
	}
	if err := p.Check(); err != nil {
		return Decision{}, err
	}
	all, err := g.profiles(&p)
	if err != nil {
		return Decision{}, err
	}
	return p.prefer(&all[a-1], &all[b-1]), nil
}

// pair refuses what are not two exhibits of the class.
func (g Graded) pair(a, b int) error {
	for _, e := range [...]int{a, b} {
		if e < 1 || e > g.Len() {
			return &fault.FieldError{Field: "exhibit", Value: itoa(e), Allowed: "1 to " + itoa(g.Len()), Err: fault.ErrRange}
		}
	}
	if a == b {
		return &fault.FieldError{Field: "exhibit", Value: itoa(b), Allowed: "two exhibits", Err: fault.ErrRepeated}
	}
	return nil
}

// prefer decides a pair.
func (p *Policy) prefer(a, b *profile) Decision {
	if a.number > b.number {
		a, b = b, a
	}
	d := p.weigh(a, b)
	d.Close = !d.Firm && units(d.Margin) < units(p.Close)
	return d
}

// neither is the decision on two that cannot be told apart.
func neither(a, b *profile) Decision {
	return Decision{Upper: a.number, Lower: b.number, Tiers: b.tier - a.tier, Lead: yieldOf(b.yield - a.yield)}
}

// over is the decision that u goes over l.
func over(u, l *profile, g Ground, margin int64) Decision {
	d := neither(u, l)
	d.Ground, d.Margin = g, yieldOf(max(margin, smallest))
	return d
}

// firmly is the decision that u goes over l whatever the yields.
func firmly(u, l *profile, g Ground) Decision {
	d := neither(u, l)
	d.Ground, d.Firm = g, true
	return d
}

func (p *Policy) weigh(a, b *profile) Decision {
	if p.Grid != nil {
		return p.byValue(a, b)
	}
	if a.bottom != b.bottom {
		if a.bottom {
			a, b = b, a
		}
		return firmly(a, b, ByBottom)
	}
	if a.tier > b.tier {
		a, b = b, a
	}
	switch {
	case a.tier == b.tier && units(p.Exchange) != 0:
		return p.byExchange(a, b)
	case a.tier == b.tier:
		return p.byTies(a, b)
	case units(p.Ceiling) != 0 && a.choice && b.selected:
		return p.byCeiling(a, b)
	default:
		return p.byTiers(a, b)
	}
}

// line is a line that yields can cross: at is how far the first of a pair is on its
// own side of it, negative for the other side.
type line struct {
	at    int64
	upper bool // on the line the first goes over
}

// walk moves the line by what the walk says. favored is the ground on which the
// walk decides the pair, zero where it does not.
func (p *Policy) walk(a, b *profile, l line) (moved line, favored Ground) {
	if !p.Walk {
		return l, 0
	}
	favor, g := a.walked(b)
	limit := units(p.Close)
	if favor == 0 || limit == 0 {
		return l, 0
	}
	if max(l.at, -l.at) < limit {
		favored = g
	}
	if favor > 0 {
		return line{l.at + limit, false}, favored
	}
	return line{l.at - limit, true}, favored
}

// first reports whether the first of the pair goes over.
func (l line) first() bool { return l.at > 0 || l.at == 0 && l.upper }

// byTiers decides a pair of which a is in the better tier.
func (p *Policy) byTiers(a, b *profile) Decision {
	need, ok := p.lift(b.tier - a.tier)
	if !ok {
		return firmly(a, b, ByTier)
	}
	l, favored := p.walk(a, b, line{at: need - (a.yield - b.yield)})
	if l.first() {
		return over(a, b, cmp.Or(favored, ByTier), l.at)
	}
	return over(b, a, cmp.Or(favored, ByAdvantage), -l.at)
}

// byCeiling decides a Choice c and a Select s of a lower tier.
func (p *Policy) byCeiling(c, s *profile) Decision {
	ceiling, lean := units(p.Ceiling), units(p.LeanSelect)
	need, lifts := p.lift(s.tier - c.tier)
	leans := !c.top && lean != 0
	l, favored := p.walk(c, s, line{at: need - (c.yield - s.yield)})
	byTiers := !lifts || l.first() // Choice goes over by the tiers alone
	settled := c.yield < ceiling || leans && s.yield < lean
	choice := c.yield < ceiling || !settled && byTiers
	ground := ByAdvantage
	if choice {
		ground = ByTier
	}
	switch {
	case choice != byTiers:
		ground = ByCeiling
	case lifts && !settled: // else the walk has no part in it
		ground = cmp.Or(favored, ground)
	}
	if !choice {
		back := int64(0) // what keeps Select from being lifted
		if lifts {
			back = max(back, -l.at)
		}
		if leans {
			back = max(back, lean-s.yield)
		}
		return over(s, c, ground, min(c.yield-ceiling, back))
	}
	var ways []int64
	if leans {
		ways = append(ways, max(ceiling-c.yield, 0)+max(s.yield-lean, 0))
	}
	if lifts {
		ways = append(ways, max(ceiling-c.yield, l.at))
	}
	if ways == nil {
		return firmly(c, s, ByTier)
	}
	return over(c, s, ground, slices.Min(ways))
}

// byExchange decides a pair of one tier by marbling against yield.
func (p *Policy) byExchange(a, b *profile) Decision {
	marbling := p.marblingWorth(a.counted - b.counted)
	yield := b.yield - a.yield
	l, favored := p.walk(a, b, line{at: marbling + yield})
	if marbling+yield == 0 && favored == 0 {
		u, d, at := p.tie(a, b)
		if at < 0 {
			return neither(a, b)
		}
		return over(u, d, p.Ties[at], 0)
	}
	u, d := a, b
	if !l.first() {
		u, d, marbling, yield = b, a, -marbling, -yield
	}
	g := ByMarbling
	switch {
	case yield > marbling:
		g = ByYield
	case u.marbling <= d.marbling:
		g = ByDark
	}
	return over(u, d, cmp.Or(favored, g), max(l.at, -l.at))
}

// tie finds the first of the ties in which two differ, and puts the better first; at
// is -1 where they differ in none.
func (p *Policy) tie(a, b *profile) (better, other *profile, at int) {
	for i, g := range p.Ties {
		switch c := a.by(b, g); {
		case c > 0:
			return a, b, i
		case c < 0:
			return b, a, i
		}
	}
	return a, b, -1
}

// byTies decides a pair of one tier by the first ground in which they differ.
func (p *Policy) byTies(a, b *profile) Decision {
	a, b, at := p.tie(a, b)
	if at < 0 {
		return neither(a, b)
	}
	g := p.Ties[at]
	need, ok := p.lift(0)
	advantage := a.yield - b.yield // of b
	switch {
	case g == ByYield:
		return over(a, b, g, -advantage)
	case slices.Contains(p.Ties[:at], ByYield):
		return over(a, b, g, 0)
	case !ok:
		return firmly(a, b, g)
	case advantage >= need:
		return over(b, a, ByAdvantage, advantage-need)
	default:
		return over(a, b, g, need-advantage)
	}
}

// byValue decides a pair by the grid.
func (p *Policy) byValue(a, b *profile) Decision {
	compare := price.ByHead
	if p.ByCwt {
		compare = price.ByCwt
	}
	switch c := compare(a.value, b.value); {
	case c == 0:
		return neither(a, b)
	case c < 0:
		a, b = b, a
	}
	margin := int64(-1)
	away := func(f *profile, w worth) int64 {
		if compare(w.value, f.value) == 0 {
			return 0
		}
		return max(w.from-f.yield, f.yield-w.to, 0)
	}
	for _, x := range a.bands {
		for _, y := range b.bands {
			if compare(x.value, y.value) < 0 {
				if m := away(a, x) + away(b, y); margin < 0 || m < margin {
					margin = m
				}
			}
		}
	}
	if margin < 0 {
		return firmly(a, b, ByValue)
	}
	return over(a, b, ByValue, margin)
}

// String says what decided the pair, as "3 over 1 by quality tier, 1 tier better in
// quality, yield higher by 0.4; margin 1.1".
func (d Decision) String() string {
	if d.Ground == 0 {
		return itoa(d.Upper) + " and " + itoa(d.Lower) + " cannot be told apart by the policy"
	}
	tiers, yield, margin := ", of one tier", ", equal in yield", "; margin "+d.Margin.String()
	switch {
	case d.Ground == ByValue: // a grid knows no tiers
		tiers = ""
	case d.Tiers > 0:
		tiers = ", " + text.Count(d.Tiers, "tier") + " better in quality"
	case d.Tiers < 0:
		tiers = ", " + text.Count(-d.Tiers, "tier") + " lower in quality"
	}
	switch lead := units(d.Lead); {
	case lead > 0:
		yield = ", yield lower by " + d.Lead.String()
	case lead < 0:
		yield = ", yield higher by " + yieldOf(-lead).String()
	}
	switch {
	case d.Firm:
		margin = "; no yield could turn it"
	case d.Close:
		margin += ", close"
	}
	return itoa(d.Upper) + " over " + itoa(d.Lower) + " by " + d.Ground.String() + tiers + yield + margin
}
