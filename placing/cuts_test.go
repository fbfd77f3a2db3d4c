package placing_test

import (
	"slices"
	"strings"
	"testing"

	"example.com/ribface/internal/testkit"
	"example.com/ribface/internal/testkit/faulttest"
	"example.com/ribface/maturity/cite"
	"example.com/ribface/placing"
	"github.com/google/go-cmp/cmp"
)

// TestNewCuts holds the numbers and sizes that make cuts.
func TestNewCuts(t *testing.T) {
	eleven := []int{50, 0, 1, 2, 3, 4, 5, 6, 7, 8, 9}
	for _, tt := range []struct {
		name   string
		points []int
		text   string
		total  int
		loss   int
		never  bool
	}{
		{"one of nothing", []int{0}, "0", 0, 0, true},
		{"one of 50", []int{50}, "50", 50, 50, true},
		{"three", []int{2, 8, 2}, "2-8-2", 12, 44, true},
		{"loss of 50", []int{5, 5, 5}, "5-5-5", 15, 50, true},
		{"loss of 51", []int{5, 9, 0}, "5-9-0", 14, 51, false},
		{"loss of two", []int{3, 4}, "3-4", 7, 14, true},
		{"eleven", eleven, "50-0-1-2-3-4-5-6-7-8-9", 95, 11*50 + 27 + 2*32 + 3*35 + 4*36 + 5*35 + 6*32 + 7*27 + 8*20 + 9*11, false},
	} {
		t.Run(tt.name, func(t *testing.T) {
			c, err := placing.NewCuts(tt.points...)
			if err != nil || c.String() != tt.text || c.Len() != len(tt.points) || !c.IsValid() {
				t.Fatalf("%v, %v", c, err)
			}
			if diff := cmp.Diff(tt.points, slices.Collect(c.All())); diff != "" {
				t.Errorf("All: (-want +got)\n%s", diff)
			}
			for range c.All() {
				break
			}
			for i, p := range tt.points {
				if c.At(i+1) != p {
					t.Errorf("At(%d) = %d, want %d", i+1, c.At(i+1), p)
				}
			}
			if c.At(0) != 0 || c.At(-1) != 0 || c.At(len(tt.points)+1) != 0 || c.At(100) != 0 {
				t.Error("a cut outside is not 0")
			}
			if c.Total() != tt.total || c.GreatestLoss() != tt.loss || c.NeverNegative() != tt.never {
				t.Errorf("total %d, loss %d, never negative %v", c.Total(), c.GreatestLoss(), c.NeverNegative())
			}
		})
	}
	const sizes, points = "1 to 11 cuts, one fewer than exhibits", "0 to 50"
	for _, tt := range []struct {
		name   string
		points []int
		want   placing.FieldError
	}{
		{"none", nil, placing.FieldError{Field: "cuts", Value: "0 cuts", Allowed: sizes, Err: placing.ErrRange}},
		{"twelve", append(eleven, 1), placing.FieldError{Field: "cuts", Value: "12 cuts", Allowed: sizes, Err: placing.ErrRange}},
		{"below 0", []int{1, -1}, placing.FieldError{Field: "cut 2", Value: "-1", Allowed: points, Err: placing.ErrRange}},
		{"above 50", []int{51, -1}, placing.FieldError{Field: "cut 1", Value: "51", Allowed: points, Err: placing.ErrRange}},
	} {
		t.Run(tt.name, func(t *testing.T) {
			c, err := placing.NewCuts(tt.points...)
			faulttest.Field(t, tt.name, err, tt.want)
			if c != (placing.Cuts{}) {
				t.Errorf("gives %v", c)
			}
		})
	}
}

// TestParseCuts holds what is read and which part of all else is wrong.
func TestParseCuts(t *testing.T) {
	const form = "1 to 11 cuts of 0 to 50 with hyphens between, as 2-8-2"
	for _, tt := range []struct {
		name, in, part string
		err            error
	}{
		{"one", "0", "", nil},
		{"three", "2-8-2", "", nil},
		{"eleven", "1-2-3-4-5-6-7-8-9-10-50", "", nil},
		{"empty", "", "", placing.ErrSyntax},
		{"hyphen behind", "2-", "", placing.ErrSyntax},
		{"leading zero", "2-08", "08", placing.ErrSyntax},
		{"three digits", "100", "100", placing.ErrSyntax},
		{"two kinds of separator", "2 -8,1", "8,1", placing.ErrSyntax},
		{"51", "2-51", "51", placing.ErrRange},
		{"twelve", "1-1-1-1-1-1-1-1-1-1-1-2", "2", placing.ErrRange},
	} {
		t.Run(tt.name, func(t *testing.T) {
			c, err := placing.ParseCuts(tt.in)
			if tt.err == nil {
				if err != nil || c.String() != tt.in || placing.MustParseCuts(tt.in) != c {
					t.Errorf("%v, %v", c, err)
				}
				return
			}
			faulttest.Parse(t, tt.name, err, placing.ParseError{Kind: "cuts", Input: tt.in, Part: tt.part, Allowed: form, Err: tt.err})
			if c != (placing.Cuts{}) {
				t.Errorf("gives %v", c)
			}
			wantPanic(t, func() { placing.MustParseCuts(tt.in) }, tt.err)
		})
	}
}

// TestTrapNeverNegative holds over all cuts of 0 to 20 for four exhibits that no
// card goes negative if and only if 3a + 4b + 3c <= 50, by scoring every card.
func TestTrapNeverNegative(t *testing.T) {
	order := placing.MustParseOrder("3-2-1-4")
	cards := slices.Collect(placing.Orders(4))
	for a := 0; a <= 20; a++ {
		for b := 0; b <= 20; b++ {
			for c := 0; c <= 20; c++ {
				cuts, err := placing.NewCuts(a, b, c)
				if err != nil {
					t.Fatal(err)
				}
				o, err := placing.NewOfficial(order, cuts)
				if err != nil {
					t.Fatal(err)
				}
				least := placing.FullScore
				for _, card := range cards {
					s, err := o.Score(card)
					if err != nil {
						t.Fatal(err)
					}
					least = min(least, s)
				}
				if exact := 3*a+4*b+3*c <= 50; cuts.NeverNegative() != exact || least >= 0 != exact || o.Worst() != least || cuts.GreatestLoss() != 50-least {
					t.Fatalf("%v: never negative %v, least score %d, worst %d", cuts, cuts.NeverNegative(), least, o.Worst())
				}
				if err := placing.LimitExact.Check(cuts); (err == nil) != cuts.NeverNegative() {
					t.Fatalf("%v: the exact limit says %v", cuts, err)
				}
			}
		}
	}
}

// TestTrapLimits holds which of the published limits lets negative scores
// through, over all three cuts of 0 to 50; a sample goes to 20, where the exact limit
// has long ended.
func TestTrapLimits(t *testing.T) {
	let := map[placing.CutLimit][]string{}
	kept := map[placing.CutLimit]int{}
	most := 20
	if testkit.Exhaustive() {
		most = 50
	}
	for a := 0; a <= most; a++ {
		for b := 0; b <= most; b++ {
			for c := 0; c <= most; c++ {
				cuts, err := placing.NewCuts(a, b, c)
				if err != nil {
					t.Fatal(err)
				}
				sum := a + b + c
				single := a <= 8 && b <= 8 && c <= 8
				middle := (sum != 15 || b <= 5) && (sum != 14 || b <= 8)
				for l, want := range map[placing.CutLimit]bool{
					placing.LimitSum: sum <= 15, placing.LimitNebraska: sum <= 15 && single, placing.LimitMaryland: sum <= 15 && middle,
					placing.LimitColorado: sum <= 15 && single && middle, placing.LimitExact: 3*a+4*b+3*c <= 50,
				} {
					if got := l.Check(cuts) == nil; got != want {
						t.Fatalf("%v keeps %v: %v, want %v", cuts, l, got, want)
					}
					if want {
						kept[l]++
						if !cuts.NeverNegative() {
							let[l] = append(let[l], cuts.String())
						}
					}
				}
			}
		}
	}
	if diff := cmp.Diff([]string{"0-12-1", "0-13-0", "1-12-0"}, let[placing.LimitMaryland]); diff != "" {
		t.Errorf("maryland lets through: (-want +got)\n%s", diff)
	}
	if len(let[placing.LimitColorado]) != 0 || len(let[placing.LimitExact]) != 0 {
		t.Errorf("colorado lets %v through, exact %v", let[placing.LimitColorado], let[placing.LimitExact])
	}
	if !slices.Contains(let[placing.LimitNebraska], "3-8-4") || !slices.Contains(let[placing.LimitSum], "0-15-0") {
		t.Errorf("nebraska lets %v through, sum %v", let[placing.LimitNebraska], let[placing.LimitSum])
	}
	if kept[placing.LimitSum] != 816 {
		t.Errorf("%d cuts keep the sum, want 816", kept[placing.LimitSum])
	}
}

// TestLimitErrors holds which part of a limit is said to be broken.
func TestLimitErrors(t *testing.T) {
	const florida, colorado, maryland, nebraska = " (published: ext-florida-4h334)", " (published: ext-colorado-1-619)", " (published: ext-maryland-contests)", " (published: ext-nebraska-g2092, ext-nebraska-cards)"
	for _, tt := range []struct {
		limit placing.CutLimit
		cuts  string
		want  placing.FieldError
	}{
		{placing.LimitSum, "5-5-6", placing.FieldError{Field: "sum of cuts", Value: "5-5-6", Allowed: "15 or less" + florida, Err: placing.ErrRange}},
		{placing.LimitColorado, "9-1-1", placing.FieldError{Field: "top cut", Value: "9-1-1", Allowed: "8 or less" + colorado, Err: placing.ErrRange}},
		{placing.LimitColorado, "1-9-1", placing.FieldError{Field: "middle cut", Value: "1-9-1", Allowed: "8 or less" + colorado, Err: placing.ErrRange}},
		{placing.LimitNebraska, "1-1-9", placing.FieldError{Field: "bottom cut", Value: "1-1-9", Allowed: "8 or less" + nebraska, Err: placing.ErrRange}},
		{placing.LimitColorado, "5-6-4", placing.FieldError{Field: "middle cut", Value: "5-6-4", Allowed: "5 or less at a sum of 15" + colorado, Err: placing.ErrRange}},
		{placing.LimitMaryland, "5-6-4", placing.FieldError{Field: "middle cut", Value: "5-6-4", Allowed: "5 or less at a sum of 15" + maryland, Err: placing.ErrRange}},
		{placing.LimitMaryland, "3-9-2", placing.FieldError{Field: "middle cut", Value: "3-9-2", Allowed: "8 or less at a sum of 14" + maryland, Err: placing.ErrRange}},
		{placing.LimitExact, "5-9-0", placing.FieldError{Field: "greatest loss", Value: "5-9-0", Allowed: "at most 50, so that no card scores below zero; it is 51 (derived)", Err: placing.ErrRange}},
		{placing.LimitSum, "2-2", placing.FieldError{Field: "cuts", Value: "2-2", Allowed: "three cuts" + florida, Err: placing.ErrRange}},
		{placing.LimitMaryland, "2-2-2-2", placing.FieldError{Field: "cuts", Value: "2-2-2-2", Allowed: "three cuts" + maryland, Err: placing.ErrRange}},
	} {
		t.Run(tt.limit.String()+" "+tt.cuts, func(t *testing.T) {
			faulttest.Field(t, tt.cuts, tt.limit.Check(placing.MustParseCuts(tt.cuts)), tt.want)
		})
	}
	for _, c := range []string{"50", "5-5", "1-1-1-1-1"} {
		if err := placing.LimitExact.Check(placing.MustParseCuts(c)); err != nil {
			t.Errorf("the exact limit refuses %s: %v", c, err)
		}
	}
	const names = "sum, colorado, maryland, nebraska, exact"
	faulttest.Field(t, "unset", placing.CutLimit(0).Check(placing.MustParseCuts("2-8-2")), placing.FieldError{Field: "limit", Allowed: names, Err: placing.ErrMissing})
	faulttest.Field(t, "unnamed", placing.CutLimit(6).Check(placing.MustParseCuts("2-8-2")), placing.FieldError{Field: "limit", Value: "limit on cuts(6)", Allowed: names, Err: placing.ErrUnknown})
	faulttest.Field(t, "no cuts", placing.LimitExact.Check(placing.Cuts{}), placing.FieldError{Field: "cuts", Allowed: "1 to 11 cuts", Err: placing.ErrMissing})
}

// TestLimits holds the limits, their names and where they come from.
func TestLimits(t *testing.T) {
	var got []string
	for l := range placing.CutLimits() {
		got = append(got, l.String()+" "+l.Cite().String())
		if len(l.Cite().Sources()) != len(strings.Fields(l.Cite().IDs)) {
			t.Errorf("%v: %v", l, l.Cite())
		}
	}
	want := []string{
		"sum published: ext-florida-4h334", "colorado published: ext-colorado-1-619", "maryland published: ext-maryland-contests",
		"nebraska published: ext-nebraska-g2092, ext-nebraska-cards", "exact derived",
	}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Errorf("(-want +got)\n%s", diff)
	}
	for range placing.CutLimits() {
		break
	}
	for _, l := range []placing.CutLimit{0, 6} {
		if l.Cite() != (cite.Citation{}) {
			t.Errorf("%v: %v", l, l.Cite())
		}
	}
}

// TestWords holds the words of every cut on every scale.
func TestWords(t *testing.T) {
	for _, tt := range []struct {
		w     placing.Words
		name  string
		cite  string
		bands []string // by cut, from 0; the last stands for all after it up to 50
		rest  string
	}{
		{placing.WordsColorado, "colorado", "published: ext-colorado-1-619", []string{"", "close, difficult", "close, difficult", "close, difficult", "moderate", "moderate", "very easy", "very easy", "very easy"}, ""},
		{placing.WordsNebraska, "nebraska", "published: ext-nebraska-cards", []string{"", "difficult", "difficult", "challenging but sortable", "challenging but sortable", "relatively easy", "relatively easy", "extremely easy", "extremely easy"}, ""},
		{placing.WordsReasons, "reasons", "common-practice: instr-reasons-scores", []string{"", "tough pair", "tough pair", "logical, recognizable differences", "logical, recognizable differences"}, "very easy, obvious faults"},
	} {
		t.Run(tt.name, func(t *testing.T) {
			if tt.w.String() != tt.name || tt.w.Cite().String() != tt.cite {
				t.Errorf("%v, %v", tt.w, tt.w.Cite())
			}
			for cut := -1; cut <= 52; cut++ {
				want := ""
				if cut >= 0 && cut < len(tt.bands) {
					want = tt.bands[cut]
				} else if cut >= 0 && cut <= 50 {
					want = tt.rest
				}
				if got, ok := tt.w.Cut(cut); got != want || ok != (want != "") {
					t.Errorf("a cut of %d is %q, %v; want %q", cut, got, ok, want)
				}
			}
		})
	}
	for _, w := range []placing.Words{0, 4} {
		if s, ok := w.Cut(3); s != "" || ok || w.Cite() != (cite.Citation{}) {
			t.Errorf("%v: %q, %v, %v", w, s, ok, w.Cite())
		}
	}
}
