package grade_test

import (
	"math"
	"testing"

	"example.com/ribface/grade"
	"example.com/ribface/internal/roundtrip"
	"example.com/ribface/maturity"
	"example.com/ribface/maturity/cite"
)

func TestEncodings(t *testing.T) {
	roundtrip.Run(t, "Thickness", grade.Inch, grade.ParseThickness, roundtrip.Case[grade.Thickness]{
		Texts:   map[string]grade.Thickness{"0 in": 0, "0.6 in": 6000, "-0.1 in": -1000, "0.0001 in": 1, "214748.3646 in": math.MaxInt32 - 1},
		Aliases: map[string]grade.Thickness{"0.6": 6000, "0.60in": 6000, "25.4 mm": grade.Inch, "2.54cm": grade.Inch},
		Bad:     []string{"", "+1", "1e3", ".5", "5.", "0.00001", "0.6  in", "0.6 lb", "214748.3648", "in", " 1"},
		Invalid: []grade.Thickness{grade.Inches(math.NaN()), grade.Inches(math.Inf(1)), grade.Inches(math.Inf(-1))},
	})
	roundtrip.Run(t, "Area", grade.SquareInch, grade.ParseArea, roundtrip.Case[grade.Area]{
		Texts:   map[string]grade.Area{"0 sq in": 0, "12.4 sq in": 124_000},
		Aliases: map[string]grade.Area{"12.4": 124_000, "6.4516 sq cm": grade.SquareInch},
		Bad:     []string{"", "12.4 in", "12,4", "sq in", "12.4 SQ IN"},
		Invalid: []grade.Area{grade.SquareInches(math.NaN())},
	})
	roundtrip.Run(t, "Share", grade.OnePercent, grade.ParseShare, roundtrip.Case[grade.Share]{
		Texts:   map[string]grade.Share{"0%": 0, "2.5%": 25_000},
		Aliases: map[string]grade.Share{"2.5": 25_000, "2.5 %": 25_000},
		Bad:     []string{"", "%", "2.5 percent", "0x1"},
		Invalid: []grade.Share{grade.Percent(math.Inf(1))},
	})
	roundtrip.Run(t, "Weight", grade.Pound, grade.ParseWeight, roundtrip.Case[grade.Weight]{
		Texts:   map[string]grade.Weight{"0 lb": 0, "842 lb": 8_420_000},
		Aliases: map[string]grade.Weight{"842": 8_420_000, "0.4536 kg": 10_000},
		Bad:     []string{"", "842 g", "842lbs", "1_000"},
		Invalid: []grade.Weight{grade.Pounds(math.Inf(-1))},
	})
	roundtrip.Run(t, "Yield", grade.OneGrade, grade.ParseYield, roundtrip.Case[grade.Yield]{
		Texts: map[string]grade.Yield{"0": 0, "2.952": 295_200_000, "-2.38": -238_000_000, "0.00000001": 1},
		Bad:   []string{"", "2.952 ", "1e1", "0.000000001", "NaN"},
	})
	roundtrip.Run(t, "QuickYield", 216_000_000, grade.ParseQuickYield, roundtrip.Case[grade.QuickYield]{
		Texts: map[string]grade.QuickYield{"0": 0, "2.16": 216_000_000, "-0.5": -50_000_000},
		Bad:   []string{"", "2.16%", "+2", "0.000000001"},
	})
	roundtrip.Run(t, "RetailShare", 1, grade.ParseRetailShare, roundtrip.Case[grade.RetailShare]{
		Texts:   map[string]grade.RetailShare{"0%": 0, "50.88109%": 5_088_109_000},
		Aliases: map[string]grade.RetailShare{"50.88109": 5_088_109_000},
		Bad:     []string{"", "%", "50 %", "50%%", "0.000000001%"},
	})
	roundtrip.Run(t, "RetailTable", grade.RetailSlides, grade.ParseRetailTable, roundtrip.Case[grade.RetailTable]{
		Texts: map[string]grade.RetailTable{"asweb-121": grade.RetailGuide, "aged-yield-slides": grade.RetailSlides, "uni-slaughter-handout": grade.RetailHandout},
		Bad:   []string{"unset", "asweb", "1"}, Invalid: []grade.RetailTable{grade.RetailHandout + 1},
	})
	roundtrip.Run(t, "Rounding", grade.HalfUp, grade.ParseRounding, roundtrip.Case[grade.Rounding]{
		Texts: map[string]grade.Rounding{"down": grade.Down, "half up": grade.HalfUp, "half even": grade.HalfEven},
		Bad:   []string{"unset", "up", "Down"}, Invalid: []grade.Rounding{grade.HalfEven + 1},
	})
	roundtrip.Run(t, "Degree", grade.Small, grade.ParseDegree, roundtrip.Case[grade.Degree]{
		Texts: map[string]grade.Degree{
			"Devoid": grade.Devoid, "Practically Devoid": grade.PracticallyDevoid, "Traces": grade.Traces, "Slight": grade.Slight,
			"Small": grade.Small, "Modest": grade.Modest, "Moderate": grade.Moderate, "Slightly Abundant": grade.SlightlyAbundant,
			"Moderately Abundant": grade.ModeratelyAbundant, "Abundant": grade.Abundant,
		},
		Bad: []string{"unset", "Sm", "small", "Small "}, Invalid: []grade.Degree{grade.Abundant + 1},
	})
	roundtrip.Run(t, "Marbling", grade.Small.At(1), grade.ParseMarbling, roundtrip.Case[grade.Marbling]{
		Texts: map[string]grade.Marbling{
			"Devoid00": grade.Devoid.At(0), "PD05": grade.PracticallyDevoid.At(5), "Tr50": grade.Traces.At(50), "Sl99": grade.Slight.At(99),
			"Sm40": grade.Small.At(40), "Mt00": grade.Modest.At(0), "Md40": grade.Moderate.At(40), "SlAb05": grade.SlightlyAbundant.At(5),
			"MAb10": grade.ModeratelyAbundant.At(10), "Ab100": grade.Abundant.At(100),
		},
		Aliases: map[string]grade.Marbling{"Small40": grade.Small.At(40), "Slightly Abundant 40": grade.SlightlyAbundant.At(40), "MdAb10": grade.ModeratelyAbundant.At(10), "Sm100": grade.Modest.At(0)},
		Bad:     []string{"Sm4", "Sm040", "Xx40", "Sm101", "40", "sm40", "unset"},
		Invalid: []grade.Marbling{grade.Small.At(140), 99, 1101},
	})
	roundtrip.Run(t, "MarblingScale", grade.Slight400, grade.ParseMarblingScale, roundtrip.Case[grade.MarblingScale]{
		Texts: map[string]grade.MarblingScale{"Slight00 = 300": grade.Slight300, "Slight00 = 400": grade.Slight400},
		Bad:   []string{"unset", "300", "Slight00=300"}, Invalid: []grade.MarblingScale{grade.Slight400 + 1},
	})
	roundtrip.Run(t, "Grade", grade.Choice, grade.ParseGrade, roundtrip.Case[grade.Grade]{
		Texts: map[string]grade.Grade{
			"No grade": grade.NoGrade, "Canner": grade.Canner, "Cutter": grade.Cutter, "Utility": grade.Utility, "Commercial": grade.Commercial,
			"Standard": grade.Standard, "Good": grade.Good, "Select": grade.Select, "Choice": grade.Choice, "Prime": grade.Prime,
		},
		Bad: []string{"unset", "choice", "No Grade"}, Invalid: []grade.Grade{grade.Prime + 1},
	})
	roundtrip.Run(t, "Part", grade.Average, grade.ParsePart, roundtrip.Case[grade.Part]{
		Texts:   map[string]grade.Part{"Low": grade.Low, "Average": grade.Average, "High": grade.High},
		Aliases: map[string]grade.Part{"whole": grade.Whole},
		Bad:     []string{"unset", "low", "Whole"}, Invalid: []grade.Part{grade.High + 1},
	})
	roundtrip.Run(t, "Quality", grade.Choice.Part(grade.High), grade.ParseQuality, roundtrip.Case[grade.Quality]{
		Texts:   map[string]grade.Quality{"Low Choice": grade.Choice.Part(grade.Low), "Utility": grade.Utility.Part(grade.Whole), "No grade": grade.NoGrade.Part(grade.Whole)},
		Aliases: map[string]grade.Quality{"Choice-": grade.Choice.Part(grade.Low), "Choice+": grade.Choice.Part(grade.High)},
		Bad:     []string{"unset", "low Choice", "Choice -", "No grade+", "+", "Low No grade"}, Invalid: []grade.Quality{1, 255},
	})
	roundtrip.Run(t, "Tier", grade.TopChoice, grade.ParseTier, roundtrip.Case[grade.Tier]{
		Texts: map[string]grade.Tier{
			"below standard": grade.BelowStandard, "standard": grade.StandardTier, "select": grade.SelectTier,
			"low choice": grade.LowChoice, "top choice": grade.TopChoice, "prime": grade.PrimeTier,
		},
		Bad: []string{"unset", "Prime", "choice"}, Invalid: []grade.Tier{grade.PrimeTier + 1},
	})
	roundtrip.Run(t, "Edition", grade.Edition1987, grade.ParseEdition, roundtrip.Case[grade.Edition]{
		Texts: map[string]grade.Edition{"1975": grade.Edition1975, "1987": grade.Edition1987, "1997": grade.Edition1997, "2016": grade.Edition2016, "2017": grade.Edition2017},
		Bad:   []string{"unset", "1976", "current"}, Invalid: []grade.Edition{grade.Current + 1},
	})
	roundtrip.Run(t, "Sex", grade.Cow, grade.ParseSex, roundtrip.Case[grade.Sex]{
		Texts: map[string]grade.Sex{"steer": grade.Steer, "heifer": grade.Heifer, "cow": grade.Cow, "bullock": grade.Bullock, "bull": grade.Bull},
		Bad:   []string{"unset", "Steer", "ox"}, Invalid: []grade.Sex{grade.Bull + 1},
	})
	roundtrip.Run(t, "Firmness", grade.Soft, grade.ParseFirmness, roundtrip.Case[grade.Firmness]{
		Texts: map[string]grade.Firmness{
			"very soft": grade.VerySoft, "soft": grade.Soft, "moderately soft": grade.ModeratelySoft, "slightly soft": grade.SlightlySoft,
			"slightly firm": grade.SlightlyFirm, "moderately firm": grade.ModeratelyFirm, "firm": grade.Firm,
		},
		Bad: []string{"unset", "Firm", "hard"}, Invalid: []grade.Firmness{grade.Firm + 1},
	})
	roundtrip.Run(t, "DarkCut", grade.DarkFull, grade.ParseDarkCut, roundtrip.Case[grade.DarkCut]{
		Texts:   map[string]grade.DarkCut{"one third": grade.DarkThird, "two thirds": grade.DarkTwoThirds, "full": grade.DarkFull},
		Aliases: map[string]grade.DarkCut{"none": 0},
		Bad:     []string{"unset", "half", "Full"}, Invalid: []grade.DarkCut{grade.DarkFull + 1},
	})
}

func TestCompositesThroughJSON(t *testing.T) {
	c := grade.Carcass{
		Sex:       grade.Steer,
		Maturity:  maturity.Evidence{Skeletal: maturity.A.At(60), Lean: maturity.A.At(40), Teeth: maturity.Incisors(2)},
		Marbling:  grade.Small.At(40),
		Lean:      grade.Lean{Firmness: grade.Firm, Dark: grade.DarkThird},
		Measures:  grade.Measures{Fat: 6000, Ribeye: 119_000, KPH: 15_000, Weight: 6_600_000},
		FatAdjust: -1000,
	}
	const carcass = `{"Sex":"steer",` +
		`"Maturity":{"Skeletal":"A60","Lean":"A40","Teeth":"2 permanent incisors","Buttons":"","Papers":""},` +
		`"Marbling":"Sm40","Lean":{"Firmness":"firm","Dark":"one third","Color":"","Texture":"","BelowCutter":false},` +
		`"Measures":{"Fat":"0.6 in","Ribeye":"11.9 sq in","KPH":"1.5%","Weight":"660 lb"},"FatAdjust":"-0.1 in"}`
	roundtrip.Composite(t, c, carcass)
	a, err := grade.Current.Assess(c)
	if err != nil {
		t.Fatal(err)
	}
	roundtrip.Composite(t, a, `{"Carcass":`+carcass+`,"Rules":{"Edition":"2017","Maturity":{"Tens":"","OldLean":""}},`+
		`"Maturity":"A50","Quality":"High Select","Yield":"2.75"}`)
	terms, err := c.Measures.Terms()
	if err != nil {
		t.Fatal(err)
	}
	roundtrip.Composite(t, terms, `{"Start":"2.5","Fat":"1.5","KPH":"0.3","Weight":"2.508","Ribeye":"-3.808"}`)
	quick, err := c.Measures.Quick()
	if err != nil {
		t.Fatal(err)
	}
	roundtrip.Composite(t, quick, `{"Preliminary":"3.5","Required":"11.7 sq in","Ribeye":"-0.06","KPH":"-0.4","Total":"3.04"}`)
	roundtrip.Composite(t, grade.Rules{Edition: grade.Edition1997, Maturity: maturity.Rules{Tens: maturity.TensTowardBone, OldLean: maturity.OldLeanStaysInB}},
		`{"Edition":"1997","Maturity":{"Tens":"toward bone","OldLean":"stays in B"}}`)
	for l := range grade.Edition1987.Lines() {
		roundtrip.Composite(t, l, `{"Group":"A","Grade":"Prime","Part":"Low","At":"SlAb00","Rises":false,"Cite":"published: ext-tamu-quality-es, tamu-ansc627-2015",`+
			`"Firmness":"moderately firm","FirmnessCite":"from memory"}`)
		break
	}
	roundtrip.Composite(t, cite.Step{Name: "n", Rule: "r", Given: "g", Result: "s", Cite: cite.Citation{Standing: cite.Memory}},
		`{"Name":"n","Rule":"r","Given":"g","Result":"s","Cite":"from memory"}`)
}
