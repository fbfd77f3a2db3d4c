// Package peers does the same sums with this library, with plain float64 and
// with three decimal libraries, so that they can be timed side by side. The exact
// ones are held equal first; see the tests.
//
// It is a module of its own, because nobody who uses the library needs the other
// decimals.
package peers

import (
	"errors"
	"math"

	"example.com/ribface/grade"
	"example.com/ribface/maturity"
	"example.com/ribface/placing"
	"github.com/cockroachdb/apd/v3"
	gov "github.com/govalues/decimal"
	"github.com/shopspring/decimal"
)

// Row is the four facts behind a yield grade, in the type of one implementation.
type Row[T any] struct{ Fat, Ribeye, KPH, Weight T }

// Carcasses returns n invented carcasses of plausible measures, made by a fixed
// rule so that every run and every implementation sees the same ones.
func Carcasses(n int) []grade.Carcass {
	cs := make([]grade.Carcass, n)
	state := uint32(2463534242)
	next := func(n uint32) int {
		state ^= state << 13
		state ^= state >> 17
		state ^= state << 5
		return int(state % n)
	}
	for i := range cs {
		cs[i] = grade.Carcass{
			Sex:      grade.Steer,
			Maturity: maturity.Evidence{Skeletal: maturity.A.At(next(100)), Lean: maturity.A.At(next(100))},
			Marbling: grade.Traces.At(0) + grade.Marbling(next(700)),
			Measures: grade.Measures{
				Fat:    grade.ThicknessUnits(int64(2000 + 500*next(17))),
				Ribeye: grade.AreaUnits(int64(100_000 + 1000*next(71))),
				KPH:    grade.ShareUnits(int64(15_000 + 5000*next(6))),
				Weight: grade.WeightUnits(int64(6_000_000 + 10_000*next(401))),
			},
		}
	}
	return cs
}

// Rows turns the measures into the type of an implementation by their decimal
// text.
func Rows[T any](cs []grade.Carcass, from func(string) T) []Row[T] {
	rows := make([]Row[T], len(cs))
	for i, c := range cs {
		m := c.Measures
		rows[i] = Row[T]{from(m.Fat.Inches().String()), from(m.Ribeye.SquareInches().String()), from(m.KPH.Percent().String()), from(m.Weight.Pounds().String())}
	}
	return rows
}

// Float is the plain formula, left to right.
func Float(r *Row[float64]) float64 {
	return 2.50 + 2.50*r.Fat + 0.20*r.KPH + 0.0038*r.Weight - 0.32*r.Ribeye
}

// FloatGrade is its whole grade.
func FloatGrade(y float64) int {
	g := int(math.Floor(y))
	if g < 1 {
		return 1
	} else if g > 5 {
		return 5
	}
	return g
}

// errRange is the error of [FloatExact].
var errRange = errors.New("out of range")

// FloatExact is the formula in float64 made exact: checked for the range that
// package grade takes, then every measure rounded to whole units of 0.0001 and the sum
// taken in whole units of 1e-8, which a float64 holds exactly. A value that is not a
// number fails every comparison and is refused.
func FloatExact(r *Row[float64]) (y float64, err error) {
	if !(r.Fat >= 0 && r.Fat <= 3 && r.Ribeye >= 1 && r.Ribeye <= 25 && r.KPH >= 0 && r.KPH <= 10 && r.Weight >= 100 && r.Weight <= 1800) {
		return 0, errRange
	}
	return (250_000_000 + 25_000*math.Round(r.Fat*10_000) + 2_000*math.Round(r.KPH*10_000) + 38*math.Round(r.Weight*10_000) - 3_200*math.Round(r.Ribeye*10_000)) / 100_000_000, nil
}

var (
	shopBase, shopFat   = decimal.RequireFromString("2.50"), decimal.RequireFromString("2.50")
	shopKPH, shopWeight = decimal.RequireFromString("0.20"), decimal.RequireFromString("0.0038")
	shopRibeye          = decimal.RequireFromString("0.32")
	govBase, govFat     = gov.MustParse("2.50"), gov.MustParse("2.50")
	govKPH, govWeight   = gov.MustParse("0.20"), gov.MustParse("0.0038")
	govRibeye           = gov.MustParse("0.32")
	apdContext          = apd.BaseContext.WithPrecision(30)
	apdBase, apdFat     = apd.New(250, -2), apd.New(250, -2)
	apdKPH, apdWeight   = apd.New(20, -2), apd.New(38, -4)
	apdRibeye           = apd.New(32, -2)
)

// Shopspring is the formula in shopspring/decimal.
func Shopspring(r *Row[decimal.Decimal]) decimal.Decimal {
	return shopBase.Add(shopFat.Mul(r.Fat)).Add(shopKPH.Mul(r.KPH)).Add(shopWeight.Mul(r.Weight)).Sub(shopRibeye.Mul(r.Ribeye))
}

// ShopspringGrade is its whole grade.
func ShopspringGrade(y decimal.Decimal) int { return int(min(max(y.Floor().IntPart(), 1), 5)) }

// Govalues is the formula in govalues/decimal, with its fused operations.
func Govalues(r *Row[gov.Decimal]) (gov.Decimal, error) {
	y, err := govBase.AddMul(govFat, r.Fat)
	if err != nil {
		return y, err
	}
	if y, err = y.AddMul(govKPH, r.KPH); err != nil {
		return y, err
	}
	if y, err = y.AddMul(govWeight, r.Weight); err != nil {
		return y, err
	}
	return y.SubMul(govRibeye, r.Ribeye)
}

// GovaluesGrade is its whole grade.
func GovaluesGrade(y gov.Decimal) int {
	n, _, _ := y.Floor(0).Int64(0)
	return int(min(max(n, 1), 5))
}

// Apd is the formula in cockroachdb/apd. It writes into y and uses t for the
// products, so that nothing is allocated.
func Apd(y, t *apd.Decimal, r *Row[*apd.Decimal]) error {
	y.Set(apdBase)
	for _, term := range [...]struct{ c, v *apd.Decimal }{{apdFat, r.Fat}, {apdKPH, r.KPH}, {apdWeight, r.Weight}} {
		if _, err := apdContext.Mul(t, term.c, term.v); err != nil {
			return err
		}
		if _, err := apdContext.Add(y, y, t); err != nil {
			return err
		}
	}
	if _, err := apdContext.Mul(t, apdRibeye, r.Ribeye); err != nil {
		return err
	}
	_, err := apdContext.Sub(y, y, t)
	return err
}

// ApdGrade is its whole grade; t takes the floor.
func ApdGrade(y, t *apd.Decimal) (int, error) {
	if _, err := apdContext.Floor(t, y); err != nil {
		return 0, err
	}
	n, err := t.Int64()
	return int(min(max(n, 1), 5)), err
}

// PairScore is the pairwise-cut score as the rule reads: for every pair that the
// card reverses, the cuts between the two.
func PairScore(official placing.Official, card placing.Order) int {
	score := placing.FullScore
	order, cuts := official.Order(), official.Cuts()
	for i := 1; i <= order.Len(); i++ {
		between := 0
		for j := i + 1; j <= order.Len(); j++ {
			between += cuts.At(j - 1)
			if card.Place(order.At(i)) > card.Place(order.At(j)) {
				score -= between
			}
		}
	}
	return score
}

// SliceScore is PairScore on plain slices, as a program without this library
// would write it. order and card hold exhibits 1 to n from first to last.
func SliceScore(order, cuts, card []int) int {
	var place [placing.MaxExhibits + 1]int
	for p, e := range card {
		place[e] = p
	}
	score := placing.FullScore
	for i := range order {
		between := 0
		for j := i + 1; j < len(order); j++ {
			between += cuts[j-1]
			if place[order[i]] > place[order[j]] {
				score -= between
			}
		}
	}
	return score
}

// DecimalScore is SliceScore with cuts in shopspring/decimal.
func DecimalScore(order []int, cuts []decimal.Decimal, card []int) decimal.Decimal {
	var place [placing.MaxExhibits + 1]int
	for p, e := range card {
		place[e] = p
	}
	score := decimal.NewFromInt(placing.FullScore)
	for i := range order {
		between := decimal.Zero
		for j := i + 1; j < len(order); j++ {
			between = between.Add(cuts[j-1])
			if place[order[i]] > place[order[j]] {
				score = score.Sub(between)
			}
		}
	}
	return score
}

// FloatCarcass is what a plain program keeps of a carcass in group A: maturity in
// units, marbling on the scale with Slight00 = 300.
type FloatCarcass struct {
	Bone, Lean, Marbling float64
	Row[float64]
}

// FloatAssess grades a firm steer of group A by the edition in use, without any
// check: overall maturity, part of the grade as 3*grade, whole yield grade.
func FloatAssess(c *FloatCarcass) (overall float64, quality, yield int) {
	overall = (c.Bone + c.Lean) / 2
	if d := c.Bone - c.Lean; d > 40 {
		overall += 10
	} else if d < -40 {
		overall -= 10
	}
	switch {
	case c.Marbling >= 900:
		quality = 13
	case c.Marbling >= 800:
		quality = 12
	case c.Marbling >= 700:
		quality = 11
	case c.Marbling >= 600:
		quality = 10
	case c.Marbling >= 500:
		quality = 9
	case c.Marbling >= 400:
		quality = 8
	case c.Marbling >= 350:
		quality = 7
	case c.Marbling >= 300:
		quality = 5
	case c.Marbling >= 234:
		quality = 4
	case c.Marbling >= 167:
		quality = 3
	case c.Marbling >= 100:
		quality = 2
	default:
		quality = 1
	}
	return overall, quality, FloatGrade(Float(&c.Row))
}

// FloatQualities are the names of FloatAssess's qualities.
var FloatQualities = [...]string{1: "Utility", 2: "Low Standard", 3: "Average Standard", 4: "High Standard", 5: "Low Select", 7: "High Select",
	8: "Low Choice", 9: "Average Choice", 10: "High Choice", 11: "Low Prime", 12: "Average Prime", 13: "High Prime"}

// FloatCarcasses turns carcasses of group A into what FloatAssess takes.
func FloatCarcasses(cs []grade.Carcass) []FloatCarcass {
	out := make([]FloatCarcass, len(cs))
	for i, c := range cs {
		n, _ := c.Marbling.Number(grade.Slight300)
		out[i] = FloatCarcass{
			Bone: float64(c.Maturity.Skeletal.Units()), Lean: float64(c.Maturity.Lean.Units()), Marbling: float64(n),
			Row: Row[float64]{c.Measures.Fat.Inches().InexactFloat64(), c.Measures.Ribeye.SquareInches().InexactFloat64(), c.Measures.KPH.Percent().InexactFloat64(), c.Measures.Weight.Pounds().InexactFloat64()},
		}
	}
	return out
}

// OnLine returns every carcass of the grid that stands exactly on a whole yield
// grade: fat 0.00 to 2.00 in by 0.05, KPH 0.0 to 6.0 by 0.5, weight 400 to 1,200 lb
// by 1 and ribeye 7.0 to 20.0 sq in by 0.1.
func OnLine() []grade.Measures {
	var out []grade.Measures
	for fat := range int64(41) {
		for kph := range int64(13) {
			for weight := int64(400); weight <= 1200; weight++ {
				for ribeye := int64(70); ribeye <= 200; ribeye++ {
					m := grade.Measures{Fat: grade.ThicknessUnits(fat * 500), KPH: grade.ShareUnits(kph * 5000), Weight: grade.WeightUnits(weight * 10_000), Ribeye: grade.AreaUnits(ribeye * 1000)}
					if y, err := m.Yield(); err == nil && y.Units()%grade.OneGrade == 0 {
						out = append(out, m)
					}
				}
			}
		}
	}
	return out
}
