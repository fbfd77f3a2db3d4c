package contest_test

import (
	"errors"
	"testing"

	"example.com/ribface/internal/faulttest"
	"example.com/ribface/internal/roundtrip"
	"example.com/ribface/placing/contest"
)

func TestText(t *testing.T) {
	roundtrip.Run(t, "Kind", contest.KindHand, contest.ParseKind, roundtrip.Case[contest.Kind]{
		Texts: map[string]contest.Kind{"placing": contest.KindPlacing, "quality": contest.KindQuality, "yield": contest.KindYield, "by hand": contest.KindHand},
		Bad:   []string{"?", "unset"}, Invalid: []contest.Kind{5},
	})
	roundtrip.Run(t, "YieldStep", contest.Tenths, contest.ParseYieldStep, roundtrip.Case[contest.YieldStep]{
		Texts: map[string]contest.YieldStep{"whole grades": contest.WholeGrades, "thirds": contest.Thirds, "tenths": contest.Tenths},
		Bad:   []string{"?", "unset"}, Invalid: []contest.YieldStep{4},
	})
	roundtrip.Run(t, "ShortTeam", contest.Barred, contest.ParseShortTeam, roundtrip.Case[contest.ShortTeam]{
		Texts: map[string]contest.ShortTeam{"missing members score 0": contest.ScoredShort, "barred": contest.Barred},
		Bad:   []string{"?", "unset"}, Invalid: []contest.ShortTeam{2},
	})
	roundtrip.Run(t, "Points", contest.Point, contest.ParsePoints, roundtrip.Case[contest.Points]{
		Texts: map[string]contest.Points{"42.5": 425 * pt / 10, "-3": -3 * pt, "0": 0},
		Bad:   []string{"?", ""},
	})
	if contest.Kind(0).IsValid() || contest.Kind(5).IsValid() || contest.YieldStep(0).IsValid() || contest.YieldStep(4).IsValid() || contest.ShortTeam(2).IsValid() {
		t.Error("a value without a name is valid")
	}
	if got := contest.ShortTeam(2).String(); got != "rule for short teams(2)" {
		t.Errorf("got %q", got)
	}
	if got := (425 * pt / 10).Decimal().String(); got != "42.5" {
		t.Errorf("got %s", got)
	}
	_, err := contest.ParsePoints("1.00001")
	faulttest.Text(t, err, `points: "1.00001": out of range; allowed: a number with at most 4 places`)
	inner := errors.New("inner")
	if err := (&contest.RowError{Line: 2, Err: inner}); !errors.Is(err, inner) || err.Error() != "line 2: inner" {
		t.Errorf("got %v", err)
	}
}
