package faulttest

import (
	"errors"
	"fmt"
	"strings"
	"testing"

	"example.com/ribface/internal/fault"
)

// record is a test that keeps what is said against it.
type record struct {
	testing.TB
	said string
}

func (r *record) Helper() {}

func (r *record) Errorf(format string, args ...any) { r.said += fmt.Sprintf(format, args...) }

// TestComplaints holds what is said against an error that is not the wanted one. That
// nothing is said against the wanted one, every test that uses this package shows.
func TestComplaints(t *testing.T) {
	field := fault.FieldError{Field: "cuts", Value: "9", Allowed: "1", Err: fault.ErrRange}
	parse := fault.ParseError{Kind: "order", Input: "9", Allowed: "1", Err: fault.ErrSyntax}
	otherField, otherParse := field, parse
	otherField.Err, otherParse.Input = fault.ErrMissing, "8"
	for _, tt := range []struct {
		name, want string
		check      func(testing.TB)
	}{
		{"another reason", "-want +got", func(t testing.TB) { Field(t, "x", &field, otherField) }},
		{"another reason, by errors.Is too", "is not missing", func(t testing.TB) { Field(t, "x", &field, otherField) }},
		{"no field error", "x: no is no fault.FieldError", func(t testing.TB) { Field(t, "x", errors.New("no"), field) }},
		{"no error", "x: <nil> is no fault.FieldError", func(t testing.TB) { Field(t, "x", nil, field) }},
		{"another path", "-want +got", func(t testing.TB) {
			want := field
			want.Path = "card"
			Field(t, "x", fault.At("order", "", &field), want)
		}},
		{"a problem too few", "x: problems (-want +got)", func(t testing.TB) {
			All(t, "x", fault.At("card", "", &field), "card | cuts: 9: out of range; allowed: 1", ` | order: "9": bad syntax; allowed: 1`)
		}},
		{"a problem too many", "x: problems (-want +got)", func(t testing.TB) { All(t, "x", &field) }},
		{"another input", "-want +got", func(t testing.TB) { Parse(t, "x", &parse, otherParse) }},
		{"a field error for a parse error", "is no fault.ParseError", func(t testing.TB) { Parse(t, "x", &field, parse) }},
		{"another text", "-want +got", func(t testing.TB) { Text(t, errors.New("no"), "yes") }},
		{"no error and one wanted", "-want +got", func(t testing.TB) { Text(t, nil, "yes") }},
		{"an error and none wanted", "-want +got", func(t testing.TB) { Text(t, errors.New("no"), "") }},
	} {
		r := &record{TB: t}
		tt.check(r)
		if !strings.Contains(r.said, tt.want) {
			t.Errorf("%s: says %q, want %q in it", tt.name, r.said, tt.want)
		}
	}
}
