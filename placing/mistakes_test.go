package placing_test

import (
	"slices"
	"testing"

	"example.com/ribface/placing"
	"github.com/google/go-cmp/cmp"
)

func TestMistakes(t *testing.T) {
	official, err := placing.NewOfficial(placing.MustParseOrder("3-2-1-4"), placing.MustParseCuts("2-8-2"))
	if err != nil {
		t.Fatal(err)
	}
	order := placing.MustParseOrder
	// The first three and 46 are worked in ext-maryland-contests.
	want := []placing.Mistake{
		{"top pair switched", order("2-3-1-4"), 48},
		{"middle pair switched", order("3-1-2-4"), 42},
		{"bottom pair switched", order("3-2-4-1"), 48},
		{"top and bottom pair switched", order("2-3-4-1"), 46},
		{"first put last", order("2-1-4-3"), 26},
		{"last put first", order("4-3-2-1"), 26},
		{"turned upside down", order("4-1-2-3"), 6},
	}
	if diff := cmp.Diff(want, official.Mistakes()); diff != "" {
		t.Errorf("mistakes (-want +got):\n%s", diff)
	}
	two, _ := placing.NewOfficial(order("2-1"), placing.MustParseCuts("9"))
	if diff := cmp.Diff([]placing.Mistake{{"the pair switched", order("1-2"), 41}}, two.Mistakes()); diff != "" {
		t.Errorf("a class of two (-want +got):\n%s", diff)
	}
	three, _ := placing.NewOfficial(order("1-2-3"), placing.MustParseCuts("3-4"))
	want = []placing.Mistake{
		{"top pair switched", order("2-1-3"), 47},
		{"bottom pair switched", order("1-3-2"), 46},
		{"first put last", order("2-3-1"), 40},
		{"last put first", order("3-1-2"), 39},
		{"turned upside down", order("3-2-1"), 36},
	}
	if diff := cmp.Diff(want, three.Mistakes()); diff != "" {
		t.Errorf("a class of three (-want +got):\n%s", diff)
	}
	if got := (placing.Official{}).Mistakes(); got != nil {
		t.Errorf("the zero Official: %v", got)
	}
	var names []string
	for i := 1; i < 5; i++ {
		names = append(names, placing.PairName(i, 5))
	}
	if !slices.Equal(names, []string{"top pair", "pair 2", "pair 3", "bottom pair"}) {
		t.Errorf("names %v", names)
	}
}
