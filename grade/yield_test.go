package grade_test

import (
	"math"
	"math/big"
	"testing"

	"example.com/ribface/grade"
	"example.com/ribface/internal/faulttest"
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
	leastMeasures    = grade.Measures{Fat: 0, Ribeye: 1, KPH: 0, Weight: 1}
	greatestMeasures = grade.Measures{Fat: 3 * grade.Inch, Ribeye: 25 * grade.SquareInch, KPH: 10 * grade.OnePercent, Weight: 1800 * grade.Pound}
	usual            = grade.Measures{Fat: 6000, Ribeye: 119_000, KPH: 15_000, Weight: 6_600_000}
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
		{"least", "2.50 and 0.00000038 for the weight, less 0.000032 for the ribeye", leastMeasures, 249_996_838, 2},
		{"greatest", "2.50 + 7.50 + 2.00 + 6.84 - 8.00", greatestMeasures, 1_084_000_000, 5},
		{"one step of fat", "0.00025 more", grade.Measures{Fat: 1, Ribeye: 1, Weight: 1}, 250_021_838, 2},
		{"one step of KPH", "0.00002 more", grade.Measures{KPH: 1, Ribeye: 1, Weight: 1}, 249_998_838, 2},
		{"one step of weight", "0.00000038 more", grade.Measures{Ribeye: 1, Weight: 2}, 249_996_876, 2},
		{"one step of ribeye", "0.000032 less", grade.Measures{Ribeye: 2, Weight: 1}, 249_993_638, 2},
		{"most ribeye on nothing", "as low as it goes", grade.Measures{Ribeye: 25 * grade.SquareInch, Weight: 1}, -549_999_962, 1},
		{"least ribeye on the most", "as high as it goes", grade.Measures{Fat: 3 * grade.Inch, Ribeye: 1, KPH: 10 * grade.OnePercent, Weight: 1800 * grade.Pound}, 1_883_996_800, 5},
		{"a worked carcass", "exactly on a whole grade", usual, 300_000_000, 3},
		{"heavy borderline 1/2", "1.968 (official: ams-2016-yield)", measures("0.4", "19.1", "2", "1100"), 196_800_000, 1},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			got, err := tt.m.Yield()
			if err != nil || got != tt.want || got.Grade() != tt.whole {
				t.Errorf("%+v: %d (%v, grade %d), %v; want %d, grade %d: %s", tt.m, got, got, got.Grade(), err, tt.want, tt.whole, tt.reason)
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
	want := grade.Terms{Start: 250_000_000, Fat: 150_000_000, KPH: 30_000_000, Weight: 250_800_000, Ribeye: -380_800_000}
	if diff := gocmp.Diff(want, got); diff != "" {
		t.Errorf("(-want +got)\n%s", diff)
	}
	if got.Sum() != 300_000_000 {
		t.Errorf("the sum is %v", got.Sum())
	}
	other, err := measures("0.5", "12", "2", "700").Terms()
	if err != nil {
		t.Fatal(err)
	}
	want = grade.Terms{Start: 0, Fat: 25_000_000, KPH: -10_000_000, Weight: -15_200_000, Ribeye: 3_200_000}
	if diff := gocmp.Diff(want, got.Sub(other)); diff != "" {
		t.Errorf("difference: (-want +got)\n%s", diff)
	}
}

// TestMeasuresRefused holds the error for every measure that is missing or
// impossible, on both sides of every limit, from every function that takes
// measures.
func TestMeasuresRefused(t *testing.T) {
	const fats, areas, shares, pounds = "0 in to 3 in", "over 0 sq in to 25 sq in", "0% to 10%", "over 0 lb to 1800 lb"
	with := func(f func(*grade.Measures)) grade.Measures { m := usual; f(&m); return m }
	tests := []struct {
		name string
		m    grade.Measures
		want grade.FieldError
	}{
		{"nothing set", grade.Measures{}, grade.FieldError{Field: "ribeye", Allowed: areas, Err: grade.ErrMissing}},
		{"fat below zero", with(func(m *grade.Measures) { m.Fat = -1 }), grade.FieldError{Field: "fat", Value: "-0.0001 in", Allowed: fats, Err: grade.ErrRange}},
		{"fat over 3 in", with(func(m *grade.Measures) { m.Fat = 30_001 }), grade.FieldError{Field: "fat", Value: "3.0001 in", Allowed: fats, Err: grade.ErrRange}},
		{"fat not a number", with(func(m *grade.Measures) { m.Fat = grade.Inches(math.NaN()) }), grade.FieldError{Field: "fat", Value: "not a number", Allowed: fats, Err: grade.ErrRange}},
		{"fat infinite", with(func(m *grade.Measures) { m.Fat = grade.Inches(math.Inf(1)) }), grade.FieldError{Field: "fat", Value: "over 214748 in", Allowed: fats, Err: grade.ErrRange}},
		{"no ribeye", with(func(m *grade.Measures) { m.Ribeye = 0 }), grade.FieldError{Field: "ribeye", Allowed: areas, Err: grade.ErrMissing}},
		{"ribeye below zero", with(func(m *grade.Measures) { m.Ribeye = -1 }), grade.FieldError{Field: "ribeye", Value: "-0.0001 sq in", Allowed: areas, Err: grade.ErrRange}},
		{"ribeye over 25 sq in", with(func(m *grade.Measures) { m.Ribeye = 250_001 }), grade.FieldError{Field: "ribeye", Value: "25.0001 sq in", Allowed: areas, Err: grade.ErrRange}},
		{"ribeye not a number", with(func(m *grade.Measures) { m.Ribeye = grade.SquareInches(math.NaN()) }), grade.FieldError{Field: "ribeye", Value: "not a number", Allowed: areas, Err: grade.ErrRange}},
		{"KPH below zero", with(func(m *grade.Measures) { m.KPH = -1 }), grade.FieldError{Field: "KPH", Value: "-0.0001%", Allowed: shares, Err: grade.ErrRange}},
		{"KPH over 10%", with(func(m *grade.Measures) { m.KPH = 100_001 }), grade.FieldError{Field: "KPH", Value: "10.0001%", Allowed: shares, Err: grade.ErrRange}},
		{"KPH minus infinite", with(func(m *grade.Measures) { m.KPH = grade.Percent(math.Inf(-1)) }), grade.FieldError{Field: "KPH", Value: "under -214748 %", Allowed: shares, Err: grade.ErrRange}},
		{"no weight", with(func(m *grade.Measures) { m.Weight = 0 }), grade.FieldError{Field: "weight", Allowed: pounds, Err: grade.ErrMissing}},
		{"weight below zero", with(func(m *grade.Measures) { m.Weight = -1 }), grade.FieldError{Field: "weight", Value: "-0.0001 lb", Allowed: pounds, Err: grade.ErrRange}},
		{"weight over 1800 lb", with(func(m *grade.Measures) { m.Weight = 18_000_001 }), grade.FieldError{Field: "weight", Value: "1800.0001 lb", Allowed: pounds, Err: grade.ErrRange}},
		{"the first of four", grade.Measures{Fat: -1, Ribeye: -1, KPH: -1, Weight: -1}, grade.FieldError{Field: "fat", Value: "-0.0001 in", Allowed: fats, Err: grade.ErrRange}},
		{"the first of three", grade.Measures{Ribeye: -1, KPH: -1, Weight: -1}, grade.FieldError{Field: "ribeye", Value: "-0.0001 sq in", Allowed: areas, Err: grade.ErrRange}},
		{"the first of two", grade.Measures{Ribeye: 1, KPH: -1, Weight: -1}, grade.FieldError{Field: "KPH", Value: "-0.0001%", Allowed: shares, Err: grade.ErrRange}},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			y, err := tt.m.Yield()
			faulttest.Field(t, "Yield", err, tt.want)
			if y != 0 {
				t.Errorf("Yield gives %v with the error", y)
			}
			if err == nil || err.Error() != tt.want.Error() {
				t.Errorf("Yield says %v, want %v", err, &tt.want)
			}
			faulttest.Field(t, "Check", tt.m.Check(), tt.want)
			terms, err := tt.m.Terms()
			faulttest.Field(t, "Terms", err, tt.want)
			quick, err := tt.m.Quick()
			faulttest.Field(t, "Quick", err, tt.want)
			cuts, err := tt.m.RetailCuts()
			faulttest.Field(t, "RetailCuts", err, tt.want)
			if terms != (grade.Terms{}) || quick != (grade.Quick{}) || cuts != 0 {
				t.Errorf("values beside the errors: %v, %v, %v", terms, quick, cuts)
			}
		})
	}
	for name, m := range map[string]grade.Measures{"least": leastMeasures, "greatest": greatestMeasures} {
		for what, f := range map[string]func(grade.Measures) error{
			"Yield":      func(m grade.Measures) error { _, err := m.Yield(); return err },
			"Check":      func(m grade.Measures) error { return m.Check() },
			"Terms":      func(m grade.Measures) error { _, err := m.Terms(); return err },
			"Quick":      func(m grade.Measures) error { _, err := m.Quick(); return err },
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
		{math.MinInt64, 1}, {-1, 1}, {0, 1}, {99_999_999, 1}, {100_000_000, 1}, {199_999_999, 1},
		{200_000_000, 2}, {299_999_999, 2}, {300_000_000, 3}, {390_000_000, 3}, {399_999_999, 3},
		{400_000_000, 4}, {499_999_999, 4}, {500_000_000, 5}, {599_999_999, 5}, {600_000_000, 5}, {math.MaxInt64, 5},
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
		if err != nil || y != grade.Yield(tt.want)*grade.OneGrade || y.Grade() != tt.want {
			t.Errorf("%+v: %v, grade %d, %v; want exactly %d", m, y, y.Grade(), err, tt.want)
		}
	}
	y, err := measures("0.60", "16.7", "1.5", "630").Yield()
	if err != nil {
		t.Fatal(err)
	}
	if tenth, err := y.Tenth(grade.HalfUp); err != nil || tenth.String() != "1.4" {
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
				if tt.places == 1 {
					if tenth, err := y.Tenth(r); err != nil || tenth != got {
						t.Errorf("Tenth: %v, %v", tenth, err)
					}
				}
			}
		})
	}
}

// TestRoundRefuses holds what Round and Tenth do not take.
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
			got, err := grade.OneGrade.Round(tt.r, tt.places)
			faulttest.Field(t, tt.name, err, tt.want)
			if got != 0 {
				t.Errorf("gives %v", got)
			}
		})
	}
	got, err := grade.OneGrade.Tenth(0)
	faulttest.Field(t, "Tenth", err, grade.FieldError{Field: "rounding", Allowed: roundings, Err: grade.ErrMissing})
	if got != 0 {
		t.Errorf("Tenth gives %v", got)
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
		y := grade.Yield(rapid.Int64Range(-2_000_000_000_000, 2_000_000_000_000).Draw(t, "yield"))
		places := rapid.IntRange(0, 8).Draw(t, "places")
		step := int64(math.Pow10(8 - places))
		exact := big.NewRat(int64(y), step)
		down := floor(exact)
		up := floor(new(big.Rat).Add(exact, half))
		even := new(big.Int).Set(up)
		if new(big.Rat).Sub(exact, new(big.Rat).SetInt(down)).Cmp(half) == 0 && down.Bit(0) == 0 {
			even.Set(down)
		}
		for r, want := range map[grade.Rounding]*big.Int{grade.Down: down, grade.HalfUp: up, grade.HalfEven: even} {
			got, err := y.Round(r, places)
			if err != nil || int64(got) != want.Int64()*step {
				t.Fatalf("%v %v to %d places: %v, %v; want %v steps", y, r, places, got, err, want)
			}
		}
	})
}

// TestYieldDecimal holds the way to decimals and back, in the shortest form.
func TestYieldDecimal(t *testing.T) {
	for _, tt := range []struct {
		yield grade.Yield
		value int64
		exp   int32
	}{
		{0, 0, 0}, {295_200_000, 2952, -3}, {300_000_000, 3, 0}, {3_000_000_000, 30, 0}, {-238_000_000, -238, -2}, {1, 1, -8}, {-1, -1, -8}, {10, 1, -7},
		{math.MinInt64, math.MinInt64, -8}, {math.MaxInt64, math.MaxInt64, -8},
	} {
		d := tt.yield.Decimal()
		if !d.Equal(decimal.New(tt.value, tt.exp)) || d.Exponent() != tt.exp {
			t.Errorf("%v: %v with exponent %d, want %de%d", tt.yield, d, d.Exponent(), tt.value, tt.exp)
		}
		if q := grade.QuickYield(tt.yield).Decimal(); !q.Equal(d) || q.Exponent() != d.Exponent() {
			t.Errorf("QuickYield: %v", q)
		}
		if s := grade.RetailShare(tt.yield).Decimal(); !s.Equal(d) || s.Exponent() != d.Exponent() {
			t.Errorf("RetailShare: %v", s)
		}
	}
	const far, places8 = "a decimal with exponent far out of range", "numbers with at most 8 places"
	text := decimal.RequireFromString
	for _, tt := range []struct {
		name  string
		d     decimal.Decimal
		want  grade.Yield
		input string // of the error; empty for none
	}{
		{"usual", text("2.952"), 295_200_000, ""},
		{"below zero", text("-2.38"), -238_000_000, ""},
		{"8 places", text("0.00000001"), 1, ""},
		{"9 places", text("0.000000001"), 0, "0.000000001"},
		{"trailing zeros", text("1.0000000000"), 100_000_000, ""},
		{"greatest", text("9999999999.99999999"), 999_999_999_999_999_999, ""},
		{"one above", text("10000000000"), 0, "10000000000"},
		{"least", text("-9999999999.99999999"), -999_999_999_999_999_999, ""},
		{"one below", text("-10000000000"), 0, "-10000000000"},
		{"exponent 9", decimal.New(9, 9), 900_000_000_000_000_000, ""},
		{"exponent 10", decimal.New(0, 10), 0, far},
		{"exponent -64", decimal.New(0, -64), 0, ""},
		{"exponent -65", decimal.New(0, -65), 0, far},
		{"80 digits", decimal.NewFromBigInt(tenTo(79), -64), 0, "1000000000000000"},
		{"81 digits", decimal.NewFromBigInt(tenTo(80), -64), 0, far},
	} {
		t.Run(tt.name, func(t *testing.T) {
			got, err := grade.YieldDecimal(tt.d)
			if got != tt.want {
				t.Errorf("%v gives %d, want %d", tt.d, got, tt.want)
			}
			if tt.input != "" {
				faulttest.Parse(t, tt.name, err, grade.ParseError{Kind: "yield", Input: tt.input, Allowed: places8, Err: grade.ErrRange})
			} else if err != nil {
				t.Error(err)
			}
		})
	}
}

func tenTo(n int64) *big.Int { return new(big.Int).Exp(big.NewInt(10), big.NewInt(n), nil) }

// TestParseYield holds the errors of the plain numbers.
func TestParseYield(t *testing.T) {
	for in, reason := range map[string]error{"": grade.ErrSyntax, "2,5": grade.ErrSyntax, "0.000000001": grade.ErrRange, "10000000000": grade.ErrRange} {
		for kind, parse := range map[string]func(string) (int64, error){
			"yield":        func(s string) (int64, error) { v, err := grade.ParseYield(s); return int64(v), err },
			"retail share": func(s string) (int64, error) { v, err := grade.ParseRetailShare(s); return int64(v), err },
		} {
			got, err := parse(in)
			want := grade.ParseError{Kind: kind, Input: in, Allowed: "a number with at most 8 places", Err: reason}
			if kind == "retail share" {
				want.Allowed += "; units: %"
			}
			faulttest.Parse(t, in, err, want)
			if got != 0 {
				t.Errorf("%q gives %d", in, got)
			}
		}
	}
}
