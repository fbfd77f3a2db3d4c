package contest_test

import (
	"maps"
	"slices"
	"strconv"
	"strings"
	"testing"

	"example.com/ribface/grade"
	"example.com/ribface/internal/testkit/faulttest"
	"example.com/ribface/maturity"
	"example.com/ribface/placing"
	"example.com/ribface/placing/contest"
	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

func TestFeedback(t *testing.T) {
	c := spring(t)
	ada := contest.Member{ID: "7", Team: "North Fork"}
	placings := []contest.PlacingCard{
		{Class: "ribs", Member: ada, Card: placing.Card{Mark: placing.DoubleMarked}},
		{Class: "beef", Member: contest.Member{ID: "7"}, Card: placing.Card{Order: placing.MustParseOrder("4-2-3-1")}},
	}
	estimates := []contest.Estimate{
		{Class: "coolers", Exhibit: 2, Member: ada, Facts: contest.Facts{Marks: contest.Marks{Quality: placing.Blank, Yield: placing.Unreadable}}},
		{Class: "coolers", Exhibit: 1, Member: ada, Facts: contest.Facts{
			Quality: grade.Select.Part(grade.Low),
			Fat:     grade.Inches(0.5), Ribeye: grade.SquareInches(12.9), KPH: grade.Percent(2.5),
			Yield: yield(t, "2.7"),
		}},
	}
	hand := []contest.HandScore{
		{Component: "examination", Member: ada, Score: pts(48)},
		{Component: "reasons", Class: "ribs", Member: ada},
		{Component: "reasons", Class: "beef", Member: ada, Score: pts(41)},
	}
	f, err := c.Feedback("7", placings, estimates, hand)
	faulttest.Text(t, err, "")
	// The key: 2.5 + 1.5 + 0.3 + 2.508 - 3.808 = 3.000. The card: fat 0.1 in less
	// is -0.25, KPH 1 percent more +0.2, ribeye 1 sq in more -0.32, together -0.37;
	// 2.7 is 0.3 under the key, so arithmetic and rounding put back 0.07.
	want := strings.TrimPrefix(`
member 7: 127 of 250 points on these cards
class beef: placed 4-2-3-1, official 3-2-1-4 cuts 2-8-2: 24
  3 goes over 2: reversed, costs 2
  3 goes over 4: reversed, costs 12
  2 goes over 4: reversed, costs 10
  1 goes over 4: reversed, costs 2
class ribs: double-marked, 0; official 1-2-3-4 cuts 5-5-5
class coolers, exhibit 1: quality Low Select, official Low Choice: 2 lines too low, loses 4
class coolers, exhibit 2: quality blank, official High Select: loses 10
class coolers, exhibit 1: yield 2.7, official 3: 3 steps too low, loses 3
  ribeye -0.32
  fat -0.25
  KPH +0.2
  arithmetic and rounding +0.07
class coolers, exhibit 2: yield unreadable, official 3.1: loses 10
reasons: class "beef": 41 of 50
examination: 48 of 60
`, "\n")
	want = strings.Replace(want, "127 of 250", "126 of 250", 1)
	if d := cmp.Diff(want, f.String()); d != "" {
		t.Errorf("(-want +got):\n%s", d)
	}
	if f.Scored != pts(24+0+6+0+7+0+41+48) || f.Of != pts(50+50+10+10+10+10+50+60) {
		t.Errorf("scored %v of %v", f.Scored, f.Of)
	}
	if f.Member != ada {
		t.Errorf("member %+v: the team is on one of the cards", f.Member)
	}
	if d := cmp.Diff([]placing.Fault{{Upper: 3, Lower: 2, Points: 2}, {Upper: 3, Lower: 4, Points: 12}, {Upper: 2, Lower: 4, Points: 10}, {Upper: 1, Lower: 4, Points: 2}}, f.Placings[0].Faults); d != "" {
		t.Errorf("faults (-want +got):\n%s", d)
	}
	if q := f.Quality[0]; q.Off != -2 || q.Lost != pts(4) || q.Key != grade.Choice.Part(grade.Low) {
		t.Errorf("quality: %+v", q)
	}
	if y := f.Yield[0]; y.Off != -3 || y.Lost != pts(3) || y.Key != grade.YieldUnits(3*grade.OneGrade) || !y.Split.IsValid() || y.Split.Error != grade.Grades(-0.3) {
		t.Errorf("yield: %+v", y)
	}

	// Nothing missed: one line of heading, one for the placing.
	right, err := c.Feedback("8", []contest.PlacingCard{{Class: "beef", Member: contest.Member{ID: "8"}, Card: placing.Card{Order: placing.MustParseOrder("3-2-1-4")}}},
		[]contest.Estimate{{Class: "coolers", Exhibit: 2, Member: contest.Member{ID: "8"}, Facts: contest.Facts{Quality: grade.Select.Part(grade.High), Yield: yield(t, "3.1")}},
			{Class: "coolers", Exhibit: 1, Member: contest.Member{ID: "8"}, Facts: contest.Facts{Quality: grade.Choice.Part(grade.Average), Yield: yield(t, "3.01")}}}, nil)
	faulttest.Text(t, err, "")
	if d := cmp.Diff("member 8: 88 of 90 points on these cards\nclass beef: placed 3-2-1-4, official 3-2-1-4 cuts 2-8-2: 50\n"+
		"class coolers, exhibit 1: quality Average Choice, official Low Choice: 1 line too good, loses 2\n"+
		"class coolers, exhibit 1: yield 3.01, official 3: same step, loses 0\n", right.String()); d != "" {
		t.Errorf("(-want +got):\n%s", d)
	}
	none, err := c.Feedback("8", nil, nil, nil)
	if err != nil || none.String() != "member 8: 0 of 0 points on these cards\n" {
		t.Errorf("no cards: %q, %v", none.String(), err)
	}
	empty, err := c.Feedback("8", []contest.PlacingCard{{Class: "beef", Member: contest.Member{ID: "8"}}}, nil, nil)
	if err != nil || empty.String() != "member 8: 0 of 50 points on these cards\nclass beef: blank, 0; official 3-2-1-4 cuts 2-8-2\n" {
		t.Errorf("empty card: %q, %v", empty.String(), err)
	}

	for _, bad := range []struct {
		name      string
		placings  []contest.PlacingCard
		estimates []contest.Estimate
		hand      []contest.HandScore
		want      string
	}{
		{"another's placing", []contest.PlacingCard{{Class: "beef", Member: contest.Member{ID: "9"}}}, nil, nil, `member "9": member: "9": unknown; allowed: "7" alone`},
		{"another's estimate", nil, []contest.Estimate{{Class: "coolers", Exhibit: 1, Member: contest.Member{ID: "9"}, Facts: contest.Facts{Yield: grade.Grades(0)}}}, nil, `member "9": member: "9": unknown; allowed: "7" alone`},
		{"another's score", nil, nil, []contest.HandScore{{Component: "examination", Member: contest.Member{ID: "9"}, Score: pts(1)}}, `member "9": member: "9": unknown; allowed: "7" alone`},
		{"placing twice", append(placings[:1:1], placings[0]), nil, nil, `member "7": placings: class "ribs": repeated; allowed: one card for each class`},
		{"bad class", []contest.PlacingCard{{Class: "veal", Member: ada}}, nil, nil, `member "7": class: "veal": unknown; allowed: a class of the contest`},
		{"bad exhibit", nil, []contest.Estimate{{Class: "coolers", Member: ada}}, nil, `member "7": class "coolers": exhibit: 0: unknown; allowed: an exhibit with official facts`},
		{"bad component", nil, nil, []contest.HandScore{{Component: "x", Member: ada}}, `member "7": component: "x": unknown; allowed: a component that is scored by hand`},
		{"bad measure", nil, []contest.Estimate{{Class: "coolers", Exhibit: 1, Member: ada, Facts: contest.Facts{Fat: grade.Inches(4), Yield: yield(t, "3")}}}, nil,
			`member "7": class "coolers": exhibit 1: fat: 4 in: out of range; allowed: 0 in to 3 in`},
	} {
		t.Run(bad.name, func(t *testing.T) {
			_, err := c.Feedback("7", bad.placings, bad.estimates, bad.hand)
			faulttest.Text(t, err, bad.want)
		})
	}
}

// TestFeedbackInOrder: what was missed is told in the order of the classes of the
// contest, and in a class by exhibit, in whatever order the cards come.
func TestFeedbackInOrder(t *testing.T) {
	_, rules, _, _ := springKey(t)
	classes := []string{"rail", "cooler"}
	var key []contest.OfficialFacts
	var cards []contest.Estimate
	for _, name := range []string{"cooler", "rail"} {
		for _, n := range []int{2, 1} {
			exhibit := n
			if name == "rail" {
				exhibit += 2
			}
			key = append(key, contest.OfficialFacts{Class: name, Exhibit: exhibit, Facts: contest.Facts{Quality: grade.Choice.Part(grade.Low), Yield: grade.Grades(3)}})
			cards = append(cards, contest.Estimate{Class: name, Exhibit: exhibit, Member: contest.Member{ID: "7"}, Facts: contest.Facts{Quality: grade.Choice.Part(grade.High), Yield: grade.Grades(3.1)}})
		}
	}
	c, err := contest.NewContest("", contest.Format{Components: []contest.Component{
		{Name: "quality", Kind: contest.KindQuality, Classes: classes, Value: pts(40)},
		{Name: "yield", Kind: contest.KindYield, Classes: classes, Value: pts(40)},
	}}, rules, nil, key)
	faulttest.Text(t, err, "")
	f, err := c.Feedback("7", nil, cards, nil)
	faulttest.Text(t, err, "")
	var quality, yields []string
	for i := range f.Quality {
		quality = append(quality, f.Quality[i].Class+strconv.Itoa(f.Quality[i].Exhibit))
		yields = append(yields, f.Yield[i].Class+strconv.Itoa(f.Yield[i].Exhibit))
	}
	want := []string{"rail3", "rail4", "cooler1", "cooler2"}
	if !slices.Equal(quality, want) || !slices.Equal(yields, want) {
		t.Errorf("quality %v, yield %v, want %v", quality, yields, want)
	}
}

func TestSplitYield(t *testing.T) {
	key := contest.Facts{Fat: grade.Inches(0.6), Ribeye: grade.SquareInches(11.9), KPH: grade.Percent(1.5), Weight: grade.Pounds(660)}
	s, err := contest.SplitYield(key, contest.Facts{Weight: grade.Pounds(760)})
	// 100 lb too much is 0.38 of a grade; neither side has a yield of its own.
	if s.Error != grade.Grades(0.38) || s.Weight != grade.Grades(0.38) || s.Rest != grade.Grades(0) || err != nil {
		t.Errorf("got %+v, %v", s, err)
	}
	var names []string
	for name, of := range s.Parts() {
		names = append(names, name+" "+of.String())
	}
	if d := cmp.Diff([]string{"weight 0.38", "fat 0", "KPH 0", "ribeye 0", "arithmetic and rounding 0"}, names); d != "" {
		t.Errorf("(-want +got):\n%s", d)
	}
	for name, of := range s.Parts() {
		if name != "weight" || of != s.Weight {
			t.Errorf("the first part is %s, %v", name, of)
		}
		break
	}
	rounded := key
	rounded.Yield = yield(t, "3.1")
	if s, _ := contest.SplitYield(rounded, contest.Facts{KPH: grade.Percent(1)}); s.Error != grade.Grades(-0.2) || s.KPH != grade.Grades(-0.1) || s.Rest != grade.Grades(-0.1) {
		t.Errorf("official yield of its own: %+v", s)
	}
	for _, none := range []struct{ key, card contest.Facts }{{key, contest.Facts{Yield: grade.Grades(0)}}, {contest.Facts{}, key}} {
		if s, err := contest.SplitYield(none.key, none.card); err != nil || s.IsValid() || len(maps.Collect(s.Parts())) > 0 {
			t.Errorf("split without measures: %+v, %v", s, err)
		}
	}
	for _, only := range []contest.Facts{{Fat: key.Fat}, {Ribeye: key.Ribeye}, {KPH: key.KPH}, {Weight: key.Weight}} {
		if s, _ := contest.SplitYield(key, only); s.Error != grade.Grades(0) {
			t.Errorf("one measure is enough: %+v", s)
		}
	}
	// A preliminary grade of 3.75 is 0.7 in of fat: 0.1 in too much is 0.25.
	if s, err := contest.SplitYield(key, contest.Facts{Preliminary: grade.ShortcutYieldUnits(375_000_000)}); err != nil || s.Fat != grade.Grades(0.25) || s.Error != s.Fat {
		t.Errorf("preliminary: %+v, %v", s, err)
	}
	// The fat that is given counts before it; in the key it stands for the fat too.
	pre := key
	pre.Fat, pre.Marks.Fat, pre.Preliminary = grade.Thickness{}, placing.Blank, grade.ShortcutYieldUnits(350_000_000)
	both := contest.Facts{Fat: grade.Inches(0.8), Preliminary: grade.ShortcutYieldUnits(375_000_000)}
	if s, err := contest.SplitYield(pre, both); err != nil || s.Fat != grade.Grades(0.5) || s.Rest != grade.Grades(0) {
		t.Errorf("fat before the preliminary grade: %+v, %v", s, err)
	}
	pre.Preliminary = grade.ShortcutYieldUnits(199_999_999)
	_, err = contest.SplitYield(pre, both)
	faulttest.Text(t, err, "official facts: preliminary yield grade: 1.99999999: out of range; allowed: 2 to 9.5")
	_, err = contest.SplitYield(key, pre)
	faulttest.Text(t, err, "preliminary yield grade: 1.99999999: out of range; allowed: 2 to 9.5")
	far := key
	far.Fat = grade.Inches(4)
	_, err = contest.SplitYield(far, key)
	faulttest.Text(t, err, "official facts: fat: 4 in: out of range; allowed: 0 in to 3 in")
	_, err = contest.SplitYield(key, far)
	faulttest.Text(t, err, "fat: 4 in: out of range; allowed: 0 in to 3 in")
}

// TestSplitAddsUp: for any carcass and any estimate the parts add up to the error,
// and each part is the coefficient of the equation times the error of the measure.
func TestSplitAddsUp(t *testing.T) {
	facts := rapid.Custom(func(t *rapid.T) contest.Facts {
		return contest.Facts{
			Fat:    grade.ThicknessUnits(int64(rapid.IntRange(0, 30_000).Draw(t, "fat"))),
			Ribeye: grade.AreaUnits(int64(rapid.IntRange(10_000, 250_000).Draw(t, "ribeye"))),
			KPH:    grade.ShareUnits(int64(rapid.IntRange(0, 100_000).Draw(t, "kph"))),
			Weight: grade.WeightUnits(int64(rapid.IntRange(1_000_000, 18_000_000).Draw(t, "weight"))),
			Yield:  grade.YieldUnits(int64(rapid.IntRange(-512_000_000, 1_852_000_000).Draw(t, "yield"))),
		}
	})
	rapid.Check(t, func(t *rapid.T) {
		key, card := facts.Draw(t, "key"), facts.Draw(t, "card")
		s, err := contest.SplitYield(key, card)
		if err != nil {
			t.Fatal(err)
		}
		sum := grade.Grades(0)
		for _, of := range s.Parts() {
			sum = sum.Add(of)
		}
		if sum != s.Error || s.Error != card.Yield.Sub(key.Yield) {
			t.Fatalf("parts add up to %v, error %v", sum, s.Error)
		}
		if s.Fat.Units() != 25_000*(card.Fat.Units()-key.Fat.Units()) || s.KPH.Units() != 2_000*(card.KPH.Units()-key.KPH.Units()) ||
			s.Weight.Units() != 38*(card.Weight.Units()-key.Weight.Units()) || s.Ribeye.Units() != -3_200*(card.Ribeye.Units()-key.Ribeye.Units()) {
			t.Fatalf("parts %+v", s)
		}
	})
}

func TestFactsOf(t *testing.T) {
	a, err := grade.Current.Assess(grade.Carcass{
		Sex: grade.Steer, Maturity: maturity.Evidence{Skeletal: maturity.A.At(60), Lean: maturity.A.At(60)}, Marbling: grade.Small.At(40),
		Measures:  grade.Measures{Fat: grade.Inches(0.5), Ribeye: grade.SquareInches(11.9), KPH: grade.Percent(1.5), Weight: grade.Pounds(660)},
		FatAdjust: grade.Inches(0.1),
	})
	faulttest.Text(t, err, "")
	f, err := contest.FactsOf(a)
	faulttest.Text(t, err, "")
	if d := cmp.Diff(contest.Facts{
		Skeletal: maturity.A.At(60), Lean: maturity.A.At(60), Preliminary: grade.ShortcutYieldUnits(350_000_000),
		Maturity: maturity.A.At(60), Marbling: grade.Small.At(40), Quality: grade.Choice.Part(grade.Low),
		Fat: grade.Inches(0.6), Ribeye: grade.SquareInches(11.9), KPH: grade.Percent(1.5), Weight: grade.Pounds(660),
		Yield: grade.YieldUnits(3 * grade.OneGrade),
	}, f); d != "" {
		t.Errorf("(-want +got):\n%s", d)
	}
	// Lean that nobody looked at is not given.
	c := a.Carcass
	c.Maturity = maturity.Evidence{Skeletal: maturity.A.At(60), Teeth: maturity.Incisors(0)}
	a, err = grade.Current.Assess(c)
	faulttest.Text(t, err, "")
	f, err = contest.FactsOf(a)
	faulttest.Text(t, err, "")
	if f.Lean != 0 || f.Skeletal != maturity.A.At(60) {
		t.Errorf("lean %+v, skeletal %+v", f.Lean, f.Skeletal)
	}
	_, err = contest.FactsOf(grade.Assessment{})
	faulttest.Text(t, err, "fat: missing; allowed: 0 in to 3 in\nribeye: missing; allowed: 1 sq in to 25 sq in\nKPH: missing; allowed: 0% to 10%\nweight: missing; allowed: 100 lb to 1800 lb")
}
