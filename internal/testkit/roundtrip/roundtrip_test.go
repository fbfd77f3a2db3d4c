package roundtrip

import (
	"database/sql/driver"
	"encoding/json"
	"errors"
	"strings"
	"testing"

	"example.com/ribface/internal/fault"
)

// defect names the one thing that the type letter does wrong at the moment;
// empty when it keeps every law.
var defect string

// letter is a small encodable type: "a" to "y" are its values, "z" has no text.
type letter struct{ c byte }

func parseLetter(s string) (letter, error) {
	if len(s) == 1 && s[0] >= 'a' && s[0] <= 'y' || defect == "invalid parses" && s == "invalid" {
		if defect == "parse gives another" {
			return letter{'q'}, nil
		}
		return letter{s[0]}, nil
	}
	input, allowed, reason, kind := s[:min(len(s), 64)], "a to y", fault.ErrUnknown, "letter"
	switch defect {
	case "parse error of another kind":
		return letter{}, errors.New("no")
	case "parse error with a value":
		return letter{'a'}, fault.Parse(kind, input, "", allowed, reason)
	case "parse error without reason":
		reason = errors.New("no")
	case "parse error with another input":
		input = "other"
	case "parse error with all of a long input":
		input = s
	case "parse error in two lines":
		allowed = "a\nb"
	}
	return letter{}, &fault.ParseError{Kind: kind, Input: input, Allowed: allowed, Err: reason}
}

func (l letter) String() string {
	switch {
	case l.c == 0:
		return "unset"
	case l.c == 'z':
		return "invalid"
	case defect == "String differs":
		return "x" + string(rune(l.c))
	}
	return string(rune(l.c))
}

func (l letter) AppendText(b []byte) ([]byte, error) {
	if l.c == 0 {
		return b, nil
	}
	if l.c == 'z' {
		if defect == "invalid appends" {
			return append(b, 'z'), nil
		}
		return b, refuse()
	}
	if defect == "AppendText overwrites" {
		b = b[:0]
	}
	return append(b, l.c), nil
}

func refuse() error {
	return &fault.FieldError{Field: "letter", Value: "z", Allowed: "a to y", Err: fault.ErrRange}
}

func (l letter) MarshalText() ([]byte, error) {
	if defect == "MarshalText refuses all" {
		return nil, refuse()
	}
	if l.c == 'z' && defect != "invalid marshals" {
		return nil, refuse()
	}
	return []byte(strings.Trim(string(rune(l.c)), "\x00")), nil
}

func (l *letter) UnmarshalText(b []byte) error {
	if defect == "UnmarshalText keeps the old value" && l.c != 0 {
		return nil
	}
	if len(b) == 0 {
		*l = letter{}
		return nil
	}
	v, err := parseLetter(string(b))
	if err == nil || defect == "UnmarshalText clears on error" {
		*l = v
	}
	return err
}

func (l letter) Value() (driver.Value, error) {
	switch {
	case l.c == 'z' && defect == "invalid has a Value":
		return "z", nil
	case l.c == 'z':
		return nil, refuse()
	case defect == "Value is a number":
		return int64(l.c), nil
	case l.c == 0 && defect == "Value of nothing is text":
		return "", nil
	case l.c == 0:
		return nil, nil
	}
	return string(rune(l.c)), nil
}

func (l *letter) Scan(src any) error {
	switch v := src.(type) {
	case string:
		return l.UnmarshalText([]byte(v))
	case []byte:
		if defect == "Scan takes no bytes" {
			return refuse()
		}
		return l.UnmarshalText(v)
	case int64, float64:
		if defect == "Scan takes any number" {
			return nil
		}
		return refuse()
	case nil:
		if defect == "Scan refuses NULL" {
			return refuse()
		}
		*l = letter{}
		return nil
	}
	if defect == "Scan clears on another column" {
		*l = letter{}
	}
	return refuse()
}

// MarshalJSON writes the text in quotes.
func (l letter) MarshalJSON() ([]byte, error) {
	if l.c == 'z' {
		if defect == "invalid has JSON" {
			return []byte(`"z"`), nil
		}
		return nil, refuse()
	}
	if defect == "JSON refused" {
		return nil, refuse()
	}
	if defect == "JSON differs" {
		return []byte(`"q"`), nil
	}
	b, err := l.MarshalText()
	return []byte(`"` + string(b) + `"`), err
}

func (l *letter) UnmarshalJSON(b []byte) error {
	if defect == "UnmarshalJSON writes to its input" && len(b) > 0 {
		b[0] = 'X'
		return nil
	}
	if defect == "UnmarshalJSON takes anything" {
		*l = letter{'z'}
		return nil
	}
	if defect == "UnmarshalJSON clears on error" {
		*l = letter{}
	}
	if string(b) == "null" && defect != "UnmarshalJSON clears on null" {
		return nil
	}
	var s string
	if err := json.Unmarshal(b, &s); err != nil {
		return err
	}
	return l.UnmarshalText([]byte(s))
}

// laws runs every law over the letter type and returns the first that is broken.
func laws() error {
	var errs []error
	for c := byte('a'); c <= 'y'; c++ {
		errs = append(errs, Value[letter](letter{c}, parseLetter))
	}
	errs = append(errs, Check[letter](letter{}, true, parseLetter), Check[letter](letter{'z'}, false, parseLetter))
	for _, in := range []string{"", "a", "y", "z", "ab", "\xff", "\n", strings.Repeat("long", 20)} {
		for _, kept := range []letter{{}, {'k'}} {
			errs = append(errs, Input[letter](in, kept, parseLetter))
		}
	}
	for _, in := range []string{"", "null", `"a"`, `"z"`, "1", "{", `"\u0061"`} {
		errs = append(errs, JSON[letter]([]byte(in), letter{'k'}, parseLetter))
	}
	for _, src := range []any{nil, int64(1), 1.5, true} {
		errs = append(errs, Column[letter](src, letter{'k'}))
	}
	return errors.Join(errs...)
}

// TestLawsAreNoticed breaks a type that keeps every law in one way after another: a law
// that cannot fail would guard nothing.
func TestLawsAreNoticed(t *testing.T) {
	defect = ""
	if err := laws(); err != nil {
		t.Fatalf("a type without defect breaks a law: %v", err)
	}
	defer func() { defect = "" }()
	for _, d := range []struct{ name, want string }{
		{"MarshalText refuses all", "MarshalText of a"},
		{"AppendText overwrites", "AppendText of a"},
		{"String differs", "text by String"},
		{"parse gives another", "parse of"},
		{"UnmarshalText keeps the old value", "over"},
		{"UnmarshalText clears on error", "want an error and no change"},
		{"Scan takes no bytes", "Scan of bytes"},
		{"Value is a number", "Value of a"},
		{"JSON refused", "JSON of a map"},
		{"JSON differs", "JSON map"},
		{"invalid marshals", "MarshalText of the invalid"},
		{"invalid appends", "AppendText of the invalid"},
		{"invalid has a Value", "Value of the invalid"},
		{"invalid has JSON", "JSON of the invalid"},
		{"invalid parses", "invalid value has the String"},
		{"parse error with a value", "with the error"},
		{"parse error of another kind", "is neither ParseError"},
		{"parse error without reason", "lacks kind"},
		{"parse error with another input", "has the input"},
		{"parse error with all of a long input", "has the input"},
		{"parse error in two lines", "no plain line"},
		{"UnmarshalJSON writes to its input", "was written to"},
		{"UnmarshalJSON clears on error", "JSON"},
		{"UnmarshalJSON takes anything", "JSON"},
		{"Scan refuses NULL", "Scan of <nil>"},
		{"Scan takes any number", "decoding a column of int64"},
		{"Scan clears on another column", "decoding a column of bool"},
		{"Value of nothing is text", "want NULL for no text"},
	} {
		t.Run(d.name, func(t *testing.T) {
			defect = d.name
			err := laws()
			if err == nil {
				t.Fatal("no law notices")
			}
			if !strings.Contains(err.Error(), d.want) {
				t.Errorf("the laws say %v; want a complaint with %q", err, d.want)
			}
		})
	}
}

// letters is a case that holds for the letter type.
func letters() Case[letter] {
	return Case[letter]{
		Texts:   map[string]letter{"a": {'a'}, "y": {'y'}},
		Bad:     []string{"z", "ab"},
		Invalid: []letter{{'z'}},
	}
}

// TestSpelling runs a case that holds, then cases with one error each.
func TestSpelling(t *testing.T) {
	defect = ""
	Run(t, "letter", letter{'k'}, parseLetter, letters())
	for _, tt := range []struct {
		name, want string
		spoil      func(*Case[letter])
	}{
		{"no texts", "lacks", func(c *Case[letter]) { c.Texts = nil }},
		{"no bad texts", "lacks", func(c *Case[letter]) { c.Bad = nil }},
		{"text of another value", "the text of b", func(c *Case[letter]) { c.Texts["a"] = letter{'b'} }},
		{"alias of another value", `parse of "c"`, func(c *Case[letter]) { c.Aliases = map[string]letter{"c": {'d'}} }},
		{"alias that is canonical", "both alias and canonical", func(c *Case[letter]) { c.Aliases = map[string]letter{"a": {'a'}} }},
		{"bad text that is read", `bad text "b"`, func(c *Case[letter]) { c.Bad = append(c.Bad, "b") }},
		{"bad text that is the empty one", `bad text ""`, func(c *Case[letter]) { c.Bad = append(c.Bad, "") }},
		{"invalid value that can be written", "MarshalText of the invalid", func(c *Case[letter]) { c.Invalid = append(c.Invalid, letter{'b'}) }},
		{"numbers that are not read", "Scan(1)", func(c *Case[letter]) { c.Numbers = map[int64]letter{1: {'a'}} }},
	} {
		c := letters()
		tt.spoil(&c)
		if err := errors.Join(Spelling[letter](letter{'k'}, parseLetter, c)...); err == nil || !strings.Contains(err.Error(), tt.want) {
			t.Errorf("%s: %v; want a complaint with %q", tt.name, err, tt.want)
		}
	}
	if Spelling[letter](letter{}, parseLetter, letters()) == nil {
		t.Error("a receiver that is zero is taken")
	}
	defer func() { defect = "" }()
	for _, defect = range []string{"MarshalText refuses all", "String differs", "UnmarshalText clears on error", "Scan takes no bytes", "Scan refuses NULL", "Scan takes any number", "Scan clears on another column", "Value of nothing is text", "JSON differs", "JSON refused", "Value is a number", "invalid has a Value", "UnmarshalJSON clears on error", "UnmarshalJSON clears on null"} {
		if Spelling[letter](letter{'k'}, parseLetter, letters()) == nil {
			t.Errorf("%s: not noticed", defect)
		}
	}
}

// stubborn is a type whose flag value cannot be set, to reach the last law.
type stubborn struct{ letter }

func (s *stubborn) UnmarshalText(b []byte) error {
	if stubbornCalls++; stubbornCalls > stubbornAfter {
		return refuse()
	}
	return s.letter.UnmarshalText(b)
}

var stubbornCalls, stubbornAfter int

// TestFlagLaw lets a type refuse at its last decoding, which is the flag's.
func TestFlagLaw(t *testing.T) {
	defect = ""
	parse := func(s string) (stubborn, error) {
		l, err := parseLetter(s)
		return stubborn{l}, err
	}
	stubbornAfter = 1000
	if err := Value[stubborn](stubborn{letter{'a'}}, parse); err != nil {
		t.Fatal(err)
	}
	stubbornAfter, stubbornCalls = stubbornCalls-1, 0
	if err := Value[stubborn](stubborn{letter{'a'}}, parse); err == nil || !strings.Contains(err.Error(), "flag of") {
		t.Errorf("the flag law gives %v", err)
	}
}
