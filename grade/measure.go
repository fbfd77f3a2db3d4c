package grade

import (
	"database/sql/driver"
	"math"

	"example.com/ribface/internal/fault"
	"example.com/ribface/internal/fixed"
	"example.com/ribface/internal/text"
	"github.com/shopspring/decimal"
)

// places is the number of decimals that a measurement holds.
const places = 4

// Thickness is a thickness of fat in units of 0.0001 inch. It may be negative,
// as an adjustment can be; a measured thickness may not. The zero Thickness is 0
// inches.
type Thickness int32

// Area is an area of ribeye in units of 0.0001 square inch. The zero Area is 0
// square inches, which no computation accepts as a ribeye.
type Area int32

// Share is a share of the carcass weight in units of 0.0001 percent. The zero
// Share is 0 percent.
type Share int32

// Weight is a weight in units of 0.0001 pound. The zero Weight is 0 pounds,
// which no computation accepts as a carcass.
type Weight int32

// One of each unit, for counting and making: 3*Inch, w/Pound.
const (
	Inch       Thickness = 10_000
	SquareInch Area      = 10_000
	OnePercent Share     = 10_000
	Pound      Weight    = 10_000
)

// Values that stand for a number the type cannot hold. Every computation
// refuses them by field name.
const (
	notANumber = math.MinInt32     // NaN
	tooSmall   = math.MinInt32 + 1 // below what the type holds
	tooLarge   = math.MaxInt32     // above what the type holds
)

// unit is a unit of measurement: its spelling and the ratio that turns a count
// of 0.0001 of it into a count of 0.0001 of the customary unit.
type unit struct {
	name     string
	num, den int64
}

// quantity is what the four measurement types have in common.
type quantity struct {
	kind  string
	space string // between number and unit
	units []unit // the customary unit first
}

var (
	// An inch is 25.4 mm, a pound 0.45359237 kg (the international yard and pound).
	thicknesses = quantity{"thickness", " ", []unit{{"in", 1, 1}, {"mm", 10, 254}, {"cm", 100, 254}}}
	areas       = quantity{"area", " ", []unit{{"sq in", 1, 1}, {"sq cm", 10_000, 64_516}}}
	weights     = quantity{"weight", " ", []unit{{"lb", 1, 1}, {"kg", 100_000_000, 45_359_237}}}
	shares      = quantity{"share", "", []unit{{"%", 1, 1}}}
)

// toCustomary turns n times 0.0001 of a unit into the nearest 0.0001 of the
// customary unit, halves away from zero.
func (u unit) toCustomary(n int64) int64 {
	if u.num == u.den {
		return n
	}
	const limit = 90_000_000_000
	if n > limit || n < -limit {
		return n // out of range in either unit
	}
	if n < 0 {
		return -((-n*u.num + u.den/2) / u.den)
	}
	return (n*u.num + u.den/2) / u.den
}

func hold(n int64) int32 {
	switch {
	case n >= tooLarge:
		return tooLarge
	case n <= tooSmall:
		return tooSmall
	default:
		return int32(n)
	}
}

// fromFloat snaps a float to the grid of 0.0001 once.
func (u unit) fromFloat(f float64) int32 {
	switch {
	case f != f:
		return notANumber
	case f > 1e9:
		return tooLarge
	case f < -1e9:
		return tooSmall
	}
	return hold(u.toCustomary(int64(math.Round(f * 10_000))))
}

// fromDecimal refuses more places than the grid holds.
func (q *quantity) fromDecimal(u unit, d decimal.Decimal) (int32, error) {
	// The exponent is bounded before any scaling, which would otherwise build a
	// number of that many digits.
	if e := d.Exponent(); e > 9 || e < -64 || d.NumDigits() > 80 {
		return 0, fault.Parse(q.kind, "a decimal with exponent far out of range", "", "numbers up to 200,000 with at most 4 places", fault.ErrRange)
	}
	s := d.Shift(places)
	if !s.IsInteger() {
		return 0, fault.Parse(q.kind, d.String(), "", "at most 4 places", fault.ErrRange)
	}
	n := s.BigInt()
	if !n.IsInt64() {
		return 0, fault.Parse(q.kind, d.String(), "", "numbers up to 200,000", fault.ErrRange)
	}
	return q.fit(u, n.Int64(), d.String)
}

func (q *quantity) fit(u unit, n int64, text func() string) (int32, error) {
	v := hold(u.toCustomary(n))
	if v == tooLarge || v == tooSmall {
		return 0, fault.Parse(q.kind, text(), "", "numbers up to 200,000", fault.ErrRange)
	}
	return v, nil
}

// parse reads a number and a unit; a bare number is in the customary unit.
func (q *quantity) parse(s string) (int32, error) {
	end := len(s)
	for end > 0 && s[end-1] != '.' && s[end-1]-'0' > 9 {
		end--
	}
	num, name := s[:end], s[end:]
	if name == "" {
		return q.parseIn(q.units[0], num, s)
	}
	if name[0] == ' ' {
		name = name[1:]
	}
	for _, u := range q.units {
		if name == u.name {
			return q.parseIn(u, num, s)
		}
	}
	if num == "" {
		return 0, fault.Parse(q.kind, s, "", q.allowed(), fault.ErrSyntax)
	}
	return 0, fault.Parse(q.kind, s, name, q.allowed(), fault.ErrUnknown)
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

// parseIn reads the number num of the whole text s.
func (q *quantity) parseIn(u unit, num, s string) (int32, error) {
	n, err := fixed.Parse(num, places)
	if err != nil {
		return 0, fault.Parse(q.kind, s, num, q.allowed(), err)
	}
	return q.fit(u, n, func() string { return s })
}

// append writes the number in the customary unit, then the unit.
func (q *quantity) append(b []byte, n int32) ([]byte, error) {
	if !held(n) {
		return b, &FieldError{Field: q.kind, Value: q.string(n), Allowed: q.allowed(), Err: ErrRange}
	}
	b = fixed.Append(b, int64(n), places)
	b = append(b, q.space...)
	return append(b, q.units[0].name...), nil
}

func (q *quantity) string(n int32) string {
	switch n {
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

func held(n int32) bool { return n > tooSmall && n < tooLarge }

// check refuses a value outside lo to hi, both allowed.
func (q *quantity) check(field string, n, lo, hi int32) error {
	if n >= lo && n <= hi {
		return nil
	}
	if n == 0 {
		return &FieldError{Field: field, Allowed: "over " + q.string(0) + " to " + q.string(hi), Err: ErrMissing}
	}
	allowed := q.string(lo)
	if lo == 1 {
		allowed = "over " + q.string(0)
	}
	return &FieldError{Field: field, Value: q.string(n), Allowed: allowed + " to " + q.string(hi), Err: ErrRange}
}

// Inches returns a thickness of so many inches. The float is snapped to the
// nearest 0.0001 in once; NaN, infinities and numbers that do not fit give an
// invalid Thickness that every computation refuses by field name.
func Inches(f float64) Thickness { return Thickness(thicknesses.units[0].fromFloat(f)) }

// Millimeters returns a thickness of so many millimeters, snapped to the nearest
// 0.0001 mm and then to the nearest 0.0001 in. See [Inches] for what does not
// fit.
func Millimeters(f float64) Thickness { return Thickness(thicknesses.units[1].fromFloat(f)) }

// InchesDecimal returns a thickness of d inches. More than 4 places are refused.
func InchesDecimal(d decimal.Decimal) (Thickness, error) {
	v, err := thicknesses.fromDecimal(thicknesses.units[0], d)
	return Thickness(v), err
}

// MillimetersDecimal returns a thickness of d millimeters to the nearest 0.0001
// in. More than 4 places are refused.
func MillimetersDecimal(d decimal.Decimal) (Thickness, error) {
	v, err := thicknesses.fromDecimal(thicknesses.units[1], d)
	return Thickness(v), err
}

// ParseThickness reads a number with at most 4 places and a unit, in, mm or cm,
// with or without one space between, as "0.45 in" or "11mm". A bare number is in
// inches. Metric text is turned into the nearest 0.0001 in. No sign but minus,
// no exponent and no grouping are read.
func ParseThickness(s string) (Thickness, error) {
	v, err := thicknesses.parse(s)
	return Thickness(v), err
}

// IsValid reports whether the value holds a number.
func (t Thickness) IsValid() bool { return held(int32(t)) }

// Inches returns the thickness in inches, exactly; 0 for an invalid value.
func (t Thickness) Inches() decimal.Decimal { return metric(int32(t), 0, 1) }

// Millimeters returns the thickness in millimeters, exactly; 0 for an invalid
// value.
func (t Thickness) Millimeters() decimal.Decimal { return metric(int32(t), 1, 254) }

// String gives the thickness in inches, as "0.6 in".
func (t Thickness) String() string { return thicknesses.string(int32(t)) }

// AppendText appends the thickness in inches, as "0.6 in".
func (t Thickness) AppendText(b []byte) ([]byte, error) { return thicknesses.append(b, int32(t)) }

// MarshalText gives the thickness in inches, as "0.6 in".
func (t Thickness) MarshalText() ([]byte, error) { return t.AppendText(nil) }

// UnmarshalText reads what [ParseThickness] reads. On error the receiver is left
// as it was.
func (t *Thickness) UnmarshalText(b []byte) error { return text.UnmarshalSet(t, b, ParseThickness) }

// UnmarshalJSON reads the text in quotes, or a bare number of inches. On error
// the receiver is left as it was.
func (t *Thickness) UnmarshalJSON(b []byte) error { return text.UnmarshalJSON(t, b) }

// Value gives the text for a database.
func (t Thickness) Value() (driver.Value, error) { return text.Value(t) }

// Scan reads a database column that holds text.
func (t *Thickness) Scan(src any) error { return text.Scan(t, thicknesses.kind, src) }

// SquareInches returns an area of so many square inches. See [Inches] for
// snapping and for what does not fit.
func SquareInches(f float64) Area { return Area(areas.units[0].fromFloat(f)) }

// SquareCentimeters returns an area of so many square centimeters, to the
// nearest 0.0001 square inch. See [Inches] for what does not fit.
func SquareCentimeters(f float64) Area { return Area(areas.units[1].fromFloat(f)) }

// SquareInchesDecimal returns an area of d square inches. More than 4 places are
// refused.
func SquareInchesDecimal(d decimal.Decimal) (Area, error) {
	v, err := areas.fromDecimal(areas.units[0], d)
	return Area(v), err
}

// SquareCentimetersDecimal returns an area of d square centimeters to the
// nearest 0.0001 square inch. More than 4 places are refused.
func SquareCentimetersDecimal(d decimal.Decimal) (Area, error) {
	v, err := areas.fromDecimal(areas.units[1], d)
	return Area(v), err
}

// ParseArea reads a number with at most 4 places and a unit, "sq in" or "sq cm",
// as "12.4 sq in". A bare number is in square inches. See [ParseThickness].
func ParseArea(s string) (Area, error) {
	v, err := areas.parse(s)
	return Area(v), err
}

// IsValid reports whether the value holds a number.
func (a Area) IsValid() bool { return held(int32(a)) }

// SquareInches returns the area in square inches, exactly; 0 for an invalid
// value.
func (a Area) SquareInches() decimal.Decimal { return metric(int32(a), 0, 1) }

// SquareCentimeters returns the area in square centimeters, exactly; 0 for an
// invalid value.
func (a Area) SquareCentimeters() decimal.Decimal { return metric(int32(a), 4, 64_516) }

// String gives the area in square inches, as "12.4 sq in".
func (a Area) String() string { return areas.string(int32(a)) }

// AppendText appends the area in square inches, as "12.4 sq in".
func (a Area) AppendText(b []byte) ([]byte, error) { return areas.append(b, int32(a)) }

// MarshalText gives the area in square inches, as "12.4 sq in".
func (a Area) MarshalText() ([]byte, error) { return a.AppendText(nil) }

// UnmarshalText reads what [ParseArea] reads. On error the receiver is left as
// it was.
func (a *Area) UnmarshalText(b []byte) error { return text.UnmarshalSet(a, b, ParseArea) }

// UnmarshalJSON reads the text in quotes, or a bare number of square inches. On
// error the receiver is left as it was.
func (a *Area) UnmarshalJSON(b []byte) error { return text.UnmarshalJSON(a, b) }

// Value gives the text for a database.
func (a Area) Value() (driver.Value, error) { return text.Value(a) }

// Scan reads a database column that holds text.
func (a *Area) Scan(src any) error { return text.Scan(a, areas.kind, src) }

// Percent returns a share of so many percent of carcass weight. See [Inches] for
// snapping and for what does not fit.
func Percent(f float64) Share { return Share(shares.units[0].fromFloat(f)) }

// PercentDecimal returns a share of d percent. More than 4 places are refused.
func PercentDecimal(d decimal.Decimal) (Share, error) {
	v, err := shares.fromDecimal(shares.units[0], d)
	return Share(v), err
}

// ParseShare reads a number with at most 4 places, with or without a percent
// sign, as "2.5%". See [ParseThickness].
func ParseShare(s string) (Share, error) {
	v, err := shares.parse(s)
	return Share(v), err
}

// IsValid reports whether the value holds a number.
func (p Share) IsValid() bool { return held(int32(p)) }

// Percent returns the share in percent, exactly; 0 for an invalid value.
func (p Share) Percent() decimal.Decimal { return metric(int32(p), 0, 1) }

// String gives the share, as "2.5%".
func (p Share) String() string { return shares.string(int32(p)) }

// AppendText appends the share, as "2.5%".
func (p Share) AppendText(b []byte) ([]byte, error) { return shares.append(b, int32(p)) }

// MarshalText gives the share, as "2.5%".
func (p Share) MarshalText() ([]byte, error) { return p.AppendText(nil) }

// UnmarshalText reads what [ParseShare] reads. On error the receiver is left as
// it was.
func (p *Share) UnmarshalText(b []byte) error { return text.UnmarshalSet(p, b, ParseShare) }

// UnmarshalJSON reads the text in quotes, or a bare number of percent. On error
// the receiver is left as it was.
func (p *Share) UnmarshalJSON(b []byte) error { return text.UnmarshalJSON(p, b) }

// Value gives the text for a database.
func (p Share) Value() (driver.Value, error) { return text.Value(p) }

// Scan reads a database column that holds text.
func (p *Share) Scan(src any) error { return text.Scan(p, shares.kind, src) }

// Pounds returns a weight of so many pounds. See [Inches] for snapping and for
// what does not fit.
func Pounds(f float64) Weight { return Weight(weights.units[0].fromFloat(f)) }

// Kilograms returns a weight of so many kilograms, to the nearest 0.0001 lb. See
// [Inches] for what does not fit.
func Kilograms(f float64) Weight { return Weight(weights.units[1].fromFloat(f)) }

// PoundsDecimal returns a weight of d pounds. More than 4 places are refused.
func PoundsDecimal(d decimal.Decimal) (Weight, error) {
	v, err := weights.fromDecimal(weights.units[0], d)
	return Weight(v), err
}

// KilogramsDecimal returns a weight of d kilograms to the nearest 0.0001 lb.
// More than 4 places are refused.
func KilogramsDecimal(d decimal.Decimal) (Weight, error) {
	v, err := weights.fromDecimal(weights.units[1], d)
	return Weight(v), err
}

// ParseWeight reads a number with at most 4 places and a unit, lb or kg, as
// "842 lb". A bare number is in pounds. See [ParseThickness].
func ParseWeight(s string) (Weight, error) {
	v, err := weights.parse(s)
	return Weight(v), err
}

// IsValid reports whether the value holds a number.
func (w Weight) IsValid() bool { return held(int32(w)) }

// Pounds returns the weight in pounds, exactly; 0 for an invalid value.
func (w Weight) Pounds() decimal.Decimal { return metric(int32(w), 0, 1) }

// Kilograms returns the weight in kilograms, exactly; 0 for an invalid value.
func (w Weight) Kilograms() decimal.Decimal { return metric(int32(w), 8, 45_359_237) }

// String gives the weight in pounds, as "842 lb".
func (w Weight) String() string { return weights.string(int32(w)) }

// AppendText appends the weight in pounds, as "842 lb".
func (w Weight) AppendText(b []byte) ([]byte, error) { return weights.append(b, int32(w)) }

// MarshalText gives the weight in pounds, as "842 lb".
func (w Weight) MarshalText() ([]byte, error) { return w.AppendText(nil) }

// UnmarshalText reads what [ParseWeight] reads. On error the receiver is left as
// it was.
func (w *Weight) UnmarshalText(b []byte) error { return text.UnmarshalSet(w, b, ParseWeight) }

// UnmarshalJSON reads the text in quotes, or a bare number of pounds. On error
// the receiver is left as it was.
func (w *Weight) UnmarshalJSON(b []byte) error { return text.UnmarshalJSON(w, b) }

// Value gives the text for a database.
func (w Weight) Value() (driver.Value, error) { return text.Value(w) }

// Scan reads a database column that holds text.
func (w *Weight) Scan(src any) error { return text.Scan(w, weights.kind, src) }

// metric returns n*factor in units of 10^-(4+more), exactly; 0 for an invalid n.
func metric(n int32, more int32, factor int64) decimal.Decimal {
	if !held(n) {
		return decimal.Zero
	}
	return decimal.New(int64(n)*factor, -places-more)
}
