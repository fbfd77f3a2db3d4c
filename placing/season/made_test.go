package season_test

import (
	"strings"
	"testing"

	"example.com/ribface/grade"
	"example.com/ribface/internal/testkit/faulttest"
	"example.com/ribface/maturity"
	"example.com/ribface/placing"
	"example.com/ribface/placing/contest"
	"example.com/ribface/placing/season"
)

// TestNothingMade holds what is said by collections that nobody has made, and that
// nothing panics.
func TestNothingMade(t *testing.T) {
	const made = ": missing; allowed: one that its New function has made, or a pointer to one"
	rungs := contest.ChartQualities(grade.Current, maturity.A)
	s, err := season.NewSeason(rungs)
	faulttest.Text(t, err, "")
	card := placing.Card{Order: placing.MustParseOrder("1-2-3-4")}
	for _, none := range []*season.Season{nil, {}} {
		faulttest.Text(t, none.Estimate("ada", contest.Facts{}, contest.Facts{}), "season"+made)
		faulttest.Text(t, none.Placing("ada", official(t), card), "season"+made)
		faulttest.Text(t, none.Merge(s), "season"+made)
		faulttest.Text(t, none.Merge(nil), "")
		if _, ok := none.Calibration("ada"); ok || len(none.Members()) > 0 {
			t.Error("a season that nobody has made has members")
		}
	}
	faulttest.Text(t, s.Merge(nil), "")
	var errors *season.Errors
	faulttest.Text(t, errors.Add(0, 0), "errors"+made)
	errors.Merge(season.Errors{})
	var class *season.ClassCards
	faulttest.Text(t, class.Add(card.Order, contest.PointsOf(1)), "class"+made)
	faulttest.Text(t, class.Merge(season.ClassCards{}), "class"+made)
	var agreement *season.Agreement
	faulttest.Text(t, agreement.Add(1, 1), "agreement"+made)
	faulttest.Text(t, agreement.Merge(season.Agreement{}), "agreement"+made)
	var judges *season.Judges
	faulttest.Text(t, judges.Add("1", "ada", 7), "judges"+made)
	faulttest.Text(t, judges.Merge(season.Judges{}), "judges"+made)
}

// TestSeasonTellsEverything holds that a quality off the rungs is told on both sides,
// and that nothing is added then.
func TestSeasonTellsEverything(t *testing.T) {
	s, err := season.NewSeason(contest.ChartQualities(grade.Current, maturity.A))
	faulttest.Text(t, err, "")
	low := grade.Commercial.Part(grade.Low)
	faulttest.Text(t, s.Estimate("ada", facts(low, 0.4, 25), facts(low, 0.4, 25)), "quality: Low Commercial: unknown; allowed: a rung of the season\nofficial quality: Low Commercial: unknown; allowed: a rung of the season")
	if len(s.Members()) > 0 {
		t.Error("a refused card made a member")
	}
}

// TestHandMadePage holds that a calibration with traits that no card has is printed,
// without a unit.
func TestHandMadePage(t *testing.T) {
	c := season.Calibration{Member: "ada", Traits: []season.TraitFigures{{Trait: 99, Bias: season.Figure{N: 2}}, {Bias: season.Figure{N: 3}}, {Trait: grade.TraitButtons, Bias: season.Figure{N: 4}}}}
	got := strings.Join(strings.Fields(c.String()), " ")
	for _, row := range []string{"member ada ", " trait(99) 2 0.00 ", " unset 3 0.00 ", " chine buttons 4 0.00 "} {
		if !strings.Contains(got+" ", row) {
			t.Errorf("%q is not in %q", row, got)
		}
	}
}

// TestClassWithoutRest holds that a card whose points on the rest are not set counts
// for everything but the discrimination.
func TestClassWithoutRest(t *testing.T) {
	c := season.NewClassCards(official(t))
	for i := range 6 {
		rest := contest.PointsOf(float64(i))
		if i == 0 {
			rest = contest.Points{}
		}
		faulttest.Text(t, c.Add(placing.MustParseOrder("1-2-3-4"), rest), "")
	}
	if c.Exact().N != 6 || c.Discrimination().N != 5 {
		t.Errorf("%d cards, %d with points on the rest", c.Exact().N, c.Discrimination().N)
	}
}
