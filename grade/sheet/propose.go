package sheet

import (
	"cmp"
	"errors"
	"io"
	"slices"
	"strconv"
	"strings"

	"example.com/ribface/grade"
	"example.com/ribface/internal/fault"
	"example.com/ribface/internal/lines"
	"example.com/ribface/internal/text"
	"example.com/ribface/internal/text/fixed"
)

// Proposal is a mapping for a person to confirm, with what has to be looked at first.
type Proposal struct {
	Mapping  Mapping  `json:"mapping"`
	Unplaced []string `json:"unplaced,omitempty"` // headings that name nothing known; their cells are kept as they stand
	Lacking  []string `json:"lacking,omitempty"`  // what grading needs and the sheet does not have, as "yield: KPH"
	Doubts   []string `json:"doubts,omitempty"`   // what was taken from the look of the cells, and what cannot be told from them
}

// mostLooked is how many rows Propose looks at.
const mostLooked = 500

// marks are the marks for missing that Propose knows.
var marks = []string{".", "-", "--", "*", "?", "na", "n/a", "#n/a", "nan", "nd", "n.d.", "null", "none", "missing"}

// unitSpellings are the spellings of units in headings, longest first where one ends
// in another.
var unitSpellings = []struct{ spelling, unit string }{
	{"square inches", "sq in"}, {"sq. in.", "sq in"}, {"sq in", "sq in"}, {"sqin", "sq in"}, {"in2", "sq in"}, {"in^2", "sq in"}, {"in²", "sq in"},
	{"square centimeters", "sq cm"}, {"sq. cm", "sq cm"}, {"sq cm", "sq cm"}, {"sqcm", "sq cm"}, {"cm2", "sq cm"}, {"cm^2", "sq cm"}, {"cm²", "sq cm"},
	{"inches", "in"}, {"inch", "in"}, {"in.", "in"}, {"in", "in"}, {"mm", "mm"}, {"cm", "cm"},
	{"pounds", "lb"}, {"lbs", "lb"}, {"lb.", "lb"}, {"lb", "lb"}, {"kilograms", "kg"}, {"kg", "kg"},
	{"percent", "%"}, {"pct", "%"}, {"%", "%"}, {"months", "months"},
}

// Propose reads a header and up to 500 rows, of the first 64 KiB, and proposes a
// mapping for the sheet. It knows the headings of the trade, as HCW, BF, FT, REA, LMA,
// KPH and Marb, spelled out or short, with a unit in brackets, after a comma or behind.
// What it took from the look of the cells stands among the doubts: a unit that the
// heading does not have, marks for missing, the decimal sign, the maturity scale. It
// never chooses a marbling scale or a value to assume. The error is for a sheet
// without a header, or of the input.
func Propose(r io.Reader) (Proposal, error) {
	block, err := lines.NewSource(r).Next()
	first, n, ok, long := block.Next()
	var headings []string
	cells := lines.Cells{Comma: separator(first), Trim: true}
	switch {
	case err != nil:
		n = block.Line
	case long != nil:
		err = long
	case !ok:
		err = io.EOF
	default:
		headings, err = cells.Divide(first)
	}
	if err != nil {
		return Proposal{}, lines.HeaderError("", n, err)
	}
	p := proposer{headings: slices.Clone(headings), said: map[string]bool{}}
	p.Mapping.Separator = string(cells.Comma)
	sample := first + "\n"
	p.cells = make([][]string, len(p.headings))
	for range mostLooked {
		line, _, ok, err := block.Next()
		if !ok {
			break
		}
		row, bad := cells.Divide(line)
		if err == nil && bad == nil {
			sample += line + "\n"
			for i, cell := range row[:min(len(row), len(p.cells))] {
				p.cells[i] = append(p.cells[i], cell)
			}
		}
	}
	p.decimal()
	p.place()
	p.check(sample)
	return p.Proposal, nil
}

// separator is what divides a header into the most cells; a comma for one cell.
func separator(header string) byte {
	best, most := byte(','), 1
	for _, comma := range []byte(",;\t|") {
		c := lines.Cells{Comma: comma}
		if cells, err := c.Divide(header); err == nil && len(cells) > most {
			best, most = comma, len(cells)
		}
	}
	return best
}

type proposer struct {
	Proposal
	headings []string
	cells    [][]string      // of each column
	said     map[string]bool // headings whose cells are doubted
}

func (p *proposer) doubt(parts ...string) { p.Doubts = append(p.Doubts, strings.Join(parts, "")) }

// decimal finds the decimal sign: a comma where cells have one that divides no groups
// of three, and none has a point.
func (p *proposer) decimal() {
	commas, points := 0, 0
	for _, column := range p.cells {
		for _, cell := range column {
			whole, part, ok := strings.Cut(cell, ",")
			switch {
			case ok && digits(whole) && digits(part) && len(part) != 3:
				commas++
			case strings.Contains(cell, ".") && digits(strings.Replace(cell, ".", "", 1)):
				points++
			}
		}
	}
	if commas == 0 {
		return
	}
	if points > 0 {
		p.doubt("decimal sign: ", text.Count(commas, "cell"), " with a comma and ", text.Count(points, "cell"), " with a point; taken for a point")
		return
	}
	p.Mapping.Decimal = ","
	p.doubt("decimal sign: taken for a comma, as in ", text.Count(commas, "cell"))
}

func digits(s string) bool { return s != "" && strings.Trim(s, "0123456789") == "" }

// place finds a column for each heading.
func (p *proposer) place() {
	p.Mapping.Columns = map[string]string{}
	facts := map[string]string{}
	for i, heading := range p.headings {
		name, unit := split(heading)
		var at *column
		switch c := cmp.Or(trade(name), trade(heading)); {
		case c == nil:
		case facts[c.Field] != "":
			p.doubt(strconv.Quote(heading), ": a second column for ", c.Field, ", after ", strconv.Quote(facts[c.Field]))
		default:
			if at = p.unit(i, c, unit); at == nil {
				p.doubt(strconv.Quote(heading), ": ", unit, " is no unit of ", c.Field)
			}
		}
		if at == nil {
			p.Unplaced = append(p.Unplaced, heading)
			continue
		}
		facts[at.Field] = heading
		p.Mapping.Columns[heading] = at.Name
		if at.Name != "id" {
			p.marks(i)
		}
		p.scales(i, at)
	}
}

// split takes the unit off a heading.
func split(heading string) (name, unit string) {
	name = strings.ToLower(heading)
	if open := strings.LastIndexAny(name, "(["); open >= 0 && strings.ContainsAny(name[open:], ")]") {
		inner := strings.Trim(name[open:], "()[] ")
		for _, u := range unitSpellings {
			if inner == u.spelling {
				return name[:open], u.unit
			}
		}
		return name[:open], inner
	}
	for _, u := range unitSpellings {
		if before, ok := strings.CutSuffix(name, u.spelling); ok {
			if trimmed := strings.TrimRight(before, " ,_-"); trimmed != before && trimmed != "" {
				return trimmed, u.unit
			}
		}
	}
	return name, ""
}

// trade finds the column that a heading of the trade, or of ours, names; nil for none.
func trade(name string) *column {
	name = text.Trim(name)
	return find(func(c *column) bool {
		return text.SameWords(c.Name, name) && !strings.HasPrefix(c.path, "result.") || slices.ContainsFunc(c.known, func(k string) bool { return text.SameWords(k, name) })
	})
}

// unit finds the column for the unit, of the heading or by the look of the cells; nil
// where the heading has one that is none.
func (p *proposer) unit(i int, c *column, unit string) *column {
	if c.Unit == "" && unit == "" || known(p.headings[i]) != nil {
		return c
	}
	if unit == "" {
		middle, ok := p.middle(i)
		unit = c.Unit
		switch whole := middle / 10_000; {
		case !ok:
		case c.Field == "fat" && whole >= 3:
			unit = "mm"
		case c.Field == "ribeye" && whole > 25:
			unit = "sq cm"
		case c.Field == "weight" && whole < 450:
			unit = "kg"
		}
		since := ""
		if ok {
			since = ", since the middle of the cells is " + fixed.String(middle, places)
		}
		if unit != "%" {
			p.doubt(strconv.Quote(p.headings[i]), ": no unit; taken for ", unit, since)
		}
	}
	return find(func(at *column) bool { return at.Field == c.Field && at.Unit == unit })
}

// middle is the middle one of the numbers in a column, in 0.0001.
func (p *proposer) middle(i int) (int64, bool) {
	var all []int64
	for _, cell := range p.cells[i] {
		if n, err := fixed.Read(p.Mapping.number(cell)); err == nil {
			if v, err := n.Units(places, 1, fixed.HalfEven); err == nil {
				all = append(all, v)
			}
		}
	}
	if len(all) == 0 {
		return 0, false
	}
	slices.Sort(all)
	return all[len(all)/2], true
}

// marks adds the marks for missing that stand in a column.
func (p *proposer) marks(i int) {
	for _, cell := range p.cells[i] {
		if slices.Contains(marks, strings.ToLower(cell)) && !slices.Contains(p.Mapping.Missing, cell) {
			p.Mapping.Missing = append(p.Mapping.Missing, cell)
			p.doubt("missing: ", strconv.Quote(cell), " under ", strconv.Quote(p.headings[i]), " is taken for a mark")
		}
	}
}

// scales looks at what numbers and letters mean.
func (p *proposer) scales(i int, c *column) {
	numbers, letters, fine := 0, 0, 0
	for _, cell := range p.cells[i] {
		switch {
		case cell == "" || slices.Contains(p.Mapping.Missing, cell):
		case len(cell) == 1 && strings.Contains("ABCDEabcde", cell):
			letters++
		case bare(cell):
			numbers++
			if n, err := fixed.Read(p.Mapping.number(cell)); err == nil {
				if _, err := n.Units(places, 1, fixed.Exact); errors.Is(err, grade.ErrPlaces) {
					fine++
				}
			}
		}
	}
	age := strings.Contains(c.Field, "maturity")
	switch heading := strconv.Quote(p.headings[i]); {
	case c.Name == "marbling" && numbers > 0:
		p.said[p.headings[i]] = true
		p.doubt(heading, ": numbers; name their scale under marbling: Slight00 = 300 or Slight00 = 400")
	case age && letters > 0:
		p.said[p.headings[i]] = true
		p.doubt(heading, `: letters alone; name the points they stand for under maturity, as "letter at 50"`)
	case age && numbers > 0 && p.Mapping.Maturity == 0:
		p.Mapping.Maturity = MaturityNumbers
		p.doubt(heading, ": numbers; taken for the scale with A00 = 100")
	case c.Unit != "" && fine > 0 && p.Mapping.Surplus == 0:
		p.Mapping.Surplus = grade.HalfEven
		p.doubt(heading, ": more than 4 places; taken for noise and rounded half even")
	}
}

// check reads the rows that were looked at with the mapping.
func (p *proposer) check(sample string) {
	if len(p.Mapping.Columns) == 0 {
		p.Mapping.Columns = nil
		p.doubt("no heading is known; columns wants a heading of the sheet with a column of ours for each")
	}
	r, err := p.Mapping.NewReader("", strings.NewReader(sample))
	if err != nil {
		p.doubt(fault.Plain(err.Error()))
		return
	}
	for _, what := range r.quality {
		p.Lacking = append(p.Lacking, "quality: "+what)
	}
	for _, what := range r.yield {
		p.Lacking = append(p.Lacking, "yield: "+what)
	}
	for _, err := range r.Rows() {
		var row *RowError
		if !errors.As(err, &row) {
			continue
		}
		for _, e := range row.All() {
			if !p.said[e.Heading] {
				p.said[e.Heading] = true
				alone := *e
				alone.More = nil
				p.doubt("cannot be read: ", alone.Error())
			}
		}
	}
}
