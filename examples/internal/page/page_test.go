package page_test

import (
	"strings"
	"testing"

	"example.com/ribface/examples/internal/page"
	"example.com/ribface/internal/golden"
)

// TestPage holds a page with one of each to what was looked at. That such pages pass
// an accessibility check is a test of the module pagetest.
func TestPage(t *testing.T) {
	p := page.New("A <title>")
	p.Lead("What the reader came for & more.")
	p.Say("A paragraph.")
	p.Note("A note.")
	p.List()
	p.List("one", "two <b>")
	p.Links([2]string{"Member <1>", "member-1.html"})
	p.Pre("figures  <1>\n")
	p.Head("A part")
	p.Sub("A part of a part")
	p.Table(page.Table{Caption: "A \"table\"", Heads: []string{"name", "number", "own"}, Rows: [][]string{{"a", "1", page.Blank}, {"b <i>", "2", ""}}, Numbers: []int{1}})
	p.Bars(50, [2]string{"card", "score"}, []page.BarPart{{Caption: "1 placed first", Bars: []page.Bar{{Words: "1-2", Number: 50, Strong: true}, {Words: "2-1", Number: -5}}}})
	p.Figure([]byte("<svg></svg>\n"), "")
	p.Figure([]byte("<svg></svg>\n"), "words")
	p.Sheet("The next sheet")
	p.Words("KPH")
	got := string(p.HTML())
	_, body, _ := strings.Cut(got, "</style>")
	golden.Compare(t, "testdata/page.golden", body)
	golden.Compare(t, "testdata/page.txt", p.Text())
	if strings.Contains(got, "http:") || strings.Contains(got, "https:") || strings.Contains(got, "<script") || strings.Contains(got, "@import") {
		t.Error("the page reaches for something outside of it")
	}
}
