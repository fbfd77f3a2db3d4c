package season

import (
	"strconv"

	"example.com/ribface/internal/fault"
)

// Agreement counts how two judges, or a judge and the key, put exhibits into
// ordered categories, such as grades. It is made by [NewAgreement]; the zero
// Agreement has no categories. A copy shares its counts. The N of its figures is the
// number of exhibits.
type Agreement struct {
	worker
	k      int
	n      int64
	counts []int64 // by answer, then key
}

// maxCategories bounds the categories of an Agreement.
const maxCategories = 64

// NewAgreement returns an Agreement of 2 to 64 categories, numbered from 0 in
// order.
func NewAgreement(categories int) (Agreement, error) {
	if categories < 2 || categories > maxCategories {
		return Agreement{}, &fault.FieldError{Field: "categories", Value: strconv.Itoa(categories), Allowed: "2 to 64", Err: fault.ErrRange}
	}
	return Agreement{k: categories, counts: make([]int64, categories*categories)}, nil
}

// Add counts one exhibit. A category that is not there gives a [*placing.FieldError].
func (a *Agreement) Add(answer, key int) error {
	if a == nil {
		return missing("agreement")
	}
	for _, c := range [...]int{answer, key} {
		if c < 0 || c >= a.k {
			return &fault.FieldError{Field: "category", Value: strconv.Itoa(c), Allowed: "0 to " + strconv.Itoa(a.k-1), Err: fault.ErrRange}
		}
	}
	a.counts[answer*a.k+key]++
	a.n++
	return nil
}

// Merge adds the counts of b. Another number of categories gives a [*placing.FieldError].
func (a *Agreement) Merge(b Agreement) error {
	if a == nil {
		return missing("agreement")
	}
	if a.k != b.k {
		return &fault.FieldError{Field: "categories", Value: strconv.Itoa(b.k), Allowed: strconv.Itoa(a.k), Err: fault.ErrRange}
	}
	for i, c := range b.counts {
		a.counts[i] += c
	}
	a.n += b.n
	return nil
}

// Count returns how many exhibits had the answer and the key; 0 for a category that
// is not there.
func (a Agreement) Count(answer, key int) int {
	if min(answer, key) < 0 || max(answer, key) >= a.k {
		return 0
	}
	return int(a.counts[answer*a.k+key])
}

// Within returns the share of exhibits that are at most so many steps off: 0 for
// those that are right. It is TooFew under 10 exhibits.
func (a Agreement) Within(steps int) Figure {
	var in int64
	for i, c := range a.counts {
		if d := i/a.k - i%a.k; max(d, -d) <= steps {
			in += c
		}
	}
	return enough(a.n, minAgreement).ratio(integer(in), integer(a.n))
}

// Kappa returns Cohen's kappa, the agreement beyond chance, every disagreement alike:
// 1 less the disagreement over the one expected if answer and key had nothing to do with
// each other. It is 1 for full agreement, 0 for that of chance, TooFew under 10 exhibits
// and NoSpread where all have one category in both.
func (a Agreement) Kappa() Figure {
	return a.kappa(func(steps int) int { return min(steps*steps, 1) })
}

// LinearKappa is [Agreement.Kappa] with each disagreement weighted by the number of steps
// between the two.
func (a Agreement) LinearKappa() Figure {
	return a.kappa(func(steps int) int { return max(steps, -steps) })
}

// QuadraticKappa is [Agreement.Kappa] with each disagreement weighted by the square of
// the number of steps between the two.
func (a Agreement) QuadraticKappa() Figure {
	return a.kappa(func(steps int) int { return steps * steps })
}

func (a Agreement) kappa(weigh func(steps int) int) Figure {
	row, column := make([]int64, a.k), make([]int64, a.k)
	for i, c := range a.counts {
		row[i/a.k] += c
		column[i%a.k] += c
	}
	observed, expected := integer(0), integer(0)
	for i, c := range a.counts {
		weight := integer(int64(weigh(i/a.k - i%a.k)))
		observed.Add(observed, mul(weight, integer(c), integer(a.n)))
		expected.Add(expected, mul(weight, integer(row[i/a.k]), integer(column[i%a.k])))
	}
	return enough(a.n, minAgreement).ratio(sub(expected, observed), expected)
}
