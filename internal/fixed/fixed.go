// Package fixed reads and writes decimal text as whole numbers of a small unit,
// without any float on the way.
package fixed

import "example.com/ribface/internal/fault"

// maxLen bounds the text of one number.
const maxLen = 24

// pow10 holds the powers of ten that fit the places in use.
var pow10 = [...]int64{1, 10, 100, 1_000, 10_000, 100_000, 1_000_000, 10_000_000, 100_000_000}

// Parse reads s as a decimal number and returns it in units of 10^-places.
// The form is: an optional minus sign, one or more digits, and optionally a
// point and one or more digits. No plus sign, no exponent, no space, no
// grouping. Digits after the wanted places are refused unless they are zeros.
// The reason is fault.ErrSyntax or fault.ErrRange, or nil.
func Parse[T ~string | ~[]byte](s T, places int) (int64, error) {
	if len(s) == 0 || len(s) > maxLen {
		return 0, fault.ErrSyntax
	}
	i := 0
	neg := s[0] == '-'
	if neg {
		i = 1
	}
	var n int64
	start := i
	for i < len(s) && s[i]-'0' <= 9 {
		if i-start >= 10 {
			return 0, fault.ErrRange
		}
		n = n*10 + int64(s[i]-'0')
		i++
	}
	if i == start {
		return 0, fault.ErrSyntax
	}
	left := places
	if i < len(s) {
		if s[i] != '.' || i+1 == len(s) {
			return 0, fault.ErrSyntax
		}
		var tooFine bool
		for i++; i < len(s); i++ {
			d := s[i] - '0'
			if d > 9 {
				return 0, fault.ErrSyntax
			}
			if left > 0 {
				n = n*10 + int64(d)
				left--
			} else if d != 0 {
				tooFine = true
			}
		}
		if tooFine {
			return 0, fault.ErrRange
		}
	}
	n *= pow10[left]
	if neg {
		n = -n
	}
	return n, nil
}

// Append writes n, a count of 10^-places, as the shortest decimal text.
func Append(b []byte, n int64, places int) []byte { return AppendMin(b, n, places, 0) }

// AppendMin is Append with at least min digits after the point.
func AppendMin(b []byte, n int64, places, min int) []byte {
	u := uint64(n)
	if n < 0 {
		b = append(b, '-')
		u = -u
	}
	var buf [24]byte
	i := len(buf)
	kept := false
	for p := places; p > 0; p-- {
		d := byte(u % 10)
		u /= 10
		if d != 0 || kept || p <= min {
			kept = true
			i--
			buf[i] = '0' + d
		}
	}
	if kept {
		i--
		buf[i] = '.'
	}
	for {
		i--
		buf[i] = '0' + byte(u%10)
		u /= 10
		if u == 0 {
			break
		}
	}
	return append(b, buf[i:]...)
}

// String is Append as a string.
func String(n int64, places int) string { return string(Append(nil, n, places)) }
