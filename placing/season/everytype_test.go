package season_test

import (
	"testing"

	"example.com/ribface/grade"
	"example.com/ribface/internal/testkit/everytype"
	"example.com/ribface/internal/testkit/faulttest"
	"example.com/ribface/maturity"
	"example.com/ribface/placing"
	"example.com/ribface/placing/contest"
	"example.com/ribface/placing/season"
)

// TestEveryType holds every exported type to what the module promises of all: no
// method panics on any value, and package cmp compares the values.
func TestEveryType(t *testing.T) {
	rungs := contest.ChartQualities(grade.Current, maturity.A)
	s, err := season.NewSeason(rungs)
	faulttest.Text(t, err, "")
	for range 12 {
		faulttest.Text(t, s.Estimate("ada", facts(rungs[3], 0.4, 25), facts(rungs[4], 0.5, 27)), "")
	}
	calibration, _ := s.Calibration("ada")
	agreement, err := season.NewAgreement(3)
	faulttest.Text(t, err, "")
	faulttest.Text(t, agreement.Add(0, 2), "")
	judges := season.Judges{}
	faulttest.Text(t, judges.Add("1", "ada", 7), "")
	class := season.NewClassCards(official(t))
	faulttest.Text(t, class.Add(placing.MustParseOrder("1-2-3-4"), contest.Points{}), "")
	icc, err := judges.Ratings().Intraclass()
	faulttest.Text(t, err, "")
	var errors season.Errors
	faulttest.Text(t, errors.Add(1, 2), "")
	everytype.Run(t, ".",
		s, calibration, calibration.Traits[0], calibration.Quality, agreement, judges, judges.Ratings(), season.Ratings{Values: [][]int64{{1}, {1, 2}}},
		icc, class, class.Pairs()[0], errors, calibration.Tau, season.TooFew,
	)
}
