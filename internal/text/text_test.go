package text_test

import (
	"errors"
	"testing"

	"example.com/ribface/internal/fault"
	"example.com/ribface/internal/text"
	"github.com/google/go-cmp/cmp"
)

var colors = text.Enum{Kind: "color", Names: []string{"", "red", "green"}}

// color is an encodable type made of the parts of the package.
type color int

func parse(s string) (color, error) {
	v, err := colors.Parse(s)
	return color(v), err
}

func (c *color) UnmarshalText(b []byte) error { return text.Unmarshal(c, b, parse) }
func (c color) MarshalText() ([]byte, error)  { return colors.Append(nil, int(c)) }

func sameField(t *testing.T, what string, err error, want fault.FieldError) {
	t.Helper()
	var fe *fault.FieldError
	if !errors.As(err, &fe) || *fe != want {
		t.Errorf("%s: %#v, want %#v", what, err, want)
	}
}

// TestEnum holds every answer about every value around the named ones.
func TestEnum(t *testing.T) {
	tests := []struct {
		v     int
		valid bool
		text  string
	}{
		{-1, false, "color(-1)"}, {0, false, "unset"}, {1, true, "red"}, {2, true, "green"}, {3, false, "color(3)"},
	}
	for _, tt := range tests {
		if got := colors.IsValid(tt.v); got != tt.valid {
			t.Errorf("IsValid(%d) = %v", tt.v, got)
		}
		if diff := cmp.Diff(tt.text, colors.String(tt.v)); diff != "" {
			t.Errorf("String(%d): (-want +got)\n%s", tt.v, diff)
		}
		b, err := colors.Append([]byte("kept "), tt.v)
		check := colors.Check("paint", tt.v)
		switch {
		case tt.valid:
			if string(b) != "kept "+tt.text || err != nil || check != nil {
				t.Errorf("%d: Append %q, %v; Check %v", tt.v, b, err, check)
			}
			if v, err := colors.Parse(tt.text); v != tt.v || err != nil {
				t.Errorf("Parse(%q) = %d, %v", tt.text, v, err)
			}
		case tt.v == 0:
			if string(b) != "kept " || err != nil {
				t.Errorf("zero: Append %q, %v", b, err)
			}
			sameField(t, "Check of zero", check, fault.FieldError{Field: "paint", Allowed: "red, green", Err: fault.ErrMissing})
		default:
			if string(b) != "kept " {
				t.Errorf("%d: Append wrote %q", tt.v, b)
			}
			sameField(t, "Append", err, fault.FieldError{Field: "color", Value: tt.text, Allowed: "red, green", Err: fault.ErrUnknown})
			sameField(t, "Check", check, fault.FieldError{Field: "paint", Value: tt.text, Allowed: "red, green", Err: fault.ErrUnknown})
		}
	}
}

// TestEnumParse holds that only the names are read, and that nothing and a wrong
// name are told apart.
func TestEnumParse(t *testing.T) {
	for in, reason := range map[string]error{"": fault.ErrSyntax, "blue": fault.ErrUnknown, "Red": fault.ErrUnknown, "red ": fault.ErrUnknown, "unset": fault.ErrUnknown, "1": fault.ErrUnknown} {
		v, err := colors.Parse(in)
		var pe *fault.ParseError
		want := fault.ParseError{Kind: "color", Input: in, Allowed: "red, green", Err: reason}
		if v != 0 || !errors.As(err, &pe) || *pe != want {
			t.Errorf("Parse(%q) = %d, %#v; want %#v", in, v, err, want)
		}
	}
}

// TestUnmarshal holds what empty text does, and that an error changes nothing.
func TestUnmarshal(t *testing.T) {
	tests := []struct {
		name, in string
		empty    color // after Unmarshal
		set      color // after UnmarshalSet
		err, no  bool  // whether Unmarshal and UnmarshalSet refuse
	}{
		{"name", "green", 2, 2, false, false},
		{"empty", "", 0, 1, false, true},
		{"wrong", "blue", 1, 1, true, true},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			got := color(1)
			if err := text.Unmarshal(&got, []byte(tt.in), parse); got != tt.empty || (err != nil) != tt.err {
				t.Errorf("Unmarshal: %d, %v", got, err)
			}
			got = 1
			if err := text.UnmarshalSet(&got, []byte(tt.in), parse); got != tt.set || (err != nil) != tt.no {
				t.Errorf("UnmarshalSet: %d, %v", got, err)
			}
		})
	}
}

// TestScan holds what a database column may be.
func TestScan(t *testing.T) {
	for _, src := range []any{"green", []byte("green")} {
		got := color(1)
		if err := text.Scan(&got, "color", src); err != nil || got != 2 {
			t.Errorf("Scan of %T: %d, %v", src, got, err)
		}
	}
	got := color(1)
	sameField(t, "NULL", text.Scan(&got, "color", nil), fault.FieldError{Field: "color", Value: "NULL", Allowed: "text; wrap the type in sql.Null for a column that may be NULL", Err: fault.ErrMissing})
	sameField(t, "number", text.Scan(&got, "color", int64(2)), fault.FieldError{Field: "color", Value: "a column that is not text", Allowed: "text", Err: fault.ErrSyntax})
	if err := text.Scan(&got, "color", "blue"); !errors.Is(err, fault.ErrUnknown) || got != 1 {
		t.Errorf("Scan of a wrong name: %d, %v", got, err)
	}
}

// TestValue holds that a database gets the text, and nothing on an error.
func TestValue(t *testing.T) {
	if v, err := text.Value(color(2)); v != "green" || err != nil {
		t.Errorf("Value: %v, %v", v, err)
	}
	if v, err := text.Value(color(3)); v != nil || !errors.Is(err, fault.ErrUnknown) {
		t.Errorf("Value of what has no text: %v, %v", v, err)
	}
}
