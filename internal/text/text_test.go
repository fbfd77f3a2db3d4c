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

// TestEnumZero holds that a zero with a name prints and parses as it, is listed
// as allowed, and still has empty text.
func TestEnumZero(t *testing.T) {
	e := text.Enum{Kind: "tint", Names: []string{"", "pale"}, Zero: "none"}
	if e.String(0) != "none" || e.String(1) != "pale" || e.String(2) != "tint(2)" || e.Allowed() != "none, pale" || e.IsValid(0) {
		t.Errorf("%q, %q, %q, allowed %q, zero valid %v", e.String(0), e.String(1), e.String(2), e.Allowed(), e.IsValid(0))
	}
	if b, err := e.Append([]byte("kept"), 0); string(b) != "kept" || err != nil {
		t.Errorf("Append of zero: %q, %v", b, err)
	}
	for in, want := range map[string]int{"none": 0, "pale": 1} {
		if v, err := e.Parse(in); v != want || err != nil {
			t.Errorf("Parse(%q) = %d, %v", in, v, err)
		}
	}
	for in, reason := range map[string]error{"": fault.ErrSyntax, "unset": fault.ErrUnknown} {
		if v, err := e.Parse(in); v != 0 || !errors.Is(err, reason) {
			t.Errorf("Parse(%q) = %d, %v", in, v, err)
		}
	}
}

// TestScanNumber holds that an integer is read as its text, and all else as Scan
// reads it.
func TestScanNumber(t *testing.T) {
	var n number
	if err := text.ScanNumber(&n, "number", int64(-42)); err != nil || n != "-42" {
		t.Errorf("int64: %q, %v", n, err)
	}
	if err := text.ScanNumber(&n, "number", "7"); err != nil || n != "7" {
		t.Errorf("string: %q, %v", n, err)
	}
	sameField(t, "NULL", text.ScanNumber(&n, "number", nil), fault.FieldError{Field: "number", Value: "NULL", Allowed: "text; wrap the type in sql.Null for a column that may be NULL", Err: fault.ErrMissing})
	sameField(t, "float", text.ScanNumber(&n, "number", 1.0), fault.FieldError{Field: "number", Value: "a column that is not text", Allowed: "text", Err: fault.ErrSyntax})
}

// number keeps the text it is given, and refuses "no".
type number string

func (n *number) UnmarshalText(b []byte) error {
	if string(b) == "no" {
		return fault.ErrUnknown
	}
	*n = number(b)
	return nil
}

// TestUnmarshalJSON holds what reaches UnmarshalText.
func TestUnmarshalJSON(t *testing.T) {
	for in, want := range map[string]number{
		`"0.6 in"`: "0.6 in", `0.6`: "0.6", " \n\"a\"\t": "a", `""`: "", `"`: `"`, `"a`: `"a`, `a"`: `a"`, ``: "", ` null `: "old", `"null"`: "null", `"""`: `"`, `"0.6\u0020in"`: "0.6 in", `"a\"b"`: `a"b`, `"a\`: `"a\`,
	} {
		n := number("old")
		if err := text.UnmarshalJSON(&n, []byte(in)); err != nil || n != want {
			t.Errorf("%q: %q, %v; want %q", in, n, err, want)
		}
	}
	n := number("old")
	if err := text.UnmarshalJSON(&n, []byte(`"no"`)); err != fault.ErrUnknown || n != "old" {
		t.Errorf("refused: %q, %v", n, err)
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

// TestCount holds which numbers are one thing.
func TestCount(t *testing.T) {
	for n, want := range map[int]string{-2: "-2 cuts", -1: "-1 cut", 0: "0 cuts", 1: "1 cut", 2: "2 cuts", 11: "11 cuts"} {
		if got := text.Count(n, "cut"); got != want {
			t.Errorf("Count(%d) = %q, want %q", n, got, want)
		}
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
