package grade

import (
	"database/sql/driver"
	"iter"

	"example.com/ribface/internal/fault"
	"example.com/ribface/internal/text"
	"example.com/ribface/maturity"
)

// Carcass is the evidence on one ribbed beef carcass: what a person sees and
// measures. The zero Carcass has nothing set, and every computation refuses it
// by the first missing field.
type Carcass struct {
	Sex      Sex               `json:"sex,omitzero"`      // sex class
	Maturity maturity.Evidence `json:"maturity,omitzero"` // skeletal and lean maturity, teeth and papers
	Marbling Marbling          `json:"marbling,omitzero"` // in the ribeye between ribs 12 and 13
	Lean     Lean              `json:"lean,omitzero"`     // firmness, dark cutting, color and texture
	Measures Measures          `json:"measures,omitzero"` // fat as measured, ribeye, KPH, weight

	// FatAdjust is added to the measured fat for unusual fat on the rest of the
	// carcass, and is negative where the rest is trimmer (official:
	// cfr-1965-53-p26 (u)); 0.1 to 0.2 in is usual (published:
	// ga-2004-yield-tutorial). Leave it unset when Measures.Fat is adjusted
	// already.
	FatAdjust Thickness `json:"fat_adjust,omitzero"`
}

// UnmarshalJSON reads an object as the package says under Encodings.
func (c *Carcass) UnmarshalJSON(b []byte) error { return text.Struct(b, c) }

// Adjusted returns the measures with the fat adjustment added in. Measures that are
// missing or impossible, before or after, give an error that names each.
func (c Carcass) Adjusted() (Measures, error) {
	m := c.Measures
	var adjust error
	if c.FatAdjust.n != 0 {
		adjust = thicknesses.check("fat_adjust", "fat adjustment", c.FatAdjust.n, -maxFat, maxFat)
	}
	if err := fault.Join(fault.At("measures", "", m.Check()), adjust); err != nil {
		return Measures{}, err
	}
	m.Fat = ThicknessUnits(m.Fat.Units() + c.FatAdjust.Units())
	if err := thicknesses.check("fat_adjust", "adjusted fat", m.Fat.n, minFat, maxFat); err != nil {
		return Measures{}, err
	}
	return m, nil
}

// Sex is the sex class of a carcass (official: cfr-54-103). The zero Sex is not
// set.
type Sex uint8

// The five sex classes. Steers and heifers are open to every grade (published:
// export-classes); cows to all but Prime (official: cfr-1965-53-prime); bullocks
// to Prime, Choice, Select, Standard and Utility, by the lines of group A
// (published: export-classes, tamu-ansc627-2015); bulls to none (published:
// export-classes).
const (
	Steer Sex = 1 + iota
	Heifer
	Cow
	Bullock
	Bull
)

// The letters and plurals are common practice, no source. B is refused: it may be a
// bullock or a bull.
var sexes = text.Enum[Sex]{Kind: "sex class", Names: []string{"", "steer", "heifer", "cow", "bullock", "bull"}, Also: []text.Alias[Sex]{
	{Name: "S", Value: Steer}, {Name: "steers", Value: Steer}, {Name: "H", Value: Heifer}, {Name: "heifers", Value: Heifer},
	{Name: "C", Value: Cow}, {Name: "cows", Value: Cow}, {Name: "bullocks", Value: Bullock}, {Name: "bulls", Value: Bull},
}}

// Sexes yields the sex classes.
func Sexes() iter.Seq[Sex] { return sexes.All() }

// IsValid reports whether s is one of the five classes.
func (s Sex) IsValid() bool { return s-1 < Bull }

// String gives the name; "unset" for zero.
func (s Sex) String() string { return sexes.String(s) }

// ParseSex reads the name of a sex class in any case, also in the plural, or the
// letter S, H or C (common practice, no source). B is refused, since it may be a
// bullock or a bull.
func ParseSex(s string) (Sex, error) { return sexes.Parse(s) }

// MarshalText gives the name; the zero value is empty text.
func (s Sex) MarshalText() ([]byte, error) { return sexes.Marshal(s) }

// UnmarshalText reads a name. On error the receiver is left as it was.
func (s *Sex) UnmarshalText(b []byte) error { return sexes.Unmarshal(s, b) }

// Value gives the name for a database.
func (s Sex) Value() (driver.Value, error) { return sexes.Value(s) }

// Scan reads a name from a database column that holds text.
func (s *Sex) Scan(src any) error { return sexes.Scan(s, src) }

// openTo has, for each class, a bit for every grade that it may have.
var openTo = [...]uint16{
	Steer:   1<<(Prime+1) - 1,
	Heifer:  1<<(Prime+1) - 1,
	Cow:     1<<Prime - 1,
	Bullock: 1<<Prime | 1<<Choice | 1<<Select | 1<<Good | 1<<Standard | 1<<Utility,
	Bull:    0,
}

// Lean is what is seen of the lean besides its marbling. The zero Lean means that
// firmness, color and texture were not looked at and that nothing is wrong.
type Lean struct {
	Firmness Firmness `json:"firmness,omitzero"` // zero: taken to go with the marbling
	Dark     DarkCut  `json:"dark,omitzero"`     // zero: no dark cutter
	Color    Color    `json:"color,omitzero"`    // zero: not looked at; moves no grade
	Texture  Texture  `json:"texture,omitzero"`  // zero: not looked at; moves no grade

	// BelowCutter is the judge's own finding that the carcass is below the
	// minimum of Cutter. No minimum is published, so it is never inferred; it
	// turns a carcass that meets nothing above Cutter into Canner.
	BelowCutter bool `json:"below_cutter,omitzero"`
}

// Firmness is the firmness of the lean. The zero Firmness was not looked at; the
// lines of the grade chart assume that firmness goes with marbling (published:
// tamu-ansc627-2015). The firmer is the higher integer.
type Firmness uint8

// The terms for firmness, softest first (the order is derived from the terms in
// use).
const (
	VerySoft Firmness = 1 + iota
	Soft
	ModeratelySoft
	SlightlySoft
	SlightlyFirm
	ModeratelyFirm
	Firm
)

var firmnesses = text.Enum[Firmness]{Kind: "firmness", Names: []string{"", "very soft", "soft", "moderately soft", "slightly soft", "slightly firm", "moderately firm", "firm"}}

// IsValid reports whether f is one of the seven terms.
func (f Firmness) IsValid() bool { return firmnesses.Valid(f) }

// String gives the term; "unset" for zero.
func (f Firmness) String() string { return firmnesses.String(f) }

// ParseFirmness reads a term as [Firmness.String] writes it, in any case.
func ParseFirmness(s string) (Firmness, error) { return firmnesses.Parse(s) }

// MarshalText gives the term; the zero value is empty text.
func (f Firmness) MarshalText() ([]byte, error) { return firmnesses.Marshal(f) }

// UnmarshalText reads a term. On error the receiver is left as it was.
func (f *Firmness) UnmarshalText(b []byte) error { return firmnesses.Unmarshal(f, b) }

// Value gives the term for a database.
func (f Firmness) Value() (driver.Value, error) { return firmnesses.Value(f) }

// Scan reads a term from a database column that holds text.
func (f *Firmness) Scan(src any) error { return firmnesses.Scan(f, src) }

// DarkCut says how dark a dark-cutting carcass is, as the share that it loses of
// the greatest reduction allowed. The zero DarkCut is no dark cutter.
//
// The standard gives only the greatest reduction: one full grade for a carcass
// that would be Prime, Choice or Select, half a grade for Standard or
// Commercial, none below (official: cfr-1965-53-p26, where Good stands for
// Select). One third, two thirds and the whole of it are taught (from memory).
type DarkCut uint8

// The steps of dark cutting.
const (
	DarkThird     DarkCut = 1 + iota // one third of the greatest reduction
	DarkTwoThirds                    // two thirds of it
	DarkFull                         // the whole of it
)

var darkCuts = text.Enum[DarkCut]{Kind: "dark cut", Names: []string{"", "one third", "two thirds", "full"}, Zero: "none", Also: []text.Alias[DarkCut]{
	{Name: "1/3", Value: DarkThird}, {Name: "third", Value: DarkThird}, {Name: "a third", Value: DarkThird}, {Name: "2/3", Value: DarkTwoThirds},
}}

// IsValid reports whether d is one of the three steps; the zero value is not.
func (d DarkCut) IsValid() bool { return darkCuts.Valid(d) }

// String gives the step; "none" for zero.
func (d DarkCut) String() string { return darkCuts.String(d) }

// ParseDarkCut reads a step as [DarkCut.String] writes it, in any case, or "none".
// Also read: "1/3", "third", "a third" and "2/3".
func ParseDarkCut(s string) (DarkCut, error) { return darkCuts.Parse(s) }

// MarshalText gives the step; the zero value is empty text.
func (d DarkCut) MarshalText() ([]byte, error) { return darkCuts.Marshal(d) }

// UnmarshalText reads what [ParseDarkCut] reads; empty text gives zero. On error
// the receiver is left as it was.
func (d *DarkCut) UnmarshalText(b []byte) error { return darkCuts.Unmarshal(d, b) }

// Value gives the step for a database.
func (d DarkCut) Value() (driver.Value, error) { return darkCuts.Value(d) }

// Scan reads a step from a database column that holds text.
func (d *DarkCut) Scan(src any) error { return darkCuts.Scan(d, src) }
