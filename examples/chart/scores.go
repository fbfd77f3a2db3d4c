package main

import (
	"fmt"

	"example.com/ribface/examples/internal/page"
	"example.com/ribface/examples/internal/say"
	"example.com/ribface/grade"
	"example.com/ribface/placing"
)

// mostExhibits is the largest class whose cards fit a page: 120 of five.
const mostExhibits = 5

// write writes the page: the placing and the grades, the chart, and the score of
// every card.
func write(e grade.Edition, c classed, picture []byte) ([]byte, error) {
	p := page.New(c.title)
	p.Lead(fmt.Sprintf("Official placing %s, cuts %s.", c.card(c.official.Order()), c.official.Cuts()))
	t := page.Table{Caption: "In the order of the placing, by the " + e.String() + " edition; yield grade to a tenth, decimals dropped", Heads: []string{"No.", "quality", "yield", "maturity", "marbling"}, Numbers: []int{2}}
	for n := range c.official.Order().Exhibits() {
		a := c.graded.Assessment(n)
		t.Rows = append(t.Rows, []string{c.name(n), a.Quality.String(), say.Tenth(a.Yield), a.Maturity.String(), a.Carcass.Marbling.String()})
	}
	p.Table(t)
	p.Words("placing", "cuts", "card", "quality grade", "yield grade", "maturity", "marbling", "edition")
	p.Head("Where each carcass stands")
	p.Figure(picture, "Firmness, dark cutting and sex class can lower a grade; the table has them in it.")
	if err := scores(p, c); err != nil {
		return nil, err
	}
	return p.HTML(), nil
}

// scores writes the score of every card, in parts by the exhibit placed first;
// parts and cards in the order of the official placing.
func scores(p *page.Page, c classed) error {
	o := c.official
	n := o.Order().Len()
	p.Head("The score of every card")
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
		part.Caption = c.name(card.At(1)) + " placed first"
		part.Bars = append(part.Bars, page.Bar{Words: c.card(card), Number: score, Strong: card == o.Order()})
	}
	p.Bars(placing.FullScore, [2]string{"card", "score"}, parts)
	p.Note(fmt.Sprintf("A full card is %d; the official one is heavy. For every pair that a card has the wrong way round it loses the sum of the cuts between the two. The lowest score is %d and a guesser's mean is %v.", placing.FullScore, o.Worst(), o.Mean()))
	return nil
}
