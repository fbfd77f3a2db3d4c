package page_test

import (
	"strings"
	"testing"

	"example.com/ribface/examples/internal/page"
	"example.com/ribface/internal/testkit/golden"
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
	p.Table(page.Table{Caption: "With notes", Heads: []string{"name", "number"}, Rows: [][]string{{"103 over 101", "1"}, {"3-1-2-4", "2"}}, Numbers: []int{1}, Notes: []string{"a note that is too long for one line of a screen, <i> and so goes on below", ""}})
	p.Table(page.Table{Caption: "What is last", Heads: []string{"name", "words"}, Rows: [][]string{{"a", "words that are too long for one line of a screen and so go on in the next one"}}})
	p.Table(page.PlacingTable("A card", 3, true))
	p.Table(page.PlacingTable("Another", 2, false))
	p.Screen("Words for a screen.")
	p.Box(func() { p.Say("In a box: 3-1-2-4.") })
	p.Figures(func() { p.Figure([]byte("<svg></svg>\n"), "side by side") })
	p.Bars(50, [2]string{"card", "score"}, []page.BarPart{{Caption: "1 placed first", Bars: []page.Bar{{Words: "1-2", Number: 50, Strong: true}, {Words: "2-1", Number: -5, Note: "Ada & Bo"}}}})
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
