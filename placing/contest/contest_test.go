package contest_test

import (
	"fmt"
	"math/rand/v2"
	"slices"
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

// TestFormatsExpressed builds the forms of contest whose values are not all
// published, with values of our own where the source is silent.
func TestFormatsExpressed(t *testing.T) {
	reasons := contest.Component{Name: "reasons", Kind: contest.KindHand, Classes: []string{"1", "2"}, Value: pts(100)}
	ident := contest.Component{Name: "identification", Kind: contest.KindHand, Value: pts(210)}
	grading := contest.Component{Name: "quality", Kind: contest.KindQuality, Classes: []string{"g"}, Value: pts(30)}
	problem := contest.Component{Name: "yield", Kind: contest.KindYield, Classes: []string{"g"}, Value: pts(30)}
	top := []contest.TieBreak{{Components: []string{"identification"}}, {Components: []string{"quality", "yield"}}}
	for name, f := range map[string]contest.Format{
		"state-aged-meats: identification, then grading, of the top three":                            {Components: []contest.Component{reasons, ident, grading, problem}, TeamMembers: 4, Counting: 3, Ties: top, TeamTies: top},
		"ffa-2017-2021: three members, all count, 30 cuts are 210":                                    {Components: []contest.Component{ident}, TeamMembers: 3, Counting: 3},
		"amsa-4h-contest: four, top three":                                                            {Components: []contest.Component{ident, reasons}, TeamMembers: 4, Counting: 3},
		"amsa-virtual-2021: any number, top three":                                                    {Components: []contest.Component{ident}, Counting: 3},
		"maec-2018: up to ten, four high":                                                             {Components: []contest.Component{ident}, TeamMembers: 10, Counting: 4},
		"nc-ffa-2015: four count and a missing fourth is 0":                                           {Components: []contest.Component{ident}, TeamMembers: 4, Counting: 4},
		"ok-ffa-livestock: three high, partial teams barred":                                          {Components: []contest.Component{ident}, TeamMembers: 4, Counting: 3, Short: contest.Barred},
		"ga-4h-dairy: 3 to 20, high three, total reasons break ties, here of all members of the team": {Components: []contest.Component{reasons}, TeamMembers: 20, Counting: 3, Ties: []contest.TieBreak{{Components: []string{"reasons"}}}, TeamTies: []contest.TieBreak{{Components: []string{"reasons"}, AllMembers: true}}},
	} {
		if err := f.Check(); err != nil {
			t.Errorf("%s: %v", name, err)
		}
	}
}

func TestFormatCheck(t *testing.T) {
	one := contest.Component{Name: "a", Kind: contest.KindHand, Value: pts(1)}
	with := func(c ...contest.Component) contest.Format { return contest.Format{Components: c} }
	many := make([]string, 201)
	for i := range many {
		many[i] = fmt.Sprint(i)
	}
	tests := []struct {
		name string
		f    contest.Format
		want string
	}{
		{"nothing", contest.Format{}, "components: 0: out of range; allowed: 1 to 200"},
		{"too many", contest.Format{Components: make([]contest.Component, 201)}, "components: 201: out of range; allowed: 1 to 200"},
		{"no name", with(contest.Component{Kind: contest.KindHand, Value: pts(1)}), "component: missing; allowed: a name or number"},
		{"nothing in it", with(contest.Component{}), "component: missing; allowed: a name or number\ncomponent 1: kind: missing; allowed: placing, quality, yield, by hand\ncomponent 1: value: missing; allowed: over 0 to 1,000,000 points"},
		{"name twice", with(one, one), `component "a": repeated; allowed: each name once`},
		{"no kind", with(contest.Component{Name: "a", Value: pts(1)}), `component "a": kind: missing; allowed: placing, quality, yield, by hand`},
		{"no value", with(contest.Component{Name: "a", Kind: contest.KindHand}), `component "a": value: missing; allowed: over 0 to 1,000,000 points`},
		{"as many as may be", contest.Format{Components: named(200)}, ""},
		{"as many classes as may be", with(contest.Component{Name: "a", Kind: contest.KindHand, Value: pts(1), Classes: many[:200]}), ""},
		{"too many classes", with(contest.Component{Name: "a", Kind: contest.KindHand, Value: pts(1), Classes: many}), `component "a": classes: 201: out of range; allowed: at most 200`},
		{"class without name", with(contest.Component{Name: "a", Kind: contest.KindPlacing, Value: pts(1), Classes: []string{""}}), `component "a": class: missing; allowed: a name or number`},
		{"class twice in a component", with(contest.Component{Name: "a", Kind: contest.KindHand, Value: pts(1), Classes: []string{"x", "x"}}), `component "a": class: x: repeated; allowed: each class in one component of a kind`},
		{"class in two of a kind", with(contest.Component{Name: "a", Kind: contest.KindPlacing, Value: pts(1)}, contest.Component{Name: "b", Kind: contest.KindPlacing, Value: pts(1), Classes: []string{"a"}}), `component "b": class: a: repeated; allowed: each class in one component of a kind`},
		{"class in two by hand", with(contest.Component{Name: "a", Kind: contest.KindHand, Value: pts(1), Classes: []string{"x"}}, contest.Component{Name: "b", Kind: contest.KindHand, Value: pts(1), Classes: []string{"x"}}), ""},
		{"members below 0", contest.Format{Components: []contest.Component{one}, TeamMembers: -1}, "team members: -1: out of range; allowed: 0 or more"},
		{"counting below 0", contest.Format{Components: []contest.Component{one}, Counting: -1}, "counting members: -1: out of range; allowed: 0 to the members of a team"},
		{"more counting than members", contest.Format{Components: []contest.Component{one}, TeamMembers: 3, Counting: 4}, "counting members: 4: out of range; allowed: 0 to the members of a team"},
		{"all counting", contest.Format{Components: []contest.Component{one}, TeamMembers: 3, Counting: 3}, ""},
		{"bad rule for short teams", contest.Format{Components: []contest.Component{one}, Short: 2}, "rule for short teams: rule for short teams(2): unknown; allowed: missing members score 0, barred"},
		{"tie-break by nothing", contest.Format{Components: []contest.Component{one}, Ties: []contest.TieBreak{{Components: []string{"a"}}, {}}}, "tie-break 2: missing; allowed: one component or more"},
		{"tie-break by an unknown", contest.Format{Components: []contest.Component{one}, TeamTies: []contest.TieBreak{{Components: []string{"b"}}}}, "tie-break for teams 1: b: unknown; allowed: the name of a component"},
		{"tie-break by one twice", contest.Format{Components: []contest.Component{one}, Ties: []contest.TieBreak{{Components: []string{"a", "a"}}}}, "tie-break 1: a: repeated; allowed: each component once"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) { faulttest.Text(t, tt.f.Check(), tt.want) })
	}
}

// named makes so many components.
func named(n int) []contest.Component {
	out := make([]contest.Component, n)
	for i := range out {
		out[i] = contest.Component{Name: fmt.Sprint("part ", i), Kind: contest.KindHand, Value: pts(1)}
	}
	return out
}

// TestGradingAlone holds contests whose first component is quality, or yield, with
// items of different value, and the last exhibit that a class can have.
func TestGradingAlone(t *testing.T) {
	_, r, _, _ := springKey(t)
	r.Yield.Value = pts(8)
	low, high := grade.Choice.Part(grade.Low), grade.Choice.Part(grade.High)
	quality := contest.Component{Name: "quality", Kind: contest.KindQuality, Classes: []string{"coolers"}, Value: pts(20)}
	yields := contest.Component{Name: "yield", Kind: contest.KindYield, Classes: []string{"coolers"}, Value: pts(16)}
	key := []contest.OfficialFacts{
		{Class: "coolers", Exhibit: 1, Facts: contest.Facts{Quality: low, Yield: yield(t, "2.5")}},
		{Class: "coolers", Exhibit: 60, Facts: contest.Facts{Quality: low, Yield: yield(t, "3.1")}},
	}
	card := contest.Estimate{Class: "coolers", Exhibit: 60, Member: contest.Member{ID: "7"}, Facts: contest.Facts{Quality: high, Yield: yield(t, "3.4")}}
	for _, tt := range []struct {
		name       string
		components []contest.Component
		want       string // points of quality and yield, of so many
	}{
		{"quality alone", []contest.Component{quality}, "6 of 10, unset of unset"},
		{"yield alone", []contest.Component{yields}, "unset of unset, 5 of 8"},
		{"both", []contest.Component{yields, quality}, "6 of 10, 5 of 8"},
	} {
		t.Run(tt.name, func(t *testing.T) {
			f := contest.Format{Name: "invented", Components: tt.components}
			c, err := contest.NewContest("", f, r, nil, key)
			if err != nil {
				t.Fatal(err)
			}
			q, y, err := c.Estimate(card)
			faulttest.Text(t, err, "")
			if got := fmt.Sprintf("%v of %v, %v of %v", q.Points, q.Of, y.Points, y.Of); got != tt.want {
				t.Errorf("%s, want %s", got, tt.want)
			}
			faulttest.Text(t, c.Tally().Add(q, y), "")
			if k, ok := c.Facts("coolers", 60); !ok || k != key[1].Facts {
				t.Errorf("official facts of exhibit 60: %+v, %v", k, ok)
			}
			tally := c.Tally()
			first := card
			first.Exhibit = 1
			q, y, err = c.Estimate(first)
			faulttest.Text(t, err, "")
			faulttest.Text(t, tally.Add(q, y), "")
			s, err := tally.Standings(contest.View{})
			faulttest.Text(t, err, "")
			for _, m := range s.Members[0].Missing {
				if !strings.HasSuffix(m, "exhibit 60") {
					t.Errorf("missing %q", m)
				}
			}
			if len(s.Members[0].Missing) != len(tt.components) {
				t.Errorf("missing %q", s.Members[0].Missing)
			}
			if _, ok := c.Facts("coolers", 61); ok {
				t.Error("official facts of exhibit 61")
			}
			// A preliminary grade stands for the fat: 3.5 is 0.6 in, and the yield 3.
			pre := []contest.OfficialFacts{key[0], {Class: "coolers", Exhibit: 60, Facts: contest.Facts{Quality: low, Preliminary: grade.ShortcutYieldUnits(350_000_000),
				Ribeye: grade.SquareInches(11.9), KPH: grade.Percent(1.5), Weight: grade.Pounds(660)}}}
			if c, err = contest.NewContest("", f, r, nil, pre); err != nil {
				t.Fatal(err)
			}
			if k, _ := c.Facts("coolers", 60); k.Yield != grade.Grades(3) || k.Fat.IsSet() {
				t.Errorf("official facts by the preliminary grade: %+v", k)
			}
			none := []contest.OfficialFacts{{Class: "coolers", Exhibit: 1}}
			want := `class "coolers": exhibit 1: official quality: missing; allowed: a quality grade`
			if tt.components[0].Kind == contest.KindYield && len(tt.components) == 1 {
				want = `class "coolers": exhibit 1: official yield: missing; allowed: a yield grade, or the four measures`
			}
			if len(tt.components) == 2 {
				want += "\n" + `class "coolers": exhibit 1: official yield: missing; allowed: a yield grade, or the four measures`
			}
			_, err = contest.NewContest("", f, r, nil, none)
			faulttest.Text(t, err, want)
		})
	}
}

// TestTeamSizes holds teams of any size where the format names none, and which team
// is named that has too many.
func TestTeamSizes(t *testing.T) {
	for limit, want := range map[int]string{0: "", 3: "", 2: `team "Cow": 3 members: out of range; allowed: at most 2`} {
		f, r, p, o := springKey(t)
		f.TeamMembers, f.Counting = limit, 0
		c, err := contest.NewContest("", f, r, p, o)
		if err != nil {
			t.Fatal(err)
		}
		tally := c.Tally()
		for id, team := range map[string]string{"1": "Bee", "2": "Bee", "3": "Cow", "4": "Cow", "5": "Cow"} {
			faulttest.Text(t, tally.Enter(contest.Member{ID: id, Team: team}), "")
		}
		s, err := tally.Standings(contest.View{})
		faulttest.Text(t, err, want)
		if want == "" && (len(s.Teams) != 2 || len(s.Teams[1].Counting) != 3) {
			t.Errorf("limit %d: %+v", limit, s.Teams)
		}
	}
}

// springKey is an invented contest: two placing classes, one grading class of two
// carcasses, two sets of reasons and an examination.
func springKey(t testing.TB) (contest.Format, contest.Scoring, []contest.OfficialPlacing, []contest.OfficialFacts) {
	t.Helper()
	ladder, err := evenLadder(pts(10), pts(2), contest.ChartQualities(grade.Current, maturity.A))
	if err != nil {
		t.Fatal(err)
	}
	return contest.Format{
			Name: "invented spring",
			Components: []contest.Component{
				{Name: "placings", Kind: contest.KindPlacing, Classes: []string{"beef", "ribs"}, Value: pts(100)},
				{Name: "quality", Kind: contest.KindQuality, Classes: []string{"coolers"}, Value: pts(20)},
				{Name: "yield", Kind: contest.KindYield, Classes: []string{"coolers"}, Value: pts(20)},
				{Name: "reasons", Kind: contest.KindHand, Classes: []string{"beef", "ribs"}, Value: pts(100)},
				{Name: "examination", Kind: contest.KindHand, Value: pts(60)},
			},
			TeamMembers: 4, Counting: 3,
			Ties:     []contest.TieBreak{{Components: []string{"reasons"}}, {Components: []string{"quality", "yield"}}},
			TeamTies: []contest.TieBreak{{Components: []string{"reasons"}}, {Components: []string{"examination"}, AllMembers: true}},
		}, contest.Scoring{
			Quality: contest.QualityRule{Ladder: ladder},
			Yield:   contest.YieldRule{Step: contest.Tenths, Rounding: grade.HalfUp, Value: pts(10), Each: pts(1)},
		}, []contest.OfficialPlacing{
			{Class: "beef", Order: placing.MustParseOrder("3-2-1-4"), Cuts: placing.MustParseCuts("2-8-2")},
			{Class: "ribs", Order: placing.MustParseOrder("1-2-3-4"), Cuts: placing.MustParseCuts("5-5-5")},
		}, []contest.OfficialFacts{
			{Class: "coolers", Exhibit: 1, Facts: contest.Facts{
				Quality: grade.Choice.Part(grade.Low), Fat: grade.Inches(0.6), Ribeye: grade.SquareInches(11.9),
				KPH: grade.Percent(1.5), Weight: grade.Pounds(660),
			}},
			{Class: "coolers", Exhibit: 2, Facts: contest.Facts{Quality: grade.Select.Part(grade.High), Yield: yield(t, "3.1")}},
		}
}

func spring(t testing.TB) *contest.Contest {
	t.Helper()
	f, r, p, o := springKey(t)
	c, err := contest.NewContest("", f, r, p, o)
	if err != nil {
		t.Fatal(err)
	}
	return c
}

func TestNewContest(t *testing.T) {
	tests := []struct {
		name   string
		change func(*string, *contest.Format, *contest.Scoring, *[]contest.OfficialPlacing, *[]contest.OfficialFacts)
		want   string
	}{
		{"in order", func(*string, *contest.Format, *contest.Scoring, *[]contest.OfficialPlacing, *[]contest.OfficialFacts) {
		}, ""},
		{"bad name", func(n *string, _ *contest.Format, _ *contest.Scoring, _ *[]contest.OfficialPlacing, _ *[]contest.OfficialFacts) {
			*n = " x"
		}, `contest: " x": bad syntax; allowed: no space before or after`},
		{"bad format", func(_ *string, f *contest.Format, _ *contest.Scoring, _ *[]contest.OfficialPlacing, _ *[]contest.OfficialFacts) {
			f.Components = nil
		}, "components: 0: out of range; allowed: 1 to 200"},
		{"other contest", func(_ *string, _ *contest.Format, _ *contest.Scoring, p *[]contest.OfficialPlacing, _ *[]contest.OfficialFacts) {
			(*p)[0].Contest = "fall"
		}, `contest: "fall": unknown; allowed: ""`},
		{"facts of another contest", func(_ *string, _ *contest.Format, _ *contest.Scoring, _ *[]contest.OfficialPlacing, o *[]contest.OfficialFacts) {
			(*o)[0].Contest = "fall"
		}, `contest: "fall": unknown; allowed: ""`},
		{"unknown class", func(_ *string, _ *contest.Format, _ *contest.Scoring, p *[]contest.OfficialPlacing, _ *[]contest.OfficialFacts) {
			(*p)[0].Class = "veal"
		}, `class: "veal": unknown; allowed: a class of the contest`},
		{"placing of a grading class", func(_ *string, _ *contest.Format, _ *contest.Scoring, p *[]contest.OfficialPlacing, _ *[]contest.OfficialFacts) {
			(*p)[0].Class = "coolers"
		}, `class "coolers": official placing: unknown; allowed: the class of a placing component`},
		{"placing twice", func(_ *string, _ *contest.Format, _ *contest.Scoring, p *[]contest.OfficialPlacing, _ *[]contest.OfficialFacts) {
			(*p)[1].Class = "beef"
		}, `class "beef": official placing: 1-2-3-4: repeated; allowed: one for each class`},
		{"no cuts", func(_ *string, _ *contest.Format, _ *contest.Scoring, p *[]contest.OfficialPlacing, _ *[]contest.OfficialFacts) {
			(*p)[1].Cuts = placing.Cuts{}
		}, `class "ribs": cuts: missing; allowed: 3 cuts for 4 exhibits`},
		{"placing missing", func(_ *string, _ *contest.Format, _ *contest.Scoring, p *[]contest.OfficialPlacing, _ *[]contest.OfficialFacts) {
			*p = (*p)[:1]
		}, `class "ribs": official placing: missing; allowed: one for each class`},
		{"exhibit out of range", func(_ *string, _ *contest.Format, _ *contest.Scoring, _ *[]contest.OfficialPlacing, o *[]contest.OfficialFacts) {
			(*o)[0].Exhibit = 61
		}, `class "coolers": exhibit: 61: out of range; allowed: 1 to 60`},
		{"exhibit twice", func(_ *string, _ *contest.Format, _ *contest.Scoring, _ *[]contest.OfficialPlacing, o *[]contest.OfficialFacts) {
			(*o)[1].Exhibit = 1
		}, `class "coolers": exhibit 1: repeated; allowed: each exhibit once`},
		{"no quality", func(_ *string, _ *contest.Format, _ *contest.Scoring, _ *[]contest.OfficialPlacing, o *[]contest.OfficialFacts) {
			(*o)[0].Facts.Quality = 0
		}, `class "coolers": exhibit 1: official quality: missing; allowed: a quality grade`},
		{"quality off the ladder", func(_ *string, _ *contest.Format, r *contest.Scoring, _ *[]contest.OfficialPlacing, _ *[]contest.OfficialFacts) {
			r.Quality.Ladder, _ = evenLadder(pts(10), pts(1), []grade.Quality{grade.Prime.Part(grade.Low), grade.Choice.Part(grade.Whole)})
		}, `class "coolers": exhibit 2: official quality: High Select: unknown; allowed: Low Prime, Choice`},
		{"no yield", func(_ *string, _ *contest.Format, _ *contest.Scoring, _ *[]contest.OfficialPlacing, o *[]contest.OfficialFacts) {
			(*o)[0].Facts.Weight = grade.Weight{}
		}, `class "coolers": exhibit 1: official yield: missing; allowed: a yield grade, or the four measures`},
		{"yield out of range", func(_ *string, _ *contest.Format, _ *contest.Scoring, _ *[]contest.OfficialPlacing, o *[]contest.OfficialFacts) {
			(*o)[1].Facts.Yield = grade.YieldUnits(31 * grade.OneGrade)
		}, `class "coolers": exhibit 2: yield: 31: out of range; allowed: -5.12 to 18.52`},
		{"measures out of range", func(_ *string, _ *contest.Format, _ *contest.Scoring, _ *[]contest.OfficialPlacing, o *[]contest.OfficialFacts) {
			(*o)[0].Facts.Fat = grade.Inches(4)
		}, `class "coolers": exhibit 1: official yield: missing; allowed: a yield grade, or the four measures`},
		{"rule for qualities worth less than nothing", func(_ *string, _ *contest.Format, r *contest.Scoring, _ *[]contest.OfficialPlacing, _ *[]contest.OfficialFacts) {
			r.Quality.Ladder.Value = pts(-1)
		}, "value of an item: -1: out of range; allowed: over 0 to 1,000,000 points"},
		{"rules that nothing is scored by", func(_ *string, f *contest.Format, r *contest.Scoring, _ *[]contest.OfficialPlacing, o *[]contest.OfficialFacts) {
			f.Components, f.Ties, *o = f.Components[:1], nil, nil
			f.TeamTies = nil
			r.Quality.Ladder.Value, r.Yield = pts(-1), contest.YieldRule{}
		}, ""},
		{"no rule for yields", func(_ *string, _ *contest.Format, r *contest.Scoring, _ *[]contest.OfficialPlacing, _ *[]contest.OfficialFacts) {
			r.Yield = contest.YieldRule{}
		}, "yield step: missing; allowed: whole grades, thirds, tenths\nvalue of an item: missing; allowed: over 0 to 1,000,000 points\npoints for each step: missing; allowed: 0 to 1,000,000 points"},
		{"facts of a placing class", func(_ *string, _ *contest.Format, _ *contest.Scoring, _ *[]contest.OfficialPlacing, o *[]contest.OfficialFacts) {
			(*o)[0].Class = "beef"
		}, `class "beef": exhibit 1: unknown; allowed: the class of a grading component`},
		{"unknown class of facts", func(_ *string, _ *contest.Format, _ *contest.Scoring, _ *[]contest.OfficialPlacing, o *[]contest.OfficialFacts) {
			(*o)[0].Class = "veal"
		}, `class: "veal": unknown; allowed: a class of the contest`},
		{"no facts", func(_ *string, _ *contest.Format, _ *contest.Scoring, _ *[]contest.OfficialPlacing, o *[]contest.OfficialFacts) {
			*o = nil
		}, `class "coolers": official facts: missing; allowed: one exhibit or more`},
		{"value does not add up", func(_ *string, f *contest.Format, _ *contest.Scoring, _ *[]contest.OfficialPlacing, _ *[]contest.OfficialFacts) {
			f.Components[0].Value = pts(150)
		}, `component "placings": value: 150: out of range; allowed: 100, the sum of its items`},
		{"yield does not add up", func(_ *string, f *contest.Format, _ *contest.Scoring, _ *[]contest.OfficialPlacing, _ *[]contest.OfficialFacts) {
			f.Components[2].Value = pts(30)
		}, `component "yield": value: 30: out of range; allowed: 20, the sum of its items`},
		{"value cannot be shared", func(_ *string, f *contest.Format, _ *contest.Scoring, _ *[]contest.OfficialPlacing, _ *[]contest.OfficialFacts) {
			f.Components[3].Value = tiny(1_000_001)
		}, `component "reasons": value: 100.0001: out of range; allowed: 100, the sum of its items`},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			name := ""
			f, r, p, o := springKey(t)
			tt.change(&name, &f, &r, &p, &o)
			_, err := contest.NewContest(name, f, r, p, o)
			faulttest.Text(t, err, tt.want)
		})
	}
}

func TestContestIsClosed(t *testing.T) {
	f, r, p, o := springKey(t)
	c, err := contest.NewContest("", f, r, p, o)
	if err != nil {
		t.Fatal(err)
	}
	f.Components[0].Classes[0], f.Ties[0].Components[0] = "x", "x"
	got := c.Format()
	got.Components[1].Classes[0], got.TeamTies[0].Components[0] = "x", "x"
	r.Quality.Ladder.Rungs[0], r.Quality.Ladder.Lines[0] = grade.NoGrade.Part(grade.Whole), pts(9)
	scoring := c.Scoring()
	scoring.Quality.Ladder.Rungs[1], scoring.Quality.Ladder.Lines[1] = grade.NoGrade.Part(grade.Whole), pts(9)
	want, rules, _, _ := springKey(t)
	if d := cmp.Diff(want, c.Format()) + cmp.Diff(rules, c.Scoring()); d != "" {
		t.Errorf("the contest shares storage with a caller (-want +got):\n%s", d)
	}
	if o, ok := c.Official("beef"); !ok || o.String() != "3-2-1-4 cuts 2-8-2" {
		t.Errorf("official: %v, %v", o, ok)
	}
	for _, class := range []string{"coolers", "veal"} {
		if o, ok := c.Official(class); ok || o.IsValid() {
			t.Errorf("%s has an official placing", class)
		}
	}
	if f, ok := c.Facts("coolers", 1); !ok || f.Yield != yield(t, "3") {
		t.Errorf("facts: %+v, %v", f, ok)
	}
	for _, at := range []struct {
		class   string
		exhibit int
	}{{"coolers", 0}, {"coolers", 3}, {"coolers", 61}, {"veal", 1}, {"coolers", -1}} {
		if _, ok := c.Facts(at.class, at.exhibit); ok {
			t.Errorf("%v has facts", at)
		}
	}
}

func TestScoreCards(t *testing.T) {
	c := spring(t)
	ada := contest.Member{ID: "7", Team: "North Fork", Division: "senior"}
	item, err := c.Placing(contest.PlacingCard{Class: "beef", Member: ada, Card: placing.Card{Order: placing.MustParseOrder("4-2-3-1")}})
	faulttest.Text(t, err, "")
	// 24 points (published: ext-maryland-contests).
	if d := cmp.Diff(contest.Item{Member: ada, Component: "placings", Class: "beef", Points: pts(24), Of: pts(50)}, item); d != "" {
		t.Errorf("(-want +got):\n%s", d)
	}
	_, err = c.Placing(contest.PlacingCard{Contest: "fall", Class: "beef", Member: ada})
	faulttest.Text(t, err, `member "7": contest: "fall": unknown; allowed: ""`)
	_, err = c.Placing(contest.PlacingCard{Class: "coolers", Member: ada})
	faulttest.Text(t, err, `member "7": class: "coolers": unknown; allowed: a placing class`)
	_, err = c.Placing(contest.PlacingCard{Class: "beef", Member: ada, Card: placing.Card{Order: placing.MustParseOrder("1-2-3")}})
	faulttest.Text(t, err, `member "7": class "beef": card: 1-2-3: out of range; allowed: an order of 4 exhibits`)
	_, err = c.Placing(contest.PlacingCard{Class: "beef"})
	faulttest.Text(t, err, "member: missing; allowed: a name or number")

	low := grade.Choice.Part(grade.Low)
	none := grade.Yield{}
	est := func(exhibit int, q grade.Quality, y grade.Yield, marks ...contest.Marks) contest.Estimate {
		e := contest.Estimate{Class: "coolers", Exhibit: exhibit, Member: ada, Facts: contest.Facts{Quality: q, Yield: y}}
		for _, m := range marks {
			e.Facts.Marks = m
		}
		return e
	}
	q, y, err := c.Estimate(est(2, low, yield(t, "3.4")))
	faulttest.Text(t, err, "")
	if d := cmp.Diff([]contest.Item{{ada, "quality", "coolers", 2, pts(8), pts(10)}, {ada, "yield", "coolers", 2, pts(7), pts(10)}}, []contest.Item{q, y}); d != "" {
		t.Errorf("(-want +got):\n%s", d)
	}
	q, y, err = c.Estimate(est(2, 0, none, contest.Marks{Yield: placing.Blank}))
	if q.IsValid() || y.Points != pts(0) || !y.IsValid() || err != nil {
		t.Errorf("empty quality, blank yield: %+v, %+v, %v", q, y, err)
	}
	for _, bad := range []struct {
		e    contest.Estimate
		want string
	}{
		{contest.Estimate{Contest: "fall", Member: ada}, `member "7": contest: "fall": unknown; allowed: ""`},
		{est(3, low, none), `member "7": class "coolers": exhibit: 3: unknown; allowed: an exhibit with official facts`},
		{est(0, low, none), `member "7": class "coolers": exhibit: 0: unknown; allowed: an exhibit with official facts`},
		{est(61, low, none), `member "7": class "coolers": exhibit: 61: unknown; allowed: an exhibit with official facts`},
		{est(2, 0, none, contest.Marks{Quality: 9}), `member "7": class "coolers": exhibit 2: mark: mark(9): unknown; allowed: blank, double-marked, unreadable`},
		{est(2, low, none, contest.Marks{Yield: 9}), `member "7": class "coolers": exhibit 2: mark: mark(9): unknown; allowed: blank, double-marked, unreadable`},
		{est(2, low, grade.YieldUnits(31*grade.OneGrade)), `member "7": class "coolers": exhibit 2: yield: 31: out of range; allowed: -5.12 to 18.52`},
		{contest.Estimate{Class: "coolers", Exhibit: 2, Facts: contest.Facts{Quality: low}}, `member "": class "coolers": exhibit 2: member: missing; allowed: a name or number`},
		{contest.Estimate{Class: "coolers", Exhibit: 2, Facts: contest.Facts{Yield: grade.Grades(0)}}, `member "": class "coolers": exhibit 2: member: missing; allowed: a name or number`},
	} {
		q, y, err := c.Estimate(bad.e)
		if q.IsValid() || y.IsValid() {
			t.Errorf("%s: scored", bad.want)
		}
		faulttest.Text(t, err, bad.want)
	}

	hand := func(component, class string, s contest.Points, marks ...placing.Mark) (contest.Item, error) {
		h := contest.HandScore{Component: component, Class: class, Member: ada, Score: s}
		for _, m := range marks {
			h.Mark = m
		}
		return c.Hand(h)
	}
	item, err = hand("reasons", "beef", pts(43))
	if d := cmp.Diff(contest.Item{ada, "reasons", "beef", 0, pts(43), pts(50)}, item); d != "" || err != nil {
		t.Errorf("%v (-want +got):\n%s", err, d)
	}
	if item, err = hand("examination", "", contest.Points{}, placing.Blank); item.Points != pts(0) || !item.IsValid() || err != nil {
		t.Errorf("blank: %+v, %v", item, err)
	}
	if item, err = hand("examination", "", contest.Points{}); item.IsValid() || err != nil {
		t.Errorf("empty: %+v, %v", item, err)
	}
	for _, edge := range []contest.Points{pts(0), pts(60)} {
		if item, err = hand("examination", "", edge); item.Points != edge || err != nil {
			t.Errorf("edge %v: %+v, %v", edge, item, err)
		}
	}
	for _, bad := range []struct {
		component, class string
		s                contest.Points
		want             string
	}{
		{"placings", "beef", pts(1), `member "7": component: "placings": unknown; allowed: a component that is scored by hand`},
		{"oratory", "", pts(1), `member "7": component: "oratory": unknown; allowed: a component that is scored by hand`},
		{"reasons", "", pts(1), `member "7": class: "": unknown; allowed: a class of the component "reasons"`},
		{"examination", "", tiny(600_001), `member "7": examination: 60.0001: out of range; allowed: 0 to 60`},
		{"examination", "", tiny(-1), `member "7": examination: -0.0001: out of range; allowed: 0 to 60`},
	} {
		_, err := hand(bad.component, bad.class, bad.s)
		faulttest.Text(t, err, bad.want)
	}
	_, err = hand("examination", "", contest.Points{}, 9)
	faulttest.Text(t, err, `member "7": mark: mark(9): unknown; allowed: blank, double-marked, unreadable`)
	_, err = hand("examination", "", pts(5), placing.Blank)
	faulttest.Text(t, err, `member "7": examination: 5 and blank: repeated; allowed: a value or a mark`)
	_, err = c.Hand(contest.HandScore{Contest: "fall", Component: "reasons", Member: ada})
	faulttest.Text(t, err, `member "7": contest: "fall": unknown; allowed: ""`)
	_, err = c.Hand(contest.HandScore{Component: "examination", Score: pts(1)})
	faulttest.Text(t, err, "member: missing; allowed: a name or number")
}

// by makes an item scored by hand in the spring contest.
func by(m contest.Member, component, class string, points int) contest.Item {
	return contest.Item{Member: m, Component: component, Class: class, Points: pts(points), Of: pts(50)}
}

// TestTallyTakesTheWorstCard holds the points of a placing between the worst card
// that its cuts allow, 50 - (3 x 8 + 4 x 8 + 3 x 8), and 50; a class whose worst
// card scores over 0 still takes a blank one.
func TestTallyTakesTheWorstCard(t *testing.T) {
	f, r, p, o := springKey(t)
	p[0].Cuts = placing.MustParseCuts("8-8-8")
	p[1].Cuts = placing.MustParseCuts("1-1-1")
	c, err := contest.NewContest("", f, r, p, o)
	if err != nil {
		t.Fatal(err)
	}
	for _, tt := range []struct {
		class  string
		points int
		want   string
	}{
		{"beef", -31, `member "7": placings: class "beef": points: -31: out of range; allowed: -30 to 50`},
		{"beef", -30, ""}, {"beef", 50, ""},
		{"beef", 51, `member "7": placings: class "beef": points: 51: out of range; allowed: -30 to 50`},
		{"ribs", -1, `member "7": placings: class "ribs": points: -1: out of range; allowed: 0 to 50`},
		{"ribs", 0, ""},
	} {
		faulttest.Text(t, c.Tally().Add(by(contest.Member{ID: "7"}, "placings", tt.class, tt.points)), tt.want)
	}
}

func TestTallyRefuses(t *testing.T) {
	ada := contest.Member{ID: "7", Team: "North Fork", Division: "senior"}
	tally := spring(t).Tally()
	faulttest.Text(t, tally.Add(by(ada, "reasons", "beef", 40), contest.Item{}), "")
	bad := []struct {
		name  string
		items []contest.Item
		want  string
	}{
		{"twice", []contest.Item{by(ada, "reasons", "ribs", 30), by(ada, "reasons", "beef", 40)}, `member "7": reasons: class "beef": repeated; allowed: one card for each class`},
		{"twice at once", []contest.Item{by(ada, "reasons", "ribs", 30), by(ada, "reasons", "ribs", 40)}, `member "7": reasons: class "ribs": repeated; allowed: one card for each class`},
		{"unknown component", []contest.Item{by(ada, "oratory", "", 40)}, `member "7": oratory: unknown; allowed: an item of the contest`},
		{"unknown class", []contest.Item{by(ada, "reasons", "veal", 40)}, `member "7": reasons: class "veal": unknown; allowed: an item of the contest`},
		{"unknown exhibit", []contest.Item{{Member: ada, Component: "quality", Class: "coolers", Exhibit: 3}}, `member "7": quality: class "coolers": exhibit 3: unknown; allowed: an item of the contest`},
		{"exhibit out of range", []contest.Item{{Member: ada, Component: "quality", Class: "coolers", Exhibit: 61}}, `member "7": quality: class "coolers": exhibit 61: unknown; allowed: an item of the contest`},
		{"exhibit below 0", []contest.Item{{Member: ada, Component: "quality", Class: "coolers", Exhibit: -1}}, `member "7": quality: class "coolers": exhibit -1: unknown; allowed: an item of the contest`},
		{"more than the item", []contest.Item{by(ada, "reasons", "ribs", 51)}, `member "7": reasons: class "ribs": points: 51: out of range; allowed: 0 to 50`},
		{"fewer than none", []contest.Item{by(ada, "reasons", "ribs", -1)}, `member "7": reasons: class "ribs": points: -1: out of range; allowed: 0 to 50`},
		{"other team", []contest.Item{by(contest.Member{ID: "7", Team: "South Fork", Division: "senior"}, "reasons", "ribs", 30)}, `member "7": team: "South Fork": repeated; allowed: "North Fork", as on the member's other cards`},
		{"other division", []contest.Item{by(contest.Member{ID: "7", Division: "junior"}, "reasons", "ribs", 30)}, `member "7": division: "junior": repeated; allowed: "senior", as on the member's other cards`},
		{"no member", []contest.Item{by(contest.Member{}, "reasons", "ribs", 30)}, `member "": member: missing; allowed: a name or number`},
		{"bad team", []contest.Item{by(contest.Member{ID: "8", Team: " "}, "reasons", "ribs", 30)}, `member "8": team: " ": bad syntax; allowed: no space before or after`},
		{"bad division", []contest.Item{by(contest.Member{ID: "8", Division: " "}, "reasons", "ribs", 30)}, `member "8": division: " ": bad syntax; allowed: no space before or after`},
	}
	for _, tt := range bad {
		t.Run(tt.name, func(t *testing.T) { faulttest.Text(t, tally.Add(tt.items...), tt.want) })
	}
	// A card without team or division is taken for the same member; what it lacks
	// may come later.
	faulttest.Text(t, tally.Add(by(contest.Member{ID: "7"}, "reasons", "ribs", 30)), "")
	faulttest.Text(t, tally.Enter(contest.Member{ID: "8"}), "")
	faulttest.Text(t, tally.Enter(contest.Member{ID: "8", Team: "North Fork"}), "")
	s, err := tally.Standings(contest.View{})
	faulttest.Text(t, err, "")
	want := []contest.MemberLine{
		{Rank: 1, Member: ada, Total: pts(70), Scores: []contest.Points{pts(0), pts(0), pts(0), pts(70), pts(0)},
			Missing: []string{`placings: class "beef"`, `placings: class "ribs"`, `quality: class "coolers"`, `yield: class "coolers"`, "examination"}},
		{Rank: 2, Member: contest.Member{ID: "8", Team: "North Fork"}, Total: pts(0), Scores: slices.Repeat([]contest.Points{pts(0)}, 5),
			Missing: []string{`placings: class "beef"`, `placings: class "ribs"`, `quality: class "coolers"`, `yield: class "coolers"`, `reasons: class "beef"`, `reasons: class "ribs"`, "examination"}},
	}
	if d := cmp.Diff(want, s.Members); d != "" {
		t.Errorf("(-want +got):\n%s", d)
	}
	if d := cmp.Diff([]contest.TeamLine{{Rank: 1, Team: "North Fork", Total: pts(70), Scores: []contest.Points{pts(0), pts(0), pts(0), pts(70), pts(0)}, Counting: []string{"7", "8"}, Short: true}}, s.Teams); d != "" {
		t.Errorf("(-want +got):\n%s", d)
	}
	// One exhibit of two is missing.
	faulttest.Text(t, tally.Add(contest.Item{Member: contest.Member{ID: "8"}, Component: "quality", Class: "coolers", Exhibit: 2, Points: pts(0)}), "")
	s, err = tally.Standings(contest.View{Components: []string{"quality"}})
	faulttest.Text(t, err, "")
	if d := cmp.Diff([]string{`quality: class "coolers": exhibit 1`}, s.Members[1].Missing); d != "" {
		t.Errorf("(-want +got):\n%s", d)
	}
}

func TestStandings(t *testing.T) {
	m := func(id, team, division string) contest.Member {
		return contest.Member{ID: id, Team: team, Division: division}
	}
	// Invented members. Totals: 9 and 10 tie for first in every step; 3 has the same
	// total and loses by reasons; 4 and 5 tie on total and reasons, 4 wins by grading.
	items := []contest.Item{
		by(m("10", "Elk", "senior"), "reasons", "beef", 45), by(m("10", "Elk", "senior"), "examination", "", 55),
		by(m("9", "Owl", "senior"), "reasons", "beef", 45), by(m("9", "Owl", "senior"), "examination", "", 55),
		by(m("3", "Elk", "senior"), "reasons", "beef", 40), by(m("3", "Elk", "senior"), "examination", "", 60),
		by(m("4", "Elk", "junior"), "reasons", "beef", 30), {Member: m("4", "Elk", "junior"), Component: "quality", Class: "coolers", Exhibit: 1, Points: pts(10)},
		by(m("5", "Owl", "junior"), "reasons", "beef", 30), by(m("5", "Owl", "junior"), "examination", "", 10),
		by(m("6", "Owl", "junior"), "reasons", "beef", 38), by(m("6", "Owl", "junior"), "reasons", "ribs", 2),
		by(m("2", "Elk", "junior"), "reasons", "beef", 10),
		by(m("lone", "", "junior"), "reasons", "beef", 5),
		by(m("1", "Fox", "senior"), "reasons", "beef", 50),
	}
	add := func(c *contest.Contest) *contest.Tally {
		tally := c.Tally()
		faulttest.Text(t, tally.Add(items...), "")
		return tally
	}
	tally := add(spring(t))
	s, err := tally.Standings(contest.View{})
	faulttest.Text(t, err, "")
	want := strings.TrimPrefix(`
rank                  member  team  division  total  placings  quality  yield  reasons  examination
1     tied            9       Owl   senior      100         0        0      0       45           55
1     tied            10      Elk   senior      100         0        0      0       45           55
3                     3       Elk   senior      100         0        0      0       40           60
4                     1       Fox   senior       50         0        0      0       50            0
5     by tie-break 1  6       Owl   junior       40         0        0      0       40            0
6     by tie-break 2  4       Elk   junior       40         0       10      0       30            0
7                     5       Owl   junior       40         0        0      0       30           10
8                     2       Elk   junior       10         0        0      0       10            0
9                     lone          junior        5         0        0      0        5            0

rank                  team  counting  others  total  placings  quality  yield  reasons  examination
1     by tie-break 1  Elk   10, 3, 4  2         240         0       10      0      115          115
2                     Owl   9, 6, 5             180         0        0      0      115           65
3                     Fox   1                    50         0        0      0       50            0
`, "\n")
	want = strings.Replace(want, "1     by tie-break 1  Elk", "1                     Elk", 1)
	want = strings.ReplaceAll(want, "rank                  team", "rank  team")
	want = strings.ReplaceAll(want, "1                     Elk", "1     Elk")
	want = strings.ReplaceAll(want, "2                     Owl", "2     Owl")
	want = strings.ReplaceAll(want, "3                     Fox", "3     Fox")
	if d := cmp.Diff(want, s.String()); d != "" {
		t.Errorf("(-want +got):\n%s", d)
	}
	if s.Of != pts(300) {
		t.Errorf("of %v", s.Of)
	}
	juniors, err := tally.Standings(contest.View{Division: "junior", Components: []string{"examination", "reasons"}, Ties: []contest.TieBreak{{Components: []string{"examination"}}}})
	faulttest.Text(t, err, "")
	want = strings.TrimPrefix(`
rank                  member  team  division  total  reasons  examination
1     by tie-break 1  5       Owl   junior       40       30           10
2                     6       Owl   junior       40       40            0
3                     4       Elk   junior       30       30            0
4                     2       Elk   junior       10       10            0
5                     lone          junior        5        5            0

rank  team  counting  total  reasons  examination
1     Owl   5, 6         80       70           10
2     Elk   4, 2         40       40            0
`, "\n")
	if d := cmp.Diff(want, juniors.String()); d != "" {
		t.Errorf("juniors (-want +got):\n%s", d)
	}
	if d := cmp.Diff([]string{"junior", "senior"}, tally.Divisions()); d != "" {
		t.Errorf("(-want +got):\n%s", d)
	}
	for _, bad := range []struct {
		v    contest.View
		want string
	}{
		{contest.View{Division: "open"}, `division: "open": unknown; allowed: junior, senior`},
		{contest.View{Components: []string{"x"}}, "view: x: unknown; allowed: the name of a component"},
		{contest.View{Components: []string{"reasons"}, Ties: []contest.TieBreak{{}}}, "tie-break 1: missing; allowed: one component or more"},
		{contest.View{Components: []string{"reasons"}, TeamTies: []contest.TieBreak{{}}}, "tie-break for teams 1: missing; allowed: one component or more"},
	} {
		_, err := tally.Standings(bad.v)
		faulttest.Text(t, err, bad.want)
	}

	// Short teams barred, and a team with too many members.
	f, r, p, o := springKey(t)
	f.Short = contest.Barred
	c, err := contest.NewContest("", f, r, p, o)
	faulttest.Text(t, err, "")
	s, err = add(c).Standings(contest.View{Components: []string{"reasons"}})
	faulttest.Text(t, err, "")
	want = strings.TrimPrefix(`
rank        team  counting  others  total  reasons
1     tied  Elk   10, 3, 4  2         115      115
1     tied  Owl   9, 6, 5             115      115
-           Fox   1                    50       50
`, "\n")
	if d := cmp.Diff(want, s.String()[strings.Index(s.String(), "\n\n")+2:]); d != "" {
		t.Errorf("barred (-want +got):\n%s", d)
	}
	f.TeamMembers = 3
	if c, err = contest.NewContest("", f, r, p, o); err != nil {
		t.Fatal(err)
	}
	_, err = add(c).Standings(contest.View{})
	faulttest.Text(t, err, `team "Elk": 4 members: out of range; allowed: at most 3`)
	// All count: three of four is a short team where the size is fixed.
	f.TeamMembers, f.Counting = 4, 0
	if c, err = contest.NewContest("", f, r, p, o); err != nil {
		t.Fatal(err)
	}
	s, err = add(c).Standings(contest.View{})
	faulttest.Text(t, err, "")
	if len(s.Teams) != 3 || s.Teams[0].Short || s.Teams[0].Total != pts(250) || !s.Teams[1].Short || s.Teams[1].Rank != 0 || s.Teams[1].Team != "Owl" || s.Teams[2].Team != "Fox" {
		t.Errorf("all count: %+v", s.Teams)
	}
	if got := (contest.Standings{}).String(); got != "rank  member  team  division  total\n" && got != "\n" {
		t.Errorf("empty standings: %q", got)
	}
}

// TestTeamTies: teams equal in total are told apart by the counting members, then
// here by the examination of all members.
func TestTeamTies(t *testing.T) {
	f, r, p, o := springKey(t)
	f.Counting = 1
	f.TeamTies = []contest.TieBreak{{Components: []string{"reasons"}}, {Components: []string{"examination"}, AllMembers: true}}
	c, err := contest.NewContest("", f, r, p, o)
	faulttest.Text(t, err, "")
	tally := c.Tally()
	put := func(id, team string, reasons, exam int) {
		m := contest.Member{ID: id, Team: team}
		faulttest.Text(t, tally.Add(by(m, "reasons", "beef", reasons), by(m, "examination", "", exam)), "")
	}
	put("1", "Ash", 30, 20)
	put("2", "Ash", 10, 5)
	put("3", "Bay", 30, 20)
	put("4", "Bay", 5, 6)
	put("5", "Cedar", 20, 30)
	put("6", "Cedar", 29, 10) // does not count, so its reasons do not
	s, err := tally.Standings(contest.View{})
	faulttest.Text(t, err, "")
	var got []string
	for _, l := range s.Teams {
		got = append(got, fmt.Sprint(l.Rank, l.Tied, l.Team, l.Total, l.ByTieBreak, l.Counting, l.Others))
	}
	if d := cmp.Diff([]string{"1 falseBay50 2 [3] [4]", "2 falseAsh50 1 [1] [2]", "3 falseCedar50 0 [5] [6]"}, got); d != "" {
		t.Errorf("(-want +got):\n%s", d)
	}
}

// TestStandingsOracle compares with a slow reading of the rules, and shuffles.
func TestStandingsOracle(t *testing.T) {
	c := spring(t)
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(1, 12).Draw(t, "members")
		var items []contest.Item
		score := map[string][2]int{}
		teamOf := map[string]string{}
		for i := range n {
			m := contest.Member{ID: fmt.Sprint(i + 1), Team: []string{"", "Ash", "Bay", "Cedar"}[i%4]}
			a, b := rapid.IntRange(0, 3).Draw(t, "reasons"), rapid.IntRange(0, 3).Draw(t, "examination")
			items = append(items, by(m, "reasons", "beef", a), by(m, "examination", "", b))
			score[m.ID], teamOf[m.ID] = [2]int{a, b}, m.Team
		}
		tally := c.Tally()
		if err := tally.Add(items...); err != nil {
			t.Fatal(err)
		}
		s, err := tally.Standings(contest.View{})
		if err != nil {
			t.Fatal(err)
		}
		better := func(a, b string) bool { // by total, then reasons
			x, y := score[a], score[b]
			return x[0]+x[1] > y[0]+y[1] || x[0]+x[1] == y[0]+y[1] && x[0] > y[0]
		}
		for _, l := range s.Members {
			rank, tied := 1, false
			for id := range score {
				if better(id, l.Member.ID) {
					rank++
				}
				tied = tied || id != l.Member.ID && score[id] == score[l.Member.ID]
			}
			if l.Rank != rank || l.Tied != tied {
				t.Fatalf("member %s: rank %d tied %v, want %d %v\n%s", l.Member.ID, l.Rank, l.Tied, rank, tied, s)
			}
		}
		for _, l := range s.Teams {
			var totals []int
			for id, team := range teamOf {
				if team == l.Team {
					totals = append(totals, score[id][0]+score[id][1])
				}
			}
			slices.Sort(totals)
			slices.Reverse(totals)
			want := 0
			for _, v := range totals[:min(3, len(totals))] {
				want += v
			}
			if l.Total != pts(want) || l.Short != (len(totals) < 3) {
				t.Fatalf("team %s: %v, want %d", l.Team, l.Total, want)
			}
		}
		r := rand.New(rand.NewPCG(rapid.Uint64().Draw(t, "shuffle"), 1))
		r.Shuffle(len(items), func(i, j int) { items[i], items[j] = items[j], items[i] })
		again := c.Tally()
		for _, i := range items {
			if err := again.Add(i); err != nil {
				t.Fatal(err)
			}
		}
		u, err := again.Standings(contest.View{})
		if err != nil {
			t.Fatal(err)
		}
		if d := cmp.Diff(s, u); d != "" || s.String() != u.String() {
			t.Fatalf("shuffled (-want +got):\n%s", d)
		}
	})
}

// TestTeamsFromTheDocument ranks teams a second time, from the documents of Standings
// and ShortTeam alone, under drawn formats: how many are in a team, how many count or
// no number, short teams ranked or barred, steps over the counting members or all.
func TestTeamsFromTheDocument(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		members := rapid.SampledFrom([]int{0, 3, 4}).Draw(t, "team members")
		counting := rapid.IntRange(0, 3).Draw(t, "counting")
		f := contest.Format{
			Name:        "drawn",
			Components:  []contest.Component{{Name: "reasons", Kind: contest.KindHand, Value: pts(50)}, {Name: "examination", Kind: contest.KindHand, Value: pts(50)}},
			TeamMembers: members, Counting: counting,
			Short: contest.ShortTeam(rapid.IntRange(0, 1).Draw(t, "short")),
			Ties:  []contest.TieBreak{{Components: []string{"examination"}}},
		}
		if rapid.Bool().Draw(t, "team tie") {
			f.TeamTies = []contest.TieBreak{{Components: []string{"reasons"}, AllMembers: rapid.Bool().Draw(t, "all members")}}
		}
		c, err := contest.NewContest("", f, contest.Scoring{}, nil, nil)
		if err != nil {
			t.Fatal(err)
		}
		type one struct {
			id            string
			reasons, exam int
		}
		teams := map[string][]one{}
		tally := c.Tally()
		next := 1
		for _, name := range []string{"10", "9", "Ash", "Bay", "100"} {
			most := 4
			if members > 0 {
				most = members
			}
			for range rapid.IntRange(1, most).Draw(t, "members of "+name) {
				o := one{fmt.Sprint(next), rapid.IntRange(0, 2).Draw(t, "reasons"), rapid.IntRange(0, 2).Draw(t, "examination")}
				next++
				teams[name] = append(teams[name], o)
				m := contest.Member{ID: o.id, Team: name}
				if err := tally.Add(by(m, "reasons", "", o.reasons), by(m, "examination", "", o.exam)); err != nil {
					t.Fatal(err)
				}
			}
		}
		s, err := tally.Standings(contest.View{})
		if err != nil {
			t.Fatal(err)
		}

		type line struct {
			team         string
			total, step  int
			short        bool
			counts, rest []string
		}
		before := func(a, b string) bool { // digits first, of these the shorter, then bytes
			digits := func(s string) bool { return strings.Trim(s, "0123456789") == "" }
			switch {
			case digits(a) != digits(b):
				return digits(a)
			case digits(a) && len(a) != len(b):
				return len(a) < len(b)
			default:
				return a < b
			}
		}
		var ranked, barred []line
		for name, list := range teams {
			slices.SortFunc(list, func(a, b one) int {
				x, y := a.reasons+a.exam, b.reasons+b.exam
				switch {
				case x > y, x == y && a.exam > b.exam, x == y && a.exam == b.exam && before(a.id, b.id):
					return -1
				}
				return 1
			})
			l := line{team: name}
			limit := len(list)
			if counting > 0 {
				limit = min(limit, counting)
				l.short = len(list) < counting
			} else {
				l.short = len(list) < members
			}
			for i, o := range list {
				if i < limit {
					l.counts = append(l.counts, o.id)
					l.total += o.reasons + o.exam
				} else {
					l.rest = append(l.rest, o.id)
				}
				if len(f.TeamTies) > 0 && (i < limit || f.TeamTies[0].AllMembers) {
					l.step += o.reasons
				}
			}
			if l.short && f.Short == contest.Barred {
				barred = append(barred, l)
			} else {
				ranked = append(ranked, l)
			}
		}
		order := func(a, b line) int {
			switch {
			case a.total > b.total, a.total == b.total && a.step > b.step, a.total == b.total && a.step == b.step && before(a.team, b.team):
				return -1
			}
			return 1
		}
		slices.SortFunc(ranked, order)
		slices.SortFunc(barred, order)
		var want, got []string
		for i, l := range ranked {
			rank, tied := 1, false
			for j, o := range ranked {
				if o.total > l.total || o.total == l.total && o.step > l.step {
					rank++
				}
				tied = tied || i != j && o.total == l.total && o.step == l.step
			}
			step := 0
			if i+1 < len(ranked) && ranked[i+1].total == l.total && ranked[i+1].step != l.step {
				step = 1
			}
			want = append(want, fmt.Sprint(rank, tied, l.team, l.total, l.short, l.counts, l.rest, step))
		}
		for _, l := range barred {
			want = append(want, fmt.Sprint(0, false, l.team, l.total, l.short, l.counts, l.rest, 0))
		}
		for _, l := range s.Teams {
			got = append(got, fmt.Sprint(l.Rank, l.Tied, l.Team, l.Total, l.Short, l.Counting, l.Others, l.ByTieBreak))
		}
		if d := cmp.Diff(want, got); d != "" {
			t.Fatalf("(-want +got):\n%s\n%s", d, s)
		}
	})
}

// TestNamesInOrder: those who tie stand in order of ID, numbers first and by size.
func TestNamesInOrder(t *testing.T) {
	tally := spring(t).Tally()
	for _, id := range []string{"b", "100", "A", "9", "10", "1a", "7", "03", "007", "07"} {
		faulttest.Text(t, tally.Enter(contest.Member{ID: id}), "")
	}
	s, err := tally.Standings(contest.View{})
	faulttest.Text(t, err, "")
	var got []string
	for _, m := range s.Members {
		if m.Rank != 1 || !m.Tied {
			t.Errorf("%s: rank %d, tied %v", m.Member.ID, m.Rank, m.Tied)
		}
		got = append(got, m.Member.ID)
	}
	if d := cmp.Diff([]string{"03", "7", "07", "007", "9", "10", "100", "1a", "A", "b"}, got); d != "" {
		t.Errorf("(-want +got):\n%s", d)
	}
}
