package price_test

import (
	"encoding/json"
	"errors"
	"fmt"
	"log"
	"os"
	"slices"

	"example.com/ribface/grade"
	"example.com/ribface/grade/price"
	"example.com/ribface/maturity"
	"github.com/shopspring/decimal"
)

// base is the price of a made-up sale.
var base = decimal.RequireFromString("300.00")

// weekly are the averages of the public weekly report for one week (official:
// ams-ct155-2025-01-06), kept as JSON, with a base.
func weekly(base decimal.Decimal) price.Offer {
	text, err := os.ReadFile("../../examples/prices/week-2025-01-06.json")
	if err != nil {
		log.Fatal(err)
	}
	var terms price.Offer
	if err := json.Unmarshal(text, &terms); err != nil {
		log.Fatal(err)
	}
	terms.Base = base
	return terms
}

// carcass is a steer that grades High Select with a yield of 2.76.
var carcass = grade.Carcass{
	Sex:      grade.Steer,
	Maturity: maturity.Evidence{Skeletal: maturity.A.At(60), Lean: maturity.A.At(50)},
	Marbling: grade.Slight.At(70),
	Measures: grade.Measures{Fat: grade.Inches(0.4), Ribeye: grade.SquareInches(14), KPH: grade.Percent(2), Weight: grade.Pounds(880)},
}

// A carcass on the averages of the public weekly report and a base of one's own.
func Example() {
	grid, err := price.New(weekly(base))
	if err != nil {
		fmt.Println(err)
		return
	}
	a, err := grade.Current.Assess(carcass)
	if err != nil {
		fmt.Println(err)
		return
	}
	v, err := grid.Value(a)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(a.Quality, a.Yield, a.Carcass.Measures.Weight)
	fmt.Println(v.PerCwt(), "per cwt,", v.PerHead(), "per head")
	for _, step := range v.Steps() {
		fmt.Println(step)
	}
	// Output:
	// High Select 2.764 880 lb
	// 273.13 per cwt, 2403.544 per head
	// base: grid week of 2025-01-06 -> 300.00 (dollars per cwt of hot carcass weight; official: ams-ct155-2025-01-06)
	// tier select: High Select -> -28.25 (by trade tier; official: ams-ct155-2025-01-06)
	// yield 2.5 to 3: 2.764 -> +1.38 (by yield, exact; a shared edge belongs to the upper band; official: ams-ct155-2025-01-06)
	// weight 600 lb to 900 lb: 880 lb -> +0.00 (by hot carcass weight; a shared edge belongs to the lower band; official: ams-ct155-2025-01-06)
	// price per cwt: base and 3 lines -> 273.13 (base, premiums and discounts added up; published: tx-grid-2014)
	// value per head: 273.13 and 880 lb -> 2403.544 (price per cwt times hot carcass weight / 100; derived: tx-grid-2014)
}

// A grid of one's own. A gap between two bands is refused by name.
func ExampleNew() {
	dollars := decimal.RequireFromString
	terms := price.Offer{
		Name:  "county sale",
		Base:  dollars("250"),
		Tiers: []price.TierAmount{{Tier: grade.PrimeTier, Amount: dollars("12.50")}, {Tier: grade.TopChoice}, {Tier: grade.LowChoice}, {Tier: grade.SelectTier, Amount: dollars("-15")}},
		Weight: []price.Band[grade.Weight]{
			{From: grade.Pounds(550), To: grade.Pounds(950)},
			{From: grade.Pounds(1000), Amount: dollars("-10")},
		},
		WeightEdge: price.EdgeLower,
	}
	_, err := price.New(terms)
	fmt.Println(err)
	fmt.Println(errors.Is(err, price.ErrGap))

	terms.Weight[0].To = grade.Pounds(1000)
	grid, err := price.New(terms)
	fmt.Println(grid.Offer().Name, err)
	// Output:
	// weight band 1000 lb and over: a start at 1000 lb: gap; allowed: a start at 950 lb, the end of 550 lb to 950 lb
	// true
	// county sale <nil>
}

// 900 lb stands in two printed rows. The grid says which of them owns it.
func ExampleOffer() {
	a, err := grade.Current.Assess(carcass)
	if err != nil {
		fmt.Println(err)
		return
	}
	a.Carcass.Measures.Weight = grade.Pounds(900)
	for _, owner := range []price.Edge{price.EdgeLower, price.EdgeUpper} {
		terms := weekly(base)
		terms.WeightEdge = owner
		grid, err := price.New(terms)
		if err != nil {
			fmt.Println(err)
			return
		}
		v, err := grid.Value(a)
		fmt.Println(owner, v.PerCwt(), v.Parts()[2].Name, err)
	}
	// Output:
	// lower band 273.13 weight 600 lb to 900 lb <nil>
	// upper band 272.06 weight 900 lb to 1000 lb <nil>
}

// Programs and kinds of cattle cannot be seen on the carcass: the caller names
// them.
func ExampleGrid_Value() {
	grid, err := price.New(weekly(base))
	if err != nil {
		fmt.Println(err)
		return
	}
	a, err := grade.Current.Assess(carcass)
	if err != nil {
		fmt.Println(err)
		return
	}
	v, err := grid.Value(a, price.AllNatural)
	fmt.Println(v.PerCwt(), err)

	// The report has no price for a tier below Standard.
	a.Quality = grade.Utility.Part(grade.Whole)
	_, err = grid.Value(a)
	fmt.Println(err)
	fmt.Println(errors.Is(err, price.ErrNoPrice))
	// Output:
	// 306.25 <nil>
	// tier: below standard: no price; allowed: prime, top choice, low choice, select, standard
	// true
}

func ExampleGrid_Offer() {
	grid, err := price.New(weekly(base))
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, b := range grid.Offer().Weight {
		fmt.Println(b, b.Amount)
	}
	// Output:
	// 400 lb to 500 lb -29.29
	// 500 lb to 550 lb -22.64
	// 550 lb to 600 lb -11.57
	// 600 lb to 900 lb 0
	// 900 lb to 1000 lb -1.07
	// 1000 lb to 1050 lb -5
	// 1050 lb and over -15.45
}

func ExampleValue() {
	terms := weekly(base)
	grid, err := price.New(terms)
	if err != nil {
		fmt.Println(err)
		return
	}
	a, err := grade.Current.Assess(carcass)
	if err != nil {
		fmt.Println(err)
		return
	}
	v, err := grid.Value(a)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(v.PerCwt(), v.Weight(), v.PerHead())
	fmt.Println(v.Cents(grade.HalfUp))
	fmt.Println(v.Cents(0))
	fmt.Println(v.PerLiveCwt(grade.Pounds(1400), grade.HalfUp))
	for _, p := range v.Parts() {
		fmt.Println(p.Name, p.Amount)
	}
	fmt.Println(len(v.Steps()), "steps")
	// Output:
	// 273.13 880 lb 2403.544
	// 2403.54 <nil>
	// 0 rounding: unset: missing; allowed: down, half up, half even
	// 171.68 <nil>
	// tier select -28.25
	// yield 2.5 to 3 1.38
	// weight 600 lb to 900 lb 0
	// 6 steps
}

// A class from the most valuable down, per head and per cwt.
func ExampleByHead() {
	grid, err := price.New(weekly(base))
	if err != nil {
		fmt.Println(err)
		return
	}
	var class []price.Value
	for _, exhibit := range []struct {
		marbling grade.Marbling
		weight   grade.Weight
	}{
		{grade.Slight.At(20), grade.Pounds(850)},
		{grade.Small.At(20), grade.Pounds(760)},
		{grade.SlightlyAbundant.At(20), grade.Pounds(700)},
		{grade.Small.At(90), grade.Pounds(760)},
	} {
		c := carcass
		c.Marbling, c.Measures.Weight = exhibit.marbling, exhibit.weight
		a, err := grade.Current.Assess(c)
		if err != nil {
			fmt.Println(err)
			return
		}
		v, err := grid.Value(a)
		if err != nil {
			fmt.Println(err)
			return
		}
		class = append(class, v)
		fmt.Println(a.Quality, v.PerCwt(), v.PerHead())
	}
	slices.SortStableFunc(class, func(a, b price.Value) int { return price.ByHead(b, a) })
	for _, v := range class {
		fmt.Println("per head", v.PerHead())
	}
	fmt.Println("per cwt", slices.MaxFunc(class, price.ByCwt).PerCwt())
	// Output:
	// Low Select 273.13 2321.605
	// Low Choice 301.77 2293.452
	// Low Prime 319.31 2235.17
	// Low Choice 301.77 2293.452
	// per head 2321.605
	// per head 2293.452
	// per head 2293.452
	// per head 2235.17
	// per cwt 319.31
}

func ExampleByCwt() {
	fmt.Println(price.ByCwt(price.Value{}, price.Value{}))
	// Output: 0
}

// A three-year-old whose lean cuts dark.
func ExampleAttributesOf() {
	c := carcass
	c.Maturity.Teeth = maturity.Incisors(4)
	c.Lean.Dark = grade.DarkThird
	a, err := grade.Current.Assess(c)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, m := range price.AttributesOf(a) {
		fmt.Println(m)
	}
	// Output:
	// dark cutter
	// over 30 months
}

// A live steer of 1,240 lb at $86.79 per cwt (published: ext-msu-p2556).
func ExamplePerHead() {
	v, err := price.PerHead(decimal.RequireFromString("86.79"), grade.Pounds(1240))
	fmt.Println(v, v.StringFixed(2), err)
	// Output: 1076.196 1076.20 <nil>
}

func ExampleDressing() {
	s, err := price.Dressing(grade.Pounds(794), grade.Pounds(1240), grade.HalfUp)
	fmt.Println(s, err)
	// Output: 64.0323% <nil>
}

// $66 live against $109 for the carcass (prices published: uni-pricing-slides).
func ExampleBreakEven() {
	s, err := price.BreakEven(decimal.RequireFromString("66"), decimal.RequireFromString("109"), grade.HalfUp)
	fmt.Println(s, err)
	// Output: 60.5505% <nil>
}

func ExampleAttributes() {
	for m := range price.Attributes() {
		fmt.Println(m)
	}
	// Output:
	// dairy-type
	// bullock or stag
	// hardbone
	// dark cutter
	// over 30 months
	// all natural
	// non-hormone-treated
}

func ExampleParseAttribute() {
	m, err := price.ParseAttribute("dark cutter")
	fmt.Println(m, err)
	_, err = price.ParseAttribute("blood splash")
	fmt.Println(err)
	// Output:
	// dark cutter <nil>
	// attribute: "blood splash": unknown; allowed: dairy-type, bullock or stag, hardbone, dark cutter, over 30 months, all natural, non-hormone-treated
}

func ExampleBand() {
	b := price.Band[grade.Yield]{From: grade.Grades(4), To: grade.Grades(5), Amount: decimal.RequireFromString("-12.45")}
	fmt.Println(b, b.Amount)
	b.To = grade.Yield{}
	fmt.Println(b.String())
	// Output:
	// 4 to 5 -12.45
	// 4 and over
}

// The same carcass on two grids. Each is priced as it stands; neither changes.
func ExampleGrid() {
	a, err := grade.Current.Assess(carcass)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, b := range []string{"280", "300"} {
		grid, err := price.New(weekly(decimal.RequireFromString(b)))
		if err != nil {
			fmt.Println(err)
			return
		}
		v, err := grid.Value(a)
		fmt.Println(b, v.PerCwt(), v.PerHead(), err)
	}
	// Output:
	// 280 253.13 2227.544 <nil>
	// 300 273.13 2403.544 <nil>
}

// A buyer who takes no premium or discount for the tier of a dark cutter.
func ExampleAttributeAmount() {
	terms := weekly(base)
	for i, m := range terms.Attributes {
		if m.Attribute == price.DarkCutter {
			terms.Attributes[i] = price.AttributeAmount{Attribute: price.DarkCutter, Amount: decimal.RequireFromString("-40"), Instead: true}
		}
	}
	grid, err := price.New(terms)
	if err != nil {
		fmt.Println(err)
		return
	}
	c := carcass
	c.Lean.Dark = grade.DarkThird
	a, err := grade.Current.Assess(c)
	if err != nil {
		fmt.Println(err)
		return
	}
	v, err := grid.Value(a)
	fmt.Println(a.Quality, v.PerCwt(), err)
	// Output: Low Select 261.38 <nil>
}

// Two tiers priced, and a carcass of a third.
func ExampleTierAmount() {
	grid, err := price.New(price.Offer{Base: base, Tiers: []price.TierAmount{
		{Tier: grade.PrimeTier, Amount: decimal.RequireFromString("20")},
		{Tier: grade.TopChoice, Amount: decimal.RequireFromString("5")},
	}})
	if err != nil {
		fmt.Println(err)
		return
	}
	a, err := grade.Current.Assess(carcass)
	if err != nil {
		fmt.Println(err)
		return
	}
	_, err = grid.Value(a)
	fmt.Println(err)
	// Output: tier: select: no price; allowed: prime, top choice
}

func ExamplePremium() {
	grid, err := price.New(weekly(base))
	if err != nil {
		fmt.Println(err)
		return
	}
	a, err := grade.Current.Assess(carcass)
	if err != nil {
		fmt.Println(err)
		return
	}
	v, err := grid.Value(a)
	if err != nil {
		fmt.Println(err)
		return
	}
	sum := base
	for _, p := range v.Parts() {
		sum = sum.Add(p.Amount)
		fmt.Println(p.Name, p.Amount.StringFixed(2), sum.StringFixed(2))
	}
	// Output:
	// tier select -28.25 271.75
	// yield 2.5 to 3 1.38 273.13
	// weight 600 lb to 900 lb 0.00 273.13
}

// Every value that is stored or sent has a text; it is also what stands in JSON and in
// a column of a database.
func Example_encodings() {
	v := price.Hardbone
	text, err := v.MarshalText()
	fmt.Printf("%q, %v\n", text, err)

	// A failed read leaves the value as it was.
	fmt.Println(v.UnmarshalText([]byte("dark cutter")), v)
	fmt.Println(v.UnmarshalText([]byte("stag")))
	fmt.Println(v)

	column, err := v.Value()
	fmt.Printf("%q, %v\n", column, err)
	fmt.Println(v.Scan([]byte("dairy-type")), v)
	// Output:
	// "hardbone", <nil>
	// <nil> dark cutter
	// attribute: "stag": unknown; allowed: dairy-type, bullock or stag, hardbone, dark cutter, over 30 months, all natural, non-hormone-treated
	// dark cutter
	// "dark cutter", <nil>
	// <nil> dairy-type
}
