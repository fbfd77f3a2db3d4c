package season_test

import (
	"testing"

	"example.com/ribface/internal/testkit/roundtrip"
	"example.com/ribface/placing/season"
)

func FuzzParseReason(f *testing.F) {
	roundtrip.Fuzz(f, roundtrip.Read[season.Reason], season.NoSpread, "too few")
}
