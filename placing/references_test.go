package placing_test

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"
	"testing"

	"example.com/ribface/internal/refs"
	"example.com/ribface/internal/testkit/roundtrip"
	"example.com/ribface/internal/text"
	"example.com/ribface/placing"
)

// TestReferences holds the package against every published row that concerns it, in
// testdata/references.
func TestReferences(t *testing.T) {
	refs.Run(t, "placing", "../testdata/references", map[string]refs.Check{
		"card-rules.csv":       cardRule,
		"cut-baseline.csv":     cutBaseline,
		"cut-limits.csv":       cutLimit,
		"placing-examples.csv": placingExample,
		"placing-facts.csv":    placingFact,
		"words-for-cuts.csv":   wordsForCut,
	})
}

func placingExample(r refs.Row) (refs.Verdict, error) {
	official, err := placing.ParseOrder(r.Get("official"))
	if err != nil {
		return 0, err
	}
	cuts, err := placing.ParseCuts(r.Get("cuts"))
	if err != nil {
		return 0, err
	}
	o, err := placing.NewOfficial(official, cuts)
	if err != nil {
		return 0, err
	}
	card, err := placing.ParseOrder(r.Get("placing"))
	if err != nil {
		return 0, err
	}
	score, err := o.Score(card)
	if err != nil {
		return 0, err
	}
	if err := refs.Same("score", strconv.Itoa(score), r.Get("stated")); err != nil {
		return 0, err
	}
	var losses []string
	for f := range o.Faults(card) {
		losses = append(losses, strconv.Itoa(f.Points))
	}
	return refs.Agrees, refs.Same("losses", strings.Join(losses, " "), r.Get("losses"))
}

// lowest is the lowest score over all placings, one after the other.
func lowest(cuts placing.Cuts) int {
	low := placing.FullScore
	for _, s := range scores(cuts) {
		low = min(low, s)
	}
	return low
}

// scores lists the scores of all placings against 1-2-3-... with the cuts.
func scores(cuts placing.Cuts) []int {
	var first placing.Order
	for first = range placing.Orders(cuts.Len() + 1) {
		break
	}
	o, err := placing.NewOfficial(first, cuts)
	if err != nil {
		panic(err)
	}
	var all []int
	for _, s := range o.Scores() {
		all = append(all, s)
	}
	return all
}

// patterns lists all three cuts of 0 to 17 that the test keeps.
func patterns(keep func(c placing.Cuts, sum int) bool) []placing.Cuts {
	var out []placing.Cuts
	for a := range 18 {
		for b := range 18 {
			for c := range 18 {
				cuts, err := placing.NewCuts(a, b, c)
				if err != nil {
					panic(err)
				}
				if keep(cuts, a+b+c) {
					out = append(out, cuts)
				}
			}
		}
	}
	return out
}

// passNegative lists the patterns that keep a published limit and still have a
// score below zero.
func passNegative(l placing.CutLimit) []placing.Cuts {
	return patterns(func(c placing.Cuts, _ int) bool { return l.Check(c) == nil && lowest(c) < 0 })
}

// distinct gives the different values, in order.
func distinct(cuts []placing.Cuts, of func(placing.Cuts) int) string {
	var all []int
	for _, c := range cuts {
		all = append(all, of(c))
	}
	slices.Sort(all)
	return strings.Trim(fmt.Sprint(slices.Compact(all)), "[]")
}

func withLowest(cuts []placing.Cuts) string {
	if len(cuts) == 0 {
		return "none"
	}
	var out []string
	for _, c := range cuts {
		out = append(out, fmt.Sprintf("%v at %d", c, lowest(c)))
	}
	return strings.Join(out, "; ")
}

func middle(c placing.Cuts) int { return c.At(2) }

// placingFact computes each fact by going through all placings and all cuts.
func placingFact(r refs.Row) (refs.Verdict, error) {
	fact := r.Get("fact")
	var got string
	switch {
	case fact == "score of the agreed order":
		got = strconv.Itoa(slices.Max(scores(placing.MustParseCuts("2-8-2"))))
	case fact == "placings of four":
		got = strconv.Itoa(len(scores(placing.MustParseCuts("2-8-2"))))
	case fact == "negative placings for 3-9-3":
		o, err := placing.NewOfficial(placing.MustParseOrder("1-2-3-4"), placing.MustParseCuts("3-9-3"))
		if err != nil {
			return 0, err
		}
		var cards []placing.Order
		for card, s := range o.Scores() {
			if s < 0 {
				cards = append(cards, card)
			}
		}
		score := func(card placing.Order) int { s, _ := o.Score(card); return s }
		slices.SortStableFunc(cards, func(a, b placing.Order) int { return score(a) - score(b) })
		var below []string
		for _, card := range cards {
			below = append(below, fmt.Sprintf("%v at %d", card, score(card)))
		}
		got = strings.Join(below, "; ")
	case strings.HasPrefix(fact, "greatest middle cut at sum "):
		sum, err := strconv.Atoi(strings.TrimPrefix(fact, "greatest middle cut at sum "))
		if err != nil {
			return 0, err
		}
		stay := patterns(func(c placing.Cuts, s int) bool { return s == sum && lowest(c) >= 0 })
		exact := patterns(func(c placing.Cuts, s int) bool { return s == sum && c.NeverNegative() })
		if !slices.Equal(stay, exact) {
			return 0, refs.Same("patterns that never go negative", len(exact), len(stay))
		}
		got = "none"
		if len(stay) > 0 {
			got = strconv.Itoa(middle(slices.MaxFunc(stay, func(a, b placing.Cuts) int { return middle(a) - middle(b) })))
		}
	case fact == "patterns past maryland that go negative":
		got = withLowest(passNegative(placing.LimitMaryland))
	case fact == "patterns past colorado that go negative":
		got = withLowest(passNegative(placing.LimitColorado))
	case fact == "patterns past nebraska that go negative":
		got = strconv.Itoa(len(passNegative(placing.LimitNebraska)))
	case fact == "sums past nebraska that go negative":
		got = distinct(passNegative(placing.LimitNebraska), placing.Cuts.Total)
	case fact == "middle cuts past nebraska that go negative":
		got = distinct(passNegative(placing.LimitNebraska), middle)
	case fact == "lowest scores past nebraska that go negative":
		got = distinct(passNegative(placing.LimitNebraska), lowest)
	case strings.HasSuffix(fact, "patterns of sum 16 that stay"):
		stay := patterns(func(c placing.Cuts, s int) bool {
			return s == 16 && c.At(1) > 0 && c.At(2) > 0 && c.At(3) > 0 && lowest(c) >= 0
		})
		got = strconv.Itoa(len(stay))
		if strings.HasPrefix(fact, "middle cuts") {
			got = distinct(stay, middle)
		}
	case strings.HasPrefix(fact, "full reversal for "):
		n, err := strconv.Atoi(strings.TrimPrefix(fact, "full reversal for "))
		if err != nil {
			return 0, err
		}
		var each []string
		for k := range n - 1 {
			one := make([]int, n-1)
			one[k] = 1
			cuts, err := placing.NewCuts(one...)
			if err != nil {
				return 0, err
			}
			if err := refs.Same("greatest loss", cuts.GreatestLoss(), placing.FullScore-lowest(cuts)); err != nil {
				return 0, err
			}
			each = append(each, strconv.Itoa(cuts.GreatestLoss()))
		}
		got = strings.Join(each, " ")
	default:
		return 0, fmt.Errorf("no check for %q", fact)
	}
	return refs.Agrees, refs.Same(fact, got, r.Get("stated"))
}

func cutLimit(r refs.Row) (refs.Verdict, error) {
	l, err := roundtrip.Read[placing.CutLimit](r.Get("limit"))
	if err != nil {
		return 0, err
	}
	cuts, err := placing.ParseCuts(r.Get("cuts"))
	if err != nil {
		return 0, err
	}
	got := "kept"
	if l.Check(cuts) != nil {
		got = "broken"
	}
	if err := refs.Same(r.Get("cuts"), got, r.Get("stated")); err != nil {
		return 0, err
	}
	if l == placing.LimitExact {
		below := "kept"
		if low := lowest(cuts); low < 0 {
			below = "goes to " + strconv.Itoa(low)
		} else {
			return refs.Agrees, refs.Same("score below zero", got, below)
		}
		return refs.Agrees, refs.Same("lowest", below, r.Get("note"))
	}
	if r.Get("source_id") == "instr-reasons-scores" {
		return refs.Agrees, nil // the same rule as the limit it is checked by, from a weaker source
	}
	if err := refs.Same("standing", l.Cite().Standing.String(), r.Get("standing")); err != nil {
		return 0, err
	}
	return refs.Agrees, refs.Same("sources", l.Cite().IDs, r.Get("source_id"))
}

func cutBaseline(r refs.Row) (refs.Verdict, error) {
	cuts, err := placing.ParseCuts(r.Get("cuts"))
	if err != nil {
		return 0, err
	}
	all := scores(cuts)
	low, sum, squares := placing.FullScore, 0, 0
	for _, s := range all {
		low = min(low, s)
		sum += s
		squares += s * s
	}
	if err := refs.Same("lowest", strconv.Itoa(low), r.Get("lowest")); err != nil {
		return 0, err
	}
	n := len(all)
	if sum%n != 0 {
		return 0, fmt.Errorf("mean is no whole number")
	}
	if err := refs.Same("mean", strconv.Itoa(sum/n), r.Get("mean")); err != nil {
		return 0, err
	}
	sd := math.Sqrt(float64(n*squares-sum*sum)) / float64(n)
	if err := refs.Same("sd", strconv.FormatFloat(sd, 'f', 4, 64), r.Get("sd")); err != nil {
		return 0, err
	}
	o, err := placing.NewOfficial(placing.MustParseOrder("1-2-3-4"), cuts)
	if err != nil {
		return 0, err
	}
	if err := refs.Same("worst", o.Worst(), low); err != nil {
		return 0, err
	}
	return refs.Agrees, refs.Same("mean of the library", o.Mean().String(), r.Get("mean"))
}

func cardRule(r refs.Row) (refs.Verdict, error) {
	m, err := placing.ParseMark(r.Get("card"))
	if err != nil {
		return 0, err
	}
	p, from := placing.CardRules{}.Penalty(m)
	if err := refs.Same("penalty", p.String(), r.Get("stated")); err != nil {
		return 0, err
	}
	return refs.Agrees, refs.Same("cited", slices.Contains(strings.Fields(from.IDs), r.Get("source_id")), true)
}

func wordsForCut(r refs.Row) (refs.Verdict, error) {
	for w := placing.WordsColorado; text.Named(w); w++ {
		if w.String() != r.Get("scale") {
			continue
		}
		cut, err := strconv.Atoi(r.Get("cut"))
		if err != nil {
			return 0, err
		}
		words, _ := w.Cut(cut)
		if err := refs.Same("words", words, r.Get("stated")); err != nil {
			return 0, err
		}
		return refs.Agrees, refs.Same("source", w.Cite().IDs, r.Get("source_id"))
	}
	return 0, fmt.Errorf("no scale %q", r.Get("scale"))
}
