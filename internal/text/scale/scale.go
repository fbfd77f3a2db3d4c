// Package scale holds the arithmetic of an ordered scale made of named groups of
// one hundred units each, such as maturity groups and marbling degrees.
//
// A point is one int16: group*100 + units, so that unit 100 of a group and unit
// 0 of the next are the same point. Zero is "not set". A point that was asked
// for with impossible units is kept as a negative number that remembers what was
// asked, so that an error can name it.
package scale

import (
	"strconv"

	"example.com/ribface/internal/fault"
	"example.com/ribface/internal/text"
)

// Scale describes one scale.
type Scale struct {
	Kind  string              // for errors: "maturity", "marbling"
	Short []string            // spelling of each group, from 1; index 0 unused
	Long  []string            // second spelling of each group, from 1; may be nil
	Extra []text.Alias[uint8] // further spellings that parse
}

// At returns the point so many units into a group.
func (s *Scale) At(group, units int) int16 {
	if group >= 1 && group < len(s.Short) && units >= 0 && units <= 100 {
		return int16(group*100 + units)
	}
	return int16(-(min(max(group, 0), 14)*2000 + min(max(units, -999), 999) + 1000))
}

// IsValid reports whether v is a point of the scale.
func (s *Scale) IsValid(v int16) bool { return v >= 100 && int(v) <= len(s.Short)*100 }

// Split returns group and units of a valid point; the last point of the scale
// is unit 100 of the last group. An invalid point gives 0, 0.
func (s *Scale) Split(v int16) (group, units int) {
	if !s.IsValid(v) {
		return 0, 0
	}
	if top := len(s.Short) - 1; int(v) == (top+1)*100 {
		return top, 100
	}
	return int(v) / 100, int(v) % 100
}

// Append writes the canonical spelling of v: the short name of the group and at
// least two digits. Zero is written as nothing.
func (s *Scale) Append(b []byte, v int16) []byte {
	switch {
	case v == 0:
		return b
	case s.IsValid(v):
		g, u := s.Split(v)
		b = append(b, s.Short[g]...)
		if u < 10 {
			b = append(b, '0')
		}
		return strconv.AppendInt(b, int64(u), 10)
	case v <= -1:
		n := -int(v)
		g, u := n/2000, n%2000-1000
		if g >= 1 && g < len(s.Short) {
			b = append(b, s.Short[g]...)
		} else {
			b = append(b, '?')
		}
		b = append(b, '(')
		b = strconv.AppendInt(b, int64(u), 10)
		return append(b, ')')
	default:
		b = append(b, '?', '(')
		b = strconv.AppendInt(b, int64(v), 10)
		return append(b, ')')
	}
}

// Check returns an error that names the field when v is not a point of the scale.
func (s *Scale) Check(field string, v int16) error {
	if s.IsValid(v) {
		return nil
	}
	if v == 0 {
		return &fault.FieldError{Field: field, Allowed: s.Allowed(), Err: fault.ErrMissing}
	}
	return &fault.FieldError{Field: field, Value: string(s.Append(nil, v)), Allowed: s.Allowed(), Err: fault.ErrRange}
}

// Allowed says in words what the scale accepts.
func (s *Scale) Allowed() string {
	return s.Short[1] + "00 to " + s.Short[len(s.Short)-1] + "100"
}

// Parse reads a spelling: a short or long group name in any case, blanks or none, and
// two digits, "100", or "0" for 00.
func (s *Scale) Parse(in string) (int16, error) {
	trimmed := text.Trim(in)
	end := len(trimmed)
	for end > 0 && trimmed[end-1]-'0' <= 9 {
		end--
	}
	name, digits := trimmed[:end], trimmed[end:]
	g := s.group(name)
	if g == 0 {
		if len(digits) == len(trimmed) || name == "" {
			return 0, fault.Parse(s.Kind, in, "", s.Allowed(), fault.ErrSyntax)
		}
		return 0, fault.Parse(s.Kind, in, name, s.Allowed(), fault.ErrUnknown)
	}
	switch {
	case len(digits) == 2:
		return s.At(g, int(digits[0]-'0')*10+int(digits[1]-'0')), nil
	case digits == "0":
		return s.At(g, 0), nil
	case digits == "100":
		return s.At(g, 100), nil
	case len(digits) < 2:
		return 0, fault.Parse(s.Kind, in, digits, "two digits after the name, "+s.Allowed(), fault.ErrSyntax)
	default:
		return 0, fault.Parse(s.Kind, in, digits, "00 to 100 after the name", fault.ErrRange)
	}
}

func (s *Scale) group(name string) int {
	for g := 1; g < len(s.Short); g++ {
		if name == s.Short[g] {
			return g
		}
	}
	if text.Trim(name) == "" {
		return 0
	}
	for g := 1; g < len(s.Short); g++ {
		if text.SameWords(name, s.Short[g]) || g < len(s.Long) && text.SameWords(name, s.Long[g]) {
			return g
		}
	}
	for _, a := range s.Extra {
		if text.SameWords(name, a.Name) {
			return int(a.Value)
		}
	}
	return 0
}
