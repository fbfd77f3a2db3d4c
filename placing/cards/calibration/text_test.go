package calibration_test

import (
	"testing"

	"example.com/ribface/internal/roundtrip"
	"example.com/ribface/placing/cards/calibration"
)

func TestText(t *testing.T) {
	roundtrip.Run(t, "Reason", calibration.NoSpread, calibration.ParseReason, roundtrip.Case[calibration.Reason]{
		Texts: map[string]calibration.Reason{"too few": calibration.TooFew, "no spread": calibration.NoSpread},
		Bad:   []string{"?", "unset"}, Invalid: []calibration.Reason{3},
	})
	roundtrip.Run(t, "Weights", calibration.Linear, calibration.ParseWeights, roundtrip.Case[calibration.Weights]{
		Texts: map[string]calibration.Weights{"unweighted": calibration.Unweighted, "linear": calibration.Linear, "quadratic": calibration.Quadratic},
		Bad:   []string{"?", "unset"}, Invalid: []calibration.Weights{4},
	})
	roundtrip.Run(t, "Trait", calibration.TraitFat, calibration.ParseTrait, roundtrip.Case[calibration.Trait]{
		Texts: map[string]calibration.Trait{
			"skeletal": calibration.TraitSkeletal, "lean": calibration.TraitLean, "preliminary": calibration.TraitPreliminary,
			"maturity": calibration.TraitMaturity, "marbling": calibration.TraitMarbling, "quality": calibration.TraitQuality, "fat": calibration.TraitFat,
			"ribeye": calibration.TraitRibeye, "KPH": calibration.TraitKPH, "weight": calibration.TraitWeight, "yield": calibration.TraitYield,
		},
		Bad: []string{"?", "unset"}, Invalid: []calibration.Trait{12},
	})
	if calibration.Reason(0).IsValid() || calibration.Reason(3).IsValid() || calibration.Weights(0).IsValid() || calibration.Weights(4).IsValid() || calibration.Trait(0).IsValid() || calibration.Trait(12).IsValid() {
		t.Error("a value without a name is valid")
	}
}
