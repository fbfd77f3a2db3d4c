package grade_test

import (
	"errors"
	"math"
	"testing"

	"example.com/ribface/grade"
	"example.com/ribface/internal/testkit/faulttest"
	gocmp "github.com/google/go-cmp/cmp"
	"github.com/shopspring/decimal"
)

// TestPreliminary holds the preliminary grade and the way back, at both ends and
// at the rounding between two steps of fat (published: ext-sdsu-yield).
func TestPreliminary(t *testing.T) {
	for fat, want := range map[grade.Thickness]string{grade.Inches(0): "2", grade.Inches(0.1): "2.25", grade.Inches(0.4): "3", grade.Inches(3): "9.5", grade.ThicknessUnits(1): "2.00025", grade.Inches(-0.1): "1.75"} {
		if got := fat.Preliminary().String(); got != want {
			t.Errorf("%v: %s, want %s", fat, got, want)
		}
	}
	for _, tt := range []struct {
		p    grade.ShortcutYield
		want grade.Thickness
	}{
		{grade.ShortcutGrades(2), grade.Inches(0)}, {grade.ShortcutGrades(2.00012499), grade.Inches(0)}, {grade.ShortcutGrades(2.000125), grade.ThicknessUnits(1)}, {grade.ShortcutGrades(2.25), grade.Inches(0.1)}, {grade.ShortcutGrades(3), grade.Inches(0.4)}, {grade.ShortcutGrades(9.5), grade.Inches(3)},
	} {
		if got, err := grade.FatForPreliminary(tt.p); err != nil || got != tt.want {
			t.Errorf("%v: %v, %v; want %v", tt.p, got, err, tt.want)
		}
	}
	for p, value := range map[grade.ShortcutYield]string{grade.ShortcutGrades(1.99999999): "1.99999999", grade.ShortcutGrades(9.50000001): "9.50000001", grade.ShortcutYieldUnits(-9223372036854775808): "-9999999999.99999999", grade.ShortcutYieldUnits(9223372036854775807): "9999999999.99999999"} {
		got, err := grade.FatForPreliminary(p)
		faulttest.Field(t, value, err, grade.FieldError{Field: "preliminary yield grade", Value: value, Allowed: "2 to 9.5", Err: grade.ErrRange})
		if got != (grade.Thickness{}) {
			t.Errorf("%v gives %v", p, got)
		}
	}
}

// TestRequiredRibeye holds the steps around 600 lb, each from its first weight to
// the last before the next (published: ext-sdsu-yield; between the printed steps
// derived).
func TestRequiredRibeye(t *testing.T) {
	for _, tt := range []struct {
		weight, want string
	}{
		{"600", "11 sq in"}, {"599.9999", "10.9 sq in"}, {"591.6667", "10.9 sq in"}, {"591.6666", "10.8 sq in"},
		{"608.3333", "11 sq in"}, {"608.3334", "11.1 sq in"}, {"624.9999", "11.2 sq in"}, {"625", "11.3 sq in"}, {"575", "10.7 sq in"},
		{"650", "11.6 sq in"}, {"700", "12.2 sq in"}, {"900", "14.6 sq in"}, {"1800", "25.4 sq in"}, {"100", "5 sq in"},
	} {
		w, err := grade.ParseWeight(tt.weight)
		if err != nil {
			t.Fatal(err)
		}
		if got, err := w.RequiredRibeye(); err != nil || got.String() != tt.want {
			t.Errorf("%s lb: %v, %v; want %s", tt.weight, got, err, tt.want)
		}
	}
	const allowed = "100 lb to 1800 lb"
	for _, tt := range []struct {
		w    grade.Weight
		want grade.FieldError
	}{
		{grade.Weight{}, grade.FieldError{Field: "weight", Allowed: allowed, Err: grade.ErrMissing}},
		{grade.Pounds(99.9999), grade.FieldError{Field: "weight", Value: "99.9999 lb", Allowed: allowed, Err: grade.ErrRange}},
		{grade.WeightUnits(-1), grade.FieldError{Field: "weight", Value: "-0.0001 lb", Allowed: allowed, Err: grade.ErrRange}},
		{grade.Pounds(1800.0001), grade.FieldError{Field: "weight", Value: "1800.0001 lb", Allowed: allowed, Err: grade.ErrRange}},
	} {
		got, err := tt.w.RequiredRibeye()
		faulttest.Field(t, tt.w.String(), err, tt.want)
		if got != (grade.Area{}) {
			t.Errorf("%v gives %v", tt.w, got)
		}
	}
}

// TestShortcut holds every step of the shortcut method for one carcass over and one
// under each of its marks.
func TestShortcut(t *testing.T) {
	for _, tt := range []struct {
		name string
		m    grade.Measures
		want grade.Shortcut
	}{
		{"at every mark", measures("0", "11", "3.5", "600"), grade.Shortcut{Preliminary: grade.ShortcutGrades(2), Required: grade.SquareInches(11), Ribeye: grade.ShortcutGrades(0), KPH: grade.ShortcutGrades(0), Total: grade.ShortcutGrades(2)}},
		{"over", measures("0.4", "12", "4", "600"), grade.Shortcut{Preliminary: grade.ShortcutGrades(3), Required: grade.SquareInches(11), Ribeye: grade.ShortcutGrades(-0.3), KPH: grade.ShortcutGrades(0.1), Total: grade.ShortcutGrades(2.8)}},
		{"under", measures("0.6", "10", "1.5", "650"), grade.Shortcut{Preliminary: grade.ShortcutGrades(3.5), Required: grade.SquareInches(11.6), Ribeye: grade.ShortcutGrades(0.48), KPH: grade.ShortcutGrades(-0.4), Total: grade.ShortcutGrades(3.58)}},
		{"one step of each", grade.Measures{Fat: grade.ThicknessUnits(1), Ribeye: grade.SquareInches(11.0001), KPH: grade.Percent(3.5001), Weight: grade.Pounds(600)}, grade.Shortcut{Preliminary: grade.ShortcutGrades(2.00025), Required: grade.SquareInches(11), Ribeye: grade.ShortcutGrades(-0.00003), KPH: grade.ShortcutGrades(0.00002), Total: grade.ShortcutGrades(2.00024)}},
	} {
		t.Run(tt.name, func(t *testing.T) {
			got, err := tt.m.Shortcut()
			if err != nil {
				t.Fatal(err)
			}
			if diff := gocmp.Diff(tt.want, got); diff != "" {
				t.Errorf("(-want +got)\n%s", diff)
			}
		})
	}
}

// TestTrapShortcut holds that the shortcut method puts eight of the nine federal
// borderline carcasses one grade worse than the equation, so that it never sets a
// grade (official: cfr-54-105, cfr-post1975-p30, ams-2016-yield).
func TestTrapShortcut(t *testing.T) {
	worse := 0
	for _, tt := range []struct {
		m           grade.Measures
		yield, fast string
		whole       int
	}{
		{measures("0.3", "11.5", "2.5", "500"), "1.97", "2.04", 1},
		{measures("0.4", "16", "2.5", "800"), "1.92", "2.02", 1},
		{measures("0.5", "10.5", "3.5", "500"), "2.99", "3.04", 2},
		{measures("0.6", "15", "3.5", "800"), "2.94", "3.02", 2},
		{measures("0.7", "9.5", "4", "500"), "3.91", "3.94", 3},
		{measures("0.2", "12.5", "1.5", "700"), "1.96", "2.01", 1},
		{measures("0.4", "19.1", "2", "1100"), "1.968", "2.07", 1},
		{measures("0.5", "12.3", "2.5", "700"), "2.974", "3.02", 2},
		{measures("0.6", "18.1", "3", "1100"), "2.988", "3.07", 2},
	} {
		y, err := tt.m.Yield()
		if err != nil || y.String() != tt.yield || y.Grade() != tt.whole {
			t.Errorf("%+v: %v, grade %d, %v; want %s, grade %d", tt.m, y, y.Grade(), err, tt.yield, tt.whole)
		}
		q, err := tt.m.Shortcut()
		if err != nil || q.Total.String() != tt.fast {
			t.Errorf("%+v: shortcut %v, %v; want %s", tt.m, q.Total, err, tt.fast)
		}
		if grade.YieldUnits(q.Total.Units()).Grade() == tt.whole+1 {
			worse++
		}
	}
	if worse != 8 {
		t.Errorf("%d of 9 come out one grade worse, want 8", worse)
	}
}

// TestUnusual holds the notes on both sides of every usual range.
func TestUnusual(t *testing.T) {
	for _, tt := range []struct {
		name string
		m    grade.Measures
		want []string
	}{
		{"usual", usual, nil},
		{"upper ends", measures("2", "22", "6", "1300"), nil},
		{"lower ends", measures("0", "6", "0", "400"), nil},
		{"above", grade.Measures{Fat: grade.Inches(2.0001), Ribeye: grade.SquareInches(22.0001), KPH: grade.Percent(6.0001), Weight: grade.Pounds(1300.0001)}, []string{
			"fat 2.0001 in is outside the usual 0 in to 2 in", "ribeye 22.0001 sq in is outside the usual 6 sq in to 22 sq in",
			"KPH 6.0001% is outside the usual 0% to 6%", "weight 1300.0001 lb is outside the usual 400 lb to 1300 lb"}},
		{"below", grade.Measures{Fat: grade.ThicknessUnits(-1), Ribeye: grade.SquareInches(5.9999), KPH: grade.ShareUnits(-1), Weight: grade.Pounds(399.9999)}, []string{
			"fat -0.0001 in is outside the usual 0 in to 2 in", "ribeye 5.9999 sq in is outside the usual 6 sq in to 22 sq in",
			"KPH -0.0001% is outside the usual 0% to 6%", "weight 399.9999 lb is outside the usual 400 lb to 1300 lb"}},
		{"one of four", measures("0.4", "5", "2", "700"), []string{"ribeye 5 sq in is outside the usual 6 sq in to 22 sq in"}},
	} {
		t.Run(tt.name, func(t *testing.T) {
			if diff := gocmp.Diff(tt.want, tt.m.Unusual()); diff != "" {
				t.Errorf("(-want +got)\n%s", diff)
			}
		})
	}
}

// TestRetailCuts holds the equation (published: ext-montana-2017), each term
// alone and a whole carcass.
func TestRetailCuts(t *testing.T) {
	least, err := leastMeasures.RetailCuts()
	if err != nil || least.String() != "51.15" {
		t.Errorf("least: %v, %v; want 51.34 and 0.74 for the ribeye less 0.93 for the weight", least, err)
	}
	for _, tt := range []struct {
		name string
		m    grade.Measures
		step string
	}{
		{"fat", grade.Measures{Fat: grade.ThicknessUnits(1), Ribeye: grade.SquareInches(1), Weight: grade.Pounds(100), KPH: grade.Percent(0)}, "-0.000578"},
		{"KPH", grade.Measures{Fat: grade.Inches(0), KPH: grade.ShareUnits(1), Ribeye: grade.SquareInches(1), Weight: grade.Pounds(100)}, "-0.0000462"},
		{"weight", grade.Measures{Fat: grade.Inches(0), Ribeye: grade.SquareInches(1), Weight: grade.Pounds(100.0001), KPH: grade.Percent(0)}, "-0.00000093"},
		{"ribeye", grade.Measures{Fat: grade.Inches(0), Ribeye: grade.SquareInches(1.0001), Weight: grade.Pounds(100), KPH: grade.Percent(0)}, "0.000074"},
	} {
		if got, err := tt.m.RetailCuts(); err != nil || got.Sub(least).String() != tt.step {
			t.Errorf("one step of %s moves it by %v, %v; want %v", tt.name, got.Sub(least), err, tt.step)
		}
	}
	if got, err := measures("0.39", "12.47", "2.5", "675").RetailCuts(); err != nil || got.String() != "50.8811" {
		t.Errorf("lot 31 (uf-mimeo-table4): %v, %v; want 50.8811%%", got, err)
	}
}

// TestRetailClass holds both ends of every class of every table, the gaps, and
// the rounding to tenths.
func TestRetailClass(t *testing.T) {
	type ends struct {
		class    int
		from, to int64 // tenths
	}
	for table, classes := range map[grade.RetailTable][]ends{
		grade.RetailGuide:   {{1, 524, 1000}, {2, 501, 523}, {3, 478, 500}, {4, 455, 477}, {5, 0, 454}},
		grade.RetailSlides:  {{1, 524, 1000}, {2, 500, 523}, {3, 477, 499}, {4, 454, 476}, {5, 0, 453}},
		grade.RetailHandout: {{1, 527, 1000}, {2, 503, 523}, {3, 480, 500}, {4, 457, 477}, {5, 0, 453}},
	} {
		want := map[int64]int{}
		for _, c := range classes {
			for n := c.from; n <= c.to; n++ {
				want[n] = c.class
			}
		}
		for n := int64(0); n <= 1000; n++ {
			for _, off := range []string{"-0.05", "0", "0.04999999"} {
				s := decimal.New(n, -1).Add(decimal.RequireFromString(off))
				if s.IsNegative() || s.GreaterThan(decimal.New(100, 0)) {
					continue
				}
				if class, ok := table.Class(s); class != want[n] || ok != (want[n] != 0) {
					t.Fatalf("%v: %v is class %d, %v; want %d", table, s, class, ok, want[n])
				}
			}
		}
		for _, text := range []string{"-0.00000001", "100.00000001", "-1e400", "1e400"} {
			s := decimal.RequireFromString(text)
			if class, ok := table.Class(s); class != 0 || ok {
				t.Errorf("%v: %v is class %d", table, s, class)
			}
		}
	}
	for _, table := range []grade.RetailTable{0, grade.RetailHandout + 1, 255} {
		if class, ok := table.Class(decimal.New(50, 0)); class != 0 || ok {
			t.Errorf("%v gives class %d", table, class)
		}
	}
}

// TestPreliminaryOfBadFat holds that what no fat can be is refused on the way back.
func TestPreliminaryOfBadFat(t *testing.T) {
	for _, f := range []float64{-0.0001, 3.0001, math.NaN(), math.Inf(1), math.Inf(-1)} {
		fat := grade.Inches(f)
		if got, err := grade.FatForPreliminary(fat.Preliminary()); !errors.Is(err, grade.ErrRange) {
			t.Errorf("%v: preliminary %v, fat %v, %v", fat, fat.Preliminary(), got, err)
		}
	}
}
