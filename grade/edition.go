package grade

import (
	"database/sql/driver"
	"iter"
	"slices"
	"time"

	"example.com/ribface/internal/text"
	"example.com/ribface/maturity"
	"example.com/ribface/maturity/cite"
)

// Edition is an edition of the federal standard for grades of carcass beef. The
// zero Edition is not set. Editions are ordered in time.
type Edition uint8

// The editions.
const (
	// Edition1975 was in use from 1976: flat lines in group A, conformation
	// dropped, the fourth grade called Good (published: tamu-ansc627-2015,
	// news-1976-06-19).
	Edition1975 Edition = 1 + iota
	// Edition1987 calls Good Select, with the same minima (official:
	// cfr-1987-54-p51). It was in use from 23 November 1987; 23 September is the
	// day of the Federal Register page (published: news-1987-09-28,
	// news-1987-12-09).
	Edition1987
	// Edition1997 asks for Modest in Choice B and closes Select to B (official:
	// fr-1996-01-30). It was put off from 1 July 1996 to 31 January 1997
	// (official: fr-1996-05-01).
	Edition1997
	// Edition2016 takes up heavier weight examples; the minima stay (official:
	// fr-2016-03-01).
	Edition2016
	// Edition2017 lets teeth or verified papers settle the age (official:
	// fr-2017-12-06); the minima stay.
	Edition2017

	// Current is the newest edition that this library knows.
	Current = Edition2017
)

// edition is what one edition says.
type edition struct {
	name  string
	from  time.Time     // first day in use
	dated cite.Citation // where that day comes from
	chart *chart
	byAge bool // teeth and papers count
}

func day(y int, m time.Month, d int) time.Time { return time.Date(y, m, d, 0, 0, 0, 0, time.UTC) }

var editions = [...]edition{
	Edition1975: {"1975", day(1976, time.February, 23), cite.Citation{Standing: cite.Memory}, &chart1975, false},
	Edition1987: {"1987", day(1987, time.November, 23), cite.Citation{Standing: cite.Published, IDs: "news-1987-09-28 news-1987-12-09"}, &chart1987, false},
	Edition1997: {"1997", day(1997, time.January, 31), cite.Citation{Standing: cite.Official, IDs: "fr-1996-05-01"}, &chart1997, false},
	Edition2016: {"2016", day(2016, time.March, 1), cite.Citation{Standing: cite.Official, IDs: "fr-2016-03-01"}, &chart1997, false},
	Edition2017: {"2017", day(2017, time.December, 18), cite.Citation{Standing: cite.Official, IDs: "fr-2017-12-06"}, &chart1997, true},
}

var editionNames = text.Enum{Kind: "edition", Names: []string{"", "1975", "1987", "1997", "2016", "2017"}}

// Editions yields the editions from the oldest to the newest.
func Editions() iter.Seq[Edition] {
	return func(yield func(Edition) bool) {
		for e := Edition1975; e <= Current; e++ {
			if !yield(e) {
				return
			}
		}
	}
}

// EditionOn returns the edition in use on the day of t, in t's own time zone. A
// day before the oldest edition gives a [*FieldError].
func EditionOn(t time.Time) (Edition, error) {
	y, m, d := t.Date()
	on := day(y, m, d)
	for e := Current; e >= Edition1975; e-- {
		if !on.Before(editions[e].from) {
			return e, nil
		}
	}
	return 0, &FieldError{Field: "date", Value: on.Format(time.DateOnly), Allowed: editions[Edition1975].from.Format(time.DateOnly) + " or later", Err: ErrRange}
}

// From returns the first day on which the edition was in use, and where that day
// comes from: for 1975 it is from memory, for 1987 published, for the later ones
// official. An edition that is not valid gives the zero Time.
func (e Edition) From() (time.Time, cite.Citation) {
	if !e.IsValid() {
		return time.Time{}, cite.Citation{}
	}
	return editions[e].from, editions[e].dated
}

// ByAge reports whether teeth and papers may settle the age under the edition.
func (e Edition) ByAge() bool { return e.IsValid() && editions[e].byAge }

// IsValid reports whether e is one of the editions.
func (e Edition) IsValid() bool { return e-1 < Current }

// String gives the year; "unset" for zero.
func (e Edition) String() string { return editionNames.String(int(e)) }

// ParseEdition reads the year of an edition, as [Edition.String] writes it.
func ParseEdition(s string) (Edition, error) {
	v, err := editionNames.Parse(s)
	return Edition(v), err
}

// AppendText appends the year; the zero value is empty text.
func (e Edition) AppendText(b []byte) ([]byte, error) { return editionNames.Append(b, int(e)) }

// MarshalText gives the year; the zero value is empty text.
func (e Edition) MarshalText() ([]byte, error) { return e.AppendText(nil) }

// UnmarshalText reads a year. On error the receiver is left as it was.
func (e *Edition) UnmarshalText(b []byte) error { return text.Unmarshal(e, b, ParseEdition) }

// Value gives the year for a database.
func (e Edition) Value() (driver.Value, error) { return text.Value(e) }

// Scan reads a year from a database column that holds text.
func (e *Edition) Scan(src any) error { return text.Scan(e, editionNames.Kind, src) }

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
func (l Line) On(units int) Marbling {
	if l.Rises {
		return l.At + Marbling(units)
	}
	return l.At
}

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

// part returns the part of the grade that marbling m falls in.
func (r *row) part(m Marbling, units int) Part {
	switch {
	case r.high.at != 0 && m >= r.high.on(units):
		return High
	case r.average.at != 0 && m >= r.average.on(units):
		return Average
	default:
		return r.first
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
			all[e].row[m], all[e].quality[m] = uint8(at), rows[at].grade.Part(rows[at].part(m, 0))
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
