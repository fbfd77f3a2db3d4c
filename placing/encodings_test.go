package placing_test

import (
	"encoding/json"
	"testing"

	"example.com/ribface/internal/roundtrip"
	"example.com/ribface/placing"
)

func mustOfficial(t testing.TB, order, cuts string) placing.Official {
	t.Helper()
	o, err := placing.NewOfficial(placing.MustParseOrder(order), placing.MustParseCuts(cuts))
	if err != nil {
		t.Fatal(err)
	}
	return o
}

func TestEncodings(t *testing.T) {
	roundtrip.Run(t, "Order", placing.MustParseOrder("2-1"), placing.ParseOrder, roundtrip.Case[placing.Order]{
		Texts: map[string]placing.Order{
			"3-2-1-4":                    placing.MustParseOrder("3-2-1-4"),
			"12-11-10-9-8-7-6-5-4-3-2-1": placing.MustParseOrder("12-11-10-9-8-7-6-5-4-3-2-1"),
		},
		Bad: []string{"1", "1-1", "1-3", "0-1", "01-2", "1-2-", "1 - 2", "unset", "1-2-3-4-5-6-7-8-9-10-11-12-13"},
	})
	roundtrip.Run(t, "Cuts", placing.MustParseCuts("1"), placing.ParseCuts, roundtrip.Case[placing.Cuts]{
		Texts: map[string]placing.Cuts{
			"2-8-2": placing.MustParseCuts("2-8-2"), "0": placing.MustParseCuts("0"), "50-0": placing.MustParseCuts("50-0"),
		},
		Bad: []string{"51", "-1", "2--2", "2-8-2-", "unset", "1-1-1-1-1-1-1-1-1-1-1-1", "02"},
	})
	roundtrip.Run(t, "Official", mustOfficial(t, "2-1", "3"), placing.ParseOfficial, roundtrip.Case[placing.Official]{
		Texts: map[string]placing.Official{
			"3-2-1-4 cuts 2-8-2": mustOfficial(t, "3-2-1-4", "2-8-2"), "1-2 cuts 0": mustOfficial(t, "1-2", "0"),
		},
		Bad: []string{"3-2-1-4", "3-2-1-4 cuts", "3-2-1-4 cuts 2-8", "3-2-1 cuts 2-8-2", "3-2-1-5 cuts 2-8-2", "3-2-1-4 cuts 2-8-51", "3-2-1-4  cuts 2-8-2", "unset"},
	})
	roundtrip.Run(t, "Limit", placing.LimitExact, placing.ParseLimit, roundtrip.Case[placing.Limit]{
		Texts: map[string]placing.Limit{
			"sum": placing.LimitSum, "colorado": placing.LimitColorado, "maryland": placing.LimitMaryland,
			"nebraska": placing.LimitNebraska, "exact": placing.LimitExact,
		},
		Bad: []string{"unset", "Sum", "15"}, Invalid: []placing.Limit{placing.LimitExact + 1},
	})
	roundtrip.Run(t, "Words", placing.WordsReasons, placing.ParseWords, roundtrip.Case[placing.Words]{
		Texts: map[string]placing.Words{"colorado": placing.WordsColorado, "nebraska": placing.WordsNebraska, "reasons": placing.WordsReasons},
		Bad:   []string{"unset", "Reasons", "maryland"}, Invalid: []placing.Words{placing.WordsReasons + 1},
	})
	roundtrip.Run(t, "Mark", placing.Unreadable, placing.ParseMark, roundtrip.Case[placing.Mark]{
		Texts: map[string]placing.Mark{"blank": placing.Blank, "double-marked": placing.DoubleMarked, "unreadable": placing.Unreadable},
		Bad:   []string{"unset", "Blank", "none"}, Invalid: []placing.Mark{placing.Unreadable + 1},
	})
	roundtrip.Run(t, "Penalty", placing.Refused, placing.ParsePenalty, roundtrip.Case[placing.Penalty]{
		Texts: map[string]placing.Penalty{"zero points": placing.ZeroPoints, "lowest score": placing.LowestScore, "refused": placing.Refused},
		Bad:   []string{"unset", "zero", "lowest"}, Invalid: []placing.Penalty{placing.Refused + 1},
	})
}

func TestCompositesThroughJSON(t *testing.T) {
	roundtrip.Composite(t, placing.Card{Order: placing.MustParseOrder("3-2-1-4")}, `{"Order":"3-2-1-4","Mark":""}`)
	roundtrip.Composite(t, placing.Card{Mark: placing.DoubleMarked}, `{"Order":"","Mark":"double-marked"}`)
	roundtrip.Composite(t, placing.CardRules{Double: placing.Refused, FloorAtZero: true}, `{"Blank":"","Double":"refused","Unreadable":"","FloorAtZero":true}`)
	roundtrip.Composite(t, placing.Fault{Upper: 3, Lower: 4, Points: 12}, `{"Upper":3,"Lower":4,"Points":12}`)
}

func FuzzParseOfficial(f *testing.F) {
	f.Add("3-2-1-4 cuts 2-8-2")
	f.Add("2-1 cuts 0")
	f.Add("1-2-3 cuts 2")
	f.Fuzz(func(t *testing.T, s string) {
		o, err := placing.ParseOfficial(s)
		if err != nil {
			if o != (placing.Official{}) {
				t.Fatalf("ParseOfficial(%q) gives %v with an error", s, o)
			}
			return
		}
		if o.String() != s {
			t.Fatalf("ParseOfficial(%q) prints as %q", s, o)
		}
		b, _ := json.Marshal(o)
		var again placing.Official
		if err := json.Unmarshal(b, &again); err != nil || again != o {
			t.Fatalf("%s gives %v, %v", b, again, err)
		}
	})
}
