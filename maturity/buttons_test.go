package maturity_test

import (
	"errors"
	"fmt"
	"testing"

	"example.com/ribface/internal/testkit/faulttest"
	"example.com/ribface/internal/testkit/roundtrip"
	"example.com/ribface/maturity"
)

func TestButtonsEncodings(t *testing.T) {
	roundtrip.Run(t, "Buttons", maturity.Ossified(35), maturity.ParseButtons, roundtrip.Case[maturity.Buttons]{
		Texts:   map[string]maturity.Buttons{"0% ossified": maturity.Ossified(0), "100% ossified": maturity.Ossified(100), "white and soft": maturity.WhiteAndSoft},
		Aliases: map[string]maturity.Buttons{"not looked at": 0, "10": maturity.Ossified(10), "10%": maturity.Ossified(10)},
		Numbers: map[int64]maturity.Buttons{0: maturity.Ossified(0), 35: maturity.Ossified(35)},
		Bad:     []string{"101", "-1", "101% ossified", "white", "soft", "2.5", "% ossified", "unset"},
		Invalid: []maturity.Buttons{maturity.Ossified(101), maturity.Ossified(-1), 103},
	})
}

func FuzzButtons(f *testing.F) {
	roundtrip.Fuzz(f, maturity.ParseButtons, maturity.Ossified(10), "not looked at", "white and soft", "0", "100%", "35% ossified", "101")
}

// TestButtons holds the group that the buttons speak for: 10 percent is the first
// of B and 35 the first of C (published: uni-grading-slides), white and soft is A
// (common practice, no source).
func TestButtons(t *testing.T) {
	for _, tt := range []struct {
		buttons maturity.Buttons
		group   maturity.Group
		reason  string
	}{
		{0, 0, "nobody looked"},
		{maturity.WhiteAndSoft, maturity.A, "common practice"},
		{maturity.Ossified(0), maturity.A, "no bone"},
		{maturity.Ossified(9), maturity.A, "the last of A"},
		{maturity.Ossified(10), maturity.B, "published: uni-grading-slides"},
		{maturity.Ossified(34), maturity.B, "the last of B"},
		{maturity.Ossified(35), maturity.C, "published: uni-grading-slides"},
		{maturity.Ossified(100), maturity.E, "all bone"},
		{maturity.Ossified(101), 0, "impossible"},
	} {
		if got := tt.buttons.Group(); got != tt.group {
			t.Errorf("%v: group %v, want %v: %s", tt.buttons, got, tt.group, tt.reason)
		}
		for g := range maturity.Groups() {
			if got, want := tt.buttons.Goes(g.At(50)), tt.group == 0 || tt.group == g; got != want {
				t.Errorf("%v goes with %v: %v, want %v", tt.buttons, g, got, want)
			}
		}
		if !tt.buttons.Goes(0) {
			t.Errorf("%v does not go with a score that is not set", tt.buttons)
		}
	}
	if got := maturity.Ossified(200).String(); got != "a share of the buttons that cannot be" {
		t.Errorf("impossible buttons print as %q", got)
	}
}

// TestButtonsSettleNothing holds that buttons move no maturity, and that
// impossible ones are refused by name.
func TestButtonsSettleNothing(t *testing.T) {
	e := maturity.Evidence{Skeletal: maturity.A.At(60), Lean: maturity.A.At(40)}
	want, err := maturity.Balancing{}.ByBone(e)
	if err != nil {
		t.Fatal(err)
	}
	for _, b := range []maturity.Buttons{maturity.WhiteAndSoft, maturity.Ossified(0), maturity.Ossified(90)} {
		e.Buttons = b
		if got, err := (maturity.Balancing{}).ByBone(e); err != nil || got != want {
			t.Errorf("%v: %v, %v", b, got, err)
		}
		e.Teeth = maturity.Incisors(8)
		if got, err := (maturity.Balancing{}).ByAge(e); err != nil || got != want {
			t.Errorf("%v by age: %v, %v", b, got, err)
		}
	}
	e.Buttons = maturity.Ossified(101)
	faulttest.Field(t, "over 100", e.Check(false), maturity.FieldError{Field: "buttons", Value: "a share of the buttons that cannot be", Allowed: "0% to 100% ossified, or white and soft", Err: maturity.ErrRange})
}

func ExampleButtons() {
	e := maturity.Evidence{Skeletal: maturity.A.At(60), Lean: maturity.A.At(50), Buttons: maturity.WhiteAndSoft}
	fmt.Println(e.Buttons, e.Buttons.IsValid(), e.Buttons.Group())
	// The zero Buttons means that nobody looked.
	var unseen maturity.Buttons
	fmt.Println(unseen, unseen.IsValid())
	// Output:
	// white and soft true A
	// not looked at false
}

func ExampleOssified() {
	fmt.Println(maturity.Ossified(35), maturity.Ossified(35).Group())
	fmt.Println(maturity.Ossified(120).IsValid())
	// Output:
	// 35% ossified C
	// false
}

func ExampleButtons_Percent() {
	fmt.Println(maturity.Ossified(10).Percent())
	fmt.Println(maturity.WhiteAndSoft.Percent())
	// Output:
	// 10 true
	// 0 false
}

func ExampleButtons_Goes() {
	fmt.Println(maturity.Ossified(20).Goes(maturity.A.At(60)), maturity.Ossified(20).Goes(maturity.B.At(10)))
	// Output:
	// false true
}

func ExampleParseButtons() {
	fmt.Println(maturity.ParseButtons("10%"))
	fmt.Println(maturity.ParseButtons("white and soft"))
	fmt.Println(maturity.ParseButtons("110"))
	// Output:
	// 10% ossified <nil>
	// white and soft <nil>
	// not looked at buttons: "110": out of range; allowed: 0% to 100% ossified, or white and soft
}

// TestBadButtonsAreRefused holds that buttons that cannot be are refused by every way to
// overall maturity, and that good ones change nothing.
func TestBadButtonsAreRefused(t *testing.T) {
	e := maturity.Evidence{Skeletal: maturity.A.At(70), Lean: maturity.A.At(50)}
	for _, way := range []func(maturity.Evidence) (maturity.Score, error){maturity.Balancing{}.ByAge, maturity.Balancing{}.ByBone} {
		for b, ok := range map[maturity.Buttons]bool{0: true, maturity.Ossified(0): true, maturity.WhiteAndSoft: true, maturity.WhiteAndSoft + 1: false, maturity.Ossified(101): false} {
			e.Buttons = b
			s, err := way(e)
			if ok && (s != maturity.A.At(60) || err != nil) || !ok && (s != 0 || !errors.Is(err, maturity.ErrRange)) {
				t.Errorf("%v: %v, %v", b, s, err)
			}
		}
	}
}
