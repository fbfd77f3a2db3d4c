package fault_test

import (
	"errors"
	"strings"
	"testing"

	"example.com/ribface/internal/fault"
	"github.com/google/go-cmp/cmp"
)

// TestRow holds how an error of a row reads, and that it tells everything.
func TestRow(t *testing.T) {
	wrong := func(column int, heading string, err error) *fault.RowError {
		return &fault.RowError{Column: column, Heading: heading, Err: err}
	}
	fat := &fault.FieldError{Field: "fat", Err: fault.ErrMissing}
	tests := []struct {
		name string
		err  error
		want string
	}{
		{"whole row", fault.Row("", 3, "", []*fault.RowError{wrong(0, "", fat)}), "line 3: fat: missing"},
		{"place", fault.Row("a.csv", 3, "T1", []*fault.RowError{wrong(2, "BF", fat)}), "a.csv, line 3, id T1, column 2 (BF): fat: missing"},
		{"no heading", fault.Row("", 3, "", []*fault.RowError{wrong(2, "", fat)}), "line 3, column 2: fat: missing"},
		{"two", fault.Row("", 3, "T\x01", []*fault.RowError{wrong(2, "BF", fat), wrong(0, "", fault.ErrRange), wrong(4, "\xff", nil)}), `line 3, id "T\x01", column 2 (BF): fat: missing; out of range; column 4 ("\xff"): refused`},
		{"nil", (*fault.RowError)(nil), "no error"},
	}
	for _, tt := range tests {
		if got := tt.err.Error(); got != tt.want {
			t.Errorf("%s: %s, want %s", tt.name, got, tt.want)
		}
	}
	var many []*fault.RowError
	for range 10_000 {
		many = append(many, wrong(1, strings.Repeat("x", 100), fat))
	}
	err := fault.Row("", 1, "", many)
	if s := err.Error(); len(s) > 1000 || !strings.HasSuffix(s, "; and 9994 more") {
		t.Errorf("%d bytes: %s", len(s), s)
	}
	if n := len(fault.Problems(err)); n != 10_000 {
		t.Errorf("%d problems", n)
	}
	var row *fault.RowError
	if !errors.As(err, &row) || len(row.All()) != 10_000 || !errors.Is(err, fault.ErrMissing) {
		t.Error("not what it is made of")
	}
	if fault.Row("", 1, "", nil) != nil || (*fault.RowError)(nil).All() != nil || (&fault.RowError{}).Unwrap() != nil {
		t.Error("an error of nothing")
	}
}

func TestPlain(t *testing.T) {
	for in, want := range map[string]string{"": "", "Sm40": "Sm40", "é": "é", "a\rb": `"a\rb"`, "\xff": `"\xff"`, strings.Repeat("x", 70): strings.Repeat("x", 64)} {
		if d := cmp.Diff(want, fault.Plain(in)); d != "" {
			t.Errorf("%q (-want +got):\n%s", in, d)
		}
	}
}

// TestRowEqual holds that errors of rows are compared without options.
func TestRowEqual(t *testing.T) {
	row := func(change func(*fault.RowError)) *fault.RowError {
		e := &fault.RowError{File: "a", Line: 1, ID: "x", Column: 2, Heading: "BF", Err: &fault.FieldError{Path: "p", Field: "fat", Err: fault.ErrMissing}, More: []*fault.RowError{{Err: fault.ErrRange}}}
		change(e)
		return e
	}
	same := row(func(*fault.RowError) {})
	if d := cmp.Diff(same, row(func(*fault.RowError) {})); d != "" {
		t.Errorf("(-want +got):\n%s", d)
	}
	for i, change := range []func(*fault.RowError){
		func(e *fault.RowError) { e.File = "b" }, func(e *fault.RowError) { e.Line = 2 }, func(e *fault.RowError) { e.ID = "y" },
		func(e *fault.RowError) { e.Column = 3 }, func(e *fault.RowError) { e.Heading = "FT" },
		func(e *fault.RowError) { e.Err.(*fault.FieldError).Path = "q" }, func(e *fault.RowError) { e.Err = fault.ErrMissing },
		func(e *fault.RowError) { e.More = nil }, func(e *fault.RowError) { e.More[0].Err = nil },
	} {
		if same.Equal(row(change)) {
			t.Errorf("change %d makes no difference", i)
		}
	}
	if (*fault.RowError)(nil).Equal(same) || !(*fault.RowError)(nil).Equal(nil) {
		t.Error("nil is another error")
	}
}
