package season_test

import (
	"testing"

	"example.com/ribface/internal/testkit/roundtrip"
	"example.com/ribface/placing/season"
)

func TestText(t *testing.T) {
	roundtrip.Run(t, "Reason", season.NoSpread, roundtrip.Read[season.Reason], roundtrip.Case[season.Reason]{
		Texts: map[string]season.Reason{"too few": season.TooFew, "no spread": season.NoSpread},
		Bad:   []string{"?", "unset"}, Invalid: []season.Reason{3},
	})
	roundtrip.Run(t, "Weights", season.Linear, roundtrip.Read[season.Weights], roundtrip.Case[season.Weights]{
		Texts: map[string]season.Weights{"unweighted": season.Unweighted, "linear": season.Linear, "quadratic": season.Quadratic},
		Bad:   []string{"?", "unset"}, Invalid: []season.Weights{4},
	})
}
