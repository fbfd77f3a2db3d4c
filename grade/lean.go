package grade

import (
	"database/sql/driver"

	"example.com/ribface/internal/text"
	"example.com/ribface/maturity/cite"
)

// Color is the color of the lean in the ribeye, by the terms of the standard. The
// zero Color was not looked at. The brighter is the higher integer. Color goes
// into lean maturity, which is found apart, and moves no grade by itself; the
// color of a dark cutter is a [DarkCut] and is not read as age (official:
// cfr-1965-53-p25).
type Color uint8

// The terms for color, darkest first. The order is derived from the terms and the
// maturity that they go with; see [Color.Cite] for where each comes from.
const (
	VeryDarkRed Color = 1 + iota
	DarkRed
	ModeratelyDarkRed
	SlightlyDarkRed
	SlightlyLightRed
	ModeratelyLightRed
	LightRed
	LightCherryRed
)

var colors = text.Enum[Color]{Kind: "lean color", Names: []string{"", "very dark red", "dark red", "moderately dark red", "slightly dark red", "slightly light red", "moderately light red", "light red", "light cherry red"}}

// IsValid reports whether c is one of the eight terms.
func (c Color) IsValid() bool { return colors.Valid(c) }

// String gives the term; "unset" for zero.
func (c Color) String() string { return colors.String(c) }

// Cite returns where the term comes from, the zero Citation for a color that is
// not set: light cherry red goes with group A (published: enc-quality), slightly
// light red with the line between A and B at Select (official: cfr-1987-54-p51),
// moderately light red with that line at Choice (published:
// reprint-bullock-choice). The others are from memory.
func (c Color) Cite() cite.Citation {
	switch {
	case !c.IsValid():
		return cite.Citation{}
	case c == LightCherryRed:
		return cite.Citation{Standing: cite.Published, IDs: "enc-quality"}
	case c == ModeratelyLightRed:
		return cite.Citation{Standing: cite.Published, IDs: "reprint-bullock-choice"}
	case c == SlightlyLightRed:
		return cite.Citation{Standing: cite.Official, IDs: "cfr-1987-54-p51"}
	default:
		return cite.Citation{Standing: cite.Memory}
	}
}

// ParseColor reads a term, as [Color.String] writes it.
func ParseColor(s string) (Color, error) { return colors.Parse(s) }

// MarshalText gives the term; the zero value is empty text.
func (c Color) MarshalText() ([]byte, error) { return colors.Marshal(c) }

// UnmarshalText reads a term. On error the receiver is left as it was.
func (c *Color) UnmarshalText(b []byte) error { return colors.Unmarshal(c, b) }

// Value gives the term for a database.
func (c Color) Value() (driver.Value, error) { return colors.Value(c) }

// Scan reads a term from a database column that holds text.
func (c *Color) Scan(src any) error { return colors.Scan(c, src) }

// Texture is the texture of the lean in the ribeye. The zero Texture was not
// looked at. The finer is the higher integer. Texture goes into lean maturity,
// which is found apart, and moves no grade by itself.
type Texture uint8

// The terms for texture, coarsest first; see [Texture.Cite] for where each comes
// from.
const (
	VeryCoarse Texture = 1 + iota
	Coarse
	SlightlyCoarse
	TendsToBeFine
	Fine
)

var textures = text.Enum[Texture]{Kind: "lean texture", Names: []string{"", "very coarse", "coarse", "slightly coarse", "tends to be fine", "fine"}}

// IsValid reports whether x is one of the five terms.
func (x Texture) IsValid() bool { return textures.Valid(x) }

// String gives the term; "unset" for zero.
func (x Texture) String() string { return textures.String(x) }

// Cite returns where the term comes from, the zero Citation for a texture that is
// not set: fine goes with group A and the line between A and B, tends to be fine
// with B (official: cfr-1987-54-p51). The others, which go with C, D and E, are
// from memory.
func (x Texture) Cite() cite.Citation {
	switch {
	case !x.IsValid():
		return cite.Citation{}
	case x >= TendsToBeFine:
		return cite.Citation{Standing: cite.Official, IDs: "cfr-1987-54-p51"}
	default:
		return cite.Citation{Standing: cite.Memory}
	}
}

// ParseTexture reads a term, as [Texture.String] writes it.
func ParseTexture(s string) (Texture, error) { return textures.Parse(s) }

// MarshalText gives the term; the zero value is empty text.
func (x Texture) MarshalText() ([]byte, error) { return textures.Marshal(x) }

// UnmarshalText reads a term. On error the receiver is left as it was.
func (x *Texture) UnmarshalText(b []byte) error { return textures.Unmarshal(x, b) }

// Value gives the term for a database.
func (x Texture) Value() (driver.Value, error) { return textures.Value(x) }

// Scan reads a term from a database column that holds text.
func (x *Texture) Scan(src any) error { return textures.Scan(x, src) }
