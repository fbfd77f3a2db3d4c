package grade_test

import (
	"encoding/json"
	"errors"
	"fmt"
	"math"
	"slices"
	"time"

	"example.com/ribface/grade"
	"example.com/ribface/maturity"
	"github.com/shopspring/decimal"
)

// Grade a carcass and explain every step.
func Example() {
	steer := grade.Carcass{
		Sex:      grade.Steer,
		Maturity: maturity.Evidence{Skeletal: maturity.A.At(90), Lean: maturity.A.At(30)},
		Marbling: grade.Small.At(40),
		Lean:     grade.Lean{Firmness: grade.Firm},
		Measures: grade.Measures{Fat: grade.Inches(0.60), Ribeye: grade.SquareInches(11.9), KPH: grade.Percent(1.5), Weight: grade.Pounds(660)},
	}
	a, err := grade.Current.Assess(steer)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%v maturity, %v, yield grade %d (%v)\n", a.Maturity, a.Quality, a.Yield.Grade(), a.Yield)
	for _, step := range a.Steps() {
		fmt.Println("-", step)
	}
	// Output:
	// A70 maturity, Low Choice, yield grade 3 (3)
	// - overall maturity: skeletal A90, lean A30 -> A70 (skeletal and lean more than 40 units apart: their mean, then 10 units toward skeletal; common-practice: quiz-quality-concepts)
	// - sex class: steer -> all grades (open to every grade; published: export-classes, montana-specs)
	// - marbling: Sm40 in A70 -> Low Choice (Choice needs Sm00 or more, edition 2017; published: reprint-bullock-choice, ext-tamu-quality-es)
	// - firmness: firm -> Low Choice (Choice needs slightly soft or firmer; published: reprint-bullock-choice)
	// - fat: 0.6 in -> 3.5 (preliminary yield grade: 2.00 and 0.25 for every 0.1 in; a start, not part of the equation; published: ext-sdsu-yield, aged-quality-yield-slides)
	// - ribeye for the weight: 11.9 sq in at 660 lb -> 11.7 sq in expected, +0.2 sq in (11.0 sq in at 600 lb and 0.3 for every 25 lb; a guide, not part of the equation; published: ext-sdsu-yield)
	// - equation: start: every carcass -> +2.5 (2.50; official: cfr-54-105)
	// - equation: fat: 0.6 in -> +1.5 (+ 2.50 per in; official: cfr-54-105)
	// - equation: kidney, pelvic and heart fat: 1.5% -> +0.3 (+ 0.20 per percent; official: cfr-54-105)
	// - equation: hot carcass weight: 660 lb -> +2.508 (+ 0.0038 per lb; official: cfr-54-105)
	// - equation: ribeye: 11.9 sq in -> -3.808 (- 0.32 per sq in; official: cfr-54-105)
	// - yield: the five terms -> 3 (the sum, exact; official: cfr-54-105)
	// - yield grade: 3 -> 3 (decimals dropped, then kept to 1 to 5; published: ext-sdsu-yield)
}

// Grade one carcass by an old edition and by the current one.
func Example_editions() {
	heifer := grade.Carcass{
		Sex:      grade.Heifer,
		Maturity: maturity.Evidence{Skeletal: maturity.B.At(20), Lean: maturity.B.At(20), Teeth: maturity.Incisors(2)},
		Marbling: grade.Small.At(40),
		Measures: grade.Measures{Fat: grade.Inches(0.4), Ribeye: grade.SquareInches(12.8), KPH: grade.Percent(2), Weight: grade.Pounds(720)},
	}
	for _, e := range []grade.Edition{grade.Edition1987, grade.Edition1997, grade.Current} {
		a, err := e.Assess(heifer)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("%v: %v, %v, yield grade %d\n", e, a.Maturity, a.Quality, a.Yield.Grade())
	}
	// Output:
	// 1987: B20, Low Choice, yield grade 2
	// 1997: B20, High Standard, yield grade 2
	// 2017: A99, Low Choice, yield grade 2
}

// Read a carcass from JSON as another program may have written it, and write the
// result back.
func Example_json() {
	const in = `{
		"Sex": "cow",
		"Maturity": {"Skeletal": "D20", "Lean": "C80", "Teeth": 8},
		"Marbling": "Modest60",
		"Measures": {"Fat": "9 mm", "Ribeye": "74.2 sq cm", "KPH": 2.5, "Weight": "318 kg"}
	}`
	var cow grade.Carcass
	if err := json.Unmarshal([]byte(in), &cow); err != nil {
		fmt.Println(err)
		return
	}
	a, err := grade.Current.Assess(cow)
	if err != nil {
		fmt.Println(err)
		return
	}
	out, err := json.MarshalIndent(a, "", " ")
	fmt.Println(string(out), err)
	// Output:
	// {
	//  "carcass": {
	//   "sex": "cow",
	//   "maturity": {
	//    "skeletal": "D20",
	//    "lean": "C80",
	//    "teeth": "8 permanent incisors"
	//   },
	//   "marbling": "Mt60",
	//   "measures": {
	//    "fat": "0.3543 in",
	//    "ribeye": "11.501 sq in",
	//    "kph": "2.5%",
	//    "weight": "701.07 lb"
	//   }
	//  },
	//  "rules": {
	//   "edition": "2017"
	//  },
	//  "maturity": "D00",
	//  "quality": "Low Commercial",
	//  "yield": "2.869496"
	// } <nil>
}

// The plain formula in float64 puts these two carcasses one whole grade too low,
// because a sum that is exactly 3 or 4 comes out just under it.
func Example_exactness() {
	for _, c := range [][4]float64{{0.60, 1.5, 660, 11.9}, {0.35, 3.5, 915, 11.1}} {
		fat, kph, weight, ribeye := c[0], c[1], c[2], c[3]
		m := grade.Measures{Fat: grade.Inches(fat), Ribeye: grade.SquareInches(ribeye), KPH: grade.Percent(kph), Weight: grade.Pounds(weight)}
		y, err := m.Yield()
		fmt.Println("exact:  ", y, "grade", y.Grade(), err)
		// The conversions keep a processor from fusing a product and a sum.
		f := 2.50 + float64(2.50*fat) + float64(0.20*kph) + float64(0.0038*weight) - float64(0.32*ribeye)
		fmt.Println("float64:", f, "grade", int(math.Floor(f)))
	}
	// Output:
	// exact:   3 grade 3 <nil>
	// float64: 2.9999999999999996 grade 2
	// exact:   4 grade 4 <nil>
	// float64: 3.9999999999999996 grade 3
}

// exampleCarcass is an invented steer that the examples below start from.
func exampleCarcass() grade.Carcass {
	return grade.Carcass{
		Sex:      grade.Steer,
		Maturity: maturity.Evidence{Skeletal: maturity.A.At(60), Lean: maturity.A.At(40)},
		Marbling: grade.Small.At(40),
		Measures: grade.Measures{Fat: grade.Inches(0.5), Ribeye: grade.SquareInches(12.4), KPH: grade.Percent(2.5), Weight: grade.Pounds(760)},
	}
}

func ExampleCarcass() {
	c := grade.Carcass{
		Sex:       grade.Heifer,
		Maturity:  maturity.Evidence{Skeletal: maturity.A.At(60), Lean: maturity.A.At(40)},
		Marbling:  grade.Slight.At(80),
		Lean:      grade.Lean{Firmness: grade.ModeratelyFirm},
		Measures:  grade.Measures{Fat: grade.Millimeters(11), Ribeye: grade.SquareCentimeters(80), KPH: grade.Percent(2.5), Weight: grade.Kilograms(340)},
		FatAdjust: grade.Inches(0.1),
	}
	fmt.Println(grade.Current.Assess(c))
	// The zero Carcass is refused by its first missing field.
	_, err := grade.Current.Assess(grade.Carcass{})
	fmt.Println(err)
	// Output:
	// {{heifer {A60 A40 not looked at not looked at none} Sl80 {moderately firm none unset unset false} {0.4331 in 12.4 sq in 2.5% 749.5717 lb} 0.1 in} {2017 {keep units may cross}} A50 High Select 3.21312246} <nil>
	// sex class: missing; allowed: steer, heifer, cow, bullock, bull
	// skeletal maturity: missing; allowed: A00 to E100
	// lean maturity: missing; allowed: A00 to E100
	// marbling: missing; allowed: Devoid00 to Ab100
	// fat: missing; allowed: 0 in to 3 in
	// ribeye: missing; allowed: 1 sq in to 25 sq in
	// KPH: missing; allowed: 0% to 10%
	// weight: missing; allowed: 100 lb to 1800 lb
}

func ExampleCarcass_Adjusted() {
	c := exampleCarcass()
	c.FatAdjust = grade.Inches(0.15)
	m, err := c.Adjusted()
	fmt.Println(m.Fat, err)
	c.FatAdjust = grade.Inches(-0.6)
	_, err = c.Adjusted()
	fmt.Println(err)
	// Output:
	// 0.65 in <nil>
	// adjusted fat: -0.1 in: out of range; allowed: 0 in to 3 in
}

func ExampleMeasures() {
	m := grade.Measures{Fat: grade.Inches(0.5), Ribeye: grade.SquareInches(12.4), KPH: grade.Percent(2.5), Weight: grade.Pounds(760)}
	y, err := m.Yield()
	fmt.Println(y, y.Grade(), err)
	// Output:
	// 3.17 3 <nil>
}

func ExampleMeasures_Yield() {
	// Borderline of yield grades 2 and 3 at 500 lb in the federal text
	// (cfr-post1975-p30): the exact value lies just under 3.
	m := grade.Measures{Fat: grade.Inches(0.5), Ribeye: grade.SquareInches(10.5), KPH: grade.Percent(3.5), Weight: grade.Pounds(500)}
	y, err := m.Yield()
	fmt.Println(y, y.Grade(), err)
	// An impossible measure is an error that names it, never a grade.
	m.Fat = grade.Inches(-0.1)
	_, err = m.Yield()
	fmt.Println(err)
	// Output:
	// 2.99 2 <nil>
	// fat: -0.1 in: out of range; allowed: 0 in to 3 in
}

func ExampleMeasures_Check() {
	m := exampleCarcass().Measures
	fmt.Println(m.Check())
	m.Weight = grade.Weight{}
	fmt.Println(m.Check())
	m.Weight = grade.Pounds(math.NaN())
	fmt.Println(m.Check())
	// Output:
	// <nil>
	// weight: missing; allowed: 100 lb to 1800 lb
	// weight: not a number: out of range; allowed: 100 lb to 1800 lb
}

func ExampleMeasures_Terms() {
	t, err := exampleCarcass().Measures.Terms()
	fmt.Println(t.Start, t.Fat, t.KPH, t.Weight, t.Ribeye, err)
	// Output:
	// 2.5 1.25 0.5 2.888 -3.968 <nil>
}

func ExampleTerms() {
	t, _ := exampleCarcass().Measures.Terms()
	y, _ := exampleCarcass().Measures.Yield()
	fmt.Println(t.Sum(), t.Sum() == y)
	// Output:
	// 3.17 true
}

func ExampleTerms_Sub() {
	// Why does the second carcass have the better yield, and by how much?
	one, _ := exampleCarcass().Measures.Terms()
	m := exampleCarcass().Measures
	m.Fat, m.Ribeye = grade.Inches(0.3), grade.SquareInches(13)
	two, _ := m.Terms()
	d := one.Sub(two)
	fmt.Println("fat", d.Fat, "ribeye", d.Ribeye, "together", d.Sum())
	// Output:
	// fat 0.5 ribeye 0.192 together 0.692
}

func ExampleMeasures_Shortcut() {
	// A federal borderline carcass (cfr-post1975-p30) by the equation and by the
	// quick method, which puts it one grade worse.
	m := grade.Measures{Fat: grade.Inches(0.5), Ribeye: grade.SquareInches(10.5), KPH: grade.Percent(3.5), Weight: grade.Pounds(500)}
	y, _ := m.Yield()
	q, err := m.Shortcut()
	fmt.Println(y, q.Total, err)
	// Output:
	// 2.99 3.04 <nil>
}

func ExampleShortcut() {
	q, err := exampleCarcass().Measures.Shortcut()
	fmt.Println("preliminary", q.Preliminary)
	fmt.Println("required ribeye", q.Required, "so", q.Ribeye)
	fmt.Println("KPH", q.KPH)
	fmt.Println("total", q.Total, err)
	// Output:
	// preliminary 3.25
	// required ribeye 12.9 sq in so 0.15
	// KPH -0.2
	// total 3.2 <nil>
}

func ExampleShortcutYield() {
	q := grade.Inches(0.8).Preliminary()
	fmt.Println(q, q.Decimal())
	// Output:
	// 4 4
}

func ExampleParseShortcutYield() {
	fmt.Println(grade.ParseShortcutYield("3.25"))
	// Output:
	// 3.25 <nil>
}

func ExampleThickness_Preliminary() {
	fmt.Println(grade.Inches(0).Preliminary(), grade.Inches(0.4).Preliminary(), grade.Inches(0.62).Preliminary())
	// Output:
	// 2 3 3.55
}

func ExampleFatForPreliminary() {
	p, _ := grade.ParseShortcutYield("3.25")
	fmt.Println(grade.FatForPreliminary(p))
	_, err := grade.FatForPreliminary(grade.ShortcutYieldUnits(p.Units() - 200000000))
	fmt.Println(err)
	// Output:
	// 0.5 in <nil>
	// preliminary yield grade: 1.25: out of range; allowed: 2 to 9.5
}

func ExampleWeight_RequiredRibeye() {
	fmt.Println(grade.Pounds(600).RequiredRibeye())
	fmt.Println(grade.Pounds(780).RequiredRibeye())
	fmt.Println(grade.Pounds(99).RequiredRibeye())
	// Output:
	// 11 sq in <nil>
	// 13.1 sq in <nil>
	// not taken weight: 99 lb: out of range; allowed: 100 lb to 1800 lb
}

func ExampleMeasures_Unusual() {
	m := exampleCarcass().Measures
	fmt.Println(len(m.Unusual()))
	m.KPH, m.Weight = grade.Percent(7), grade.Pounds(1350)
	for _, note := range m.Unusual() {
		fmt.Println(note)
	}
	// Output:
	// 0
	// KPH 7% is outside the usual 0% to 6%
	// weight 1350 lb is outside the usual 400 lb to 1300 lb
}

func ExampleMeasures_RetailCuts() {
	s, err := exampleCarcass().Measures.RetailCuts()
	fmt.Println(s, err)
	// Output:
	// 49.403 <nil>
}

func ExampleRetailTable_Class() {
	// The published tables disagree in the first decimal.
	share := decimal.RequireFromString("50.0")
	for _, t := range []grade.RetailTable{grade.RetailGuide, grade.RetailSlides, grade.RetailHandout} {
		class, ok := t.Class(share)
		fmt.Println(t, class, ok)
	}
	// Output:
	// asweb-121 3 true
	// aged-yield-slides 2 true
	// uni-slaughter-handout 3 true
}

func ExampleRetailTable() {
	var t grade.RetailTable
	fmt.Println(grade.RetailGuide, t)
	fmt.Println(t.UnmarshalText([]byte("uni slaughter handout")), t)
	// Output:
	// asweb-121 unset
	// <nil> uni-slaughter-handout
}

func ExampleYield() {
	y, _ := exampleCarcass().Measures.Yield()
	fmt.Println(y, y.Compare(grade.Grades(3)) < 0)
	// Output:
	// 3.17 false
}

func ExampleYield_Grade() {
	for _, s := range []string{"3.9", "2.99999999", "-0.5", "6.2"} {
		y, _ := grade.ParseYield(s)
		fmt.Println(y, "is grade", y.Grade())
	}
	// Output:
	// 3.9 is grade 3
	// 2.99999999 is grade 2
	// -0.5 is grade 1
	// 6.2 is grade 5
}

func ExampleYield_Round() {
	y, _ := grade.ParseYield("2.145")
	for _, r := range []grade.Rounding{grade.Down, grade.HalfUp, grade.HalfEven} {
		hundredth, err := y.Round(r, 2)
		fmt.Println(r, hundredth, err)
	}
	// Output:
	// down 2.14 <nil>
	// half up 2.15 <nil>
	// half even 2.14 <nil>
}

func ExampleYield_Decimal() {
	y, _ := exampleCarcass().Measures.Yield()
	fmt.Println(y.Decimal().Mul(decimal.NewFromInt(2)))
	// Output:
	// 6.34
}

func ExampleParseYield() {
	fmt.Println(grade.ParseYield("2.952"))
	fmt.Println(grade.ParseYield("2.952 lb"))
	// Output:
	// 2.952 <nil>
	// unset yield: "2.952 lb": bad syntax; allowed: a number with at most 8 places
}

func ExampleRounding() {
	var r grade.Rounding
	fmt.Println(grade.HalfEven, r.UnmarshalText([]byte("Half up")), r)
	// The zero Rounding is not set and is refused.
	_, err := grade.Grades(1).Round(0, 1)
	fmt.Println(err)
	// Output:
	// half even <nil> half up
	// rounding: missing; allowed: down, half up, half even
}

func ExampleThickness() {
	fat := grade.Inches(0.6)
	fmt.Println(fat, fat.IsValid(), fat == grade.Inches(0.6))
	fmt.Println(grade.Inches(math.Inf(1)).IsValid())
	// Output:
	// 0.6 in true true
	// false
}

func ExampleInches() {
	// The float is snapped to 0.0001 in once.
	fmt.Println(grade.ThicknessUnits(grade.Inches(0.1).Units()+grade.Inches(0.2).Units()) == grade.Inches(0.3))
	fmt.Println(grade.Inches(math.NaN()))
	// Output:
	// true
	// not a number
}

func ExampleThickness_Inches() {
	fmt.Println(grade.Millimeters(25.4).Inches())
	// Output:
	// 1
}

func ExampleMillimeters() {
	fmt.Println(grade.Millimeters(11))
	// Output:
	// 0.4331 in
}

func ExampleThickness_Millimeters() {
	fmt.Println(grade.Inches(0.6).Millimeters())
	// Output:
	// 15.24
}

// A decimal comes in by its text. One with more places than the grid is refused, or
// rounded the way that is named.
func ExampleParseThickness_decimal() {
	d := decimal.RequireFromString("0.60001")
	fmt.Println(grade.ParseThickness(d.String() + " in"))
	fmt.Println(grade.ParseThickness(d.String()+" in", grade.HalfUp))
	// Output:
	// not taken thickness: "0.60001 in": too many places; allowed: numbers up to 214,748 with at most 4 places
	// 0.6 in <nil>
}

func ExampleMillimetersDecimal() {
	fmt.Println(grade.MillimetersDecimal(decimal.RequireFromString("12.7")))
	// Output:
	// 0.5 in <nil>
}

func ExampleParseThickness() {
	for _, s := range []string{"0.45", "0.45 in", "11mm", "1.1 cm", "0.45 lb", "0,45"} {
		fmt.Println(grade.ParseThickness(s))
	}
	// Output:
	// 0.45 in <nil>
	// 0.45 in <nil>
	// 0.4331 in <nil>
	// 0.4331 in <nil>
	// not taken thickness: "0.45 lb": unknown at "lb"; allowed: a number with at most 4 places, unit in or mm or cm
	// not taken thickness: "0,45": bad syntax; allowed: a number with at most 4 places, unit in or mm or cm
}

func ExampleArea() {
	fmt.Println(grade.SquareInches(12.4), grade.SquareInches(0).IsValid(), grade.SquareInches(math.NaN()).IsValid())
	// Output:
	// 12.4 sq in true false
}

func ExampleSquareInches() {
	fmt.Println(grade.SquareInches(12.4))
	// Output:
	// 12.4 sq in
}

func ExampleSquareCentimeters() {
	fmt.Println(grade.SquareCentimeters(80))
	// Output:
	// 12.4 sq in
}

func ExampleSquareCentimetersDecimal() {
	fmt.Println(grade.SquareCentimetersDecimal(decimal.RequireFromString("6.4516")))
	// Output:
	// 1 sq in <nil>
}

func ExampleArea_SquareInches() {
	fmt.Println(grade.SquareCentimeters(80).SquareInches())
	// Output:
	// 12.4
}

func ExampleArea_SquareCentimeters() {
	fmt.Println(grade.SquareInches(12.4).SquareCentimeters())
	// Output:
	// 79.99984
}

func ExampleParseArea() {
	fmt.Println(grade.ParseArea("12.4 sq in"))
	fmt.Println(grade.ParseArea("80 sq cm"))
	// Output:
	// 12.4 sq in <nil>
	// 12.4 sq in <nil>
}

func ExampleShare() {
	kph := grade.Percent(2.5)
	fmt.Println(kph, kph == grade.Percent(2.5), kph.IsValid())
	// Output:
	// 2.5% true true
}

func ExamplePercent() {
	fmt.Println(grade.Percent(2.5))
	// Output:
	// 2.5%
}

func ExampleShare_Percent() {
	fmt.Println(grade.Percent(2.5).Percent())
	// Output:
	// 2.5
}

func ExampleParseShare() {
	fmt.Println(grade.ParseShare("2.5%"))
	fmt.Println(grade.ParseShare("2.5"))
	// Output:
	// 2.5% <nil>
	// 2.5% <nil>
}

func ExampleWeight() {
	w := grade.Pounds(842)
	fmt.Println(w, w.IsValid(), int(w.Units()/10000))
	// Output:
	// 842 lb true 842
}

func ExamplePounds() {
	fmt.Println(grade.Pounds(842))
	// Output:
	// 842 lb
}

func ExampleKilograms() {
	fmt.Println(grade.Kilograms(380))
	// Output:
	// 837.7566 lb
}

func ExampleKilogramsDecimal() {
	fmt.Println(grade.KilogramsDecimal(decimal.RequireFromString("380")))
	// Output:
	// 837.7566 lb <nil>
}

func ExampleWeight_Pounds() {
	fmt.Println(grade.Kilograms(380).Pounds())
	// Output:
	// 837.7566
}

func ExampleWeight_Kilograms() {
	fmt.Println(grade.Pounds(842).Kilograms())
	// Output:
	// 381.92477554
}

func ExampleParseWeight() {
	fmt.Println(grade.ParseWeight("842 lb"))
	fmt.Println(grade.ParseWeight("380 kg"))
	fmt.Println(grade.ParseWeight("842.00001"))
	// Output:
	// 842 lb <nil>
	// 837.7566 lb <nil>
	// not taken weight: "842.00001": too many places; allowed: numbers up to 214,748 with at most 4 places
}

func ExampleDegree() {
	fmt.Println(grade.SlightlyAbundant, grade.SlightlyAbundant.IsValid())
	// Output:
	// Slightly Abundant true
}

func ExampleDegree_At() {
	fmt.Println(grade.Small.At(40), grade.Small.At(100) == grade.Modest.At(0))
	m := grade.Small.At(140)
	fmt.Println(m, m.IsValid())
	// Output:
	// Sm40 true
	// Sm(140) false
}

func ExampleDegrees() {
	for d := range grade.Degrees() {
		fmt.Println(d, d.At(50))
	}
	// Output:
	// Devoid Devoid50
	// Practically Devoid PD50
	// Traces Tr50
	// Slight Sl50
	// Small Sm50
	// Modest Mt50
	// Moderate Md50
	// Slightly Abundant SlAb50
	// Moderately Abundant MAb50
	// Abundant Ab50
}

func ExampleParseDegree() {
	fmt.Println(grade.ParseDegree("Modest"))
	fmt.Println(grade.ParseDegree("Mt"))
	// Output:
	// Modest <nil>
	// unset degree of marbling: "Mt": unknown; allowed: Devoid, Practically Devoid, Traces, Slight, Small, Modest, Moderate, Slightly Abundant, Moderately Abundant, Abundant
}

func ExampleMarbling() {
	// Mt is Modest and Md is Moderate.
	fmt.Println(grade.Modest.At(40), grade.Moderate.At(40), grade.Modest.At(40) < grade.Moderate.At(40))
	var unset grade.Marbling
	fmt.Println(unset, unset.IsValid())
	// Output:
	// Mt40 Md40 true
	// unset false
}

func ExampleMarbling_Degree() {
	m := grade.MustParseMarbling("SlAb05")
	fmt.Println(m.Degree(), m.Points())
	// Output:
	// Slightly Abundant 5
}

func ExampleMarbling_Points() {
	fmt.Println(grade.Small.At(40).Points(), grade.Abundant.At(100).Points())
	// Output:
	// 40 100
}

func ExampleMarbling_Compare() {
	ms := []grade.Marbling{grade.Modest.At(0), grade.Slight.At(90), grade.Small.At(10)}
	slices.SortFunc(ms, grade.Marbling.Compare)
	fmt.Println(ms)
	// Output:
	// [Sl90 Sm10 Mt00]
}

func ExampleMarbling_Check() {
	fmt.Println(grade.Small.At(140).Check("exhibit 2: marbling"))
	fmt.Println(grade.Small.At(40).Check("exhibit 2: marbling"))
	// Output:
	// exhibit 2: marbling: Sm(140): out of range; allowed: Devoid00 to Ab100
	// <nil>
}

func ExampleMarbling_Number() {
	m := grade.Small.At(40)
	fmt.Println(m.Number(grade.Slight300))
	fmt.Println(m.Number(grade.Slight400))
	fmt.Println(m.Number(0))
	// Output:
	// 440 true
	// 540 true
	// 0 false
}

func ExampleParseMarbling() {
	for _, s := range []string{"Md40", "Moderate 40", "MdAb40", "Sm100", "Sm4", "Xx40"} {
		fmt.Println(grade.ParseMarbling(s))
	}
	// Output:
	// Md40 <nil>
	// Md40 <nil>
	// MAb40 <nil>
	// Mt00 <nil>
	// unset marbling: "Sm4": bad syntax at "4"; allowed: two digits after the name, Devoid00 to Ab100
	// unset marbling: "Xx40": unknown at "Xx"; allowed: Devoid00 to Ab100
}

func ExampleMustParseMarbling() {
	fmt.Println(grade.MustParseMarbling("Sm40"))
	// Output:
	// Sm40
}

func ExampleMarblingScale() {
	fmt.Println(grade.Slight300)
	// Output:
	// Slight00 = 300
}

func ExampleMarblingScale_Marbling() {
	// A bare 450 means two things, so the scale is named.
	fmt.Println(grade.Slight300.Marbling(450))
	fmt.Println(grade.Slight400.Marbling(450))
	fmt.Println(grade.Slight300.Marbling(1200))
	// Output:
	// Sm50 <nil>
	// Sl50 <nil>
	// unset marbling number: 1200: out of range; allowed: 0 to 1000 on the scale with Slight00 = 300
}

func ExampleGrade() {
	fmt.Println(grade.Choice, grade.Choice > grade.Select, grade.Choice.IsValid())
	var unset grade.Grade
	fmt.Println(unset, unset.IsValid())
	// Output:
	// Choice true true
	// unset false
}

func ExampleGrade_Part() {
	fmt.Println(grade.Choice.Part(grade.Low))
	fmt.Println(grade.Utility.Part(grade.Whole))
	fmt.Println(grade.NoGrade.Part(grade.High)) // there is no such quality
	// Output:
	// Low Choice
	// Utility
	// unset
}

func ExampleParseGrade() {
	fmt.Println(grade.ParseGrade("Select"))
	fmt.Println(grade.ParseGrade("ch"))
	fmt.Println(grade.ParseGrade("C"))
	// Output:
	// Select <nil>
	// Choice <nil>
	// unset grade: "C": unknown; allowed: No grade, Canner, Cutter, Utility, Commercial, Standard, Good, Select, Choice, Prime
}

func ExamplePart() {
	fmt.Println(grade.Whole, grade.Low, grade.Average, grade.High)
	// Output:
	// whole Low Average High
}

func ExampleQuality() {
	q := grade.Choice.Part(grade.Low)
	fmt.Println(q, q > grade.Select.Part(grade.High), q.IsValid())
	// Output:
	// Low Choice true true
}

func ExampleQuality_Grade() {
	q, _ := grade.ParseQuality("High Select")
	fmt.Println(q.Grade(), q.Part())
	// Output:
	// Select High
}

func ExampleQuality_Part() {
	fmt.Println(grade.Choice.Part(grade.Average).Part())
	// Output:
	// Average
}

func ExampleQuality_Compare() {
	qs := []grade.Quality{grade.Prime.Part(grade.Low), grade.Utility.Part(grade.Whole), grade.Choice.Part(grade.High)}
	slices.SortFunc(qs, func(a, b grade.Quality) int { return b.Compare(a) }) // best first
	for _, q := range qs {
		fmt.Println(q)
	}
	// Output:
	// Low Prime
	// High Choice
	// Utility
}

func ExampleQuality_Tier() {
	for _, s := range []string{"Average Choice", "Low Choice", "High Select", "Utility"} {
		q, _ := grade.ParseQuality(s)
		fmt.Println(q, "is", q.Tier())
	}
	// Output:
	// Average Choice is top choice
	// Low Choice is low choice
	// High Select is select
	// Utility is below standard
}

func ExampleQualities() {
	best := grade.Quality(0)
	n := 0
	for q := range grade.Qualities() {
		best, n = q, n+1
	}
	fmt.Println(n, best)
	// Output:
	// 37 High Prime
}

func ExampleParseQuality() {
	fmt.Println(grade.ParseQuality("Low Choice"))
	fmt.Println(grade.ParseQuality("Choice-"))
	_, err := grade.ParseQuality("Upper Choice")
	fmt.Println(errors.Is(err, grade.ErrUnknown))
	// Output:
	// Low Choice <nil>
	// Low Choice <nil>
	// true
}

func ExampleTier() {
	fmt.Println(grade.TopChoice, grade.TopChoice > grade.LowChoice, grade.Tier(9).IsValid())
	// Output:
	// top choice true false
}

func ExampleParseTier() {
	fmt.Println(grade.ParseTier("top choice"))
	// Output:
	// top choice <nil>
}

func ExampleEdition() {
	c := exampleCarcass()
	c.Maturity = maturity.Evidence{Skeletal: maturity.B.At(20), Lean: maturity.B.At(20)}
	for e := range grade.Editions() {
		q, err := e.Quality(c)
		fmt.Println(e, q, err)
	}
	// Output:
	// 1975 Low Choice <nil>
	// 1987 Low Choice <nil>
	// 1997 High Standard <nil>
	// 2016 High Standard <nil>
	// 2017 High Standard <nil>
}

func ExampleEdition_Assess() {
	a, err := grade.Current.Assess(exampleCarcass())
	fmt.Println(a.Maturity, a.Quality, a.Yield, a.Yield.Grade(), err)
	// Output:
	// A50 Low Choice 3.17 3 <nil>
}

func ExampleEdition_Quality() {
	// The measures are not looked at.
	c := exampleCarcass()
	c.Measures = grade.Measures{}
	fmt.Println(grade.Current.Quality(c))
	// Output:
	// Low Choice <nil>
}

func ExampleRules_Overall_teeth() {
	ev := maturity.Evidence{Skeletal: maturity.B.At(20), Lean: maturity.B.At(20), Teeth: maturity.Incisors(2)}
	fmt.Println(grade.Rules{Edition: grade.Edition2016}.Overall(ev))
	fmt.Println(grade.Rules{Edition: grade.Edition2017}.Overall(ev))
	// Output:
	// B20 <nil>
	// A99 <nil>
}

func ExampleEdition_From() {
	for e := range grade.Editions() {
		day, source := e.From()
		fmt.Println(e, "from", day.Format(time.DateOnly), source)
	}
	// Output:
	// 1975 from 1976-02-23 from memory
	// 1987 from 1987-11-23 published: news-1987-09-28, news-1987-12-09
	// 1997 from 1997-01-31 official: fr-1996-05-01
	// 2016 from 2016-03-01 official: fr-2016-03-01
	// 2017 from 2017-12-18 official: fr-2017-12-06
}

func ExampleEdition_ByAge() {
	fmt.Println(grade.Edition2016.ByAge(), grade.Edition2017.ByAge())
	// Output:
	// false true
}

func ExampleEdition_IsValid() {
	fmt.Println(grade.Current.IsValid(), grade.Edition(0).IsValid())
	// Output:
	// true false
}

func ExampleEdition_Lines() {
	for l := range grade.Edition1997.Lines() {
		if l.Group == maturity.B && l.Grade == grade.Choice {
			fmt.Println(l.Part, "from", l.At, "at B00 and", l.On(60), "at B60;", l.Cite)
		}
	}
	// Output:
	// Low from Mt00 at B00 and Mt00 at B60; published: unl-1997-rbcs15, ext-tamu-maturity-2018
	// Average from Mt00 at B00 and Mt60 at B60; derived: reprint-marbling-grades
	// High from Md00 at B00 and Md60 at B60; derived: reprint-marbling-grades
}

func ExampleEditions() {
	for e := range grade.Editions() {
		fmt.Print(e, " ")
	}
	// Output:
	// 1975 1987 1997 2016 2017
}

func ExampleEditionOn() {
	fmt.Println(grade.EditionOn(time.Date(1990, time.June, 1, 0, 0, 0, 0, time.UTC)))
	fmt.Println(grade.EditionOn(time.Date(1960, time.June, 1, 0, 0, 0, 0, time.UTC)))
	// Output:
	// 1987 <nil>
	// unset date: 1960-06-01: out of range; allowed: 1976-02-23 or later
}

func ExampleParseEdition() {
	fmt.Println(grade.ParseEdition("1997"))
	fmt.Println(grade.ParseEdition("1998"))
	// Output:
	// 1997 <nil>
	// unset edition: "1998": unknown; allowed: 1975, 1987, 1997, 2016, 2017
}

func ExampleLine() {
	for l := range grade.Current.Lines() {
		fmt.Println(l.Group, l.Grade, l.Part, l.At, l.Rises, l.Firmness)
		break
	}
	// Output:
	// A Prime Low SlAb00 false moderately firm
}

func ExampleLine_On() {
	for l := range grade.Edition1987.Lines() {
		if l.Group == maturity.B && l.Grade == grade.Select && l.Part == grade.Low {
			fmt.Println(l.On(0), l.On(50), l.On(100))
		}
	}
	// Output:
	// Sl00 Sl50 Sm00
}

func ExampleRules() {
	rules := grade.Rules{Edition: grade.Current, Maturity: maturity.Balancing{Tens: maturity.TensTowardBone}}
	a, err := rules.Assess(exampleCarcass())
	fmt.Println(a.Maturity, a.Quality, err)
	// The zero Rules have no edition and are refused.
	_, err = grade.Rules{}.Assess(exampleCarcass())
	fmt.Println(err)
	// Output:
	// A50 Low Choice <nil>
	// edition: missing; allowed: 1975, 1987, 1997, 2016, 2017
}

func ExampleRules_Assess() {
	c := exampleCarcass()
	c.Measures.Ribeye = grade.SquareInches(-12.4)
	_, err := grade.Rules{Edition: grade.Current}.Assess(c)
	fmt.Println(err)
	// Output:
	// ribeye: -12.4 sq in: out of range; allowed: 1 sq in to 25 sq in
}

func ExampleRules_Quality() {
	c := exampleCarcass()
	c.Lean.Dark = grade.DarkFull
	fmt.Println(grade.Rules{Edition: grade.Current}.Quality(c))
	// Output:
	// Low Select <nil>
}

func ExampleRules_Overall() {
	rules := grade.Rules{Edition: grade.Current}
	fmt.Println(rules.Overall(maturity.Evidence{Skeletal: maturity.A.At(90), Lean: maturity.A.At(30)}))
	// Output:
	// A70 <nil>
}

func ExampleAssessment() {
	a, err := grade.Current.Assess(exampleCarcass())
	fmt.Println(a.Rules.Edition, a.Maturity, a.Quality, a.Yield, err)
	fmt.Println(a.Carcass == exampleCarcass())
	// Output:
	// 2017 A50 Low Choice 3.17 <nil>
	// true
}

func ExampleAssessment_Steps() {
	c := exampleCarcass()
	c.Lean.Dark = grade.DarkThird
	a, _ := grade.Current.Assess(c)
	for _, s := range a.Steps() {
		fmt.Printf("%s: %s\n", s.Name, s.Result)
	}
	// Output:
	// overall maturity: A50
	// sex class: all grades
	// marbling: Low Choice
	// firmness: Low Choice
	// dark cutter: High Select
	// fat: 3.25
	// ribeye for the weight: 12.9 sq in expected, -0.5 sq in
	// equation: start: +2.5
	// equation: fat: +1.25
	// equation: kidney, pelvic and heart fat: +0.5
	// equation: hot carcass weight: +2.888
	// equation: ribeye: -3.968
	// yield: 3.17
	// yield grade: 3
}

func ExampleSex() {
	c := exampleCarcass()
	c.Marbling = grade.Abundant.At(20)
	for s := range grade.Sexes() {
		c.Sex = s
		q, err := grade.Current.Quality(c)
		fmt.Println(s, q, err, s.IsValid())
	}
	// Output:
	// steer High Prime <nil> true
	// heifer High Prime <nil> true
	// cow High Choice <nil> true
	// bullock High Prime <nil> true
	// bull No grade <nil> true
}

func ExampleSexes() {
	for s := range grade.Sexes() {
		fmt.Print(s, " ")
	}
	// Output:
	// steer heifer cow bullock bull
}

func ExampleParseSex() {
	fmt.Println(grade.ParseSex("heifer"))
	fmt.Println(grade.ParseSex("ox"))
	// Output:
	// heifer <nil>
	// unset sex class: "ox": unknown; allowed: steer, heifer, cow, bullock, bull
}

func ExampleLean() {
	c := exampleCarcass()
	c.Lean = grade.Lean{Firmness: grade.ModeratelySoft}
	fmt.Println(grade.Current.Quality(c)) // too soft for Choice
	c.Lean = grade.Lean{Dark: grade.DarkTwoThirds}
	fmt.Println(grade.Current.Quality(c))
	// Output:
	// High Select <nil>
	// Low Select <nil>
}

func ExampleFirmness() {
	fmt.Println(grade.Firm, grade.Firm > grade.Soft, grade.Firm.IsValid())
	// The zero Firmness was not looked at.
	fmt.Println(grade.Firmness(0), grade.Firmness(0).IsValid())
	// Output:
	// firm true true
	// unset false
}

func ExampleParseFirmness() {
	fmt.Println(grade.ParseFirmness("slightly soft"))
	// Output:
	// slightly soft <nil>
}

func ExampleDarkCut() {
	c := exampleCarcass()
	for _, d := range []grade.DarkCut{0, grade.DarkThird, grade.DarkTwoThirds, grade.DarkFull} {
		c.Lean.Dark = d
		q, err := grade.Current.Quality(c)
		fmt.Println(d, d.IsValid(), q, err)
	}
	// Output:
	// none false Low Choice <nil>
	// one third true High Select <nil>
	// two thirds true Low Select <nil>
	// full true Low Select <nil>
}

func ExampleParseDarkCut() {
	fmt.Println(grade.ParseDarkCut("two thirds"))
	fmt.Println(grade.ParseDarkCut("none"))
	// Output:
	// two thirds <nil>
	// none <nil>
}

func ExampleFieldError() {
	c := exampleCarcass()
	c.Measures.KPH = grade.Percent(15)
	_, err := grade.Current.Assess(c)
	var fe *grade.FieldError
	if errors.As(err, &fe) {
		fmt.Println(fe.Field, "|", fe.Value, "|", fe.Allowed)
	}
	fmt.Println(errors.Is(err, grade.ErrRange))
	// Output:
	// KPH | 15% | 0% to 10%
	// true
}

func ExampleParseError() {
	_, err := grade.ParseWeight("842 stone")
	var pe *grade.ParseError
	if errors.As(err, &pe) {
		fmt.Println(pe.Kind, "|", pe.Input, "|", pe.Part, "|", pe.Allowed)
	}
	fmt.Println(errors.Is(err, grade.ErrUnknown))
	// Output:
	// weight | 842 stone | stone | a number with at most 4 places, unit lb or kg
	// true
}

func ExampleOnLine() {
	// How much ribeye would make this carcass a yield grade 2?
	o, err := exampleCarcass().Measures.Solve(grade.TraitRibeye, grade.Grades(3))
	fmt.Println(o, err)
	under, _ := o.Under.Yield()
	reach, _ := o.Reach.Yield()
	fmt.Println(o.Under.Ribeye, under.Grade(), "and", o.Reach.Ribeye, reach.Grade())
	// Output:
	// ribeye 12.93125 sq in for 3 <nil>
	// 12.9313 sq in 2 and 12.9312 sq in 3
}

func ExampleYieldLine() {
	y, _ := grade.ParseYield("3.17")
	better, _ := y.Better()
	worse, _ := y.Worse()
	fmt.Println(better.Grade, better.Away, worse.Grade, worse.Away)
	// Output:
	// 2 -0.17 4 0.83
}

func ExampleTolerances() {
	// A person who reads fat to 0.05 in and ribeye to half a square inch.
	t := grade.Tolerances{Fat: grade.Inches(0.05), Ribeye: grade.SquareInches(0.5)}
	lean, fat, err := t.Span(exampleCarcass().Measures)
	fmt.Println(lean.Ribeye, fat.Ribeye, err)
	// Output:
	// 12.9 sq in 11.9 sq in <nil>
}

func ExamplePossible() {
	e, err := grade.Rules{Edition: grade.Current}.Estimate(exampleCarcass(), grade.Tolerances{Fat: grade.Inches(0.1)})
	fmt.Println(e.Least, e.Most, e.Grades, err)
	// Output:
	// 2.92 3.42 [2 3] <nil>
}

func ExampleQualityRange() {
	e, _ := grade.Rules{Edition: grade.Current}.Estimate(exampleCarcass(), grade.Tolerances{Marbling: 60})
	for _, q := range e.Qualities {
		fmt.Println(q.Quality, q.Least, q.Most)
	}
	// Output:
	// Average Choice Mt00 Mt00
	// Low Choice Sm00 Sm99
	// High Select Sl80 Sl99
}

func ExampleQualityChange() {
	changes, _ := grade.Rules{Edition: grade.Current}.QualityChanges(exampleCarcass())
	for _, c := range changes {
		if c.Points > 0 {
			fmt.Println(c.Points, c.At, c.Quality)
			break
		}
	}
	// Output:
	// 60 Mt00 Average Choice
}
