package contest

import "example.com/ribface/internal/text"

// UnmarshalJSON reads an object with the JSON names of the fields. The error tells of
// every field that cannot be read and of every name that is no field, each with its
// path; the receiver is then left as it was. Fields that are not there stay as they
// are.
func (m *Member) UnmarshalJSON(b []byte) error { return text.Struct(b, m) }

// UnmarshalJSON reads an object as [Member.UnmarshalJSON] does.
func (f *Facts) UnmarshalJSON(b []byte) error { return text.Struct(b, f) }

// UnmarshalJSON reads an object as [Member.UnmarshalJSON] does.
func (m *Marks) UnmarshalJSON(b []byte) error { return text.Struct(b, m) }

// UnmarshalJSON reads an object as [Member.UnmarshalJSON] does.
func (c *PlacingCard) UnmarshalJSON(b []byte) error { return text.Struct(b, c) }

// UnmarshalJSON reads an object as [Member.UnmarshalJSON] does.
func (e *Estimate) UnmarshalJSON(b []byte) error { return text.Struct(b, e) }

// UnmarshalJSON reads an object as [Member.UnmarshalJSON] does.
func (h *HandScore) UnmarshalJSON(b []byte) error { return text.Struct(b, h) }

// UnmarshalJSON reads an object as [Member.UnmarshalJSON] does.
func (o *OfficialPlacing) UnmarshalJSON(b []byte) error { return text.Struct(b, o) }

// UnmarshalJSON reads an object as [Member.UnmarshalJSON] does.
func (o *OfficialFacts) UnmarshalJSON(b []byte) error { return text.Struct(b, o) }

// UnmarshalJSON reads an object as [Member.UnmarshalJSON] does.
func (f *Format) UnmarshalJSON(b []byte) error { return text.Struct(b, f) }

// UnmarshalJSON reads an object as [Member.UnmarshalJSON] does.
func (c *Component) UnmarshalJSON(b []byte) error { return text.Struct(b, c) }

// UnmarshalJSON reads an object as [Member.UnmarshalJSON] does.
func (t *TieBreak) UnmarshalJSON(b []byte) error { return text.Struct(b, t) }

// UnmarshalJSON reads an object as [Member.UnmarshalJSON] does.
func (r *Rules) UnmarshalJSON(b []byte) error { return text.Struct(b, r) }

// UnmarshalJSON reads an object as [Member.UnmarshalJSON] does.
func (r *QualityRule) UnmarshalJSON(b []byte) error { return text.Struct(b, r) }

// UnmarshalJSON reads an object as [Member.UnmarshalJSON] does.
func (r *YieldRule) UnmarshalJSON(b []byte) error { return text.Struct(b, r) }

// UnmarshalJSON reads an object as [Member.UnmarshalJSON] does.
func (r *MarkRules) UnmarshalJSON(b []byte) error { return text.Struct(b, r) }
