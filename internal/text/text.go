// Package text holds the parts that every encodable type of the module shares:
// reading text without touching the receiver on failure, reading a database
// column, and the names of enumerations.
package text

import (
	"bytes"
	"database/sql/driver"
	"encoding/json"
	"strconv"
	"strings"

	"example.com/ribface/internal/fault"
)

// Unmarshal reads b into dst with parse. Empty text gives the zero value. On
// error dst is left as it was.
func Unmarshal[T any](dst *T, b []byte, parse func(string) (T, error)) error {
	if len(b) == 0 {
		var zero T
		*dst = zero
		return nil
	}
	return UnmarshalSet(dst, b, parse)
}

// UnmarshalSet is Unmarshal for a type that has no empty text.
func UnmarshalSet[T any](dst *T, b []byte, parse func(string) (T, error)) error {
	v, err := parse(string(b))
	if err != nil {
		return err
	}
	*dst = v
	return nil
}

// Scan reads a database column that holds text, as string or as bytes, or a number,
// which is read as its shortest text. NULL is read as empty text.
func Scan(dst interface{ UnmarshalText([]byte) error }, kind string, src any) error {
	switch v := src.(type) {
	case string:
		return dst.UnmarshalText([]byte(v))
	case []byte:
		return dst.UnmarshalText(v)
	case int64:
		return dst.UnmarshalText(strconv.AppendInt(nil, v, 10))
	case float64:
		return dst.UnmarshalText(strconv.AppendFloat(nil, v, 'f', -1, 64))
	case nil:
		return dst.UnmarshalText(nil)
	default:
		return &fault.FieldError{Field: kind, Value: "a column that is neither text nor a number", Allowed: "text or a number", Err: fault.ErrSyntax}
	}
}

// Enum is an enumeration of small integers with one name each. Index 0 is the
// value "not set", whose text is empty.
type Enum struct {
	Kind  string
	Names []string
	Zero  string  // the name of index 0 where it is a choice like the others; empty for "not set"
	Also  []Alias // further spellings that are read
}

// Alias is a further spelling of a value.
type Alias struct {
	Name  string
	Value int
}

// IsValid reports whether v is one of the named values.
func (e *Enum) IsValid(v int) bool { return v > 0 && v < len(e.Names) }

// String gives the name of v, "unset" for a zero without a name, and Kind(v) for
// anything else.
func (e *Enum) String(v int) string {
	switch {
	case e.IsValid(v):
		return e.Names[v]
	case v == 0 && e.Zero != "":
		return e.Zero
	case v == 0:
		return "unset"
	default:
		return e.Kind + "(" + strconv.Itoa(v) + ")"
	}
}

// Append writes the name of v, nothing for zero, and an error for anything else.
func (e *Enum) Append(b []byte, v int) ([]byte, error) {
	if v == 0 {
		return b, nil
	}
	if err := e.Check(e.Kind, v); err != nil {
		return b, err
	}
	return append(b, e.Names[v]...), nil
}

// Check returns an error that names the field when v is not a named value.
func (e *Enum) Check(field string, v int) error {
	switch {
	case e.IsValid(v):
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
func (e *Enum) Parse(s string) (int, error) {
	for v := 1; v < len(e.Names); v++ {
		if s == e.Names[v] {
			return v, nil
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
			return v, nil
		}
	}
	for _, a := range e.Also {
		if SameWords(in, a.Name) {
			return a.Value, nil
		}
	}
	return 0, fault.Parse(e.Kind, s, "", e.Allowed(), fault.ErrUnknown)
}

// Allowed lists the names.
func (e *Enum) Allowed() string {
	names := strings.Join(e.Names[1:], ", ")
	if e.Zero != "" {
		names = e.Zero + ", " + names
	}
	return names
}

// UnmarshalJSON reads text in quotes, or a bare number by its text, with
// UnmarshalText; null changes nothing.
func UnmarshalJSON(dst interface{ UnmarshalText([]byte) error }, b []byte) error {
	b = bytes.TrimSpace(b)
	if string(b) == "null" {
		return nil
	}
	if bytes.IndexByte(b, '\\') >= 0 {
		var s string
		if err := json.Unmarshal(b, &s); err == nil {
			return dst.UnmarshalText([]byte(s))
		}
	}
	if len(b) >= 2 && b[0] == '"' && b[len(b)-1] == '"' {
		b = b[1 : len(b)-1]
	}
	return dst.UnmarshalText(b)
}

// Count gives a number of things in words, as "1 exhibit" and "4 exhibits"; a
// change of 1 either way is one.
func Count(n int, thing string) string {
	if n != 1 && n != -1 {
		thing += "s"
	}
	return strconv.Itoa(n) + " " + thing
}

// Value gives the text of v for a database, NULL for empty text.
func Value(v interface{ MarshalText() ([]byte, error) }) (driver.Value, error) {
	b, err := v.MarshalText()
	if err != nil || len(b) == 0 {
		return nil, err
	}
	return string(b), nil
}
