package grade_test

import (
	"errors"
	"math/big"
	"testing"

	"example.com/ribface/grade"
	"example.com/ribface/maturity"
	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

func lean(fat, ribeye, kph, weight float64) grade.Measures {
	return grade.Measures{Fat: grade.Inches(fat), Ribeye: grade.SquareInches(ribeye), KPH: grade.Percent(kph), Weight: grade.Pounds(weight)}
}

func drawMeasures(t *rapid.T) grade.Measures {
	return grade.Measures{Fat: grade.ThicknessUnits(int64(rapid.Int32Range(0, int32(30000)).Draw(t, "fat"))), Ribeye: grade.AreaUnits(int64(rapid.Int32Range(10000, int32(250000)).Draw(t, "ribeye"))), KPH: grade.ShareUnits(int64(rapid.Int32Range(0, int32(100000)).Draw(t, "KPH"))), Weight: grade.WeightUnits(int64(rapid.Int32Range(1000000, int32(18000000)).Draw(t, "weight")))}
}

// factors are the four measures that a yield can be solved for.
var factors = []grade.Trait{grade.TraitFat, grade.TraitRibeye, grade.TraitKPH, grade.TraitWeight}

// raw reads a factor in 0.0001 of its unit.
func raw(m grade.Measures, f grade.Trait) int64 {
	return map[grade.Trait]int64{grade.TraitFat: m.Fat.Units(), grade.TraitRibeye: m.Ribeye.Units(), grade.TraitKPH: m.KPH.Units(), grade.TraitWeight: m.Weight.Units()}[f]
}

// TestSolve checks the fraction against the equation in rationals, and both
// neighbors against the equation itself.
func TestSolve(t *testing.T) {
	coefs := map[grade.Trait]*big.Rat{grade.TraitFat: big.NewRat(5, 2), grade.TraitRibeye: big.NewRat(-8, 25), grade.TraitKPH: big.NewRat(1, 5), grade.TraitWeight: big.NewRat(38, 10000)}
	grid := func(n int64) *big.Rat { return big.NewRat(n, 10000) }
	rapid.Check(t, func(t *rapid.T) {
		m := drawMeasures(t)
		f := rapid.SampledFrom(factors).Draw(t, "factor")
		y, err := m.Yield()
		if err != nil {
			t.Fatal(err)
		}
		line := grade.YieldUnits(y.Units() + rapid.Int64Range(-2e8, 2e8).Draw(t, "away"))
		if rapid.Bool().Draw(t, "on the grid") {
			line = y
		}
		got, err := m.Solve(f, line)
		if err != nil {
			if !errors.Is(err, grade.ErrRange) || line == y {
				t.Fatalf("Solve(%v, %v): %v", f, line, err)
			}
			return
		}
		sum := big.NewRat(5, 2)
		exact := big.NewRat(got.Num, got.Den)
		if got.Den < 1 || exact.Num().Int64() != got.Num {
			t.Fatalf("%d/%d is not in lowest terms", got.Num, got.Den)
		}
		for g, c := range coefs {
			v := grid(raw(m, g))
			if g == f {
				v = exact
			}
			sum.Add(sum, new(big.Rat).Mul(c, v))
		}
		if sum.Cmp(big.NewRat(line.Units(), 100_000_000)) != 0 {
			t.Fatalf("with %v the yield is %v, not %v", got, sum, line)
		}
		d, finite := got.Exact()
		if finite && d.Rat().Cmp(exact) != 0 {
			t.Fatalf("Exact() = %v, want %v", d, exact)
		}
		reach, err := got.Reach.Yield()
		if err != nil || reach.Compare(line) < 0 {
			t.Fatalf("Reach %+v has %v, %v; the line is %v", got.Reach, reach, err, line)
		}
		away := new(big.Rat).Sub(grid(raw(got.Reach, f)), exact)
		if away.Abs(away).Cmp(big.NewRat(1, 10000)) >= 0 {
			t.Fatalf("Reach %d is not next to %v", raw(got.Reach, f), exact)
		}
		if got.Under == (grade.Measures{}) {
			return
		}
		under, err := got.Under.Yield()
		if err != nil || under.Compare(line) >= 0 {
			t.Fatalf("Under %+v has %v, %v; the line is %v", got.Under, under, err, line)
		}
		if gap := raw(got.Under, f) - raw(got.Reach, f); gap != 1 && gap != -1 {
			t.Fatalf("Under and Reach are %d apart", gap)
		}
		for _, g := range factors {
			if g != f && (raw(got.Under, g) != raw(m, g) || raw(got.Reach, g) != raw(m, g)) {
				t.Fatalf("%v changed too", g)
			}
		}
	})
}

func TestSolveByHand(t *testing.T) {
	m := lean(0.6, 12.4, 2.5, 842) // 3.7316
	tests := []struct {
		name   string
		factor grade.Trait
		line   grade.Yield
		want   string
		under  string // of the factor
		reach  string
	}{
		{"fat to 4", grade.TraitFat, grade.Grades(4), "fat 0.70736 in for 4", "0.7073 in", "0.7074 in"},
		{"ribeye to 4", grade.TraitRibeye, grade.Grades(4), "ribeye 11.56125 sq in for 4", "11.5613 sq in", "11.5612 sq in"},
		{"KPH to 4", grade.TraitKPH, grade.Grades(4), "KPH 3.842% for 4", "3.8419%", "3.842%"},
		{"weight to 4 is a fraction", grade.TraitWeight, grade.Grades(4), "weight 17340/19 lb for 4", "912.6315 lb", "912.6316 lb"},
		{"where it is", grade.TraitFat, grade.Grades(3.7316), "fat 0.6 in for 3.7316", "0.5999 in", "0.6 in"},
		{"no fat at all", grade.TraitFat, grade.Grades(2.2316), "fat 0 in for 2.2316", "", "0 in"},
		{"a step over no fat", grade.TraitFat, grade.Grades(2.23185), "fat 0.0001 in for 2.23185", "0 in", "0.0001 in"},
		{"a step under the largest ribeye", grade.TraitRibeye, grade.Grades(-0.300368), "ribeye 24.9999 sq in for -0.300368", "25 sq in", "24.9999 sq in"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			got, err := m.Solve(tt.factor, tt.line)
			if err != nil {
				t.Fatal(err)
			}
			show := func(m grade.Measures) string {
				if m == (grade.Measures{}) {
					return ""
				}
				return map[grade.Trait]string{grade.TraitFat: m.Fat.String(), grade.TraitRibeye: m.Ribeye.String(), grade.TraitKPH: m.KPH.String(), grade.TraitWeight: m.Weight.String()}[tt.factor]
			}
			if diff := cmp.Diff([]string{tt.want, tt.under, tt.reach}, []string{got.String(), show(got.Under), show(got.Reach)}); diff != "" {
				t.Errorf("Solve (-want +got):\n%s", diff)
			}
		})
	}
	if _, ok := (grade.OnLine{}).Exact(); ok {
		t.Error("the zero OnLine has an exact value")
	}
	if got := (grade.OnLine{}).String(); got != "unset" {
		t.Errorf("the zero OnLine is %q", got)
	}
	o, err := m.Solve(grade.TraitWeight, grade.Grades(4))
	if err != nil {
		t.Fatal(err)
	}
	if d, ok := o.Exact(); ok || d.String() != "912.631578947368" {
		t.Errorf("Exact() = %v, %v", d, ok)
	}
}

func TestSolveRefuses(t *testing.T) {
	m := lean(0.6, 12.4, 2.5, 842)
	tests := []struct {
		name   string
		m      grade.Measures
		factor grade.Trait
		line   grade.Yield
		want   string
	}{
		{"less than no fat", m, grade.TraitFat, grade.Grades(2.23159999), "fat: -0.000000004 in for a yield of 2.23159999: out of range; allowed: 0 in to 3 in"},
		{"over three inches", m, grade.TraitFat, grade.Grades(9.73160001), "fat: 3.000000004 in for a yield of 9.73160001: out of range; allowed: 0 in to 3 in"},
		{"no weight", m, grade.TraitWeight, grade.Grades(0.5), "weight: -160/19 lb for a yield of 0.5: out of range; allowed: 100 lb to 1800 lb"},
		{"no factor", m, 0, grade.Grades(1), "trait: missing; allowed: fat, ribeye, KPH, weight"},
		{"no such factor", m, 99, grade.Grades(1), "trait: trait(99): unknown; allowed: fat, ribeye, KPH, weight"},
		{"a trait that is none", m, grade.TraitMarbling, grade.Grades(1), "trait: marbling: unknown; allowed: fat, ribeye, KPH, weight"},
		{"one between the four", m, grade.TraitPreliminary, grade.Grades(1), "trait: preliminary: unknown; allowed: fat, ribeye, KPH, weight"},
		{"one beyond the four", m, grade.TraitYield, grade.Grades(1), "trait: yield: unknown; allowed: fat, ribeye, KPH, weight"},
		{"another measure is missing", lean(0.6, 0, 2.5, 842), grade.TraitFat, grade.Grades(1), "ribeye: 0 sq in: out of range; allowed: 1 sq in to 25 sq in"},
		{"a line far off", m, grade.TraitFat, grade.Grades(100.00000001), "line: 100.00000001: out of range; allowed: -100 to 100"},
		{"a line far under", m, grade.TraitFat, grade.Grades(-100.00000001), "line: -100.00000001: out of range; allowed: -100 to 100"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			got, err := tt.m.Solve(tt.factor, tt.line)
			if err == nil {
				t.Fatalf("got %v, want an error", got)
			}
			if diff := cmp.Diff(tt.want, err.Error()); diff != "" {
				t.Errorf("error (-want +got):\n%s", diff)
			}
		})
	}
	ends := []struct {
		name string
		line grade.Yield
		want string
	}{
		{"three inches", grade.Grades(9.7316), "fat 3 in for 9.7316"},
		{"the lines themselves may be far", grade.Grades(100), ""},
		{"and far under", grade.Grades(-100), ""},
	}
	for _, tt := range ends {
		got, err := m.Solve(grade.TraitFat, tt.line)
		if tt.want == "" {
			var fe *grade.FieldError
			if !errors.As(err, &fe) || fe.Field != "fat" {
				t.Errorf("%s: %v", tt.name, err)
			}
			continue
		}
		if err != nil || got.String() != tt.want {
			t.Errorf("%s: %v, %v", tt.name, got, err)
		}
	}
	// The factor asked for need not be known.
	if got, err := lean(0.6, 0, 2.5, 842).Solve(grade.TraitRibeye, grade.Grades(4)); err != nil || got.String() != "ribeye 11.56125 sq in for 4" {
		t.Errorf("unknown ribeye: %v, %v", got, err)
	}
	// The largest ribeye ends on the line: nothing is under it.
	big := lean(0.6, 25, 2.5, 842)
	y, err := big.Yield()
	if err != nil {
		t.Fatal(err)
	}
	got, err := big.Solve(grade.TraitRibeye, y)
	if err != nil || got.Under != (grade.Measures{}) || got.Reach != big {
		t.Errorf("largest ribeye: %+v, %v", got, err)
	}
}

func TestYieldLines(t *testing.T) {
	tests := []struct {
		name          string
		yield         string
		better, worse string
	}{
		{"inside 3", "3.25", "2 at 3, -0.25 away", "4 at 4, 0.75 away"},
		{"on the line it is the worse grade, with nothing to go but under", "3", "2 at 3, 0 away", "4 at 4, 1 away"},
		{"just under", "2.99999999", "1 at 2, -0.99999999 away", "3 at 3, 0.00000001 away"},
		{"best grade", "1.999", "none", "2 at 2, 0.001 away"},
		{"under 1", "-0.2", "none", "2 at 2, 2.2 away"},
		{"worst grade", "5.4", "4 at 5, -0.4 away", "none"},
		{"far beyond", "7.4", "4 at 5, -2.4 away", "none"},
	}
	show := func(l grade.YieldLine, ok bool) string {
		if !ok {
			return "none"
		}
		return string(rune('0'+l.Grade)) + " at " + l.At.String() + ", " + l.Away.String() + " away"
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			y, err := grade.ParseYield(tt.yield)
			if err != nil {
				t.Fatal(err)
			}
			if diff := cmp.Diff([]string{tt.better, tt.worse}, []string{show(y.Better()), show(y.Worse())}); diff != "" {
				t.Errorf("lines (-want +got):\n%s", diff)
			}
		})
	}
}

func exhibit(sex grade.Sex, skeletal, leanScore, marbling string) grade.Carcass {
	return grade.Carcass{
		Sex: sex, Marbling: grade.MustParseMarbling(marbling), Measures: lean(0.6, 12.4, 2.5, 842),
		Maturity: maturity.Evidence{Skeletal: maturity.MustParse(skeletal), Lean: maturity.MustParse(leanScore)},
	}
}

// TestQualityChanges walks the scale point by point beside the list.
func TestQualityChanges(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := grade.Rules{Edition: grade.Current}
		c := drawCarcass(t)
		changes, err := r.QualityChanges(c)
		if err != nil {
			t.Fatal(err)
		}
		own, err := r.Quality(c)
		if err != nil {
			t.Fatal(err)
		}
		at := map[grade.Marbling]grade.Quality{}
		for i, ch := range changes {
			if i > 0 && changes[i-1].At >= ch.At {
				t.Fatalf("not ascending: %v", changes)
			}
			if ch.Points != int(ch.At-c.Marbling) || ch.Points == 0 {
				t.Fatalf("%+v from %v", ch, c.Marbling)
			}
			at[ch.At] = ch.Quality
		}
		for _, step := range []grade.Marbling{-1, 1} {
			want := own
			for d := c.Marbling; d.IsValid(); d += step {
				if q, ok := at[d]; ok {
					want = q
				}
				e := c
				e.Marbling = d
				if got, _ := r.Quality(e); got != want {
					t.Fatalf("at %v the quality is %v, the list says %v", d, got, want)
				}
			}
		}
	})
}

func drawCarcass(t *rapid.T) grade.Carcass {
	return grade.Carcass{
		Sex:      grade.Sex(rapid.IntRange(int(grade.Steer), int(grade.Bull)).Draw(t, "sex")),
		Marbling: grade.Marbling(rapid.IntRange(100, 1100).Draw(t, "marbling")),
		Maturity: maturity.Evidence{
			Skeletal: maturity.Score(rapid.IntRange(100, 600).Draw(t, "skeletal")),
			Lean:     maturity.Score(rapid.IntRange(100, 600).Draw(t, "lean")),
		},
		Lean:     grade.Lean{Firmness: grade.Firmness(rapid.IntRange(0, int(grade.Firm)).Draw(t, "firmness")), Dark: grade.DarkCut(rapid.IntRange(0, int(grade.DarkFull)).Draw(t, "dark"))},
		Measures: drawMeasures(t),
	}
}

func TestQualityChangesByHand(t *testing.T) {
	r := grade.Rules{Edition: grade.Current}
	got, err := r.QualityChanges(exhibit(grade.Cow, "A60", "A50", "Sm40"))
	if err != nil {
		t.Fatal(err)
	}
	var show []string
	for _, c := range got {
		show = append(show, c.At.String()+" "+c.Quality.String())
	}
	// A cow is not eligible for Prime (official: cfr-1965-53-prime), so the list
	// ends with High Choice.
	want := []string{"Devoid99 Utility", "PD66 Low Standard", "Tr33 Average Standard", "Tr99 High Standard", "Sl49 Low Select", "Sl99 High Select", "Mt00 Average Choice", "Md00 High Choice"}
	if diff := cmp.Diff(want, show); diff != "" {
		t.Errorf("changes (-want +got):\n%s", diff)
	}
	if bull, err := r.QualityChanges(exhibit(grade.Bull, "A60", "A50", "Sm40")); err != nil || bull != nil {
		t.Errorf("a bull: %v, %v", bull, err)
	}
	if _, err := r.QualityChanges(grade.Carcass{}); !errors.Is(err, grade.ErrMissing) {
		t.Errorf("the zero carcass: %v", err)
	}
}

// TestEstimate tries every combination of small tolerances one by one.
func TestEstimate(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := grade.Rules{Edition: grade.Edition(rapid.IntRange(1, int(grade.Current)).Draw(t, "edition"))}
		c := drawCarcass(t)
		tol := grade.Tolerances{
			Fat:      grade.ThicknessUnits(int64(rapid.Int32Range(0, 2000).Draw(t, "± fat"))),
			Ribeye:   grade.AreaUnits(int64(rapid.Int32Range(0, 10_000).Draw(t, "± ribeye"))),
			KPH:      grade.ShareUnits(int64(rapid.Int32Range(0, 10_000).Draw(t, "± KPH"))),
			Weight:   grade.WeightUnits(int64(rapid.Int32Range(0, 100_000).Draw(t, "± weight"))),
			Marbling: rapid.IntRange(0, 12).Draw(t, "± marbling"),
			Maturity: rapid.IntRange(0, 6).Draw(t, "± maturity"),
		}
		got, err := r.Estimate(c, tol)
		if err != nil {
			t.Fatal(err)
		}
		lo, hi, err := tol.Span(c.Measures)
		if err != nil {
			t.Fatal(err)
		}
		ly, err1 := lo.Yield()
		hy, err2 := hi.Yield()
		if err1 != nil || err2 != nil || got.Least != ly || got.Most != hy || got.Grades[0] != ly.Grade() || got.Grades[len(got.Grades)-1] != hy.Grade() || len(got.Grades) != hy.Grade()-ly.Grade()+1 {
			t.Fatalf("yields %v to %v, grades %v; want %v to %v", got.Least, got.Most, got.Grades, ly, hy)
		}
		want := map[grade.Quality]grade.QualityRange{}
		for bone := -tol.Maturity; bone <= tol.Maturity; bone++ {
			for l := -tol.Maturity; l <= tol.Maturity; l++ {
				for m := -tol.Marbling; m <= tol.Marbling; m++ {
					e := c
					e.Maturity.Skeletal += maturity.Score(bone)
					e.Maturity.Lean += maturity.Score(l)
					e.Marbling += grade.Marbling(m)
					q, err := r.Quality(e)
					if err != nil {
						continue // off the end of a scale
					}
					w, ok := want[q]
					if !ok {
						w = grade.QualityRange{Quality: q, Least: e.Marbling, Most: e.Marbling}
					}
					w.Least, w.Most = min(w.Least, e.Marbling), max(w.Most, e.Marbling)
					want[q] = w
				}
			}
		}
		if len(want) != len(got.Qualities) {
			t.Fatalf("qualities %v, want %v", got.Qualities, want)
		}
		for i, q := range got.Qualities {
			if want[q.Quality] != q || i > 0 && got.Qualities[i-1].Quality <= q.Quality {
				t.Fatalf("qualities %v, want %v", got.Qualities, want)
			}
		}
	})
}

func TestEstimateEdges(t *testing.T) {
	r := grade.Rules{Edition: grade.Current}
	// Everything as wide as it goes: every yield the limits allow.
	all := grade.Tolerances{Fat: grade.Inches(3), Ribeye: grade.SquareInches(25), KPH: grade.Percent(10), Weight: grade.Pounds(1800), Marbling: 1000, Maturity: 500}
	e, err := r.Estimate(exhibit(grade.Steer, "A60", "A50", "Sm40"), all)
	if err != nil {
		t.Fatal(err)
	}
	if e.Least.String() != "-5.12" || e.Most.String() != "18.52" {
		t.Errorf("widest range %v to %v", e.Least, e.Most)
	}
	if diff := cmp.Diff([]int{1, 2, 3, 4, 5}, e.Grades); diff != "" {
		t.Errorf("grades (-want +got):\n%s", diff)
	}
	if first, last := e.Qualities[0], e.Qualities[len(e.Qualities)-1]; first.Quality.String() != "High Prime" || last.Quality.String() != "Cutter" {
		t.Errorf("qualities %v", e.Qualities)
	}
	// Teeth settle the age and no lean was looked at: a skeleton that the
	// tolerance carries into D needs one, and is left out.
	c := exhibit(grade.Steer, "C99", "A50", "Sm40")
	c.Maturity.Lean = 0
	c.Maturity.Teeth = maturity.Incisors(2)
	e, err = r.Estimate(c, grade.Tolerances{Maturity: 5})
	if err != nil || len(e.Qualities) != 1 || e.Qualities[0].Quality.String() != "Low Choice" {
		t.Errorf("young by teeth: %v, %v", e.Qualities, err)
	}
	// A bullock on the line between A and B may be none.
	e, err = r.Estimate(exhibit(grade.Bullock, "B00", "A90", "Sm40"), grade.Tolerances{Maturity: 1})
	if err != nil || len(e.Qualities) != 2 || e.Qualities[1].Quality.Grade() != grade.NoGrade {
		t.Errorf("bullock on the line: %v, %v", e.Qualities, err)
	}
	// The adjustment of the fat counts.
	c = exhibit(grade.Steer, "A60", "A50", "Sm40")
	c.FatAdjust = grade.Inches(0.1)
	e, err = r.Estimate(c, grade.Tolerances{})
	if err != nil || e.Least.String() != "3.9816" || e.Most != e.Least {
		t.Errorf("adjusted: %+v, %v", e, err)
	}
}

func TestTolerancesRefused(t *testing.T) {
	c := exhibit(grade.Steer, "A60", "A50", "Sm40")
	tests := []struct {
		name string
		t    grade.Tolerances
		want string
	}{
		{"negative fat", grade.Tolerances{Fat: grade.ThicknessUnits(-1)}, "tolerance of fat: -0.0001 in: out of range; allowed: 0 in to 3 in"},
		{"wide fat", grade.Tolerances{Fat: grade.Inches(3.0001)}, "tolerance of fat: 3.0001 in: out of range; allowed: 0 in to 3 in"},
		{"negative ribeye", grade.Tolerances{Ribeye: grade.AreaUnits(-1)}, "tolerance of ribeye: -0.0001 sq in: out of range; allowed: 0 sq in to 25 sq in"},
		{"wide KPH", grade.Tolerances{KPH: grade.Percent(10.0001)}, "tolerance of KPH: 10.0001%: out of range; allowed: 0% to 10%"},
		{"wide weight", grade.Tolerances{Weight: grade.Pounds(2000)}, "tolerance of weight: 2000 lb: out of range; allowed: 0 lb to 1800 lb"},
		{"negative marbling", grade.Tolerances{Marbling: -1}, "tolerance of marbling: -1: out of range; allowed: 0 to 1000 points"},
		{"wide marbling", grade.Tolerances{Marbling: 1001}, "tolerance of marbling: 1001: out of range; allowed: 0 to 1000 points"},
		{"negative maturity", grade.Tolerances{Maturity: -1}, "tolerance of maturity: -1: out of range; allowed: 0 to 500 units"},
		{"wide maturity", grade.Tolerances{Maturity: 501}, "tolerance of maturity: 501: out of range; allowed: 0 to 500 units"},
	}
	r := grade.Rules{Edition: grade.Current}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			_, err := r.Estimate(c, tt.t)
			if err == nil {
				t.Fatal("no error")
			}
			if diff := cmp.Diff(tt.want, err.Error()); diff != "" {
				t.Errorf("error (-want +got):\n%s", diff)
			}
			if _, _, err := tt.t.Span(c.Measures); err == nil {
				t.Error("Span takes it")
			}
		})
	}
	if _, err := r.Estimate(grade.Carcass{}, grade.Tolerances{}); !errors.Is(err, grade.ErrMissing) {
		t.Errorf("the zero carcass: %v", err)
	}
	if _, _, err := (grade.Tolerances{}).Span(grade.Measures{}); !errors.Is(err, grade.ErrMissing) {
		t.Errorf("the zero measures: %v", err)
	}
}
