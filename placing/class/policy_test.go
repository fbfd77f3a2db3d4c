package class_test

import (
	"encoding/json"
	"errors"
	"slices"
	"strings"
	"testing"

	"example.com/ribface/grade"
	"example.com/ribface/grade/price"
	"example.com/ribface/maturity"
	"example.com/ribface/placing/class"
	"github.com/google/go-cmp/cmp"
	"github.com/shopspring/decimal"
	"pgregory.net/rapid"
)

func valuePolicy() class.Policy {
	return class.ValuePolicy(weekly())
}

// TestPolicyJSON takes the named policies through JSON and back.
func TestPolicyJSON(t *testing.T) {
	bent := class.DefaultPolicy()
	bent.Advantages[1].Yield, bent.Ties = grade.Grades(2.25), []class.Ground{class.ByFirmness}
	for _, p := range append(class.Policies(), valuePolicy(), bent, class.Policy{}) {
		b, err := json.Marshal(p)
		if err != nil {
			t.Fatal(err)
		}
		var back class.Policy
		if err := json.Unmarshal(b, &back); err != nil {
			t.Fatal(err)
		}
		if diff := cmp.Diff(p, back); diff != "" {
			t.Errorf("%s (-want +got):\n%s", p.Name, diff)
		}
		if p.IsZero() != (p.Name == "") {
			t.Errorf("%q is zero: %v", p.Name, p.IsZero())
		}
	}
	b, _ := json.Marshal(class.DefaultPolicy())
	if !strings.Contains(string(b), `"ties":["lean color","texture","firmness"]`) || !strings.Contains(string(b), `"bottom_dark":"two thirds"`) {
		t.Errorf("settings are not text: %s", b)
	}
	p := class.NotesPolicy()
	for _, tt := range []struct{ text, want string }{
		{`{"name":"mine","exchnage":"0.5"}`, "policy: name: exchnage: unknown; allowed: name, grid, by_cwt"},
		{`{"ties":["the color"]}`, "ground"},
		{`{"tiers":[["veal"]]}`, "tier"},
		{`{"close":"much"}`, "yield"},
		{`[]`, "policy: object: []: bad syntax"},
	} {
		err := json.Unmarshal([]byte(tt.text), &p)
		if err == nil || !strings.Contains(err.Error(), tt.want) {
			t.Errorf("%s: %v", tt.text, err)
		}
	}
	if diff := cmp.Diff(class.NotesPolicy(), p); diff != "" {
		t.Errorf("a failed reading changed the policy:\n%s", diff)
	}
	bad := class.DefaultPolicy()
	bad.Ties[0] = 99
	if b, err := json.Marshal(bad); err == nil {
		t.Errorf("written: %s", b)
	}
}

// TestSettingsRefused holds the settings that the course notes do not have.
func TestSettingsRefused(t *testing.T) {
	change := func(f func(p *class.Policy)) class.Policy {
		p := class.DefaultPolicy()
		f(&p)
		return p
	}
	grid := func(f func(p *class.Policy)) class.Policy {
		p := valuePolicy()
		f(&p)
		return p
	}
	for _, tt := range []struct {
		name   string
		policy class.Policy
		want   string
	}{
		{"an unknown group", change(func(p *class.Policy) { p.BottomGroup = 9 }), "policy: bottom group: maturity group(9): unknown; allowed: A to E, or none"},
		{"an unknown group of top Choice", change(func(p *class.Policy) { p.TopGroup = 9 }), "policy: top group: maturity group(9): unknown; allowed: A to E, or none"},
		{"an unknown dark cut", change(func(p *class.Policy) { p.BottomDark = 9 }), "policy: bottom dark: dark cut(9): unknown; allowed: one third, two thirds or full, or none"},
		{"a ceiling between tenths", change(func(p *class.Policy) { p.Ceiling = grade.Grades(3.60000001) }), "policy: ceiling: 3.60000001: out of range; allowed: 0 to 10 in whole tenths"},
		{"a ceiling under 0", change(func(p *class.Policy) { p.Ceiling = grade.Grades(-1) }), "policy: ceiling: -1: out of range; allowed: 0 to 10 in whole tenths\npolicy: lean select: 3: out of range; allowed: 0 to the ceiling"},
		{"a ceiling too high", change(func(p *class.Policy) { p.Ceiling = grade.Grades(11) }), "policy: ceiling: 11: out of range; allowed: 0 to 10 in whole tenths"},
		{"a lean Select over the ceiling", change(func(p *class.Policy) { p.LeanSelect = grade.Grades(4) }), "policy: lean select: 4: out of range; allowed: 0 to the ceiling"},
		{"a lean Select under 0", change(func(p *class.Policy) { p.LeanSelect = grade.YieldUnits(-1) }), "policy: lean select: -0.00000001: out of range; allowed: 0 to the ceiling"},
		{"a ceiling in one tier", change(func(p *class.Policy) { p.Tiers, p.Advantages = class.CutabilityPolicy().Tiers, nil }), "policy: ceiling: 3.6: out of range; allowed: none unless Select is a tier under Choice"},
		{"an exchange too fine", change(func(p *class.Policy) { p.Exchange = grade.Grades(0.50000001) }), "policy: exchange: 0.50000001: out of range; allowed: 0 to 10 with at most 6 places"},
		{"an exchange under 0", change(func(p *class.Policy) { p.Exchange = grade.YieldUnits(-100) }), "policy: exchange: -0.000001: out of range; allowed: 0 to 10 with at most 6 places"},
		{"an exchange too great", change(func(p *class.Policy) { p.Exchange = grade.Grades(10.000001) }), "policy: exchange: 10.000001: out of range; allowed: 0 to 10 with at most 6 places"},
		{"darkness under 0", change(func(p *class.Policy) { p.Darkness = -1 }), "policy: darkness: -1: out of range; allowed: 0 to 500 points"},
		{"darkness too great", change(func(p *class.Policy) { p.Darkness = 501 }), "policy: darkness: 501: out of range; allowed: 0 to 500 points"},
		{"a grid and tiers", grid(func(p *class.Policy) { p.Tiers = class.DefaultPolicy().Tiers }), "policy: grid: week of 2025-01-06: out of range; allowed: no other rule beside it"},
		{"a grid and a walk", grid(func(p *class.Policy) { p.Walk = true }), "policy: grid: week of 2025-01-06: out of range; allowed: no other rule beside it"},
		{"a grid without a base", grid(func(p *class.Policy) { p.Grid.Base = decimal.Zero }), "policy: grid: base: 0.00: out of range; allowed: over 0.00"},
	} {
		_, err := graded(t, four()).Place(tt.policy)
		wantError(t, tt.name, tt.want, err)
	}
	ends := change(func(p *class.Policy) {
		p.Ceiling, p.LeanSelect, p.Exchange, p.Darkness = tenths(100), tenths(100), tenths(100), 500
	})
	if err := ends.Check(); err != nil {
		t.Errorf("the ends of the ranges: %v", err)
	}
}

func TestDecideRefused(t *testing.T) {
	g := graded(t, four())
	for _, tt := range []struct {
		a, b int
		want string
	}{{0, 1, "exhibit: 0: out of range; allowed: 1 to 4"}, {1, 5, "exhibit: 5: out of range; allowed: 1 to 4"}, {2, 2, "exhibit: 2: repeated; allowed: two exhibits"}} {
		_, err := g.Decide(class.DefaultPolicy(), tt.a, tt.b)
		wantError(t, "Decide", tt.want, err)
	}
	_, err := g.Decide(class.Policy{}, 1, 2)
	wantError(t, "Decide", "policy: tiers: prime, top choice, low choice, select, standard, below standard not listed: missing; allowed: every tier once", err)
	light := four()
	light.Posted = grade.Pounds(300)
	h := graded(t, light)
	_, err = h.Decide(valuePolicy(), 1, 2)
	wantError(t, "no price", "exhibit 1: weight: 300 lb: no price; allowed: 400 lb and over\nexhibit 2: weight: 300 lb: no price; allowed: 400 lb and over\nexhibit 3: weight: 300 lb: no price; allowed: 400 lb and over\nexhibit 4: weight: 300 lb: no price; allowed: 400 lb and over", err)
	if _, err2 := h.Place(valuePolicy()); !errors.Is(err, price.ErrNoPrice) || !errors.Is(err2, price.ErrNoPrice) {
		t.Errorf("no price: %v, %v", err, err2)
	}
	if _, err := h.Splits(class.DefaultPolicy(), valuePolicy()); !errors.Is(err, price.ErrNoPrice) {
		t.Errorf("no price: %v", err)
	}
	// What if asks for a policy that takes every better measure for the better.
	const want = "policy: grid: week of 2025-01-06: out of range; allowed: a policy without a grid, on which a better measure may be worth less"
	_, err = g.Reversals(valuePolicy(), 1, 2)
	wantError(t, "Reversals", want, err)
	_, err = g.CouldReverse(valuePolicy(), grade.Tolerances{})
	wantError(t, "CouldReverse", want, err)
}

// TestDecideAsPlaced decides every pair as the placing has it.
func TestDecideAsPlaced(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := drawClass(t, 5)
		g := graded(t, c)
		for _, policy := range class.Policies() {
			p := placedBy(t, c, policy)
			for _, d := range p.Decisions {
				got, err := g.Decide(policy, d.Lower, d.Upper)
				if err != nil || got != d {
					t.Fatalf("%v, placed with %v, %v", got, d, err)
				}
			}
		}
	})
}

// drawPolicy draws a policy with settings of its own.
func drawPolicy(t *rapid.T) class.Policy {
	p := rapid.SampledFrom(class.Policies()).Draw(t, "policy").Name
	at := slices.IndexFunc(class.Policies(), func(q class.Policy) bool { return q.Name == p })
	q := class.Policies()[at]
	if n := rapid.IntRange(0, 3).Draw(t, "advantages"); n < len(q.Advantages) {
		q.Advantages = q.Advantages[:n]
	}
	if q.Exchange.IsSet() {
		q.Exchange = twentieths(rapid.IntRange(1, 200).Draw(t, "exchange"))
	} else {
		q.Ties = rapid.Permutation(q.Ties).Draw(t, "ties")
		q.Ties = q.Ties[:rapid.IntRange(1, len(q.Ties)).Draw(t, "used")]
	}
	if rapid.Bool().Draw(t, "no ceiling") {
		q.Ceiling, q.LeanSelect = grade.Yield{}, grade.Yield{}
	}
	q.Close = tenths(rapid.IntRange(0, 10).Draw(t, "close"))
	return q
}

// TestFirmIsKept goes against no firm decision, whatever the policy.
func TestFirmIsKept(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := placedBy(t, drawClass(t, 7), drawPolicy(t))
		for _, d := range p.Decisions {
			if d.Firm && (d.Close || d.Margin.Units() != 0 || d.Ground == 0 || p.Order.Place(d.Upper) > p.Order.Place(d.Lower)) {
				t.Fatalf("%v is gone against in %v", d, p.Order)
			}
		}
	})
}

// TestFirmInACycle has a firm decision that it would cost least to go against, were
// it weighed like the others: Prime over Select by three tiers, which the notes
// never lift, in a cycle with low Choice, whose two decisions have margins of 1.0
// and 1.1.
func TestFirmInACycle(t *testing.T) {
	c := classOf(rib("SlAb10", 1.2, 9.5), rib("Sm10", 0.4, 12.625), rib("Sl10", 0.1, 18.4))
	p := placedBy(t, c, class.NotesPolicy())
	lines := []string{
		"1 over 3 by quality tier, 3 tiers better in quality, yield higher by 5.598; no yield could turn it.",
		"3 over 2 by yield advantage, 1 tier lower in quality, yield lower by 2.598; margin 1.098.",
		"The policy runs in a cycle: 1 over 3, 3 over 2 and 2 over 1.",
		"In the cycle: 1 over 3 by quality tier, 3 tiers better in quality, yield higher by 5.598; no yield could turn it.",
		"In the cycle: 2 over 1 by yield advantage, 2 tiers lower in quality, yield lower by 3; margin 1.",
		"In the cycle: 3 over 2 by yield advantage, 1 tier lower in quality, yield lower by 2.598; margin 1.098.",
		"Resolved by the least total margin against it: the placing goes against 2 over 1 (margin 1).",
	}
	if diff := cmp.Diff(lines, strings.Split(p.String(), "\n")); diff != "" || p.Order.String() != "1-3-2" || p.Against != tenths(10) {
		t.Errorf("placed %v against %v (-want +got):\n%s", p.Order, p.Against, diff)
	}
	// The same in a class of twelve, where the margins against it add up: nine more
	// of low Choice, each lifted over Prime and under Select.
	for e := 4; e <= 12; e++ {
		x := rib("Sm10", 0.4, 12.625)
		x.Marbling += grade.Marbling(e)
		c.Exhibits = append(c.Exhibits, class.Exhibit{Number: e, Carcass: x})
	}
	p = placedBy(t, c, class.NotesPolicy())
	if p.Order.Place(1) > p.Order.Place(3) || len(p.Cycles) != 1 || p.Against != tenths(100) {
		t.Errorf("placed %v against %v", p.Order, p.Against)
	}
}

// TestNoCycles: what weighs everything by one exchange cannot run in a cycle.
func TestNoCycles(t *testing.T) {
	one := class.CutabilityPolicy()
	one.Exchange, one.Darkness, one.Ties = tenths(5), 50, nil
	rapid.Check(t, func(t *rapid.T) {
		c := drawClass(t, 7)
		for i := range c.Exhibits { // what the grid has a price for
			x := &c.Exhibits[i].Carcass
			x.Sex, x.Lean.Dark, x.Maturity = grade.Steer, 0, maturity.Evidence{Skeletal: maturity.A.At(50), Lean: maturity.A.At(50)}
		}
		for _, p := range []class.Policy{one, class.CutabilityPolicy(), valuePolicy()} {
			if placed := placedBy(t, c, p); placed.Cycles != nil || placed.Against.Units() != 0 {
				t.Fatalf("%s: %+v", p.Name, placed.Cycles)
			}
		}
	})
}

// TestValueMargins finds by trying how far yields must move for the other one to be
// worth more.
func TestValueMargins(t *testing.T) {
	terms := weekly()
	// One edge belongs below, and one band is a single unit wide.
	narrow := price.Offer{Name: "invented", Base: decimal.New(300, 0), YieldEdge: price.EdgeLower, Yield: []price.Band[grade.Yield]{
		{From: grade.Grades(0), To: grade.Grades(2), Amount: decimal.New(2, 0)},
		{From: grade.Grades(2), To: grade.Grades(2.00000001), Amount: decimal.New(50, 0)},
		{From: grade.Grades(2.00000001), To: grade.Grades(4)},
		{From: grade.Grades(4), Amount: decimal.New(-20, 0)},
	}}
	flat := price.Offer{Name: "invented", Base: decimal.New(300, 0), Tiers: terms.Tiers}
	rapid.Check(t, func(t *rapid.T) {
		p := class.ValuePolicy(rapid.SampledFrom([]price.Offer{terms, narrow, flat}).Draw(t, "grid"))
		p.ByCwt = rapid.Bool().Draw(t, "per cwt")
		if rapid.Bool().Draw(t, "edges above") {
			p.Grid.YieldEdge = price.EdgeUpper
		}
		c := classOf(drawCarcass(t), drawCarcass(t))
		for i := range c.Exhibits {
			x := &c.Exhibits[i].Carcass
			x.Sex, x.Lean.Dark, x.Maturity = grade.Steer, 0, maturity.Evidence{Skeletal: maturity.A.At(50), Lean: maturity.A.At(50)}
		}
		g := graded(t, c)
		d, err := g.Decide(p, 1, 2)
		if err != nil {
			t.Fatal(err)
		}
		grid, _ := price.New(*p.Grid)
		compare := price.ByHead
		if p.ByCwt {
			compare = price.ByCwt
		}
		a, b := g.Assessment(d.Upper), g.Assessment(d.Lower)
		worth := func(a grade.Assessment, y grade.Yield) price.Value {
			a.Yield = y
			v, err := grid.Value(a)
			if err != nil {
				t.Fatal(err)
			}
			return v
		}
		was := compare(worth(a, a.Yield), worth(b, b.Yield))
		if was == 0 != (d.Ground == 0) || was < 0 {
			t.Fatalf("%v: %d", d, was)
		}
		if was == 0 {
			return
		}
		at := func(own grade.Yield) []grade.Yield {
			all := []grade.Yield{own} // which may be under 0
			for _, b := range p.Grid.Yield {
				for unit := int64(-1); unit <= 1; unit++ {
					if y := b.From.Add(grade.YieldUnits(unit)); y.Units() > 0 {
						all = append(all, y)
					}
				}
			}
			return all
		}
		least := int64(-1)
		for _, x := range at(a.Yield) {
			for _, y := range at(b.Yield) {
				far := func(x, y grade.Yield) int64 { return max(x.Sub(y).Units(), y.Sub(x).Units()) }
				away := far(x, a.Yield) + far(y, b.Yield)
				if compare(worth(a, x), worth(b, y)) < 0 && (least < 0 || away < least) {
					least = away
				}
			}
		}
		switch m := d.Margin.Units(); {
		case least < 0:
			if !d.Firm || m != 0 {
				t.Fatalf("nothing turns %+v", d)
			}
		case d.Firm || m > max(least, 1) || least-m > 2:
			t.Fatalf("%+v is turned by %d", d, least)
		}
	})
}

func TestValuePolicyPlaces(t *testing.T) {
	p := placedBy(t, four(), valuePolicy())
	// As ByValue has it: 1 and 3 are worth the same.
	if p.Order.String() != "3-1-2-4" || p.Equal != 2 {
		t.Errorf("placed %v, %d equal", p.Order, p.Equal)
	}
	var rules []string
	for _, r := range append(p.Policy.Steps(), func() class.Policy { q := valuePolicy(); q.ByCwt = true; return q }().Steps()...) {
		rules = append(rules, r.Name+": "+r.Rule+" ("+r.Cite.String()+")")
	}
	want := []string{
		`value: the carcass worth more per head goes over, on the grid "week of 2025-01-06" (official: ams-ct155-2025-01-06)`,
		"close: a margin under 0.3 of a yield grade is close (no source given)",
		`value: the carcass worth more per cwt goes over, on the grid "week of 2025-01-06" (official: ams-ct155-2025-01-06)`,
		"close: a margin under 0.3 of a yield grade is close (no source given)",
	}
	if diff := cmp.Diff(want, rules); diff != "" {
		t.Errorf("rules (-want +got):\n%s", diff)
	}
	// The placing keeps its grid whatever becomes of the caller's.
	terms := weekly()
	mine := class.ValuePolicy(terms)
	terms.Tiers[0].Amount = decimal.New(9, 0)
	out := placedBy(t, four(), mine)
	mine.Grid.Tiers[0].Amount = decimal.New(9, 0)
	if diff := cmp.Diff(valuePolicy(), out.Policy); diff != "" {
		t.Errorf("policy (-want +got):\n%s", diff)
	}
}

func TestSplits(t *testing.T) {
	g := graded(t, classOf(rib("SlAb20", 0.9, 12), rib("Sm40", 0.4, 14), rib("Sm50", 0.4, 14)))
	splits, err := g.Splits(class.Policies()...)
	if err != nil {
		t.Fatal(err)
	}
	var got []string
	for _, s := range splits {
		line := itoa(min(s[0].Upper, s[0].Lower)) + " and " + itoa(max(s[0].Upper, s[0].Lower)) + ":"
		for _, d := range s {
			line += " " + itoa(d.Upper) + " by " + d.Ground.String() + ","
		}
		got = append(got, line)
	}
	// Prime of 4.45 against low Choice of 2.56: 1.89 is under the 2.0 that lifts over
	// two tiers.
	want := []string{"1 and 2: 1 by quality tier, 1 by quality tier, 2 by yield,", "1 and 3: 1 by quality tier, 1 by quality tier, 3 by yield,"}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Errorf("splits (-want +got):\n%s", diff)
	}
	twin := graded(t, classOf(rib("Sm40", 0.4, 14), rib("Sm40", 0.56, 15.25)))
	blind := class.CutabilityPolicy()
	blind.Ties = []class.Ground{class.ByTrimness}
	if s, err := twin.Splits(class.CutabilityPolicy(), blind); err != nil || len(s) != 1 {
		t.Errorf("one that tells and one that does not: %v, %v", s, err)
	}
	if s, err := g.Splits(class.DefaultPolicy(), class.DefaultPolicy()); s != nil || err != nil {
		t.Errorf("one policy twice: %v, %v", s, err)
	}
	_, err = g.Splits(class.DefaultPolicy())
	wantError(t, "one policy", "policies: 1: out of range; allowed: two or more", err)
	_, err = g.Splits(class.DefaultPolicy(), class.Policy{})
	wantError(t, "a zero policy", "policy 2: policy: tiers: prime, top choice, low choice, select, standard, below standard not listed: missing; allowed: every tier once", err)
}

// TestCouldReverseByMaturity has a top Choice that is one only if its bone is of
// group A.
func TestCouldReverseByMaturity(t *testing.T) {
	g := graded(t, classOf(aged(rib("Mt10", 0.5, 13), maturity.A.At(95), maturity.A.At(90)), rib("Mt00", 0.45, 13)))
	for _, tt := range []struct {
		tolerance int
		want      int
	}{{0, 0}, {5, 0}, {8, 1}} {
		c := class.DefaultPolicy()
		c.Exchange = grade.Grades(2) // 10 points outweigh the yield
		all, err := g.CouldReverse(c, grade.Tolerances{Maturity: tt.tolerance})
		if err != nil || len(all) != tt.want {
			t.Errorf("maturity within %d: %v, %v", tt.tolerance, all, err)
		}
	}
}

// TestCouldReverseBothAges has a pair that turns only if bone and lean are both
// younger, or both older, than they were seen: at the line of the top Choice.
func TestCouldReverseBothAges(t *testing.T) {
	p := class.DefaultPolicy()
	for _, tt := range []struct {
		name      string
		age       maturity.Score
		tolerance int
		want      int
	}{
		{"B05, not young enough", maturity.B.At(5), 5, 0},
		{"B05 may be A99", maturity.B.At(5), 6, 1},
		{"A95, not old enough", maturity.A.At(95), 4, 0},
		{"A95 may be B00", maturity.A.At(95), 5, 1},
	} {
		// Top Choice with a yield higher by 1 goes over the other Choice, and under top Choice.
		g := graded(t, classOf(aged(rib("Mt10", 0.8, 13), tt.age, tt.age), rib("Sm90", 0.4, 13)))
		if tt.age.Group() == maturity.B {
			g = graded(t, classOf(aged(rib("Mt10", 0.4, 13), tt.age, tt.age), rib("Mt10", 0.8, 13)))
		}
		all, err := g.CouldReverse(p, grade.Tolerances{Maturity: tt.tolerance})
		if err != nil || len(all) != tt.want {
			t.Errorf("%s: %v, %v", tt.name, all, err)
		}
	}
}

// TestCouldReverseByTier has a Choice that goes under the leaner Select as soon as it
// may be Select itself.
func TestCouldReverseByTier(t *testing.T) {
	g := graded(t, classOf(rib("Sm20", 0.5, 13), rib("Sl60", 0.1, 13)))
	for _, tt := range []struct{ tolerance, want int }{{20, 0}, {21, 1}} {
		all, err := g.CouldReverse(class.DefaultPolicy(), grade.Tolerances{Marbling: tt.tolerance})
		if err != nil || len(all) != tt.want {
			t.Errorf("marbling within %d: %v, %v", tt.tolerance, all, err)
		}
	}
}

// TestBottomGroup has an old carcass, much the leaner, at the line of the group that
// stays at the bottom.
func TestBottomGroup(t *testing.T) {
	p := class.DefaultPolicy()
	p.Bottom, p.BottomDark, p.BottomGroup = 0, 0, maturity.C
	for age, want := range map[maturity.Score]int{maturity.C.At(0): 1, maturity.B.At(99): 2} {
		a, b := rib("Tr50", 1.2, 10), aged(rib("Tr50", 0.1, 15), age, age)
		if d := decide(t, p, a, b); d.Upper != want {
			t.Errorf("%v: %v", age, d)
		}
	}
}

// TestTieByMuscling has two carcasses alike but for the muscling that the walk saw,
// and a policy that looks at it last.
func TestTieByMuscling(t *testing.T) {
	c := classOf(rib("Sm40", 0.4, 13), rib("Sm40", 0.4, 13))
	c.Walk = class.Walk{{Site: class.RoundWidth, Order: class.MustParseRanking("2 1")}}
	p := class.NotesPolicy()
	p.Walk, p.Ties = false, []class.Ground{class.ByMuscling}
	d, err := graded(t, c).Decide(p, 1, 2)
	if err != nil || d.Upper != 2 || d.Ground != class.ByMuscling {
		t.Errorf("%v, %v", d, err)
	}
}

// TestCeilingWithoutAdvantages has the rule of Choice against Select alone.
func TestCeilingWithoutAdvantages(t *testing.T) {
	p := class.DefaultPolicy()
	p.Advantages = nil
	for _, tt := range []struct {
		a, b grade.Carcass
		want string
	}{
		{rib("Sm10", 0.4, 13), rib("Sl10", 0.4, 13), "1 over 2 by quality tier, 1 tier better in quality, equal in yield; margin 0.72"},
		{rib("Sm10", 0.8, 13), rib("Sl10", 0.4, 13), "2 over 1 by Choice against Select, 1 tier lower in quality, yield lower by 1; margin 0.12, close"},
		{rib("Sm10", 0.688, 13), rib("Sl10", 0.448, 13), "1 over 2 by quality tier, 1 tier better in quality, yield higher by 0.6; margin 0.00000001, close"},
		{rib("Mt10", 1.8, 13), rib("Sl10", 0.1, 13), "1 over 2 by quality tier, 2 tiers better in quality, yield higher by 4.25; no yield could turn it"},
	} {
		if got := decide(t, p, tt.a, tt.b).String(); got != tt.want {
			t.Errorf("got %s, want %s", got, tt.want)
		}
	}
}

// TestWalkAtTheLine has pairs that stand exactly the close margin from their line,
// and a hair nearer: the walk decides under the margin, not on it.
func TestWalkAtTheLine(t *testing.T) {
	for _, tt := range []struct {
		name string
		a, b grade.Carcass // the walk favors b
		want string
	}{
		{"60 points are 0.3", rib("Sm70", 0.5, 13), rib("Sm10", 0.5, 13), "1 over 2 by marbling, of one tier, equal in yield; margin 0.00000001, close"},
		{"59 are less", rib("Sm69", 0.5, 13), rib("Sm10", 0.5, 13), "2 over 1 by trimness, of one tier, equal in yield; margin 0.005, close"},
		{"a lead of 1.2 is 0.3 from the advantage", rib("SlAb10", 0.88, 13), rib("Mt10", 0.4, 13), "1 over 2 by quality tier, 1 tier better in quality, yield higher by 1.2; margin 0.00000001, close"},
		{"a lead of 1.225", rib("SlAb10", 0.89, 13), rib("Mt10", 0.4, 13), "2 over 1 by trimness, 1 tier lower in quality, yield lower by 1.225; margin 0.025, close"},
	} {
		c := classOf(tt.a, tt.b)
		c.Walk = class.Walk{{Site: class.FatRump, Order: class.MustParseRanking("1 2")}}
		d, err := graded(t, c).Decide(class.DefaultPolicy(), 1, 2)
		if err != nil || d.String() != tt.want {
			t.Errorf("%s: %v, %v", tt.name, d, err)
		}
	}
	// The other way: on the line from the side that the walk favors, the other goes over.
	c := classOf(rib("SlAb10", 1.12, 13), rib("Mt10", 0.4, 13))
	c.Walk = class.Walk{{Site: class.FatRump, Order: class.MustParseRanking("2 1")}}
	d, err := graded(t, c).Decide(class.DefaultPolicy(), 1, 2)
	if want := "2 over 1 by yield advantage, 1 tier lower in quality, yield lower by 1.8; margin 0.00000001, close"; err != nil || d.String() != want {
		t.Errorf("%v, %v", d, err)
	}
	// Without a close margin the walk has no say, on the line either.
	p := class.DefaultPolicy()
	p.Close = grade.Yield{}
	c = classOf(rib("SlAb10", 1.0, 13), rib("Mt10", 0.4, 13))
	c.Walk = class.Walk{{Site: class.FatRump, Order: class.MustParseRanking("1 2")}}
	if d, err := graded(t, c).Decide(p, 1, 2); err != nil || d.Upper != 2 || d.Close {
		t.Errorf("%v, %v", d, err)
	}
}

// TestNarrowBand has a band of a single unit, which either of its edges may own.
func TestNarrowBand(t *testing.T) {
	for _, edge := range []price.Edge{price.EdgeLower, price.EdgeUpper} {
		p := class.ValuePolicy(price.Offer{Name: "invented", Base: decimal.New(300, 0), YieldEdge: edge, Yield: []price.Band[grade.Yield]{
			{From: grade.Grades(0), To: grade.Grades(2)},
			{From: grade.Grades(2), To: grade.Grades(2.00000001), Amount: decimal.New(50, 0)},
			{From: grade.Grades(2.00000001)},
		}})
		// Both of 2.88; the first is the heavier by a pound.
		d, err := graded(t, classOf(steer("Sm40", 0.4, 13, 2.5, 801), rib("Sm40", 0.4, 13))).Decide(p, 1, 2)
		if err != nil || d.Upper != 1 || d.Firm || d.Margin.Compare(tenths(10)) >= 0 || d.Margin.Compare(grade.Grades(0.87)) < 0 {
			t.Errorf("%v: %v, %v", edge, d, err)
		}
	}
}

// TestValueOnTheEdge has a carcass on the edge of a band, which any yield more turns:
// the margin is the least there is, whichever bands come after it.
func TestValueOnTheEdge(t *testing.T) {
	p := class.ValuePolicy(price.Offer{Name: "invented", Base: decimal.New(300, 0), YieldEdge: price.EdgeLower,
		Tiers: []price.TierAmount{{Tier: grade.TopChoice, Amount: decimal.New(5, 0)}, {Tier: grade.LowChoice}},
		Yield: []price.Band[grade.Yield]{
			{From: grade.Grades(0), To: grade.Grades(3), Amount: decimal.New(10, 0)},
			{From: grade.Grades(3), To: grade.Grades(4)},
			{From: grade.Grades(4), Amount: decimal.New(-10, 0)},
		}})
	d, err := graded(t, classOf(rib("Sm40", 0.448, 13), rib("Mt40", 0.648, 13))).Decide(p, 1, 2) // 3 and 3.5
	if err != nil || d.Upper != 1 || d.Firm || d.Margin != grade.Grades(0.00000001) {
		t.Errorf("%v, %v", d, err)
	}
}
