// Package cards writes the score of every possible placing card of a class.
package cards

import (
	"fmt"
	"strings"

	"example.com/ribface/examples/internal/classfile"
	"example.com/ribface/examples/internal/page"
	"example.com/ribface/placing"
)

// mostExhibits is the largest class whose cards fit a page: 120 of five.
const mostExhibits = 5

// Write writes the score of every card, in parts by the exhibit placed first; parts
// and cards stand in the order of the official placing. The members who handed a
// card in stand under it; there may be none. Names are those of the exhibits, as
// package classfile has them.
func Write(p *page.Page, o placing.Official, names []string, members map[placing.Order][]string) error {
	n := o.Order().Len()
	if n > mostExhibits {
		p.Say(fmt.Sprintf("A class of %d has too many cards for a page. The lowest score is %d and a guesser's mean is %v.", n, o.Worst(), o.Mean()))
		return nil
	}
	parts := make([]page.BarPart, n)
	for ranks := range placing.Orders(n) { // the cards as if the official placing counted 1 to n
		card, err := ranks.Relabel(o.Order())
		if err != nil {
			return err
		}
		score, err := o.Score(card)
		if err != nil {
			return err
		}
		part := &parts[ranks.At(1)-1]
		part.Caption = classfile.Name(names, card.At(1)) + " placed first"
		part.Bars = append(part.Bars, page.Bar{Words: classfile.Card(names, card), Number: score, Strong: card == o.Order(), Note: strings.Join(members[card], ", ")})
	}
	p.Bars(placing.FullScore, [2]string{"card", "score"}, parts)
	p.Note(fmt.Sprintf("A full card is %d; the official one is heavy. For every pair that a card has the wrong way round it loses the sum of the cuts between the two. The lowest score is %d and a guesser's mean is %v.", placing.FullScore, o.Worst(), o.Mean()))
	return nil
}
