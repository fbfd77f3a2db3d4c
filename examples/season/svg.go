package main

import (
	"fmt"
	"html"
	"strconv"
	"strings"
)

// The drawing: one panel for each member, four to a row, all on one scale.
const (
	panelWide, panelHigh = 200, 130
	gap                  = 26
	columns              = 4
	left, top            = 46, 64
)

// draw draws each member's bias in yield over time: a line through the contests, and
// around it one standard deviation of the errors either way, shaded. It is in black
// and greys alone.
func draw(leans []lean, note string) []byte {
	// The scale runs to the next half of a grade over what is drawn.
	reach, contests := 0.5, 1
	for _, l := range leans {
		contests = max(contests, len(l.bias))
		for i := range l.bias {
			for reach < 3 && l.bias[i].OK() && max(l.bias[i].Value, -l.bias[i].Value)+l.spread[i].Value > reach {
				reach += 0.5
			}
		}
	}
	rows := (len(leans) + columns - 1) / columns
	width := left + columns*(panelWide+gap)
	height := top + rows*(panelHigh+gap+22) + 12
	var b strings.Builder
	fmt.Fprintf(&b, `<svg xmlns="http://www.w3.org/2000/svg" width="%d" height="%d" viewBox="0 0 %d %d" font-family="sans-serif" font-size="11" fill="#222">`+"\n", width, height, width, height)
	b.WriteString("<title>Bias of yield estimates, contest by contest</title>\n")
	b.WriteString(`<rect width="100%" height="100%" fill="#fff"/>` + "\n")
	fmt.Fprintf(&b, `<text x="%d" y="24" font-size="15" font-weight="bold">Bias of yield estimates, contest by contest</text>`+"\n", left)
	fmt.Fprintf(&b, `<text x="%d" y="42">Estimate less official yield, in yield grades; shaded: one standard deviation either way. %s</text>`+"\n", left, html.EscapeString(note))
	for i, l := range leans {
		x0 := left + i%columns*(panelWide+gap)
		y0 := top + i/columns*(panelHigh+gap+22) + 16
		panel(&b, l, x0, y0, reach, contests, i%columns == 0)
	}
	b.WriteString("</svg>\n")
	return []byte(b.String())
}

// panel draws one member.
func panel(b *strings.Builder, l lean, x0, y0 int, reach float64, contests int, labels bool) {
	x := func(i int) string {
		step := float64(panelWide-24) / float64(max(contests-1, 1))
		return number(float64(x0+12) + float64(float64(i)*step))
	}
	y := func(v float64) string {
		v = min(max(v, -reach), reach)
		return number(float64(y0+panelHigh/2) - float64(v/reach*float64(panelHigh/2)))
	}
	fmt.Fprintf(b, `<text x="%d" y="%d" font-weight="bold">%s</text>`+"\n", x0, y0-5, html.EscapeString(l.member))
	fmt.Fprintf(b, `<rect x="%d" y="%d" width="%d" height="%d" fill="none" stroke="#bbb"/>`+"\n", x0, y0, panelWide, panelHigh)
	for v := -reach; v <= reach; v += 0.5 {
		stroke := "#e4e4e4"
		if v == 0 {
			stroke = "#888"
		}
		if v > -reach && v < reach {
			fmt.Fprintf(b, `<line x1="%d" y1="%s" x2="%d" y2="%s" stroke="%s"/>`+"\n", x0, y(v), x0+panelWide, y(v), stroke)
		}
		if labels {
			text := strconv.FormatFloat(v, 'f', 1, 64)
			if v > 0 {
				text = "+" + text
			}
			fmt.Fprintf(b, `<text x="%d" y="%s" dy="4" text-anchor="end" fill="#555">%s</text>`+"\n", x0-6, y(v), text)
		}
	}
	for i := range contests {
		fmt.Fprintf(b, `<text x="%s" y="%d" text-anchor="middle" fill="#555">%d</text>`+"\n", x(i), y0+panelHigh+14, i+1)
	}
	// Contests in a row that have a figure make one piece of the line.
	for i := 0; i < len(l.bias); {
		if !l.bias[i].OK() {
			i++
			continue
		}
		var line, upper []string
		lower := ""
		for ; i < len(l.bias) && l.bias[i].OK(); i++ {
			v, s := l.bias[i].Value, l.spread[i].Value
			line = append(line, x(i)+","+y(v))
			upper = append(upper, x(i)+","+y(v+s))
			lower = " " + x(i) + "," + y(v-s) + lower
		}
		fmt.Fprintf(b, `<polygon points="%s%s" fill="#ccc" fill-opacity="0.55"/>`+"\n", strings.Join(upper, " "), lower)
		fmt.Fprintf(b, `<polyline points="%s" fill="none" stroke="#111" stroke-width="1.8"/>`+"\n", strings.Join(line, " "))
		for _, p := range line {
			px, py, _ := strings.Cut(p, ",")
			fmt.Fprintf(b, `<circle cx="%s" cy="%s" r="2.4" fill="#111"/>`+"\n", px, py)
		}
	}
}

func number(v float64) string { return strconv.FormatFloat(v, 'f', 1, 64) }
