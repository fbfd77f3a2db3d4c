package testkit_test

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"example.com/ribface/internal/fault"
	"example.com/ribface/internal/testkit/faulttest"
	"example.com/ribface/internal/testkit/golden"
)

// record is a test that keeps what is said against it.
type record struct {
	testing.TB
	said string
}

func (r *record) Helper() {}

func (r *record) Errorf(format string, args ...any) { r.said += fmt.Sprintf(format, args...) }

// TestComplaints holds what is said against an error or a text that is not the wanted
// one. That nothing is said against the wanted one, every test that asks shows.
func TestComplaints(t *testing.T) {
	path := filepath.Join(t.TempDir(), "text")
	if err := os.WriteFile(path, []byte("one\ntwo\n"), 0o644); err != nil {
		t.Fatal(err)
	}
	field := fault.FieldError{Field: "cuts", Value: "9", Allowed: "1", Err: fault.ErrRange}
	parse := fault.ParseError{Kind: "order", Input: "9", Allowed: "1", Err: fault.ErrSyntax}
	otherField, otherParse := field, parse
	otherField.Err, otherParse.Input = fault.ErrMissing, "8"
	for _, tt := range []struct {
		name, want string
		check      func(testing.TB)
	}{
		{"another reason", "is not missing", func(t testing.TB) { faulttest.Field(t, "x", &field, otherField) }},
		{"no field error", "x: no is no fault.FieldError", func(t testing.TB) { faulttest.Field(t, "x", errors.New("no"), field) }},
		{"another path", "-want +got", func(t testing.TB) {
			want := field
			want.Path = "card"
			faulttest.Field(t, "x", fault.At("order", "", &field), want)
		}},
		{"a problem too many", "x: problems (-want +got)", func(t testing.TB) { faulttest.All(t, "x", &field) }},
		{"another input", "-want +got", func(t testing.TB) { faulttest.Parse(t, "x", &parse, otherParse) }},
		{"no error and one wanted", "-want +got", func(t testing.TB) { faulttest.Text(t, nil, "yes") }},
		{"an error and none wanted", "-want +got", func(t testing.TB) { faulttest.Text(t, errors.New("no"), "") }},
		{"a golden text without its last line end", "-update-golden", func(t testing.TB) { golden.Compare(t, path, "one\ntwo") }},
	} {
		r := &record{TB: t}
		tt.check(r)
		if !strings.Contains(r.said, tt.want) {
			t.Errorf("%s: says %q, want %q in it", tt.name, r.said, tt.want)
		}
	}
}
