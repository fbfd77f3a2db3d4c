package grade_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"example.com/ribface/grade"
	"example.com/ribface/internal/testkit/faulttest"
	"github.com/shopspring/decimal"
	"pgregory.net/rapid"
)

// What the tests take for numbers that do not fit.
const (
	notANumber = math.MinInt32 + 1
	tooSmall   = math.MinInt32 + 2
	tooLarge   = math.MaxInt32
)

// code is the count of a measurement, or one of the three above.
func code(v interface {
	fmt.Stringer
	IsValid() bool
	Units() int64
}) int32 {
	s := v.String()
	switch {
	case v.IsValid():
		return int32(v.Units())
	case s == "not a number":
		return notANumber
	case strings.HasPrefix(s, "over 214748 "):
		return tooLarge
	case strings.HasPrefix(s, "under -214748 "):
		return tooSmall
	}
	return math.MinInt32
}

// TestFromFloat holds the snapping of floats to the grid, the two edges of the
// type, and what becomes of numbers that do not fit.
func TestFromFloat(t *testing.T) {
	inches := func(f float64) int32 { return code(grade.Inches(f)) }
	mm := func(f float64) int32 { return code(grade.Millimeters(f)) }
	sqin := func(f float64) int32 { return code(grade.SquareInches(f)) }
	sqcm := func(f float64) int32 { return code(grade.SquareCentimeters(f)) }
	percent := func(f float64) int32 { return code(grade.Percent(f)) }
	pounds := func(f float64) int32 { return code(grade.Pounds(f)) }
	kg := func(f float64) int32 { return code(grade.Kilograms(f)) }
	tests := []struct {
		name, reason string
		from         func(float64) int32
		f            float64
		want         int32
	}{
		{"inches", "ten thousand to the inch", inches, 0.6, 6000},
		{"a float that is not exact", "0.7 lies below seven tenths and is snapped up", inches, 0.7, 7000},
		{"a sum of floats", "0.1 + 0.2 lies above three tenths and is snapped down", inches, 0.1 + 0.2, 3000},
		{"below half a step", "to the nearest", inches, 0.000049, 0},
		{"half a step", "away from zero", inches, 0.00005, 1},
		{"half a step below zero", "away from zero", inches, -0.00005, -1},
		{"negative", "an adjustment may be", inches, -0.1, -1000},
		{"NaN", "kept and refused later", inches, math.NaN(), notANumber},
		{"+Inf", "kept and refused later", inches, math.Inf(1), tooLarge},
		{"-Inf", "kept and refused later", inches, math.Inf(-1), tooSmall},
		{"1e9", "above the type", inches, 1e9, tooLarge},
		{"-1e9", "below the type", inches, -1e9, tooSmall},
		{"1e300", "far above the type", inches, 1e300, tooLarge},
		{"-1e300", "far below the type", inches, -1e300, tooSmall},
		{"greatest", "the last number that is held", inches, 214748.3646, math.MaxInt32 - 1},
		{"one above the greatest", "does not fit", inches, 214748.3647, tooLarge},
		{"least", "the last number that is held", inches, -214748.3645, math.MinInt32 + 3},
		{"one below the least", "does not fit", inches, -214748.3646, tooSmall},
		{"millimeters", "25.4 to the inch", mm, 25.4, 10_000},
		{"11 mm", "0.43307 in", mm, 11, 4331},
		{"negative millimeters", "rounded alike on both sides", mm, -11, -4331},
		{"half a step of millimeters", "1.27 mm is 0.05 in, 0.0127 mm is 0.0005 in", mm, 0.0127, 5},
		{"a million millimeters", "39370.0787 in is held", mm, 1e6, 393_700_787},
		{"too many millimeters", "above 214748.3646 in", mm, 5_454_610, tooLarge},
		{"far too many millimeters", "above the guard against overflow", mm, 9_000_001, tooLarge},
		{"far too few millimeters", "below the guard against overflow", mm, -9_000_001, tooSmall},
		{"square inches", "ten thousand to the square inch", sqin, 11.9, 119_000},
		{"square centimeters", "6.4516 to the square inch", sqcm, 6.4516, 10_000},
		{"80 square centimeters", "12.40003 sq in", sqcm, 80, 124_000},
		{"percent", "ten thousand to the percent", percent, 2.5, 25_000},
		{"pounds", "ten thousand to the pound", pounds, 842, 8_420_000},
		{"kilograms", "0.45359237 to the pound", kg, 0.45359237, 10_000},
		{"300 kilograms", "661.3868 lb", kg, 300, 6_613_868},
		{"too many kilograms", "above 214748.3646 lb", kg, 97_409, tooLarge},
		{"most kilograms", "214748.2 lb is held", kg, 97_408, 2_147_478_803},
		{"far too many kilograms", "the product would overflow", kg, 9_000_001, tooLarge},
		{"most kilograms in the guard", "no overflow below it", kg, 9_000_000, tooLarge},
		{"next to no kilograms", "an exponent of -200", kg, 1e-200, 0},
		{"far too few kilograms", "the product would overflow", kg, -9_000_000, tooSmall},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			if got := tt.from(tt.f); got != tt.want {
				t.Errorf("%v gives %d, want %d: %s", tt.f, got, tt.want, tt.reason)
			}
		})
	}
}

// measurement is what the tests need of one of the four types.
type measurement struct {
	name    string
	parse   func(string) (int32, error)
	kind    string
	allowed string
}

var (
	thickness = measurement{"Thickness", func(s string) (int32, error) { v, err := grade.ParseThickness(s); return int32(v.Units()), err }, "thickness", "a number with at most 4 places, unit in or mm or cm"}
	area      = measurement{"Area", func(s string) (int32, error) { v, err := grade.ParseArea(s); return int32(v.Units()), err }, "area", "a number with at most 4 places, unit sq in or sq cm"}
	share     = measurement{"Share", func(s string) (int32, error) { v, err := grade.ParseShare(s); return int32(v.Units()), err }, "share", "a number with at most 4 places, unit %"}
	weight    = measurement{"Weight", func(s string) (int32, error) { v, err := grade.ParseWeight(s); return int32(v.Units()), err }, "weight", "a number with at most 4 places, unit lb or kg"}
)

const smallNumbers = "numbers up to 214,748 with at most 4 places"

// TestParseMeasures holds what is read as a measurement and why all else is
// refused.
func TestParseMeasures(t *testing.T) {
	tests := []struct {
		name, reason string
		of           measurement
		in           string
		want         int32
		part         string // of the error
		allowed      string // of the error, where it is not the usual one
		err          error
	}{
		{"unit with space", "the canonical spelling", thickness, "0.6 in", 6000, "", "", nil},
		{"unit without space", "the space may be left out", thickness, "0.6in", 6000, "", "", nil},
		{"bare number", "in inches", thickness, "0.6", 6000, "", "", nil},
		{"negative", "an adjustment may be", thickness, "-0.1 in", -1000, "", "", nil},
		{"millimeters", "25.4 to the inch", thickness, "11mm", 4331, "", "", nil},
		{"centimeters", "2.54 to the inch", thickness, "1.1 cm", 4331, "", "", nil},
		{"negative centimeters", "rounded alike on both sides", thickness, "-1.1 cm", -4331, "", "", nil},
		{"half a step", "1.905 in is 48.387 mm; 0.00127 cm is 0.0005 in", thickness, "0.0127 mm", 5, "", "", nil},
		{"greatest", "the last number that is held", thickness, "214748.3646", math.MaxInt32 - 1, "", "", nil},
		{"one above the greatest", "does not fit", thickness, "214748.3647", 0, "", smallNumbers, grade.ErrRange},
		{"least", "the last number that is held", thickness, "-214748.3645 in", math.MinInt32 + 3, "", "", nil},
		{"one below the least", "does not fit", thickness, "-214748.3646", 0, "", smallNumbers, grade.ErrRange},
		{"least of the integer", "stands for NaN and is not read", thickness, "-214748.3648", 0, "", smallNumbers, grade.ErrRange},
		{"four places", "as fine as the grid", thickness, "0.0001", 1, "", "", nil},
		{"five places", "finer than the grid", thickness, "0.00001", 0, "", smallNumbers, grade.ErrPlaces},
		{"five places with unit", "finer than the grid", thickness, "0.00001 in", 0, "", smallNumbers, grade.ErrPlaces},
		{"no number", "a unit alone", thickness, "in", 0, "", "", grade.ErrSyntax},
		{"space alone", "no number", thickness, " ", 0, "", "", grade.ErrSyntax},
		{"word", "no number", thickness, "thick", 0, "", "", grade.ErrSyntax},
		{"unknown unit after a 9", "the number ends at its last digit", thickness, "0.59 lb", 0, "lb", "", grade.ErrUnknown},
		{"unknown unit", "names no unit of thickness", thickness, "0.6 lb", 0, "lb", "", grade.ErrUnknown},
		{"unit in capitals", "case does not count", thickness, "0.6 IN", 6000, "", "", nil},
		{"two spaces", "any number", thickness, "0.6  in", 6000, "", "", nil},
		{"space around", "taken off", thickness, "\t 0.6 ", 6000, "", "", nil},
		{"inches in words", "a further spelling", thickness, "0.6 inches", 6000, "", "", nil},
		{"one inch", "a further spelling", thickness, "1 inch", 10_000, "", "", nil},
		{"inch mark", "a further spelling", thickness, `0.6"`, 6000, "", "", nil},
		{"digits in the unit", "a further spelling", area, "80 cm2", 124_000, "", "", nil},
		{"digits in the customary unit", "a further spelling", area, "12.4 in2", 124_000, "", "", nil},
		{"pounds short", "a further spelling", weight, "842lbs.", 8_420_000, "", "", nil},
		{"percent in letters", "a further spelling", share, "2.5pct", 25_000, "", "", nil},
		{"no digit before the point", "as people write it", thickness, ".45", 4500, "", "", nil},
		{"plus", "as people write it", thickness, "+0.1 in", 1000, "", "", nil},
		{"point before the unit", "as people write it", thickness, "5.in", 50_000, "", "", nil},
		{"byte below 0", "no digit", thickness, "5/", 0, "/", "", grade.ErrUnknown},
		{"byte above 9", "no digit", thickness, "5:", 0, ":", "", grade.ErrUnknown},
		{"exponent", "as programs write it", thickness, "1e3", 10_000_000, "", "", nil},
		{"exponent and unit", "as programs write it", thickness, "4.5E-01 in", 4500, "", "", nil},
		{"two numbers", "one at most", thickness, "1 2 in", 0, "1 2", "", grade.ErrSyntax},
		{"decimal comma", "may be a grouping", thickness, "0,6 in", 0, "0,6", "", grade.ErrSyntax},
		{"empty", "no number", thickness, "", 0, "", "", grade.ErrSyntax},
		{"minus alone", "no number", thickness, "-", 0, "", "", grade.ErrSyntax},
		{"eleven digits", "too many to count", thickness, "12345678901 in", 0, "12345678901", "", grade.ErrRange},
		{"too many kilograms", "no overflow on the way", weight, "9999999999 kg", 0, "", smallNumbers, grade.ErrRange},
		{"square inches", "the canonical spelling", area, "12.4 sq in", 124_000, "", "", nil},
		{"square inches without space", "before the unit alone", area, "12.4sq in", 124_000, "", "", nil},
		{"square centimeters", "6.4516 to the square inch", area, "80 sq cm", 124_000, "", "", nil},
		{"inches for an area", "another kind", area, "12.4 in", 0, "in", "", grade.ErrUnknown},
		{"percent", "the canonical spelling", share, "2.5%", 25_000, "", "", nil},
		{"percent with space", "one is read", share, "2.5 %", 25_000, "", "", nil},
		{"percent bare", "in percent", share, "2.5", 25_000, "", "", nil},
		{"two signs", "one at most", share, "2.5%%", 0, "%%", "", grade.ErrUnknown},
		{"pounds", "the canonical spelling", weight, "842 lb", 8_420_000, "", "", nil},
		{"kilograms", "0.45359237 to the pound", weight, "300 kg", 6_613_868, "", "", nil},
		{"grams", "names no unit here", weight, "300 g", 0, "g", "", grade.ErrUnknown},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			got, err := tt.of.parse(tt.in)
			if got != tt.want {
				t.Errorf("%s of %q is %d, want %d: %s", tt.of.name, tt.in, got, tt.want, tt.reason)
			}
			if tt.err == nil {
				if err != nil {
					t.Errorf("%s of %q: %v", tt.of.name, tt.in, err)
				}
				return
			}
			want := grade.ParseError{Kind: tt.of.kind, Input: tt.in, Part: tt.part, Allowed: tt.of.allowed, Err: tt.err}
			if tt.allowed != "" {
				want.Allowed = tt.allowed
			}
			faulttest.Parse(t, tt.reason, err, want)
		})
	}
}

// TestDecimalsAsText holds that a decimal and its text with the unit give the same
// value, or are both refused.
func TestDecimalsAsText(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := decimal.New(rapid.Int64Range(-1e13, 1e13).Draw(t, "units"), -4)
		if rapid.Bool().Draw(t, "small") {
			d = decimal.New(rapid.Int64Range(-1e10, 1e10).Draw(t, "units"), -4)
		}
		v, err := grade.MillimetersDecimal(d)
		w, refused := grade.ParseThickness(d.String() + " mm")
		if v != w || (err == nil) != (refused == nil) {
			t.Fatalf("%v mm: decimal %v, %v; text %v, %v", d, v, err, w, refused)
		}
	})
}

// TestFromDecimal holds the decimal door of the metric units, both sides of each bound.
func TestFromDecimal(t *testing.T) {
	mm := func(d decimal.Decimal) (int32, error) {
		v, err := grade.MillimetersDecimal(d)
		return int32(v.Units()), err
	}
	sqcm := func(d decimal.Decimal) (int32, error) {
		v, err := grade.SquareCentimetersDecimal(d)
		return int32(v.Units()), err
	}
	kg := func(d decimal.Decimal) (int32, error) {
		v, err := grade.KilogramsDecimal(d)
		return int32(v.Units()), err
	}
	const far = smallNumbers
	text := decimal.RequireFromString
	refused := func(kind, input, allowed string) *grade.ParseError {
		return &grade.ParseError{Kind: kind, Input: input, Allowed: allowed, Err: grade.ErrRange}
	}
	nines := strings.Repeat("9", 80)
	tests := []struct {
		name, reason string
		from         func(decimal.Decimal) (int32, error)
		d            decimal.Decimal
		want         int32
		err          *grade.ParseError
	}{
		{"zero", "no fat is a thickness", mm, decimal.Zero, 0, nil},
		{"wraps an int64", "refused before it is cut", mm, text("1844674407370955161.7"), 0, refused("thickness", "1844674407370955161.7", smallNumbers)},
		{"exponent 9", "no more than zero", mm, decimal.New(0, 9), 0, nil},
		{"exponent 9, too large", "scaled and refused", mm, decimal.New(1, 9), 0, refused("thickness", "1000000000", smallNumbers)},
		{"exponent 10", "the greatest that is scaled", mm, decimal.New(0, 10), 0, nil},
		{"exponent 11", "never scaled", mm, decimal.New(0, 11), 0, refused("thickness", "a decimal with exponent far out of range", far)},
		{"exponent of a billion", "never scaled", mm, decimal.New(1, 1_000_000_000), 0, refused("thickness", "a decimal with exponent far out of range", far)},
		{"exponent -99", "the least that is scaled", mm, decimal.New(0, -99), 0, nil},
		{"exponent -100", "never scaled", mm, decimal.New(0, -100), 0, refused("thickness", "a decimal with exponent far out of range", far)},
		{"80 digits", "far too large", mm, text("0." + nines).Shift(20), 0, refused("thickness", (nines[:20] + "." + nines[20:])[:64], smallNumbers)},
		{"121 digits", "never scaled", mm, text(nines + nines[:41]).Shift(-60), 0, refused("thickness", "a decimal with exponent far out of range", far)},
		{"millimeters", "25.4 to the inch", mm, text("25.4"), 10_000, nil},
		{"11 mm", "0.43307 in", mm, text("11"), 4331, nil},
		{"a million millimeters", "39,370 in is held, as from text", mm, text("1000000"), 393_700_787, nil},
		{"five places of millimeters", "to the nearest", mm, text("0.00001"), 0, nil},
		{"many places of millimeters", "half a step goes away from zero, a little less does not", mm, text("0.0012699999999999999999999"), 0, nil},
		{"half a step of millimeters", "away from zero", mm, text("0.00127"), 1, nil},
		{"a little more than a step and a half below zero", "to the nearest", mm, text("-0.003810000000000000000000001"), -2, nil},
		{"square centimeters", "6.4516 to the square inch", sqcm, text("80"), 124_000, nil},
		{"kilograms", "0.45359237 to the pound", kg, text("300"), 6_613_868, nil},
		{"most kilograms", "214748.3645 lb is held", kg, text("97408.2195"), 2_147_483_643, nil},
		{"too many kilograms", "more than 214748.3646 lb", kg, text("97408.2200"), 0, refused("weight", "97408.22", smallNumbers)},
		{"too many kilograms below zero", "less than -214748.3645 lb", kg, text("-97408.2200"), 0, refused("weight", "-97408.22", smallNumbers)},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			got, err := tt.from(tt.d)
			if got != tt.want {
				t.Errorf("%v gives %d, want %d: %s", tt.d, got, tt.want, tt.reason)
			}
			if tt.err != nil {
				faulttest.Parse(t, tt.reason, err, *tt.err)
			} else if err != nil {
				t.Errorf("%v: %v", tt.d, err)
			}
		})
	}
}

// TestToDecimal holds the exact decimals that come out of every unit.
func TestToDecimal(t *testing.T) {
	tests := []struct {
		name string
		got  decimal.Decimal
		want string
	}{
		{"inches", grade.Inches(0.6001).Inches(), "0.6001"},
		{"inches below zero", grade.Inches(-0.1).Inches(), "-0.1"},
		{"one inch in millimeters", grade.Inches(1).Millimeters(), "25.4"},
		{"a ten-thousandth in millimeters", grade.ThicknessUnits(1).Millimeters(), "0.00254"},
		{"square inches", grade.SquareInches(11.9).SquareInches(), "11.9"},
		{"one square inch in square centimeters", grade.SquareInches(1).SquareCentimeters(), "6.4516"},
		{"a ten-thousandth in square centimeters", grade.AreaUnits(1).SquareCentimeters(), "0.00064516"},
		{"percent", grade.Percent(2.5).Percent(), "2.5"},
		{"pounds", grade.Pounds(842.0001).Pounds(), "842.0001"},
		{"one pound in kilograms", grade.Pounds(1).Kilograms(), "0.45359237"},
		{"a ten-thousandth in kilograms", grade.WeightUnits(1).Kilograms(), "0.000045359237"},
		{"NaN inches", grade.Inches(math.NaN()).Inches(), "0"},
		{"infinite millimeters", grade.Inches(math.Inf(1)).Millimeters(), "0"},
		{"infinite square inches", grade.SquareInches(math.Inf(-1)).SquareInches(), "0"},
		{"NaN square centimeters", grade.SquareInches(math.NaN()).SquareCentimeters(), "0"},
		{"NaN percent", grade.Percent(math.NaN()).Percent(), "0"},
		{"NaN pounds", grade.Pounds(math.NaN()).Pounds(), "0"},
		{"infinite kilograms", grade.Pounds(math.Inf(1)).Kilograms(), "0"},
		{"greatest", grade.ThicknessUnits(2147483646).Inches(), "214748.3646"},
		{"least", grade.ThicknessUnits(-2147483645).Inches(), "-214748.3645"},
	}
	for _, tt := range tests {
		if !tt.got.Equal(decimal.RequireFromString(tt.want)) {
			t.Errorf("%s: %v, want %s", tt.name, tt.got, tt.want)
		}
	}
}

// TestMeasureText holds the text of every kind of value, also of those that stand
// for a number that does not fit, and the error that refuses to write them.
func TestMeasureText(t *testing.T) {
	type value interface {
		fmt.Stringer
		IsValid() bool
		AppendText([]byte) ([]byte, error)
	}
	tests := []struct {
		v     value
		valid bool
		text  string
		field string
	}{
		{grade.Inches(0.6), true, "0.6 in", ""},
		{grade.Inches(0), true, "0 in", ""},
		{grade.Inches(-0.1), true, "-0.1 in", ""},
		{grade.ThicknessUnits(2147483646), true, "214748.3646 in", ""},
		{grade.ThicknessUnits(-2147483645), true, "-214748.3645 in", ""},
		{grade.Inches(math.NaN()), false, "not a number", "thickness"},
		{grade.ThicknessUnits(math.MaxInt64), false, "over 214748 in", "thickness"},
		{grade.ThicknessUnits(math.MinInt64), false, "under -214748 in", "thickness"},
		{grade.SquareInches(12.4), true, "12.4 sq in", ""},
		{grade.AreaUnits(math.MaxInt64), false, "over 214748 sq in", "area"},
		{grade.SquareInches(math.NaN()), false, "not a number", "area"},
		{grade.Percent(2.5), true, "2.5%", ""},
		{grade.ShareUnits(math.MinInt64), false, "under -214748 %", "share"},
		{grade.Percent(math.NaN()), false, "not a number", "share"},
		{grade.Pounds(842), true, "842 lb", ""},
		{grade.WeightUnits(math.MaxInt64), false, "over 214748 lb", "weight"},
		{grade.Pounds(math.NaN()), false, "not a number", "weight"},
	}
	allowed := map[string]string{"thickness": thickness.allowed, "area": area.allowed, "share": share.allowed, "weight": weight.allowed}
	for _, tt := range tests {
		if tt.v.IsValid() != tt.valid || tt.v.String() != tt.text {
			t.Errorf("%T: valid %v, text %q; want %q", tt.v, tt.v.IsValid(), tt.v, tt.text)
		}
		b, err := tt.v.AppendText([]byte("kept "))
		if tt.valid {
			if string(b) != "kept "+tt.text || err != nil {
				t.Errorf("AppendText: %q, %v; want %q", b, err, tt.text)
			}
			continue
		}
		if string(b) != "kept " {
			t.Errorf("AppendText of %v wrote %q", tt.v, b)
		}
		faulttest.Field(t, tt.text, err, grade.FieldError{Field: tt.field, Value: tt.text, Allowed: allowed[tt.field], Err: grade.ErrRange})
	}
}
