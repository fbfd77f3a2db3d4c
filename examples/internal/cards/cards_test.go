package cards_test

import (
	"strings"
	"testing"

	"example.com/ribface/examples/internal/cards"
	"example.com/ribface/examples/internal/page"
	"example.com/ribface/placing"
)

// TestWrite: every card stands there once with its score and those who handed it in;
// a class of many has too many of them.
func TestWrite(t *testing.T) {
	o, err := placing.ParseOfficial("2-1-3 cuts 4-3")
	if err != nil {
		t.Fatal(err)
	}
	p := page.New("x")
	card := placing.MustParseOrder("3-1-2")
	if err := cards.Write(p, o, []string{"101", "102", "103"}, map[placing.Order][]string{card: {"Ada", "Bo"}}); err != nil {
		t.Fatal(err)
	}
	html := string(p.HTML())
	// 3-1-2 turns all three pairs: 50 - 4 - 3 - 7.
	for _, want := range []string{"103 placed first", `103-101-102<span class="who">Ada, Bo</span></th><td class="n">36<`, "<strong>102-101-103</strong>"} {
		if !strings.Contains(html, want) {
			t.Errorf("no %s", want)
		}
	}
	if n := strings.Count(html, `scope="row"`); n != 6 {
		t.Errorf("%d cards, want 6", n)
	}
	many, err := placing.ParseOfficial("1-2-3-4-5-6 cuts 1-1-1-1-1")
	if err != nil {
		t.Fatal(err)
	}
	p = page.New("x")
	if err := cards.Write(p, many, nil, nil); err != nil || !strings.Contains(p.Text(), "A class of 6 has too many cards for a page. The lowest score is 15 and a\nguesser's mean is 32.5.") {
		t.Errorf("%v %s", err, p.Text())
	}
}
