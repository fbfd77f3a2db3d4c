package price_test

import (
	"encoding/json"
	"errors"
	"math"
	"strconv"
	"strings"
	"testing"

	"example.com/ribface/grade"
	"example.com/ribface/grade/price"
	"example.com/ribface/internal/refs"
	"example.com/ribface/internal/testkit/everytype"
	"example.com/ribface/internal/testkit/faulttest"
	"example.com/ribface/internal/testkit/roundtrip"
	"example.com/ribface/maturity"
	"example.com/ribface/maturity/cite"
	"github.com/google/go-cmp/cmp"
	"github.com/shopspring/decimal"
	"pgregory.net/rapid"
)

func dec(s string) decimal.Decimal { return decimal.RequireFromString(s) }

// assessed makes an assessment with the quality, yield and weight of a test; the
// maturity is A50.
func assessed(q grade.Quality, y grade.Yield, w grade.Weight) grade.Assessment {
	return grade.Assessment{Quality: q, Yield: y, Maturity: maturity.A.At(50), Carcass: grade.Carcass{Sex: grade.Steer, Measures: grade.Measures{Fat: grade.Inches(0), Weight: w, KPH: grade.Percent(0)}}}
}

func latest(t *testing.T, change func(*price.Offer)) price.Grid {
	t.Helper()
	terms := weekly(dec("300"))
	if change != nil {
		change(&terms)
	}
	g, err := price.New(terms)
	if err != nil {
		t.Fatal(err)
	}
	return g
}

// rows reads a file of references.
func rows(t *testing.T, name string) []refs.Row {
	t.Helper()
	return refs.Rows(t, "../../testdata/references", name)
}

// TestPublishedExamples computes every row of price-examples.csv.
func TestPublishedExamples(t *testing.T) {
	grid := latest(t, nil)
	weight := func(row refs.Row, column string) grade.Weight {
		w, err := grade.ParseWeight(row.Get(column))
		if err != nil {
			t.Fatalf("%v: %v", row, err)
		}
		return w
	}
	checked := map[string]int{}
	for _, row := range rows(t, "price-examples.csv") {
		name := "line " + strconv.Itoa(row.Line) + ", " + row.Get("subject")
		checked[row.Get("kind")]++
		var exact decimal.Decimal
		switch row.Get("kind") {
		case "live value", "carcass value":
			column := map[string]string{"live value": "live_lb", "carcass value": "hcw_lb"}[row.Get("kind")]
			v, err := price.PerHead(dec(row.Get("price_per_cwt")), weight(row, column))
			if err != nil {
				t.Errorf("%s: %v", name, err)
			}
			exact = v
			if got := v.StringFixed(2); got != row.Get("stated") {
				t.Errorf("%s: %s, stated %s", name, got, row.Get("stated"))
			}
		case "break-even dressing percent":
			live, carcass, _ := strings.Cut(row.Get("price_per_cwt"), ";")
			s, err := price.BreakEven(dec(live), dec(carcass), grade.HalfUp)
			if err != nil {
				t.Errorf("%s: %v", name, err)
			}
			exact = s.Percent()
			if row.Get("stated") == "over 63" && (row.Get("agrees") != "no" || s.Compare(grade.Percent(63)) > 0) {
				t.Errorf("%s: %s agrees with the source after all", name, s)
			}
		case "grid value":
			g, err := grade.ParseGrade(row.Get("quality"))
			if err != nil {
				t.Fatalf("%s: %v", name, err)
			}
			y, err := grade.ParseYield(row.Get("yield_grade"))
			if err != nil {
				t.Fatalf("%s: %v", name, err)
			}
			v, err := grid.Value(assessed(g.Part(grade.Low), y, weight(row, "hcw_lb")))
			if err != nil {
				t.Fatalf("%s: %v", name, err)
			}
			exact = v.PerHead()
			if !v.PerCwt().Equal(dec(row.Get("price_per_cwt"))) {
				t.Errorf("%s: %s per cwt, want %s", name, v.PerCwt(), row.Get("price_per_cwt"))
			}
			if c, err := v.Cents(grade.HalfUp); err != nil || !c.Equal(dec(row.Get("stated"))) {
				t.Errorf("%s: %s, %v, want %s", name, c, err, row.Get("stated"))
			}
		default:
			t.Errorf("%s: no check for %q", name, row.Get("kind"))
		}
		if want := dec(row.Get("computed")); !exact.Round(-want.Exponent()).Equal(want) {
			t.Errorf("%s: exactly %s, want %s", name, exact, row.Get("computed"))
		}
	}
	want := map[string]int{"live value": 1, "carcass value": 1, "break-even dressing percent": 2, "grid value": 5}
	if d := cmp.Diff(want, checked); d != "" {
		t.Errorf("rows checked (-want +got):\n%s", d)
	}
}

// TestEdges checks both sides of every edge of the report's grid under both
// owners.
func TestEdges(t *testing.T) {
	tests := []struct {
		name, reason string
		y            grade.Yield
		w            grade.Weight
		lower, upper string // price per cwt with EdgeLower and EdgeUpper for both
	}{
		{"foot of the yields", "an outer end belongs to its band", grade.Grades(1), grade.Pounds(700), "303.35", "303.35"},
		{"under 1", "a yield under 1 counts as 1", grade.Grades(-1), grade.Pounds(700), "303.35", "303.35"},
		{"under 2", "inside", grade.Grades(1.99999999), grade.Pounds(700), "303.35", "303.35"},
		{"2", "the edge", grade.Grades(2), grade.Pounds(700), "303.35", "301.77"},
		{"over 2", "inside", grade.Grades(2.00000001), grade.Pounds(700), "301.77", "301.77"},
		{"2.5", "the edge", grade.Grades(2.5), grade.Pounds(700), "301.77", "301.38"},
		{"over 2.5", "inside", grade.Grades(2.50000001), grade.Pounds(700), "301.38", "301.38"},
		{"3", "the edge", grade.Grades(3), grade.Pounds(700), "301.38", "300"},
		{"4", "the edge", grade.Grades(4), grade.Pounds(700), "300", "287.55"},
		{"over 4", "inside", grade.Grades(4.00000001), grade.Pounds(700), "287.55", "287.55"},
		{"5", "the edge, printed 5.0 and up", grade.Grades(5), grade.Pounds(700), "287.55", "282.18"},
		{"over 5", "no upper end", grade.Grades(9), grade.Pounds(700), "282.18", "282.18"},
		{"400 lb", "an outer end belongs to its band", grade.Grades(3.5), grade.Pounds(400), "270.71", "270.71"},
		{"500 lb", "the edge", grade.Grades(3.5), grade.Pounds(500), "270.71", "277.36"},
		{"550 lb", "the edge", grade.Grades(3.5), grade.Pounds(550), "277.36", "288.43"},
		{"600 lb", "the edge", grade.Grades(3.5), grade.Pounds(600), "288.43", "300"},
		{"900 lb", "the edge that stands in two printed rows", grade.Grades(3.5), grade.Pounds(900), "300", "298.93"},
		{"under 900 lb", "inside", grade.Grades(3.5), grade.Pounds(899.9999), "300", "300"},
		{"over 900 lb", "inside", grade.Grades(3.5), grade.Pounds(900.0001), "298.93", "298.93"},
		{"1000 lb", "the edge", grade.Grades(3.5), grade.Pounds(1000), "298.93", "295"},
		{"1050 lb", "the edge, printed over 1,050", grade.Grades(3.5), grade.Pounds(1050), "295", "284.55"},
		{"over 1050 lb", "no upper end", grade.Grades(3.5), grade.Pounds(1800), "284.55", "284.55"},
	}
	lower := latest(t, func(p *price.Offer) { p.YieldEdge, p.WeightEdge = price.EdgeLower, price.EdgeLower })
	upper := latest(t, func(p *price.Offer) { p.YieldEdge, p.WeightEdge = price.EdgeUpper, price.EdgeUpper })
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			a := assessed(grade.Choice.Part(grade.Low), tt.y, tt.w)
			for want, g := range map[*string]price.Grid{&tt.lower: lower, &tt.upper: upper} {
				v, err := g.Value(a)
				if err != nil || !v.PerCwt().Equal(dec(*want)) {
					t.Errorf("%s, %s: %s, %v, want %s", tt.reason, g.Offer().WeightEdge, v.PerCwt(), err, *want)
				}
			}
		})
	}
}

func TestClosedBands(t *testing.T) {
	// A grid whose last bands have an upper end, which belongs to them.
	g, err := price.New(price.Offer{
		Base:      dec("200"),
		Yield:     []price.Band[grade.Yield]{{From: grade.Grades(2), To: grade.Grades(4), Amount: dec("1")}},
		YieldEdge: price.EdgeUpper,
		Weight: []price.Band[grade.Weight]{
			{From: grade.Pounds(700), To: grade.Pounds(900), Amount: dec("-0.0001")},
			{From: grade.Pounds(500), To: grade.Pounds(700), Amount: dec("3")},
		},
		WeightEdge: price.EdgeUpper,
	})
	if err != nil {
		t.Fatal(err)
	}
	tests := []struct {
		y    grade.Yield
		w    grade.Weight
		want string
	}{
		{grade.Grades(2), grade.Pounds(500), "204"},
		{grade.Grades(4), grade.Pounds(700), "200.9999"},
		{grade.Grades(4), grade.Pounds(900), "200.9999"},
		{grade.Grades(1.99999999), grade.Pounds(700), "yield: 1.99999999: no price; allowed: 2 to 4"},
		{grade.Grades(4.00000001), grade.Pounds(700), "yield: 4.00000001: no price; allowed: 2 to 4"},
		{grade.Grades(3), grade.Pounds(499.9999), "weight: 499.9999 lb: no price; allowed: 500 lb to 900 lb"},
		{grade.Grades(3), grade.Pounds(900.0001), "weight: 900.0001 lb: no price; allowed: 500 lb to 900 lb"},
	}
	for _, tt := range tests {
		// The grid has no tiers: every tier is bought at the base.
		v, err := g.Value(assessed(grade.Canner.Part(grade.Whole), tt.y, tt.w))
		got := v.PerCwt().String()
		if err != nil {
			got = err.Error()
			if !errors.Is(err, price.ErrNoPrice) {
				t.Errorf("%v is not ErrNoPrice", err)
			}
			if v != (price.Value{}) {
				t.Error("an error with a value")
			}
		}
		if got != tt.want {
			t.Errorf("%s, %s: %s, want %s", tt.y, tt.w, got, tt.want)
		}
	}
}

func TestTiers(t *testing.T) {
	g := latest(t, nil)
	for q, want := range map[grade.Quality]string{
		grade.Prime.Part(grade.Low):      "317.54",
		grade.Choice.Part(grade.High):    "300",
		grade.Choice.Part(grade.Low):     "300",
		grade.Select.Part(grade.High):    "271.75",
		grade.Standard.Part(grade.Whole): "259.07",
	} {
		v, err := g.Value(assessed(q, grade.Grades(3.5), grade.Pounds(700)))
		if err != nil || !v.PerCwt().Equal(dec(want)) {
			t.Errorf("%s: %s, %v, want %s", q, v.PerCwt(), err, want)
		}
	}
	_, err := g.Value(assessed(grade.Utility.Part(grade.Whole), grade.Grades(3.5), grade.Pounds(700)))
	const want = "tier: below standard: no price; allowed: prime, top choice, low choice, select, standard"
	if err == nil || err.Error() != want || !errors.Is(err, price.ErrNoPrice) {
		t.Errorf("%v, want %s", err, want)
	}
}

func TestEveryTierIsNamed(t *testing.T) {
	g, err := price.New(price.Offer{Base: dec("1"), Tiers: []price.TierAmount{{Tier: grade.BelowStandard}, {Tier: grade.StandardTier}}})
	if err != nil {
		t.Fatal(err)
	}
	_, err = g.Value(assessed(grade.Prime.Part(grade.Low), grade.Grades(1), grade.Pounds(1)))
	if want := "tier: prime: no price; allowed: standard, below standard"; err == nil || err.Error() != want {
		t.Errorf("%v, want %s", err, want)
	}
	if v, err := g.Value(assessed(grade.NoGrade.Part(grade.Whole), grade.Grades(1), grade.Pounds(1))); err != nil || !v.PerCwt().Equal(dec("1")) {
		t.Errorf("%s, %v", v.PerCwt(), err)
	}
}

// Amounts have no needless zeros, whatever the decimal library does with them.
func TestAmountsAreShort(t *testing.T) {
	for amount, want := range map[string]struct{ coefficient, exponent int64 }{
		"300": {300, 0}, "300.10": {3001, -1}, "300.0001": {3_000_001, -4},
	} {
		g, err := price.New(price.Offer{Base: dec(amount)})
		if err != nil {
			t.Fatal(err)
		}
		v, err := g.Value(assessed(grade.Prime.Part(grade.Low), grade.Grades(1), grade.Pounds(100)))
		if err != nil {
			t.Fatal(err)
		}
		for _, d := range []decimal.Decimal{v.PerCwt(), v.PerHead()} {
			if d.CoefficientInt64() != want.coefficient || int64(d.Exponent()) != want.exponent {
				t.Errorf("%s is %d times 10 to the %d, want %d and %d", amount, d.CoefficientInt64(), d.Exponent(), want.coefficient, want.exponent)
			}
		}
	}
}

func TestAttributes(t *testing.T) {
	a := assessed(grade.Select.Part(grade.Low), grade.Grades(3.5), grade.Pounds(700))
	with := func(f func(*grade.Assessment)) grade.Assessment {
		b := a
		f(&b)
		return b
	}
	tests := []struct {
		name, reason string
		a            grade.Assessment
		given        []price.Attribute
		read         []price.Attribute
		want         string
	}{
		{"none", "the report's Select", a, nil, nil, "271.75"},
		{"dark", "a dark cutter in any degree; the discount is added", with(func(a *grade.Assessment) { a.Carcass.Lean.Dark = grade.DarkThird }), nil, []price.Attribute{price.DarkCutter}, "233"},
		{"dark twice", "named and read, counted once", with(func(a *grade.Assessment) { a.Carcass.Lean.Dark = grade.DarkFull }), []price.Attribute{price.DarkCutter, price.DarkCutter}, []price.Attribute{price.DarkCutter}, "233"},
		{"bullock", "by sex class", with(func(a *grade.Assessment) { a.Carcass.Sex = grade.Bullock }), nil, []price.Attribute{price.BullockOrStag}, "230.25"},
		{"bull", "no bullock", with(func(a *grade.Assessment) { a.Carcass.Sex = grade.Bull }), nil, nil, "271.75"},
		{"stag", "named by the caller", a, []price.Attribute{price.BullockOrStag}, nil, "230.25"},
		{"B99", "the last before hardbone", with(func(a *grade.Assessment) { a.Maturity = maturity.B.At(99) }), nil, nil, "271.75"},
		{"C00", "hardbone in place of the tier", with(func(a *grade.Assessment) { a.Maturity = maturity.C.At(0) }), nil, []price.Attribute{price.Hardbone}, "257.8"},
		{"hardbone below Standard", "the tier needs no price then", with(func(a *grade.Assessment) {
			a.Maturity, a.Quality = maturity.D.At(0), grade.Commercial.Part(grade.Whole)
		}), nil, []price.Attribute{price.Hardbone}, "257.8"},
		{"two incisors", "under 30 months", with(func(a *grade.Assessment) { a.Carcass.Maturity.Teeth = maturity.Incisors(2) }), nil, nil, "271.75"},
		{"three incisors", "over 30 months", with(func(a *grade.Assessment) { a.Carcass.Maturity.Teeth = maturity.Incisors(3) }), nil, []price.Attribute{price.Over30Months}, "257.46"},
		{"29 months", "under 30 months by papers", with(func(a *grade.Assessment) { a.Carcass.Maturity.Papers = 29 }), nil, nil, "271.75"},
		{"30 months", "not under 30 months by papers", with(func(a *grade.Assessment) { a.Carcass.Maturity.Papers = 30 }), nil, []price.Attribute{price.Over30Months}, "257.46"},
		{"teeth against papers", "either is enough for under 30 months", with(func(a *grade.Assessment) {
			a.Carcass.Maturity.Papers, a.Carcass.Maturity.Teeth = 29, maturity.Incisors(4)
		}), nil, nil, "271.75"},
		{"program", "named by the caller", a, []price.Attribute{price.AllNatural, price.NonHormoneTreated, price.DairyType}, nil, "323.98"},
	}
	g := latest(t, nil)
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			if d := cmp.Diff(tt.read, price.AttributesOf(tt.a)); d != "" {
				t.Errorf("%s: attributes (-want +got):\n%s", tt.reason, d)
			}
			v, err := g.Value(tt.a, tt.given...)
			if err != nil || !v.PerCwt().Equal(dec(tt.want)) {
				t.Errorf("%s: %s, %v, want %s", tt.reason, v.PerCwt(), err, tt.want)
			}
		})
	}
}

func TestAttributesWithoutPrice(t *testing.T) {
	dark := assessed(grade.Choice.Part(grade.Low), grade.Grades(3), grade.Pounds(700))
	dark.Carcass.Lean.Dark = grade.DarkFull
	g, err := price.New(price.Offer{Base: dec("200")})
	if err != nil {
		t.Fatal(err)
	}
	// One that is read off the assessment adds nothing, and the steps say so.
	v, err := g.Value(dark)
	if err != nil || !v.PerCwt().Equal(dec("200")) {
		t.Errorf("%s, %v", v.PerCwt(), err)
	}
	if d := cmp.Diff("the lean cuts dark; the grid has no price for it", v.Steps()[1].Rule); d != "" {
		t.Errorf("(-want +got):\n%s", d)
	}
	// One that the caller names is an error.
	_, err = g.Value(dark, price.DarkCutter)
	if want := "attribute: dark cutter: no price; allowed: no attribute"; err == nil || err.Error() != want || !errors.Is(err, price.ErrNoPrice) {
		t.Errorf("%v, want %s", err, want)
	}
	g = latest(t, func(p *price.Offer) { p.Attributes = p.Attributes[:2] })
	_, err = g.Value(dark, price.DarkCutter)
	if want := "attribute: dark cutter: no price; allowed: all natural, non-hormone-treated"; err == nil || err.Error() != want {
		t.Errorf("%v, want %s", err, want)
	}
	_, err = g.Value(dark, 9)
	if want := "attribute: attribute(9): unknown; allowed: dairy-type, bullock or stag, hardbone, dark cutter, over 30 months, all natural, non-hormone-treated"; err == nil || err.Error() != want {
		t.Errorf("%v, want %s", err, want)
	}
}

func TestValueErrors(t *testing.T) {
	good := assessed(grade.Choice.Part(grade.Low), grade.Grades(3), grade.Pounds(700))
	tests := []struct {
		name, reason string
		grid         price.Grid
		a            grade.Assessment
		want         string
	}{
		{"zero grid", "not made by New", price.Grid{}, good, "grid: missing; allowed: one made by New"},
		{"zero assessment", "not made by package grade", latest(t, nil), grade.Assessment{}, "assessment: missing; allowed: one with a quality grade and a yield"},
		{"no weight", "nothing to pay for", latest(t, nil), assessed(good.Quality, grade.Grades(3), grade.Weight{}), "weight: missing; allowed: over 0 lb"},
		{"weight not a number", "nothing to pay for", latest(t, nil), assessed(good.Quality, grade.Grades(3), grade.Pounds(math.Inf(1))), "weight: over 214748 lb: out of range; allowed: over 0 lb"},
		{"light", "under the lowest band", latest(t, nil), assessed(good.Quality, grade.Grades(3), grade.Pounds(399.9999)), "weight: 399.9999 lb: no price; allowed: 400 lb and over"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			v, err := tt.grid.Value(tt.a)
			if err == nil || err.Error() != tt.want || v != (price.Value{}) {
				t.Errorf("%s: %v, %v, want %s", tt.reason, v, err, tt.want)
			}
			var fe *grade.FieldError
			if !errors.As(err, &fe) {
				t.Errorf("%T is no FieldError", err)
			}
		})
	}
}

func TestNewErrors(t *testing.T) {
	const allowed = "amounts under 10,000 with at most 4 places"
	band := func(from, to grade.Weight) price.Band[grade.Weight] {
		return price.Band[grade.Weight]{From: from, To: to}
	}
	weights := func(bands ...price.Band[grade.Weight]) price.Offer {
		return price.Offer{Base: dec("300"), Weight: bands, WeightEdge: price.EdgeLower}
	}
	yields := func(bands ...price.Band[grade.Yield]) price.Offer {
		return price.Offer{Base: dec("300"), Yield: bands, YieldEdge: price.EdgeLower}
	}
	tests := []struct {
		name, reason string
		terms        price.Offer
		want         string
		is           error
	}{
		{"zero", "no base", price.Offer{}, "base: 0.00: out of range; allowed: over 0.00", grade.ErrRange},
		{"negative base", "no price", price.Offer{Base: dec("-1")}, "base: -1.00: out of range; allowed: over 0.00", grade.ErrRange},
		{"fine base", "5 places", price.Offer{Base: dec("1.00001")}, "base: 1.00001: too many places; allowed: " + allowed, grade.ErrPlaces},
		{"large base", "10,000 dollars", price.Offer{Base: dec("10000")}, "base: 10000.00: out of range; allowed: " + allowed, grade.ErrRange},
		{"huge base", "an exponent that must not be scaled", price.Offer{Base: decimal.New(1, 11)}, "base: a decimal with exponent far out of range: out of range; allowed: " + allowed, grade.ErrRange},
		{"tiny base", "an exponent that must not be scaled", price.Offer{Base: decimal.New(1, -100)}, "base: a decimal with exponent far out of range: out of range; allowed: " + allowed, grade.ErrRange},
		{"long base", "more digits than anyone means", price.Offer{Base: dec("1." + strings.Repeat("0", 60)).Add(dec(strings.Repeat("1", 21)))}, "base: " + strings.Repeat("1", 20) + "2.00: out of range; allowed: " + allowed, grade.ErrRange},
		{"greatest exponent", "scaled, and too large", price.Offer{Base: decimal.New(1, 9)}, "base: 1000000000.00: out of range; allowed: " + allowed, grade.ErrRange},
		{"least exponent", "scaled, and too fine", price.Offer{Base: decimal.New(1, -64)}, "base: 0." + strings.Repeat("0", 63) + "1: too many places; allowed: " + allowed, grade.ErrPlaces},
		{"80 digits", "scaled, and too large", price.Offer{Base: dec(strings.Repeat("7", 80))}, "base: " + strings.Repeat("7", 80) + ".00: out of range; allowed: " + allowed, grade.ErrRange},
		{"122 digits", "not scaled", price.Offer{Base: dec(strings.Repeat("7", 122))}, "base: a decimal with exponent far out of range: out of range; allowed: " + allowed, grade.ErrRange},
		{"tier", "no such tier", price.Offer{Base: dec("1"), Tiers: []price.TierAmount{{}}}, "tiers: unset: unknown; allowed: below standard to prime", grade.ErrUnknown},
		{"tier twice", "two amounts", price.Offer{Base: dec("1"), Tiers: []price.TierAmount{{grade.PrimeTier, dec("1")}, {grade.PrimeTier, dec("2.5")}}}, "tier prime: 2.50: repeated; allowed: one amount", grade.ErrRepeated},
		{"tier amount", "under -10,000", price.Offer{Base: dec("1"), Tiers: []price.TierAmount{{grade.PrimeTier, dec("-10000")}}}, "tier prime: -10000.00: out of range; allowed: " + allowed, grade.ErrRange},
		{"attribute", "no such attribute", price.Offer{Base: dec("1"), Attributes: []price.AttributeAmount{{}}}, "attributes: unset: unknown; allowed: dairy-type, bullock or stag, hardbone, dark cutter, over 30 months, all natural, non-hormone-treated", grade.ErrUnknown},
		{"attribute twice", "two amounts", price.Offer{Base: dec("1"), Attributes: []price.AttributeAmount{{Attribute: price.DairyType}, {Attribute: price.DairyType}}}, "attribute dairy-type: 0.00: repeated; allowed: one amount", grade.ErrRepeated},
		{"attribute amount", "5 places", price.Offer{Base: dec("1"), Attributes: []price.AttributeAmount{{Attribute: price.DairyType, Amount: dec("0.00001")}}}, "attribute dairy-type: 0.00001: too many places; allowed: " + allowed, grade.ErrPlaces},
		{"edge", "nobody owns the edges", price.Offer{Base: dec("1"), Weight: []price.Band[grade.Weight]{band(grade.Pounds(0), grade.Weight{})}}, "weight band edge: owner: missing; allowed: lower band, upper band", grade.ErrMissing},
		{"edge unknown", "no such owner", price.Offer{Base: dec("1"), Yield: []price.Band[grade.Yield]{{From: grade.Grades(1)}}, YieldEdge: 3}, "yield band edge: owner: edge(3): unknown; allowed: lower band, upper band", grade.ErrUnknown},
		{"gap", "950 lb stands in no band", weights(band(grade.Pounds(600), grade.Pounds(900)), band(grade.Pounds(1000), grade.Weight{})), "weight band 1000 lb and over: a start at 1000 lb: gap; allowed: a start at 900 lb, the end of 600 lb to 900 lb", price.ErrGap},
		{"gap of the least unit", "900.0000 to 900.0001", weights(band(grade.Pounds(600), grade.Pounds(900)), band(grade.Pounds(900.0001), grade.Weight{})), "weight band 900.0001 lb and over: a start at 900.0001 lb: gap; allowed: a start at 900 lb, the end of 600 lb to 900 lb", price.ErrGap},
		{"overlap", "890 lb stands in two bands; the bands come in any order", weights(band(grade.Pounds(880), grade.Weight{}), band(grade.Pounds(600), grade.Pounds(900))), "weight band 880 lb and over: a start at 880 lb: overlap; allowed: a start at 900 lb, the end of 600 lb to 900 lb", price.ErrOverlap},
		{"overlap of an open band", "950 lb stands in two bands", weights(band(grade.Pounds(600), grade.Weight{}), band(grade.Pounds(900), grade.Pounds(1000))), "weight band 900 lb to 1000 lb: overlap; allowed: no band over 600 lb and over", price.ErrOverlap},
		{"twice", "the same band", weights(band(grade.Pounds(600), grade.Pounds(900)), band(grade.Pounds(600), grade.Pounds(900))), "weight band 600 lb to 900 lb: a start at 600 lb: overlap; allowed: a start at 900 lb, the end of 600 lb to 900 lb", price.ErrOverlap},
		{"turned", "ends before it starts", weights(band(grade.Pounds(900), grade.Pounds(600))), "weight band 900 lb to 600 lb: out of range; allowed: a start of 0 or more and an end over it, or none", grade.ErrRange},
		{"empty", "ends where it starts", weights(band(grade.Pounds(900), grade.Pounds(900))), "weight band 900 lb to 900 lb: out of range; allowed: a start of 0 or more and an end over it, or none", grade.ErrRange},
		{"negative", "starts under 0", weights(band(grade.WeightUnits(-1), grade.Pounds(900))), "weight band -0.0001 lb to 900 lb: out of range; allowed: a start of 0 or more and an end over it, or none", grade.ErrRange},
		{"start not a number", "too large for the type", weights(band(grade.Pounds(1e9), grade.Weight{})), "weight band over 214748 lb and over: out of range; allowed: a start of 0 or more and an end over it, or none", grade.ErrRange},
		{"end not a number", "too large for the type", weights(band(grade.Pounds(0), grade.Pounds(1e9))), "weight band 0 lb to over 214748 lb: out of range; allowed: a start of 0 or more and an end over it, or none", grade.ErrRange},
		{"band amount", "5 places", weights(price.Band[grade.Weight]{From: grade.Pounds(0), Amount: dec("0.00001")}), "weight band 0 lb and over: 0.00001: too many places; allowed: " + allowed, grade.ErrPlaces},
		{"no start", "a misspelled name leaves it out", weights(price.Band[grade.Weight]{To: grade.Pounds(900)}), "weight band not taken to 900 lb: missing; allowed: a start of 0 or more", grade.ErrMissing},
		{"yield gap", "2.7 stands in no band", yields(price.Band[grade.Yield]{From: grade.Grades(1), To: grade.Grades(2.5)}, price.Band[grade.Yield]{From: grade.Grades(3)}), "yield band 3 and over: a start at 3: gap; allowed: a start at 2.5, the end of 1 to 2.5", price.ErrGap},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			g, err := price.New(tt.terms)
			if err == nil || err.Error() != tt.want {
				t.Errorf("%s: %v, want %s", tt.reason, err, tt.want)
			}
			var fe *grade.FieldError
			if !errors.Is(err, tt.is) || !errors.As(err, &fe) || !g.Equal(price.Grid{}) {
				t.Errorf("error %v is no %v with a field, or comes with a grid", err, tt.is)
			}
		})
	}
}

func TestLimitsOfAmounts(t *testing.T) {
	g, err := price.New(price.Offer{Base: dec("9999.9999"), Tiers: []price.TierAmount{{grade.PrimeTier, dec("-9999.9999")}}, Attributes: []price.AttributeAmount{{Attribute: price.DairyType, Amount: dec("9999.9999")}}})
	if err != nil {
		t.Fatal(err)
	}
	v, err := g.Value(assessed(grade.Prime.Part(grade.Low), grade.Grades(3), grade.WeightUnits(2147480000)), price.DairyType)
	if err != nil || !v.PerHead().Equal(dec("21474799.785252")) {
		t.Errorf("%s, %v", v.PerHead(), err)
	}
}

func TestTermsAreCopies(t *testing.T) {
	terms := weekly(dec("300"))
	g, err := price.New(terms)
	if err != nil {
		t.Fatal(err)
	}
	want := g.Offer()
	for _, mine := range []price.Offer{terms, g.Offer()} {
		mine.Tiers[0].Amount, mine.Yield[0].Amount, mine.Weight[0].Amount, mine.Attributes[0].Amount = dec("9"), dec("9"), dec("9"), dec("9")
	}
	if d := cmp.Diff(want, g.Offer()); d != "" {
		t.Errorf("the grid changes with its terms (-want +got):\n%s", d)
	}
	if d := cmp.Diff(price.Offer{}, price.Grid{}.Offer()); d != "" {
		t.Errorf("the zero grid (-want +got):\n%s", d)
	}
	// Terms go through JSON and make the same grid.
	b, err := json.Marshal(want)
	if err != nil {
		t.Fatal(err)
	}
	var back price.Offer
	if err := json.Unmarshal(b, &back); err != nil {
		t.Fatal(err)
	}
	if d := cmp.Diff(want, back); d != "" {
		t.Errorf("through JSON (-want +got):\n%s", d)
	}
}

func TestRounding(t *testing.T) {
	// 2 lb at $X per cwt is X/50 dollars: halves of a cent are made by 0.25.
	tests := []struct {
		perCwt               string
		down, halfUp, halfEv string
	}{
		{"100.25", "2", "2.01", "2"},
		{"100.75", "2.01", "2.02", "2.02"},
		{"100.2501", "2", "2.01", "2.01"},
		{"100.2499", "2", "2", "2"},
		{"100", "2", "2", "2"},
		{"-100.25", "-2.01", "-2", "-2"},
		{"-100.75", "-2.02", "-2.01", "-2.02"},
		{"-100.2501", "-2.01", "-2.01", "-2.01"},
	}
	for _, tt := range tests {
		g, err := price.New(price.Offer{Base: dec("1"), Tiers: []price.TierAmount{{grade.PrimeTier, dec(tt.perCwt).Sub(dec("1"))}}})
		if err != nil {
			t.Fatal(err)
		}
		v, err := g.Value(assessed(grade.Prime.Part(grade.Low), grade.Grades(1), grade.Pounds(2)))
		if err != nil {
			t.Fatal(err)
		}
		for r, want := range map[grade.Rounding]string{grade.Down: tt.down, grade.HalfUp: tt.halfUp, grade.HalfEven: tt.halfEv} {
			if got, err := v.Cents(r); err != nil || !got.Equal(dec(want)) {
				t.Errorf("%s per cwt rounded %s: %s, %v, want %s", tt.perCwt, r, got, err, want)
			}
		}
		const want = "rounding: unset: missing; allowed: down, half up, half even"
		if got, err := v.Cents(0); err == nil || err.Error() != want || !got.IsZero() {
			t.Errorf("unset rounding: %s, %v", got, err)
		}
	}
}

func TestLive(t *testing.T) {
	g := latest(t, nil)
	v, err := g.Value(assessed(grade.Choice.Part(grade.Low), grade.Grades(3.5), grade.Pounds(800)))
	if err != nil {
		t.Fatal(err)
	}
	// 2,400 dollars over 12.8 cwt are 187.50; over 13 cwt 184.615...
	for live, want := range map[grade.Weight]string{grade.Pounds(1280): "187.5", grade.Pounds(1300): "184.62", grade.Pounds(800.0001): "300"} {
		if got, err := v.PerLiveCwt(live, grade.HalfUp); err != nil || !got.Equal(dec(want)) {
			t.Errorf("%s live: %s, %v, want %s", live, got, err, want)
		}
	}
	if got, err := v.PerLiveCwt(grade.Pounds(1300), grade.Down); err != nil || !got.Equal(dec("184.61")) {
		t.Errorf("down: %s, %v", got, err)
	}
	for live, want := range map[grade.Weight]string{
		grade.Pounds(800): "live weight: 800 lb: out of range; allowed: over the carcass's 800 lb",
		grade.Pounds(1e9): "live weight: over 214748 lb: out of range; allowed: over the carcass's 800 lb",
	} {
		if got, err := v.PerLiveCwt(live, grade.HalfUp); err == nil || err.Error() != want || !got.IsZero() {
			t.Errorf("%s live: %s, %v, want %s", live, got, err, want)
		}
	}
	if got, err := v.PerLiveCwt(grade.Pounds(1300), 9); err == nil || err.Error() != "rounding: rounding(9): missing; allowed: down, half up, half even" || !got.IsZero() {
		t.Errorf("bad rounding: %s, %v", got, err)
	}
	if v.Weight() != grade.Pounds(800) {
		t.Errorf("weight %s", v.Weight())
	}
}

func TestDressing(t *testing.T) {
	tests := []struct {
		name      string
		hot, live grade.Weight
		r         grade.Rounding
		want      string
	}{
		{"usual", grade.Pounds(794), grade.Pounds(1240), grade.HalfUp, "64.0323%"}, // 64.03225..., ext-msu-p2556
		{"down", grade.Pounds(794), grade.Pounds(1240), grade.Down, "64.0322%"},
		{"whole", grade.Pounds(800), grade.Pounds(800), grade.HalfUp, "100%"},
		{"no live weight", grade.Pounds(800), grade.Pounds(0), grade.HalfUp, "live weight: 0 lb: out of range; allowed: over 0 lb"},
		{"no carcass", grade.Pounds(0), grade.Pounds(800), grade.HalfUp, "weight: 0 lb: out of range; allowed: over 0 lb"},
		{"carcass not a number", grade.Pounds(1e9), grade.Pounds(800), grade.HalfUp, "weight: over 214748 lb: out of range; allowed: over 0 lb"},
		{"heavier than the animal", grade.Pounds(800.0001), grade.Pounds(800), grade.HalfUp, "weight: 800.0001 lb: out of range; allowed: up to the live weight of 800 lb"},
		{"unset rounding", grade.Pounds(794), grade.Pounds(1240), 0, "rounding: unset: missing; allowed: down, half up, half even"},
	}
	for _, tt := range tests {
		s, err := price.Dressing(tt.hot, tt.live, tt.r)
		got := s.String()
		if err != nil {
			got = err.Error()
		}
		if got != tt.want {
			t.Errorf("%s: %s, want %s", tt.name, got, tt.want)
		}
	}
}

func TestBreakEvenAndPerHead(t *testing.T) {
	const allowed = "; allowed: amounts under 10,000 with at most 4 places"
	tests := []struct {
		name, live, carcass string
		r                   grade.Rounding
		want                string
	}{
		{"equal prices", "66", "66", grade.HalfUp, "100%"},
		{"down", "66", "109", grade.Down, "60.5504%"},
		{"no live price", "0", "109", grade.HalfUp, "live price: 0.00: out of range; allowed: over 0.00, up to the carcass price of 109.00"},
		{"live over carcass", "109.0001", "109", grade.HalfUp, "live price: 109.0001: out of range; allowed: over 0.00, up to the carcass price of 109.00"},
		{"live too fine", "66.00001", "109", grade.HalfUp, "live price: 66.00001: too many places" + allowed},
		{"carcass too large", "66", "10000", grade.HalfUp, "carcass price: 10000.00: out of range" + allowed},
		{"unset rounding", "66", "109", 0, "rounding: unset: missing; allowed: down, half up, half even"},
	}
	for _, tt := range tests {
		s, err := price.BreakEven(dec(tt.live), dec(tt.carcass), tt.r)
		got := s.String()
		if err != nil {
			got = err.Error()
		}
		if got != tt.want {
			t.Errorf("%s: %s, want %s", tt.name, got, tt.want)
		}
	}
	if v, err := price.PerHead(dec("66.00001"), grade.Pounds(1)); err == nil || err.Error() != "price per cwt: 66.00001: too many places"+allowed || !v.IsZero() {
		t.Errorf("PerHead: %s, %v", v, err)
	}
	if v, err := price.PerHead(dec("66"), grade.Pounds(-1)); err == nil || err.Error() != "weight: -1 lb: out of range; allowed: over 0 lb" || !v.IsZero() {
		t.Errorf("PerHead: %s, %v", v, err)
	}
	if v, err := price.PerHead(dec("0.0001"), grade.WeightUnits(1)); err != nil || !v.Equal(dec("0.0000000001")) {
		t.Errorf("PerHead: %s, %v", v, err)
	}
}

func TestSteps(t *testing.T) {
	g := latest(t, nil)
	a := assessed(grade.Select.Part(grade.High), grade.Grades(2.7), grade.Pounds(880))
	a.Carcass.Lean.Dark = grade.DarkThird
	a.Maturity = maturity.C.At(0)
	v, err := g.Value(a, price.AllNatural)
	if err != nil {
		t.Fatal(err)
	}
	report := cite.Citation{Standing: cite.Official, IDs: "ams-ct155-2025-01-06"}
	want := []cite.Step{
		{Name: "base", Rule: "dollars per cwt of hot carcass weight", Given: "grid week of 2025-01-06", Result: "300.00", Cite: report},
		{Name: "tier select", Rule: "an attribute stands in place of the tier", Given: "High Select", Result: "+0.00", Cite: report},
		{Name: "yield 2.5 to 3", Rule: "by yield, exact; a shared edge belongs to the upper band", Given: "2.7", Result: "+1.38", Cite: report},
		{Name: "weight 600 lb to 900 lb", Rule: "by hot carcass weight; a shared edge belongs to the lower band", Given: "880 lb", Result: "+0.00", Cite: report},
		{Name: "attribute hardbone", Rule: "overall maturity is C00 or older; in place of the tier", Given: "High Select, C00", Result: "-42.20", Cite: cite.Citation{Standing: cite.Memory}},
		{Name: "attribute dark cutter", Rule: "the lean cuts dark", Given: "High Select, C00", Result: "-38.75", Cite: cite.Citation{Standing: cite.Derived}},
		{Name: "attribute all natural", Rule: "named by the caller", Given: "High Select, C00", Result: "+33.12", Cite: report},
		{Name: "price per cwt", Rule: "base, premiums and discounts added up", Given: "base and 6 lines", Result: "253.55", Cite: cite.Citation{Standing: cite.Published, IDs: "tx-grid-2014"}},
		{Name: "value per head", Rule: "price per cwt times hot carcass weight / 100", Given: "253.55 and 880 lb", Result: "2231.24", Cite: cite.Citation{Standing: cite.Derived, IDs: "tx-grid-2014"}},
	}
	if d := cmp.Diff(want, v.Steps()); d != "" {
		t.Errorf("(-want +got):\n%s", d)
	}
	var parts []price.Premium
	for _, s := range want[1:7] {
		parts = append(parts, price.Premium{Name: s.Name, Amount: dec(strings.TrimPrefix(s.Result, "+"))})
	}
	if d := cmp.Diff(parts, v.Parts()); d != "" {
		t.Errorf("parts (-want +got):\n%s", d)
	}
	if s := (price.Value{}).Steps(); s != nil {
		t.Errorf("steps of nothing: %v", s)
	}
	if s := (price.Value{}).Parts(); s != nil {
		t.Errorf("parts of nothing: %v", s)
	}
	for _, s := range v.Steps() {
		if n := len(strings.Fields(s.Cite.IDs)); len(s.Cite.Sources()) != n {
			t.Errorf("%s: a source is not registered", s)
		}
	}
}

func TestTiersWithoutPriceInSteps(t *testing.T) {
	// Without tiers and bands there is no line but the base.
	g, err := price.New(price.Offer{Base: dec("200.0625")})
	if err != nil {
		t.Fatal(err)
	}
	v, err := g.Value(assessed(grade.NoGrade.Part(grade.Whole), grade.Grades(1), grade.Pounds(1)))
	if err != nil {
		t.Fatal(err)
	}
	if len(v.Parts()) != 0 || len(v.Steps()) != 3 || v.Steps()[0].Result != "200.0625" || v.Steps()[0].Given != "grid " {
		t.Errorf("%v", v.Steps())
	}
}

// TestComparisons holds which of two values is worth more.
func TestComparisons(t *testing.T) {
	g := latest(t, nil)
	var class []price.Value
	for _, a := range []grade.Assessment{
		assessed(grade.Select.Part(grade.Low), grade.Grades(3.5), grade.Pounds(800)),
		assessed(grade.Choice.Part(grade.Low), grade.Grades(3.5), grade.Pounds(700)),
		assessed(grade.Prime.Part(grade.Low), grade.Grades(3.5), grade.Pounds(650)),
		assessed(grade.Choice.Part(grade.High), grade.Grades(3.1), grade.Pounds(700)),
	} {
		v, err := g.Value(a)
		if err != nil {
			t.Fatal(err)
		}
		class = append(class, v)
	}
	// Per head: 2174.00, 2100.00, 2064.01, 2100.00.
	for _, tt := range []struct{ a, b, head, cwt int }{
		{0, 1, +1, -1}, {1, 0, -1, +1}, {1, 3, 0, 0}, {2, 1, -1, +1}, {0, 2, +1, -1},
	} {
		if got := price.ByHead(class[tt.a], class[tt.b]); got != tt.head {
			t.Errorf("by head, %d against %d: %d, want %d", tt.a, tt.b, got, tt.head)
		}
		if got := price.ByCwt(class[tt.a], class[tt.b]); got != tt.cwt {
			t.Errorf("by cwt, %d against %d: %d, want %d", tt.a, tt.b, got, tt.cwt)
		}
	}
}

// TestValueIsTheSum checks any carcass on the report's grid against the sum in
// decimals, and that premiums never fall with the tier.
func TestValueIsTheSum(t *testing.T) {
	g := latest(t, nil)
	base := g.Offer().Base
	rapid.Check(t, func(t *rapid.T) {
		q := rapid.SampledFrom([]grade.Quality{grade.Prime.Part(grade.Low), grade.Choice.Part(grade.High), grade.Choice.Part(grade.Low), grade.Select.Part(grade.High), grade.Standard.Part(grade.Whole)}).Draw(t, "quality")
		a := assessed(q, grade.YieldUnits(rapid.Int64Range(-2*100000000, 9*100000000).Draw(t, "yield")), grade.WeightUnits(int64(rapid.Int32Range(4_000_000, 18_000_000).Draw(t, "weight"))))
		a.Carcass.Lean.Dark = grade.DarkCut(rapid.IntRange(0, 3).Draw(t, "dark"))
		a.Maturity = maturity.Score(rapid.IntRange(100, 500).Draw(t, "maturity"))
		given := rapid.SliceOf(rapid.SampledFrom([]price.Attribute{price.DairyType, price.Over30Months, price.AllNatural})).Draw(t, "attributes")
		v, err := g.Value(a, given...)
		if err != nil {
			t.Fatal(err)
		}
		sum := base
		for _, p := range v.Parts() {
			sum = sum.Add(p.Amount)
		}
		if !sum.Equal(v.PerCwt()) {
			t.Fatalf("parts come to %s, the price is %s", sum, v.PerCwt())
		}
		if want := sum.Mul(a.Carcass.Measures.Weight.Pounds()).Div(dec("100")); !want.Equal(v.PerHead()) {
			t.Fatalf("%s per head, want %s", v.PerHead(), want)
		}
		again, err := g.Value(a, given...)
		if err != nil || price.ByHead(v, again) != 0 || price.ByCwt(v, again) != 0 {
			t.Fatal("the same carcass has two values")
		}
		if q != grade.Prime.Part(grade.Low) {
			a.Quality = grade.Prime.Part(grade.Low)
			if best, err := g.Value(a, given...); err != nil || price.ByHead(best, v) < 0 {
				t.Fatalf("Prime is worth less: %v", err)
			}
		}
	})
}

func TestEncodings(t *testing.T) {
	roundtrip.Run(t, "Attribute", price.DarkCutter, price.ParseAttribute, roundtrip.Case[price.Attribute]{
		Texts: map[string]price.Attribute{
			"dairy-type": price.DairyType, "bullock or stag": price.BullockOrStag, "hardbone": price.Hardbone, "dark cutter": price.DarkCutter,
			"over 30 months": price.Over30Months, "all natural": price.AllNatural, "non-hormone-treated": price.NonHormoneTreated,
		},
		Bad: []string{"unset", "hard bone", "stag"}, Invalid: []price.Attribute{price.NonHormoneTreated + 1},
	})
	roundtrip.Run(t, "Edge", price.EdgeUpper, roundtrip.Read[price.Edge], roundtrip.Case[price.Edge]{
		Texts: map[string]price.Edge{"lower band": price.EdgeLower, "upper band": price.EdgeUpper},
		Bad:   []string{"unset", "lower", "upper band -"}, Invalid: []price.Edge{price.EdgeUpper + 1},
	})
	for range price.Attributes() {
		break
	}
	if !price.DairyType.IsValid() || price.Attribute(0).IsValid() || price.Attribute(8).IsValid() {
		t.Error("IsValid")
	}
	if price.Attribute(0).String() != "unset" || price.Edge(3).String() != "edge(3)" {
		t.Error("String")
	}
}

func FuzzAttribute(f *testing.F) {
	roundtrip.Fuzz(f, price.ParseAttribute, price.Hardbone, "dairy-type", "bullock or stag", "over 30 months", "stag")
}

func BenchmarkValue(b *testing.B) {
	g, err := price.New(weekly(dec("300")))
	if err != nil {
		b.Fatal(err)
	}
	a := assessed(grade.Select.Part(grade.Low), grade.Grades(2.7), grade.Pounds(880))
	b.ReportAllocs()
	for range b.N {
		if _, err := g.Value(a, price.DairyType); err != nil {
			b.Fatal(err)
		}
	}
}

// TestAllProblems holds that a grid tells of everything that is wrong with it, each
// with its path in the terms.
func TestAllProblems(t *testing.T) {
	_, err := price.New(price.Offer{
		Base:       dec("-1"),
		Tiers:      []price.TierAmount{{0, dec("1")}, {grade.PrimeTier, dec("1")}, {grade.PrimeTier, dec("2")}, {grade.SelectTier, dec("0.00001")}},
		Attributes: []price.AttributeAmount{{Attribute: 99}, {Attribute: price.DairyType, Amount: dec("10000")}},
		Yield:      []price.Band[grade.Yield]{{From: grade.Grades(3), Amount: dec("1")}, {From: grade.Grades(1), To: grade.Grades(2), Amount: dec("0.00001")}},
		Weight:     []price.Band[grade.Weight]{{To: grade.Pounds(900)}, {From: grade.Pounds(900), To: grade.Pounds(600)}},
		WeightEdge: price.EdgeLower,
	})
	faulttest.All(t, "New", err,
		"base | base: -1.00: out of range; allowed: over 0.00",
		"tiers[0].tier | tiers: unset: unknown; allowed: below standard to prime",
		"tiers[2].amount | tier prime: 2.00: repeated; allowed: one amount",
		"tiers[3].amount | tier select: 0.00001: too many places; allowed: amounts under 10,000 with at most 4 places",
		"attributes[0].attribute | attributes: attribute(99): unknown; allowed: dairy-type, bullock or stag, hardbone, dark cutter, over 30 months, all natural, non-hormone-treated",
		"attributes[1].amount | attribute dairy-type: 10000.00: out of range; allowed: amounts under 10,000 with at most 4 places",
		"yield_edge | yield band edge: owner: missing; allowed: lower band, upper band",
		"yield[1].amount | yield band 1 to 2: 0.00001: too many places; allowed: amounts under 10,000 with at most 4 places",
		"yield[0].from | yield band 3 and over: a start at 3: gap; allowed: a start at 2, the end of 1 to 2",
		"weight[0].from | weight band not taken to 900 lb: missing; allowed: a start of 0 or more",
		"weight[1] | weight band 900 lb to 600 lb: out of range; allowed: a start of 0 or more and an end over it, or none",
	)
}

// TestGridThroughJSON holds that a grid and its terms come back from JSON unchanged,
// or not at all.
func TestGridThroughJSON(t *testing.T) {
	g := latest(t, nil)
	b, err := json.Marshal(g)
	if err != nil {
		t.Fatal(err)
	}
	var back price.Grid
	if err := json.Unmarshal(b, &back); err != nil || !back.Equal(g) {
		t.Errorf("comes back as %+v, %v", back, err)
	}
	if d := cmp.Diff(g.Offer(), back.Offer()); d != "" {
		t.Errorf("terms (-want +got):\n%s", d)
	}
	if d := cmp.Diff(g, latest(t, func(t *price.Offer) { t.Tiers[0].Amount = dec("0.01") })); d == "" {
		t.Error("cmp.Diff finds nothing between two grids")
	}
	for in, want := range map[string]string{
		`{"base":"1","yields":[]}`:                 "yields | name: yields: unknown; allowed: name, base, cite, tiers, yield, yield_edge, weight, weight_edge, attributes",
		`{"base":"-1"}`:                            "base | base: -1.00: out of range; allowed: over 0.00",
		`{"base":"1","tiers":[{"teir":"a"}]}`:      "tiers[0].teir | name: teir: unknown; allowed: tier, amount",
		`{"base":"1","attributes":[{"amonut":1}]}`: "attributes[0].amonut | name: amonut: unknown; allowed: attribute, amount, instead",
		`{"base":"1","weight":[{"form":"1"}]}`:     "weight[0].form | name: form: unknown; allowed: from, to, amount",
	} {
		kept := g
		faulttest.All(t, in, json.Unmarshal([]byte(in), &kept), want)
		if !kept.Equal(g) {
			t.Errorf("%s changes the receiver", in)
		}
	}
	if err := json.Unmarshal([]byte("null"), &back); err != nil || !back.Equal(g) {
		t.Errorf("null gives %v, %v", back, err)
	}
	v, err := g.Value(assessed(grade.Choice.Part(grade.Low), grade.Grades(3), grade.Pounds(700)))
	if err != nil {
		t.Fatal(err)
	}
	if b, err := json.Marshal(v); err == nil {
		t.Errorf("a value has the JSON %s", b)
	}
	w, _ := latest(t, nil).Value(assessed(grade.Choice.Part(grade.Low), grade.Grades(3), grade.Pounds(700)))
	if d := cmp.Diff(v, w); d != "" {
		t.Errorf("the same value of an equal grid: %s", d)
	}
}

// TestEveryType holds every exported type to the promises of the module.
func TestEveryType(t *testing.T) {
	g := latest(t, nil)
	v, err := g.Value(assessed(grade.Choice.Part(grade.Low), grade.Grades(3), grade.Pounds(700)))
	if err != nil {
		t.Fatal(err)
	}
	everytype.Run(t, ".",
		price.DairyType, price.Attribute(99), price.EdgeLower, price.Edge(99), g, v, v.Parts()[0],
		price.Offer{Name: "odd", Base: dec("1e400"), Tiers: []price.TierAmount{{}}, Yield: []price.Band[grade.Yield]{{}}, Weight: []price.Band[grade.Weight]{{}}}, g.Offer(),
		price.Band[grade.Yield]{From: grade.Grades(-1), To: grade.Grades(5)}, price.Band[grade.Weight]{From: grade.Pounds(math.NaN()), Amount: dec("-1e-400")},
		price.TierAmount{Tier: 99, Amount: dec("1")}, price.TierAmount{Tier: grade.PrimeTier}, price.AttributeAmount{Attribute: price.DairyType, Instead: true},
		price.New, price.PerHead, price.Dressing, price.BreakEven, price.ByHead, price.ByCwt, price.ParseAttribute, roundtrip.Read[price.Edge], price.Attributes, price.AttributesOf,
		grade.Assessment{}, grade.Grades(3), grade.Yield{}, grade.Pounds(700), grade.Weight{}, grade.HalfUp, dec("1e400"), dec("66"), decimal.Decimal{},
	)
}
