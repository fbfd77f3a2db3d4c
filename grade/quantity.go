package grade

import (
	"cmp"
	"database/sql/driver"
	"fmt"
	"math"
	"strconv"

	"example.com/ribface/internal/fault"
	"example.com/ribface/internal/text"
	"example.com/ribface/internal/text/fixed"
	"github.com/shopspring/decimal"
)

// places is the number of decimals that a measurement holds.
const places = 4

// zeroAt is what a count of 0 is kept as, so that the zero value of a measurement
// is no number: not taken. Kept counts compare as the counts do.
const zeroAt = 1 << 31

// Counts that stand for a number that a measurement cannot hold. Every computation
// refuses them by field name.
const (
	notANumber = -zeroAt + 1 // NaN
	tooSmall   = -zeroAt + 2 // below what the type holds
	tooLarge   = zeroAt - 1  // above what the type holds
)

// unit is a unit of measurement: its spellings and what turns a number of it into
// a number of the customary unit: times 10^shift, divided by den.
type unit struct {
	name  string
	shift int
	den   uint64
	also  []string // further spellings
}

// quantity is what is known of one kind of measurement.
type quantity struct {
	kind  string
	space string // between number and unit
	maker string // the name of the function that makes one
	units []unit // the customary unit first
}

// The quantities. An inch is 25.4 mm, a pound 0.45359237 kg (the international yard
// and pound).
var (
	thicknesses = quantity{"thickness", " ", "Inches", []unit{
		{"in", 0, 1, []string{"inch", "inches", `"`}}, {"mm", 1, 254, nil}, {"cm", 2, 254, nil}}}
	areas = quantity{"area", " ", "SquareInches", []unit{
		{"sq in", 0, 1, []string{"sq. in.", "in2", "in^2", "in²", "square inches"}}, {"sq cm", 4, 64_516, []string{"cm2", "cm^2", "cm²"}}}}
	weights = quantity{"weight", " ", "Pounds", []unit{
		{"lb", 0, 1, []string{"lbs", "lb.", "lbs.", "pounds"}}, {"kg", 8, 45_359_237, nil}}}
	shares = quantity{"share", "", "Percent", []unit{
		{"%", 0, 1, []string{"pct", "percent"}}}}
)

// What a measurement is a measurement of.
type (
	thicknessKind struct{}
	areaKind      struct{}
	shareKind     struct{}
	weightKind    struct{}
)

func (thicknessKind) quantity() *quantity { return &thicknesses }
func (areaKind) quantity() *quantity      { return &areas }
func (shareKind) quantity() *quantity     { return &shares }
func (weightKind) quantity() *quantity    { return &weights }

// measurement is a count of 0.0001 of the customary unit, kept at zeroAt more; 0 is
// not taken.
type measurement[K interface{ quantity() *quantity }] struct{ n uint32 }

func (m measurement[K]) quantity() *quantity {
	var k K
	return k.quantity()
}

// IsSet reports whether a number was taken; [Inches] of 0 is one.
func (m measurement[K]) IsSet() bool { return m.n != 0 }

// IsValid reports whether the value holds a number: it is set, and the number that
// it was made from fits.
func (m measurement[K]) IsValid() bool { return held(m.n) }

// Units returns the count of 0.0001 of the customary unit; 0 for a value without a
// number.
func (m measurement[K]) Units() int64 {
	if !held(m.n) {
		return 0
	}
	return count(m.n)
}

// String gives the number in the customary unit and the unit, as "0.6 in"; "not
// taken" for the zero value.
func (m measurement[K]) String() string { return m.quantity().string(m.n) }

// GoString gives the call that makes the value, as "grade.Inches(0.6)".
func (m measurement[K]) GoString() string { return m.quantity().goString(m.n) }

// Format writes the value for package fmt: %v and %s as String, %q in quotes, %#v
// as GoString, and %f and %F the number alone with the wanted decimals, by default as
// many as it has, to the nearest, halves away from zero.
func (m measurement[K]) Format(s fmt.State, verb rune) {
	number := ""
	if held(m.n) && (verb == 'f' || verb == 'F') {
		number = text.Fixed(s, count(m.n), places, fixed.HalfAway)
	}
	text.Format(s, verb, m.String(), m.GoString(), number)
}

// AppendText appends what [MarshalText] gives.
func (m measurement[K]) AppendText(b []byte) ([]byte, error) {
	if m.n == 0 {
		return b, nil
	}
	return m.quantity().append(b, m.n)
}

// MarshalText gives the number in the customary unit and the unit, as "0.6 in";
// empty text for the zero value.
func (m measurement[K]) MarshalText() ([]byte, error) { return m.AppendText(nil) }

// UnmarshalText reads what the Parse function of the type reads; empty text gives
// the zero value. On error the receiver is left as it was.
func (m *measurement[K]) UnmarshalText(b []byte) error {
	if len(b) == 0 {
		m.n = 0
		return nil
	}
	n, err := m.quantity().parse(string(b), fixed.Exact)
	if err == nil {
		m.n = n
	}
	return err
}

// UnmarshalJSON reads the text in quotes, or a bare number in the customary unit;
// null changes nothing. On error the receiver is left as it was.
func (m *measurement[K]) UnmarshalJSON(b []byte) error { return text.UnmarshalJSON(m, b) }

// Value gives the number in the customary unit for a database, as text without the
// unit, which a numeric column holds and sorts as a number; NULL for the zero value.
func (m measurement[K]) Value() (driver.Value, error) {
	if m.n == 0 {
		return nil, nil
	}
	if !held(m.n) {
		_, err := m.AppendText(nil)
		return nil, err
	}
	return fixed.String(count(m.n), places), nil
}

// Scan reads a database column: a number in the customary unit, or text with or
// without a unit. NULL gives the zero value. On error the receiver is left as it
// was.
func (m *measurement[K]) Scan(src any) error { return text.Scan(m, m.quantity().kind, src) }

// kept turns a count into what is kept of it.
func kept(n int64) uint32 {
	switch {
	case n >= tooLarge:
		n = tooLarge
	case n <= tooSmall:
		n = tooSmall
	}
	return uint32(n + zeroAt)
}

// count turns what is kept into the count.
func count(n uint32) int64 { return int64(n) - zeroAt }

// held reports whether what is kept is a number.
func held(n uint32) bool { return n > tooSmall+zeroAt && n < tooLarge+zeroAt }

// fromFloat takes the float for the shortest decimal that it is the nearest to, and
// that to the nearest 0.0001 of the customary unit, once, halves away from zero. In
// the customary unit the float itself decides, but near a half.
func (q *quantity) fromFloat(at int, f float64) uint32 {
	u := q.units[at]
	switch {
	case f != f:
		return uint32(notANumber + zeroAt)
	case f > 1e9:
		return kept(tooLarge)
	case f < -1e9:
		return kept(tooSmall)
	case u.den == 1:
		scaled := f * unitOf
		if n := math.Round(scaled); math.Abs(scaled-n) < 0.49 {
			return kept(int64(n))
		}
	}
	var buf [32]byte
	b := strconv.AppendFloat(buf[:0], f, 'e', -1, 64)
	n, err := fixed.Read(b)
	if err != nil {
		return kept(0) // an exponent under -99
	}
	v, err := n.Units(places+u.shift, u.den, fixed.HalfAway)
	switch {
	case err == nil:
		return kept(v)
	case f > 0:
		return kept(tooLarge)
	}
	return kept(tooSmall)
}

// rounding is the way that surplus places go, none where they are refused.
func rounding(surplus []Rounding) (fixed.Rounding, error) {
	if len(surplus) == 0 {
		return fixed.Exact, nil
	}
	r := surplus[0]
	return fixed.Rounding(r), roundings.Check("rounding", r)
}

// fromDecimal turns a decimal of a metric unit into the nearest count.
func (q *quantity) fromDecimal(at int, d decimal.Decimal) (uint32, error) {
	n, ok := fixed.Decimal(d.Coefficient(), d.Exponent())
	if !ok {
		return 0, fault.Parse(q.kind, "a decimal with exponent far out of range", "", q.numbers(), fault.ErrRange)
	}
	return q.fit(q.units[at], n, fixed.HalfAway, d.String())
}

func (q *quantity) numbers() string { return "numbers up to 214,748 with at most 4 places" }

// fit turns a number of a unit into what is kept of it.
func (q *quantity) fit(u unit, n fixed.Number, r fixed.Rounding, input string) (uint32, error) {
	if u.den != 1 {
		r = fixed.HalfAway
	}
	v, err := n.Units(places+u.shift, u.den, r)
	if err == nil && !held(kept(v)) {
		err = fault.ErrRange
	}
	if err != nil {
		return 0, fault.Parse(q.kind, input, "", q.numbers(), err)
	}
	return kept(v), nil
}

// parseAs is parse with the surplus places rounded the way that is named.
func (q *quantity) parseAs(s string, surplus []Rounding) (uint32, error) {
	r, err := rounding(surplus)
	if err != nil {
		return 0, err
	}
	return q.parse(s, r)
}

// parse reads a number and a unit; a bare number is in the customary unit.
func (q *quantity) parse(s string, r fixed.Rounding) (uint32, error) {
	in := text.Trim(s)
	if v, ok := fixed.Plain(in, places); ok && held(kept(v)) {
		return kept(v), nil
	}
	n, err := fixed.Read(in)
	u := &q.units[0]
	if err != nil {
		var num string
		if u, num = q.unit(in); u == nil {
			return 0, q.refuse(s, in, err)
		}
		if n, err = fixed.Read(num); err != nil {
			return 0, fault.Parse(q.kind, s, num, q.allowed(), err)
		}
	}
	return q.fit(*u, n, r, s)
}

// refuse is the error for text that is neither a number nor ends in a unit.
func (q *quantity) refuse(s, in string, err error) error {
	end := len(in)
	for end > 0 && in[end-1] != '.' && in[end-1]-'0' > 9 {
		end--
	}
	if end == len(in) || end == 0 {
		return fault.Parse(q.kind, s, "", q.allowed(), err)
	}
	return fault.Parse(q.kind, s, text.Trim(in[end:]), q.allowed(), fault.ErrUnknown)
}

// unit finds the unit at the end of the text, and the number before it.
func (q *quantity) unit(in string) (u *unit, num string) {
	for i := range q.units {
		u := &q.units[i]
		for at := -1; at < len(u.also); at++ {
			name := u.name
			if at >= 0 {
				name = u.also[at]
			}
			if rest, ok := text.CutSuffixFold(in, name); ok {
				if rest = text.Trim(rest); rest != "" && (rest[len(rest)-1] == '.' || rest[len(rest)-1]-'0' <= 9) {
					return u, rest
				}
			}
		}
	}
	return nil, ""
}

func (q *quantity) allowed() string {
	a := "a number with at most 4 places, unit "
	for i, u := range q.units {
		if i > 0 {
			a += " or "
		}
		a += u.name
	}
	return a
}

// append writes the number in the customary unit, then the unit.
func (q *quantity) append(b []byte, n uint32) ([]byte, error) {
	if !held(n) {
		return b, &FieldError{Field: q.kind, Value: q.string(n), Allowed: q.allowed(), Err: ErrRange}
	}
	b = fixed.Append(b, count(n), places)
	b = append(b, q.space...)
	return append(b, q.units[0].name...), nil
}

func (q *quantity) string(n uint32) string {
	switch count(n) {
	case -zeroAt:
		return "not taken"
	case notANumber:
		return "not a number"
	case tooLarge:
		return "over 214748 " + q.units[0].name
	case tooSmall:
		return "under -214748 " + q.units[0].name
	}
	b, _ := q.append(nil, n)
	return string(b)
}

func (q *quantity) goString(n uint32) string {
	switch number := fixed.String(count(n), places); {
	case n == 0:
		return "grade." + text.Title(q.kind) + "{}"
	case held(n):
		return "grade." + q.maker + "(" + number + ")"
	case count(n) == notANumber:
		return "grade." + q.maker + "(math.NaN())"
	case count(n) == tooLarge:
		return "grade." + q.maker + "(math.Inf(1))"
	}
	return "grade." + q.maker + "(math.Inf(-1))"
}

// amount writes a count in the customary unit.
func (q *quantity) amount(n int64) string { return q.string(kept(n)) }

// check refuses a value that is not taken or outside lo to hi, both allowed.
func (q *quantity) check(path, field string, n uint32, lo, hi int64) error {
	v := count(n)
	if v >= lo && v <= hi {
		return nil
	}
	e := &FieldError{Path: path, Field: field, Allowed: q.amount(lo) + " to " + q.amount(hi), Err: ErrMissing}
	if n != 0 {
		e.Value, e.Err = q.string(n), ErrRange
	}
	return e
}

// metric returns a count times factor in units of 10^-(4+more), exactly; 0 for a
// value without a number.
func metric(n uint32, more int32, factor int64) decimal.Decimal {
	if !held(n) {
		return decimal.Zero
	}
	return decimal.New(count(n)*factor, -places-more)
}

func compare[K interface{ quantity() *quantity }](a, b measurement[K]) int {
	return cmp.Compare(a.n, b.n)
}
