package grade_test

import (
	"errors"
	"fmt"

	"example.com/ribface/grade"
)

// Whole units are for exact sums and for storage: 0.0001 of the customary unit, and
// 1e-8 of a grade.
func ExampleYieldUnits() {
	m := grade.Measures{Fat: grade.ThicknessUnits(6_000), Ribeye: grade.AreaUnits(119_000), KPH: grade.ShareUnits(15_000), Weight: grade.WeightUnits(6_600_000)}
	fmt.Println(m.Fat, m.Ribeye, m.KPH, m.Weight)
	y, err := m.Yield()
	fmt.Println(y, y.Units(), y == grade.YieldUnits(3*grade.OneGrade), err)
	fmt.Println(grade.ShortcutGrades(2.16).Units())
	// Output:
	// 0.6 in 11.9 sq in 1.5% 660 lb
	// 3 300000000 true <nil>
	// 216000000
}

func ExampleCarcassLimits() {
	limits := grade.CarcassLimits()
	weights := func(l grade.Limits) string { return fmt.Sprint(l.Least.Weight, " to ", l.Most.Weight) }
	fmt.Println(weights(limits))
	_, err := grade.Measures{Fat: limits.Most.Fat, Ribeye: limits.Least.Ribeye, KPH: limits.Most.KPH, Weight: limits.Most.Weight}.Yield()
	fmt.Println(err)
	// Output:
	// 100 lb to 1800 lb
	// <nil>
}

// Everything that keeps a carcass from being graded is told at once, each field by
// its path in JSON.
func ExampleProblems() {
	_, err := grade.Current.Assess(grade.Carcass{Sex: grade.Steer, Measures: grade.Measures{Fat: grade.Inches(-0.1), Ribeye: grade.SquareInches(12), KPH: grade.Percent(2), Weight: grade.Pounds(800)}})
	for _, p := range grade.Problems(err) {
		fmt.Printf("%s missing: %v\n", p.Path, errors.Is(p, grade.ErrMissing))
	}
	// Output:
	// maturity.skeletal missing: true
	// maturity.lean missing: true
	// marbling missing: true
	// measures.fat missing: false
}
