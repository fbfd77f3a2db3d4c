package season

import "slices"

// TauB returns Kendall's tau-b of estimates and truths: concordant less discordant
// pairs over the geometric mean of the pairs that are not tied in the one and in
// the other (published: stat-kendalltau-doc). It compares every two pairs, so its
// time grows with the square of their number.
func TauB(pairs []Pair) Figure {
	var s, untiedX, untiedY int64
	for i, a := range pairs {
		for _, b := range pairs[:i] {
			x, y := sign(a.Estimate, b.Estimate), sign(a.Truth, b.Truth)
			s += x * y
			untiedX += x * x
			untiedY += y * y
		}
	}
	return enough(int64(len(pairs)), MinCorrelation).root(integer(s), mul(integer(untiedX), integer(untiedY)))
}

func sign(a, b int64) int64 {
	switch {
	case a < b:
		return -1
	case a > b:
		return 1
	default:
		return 0
	}
}

// Rho returns Spearman's rank correlation of estimates and truths: the correlation
// of their ranks, values that tie having the mean of their ranks (published:
// stat-kendalltau-doc, stat-spearman-example).
func Rho(pairs []Pair) Figure {
	x, y := make([]int64, len(pairs)), make([]int64, len(pairs))
	for i, p := range pairs {
		x[i], y[i] = p.Estimate, p.Truth
	}
	x, y = midranks(x), midranks(y)
	var s Errors
	for i := range x {
		_ = s.Add(Pair{x[i], y[i]}) // ranks of a slice are in range
	}
	return s.Correlation()
}

// midranks returns twice the rank of each value, with the mean rank for ties.
func midranks(values []int64) []int64 {
	sorted := slices.Sorted(slices.Values(values))
	out := make([]int64, len(values))
	for i, v := range values {
		first, _ := slices.BinarySearch(sorted, v)
		after, _ := slices.BinarySearchFunc(sorted, v, func(e, v int64) int {
			if e <= v {
				return -1
			}
			return 1
		})
		out[i] = int64(first + 1 + after)
	}
	return out
}
