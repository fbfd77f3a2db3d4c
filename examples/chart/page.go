package main

import (
	"fmt"

	"example.com/ribface/examples/internal/cards"
	"example.com/ribface/examples/internal/classfile"
	"example.com/ribface/examples/internal/page"
	"example.com/ribface/examples/internal/say"
	"example.com/ribface/grade"
)

// write writes the page: the placing and the grades, the chart, and the score of
// every card.
func write(e grade.Edition, c classed, picture []byte) ([]byte, error) {
	p := page.New(c.title)
	p.Lead(fmt.Sprintf("Official placing %s, cuts %s.", classfile.Card(c.names, c.official.Order()), c.official.Cuts()))
	t := page.Table{Caption: "In the order of the placing, by the " + e.String() + " edition; yield grade to a tenth, decimals dropped", Heads: []string{"No.", "quality", "yield", "maturity", "marbling"}, Numbers: []int{2}}
	for n := range c.official.Order().Exhibits() {
		a := c.graded.Assessment(n)
		t.Rows = append(t.Rows, []string{c.name(n), a.Quality.String(), say.Tenth(a.Yield), a.Maturity.String(), a.Carcass.Marbling.String()})
	}
	p.Table(t)
	p.Words("placing", "cuts", "card", "quality grade", "yield grade", "maturity", "marbling", "edition")
	p.Head("Where each carcass stands")
	p.Figure(picture, "Firmness, dark cutting and sex class can lower a grade; the table has them in it.")
	p.Head("The score of every card")
	if err := cards.Write(p, c.official, c.names, nil); err != nil {
		return nil, err
	}
	return p.HTML(), nil
}
