// Package fixed reads and writes decimal text as whole numbers of a small unit,
// without any float on the way.
package fixed

import (
	"math/big"
	"math/bits"
	"strconv"

	"example.com/ribface/internal/fault"
)

const (
	maxLen    = 32 // bytes of the text of one number
	maxWhole  = 10 // digits before the point
	maxDigits = 18 // digits that are kept; 10^18 fits an int64
)

// pow10 holds the powers of ten that fit 64 bits.
var pow10 = [20]uint64{1, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11, 1e12, 1e13, 1e14, 1e15, 1e16, 1e17, 1e18, 1e19}

// Number is a decimal number as text has it: Digits * 10^-Places, and a little
// more where More is set. Places is negative after an exponent over 0.
type Number struct {
	Neg    bool
	More   bool // digits other than zeros follow the ones that are kept
	Digits uint64
	Places int
}

// Read reads s as a decimal number: an optional sign, digits with at most one
// point before, among or after them, and optionally an exponent, as 12, -0.45,
// .45, 820., +0.1 and 4.5E-01. No space and no grouping are read. The reason is
// fault.ErrSyntax or fault.ErrRange, or nil.
func Read[T ~string | ~[]byte](s T) (n Number, err error) {
	if len(s) == 0 || len(s) > maxLen {
		return n, fault.ErrSyntax
	}
	i := 0
	if s[0] == '-' || s[0] == '+' {
		n.Neg = s[0] == '-'
		i = 1
	}
	start := i
	for i < len(s) && s[i]-'0' <= 9 {
		if i-start >= maxWhole {
			return Number{}, fault.ErrRange
		}
		n.Digits = n.Digits*10 + uint64(s[i]-'0')
		i++
	}
	digits := i - start
	if i < len(s) && s[i] == '.' {
		for i++; i < len(s) && s[i]-'0' <= 9; i++ {
			if digits++; digits > maxDigits {
				n.More = n.More || s[i] != '0'
				continue
			}
			n.Digits = n.Digits*10 + uint64(s[i]-'0')
			n.Places++
		}
	}
	if digits == 0 {
		return Number{}, fault.ErrSyntax
	}
	if i < len(s) {
		e, ok := exponent(string(s[i:]))
		if !ok {
			return Number{}, fault.ErrSyntax
		}
		n.Places -= e
	}
	return n, nil
}

// exponent reads the e and a number of up to two digits.
func exponent(s string) (int, bool) {
	if s[0] != 'e' && s[0] != 'E' || len(s) > 4 {
		return 0, false
	}
	e, err := strconv.Atoi(s[1:])
	return e, err == nil && e > -100 && e < 100
}

// Decimal returns the number of a coefficient and an exponent of ten, the parts of
// a decimal; ok is false when they are too large to be a number of this package.
func Decimal(coefficient *big.Int, exponent int32) (n Number, ok bool) {
	if exponent > maxWhole || exponent < -99 {
		return Number{}, false
	}
	n = Number{Neg: coefficient.Sign() < 0, Places: -int(exponent)}
	c := new(big.Int).Abs(coefficient)
	if c.BitLen() > 400 {
		return Number{}, false
	}
	ten, rest := big.NewInt(10), new(big.Int)
	for c.BitLen() > 60 || c.Uint64() >= pow10[maxDigits] {
		c.QuoRem(c, ten, rest)
		n.More = n.More || rest.Sign() != 0
		n.Places--
	}
	n.Digits = c.Uint64()
	return n, true
}

// Rounding says which way a number goes that lies between two.
type Rounding uint8

// The roundings; the first is none.
const (
	Exact    Rounding = iota // refuse
	Down                     // toward minus infinity
	HalfUp                   // to the nearest, halves toward plus infinity
	HalfEven                 // to the nearest, halves to the even one
	HalfAway                 // to the nearest, halves away from zero
)

// Units returns the number times 10^places / den as a whole number, rounded once.
// The reason is fault.ErrPlaces for a rest that may not be rounded, or
// fault.ErrRange beyond 10^18 or where places is over the number's own by 20 or more,
// or nil.
func (n Number) Units(places int, den uint64, r Rounding) (int64, error) {
	up := places - n.Places
	var q uint64
	rest, half := 0, -1 // whether anything is left, and how it compares with a half
	switch {
	case up >= 0 && n.Digits == 0:
	case up >= 0:
		if up >= len(pow10) {
			return 0, fault.ErrRange
		}
		hi, lo := bits.Mul64(n.Digits, pow10[up])
		if hi >= den {
			return 0, fault.ErrRange
		}
		var left uint64
		q, left = bits.Div64(hi, lo, den)
		rest, half = compare(left, den)
	case -up < len(pow10):
		// Digits / (10^-up * den)
		hi, lo := bits.Mul64(pow10[-up], den)
		if hi == 0 {
			q = n.Digits / lo
			rest, half = compare(n.Digits%lo, lo)
			break
		}
		fallthrough
	default:
		// The divisor is over 64 bits and the digits are not: under a half.
		q, rest, half = 0, sign(n.Digits), -1
	}
	if n.More {
		rest = 1
		if half == 0 {
			half = 1
		}
	}
	if q > 1_000_000_000_000_000_000 {
		return 0, fault.ErrRange
	}
	v := int64(q)
	if n.Neg {
		v = -v
	}
	if rest == 0 {
		return v, nil
	}
	away := false
	switch r {
	case Exact:
		return 0, fault.ErrPlaces
	case Down:
		away = n.Neg
	case HalfUp:
		away = half > 0 || half == 0 && !n.Neg
	case HalfEven:
		away = half > 0 || half == 0 && q%2 != 0
	default:
		away = half >= 0
	}
	switch {
	case away && n.Neg:
		v--
	case away:
		v++
	}
	return v, nil
}

// compare says whether something is left of a division by den, and how it compares
// with the half of den.
func compare(left, den uint64) (rest, half int) {
	if left == 0 {
		return 0, -1
	}
	switch over := den - left; {
	case left < over:
		return 1, -1
	case left == over:
		return 1, 0
	}
	return 1, 1
}

func sign(n uint64) int {
	if n == 0 {
		return 0
	}
	return 1
}

// Parse reads s, see [Read], and returns it in units of 10^-places. Digits after
// the wanted places are refused unless they are zeros. The reason is
// fault.ErrSyntax, fault.ErrRange or fault.ErrPlaces, or nil.
func Parse[T ~string | ~[]byte](s T, places int) (int64, error) {
	if v, ok := Plain(s, places); ok {
		return v, nil
	}
	n, err := Read(s)
	if err != nil {
		return 0, err
	}
	if up := places - n.Places; up >= 0 && up <= maxDigits-maxWhole && n.Digits <= 1e10 && !n.More {
		v := int64(n.Digits * pow10[up])
		if n.Neg {
			v = -v
		}
		return v, nil
	}
	return n.Units(places, 1, Exact)
}

// Plain is Parse for what most numbers are: up to nine digits, a point among them, and
// no more places than are wanted.
func Plain[T ~string | ~[]byte](s T, places int) (v int64, ok bool) {
	if len(s) > 9 {
		return 0, false
	}
	point, digits := len(s)-1, 0
	for i := 0; i < len(s); i++ {
		switch c := s[i]; {
		case c-'0' <= 9:
			v = v*10 + int64(c-'0')
			digits++
		case c == '.' && digits == i:
			point = i
		default:
			return 0, false
		}
	}
	up := places - (len(s) - 1 - point)
	if digits == 0 || up < 0 || up > maxDigits-maxWhole {
		return 0, false
	}
	return v * int64(pow10[up]), true
}

// Append writes n, a count of 10^-places, as the shortest decimal text.
func Append(b []byte, n int64, places int) []byte { return AppendMin(b, n, places, 0) }

// AppendMin is Append with at least min digits after the point; places is at most 19.
func AppendMin(b []byte, n int64, places, min int) []byte {
	u := uint64(n)
	if n < 0 {
		b = append(b, '-')
		u = -u
	}
	var part uint64
	switch places { // a constant divides much faster
	case 4:
		u, part = u/1e4, u%1e4
	case 8:
		u, part = u/1e8, u%1e8
	default:
		u, part = u/pow10[places], u%pow10[places]
	}
	if u < 10 {
		b = append(b, '0'+byte(u))
	} else {
		b = strconv.AppendUint(b, u, 10)
	}
	if part == 0 && min <= 0 {
		return b
	}
	if places == 8 && min <= 4 && part%1e4 == 0 {
		part, places = part/1e4, 4
	}
	if p := uint32(part); places == 4 && min <= 0 { // digits that do not wait for each other
		n := len(b)
		b = append(b, '.', '0'+byte(p/1000), '0'+byte(p/100%10), '0'+byte(p/10%10), '0'+byte(p%10))
		switch {
		case p%10 != 0:
			return b
		case p%100 != 0:
			return b[:n+4]
		case p%1000 != 0:
			return b[:n+3]
		}
		return b[:n+2]
	}
	b = append(append(b, '.'), "0000000000000000000"[:places]...)
	point := len(b) - places
	for i := len(b) - 1; part > 0; i-- {
		b[i] += byte(part % 10)
		part /= 10
	}
	end := len(b)
	for end > point+min && b[end-1] == '0' {
		end--
	}
	if end == point { // places is 0
		end--
	}
	return b[:end]
}

// String is Append as a string.
func String(n int64, places int) string { return string(Append(nil, n, places)) }

// Signed is String with a plus sign for a number that is not negative.
func Signed(n int64, places int) string { return Plus(n, String(n, places)) }

// Plus puts a plus sign before s, the text of n, where n is not negative.
func Plus(n int64, s string) string {
	if n < 0 {
		return s
	}
	return "+" + s
}

// FloorDiv divides toward minus infinity, with a rest of the sign of b.
func FloorDiv(a, b int64) (q, rest int64) {
	q, rest = a/b, a%b
	if rest != 0 && (rest < 0) != (b < 0) {
		q--
		rest += b
	}
	return q, rest
}

// Divide returns n/d rounded by r; d is over 0.
func Divide(n, d int64, r Rounding) int64 {
	q, rest := FloorDiv(n, d)
	if rest == 0 || r == Down {
		return q
	}
	_, half := compare(uint64(rest), uint64(d))
	if half == 0 {
		switch r {
		case HalfUp:
			half = 1
		case HalfEven:
			half = int(q & 1)
		default:
			half = sign(uint64(max(n, 0)))
		}
	}
	if half > 0 {
		q++
	}
	return q
}

// Round rounds n to a multiple of step, which is over 0 and, times 2, well under the
// ends of an int64, as n is.
func Round(n, step int64, r Rounding) int64 { return Divide(n, step, r) * step }
