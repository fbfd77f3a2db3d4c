package placing_test

import (
	"slices"
	"strconv"
	"strings"
	"testing"

	"example.com/ribface/internal/refs/vectors"
	"example.com/ribface/internal/testkit/roundtrip"
	"example.com/ribface/placing"
)

// TestVectors holds the published vectors of scores to slowLoss, pair by pair, and those
// of proposed cuts to slowSpread.
func TestVectors(t *testing.T) {
	list := func(s, split string) []int {
		var all []int
		for w := range strings.SplitSeq(s, split) {
			n, err := strconv.Atoi(w)
			if err != nil {
				t.Fatal(err)
			}
			all = append(all, n)
		}
		return all
	}
	f, err := vectors.Read("../testdata/vectors", "pairwise-scores")
	if err != nil {
		t.Fatal(err)
	}
	for _, v := range f.Vectors {
		official, cuts, card := list(vectors.Text(v.In, "official"), "-"), list(vectors.Text(v.In, "cuts"), "-"), list(vectors.Text(v.In, "card"), "-")
		back := slices.Clone(official)
		slices.Reverse(back)
		never, greatest := "yes", slowLoss(official, back, cuts)
		if greatest > 50 {
			never = "no"
		}
		if got, want := vectors.Text(v.Out, "score"), strconv.Itoa(50-slowLoss(official, card, cuts)); got != want {
			t.Errorf("%v: score %s, slowly %s", v.In, got, want)
		}
		if vectors.Text(v.Out, "greatest_loss") != strconv.Itoa(greatest) || vectors.Text(v.Out, "never_negative") != never {
			t.Errorf("%v: %v, slowly at most %d", v.In, v.Out, greatest)
		}
		var pairs []vectors.Object
		for i, upper := range official {
			for j := i + 1; j < len(official); j++ {
				lower := official[j]
				if slices.Index(card, upper) < slices.Index(card, lower) {
					continue
				}
				points := 0
				for _, c := range cuts[i:j] {
					points += c
				}
				pairs = append(pairs, vectors.Object{"upper": strconv.Itoa(upper), "lower": strconv.Itoa(lower), "points": strconv.Itoa(points)})
			}
		}
		same := func(a, b vectors.Object) bool {
			return a["upper"] == b["upper"] && a["lower"] == b["lower"] && a["points"] == b["points"]
		}
		if got := vectors.List(v.Out, "lost"); !slices.EqualFunc(got, pairs, same) {
			t.Errorf("%v: lost %v, slowly %v", v.In, got, pairs)
		}
	}
	if f, err = vectors.Read("../testdata/vectors", "cut-proposals"); err != nil {
		t.Fatal(err)
	}
	for _, v := range f.Vectors {
		limit, err := roundtrip.Read[placing.CutLimit](vectors.Text(v.In, "limit"))
		if err != nil {
			t.Fatal(err)
		}
		total := list(vectors.Text(v.In, "total"), " ")[0]
		want := slowSpread(total, list(vectors.Text(v.In, "weights"), " "), func(cuts []int) bool {
			c, err := placing.NewCuts(cuts...)
			return err == nil && limit.Check(c) == nil
		})
		if got := list(vectors.Text(v.Out, "cuts"), "-"); !slices.Equal(got, want) {
			t.Errorf("%v: cuts %v, slowly %v", v.In, got, want)
		}
	}
}

// slowSpread shares points out as the document of SpreadCuts says, point by point.
func slowSpread(total int, weights []int, keeps func([]int) bool) []int {
	sum := 0
	for _, w := range weights {
		sum += w
	}
	if sum == 0 {
		weights = slices.Repeat([]int{1}, len(weights))
		sum = len(weights)
	}
	last := len(weights) - 1
	for ; ; total-- {
		var cuts, rest []int
		left := total
		for _, w := range weights {
			cuts, rest = append(cuts, total*w/sum), append(rest, total*w%sum)
			left -= total * w / sum
		}
		for ; left > 0; left-- {
			most := slices.Index(rest, slices.Max(rest))
			cuts[most]++
			rest[most] = -1
		}
		for i := range cuts {
			if cuts[i] > 0 || len(cuts) > 5 {
				continue
			}
			from := -1
			for j, c := range cuts {
				if c < slices.Max(cuts) {
					continue
				}
				off := func(k int) int { return max(2*k-last, last-2*k) }
				if from < 0 || off(j) < off(from) {
					from = j
				}
			}
			cuts[from]--
			cuts[i]++
		}
		var official []int
		for e := range len(cuts) + 1 {
			official = append(official, e+1)
		}
		back := slices.Clone(official)
		slices.Reverse(back)
		if slowLoss(official, back, cuts) <= 50 && keeps(cuts) {
			return cuts
		}
	}
}
