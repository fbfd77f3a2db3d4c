package contest

import (
	"cmp"
	"database/sql/driver"
	"fmt"
	"math"
	"strconv"

	"example.com/ribface/grade"
	"example.com/ribface/internal/fault"
	"example.com/ribface/internal/text"
	"example.com/ribface/internal/text/fixed"
	"github.com/shopspring/decimal"
)

// pointPlaces is the number of decimals that Points hold.
const pointPlaces = 4

// Points is a number of points in units of 0.0001 of a point, so that half points
// and tenths add up exactly. They may be negative, as a placing score can be. The
// zero Points are not set; [PointsOf] of 0 is a number of points.
type Points struct{ n uint64 } // units, kept at noPoints more; 0 is not set

// onePoint is how many units of [Points] there are in a point.
const onePoint = 10_000

// noPoints is what 0 units are kept as. Kept units compare as the units do.
const noPoints = 1 << 63

// mostUnits bounds the units of Points: ten digits before the point, which text can
// have, and sums of two never wrap.
const mostUnits = 99_999_999_999_999

// maxPoints bounds every value and weight that a caller gives, so that no sum of
// them overflows.
const maxPoints = 1_000_000 * onePoint

const pointsAllowed = "a number with at most 4 places"

// PointsOf returns so many points, to the nearest 0.0001, halves away from zero.
// NaN gives Points that are not set; beyond the range of [PointsUnits] its end is
// returned.
func PointsOf(f float64) Points {
	if f != f {
		return Points{}
	}
	return PointsUnits(int64(math.Round(min(max(f, -1e14), 1e14) * onePoint)))
}

// PointsUnits returns n times 0.0001 of a point, kept to the range of under
// 10,000,000,000 points to either side.
func PointsUnits(n int64) Points {
	return Points{uint64(min(max(n, -mostUnits), mostUnits)) + noPoints}
}

// whole returns so many points.
func whole(n int) Points { return PointsUnits(int64(n) * onePoint) }

// ParsePoints reads a number, as "42" or "7.5", under 10,000,000,000 to either side. More
// than 4 places are refused with [placing.ErrPlaces], or rounded the way that is named.
func ParsePoints(s string, surplus ...grade.Rounding) (Points, error) {
	r := fixed.Exact
	if len(surplus) > 0 {
		if r = fixed.Rounding(surplus[0]); !text.Named(surplus[0]) {
			return Points{}, &fault.FieldError{Field: "rounding", Value: surplus[0].String(), Allowed: "down, half up, half even", Err: fault.ErrUnknown}
		}
	}
	n, err := fixed.Read(text.Trim(s))
	if err == nil {
		var units int64
		if units, err = n.Units(pointPlaces, 1, r); err == nil {
			if units <= mostUnits && units >= -mostUnits {
				return PointsUnits(units), nil
			}
			err = fault.ErrRange
		}
	}
	return Points{}, fault.Parse("points", s, "", pointsAllowed, err)
}

func parsePoints(s string) (Points, error) { return ParsePoints(s) }

// checkValue refuses what is no value of an item or component.
func checkValue(path, field string, p Points) error {
	return p.check(path, field, 1, "over 0 to 1,000,000 points")
}

// checkLoss refuses what is no number of points to lose.
func checkLoss(path, field string, p Points) error {
	return p.check(path, field, 0, "0 to 1,000,000 points")
}

func (p Points) check(path, field string, least int64, allowed string) error {
	if !p.IsSet() {
		return &fault.FieldError{Path: path, Field: field, Allowed: allowed, Err: fault.ErrMissing}
	}
	if p.Units() < least || p.Units() > maxPoints {
		return &fault.FieldError{Path: path, Field: field, Value: p.String(), Allowed: allowed, Err: fault.ErrRange}
	}
	return nil
}

// IsSet reports whether there is a number of points; 0 is one.
func (p Points) IsSet() bool { return p.n != 0 }

// Units returns the points in units of 0.0001 of a point; 0 where they are not set.
func (p Points) Units() int64 {
	if p.n == 0 {
		return 0
	}
	return int64(p.n - noPoints)
}

// Add returns the sum p + q; not set where one of them is not.
func (p Points) Add(q Points) Points {
	if p.n == 0 || q.n == 0 {
		return Points{}
	}
	return PointsUnits(p.Units() + q.Units())
}

// Sub returns the difference p - q; not set where one of them is not.
func (p Points) Sub(q Points) Points {
	if p.n == 0 || q.n == 0 {
		return Points{}
	}
	return PointsUnits(p.Units() - q.Units())
}

// Compare returns -1, 0 or +1 as p is less than, equal to or more than q. Points
// that are not set come first.
func (p Points) Compare(q Points) int { return cmp.Compare(p.n, q.n) }

// Equal reports whether p == q.
func (p Points) Equal(q Points) bool { return p == q }

// Decimal returns the points as a decimal, exactly; 0 where they are not set.
func (p Points) Decimal() decimal.Decimal { return decimal.New(p.Units(), -pointPlaces) }

// String gives the points in their shortest form, as "42" or "7.5"; "unset" for the
// zero value.
func (p Points) String() string {
	if p.n == 0 {
		return "unset"
	}
	return fixed.String(p.Units(), pointPlaces)
}

// GoString gives Go syntax that makes the value, as "contest.PointsUnits(75000)".
func (p Points) GoString() string {
	if p.n == 0 {
		return "contest.Points{}"
	}
	return "contest.PointsUnits(" + strconv.FormatInt(p.Units(), 10) + ")"
}

// Format writes the points for package fmt: %v and %s as String, %q in quotes, %#v
// as GoString, and %f and %F with the wanted decimals, by default as many as they
// have, to the nearest, halves away from zero.
func (p Points) Format(s fmt.State, verb rune) {
	number := ""
	if p.n != 0 && (verb == 'f' || verb == 'F') {
		number = text.Fixed(s, p.Units(), pointPlaces, fixed.HalfAway)
	}
	text.Format(s, verb, p.String(), p.GoString(), number)
}

// AppendText appends the points in their shortest form; the zero value is empty
// text.
func (p Points) AppendText(b []byte) ([]byte, error) {
	if p.n == 0 {
		return b, nil
	}
	return fixed.Append(b, p.Units(), pointPlaces), nil
}

// MarshalText gives the points in their shortest form; the zero value is empty text.
func (p Points) MarshalText() ([]byte, error) { return p.AppendText(nil) }

// UnmarshalText reads what [ParsePoints] reads; empty text gives the zero value. On
// error the receiver is left as it was.
func (p *Points) UnmarshalText(b []byte) error { return text.Unmarshal(p, b, parsePoints) }

// MarshalJSON gives a bare number, as 42 or 7.5; empty text in quotes for the zero
// value.
func (p Points) MarshalJSON() ([]byte, error) {
	if p.n == 0 {
		return []byte(`""`), nil
	}
	return p.MarshalText()
}

// UnmarshalJSON reads a bare number, or its text in quotes; null changes nothing. On
// error the receiver is left as it was.
func (p *Points) UnmarshalJSON(b []byte) error { return text.UnmarshalJSON(p, b) }

// Value gives the number for a database, as text, which a numeric column holds and
// sorts as a number; NULL for the zero value.
func (p Points) Value() (driver.Value, error) { return text.Value(p) }

// Scan reads a database column that holds a number or its text; NULL gives the zero
// value. On error the receiver is left as it was.
func (p *Points) Scan(src any) error { return text.Scan(p, "points", src) }
