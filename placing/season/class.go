package season

import (
	"example.com/ribface/internal/fault"
	"example.com/ribface/placing"
	"example.com/ribface/placing/contest"
)

// ClassCards follows how members place one class. It takes cards in one pass, holds
// integer sums, and two of them for one official placing can be merged in any order
// with the same result. Its figures are TooFew under 5 cards. It is comparable with ==.
// The zero ClassCards has no official placing and refuses every card.
type ClassCards struct {
	official placing.Official
	n, exact int64
	loss     int64
	reversed [placing.MaxExhibits * (placing.MaxExhibits - 1) / 2]int64
	rest     Errors // scores in the class against scores on the rest
}

// NewClass returns a Class without cards.
func NewClass(o placing.Official) ClassCards { return ClassCards{official: o} }

// Add adds a card with its member's points on the rest of the contest, from which
// [ClassCards.Discrimination] is found; points that are not set leave the card out of that.
// Cards without a placing are not added. A card that [placing.Official.Score] refuses
// and points beyond a hundred million give a [*placing.FieldError].
func (c *ClassCards) Add(card placing.Order, rest contest.Points) error {
	if c == nil {
		return missing("class")
	}
	score, err := c.official.Score(card)
	if err != nil {
		return err
	}
	if rest.IsSet() {
		if err := c.rest.Add(Pair{int64(score), rest.Units()}); err != nil {
			return err
		}
	}
	c.n++
	c.loss += int64(placing.FullScore - score)
	if card == c.official.Order() {
		c.exact++
	}
	for f := range c.official.Faults(card) {
		i, j := c.official.Order().Place(f.Upper)-1, c.official.Order().Place(f.Lower)-1
		c.reversed[pairIndex(i, j)]++
	}
	return nil
}

// pairIndex numbers the pairs of places i < j, from 0.
func pairIndex(i, j int) int { return j*(j-1)/2 + i }

// Merge adds what d has seen. Another official placing gives a [*placing.FieldError].
func (c *ClassCards) Merge(d ClassCards) error {
	if c == nil {
		return missing("class")
	}
	if c.official != d.official {
		return &fault.FieldError{Field: "official placing", Value: d.official.String(), Allowed: c.official.String(), Err: fault.ErrRange}
	}
	c.n += d.n
	c.exact += d.exact
	c.loss += d.loss
	for i, v := range d.reversed {
		c.reversed[i] += v
	}
	c.rest.Merge(d.rest)
	return nil
}

// Equal reports whether c == d.
func (c ClassCards) Equal(d ClassCards) bool { return c == d }

// Official returns the official placing.
func (c ClassCards) Official() placing.Official { return c.official }

// N returns the number of cards.
func (c ClassCards) N() int { return int(c.n) }

// Exact returns the share of cards that agree with the official placing.
func (c ClassCards) Exact() Figure { return c.figure(c.exact, 1) }

// MeanScore returns the mean score.
func (c ClassCards) MeanScore() Figure {
	return c.figure(c.n*placing.FullScore-c.loss, 1)
}

// Difficulty returns the mean loss over the greatest loss that the cuts allow: 0
// where every card is right, 0.5 where all guess (derived); NoSpread where all cuts
// are 0.
func (c ClassCards) Difficulty() Figure {
	return c.figure(c.loss, int64(c.official.Cuts().GreatestLoss()))
}

func (c ClassCards) figure(sum, per int64) Figure {
	return enough(c.n, minCards).ratio(integer(sum), mul(integer(c.n), integer(per)))
}

// Discrimination returns the correlation between the scores in the class and the
// members' points on the rest of the contest: near 0 for a class that tells nothing
// of who judges well, below 0 for one that good judges lose.
func (c ClassCards) Discrimination() Figure { return c.rest.Correlation() }

// PairShare is how often one pair was reversed.
type PairShare struct {
	Upper     int    `json:"upper"`              // the exhibit that is officially over the other
	Lower     int    `json:"lower"`              // the other
	Points    int    `json:"points"`             // what the reversal costs: the cut, for neighbors
	Neighbors bool   `json:"neighbors,omitzero"` // the two stand next to each other in the official placing
	Share     Figure `json:"share"`              // of the cards
}

// Pairs returns every pair with the share of cards that reverse it, pairs of the
// first exhibit first. By the published words for cuts few should reverse a pair
// with a large cut, and about half may fairly reverse one of 2
// (ext-judging-contests-101).
func (c ClassCards) Pairs() []PairShare {
	order, cuts := c.official.Order(), c.official.Cuts()
	var out []PairShare
	for i := range order.Len() {
		points := 0
		for j := i + 1; j < order.Len(); j++ {
			points += cuts.At(j)
			out = append(out, PairShare{order.At(i + 1), order.At(j + 1), points, j == i+1, c.figure(c.reversed[pairIndex(i, j)], 1)})
		}
	}
	return out
}
