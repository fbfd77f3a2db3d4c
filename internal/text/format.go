package text

import (
	"fmt"

	"example.com/ribface/internal/text/fixed"
)

// Fixed writes n, a count of 10^-places, with the decimals that the state asks for,
// rounded by r, or with as many as it has; with a plus sign where the state asks for
// one.
func Fixed(s fmt.State, n int64, places int, r fixed.Rounding) string {
	min := 0
	if p, ok := s.Precision(); ok {
		min = p
		if step := int64(1); p < places {
			for range places - p {
				step *= 10
			}
			n = fixed.Round(n, step, r)
		}
	}
	var b []byte
	if s.Flag('+') && n >= 0 {
		b = append(b, '+')
	}
	b = fixed.AppendMin(b, n, places, min)
	for p := places; p < min && p < 100; p++ {
		b = append(b, '0')
	}
	return string(b)
}

// Format writes a value for package fmt by its texts: plain for %v and %s, in quotes
// for %q, the Go syntax for %#v, the number for %f and %F. Without a number, %f gives
// the plain text. Another verb is told as package fmt tells it.
func Format(s fmt.State, verb rune, plain, syntax, number string) {
	switch verb {
	case 'f', 'F':
		if number == "" {
			number = plain
		}
		pad(s, number)
	case 'v':
		if s.Flag('#') {
			plain = syntax
		}
		pad(s, plain)
	case 's':
		_, _ = fmt.Fprintf(s, fmt.FormatString(s, 's'), plain)
	case 'q':
		_, _ = fmt.Fprintf(s, fmt.FormatString(s, 'q'), plain)
	default:
		_, _ = fmt.Fprintf(s, "%%!%c(%s)", verb, plain)
	}
}

// pad writes the text in the width that the state asks for.
func pad(s fmt.State, text string) {
	width, _ := s.Width()
	if s.Flag('-') {
		width = -width
	}
	_, _ = fmt.Fprintf(s, "%*s", width, text)
}
