package grade_test

import (
	"bytes"
	"database/sql/driver"
	"encoding/json"
	"errors"
	"fmt"
	"math"
	"testing"

	"example.com/ribface/grade"
	"example.com/ribface/internal/testkit"
	"example.com/ribface/internal/testkit/faulttest"
	"example.com/ribface/maturity"
	gocmp "github.com/google/go-cmp/cmp"
	"github.com/shopspring/decimal"
	"pgregory.net/rapid"
)

// TestMetricComesBack holds that the exact metric value of every measurement reads
// back as the same measurement, from a decimal, from text and, where a float is fine
// enough, from a float: over the whole range of a carcass in steps, and drawn over the
// range of the types.
func TestMetricComesBack(t *testing.T) {
	weight := func(n int64) error {
		w := grade.WeightUnits(n)
		kg := w.Kilograms()
		d, err := grade.KilogramsDecimal(kg)
		text, err2 := grade.ParseWeight(kg.String() + " kg")
		if d != w || text != w || grade.Kilograms(kg.InexactFloat64()) != w {
			return fmt.Errorf("%v is %v kg, which is %v, %v as a decimal, %v, %v as text and %v as a float", w, kg, d, err, text, err2, grade.Kilograms(kg.InexactFloat64()))
		}
		return nil
	}
	fat := func(n int64) error {
		v := grade.ThicknessUnits(n)
		mm := v.Millimeters()
		d, err := grade.MillimetersDecimal(mm)
		text, err2 := grade.ParseThickness(mm.String() + " mm")
		cm, err3 := grade.ParseThickness(mm.Shift(-1).String() + " cm")
		if d != v || text != v || cm != v || grade.Millimeters(mm.InexactFloat64()) != v {
			return fmt.Errorf("%v is %v mm, which is %v, %v as a decimal, %v, %v as text, %v, %v in cm, %v as a float", v, mm, d, err, text, err2, cm, err3, grade.Millimeters(mm.InexactFloat64()))
		}
		return nil
	}
	ribeye := func(n int64) error {
		a := grade.AreaUnits(n)
		cm := a.SquareCentimeters()
		d, err := grade.SquareCentimetersDecimal(cm)
		text, err2 := grade.ParseArea(cm.String() + " cm²")
		if d != a || text != a || grade.SquareCentimeters(cm.InexactFloat64()) != a {
			return fmt.Errorf("%v is %v sq cm, which is %v, %v as a decimal, %v, %v as text, %v as a float", a, cm, d, err, text, err2, grade.SquareCentimeters(cm.InexactFloat64()))
		}
		return nil
	}
	every := int64(13)
	if testkit.Exhaustive() {
		every = 1
	}
	for _, tt := range []struct {
		check    func(int64) error
		to, step int64
	}{{weight, 18_000_000, 97}, {fat, 30_000, 1}, {ribeye, 250_000, 3}} {
		for n := int64(0); n <= tt.to; n += every * tt.step {
			if err := tt.check(n); err != nil {
				t.Fatal(err)
			}
		}
	}
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.Int64Range(-2_147_483_645, 2_147_483_646).Draw(t, "n")
		if err := errors.Join(weight(n), fat(n), ribeye(n)); err != nil {
			t.Fatal(err)
		}
	})
}

// TestWholePoundsThroughKilograms holds that every whole pound from 400 to 1,200 comes
// back through a float of kilograms. Rounding to 0.0001 kg first changed 438 of them.
func TestWholePoundsThroughKilograms(t *testing.T) {
	for p := 400; p <= 1200; p++ {
		if got, want := grade.Kilograms(float64(p)*0.45359237), grade.Pounds(float64(p)); got != want {
			t.Errorf("%d lb come back as %v", p, got)
		}
	}
}

// TestFloatIsItsText holds that a float in the customary unit is what its shortest
// text would be to the nearest, also on a half.
func TestFloatIsItsText(t *testing.T) {
	for f, want := range map[float64]int64{1.00005: 10_001, 0.00015: 2, 0.00025: 3, -0.00015: -2, 1.00015: 10_002, 2.00065: 20_007, 0.00014999999999: 1, 0.5: 5000, 8.55555: 85_556} {
		if got := grade.Inches(f); got != grade.ThicknessUnits(want) {
			t.Errorf("%v is %v, want %v", f, got, grade.ThicknessUnits(want))
		}
	}
	rapid.Check(t, func(t *rapid.T) {
		fifth := decimal.New(rapid.Int64Range(-10_000_000_000, 10_000_000_000).Draw(t, "n"), -5)
		want := fifth.Round(4) // halves away from zero
		if got := grade.Pounds(fifth.InexactFloat64()); !got.Pounds().Equal(want) {
			t.Fatalf("%v is %v, want %v", fifth, got, want)
		}
	})
}

// TestSurplusPlaces holds that too many places are an error of their own, and are
// rounded where the caller names how.
func TestSurplusPlaces(t *testing.T) {
	const allowed = "numbers up to 214,748 with at most 4 places"
	for _, tt := range []struct {
		in                   string
		down, halfUp, toEven string
	}{
		{"0.60005", "0.6 in", "0.6001 in", "0.6 in"}, {"0.60015", "0.6001 in", "0.6002 in", "0.6002 in"}, {"0.600050000000000000001", "0.6 in", "0.6001 in", "0.6001 in"},
		{"-0.60005", "-0.6001 in", "-0.6 in", "-0.6 in"}, {"-0.000000001", "-0.0001 in", "0 in", "0 in"}, {"0.6", "0.6 in", "0.6 in", "0.6 in"},
	} {
		for r, want := range map[grade.Rounding]string{grade.Down: tt.down, grade.HalfUp: tt.halfUp, grade.HalfEven: tt.toEven} {
			text, err := grade.ParseThickness(tt.in, r)
			if err != nil || text.String() != want {
				t.Errorf("%s %v: %v, %v; want %s", tt.in, r, text, err, want)
			}
		}
		if tt.in == "0.6" {
			continue
		}
		_, err := grade.ParseThickness(tt.in)
		faulttest.Parse(t, "text", err, grade.ParseError{Kind: "thickness", Input: tt.in, Allowed: allowed, Err: grade.ErrPlaces})
		if errors.Is(err, grade.ErrRange) {
			t.Errorf("%v is taken for out of range", err)
		}
	}
	for name, f := range map[string]func(grade.Rounding) (fmt.Stringer, error){
		"ParseThickness":     func(r grade.Rounding) (fmt.Stringer, error) { return grade.ParseThickness("2.00015", r) },
		"ParseArea":          func(r grade.Rounding) (fmt.Stringer, error) { return grade.ParseArea("2.00015", r) },
		"ParseShare":         func(r grade.Rounding) (fmt.Stringer, error) { return grade.ParseShare("2.00015", r) },
		"ParseWeight":        func(r grade.Rounding) (fmt.Stringer, error) { return grade.ParseWeight("2.00015", r) },
		"ParseYield":         func(r grade.Rounding) (fmt.Stringer, error) { return grade.ParseYield("2.000000015", r) },
		"ParseShortcutYield": func(r grade.Rounding) (fmt.Stringer, error) { return grade.ParseShortcutYield("2.000000015", r) },
	} {
		down, err := f(grade.Down)
		up, err2 := f(grade.HalfUp)
		if err != nil || err2 != nil || down.String() == up.String() {
			t.Errorf("%s: %v, %v, %v, %v", name, down, err, up, err2)
		}
		for _, r := range []grade.Rounding{0, 9} {
			v, err := f(r)
			var fe *grade.FieldError
			if !errors.As(err, &fe) || fe.Field != "rounding" || v.String() != "not taken" && v.String() != "unset" {
				t.Errorf("%s, rounding %d: %v, %v", name, r, v, err)
			}
		}
	}
}

// TestFormats holds what package fmt prints. A yield to fewer places drops decimals;
// a measurement goes to the nearest.
func TestFormats(t *testing.T) {
	fat, share, none := grade.Inches(0.65), grade.Percent(2.5), grade.Thickness{}
	y, low, unset := grade.Grades(2.96), grade.Grades(-0.01), grade.Yield{}
	for _, tt := range []struct {
		format string
		v      any
		want   string
	}{
		{"%v", fat, "0.65 in"}, {"%s", fat, "0.65 in"}, {"%q", fat, `"0.65 in"`}, {"%f", fat, "0.65"}, {"%.1f", fat, "0.7"}, {"%.2f", fat, "0.65"}, {"%.3F", fat, "0.650"}, {"%.4f", fat, "0.6500"},
		{"%8.2f|", fat, "    0.65|"}, {"%-8.1f|", fat, "0.7     |"}, {"%+.1f", fat, "+0.7"}, {"%#v", fat, "grade.Inches(0.65)"}, {"%10v|", fat, "   0.65 in|"}, {"%d", fat, "%!d(0.65 in)"},
		{"%.1f", grade.Inches(-0.65), "-0.7"}, {"%.1f", grade.Inches(0.6499), "0.6"}, {"%v", share, "2.5%"}, {"%.0f", share, "3"}, {"%#v", grade.SquareInches(11.9), "grade.SquareInches(11.9)"},
		{"%#v", share, "grade.Percent(2.5)"}, {"%#v", grade.Pounds(842), "grade.Pounds(842)"}, {"%v", grade.Pounds(842), "842 lb"}, {"%f", grade.Pounds(842), "842"}, {"%.1f", grade.Pounds(842), "842.0"},
		{"%v", none, "not taken"}, {"%.1f", none, "not taken"}, {"%#v", none, "grade.Thickness{}"}, {"%#v", grade.Area{}, "grade.Area{}"}, {"%#v", grade.Inches(0), "grade.Inches(0)"},
		{"%#v", grade.Inches(math.NaN()), "grade.Inches(math.NaN())"}, {"%#v", grade.Percent(math.Inf(1)), "grade.Percent(math.Inf(1))"}, {"%#v", grade.Pounds(math.Inf(-1)), "grade.Pounds(math.Inf(-1))"}, {"%.1f", grade.Inches(math.NaN()), "not a number"},
		{"%v", y, "2.96"}, {"%s", y, "2.96"}, {"%q", y, `"2.96"`}, {"%f", y, "2.96"}, {"%.1f", y, "2.9"}, {"%.2f", y, "2.96"}, {"%.3F", y, "2.960"}, {"%.0f", y, "2"}, {"%8.2f|", y, "    2.96|"}, {"%-8.1f|", y, "2.9     |"}, {"%+.1f", y, "+2.9"}, {"%.10f", y, "2.9600000000"},
		{"%.1f", low, "-0.1"}, {"%.0f", low, "-1"}, {"%+.1f", low, "-0.1"}, {"%v", unset, "unset"}, {"%.1f", unset, "unset"}, {"%.1f", grade.Grades(0), "0.0"},
		{"%.1f", grade.ShortcutGrades(2.96), "2.9"}, {"%#v", grade.ShortcutYield{}, "grade.ShortcutYield{}"}, {"%#v", unset, "grade.Yield{}"},
	} {
		if got := fmt.Sprintf(tt.format, tt.v); got != tt.want {
			t.Errorf("%s of %v is %q, want %q", tt.format, tt.v, got, tt.want)
		}
	}
	for v, want := range map[any]string{y: "grade.Grades(2.96)", low: "grade.Grades(-0.01)", grade.ShortcutGrades(3.5): "grade.ShortcutGrades(3.5)", grade.YieldUnits(123_456_789_012_345_678): "grade.YieldUnits(123456789012345678)", grade.ShortcutYieldUnits(-123_456_789_012_345_678): "grade.ShortcutYieldUnits(-123456789012345678)"} {
		if got := fmt.Sprintf("%#v", v); got != want {
			t.Errorf("Go syntax is %q, want %q", got, want)
		}
	}
}

// TestTaken holds that a taken zero and nothing differ everywhere.
func TestTaken(t *testing.T) {
	for _, tt := range []struct {
		zero, none interface {
			IsSet() bool
			Units() int64
			MarshalText() ([]byte, error)
		}
		text string
	}{
		{grade.Inches(0), grade.Thickness{}, "0 in"}, {grade.SquareInches(0), grade.Area{}, "0 sq in"}, {grade.Percent(0), grade.Share{}, "0%"}, {grade.Pounds(0), grade.Weight{}, "0 lb"},
		{grade.Grades(0), grade.Yield{}, "0"}, {grade.ShortcutGrades(0), grade.ShortcutYield{}, "0"},
	} {
		if tt.zero == tt.none || !tt.zero.IsSet() || tt.none.IsSet() || tt.zero.Units() != 0 || tt.none.Units() != 0 || gocmp.Diff(tt.zero, tt.none) == "" {
			t.Errorf("%T: zero %v and nothing %v", tt.zero, tt.zero, tt.none)
		}
		if b, err := tt.zero.MarshalText(); string(b) != tt.text || err != nil {
			t.Errorf("%T: text of zero %q, %v", tt.zero, b, err)
		}
		if b, err := tt.none.MarshalText(); len(b) != 0 || err != nil {
			t.Errorf("%T: text of nothing %q, %v", tt.none, b, err)
		}
	}
	if grade.Inches(0).Compare(grade.Thickness{}) != 1 || (grade.Yield{}).Compare(grade.Grades(-5)) != -1 {
		t.Error("nothing does not come first")
	}
	if y := (grade.Yield{}); y.Grade() != 0 || y.Add(grade.Grades(1)).IsSet() || grade.Grades(1).Add(y).IsSet() || y.Sub(grade.Grades(1)).IsSet() || grade.Grades(1).Sub(y).IsSet() || (grade.Thickness{}).Preliminary().IsSet() {
		t.Error("something comes of nothing")
	}
	if _, ok := (grade.Yield{}).Better(); ok {
		t.Error("Better of nothing")
	}
	if _, ok := (grade.Yield{}).Worse(); ok {
		t.Error("Worse of nothing")
	}
	_, err := (grade.Yield{}).Round(grade.Down, 1)
	faulttest.Field(t, "Round", err, grade.FieldError{Field: "yield", Allowed: "a yield", Err: grade.ErrMissing})
	_, err = grade.FatForPreliminary(grade.ShortcutYield{})
	faulttest.Field(t, "FatForPreliminary", err, grade.FieldError{Field: "preliminary yield grade", Allowed: "2 to 9.5", Err: grade.ErrMissing})
	_, err = usual.Solve(grade.TraitFat, grade.Yield{})
	faulttest.Field(t, "Solve", err, grade.FieldError{Field: "line", Allowed: "-100 to 100", Err: grade.ErrMissing})
	if notes := (grade.Measures{}).Unusual(); notes != nil {
		t.Errorf("what was not taken is unusual: %v", notes)
	}
}

// TestEndsOfYields holds both ends of what a yield holds, and that nothing wraps
// there.
func TestEndsOfYields(t *testing.T) {
	most, least := grade.YieldUnits(math.MaxInt64), grade.YieldUnits(math.MinInt64)
	for _, tt := range []struct {
		got  grade.Yield
		want string
	}{
		{most, "9999999999.99999999"}, {least, "-9999999999.99999999"}, {grade.Grades(math.Inf(1)), "9999999999.99999999"}, {grade.Grades(-1e300), "-9999999999.99999999"},
		{most.Add(most), "9999999999.99999999"}, {least.Sub(most), "-9999999999.99999999"}, {grade.Grades(math.NaN()), "unset"},
	} {
		if tt.got.String() != tt.want {
			t.Errorf("%v, want %s", tt.got, tt.want)
		}
	}
	for _, tt := range []struct {
		y      grade.Yield
		r      grade.Rounding
		places int
		want   string // empty where it is refused
	}{
		{most, grade.Down, 0, "9999999999"}, {most, grade.HalfUp, 0, ""}, {most, grade.HalfEven, 7, ""}, {most, grade.HalfUp, 8, "9999999999.99999999"},
		{least, grade.Down, 0, ""}, {least, grade.Down, 7, ""}, {least, grade.HalfUp, 1, ""}, {least, grade.HalfEven, 8, "-9999999999.99999999"},
	} {
		got, err := tt.y.Round(tt.r, tt.places)
		if tt.want != "" {
			if err != nil || got.String() != tt.want {
				t.Errorf("%v %v to %d: %v, %v; want %s", tt.y, tt.r, tt.places, got, err, tt.want)
			}
			continue
		}
		faulttest.Field(t, tt.y.String(), err, grade.FieldError{Field: "yield", Value: tt.y.String(), Allowed: "a yield that does not round to 10,000,000,000 or more", Err: grade.ErrRange})
		if got != (grade.Yield{}) {
			t.Errorf("%v beside the error", got)
		}
	}
}

// TestAllProblems holds that every check tells of everything at once, each with its
// path, and that paths are the JSON names.
func TestAllProblems(t *testing.T) {
	const (
		fat    = "fat: missing; allowed: 0 in to 3 in"
		ribeye = "ribeye: 0.5 sq in: out of range; allowed: 1 sq in to 25 sq in"
		kph    = "KPH: not a number: out of range; allowed: 0% to 10%"
		weight = "weight: 99 lb: out of range; allowed: 100 lb to 1800 lb"
	)
	m := grade.Measures{Ribeye: grade.SquareInches(0.5), KPH: grade.Percent(math.NaN()), Weight: grade.Pounds(99)}
	of := func(prefix string) []string {
		return []string{prefix + "fat | " + fat, prefix + "ribeye | " + ribeye, prefix + "kph | " + kph, prefix + "weight | " + weight}
	}
	faulttest.All(t, "Check", m.Check(), of("")...)
	_, err := m.Yield()
	faulttest.All(t, "Yield", err, of("")...)
	_, err = m.Terms()
	faulttest.All(t, "Terms", err, of("")...)
	_, err = m.Shortcut()
	faulttest.All(t, "Shortcut", err, of("")...)
	_, err = m.RetailCuts()
	faulttest.All(t, "RetailCuts", err, of("")...)
	_, err = m.Solve(grade.TraitFat, grade.Grades(3))
	faulttest.All(t, "Solve", err, of("")[1:]...)

	odd := grade.Tolerances{Fat: grade.Inches(-1), Weight: grade.Pounds(1801), Marbling: 1001, Maturity: -1}
	wide := []string{
		"fat | tolerance of fat: -1 in: out of range; allowed: 0 in to 3 in", "weight | tolerance of weight: 1801 lb: out of range; allowed: 0 lb to 1800 lb",
		"marbling | tolerance of marbling: 1001: out of range; allowed: 0 to 1000 points", "maturity | tolerance of maturity: -1: out of range; allowed: 0 to 500 units",
	}
	faulttest.All(t, "Tolerances.Check", odd.Check(), wide...)
	var both []string
	for _, p := range wide {
		both = append(both, "tolerances."+p)
	}
	_, _, err = odd.Span(m)
	faulttest.All(t, "Span", err, append(both, of("measures.")...)...)

	c := grade.Carcass{
		Maturity: maturity.Evidence{Skeletal: maturity.A.At(160), Teeth: maturity.Incisors(9), Papers: 700}, Marbling: grade.Small.At(140),
		Lean: grade.Lean{Firmness: 8, Dark: 4}, Measures: m, FatAdjust: grade.Inches(4),
	}
	quality := []string{
		"sex | sex class: missing; allowed: steer, heifer, cow, bullock, bull",
		"maturity.skeletal | skeletal maturity: A(160): out of range; allowed: A00 to E100", "maturity.lean | lean maturity: missing; allowed: A00 to E100",
		"maturity.teeth | teeth: 9 permanent incisors: out of range; allowed: 0 to 8", "maturity.papers | papers: 700 months: out of range; allowed: 1 to 600 months, 0 for none",
		"marbling | marbling: Sm(140): out of range; allowed: Devoid00 to Ab100",
		"lean.firmness | firmness: firmness(8): unknown; allowed: very soft, soft, moderately soft, slightly soft, slightly firm, moderately firm, firm",
		"lean.dark | dark cut: dark cut(4): unknown; allowed: none, one third, two thirds, full",
	}
	all := append(append(quality[:len(quality):len(quality)], of("measures.")...), "fat_adjust | fat adjustment: 4 in: out of range; allowed: -3 in to 3 in")
	r := grade.Rules{Edition: grade.Current}
	_, err = r.Quality(c)
	faulttest.All(t, "Quality", err, quality...)
	_, err = r.QualityChanges(c)
	faulttest.All(t, "QualityChanges", err, quality...)
	a, err := r.Assess(c)
	faulttest.All(t, "Assess", err, all...)
	faulttest.All(t, "Check", r.Check(c), all...)
	_, err = r.Estimate(c, grade.Tolerances{})
	faulttest.All(t, "Estimate", err, all...)
	if a != (grade.Assessment{}) {
		t.Errorf("beside the error: %+v", a)
	}
	if got := grade.Problems(err); len(got) != len(all) || got[9].Path != "measures.ribeye" || got[9].Field != "ribeye" || got[9].Err != grade.ErrRange {
		t.Errorf("Problems: %v", got)
	}
	good := carcass("A50", "Sm00")
	faulttest.All(t, "rules", grade.Rules{Maturity: maturity.Balancing{Tens: 3, OldLean: 2}}.Check(good),
		" | edition: missing; allowed: 1975, 1987, 1997, 2016, 2017", "tens | rules: tens: tens(3): unknown; allowed: keep units, toward bone, toward lean", "old_lean | rules: old lean: old lean(2): unknown; allowed: may cross, stays in B")
	if err := r.Check(good); err != nil {
		t.Errorf("a good carcass: %v", err)
	}
}

// TestAdjustedBesideErrors holds that no measures come with an error.
func TestAdjustedBesideErrors(t *testing.T) {
	c := carcass("A50", "Sm00")
	for name, change := range map[string]func(*grade.Carcass){
		"a measure":                    func(c *grade.Carcass) { c.Measures.Weight = grade.Weight{} },
		"a measure with an adjustment": func(c *grade.Carcass) { c.Measures.Weight, c.FatAdjust = grade.Weight{}, grade.Inches(0.1) },
		"the adjustment":               func(c *grade.Carcass) { c.FatAdjust = grade.Inches(3.5) },
		"the sum":                      func(c *grade.Carcass) { c.FatAdjust = grade.Inches(-1) },
	} {
		bad := c
		change(&bad)
		if m, err := bad.Adjusted(); err == nil || m != (grade.Measures{}) {
			t.Errorf("%s: %+v, %v", name, m, err)
		}
	}
}

// TestColumns holds what a database gets, so that a numeric column sorts it, and what
// is read back: numbers, text with or without a unit, and NULL.
func TestColumns(t *testing.T) {
	var fat grade.Thickness
	var y grade.Yield
	for _, tt := range []struct {
		v    interface{ Value() (any, error) }
		want any
	}{
		{valuer(grade.Inches(0.6).Value), "0.6"}, {valuer(grade.Inches(0).Value), "0"}, {valuer(grade.Thickness{}.Value), nil}, {valuer(grade.Pounds(842).Value), "842"}, {valuer(grade.Percent(2.5).Value), "2.5"},
		{valuer(grade.Grades(-0.01).Value), "-0.01"}, {valuer(grade.Yield{}.Value), nil}, {valuer(grade.ShortcutGrades(3.5).Value), "3.5"},
	} {
		if got, err := tt.v.Value(); got != tt.want || err != nil {
			t.Errorf("Value: %v, %v; want %v", got, err, tt.want)
		}
	}
	for _, tt := range []struct {
		src  any
		want string
	}{{int64(2), "2 in"}, {0.45, "0.45 in"}, {"0.6", "0.6 in"}, {[]byte("11 mm"), "0.4331 in"}, {nil, "not taken"}} {
		if err := fat.Scan(tt.src); err != nil || fat.String() != tt.want {
			t.Errorf("Scan(%v): %v, %v; want %s", tt.src, fat, err, tt.want)
		}
	}
	for _, tt := range []struct {
		src  any
		want string
	}{{int64(3), "3"}, {2.952, "2.952"}, {"2.952", "2.952"}, {nil, "unset"}} {
		if err := y.Scan(tt.src); err != nil || y.String() != tt.want {
			t.Errorf("Scan(%v): %v, %v; want %s", tt.src, y, err, tt.want)
		}
	}
	fat = grade.Inches(0.6)
	for _, src := range []any{true, 0.00001, math.NaN(), "thick"} {
		if err := fat.Scan(src); err == nil || fat != grade.Inches(0.6) {
			t.Errorf("Scan(%v): %v, %v", src, fat, err)
		}
	}
}

type valuer func() (driver.Value, error)

func (v valuer) Value() (any, error) { return v() }

// TestMissingKeys holds that a key that is left out is not taken, that one that is
// misspelled is refused by name, and that nothing is graded as if it were zero.
func TestMissingKeys(t *testing.T) {
	const most = `{"sex":"Steer","maturity":{"skeletal":"a60","lean":"A 50"},"marbling":"modest 20","measures":{"ribeye":11.9,"weight":660}}`
	var c grade.Carcass
	if err := json.Unmarshal([]byte(most), &c); err != nil {
		t.Fatal(err)
	}
	_, err := grade.Current.Assess(c)
	faulttest.All(t, "left out", err, "measures.fat | fat: missing; allowed: 0 in to 3 in", "measures.kph | KPH: missing; allowed: 0% to 10%")
	var d grade.Carcass
	err = json.NewDecoder(bytes.NewReader([]byte(`{"measures":{"fta":0.6,"Ribeye":"11.9 in"},"lean":{"dark":"half"}}`))).Decode(&d)
	faulttest.All(t, "misspelled", err,
		"lean.dark | dark cut: \"half\": unknown; allowed: none, one third, two thirds, full",
		"measures.ribeye | area: \"11.9 in\": unknown; allowed: a number with at most 4 places, unit sq in or sq cm",
		"measures.fta | name: fta: unknown; allowed: fat, ribeye, kph, weight")
	if d != (grade.Carcass{}) {
		t.Errorf("the receiver is %+v", d)
	}
	c.Measures.Fat, c.Measures.KPH = grade.Inches(0), grade.Percent(0)
	if a, err := grade.Current.Assess(c); err != nil || a.Yield.Grade() != 1 {
		t.Errorf("taken zeros: %v, %v", a.Yield, err)
	}
}
