package placing_test

import (
	"slices"
	"testing"

	"example.com/ribface/internal/testkit/faulttest"
	"example.com/ribface/placing"
	"github.com/google/go-cmp/cmp"
	"github.com/shopspring/decimal"
	"pgregory.net/rapid"
)

// TestOfficial holds one official placing: parts, text, scores, faults, worst and
// mean (published: ext-maryland-contests for the scores).
func TestOfficial(t *testing.T) {
	order, cuts := placing.MustParseOrder("3-2-1-4"), placing.MustParseCuts("2-8-2")
	o, err := placing.NewOfficial(order, cuts)
	if err != nil {
		t.Fatal(err)
	}
	if o.Order() != order || o.Cuts() != cuts || !o.IsValid() || o.String() != "3-2-1-4 cuts 2-8-2" || o.Worst() != 6 || !o.Mean().Equal(decimal.New(28, 0)) {
		t.Errorf("%v: %v, %v, worst %d, mean %v", o, o.Order(), o.Cuts(), o.Worst(), o.Mean())
	}
	for card, want := range map[string]int{"3-2-1-4": 50, "2-3-4-1": 46, "3-1-2-4": 42, "4-2-3-1": 24, "4-1-2-3": 6} {
		if got, err := o.Score(placing.MustParseOrder(card)); err != nil || got != want {
			t.Errorf("%s scores %d, %v; want %d", card, got, err, want)
		}
	}
	want := []placing.Fault{{Upper: 3, Lower: 2, Points: 2}, {Upper: 3, Lower: 4, Points: 12}, {Upper: 2, Lower: 4, Points: 10}, {Upper: 1, Lower: 4, Points: 2}}
	if diff := cmp.Diff(want, slices.Collect(o.Faults(placing.MustParseOrder("4-2-3-1")))); diff != "" {
		t.Errorf("Faults: (-want +got)\n%s", diff)
	}
	n := 0
	for f := range o.Faults(placing.MustParseOrder("4-1-2-3")) {
		if n++; n == 2 {
			if f != (placing.Fault{Upper: 3, Lower: 1, Points: 10}) {
				t.Errorf("the second fault is %+v", f)
			}
			break
		}
	}
	if faults := slices.Collect(o.Faults(order)); faults != nil {
		t.Errorf("the official card has the faults %v", faults)
	}
	if faults := slices.Collect(o.Faults(placing.MustParseOrder("2-1-3"))); faults != nil {
		t.Errorf("a card of three has the faults %v", faults)
	}
	tie, err := placing.NewOfficial(placing.MustParseOrder("1-2-3"), placing.MustParseCuts("0-3"))
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff([]placing.Fault{{Upper: 1, Lower: 2, Points: 0}}, slices.Collect(tie.Faults(placing.MustParseOrder("2-1-3")))); diff != "" {
		t.Errorf("a tie: (-want +got)\n%s", diff)
	}
}

// TestTrapNegativeScore holds that a score below zero is not floored unless the
// card rules ask for it (ext-maryland-contests shows 3-9-3).
func TestTrapNegativeScore(t *testing.T) {
	o, err := placing.NewOfficial(placing.MustParseOrder("1-2-3-4"), placing.MustParseCuts("3-9-3"))
	if err != nil {
		t.Fatal(err)
	}
	negative := map[string]int{}
	count, sum := 0, 0
	var last placing.Order
	for card, score := range o.Scores() {
		if count++; card.Compare(last) != 1 {
			t.Errorf("%v comes after %v", card, last)
		}
		last, sum = card, sum+score
		if score < 0 {
			negative[card.String()] = score
		}
	}
	if diff := cmp.Diff(map[string]int{"4-3-2-1": -4, "3-4-2-1": -1, "4-3-1-2": -1}, negative); diff != "" {
		t.Errorf("(-want +got)\n%s", diff)
	}
	if count != 24 || !o.Mean().Equal(decimal.New(int64(sum), 0).Div(decimal.New(24, 0))) || o.Worst() != -4 {
		t.Errorf("%d cards, sum %d, mean %v, worst %d", count, sum, o.Mean(), o.Worst())
	}
	for range o.Scores() {
		break
	}
	card := placing.Card{Order: placing.MustParseOrder("4-3-2-1")}
	if got, err := (placing.CardRules{}).Score(o, card); err != nil || got != -4 {
		t.Errorf("by default %d, %v; want -4", got, err)
	}
	if got, err := (placing.CardRules{FloorAtZero: true}).Score(o, card); err != nil || got != 0 {
		t.Errorf("floored %d, %v; want 0", got, err)
	}
}

// TestOfficialRefuses holds the errors of making an official placing and of
// scoring against it.
func TestOfficialRefuses(t *testing.T) {
	order, cuts := placing.MustParseOrder("3-2-1-4"), placing.MustParseCuts("2-8-2")
	for _, tt := range []struct {
		name  string
		order placing.Order
		cuts  placing.Cuts
		want  placing.FieldError
	}{
		{"no order", placing.Order{}, cuts, placing.FieldError{Path: "order", Field: "official placing", Allowed: "an order of 2 to 12 exhibits", Err: placing.ErrMissing}},
		{"nothing", placing.Order{}, placing.Cuts{}, placing.FieldError{Path: "order", Field: "official placing", Allowed: "an order of 2 to 12 exhibits", Err: placing.ErrMissing}},
		{"no cut for a pair", placing.MustParseOrder("1-2"), placing.Cuts{}, placing.FieldError{Path: "cuts", Field: "cuts", Allowed: "1 cut for 2 exhibits", Err: placing.ErrMissing}},
		{"no cuts", order, placing.Cuts{}, placing.FieldError{Path: "cuts", Field: "cuts", Allowed: "3 cuts for 4 exhibits", Err: placing.ErrMissing}},
		{"too few cuts", order, placing.MustParseCuts("2-8"), placing.FieldError{Path: "cuts", Field: "cuts", Value: "2-8", Allowed: "3 cuts for 4 exhibits", Err: placing.ErrRange}},
		{"too many cuts", order, placing.MustParseCuts("2-8-2-1"), placing.FieldError{Path: "cuts", Field: "cuts", Value: "2-8-2-1", Allowed: "3 cuts for 4 exhibits", Err: placing.ErrRange}},
	} {
		t.Run(tt.name, func(t *testing.T) {
			o, err := placing.NewOfficial(tt.order, tt.cuts)
			faulttest.Field(t, tt.name, err, tt.want)
			if o != (placing.Official{}) {
				t.Errorf("gives %v", o)
			}
		})
	}
	o, err := placing.NewOfficial(order, cuts)
	if err != nil {
		t.Fatal(err)
	}
	none := placing.FieldError{Field: "official placing", Allowed: "an order of 2 to 12 exhibits", Err: placing.ErrMissing}
	for _, tt := range []struct {
		name string
		o    placing.Official
		card placing.Order
		want placing.FieldError
	}{
		{"no official", placing.Official{}, order, none},
		{"neither", placing.Official{}, placing.Order{}, none},
		{"no card", o, placing.Order{}, placing.FieldError{Field: "card", Allowed: "an order of 4 exhibits", Err: placing.ErrMissing}},
		{"card of three", o, placing.MustParseOrder("1-2-3"), placing.FieldError{Field: "card", Value: "1-2-3", Allowed: "an order of 4 exhibits", Err: placing.ErrRange}},
	} {
		t.Run(tt.name, func(t *testing.T) {
			s, err := tt.o.Score(tt.card)
			faulttest.Field(t, tt.name, err, tt.want)
			if s != 0 {
				t.Errorf("scores %d", s)
			}
			if faults := slices.Collect(tt.o.Faults(tt.card)); faults != nil {
				t.Errorf("faults %v", faults)
			}
			if tt.o == o && tt.card == (placing.Order{}) {
				return // a blank card, see TestCardRules
			}
			s, err = placing.CardRules{}.Score(tt.o, placing.Card{Order: tt.card})
			faulttest.Field(t, "as a card", err, tt.want)
			if s != 0 {
				t.Errorf("the card scores %d", s)
			}
		})
	}
	for card, s := range (placing.Official{}).Scores() {
		t.Fatalf("the zero Official scores %v with %d", card, s)
	}
	// Text that does not make an official placing.
	_, err = placing.ParseOfficial("3-2-1-4")
	faulttest.Parse(t, "no cuts", err, placing.ParseError{Kind: "official placing", Input: "3-2-1-4", Allowed: "an order and its cuts, as 3-2-1-4 cuts 2-8-2", Err: placing.ErrSyntax})
	_, err = placing.ParseOfficial("3-2-1-4 cuts")
	faulttest.Text(t, err, `cuts: "": bad syntax; allowed: 1 to 11 cuts of 0 to 50 with hyphens between, as 2-8-2`)
	for in, reason := range map[string]error{"3-2-1-5 cuts 2-8-2": placing.ErrRange, "3-2-1-4 cuts 2-8-99": placing.ErrRange, "3-2-1-4 cuts 2-8": placing.ErrRange} {
		got, err := placing.ParseOfficial(in)
		if got != (placing.Official{}) || err == nil {
			t.Errorf("%q gives %v, %v; want %v", in, got, err, reason)
		}
	}
}

// TestCardRules holds what every mark scores under every penalty, and the
// defaults (published: ext-missouri-poultry, ksu-horse-judging).
func TestCardRules(t *testing.T) {
	o := mustOfficial(t, "1-2-3-4", "2-8-2") // worst 6
	low := mustOfficial(t, "1-2-3-4", "3-9-3")
	placed := placing.Card{Order: placing.MustParseOrder("2-1-3-4")}
	rules := func(p placing.Penalty) placing.CardRules {
		return placing.CardRules{Blank: p, Double: p, Unreadable: p}
	}
	for _, tt := range []struct {
		name, reason string
		rules        placing.CardRules
		o            placing.Official
		card         placing.Card
		want         int
	}{
		{"placing", "scored as it stands", placing.CardRules{}, o, placed, 48},
		{"placing, all penalties refuse", "penalties are for marks", rules(placing.Refused), o, placed, 48},
		{"nothing at all", "a blank card", placing.CardRules{}, o, placing.Card{}, 0},
		{"blank", "0 by default", placing.CardRules{}, o, placing.Card{Mark: placing.Blank}, 0},
		{"double-marked", "the lowest score by default", placing.CardRules{}, o, placing.Card{Mark: placing.DoubleMarked}, 6},
		{"unreadable", "0 by default", placing.CardRules{}, o, placing.Card{Mark: placing.Unreadable}, 0},
		{"blank, lowest", "as chosen", placing.CardRules{Blank: placing.LowestScore}, o, placing.Card{Mark: placing.Blank}, 6},
		{"nothing, lowest", "as chosen for a blank card", placing.CardRules{Blank: placing.LowestScore}, o, placing.Card{}, 6},
		{"double, zero", "as chosen", placing.CardRules{Double: placing.ZeroPoints}, o, placing.Card{Mark: placing.DoubleMarked}, 0},
		{"unreadable, lowest", "as chosen", placing.CardRules{Unreadable: placing.LowestScore}, o, placing.Card{Mark: placing.Unreadable}, 6},
		{"lowest below zero", "not floored unless asked", placing.CardRules{}, low, placing.Card{Mark: placing.DoubleMarked}, -4},
		{"lowest below zero, floored", "floored when asked", placing.CardRules{FloorAtZero: true}, low, placing.Card{Mark: placing.DoubleMarked}, 0},
		{"floor above zero", "the floor does not lower", placing.CardRules{FloorAtZero: true}, o, placed, 48},
	} {
		t.Run(tt.name, func(t *testing.T) {
			if got, err := tt.rules.Score(tt.o, tt.card); err != nil || got != tt.want {
				t.Errorf("%d, %v; want %d: %s", got, err, tt.want, tt.reason)
			}
		})
	}
	const penalties, markNames = "zero points, lowest score, refused", "blank, double-marked, unreadable"
	for _, tt := range []struct {
		name  string
		rules placing.CardRules
		card  placing.Card
		want  placing.FieldError
	}{
		{"both", placing.CardRules{}, placing.Card{Order: placed.Order, Mark: placing.Blank}, placing.FieldError{Field: "card", Value: "2-1-3-4 and blank", Allowed: "a placing or a mark", Err: placing.ErrRepeated}},
		{"unnamed mark", placing.CardRules{}, placing.Card{Mark: 4}, placing.FieldError{Field: "mark", Value: "mark(4)", Allowed: markNames, Err: placing.ErrUnknown}},
		{"refused blank", rules(placing.Refused), placing.Card{}, placing.FieldError{Field: "card", Value: "blank", Allowed: "one placing", Err: placing.ErrMissing}},
		{"refused double", rules(placing.Refused), placing.Card{Mark: placing.DoubleMarked}, placing.FieldError{Field: "card", Value: "double-marked", Allowed: "one placing", Err: placing.ErrMissing}},
		{"unnamed penalty", rules(4), placing.Card{Mark: placing.Unreadable}, placing.FieldError{Field: "penalty for unreadable", Value: "penalty(4)", Allowed: penalties, Err: placing.ErrUnknown}},
		{"card of three", placing.CardRules{}, placing.Card{Order: placing.MustParseOrder("1-2-3")}, placing.FieldError{Field: "card", Value: "1-2-3", Allowed: "an order of 4 exhibits", Err: placing.ErrRange}},
	} {
		t.Run(tt.name, func(t *testing.T) {
			got, err := tt.rules.Score(o, tt.card)
			faulttest.Field(t, tt.name, err, tt.want)
			if got != 0 {
				t.Errorf("scores %d", got)
			}
		})
	}
	missouri := "published: ext-missouri-poultry"
	for _, tt := range []struct {
		mark placing.Mark
		want placing.Penalty
		cite string
	}{
		{placing.Blank, placing.ZeroPoints, missouri + ", ksu-horse-judging"},
		{placing.DoubleMarked, placing.LowestScore, missouri},
		{placing.Unreadable, placing.ZeroPoints, "published: ksu-horse-judging"},
		{0, 0, "no source given"},
		{4, 0, "no source given"},
	} {
		if p, c := (placing.CardRules{}).Penalty(tt.mark); p != tt.want || c.String() != tt.cite {
			t.Errorf("%v: %v, %v; want %v, %s", tt.mark, p, c, tt.want, tt.cite)
		}
		chosen := placing.Refused
		if !tt.mark.IsValid() {
			chosen = 0
		}
		if p, c := rules(placing.Refused).Penalty(tt.mark); p != chosen || c.String() != "no source given" {
			t.Errorf("%v chosen: %v, %v", tt.mark, p, c)
		}
		// In place of one estimate every mark loses the whole item.
		item, from := placing.ZeroPoints, "published: psu-poultry, fl-ffa-2013"
		switch {
		case !tt.mark.IsValid():
			item, from = 0, "no source given"
		case tt.mark == placing.Unreadable:
			from = "derived: psu-poultry, fl-ffa-2013"
		}
		if p, c := (placing.CardRules{}).ItemPenalty(tt.mark); p != item || c.String() != from {
			t.Errorf("%v of an item: %v, %v; want %v, %s", tt.mark, p, c, item, from)
		}
		if p, c := rules(placing.Refused).ItemPenalty(tt.mark); p != chosen || c.String() != "no source given" {
			t.Errorf("%v of an item, chosen: %v, %v", tt.mark, p, c)
		}
	}
}

// anyOrder draws an order of n exhibits.
func anyOrder(t *rapid.T, n int, name string) placing.Order {
	list := make([]int, n)
	for i := range list {
		list[i] = i + 1
	}
	o, err := placing.NewOrder(rapid.Permutation(list).Draw(t, name)...)
	if err != nil {
		t.Fatal(err)
	}
	return o
}

func anyOfficial(t *rapid.T, n int) placing.Official {
	cuts, err := placing.NewCuts(rapid.SliceOfN(rapid.IntRange(0, 50), n-1, n-1).Draw(t, "cuts")...)
	if err != nil {
		t.Fatal(err)
	}
	o, err := placing.NewOfficial(anyOrder(t, n, "official"), cuts)
	if err != nil {
		t.Fatal(err)
	}
	return o
}

// propScore holds the score against the sum over pairs, its bounds, that the
// reverse card loses what this one kept, and that new numbers for the exhibits
// change nothing.
func propScore(t *rapid.T) {
	n := rapid.IntRange(2, 12).Draw(t, "n")
	o, card, names := anyOfficial(t, n), anyOrder(t, n, "card"), anyOrder(t, n, "numbers")
	got, err := o.Score(card)
	if err != nil {
		t.Fatal(err)
	}
	// The slow way: every pair of the official order that the card reverses costs
	// the cuts between the two.
	slow, lost := placing.FullScore, 0
	for i := 1; i <= n; i++ {
		for j := i + 1; j <= n; j++ {
			if card.Place(o.Order().At(i)) > card.Place(o.Order().At(j)) {
				for k := i; k < j; k++ {
					slow -= o.Cuts().At(k)
				}
			}
		}
	}
	for f := range o.Faults(card) {
		lost += f.Points
	}
	if got != slow || got != placing.FullScore-lost || got > placing.FullScore || got < o.Worst() {
		t.Fatalf("%v, card %v: %d, pair by pair %d, faults %d, worst %d", o, card, got, slow, lost, o.Worst())
	}
	back, err := o.Score(card.Reversed())
	if err != nil || got+back != placing.FullScore+o.Worst() {
		t.Fatalf("%v: %v scores %d, reversed %d, %v; worst %d", o, card, got, back, err, o.Worst())
	}
	order, err := o.Order().Relabel(names)
	if err != nil {
		t.Fatal(err)
	}
	renumbered, err := placing.NewOfficial(order, o.Cuts())
	if err != nil {
		t.Fatal(err)
	}
	newCard, err := card.Relabel(names)
	if err != nil {
		t.Fatal(err)
	}
	if s, err := renumbered.Score(newCard); err != nil || s != got {
		t.Fatalf("%v, card %v scores %d; with the numbers %v %d, %v", o, card, got, names, s, err)
	}
}

// TestScoreProperties draws placings for propScore.
func TestScoreProperties(t *testing.T) { rapid.Check(t, propScore) }

// propMetric holds that Disagreements is a metric that new numbers leave alone,
// and that the full reversal is as far as it goes.
func propMetric(t *rapid.T) {
	n := rapid.IntRange(2, 12).Draw(t, "n")
	a, b, c := anyOrder(t, n, "a"), anyOrder(t, n, "b"), anyOrder(t, n, "c")
	dist := func(x, y placing.Order) int {
		d, err := x.Disagreements(y)
		if err != nil {
			t.Fatal(err)
		}
		return d
	}
	ab, bc, ac := dist(a, b), dist(b, c), dist(a, c)
	most := n * (n - 1) / 2
	switch {
	case ab != dist(b, a):
		t.Fatalf("%v and %v: %d and %d", a, b, ab, dist(b, a))
	case (ab == 0) != (a == b):
		t.Fatalf("%v and %v: %d", a, b, ab)
	case ac > ab+bc:
		t.Fatalf("%v, %v, %v: %d > %d + %d", a, b, c, ac, ab, bc)
	case dist(a, a.Reversed()) != most || ab+dist(a, b.Reversed()) != most:
		t.Fatalf("%v and %v: %d, reversed %d", a, b, ab, dist(a, b.Reversed()))
	case a.Reversed().Reversed() != a:
		t.Fatalf("%v reversed twice is %v", a, a.Reversed().Reversed())
	}
	ra, err := a.Relabel(c)
	if err != nil {
		t.Fatal(err)
	}
	rb, err := b.Relabel(c)
	if err != nil || dist(ra, rb) != ab {
		t.Fatalf("with the numbers %v: %d, %v; want %d", c, dist(ra, rb), err, ab)
	}
	if a.Compare(b) != -b.Compare(a) || (a.Compare(b) == 0) != (a == b) || a.Compare(b) <= 0 && b.Compare(c) <= 0 && a.Compare(c) > 0 {
		t.Fatalf("%v, %v, %v: Compare is no order", a, b, c)
	}
	if got, err := placing.NewOrder(slices.Collect(a.Exhibits())...); err != nil || got != a {
		t.Fatalf("%v comes back as %v, %v", a, got, err)
	}
}

// TestDisagreementsIsMetric draws orders for propMetric.
func TestDisagreementsIsMetric(t *testing.T) { rapid.Check(t, propMetric) }

// TestCompareAcrossSizes holds that Compare is a total order also over sizes.
func TestCompareAcrossSizes(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		draw := func(name string) placing.Order {
			n := rapid.IntRange(1, 12).Draw(t, "size of "+name)
			if n == 1 {
				return placing.Order{}
			}
			return anyOrder(t, n, name)
		}
		a, b, c := draw("a"), draw("b"), draw("c")
		if a.Compare(b) != -b.Compare(a) || (a.Compare(b) == 0) != (a == b) || a.Compare(b) <= 0 && b.Compare(c) <= 0 && a.Compare(c) > 0 {
			t.Fatalf("%v, %v, %v", a, b, c)
		}
		if a.Len() < b.Len() && a.Compare(b) != -1 {
			t.Fatalf("%v is not before %v", a, b)
		}
	})
}
