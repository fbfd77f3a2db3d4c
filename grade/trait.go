package grade

import "example.com/ribface/internal/text"

// Trait is what is measured or judged on a carcass: what a yield is solved for, what
// one carcass is better in than another, and what a member estimates. The zero Trait
// is not set.
type Trait uint8

// The traits. Those to TraitYield are what a grading card may ask for, in the order of
// a card; the others are compared in reasons alone.
const (
	TraitSkeletal    Trait = 1 + iota // skeletal maturity
	TraitLean                         // lean maturity
	TraitMaturity                     // overall maturity
	TraitMarbling                     // marbling
	TraitQuality                      // quality grade with its part
	TraitFat                          // fat over the rib, adjusted
	TraitPreliminary                  // preliminary yield grade
	TraitRibeye                       // ribeye area; the only measure that lowers the yield grade
	TraitKPH                          // kidney, pelvic and heart fat
	TraitWeight                       // hot carcass weight
	TraitYield                        // yield grade with its decimals
	TraitButtons                      // chine buttons
	TraitColor                        // color of the lean
	TraitTexture                      // texture of the lean
	TraitFirmness                     // firmness of the lean
	TraitDark                         // dark cutting
	TraitSite                         // fat or muscling at a site that is looked at on a walk
)

var traits = text.Enum[Trait]{Kind: "trait", Names: []string{"", "skeletal maturity", "lean maturity", "maturity", "marbling", "quality grade", "fat", "preliminary", "ribeye", "KPH", "weight", "yield", "chine buttons", "lean color", "lean texture", "firmness", "dark cutting", "site"}}

// String gives the name, as [FieldError] uses it; "unset" for zero.
func (t Trait) String() string { return traits.String(t) }

// MarshalText gives the name; the zero value is empty text.
func (t Trait) MarshalText() ([]byte, error) { return traits.Marshal(t) }

// UnmarshalText reads what [Trait.String] writes, in any case; empty text gives the
// zero value. On error the receiver is left as it was.
func (t *Trait) UnmarshalText(b []byte) error { return traits.Unmarshal(t, b) }
