package placing

import (
	"encoding/json"
	"iter"
	"slices"
	"strconv"

	"example.com/ribface/internal/fault"
	"example.com/ribface/internal/ordering"
	"example.com/ribface/internal/text"
)

// Vote is what one official, or several who agree, hands to the chair: an order,
// and the cuts that go with it. The zero Vote is refused.
type Vote struct {
	Order Order `json:"order"`
	Cuts  Cuts  `json:"cuts,omitzero"`  // of that order; zero where the official gave none
	Count int   `json:"count,omitzero"` // how many officials hand in this vote; zero stands for one
}

// Panel is the votes of the officials of one class, counted pair by pair. The
// zero Panel has no votes; it has no consensus and proposes nothing.
type Panel struct {
	n         int
	officials int64
	votes     []Vote
	over      [MaxExhibits + 1][MaxExhibits + 1]int64 // officials that put the one over the other
}

// maxOfficials is the greatest number of officials on a panel.
const maxOfficials = 1_000_000

// NewPanel counts the votes. All orders must be of one size, that of the first vote
// that has an order, cuts must be absent or fit their order, counts must not be
// negative, and the officials together at most 1,000,000. The error tells of every
// vote that breaks this; see [Problems].
func NewPanel(votes ...Vote) (Panel, error) { return newPanel("votes", votes) }

// newPanel is NewPanel for a list of the path.
func newPanel(list string, votes []Vote) (Panel, error) {
	if len(votes) == 0 {
		return Panel{}, &FieldError{Path: list, Field: "votes", Allowed: "one or more", Err: ErrMissing}
	}
	var p Panel
	for i := 0; i < len(votes) && p.n == 0; i++ {
		p.n = votes[i].Order.Len()
	}
	var refused error
	for i, v := range votes {
		if v.Count == 0 {
			v.Count = 1
		}
		if err := p.check(v); err != nil {
			refused = fault.Join(refused, fault.At(list+"["+strconv.Itoa(i)+"]", "vote "+strconv.Itoa(i+1), err))
			continue
		}
		p.officials += int64(v.Count)
		p.votes = append(p.votes, v)
		for j := 1; j < p.n; j++ {
			for k := j + 1; k <= p.n; k++ {
				p.over[v.Order.At(j)][v.Order.At(k)] += int64(v.Count)
			}
		}
	}
	if refused != nil {
		return Panel{}, refused
	}
	return p, nil
}

// check refuses a vote that the panel cannot count.
func (p *Panel) check(v Vote) error {
	var order, cuts, count error
	switch {
	case !v.Order.IsValid():
		order = &FieldError{Path: "order", Field: "order", Allowed: "an order of 2 to 12 exhibits", Err: ErrMissing}
	case v.Order.Len() != p.n:
		order = fault.At("order", "", sizeError("order", v.Order, p.n))
	case v.Cuts.IsValid() && v.Cuts.Len() != p.n-1:
		cuts = &FieldError{Path: "cuts", Field: "cuts", Value: v.Cuts.String(), Allowed: "none, or " + text.Count(p.n-1, "cut") + " for " + strconv.Itoa(p.n) + " exhibits", Err: ErrRange}
	}
	if v.Count < 0 || v.Count > maxOfficials || p.officials+int64(v.Count) > maxOfficials {
		count = &FieldError{Path: "count", Field: "count", Value: strconv.Itoa(v.Count), Allowed: "1 or more, 0 for 1, and at most 1000000 on the panel", Err: ErrRange}
	}
	return fault.Join(order, cuts, count)
}

// MarshalJSON gives the list of the votes.
func (p Panel) MarshalJSON() ([]byte, error) { return json.Marshal(append([]Vote{}, p.votes...)) }

// UnmarshalJSON reads a list of votes, held to the rules of [NewPanel]; an empty one
// gives the zero Panel, and null changes nothing. On error the receiver is left as it
// was.
func (p *Panel) UnmarshalJSON(b []byte) error {
	return text.Made(b, p, func(votes []Vote) (Panel, error) {
		if len(votes) == 0 {
			return Panel{}, nil
		}
		return newPanel("", votes)
	})
}

// Equal reports whether both panels have the same votes in the same order.
func (p Panel) Equal(q Panel) bool { return slices.Equal(p.votes, q.votes) }

// Len returns the number of exhibits; 0 for the zero Panel.
func (p Panel) Len() int { return p.n }

// Officials returns the number of officials, counts included.
func (p Panel) Officials() int { return int(p.officials) }

// Votes yields the votes as they were given, a count of zero as one.
func (p Panel) Votes() iter.Seq[Vote] { return slices.Values(p.votes) }

// Over returns how many officials put the upper exhibit over the lower. An
// exhibit that is not in the class gives 0.
func (p Panel) Over(upper, lower int) int {
	if upper < 1 || upper > p.n || lower < 1 || lower > p.n {
		return 0
	}
	return int(p.over[upper][lower])
}

// Disagreement returns the total pairwise disagreement of the officials with an
// order: for every official, the pairs that the order has the other way round.
// An order of another size gives a [*FieldError].
func (p Panel) Disagreement(o Order) (int, error) {
	if o.Len() != p.n || p.n == 0 {
		return 0, sizeError("order", o, p.n)
	}
	sum := 0
	for i := 1; i < p.n; i++ {
		for j := i + 1; j <= p.n; j++ {
			sum += int(p.over[o.At(j)][o.At(i)])
		}
	}
	return sum, nil
}

// Consensus is the order, or the orders, of least total pairwise disagreement
// with a panel. The zero Consensus is that of the zero Panel.
type Consensus struct {
	Order        Order `json:"order"`        // the first of the equal orders, in the order of [Order.Compare]
	Count        int   `json:"count"`        // how many there are, exactly; [Panel.Best] yields them
	Disagreement int   `json:"disagreement"` // the total pairwise disagreement of each with the officials
}

func (p Panel) solve() *ordering.Table {
	var costs ordering.Costs
	for i := range p.n {
		for j := range p.n {
			costs[i][j] = p.over[j+1][i+1]
		}
	}
	return ordering.Solve(p.n, &costs)
}

// Consensus returns the order of least total pairwise disagreement (the method
// and its worked profiles are published: stat-kemeny-example; that committees
// use it is not). It is exact for every size of class. Ties are real: where
// Count is over 1 the officials do not settle the order, and the chair does, from
// those that [Panel.Best] yields.
func (p Panel) Consensus() Consensus {
	if p.n == 0 {
		return Consensus{}
	}
	t := p.solve()
	c := Consensus{Count: int(t.Count()), Disagreement: int(t.Cost())}
	for c.Order = range orders(t) {
		break
	}
	return c
}

// Best yields every order of least total pairwise disagreement, in the order of
// [Order.Compare]. They may be many: two officials who turn a class of twelve upside
// down leave all 479,001,600 equal.
func (p Panel) Best() iter.Seq[Order] {
	return func(yield func(Order) bool) {
		if p.n > 0 {
			orders(p.solve())(yield)
		}
	}
}

func orders(t *ordering.Table) iter.Seq[Order] {
	return func(yield func(Order) bool) {
		var list [MaxExhibits]int
		for found := range t.All() {
			for i, e := range found {
				list[i] = e + 1
			}
			o, _, _ := pack(list[:len(found)])
			if !yield(o) {
				return
			}
		}
	}
}

// Borda returns the points of every exhibit, exhibit 1 first, when each official
// gives top points to the first placed, one fewer to the next, and so on (published:
// stat-borda-capitals with a top of 3 for four exhibits, stat-borda-course with
// a top of 4). The top changes every total by the same amount and never the
// order. A top under the number of exhibits less one, which would give the last
// negative points, or over 1,000 gives a [*FieldError].
func (p Panel) Borda(top int) ([]int, error) {
	if p.n == 0 {
		return nil, &FieldError{Field: "votes", Allowed: "one or more", Err: ErrMissing}
	}
	if top < p.n-1 || top > 1000 {
		return nil, &FieldError{Field: "top", Value: strconv.Itoa(top), Allowed: strconv.Itoa(p.n-1) + " to 1000", Err: ErrRange}
	}
	points := make([]int, p.n)
	for e := range points {
		points[e] = int(p.officials) * (top - p.n + 1)
		for f := 1; f <= p.n; f++ {
			points[e] += int(p.over[e+1][f])
		}
	}
	return points, nil
}

// Concordance returns Kendall's coefficient of concordance W: 1 where all
// officials hand in one order, 0 where their orders cancel out (range published:
// stat-kendall-w-help). A placing has no ties, so no correction is needed. ok is
// false for fewer than two officials.
func (p Panel) Concordance() (w float64, ok bool) {
	if p.officials < 2 {
		return 0, false
	}
	// With R the sum of places of an exhibit, m officials and n exhibits,
	// W = 12 S / (m^2 (n^3 - n)) and S = sum (R - m(n+1)/2)^2.
	m, n := p.officials, int64(p.n)
	var four int64
	for e := 1; e <= p.n; e++ {
		r := m
		for f := 1; f <= p.n; f++ {
			r += p.over[f][e]
		}
		d := 2*r - m*(n+1)
		four += d * d
	}
	return float64(3*four) / float64(m*m*(n*n*n-n)), true
}

// MeanTau returns Kendall's tau averaged over all pairs of officials: 1 where all
// agree, and near 0 for a class that nobody can place. ok is false for fewer
// than two officials.
func (p Panel) MeanTau() (tau float64, ok bool) {
	if p.officials < 2 {
		return 0, false
	}
	var split int64 // pairs of officials times pairs of exhibits at odds
	for i := 1; i < p.n; i++ {
		for j := i + 1; j <= p.n; j++ {
			split += p.over[i][j] * p.over[j][i]
		}
	}
	m, n := p.officials, int64(p.n)
	return 1 - 2*float64(split)/(float64(m*(m-1)/2)*float64(n*(n-1)/2)), true
}
