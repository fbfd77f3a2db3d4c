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
// to the left: our own drawing.
var outline = []svg.Point{
	px(166, 26), px(180, 26), px(182, 44), px(190, 70), px(206, 92), px(217, 118), px(212, 142), px(200, 156),
	px(208, 178), px(220, 204), px(232, 236), px(238, 270), px(234, 296), px(244, 320), px(250, 344), px(244, 356), px(230, 346),
	px(222, 326), px(208, 340), px(196, 360), px(178, 382), px(152, 388), px(136, 378), px(134, 362), px(122, 346), px(112, 318), px(108, 286),
	px(110, 250), px(116, 214), px(116, 180), px(108, 150), px(104, 126), px(112, 98), px(130, 74), px(150, 56), px(160, 42),
}

// place is where a site is on the outline, what it is called there, and on which
// side the name stands.
type place struct {
	at   svg.Point
	name string
	left bool
}

var places = map[class.Site]place{
	class.FatRound:       {px(128, 92), "round", true},
	class.FatInsideRound: {px(192, 96), "inside round", false},
	class.FatRump:        {px(120, 130), "rump", true},
	class.FatHip:         {px(124, 160), "hip", true},
	class.FatCod:         {px(203, 136), "cod or udder", false},
	class.FatFlank:       {px(199, 184), "flank", false},
	class.FatLoinEdge:    {px(127, 192), "loin edge", true},
	class.FatRib:         {px(122, 242), "rib", true},
	class.FatPlate:       {px(216, 238), "plate", false},
	class.FatClod:        {px(176, 318), "clod", false},
	class.FatShoulder:    {px(126, 318), "shoulder", true},
	class.FatNeck:        {px(158, 370), "neck", true},
	class.FatBrisket:     {px(220, 296), "brisket", false},

	class.RoundPlumpness: {px(146, 110), "plump round", true},
	class.RoundLength:    {px(168, 66), "long round", true},
	class.RoundWidth:     {px(166, 88), "wide round", false},
	class.RoundCushion:   {px(178, 118), "cushion", false},
	class.MuscleLoin:     {px(150, 184), "loin muscle", true},
	class.MuscleRib:      {px(150, 246), "rib muscle", true},
	class.MuscleClod:     {px(184, 292), "clod muscle", false},
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
			c := look.Order.Compare(e, exhibit)
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
	c.Text(px(0, 14), "strong", title, `style="font-size:15px"`)
	c.Smooth(outline, `fill="#f3e9e4" stroke="#5a4a42" stroke-width="1.5"`)
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
