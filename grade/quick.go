package grade

import (
	"database/sql/driver"
	"strings"

	"example.com/ribface/internal/fault"
	"example.com/ribface/internal/fixed"
	"example.com/ribface/internal/text"
	"github.com/shopspring/decimal"
)

// Preliminary returns the preliminary yield grade of a thickness of fat: 2.00 for
// no fat, and 0.25 for every 0.1 in (published: ext-sdsu-yield,
// aged-quality-yield-slides), so that every 0.4 in is one grade. It is the start
// of the quick method and of the work by eye, and no yield grade. Fat that cannot be
// gives a value that [FatForPreliminary] refuses.
func (t Thickness) Preliminary() QuickYield { return quickBase + QuickYield(yieldFat)*QuickYield(t) }

// FatForPreliminary returns the thickness of fat that has the preliminary yield
// grade p, to the nearest 0.0001 in. A p below 2 or with fat beyond 3 in gives a
// [*FieldError].
func FatForPreliminary(p QuickYield) (Thickness, error) {
	if p < quickBase || p > maxFat.Preliminary() {
		return 0, &FieldError{Field: "preliminary yield grade", Value: p.String(), Allowed: quickBase.String() + " to " + maxFat.Preliminary().String(), Err: ErrRange}
	}
	return Thickness((p - quickBase + yieldFat/2) / yieldFat), nil
}

// RequiredRibeye returns the ribeye area that the quick method expects of a hot
// carcass weight: 11.0 sq in at 600 lb and 0.3 for every 25 lb, in steps of 0.1
// (published: ext-sdsu-yield). Between the printed steps, and below 600 lb, the
// step is the lower one (derived; it gives all four printed bins). A weight that
// is missing, negative or over 1,800 lb gives a [*FieldError].
func (w Weight) RequiredRibeye() (Area, error) {
	if err := weights.check("weight", int32(w), 1, int32(maxWeight)); err != nil {
		return 0, err
	}
	return w.required(), nil
}

func (w Weight) required() Area {
	// 3 tenths of a square inch per 25 lb, toward minus infinity.
	n := 3 * int64(w-600*Pound)
	d := int64(25 * Pound)
	tenths := n / d
	if n%d < 0 {
		tenths--
	}
	return Area(110+tenths) * (SquareInch / 10)
}

// QuickYield is a result of the quick method, in units of 1e-8 of a grade. It is
// a type of its own, without a whole grade, because the quick method never sets a
// grade: it runs 0.02 to 0.10 over the equation on the federal borderline
// carcasses and puts eight of those nine one grade worse. The zero QuickYield is
// the value 0.
type QuickYield int64

// String gives the value in its shortest form, as "2.16".
func (q QuickYield) String() string { return fixed.String(int64(q), yieldPlaces) }

// ParseQuickYield reads a decimal number with at most 8 places, as "2.16".
func ParseQuickYield(s string) (QuickYield, error) {
	n, err := fixed.Parse(s, yieldPlaces)
	if err != nil {
		return 0, fault.Parse("quick yield", s, "", "a number with at most 8 places", err)
	}
	return QuickYield(n), nil
}

// AppendText appends the value in its shortest form.
func (q QuickYield) AppendText(b []byte) ([]byte, error) {
	return fixed.Append(b, int64(q), yieldPlaces), nil
}

// MarshalText gives the value in its shortest form.
func (q QuickYield) MarshalText() ([]byte, error) { return q.AppendText(nil) }

// UnmarshalText reads what [ParseQuickYield] reads. On error the receiver is left
// as it was.
func (q *QuickYield) UnmarshalText(b []byte) error {
	return text.UnmarshalSet(q, b, ParseQuickYield)
}

// UnmarshalJSON reads the text in quotes, or a bare number. On error the
// receiver is left as it was.
func (q *QuickYield) UnmarshalJSON(b []byte) error { return text.UnmarshalJSON(q, b) }

// Value gives the text for a database.
func (q QuickYield) Value() (driver.Value, error) { return text.Value(q) }

// Scan reads a database column that holds text.
func (q *QuickYield) Scan(src any) error { return text.Scan(q, "quick yield", src) }

// Decimal returns the value as a decimal, exactly.
func (q QuickYield) Decimal() decimal.Decimal { return Yield(q).Decimal() }

// Quick is the quick method step by step, as it is taught for work without a
// calculator.
type Quick struct {
	Preliminary QuickYield // from the fat
	Required    Area       // ribeye that the weight asks for
	Ribeye      QuickYield // 0.3 off for every square inch over, on for every one under
	KPH         QuickYield // 0.1 for every 0.5% over or under 3.5%
	Total       QuickYield // the sum; an estimate that never sets a grade
}

// The quick method's constants: base 2.00, 0.3 per square inch (in 1e-8 of a
// grade per 0.0001 sq in), 3.5% KPH at no change.
const (
	quickBase   QuickYield = 200_000_000
	quickRibeye            = 3_000
	quickKPH               = 3*OnePercent + OnePercent/2
)

// Quick returns the quick method of the yield grade: preliminary grade from the
// fat, 0.3 per square inch against the required ribeye, 0.1 per half percent of
// kidney, pelvic and heart fat against 3.5% (published: ext-sdsu-yield). It
// differs from the federal equation and never sets a grade; [Measures.Yield]
// does. The errors are those of [Measures.Yield].
func (m Measures) Quick() (Quick, error) {
	if err := m.Check(); err != nil {
		return Quick{}, err
	}
	q := Quick{Preliminary: m.Fat.Preliminary(), Required: m.Weight.required()}
	q.Ribeye = quickRibeye * QuickYield(q.Required-m.Ribeye)
	q.KPH = yieldKPH * QuickYield(m.KPH-quickKPH)
	q.Total = q.Preliminary + q.Ribeye + q.KPH
	return q, nil
}

// Unusual returns a note for every measure that is possible and yet outside the
// range in which fed cattle are met: fat over 2 in, ribeye under 6 or over 22 sq
// in, KPH over 6%, weight under 400 or over 1,300 lb (derived from the published
// ranges of the audits). It returns nil for usual measures.
func (m Measures) Unusual() []string {
	var notes []string
	note := func(q *quantity, name string, n, lo, hi int32) {
		if n < lo || n > hi {
			notes = append(notes, name+" "+q.string(n)+" is outside the usual "+q.string(lo)+" to "+q.string(hi))
		}
	}
	note(&thicknesses, "fat", int32(m.Fat), 0, int32(2*Inch))
	note(&areas, "ribeye", int32(m.Ribeye), int32(6*SquareInch), int32(22*SquareInch))
	note(&shares, "KPH", int32(m.KPH), 0, int32(6*OnePercent))
	note(&weights, "weight", int32(m.Weight), int32(400*Pound), int32(1300*Pound))
	return notes
}

// RetailShare is a share of boneless, closely trimmed retail cuts from the round,
// loin, rib and chuck, in units of 1e-8 percent of carcass weight. The zero
// RetailShare is 0 percent.
type RetailShare int64

// The coefficients of the retail-cut equation, in 1e-8 percent per 0.0001 of a
// unit.
const (
	retailBase   = 5_134_000_000
	retailFat    = 57_800
	retailKPH    = 4_620
	retailWeight = 93
	retailRibeye = 7_400
)

// RetailCuts returns the share of boneless, closely trimmed retail cuts
//
//	51.34 - 5.78 fat - 0.462 KPH - 0.0093 weight + 0.74 ribeye
//
// in percent of carcass weight (published: ext-montana-2017). Other retail
// percentages in print have other end points and are not comparable. The errors
// are those of [Measures.Yield].
func (m Measures) RetailCuts() (RetailShare, error) {
	if err := m.Check(); err != nil {
		return 0, err
	}
	return retailBase - retailFat*RetailShare(m.Fat) - retailKPH*RetailShare(m.KPH) - retailWeight*RetailShare(m.Weight) + retailRibeye*RetailShare(m.Ribeye), nil
}

// String gives the share in percent in its shortest form, as "50.88109%".
func (s RetailShare) String() string { return fixed.String(int64(s), yieldPlaces) + "%" }

// ParseRetailShare reads a number of percent with at most 8 places, with or
// without a percent sign, as "50.88109%".
func ParseRetailShare(s string) (RetailShare, error) {
	n, err := fixed.Parse(strings.TrimSuffix(s, "%"), yieldPlaces)
	if err != nil {
		return 0, fault.Parse("retail share", s, "", "a number with at most 8 places; units: %", err)
	}
	return RetailShare(n), nil
}

// AppendText appends the share in its shortest form, as "50.88109%".
func (s RetailShare) AppendText(b []byte) ([]byte, error) {
	return append(fixed.Append(b, int64(s), yieldPlaces), '%'), nil
}

// MarshalText gives the share in its shortest form, as "50.88109%".
func (s RetailShare) MarshalText() ([]byte, error) { return s.AppendText(nil) }

// UnmarshalText reads what [ParseRetailShare] reads. On error the receiver is
// left as it was.
func (s *RetailShare) UnmarshalText(b []byte) error {
	return text.UnmarshalSet(s, b, ParseRetailShare)
}

// UnmarshalJSON reads the text in quotes, or a bare number of percent. On error
// the receiver is left as it was.
func (s *RetailShare) UnmarshalJSON(b []byte) error { return text.UnmarshalJSON(s, b) }

// Value gives the text for a database.
func (s RetailShare) Value() (driver.Value, error) { return text.Value(s) }

// Scan reads a database column that holds text.
func (s *RetailShare) Scan(src any) error { return text.Scan(s, "retail share", src) }

// Decimal returns the share in percent as a decimal, exactly.
func (s RetailShare) Decimal() decimal.Decimal { return Yield(s).Decimal() }

// RetailTable names a published table that sorts retail shares into classes 1 to
// 5. The tables disagree in the first decimal, so the caller names one. The zero
// RetailTable is not set.
type RetailTable uint8

// The published tables. The step is 2.3 percent per class in all three.
const (
	RetailGuide   RetailTable = 1 + iota // 52.4, 50.1, 47.8, 45.5 and over (published: asweb-121)
	RetailSlides                         // over 52.3; 50, 47.7, 45.4 and over (published: aged-yield-slides)
	RetailHandout                        // over 52.6; 50.3-52.3, 48.0-50.0, 45.7-47.7; under 45.4 (published: uni-slaughter-handout, with gaps)
)

// retailClass is one class of a table, in tenths of a percent, both ends allowed.
type retailClass struct{ from, to int64 }

var retailTables = [...][5]retailClass{
	RetailGuide:   {{524, 1000}, {501, 523}, {478, 500}, {455, 477}, {0, 454}},
	RetailSlides:  {{524, 1000}, {500, 523}, {477, 499}, {454, 476}, {0, 453}},
	RetailHandout: {{527, 1000}, {503, 523}, {480, 500}, {457, 477}, {0, 453}},
}

// Class returns the class 1 to 5 of the share by the table, with the share
// rounded half up to a tenth of a percent as the tables print it (the rounding
// is derived). ok is false for a share in a gap of the table, below 0% or over
// 100%, and for a table that is not set. The class is near to the yield grade
// and not always equal to it: the two equations weigh carcass weight
// differently.
func (s RetailShare) Class(t RetailTable) (class int, ok bool) {
	if !t.IsValid() || s < 0 || s > 100*RetailShare(OneGrade) {
		return 0, false
	}
	tenths := (int64(s) + 5_000_000) / 10_000_000
	for i, c := range retailTables[t] {
		if tenths >= c.from && tenths <= c.to {
			return i + 1, true
		}
	}
	return 0, false
}

var retailNames = text.Enum{Kind: "retail table", Names: []string{"", "asweb-121", "aged-yield-slides", "uni-slaughter-handout"}}

// IsValid reports whether t is one of the named tables.
func (t RetailTable) IsValid() bool { return retailNames.IsValid(int(t)) }

// String names the table by its source; "unset" for zero.
func (t RetailTable) String() string { return retailNames.String(int(t)) }

// ParseRetailTable reads the name of a table, as [RetailTable.String] writes it.
func ParseRetailTable(s string) (RetailTable, error) {
	v, err := retailNames.Parse(s)
	return RetailTable(v), err
}

// AppendText appends the name; the zero value is empty text.
func (t RetailTable) AppendText(b []byte) ([]byte, error) { return retailNames.Append(b, int(t)) }

// MarshalText gives the name; the zero value is empty text.
func (t RetailTable) MarshalText() ([]byte, error) { return t.AppendText(nil) }

// UnmarshalText reads what [ParseRetailTable] reads; empty text gives the zero value. On
// error the receiver is left as it was.
func (t *RetailTable) UnmarshalText(b []byte) error { return text.Unmarshal(t, b, ParseRetailTable) }

// Value gives the name for a database.
func (t RetailTable) Value() (driver.Value, error) { return text.Value(t) }

// Scan reads a name from a database column that holds text.
func (t *RetailTable) Scan(src any) error { return text.Scan(t, retailNames.Kind, src) }
