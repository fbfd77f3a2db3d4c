package roundtrip

import (
	"bytes"
	"database/sql"
	"encoding/json"
	"errors"
	"flag"
	"fmt"
	"io"
	"log/slog"
	"maps"
	"strings"
	"testing"
)

// Case pins how the values of a type are spelled.
type Case[T Text] struct {
	Texts   map[string]T // canonical spelling of some values; the zero value has one only where it is a number
	Aliases map[string]T // further spellings that are read
	Numbers map[int64]T  // integers that JSON and, for data, a database column may hold, where the type reads them
	Bad     []string     // text that is refused
	Invalid []T          // values that cannot be written
}

// Run checks [Spelling] in a subtest of the name.
func Run[T Text, P Pointer[T]](t *testing.T, name string, at T, parse func(string) (T, error), c Case[T]) {
	t.Run(name, func(t *testing.T) {
		for _, err := range Spelling[T, P](at, parse, c) {
			t.Error(err)
		}
	})
}

// Spelling takes a case through every encoding that the module promises, with the
// laws of the package, and returns what is broken. at is any valid value that is
// not zero: the receiver that a failed decode has to leave as it was.
func Spelling[T Text, P Pointer[T]](at T, parse func(string) (T, error), c Case[T]) (broken []error) {
	law := func(err error) {
		if err != nil {
			broken = append(broken, err)
		}
	}
	var zero T
	if at == zero || len(c.Texts) == 0 || len(c.Bad) == 0 {
		return []error{errors.New("the case lacks a receiver that is not zero, texts or bad texts")}
	}
	texts := maps.Clone(c.Texts)
	if b, err := zero.MarshalText(); err == nil && len(b) == 0 {
		texts[""] = zero
	} else if _, ok := texts[string(b)]; err != nil || !ok {
		law(fmt.Errorf("zero value: MarshalText gives %q, %v, which is no listed text", b, err))
	}
	for s, v := range texts {
		law(written(s, v))
		law(read[T, P](s, v, at, parse))
	}
	for s, v := range c.Aliases {
		if _, ok := texts[s]; ok {
			law(fmt.Errorf("%q is both alias and canonical", s))
		}
		law(read[T, P](s, v, at, parse))
	}
	for n, v := range c.Numbers {
		var column, value T
		if c, ok := any(P(&column)).(sql.Scanner); ok {
			if err := c.Scan(n); err != nil || column != v {
				law(fmt.Errorf("Scan(%d) gives %v, %v; want %v", n, column, err, v))
			}
		}
		b, _ := json.Marshal(n)
		if err := json.Unmarshal(b, &value); err != nil || value != v {
			law(fmt.Errorf("JSON %s gives %v, %v; want %v", b, value, err, v))
		}
	}
	for _, s := range c.Bad {
		_, ok := texts[s]
		if v, err := parse(s); err == nil || ok {
			law(fmt.Errorf("the bad text %q is read as %v", s, v))
		}
		law(Input[T, P](s, at, parse))
	}
	for _, src := range []any{nil, int64(1), 1.5, true} {
		law(Column[T, P](src, at))
	}
	got := at
	if err := json.Unmarshal([]byte("null"), &got); err != nil || got != at {
		law(fmt.Errorf("JSON null gives %v, %v; want %v as it was", got, err, at))
	}
	for _, v := range c.Invalid {
		law(Unwritable(v, parse))
	}
	return broken
}

// written checks that a value comes out as the text everywhere.
func written[T Text](s string, v T) error {
	if b, err := v.MarshalText(); err != nil || string(b) != s || s != "" && v.String() != s {
		return fmt.Errorf("the text of %v is %q, %v; want %q", v, b, err, s)
	}
	want, _ := json.Marshal(s)
	b, err := json.Marshal(v)
	if _, ok := any(v).(json.Marshaler); ok && string(b) == s && s != "" {
		want = b // a bare number
	}
	if err != nil || !bytes.Equal(b, want) {
		return fmt.Errorf("JSON of %q gives %s, %v", s, b, err)
	}
	var log bytes.Buffer
	slog.New(slog.NewJSONHandler(&log, nil)).Info("m", "v", v)
	if !strings.Contains(log.String(), `"v":`+string(want)) {
		return fmt.Errorf("log of %q is %s", s, &log)
	}
	return nil
}

// read checks that the text is read as the value everywhere; no parser takes the
// empty text of a value that is not set.
func read[T Text, P Pointer[T]](s string, v, at T, parse func(string) (T, error)) error {
	if got, err := parse(s); got != v || err != nil && s != "" {
		return fmt.Errorf("parse of %q gives %v, %v; want %v", s, got, err, v)
	}
	var zero, got T
	flags := flag.NewFlagSet("", flag.ContinueOnError)
	flags.SetOutput(io.Discard)
	flags.TextVar(P(&got), "v", zero, "")
	if err := flags.Parse([]string{"-v", s}); err != nil || got != v {
		return fmt.Errorf("flag of %q gives %v, %v; want %v", s, got, err, v)
	}
	return errors.Join(Input[T, P](s, zero, parse), Input[T, P](s, at, parse))
}

// Composite checks that a value made of others has the wanted JSON and comes back
// from it whole.
func Composite[T comparable](t *testing.T, v T, want string) {
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
