package placing_test

import (
	"fmt"
	"slices"

	"example.com/ribface/placing"
)

// Three officials of an invented class, each with his own cuts.
func threeOfficials() placing.Panel {
	p, err := placing.NewPanel(
		placing.Vote{Order: placing.MustParseOrder("3-1-2-4"), Cuts: placing.MustParseCuts("2-6-3")},
		placing.Vote{Order: placing.MustParseOrder("3-1-4-2"), Cuts: placing.MustParseCuts("3-5-2")},
		placing.Vote{Order: placing.MustParseOrder("1-3-2-4"), Cuts: placing.MustParseCuts("1-7-4")},
	)
	if err != nil {
		panic(err)
	}
	return p
}

func ExampleNewPanel() {
	p, err := placing.NewPanel(
		placing.Vote{Order: placing.MustParseOrder("3-1-2-4"), Count: 4},
		placing.Vote{Order: placing.MustParseOrder("1-3-2-4"), Count: 3},
	)
	fmt.Println(p.Consensus().Order, err)
	_, err = placing.NewPanel(placing.Vote{Order: placing.MustParseOrder("3-1-2-4")}, placing.Vote{Order: placing.MustParseOrder("1-2")})
	fmt.Println(err)
	// Output:
	// 3-1-2-4 <nil>
	// vote 2: order: 1-2: out of range; allowed: an order of 4 exhibits
}

func ExamplePanel() {
	p := threeOfficials()
	fmt.Println(p.Officials(), "officials,", p.Len(), "exhibits")
	fmt.Println("3 over 1:", p.Over(3, 1), "for,", p.Over(1, 3), "against")
	d, _ := p.Disagreement(placing.MustParseOrder("1-3-2-4"))
	fmt.Println("1-3-2-4 is at odds on", d, "pairs")
	for v := range p.Votes() {
		fmt.Println(v.Order, v.Cuts, v.Count)
	}
	// Output:
	// 3 officials, 4 exhibits
	// 3 over 1: 2 for, 1 against
	// 1-3-2-4 is at odds on 3 pairs
	// 3-1-2-4 2-6-3 1
	// 3-1-4-2 3-5-2 1
	// 1-3-2-4 1-7-4 1
}

func ExamplePanel_Consensus() {
	c := threeOfficials().Consensus()
	fmt.Println(c.Order, "at odds on", c.Disagreement, "pairs in all; equal orders:", c.Count)

	// Two officials who turn a class of three upside down settle nothing.
	p, _ := placing.NewPanel(
		placing.Vote{Order: placing.MustParseOrder("1-2-3")},
		placing.Vote{Order: placing.MustParseOrder("3-2-1")},
	)
	c = p.Consensus()
	fmt.Println(c.Count, slices.Collect(p.Best()))
	// Output:
	// 3-1-2-4 at odds on 2 pairs in all; equal orders: 1
	// 6 [1-2-3 1-3-2 2-1-3 2-3-1 3-1-2 3-2-1]
}

func ExamplePanel_Best() {
	p, _ := placing.NewPanel(
		placing.Vote{Order: placing.MustParseOrder("1-2-3")},
		placing.Vote{Order: placing.MustParseOrder("1-3-2")},
	)
	for o := range p.Best() {
		fmt.Println(o)
	}
	// Output:
	// 1-2-3
	// 1-3-2
}

func ExamplePanel_Borda() {
	points, err := threeOfficials().Borda(3)
	fmt.Println(points, err)
	// Output: [7 2 8 1] <nil>
}

func ExamplePanel_Concordance() {
	p := threeOfficials()
	w, _ := p.Concordance()
	tau, _ := p.MeanTau()
	fmt.Printf("W %.4f, mean tau %.4f\n", w, tau)
	// Output: W 0.8222, mean tau 0.5556
}

func ExamplePanel_MeanTau() {
	p, _ := placing.NewPanel(placing.Vote{Order: placing.MustParseOrder("1-2-3"), Count: 2})
	tau, ok := p.MeanTau()
	fmt.Println(tau, ok)
	// Output: 1 true
}

func ExamplePanel_ProposeCuts() {
	p := threeOfficials()
	proposal, err := p.ProposeCuts(p.Consensus().Order, placing.LimitColorado)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(proposal.Cuts, "of a total of", proposal.Total)
	for _, q := range proposal.Pairs {
		fmt.Printf("%d over %d: %d for, %d against, %d to %d points, mean %s, cut %d\n", q.Upper, q.Lower, q.For, q.Against, q.Least, q.Most, q.Mean, q.Cut)
	}
	// Output:
	// 1-8-2 of a total of 11
	// 3 over 1: 2 for, 1 against, -1 to 3 points, mean 1.3333, cut 1
	// 1 over 2: 3 for, 0 against, 6 to 8 points, mean 7, cut 8
	// 2 over 4: 2 for, 1 against, -2 to 4 points, mean 1.6667, cut 2
}

func ExampleSpreadCuts() {
	c, err := placing.SpreadCuts(15, []int64{2, 7, 3}, placing.LimitNebraska)
	fmt.Println(c, c.Total(), err)
	// Output: 2-8-4 14 <nil>
}
