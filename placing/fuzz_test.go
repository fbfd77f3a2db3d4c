package placing_test

import (
	"regexp"
	"strconv"
	"strings"
	"testing"
	"unicode/utf8"

	"example.com/ribface/internal/testkit/roundtrip"
	"example.com/ribface/placing"
	"pgregory.net/rapid"
)

var number = regexp.MustCompile(`^(0|[1-9][0-9]?)$`)

// numbersSlow reads numbers with one kind of separator between by a regular
// expression.
func numbersSlow(s string) ([]int, bool) {
	var out []int
	parts := strings.FieldsFunc(s, func(r rune) bool { return r == ' ' || r == '\t' })
	if at := strings.IndexAny(s, "-,\u2013\u2010\u2011"); at >= 0 {
		mark, _ := utf8.DecodeRuneInString(s[at:])
		parts = strings.Split(s, string(mark))
	} else if len(parts) == 0 {
		return nil, false
	}
	for _, part := range parts {
		part = strings.TrimSpace(part)
		if !number.MatchString(part) {
			return nil, false
		}
		n, err := strconv.Atoi(part)
		if err != nil {
			return nil, false
		}
		out = append(out, n)
	}
	return out, true
}

// orderSlow says whether the text is an order, and which.
func orderSlow(s string) ([]int, bool) {
	s = strings.TrimSpace(s)
	if regexp.MustCompile(`^[0-9]{2,9}$`).MatchString(s) {
		s = strings.Join(strings.Split(s, ""), "-")
	}
	list, ok := numbersSlow(s)
	if !ok || len(list) < 2 || len(list) > 12 {
		return nil, false
	}
	seen := map[int]bool{}
	for _, n := range list {
		if n < 1 || n > len(list) || seen[n] {
			return nil, false
		}
		seen[n] = true
	}
	return list, true
}

// cutsSlow says whether the text is cuts, and which.
func cutsSlow(s string) ([]int, bool) {
	list, ok := numbersSlow(strings.TrimSpace(s))
	if !ok || len(list) > 11 {
		return nil, false
	}
	for _, n := range list {
		if n > 50 {
			return nil, false
		}
	}
	return list, true
}

// compareSlow reads the text as an order and as cuts in both ways.
func compareSlow(s string) string {
	o, err := placing.ParseOrder(s)
	if list, ok := orderSlow(s); (err == nil) != ok {
		return "order: " + s
	} else if ok {
		if want, err := placing.NewOrder(list...); err != nil || o != want {
			return "order: " + s + " is " + o.String()
		}
	}
	c, err := placing.ParseCuts(s)
	if list, ok := cutsSlow(s); (err == nil) != ok {
		return "cuts: " + s
	} else if ok {
		if want, err := placing.NewCuts(list...); err != nil || c != want {
			return "cuts: " + s + " are " + c.String()
		}
	}
	return ""
}

// FuzzPlacingText compares the parsers of orders and cuts with slow ones.
func FuzzPlacingText(f *testing.F) {
	for _, s := range []string{"3-2-1-4", "2-8-2", "1-1", "0", "01-2", "1-2-3-4-5-6-7-8-9-10-11-12-13", "51", "", "-", "1 - 2", "3124", "3, 1,2 ,4", " 3 1\t2  4 ", "3–1–2–4", "3-1,2-4", "123456789", "1234567890", "0"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		if bad := compareSlow(s); bad != "" {
			t.Error(bad)
		}
	})
}

// TestPlacingTextAgainstSlow compares the parsers over text that is nearly right.
func TestPlacingTextAgainstSlow(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := rapid.StringMatching(`[0-9]{0,2}(-[0-9]{0,2}){0,12}`).Draw(t, "text")
		if between := rapid.SampledFrom([]string{"-", " - ", ",", ", ", " ", "\t", "\u2013", ""}).Draw(t, "between"); between != "-" {
			s = strings.ReplaceAll(s, "-", between)
		}
		if n := rapid.IntRange(1, 12).Draw(t, "n"); n > 1 && rapid.Bool().Draw(t, "right") {
			s = anyOrder(t, n, "order").String()
		}
		if bad := compareSlow(s); bad != "" {
			t.Fatal(bad)
		}
	})
}

// FuzzScore lets the fuzzer choose the placings of propScore and propMetric.
func FuzzScore(f *testing.F) {
	f.Fuzz(rapid.MakeFuzz(func(t *rapid.T) {
		propScore(t)
		propMetric(t)
	}))
}

func FuzzOrder(f *testing.F) {
	roundtrip.Fuzz(f, placing.ParseOrder, placing.MustParseOrder("2-1"), "3-2-1-4", "1-1", "1", "12-11-10-9-8-7-6-5-4-3-2-1", "01-2")
}

func FuzzCuts(f *testing.F) {
	roundtrip.Fuzz(f, placing.ParseCuts, placing.MustParseCuts("1"), "2-8-2", "50", "51", "2-", "1-1-1-1-1-1-1-1-1-1-1-1")
}

func FuzzOfficial(f *testing.F) {
	o, err := placing.NewOfficial(placing.MustParseOrder("2-1"), placing.MustParseCuts("3"))
	if err != nil {
		f.Fatal(err)
	}
	roundtrip.Fuzz(f, placing.ParseOfficial, o, "3-2-1-4 cuts 2-8-2", "3-2-1-4 cuts 2-8", "1-2 cuts 0", "1-2  cuts 0", " cuts ")
}

func FuzzRanking(f *testing.F) {
	roundtrip.Fuzz(f, placing.ParseRanking, ranking("2 1"), "1 2", "3 1=2 4", "1=2=3", "01 2", "1  2", "1= 2", "12 11 10 9 8 7 6 5 4 3 2 1", "1 2 2", "3-1=2-4", "3,1=2,4", "3124")
}

func FuzzMark(f *testing.F) {
	roundtrip.Fuzz(f, placing.ParseMark, placing.Unreadable, "blank", "double-marked")
}

func FuzzCard(f *testing.F) {
	roundtrip.Fuzz(f, placing.ParseCard, placing.Card{Mark: placing.Unreadable}, "3-2-1-4", "3214", "blank", "Double Marked", "1-1")
}
