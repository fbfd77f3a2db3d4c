package placing

import (
	"cmp"
	"database/sql/driver"
	"iter"
	"slices"
	"strconv"
	"strings"

	"example.com/ribface/internal/fault"
	"example.com/ribface/internal/text"
)

// The sizes of a class that can be placed.
const (
	MinExhibits = 2
	MaxExhibits = 12
)

// Order is a placing: the exhibits 1 to n of one class from first to last. Every
// Order holds each exhibit exactly once. It is comparable with == and small. The
// zero Order is not set.
type Order struct {
	// n in the lowest four bits, then four bits for each exhibit, first to last.
	packed uint64
}

// NewOrder returns the placing that puts the exhibits in the given order. There
// must be 2 to 12 of them, each number from 1 to their count exactly once.
func NewOrder(exhibits ...int) (Order, error) {
	if len(exhibits) < MinExhibits || len(exhibits) > MaxExhibits {
		return Order{}, &FieldError{Field: "order", Value: text.Count(len(exhibits), "exhibit"), Allowed: "2 to 12 exhibits", Err: ErrRange}
	}
	o, bad, err := pack(exhibits)
	if err != nil {
		return Order{}, &FieldError{Field: "order", Value: "exhibit " + strconv.Itoa(bad), Allowed: each(len(exhibits)), Err: err}
	}
	return o, nil
}

func each(n int) string { return "each exhibit 1 to " + strconv.Itoa(n) + " once" }

// pack builds an order and returns the exhibit at fault when it cannot.
func pack(exhibits []int) (o Order, bad int, err error) {
	o.packed = uint64(len(exhibits))
	seen := 0
	for i, e := range exhibits {
		if e < 1 || e > len(exhibits) {
			return Order{}, e, ErrRange
		}
		if seen&(1<<e) != 0 {
			return Order{}, e, ErrRepeated
		}
		seen |= 1 << e
		o.packed |= uint64(e) << (4 * (i + 1))
	}
	return o, 0, nil
}

// ParseOrder reads a placing written with hyphens, as "3-2-1-4" (published:
// ext-maryland-contests, ext-nebraska-g2092). Commas, or blanks alone, may stand for
// the hyphens, as "3, 2, 1, 4" and "3 2 1 4"; for up to nine exhibits there may be
// nothing between, as "3214". Blanks at the ends and around hyphens and commas are
// passed over, and a dash is read as a hyphen. No signs, no leading zeros, no two
// kinds of separator in one text.
func ParseOrder(s string) (Order, error) {
	const allowed = "2 to 12 exhibit numbers with hyphens between, each once, as 3-2-1-4"
	var list [MaxExhibits]int
	n, bad, err := numbers(s, list[:], true)
	if err != nil {
		return Order{}, fault.Parse("order", s, bad, allowed, err)
	}
	if n < MinExhibits {
		return Order{}, fault.Parse("order", s, "", allowed, ErrSyntax)
	}
	o, exhibit, err := pack(list[:n])
	if err != nil {
		return Order{}, fault.Parse("order", s, strconv.Itoa(exhibit), each(n), err)
	}
	return o, nil
}

// numbers reads small numbers with hyphens, commas or blanks between into the list,
// no more than it has room for. Where digits is set, a run of two to nine digits is a
// number for each. It returns the piece at fault with the reason.
func numbers(s string, list []int, digits bool) (n int, bad string, err error) {
	in := text.Trim(s)
	between, width := separator(in)
	if digits && between == 0 && len(in) > 1 && len(in) <= 9 {
		for i := range len(in) {
			if in[i]-'0' > 9 {
				return 0, in, ErrSyntax
			}
			list[i] = int(in[i] - '0')
		}
		return len(in), "", nil
	}
	for more := true; more; n++ {
		part := in
		at := -1
		switch between {
		case 0:
		case ' ':
			at = strings.IndexAny(in, blanks)
		default:
			at = strings.IndexRune(in, between)
		}
		if more = at >= 0; more {
			part, in = in[:at], text.Trim(in[at+width:])
		}
		part = text.Trim(part)
		v, ok := smallNumber(part)
		switch {
		case !ok:
			return 0, part, ErrSyntax
		case n == len(list):
			return 0, part, ErrRange
		}
		list[n] = v
	}
	return n, "", nil
}

// blanks may stand between numbers.
const blanks = " \t"

// separator finds what stands between the numbers, and its width in bytes: the
// first hyphen, dash or comma, or else a blank; 0 for nothing.
func separator(s string) (between rune, width int) {
	for _, r := range s {
		switch r {
		case '-', ',':
			return r, 1
		case '\u2013', '\u2010', '\u2011': // en dash and the hyphens that break or do not
			return r, 3
		case ' ', '\t':
			between, width = ' ', 1
		}
	}
	return between, width
}

// smallNumber reads one or two digits without a leading zero, or a lone zero.
func smallNumber(s string) (int, bool) {
	n, err := strconv.Atoi(s)
	return n, err == nil && n >= 0 && n < 100 && strconv.Itoa(n) == s
}

// MustParseOrder is [ParseOrder] for hard-coded text; it panics on an error.
func MustParseOrder(s string) Order {
	o, err := ParseOrder(s)
	if err != nil {
		panic(err)
	}
	return o
}

// Len returns the number of exhibits; 0 for the zero Order.
func (o Order) Len() int { return int(o.packed & 15) }

// Equal reports whether o == p.
func (o Order) Equal(p Order) bool { return o == p }

// IsValid reports whether the order is set.
func (o Order) IsValid() bool { return o != Order{} }

// At returns the exhibit at a place, 1 for the first. A place outside 1 to Len
// gives 0.
func (o Order) At(place int) int {
	if place < 1 || place > o.Len() {
		return 0
	}
	return int(o.packed >> (4 * place) & 15)
}

// Place returns the place of an exhibit, 1 for the first, or 0 for an exhibit
// that is not in the order.
func (o Order) Place(exhibit int) int {
	for p := 1; p <= o.Len(); p++ {
		if o.At(p) == exhibit {
			return p
		}
	}
	return 0
}

// Exhibits yields the exhibits from first to last.
func (o Order) Exhibits() iter.Seq[int] {
	return func(yield func(int) bool) {
		for p := 1; p <= o.Len(); p++ {
			if !yield(o.At(p)) {
				return
			}
		}
	}
}

// Reversed returns the order from last to first.
func (o Order) Reversed() Order {
	r := Order{o.packed & 15}
	for p := 1; p <= o.Len(); p++ {
		r.packed |= uint64(o.At(p)) << (4 * (o.Len() + 1 - p))
	}
	return r
}

// Relabel returns the order in which every exhibit e has become to.At(e), as
// when a class gets new numbers. Orders of different sizes give a [*FieldError].
func (o Order) Relabel(to Order) (Order, error) {
	if o.Len() != to.Len() {
		return Order{}, sizeError("new numbers", to, o.Len())
	}
	r := Order{o.packed & 15}
	for p := 1; p <= o.Len(); p++ {
		r.packed |= uint64(to.At(o.At(p))) << (4 * p)
	}
	return r, nil
}

// Disagreements returns the number of pairs of exhibits that the two orders put
// the other way round. Orders of different sizes give a [*FieldError].
func (o Order) Disagreements(p Order) (int, error) {
	if o.Len() != p.Len() {
		return 0, sizeError("order", p, o.Len())
	}
	var place [MaxExhibits + 1]int
	for i := 1; i <= p.Len(); i++ {
		place[p.At(i)] = i
	}
	n := 0
	for i := 1; i <= o.Len(); i++ {
		for j := i + 1; j <= o.Len(); j++ {
			if place[o.At(i)] > place[o.At(j)] {
				n++
			}
		}
	}
	return n, nil
}

func sizeError(field string, o Order, want int) error {
	refused := &FieldError{Field: field, Allowed: "an order of " + strconv.Itoa(want) + " exhibits", Err: ErrMissing}
	if o.IsValid() {
		refused.Value, refused.Err = o.String(), ErrRange
	}
	return refused
}

// Compare orders placings by size, then by their exhibits from first to last: -1,
// 0 or +1. The zero Order comes first.
func (o Order) Compare(p Order) int {
	if c := cmp.Compare(o.Len(), p.Len()); c != 0 {
		return c
	}
	for i := 1; i <= o.Len(); i++ {
		if c := cmp.Compare(o.At(i), p.At(i)); c != 0 {
			return c
		}
	}
	return 0
}

// Orders yields every placing of n exhibits, in the order of [Order.Compare]: 24
// for four, 479,001,600 for twelve. A size outside 2 to 12 yields nothing.
func Orders(n int) iter.Seq[Order] {
	return func(yield func(Order) bool) {
		if n < MinExhibits || n > MaxExhibits {
			return
		}
		var list [MaxExhibits]int
		for i := range n {
			list[i] = i + 1
		}
		for {
			o, _, _ := pack(list[:n])
			if !yield(o) || !next(list[:n]) {
				return
			}
		}
	}
}

// next steps to the next permutation and reports false after the last.
func next(a []int) bool {
	i := len(a) - 2
	for i >= 0 && a[i] > a[i+1] {
		i--
	}
	if i < 0 {
		return false
	}
	j := len(a) - 1
	for a[j] < a[i] {
		j--
	}
	a[i], a[j] = a[j], a[i]
	slices.Reverse(a[i+1:])
	return true
}

// String gives the placing with hyphens, as "3-2-1-4"; "unset" for zero.
func (o Order) String() string { return text.String(o) }

// AppendText appends the placing with hyphens; the zero value is empty text.
func (o Order) AppendText(b []byte) ([]byte, error) {
	return appendHyphened(b, o.Len(), o.At), nil
}

// appendHyphened appends numbers with hyphens between, counted from 1.
func appendHyphened(b []byte, n int, at func(int) int) []byte {
	for i := 1; i <= n; i++ {
		if i > 1 {
			b = append(b, '-')
		}
		b = strconv.AppendInt(b, int64(at(i)), 10)
	}
	return b
}

// MarshalText gives the placing with hyphens; the zero value is empty text.
func (o Order) MarshalText() ([]byte, error) { return o.AppendText(nil) }

// UnmarshalText reads what [ParseOrder] reads; empty text gives the zero value.
// On error the receiver is left as it was.
func (o *Order) UnmarshalText(b []byte) error { return text.Unmarshal(o, b, ParseOrder) }

// Value gives the text for a database; NULL for the zero value.
func (o Order) Value() (driver.Value, error) { return text.Value(o) }

// Scan reads a database column that holds text, or digits alone as a number; NULL
// gives the zero value.
func (o *Order) Scan(src any) error { return text.Scan(o, "order", src) }
