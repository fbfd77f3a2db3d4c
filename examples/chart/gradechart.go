package main

import (
	"fmt"
	"strings"

	"example.com/ribface/grade"
	"example.com/ribface/maturity"
	"example.com/ribface/maturity/cite"
)

// Where things stand on the grade chart. Marbling runs to the right, maturity
// downward, one band for each group.
const (
	left   = 132 * px
	top    = 112 * px
	degree = 84 * px // width of a degree of marbling
	band   = 92 * px // height of a maturity group
	width  = left + 10*degree + 28*px
	bottom = top + 5*band
)

// at is the place of a marbling and a maturity.
func at(m grade.Marbling, s maturity.Score) point {
	return point{left + tenth(m-grade.Devoid.At(0))*degree/100, top + tenth(s-maturity.A.At(0))*band/100}
}

// fills are the fills of the grades, lightest for the lowest.
var fills = map[grade.Grade]string{
	grade.Cutter: "#fbfaf7", grade.Utility: "#f6f4ee", grade.Commercial: "#dfe3dd", grade.Standard: "#e6e9e6",
	grade.Good: "#cfdbdc", grade.Select: "#cfdbdc", grade.Choice: "#adc3cb", grade.Prime: "#83a2b0",
}

// stroke says by the line how strong its ground is.
func stroke(c cite.Citation) string {
	switch c.Standing {
	case cite.Official, cite.Published:
		return ""
	case cite.Memory:
		return `stroke-dasharray="1.5 4" stroke-linecap="round"`
	default:
		return `stroke-dasharray="7 4"`
	}
}

// cell is one part of one grade in one group: from its own line up to the next.
type cell struct {
	grade.Line
	next *grade.Line // nil at the right end of the chart
}

// cells returns the parts of the chart of an edition that have an area.
func cells(e grade.Edition) []cell {
	var out []cell
	for g := range maturity.Groups() {
		var lines []grade.Line // rightmost first: best grade down, highest part down
		for l := range e.Lines() {
			if l.Group != g {
				continue
			}
			at := len(lines)
			for at > 0 && lines[at-1].Grade == l.Grade {
				at--
			}
			lines = append(lines[:at], append([]grade.Line{l}, lines[at:]...)...)
		}
		for i, l := range lines {
			c := cell{Line: l}
			if i > 0 {
				c.next = &lines[i-1]
			}
			if c.next == nil || c.next.On(0) > l.On(0) || c.next.On(100) > l.On(100) {
				out = append(out, c)
			}
		}
	}
	return out
}

// end is where the cell ends on the right, so many units into its group.
func (c cell) end(units int) grade.Marbling {
	if c.next == nil {
		return grade.Abundant.At(100)
	}
	return max(c.next.On(units), c.On(units))
}

func (c cell) corners() []point {
	young, old := c.Group.At(0), c.Group.At(100)
	return []point{at(c.On(0), young), at(c.end(0), young), at(c.end(100), old), at(c.On(100), old)}
}

// gradeChart draws the chart of the edition with the class on it.
func gradeChart(e grade.Edition, class Class) ([]byte, error) {
	exhibits := make([]grade.Assessment, len(class.Exhibits))
	for i, c := range class.Exhibits {
		a, err := e.Assess(c)
		if err != nil {
			return nil, fmt.Errorf("exhibit %d: %w", i+1, err)
		}
		exhibits[i] = a
	}
	const row = 22 * px
	tableTop := bottom + 108*px
	height := tableTop + tenth(len(exhibits)+1)*row + 34*px
	c := open(width, height, "Quality grade by marbling and maturity, edition "+e.String(),
		"Each band is a maturity group, young at its top. Marbling grows to the right. A grade begins at its line. Numbered circles are the exhibits of "+class.Name+".")
	c.text(left, 34*px, "title", "Quality grade by marbling and maturity, edition "+e.String())
	c.text(left, 56*px, "small", class.Name)

	for d := range grade.Degrees() {
		x := at(d.At(50), maturity.A.At(0)).x
		words := strings.Fields(d.String())
		for i, w := range words {
			c.text(x, top-(10+14*tenth(len(words)-1-i))*px, "small mid", w)
		}
	}
	all := cells(e)
	for _, cell := range all {
		c.polygon(cell.corners(), `fill="`+fills[cell.Grade]+`"`)
	}
	for d := range grade.Degrees() { // a light grid under the lines
		c.line(at(d.At(0), maturity.A.At(0)), at(d.At(0), maturity.E.At(100)), `stroke="#ffffff" stroke-opacity="0.55"`)
	}
	for _, cell := range all {
		if cell.At == grade.Devoid.At(0) && !cell.Rises {
			continue // the edge of the chart
		}
		weight := "1.1"
		if first(all, cell) {
			weight = "2.2"
		}
		c.line(at(cell.On(0), cell.Group.At(0)), at(cell.On(100), cell.Group.At(100)),
			`stroke="#26323a" stroke-width="`+weight+`" `+stroke(cell.Cite))
	}
	for g := range maturity.Groups() {
		y := at(0, g.At(50)).y
		c.text(left-108*px, y+7*px, "title", g.String())
		from, to := g.Months()
		ages := fmt.Sprintf("%d to %d", from, to)
		if to == 0 {
			ages = fmt.Sprintf("%d and over", from)
		}
		c.text(left-12*px, y-1*px, "small end", ages)
		c.text(left-12*px, y+13*px, "small end", "months")
		c.line(at(grade.Devoid.At(0), g.At(0)), at(grade.Abundant.At(100), g.At(0)), `stroke="#26323a" stroke-width="1"`)
	}
	c.rect(left, top, 10*degree, 5*band, `fill="none" stroke="#26323a" stroke-width="1.4"`)

	taken := plot(c, exhibits)
	labels(c, all, taken)
	legend(c)

	columns := []struct {
		x     tenth
		title string
		value func(grade.Assessment) string
	}{
		{64 * px, "maturity", func(a grade.Assessment) string { return a.Maturity.String() }},
		{150 * px, "marbling", func(a grade.Assessment) string { return a.Carcass.Marbling.String() }},
		{240 * px, "quality grade", func(a grade.Assessment) string { return a.Quality.String() }},
		{390 * px, "yield grade", func(a grade.Assessment) string { return fmt.Sprint(a.Yield.Grade()) }},
		{490 * px, "yield, exact", func(a grade.Assessment) string { return a.Yield.String() }},
	}
	c.text(left, tableTop, "small", "exhibit")
	for _, col := range columns {
		c.text(left+col.x, tableTop, "small", col.title)
	}
	for i, a := range exhibits {
		y := tableTop + tenth(i+1)*row
		c.line(point{left, y - 16*px}, point{left + 620*px, y - 16*px}, `stroke="#c9ced2"`)
		c.text(left+14*px, y, "strong num", fmt.Sprint(i+1))
		for _, col := range columns {
			c.text(left+col.x, y, "num", col.value(a))
		}
	}
	c.text(left, height-18*px, "small", "For teaching and analysis. Only authorised federal graders assign official grades.")
	return c.close(), nil
}

// first reports whether no other cell of the same grade in the group begins
// farther left.
func first(all []cell, c cell) bool {
	for _, d := range all {
		if d.Group == c.Group && d.Grade == c.Grade && d.On(0)+d.On(100) < c.On(0)+c.On(100) {
			return false
		}
	}
	return true
}

// box is a place on the picture that is taken.
type box struct{ from, to point }

func around(p point, w, h tenth) box {
	return box{point{p.x - w/2, p.y - h/2}, point{p.x + w/2, p.y + h/2}}
}

func (b box) meets(c box) bool {
	return b.from.x < c.to.x && c.from.x < b.to.x && b.from.y < c.to.y && c.from.y < b.to.y
}

func free(b box, taken []box) bool {
	for _, t := range taken {
		if b.meets(t) {
			return false
		}
	}
	return true
}

// plot draws each exhibit as a dot where it stands and its number beside it, and
// returns the places taken.
func plot(c *canvas, exhibits []grade.Assessment) []box {
	const r = 10 * px
	var taken []box
	for _, a := range exhibits {
		taken = append(taken, around(at(a.Carcass.Marbling, a.Maturity), 8*px, 8*px))
	}
	for i, a := range exhibits {
		p := at(a.Carcass.Marbling, a.Maturity)
		number := point{p.x + 18*px, p.y}
	search:
		for _, away := range []tenth{18 * px, 32 * px, 46 * px, 60 * px} {
			for _, d := range []point{{0, -1}, {0, 1}, {1, 0}, {-1, 0}, {1, -1}, {1, 1}, {-1, -1}, {-1, 1}} {
				q := point{p.x + d.x*away, p.y + d.y*away}
				b := around(q, 2*r+2*px, 2*r+2*px)
				g := a.Maturity.Group()
				inside := b.from.x > left && b.to.x < left+10*degree && b.from.y > at(0, g.At(0)).y && b.to.y < at(0, g.At(100)).y
				if inside && free(b, taken) {
					number = q
					break search
				}
			}
		}
		taken = append(taken, around(number, 2*r+2*px, 2*r+2*px))
		c.line(p, number, `stroke="#1d2329" stroke-width="1.2"`)
		c.circle(p, 35, `fill="#1d2329" stroke="#ffffff" stroke-width="1"`)
		c.circle(number, r, `fill="#ffffff" stroke="#1d2329" stroke-width="1.6"`)
		c.text(number.x, number.y+45, "mid strong num", fmt.Sprint(i+1))
	}
	return taken
}

// span is the part of a band that a label belongs to: from one edge to another, at
// so many units into the group.
type span func(units int) (from, to grade.Marbling)

// labels writes the name of each grade across all of it, and the parts below,
// each in its own cell. A part that is too narrow for its name has none.
func labels(c *canvas, all []cell, taken []box) {
	for _, cell := range all {
		if !first(all, cell) {
			continue
		}
		whole := func(units int) (from, to grade.Marbling) {
			from, to = cell.On(units), cell.end(units)
			for _, part := range all {
				if part.Group == cell.Group && part.Grade == cell.Grade {
					to = max(to, part.end(units))
				}
			}
			return from, to
		}
		heights := []tenth{-16 * px, -28 * px, 4 * px, 20 * px, 34 * px}
		if _, to := whole(50); cell.Part == grade.Whole && to == cell.end(50) {
			heights = []tenth{0, -16 * px, 16 * px, -32 * px, 32 * px} // no parts below
		}
		taken = write(c, cell.Line, whole, "mid strong", cell.Grade.String(), heights, taken)
	}
	for _, cell := range all {
		if cell.Part != grade.Whole {
			own := func(units int) (from, to grade.Marbling) { return cell.On(units), cell.end(units) }
			taken = write(c, cell.Line, own, "mid part", cell.Part.String(), []tenth{22 * px, 36 * px, 8 * px, -6 * px, -24 * px}, taken)
		}
	}
}

// write puts a word into its span, at the first of some heights, counted from the
// middle of the band, where nothing else stands; in the middle of the span or to
// one side. The edge of the letters has the fill of the cell, so that lines do not
// run through them. It leaves the word out where it finds no room, and returns
// the places taken.
func write(c *canvas, l grade.Line, in span, class, word string, heights []tenth, taken []box) []box {
	wide := tenth(len(word))*70 + 6*px
	for _, aside := range []tenth{0, -1, 1, -2, 2} {
		for _, dy := range heights {
			units := int(50 + 100*dy/band)
			from, to := in(units)
			lo, hi := at(from, l.Group.At(units)), at(to, l.Group.At(units))
			p := point{(lo.x+hi.x)/2 + aside*24*px, lo.y}
			b := around(p, wide, 14*px)
			if b.from.x < lo.x || b.to.x > hi.x || !free(b, taken) {
				continue
			}
			fmt.Fprintf(&c.b, "<text x=\"%v\" y=\"%v\" class=\"%s\" stroke=\"%s\" stroke-width=\"4\" stroke-linejoin=\"round\" paint-order=\"stroke\">%s</text>\n", p.x, p.y+45, class, fills[l.Grade], escape(word))
			return append(taken, b)
		}
	}
	return taken
}

// legend explains the strokes.
func legend(c *canvas) {
	y := bottom + 26*px
	x := left
	c.text(x, y+4*px, "small", "A heavy line begins a grade, a light one a part of it. Its stroke tells the ground it stands on:")
	y += 22 * px
	for _, l := range []struct {
		what string
		c    cite.Citation
	}{
		{"official or published", cite.Citation{Standing: cite.Official}},
		{"derived or common practice", cite.Citation{Standing: cite.Derived}},
		{"from memory", cite.Citation{Standing: cite.Memory}},
	} {
		c.line(point{x, y}, point{x + 44*px, y}, `stroke="#26323a" stroke-width="2.2" `+stroke(l.c))
		c.text(x+54*px, y+4*px, "small", l.what)
		x += 250 * px
	}
	c.text(left, y+26*px, "small", "A carcass on a line has the grade to the right of it. Firmness, dark cutting and sex class can lower it.")
}
