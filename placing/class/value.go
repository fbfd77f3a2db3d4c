package class

import (
	"maps"
	"slices"
	"strconv"

	"example.com/ribface/grade/price"
	"example.com/ribface/internal/fault"
	"example.com/ribface/placing"
)

// Valuation is what a price grid makes of a class.
type Valuation struct {
	Values []price.Value   `json:"values"` // exhibit 1 first
	Order  placing.Ranking `json:"order"`  // the most valuable first; exhibits of equal value are tied
}

// ByValue prices every exhibit on the grid and ranks the class by the comparison,
// price.ByHead or price.ByCwt. A placing is compared with it by
// [placing.Order.Ranking] and [placing.Ranking.Against]. Attributes that cannot be seen
// on a carcass are given by exhibit number, and may be nil. The zero Graded, an exhibit
// for which the grid has no price, attributes for an exhibit that is not in the class,
// and no comparison give a [*placing.FieldError]; [placing.Problems] lists them all.
func (g Graded) ByValue(grid price.Grid, compare func(a, b price.Value) int, attributes map[int][]price.Attribute) (Valuation, error) {
	if g.Len() == 0 {
		return Valuation{}, &fault.FieldError{Field: "class", Allowed: "a class that Class.Grade has graded", Err: fault.ErrMissing}
	}
	var problems []error
	if compare == nil {
		problems = append(problems, &fault.FieldError{Field: "comparison", Allowed: "price.ByHead or price.ByCwt", Err: fault.ErrMissing})
	}
	for _, e := range slices.Sorted(maps.Keys(attributes)) {
		if e < 1 || e > g.Len() {
			problems = append(problems, &fault.FieldError{Path: "attributes", Field: "attributes: exhibit", Value: strconv.Itoa(e), Allowed: "1 to " + strconv.Itoa(g.Len()), Err: fault.ErrRange})
		}
	}
	var v Valuation
	for i, a := range g.assessed {
		value, err := grid.Value(a, attributes[i+1]...)
		problems = append(problems, fault.At(g.path(i+1), "exhibit "+strconv.Itoa(i+1), err))
		v.Values = append(v.Values, value)
	}
	if err := fault.Join(problems...); err != nil {
		return Valuation{}, err
	}
	over := make([]int, g.Len()) // how many exhibits each is worth more than
	for i, value := range v.Values {
		for _, other := range v.Values {
			if compare(value, other) > 0 {
				over[i]++
			}
		}
	}
	v.Order, _ = placing.RankScores(over...)
	return v, nil
}
