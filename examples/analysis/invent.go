package main

import (
	"fmt"
	"io"
	"math/bits"
	"math/rand/v2"

	"example.com/ribface/grade"
	"example.com/ribface/grade/sheet"
	"example.com/ribface/maturity"
)

// invent writes a sheet of n invented carcasses.
func invent(out io.Writer, n int, seed uint64) error {
	w, err := sheet.NewWriter(out)
	if err != nil {
		return err
	}
	d := dice{rand.NewPCG(seed, 0)}
	for i := range n {
		row := sheet.Row{ID: fmt.Sprintf("invented-%07d", i+1), Carcass: d.carcass()}
		if err := w.Write(row); err != nil {
			return err
		}
	}
	return w.Flush()
}

// The means of the audit (published: nbqa-2016-inplant: 1.42 cm, 89.5 cm2, 1.9%,
// 390.3 kg) and the spreads of one lot of 24 steers (published:
// jas-2020-skaa287: 0.28 cm, 6.92 cm2, 0.36%, 27.48 kg), each with the step to
// which it is read and the ends that it is kept to.
var (
	fat    = trait{mean: 5591, spread: 1102, step: 500, least: 500, most: 20_000}
	ribeye = trait{mean: 138_725, spread: 10_726, step: 1000, least: 70_000, most: 220_000}
	kph    = trait{mean: 19_000, spread: 3600, step: 5000, least: 5000, most: 60_000}
	weight = trait{mean: 8_604_642, spread: 605_830, step: 10_000, least: 4_500_000, most: 13_000_000}
)

// trait is a measure that is spread about a mean, in units of 0.0001.
type trait struct{ mean, spread, step, least, most int64 }

// degree is a degree of marbling and how many carcasses of a thousand have it.
// The shares of the grades are those of the audit (published: nbqa-2016-inplant:
// Prime 3.8, Choice 67.3, Select 23.2, other 5.6 percent); Choice is split over
// its three degrees so that the mean is Small70 as in the audit (derived).
type degree struct {
	degree grade.Degree
	of1000 int64
}

var degrees = []degree{
	{grade.ModeratelyAbundant, 8}, {grade.SlightlyAbundant, 30},
	{grade.Moderate, 128}, {grade.Modest, 175}, {grade.Small, 370},
	{grade.Slight, 232}, {grade.Traces, 45}, {grade.PracticallyDevoid, 12},
}

// dice throws whole numbers, the same on every machine.
type dice struct{ source *rand.PCG }

// below gives a number from 0 to n-1.
func (d dice) below(n int64) int64 {
	hi, _ := bits.Mul64(d.source.Uint64(), uint64(n))
	return int64(hi)
}

// of gives a value of the trait: the sum of twelve even throws, whose spread is
// one, is near enough to a normal distribution.
func (d dice) of(t trait) int64 {
	const one = 1 << 16
	sum := int64(-6 * one)
	for range 12 {
		sum += d.below(one)
	}
	v := t.mean + t.spread*sum/one
	v = (v + t.step/2) / t.step * t.step
	return min(max(v, t.least), t.most)
}

// carcass gives an invented carcass.
func (d dice) carcass() grade.Carcass {
	var c grade.Carcass
	// Of a hundred: 64 steers, 33 heifers, 2 cows, 1 bullock (no source).
	switch n := d.below(100); {
	case n < 64:
		c.Sex = grade.Steer
	case n < 97:
		c.Sex = grade.Heifer
	case n < 99:
		c.Sex = grade.Cow
	default:
		c.Sex = grade.Bullock
	}
	// Most are A40 to A89, cows B00 to D99 (no source).
	c.Maturity.Skeletal = maturity.A.At(40 + int(d.below(50)))
	if c.Sex == grade.Cow {
		c.Maturity.Skeletal = maturity.B.At(0) + maturity.Score(d.below(300))
	}
	c.Maturity.Lean = max(c.Maturity.Skeletal+maturity.Score(d.below(61)-40), maturity.A.At(10))
	// Of the young, every fourth has been looked at in the mouth (no source).
	if c.Sex != grade.Cow && d.below(4) == 0 {
		c.Maturity.Teeth = maturity.Incisors(int(d.below(3)))
	}
	n := d.below(1000)
	for _, g := range degrees {
		if n -= g.of1000; n < 0 {
			c.Marbling = g.degree.At(int(d.below(100)))
			break
		}
	}
	// Dark cutters are 1.9 of a hundred (published: nbqa-2016-inplant).
	if d.below(1000) < 19 {
		c.Lean.Dark = grade.DarkThird + grade.DarkCut(d.below(3))
	}
	c.Measures = grade.Measures{
		Fat:    grade.ThicknessUnits(d.of(fat)),
		Ribeye: grade.AreaUnits(d.of(ribeye)),
		KPH:    grade.ShareUnits(d.of(kph)),
		Weight: grade.WeightUnits(d.of(weight)),
	}
	// Every tenth is adjusted for fat elsewhere, by the usual 0.1 or 0.2 in
	// either way (usual size published: ga-2004-yield-tutorial).
	if d.below(10) == 0 {
		adjust := []int64{-2000, -1000, 1000, 2000}[d.below(4)]
		if c.Measures.Fat.Units()+adjust >= 0 {
			c.FatAdjust = grade.ThicknessUnits(adjust)
		}
	}
	return c
}
