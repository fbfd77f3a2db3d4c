package main

import (
	"cmp"
	"slices"

	"example.com/ribface/placing"
)

// line is one member in the standings. Members with equal points share a rank,
// and the ranks after them are left out: 1, 2, 2, 4.
type line struct {
	Rank   int    `json:"rank"`
	Member string `json:"member"`
	Points int    `json:"points"`
	Cards  int    `json:"cards"`
}

// standings adds up the cards of each member, best first.
func standings(entries []Entry, rules placing.CardRules) ([]line, error) {
	at := map[string]int{}
	lines := []line{}
	for _, e := range entries {
		score, err := rules.Score(e.Official, e.Card)
		if err != nil {
			return nil, err
		}
		i, ok := at[e.Member]
		if !ok {
			i = len(lines)
			at[e.Member] = i
			lines = append(lines, line{Member: e.Member})
		}
		lines[i].Points += score
		lines[i].Cards++
	}
	slices.SortFunc(lines, func(a, b line) int {
		return cmp.Or(cmp.Compare(b.Points, a.Points), cmp.Compare(a.Member, b.Member))
	})
	for i := range lines {
		lines[i].Rank = i + 1
		if i > 0 && lines[i].Points == lines[i-1].Points {
			lines[i].Rank = lines[i-1].Rank
		}
	}
	return lines, nil
}
