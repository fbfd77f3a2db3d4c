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

// Measures are the four facts behind a yield grade. The zero Measures have nothing
// taken, and every computation refuses them.
type Measures struct {
	Fat    Thickness `json:"fat,omitzero"`    // fat opposite the ribeye, adjusted for unusual fat elsewhere; 0 to 3 in
	Ribeye Area      `json:"ribeye,omitzero"` // area of the ribeye between ribs 12 and 13; 1 to 25 sq in
	KPH    Share     `json:"kph,omitzero"`    // kidney, pelvic and heart fat, in percent of carcass weight; 0 to 10
	Weight Weight    `json:"weight,omitzero"` // hot carcass weight; 100 to 1,800 lb
}

// UnmarshalJSON reads an object as the package says under Encodings.
func (m *Measures) UnmarshalJSON(b []byte) error { return text.Struct(b, m) }

// Yield is a yield grade before its decimals are dropped, in units of 1e-8 of a
// grade: the exact value of the federal equation for measures of 4 places. It
// may lie below 1 or above 5. The zero Yield is not set; [Grades] of 0 is a yield.
// The lower yield is the leaner.
type Yield struct{ number[yieldKind] }

// OneGrade is how many units of a [Yield] there are in a grade.
const OneGrade = 100_000_000

// yieldPlaces is the number of decimals that a Yield holds.
const yieldPlaces = 8

// maxYield bounds the units of a Yield to what its text can be read back from, so
// that sums of them never wrap.
const maxYield = 999_999_999_999_999_999

// noGrades is what 0 units are kept as, so that the zero value is not set. Kept
// units compare as the units do.
const noGrades = 1 << 63

// The coefficients of the equation, in 1e-8 of a grade per 0.0001 of a unit:
// 2.50 + 2.50 FT + 0.20 KPH + 0.0038 HCW - 0.32 REA (official: cfr-54-105 (a)).
const (
	yieldBase   = 250_000_000
	yieldFat    = 25_000
	yieldKPH    = 2_000
	yieldWeight = 38
	yieldRibeye = 3_200

	// The same base for counts as they are kept.
	yieldFrom = noGrades + yieldBase - (yieldFat+yieldKPH+yieldWeight-yieldRibeye)*zeroAt
)

// Yield returns the exact value of the federal yield grade equation
//
//	2.50 + 2.50 fat + 0.20 KPH + 0.0038 weight - 0.32 ribeye
//
// with fat in inches, KPH in percent, hot carcass weight in pounds and ribeye in
// square inches (official: cfr-54-105 (a)). The whole grade is [Yield.Grade].
//
// A measure that was not taken, or is beyond the limits noted at [Measures], gives
// an error that names it; see [Problems].
func (m Measures) Yield() (y Yield, err error) {
	// Unsigned, what is under the limit is over it too. The comparisons, the equation
	// and the lazy error are short enough for the compiler to inline, which is why
	// the equation stands here and in no function of its own.
	if m.Fat.n-(zeroAt+minFat) > maxFat-minFat || m.Ribeye.n-(zeroAt+minRibeye) > maxRibeye-minRibeye || m.KPH.n-(zeroAt+minKPH) > maxKPH-minKPH || m.Weight.n-(zeroAt+minWeight) > maxWeight-minWeight {
		return y, refused(m)
	}
	y.n = yieldFrom + yieldFat*uint64(m.Fat.n) + yieldKPH*uint64(m.KPH.n) + yieldWeight*uint64(m.Weight.n) - yieldRibeye*uint64(m.Ribeye.n)
	return
}

// Terms are the five terms of the yield equation; they add up to the yield.
type Terms struct {
	Start  Yield `json:"start"`  // 2.50 for every carcass
	Fat    Yield `json:"fat"`    // 2.50 per inch
	KPH    Yield `json:"kph"`    // 0.20 per percent
	Weight Yield `json:"weight"` // 0.0038 per pound
	Ribeye Yield `json:"ribeye"` // -0.32 per square inch, so never over 0
}

// Sum returns the yield that the terms add up to.
func (t Terms) Sum() Yield { return t.Start.Add(t.Fat).Add(t.KPH).Add(t.Weight).Add(t.Ribeye) }

// Sub returns the difference t - u, term by term. The terms of two carcasses
// differ by their yields' difference, split exactly over the four measures.
func (t Terms) Sub(u Terms) Terms {
	return Terms{t.Start.Sub(u.Start), t.Fat.Sub(u.Fat), t.KPH.Sub(u.KPH), t.Weight.Sub(u.Weight), t.Ribeye.Sub(u.Ribeye)}
}

// Terms returns the terms of the equation for the measures, exactly. The errors
// are those of [Measures.Yield].
func (m Measures) Terms() (Terms, error) {
	if err := m.Check(); err != nil {
		return Terms{}, err
	}
	return m.terms(), nil
}

func (m Measures) terms() Terms {
	return Terms{YieldUnits(yieldBase), YieldUnits(yieldFat * m.Fat.Units()), YieldUnits(yieldKPH * m.KPH.Units()), YieldUnits(yieldWeight * m.Weight.Units()), YieldUnits(-yieldRibeye * m.Ribeye.Units())}
}

// refused is the error for measures that the equation does not take. It finds
// the fields at fault only when asked.
type refused Measures

// Error names the fields, the values and what is allowed.
func (r refused) Error() string { return r.Unwrap().Error() }

// Unwrap returns what [Measures.Check] does.
func (r refused) Unwrap() error { return Measures(r).Check() }

// Check returns an error that tells of every measure that was not taken or is
// impossible, in the order fat, ribeye, KPH, weight; nil when there is none.
func (m Measures) Check() error {
	return fault.Join(
		thicknesses.check("fat", "fat", m.Fat.n, minFat, maxFat),
		areas.check("ribeye", "ribeye", m.Ribeye.n, minRibeye, maxRibeye),
		shares.check("kph", "KPH", m.KPH.n, minKPH, maxKPH),
		weights.check("weight", "weight", m.Weight.n, minWeight, maxWeight),
	)
}

// Grade returns the whole yield grade, 1 to 5: decimals are dropped toward minus
// infinity (published: ext-sdsu-yield, 3.9 is 3), then the number is kept to 1
// to 5 (derived). A yield that is not set gives 0.
func (y Yield) Grade() int {
	if y.n == 0 {
		return 0
	}
	return int((min(max(y.n, noGrades+OneGrade), noGrades+5*OneGrade) - noGrades) / OneGrade)
}

// Add returns the sum y + z; not set where one of them is not.
func (y Yield) Add(z Yield) Yield {
	if y.n == 0 || z.n == 0 {
		return Yield{}
	}
	return YieldUnits(y.Units() + z.Units())
}

// Sub returns the difference y - z; not set where one of them is not.
func (y Yield) Sub(z Yield) Yield {
	if y.n == 0 || z.n == 0 {
		return Yield{}
	}
	return YieldUnits(y.Units() - z.Units())
}

// Compare returns -1, 0 or +1 as y is lower than, equal to or higher than z. One
// that is not set comes first.
func (y Yield) Compare(z Yield) int { return cmp.Compare(y.n, z.n) }

// Equal reports whether y == z.
func (y Yield) Equal(z Yield) bool { return y == z }

// Round returns the yield rounded to so many places, 0 to 8. Tenths are
// preferred for comparison and decimals are dropped in trade (published:
// bif-yield); one contest asks for the nearest tenth (published: ga-ffa-2014).
// An unset rounding, an impossible number of places and a yield that is not set give
// a [*FieldError].
func (y Yield) Round(r Rounding, to int) (Yield, error) {
	if err := roundings.Check("rounding", r); err != nil {
		return Yield{}, err
	}
	if to < 0 || to > yieldPlaces {
		return Yield{}, &FieldError{Field: "places", Value: strconv.Itoa(to), Allowed: "0 to 8", Err: ErrRange}
	}
	if !y.IsSet() {
		return Yield{}, &FieldError{Field: "yield", Allowed: "a yield", Err: ErrMissing}
	}
	step := int64(1)
	for range yieldPlaces - to {
		step *= 10
	}
	n := fixed.Round(y.Units(), step, fixed.Rounding(r)) // far from the ends of an int64
	if n > maxYield || n < -maxYield {
		return Yield{}, &FieldError{Field: "yield", Value: y.String(), Allowed: "a yield that does not round to 10,000,000,000 or more", Err: ErrRange}
	}
	return YieldUnits(n), nil
}

// Grades returns a yield of so many grades, to the nearest 1e-8, as [Inches] does
// for a thickness. NaN gives a yield that is not set; from 10 billion grades on the
// end of the range is returned.
func Grades(f float64) Yield { return Yield{numberOf[yieldKind](f)} }

// YieldUnits returns a yield of n times 1e-8 of a grade, kept to the range of 10
// billion grades to either side.
func YieldUnits(n int64) Yield { return Yield{number[yieldKind]{keptGrades(n)}} }

// ParseYield reads a decimal number, as "2.952". More than 8 places are refused with
// [ErrPlaces], or rounded the way that is named.
func ParseYield(s string, surplus ...Rounding) (Yield, error) {
	r, err := rounding(surplus)
	if err != nil {
		return Yield{}, err
	}
	n, err := parseGrades(Yield{}.kind(), s, r)
	return Yield{number[yieldKind]{n}}, err
}

// yieldKind and shortcutKind tell the two kinds of grades apart.
type (
	yieldKind    struct{}
	shortcutKind struct{}
)

func (yieldKind) kind() string    { return "yield" }
func (shortcutKind) kind() string { return "shortcut yield" }

// number is a number of grades in units of 1e-8, kept at noGrades more; 0 is not
// set.
type number[K interface{ kind() string }] struct{ n uint64 }

const gradesAllowed = "a number with at most 8 places"

func keptGrades(n int64) uint64 { return uint64(min(max(n, -maxYield), maxYield)) + noGrades }

func numberOf[K interface{ kind() string }](f float64) number[K] {
	if f != f {
		return number[K]{}
	}
	return number[K]{keptGrades(int64(math.Round(min(max(f, -1e10), 1e10) * OneGrade)))}
}

func parseGrades(kind, s string, r fixed.Rounding) (uint64, error) {
	n, err := fixed.Read(text.Trim(s))
	var v int64
	if err == nil {
		v, err = n.Units(yieldPlaces, 1, r)
	}
	if err == nil && (v > maxYield || v < -maxYield) {
		err = ErrRange
	}
	if err != nil {
		return 0, fault.Parse(kind, s, "", gradesAllowed, err)
	}
	return keptGrades(v), nil
}

func (g number[K]) kind() string {
	var k K
	return k.kind()
}

// IsSet reports whether there is a number; 0 is one.
func (g number[K]) IsSet() bool { return g.n != 0 }

// Units returns the number in units of 1e-8 of a grade; 0 where it is not set.
func (g number[K]) Units() int64 {
	if g.n == 0 {
		return 0
	}
	return int64(g.n - noGrades)
}

// Decimal returns the number as a decimal, exactly; 0 where it is not set.
func (g number[K]) Decimal() decimal.Decimal {
	n, p := g.Units(), int32(yieldPlaces)
	for ; p > 0 && n%10 == 0; p-- {
		n /= 10
	}
	return decimal.New(n, -p)
}

// String gives the exact number in its shortest form, as "2.952" or "3"; "unset"
// for the zero value.
func (g number[K]) String() string {
	if g.n == 0 {
		return "unset"
	}
	return fixed.String(g.Units(), yieldPlaces)
}

// GoString gives Go syntax that makes the value, as "grade.Grades(2.952)".
func (g number[K]) GoString() string {
	kind := ""
	if g.kind() != (yieldKind{}).kind() {
		kind = "Shortcut"
	}
	f, _ := strconv.ParseFloat(g.String(), 64) // 0 for "unset"
	switch {
	case g.n == 0:
		return "grade." + kind + "Yield{}"
	case numberOf[K](f) == g:
		return "grade." + kind + "Grades(" + g.String() + ")"
	}
	return "grade." + kind + "YieldUnits(" + strconv.FormatInt(g.Units(), 10) + ")"
}

// Format writes the number for package fmt: %v and %s as String, %q in quotes, %#v
// as GoString, and %f and %F with the wanted decimals, by default as many as it has.
// Decimals are dropped toward minus infinity, as for a whole yield grade, so that
// 2.96 to a tenth is 2.9 and never reads as 3.0.
func (g number[K]) Format(s fmt.State, verb rune) {
	number := ""
	if g.n != 0 && (verb == 'f' || verb == 'F') {
		number = text.Fixed(s, g.Units(), yieldPlaces, fixed.Down)
	}
	text.Format(s, verb, g.String(), g.GoString(), number)
}

// AppendText appends what [MarshalText] gives.
func (g number[K]) AppendText(b []byte) ([]byte, error) {
	if g.n == 0 {
		return b, nil
	}
	return fixed.Append(b, g.Units(), yieldPlaces), nil
}

// MarshalText gives the exact number in its shortest form; empty text for the zero
// value.
func (g number[K]) MarshalText() ([]byte, error) { return g.AppendText(nil) }

// UnmarshalText reads what the Parse function of the type reads; empty text gives
// the zero value. On error the receiver is left as it was.
func (g *number[K]) UnmarshalText(b []byte) error {
	if len(b) == 0 {
		g.n = 0
		return nil
	}
	n, err := parseGrades(g.kind(), string(b), fixed.Exact)
	if err == nil {
		g.n = n
	}
	return err
}

// UnmarshalJSON reads the text in quotes, or a bare number; null changes nothing. On
// error the receiver is left as it was.
func (g *number[K]) UnmarshalJSON(b []byte) error { return text.UnmarshalJSON(g, b) }

// Value gives the number for a database, as text, which a numeric column holds and
// sorts as a number; NULL for the zero value.
func (g number[K]) Value() (driver.Value, error) { return text.Value(g) }

// Scan reads a database column that holds a number or its text; NULL gives the zero
// value. On error the receiver is left as it was.
func (g *number[K]) Scan(src any) error { return text.Scan(g, g.kind(), src) }
