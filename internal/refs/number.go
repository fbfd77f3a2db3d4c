package refs

import (
	"fmt"
	"math/big"
	"strings"

	"github.com/shopspring/decimal"
)

// Rat reads a decimal number exactly.
func Rat(s string) *big.Rat {
	r, ok := new(big.Rat).SetString(s)
	if !ok {
		panic(fmt.Sprintf("conformance: %q is no number", s))
	}
	return r
}

func Ratio(d decimal.Decimal) *big.Rat { return Rat(d.String()) }

func Sub(a, b *big.Rat) *big.Rat { return new(big.Rat).Sub(a, b) }
func Mul(a, b *big.Rat) *big.Rat { return new(big.Rat).Mul(a, b) }
func Abs(a *big.Rat) *big.Rat    { return new(big.Rat).Abs(a) }

// Plain writes an exact decimal in its shortest form.
func Plain(r *big.Rat) string {
	s := r.FloatString(40)
	s = strings.TrimRight(s, "0")
	s = strings.TrimRight(s, ".")
	if s == "-0" {
		return "0"
	}
	return s
}

// Digits counts the digits after the point.
func Digits(s string) int {
	_, after, _ := strings.Cut(s, ".")
	return len(after)
}

// Half is half a unit of the last printed digit.
func Half(s string) *big.Rat {
	return new(big.Rat).SetFrac(big.NewInt(1), mul10(2, Digits(s)))
}

func mul10(n int64, places int) *big.Int {
	p := new(big.Int).Exp(big.NewInt(10), big.NewInt(int64(places)), nil)
	return p.Mul(p, big.NewInt(n))
}

// Nearest rounds to so many places, halves up.
func Nearest(r *big.Rat, places int) *big.Rat {
	scale := mul10(1, places)
	n := new(big.Rat).Mul(r, new(big.Rat).SetInt(scale))
	n.Add(n, big.NewRat(1, 2))
	q := new(big.Int)
	q.Div(n.Num(), n.Denom()) // toward minus infinity: the divisor is positive
	return new(big.Rat).SetFrac(q, scale)
}

// Fit compares a stated figure with the exact one: equal when rounded to the
// stated digits, else within the bound, else not at all.
func Fit(stated string, exact, bound *big.Rat) Verdict {
	switch s := Rat(stated); {
	case s.Cmp(Nearest(exact, Digits(stated))) == 0:
		return Agrees
	case Abs(Sub(s, exact)).Cmp(bound) <= 0:
		return Rounding
	default:
		return Differs
	}
}

// PerUnit has the customary units in the metric units that sources print.
var PerUnit = map[string]string{"in": "1", "cm": "2.54", "lb": "1", "kg": "0.45359237", "sq in": "1", "sq cm": "6.4516", "%": "1", "": "1"}

// Amount splits a printed measurement into its number and unit.
func Amount(s string) (number, unit string) {
	if n, ok := strings.CutSuffix(s, "%"); ok {
		return n, "%"
	}
	number, unit, _ = strings.Cut(s, " ")
	return number, unit
}

// Uncertain is half a unit of the last printed digit, in the customary unit.
func Uncertain(s string) *big.Rat {
	n, unit := Amount(s)
	return new(big.Rat).Quo(Half(n), Rat(PerUnit[unit]))
}
