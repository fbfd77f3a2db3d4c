package contest_test

import (
	"testing"

	"example.com/ribface/internal/testkit/roundtrip"
	"example.com/ribface/placing/contest"
)

func FuzzParseKind(f *testing.F) {
	roundtrip.Fuzz(f, roundtrip.Read[contest.Kind], contest.KindYield, "by hand")
}

func FuzzParseYieldStep(f *testing.F) {
	roundtrip.Fuzz(f, roundtrip.Read[contest.YieldStep], contest.Tenths, "whole grades")
}

func FuzzParsePoints(f *testing.F) {
	roundtrip.Fuzz(f, parsePoints, pts(1), "7.5", "-3", " +7.50", "1e2", "1.00001")
}

func FuzzParseShortTeam(f *testing.F) {
	roundtrip.Fuzz(f, roundtrip.Read[contest.ShortTeam], contest.Barred, "missing members score 0")
}
