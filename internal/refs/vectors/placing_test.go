package vectors

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"example.com/ribface/internal/testkit/roundtrip"
	"example.com/ribface/placing"
)

func official(o Object) (placing.Official, error) {
	r := &reader{o: o}
	order, cuts := get(r, "official", placing.ParseOrder), get(r, "cuts", placing.ParseCuts)
	if r.err != nil {
		return placing.Official{}, r.err
	}
	return placing.NewOfficial(order, cuts)
}

var scoreFile = maker{
	File: File{
		Name:   "pairwise-scores",
		About:  "Pairwise-cut scores of cards against an official placing, with the points lost by each reversed pair, the greatest loss that the cuts allow, and whether no card can score below zero.",
		Rule:   "50 less, for every pair that the card has the other way round, the sum of the cuts between the two in the official order. Scores may be negative.",
		Source: "ext-maryland-contests",
	},
	solve: func(v Vector) (Object, error) {
		o, err := official(v.In)
		if err != nil {
			return nil, err
		}
		card, err := placing.ParseOrder(Text(v.In, "card"))
		if err != nil {
			return nil, err
		}
		score, err := o.Score(card)
		if err != nil {
			return nil, err
		}
		lost := []Object{}
		for f := range o.Faults(card) {
			lost = append(lost, Object{"upper": strconv.Itoa(f.Upper), "lower": strconv.Itoa(f.Lower), "points": strconv.Itoa(f.Points)})
		}
		never := "no"
		if o.Cuts().NeverNegative() {
			never = "yes"
		}
		return Object{"score": strconv.Itoa(score), "lost": lost, "greatest_loss": strconv.Itoa(o.Cuts().GreatestLoss()), "never_negative": never}, nil
	},
	inputs: func(t *tables) ([]Vector, error) {
		rows, err := t.rows("placing-examples.csv")
		if err != nil {
			return nil, err
		}
		var all []Vector
		for _, r := range rows {
			all = append(all, stated(r, Object{"official": r.Get("official"), "cuts": r.Get("cuts"), "card": r.Get("placing")}))
		}
		// The tables of golden/placing.txt.
		for _, cuts := range []string{"2-8-2", "3-9-3", "5-5-5", "0-12-1", "7-2-7", "0-0-0", "50-50-50"} {
			for i, order := range []string{"1-2-3-4", "3-2-1-4"} {
				n := 0
				for card := range placing.Orders(4) {
					if n++; i == 1 && n%5 != 0 {
						continue
					}
					all = append(all, Vector{From: "golden/placing.txt", In: Object{"official": order, "cuts": cuts, "card": card.String()}})
				}
			}
		}
		for _, s := range [][3]string{{"2-1", "5", "1-2"}, {"3-1-2", "4-6", "2-1-3"}, {"5-3-1-2-4", "1-2-3-4", "1-2-3-4-5"}, {"6-5-4-3-2-1", "1-2-3-2-1", "1-2-3-4-5-6"}, {"12-11-10-9-8-7-6-5-4-3-2-1", "1-1-1-1-1-1-1-1-1-1-1", "1-2-3-4-5-6-7-8-9-10-11-12"}} {
			all = append(all, Vector{From: "golden/placing.txt", In: Object{"official": s[0], "cuts": s[1], "card": s[2]}})
		}
		draw := sweep(50)
		for n := 3; n <= 9; n++ {
			for range 8 {
				var cuts []string
				for range n - 1 {
					cuts = append(cuts, strconv.Itoa(draw.next(7)))
				}
				all = append(all, Vector{From: "a sweep", In: Object{"official": drawn(&draw, n), "cuts": strings.Join(cuts, "-"), "card": drawn(&draw, n)}})
			}
		}
		return all, nil
	},
}

// drawn draws an order of so many exhibits.
func drawn(s *sweep, n int) string {
	var left, out []string
	for e := range n {
		left = append(left, strconv.Itoa(e+1))
	}
	for len(left) > 0 {
		i := s.next(len(left))
		out = append(out, left[i])
		left = slices.Delete(left, i, i+1)
	}
	return strings.Join(out, "-")
}

var limitFile = maker{
	File: File{
		Name:   "cut-limits",
		About:  "Which published limit a set of cuts keeps.",
		Rule:   "See the document of Limit in package placing; exact is that no card scores below zero.",
		Source: "ext-colorado-1-619 ext-maryland-contests ext-nebraska-g2092",
	},
	solve: func(v Vector) (Object, error) {
		r := &reader{o: v.In}
		l, cuts := get(r, "limit", roundtrip.Read[placing.CutLimit]), get(r, "cuts", placing.ParseCuts)
		if r.err != nil {
			return nil, r.err
		}
		if l.Check(cuts) != nil {
			return Object{"limit": "broken"}, nil
		}
		return Object{"limit": "kept"}, nil
	},
	inputs: func(t *tables) ([]Vector, error) {
		rows, err := t.rows("cut-limits.csv")
		if err != nil {
			return nil, err
		}
		var all []Vector
		for _, r := range rows {
			all = append(all, stated(r, Object{"limit": r.Get("limit"), "cuts": r.Get("cuts")}))
		}
		for l := range placing.CutLimits() {
			for _, cuts := range []string{"5-5-5", "4-6-5", "3-8-3", "2-9-3", "1-2-9", "0-12-1", "7-2-7", "5-6-5"} {
				all = append(all, Vector{From: "golden/placing.txt", In: Object{"limit": l.String(), "cuts": cuts}})
			}
		}
		return all, nil
	},
}

var spreadFile = maker{
	File: File{
		Name:   "cut-proposals",
		About:  "Points shared out over the pairs of a class in proportion to weights, one for each pair from the top.",
		Rule:   "In proportion, points left over to the largest remainders, the upper pair first; up to six exhibits a pair without a point gets one from the largest cut, of equal ones from that nearest the middle; with a total less by one until the limit is kept and no card can score below zero. Weights that are all zero share evenly. The rule is our own.",
		Source: "",
	},
	solve: func(v Vector) (Object, error) {
		r := &reader{o: v.In}
		total, limit := get(r, "total", strconv.Atoi), get(r, "limit", roundtrip.Read[placing.CutLimit])
		var weights []int64
		for w := range strings.FieldsSeq(Text(v.In, "weights")) {
			n, err := strconv.ParseInt(w, 10, 64)
			if err != nil {
				return nil, err
			}
			weights = append(weights, n)
		}
		if r.err != nil {
			return nil, r.err
		}
		cuts, err := placing.SpreadCuts(total, weights, limit)
		return Object{"cuts": cuts.String()}, err
	},
	inputs: func(t *tables) ([]Vector, error) {
		var all []Vector
		draw := sweep(15)
		for n := 2; n <= 8; n++ {
			for total := 5; total <= 15; total += 2 {
				limits := []placing.CutLimit{placing.LimitExact}
				if n == 4 {
					limits = append(limits, placing.LimitColorado, placing.LimitMaryland)
				}
				for _, l := range limits {
					if total < n-1 {
						continue
					}
					for range 3 {
						var weights []string
						for range n - 1 {
							weights = append(weights, strconv.Itoa(pick(&draw, 0, 1, 2, 3, 5, 8, 30)))
						}
						all = append(all, Vector{From: "a sweep", In: Object{"total": fmt.Sprint(total), "weights": strings.Join(weights, " "), "limit": l.String()}})
					}
				}
			}
		}
		return all, nil
	},
}
