package practice_test

import (
	"testing"

	"example.com/ribface/internal/testkit/roundtrip"
	"example.com/ribface/placing/practice"
)

func TestText(t *testing.T) {
	roundtrip.Run(t, "Difficulty", practice.Easy, practice.ParseDifficulty, roundtrip.Case[practice.Difficulty]{
		Texts: map[string]practice.Difficulty{"hard": practice.Hard, "medium": practice.Medium, "easy": practice.Easy},
		Bad:   []string{"?", "unset"}, Invalid: []practice.Difficulty{4},
	})
	roundtrip.Run(t, "Shape", practice.ClearSteps, practice.ParseShape, roundtrip.Case[practice.Shape]{
		Texts: map[string]practice.Shape{"close middle": practice.CloseMiddle, "close pairs": practice.ClosePairs, "clear steps": practice.ClearSteps},
		Bad:   []string{"?", "unset"}, Invalid: []practice.Shape{4},
	})
	if practice.Difficulty(0).IsValid() || practice.Difficulty(4).IsValid() || practice.Shape(0).IsValid() || practice.Shape(4).IsValid() {
		t.Error("a value without a name is valid")
	}
}
