package placing

import (
	"strconv"

	"example.com/ribface/internal/text"
	"example.com/ribface/internal/text/fixed"
	"github.com/shopspring/decimal"
)

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
func (p Panel) ProposeCuts(o Order, limit CutLimit) (CutProposal, error) {
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
	if p.n <= mostFullCuts {
		want = max(want, p.n-1)
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
func SpreadCuts(total int, weights []int64, limit CutLimit) (Cuts, error) {
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
