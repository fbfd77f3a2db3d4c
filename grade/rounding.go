package grade

import "example.com/ribface/internal/text"

// Rounding names a way to round a number to fewer places.
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
