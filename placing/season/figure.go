package season

import (
	"math/big"
	"strconv"

	"example.com/ribface/internal/text"
)

// The least numbers of observations for which a figure is given. With fewer it
// says TooFew instead of pretending. They are choices of this library; the one
// published hint is that 4 to 5 animals are enough to tell students apart
// (jds-1996-79-907).
const (
	MinErrors      = 3  // bias, spread, limits of agreement, mean absolute error, root mean square
	MinCorrelation = 5  // correlation, discrimination
	MinAgreement   = 10 // shares and kappa of grades
	MinExhibits    = 4  // exhibits for intraclass correlations and Kendall's W
	MinJudges      = 2  // judges for the same
	MinCards       = 5  // cards for the figures of a class
)

// Reason says why there is no figure. The zero Reason is that there is one.
type Reason uint8

// The reasons.
const (
	TooFew   Reason = 1 + iota // fewer observations than the least number
	NoSpread                   // all values alike, so that the figure has no meaning
)

var reasons = text.Enum[Reason]{Kind: "reason", Names: []string{"", "too few", "no spread"}}

// String gives the reason in words; "unset" for zero.
func (r Reason) String() string { return reasons.String(r) }

// MarshalText gives the reason; the zero value is empty text.
func (r Reason) MarshalText() ([]byte, error) { return reasons.Marshal(r) }

// UnmarshalText reads what [Reason.String] writes, in any case; empty text gives the
// zero value. On error the receiver is left as it was.
func (r *Reason) UnmarshalText(b []byte) error { return reasons.Unmarshal(r, b) }

// Figure is a statistic, or the reason why there is none. It is comparable with
// ==. The zero Figure is the value 0 of no observations, which no function of this
// package returns.
//
// A value is the exact result of integer sums, rounded once to a float64 (a square
// root is taken at 256 bits first), so that it is the same whatever the order in
// which observations came or were merged, and on every processor.
type Figure struct {
	Value  float64 `json:"value"`           // 0 when there is a Reason
	N      int     `json:"n"`               // observations behind it
	Reason Reason  `json:"reason,omitzero"` // why there is no value; zero when there is one
}

// OK reports whether there is a value.
func (f Figure) OK() bool { return f.Reason == 0 }

// String gives the value to three decimals, or the reason and the number of
// observations, as "too few (2)".
func (f Figure) String() string {
	if f.OK() {
		return f.Text(3)
	}
	return f.Reason.String() + " (" + strconv.Itoa(f.N) + ")"
}

// Text gives the value to so many decimals, at most 100, never as -0; for a Figure
// without a value it is String.
func (f Figure) Text(decimals int) string {
	if !f.OK() {
		return f.String()
	}
	s := strconv.FormatFloat(f.Value, 'f', min(decimals, 100), 64)
	if v, _ := strconv.ParseFloat(s, 64); v == 0 && s[0] == '-' {
		return s[1:]
	}
	return s
}

// signed is Text with a plus sign for a value over 0.
func (f Figure) signed(decimals int) string {
	s := f.Text(decimals)
	if f.OK() && f.Value > 0 {
		return "+" + s
	}
	return s
}

// bits is the precision in which roots are taken.
const bits = 256

// enough returns a figure without a value yet, which says TooFew where n is under
// the least number. The functions below that set the value leave it so.
func enough(n int64, least int) Figure {
	if n < int64(least) {
		return Figure{N: int(n), Reason: TooFew}
	}
	return Figure{N: int(n)}
}

// ratio sets the value num/den, or says that there is no spread where den is 0.
func (f Figure) ratio(num, den *big.Int) Figure {
	return f.rat(new(big.Rat).SetInt(num), new(big.Rat).SetInt(den))
}

// rat is ratio for two fractions.
func (f Figure) rat(num, den *big.Rat) Figure {
	switch {
	case !f.OK():
	case den.Sign() == 0:
		f.Reason = NoSpread
	default:
		f.Value, _ = new(big.Rat).Quo(num, den).Float64()
	}
	return f
}

// root sets the value num/sqrt(square), or says that there is no spread where
// square is 0.
func (f Figure) root(num, square *big.Int) Figure {
	switch {
	case !f.OK():
	case square.Sign() == 0:
		f.Reason = NoSpread
	default:
		s, n := precise(square), precise(num)
		f.Value, _ = n.Quo(n, s.Sqrt(s)).Float64()
	}
	return f
}

// sqrt sets the value sqrt(num/den); den is over 0.
func (f Figure) sqrt(num, den *big.Int) Figure {
	if f.OK() {
		q := precise(num)
		q.Quo(q, precise(den))
		f.Value, _ = q.Sqrt(q).Float64()
	}
	return f
}

// precise returns the number in the precision for roots.
func precise(v *big.Int) *big.Float { return new(big.Float).SetPrec(bits).SetInt(v) }

func integer(n int64) *big.Int { return big.NewInt(n) }

// mul returns the product of the factors.
func mul(factors ...*big.Int) *big.Int {
	p := integer(1)
	for _, f := range factors {
		p.Mul(p, f)
	}
	return p
}

// sub returns a - b.
func sub(a, b *big.Int) *big.Int { return new(big.Int).Sub(a, b) }
