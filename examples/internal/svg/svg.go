// Package svg draws pictures for the pages of the examples: lines, areas and words
// at whole tenths of a pixel, so that a picture has the same bytes on every
// processor.
package svg

import (
	"bytes"
	"encoding/xml"
	"fmt"
	"strings"
)

// Tenth is a length in tenths of a pixel.
type Tenth int

// Px is one pixel.
const Px Tenth = 10

// String gives the length in pixels, as "12" or "-0.5".
func (t Tenth) String() string {
	if t%Px == 0 {
		return fmt.Sprint(int(t / Px))
	}
	sign := ""
	if t < 0 {
		sign, t = "-", -t
	}
	return fmt.Sprintf("%s%d.%d", sign, t/Px, t%Px)
}

// Point is a place, counted from the upper left corner.
type Point struct{ X, Y Tenth }

// Canvas is one picture in the making.
type Canvas struct{ b bytes.Buffer }

// The classes of words are small and strong; mid and end say which side of the
// words stands at their point. Other words are at least 12 pixels high.
const style = `svg text { font-family: "Helvetica Neue", Helvetica, Arial, "Liberation Sans", sans-serif; fill: #16191c; font-size: 13px; }
svg .small { font-size: 12px; }
svg .strong { font-weight: 700; }
svg .mid { text-anchor: middle; }
svg .end { text-anchor: end; }`

// New starts a picture. It is as wide as the page allows and at most half as wide
// again as it is drawn. A reader who cannot see it is told the title and what it
// shows.
func New(w, h Tenth, title, shows string) *Canvas {
	c := &Canvas{}
	c.put("<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 %v %v\" width=\"100%%\" style=\"max-width:%vpx\" preserveAspectRatio=\"xMinYMin\" role=\"img\" aria-label=\"%s\">\n", w, h, w*3/2, Escape(title+". "+shows))
	c.put("<title>%s</title>\n<style>%s</style>\n", Escape(title), style)
	c.put("<rect width=\"%v\" height=\"%v\" fill=\"#ffffff\"/>\n", w, h)
	return c
}

// with puts a space before attributes, where there are any.
func with(attrs string) string {
	if attrs == "" {
		return ""
	}
	return " " + attrs
}

func (c *Canvas) put(format string, args ...any) { fmt.Fprintf(&c.b, format, args...) }

// Bytes ends the picture and returns it.
func (c *Canvas) Bytes() []byte {
	c.put("</svg>\n")
	return c.b.Bytes()
}

// Text writes words at a point of their base line. The attributes may be empty, as
// for the shapes below.
func (c *Canvas) Text(p Point, class, words, attrs string) {
	c.put("<text x=\"%v\" y=\"%v\" class=\"%s\"%s>%s</text>\n", p.X, p.Y, class, with(attrs), Escape(words))
}

// Rect draws a rectangle from its upper left corner.
func (c *Canvas) Rect(p Point, w, h Tenth, attrs string) {
	c.put("<rect x=\"%v\" y=\"%v\" width=\"%v\" height=\"%v\"%s/>\n", p.X, p.Y, w, h, with(attrs))
}

// Line draws a line.
func (c *Canvas) Line(from, to Point, attrs string) {
	c.put("<line x1=\"%v\" y1=\"%v\" x2=\"%v\" y2=\"%v\"%s/>\n", from.X, from.Y, to.X, to.Y, with(attrs))
}

// Polyline draws a line through points.
func (c *Canvas) Polyline(points []Point, attrs string) {
	c.put("<polyline points=\"%s\" fill=\"none\"%s/>\n", list(points), with(attrs))
}

// Polygon draws an area.
func (c *Canvas) Polygon(points []Point, attrs string) {
	c.put("<polygon points=\"%s\"%s/>\n", list(points), with(attrs))
}

// Smooth draws an area with a smooth edge: from the middle of each side to that of
// the next, bent toward the corner between them.
func (c *Canvas) Smooth(points []Point, attrs string) {
	middle := func(i int) Point {
		a, b := points[i%len(points)], points[(i+1)%len(points)]
		return Point{(a.X + b.X) / 2, (a.Y + b.Y) / 2}
	}
	c.put("<path d=\"M%v,%v", middle(0).X, middle(0).Y)
	for i := range points {
		corner, to := points[(i+1)%len(points)], middle(i+1)
		c.put(" Q%v,%v %v,%v", corner.X, corner.Y, to.X, to.Y)
	}
	c.put(" Z\"%s/>\n", with(attrs))
}

// Circle draws a circle.
func (c *Canvas) Circle(at Point, r Tenth, attrs string) {
	c.put("<circle cx=\"%v\" cy=\"%v\" r=\"%v\"%s/>\n", at.X, at.Y, r, with(attrs))
}

func list(points []Point) string {
	all := make([]string, len(points))
	for i, p := range points {
		all[i] = p.X.String() + "," + p.Y.String()
	}
	return strings.Join(all, " ")
}

// Escape makes words safe to stand in a picture or a page.
func Escape(words string) string {
	var b strings.Builder
	_ = xml.EscapeText(&b, []byte(words)) // a Builder takes every write
	return b.String()
}
