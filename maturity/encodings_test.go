package maturity_test

import (
	"encoding/json"
	"errors"
	"testing"

	"example.com/ribface/internal/testkit/roundtrip"
	"example.com/ribface/maturity"
)

func TestEncodings(t *testing.T) {
	roundtrip.Run(t, "Group", maturity.B, maturity.ParseGroup, roundtrip.Case[maturity.Group]{
		Texts:   map[string]maturity.Group{"A": maturity.A, "B": maturity.B, "C": maturity.C, "D": maturity.D, "E": maturity.E},
		Bad:     []string{"F", "A-", "AA", "unset", " "},
		Aliases: map[string]maturity.Group{"a": maturity.A, " E ": maturity.E},
		Invalid: []maturity.Group{maturity.E + 1},
	})
	roundtrip.Run(t, "Score", maturity.B.At(7), maturity.Parse, roundtrip.Case[maturity.Score]{
		Texts:   map[string]maturity.Score{"A00": maturity.A.At(0), "A99": maturity.A.At(99), "B00": maturity.A.At(100), "E100": maturity.E.At(100)},
		Aliases: map[string]maturity.Score{"A100": maturity.B.At(0), "a70": maturity.A.At(70), "A 70": maturity.A.At(70), " e100": maturity.E.At(100), "a0": maturity.A.At(0)},
		Bad:     []string{"A", "A7", "A070", "F20", "A-70", "A7 0", "A5", "70", "A101", "unset"},
		Invalid: []maturity.Score{maturity.A.At(101), maturity.A.At(-1), 99, 601},
	})
	roundtrip.Run(t, "Months", maturity.Months(29), maturity.ParseMonths, roundtrip.Case[maturity.Months]{
		Texts:   map[string]maturity.Months{"1 month": 1, "2 months": 2, "29 months": 29, "600 months": 600},
		Aliases: map[string]maturity.Months{"29": 29, "1": 1, "none": 0, "None": 0, "1 months": 1, "29 month": 29, "29months": 29, "29 MO": 29, "+3": 3, " 29  Months ": 29},
		Numbers: map[int64]maturity.Months{1: 1, 29: 29, 600: 600},
		Bad:     []string{"0", "601", "601 months", "-1", "29.5", "months", "none months", "29 months old", "2 years", "unset"},
		Invalid: []maturity.Months{-1, 601},
	})
	roundtrip.Run(t, "Teeth", maturity.Incisors(3), maturity.ParseTeeth, roundtrip.Case[maturity.Teeth]{
		Texts: map[string]maturity.Teeth{
			"0 permanent incisors": maturity.Incisors(0), "1 permanent incisor": maturity.Incisors(1),
			"2 permanent incisors": maturity.Incisors(2), "8 permanent incisors": maturity.Incisors(8),
		},
		Aliases: map[string]maturity.Teeth{"0": maturity.Incisors(0), "8": maturity.Incisors(8), "not looked at": 0, "1 permanent incisors": maturity.Incisors(1), "2 Incisors": maturity.Incisors(2), "2permanent incisor": maturity.Incisors(2), " 2 ": maturity.Incisors(2), "Not looked at": 0},
		Numbers: map[int64]maturity.Teeth{0: maturity.Incisors(0), 2: maturity.Incisors(2), 8: maturity.Incisors(8)},
		Bad:     []string{"9", "-1", "9 permanent incisors", "permanent incisors", "two", "2 teeth", "unset", "2.5"},
		Invalid: []maturity.Teeth{maturity.Incisors(9), maturity.Incisors(-1), 10},
	})
	roundtrip.Run(t, "Tens", maturity.TensTowardLean, roundtrip.Read[maturity.Tens], roundtrip.Case[maturity.Tens]{
		Texts:   map[string]maturity.Tens{"toward bone": maturity.TensTowardBone, "toward lean": maturity.TensTowardLean},
		Aliases: map[string]maturity.Tens{"keep units": maturity.KeepUnits},
		Bad:     []string{"unset", "toward", "tens(3)"},
		Invalid: []maturity.Tens{maturity.TensTowardLean + 1},
	})
	roundtrip.Run(t, "OldLean", maturity.OldLeanStaysInB, roundtrip.Read[maturity.OldLean], roundtrip.Case[maturity.OldLean]{
		Texts:   map[string]maturity.OldLean{"stays in B": maturity.OldLeanStaysInB},
		Aliases: map[string]maturity.OldLean{"may cross": maturity.OldLeanMayCross},
		Bad:     []string{"unset", "stays in C"},
		Invalid: []maturity.OldLean{maturity.OldLeanStaysInB + 1},
	})
}

// The zero value of an enumeration with a named default is valid, and prints as
// that default.
func TestNamedDefaults(t *testing.T) {
	if got := maturity.KeepUnits.String(); got != "keep units" {
		t.Errorf("KeepUnits is %q", got)
	}
	if got := maturity.OldLeanMayCross.String(); got != "may cross" {
		t.Errorf("OldLeanMayCross is %q", got)
	}
	_, err := maturity.Balancing{Tens: 3}.Balance(maturity.A.At(50), maturity.A.At(50))
	var fe *maturity.FieldError
	if !errors.As(err, &fe) || fe.Field != "rules: tens" || fe.Value != "tens(3)" {
		t.Errorf("Tens(3) gives %v", err)
	}
	_, err = maturity.Balancing{OldLean: 2}.Balance(maturity.A.At(50), maturity.A.At(50))
	if !errors.As(err, &fe) || fe.Field != "rules: old lean" || fe.Value != "old lean(2)" {
		t.Errorf("OldLean(2) gives %v", err)
	}
}

// An integer of JSON counts teeth and months, as a person would; it is not the
// number that the type holds.
func TestEvidenceJSON(t *testing.T) {
	want := maturity.Evidence{Skeletal: maturity.A.At(60), Lean: maturity.B.At(0), Teeth: maturity.Incisors(2), Papers: 29}
	b, err := json.Marshal(want)
	if err != nil {
		t.Fatal(err)
	}
	const text = `{"skeletal":"A60","lean":"B00","teeth":"2 permanent incisors","papers":"29 months"}`
	if string(b) != text {
		t.Errorf("JSON is %s, want %s", b, text)
	}
	for _, in := range []string{text, `{"skeletal":"A60","lean":"A100","teeth":2,"papers":29}`} {
		var got maturity.Evidence
		if err := json.Unmarshal([]byte(in), &got); err != nil || got != want {
			t.Errorf("%s gives %+v, %v", in, got, err)
		}
	}
	if b, err := json.Marshal(maturity.Evidence{}); err != nil || string(b) != `{}` {
		t.Errorf("zero Evidence is %s, %v", b, err)
	}
}

func TestTeethString(t *testing.T) {
	for _, tt := range []struct {
		name string
		n    int
		want string
	}{
		{"none, which differs from not looked at", 0, "0 permanent incisors"},
		{"the singular", 1, "1 permanent incisor"},
		{"a full mouth", 8, "8 permanent incisors"},
		{"one too many is shown", 9, "9 permanent incisors"},
		{"far too many are shown up to a hundred", 100, "100 permanent incisors"},
		{"and no further", 5000, "100 permanent incisors"},
		{"a negative count is not", -2, "a negative count of permanent incisors"},
	} {
		if got := maturity.Incisors(tt.n).String(); got != tt.want {
			t.Errorf("%s: Incisors(%d) prints as %q, want %q", tt.name, tt.n, got, tt.want)
		}
	}
}
