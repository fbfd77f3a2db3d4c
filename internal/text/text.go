// Package text holds the parts that every encodable type of the module shares:
// reading text without touching the receiver on failure, reading a database
// column, and the names of enumerations.
package text

import (
	"bytes"
	"database/sql/driver"
	"encoding/json"
	"strconv"

	"example.com/ribface/internal/fault"
)

// Unmarshal reads b into dst with parse. Empty text gives the zero value. On
// error dst is left as it was.
func Unmarshal[T any](dst *T, b []byte, parse func(string) (T, error)) error {
	var v T
	if len(b) > 0 {
		var err error
		if v, err = parse(string(b)); err != nil {
			return err
		}
	}
	*dst = v
	return nil
}

// Scan reads a database column that holds text, as string or as bytes, or a number,
// which is read as its shortest text. NULL is read as empty text.
func Scan(dst interface{ UnmarshalText([]byte) error }, kind string, src any) error {
	b, err := column(kind, src)
	if err != nil {
		return err
	}
	return dst.UnmarshalText(b)
}

// column gives the text of a database column.
func column(kind string, src any) ([]byte, error) {
	switch v := src.(type) {
	case string:
		return []byte(v), nil
	case []byte:
		return v, nil
	case int64:
		return strconv.AppendInt(nil, v, 10), nil
	case float64:
		return strconv.AppendFloat(nil, v, 'f', -1, 64), nil
	case nil:
		return nil, nil
	default:
		return nil, &fault.FieldError{Field: kind, Value: "a column that is neither text nor a number", Allowed: "text or a number", Err: fault.ErrSyntax}
	}
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

// String gives the text of a value; "unset" for empty text.
func String[T interface{ AppendText([]byte) ([]byte, error) }](v T) string {
	b, _ := v.AppendText(nil)
	if len(b) == 0 {
		return "unset"
	}
	return string(b)
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

// Named reports whether a value of an enumeration is one of those that have a name.
func Named(v interface{ MarshalText() ([]byte, error) }) bool {
	b, err := v.MarshalText()
	return err == nil && len(b) > 0
}
