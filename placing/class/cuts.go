package class

import (
	"slices"

	"example.com/ribface/internal/fault"
	"example.com/ribface/internal/text/fixed"
	"example.com/ribface/placing"
	"github.com/shopspring/decimal"
)

// The totals between which a class's cuts are chosen: 15 for one that is very
// placeable, 5 for a hard one (published: amsa-committee).
const (
	hardTotal = 5
	easyTotal = 15
)

// ProposeCuts proposes cuts for an order of the class, the placing's own or one that
// a committee has settled, from the margins of the neighbors, within the limit
// and such that no card goes negative. Neighbors that the policy would turn count 0:
// there the committee and the policy differ. The zero limit stands for the strictest
// published one, placing.LimitColorado, in a class of four, and for the exact
// condition in any other.
//
// A pair counts with its margin, one of more than two tiers' worth as that much; a
// firm pair counts two tiers' worth, and one that the policy cannot tell apart 0.
// A tier's worth is the yield of the policy's first advantage, 1.5 by the
// default policy, and a whole grade without any.
//
// First the total, from 5 for a hard class to 15 for a very placeable one
// (published: amsa-committee). What lies between is our own rule: it follows the
// mean of what the neighbors count in a straight line, one tier's worth or more
// being full, rounded to the nearest point, halves up. Then
// [placing.SpreadCuts] shares the total out in proportion to what they count; where
// that many points cannot be had it takes the next lower total that can. Classes
// of five and more often have to: five exhibits can have 12 points at the most and
// seven can have 8. The first total is Asked, what the cuts come to is Total, and
// Weights are what the pairs count, in yield grades.
//
// At last an obvious bottom gets no cut of 1: while the last pair is firm and has
// fewer than 2 points, it gets one from the largest of the other cuts, of equal
// ones from that nearest the middle, the upper first. A cut gives away none of its
// last points in a class of up to six. A committee sets the cuts; this is where it
// may start.
//
// The zero Placing, an order of another size and a limit that does not speak of the
// class give a [*placing.FieldError].
func (p Placing) ProposeCuts(order placing.Order, limit placing.CutLimit) (placing.CutProposal, error) {
	n := p.Order.Len()
	if n == 0 {
		return placing.CutProposal{}, &fault.FieldError{Field: "placing", Allowed: "one that Graded.Place has made", Err: fault.ErrMissing}
	}
	if order.Len() != n {
		return placing.CutProposal{}, &fault.FieldError{Path: "order", Field: "order", Value: order.String(), Allowed: "an order of the " + itoa(n) + " exhibits of the class", Err: fault.ErrRange}
	}
	if limit == 0 {
		limit = placing.LimitExact
		if n == 4 {
			limit = placing.LimitColorado
		}
	}
	full := p.Policy.tierWorth()
	var c placing.CutProposal
	var sum int64
	weights := make([]int64, n-1)
	firm := false // the last pair
	for i := range weights {
		d, _ := p.Decision(order.At(i+1), order.At(i+2))
		firm = d.Firm && d.Upper == order.At(i+1)
		switch {
		case firm:
			weights[i] = 2 * full
		case d.Upper == order.At(i+1):
			weights[i] = min(units(d.Margin), 2*full)
		}
		c.Weights = append(c.Weights, decimal.New(weights[i], -8))
		sum += min(weights[i], full)
	}
	of := int64(n-1) * full
	c.Asked = hardTotal + int(fixed.Divide(sum*(easyTotal-hardTotal), of, fixed.HalfUp))
	cuts, err := placing.SpreadCuts(c.Asked, weights, limit)
	if err != nil {
		return placing.CutProposal{}, err
	}
	c.Cuts = cuts
	if firm {
		c.Cuts = deepenBottom(cuts)
	}
	c.Total = c.Cuts.Total()
	return c, nil
}

// deepenBottom moves points to the last cut until it has 2 or none can be moved. A
// cut that moves to the end of a class costs a card less, so every limit that was
// kept is kept.
func deepenBottom(c placing.Cuts) placing.Cuts {
	points := slices.Collect(c.All())
	last := len(points) - 1
	keep := 0 // classes over six cannot have a cut in every pair
	if c.Len() < 6 {
		keep = 1
	}
	// donor is the largest of the others that can give, nearest the middle; -1 for none.
	donor := func() int {
		from := -1
		for i, v := range points[:last] {
			if v > keep && (from < 0 || v > points[from] || v == points[from] && (i+1)*(last+1-i) > (from+1)*(last+1-from)) {
				from = i
			}
		}
		return from
	}
	for at := donor(); at >= 0 && points[last] < 2; at = donor() {
		points[at]--
		points[last]++
	}
	c, _ = placing.NewCuts(points...) // as many, and none over what it was but the last
	return c
}
