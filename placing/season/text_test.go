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
	roundtrip.Run(t, "Trait", season.TraitFat, season.ParseTrait, roundtrip.Case[season.Trait]{
		Texts: map[string]season.Trait{
			"skeletal": season.TraitSkeletal, "lean": season.TraitLean, "preliminary": season.TraitPreliminary,
			"maturity": season.TraitMaturity, "marbling": season.TraitMarbling, "quality": season.TraitQuality, "fat": season.TraitFat,
			"ribeye": season.TraitRibeye, "KPH": season.TraitKPH, "weight": season.TraitWeight, "yield": season.TraitYield,
		},
		Bad: []string{"?", "unset"}, Invalid: []season.Trait{12},
	})
	if season.Trait(0).IsValid() || season.Trait(12).IsValid() {
		t.Error("a value without a name is valid")
	}
}
