package contest_test

import (
	"testing"

	"example.com/ribface/grade"
	"example.com/ribface/internal/testkit/everytype"
	"example.com/ribface/internal/testkit/faulttest"
	"example.com/ribface/placing"
	"example.com/ribface/placing/contest"
)

// TestEveryType holds every exported type to what the module promises of all: no
// method panics on any value, and package cmp compares the values.
func TestEveryType(t *testing.T) {
	c := spring(t)
	f, rules, officials, key := springKey(t)
	ada := contest.Member{ID: "7", Team: "North Fork"}
	card := contest.PlacingCard{Class: "beef", Member: ada, Card: placing.Card{Order: placing.MustParseOrder("4-2-3-1")}}
	estimate := contest.Estimate{Class: "coolers", Exhibit: 1, Member: ada, Facts: contest.Facts{Quality: grade.Choice.Part(grade.Low), Fat: grade.Inches(0.5), Yield: grade.Grades(2.7)}}
	hand := contest.HandScore{Component: "examination", Member: ada, Mark: placing.Blank}
	item, err := c.Placing(card)
	faulttest.Text(t, err, "")
	tally := c.Tally()
	faulttest.Text(t, tally.Add(item), "")
	s, err := tally.Standings(contest.View{})
	faulttest.Text(t, err, "")
	page, err := c.Feedback("7", []contest.PlacingCard{card}, []contest.Estimate{estimate}, []contest.HandScore{hand})
	faulttest.Text(t, err, "")
	broken := page // a page of a hand that fits nothing together
	broken.Placings = []contest.PlacingFeedback{{Official: placing.Official{}, Card: card.Card}, {}}
	broken.Yield = []contest.EstimateFeedback[grade.Yield]{{Answer: grade.Grades(3), Split: contest.YieldSplit{Error: grade.Grades(1)}}}
	everytype.Run(t, ".",
		pts(-3), ada, estimate.Facts, contest.Marks{Quality: placing.Blank}, card, estimate, hand, officials[0], key[0],
		rules, rules.Quality, rules.Yield, rules.Quality.Marks, rules.Quality.Ladder, contest.Ladder[string]{}, contest.Tenths,
		f, f.Components[0], f.Ties[0], contest.Barred, contest.KindHand,
		c, item, tally, contest.View{Division: "x"}, s, s.Members[0], s.Teams[0],
		contest.Standings{Components: []string{"a"}, Members: []contest.MemberLine{{}, {Scores: []contest.Points{{}, pts(1), pts(2)}}}, Teams: []contest.TeamLine{{Scores: make([]contest.Points, 9)}}},
		page, broken, page.Placings[0], page.Quality[0], page.Yield[0], page.Yield[0].Split,
		contest.EstimateSheet(), contest.Sheet[int]{}, contest.Missed{}, missed(t, "3-1-2-4 cuts 3-4-5", "1-3-2-4")[0],
	)
}
