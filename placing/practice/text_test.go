package practice_test

import (
	"testing"

	"example.com/ribface/internal/testkit/roundtrip"
	"example.com/ribface/placing/practice"
)

func TestText(t *testing.T) {
	roundtrip.Run(t, "Difficulty", practice.Easy, roundtrip.Read[practice.Difficulty], roundtrip.Case[practice.Difficulty]{
		Texts: map[string]practice.Difficulty{"hard": practice.Hard, "medium": practice.Medium, "easy": practice.Easy},
		Bad:   []string{"?", "unset"}, Invalid: []practice.Difficulty{4},
	})
	roundtrip.Run(t, "Shape", practice.ClearSteps, roundtrip.Read[practice.Shape], roundtrip.Case[practice.Shape]{
		Texts: map[string]practice.Shape{"close middle": practice.CloseMiddle, "close pairs": practice.ClosePairs, "clear steps": practice.ClearSteps},
		Bad:   []string{"?", "unset"}, Invalid: []practice.Shape{4},
	})
}
