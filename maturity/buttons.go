package maturity

import (
	"database/sql/driver"
	"strconv"

	"example.com/ribface/internal/fault"
	"example.com/ribface/internal/text"
	"example.com/ribface/internal/text/fixed"
)

// Buttons is what was seen of the chine buttons, the cartilages on the tips of
// the thoracic vertebrae: the percent of them that has turned to bone, or white
// and soft. The zero Buttons means that nobody looked; buttons without any bone
// are Ossified(0).
type Buttons uint8

// WhiteAndSoft is what the buttons of a young carcass look like where nobody
// counts percents. It goes with group A (common practice, no source).
const WhiteAndSoft Buttons = 102

// badButtons is a percent that cannot be.
const badButtons Buttons = 255

const (
	whiteAndSoft     = "white and soft"
	ossifiedText     = "% ossified"
	buttonsAllowed   = "0% to 100% ossified, or white and soft"
	beyondAllButtons = "a share of the buttons that cannot be"
)

// Ossified returns the percent of the buttons that has turned to bone, 0 to 100.
// Any other number gives an invalid value that every computation refuses by field
// name.
func Ossified(percent int) Buttons {
	if percent < 0 || percent > 100 {
		return badButtons
	}
	return Buttons(percent + 1)
}

// Percent returns the percent that has turned to bone; ok is false where nobody
// looked, for white and soft, and for an impossible value.
func (b Buttons) Percent() (percent int, ok bool) {
	if b == 0 || b >= WhiteAndSoft {
		return 0, false
	}
	return int(b) - 1, true
}

// IsValid reports whether somebody looked and what was seen is possible.
func (b Buttons) IsValid() bool { return b >= 1 && b <= WhiteAndSoft }

// Group returns the maturity group that the buttons speak for: A for white and
// soft (common practice, no source), that of [FromOssification] for a percent;
// zero where nobody looked. Bones and other cartilages speak too, so this is a
// start for the eye and no finding.
func (b Buttons) Group() Group {
	if b == WhiteAndSoft {
		return A
	}
	percent, ok := b.Percent()
	if !ok {
		return 0
	}
	s, _ := FromOssification(percent) // 0 to 100
	return s.Group()
}

// Goes reports whether the buttons go with a skeletal maturity: of the same
// group, or nothing to compare. A carcass whose buttons do not is worth a second
// look.
func (b Buttons) Goes(skeletal Score) bool {
	return !b.IsValid() || !skeletal.IsValid() || b.Group() == skeletal.Group()
}

// String gives what was seen, as "10% ossified" or "white and soft"; "not looked
// at" for zero.
func (b Buttons) String() string {
	switch percent, ok := b.Percent(); {
	case b == 0:
		return notLooked
	case b == WhiteAndSoft:
		return whiteAndSoft
	case !ok:
		return beyondAllButtons
	default:
		return strconv.Itoa(percent) + ossifiedText
	}
}

func (b Buttons) check() error {
	return &FieldError{Field: "buttons", Value: b.String(), Allowed: buttonsAllowed, Err: ErrRange}
}

// ParseButtons reads what [Buttons.String] writes, in any case, or a bare percent as
// "10%" or "10".
func ParseButtons(s string) (Buttons, error) {
	in := text.Trim(s)
	switch {
	case text.SameWords(in, notLooked):
		return 0, nil
	case text.SameWords(in, whiteAndSoft):
		return WhiteAndSoft, nil
	}
	n, err := fixed.Parse(number(in, ossifiedText, "%"), 0)
	if err == nil && (n < 0 || n > 100) {
		err = ErrRange
	}
	if err != nil {
		return 0, fault.Parse("buttons", s, "", buttonsAllowed, err)
	}
	return Ossified(int(n)), nil
}

// MarshalText gives what was seen; the zero value is empty text.
func (b Buttons) MarshalText() ([]byte, error) { return words(b, b.check) }

// UnmarshalText reads what [ParseButtons] reads; empty text gives the zero value.
// On error the receiver is left as it was.
func (b *Buttons) UnmarshalText(from []byte) error { return text.Unmarshal(b, from, ParseButtons) }

// UnmarshalJSON reads the text in quotes, or a bare percent. On error the
// receiver is left as it was.
func (b *Buttons) UnmarshalJSON(from []byte) error { return text.UnmarshalJSON(b, from) }

// Value gives what was seen as text for a database.
func (b Buttons) Value() (driver.Value, error) { return text.Value(b) }

// Scan reads a database column that holds text, or a percent as an integer.
func (b *Buttons) Scan(src any) error { return text.Scan(b, "buttons", src) }
