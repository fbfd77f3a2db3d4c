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

var roundings = text.Enum[Rounding]{Kind: "rounding", Names: []string{"", "down", "half up", "half even"}}

// String gives the name of the rounding; "unset" for zero.
func (r Rounding) String() string { return roundings.String(r) }

// MarshalText gives the name; the zero value is empty text.
func (r Rounding) MarshalText() ([]byte, error) { return roundings.Marshal(r) }

// UnmarshalText reads what [Rounding.String] writes, in any case; empty text gives the
// zero value. On error the receiver is left as it was.
func (r *Rounding) UnmarshalText(b []byte) error { return roundings.Unmarshal(r, b) }
