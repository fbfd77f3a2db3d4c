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
}
