package placing_test

import (
	"errors"
	"slices"
	"testing"

	"example.com/ribface/internal/testkit/faulttest"
	"example.com/ribface/placing"
	"github.com/google/go-cmp/cmp"
)

// wantPanic fails unless f panics with an error of the reason.
func wantPanic(t *testing.T, f func(), reason error) {
	t.Helper()
	defer func() {
		t.Helper()
		if err, ok := recover().(error); !ok || !errors.Is(err, reason) {
			t.Errorf("panics with %v, want %v", err, reason)
		}
	}()
	f()
}

// TestNewOrder holds the sizes and the exhibits that make an order.
func TestNewOrder(t *testing.T) {
	twelve := []int{12, 11, 10, 9, 8, 7, 6, 5, 4, 3, 2, 1}
	for _, tt := range []struct {
		name     string
		exhibits []int
		want     string
	}{
		{"two", []int{2, 1}, "2-1"},
		{"four", []int{3, 2, 1, 4}, "3-2-1-4"},
		{"twelve", twelve, "12-11-10-9-8-7-6-5-4-3-2-1"},
	} {
		t.Run(tt.name, func(t *testing.T) {
			o, err := placing.NewOrder(tt.exhibits...)
			if err != nil || o.String() != tt.want || o.Len() != len(tt.exhibits) || !o.IsValid() {
				t.Fatalf("%v, %v; want %s", o, err, tt.want)
			}
			if diff := cmp.Diff(tt.exhibits, slices.Collect(o.Exhibits())); diff != "" {
				t.Errorf("Exhibits: (-want +got)\n%s", diff)
			}
			for i, e := range tt.exhibits {
				if o.At(i+1) != e || o.Place(e) != i+1 {
					t.Errorf("At(%d) = %d, Place(%d) = %d", i+1, o.At(i+1), e, o.Place(e))
				}
			}
			for _, n := range []int{-1, 0, len(tt.exhibits) + 1, 15, 16, 64} {
				if o.At(n) != 0 || o.Place(n) != 0 {
					t.Errorf("At(%d) = %d, Place(%d) = %d", n, o.At(n), n, o.Place(n))
				}
			}
			for range o.Exhibits() {
				break
			}
		})
	}
	const sizes = "2 to 12 exhibits"
	for _, tt := range []struct {
		name     string
		exhibits []int
		want     placing.FieldError
	}{
		{"none", nil, placing.FieldError{Field: "order", Value: "0 exhibits", Allowed: sizes, Err: placing.ErrRange}},
		{"one", []int{1}, placing.FieldError{Field: "order", Value: "1 exhibit", Allowed: sizes, Err: placing.ErrRange}},
		{"thirteen", append(twelve, 13), placing.FieldError{Field: "order", Value: "13 exhibits", Allowed: sizes, Err: placing.ErrRange}},
		{"exhibit 0", []int{1, 0}, placing.FieldError{Field: "order", Value: "exhibit 0", Allowed: "each exhibit 1 to 2 once", Err: placing.ErrRange}},
		{"exhibit below 0", []int{1, -1}, placing.FieldError{Field: "order", Value: "exhibit -1", Allowed: "each exhibit 1 to 2 once", Err: placing.ErrRange}},
		{"exhibit above the size", []int{3, 1}, placing.FieldError{Field: "order", Value: "exhibit 3", Allowed: "each exhibit 1 to 2 once", Err: placing.ErrRange}},
		{"twice", []int{1, 2, 2}, placing.FieldError{Field: "order", Value: "exhibit 2", Allowed: "each exhibit 1 to 3 once", Err: placing.ErrRepeated}},
		{"the first at fault", []int{1, 1, 9}, placing.FieldError{Field: "order", Value: "exhibit 1", Allowed: "each exhibit 1 to 3 once", Err: placing.ErrRepeated}},
	} {
		t.Run(tt.name, func(t *testing.T) {
			o, err := placing.NewOrder(tt.exhibits...)
			faulttest.Field(t, tt.name, err, tt.want)
			if o != (placing.Order{}) {
				t.Errorf("gives %v", o)
			}
		})
	}
}

// TestParseOrder holds what is read and which part of all else is wrong.
func TestParseOrder(t *testing.T) {
	const form = "2 to 12 exhibit numbers with hyphens between, each once, as 3-2-1-4"
	for _, tt := range []struct {
		name, in, part, allowed string
		err                     error
	}{
		{"four", "3-2-1-4", "", "", nil},
		{"two digits", "10-1-2-3-4-5-6-7-8-9", "", "", nil},
		{"empty", "", "", form, placing.ErrSyntax},
		{"one", "1", "", form, placing.ErrSyntax},
		{"hyphen alone", "-", "", form, placing.ErrSyntax},
		{"hyphen behind", "1-2-", "", form, placing.ErrSyntax},
		{"two hyphens", "1--2", "", form, placing.ErrSyntax},
		{"two kinds of separator", "1-2 3", "2 3", form, placing.ErrSyntax},
		{"digits that are none", "12x4", "12x4", form, placing.ErrSyntax},
		{"leading zero", "01-2", "01", form, placing.ErrSyntax},
		{"three digits", "100-2", "100", form, placing.ErrSyntax},
		{"plus", "+1-2", "+1", form, placing.ErrSyntax},
		{"byte below 0", "1-/", "/", form, placing.ErrSyntax},
		{"byte above 9", "1-:", ":", form, placing.ErrSyntax},
		{"letter second", "1-2x", "2x", form, placing.ErrSyntax},
		{"exhibit 0", "0-1", "0", "each exhibit 1 to 2 once", placing.ErrRange},
		{"above the size", "1-3", "3", "each exhibit 1 to 2 once", placing.ErrRange},
		{"twice", "2-1-2", "2", "each exhibit 1 to 3 once", placing.ErrRepeated},
		{"thirteen", "1-2-3-4-5-6-7-8-9-10-11-12-13", "13", form, placing.ErrRange},
	} {
		t.Run(tt.name, func(t *testing.T) {
			o, err := placing.ParseOrder(tt.in)
			if tt.err == nil {
				if err != nil || o.String() != tt.in || placing.MustParseOrder(tt.in) != o {
					t.Errorf("%v, %v", o, err)
				}
				return
			}
			faulttest.Parse(t, tt.name, err, placing.ParseError{Kind: "order", Input: tt.in, Part: tt.part, Allowed: tt.allowed, Err: tt.err})
			if o != (placing.Order{}) {
				t.Errorf("gives %v", o)
			}
			wantPanic(t, func() { placing.MustParseOrder(tt.in) }, tt.err)
		})
	}
}

// TestReversedAndRelabel holds both on a class of three and their errors.
func TestReversedAndRelabel(t *testing.T) {
	o := placing.MustParseOrder("3-1-2")
	if got := o.Reversed().String(); got != "2-1-3" {
		t.Errorf("Reversed is %s", got)
	}
	if got := (placing.Order{}).Reversed(); got != (placing.Order{}) {
		t.Errorf("the reversed zero is %v", got)
	}
	if got, err := o.Relabel(placing.MustParseOrder("2-3-1")); err != nil || got.String() != "1-2-3" {
		t.Errorf("Relabel: %v, %v; want 1-2-3", got, err)
	}
	got, err := o.Relabel(placing.MustParseOrder("1-2"))
	faulttest.Field(t, "Relabel", err, placing.FieldError{Field: "new numbers", Value: "1-2", Allowed: "an order of 3 exhibits", Err: placing.ErrRange})
	if got != (placing.Order{}) {
		t.Errorf("gives %v", got)
	}
	_, err = o.Relabel(placing.Order{})
	faulttest.Field(t, "Relabel to nothing", err, placing.FieldError{Field: "new numbers", Allowed: "an order of 3 exhibits", Err: placing.ErrMissing})
	n, err := o.Disagreements(placing.MustParseOrder("1-2-3-4"))
	faulttest.Field(t, "Disagreements", err, placing.FieldError{Field: "order", Value: "1-2-3-4", Allowed: "an order of 3 exhibits", Err: placing.ErrRange})
	if n != 0 {
		t.Errorf("gives %d", n)
	}
	for in, want := range map[string]int{"3-1-2": 0, "1-3-2": 1, "3-2-1": 1, "1-2-3": 2, "2-3-1": 2, "2-1-3": 3} {
		if got, err := o.Disagreements(placing.MustParseOrder(in)); err != nil || got != want {
			t.Errorf("Disagreements with %s: %d, %v; want %d", in, got, err, want)
		}
	}
}

// TestOrders holds that every placing comes once and in order, for the sizes
// that can be walked, and that other sizes yield nothing.
func TestOrders(t *testing.T) {
	want := 1
	for n := 2; n <= 8; n++ {
		want *= n
		got := 0
		var last placing.Order
		for o := range placing.Orders(n) {
			if got++; o.Len() != n || o.Compare(last) != 1 || last.Compare(o) != -1 {
				t.Fatalf("%v comes after %v", o, last)
			}
			if got == 1 && last != (placing.Order{}) {
				t.Fatal("does not start anew")
			}
			last = o
		}
		if got != want {
			t.Errorf("%d orders of %d, want %d", got, n, want)
		}
	}
	for _, n := range []int{-1, 0, 1, 13, 100} {
		for o := range placing.Orders(n) {
			t.Fatalf("size %d yields %v", n, o)
		}
	}
	n := 0
	for o := range placing.Orders(12) {
		if n++; n == 3 {
			if o.String() != "1-2-3-4-5-6-7-8-9-11-10-12" {
				t.Errorf("the third of twelve is %v", o)
			}
			break
		}
	}
	first := slices.Collect(placing.Orders(3))
	var text []string
	for _, o := range first {
		text = append(text, o.String())
	}
	if diff := cmp.Diff([]string{"1-2-3", "1-3-2", "2-1-3", "2-3-1", "3-1-2", "3-2-1"}, text); diff != "" {
		t.Errorf("(-want +got)\n%s", diff)
	}
}

// TestOrderCompare holds that size comes first, then the exhibits from the first
// place on, and that the zero Order comes before all.
func TestOrderCompare(t *testing.T) {
	sorted := []placing.Order{{}, placing.MustParseOrder("1-2"), placing.MustParseOrder("2-1"), placing.MustParseOrder("1-2-3"), placing.MustParseOrder("1-3-2"), placing.MustParseOrder("3-1-2")}
	for i, a := range sorted {
		for j, b := range sorted {
			want := 0
			if i < j {
				want = -1
			} else if i > j {
				want = 1
			}
			if got := a.Compare(b); got != want {
				t.Errorf("%v.Compare(%v) = %d, want %d", a, b, got, want)
			}
		}
	}
}

// TestOrdersOfTwelve holds the largest class: its first and second placing, since
// there are 479,001,600.
func TestOrdersOfTwelve(t *testing.T) {
	var got []string
	for o := range placing.Orders(placing.MaxExhibits) {
		if got = append(got, o.String()); len(got) == 2 {
			break
		}
	}
	want := []string{"1-2-3-4-5-6-7-8-9-10-11-12", "1-2-3-4-5-6-7-8-9-10-12-11"}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Errorf("the first placings of twelve (-want +got):\n%s", diff)
	}
}
