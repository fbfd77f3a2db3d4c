package contest

import "example.com/ribface/internal/text"

// UnmarshalJSON reads an object as the package says under Encodings.
func (m *Member) UnmarshalJSON(b []byte) error { return text.Struct(b, m) }

// UnmarshalJSON reads an object as the package says under Encodings.
func (f *Facts) UnmarshalJSON(b []byte) error { return text.Struct(b, f) }

// UnmarshalJSON reads an object as the package says under Encodings.
func (c *PlacingCard) UnmarshalJSON(b []byte) error { return text.Struct(b, c) }

// UnmarshalJSON reads an object as the package says under Encodings.
func (e *Estimate) UnmarshalJSON(b []byte) error { return text.Struct(b, e) }

// UnmarshalJSON reads an object as the package says under Encodings.
func (h *HandScore) UnmarshalJSON(b []byte) error { return text.Struct(b, h) }

// UnmarshalJSON reads an object as the package says under Encodings.
func (o *OfficialPlacing) UnmarshalJSON(b []byte) error { return text.Struct(b, o) }

// UnmarshalJSON reads an object as the package says under Encodings.
func (o *OfficialFacts) UnmarshalJSON(b []byte) error { return text.Struct(b, o) }

// UnmarshalJSON reads an object as the package says under Encodings.
func (f *Format) UnmarshalJSON(b []byte) error { return text.Struct(b, f) }

// UnmarshalJSON reads an object as the package says under Encodings.
func (r *Scoring) UnmarshalJSON(b []byte) error { return text.Struct(b, r) }

// UnmarshalJSON reads an object as the package says under Encodings.
func (l *Ladder[T]) UnmarshalJSON(b []byte) error { return text.Struct(b, l) }
