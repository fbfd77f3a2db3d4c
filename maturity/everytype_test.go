package maturity_test

import (
	"errors"
	"math"
	"testing"

	"example.com/ribface/internal/testkit/everytype"
	"example.com/ribface/internal/testkit/roundtrip"
	"example.com/ribface/maturity"
)

// TestEveryType holds every exported type to the promises of the module.
func TestEveryType(t *testing.T) {
	everytype.Run(t, ".",
		maturity.B, maturity.Group(99), maturity.A.At(60), maturity.A.At(160), maturity.E.At(100), maturity.Score(7), maturity.Score(math.MinInt16), maturity.Score(math.MaxInt16),
		maturity.Months(29), maturity.Months(-1), maturity.Months(601), maturity.Incisors(2), maturity.Incisors(9), maturity.Incisors(-1), maturity.Teeth(math.MinInt8),
		maturity.Ossified(10), maturity.Ossified(101), maturity.WhiteAndSoft, maturity.Buttons(200),
		maturity.TensTowardBone, maturity.Tens(99), maturity.OldLeanStaysInB, maturity.OldLean(99),
		maturity.Balancing{Tens: maturity.TensTowardLean}, maturity.Balancing{Tens: 99, OldLean: 99},
		maturity.Evidence{Skeletal: maturity.A.At(60), Lean: maturity.A.At(40), Teeth: maturity.Incisors(2), Buttons: maturity.Ossified(10), Papers: 29}, maturity.Evidence{Skeletal: 7, Lean: -7, Teeth: -9, Papers: -1},
		maturity.Evidence{Skeletal: maturity.E.At(100), Teeth: maturity.Incisors(0)},
		maturity.OssificationPoint{Score: 7, Percent: -1},
		&maturity.FieldError{Field: "teeth", Err: maturity.ErrRange}, &maturity.ParseError{Kind: "teeth", Err: errors.New("odd")},

		maturity.Balance, maturity.FromOssification, maturity.OssificationPoints, maturity.Groups, maturity.Incisors,
		maturity.Parse, maturity.ParseGroup, maturity.ParseMonths, maturity.ParseTeeth, maturity.ParseButtons, roundtrip.Read[maturity.Tens], roundtrip.Read[maturity.OldLean], maturity.Problems,
	)
}
