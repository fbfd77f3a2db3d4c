package calibration_test

import (
	"testing"

	"example.com/ribface/internal/roundtrip"
	"example.com/ribface/placing/cards/calibration"
)

func FuzzParseReason(f *testing.F) {
	roundtrip.Fuzz(f, calibration.ParseReason, calibration.NoSpread, "too few")
}

func FuzzParseWeights(f *testing.F) {
	roundtrip.Fuzz(f, calibration.ParseWeights, calibration.Linear, "quadratic")
}

func FuzzParseTrait(f *testing.F) {
	roundtrip.Fuzz(f, calibration.ParseTrait, calibration.TraitKPH, "fat")
}
