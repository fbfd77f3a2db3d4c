package maturity_test

import (
	"testing"

	"example.com/ribface/internal/testkit"
	"example.com/ribface/maturity"
	"example.com/ribface/maturity/cite"
	"github.com/google/go-cmp/cmp"
)

// The citations of the steps.
var (
	citedMean  = cite.Citation{Standing: cite.CommonPractice, IDs: "quiz-quality-concepts"}
	citedGroup = cite.Citation{Standing: cite.Official, IDs: "ams-maturity-slides cfr-1965-53-general"}
	citedAge   = cite.Citation{Standing: cite.Official, IDs: "fr-2017-12-06"}
	citedUnder = cite.Citation{Standing: cite.Published, IDs: "news-2017-maturity checkoff-maturity-under30 ext-tamu-maturity-2018 bif-quality"}
	citedDE    = cite.Citation{Standing: cite.Published, IDs: "ext-tamu-maturity-2018"}
	citedOver  = cite.Citation{Standing: cite.Derived, IDs: "news-2017-maturity"}
	citedOpen  = cite.Citation{Standing: cite.Derived}
	citedFives = cite.Citation{Standing: cite.Memory}
)

const (
	stepName  = "overall maturity"
	plainMean = "skeletal and lean at most 40 units apart: their mean"
	movedMean = "skeletal and lean more than 40 units apart: their mean, then 10 units toward skeletal"
)

// TestSteps holds every line that an explanation of maturity can have.
func TestSteps(t *testing.T) {
	a, b, c, d := maturity.A, maturity.B, maturity.C, maturity.D
	mean := func(given, result string) cite.Step {
		return cite.Step{Name: stepName, Rule: plainMean, Given: given, Result: result, Cite: citedMean}
	}
	moved := func(given, result string) cite.Step {
		return cite.Step{Name: stepName, Rule: movedMean, Given: given, Result: result, Cite: citedMean}
	}
	tests := []struct {
		name, reason string
		rules        maturity.Balancing
		e            maturity.Evidence
		byAge        bool
		want         []cite.Step
	}{
		{"mean alone", "nothing else moves it", maturity.Balancing{}, maturity.Evidence{Skeletal: a.At(60), Lean: a.At(80)}, true,
			[]cite.Step{mean("skeletal A60, lean A80", "A70")}},
		{"gap of 40", "the plain mean still", maturity.Balancing{}, maturity.Evidence{Skeletal: a.At(40), Lean: a.At(0)}, true,
			[]cite.Step{mean("skeletal A40, lean A00", "A20")}},
		{"gap of 40 the other way", "the plain mean still", maturity.Balancing{}, maturity.Evidence{Skeletal: a.At(0), Lean: a.At(40)}, true,
			[]cite.Step{mean("skeletal A00, lean A40", "A20")}},
		{"moved to older bone", "41 apart", maturity.Balancing{}, maturity.Evidence{Skeletal: a.At(41), Lean: a.At(0)}, true,
			[]cite.Step{moved("skeletal A41, lean A00", "A31")}},
		{"moved to younger bone", "41 apart", maturity.Balancing{}, maturity.Evidence{Skeletal: a.At(0), Lean: a.At(41)}, true,
			[]cite.Step{moved("skeletal A00, lean A41", "A10")}},
		{"held above", "lean far older", maturity.Balancing{}, maturity.Evidence{Skeletal: a.At(0), Lean: d.At(0)}, true,
			[]cite.Step{moved("skeletal A00, lean D00", "B40"), {Name: stepName, Rule: "never more than one full group from skeletal", Given: "B40 with skeletal A00", Result: "B00", Cite: citedGroup}}},
		{"held below, then the floor", "bone C50, lean A20", maturity.Balancing{}, maturity.Evidence{Skeletal: c.At(50), Lean: a.At(20)}, true,
			[]cite.Step{moved("skeletal C50, lean A20", "B45"),
				{Name: stepName, Rule: "never more than one full group from skeletal", Given: "B45 with skeletal C50", Result: "B50", Cite: citedGroup},
				{Name: stepName, Rule: "skeletal C15 or older: not younger than C00", Given: "B50 with skeletal C50", Result: "C00", Cite: cite.Citation{Standing: cite.CommonPractice, IDs: "quiz-quality-concepts"}}}},
		{"the floor at C15", "just old enough", maturity.Balancing{}, maturity.Evidence{Skeletal: c.At(15), Lean: b.At(60)}, true,
			[]cite.Step{moved("skeletal C15, lean B60", "B98"), {Name: stepName, Rule: "skeletal C15 or older: not younger than C00", Given: "B98 with skeletal C15", Result: "C00", Cite: citedMean}}},
		{"no floor at C14", "just too young", maturity.Balancing{}, maturity.Evidence{Skeletal: c.At(14), Lean: b.At(60)}, true,
			[]cite.Step{moved("skeletal C14, lean B60", "B97")}},
		{"tens toward bone", "a five goes down", maturity.Balancing{Tens: maturity.TensTowardBone}, maturity.Evidence{Skeletal: a.At(20), Lean: a.At(30)}, true,
			[]cite.Step{mean("skeletal A20, lean A30", "A25"), {Name: stepName, Rule: "to the nearest ten units, fives toward skeletal", Given: "A25 with skeletal A20", Result: "A20", Cite: citedFives}}},
		{"tens toward lean", "a five goes up", maturity.Balancing{Tens: maturity.TensTowardLean}, maturity.Evidence{Skeletal: a.At(20), Lean: a.At(30)}, true,
			[]cite.Step{mean("skeletal A20, lean A30", "A25"), {Name: stepName, Rule: "to the nearest ten units, fives toward lean", Given: "A25 with skeletal A20", Result: "A30", Cite: citedOpen}}},
		{"old lean held", "bone in B", maturity.Balancing{OldLean: maturity.OldLeanStaysInB}, maturity.Evidence{Skeletal: b.At(90), Lean: c.At(30)}, true,
			[]cite.Step{mean("skeletal B90, lean C30", "C10"), {Name: stepName, Rule: "skeletal in B: older lean does not carry it into C, by the caller's choice", Given: "C10 with skeletal B90", Result: "B99", Cite: citedOpen}}},
		{"old lean held, bone in C", "bone in C is held by nothing", maturity.Balancing{OldLean: maturity.OldLeanStaysInB}, maturity.Evidence{Skeletal: c.At(0), Lean: c.At(30)}, true,
			[]cite.Step{mean("skeletal C00, lean C30", "C15")}},
		{"teeth", "group A, with the balanced score", maturity.Balancing{}, maturity.Evidence{Skeletal: a.At(60), Lean: a.At(80), Teeth: maturity.Incisors(2)}, true,
			[]cite.Step{
				{Name: "age by teeth or papers", Rule: "two permanent incisors or fewer, or papers under 30 months: group A", Given: "teeth 2 permanent incisors, papers none", Result: "A", Cite: citedUnder},
				{Name: stepName, Rule: "units within A do not move a line; the balanced score where it lies in A, else A99", Given: "skeletal A60, lean A80", Result: "A70", Cite: citedOpen}}},
		{"papers, skeleton C99", "the last that its age opens", maturity.Balancing{}, maturity.Evidence{Skeletal: c.At(99), Lean: c.At(99), Papers: 29}, true,
			[]cite.Step{
				{Name: "age by teeth or papers", Rule: "two permanent incisors or fewer, or papers under 30 months: group A", Given: "teeth not looked at, papers 29 months", Result: "A", Cite: citedUnder},
				{Name: stepName, Rule: "units within A do not move a line; the balanced score where it lies in A, else A99", Given: "skeletal C99, lean C99", Result: "A99", Cite: citedOpen}}},
		{"papers, skeleton D00", "not opened by its age", maturity.Balancing{}, maturity.Evidence{Skeletal: d.At(0), Lean: d.At(0), Papers: 29}, true,
			[]cite.Step{
				{Name: "age by teeth or papers", Rule: "a skeleton in D or E is not opened to the young grades by an age under 30 months", Given: "teeth not looked at, papers 29 months, skeletal D00", Result: "balanced", Cite: citedDE},
				mean("skeletal D00, lean D00", "D00")}},
		{"papers of 30 months", "skeletal and lean decide", maturity.Balancing{}, maturity.Evidence{Skeletal: a.At(60), Lean: a.At(80), Papers: 30}, true,
			[]cite.Step{
				{Name: "age by teeth or papers", Rule: "30 months or more: skeletal and lean decide", Given: "teeth not looked at, papers 30 months", Result: "balanced", Cite: citedOver},
				mean("skeletal A60, lean A80", "A70")}},
		{"age before 2017", "left aside", maturity.Balancing{}, maturity.Evidence{Skeletal: b.At(60), Lean: b.At(80), Teeth: maturity.Incisors(0)}, false,
			[]cite.Step{
				{Name: "age by teeth or papers", Rule: "in use from 18 December 2017 only", Given: "teeth 0 permanent incisors, papers none", Result: "left aside", Cite: citedAge},
				mean("skeletal B60, lean B80", "B70")}},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			if diff := cmp.Diff(tt.want, tt.rules.Steps(tt.e, tt.byAge)); diff != "" {
				t.Errorf("%s: (-want +got)\n%s", tt.reason, diff)
			}
		})
	}
}

// TestStepsAgree holds over a net of scores and every choice of rules that
// the steps end in what Balance gives, and that each step but the first starts
// from the result of the one before it.
func TestStepsAgree(t *testing.T) {
	boneStep, leanStep := maturity.Score(7), maturity.Score(5)
	if testkit.Exhaustive() {
		boneStep, leanStep = 3, 2
	}
	for tens := maturity.KeepUnits; tens <= maturity.TensTowardLean; tens++ {
		for old := maturity.OldLeanMayCross; old <= maturity.OldLeanStaysInB; old++ {
			r := maturity.Balancing{Tens: tens, OldLean: old}
			for bone := maturity.A.At(0); bone <= maturity.E.At(100); bone += boneStep {
				for lean := maturity.A.At(0); lean <= maturity.E.At(100); lean += leanStep {
					want, err := r.Balance(bone, lean)
					if err != nil {
						t.Fatal(err)
					}
					steps := r.Steps(maturity.Evidence{Skeletal: bone, Lean: lean}, false)
					last := ""
					for i, s := range steps {
						if i > 0 && s.Given != last+" with skeletal "+bone.String() || s.Result == last {
							t.Fatalf("%v, skeletal %v, lean %v: step %d of %v does not follow", r, bone, lean, i, steps)
						}
						last = s.Result
					}
					if last != want.String() {
						t.Fatalf("%v, skeletal %v, lean %v: the steps end in %s, Balance gives %v", r, bone, lean, last, want)
					}
				}
			}
		}
	}
}
