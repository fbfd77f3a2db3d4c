// Package encodetest pins the spelling of values: for each type a table of texts,
// further spellings, bad texts and values without text, taken through every
// encoding that the module promises. The laws that hold for all values, whatever
// their spelling, are those of the package roundtrip.
package encodetest

import (
	"bytes"
	"database/sql"
	"database/sql/driver"
	"encoding"
	"encoding/json"
	"flag"
	"io"
	"log/slog"
	"strings"
	"testing"
)

// Value is what every value type has.
type Value interface {
	comparable
	encoding.TextAppender
	encoding.TextMarshaler
	driver.Valuer
}

// Pointer is what a pointer to every value type has.
type Pointer[T any] interface {
	*T
	encoding.TextUnmarshaler
	sql.Scanner
}

// Case is a type under test.
type Case[T Value] struct {
	Texts   map[string]T // canonical spelling of some values; the zero value has one only where it is a number
	Aliases map[string]T // further spellings that are read
	Numbers map[int64]T  // integers that a database column and JSON may hold, where the type reads them
	Bad     []string     // text that is refused
	Invalid []T          // values that cannot be written
}

// Run checks the type in a subtest of its name. at is any valid value that is
// not zero: the receiver that a failed decode has to leave as it was.
func Run[T Value, P Pointer[T]](t *testing.T, name string, at T, c Case[T]) {
	t.Run(name, func(t *testing.T) {
		var zero T
		if at == zero {
			t.Fatal("the receiver to be left alone is the zero value")
		}
		if len(c.Texts) == 0 || len(c.Bad) == 0 {
			t.Fatal("no texts, or no bad texts")
		}
		for s, v := range c.Texts {
			write(t, s, v)
			read[T, P](t, s, v)
		}
		if b, err := zero.MarshalText(); err == nil && len(b) == 0 {
			write(t, "", zero)
			read[T, P](t, "", zero)
		} else if _, ok := c.Texts[string(b)]; err != nil || !ok {
			t.Errorf("zero value: MarshalText gives %q, %v, which is no listed text", b, err)
		}
		for s, v := range c.Aliases {
			if _, ok := c.Texts[s]; ok {
				t.Errorf("%q is both alias and canonical", s)
			}
			read[T, P](t, s, v)
		}
		for n, v := range c.Numbers {
			var got T
			if err := P(&got).Scan(n); err != nil || got != v {
				t.Errorf("Scan(%d) gives %v, %v; want %v", n, got, err, v)
			}
			b, _ := json.Marshal(n)
			got = zero
			if err := json.Unmarshal(b, &got); err != nil || got != v {
				t.Errorf("JSON %s gives %v, %v; want %v", b, got, err, v)
			}
		}
		for _, s := range c.Bad {
			refuse[T, P](t, s, at)
		}
		for _, src := range []any{nil, 1.5, true} {
			got := at
			if err := P(&got).Scan(src); err == nil || got != at {
				t.Errorf("Scan(%v) gives %v, %v; want an error and %v", src, got, err, at)
			}
		}
		if len(c.Numbers) == 0 {
			got := at
			if err := P(&got).Scan(int64(1)); err == nil || got != at {
				t.Errorf("Scan(1) gives %v, %v; want an error and %v", got, err, at)
			}
		}
		got := at
		if err := json.Unmarshal([]byte("null"), &got); err != nil || got != at {
			t.Errorf("JSON null gives %v, %v; want %v as it was", got, err, at)
		}
		null := sql.Null[T]{V: at, Valid: true}
		if err := null.Scan(nil); err != nil || null.Valid || null.V != zero {
			t.Errorf("sql.Null Scan(nil) gives %+v, %v", null, err)
		}
		for _, v := range c.Invalid {
			b := []byte("kept")
			if got, err := v.AppendText(b); err == nil || string(got) != "kept" {
				t.Errorf("AppendText of invalid %#v gives %q, %v; want an error and the slice as it was", v, got, err)
			}
			if b, err := v.MarshalText(); err == nil {
				t.Errorf("MarshalText of invalid %#v gives %q", v, b)
			}
			if got, err := v.Value(); err == nil {
				t.Errorf("Value of invalid %#v gives %v", v, got)
			}
		}
	})
}

// write checks every way out.
func write[T Value](t *testing.T, s string, v T) {
	t.Helper()
	if b, err := v.AppendText([]byte("x")); err != nil || string(b) != "x"+s {
		t.Errorf("AppendText of %q gives %q, %v", s, b, err)
	}
	if b, err := v.MarshalText(); err != nil || string(b) != s {
		t.Errorf("MarshalText of %q gives %q, %v", s, b, err)
	}
	want, _ := json.Marshal(s)
	if b, err := json.Marshal(v); err != nil || !bytes.Equal(b, want) {
		t.Errorf("JSON of %q gives %s, %v", s, b, err)
	}
	if got, err := v.Value(); err != nil || got != s {
		t.Errorf("Value of %q gives %v, %v", s, got, err)
	}
	var log bytes.Buffer
	slog.New(slog.NewJSONHandler(&log, nil)).Info("m", "v", v)
	if !strings.Contains(log.String(), `"v":`+string(want)) {
		t.Errorf("log of %q is %s", s, &log)
	}
}

// read checks every way in.
func read[T Value, P Pointer[T]](t *testing.T, s string, v T) {
	t.Helper()
	quoted, _ := json.Marshal(s)
	for way, decode := range map[string]func(P) error{
		"UnmarshalText": func(p P) error { return p.UnmarshalText([]byte(s)) },
		"JSON":          func(p P) error { return json.Unmarshal(quoted, p) },
		"Scan string":   func(p P) error { return p.Scan(s) },
		"Scan bytes":    func(p P) error { return p.Scan([]byte(s)) },
	} {
		var got T
		if err := decode(&got); err != nil || got != v {
			t.Errorf("%s of %q gives %v, %v; want %v", way, s, got, err, v)
		}
	}
	var got T
	flags := flag.NewFlagSet("", flag.ContinueOnError)
	flags.SetOutput(io.Discard)
	flags.TextVar(P(&got), "v", any(got).(encoding.TextMarshaler), "")
	if err := flags.Parse([]string{"-v", s}); err != nil || got != v {
		t.Errorf("flag of %q gives %v, %v; want %v", s, got, err, v)
	}
	var null sql.Null[T]
	if err := null.Scan(s); err != nil || !null.Valid || null.V != v {
		t.Errorf("sql.Null Scan of %q gives %+v, %v", s, null, err)
	}
}

// refuse checks that every way in refuses the text and leaves the receiver alone.
func refuse[T Value, P Pointer[T]](t *testing.T, s string, at T) {
	t.Helper()
	quoted, _ := json.Marshal(s)
	for way, decode := range map[string]func(P) error{
		"UnmarshalText": func(p P) error { return p.UnmarshalText([]byte(s)) },
		"JSON":          func(p P) error { return json.Unmarshal(quoted, p) },
		"Scan string":   func(p P) error { return p.Scan(s) },
		"Scan bytes":    func(p P) error { return p.Scan([]byte(s)) },
	} {
		got := at
		if err := decode(&got); err == nil || got != at {
			t.Errorf("%s of %q gives %v, %v; want an error and %v", way, s, got, err, at)
		}
	}
}

// JSON checks that a composite value has the wanted JSON and comes back from it
// whole.
func JSON[T comparable](t *testing.T, v T, want string) {
	t.Helper()
	b, err := json.Marshal(v)
	if err != nil || string(b) != want {
		t.Errorf("JSON of %T is\n%s, %v\nwant\n%s", v, b, err, want)
	}
	var got T
	if err := json.Unmarshal(b, &got); err != nil || got != v {
		t.Errorf("JSON of %T comes back as\n%+v, %v\nwant\n%+v", v, got, err, v)
	}
}
