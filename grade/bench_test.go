package grade_test

import (
	"math"
	"testing"

	"example.com/ribface/grade"
	"example.com/ribface/maturity"
	"github.com/shopspring/decimal"
)

// The inputs of the yield benchmarks: 4,096 carcasses of plausible measures, made
// by a fixed rule so that every run and every implementation sees the same ones.
const benchCarcasses = 4096

func benchMeasures() []grade.Measures {
	ms := make([]grade.Measures, benchCarcasses)
	state := uint32(2463534242)
	next := func(n uint32) int32 {
		state ^= state << 13
		state ^= state >> 17
		state ^= state << 5
		return int32(state % n)
	}
	for i := range ms {
		ms[i] = grade.Measures{Fat: grade.ThicknessUnits(int64(2000 + 500*next(17))), Ribeye: grade.AreaUnits(int64(100_000 + 1000*next(71))), KPH: grade.ShareUnits(int64(15_000 + 5000*next(6))), Weight: grade.WeightUnits(int64(6_000_000 + 10_000*next(401)))}
	}
	return ms
}

type floatMeasures struct{ fat, rea, kph, hcw float64 }

func benchFloats() []floatMeasures {
	fs := make([]floatMeasures, benchCarcasses)
	for i, m := range benchMeasures() {
		fs[i] = floatMeasures{m.Fat.Inches().InexactFloat64(), m.Ribeye.SquareInches().InexactFloat64(), m.KPH.Percent().InexactFloat64(), m.Weight.Pounds().InexactFloat64()}
	}
	return fs
}

var sinkInt int

// BenchmarkYield times the yield equation with its whole grade: impl=ribface is
// this package with all its checks, impl=float64 the plain formula without any,
// impl=decimal the formula in shopspring/decimal.
func BenchmarkYield(b *testing.B) {
	b.Run("impl=float64", func(b *testing.B) {
		fs := benchFloats()
		b.ReportAllocs()
		b.ResetTimer()
		sum := 0
		for i := range b.N {
			f := &fs[i&(benchCarcasses-1)]
			y := 2.50 + 2.50*f.fat + 0.20*f.kph + 0.0038*f.hcw - 0.32*f.rea
			g := int(math.Floor(y))
			if g < 1 {
				g = 1
			} else if g > 5 {
				g = 5
			}
			sum += g
		}
		sinkInt = sum
	})
	b.Run("impl=ribface", func(b *testing.B) {
		ms := benchMeasures()
		b.ReportAllocs()
		b.ResetTimer()
		sum := 0
		for i := range b.N {
			y, err := ms[i&(benchCarcasses-1)].Yield()
			if err != nil {
				b.Fatal(err)
			}
			sum += y.Grade()
		}
		sinkInt = sum
	})
	b.Run("impl=decimal", func(b *testing.B) {
		type row struct{ fat, rea, kph, hcw decimal.Decimal }
		rows := make([]row, benchCarcasses)
		for i, m := range benchMeasures() {
			rows[i] = row{m.Fat.Inches(), m.Ribeye.SquareInches(), m.KPH.Percent(), m.Weight.Pounds()}
		}
		base, cf, ck, cw, cr := decimal.RequireFromString("2.50"), decimal.RequireFromString("2.50"), decimal.RequireFromString("0.20"), decimal.RequireFromString("0.0038"), decimal.RequireFromString("0.32")
		b.ReportAllocs()
		b.ResetTimer()
		sum := 0
		for i := range b.N {
			r := &rows[i&(benchCarcasses-1)]
			y := base.Add(cf.Mul(r.fat)).Add(ck.Mul(r.kph)).Add(cw.Mul(r.hcw)).Sub(cr.Mul(r.rea))
			sum += int(min(max(y.Floor().IntPart(), 1), 5))
		}
		sinkInt = sum
	})
}

var sinkAssessment grade.Assessment

// BenchmarkAssess times a full assessment: maturity, quality and yield.
func BenchmarkAssess(b *testing.B) {
	ms := benchMeasures()
	cs := make([]grade.Carcass, len(ms))
	for i, m := range ms {
		cs[i] = grade.Carcass{
			Sex:      grade.Steer,
			Maturity: maturity.Evidence{Skeletal: maturity.A.At(i % 100), Lean: maturity.A.At(i * 7 % 100)},
			Marbling: grade.Slight.At(i * 13 % 100),
			Lean:     grade.Lean{Firmness: grade.Firm},
			Measures: m,
		}
	}
	b.ReportAllocs()
	b.ResetTimer()
	for i := range b.N {
		a, err := grade.Current.Assess(cs[i&(benchCarcasses-1)])
		if err != nil {
			b.Fatal(err)
		}
		sinkAssessment = a
	}
}
