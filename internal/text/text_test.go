package text_test

import (
	"errors"
	"fmt"
	"slices"
	"testing"

	"example.com/ribface/internal/fault"
	"example.com/ribface/internal/testkit/roundtrip"
	"example.com/ribface/internal/text"
	"example.com/ribface/internal/text/fixed"
	"github.com/google/go-cmp/cmp"
)

var colors = text.Enum[color]{Kind: "color", Names: []string{"", "red", "green"}}

// color is an encodable type made of the parts of the package.
type color uint8

func (c color) IsValid() bool                 { return colors.Valid(c) }
func (c color) String() string                { return colors.String(c) }
func (c *color) UnmarshalText(b []byte) error { return colors.Unmarshal(c, b) }
func (c color) MarshalText() ([]byte, error)  { return colors.Marshal(c) }

func sameField(t *testing.T, what string, err error, want fault.FieldError) {
	t.Helper()
	var fe *fault.FieldError
	if !errors.As(err, &fe) || *fe != want {
		t.Errorf("%s: %#v, want %#v", what, err, want)
	}
}

// FuzzEnum holds that an enumeration keeps the laws of encodings, for all of them.
func FuzzEnum(f *testing.F) {
	roundtrip.Fuzz(f, colors.Parse, color(2), "red", "Green", " RED ", "red-", "color(3)")
}

// TestEnum holds every answer about every value around the named ones.
func TestEnum(t *testing.T) {
	tests := []struct {
		v     color
		valid bool
		text  string
	}{
		{255, false, "color(255)"}, {0, false, "unset"}, {1, true, "red"}, {2, true, "green"}, {3, false, "color(3)"},
	}
	for _, tt := range tests {
		if got := colors.Valid(tt.v); got != tt.valid {
			t.Errorf("Valid(%d) = %v", tt.v, got)
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
	for in, reason := range map[string]error{"": fault.ErrSyntax, "blue": fault.ErrUnknown, "red -": fault.ErrUnknown, "-red": fault.ErrUnknown, " ": fault.ErrSyntax, "unset": fault.ErrUnknown, "1": fault.ErrUnknown} {
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
	e := text.Enum[uint8]{Kind: "tint", Names: []string{"", "pale"}, Zero: "none"}
	if e.String(0) != "none" || e.String(1) != "pale" || e.String(2) != "tint(2)" || e.Allowed() != "none, pale" || e.Valid(0) {
		t.Errorf("%q, %q, %q, allowed %q, zero valid %v", e.String(0), e.String(1), e.String(2), e.Allowed(), e.Valid(0))
	}
	if b, err := e.Append([]byte("kept"), 0); string(b) != "kept" || err != nil {
		t.Errorf("Append of zero: %q, %v", b, err)
	}
	for in, want := range map[string]uint8{"none": 0, "pale": 1} {
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

// TestEnumLenient holds the further spellings that are read.
func TestEnumLenient(t *testing.T) {
	e := text.Enum[uint8]{Kind: "tint", Names: []string{"", "very pale", "dark"}, Zero: "no tint", Also: []text.Alias[uint8]{{Name: "D", Value: 2}, {Name: "1/3", Value: 1}}}
	for in, want := range map[string]uint8{"Very Pale": 1, " very-pale\t": 1, "very__pale": 1, "VERY  PALE": 1, "d": 2, " D ": 2, "1/3": 1, "No-Tint": 0, "dark": 2} {
		if v, err := e.Parse(in); v != want || err != nil {
			t.Errorf("Parse(%q) = %d, %v; want %d", in, v, err, want)
		}
	}
	for _, in := range []string{"verypale", "very pale -", "_dark", "very", "pale very", "dark dark", "no tint at all"} {
		if v, err := e.Parse(in); v != 0 || !errors.Is(err, fault.ErrUnknown) {
			t.Errorf("Parse(%q) = %d, %v", in, v, err)
		}
	}
}

// TestWords holds the small parts of reading.
func TestWords(t *testing.T) {
	for in, want := range map[string][2]string{
		"": {"", ""}, "one": {"one", ""}, "one two": {"one", "two"}, "one--two three": {"one", "two three"}, "one_\u00a0 two": {"one", "two"},
		"one ": {"one ", ""}, "-one": {"-one", ""}, "one-": {"one-", ""},
	} {
		if word, rest := text.CutWord(in); word != want[0] || rest != want[1] {
			t.Errorf("CutWord(%q) = %q, %q", in, word, rest)
		}
	}
	for in, want := range map[string]string{"": "", "a": "a", " a\t": "a", "\u00a0a": "a", " ": "", "é ": "é"} {
		if got := text.Trim(in); got != want {
			t.Errorf("Trim(%q) = %q", in, got)
		}
	}
	for _, tt := range []struct {
		s, suffix, before string
		ok                bool
	}{{"5 KG", "kg", "5 ", true}, {"kg", "kg", "", true}, {"g", "kg", "g", false}, {"5 lb", "kg", "5 lb", false}} {
		if before, ok := text.CutSuffixFold(tt.s, tt.suffix); before != tt.before || ok != tt.ok {
			t.Errorf("CutSuffixFold(%q, %q) = %q, %v", tt.s, tt.suffix, before, ok)
		}
	}
	if text.Title("") != "" || text.Title("area") != "Area" {
		t.Error("Title")
	}
}

// shown is a value with a number of four places, for package fmt.
type shown int64

func (s shown) Format(f fmt.State, verb rune) {
	number := ""
	if (verb == 'f' || verb == 'F') && s != 0 {
		number = text.Fixed(f, int64(s), 4, fixed.Down)
	}
	text.Format(f, verb, "plain", "syntax", number)
}

// TestFormat holds every verb, width and precision.
func TestFormat(t *testing.T) {
	for format, want := range map[string]string{
		"%v": "plain", "%s": "plain", "%q": `"plain"`, "%#v": "syntax", "%+v": "plain", "%8v|": "   plain|", "%-8v|": "plain   |", "%8s|": "   plain|", "%-8s|": "plain   |", "%.2s": "pl", "%9q|": `  "plain"|`,
		"%f": "2.96", "%F": "2.96", "%.1f": "2.9", "%.0f": "2", "%.2f": "2.96", "%.4f": "2.9600", "%.6f": "2.960000", "%8.1f|": "     2.9|", "%-8.1f|": "2.9     |", "%+.1f": "+2.9",
		"%d": "%!d(plain)", "%x": "%!x(plain)",
	} {
		if got := fmt.Sprintf(format, shown(29_600)); got != want {
			t.Errorf("%s gives %q, want %q", format, got, want)
		}
	}
	if got := fmt.Sprintf("%.1f %+.1f %f", shown(-100), shown(-100), shown(0)); got != "-0.1 -0.1 plain" {
		t.Errorf("below zero and without a number: %q", got)
	}
	if got := len(fmt.Sprintf("%.1000f", shown(1))); got != 102 {
		t.Errorf("a thousand places give %d bytes", got)
	}
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
	for in, want := range map[string]color{"green": 2, "": 0, "blue": 1} {
		got := color(1)
		if err := text.Unmarshal(&got, []byte(in), colors.Parse); got != want || (err != nil) != (in == "blue") {
			t.Errorf("Unmarshal of %q: %d, %v", in, got, err)
		}
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
	if err := text.Scan(&got, "color", nil); err != nil || got != 0 {
		t.Errorf("Scan of NULL: %d, %v", got, err)
	}
	got = 1
	sameField(t, "bool", text.Scan(&got, "color", true), fault.FieldError{Field: "color", Value: "a column that is neither text nor a number", Allowed: "text or a number", Err: fault.ErrSyntax})
	var n number
	for src, want := range map[any]number{int64(-42): "-42", 2.5: "2.5", "7": "7"} {
		if err := text.Scan(&n, "number", src); err != nil || n != want {
			t.Errorf("Scan of %v: %q, %v", src, n, err)
		}
	}
	if err := text.Scan(&got, "color", "blue"); !errors.Is(err, fault.ErrUnknown) || got != 1 {
		t.Errorf("Scan of a wrong name: %d, %v", got, err)
	}
}

// TestEnumAll holds that the named values come in order, and that a reader may stop.
func TestEnumAll(t *testing.T) {
	if got := slices.Collect(colors.All()); !slices.Equal(got, []color{1, 2}) {
		t.Errorf("%v", got)
	}
	for range colors.All() {
		break
	}
}

// TestEnumColumn holds that an enumeration goes into a database and comes back as
// Scan and Value do it.
func TestEnumColumn(t *testing.T) {
	for v := range color(4) {
		want, wantErr := text.Value(v)
		if got, err := colors.Value(v); got != want || (err == nil) != (wantErr == nil) {
			t.Errorf("Value of %v: %v, %v; want %v, %v", v, got, err, want, wantErr)
		}
	}
	for _, src := range []any{"green", []byte("red"), nil, "blue", true, int64(1)} {
		got, want := color(1), color(1)
		err, wantErr := colors.Scan(&got, src), text.Scan(&want, "color", src)
		if got != want || (err == nil) != (wantErr == nil) {
			t.Errorf("Scan of %v: %v, %v; want %v, %v", src, got, err, want, wantErr)
		}
	}
}

// TestAppendName holds that a name goes behind what is there, and which values have one.
func TestAppendName(t *testing.T) {
	for v, want := range []string{"kept ", "kept red", "kept green", "kept "} {
		b, err := text.AppendName([]byte("kept "), color(v))
		if string(b) != want || (err != nil) != (v == 3) {
			t.Errorf("AppendName of %d: %q, %v", v, b, err)
		}
		if text.Named(color(v)) != (v == 1 || v == 2) {
			t.Errorf("Named(%d) is wrong", v)
		}
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
	if v, err := text.Value(color(0)); v != nil || err != nil {
		t.Errorf("Value of empty text: %v, %v", v, err)
	}
	if v, err := text.Value(color(3)); v != nil || !errors.Is(err, fault.ErrUnknown) {
		t.Errorf("Value of what has no text: %v, %v", v, err)
	}
}
