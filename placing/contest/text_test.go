package contest_test

import (
	"encoding/json"
	"fmt"
	"math"
	"testing"

	"example.com/ribface/grade"
	"example.com/ribface/internal/testkit/faulttest"
	"example.com/ribface/internal/testkit/roundtrip"
	"example.com/ribface/placing/contest"
)

func TestText(t *testing.T) {
	roundtrip.Run(t, "Kind", contest.KindHand, roundtrip.Read[contest.Kind], roundtrip.Case[contest.Kind]{
		Texts: map[string]contest.Kind{"placing": contest.KindPlacing, "quality": contest.KindQuality, "yield": contest.KindYield, "by hand": contest.KindHand},
		Bad:   []string{"?", "unset"}, Invalid: []contest.Kind{5},
	})
	roundtrip.Run(t, "YieldStep", contest.Tenths, roundtrip.Read[contest.YieldStep], roundtrip.Case[contest.YieldStep]{
		Texts: map[string]contest.YieldStep{"whole grades": contest.WholeGrades, "thirds": contest.Thirds, "tenths": contest.Tenths},
		Bad:   []string{"?", "unset"}, Invalid: []contest.YieldStep{4},
	})
	roundtrip.Run(t, "ShortTeam", contest.Barred, roundtrip.Read[contest.ShortTeam], roundtrip.Case[contest.ShortTeam]{
		Texts: map[string]contest.ShortTeam{"barred": contest.Barred}, Aliases: map[string]contest.ShortTeam{"missing members score 0": contest.ScoredShort},
		Bad: []string{"?", "unset"}, Invalid: []contest.ShortTeam{2},
	})
	roundtrip.Run(t, "Points", pts(1), parsePoints, roundtrip.Case[contest.Points]{
		Texts:   map[string]contest.Points{"9999999999.9999": contest.PointsUnits(99_999_999_999_999), "-9999999999.9999": contest.PointsUnits(-99_999_999_999_999), "42.5": contest.PointsOf(42.5), "-3": pts(-3), "0": pts(0)},
		Aliases: map[string]contest.Points{" 42.50 ": contest.PointsOf(42.5), "+7": pts(7), ".5": contest.PointsOf(0.5), "4.25e1": contest.PointsOf(42.5)},
		Numbers: map[int64]contest.Points{0: pts(0), 41: pts(41), -3: pts(-3)},
		Bad:     []string{"?", "unset", "1,5", "1.00001", "10000000000", "-10000000000", "10e9", "-1e10"},
	})
	if got := contest.ShortTeam(2).String(); got != "rule for short teams(2)" {
		t.Errorf("got %q", got)
	}
	_, err := contest.ParsePoints("1.00001")
	faulttest.Text(t, err, `points: "1.00001": too many places; allowed: a number with at most 4 places`)
}

func parsePoints(s string) (contest.Points, error) { return contest.ParsePoints(s) }

// TestPoints holds sums, comparison and formats of points.
func TestPoints(t *testing.T) {
	var none contest.Points
	half := contest.PointsOf(7.5)
	if half.Units() != 75_000 || half != contest.PointsUnits(75_000) || half.Decimal().String() != "7.5" || !half.IsSet() || none.IsSet() || none.Units() != 0 || !none.Decimal().IsZero() || !pts(0).IsSet() {
		t.Errorf("%v has %d units", half, half.Units())
	}
	if half.Add(pts(2)) != contest.PointsOf(9.5) || half.Sub(pts(9)) != contest.PointsOf(-1.5) || half.Add(none).IsSet() || none.Add(half).IsSet() || half.Sub(none).IsSet() || none.Sub(half).IsSet() {
		t.Error("sums are wrong")
	}
	if half.Compare(pts(8)) != -1 || half.Compare(half) != 0 || pts(-1).Compare(none) != 1 || none.Compare(pts(-1_000_000)) != -1 || !half.Equal(half) || half.Equal(none) {
		t.Error("points compare wrongly")
	}
	if contest.PointsOf(math.NaN()).IsSet() || contest.PointsOf(math.Inf(1)) != contest.PointsUnits(math.MaxInt64) || contest.PointsOf(math.Inf(-1)) != contest.PointsUnits(math.MinInt64) || contest.PointsOf(0.00005) != contest.PointsUnits(1) || contest.PointsOf(-0.00005) != contest.PointsUnits(-1) {
		t.Error("the ends of the range are wrong")
	}
	for format, want := range map[string]string{"%v": "7.5", "%s": "7.5", "%q": `"7.5"`, "%.0f": "8", "%.1f": "7.5", "%6.2f": "  7.50", "%f": "7.5", "%.2F": "7.50", "%+.1f": "+7.5", "%#v": "contest.PointsUnits(75000)", "%d": "%!d(7.5)"} {
		if got := fmt.Sprintf(format, half); got != want {
			t.Errorf("%s gives %q, want %q", format, got, want)
		}
	}
	if got := fmt.Sprintf("%v %.1f %#v %q", none, none, none, none); got != `unset unset contest.Points{} "unset"` {
		t.Errorf("points that are not set: %s", got)
	}
	for in, want := range map[string]string{"1.00005": "1", "-1.00005": "-1.0001"} {
		if p, err := contest.ParsePoints(in, grade.Down); err != nil || p.String() != want {
			t.Errorf("%s rounded down: %v, %v; want %s", in, p, err, want)
		}
	}
	_, err := contest.ParsePoints("1", grade.Rounding(9))
	faulttest.Text(t, err, "rounding: rounding(9): unknown; allowed: down, half up, half even")
	// Bare numbers in JSON, and quoted ones are read.
	var both struct {
		A contest.Points `json:"a"`
		B contest.Points `json:"b"`
		C contest.Points `json:"c,omitzero"`
	}
	if err := json.Unmarshal([]byte(`{"a": 41.5, "b": "7"}`), &both); err != nil {
		t.Fatal(err)
	}
	if b, err := json.Marshal(both); err != nil || string(b) != `{"a":41.5,"b":7}` {
		t.Errorf("JSON %s, %v", b, err)
	}
	if b, err := json.Marshal(none); err != nil || string(b) != `""` {
		t.Errorf("JSON of points that are not set: %s, %v", b, err)
	}
}
