package class_test

import (
	"cmp"
	"math/rand/v2"
	"slices"
	"testing"

	"example.com/ribface/grade"
	"example.com/ribface/internal/testkit"
	"example.com/ribface/maturity"
	"example.com/ribface/placing"
	"example.com/ribface/placing/class"
)

// judged is what the documentation of Graded.Decide speaks of in one exhibit.
type judged struct {
	number                         int
	tier                           int // 1 is the best
	choice, topChoice, slct, under bool
	marbling, dark                 int64
	color, texture, firmness       int64
	yield                          int64
	fat, muscle                    int64 // places added up
	fats, muscles                  int64 // sites
	spare, trim                    int64 // for the last order of equal ones
}

const tenth = int64(grade.OneGrade) / 10

// secondLook reads the exhibits of a class for the default policy.
func secondLook(g class.Graded) []judged {
	var all []judged
	for e := range g.Exhibits() {
		a := g.Assessment(e.Number)
		old := a.Maturity.Group() > maturity.A
		j := judged{number: e.Number, marbling: int64(a.Carcass.Marbling), dark: int64(a.Carcass.Lean.Dark), color: int64(a.Carcass.Lean.Color),
			texture: int64(a.Carcass.Lean.Texture), firmness: int64(a.Carcass.Lean.Firmness), yield: a.Yield.Units()}
		switch a.Quality.Tier() {
		case grade.PrimeTier:
			j.tier = 1
		case grade.TopChoice:
			j.tier, j.choice, j.topChoice = 2, true, true
			if old {
				j.tier, j.topChoice = 3, false
			}
		case grade.LowChoice:
			j.tier, j.choice = 3, true
		case grade.SelectTier:
			j.tier, j.slct = 4, true
		case grade.StandardTier:
			j.tier, j.under = 5, true
		default:
			j.tier, j.under = 6, true
		}
		j.under = j.under || a.Maturity.Group() >= maturity.C || a.Carcass.Lean.Dark >= grade.DarkTwoThirds
		m, _ := a.Carcass.Adjusted()
		need, _ := m.Weight.RequiredRibeye()
		j.spare, j.trim = m.Ribeye.Units()-need.Units(), -m.Fat.Units()
		for _, l := range g.Class().Walk {
			if l.Site.Fat() {
				j.fat, j.fats = j.fat+int64(l.Order.Place(e.Number)), j.fats+1
			} else {
				j.muscle, j.muscles = j.muscle+int64(l.Order.Place(e.Number)), j.muscles+1
			}
		}
		if j.muscles > 0 {
			j.spare = -j.muscle
		}
		if j.fats > 0 {
			j.trim = j.fat
		}
		all = append(all, j)
	}
	return all
}

// secondWalk says whom the walk favors, in 144ths of a half place.
func secondWalk(a, b judged) (trim, muscle int64) {
	if a.fats > 0 {
		trim = (a.fat - b.fat) * (5040 / a.fats) * 11 * 13
	}
	if a.muscles > 0 {
		muscle = (b.muscle - a.muscle) * (5040 / a.muscles) * 11 * 13
	}
	return trim, muscle
}

// secondChoice says which of two goes over and on what ground, by the default
// policy, with the yields given: 1 for a, -1 for b, 0 for neither.
func secondChoice(a, b judged) (int, class.Ground) {
	if a.under != b.under {
		if b.under {
			return 1, class.ByBottom
		}
		return -1, class.ByBottom
	}
	trim, muscle := secondWalk(a, b)
	favor := cmp.Compare(trim+muscle, 0)
	ground := class.ByTrimness
	if favor > 0 && muscle > trim || favor < 0 && muscle < trim {
		ground = class.ByMuscling
	}
	if a.tier == b.tier {
		worth := (a.marbling-b.marbling-100*(a.dark-b.dark))*tenth*5/100 + b.yield - a.yield
		if favor != 0 && worth < 3*tenth && worth > -3*tenth {
			return favor, ground
		}
		if worth == 0 {
			for _, t := range []struct {
				a, b int64
				g    class.Ground
			}{{9 - a.dark, 9 - b.dark, class.ByColor}, {a.color, b.color, class.ByColor}, {a.texture, b.texture, class.ByTexture}, {a.firmness, b.firmness, class.ByFirmness}} {
				if t.a != t.b && t.a != 0 && t.b != 0 {
					return cmp.Compare(t.a, t.b), t.g
				}
			}
			return 0, 0
		}
		side := cmp.Compare(worth, 0)
		byYield := int64(side) * (b.yield - a.yield)
		byMarbling := int64(side)*worth - byYield
		switch {
		case byYield > byMarbling:
			return side, class.ByYield
		case int64(side)*(a.marbling-b.marbling) <= 0:
			return side, class.ByDark
		}
		return side, class.ByMarbling
	}
	if a.tier > b.tier {
		side, ground := secondChoice(b, a)
		return -side, ground
	}
	need := map[int]int64{1: 15 * tenth, 2: 20 * tenth, 3: 30 * tenth}[b.tier-a.tier]
	if need == 0 {
		return 1, class.ByTier
	}
	tiers, why := 1, class.ByTier
	if a.yield-b.yield >= need {
		tiers, why = -1, class.ByAdvantage
	}
	walked, because := tiers, why
	if off := a.yield - b.yield - need; favor != 0 && off < 3*tenth && off > -3*tenth {
		walked, because = favor, ground
	}
	if a.choice && b.slct {
		rule := 0
		if a.yield < 36*tenth {
			rule = 1
		} else if !a.topChoice && b.yield < 30*tenth {
			rule = -1
		}
		switch rule {
		case 0:
			return walked, because
		case walked:
			return rule, map[int]class.Ground{1: class.ByTier, -1: class.ByAdvantage}[rule]
		default:
			return rule, class.ByCeiling
		}
	}
	return walked, because
}

// secondMargin finds how far the yields must move by trying: every line that the
// rules know, from both sides and from on it. It returns -1 where nothing turns the
// pair.
func secondMargin(a, b judged) int64 {
	was, _ := secondChoice(a, b)
	least := int64(-1)
	try := func(x, y int64) {
		c, d := a, b
		c.yield, d.yield = x, y
		if now, _ := secondChoice(c, d); now == -was {
			away := max(x-a.yield, a.yield-x) + max(y-b.yield, b.yield-y)
			if least < 0 || away < least {
				least = away
			}
		}
	}
	line := (a.marbling - b.marbling - 100*(a.dark-b.dark)) * tenth * 5 / 100
	if gap := b.tier - a.tier; gap != 0 {
		line = map[int]int64{1: 15, 2: 20, 3: 30, -1: -15, -2: -20, -3: -30}[gap] * tenth
	}
	leads := []int64{line, line - 3*tenth, line + 3*tenth}
	var lines []int64
	if a.tier != b.tier {
		lines = []int64{36 * tenth, 30 * tenth}
	}
	near := func(at int64) []int64 { return []int64{at - 1, at, at + 1} }
	xs, ys := []int64{a.yield}, []int64{b.yield}
	for _, l := range lines {
		xs, ys = append(xs, near(l)...), append(ys, near(l)...)
	}
	for _, x := range xs {
		for _, y := range ys {
			try(x, y)
		}
		for _, t := range leads {
			for _, y := range near(x - t) {
				try(x, y)
			}
		}
	}
	for _, y := range ys {
		for _, t := range leads {
			for _, x := range near(y + t) {
				try(x, y)
			}
		}
	}
	return least
}

// secondCuts proposes cuts from the decisions on the neighbors.
func secondCuts(neighbors []class.Decision) (asked int, cuts []int) {
	var weights []int64
	mean := int64(0) // in units, of 1.5 at the most
	for _, d := range neighbors {
		w := d.Margin.Units()
		if d.Firm || w > 30*tenth {
			w = 30 * tenth
		}
		weights = append(weights, w)
		mean += min(w, 15*tenth)
	}
	n := int64(len(weights))
	for asked = 5; int64(2*asked-9)*15*tenth*n <= 2*10*mean; asked++ {
	}
	limit := placing.LimitExact
	if n == 3 {
		limit = placing.LimitColorado
	}
	c, _ := placing.SpreadCuts(asked, weights, limit)
	cuts = slices.Collect(c.All())
	last := len(cuts) - 1
	for neighbors[last].Firm && cuts[last] < 2 {
		from, keep := -1, 1
		if len(cuts) > 5 {
			keep = 0
		}
		for i := range last {
			if cuts[i] <= keep {
				continue
			}
			middle := func(k int) int { return max(2*k-last, last-2*k) }
			if from < 0 || cuts[i] > cuts[from] || cuts[i] == cuts[from] && middle(i) < middle(from) {
				from = i
			}
		}
		if from < 0 {
			break
		}
		cuts[from]--
		cuts[last]++
	}
	return asked, cuts
}

// randomClass draws a class whose exhibits stand near each other and on lines.
func randomClass(r *rand.Rand) class.Class {
	pick := func(n ...int) int { return n[r.IntN(len(n))] }
	n := 2 + r.IntN(4)
	c := class.Class{Rules: grade.Rules{Edition: grade.Current}, Posted: grade.Pounds(800)}
	for i := range n {
		x := grade.Carcass{
			Sex:      grade.Steer,
			Marbling: grade.Marbling(370 + 10*r.IntN(45)),
			Maturity: maturity.Evidence{Skeletal: maturity.Score(pick(140, 150, 150, 150, 150, 150, 160, 160, 230, 240, 330)), Lean: maturity.Score(pick(140, 150))},
			Lean:     grade.Lean{Dark: grade.DarkCut(pick(0, 0, 0, 0, 0, 0, 0, 0, 0, 1, 1, 1, 2, 3)), Color: grade.Color(pick(0, 0, 7, 8)), Texture: grade.Texture(pick(0, 4, 5)), Firmness: grade.Firmness(pick(0, 0, 6, 7))},
			Measures: grade.Measures{Fat: grade.Inches(float64(2+r.IntN(22)) / 20), Ribeye: grade.SquareInches(float64(pick(44, 50, 52, 52, 54, 58)) / 4), KPH: grade.Percent(2.5)},
		}
		if i > 0 && r.IntN(4) == 0 {
			x.Marbling, x.Measures = c.Exhibits[i-1].Carcass.Marbling, c.Exhibits[i-1].Carcass.Measures
		}
		c.Exhibits = append(c.Exhibits, class.Exhibit{Number: i + 1, Carcass: x})
	}
	if r.IntN(2) == 0 {
		for s := range class.Sites() {
			if r.IntN(8) == 0 {
				scores := make([]int, n)
				for i := range scores {
					scores[i] = r.IntN(n)
				}
				order, _ := placing.RankScores(scores...)
				c.Walk = append(c.Walk, class.Look{Site: s, Order: order})
			}
		}
	}
	return c
}

// TestSecondImplementation holds decisions, margins, placings and cuts of the
// default policy to an implementation written from the documentation alone, which
// finds margins by trying and placings by going through all orders.
func TestSecondImplementation(t *testing.T) {
	classes := 100_000
	if !testkit.Exhaustive() {
		classes = 1_000
	}
	r := rand.New(rand.NewPCG(12, 3))
	grounds, cycles, firm, close := map[class.Ground]int{}, 0, 0, 0
	for range classes {
		c := randomClass(r)
		g, p := placed(t, c)
		cycles += len(p.Cycles)
		look := secondLook(g)
		for _, d := range p.Decisions {
			u, l := look[d.Upper-1], look[d.Lower-1]
			side, ground := secondChoice(u, l)
			if ground != d.Ground || side != 1 && ground != 0 || d.Tiers != l.tier-u.tier || d.Lead.Units() != l.yield-u.yield {
				t.Fatalf("%v, second: %d by %v\n%+v\n%+v", d, side, ground, u, l)
			}
			grounds[ground]++
			if ground == 0 {
				if d.Margin.Units() != 0 || d.Firm || !d.Close || d.Upper > d.Lower {
					t.Fatalf("%+v", d)
				}
				continue
			}
			margin := secondMargin(u, l)
			switch m := d.Margin.Units(); {
			case margin < 0:
				firm++
				if !d.Firm || d.Close || m != 0 {
					t.Fatalf("nothing turns %+v", d)
				}
			case d.Firm || margin-m > 2 || m > max(margin, 1) || d.Close != (m < 3*tenth):
				t.Fatalf("%+v: turned by %d", d, margin)
			case d.Close:
				close++
			}
			// The other way round it is the same.
			if back, why := secondChoice(l, u); back != -side || why != ground {
				t.Fatalf("%v turned round: %d by %v", d, back, why)
			}
		}
		if want := secondOrder(look, p); p.Order != want {
			t.Fatalf("placed %v, second: %v\n%v", p.Order, want, p)
		}
		cuts, err := p.ProposeCuts(p.Order, 0)
		if err != nil {
			t.Fatal(err)
		}
		asked, want := secondCuts(p.Neighbors())
		if cuts.Asked != asked || !slices.Equal(slices.Collect(cuts.Cuts.All()), want) {
			t.Fatalf("cuts %+v, second: %d, %v", cuts, asked, want)
		}
	}
	for _, by := range []class.Ground{0, class.ByTier, class.ByAdvantage, class.ByBottom, class.ByColor, class.ByMarbling, class.ByYield, class.ByMuscling, class.ByTrimness, class.ByCeiling, class.ByDark, class.ByTexture, class.ByFirmness} {
		if grounds[by] == 0 {
			t.Errorf("no pair by %v", by)
		}
	}
	if cycles == 0 || firm == 0 || close == 0 {
		t.Errorf("%d cycles, %d firm, %d close", cycles, firm, close)
	}
	t.Logf("%d classes, %d cycles, %d firm and %d close pairs; grounds %v", classes, cycles, firm, close, grounds)
}

// secondOrder goes through all orders, the better exhibits first, for the first
// that goes against no firm decision and against the least margin.
func secondOrder(look []judged, p class.Placing) placing.Order {
	sorted := slices.Clone(look)
	slices.SortFunc(sorted, func(a, b judged) int {
		return cmp.Or(cmp.Compare(a.tier, b.tier), cmp.Compare(a.dark, b.dark), cmp.Compare(b.marbling, a.marbling), cmp.Compare(a.yield, b.yield),
			cmp.Compare(b.spare, a.spare), cmp.Compare(b.trim, a.trim), cmp.Compare(a.number, b.number))
	})
	var best placing.Order
	least := int64(-1)
	for o := range placing.Orders(len(look)) { // in rising order of the numbers
		list := make([]int, o.Len())
		for i := range list {
			list[i] = sorted[o.At(i+1)-1].number
		}
		named, _ := placing.NewOrder(list...)
		against := int64(0)
		for _, d := range p.Decisions {
			if d.Ground != 0 && named.Place(d.Upper) > named.Place(d.Lower) {
				against += d.Margin.Units()
				if d.Firm {
					against += 1 << 50
				}
			}
		}
		if least < 0 || against < least {
			best, least = named, against
		}
	}
	return best
}
