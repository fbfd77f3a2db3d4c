package statcheck_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"example.com/ribface/internal/compare/statcheck"
	"example.com/ribface/placing"
	"example.com/ribface/placing/contest"
	"example.com/ribface/placing/season"
	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/stat"
)

// close compares a figure with the library's float, which has rounding of its own.
func close(t *testing.T, name string, got season.Figure, want float64) {
	t.Helper()
	if !got.OK() {
		if !math.IsNaN(want) && !math.IsInf(want, 0) {
			t.Fatalf("%s: %v, the other library has %v", name, got, want)
		}
		return
	}
	if d := math.Abs(got.Value - want); !(d <= 1e-9*max(1, math.Abs(want))) {
		t.Fatalf("%s: got %.17g, the other library has %.17g", name, got.Value, want)
	}
}

const rounds = 2000

// draws makes random samples: wide and untied, and narrow with many ties.
func draws(r *rand.Rand) (pairs [][2]int64, x, y, e []float64) {
	n, span := 5+r.IntN(40), int64(1_000_000_000)
	if r.IntN(2) == 0 {
		span = 4
	}
	for range n {
		a := r.Int64N(span)
		b := a + r.Int64N(span) - span/3
		pairs = append(pairs, [2]int64{b, a})
		x, y, e = append(x, float64(b)), append(y, float64(a)), append(e, float64(b-a))
	}
	return pairs, x, y, e
}

func varies(x []float64) bool { return stat.Variance(x, nil) > 0 }

func TestErrors(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 1))
	for range rounds {
		pairs, x, y, e := draws(r)
		var s season.Errors
		for _, p := range pairs {
			if err := s.Add(p[0], p[1]); err != nil {
				t.Fatal(err)
			}
		}
		close(t, "bias", s.Bias(), stat.Mean(e, nil))
		close(t, "spread", s.Spread(), stat.StdDev(e, nil))
		mean, sd := stat.MeanStdDev(e, nil)
		lower, upper := s.Limits()
		close(t, "lower limit", lower, mean-1.96*sd)
		close(t, "upper limit", upper, mean+1.96*sd)
		close(t, "mean absolute", s.MeanAbsolute(), statcheck.MeanAbsolute(e))
		close(t, "root mean square", s.RootMeanSquare(), statcheck.RootMeanSquare(e))
		if varies(x) && varies(y) {
			close(t, "correlation", s.Correlation(), stat.Correlation(x, y, nil))
			var ranks season.Errors
			a, b := statcheck.Ranks(x), statcheck.Ranks(y)
			for i := range a { // doubled, because mean ranks can be halves
				if err := ranks.Add(int64(2*b[i]), int64(2*a[i])); err != nil {
					t.Fatal(err)
				}
			}
			close(t, "rho", ranks.Correlation(), statcheck.Rho(x, y))
		}
	}
}

// TestTau compares the tau-b of two rankings, with and without ties, and uses the
// library's own Kendall correlation where nothing ties.
func TestTau(t *testing.T) {
	r := rand.New(rand.NewPCG(2, 2))
	for range rounds {
		n := 2 + r.IntN(placing.MaxExhibits-1)
		a, b := r.Perm(n), r.Perm(n)
		ties := r.IntN(2) == 0
		var x, y []float64
		for i := range n {
			if ties {
				a[i], b[i] = a[i]/2, b[i]/3
			}
			x, y = append(x, float64(a[i])), append(y, float64(b[i]))
		}
		tau, ok := tauB(t, a, b)
		if ok {
			close(t, "tau-b", season.Figure{Value: tau, N: n}, statcheck.TauB(x, y))
		} else if varies(x) && varies(y) {
			t.Fatalf("no tau-b of %v and %v", a, b)
		}
		if !ties {
			close(t, "tau", season.Figure{Value: tau, N: n}, statcheck.TauA(x, y))
		}
	}
}

func tauB(t *testing.T, a, b []int) (float64, bool) {
	t.Helper()
	x, err := placing.RankScores(a...)
	if err != nil {
		t.Fatal(err)
	}
	y, err := placing.RankScores(b...)
	if err != nil {
		t.Fatal(err)
	}
	pairs, err := x.Against(y)
	if err != nil {
		t.Fatal(err)
	}
	return pairs.TauB()
}

func TestAgreement(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 3))
	for range rounds {
		k := 2 + r.IntN(8)
		a, err := season.NewAgreement(k)
		if err != nil {
			t.Fatal(err)
		}
		counts := mat.NewDense(k, k, nil)
		var x, y []float64
		near := 0.0
		for range 10 + r.IntN(200) {
			key := r.IntN(k)
			answer := min(max(key+r.IntN(3)-1, 0), k-1)
			if err := a.Add(answer, key); err != nil {
				t.Fatal(err)
			}
			counts.Set(answer, key, counts.At(answer, key)+1)
			x, y = append(x, float64(answer)), append(y, float64(key))
			if answer == key {
				near++
			}
		}
		if !varies(x) || !varies(y) {
			continue
		}
		close(t, "right", a.Within(0), mat.Trace(counts)/mat.Sum(counts))
		close(t, "right, counted", a.Within(0), near/float64(len(x)))
		close(t, "kappa", a.Kappa(), statcheck.Kappa(counts, func(d float64) float64 { return math.Min(math.Abs(d), 1) }))
		close(t, "linear", a.LinearKappa(), statcheck.Kappa(counts, math.Abs))
		close(t, "quadratic", a.QuadraticKappa(), statcheck.Kappa(counts, func(d float64) float64 { return d * d }))
		close(t, "quadratic by moments", a.QuadraticKappa(), statcheck.QuadraticKappa(x, y))
	}
}

func TestRatings(t *testing.T) {
	r := rand.New(rand.NewPCG(4, 4))
	for range rounds {
		n, k, span := 4+r.IntN(10), 2+r.IntN(6), int64(1_000)
		if r.IntN(2) == 0 {
			span = 4
		}
		var ratings season.Ratings
		var table [][]float64
		for range n {
			base := r.Int64N(span)
			var row []int64
			for range k {
				row = append(row, base+r.Int64N(span))
			}
			ratings.Values = append(ratings.Values, row)
			table = append(table, statcheck.Column(row))
		}
		i, err := ratings.Intraclass()
		if err != nil {
			t.Fatal(err)
		}
		b, w, j, e := statcheck.MeanSquares(table)
		close(t, "between", i.Between, b)
		close(t, "within", i.Within, w)
		close(t, "judges", i.Judges, j)
		close(t, "error", i.Error, e)
		N, K := float64(n), float64(k)
		if b > 1e-9 && e > 1e-9 {
			close(t, "ICC(1,1)", i.ICC11, (b-w)/(b+(K-1)*w))
			close(t, "ICC(2,1)", i.ICC21, (b-e)/(b+(K-1)*e+K*(j-e)/N))
			close(t, "ICC(3,1)", i.ICC31, (b-e)/(b+(K-1)*e))
			// The means of k judges, by stepping up the correlation of one.
			up := func(one float64) float64 { return K * one / (1 + (K-1)*one) }
			close(t, "ICC(1,k)", i.ICC1k, (b-w)/b)
			close(t, "ICC(2,k)", i.ICC2k, up((b-e)/(b+(K-1)*e+K*(j-e)/N)))
			close(t, "ICC(3,k)", i.ICC3k, (b-e)/b)
		}
		plain, corrected, err := ratings.Concordance()
		if err != nil {
			t.Fatal(err)
		}
		if corrected.OK() {
			p, c := statcheck.W(table)
			close(t, "W", plain, p)
			close(t, "W corrected", corrected, c)
		}
	}
}

// TestClass compares the figures of a class with means and correlations of the
// cards' scores.
func TestClass(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 5))
	var orders []placing.Order
	for o := range placing.Orders(4) {
		orders = append(orders, o)
	}
	for range rounds / 4 {
		o, err := placing.NewOfficial(orders[r.IntN(24)], placing.MustParseCuts("3-5-2"))
		if err != nil {
			t.Fatal(err)
		}
		c := season.NewClassCards(o)
		var scores, losses, exact, rest []float64
		reversed := map[[2]int][]float64{}
		for range 5 + r.IntN(60) {
			card, points := orders[r.IntN(24)], r.Int64N(4_000_000)
			if err := c.Add(card, contest.PointsUnits(points)); err != nil {
				t.Fatal(err)
			}
			s, err := o.Score(card)
			if err != nil {
				t.Fatal(err)
			}
			scores, rest = append(scores, float64(s)), append(rest, float64(points))
			losses = append(losses, float64(50-s)/float64(o.Cuts().GreatestLoss()))
			one := 0.0
			if card == o.Order() {
				one = 1
			}
			exact = append(exact, one)
			for i := 1; i <= 4; i++ {
				for j := i + 1; j <= 4; j++ {
					u, l := o.Order().At(i), o.Order().At(j)
					one := 0.0
					if card.Place(u) > card.Place(l) {
						one = 1
					}
					reversed[[2]int{u, l}] = append(reversed[[2]int{u, l}], one)
				}
			}
		}
		close(t, "mean score", c.MeanScore(), stat.Mean(scores, nil))
		close(t, "exact", c.Exact(), stat.Mean(exact, nil))
		close(t, "difficulty", c.Difficulty(), stat.Mean(losses, nil))
		if varies(scores) {
			close(t, "discrimination", c.Discrimination(), stat.Correlation(scores, rest, nil))
		}
		for _, p := range c.Pairs() {
			close(t, "pair", p.Share, stat.Mean(reversed[[2]int{p.Upper, p.Lower}], nil))
		}
	}
}
