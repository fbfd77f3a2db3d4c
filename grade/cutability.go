package grade

import (
	"example.com/ribface/internal/text"
	"example.com/ribface/internal/text/fixed"
	"github.com/shopspring/decimal"
)

// The coefficients of the retail-cut equation, in 1e-8 percent per 0.0001 of a
// unit.
const (
	retailBase   = 5_134_000_000
	retailFat    = 57_800
	retailKPH    = 4_620
	retailWeight = 93
	retailRibeye = 7_400
)

// RetailCuts returns the share of boneless, closely trimmed retail cuts from the
// round, loin, rib and chuck
//
//	51.34 - 5.78 fat - 0.462 KPH - 0.0093 weight + 0.74 ribeye
//
// in percent of carcass weight, exactly (published: ext-montana-2017). Other retail
// percentages in print have other end points and are not comparable. The errors
// are those of [Measures.Yield].
func (m Measures) RetailCuts() (decimal.Decimal, error) {
	if err := m.Check(); err != nil {
		return decimal.Zero, err
	}
	n := retailBase - retailFat*m.Fat.Units() - retailKPH*m.KPH.Units() - retailWeight*m.Weight.Units() + retailRibeye*m.Ribeye.Units()
	return YieldUnits(n).Decimal(), nil
}

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

// Class returns the class 1 to 5 of a retail share in percent by the table, with the
// share rounded half up to a tenth of a percent as the tables print it (the rounding
// is derived). ok is false for a share in a gap of the table, below 0% or over
// 100%, and for a table that is not set. The class is near to the yield grade
// and not always equal to it: the two equations weigh carcass weight
// differently.
func (t RetailTable) Class(share decimal.Decimal) (class int, ok bool) {
	_, near := fixed.Decimal(share.Coefficient(), share.Exponent()) // far ones are slow to compare
	if !retailNames.Valid(t) || !near || share.IsNegative() || share.GreaterThan(decimal.New(100, 0)) {
		return 0, false
	}
	tenths := share.Shift(1).Round(0).IntPart() // from 0 on, away from zero is up
	for i, c := range retailTables[t] {
		if tenths >= c.from && tenths <= c.to {
			return i + 1, true
		}
	}
	return 0, false
}

var retailNames = text.Enum[RetailTable]{Kind: "retail table", Names: []string{"", "asweb-121", "aged-yield-slides", "uni-slaughter-handout"}}

// String names the table by its source; "unset" for zero.
func (t RetailTable) String() string { return retailNames.String(t) }

// MarshalText gives the name; the zero value is empty text.
func (t RetailTable) MarshalText() ([]byte, error) { return retailNames.Marshal(t) }

// UnmarshalText reads what [RetailTable.String] writes, in any case; empty text gives the
// zero value. On error the receiver is left as it was.
func (t *RetailTable) UnmarshalText(b []byte) error { return retailNames.Unmarshal(t, b) }
