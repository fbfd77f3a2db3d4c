package grade_test

import (
	"math"
	"testing"

	"example.com/ribface/grade"
	"example.com/ribface/internal/testkit/roundtrip"
	"example.com/ribface/maturity"
	"example.com/ribface/maturity/cite"
)

// plain is a parser of measurements without a rounding of surplus places.
func plain[T any](parse func(string, ...grade.Rounding) (T, error)) func(string) (T, error) {
	return func(s string) (T, error) { return parse(s) }
}

func TestEncodings(t *testing.T) {
	roundtrip.Run(t, "Thickness", grade.Inches(1), plain(grade.ParseThickness), roundtrip.Case[grade.Thickness]{
		Texts:   map[string]grade.Thickness{"0 in": grade.Inches(0), "0.6 in": grade.Inches(0.6), "-0.1 in": grade.Inches(-0.1), "0.0001 in": grade.ThicknessUnits(1), "214748.3646 in": grade.ThicknessUnits(2147483646)},
		Aliases: map[string]grade.Thickness{"0.6": grade.Inches(0.6), "0.60in": grade.Inches(0.6), "+1": grade.Inches(1), ".5": grade.Inches(0.5), "5.": grade.Inches(5), "1e3": grade.Inches(1000), " 1 ": grade.Inches(1), "0.6  IN": grade.Inches(0.6), "0.6 inches": grade.Inches(0.6), "0.6\"": grade.Inches(0.6), "25.4 mm": grade.Inches(1), "2.54cm": grade.Inches(1)},
		Bad:     []string{" ", "0,6", "1e30", ".", "1e", "0.00001", "0.6 lb", "214748.3648", "in", "1,000", "1 000", "0.6 in in", "0.6-in", "not taken"},
		Invalid: []grade.Thickness{grade.Inches(math.NaN()), grade.Inches(math.Inf(1)), grade.Inches(math.Inf(-1))},
	})
	roundtrip.Run(t, "Area", grade.SquareInches(1), plain(grade.ParseArea), roundtrip.Case[grade.Area]{
		Texts:   map[string]grade.Area{"0 sq in": grade.SquareInches(0), "12.4 sq in": grade.SquareInches(12.4)},
		Aliases: map[string]grade.Area{"12.4": grade.SquareInches(12.4), "12.4 SQ IN": grade.SquareInches(12.4), "12.4 sq. in.": grade.SquareInches(12.4), "12.4in2": grade.SquareInches(12.4), "12.4 in^2": grade.SquareInches(12.4), "12.4 in²": grade.SquareInches(12.4), "80 cm2": grade.SquareInches(12.4), "6.4516 sq cm": grade.SquareInches(1)},
		Bad:     []string{"12.4 in", "12,4", "sq in"},
		Invalid: []grade.Area{grade.SquareInches(math.NaN())},
	})
	roundtrip.Run(t, "Share", grade.Percent(1), plain(grade.ParseShare), roundtrip.Case[grade.Share]{
		Texts:   map[string]grade.Share{"0%": grade.Percent(0), "2.5%": grade.Percent(2.5)},
		Aliases: map[string]grade.Share{"2.5": grade.Percent(2.5), "2.5 %": grade.Percent(2.5), "2.5 percent": grade.Percent(2.5), "2.5pct": grade.Percent(2.5)},
		Bad:     []string{"%", "2.5 per cent", "0x1"},
		Invalid: []grade.Share{grade.Percent(math.Inf(1))},
	})
	roundtrip.Run(t, "Weight", grade.Pounds(1), plain(grade.ParseWeight), roundtrip.Case[grade.Weight]{
		Texts:   map[string]grade.Weight{"0 lb": grade.Pounds(0), "842 lb": grade.Pounds(842)},
		Aliases: map[string]grade.Weight{"842": grade.Pounds(842), "842lbs": grade.Pounds(842), "842 LB.": grade.Pounds(842), "842 pounds": grade.Pounds(842), "0.4536 kg": grade.Pounds(1)},
		Bad:     []string{"842 g", "842 lb lb", "1_000"},
		Invalid: []grade.Weight{grade.Pounds(math.Inf(-1))},
	})
	roundtrip.Run(t, "Yield", grade.Grades(1), plain(grade.ParseYield), roundtrip.Case[grade.Yield]{
		Texts:   map[string]grade.Yield{"0": grade.Grades(0), "2.952": grade.Grades(2.952), "-2.38": grade.Grades(-2.38), "0.00000001": grade.YieldUnits(1)},
		Aliases: map[string]grade.Yield{" 2.952 ": grade.Grades(2.952), "+3": grade.Grades(3), ".5": grade.Grades(0.5), "1e1": grade.Grades(10)},
		Bad:     []string{"0.000000001", "NaN", "2,5", "10000000000", "3 grades"},
	})
	roundtrip.Run(t, "ShortcutYield", grade.ShortcutGrades(2.16), plain(grade.ParseShortcutYield), roundtrip.Case[grade.ShortcutYield]{
		Texts:   map[string]grade.ShortcutYield{"0": grade.ShortcutGrades(0), "2.16": grade.ShortcutGrades(2.16), "-0.5": grade.ShortcutGrades(-0.5)},
		Aliases: map[string]grade.ShortcutYield{"+2": grade.ShortcutGrades(2)},
		Bad:     []string{"2.16%", "0.000000001"},
	})
	roundtrip.Run(t, "RetailTable", grade.RetailSlides, roundtrip.Read[grade.RetailTable], roundtrip.Case[grade.RetailTable]{
		Texts: map[string]grade.RetailTable{"asweb-121": grade.RetailGuide, "aged-yield-slides": grade.RetailSlides, "uni-slaughter-handout": grade.RetailHandout},
		Bad:   []string{"unset", "asweb", "1"}, Invalid: []grade.RetailTable{grade.RetailHandout + 1},
	})
	roundtrip.Run(t, "Rounding", grade.HalfUp, roundtrip.Read[grade.Rounding], roundtrip.Case[grade.Rounding]{
		Texts:   map[string]grade.Rounding{"down": grade.Down, "half up": grade.HalfUp, "half even": grade.HalfEven},
		Aliases: map[string]grade.Rounding{"Down": grade.Down, " half-up ": grade.HalfUp},
		Bad:     []string{"unset", "up", "halfup", "-down", "down-"}, Invalid: []grade.Rounding{grade.HalfEven + 1},
	})
	roundtrip.Run(t, "Degree", grade.Small, grade.ParseDegree, roundtrip.Case[grade.Degree]{
		Texts: map[string]grade.Degree{
			"Devoid": grade.Devoid, "Practically Devoid": grade.PracticallyDevoid, "Traces": grade.Traces, "Slight": grade.Slight,
			"Small": grade.Small, "Modest": grade.Modest, "Moderate": grade.Moderate, "Slightly Abundant": grade.SlightlyAbundant,
			"Moderately Abundant": grade.ModeratelyAbundant, "Abundant": grade.Abundant,
		},
		Aliases: map[string]grade.Degree{"small": grade.Small, "Small ": grade.Small, "SLIGHTLY  ABUNDANT": grade.SlightlyAbundant},
		Bad:     []string{"unset", "Smal", "Small40"}, Invalid: []grade.Degree{grade.Abundant + 1},
	})
	roundtrip.Run(t, "Marbling", grade.Small.At(1), grade.ParseMarbling, roundtrip.Case[grade.Marbling]{
		Texts: map[string]grade.Marbling{
			"Devoid00": grade.Devoid.At(0), "PD05": grade.PracticallyDevoid.At(5), "Tr50": grade.Traces.At(50), "Sl99": grade.Slight.At(99),
			"Sm40": grade.Small.At(40), "Mt00": grade.Modest.At(0), "Md40": grade.Moderate.At(40), "SlAb05": grade.SlightlyAbundant.At(5),
			"MAb10": grade.ModeratelyAbundant.At(10), "Ab100": grade.Abundant.At(100),
		},
		Aliases: map[string]grade.Marbling{"Small40": grade.Small.At(40), "Slightly Abundant 40": grade.SlightlyAbundant.At(40), "MdAb10": grade.ModeratelyAbundant.At(10), "Sm100": grade.Modest.At(0), "sm40": grade.Small.At(40), "SM40": grade.Small.At(40), "Sm 40": grade.Small.At(40), "small 40": grade.Small.At(40), " Small 40 ": grade.Small.At(40), "MT00": grade.Modest.At(0), "MD00": grade.Moderate.At(0), "Sm0": grade.Small.At(0)},
		Bad:     []string{"Sm4", "Sm040", "Xx40", "Sm101", "40", "unset", "Sm5", "M40", "S40", "Sm 4 0", "Sm-40", "Small- 40", "Sm40 lb"},
		Invalid: []grade.Marbling{grade.Small.At(140), 99, 1101},
	})
	roundtrip.Run(t, "MarblingScale", grade.Slight400, roundtrip.Read[grade.MarblingScale], roundtrip.Case[grade.MarblingScale]{
		Texts: map[string]grade.MarblingScale{"Slight00 = 300": grade.Slight300, "Slight00 = 400": grade.Slight400},
		Bad:   []string{"unset", "300", "Slight00=300"}, Invalid: []grade.MarblingScale{grade.Slight400 + 1},
	})
	roundtrip.Run(t, "Grade", grade.Choice, grade.ParseGrade, roundtrip.Case[grade.Grade]{
		Texts: map[string]grade.Grade{
			"No grade": grade.NoGrade, "Canner": grade.Canner, "Cutter": grade.Cutter, "Utility": grade.Utility, "Commercial": grade.Commercial,
			"Standard": grade.Standard, "Good": grade.Good, "Select": grade.Select, "Choice": grade.Choice, "Prime": grade.Prime,
		},
		Aliases: map[string]grade.Grade{"choice": grade.Choice, "No Grade": grade.NoGrade, "Pr": grade.Prime, "CH": grade.Choice, "se": grade.Select, "St": grade.Standard},
		Bad:     []string{"unset", "Good or better"}, Invalid: []grade.Grade{grade.Prime + 1},
	})
	roundtrip.Run(t, "Part", grade.Average, roundtrip.Read[grade.Part], roundtrip.Case[grade.Part]{
		Texts:   map[string]grade.Part{"Low": grade.Low, "Average": grade.Average, "High": grade.High},
		Aliases: map[string]grade.Part{"whole": grade.Whole, "Whole": grade.Whole, "low": grade.Low},
		Bad:     []string{"unset", "middle"}, Invalid: []grade.Part{grade.High + 1},
	})
	roundtrip.Run(t, "Quality", grade.Choice.Part(grade.High), grade.ParseQuality, roundtrip.Case[grade.Quality]{
		Texts:   map[string]grade.Quality{"Low Choice": grade.Choice.Part(grade.Low), "Utility": grade.Utility.Part(grade.Whole), "No grade": grade.NoGrade.Part(grade.Whole)},
		Aliases: map[string]grade.Quality{"Choice-": grade.Choice.Part(grade.Low), "Choice+": grade.Choice.Part(grade.High), "Ch-": grade.Choice.Part(grade.Low), "ch+": grade.Choice.Part(grade.High), "Choice -": grade.Choice.Part(grade.Low), "low choice": grade.Choice.Part(grade.Low), "Low-Choice": grade.Choice.Part(grade.Low), "average  ch": grade.Choice.Part(grade.Average), "PRIME": grade.Prime.Part(grade.Whole), "Pr": grade.Prime.Part(grade.Whole), "Se+": grade.Select.Part(grade.High), "St-": grade.Standard.Part(grade.Low), " no grade ": grade.NoGrade.Part(grade.Whole)},
		Bad:     []string{"unset", "No grade+", "+", "Low No grade", "C", "C+", "S", "Choice--", "Choice-+", "Low Choice-", "-Choice", "- Choice", "Low", "Low ", "whole Choice", "Choice Low", "Low Low Choice", "Ch°"}, Invalid: []grade.Quality{1, 255},
	})
	roundtrip.Run(t, "Tier", grade.TopChoice, grade.ParseTier, roundtrip.Case[grade.Tier]{
		Texts: map[string]grade.Tier{
			"below standard": grade.BelowStandard, "standard": grade.StandardTier, "select": grade.SelectTier,
			"low choice": grade.LowChoice, "top choice": grade.TopChoice, "prime": grade.PrimeTier,
		},
		Aliases: map[string]grade.Tier{"Prime": grade.PrimeTier, "low-choice": grade.LowChoice},
		Bad:     []string{"unset", "choice"}, Invalid: []grade.Tier{grade.PrimeTier + 1},
	})
	roundtrip.Run(t, "Edition", grade.Edition1987, grade.ParseEdition, roundtrip.Case[grade.Edition]{
		Texts: map[string]grade.Edition{"1975": grade.Edition1975, "1987": grade.Edition1987, "1997": grade.Edition1997, "2016": grade.Edition2016, "2017": grade.Edition2017},
		Bad:   []string{"unset", "1976", "current"}, Invalid: []grade.Edition{grade.Current + 1},
	})
	roundtrip.Run(t, "Sex", grade.Cow, grade.ParseSex, roundtrip.Case[grade.Sex]{
		Texts:   map[string]grade.Sex{"steer": grade.Steer, "heifer": grade.Heifer, "cow": grade.Cow, "bullock": grade.Bullock, "bull": grade.Bull},
		Aliases: map[string]grade.Sex{"Steer": grade.Steer, " HEIFER": grade.Heifer, "S": grade.Steer, "s": grade.Steer, "h": grade.Heifer, "C": grade.Cow, "steers": grade.Steer, "Bulls": grade.Bull, "bullocks": grade.Bullock},
		Bad:     []string{"unset", "ox", "B", "bu"}, Invalid: []grade.Sex{grade.Bull + 1},
	})
	roundtrip.Run(t, "Firmness", grade.Soft, grade.ParseFirmness, roundtrip.Case[grade.Firmness]{
		Texts: map[string]grade.Firmness{
			"very soft": grade.VerySoft, "soft": grade.Soft, "moderately soft": grade.ModeratelySoft, "slightly soft": grade.SlightlySoft,
			"slightly firm": grade.SlightlyFirm, "moderately firm": grade.ModeratelyFirm, "firm": grade.Firm,
		},
		Aliases: map[string]grade.Firmness{"Firm": grade.Firm, "Slightly-Firm": grade.SlightlyFirm},
		Bad:     []string{"unset", "hard"}, Invalid: []grade.Firmness{grade.Firm + 1},
	})
	roundtrip.Run(t, "DarkCut", grade.DarkFull, grade.ParseDarkCut, roundtrip.Case[grade.DarkCut]{
		Texts:   map[string]grade.DarkCut{"one third": grade.DarkThird, "two thirds": grade.DarkTwoThirds, "full": grade.DarkFull},
		Aliases: map[string]grade.DarkCut{"none": 0, "Full": grade.DarkFull, "Two Thirds": grade.DarkTwoThirds, "1/3": grade.DarkThird, "2/3": grade.DarkTwoThirds, "a third": grade.DarkThird, "Third": grade.DarkThird},
		Bad:     []string{"unset", "half"}, Invalid: []grade.DarkCut{grade.DarkFull + 1},
	})
}

func TestCompositesThroughJSON(t *testing.T) {
	c := grade.Carcass{
		Sex:       grade.Steer,
		Maturity:  maturity.Evidence{Skeletal: maturity.A.At(60), Lean: maturity.A.At(40), Teeth: maturity.Incisors(2)},
		Marbling:  grade.Small.At(40),
		Lean:      grade.Lean{Firmness: grade.Firm, Dark: grade.DarkThird},
		Measures:  grade.Measures{Fat: grade.Inches(0.6), Ribeye: grade.SquareInches(11.9), KPH: grade.Percent(1.5), Weight: grade.Pounds(660)},
		FatAdjust: grade.Inches(-0.1),
	}
	const carcass = `{"sex":"steer",` +
		`"maturity":{"skeletal":"A60","lean":"A40","teeth":"2 permanent incisors"},` +
		`"marbling":"Sm40","lean":{"firmness":"firm","dark":"one third"},` +
		`"measures":{"fat":"0.6 in","ribeye":"11.9 sq in","kph":"1.5%","weight":"660 lb"},"fat_adjust":"-0.1 in"}`
	roundtrip.Composite(t, c, carcass)
	a, err := grade.Current.Assess(c)
	if err != nil {
		t.Fatal(err)
	}
	roundtrip.Composite(t, a, `{"carcass":`+carcass+`,"rules":{"edition":"2017"},`+
		`"maturity":"A50","quality":"High Select","yield":"2.75"}`)
	terms, err := c.Measures.Terms()
	if err != nil {
		t.Fatal(err)
	}
	roundtrip.Composite(t, terms, `{"start":"2.5","fat":"1.5","kph":"0.3","weight":"2.508","ribeye":"-3.808"}`)
	quick, err := c.Measures.Shortcut()
	if err != nil {
		t.Fatal(err)
	}
	roundtrip.Composite(t, quick, `{"preliminary":"3.5","required":"11.7 sq in","ribeye":"-0.06","kph":"-0.4","total":"3.04"}`)
	roundtrip.Composite(t, grade.Rules{Edition: grade.Edition1997, Maturity: maturity.Balancing{Tens: maturity.TensTowardBone, OldLean: maturity.OldLeanStaysInB}},
		`{"edition":"1997","maturity":{"tens":"toward bone","old_lean":"stays in B"}}`)
	for l := range grade.Edition1987.Lines() {
		roundtrip.Composite(t, l, `{"group":"A","grade":"Prime","part":"Low","at":"SlAb00","cite":"published: ext-tamu-quality-es, tamu-ansc627-2015",`+
			`"firmness":"moderately firm","firmness_cite":"from memory"}`)
		break
	}
	roundtrip.Composite(t, cite.Step{Name: "n", Rule: "r", Given: "g", Result: "s", Cite: cite.Citation{Standing: cite.Memory}},
		`{"name":"n","rule":"r","given":"g","result":"s","cite":"from memory"}`)
}
