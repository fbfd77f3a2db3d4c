package fault_test

import (
	"errors"
	"fmt"
	"io"
	"strings"
	"testing"

	"example.com/ribface/internal/fault"
	"example.com/ribface/internal/testkit/faulttest"
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
	all := []error{fault.ErrMissing, fault.ErrSyntax, fault.ErrUnknown, fault.ErrRange, fault.ErrPlaces, fault.ErrRepeated}
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
		{"parse error, wrapped", "a parse error is found under others", fmt.Errorf("row 7: %w", fault.Parse("grade", "x", "", "Prime", fault.ErrUnknown)), `exhibit 3: grade: "x": unknown; allowed: Prime`, fault.ErrUnknown},
		{"another error", "it becomes the reason", io.EOF, "exhibit 3: EOF", io.EOF},
		{"parse error", "its kind becomes the field", fault.Parse("grade", "x", "", "Prime", fault.ErrUnknown), `exhibit 3: grade: "x": unknown; allowed: Prime`, fault.ErrUnknown},
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

// TestAt holds how paths and fields are put under wider ones.
func TestAt(t *testing.T) {
	for _, tt := range []struct{ path, name, inner, field, wantPath, wantField string }{
		{"exhibits[2]", "exhibit 3", "measures.fat", "fat", "exhibits[2].measures.fat", "exhibit 3: fat"},
		{"exhibits", "", "[2].fat", "fat", "exhibits[2].fat", "fat"},
		{"", "exhibit 3", "fat", "fat", "fat", "exhibit 3: fat"},
		{"fat", "fat", "", "", "fat", "fat"},
		{"", "", "", "", "", ""},
	} {
		var fe *fault.FieldError
		err := fault.At(tt.path, tt.name, &fault.FieldError{Path: tt.inner, Field: tt.field, Err: fault.ErrRange})
		if !errors.As(err, &fe) || fe.Path != tt.wantPath || fe.Field != tt.wantField {
			t.Errorf("%+v: %q, %q", tt, fe.Path, fe.Field)
		}
	}
	both := fault.At("card", "card", errors.Join(&fault.FieldError{Path: "a", Field: "a", Err: fault.ErrMissing}, io.EOF))
	faulttest.All(t, "joined", both, "card.a | card: a: missing", "card | card: EOF")
}

// TestJoin holds that nothing stays nothing, and one error itself.
func TestJoin(t *testing.T) {
	one := &fault.FieldError{Field: "a"}
	if err := fault.Join(); err != nil {
		t.Errorf("none: %v", err)
	}
	if err := fault.Join(nil, nil); err != nil {
		t.Errorf("nils: %v", err)
	}
	if err := fault.Join(nil, one, nil); err != one {
		t.Errorf("one: %v", err)
	}
	if err := fault.Join(io.EOF, nil, one); !errors.Is(err, io.EOF) || len(fault.Problems(err)) != 2 {
		t.Errorf("two: %v", err)
	}
}

// TestProblems holds that problems are found however they are wrapped and joined, in
// order.
func TestProblems(t *testing.T) {
	a := &fault.FieldError{Path: "a", Field: "a", Err: fault.ErrMissing}
	p := fault.Parse("grade", "x", "", "Prime", fault.ErrUnknown)
	faulttest.All(t, "all", fmt.Errorf("row 7: %w", errors.Join(a, errors.Join(io.EOF, fmt.Errorf("cell: %w", p)), a)),
		"a | a: missing", " | value: EOF", ` | grade: "x": unknown; allowed: Prime`, "a | a: missing")
	faulttest.All(t, "two wrapped at once", fmt.Errorf("%w and %w", a, io.EOF), "a | a: missing", " | value: EOF")
	var noField *fault.FieldError
	var noParse *fault.ParseError
	for _, err := range []error{nil, noField, noParse} {
		if all := fault.Problems(err); all != nil {
			t.Errorf("%T: %v", err, all)
		}
	}
	if got := fault.Problems(a); len(got) != 1 || got[0] != a {
		t.Errorf("the error itself: %v", got)
	}
}

// TestNothing holds what errors made by hand and nil pointers say.
func TestNothing(t *testing.T) {
	var noField *fault.FieldError
	var noParse *fault.ParseError
	for _, tt := range []struct {
		err  error
		want string
	}{
		{noField, "no error"}, {noParse, "no error"}, {&fault.FieldError{}, "value: refused"}, {&fault.ParseError{}, `text: "": refused`},
	} {
		if got := tt.err.Error(); got != tt.want || errors.Unwrap(tt.err) != nil {
			t.Errorf("%T says %q, %v; want %q", tt.err, got, errors.Unwrap(tt.err), tt.want)
		}
	}
}

// TestEqual holds that cmp compares errors without options, as values and as
// pointers.
func TestEqual(t *testing.T) {
	f := fault.FieldError{Path: "p", Field: "f", Value: "v", Allowed: "a", Err: fault.ErrRange}
	p := fault.ParseError{Kind: "k", Input: "i", Part: "p", Allowed: "a", Err: fault.ErrRange}
	for i, change := range []func(*fault.FieldError){
		func(*fault.FieldError) {}, func(e *fault.FieldError) { e.Path = "" }, func(e *fault.FieldError) { e.Field = "" }, func(e *fault.FieldError) { e.Value = "" },
		func(e *fault.FieldError) { e.Allowed = "" }, func(e *fault.FieldError) { e.Err = nil }, func(e *fault.FieldError) { e.Err = io.EOF },
	} {
		g := f
		change(&g)
		if same := cmp.Equal(f, g); same != (i == 0) || cmp.Equal(&f, &g) != same || cmp.Diff(&f, &g) == "" != same {
			t.Errorf("field %d: %v", i, same)
		}
	}
	for i, change := range []func(*fault.ParseError){
		func(*fault.ParseError) {}, func(e *fault.ParseError) { e.Kind = "" }, func(e *fault.ParseError) { e.Input = "" }, func(e *fault.ParseError) { e.Part = "" },
		func(e *fault.ParseError) { e.Allowed = "" }, func(e *fault.ParseError) { e.Err = nil },
	} {
		q := p
		change(&q)
		if same := cmp.Equal(p, q); same != (i == 0) || cmp.Equal(&p, &q) != same {
			t.Errorf("parse %d: %v", i, same)
		}
	}
}
