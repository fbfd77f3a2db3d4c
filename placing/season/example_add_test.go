package season_test

import (
	"fmt"

	"example.com/ribface/grade"
	"example.com/ribface/placing"
	"example.com/ribface/placing/contest"
	"example.com/ribface/placing/season"
)

func ExampleErrors_Add() {
	var s season.Errors
	fmt.Println(s.Add(1250, 1190), s.Bias().N)
	fmt.Println(s.Add(2_000_000_000_000, 1190), s.Bias().N)
	// Output:
	// <nil> 1
	// estimate: 2000000000000: out of range; allowed: -1,000,000,000,000 to 1,000,000,000,000 1
}

func ExampleSeason_Placing() {
	s, err := season.NewSeason(contest.CardQualities())
	if err != nil {
		fmt.Println(err)
		return
	}
	official, _ := placing.ParseOfficial("3-2-1-4 cuts 2-8-2")
	fmt.Println(s.Placing("ada-01", official, placing.Card{Order: placing.MustParseOrder("2-3-1-4")}))
	fmt.Println(s.Placing("ada-01", official, placing.Card{Order: placing.MustParseOrder("1-2")}))
	fmt.Println(s.Members())
	// Output:
	// <nil>
	// card: 1-2: out of range; allowed: an order of 4 exhibits
	// [ada-01]
}

func ExampleSeason_Estimate() {
	s, err := season.NewSeason(contest.CardQualities())
	if err != nil {
		fmt.Println(err)
		return
	}
	key := contest.Facts{Ribeye: grade.SquareInches(12.4)}
	card := contest.Facts{Ribeye: grade.SquareInches(12.9)}
	fmt.Println(s.Estimate("ada-01", card, key))
	_, ok := s.Calibration("ada-01")
	fmt.Println(ok)
	// Output:
	// <nil>
	// true
}

func ExampleClassCards_Add() {
	official, _ := placing.ParseOfficial("3-2-1-4 cuts 2-8-2")
	c := season.NewClassCards(official)
	fmt.Println(c.Add(placing.MustParseOrder("3-2-1-4"), contest.PointsOf(88)), c.Exact().N)
	fmt.Println(c.Add(placing.MustParseOrder("1-2"), contest.PointsOf(70)), c.Exact().N)
	// Output:
	// <nil> 1
	// card: 1-2: out of range; allowed: an order of 4 exhibits 1
}
