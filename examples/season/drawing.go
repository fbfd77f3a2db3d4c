package main

import (
	"fmt"
	"math"

	"example.com/ribface/examples/internal/svg"
)

// The drawing: one panel for each member, two to a row as on a phone, all on one
// scale.
const (
	px        = svg.Px
	panelWide = 158 * px
	panelHigh = 96 * px
	gap       = 14 * px
	rowHigh   = panelHigh + 44*px
	leftSide  = 36 * px
	columns   = 2
)

// draw draws each member's bias in yield over time: a line through the contests, and
// around it one standard deviation of the errors either way, shaded. It is in black
// and grays alone.
func draw(members []*member, contests int) []byte {
	// The scale runs to the next half of a grade over what is drawn, in thousandths.
	reach := 500
	for _, m := range members {
		for i := range m.bias {
			for reach < 3000 && m.bias[i].OK() && abs(thousandths(m.bias[i].Value))+thousandths(m.spread[i].Value) > reach {
				reach += 500
			}
		}
	}
	rows := (len(members) + columns - 1) / columns
	wide := min(len(members), columns)
	c := svg.New(leftSide+svg.Tenth(wide)*(panelWide+gap), svg.Tenth(rows)*rowHigh+4*px, "Yield estimates less official yields, contest by contest",
		"One panel for each member: a line through the mean error of each contest, over zero where the estimates are too high, with one standard deviation either way shaded.")
	for i, m := range members {
		at := svg.Point{X: leftSide + svg.Tenth(i%columns)*(panelWide+gap), Y: svg.Tenth(i/columns)*rowHigh + 20*px}
		panel(c, m, at, reach, contests, i%columns == 0)
	}
	return c.Bytes()
}

func thousandths(v float64) int { return int(math.Round(v * 1000)) }

func abs(n int) int { return max(n, -n) }

// panel draws one member.
func panel(c *svg.Canvas, m *member, at svg.Point, reach, contests int, labels bool) {
	x := func(i int) svg.Tenth {
		return at.X + 10*px + svg.Tenth(i)*(panelWide-20*px)/svg.Tenth(max(contests-1, 1))
	}
	y := func(v int) svg.Tenth {
		return at.Y + panelHigh/2 - svg.Tenth(min(max(v, -reach), reach))*(panelHigh/2)/svg.Tenth(reach)
	}
	c.Text(svg.Point{X: at.X, Y: at.Y - 6*px}, "strong", m.ID, "")
	for v := -reach; v <= reach; v += 500 {
		stroke := `stroke="#d5d9dc"`
		if v == 0 {
			stroke = `stroke="#5b636a"`
		}
		c.Line(svg.Point{X: at.X, Y: y(v)}, svg.Point{X: at.X + panelWide, Y: y(v)}, stroke)
		if labels {
			text := "0"
			if v != 0 {
				text = fmt.Sprintf("%+d.%d", v/1000, abs(v)%1000/100)
				if v == -500 {
					text = "-0.5"
				}
			}
			c.Text(svg.Point{X: at.X - 5*px, Y: y(v) + 4*px}, "small end", text, "")
		}
	}
	c.Rect(at, panelWide, panelHigh, `fill="none" stroke="#8b939a"`)
	for i := range contests {
		if every := 1 + contests/12; i%every == 0 {
			c.Text(svg.Point{X: x(i), Y: at.Y + panelHigh + 14*px}, "small mid", fmt.Sprint(i+1), "")
		}
	}
	// Contests in a row that have a figure make one piece of the line.
	for i := 0; i < len(m.bias); {
		if !m.bias[i].OK() {
			i++
			continue
		}
		var line, area []svg.Point
		start := i
		for ; i < len(m.bias) && m.bias[i].OK(); i++ {
			line = append(line, svg.Point{X: x(i), Y: y(thousandths(m.bias[i].Value))})
			area = append(area, svg.Point{X: x(i), Y: y(thousandths(m.bias[i].Value) + thousandths(m.spread[i].Value))})
		}
		for j := i - 1; j >= start; j-- {
			area = append(area, svg.Point{X: x(j), Y: y(thousandths(m.bias[j].Value) - thousandths(m.spread[j].Value))})
		}
		c.Polygon(area, `fill="#c6ccd0" fill-opacity="0.7"`)
		c.Polyline(line, `stroke="#16191c" stroke-width="1.8"`)
		for _, p := range line {
			c.Circle(p, 24, `fill="#16191c"`)
		}
	}
}
