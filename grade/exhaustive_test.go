package grade_test

import (
	"fmt"
	"math/big"
	"math/rand/v2"
	"os"
	"runtime"
	"slices"
	"strconv"
	"strings"
	"sync"
	"testing"

	"example.com/ribface/grade"
	"example.com/ribface/internal/testkit"
	"example.com/ribface/maturity"
	"github.com/shopspring/decimal"
)

// The charts of testdata/charts.txt and the slow way to read a grade off them. It
// shares no code and no table with the package: names, numbers and rules are
// written out again here.

// slowCell is one part of a grade in one group.
type slowCell struct {
	part, grade string
	young, old  int // hundredths of a degree, Practically Devoid 00 = 100
	firm        int // 0 none known, 2 soft ... 7 firm
}

// at is the line so many units into the group, as an exact number: units may be
// 100, at the end of E.
func (c slowCell) at(units int) *big.Rat {
	return big.NewRat(int64(c.young*100+(c.old-c.young)*units), 100)
}

// slowChart is one edition's chart: cells of each group, best first.
type slowChart map[byte][]slowCell

var slowDegrees = map[string]int{"De": 0, "PD": 100, "Tr": 200, "Sl": 300, "Sm": 400, "Mt": 500, "Md": 600, "SlAb": 700, "MAb": 800, "Ab": 900}

func slowMarbling(s string) int {
	i := strings.IndexAny(s, "0123456789")
	d, ok := slowDegrees[s[:i]]
	n, err := strconv.Atoi(s[i:])
	if !ok || err != nil {
		panic("charts.txt: marbling " + s)
	}
	return d + n
}

var slowFirmness = map[string]int{"-": 0, "s": 2, "ms": 3, "ss": 4, "sf": 5, "mf": 6, "f": 7}

// slowCharts parses the charts, by edition.
func slowCharts(t *testing.T) map[string]slowChart {
	t.Helper()
	text, err := os.ReadFile("../testdata/charts.txt")
	if err != nil {
		t.Fatal(err)
	}
	out := map[string]slowChart{}
	var now slowChart
	for line := range strings.Lines(string(text)) {
		words := strings.Fields(line)
		switch {
		case len(words) == 0 || words[0] == "grade":
		case words[0] == "editions":
			now = slowChart{}
			for _, e := range words[1:] {
				out[e] = now
			}
		case now != nil:
			part, name := "", words[0]
			words = words[1:]
			switch name {
			case "High", "Average", "Low":
				part, name, words = name, words[0], words[1:]
			}
			for group := byte('A'); group <= 'E'; group++ {
				if words[0] == "." {
					words = words[1:]
					continue
				}
				firm, ok := slowFirmness[words[0]]
				if !ok {
					t.Fatalf("charts.txt: firmness %q", words[0])
				}
				now[group] = append(now[group], slowCell{part, name, slowMarbling(words[1]), slowMarbling(words[2]), firm})
				words = words[3:]
			}
			if len(words) > 0 {
				t.Fatalf("charts.txt: left over: %v", words)
			}
		}
	}
	return out
}

func slowOpen(sex, name string) bool {
	switch sex {
	case "cow":
		return name != "Prime"
	case "bullock":
		return name != "Commercial" && name != "Cutter" && name != "Canner"
	}
	return true
}

// slowAsk is a question to the chart: maturity counted in units from A00 = 0,
// marbling in points from Devoid00 = 0.
type slowAsk struct {
	sex                string
	maturity, marbling int
	firm, dark         int
	belowCutter        bool
}

// column finds the group and the units that are read, or none for a carcass that
// has no grade.
func (q slowAsk) column() (group byte, units int, ok bool) {
	switch {
	case q.sex == "bull", q.sex == "bullock" && q.maturity > 100:
		return 0, 0, false
	case q.sex == "bullock":
		return 'A', 0, true
	case q.maturity == 500:
		return 'E', 100, true
	}
	return 'A' + byte(q.maturity/100), q.maturity % 100, true
}

// slowName writes a quality.
func slowName(part, name string) string {
	if part == "" {
		return name
	}
	return part + " " + name
}

// slowFloor is the lowest cell of a grade in the column.
func slowFloor(column []slowCell, name string, units int) *big.Rat {
	var low *big.Rat
	for _, c := range column {
		if at := c.at(units); c.grade == name && (low == nil || at.Cmp(low) < 0) {
			low = at
		}
	}
	return low
}

// slowGrade is one grade of a column that is open to the class.
type slowGrade struct {
	name  string
	foot  *big.Rat // the lowest of its lines
	width *big.Rat // up to the foot of the next grade, open or not; 300 without one
	firm  int
	cells []slowCell // best part first
}

// slowColumn lists the grades of the column that are open to the class, best
// first; none for a carcass that has no grade.
func slowColumn(chart slowChart, sex string, age int) (grades []slowGrade, units int) {
	group, units, ok := slowAsk{sex: sex, maturity: age}.column()
	if !ok {
		return nil, 0
	}
	for _, c := range chart[group] {
		if n := len(grades); n == 0 || grades[n-1].name != c.grade {
			g := slowGrade{name: c.grade, foot: slowFloor(chart[group], c.grade, units), width: big.NewRat(300, 1), firm: c.firm}
			if n > 0 {
				g.width = new(big.Rat).Sub(grades[n-1].foot, g.foot)
			}
			grades = append(grades, g)
		}
		last := &grades[len(grades)-1]
		last.cells = append(last.cells, c)
	}
	return slices.DeleteFunc(grades, func(g slowGrade) bool { return !slowOpen(sex, g.name) }), units
}

// at names the part at a place of the grade, 0 at the foot and 1 at the top. With
// thirds, an edge on the first whole point at or over a third or two is that third.
func (g slowGrade) at(units int, place *big.Rat, thirds bool) string {
	over := new(big.Rat).Mul(place, g.width)
	for _, c := range g.cells {
		edge := new(big.Rat).Sub(c.at(units), g.foot)
		if third := map[string]int64{"Average": 1, "High": 2}[c.part]; thirds && third > 0 {
			exact := new(big.Rat).Mul(big.NewRat(third, 3), g.width)
			if off := new(big.Rat).Sub(edge, exact); off.Sign() >= 0 && off.Cmp(big.NewRat(1, 1)) < 0 {
				edge = exact
			}
		}
		if over.Cmp(edge) >= 0 {
			return slowName(c.part, g.name)
		}
	}
	return slowName(g.cells[len(g.cells)-1].part, g.name)
}

// part names the best part of the grade that the marbling reaches, or the lowest
// where the grade was reached by its foot alone.
func (g slowGrade) part(units int, marbling *big.Rat) string {
	i := slices.IndexFunc(g.cells, func(c slowCell) bool { return marbling.Cmp(c.at(units)) >= 0 })
	if i < 0 {
		i = len(g.cells) - 1
	}
	return slowName(g.cells[i].part, g.name)
}

// grade answers by going down the column.
func (q slowAsk) grade(column []slowGrade, units int) string {
	marbling := big.NewRat(int64(q.marbling), 1)
	i := slices.IndexFunc(column, func(g slowGrade) bool {
		return marbling.Cmp(g.foot) >= 0 && (q.firm == 0 || q.firm >= g.firm)
	})
	if i < 0 {
		return "No grade"
	}
	g := column[i]
	if g.name == "Cutter" && q.belowCutter {
		return "Canner"
	}
	var most *big.Rat
	switch g.name {
	case "Prime", "Choice", "Select", "Good":
		most = big.NewRat(1, 1)
	case "Standard", "Commercial":
		most = big.NewRat(1, 2)
	}
	if q.dark == 0 || most == nil {
		return g.part(units, marbling)
	}
	// The reduction comes off the carcass's place in its grade, a number from 0 at
	// the foot to 1 at the top, and what is under 0 is counted from the top of the
	// next grade. A carcass kept out of a better grade by its firmness alone stands
	// at the top.
	over := new(big.Rat).Sub(marbling, g.foot)
	if top := new(big.Rat).Sub(g.width, big.NewRat(1, 1)); over.Cmp(top) > 0 {
		over = top
	}
	place := new(big.Rat).Quo(over, g.width)
	place.Sub(place, new(big.Rat).Mul(most, big.NewRat(int64(q.dark), 3)))
	if place.Sign() < 0 {
		g = column[i+1]
		place.Add(place, big.NewRat(1, 1))
	}
	return g.at(units, place, most.IsInt())
}

// slowTable answers every marbling of one sex, maturity, edition, without
// firmness or dark cutting, by filling in a row of 1,001 names from the lowest
// line up: each cell overwrites what it reaches.
func slowTable(chart slowChart, sex string, age int) [1001]string {
	var out [1001]string
	group, units, ok := slowAsk{sex: sex, maturity: age}.column()
	for m := range out {
		out[m] = "No grade"
	}
	if !ok {
		return out
	}
	column := chart[group]
	for _, c := range slices.Backward(column) {
		if !slowOpen(sex, c.grade) {
			continue
		}
		from := c.at(units)
		if foot := slowFloor(column, c.grade, units); from.Cmp(foot) < 0 {
			from = foot
		}
		first := new(big.Int).Neg(from.Num())
		first.Neg(first.Div(first, from.Denom())) // the first whole point on or over the line
		for m := int(first.Int64()); m < len(out); m++ {
			out[m] = slowName(c.part, c.grade)
		}
	}
	return out
}

// everyAge is A00 to E100.
func everyAge() []maturity.Score {
	var all []maturity.Score
	for s := maturity.A.At(0); s <= maturity.E.At(100); s++ {
		all = append(all, s)
	}
	return all
}

// TestEveryMarblingAndMaturity grades every marbling from Devoid00 to Abundant100
// at every maturity from A00 to E100, in every edition and sex class: 12,537,525
// carcasses.
func TestEveryMarblingAndMaturity(t *testing.T) {
	charts := slowCharts(t)
	ages := everyAge()
	if !testkit.Exhaustive() {
		ages = slices.DeleteFunc(ages, func(s maturity.Score) bool { u := s.Units(); return u%33 != 0 && u != 100 })
	}
	var mu sync.Mutex
	carcasses := 0
	t.Run("editions", func(t *testing.T) {
		for e := range grade.Editions() {
			chart, ok := charts[e.String()]
			if !ok {
				t.Fatalf("charts.txt has no edition %v", e)
			}
			t.Run(e.String(), func(t *testing.T) {
				t.Parallel()
				n := 0
				for sex := range grade.Sexes() {
					for _, at := range ages {
						want := slowTable(chart, sex.String(), int(at-maturity.A.At(0)))
						for i, want := range want {
							m := grade.Devoid.At(0) + grade.Marbling(i)
							got, err := e.Quality(grade.Carcass{Sex: sex, Maturity: maturity.Evidence{Skeletal: at, Lean: at}, Marbling: m})
							if err != nil || got.String() != want {
								t.Fatalf("%v, %v, %v: %v, %v; want %s", sex, at, m, got, err, want)
							}
							n++
						}
					}
				}
				mu.Lock()
				carcasses += n
				mu.Unlock()
			})
		}
	})
	if testkit.Exhaustive() && carcasses != 1001*501*5*5 {
		t.Errorf("%d carcasses", carcasses)
	}
	t.Logf("%d carcasses", carcasses)
}

// TestEveryFirmnessAndDarkCut holds the span of a dark cut to a second reading of the
// document of Rules.Quality: it grades a net of marblings and maturities, with both
// sides of every line on it, under every firmness, every step of dark cutting and
// the finding below Cutter, in every edition and sex class, against fractions.
func TestEveryFirmnessAndDarkCut(t *testing.T) {
	charts := slowCharts(t)
	ages := []int{0, 1, 33, 50, 99, 100, 101, 134, 150, 166, 199, 200, 250, 299, 300, 350, 399, 400, 450, 499, 500}
	net := map[int]bool{1000: true}
	for m := 0; m < 1000; m += 50 {
		net[m] = true
	}
	for m := 0; m < 1000; m += 100 {
		net[m+99], net[m+33], net[m+66] = true, true, true
	}
	if !testkit.Exhaustive() { // one in three of these, every firmness with every dark cut among them
		ages = []int{137, 450}
	}
	var marblings []int
	for m := range net {
		marblings = append(marblings, m)
	}
	slices.Sort(marblings)
	var mu sync.Mutex
	carcasses := 0
	t.Run("editions", func(t *testing.T) {
		for e := range grade.Editions() {
			chart := charts[e.String()]
			t.Run(e.String(), func(t *testing.T) {
				t.Parallel()
				n := 0
				for sex := range grade.Sexes() {
					for _, age := range ages {
						at := maturity.A.At(0) + maturity.Score(age)
						column, units := slowColumn(chart, sex.String(), age)
						for _, m := range marblings {
							for firm := range 8 {
								for dark := range 4 {
									if !testkit.Exhaustive() && (m+firm+dark)%3 != 0 {
										continue
									}
									q := slowAsk{sex.String(), age, m, firm, dark, (m+firm+dark)%2 == 0}
									want := q.grade(column, units)
									got, err := e.Quality(grade.Carcass{
										Sex: sex, Maturity: maturity.Evidence{Skeletal: at, Lean: at},
										Marbling: grade.Devoid.At(0) + grade.Marbling(m),
										Lean:     grade.Lean{Firmness: grade.Firmness(firm), Dark: grade.DarkCut(dark), BelowCutter: q.belowCutter},
									})
									if err != nil || got.String() != want {
										t.Fatalf("%+v: %v, %v; want %s", q, got, err, want)
									}
									n++
								}
							}
						}
					}
				}
				mu.Lock()
				carcasses += n
				mu.Unlock()
			})
		}
	})
	if testkit.Exhaustive() && carcasses != len(ages)*len(marblings)*8*4*5*5 {
		t.Errorf("%d carcasses", carcasses)
	}
	t.Logf("%d carcasses", carcasses)
}

// TestEveryDarkCutter grades every marbling under every step of dark cutting, in
// every edition, for the three kinds of columns that the sex classes open, at
// maturities that give lines of odd distances.
func TestEveryDarkCutter(t *testing.T) {
	charts := slowCharts(t)
	ages := []int{0, 50, 100, 101, 137, 150, 199, 200, 263, 350, 450, 500}
	step := 1
	if !testkit.Exhaustive() {
		ages, step = []int{137}, 7
	}
	carcasses := 0
	for e := range grade.Editions() {
		chart := charts[e.String()]
		for _, sex := range []grade.Sex{grade.Steer, grade.Cow, grade.Bullock} {
			for _, age := range ages {
				at := maturity.A.At(0) + maturity.Score(age)
				column, units := slowColumn(chart, sex.String(), age)
				for m := 0; m <= 1000; m += step {
					for dark := 1; dark <= 3; dark++ {
						q := slowAsk{sex: sex.String(), maturity: age, marbling: m, dark: dark}
						want := q.grade(column, units)
						got, err := e.Quality(grade.Carcass{
							Sex: sex, Maturity: maturity.Evidence{Skeletal: at, Lean: at},
							Marbling: grade.Devoid.At(0) + grade.Marbling(m),
							Lean:     grade.Lean{Dark: grade.DarkCut(dark)},
						})
						if err != nil || got.String() != want {
							t.Fatalf("edition %v, %+v: %v, %v; want %s", e, q, got, err, want)
						}
						carcasses++
					}
				}
			}
		}
	}
	if want := 5 * 3 * len(ages) * (1000/step + 1) * 3; carcasses != want {
		t.Errorf("%d carcasses, want %d", carcasses, want)
	}
	t.Logf("%d carcasses", carcasses)
}

// slowRound rounds a fraction: 0 down, 1 half up, 2 half even.
func slowRound(x *big.Rat, how, places int) *big.Rat {
	scale := new(big.Int).Exp(big.NewInt(10), big.NewInt(int64(places)), nil)
	n := new(big.Rat).Mul(x, new(big.Rat).SetInt(scale))
	down := new(big.Int).Div(n.Num(), n.Denom()) // toward minus infinity
	rest := new(big.Rat).Sub(n, new(big.Rat).SetInt(down))
	up := false
	switch c := rest.Cmp(big.NewRat(1, 2)); how {
	case 1:
		up = c >= 0
	case 2:
		up = c > 0 || c == 0 && down.Bit(0) == 1
	}
	if up {
		down.Add(down, big.NewInt(1))
	}
	return new(big.Rat).SetFrac(down, scale)
}

// decimalRound does the same with the decimal library.
func decimalRound(x decimal.Decimal, how, places int) decimal.Decimal {
	p := int32(places)
	switch how {
	case 0:
		return x.RoundFloor(p)
	case 1:
		return x.Add(decimal.New(5, -p-1)).RoundFloor(p)
	default:
		return x.RoundBank(p)
	}
}

// TestEveryYield rounds every yield that measures of the usual precision can
// have, -2.3800 to 11.0200 by 0.0001, in every rounding, to every number of
// places that changes it, against fractions and against the decimal library, and
// takes its whole grade. The same integers as counts of 0.00000001 try the other
// places.
func TestEveryYield(t *testing.T) {
	step := int64(1)
	if !testkit.Exhaustive() {
		step = 131
	}
	roundings := []grade.Rounding{grade.Down, grade.HalfUp, grade.HalfEven}
	values, roundedTimes := 0, 0
	one := func(n int64, unit int64, from, to int) error {
		y := grade.YieldUnits(n * unit)
		exact := big.NewRat(n*unit, 100000000)
		dec := decimal.New(n*unit, -8)
		values++
		if !y.Decimal().Equal(dec) {
			return fmt.Errorf("%d: decimal %v, want %v", n, y.Decimal(), dec)
		}
		whole := slowRound(exact, 0, 0)
		if g, _ := whole.Float64(); y.Grade() != int(min(max(g, 1), 5)) {
			return fmt.Errorf("%v: grade %d, want %v kept to 1 to 5", y, y.Grade(), g)
		}
		for how, r := range roundings {
			for places := from; places <= to; places++ {
				got, err := y.Round(r, places)
				if err != nil {
					return err
				}
				want := slowRound(exact, how, places)
				if big.NewRat(got.Units(), 100000000).Cmp(want) != 0 {
					return fmt.Errorf("%v %v to %d: %v, want %s", y, r, places, got, want.FloatString(8))
				}
				if d := decimalRound(dec, how, places); !d.Equal(got.Decimal()) {
					return fmt.Errorf("%v %v to %d: %v, the decimal library %v", y, r, places, got, d)
				}
				roundedTimes++
			}
		}
		return nil
	}
	for n := int64(-23_800); n <= 110_200; n += step {
		if err := one(n, 10_000, 0, 3); err != nil {
			t.Fatal(err)
		}
	}
	if step == 1 && values != 134_001 {
		t.Errorf("%d values", values)
	}
	for n := int64(-23_800); n <= 110_200; n += 11 * step {
		if err := one(n, 10_000, 4, 8); err != nil { // nothing left to round
			t.Fatal(err)
		}
		if err := one(n, 1, 4, 8); err != nil {
			t.Fatal(err)
		}
	}
	t.Logf("%d values, %d roundings", values, roundedTimes)
}

// TestEquationAgainstFractions computes the equation for 50,000 carcasses, the
// corners of what is allowed among them, with fractions and with the decimal
// library.
func TestEquationAgainstFractions(t *testing.T) {
	r := rand.New(rand.NewPCG(1965, 4456))
	n := 50_000
	if !testkit.Exhaustive() {
		n = 2_000 // each end of each measure is in it some 250 times
	}
	corner := func(lo, hi int64) int64 {
		switch r.IntN(8) {
		case 0:
			return lo
		case 1:
			return hi
		}
		return lo + r.Int64N(hi-lo+1)
	}
	coefficients := [...]decimal.Decimal{decimal.RequireFromString("2.5"), decimal.RequireFromString("0.2"), decimal.RequireFromString("0.0038"), decimal.RequireFromString("-0.32")}
	retail := [...]decimal.Decimal{decimal.RequireFromString("-5.78"), decimal.RequireFromString("-0.462"), decimal.RequireFromString("-0.0093"), decimal.RequireFromString("0.74")}
	for range n {
		in := [...]int64{corner(0, 30_000), corner(0, 100_000), corner(1_000_000, 18_000_000), corner(10_000, 250_000)}
		m := grade.Measures{Fat: grade.ThicknessUnits(in[0]), KPH: grade.ShareUnits(in[1]), Weight: grade.WeightUnits(in[2]), Ribeye: grade.AreaUnits(in[3])}
		y, err := m.Yield()
		if err != nil {
			t.Fatal(err)
		}
		// 10,000 YG = 25,000 + 25,000 FT + 2,000 KPH + 38 HCW - 3,200 REA, over fractions.
		want := big.NewRat(25_000, 1)
		for i, c := range [...]int64{25_000, 2_000, 38, -3_200} {
			want.Add(want, new(big.Rat).Mul(big.NewRat(c, 1), big.NewRat(in[i], 10_000)))
		}
		want.Quo(want, big.NewRat(10_000, 1))
		if big.NewRat(y.Units(), 100000000).Cmp(want) != 0 {
			t.Fatalf("%+v: %v, want %s", m, y, want.FloatString(8))
		}
		sum, cuts := decimal.RequireFromString("2.5"), decimal.RequireFromString("51.34")
		for i := range in {
			x := decimal.New(in[i], -4)
			sum = sum.Add(coefficients[i].Mul(x))
			cuts = cuts.Add(retail[i].Mul(x))
		}
		if !sum.Equal(y.Decimal()) {
			t.Fatalf("%+v: %v, the decimal library %v", m, y, sum)
		}
		share, err := m.RetailCuts()
		if err != nil {
			t.Fatal(err)
		}
		if !cuts.Equal(share) {
			t.Fatalf("%+v: %v, the decimal library %v", m, share, cuts)
		}
		terms, err := m.Terms()
		if err != nil {
			t.Fatal(err)
		}
		if terms.Sum() != y {
			t.Fatalf("%+v: terms add up to %v, not %v", m, terms.Sum(), y)
		}
		// The quick method: 2.00 + 0.25 per 0.1 in + 0.3 (required - ribeye) + 0.1 per
		// half percent over 3.5, required = 11.0 + a tenth for each whole 25/3 lb.
		steps := new(big.Rat).Quo(big.NewRat(in[2]-6_000_000, 10_000), big.NewRat(25, 3))
		tenths := new(big.Int).Div(steps.Num(), steps.Denom())
		required := new(big.Rat).Add(big.NewRat(11, 1), new(big.Rat).SetFrac(tenths, big.NewInt(10)))
		quick := big.NewRat(2, 1)
		quick.Add(quick, new(big.Rat).Mul(big.NewRat(5, 2), big.NewRat(in[0], 10_000)))
		quick.Add(quick, new(big.Rat).Mul(big.NewRat(3, 10), new(big.Rat).Sub(required, big.NewRat(in[3], 10_000))))
		quick.Add(quick, new(big.Rat).Mul(big.NewRat(1, 5), new(big.Rat).Sub(big.NewRat(in[1], 10_000), big.NewRat(7, 2))))
		q, err := m.Shortcut()
		if err != nil {
			t.Fatal(err)
		}
		if big.NewRat(q.Total.Units(), 100000000).Cmp(quick) != 0 || big.NewRat(q.Required.Units(), 10_000).Cmp(required) != 0 {
			t.Fatalf("%+v: quick %+v, want %s with %s sq in", m, q, quick.FloatString(8), required.FloatString(1))
		}
	}
	t.Logf("%d carcasses on %s", n, runtime.GOARCH)
}
