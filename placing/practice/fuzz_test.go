package practice_test

import (
	"testing"

	"example.com/ribface/internal/testkit/roundtrip"
	"example.com/ribface/placing/practice"
)

func FuzzParseDifficulty(f *testing.F) {
	roundtrip.Fuzz(f, roundtrip.Read[practice.Difficulty], practice.Hard, "easy")
}

func FuzzParseShape(f *testing.F) {
	roundtrip.Fuzz(f, roundtrip.Read[practice.Shape], practice.ClosePairs, "clear steps")
}
