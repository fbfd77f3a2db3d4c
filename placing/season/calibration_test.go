package season_test

import (
	compare "cmp"
	"math"
	"math/big"
	"math/rand/v2"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"example.com/ribface/grade"
	"example.com/ribface/internal/refs"
	"example.com/ribface/internal/testkit/faulttest"
	"example.com/ribface/maturity"
	"example.com/ribface/placing"
	"example.com/ribface/placing/contest"
	"example.com/ribface/placing/season"
	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

// pair is an estimate with the truth that it is held against.
type pair struct{ Estimate, Truth int64 }

func numbers(t *testing.T, text string) (out []int64) {
	t.Helper()
	for w := range strings.FieldsSeq(text) {
		v, err := strconv.ParseInt(w, 10, 64)
		if err != nil {
			t.Fatal(err)
		}
		out = append(out, v)
	}
	return out
}

// rho is Spearman's rank correlation by the correlation of doubled mean ranks.
func rho(t *testing.T, pairs []pair) season.Figure {
	t.Helper()
	rank := func(value func(pair) int64, of pair) (twice int64) {
		for _, p := range pairs {
			twice += int64(1 + compare.Compare(value(of), value(p)))
		}
		return twice + 1
	}
	var s season.Errors
	for _, p := range pairs {
		e := rank(func(p pair) int64 { return p.Estimate }, p)
		u := rank(func(p pair) int64 { return p.Truth }, p)
		faulttest.Text(t, s.Add(e, u), "")
	}
	return s.Correlation()
}

// TestStatisticsExamples computes every row of the reference file that is about
// agreement between judges; the rows on the consensus of officials belong to
// package placing.
func TestStatisticsExamples(t *testing.T) {
	checked := map[string]int{}
	for _, row := range refs.Rows(t, "../../testdata/references", "statistics-examples.csv") {
		statistic, input, quantity, value := row.Get("statistic"), row.Get("input"), row.Get("quantity"), row.Get("value")
		var got float64
		switch statistic {
		case "spearman":
			x, y, _ := strings.Cut(strings.TrimPrefix(input, "x "), " | y ")
			var pairs []pair
			ys := numbers(t, y)
			for i, v := range numbers(t, x) {
				pairs = append(pairs, pair{Estimate: v, Truth: ys[i]})
			}
			switch quantity {
			case "rho":
				got = figure(t, rho(t, pairs))
			case "sum d^2":
				// rho = 1 - 6 sum d^2 / (n^3 - n), which holds without ties.
				n := float64(len(pairs))
				got = math.Round((1 - figure(t, rho(t, pairs))) * (n*n*n - n) / 6)
			}
		case "icc", "kendall W":
			_, table, _ := strings.Cut(input, ": ")
			var r season.Ratings
			for line := range strings.SplitSeq(table, " / ") {
				r.Values = append(r.Values, numbers(t, line))
			}
			i, err := r.Intraclass()
			if err != nil {
				t.Fatal(err)
			}
			plain, corrected, err := r.Concordance()
			if err != nil {
				t.Fatal(err)
			}
			by := map[string]season.Figure{
				"MS between targets": i.Between, "MS within": i.Within, "MS judges": i.Judges, "MS error": i.Error,
				"ICC(1,1)": i.ICC11, "ICC(2,1)": i.ICC21, "ICC(3,1)": i.ICC31, "ICC(1,k)": i.ICC1k, "ICC(2,k)": i.ICC2k, "ICC(3,k)": i.ICC3k,
				"W uncorrected": plain, "W tie-corrected": corrected,
			}
			f, ok := by[quantity]
			if !ok {
				t.Fatalf("unknown quantity %q", quantity)
			}
			got = figure(t, f)
		case "cohen kappa", "quadratic kappa":
			k := strings.Count(input, "[") - 1
			a, err := season.NewAgreement(k)
			if err != nil {
				t.Fatal(err)
			}
			cells := numbers(t, strings.NewReplacer("[", "", "]", "", ",", "").Replace(input))
			for i, n := range cells {
				for range n {
					faulttest.Text(t, a.Add(i/k, i%k), "")
				}
			}
			by := map[string]season.Figure{"kappa": a.Kappa(), "quadratic kappa": a.QuadraticKappa(), "right": a.Within(0)}
			got = figure(t, by[quantity])
		case "limits of agreement":
			x, y, _ := strings.Cut(strings.TrimPrefix(input, "x "), " | y ")
			var s season.Errors
			ys := numbers(t, y)
			for i, v := range numbers(t, x) {
				faulttest.Text(t, s.Add(v, ys[i]), "")
			}
			lower, upper := s.Limits()
			by := map[string]season.Figure{"bias": s.Bias(), "spread": s.Spread(), "lower limit": lower, "upper limit": upper}
			got = figure(t, by[quantity])
		default:
			continue
		}
		checked[statistic]++
		within := 1e-15
		want, ok := new(big.Rat).SetString(value)
		if !ok {
			t.Fatalf("%s: value %q", quantity, value)
		}
		if _, decimals, _ := strings.Cut(value, "."); row.Get("kind") == "rounded" && len(decimals) < 10 {
			within = 0.5 * math.Pow10(-len(decimals))
		}
		w, _ := want.Float64()
		if math.Abs(got-w) > within {
			t.Errorf("%s, %s (%s, %s): got %.17g, want %s", statistic, quantity, row.Get("standing"), row.Get("source_id"), got, value)
		}
	}
	if d := cmp.Diff(map[string]int{"spearman": 3, "icc": 14, "kendall W": 4, "cohen kappa": 3, "quadratic kappa": 1, "limits of agreement": 6}, checked); d != "" {
		t.Errorf("rows checked (-want +got):\n%s", d)
	}
}

func figure(t *testing.T, f season.Figure) float64 {
	t.Helper()
	if !f.OK() {
		t.Fatalf("no figure: %v", f)
	}
	return f.Value
}

func TestErrors(t *testing.T) {
	var s season.Errors
	for _, p := range []pair{{12, 10}, {9, 10}, {23, 20}, {14, 16}, {31, 30}} {
		faulttest.Text(t, s.Add(p.Estimate, p.Truth), "")
	}
	// Errors 2 -1 3 -2 1: sum 3, sizes 9, squares 19. Estimates 89 and truths 86 in
	// sum; 5*19 - 9 = 86, so the spread is sqrt(86/20).
	type want struct {
		name string
		got  season.Figure
		want float64
	}
	lower, upper := s.Limits()
	for _, w := range []want{
		{"bias", s.Bias(), 0.6},
		{"spread", s.Spread(), math.Sqrt(4.3)},
		{"mean absolute", s.MeanAbsolute(), 1.8},
		{"root mean square", s.RootMeanSquare(), math.Sqrt(3.8)},
		{"lower limit", lower, 0.6 - 1.96*math.Sqrt(4.3)},
		{"upper limit", upper, 0.6 + 1.96*math.Sqrt(4.3)},
	} {
		if math.Abs(w.got.Value-w.want) > 1e-15 || w.got.N != 5 || !w.got.OK() {
			t.Errorf("%s: got %+v, want %v", w.name, w.got, w.want)
		}
	}
	// n sum xy - sum x sum y = 5*1824 - 89*86; the same for xx (1911) and yy (1756).
	if got, want := figure(t, s.Correlation()), 1466/math.Sqrt(1634.0*1384.0); math.Abs(got-want) > 1e-15 {
		t.Errorf("correlation: got %v, want %v", got, want)
	}
	if s.Bias().N != 5 {
		t.Errorf("n %d", s.Bias().N)
	}
	faulttest.Text(t, s.Add(1_000_000_000_001, 0), "estimate: 1000000000001: out of range; allowed: -1,000,000,000,000 to 1,000,000,000,000")
	faulttest.Text(t, s.Add(0, -1_000_000_000_001), "truth: -1000000000001: out of range; allowed: -1,000,000,000,000 to 1,000,000,000,000")
	if s.Bias().N != 5 {
		t.Error("a refused pair was counted")
	}
}

// TestSmallSamples: on both sides of every least number.
func TestSmallSamples(t *testing.T) {
	few := func(n int) season.Figure { return season.Figure{N: n, Reason: season.TooFew} }
	flat := func(n int) season.Figure { return season.Figure{N: n, Reason: season.NoSpread} }
	same := func(name string, got, want season.Figure) {
		t.Helper()
		if got != want {
			t.Errorf("%s: got %+v, want %+v", name, got, want)
		}
	}
	var s season.Errors
	var pairs []pair
	add := func(e, tr int64) {
		pairs = append(pairs, pair{Estimate: e, Truth: tr})
		faulttest.Text(t, s.Add(e, tr), "")
	}
	add(1, 1)
	add(2, 1)
	lower, upper := s.Limits()
	for name, f := range map[string]season.Figure{"bias": s.Bias(), "spread": s.Spread(), "lower limit": lower, "upper limit": upper, "mean absolute": s.MeanAbsolute(), "root mean square": s.RootMeanSquare()} {
		same(name, f, few(2))
	}
	add(3, 1)
	same("bias", s.Bias(), season.Figure{Value: 1, N: 3})
	same("spread", s.Spread(), season.Figure{Value: 1, N: 3})
	lower, upper = s.Limits()
	same("lower limit", lower, season.Figure{Value: -0.96, N: 3})
	same("upper limit", upper, season.Figure{Value: 2.96, N: 3})
	add(4, 1)
	same("correlation", s.Correlation(), few(4))
	add(5, 1)
	same("correlation", s.Correlation(), flat(5))

	a, err := season.NewAgreement(3)
	faulttest.Text(t, err, "")
	for range 9 {
		faulttest.Text(t, a.Add(1, 1), "")
	}
	same("kappa", a.LinearKappa(), few(9))
	same("within", a.Within(0), few(9))
	faulttest.Text(t, a.Add(1, 1), "")
	same("kappa", a.LinearKappa(), flat(10))
	same("within", a.Within(0), season.Figure{Value: 1, N: 10})

	table := season.Ratings{Values: [][]int64{{1, 2}, {2, 3}, {3, 3}}}
	i, err := table.Intraclass()
	faulttest.Text(t, err, "")
	plain, corrected, err := table.Concordance()
	faulttest.Text(t, err, "")
	same("icc", i.ICC3k, few(3))
	same("icc", i.Between, few(3))
	same("W", plain, few(3))
	same("W", corrected, few(3))
	table.Values = append(table.Values, []int64{4, 9})
	i, err = table.Intraclass()
	faulttest.Text(t, err, "")
	if !i.ICC11.OK() || i.ICC11.N != 4 {
		t.Errorf("icc: %+v", i.ICC11)
	}
	one := season.Ratings{Values: [][]int64{{1}, {2}, {3}, {4}}}
	if i, err = one.Intraclass(); i.ICC11 != few(4) || err != nil {
		t.Errorf("one judge: %+v, %v", i.ICC11, err)
	}
	level := season.Ratings{Values: [][]int64{{5, 5}, {5, 5}, {5, 5}, {5, 5}}}
	if i, err = level.Intraclass(); i.ICC11 != flat(4) || i.ICC2k != flat(4) || (i.Between != season.Figure{N: 4}) || err != nil {
		t.Errorf("all alike: %+v, %v", i, err)
	}
	if plain, corrected, err = level.Concordance(); plain != flat(4) || corrected != flat(4) || err != nil {
		t.Errorf("all alike: %v, %v, %v", plain, corrected, err)
	}
	none := season.Ratings{}
	if plain, _, err = none.Concordance(); plain != few(0) || err != nil {
		t.Errorf("nothing: %v, %v", plain, err)
	}
	ragged := season.Ratings{Values: [][]int64{{1, 2}, {1}}}
	_, err = ragged.Intraclass()
	faulttest.Text(t, err, "exhibit 2: 1 value: missing; allowed: 2, one of each judge")
	_, _, err = ragged.Concordance()
	faulttest.Text(t, err, "exhibit 2: 1 value: missing; allowed: 2, one of each judge")
	huge := season.Ratings{Values: [][]int64{{1, 2}, {1, 1_000_000_000_001}}}
	_, err = huge.Intraclass()
	faulttest.Text(t, err, "exhibit 2: 1000000000001: out of range; allowed: -1,000,000,000,000 to 1,000,000,000,000")
}

func TestFigure(t *testing.T) {
	for _, tt := range []struct {
		f    season.Figure
		want string
	}{
		{season.Figure{Value: 0.12345, N: 9}, "0.123"},
		{season.Figure{Value: -0.0001, N: 9}, "0.000"},
		{season.Figure{Value: -0.5, N: 9}, "-0.500"},
		{season.Figure{N: 2, Reason: season.TooFew}, "too few (2)"},
		{season.Figure{N: 12, Reason: season.NoSpread}, "no spread (12)"},
	} {
		if got := tt.f.String(); got != tt.want || tt.f.Text(3) != tt.want {
			t.Errorf("got %q, want %q", got, tt.want)
		}
	}
	if got := (season.Figure{Value: 1.25}).Text(1); got != "1.2" {
		t.Errorf("got %q", got)
	}
}

// TestMaxima: sums at the edge of what is taken do not overflow.
func TestMaxima(t *testing.T) {
	var s season.Errors
	const most = 1_000_000_000_000
	for i := range 8 {
		p := pair{Estimate: most, Truth: -most}
		if i%2 == 1 {
			p = pair{Estimate: -most, Truth: most}
		}
		faulttest.Text(t, s.Add(p.Estimate, p.Truth), "")
	}
	if got := s.RootMeanSquare(); got.Value != 2*most {
		t.Errorf("root mean square %v", got.Value)
	}
	if got := s.Bias(); got.Value != 0 {
		t.Errorf("bias %v", got.Value)
	}
	if got := s.Correlation(); got.Value != -1 {
		t.Errorf("correlation %v", got.Value)
	}
}

// TestMergeAnyOrder: cut a season into pieces, merge them in any order: one result.
func TestMergeAnyOrder(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		pairs := rapid.SliceOfN(rapid.Custom(func(t *rapid.T) pair {
			return pair{Estimate: rapid.Int64Range(-1e12, 1e12).Draw(t, "estimate"), Truth: rapid.Int64Range(-1e12, 1e12).Draw(t, "truth")}
		}), 0, 30).Draw(t, "pairs")
		var whole season.Errors
		parts := make([]season.Errors, 4)
		for _, p := range pairs {
			if err := whole.Add(p.Estimate, p.Truth); err != nil {
				t.Fatal(err)
			}
			if err := parts[rapid.IntRange(0, 3).Draw(t, "part")].Add(p.Estimate, p.Truth); err != nil {
				t.Fatal(err)
			}
		}
		var merged season.Errors
		for _, i := range rapid.Permutation([]int{0, 1, 2, 3}).Draw(t, "order") {
			merged.Merge(parts[i])
		}
		if merged != whole {
			t.Fatalf("merged %+v, whole %+v", merged, whole)
		}
	})
}

func TestAgreement(t *testing.T) {
	a, err := season.NewAgreement(3)
	faulttest.Text(t, err, "")
	// Rows are answers: [5 2 0] [1 6 1] [0 2 3], 20 in all; rows 7 8 5, columns 6 10 4.
	for i, n := range []int{5, 2, 0, 1, 6, 1, 0, 2, 3} {
		for range n {
			faulttest.Text(t, a.Add(i/3, i%3), "")
		}
	}
	ratio := func(num, den float64) float64 { return num / den }
	for _, tt := range []struct {
		name string
		got  season.Figure
		want float64
	}{
		{"right", a.Within(0), ratio(14, 20)},
		{"one off", a.Within(1), 1},
		{"none", a.Within(-1), 0},
		// Expected: 7*6 + 8*10 + 5*4 = 142 of 400 right, so 258 wrong; observed 6*20 = 120.
		{"kappa", a.Kappa(), ratio(138, 258)},
		// Expected distance: 7*10 + 2*7*4 + 8*6 + 8*4 + 2*5*6 + 5*10 = 316; observed 6*20.
		{"linear", a.LinearKappa(), ratio(196, 316)},
		// Squares: 7*10 + 4*7*4 + 8*6 + 8*4 + 4*5*6 + 5*10 = 432.
		{"quadratic", a.QuadraticKappa(), ratio(312, 432)},
	} {
		if tt.got.Value != tt.want || tt.got.N != 20 {
			t.Errorf("%s: got %+v, want %v", tt.name, tt.got, tt.want)
		}
	}
	if a.Within(0).N != 20 || a.Count(1, 0) != 1 || a.Count(0, 1) != 2 || a.Count(3, 0) != 0 || a.Count(0, 3) != 0 || a.Count(-1, 0) != 0 || a.Count(0, -1) != 0 {
		t.Error("counts are wrong")
	}
	b, err := season.NewAgreement(3)
	faulttest.Text(t, err, "")
	faulttest.Text(t, b.Merge(a), "")
	faulttest.Text(t, b.Merge(a), "")
	if b.Within(0).N != 40 || b.Count(0, 0) != 10 || b.LinearKappa().Value != a.LinearKappa().Value {
		t.Error("merged counts are wrong")
	}
	faulttest.Text(t, a.Add(3, 0), "category: 3: out of range; allowed: 0 to 2")
	faulttest.Text(t, a.Add(0, -1), "category: -1: out of range; allowed: 0 to 2")
	two, err := season.NewAgreement(2)
	faulttest.Text(t, err, "")
	faulttest.Text(t, a.Merge(two), "categories: 2: out of range; allowed: 3")
	_, err = season.NewAgreement(1)
	faulttest.Text(t, err, "categories: 1: out of range; allowed: 2 to 64")
	_, err = season.NewAgreement(65)
	faulttest.Text(t, err, "categories: 65: out of range; allowed: 2 to 64")
	_, err = season.NewAgreement(64)
	faulttest.Text(t, err, "")
}

func TestJudges(t *testing.T) {
	j := season.Judges{}
	for _, v := range []struct {
		exhibit, judge string
		value          int64
	}{{"b", "1", 3}, {"a", "1", 4}, {"a", "2", 5}, {"b", "2", 6}, {"a", "late", 1}} {
		faulttest.Text(t, j.Add(v.exhibit, v.judge, v.value), "")
	}
	if d := cmp.Diff(season.Ratings{Exhibits: []string{"a", "b"}, Judges: []string{"1", "2"}, Values: [][]int64{{4, 5}, {3, 6}}, Left: []string{"late"}}, j.Ratings()); d != "" {
		t.Errorf("(-want +got):\n%s", d)
	}
	faulttest.Text(t, j.Add("a", "1", 9), `exhibit "a": judge "1": repeated; allowed: one value of each judge`)
	faulttest.Text(t, j.Add("a", "3", 1_000_000_000_001), "value: 1000000000001: out of range; allowed: -1,000,000,000,000 to 1,000,000,000,000")
	k := season.Judges{}
	faulttest.Text(t, k.Add("b", "late", 2), "")
	faulttest.Text(t, j.Merge(k), "")
	faulttest.Text(t, j.Merge(k), "judges: repeated; allowed: one value of each judge for each exhibit")
	if d := cmp.Diff(season.Ratings{Exhibits: []string{"a", "b"}, Judges: []string{"1", "2", "late"}, Values: [][]int64{{4, 5, 1}, {3, 6, 2}}}, j.Ratings()); d != "" {
		t.Errorf("(-want +got):\n%s", d)
	}
}

func official(t testing.TB) placing.Official {
	t.Helper()
	o, err := placing.NewOfficial(placing.MustParseOrder("3-2-1-4"), placing.MustParseCuts("2-8-2"))
	if err != nil {
		t.Fatal(err)
	}
	return o
}

func TestClass(t *testing.T) {
	c := season.NewClassCards(official(t))
	// The published cards of ext-maryland-contests: 50, 46, 42 and 24; the second twice.
	for i, card := range []string{"3-2-1-4", "2-3-4-1", "3-1-2-4", "4-2-3-1"} {
		faulttest.Text(t, c.Add(placing.MustParseOrder(card), contest.PointsOf(float64(100-i))), "")
	}
	few := season.Figure{N: 4, Reason: season.TooFew}
	if c.Exact() != few || c.Difficulty() != few || c.Discrimination() != few || c.MeanScore() != few || c.Pairs()[0].Share != few {
		t.Error("four cards are too few")
	}
	d := season.NewClassCards(official(t))
	faulttest.Text(t, d.Add(placing.MustParseOrder("2-3-4-1"), contest.PointsOf(90)), "")
	faulttest.Text(t, c.Merge(d), "")
	figure := func(v float64) season.Figure { return season.Figure{Value: v, N: 5} }
	if c.Exact().N != 5 || c.Exact() != figure(0.2) || c.MeanScore() != figure(41.6) || c.Difficulty() != figure(42.0/(5*44)) {
		t.Errorf("n %d, exact %v, mean %v, difficulty %v", c.Exact().N, c.Exact(), c.MeanScore(), c.Difficulty())
	}
	want := []season.PairShare{
		{Fault: placing.Fault{Upper: 3, Lower: 2, Points: 2}, Neighbors: true, Share: figure(0.6)},
		{Fault: placing.Fault{Upper: 3, Lower: 1, Points: 10}, Share: figure(0)},
		{Fault: placing.Fault{Upper: 3, Lower: 4, Points: 12}, Share: figure(0.2)},
		{Fault: placing.Fault{Upper: 2, Lower: 1, Points: 8}, Neighbors: true, Share: figure(0.2)},
		{Fault: placing.Fault{Upper: 2, Lower: 4, Points: 10}, Share: figure(0.2)},
		{Fault: placing.Fault{Upper: 1, Lower: 4, Points: 2}, Neighbors: true, Share: figure(0.6)},
	}
	if d := cmp.Diff(want, c.Pairs()); d != "" {
		t.Errorf("(-want +got):\n%s", d)
	}
	// Scores 50 46 42 24 46 with the rest 100 99 98 97 90: products of the
	// deviations 3.6, squares 419.2 and 62.8.
	if got := c.Discrimination(); !got.OK() || got.N != 5 || math.Abs(got.Value-3.6/math.Sqrt(419.2*62.8)) > 1e-15 {
		t.Errorf("discrimination %v", got)
	}
	faulttest.Text(t, c.Add(placing.MustParseOrder("1-2-3"), contest.PointsOf(0)), "card: 1-2-3: out of range; allowed: an order of 4 exhibits")
	faulttest.Text(t, c.Add(placing.MustParseOrder("3-2-1-4"), contest.PointsOf(100_000_001)), "truth: 1000000010000: out of range; allowed: -1,000,000,000,000 to 1,000,000,000,000")
	if c.Exact().N != 5 {
		t.Error("a refused card was counted")
	}
	var zero season.ClassCards
	faulttest.Text(t, c.Merge(zero), "official placing: unset: out of range; allowed: 3-2-1-4 cuts 2-8-2")
	if zero.Add(placing.MustParseOrder("1-2"), contest.PointsOf(0)) == nil {
		t.Error("a class without official placing takes a card")
	}
	level, err := placing.NewOfficial(placing.MustParseOrder("1-2"), placing.MustParseCuts("0"))
	faulttest.Text(t, err, "")
	tie := season.NewClassCards(level)
	for range 5 {
		faulttest.Text(t, tie.Add(placing.MustParseOrder("2-1"), contest.PointsOf(0)), "")
	}
	if got := tie.Difficulty(); got != (season.Figure{N: 5, Reason: season.NoSpread}) {
		t.Errorf("difficulty without cuts: %v", got)
	}
}

// TestClassAllPlacings: a member of each of the 24 placings is a guesser: the mean
// score is that of the cuts, the difficulty one half and every pair is reversed by
// half (derived).
func TestClassAllPlacings(t *testing.T) {
	c := season.NewClassCards(official(t))
	for card := range placing.Orders(4) {
		faulttest.Text(t, c.Add(card, contest.PointsOf(0)), "")
	}
	mean, _ := official(t).Mean().Float64()
	if c.MeanScore().Value != mean || c.Difficulty().Value != 0.5 || c.Exact().Value != 1.0/24 {
		t.Errorf("mean %v, difficulty %v, exact %v", c.MeanScore(), c.Difficulty(), c.Exact())
	}
	for _, p := range c.Pairs() {
		if p.Share.Value != 0.5 {
			t.Errorf("pair %+v", p)
		}
	}
	if got := c.Discrimination(); got.Reason != season.NoSpread {
		t.Errorf("discrimination against level scores: %v", got)
	}
}

// TestLargestClass counts every pair of twelve apart from the others: one card for
// each pair of neighbors switched, and five turned upside down.
func TestLargestClass(t *testing.T) {
	order := placing.MustParseOrder("12-11-10-9-8-7-6-5-4-3-2-1")
	o, err := placing.NewOfficial(order, placing.MustParseCuts("0-0-0-0-0-1-0-0-0-0-0"))
	faulttest.Text(t, err, "")
	c := season.NewClassCards(o)
	for i := 1; i < 12; i++ {
		list := slices.Collect(order.Exhibits())
		list[i-1], list[i] = list[i], list[i-1]
		card, err := placing.NewOrder(list...)
		faulttest.Text(t, err, "")
		for range i { // the i-th pair i times
			faulttest.Text(t, c.Add(card, contest.PointsOf(0)), "")
		}
	}
	for range 5 {
		faulttest.Text(t, c.Add(order.Reversed(), contest.PointsOf(0)), "")
	}
	pairs := c.Pairs()
	if len(pairs) != 66 || c.Exact().N != 71 {
		t.Fatalf("%d pairs, %d cards", len(pairs), c.Exact().N)
	}
	for _, p := range pairs {
		want := 5
		if p.Neighbors {
			want += order.Place(p.Upper)
		}
		if got := p.Share.Value * 71; math.Abs(got-float64(want)) > 1e-9 {
			t.Errorf("%d over %d: reversed on %v cards, want %d", p.Upper, p.Lower, got, want)
		}
	}
}

func facts(quality grade.Quality, fat float64, y int) contest.Facts {
	return contest.Facts{
		Maturity: maturity.A.At(50), Marbling: grade.Small.At(20), Quality: quality,
		Fat: grade.Inches(fat), Ribeye: grade.SquareInches(12), KPH: grade.Percent(2),
		Weight: grade.Pounds(800), Yield: grade.YieldUnits(int64(y) * grade.OneGrade / 10),
	}
}

func TestSeason(t *testing.T) {
	rungs := contest.CardQualities()
	s, err := season.NewSeason(rungs)
	faulttest.Text(t, err, "")
	u, err := season.NewSeason(rungs)
	faulttest.Text(t, err, "")
	for i := range 10 {
		to := s
		if i%3 == 0 {
			to = u
		}
		key := facts(rungs[3+i%3], 0.4+0.01*float64(i), 25+i)
		card := facts(rungs[3+i%3], 0.45+0.01*float64(i), 25+i)
		card.Quality = rungs[2+i%3] // one rung too good
		card.Ribeye, card.Marks.Ribeye = grade.Area{}, placing.Blank
		card.Maturity = 0
		faulttest.Text(t, to.Estimate("ada", card, key), "")
		if i < 3 {
			faulttest.Text(t, to.Placing("ada", official(t), placing.Card{Order: placing.MustParseOrder("4-2-3-1")}), "")
		}
	}
	faulttest.Text(t, s.Placing("ada", official(t), placing.Card{Mark: placing.Blank}), "")
	faulttest.Text(t, s.Placing("ben", official(t), placing.Card{Order: placing.MustParseOrder("3-2-1-4")}), "")
	faulttest.Text(t, s.Merge(u), "")
	if d := cmp.Diff([]string{"ada", "ben"}, s.Members()); d != "" {
		t.Errorf("(-want +got):\n%s", d)
	}
	c, ok := s.Calibration("ada")
	want := `member ada
            trait    unit   n    bias  spread  lower limit  upper limit  mean absolute  root mean square     correlation
         marbling  points  10     0.0     0.0          0.0          0.0            0.0               0.0  no spread (10)
    quality grade   rungs  10   +1.00    0.00        +1.00        +1.00           1.00              1.00            1.00
              fat      in  10  +0.050   0.000       +0.050       +0.050          0.050             0.050            1.00
              KPH       %  10    0.00    0.00         0.00         0.00           0.00              0.00  no spread (10)
           weight      lb  10     0.0     0.0          0.0          0.0            0.0               0.0  no spread (10)
            yield  grades  10    0.00    0.00         0.00         0.00           0.00              0.00            1.00
                grade   n  right  one off or right  kappa  linear  quadratic
              quality  10   0.00              1.00  -0.27    0.19       0.58
    whole yield grade  10   1.00              1.00   1.00    1.00       1.00
  placings 3: tau -0.33, share of points lost 0.59
`
	if d := cmp.Diff(want, c.String()); d != "" || !ok {
		t.Errorf("(-want +got):\n%s", d)
	}
	// Answers on rungs 2 3 4 (4 3 3 times), keys on 3 4 5: 21 of 100 right by chance,
	// expected distance 124 and squared 238 against 100 observed.
	if c.Quality.Kappa.Value != -21.0/79 || c.Quality.Linear.Value != 24.0/124 || c.Quality.Quadratic.Value != 138.0/238 {
		t.Errorf("kappa: %+v", c.Quality)
	}
	if c.Tau != (season.Figure{Value: -6.0 / 18, N: 18}) || c.Lost != (season.Figure{Value: 78.0 / 132, N: 3}) {
		t.Errorf("tau %+v, lost %+v", c.Tau, c.Lost)
	}
	if got := c.Traits[2]; got.Bias.Value != 0.05 || got.Trait != grade.TraitFat || got.Bias.N != 10 {
		t.Errorf("fat: %+v", got)
	}
	ben, ok := s.Calibration("ben")
	if got := ben.String(); got != "member ben\n  placings 1: tau too few (1), share of points lost too few (1)\n" || !ok {
		t.Errorf("ben: %q", got)
	}
	if _, ok := s.Calibration("cy"); ok {
		t.Error("a member without cards has a calibration")
	}

	faulttest.Text(t, s.Estimate("ada", facts(grade.Cutter.Part(grade.Whole), 0.4, 25), facts(rungs[0], 0.4, 25)), "quality: Cutter: unknown; allowed: a rung of the season")
	faulttest.Text(t, s.Estimate("ada", facts(rungs[0], 0.4, 25), facts(grade.Cutter.Part(grade.Whole), 0.4, 25)), "official quality: Cutter: unknown; allowed: a rung of the season")
	faulttest.Text(t, s.Estimate("ada", facts(rungs[0], 0.4, 200_000), facts(rungs[0], 0.4, 25)), "estimate of yield: 2000000000000: out of range; allowed: -1,000,000,000,000 to 1,000,000,000,000")
	faulttest.Text(t, s.Estimate("ada", facts(rungs[0], 0.4, 25), facts(rungs[0], 0.4, 200_000)), "official yield: 2000000000000: out of range; allowed: -1,000,000,000,000 to 1,000,000,000,000")
	faulttest.Text(t, s.Placing("ada", official(t), placing.Card{Order: placing.MustParseOrder("1-2")}), "card: 1-2: out of range; allowed: an order of 4 exhibits")
	if again, _ := s.Calibration("ada"); again.String() != want {
		t.Error("a refused card changed the season")
	}
	other, err := season.NewSeason(rungs[:2])
	faulttest.Text(t, err, "")
	faulttest.Text(t, s.Merge(other), "rungs: out of range; allowed: the same rungs in both")
	_, err = season.NewSeason(rungs[:1])
	faulttest.Text(t, err, "rungs: 1: out of range; allowed: 2 to 64")
	var most []grade.Quality
	for q := range grade.Quality(64) {
		most = append(most, q+1)
	}
	_, err = season.NewSeason(most)
	faulttest.Text(t, err, "")
	_, err = season.NewSeason(make([]grade.Quality, 65))
	faulttest.Text(t, err, "rungs: 65: out of range; allowed: 2 to 64")
	_, err = season.NewSeason([]grade.Quality{rungs[0], rungs[1], rungs[0]})
	faulttest.Text(t, err, "rungs: High Prime: repeated; allowed: each quality once")
}

// TestSeasonShuffle: the order of the cards changes nothing.
func TestSeasonShuffle(t *testing.T) {
	rungs := contest.CardQualities()
	type one struct{ card, key contest.Facts }
	var all []one
	r := rand.New(rand.NewPCG(1, 2))
	for range 60 {
		all = append(all, one{facts(rungs[r.IntN(16)], float64(r.IntN(90))/100, r.IntN(60)), facts(rungs[r.IntN(16)], float64(r.IntN(90))/100, r.IntN(60))})
	}
	page := func() string {
		s, err := season.NewSeason(rungs)
		faulttest.Text(t, err, "")
		for _, o := range all {
			faulttest.Text(t, s.Estimate("ada", o.card, o.key), "")
		}
		c, _ := s.Calibration("ada")
		return c.String()
	}
	want := page()
	for range 5 {
		r.Shuffle(len(all), func(i, j int) { all[i], all[j] = all[j], all[i] })
		if got := page(); got != want {
			t.Fatalf("shuffled: %s\nwant %s", got, want)
		}
	}
}

func TestTrait(t *testing.T) {
	for tr, want := range map[grade.Trait]string{
		grade.TraitSkeletal: "units", grade.TraitLean: "units", grade.TraitPreliminary: "grades", grade.TraitMaturity: "units", grade.TraitMarbling: "points", grade.TraitQuality: "rungs", grade.TraitFat: "in",
		grade.TraitRibeye: "sq in", grade.TraitKPH: "%", grade.TraitWeight: "lb", grade.TraitYield: "grades",
	} {
		page := season.Calibration{Traits: []season.TraitFigures{{Trait: tr, Bias: season.Figure{N: 2}}}}.String()
		if row := regexp.MustCompile(" " + tr.String() + " +" + want + " +2 "); !row.MatchString(page) {
			t.Errorf("%v is not in %s:\n%s", tr, want, page)
		}
	}
	rungs := contest.CardQualities()
	s, err := season.NewSeason(rungs)
	faulttest.Text(t, err, "")
	key := facts(rungs[0], 0.4, 20)
	for range 3 {
		card := key
		card.Maturity = maturity.A.At(60)
		card.Ribeye = grade.SquareInches(13)
		card.Weight = grade.Pounds(810)
		card.KPH = grade.Percent(1.5)
		card.Marbling = grade.Small.At(0)
		card.Yield = grade.Grades(1)
		faulttest.Text(t, s.Estimate("ada", card, key), "")
	}
	c, _ := s.Calibration("ada")
	var got []float64
	for _, f := range c.Traits {
		got = append(got, f.Bias.Value)
	}
	if d := cmp.Diff([]float64{10, -20, 0, 0, 1, -0.5, 10, -1}, got); d != "" {
		t.Errorf("biases in the units of the traits (-want +got):\n%s", d)
	}
	// Bone, lean and the preliminary grade, which is held against that of the
	// official fat where the key has no other: 0.4 in is 3.
	s, err = season.NewSeason(rungs)
	faulttest.Text(t, err, "")
	key = contest.Facts{Skeletal: maturity.A.At(60), Lean: maturity.A.At(50), Fat: grade.Inches(0.4)}
	card := contest.Facts{Skeletal: maturity.A.At(70), Lean: maturity.A.At(30), Preliminary: grade.ShortcutYieldUnits(325_000_000)}
	for range 3 {
		faulttest.Text(t, s.Estimate("ada", card, key), "")
	}
	key.Preliminary = grade.ShortcutYieldUnits(310_000_000)
	faulttest.Text(t, s.Estimate("ben", card, key), "")
	c, _ = s.Calibration("ada")
	got = nil
	for _, f := range c.Traits {
		got = append(got, f.Bias.Value)
	}
	if d := cmp.Diff([]float64{10, -20, 0.25}, got); d != "" || c.Traits[2].Trait != grade.TraitPreliminary {
		t.Errorf("biases (-want +got):\n%s", d)
	}
	if page := c.String(); strings.Contains(page, "placings") || !strings.Contains(page, "preliminary") {
		t.Errorf("a member without placings: %s", page)
	}
	for range 2 {
		faulttest.Text(t, s.Estimate("ben", card, key), "")
	}
	if ben, _ := s.Calibration("ben"); ben.Traits[2].Bias.Value != 0.15 {
		t.Errorf("against the official preliminary grade: %v", ben.Traits[2].Bias)
	}
}
