package main

import (
	"fmt"
	"slices"

	"example.com/ribface/examples/internal/svg"
	"example.com/ribface/placing/class"
)

// px is a point in whole pixels.
func px(x, y int) svg.Point { return svg.Point{X: svg.Tenth(x) * svg.Px, Y: svg.Tenth(y) * svg.Px} }

// Picture of a carcass: the side in the middle, names of the sites left and right.
const (
	wide, high   = 350, 400
	leftEnd      = 92  // names on the left end here
	rightStart   = 258 // names on the right start here
	apart        = 19  // between two names
	radius       = 10  // of a mark
	lowest, most = 388, 34
)

// outline is a side of beef as it hangs from the hock, seen from outside, the back
// to the left: our own drawing. From the hock it goes down the inside of the round,
// along the flank and plate to the foreshank, around the neck and up the back.
var outline = []svg.Point{
	px(170, 30), px(182, 30), px(184, 40), px(180, 58), px(188, 74), px(206, 92), px(222, 116), px(221, 140), px(206, 156),
	px(204, 170), px(216, 188), px(226, 214), px(234, 244), px(239, 272), px(236, 298), px(238, 308), px(250, 318), px(258, 338), px(260, 360), px(252, 368), px(244, 362), px(240, 344), px(226, 330),
	px(212, 332), px(200, 348), px(190, 370), px(180, 388), px(156, 392), px(140, 384), px(138, 366), px(128, 348), px(112, 330), px(104, 304), px(102, 276),
	px(106, 244), px(114, 214), px(118, 186), px(112, 158), px(102, 136), px(102, 112), px(114, 88), px(136, 70), px(156, 56), px(164, 42),
}

// seams are where the carcass is parted into round, loin, rib and chuck; the rib is
// cut between the 12th and the 13th, which is the middle one.
var seams = [][2]svg.Point{
	{px(110, 158), px(205, 158)}, {px(108, 238), px(232, 246)}, {px(105, 286), px(238, 290)},
}

// place is where a site is on the outline, what it is called there, and on which
// side the name stands.
type place struct {
	at   svg.Point
	name string
	left bool
}

var places = map[class.Site]place{
	class.FatRound:       {px(124, 92), "round", true},
	class.FatInsideRound: {px(196, 96), "inside round", false},
	class.FatRump:        {px(116, 128), "rump", true},
	class.FatHip:         {px(128, 153), "hip", true},
	class.FatCod:         {px(209, 134), "cod or udder", false},
	class.FatFlank:       {px(201, 180), "flank", false},
	class.FatLoinEdge:    {px(127, 196), "loin edge", true},
	class.FatRib:         {px(122, 262), "rib", true},
	class.FatPlate:       {px(220, 250), "plate", false},
	class.FatClod:        {px(182, 330), "clod", false},
	class.FatShoulder:    {px(124, 316), "shoulder", true},
	class.FatNeck:        {px(158, 372), "neck", true},
	class.FatBrisket:     {px(224, 306), "brisket", false},

	class.RoundPlumpness: {px(142, 110), "plump round", true},
	class.RoundLength:    {px(169, 68), "long round", true},
	class.RoundWidth:     {px(170, 97), "wide round", false},
	class.RoundCushion:   {px(181, 127), "cushion", false},
	class.MuscleLoin:     {px(160, 182), "loin muscle", true},
	class.MuscleRib:      {px(156, 252), "rib muscle", true},
	class.MuscleClod:     {px(172, 302), "clod muscle", false},
}

// tones are the fills of the marks from the best to the poorest, with their ink.
// They grow darker, so that they are told apart in gray.
var tones = [...][2]string{{"#eaf4fb", "#16191c"}, {"#9fcbe8", "#16191c"}, {"#e8a35c", "#16191c"}, {"#a4521c", "#ffffff"}, {"#5c2306", "#ffffff"}}

// mark is what was seen of one exhibit at one site.
type mark struct {
	place
	site    class.Site
	number  string // place in the class, 1 the best
	tone    [2]string
	differs bool // from what the rib shows
	nameY   svg.Tenth
}

// marks are the sites that were looked at, from above.
func (w settled) marks(exhibit int) []mark {
	var all []mark
	for _, look := range w.class.Walk {
		n, tied, better := w.graded.Len(), false, 0
		for e := 1; e <= n; e++ {
			// Rankings start with the fattest and with the heaviest muscled.
			c := look.Order.Place(e) - look.Order.Place(exhibit)
			if look.Site.Fat() {
				c = -c
			}
			if c < 0 {
				better++
			}
			tied = tied || c == 0 && e != exhibit
		}
		m := mark{place: places[look.Site], site: look.Site, number: fmt.Sprint(better + 1), tone: tones[better*(len(tones)-1)/(n-1)]}
		if tied {
			m.number += "="
		}
		for _, f := range w.graded.Represent() {
			m.differs = m.differs || f.Exhibit == exhibit && slices.Contains(f.Sites, look.Site)
		}
		all = append(all, m)
	}
	slices.SortFunc(all, func(a, b mark) int { return int(a.at.Y - b.at.Y) })
	// Names stand beside their marks, as far apart as they need.
	for _, left := range []bool{true, false} {
		free := svg.Tenth(most) * svg.Px
		for i := range all {
			if all[i].left == left {
				all[i].nameY = max(all[i].at.Y, free)
				free = all[i].nameY + apart*svg.Px
			}
		}
		last := svg.Tenth(lowest) * svg.Px
		for i := len(all) - 1; i >= 0; i-- {
			if all[i].left == left {
				all[i].nameY = min(all[i].nameY, last)
				last = all[i].nameY - apart*svg.Px
			}
		}
	}
	return all
}

// draw draws one carcass with its marks.
func (w settled) draw(exhibit int) []byte {
	a := w.graded.Assessment(exhibit)
	title := fmt.Sprintf("%s: %s, yield grade %d", w.name(exhibit), a.Quality, a.Yield.Grade())
	marks := w.marks(exhibit)
	shows := ""
	for _, m := range marks {
		if shows != "" {
			shows += "; "
		}
		shows += m.site.String() + " " + m.number
	}
	c := svg.New(wide*svg.Px, high*svg.Px, title, "Place at each site, 1 the trimmest or the heaviest muscled: "+shows+".")
	c.Text(px(0, 13), "strong", title, `style="font-size:15px"`)
	c.Smooth(outline, `fill="#f3e9e4" stroke="#5a4a42" stroke-width="1.5"`)
	for _, seam := range seams {
		c.Line(seam[0], seam[1], `stroke="#b59c90" stroke-width="1" stroke-dasharray="4 4"`)
	}
	// A hook holds it to the rail.
	c.Line(px(150, 25), px(202, 25), `stroke="#5a4a42" stroke-width="2"`)
	c.Polyline([]svg.Point{px(176, 25), px(176, 38), px(172, 44)}, `stroke="#5a4a42" stroke-width="2"`)
	const line = `stroke="#6b747b" stroke-width="1"`
	for _, m := range marks {
		end := svg.Point{X: (rightStart - 4) * svg.Px, Y: m.nameY}
		text, class := svg.Point{X: rightStart * svg.Px, Y: m.nameY + 4*svg.Px}, ""
		if m.left {
			end.X = (leftEnd + 4) * svg.Px
			text.X, class = leftEnd*svg.Px, "end"
		}
		c.Line(m.at, end, line)
		c.Text(text, class, m.name, "")
	}
	for _, m := range marks {
		stroke := `stroke="#16191c" stroke-width="1"`
		if m.differs {
			c.Circle(m.at, (radius+4)*svg.Px, `fill="#ffffff" stroke="#16191c" stroke-width="2"`)
		}
		fill := `fill="` + m.tone[0] + `" ` + stroke
		if m.site.Fat() {
			c.Circle(m.at, radius*svg.Px, fill)
		} else {
			c.Rect(svg.Point{X: m.at.X - (radius-1)*svg.Px, Y: m.at.Y - (radius-1)*svg.Px}, 2*(radius-1)*svg.Px, 2*(radius-1)*svg.Px, fill)
		}
		c.Text(svg.Point{X: m.at.X, Y: m.at.Y + 4*svg.Px + 5}, "strong mid", m.number, `style="fill:`+m.tone[1]+`"`)
	}
	return c.Bytes()
}
