package price

import (
	"encoding/json"

	"example.com/ribface/grade"
	"example.com/ribface/internal/text"
)

// UnmarshalJSON reads an object as the package says under Encodings.
func (t *Offer) UnmarshalJSON(b []byte) error { return text.Struct(b, t) }

// MarshalJSON gives the terms of the grid; null for the zero Grid.
func (g Grid) MarshalJSON() ([]byte, error) {
	if g.g == nil {
		return []byte("null"), nil
	}
	return json.Marshal(g.g.terms)
}

// UnmarshalJSON reads terms and makes the grid of them as [New] does; null changes
// nothing. On error the receiver is left as it was.
func (g *Grid) UnmarshalJSON(b []byte) error { return text.Made(b, g, New) }

// MarshalJSON refuses with a [*grade.FieldError]: a value is worked out from a grid
// and an assessment, which both can be kept.
func (v Value) MarshalJSON() ([]byte, error) {
	return nil, &grade.FieldError{Field: "value", Allowed: "the grid and the assessment in its place", Err: grade.ErrUnknown}
}
