package ordering_test

import (
	"slices"
	"testing"

	"example.com/ribface/internal/ordering"
	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

// permutations lists every order of 0 to n-1, ascending.
func permutations(n int) [][]int {
	if n == 0 {
		return [][]int{{}}
	}
	var all [][]int
	for _, p := range permutations(n - 1) {
		for at := 0; at <= len(p); at++ {
			all = append(all, slices.Insert(slices.Clone(p), at, n-1))
		}
	}
	slices.SortFunc(all, slices.Compare)
	return all
}

// TestAgainstAllOrders compares the table with the cost of every single order.
func TestAgainstAllOrders(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(1, 5).Draw(t, "n")
		var costs ordering.Costs
		for i := range n {
			for j := range n {
				if i != j {
					costs[i][j] = rapid.Int64Range(-2, 3).Draw(t, "cost")
				}
			}
		}
		all := permutations(n)
		want := costs.Of(all[0])
		for _, o := range all {
			want = min(want, costs.Of(o))
		}
		var best [][]int
		for _, o := range all {
			if costs.Of(o) == want {
				best = append(best, o)
			}
		}
		table := ordering.Solve(n, &costs)
		if got := table.Cost(); got != want {
			t.Fatalf("Cost() = %d, want %d", got, want)
		}
		if got := table.Count(); got != int64(len(best)) {
			t.Fatalf("Count() = %d, want %d", got, len(best))
		}
		var got [][]int
		for o := range table.All() {
			got = append(got, slices.Clone(o))
		}
		if diff := cmp.Diff(best, got); diff != "" {
			t.Fatalf("All() (-want +got):\n%s", diff)
		}
	})
}

func TestStopsEarly(t *testing.T) {
	var costs ordering.Costs
	seen := 0
	for range ordering.Solve(4, &costs).All() {
		seen++
		if seen == 3 {
			break
		}
	}
	if seen != 3 {
		t.Errorf("saw %d orders, want 3", seen)
	}
}

// TestLargest has every order tied: 12! of them.
func TestLargest(t *testing.T) {
	var costs ordering.Costs
	if got, want := ordering.Solve(ordering.Max, &costs).Count(), int64(479001600); got != want {
		t.Errorf("Count() = %d, want %d", got, want)
	}
}
