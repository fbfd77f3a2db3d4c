package season_test

import (
	"testing"

	"example.com/ribface/internal/testkit/roundtrip"
	"example.com/ribface/placing/season"
)

func TestText(t *testing.T) {
	roundtrip.Run(t, "Reason", season.NoSpread, season.ParseReason, roundtrip.Case[season.Reason]{
		Texts: map[string]season.Reason{"too few": season.TooFew, "no spread": season.NoSpread},
		Bad:   []string{"?", "unset"}, Invalid: []season.Reason{3},
	})
	roundtrip.Run(t, "Weights", season.Linear, season.ParseWeights, roundtrip.Case[season.Weights]{
		Texts: map[string]season.Weights{"unweighted": season.Unweighted, "linear": season.Linear, "quadratic": season.Quadratic},
		Bad:   []string{"?", "unset"}, Invalid: []season.Weights{4},
	})
	if season.Reason(0).IsValid() || season.Reason(3).IsValid() || season.Weights(0).IsValid() || season.Weights(4).IsValid() {
		t.Error("a value without a name is valid")
	}
}
