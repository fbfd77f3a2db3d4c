package price

import (
	"database/sql/driver"
	"iter"

	"example.com/ribface/grade"
	"example.com/ribface/internal/text"
	"example.com/ribface/maturity"
	"example.com/ribface/maturity/cite"
)

// Attribute is a property of a carcass that a price list pays or docks for, besides
// tier, yield and weight: a defect, a kind of cattle or a program. The zero Attribute is
// not set.
type Attribute uint8

// The attributes of the public weekly report (official: ams-ct155-2025-01-06).
const (
	DairyType         Attribute = 1 + iota
	BullockOrStag               // stags are for the caller to name: no sex class says it
	Hardbone                    // an old skeleton
	DarkCutter                  // dark lean
	Over30Months                // of age at slaughter
	AllNatural                  // a program
	NonHormoneTreated           // a program
)

var attributeNames = text.Enum[Attribute]{Kind: "attribute", Names: []string{"", "dairy-type", "bullock or stag", "hardbone", "dark cutter", "over 30 months", "all natural", "non-hormone-treated"}}

// Attributes yields the attributes.
func Attributes() iter.Seq[Attribute] { return attributeNames.All() }

// IsValid reports whether a is one of the attributes.
func (a Attribute) IsValid() bool { return attributeNames.Valid(a) }

// String gives the name; "unset" for zero.
func (a Attribute) String() string { return attributeNames.String(a) }

// ParseAttribute reads the name of an attribute, as [Attribute.String] writes it.
func ParseAttribute(s string) (Attribute, error) { return attributeNames.Parse(s) }

// MarshalText gives the name; the zero value is empty text.
func (a Attribute) MarshalText() ([]byte, error) { return attributeNames.Marshal(a) }

// UnmarshalText reads a name. On error the receiver is left as it was.
func (a *Attribute) UnmarshalText(b []byte) error { return attributeNames.Unmarshal(a, b) }

// Value gives the name for a database.
func (a Attribute) Value() (driver.Value, error) { return attributeNames.Value(a) }

// Scan reads a name from a database column that holds text.
func (a *Attribute) Scan(src any) error { return attributeNames.Scan(a, src) }

// attributes is a set of attributes, bit by bit.
type attributes uint16

func (s attributes) has(m Attribute) bool { return s&(1<<m) != 0 }

// AttributesOf returns the attributes that can be read off an assessment, in order:
//
//   - bullock or stag: the sex class is bullock;
//   - hardbone: overall maturity C00 or older (from memory);
//   - dark cutter: the lean cuts dark in any degree;
//   - over 30 months: somebody looked at teeth or papers, and neither shows an
//     age under 30 months (published: checkoff-maturity-under30).
func AttributesOf(a grade.Assessment) []Attribute {
	var out []Attribute
	seen := attributesOf(&a)
	for m := range Attributes() {
		if seen.has(m) {
			out = append(out, m)
		}
	}
	return out
}

func attributesOf(a *grade.Assessment) (s attributes) {
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

// why says, for each attribute, by what rule it was read off an assessment.
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
