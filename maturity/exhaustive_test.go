package maturity_test

import (
	"math/big"
	"testing"

	"example.com/ribface/maturity"
)

// slowBalance is the arithmetic of balancing in fractions, units counted from
// A00 = 0: the mean; 10 toward bone when bone and lean are more than 40 apart;
// rounding; not more than 100 from bone; bone C15 or older not under C00.
func slowBalance(bone, lean int, r maturity.Rules) int {
	b, l := big.NewRat(int64(bone), 1), big.NewRat(int64(lean), 1)
	mean := new(big.Rat).Add(b, l)
	mean.Quo(mean, big.NewRat(2, 1))
	gap := new(big.Rat).Sub(b, l)
	// A half unit goes to bone before anything else is done to it.
	if !mean.IsInt() {
		mean.Add(mean, big.NewRat(int64(gap.Sign()), 2))
	}
	if new(big.Rat).Abs(gap).Cmp(big.NewRat(40, 1)) > 0 {
		mean.Add(mean, big.NewRat(10*int64(gap.Sign()), 1))
	}
	tens := func(toward int) {
		t := new(big.Rat).Quo(mean, big.NewRat(10, 1))
		down := new(big.Int).Div(t.Num(), t.Denom())
		rest := new(big.Rat).Sub(t, new(big.Rat).SetInt(down))
		c := rest.Cmp(big.NewRat(1, 2))
		if c > 0 || c == 0 && big.NewRat(int64(toward), 1).Cmp(mean) >= 0 {
			down.Add(down, big.NewInt(1))
		}
		mean = new(big.Rat).Mul(new(big.Rat).SetInt(down), big.NewRat(10, 1))
	}
	switch r.Tens {
	case maturity.TensTowardBone:
		tens(bone)
	case maturity.TensTowardLean:
		tens(lean)
	}
	out := int(new(big.Int).Div(mean.Num(), mean.Denom()).Int64())
	if out > bone+100 {
		out = bone + 100
	}
	if out < bone-100 {
		out = bone - 100
	}
	if bone >= 215 && out < 200 {
		out = 200
	}
	if r.OldLean == maturity.OldLeanStaysInB && bone < 200 && out >= 200 {
		out = 199
	}
	return out
}

// TestEveryBalance balances every skeletal with every lean score, 501 by 501, by
// the default rules, and by every other choice on a net of 5 units.
func TestEveryBalance(t *testing.T) {
	first := maturity.A.At(0)
	balanced := 0
	for tens := maturity.KeepUnits; tens <= maturity.TensTowardLean; tens++ {
		for old := maturity.OldLeanMayCross; old <= maturity.OldLeanStaysInB; old++ {
			rules := maturity.Rules{Tens: tens, OldLean: old}
			step := 5
			if rules == (maturity.Rules{}) && !testing.Short() {
				step = 1
			}
			for bone := 0; bone <= 500; bone += step {
				for lean := 0; lean <= 500; lean += step {
					got, err := rules.Balance(first+maturity.Score(bone), first+maturity.Score(lean))
					want := first + maturity.Score(slowBalance(bone, lean, rules))
					if err != nil || got != want {
						t.Fatalf("%+v: bone %v, lean %v: %v, %v; want %v", rules, first+maturity.Score(bone), first+maturity.Score(lean), got, err, want)
					}
					balanced++
				}
			}
		}
	}
	if want := 501*501 + 5*101*101; !testing.Short() && balanced != want {
		t.Errorf("%d balanced, want %d", balanced, want)
	}
	t.Logf("%d balanced", balanced)
}

// TestEveryAge settles the age by every count of teeth and every age in papers up
// to 120 months, on bone and lean at the edges of the groups.
func TestEveryAge(t *testing.T) {
	edges := []int{0, 1, 50, 99, 100, 101, 199, 200, 214, 215, 250, 299, 300, 301, 399, 400, 450, 500}
	papers := []int{0, 1, 29, 30, 31, 120}
	if !testing.Short() {
		papers = nil
		for m := range 121 {
			papers = append(papers, m)
		}
	}
	first := maturity.A.At(0)
	for teeth := -1; teeth <= 8; teeth++ {
		for _, papers := range papers {
			for _, bone := range edges {
				for _, lean := range edges {
					e := maturity.Evidence{Skeletal: first + maturity.Score(bone), Lean: first + maturity.Score(lean), Papers: maturity.Months(papers)}
					if teeth >= 0 {
						e.Teeth = maturity.Incisors(teeth)
					}
					balanced := slowBalance(bone, lean, maturity.Rules{})
					young := teeth >= 0 && teeth <= 2 || papers > 0 && papers < 30
					want := balanced
					if young && bone < 300 && want > 99 {
						want = 99
					}
					got, err := maturity.Rules{}.ByAge(e)
					if err != nil || int(got-first) != want {
						t.Fatalf("teeth %d, papers %d, bone %v, lean %v: %v, %v; want %v", teeth, papers, e.Skeletal, e.Lean, got, err, first+maturity.Score(want))
					}
					if byBone, err := (maturity.Rules{}).ByBone(e); err != nil || int(byBone-first) != balanced {
						t.Fatalf("by bone: %+v: %v, %v; want %v", e, byBone, err, first+maturity.Score(balanced))
					}
				}
			}
		}
	}
}
