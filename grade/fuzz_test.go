package grade_test

import (
	"errors"
	"math/big"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"example.com/ribface/grade"
	"example.com/ribface/internal/testkit/roundtrip"
	"pgregory.net/rapid"
)

// slowUnits are the units of the four measurements in small letters, with what one of
// them is in the customary unit.
var slowUnits = map[string]map[string]string{
	"thickness": {"": "1", "in": "1", "inch": "1", "inches": "1", `"`: "1", "mm": "5/127", "cm": "50/127"},
	"area": {"": "1", "sq in": "1", "sq. in.": "1", "in2": "1", "in^2": "1", "in²": "1", "square inches": "1",
		"sq cm": "2500/16129", "cm2": "2500/16129", "cm^2": "2500/16129", "cm²": "2500/16129"},
	"share":  {"": "1", "%": "1", "pct": "1", "percent": "1"},
	"weight": {"": "1", "lb": "1", "lbs": "1", "lb.": "1", "lbs.": "1", "pounds": "1", "kg": "100000000/45359237"},
}

var slowForm = regexp.MustCompile(`^([+-]?(?:([0-9]+)\.?[0-9]*|\.[0-9]+)(?:[eE](?:[+-]?[0-9]{1,2}|[0-9]{3}))?)[\t-\r \x{85}\p{Z}]*([^0-9.].*)?$`)

// readSlow reads a measurement with a regular expression and big.Rat, and says
// only whether it is read and as what.
func readSlow(kind, s string) (int32, bool) {
	m := slowForm.FindStringSubmatch(strings.TrimSpace(s))
	if m == nil {
		return 0, false
	}
	ratio, ok := slowUnits[kind][strings.ToLower(m[3])]
	_, exponent, _ := strings.Cut(strings.ToLower(m[1]), "e")
	if e, _ := strconv.Atoi(exponent); !ok || len(m[1]) > 32 || len(m[2]) > 10 || e > 99 {
		return 0, false
	}
	v, _ := new(big.Rat).SetString(m[1])
	r, _ := new(big.Rat).SetString(ratio)
	v.Mul(v, r).Mul(v, big.NewRat(10_000, 1))
	if ratio == "1" && !v.IsInt() {
		return 0, false
	}
	// To the nearest, halves away from zero.
	half := big.NewRat(1, 2)
	if v.Sign() < 0 {
		half.Neg(half)
	}
	v.Add(v, half)
	n := new(big.Int).Quo(v.Num(), v.Denom())
	if !n.IsInt64() || n.Int64() > 2_147_483_646 || n.Int64() < -2_147_483_645 {
		return 0, false
	}
	return int32(n.Int64()), true
}

// compareMeasures reads the text as each of the four kinds in both ways.
func compareMeasures(s string) error {
	for _, m := range []measurement{thickness, area, share, weight} {
		got, err := m.parse(s)
		want, ok := readSlow(m.kind, s)
		if got != want || (err == nil) != ok {
			return errors.Join(errors.New(m.name+" of "+s+" is not what the slow reader reads"), err)
		}
	}
	return nil
}

// FuzzMeasures compares the four measurement parsers with the slow reader.
func FuzzMeasures(f *testing.F) {
	for _, s := range []string{"0.6 in", "11mm", "1.1 cm", "12.4 sq in", "80sq cm", "2.5%", "842 lb", "300 kg", "-0.1", "1e3", "", " ", "in", "5.in", "0.00001", "214748.3647", "9999999999 kg", "0.6  in", "4.5E-01 IN", "+.5", "1e9 mm", "1e-9 kg", "12.4 in2", "80cm²", `.6"`, "842 Lbs.", "2.5 Pct", "1e005", "0x1", "1_0", "\u00a00.6"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		if err := compareMeasures(s); err != nil {
			t.Error(err)
		}
	})
}

// drawMeasureText draws text that is a measurement or nearly one.
func drawMeasureText(t *rapid.T) string {
	return rapid.StringMatching(` ?[+-]?[0-9]{0,11}(\.[0-9]{0,9})?([eE][+-]?[0-9]{0,3})?( {0,2})(in|IN|inches|"|mm|cm|sq in|sq. in.|in2|sq cm|cm2|%|pct|lb|Lbs|lb.|kg|g|)`).Draw(t, "text")
}

// TestMeasuresAgainstSlow compares the four measurement parsers with the slow
// reader over text that is a measurement or nearly one.
func TestMeasuresAgainstSlow(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		if err := compareMeasures(drawMeasureText(t)); err != nil {
			t.Fatal(err)
		}
	})
}

// FuzzYieldProperties lets the fuzzer choose the measures of propYield and
// propLinear.
func FuzzYieldProperties(f *testing.F) {
	f.Fuzz(rapid.MakeFuzz(func(t *rapid.T) {
		propYield(t)
		propLinear(t)
	}))
}

// FuzzAssess holds that no evidence at all makes an assessment fail in another
// way than by an error that names a field, and that what is assessed explains
// itself.
func FuzzAssess(f *testing.F) {
	f.Fuzz(rapid.MakeFuzz(propAssess))
}

// TestAssessAnything draws evidence for propAssess.
func TestAssessAnything(t *testing.T) { rapid.Check(t, propAssess) }

func propAssess(t *rapid.T) {
	c, e := anyCarcass(t), anyEdition(t)
	if rapid.Bool().Draw(t, "wild") {
		c.Sex = grade.Sex(rapid.Uint8().Draw(t, "any sex"))
		c.Marbling = grade.Marbling(rapid.Int16().Draw(t, "any marbling"))
		c.Lean.Firmness = grade.Firmness(rapid.Uint8().Draw(t, "any firmness"))
		c.Lean.Dark = grade.DarkCut(rapid.Uint8().Draw(t, "any dark"))
		c.Measures.Fat = grade.ThicknessUnits(int64(rapid.Int32().Draw(t, "any fat")))
		c.Measures.Weight = grade.WeightUnits(int64(rapid.Int32().Draw(t, "any weight")))
		c.FatAdjust = grade.ThicknessUnits(int64(rapid.Int32().Draw(t, "any adjustment")))
		e = grade.Edition(rapid.Uint8().Draw(t, "any edition"))
	}
	a, err := e.Assess(c)
	if err != nil {
		var fe *grade.FieldError
		if a != (grade.Assessment{}) || !errors.As(err, &fe) || fe.Field == "" || fe.Allowed == "" || err.Error() == "" {
			t.Fatalf("%+v: %+v, %v", c, a, err)
		}
		return
	}
	if !a.Quality.IsValid() || !a.Maturity.IsValid() || a.Carcass != c || a.Yield.Grade() < 1 || a.Yield.Grade() > 5 {
		t.Fatalf("%+v: %+v", c, a)
	}
	if q, err := e.Quality(c); err != nil || q != a.Quality {
		t.Fatalf("%+v: Quality gives %v, %v, Assess %v", c, q, err, a.Quality)
	}
	if m, err := (grade.Rules{Edition: e}).Overall(c.Maturity); err != nil || m != a.Maturity {
		t.Fatalf("%+v: Maturity gives %v, %v, Assess %v", c, m, err, a.Maturity)
	}
	if len(a.Steps()) < 10 {
		t.Fatalf("%+v: %d steps", c, len(a.Steps()))
	}
}

func FuzzThickness(f *testing.F) {
	roundtrip.Fuzz(f, plain(grade.ParseThickness), grade.Inches(1), "0.6 in", "11mm", `"1.1 cm"`, "-0.1", "0.6", "214748.3647")
}

func FuzzArea(f *testing.F) {
	roundtrip.Fuzz(f, plain(grade.ParseArea), grade.SquareInches(1), "12.4 sq in", "80 sq cm", `"12.4"`, "12.4")
}

func FuzzShare(f *testing.F) {
	roundtrip.Fuzz(f, plain(grade.ParseShare), grade.Percent(1), "2.5%", "2.5 %", `"2.5%"`, "2.5")
}

func FuzzWeight(f *testing.F) {
	roundtrip.Fuzz(f, plain(grade.ParseWeight), grade.Pounds(1), "842 lb", "300 kg", `"842 lb"`, "842")
}

func FuzzYield(f *testing.F) {
	roundtrip.Fuzz(f, plain(grade.ParseYield), grade.Grades(1), "2.952", "-2.38", `"3"`, "0.000000001", "9999999999.99999999")
}

func FuzzShortcutYield(f *testing.F) {
	roundtrip.Fuzz(f, plain(grade.ParseShortcutYield), grade.ShortcutGrades(2.16), "2.16", "-0.5", `"3"`, "9999999999.99999999")
}

func FuzzMarbling(f *testing.F) {
	roundtrip.Fuzz(f, grade.ParseMarbling, grade.Small.At(40), "Sm40", "Slightly Abundant 40", "MdAb10", "Sm100", "Sm101", "Xx40")
}

func FuzzQuality(f *testing.F) {
	roundtrip.Fuzz(f, grade.ParseQuality, grade.Choice.Part(grade.Low), "Low Choice", "Choice-", "Good+", "No grade", "Quality(?)")
}

func FuzzDegree(f *testing.F) {
	roundtrip.Fuzz(f, grade.ParseDegree, grade.Small, "Small", "Slightly Abundant")
}

func FuzzGrade(f *testing.F) {
	roundtrip.Fuzz(f, grade.ParseGrade, grade.Choice, "Prime", "No grade")
}

func FuzzTier(f *testing.F) { roundtrip.Fuzz(f, grade.ParseTier, grade.TopChoice, "top choice") }

func FuzzEdition(f *testing.F) {
	roundtrip.Fuzz(f, grade.ParseEdition, grade.Edition1987, "1975", "2017", "1976")
}

func FuzzSex(f *testing.F) { roundtrip.Fuzz(f, grade.ParseSex, grade.Cow, "steer", "bull") }

func FuzzFirmness(f *testing.F) {
	roundtrip.Fuzz(f, grade.ParseFirmness, grade.Soft, "very soft", "firm")
}

func FuzzDarkCut(f *testing.F) {
	roundtrip.Fuzz(f, grade.ParseDarkCut, grade.DarkFull, "none", "one third")
}
