package price

import (
	"encoding/json"

	"example.com/ribface/grade"
	"example.com/ribface/internal/text"
)

// UnmarshalJSON reads an object with the JSON names of the fields. The error tells of
// every field that cannot be read and of every name that is no field; the receiver is
// then left as it was. Fields that are not there stay as they are.
func (t *Offer) UnmarshalJSON(b []byte) error {
	v := *t
	err := text.Object(b, text.Member{Name: "name", To: &v.Name}, text.Member{Name: "base", To: &v.Base}, text.Member{Name: "cite", To: &v.Cite},
		text.Member{Name: "tiers", To: &v.Tiers}, text.Member{Name: "yield", To: &v.Yield}, text.Member{Name: "yield_edge", To: &v.YieldEdge},
		text.Member{Name: "weight", To: &v.Weight}, text.Member{Name: "weight_edge", To: &v.WeightEdge}, text.Member{Name: "attributes", To: &v.Attributes})
	if err == nil {
		*t = v
	}
	return err
}

// UnmarshalJSON reads an object as [Offer.UnmarshalJSON] does.
func (b *Band[T]) UnmarshalJSON(in []byte) error {
	v := *b
	err := text.Object(in, text.Member{Name: "from", To: &v.From}, text.Member{Name: "to", To: &v.To}, text.Member{Name: "amount", To: &v.Amount})
	if err == nil {
		*b = v
	}
	return err
}

// UnmarshalJSON reads an object as [Offer.UnmarshalJSON] does.
func (a *TierAmount) UnmarshalJSON(b []byte) error {
	v := *a
	err := text.Object(b, text.Member{Name: "tier", To: &v.Tier}, text.Member{Name: "amount", To: &v.Amount})
	if err == nil {
		*a = v
	}
	return err
}

// UnmarshalJSON reads an object as [Offer.UnmarshalJSON] does.
func (a *AttributeAmount) UnmarshalJSON(b []byte) error {
	v := *a
	err := text.Object(b, text.Member{Name: "attribute", To: &v.Attribute}, text.Member{Name: "amount", To: &v.Amount}, text.Member{Name: "instead", To: &v.Instead})
	if err == nil {
		*a = v
	}
	return err
}

// MarshalJSON gives the terms of the grid; null for the zero Grid.
func (g Grid) MarshalJSON() ([]byte, error) {
	if g.g == nil {
		return []byte("null"), nil
	}
	return json.Marshal(g.g.terms)
}

// UnmarshalJSON reads terms and makes the grid of them as [New] does; null changes
// nothing. On error the receiver is left as it was.
func (g *Grid) UnmarshalJSON(b []byte) error {
	if string(b) == "null" {
		return nil
	}
	var t Offer
	if err := json.Unmarshal(b, &t); err != nil {
		return err
	}
	made, err := New(t)
	if err == nil {
		*g = made
	}
	return err
}

// MarshalJSON refuses with a [*grade.FieldError]: a value is worked out from a grid
// and an assessment, which both can be kept.
func (v Value) MarshalJSON() ([]byte, error) {
	return nil, &grade.FieldError{Field: "value", Allowed: "the grid and the assessment in its place", Err: grade.ErrUnknown}
}
