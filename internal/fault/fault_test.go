package fault_test

import (
	"errors"
	"fmt"
	"strings"
	"testing"

	"example.com/ribface/internal/fault"
	"github.com/google/go-cmp/cmp"
)

// TestErrorText holds the one-line form of both error types.
func TestErrorText(t *testing.T) {
	tests := []struct {
		name, reason string
		err          error
		want         string
		is           error
	}{
		{"field, all parts", "every part has its place", &fault.FieldError{Field: "fat", Value: "-0.1 in", Allowed: "0 in to 3 in", Err: fault.ErrRange}, "fat: -0.1 in: out of range; allowed: 0 in to 3 in", fault.ErrRange},
		{"field without value", "a missing value leaves no empty place", &fault.FieldError{Field: "fat", Allowed: "0 in to 3 in", Err: fault.ErrMissing}, "fat: missing; allowed: 0 in to 3 in", fault.ErrMissing},
		{"field without allowed", "a wrapped error may know no limits", &fault.FieldError{Field: "card", Value: "x", Err: fault.ErrRepeated}, "card: x: repeated", fault.ErrRepeated},
		{"parse, all parts", "the wrong part is named", fault.Parse("order", "1-1", "1", "each once", fault.ErrRepeated), `order: "1-1": repeated at "1"; allowed: each once`, fault.ErrRepeated},
		{"parse, whole", "a part equal to the whole says nothing new", fault.Parse("order", "x", "x", "numbers", fault.ErrSyntax), `order: "x": bad syntax; allowed: numbers`, fault.ErrSyntax},
		{"parse, no part", "no part is wrong by itself", fault.Parse("grade", "Prim", "", "Prime", fault.ErrUnknown), `grade: "Prim": unknown; allowed: Prime`, fault.ErrUnknown},
		{"parse without allowed", "nothing is written for it", fault.Parse("grade", "Prim", "", "", fault.ErrUnknown), `grade: "Prim": unknown`, fault.ErrUnknown},
		{"parse, control bytes", "a message never breaks a line", fault.Parse("grade", "a\n\xff\u00e9", "\n", "b", fault.ErrSyntax), `grade: "a\n\xff\u00e9": bad syntax at "\n"; allowed: b`, fault.ErrSyntax},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			if diff := cmp.Diff(tt.want, tt.err.Error()); diff != "" {
				t.Errorf("%s: (-want +got)\n%s", tt.reason, diff)
			}
			if !errors.Is(tt.err, tt.is) {
				t.Errorf("%v is not %v", tt.err, tt.is)
			}
		})
	}
}

// TestSentinelsDiffer holds that no reason is taken for another.
func TestSentinelsDiffer(t *testing.T) {
	all := []error{fault.ErrMissing, fault.ErrSyntax, fault.ErrUnknown, fault.ErrRange, fault.ErrRepeated}
	for i, a := range all {
		for j, b := range all {
			if errors.Is(a, b) != (i == j) {
				t.Errorf("errors.Is(%v, %v) is %v", a, b, i != j)
			}
		}
	}
}

// TestParseClips holds that an error keeps 64 bytes of the text and no more.
func TestParseClips(t *testing.T) {
	for _, n := range []int{0, 1, 63, 64, 65, 1000} {
		long := strings.Repeat("x", n)
		var pe *fault.ParseError
		if !errors.As(fault.Parse("kind", long, long, "short text", fault.ErrSyntax), &pe) {
			t.Fatal("no ParseError")
		}
		want := fault.ParseError{Kind: "kind", Input: long[:min(n, 64)], Part: long[:min(n, 64)], Allowed: "short text", Err: fault.ErrSyntax}
		if *pe != want {
			t.Errorf("%d bytes: got %#v, want %#v", n, *pe, want)
		}
	}
}

// TestIn holds that a field is put under a wider one without touching the error
// it came from.
func TestIn(t *testing.T) {
	if err := fault.In("exhibit 3", nil); err != nil {
		t.Errorf("no error became %v", err)
	}
	inner := &fault.FieldError{Field: "fat", Value: "9 in", Allowed: "0 in to 3 in", Err: fault.ErrRange}
	tests := []struct {
		name, reason string
		err          error
		want         string
		is           error
	}{
		{"field error", "the field is put behind the wider one", inner, "exhibit 3: fat: 9 in: out of range; allowed: 0 in to 3 in", fault.ErrRange},
		{"wrapped field error", "a field error is found under others", fmt.Errorf("row 7: %w", inner), "exhibit 3: fat: 9 in: out of range; allowed: 0 in to 3 in", fault.ErrRange},
		{"parse error", "another error becomes the reason", fault.Parse("grade", "x", "", "Prime", fault.ErrUnknown), `exhibit 3: grade: "x": unknown; allowed: Prime`, fault.ErrUnknown},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			got := fault.In("exhibit 3", tt.err)
			if diff := cmp.Diff(tt.want, got.Error()); diff != "" {
				t.Errorf("%s: (-want +got)\n%s", tt.reason, diff)
			}
			var fe *fault.FieldError
			if !errors.As(got, &fe) || !errors.Is(got, tt.is) {
				t.Errorf("%v is no FieldError for %v", got, tt.is)
			}
		})
	}
	if inner.Field != "fat" {
		t.Errorf("the inner error now has the field %q", inner.Field)
	}
}
