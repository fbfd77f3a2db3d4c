package maturity_test

import (
	"testing"

	"example.com/ribface/internal/testkit/roundtrip"
	"example.com/ribface/maturity"
)

func FuzzGroup(f *testing.F) { roundtrip.Fuzz(f, maturity.ParseGroup, maturity.C, "A", "E", "F", "a") }

func FuzzScore(f *testing.F) {
	roundtrip.Fuzz(f, maturity.Parse, maturity.C.At(50), "A00", "A100", "E100", "A101", "A7", "F20", "A70x", `"B50"`)
}

func FuzzMonths(f *testing.F) {
	roundtrip.Fuzz(f, maturity.ParseMonths, maturity.Months(29), "none", "1 month", "29 months", "29", "600", "601", "0")
}

func FuzzTeeth(f *testing.F) {
	roundtrip.Fuzz(f, maturity.ParseTeeth, maturity.Incisors(2), "not looked at", "0", "8", "9", "1 permanent incisor", "2 permanent incisors", "8 permanent incisors")
}
