package placing_test

import (
	"errors"
	"math"
	"slices"
	"strconv"
	"strings"
	"testing"

	"example.com/ribface/internal/refs"
	"example.com/ribface/placing"
	"github.com/google/go-cmp/cmp"
	"github.com/shopspring/decimal"
	"pgregory.net/rapid"
)

// ballots reads a profile of the references, as "42 M>N>C>K | 26 N>C>K>M", and
// returns the panel with the letters in the order of their exhibit numbers.
// Numbers keep their own value.
func ballots(t *testing.T, input string) (placing.Panel, []string) {
	t.Helper()
	var names []string
	var votes []placing.Vote
	for part := range strings.SplitSeq(input, " | ") {
		count, order, _ := strings.Cut(part, " ")
		n, err := strconv.Atoi(count)
		if err != nil {
			t.Fatalf("ballots %q: %v", input, err)
		}
		list := strings.Split(order, ">")
		if names == nil {
			names = slices.Sorted(slices.Values(list))
		}
		votes = append(votes, placing.Vote{Order: orderOf(t, names, order), Count: n})
	}
	p, err := placing.NewPanel(votes...)
	if err != nil {
		t.Fatalf("ballots %q: %v", input, err)
	}
	return p, names
}

func orderOf(t *testing.T, names []string, s string) placing.Order {
	t.Helper()
	var list []int
	for name := range strings.SplitSeq(s, ">") {
		list = append(list, slices.Index(names, name)+1)
	}
	o, err := placing.NewOrder(list...)
	if err != nil {
		t.Fatalf("order %q: %v", s, err)
	}
	return o
}

// ranked lists all orders with their disagreement, least first.
func ranked(p placing.Panel) (orders []placing.Order, cost map[placing.Order]int) {
	cost = map[placing.Order]int{}
	for o := range placing.Orders(p.Len()) {
		cost[o], _ = p.Disagreement(o)
		orders = append(orders, o)
	}
	slices.SortStableFunc(orders, func(a, b placing.Order) int { return cost[a] - cost[b] })
	return orders, cost
}

// TestReferencesConsensus holds consensus and Borda points to every row of the
// references; the sources are stat-kemeny-example, stat-borda-capitals,
// stat-borda-course and stat-borda-math103.
func TestReferencesConsensus(t *testing.T) {
	checked := 0
	for _, row := range refs.Rows(t, "../testdata/references", "statistics-examples.csv") {
		statistic, name, input, quantity, value, source := row.Get("statistic"), row.Get("case"), row.Get("input"), row.Get("quantity"), row.Get("value"), row.Get("source_id")
		if statistic != "borda" && statistic != "kemeny" {
			continue
		}
		checked++
		p, names := ballots(t, input)
		got := ""
		switch {
		case statistic == "borda":
			top := int(name[strings.Index(name, ", ")+2] - '0')
			points, err := p.Borda(top)
			if err != nil {
				t.Fatalf("line %d (%s): %v", row.Line, source, err)
			}
			got = strconv.Itoa(points[slices.Index(names, quantity)])
		case quantity == "best order":
			c := p.Consensus()
			if c.Count != 1 {
				t.Errorf("line %d (%s): %d best orders, want 1", row.Line, source, c.Count)
			}
			got = spell(c.Order, names)
		case quantity == "best distance":
			got = strconv.Itoa(p.Consensus().Disagreement)
		case quantity == "agreements of best":
			n := p.Len()
			got = strconv.Itoa(p.Officials()*n*(n-1)/2 - p.Consensus().Disagreement)
		case quantity == "best order and distance":
			c := p.Consensus()
			got = spell(c.Order, names) + " " + strconv.Itoa(c.Disagreement)
		case quantity == "second order and distance":
			all, cost := ranked(p)
			got = spell(all[1], names) + " " + strconv.Itoa(cost[all[1]])
		case quantity == "worst order and distance":
			all, cost := ranked(p)
			last := all[len(all)-1]
			got = spell(last, names) + " " + strconv.Itoa(cost[last])
		case quantity == "next orders and distance":
			all, cost := ranked(p)
			if cost[all[1]] != cost[all[2]] || cost[all[3]] == cost[all[1]] {
				t.Errorf("line %d (%s): the second place is not shared by two", row.Line, source)
			}
			got = spell(all[2], names) + " and " + spell(all[1], names) + " " + strconv.Itoa(cost[all[1]])
		default:
			d, err := p.Disagreement(orderOf(t, names, quantity))
			if err != nil {
				t.Fatalf("line %d (%s): %v", row.Line, source, err)
			}
			got = strconv.Itoa(d)
		}
		if got != value {
			t.Errorf("line %d (%s): %s of %s: got %s, want %s", row.Line, source, quantity, name, got, value)
		}
	}
	if checked < 28 {
		t.Errorf("checked %d rows, want 28 or more", checked)
	}
}

func spell(o placing.Order, names []string) string {
	var parts []string
	for e := range o.Exhibits() {
		parts = append(parts, names[e-1])
	}
	return strings.Join(parts, ">")
}

func drawPanel(t *rapid.T, n, most int, cuts bool) (placing.Panel, []placing.Vote) {
	var votes []placing.Vote
	for range rapid.IntRange(1, most).Draw(t, "votes") {
		v := placing.Vote{Order: anyOrder(t, n, "order"), Count: rapid.IntRange(0, 3).Draw(t, "count")}
		if cuts {
			list := make([]int, n-1)
			for i := range list {
				list[i] = rapid.IntRange(0, 8).Draw(t, "cut")
			}
			v.Cuts, _ = placing.NewCuts(list...)
		}
		votes = append(votes, v)
	}
	p, err := placing.NewPanel(votes...)
	if err != nil {
		t.Fatal(err)
	}
	return p, votes
}

// TestConsensusIsLeast compares the consensus with all orders of small classes.
func TestConsensusIsLeast(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p, _ := drawPanel(t, rapid.IntRange(2, 5).Draw(t, "n"), 5, false)
		all, cost := ranked(p)
		var want []placing.Order
		for _, o := range all {
			if cost[o] == cost[all[0]] {
				want = append(want, o)
			}
		}
		c := p.Consensus()
		if c.Disagreement != cost[all[0]] || c.Count != len(want) || c.Order != want[0] {
			t.Fatalf("Consensus() = %+v, want %d orders from %v at %d", c, len(want), want[0], cost[all[0]])
		}
		if got := slices.Collect(p.Best()); !slices.Equal(got, want) {
			t.Fatalf("Best() = %v, want %v", got, want)
		}
	})
}

// TestPanelRelabels gives the class new numbers: everything follows.
func TestPanelRelabels(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(2, 6).Draw(t, "n")
		p, votes := drawPanel(t, n, 5, true)
		to := anyOrder(t, n, "order")
		var renamed []placing.Vote
		for _, v := range votes {
			v.Order, _ = v.Order.Relabel(to)
			renamed = append(renamed, v)
		}
		q, err := placing.NewPanel(renamed...)
		if err != nil {
			t.Fatal(err)
		}
		a, b := p.Consensus(), q.Consensus()
		if a.Disagreement != b.Disagreement || a.Count != b.Count {
			t.Fatalf("%+v and relabelled %+v", a, b)
		}
		for o := range p.Best() {
			r, _ := o.Relabel(to)
			if d, _ := q.Disagreement(r); d != b.Disagreement {
				t.Fatalf("%v is best and its relabelling %v is not", o, r)
			}
		}
		pw, _ := p.Concordance()
		qw, _ := q.Concordance()
		pt, _ := p.MeanTau()
		qt, _ := q.MeanTau()
		if pw != qw || pt != qt {
			t.Fatalf("agreement changed: %v %v, %v %v", pw, qw, pt, qt)
		}
		pb, _ := p.Borda(n)
		qb, _ := q.Borda(n)
		for e := 1; e <= n; e++ {
			if pb[e-1] != qb[to.At(e)-1] {
				t.Fatalf("Borda points changed: %v and %v", pb, qb)
			}
		}
		mapped, _ := a.Order.Relabel(to)
		x, errX := p.ProposeCuts(a.Order, placing.LimitExact)
		y, errY := q.ProposeCuts(mapped, placing.LimitExact)
		if errX != nil || errY != nil || x.Cuts != y.Cuts || x.Total != y.Total {
			t.Fatalf("cuts changed: %v %v, %v %v", x, errX, y, errY)
		}
	})
}

// TestAgreementByDefinition works both coefficients out one official at a time.
func TestAgreementByDefinition(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(2, 7).Draw(t, "n")
		p, votes := drawPanel(t, n, 4, false)
		var each []placing.Order
		for _, v := range votes {
			for range max(v.Count, 1) {
				each = append(each, v.Order)
			}
		}
		w, ok := p.Concordance()
		tau, ok2 := p.MeanTau()
		if len(each) < 2 {
			if ok || ok2 || w != 0 || tau != 0 {
				t.Fatalf("one official agrees with nobody: %v %v", w, tau)
			}
			return
		}
		var sum, squares float64
		for e := 1; e <= n; e++ {
			r := -float64(len(each)*(n+1)) / 2
			for _, o := range each {
				r += float64(o.Place(e))
			}
			squares += r * r
		}
		m := float64(len(each))
		want := 12 * squares / (m * m * float64(n*n*n-n))
		pairs := 0
		for i, a := range each {
			for _, b := range each[i+1:] {
				d, _ := a.Disagreements(b)
				sum += 1 - 4*float64(d)/float64(n*(n-1))
				pairs++
			}
		}
		if math.Abs(w-want) > 1e-12 || w < 0 || w > 1 {
			t.Fatalf("Concordance() = %v, want %v", w, want)
		}
		if math.Abs(tau-sum/float64(pairs)) > 1e-12 {
			t.Fatalf("MeanTau() = %v, want %v", tau, sum/float64(pairs))
		}
	})
}

// TestSpreadCutsKeepsItsWord holds every proposal to the limits.
func TestSpreadCutsKeepsItsWord(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(2, 12).Draw(t, "n")
		weights := make([]int64, n-1)
		for i := range weights {
			weights[i] = rapid.Int64Range(0, 1_000_000_000_000_000).Draw(t, "weight")
		}
		total := rapid.IntRange(11, 50).Draw(t, "total")
		limit := placing.LimitExact
		if n == 4 {
			limit = rapid.SampledFrom(slices.Collect(placing.CutLimits())).Draw(t, "limit")
		}
		c, err := placing.SpreadCuts(total, weights, limit)
		if err != nil {
			t.Fatal(err)
		}
		if !c.NeverNegative() || limit.Check(c) != nil || c.Total() > total || c.Len() != n-1 {
			t.Fatalf("SpreadCuts(%d, %v, %v) = %v", total, weights, limit, c)
		}
		if n > 6 {
			return
		}
		for v := range c.All() {
			if v < 1 {
				t.Fatalf("SpreadCuts(%d, %v, %v) = %v: a pair without a cut", total, weights, limit, c)
			}
		}
	})
}

func TestSpreadCuts(t *testing.T) {
	tests := []struct {
		name    string
		total   int
		weights []int64
		limit   placing.CutLimit
		want    string
	}{
		{"even weights share evenly", 15, []int64{7, 7, 7}, placing.LimitColorado, "5-5-5"},
		{"no weights share evenly", 9, []int64{0, 0, 0}, placing.LimitExact, "3-3-3"},
		{"what is over goes to the largest remainders", 10, []int64{10, 11, 12}, placing.LimitExact, "3-3-4"},
		{"equal remainders go to the upper pair", 10, []int64{1, 1, 1}, placing.LimitExact, "4-3-3"},
		{"a pair without weight keeps one point", 10, []int64{1, 0, 1}, placing.LimitExact, "4-1-5"},
		{"the middle is cut back until no card goes negative", 15, []int64{2, 7, 3}, placing.LimitNebraska, "2-8-4"},
		{"single cuts over 8 are cut back", 15, []int64{20, 1, 1}, placing.LimitColorado, "8-1-1"},
		{"without a limit on single cuts they stay", 15, []int64{20, 1, 1}, placing.LimitMaryland, "13-1-1"},
		{"two exhibits take it all", 50, []int64{3}, placing.LimitExact, "50"},
		{"three exhibits lose twice each cut", 50, []int64{3, 3}, placing.LimitExact, "13-12"},
		{"the least total", 3, []int64{9, 1, 1}, placing.LimitSum, "1-1-1"},
		{"six exhibits still have a cut each", 5, []int64{1, 1, 1, 1, 9}, placing.LimitExact, "1-1-1-1-1"},
		{"seven cannot", 6, []int64{1, 1, 1, 1, 1, 1}, placing.LimitExact, "1-1-1-1-1-0"},
		{"a point is taken nearest the middle", 6, []int64{1, 1, 0, 0}, placing.LimitExact, "2-2-1-1"},
		{"a point is taken from the largest", 7, []int64{2, 2, 0, 3}, placing.LimitExact, "2-2-1-2"},
		{"of mirrored cuts the upper gives", 9, []int64{4, 0, 0, 4}, placing.LimitExact, "3-1-1-4"},
		{"no points at all", 0, []int64{1, 1, 1, 1, 1, 1}, placing.LimitExact, "0-0-0-0-0-0"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			got, err := placing.SpreadCuts(tt.total, tt.weights, tt.limit)
			if err != nil {
				t.Fatal(err)
			}
			if diff := cmp.Diff(tt.want, got.String()); diff != "" {
				t.Errorf("cuts (-want +got):\n%s", diff)
			}
		})
	}
}

// TestSpreadCutsByTheRule holds every proposal of two to six exhibits with small
// weights to the rule as it is documented, written anew: remainders sorted, and the
// distance from the middle counted in places.
func TestSpreadCutsByTheRule(t *testing.T) {
	share := func(total int, weights []int64) []int {
		n := len(weights)
		sum := int64(0)
		for _, w := range weights {
			sum += w
		}
		points, by := make([]int, n), make([]int, n)
		left := total
		for i, w := range weights {
			points[i], by[i] = int(int64(total)*w/sum), i
			left -= points[i]
		}
		slices.SortStableFunc(by, func(i, j int) int { return int(int64(total)*weights[j]%sum - int64(total)*weights[i]%sum) })
		for _, i := range by[:left] {
			points[i]++
		}
		off := func(i int) int { return max(2*i-(n-1), n-1-2*i) }
		for i := range points {
			if points[i] > 0 {
				continue
			}
			points[i] = 1
			from := 0
			for j := range points {
				if points[j] > points[from] || points[j] == points[from] && off(j) < off(from) {
					from = j
				}
			}
			points[from]--
		}
		return points
	}
	for n := 1; n <= 5; n++ {
		weights := make([]int64, n)
		for code := 1; code < 1<<(2*n); code++ { // weights of 0 to 3, not all 0
			for i := range weights {
				weights[i] = int64(code >> (2 * i) & 3)
			}
			for total := n; total <= 20; total++ {
				want := placing.Cuts{}
				for at := total; !want.IsValid() || !want.NeverNegative(); at-- {
					var err error
					if want, err = placing.NewCuts(share(at, weights)...); err != nil {
						t.Fatal(err)
					}
				}
				if got, err := placing.SpreadCuts(total, weights, placing.LimitExact); err != nil || got != want {
					t.Fatalf("SpreadCuts(%d, %v) = %v, %v; want %v", total, weights, got, err, want)
				}
			}
		}
	}
}

// TestCutsAtTheEdgesOfSize holds the sizes at which the rule changes or ends.
func TestCutsAtTheEdgesOfSize(t *testing.T) {
	twelve, err := placing.SpreadCuts(11, make([]int64, 11), placing.LimitExact)
	if err != nil || twelve.Len() != 11 {
		t.Errorf("twelve exhibits: %v, %v; want 11 cuts", twelve, err)
	}
	// Six is the last size in which every pair gets a point, also where the
	// officials gave less than that in all.
	panel, err := placing.NewPanel(placing.Vote{Order: placing.MustParseOrder("1-2-3-4-5-6"), Cuts: placing.MustParseCuts("0-0-0-0-1")})
	if err != nil {
		t.Fatal(err)
	}
	p, err := panel.ProposeCuts(placing.MustParseOrder("1-2-3-4-5-6"), placing.LimitExact)
	if err != nil {
		t.Fatal(err)
	}
	if p.Total != 5 || p.Cuts != placing.MustParseCuts("1-1-1-1-1") {
		t.Errorf("six exhibits: total %d, cuts %v; want 5, 1-1-1-1-1", p.Total, p.Cuts)
	}
}

func TestSpreadCutsRefuses(t *testing.T) {
	tests := []struct {
		name    string
		total   int
		weights []int64
		limit   placing.CutLimit
		want    string
	}{
		{"no weights", 5, nil, placing.LimitExact, "weights: 0 weights: out of range; allowed: 1 to 11, one fewer than exhibits"},
		{"too many", 5, make([]int64, 12), placing.LimitExact, "weights: 12 weights: out of range; allowed: 1 to 11, one fewer than exhibits"},
		{"too small a total", 2, []int64{1, 1, 1}, placing.LimitExact, "total: 2: out of range; allowed: 3 to 50 for 4 exhibits"},
		{"too great a total", 51, []int64{1}, placing.LimitExact, "total: 51: out of range; allowed: 1 to 50 for 2 exhibits"},
		{"negative total", -1, make([]int64, 6), placing.LimitExact, "total: -1: out of range; allowed: 0 to 50 for 7 exhibits"},
		{"no limit", 5, []int64{1}, 0, "limit: missing; allowed: sum, colorado, maryland, nebraska, exact"},
		{"a limit for three cuts", 5, []int64{1}, placing.LimitSum, "limit: sum: out of range; allowed: exact for any class but one of four"},
		{"a negative weight", 5, []int64{1, -1}, placing.LimitExact, "weight 2: -1: out of range; allowed: 0 to 10^15"},
		{"a weight too great", 5, []int64{1_000_000_000_000_001}, placing.LimitExact, "weight 1: 1000000000000001: out of range; allowed: 0 to 10^15"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			got, err := placing.SpreadCuts(tt.total, tt.weights, tt.limit)
			if err == nil {
				t.Fatalf("got %v, want an error", got)
			}
			if diff := cmp.Diff(tt.want, err.Error()); diff != "" {
				t.Errorf("error (-want +got):\n%s", diff)
			}
		})
	}
}

func TestPanelRefuses(t *testing.T) {
	four := placing.MustParseOrder("1-2-3-4")
	tests := []struct {
		name  string
		votes []placing.Vote
		want  string
		is    error
	}{
		{"no votes", nil, "votes: missing; allowed: one or more", placing.ErrMissing},
		{"no order", []placing.Vote{{Order: four}, {}}, "vote 2: order: missing; allowed: an order of 2 to 12 exhibits", placing.ErrMissing},
		{"another size", []placing.Vote{{Order: four}, {Order: placing.MustParseOrder("2-1-3")}}, "vote 2: order: 2-1-3: out of range; allowed: an order of 4 exhibits", placing.ErrRange},
		{"cuts of another size", []placing.Vote{{Order: four, Cuts: placing.MustParseCuts("2-2")}}, "vote 1: cuts: 2-2: out of range; allowed: none, or 3 cuts for 4 exhibits", placing.ErrRange},
		{"as many officials as there may be, and one", []placing.Vote{{Order: four, Count: 1_000_000}, {Order: four}}, "vote 2: count: 1: out of range; allowed: 1 or more, 0 for 1, and at most 1000000 on the panel", placing.ErrRange},
		{"a negative count", []placing.Vote{{Order: four, Count: -1}}, "vote 1: count: -1: out of range; allowed: 1 or more, 0 for 1, and at most 1000000 on the panel", placing.ErrRange},
		{"too many officials", []placing.Vote{{Order: four, Count: 999_999}, {Order: four, Count: 2}}, "vote 2: count: 2: out of range; allowed: 1 or more, 0 for 1, and at most 1000000 on the panel", placing.ErrRange},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			_, err := placing.NewPanel(tt.votes...)
			if !errors.Is(err, tt.is) {
				t.Fatalf("got %v, want %v", err, tt.is)
			}
			if diff := cmp.Diff(tt.want, err.Error()); diff != "" {
				t.Errorf("error (-want +got):\n%s", diff)
			}
		})
	}
	if _, err := placing.NewPanel(placing.Vote{Order: four, Count: 999_999}, placing.Vote{Order: four}); err != nil {
		t.Errorf("a million officials: %v", err)
	}
}

func TestPanelQuestionsRefused(t *testing.T) {
	p, err := placing.NewPanel(placing.Vote{Order: placing.MustParseOrder("1-2-3")})
	if err != nil {
		t.Fatal(err)
	}
	ask := func(name, want string, err error) {
		t.Helper()
		if err == nil {
			t.Errorf("%s: no error, want %s", name, want)
			return
		}
		if diff := cmp.Diff(want, err.Error()); diff != "" {
			t.Errorf("%s (-want +got):\n%s", name, diff)
		}
	}
	_, err = p.Disagreement(placing.MustParseOrder("1-2"))
	ask("another size", "order: 1-2: out of range; allowed: an order of 3 exhibits", err)
	_, err = p.Borda(1)
	ask("a top too small", "top: 1: out of range; allowed: 2 to 1000", err)
	_, err = p.Borda(1001)
	ask("a top too great", "top: 1001: out of range; allowed: 2 to 1000", err)
	_, err = p.ProposeCuts(placing.MustParseOrder("1-2"), placing.LimitExact)
	ask("cuts for another size", "order: 1-2: out of range; allowed: an order of 3 exhibits", err)
	_, err = p.ProposeCuts(placing.MustParseOrder("1-2-3"), placing.LimitExact)
	ask("nobody gave cuts", "cuts of the officials: missing; allowed: cuts from at least one official", err)
	q, _ := placing.NewPanel(placing.Vote{Order: placing.MustParseOrder("1-2-3"), Cuts: placing.MustParseCuts("2-2")})
	_, err = q.ProposeCuts(placing.MustParseOrder("1-2-3"), placing.LimitSum)
	ask("a limit for three cuts", "limit: sum: out of range; allowed: exact for any class but one of four", err)
	if got := []int{p.Over(0, 1), p.Over(4, 1), p.Over(1, 0), p.Over(1, 4), p.Over(1, 3), p.Over(3, 1)}; !slices.Equal(got, []int{0, 0, 0, 0, 1, 0}) {
		t.Errorf("Over = %v", got)
	}
	if points, err := p.Borda(1000); err != nil || !slices.Equal(points, []int{1000, 999, 998}) {
		t.Errorf("Borda(1000) = %v, %v", points, err)
	}

	var zero placing.Panel
	if diff := cmp.Diff(placing.Consensus{}, zero.Consensus(), cmp.Comparer(func(a, b placing.Order) bool { return a == b })); diff != "" {
		t.Errorf("consensus of nobody (-want +got):\n%s", diff)
	}
	for o := range zero.Best() {
		t.Errorf("Best() of nobody yields %v", o)
	}
	_, err = zero.Disagreement(placing.Order{})
	ask("nobody disagrees", "order: missing; allowed: an order of 0 exhibits", err)
	_, err = zero.Borda(3)
	ask("nobody votes", "votes: missing; allowed: one or more", err)
	_, err = zero.ProposeCuts(placing.Order{}, placing.LimitExact)
	ask("nobody cuts", "order: missing; allowed: an order of 0 exhibits", err)
}

func TestProposeCuts(t *testing.T) {
	dec := decimal.RequireFromString
	vote := func(order, cuts string, count int) placing.Vote {
		v := placing.Vote{Order: placing.MustParseOrder(order), Count: count}
		if cuts != "" {
			v.Cuts = placing.MustParseCuts(cuts)
		}
		return v
	}
	tests := []struct {
		name  string
		votes []placing.Vote
		order string
		limit placing.CutLimit
		want  placing.CutProposal
	}{
		{
			"one official keeps his own cuts",
			[]placing.Vote{vote("3-1-2-4", "2-8-2", 0)}, "3-1-2-4", placing.LimitColorado,
			placing.CutProposal{Cuts: placing.MustParseCuts("2-8-2"), Asked: 12, Total: 12, Weights: []decimal.Decimal{dec("2"), dec("8"), dec("2")}, Pairs: []placing.PairVote{
				{3, 1, 1, 0, 2, 2, dec("2"), 2},
				{1, 2, 1, 0, 8, 8, dec("8"), 8},
				{2, 4, 1, 0, 2, 2, dec("2"), 2},
			}},
		},
		{
			"officials at odds pull a cut down, one without cuts only votes",
			[]placing.Vote{vote("1-2-3-4", "4-5-3", 1), vote("1-2-3-4", "3-6-3", 2), vote("2-1-3-4", "2-4-5", 1), vote("1-2-4-3", "", 1)}, "1-2-3-4", placing.LimitColorado,
			// weights 2, 5.75, 3.5 of 12, 12, 12 and 11: a total of 47/4, up to 12
			placing.CutProposal{Cuts: placing.MustParseCuts("2-6-4"), Asked: 12, Total: 12, Weights: []decimal.Decimal{dec("2"), dec("5.75"), dec("3.5")}, Pairs: []placing.PairVote{
				{1, 2, 4, 1, -2, 4, dec("2"), 2},
				{2, 3, 5, 0, 5, 6, dec("5.75"), 6},
				{3, 4, 4, 1, 3, 5, dec("3.5"), 4},
			}},
		},
		{
			"a pair that the cuts turn round weighs nothing and keeps one point",
			[]placing.Vote{vote("1-2-3", "1-6", 2), vote("2-1-3", "5-3", 1)}, "1-2-3", placing.LimitExact,
			placing.CutProposal{Cuts: placing.MustParseCuts("1-6"), Asked: 7, Total: 7, Weights: []decimal.Decimal{dec("0"), dec("6.6667")}, Pairs: []placing.PairVote{
				{1, 2, 2, 1, -5, 1, dec("-1"), 1},
				{2, 3, 3, 0, 6, 8, dec("6.6667"), 6},
			}},
		},
		{
			"cuts of zero are raised to one a pair",
			[]placing.Vote{vote("1-2-3", "0-0", 1)}, "1-2-3", placing.LimitExact,
			placing.CutProposal{Cuts: placing.MustParseCuts("1-1"), Asked: 0, Total: 2, Weights: []decimal.Decimal{dec("0"), dec("0")}, Pairs: []placing.PairVote{
				{1, 2, 1, 0, 0, 0, dec("0"), 1},
				{2, 3, 1, 0, 0, 0, dec("0"), 1},
			}},
		},
		{
			"halves of the mean total go up, and the limit cuts back",
			[]placing.Vote{vote("1-2-3-4", "3-8-4", 1), vote("1-2-3-4", "3-7-4", 1)}, "1-2-3-4", placing.LimitNebraska,
			placing.CutProposal{Cuts: placing.MustParseCuts("3-7-4"), Asked: 15, Total: 15, Weights: []decimal.Decimal{dec("3"), dec("7.5"), dec("4")}, Pairs: []placing.PairVote{
				{1, 2, 2, 0, 3, 3, dec("3"), 3},
				{2, 3, 2, 0, 7, 8, dec("7.5"), 7},
				{3, 4, 2, 0, 4, 4, dec("4"), 4},
			}},
		},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			p, err := placing.NewPanel(tt.votes...)
			if err != nil {
				t.Fatal(err)
			}
			got, err := p.ProposeCuts(placing.MustParseOrder(tt.order), tt.limit)
			if err != nil {
				t.Fatal(err)
			}
			if diff := cmp.Diff(tt.want, got); diff != "" {
				t.Errorf("proposal (-want +got):\n%s", diff)
			}
		})
	}
}

// TestTwelveExhibitsNineOfficials holds the consensus on the largest class to what
// the officials make of it pair by pair; its time is for the benchmark.
func TestTwelveExhibitsNineOfficials(t *testing.T) {
	p := twelve(t)
	c := p.Consensus()
	if d, err := p.Disagreement(c.Order); err != nil || d != c.Disagreement || c.Count < 1 {
		t.Errorf("consensus %+v, disagreement %d, %v", c, d, err)
	}
}

func twelve(t testing.TB) placing.Panel {
	var votes []placing.Vote
	state := uint32(2463534242)
	for range 9 {
		list := []int{1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12}
		for i := range list {
			state ^= state << 13
			state ^= state >> 17
			state ^= state << 5
			j := i + int(state%uint32(len(list)-i))
			list[i], list[j] = list[j], list[i]
		}
		o, err := placing.NewOrder(list...)
		if err != nil {
			t.Fatal(err)
		}
		votes = append(votes, placing.Vote{Order: o, Cuts: placing.MustParseCuts("1-0-1-0-0-1-0-0-0-0-1")})
	}
	p, err := placing.NewPanel(votes...)
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// BenchmarkConsensus times nine officials on a class of twelve.
func BenchmarkConsensus(b *testing.B) {
	p := twelve(b)
	for b.Loop() {
		p.Consensus()
	}
}

// TestManyEqualOrders has two officials turn a class of five upside down: all 120
// orders are equal.
func TestManyEqualOrders(t *testing.T) {
	up := placing.MustParseOrder("1-2-3-4-5")
	p, err := placing.NewPanel(placing.Vote{Order: up}, placing.Vote{Order: up.Reversed()})
	if err != nil {
		t.Fatal(err)
	}
	c := p.Consensus()
	if c.Count != 120 || c.Order != up || c.Disagreement != 10 {
		t.Errorf("Consensus() = %+v", c)
	}
	n := 0
	for range p.Best() {
		if n++; n == 30 {
			break
		}
	}
	if all := slices.Collect(p.Best()); n != 30 || !slices.Equal(all, slices.Collect(placing.Orders(5))) {
		t.Errorf("Best() stopped after %d and yields %v", n, all)
	}
}

// TestPanelTellsEverything holds that every vote at fault is told, with its path.
func TestPanelTellsEverything(t *testing.T) {
	four := placing.MustParseOrder("1-2-3-4")
	_, err := placing.NewPanel(placing.Vote{}, placing.Vote{Order: four, Cuts: placing.MustParseCuts("2-2"), Count: -1}, placing.Vote{Order: four}, placing.Vote{Order: placing.MustParseOrder("2-1")})
	var got []string
	for _, p := range placing.Problems(err) {
		got = append(got, p.Path+": "+p.Error())
	}
	want := []string{
		"votes[0].order: vote 1: order: missing; allowed: an order of 2 to 12 exhibits",
		"votes[1].cuts: vote 2: cuts: 2-2: out of range; allowed: none, or 3 cuts for 4 exhibits",
		"votes[1].count: vote 2: count: -1: out of range; allowed: 1 or more, 0 for 1, and at most 1000000 on the panel",
		"votes[3].order: vote 4: order: 2-1: out of range; allowed: an order of 4 exhibits",
	}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Errorf("problems (-want +got):\n%s", diff)
	}
}

// TestEqual holds that two panels of the same votes are the same.
func TestEqual(t *testing.T) {
	panel := func(votes ...placing.Vote) placing.Panel {
		p, err := placing.NewPanel(votes...)
		if err != nil {
			t.Fatal(err)
		}
		return p
	}
	a, b := placing.Vote{Order: placing.MustParseOrder("1-2-3")}, placing.Vote{Order: placing.MustParseOrder("2-1-3"), Count: 2}
	if !panel(a, b).Equal(panel(a, b)) || panel(a, b).Equal(panel(b, a)) || panel(a).Equal(placing.Panel{}) || !(placing.Panel{}).Equal(placing.Panel{}) {
		t.Error("panels compare wrongly")
	}
	o, p := mustOfficial(t, "2-1-3", "3-4"), mustOfficial(t, "2-1-3", "4-3")
	if !o.Equal(o) || o.Equal(p) || !o.Order().Equal(p.Order()) || o.Order().Equal(a.Order) || o.Cuts().Equal(p.Cuts()) || !o.Cuts().Equal(o.Cuts()) {
		t.Error("placings compare wrongly")
	}
}
