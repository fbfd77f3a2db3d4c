package practice

import (
	"cmp"
	"iter"
	"slices"

	"example.com/ribface/grade"
	"example.com/ribface/internal/fault"
	"example.com/ribface/maturity/cite"
)

// Herd is what carcasses are drawn from: the mean and standard deviation of each
// trait. How the traits go together is the same for every herd; see [Herds]. The
// zero Herd is refused.
type Herd struct {
	Name string `json:"name,omitzero"`

	Fat            grade.Thickness `json:"fat,omitzero"`
	FatSpread      grade.Thickness `json:"fat_spread,omitzero"`
	Ribeye         grade.Area      `json:"ribeye,omitzero"`
	RibeyeSpread   grade.Area      `json:"ribeye_spread,omitzero"`
	KPH            grade.Share     `json:"kph,omitzero"`
	KPHSpread      grade.Share     `json:"kph_spread,omitzero"`
	Weight         grade.Weight    `json:"weight,omitzero"`
	WeightSpread   grade.Weight    `json:"weight_spread,omitzero"`
	Marbling       grade.Marbling  `json:"marbling,omitzero"`
	MarblingSpread int             `json:"marbling_spread,omitzero"` // in points of a hundredth of a degree

	Means        cite.Citation `json:"means,omitzero"`
	Spreads      cite.Citation `json:"spreads,omitzero"`
	Marblings    cite.Citation `json:"marblings,omitzero"`    // where the spread of marbling comes from
	Correlations cite.Citation `json:"correlations,omitzero"` // where it comes from how traits go together
}

// Herds yields the herds at hand, the oldest first: that of a marbling trial of
// 703 carcasses, with means and spreads of its own, and those of the published
// audits of fed cattle that give all five means. The audits give no spreads; those
// are of 24 steers (published: jas-2020-skaa287).
//
// # Marbling
//
// The trial's mean marbling is not at hand; the mean of the audit of 2011 stands in
// for it. The spread of marbling, 127 points, is derived from the shares of grades
// of 2016: 28.8 percent below Small00 and 3.8 percent at Slightly Abundant 00 or
// more lie 70 points below and 230 above the mean, which put the standard deviation
// at 125 and 130 (nbqa-2016-inplant).
//
// # How traits go together
//
// The correlations are those of the trial (derived: marbling-trial-2010):
//
//	          weight    fat  ribeye    KPH
//	fat         0.30
//	ribeye      0.38  -0.46
//	KPH         0.14   0.21   -0.03
//	marbling    0.21   0.59   -0.44   0.11
//
// The trial chose its carcasses to spread over marbling, so that the correlations
// with marbling are larger there than in a plain lot: they are overstated. All of a
// class hang within 50 lb, so that weight goes together with the other traits from
// class to class and not within one.
func Herds() iter.Seq[Herd] { return slices.Values(herds[:]) }

var herds = [...]Herd{
	{
		Name: "marbling trial 2010",
		Fat:  grade.Inches(0.545), FatSpread: grade.Inches(0.225),
		Ribeye: grade.SquareInches(12.68), RibeyeSpread: grade.SquareInches(1.78),
		KPH: grade.Percent(2.01), KPHSpread: grade.Percent(0.47),
		Weight: grade.Pounds(789), WeightSpread: grade.Pounds(105),
		Marbling: grade.Small.At(40), MarblingSpread: marblingSpread,
		Means: trial, Spreads: trial, Marblings: derived("nbqa-2016-inplant"), Correlations: trial,
	},
	audit("fed cattle 2011, in plant", "nbqa-2011-inplant", 13, 88.8, 2.3, 374.0, 40),
	audit("fed cattle 2016, in plant", "nbqa-2016-inplant", 14.2, 89.5, 1.9, 390.3, 70),
	audit("fed cattle 2016, by instrument", "nbqa-2016-instrument", 13.7, 88.9, 2.1, 393.6, 75),
}

// marblingSpread is the spread of marbling of every herd.
const marblingSpread = 127

var trial = derived("marbling-trial-2010")

func derived(id string) cite.Citation { return cite.Citation{Standing: cite.Derived, IDs: id} }

// audit is the herd of an audit, with its means in mm, sq cm, percent and kg and its
// marbling in points of Small, and the spreads of 24 steers.
func audit(name, id string, fat, ribeye, kph, weight float64, small int) Herd {
	return Herd{
		Name: name,
		Fat:  grade.Millimeters(fat), FatSpread: grade.Millimeters(2.8),
		Ribeye: grade.SquareCentimeters(ribeye), RibeyeSpread: grade.SquareCentimeters(6.92),
		KPH: grade.Percent(kph), KPHSpread: grade.Percent(0.36),
		Weight: grade.Kilograms(weight), WeightSpread: grade.Kilograms(27.48),
		Marbling: grade.Small.At(small), MarblingSpread: marblingSpread,
		Means: cite.Citation{Standing: cite.Published, IDs: id}, Spreads: cite.Citation{Standing: cite.Published, IDs: "jas-2020-skaa287"},
		Marblings: derived("nbqa-2016-inplant"), Correlations: trial,
	}
}

// The traits that are drawn, in the order of the tables below.
const (
	weight = iota
	fat
	ribeye
	kph
	marbling
	traits
)

// unit is one inch, square inch, percent and pound in the units of its trait; a
// degree of marbling has a hundred.
const unit = 10_000

// drawn says how each trait is drawn: in steps that people read, from the least to
// the greatest value, and with no wider spread.
var drawn = [traits]struct {
	name                      string
	step, least, most, widest int64
}{
	weight:   {"weight", unit, 400 * unit, 1300 * unit, 1800 * unit},
	fat:      {"fat", unit / 20, unit / 20, 2 * unit, 3 * unit},
	ribeye:   {"ribeye", unit / 10, 6 * unit, 22 * unit, 25 * unit},
	kph:      {"KPH", unit / 2, unit / 2, 6 * unit, 10 * unit},
	marbling: {"marbling", 10, int64(grade.PracticallyDevoid.At(0)), int64(grade.Abundant.At(90)), 1000},
}

// means are the means of the herd in the units of each trait.
func (h Herd) means() [traits]int64 {
	return [traits]int64{h.Weight.Units(), h.Fat.Units(), h.Ribeye.Units(), h.KPH.Units(), int64(h.Marbling)}
}

// spreads are the standard deviations of the herd in the same units.
func (h Herd) spreads() [traits]int64 {
	return [traits]int64{h.WeightSpread.Units(), h.FatSpread.Units(), h.RibeyeSpread.Units(), h.KPHSpread.Units(), int64(h.MarblingSpread)}
}

// carcass puts drawn traits, in the same units, into a carcass.
func carcass(v [traits]int64) grade.Carcass {
	return grade.Carcass{
		Marbling: grade.Marbling(v[marbling]),
		Measures: grade.Measures{Weight: grade.WeightUnits(v[weight]), Fat: grade.ThicknessUnits(v[fat]), Ribeye: grade.AreaUnits(v[ribeye]), KPH: grade.ShareUnits(v[kph])},
	}
}

// together turns traits that were drawn each on its own into traits that go
// together, in parts of 65,536: the sum of its row, each entry times the trait of
// its column, has the correlations of [Herds]. It is the lower triangle whose
// product with its transpose is their matrix, to the nearest part.
var together = [traits][traits]int64{
	weight:   {65536},
	fat:      {19661, 62517},
	ribeye:   {24904, -39434, 46041},
	kph:      {9175, 11542, 2124, 63821},
	marbling: {13763, 36205, -17480, -542, 49889},
}

// check refuses a herd that no carcass can be drawn from.
func (h Herd) check() error {
	m := grade.Measures{Fat: h.Fat, Ribeye: h.Ribeye, KPH: h.KPH, Weight: h.Weight}
	if err := cmp.Or(m.Check(), h.Marbling.Check("marbling")); err != nil {
		return err
	}
	for i, spread := range h.spreads() {
		if spread < 0 || spread > drawn[i].widest {
			return &fault.FieldError{Field: "spread of " + drawn[i].name, Allowed: "0 to the greatest value of the trait", Err: fault.ErrRange}
		}
	}
	return nil
}
