package class_test

import (
	"slices"
	"testing"

	"example.com/ribface/grade"
	"example.com/ribface/placing"
	"example.com/ribface/placing/class"
	"github.com/google/go-cmp/cmp"
	"github.com/shopspring/decimal"
	"pgregory.net/rapid"
)

func TestProposeCuts(t *testing.T) {
	y := func(n ...int64) (all []decimal.Decimal) {
		for _, v := range n {
			all = append(all, decimal.New(v, -1))
		}
		return all
	}
	fat := func(marbling string, fat float64) grade.Carcass { return steer(marbling, fat, 13, 2.5, 800) }
	tests := []struct {
		name  string
		class class.Class
		limit placing.Limit
		want  placing.CutProposal
	}{
		// Margins 1.0, 0.1 and 1.6 of a full 1.5: a mean of (1.0 + 0.1 + 1.5) / 3
		// is 0.5778 of the full one, so 5 and 5.8 points. Shared 10 : 1 : 16.
		{"a close middle and a clear bottom", classOf(fat("Mt20", 0.6), fat("Sm60", 0.4), fat("Sm40", 0.4), fat("Sl20", 0.8)), 0, placing.CutProposal{Cuts: placing.MustParseCuts("4-1-6"), Asked: 11, Total: 11, Weights: y(10, 1, 16)}},
		{"three that cannot be told apart", classOf(fat("Sm40", 0.4), fat("Sm40", 0.4), fat("Sm40", 0.4)), 0, placing.CutProposal{Cuts: placing.MustParseCuts("3-2"), Asked: 5, Total: 5, Weights: y(0, 0)}},
		{"as clear as can be", classOf(fat("SlAb50", 0.4), fat("Mt50", 0.4), fat("Sm50", 0.4), fat("Sl50", 0.8)), placing.LimitExact, placing.CutProposal{Cuts: placing.MustParseCuts("5-5-5"), Asked: 15, Total: 15, Weights: y(15, 15, 16)}},
		{"a margin over two tiers' worth counts as that much", classOf(fat("SlAb50", 0.3), fat("Mt50", 1.3)), 0, placing.CutProposal{Cuts: placing.MustParseCuts("15"), Asked: 15, Total: 15, Weights: y(30)}},
		{"clear and far apart", classOf(fat("SlAb50", 0.2), fat("Mt50", 1.2), fat("Sm50", 1.2)), 0, placing.CutProposal{Cuts: placing.MustParseCuts("10-5"), Asked: 15, Total: 15, Weights: y(30, 15)}},
		{"a cycle, which the neighbors do not show", cycle(), 0, placing.CutProposal{Cuts: placing.MustParseCuts("3-5"), Asked: 8, Total: 8, Weights: y(3, 5)}},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			_, p := placed(t, tt.class)
			got, err := p.ProposeCuts(tt.limit)
			if err != nil {
				t.Fatal(err)
			}
			if diff := cmp.Diff(tt.want, got); diff != "" {
				t.Errorf("placed %v, cuts (-want +got):\n%s", p.Order, diff)
			}
		})
	}
	_, p := placed(t, cycle())
	// A committee's 1-3-2: the policy has 3 over 1 and 2 over 3, which count 0 the
	// other way round.
	got, err := p.ProposeCutsFor(placing.MustParseOrder("1-3-2"), 0)
	if want := (placing.CutProposal{Cuts: placing.MustParseCuts("3-2"), Asked: 5, Total: 5, Weights: y(0, 0)}); err != nil || cmp.Diff(want, got) != "" {
		t.Errorf("a committee's: %v, %v", cmp.Diff(want, got), err)
	}
	_, err = p.ProposeCutsFor(placing.MustParseOrder("2-1"), 0)
	wantError(t, "another size", "order: 2-1: out of range; allowed: an order of the 3 exhibits of the class", err)
	// A firm bottom pair that a committee turns is no obvious bottom.
	_, firm := placed(t, classOf(fat("SlAb50", 0.4), fat("Mt50", 0.4), fat("Tr50", 0.4)))
	for order, want := range map[string]string{"1-2-3": "5-10", "1-3-2": "9-1"} {
		got, err := firm.ProposeCutsFor(placing.MustParseOrder(order), 0)
		if err != nil || got.Cuts.String() != want {
			t.Errorf("%s: %+v, %v", order, got, err)
		}
	}
	_, err = class.Placing{}.ProposeCuts(0)
	wantError(t, "zero", "placing: missing; allowed: one that Graded.Place has made", err)
	_, err = p.ProposeCuts(placing.LimitColorado)
	wantError(t, "limit", "limit: colorado: out of range; allowed: exact for any class but one of four", err)
}

// TestCutsKeepTheLimits proposes cuts for classes of every size.
func TestCutsKeepTheLimits(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		_, p := placed(t, drawClass(t, 12))
		c, err := p.ProposeCuts(0)
		if err != nil {
			t.Fatal(err)
		}
		if !c.Cuts.NeverNegative() || c.Asked < 5 || c.Asked > 15 || c.Total != c.Cuts.Total() || c.Total > c.Asked {
			t.Fatalf("%+v", c)
		}
		if p.Order.Len() == 4 && placing.LimitColorado.Check(c.Cuts) != nil {
			t.Fatalf("%+v breaks the limit", c)
		}
	})
}

func TestMistakes(t *testing.T) {
	official, err := placing.NewOfficial(placing.MustParseOrder("3-2-1-4"), placing.MustParseCuts("2-8-2"))
	if err != nil {
		t.Fatal(err)
	}
	order := placing.MustParseOrder
	// The first three and 46 are worked in ext-maryland-contests.
	want := []class.Mistake{
		{"top pair switched", order("2-3-1-4"), 48, 2},
		{"middle pair switched", order("3-1-2-4"), 42, 8},
		{"bottom pair switched", order("3-2-4-1"), 48, 2},
		{"top and bottom pair switched", order("2-3-4-1"), 46, 4},
		{"first put last", order("2-1-4-3"), 26, 24},
		{"last put first", order("4-3-2-1"), 26, 24},
		{"turned upside down", order("4-1-2-3"), 6, 44},
	}
	if diff := cmp.Diff(want, class.Mistakes(official)); diff != "" {
		t.Errorf("mistakes (-want +got):\n%s", diff)
	}
	two, _ := placing.NewOfficial(order("2-1"), placing.MustParseCuts("9"))
	if diff := cmp.Diff([]class.Mistake{{"the pair switched", order("1-2"), 41, 9}}, class.Mistakes(two)); diff != "" {
		t.Errorf("a class of two (-want +got):\n%s", diff)
	}
	three, _ := placing.NewOfficial(order("1-2-3"), placing.MustParseCuts("3-4"))
	want = []class.Mistake{
		{"top pair switched", order("2-1-3"), 47, 3},
		{"bottom pair switched", order("1-3-2"), 46, 4},
		{"first put last", order("2-3-1"), 40, 10},
		{"last put first", order("3-1-2"), 39, 11},
		{"turned upside down", order("3-2-1"), 36, 14},
	}
	if diff := cmp.Diff(want, class.Mistakes(three)); diff != "" {
		t.Errorf("a class of three (-want +got):\n%s", diff)
	}
	if got := class.Mistakes(placing.Official{}); got != nil {
		t.Errorf("the zero Official: %v", got)
	}
	var names []string
	for i := 1; i < 5; i++ {
		names = append(names, class.PairName(i, 5))
	}
	if !slices.Equal(names, []string{"top pair", "pair 2", "pair 3", "bottom pair"}) {
		t.Errorf("names %v", names)
	}
}

// TestDifficulty counts all placings of small classes one by one.
func TestDifficulty(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(2, 6).Draw(t, "n")
		cuts := make([]int, n-1)
		for i := range cuts {
			cuts[i] = rapid.IntRange(0, 7).Draw(t, "cut")
		}
		c, _ := placing.NewCuts(cuts...)
		o, err := placing.NewOfficial(drawOrder(t, n), c)
		if err != nil {
			t.Fatal(err)
		}
		want := class.Guessing{MeanLoss: c.MeanLoss(), Worst: o.Worst()}
		for _, s := range o.Scores() {
			want.Placings++
			if s > 40 {
				want.Above40++
			}
			if s > 45 {
				want.Above45++
			}
		}
		if got := class.GuessingOf(o); !cmp.Equal(want, got) {
			t.Fatalf("%v: %+v, want %+v", o, got, want)
		}
	})
	if got := class.GuessingOf(placing.Official{}); got != (class.Guessing{}) {
		t.Errorf("the zero Official: %+v", got)
	}
}

// TestObviousBottom has classes whose last pair is firm and whose total leaves little
// to it: it gets 2 points where any can be moved.
func TestObviousBottom(t *testing.T) {
	standard := rib("Tr40", 0.3, 14)
	for _, tt := range []struct {
		name  string
		class class.Class
		asked int
		cuts  string
	}{
		{"of four", classOf(rib("SlAb40", 0.4, 14), rib("Mt40", 0.6, 14), rib("Sm40", 0.4, 14), standard), 14, "5-2-7"},
		{"of six", classOf(rib("SlAb90", 0.2, 15), rib("SlAb10", 0.9, 12), rib("SlAb40", 1.3, 12), rib("SlAb20", 1.9, 12), rib("SlAb10", 2.5, 12), standard), 14, "3-1-1-1-2"},
		{"of eight, where zeros are many", classOf(rib("Sm90", 0.2, 15), rib("Sm80", 0.5, 14), rib("Sm70", 0.8, 13), rib("Sm60", 1.1, 12), rib("Sm50", 1.4, 11), rib("Sm40", 1.7, 10), rib("Sm30", 2.0, 9), standard), 13, "1-1-0-0-0-0-2"},
		{"of eight in which nothing else is told", classOf(rib("Sm40", 0.4, 14), rib("Sm40", 0.4, 14), rib("Sm40", 0.4, 14), rib("Sm40", 0.4, 14), rib("Sm40", 0.4, 14), rib("Sm40", 0.4, 14), rib("Sm40", 0.4, 14), standard), 6, "0-0-0-0-0-0-6"},
	} {
		_, p := placed(t, tt.class)
		got, err := p.ProposeCuts(0)
		if err != nil || got.Asked != tt.asked || got.Cuts.String() != tt.cuts || got.Total != got.Cuts.Total() || !got.Cuts.NeverNegative() {
			t.Errorf("%s: %v, %+v, %v", tt.name, p.Order, got, err)
		}
	}
	// A class of two with nothing to take from keeps what it has.
	_, p := placed(t, classOf(rib("Sm40", 0.4, 14), standard))
	if got, err := p.ProposeCuts(0); err != nil || got.Cuts.String() != "15" {
		t.Errorf("two: %+v, %v", got, err)
	}
}

// TestCutsWithoutAdvantages has a policy without advantages, by which a whole grade
// is a tier's worth: a yield grade apart is as placeable as it can be, half of one
// half way.
func TestCutsWithoutAdvantages(t *testing.T) {
	for _, tt := range []struct {
		fat  float64
		want int
	}{{0.9, 15}, {0.7, 10}, {1.3, 15}} {
		p, err := graded(t, classOf(rib("Sm40", 0.5, 13), rib("Sm40", tt.fat, 13))).Place(class.CutabilityPolicy())
		if err != nil {
			t.Fatal(err)
		}
		if got, err := p.ProposeCuts(0); err != nil || got.Asked != tt.want {
			t.Errorf("%v in of fat against 0.5: %+v, %v", tt.fat, got, err)
		}
	}
}
