package grade

import (
	"cmp"
	"database/sql/driver"
	"iter"

	"example.com/ribface/internal/fault"
	"example.com/ribface/internal/text"
)

// Grade is a quality grade. The zero Grade is not set. Grades are ordered as
// integers, the better the higher.
type Grade uint8

// The quality grades of the federal standard, and NoGrade for a carcass that is
// eligible for none, such as a bull. Good is the name of Select before the 1987
// edition, with the same minima (official: cfr-1987-54-p51); an edition has one
// or the other.
const (
	NoGrade Grade = 1 + iota
	Canner
	Cutter
	Utility
	Commercial
	Standard
	Good
	Select
	Choice
	Prime
)

// The short forms of two letters are common practice, no source. Co and Cu would be
// two grades each to a reader in a hurry, and are not read.
var grades = text.Enum[Grade]{Kind: "grade", Names: []string{"", "No grade", "Canner", "Cutter", "Utility", "Commercial", "Standard", "Good", "Select", "Choice", "Prime"}, Also: []text.Alias[Grade]{
	{Name: "Pr", Value: Prime}, {Name: "Ch", Value: Choice}, {Name: "Se", Value: Select}, {Name: "St", Value: Standard},
}}

// IsValid reports whether g is one of the named grades, NoGrade among them.
func (g Grade) IsValid() bool { return g-1 < Prime }

// String gives the name; "unset" for zero.
func (g Grade) String() string { return grades.String(g) }

// ParseGrade reads the name of a grade as [Grade.String] writes it, in any case. Also
// read: Pr, Ch, Se and St for Prime, Choice, Select and Standard (common practice, no
// source).
func ParseGrade(s string) (Grade, error) { return grades.Parse(s) }

// MarshalText gives the name; the zero value is empty text.
func (g Grade) MarshalText() ([]byte, error) { return grades.Marshal(g) }

// UnmarshalText reads a name. On error the receiver is left as it was.
func (g *Grade) UnmarshalText(b []byte) error { return grades.Unmarshal(g, b) }

// Value gives the name for a database.
func (g Grade) Value() (driver.Value, error) { return grades.Value(g) }

// Scan reads a name from a database column that holds text.
func (g *Grade) Scan(src any) error { return grades.Scan(g, src) }

// Part returns the quality that is the given part of the grade. A grade or part
// that is not valid, and any part of NoGrade, give the zero Quality.
func (g Grade) Part(p Part) Quality {
	if !g.IsValid() || p > High || g == NoGrade && p != Whole {
		return 0
	}
	return Quality(g)<<2 | Quality(p)
}

// Part is a part of a grade: a third, or a half where the grade has no average.
// The zero Part is the whole grade, for grades that no source splits.
type Part uint8

// The parts of a grade.
const (
	Whole Part = iota
	Low
	Average
	High
)

var parts = text.Enum[Part]{Kind: "part of a grade", Names: []string{"", "Low", "Average", "High"}, Zero: "whole"}

// String gives the name of the part; "whole" for zero.
func (p Part) String() string { return parts.String(p) }

// MarshalText gives the name; the zero value is empty text.
func (p Part) MarshalText() ([]byte, error) { return parts.Marshal(p) }

// UnmarshalText reads what [Part.String] writes, in any case; empty text gives the
// zero value. On error the receiver is left as it was.
func (p *Part) UnmarshalText(b []byte) error { return parts.Unmarshal(p, b) }

// Value gives the name for a database.
func (p Part) Value() (driver.Value, error) { return parts.Value(p) }

// Scan reads a name from a database column that holds text.
func (p *Part) Scan(src any) error { return parts.Scan(p, src) }

// Quality is a quality grade with its part, as Low Choice. The zero Quality is
// not set. Qualities are ordered as integers, the better the higher; a grade
// without part comes before the parts of the same grade.
type Quality uint8

// Grade returns the grade.
func (q Quality) Grade() Grade { return Grade(q >> 2) }

// Part returns the part of the grade; Whole where the grade is not split.
func (q Quality) Part() Part { return Part(q & 3) }

// IsValid reports whether q is a grade with a part it can have.
func (q Quality) IsValid() bool { return q != 0 && q.Grade().Part(q.Part()) == q }

// Compare returns -1, 0 or +1 as q is worse than, equal to or better than r.
func (q Quality) Compare(r Quality) int { return cmp.Compare(q, r) }

// String gives part and grade, as "Low Choice", or the grade alone; "unset" for
// zero.
func (q Quality) String() string {
	switch {
	case q == 0:
		return "unset"
	case !q.IsValid():
		return "Quality(?)"
	case q.Part() == Whole:
		return q.Grade().String()
	default:
		return q.Part().String() + " " + q.Grade().String()
	}
}

// qualities lists every quality with its spelling, worst first.
var qualities = func() (all []Quality) {
	for g := NoGrade; g <= Prime; g++ {
		for p := Whole; p <= High; p++ {
			if q := g.Part(p); q != 0 {
				all = append(all, q)
			}
		}
	}
	return all
}()

// Qualities yields every quality from worst to best, with every part that can be
// written, also those that no source uses.
func Qualities() iter.Seq[Quality] {
	return func(yield func(Quality) bool) {
		for _, q := range qualities {
			if !yield(q) {
				return
			}
		}
	}
}

// ParseQuality reads a quality as [Quality.String] writes it, as "Low Choice" or
// "Utility", in any case, with blanks or hyphens between its words. Also read: the
// short forms of [ParseGrade], and the grade with a sign for the part, as "Choice-",
// "Ch -" and "ch+" for Low and High, with or without a blank before the sign (common
// practice, no source).
func ParseQuality(s string) (Quality, error) {
	in := text.Trim(s)
	part := Whole
	name := in
	switch first, rest := text.CutWord(in); {
	case in == "":
		return 0, refuseQuality(s, ErrSyntax)
	case in[len(in)-1] == '-':
		name, part = in[:len(in)-1], Low
	case in[len(in)-1] == '+':
		name, part = in[:len(in)-1], High
	case rest != "":
		if p, err := parts.Parse(first); err == nil && p != Whole {
			name, part = rest, p
		}
	}
	g, err := grades.Parse(name)
	q := g.Part(part)
	if err != nil || q == 0 {
		return 0, refuseQuality(s, ErrUnknown)
	}
	return q, nil
}

func refuseQuality(s string, reason error) error {
	return fault.Parse("quality", s, "", "a grade ("+grades.Allowed()+"), with Low, Average or High before it where it is split", reason)
}

// AppendText appends the spelling; the zero value is empty text.
func (q Quality) AppendText(b []byte) ([]byte, error) {
	if q == 0 {
		return b, nil
	}
	if !q.IsValid() {
		return b, &FieldError{Field: "quality", Value: q.String(), Allowed: "a grade and a part of it", Err: ErrUnknown}
	}
	return append(b, q.String()...), nil
}

// MarshalText gives the spelling; the zero value is empty text.
func (q Quality) MarshalText() ([]byte, error) { return q.AppendText(nil) }

// UnmarshalText reads what [ParseQuality] reads. On error the receiver is left
// as it was.
func (q *Quality) UnmarshalText(b []byte) error { return text.Unmarshal(q, b, ParseQuality) }

// Value gives the spelling for a database.
func (q Quality) Value() (driver.Value, error) { return text.Value(q) }

// Scan reads a quality from a database column that holds text.
func (q *Quality) Scan(src any) error { return text.Scan(q, "quality", src) }

// Tier is a tier of the trade, coarser than a quality. The zero Tier is not set.
// Tiers are ordered as integers, the better the higher.
type Tier uint8

// The tiers (published: mmb-2018-texture and ext-tamu-maturity-2018 for the five
// upper ones, uni-placing-notes for the lowest).
const (
	BelowStandard Tier = 1 + iota // Commercial, Utility, Cutter, Canner and no grade
	StandardTier                  // Standard
	SelectTier                    // Select, or Good
	LowChoice                     // Small in A maturity
	TopChoice                     // the upper two thirds of Choice
	PrimeTier                     // Prime
)

var tiers = text.Enum[Tier]{Kind: "tier", Names: []string{"", "below standard", "standard", "select", "low choice", "top choice", "prime"}}

// Tier returns the trade tier of the quality; the zero Tier for a quality that
// is not set. Choice without a part is counted as low choice.
func (q Quality) Tier() Tier {
	switch q.Grade() {
	case 0:
		return 0
	case Prime:
		return PrimeTier
	case Choice:
		if q.Part() >= Average {
			return TopChoice
		}
		return LowChoice
	case Select, Good:
		return SelectTier
	case Standard:
		return StandardTier
	default:
		return BelowStandard
	}
}

// IsValid reports whether t is one of the named tiers.
func (t Tier) IsValid() bool { return tiers.Valid(t) }

// String gives the name; "unset" for zero.
func (t Tier) String() string { return tiers.String(t) }

// ParseTier reads the name of a tier, as [Tier.String] writes it.
func ParseTier(s string) (Tier, error) { return tiers.Parse(s) }

// MarshalText gives the name; the zero value is empty text.
func (t Tier) MarshalText() ([]byte, error) { return tiers.Marshal(t) }

// UnmarshalText reads a name. On error the receiver is left as it was.
func (t *Tier) UnmarshalText(b []byte) error { return tiers.Unmarshal(t, b) }

// Value gives the name for a database.
func (t Tier) Value() (driver.Value, error) { return tiers.Value(t) }

// Scan reads a name from a database column that holds text.
func (t *Tier) Scan(src any) error { return tiers.Scan(t, src) }
