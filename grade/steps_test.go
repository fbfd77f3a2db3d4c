package grade_test

import (
	"math"
	"strings"
	"testing"

	"example.com/ribface/grade"
	"example.com/ribface/internal/testkit"
	"example.com/ribface/internal/text"
	"example.com/ribface/maturity"
	"example.com/ribface/maturity/cite"
	gocmp "github.com/google/go-cmp/cmp"
)

// lines gives the steps as lines of text.
func lines(steps []cite.Step) []string {
	var out []string
	for _, s := range steps {
		out = append(out, s.String())
	}
	return out
}

// yieldLines are the steps of the yield of the usual measures.
var yieldLines = []string{
	`fat: 0.6 in -> 3.5 (preliminary yield grade: 2.00 and 0.25 for every 0.1 in; a start, not part of the equation; published: ext-sdsu-yield, aged-quality-yield-slides)`,
	`ribeye for the weight: 11.9 sq in at 660 lb -> 11.7 sq in expected, +0.2 sq in (11.0 sq in at 600 lb and 0.3 for every 25 lb; a guide, not part of the equation; published: ext-sdsu-yield)`,
	`equation: start: every carcass -> +2.5 (2.50; official: cfr-54-105)`,
	`equation: fat: 0.6 in -> +1.5 (+ 2.50 per in; official: cfr-54-105)`,
	`equation: kidney, pelvic and heart fat: 1.5% -> +0.3 (+ 0.20 per percent; official: cfr-54-105)`,
	`equation: hot carcass weight: 660 lb -> +2.508 (+ 0.0038 per lb; official: cfr-54-105)`,
	`equation: ribeye: 11.9 sq in -> -3.808 (- 0.32 per sq in; official: cfr-54-105)`,
	`yield: the five terms -> 3 (the sum, exact; official: cfr-54-105)`,
	`yield grade: 3 -> 3 (decimals dropped, then kept to 1 to 5; published: ext-sdsu-yield)`,
}

// TestSteps holds every line that an explanation of a carcass can have, in order.
// The lines of the yield are written where they differ from the usual ones.
func TestSteps(t *testing.T) {
	for _, tt := range []struct {
		name, reason string
		change       func(*grade.Carcass)
		want         []string // up to the yield
		fat, sum     []string // the lines on fat and on the sum, where they differ
	}{
		{"steer", "every step of a usual carcass", func(c *grade.Carcass) {}, []string{
			`overall maturity: skeletal A50, lean A50 -> A50 (skeletal and lean at most 40 units apart: their mean; common-practice: quiz-quality-concepts)`,
			`sex class: steer -> all grades (open to every grade; published: export-classes, montana-specs)`,
			`marbling: Sm40 in A50 -> Low Choice (Choice needs Sm00 or more, edition 2017; published: reprint-bullock-choice, ext-tamu-quality-es)`,
			`firmness: not looked at -> Low Choice (the chart takes firmness to go with marbling; published: tamu-ansc627-2015)`,
		}, nil, nil},
		{"cow, firm, dark, more fat elsewhere", "a part above the first, firmness met, a reduction, an adjustment", func(c *grade.Carcass) {
			c.Sex, c.Marbling, c.FatAdjust = grade.Cow, grade.Moderate.At(0), grade.Inches(0.1)
			c.Lean = grade.Lean{Firmness: grade.Firm, Dark: grade.DarkThird}
		}, []string{
			`overall maturity: skeletal A50, lean A50 -> A50 (skeletal and lean at most 40 units apart: their mean; common-practice: quiz-quality-concepts)`,
			`sex class: cow -> all but Prime (cows are not eligible for Prime; official: cfr-1965-53-prime, cfr-1965-53-classes)`,
			`marbling: Md00 in A50 -> Choice (Choice needs Sm00 or more, edition 2017; published: reprint-bullock-choice, ext-tamu-quality-es)`,
			`part of the grade: Md00 in A50 -> High Choice (High Choice starts at Md00; published: ext-tamu-quality-es)`,
			`firmness: firm -> High Choice (Choice needs slightly soft or firmer; published: reprint-bullock-choice)`,
			`dark cutter: High Choice -> Average Choice (Prime, Choice and Select lose up to one full grade; one third of it here; official: cfr-1965-53-p26)`,
		}, []string{
			`adjusted fat: 0.6 in with +0.1 in -> 0.7 in (fat elsewhere on the carcass that the rib does not show; official: cfr-1965-53-p26)`,
			`fat: 0.7 in -> 3.75 (preliminary yield grade: 2.00 and 0.25 for every 0.1 in; a start, not part of the equation; published: ext-sdsu-yield, aged-quality-yield-slides)`,
			`equation: fat: 0.7 in -> +1.75 (+ 2.50 per in; official: cfr-54-105)`,
		}, []string{
			`yield: the five terms -> 3.25 (the sum, exact; official: cfr-54-105)`,
			`yield grade: 3.25 -> 3 (decimals dropped, then kept to 1 to 5; published: ext-sdsu-yield)`,
		}},
		{"bullock too soft for Choice, less fat elsewhere", "column A, the next grade down, an adjustment below zero", func(c *grade.Carcass) {
			c.Sex, c.Marbling, c.FatAdjust = grade.Bullock, grade.Modest.At(0), grade.Inches(-0.1)
			c.Lean = grade.Lean{Firmness: grade.ModeratelySoft, Dark: grade.DarkFull}
		}, []string{
			`overall maturity: skeletal A50, lean A50 -> A50 (skeletal and lean at most 40 units apart: their mean; common-practice: quiz-quality-concepts)`,
			`sex class: bullock -> graded in column A (Prime, Choice, Select, Standard and Utility, by the lines of A; published: export-classes, tamu-ansc627-2015, meatmentor-102)`,
			`marbling: Mt00 in column A -> Choice (Choice needs Sm00 or more, edition 2017; published: reprint-bullock-choice, ext-tamu-quality-es)`,
			`part of the grade: Mt00 in column A -> Average Choice (Average Choice starts at Mt00; published: ext-tamu-quality-es)`,
			`firmness: moderately soft -> High Select (Choice needs slightly soft or firmer; the next grade down that is met; published: reprint-bullock-choice)`,
			`dark cutter: High Select -> High Standard (Prime, Choice and Select lose up to one full grade; full of it here; official: cfr-1965-53-p26)`,
		}, []string{
			`adjusted fat: 0.6 in with -0.1 in -> 0.5 in (fat elsewhere on the carcass that the rib does not show; official: cfr-1965-53-p26)`,
			`fat: 0.5 in -> 3.25 (preliminary yield grade: 2.00 and 0.25 for every 0.1 in; a start, not part of the equation; published: ext-sdsu-yield, aged-quality-yield-slides)`,
			`equation: fat: 0.5 in -> +1.25 (+ 2.50 per in; official: cfr-54-105)`,
		}, []string{
			`yield: the five terms -> 2.75 (the sum, exact; official: cfr-54-105)`,
			`yield grade: 2.75 -> 2 (decimals dropped, then kept to 1 to 5; published: ext-sdsu-yield)`,
		}},
		{"bullock past the line", "ends with the sex class", func(c *grade.Carcass) { c.Sex, c.Maturity.Skeletal = grade.Bullock, maturity.B.At(1) }, []string{
			`overall maturity: skeletal B01, lean A50 -> A86 (skeletal and lean more than 40 units apart: their mean, then 10 units toward skeletal; common-practice: quiz-quality-concepts)`,
			`sex class: bullock, skeletal B01 -> No grade (a bullock's skeleton is not past the line between A and B; official: cfr-post1975-p24)`,
		}, nil, nil},
		{"bull", "ends with the sex class", func(c *grade.Carcass) { c.Sex = grade.Bull }, []string{
			`overall maturity: skeletal A50, lean A50 -> A50 (skeletal and lean at most 40 units apart: their mean; common-practice: quiz-quality-concepts)`,
			`sex class: bull -> No grade (bulls are open to no quality grade; published: export-classes, meatmentor-102)`,
		}, nil, nil},
		{"dark bullock too soft for all", "no grade is met, and nothing is lost to dark cutting", func(c *grade.Carcass) {
			c.Sex, c.Lean = grade.Bullock, grade.Lean{Firmness: grade.VerySoft, Dark: grade.DarkThird}
		}, []string{
			`overall maturity: skeletal A50, lean A50 -> A50 (skeletal and lean at most 40 units apart: their mean; common-practice: quiz-quality-concepts)`,
			`sex class: bullock -> graded in column A (Prime, Choice, Select, Standard and Utility, by the lines of A; published: export-classes, tamu-ansc627-2015, meatmentor-102)`,
			`marbling: Sm40 in column A -> Low Choice (Choice needs Sm00 or more, edition 2017; published: reprint-bullock-choice, ext-tamu-quality-es)`,
			`firmness: very soft -> No grade (no grade open to the class is met; official: cfr-1965-53-general)`,
			`dark cutter: No grade -> No grade (no reduction below Standard and Commercial; official: cfr-1965-53-p26)`,
		}, nil, nil},
		{"below Cutter", "the finding has its own step, and nothing is lost to dark cutting", func(c *grade.Carcass) {
			c.Maturity.Skeletal, c.Maturity.Lean, c.Marbling = maturity.E.At(50), maturity.E.At(50), grade.Traces.At(0)
			c.Lean = grade.Lean{Firmness: grade.Firm, BelowCutter: true, Dark: grade.DarkFull}
		}, []string{
			`overall maturity: skeletal E50, lean E50 -> E50 (skeletal and lean at most 40 units apart: their mean; common-practice: quiz-quality-concepts)`,
			`sex class: steer -> all grades (open to every grade; published: export-classes, montana-specs)`,
			`marbling: Tr00 in E50 -> Cutter (Cutter needs Devoid00 or more, edition 2017; from memory)`,
			`firmness: firm -> Cutter (Cutter has no known least firmness; official: cfr-1965-53-general)`,
			`below Cutter: below Cutter -> Canner (the judge's own finding; no minimum is published; from memory)`,
			`dark cutter: Canner -> Canner (no reduction below Standard and Commercial; official: cfr-1965-53-p26)`,
		}, nil, nil},
		{"dark Standard", "half a grade at most; the finding does not matter above Cutter", func(c *grade.Carcass) {
			c.Marbling = grade.PracticallyDevoid.At(70)
			c.Lean = grade.Lean{BelowCutter: true, Dark: grade.DarkTwoThirds}
		}, []string{
			`overall maturity: skeletal A50, lean A50 -> A50 (skeletal and lean at most 40 units apart: their mean; common-practice: quiz-quality-concepts)`,
			`sex class: steer -> all grades (open to every grade; published: export-classes, montana-specs)`,
			`marbling: PD70 in A50 -> Standard (Standard needs PD00 or more, edition 2017; published: ext-tamu-quality-es)`,
			`part of the grade: PD70 in A50 -> Average Standard (Average Standard starts at PD67; published: ext-tamu-quality-es)`,
			`firmness: not looked at -> Average Standard (the chart takes firmness to go with marbling; published: tamu-ansc627-2015)`,
			`dark cutter: Average Standard -> Low Standard (Standard and Commercial lose up to half a grade; two thirds of it here; official: cfr-1965-53-p26)`,
		}, nil, nil},
	} {
		t.Run(tt.name, func(t *testing.T) {
			c := carcass("A50", "Sm40")
			tt.change(&c)
			a, err := grade.Current.Assess(c)
			if err != nil {
				t.Fatal(err)
			}
			want := append([]string(nil), tt.want...)
			if tt.fat == nil {
				want = append(want, yieldLines...)
			} else {
				want = append(want, tt.fat[:2]...)      // the adjustment and the fat
				want = append(want, yieldLines[1:3]...) // the ribeye and the start
				want = append(want, tt.fat[2])          // the term of the fat
				want = append(want, yieldLines[4:7]...) // the other terms
				want = append(want, tt.sum...)
			}
			if diff := gocmp.Diff(want, lines(a.Steps())); diff != "" {
				t.Errorf("%s: (-want +got)\n%s", tt.reason, diff)
			}
		})
	}
}

// TestStepsOfDark holds the words of the dark cutter for each grade that can be
// reduced.
func TestStepsOfDark(t *testing.T) {
	for _, tt := range []struct {
		e                     grade.Edition
		score, marbling, want string
	}{
		{grade.Current, "A50", "SlAb00", "dark cutter: Low Prime -> Low Choice (Prime, Choice and Select lose up to one full grade; full of it here; official: cfr-1965-53-p26)"},
		{grade.Current, "A50", "Sl00", "dark cutter: Low Select -> Low Standard (Prime, Choice and Select lose up to one full grade; full of it here; official: cfr-1965-53-p26)"},
		{grade.Edition1975, "A50", "Sl00", "dark cutter: Low Good -> Low Standard (Prime, Choice and Select lose up to one full grade; full of it here; official: cfr-1965-53-p26)"},
		{grade.Current, "C50", "Ab00", "dark cutter: High Commercial -> Average Commercial (Standard and Commercial lose up to half a grade; full of it here; official: cfr-1965-53-p26)"},
		{grade.Current, "A50", "Devoid50", "dark cutter: Utility -> Utility (no reduction below Standard and Commercial; official: cfr-1965-53-p26)"},
	} {
		c := carcass(tt.score, tt.marbling)
		c.Lean.Dark = grade.DarkFull
		a, err := tt.e.Assess(c)
		if err != nil {
			t.Fatal(err)
		}
		var got string
		for _, l := range lines(a.Steps()) {
			if strings.HasPrefix(l, "dark cutter") {
				got = l
			}
		}
		if diff := gocmp.Diff(tt.want, got); diff != "" {
			t.Errorf("(-want +got)\n%s", diff)
		}
	}
}

// TestStepsOfAge holds that the steps of maturity are those of the rules and the
// edition.
func TestStepsOfAge(t *testing.T) {
	c := carcass("B40", "Sm40")
	c.Maturity.Teeth = maturity.Incisors(2)
	for e, want := range map[grade.Edition]string{grade.Edition2016: "left aside", grade.Edition2017: "A"} {
		r := grade.Rules{Edition: e, Maturity: maturity.Balancing{Tens: maturity.TensTowardBone}}
		a, err := r.Assess(c)
		if err != nil {
			t.Fatal(err)
		}
		steps := a.Steps()
		if steps[0].Result != want {
			t.Errorf("%v: the first step is %v", e, steps[0])
		}
		own := r.Maturity.Steps(c.Maturity, e.ByAge())
		if diff := gocmp.Diff(own, steps[:len(own)]); diff != "" {
			t.Errorf("%v: (-want +got)\n%s", e, diff)
		}
	}
}

// TestNoSteps holds that what was never assessed has no steps.
func TestNoSteps(t *testing.T) {
	good, err := grade.Current.Assess(carcass("A50", "Sm40"))
	if err != nil {
		t.Fatal(err)
	}
	noMeasures, noMarbling, badFat := good, good, good
	noMeasures.Carcass.Measures = grade.Measures{}
	noMarbling.Carcass.Marbling = 0
	badFat.Carcass.FatAdjust = grade.Inches(math.NaN())
	for name, a := range map[string]grade.Assessment{"zero": {}, "no measures": noMeasures, "no marbling": noMarbling, "bad adjustment": badFat} {
		if steps := a.Steps(); steps != nil {
			t.Errorf("%s: %d steps", name, len(steps))
		}
	}
}

// TestStepsCitations holds that every step of many carcasses has a citation whose
// sources are all known.
func TestStepsCitations(t *testing.T) {
	step := grade.Marbling(150) // a sample; every firmness is in it
	if testkit.Exhaustive() {
		step = 50
	}
	for e := range grade.Editions() {
		for s := range grade.Sexes() {
			for score := maturity.A.At(0); score <= maturity.E.At(100); score += 25 {
				for m := grade.Devoid.At(0); m <= grade.Abundant.At(100); m += step {
					c := grade.Carcass{Sex: s, Maturity: maturity.Evidence{Skeletal: score, Lean: score}, Marbling: m, Measures: usual,
						Lean: grade.Lean{Firmness: grade.Firmness(int(m) / 50 % 8), Dark: grade.DarkCut(int(score) / 25 % 4)}}
					a, err := e.Assess(c)
					if err != nil {
						t.Fatal(err)
					}
					quality := ""
					for _, step := range a.Steps() {
						if step.Name == "" || step.Rule == "" || step.Given == "" || step.Result == "" || !text.Named(step.Cite.Standing) {
							t.Fatalf("%+v: the step %+v has a gap", c, step)
						}
						if len(step.Cite.Sources()) != len(strings.Fields(step.Cite.IDs)) {
							t.Fatalf("%+v: the step %+v has an unknown source", c, step)
						}
						switch step.Name {
						case "sex class", "marbling", "part of the grade", "firmness", "below Cutter", "dark cutter":
							quality = step.Result
						}
					}
					if quality != a.Quality.String() {
						t.Fatalf("%+v: the steps end in %s, the quality is %v", c, quality, a.Quality)
					}
				}
			}
		}
	}
}
