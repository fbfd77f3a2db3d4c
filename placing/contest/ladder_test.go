package contest_test

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
	"testing"

	"example.com/ribface/grade"
	"example.com/ribface/internal/refs"
	"example.com/ribface/internal/testkit/faulttest"
	"example.com/ribface/maturity"
	"example.com/ribface/maturity/cite"
	"example.com/ribface/placing"
	"example.com/ribface/placing/contest"
	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

func pts(n int) contest.Points { return contest.PointsOf(float64(n)) }

// newLadder and evenLadder make ladders that are in order, or say why not.
func newLadder[T comparable](value contest.Points, rungs []T, lines []contest.Points) (contest.Ladder[T], error) {
	l := contest.Ladder[T]{Value: value, Rungs: rungs, Lines: lines}
	return l, l.Check()
}

func evenLadder[T comparable](value, each contest.Points, rungs []T) (contest.Ladder[T], error) {
	return newLadder(value, rungs, slices.Repeat([]contest.Points{each}, max(len(rungs)-1, 0)))
}

func tiny(n int64) contest.Points { return contest.PointsUnits(n) }

// table is a published ladder with the source of it.
type table struct {
	ladder contest.Ladder[string]
	from   cite.Citation
}

func published(t *testing.T, ids string, value int, rungs []string, lines ...contest.Points) table {
	t.Helper()
	l, err := newLadder(pts(value), rungs, lines)
	if err != nil {
		t.Fatal(err)
	}
	return table{l, cite.Citation{Standing: cite.Published, IDs: ids}}
}

// poultryCarcasses is the published ladder for ready-to-cook poultry carcasses
// (psu-poultry).
func poultryCarcasses(t *testing.T) table {
	return published(t, "psu-poultry", 10, []string{"A", "B", "C", "no grade"}, pts(3), pts(3), pts(4))
}

// candledEggs is the published ladder for candled eggs (fl-ffa-2013, page 140).
func candledEggs(t *testing.T) table {
	return published(t, "fl-ffa-2013", 5, []string{"AA", "A", "B", "inedible"}, pts(1), pts(1), pts(3))
}

// TestPublishedLadders checks the two tables and the losses that follow from them.
func TestPublishedLadders(t *testing.T) {
	poultry, eggs := poultryCarcasses(t).ladder, candledEggs(t).ladder
	tests := []struct {
		name, source string
		ladder       contest.Ladder[string]
		key, answer  string
		lost         contest.Points
		lines        int
	}{
		{"poultry A to B", "psu-poultry", poultry, "A", "B", pts(3), -1},
		{"poultry B to C", "psu-poultry", poultry, "B", "C", pts(3), -1},
		{"poultry C to no grade", "psu-poultry", poultry, "C", "no grade", pts(4), -1},
		{"poultry A as C", "derived: psu-poultry", poultry, "A", "C", pts(6), -2},
		{"poultry A as no grade loses all", "derived: psu-poultry", poultry, "A", "no grade", pts(10), -3},
		{"poultry no grade as A is the same", "derived: psu-poultry", poultry, "no grade", "A", pts(10), 3},
		{"poultry right", "psu-poultry", poultry, "B", "B", pts(0), 0},
		{"eggs AA to A", "fl-ffa-2013", eggs, "AA", "A", pts(1), -1},
		{"eggs A to B", "fl-ffa-2013", eggs, "A", "B", pts(1), -1},
		{"eggs B to inedible", "fl-ffa-2013", eggs, "B", "inedible", pts(3), -1},
		{"eggs AA as inedible loses all", "derived: fl-ffa-2013", eggs, "AA", "inedible", pts(5), -3},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			lost, lines, err := tt.ladder.Loss(tt.key, tt.answer)
			if lost != tt.lost || lines != tt.lines || err != nil {
				t.Errorf("%s: got %v, %d, %v, want %v, %d", tt.source, lost, lines, err, tt.lost, tt.lines)
			}
		})
	}
}

// TestGradeDeductions holds the ladders and the rule for marks against every row of
// the published tables.
func TestGradeDeductions(t *testing.T) {
	rows := refs.Rows(t, "../../testdata/references", "grade-deductions.csv")
	for _, row := range rows {
		t.Run(row.Get("ladder")+" "+row.Get("line"), func(t *testing.T) {
			if row.Get("ladder") == "yield grade in thirds" {
				taughtThirds(t, row)
				return
			}
			of := poultryCarcasses(t)
			if row.Get("ladder") == "candled eggs" {
				of = candledEggs(t)
			}
			ladder, from := of.ladder, of.from
			if from.IDs != row.Get("source_id") || from.Standing.String() != row.Get("standing") {
				t.Errorf("cited as %v, want %s, %s", from, row.Get("source_id"), row.Get("standing"))
			}
			upper, lower, _ := strings.Cut(row.Get("line"), " to ")
			lost, lines, err := ladder.Loss(upper, lower)
			if lost.String() != row.Get("weight") || lines != -1 || err != nil {
				t.Errorf("lost %v, %d, %v, want %s for one line", lost, lines, err, row.Get("weight"))
			}
			// A blank or double mark loses the whole item, and so does the rule.
			if ladder.Value.String() != row.Get("blank_or_double") {
				t.Errorf("value %v, want %s", ladder.Value, row.Get("blank_or_double"))
			}
			for _, m := range []placing.Mark{placing.Blank, placing.DoubleMarked} {
				if p, cited := (placing.CardRules{}).ItemPenalty(m); p != placing.ZeroPoints || !slices.Contains(strings.Fields(cited.IDs), row.Get("source_id")) {
					t.Errorf("%v: %v, %v", m, p, cited)
				}
			}
			var items int
			if _, err := fmt.Sscanf(row.Get("note"), "%d items", &items); err != nil {
				t.Fatal(err)
			}
			if total := contest.PointsUnits(ladder.Value.Units() * int64(items)); total.String() != row.Get("total") {
				t.Errorf("total %v, want %s", total, row.Get("total"))
			}
		})
	}
	if len(rows) != 9 {
		t.Errorf("%d rows, want 9", len(rows))
	}
}

// taughtThirds holds the rule by that name against one row of its table, at every
// third of a grade from the lowest to the highest.
func taughtThirds(t *testing.T, row refs.Row) {
	rule, from := contest.TaughtThirds()
	if err := rule.Check(); err != nil || from.IDs != row.Get("source_id") || from.Standing.String() != row.Get("standing") {
		t.Errorf("%v, cited as %v, want %s, %s", err, from, row.Get("source_id"), row.Get("standing"))
	}
	off, err := strconv.Atoi(strings.TrimSuffix(row.Get("line"), " off"))
	if err != nil {
		t.Fatal(err)
	}
	middle := func(third int) grade.Yield {
		return yield(t, strconv.Itoa(1+third/3)+[]string{".17", ".50", ".83"}[third%3])
	}
	for third := range 15 - off {
		for _, pair := range [...][2]grade.Yield{{middle(third), middle(third + off)}, {middle(third + off), middle(third)}} {
			lost, steps, err := rule.Loss(pair[0], pair[1])
			if lost.String() != row.Get("weight") || max(steps, -steps) != int64(off) || err != nil {
				t.Errorf("%v for %v: lost %v at %d, %v, want %s", pair[1], pair[0], lost, steps, err, row.Get("weight"))
			}
		}
	}
	if rule.Value.String() != row.Get("total") {
		t.Errorf("value %v, want %s", rule.Value, row.Get("total"))
	}
}

func TestLadder(t *testing.T) {
	capped, err := evenLadder(pts(5), pts(2), []int{1, 2, 3, 4})
	if err != nil {
		t.Fatal(err)
	}
	for answer, want := range map[int]contest.Points{1: pts(0), 2: pts(2), 3: pts(4), 4: pts(5)} {
		if lost, lines, err := capped.Loss(1, answer); lost != want || lines != 1-answer || err != nil {
			t.Errorf("answer %d: got %v, %d, %v, want %v", answer, lost, lines, err, want)
		}
	}
	_, _, err = capped.Loss(9, 1)
	faulttest.Text(t, err, "key: unknown; allowed: a rung of the ladder")
	_, _, err = capped.Loss(1, 9)
	faulttest.Text(t, err, "answer: unknown; allowed: a rung of the ladder")
	_, _, err = contest.Ladder[int]{}.Loss(1, 2)
	faulttest.Text(t, err, "key: unknown; allowed: a rung of the ladder")
	for _, tt := range []struct {
		name  string
		value contest.Points
		rungs []int
		lines []contest.Points
		want  string
	}{
		{"not set", contest.Points{}, []int{1, 2}, []contest.Points{{}}, "value of an item: missing; allowed: over 0 to 1,000,000 points\nline 1: missing; allowed: 0 to 1,000,000 points"},
		{"no value", pts(0), []int{1, 2}, []contest.Points{tiny(1)}, "value of an item: 0: out of range; allowed: over 0 to 1,000,000 points"},
		{"value too great", tiny(10_000_000_001), []int{1, 2}, []contest.Points{tiny(1)}, "value of an item: 1000000.0001: out of range; allowed: over 0 to 1,000,000 points"},
		{"value and line at the limit", pts(1_000_000), []int{1, 2}, []contest.Points{pts(1_000_000)}, ""},
		{"one rung", pts(1), []int{1}, nil, "rungs: 1: out of range; allowed: two or more"},
		{"too few lines", pts(1), []int{1, 2, 3}, []contest.Points{tiny(1)}, "lines: 1: out of range; allowed: 2 lines for 3 rungs"},
		{"line below 0", pts(1), []int{1, 2, 3}, []contest.Points{pts(0), tiny(-1)}, "line 2: -0.0001: out of range; allowed: 0 to 1,000,000 points"},
		{"line too great", pts(1), []int{1, 2}, []contest.Points{tiny(10_000_000_001)}, "line 1: 1000000.0001: out of range; allowed: 0 to 1,000,000 points"},
		{"rung twice", pts(1), []int{1, 2, 1}, []contest.Points{tiny(1), tiny(1)}, "rung 3: repeated; allowed: each rung once"},
	} {
		t.Run(tt.name, func(t *testing.T) {
			l, err := newLadder(tt.value, tt.rungs, tt.lines)
			faulttest.Text(t, err, tt.want)
			_, _, err = l.Loss(1, 1)
			faulttest.Text(t, err, tt.want)
		})
	}
	_, err = evenLadder[int](pts(1), pts(1), nil)
	faulttest.Text(t, err, "rungs: 0: out of range; allowed: two or more")
	// Rules tell of their ladders.
	short := contest.Ladder[grade.Quality]{Value: pts(1), Rungs: contest.CardQualities()}
	rule := contest.QualityRule{Ladder: short}
	const want = "lines: 0: out of range; allowed: 15 lines for 16 rungs"
	_, _, err = rule.Loss(grade.Choice.Part(grade.Low), grade.Choice.Part(grade.Low))
	faulttest.Text(t, err, want)
	_, err = rule.Score(grade.Choice.Part(grade.Low), 0, placing.Blank)
	faulttest.Text(t, err, want)
	faulttest.Text(t, contest.YieldRule{Step: contest.WholeGrades, Value: pts(1), Ladder: contest.Ladder[int]{Value: pts(1), Rungs: []int{1, 2, 3, 4, 5}}}.Check(), "lines: 0: out of range; allowed: 4 lines for 5 rungs")
}

// TestLadderIsDistance: on any ladder the loss is symmetric, 0 for the right answer
// alone if no line is 0, and grows with the distance on one side.
func TestLadderIsDistance(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		lines := rapid.SliceOfN(rapid.Custom(func(t *rapid.T) contest.Points {
			return contest.PointsUnits(int64(rapid.IntRange(0, 90_000).Draw(t, "line")))
		}), 1, 8).Draw(t, "lines")
		rungs := make([]int, len(lines)+1)
		for i := range rungs {
			rungs[i] = i
		}
		value := contest.PointsUnits(int64(rapid.IntRange(1, 300_000).Draw(t, "value")))
		l, err := newLadder(value, rungs, lines)
		if err != nil {
			t.Fatal(err)
		}
		a, b := rapid.SampledFrom(rungs).Draw(t, "a"), rapid.SampledFrom(rungs).Draw(t, "b")
		lost, n, _ := l.Loss(a, b)
		back, m, _ := l.Loss(b, a)
		want := pts(0)
		for _, w := range lines[min(a, b):max(a, b)] {
			want = want.Add(w)
		}
		if want.Compare(value) > 0 {
			want = value
		}
		if lost != back || n != -m || n != a-b || lost != want || !slices.Equal(l.Lines, lines) {
			t.Fatalf("%d to %d: lost %v and %v, lines %d and %d, want %v", a, b, lost, back, n, m, want)
		}
	})
}

func TestQualityRungs(t *testing.T) {
	text := func(qs []grade.Quality) (out []string) {
		for _, q := range qs {
			out = append(out, q.String())
		}
		return out
	}
	if d := cmp.Diff([]string{
		"High Prime", "Average Prime", "Low Prime", "High Choice", "Average Choice", "Low Choice", "High Select", "Low Select",
		"High Standard", "Low Standard", "High Commercial", "Average Commercial", "Low Commercial", "High Utility", "Average Utility", "Low Utility",
	}, text(contest.CardQualities())); d != "" {
		t.Errorf("wa-ffa-card has 16 levels (-want +got):\n%s", d)
	}
	if d := cmp.Diff([]string{
		"High Prime", "Average Prime", "Low Prime", "High Choice", "Average Choice", "Low Choice", "High Select", "Low Select",
		"High Standard", "Average Standard", "Low Standard", "Utility", "Cutter", "Canner", "No grade",
	}, text(contest.ChartQualities(grade.Current, maturity.A))); d != "" {
		t.Errorf("every quality of the chart (-want +got):\n%s", d)
	}
	if d := cmp.Diff([]string{"High Commercial", "Average Commercial", "Low Commercial", "Utility", "Cutter", "Canner", "No grade"}, text(contest.ChartQualities(grade.Current, maturity.E))); d != "" {
		t.Errorf("every quality of group E (-want +got):\n%s", d)
	}
	if contest.ChartQualities(0, maturity.A) != nil || contest.ChartQualities(grade.Current, 0) != nil || contest.ChartQualities(grade.Current, maturity.A, 6) != nil {
		t.Error("an edition or group that is not set has qualities")
	}
}

func TestQualityRule(t *testing.T) {
	thirds, err := evenLadder(pts(10), pts(2), contest.CardQualities())
	if err != nil {
		t.Fatal(err)
	}
	whole, err := newLadder(pts(10), []grade.Quality{grade.Prime.Part(grade.Whole), grade.Choice.Part(grade.Whole), grade.Select.Part(grade.Whole)}, []contest.Points{pts(3), pts(4)})
	if err != nil {
		t.Fatal(err)
	}
	low := grade.Choice.Part(grade.Low)
	type answer struct {
		quality grade.Quality
		mark    placing.Mark
	}
	give := func(q grade.Quality) answer { return answer{quality: q} }
	mark := func(m placing.Mark) answer { return answer{mark: m} }
	none := contest.Points{}
	lowest := placing.CardRules{Blank: placing.LowestScore, Double: placing.Refused, Unreadable: 9}
	tests := []struct {
		name, reason string
		rule         contest.QualityRule
		key          grade.Quality
		answer       answer
		want         contest.Points
		err          string
	}{
		{"right", "the value", contest.QualityRule{Ladder: thirds}, low, give(low), pts(10), ""},
		{"a third off", "one line", contest.QualityRule{Ladder: thirds}, low, give(grade.Choice.Part(grade.Average)), pts(8), ""},
		{"capped", "five lines cost the whole item, and so do more", contest.QualityRule{Ladder: thirds}, low, give(grade.Standard.Part(grade.Low)), pts(2), ""},
		{"far", "never below 0", contest.QualityRule{Ladder: thirds}, low, give(grade.Utility.Part(grade.Low)), pts(0), ""},
		{"parts on a whole rung", "the ladder has grades only", contest.QualityRule{Ladder: whole}, low, give(grade.Choice.Part(grade.High)), pts(10), ""},
		{"line between whole grades", "3 of 10", contest.QualityRule{Ladder: whole}, low, give(grade.Prime.Part(grade.Low)), pts(7), ""},
		{"whole answer on thirds", "which third is not known", contest.QualityRule{Ladder: whole}, low, give(grade.Standard.Part(grade.Low)), none,
			"quality: Low Standard: unknown; allowed: Prime, Choice, Select"},
		{"key off the ladder", "the answer cannot be compared", contest.QualityRule{Ladder: whole}, grade.Standard.Part(grade.Low), give(low), none,
			"official quality: Low Standard: unknown; allowed: Prime, Choice, Select"},
		{"no ladder", "the caller gives one", contest.QualityRule{}, low, give(low), none, "official quality: Low Choice: unknown; allowed: a rung of the ladder"},
		{"blank", "by default 0", contest.QualityRule{Ladder: whole}, low, mark(placing.Blank), pts(0), ""},
		{"double", "by default 0", contest.QualityRule{Ladder: whole}, low, mark(placing.DoubleMarked), pts(0), ""},
		{"unreadable", "by default 0", contest.QualityRule{Ladder: whole}, low, mark(placing.Unreadable), pts(0), ""},
		{"blank scores lowest", "10 less the 7 that the worst mistake loses", contest.QualityRule{Ladder: whole, Marks: lowest}, low, mark(placing.Blank), pts(3), ""},
		{"double refused", "the member is asked", contest.QualityRule{Ladder: whole, Marks: lowest}, low, mark(placing.DoubleMarked), none,
			"answer: double-marked: missing; allowed: one answer"},
		{"bad penalty", "no such penalty", contest.QualityRule{Ladder: whole, Marks: lowest}, low, mark(placing.Unreadable), none,
			"penalty: penalty(9): unknown; allowed: zero points, lowest score, refused"},
		{"bad mark", "no such mark", contest.QualityRule{Ladder: whole}, low, mark(9), none, "mark: mark(9): unknown; allowed: blank, double-marked, unreadable"},
		{"both", "which of the two is meant", contest.QualityRule{Ladder: whole}, low, answer{low, placing.Blank}, none, "quality: Low Choice and blank: repeated; allowed: a value or a mark"},
		{"says nothing", "nothing to score", contest.QualityRule{Ladder: whole}, low, mark(0), none, "answer: missing; allowed: an answer or a mark"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			got, err := tt.rule.Score(tt.key, tt.answer.quality, tt.answer.mark)
			if got != tt.want {
				t.Errorf("%s: got %v, want %v", tt.reason, got, tt.want)
			}
			faulttest.Text(t, err, tt.err)
		})
	}
	if p, from := (placing.CardRules{}).ItemPenalty(placing.DoubleMarked); p != placing.ZeroPoints || from.String() != "published: psu-poultry, fl-ffa-2013" {
		t.Errorf("double: got %v, %v", p, from)
	}
	if p, from := (placing.CardRules{}).ItemPenalty(placing.Unreadable); p != placing.ZeroPoints || from.String() != "derived: psu-poultry, fl-ffa-2013" {
		t.Errorf("unreadable: got %v, %v", p, from)
	}
	if p, from := lowest.ItemPenalty(placing.Blank); p != placing.LowestScore || (from != cite.Citation{}) {
		t.Errorf("blank: got %v, %v", p, from)
	}
	if p, from := lowest.ItemPenalty(0); p != 0 || (from != cite.Citation{}) {
		t.Errorf("no mark: got %v, %v", p, from)
	}
}

func yield(t testing.TB, s string) grade.Yield {
	t.Helper()
	y, err := grade.ParseYield(s)
	if err != nil {
		t.Fatal(err)
	}
	return y
}

func TestYieldRule(t *testing.T) {
	grades, err := newLadder(pts(10), []int{1, 2, 3, 4, 5}, []contest.Points{pts(2), pts(3), pts(4), pts(1)})
	if err != nil {
		t.Fatal(err)
	}
	short, err := evenLadder(pts(10), pts(1), []int{5, 4, 3, 2, 1})
	if err != nil {
		t.Fatal(err)
	}
	tenths := contest.YieldRule{Step: contest.Tenths, Rounding: grade.HalfUp, Value: pts(10), Each: tiny(5_000)}
	thirds := contest.YieldRule{Step: contest.Thirds, Rounding: grade.Down, Value: pts(10), Each: pts(2)}
	whole := contest.YieldRule{Step: contest.WholeGrades, Value: pts(10), Each: pts(3)}
	lines := contest.YieldRule{Step: contest.WholeGrades, Value: pts(10), Ladder: grades}
	taught, _ := contest.TaughtThirds()
	cheap := contest.YieldRule{Step: contest.Tenths, Rounding: grade.HalfUp, Value: pts(100), Each: tiny(200)}
	tests := []struct {
		name, reason string
		rule         contest.YieldRule
		key, answer  string
		lost         contest.Points
		steps        int64
	}{
		{"tenth right", "1.19 to 1.2 (published: ga-ffa-2014)", tenths, "1.19", "1.2", pts(0), 0},
		{"tenth down", "2.22 to 2.2 (published: ga-ffa-2014)", tenths, "2.22", "2.2", pts(0), 0},
		{"half a tenth goes up", "2.25 to 2.3", tenths, "2.25", "2.2", tiny(5_000), -1},
		{"just under half a tenth", "2.24999999 to 2.2", tenths, "2.24999999", "2.2", pts(0), 0},
		{"four tenths high", "half a point each", tenths, "2.2", "2.6", pts(2), 4},
		{"capped", "20 steps are the whole item", tenths, "2.0", "4.0", pts(10), 20},
		{"beyond the cap", "no more than the item", tenths, "2.0", "4.1", pts(10), 21},
		{"just within the cap", "19 steps", tenths, "2.0", "3.9", tiny(95_000), 19},
		{"below 0", "tenths go on below 0", tenths, "-0.1", "0.1", pts(1), 2},
		{"thirds .33", "last of the lower band (published: wa-ffa-card)", thirds, "2.00", "2.33", pts(0), 0},
		{"thirds .34", "first of the middle band", thirds, "2.00", "2.34", pts(2), 1},
		{"thirds .66", "last of the middle band", thirds, "2.66", "2.34", pts(0), 0},
		{"thirds .67", "first of the upper band", thirds, "2.66", "2.67", pts(2), 1},
		{"thirds between bands", "2.335 is rounded to hundredths first, here down", thirds, "2.335", "2.33", pts(0), 0},
		{"thirds across grades", "2.99 to 3.00", thirds, "3.00", "2.99", pts(2), -1},
		{"thirds below 1", "kept to 1.00", thirds, "0.5", "1.33", pts(0), 0},
		{"thirds above 5.99", "kept to 5.99", thirds, "7.2", "5.67", pts(0), 0},
		{"whole", "decimals dropped: 3.9 is 3", whole, "3.0", "3.9", pts(0), 0},
		{"whole off", "3 and 4", whole, "3.9", "4.0", pts(3), 1},
		{"whole kept to 1", "0.4 is 1", whole, "0.4", "1.7", pts(0), 0},
		{"lines", "2|3 and 3|4", lines, "2.5", "4.5", pts(7), 2},
		{"lines back", "the same the other way", lines, "4.5", "2.5", pts(7), -2},
		{"taught, right", "10 for the right third", taught, "2.40", "2.66", pts(0), 0},
		{"taught, one off", "8 for one off", taught, "2.40", "2.67", pts(2), 1},
		{"taught, one off below", "8 for one off", taught, "2.40", "2.33", pts(2), -1},
		{"taught, two off", "5 for two off", taught, "2.40", "3.33", pts(5), 2},
		{"taught, two off across a grade", "5 for two off", taught, "3.00", "2.34", pts(5), -2},
		{"taught, three off", "the whole item", taught, "2.40", "3.34", pts(10), 3},
		{"taught, far off", "the whole item", taught, "1.00", "5.99", pts(10), 14},
		{"taught, halves of a hundredth", "2.335 goes up to 2.34", taught, "2.335", "2.34", pts(0), 0},
		{"nothing lost for a step", "a rule may ask and not charge", contest.YieldRule{Step: contest.Tenths, Rounding: grade.HalfUp, Value: pts(1), Each: pts(0)}, "2.0", "3.0", pts(0), 10},
		{"a table that stays", "two steps cost what one costs, and three the whole item", contest.YieldRule{Step: contest.WholeGrades, Value: pts(4), Off: []contest.Points{pts(0), pts(2), pts(2), pts(4)}}, "1", "4", pts(2), 3},
		{"a hundred and fifty steps", "every one counts", cheap, "1.0", "16.0", pts(3), 150},
		{"a thousand steps", "every one counts", cheap, "-20.0", "80.0", pts(20), 1_000},
		{"past a thousand steps", "as a thousand, more than a carcass can have", cheap, "-20.0", "80.1", pts(20), 1_001},
		{"a step worth more than the item", "capped", contest.YieldRule{Step: contest.Tenths, Rounding: grade.HalfUp, Value: pts(1), Each: pts(1_000_000)}, "2.0", "2.1", pts(1), 1},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			lost, steps, err := tt.rule.Loss(yield(t, tt.key), yield(t, tt.answer))
			if lost != tt.lost || steps != tt.steps || err != nil {
				t.Errorf("%s: got %v, %d, %v, want %v, %d", tt.reason, lost, steps, err, tt.lost, tt.steps)
			}
			got, err := tt.rule.Score(yield(t, tt.key), yield(t, tt.answer), 0)
			if got != tt.rule.Value.Sub(tt.lost) || err != nil {
				t.Errorf("%s: score %v, %v", tt.reason, got, err)
			}
		})
	}
	bad := []struct {
		name string
		rule contest.YieldRule
		want string
	}{
		{"no step", contest.YieldRule{Value: pts(1), Each: pts(1)}, "yield step: missing; allowed: whole grades, thirds, tenths"},
		{"no rounding", contest.YieldRule{Step: contest.Tenths, Value: pts(1), Each: pts(1)}, "rounding: unset: missing; allowed: down, half up, half even"},
		{"no rounding for thirds", contest.YieldRule{Step: contest.Thirds, Value: pts(1), Each: pts(1)}, "rounding: unset: missing; allowed: down, half up, half even"},
		{"nothing set", contest.YieldRule{}, "yield step: missing; allowed: whole grades, thirds, tenths\nvalue of an item: missing; allowed: over 0 to 1,000,000 points\npoints for each step: missing; allowed: 0 to 1,000,000 points"},
		{"no value", contest.YieldRule{Step: contest.WholeGrades, Value: pts(0), Each: pts(1)}, "value of an item: 0: out of range; allowed: over 0 to 1,000,000 points"},
		{"points below 0", contest.YieldRule{Step: contest.WholeGrades, Value: pts(1), Each: tiny(-1)}, "points for each step: -0.0001: out of range; allowed: 0 to 1,000,000 points"},
		{"ladder with tenths", contest.YieldRule{Step: contest.Tenths, Rounding: grade.Down, Value: pts(10), Ladder: grades}, "ladder of yield grades: out of range; allowed: the grades 1 to 5, with whole grades"},
		{"ladder and points", contest.YieldRule{Step: contest.WholeGrades, Value: pts(10), Each: pts(1), Ladder: grades}, "points for each step: 1 of 10: repeated; allowed: unset, no table, and the value of the ladder, where there is one"},
		{"ladder and table", contest.YieldRule{Step: contest.WholeGrades, Value: pts(10), Off: []contest.Points{pts(1)}, Ladder: grades}, "points for each step: unset of 10: repeated; allowed: unset, no table, and the value of the ladder, where there is one"},
		{"table and points", contest.YieldRule{Step: contest.WholeGrades, Value: pts(10), Each: pts(1), Off: []contest.Points{pts(1)}}, "points for each step: 1: repeated; allowed: unset with a table"},
		{"table below 0", contest.YieldRule{Step: contest.WholeGrades, Value: pts(10), Off: []contest.Points{pts(-1)}}, "points for 1 step off: -1: out of range; allowed: 0 to 10"},
		{"table that falls", contest.YieldRule{Step: contest.WholeGrades, Value: pts(10), Off: []contest.Points{pts(5), pts(2)}}, "points for 2 steps off: 2: out of range; allowed: 5 to 10"},
		{"table past the value", contest.YieldRule{Step: contest.WholeGrades, Value: pts(4), Off: []contest.Points{pts(2), pts(5)}}, "points for 2 steps off: 5: out of range; allowed: 2 to 4"},
		{"ladder of another value", contest.YieldRule{Step: contest.WholeGrades, Value: pts(9), Ladder: grades}, "points for each step: unset of 9: repeated; allowed: unset, no table, and the value of the ladder, where there is one"},
		{"ladder of other grades", contest.YieldRule{Step: contest.WholeGrades, Value: pts(1), Ladder: func() contest.Ladder[int] { l, _ := evenLadder(pts(1), pts(1), []int{1, 2}); return l }()}, "ladder of yield grades: out of range; allowed: the grades 1 to 5, with whole grades"},
	}
	for _, tt := range bad {
		t.Run(tt.name, func(t *testing.T) {
			_, _, err := tt.rule.Loss(grade.Grades(0), grade.Grades(0))
			faulttest.Text(t, err, tt.want)
			_, err = tt.rule.Score(grade.Grades(0), grade.Grades(0), 0)
			faulttest.Text(t, err, tt.want)
		})
	}
	lowest := contest.YieldRule{Step: contest.WholeGrades, Value: pts(10), Ladder: short, Marks: placing.CardRules{Blank: placing.LowestScore}}
	if got, err := lowest.Score(yield(t, "2"), grade.Yield{}, placing.Blank); got != pts(6) || err != nil {
		t.Errorf("blank at the lowest: got %v, %v, want 10 less 4", got, err)
	}
	tenths.Marks.Blank = placing.LowestScore
	if got, err := tenths.Score(yield(t, "2"), grade.Yield{}, placing.Blank); got != pts(0) || err != nil {
		t.Errorf("blank at the lowest: got %v, %v, want 0, since steps have no end", got, err)
	}
}
