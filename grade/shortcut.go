package grade

import (
	"cmp"

	"example.com/ribface/internal/text/fixed"
)

// Preliminary returns the preliminary yield grade of a thickness of fat: 2.00 for
// no fat, and 0.25 for every 0.1 in (published: ext-sdsu-yield,
// aged-quality-yield-slides), so that every 0.4 in is one grade. It is the start
// of the shortcut method and of the work by eye, and no yield grade. Fat that was
// not taken gives a value that is not set, fat that cannot be one that
// [FatForPreliminary] refuses.
func (t Thickness) Preliminary() ShortcutYield {
	if !t.IsSet() {
		return ShortcutYield{}
	}
	return ShortcutYieldUnits(shortcutBase + yieldFat*count(t.n))
}

// FatForPreliminary returns the thickness of fat that has the preliminary yield
// grade p, to the nearest 0.0001 in. A p that is not set, below 2 or with fat beyond
// 3 in gives a [*FieldError].
func FatForPreliminary(p ShortcutYield) (Thickness, error) {
	most := ThicknessUnits(maxFat).Preliminary()
	e := &FieldError{Field: "preliminary yield grade", Allowed: "2 to " + most.String(), Err: ErrMissing}
	switch n := p.Units(); {
	case !p.IsSet():
		return Thickness{}, e
	case n < shortcutBase || n > most.Units():
		e.Value, e.Err = p.String(), ErrRange
		return Thickness{}, e
	default:
		return ThicknessUnits(fixed.Divide(n-shortcutBase, yieldFat, fixed.HalfUp)), nil
	}
}

// RequiredRibeye returns the ribeye area that the shortcut method expects of a hot
// carcass weight: 11.0 sq in at 600 lb and 0.3 for every 25 lb, in steps of 0.1
// (published: ext-sdsu-yield). Between the printed steps, and below 600 lb, the
// step is the lower one (derived; it gives all four printed bins). A weight that
// is missing or outside 100 to 1,800 lb gives a [*FieldError].
func (w Weight) RequiredRibeye() (Area, error) {
	if err := weights.check("weight", "weight", w.n, minWeight, maxWeight); err != nil {
		return Area{}, err
	}
	return w.required(), nil
}

func (w Weight) required() Area {
	// 3 tenths of a square inch per 25 lb, toward minus infinity.
	tenths, _ := fixed.FloorDiv(3*(w.Units()-600*unitOf), 25*unitOf)
	return AreaUnits((110 + tenths) * unitOf / 10)
}

// ShortcutYield is a result of the shortcut method, in units of 1e-8 of a grade. It
// is a type of its own, without a whole grade, because the shortcut method never
// sets a grade: it runs 0.02 to 0.10 over the equation on the federal borderline
// carcasses and puts eight of those nine one grade worse. The zero ShortcutYield is
// not set.
type ShortcutYield struct{ number[shortcutKind] }

// ShortcutGrades returns a shortcut yield of so many grades, to the nearest 1e-8. See
// [Grades].
func ShortcutGrades(f float64) ShortcutYield { return ShortcutYield{numberOf[shortcutKind](f)} }

// ShortcutYieldUnits returns a shortcut yield of n times 1e-8 of a grade.
func ShortcutYieldUnits(n int64) ShortcutYield {
	return ShortcutYield{number[shortcutKind]{keptGrades(n)}}
}

// ParseShortcutYield reads a decimal number, as "2.16". See [ParseYield].
func ParseShortcutYield(s string, surplus ...Rounding) (ShortcutYield, error) {
	r, err := rounding(surplus)
	if err != nil {
		return ShortcutYield{}, err
	}
	n, err := parseGrades(ShortcutYield{}.kind(), s, r)
	return ShortcutYield{number[shortcutKind]{n}}, err
}

// Compare returns -1, 0 or +1 as q is lower than, equal to or higher than r. One
// that is not set comes first.
func (q ShortcutYield) Compare(r ShortcutYield) int { return cmp.Compare(q.n, r.n) }

// Equal reports whether q == r.
func (q ShortcutYield) Equal(r ShortcutYield) bool { return q == r }

// Shortcut is the shortcut method step by step, as it is taught for work without a
// calculator.
type Shortcut struct {
	Preliminary ShortcutYield `json:"preliminary"` // from the fat
	Required    Area          `json:"required"`    // ribeye that the weight asks for
	Ribeye      ShortcutYield `json:"ribeye"`      // 0.3 off for every square inch over, on for every one under
	KPH         ShortcutYield `json:"kph"`         // 0.1 for every 0.5% over or under 3.5%
	Total       ShortcutYield `json:"total"`       // the sum; an estimate that never sets a grade
}

// The shortcut method's constants: base 2.00, 0.3 per square inch (in 1e-8 of a
// grade per 0.0001 sq in), 3.5% KPH at no change.
const (
	shortcutBase   = 200_000_000
	shortcutRibeye = 3_000
	shortcutKPH    = 35_000
)

// Shortcut returns the shortcut method of the yield grade: preliminary grade from
// the fat, 0.3 per square inch against the required ribeye, 0.1 per half percent of
// kidney, pelvic and heart fat against 3.5% (published: ext-sdsu-yield). It
// differs from the federal equation and never sets a grade; [Measures.Yield]
// does. The errors are those of [Measures.Yield].
func (m Measures) Shortcut() (Shortcut, error) {
	if err := m.Check(); err != nil {
		return Shortcut{}, err
	}
	need := m.Weight.required()
	fat := m.Fat.Preliminary()
	ribeye := shortcutRibeye * (need.Units() - m.Ribeye.Units())
	kph := yieldKPH * (m.KPH.Units() - shortcutKPH)
	return Shortcut{fat, need, ShortcutYieldUnits(ribeye), ShortcutYieldUnits(kph), ShortcutYieldUnits(fat.Units() + ribeye + kph)}, nil
}
