// Package roundtrip holds the laws that every encodable type of the module
// keeps. The tests of each package call them with every value of a small type,
// with drawn values of a large one, and with arbitrary input from the fuzzer. A
// law that is broken comes back as an error, so that the laws can be tested too.
// [Run] adds the spelling of single values, pinned in a table for each type.
package roundtrip

import (
	"database/sql"
	"database/sql/driver"
	"encoding"
	"encoding/json"
	"errors"
	"flag"
	"fmt"
	"io"
	"slices"
	"strconv"
	"strings"
	"unicode/utf8"

	"example.com/ribface/internal/fault"
)

// Text is what an encodable value can do.
type Text interface {
	comparable
	fmt.Stringer
	encoding.TextMarshaler
}

// Pointer is what a pointer to an encodable value can do.
type Pointer[T any] interface {
	*T
	encoding.TextMarshaler
	encoding.TextUnmarshaler
}

// Read is the parser of a setting, which has UnmarshalText and no other.
func Read[T any, P interface {
	*T
	encoding.TextUnmarshaler
}](s string) (v T, err error) {
	if s == "" {
		return v, fault.Parse("setting", s, "", "a name", fault.ErrSyntax)
	}
	err = P(&v).UnmarshalText([]byte(s))
	return v, err
}

// Value checks that a value that can be written comes back from every encoding
// it has, as the same value, whatever the receiver held before.
func Value[T Text, P Pointer[T]](v T, parse func(string) (T, error)) error {
	b, err := v.MarshalText()
	if err != nil {
		return fmt.Errorf("MarshalText of %v: %w", v, err)
	}
	written := string(b)
	if a, ok := any(v).(encoding.TextAppender); ok {
		// A short slice with room behind it: the text goes behind what is there, and
		// the slice handed in keeps its bytes.
		room := append(make([]byte, 0, 128), "kept "...)
		grown, err := a.AppendText(room)
		if err != nil || string(grown) != "kept "+written || string(room) != "kept " {
			return fmt.Errorf("AppendText of %v behind %q: %q, %v; want %q", v, room, grown, err, "kept "+written)
		}
	}
	var zero T
	if v != zero && v.String() != written {
		return fmt.Errorf("text by String is %q, by MarshalText %q", v.String(), written)
	}
	if written != "" {
		if got, err := parse(written); err != nil || got != v {
			return fmt.Errorf("parse of %q: %v, %v; want %v", written, got, err, v)
		}
	}
	for name, decode := range decoders[T, P](written) {
		for _, before := range []T{zero, v} {
			got := before
			if err := decode(&got); err != nil || got != v {
				return fmt.Errorf("%s of %q over %v: %v, %v; want %v", name, written, before, got, err, v)
			}
		}
	}
	if c, ok := any(v).(driver.Valuer); ok {
		if err := column[T, P](c, v, written); err != nil {
			return err
		}
	}
	j, err := json.Marshal(map[T]T{v: v})
	if err != nil {
		return fmt.Errorf("JSON of a map of %v: %w", v, err)
	}
	var m map[T]T
	if err := json.Unmarshal(j, &m); err != nil || len(m) != 1 || m[v] != v {
		return fmt.Errorf("JSON map %s: %v, %v", j, m, err)
	}
	// A flag with the value as its default, and the same set by its own text.
	var byDefault, bySet T
	fs := flag.NewFlagSet("", flag.ContinueOnError)
	fs.TextVar(P(&byDefault), "default", P(&v), "")
	fs.TextVar(P(&bySet), "set", P(&zero), "")
	if err := fs.Parse([]string{"-set=" + written}); err != nil || byDefault != v || bySet != v {
		return fmt.Errorf("flag of %q: default %v, set %v, %v", written, byDefault, bySet, err)
	}
	return nil
}

// column checks what a value gives a database: NULL for empty text, else its text or,
// for a number with a unit, the number, which a numeric column can hold; and that it
// comes back from either, and from NULL as the zero value.
func column[T Text, P Pointer[T]](c driver.Valuer, v T, written string) error {
	got, err := c.Value()
	number, isText := got.(string)
	if err != nil || (got == nil) != (written == "") || got != nil && (!isText || !strings.HasPrefix(written, number)) {
		return fmt.Errorf("a column: Value of %v: %v, %v; want NULL for no text, else %q or its number", v, got, err, written)
	}
	var zero T
	for _, src := range []any{got, nil} {
		back, want := zero, zero
		if src == got {
			want = v
		}
		if err := any(P(&back)).(sql.Scanner).Scan(src); err != nil || back != want {
			return fmt.Errorf("a column: Scan of %v: %v, %v; want %v", src, back, err, want)
		}
	}
	return nil
}

// Unwritable checks that a value that has no text is refused by every encoder
// with a [fault.FieldError], and that String still says something that does not
// parse.
func Unwritable[T Text](v T, parse func(string) (T, error)) error {
	b, err := v.MarshalText()
	if b != nil || !isFieldError(err) {
		return fmt.Errorf("MarshalText of the invalid %v: %q, %v; want a FieldError", v, b, err)
	}
	if a, ok := any(v).(encoding.TextAppender); ok {
		if b, err = a.AppendText([]byte("kept")); string(b) != "kept" || !isFieldError(err) {
			return fmt.Errorf("AppendText of the invalid %v: %q, %v; want what was there and a FieldError", v, b, err)
		}
	}
	if c, ok := any(v).(driver.Valuer); ok {
		if got, err := c.Value(); got != nil || !isFieldError(err) {
			return fmt.Errorf("Value of the invalid %v: %v, %v; want a FieldError", v, got, err)
		}
	}
	if j, err := json.Marshal(v); !isFieldError(err) {
		return fmt.Errorf("JSON of the invalid %v: %s, %v; want a FieldError", v, j, err)
	}
	if got, err := parse(v.String()); v.String() == "" || err == nil {
		return fmt.Errorf("invalid value has the String %q, which reads as %v", v.String(), got)
	}
	return nil
}

// Input checks that arbitrary text is either read, and then every decoder reads
// it alike and [Value] holds, or refused by parser and decoders with a
// well-made error that leaves kept as it was.
func Input[T Text, P Pointer[T]](in string, kept T, parse func(string) (T, error)) error {
	var zero T
	want, err := parse(in)
	if err != nil {
		if want != zero {
			return fmt.Errorf("parse of %q gives %v with the error %w", in, want, err)
		}
		if err := wellMade(in, err); err != nil {
			return err
		}
	}
	b, _ := zero.MarshalText()
	refused := err != nil && (in != "" || len(b) > 0)
	for name, decode := range decoders[T, P](in) {
		got := kept
		switch err := decode(&got); {
		case refused && (err == nil || got != kept):
			return fmt.Errorf("%s of %q over %v: %v, %v; want an error and no change", name, in, kept, got, err)
		case !refused && (err != nil || got != want):
			return fmt.Errorf("%s of %q over %v: %v, %v; want %v", name, in, kept, got, err, want)
		}
	}
	if refused {
		return nil
	}
	return Value[T, P](want, parse)
}

// JSON checks that arbitrary bytes given as JSON are either refused without a
// change to kept, or leave a value that keeps [Value].
func JSON[T Text, P Pointer[T]](in []byte, kept T, parse func(string) (T, error)) error {
	decoders := []func(*T) error{func(v *T) error { return json.Unmarshal(in, v) }}
	if _, ok := any(P(&kept)).(json.Unmarshaler); ok {
		decoders = append(decoders, func(v *T) error { return any(P(v)).(json.Unmarshaler).UnmarshalJSON(in) })
	}
	for _, decode := range decoders {
		given := slices.Clone(in)
		got := kept
		err := decode(&got)
		if string(given) != string(in) {
			return fmt.Errorf("JSON input %q was written to: %q", given, in)
		}
		if err != nil && got != kept {
			return fmt.Errorf("JSON %q over %v: %v, %w", in, kept, got, err)
		}
		if err == nil {
			if err := Value[T, P](got, parse); err != nil {
				return fmt.Errorf("JSON %q: %w", in, err)
			}
		}
	}
	return nil
}

// Column checks what Scan does with a database column: NULL gives the zero value, a
// number is read as its text is, and anything else but text is refused with a
// [fault.FieldError] and without a change to kept.
func Column[T Text, P Pointer[T]](src any, kept T) error {
	got, want := kept, kept
	scan, ok := any(P(&got)).(sql.Scanner)
	if !ok {
		return nil // a setting, which no column holds
	}
	err := scan.Scan(src)
	var byText error
	switch n := src.(type) {
	case nil:
		var zero T
		want = zero
	case int64:
		byText = P(&want).UnmarshalText(strconv.AppendInt(nil, n, 10))
	case float64:
		byText = P(&want).UnmarshalText(strconv.AppendFloat(nil, n, 'f', -1, 64))
	default:
		if got != kept || !isFieldError(err) {
			return fmt.Errorf("decoding a column of %T over %v: %v, %v; want a FieldError and no change", src, kept, got, err)
		}
		return nil
	}
	if got != want || (err == nil) != (byText == nil) {
		return fmt.Errorf("decoding a column of %T over %v: %v, %v; want %v", src, kept, got, err, want)
	}
	return nil
}

// decoders are the ways to read a text into a value.
func decoders[T Text, P Pointer[T]](in string) map[string]func(*T) error {
	all := map[string]func(*T) error{
		"UnmarshalText": func(v *T) error { return P(v).UnmarshalText([]byte(in)) },
	}
	if _, ok := any(P(new(T))).(sql.Scanner); ok {
		all["Scan of a string"] = func(v *T) error { return any(P(v)).(sql.Scanner).Scan(in) }
		all["Scan of bytes"] = func(v *T) error { return any(P(v)).(sql.Scanner).Scan([]byte(in)) }
	}
	if utf8.ValidString(in) {
		all["JSON"] = func(v *T) error {
			var b strings.Builder
			e := json.NewEncoder(&b)
			e.SetEscapeHTML(false)
			return errors.Join(e.Encode(in), json.Unmarshal([]byte(b.String()), v))
		}
		all["JSON stream"] = func(v *T) error {
			j, err := json.Marshal(in)
			d := json.NewDecoder(io.MultiReader(strings.NewReader(" \n"), strings.NewReader(string(j))))
			return errors.Join(err, d.Decode(v))
		}
	}
	return all
}

func isFieldError(err error) bool {
	var fe *fault.FieldError
	return errors.As(err, &fe) && fe.Field != "" && fe.Allowed != "" && isKnown(fe.Err)
}

func isKnown(err error) bool {
	for _, known := range []error{fault.ErrMissing, fault.ErrSyntax, fault.ErrUnknown, fault.ErrRange, fault.ErrPlaces, fault.ErrRepeated} {
		if err == known {
			return true
		}
	}
	return false
}

// wellMade checks the error of a parser: it says what was wanted, what was given
// and what is allowed, has one of the reasons, and prints as one plain line. A
// text made of others may give the error of one of them, or, where they do not
// fit together, a FieldError.
func wellMade(in string, err error) error {
	var pe *fault.ParseError
	switch {
	case isFieldError(err):
	case !errors.As(err, &pe):
		return fmt.Errorf("parse of %q: %w is neither ParseError nor FieldError", in, err)
	case pe.Kind == "" || pe.Allowed == "" || !isKnown(pe.Err):
		return fmt.Errorf("parse of %q: %#v lacks kind, allowed or a reason", in, pe)
	case len(pe.Input) > 64 || len(pe.Part) > 64 || !strings.Contains(in, pe.Input) || !strings.Contains(in, pe.Part):
		return fmt.Errorf("parse of %q: the error has the input %q and the part %q", in, pe.Input, pe.Part)
	}
	for _, r := range err.Error() {
		if r < ' ' || r > '~' {
			return fmt.Errorf("parse of %q: the error %q is no plain line", in, err)
		}
	}
	return nil
}
