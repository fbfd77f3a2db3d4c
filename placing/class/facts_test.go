package class_test

import (
	"errors"
	"math/rand/v2"
	"reflect"
	"slices"
	"strconv"
	"strings"
	"testing"

	"example.com/ribface/grade"
	"example.com/ribface/internal/testkit"
	"example.com/ribface/maturity"
	"example.com/ribface/placing"
	"example.com/ribface/placing/class"
	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

// What follows down to secondReasons is a second implementation of the reasons,
// written from their documentation alone. It counts in its own way: in whole
// numbers of 0.00000001 yield grade.

// known is one trait of one exhibit. The higher, the better.
type known struct {
	trait grade.Trait
	site  class.Site
	high  int64
	shown string
}

func lookAt(g class.Graded, e int) (all []known) {
	a := g.Assessment(e)
	c := a.Carcass
	m, err := c.Adjusted()
	if err != nil {
		panic(err)
	}
	put := func(t grade.Trait, high int64, shown string, seen bool) {
		if seen {
			all = append(all, known{t, 0, high, shown})
		}
	}
	put(grade.TraitQuality, int64(a.Quality), a.Quality.String(), true)
	put(grade.TraitDark, -int64(c.Lean.Dark), "dark cutting "+c.Lean.Dark.String(), true)
	put(grade.TraitMarbling, int64(c.Marbling), c.Marbling.String(), true)
	put(grade.TraitYield, -a.Yield.Units(), a.Yield.String(), true)
	put(grade.TraitFat, -m.Fat.Units(), m.Fat.String(), true)
	put(grade.TraitRibeye, m.Ribeye.Units(), m.Ribeye.String(), true)
	put(grade.TraitKPH, -m.KPH.Units(), m.KPH.String(), true)
	put(grade.TraitWeight, -m.Weight.Units(), m.Weight.String(), true)
	put(grade.TraitSkeletal, -int64(c.Maturity.Skeletal), c.Maturity.Skeletal.String(), true)
	bone := int64(0)
	if p, ok := c.Maturity.Buttons.Percent(); ok && p >= 10 {
		bone = int64(p)
	}
	put(grade.TraitButtons, -bone, c.Maturity.Buttons.String(), c.Maturity.Buttons != 0)
	put(grade.TraitLean, -int64(c.Maturity.Lean), c.Maturity.Lean.String(), c.Maturity.Lean != 0)
	put(grade.TraitColor, int64(c.Lean.Color), c.Lean.Color.String(), c.Lean.Color != 0)
	put(grade.TraitTexture, int64(c.Lean.Texture), c.Lean.Texture.String(), c.Lean.Texture != 0)
	put(grade.TraitFirmness, int64(c.Lean.Firmness), c.Lean.Firmness.String(), c.Lean.Firmness != 0)
	for s := range class.Sites() {
		if r, ok := g.Class().Walk.At(s); ok {
			k := known{grade.TraitSite, s, int64(r.Place(e)), "place " + r.Place(e).String() + " from the "}
			if s.Fat() {
				k.shown += "fattest"
			} else {
				k.high, k.shown = -k.high, k.shown+"heaviest"
			}
			all = append(all, k)
		}
	}
	return all
}

// secondFact is what the documentation says of a trait in which a is better.
func secondFact(g class.Graded, a, b int, x, y known) class.Fact {
	u, l := g.Assessment(a), g.Assessment(b)
	f := class.Fact{Trait: x.trait, Site: x.site, Better: a, Worse: b, BetterValue: x.shown, WorseValue: y.shown}
	by := x.high - y.high
	weight := int64(0)
	marbling := int64(u.Carcass.Marbling) - int64(l.Carcass.Marbling)
	switch x.trait {
	case grade.TraitQuality:
		switch tiers := int(u.Quality.Tier()) - int(l.Quality.Tier()); {
		case tiers >= 3:
			weight = 300_000_000
		case tiers == 2:
			weight = 200_000_000
		case tiers == 1:
			weight = 150_000_000
		}
		weight = max(weight, marbling*500_000)
	case grade.TraitMarbling:
		weight = by * 500_000
	case grade.TraitDark:
		weight = by * 50_000_000
	case grade.TraitYield:
		weight = by
	case grade.TraitFat: // 2.5 a whole inch of 10,000 units
		weight = by * 25_000
	case grade.TraitRibeye: // 0.32 a square inch
		weight = by * 3_200
	case grade.TraitKPH: // 0.2 a percent
		weight = by * 2_000
	case grade.TraitWeight: // 0.0038 a pound
		weight = by * 38
	}
	f.Weight = grade.YieldUnits(weight)
	from := func(slight, plain, wide int64) class.Size {
		switch {
		case by >= wide:
			return class.SizeWide
		case by >= plain:
			return class.SizePlain
		case by >= slight:
			return class.SizeSlight
		}
		return 0
	}
	groups := func(young, old maturity.Group) class.Size {
		switch {
		case young >= old:
			return 0
		case young+1 == old:
			return class.SizePlain
		}
		return class.SizeWide
	}
	never := int64(1) << 60
	switch x.trait {
	case grade.TraitQuality:
		switch u.Quality.Grade() - l.Quality.Grade() {
		case 0:
			f.Size = class.SizeSlight
		case 1:
			f.Size = class.SizePlain
		default:
			f.Size = class.SizeWide
		}
	case grade.TraitDark:
		f.Size = from(1, 1, 2)
	case grade.TraitMarbling:
		f.Size = from(10, 40, 150)
	case grade.TraitYield:
		f.Size = from(15_000_000, 50_000_000, 150_000_000)
	case grade.TraitFat:
		f.Size = from(500, 1000, 3000)
	case grade.TraitRibeye:
		f.Size = from(4000, 8000, 25_000)
	case grade.TraitKPH:
		f.Size = from(5000, 10_000, 20_000)
	case grade.TraitSkeletal:
		f.Size = groups(u.Carcass.Maturity.Skeletal.Group(), l.Carcass.Maturity.Skeletal.Group())
	case grade.TraitLean:
		f.Size = groups(u.Carcass.Maturity.Lean.Group(), l.Carcass.Maturity.Lean.Group())
	case grade.TraitButtons:
		f.Size = groups(u.Carcass.Maturity.Buttons.Group(), l.Carcass.Maturity.Buttons.Group())
	case grade.TraitColor, grade.TraitTexture, grade.TraitFirmness:
		f.Size = from(1, 1, 3)
	case grade.TraitSite:
		f.Size = from(1, 1, never)
	}
	return f
}

// sorted orders by weight, the heaviest first, in rounds of taking the next.
func sorted(all []class.Fact) (out []class.Fact) {
	left := slices.Clone(all)
	for len(left) > 0 {
		next := 0
		for i := range left {
			if left[i].Weight.Compare(left[next].Weight) > 0 {
				next = i
			}
		}
		out = append(out, left[next])
		left = slices.Delete(left, next, next+1)
	}
	return out
}

func secondFacts(g class.Graded, a, b int) []class.Fact {
	var all []class.Fact
	theirs := lookAt(g, b)
	for _, x := range lookAt(g, a) {
		for _, y := range theirs {
			if x.trait == y.trait && x.site == y.site && x.high > y.high {
				all = append(all, secondFact(g, a, b, x, y))
			}
		}
	}
	return sorted(all)
}

var headingOf = map[grade.Trait]class.Heading{
	grade.TraitQuality: class.OnQuality, grade.TraitDark: class.OnQuality, grade.TraitMarbling: class.OnQuality, grade.TraitSkeletal: class.OnQuality,
	grade.TraitButtons: class.OnQuality, grade.TraitLean: class.OnQuality, grade.TraitColor: class.OnQuality, grade.TraitTexture: class.OnQuality, grade.TraitFirmness: class.OnQuality,
	grade.TraitYield: class.OnCutability, grade.TraitWeight: class.OnCutability,
	grade.TraitFat: class.OnTrimness, grade.TraitKPH: class.OnTrimness, grade.TraitRibeye: class.OnMuscling,
}

// secondGroups puts facts under headings: first the given one, then the heaviest.
func secondGroups(facts []class.Fact, first class.Heading) (out []class.Support) {
	under := map[class.Heading][]class.Fact{}
	weigh := map[class.Heading]int64{}
	for _, f := range facts {
		h := headingOf[f.Trait]
		if f.Trait == grade.TraitSite {
			h = class.OnMuscling
			if f.Site.Fat() {
				h = class.OnTrimness
			}
		}
		under[h] = append(under[h], f)
		if h == class.OnTrimness || h == class.OnMuscling {
			weigh[h] += f.Weight.Units()
		} else {
			weigh[h] = max(weigh[h], f.Weight.Units())
		}
	}
	if under[first] != nil {
		out = append(out, class.Support{On: first, Facts: under[first]})
		delete(under, first)
	}
	for len(under) > 0 {
		best := class.Heading(0)
		for h := class.OnQuality; h <= class.OnMuscling; h++ {
			if under[h] != nil && (best == 0 || weigh[h] > weigh[best]) {
				best = h
			}
		}
		out = append(out, class.Support{On: best, Facts: under[best]})
		delete(under, best)
	}
	return out
}

// secondOn finds the general statement. The table of grounds is that of the
// documentation; a policy's other grounds speak of no heading.
func secondOn(over []class.Support, d class.Decision, upper int) class.Heading {
	if d.Upper == upper && d.Ground != 0 {
		speaks := class.Heading(0)
		switch d.Ground {
		case class.ByTier, class.ByBottom, class.ByColor, class.ByMarbling, class.ByDark, class.ByTexture, class.ByFirmness:
			speaks = class.OnQuality
		case class.ByAdvantage, class.ByYield:
			speaks = class.OnCutability
		case class.ByTrimness:
			speaks = class.OnTrimness
		case class.ByMuscling:
			speaks = class.OnMuscling
		}
		for _, s := range over {
			if s.On == speaks {
				return speaks
			}
		}
	}
	for _, pair := range [][2]class.Heading{{class.OnQuality, class.OnCutability}, {class.OnTrimness, class.OnMuscling}} {
		for _, s := range over { // the heavier comes first
			if (s.On == pair[0] || s.On == pair[1]) && slices.ContainsFunc(s.Facts, func(f class.Fact) bool { return f.Size != 0 }) {
				return s.On
			}
		}
	}
	return 0
}

func secondLast(g class.Graded, e int) []class.Fact {
	var all []class.Fact
	seen := make([][]known, g.Len()+1)
	for o := 1; o <= g.Len(); o++ {
		seen[o] = lookAt(g, o)
	}
	for _, own := range seen[e] {
		var nearest *class.Fact
		high, alone := int64(0), true
		for o := 1; o <= g.Len(); o++ {
			if o == e {
				continue
			}
			at := slices.IndexFunc(seen[o], func(k known) bool { return k.trait == own.trait && k.site == own.site })
			if at < 0 || seen[o][at].high <= own.high {
				alone = false
				break
			}
			k := seen[o][at]
			f := secondFact(g, o, e, k, own)
			if nearest == nil || k.high < high || k.high == high && f.Weight.Compare(nearest.Weight) < 0 {
				nearest, high = &f, k.high
			}
		}
		if alone {
			all = append(all, *nearest)
		}
	}
	return sorted(all)
}

func secondReasons(g class.Graded, order placing.Order, p class.Policy) class.Reasons {
	r := class.Reasons{Order: order, Last: secondLast(g, order.At(g.Len()))}
	sexes := map[grade.Sex]bool{}
	for e := range g.Exhibits() {
		sexes[e.Carcass.Sex] = true
		r.Sex = e.Carcass.Sex
	}
	if len(sexes) > 1 {
		r.Sex = 0
	}
	for i := 1; i < g.Len(); i++ {
		u, l := order.At(i), order.At(i+1)
		d, err := g.Decide(p, u, l)
		if err != nil {
			panic(err)
		}
		over := secondFacts(g, u, l)
		on := secondOn(secondGroups(over, 0), d, u)
		r.Pairs = append(r.Pairs, class.PairReasons{
			Name: placing.PairName(i, g.Len()), Upper: u, Lower: l, Decision: d, On: on,
			Over: secondGroups(over, on), Grants: secondGroups(secondFacts(g, l, u), 0),
		})
	}
	return r
}

// anyClass draws a class without the drawing library, for runs of many.
func anyClass(r *rand.Rand, most int) class.Class {
	n := 2 + r.IntN(most-1)
	pick := func(of ...int) int { return of[r.IntN(len(of))] }
	c := class.Class{Rules: grade.Rules{Edition: grade.Current}}
	sex := pick(1, 1, 2)
	for i := range n {
		if r.IntN(8) == 0 {
			sex = 1 + r.IntN(5)
		}
		c.Exhibits = append(c.Exhibits, class.Exhibit{Number: i + 1, Carcass: grade.Carcass{
			Sex:      grade.Sex(sex),
			Marbling: grade.Marbling(300 + 10*r.IntN(60)),
			Maturity: maturity.Evidence{
				Skeletal: maturity.Score(pick(130, 150, 150, 170, 190, 200, 230, 310, 420)),
				Lean:     maturity.Score(pick(120, 150, 150, 180, 210, 320)),
				Buttons:  []maturity.Buttons{0, 0, maturity.WhiteAndSoft, maturity.Ossified(5), maturity.Ossified(15), maturity.Ossified(40)}[r.IntN(6)],
			},
			Lean: grade.Lean{
				Firmness: grade.Firmness(r.IntN(8)), Color: grade.Color(r.IntN(9)), Texture: grade.Texture(r.IntN(6)),
				Dark: grade.DarkCut(pick(0, 0, 0, 0, 0, 1, 2, 3)),
			},
			Measures: grade.Measures{
				Fat: grade.Inches(float64(2+r.IntN(22)) / 20), Ribeye: grade.SquareInches(float64(90+r.IntN(80)) / 10),
				KPH: grade.Percent(float64(2+r.IntN(6)) / 2), Weight: grade.Pounds(float64(650 + 10*r.IntN(25))),
			},
		}})
	}
	if r.IntN(2) == 0 {
		c.Posted = grade.Pounds(800)
	}
	for s := range class.Sites() {
		if r.IntN(4) == 0 {
			scores := make([]int, n)
			for i := range scores {
				scores[i] = r.IntN(n)
			}
			order, err := placing.RankScores(scores...)
			if err != nil {
				panic(err)
			}
			c.Walk = append(c.Walk, class.Look{Site: s, Order: order})
		}
	}
	return c
}

func anyOrder(r *rand.Rand, n int) placing.Order {
	list := r.Perm(n)
	for i := range list {
		list[i]++
	}
	o, err := placing.NewOrder(list...)
	if err != nil {
		panic(err)
	}
	return o
}

// TestReasonsTwice compares the reasons with those of the second implementation,
// over random classes and orders that nobody would give as well as the policy's.
func TestReasonsTwice(t *testing.T) {
	classes := 100_000
	if !testkit.Exhaustive() {
		classes = 400
	}
	r := rand.New(rand.NewPCG(12, 1))
	policies := []class.Policy{class.DefaultPolicy(), class.DefaultPolicy(), class.NotesPolicy(), class.CutabilityPolicy()}
	for range classes {
		p := policies[r.IntN(len(policies))]
		c := anyClass(r, 5)
		g := graded(t, c)
		order := anyOrder(r, g.Len())
		if r.IntN(2) == 0 {
			placed, err := g.Place(p)
			if err != nil {
				t.Fatal(err)
			}
			order = placed.Order
		}
		got, err := g.Reasons(order, p)
		if err != nil {
			t.Fatal(err)
		}
		// A comparison by reflection of 100,000 would take minutes; text tells.
		if want := secondReasons(g, order, p); !same(want, got) {
			t.Fatalf("%v of %+v (-want +got):\n%s", order, c, diffReasons(want, got))
		}
	}
}

func diffReasons(a, b class.Reasons) string {
	return cmp.Diff(a, b)
}

func same(a, b class.Reasons) bool {
	supports := func(a, b []class.Support) bool {
		return slices.EqualFunc(a, b, func(x, y class.Support) bool { return x.On == y.On && slices.Equal(x.Facts, y.Facts) })
	}
	return a.Order == b.Order && a.Sex == b.Sex && slices.Equal(a.Last, b.Last) && slices.EqualFunc(a.Pairs, b.Pairs, func(x, y class.PairReasons) bool {
		return x.Name == y.Name && x.Upper == y.Upper && x.Lower == y.Lower && x.Decision == y.Decision && x.On == y.On && supports(x.Over, y.Over) && supports(x.Grants, y.Grants)
	})
}

// TestReasonsFollowTheNumbers gives a class new numbers: the reasons and the spoken
// text change their numbers and nothing else.
func TestReasonsFollowTheNumbers(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := rand.New(rand.NewPCG(rapid.Uint64().Draw(t, "seed"), 2))
		c := anyClass(r, 6)
		n := len(c.Exhibits)
		order, to := anyOrder(r, n), anyOrder(r, n)
		g, h := graded(t, c), graded(t, relabel(t, c, to))
		then, err := order.Relabel(to)
		if err != nil {
			t.Fatal(err)
		}
		a, err1 := g.Reasons(order, class.DefaultPolicy())
		b, err2 := h.Reasons(then, class.DefaultPolicy())
		if err1 != nil || err2 != nil {
			t.Fatal(err1, err2)
		}
		fact := func(f *class.Fact) { f.Better, f.Worse = to.At(f.Better), to.At(f.Worse) }
		want := strings.Join(a.Spoken(), "\n")
		want = digits.ReplaceAllStringFunc(want, func(s string) string {
			e, _ := strconv.Atoi(s)
			return strconv.Itoa(to.At(e))
		})
		if d := cmp.Diff(want, strings.Join(b.Spoken(), "\n")); d != "" {
			t.Fatalf("spoken (-renumbered +got):\n%s", d)
		}
		a.Order = then
		for i := range a.Pairs {
			p := &a.Pairs[i]
			p.Upper, p.Lower = to.At(p.Upper), to.At(p.Lower)
			p.Decision.Upper, p.Decision.Lower = to.At(p.Decision.Upper), to.At(p.Decision.Lower)
			if p.Decision.Ground == 0 { // the lower number stands first
				q := b.Pairs[i].Decision
				if q.Ground != 0 {
					t.Fatalf("%v became %v", p.Decision, q)
				}
				p.Decision = q
			}
			for _, all := range [][]class.Support{p.Over, p.Grants} {
				for j := range all {
					for k := range all[j].Facts {
						fact(&all[j].Facts[k])
					}
				}
			}
		}
		for i := range a.Last {
			fact(&a.Last[i])
			// Of several equally near the lower number is named, with what it has:
			// equal buttons of group A may read differently.
			a.Last[i].Better = b.Last[i].Better
			if a.Last[i].Trait == grade.TraitButtons {
				a.Last[i].BetterValue = b.Last[i].BetterValue
			}
		}
		if !reflect.DeepEqual(a, b) { // asked first, for it is ten times as fast
			if d := diffReasons(a, b); d != "" {
				t.Fatalf("(-renumbered +got):\n%s", d)
			}
		}
	})
}

// TestReasonsRefused holds what is refused.
func TestReasonsRefused(t *testing.T) {
	g := graded(t, four())
	p := class.DefaultPolicy()
	for _, o := range []placing.Order{{}, placing.MustParseOrder("1-2-3")} {
		_, err := g.Reasons(o, p)
		wantError(t, o.String(), "order: "+o.String()+": out of range; allowed: an order of the 4 exhibits of the class", err)
	}
	if _, err := (class.Graded{}).Reasons(placing.Order{}, p); !errors.Is(err, placing.ErrRange) {
		t.Errorf("no class: %v", err)
	}
	_, err := g.Why(p, 1, 5)
	wantError(t, "not in the class", "exhibit: 5: out of range; allowed: 1 to 4", err)
	_, err = g.Decide(p, 0, 1)
	wantError(t, "zero", "exhibit: 0: out of range; allowed: 1 to 4", err)
	_, err = g.Decide(p, 2, 2)
	wantError(t, "twice", "exhibit: 2: repeated; allowed: two exhibits", err)
	if g.Facts(0, 1) != nil || g.Facts(1, 5) != nil || g.Facts(5, 1) != nil || g.Facts(1, 0) != nil || g.Facts(2, 2) != nil || g.Criticisms(0) != nil || g.Criticisms(5) != nil {
		t.Error("facts of no exhibit")
	}
	if got := (class.Reasons{}).Spoken(); got != nil {
		t.Errorf("the zero Reasons: %q", got)
	}
	for _, f := range []class.Fact{{}, {Trait: grade.TraitSite}, {Trait: grade.TraitMaturity}, {Trait: grade.TraitPreliminary}, {Trait: 99}} {
		if f.String() != "unset" || f.Heading() != 0 {
			t.Errorf("%+v is %q under %v", f, f, f.Heading())
		}
	}
}

// TestFactsFollowTheOrder holds what the policy's own reasons could not show: a
// committee's order against the policy is argued for, and never the wrong way.
func TestFactsFollowTheOrder(t *testing.T) {
	g, p := placed(t, four())
	if p.Order.String() != "3-1-2-4" {
		t.Fatalf("placed %v", p.Order)
	}
	r, err := g.Reasons(placing.MustParseOrder("4-2-1-3"), class.DefaultPolicy())
	if err != nil {
		t.Fatal(err)
	}
	for _, pair := range r.Pairs {
		for _, s := range pair.Over {
			for _, f := range s.Facts {
				if f.Better != pair.Upper || f.Worse != pair.Lower {
					t.Errorf("%d over %d: %v", pair.Upper, pair.Lower, f)
				}
			}
		}
		if pair.Decision.Upper != pair.Lower {
			t.Errorf("the policy goes with %d over %d", pair.Upper, pair.Lower)
		}
	}
	if r.Pairs[0].On != 0 || r.Pairs[1].On != class.OnCutability || len(r.Pairs[0].Grants) < 3 {
		t.Errorf("4 over 2 on %v, 2 over 1 on %v", r.Pairs[0].On, r.Pairs[1].On)
	}
}

// TestTraits holds the words of every fact: a word for less where less is better, for
// more where more is.
func TestTraits(t *testing.T) {
	less := []string{"less", "lower", "lighter", "younger"}
	for trait, heading := range headingOf {
		f := class.Fact{Trait: trait, Better: 1, Worse: 2}
		says := slices.ContainsFunc(less, func(w string) bool { return strings.Contains(f.String(), " "+w+" ") })
		wanted := slices.Contains([]grade.Trait{grade.TraitDark, grade.TraitYield, grade.TraitFat, grade.TraitKPH, grade.TraitWeight, grade.TraitSkeletal, grade.TraitLean}, trait)
		if says != wanted || f.Heading() != heading {
			t.Errorf("%v: %q under %v", trait, f, f.Heading())
		}
	}
	for s := range class.Sites() {
		f := class.Fact{Trait: grade.TraitSite, Site: s, Better: 1, Worse: 2}
		words := strings.Fields(s.String())
		if part := words[len(words)-1]; strings.Contains(f.String(), " less ") != s.Fat() || !strings.Contains(f.String(), part) {
			t.Errorf("%v: %q", s, f)
		}
		if sentence, from := s.LookFor(); !strings.HasPrefix(sentence, "Look ") || !strings.HasSuffix(sentence, ".") || strings.Count(sentence, ".") != 1 || from.Standing == 0 {
			t.Errorf("%v: %q, %v", s, sentence, from)
		}
	}
	if sentence, from := class.Site(0).LookFor(); sentence != "" || from.Standing != 0 {
		t.Errorf("no site: %q, %v", sentence, from)
	}
}

// TestWeightsAreTheCoachs holds the weights of facts to the default policy: what its
// advantages lift over, and its exchange.
func TestWeightsAreTheCoachs(t *testing.T) {
	p := class.DefaultPolicy()
	weight := func(trait grade.Trait, better, worse grade.Carcass) grade.Yield {
		for _, f := range graded(t, classOf(better, worse)).Facts(1, 2) {
			if f.Trait == trait {
				return f.Weight
			}
		}
		t.Fatalf("no fact in %v", trait)
		return grade.Yield{}
	}
	prime := steer("SlAb00", 0.5, 13, 2.5, 800)
	for i, lower := range []string{"Md99", "Sm90", "Sl90"} {
		if got, want := weight(grade.TraitQuality, prime, steer(lower, 0.5, 13, 2.5, 800)), p.Advantages[i].Yield; got != want || p.Advantages[i].Tiers != i+1 {
			t.Errorf("Prime over %s weighs %v, want %v", lower, got, want)
		}
	}
	if got := weight(grade.TraitMarbling, steer("Sm90", 0.5, 13, 2.5, 800), steer("Sl90", 0.5, 13, 2.5, 800)); got != p.Exchange {
		t.Errorf("100 points weigh %v, want %v", got, p.Exchange)
	}
	dark := prime
	dark.Lean.Dark = grade.DarkThird
	if got := weight(grade.TraitDark, prime, dark); got != p.Exchange || p.Darkness != 100 {
		t.Errorf("a third of dark cutting weighs %v, want %v for %d points", got, p.Exchange, p.Darkness)
	}
}
