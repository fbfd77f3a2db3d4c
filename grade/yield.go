package grade

import (
	"database/sql/driver"

	"example.com/ribface/internal/fault"
	"example.com/ribface/internal/fixed"
	"example.com/ribface/internal/text"
	"github.com/shopspring/decimal"
)

// Measures are the four facts behind a yield grade.
type Measures struct {
	Fat    Thickness // fat opposite the ribeye, adjusted for unusual fat elsewhere; 0 to 3 in
	Ribeye Area      // area of the ribeye between ribs 12 and 13; over 0 to 25 sq in
	KPH    Share     // kidney, pelvic and heart fat, in percent of carcass weight; 0 to 10
	Weight Weight    // hot carcass weight; over 0 to 1,800 lb
}

// The widest measures that are taken for a carcass (derived: yield.go of the
// references keeps the published extremes of the audits, nbqa-2016-cows, inside
// them).
const (
	maxFat    = 3 * Inch
	maxRibeye = 25 * SquareInch
	maxKPH    = 10 * OnePercent
	maxWeight = 1800 * Pound
)

// Yield is a yield grade before its decimals are dropped, in units of 1e-8 of a
// grade: the exact value of the federal equation for measures of 4 places. It
// may lie below 1 or above 5. The zero Yield is the value 0.
//
// Yields are ordered as integers; the lower is the leaner.
type Yield int64

// OneGrade is one whole yield grade, for counting and making.
const OneGrade Yield = 100_000_000

// yieldPlaces is the number of decimals that a Yield holds.
const yieldPlaces = 8

// The coefficients of the equation, in 1e-8 of a grade per 0.0001 of a unit:
// 2.50 + 2.50 FT + 0.20 KPH + 0.0038 HCW - 0.32 REA (official: cfr-54-105 (a)).
const (
	yieldBase   = 250_000_000
	yieldFat    = 25_000
	yieldKPH    = 2_000
	yieldWeight = 38
	yieldRibeye = 3_200
)

// Yield returns the exact value of the federal yield grade equation
//
//	2.50 + 2.50 fat + 0.20 KPH + 0.0038 weight - 0.32 ribeye
//
// with fat in inches, KPH in percent, hot carcass weight in pounds and ribeye in
// square inches (official: cfr-54-105 (a)). The whole grade is [Yield.Grade].
//
// A measure that is missing, negative, not a number or beyond the limits noted
// at [Measures] gives an error that names it; errors.As finds the [*FieldError].
func (m Measures) Yield() (Yield, error) {
	// Unsigned, a negative number is larger than any limit. The comparisons, the
	// equation and the lazy error are short enough for the compiler to inline,
	// which is why the equation stands here and in no function of its own.
	if uint32(m.Fat) > uint32(maxFat) || uint32(m.Ribeye-1) >= uint32(maxRibeye) || uint32(m.KPH) > uint32(maxKPH) || uint32(m.Weight-1) >= uint32(maxWeight) {
		e := refused(m)
		return 0, &e
	}
	return yieldBase + yieldFat*Yield(uint32(m.Fat)) + yieldKPH*Yield(uint32(m.KPH)) + yieldWeight*Yield(uint32(m.Weight)) - yieldRibeye*Yield(uint32(m.Ribeye)), nil
}

// Terms are the five terms of the yield equation; they add up to the yield.
type Terms struct {
	Start  Yield // 2.50 for every carcass
	Fat    Yield // 2.50 per inch
	KPH    Yield // 0.20 per percent
	Weight Yield // 0.0038 per pound
	Ribeye Yield // -0.32 per square inch, so never over 0
}

// Sum returns the yield that the terms add up to.
func (t Terms) Sum() Yield { return t.Start + t.Fat + t.KPH + t.Weight + t.Ribeye }

// Sub returns the difference t - u, term by term. The terms of two carcasses
// differ by their yields' difference, split exactly over the four measures.
func (t Terms) Sub(u Terms) Terms {
	return Terms{t.Start - u.Start, t.Fat - u.Fat, t.KPH - u.KPH, t.Weight - u.Weight, t.Ribeye - u.Ribeye}
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
	return Terms{yieldBase, yieldFat * Yield(m.Fat), yieldKPH * Yield(m.KPH), yieldWeight * Yield(m.Weight), -yieldRibeye * Yield(m.Ribeye)}
}

// refused is the error for measures that the equation does not take. It finds
// the field at fault only when asked.
type refused Measures

// Error names the field, the value and what is allowed.
func (r *refused) Error() string { return r.Unwrap().Error() }

// Unwrap returns the [*FieldError].
func (r *refused) Unwrap() error { return Measures(*r).Check() }

// Check returns a [*FieldError] for the first measure that is missing or
// impossible, in the order fat, ribeye, KPH, weight; nil when there is none.
func (m Measures) Check() error {
	if err := thicknesses.check("fat", int32(m.Fat), 0, int32(maxFat)); err != nil {
		return err
	}
	if err := areas.check("ribeye", int32(m.Ribeye), 1, int32(maxRibeye)); err != nil {
		return err
	}
	if err := shares.check("KPH", int32(m.KPH), 0, int32(maxKPH)); err != nil {
		return err
	}
	return weights.check("weight", int32(m.Weight), 1, int32(maxWeight))
}

// Grade returns the whole yield grade, 1 to 5: decimals are dropped toward minus
// infinity (published: ext-sdsu-yield, 3.9 is 3), then the number is kept to 1
// to 5 (derived).
func (y Yield) Grade() int {
	return int(uint64(min(max(y, OneGrade), 5*OneGrade)) / uint64(OneGrade))
}

// Rounding names a way to round a yield to fewer places.
type Rounding uint8

// The roundings. The zero Rounding is not set and is refused.
const (
	Down     Rounding = 1 + iota // toward minus infinity: 2.19 is 2.1, -0.01 is -0.1
	HalfUp                       // to the nearest, halves toward plus infinity: 2.15 is 2.2, -2.15 is -2.1
	HalfEven                     // to the nearest, halves to the even digit: 2.15 is 2.2, 2.25 is 2.2
)

var roundings = text.Enum{Kind: "rounding", Names: []string{"", "down", "half up", "half even"}}

// String gives the name of the rounding; "unset" for zero.
func (r Rounding) String() string { return roundings.String(int(r)) }

// IsValid reports whether the rounding is one of the named ones.
func (r Rounding) IsValid() bool { return roundings.IsValid(int(r)) }

// ParseRounding reads the name of a rounding, as [Rounding.String] writes it.
func ParseRounding(s string) (Rounding, error) {
	v, err := roundings.Parse(s)
	return Rounding(v), err
}

// AppendText appends the name; the zero value is empty text.
func (r Rounding) AppendText(b []byte) ([]byte, error) { return roundings.Append(b, int(r)) }

// MarshalText gives the name; the zero value is empty text.
func (r Rounding) MarshalText() ([]byte, error) { return r.AppendText(nil) }

// UnmarshalText reads a name. On error the receiver is left as it was.
func (r *Rounding) UnmarshalText(b []byte) error { return text.Unmarshal(r, b, ParseRounding) }

// Value gives the name for a database.
func (r Rounding) Value() (driver.Value, error) { return text.Value(r) }

// Scan reads a name from a database column that holds text.
func (r *Rounding) Scan(src any) error { return text.Scan(r, roundings.Kind, src) }

// Round returns the yield rounded to so many places, 0 to 8. Tenths are
// preferred for comparison and decimals are dropped in trade (published:
// bif-yield); one contest asks for the nearest tenth (published: ga-ffa-2014).
// An unset rounding or an impossible number of places gives a [*FieldError].
func (y Yield) Round(r Rounding, to int) (Yield, error) {
	if err := roundings.Check("rounding", int(r)); err != nil {
		return 0, err
	}
	if to < 0 || to > yieldPlaces {
		return 0, &FieldError{Field: "places", Value: fixed.String(int64(to), 0), Allowed: "0 to 8", Err: ErrRange}
	}
	step := Yield(1)
	for range yieldPlaces - to {
		step *= 10
	}
	rest := y % step
	if rest < 0 {
		rest += step
	}
	down := y - rest
	switch {
	case r == Down, 2*rest < step:
		return down, nil
	case r == HalfEven && 2*rest == step && down/step%2 == 0:
		return down, nil
	default:
		return down + step, nil
	}
}

// Tenth returns the yield rounded to a tenth of a grade by r. An unset rounding
// gives a [*FieldError].
func (y Yield) Tenth(r Rounding) (Yield, error) { return y.Round(r, 1) }

// Decimal returns the yield as a decimal, exactly.
func (y Yield) Decimal() decimal.Decimal {
	p := int32(yieldPlaces)
	for ; p > 0 && y%10 == 0; p-- {
		y /= 10
	}
	return decimal.New(int64(y), -p)
}

// YieldDecimal returns the yield of value d. More than 8 places are refused.
func YieldDecimal(d decimal.Decimal) (Yield, error) {
	if e := d.Exponent(); e > 9 || e < -64 || d.NumDigits() > 80 {
		return 0, fault.Parse("yield", "a decimal with exponent far out of range", "", "numbers with at most 8 places", ErrRange)
	}
	s := d.Shift(yieldPlaces)
	if !s.IsInteger() || s.Abs().Cmp(decimal.New(1, 18)) >= 0 {
		return 0, fault.Parse("yield", d.String(), "", "numbers with at most 8 places", ErrRange)
	}
	return Yield(s.IntPart()), nil
}

// ParseYield reads a decimal number with at most 8 places, as "2.952".
func ParseYield(s string) (Yield, error) {
	n, err := fixed.Parse(s, yieldPlaces)
	if err != nil {
		return 0, fault.Parse("yield", s, "", "a number with at most 8 places", err)
	}
	return Yield(n), nil
}

// String gives the exact value in its shortest form, as "2.952" or "3".
func (y Yield) String() string { return fixed.String(int64(y), yieldPlaces) }

// AppendText appends the exact value in its shortest form.
func (y Yield) AppendText(b []byte) ([]byte, error) {
	return fixed.Append(b, int64(y), yieldPlaces), nil
}

// MarshalText gives the exact value in its shortest form.
func (y Yield) MarshalText() ([]byte, error) { return y.AppendText(nil) }

// UnmarshalText reads what [ParseYield] reads. On error the receiver is left as
// it was.
func (y *Yield) UnmarshalText(b []byte) error { return text.UnmarshalSet(y, b, ParseYield) }

// UnmarshalJSON reads the text in quotes, or a bare number. On error the
// receiver is left as it was.
func (y *Yield) UnmarshalJSON(b []byte) error { return text.UnmarshalJSON(y, b) }

// Value gives the text for a database.
func (y Yield) Value() (driver.Value, error) { return text.Value(y) }

// Scan reads a database column that holds text.
func (y *Yield) Scan(src any) error { return text.Scan(y, "yield", src) }
