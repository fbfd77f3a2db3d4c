package cards_test

import (
	"testing"

	"example.com/ribface/internal/roundtrip"
	"example.com/ribface/placing/cards"
)

func FuzzParseKind(f *testing.F) { roundtrip.Fuzz(f, cards.ParseKind, cards.KindYield, "by hand") }

func FuzzParseYieldStep(f *testing.F) {
	roundtrip.Fuzz(f, cards.ParseYieldStep, cards.Tenths, "whole grades")
}

func FuzzParsePoints(f *testing.F) { roundtrip.Fuzz(f, cards.ParsePoints, cards.Point, "7.5", "-3") }

func FuzzParseShortTeam(f *testing.F) {
	roundtrip.Fuzz(f, cards.ParseShortTeam, cards.Barred, "missing members score 0")
}
