package class_test

import (
	"encoding/json"
	"fmt"
	"strings"
	"testing"

	"example.com/ribface/grade"
	"example.com/ribface/grade/price"
	"example.com/ribface/internal/testkit/faulttest"
	"example.com/ribface/placing"
	"example.com/ribface/placing/class"
	"github.com/google/go-cmp/cmp"
	"github.com/shopspring/decimal"
)

// TestGradeTellsAll has a class with one fault of each kind: all are told at once,
// each with the path that its figure has in JSON.
func TestGradeTellsAll(t *testing.T) {
	c := four()
	c.Rules.Edition, c.Rules.Maturity.Tens = 99, 99
	c.Posted = grade.Pounds(99)
	c.Exhibits[0].Number = 3
	c.Exhibits[0].Carcass.Measures.Fat = grade.Thickness{}
	c.Exhibits[0].Carcass.Measures.Weight = grade.Weight{} // the posted one stands in
	c.Exhibits[1].Number = 5
	c.Exhibits[1].Carcass.Measures.Ribeye = grade.SquareInches(0.9)
	c.Exhibits[1].Carcass.Lean.Dark = 9
	c.Exhibits[3].Carcass.FatAdjust = grade.Inches(-1)
	c.Walk[1].Site = class.FatRump
	c.Walk[2].Order = placing.Ranking{}
	c.Walk[3] = class.Look{Site: 99, Order: class.MustParseRanking("1 2")}
	_, err := c.Grade()
	faulttest.All(t, "Grade", err,
		"rules.edition | edition: edition(99): unknown; allowed: 1975, 1987, 1997, 2016, 2017",
		"rules.maturity.tens | rules: tens: tens(99): unknown; allowed: keep units, toward bone, toward lean",
		"posted | posted weight: 99 lb: out of range; allowed: 100 lb to 1800 lb",
		"exhibits[0].measures.fat | exhibit 3: fat: missing; allowed: 0 in to 3 in",
		"exhibits[1].lean.dark | exhibit 5: dark cut: dark cut(9): unknown; allowed: none, one third, two thirds, full",
		"exhibits[1].measures.ribeye | exhibit 5: ribeye: 0.9 sq in: out of range; allowed: 1 sq in to 25 sq in",
		"exhibits[1].number | exhibit number: 5: out of range; allowed: each exhibit 1 to 4 once",
		"exhibits[2].number | exhibit number: 3: repeated; allowed: each exhibit 1 to 4 once",
		"exhibits[3].fat_adjust | exhibit 4: adjusted fat: -0.3 in: out of range; allowed: 0 in to 3 in",
		"walk[1].site | walk: look 2: site: fat over rump: repeated; allowed: every site once",
		"walk[2].order | walk: plumpness of round: missing; allowed: a ranking of 4 exhibits",
		"walk[3].site | walk: look 4: site: site(99): unknown; allowed: "+allSites(),
		"walk[3].order | walk: look 4: 1 2: out of range; allowed: a ranking of 4 exhibits",
	)
	_, err = class.Class{}.Grade()
	faulttest.All(t, "zero", err, "exhibits | exhibits: 0: out of range; allowed: 2 to 12")
	_, err = four().Adjust(9, grade.Inches(0.1))
	faulttest.All(t, "Adjust none", err, "exhibit | adjustment: exhibit: 9: unknown; allowed: an exhibit of the class")
	_, err = four().Adjust(1, grade.Inches(-9))
	faulttest.All(t, "Adjust", err, "exhibits[0].fat_adjust | exhibit 1: fat adjustment: -9 in: out of range; allowed: -3 in to 3 in")
	untaken := four()
	untaken.Exhibits[0].Carcass.Measures.KPH = grade.Share{}
	_, err = untaken.Adjust(1, grade.Inches(9))
	faulttest.All(t, "Adjust without KPH", err, "exhibits[0].measures.kph | exhibit 1: KPH: missing; allowed: 0% to 10%",
		"exhibits[0].fat_adjust | exhibit 1: fat adjustment: 9 in: out of range; allowed: -3 in to 3 in")
}

// TestPolicyTellsAll does so for a policy.
func TestPolicyTellsAll(t *testing.T) {
	p := class.DefaultPolicy()
	p.Close = grade.Grades(11)
	p.Tiers = [][]grade.Tier{{grade.PrimeTier, 99}, {}, {grade.SelectTier, grade.PrimeTier}}
	p.Advantages[0].Yield, p.Advantages[1].Tiers = grade.Yield{}, 9
	p.Bottom, p.BottomGroup, p.BottomDark, p.TopGroup = 99, 99, 99, 99
	p.Ceiling, p.LeanSelect = grade.Grades(3.65), grade.Grades(4)
	p.Exchange, p.Darkness, p.Ties = grade.Grades(-1), -1, []class.Ground{class.ByYield, class.ByTier, class.ByYield}
	want := []string{
		"close | policy: close: 11: out of range; allowed: 0 to 10",
		"tiers[0][1] | policy: tiers 1: tier(99): unknown; allowed: the tiers of the trade",
		"tiers[1] | policy: tiers 2: missing; allowed: one tier or more",
		"tiers[2][1] | policy: tiers 3: prime: repeated; allowed: every tier once",
		"tiers | policy: tiers: top choice, low choice, standard, below standard not listed: missing; allowed: every tier once",
		"advantages[0].yield | policy: advantage 1: yield: unset: out of range; allowed: over 0, up to 10",
		"advantages[1].tiers | policy: advantage 2: tiers: 9: out of range; allowed: over 1, up to the 3 tiers",
		"bottom | policy: bottom: tier(99): unknown; allowed: a tier of the trade, or none",
		"bottom_group | policy: bottom group: maturity group(99): unknown; allowed: A to E, or none",
		"bottom_dark | policy: bottom dark: dark cut(99): unknown; allowed: one third, two thirds or full, or none",
		"top_group | policy: top group: maturity group(99): unknown; allowed: A to E, or none",
		"ceiling | policy: ceiling: 3.65: out of range; allowed: 0 to 10 in whole tenths",
		"lean_select | policy: lean select: 4: out of range; allowed: 0 to the ceiling",
		"exchange | policy: exchange: -1: out of range; allowed: 0 to 10 with at most 6 places",
		"darkness | policy: darkness: -1: out of range; allowed: 0 to 500 points",
		"ties[1] | policy: ties: quality tier: unknown; allowed: lean color, marbling, yield, muscling, trimness, dark cutting, texture, firmness",
		"ties[2] | policy: ties: yield: repeated; allowed: every ground once",
	}
	faulttest.All(t, "Check", p.Check(), want...)
	g := graded(t, four())
	_, err := g.Splits(class.DefaultPolicy(), p)
	for i, line := range want {
		want[i] = "policies[1]." + strings.Replace(line, "| ", "| policy 2: ", 1)
	}
	faulttest.All(t, "Splits", err, want...)
	_, err = g.Splits()
	faulttest.All(t, "Splits of none", err, "policies | policies: 0: out of range; allowed: two or more")
	v := valuePolicy()
	v.Close, v.Walk, v.Grid.Base = grade.Grades(-1), true, decimal.Zero
	faulttest.All(t, "with a grid", v.Check(),
		"close | policy: close: -1: out of range; allowed: 0 to 10",
		"grid | policy: grid: week of 2025-01-06: out of range; allowed: no other rule beside it",
		"grid.base | policy: grid: base: 0.00: out of range; allowed: over 0.00",
	)
	v.Close, v.Walk = grade.Grades(0.3), false
	good := class.Past{Class: g, Order: placing.MustParseOrder("3-1-2-4")}
	_, err = class.Replay([]class.Policy{class.DefaultPolicy(), v}, good, class.Past{}, class.Past{Class: g, Order: placing.MustParseOrder("2-1")}, class.Past{Class: g, Order: good.Order, Cuts: placing.MustParseCuts("2-3")})
	faulttest.All(t, "Replay", err,
		"past[1].class | past class 2: class: missing; allowed: a class that Class.Grade has graded",
		"past[2].order | past class 3: order: 2-1: out of range; allowed: an order of the 4 exhibits",
		"past[3].cuts | past class 4: cuts: 2-3: out of range; allowed: 3 cuts for 4 exhibits",
		"policies[1].grid.base | policy 2: policy: grid: base: 0.00: out of range; allowed: over 0.00",
	)
	_, err = class.Fit(class.Policy{Tiers: class.DefaultPolicy().Tiers, Close: grade.Grades(-1)})
	faulttest.All(t, "Fit", err,
		"policy.close | policy: close: -1: out of range; allowed: 0 to 10",
		"past | past classes: missing; allowed: one or more",
		"policy.exchange | policy: exchange: missing; allowed: a policy with an exchange",
	)
}

// TestPricesTellAll has exhibits without a price: each is told by its place in the
// class as given.
func TestPricesTellAll(t *testing.T) {
	c := four()
	c.Posted = grade.Weight{}
	c.Exhibits[0], c.Exhibits[2] = c.Exhibits[2], c.Exhibits[0]
	c.Exhibits[1].Carcass.Measures.Weight, c.Exhibits[2].Carcass.Measures.Weight = grade.Pounds(300), grade.Pounds(310)
	g := graded(t, c)
	_, err := g.ByValue(grid(t), price.ByHead, map[int][]price.Attribute{7: nil, -1: nil})
	paths(t, "ByValue", err, "attributes", "attributes", "exhibits[2]", "exhibits[1]")
	_, err = g.ByValue(grid(t), nil, nil)
	paths(t, "no comparison", err, "", "exhibits[2]", "exhibits[1]")
	_, err = g.Place(valuePolicy())
	paths(t, "Place", err, "exhibits[2]", "exhibits[1]")
	_, err = class.Replay([]class.Policy{valuePolicy()}, class.Past{Class: g, Order: placing.MustParseOrder("3-1-2-4")})
	paths(t, "Replay", err, "past[0].class.exhibits[2]", "past[0].class.exhibits[1]")
}

func paths(t *testing.T, what string, err error, want ...string) {
	t.Helper()
	var got []string
	for _, p := range placing.Problems(err) {
		got = append(got, p.Path)
	}
	if d := cmp.Diff(want, got); d != "" {
		t.Errorf("%s: paths (-want +got):\n%s%v", what, d, err)
	}
}

// TestClassJSON reads a class as a program or a person writes it.
func TestClassJSON(t *testing.T) {
	const in = `{"rules":{"edition":"2017"},"posted":"800 lb",
		"exhibits":[{"number":2,"sex":"steer","maturity":{"skeletal":"A60","lean":"A50"},"marbling":"Sm40","measures":{"fat":0.5,"ribeye":"13.4 sq in","kph":2.5}},
			{"number":1,"sex":"Heifer","maturity":{"skeletal":"A60","lean":"A50"},"marbling":"small 10","measures":{"fat":"0.4","ribeye":13,"kph":0}}],
		"walk":[{"site":"fat over rump","order":"2 1"}]}`
	var c class.Class
	if err := json.Unmarshal([]byte(in), &c); err != nil {
		t.Fatal(err)
	}
	if c.Posted != grade.Pounds(800) || c.Exhibits[1].Carcass.Measures.KPH != grade.Percent(0) || c.Walk[0].Order.String() != "2 1" {
		t.Errorf("%+v", c)
	}
	past := class.Past{Class: graded(t, c), Order: placing.MustParseOrder("1-2")}
	b, err := json.Marshal(past)
	if err != nil {
		t.Fatal(err)
	}
	var back class.Past
	if err := json.Unmarshal(b, &back); err != nil {
		t.Fatal(err)
	}
	if d := cmp.Diff(past, back); d != "" || back.Class.Assessment(1) != past.Class.Assessment(1) {
		t.Errorf("a past class (-want +got):\n%s", d)
	}
	if err := json.Unmarshal([]byte(`{"class":null}`), &back); err != nil || back.Class.Len() != 2 {
		t.Errorf("null: %v", err)
	}
	before := c
	err = json.Unmarshal([]byte(`{"postd":800,"exhibits":[{"number":1,"measures":{"fat":"thick","ribey":12}},{"nmber":2}],"walk":[{"site":"tail","order":"1 1"}]}`), &c)
	paths(t, "a class that cannot be read", err, "exhibits[0].measures.fat", "exhibits[0].measures.ribey", "exhibits[1].nmber", "walk[0].site", "walk[0].order", "postd")
	if d := cmp.Diff(before, c); d != "" {
		t.Errorf("changed by a failed reading:\n%s", d)
	}
	var g class.Graded
	for text, want := range map[string]string{
		`{"exhibits":[]}`: "exhibits: 0: out of range; allowed: 2 to 12",
		`{"exhibits":{}}`: `exhibits: {}: bad syntax; allowed: text in quotes, or a number where the field is one`,
	} {
		wantError(t, text, want, json.Unmarshal([]byte(text), &g))
	}
	var p class.Policy
	err = json.Unmarshal([]byte(`{"tiers":[["prime"],["veal"]],"advantages":[{"tiers":1,"yields":"1.5"},{"yield":"much"}],"ties":["luck"]}`), &p)
	paths(t, "a policy that cannot be read", err, "tiers[1][0]", "advantages[0].yields", "advantages[1].yield", "ties[0]")
	p = valuePolicy()
	kept := p.Grid
	if err := json.Unmarshal([]byte(`{"name":"bare"}`), &p); err != nil || p.Grid != nil || p.Name != "bare" || kept.Name == "" {
		t.Errorf("what is not there is not set: %+v, %v", p, err)
	}
	if err := json.Unmarshal([]byte("null"), &p); err != nil || p.Name != "bare" {
		t.Errorf("null: %+v, %v", p, err)
	}
	var u class.Advantage
	if err := json.Unmarshal([]byte(`{"tiers":2,"yield":1.5}`), &u); err != nil || u.Yield != grade.Grades(1.5) {
		t.Errorf("%+v, %v", u, err)
	}
}

func ExampleClass_UnmarshalJSON() {
	var c class.Class
	err := json.Unmarshal([]byte(`{"rules":{"edition":"2017"},"exhibits":[{"number":1,"measures":{"fat":"half an inch","ribey":12}}]}`), &c)
	for _, p := range placing.Problems(err) {
		fmt.Println(p.Path, p.Err)
	}
	// Output:
	// exhibits[0].measures.fat bad syntax
	// exhibits[0].measures.ribey unknown
}

func ExamplePlacing_ProposeCuts() {
	// A committee that puts 1 over 3, which the policy would not.
	p := examplePlacing()
	settled := placing.MustParseOrder("1-3-2-4")
	own, _ := p.ProposeCuts(p.Order, 0)
	theirs, err := p.ProposeCuts(settled, 0)
	fmt.Println(p.Order, own.Cuts, own.Weights)
	fmt.Println(settled, theirs.Cuts, theirs.Weights, err)
	// Output:
	// 3-1-2-4 3-2-8 [1.322 0.598 3]
	// 1-3-2-4 1-1-7 [0 0.238 3] <nil>
}
