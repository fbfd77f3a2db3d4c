package grade_test

import (
	"testing"

	"example.com/ribface/grade"
	"example.com/ribface/internal/testkit/faulttest"
	"example.com/ribface/maturity"
	gocmp "github.com/google/go-cmp/cmp"
)

// carcass is a steer with bone and lean at one score.
func carcass(score, marbling string) grade.Carcass {
	s := maturity.MustParse(score)
	return grade.Carcass{
		Sex: grade.Steer, Maturity: maturity.Evidence{Skeletal: s, Lean: s}, Marbling: grade.MustParseMarbling(marbling), Measures: usual,
	}
}

// wantQuality grades the carcass in both ways.
func wantQuality(t *testing.T, e grade.Edition, c grade.Carcass, want, reason string) {
	t.Helper()
	q, err := e.Quality(c)
	if err != nil || q.String() != want {
		t.Errorf("edition %v, %v %v, %v, lean %+v: %v, %v; want %s: %s", e, c.Sex, c.Maturity.Skeletal, c.Marbling, c.Lean, q, err, want, reason)
	}
	a, err := e.Assess(c)
	if err != nil || a.Quality != q {
		t.Errorf("Assess gives %v, %v; Quality gives %v", a.Quality, err, q)
	}
}

// TestQualityByMarbling holds both sides of every line of the chart, at both ends
// of every group, in the editions that differ.
func TestQualityByMarbling(t *testing.T) {
	type point struct{ score, marbling, want string }
	a := []point{
		{"A00", "Ab00", "High Prime"}, {"A00", "MAb99", "Average Prime"}, {"A00", "MAb00", "Average Prime"}, {"A99", "SlAb99", "Low Prime"}, {"A99", "SlAb00", "Low Prime"},
		{"A99", "Md99", "High Choice"}, {"A00", "Md00", "High Choice"}, {"A00", "Mt99", "Average Choice"}, {"A00", "Mt00", "Average Choice"}, {"A99", "Sm99", "Low Choice"}, {"A99", "Sm00", "Low Choice"},
		{"A99", "Tr99", "High Standard"}, {"A00", "Tr34", "High Standard"}, {"A00", "Tr33", "Average Standard"}, {"A99", "PD67", "Average Standard"}, {"A99", "PD66", "Low Standard"}, {"A00", "PD00", "Low Standard"},
		{"A00", "Devoid99", "Utility"}, {"A99", "Devoid00", "Utility"},
	}
	selectA := []point{{"A99", "Sl99", "High Select"}, {"A00", "Sl50", "High Select"}, {"A00", "Sl49", "Low Select"}, {"A99", "Sl00", "Low Select"}}
	goodA := []point{{"A99", "Sl99", "High Good"}, {"A00", "Sl67", "High Good"}, {"A00", "Sl66", "Average Good"}, {"A00", "Sl34", "Average Good"}, {"A00", "Sl33", "Low Good"}, {"A99", "Sl00", "Low Good"}}
	primeB := []point{
		{"B00", "SlAb00", "Low Prime"}, {"B99", "SlAb99", "Low Prime"}, {"B50", "SlAb50", "Low Prime"}, {"B50", "MAb49", "Low Prime"}, {"B50", "MAb50", "Average Prime"}, {"B50", "Ab49", "Average Prime"}, {"B50", "Ab50", "High Prime"}, {"B99", "Ab100", "High Prime"},
		{"B50", "SlAb49", "High Choice"}, {"B99", "SlAb98", "High Choice"}, {"B50", "Md50", "High Choice"}, {"B50", "Md49", "Average Choice"}, {"B60", "Md40", "Average Choice"}, {"B50", "Mt50", "Average Choice"}, {"B50", "Mt49", "Low Choice"},
		{"B50", "Mt00", "Low Choice"},
	}
	b1987 := []point{
		{"B50", "Sm50", "Low Choice"}, {"B99", "Sm99", "Low Choice"}, {"B00", "Sm00", "Low Choice"},
		{"B50", "PD49", "Utility"}, {"B50", "PD50", "Low Standard"}, {"B50", "Tr16", "Low Standard"}, {"B50", "Tr17", "Average Standard"}, {"B50", "Tr83", "Average Standard"}, {"B50", "Tr84", "High Standard"}, {"B50", "Sl49", "High Standard"},
	}
	selectB := []point{{"B50", "Sm49", "High Select"}, {"B50", "Sm00", "High Select"}, {"B50", "Sl99", "Low Select"}, {"B50", "Sl50", "Low Select"}}
	goodB := []point{{"B50", "Sm49", "High Good"}, {"B50", "Sm17", "High Good"}, {"B50", "Sm16", "Average Good"}, {"B50", "Sl84", "Average Good"}, {"B50", "Sl83", "Low Good"}, {"B50", "Sl50", "Low Good"}}
	b1997 := []point{
		{"B00", "Mt00", "Average Choice"}, {"B01", "Mt00", "Low Choice"}, {"B00", "Sm99", "High Standard"}, {"B99", "Sm99", "High Standard"}, {"B99", "Sl00", "High Standard"}, {"B00", "Tr99", "Standard"}, {"B99", "PD99", "Standard"},
		{"B99", "PD98", "Utility"}, {"B00", "PD00", "Standard"}, {"B50", "Devoid00", "Utility"},
	}
	old := []point{
		{"C00", "Ab100", "High Commercial"}, {"C00", "Md00", "High Commercial"}, {"C00", "Mt99", "Average Commercial"}, {"C00", "Mt00", "Average Commercial"}, {"C00", "Sm99", "Low Commercial"}, {"C50", "Md49", "Average Commercial"}, {"C00", "Sm00", "Low Commercial"}, {"C00", "Sl99", "Utility"}, {"C50", "Sm50", "Low Commercial"}, {"C50", "Sm49", "Utility"}, {"C00", "PD00", "Utility"}, {"C00", "Devoid99", "Cutter"}, {"C50", "PD50", "Utility"}, {"C50", "PD49", "Cutter"},
		{"D00", "Mt00", "Low Commercial"}, {"D00", "Sm99", "Utility"}, {"D50", "Tr50", "Utility"}, {"D50", "Tr49", "Cutter"}, {"E00", "Md00", "Low Commercial"}, {"E00", "Mt99", "Utility"}, {"E00", "Sl00", "Utility"}, {"E00", "Tr99", "Cutter"},
		{"E100", "SlAb00", "Low Commercial"}, {"E100", "MAb00", "Average Commercial"}, {"E100", "MAb99", "Average Commercial"}, {"E100", "Ab00", "High Commercial"}, {"D00", "SlAb00", "High Commercial"}, {"D00", "Md99", "Average Commercial"}, {"E100", "Md99", "Utility"}, {"E100", "Sm00", "Utility"}, {"E100", "Sl99", "Cutter"},
	}
	for e, columns := range map[grade.Edition][][]point{
		grade.Edition1975: {a, goodA, primeB, b1987, goodB, old},
		grade.Edition1987: {a, selectA, primeB, b1987, selectB, old},
		grade.Edition1997: {a, selectA, primeB, b1997, old},
		grade.Edition2016: {a, selectA, primeB, b1997, old},
		grade.Edition2017: {a, selectA, primeB, b1997, old},
	} {
		t.Run(e.String(), func(t *testing.T) {
			for _, column := range columns {
				for _, p := range column {
					wantQuality(t, e, carcass(p.score, p.marbling), p.want, "the lines of the chart")
				}
			}
		})
	}
}

// TestTrapSexClasses holds that cows are not eligible for Prime, bullocks have
// five grades by the A column and none with an older skeleton, and bulls have
// none (cfr-1965-53-prime, export-classes, cfr-post1975-p24).
func TestTrapSexClasses(t *testing.T) {
	for _, tt := range []struct {
		sex             grade.Sex
		score, marbling string
		want, reason    string
	}{
		{grade.Steer, "A50", "Ab50", "High Prime", "open to every grade"},
		{grade.Heifer, "A50", "Ab50", "High Prime", "open to every grade"},
		{grade.Heifer, "C50", "Ab50", "High Commercial", "open to every grade"},
		{grade.Cow, "A50", "Ab50", "High Choice", "not eligible for Prime"},
		{grade.Cow, "A50", "Md99", "High Choice", "as a steer below Prime"},
		{grade.Cow, "C50", "Md99", "High Commercial", "as a steer below Prime"},
		{grade.Bullock, "A50", "Ab50", "High Prime", "open to Prime"},
		{grade.Bullock, "A50", "Sm00", "Low Choice", "open to Choice"},
		{grade.Bullock, "A50", "Sl00", "Low Select", "open to Select"},
		{grade.Bullock, "A50", "PD00", "Low Standard", "open to Standard"},
		{grade.Bullock, "A50", "Devoid99", "Utility", "open to Utility"},
		{grade.Bullock, "B00", "Sm00", "Low Choice", "the line between A and B is still in, by column A"},
		{grade.Bullock, "B00", "Sl00", "Low Select", "column A, where Select is open"},
		{grade.Bullock, "B01", "Ab50", "No grade", "past the line between A and B"},
		{grade.Bullock, "E00", "Ab50", "No grade", "far past it"},
		{grade.Bull, "A50", "Ab50", "No grade", "open to none"},
		{grade.Bull, "E50", "Devoid00", "No grade", "open to none"},
	} {
		c := carcass(tt.score, tt.marbling)
		c.Sex = tt.sex
		wantQuality(t, grade.Current, c, tt.want, tt.reason)
	}
	// The lean of a bullock may be older than its skeleton.
	c := carcass("A90", "Sl00")
	c.Sex, c.Maturity.Lean = grade.Bullock, maturity.C.At(0)
	wantQuality(t, grade.Current, c, "Low Select", "overall in B, graded in column A")
	names := []string{"steer", "heifer", "cow", "bullock", "bull"}
	var got []string
	for s := range grade.Sexes() {
		got = append(got, s.String())
	}
	if diff := gocmp.Diff(names, got); diff != "" {
		t.Errorf("(-want +got)\n%s", diff)
	}
	for range grade.Sexes() {
		break
	}
	if grade.Sex(0).IsValid() || grade.Sex(6).IsValid() || !grade.Bull.IsValid() {
		t.Error("validity of a sex class")
	}
}

// TestTrapAgeOfOldSkeleton holds that an age under 30 months does not open the
// young grades to a D or E skeleton (published: ext-tamu-maturity-2018).
func TestTrapAgeOfOldSkeleton(t *testing.T) {
	for _, tt := range []struct{ skeletal, want string }{
		{"A50", "Low Choice"}, {"C99", "Low Choice"}, {"D00", "Utility"}, {"E100", "Utility"},
	} {
		c := carcass(tt.skeletal, "Sm00")
		c.Maturity.Lean, c.Maturity.Teeth = maturity.A.At(50), maturity.Incisors(2)
		if tt.skeletal >= "D" {
			c.Maturity.Lean = maturity.MustParse(tt.skeletal)
		}
		wantQuality(t, grade.Edition2017, c, tt.want, "two permanent incisors")
	}
	c := carcass("C50", "Sm00")
	c.Maturity.Teeth = maturity.Incisors(2)
	wantQuality(t, grade.Edition2016, c, "Utility", "age does not count before 2017")
}

// TestFirmness holds the least firmness of every grade and what a softer lean
// falls to.
func TestFirmness(t *testing.T) {
	for _, tt := range []struct {
		score, marbling string
		firm            grade.Firmness
		want, reason    string
	}{
		{"A50", "SlAb00", 0, "Low Prime", "not looked at goes with marbling"},
		{"A50", "SlAb00", grade.ModeratelyFirm, "Low Prime", "just firm enough"},
		{"A50", "SlAb00", grade.SlightlyFirm, "High Choice", "too soft for Prime"},
		{"A50", "SlAb00", grade.SlightlySoft, "High Choice", "just firm enough for Choice"},
		{"A50", "SlAb00", grade.ModeratelySoft, "High Select", "too soft for Choice"},
		{"A50", "Sl00", grade.ModeratelySoft, "Low Select", "just firm enough for Select"},
		{"A50", "Sl00", grade.Soft, "High Standard", "too soft for Select"},
		{"A50", "SlAb00", grade.VerySoft, "Cutter", "too soft for Standard and Utility"},
		{"B50", "Ab50", grade.Firm, "High Prime", "just firm enough in B"},
		{"B50", "Ab50", grade.ModeratelyFirm, "High Choice", "too soft for Prime in B"},
		{"B50", "Mt50", grade.SlightlyFirm, "Average Choice", "just firm enough in B"},
		{"B50", "Mt50", grade.SlightlySoft, "High Standard", "too soft for Choice in B, Select closed"},
		{"B50", "Mt50", grade.ModeratelySoft, "High Standard", "just firm enough for Standard in B"},
		{"B50", "Mt50", grade.Soft, "Utility", "too soft for Standard in B"},
		{"C50", "Mt50", grade.SlightlyFirm, "Average Commercial", "just firm enough in C"},
		{"C50", "Mt50", grade.SlightlySoft, "Utility", "too soft for Commercial"},
		{"C50", "Mt50", grade.ModeratelySoft, "Utility", "just firm enough for Utility in C"},
		{"C50", "Mt50", grade.Soft, "Cutter", "too soft for Utility in C"},
		{"D50", "Ab50", grade.ModeratelyFirm, "High Commercial", "just firm enough in D"},
		{"D50", "Ab50", grade.SlightlyFirm, "Utility", "too soft for Commercial in D"},
		{"D50", "Ab50", grade.SlightlySoft, "Utility", "just firm enough for Utility in D"},
		{"D50", "Ab50", grade.ModeratelySoft, "Cutter", "too soft for Utility in D"},
		{"E50", "Ab50", grade.Firm, "High Commercial", "just firm enough in E"},
		{"E50", "Ab50", grade.ModeratelyFirm, "Utility", "too soft for Commercial in E"},
		{"E50", "Ab50", grade.SlightlyFirm, "Utility", "just firm enough for Utility in E"},
		{"E50", "Ab50", grade.SlightlySoft, "Cutter", "too soft for Utility in E"},
	} {
		c := carcass(tt.score, tt.marbling)
		c.Lean.Firmness = tt.firm
		wantQuality(t, grade.Current, c, tt.want, tt.reason)
	}
	c := carcass("A50", "SlAb00")
	c.Sex, c.Lean.Firmness = grade.Bullock, grade.VerySoft
	wantQuality(t, grade.Current, c, "No grade", "a bullock has nothing below Utility")
	c.Lean.Dark = grade.DarkFull
	wantQuality(t, grade.Current, c, "No grade", "and nothing to lose")
	c.Sex, c.Lean.Firmness, c.Lean.Dark = grade.Cow, grade.ModeratelyFirm, 0
	wantQuality(t, grade.Current, c, "High Choice", "a cow by the firmness of Choice")
}

// TestBelowCutter holds that the finding turns Cutter into Canner and touches
// nothing else.
func TestBelowCutter(t *testing.T) {
	for _, tt := range []struct {
		score, marbling, want string
	}{
		{"E50", "Devoid00", "Canner"}, {"C00", "PD00", "Utility"}, {"A50", "Sm00", "Low Choice"},
	} {
		c := carcass(tt.score, tt.marbling)
		c.Lean.BelowCutter = true
		wantQuality(t, grade.Current, c, tt.want, "below Cutter")
	}
}

// TestTrapDarkCutter holds the reduction of every grade on both sides of every
// edge it has: up to one grade for Prime, Choice and Select, up to half for
// Standard and Commercial, nothing below (official: cfr-1965-53-p26 for the
// greatest reduction, from memory for the steps, derived for the places). The
// values are worked out by hand: the place in the grade less the reduction, and
// carried down in proportion to the width of the grade below.
func TestTrapDarkCutter(t *testing.T) {
	third, two, full := grade.DarkThird, grade.DarkTwoThirds, grade.DarkFull
	for _, tt := range []struct {
		sex             grade.Sex
		score, marbling string
		dark            grade.DarkCut
		want, reason    string
	}{
		{grade.Steer, "A50", "SlAb00", full, "Low Choice", "a full grade down, at the foot of both"},
		{grade.Steer, "A50", "SlAb99", full, "Low Choice", "99 of 300 in both"},
		{grade.Steer, "A50", "MAb00", full, "Average Choice", "100 of 300 in both"},
		{grade.Steer, "A50", "MAb99", full, "Average Choice", "199 of 300 in both"},
		{grade.Steer, "A50", "Ab00", full, "High Choice", "200 of 300 in both"},
		{grade.Steer, "A50", "Ab100", full, "High Choice", "the top is held inside the grade"},
		{grade.Steer, "A50", "SlAb99", third, "High Choice", "one under the first third"},
		{grade.Steer, "A50", "MAb00", third, "Low Prime", "a third of 300 down, to the line"},
		{grade.Steer, "A50", "Ab00", third, "Average Prime", "a third of 300 down"},
		{grade.Steer, "A50", "MAb99", two, "High Choice", "one under two thirds"},
		{grade.Steer, "A50", "Ab00", two, "Low Prime", "two thirds of 300 down, to the line"},
		{grade.Steer, "A50", "Sm00", full, "Low Select", "at the foot of both"},
		{grade.Steer, "A50", "Mt49", full, "Low Select", "149 of 300 is 49 of 100"},
		{grade.Steer, "A50", "Mt50", full, "High Select", "150 of 300 is 50 of 100"},
		{grade.Steer, "A50", "Md99", full, "High Select", "299 of 300 is 99 of 100"},
		{grade.Steer, "A50", "Sm00", third, "High Select", "200 of 300 is 66 of 100"},
		{grade.Steer, "A50", "Sm99", third, "High Select", "299 of 300 is 99 of 100"},
		{grade.Steer, "A50", "Mt00", third, "Low Choice", "a third of 300 down, to the line"},
		{grade.Steer, "A50", "Md00", third, "Average Choice", "a third of 300 down"},
		{grade.Steer, "A50", "Md99", third, "Average Choice", "a third of 300 down"},
		{grade.Steer, "A50", "Sm49", two, "Low Select", "149 of 300 is 49 of 100"},
		{grade.Steer, "A50", "Sm50", two, "High Select", "150 of 300 is 50 of 100"},
		{grade.Steer, "A50", "Mt99", two, "High Select", "one under two thirds"},
		{grade.Steer, "A50", "Md00", two, "Low Choice", "two thirds of 300 down, to the line"},
		{grade.Steer, "A50", "Sl00", full, "Low Standard", "at the foot of both"},
		{grade.Steer, "A50", "Sl33", full, "Low Standard", "33 of 100 is 66 of 200"},
		{grade.Steer, "A50", "Sl34", full, "Average Standard", "34 of 100 is 68 of 200"},
		{grade.Steer, "A50", "Sl66", full, "Average Standard", "66 of 100 is 132 of 200"},
		{grade.Steer, "A50", "Sl67", full, "High Standard", "67 of 100 is 134 of 200"},
		{grade.Steer, "A50", "Sl00", third, "High Standard", "the taught third: the foot of the upper third"},
		{grade.Steer, "A50", "Sl00", two, "Average Standard", "the taught two thirds: the foot of the middle third"},
		{grade.Steer, "A50", "Sl33", third, "High Standard", "just under a third"},
		{grade.Steer, "A50", "Sl34", third, "Low Select", "just over a third"},
		{grade.Steer, "A50", "Sl83", third, "Low Select", "49 and two thirds left"},
		{grade.Steer, "A50", "Sl84", third, "High Select", "50 and two thirds left"},
		{grade.Steer, "A50", "Sl66", two, "High Standard", "just under two thirds"},
		{grade.Steer, "A50", "Sl67", two, "Low Select", "just over two thirds"},
		{grade.Steer, "A50", "Tr00", full, "Low Standard", "half of 200 down, to the line"},
		{grade.Steer, "A50", "PD99", full, "Utility", "one under half"},
		{grade.Steer, "A50", "Tr66", full, "Low Standard", "66 left"},
		{grade.Steer, "A50", "Tr67", full, "Average Standard", "67 left"},
		{grade.Steer, "A50", "Tr99", full, "Average Standard", "99 left"},
		{grade.Steer, "A50", "PD33", third, "Utility", "33 and a third are lost"},
		{grade.Steer, "A50", "PD34", third, "Low Standard", "two thirds left"},
		{grade.Steer, "A50", "Tr67", third, "Average Standard", "133 and two thirds left"},
		{grade.Steer, "A50", "Tr68", third, "High Standard", "134 and two thirds left"},
		{grade.Steer, "A50", "PD66", two, "Utility", "66 and two thirds are lost"},
		{grade.Steer, "A50", "PD67", two, "Low Standard", "a third left"},
		{grade.Steer, "A50", "Devoid99", full, "Utility", "nothing below Standard and Commercial"},
		{grade.Steer, "C00", "Mt50", full, "Low Commercial", "half of 300 down, to the line"},
		{grade.Steer, "C00", "Mt49", full, "Utility", "one under half"},
		{grade.Steer, "C00", "Sm50", third, "Low Commercial", "a sixth of 300 down, to the line"},
		{grade.Steer, "C00", "Sm49", third, "Utility", "one under a sixth"},
		{grade.Steer, "C00", "Md00", third, "Average Commercial", "150 of 300 left"},
		{grade.Steer, "C00", "Mt00", two, "Low Commercial", "a third of 300 down, to the line"},
		{grade.Steer, "C00", "Sm99", two, "Utility", "one under a third"},
		{grade.Steer, "C00", "PD00", full, "Utility", "nothing below Commercial"},
		{grade.Steer, "C00", "Devoid00", full, "Cutter", "nothing below Commercial"},
		{grade.Steer, "B50", "SlAb50", full, "Low Choice", "Choice in B is 250 wide at B50"},
		{grade.Steer, "B50", "Mt00", full, "Standard", "Select is closed in B"},
		{grade.Steer, "B50", "Md57", full, "High Standard", "157 of 250 is 219 of 350 over PD50, which is Sl19"},
		{grade.Steer, "B50", "SlAb49", full, "High Standard", "249 of 250 is 348 of 350"},
		{grade.Steer, "B50", "Mt00", third, "High Standard", "two thirds of 350 over PD50 is Sl83"},
		{grade.Steer, "B50", "Mt84", third, "Low Choice", "83 and a third are lost"},
		{grade.Cow, "A50", "SlAb00", full, "High Select", "no grade above Choice, which is 300 wide and held inside"},
		{grade.Cow, "A50", "Ab100", full, "High Select", "held inside the grade"},
		{grade.Cow, "A50", "Ab100", third, "Average Choice", "199 of 300 left"},
		{grade.Cow, "B50", "SlAb49", full, "High Standard", "249 of 250, as a steer: Prime is above, open or not"},
		{grade.Cow, "B50", "SlAb50", full, "High Standard", "held inside the 250"},
		{grade.Cow, "B50", "Mt84", third, "Low Choice", "83 and a third are lost, as a steer"},
		{grade.Cow, "B50", "Mt83", third, "High Standard", "83 and a third are lost, as a steer"},
		{grade.Bullock, "A50", "Sl34", full, "Average Standard", "as a steer in column A"},
		{grade.Bullock, "A50", "PD99", full, "Utility", "as a steer in column A"},
		{grade.Bullock, "B00", "Mt49", full, "Low Select", "in column A"},
		{grade.Bull, "A50", "Ab50", full, "No grade", "nothing to lose"},
	} {
		c := carcass(tt.score, tt.marbling)
		c.Sex, c.Lean.Dark = tt.sex, tt.dark
		wantQuality(t, grade.Current, c, tt.want, tt.dark.String()+": "+tt.reason)
	}
	c := carcass("A50", "Sl67")
	c.Lean.Dark = full
	wantQuality(t, grade.Edition1975, c, "High Standard", "Good loses as Select")
	c = carcass("A50", "SlAb00")
	c.Lean = grade.Lean{Firmness: grade.SlightlyFirm, Dark: full}
	wantQuality(t, grade.Current, c, "High Select", "too soft for Prime, counted from the top of Choice")
	c.Lean = grade.Lean{Firmness: grade.SlightlyFirm, Dark: third}
	wantQuality(t, grade.Current, c, "Average Choice", "too soft for Prime, counted from the top of Choice")
}

// TestQualityRefuses holds the error for every field of the evidence, which comes
// first, and that measures are looked at by Assess alone.
func TestQualityRefuses(t *testing.T) {
	with := func(f func(*grade.Carcass)) grade.Carcass { c := carcass("A50", "Sm00"); f(&c); return c }
	const sexes, firms, darks, marblings = "steer, heifer, cow, bullock, bull",
		"very soft, soft, moderately soft, slightly soft, slightly firm, moderately firm, firm", "none, one third, two thirds, full", "Devoid00 to Ab100"
	for _, tt := range []struct {
		name string
		c    grade.Carcass
		want grade.FieldError
	}{
		{"nothing set", grade.Carcass{}, grade.FieldError{Field: "sex class", Allowed: sexes, Err: grade.ErrMissing}},
		{"unknown sex", with(func(c *grade.Carcass) { c.Sex = 6 }), grade.FieldError{Field: "sex class", Value: "sex class(6)", Allowed: sexes, Err: grade.ErrUnknown}},
		{"no skeletal", with(func(c *grade.Carcass) { c.Maturity.Skeletal = 0; c.Marbling = 0 }), grade.FieldError{Field: "skeletal maturity", Allowed: "A00 to E100", Err: grade.ErrMissing}},
		{"impossible teeth", with(func(c *grade.Carcass) { c.Maturity.Teeth = maturity.Incisors(9) }), grade.FieldError{Field: "teeth", Value: "9 permanent incisors", Allowed: "0 to 8", Err: grade.ErrRange}},
		{"no marbling", with(func(c *grade.Carcass) { c.Marbling = 0; c.Lean.Firmness = 8 }), grade.FieldError{Field: "marbling", Allowed: marblings, Err: grade.ErrMissing}},
		{"impossible marbling", with(func(c *grade.Carcass) { c.Marbling = grade.Small.At(140) }), grade.FieldError{Field: "marbling", Value: "Sm(140)", Allowed: marblings, Err: grade.ErrRange}},
		{"unknown firmness", with(func(c *grade.Carcass) { c.Lean = grade.Lean{Firmness: 8, Dark: 4} }), grade.FieldError{Field: "firmness", Value: "firmness(8)", Allowed: firms, Err: grade.ErrUnknown}},
		{"unknown dark cut", with(func(c *grade.Carcass) { c.Lean.Dark = 4 }), grade.FieldError{Field: "dark cut", Value: "dark cut(4)", Allowed: darks, Err: grade.ErrUnknown}},
		{"a bull is checked too", with(func(c *grade.Carcass) { c.Sex = grade.Bull; c.Marbling = 0 }), grade.FieldError{Field: "marbling", Allowed: marblings, Err: grade.ErrMissing}},
	} {
		t.Run(tt.name, func(t *testing.T) {
			q, err := grade.Current.Quality(tt.c)
			faulttest.Field(t, "Quality", err, tt.want)
			a, err := grade.Current.Assess(tt.c)
			faulttest.Field(t, "Assess", err, tt.want)
			if q != 0 || a != (grade.Assessment{}) {
				t.Errorf("beside the error: %v, %+v", q, a)
			}
		})
	}
	_, err := grade.Edition(0).Quality(carcass("A50", "Sm00"))
	faulttest.Field(t, "no edition", err, grade.FieldError{Field: "edition", Allowed: "1975, 1987, 1997, 2016, 2017", Err: grade.ErrMissing})
	_, err = grade.Rules{Edition: grade.Current, Maturity: maturity.Balancing{Tens: 3}}.Assess(carcass("A50", "Sm00"))
	faulttest.Field(t, "rules", err, grade.FieldError{Field: "rules: tens", Value: "tens(3)", Allowed: "keep units, toward bone, toward lean", Err: grade.ErrUnknown})
	c := carcass("A50", "Sm00")
	c.Measures = grade.Measures{}
	if q, err := grade.Current.Quality(c); err != nil || q.String() != "Low Choice" {
		t.Errorf("Quality without measures: %v, %v", q, err)
	}
	a, err := grade.Current.Assess(c)
	faulttest.Field(t, "Assess without measures", err, grade.FieldError{Path: "measures.fat", Field: "fat", Allowed: "0 in to 3 in", Err: grade.ErrMissing})
	if a != (grade.Assessment{}) {
		t.Errorf("beside the error: %+v", a)
	}
}
