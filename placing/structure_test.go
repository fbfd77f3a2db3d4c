package placing_test

import (
	"testing"
	"unsafe"

	"example.com/ribface/internal/testkit/roundtrip"
	"example.com/ribface/placing"
	"github.com/shopspring/decimal"
)

// TestEveryValue writes and reads back every value of every small type and every
// order of two to five exhibits, and refuses to write every number that is none.
func TestEveryValue(t *testing.T) {
	check := func(errs ...error) {
		for _, err := range errs {
			if err != nil {
				t.Error(err)
			}
		}
	}
	for i := range 256 {
		check(
			roundtrip.Check(placing.Mark(i), i <= 3, placing.ParseMark),
			roundtrip.Check(placing.Penalty(i), i <= 3, roundtrip.Read[placing.Penalty]),
			roundtrip.Check(placing.CutLimit(i), i <= 5, roundtrip.Read[placing.CutLimit]),
			roundtrip.Check(placing.Words(i), i <= 3, roundtrip.Read[placing.Words]),
		)
		named := i >= 1 && i <= 3
		if placing.Mark(i).IsValid() != named {
			t.Errorf("validity of %d", i)
		}
	}
	for n := 2; n <= 5; n++ {
		for o := range placing.Orders(n) {
			check(roundtrip.Value(o, placing.ParseOrder))
		}
	}
	for a := 0; a <= 50; a++ {
		for _, rest := range [][]int{nil, {0}, {50, 7}, {1, 2, 3, 4, 5, 6, 7, 8, 9, 10}} {
			c, err := placing.NewCuts(append([]int{a}, rest...)...)
			check(err, roundtrip.Value(c, placing.ParseCuts))
		}
	}
	check(
		roundtrip.Value(placing.Order{}, placing.ParseOrder),
		roundtrip.Value(placing.Cuts{}, placing.ParseCuts),
		roundtrip.Value(placing.Official{}, placing.ParseOfficial),
		roundtrip.Value(mustOfficial(t, "3-2-1-4", "2-8-2"), placing.ParseOfficial),
	)
}

// TestSizes holds the sizes of the types that a program keeps by the million.
func TestSizes(t *testing.T) {
	for _, s := range []struct {
		name      string
		got, want uintptr
	}{
		{"Order", unsafe.Sizeof(placing.Order{}), 8},
		{"Cuts", unsafe.Sizeof(placing.Cuts{}), 12},
		{"Ranking", unsafe.Sizeof(placing.Ranking{}), 13},
		{"Mark", unsafe.Sizeof(placing.Mark(0)), 1},
		{"CardRules", unsafe.Sizeof(placing.CardRules{}), 4},
	} {
		if s.got != s.want {
			t.Errorf("%s has %d bytes, want %d", s.name, s.got, s.want)
		}
	}
}

// TestNoAllocation holds that scoring a card asks for no memory.
func TestNoAllocation(t *testing.T) {
	o := mustOfficial(t, "3-2-1-4", "2-8-2")
	card := placing.MustParseOrder("4-2-3-1")
	rules := placing.CardRules{FloorAtZero: true}
	buffer := make([]byte, 0, 64)
	var sink int
	for name, f := range map[string]func(){
		"Official.Score":       func() { s, _ := o.Score(card); sink += s },
		"CardRules.Score":      func() { s, _ := rules.Score(o, placing.Card{Order: card}); sink += s },
		"CardRules.Score mark": func() { s, _ := rules.Score(o, placing.Card{Mark: placing.DoubleMarked}); sink += s },
		"NewOfficial":          func() { p, _ := placing.NewOfficial(card, o.Cuts()); sink += p.Worst() },
		"ParseOrder":           func() { p, _ := placing.ParseOrder("3-2-1-4"); sink += p.Len() },
		"ParseCuts":            func() { c, _ := placing.ParseCuts("2-8-2"); sink += c.Len() },
		"Disagreements":        func() { n, _ := o.Order().Disagreements(card); sink += n },
		"Relabel":              func() { p, _ := card.Relabel(o.Order()); sink += p.Len() },
		"Reversed, At, Place":  func() { sink += card.Reversed().At(1) + card.Place(3) },
		"AppendText":           func() { b, _ := card.AppendText(buffer); sink += len(b) },
		"Faults": func() {
			for f := range o.Faults(card) {
				sink += f.Points
			}
		},
		"Orders": func() {
			for p := range placing.Orders(3) {
				sink += p.Len()
			}
		},
		"CutLimit.Check": func() {
			if placing.LimitColorado.Check(o.Cuts()) != nil {
				sink++
			}
		},
	} {
		if n := testing.AllocsPerRun(100, f); n != 0 {
			t.Errorf("%s: %v allocations", name, n)
		}
	}
}

// TestZeroValues holds what the zero value of every type is documented to be.
func TestZeroValues(t *testing.T) {
	for name, ok := range map[string]bool{
		"Order is not set":    !placing.Order{}.IsValid() && placing.Order{}.String() == "unset" && placing.Order{}.Len() == 0 && placing.Order{}.At(1) == 0,
		"Cuts are not set":    !placing.Cuts{}.IsValid() && placing.Cuts{}.String() == "unset" && placing.Cuts{}.Total() == 0 && placing.Cuts{}.GreatestLoss() == 0,
		"Official is not set": !placing.Official{}.IsValid() && placing.Official{}.String() == "unset" && placing.Official{}.Worst() == 0 && placing.Official{}.Mean().Equal(decimal.Zero),
		"Ranking is not set":  !placing.Ranking{}.IsValid() && placing.Ranking{}.String() == "unset" && placing.Ranking{}.Len() == 0 && placing.Ranking{}.Place(1) == 0,
		"Mark says nothing":   !placing.Mark(0).IsValid() && placing.Mark(0).String() == "unset",
		"Penalty is left":     placing.Penalty(0).String() == "unset",
		"CutLimit is not set": placing.CutLimit(0).String() == "unset",
		"Words are not set":   placing.Words(0).String() == "unset",
	} {
		if !ok {
			t.Errorf("zero value: not true that %s", name)
		}
	}
}

// TestMapKeys holds that every type compares with == and serves as a map key.
func TestMapKeys(t *testing.T) {
	values := []any{
		placing.MustParseOrder("1-2"), placing.MustParseOrder("2-1"), placing.MustParseCuts("1"), mustOfficial(t, "1-2", "1"), placing.Card{},
		placing.Blank, placing.ZeroPoints, placing.CardRules{}, placing.LimitSum, placing.WordsColorado, placing.Fault{}, ranking("2 1"), placing.Ranking{}, placing.Consensus{},
	}
	keys := map[any]int{}
	for i, v := range values {
		keys[v] = i
	}
	for i, v := range values {
		if len(keys) != len(values) || keys[v] != i {
			t.Errorf("%T is not found again", v)
		}
	}
	same := mustOfficial(t, "1-2", "1")
	if other := mustOfficial(t, "1-2", "1"); same != other {
		t.Error("two equal officials differ")
	}
}
