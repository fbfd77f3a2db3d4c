package text

import (
	"database/sql/driver"
	"iter"
	"strconv"
	"strings"

	"example.com/ribface/internal/fault"
)

// Enum is the names of an enumeration of small integers, and all that is done with
// them. Index 0 is the value "not set", whose text is empty.
type Enum[T ~uint8] struct {
	Kind  string
	Names []string
	Zero  string     // the name of index 0 where it is a choice like the others; empty for "not set"
	Also  []Alias[T] // further spellings that are read
}

// Alias is a further spelling of a value.
type Alias[T ~uint8] struct {
	Name  string
	Value T
}

// All yields the values that have a name, in order.
func (e *Enum[T]) All() iter.Seq[T] {
	return func(yield func(T) bool) {
		for v := 1; v < len(e.Names) && yield(T(v)); v++ {
		}
	}
}

// Valid reports whether v is one of the named values.
func (e *Enum[T]) Valid(v T) bool { return v != 0 && int(v) < len(e.Names) }

// String gives the name of v, "unset" for a zero without a name, and Kind(v) for
// anything else.
func (e *Enum[T]) String(v T) string {
	switch {
	case e.Valid(v):
		return e.Names[v]
	case v != 0:
		return e.Kind + "(" + strconv.Itoa(int(v)) + ")"
	case e.Zero != "":
		return e.Zero
	default:
		return "unset"
	}
}

// Append writes the name of v, nothing for zero, and an error for anything else.
func (e *Enum[T]) Append(b []byte, v T) ([]byte, error) {
	if v == 0 {
		return b, nil
	}
	if err := e.Check(e.Kind, v); err != nil {
		return b, err
	}
	return append(b, e.Names[v]...), nil
}

// Marshal gives what Append writes.
func (e *Enum[T]) Marshal(v T) ([]byte, error) { return e.Append(nil, v) }

// Value gives the name of v for a database, NULL for zero.
func (e *Enum[T]) Value(v T) (driver.Value, error) {
	b, err := e.Append(nil, v)
	if err != nil || len(b) == 0 {
		return nil, err
	}
	return string(b), nil
}

// Check returns an error that names the field when v is not a named value.
func (e *Enum[T]) Check(field string, v T) error {
	switch {
	case e.Valid(v):
		return nil
	case v == 0:
		return &fault.FieldError{Field: field, Allowed: e.Allowed(), Err: fault.ErrMissing}
	default:
		return &fault.FieldError{Field: field, Value: e.String(v), Allowed: e.Allowed(), Err: fault.ErrUnknown}
	}
}

// Parse reads a name as String writes it, or a further spelling, in any case, with
// blanks around it and with blanks, hyphens or underscores between its words;
// "unset" is no name.
func (e *Enum[T]) Parse(s string) (T, error) {
	for v := 1; v < len(e.Names); v++ {
		if s == e.Names[v] {
			return T(v), nil
		}
	}
	in := Trim(s)
	if in == "" {
		return 0, fault.Parse(e.Kind, s, "", e.Allowed(), fault.ErrSyntax)
	}
	if e.Zero != "" && SameWords(in, e.Zero) {
		return 0, nil
	}
	for v := 1; v < len(e.Names); v++ {
		if SameWords(in, e.Names[v]) {
			return T(v), nil
		}
	}
	for _, a := range e.Also {
		if SameWords(in, a.Name) {
			return a.Value, nil
		}
	}
	return 0, fault.Parse(e.Kind, s, "", e.Allowed(), fault.ErrUnknown)
}

// Unmarshal reads what Parse reads into dst; empty text gives zero. On error dst is
// left as it was.
func (e *Enum[T]) Unmarshal(dst *T, b []byte) error { return Unmarshal(dst, b, e.Parse) }

// Scan reads a database column that holds a name; NULL gives zero.
func (e *Enum[T]) Scan(dst *T, src any) error {
	b, err := column(e.Kind, src)
	if err != nil {
		return err
	}
	return e.Unmarshal(dst, b)
}

// Allowed lists the names.
func (e *Enum[T]) Allowed() string {
	names := strings.Join(e.Names[1:], ", ")
	if e.Zero != "" {
		names = e.Zero + ", " + names
	}
	return names
}

// AppendName appends the name of a value, nothing for zero.
func AppendName[T interface {
	IsValid() bool
	String() string
	MarshalText() ([]byte, error)
}](b []byte, v T) ([]byte, error) {
	if v.IsValid() {
		return append(b, v.String()...), nil
	}
	_, err := v.MarshalText()
	return b, err
}
