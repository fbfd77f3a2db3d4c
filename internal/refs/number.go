package refs

import (
	"fmt"
	"math/big"
	"strings"

	"example.com/ribface/grade"
	"github.com/shopspring/decimal"
)

// rat reads a decimal number exactly.
func rat(s string) *big.Rat {
	r, ok := new(big.Rat).SetString(s)
	if !ok {
		panic(fmt.Sprintf("conformance: %q is no number", s))
	}
	return r
}

func ratio(d decimal.Decimal) *big.Rat { return rat(d.String()) }

func sub(a, b *big.Rat) *big.Rat { return new(big.Rat).Sub(a, b) }
func mul(a, b *big.Rat) *big.Rat { return new(big.Rat).Mul(a, b) }
func abs(a *big.Rat) *big.Rat    { return new(big.Rat).Abs(a) }

// plain writes an exact decimal in its shortest form.
func plain(r *big.Rat) string {
	s := r.FloatString(40)
	s = strings.TrimRight(s, "0")
	s = strings.TrimRight(s, ".")
	if s == "-0" {
		return "0"
	}
	return s
}

// digits counts the digits after the point.
func digits(s string) int {
	_, after, _ := strings.Cut(s, ".")
	return len(after)
}

// half is half a unit of the last printed digit.
func half(s string) *big.Rat {
	return new(big.Rat).SetFrac(big.NewInt(1), mul10(2, digits(s)))
}

func mul10(n int64, places int) *big.Int {
	p := new(big.Int).Exp(big.NewInt(10), big.NewInt(int64(places)), nil)
	return p.Mul(p, big.NewInt(n))
}

// nearest rounds to so many places, halves up.
func nearest(r *big.Rat, places int) *big.Rat {
	scale := mul10(1, places)
	n := new(big.Rat).Mul(r, new(big.Rat).SetInt(scale))
	n.Add(n, big.NewRat(1, 2))
	q := new(big.Int)
	q.Div(n.Num(), n.Denom()) // toward minus infinity: the divisor is positive
	return new(big.Rat).SetFrac(q, scale)
}

// fit compares a stated figure with the exact one: equal when rounded to the
// stated digits, else within the bound, else not at all.
func fit(stated string, exact, bound *big.Rat) Verdict {
	switch s := rat(stated); {
	case s.Cmp(nearest(exact, digits(stated))) == 0:
		return Agrees
	case abs(sub(s, exact)).Cmp(bound) <= 0:
		return Rounding
	default:
		return Differs
	}
}

// Customary units in the metric units that sources print.
var perUnit = map[string]string{"in": "1", "cm": "2.54", "lb": "1", "kg": "0.45359237", "sq in": "1", "sq cm": "6.4516", "%": "1", "": "1"}

// amount splits a printed measurement into its number and unit.
func amount(s string) (number, unit string) {
	if n, ok := strings.CutSuffix(s, "%"); ok {
		return n, "%"
	}
	number, unit, _ = strings.Cut(s, " ")
	return number, unit
}

// uncertain is half a unit of the last printed digit, in the customary unit.
func uncertain(s string) *big.Rat {
	n, unit := amount(s)
	return new(big.Rat).Quo(half(n), rat(perUnit[unit]))
}

// measures reads the four measures of a row as they are printed.
func (r Row) measures() (m grade.Measures, err error) {
	if m.Fat, err = grade.ParseThickness(r.Get("fat")); err != nil {
		return m, err
	}
	if m.Ribeye, err = grade.ParseArea(r.Get("rea")); err != nil {
		return m, err
	}
	if m.KPH, err = grade.ParseShare(r.Get("kph")); err != nil {
		return m, err
	}
	weight := "hcw"
	if !r.Has(weight) {
		weight = "weight"
	}
	m.Weight, err = grade.ParseWeight(r.Get(weight))
	return m, err
}

// bound is how far the rounding of the printed measures can move a result with
// these coefficients for fat, KPH, weight and ribeye.
func (r Row) bound(coefficients ...string) *big.Rat {
	sum := new(big.Rat)
	for i, name := range []string{"fat", "kph", "hcw", "rea"} {
		sum.Add(sum, mul(rat(coefficients[i]), uncertain(r.Get(name))))
	}
	return sum
}
