package grade

import (
	"iter"
	"slices"

	"example.com/ribface/maturity"
	"example.com/ribface/maturity/cite"
)

// Line is one line of the grade chart: the least marbling with which a carcass
// of one maturity group meets a grade, or one part of it.
type Line struct {
	Group maturity.Group `json:"group"`
	Grade Grade          `json:"grade"`
	Part  Part           `json:"part,omitzero"`  // the part that starts at the line; Whole where the grade is not split there
	At    Marbling       `json:"at"`             // the line at the young end of the group
	Rises bool           `json:"rises,omitzero"` // the line rises 100 points to the old end of the group; else it is flat
	Cite  cite.Citation  `json:"cite,omitzero"`

	// Firmness is the least firmness for the grade; zero where none is known.
	// It is the same for every part of a grade.
	Firmness     Firmness      `json:"firmness,omitzero"`
	FirmnessCite cite.Citation `json:"firmness_cite,omitzero"`
}

// On returns the line at so many units into the group.
func (l Line) On(units int) Marbling { return edge{at: l.At, rises: l.Rises}.on(units) }

// Lines yields every line of the edition's grade chart, group by group from the
// youngest, in each group from the best grade down, in each grade from its lowest
// part up. The first line of a grade is its minimum. A grade without a line is
// closed to the group. An edition that is not valid yields nothing.
func (e Edition) Lines() iter.Seq[Line] {
	return func(yield func(Line) bool) {
		if !e.IsValid() {
			return
		}
		for g := maturity.A; g <= maturity.E; g++ {
			for _, r := range editions[e].chart[g] {
				l := Line{Group: g, Grade: r.grade, Part: r.first, At: r.min.at, Rises: r.min.rises, Cite: r.min.cite, Firmness: r.firm, FirmnessCite: r.firmCite}
				if !yield(l) {
					return
				}
				for i, e := range [...]edge{r.average, r.high} {
					if e.at == 0 {
						continue
					}
					l.Part, l.At, l.Rises, l.Cite = Average+Part(i), e.at, e.rises, e.cite
					if !yield(l) {
						return
					}
				}
			}
		}
	}
}

// edge is the lower edge of a grade or of a part of it. The zero edge is none.
type edge struct {
	at    Marbling
	rises bool
	cite  cite.Citation
}

func (e edge) on(units int) Marbling {
	if e.rises {
		return e.at + Marbling(units)
	}
	return e.at
}

// row is one grade in one column of the chart.
type row struct {
	grade    Grade
	first    Part // the part that starts at the minimum
	min      edge
	average  edge
	high     edge
	firm     Firmness
	firmCite cite.Citation
}

// quality returns the part of the grade that marbling m falls in.
func (r *row) quality(m Marbling, units int) Quality {
	q := Quality(r.grade) << 2
	switch {
	case r.high.at != 0 && m >= r.high.on(units):
		return q | Quality(High)
	case r.average.at != 0 && m >= r.average.on(units):
		return q | Quality(Average)
	default:
		return q | Quality(r.first)
	}
}

// startOf returns the edge at which the part starts.
func (r *row) startOf(p Part) *edge {
	switch p {
	case r.first:
		return &r.min
	case Average:
		return &r.average
	default:
		return &r.high
	}
}

// column is a column of the chart with flat lines, marbling by marbling: which row it
// meets, and the quality.
type column struct {
	row     [scaleEnd]uint8
	quality [scaleEnd]Quality
}

// scaleEnd is one more than the most marbling.
const scaleEnd = 1101

// young is column A of every edition, taken from its chart.
var young = func() (all [len(editions)]column) {
	for e := Edition1975; e <= Current; e++ {
		rows := editions[e].chart[maturity.A]
		for m := Devoid.At(0); m < scaleEnd; m++ {
			at := slices.IndexFunc(rows, func(r row) bool { return m >= r.min.at })
			all[e].row[m], all[e].quality[m] = uint8(at), rows[at].quality(m, 0)
		}
	}
	return all
}()

// chart holds the rows of each maturity group, best grade first.
type chart [maturity.E + 1][]row

// The chart. Marbling lines are written as at the young end of the group; rising
// lines gain a degree over the group. Each cell carries its own citation.
var (
	memory    = cite.Citation{Standing: cite.Memory}
	derived   = func(ids string) cite.Citation { return cite.Citation{Standing: cite.Derived, IDs: ids} }
	published = func(ids string) cite.Citation { return cite.Citation{Standing: cite.Published, IDs: ids} }
	federal   = func(ids string) cite.Citation { return cite.Citation{Standing: cite.Official, IDs: ids} }

	thirds = published("ext-tamu-quality-es")
	sloped = derived("reprint-marbling-grades") // B60 with Moderate40 is average Choice, so the line between average and high Choice rises

	// In Prime and Commercial each further degree of marbling over the minimum is
	// a third of a grade, up to three. That is the text of 1965 to 1975; whether
	// later editions keep it was not seen, so it is derived for all editions here.
	byDegrees = derived("cfr-1965-53-p25")

	primeA = row{Prime, Low,
		edge{SlightlyAbundant.At(0), false, published("ext-tamu-quality-es tamu-ansc627-2015")},
		edge{ModeratelyAbundant.At(0), false, thirds},
		edge{Abundant.At(0), false, thirds},
		ModeratelyFirm, memory}
	primeB = row{Prime, Low,
		edge{SlightlyAbundant.At(0), true, derived("cfr-1965-53-prime news-1974-12-28")},
		edge{ModeratelyAbundant.At(0), true, byDegrees},
		edge{Abundant.At(0), true, byDegrees},
		Firm, federal("cfr-1965-53-prime")}
	choiceA = row{Choice, Low,
		edge{Small.At(0), false, published("reprint-bullock-choice ext-tamu-quality-es")},
		edge{Modest.At(0), false, thirds},
		edge{Moderate.At(0), false, thirds},
		SlightlySoft, published("reprint-bullock-choice")}
	choiceB1987 = row{Choice, Low,
		edge{Small.At(0), true, federal("cfr-1987-54-p51")},
		edge{Modest.At(0), true, sloped},
		edge{Moderate.At(0), true, sloped},
		SlightlyFirm, federal("cfr-1987-54-p51")}
	choiceB1997 = row{Choice, Low,
		edge{Modest.At(0), false, published("unl-1997-rbcs15 ext-tamu-maturity-2018")},
		edge{Modest.At(0), true, sloped},
		edge{Moderate.At(0), true, sloped},
		SlightlyFirm, federal("cfr-1987-54-p51")}
	selectA = row{Select, Low,
		edge{Slight.At(0), false, federal("cfr-1987-54-p51")},
		edge{},
		edge{Slight.At(50), false, thirds},
		ModeratelySoft, federal("cfr-1987-54-p51")}
	selectB = row{Select, Low,
		edge{Slight.At(0), true, federal("cfr-1987-54-p51")},
		edge{},
		edge{Slight.At(50), true, derived("ext-tamu-quality-es reprint-marbling-grades")},
		SlightlySoft, federal("cfr-1987-54-p51")}
	goodA = row{Good, Low,
		edge{Slight.At(0), false, federal("cfr-1987-54-p51")},
		edge{Slight.At(34), false, derived("uf-mimeo-table6")}, // thirds of Good are published, their edges are not
		edge{Slight.At(67), false, derived("uf-mimeo-table6")},
		ModeratelySoft, federal("cfr-1987-54-p51")}
	goodB = row{Good, Low,
		edge{Slight.At(0), true, federal("cfr-1987-54-p51")},
		edge{Slight.At(34), true, derived("uf-mimeo-table6")},
		edge{Slight.At(67), true, derived("uf-mimeo-table6")},
		SlightlySoft, federal("cfr-1987-54-p51")}
	standardA = row{Standard, Low,
		edge{PracticallyDevoid.At(0), false, published("ext-tamu-quality-es")}, // Low Standard starts there
		edge{PracticallyDevoid.At(67), false, thirds},
		edge{Traces.At(34), false, thirds},
		Soft, memory}
	standardB1987 = row{Standard, Low,
		edge{PracticallyDevoid.At(0), true, memory},
		edge{PracticallyDevoid.At(67), true, derived("ext-tamu-quality-es reprint-marbling-grades")},
		edge{Traces.At(34), true, derived("ext-tamu-quality-es reprint-marbling-grades")},
		ModeratelySoft, memory}
	// With Select closed, Standard in B runs up to Choice. That Slight and Small
	// are High Standard is common practice; how the rest splits was not found.
	standardB1997 = row{Standard, Whole,
		edge{PracticallyDevoid.At(0), true, memory},
		edge{},
		edge{Slight.At(0), false, cite.Citation{Standing: cite.CommonPractice, IDs: "quiz-quality-concepts"}},
		ModeratelySoft, memory}
	utilityAB = row{Utility, Whole, edge{Devoid.At(0), false, memory}, edge{}, edge{}, Soft, memory}
	cutter    = row{Cutter, Whole, edge{Devoid.At(0), false, memory}, edge{}, edge{}, 0, cite.Citation{}}

	columnC = []row{
		{Commercial, Low, edge{Small.At(0), true, memory}, edge{Modest.At(0), true, byDegrees}, edge{Moderate.At(0), true, byDegrees}, SlightlyFirm, memory},
		{Utility, Whole, edge{PracticallyDevoid.At(0), true, memory}, edge{}, edge{}, ModeratelySoft, memory},
		cutter,
	}
	columnD = []row{
		{Commercial, Low, edge{Modest.At(0), true, memory}, edge{Moderate.At(0), true, byDegrees}, edge{SlightlyAbundant.At(0), true, byDegrees}, ModeratelyFirm, memory},
		{Utility, Whole, edge{Traces.At(0), true, memory}, edge{}, edge{}, SlightlySoft, memory},
		cutter,
	}
	columnE = []row{
		{Commercial, Low, edge{Moderate.At(0), true, memory}, edge{SlightlyAbundant.At(0), true, byDegrees}, edge{ModeratelyAbundant.At(0), true, byDegrees}, Firm, memory},
		{Utility, Whole, edge{Slight.At(0), true, memory}, edge{}, edge{}, SlightlyFirm, memory},
		cutter,
	}

	chart1975 = chart{
		maturity.A: {primeA, choiceA, goodA, standardA, utilityAB, cutter},
		maturity.B: {primeB, choiceB1987, goodB, standardB1987, utilityAB, cutter},
		maturity.C: columnC, maturity.D: columnD, maturity.E: columnE,
	}
	chart1987 = chart{
		maturity.A: {primeA, choiceA, selectA, standardA, utilityAB, cutter},
		maturity.B: {primeB, choiceB1987, selectB, standardB1987, utilityAB, cutter},
		maturity.C: columnC, maturity.D: columnD, maturity.E: columnE,
	}
	chart1997 = chart{
		maturity.A: {primeA, choiceA, selectA, standardA, utilityAB, cutter},
		maturity.B: {primeB, choiceB1997, standardB1997, utilityAB, cutter},
		maturity.C: columnC, maturity.D: columnD, maturity.E: columnE,
	}
)
