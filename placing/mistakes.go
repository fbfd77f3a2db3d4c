package placing

import (
	"slices"
	"strconv"
)

// Mistake is a usual mistake with what it would score.
type Mistake struct {
	Name  string `json:"name"` // in words, as "top pair switched"
	Card  Order  `json:"card"`
	Score int    `json:"score"`
}

// Mistakes returns how the usual mistakes would score: every pair of neighbors
// switched, top and bottom pair both in a class of four or more, the winner put last,
// the last put first, and the full reversal. Mistakes that come to the same card are
// listed once, under the first name. The zero Official has none.
func (o Official) Mistakes() []Mistake {
	n := o.order.Len()
	if n == 0 {
		return nil
	}
	var all []Mistake
	add := func(name string, change func(list []int) []int) {
		card, _, _ := pack(change(slices.Collect(o.order.Exhibits())))
		if !slices.ContainsFunc(all, func(m Mistake) bool { return m.Card == card }) {
			score, _ := o.Score(card)
			all = append(all, Mistake{name, card, score})
		}
	}
	// switched exchanges each of the exhibits, by place from 0, for the next.
	switched := func(upper ...int) func([]int) []int {
		return func(list []int) []int {
			for _, i := range upper {
				list[i], list[i+1] = list[i+1], list[i]
			}
			return list
		}
	}
	for i := 1; i < n; i++ {
		add(PairName(i, n)+" switched", switched(i-1))
	}
	if n >= 4 {
		add("top and bottom pair switched", switched(0, n-2))
	}
	add("first put last", func(list []int) []int { return append(list[1:], list[0]) })
	add("last put first", func(list []int) []int { return slices.Insert(list[:n-1], 0, list[n-1]) })
	add("turned upside down", func(list []int) []int { slices.Reverse(list); return list })
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
		return "pair " + strconv.Itoa(i)
	}
}
