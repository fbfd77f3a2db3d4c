package placing_test

import (
	"fmt"

	"example.com/ribface/placing"
)

func ExampleRanking() {
	r, err := placing.ParseRanking("3 2=1 4")
	fmt.Println(r, r.Len(), r.IsValid(), err)
	fmt.Println("exhibit 1 is at place", r.Place(1), "and under 3:", r.Place(1) > r.Place(3))
	fmt.Println(r.Groups())
	b, _ := r.MarshalText()
	fmt.Println(string(b))
	// Output:
	// 3 1=2 4 4 true <nil>
	// exhibit 1 is at place 2.5 and under 3: true
	// [[3] [1 2] [4]]
	// 3 1=2 4
}

func ExampleNewRanking() {
	r, err := placing.NewRanking([]int{3}, []int{1, 2}, []int{4})
	fmt.Println(r, err)
	// Output: 3 1=2 4 <nil>
}

func ExampleRankScores() {
	r, err := placing.RankScores(5, 5, 7, 2)
	fmt.Println(r, err)
	// Output: 3 1=2 4 <nil>
}

func ExampleParseRanking() {
	_, err := placing.ParseRanking("3 1=1 4")
	fmt.Println(err)
	// Output: ranking: "3 1=1 4": repeated at "1"; allowed: each exhibit 1 to 4 once
}

func ExampleOrder_Ranking() {
	fmt.Println(placing.MustParseOrder("3-1-2-4").Ranking())
	// Output: 3 1 2 4
}

func ExampleRanking_Against() {
	one, _ := placing.ParseRanking("1 2 3 4")
	other, _ := placing.ParseRanking("1 3 2 4")
	p, err := one.Against(other)
	tau, ok := p.TauB()
	fmt.Printf("%d the same, %d reversed, tau-b %.4f %v %v\n", p.Same, p.Reversed, tau, ok, err)
	// Output: 5 the same, 1 reversed, tau-b 0.6667 true <nil>
}

func ExamplePairs() {
	placed := placing.MustParseOrder("1-2-3-4").Ranking()
	byValue, _ := placing.ParseRanking("2 1 3=4")
	p, err := placed.Against(byValue)
	fmt.Println(p.Same, p.Reversed, p.TiedHere, p.TiedThen, p.TiedBoth, err)
	// Output:
	// 4 1 0 1 0 <nil>
}

func ExamplePairs_TauB() {
	fmt.Println(placing.Pairs{Same: 2, Reversed: 1, TiedHere: 1}.TauB())
	// Output: 0.2886751345948129 true
}

func ExampleHalfPlaces() {
	fmt.Println(placing.HalfPlaces(5), placing.HalfPlaces(-1), placing.HalfPlaces(4))
	// Output: 2.5 -0.5 2
}
