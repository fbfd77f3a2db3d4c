package class_test

import (
	"encoding/json"
	"os"
	"testing"

	"example.com/ribface/grade"
	"example.com/ribface/grade/price"
	"example.com/ribface/maturity"
	"example.com/ribface/placing"
	"example.com/ribface/placing/class"
	"github.com/google/go-cmp/cmp"
	"github.com/shopspring/decimal"
	"pgregory.net/rapid"
)

// tenths is a yield of so many tenths of a grade, twentieths of so many twentieths.
func tenths(n int) grade.Yield     { return grade.YieldUnits(int64(n) * grade.OneGrade / 10) }
func twentieths(n int) grade.Yield { return grade.YieldUnits(int64(n) * grade.OneGrade / 20) }

// weekly are the averages of the public weekly report for one week (official:
// ams-ct155-2025-01-06) with a base of 300.
func weekly() price.Offer {
	text, err := os.ReadFile("../../examples/prices/week-2025-01-06.json")
	if err != nil {
		panic(err)
	}
	var terms price.Offer
	if err := json.Unmarshal(text, &terms); err != nil {
		panic(err)
	}
	terms.Base = decimal.New(300, 0)
	return terms
}

// steer makes an invented steer from figures in inches, square inches, percent
// and pounds.
func steer(marbling string, fat, ribeye, kph, weight float64) grade.Carcass {
	return grade.Carcass{
		Sex:      grade.Steer,
		Maturity: maturity.Evidence{Skeletal: maturity.A.At(60), Lean: maturity.A.At(50)},
		Marbling: grade.MustParseMarbling(marbling),
		Measures: grade.Measures{Fat: grade.Inches(fat), Ribeye: grade.SquareInches(ribeye), KPH: grade.Percent(kph), Weight: grade.Pounds(weight)},
	}
}

// classOf numbers the carcasses from 1.
func classOf(carcasses ...grade.Carcass) class.Class {
	c := class.Class{Rules: grade.Rules{Edition: grade.Current}}
	for i, x := range carcasses {
		c.Exhibits = append(c.Exhibits, class.Exhibit{Number: i + 1, Carcass: x})
	}
	return c
}

// four is an invented class of four with a walk over some sites.
func four() class.Class {
	c := classOf(
		steer("Sm40", 0.50, 13.4, 2.5, 806),
		steer("Sl60", 0.30, 14.6, 2.0, 798),
		steer("Mt50", 0.60, 13.0, 3.0, 812),
		steer("Tr80", 0.70, 11.8, 3.5, 790),
	)
	c.Posted = grade.Pounds(800)
	c.Walk = class.Walk{
		{Site: class.FatRump, Order: class.MustParseRanking("1 4 3 2")},
		{Site: class.FatLoinEdge, Order: class.MustParseRanking("1 3=4 2")},
		{Site: class.RoundPlumpness, Order: class.MustParseRanking("2 1 3 4")},
		{Site: class.MuscleLoin, Order: class.MustParseRanking("2 3 1 4")},
	}
	return c
}

// tester is what the tests and the property tests have in common.
type tester interface {
	Helper()
	Fatal(args ...any)
}

func graded(t tester, c class.Class) class.Graded {
	t.Helper()
	g, err := c.Grade()
	if err != nil {
		t.Fatal(err)
	}
	return g
}

func placed(t tester, c class.Class) (class.Graded, class.Placing) {
	t.Helper()
	g := graded(t, c)
	p, err := g.Place(class.DefaultPolicy())
	if err != nil {
		t.Fatal(err)
	}
	return g, p
}

// placedBy places a class by another policy.
func placedBy(t tester, c class.Class, by class.Policy) class.Placing {
	t.Helper()
	p, err := graded(t, c).Place(by)
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// cycle is an invented class that the default policy runs in a cycle: Prime, top
// Choice and low Choice with yields of 4.4, 3.2 and 2.2.
func cycle() class.Class {
	return classOf(
		steer("SlAb20", 0.8, 12, 3.5, 800),
		steer("Md10", 0.5, 12.5, 2.05, 800),
		steer("Sm30", 0.3, 14, 1.95, 800),
	)
}

// drawCarcass draws a carcass, usual ones mostly, so that tiers and yields are
// near to each other.
func drawCarcass(t *rapid.T) grade.Carcass {
	step := func(name string, lo, hi, by int) int32 {
		return int32(rapid.IntRange(lo/by, hi/by).Draw(t, name) * by)
	}
	c := grade.Carcass{
		Sex:      rapid.SampledFrom([]grade.Sex{grade.Steer, grade.Steer, grade.Heifer, grade.Cow, grade.Bullock, grade.Bull}).Draw(t, "sex"),
		Marbling: grade.Marbling(rapid.IntRange(30, 90).Draw(t, "marbling") * 10),
		Maturity: maturity.Evidence{
			Skeletal: maturity.Score(rapid.SampledFrom([]int{130, 150, 170, 190, 200, 230, 310, 420}).Draw(t, "skeletal")),
			Lean:     maturity.Score(rapid.SampledFrom([]int{120, 150, 180, 210, 320}).Draw(t, "lean")),
		},
		Lean: grade.Lean{
			Firmness: grade.Firmness(rapid.SampledFrom([]int{0, 0, 0, 2, 3, 5, 7}).Draw(t, "firmness")),
			Dark:     grade.DarkCut(rapid.SampledFrom([]int{0, 0, 0, 0, 1, 3}).Draw(t, "dark")),
		},
		Measures: grade.Measures{
			Fat:    grade.ThicknessUnits(int64(step("fat", 1000, 12000, 500))),
			Ribeye: grade.AreaUnits(int64(step("ribeye", 90_000, 170_000, 2500))),
			KPH:    grade.ShareUnits(int64(step("KPH", 10_000, 40_000, 5000))),
			Weight: grade.WeightUnits(int64(step("weight", 6_500_000, 9_000_000, 50_000))),
		},
	}
	if rapid.IntRange(0, 4).Draw(t, "adjusted") == 0 {
		c.FatAdjust = grade.ThicknessUnits(int64(step("adjustment", -1000, 2000, 1000)))
	}
	return c
}

func drawRanking(t *rapid.T, n int) placing.Ranking {
	scores := make([]int, n)
	for i := range scores {
		scores[i] = rapid.IntRange(1, n).Draw(t, "score")
	}
	r, err := placing.RankScores(scores...)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// drawClass draws a class of steers alone where mixed is false.
func drawClass(t *rapid.T, most int) class.Class {
	n := rapid.IntRange(2, most).Draw(t, "n")
	c := class.Class{Rules: grade.Rules{Edition: grade.Current}}
	for i := range n {
		c.Exhibits = append(c.Exhibits, class.Exhibit{Number: i + 1, Carcass: drawCarcass(t)})
	}
	if rapid.Bool().Draw(t, "posted") {
		c.Posted = grade.Pounds(800)
	}
	for s := range class.Sites() {
		if rapid.IntRange(0, 5).Draw(t, "look") == 0 {
			c.Walk = append(c.Walk, class.Look{Site: s, Order: drawRanking(t, n)})
		}
	}
	return c
}

func drawOrder(t *rapid.T, n int) placing.Order {
	list := make([]int, n)
	for i := range list {
		list[i] = i + 1
	}
	o, err := placing.NewOrder(rapid.Permutation(list).Draw(t, "order")...)
	if err != nil {
		t.Fatal(err)
	}
	return o
}

// relabel gives every exhibit e the number to.At(e), in the walk too.
func relabel(t *rapid.T, c class.Class, to placing.Order) class.Class {
	out := c
	out.Exhibits, out.Walk = nil, nil
	for _, e := range c.Exhibits {
		e.Number = to.At(e.Number)
		out.Exhibits = append(out.Exhibits, e)
	}
	for _, l := range c.Walk {
		groups := l.Order.Groups()
		for _, g := range groups {
			for i, e := range g {
				g[i] = to.At(e)
			}
		}
		r, err := placing.NewRanking(groups...)
		if err != nil {
			t.Fatal(err)
		}
		out.Walk = append(out.Walk, class.Look{Site: l.Site, Order: r})
	}
	return out
}

func wantError(t *testing.T, name, want string, err error) {
	t.Helper()
	if err == nil {
		t.Errorf("%s: no error, want %s", name, want)
		return
	}
	if diff := cmp.Diff(want, err.Error()); diff != "" {
		t.Errorf("%s (-want +got):\n%s", name, diff)
	}
}
