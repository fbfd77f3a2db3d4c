package contest_test

import (
	"testing"

	"example.com/ribface/internal/testkit/roundtrip"
)

func FuzzParsePoints(f *testing.F) {
	roundtrip.Fuzz(f, parsePoints, pts(1), "7.5", "-3", " +7.50", "1e2", "1.00001", "10e9")
}
