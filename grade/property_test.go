package grade_test

import (
	"cmp"
	"math/big"
	"testing"

	"example.com/ribface/grade"
	"example.com/ribface/internal/testkit"
	"example.com/ribface/internal/testkit/roundtrip"
	"example.com/ribface/maturity"
	"github.com/shopspring/decimal"
	"pgregory.net/rapid"
)

func anyMeasures(t *rapid.T) grade.Measures {
	return grade.Measures{Fat: grade.ThicknessUnits(int64(rapid.IntRange(0, 30_000).Draw(t, "fat"))), Ribeye: grade.AreaUnits(int64(rapid.IntRange(10_000, 250_000).Draw(t, "ribeye"))), KPH: grade.ShareUnits(int64(rapid.IntRange(0, 100_000).Draw(t, "KPH"))), Weight: grade.WeightUnits(int64(rapid.IntRange(1_000_000, 18_000_000).Draw(t, "weight")))}
}

func anyCarcass(t *rapid.T) grade.Carcass {
	return grade.Carcass{
		Sex: grade.Sex(rapid.IntRange(1, 5).Draw(t, "sex")),
		Maturity: maturity.Evidence{
			Skeletal: maturity.Score(rapid.IntRange(100, 600).Draw(t, "skeletal")),
			Lean:     maturity.Score(rapid.IntRange(100, 600).Draw(t, "lean")),
			Teeth:    maturity.Teeth(rapid.IntRange(0, 9).Draw(t, "teeth")),
			Papers:   maturity.Months(rapid.SampledFrom([]int{0, 1, 29, 30, 600}).Draw(t, "papers")),
		},
		Marbling: grade.Marbling(rapid.IntRange(100, 1100).Draw(t, "marbling")),
		Lean: grade.Lean{
			Firmness:    grade.Firmness(rapid.IntRange(0, 7).Draw(t, "firmness")),
			Dark:        grade.DarkCut(rapid.IntRange(0, 3).Draw(t, "dark")),
			BelowCutter: rapid.Bool().Draw(t, "below"),
		},
		Measures: anyMeasures(t),
	}
}

func anyEdition(t *rapid.T) grade.Edition {
	return grade.Edition(rapid.IntRange(1, 5).Draw(t, "edition"))
}

// propYield holds the equation against big.Rat, that each measure moves the yield
// its own way by its own coefficient, and that more fat, KPH or weight never give
// the better grade and more ribeye never the worse.
func propYield(t *rapid.T) {
	m := anyMeasures(t)
	y, err := m.Yield()
	if err != nil {
		t.Fatal(err)
	}
	rat := func(c string, n int32) *big.Rat {
		r, _ := new(big.Rat).SetString(c)
		return r.Mul(r, big.NewRat(int64(n), 10_000))
	}
	exact, _ := new(big.Rat).SetString("2.50")
	for _, term := range []*big.Rat{rat("2.50", int32(m.Fat.Units())), rat("0.20", int32(m.KPH.Units())), rat("0.0038", int32(m.Weight.Units())), rat("-0.32", int32(m.Ribeye.Units()))} {
		exact.Add(exact, term)
	}
	if got, _ := new(big.Rat).SetString(y.String()); got.Cmp(exact) != 0 {
		t.Fatalf("%+v: %v, want %v", m, y, exact.FloatString(9))
	}
	for _, step := range []struct {
		name string
		more grade.Measures
		by   grade.Yield
	}{
		{"fat", grade.Measures{Fat: grade.ThicknessUnits(m.Fat.Units() + 1), Ribeye: m.Ribeye, KPH: m.KPH, Weight: m.Weight}, grade.Grades(0.00025)},
		{"ribeye", grade.Measures{Fat: m.Fat, Ribeye: grade.AreaUnits(m.Ribeye.Units() + 1), KPH: m.KPH, Weight: m.Weight}, grade.Grades(-0.000032)},
		{"KPH", grade.Measures{Fat: m.Fat, Ribeye: m.Ribeye, KPH: grade.ShareUnits(m.KPH.Units() + 1), Weight: m.Weight}, grade.Grades(0.00002)},
		{"weight", grade.Measures{Fat: m.Fat, Ribeye: m.Ribeye, KPH: m.KPH, Weight: grade.WeightUnits(m.Weight.Units() + 1)}, grade.YieldUnits(38)},
	} {
		z, err := step.more.Yield()
		if err != nil {
			if step.more.Check() == nil {
				t.Fatalf("%+v: %v, and Check finds nothing", step.more, err)
			}
			continue // beyond the limit
		}
		if grade.YieldUnits(z.Units()-y.Units()) != step.by || (z.Grade()-y.Grade())*int(step.by.Units()) < 0 {
			t.Fatalf("%+v: one step of %s moves %v to %v", m, step.name, y, z)
		}
	}
}

// TestYieldProperties draws measures for propYield; FuzzYield lets the fuzzer
// choose them.
func TestYieldProperties(t *testing.T) { rapid.Check(t, propYield) }

// propLinear holds that the yield is linear: for measures a and b and the ones
// half way, twice the half way yield is the sum of both.
func propLinear(t *rapid.T) {
	a, b := anyMeasures(t), anyMeasures(t)
	even := func(x, y int32) int32 { return (x + y) / 2 }
	b.Fat = grade.ThicknessUnits(b.Fat.Units() + (a.Fat.Units()+b.Fat.Units())%2)
	b.Ribeye = grade.AreaUnits(b.Ribeye.Units() + (a.Ribeye.Units()+b.Ribeye.Units())%2)
	b.KPH = grade.ShareUnits(b.KPH.Units() + (a.KPH.Units()+b.KPH.Units())%2)
	b.Weight = grade.WeightUnits(b.Weight.Units() + (a.Weight.Units()+b.Weight.Units())%2)
	if b.Check() != nil {
		t.Skip("moved over the limit")
	}
	mid := grade.Measures{Fat: grade.ThicknessUnits(int64(even(int32(a.Fat.Units()), int32(b.Fat.Units())))), Ribeye: grade.AreaUnits(int64(even(int32(a.Ribeye.Units()), int32(b.Ribeye.Units())))), KPH: grade.ShareUnits(int64(even(int32(a.KPH.Units()), int32(b.KPH.Units())))), Weight: grade.WeightUnits(int64(even(int32(a.Weight.Units()), int32(b.Weight.Units()))))}
	ya, _ := a.Yield()
	yb, _ := b.Yield()
	ym, err := mid.Yield()
	if err != nil || grade.YieldUnits(2*ym.Units()) != grade.YieldUnits(ya.Units()+yb.Units()) {
		t.Fatalf("%v and %v, half way %v, %v", ya, yb, ym, err)
	}
	ra, _ := a.RetailCuts()
	rb, _ := b.RetailCuts()
	rm, err := mid.RetailCuts()
	if err != nil || !rm.Add(rm).Equal(ra.Add(rb)) {
		t.Fatalf("retail cuts %v and %v, half way %v, %v", ra, rb, rm, err)
	}
	ta, _ := a.Terms()
	tb, _ := b.Terms()
	if d := ta.Sub(tb); d.Sum() != grade.YieldUnits(ya.Units()-yb.Units()) || d.Start != grade.Grades(0) {
		t.Fatalf("the difference %+v does not add up to %v", d, grade.YieldUnits(ya.Units()-yb.Units()))
	}
}

// TestYieldIsLinear draws measures for propLinear.
func TestYieldIsLinear(t *testing.T) { rapid.Check(t, propLinear) }

// TestMetricRoundTrip holds that a metric number with two decimals comes back the
// same from the nearest 0.0001 of the customary unit, rounded to two decimals,
// over the whole range of a carcass; a sample has one in seven.
func TestMetricRoundTrip(t *testing.T) {
	step := int64(7)
	if testkit.Exhaustive() {
		step = 1
	}
	back := func(name string, hundredths int64, got decimal.Decimal) {
		if want := decimal.New(hundredths, -2); !got.Round(2).Equal(want) {
			t.Errorf("%v %s come back as %v", want, name, got)
		}
	}
	for n := int64(-7620); n <= 7620; n += step { // 3 in are 76.2 mm
		v, err := grade.MillimetersDecimal(decimal.New(n, -2))
		if err != nil {
			t.Fatal(err)
		}
		back("mm", n, v.Millimeters())
		if f := grade.Millimeters(float64(n) / 100); f != v {
			t.Errorf("%d/100 mm is %v as a float and %v as a decimal", n, f, v)
		}
	}
	for n := int64(0); n <= 16_129; n += step { // 25 sq in are 161.29 sq cm
		v, err := grade.SquareCentimetersDecimal(decimal.New(n, -2))
		if err != nil {
			t.Fatal(err)
		}
		back("sq cm", n, v.SquareCentimeters())
		if f := grade.SquareCentimeters(float64(n) / 100); f != v {
			t.Errorf("%d/100 sq cm is %v as a float and %v as a decimal", n, f, v)
		}
	}
	for n := int64(0); n <= 81_647; n += step { // 1,800 lb are 816.47 kg
		v, err := grade.KilogramsDecimal(decimal.New(n, -2))
		if err != nil {
			t.Fatal(err)
		}
		back("kg", n, v.Kilograms())
		if f := grade.Kilograms(float64(n) / 100); f != v {
			t.Errorf("%d/100 kg is %v as a float and %v as a decimal", n, f, v)
		}
	}
}

// TestCustomaryRoundTrip holds for drawn numbers that every door into a type and
// every way out of it are the same number.
func TestCustomaryRoundTrip(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.Int32Range(-2_147_483_645, 2_147_483_646).Draw(t, "n")
		d := decimal.New(int64(n), -4)
		v := grade.ThicknessUnits(int64(n))
		if !v.Inches().Equal(d) {
			t.Fatalf("%v is %v inches", d, v.Inches())
		}
		if got := grade.Inches(d.InexactFloat64()); got != v {
			t.Fatalf("the float of %v is %v", d, got)
		}
		if got, err := grade.ParseThickness(d.String()); err != nil || got != v {
			t.Fatalf("the text of %v is %v, %v", d, got, err)
		}
		if got, err := grade.ParseThickness(v.Millimeters().String() + " mm"); err != nil || got != v {
			t.Fatalf("%v mm come back as %v, %v; want %v", v.Millimeters(), got, err, v)
		}
		y := grade.YieldUnits(rapid.Int64Range(-999_999_999_999_999_999, 999_999_999_999_999_999).Draw(t, "yield"))
		if got, err := grade.ParseYield(y.Decimal().String()); err != nil || got != y {
			t.Fatalf("%v comes back as %v, %v", y, got, err)
		}
		if err := roundtrip.Value[grade.Yield](y, plain(grade.ParseYield)); err != nil {
			t.Fatal(err)
		}
	})
}

// TestCompareIsTotal holds that the two Compare methods are total orders that
// agree with the integers, also for values that are not valid.
func TestCompareIsTotal(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		m := func(name string) grade.Marbling { return grade.Marbling(rapid.Int16().Draw(t, name)) }
		total(t, m("a"), m("b"), m("c"), grade.Marbling.Compare)
		q := func(name string) grade.Quality { return grade.Quality(rapid.Uint8().Draw(t, name)) }
		total(t, q("d"), q("e"), q("f"), grade.Quality.Compare)
	})
}

func total[T cmp.Ordered](t *rapid.T, a, b, c T, compare func(T, T) int) {
	if compare(a, b) != cmp.Compare(a, b) || compare(a, b) != -compare(b, a) || compare(a, a) != 0 || (compare(a, b) == 0) != (a == b) {
		t.Fatalf("%v and %v: %d, %d", a, b, compare(a, b), compare(b, a))
	}
	if compare(a, b) <= 0 && compare(b, c) <= 0 && compare(a, c) > 0 {
		t.Fatalf("%v, %v, %v do not chain", a, b, c)
	}
}

// TestEveryValue writes and reads back every value of every small type, and
// refuses to write every number around them that is none.
func TestEveryValue(t *testing.T) {
	for m := grade.Marbling(-32768); m < 32767; m++ {
		// A sample has all marblings and, of the numbers far from them, one in 31.
		if far := m < -300 || m > 1500; far && m%31 != 0 && !testkit.Exhaustive() {
			continue
		}
		check(t, m, m == 0 || m >= 100 && m <= 1100, grade.ParseMarbling)
	}
	for i := range 256 {
		enum(t, grade.Degree(i), 10, grade.Degree.IsValid, grade.ParseDegree)
		check(t, grade.MarblingScale(i), i <= 2, roundtrip.Read[grade.MarblingScale])
		enum(t, grade.Grade(i), 10, grade.Grade.IsValid, grade.ParseGrade)
		enum(t, grade.Tier(i), 6, grade.Tier.IsValid, grade.ParseTier)
		enum(t, grade.Edition(i), 5, grade.Edition.IsValid, grade.ParseEdition)
		enum(t, grade.Sex(i), 5, grade.Sex.IsValid, grade.ParseSex)
		enum(t, grade.Firmness(i), 7, grade.Firmness.IsValid, grade.ParseFirmness)
		enum(t, grade.DarkCut(i), 3, grade.DarkCut.IsValid, grade.ParseDarkCut)
		check(t, grade.Rounding(i), i <= 3, roundtrip.Read[grade.Rounding])
		check(t, grade.RetailTable(i), i <= 3, roundtrip.Read[grade.RetailTable])
		check(t, grade.Part(i), i <= 3, roundtrip.Read[grade.Part])
		q := grade.Quality(i)
		check(t, q, q == 0 || q.IsValid(), grade.ParseQuality)
	}
}

// enum checks a number of an enumeration with the named values 1 to last.
func enum[T interface {
	~uint8
	roundtrip.Text
}, P roundtrip.Pointer[T]](t *testing.T, v T, last int, valid func(T) bool, parse func(string) (T, error)) {
	t.Helper()
	if valid(v) != (v >= 1 && int(v) <= last) {
		t.Errorf("%T %d: valid is %v", v, uint8(v), valid(v))
	}
	check[T, P](t, v, int(v) <= last, parse)
}

func check[T roundtrip.Text, P roundtrip.Pointer[T]](t *testing.T, v T, ok bool, parse func(string) (T, error)) {
	t.Helper()
	if err := roundtrip.Check[T, P](v, ok, parse); err != nil {
		t.Error(err)
	}
}

// TestMeasureValues writes and reads back drawn values of the four measurement
// types and the two other exact numbers.
func TestMeasureValues(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.Int32().Draw(t, "n")
		held := n > tooSmall && n < tooLarge
		big := rapid.Int64Range(-999_999_999_999_999_999, 999_999_999_999_999_999).Draw(t, "big")
		for _, err := range []error{
			roundtrip.Check(grade.ThicknessUnits(int64(n)), held, plain(grade.ParseThickness)),
			roundtrip.Check(grade.AreaUnits(int64(n)), held, plain(grade.ParseArea)),
			roundtrip.Check(grade.ShareUnits(int64(n)), held, plain(grade.ParseShare)),
			roundtrip.Check(grade.WeightUnits(int64(n)), held, plain(grade.ParseWeight)),
			roundtrip.Check(grade.ShortcutYieldUnits(big), true, plain(grade.ParseShortcutYield)),
		} {
			if err != nil {
				t.Fatal(err)
			}
		}
	})
}
