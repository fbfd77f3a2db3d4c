package maturity

import (
	"cmp"
	"database/sql/driver"
	"iter"

	"example.com/ribface/internal/text"
	"example.com/ribface/internal/text/scale"
)

// Group is one of the five maturity groups, A for the youngest to E for the
// oldest. The zero Group is not set.
type Group uint8

// The maturity groups of the federal standard (official: cfr-1965-53-general).
const (
	A Group = 1 + iota // about 9 to 30 months
	B                  // about 30 to 42 months
	C                  // about 42 to 72 months
	D                  // about 72 to 96 months
	E                  // about 96 months and over
)

var letters = scale.Scale{Kind: "maturity", Short: []string{"", "A", "B", "C", "D", "E"}}
var groups = text.Enum[Group]{Kind: "maturity group", Names: letters.Short}

// Groups yields the groups from the youngest to the oldest.
func Groups() iter.Seq[Group] { return groups.All() }

// At returns the score so many units into the group, 0 to 100. Units outside
// that range give an invalid Score that every computation refuses by field
// name.
func (g Group) At(units int) Score { return Score(letters.At(int(g), units)) }

// IsValid reports whether g is one of the five groups.
func (g Group) IsValid() bool { return groups.Valid(g) }

// String gives the letter; "unset" for zero.
func (g Group) String() string { return groups.String(g) }

// ParseGroup reads a letter, A to E.
func ParseGroup(s string) (Group, error) { return groups.Parse(s) }

// MarshalText gives the letter; the zero value is empty text.
func (g Group) MarshalText() ([]byte, error) { return groups.Marshal(g) }

// UnmarshalText reads a letter. On error the receiver is left as it was.
func (g *Group) UnmarshalText(b []byte) error { return groups.Unmarshal(g, b) }

// Value gives the letter for a database.
func (g Group) Value() (driver.Value, error) { return groups.Value(g) }

// Scan reads a letter from a database.
func (g *Group) Scan(src any) error { return groups.Scan(g, src) }

// Score is a point on the maturity scale: a group and units into it, 0 to 100.
// Unit 100 of a group and unit 00 of the next are one point, written as the
// later: A100 is B00. The oldest point is E100. The zero Score is not set.
//
// Scores are ordered as integers, so < and == compare them; a score that is not
// valid sorts before every valid one.
type Score int16

// IsValid reports whether s is a point from A00 to E100.
func (s Score) IsValid() bool { return uint16(s-100) <= 500 }

// Group returns the group of the score, or the zero Group when s is not valid.
func (s Score) Group() Group {
	g, _ := letters.Split(int16(s))
	return Group(g)
}

// Units returns the units into the group, 0 to 99, or 100 for E100 alone. A
// score that is not valid gives 0.
func (s Score) Units() int {
	_, u := letters.Split(int16(s))
	return u
}

// Number returns the score on the times-100 form of the numeric scale of
// research reports: A00 = 100, B00 = 200 up to E00 = 500 (published:
// nbqa-2016-cows-t10) and E100 = 600. A score that is not valid gives 0. It is not the
// ossification score of the Australian scheme, which also starts at 100.
func (s Score) Number() int {
	if !s.IsValid() {
		return 0
	}
	return int(s)
}

// Compare returns -1, 0 or +1 as s is younger than, equal to or older than t.
// Scores that are not valid come before the valid ones.
func (s Score) Compare(t Score) int { return cmp.Compare(s, t) }

// String gives the canonical spelling, as A70 or C05; "unset" for zero. A score
// made from impossible units shows what was asked, as A(150).
func (s Score) String() string {
	if s == 0 {
		return "unset"
	}
	return string(letters.Append(nil, int16(s)))
}

// Check returns an error that names the field when s is not set or not valid.
func (s Score) Check(field string) error { return letters.Check(field, int16(s)) }

// Parse reads a score: a letter A to E and two digits, as A70, in any case and with or
// without blanks between. Also read: 0 for 00, and 100 for the end of a group, so that
// A100 is B00.
func Parse(s string) (Score, error) {
	v, err := letters.Parse(s)
	return Score(v), err
}

// MustParse is [Parse] for hard-coded text; it panics on an error.
func MustParse(s string) Score {
	v, err := Parse(s)
	if err != nil {
		panic(err)
	}
	return v
}

// AppendText appends the canonical spelling; the zero value is empty text.
func (s Score) AppendText(b []byte) ([]byte, error) {
	if s != 0 {
		if err := s.Check(letters.Kind); err != nil {
			return b, err
		}
	}
	return letters.Append(b, int16(s)), nil
}

// MarshalText gives the canonical spelling; the zero value is empty text.
func (s Score) MarshalText() ([]byte, error) { return s.AppendText(nil) }

// UnmarshalText reads a score; empty text gives the zero value. On error the
// receiver is left as it was.
func (s *Score) UnmarshalText(b []byte) error { return text.Unmarshal(s, b, Parse) }

// Value gives the canonical spelling for a database.
func (s Score) Value() (driver.Value, error) { return text.Value(s) }

// Scan reads a score from a database column that holds text.
func (s *Score) Scan(src any) error { return text.Scan(s, letters.Kind, src) }
