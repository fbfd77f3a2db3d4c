package grade_test

import (
	"math"
	"math/big"
	"testing"

	"example.com/ribface/grade"
	"example.com/ribface/internal/testkit/faulttest"
	gocmp "github.com/google/go-cmp/cmp"
	"github.com/shopspring/decimal"
	"pgregory.net/rapid"
)

// measures makes measures from text: fat, ribeye, KPH, weight.
func measures(fat, ribeye, kph, weight string) grade.Measures {
	must := func(err error) {
		if err != nil {
			panic(err)
		}
	}
	var m grade.Measures
	must(m.Fat.UnmarshalText([]byte(fat)))
	must(m.Ribeye.UnmarshalText([]byte(ribeye)))
	must(m.KPH.UnmarshalText([]byte(kph)))
	must(m.Weight.UnmarshalText([]byte(weight)))
	return m
}

// Measures at the limits, and the usual ones of the tests.
var (
	leastMeasures    = grade.Measures{Fat: grade.Inches(0), Ribeye: grade.SquareInches(1), KPH: grade.Percent(0), Weight: grade.Pounds(100)}
	greatestMeasures = grade.Measures{Fat: grade.Inches(3), Ribeye: grade.SquareInches(25), KPH: grade.Percent(10), Weight: grade.Pounds(1800)}
	usual            = grade.Measures{Fat: grade.Inches(0.6), Ribeye: grade.SquareInches(11.9), KPH: grade.Percent(1.5), Weight: grade.Pounds(660)}
)

// TestYield holds the equation (official: cfr-54-105 (a)) at exact values, each
// term alone, and the limits of the measures.
func TestYield(t *testing.T) {
	tests := []struct {
		name, reason string
		m            grade.Measures
		want         grade.Yield
		whole        int
	}{
		{"least", "2.50 and 0.38 for the weight, less 0.32 for the ribeye", leastMeasures, grade.Grades(2.56), 2},
		{"greatest", "2.50 + 7.50 + 2.00 + 6.84 - 8.00", greatestMeasures, grade.Grades(10.84), 5},
		{"one step of fat", "0.00025 more", grade.Measures{Fat: grade.ThicknessUnits(1), Ribeye: grade.SquareInches(1), Weight: grade.Pounds(100), KPH: grade.Percent(0)}, grade.Grades(2.56025), 2},
		{"one step of KPH", "0.00002 more", grade.Measures{Fat: grade.Inches(0), KPH: grade.ShareUnits(1), Ribeye: grade.SquareInches(1), Weight: grade.Pounds(100)}, grade.Grades(2.56002), 2},
		{"one step of weight", "0.00000038 more", grade.Measures{Fat: grade.Inches(0), Ribeye: grade.SquareInches(1), Weight: grade.Pounds(100.0001), KPH: grade.Percent(0)}, grade.Grades(2.56000038), 2},
		{"one step of ribeye", "0.000032 less", grade.Measures{Fat: grade.Inches(0), Ribeye: grade.SquareInches(1.0001), Weight: grade.Pounds(100), KPH: grade.Percent(0)}, grade.Grades(2.559968), 2},
		{"most ribeye on the least", "as low as it goes", grade.Measures{Fat: grade.Inches(0), Ribeye: grade.SquareInches(25), Weight: grade.Pounds(100), KPH: grade.Percent(0)}, grade.Grades(-5.12), 1},
		{"least ribeye on the most", "as high as it goes", grade.Measures{Fat: grade.Inches(3), Ribeye: grade.SquareInches(1), KPH: grade.Percent(10), Weight: grade.Pounds(1800)}, grade.Grades(18.52), 5},
		{"a worked carcass", "exactly on a whole grade", usual, grade.Grades(3), 3},
		{"heavy borderline 1/2", "1.968 (official: ams-2016-yield)", measures("0.4", "19.1", "2", "1100"), grade.Grades(1.968), 1},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			got, err := tt.m.Yield()
			if err != nil || got != tt.want || got.Grade() != tt.whole {
				t.Errorf("%+v: %v, grade %d, %v; want %v, grade %d: %s", tt.m, got, got.Grade(), err, tt.want, tt.whole, tt.reason)
			}
			terms, err := tt.m.Terms()
			if err != nil || terms.Sum() != tt.want {
				t.Errorf("the terms %+v add up to %v, %v", terms, terms.Sum(), err)
			}
			if err := tt.m.Check(); err != nil {
				t.Error(err)
			}
		})
	}
}

// TestTerms holds every term of one carcass and the difference to another.
func TestTerms(t *testing.T) {
	got, err := usual.Terms()
	if err != nil {
		t.Fatal(err)
	}
	want := grade.Terms{Start: grade.Grades(2.5), Fat: grade.Grades(1.5), KPH: grade.Grades(0.3), Weight: grade.Grades(2.508), Ribeye: grade.Grades(-3.808)}
	if diff := gocmp.Diff(want, got); diff != "" {
		t.Errorf("(-want +got)\n%s", diff)
	}
	if got.Sum() != grade.Grades(3) {
		t.Errorf("the sum is %v", got.Sum())
	}
	other, err := measures("0.5", "12", "2", "700").Terms()
	if err != nil {
		t.Fatal(err)
	}
	want = grade.Terms{Start: grade.Grades(0), Fat: grade.Grades(0.25), KPH: grade.Grades(-0.1), Weight: grade.Grades(-0.152), Ribeye: grade.Grades(0.032)}
	if diff := gocmp.Diff(want, got.Sub(other)); diff != "" {
		t.Errorf("difference: (-want +got)\n%s", diff)
	}
}

// TestMeasuresRefused holds the error for every measure that is missing or
// impossible, on both sides of every limit, from every function that takes
// measures.
func TestMeasuresRefused(t *testing.T) {
	const fats, areas, shares, pounds = "0 in to 3 in", "1 sq in to 25 sq in", "0% to 10%", "100 lb to 1800 lb"
	with := func(f func(*grade.Measures)) grade.Measures { m := usual; f(&m); return m }
	tests := []struct {
		name string
		m    grade.Measures
		want grade.FieldError
	}{
		{"nothing taken", grade.Measures{}, grade.FieldError{Field: "fat", Allowed: fats, Err: grade.ErrMissing}},
		{"no fat", with(func(m *grade.Measures) { m.Fat = grade.Thickness{} }), grade.FieldError{Field: "fat", Allowed: fats, Err: grade.ErrMissing}},
		{"fat below zero", with(func(m *grade.Measures) { m.Fat = grade.ThicknessUnits(-1) }), grade.FieldError{Field: "fat", Value: "-0.0001 in", Allowed: fats, Err: grade.ErrRange}},
		{"fat over 3 in", with(func(m *grade.Measures) { m.Fat = grade.Inches(3.0001) }), grade.FieldError{Field: "fat", Value: "3.0001 in", Allowed: fats, Err: grade.ErrRange}},
		{"fat not a number", with(func(m *grade.Measures) { m.Fat = grade.Inches(math.NaN()) }), grade.FieldError{Field: "fat", Value: "not a number", Allowed: fats, Err: grade.ErrRange}},
		{"fat infinite", with(func(m *grade.Measures) { m.Fat = grade.Inches(math.Inf(1)) }), grade.FieldError{Field: "fat", Value: "over 214748 in", Allowed: fats, Err: grade.ErrRange}},
		{"no ribeye", with(func(m *grade.Measures) { m.Ribeye = grade.Area{} }), grade.FieldError{Field: "ribeye", Allowed: areas, Err: grade.ErrMissing}},
		{"ribeye of zero", with(func(m *grade.Measures) { m.Ribeye = grade.SquareInches(0) }), grade.FieldError{Field: "ribeye", Value: "0 sq in", Allowed: areas, Err: grade.ErrRange}},
		{"ribeye under 1 sq in", with(func(m *grade.Measures) { m.Ribeye = grade.SquareInches(0.9999) }), grade.FieldError{Field: "ribeye", Value: "0.9999 sq in", Allowed: areas, Err: grade.ErrRange}},
		{"ribeye below zero", with(func(m *grade.Measures) { m.Ribeye = grade.AreaUnits(-1) }), grade.FieldError{Field: "ribeye", Value: "-0.0001 sq in", Allowed: areas, Err: grade.ErrRange}},
		{"ribeye over 25 sq in", with(func(m *grade.Measures) { m.Ribeye = grade.SquareInches(25.0001) }), grade.FieldError{Field: "ribeye", Value: "25.0001 sq in", Allowed: areas, Err: grade.ErrRange}},
		{"ribeye not a number", with(func(m *grade.Measures) { m.Ribeye = grade.SquareInches(math.NaN()) }), grade.FieldError{Field: "ribeye", Value: "not a number", Allowed: areas, Err: grade.ErrRange}},
		{"no KPH", with(func(m *grade.Measures) { m.KPH = grade.Share{} }), grade.FieldError{Field: "KPH", Allowed: shares, Err: grade.ErrMissing}},
		{"KPH below zero", with(func(m *grade.Measures) { m.KPH = grade.ShareUnits(-1) }), grade.FieldError{Field: "KPH", Value: "-0.0001%", Allowed: shares, Err: grade.ErrRange}},
		{"KPH over 10%", with(func(m *grade.Measures) { m.KPH = grade.Percent(10.0001) }), grade.FieldError{Field: "KPH", Value: "10.0001%", Allowed: shares, Err: grade.ErrRange}},
		{"KPH minus infinite", with(func(m *grade.Measures) { m.KPH = grade.Percent(math.Inf(-1)) }), grade.FieldError{Field: "KPH", Value: "under -214748 %", Allowed: shares, Err: grade.ErrRange}},
		{"no weight", with(func(m *grade.Measures) { m.Weight = grade.Weight{} }), grade.FieldError{Field: "weight", Allowed: pounds, Err: grade.ErrMissing}},
		{"weight of zero", with(func(m *grade.Measures) { m.Weight = grade.Pounds(0) }), grade.FieldError{Field: "weight", Value: "0 lb", Allowed: pounds, Err: grade.ErrRange}},
		{"weight under 100 lb", with(func(m *grade.Measures) { m.Weight = grade.Pounds(99.9999) }), grade.FieldError{Field: "weight", Value: "99.9999 lb", Allowed: pounds, Err: grade.ErrRange}},
		{"weight below zero", with(func(m *grade.Measures) { m.Weight = grade.WeightUnits(-1) }), grade.FieldError{Field: "weight", Value: "-0.0001 lb", Allowed: pounds, Err: grade.ErrRange}},
		{"weight over 1800 lb", with(func(m *grade.Measures) { m.Weight = grade.Pounds(1800.0001) }), grade.FieldError{Field: "weight", Value: "1800.0001 lb", Allowed: pounds, Err: grade.ErrRange}},
		{"the first of four", grade.Measures{Fat: grade.ThicknessUnits(-1), Ribeye: grade.AreaUnits(-1), KPH: grade.ShareUnits(-1), Weight: grade.WeightUnits(-1)}, grade.FieldError{Field: "fat", Value: "-0.0001 in", Allowed: fats, Err: grade.ErrRange}},
		{"the first of three", grade.Measures{Fat: grade.Inches(0), Ribeye: grade.AreaUnits(-1), KPH: grade.ShareUnits(-1), Weight: grade.WeightUnits(-1)}, grade.FieldError{Field: "ribeye", Value: "-0.0001 sq in", Allowed: areas, Err: grade.ErrRange}},
		{"the first of two", grade.Measures{Fat: grade.Inches(0), Ribeye: grade.SquareInches(1), KPH: grade.ShareUnits(-1), Weight: grade.WeightUnits(-1)}, grade.FieldError{Field: "KPH", Value: "-0.0001%", Allowed: shares, Err: grade.ErrRange}},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			y, err := tt.m.Yield()
			faulttest.Field(t, "Yield", err, tt.want)
			if y != (grade.Yield{}) {
				t.Errorf("Yield gives %v with the error", y)
			}
			if err == nil || tt.m.Check() == nil || err.Error() != tt.m.Check().Error() {
				t.Errorf("Yield says %v, Check %v", err, tt.m.Check())
			}
			faulttest.Field(t, "Check", tt.m.Check(), tt.want)
			terms, err := tt.m.Terms()
			faulttest.Field(t, "Terms", err, tt.want)
			quick, err := tt.m.Shortcut()
			faulttest.Field(t, "Shortcut", err, tt.want)
			cuts, err := tt.m.RetailCuts()
			faulttest.Field(t, "RetailCuts", err, tt.want)
			if terms != (grade.Terms{}) || quick != (grade.Shortcut{}) || !cuts.IsZero() {
				t.Errorf("values beside the errors: %v, %v, %v", terms, quick, cuts)
			}
		})
	}
	for name, m := range map[string]grade.Measures{"least": leastMeasures, "greatest": greatestMeasures} {
		for what, f := range map[string]func(grade.Measures) error{
			"Yield":      func(m grade.Measures) error { _, err := m.Yield(); return err },
			"Check":      func(m grade.Measures) error { return m.Check() },
			"Terms":      func(m grade.Measures) error { _, err := m.Terms(); return err },
			"Shortcut":   func(m grade.Measures) error { _, err := m.Shortcut(); return err },
			"RetailCuts": func(m grade.Measures) error { _, err := m.RetailCuts(); return err },
		} {
			if err := f(m); err != nil {
				t.Errorf("%s of the %s measures: %v", what, name, err)
			}
		}
	}
}

// TestTrapWholeGrade holds that decimals are dropped toward minus infinity and
// the grade is then kept to 1 to 5, while the raw yield stays as it is.
func TestTrapWholeGrade(t *testing.T) {
	tests := []struct {
		yield grade.Yield
		want  int
	}{
		{grade.YieldUnits(-9223372036854775808), 1}, {grade.YieldUnits(-1), 1}, {grade.Grades(0), 1}, {grade.Grades(0.99999999), 1}, {grade.Grades(1), 1}, {grade.Grades(1.99999999), 1},
		{grade.Grades(2), 2}, {grade.Grades(2.99999999), 2}, {grade.Grades(3), 3}, {grade.Grades(3.9), 3}, {grade.Grades(3.99999999), 3},
		{grade.Grades(4), 4}, {grade.Grades(4.99999999), 4}, {grade.Grades(5), 5}, {grade.Grades(5.99999999), 5}, {grade.Grades(6), 5}, {grade.YieldUnits(9223372036854775807), 5},
	}
	for _, tt := range tests {
		if got := tt.yield.Grade(); got != tt.want {
			t.Errorf("%v is grade %d, want %d", tt.yield, got, tt.want)
		}
	}
	if y, err := measures("0", "20", "0", "600").Yield(); err != nil || y.Grade() != 1 || y.String() != "-1.62" {
		t.Errorf("a yield below 1: %v, %v", y, err)
	}
	if y, err := measures("2", "8", "6", "900").Yield(); err != nil || y.Grade() != 5 || y.String() != "9.56" {
		t.Errorf("a yield above 5: %v, %v", y, err)
	}
}

// TestTrapFloat holds carcasses that lie exactly on a whole grade and that the
// plain float64 formula puts one grade too low.
func TestTrapFloat(t *testing.T) {
	for _, tt := range []struct {
		fat, kph, weight, ribeye string
		want                     int
	}{
		{"0.60", "1.5", "660", "11.9", 3}, {"0.40", "1.5", "640", "10.1", 3}, {"0.50", "1.5", "650", "11.0", 3},
		{"0.30", "3.5", "710", "11.4", 3}, {"0.35", "3.5", "915", "11.1", 4}, {"0.20", "1.5", "660", "11.9", 2},
	} {
		m := measures(tt.fat, tt.ribeye, tt.kph, tt.weight)
		y, err := m.Yield()
		if err != nil || y != grade.YieldUnits(int64(tt.want)*100000000) || y.Grade() != tt.want {
			t.Errorf("%+v: %v, grade %d, %v; want exactly %d", m, y, y.Grade(), err, tt.want)
		}
	}
	y, err := measures("0.60", "16.7", "1.5", "630").Yield()
	if err != nil {
		t.Fatal(err)
	}
	if tenth, err := y.Round(grade.HalfUp, 1); err != nil || tenth.String() != "1.4" {
		t.Errorf("%v to the nearest tenth is %v, %v; want 1.4", y, tenth, err)
	}
}

// TestRound holds every rounding on both sides of every tie, also below zero.
func TestRound(t *testing.T) {
	tests := []struct {
		name               string
		yield              string
		places             int
		down, up, halfEven string
	}{
		{"tie, odd digit before it", "2.15", 1, "2.1", "2.2", "2.2"},
		{"tie, even digit before it", "2.25", 1, "2.2", "2.3", "2.2"},
		{"just under a tie", "2.14999999", 1, "2.1", "2.1", "2.1"},
		{"just over a tie", "2.15000001", 1, "2.1", "2.2", "2.2"},
		{"just over a tie, even digit", "2.25000001", 1, "2.2", "2.3", "2.3"},
		{"just under the next", "2.19999999", 1, "2.1", "2.2", "2.2"},
		{"on the step", "2.2", 1, "2.2", "2.2", "2.2"},
		{"tie below zero, odd", "-2.15", 1, "-2.2", "-2.1", "-2.2"},
		{"tie below zero, even", "-2.25", 1, "-2.3", "-2.2", "-2.2"},
		{"just under zero", "-0.01", 1, "-0.1", "0", "0"},
		{"just over a tie below zero", "-2.14999999", 1, "-2.2", "-2.1", "-2.1"},
		{"to whole, tie", "2.5", 0, "2", "3", "2"},
		{"to whole, tie, odd", "3.5", 0, "3", "4", "4"},
		{"to hundredths", "2.345", 2, "2.34", "2.35", "2.34"},
		{"to 7 places", "2.00000005", 7, "2", "2.0000001", "2"},
		{"to 8 places", "2.12345678", 8, "2.12345678", "2.12345678", "2.12345678"},
		{"to 8 places below zero", "-2.12345679", 8, "-2.12345679", "-2.12345679", "-2.12345679"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			y, err := grade.ParseYield(tt.yield)
			if err != nil {
				t.Fatal(err)
			}
			for r, want := range map[grade.Rounding]string{grade.Down: tt.down, grade.HalfUp: tt.up, grade.HalfEven: tt.halfEven} {
				got, err := y.Round(r, tt.places)
				if err != nil || got.String() != want {
					t.Errorf("%v %v to %d places: %v, %v; want %s", y, r, tt.places, got, err, want)
				}
			}
		})
	}
}

// TestRoundRefuses holds what Round does not take.
func TestRoundRefuses(t *testing.T) {
	const roundings = "down, half up, half even"
	for _, tt := range []struct {
		name   string
		r      grade.Rounding
		places int
		want   grade.FieldError
	}{
		{"unset", 0, 1, grade.FieldError{Field: "rounding", Allowed: roundings, Err: grade.ErrMissing}},
		{"unnamed", 4, 1, grade.FieldError{Field: "rounding", Value: "rounding(4)", Allowed: roundings, Err: grade.ErrUnknown}},
		{"places below 0", grade.Down, -1, grade.FieldError{Field: "places", Value: "-1", Allowed: "0 to 8", Err: grade.ErrRange}},
		{"9 places", grade.Down, 9, grade.FieldError{Field: "places", Value: "9", Allowed: "0 to 8", Err: grade.ErrRange}},
		{"rounding first", 0, 9, grade.FieldError{Field: "rounding", Allowed: roundings, Err: grade.ErrMissing}},
	} {
		t.Run(tt.name, func(t *testing.T) {
			got, err := grade.Grades(1).Round(tt.r, tt.places)
			faulttest.Field(t, tt.name, err, tt.want)
			if got != (grade.Yield{}) {
				t.Errorf("gives %v", got)
			}
		})
	}
}

// TestRoundAgainstRat compares Round with the same in big.Rat for drawn yields,
// more than any carcass can have.
func TestRoundAgainstRat(t *testing.T) {
	floor := func(r *big.Rat) *big.Int {
		return new(big.Int).Div(r.Num(), r.Denom()) // Euclid: toward minus infinity for a positive denominator
	}
	half := big.NewRat(1, 2)
	rapid.Check(t, func(t *rapid.T) {
		y := grade.YieldUnits(rapid.Int64Range(-2_000_000_000_000, 2_000_000_000_000).Draw(t, "yield"))
		places := rapid.IntRange(0, 8).Draw(t, "places")
		step := int64(math.Pow10(8 - places))
		exact := big.NewRat(y.Units(), step)
		down := floor(exact)
		up := floor(new(big.Rat).Add(exact, half))
		even := new(big.Int).Set(up)
		if new(big.Rat).Sub(exact, new(big.Rat).SetInt(down)).Cmp(half) == 0 && down.Bit(0) == 0 {
			even.Set(down)
		}
		for r, want := range map[grade.Rounding]*big.Int{grade.Down: down, grade.HalfUp: up, grade.HalfEven: even} {
			got, err := y.Round(r, places)
			if err != nil || got.Units() != want.Int64()*step {
				t.Fatalf("%v %v to %d places: %v, %v; want %v steps", y, r, places, got, err, want)
			}
		}
	})
}

// TestYieldAsDecimal holds the way to decimals, in the shortest form.
func TestYieldAsDecimal(t *testing.T) {
	for _, tt := range []struct {
		yield grade.Yield
		value int64
		exp   int32
	}{
		{grade.Grades(0), 0, 0}, {grade.Grades(2.952), 2952, -3}, {grade.Grades(3), 3, 0}, {grade.Grades(30), 30, 0}, {grade.Grades(-2.38), -238, -2}, {grade.YieldUnits(1), 1, -8}, {grade.YieldUnits(-1), -1, -8}, {grade.YieldUnits(10), 1, -7},
		{grade.YieldUnits(-9223372036854775808), -999_999_999_999_999_999, -8}, {grade.YieldUnits(9223372036854775807), 999_999_999_999_999_999, -8},
	} {
		d := tt.yield.Decimal()
		if !d.Equal(decimal.New(tt.value, tt.exp)) || d.Exponent() != tt.exp {
			t.Errorf("%v: %v with exponent %d, want %de%d", tt.yield, d, d.Exponent(), tt.value, tt.exp)
		}
		if y, err := grade.ParseYield(d.String()); err != nil || y != tt.yield {
			t.Errorf("%v comes back from its decimal as %v, %v", tt.yield, y, err)
		}
		if q := grade.ShortcutYieldUnits(tt.yield.Units()).Decimal(); !q.Equal(d) || q.Exponent() != d.Exponent() {
			t.Errorf("ShortcutYield: %v", q)
		}
	}
}

// TestParseYield holds the errors of the plain numbers.
func TestParseYield(t *testing.T) {
	for in, reason := range map[string]error{"": grade.ErrSyntax, "2,5": grade.ErrSyntax, "0.000000001": grade.ErrPlaces, "10000000000": grade.ErrRange, "1e10": grade.ErrRange, "-1e10": grade.ErrRange} {
		for kind, parse := range map[string]func(string) (int64, error){
			"yield":          func(s string) (int64, error) { v, err := grade.ParseYield(s); return v.Units(), err },
			"shortcut yield": func(s string) (int64, error) { v, err := grade.ParseShortcutYield(s); return v.Units(), err },
		} {
			got, err := parse(in)
			want := grade.ParseError{Kind: kind, Input: in, Allowed: "a number with at most 8 places", Err: reason}
			faulttest.Parse(t, in, err, want)
			if got != 0 {
				t.Errorf("%q gives %d", in, got)
			}
		}
	}
}
