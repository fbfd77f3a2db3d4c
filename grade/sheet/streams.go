package sheet

import "example.com/ribface/grade"

// Readers and writers are streams: two are equal where they are the same one, and they
// have no JSON. A nil one has nothing to read and refuses what is written.

// Equal reports whether the two are one reader.
func (s Reader) Equal(t Reader) bool { return s.input == t.input && s.head == t.head }

// MarshalJSON refuses: a reader is no data.
func (s Reader) MarshalJSON() ([]byte, error) { return nil, noData("reader") }

// Equal reports whether the two are one writer.
func (s Writer) Equal(t Writer) bool { return s.made == t.made }

// MarshalJSON refuses: a writer is no data.
func (s Writer) MarshalJSON() ([]byte, error) { return nil, noData("writer") }

// Equal reports whether the two are one writer.
func (s GradedWriter) Equal(t GradedWriter) bool { return s.w.Equal(t.w) }

// MarshalJSON refuses: a writer is no data.
func (s GradedWriter) MarshalJSON() ([]byte, error) { return nil, noData("graded writer") }

func noData(what string) error {
	return &grade.FieldError{Field: what, Allowed: "rows; a stream has no JSON", Err: grade.ErrUnknown}
}
