package placing_test

import (
	"testing"

	"example.com/ribface/placing"
	"pgregory.net/rapid"
)

// TestGuessing counts all placings of small classes one by one.
func TestGuessing(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(2, 6).Draw(t, "n")
		cuts := make([]int, n-1)
		for i := range cuts {
			cuts[i] = rapid.IntRange(0, 7).Draw(t, "cut")
		}
		c, _ := placing.NewCuts(cuts...)
		o, err := placing.NewOfficial(anyOrder(t, n, "order"), c)
		if err != nil {
			t.Fatal(err)
		}
		var want placing.Guessing
		for _, s := range o.Scores() {
			want.Placings++
			if s > 40 {
				want.Above40++
			}
			if s > 45 {
				want.Above45++
			}
		}
		if got := o.Guessing(); got != want {
			t.Fatalf("%v: %+v, want %+v", o, got, want)
		}
	})
	if got := (placing.Official{}).Guessing(); got != (placing.Guessing{}) {
		t.Errorf("the zero Official: %+v", got)
	}
}
