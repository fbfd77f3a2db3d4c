package maturity_test

import (
	"cmp"
	"testing"

	"example.com/ribface/internal/testkit"
	"example.com/ribface/maturity"
)

// slowBalance is the arithmetic of balancing in halves of a unit, which hold every mean
// exactly, units counted from A00 = 0: the mean; 10 toward bone when bone and lean are
// more than 40 apart; the nearest score that is not more than 100 from bone, not under
// C00 with bone C15 or older, not over B99 where old lean stays in B; then the nearest
// ten that keeps the same and is not older than both.
func slowBalance(bone, lean int, r maturity.Balancing) int {
	gap := bone - lean
	toward := cmp.Compare(gap, 0) // the side of bone
	halves := bone + lean
	// A half unit goes to bone before anything else is done to it.
	if halves%2 != 0 {
		halves += toward
	}
	if max(gap, -gap) > 40 {
		halves += 2 * 10 * toward
	}
	out := halves / 2
	// What may come out: every score that breaks no limit.
	may := func(s int) bool {
		return s <= bone+100 && s >= bone-100 &&
			(bone < 215 || s >= 200) &&
			(r.OldLean != maturity.OldLeanStaysInB || bone >= 200 || s < 200)
	}
	// The side that is named is tried first.
	nearest := func(side int, of func(s int) bool) int {
		for d := 0; ; d++ {
			for _, s := range []int{out + d*side, out - d*side} {
				if s >= 0 && s <= 500 && of(s) {
					return s
				}
			}
		}
	}
	out = nearest(-1, may)
	if r.Tens == maturity.KeepUnits {
		return out
	}
	// Of two tens that are as near, the one on the side of the score named, or the
	// younger.
	side := -1
	if r.Tens == maturity.TensTowardBone && bone > out || r.Tens == maturity.TensTowardLean && lean > out {
		side = 1
	}
	return nearest(side, func(s int) bool { return s%10 == 0 && may(s) && s <= max(bone, lean) })
}

// TestEveryBalance balances every skeletal with every lean score, 501 by 501, by
// the default rules, and by every other choice on a net of 3 units.
func TestEveryBalance(t *testing.T) {
	first := maturity.A.At(0)
	balanced := 0
	for tens := maturity.KeepUnits; tens <= maturity.TensTowardLean; tens++ {
		for old := maturity.OldLeanMayCross; old <= maturity.OldLeanStaysInB; old++ {
			rules := maturity.Balancing{Tens: tens, OldLean: old}
			step := 3
			if rules == (maturity.Balancing{}) {
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
	if want := 501*501 + 5*167*167; balanced != want {
		t.Errorf("%d balanced, want %d", balanced, want)
	}
}

// TestEveryAge settles the age by every count of teeth and every age in papers up
// to 120 months, on bone and lean at the edges of the groups.
func TestEveryAge(t *testing.T) {
	edges := []int{0, 1, 50, 99, 100, 101, 199, 200, 214, 215, 250, 299, 300, 301, 399, 400, 450, 500}
	first := maturity.A.At(0)
	for _, bone := range edges {
		for _, lean := range edges {
			balanced := slowBalance(bone, lean, maturity.Balancing{})
			for teeth := -1; teeth <= 8; teeth++ {
				for papers := range 121 {
					e := maturity.Evidence{Skeletal: first + maturity.Score(bone), Lean: first + maturity.Score(lean), Papers: maturity.Months(papers)}
					if teeth >= 0 {
						e.Teeth = maturity.Incisors(teeth)
					}
					young := teeth >= 0 && teeth <= 2 || papers > 0 && papers < 30
					want := balanced
					if young && bone < 300 && want > 99 {
						want = 99
					}
					got, err := maturity.Balancing{}.ByAge(e)
					if err != nil || int(got-first) != want {
						t.Fatalf("teeth %d, papers %d, bone %v, lean %v: %v, %v; want %v", teeth, papers, e.Skeletal, e.Lean, got, err, first+maturity.Score(want))
					}
					if byBone, err := (maturity.Balancing{}).ByBone(e); err != nil || int(byBone-first) != balanced {
						t.Fatalf("by bone: %+v: %v, %v; want %v", e, byBone, err, first+maturity.Score(balanced))
					}
				}
			}
		}
	}
}

// TestEveryAgeSettled settles the age by papers of 29 months for every skeleton
// under D00, with and without lean, under every choice of rules, from the document
// of ByAge alone: lean left out is the skeletal score; over A99 is A99; to tens, the
// ten that is not over A99.
func TestEveryAgeSettled(t *testing.T) {
	first, step := maturity.A.At(0), 7
	if testkit.Exhaustive() {
		step = 1
	}
	for r := range everyRules {
		for bone := 0; bone < 300; bone += step {
			for lean := -1; lean <= 500; lean += 8 {
				e := maturity.Evidence{Skeletal: first + maturity.Score(bone), Papers: 29}
				both := bone
				if lean >= 0 {
					e.Lean, both = first+maturity.Score(lean), lean
				}
				units := r
				units.Tens = maturity.KeepUnits
				want := slowBalance(bone, both, r)
				if slowBalance(bone, both, units) > 99 {
					want = 99
					if r.Tens != maturity.KeepUnits {
						want = 90
					}
				} else if want > 99 {
					want = 90 // A95 to A99 would have been B00
				}
				got, err := r.ByAge(e)
				if err != nil || int(got-first) != want {
					t.Fatalf("%+v: %+v: %v, %v; want %v", r, e, got, err, first+maturity.Score(want))
				}
			}
		}
		e := maturity.Evidence{Skeletal: maturity.D.At(0), Papers: 29}
		if _, err := r.ByAge(e); err == nil {
			t.Errorf("%+v: D00 without lean passes", r)
		}
	}
}
