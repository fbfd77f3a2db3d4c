package placing

import (
	"database/sql/driver"

	"example.com/ribface/internal/text"
	"example.com/ribface/maturity/cite"
)

// Card is what was handed in for one placing class: a placing, or the mark that
// says why there is none. The zero Card is a blank one.
type Card struct {
	Order Order // the placing, when Mark is zero
	Mark  Mark  // why there is no placing; zero when there is one, or nothing at all
}

// ParseCard reads a placing as [ParseOrder] does, or the name of a mark as
// [ParseMark] does.
func ParseCard(s string) (Card, error) {
	o, err := ParseOrder(s)
	if err != nil {
		if m, none := ParseMark(s); none == nil {
			return Card{Mark: m}, nil
		}
	}
	return Card{Order: o}, err
}

// String gives the placing or the name of the mark; "unset" for the zero Card, and
// both for a card that has both.
func (c Card) String() string {
	switch {
	case c.Mark == 0:
		return c.Order.String()
	case c.Order.IsValid():
		return c.Order.String() + " and " + c.Mark.String()
	}
	return c.Mark.String()
}

// AppendText appends the placing or the name of the mark; the zero value is empty
// text. A card that has both gives a [*FieldError].
func (c Card) AppendText(b []byte) ([]byte, error) {
	switch {
	case c.Mark == 0:
		return c.Order.AppendText(b)
	case c.Order.IsValid():
		return b, c.both()
	}
	return marks.Append(b, c.Mark)
}

func (c Card) both() error {
	return &FieldError{Field: "card", Value: c.String(), Allowed: "a placing or a mark", Err: ErrRepeated}
}

// MarshalText gives the placing or the name of the mark; the zero value is empty
// text.
func (c Card) MarshalText() ([]byte, error) { return c.AppendText(nil) }

// UnmarshalText reads what [ParseCard] reads; empty text gives the zero value. On
// error the receiver is left as it was.
func (c *Card) UnmarshalText(b []byte) error { return text.Unmarshal(c, b, ParseCard) }

// Value gives the text for a database; NULL for the zero value.
func (c Card) Value() (driver.Value, error) { return text.Value(c) }

// Scan reads a database column that holds text; NULL gives the zero value.
func (c *Card) Scan(src any) error { return text.Scan(c, "card", src) }

// Mark says why a card holds no placing. The zero Mark says nothing: the card
// has a placing, or is blank.
type Mark uint8

// The marks.
const (
	Blank        Mark = 1 + iota // nothing marked
	DoubleMarked                 // more than one placing marked
	Unreadable                   // a mark that nobody can read, or a card for another class
)

var marks = text.Enum[Mark]{Kind: "mark", Names: []string{"", "blank", "double-marked", "unreadable"}}

// IsValid reports whether m is one of the named marks.
func (m Mark) IsValid() bool { return marks.Valid(m) }

// String gives the name; "unset" for zero.
func (m Mark) String() string { return marks.String(m) }

// ParseMark reads the name of a mark, as [Mark.String] writes it, in any case and
// with blanks or hyphens between its words.
func ParseMark(s string) (Mark, error) { return marks.Parse(s) }

// MarshalText gives the name; the zero value is empty text.
func (m Mark) MarshalText() ([]byte, error) { return marks.Marshal(m) }

// UnmarshalText reads a name. On error the receiver is left as it was.
func (m *Mark) UnmarshalText(b []byte) error { return marks.Unmarshal(m, b) }

// Value gives the name for a database; NULL for the zero value.
func (m Mark) Value() (driver.Value, error) { return marks.Value(m) }

// Scan reads a name from a database column that holds text; NULL gives the zero
// value.
func (m *Mark) Scan(src any) error { return marks.Scan(m, src) }

// Penalty is what a card without a placing scores. The zero Penalty leaves it to
// the default of the field it stands in.
type Penalty uint8

// The penalties.
const (
	ZeroPoints  Penalty = 1 + iota // 0 points
	LowestScore                    // the lowest score possible in the class, which is not 0 for most cuts
	Refused                        // no score: an error, for a contest that asks the member
)

var penalties = text.Enum[Penalty]{Kind: "penalty", Names: []string{"", "zero points", "lowest score", "refused"}}

// String gives the name; "unset" for zero.
func (p Penalty) String() string { return penalties.String(p) }

// MarshalText gives the name; the zero value is empty text.
func (p Penalty) MarshalText() ([]byte, error) { return penalties.Marshal(p) }

// UnmarshalText reads what [Penalty.String] writes, in any case; empty text gives the
// zero value. On error the receiver is left as it was.
func (p *Penalty) UnmarshalText(b []byte) error { return penalties.Unmarshal(p, b) }

// CardRules say what a card without an answer scores, a placing or an estimate, and
// whether a score below zero is raised to zero. The zero CardRules follow published
// rules, see [CardRules.Penalty] and [CardRules.ItemPenalty], and raise nothing, since
// no source says to.
type CardRules struct {
	Blank       Penalty `json:"blank,omitzero"`
	Double      Penalty `json:"double,omitzero"`
	Unreadable  Penalty `json:"unreadable,omitzero"`
	FloorAtZero bool    `json:"floor_at_zero,omitzero"` // raise scores below zero to zero; no source does. An estimate is never below zero
}

// UnmarshalJSON reads an object as the package says under Encodings.
func (r *CardRules) UnmarshalJSON(b []byte) error { return text.Struct(b, r) }

// standard is what a mark scores by published rules, with where that comes from.
type standard struct {
	penalty Penalty
	cite    cite.Citation
}

var cardStandards = [...]standard{
	Blank:        {ZeroPoints, cite.Citation{Standing: cite.Published, IDs: "ext-missouri-poultry ksu-horse-judging"}},
	DoubleMarked: {LowestScore, cite.Citation{Standing: cite.Published, IDs: "ext-missouri-poultry"}},
	Unreadable:   {ZeroPoints, cite.Citation{Standing: cite.Published, IDs: "ksu-horse-judging"}},
}

var itemStandards = [...]standard{
	Blank:        {ZeroPoints, cite.Citation{Standing: cite.Published, IDs: "psu-poultry fl-ffa-2013"}},
	DoubleMarked: {ZeroPoints, cite.Citation{Standing: cite.Published, IDs: "psu-poultry fl-ffa-2013"}},
	Unreadable:   {ZeroPoints, cite.Citation{Standing: cite.Derived, IDs: "psu-poultry fl-ffa-2013"}},
}

// Penalty returns what the rules give a mark in place of a placing, and where the
// default comes from; the Citation is zero where the rules choose for themselves. The
// defaults are ZeroPoints for a blank card (published: ext-missouri-poultry,
// ksu-horse-judging), LowestScore for a double mark (published: ext-missouri-poultry)
// and ZeroPoints for one that cannot be read (published for the wrong card:
// ksu-horse-judging). A mark that is not valid gives zeros.
func (r CardRules) Penalty(m Mark) (Penalty, cite.Citation) { return r.penalty(m, cardStandards[:]) }

// ItemPenalty is [CardRules.Penalty] for a mark in place of one estimate, such as a
// grade: the default of all three marks is ZeroPoints, because a blank or a double
// mark loses the whole item (published: psu-poultry, fl-ffa-2013); that one which
// cannot be read does so too is derived.
func (r CardRules) ItemPenalty(m Mark) (Penalty, cite.Citation) {
	return r.penalty(m, itemStandards[:])
}

func (r CardRules) penalty(m Mark, by []standard) (Penalty, cite.Citation) {
	if !m.IsValid() {
		return 0, cite.Citation{}
	}
	if chosen := [...]Penalty{Blank: r.Blank, DoubleMarked: r.Double, Unreadable: r.Unreadable}[m]; chosen != 0 {
		return chosen, cite.Citation{}
	}
	return by[m].penalty, by[m].cite
}

// Score returns what the card scores under the rules. A card that has both a
// placing and a mark, a mark or penalty that is not valid, a mark that is
// refused, and a placing that [Official.Score] refuses give a [*FieldError].
func (r CardRules) Score(o Official, c Card) (int, error) {
	if !o.IsValid() {
		return 0, o.refuse(c.Order)
	}
	mark := c.Mark
	switch {
	case mark == 0 && c.Order.IsValid():
		s, err := o.Score(c.Order)
		return r.floor(s), err
	case c.Order.IsValid():
		return 0, c.both()
	case mark == 0:
		mark = Blank
	}
	if err := marks.Check("mark", mark); err != nil {
		return 0, err
	}
	switch p, _ := r.Penalty(mark); p {
	case ZeroPoints:
		return 0, nil
	case LowestScore:
		return r.floor(o.Worst()), nil
	case Refused:
		return 0, &FieldError{Field: "card", Value: mark.String(), Allowed: "one placing", Err: ErrMissing}
	default:
		return 0, penalties.Check("penalty for "+mark.String(), p)
	}
}

func (r CardRules) floor(score int) int {
	if r.FloorAtZero {
		return max(score, 0)
	}
	return score
}
