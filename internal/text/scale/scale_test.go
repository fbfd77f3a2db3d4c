package scale_test

import (
	"errors"
	"math"
	"testing"

	"example.com/ribface/internal/fault"
	"example.com/ribface/internal/text"
	"example.com/ribface/internal/text/scale"
	"github.com/google/go-cmp/cmp"
)

// water is a scale of three groups for the tests.
var water = scale.Scale{
	Kind:  "wetness",
	Short: []string{"", "Dry", "Da", "We"},
	Long:  []string{"", "Bone Dry", "Damp", "Wet"},
	Extra: []text.Alias[uint8]{{Name: "Dm", Value: 2}},
}

// TestAt holds the points of the scale and what becomes of impossible ones.
func TestAt(t *testing.T) {
	tests := []struct {
		name         string
		group, units int
		want         int16
		text         string
	}{
		{"first", 1, 0, 100, "Dry00"},
		{"one digit", 1, 9, 109, "Dry09"},
		{"two digits", 1, 10, 110, "Dry10"},
		{"last but one of a group", 1, 99, 199, "Dry99"},
		{"end of a group is the start of the next", 1, 100, 200, "Da00"},
		{"last group", 3, 99, 399, "We99"},
		{"end of the scale", 3, 100, 400, "We100"},
		{"units below", 2, -1, -4999, "Da(-1)"},
		{"units above", 2, 101, -5101, "Da(101)"},
		{"units far below", 2, math.MinInt, -4001, "Da(-999)"},
		{"units far above", 2, math.MaxInt, -5999, "Da(999)"},
		{"no group", 0, 50, -1050, "?(50)"},
		{"group below", -7, 50, -1050, "?(50)"},
		{"group above", 4, 50, -9050, "?(50)"},
		{"group far above", math.MaxInt, 999, -29999, "?(999)"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			got := water.At(tt.group, tt.units)
			if got != tt.want {
				t.Errorf("At(%d, %d) = %d, want %d", tt.group, tt.units, got, tt.want)
			}
			if diff := cmp.Diff("kept "+tt.text, string(water.Append([]byte("kept "), got))); diff != "" {
				t.Errorf("text: (-want +got)\n%s", diff)
			}
			if valid := got >= 100; water.IsValid(got) != valid {
				t.Errorf("IsValid(%d) = %v", got, !valid)
			}
		})
	}
}

// TestEveryNumber walks every int16: the valid ones split and read back, the
// others have no group, and none breaks the text.
func TestEveryNumber(t *testing.T) {
	for n := math.MinInt16; n <= math.MaxInt16; n++ {
		v := int16(n)
		g, u := water.Split(v)
		spelled := string(water.Append(nil, v))
		valid := n >= 100 && n <= 400
		switch {
		case water.IsValid(v) != valid:
			t.Fatalf("IsValid(%d) = %v", v, !valid)
		case !valid && (g != 0 || u != 0):
			t.Fatalf("Split(%d) = %d, %d", v, g, u)
		case valid && water.At(g, u) != v:
			t.Fatalf("Split(%d) = %d, %d, which is %d", v, g, u, water.At(g, u))
		case n == 400 && (g != 3 || u != 100), valid && n < 400 && u > 99:
			t.Fatalf("Split(%d) = %d, %d", v, g, u)
		case n == 0 && spelled != "", n != 0 && spelled == "":
			t.Fatalf("the text of %d is %q", v, spelled)
		}
		got, err := water.Parse(spelled)
		if valid && (got != v || err != nil) {
			t.Fatalf("%q reads as %d, %v; want %d", spelled, got, err, v)
		}
		if !valid && err == nil {
			t.Fatalf("the text %q of the invalid %d reads as %d", spelled, v, got)
		}
	}
	for v, want := range map[int16]string{1: "?(1)", 99: "?(99)", 401: "?(401)", -1: "?(-999)", math.MaxInt16: "?(32767)", math.MinInt16: "?(-232)"} {
		if got := string(water.Append(nil, v)); got != want {
			t.Errorf("the text of %d is %q, want %q", v, got, want)
		}
	}
}

// TestParse holds the spellings that are read, and the reason for every other.
func TestParse(t *testing.T) {
	const all = "Dry00 to We100"
	tests := []struct {
		name, reason string
		in           string
		want         int16
		err          *fault.ParseError
	}{
		{"short", "the canonical spelling", "Da40", 240, nil},
		{"long", "the second spelling", "Damp40", 240, nil},
		{"long with a space", "blanks may stand between", "Damp 40", 240, nil},
		{"long of two words", "the name has a space of its own", "Bone Dry 05", 105, nil},
		{"alias", "listed by hand", "Dm40", 240, nil},
		{"alias with a space", "blanks may stand between", "Dm 40", 240, nil},
		{"end of a group", "100 is the next group", "Dry100", 200, nil},
		{"end of the scale", "the last point", "We100", 400, nil},
		{"empty", "nothing to read", "", 0, &fault.ParseError{Allowed: all, Err: fault.ErrSyntax}},
		{"digits alone", "no group", "40", 0, &fault.ParseError{Allowed: all, Err: fault.ErrSyntax}},
		{"unknown group", "well formed", "Mud40", 0, &fault.ParseError{Part: "Mud", Allowed: all, Err: fault.ErrUnknown}},
		{"unknown word without digits", "a word may name a group", "Mud", 0, &fault.ParseError{Part: "Mud", Allowed: all, Err: fault.ErrUnknown}},
		{"other case", "case does not count", "da40", 240, nil},
		{"capitals", "case does not count", "DAMP 40", 240, nil},
		{"hyphen between words", "as a blank", "bone-dry 05", 105, nil},
		{"zero", "one meaning is possible", "Da0", 200, nil},
		{"short with a space", "blanks may stand between", "Da 40", 240, nil},
		{"spaces around", "any number", " Damp  40\t", 240, nil},
		{"space for a name", "no group", " 40", 0, &fault.ParseError{Allowed: all, Err: fault.ErrSyntax}},
		{"space alone", "nothing to read", " ", 0, &fault.ParseError{Allowed: all, Err: fault.ErrSyntax}},
		{"hyphen for a name", "no group", "-40", 0, &fault.ParseError{Part: "-", Allowed: all, Err: fault.ErrUnknown}},
		{"no digits", "two are needed", "Da", 0, &fault.ParseError{Part: "", Allowed: "two digits after the name, " + all, Err: fault.ErrSyntax}},
		{"one digit", "two are needed", "Da4", 0, &fault.ParseError{Part: "4", Allowed: "two digits after the name, " + all, Err: fault.ErrSyntax}},
		{"101", "100 is the most", "Da101", 0, &fault.ParseError{Part: "101", Allowed: "00 to 100 after the name", Err: fault.ErrRange}},
		{"leading zero", "no third digit", "Da040", 0, &fault.ParseError{Part: "040", Allowed: "00 to 100 after the name", Err: fault.ErrRange}},
		{"sign", "no sign is read", "Da-40", 0, &fault.ParseError{Part: "Da-", Allowed: all, Err: fault.ErrUnknown}},
		{"digits, then a letter", "the name would be all of it", "Da40x", 0, &fault.ParseError{Part: "Da40x", Allowed: all, Err: fault.ErrUnknown}},
		{"byte below 0", "just below the digits", "Da4/", 0, &fault.ParseError{Part: "Da4/", Allowed: all, Err: fault.ErrUnknown}},
		{"byte above 9", "just above the digits", "Da4:", 0, &fault.ParseError{Part: "Da4:", Allowed: all, Err: fault.ErrUnknown}},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			got, err := water.Parse(tt.in)
			if got != tt.want {
				t.Errorf("Parse(%q) = %d, want %d: %s", tt.in, got, tt.want, tt.reason)
			}
			if tt.err == nil {
				if err != nil {
					t.Errorf("Parse(%q): %v", tt.in, err)
				}
				return
			}
			tt.err.Kind, tt.err.Input = "wetness", tt.in
			var pe *fault.ParseError
			if !errors.As(err, &pe) || *pe != *tt.err {
				t.Errorf("Parse(%q): %#v, want %#v: %s", tt.in, err, tt.err, tt.reason)
			}
		})
	}
}

// TestCheck holds the errors for points that are missing or impossible.
func TestCheck(t *testing.T) {
	for _, v := range []int16{100, 101, 399, 400} {
		if err := water.Check("wet", v); err != nil {
			t.Errorf("Check of the valid %d: %v", v, err)
		}
	}
	for v, want := range map[int16]fault.FieldError{
		0:               {Field: "wet", Allowed: "Dry00 to We100", Err: fault.ErrMissing},
		99:              {Field: "wet", Value: "?(99)", Allowed: "Dry00 to We100", Err: fault.ErrRange},
		401:             {Field: "wet", Value: "?(401)", Allowed: "Dry00 to We100", Err: fault.ErrRange},
		water.At(2, -5): {Field: "wet", Value: "Da(-5)", Allowed: "Dry00 to We100", Err: fault.ErrRange},
	} {
		var fe *fault.FieldError
		if err := water.Check("wet", v); !errors.As(err, &fe) || *fe != want {
			t.Errorf("Check of %d: %#v, want %#v", v, err, want)
		}
	}
}

// TestNoAllocation holds that making, reading and splitting a point is free.
func TestNoAllocation(t *testing.T) {
	var sink int16
	if n := testing.AllocsPerRun(100, func() {
		sink += water.At(2, 40)
		v, _ := water.Parse("Bone Dry 05")
		g, u := water.Split(v)
		sink += int16(g + u)
	}); n != 0 {
		t.Errorf("%v allocations (sum %d)", n, sink)
	}
}
