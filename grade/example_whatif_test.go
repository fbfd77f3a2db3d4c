package grade_test

import (
	"fmt"

	"example.com/ribface/grade"
	"example.com/ribface/maturity"
)

// An invented steer: Low Choice, yield 3.7316.
var whatIfSteer = grade.Carcass{
	Sex:      grade.Steer,
	Maturity: maturity.Evidence{Skeletal: maturity.A.At(60), Lean: maturity.A.At(50)},
	Marbling: grade.Small.At(40),
	Measures: grade.Measures{Fat: grade.Inches(0.6), Ribeye: grade.SquareInches(12.4), KPH: grade.Percent(2.5), Weight: grade.Pounds(842)},
}

func ExampleMeasures_Solve() {
	for _, f := range []grade.Trait{grade.TraitFat, grade.TraitRibeye, grade.TraitKPH, grade.TraitWeight} {
		o, err := whatIfSteer.Measures.Solve(f, grade.Grades(4))
		fmt.Println(o, err)
	}
	o, _ := whatIfSteer.Measures.Solve(grade.TraitWeight, grade.Grades(4))
	fmt.Println("3 up to", o.Under.Weight, "and 4 from", o.Reach.Weight)
	_, err := whatIfSteer.Measures.Solve(grade.TraitKPH, grade.Grades(3))
	fmt.Println(err)
	// Output:
	// fat 0.70736 in for 4 <nil>
	// ribeye 11.56125 sq in for 4 <nil>
	// KPH 3.842% for 4 <nil>
	// weight 17340/19 lb for 4 <nil>
	// 3 up to 912.6315 lb and 4 from 912.6316 lb
	// KPH: -1.158% for a yield of 3: out of range; allowed: 0% to 10%
}

func ExampleOnLine_Exact() {
	fat, _ := whatIfSteer.Measures.Solve(grade.TraitFat, grade.Grades(3))
	fmt.Println(fat.Exact())
	weight, _ := whatIfSteer.Measures.Solve(grade.TraitWeight, grade.Grades(4))
	fmt.Println(weight.Exact())
	// Output:
	// 0.30736 true
	// 912.631578947368 false
}

func ExampleOnLine_String() {
	o, err := whatIfSteer.Measures.Solve(grade.TraitRibeye, grade.Grades(3))
	fmt.Println(o, err)
	// Output: ribeye 14.68625 sq in for 3 <nil>
}

func ExampleYield_Better() {
	y, _ := whatIfSteer.Measures.Yield()
	line, ok := y.Better()
	fmt.Println(y, "is", line.Away, "from grade", line.Grade, ok)
	_, ok = grade.Grades(1).Better()
	fmt.Println(ok)
	// Output:
	// 3.7316 is -0.7316 from grade 2 true
	// false
}

func ExampleYield_Worse() {
	y, _ := whatIfSteer.Measures.Yield()
	line, ok := y.Worse()
	fmt.Println(y, "is", line.Away, "from grade", line.Grade, ok)
	// Output: 3.7316 is 0.2684 from grade 4 true
}

func ExampleRules_QualityChanges() {
	changes, err := grade.Rules{Edition: grade.Current}.QualityChanges(whatIfSteer)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, c := range changes {
		fmt.Printf("%+d points, %s: %s\n", c.Points, c.At, c.Quality)
	}
	// Output:
	// -341 points, Devoid99: Utility
	// -274 points, PD66: Low Standard
	// -207 points, Tr33: Average Standard
	// -141 points, Tr99: High Standard
	// -91 points, Sl49: Low Select
	// -41 points, Sl99: High Select
	// +60 points, Mt00: Average Choice
	// +160 points, Md00: High Choice
	// +260 points, SlAb00: Low Prime
	// +360 points, MAb00: Average Prime
	// +460 points, Ab00: High Prime
}

func ExampleRules_Estimate() {
	e, err := grade.Rules{Edition: grade.Current}.Estimate(whatIfSteer, grade.Tolerances{
		Fat: grade.Inches(0.05), Ribeye: grade.SquareInches(0.5), KPH: grade.Percent(0.5), Marbling: 50, Maturity: 10,
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println("yield", e.Least, "to", e.Most, "so grade", e.Grades)
	for _, q := range e.Qualities {
		fmt.Println(q.Quality, "with", q.Least, "to", q.Most)
	}
	// Output:
	// yield 3.3466 to 4.1166 so grade [3 4]
	// Low Choice with Sm00 to Sm90
	// High Select with Sl90 to Sl99
}

func ExampleTolerances_Span() {
	lean, fat, err := grade.Tolerances{Fat: grade.Inches(0.1)}.Span(whatIfSteer.Measures)
	fmt.Println(lean.Fat, fat.Fat, err)
	// Output: 0.5 in 0.7 in <nil>
}

func ExampleTolerances_Check() {
	fmt.Println(grade.Tolerances{Marbling: -5}.Check())
	// Output: tolerance of marbling: -5: out of range; allowed: 0 to 1000 points
}

func ExampleTrait() {
	var t grade.Trait
	err := t.UnmarshalText([]byte("quality-grade"))
	fmt.Println(t, t == grade.TraitQuality, err)
	b, err := grade.TraitKPH.MarshalText()
	fmt.Println(string(b), err)
	fmt.Println(t.UnmarshalText([]byte("color of the hide")) != nil, t)
	// Output:
	// quality grade true <nil>
	// KPH <nil>
	// true quality grade
}
