package main

import (
	"fmt"

	"example.com/ribface/placing"
)

// mostColumns is the largest class whose cards fit one page: 120 of five.
const mostColumns = 5

// scoreTable draws every possible card of the class with its score. A column
// holds the cards with the same exhibit first, columns and cards in the order of
// the official placing.
func scoreTable(class Class) ([]byte, error) {
	o := class.Official
	n := o.Order().Len()
	if !o.IsValid() {
		return nil, &placing.FieldError{Field: "official placing", Allowed: "2 to 5 exhibits with their cuts", Err: placing.ErrMissing}
	}
	if n > mostColumns {
		return nil, &placing.FieldError{Field: "official placing", Value: o.String(), Allowed: "2 to 5 exhibits, so that the cards fit a page", Err: placing.ErrRange}
	}
	const (
		margin = 36 * px
		column = 206 * px
		row    = 25 * px
		head   = 116 * px
		bar    = 84 * px // the width of 50 points
		barAt  = 116 * px
	)
	rows := 1
	for i := 2; i < n; i++ {
		rows *= i
	}
	below := tenth(0) // room for bars to the left of zero
	if w := o.Worst(); w < 0 {
		below = tenth(-w) * bar / placing.FullScore
	}
	w := max(2*margin+tenth(n)*(column+below)-20*px, 640*px)
	h := head + tenth(rows)*row + 74*px
	c := open(w, h, "Score of every card: "+class.Name, "Official placing and cuts: "+o.String()+". A column for each exhibit placed first.")
	c.text(margin, 34*px, "title", "Score of every card")
	c.text(margin, 56*px, "small", class.Name)
	c.text(margin, 76*px, "small", fmt.Sprintf("Official placing %v, cuts %v; lowest score %d, a guesser's mean %v", o.Order(), o.Cuts(), o.Worst(), o.Mean()))

	// The cards in the order that they have when the official placing counts 1 to n.
	next := make(map[int]int, n)
	for ranks := range placing.Orders(n) {
		card, err := ranks.Relabel(o.Order())
		if err != nil {
			return nil, err
		}
		score, err := o.Score(card)
		if err != nil {
			return nil, err
		}
		at := ranks.At(1) - 1
		x := margin + tenth(at)*(column+below)
		if next[at] == 0 {
			c.text(x, head-14*px, "small", fmt.Sprintf("%d placed first", card.At(1)))
			c.line(point{x, head - 6*px}, point{x + column + below - 20*px, head - 6*px}, `stroke="#26323a" stroke-width="1.2"`)
		}
		y := head + tenth(next[at])*row
		next[at]++
		class := "num"
		if card == o.Order() {
			class = "num strong"
			c.rect(x-6*px, y, column+below-10*px, row-1*px, `rx="3" fill="#e3eaed"`)
		}
		c.text(x, y+17*px, class, card.String())
		c.text(x+96*px, y+17*px, class+" end", fmt.Sprint(score))
		zero := x + barAt + below - 12*px
		length := tenth(score) * bar / placing.FullScore
		c.rect(zero, y+7*px, bar, 11*px, `fill="#eef0f1"`)
		if length < 0 {
			c.rect(zero+length, y+7*px, -length, 11*px, `fill="none" stroke="#3f6475" stroke-width="1.2"`)
		} else {
			c.rect(zero, y+7*px, length, 11*px, `fill="#3f6475"`)
		}
		c.line(point{zero, y + 4*px}, point{zero, y + 21*px}, `stroke="#26323a"`)
	}
	y := head + tenth(rows)*row
	c.text(margin, y+30*px, "small", fmt.Sprintf("The full bar is %d points. The shaded card is the official one. For every pair of exhibits that a card has the wrong way", placing.FullScore))
	c.text(margin, y+46*px, "small", "round it loses the sum of the cuts between the two. For teaching and contests.")
	return c.close(), nil
}
