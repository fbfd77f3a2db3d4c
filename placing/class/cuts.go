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

// ProposeCuts proposes cuts from the margins of the neighbors, within the limit
// and such that no card goes negative. The zero limit stands for the strictest
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
// The zero Placing and a limit that does not speak of the class give a
// [*placing.FieldError].
func (p Placing) ProposeCuts(limit placing.Limit) (placing.CutProposal, error) {
	return p.ProposeCutsFor(p.Order, limit)
}

// ProposeCutsFor proposes cuts as [Placing.ProposeCuts] does for another order of the
// class, one that a committee has settled. Neighbors that the policy would turn count
// 0: there the committee and the policy differ. An order of another size gives a
// [*placing.FieldError] as well.
func (p Placing) ProposeCutsFor(order placing.Order, limit placing.Limit) (placing.CutProposal, error) {
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

// Mistake is a common mistake with what it would score.
type Mistake struct {
	Name  string        `json:"name"` // in words, as "top pair switched"
	Card  placing.Order `json:"card"`
	Score int           `json:"score"`
	Lost  int           `json:"lost"` // 50 less the score
}

// Mistakes returns how the usual mistakes would score: every pair of neighbors
// switched, top and bottom pair both, the winner put last, the last put first,
// and the full reversal. Mistakes that come to the same card are listed once,
// under the first name. The zero Official has none.
func Mistakes(o placing.Official) []Mistake {
	n := o.Order().Len()
	var all []Mistake
	add := func(name string, places ...int) {
		list := make([]int, n)
		for i, p := range places {
			list[i] = o.Order().At(p)
		}
		card, _ := placing.NewOrder(list...)
		for _, m := range all {
			if m.Card == card {
				return
			}
		}
		score, _ := o.Score(card)
		all = append(all, Mistake{Name: name, Card: card, Score: score, Lost: placing.FullScore - score})
	}
	straight := func() []int {
		list := make([]int, n)
		for i := range list {
			list[i] = i + 1
		}
		return list
	}
	for i := 1; i < n; i++ {
		list := straight()
		list[i-1], list[i] = list[i], list[i-1]
		add(PairName(i, n)+" switched", list...)
	}
	if n >= 4 {
		list := straight()
		list[0], list[1], list[n-2], list[n-1] = list[1], list[0], list[n-1], list[n-2]
		add("top and bottom pair switched", list...)
	}
	if n >= 2 {
		list := straight()
		add("first put last", append(list[1:], list[0])...)
		list = straight()
		add("last put first", append([]int{n}, list[:n-1]...)...)
		for i := range list {
			list[i] = n - i
		}
		add("turned upside down", list...)
	}
	return all
}

// PairName names the i-th pair of neighbors, from 1 at the top, in a class of n:
// top, middle and bottom pair of four (published: ext-nebraska-g2092). A larger
// class numbers the pairs between.
func PairName(i, n int) string {
	switch {
	case n == 2:
		return "the pair"
	case i == 1:
		return "top pair"
	case i == n-1:
		return "bottom pair"
	case n == 4:
		return "middle pair"
	default:
		return "pair " + itoa(i)
	}
}

// Guessing is how hard the cuts make a class for one who guesses.
type Guessing struct {
	MeanLoss decimal.Decimal `json:"mean_loss"` // points that a guesser loses on average
	Worst    int             `json:"worst"`     // the lowest score
	Placings int             `json:"placings"`  // all placings of so many exhibits
	Above40  int             `json:"above_40"`  // of these, placings that score more than 40
	Above45  int             `json:"above_45"`  // and more than 45
}

// GuessingOf works out how hard an official placing is, over all placings, also
// for a class of twelve with its 479,001,600. The zero Official gives the zero
// Difficulty.
func GuessingOf(o placing.Official) Guessing {
	n := o.Order().Len()
	if n == 0 {
		return Guessing{}
	}
	d := Guessing{MeanLoss: o.Cuts().MeanLoss(), Worst: o.Worst()}
	// By the set of exhibits placed so far, from the top of the card: how many
	// ways there are to have lost so many points, more than 9 counted together.
	const many = 10
	depth := make([]int, n)
	for i := 1; i < n; i++ {
		depth[i] = depth[i-1] + o.Cuts().At(i)
	}
	ways := make([][many + 1]int, 1<<n)
	ways[0][0] = 1
	for set := range ways {
		for i := range n {
			if set&(1<<i) != 0 {
				continue
			}
			lost := 0
			for j := i + 1; j < n; j++ {
				if set&(1<<j) != 0 {
					lost += depth[j] - depth[i]
				}
			}
			for l, w := range ways[set] {
				ways[set|1<<i][min(l+lost, many)] += w
			}
		}
	}
	for l, w := range ways[len(ways)-1] {
		d.Placings += w
		if l < 10 {
			d.Above40 += w
		}
		if l < 5 {
			d.Above45 += w
		}
	}
	return d
}
