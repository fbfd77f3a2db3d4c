package grade_test

import (
	"bytes"
	"fmt"
	"testing"

	"example.com/ribface/grade"
	"example.com/ribface/internal/refs"
	"example.com/ribface/internal/testkit/golden"
	"example.com/ribface/maturity"
)

// sweep draws numbers that are the same everywhere, from 0 up to but not n.
type sweep uint64

func (s *sweep) next(n int) int {
	*s = *s*6364136223846793005 + 1442695040888963407
	return int(uint64(*s) >> 33 % uint64(n))
}

// step draws a number from lo to hi in steps of by.
func (s *sweep) step(lo, hi, by int) int { return lo + by*s.next((hi-lo)/by+1) }

// carcass draws a carcass of the usual kinds, with the measures that a person
// takes, and now and then one that is refused.
func (s *sweep) carcass() grade.Carcass {
	g := maturity.Group(1 + max(0, s.next(9)-4))
	c := grade.Carcass{
		Sex:       grade.Sex(1 + s.next(5)),
		Maturity:  maturity.Evidence{Skeletal: g.At(s.step(0, 100, 5)), Lean: maturity.Group(1 + (int(g)+s.next(3)+3)%5).At(s.step(0, 100, 10))},
		Marbling:  grade.Devoid.At(0) + grade.Marbling(s.next(1001)),
		Measures:  grade.Measures{Fat: grade.ThicknessUnits(int64(s.step(0, 150, 5)) * 10000 / 100), Ribeye: grade.AreaUnits(int64(s.step(70, 180, 1)) * 10000 / 10), KPH: grade.ShareUnits(int64(s.step(0, 60, 5)) * 10000 / 10), Weight: grade.WeightUnits(int64(s.step(450, 1150, 1)) * 10000)},
		FatAdjust: grade.Inches(0),
	}
	if s.next(2) == 0 {
		c.Maturity.Lean = c.Maturity.Skeletal
	}
	if s.next(3) == 0 {
		c.Lean.Firmness = grade.Firmness(s.next(8))
	}
	if s.next(4) == 0 {
		c.Lean.Dark = grade.DarkCut(s.next(4))
	}
	switch s.next(8) {
	case 0:
		c.Maturity.Teeth = maturity.Incisors(s.next(9))
	case 1:
		c.Maturity.Papers = maturity.Months(s.step(10, 60, 1))
	}
	if s.next(5) == 0 {
		c.FatAdjust = grade.ThicknessUnits(int64(s.step(-20, 20, 5)) * 10000 / 100)
	}
	switch s.next(60) {
	case 0:
		c.Sex = 0
	case 1:
		c.Marbling = 0
	case 2:
		c.Maturity.Lean = 0
	case 3:
		c.Measures.Weight = grade.Weight{}
	case 4:
		c.Measures.Fat = grade.ThicknessUnits(-c.Measures.Fat.Units() - 1)
	case 5:
		c.Lean.BelowCutter = true
		c.Marbling = grade.Devoid.At(s.next(100))
	}
	return c
}

// TestGoldenCarcasses grades 2,400 carcasses in every edition, with the quick
// method, the retail cuts and what is unusual; the steps of every 150th.
func TestGoldenCarcasses(t *testing.T) {
	var b bytes.Buffer
	s := sweep(1975)
	for i := range 2400 {
		c := s.carcass()
		m := c.Measures
		fmt.Fprintf(&b, "%d %v %v/%v teeth %d papers %d %v firm %v dark %v | %v %v %v %v adj %v |", i, c.Sex, c.Maturity.Skeletal, c.Maturity.Lean, c.Maturity.Teeth, c.Maturity.Papers, c.Marbling, c.Lean.Firmness, c.Lean.Dark, m.Fat, m.Ribeye, m.KPH, m.Weight, c.FatAdjust)
		var last grade.Assessment
		var lastErr error
		was := ""
		for e := range grade.Editions() {
			a, err := e.Assess(c)
			got := fmt.Sprint(a.Maturity, " ", a.Quality)
			if err != nil {
				got = "refused"
			}
			if got == was {
				got = "="
			} else {
				was = got
			}
			fmt.Fprint(&b, " ", got, ";")
			last, lastErr = a, err
		}
		if lastErr != nil {
			fmt.Fprintln(&b, lastErr)
			continue
		}
		fmt.Fprintf(&b, " %v grade %d", last.Yield, last.Yield.Grade())
		for _, r := range []grade.Rounding{grade.Down, grade.HalfUp, grade.HalfEven} {
			tenth, err := last.Yield.Round(r, 1)
			if err != nil {
				t.Fatal(err)
			}
			fmt.Fprint(&b, " ", tenth)
		}
		quick, err := m.Shortcut()
		if err != nil {
			t.Fatal(err)
		}
		share, err := m.RetailCuts()
		if err != nil {
			t.Fatal(err)
		}
		fmt.Fprintf(&b, " | quick %v needs %v | cuts %v%%", quick.Total, quick.Required, share)
		for table := grade.RetailGuide; table <= grade.RetailHandout; table++ {
			class, _ := table.Class(share)
			fmt.Fprint(&b, " ", class)
		}
		for _, note := range m.Unusual() {
			fmt.Fprint(&b, " | ", note)
		}
		fmt.Fprintln(&b)
		if i%150 == 0 {
			for _, step := range last.Steps() {
				fmt.Fprintln(&b, "  ", step)
			}
		}
	}
	golden.Compare(t, "../testdata/golden/carcasses.txt", b.String())
}

// TestGoldenLots grades the eight published lots end to end, by the oldest
// edition and by the newest, with every step. How their thirds are read is told
// at conformance.Lot; the lots are older than both editions, so only the yield
// grade can be held against what was printed. Source: uf-mimeo-table4.
func TestGoldenLots(t *testing.T) {
	rows, err := refs.Read("../testdata/references", "lots-with-quality.csv")
	if err != nil {
		t.Fatal(err)
	}
	var b bytes.Buffer
	for _, r := range rows {
		c, err := lotCarcass(r)
		if err != nil {
			t.Fatal(err)
		}
		fmt.Fprintf(&b, "%s (%s): maturity %s read as %v, marbling %s as %v; printed yield grade %s, agrees: %s %s\n", r.Get("subject"), r.Get("source_id"), r.Get("maturity"), c.Maturity.Skeletal, r.Get("marbling"), c.Marbling, r.Get("stated_yield_grade"), r.Get("agrees"), r.Get("note"))
		for _, e := range []grade.Edition{grade.Edition1975, grade.Current} {
			a, err := e.Assess(c)
			if err != nil {
				t.Fatal(err)
			}
			fmt.Fprintf(&b, "  edition %v: %v, %v, yield %v, grade %d\n", e, a.Maturity, a.Quality, a.Yield, a.Yield.Grade())
			for _, step := range a.Steps() {
				fmt.Fprintln(&b, "    ", step)
			}
		}
	}
	golden.Compare(t, "../testdata/golden/lots.txt", b.String())
}

// TestGoldenText sweeps the lines of the chart, conversions and reading.
func TestGoldenText(t *testing.T) {
	var b bytes.Buffer
	fmt.Fprintln(&b, "# lines of the chart")
	for e := range grade.Editions() {
		from, by := e.From()
		fmt.Fprintf(&b, "edition %v from %s (%v), by age %v\n", e, from.Format("2006-01-02"), by, e.ByAge())
		for l := range e.Lines() {
			fmt.Fprintf(&b, "  %v %v %v: %v to %v (%v); %v (%v)\n", l.Group, l.Part, l.Grade, l.On(0), l.On(100), l.Cite, l.Firmness, l.FirmnessCite)
		}
	}
	fmt.Fprintln(&b, "# floats at the door")
	for _, f := range []float64{0, 0.1, 0.7, 0.45, 0.00005, 0.00004999, 1.0 / 3, 2.675, 11.9, 12.7, 25.4, 366.2, 999.99995, -0.1, 1e9, -1e9, 1e300} {
		fmt.Fprintf(&b, "%v: %v %v | %v %v | %v | %v %v\n", f, grade.Inches(f), grade.Millimeters(f), grade.SquareInches(f), grade.SquareCentimeters(f), grade.Percent(f), grade.Pounds(f), grade.Kilograms(f))
	}
	fmt.Fprintln(&b, "# metric out")
	for n := 1; n < 200_000_000; n = n*7 + 3 {
		fmt.Fprintf(&b, "%d: %v %v %v\n", n, grade.ThicknessUnits(int64(n)).Millimeters(), grade.AreaUnits(int64(n)).SquareCentimeters(), grade.WeightUnits(int64(n)).Kilograms())
	}
	fmt.Fprintln(&b, "# required ribeye and preliminary grade")
	for lb := 0; lb <= 1810; lb += 19 {
		a, err := (grade.WeightUnits(int64(lb) * 10000)).RequiredRibeye()
		fmt.Fprintf(&b, "%d lb: %v %v; %v\n", lb, a, err, (grade.ThicknessUnits(int64(lb) * 10000 / 1000)).Preliminary())
	}
	fmt.Fprintln(&b, "# reading")
	for _, in := range []string{
		"Sm40", "Small40", "Small 40", "Slightly Abundant 40", "MdAb00", "Sm100", "Ab100", "Sm4", "Xx40", "Sm101", "Devoid00", "sm40", "",
		"0.45", "0.45 in", "11mm", "1.1 cm", "12.4 sq in", "80 sq cm", "2.5%", "842 lb", "380 kg", "1e3", "+1", "-0.1", "0.00001", "1.", ".5", "12 oz", "300000", "1,000", "\u22121",
		"Low Choice", "Choice-", "Choice+", "Choice", "Average Select", "No grade", "Best", "prime", "2.952", "-2.38", "2.123456789",
	} {
		marbling, e1 := grade.ParseMarbling(in)
		thickness, e2 := grade.ParseThickness(in)
		area, e3 := grade.ParseArea(in)
		share, e4 := grade.ParseShare(in)
		weight, e5 := grade.ParseWeight(in)
		quality, e6 := grade.ParseQuality(in)
		yield, e7 := grade.ParseYield(in)
		fmt.Fprintf(&b, "%q\n", in)
		for _, out := range []struct {
			v   fmt.Stringer
			err error
		}{{marbling, e1}, {thickness, e2}, {area, e3}, {share, e4}, {weight, e5}, {quality, e6}, {yield, e7}} {
			if out.err != nil {
				fmt.Fprintf(&b, "  %v\n", out.err)
			} else {
				fmt.Fprintf(&b, "  %T %v\n", out.v, out.v)
			}
		}
	}
	golden.Compare(t, "../testdata/golden/grade.txt", b.String())
}
