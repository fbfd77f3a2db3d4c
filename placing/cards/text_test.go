package cards_test

import (
	"errors"
	"testing"

	"example.com/ribface/internal/faulttest"
	"example.com/ribface/internal/roundtrip"
	"example.com/ribface/placing/cards"
)

func TestText(t *testing.T) {
	roundtrip.Run(t, "Kind", cards.KindHand, cards.ParseKind, roundtrip.Case[cards.Kind]{
		Texts: map[string]cards.Kind{"placing": cards.KindPlacing, "quality": cards.KindQuality, "yield": cards.KindYield, "by hand": cards.KindHand},
		Bad:   []string{"?", "unset"}, Invalid: []cards.Kind{5},
	})
	roundtrip.Run(t, "YieldStep", cards.Tenths, cards.ParseYieldStep, roundtrip.Case[cards.YieldStep]{
		Texts: map[string]cards.YieldStep{"whole grades": cards.WholeGrades, "thirds": cards.Thirds, "tenths": cards.Tenths},
		Bad:   []string{"?", "unset"}, Invalid: []cards.YieldStep{4},
	})
	roundtrip.Run(t, "ShortTeam", cards.Barred, cards.ParseShortTeam, roundtrip.Case[cards.ShortTeam]{
		Texts: map[string]cards.ShortTeam{"missing members score 0": cards.ScoredShort, "barred": cards.Barred},
		Bad:   []string{"?", "unset"}, Invalid: []cards.ShortTeam{2},
	})
	roundtrip.Run(t, "Points", cards.Point, cards.ParsePoints, roundtrip.Case[cards.Points]{
		Texts: map[string]cards.Points{"42.5": 425 * pt / 10, "-3": -3 * pt, "0": 0},
		Bad:   []string{"?", ""},
	})
	if cards.Kind(0).IsValid() || cards.Kind(5).IsValid() || cards.YieldStep(0).IsValid() || cards.YieldStep(4).IsValid() || cards.ShortTeam(2).IsValid() {
		t.Error("a value without a name is valid")
	}
	if got := cards.ShortTeam(2).String(); got != "rule for short teams(2)" {
		t.Errorf("got %q", got)
	}
	if got := (425 * pt / 10).Decimal().String(); got != "42.5" {
		t.Errorf("got %s", got)
	}
	_, err := cards.ParsePoints("1.00001")
	faulttest.Text(t, err, `points: "1.00001": out of range; allowed: a number with at most 4 places`)
	inner := errors.New("inner")
	if err := (&cards.RowError{Line: 2, Err: inner}); !errors.Is(err, inner) || err.Error() != "line 2: inner" {
		t.Errorf("got %v", err)
	}
}
