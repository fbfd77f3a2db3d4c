package contest

import (
	"database/sql/driver"

	"example.com/ribface/internal/fault"
	"example.com/ribface/internal/fixed"
	"example.com/ribface/internal/text"
	"github.com/shopspring/decimal"
)

// pointPlaces is the number of decimals that Points hold.
const pointPlaces = 4

// Points is a number of points in units of 0.0001 of a point, so that half points
// and tenths add up exactly. The zero Points are no points. They may be negative,
// as a placing score can be.
type Points int64

// Point is one point, for counting and making: 50*Point.
const Point Points = 10_000

// maxPoints bounds every value and weight that a caller gives, so that no sum of
// them overflows.
const maxPoints = 1_000_000 * Point

// checkValue refuses what is no value of an item or component.
func checkValue(field string, p Points) error {
	if p <= 0 || p > maxPoints {
		return &FieldError{Field: field, Value: p.String(), Allowed: "over 0 to 1,000,000 points", Err: ErrRange}
	}
	return nil
}

// checkLoss refuses what is no number of points to lose.
func checkLoss(field string, p Points) error {
	if p < 0 || p > maxPoints {
		return &FieldError{Field: field, Value: p.String(), Allowed: "0 to 1,000,000 points", Err: ErrRange}
	}
	return nil
}

// ParsePoints reads a number with at most 4 places, as "42" or "7.5".
func ParsePoints(s string) (Points, error) {
	n, err := fixed.Parse(s, pointPlaces)
	if err != nil {
		return 0, fault.Parse("points", s, "", "a number with at most 4 places", err)
	}
	return Points(n), nil
}

// Decimal returns the points as a decimal, exactly.
func (p Points) Decimal() decimal.Decimal { return decimal.New(int64(p), -pointPlaces) }

// String gives the points in their shortest form, as "42" or "7.5".
func (p Points) String() string { return fixed.String(int64(p), pointPlaces) }

// AppendText appends the points in their shortest form.
func (p Points) AppendText(b []byte) ([]byte, error) {
	return fixed.Append(b, int64(p), pointPlaces), nil
}

// MarshalText gives the points in their shortest form.
func (p Points) MarshalText() ([]byte, error) { return p.AppendText(nil) }

// UnmarshalText reads what [ParsePoints] reads. On error the receiver is left as
// it was.
func (p *Points) UnmarshalText(b []byte) error { return text.UnmarshalSet(p, b, ParsePoints) }

// Value gives the text for a database.
func (p Points) Value() (driver.Value, error) { return text.Value(p) }

// Scan reads a database column that holds text.
func (p *Points) Scan(src any) error { return text.Scan(p, "points", src) }
