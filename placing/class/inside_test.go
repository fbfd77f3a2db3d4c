package class

import (
	"strings"
	"testing"

	"example.com/ribface/grade"
	"example.com/ribface/maturity"
	"example.com/ribface/placing"
)

// TestDeepenBottom holds what an obvious bottom gets, and from which cut.
func TestDeepenBottom(t *testing.T) {
	for _, tt := range []struct{ name, cuts, want string }{
		{"enough", "1-1-2", "1-1-2"},
		{"from the largest, first", "6-3-1", "5-3-2"},
		{"from the largest, last", "3-2-6-1", "3-2-5-2"},
		{"of equal ones nearest the middle", "4-4-1", "4-3-2"},
		{"of equal ones as near, the upper", "2-4-4-1", "2-3-4-2"},
		{"of equal ones the nearest of many", "3-1-3-3-3-1", "3-1-2-3-3-2"},
		{"two points, one after the other", "4-4-0", "3-3-2"},
		{"two points from one cut", "2-6-2-0", "2-4-2-2"},
		{"no last points in a class of six", "1-1-1-1-0", "1-1-1-1-0"},
		{"one point to give", "1-2-1-1-0", "1-1-1-1-1"},
		{"last points in a class of seven", "1-1-1-1-1-0", "1-1-0-0-1-2"},
		{"all that there is", "0-1-0-0-0-0", "0-0-0-0-0-1"},
		{"one pair", "1", "1"},
	} {
		t.Run(tt.name, func(t *testing.T) {
			if got := deepenBottom(placing.MustParseCuts(tt.cuts)); got.String() != tt.want {
				t.Errorf("%s gives %v, want %s", tt.cuts, got, tt.want)
			}
		})
	}
}

// TestSayLess: each step of what a class that runs long leaves out makes the reasons
// shorter, and the first two leave out what they say they do.
func TestSayLess(t *testing.T) {
	c := Class{Rules: grade.Rules{Edition: grade.Current}, Posted: grade.Pounds(800)}
	for i := range 6 {
		c.Exhibits = append(c.Exhibits, Exhibit{Number: i + 1, Carcass: grade.Carcass{
			Sex:      grade.Steer,
			Maturity: maturity.Evidence{Skeletal: maturity.A.At(60), Lean: maturity.A.At(50)},
			Marbling: grade.Small.At(10) + grade.Marbling(37*(i*5%6)),
			Measures: grade.Measures{Fat: grade.ThicknessUnits(int64(3000 + 900*(i*7%6))), Ribeye: grade.AreaUnits(int64(120_000 + 5000*(i*11%6))), KPH: grade.ShareUnits(int64(15_000 + 5000*(i%3)))},
		}})
	}
	c.Walk = Walk{
		{Site: FatRump, Order: MustParseRanking("1 2 3 4 5 6")},
		{Site: FatLoinEdge, Order: MustParseRanking("6 5 4 3 2 1")},
		{Site: FatClod, Order: MustParseRanking("2 1 4 3 6 5")},
		{Site: FatBrisket, Order: MustParseRanking("1 2 3 4 6 5")},
		{Site: RoundPlumpness, Order: MustParseRanking("3 1 2 6 5 4")},
		{Site: MuscleLoin, Order: MustParseRanking("4 5 6 1 2 3")},
	}
	g, err := c.Grade()
	if err != nil {
		t.Fatal(err)
	}
	r, err := g.Reasons(placing.MustParseOrder("1-2-3-4-5-6"), DefaultPolicy())
	if err != nil {
		t.Fatal(err)
	}
	words := countWords(r.say(0))
	for brief := 1; brief < 4; brief++ {
		said := r.say(brief)
		n := countWords(said)
		if n >= words {
			t.Errorf("step %d leaves out nothing: %d words, %d before", brief, n, words)
		}
		if grants := strings.Contains(strings.Join(said, " "), "grant"); grants != (brief < 2) {
			t.Errorf("step %d, grants: %v", brief, grants)
		}
		words = n
	}
}
