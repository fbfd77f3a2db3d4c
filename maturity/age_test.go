package maturity_test

import (
	"fmt"
	"math"
	"testing"

	"example.com/ribface/internal/testkit/faulttest"
	"example.com/ribface/maturity"
	"github.com/google/go-cmp/cmp"
)

// TestScoreMonths holds the straight lines between the ages of the groups
// (ams-maturity-slides for the ends; derived between them).
func TestScoreMonths(t *testing.T) {
	tests := []struct {
		score string
		want  maturity.Months
	}{
		{"A00", 9}, {"A04", 9}, {"A05", 10}, {"A50", 19}, {"A99", 29},
		{"B00", 30}, {"B08", 30}, {"B09", 31}, {"B99", 41},
		{"C00", 42}, {"C03", 42}, {"C04", 43}, {"C99", 71},
		{"D00", 72}, {"D50", 84}, {"D99", 95},
	}
	for _, tt := range tests {
		if got, ok := maturity.MustParse(tt.score).Months(); got != tt.want || !ok {
			t.Errorf("%s: %d, %v; want %d", tt.score, got, ok, tt.want)
		}
	}
	for _, s := range []maturity.Score{0, maturity.E.At(0), maturity.E.At(100), maturity.A.At(101)} {
		if got, ok := s.Months(); got != 0 || ok {
			t.Errorf("%v gives %d, %v", s, got, ok)
		}
	}
}

// TestIncisors holds every count, possible or not, and its words.
func TestIncisors(t *testing.T) {
	for n := 0; n <= 8; n++ {
		teeth := maturity.Incisors(n)
		if got, ok := teeth.Count(); got != n || !ok {
			t.Errorf("Incisors(%d) counts %d, %v", n, got, ok)
		}
		want := fmt.Sprintf("%d permanent incisors", n)
		if n == 1 {
			want = "1 permanent incisor"
		}
		if diff := cmp.Diff(want, teeth.String()); diff != "" {
			t.Errorf("Incisors(%d): (-want +got)\n%s", n, diff)
		}
	}
	for n, want := range map[int]maturity.Teeth{math.MinInt: -1, -1: -1, 9: -10, 99: -100, 100: -101, math.MaxInt: -101} {
		teeth := maturity.Incisors(n)
		if teeth != want {
			t.Errorf("Incisors(%d) = %d, want %d", n, teeth, want)
		}
		asked := "a negative count of permanent incisors"
		if n >= 0 {
			asked = fmt.Sprintf("%d permanent incisors", min(n, 100))
		}
		if got, ok := teeth.Count(); got != 0 || ok || teeth.String() != asked {
			t.Errorf("Incisors(%d): %d, %v, %q", n, got, ok, teeth)
		}
	}
	if got, ok := maturity.Teeth(0).Count(); got != 0 || ok || maturity.Teeth(0).String() != "not looked at" {
		t.Errorf("zero teeth: %d, %v, %q", got, ok, maturity.Teeth(0))
	}
	if got, ok := maturity.Teeth(10).Count(); got != 0 || ok {
		t.Errorf("Teeth(10): %d, %v", got, ok)
	}
}

// TestMonthsString holds the words for an age.
func TestMonthsString(t *testing.T) {
	for m, want := range map[maturity.Months]string{0: "none", 1: "1 month", 2: "2 months", 29: "29 months", 600: "600 months", -1: "-1 month"} {
		if got := m.String(); got != want {
			t.Errorf("%d: %q, want %q", int(m), got, want)
		}
	}
}

// TestUnder30 holds that teeth or papers alone are enough, on both sides of the
// limits (published: checkoff-maturity-under30, news-2017-maturity).
func TestUnder30(t *testing.T) {
	tests := []struct {
		name, reason string
		teeth        maturity.Teeth
		papers       maturity.Months
		want         bool
	}{
		{"nothing", "no evidence", 0, 0, false},
		{"no permanent incisors", "a count of none is evidence", maturity.Incisors(0), 0, true},
		{"two incisors", "the most under 30 months", maturity.Incisors(2), 0, true},
		{"three incisors", "one talk report gives 24-30 months and is not followed", maturity.Incisors(3), 0, false},
		{"eight incisors", "an old mouth", maturity.Incisors(8), 0, false},
		{"impossible count", "is no evidence", maturity.Incisors(9), 0, false},
		{"papers of 1 month", "the youngest", 0, 1, true},
		{"papers of 29 months", "the last month under 30", 0, 29, true},
		{"papers of 30 months", "not under 30", 0, 30, false},
		{"papers below zero", "are no evidence", 0, -1, false},
		{"teeth old, papers young", "either is enough", maturity.Incisors(4), 29, true},
		{"teeth young, papers old", "either is enough", maturity.Incisors(2), 30, true},
		{"both old", "neither shows it", maturity.Incisors(3), 30, false},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			if got := (maturity.Evidence{Teeth: tt.teeth, Papers: tt.papers}).Under30(); got != tt.want {
				t.Errorf("%v, want %v: %s", got, tt.want, tt.reason)
			}
		})
	}
}

// young is teeth under 30 months on a skeleton and lean.
func young(skeletal, lean maturity.Score) maturity.Evidence {
	return maturity.Evidence{Skeletal: skeletal, Lean: lean, Teeth: maturity.Incisors(2)}
}

// TestEvidence holds overall maturity with and without age, and the error of
// Check for both, on both sides of every line.
func TestEvidence(t *testing.T) {
	a, b, c, d, e := maturity.A, maturity.B, maturity.C, maturity.D, maturity.E
	const scores = "A00 to E100"
	none := maturity.FieldError{}
	lean := maturity.FieldError{Field: "lean maturity", Allowed: scores, Err: maturity.ErrMissing}
	teeth := func(value string) maturity.FieldError {
		return maturity.FieldError{Field: "teeth", Value: value, Allowed: "0 to 8", Err: maturity.ErrRange}
	}
	nine, less := teeth("9 permanent incisors"), teeth("a negative count of permanent incisors")
	tests := []struct {
		name, reason   string
		e              maturity.Evidence
		byAge, byBone  string // results; empty where refused
		ageErr, wasErr maturity.FieldError
	}{
		{"no age", "balanced either way", maturity.Evidence{Skeletal: b.At(20), Lean: a.At(60)}, "B00", "B00", none, none},
		{"teeth, all in A", "the balanced score is kept", young(a.At(80), a.At(60)), "A70", "A70", none, none},
		{"teeth, balanced at A99", "the last score in A is kept", young(a.At(99), a.At(99)), "A99", "A99", none, none},
		{"teeth, balanced at B00", "A99 stands in for it", young(b.At(0), b.At(0)), "A99", "B00", none, none},
		{"teeth, skeleton in B", "A99 stands in for it", young(b.At(60), b.At(40)), "A99", "B50", none, none},
		{"teeth, skeleton in C", "a skeleton in C is opened", young(c.At(99), c.At(99)), "A99", "C99", none, none},
		{"trap: skeleton D00", "a D skeleton is not opened by its age", young(d.At(0), c.At(80)), "C90", "C90", none, none},
		{"trap: skeleton in E", "an E skeleton is not opened by its age", young(e.At(50), e.At(50)), "E50", "E50", none, none},
		{"papers of 29 months", "group A", maturity.Evidence{Skeletal: b.At(10), Lean: b.At(10), Papers: 29}, "A99", "B10", none, none},
		{"papers of 30 months", "balanced", maturity.Evidence{Skeletal: b.At(10), Lean: b.At(10), Papers: 30}, "B10", "B10", none, none},
		{"three incisors", "balanced", maturity.Evidence{Skeletal: b.At(10), Lean: b.At(10), Teeth: maturity.Incisors(3)}, "B10", "B10", none, none},
		{"teeth, no lean, skeleton in A", "the skeletal score is kept", young(a.At(30), 0), "A30", "", none, lean},
		{"teeth, no lean, skeleton C99", "lean may be left out under D00", young(c.At(99), 0), "A99", "", none, lean},
		{"teeth, no lean, skeleton D00", "lean is needed again", young(d.At(0), 0), "", "", lean, lean},
		{"old teeth, no lean", "the age does not settle it", maturity.Evidence{Skeletal: a.At(30), Teeth: maturity.Incisors(8)}, "", "", lean, lean},
		{"no age, no lean", "lean is needed", maturity.Evidence{Skeletal: a.At(30)}, "", "", lean, lean},
		{"teeth, bad lean", "lean is checked where it is given", young(a.At(30), a.At(200)), "", "", maturity.FieldError{Field: "lean maturity", Value: "A(200)", Allowed: scores, Err: maturity.ErrRange}, maturity.FieldError{Field: "lean maturity", Value: "A(200)", Allowed: scores, Err: maturity.ErrRange}},
		{"teeth, no skeletal", "skeletal is always needed", young(0, a.At(30)), "", "", maturity.FieldError{Field: "skeletal maturity", Allowed: scores, Err: maturity.ErrMissing}, maturity.FieldError{Field: "skeletal maturity", Allowed: scores, Err: maturity.ErrMissing}},
		{"nothing", "the first missing field", maturity.Evidence{}, "", "", maturity.FieldError{Field: "skeletal maturity", Allowed: scores, Err: maturity.ErrMissing}, maturity.FieldError{Field: "skeletal maturity", Allowed: scores, Err: maturity.ErrMissing}},
		{"nine incisors", "no mouth has them", maturity.Evidence{Skeletal: a.At(30), Lean: a.At(30), Teeth: maturity.Incisors(9)}, "", "", nine, nine},
		{"a count made by hand", "one above the last", maturity.Evidence{Skeletal: a.At(30), Lean: a.At(30), Teeth: 10}, "", "", nine, nine},
		{"a count below none", "refused alike", maturity.Evidence{Skeletal: a.At(30), Lean: a.At(30), Teeth: maturity.Incisors(-1)}, "", "", less, less},
		{"eight incisors", "the full mouth", maturity.Evidence{Skeletal: a.At(30), Lean: a.At(30), Teeth: maturity.Incisors(8)}, "A30", "A30", none, none},
		{"papers of 600 months", "the oldest that is taken", maturity.Evidence{Skeletal: a.At(30), Lean: a.At(30), Papers: 600}, "A30", "A30", none, none},
		{"papers of 601 months", "no cow is that old", maturity.Evidence{Skeletal: a.At(30), Lean: a.At(30), Papers: 601}, "", "", maturity.FieldError{Field: "papers", Value: "601 months", Allowed: "1 to 600 months, 0 for none", Err: maturity.ErrRange}, maturity.FieldError{Field: "papers", Value: "601 months", Allowed: "1 to 600 months, 0 for none", Err: maturity.ErrRange}},
		{"papers below zero", "no age", maturity.Evidence{Skeletal: a.At(30), Lean: a.At(30), Papers: -1}, "", "", maturity.FieldError{Field: "papers", Value: "-1 month", Allowed: "1 to 600 months, 0 for none", Err: maturity.ErrRange}, maturity.FieldError{Field: "papers", Value: "-1 month", Allowed: "1 to 600 months, 0 for none", Err: maturity.ErrRange}},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			for _, way := range []struct {
				name  string
				f     func(maturity.Evidence) (maturity.Score, error)
				byAge bool
				want  string
				err   maturity.FieldError
			}{
				{"ByAge", maturity.Balancing{}.ByAge, true, tt.byAge, tt.ageErr},
				{"ByBone", maturity.Balancing{}.ByBone, false, tt.byBone, tt.wasErr},
			} {
				got, err := way.f(tt.e)
				check := tt.e.Check(way.byAge)
				steps := maturity.Balancing{}.Steps(tt.e, way.byAge)
				if way.want == "" {
					faulttest.Field(t, way.name, err, way.err)
					faulttest.Field(t, "Check for "+way.name, check, way.err)
					if got != 0 || steps != nil {
						t.Errorf("%s: %v with %d steps beside the error", way.name, got, len(steps))
					}
					continue
				}
				if err != nil || check != nil || got.String() != way.want {
					t.Errorf("%s: %v, %v, Check %v; want %s: %s", way.name, got, err, check, way.want, tt.reason)
				}
				if n := len(steps); n == 0 || steps[n-1].Result != way.want {
					t.Errorf("%s: the steps %v do not end in %s", way.name, steps, way.want)
				}
			}
		})
	}
}

// TestAgeRefusesRules holds that unnamed rules are refused on every way to an
// overall maturity, also where age settles it and the rules are not needed.
func TestAgeRefusesRules(t *testing.T) {
	for name, r := range map[string]maturity.Balancing{"tens": {Tens: 3}, "old lean": {OldLean: 2}} {
		for what, e := range map[string]maturity.Evidence{
			"no age":             {Skeletal: 150, Lean: 150},
			"young":              young(150, 150),
			"young without lean": young(150, 0),
			"young skeleton D":   young(450, 450),
			"old by teeth":       {Skeletal: 150, Lean: 150, Teeth: maturity.Incisors(4)},
		} {
			want := maturity.FieldError{Field: "rules: " + name, Value: "old lean(2)", Allowed: "may cross, stays in B", Err: maturity.ErrUnknown}
			if name == "tens" {
				want.Value, want.Allowed = "tens(3)", "keep units, toward bone, toward lean"
			}
			_, err := r.ByAge(e)
			faulttest.Field(t, what, err, want)
			if e.Lean != 0 {
				_, err = r.ByBone(e)
				faulttest.Field(t, what, err, want)
			}
			if steps := r.Steps(e, true); steps != nil {
				t.Errorf("%s, %s: %d steps", name, what, len(steps))
			}
		}
	}
}

// TestRulesReachByAge holds that the rules of the caller are used on both ways
// that balance.
func TestRulesReachByAge(t *testing.T) {
	r := maturity.Balancing{Tens: maturity.TensTowardBone, OldLean: maturity.OldLeanStaysInB}
	for name, e := range map[string]maturity.Evidence{
		"no age": {Skeletal: maturity.B.At(90), Lean: maturity.C.At(60)},
		"old":    {Skeletal: maturity.B.At(90), Lean: maturity.C.At(60), Papers: 40},
	} {
		if got, err := r.ByAge(e); err != nil || got.String() != "B90" {
			t.Errorf("%s: ByAge %v, %v; want B90", name, got, err)
		}
		if got, err := r.ByBone(e); err != nil || got.String() != "B90" {
			t.Errorf("%s: ByBone %v, %v; want B90", name, got, err)
		}
	}
	if got, err := r.ByAge(young(maturity.A.At(34), maturity.A.At(34))); err != nil || got.String() != "A30" {
		t.Errorf("young: %v, %v; want A30", got, err)
	}
}
