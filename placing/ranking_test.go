package placing_test

import (
	"math"
	"slices"
	"strconv"
	"strings"
	"testing"

	"example.com/ribface/internal/refs"
	"example.com/ribface/internal/testkit/faulttest"
	"example.com/ribface/placing"
	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

// ranking reads a ranking written by hand.
func ranking(s string) placing.Ranking {
	r, err := placing.ParseRanking(s)
	if err != nil {
		panic(err)
	}
	return r
}

func drawRanking(t *rapid.T, n int) placing.Ranking {
	r, err := placing.RankScores(rapid.SliceOfN(rapid.IntRange(1, n), n, n).Draw(t, "scores")...)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// TestReferencesTau holds tau-b to every row of the references
// (stat-kendalltau-doc; stat-spearman-example for the data without ties).
func TestReferencesTau(t *testing.T) {
	checked := 0
	for _, row := range refs.Rows(t, "../testdata/references", "statistics-examples.csv") {
		if row.Get("statistic") != "kendall tau-b" {
			continue
		}
		checked++
		var r [2]placing.Ranking
		for i, list := range strings.Split(row.Get("input"), " | ") {
			var scores []int
			for _, word := range strings.Fields(list)[1:] {
				v, err := strconv.Atoi(word)
				if err != nil {
					t.Fatal(err)
				}
				scores = append(scores, v)
			}
			var err error
			if r[i], err = placing.RankScores(scores...); err != nil {
				t.Fatal(err)
			}
		}
		pairs, err := r[0].Against(r[1])
		if err != nil {
			t.Fatal(err)
		}
		want := 0.0
		if num, den, ok := strings.Cut(row.Get("value"), "/"); ok {
			a, _ := strconv.ParseFloat(num, 64)
			b, _ := strconv.ParseFloat(den, 64)
			want = a / b
		} else if want, err = strconv.ParseFloat(row.Get("value"), 64); err != nil {
			t.Fatal(err)
		}
		if got, ok := pairs.TauB(); !ok || math.Abs(got-want) > 1e-15 {
			t.Errorf("line %d (%s): tau-b %v, want %v, from %+v", row.Line, row.Get("source_id"), got, want, pairs)
		}
		if row.Get("case") == "ties in both" {
			if diff := cmp.Diff(placing.Pairs{Same: 2, Reversed: 6, TiedHere: 1, TiedThen: 0, TiedBoth: 1}, pairs); diff != "" {
				t.Errorf("pairs (-want +got):\n%s", diff)
			}
		}
	}
	if checked != 2 {
		t.Errorf("checked %d rows, want 2", checked)
	}
}

func TestParseRanking(t *testing.T) {
	tests := []struct {
		name, in, want string
		err            string
	}{
		{"strict", "3 1 2 4", "3 1 2 4", ""},
		{"a tie", "3 1=2 4", "3 1=2 4", ""},
		{"a tie out of order is written ascending", "4=1=2 3", "1=2=4 3", ""},
		{"all level", "1=2", "1=2", ""},
		{"twelve", "12 11 10 9 8 7 6 5 4 3 2 1", "12 11 10 9 8 7 6 5 4 3 2 1", ""},
		{"twelve with a tie", "12 11 10 9 8 7 6 5 4 3 1=2", "12 11 10 9 8 7 6 5 4 3 1=2", ""},
		{"empty", "", "", `ranking: "": bad syntax; allowed: 2 to 12 exhibit numbers from the top, each once, a space or = for level between, as 3 1=2 4`},
		{"one alone", "1", "", `ranking: "1": out of range; allowed: 2 to 12 exhibit numbers from the top, each once, a space or = for level between, as 3 1=2 4`},
		{"thirteen", "1 2 3 4 5 6 7 8 9 10 11 12 13", "", `ranking: "1 2 3 4 5 6 7 8 9 10 11 12 13": out of range; allowed: 2 to 12 exhibit numbers from the top, each once, a space or = for level between, as 3 1=2 4`},
		{"twice", "1 2 2", "", `ranking: "1 2 2": repeated at "2"; allowed: each exhibit 1 to 3 once`},
		{"not in the class", "1 2 4", "", `ranking: "1 2 4": out of range at "4"; allowed: each exhibit 1 to 3 once`},
		{"zero", "0 1 2", "", `ranking: "0 1 2": out of range at "0"; allowed: each exhibit 1 to 3 once`},
		{"leading zero", "01 2", "", `ranking: "01 2": bad syntax at "01"; allowed: 2 to 12 exhibit numbers from the top, each once, a space or = for level between, as 3 1=2 4`},
		{"two spaces", "1  2", "1 2", ""},
		{"two kinds between", "1-2,3=4", "", `ranking: "1-2,3=4": bad syntax at "2,3"; allowed: 2 to 12 exhibit numbers from the top, each once, a space or = for level between, as 3 1=2 4`},
		{"a sign", "+1 2", "", `ranking: "+1 2": bad syntax at "+1"; allowed: 2 to 12 exhibit numbers from the top, each once, a space or = for level between, as 3 1=2 4`},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			got, err := placing.ParseRanking(tt.in)
			if tt.err != "" {
				faulttest.Text(t, err, tt.err)
				if got != (placing.Ranking{}) {
					t.Errorf("got %v with an error", got)
				}
				return
			}
			if err != nil {
				t.Fatal(err)
			}
			if diff := cmp.Diff(tt.want, got.String()); diff != "" {
				t.Errorf("ranking (-want +got):\n%s", diff)
			}
		})
	}
}

func TestNewRanking(t *testing.T) {
	r, err := placing.NewRanking([]int{3}, []int{2, 1}, []int{4})
	if err != nil || r != ranking("3 1=2 4") {
		t.Errorf("NewRanking: %v, %v", r, err)
	}
	if diff := cmp.Diff([][]int{{3}, {1, 2}, {4}}, r.Groups()); diff != "" {
		t.Errorf("Groups (-want +got):\n%s", diff)
	}
	if r, err := placing.NewRanking([]int{12, 11, 10, 9}, []int{8, 7, 6, 5, 4, 3, 2, 1}); err != nil || r.String() != "9=10=11=12 1=2=3=4=5=6=7=8" {
		t.Errorf("the largest class: %v, %v", r, err)
	}
	tests := []struct {
		name   string
		groups [][]int
		want   string
	}{
		{"nothing", nil, "ranking: 0 exhibits: out of range; allowed: 2 to 12 exhibits"},
		{"one", [][]int{{1}}, "ranking: 1 exhibit: out of range; allowed: 2 to 12 exhibits"},
		{"too many", [][]int{{1, 2, 3, 4, 5, 6, 7}, {8, 9, 10, 11, 12, 13}}, "ranking: 13 exhibits: out of range; allowed: 2 to 12 exhibits"},
		{"empty group", [][]int{{1}, {}, {2}}, "ranking: group 2 is empty: missing; allowed: one exhibit or more in each group"},
		{"twice", [][]int{{1}, {1}}, "ranking: exhibit 1: repeated; allowed: each exhibit 1 to 2 once"},
		{"outside", [][]int{{1}, {3}}, "ranking: exhibit 3: out of range; allowed: each exhibit 1 to 2 once"},
		{"negative", [][]int{{-1}, {1}}, "ranking: exhibit -1: out of range; allowed: each exhibit 1 to 2 once"},
	}
	for _, tt := range tests {
		_, err := placing.NewRanking(tt.groups...)
		faulttest.Text(t, err, tt.want)
	}
	_, err = placing.RankScores(1)
	faulttest.Text(t, err, "scores: 1 score: out of range; allowed: 2 to 12, one for each exhibit")
	_, err = placing.RankScores(make([]int, 13)...)
	faulttest.Text(t, err, "scores: 13 scores: out of range; allowed: 2 to 12, one for each exhibit")
	if got := (placing.Order{}).Ranking(); got.IsValid() {
		t.Errorf("the ranking of the zero Order = %v", got)
	}
	r, err = placing.RankScores(5, 7, 5, 2)
	if err != nil || r.String() != "2 1=3 4" {
		t.Errorf("RankScores: %v, %v", r, err)
	}
}

func TestRankingPlaces(t *testing.T) {
	r := ranking("3 1=2 4")
	var places []string
	for e := range 6 {
		places = append(places, r.Place(e).String())
	}
	if diff := cmp.Diff([]string{"0", "2.5", "2.5", "1", "4", "0"}, places); diff != "" {
		t.Errorf("places (-want +got):\n%s", diff)
	}
	if got := []string{placing.HalfPlaces(-1).String(), placing.HalfPlaces(-3).String(), placing.HalfPlaces(-4).String(), placing.HalfPlaces(1).String()}; !slices.Equal(got, []string{"-0.5", "-1.5", "-2", "0.5"}) {
		t.Errorf("half places %v", got)
	}
	var zero placing.Ranking
	if zero.IsValid() || zero.Len() != 0 || zero.String() != "unset" || zero.Groups() != nil {
		t.Errorf("zero: %v", zero)
	}
	_, err := zero.Against(zero)
	faulttest.Text(t, err, "ranking: unset: out of range; allowed: a ranking of 0 exhibits")
	_, err = r.Against(ranking("1 2"))
	faulttest.Text(t, err, "ranking: 1 2: out of range; allowed: a ranking of 4 exhibits")
	// Ties of the one and of the other count alike: 5 pairs of 6, by the root of 5 times 6.
	one, err := ranking("1 2 3=4").Against(ranking("1 2 3 4"))
	faulttest.Text(t, err, "")
	other, err := ranking("1 2 3 4").Against(ranking("1 2 3=4"))
	faulttest.Text(t, err, "")
	for _, p := range []placing.Pairs{one, other} {
		if tau, ok := p.TauB(); !ok || math.Abs(tau-5/math.Sqrt(30)) > 1e-15 {
			t.Errorf("tau-b of %+v: %v", p, tau)
		}
	}
	pairs, err := ranking("1=2").Against(ranking("1 2"))
	if tau, ok := pairs.TauB(); ok || tau != 0 || err != nil {
		t.Errorf("all level: %v %v %v", tau, ok, err)
	}
	pairs, err = ranking("1 2").Against(ranking("1=2"))
	if tau, ok := pairs.TauB(); ok || tau != 0 || err != nil || pairs.TiedThen != 1 {
		t.Errorf("all level: %v %v %v", tau, ok, err)
	}
}

// TestRankingProperties ties places, text, groups, pairs and orders together.
func TestRankingProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(2, 12).Draw(t, "n")
		r, s := drawRanking(t, n), drawRanking(t, n)
		if back, err := placing.ParseRanking(r.String()); err != nil || back != r {
			t.Fatalf("%v came back as %v, %v", r, back, err)
		}
		if back, err := placing.NewRanking(r.Groups()...); err != nil || back != r {
			t.Fatalf("groups of %v came back as %v, %v", r, back, err)
		}
		sum := placing.HalfPlaces(0)
		for e := 1; e <= n; e++ {
			sum += r.Place(e)
		}
		if sum != placing.HalfPlaces(n*(n+1)) {
			t.Fatalf("places of %v add up to %v", r, sum)
		}
		p, err := r.Against(s)
		if err != nil {
			t.Fatal(err)
		}
		if p.Same+p.Reversed+p.TiedHere+p.TiedThen+p.TiedBoth != n*(n-1)/2 {
			t.Fatalf("%+v are not all pairs", p)
		}
		back, _ := s.Against(r)
		if back != (placing.Pairs{Same: p.Same, Reversed: p.Reversed, TiedHere: p.TiedThen, TiedThen: p.TiedHere, TiedBoth: p.TiedBoth}) {
			t.Fatalf("%+v and %+v", p, back)
		}
		o, q := anyOrder(t, n, "order"), anyOrder(t, n, "other")
		if back, err := placing.ParseRanking(o.String()); err != nil || back != o.Ranking() {
			t.Fatalf("%v is read as %v, %v, and is the ranking %v", o, back, err, o.Ranking())
		}
		for e := 1; e <= n; e++ {
			if o.Ranking().Place(e) != placing.HalfPlaces(2*o.Place(e)) {
				t.Fatalf("%d has place %d in %v and %v in its ranking", e, o.Place(e), o, o.Ranking().Place(e))
			}
		}
		against, _ := o.Ranking().Against(q.Ranking())
		if d, _ := o.Disagreements(q); against != (placing.Pairs{Same: n*(n-1)/2 - d, Reversed: d}) {
			t.Fatalf("%v and %v disagree on %d pairs, their rankings as %+v", o, q, d, against)
		}
	})
}
