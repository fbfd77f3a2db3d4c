package maturity_test

import (
	"errors"
	"math"
	"slices"
	"testing"

	"example.com/ribface/internal/testkit/faulttest"
	"example.com/ribface/maturity"
	"github.com/google/go-cmp/cmp"
)

// TestGroups holds the five groups, their order, and that a loop may stop.
func TestGroups(t *testing.T) {
	want := []maturity.Group{maturity.A, maturity.B, maturity.C, maturity.D, maturity.E}
	if diff := cmp.Diff(want, slices.Collect(maturity.Groups())); diff != "" {
		t.Errorf("(-want +got)\n%s", diff)
	}
	for g := range maturity.Groups() {
		if g == maturity.B {
			break
		}
		if g > maturity.B {
			t.Errorf("the loop went on to %v", g)
		}
	}
}

// TestGroup holds what every Group says, named or not.
func TestGroup(t *testing.T) {
	tests := []struct {
		g        maturity.Group
		valid    bool
		text     string
		from, to maturity.Months
	}{
		{0, false, "unset", 0, 0},
		{maturity.A, true, "A", 9, 30},
		{maturity.B, true, "B", 30, 42},
		{maturity.C, true, "C", 42, 72},
		{maturity.D, true, "D", 72, 96},
		{maturity.E, true, "E", 96, 0},
		{6, false, "maturity group(6)", 0, 0},
		{255, false, "maturity group(255)", 0, 0},
	}
	for _, tt := range tests {
		t.Run(tt.text, func(t *testing.T) {
			if tt.g.IsValid() != tt.valid || tt.g.String() != tt.text {
				t.Errorf("IsValid %v, String %q", tt.g.IsValid(), tt.g)
			}
			if from, to := tt.g.Months(); from != tt.from || to != tt.to {
				t.Errorf("Months: %d to %d, want %d to %d", from, to, tt.from, tt.to)
			}
		})
	}
}

// TestScore holds what a Score says at the ends of the scale and of the groups.
func TestScore(t *testing.T) {
	tests := []struct {
		name, reason string
		s            maturity.Score
		valid        bool
		group        maturity.Group
		units        int
		number       int
		text         string
	}{
		{"zero", "not set", 0, false, 0, 0, 0, "unset"},
		{"youngest", "the lower end", maturity.A.At(0), true, maturity.A, 0, 100, "A00"},
		{"one under the youngest", "outside", maturity.A.At(0) - 1, false, 0, 0, 0, "?(99)"},
		{"two digits always", "one spelling each", maturity.C.At(5), true, maturity.C, 5, 305, "C05"},
		{"last unit of A", "still A", maturity.A.At(99), true, maturity.A, 99, 199, "A99"},
		{"A100", "is B00", maturity.A.At(100), true, maturity.B, 0, 200, "B00"},
		{"E99", "below the end", maturity.E.At(99), true, maturity.E, 99, 599, "E99"},
		{"oldest", "the only unit 100", maturity.E.At(100), true, maturity.E, 100, 600, "E100"},
		{"one over the oldest", "outside", maturity.E.At(100) + 1, false, 0, 0, 0, "?(601)"},
		{"impossible units", "shows what was asked", maturity.A.At(150), false, 0, 0, 0, "A(150)"},
		{"negative units", "shows what was asked", maturity.B.At(-1), false, 0, 0, 0, "B(-1)"},
		{"no group", "shows what was asked", maturity.Group(0).At(50), false, 0, 0, 0, "?(50)"},
		{"unknown group", "shows what was asked", maturity.Group(200).At(50), false, 0, 0, 0, "?(50)"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			s := tt.s
			if s.IsValid() != tt.valid || s.Group() != tt.group || s.Units() != tt.units || s.Number() != tt.number || s.String() != tt.text {
				t.Errorf("%s: valid %v, group %v, units %d, number %d, text %q", tt.reason, s.IsValid(), s.Group(), s.Units(), s.Number(), s)
			}
		})
	}
	if maturity.A.At(100) != maturity.B.At(0) {
		t.Error("A100 and B00 are two points")
	}
}

// TestScoreCheck holds the error for every kind of bad score.
func TestScoreCheck(t *testing.T) {
	for _, s := range []maturity.Score{maturity.A.At(0), maturity.E.At(100)} {
		if err := s.Check("bone"); err != nil {
			t.Errorf("%v: %v", s, err)
		}
	}
	const allowed = "A00 to E100"
	faulttest.Field(t, "unset", maturity.Score(0).Check("bone"), maturity.FieldError{Field: "bone", Allowed: allowed, Err: maturity.ErrMissing})
	faulttest.Field(t, "impossible", maturity.A.At(150).Check("bone"), maturity.FieldError{Field: "bone", Value: "A(150)", Allowed: allowed, Err: maturity.ErrRange})
	_, err := maturity.A.At(150).AppendText(nil)
	faulttest.Field(t, "AppendText", err, maturity.FieldError{Field: "maturity", Value: "A(150)", Allowed: allowed, Err: maturity.ErrRange})
	_, err = maturity.Group(6).MarshalText()
	faulttest.Field(t, "group", err, maturity.FieldError{Field: "maturity group", Value: "maturity group(6)", Allowed: "A, B, C, D, E", Err: maturity.ErrUnknown})
}

// TestParse holds what is read as a score and why all else is refused.
func TestParse(t *testing.T) {
	const allowed = "A00 to E100"
	tests := []struct {
		name, reason, in string
		want             maturity.Score
		err              maturity.ParseError
	}{
		{"two digits", "the canonical spelling", "A70", maturity.A.At(70), maturity.ParseError{}},
		{"leading zero", "two digits always", "E05", maturity.E.At(5), maturity.ParseError{}},
		{"A100", "the other spelling of B00", "A100", maturity.B.At(0), maturity.ParseError{}},
		{"E100", "the oldest point", "E100", maturity.E.At(100), maturity.ParseError{}},
		{"empty", "no form", "", 0, maturity.ParseError{Kind: "maturity", Allowed: allowed, Err: maturity.ErrSyntax}},
		{"digits", "no letter", "70", 0, maturity.ParseError{Kind: "maturity", Input: "70", Allowed: allowed, Err: maturity.ErrSyntax}},
		{"letter behind", "no score has one", "A7x", 0, maturity.ParseError{Kind: "maturity", Input: "A7x", Part: "A7x", Allowed: allowed, Err: maturity.ErrUnknown}},
		{"unknown letter", "names no group", "F20", 0, maturity.ParseError{Kind: "maturity", Input: "F20", Part: "F", Allowed: allowed, Err: maturity.ErrUnknown}},
		{"small letter", "case does not count", "a70", maturity.A.At(70), maturity.ParseError{}},
		{"one digit", "two are needed", "A7", 0, maturity.ParseError{Kind: "maturity", Input: "A7", Part: "7", Allowed: "two digits after the name, " + allowed, Err: maturity.ErrSyntax}},
		{"101", "100 is the most", "A101", 0, maturity.ParseError{Kind: "maturity", Input: "A101", Part: "101", Allowed: "00 to 100 after the name", Err: maturity.ErrRange}},
		{"space", "any number", " A  70 ", maturity.A.At(70), maturity.ParseError{}},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			got, err := maturity.Parse(tt.in)
			if got != tt.want {
				t.Errorf("Parse(%q) = %v, want %v: %s", tt.in, got, tt.want, tt.reason)
			}
			if tt.err.Err == nil {
				if err != nil || maturity.MustParse(tt.in) != tt.want {
					t.Errorf("Parse(%q): %v", tt.in, err)
				}
				return
			}
			faulttest.Parse(t, tt.reason, err, tt.err)
			defer func() {
				if r, ok := recover().(error); !ok || !errors.Is(r, tt.err.Err) {
					t.Errorf("MustParse(%q) panics with %v, want the error", tt.in, r)
				}
			}()
			maturity.MustParse(tt.in)
		})
	}
	g, err := maturity.ParseGroup("F")
	faulttest.Parse(t, "group", err, maturity.ParseError{Kind: "maturity group", Input: "F", Allowed: "A, B, C, D, E", Err: maturity.ErrUnknown})
	if g != 0 {
		t.Errorf("ParseGroup of a wrong letter gives %v", g)
	}
}

// TestCompare holds that Score.Compare is the order of the integers, so that
// slices.SortFunc puts invalid scores first.
func TestCompare(t *testing.T) {
	list := []maturity.Score{maturity.E.At(100), maturity.B.At(0), 0, maturity.A.At(99), maturity.A.At(150), maturity.B.At(0)}
	slices.SortFunc(list, maturity.Score.Compare)
	want := []maturity.Score{maturity.A.At(150), 0, maturity.A.At(99), maturity.B.At(0), maturity.B.At(0), maturity.E.At(100)}
	if diff := cmp.Diff(want, list); diff != "" {
		t.Errorf("(-want +got)\n%s", diff)
	}
	for s, want := range map[maturity.Score]int{math.MinInt16: 1, 199: 1, 200: 0, 201: -1, math.MaxInt16: -1} {
		if got := maturity.B.At(0).Compare(s); got != want {
			t.Errorf("B00.Compare(%d) = %d, want %d", s, got, want)
		}
	}
}
