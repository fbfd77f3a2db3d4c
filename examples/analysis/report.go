package main

import (
	"encoding/csv"
	"encoding/json"
	"fmt"
	"io"
	"strconv"
	"strings"

	"example.com/ribface/grade"
	"example.com/ribface/grade/sheet"
	"github.com/shopspring/decimal"
)

// text writes the summary for people.
func (s *summary) text(out io.Writer) error {
	w := &strings.Builder{}
	line := func(name, value string) { fmt.Fprintf(w, "%-26s %s\n", name, value) }
	line("carcasses graded", grouped(s.Graded))
	line("rows refused", grouped(s.Refused))
	if s.Graded == 0 {
		_, err := io.WriteString(out, w.String())
		return err
	}
	if quality, _ := s.all.graded(); quality > 0 {
		line("dark cutters", grouped(s.all.dark)+", "+share(s.all.dark, s.Graded))
	}
	line("rows flagged", grouped(s.Flagged))
	for k := range sheet.FlagKinds() {
		if n := s.Flags[k]; n > 0 {
			line("  "+k.String(), grouped(n))
		}
	}
	for a := range sheet.Assumptions(16) {
		if n := s.Assumed[a]; n > 0 {
			line("assumed: "+a.String(), grouped(n))
		}
	}
	s.all.table(w)
	s.all.meansText(w)
	s.all.histograms(w)
	if s.by != "" {
		s.groupsText(w)
	}
	if s.grid != nil {
		t := s.grid.Offer()
		fmt.Fprintln(w)
		line("grid", t.Name+", base "+t.Base.StringFixed(2)+" per cwt")
		line("carcasses priced", grouped(s.priced))
		line("without a price", grouped(s.unpriced))
		if s.priced > 0 {
			line("total value", dollars(s.head))
			line("mean value per head", dollars(s.head.DivRound(decimal.NewFromInt(int64(s.priced)), 2)))
			line("mean price per cwt", dollars(s.head.DivRound(decimal.New(s.weight, -6), 2)))
		}
	}
	_, err := io.WriteString(out, w.String())
	return err
}

// table writes counts by quality grade and yield grade.
func (t *tally) table(w *strings.Builder) {
	quality, yield := t.graded()
	row := func(name string, n int, of int, by func(y int) int) {
		fmt.Fprintf(w, "%-12s %10s %7s", name, grouped(n), share(n, of))
		for y := 1; y <= 5 && yield > 0; y++ {
			fmt.Fprintf(w, " %10s", grouped(by(y)))
		}
		fmt.Fprintln(w)
	}
	fmt.Fprintf(w, "\n%-12s %10s %7s", "quality", "carcasses", "share")
	for y := 1; y <= 5 && yield > 0; y++ {
		fmt.Fprintf(w, " %10s", "yield "+strconv.Itoa(y))
	}
	fmt.Fprintln(w)
	if quality > 0 {
		for _, g := range t.grades() {
			row(g.String(), t.quality(g), quality, func(y int) int { return t.cells[g][y] })
		}
	}
	row("all", t.n, t.n, t.yield)
	if yield > 0 {
		fmt.Fprintf(w, "%-12s %10s %7s", "share", "", "")
		for y := 1; y <= 5; y++ {
			fmt.Fprintf(w, " %10s", share(t.yield(y), yield))
		}
		fmt.Fprintln(w)
	}
}

// meansText writes the means.
func (t *tally) meansText(w *strings.Builder) {
	fmt.Fprintf(w, "\n%-24s %10s %10s %10s\n", "", "n", "mean", "sd")
	for i := range t.means {
		if m := &t.means[i]; m.n > 0 {
			fmt.Fprintf(w, "%-24s %10s %10s %10s\n", figures[i].title, grouped(m.n), m.mean(figures[i]), m.spread(figures[i]))
		}
	}
}

// bar is one bar of a histogram.
type bar struct {
	name string
	n    int
}

// yields and marblings give the histograms, without empty bars at the ends.
func (t *tally) yields() []bar {
	var all []bar
	for i, n := range t.halves {
		name := decimal.New(int64(5*i), -1).StringFixed(1)
		switch i {
		case 0:
			name = "under 0.5"
		case halves - 1:
			name += " and over"
		default:
			name += " to " + decimal.New(int64(5*i+5), -1).StringFixed(1)
		}
		all = append(all, bar{name, n})
	}
	return trim(all)
}

func (t *tally) marblings() []bar {
	var all []bar
	for d := range grade.Degrees() {
		all = append(all, bar{d.String(), t.degrees[d]})
	}
	return trim(all)
}

func trim(all []bar) []bar {
	for len(all) > 0 && all[0].n == 0 {
		all = all[1:]
	}
	for len(all) > 0 && all[len(all)-1].n == 0 {
		all = all[:len(all)-1]
	}
	return all
}

// histograms writes bars of yields and of marbling.
func (t *tally) histograms(w *strings.Builder) {
	draw := func(title string, bars []bar) {
		most := 0
		for _, b := range bars {
			most = max(most, b.n)
		}
		if most == 0 {
			return
		}
		fmt.Fprintf(w, "\n%s\n", title)
		for _, b := range bars {
			const width = 50
			length := (width*b.n + most/2) / most
			if b.n > 0 {
				length = max(length, 1)
			}
			fmt.Fprintf(w, "%-20s %10s %s\n", b.name, grouped(b.n), strings.Repeat("#", length))
		}
	}
	draw("exact yield", t.yields())
	draw("marbling", t.marblings())
}

// groupsText writes a line for each group.
func (s *summary) groupsText(w *strings.Builder) {
	const shown = "%-20s %9s %8s %8s %8s %8s %8s %8s %9s %9s %9s\n"
	fmt.Fprintln(w)
	fmt.Fprintf(w, shown, short(s.by), "n", "Prime", "Choice", "Select", "other", "yield", "sd", "fat", "ribeye", "weight")
	for _, name := range s.names() {
		t := s.groups[name]
		quality, _ := t.graded()
		share := func(n int) string {
			if quality == 0 {
				return ""
			}
			return share(n, quality)
		}
		p, c, l := t.quality(grade.Prime), t.quality(grade.Choice), t.quality(grade.Select)
		fmt.Fprintf(w, shown, short(name), grouped(t.n), share(p), share(c), share(l), share(quality-p-c-l), t.means[5].mean(figures[5]), t.means[5].spread(figures[5]), t.means[0].mean(figures[0]), t.means[1].mean(figures[1]), t.means[3].mean(figures[3]))
	}
}

// short cuts a name for a column of text.
func short(name string) string {
	if name == "" {
		return "(empty)"
	}
	r := []rune(strings.Map(func(r rune) rune {
		if r < ' ' {
			return ' '
		}
		return r
	}, name))
	if len(r) > 20 {
		return string(r[:19]) + "…"
	}
	return string(r)
}

// each gives every tally with the name of its group; all carcasses first.
func (s *summary) each(f func(group string, t *tally)) {
	f("", &s.all)
	for _, name := range s.names() {
		f(name, s.groups[name])
	}
}

// csv writes the summary as a sheet: for each group the counts by quality grade, by
// yield grade and by both, the histograms, and the means.
func (s *summary) csv(out io.Writer) error {
	w := csv.NewWriter(out)
	write := func(cells ...string) { _ = w.Write(cells) } // the error stays
	write("by", "group", "item", "of", "count", "share_pct", "mean", "sd")
	write("", "", "rows", "graded", count(s.Graded), "", "", "")
	write("", "", "rows", "refused", count(s.Refused), "", "", "")
	write("", "", "rows", "flagged", count(s.Flagged), "", "", "")
	for k := range sheet.FlagKinds() {
		if n := s.Flags[k]; n > 0 {
			write("", "", "flag", k.String(), count(n), "", "", "")
		}
	}
	s.each(func(group string, t *tally) {
		by := ""
		if t != &s.all {
			by = s.by
		}
		line := func(item, of string, n, all int) {
			write(by, group, item, of, count(n), percent(n, all), "", "")
		}
		quality, yield := t.graded()
		line("dark_cutters", "", t.dark, t.n)
		for _, g := range t.grades() {
			line("quality_grade", g.String(), t.quality(g), quality)
		}
		for y := 1; y <= 5 && yield > 0; y++ {
			line("yield_grade", strconv.Itoa(y), t.yield(y), yield)
		}
		for _, g := range t.grades() {
			for y := 1; y <= 5; y++ {
				if n := t.cells[g][y]; n > 0 {
					line("quality_grade and yield_grade", g.String()+" "+strconv.Itoa(y), n, t.n)
				}
			}
		}
		for _, b := range t.yields() {
			line("yield", b.name, b.n, yield)
		}
		for _, b := range t.marblings() {
			line("marbling", b.name, b.n, t.means[4].n)
		}
		for i := range t.means {
			if m := &t.means[i]; m.n > 0 {
				write(by, group, "mean", figures[i].name, count(m.n), "", m.mean(figures[i]), m.spread(figures[i]))
			}
		}
	})
	w.Flush()
	return w.Error()
}

// json writes the summary for programs. Shares, means and spreads are numbers in text,
// with the decimals that are shown.
func (s *summary) json(out io.Writer) error {
	type part struct {
		Of    string `json:"of"`
		Count int    `json:"count"`
		Share string `json:"share_pct"`
	}
	type average struct {
		Of   string `json:"of"`
		N    int    `json:"n"`
		Mean string `json:"mean"`
		SD   string `json:"sd,omitempty"`
	}
	type lot struct {
		Group  *string   `json:"group,omitempty"`
		Graded int       `json:"graded"`
		Dark   int       `json:"dark_cutters"`
		Grades []part    `json:"quality_grades,omitempty"`
		Yields []part    `json:"yield_grades,omitempty"`
		Curve  []part    `json:"yields,omitempty"`
		Marbs  []part    `json:"marbling,omitempty"`
		Means  []average `json:"means,omitempty"`
	}
	var doc struct {
		Rows   sheet.Counts `json:"rows"`
		All    lot          `json:"all"`
		By     string       `json:"by,omitempty"`
		Groups []lot        `json:"groups,omitempty"`
	}
	doc.Rows, doc.By = s.Counts, s.by
	s.each(func(group string, t *tally) {
		quality, yield := t.graded()
		l := lot{Graded: t.n, Dark: t.dark}
		add := func(to *[]part, of string, n, all int) {
			*to = append(*to, part{of, n, percent(n, all)})
		}
		for _, g := range t.grades() {
			add(&l.Grades, g.String(), t.quality(g), quality)
		}
		for y := 1; y <= 5 && yield > 0; y++ {
			add(&l.Yields, strconv.Itoa(y), t.yield(y), yield)
		}
		for _, b := range t.yields() {
			add(&l.Curve, b.name, b.n, yield)
		}
		for _, b := range t.marblings() {
			add(&l.Marbs, b.name, b.n, t.means[4].n)
		}
		for i := range t.means {
			if m := &t.means[i]; m.n > 0 {
				l.Means = append(l.Means, average{figures[i].name, m.n, m.mean(figures[i]), m.spread(figures[i])})
			}
		}
		if t == &s.all {
			doc.All = l
			return
		}
		l.Group = &group
		doc.Groups = append(doc.Groups, l)
	})
	e := json.NewEncoder(out)
	e.SetIndent("", "  ")
	e.SetEscapeHTML(false)
	return e.Encode(doc)
}

// svg draws the shares of the grades and the histogram of yields, in tones that keep
// their order without color.
func (s *summary) svg(out io.Writer) error {
	w := &strings.Builder{}
	type panel struct {
		title string
		bars  []bar
	}
	quality, yield := s.all.graded()
	var panels []panel
	if quality > 0 {
		p := panel{title: "Quality grades"}
		for _, g := range s.all.grades() {
			p.bars = append(p.bars, bar{g.String(), s.all.quality(g)})
		}
		panels = append(panels, p, panel{"Marbling", s.all.marblings()})
	}
	if yield > 0 {
		p := panel{title: "Yield grades"}
		for y := 1; y <= 5; y++ {
			p.bars = append(p.bars, bar{"yield grade " + strconv.Itoa(y), s.all.yield(y)})
		}
		panels = append(panels, p, panel{"Exact yield", s.all.yields()})
	}
	const width, left, right, step, head = 640, 170, 90, 22, 34
	height := 60
	for _, p := range panels {
		height += head + step*len(p.bars)
	}
	title := grouped(s.Graded) + " carcasses, " + grouped(s.Refused) + " rows refused"
	fmt.Fprintf(w, "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 %d %d\" role=\"img\" aria-labelledby=\"title\">\n<title id=\"title\">%s</title>\n", width, height, title)
	fmt.Fprint(w, "<style>text { font: 13px Helvetica, Arial, sans-serif; fill: #1d2329 } .head { font-size: 15px; font-weight: 600 } .end { text-anchor: end }</style>\n")
	fmt.Fprintf(w, "<rect width=\"%d\" height=\"%d\" fill=\"#fff\"/>\n<text x=\"16\" y=\"28\" class=\"head\">%s</text>\n", width, height, title)
	y := 40
	for _, p := range panels {
		y += head
		fmt.Fprintf(w, "<text x=\"16\" y=\"%d\" class=\"head\">%s</text>\n", y-6, p.title)
		all, most := 0, 1
		for _, b := range p.bars {
			all += b.n
			most = max(most, b.n)
		}
		for _, b := range p.bars {
			length := (width - left - right) * b.n / most
			fmt.Fprintf(w, "<text x=\"%d\" y=\"%d\" class=\"end\">%s</text>\n", left-8, y+15, b.name)
			fmt.Fprintf(w, "<rect x=\"%d\" y=\"%d\" width=\"%d\" height=\"%d\" fill=\"#5a6b78\"/>\n", left, y+3, length, step-6)
			fmt.Fprintf(w, "<text x=\"%d\" y=\"%d\">%s, %s</text>\n", left+length+6, y+15, grouped(b.n), share(b.n, max(all, 1)))
			y += step
		}
	}
	fmt.Fprint(w, "</svg>\n")
	_, err := io.WriteString(out, w.String())
	return err
}

func count(n int) string { return strconv.Itoa(n) }

// share gives part of n in percent with one place, halves up.
func share(part, n int) string {
	tenths := int(mean(1000*int64(part), int64(n)))
	return strconv.Itoa(tenths/10) + "." + strconv.Itoa(tenths%10) + "%"
}

// percent is share as a bare number.
func percent(part, n int) string {
	if n == 0 {
		return ""
	}
	return strings.TrimSuffix(share(part, n), "%")
}

// dollars writes an amount to the cent.
func dollars(d decimal.Decimal) string {
	whole, cents, _ := strings.Cut(d.Abs().StringFixed(2), ".")
	sign := ""
	if d.IsNegative() {
		sign = "-"
	}
	return sign + "$" + thousands(whole) + "." + cents
}

// grouped writes a count with a comma between every three digits.
func grouped(n int) string { return thousands(strconv.Itoa(n)) }

func thousands(s string) string {
	for i := len(s) - 3; i > 0; i -= 3 {
		s = s[:i] + "," + s[i:]
	}
	return s
}
