package contest

import (
	"example.com/ribface/internal/fault"
	"example.com/ribface/internal/text"
)

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
func (r *Scoring) UnmarshalJSON(b []byte) error { return text.Struct(b, r) }

// UnmarshalJSON reads an object as [Member.UnmarshalJSON] does.
func (r *QualityRule) UnmarshalJSON(b []byte) error { return text.Struct(b, r) }

// UnmarshalJSON reads an object as [Member.UnmarshalJSON] does.
func (r *YieldRule) UnmarshalJSON(b []byte) error { return text.Struct(b, r) }

// UnmarshalJSON reads an object as [Member.UnmarshalJSON] does.
func (l *Ladder[T]) UnmarshalJSON(b []byte) error { return text.Struct(b, l) }

// MarshalJSON refuses with a [*placing.FieldError]: a contest is made of a format,
// rules and official answers, which can be kept.
func (c Contest) MarshalJSON() ([]byte, error) {
	return nil, noJSON("contest", "the format, the rules and the official answers in its place")
}

// MarshalJSON refuses with a [*placing.FieldError]: a tally is made of items, which can
// be kept.
func (t Tally) MarshalJSON() ([]byte, error) { return nil, noJSON("tally", "the items in its place") }

// MarshalJSON refuses with a [*placing.FieldError]: a sheet is one of those that the
// functions of the package give.
func (s Sheet[T]) MarshalJSON() ([]byte, error) { return nil, noJSON("sheet", "its rows") }

func noJSON(what, allowed string) error {
	return &fault.FieldError{Field: what, Allowed: allowed, Err: fault.ErrUnknown}
}
