// Package page writes the pages of the examples: one HTML file that needs nothing
// else, reads on a phone, in gray and without color, and prints on letter paper.
//
// A page is built from the top down: what the reader came for first. Headings,
// captions and labels are put in by the way it is built. Words are escaped;
// pictures come from package svg. The same page comes as plain text for a screen,
// without its pictures and the words that it explains.
package page

import (
	"bytes"
	"fmt"
	"regexp"
	"slices"
	"strings"
	"unicode/utf8"

	"example.com/ribface/examples/internal/say"
	"example.com/ribface/examples/internal/svg"
)

// Page is one page in the making.
type Page struct {
	title string
	b     bytes.Buffer    // of the HTML
	t     strings.Builder // of the text
}

const style = `
:root { color-scheme: light; }
* { box-sizing: border-box; }
body { font: 16px/1.45 "Helvetica Neue", Helvetica, Arial, "Liberation Sans", sans-serif; color: #16191c; background: #ffffff; margin: 0 auto; padding: 1rem; max-width: 46rem; }
h1 { font-size: 1.5rem; line-height: 1.2; margin: 0 0 .4rem; }
h2 { font-size: 1.15rem; margin: 1.6rem 0 .4rem; border-bottom: 2px solid #16191c; padding-bottom: .15rem; }
h3 { font-size: 1rem; margin: 1rem 0 .2rem; }
p, ul, ol, dl, figure { margin: 0 0 .7rem; }
ul, ol { padding-left: 1.3rem; }
li { margin: .15rem 0; }
.lead { font-size: 1.15rem; font-weight: 700; }
.note, footer, caption { color: #43494f; font-size: .9rem; }
a { color: #16191c; text-decoration: underline; }
a:focus-visible, summary:focus-visible, [tabindex]:focus-visible { outline: 3px solid #16191c; outline-offset: 2px; }
.wide { overflow-x: auto; padding-right: 1px; margin: 0 0 .8rem; }
table { border-collapse: collapse; width: 100%; font-variant-numeric: tabular-nums; }
caption { text-align: left; padding: 0 0 .25rem; }
th, td { text-align: left; vertical-align: top; padding: .3rem .7rem .3rem 0; border-bottom: 1px solid #a9afb5; }
th { font-weight: 700; }
thead th { vertical-align: bottom; border-bottom: 2px solid #16191c; }
th.n, td.n { text-align: right; padding-right: 1.1rem; }
.whole { white-space: nowrap; }
tr.noted > * { border-bottom: none; padding-bottom: 0; }
tr.noted + tr td { padding-top: 0; font-weight: 700; }
dt { font-weight: 700; }
dd { margin: 0 0 .4rem 1rem; }
td.write { min-width: 3.5rem; height: 2.4rem; border: 1px solid #16191c; }
pre { overflow-x: auto; font-size: .8rem; line-height: 1.35; margin: 0 0 .7rem; }
details { margin: 0 0 .7rem; }
summary { font-weight: 700; cursor: pointer; padding: .2rem 0; }
.flow { display: grid; grid-template-columns: repeat(auto-fill, minmax(min(100%, 20rem), 1fr)); gap: 0 1.6rem; align-items: start; }
.flow table { margin-bottom: .8rem; }
.flow tbody th { font-weight: 400; white-space: nowrap; }
.flow thead td { border-bottom: 2px solid #16191c; }
.flow td { vertical-align: middle; }
.bar { display: block; height: .7rem; background: #e3e6e8; border-left: 1px solid #16191c; min-width: 4rem; }
.bar i { display: block; height: 100%; background: #4b5a63; }
.flow .who { display: block; font-size: .85rem; font-weight: 700; white-space: normal; }
.figures { display: grid; grid-template-columns: repeat(auto-fit, minmax(min(100%, 20rem), 1fr)); gap: 0 1.4rem; }
.box { border: 1px solid #16191c; padding: .5rem .8rem 0; margin: 0 0 .9rem; }
.box h3 { margin-top: 0; }
footer { margin-top: 1.4rem; border-top: 1px solid #a9afb5; padding-top: .4rem; }
@media (max-width: 30rem) { th, td { padding-right: .45rem; } th.n, td.n { padding-right: .6rem; } table { font-size: .9rem; } }
@page { size: letter; margin: 12mm; }
@media print {
  html { font-size: 13px; }
  body { font-size: 10.5pt; line-height: 1.35; padding: 0; max-width: none; }
  h2 { margin-top: .7rem; }
  footer { margin-top: .6rem; }
  h2, h3, caption { break-after: avoid; }
  tr, li, figure, p { break-inside: avoid; }
  .sheet { break-before: page; }
  .wide { overflow: visible; }
  td.write { height: 3rem; }
  th, td { padding-top: .15rem; padding-bottom: .15rem; }
  tr:has(.write) th { vertical-align: middle; }
  .flow { grid-template-columns: repeat(auto-fit, minmax(11rem, 1fr)); gap: 0 .9rem; font-size: 9pt; }
  .flow table { break-inside: avoid; margin: 0; }
  .flow th, .flow td { padding-top: .05rem; padding-bottom: .05rem; }
  figure svg { max-height: 118mm; }
  .links, h2:has(+ .links), details:not([open]) { display: none; }
  .figures { grid-template-columns: 1fr 1fr; gap: 0 8mm; }
  tr.noted { break-after: avoid; }
  .box { break-inside: avoid; margin-bottom: .6rem; }
  .box p, .box ul { margin-bottom: .3rem; }
  .bar { min-width: 3rem; }
  .bar, .bar i { print-color-adjust: exact; -webkit-print-color-adjust: exact; }
}
`

// New starts a page with its title.
func New(title string) *Page { return &Page{title: title} }

func (p *Page) put(format string, args ...any) { fmt.Fprintf(&p.b, format, args...) }

func (p *Page) element(tag, class, words string) {
	if class != "" {
		class = ` class="` + class + `"`
	}
	p.put("<%s%s>%s</%s>\n", tag, class, joined(svg.Escape(words)), tag)
}

// paragraph writes words to both forms.
func (p *Page) paragraph(tag, class, before, words string) {
	p.element(tag, class, words)
	p.t.WriteString(before + say.Wrap("", words))
}

// Lead writes the one sentence that the reader came for.
func (p *Page) Lead(words string) { p.paragraph("p", "lead", "", words) }

// Say writes a paragraph.
func (p *Page) Say(words string) { p.paragraph("p", "", "", words) }

// Note writes a paragraph that matters less.
func (p *Page) Note(words string) { p.paragraph("p", "note", "", words) }

// Head starts a part of the page.
func (p *Page) Head(words string) { p.paragraph("h2", "", "\n", words) }

// Sheet starts a part that prints on a sheet of its own.
func (p *Page) Sheet(words string) { p.paragraph("h2", "sheet", "\n", words) }

// Sub starts a part of a part.
func (p *Page) Sub(words string) { p.paragraph("h3", "", "\n", words) }

// Screen writes words that the text has and the page has not, as what a screen has
// no room to explain in another way.
func (p *Page) Screen(words string) { p.t.WriteString(say.Wrap("", words)) }

// List writes points; nothing without any.
func (p *Page) List(items ...string) {
	if len(items) == 0 {
		return
	}
	p.put("<ul>\n")
	for _, words := range items {
		p.element("li", "", words)
		p.t.WriteString(say.Wrap("  - ", words))
	}
	p.put("</ul>\n")
}

// Pre writes lines as they stand, which scroll on their own where they are wide.
func (p *Page) Pre(lines string) {
	p.put("<pre role=\"region\" aria-label=\"figures\" tabindex=\"0\">%s</pre>\n", svg.Escape(lines))
	p.t.WriteString(lines)
}

// Links writes a list of files beside the page, each a name and a file. On paper
// and on a screen it is left out.
func (p *Page) Links(links ...[2]string) {
	p.put("<ul class=\"links\">\n")
	for _, l := range links {
		p.put("<li><a href=\"%s\">%s</a></li>\n", svg.Escape(l[1]), svg.Escape(l[0]))
	}
	p.put("</ul>\n")
}

// Table is what a table says. The first cell of each row is its heading.
type Table struct {
	Caption string
	Heads   []string
	Rows    [][]string
	Numbers []int    // columns of numbers, from 0, which stand to the right
	Notes   []string // one for each row, below it on a page and at its end on a screen; may be nil
}

// Blank is a cell to write in by hand.
const Blank = "\x00"

// Table writes a table. One that is wider than the screen scrolls on its own.
func (p *Page) Table(t Table) {
	p.put("<div class=\"wide\" role=\"region\" aria-label=\"%s\" tabindex=\"0\">\n<table>\n", svg.Escape(t.Caption))
	p.element("caption", "", t.Caption)
	class := func(column int) string {
		if slices.Contains(t.Numbers, column) {
			return ` class="n"`
		}
		return ""
	}
	p.put("<thead><tr>")
	for i, h := range t.Heads {
		p.put("<th scope=\"col\"%s>%s</th>", class(i), together(svg.Escape(h), 8))
	}
	p.put("</tr></thead>\n<tbody>\n")
	for n, row := range t.Rows {
		note := ""
		if t.Notes != nil {
			note = t.Notes[n]
		}
		if note != "" {
			p.put("<tr class=\"noted\">")
		} else {
			p.put("<tr>")
		}
		for i, cell := range row {
			if cell == Blank {
				p.put("<td class=\"write\"></td>")
				continue
			}
			if i == 0 {
				p.put("<th scope=\"row\"%s>%s</th>", class(i), together(svg.Escape(cell), 12))
				continue
			}
			p.put("<td%s>%s</td>", class(i), together(svg.Escape(cell), 8))
		}
		p.put("</tr>\n")
		if note != "" {
			p.put("<tr><td></td><td colspan=\"%d\">%s</td></tr>\n", len(row)-1, svg.Escape(note))
		}
	}
	p.put("</tbody>\n</table>\n</div>\n")
	p.t.WriteString(t.text())
}

// together keeps up to so many characters on one line, and a cell that is a placing.
func together(words string, most int) string {
	if utf8.RuneCountInString(words) <= most && strings.Contains(words, " ") {
		return strings.ReplaceAll(words, " ", "&#160;")
	}
	if hyphens.FindString(words) == words {
		return joined(words)
	}
	return words
}

var hyphens = regexp.MustCompile(`\b\d+(-\d+)+\b`)

// joined keeps a placing or cuts on one line.
func joined(words string) string {
	return hyphens.ReplaceAllString(words, `<span class="whole">$0</span>`)
}

// text gives the table for a screen, without its caption. What stands last in a row
// goes on below where it is too long.
func (t Table) text() string {
	wide := make([]int, len(t.Heads))
	all := append([][]string{t.Heads}, t.Rows...)
	for _, row := range all {
		for i, cell := range row {
			wide[i] = max(wide[i], utf8.RuneCountInString(cell))
		}
	}
	var b strings.Builder
	for n, row := range all {
		line := ""
		for i, cell := range row {
			gap := strings.Repeat(" ", wide[i]-utf8.RuneCountInString(cell))
			if cell == Blank {
				cell = "_"
			}
			switch {
			case i > 0 && i == len(row)-1 && t.Notes == nil && !slices.Contains(t.Numbers, i):
				line = say.Wrap(line+"  ", cell)
			case slices.Contains(t.Numbers, i):
				line += "  " + gap + cell
			default:
				line += "  " + cell + gap
			}
		}
		if n > 0 && t.Notes != nil {
			line = say.Wrap(line+"  ", t.Notes[n-1])
		}
		b.WriteString(strings.TrimRight(line, " \n") + "\n")
	}
	return b.String()
}

// PlacingTable is a table to write a placing of n exhibits in, and with cuts the
// points between neighbors.
func PlacingTable(caption string, n int, cuts bool) Table {
	t := Table{Caption: caption, Heads: []string{"place"}, Rows: [][]string{{"exhibit"}}}
	if cuts {
		t.Rows = append(t.Rows, []string{"cut to the next"})
	}
	for place := range n {
		t.Heads = append(t.Heads, fmt.Sprint(place+1))
		t.Rows[0] = append(t.Rows[0], Blank)
		switch {
		case !cuts:
		case place < n-1:
			t.Rows[1] = append(t.Rows[1], Blank)
		default:
			t.Rows[1] = append(t.Rows[1], "")
		}
	}
	return t
}

// Bar is one line of [Page.Bars]: a length from 0 to the most.
type Bar struct {
	Words  string
	Number int
	Strong bool
	Note   string // stands under the words; may be empty
}

// Bars writes a table of bars, in as many columns as there are parts and as the
// screen has room for, each under a heading.
func (p *Page) Bars(most int, heads [2]string, parts []BarPart) {
	p.put("<div class=\"flow\">\n")
	for _, part := range parts {
		p.put("<table>\n")
		p.element("caption", "", part.Caption)
		p.put("<thead><tr><th scope=\"col\">%s</th><th scope=\"col\" class=\"n\">%s</th><td></td></tr></thead>\n<tbody>\n", svg.Escape(heads[0]), svg.Escape(heads[1]))
		for _, b := range part.Bars {
			words, number := svg.Escape(b.Words), fmt.Sprint(b.Number)
			if b.Strong {
				words, number = "<strong>"+words+"</strong>", "<strong>"+number+"</strong>"
			}
			if b.Note != "" {
				words += "<span class=\"who\">" + svg.Escape(b.Note) + "</span>"
			}
			p.put("<tr><th scope=\"row\">%s</th><td class=\"n\">%s</td><td aria-hidden=\"true\"><span class=\"bar\"><i style=\"width:%d%%\"></i></span></td></tr>\n", words, number, max(100*b.Number/most, 0))
		}
		p.put("</tbody>\n</table>\n")
	}
	p.put("</div>\n")
}

// BarPart is one column of [Page.Bars].
type BarPart struct {
	Caption string
	Bars    []Bar
}

// Figure puts a picture in, with words below.
func (p *Page) Figure(picture []byte, words string) {
	p.put("<figure>\n%s", picture)
	if words != "" {
		p.element("figcaption", "note", words)
	}
	p.put("</figure>\n")
}

// Figures puts pictures in side by side, as many as there is room for; what is
// inside writes them with [Page.Figure].
func (p *Page) Figures(inside func()) { p.wrap("div", "figures", inside) }

// Box puts a frame around a part, which is not broken when it is printed.
func (p *Page) Box(inside func()) { p.wrap("section", "box", inside) }

func (p *Page) wrap(tag, class string, inside func()) {
	p.put("<%s class=\"%s\">\n", tag, class)
	inside()
	p.put("</%s>\n", tag)
}

// Fold writes a part that opens on request; the text leaves it out.
func (p *Page) Fold(words string, inside func()) {
	before := p.t.String()
	defer func() { p.t.Reset(); p.t.WriteString(before) }()
	p.put("<details>\n<summary>%s</summary>\n", svg.Escape(words))
	inside()
	p.put("</details>\n")
}

// Words explains the trade's words, on request.
func (p *Page) Words(words ...string) {
	p.Fold("What the words mean", func() {
		p.put("<dl>\n")
		for _, w := range words {
			p.put("<dt>%s</dt><dd>%s</dd>\n", svg.Escape(w), svg.Escape(say.Word(w)))
		}
		p.put("</dl>\n")
	})
}

// Text returns the page for a screen, with the caution at its end.
func (p *Page) Text() string {
	return p.title + "\n" + p.t.String() + "\n" + say.Wrap("", say.Caution)
}

// HTML returns the page as one file, with the caution at its end.
func (p *Page) HTML() []byte {
	var b bytes.Buffer
	title := svg.Escape(p.title)
	fmt.Fprintf(&b, "<!doctype html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n<title>%s</title>\n<style>%s</style>\n</head>\n<body>\n<main>\n<h1>%s</h1>\n", title, style, title)
	b.Write(p.b.Bytes())
	fmt.Fprintf(&b, "</main>\n<footer>%s</footer>\n</body>\n</html>\n", svg.Escape(say.Caution))
	return b.Bytes()
}
