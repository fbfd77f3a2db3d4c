// Package faulttest holds errors to what a test wants of them.
package faulttest

import (
	"errors"
	"testing"

	"example.com/ribface/internal/fault"
	"github.com/google/go-cmp/cmp"
)

var sameError = cmp.Comparer(func(a, b error) bool { return a == b })

// Field fails unless err, or the first of several errors in it, is exactly the
// FieldError. Its path is looked at where the wanted one has any; see [All].
func Field(t testing.TB, what string, err error, want fault.FieldError) {
	t.Helper()
	var fe *fault.FieldError
	found := errors.As(err, &fe)
	if found && want.Path == "" {
		c := *fe
		c.Path = ""
		fe = &c
	}
	exactly(t, what, err, found, fe, want, want.Err)
}

// All fails unless err tells of exactly these problems, each one line of path, "|",
// and what the error prints as.
func All(t testing.TB, what string, err error, want ...string) {
	t.Helper()
	var got []string
	for _, p := range fault.Problems(err) {
		got = append(got, p.Path+" | "+p.Error())
	}
	if d := cmp.Diff(want, got); d != "" {
		t.Errorf("%s: problems (-want +got):\n%s", what, d)
	}
}

// Parse fails unless err is exactly the ParseError.
func Parse(t testing.TB, what string, err error, want fault.ParseError) {
	t.Helper()
	var pe *fault.ParseError
	exactly(t, what, err, errors.As(err, &pe), pe, want, want.Err)
}

func exactly[E any](t testing.TB, what string, err error, found bool, got *E, want E, reason error) {
	t.Helper()
	if !found {
		t.Errorf("%s: %v is no %T", what, err, want)
		return
	}
	if diff := cmp.Diff(want, *got, sameError); diff != "" {
		t.Errorf("%s: (-want +got)\n%s", what, diff)
	}
	if !errors.Is(err, reason) {
		t.Errorf("%s: %v is not %v", what, err, reason)
	}
}

// Text fails unless err prints as the text, or is nil where the text is empty.
func Text(t testing.TB, err error, want string) {
	t.Helper()
	got := ""
	if err != nil {
		got = err.Error()
	}
	if d := cmp.Diff(want, got); d != "" {
		t.Errorf("error (-want +got):\n%s", d)
	}
}
