package placing_test

import (
	"encoding/json"
	"testing"

	"example.com/ribface/internal/testkit/roundtrip"
	"example.com/ribface/placing"
	"github.com/google/go-cmp/cmp"
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
		Aliases: map[string]placing.Order{
			"3214": placing.MustParseOrder("3-2-1-4"), "3 2 1 4": placing.MustParseOrder("3-2-1-4"), "3,2,1,4": placing.MustParseOrder("3-2-1-4"),
			" 3, 2,1 , 4\t": placing.MustParseOrder("3-2-1-4"), "3 - 2 - 1 - 4": placing.MustParseOrder("3-2-1-4"), "3\t2\t1\t4": placing.MustParseOrder("3-2-1-4"),
			"3\u20132\u20131\u20134": placing.MustParseOrder("3-2-1-4"), "987654321": placing.MustParseOrder("9-8-7-6-5-4-3-2-1"), "12": placing.MustParseOrder("1-2"),
		},
		// Ten exhibits have one with two digits; two kinds of separator are a slip.
		Bad: []string{"1", "1-1", "1-3", "0-1", "01-2", "1-2-", "1--2", "10", "12345678910", "1-2,3", "1;2", "1-2 3", "1.2", "unset", "1-2-3-4-5-6-7-8-9-10-11-12-13"},
	})
	var o placing.Order
	if err := o.Scan(int64(4231)); err != nil || o != placing.MustParseOrder("4-2-3-1") {
		t.Errorf("a column of digits gives %v, %v", o, err)
	}
	roundtrip.Run(t, "Card", placing.Card{Mark: placing.Blank}, placing.ParseCard, roundtrip.Case[placing.Card]{
		Texts:   map[string]placing.Card{"3-2-1-4": {Order: placing.MustParseOrder("3-2-1-4")}, "double-marked": {Mark: placing.DoubleMarked}},
		Aliases: map[string]placing.Card{"3214": {Order: placing.MustParseOrder("3-2-1-4")}, "Double marked": {Mark: placing.DoubleMarked}},
		Bad:     []string{"smudged", "1", "unset"},
		Invalid: []placing.Card{{Mark: 9}, {Order: placing.MustParseOrder("2-1"), Mark: placing.Blank}},
	})
	roundtrip.Run(t, "Cuts", placing.MustParseCuts("1"), placing.ParseCuts, roundtrip.Case[placing.Cuts]{
		Texts: map[string]placing.Cuts{
			"2-8-2": placing.MustParseCuts("2-8-2"), "0": placing.MustParseCuts("0"), "50-0": placing.MustParseCuts("50-0"),
		},
		Aliases: map[string]placing.Cuts{
			"2 8 2": placing.MustParseCuts("2-8-2"), "2,8,2": placing.MustParseCuts("2-8-2"), " 2, 8 , 2 ": placing.MustParseCuts("2-8-2"), "2\u20118\u20112": placing.MustParseCuts("2-8-2"),
		},
		// 282 might be 28-2 as well.
		Bad: []string{"51", "282", "-1", "2--2", "2-8-2-", "2-8 2", "2-8,2", "unset", "1-1-1-1-1-1-1-1-1-1-1-1", "02"},
	})
	roundtrip.Run(t, "Official", mustOfficial(t, "2-1", "3"), placing.ParseOfficial, roundtrip.Case[placing.Official]{
		Texts: map[string]placing.Official{
			"3-2-1-4 cuts 2-8-2": mustOfficial(t, "3-2-1-4", "2-8-2"), "1-2 cuts 0": mustOfficial(t, "1-2", "0"),
		},
		Aliases: map[string]placing.Official{
			"3214 cuts 282": mustOfficial(t, "3-2-1-4", "2-8-2"), "3 2 1 4, Cuts: 2 8 2": mustOfficial(t, "3-2-1-4", "2-8-2"), "3214cuts2-8-2": mustOfficial(t, "3-2-1-4", "2-8-2"),
			"21 cuts 12": mustOfficial(t, "2-1", "12"), "321 cuts 12": mustOfficial(t, "3-2-1", "1-2"),
		},
		Bad: []string{"3-2-1-4", "3-2-1-4 cuts", "3-2-1-4 cuts 2-8", "3-2-1 cuts 2-8-2", "3-2-1-5 cuts 2-8-2", "3-2-1-4 cuts 2-8-51", "3214 cuts 2810", "3214 2-8-2", "cuts 2", "unset"},
	})
	roundtrip.Run(t, "Ranking", ranking("2 1"), placing.ParseRanking, roundtrip.Case[placing.Ranking]{
		Texts: map[string]placing.Ranking{"3 1=2 4": ranking("3 1=2 4"), "1=2": ranking("1=2"), "12 11 10 9 8 7 6 5 4 3 2 1": ranking("12 11 10 9 8 7 6 5 4 3 2 1")},
		Aliases: map[string]placing.Ranking{
			" 3  1 = 2\t4 ": ranking("3 1=2 4"), "3 2=1 4": ranking("3 1=2 4"), "3,1=2, 4": ranking("3 1=2 4"), "3-1=2-4": ranking("3 1=2 4"), "3 \u2013 1 = 2 \u2013 4": ranking("3 1=2 4"),
			"3124": ranking("3 1 2 4"), "3-1-2-4": ranking("3 1 2 4"),
		},
		Bad: []string{"1", "1 1", "1 3", "0 1", "01 2", "1=", "=1 2", "1==2", "1-2,3", "31=24", "1 2=3-4", "+1 2", "unset"},
	})
	roundtrip.Run(t, "CutLimit", placing.LimitExact, roundtrip.Read[placing.CutLimit], roundtrip.Case[placing.CutLimit]{
		Texts: map[string]placing.CutLimit{
			"sum": placing.LimitSum, "colorado": placing.LimitColorado, "maryland": placing.LimitMaryland,
			"nebraska": placing.LimitNebraska, "exact": placing.LimitExact,
		},
		Aliases: map[string]placing.CutLimit{"Sum": placing.LimitSum},
		Bad:     []string{"unset", "summed", "15"}, Invalid: []placing.CutLimit{placing.LimitExact + 1},
	})
	roundtrip.Run(t, "Words", placing.WordsReasons, roundtrip.Read[placing.Words], roundtrip.Case[placing.Words]{
		Texts:   map[string]placing.Words{"colorado": placing.WordsColorado, "nebraska": placing.WordsNebraska, "reasons": placing.WordsReasons},
		Aliases: map[string]placing.Words{"Reasons": placing.WordsReasons},
		Bad:     []string{"unset", "maryland"}, Invalid: []placing.Words{placing.WordsReasons + 1},
	})
	roundtrip.Run(t, "Mark", placing.Unreadable, placing.ParseMark, roundtrip.Case[placing.Mark]{
		Texts:   map[string]placing.Mark{"blank": placing.Blank, "double-marked": placing.DoubleMarked, "unreadable": placing.Unreadable},
		Aliases: map[string]placing.Mark{"Blank": placing.Blank, "double  Marked": placing.DoubleMarked},
		Bad:     []string{"unset", "none"}, Invalid: []placing.Mark{placing.Unreadable + 1},
	})
	roundtrip.Run(t, "Penalty", placing.Refused, roundtrip.Read[placing.Penalty], roundtrip.Case[placing.Penalty]{
		Texts: map[string]placing.Penalty{"zero points": placing.ZeroPoints, "lowest score": placing.LowestScore, "refused": placing.Refused},
		Bad:   []string{"unset", "zero", "lowest"}, Invalid: []placing.Penalty{placing.Refused + 1},
	})
}

func TestCompositesThroughJSON(t *testing.T) {
	roundtrip.Composite(t, placing.Card{Order: placing.MustParseOrder("3-2-1-4")}, `"3-2-1-4"`)
	roundtrip.Composite(t, placing.Card{Mark: placing.DoubleMarked}, `"double-marked"`)
	roundtrip.Composite(t, placing.CardRules{Double: placing.Refused, FloorAtZero: true}, `{"double":"refused","floor_at_zero":true}`)
	roundtrip.Composite(t, placing.Fault{Upper: 3, Lower: 4, Points: 12}, `{"upper":3,"lower":4,"points":12}`)
}

// TestPanelThroughJSON holds that a panel is its votes, and what is told of bad ones.
func TestPanelThroughJSON(t *testing.T) {
	p, err := placing.NewPanel(placing.Vote{Order: placing.MustParseOrder("2-1-3"), Cuts: placing.MustParseCuts("2-4")}, placing.Vote{Order: placing.MustParseOrder("1-2-3"), Count: 3})
	if err != nil {
		t.Fatal(err)
	}
	for want, p := range map[string]placing.Panel{`[{"order":"2-1-3","cuts":"2-4","count":1},{"order":"1-2-3","count":3}]`: p, `[]`: {}} {
		b, err := json.Marshal(p)
		if string(b) != want || err != nil {
			t.Errorf("%s, %v; want %s", b, err, want)
		}
		back := placing.Panel{}
		if err := json.Unmarshal(b, &back); err != nil || !back.Equal(p) || back.Officials() != p.Officials() {
			t.Errorf("%s comes back as %v, %v", b, back, err)
		}
	}
	for in, want := range map[string][]string{
		`null`: nil,
		`{}`:   {`: list: {}: bad syntax; allowed: text in quotes, or a number where the field is one`},
		`[{"order":"21"},{"order":"213"},{"cut":"1"}]`: {`[2].cut: name: cut: unknown; allowed: order, cuts, count`},
		`[{"order":"21"},{"order":"213"},{}]`:          {`[1].order: vote 2: order: 2-1-3: out of range; allowed: an order of 2 exhibits`, `[2].order: vote 3: order: missing; allowed: an order of 2 to 12 exhibits`},
	} {
		back := p
		var got []string
		for _, f := range placing.Problems(json.Unmarshal([]byte(in), &back)) {
			got = append(got, f.Path+": "+f.Error())
		}
		if diff := cmp.Diff(want, got); diff != "" || !back.Equal(p) {
			t.Errorf("%s: panel %v, problems (-want +got):\n%s", in, back, diff)
		}
	}
}

func FuzzParseOfficial(f *testing.F) {
	f.Add("3-2-1-4 cuts 2-8-2")
	f.Add("2-1 cuts 0")
	f.Add("1-2-3 cuts 2")
	f.Add("3214 Cuts: 282")
	f.Add("3 2 1 4, cuts 2 8 2")
	f.Fuzz(func(t *testing.T, s string) {
		o, err := placing.ParseOfficial(s)
		if err != nil {
			if o != (placing.Official{}) {
				t.Fatalf("ParseOfficial(%q) gives %v with an error", s, o)
			}
			return
		}
		if again, err := placing.ParseOfficial(o.String()); err != nil || again != o {
			t.Fatalf("ParseOfficial(%q) prints as %q, which gives %v, %v", s, o, again, err)
		}
		b, _ := json.Marshal(o)
		var again placing.Official
		if err := json.Unmarshal(b, &again); err != nil || again != o {
			t.Fatalf("%s gives %v, %v", b, again, err)
		}
	})
}
