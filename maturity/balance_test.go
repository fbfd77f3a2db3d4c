package maturity_test

import (
	"testing"

	"example.com/ribface/internal/testkit/faulttest"
	"example.com/ribface/maturity"
)

// TestBalance holds the default balancing at both sides of every line in it. The
// arithmetic is the one taught to judges (common practice:
// quiz-quality-concepts); the values are worked out by hand.
func TestBalance(t *testing.T) {
	tests := []struct {
		name, reason         string
		skeletal, lean, want string
	}{
		{"equal", "the mean of two equals", "A50", "A50", "A50"},
		{"gap of 40", "the widest with the plain mean", "A00", "A40", "A20"},
		{"gap of 40 the other way", "the same with older bone", "A40", "A00", "A20"},
		{"gap of 41", "10 toward bone, from the half unit nearer to it", "A00", "A41", "A10"},
		{"gap of 41, older bone", "10 toward bone, from the half unit nearer to it", "A41", "A00", "A31"},
		{"gap of 42", "10 toward bone", "A00", "A42", "A11"},
		{"half unit, older lean", "to the unit nearer to bone", "A10", "A21", "A15"},
		{"half unit, older bone", "to the unit nearer to bone", "A21", "A10", "A16"},
		{"over the line of a group", "groups do not matter", "A80", "B40", "B00"},
		{"one group from bone, lean older", "220 apart is held by nothing", "A00", "C20", "B00"},
		{"more than a group, lean older", "never more than 100 from bone", "A00", "C23", "B00"},
		{"221 apart, lean older", "the mean less 10 is 100 from bone", "A00", "C21", "B00"},
		{"218 apart, lean older", "one unit before the hold", "A00", "C18", "A99"},
		{"more than a group, bone older", "never more than 100 from bone", "E50", "A20", "D50"},
		{"218 apart, bone older", "one unit before the hold", "E00", "B82", "D01"},
		{"C14 with young lean", "bone under C15 may come back into B", "C14", "B60", "B97"},
		{"C15 with young lean", "bone of C15 or older stays out of B", "C15", "B60", "C00"},
		{"C16 with young lean", "bone of C15 or older stays out of B", "C16", "B60", "C00"},
		{"C15 with old lean", "the floor does not lower", "C15", "C40", "C27"},
		{"C15 with lean that gives B99", "the floor just lifts", "C15", "B63", "C00"},
		{"C15 with lean that gives C00", "the floor just touches", "C15", "B65", "C00"},
		{"C15 with lean that gives C01", "above the floor", "C15", "B66", "C01"},
		{"bone in B, old lean", "older lean may carry it into C by default", "B90", "C60", "C15"},
		{"youngest", "the end of the scale", "A00", "A00", "A00"},
		{"oldest", "the end of the scale", "E100", "E100", "E100"},
		{"ends", "as far apart as can be", "E100", "A00", "E00"},
		{"ends the other way", "as far apart as can be", "A00", "E100", "B00"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			got, err := maturity.Balance(maturity.MustParse(tt.skeletal), maturity.MustParse(tt.lean))
			if err != nil || got.String() != tt.want {
				t.Errorf("skeletal %s, lean %s: %v, %v; want %s: %s", tt.skeletal, tt.lean, got, err, tt.want, tt.reason)
			}
		})
	}
}

// TestBalanceRules holds the choices that no source settles.
func TestBalanceRules(t *testing.T) {
	bone, lean, held := maturity.TensTowardBone, maturity.TensTowardLean, maturity.OldLeanStaysInB
	tests := []struct {
		name, reason         string
		rules                maturity.Balancing
		skeletal, lean, want string
	}{
		{"ends in 4", "down to the ten", maturity.Balancing{Tens: bone}, "A20", "A28", "A20"},
		{"ends in 6", "up to the ten", maturity.Balancing{Tens: bone}, "A20", "A32", "A30"},
		{"ends in 0", "stays", maturity.Balancing{Tens: bone}, "A20", "A40", "A30"},
		{"5 toward bone, bone younger", "down", maturity.Balancing{Tens: bone}, "A20", "A30", "A20"},
		{"5 toward bone, bone older", "up", maturity.Balancing{Tens: bone}, "A30", "A20", "A30"},
		{"5 toward lean, lean older", "up", maturity.Balancing{Tens: lean}, "A20", "A30", "A30"},
		{"5 toward lean, lean younger", "down", maturity.Balancing{Tens: lean}, "A30", "A20", "A20"},
		{"5 with both equal, toward bone", "down: equal scores never come out older", maturity.Balancing{Tens: bone}, "A25", "A25", "A20"},
		{"5 with both equal, toward lean", "down: equal scores never come out older", maturity.Balancing{Tens: lean}, "A25", "A25", "A20"},
		{"4 toward lean", "down to the ten", maturity.Balancing{Tens: lean}, "A20", "A28", "A20"},
		{"6 toward lean", "up to the ten", maturity.Balancing{Tens: lean}, "A20", "A32", "A30"},
		{"equal, over 5", "down, though the nearer ten is up", maturity.Balancing{Tens: bone}, "A27", "A27", "A20"},
		{"lean one younger, over 5", "down: A30 is older than both", maturity.Balancing{Tens: lean}, "A27", "A26", "A20"},
		{"lean three older", "the nearest ten, as old as lean", maturity.Balancing{Tens: bone}, "A27", "A30", "A30"},
		{"equal tens", "stay", maturity.Balancing{Tens: bone}, "A30", "A30", "A30"},
		{"5 in bone, lean one older", "the mean is bone, which names no side: the younger ten", maturity.Balancing{Tens: bone}, "A25", "A26", "A20"},
		{"equal at the end of a group", "A96 stays in A", maturity.Balancing{Tens: bone}, "A96", "A96", "A90"},
		{"tens at the end of a group", "A96 goes on to B00", maturity.Balancing{Tens: bone}, "A92", "B00", "B00"},
		{"the hold comes before the tens", "A04 and 100 are B04, to tens B00", maturity.Balancing{Tens: bone}, "A04", "C40", "B00"},
		{"the hold binds after the tens", "B08 to B10 would be 102 from bone", maturity.Balancing{Tens: bone}, "A08", "E00", "B00"},
		{"the hold binds below", "D35 less 100 is C35; C30 would be 105 from bone", maturity.Balancing{Tens: lean}, "D35", "A00", "C40"},
		{"the hold binds below, nearest is younger", "D31 less 100 is C31; C30 would be 101 from bone", maturity.Balancing{Tens: bone}, "D31", "A00", "C40"},
		{"the floor comes before the tens", "C15 with young lean", maturity.Balancing{Tens: bone}, "C15", "B40", "C00"},
		{"old lean held, comes out at C00", "held at B99", maturity.Balancing{OldLean: held}, "B90", "C10", "B99"},
		{"old lean held, comes out over C00", "held at B99", maturity.Balancing{OldLean: held}, "B90", "C60", "B99"},
		{"old lean held, comes out at B99", "nothing to hold", maturity.Balancing{OldLean: held}, "B90", "C09", "B99"},
		{"old lean held, comes out in B", "nothing to hold", maturity.Balancing{OldLean: held}, "B90", "B80", "B85"},
		{"old lean held, bone at B99", "the last bone in B", maturity.Balancing{OldLean: held}, "B99", "C30", "B99"},
		{"old lean held, bone at C00", "bone in C is held by nothing", maturity.Balancing{OldLean: held}, "C00", "C30", "C15"},
		{"old lean held before the tens", "the tens do not carry it over", maturity.Balancing{Tens: bone, OldLean: held}, "B96", "B98", "B90"},
		{"old lean held, to tens", "B99, and the ten that stays in B", maturity.Balancing{Tens: lean, OldLean: held}, "B90", "C60", "B90"},
		{"old lean free", "the default follows the arithmetic", maturity.Balancing{OldLean: maturity.OldLeanMayCross}, "B90", "C10", "C00"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			got, err := tt.rules.Balance(maturity.MustParse(tt.skeletal), maturity.MustParse(tt.lean))
			if err != nil || got.String() != tt.want {
				t.Errorf("skeletal %s, lean %s: %v, %v; want %s: %s", tt.skeletal, tt.lean, got, err, tt.want, tt.reason)
			}
		})
	}
}

// TestBalanceRefuses holds the error for each argument and each rule, and which
// comes first.
func TestBalanceRefuses(t *testing.T) {
	a, e := maturity.A.At(0), maturity.E.At(100)
	const scores = "A00 to E100"
	tests := []struct {
		name           string
		rules          maturity.Balancing
		skeletal, lean maturity.Score
		want           maturity.FieldError
	}{
		{"no skeletal", maturity.Balancing{}, 0, a, maturity.FieldError{Field: "skeletal maturity", Allowed: scores, Err: maturity.ErrMissing}},
		{"skeletal before A00", maturity.Balancing{}, a - 1, a, maturity.FieldError{Field: "skeletal maturity", Value: "?(99)", Allowed: scores, Err: maturity.ErrRange}},
		{"skeletal behind E100", maturity.Balancing{}, e + 1, a, maturity.FieldError{Field: "skeletal maturity", Value: "?(601)", Allowed: scores, Err: maturity.ErrRange}},
		{"no lean", maturity.Balancing{}, a, 0, maturity.FieldError{Field: "lean maturity", Allowed: scores, Err: maturity.ErrMissing}},
		{"lean impossible", maturity.Balancing{}, a, maturity.B.At(120), maturity.FieldError{Field: "lean maturity", Value: "B(120)", Allowed: scores, Err: maturity.ErrRange}},
		{"both missing", maturity.Balancing{}, 0, 0, maturity.FieldError{Field: "skeletal maturity", Allowed: scores, Err: maturity.ErrMissing}},
		{"unnamed tens", maturity.Balancing{Tens: 3}, a, a, maturity.FieldError{Field: "rules: tens", Value: "tens(3)", Allowed: "keep units, toward bone, toward lean", Err: maturity.ErrUnknown}},
		{"unnamed old lean", maturity.Balancing{OldLean: 2}, a, a, maturity.FieldError{Field: "rules: old lean", Value: "old lean(2)", Allowed: "may cross, stays in B", Err: maturity.ErrUnknown}},
		{"both unnamed", maturity.Balancing{Tens: 3, OldLean: 2}, a, a, maturity.FieldError{Field: "rules: tens", Value: "tens(3)", Allowed: "keep units, toward bone, toward lean", Err: maturity.ErrUnknown}},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			got, err := tt.rules.Balance(tt.skeletal, tt.lean)
			if got != 0 {
				t.Errorf("gives %v", got)
			}
			faulttest.Field(t, tt.name, err, tt.want)
		})
	}
	for _, r := range []maturity.Balancing{{Tens: maturity.TensTowardLean}, {OldLean: maturity.OldLeanStaysInB}} {
		if _, err := r.Balance(a, a); err != nil {
			t.Errorf("%v: %v", r, err)
		}
	}
}
