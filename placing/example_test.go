package placing_test

import (
	"encoding/json"
	"errors"
	"fmt"
	"slices"

	"example.com/ribface/placing"
)

// Score a card and say what each mistake cost.
func Example() {
	official, err := placing.NewOfficial(placing.MustParseOrder("3-2-1-4"), placing.MustParseCuts("2-8-2"))
	if err != nil {
		fmt.Println(err)
		return
	}
	card, err := placing.ParseOrder("1-3-2-4")
	if err != nil {
		fmt.Println(err)
		return
	}
	score, err := official.Score(card)
	fmt.Println(score, "of", placing.FullScore, err)
	for f := range official.Faults(card) {
		fmt.Printf("%d goes over %d: %d points lost\n", f.Upper, f.Lower, f.Points)
	}
	// Output:
	// 32 of 50 <nil>
	// 3 goes over 1: 10 points lost
	// 2 goes over 1: 8 points lost
}

// Read cards from JSON, the one that nobody can read among them.
func Example_json() {
	const in = `["3214", "2-3-4-1", "double-marked"]`
	var cards []placing.Card
	if err := json.Unmarshal([]byte(in), &cards); err != nil {
		fmt.Println(err)
		return
	}
	official := exampleOfficial()
	var rules placing.CardRules
	for _, c := range cards {
		score, err := rules.Score(official, c)
		fmt.Println(score, err)
	}
	out, err := json.Marshal(map[string]any{"official": official, "cards": cards})
	fmt.Println(string(out), err)
	// Output:
	// 50 <nil>
	// 46 <nil>
	// 6 <nil>
	// {"cards":["3-2-1-4","2-3-4-1","double-marked"],"official":"3-2-1-4 cuts 2-8-2"} <nil>
}

// exampleOfficial is the worked example of ext-maryland-contests.
func exampleOfficial() placing.Official {
	o, err := placing.NewOfficial(placing.MustParseOrder("3-2-1-4"), placing.MustParseCuts("2-8-2"))
	if err != nil {
		panic(err)
	}
	return o
}

func ExampleOrder() {
	o := placing.MustParseOrder("3-2-1-4")
	fmt.Println(o, o.IsValid(), o == placing.MustParseOrder("3-2-1-4"))
	var unset placing.Order
	fmt.Println(unset, unset.IsValid())
	// Output:
	// 3-2-1-4 true true
	// unset false
}

func ExampleNewOrder() {
	fmt.Println(placing.NewOrder(3, 2, 1, 4))
	fmt.Println(placing.NewOrder(3, 2, 3, 4))
	fmt.Println(placing.NewOrder(1))
	// Output:
	// 3-2-1-4 <nil>
	// unset order: exhibit 3: repeated; allowed: each exhibit 1 to 4 once
	// unset order: 1 exhibit: out of range; allowed: 2 to 12 exhibits
}

func ExampleParseOrder() {
	fmt.Println(placing.ParseOrder("3-2-1-4"))
	fmt.Println(placing.ParseOrder("3-2-2-4"))
	fmt.Println(placing.ParseOrder("3214"))
	fmt.Println(placing.ParseOrder("3, 2, 1, 4"))
	fmt.Println(placing.ParseOrder("3-2,1-4"))
	// Output:
	// 3-2-1-4 <nil>
	// unset order: "3-2-2-4": repeated at "2"; allowed: each exhibit 1 to 4 once
	// 3-2-1-4 <nil>
	// 3-2-1-4 <nil>
	// unset order: "3-2,1-4": bad syntax at "2,1"; allowed: 2 to 12 exhibit numbers with hyphens between, each once, as 3-2-1-4
}

func ExampleMustParseOrder() {
	fmt.Println(placing.MustParseOrder("2-1"))
	// Output:
	// 2-1
}

func ExampleOrder_Len() {
	fmt.Println(placing.MustParseOrder("3-2-1-4").Len(), placing.Order{}.Len())
	// Output:
	// 4 0
}

func ExampleOrder_At() {
	o := placing.MustParseOrder("3-2-1-4")
	fmt.Println(o.At(1), o.At(4), o.At(5))
	// Output:
	// 3 4 0
}

func ExampleOrder_Place() {
	o := placing.MustParseOrder("3-2-1-4")
	fmt.Println(o.Place(3), o.Place(4), o.Place(9))
	// Output:
	// 1 4 0
}

func ExampleOrder_Exhibits() {
	for e := range placing.MustParseOrder("3-2-1-4").Exhibits() {
		fmt.Print(e, " ")
	}
	// Output:
	// 3 2 1 4
}

func ExampleOrder_Reversed() {
	fmt.Println(placing.MustParseOrder("3-2-1-4").Reversed())
	// Output:
	// 4-1-2-3
}

func ExampleOrder_Relabel() {
	// Exhibit 1 is now called 2, 2 is 3, 3 is 4 and 4 is 1.
	fmt.Println(placing.MustParseOrder("3-2-1-4").Relabel(placing.MustParseOrder("2-3-4-1")))
	fmt.Println(placing.MustParseOrder("3-2-1-4").Relabel(placing.MustParseOrder("2-1")))
	// Output:
	// 4-3-2-1 <nil>
	// unset new numbers: 2-1: out of range; allowed: an order of 4 exhibits
}

func ExampleOrder_Disagreements() {
	o := placing.MustParseOrder("3-2-1-4")
	fmt.Println(o.Disagreements(placing.MustParseOrder("2-3-1-4")))
	fmt.Println(o.Disagreements(o.Reversed()))
	// Output:
	// 1 <nil>
	// 6 <nil>
}

func ExampleOrder_Compare() {
	orders := []placing.Order{placing.MustParseOrder("3-1-2"), placing.MustParseOrder("1-3-2"), placing.MustParseOrder("2-1")}
	slices.SortFunc(orders, placing.Order.Compare)
	fmt.Println(orders)
	// Output:
	// [2-1 1-3-2 3-1-2]
}

func ExampleOrders() {
	for o := range placing.Orders(3) {
		fmt.Println(o)
	}
	// Output:
	// 1-2-3
	// 1-3-2
	// 2-1-3
	// 2-3-1
	// 3-1-2
	// 3-2-1
}

func ExampleCuts() {
	c := placing.MustParseCuts("2-8-2")
	fmt.Println(c, c.Len(), c.IsValid(), c == placing.MustParseCuts("2-8-2"))
	// Output:
	// 2-8-2 3 true true
}

func ExampleNewCuts() {
	fmt.Println(placing.NewCuts(2, 8, 2))
	fmt.Println(placing.NewCuts(2, -8, 2))
	// Output:
	// 2-8-2 <nil>
	// unset cut 2: -8: out of range; allowed: 0 to 50
}

func ExampleParseCuts() {
	fmt.Println(placing.ParseCuts("2-8-2"))
	fmt.Println(placing.ParseCuts("2-8-"))
	// Output:
	// 2-8-2 <nil>
	// unset cuts: "2-8-": bad syntax; allowed: 1 to 11 cuts of 0 to 50 with hyphens between, as 2-8-2
}

func ExampleMustParseCuts() {
	fmt.Println(placing.MustParseCuts("3-5-4"))
	// Output:
	// 3-5-4
}

func ExampleCuts_Len() {
	fmt.Println(placing.MustParseCuts("3-5-4").Len())
	// Output:
	// 3
}

func ExampleCuts_At() {
	c := placing.MustParseCuts("2-8-3")
	fmt.Println(c.At(1), c.At(3), c.At(4))
	// Output:
	// 2 3 0
}

func ExampleCuts_All() {
	for v := range placing.MustParseCuts("2-8-3").All() {
		fmt.Print(v, " ")
	}
	// Output:
	// 2 8 3
}

func ExampleCuts_Total() {
	fmt.Println(placing.MustParseCuts("2-8-3").Total())
	// Output:
	// 13
}

func ExampleCuts_GreatestLoss() {
	// 3*2 + 4*8 + 3*2
	fmt.Println(placing.MustParseCuts("2-8-2").GreatestLoss())
	// Output:
	// 44
}

func ExampleCuts_NeverNegative() {
	fmt.Println(placing.MustParseCuts("5-5-5").NeverNegative())
	fmt.Println(placing.MustParseCuts("3-8-4").NeverNegative())
	// Output:
	// true
	// false
}

func ExampleCutLimit() {
	cuts := placing.MustParseCuts("3-8-4")
	for l := range placing.CutLimits() {
		fmt.Println(l, l.Check(cuts) == nil)
	}
	// Output:
	// sum true
	// colorado false
	// maryland false
	// nebraska true
	// exact false
}

func ExampleCutLimit_Check() {
	fmt.Println(placing.LimitColorado.Check(placing.MustParseCuts("3-8-4")))
	fmt.Println(placing.LimitExact.Check(placing.MustParseCuts("3-8-4")))
	fmt.Println(placing.LimitExact.Check(placing.MustParseCuts("2-8-2")))
	// Output:
	// middle cut: 3-8-4: out of range; allowed: 5 or less at a sum of 15 (published: ext-colorado-1-619)
	// greatest loss: 3-8-4: out of range; allowed: at most 50, so that no card scores below zero; it is 53 (derived)
	// <nil>
}

func ExampleCutLimit_Cite() {
	fmt.Println(placing.LimitColorado.Cite())
	fmt.Println(placing.LimitExact.Cite())
	// Output:
	// published: ext-colorado-1-619
	// derived
}

func ExampleCutLimits() {
	for l := range placing.CutLimits() {
		fmt.Print(l, " ")
	}
	// Output:
	// sum colorado maryland nebraska exact
}

func ExampleWords() {
	for _, w := range []placing.Words{placing.WordsColorado, placing.WordsNebraska, placing.WordsReasons} {
		words, ok := w.Cut(3)
		fmt.Println(w, words, ok)
	}
	// Output:
	// colorado close, difficult true
	// nebraska challenging but sortable true
	// reasons logical, recognizable differences true
}

func ExampleWords_Cut() {
	fmt.Println(placing.WordsReasons.Cut(2))
	fmt.Println(placing.WordsColorado.Cut(9)) // over the scale
	// Output:
	// tough pair true
	//  false
}

func ExampleWords_Cite() {
	fmt.Println(placing.WordsReasons.Cite())
	// Output:
	// common-practice: instr-reasons-scores
}

func ExampleOfficial() {
	o := exampleOfficial()
	fmt.Println(o, o.IsValid(), o == exampleOfficial())
	var unset placing.Official
	_, err := unset.Score(placing.MustParseOrder("1-2"))
	fmt.Println(unset, err)
	// Output:
	// 3-2-1-4 cuts 2-8-2 true true
	// unset official placing: missing; allowed: an order of 2 to 12 exhibits
}

func ExampleNewOfficial() {
	fmt.Println(placing.NewOfficial(placing.MustParseOrder("3-2-1-4"), placing.MustParseCuts("2-8-2")))
	_, err := placing.NewOfficial(placing.MustParseOrder("3-2-1-4"), placing.MustParseCuts("2-8"))
	fmt.Println(err)
	// Output:
	// 3-2-1-4 cuts 2-8-2 <nil>
	// cuts: 2-8: out of range; allowed: 3 cuts for 4 exhibits
}

func ExampleParseOfficial() {
	fmt.Println(placing.ParseOfficial("3-2-1-4 cuts 2-8-2"))
	_, err := placing.ParseOfficial("3-2-1-4")
	fmt.Println(err)
	// Output:
	// 3-2-1-4 cuts 2-8-2 <nil>
	// official placing: "3-2-1-4": bad syntax; allowed: an order and its cuts, as 3-2-1-4 cuts 2-8-2
}

func ExampleOfficial_Order() {
	fmt.Println(exampleOfficial().Order())
	// Output:
	// 3-2-1-4
}

func ExampleOfficial_Cuts() {
	fmt.Println(exampleOfficial().Cuts())
	// Output:
	// 2-8-2
}

func ExampleOfficial_Score() {
	o := exampleOfficial()
	// The three cards worked in ext-maryland-contests.
	for _, card := range []string{"3-2-1-4", "2-3-4-1", "3-1-2-4"} {
		fmt.Println(o.Score(placing.MustParseOrder(card)))
	}
	_, err := o.Score(placing.MustParseOrder("1-2-3"))
	fmt.Println(err)
	// Output:
	// 50 <nil>
	// 46 <nil>
	// 42 <nil>
	// card: 1-2-3: out of range; allowed: an order of 4 exhibits
}

func ExampleOfficial_Faults() {
	for f := range exampleOfficial().Faults(placing.MustParseOrder("4-2-3-1")) {
		fmt.Println(f.Upper, "over", f.Lower, "costs", f.Points)
	}
	// Output:
	// 3 over 2 costs 2
	// 3 over 4 costs 12
	// 2 over 4 costs 10
	// 1 over 4 costs 2
}

func ExampleOfficial_Scores() {
	cards := map[int]int{}
	for _, score := range exampleOfficial().Scores() {
		cards[score]++
	}
	fmt.Println(cards)
	// Output:
	// map[6:1 8:2 10:1 14:1 18:2 22:1 24:2 26:2 30:2 32:2 34:1 38:2 42:1 46:1 48:2 50:1]
}

func ExampleOfficial_Worst() {
	fmt.Println(exampleOfficial().Worst())
	// Output:
	// 6
}

func ExampleOfficial_Mean() {
	// What a guesser gets on average.
	fmt.Println(exampleOfficial().Mean())
	// Output:
	// 28
}

func ExampleOfficial_Guessing() {
	g := exampleOfficial().Guessing()
	fmt.Println(g.Above40, "of", g.Placings, "placings are above 40,", g.Above45, "above 45")
	// Output:
	// 5 of 24 placings are above 40, 4 above 45
}

func ExampleGuessing() {
	for _, cuts := range []string{"2-8-2", "5-5-5"} {
		o, err := placing.ParseOfficial("1-2-3-4 cuts " + cuts)
		g := o.Guessing()
		fmt.Println(cuts, "mean", o.Mean(), "lowest", o.Worst(), "above 40", g.Above40, "of", g.Placings, err)
	}
	// Output:
	// 2-8-2 mean 28 lowest 6 above 40 5 of 24 <nil>
	// 5-5-5 mean 25 lowest 0 above 40 4 of 24 <nil>
}

func ExampleOfficial_Mistakes() {
	for _, m := range exampleOfficial().Mistakes() {
		fmt.Println(m.Card, m.Score, m.Name)
	}
	// Output:
	// 2-3-1-4 48 top pair switched
	// 3-1-2-4 42 middle pair switched
	// 3-2-4-1 48 bottom pair switched
	// 2-3-4-1 46 top and bottom pair switched
	// 2-1-4-3 26 first put last
	// 4-3-2-1 26 last put first
	// 4-1-2-3 6 turned upside down
}

func ExampleMistake() {
	m := exampleOfficial().Mistakes()[0]
	fmt.Println(m.Name, m.Card, "loses", placing.FullScore-m.Score)
	// Output:
	// top pair switched 2-3-1-4 loses 2
}

func ExamplePairName() {
	fmt.Println(placing.PairName(2, 4), placing.PairName(4, 6))
	// Output: middle pair pair 4
}

func ExampleFault() {
	lost := 0
	for f := range exampleOfficial().Faults(placing.MustParseOrder("2-3-4-1")) {
		lost += f.Points
	}
	fmt.Println(lost)
	// Output:
	// 4
}

func ExampleCard() {
	var rules placing.CardRules
	for _, c := range []placing.Card{{Order: placing.MustParseOrder("3-2-1-4")}, {Mark: placing.DoubleMarked}, {}} {
		fmt.Println(rules.Score(exampleOfficial(), c))
	}
	// Output:
	// 50 <nil>
	// 6 <nil>
	// 0 <nil>
}

func ExampleParseCard() {
	for _, s := range []string{"3214", "double marked", "3-2-1"} {
		c, err := placing.ParseCard(s)
		fmt.Println(c, err)
	}
	_, err := placing.ParseCard("3-2-2-1")
	fmt.Println(err)
	// Output:
	// 3-2-1-4 <nil>
	// double-marked <nil>
	// 3-2-1 <nil>
	// order: "3-2-2-1": repeated at "2"; allowed: each exhibit 1 to 4 once
}

func ExampleProblems() {
	_, err := placing.NewPanel(
		placing.Vote{Order: placing.MustParseOrder("3-2-1-4")},
		placing.Vote{Order: placing.MustParseOrder("3-1-2-4"), Cuts: placing.MustParseCuts("2-8")},
		placing.Vote{},
	)
	for _, p := range placing.Problems(err) {
		fmt.Println(p.Path, "-", p)
	}
	// Output:
	// votes[1].cuts - vote 2: cuts: 2-8: out of range; allowed: none, or 3 cuts for 4 exhibits
	// votes[2].order - vote 3: order: missing; allowed: an order of 2 to 12 exhibits
}

func ExampleMark() {
	fmt.Println(placing.DoubleMarked, placing.DoubleMarked.IsValid(), placing.Mark(0).IsValid())
	// Output:
	// double-marked true false
}

func ExampleParseMark() {
	fmt.Println(placing.ParseMark("blank"))
	// Output:
	// blank <nil>
}

func ExamplePenalty() {
	fmt.Println(placing.LowestScore, placing.Penalty(0))
	// Output:
	// lowest score unset
}

func ExampleCardRules() {
	// A contest that asks the member about a blank card, and never goes below zero.
	rules := placing.CardRules{Blank: placing.Refused, FloorAtZero: true}
	_, err := rules.Score(exampleOfficial(), placing.Card{Mark: placing.Blank})
	fmt.Println(err)
	// Output:
	// card: blank: missing; allowed: one placing
}

func ExampleCardRules_Penalty() {
	fmt.Println(placing.CardRules{}.Penalty(placing.DoubleMarked))
	fmt.Println(placing.CardRules{Double: placing.ZeroPoints}.Penalty(placing.DoubleMarked))
	// Output:
	// lowest score published: ext-missouri-poultry
	// zero points no source given
}

func ExampleCardRules_ItemPenalty() {
	var rules placing.CardRules
	fmt.Println(rules.ItemPenalty(placing.DoubleMarked))
	rules.Double = placing.Refused
	fmt.Println(rules.ItemPenalty(placing.DoubleMarked))
	// Output:
	// zero points published: psu-poultry, fl-ffa-2013
	// refused no source given
}

func ExampleCardRules_Score() {
	steep, _ := placing.ParseOfficial("3-2-1-4 cuts 1-12-2")
	worst := placing.Card{Order: placing.MustParseOrder("4-1-2-3")}
	fmt.Println(placing.CardRules{}.Score(steep, worst))
	fmt.Println(placing.CardRules{FloorAtZero: true}.Score(steep, worst))
	_, err := placing.CardRules{}.Score(steep, placing.Card{Order: worst.Order, Mark: placing.Unreadable})
	fmt.Println(err)
	// Output:
	// -7 <nil>
	// 0 <nil>
	// card: 4-1-2-3 and unreadable: repeated; allowed: a placing or a mark
}

func ExampleFieldError() {
	_, err := placing.NewCuts(2, 80, 2)
	var fe *placing.FieldError
	if errors.As(err, &fe) {
		fmt.Println(fe.Field, "|", fe.Value, "|", fe.Allowed)
	}
	fmt.Println(errors.Is(err, placing.ErrRange))
	// Output:
	// cut 2 | 80 | 0 to 50
	// true
}

func ExampleParseError() {
	_, err := placing.ParseOrder("3-2-3-4")
	var pe *placing.ParseError
	if errors.As(err, &pe) {
		fmt.Println(pe.Kind, "|", pe.Input, "|", pe.Part, "|", pe.Allowed)
	}
	fmt.Println(errors.Is(err, placing.ErrRepeated))
	// Output:
	// order | 3-2-3-4 | 3 | each exhibit 1 to 4 once
	// true
}

func ExampleVote() {
	p, err := placing.NewPanel(
		placing.Vote{Order: placing.MustParseOrder("1-2-3"), Count: 2}, // two officials agree
		placing.Vote{Order: placing.MustParseOrder("2-1-3")},
	)
	fmt.Println(p.Officials(), err)
	// Output:
	// 3 <nil>
}

func ExampleConsensus() {
	p, _ := placing.NewPanel(
		placing.Vote{Order: placing.MustParseOrder("1-2-3"), Count: 2},
		placing.Vote{Order: placing.MustParseOrder("2-1-3")},
	)
	c := p.Consensus()
	fmt.Println(c.Order, c.Disagreement, c.Count)
	// Output:
	// 1-2-3 1 1
}

func ExampleCutProposal() {
	p, _ := placing.NewPanel(
		placing.Vote{Order: placing.MustParseOrder("1-2-3"), Cuts: placing.MustParseCuts("3-5")},
		placing.Vote{Order: placing.MustParseOrder("1-2-3"), Cuts: placing.MustParseCuts("2-6")},
	)
	proposal, err := p.ProposeCuts(p.Consensus().Order, placing.LimitExact)
	fmt.Println(proposal.Cuts, proposal.Total, proposal.Weights, err)
	// Output:
	// 3-5 8 [2.5 5.5] <nil>
}

func ExamplePairVote() {
	p, _ := placing.NewPanel(
		placing.Vote{Order: placing.MustParseOrder("1-2-3"), Cuts: placing.MustParseCuts("3-5")},
		placing.Vote{Order: placing.MustParseOrder("2-1-3"), Cuts: placing.MustParseCuts("1-6")},
	)
	proposal, _ := p.ProposeCuts(placing.MustParseOrder("1-2-3"), placing.LimitExact)
	for _, q := range proposal.Pairs {
		fmt.Println(q.Upper, "over", q.Lower, "for", q.For, "against", q.Against, "mean", q.Mean)
	}
	// Output:
	// 1 over 2 for 1 against 1 mean 1
	// 2 over 3 for 2 against 0 mean 6
}
