package contest_test

import (
	"encoding/json"
	"strings"
	"testing"

	"example.com/ribface/grade"
	"example.com/ribface/internal/testkit/faulttest"
	"example.com/ribface/placing"
	"example.com/ribface/placing/contest"
	"github.com/google/go-cmp/cmp"
)

// told lists what an error tells, each with its path.
func told(err error) (all []string) {
	for _, p := range placing.Problems(err) {
		all = append(all, p.Path+": "+p.Error())
	}
	return all
}

// TestEveryProblem holds that all that is wrong is told at once, with the path of each
// by the JSON names of what was given.
func TestEveryProblem(t *testing.T) {
	f, r, p, o := springKey(t)
	c := spring(t)
	ada := contest.Member{ID: "7"}
	_, noFormat := contest.NewContest(" x", contest.Format{
		Components: []contest.Component{{Name: "a", Kind: contest.KindHand, Classes: []string{"x", "x"}}, {Name: "a", Kind: 9, Value: pts(1)}},
		Counting:   -1, TeamMembers: -2, Short: 3,
		Ties: []contest.TieBreak{{Components: []string{"a"}}, {Components: []string{"b", "a", "a"}}}, TeamTies: []contest.TieBreak{{}},
	}, r, p, o)
	p = append(p, contest.OfficialPlacing{Class: "veal"}, contest.OfficialPlacing{Class: "ribs"})
	p[0].Cuts = placing.Cuts{}
	o[0].Facts = contest.Facts{}
	o[1].Exhibit = 0
	r.Yield.Step, r.Yield.Each = 0, contest.Points{}
	_, noContest := contest.NewContest("", f, r, p, o)
	f, r, _, _ = springKey(t)
	f.Components[0].Value = pts(1)
	_, noSum := contest.NewContest("", f, r, nil, nil)
	_, _, estimate := c.Estimate(contest.Estimate{Class: "coolers", Exhibit: 1, Member: ada, Facts: contest.Facts{Quality: grade.Choice.Part(grade.Whole), Yield: grade.Grades(19)}})
	_, _, marked := c.Estimate(contest.Estimate{Class: "coolers", Exhibit: 1, Member: ada, Facts: contest.Facts{Quality: grade.Choice.Part(grade.Low), Yield: grade.Grades(3), Marks: contest.Marks{Quality: placing.Blank, Yield: placing.Blank}}})
	_, card := c.Placing(contest.PlacingCard{Class: "beef", Member: ada, Card: placing.Card{Mark: 9}})
	_, hand := c.Hand(contest.HandScore{Component: "reasons", Class: "beef", Member: ada, Score: pts(51)})
	_, view := c.Tally().Standings(contest.View{Components: []string{"x", "reasons"}, Ties: []contest.TieBreak{{Components: []string{"y"}}}})
	noTally := c.Tally().Add(contest.Item{Component: "x"}, contest.Item{Member: contest.Member{ID: "7 "}, Component: "examination", Points: pts(1)}, contest.Item{Member: ada, Component: "examination"})
	var e contest.Estimate
	noJSON := json.Unmarshal([]byte(`{"exhibit":"1","member":{"id":7},"facts":{"fat":"0.6 kg","marks":{"quality":"smudged"},"qualty":"Ch-"}}`), &e)
	chart := "High Prime, Average Prime, Low Prime, High Choice, Average Choice, Low Choice, High Select, Low Select, High Standard, Average Standard, Low Standard, Utility, Cutter, Canner, No grade"
	for _, tt := range []struct {
		name string
		err  error
		want []string
	}{
		{"format", noFormat, []string{
			`contest: contest: " x": bad syntax; allowed: no space before or after`,
			`format.components[0].value: component "a": value: missing; allowed: over 0 to 1,000,000 points`,
			`format.components[0].classes[1]: component "a": class: x: repeated; allowed: each class in one component of a kind`,
			`format.components[1].name: component "a": repeated; allowed: each name once`,
			`format.components[1].kind: component "a": kind: kind of component(9): unknown; allowed: placing, quality, yield, by hand`,
			`format.team_members: team members: -2: out of range; allowed: 0 or more`,
			`format.counting: counting members: -1: out of range; allowed: 0 to the members of a team`,
			`format.short: rule for short teams: rule for short teams(3): unknown; allowed: missing members score 0, barred`,
			`format.ties[1].components[0]: tie-break 2: b: unknown; allowed: the name of a component`,
			`format.ties[1].components[2]: tie-break 2: a: repeated; allowed: each component once`,
			`format.team_ties[0].components: tie-break for teams 1: missing; allowed: one component or more`,
		}},
		{"contest", noContest, []string{
			`placings[0].cuts: class "beef": cuts: missing; allowed: 3 cuts for 4 exhibits`,
			`placings[2].class: class: "veal": unknown; allowed: a class of the contest`,
			`placings[3].class: class "ribs": official placing: unset: repeated; allowed: one for each class`,
			`facts[0].facts.quality: class "coolers": exhibit 1: official quality: missing; allowed: a quality grade`,
			`facts[0].facts.yield: class "coolers": exhibit 1: official yield: missing; allowed: a yield grade, or the four measures`,
			`facts[1].exhibit: class "coolers": exhibit: 0: out of range; allowed: 1 to 60`,
			`rules.yield.step: yield step: missing; allowed: whole grades, thirds, tenths`,
			`rules.yield.each: points for each step: missing; allowed: 0 to 1,000,000 points`,
		}},
		{"sums", noSum, []string{
			`format.components[0].classes: class "beef": official placing: missing; allowed: one for each class`,
			`format.components[0].classes: class "ribs": official placing: missing; allowed: one for each class`,
			`format.components[1].classes: class "coolers": official facts: missing; allowed: one exhibit or more`,
		}},
		{"estimate", estimate, []string{
			`facts.quality: member "7": class "coolers": exhibit 1: quality: Choice: unknown; allowed: ` + chart,
			`facts.yield: member "7": class "coolers": exhibit 1: yield: 19: out of range; allowed: -5.12 to 18.52`,
		}},
		{"marks beside values", marked, []string{
			`facts.quality: member "7": class "coolers": exhibit 1: quality: Low Choice and blank: repeated; allowed: a value or a mark`,
			`facts.yield: member "7": class "coolers": exhibit 1: yield: 3 and blank: repeated; allowed: a value or a mark`,
		}},
		{"card", card, []string{`card: member "7": class "beef": mark: mark(9): unknown; allowed: blank, double-marked, unreadable`}},
		{"hand", hand, []string{`score: member "7": reasons: 51: out of range; allowed: 0 to 50`}},
		{"view", view, []string{
			`components[0]: view: x: unknown; allowed: the name of a component`,
			`ties[0].components[0]: tie-break 1: y: unknown; allowed: the name of a component`,
		}},
		{"tally", noTally, []string{
			`items[0]: member "": x: unknown; allowed: an item of the contest`,
			`items[1].member.id: member "7 ": member: "7 ": bad syntax; allowed: no space before or after`,
			`items[2].points: member "7": examination: points: missing; allowed: 0 to 60`,
		}},
		{"JSON", noJSON, []string{
			`exhibit: exhibit: "1": bad syntax; allowed: text in quotes, or a number where the field is one`,
			`member.id: id: 7: bad syntax; allowed: text in quotes, or a number where the field is one`,
			`facts.fat: thickness: "0.6 kg": unknown; allowed: a number with at most 4 places, unit in or mm or cm`,
			`facts.marks.quality: mark: "smudged": unknown; allowed: blank, double-marked, unreadable`,
			`facts.qualty: name: qualty: unknown; allowed: skeletal, lean, maturity, marbling, quality, fat, ribeye, kph, weight, yield, preliminary, marks`,
		}},
	} {
		if d := cmp.Diff(tt.want, told(tt.err)); d != "" {
			t.Errorf("%s: problems (-want +got):\n%s", tt.name, d)
		}
	}
	if e != (contest.Estimate{}) {
		t.Errorf("a refused estimate is %+v", e)
	}
}

// TestAllOrNothing holds that a refused Add leaves the tally as it was, members
// included, and that one Add can tell the same member twice.
func TestAllOrNothing(t *testing.T) {
	c := spring(t)
	ada, ben := contest.Member{ID: "7", Team: "North Fork"}, contest.Member{ID: "8"}
	tally := c.Tally()
	faulttest.Text(t, tally.Add(by(ada, "reasons", "beef", 40)), "")
	standings := func() string {
		s, err := tally.Standings(contest.View{})
		faulttest.Text(t, err, "")
		return s.String()
	}
	before := standings()
	for name, items := range map[string][]contest.Item{
		"points":                 {by(ben, "reasons", "beef", 40), by(ben, "examination", "", 61)},
		"points not set":         {by(ben, "reasons", "beef", 40), {Member: ben, Component: "examination"}},
		"repeated":               {by(ben, "reasons", "beef", 40), by(ben, "reasons", "beef", 40)},
		"repeated from before":   {by(ben, "reasons", "beef", 40), by(ada, "reasons", "beef", 40)},
		"unknown":                {by(ben, "reasons", "beef", 40), by(ben, "reasons", "veal", 40)},
		"two teams":              {by(ben, "reasons", "beef", 40), by(contest.Member{ID: "7", Team: "South Fork"}, "examination", "", 1)},
		"two teams of a new one": {by(contest.Member{ID: "8", Team: "A"}, "reasons", "beef", 40), by(contest.Member{ID: "8", Team: "B"}, "examination", "", 1)},
		"bad name":               {by(ben, "reasons", "beef", 40), by(contest.Member{ID: ""}, "examination", "", 1)},
	} {
		if err := tally.Add(items...); err == nil {
			t.Errorf("%s: taken", name)
		}
		if d := cmp.Diff(before, standings()); d != "" {
			t.Errorf("%s: a refused Add changes the tally:\n%s", name, d)
		}
	}
	s, err := tally.Standings(contest.View{})
	faulttest.Text(t, err, "")
	if len(s.Members) != 1 {
		t.Errorf("a refused Add leaves a member:\n%s", s)
	}
	// The team on one of two cards of one Add counts for both.
	faulttest.Text(t, tally.Add(by(ben, "reasons", "beef", 1), contest.Item{}, by(contest.Member{ID: "8", Team: "Elk"}, "reasons", "ribs", 2), by(contest.Member{ID: "8", Division: "junior"}, "examination", "", 3)), "")
	if s, err = tally.Standings(contest.View{}); err != nil || s.Members[1].Member != (contest.Member{ID: "8", Team: "Elk", Division: "junior"}) || s.Members[1].Total != pts(6) {
		t.Errorf("%v\n%s", err, s)
	}
}

// TestNothingMade holds what a contest, a tally and a view say that nobody has made.
func TestNothingMade(t *testing.T) {
	var none *contest.Contest
	if none.Format().Name != "" || none.Scoring().Yield.Step != 0 {
		t.Error("a nil contest")
	}
	const noTally = "tally: missing; allowed: one made by Contest.Tally"
	for _, tally := range []*contest.Tally{nil, {}} {
		faulttest.Text(t, tally.Enter(contest.Member{ID: "7"}), noTally)
		faulttest.Text(t, tally.Add(), noTally)
		_, err := tally.Standings(contest.View{})
		faulttest.Text(t, err, noTally)
		if tally.Divisions() != nil {
			t.Error("divisions of no tally")
		}
	}
	faulttest.Text(t, (&contest.Contest{}).Tally().Add(by(contest.Member{ID: "7"}, "reasons", "beef", 40)), `member "7": reasons: class "beef": unknown; allowed: an item of the contest`)
	// What is not set has no loss.
	rule := contest.YieldRule{Step: contest.WholeGrades, Value: pts(1), Each: pts(1)}
	_, _, err := rule.Loss(grade.Yield{}, grade.Grades(1))
	faulttest.Text(t, err, "official yield: missing; allowed: a yield grade")
	_, _, err = rule.Loss(grade.Grades(1), grade.Yield{})
	faulttest.Text(t, err, "yield: missing; allowed: a yield grade")
	_, err = rule.Score(grade.Yield{}, grade.Grades(1), 0)
	faulttest.Text(t, err, "official yield: missing; allowed: a yield grade")
}

// TestStandingsOfAHand holds that standings that fit nothing together are printed all
// the same.
func TestStandingsOfAHand(t *testing.T) {
	s := contest.Standings{Components: []string{"a"}, Members: []contest.MemberLine{{Rank: 1, Member: contest.Member{ID: "7"}, Scores: []contest.Points{pts(1), pts(2)}}, {}}}
	want := strings.TrimPrefix(`
rank  member  total  a
1     7       unset  1  2
-             unset
`, "\n")
	if d := cmp.Diff(want, s.String()); d != "" {
		t.Errorf("(-want +got):\n%s", d)
	}
}
