package everytype_test

import (
	"testing"

	"example.com/ribface/grade"
	"example.com/ribface/grade/price"
	"example.com/ribface/internal/everytype"
	"example.com/ribface/maturity"
	"example.com/ribface/maturity/cite"
	"github.com/shopspring/decimal"
)

// TestLibrary holds every exported type of the packages below the placings to what
// the module promises of all; the packages above have such a test of their own.
func TestLibrary(t *testing.T) {
	evidence := maturity.Evidence{Skeletal: maturity.A.At(60), Lean: maturity.A.At(50)}
	t.Run("maturity", func(t *testing.T) {
		everytype.Run(t, "../../maturity", maturity.Months(30), maturity.Teeth(3), evidence, maturity.Tens(1), maturity.OldLean(1), maturity.Rules{}, maturity.OssificationPoint{}, maturity.E, maturity.A.At(60))
	})
	t.Run("cite", func(t *testing.T) {
		everytype.Run(t, "../../maturity/cite", cite.Published, cite.Citation{Standing: cite.Published, IDs: "cfr-54-105"}, cite.Source{}, cite.Step{})
	})
	carcass := grade.Carcass{Sex: grade.Steer, Maturity: evidence, Marbling: grade.Small.At(40), Measures: grade.Measures{Fat: grade.Inches(0.6), Ribeye: grade.SquareInches(11.9), KPH: grade.Percent(1.5), Weight: grade.Pounds(660)}}
	a, err := grade.Current.Assess(carcass)
	if err != nil {
		t.Fatal(err)
	}
	t.Run("grade", func(t *testing.T) {
		everytype.Run(t, "../../grade", grade.Rules{Edition: grade.Current}, a, carcass, grade.Steer, grade.Lean{}, grade.Firmness(1), grade.DarkThird, grade.RetailTable(1), grade.Current, grade.Line{},
			grade.CarcassLimits(), grade.Small, grade.Small.At(40), grade.MarblingScale(1), grade.Inches(0.6), grade.SquareInches(12), grade.Percent(2), grade.Pounds(700), grade.Choice, grade.High, grade.Choice.Part(grade.Low), grade.Tier(1),
			grade.HalfUp, grade.ShortcutGrades(3), grade.Shortcut{}, grade.Factor(1), grade.YieldLine{}, grade.OnLine{}, grade.QualityChange{}, grade.Tolerances{}, grade.QualityRange{}, grade.Estimate{}, carcass.Measures, grade.Grades(2.5), grade.Terms{})
	})
	t.Run("price", func(t *testing.T) {
		everytype.Run(t, "../../grade/price", price.Band[grade.Yield]{}, price.TierAmount{}, price.MarkAmount{}, price.Terms{Base: decimal.New(200, 0)}, price.Grid{}, price.Mark(1), price.Edge(1), price.Report{}, price.Line{}, price.Value{}, price.Part{})
	})
}
