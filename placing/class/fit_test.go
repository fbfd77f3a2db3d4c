package class_test

import (
	"errors"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"example.com/ribface/grade"
	"example.com/ribface/grade/price"
	"example.com/ribface/internal/refs"
	"example.com/ribface/internal/testkit"
	"example.com/ribface/maturity"
	"example.com/ribface/placing"
	"example.com/ribface/placing/class"
	"github.com/google/go-cmp/cmp"
	"github.com/shopspring/decimal"
)

// fairs are the carcasses of one county fair's contest in three years, in the order
// in which they ranked (published: fair-tehama-2018, fair-tehama-2020,
// fair-tehama-2022), read from fair-carcasses.csv; conformance.Fair says how.
func fairs(t *testing.T) []class.Past {
	t.Helper()
	var years [][]refs.Row
	for _, r := range refs.Rows(t, "../../testdata/references", "fair-carcasses.csv") {
		if n := len(years); n == 0 || years[n-1][0].Get("source_id") != r.Get("source_id") {
			years = append(years, nil)
		}
		years[len(years)-1] = append(years[len(years)-1], r)
	}
	var past []class.Past
	for _, year := range years {
		var carcasses []grade.Carcass
		places := ""
		for _, r := range year {
			c, err := fair(r)
			if err != nil {
				t.Fatal(err)
			}
			carcasses = append(carcasses, c)
			places += "-" + r.Get("place")
		}
		o, err := placing.ParseOrder(places[1:])
		if err != nil {
			t.Fatal(err)
		}
		for i := range year { // the carcasses are numbered by the rows
			if o.At(i+1) != i+1 {
				t.Fatalf("places %v, not in the order of the rows", o)
			}
		}
		g := graded(t, classOf(carcasses...))
		for i, r := range year {
			stated, err := grade.ParseYield(r.Get("stated"))
			if y, yErr := g.Assessment(i+1).Yield.Round(grade.HalfUp, 2); err != nil || yErr != nil || y != stated {
				t.Errorf("yield %v, stated %v, %v, %v", y, stated, err, yErr)
			}
		}
		past = append(past, class.Past{Class: g, Order: o})
	}
	return past
}

// leanGrid is an invented grid that pays more for a step of yield than for Prime.
func leanGrid() class.Policy {
	yield := func(fromTenths, toTenths int, amount int64) price.Band[grade.Yield] {
		b := price.Band[grade.Yield]{From: tenths(fromTenths), To: tenths(toTenths), Amount: decimal.New(amount, 0)}
		if toTenths == 0 {
			b.To = grade.Yield{} // open
		}
		return b
	}
	p := class.ValuePolicy(price.Offer{
		Name: "invented, lean", Base: decimal.New(300, 0), YieldEdge: price.EdgeUpper,
		Tiers: []price.TierAmount{{Tier: grade.PrimeTier, Amount: decimal.New(12, 0)}, {Tier: grade.TopChoice, Amount: decimal.New(8, 0)}, {Tier: grade.LowChoice}, {Tier: grade.SelectTier, Amount: decimal.New(-20, 0)}},
		Yield: []price.Band[grade.Yield]{yield(10, 20, 15), yield(20, 30, 8), yield(30, 35, 0), yield(35, 40, -2), yield(40, 0, -15)},
	})
	p.ByCwt = true
	return p
}

// TestReplayOfFairs asks what each policy explains of the published ranks of 19
// pairs of real carcasses. Quality first has 14 of them right and strict cutability
// 11. Value has 12 or 11 on the published grid of 2025, which pays 17.54 for Prime
// and at most 3.35 for yield, and 15 on an invented one that pays more for a step of
// yield than for Prime: so it is for the grid to say whether value explains more.
func TestReplayOfFairs(t *testing.T) {
	cwt := valuePolicy()
	cwt.ByCwt = true
	records, err := class.Replay(append(class.Policies(), valuePolicy(), cwt, leanGrid()), fairs(t)...)
	if err != nil {
		t.Fatal(err)
	}
	type line struct {
		Name                        string
		Lost, Pairs, Missed, Untold int
	}
	var got []line
	for _, r := range records {
		got = append(got, line{r.Policy.Name, r.Lost, r.Pairs, r.Missed, r.Untold})
	}
	want := []line{
		{"coach", 6, 19, 5, 0},
		{"course notes", 6, 19, 5, 0},
		{"strict cutability", 11, 19, 8, 0},
		{"value", 12, 19, 7, 0}, // by head, weight tells
		{"value", 8, 19, 6, 2},  // by cwt
		{"value", 4, 19, 2, 2},  // on a grid that pays more for a step of yield than for Prime
	}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Errorf("records (-want +got):\n%s", diff)
	}
}

func TestFitOfFairs(t *testing.T) {
	fit, err := class.Fit(class.DefaultPolicy(), fairs(t)...)
	if err != nil {
		t.Fatal(err)
	}
	y := func(hundredths int) grade.Yield { return grade.YieldUnits(int64(hundredths) * grade.OneGrade / 100) }
	want := []class.Fitted{
		{"advantage over 1 tier", y(70), y(70), y(70), true},
		{"advantage over 2 tiers", y(200), y(80), y(290), false},
		{"advantage over 3 tiers", y(300), y(210), y(500), false},
		{"ceiling", y(360), y(300), y(600), false},
		{"exchange", y(50), y(45), y(200), true},
		{"close", y(30), y(0), y(100), false},
	}
	if diff := cmp.Diff(want, fit.Settings); diff != "" || fit.Before != 6 || fit.Lost != 2 {
		t.Errorf("before %d, lost %d, settings (-want +got):\n%s", fit.Before, fit.Lost, diff)
	}
	warnings := []string{
		"No pair of these classes turns on the advantage over 2 tiers: they cannot tell it.",
		"No pair of these classes turns on the advantage over 3 tiers: they cannot tell it.",
		"No pair of these classes turns on the ceiling: they cannot tell it.",
		"These classes set no upper bound to the exchange.",
		"No pair of these classes turns on the close: they cannot tell it.",
	}
	if diff := cmp.Diff(warnings, fit.Warnings); diff != "" {
		t.Errorf("warnings (-want +got):\n%s", diff)
	}
	// The policy fitted loses what the fitting says.
	r, err := class.Replay([]class.Policy{fit.Policy}, fairs(t)...)
	if err != nil || r[0].Lost != fit.Lost {
		t.Errorf("replayed %+v, %v", r, err)
	}
}

// committee places invented classes by a policy of its own.
func committee(t *testing.T, p class.Policy, seed uint64, classes int) []class.Past {
	t.Helper()
	r := rand.New(rand.NewPCG(seed, 1))
	var past []class.Past
	for range classes {
		var carcasses []grade.Carcass
		for range 4 {
			carcasses = append(carcasses, rib(grade.Marbling(400+5*r.IntN(95)).String(), 0.1+0.05*float64(r.IntN(26)), 11+0.1*float64(r.IntN(45))))
		}
		c := classOf(carcasses...)
		for _, s := range []class.Site{class.FatRump, class.FatRib, class.RoundPlumpness} {
			order, _ := placing.RankScores(r.IntN(4), r.IntN(4), r.IntN(4), r.IntN(4))
			c.Walk = append(c.Walk, class.Look{Site: s, Order: order})
		}
		g := graded(t, c)
		placed, err := g.Place(p)
		if err != nil {
			t.Fatal(err)
		}
		if placed.Cycles != nil || placed.Equal > 1 {
			continue // what a committee makes of a cycle, or of two alike, is no word on a pair
		}
		cuts, err := placed.ProposeCuts(placed.Order, 0)
		if err != nil {
			t.Fatal(err)
		}
		past = append(past, class.Past{Class: g, Order: placed.Order, Cuts: cuts.Cuts})
	}
	return past
}

// TestFitFindsTheCommittee finds the values of invented committees again: from 300
// classes each to half a grade, and in a sample from 100 classes each to a grade.
func TestFitFindsTheCommittee(t *testing.T) {
	classes, width := 300, tenths(5)
	if !testkit.Exhaustive() {
		classes, width = 100, tenths(10)
	}
	for seed, set := range []func(p *class.Policy){
		func(p *class.Policy) {},
		func(p *class.Policy) {
			p.Advantages[0].Yield, p.Advantages[1].Yield, p.Advantages[2].Yield = tenths(9), tenths(14), tenths(22)
			p.Ceiling, p.Exchange, p.Close = tenths(34), tenths(8), tenths(2)
		},
		func(p *class.Policy) {
			p.Advantages[0].Yield, p.Advantages[1].Yield, p.Advantages[2].Yield = tenths(19), tenths(26), tenths(31)
			p.Ceiling, p.Exchange, p.Close = tenths(40), tenths(3), tenths(5)
		},
	} {
		theirs := class.DefaultPolicy()
		set(&theirs)
		past := committee(t, theirs, uint64(seed), classes)
		fit, err := class.Fit(class.DefaultPolicy(), past...)
		if err != nil {
			t.Fatal(err)
		}
		want := []grade.Yield{theirs.Advantages[0].Yield, theirs.Advantages[1].Yield, theirs.Advantages[2].Yield, theirs.Ceiling, theirs.Exchange, theirs.Close}
		if fit.Lost != 0 || len(fit.Settings) != len(want) {
			t.Errorf("committee %d: %d points lost, %d before: %+v", seed, fit.Lost, fit.Before, fit.Settings)
		}
		for i, s := range fit.Settings {
			if !s.Told || s.Least.Compare(want[i]) > 0 || s.Most.Compare(want[i]) < 0 || s.Value.Compare(s.Least) < 0 || s.Value.Compare(s.Most) > 0 || s.Most.Sub(s.Least).Compare(width) > 0 {
				t.Errorf("committee %d: %+v, want %v", seed, s, want[i])
			}
		}
		if seed == 0 && (fit.Before != 0 || !cmp.Equal(fit.Policy, theirs)) {
			t.Errorf("the default policy moved: %+v", fit)
		}
	}
}

// TestFitIsLeast finds no policy among many that loses fewer points than the one
// fitted to committees that agree with none.
func TestFitIsLeast(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 5))
	past := committee(t, class.DefaultPolicy(), 9, 12)
	for i := range past {
		list := slices.Collect(past[i].Order.Exhibits())
		at := r.IntN(3)
		list[at], list[at+1] = list[at+1], list[at]
		past[i].Order, _ = placing.NewOrder(list...)
	}
	fit, err := class.Fit(class.DefaultPolicy(), past...)
	if err != nil {
		t.Fatal(err)
	}
	lost := func(p class.Policy) (points int) {
		for _, c := range past {
			for a := 1; a <= 4; a++ {
				for b := a + 1; b <= 4; b++ {
					d, err := c.Class.Decide(p, a, b)
					if err != nil {
						t.Fatal(err)
					}
					if d.Ground != 0 && c.Order.Place(d.Upper) < c.Order.Place(d.Lower) {
						continue
					}
					first, last := c.Order.Place(a), c.Order.Place(b)
					for k := min(first, last); k < max(first, last); k++ {
						points += c.Cuts.At(k)
					}
				}
			}
		}
		return points
	}
	if got := lost(fit.Policy); got != fit.Lost || lost(class.DefaultPolicy()) != fit.Before || fit.Lost >= fit.Before || fit.Lost == 0 {
		t.Errorf("lost %d, told %d; before %d, told %d", got, fit.Lost, lost(class.DefaultPolicy()), fit.Before)
	}
	// Wherever it starts it finds as little to lose.
	other := class.DefaultPolicy()
	other.Advantages[0].Yield, other.Ceiling, other.Exchange, other.Close = tenths(10), tenths(50), tenths(20), tenths(10)
	if again, err := class.Fit(other, past...); err != nil || again.Lost != fit.Lost {
		t.Errorf("from another policy: %+v, %v", again, err)
	}
	tries := 3000
	if !testkit.Exhaustive() {
		tries = 100
	}
	for range tries {
		p := class.DefaultPolicy()
		rise := []int{1 + r.IntN(50), 1 + r.IntN(50), 1 + r.IntN(50)}
		slices.Sort(rise)
		if rise[0] == rise[1] || rise[1] == rise[2] {
			continue
		}
		for i := range p.Advantages {
			p.Advantages[i].Yield = tenths(rise[i])
		}
		p.Ceiling = tenths(30 + r.IntN(31))
		p.Exchange = twentieths(1 + r.IntN(40))
		p.Close = twentieths(r.IntN(21))
		if n := lost(p); n < fit.Lost {
			t.Fatalf("%+v loses %d, the fitted policy %d: %+v", p, n, fit.Lost, fit.Settings)
		}
	}
	// The ends of each range lose no more, and a step beyond them does, unless the
	// values end or another advantage stands there.
	for i, s := range fit.Settings {
		set := func(y grade.Yield) class.Policy {
			p := fit.Policy
			p.Advantages = slices.Clone(p.Advantages)
			switch s.Setting {
			case "ceiling":
				p.Ceiling = y
			case "exchange":
				p.Exchange = y
			case "close":
				p.Close = y
			default:
				p.Advantages[i].Yield = y
			}
			return p
		}
		step := tenths(1)
		if s.Setting == "exchange" || s.Setting == "close" {
			step = twentieths(1)
		}
		if lost(set(s.Least)) != fit.Lost || lost(set(s.Most)) != fit.Lost {
			t.Errorf("%+v: the ends lose %d and %d", s, lost(set(s.Least)), lost(set(s.Most)))
		}
		for _, y := range []grade.Yield{s.Least.Sub(step), s.Most.Add(step)} {
			p := set(y)
			top := tenths(50) // the most that Fit tries
			switch s.Setting {
			case "ceiling":
				top = tenths(60)
			case "exchange":
				top = tenths(20)
			case "close":
				top = tenths(10)
			}
			if p.Check() == nil && y.Compare(top) <= 0 && (s.Setting != "exchange" || y.Units() > 0) && lost(p) <= fit.Lost {
				t.Errorf("%+v: %v loses no more", s, y)
			}
		}
	}
}

// TestFitOfOtherPolicies fits policies without walk, ceiling or advantages.
func TestFitOfOtherPolicies(t *testing.T) {
	past := committee(t, class.DefaultPolicy(), 3, 20)
	names := func(p class.Policy) (all []string) {
		fit, err := class.Fit(p, past...)
		if err != nil {
			t.Fatal(err)
		}
		for _, s := range fit.Settings {
			all = append(all, s.Setting)
		}
		if err := fit.Policy.Check(); err != nil || fit.Lost > fit.Before {
			t.Errorf("%+v, %v", fit, err)
		}
		return all
	}
	p := class.DefaultPolicy()
	p.Walk = false
	if diff := cmp.Diff([]string{"advantage over 1 tier", "advantage over 2 tiers", "advantage over 3 tiers", "ceiling", "exchange"}, names(p)); diff != "" {
		t.Errorf("without a walk (-want +got):\n%s", diff)
	}
	p.Ceiling, p.LeanSelect = grade.Yield{}, grade.Yield{}
	p.Advantages = p.Advantages[:1]
	p.Exchange = grade.Grades(0.53) // between the steps
	if diff := cmp.Diff([]string{"advantage over 1 tier", "exchange"}, names(p)); diff != "" {
		t.Errorf("one advantage (-want +got):\n%s", diff)
	}
	p = class.DefaultPolicy()
	p.Advantages = nil
	if diff := cmp.Diff([]string{"ceiling", "exchange", "close"}, names(p)); diff != "" {
		t.Errorf("no advantage (-want +got):\n%s", diff)
	}
}

func TestFitRefused(t *testing.T) {
	past := fairs(t)
	zero := class.Past{Order: past[0].Order}
	short := past[1]
	short.Order = past[0].Order
	cuts := past[0]
	cuts.Cuts = placing.MustParseCuts("2-2")
	for _, tt := range []struct {
		name   string
		policy class.Policy
		past   []class.Past
		want   string
	}{
		{"nothing", class.DefaultPolicy(), nil, "past classes: missing; allowed: one or more"},
		{"a zero class", class.DefaultPolicy(), []class.Past{past[0], zero}, "past class 2: class: missing; allowed: a class that Class.Grade has graded"},
		{"an order of five for four", class.DefaultPolicy(), []class.Past{short}, "past class 1: order: 1-2-3-4-5: out of range; allowed: an order of the 4 exhibits"},
		{"a zero policy", class.Policy{}, past, "policy: tiers: prime, top choice, low choice, select, standard, below standard not listed: missing; allowed: every tier once\npolicy: exchange: missing; allowed: a policy with an exchange"},
		{"no exchange", class.NotesPolicy(), past, "policy: exchange: missing; allowed: a policy with an exchange"},
	} {
		_, err := class.Fit(tt.policy, tt.past...)
		wantError(t, tt.name, tt.want, err)
		if tt.name == "no exchange" {
			continue
		}
		_, err = class.Replay([]class.Policy{tt.policy}, tt.past...)
		if tt.name == "a zero policy" {
			tt.want, _, _ = strings.Cut("policy 1: "+tt.want, "\n") // an exchange is no need
		}
		wantError(t, tt.name, tt.want, err)
	}
	light := four()
	light.Posted = grade.Pounds(300)
	_, err := class.Replay([]class.Policy{class.DefaultPolicy(), valuePolicy()}, past[0], class.Past{Class: graded(t, light), Order: placing.MustParseOrder("1-2-3-4"), Cuts: placing.MustParseCuts("3-4-5")})
	wantError(t, "no price", "policy 2: past class 2: exhibit 1: weight: 300 lb: no price; allowed: 400 lb and over\npolicy 2: past class 2: exhibit 2: weight: 300 lb: no price; allowed: 400 lb and over\npolicy 2: past class 2: exhibit 3: weight: 300 lb: no price; allowed: 400 lb and over\npolicy 2: past class 2: exhibit 4: weight: 300 lb: no price; allowed: 400 lb and over", err)
	for _, err := range []error{
		func() error { _, err := class.Fit(class.DefaultPolicy(), cuts); return err }(),
		func() error { _, err := class.Replay(class.Policies(), cuts); return err }(),
	} {
		if !errors.Is(err, placing.ErrRange) {
			t.Errorf("two cuts for five: %v", err)
		}
	}
}

// TestFitOfFirmPairs has pairs that no setting turns: they lose what they
// lose.
func TestFitOfFirmPairs(t *testing.T) {
	g := graded(t, classOf(rib("Sl40", 0.4, 13), aged(rib("Md40", 0.3, 14), maturity.C.At(50), maturity.C.At(20))))
	fit, err := class.Fit(class.DefaultPolicy(), class.Past{Class: g, Order: placing.MustParseOrder("2-1"), Cuts: placing.MustParseCuts("7")})
	if err != nil || fit.Before != 7 || fit.Lost != 7 || !cmp.Equal(fit.Policy, class.DefaultPolicy()) {
		t.Errorf("%+v, %v", fit, err)
	}
}
