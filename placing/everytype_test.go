package placing_test

import (
	"testing"

	"example.com/ribface/internal/testkit/everytype"
	"example.com/ribface/placing"
)

// TestEveryType holds every exported type to what the module promises of all: no
// method panics on any value, and package cmp compares the values.
func TestEveryType(t *testing.T) {
	order, cuts := placing.MustParseOrder("3-2-1-4"), placing.MustParseCuts("2-8-2")
	panel, err := placing.NewPanel(placing.Vote{Order: order, Cuts: cuts}, placing.Vote{Order: order.Reversed(), Count: 3})
	if err != nil {
		t.Fatal(err)
	}
	proposal, err := panel.ProposeCuts(order, placing.LimitExact)
	if err != nil {
		t.Fatal(err)
	}
	everytype.Run(t, ".",
		order, cuts, mustOfficial(t, "12-11-10-9-8-7-6-5-4-3-2-1", "50-50-50-50-50-50-50-50-50-50-50"),
		placing.Card{Order: order}, placing.Card{Order: order, Mark: placing.Blank}, placing.Blank, placing.Refused, placing.CardRules{FloorAtZero: true},
		placing.LimitExact, placing.WordsReasons, placing.Fault{Upper: 3, Lower: 2, Points: 2},
		&placing.FieldError{}, &placing.ParseError{},
		panel, placing.Vote{Order: order}, panel.Consensus(), proposal, proposal.Pairs[0],
		ranking("3 1=2 4"), placing.HalfPlaces(-3), placing.Pairs{Same: -1, Reversed: 5, TiedHere: -9}, placing.Pairs{Same: 3},
		mustOfficial(t, "3-2-1-4", "2-8-2").Mistakes()[0], mustOfficial(t, "3-2-1-4", "2-8-2").Guessing(),
		placing.ParseRanking, placing.NewRanking, placing.RankScores, placing.PairName,
	)
}
