package sheet

import (
	"bytes"
	"encoding/json"
	"errors"
	"maps"
	"slices"
	"strconv"
	"strings"

	"example.com/ribface/grade"
	"example.com/ribface/internal/fault"
	"example.com/ribface/internal/text"
	"example.com/ribface/maturity"
)

// Mapping says what the columns of a sheet mean. It is data: it reads and writes
// itself as JSON, with the names in the tags below. The zero Mapping is a sheet as
// this package writes it: our own headings, commas between the cells, a point as
// decimal sign, nothing assumed and nothing rounded.
type Mapping struct {
	// Separator stands between the cells: "," or ";" or a tab or "|". Empty is ",".
	Separator string `json:"separator,omitzero"`

	// Decimal is the decimal sign of all numbers: "." or ",". Empty is ".". The other
	// of the two may group digits in threes, as a blank may.
	Decimal string `json:"decimal,omitzero"`

	// Missing are the marks for a measure or score that was not taken, in any case. A
	// blank cell is one always.
	Missing []string `json:"missing,omitempty"`

	// Columns gives for a heading of the sheet the name of our column, which has the
	// unit, as {"HCW": "weight_lb"}; see [Columns]. Every heading named has to stand in
	// the sheet, in any case. Without any, the headings are ours.
	Columns map[string]string `json:"columns,omitempty"`

	// Marbling is the scale of marbling that is a number. Without it a number is
	// refused, since 400 is Slight00 on one scale and Small00 on the other.
	Marbling grade.MarblingScale `json:"marbling,omitzero"`

	// Maturity says what maturity is besides a letter with points, as A60.
	Maturity MaturityScale `json:"maturity,omitzero"`

	// Assumed holds values that are taken wherever the sheet has none: no column, or a
	// missing cell. They are marked in [Row.Assumed] and in what is written.
	Assumed Assumed `json:"assumed,omitzero"`

	// Surplus is how a number goes that has more places than its unit holds: 4 for a
	// measure in a customary unit, none for a score. Unset refuses it. A metric measure
	// goes to the nearest 0.0001 of the customary unit always.
	Surplus grade.Rounding `json:"surplus,omitzero"`
}

// Assumed are values for a whole sheet. An unset one is not assumed.
type Assumed struct {
	Sex      grade.Sex      `json:"sex,omitzero"`
	Maturity maturity.Score `json:"maturity,omitzero"` // skeletal and lean
	KPH      grade.Share    `json:"kph,omitzero"`
	Weight   grade.Weight   `json:"weight,omitzero"` // hot carcass weight
}

// Check returns an error that tells of everything that is wrong with the mapping, each
// with its path, as "columns.HCW"; nil when nothing is.
func (m Mapping) Check() error {
	var all []error
	refuse := func(path, field, value, allowed string, err error) {
		all = append(all, &grade.FieldError{Path: path, Field: field, Value: value, Allowed: allowed, Err: err})
	}
	check := func(ok bool, path, field, value, allowed string, err error) {
		if !ok {
			refuse(path, field, value, allowed, err)
		}
	}
	check(slices.Contains([]string{"", ",", ";", "\t", "|"}, m.Separator), "separator", "separator", strconv.QuoteToASCII(m.Separator), "comma, semicolon, tab or bar", grade.ErrUnknown)
	check(slices.Contains([]string{"", ".", ","}, m.Decimal), "decimal", "decimal sign", strconv.QuoteToASCII(m.Decimal), "point or comma", grade.ErrUnknown)
	facts := map[string]string{}
	for _, heading := range slices.Sorted(maps.Keys(m.Columns)) {
		name := m.Columns[heading]
		c, path := known(name), "columns."+heading
		switch {
		case text.Trim(heading) == "":
			refuse(path, "heading", "", "a heading of the sheet", grade.ErrMissing)
		case c == nil || strings.HasPrefix(c.path, "result."):
			refuse(path, "column", fault.Plain(name), "a column of ours with its unit, as weight_lb", grade.ErrUnknown)
		case facts[c.Field] != "":
			refuse(path, c.Field, fault.Plain(heading), "one column for it; "+strconv.Quote(facts[c.Field])+" is one", grade.ErrRepeated)
		default:
			facts[c.Field] = heading
		}
	}
	check(m.Marbling == 0 || text.Named(m.Marbling), "marbling", "marbling scale", m.Marbling.String(), "a scale of package grade", grade.ErrUnknown)
	check(m.Maturity == 0 || m.Maturity.valid(), "maturity", "maturity scale", m.Maturity.String(), maturityAllowed, grade.ErrUnknown)
	check(m.Surplus == 0 || text.Named(m.Surplus), "surplus", "rounding", m.Surplus.String(), "a rounding of package grade", grade.ErrUnknown)
	lo, hi := grade.CarcassLimits().Least, grade.CarcassLimits().Most
	a := m.Assumed
	check(a.Sex == 0 || a.Sex.IsValid(), "assumed.sex", "sex class", a.Sex.String(), known("sex").Allowed, grade.ErrUnknown)
	check(a.Maturity == 0 || a.Maturity.IsValid(), "assumed.maturity", "maturity", a.Maturity.String(), "A00 to E100", grade.ErrRange)
	check(!a.KPH.IsSet() || a.KPH.Compare(lo.KPH) >= 0 && a.KPH.Compare(hi.KPH) <= 0, "assumed.kph", "KPH", a.KPH.String(), known("kph_pct").Allowed, grade.ErrRange)
	check(!a.Weight.IsSet() || a.Weight.Compare(lo.Weight) >= 0 && a.Weight.Compare(hi.Weight) <= 0, "assumed.weight", "weight", a.Weight.String(), known("weight_lb").Allowed, grade.ErrRange)
	return fault.Join(all...)
}

// UnmarshalJSON reads a mapping. A name that is not one of the mapping's is refused,
// and so is what [Mapping.Check] refuses. On error the receiver is left as it was.
func (m *Mapping) UnmarshalJSON(b []byte) error {
	type plain Mapping
	var p plain
	d := json.NewDecoder(bytes.NewReader(b))
	d.DisallowUnknownFields()
	err := d.Decode(&p)
	if err == nil {
		err = Mapping(p).Check()
	}
	if err != nil {
		var fe *grade.FieldError
		var pe *grade.ParseError
		if !errors.As(err, &fe) && !errors.As(err, &pe) {
			return &grade.FieldError{Field: "mapping", Value: strings.TrimPrefix(err.Error(), "json: "), Allowed: "an object with separator, decimal, missing, columns, marbling, maturity, assumed and surplus", Err: grade.ErrSyntax}
		}
		return err
	}
	*m = Mapping(p)
	return nil
}

// MaturityScale says what a maturity is besides a letter with points, as A60, which is
// read always. The zero MaturityScale is nothing besides.
type MaturityScale uint8

// MaturityNumbers is the scale of research reports, where A00 is 100 and B00 200.
const MaturityNumbers MaturityScale = 1

const firstLetterAt = 100

// LetterAt says that a letter alone stands for so many points into its group, 0 to 99.
// Other points give a scale that is refused.
func LetterAt(point int) MaturityScale {
	if point < 0 || point > 99 {
		return 2
	}
	return MaturityScale(firstLetterAt + point)
}

// valid reports whether the scale is MaturityNumbers or one of LetterAt.
func (s MaturityScale) valid() bool {
	_, ok := s.Point()
	return ok || s == MaturityNumbers
}

// Point returns the points that a letter alone stands for; ok is false where it stands
// for none.
func (s MaturityScale) Point() (point int, ok bool) {
	point = int(s) - firstLetterAt
	return max(point, 0), point >= 0 && point <= 99
}

// String gives "A00 = 100" or "letter at 50"; "letter with points" for zero.
func (s MaturityScale) String() string {
	point, ok := s.Point()
	switch {
	case s == 0:
		return "letter with points"
	case s == MaturityNumbers:
		return "A00 = 100"
	case ok:
		return "letter at " + strconv.Itoa(point)
	}
	return "maturity scale(" + strconv.Itoa(int(s)) + ")"
}

const maturityAllowed = `"A00 = 100", or "letter at" with points from 0 to 99`

func parseMaturityScale(s string) (MaturityScale, error) {
	in := text.Trim(s)
	for scale := range MaturityScale(firstLetterAt + 100) {
		if (scale == 0 || scale.valid()) && text.SameWords(in, scale.String()) {
			return scale, nil
		}
	}
	return 0, fault.Parse("maturity scale", s, "", maturityAllowed, fault.ErrUnknown)
}

// MarshalText gives the text of [MaturityScale.String]; the zero value is empty text.
func (s MaturityScale) MarshalText() ([]byte, error) {
	if s == 0 {
		return nil, nil
	}
	if !s.valid() {
		return nil, &grade.FieldError{Field: "maturity scale", Value: s.String(), Allowed: maturityAllowed, Err: grade.ErrUnknown}
	}
	return []byte(s.String()), nil
}

// UnmarshalText reads what [MaturityScale.String] writes, in any case; empty text gives
// the zero value. On error the receiver is left as it was.
func (s *MaturityScale) UnmarshalText(b []byte) error {
	return text.Unmarshal(s, b, parseMaturityScale)
}

// Assumptions says which values of a row were assumed and not seen: a set of
// AssumedSex, AssumedMaturity, AssumedKPH and AssumedWeight. The zero value is none.
type Assumptions uint8

// What may be assumed.
const (
	AssumedSex Assumptions = 1 << iota
	AssumedMaturity
	AssumedKPH
	AssumedWeight

	allAssumptions = 1<<iota - 1
)

var assumptionNames = [...]string{"sex", "maturity", "kph", "weight"}

// String gives the names with blanks between, as "maturity kph"; "none" for zero.
func (a Assumptions) String() string {
	switch b, err := a.append(nil); {
	case err != nil:
		return a.odd()
	case a != 0:
		return string(b)
	}
	return "none"
}

func (a Assumptions) odd() string { return "assumed(" + strconv.Itoa(int(a)) + ")" }

const assumptionsAllowed = "sex, maturity, kph and weight, with blanks between"

func parseAssumptions(s string) (Assumptions, error) {
	var a Assumptions
	if text.SameWords(s, "none") {
		return 0, nil
	}
	words := strings.Fields(s)
	for _, word := range words {
		i := slices.Index(assumptionNames[:], strings.ToLower(word))
		if i < 0 {
			return 0, fault.Parse("assumed", s, word, assumptionsAllowed, fault.ErrUnknown)
		}
		a |= 1 << i
	}
	if len(words) == 0 {
		return 0, fault.Parse("assumed", s, "", assumptionsAllowed, fault.ErrSyntax)
	}
	return a, nil
}

// MarshalText gives the names; the zero value is empty text.
func (a Assumptions) MarshalText() ([]byte, error) { return a.append(nil) }

// append appends the names, nothing for zero.
func (a Assumptions) append(b []byte) ([]byte, error) {
	if a > allAssumptions {
		return b, &grade.FieldError{Field: "assumed", Value: a.odd(), Allowed: assumptionsAllowed, Err: grade.ErrUnknown}
	}
	if a == 0 {
		return b, nil
	}
	from := len(b)
	for i, name := range assumptionNames {
		if a&(1<<i) == 0 {
			continue
		}
		if len(b) > from {
			b = append(b, ' ')
		}
		b = append(b, name...)
	}
	return b, nil
}

// UnmarshalText reads what [Assumptions.String] writes, in any case; empty text gives
// the zero value. On error the receiver is left as it was.
func (a *Assumptions) UnmarshalText(b []byte) error { return text.Unmarshal(a, b, parseAssumptions) }
