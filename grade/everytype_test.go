package grade_test

import (
	"errors"
	"math"
	"testing"

	"example.com/ribface/grade"
	"example.com/ribface/internal/testkit/everytype"
	"example.com/ribface/internal/testkit/roundtrip"
	"example.com/ribface/maturity"
	"example.com/ribface/maturity/cite"
	"github.com/shopspring/decimal"
)

// TestEveryType holds every exported type to the promises of the module.
func TestEveryType(t *testing.T) {
	c := carcass("B40", "Md40")
	c.FatAdjust = grade.Inches(-0.1)
	c.Lean = grade.Lean{Firmness: grade.Soft, Dark: grade.DarkThird, Color: grade.LightCherryRed, Texture: grade.Fine, BelowCutter: true}
	a, err := grade.Current.Assess(c)
	if err != nil {
		t.Fatal(err)
	}
	terms, _ := usual.Terms()
	short, _ := usual.Shortcut()
	better, _ := a.Yield.Better()
	on, err := usual.Solve(grade.TraitWeight, grade.Grades(3.2))
	if err != nil {
		t.Fatal(err)
	}
	changes, _ := grade.Rules{Edition: grade.Current}.QualityChanges(carcass("A50", "Sm40"))
	wide := grade.Tolerances{Fat: grade.Inches(0.1), Ribeye: grade.SquareInches(0.5), Marbling: 30, Maturity: 10}
	e, err := grade.Rules{Edition: grade.Current}.Estimate(c, wide)
	if err != nil {
		t.Fatal(err)
	}
	var line grade.Line
	for line = range grade.Current.Lines() {
		break
	}
	nan, inf := math.NaN(), math.Inf(1)
	everytype.Run(t, ".",
		grade.Inches(0), grade.Inches(0.6), grade.Inches(nan), grade.Inches(inf), grade.Inches(-inf), grade.Inches(-0.1),
		grade.SquareInches(0), grade.SquareInches(11.9), grade.SquareInches(nan), grade.Percent(0), grade.Percent(2.5), grade.Percent(inf),
		grade.Pounds(0), grade.Pounds(842), grade.Pounds(-inf), grade.Grades(0), grade.Grades(2.96), grade.Grades(-0.01), grade.Grades(inf), grade.Grades(-inf),
		grade.ShortcutGrades(0), grade.ShortcutGrades(3.5), grade.ShortcutGrades(inf),
		c, a, c.Lean, usual, grade.Measures{Fat: grade.Inches(nan), Ribeye: grade.SquareInches(-1)}, terms, grade.Terms{Fat: grade.Grades(1)}, short,
		grade.Carcass{Sex: 200, Marbling: -7, Measures: usual, Lean: grade.Lean{Dark: 99, Firmness: 99}}, grade.Assessment{Carcass: c, Rules: grade.Rules{Edition: 99}},
		grade.Assessment{Quality: 255, Yield: grade.Grades(3), Maturity: 7},
		grade.DarkFull, grade.DarkCut(99), grade.LightCherryRed, grade.Color(99), grade.Fine, grade.Texture(99), grade.Small, grade.Degree(99), grade.Current, grade.Edition(99), grade.TraitRibeye, grade.Trait(99), grade.Soft, grade.Firmness(99),
		grade.Prime, grade.Grade(99), grade.Small.At(40), grade.Small.At(140), grade.Marbling(7), grade.Slight400, grade.MarblingScale(99), grade.Low, grade.Part(99),
		grade.Choice.Part(grade.Low), grade.Quality(1), grade.Quality(255), grade.RetailGuide, grade.RetailTable(99), grade.HalfUp, grade.Rounding(99),
		grade.Rules{Edition: grade.Current}, grade.Rules{Edition: 99, Maturity: maturity.Balancing{Tens: 99, OldLean: 99}}, grade.Cow, grade.Sex(99), grade.TopChoice, grade.Tier(99),
		wide, grade.Tolerances{Fat: grade.Inches(nan), Marbling: -1, Maturity: math.MaxInt}, grade.CarcassLimits(), line, grade.Line{Group: 99, Rises: true},
		better, on, grade.OnLine{Trait: 99, Den: 0}, grade.OnLine{Trait: grade.TraitFat, Num: 1, Den: -3}, changes[0], e, e.Qualities[0],
		&grade.FieldError{Field: "fat", Err: grade.ErrRange}, &grade.FieldError{Err: errors.New("odd")}, &grade.ParseError{Kind: "order"}, &grade.ParseError{Err: errors.New("odd")},

		grade.MillimetersDecimal, grade.SquareCentimetersDecimal, grade.KilogramsDecimal,
		grade.Inches, grade.Millimeters, grade.SquareInches, grade.SquareCentimeters, grade.Percent, grade.Pounds, grade.Kilograms, grade.Grades, grade.ShortcutGrades,
		grade.ThicknessUnits, grade.AreaUnits, grade.ShareUnits, grade.WeightUnits, grade.YieldUnits, grade.ShortcutYieldUnits,
		grade.ParseThickness, grade.ParseArea, grade.ParseShare, grade.ParseWeight, grade.ParseYield, grade.ParseShortcutYield, grade.ParseMarbling, grade.ParseDegree, roundtrip.Read[grade.MarblingScale],
		grade.ParseGrade, roundtrip.Read[grade.Part], grade.ParseQuality, grade.ParseTier, grade.ParseEdition, grade.ParseSex, grade.ParseFirmness, grade.ParseDarkCut, grade.ParseColor, grade.ParseTexture, roundtrip.Read[grade.Rounding], roundtrip.Read[grade.RetailTable],
		grade.FatForPreliminary, grade.EditionOn, grade.Editions, grade.Degrees, grade.Qualities, grade.Sexes, grade.Problems,

		c.Maturity, maturity.Evidence{Skeletal: 7, Teeth: -9}, cite.Citation{}, decimal.Decimal{}, decimal.New(5, -1), decimal.New(1, 2_000_000), decimal.New(1, -2_000_000),
	)
}
