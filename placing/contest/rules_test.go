package contest_test

import (
	"encoding/json"
	"slices"
	"testing"

	"example.com/ribface/grade"
	"example.com/ribface/internal/testkit"
	"example.com/ribface/internal/testkit/faulttest"
	"example.com/ribface/maturity"
	"example.com/ribface/placing"
	"example.com/ribface/placing/contest"
	"github.com/google/go-cmp/cmp"
)

// TestSettingsThroughJSON holds that rules with their ladders, and formats, come back
// from JSON as they were.
func TestSettingsThroughJSON(t *testing.T) {
	_, rules, _, _ := springKey(t)
	grades, err := newLadder(pts(10), []int{1, 2, 3, 4, 5}, []contest.Points{pts(2), contest.PointsOf(2.5), pts(0), pts(1)})
	faulttest.Text(t, err, "")
	taught, _ := contest.TaughtThirds()
	lines := rules
	lines.Placing = placing.CardRules{Double: placing.Refused, FloorAtZero: true}
	lines.Quality.Marks.Blank = placing.LowestScore
	lines.Yield = contest.YieldRule{Step: contest.WholeGrades, Value: pts(10), Ladder: grades, Marks: placing.CardRules{Unreadable: placing.Refused}}
	for _, r := range []contest.Scoring{{}, rules, lines, {Yield: taught}} {
		through(t, r)
	}
	through(t, contest.Format{})
	f, _, officials, key := springKey(t)
	through(t, f)
	through(t, officials)
	through(t, key)
	through(t, []contest.Estimate{{Class: "b", Exhibit: 3, Member: contest.Member{ID: "7", Team: "a"}, Facts: contest.Facts{Skeletal: maturity.A.At(60), Lean: maturity.B.At(1), Maturity: maturity.A.At(2),
		Marbling: grade.Small.At(40), Quality: grade.NoGrade.Part(grade.Whole), Fat: grade.Inches(0), Ribeye: grade.SquareInches(1), KPH: grade.Percent(0), Weight: grade.Pounds(100), Yield: grade.Grades(0), Preliminary: grade.ShortcutGrades(2)}},
		{Facts: contest.Facts{Marks: contest.Marks{Yield: placing.Blank, KPH: placing.Unreadable}}}})
	through(t, []contest.HandScore{{Component: "x", Score: pts(0)}, {Mark: placing.Blank}, {}})
	through(t, []contest.PlacingCard{{Class: "b", Card: placing.Card{Mark: placing.DoubleMarked}}, {Card: placing.Card{Order: placing.MustParseOrder("2-1")}}})
	ladder := poultryCarcasses(t).ladder
	b, err := json.Marshal(ladder)
	if want := `{"value":10,"rungs":["A","B","C","no grade"],"lines":[3,3,4]}`; string(b) != want || err != nil {
		t.Errorf("a ladder is %s, %v; want %s", b, err, want)
	}
	kept := ladder
	faulttest.Text(t, json.Unmarshal([]byte(`{"value":10,"rungs":["A","B"],"lines":[1],"more":1}`), &kept), "name: more: unknown; allowed: value, rungs, lines")
	if d := cmp.Diff(ladder, kept); d != "" {
		t.Errorf("what is refused changes the ladder:\n%s", d)
	}
}

// through holds that a value comes back from JSON as it was.
func through[T any](t *testing.T, v T) {
	t.Helper()
	b, err := json.Marshal(v)
	if err != nil {
		t.Errorf("%T: %v", v, err)
		return
	}
	var back T
	if err := json.Unmarshal(b, &back); err != nil {
		t.Errorf("%s: %v", b, err)
	}
	if d := cmp.Diff(v, back); d != "" {
		t.Errorf("%s comes back changed (-want +got):\n%s", b, d)
	}
}

// TestEveryQualityHasARung holds that a ladder of all qualities of an edition takes
// whatever the library grades under it: every sex class, maturity in tens (a sample
// has 0 and 50), marbling in tens, and every dark cutter.
func TestEveryQualityHasARung(t *testing.T) {
	left := map[grade.Quality]bool{}
	for e := grade.Edition(1); e.IsValid(); e++ {
		ladder, err := evenLadder(pts(10), pts(2), contest.ChartQualities(e))
		faulttest.Text(t, err, "")
		full := contest.QualityRule{Ladder: ladder}
		card, err := evenLadder(pts(10), pts(2), contest.CardQualities())
		faulttest.Text(t, err, "")
		narrow := contest.QualityRule{Ladder: card}
		said := slices.DeleteFunc(contest.ChartQualities(e), func(q grade.Quality) bool {
			_, _, err := narrow.Loss(q, q)
			return err == nil
		})
		n := 0
		met := map[grade.Quality]bool{}
		everyQuality(e, func(q grade.Quality) {
			if n++; met[q] {
				return
			}
			met[q] = true
			if _, _, err := full.Loss(q, q); err != nil {
				t.Fatalf("%v: %v", e, err)
			}
			_, _, err := narrow.Loss(q, q)
			if isLeft := slices.Contains(said, q); isLeft != (err != nil) {
				t.Fatalf("%v: %v is left out: %v, %v", e, q, isLeft, err)
			}
			left[q] = left[q] || err != nil
		})
		if n < 10_000 {
			t.Errorf("%v: %d carcasses", e, n)
		}
	}
	if len(left) < 15 {
		t.Errorf("only %d qualities were met", len(left))
	}
}

// everyQuality yields the quality of many carcasses under an edition.
func everyQuality(e grade.Edition, yield func(grade.Quality)) {
	step := 50
	if testkit.Exhaustive() {
		step = 10
	}
	for sex := range grade.Sexes() {
		for g := maturity.A; g <= maturity.E; g++ {
			for ten := 0; ten < 100; ten += step {
				for marbling := grade.Marbling(100); marbling <= 1100; marbling += 10 {
					for dark := grade.DarkCut(0); dark == 0 || dark.IsValid(); dark++ {
						q, err := e.Quality(grade.Carcass{Sex: sex, Maturity: maturity.Evidence{Skeletal: g.At(ten), Lean: g.At(ten)}, Marbling: marbling, Lean: grade.Lean{Dark: dark, BelowCutter: ten == 50}})
						if err == nil {
							yield(q)
						}
					}
				}
			}
		}
	}
}
