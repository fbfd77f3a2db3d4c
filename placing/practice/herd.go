package practice

import (
	"example.com/ribface/grade"
	"example.com/ribface/maturity/cite"
)

// Herd is what carcasses are drawn from: the mean and standard deviation of each
// trait. The zero Herd is refused.
type Herd struct {
	Name string

	Fat, FatSpread       grade.Thickness
	Ribeye, RibeyeSpread grade.Area
	KPH, KPHSpread       grade.Share
	Weight, WeightSpread grade.Weight
	Marbling             grade.Marbling
	MarblingSpread       int // in points of a hundredth of a degree

	Means, Spreads cite.Citation
	Marblings      cite.Citation // where the spread of marbling comes from
}

// Herds returns the herds of the published audits of fed cattle that give all five
// means. The audits give no spreads; those are of 24 steers (published:
// jas-2020-skaa287). The spread of marbling, 127 points, is derived from the shares
// of grades of 2016: 28.8 percent below Small00 and 3.8 percent at Slightly
// Abundant 00 or more lie 70 points below and 230 above the mean, which put the
// standard deviation at 125 and 130 (nbqa-2016-inplant).
func Herds() []Herd {
	spread := Herd{
		// 0.28 cm, 6.92 sq cm, 0.36 percent, 27.48 kg.
		FatSpread: 1102, RibeyeSpread: 10_726, KPHSpread: 3600, WeightSpread: 605_830, MarblingSpread: 127,
		Spreads:   cite.Citation{Standing: cite.Published, IDs: "jas-2020-skaa287"},
		Marblings: cite.Citation{Standing: cite.Derived, IDs: "nbqa-2016-inplant"},
	}
	herd := func(name, id string, fat grade.Thickness, ribeye grade.Area, kph grade.Share, weight grade.Weight, marbling int) Herd {
		h := spread
		h.Name, h.Fat, h.Ribeye, h.KPH, h.Weight, h.Marbling = name, fat, ribeye, kph, weight, grade.Small.At(marbling)
		h.Means = cite.Citation{Standing: cite.Published, IDs: id}
		return h
	}
	return []Herd{
		// 1.3 cm, 88.8 sq cm, 2.3 percent, 374.0 kg, Small40.
		herd("fed cattle 2011, in plant", "nbqa-2011-inplant", 5118, 137_640, 23_000, 8_245_289, 40),
		// 1.42 cm, 89.5 sq cm, 1.9 percent, 390.3 kg, Small70.
		herd("fed cattle 2016, in plant", "nbqa-2016-inplant", 5591, 138_725, 19_000, 8_604_642, 70),
		// 1.37 cm, 88.9 sq cm, 2.1 percent, 393.6 kg, Small75.
		herd("fed cattle 2016, by instrument", "nbqa-2016-instrument", 5394, 137_795, 21_000, 8_677_395, 75),
	}
}

// check refuses a herd that no carcass can be drawn from.
func (h Herd) check() error {
	m := grade.Measures{Fat: h.Fat, Ribeye: h.Ribeye, KPH: h.KPH, Weight: h.Weight}
	if err := m.Check(); err != nil {
		return err
	}
	if err := h.Marbling.Check("marbling"); err != nil {
		return err
	}
	for _, s := range [...]struct {
		name         string
		spread, most int64
	}{
		{"spread of fat", int64(h.FatSpread), 3 * int64(grade.Inch)},
		{"spread of ribeye", int64(h.RibeyeSpread), 25 * int64(grade.SquareInch)},
		{"spread of KPH", int64(h.KPHSpread), 10 * int64(grade.OnePercent)},
		{"spread of weight", int64(h.WeightSpread), 1800 * int64(grade.Pound)},
		{"spread of marbling", int64(h.MarblingSpread), 1000},
	} {
		if s.spread < 0 || s.spread > s.most {
			return &FieldError{Field: s.name, Allowed: "0 to the greatest value of the trait", Err: ErrRange}
		}
	}
	return nil
}
