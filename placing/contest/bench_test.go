package contest_test

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"testing"

	"example.com/ribface/grade"
	"example.com/ribface/maturity"
	"example.com/ribface/placing"
	"example.com/ribface/placing/contest"
)

// big makes an invented contest of 12 placing classes and 12 grading classes of 10
// carcasses, and the cards of so many members in teams of four: 12 placings and 120
// estimates of quality and yield each.
func big(t testing.TB, members int) (*contest.Contest, []contest.PlacingCard, []contest.Estimate) {
	t.Helper()
	r := rand.New(rand.NewPCG(7, 11))
	rungs := contest.ChartQualities(grade.Current, maturity.A)
	ladder, err := contest.NewEvenLadder(pts(10), pts(2), rungs)
	if err != nil {
		t.Fatal(err)
	}
	orders := slices.Collect(placing.Orders(4))
	var placed, graded []string
	var officials []contest.OfficialPlacing
	var facts []contest.OfficialFacts
	fact := func() contest.Facts {
		return contest.Facts{Quality: rungs[r.IntN(len(rungs))], Yield: grade.YieldUnits(int64(r.IntN(500)) * grade.OneGrade / 100)}
	}
	for k := range 12 {
		placed, graded = append(placed, fmt.Sprint("class ", k+1)), append(graded, fmt.Sprint("grading ", k+1))
		officials = append(officials, contest.OfficialPlacing{Class: placed[k], Order: orders[r.IntN(24)], Cuts: placing.MustParseCuts("4-5-3")})
		for e := range 10 {
			facts = append(facts, contest.OfficialFacts{Class: graded[k], Exhibit: e + 1, Facts: fact()})
		}
	}
	c, err := contest.NewContest("", contest.Format{
		Components: []contest.Component{
			{Name: "placings", Kind: contest.KindPlacing, Classes: placed, Value: pts(600)},
			{Name: "quality", Kind: contest.KindQuality, Classes: graded, Value: pts(1200)},
			{Name: "yield", Kind: contest.KindYield, Classes: graded, Value: pts(1200)},
		},
		TeamMembers: 4, Counting: 3,
		Ties:     []contest.TieBreak{{Components: []string{"placings"}}},
		TeamTies: []contest.TieBreak{{Components: []string{"placings"}}},
	}, contest.Scoring{
		Quality: contest.QualityRule{Ladder: ladder},
		Yield:   contest.YieldRule{Step: contest.Tenths, Rounding: grade.HalfUp, Value: pts(10), Each: pts(1)},
	}, officials, facts)
	if err != nil {
		t.Fatal(err)
	}
	var placings []contest.PlacingCard
	var estimates []contest.Estimate
	for i := range members {
		m := contest.Member{ID: fmt.Sprint(i + 1), Team: fmt.Sprint("team ", i/4+1), Division: []string{"junior", "senior"}[i%2]}
		for k := range 12 {
			placings = append(placings, contest.PlacingCard{Class: placed[k], Member: m, Card: placing.Card{Order: orders[r.IntN(24)]}})
			for e := range 10 {
				estimates = append(estimates, contest.Estimate{Class: graded[k], Exhibit: e + 1, Member: m, Facts: fact()})
			}
		}
	}
	return c, placings, estimates
}

func run(t testing.TB, c *contest.Contest, placings []contest.PlacingCard, estimates []contest.Estimate) contest.Standings {
	tally := c.Tally()
	for i := range placings {
		item, err := c.Placing(placings[i])
		if err == nil {
			err = tally.Add(item)
		}
		if err != nil {
			t.Fatal(err)
		}
	}
	for i := range estimates {
		q, y, err := c.Estimate(estimates[i])
		if err == nil {
			err = tally.Add(q, y)
		}
		if err != nil {
			t.Fatal(err)
		}
	}
	s, err := tally.Standings(contest.View{})
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// TestShuffle: the order of the cards changes no byte of the standings.
func TestShuffle(t *testing.T) {
	c, placings, estimates := big(t, 40)
	want := run(t, c, placings, estimates).String()
	for seed := range uint64(5) {
		r := rand.New(rand.NewPCG(seed, 1))
		r.Shuffle(len(placings), func(i, j int) { placings[i], placings[j] = placings[j], placings[i] })
		r.Shuffle(len(estimates), func(i, j int) { estimates[i], estimates[j] = estimates[j], estimates[i] })
		if got := run(t, c, placings, estimates).String(); got != want {
			t.Fatalf("shuffle %d changed the standings", seed)
		}
	}
}

// BenchmarkContest scores and ranks a contest of 1,000 members, 12 placing classes
// and 12 grading classes of 10 carcasses: 12,000 placings, 120,000 cards with a
// quality and a yield each.
func BenchmarkContest(b *testing.B) {
	c, placings, estimates := big(b, 1000)
	b.ReportAllocs()
	for b.Loop() {
		if s := run(b, c, placings, estimates); len(s.Members) != 1000 || len(s.Teams) != 250 {
			b.Fatal("members or teams are missing")
		}
	}
}
