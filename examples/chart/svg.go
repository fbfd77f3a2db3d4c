package main

import (
	"bytes"
	"encoding/xml"
	"fmt"
	"strings"
)

// tenth is a length in tenths of a pixel. All positions are whole numbers of
// them, so that a picture is the same on every processor.
type tenth int

const px tenth = 10

func (t tenth) String() string {
	if t%px == 0 {
		return fmt.Sprint(int(t / px))
	}
	sign := ""
	if t < 0 {
		sign, t = "-", -t
	}
	return fmt.Sprintf("%s%d.%d", sign, t/px, t%px)
}

type point struct{ x, y tenth }

// canvas collects the elements of one picture.
type canvas struct{ b bytes.Buffer }

// style is shared by both pictures. The fills get darker from the lowest grade to
// the highest, so that they keep their order without color.
const style = `
text { font-family: "Helvetica Neue", Helvetica, Arial, sans-serif; fill: #1d2329; font-size: 13px; }
.title { font-size: 19px; font-weight: 600; }
.small { font-size: 11.5px; fill: #4a535c; }
.part { font-size: 11.5px; fill: #26323a; }
.strong { font-weight: 600; }
.mid { text-anchor: middle; }
.end { text-anchor: end; }
.num { font-variant-numeric: tabular-nums; }
`

func open(w, h tenth, title, desc string) *canvas {
	c := &canvas{}
	fmt.Fprintf(&c.b, "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 %v %v\" width=\"%v\" height=\"%v\" role=\"img\" aria-labelledby=\"title desc\">\n", w, h, w, h)
	fmt.Fprintf(&c.b, "<title id=\"title\">%s</title>\n<desc id=\"desc\">%s</desc>\n<style>%s</style>\n", escape(title), escape(desc), style)
	fmt.Fprintf(&c.b, "<rect width=\"%v\" height=\"%v\" fill=\"#ffffff\"/>\n", w, h)
	return c
}

func (c *canvas) close() []byte {
	c.b.WriteString("</svg>\n")
	return c.b.Bytes()
}

func (c *canvas) text(x, y tenth, class, s string) {
	fmt.Fprintf(&c.b, "<text x=\"%v\" y=\"%v\" class=\"%s\">%s</text>\n", x, y, class, escape(s))
}

func (c *canvas) rect(x, y, w, h tenth, attrs string) {
	fmt.Fprintf(&c.b, "<rect x=\"%v\" y=\"%v\" width=\"%v\" height=\"%v\" %s/>\n", x, y, w, h, attrs)
}

func (c *canvas) line(from, to point, attrs string) {
	fmt.Fprintf(&c.b, "<line x1=\"%v\" y1=\"%v\" x2=\"%v\" y2=\"%v\" %s/>\n", from.x, from.y, to.x, to.y, attrs)
}

func (c *canvas) polygon(points []point, attrs string) {
	list := make([]string, len(points))
	for i, p := range points {
		list[i] = p.x.String() + "," + p.y.String()
	}
	fmt.Fprintf(&c.b, "<polygon points=\"%s\" %s/>\n", strings.Join(list, " "), attrs)
}

func (c *canvas) circle(at point, r tenth, attrs string) {
	fmt.Fprintf(&c.b, "<circle cx=\"%v\" cy=\"%v\" r=\"%v\" %s/>\n", at.x, at.y, r, attrs)
}

func escape(s string) string {
	var b strings.Builder
	_ = xml.EscapeText(&b, []byte(s)) // a Builder takes every write
	return b.String()
}
