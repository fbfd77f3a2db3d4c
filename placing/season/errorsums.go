package season

import (
	"cmp"
	"math/big"
	mathbits "math/bits"
	"strconv"

	"example.com/ribface/internal/fault"
)

// wide is a sum of products of int64 in 128 bits. It is comparable.
type wide struct {
	hi int64
	lo uint64
}

func (w *wide) plus(v wide) {
	lo, carry := mathbits.Add64(w.lo, v.lo, 0)
	w.lo, w.hi = lo, w.hi+v.hi+int64(carry)
}

// add adds a*b.
func (w *wide) add(a, b int64) {
	hi, lo := mathbits.Mul64(uint64(a), uint64(b))
	w.plus(wide{int64(hi) - a>>63&b - b>>63&a, lo})
}

func (w wide) big() *big.Int {
	v := new(big.Int).Lsh(integer(w.hi), 64)
	return v.Add(v, new(big.Int).SetUint64(w.lo))
}

// maxValue bounds what is summed, so that no sum of fewer than 2^60 observations
// overflows.
const maxValue = 1_000_000_000_000

// missing is the error for a collection that nobody made.
func missing(what string) error {
	return &fault.FieldError{Field: what, Allowed: "one that its New function has made, or a pointer to one", Err: fault.ErrMissing}
}

// check refuses what could overflow.
func check(field string, v int64) error {
	if v < -maxValue || v > maxValue {
		return &fault.FieldError{Field: field, Value: strconv.FormatInt(v, 10), Allowed: "-1,000,000,000,000 to 1,000,000,000,000", Err: fault.ErrRange}
	}
	return nil
}

// Errors sums up the errors of estimates in one pass: an error is the estimate less
// the truth. It holds exact integer sums, takes 136 bytes whatever it has seen, and
// two of them can be merged in any order with the same result. It is comparable
// with ==. The N of its figures is the number of estimates. The zero Errors have seen
// nothing.
type Errors struct {
	worker
	n              int64
	e, abs, x, y   wide // sums of errors, their sizes, estimates, truths
	ee, xx, yy, xy wide
}

// Add adds an estimate with the truth that it is held against, as integers in a unit of
// the caller's choice. A value beyond a trillion either way gives a
// [*placing.FieldError] and adds nothing.
func (s *Errors) Add(estimate, truth int64) error {
	if s == nil {
		return missing("errors")
	}
	if err := cmp.Or(check("estimate", estimate), check("truth", truth)); err != nil {
		return err
	}
	s.n++
	e := estimate - truth
	s.e.add(e, 1)
	s.abs.add(max(e, -e), 1)
	s.x.add(estimate, 1)
	s.y.add(truth, 1)
	s.ee.add(e, e)
	s.xx.add(estimate, estimate)
	s.yy.add(truth, truth)
	s.xy.add(estimate, truth)
	return nil
}

// Merge adds what t has seen.
func (s *Errors) Merge(t Errors) {
	if s == nil {
		return
	}
	s.n += t.n
	for _, v := range [...]struct {
		to   *wide
		from wide
	}{{&s.e, t.e}, {&s.abs, t.abs}, {&s.x, t.x}, {&s.y, t.y}, {&s.ee, t.ee}, {&s.xx, t.xx}, {&s.yy, t.yy}, {&s.xy, t.xy}} {
		v.to.plus(v.from)
	}
}

// Bias returns the mean error; over 0 for estimates that are too high, TooFew under 3.
func (s Errors) Bias() Figure {
	return enough(s.n, minErrors).ratio(s.e.big(), integer(s.n))
}

// Spread returns the standard deviation of the errors around their mean, with n - 1;
// TooFew under 3 estimates.
func (s Errors) Spread() Figure {
	return enough(s.n, minErrors).sqrt(spread(s.n, s.ee, s.e, s.e), mul(integer(s.n), integer(s.n-1)))
}

// Limits returns the limits of agreement: the bias less 1.96 times the spread, and
// the bias and 1.96 times the spread. Where the errors scatter alike over the whole
// range and around their mean as a bell curve does, 95 of 100 lie between them
// (published: biochemmed-2015-25-141, lancet-1986-307). They are TooFew under 3.
func (s Errors) Limits() (lower, upper Figure) {
	lower = enough(s.n, minErrors)
	if !lower.OK() {
		return lower, lower
	}
	n, upper := integer(s.n), lower
	// The square root of (1.96 n)^2 V / (n (n-1)) is n times 1.96 spreads.
	square := precise(mul(integer(196*196), n, spread(s.n, s.ee, s.e, s.e)))
	square.Quo(square, precise(integer(100*100*(s.n-1))))
	reach, sum := square.Sqrt(square), precise(s.e.big())
	over := func(v *big.Float) float64 {
		f, _ := v.Quo(v, precise(n)).Float64()
		return f
	}
	lower.Value = over(new(big.Float).Sub(sum, reach))
	upper.Value = over(new(big.Float).Add(sum, reach))
	return lower, upper
}

// MeanAbsolute returns the mean size of the errors; TooFew under 3.
func (s Errors) MeanAbsolute() Figure {
	return enough(s.n, minErrors).ratio(s.abs.big(), integer(s.n))
}

// RootMeanSquare returns the square root of the mean squared error; TooFew under 3.
func (s Errors) RootMeanSquare() Figure {
	return enough(s.n, minErrors).sqrt(s.ee.big(), integer(s.n))
}

// Correlation returns the product-moment correlation of estimates and truths; TooFew
// under 5, NoSpread where one of the two does not vary. Of ranks, values that tie having the
// mean of their ranks, it is Spearman's rho (published: stat-spearman-example).
func (s Errors) Correlation() Figure {
	return enough(s.n, minCorrelation).root(spread(s.n, s.xy, s.x, s.y), mul(spread(s.n, s.xx, s.x, s.x), spread(s.n, s.yy, s.y, s.y)))
}

// spread returns n*ab - a*b.
func spread(n int64, ab, a, b wide) *big.Int {
	return sub(mul(integer(n), ab.big()), mul(a.big(), b.big()))
}
