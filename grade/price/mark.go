package price

import (
	"database/sql/driver"
	"iter"

	"example.com/ribface/grade"
	"example.com/ribface/internal/text"
	"example.com/ribface/maturity"
	"example.com/ribface/maturity/cite"
)

// Mark is what else has a price of its own: a defect, a kind of cattle or a
// program. The zero Mark is not set.
type Mark uint8

// The marks of the public weekly report (official: ams-ct155-2025-01-06).
const (
	DairyType         Mark = 1 + iota
	BullockOrStag          // stags are for the caller to name: no sex class says it
	Hardbone               // an old skeleton
	DarkCutter             // dark lean
	Over30Months           // of age at slaughter
	AllNatural             // a program
	NonHormoneTreated      // a program
)

var markNames = text.Enum[Mark]{Kind: "mark", Names: []string{"", "dairy-type", "bullock or stag", "hardbone", "dark cutter", "over 30 months", "all natural", "non-hormone-treated"}}

// Marks yields the marks.
func Marks() iter.Seq[Mark] {
	return func(yield func(Mark) bool) {
		for m := DairyType; m <= NonHormoneTreated; m++ {
			if !yield(m) {
				return
			}
		}
	}
}

// IsValid reports whether m is one of the marks.
func (m Mark) IsValid() bool { return markNames.Valid(m) }

// String gives the name; "unset" for zero.
func (m Mark) String() string { return markNames.String(m) }

// ParseMark reads the name of a mark, as [Mark.String] writes it.
func ParseMark(s string) (Mark, error) { return markNames.Parse(s) }

// MarshalText gives the name; the zero value is empty text.
func (m Mark) MarshalText() ([]byte, error) { return markNames.Marshal(m) }

// UnmarshalText reads a name. On error the receiver is left as it was.
func (m *Mark) UnmarshalText(b []byte) error { return markNames.Unmarshal(m, b) }

// Value gives the name for a database.
func (m Mark) Value() (driver.Value, error) { return markNames.Value(m) }

// Scan reads a name from a database column that holds text.
func (m *Mark) Scan(src any) error { return markNames.Scan(m, src) }

// marks is a set of marks, bit by bit.
type marks uint16

func (s marks) has(m Mark) bool { return s&(1<<m) != 0 }

// MarksOf returns the marks that can be read off an assessment, in order:
//
//   - bullock or stag: the sex class is bullock;
//   - hardbone: overall maturity C00 or older (from memory);
//   - dark cutter: the lean cuts dark in any degree;
//   - over 30 months: somebody looked at teeth or papers, and neither shows an
//     age under 30 months (published: checkoff-maturity-under30).
func MarksOf(a grade.Assessment) []Mark {
	var out []Mark
	seen := marksOf(&a)
	for m := range Marks() {
		if seen.has(m) {
			out = append(out, m)
		}
	}
	return out
}

func marksOf(a *grade.Assessment) (s marks) {
	c := &a.Carcass
	if c.Sex == grade.Bullock {
		s |= 1 << BullockOrStag
	}
	if a.Maturity >= maturity.C.At(0) {
		s |= 1 << Hardbone
	}
	if c.Lean.Dark != 0 {
		s |= 1 << DarkCutter
	}
	if (c.Maturity.Teeth != 0 || c.Maturity.Papers != 0) && !c.Maturity.Under30() {
		s |= 1 << Over30Months
	}
	return s
}

// why says, for each mark, by what rule it was read off an assessment.
var why = [...]struct {
	rule string
	cite cite.Citation
}{
	BullockOrStag: {"the sex class is bullock", cite.Citation{Standing: cite.Derived}},
	Hardbone:      {"overall maturity is C00 or older", cite.Citation{Standing: cite.Memory}},
	DarkCutter:    {"the lean cuts dark", cite.Citation{Standing: cite.Derived}},
	Over30Months:  {"neither teeth nor papers show an age under 30 months", cite.Citation{Standing: cite.Published, IDs: "checkoff-maturity-under30"}},
}

// Edge says which of two bands owns the edge that they share. The zero Edge is
// not set, and a grid with bands refuses it.
type Edge uint8

// The two owners.
const (
	EdgeLower Edge = 1 + iota // the band below: 900 lb stands in 600-900 lb
	EdgeUpper                 // the band above: 900 lb stands in 900-1,000 lb
)

var edgeNames = text.Enum[Edge]{Kind: "edge", Names: []string{"", "lower band", "upper band"}}

// String names the owner; "unset" for zero.
func (e Edge) String() string { return edgeNames.String(e) }

// MarshalText gives the owner; the zero value is empty text.
func (e Edge) MarshalText() ([]byte, error) { return edgeNames.Marshal(e) }

// UnmarshalText reads what [Edge.String] writes, in any case; empty text gives the
// zero value. On error the receiver is left as it was.
func (e *Edge) UnmarshalText(b []byte) error { return edgeNames.Unmarshal(e, b) }
