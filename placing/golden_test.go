package placing_test

import (
	"bytes"
	"fmt"
	"testing"

	"example.com/ribface/internal/testkit/golden"
	"example.com/ribface/placing"
	"github.com/shopspring/decimal"
)

// TestGolden sweeps scores, faults, limits, cards, words and reading.
func TestGolden(t *testing.T) {
	var b bytes.Buffer
	fmt.Fprintln(&b, "# every card: official, cuts, greatest and mean loss: cards with their scores")
	for _, cuts := range []string{"2-8-2", "3-9-3", "5-5-5", "0-12-1", "7-2-7", "0-0-0", "50-50-50"} {
		for _, order := range []string{"1-2-3-4", "3-2-1-4"} {
			o, err := placing.NewOfficial(placing.MustParseOrder(order), placing.MustParseCuts(cuts))
			if err != nil {
				t.Fatal(err)
			}
			fmt.Fprintf(&b, "%v, %d, %v, %v:", o, o.Cuts().GreatestLoss(), decimal.New(placing.FullScore, 0).Sub(o.Mean()), o.Mean())
			for card, s := range o.Scores() {
				fmt.Fprintf(&b, " %v %d", card, s)
			}
			fmt.Fprintln(&b)
		}
	}
	fmt.Fprintln(&b, "# faults")
	for _, sizes := range [][3]string{{"2-1", "5", "1-2"}, {"3-1-2", "4-6", "2-1-3"}, {"3-2-1-4", "2-8-2", "4-2-3-1"}, {"5-3-1-2-4", "1-2-3-4", "1-2-3-4-5"}, {"6-5-4-3-2-1", "1-2-3-2-1", "1-2-3-4-5-6"}, {"12-11-10-9-8-7-6-5-4-3-2-1", "1-1-1-1-1-1-1-1-1-1-1", "1-2-3-4-5-6-7-8-9-10-11-12"}} {
		o, err := placing.NewOfficial(placing.MustParseOrder(sizes[0]), placing.MustParseCuts(sizes[1]))
		if err != nil {
			t.Fatal(err)
		}
		card := placing.MustParseOrder(sizes[2])
		s, err := o.Score(card)
		fmt.Fprintf(&b, "%v, card %v: %d %v:", o, card, s, err)
		for f := range o.Faults(card) {
			fmt.Fprintf(&b, " %d/%d %d", f.Upper, f.Lower, f.Points)
		}
		fmt.Fprintln(&b)
	}
	fmt.Fprintln(&b, "# limits")
	for l := range placing.CutLimits() {
		fmt.Fprintf(&b, "%v (%v)\n", l, l.Cite())
		for _, cuts := range []string{"5-5-5", "4-6-5", "3-8-3", "2-9-3", "1-2-9", "0-12-1", "7-2-7", "5-6-5", "4-4", "1-2-3-4"} {
			fmt.Fprintf(&b, "  %s: %v\n", cuts, l.Check(placing.MustParseCuts(cuts)))
		}
	}
	fmt.Fprintln(&b, "# cards")
	o, err := placing.NewOfficial(placing.MustParseOrder("1-2-3-4"), placing.MustParseCuts("3-9-3"))
	if err != nil {
		t.Fatal(err)
	}
	for _, r := range []placing.CardRules{{}, {FloorAtZero: true}, {Blank: placing.Refused, Double: placing.ZeroPoints, Unreadable: placing.LowestScore}} {
		for _, c := range []placing.Card{{}, {Order: placing.MustParseOrder("4-3-2-1")}, {Order: placing.MustParseOrder("1-2-4-3")}, {Order: placing.MustParseOrder("1-2-3")}, {Mark: placing.Blank}, {Mark: placing.DoubleMarked}, {Mark: placing.Unreadable}, {Mark: 9}} {
			s, err := r.Score(o, c)
			fmt.Fprintf(&b, "%+v, %v %v: %d %v\n", r, c.Order, c.Mark, s, err)
		}
	}
	fmt.Fprintln(&b, "# words")
	for w := placing.WordsColorado; w <= placing.WordsReasons; w++ {
		for cut := range 10 {
			words, ok := w.Cut(cut)
			fmt.Fprintf(&b, "%v %d: %q %v\n", w, cut, words, ok)
		}
	}
	fmt.Fprintln(&b, "# reading")
	for _, in := range []string{"3-2-1-4", "1", "", "1-1", "1-3", "0-1", "1-02", "1 2", "-1", "1-2-", "1-2-3-4-5-6-7-8-9-10-11-12", "1-2-3-4-5-6-7-8-9-10-11-12-13"} {
		order, err := placing.ParseOrder(in)
		fmt.Fprintf(&b, "order %q: %v %v\n", in, order, err)
		cuts, err := placing.ParseCuts(in)
		fmt.Fprintf(&b, "cuts %q: %v %v\n", in, cuts, err)
	}
	golden.Compare(t, "../testdata/golden/placing.txt", b.String())
}
