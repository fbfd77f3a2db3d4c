package class

import (
	"strconv"

	"example.com/ribface/grade/price"
	"example.com/ribface/internal/fault"
	"example.com/ribface/placing"
)

// Valuation is what a price grid makes of a class.
type Valuation struct {
	Values []price.Value // exhibit 1 first
	Order  Ranking       // the most valuable first; exhibits of equal value are level
}

// ByValue prices every exhibit on the grid and ranks the class by the comparison,
// price.ByHead or price.ByCwt. A placing is compared with it by
// [RankingOf] and [Ranking.Against]. Marks that cannot be seen on a carcass are
// given by exhibit number, and may be nil. An exhibit for which the grid has no
// price, and marks for an exhibit that is not in the class, give a [*placing.FieldError].
func (g Graded) ByValue(grid price.Grid, compare func(a, b price.Value) int, marks map[int][]price.Mark) (Valuation, error) {
	if g.Len() == 0 {
		return Valuation{}, &fault.FieldError{Field: "class", Allowed: "a class that Class.Grade has graded", Err: fault.ErrMissing}
	}
	for e := range marks {
		if e < 1 || e > g.Len() {
			return Valuation{}, &fault.FieldError{Field: "marks: exhibit", Value: strconv.Itoa(e), Allowed: "1 to " + strconv.Itoa(g.Len()), Err: fault.ErrRange}
		}
	}
	var v Valuation
	for i, a := range g.assessed {
		value, err := grid.Value(a, marks[i+1]...)
		if err != nil {
			return Valuation{}, fault.In("exhibit "+strconv.Itoa(i+1), err)
		}
		v.Values = append(v.Values, value)
	}
	v.Order, _ = NewRanking(price.Order(v.Values, compare)...)
	return v, nil
}

// RankingOf returns a placing as a ranking without ties; the zero Ranking for the
// zero Order.
func RankingOf(o placing.Order) Ranking {
	r := Ranking{n: uint8(o.Len())}
	for e := 1; e <= o.Len(); e++ {
		r.group[e-1] = uint8(o.Place(e))
	}
	return r
}
