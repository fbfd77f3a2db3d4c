package main

import (
	"fmt"
	"slices"
	"strings"

	"example.com/ribface/examples/internal/svg"
	"example.com/ribface/grade"
	"example.com/ribface/maturity"
	"example.com/ribface/maturity/cite"
)

// Where things stand on the grade chart: marbling down the side, the most at the
// top, and maturity across, youngest at the left. It is drawn as wide as a phone.
const (
	px     = svg.Px
	left   = 84 * px
	top    = 44 * px
	degree = 50 * px // height of a degree of marbling
	high   = 10 * degree
	young  = 150 * px // width of group A and of B; a line that rises a degree turns by 18.4 there
	old    = 100 * px // width of the others; it turns by 26.6
	width  = left + 2*young + 6*px
	round  = 13 * px            // room for the number of an exhibit, from its middle
	away   = 21 * px            // from an exhibit to its number
	next   = top + high + 40*px // from the top of one panel to the top of the next
)

// frame says where a group stands: A and B beside each other, C to E below them.
func frame(g maturity.Group) (from svg.Point, wide svg.Tenth) {
	if g <= maturity.B {
		return svg.Point{X: left + svg.Tenth(g-maturity.A)*young, Y: top}, young
	}
	return svg.Point{X: left + svg.Tenth(g-maturity.C)*old, Y: top + next}, old
}

// at is the place of a marbling, so many units into a group.
func at(m grade.Marbling, g maturity.Group, units int) svg.Point {
	from, wide := frame(g)
	return svg.Point{X: from.X + svg.Tenth(units)*wide/100, Y: from.Y + svg.Tenth(grade.Abundant.At(100)-m)*degree/100}
}

// stands is the place of a carcass.
func stands(a grade.Assessment) svg.Point {
	g := a.Maturity.Group()
	return at(a.Carcass.Marbling, g, int(a.Maturity-g.At(0)))
}

// fills are the fills of the grades, the better the darker, far enough apart to be
// told without color and light enough to write on.
var fills = map[grade.Grade]string{
	grade.Cutter: "#ffffff", grade.Utility: "#f4f3ef", grade.Commercial: "#d2d8d4", grade.Standard: "#e2e6e4",
	grade.Good: "#cad5d9", grade.Select: "#cad5d9", grade.Choice: "#a9c0cb", grade.Prime: "#86a6b6",
}

// stroke says by the line how strong its ground is.
func stroke(c cite.Citation) string {
	switch c.Standing {
	case cite.Official, cite.Published:
		return ""
	case cite.Memory:
		return ` stroke-dasharray="1.5 4" stroke-linecap="round"`
	default:
		return ` stroke-dasharray="7 4"`
	}
}

// cell is one part of one grade in one group: from its own line up to the next.
type cell struct {
	grade.Line
	next *grade.Line // nil at the top of the chart
}

// cells returns the parts of the chart of an edition that have an area.
func cells(e grade.Edition) []cell {
	var out []cell
	for g := range maturity.Groups() {
		var lines []grade.Line // topmost first: best grade down, highest part down
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

// end is where the cell ends at the top, so many units into its group.
func (c cell) end(units int) grade.Marbling {
	if c.next == nil {
		return grade.Abundant.At(100)
	}
	return max(c.next.On(units), c.On(units))
}

// name is what is written into the cell.
func (c cell) name() string { return c.Grade.Part(c.Part).String() }

// gradeChart draws the chart of the edition with the class on it.
func gradeChart(e grade.Edition, class classed, older bool) []byte {
	var exhibits []grade.Assessment
	for n := range class.graded.Len() {
		a := class.graded.Assessment(n + 1)
		exhibits = append(exhibits, a)
		older = older || a.Maturity.Group() > maturity.B
	}
	height := top + high
	if older {
		height += next
	}
	c := svg.New(width, height+106*px, "Quality grade by marbling and maturity, edition "+e.String(),
		"Marbling grows upward, maturity to the right. A grade begins at its lower line. Numbered circles are the exhibits of "+class.title+".")

	var all []cell
	for _, cell := range cells(e) {
		if older || cell.Group <= maturity.B {
			all = append(all, cell)
		}
	}
	for _, l := range all {
		c.Polygon([]svg.Point{at(l.On(0), l.Group, 0), at(l.end(0), l.Group, 0), at(l.end(100), l.Group, 100), at(l.On(100), l.Group, 100)}, `fill="`+fills[l.Grade]+`"`)
	}
	groups := []maturity.Group{maturity.A, maturity.B}
	if older {
		groups = append(groups, maturity.C, maturity.D, maturity.E)
	}
	for _, g := range groups {
		from, wide := frame(g)
		heading(c, g, from, wide)
		for d := range grade.Degrees() { // a light grid under the lines
			c.Line(at(d.At(0), g, 0), at(d.At(0), g, 100), `stroke="#ffffff" stroke-opacity="0.6"`)
		}
	}
	for _, l := range all {
		if l.At == grade.Devoid.At(0) && !l.Rises {
			continue // the edge of the chart
		}
		weight := "1"
		if first(all, l) {
			weight = "2.2"
		}
		c.Line(at(l.On(0), l.Group, 0), at(l.On(100), l.Group, 100), `stroke="#16191c" stroke-width="`+weight+`"`+stroke(l.Cite))
	}
	for _, g := range groups {
		from, wide := frame(g)
		c.Rect(from, wide, high, `fill="none" stroke="#16191c" stroke-width="1.4"`)
	}
	side(c, top)
	if older {
		side(c, top+next)
	}
	// Names of grades keep clear of the dots and of where their numbers would like to
	// stand; the numbers then keep clear of dots and names.
	var taken, wanted []box
	for _, a := range exhibits {
		p := stands(a)
		taken = append(taken, around(p, 9*px, 9*px))
		wanted = append(wanted, around(svg.Point{X: p.X + away, Y: p.Y}, 2*round, 2*round))
	}
	for _, l := range all {
		taken = append(taken, label(c, l, append(slices.Clone(wanted), taken...))...)
	}
	plot(c, class, exhibits, taken)
	legend(c, height+20*px, e)
	return c.Bytes()
}

// heading writes a group and its age over its column.
func heading(c *svg.Canvas, g maturity.Group, from svg.Point, wide svg.Tenth) {
	months, to := g.Months()
	age := fmt.Sprintf("%d to %d months", months, to)
	switch {
	case to == 0:
		age = fmt.Sprintf("over %d months", months)
	case wide == old:
		age = fmt.Sprintf("%d to %d mo.", months, to)
	}
	middle := from.X + wide/2
	c.Text(svg.Point{X: middle, Y: from.Y - 21*px}, "strong mid", g.String(), `style="font-size:20px"`)
	c.Text(svg.Point{X: middle, Y: from.Y - 6*px}, "small mid", age, "")
}

// side writes the degrees of marbling beside a panel.
func side(c *svg.Canvas, y svg.Tenth) {
	for d := range grade.Degrees() {
		middle := y + svg.Tenth(grade.Abundant.At(100)-d.At(50))*degree/100
		words := strings.Fields(d.String())
		for i, w := range words {
			c.Text(svg.Point{X: left - 7*px, Y: middle + 4*px + svg.Tenth(2*i-len(words)+1)*7*px}, "small end", w, "")
		}
	}
}

// first reports whether no other cell of the same grade in the group begins lower.
func first(all []cell, c cell) bool {
	for _, d := range all {
		if d.Group == c.Group && d.Grade == c.Grade && d.On(0)+d.On(100) < c.On(0)+c.On(100) {
			return false
		}
	}
	return true
}

// box is a place on the picture that is taken.
type box struct{ from, to svg.Point }

func around(p svg.Point, w, h svg.Tenth) box {
	return box{svg.Point{X: p.X - w/2, Y: p.Y - h/2}, svg.Point{X: p.X + w/2, Y: p.Y + h/2}}
}

func (b box) meets(c box) bool {
	return b.from.X < c.to.X && c.from.X < b.to.X && b.from.Y < c.to.Y && c.from.Y < b.to.Y
}

func free(b box, taken []box) bool {
	for _, t := range taken {
		if b.meets(t) {
			return false
		}
	}
	return true
}

// plot draws each exhibit as a dot where it stands and its name beside it, where
// nothing else stands.
func plot(c *svg.Canvas, class classed, exhibits []grade.Assessment, taken []box) {
	numbers := make([]svg.Point, len(exhibits))
	for i, a := range exhibits {
		p := stands(a)
		from, wide := frame(a.Maturity.Group())
		numbers[i] = svg.Point{X: p.X + away, Y: p.Y}
	search:
		for far := away; far <= 62*px; far += 14 * px {
			for _, d := range []svg.Point{{X: 1}, {X: -1}, {Y: -1}, {Y: 1}, {X: 1, Y: -1}, {X: 1, Y: 1}, {X: -1, Y: -1}, {X: -1, Y: 1}} {
				q := svg.Point{X: p.X + d.X*far, Y: p.Y + d.Y*far}
				b := around(q, 2*round, 2*round)
				inside := b.from.X > from.X && b.to.X < from.X+wide && b.from.Y > from.Y && b.to.Y < from.Y+high
				if inside && free(b, taken) {
					numbers[i] = q
					break search
				}
			}
		}
		taken = append(taken, around(numbers[i], 2*round, 2*round))
		c.Line(p, numbers[i], `stroke="#16191c" stroke-width="1.4"`)
	}
	for i, a := range exhibits {
		name, size := class.name(i+1), ""
		if len(name) > 2 { // as 101
			size = `style="font-size:12px"`
		}
		c.Circle(stands(a), 40, `fill="#16191c" stroke="#ffffff" stroke-width="1"`)
		c.Circle(numbers[i], round-1*px, `fill="#ffffff" stroke="#16191c" stroke-width="1.8"`)
		c.Text(svg.Point{X: numbers[i].X, Y: numbers[i].Y + 45}, "strong mid", name, size)
	}
}

// label writes the name of a grade into its cell where nothing else stands: along
// its line, in the middle or to one side. It leaves the name out where it finds no
// room, and returns the places that it takes.
func label(c *svg.Canvas, l cell, taken []box) []box {
	name := l.name()
	from, wide := frame(l.Group)
	half := (svg.Tenth(len(name))*57 + 4*px) / 2
	rise, below := svg.Tenth(0), 1*px // of the line over the width of the group, and room above it
	if l.Rises {
		rise, below = degree, 2*px
	}
	for _, aside := range []svg.Tenth{0, -1, 1, -2, 2, -3, 3, -4, 4} {
		for _, up := range []svg.Tenth{50, 35, 65, 22, 78} {
			middle := wide/2 + aside*10*px
			lo, hi := l.edges(middle)
			at := svg.Point{X: from.X + middle, Y: lo - (lo-hi)*up/100}
			// The name takes a row of small places, each with room above and below.
			var places []box
			for x := middle - half + 3*px; x < middle+half; x += 6 * px {
				lo, hi := l.edges(x)
				b := around(svg.Point{X: from.X + x, Y: at.Y - (x-middle)*rise/wide}, 6*px, 13*px)
				if x < 4*px || x > wide-4*px || b.from.Y < hi+1*px || b.to.Y > lo-below || !free(b, taken) {
					places = nil
					break
				}
				places = append(places, b)
			}
			if places == nil {
				continue
			}
			turn := ""
			at.Y += 4 * px
			if l.Rises {
				turn = fmt.Sprintf(`transform="rotate(%s %v %v)"`, map[svg.Tenth]string{young: "-18.4", old: "-26.6"}[wide], at.X, at.Y)
			}
			c.Text(at, "small mid", name, turn)
			return places
		}
	}
	return nil
}

// edges returns the lower and the upper edge of the cell so far into its group.
func (c cell) edges(x svg.Tenth) (lo, hi svg.Tenth) {
	_, wide := frame(c.Group)
	units := int(100 * x / wide)
	return at(c.On(units), c.Group, units).Y, at(c.end(units), c.Group, units).Y
}

// legend explains the strokes.
func legend(c *svg.Canvas, y svg.Tenth, e grade.Edition) {
	line := func(words string) {
		c.Text(svg.Point{X: 8 * px, Y: y}, "small", words, "")
		y += 16 * px
	}
	line("A heavy line begins a grade, a light one a part of it.")
	line("A carcass on a line has the grade above it.")
	for _, l := range []struct {
		what string
		c    cite.Citation
	}{
		{"line official or published", cite.Citation{Standing: cite.Official}},
		{"derived or common practice", cite.Citation{Standing: cite.Derived}},
		{"from memory", cite.Citation{Standing: cite.Memory}},
	} {
		c.Line(svg.Point{X: 8 * px, Y: y - 4*px}, svg.Point{X: 52 * px, Y: y - 4*px}, `stroke="#16191c" stroke-width="2.2"`+stroke(l.c))
		c.Text(svg.Point{X: 60 * px, Y: y}, "small", l.what, "")
		y += 16 * px
	}
	c.Text(svg.Point{X: 8 * px, Y: y}, "small", "The "+e.String()+" edition; for teaching and analysis, not for official grades.", "")
}
