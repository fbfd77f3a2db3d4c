package grade

import (
	"cmp"
	"database/sql/driver"
	"iter"
	"strconv"

	"example.com/ribface/internal/text"
	"example.com/ribface/internal/text/scale"
)

// Degree is a degree of marbling. The zero Degree is not set.
type Degree uint8

// The degrees from least to most (published: ext-usu-2005-03 for the ten,
// ext-ndsu-quality for the nine above Devoid). One source that puts a degree
// above Abundant instead (enc-marbling) is not followed.
const (
	Devoid             Degree = 1 + iota
	PracticallyDevoid         // short PD
	Traces                    // short Tr
	Slight                    // short Sl
	Small                     // short Sm
	Modest                    // short Mt, never Md
	Moderate                  // short Md, never Mt
	SlightlyAbundant          // short SlAb
	ModeratelyAbundant        // short MAb
	Abundant                  // short Ab
)

// The short forms Sl, Sm, Mt and Md are published (ttu-maturity-dental). PD, Tr,
// SlAb, MAb and Ab are met in capitals on a page of unknown author (common practice:
// scraped-abbreviations). Devoid has no short form.
var (
	degrees = text.Enum[Degree]{Kind: "degree of marbling", Names: []string{"", "Devoid", "Practically Devoid", "Traces", "Slight", "Small", "Modest", "Moderate", "Slightly Abundant", "Moderately Abundant", "Abundant"}}
	marbled = scale.Scale{
		Kind:  "marbling",
		Short: []string{"", "Devoid", "PD", "Tr", "Sl", "Sm", "Mt", "Md", "SlAb", "MAb", "Ab"},
		Long:  degrees.Names,
		Extra: []text.Alias[uint8]{{Name: "MdAb", Value: uint8(ModeratelyAbundant)}},
	}
)

// Degrees yields the degrees from least to most.
func Degrees() iter.Seq[Degree] { return degrees.All() }

// At returns the marbling so many points into the degree, 0 to 100. Points
// outside that range give an invalid Marbling that every computation refuses by
// field name.
func (d Degree) At(points int) Marbling { return Marbling(marbled.At(int(d), points)) }

// IsValid reports whether d is one of the ten degrees.
func (d Degree) IsValid() bool { return degrees.Valid(d) }

// String gives the name, as "Slightly Abundant"; "unset" for zero.
func (d Degree) String() string { return degrees.String(d) }

// ParseDegree reads the name of a degree, as [Degree.String] writes it.
func ParseDegree(s string) (Degree, error) { return degrees.Parse(s) }

// MarshalText gives the name; the zero value is empty text.
func (d Degree) MarshalText() ([]byte, error) { return degrees.Marshal(d) }

// UnmarshalText reads a name. On error the receiver is left as it was.
func (d *Degree) UnmarshalText(b []byte) error { return degrees.Unmarshal(d, b) }

// Value gives the name for a database.
func (d Degree) Value() (driver.Value, error) { return degrees.Value(d) }

// Scan reads a name from a database column that holds text.
func (d *Degree) Scan(src any) error { return degrees.Scan(d, src) }

// Marbling is a point on the marbling scale: a degree and points into it, 0 to
// 100. Point 100 of a degree and point 00 of the next are one, written as the
// later. The highest is Abundant 100. The zero Marbling is not set.
//
// Marblings are ordered as integers, so < and == compare them; one that is not
// valid sorts before every valid one.
type Marbling int16

// IsValid reports whether m is a point from Devoid 00 to Abundant 100.
func (m Marbling) IsValid() bool { return marbled.IsValid(int16(m)) }

// Degree returns the degree, or the zero Degree when m is not valid.
func (m Marbling) Degree() Degree {
	d, _ := marbled.Split(int16(m))
	return Degree(d)
}

// Points returns the points into the degree, 0 to 99, or 100 for the top of
// Abundant alone. A marbling that is not valid gives 0.
func (m Marbling) Points() int {
	_, p := marbled.Split(int16(m))
	return p
}

// Compare returns -1, 0 or +1 as m is less than, equal to or more than n. One
// that is not valid comes before every valid one.
func (m Marbling) Compare(n Marbling) int { return cmp.Compare(m, n) }

// Check returns an error that names the field when m is not set or not valid.
func (m Marbling) Check(field string) error { return marbled.Check(field, int16(m)) }

// String gives the short canonical spelling, as Sm40 or SlAb05; "unset" for
// zero. One made from impossible points shows what was asked, as Sm(140).
func (m Marbling) String() string {
	if m == 0 {
		return "unset"
	}
	return string(marbled.Append(nil, int16(m)))
}

// ParseMarbling reads a degree and two digits, as Sm40, in any case and with or
// without blanks between. Also read: the full name of the degree, as "small 40" and
// "Slightly Abundant 40"; MdAb for Moderately Abundant; 0 for 00; and 100 for the end
// of a degree, so that Sm100 is Mt00. Md is Moderate and Mt is Modest.
func ParseMarbling(s string) (Marbling, error) {
	v, err := marbled.Parse(s)
	return Marbling(v), err
}

// MustParseMarbling is [ParseMarbling] for hard-coded text; it panics on an
// error.
func MustParseMarbling(s string) Marbling {
	m, err := ParseMarbling(s)
	if err != nil {
		panic(err)
	}
	return m
}

// AppendText appends the canonical spelling; the zero value is empty text.
func (m Marbling) AppendText(b []byte) ([]byte, error) {
	if m != 0 {
		if err := m.Check(marbled.Kind); err != nil {
			return b, err
		}
	}
	return marbled.Append(b, int16(m)), nil
}

// MarshalText gives the canonical spelling; the zero value is empty text.
func (m Marbling) MarshalText() ([]byte, error) { return m.AppendText(nil) }

// UnmarshalText reads what [ParseMarbling] reads; empty text gives the zero
// value. On error the receiver is left as it was.
func (m *Marbling) UnmarshalText(b []byte) error { return text.Unmarshal(m, b, ParseMarbling) }

// Value gives the canonical spelling for a database.
func (m Marbling) Value() (driver.Value, error) { return text.Value(m) }

// Scan reads a marbling from a database column that holds text.
func (m *Marbling) Scan(src any) error { return text.Scan(m, marbled.Kind, src) }

// MarblingScale names one of the two numeric scales on which marbling is
// printed. A bare 400 is Small00 on one and Slight00 on the other, so the caller
// names the scale. The zero MarblingScale is not set.
type MarblingScale uint8

// The numeric scales.
const (
	// Slight300 has Slight00 = 300 and Small00 = 400, from Devoid00 = 0 to the
	// top of Abundant = 1000 (published from Practically Devoid00 = 100 to
	// Abundant00 = 900: nbqa-2016-cows-t10). It is the scale of 1 to 9.9 adopted
	// in 2022 (published: bif-marbling) times 100.
	Slight300 MarblingScale = 1 + iota
	// Slight400 has Slight00 = 400 and Small00 = 500: the older scale, one
	// degree higher (published for Slight to Slightly Abundant: tas-2023-txad068,
	// heifers-pmc7584274-t11; from memory for Abundant).
	Slight400
)

var marblingScales = text.Enum[MarblingScale]{Kind: "marbling scale", Names: []string{"", "Slight00 = 300", "Slight00 = 400"}}

// String names the scale by its value for Slight00; "unset" for zero.
func (s MarblingScale) String() string { return marblingScales.String(s) }

// MarshalText gives the name; the zero value is empty text.
func (s MarblingScale) MarshalText() ([]byte, error) { return marblingScales.Marshal(s) }

// UnmarshalText reads what [MarblingScale.String] writes, in any case; empty text gives the
// zero value. On error the receiver is left as it was.
func (s *MarblingScale) UnmarshalText(b []byte) error { return marblingScales.Unmarshal(s, b) }

// offset is what is added to a number on the scale to get a Marbling, which
// counts Devoid00 as 100.
func (s MarblingScale) offset() int { return 200 - 100*int(s) }

// Marbling returns the marbling that has number n on the scale.
func (s MarblingScale) Marbling(n int) (Marbling, error) {
	if err := marblingScales.Check("marbling scale", s); err != nil {
		return 0, err
	}
	lo, hi := 100-s.offset(), 1100-s.offset()
	if n < lo || n > hi {
		return 0, &FieldError{Field: "marbling number", Value: strconv.Itoa(n), Allowed: strconv.Itoa(lo) + " to " + strconv.Itoa(hi) + " on the scale with " + s.String(), Err: ErrRange}
	}
	return Marbling(n + s.offset()), nil
}

// Number returns the number of the marbling on the scale; ok is false when
// either is not valid.
func (m Marbling) Number(s MarblingScale) (n int, ok bool) {
	if !m.IsValid() || !marblingScales.Valid(s) {
		return 0, false
	}
	return int(m) - s.offset(), true
}
