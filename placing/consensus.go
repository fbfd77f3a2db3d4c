package placing

import (
	"encoding/json"
	"iter"
	"slices"
	"strconv"

	"example.com/ribface/internal/fault"
	"example.com/ribface/internal/ordering"
	"example.com/ribface/internal/text"
	"example.com/ribface/internal/text/fixed"
	"github.com/shopspring/decimal"
)

// Vote is what one official, or several who agree, hands to the chair: an order,
// and the cuts that go with it. The zero Vote is refused.
type Vote struct {
	Order Order `json:"order"`
	Cuts  Cuts  `json:"cuts,omitzero"`  // of that order; zero where the official gave none
	Count int   `json:"count,omitzero"` // how many officials hand in this vote; zero stands for one
}

// UnmarshalJSON reads an object with the JSON names of the fields, as
// [CardRules.UnmarshalJSON] does.
func (v *Vote) UnmarshalJSON(b []byte) error { return text.Struct(b, v) }

// Panel is the votes of the officials of one class, counted pair by pair. The
// zero Panel has no votes; it has no consensus and proposes nothing.
type Panel struct {
	n         int
	officials int64
	votes     []Vote
	over      [MaxExhibits + 1][MaxExhibits + 1]int64 // officials that put the one over the other
}

// MaxVotes is the greatest number of officials on a panel.
const MaxVotes = 1_000_000

// NewPanel counts the votes. All orders must be of one size, that of the first vote
// that has an order, cuts must be absent or fit their order, counts must not be
// negative, and the officials together at most [MaxVotes]. The error tells of every
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
	if v.Count < 0 || v.Count > MaxVotes || p.officials+int64(v.Count) > MaxVotes {
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
	var votes []Vote
	if err := text.List(b, &votes); err != nil || votes == nil {
		return err
	}
	var read Panel
	if len(votes) > 0 {
		var err error
		if read, err = newPanel("", votes); err != nil {
			return err
		}
	}
	*p = read
	return nil
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

// ListedOrders is the greatest number of equal orders that a [Consensus] lists.
const ListedOrders = 24

// Consensus is the order, or the orders, of least total pairwise disagreement
// with a panel. The zero Consensus is that of the zero Panel.
type Consensus struct {
	Order        Order   `json:"order"`        // the first of the equal orders, in the order of [Order.Compare]
	Equal        []Order `json:"equal"`        // all of them, the first ListedOrders where there are more
	Count        int     `json:"count"`        // how many there are, exactly
	Disagreement int     `json:"disagreement"` // the total pairwise disagreement of each with the officials
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
// Count is over 1 the officials do not settle the order, and the chair does.
func (p Panel) Consensus() Consensus {
	if p.n == 0 {
		return Consensus{}
	}
	t := p.solve()
	c := Consensus{Count: int(t.Count()), Disagreement: int(t.Cost())}
	for o := range orders(t) {
		c.Equal = append(c.Equal, o)
		if len(c.Equal) == ListedOrders {
			break
		}
	}
	c.Order = c.Equal[0]
	return c
}

// Best yields every order of least total pairwise disagreement, in the order of
// [Order.Compare], for the rare panel with more of them than [ListedOrders]. Two
// officials who turn a class of twelve upside down leave all 479,001,600 equal.
func (p Panel) Best() iter.Seq[Order] {
	return func(yield func(Order) bool) {
		if p.n == 0 {
			return
		}
		for o := range orders(p.solve()) {
			if !yield(o) {
				return
			}
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

// PairVote is what the officials say of one pair of neighbors.
type PairVote struct {
	Upper   int `json:"upper"`   // the exhibit over the other in the order asked about
	Lower   int `json:"lower"`   // the other
	For     int `json:"for"`     // officials that place them so
	Against int `json:"against"` // officials that place them the other way round

	// Least and Most are the fewest and the most points between the two on the
	// scale of any one official, negative for one who has them the other way round;
	// both 0 where no official gave cuts.
	Least int             `json:"least"`
	Most  int             `json:"most"`
	Mean  decimal.Decimal `json:"mean"` // mean over the officials that gave cuts, to 4 places, halves away from zero
	Cut   int             `json:"cut"`  // the cut that is proposed
}

// CutProposal is a proposal of cuts with what it rests on: the cuts of officials, see
// [Panel.ProposeCuts], or the margins of a policy, as package class proposes them.
type CutProposal struct {
	Cuts  Cuts `json:"cuts"`
	Asked int  `json:"asked"` // the total that is wanted
	Total int  `json:"total"` // what was shared out, see the function that proposes; Cuts.Total() may be less

	// Weights are what the cuts are in proportion to, the top pair first: points of
	// the officials, or a policy's margins in yield grades. None is negative.
	Weights []decimal.Decimal `json:"weights"`
	Pairs   []PairVote        `json:"pairs,omitempty"` // of a panel, one for every cut
}

// ProposeCuts proposes cuts for an order, usually that of the consensus, from the
// cuts of the officials. The rule is our own; no formula is published.
//
// The points between two exhibits on an official's scale are the cuts between
// them, negative for one who has the two the other way round, so that officials at
// odds pull a cut down. The mean over the officials is the weight of a pair, a
// negative one counting as nothing. The total is the mean of the officials'
// totals, to the nearest point, halves up: a committee chooses the total first
// (published: amsa-committee). It is Asked. In classes of up to six exhibits it is
// raised to one point for every pair where it is less; Asked then stays under Total. [SpreadCuts]
// then shares the total out, within the limit and such that no card goes negative.
//
// An order of another size, a limit that is not set or that does not speak of
// this size, totals that come to more than 50 in the mean, and a panel where nobody
// gave cuts give a [*FieldError].
func (p Panel) ProposeCuts(o Order, limit Limit) (CutProposal, error) {
	if o.Len() != p.n || p.n == 0 {
		return CutProposal{}, sizeError("order", o, p.n)
	}
	var given, total int64
	sums := make([]int64, p.n-1)
	pairs := make([]PairVote, p.n-1)
	for i := range pairs {
		u, l := o.At(i+1), o.At(i+2)
		pairs[i] = PairVote{Upper: u, Lower: l, For: p.Over(u, l), Against: p.Over(l, u)}
	}
	for _, v := range p.votes {
		if !v.Cuts.IsValid() {
			continue
		}
		official, _ := NewOfficial(v.Order, v.Cuts)
		for i := range pairs {
			q := &pairs[i]
			d := int(official.depth[q.Lower]) - int(official.depth[q.Upper])
			if given == 0 {
				q.Least, q.Most = d, d
			}
			q.Least, q.Most = min(q.Least, d), max(q.Most, d)
			sums[i] += int64(v.Count) * int64(d)
		}
		given += int64(v.Count)
		total += int64(v.Count) * int64(v.Cuts.Total())
	}
	if given == 0 {
		return CutProposal{}, &FieldError{Field: "cuts of the officials", Allowed: "cuts from at least one official", Err: ErrMissing}
	}
	weights := make([]decimal.Decimal, len(pairs))
	for i := range pairs {
		pairs[i].Mean = decimal.New(sums[i], 0).DivRound(decimal.New(given, 0), 4)
		sums[i] = max(sums[i], 0)
		weights[i] = decimal.Max(pairs[i].Mean, decimal.Zero)
	}
	asked := int(fixed.Divide(total, given, fixed.HalfUp))
	want := asked
	if least := p.n - 1; p.n <= mostFullCuts {
		want = max(want, least)
	}
	cuts, err := SpreadCuts(want, sums, limit)
	if err != nil {
		return CutProposal{}, err
	}
	for i := range pairs {
		pairs[i].Cut = cuts.At(i + 1)
	}
	return CutProposal{Cuts: cuts, Asked: asked, Total: want, Weights: weights, Pairs: pairs}, nil
}

// mostFullCuts is the greatest class that can have a cut of at least 1 in every
// pair without a negative card: cuts of 1 throughout lose (n^3 - n) / 6, which is
// 35 for six exhibits and 56 for seven (derived).
const mostFullCuts = 6

// SpreadCuts shares a total of points out over the pairs of a class in proportion
// to their weights, one for each pair from the top, such that the limit is kept
// and no card can score below zero. The rule is our own:
//
// The total is shared in proportion, points left over going to the largest
// remainders, the upper pair first. In classes of up to six a pair left without a
// point gets one from the largest cut, of equal ones from that nearest the middle;
// larger classes cannot have a cut in every pair without negative cards, and keep
// their zeros. Where the result breaks the limit or lets a card go negative, the
// same is done with a total less by one, until it fits. Weights that are all zero
// share evenly.
//
// A total too small to give every pair of up to six exhibits a point, or over 50,
// weights that are negative or over 10^15 or not 1 to 11 in number, and a limit
// that is not set or does not speak of this number of cuts give a [*FieldError].
func SpreadCuts(total int, weights []int64, limit Limit) (Cuts, error) {
	n := len(weights) + 1
	if n < MinExhibits || n > MaxExhibits {
		return Cuts{}, &FieldError{Field: "weights", Value: text.Count(len(weights), "weight"), Allowed: "1 to 11, one fewer than exhibits", Err: ErrRange}
	}
	start := 0
	if n <= mostFullCuts {
		start = 1
	}
	if total < start*(n-1) || total > maxCut {
		return Cuts{}, &FieldError{Field: "total", Value: strconv.Itoa(total), Allowed: strconv.Itoa(start*(n-1)) + " to 50 for " + strconv.Itoa(n) + " exhibits", Err: ErrRange}
	}
	if err := limits.Check("limit", limit); err != nil {
		return Cuts{}, err
	}
	if limit != LimitExact && n != 4 {
		return Cuts{}, &FieldError{Field: "limit", Value: limit.String(), Allowed: "exact for any class but one of four", Err: ErrRange}
	}
	const most = 1_000_000_000_000_000
	share := make([]int64, n-1)
	var sum int64
	for i, w := range weights {
		if w < 0 || w > most {
			return Cuts{}, &FieldError{Field: "weight " + strconv.Itoa(i+1), Value: strconv.FormatInt(w, 10), Allowed: "0 to 10^15", Err: ErrRange}
		}
		share[i] = w
		sum += w
	}
	if sum == 0 {
		for i := range share {
			share[i] = 1
		}
		sum = int64(len(share))
	}
	for {
		cuts, _ := NewCuts(apportion(total, start, share, sum)...)
		if cuts.NeverNegative() && limit.Check(cuts) == nil {
			return cuts, nil
		}
		total-- // at the latest, one point for every pair or none at all will fit
	}
}

// apportion shares a total out by weights that add up to sum, start points or
// more to each.
func apportion(total, start int, weights []int64, sum int64) []int {
	points, rest := make([]int, len(weights)), make([]int64, len(weights))
	left := int64(total)
	for i, w := range weights {
		points[i] = int(int64(total) * w / sum)
		left -= int64(points[i])
		rest[i] = int64(total) * w % sum
	}
	for ; left > 0; left-- {
		at := 0
		for i := range rest {
			if rest[i] > rest[at] {
				at = i
			}
		}
		points[at]++
		rest[at] = -1
	}
	for i := range points {
		for points[i] < start {
			points[i]++
			points[largest(points)]--
		}
	}
	return points
}

// largest returns the index of the largest cut, of equal ones that nearest the
// middle, the upper first.
func largest(points []int) int {
	at := 0
	for i, p := range points {
		if p > points[at] || p == points[at] && (i+1)*(len(points)-i) > (at+1)*(len(points)-at) {
			at = i
		}
	}
	return at
}
