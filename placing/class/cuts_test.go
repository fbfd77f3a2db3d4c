package class_test

import (
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
		limit placing.CutLimit
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
			got, err := p.ProposeCuts(p.Order, tt.limit)
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
	got, err := p.ProposeCuts(placing.MustParseOrder("1-3-2"), 0)
	if want := (placing.CutProposal{Cuts: placing.MustParseCuts("3-2"), Asked: 5, Total: 5, Weights: y(0, 0)}); err != nil || cmp.Diff(want, got) != "" {
		t.Errorf("a committee's: %v, %v", cmp.Diff(want, got), err)
	}
	_, err = p.ProposeCuts(placing.MustParseOrder("2-1"), 0)
	wantError(t, "another size", "order: 2-1: out of range; allowed: an order of the 3 exhibits of the class", err)
	// A firm bottom pair that a committee turns is no obvious bottom.
	_, firm := placed(t, classOf(fat("SlAb50", 0.4), fat("Mt50", 0.4), fat("Tr50", 0.4)))
	for order, want := range map[string]string{"1-2-3": "5-10", "1-3-2": "9-1"} {
		got, err := firm.ProposeCuts(placing.MustParseOrder(order), 0)
		if err != nil || got.Cuts.String() != want {
			t.Errorf("%s: %+v, %v", order, got, err)
		}
	}
	_, err = class.Placing{}.ProposeCuts(placing.MustParseOrder("1-2"), 0)
	wantError(t, "zero", "placing: missing; allowed: one that Graded.Place has made", err)
	_, err = p.ProposeCuts(p.Order, placing.LimitColorado)
	wantError(t, "limit", "limit: colorado: out of range; allowed: exact for any class but one of four", err)
}

// TestCutsKeepTheLimits proposes cuts for classes of every size.
func TestCutsKeepTheLimits(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		_, p := placed(t, drawClass(t, 12))
		c, err := p.ProposeCuts(p.Order, 0)
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
		got, err := p.ProposeCuts(p.Order, 0)
		if err != nil || got.Asked != tt.asked || got.Cuts.String() != tt.cuts || got.Total != got.Cuts.Total() || !got.Cuts.NeverNegative() {
			t.Errorf("%s: %v, %+v, %v", tt.name, p.Order, got, err)
		}
	}
	// A class of two with nothing to take from keeps what it has.
	_, p := placed(t, classOf(rib("Sm40", 0.4, 14), standard))
	if got, err := p.ProposeCuts(p.Order, 0); err != nil || got.Cuts.String() != "15" {
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
		if got, err := p.ProposeCuts(p.Order, 0); err != nil || got.Asked != tt.want {
			t.Errorf("%v in of fat against 0.5: %+v, %v", tt.fat, got, err)
		}
	}
}
