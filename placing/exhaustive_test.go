package placing_test

import (
	"slices"
	"testing"

	"example.com/ribface/internal/testkit"
	"example.com/ribface/placing"
)

// slowLoss is the loss of a card as it is taught: every pair of exhibits is asked
// in turn, and a reversed pair loses the sum of the cuts between the two. Orders
// are plain slices, exhibits from first to last.
func slowLoss(official, card, cuts []int) int {
	loss := 0
	for i := range official {
		for j := i + 1; j < len(official); j++ {
			if slices.Index(card, official[i]) < slices.Index(card, official[j]) {
				continue
			}
			for _, c := range cuts[i:j] {
				loss += c
			}
		}
	}
	return loss
}

// rankLoss is the second formula: cuts above each exhibit times the places that
// the card put it too low.
func rankLoss(official, card, cuts []int) int {
	loss, above := 0, 0
	for i, e := range official {
		if i > 0 {
			above += cuts[i-1]
		}
		loss += above * (i - slices.Index(card, e))
	}
	return loss
}

// permutations lists all orders of 1 to n by inserting n everywhere.
func permutations(n int) [][]int {
	if n == 0 {
		return [][]int{{}}
	}
	var out [][]int
	for _, p := range permutations(n - 1) {
		for i := range n {
			out = append(out, slices.Insert(slices.Clone(p), i, n))
		}
	}
	return out
}

// slowOrders pairs plain orders with the library's.
func slowOrders(t *testing.T, n int) (plain [][]int, orders []placing.Order) {
	t.Helper()
	plain = permutations(n)
	for _, p := range plain {
		o, err := placing.NewOrder(p...)
		if err != nil {
			t.Fatal(err)
		}
		orders = append(orders, o)
	}
	return plain, orders
}

// scoreAll scores every card against every official order with the cuts and
// returns how many, and the lowest and the sum of the scores.
func scoreAll(t *testing.T, plain [][]int, orders []placing.Order, each []int) (n, low, sum int) {
	t.Helper()
	cuts, err := placing.NewCuts(each...)
	if err != nil {
		t.Fatal(err)
	}
	low = 50
	for i, official := range plain {
		o, err := placing.NewOfficial(orders[i], cuts)
		if err != nil {
			t.Fatal(err)
		}
		for j, card := range plain {
			got, err := o.Score(orders[j])
			if err != nil {
				t.Fatal(err)
			}
			loss := slowLoss(official, card, each)
			if got != 50-loss || loss != rankLoss(official, card, each) {
				t.Fatalf("official %v cuts %v, card %v: score %d; pairs lose %d, ranks %d", official, each, card, got, loss, rankLoss(official, card, each))
			}
			n++
			low, sum = min(low, got), sum+got
		}
		if o.Worst() != low {
			t.Fatalf("official %v cuts %v: worst %d, found %d", official, each, o.Worst(), low)
		}
	}
	return n, low, sum
}

// TestEveryPlacingOfFour scores all 24 cards against all 24 official orders for
// every cuts of sum 15 or less and for every cuts that never go negative.
func TestEveryPlacingOfFour(t *testing.T) {
	plain, orders := slowOrders(t, 4)
	patterns, cards := 0, 0
	for a := range 18 {
		for b := range 18 {
			for c := range 18 {
				if a+b+c > 15 && 3*a+4*b+3*c > 50 {
					continue
				}
				if !testkit.Exhaustive() && (a+2*b+3*c)%7 != 0 {
					continue
				}
				each := []int{a, b, c}
				n, low, sum := scoreAll(t, plain, orders, each)
				patterns++
				cards += n
				cuts, err := placing.NewCuts(each...)
				if err != nil {
					t.Fatal(err)
				}
				if cuts.NeverNegative() != (low >= 0) || low != 50-(3*a+4*b+3*c) {
					t.Fatalf("cuts %v: lowest %d, never negative %v", cuts, low, cuts.NeverNegative())
				}
				// The mean of a guesser is 50 less half of the greatest loss.
				if 2*sum != n*(100-(3*a+4*b+3*c)) {
					t.Fatalf("cuts %v: scores add up to %d", cuts, sum)
				}
			}
		}
	}
	if want := 816 + 48; testkit.Exhaustive() && (patterns != want || cards != want*24*24) {
		t.Errorf("%d cuts, %d cards; want %d, %d", patterns, cards, want, want*24*24)
	}
	t.Logf("%d cuts, %d cards", patterns, cards)
}

// TestEveryPlacingOfOtherSizes does the same for classes of 2, 3, 5 and 6 with
// some cuts, zeros and negative scores among them.
func TestEveryPlacingOfOtherSizes(t *testing.T) {
	cards := 0
	for n, sets := range map[int][][]int{
		2: {{0}, {1}, {5}, {50}},
		3: {{0, 0}, {1, 2}, {5, 5}, {0, 9}, {13, 12}, {50, 50}},
		5: {{1, 2, 3, 4}, {0, 5, 0, 5}, {2, 3, 3, 2}, {9, 1, 8, 2}},
		6: {{1, 2, 3, 2, 1}, {4, 0, 3, 1, 2}},
	} {
		if !testkit.Exhaustive() && n == 6 {
			continue
		}
		plain, orders := slowOrders(t, n)
		for _, each := range sets {
			got, _, _ := scoreAll(t, plain, orders, each)
			cards += got
		}
	}
	t.Logf("%d cards", cards)
}

// TestEveryPairOfOrders counts the disagreements of every two placings of four
// and five against their definition.
func TestEveryPairOfOrders(t *testing.T) {
	for _, n := range []int{2, 3, 4, 5} {
		plain, orders := slowOrders(t, n)
		for i, p := range plain {
			for j, q := range plain {
				want := 0
				for a := 1; a <= n; a++ {
					for b := 1; b <= n; b++ {
						if slices.Index(p, a) < slices.Index(p, b) && slices.Index(q, a) > slices.Index(q, b) {
							want++
						}
					}
				}
				got, err := orders[i].Disagreements(orders[j])
				if err != nil || got != want {
					t.Fatalf("%v and %v: %d, %v; want %d", p, q, got, err, want)
				}
			}
		}
	}
}
