package price

import (
	"iter"
	"time"

	"example.com/ribface/grade"
	"example.com/ribface/maturity/cite"
	"github.com/shopspring/decimal"
)

// Report is what the public weekly report of premiums and discounts printed for
// one week. Its averages are simple ones.
type Report struct {
	Week  time.Time     `json:"week"`  // the first day of the week
	Cite  cite.Citation `json:"cite"`  // the report
	Lines []Line        `json:"lines"` // in printed order
}

// Line is one category of a report. One of Grade, Mark, YieldFrom and WeightFrom
// is set and says of what kind it is.
type Line struct {
	Category string `json:"category"` // as printed, with the kind: "Select", "YG 2.0-2.5", "600-900 lb"

	Grade      grade.Grade  `json:"grade,omitzero"`       // Prime, Choice, Select or Standard
	Mark       Mark         `json:"mark,omitzero"`        // a defect, kind or program
	YieldFrom  grade.Yield  `json:"yield_from,omitzero"`  // of a span of yields
	YieldTo    grade.Yield  `json:"yield_to,omitzero"`    // not set for a span without upper end
	WeightFrom grade.Weight `json:"weight_from,omitzero"` // of a span of weights
	WeightTo   grade.Weight `json:"weight_to,omitzero"`   // not set for a span without upper end

	Average decimal.Decimal `json:"average"`         // dollars per cwt
	Ranged  bool            `json:"ranged,omitzero"` // Low and High are known
	Low     decimal.Decimal `json:"low,omitzero"`    // the least amount reported
	High    decimal.Decimal `json:"high,omitzero"`   // the greatest
}

// printed is a line with its amounts in cents.
type printed struct {
	category           string
	grade              grade.Grade
	mark               Mark
	yield              [2]grade.Yield
	weight             [2]grade.Weight
	ranged             bool
	low, high, average int64
}

func yields(from, to float64) [2]grade.Yield {
	if to == 0 {
		return [2]grade.Yield{grade.Grades(from)}
	}
	return [2]grade.Yield{grade.Grades(from), grade.Grades(to)}
}

func pounds(from, to float64) [2]grade.Weight {
	if to == 0 {
		return [2]grade.Weight{grade.Pounds(from)}
	}
	return [2]grade.Weight{grade.Pounds(from), grade.Pounds(to)}
}

// The reports. That of 2014 is known from a reprint, page partly legible, and
// without its ranges.
var reports = []struct {
	week  time.Time
	cite  cite.Citation
	lines []printed
}{
	{time.Date(2014, time.October, 20, 0, 0, 0, 0, time.UTC), cite.Citation{Standing: cite.Published, IDs: "ams-ct169-2014-10-20"}, []printed{
		{category: "Prime", grade: grade.Prime, average: 2134},
		{category: "Select", grade: grade.Select, average: -1243},
		{category: "Standard", grade: grade.Standard, average: -2107},
		{category: "Dairy-type", mark: DairyType, average: -309},
		{category: "Bullock or stag", mark: BullockOrStag, average: -4137},
		{category: "Hardbone", mark: Hardbone, average: -3512},
		{category: "Dark cutter", mark: DarkCutter, average: -3875},
		{category: "Over 30 months", mark: Over30Months, average: -1661},
		{category: "YG 5.0 and up", yield: yields(5, 0), average: -1306},
		{category: "400-500 lb", weight: pounds(400, 500), average: -2540},
		{category: "500-550 lb", weight: pounds(500, 550), average: -2280},
		{category: "550-600 lb", weight: pounds(550, 600), average: -270},
	}},
	{time.Date(2025, time.January, 6, 0, 0, 0, 0, time.UTC), cite.Citation{Standing: cite.Official, IDs: "ams-ct155-2025-01-06"}, []printed{
		{"Prime", grade.Prime, 0, [2]grade.Yield{}, [2]grade.Weight{}, true, 0, 4900, 1754},
		{"Choice", grade.Choice, 0, [2]grade.Yield{}, [2]grade.Weight{}, true, 0, 0, 0},
		{"Select", grade.Select, 0, [2]grade.Yield{}, [2]grade.Weight{}, true, -3100, -1500, -2825},
		{"Standard", grade.Standard, 0, [2]grade.Yield{}, [2]grade.Weight{}, true, -6800, -1000, -4093},
		{"All natural", 0, AllNatural, [2]grade.Yield{}, [2]grade.Weight{}, true, 2400, 5000, 3312},
		{"Non-hormone-treated", 0, NonHormoneTreated, [2]grade.Yield{}, [2]grade.Weight{}, true, 1900, 2500, 2175},
		{"Dairy-type", 0, DairyType, [2]grade.Yield{}, [2]grade.Weight{}, true, -1500, 0, -264},
		{"Bullock or stag", 0, BullockOrStag, [2]grade.Yield{}, [2]grade.Weight{}, true, -6500, -1500, -4150},
		{"Hardbone", 0, Hardbone, [2]grade.Yield{}, [2]grade.Weight{}, true, -6800, -2000, -4220},
		{"Dark cutter", 0, DarkCutter, [2]grade.Yield{}, [2]grade.Weight{}, true, -6500, -3000, -3875},
		{"Over 30 months", 0, Over30Months, [2]grade.Yield{}, [2]grade.Weight{}, true, -4000, 0, -1429},
		{"YG 1.0-2.0", 0, 0, yields(1, 2), [2]grade.Weight{}, true, 0, 800, 335},
		{"YG 2.0-2.5", 0, 0, yields(2, 2.5), [2]grade.Weight{}, true, 0, 400, 177},
		{"YG 2.5-3.0", 0, 0, yields(2.5, 3), [2]grade.Weight{}, true, 0, 400, 138},
		{"YG 3.0-3.5", 0, 0, yields(3, 3.5), [2]grade.Weight{}, true, 0, 0, 0},
		{"YG 3.5-4.0", 0, 0, yields(3.5, 4), [2]grade.Weight{}, true, 0, 0, 0},
		{"YG 4.0-5.0", 0, 0, yields(4, 5), [2]grade.Weight{}, true, -1500, -1000, -1245},
		{"YG 5.0 and up", 0, 0, yields(5, 0), [2]grade.Weight{}, true, -2500, -1000, -1782},
		{"400-500 lb", 0, 0, [2]grade.Yield{}, pounds(400, 500), true, -4500, 0, -2929},
		{"500-550 lb", 0, 0, [2]grade.Yield{}, pounds(500, 550), true, -4500, 0, -2264},
		{"550-600 lb", 0, 0, [2]grade.Yield{}, pounds(550, 600), true, -3500, 0, -1157},
		{"600-900 lb", 0, 0, [2]grade.Yield{}, pounds(600, 900), true, 0, 0, 0},
		{"900-1,000 lb", 0, 0, [2]grade.Yield{}, pounds(900, 1000), true, -1500, 0, -107},
		{"1,000-1,050 lb", 0, 0, [2]grade.Yield{}, pounds(1000, 1050), true, -2000, 0, -500},
		{"over 1,050 lb", 0, 0, [2]grade.Yield{}, pounds(1050, 0), true, -2500, -500, -1545},
	}},
}

// Reports yields the reports that the package holds, the oldest first: the week
// of 2014-10-20, in part (published: ams-ct169-2014-10-20, page partly legible),
// and the week of 2025-01-06 (official: ams-ct155-2025-01-06).
func Reports() iter.Seq[Report] {
	return func(yield func(Report) bool) {
		for i := range reports {
			if !yield(report(i)) {
				return
			}
		}
	}
}

// Latest returns the newest report that the package holds, that of the week of
// 2025-01-06 (official: ams-ct155-2025-01-06).
func Latest() Report { return report(len(reports) - 1) }

func report(i int) Report {
	r := Report{Week: reports[i].week, Cite: reports[i].cite}
	cents := func(n int64) decimal.Decimal { return decimal.New(n, -2) }
	for _, p := range reports[i].lines {
		r.Lines = append(r.Lines, Line{
			Category: p.category, Grade: p.grade, Mark: p.mark,
			YieldFrom: p.yield[0], YieldTo: p.yield[1], WeightFrom: p.weight[0], WeightTo: p.weight[1],
			Average: cents(p.average), Ranged: p.ranged, Low: cents(p.low), High: cents(p.high),
		})
	}
	return r
}

// Terms returns the averages of the report as the terms of a grid with the base
// given. Choice is the base for low choice and top choice alike. Hardbone stands
// in place of the tier, because the report has no category for the grades of an
// old skeleton (derived); every other mark is added. Edges of weight belong to
// the lower band and edges of yield to the upper (derived, see the package
// documentation). What the report does not print has no price.
func (r Report) Terms(base decimal.Decimal) Terms {
	t := Terms{Name: "week of " + r.Week.Format(time.DateOnly), Base: base, Cite: r.Cite, YieldEdge: EdgeUpper, WeightEdge: EdgeLower}
	tiers := map[grade.Grade][]grade.Tier{
		grade.Prime:    {grade.PrimeTier},
		grade.Choice:   {grade.TopChoice, grade.LowChoice},
		grade.Select:   {grade.SelectTier},
		grade.Standard: {grade.StandardTier},
	}
	for _, l := range r.Lines {
		switch {
		case l.Grade != 0:
			for _, tier := range tiers[l.Grade] {
				t.Tiers = append(t.Tiers, TierAmount{tier, l.Average})
			}
		case l.Mark != 0:
			t.Marks = append(t.Marks, MarkAmount{l.Mark, l.Average, l.Mark == Hardbone})
		case l.YieldFrom.IsSet():
			t.Yield = append(t.Yield, Band[grade.Yield]{l.YieldFrom, l.YieldTo, l.Average})
		default:
			t.Weight = append(t.Weight, Band[grade.Weight]{l.WeightFrom, l.WeightTo, l.Average})
		}
	}
	return t
}
