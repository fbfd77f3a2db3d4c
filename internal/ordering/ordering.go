// Package ordering finds the orders of a few things that cost least when every pair
// costs something, by dynamic programming over subsets. It is the shared core of
// the consensus of several officials and of the resolution of cycles in a
// placing policy.
package ordering

import "iter"

// Max is the greatest number of things.
const Max = 12

// Costs holds, for things 0 to n-1, what it costs to put i anywhere before j.
type Costs [Max][Max]int64

// Of returns the cost of an order.
func (c *Costs) Of(order []int) int64 {
	var sum int64
	for i, a := range order {
		for _, b := range order[i+1:] {
			sum += c[a][b]
		}
	}
	return sum
}

// Table is the solved problem.
type Table struct {
	n     int
	costs *Costs
	best  []int64 // by set of things still to be placed: the least cost of placing them
	ways  []int64 // in how many orders
}

// Solve finds the least cost of every subset of the n things, 1 to Max. The
// costs may be of any sign; their sums must fit an int64.
func Solve(n int, costs *Costs) *Table {
	t := &Table{n: n, costs: costs, best: make([]int64, 1<<n), ways: make([]int64, 1<<n)}
	t.ways[0] = 1
	for set := 1; set < 1<<n; set++ {
		first := true
		for i := range n {
			if set&(1<<i) == 0 {
				continue
			}
			rest := set &^ (1 << i)
			c := t.best[rest] + t.first(i, rest)
			switch {
			case first || c < t.best[set]:
				first, t.best[set], t.ways[set] = false, c, t.ways[rest]
			case c == t.best[set]:
				t.ways[set] += t.ways[rest]
			}
		}
	}
	return t
}

// first is the cost of putting i before every thing of the set.
func (t *Table) first(i, set int) int64 {
	var sum int64
	for j := range t.n {
		if set&(1<<j) != 0 {
			sum += t.costs[i][j]
		}
	}
	return sum
}

// Cost returns the least cost of an order of all things.
func (t *Table) Cost() int64 { return t.best[len(t.best)-1] }

// Count returns the number of orders that have the least cost.
func (t *Table) Count() int64 { return t.ways[len(t.ways)-1] }

// All yields every order of least cost, in ascending order of the things from
// first to last. The slice is the same one each time.
func (t *Table) All() iter.Seq[[]int] {
	return func(yield func([]int) bool) {
		order := make([]int, 0, Max)
		t.walk(len(t.best)-1, order, yield)
	}
}

func (t *Table) walk(set int, order []int, yield func([]int) bool) bool {
	if set == 0 {
		return yield(order)
	}
	for i := range t.n {
		if set&(1<<i) == 0 {
			continue
		}
		rest := set &^ (1 << i)
		if t.best[rest]+t.first(i, rest) != t.best[set] {
			continue
		}
		if !t.walk(rest, append(order, i), yield) {
			return false
		}
	}
	return true
}
