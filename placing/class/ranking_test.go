package class_test

import (
	"errors"
	"math"
	"slices"
	"strconv"
	"strings"
	"testing"

	"example.com/ribface/internal/refs"
	"example.com/ribface/placing"
	"example.com/ribface/placing/class"
	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

// TestReferencesTau holds tau-b to every row of the references
// (stat-kendalltau-doc; stat-spearman-example for the data without ties).
func TestReferencesTau(t *testing.T) {
	checked := 0
	for _, row := range refs.Rows(t, "../../testdata/references", "statistics-examples.csv") {
		if row.Get("statistic") != "kendall tau-b" {
			continue
		}
		checked++
		var r [2]class.Ranking
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
			if r[i], err = class.RankScores(scores...); err != nil {
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
			if diff := cmp.Diff(class.Pairs{Same: 2, Reversed: 6, TiedHere: 1, TiedThen: 0, TiedBoth: 1}, pairs); diff != "" {
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
			got, err := class.ParseRanking(tt.in)
			if tt.err != "" {
				wantError(t, tt.in, tt.err, err)
				if got != (class.Ranking{}) {
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
	defer func() {
		if recover() == nil {
			t.Error("MustParseRanking took nonsense")
		}
	}()
	class.MustParseRanking("x")
}

func TestNewRanking(t *testing.T) {
	r, err := class.NewRanking([]int{3}, []int{2, 1}, []int{4})
	if err != nil || r != class.MustParseRanking("3 1=2 4") {
		t.Errorf("NewRanking: %v, %v", r, err)
	}
	if diff := cmp.Diff([][]int{{3}, {1, 2}, {4}}, r.Groups()); diff != "" {
		t.Errorf("Groups (-want +got):\n%s", diff)
	}
	if r, err := class.NewRanking([]int{12, 11, 10, 9}, []int{8, 7, 6, 5, 4, 3, 2, 1}); err != nil || r.String() != "9=10=11=12 1=2=3=4=5=6=7=8" {
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
		_, err := class.NewRanking(tt.groups...)
		wantError(t, tt.name, tt.want, err)
	}
	_, err = class.RankScores(1)
	wantError(t, "one score", "scores: 1 score: out of range; allowed: 2 to 12, one for each exhibit", err)
	_, err = class.RankScores(make([]int, 13)...)
	wantError(t, "many scores", "scores: 13 scores: out of range; allowed: 2 to 12, one for each exhibit", err)
	r, err = class.RankScores(5, 7, 5, 2)
	if err != nil || r.String() != "2 1=3 4" {
		t.Errorf("RankScores: %v, %v", r, err)
	}
}

func TestRankingPlaces(t *testing.T) {
	r := class.MustParseRanking("3 1=2 4")
	var places []string
	for e := range 6 {
		places = append(places, r.Place(e).String())
	}
	if diff := cmp.Diff([]string{"0", "2.5", "2.5", "1", "4", "0"}, places); diff != "" {
		t.Errorf("places (-want +got):\n%s", diff)
	}
	if got := []string{class.HalfPlaces(-1).String(), class.HalfPlaces(-3).String(), class.HalfPlaces(-4).String(), class.HalfPlaces(1).String()}; !slices.Equal(got, []string{"-0.5", "-1.5", "-2", "0.5"}) {
		t.Errorf("half places %v", got)
	}
	for _, tt := range []struct{ a, b, want int }{{3, 1, -1}, {1, 2, 0}, {4, 3, 1}, {0, 1, 0}, {1, 0, 0}, {5, 1, 0}, {1, 5, 0}} {
		if got := r.Compare(tt.a, tt.b); got != tt.want {
			t.Errorf("Compare(%d, %d) = %d, want %d", tt.a, tt.b, got, tt.want)
		}
	}
	var zero class.Ranking
	if zero.IsValid() || zero.Len() != 0 || zero.String() != "unset" || zero.Groups() != nil {
		t.Errorf("zero: %v", zero)
	}
	_, err := zero.Against(zero)
	wantError(t, "zero", "ranking: unset: out of range; allowed: a ranking of 0 exhibits", err)
	_, err = r.Against(class.MustParseRanking("1 2"))
	wantError(t, "sizes", "ranking: 1 2: out of range; allowed: a ranking of 4 exhibits", err)
	_, err = r.Relabel(placing.MustParseOrder("2-1"))
	wantError(t, "relabel", "new numbers: 2-1: out of range; allowed: an order of 4 exhibits", err)
	_, err = zero.Relabel(placing.Order{})
	wantError(t, "relabel zero", "new numbers: unset: out of range; allowed: an order of 0 exhibits", err)
	pairs, err := class.MustParseRanking("1=2").Against(class.MustParseRanking("1 2"))
	if tau, ok := pairs.TauB(); ok || tau != 0 || err != nil {
		t.Errorf("all level: %v %v %v", tau, ok, err)
	}
	pairs, err = class.MustParseRanking("1 2").Against(class.MustParseRanking("1=2"))
	if tau, ok := pairs.TauB(); ok || tau != 0 || err != nil || pairs.TiedThen != 1 {
		t.Errorf("all level: %v %v %v", tau, ok, err)
	}
}

// TestRankingProperties ties places, text, renumbering and pairs together.
func TestRankingProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(2, 12).Draw(t, "n")
		r, s := drawRanking(t, n), drawRanking(t, n)
		if back, err := class.ParseRanking(r.String()); err != nil || back != r {
			t.Fatalf("%v came back as %v, %v", r, back, err)
		}
		if back, err := class.NewRanking(r.Groups()...); err != nil || back != r {
			t.Fatalf("groups of %v came back as %v, %v", r, back, err)
		}
		sum := class.HalfPlaces(0)
		for e := 1; e <= n; e++ {
			sum += r.Place(e)
		}
		if sum != class.HalfPlaces(n*(n+1)) {
			t.Fatalf("places of %v add up to %v", r, sum)
		}
		p, err := r.Against(s)
		if err != nil {
			t.Fatal(err)
		}
		if p.Same+p.Reversed+p.TiedHere+p.TiedThen+p.TiedBoth != n*(n-1)/2 {
			t.Fatalf("%+v are not all pairs", p)
		}
		q, _ := s.Against(r)
		if q != (class.Pairs{Same: p.Same, Reversed: p.Reversed, TiedHere: p.TiedThen, TiedThen: p.TiedHere, TiedBoth: p.TiedBoth}) {
			t.Fatalf("%+v and %+v", p, q)
		}
		to := drawOrder(t, n)
		x, _ := r.Relabel(to)
		y, _ := s.Relabel(to)
		if z, _ := x.Against(y); z != p {
			t.Fatalf("renumbered: %+v, want %+v", z, p)
		}
		for e := 1; e <= n; e++ {
			if x.Place(to.At(e)) != r.Place(e) {
				t.Fatalf("place of %d changed", e)
			}
		}
	})
}

func TestWalk(t *testing.T) {
	two, three := class.MustParseRanking("1 2"), class.MustParseRanking("1 2 3")
	tests := []struct {
		name string
		walk class.Walk
		want string
	}{
		{"no site", class.Walk{{Order: two}}, "look 1: site: missing; allowed: " + allSites()},
		{"no such site", class.Walk{{99, two}}, "look 1: site: site(99): unknown; allowed: " + allSites()},
		{"twice", class.Walk{{class.FatRump, two}, {class.FatRump, two}}, "look 2: site: fat over rump: repeated; allowed: every site once"},
		{"no ranking", class.Walk{{class.FatRump, class.Ranking{}}}, "fat over rump: missing; allowed: a ranking of 2 exhibits"},
		{"another size", class.Walk{{class.FatRump, three}}, "fat over rump: 1 2 3: out of range; allowed: a ranking of 2 exhibits"},
	}
	for _, tt := range tests {
		wantError(t, tt.name, tt.want, tt.walk.Check(2))
	}
	w := class.Walk{{class.FatRump, two}, {class.MuscleLoin, two}}
	if err := w.Check(2); err != nil {
		t.Error(err)
	}
	if len(w.Missing()) != 18 || w.Missing()[0] != class.FatRound || slices.Contains(w.Missing(), class.FatRump) {
		t.Errorf("Missing() = %v", w.Missing())
	}
	var full class.Walk
	for s := range class.Sites() {
		full = append(full, class.Look{Site: s, Order: two})
	}
	if full.Missing() != nil || full.Check(2) != nil || len(full) != 20 {
		t.Errorf("full walk misses %v", full.Missing())
	}
	if r, ok := w.At(class.MuscleLoin); !ok || r != two {
		t.Errorf("At: %v, %v", r, ok)
	}
	if _, ok := w.At(class.FatNeck); ok {
		t.Error("At found a site that was not looked at")
	}
	for range class.Sites() {
		break
	}
}

func allSites() string {
	var names []string
	for s := range class.Sites() {
		names = append(names, s.String())
	}
	return strings.Join(names, ", ")
}

func TestSites(t *testing.T) {
	fat := 0
	for s := range class.Sites() {
		if s.Fat() {
			fat++
		}
		b, err := s.MarshalText()
		var back class.Site
		if err != nil || back.UnmarshalText(b) != nil || back != s || !s.IsValid() {
			t.Errorf("%v came back as %v", s, back)
		}
		v, err := s.Value()
		if err != nil || back.Scan(v) != nil || back != s {
			t.Errorf("%v through a database: %v, %v", s, back, err)
		}
	}
	if fat != 13 || !class.FatBrisket.Fat() || class.RoundPlumpness.Fat() || class.Site(0).Fat() {
		t.Errorf("%d sites of fat", fat)
	}
	if got := []string{class.FatRump.Cite().String(), class.MuscleClod.Cite().String(), class.Site(0).Cite().String(), class.Site(99).Cite().String()}; !slices.Equal(got, []string{"official: cfr-54-105, cfr-1965-53-p26", "common practice, no source", "no source given", "no source given"}) {
		t.Errorf("citations %v", got)
	}
	if _, err := class.ParseSite("fat over tail"); !errors.Is(err, placing.ErrUnknown) {
		t.Errorf("ParseSite: %v", err)
	}
}
