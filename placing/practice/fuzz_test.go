package practice_test

import (
	"testing"

	"example.com/ribface/internal/testkit/roundtrip"
	"example.com/ribface/placing/practice"
)

func FuzzParseDifficulty(f *testing.F) {
	roundtrip.Fuzz(f, practice.ParseDifficulty, practice.Hard, "easy")
}

func FuzzParseShape(f *testing.F) {
	roundtrip.Fuzz(f, practice.ParseShape, practice.ClosePairs, "clear steps")
}
