package placing_test

import (
	"encoding/json"
	"fmt"

	"example.com/ribface/placing"
)

func ExampleOrder_encodings() {
	o := placing.MustParseOrder("3-2-1-4")
	line, err := o.AppendText([]byte("text: "))
	fmt.Printf("%s, %v\n", line, err)
	text, err := o.MarshalText()
	fmt.Printf("%q, %v\n", text, err)

	// A failed read leaves the value as it was.
	fmt.Println(o.UnmarshalText([]byte("4-3-2-1")), o)
	fmt.Println(o.UnmarshalText([]byte("4-3-3-1")))
	fmt.Println(o)

	// A database column holds the text, NULL for a value that is not set.
	column, err := o.Value()
	fmt.Printf("%q, %v\n", column, err)
	fmt.Println(o.Scan([]byte("1-2-3-4")), o)
	// Output:
	// text: 3-2-1-4, <nil>
	// "3-2-1-4", <nil>
	// <nil> 4-3-2-1
	// order: "4-3-3-1": repeated at "3"; allowed: each exhibit 1 to 4 once
	// 4-3-2-1
	// "4-3-2-1", <nil>
	// <nil> 1-2-3-4
}

func ExampleCuts_encodings() {
	c := placing.MustParseCuts("2-8-2")
	line, err := c.AppendText([]byte("text: "))
	fmt.Printf("%s, %v\n", line, err)
	text, err := c.MarshalText()
	fmt.Printf("%q, %v\n", text, err)

	// A failed read leaves the value as it was.
	fmt.Println(c.UnmarshalText([]byte("3-5-4")), c)
	fmt.Println(c.UnmarshalText([]byte("3-5-")))
	fmt.Println(c)

	// A database column holds the text, NULL for a value that is not set.
	column, err := c.Value()
	fmt.Printf("%q, %v\n", column, err)
	fmt.Println(c.Scan([]byte("1-0-50")), c)
	// Output:
	// text: 2-8-2, <nil>
	// "2-8-2", <nil>
	// <nil> 3-5-4
	// cuts: "3-5-": bad syntax; allowed: 1 to 11 cuts of 0 to 50 with hyphens between, as 2-8-2
	// 3-5-4
	// "3-5-4", <nil>
	// <nil> 1-0-50
}

func ExampleOfficial_encodings() {
	o := placing.Official{}
	line, err := o.AppendText([]byte("text: "))
	fmt.Printf("%s, %v\n", line, err)
	text, err := o.MarshalText()
	fmt.Printf("%q, %v\n", text, err)

	// A failed read leaves the value as it was.
	fmt.Println(o.UnmarshalText([]byte("3-2-1-4 cuts 2-8-2")), o)
	fmt.Println(o.UnmarshalText([]byte("3-2-1-4 cuts 2-8")))
	fmt.Println(o)

	// A database column holds the text, NULL for a value that is not set.
	column, err := o.Value()
	fmt.Printf("%q, %v\n", column, err)
	fmt.Println(o.Scan([]byte("1-2 cuts 5")), o)
	// Output:
	// text: , <nil>
	// "", <nil>
	// <nil> 3-2-1-4 cuts 2-8-2
	// cuts: 2-8: out of range; allowed: 3 cuts for 4 exhibits
	// 3-2-1-4 cuts 2-8-2
	// "3-2-1-4 cuts 2-8-2", <nil>
	// <nil> 1-2 cuts 5
}

func ExampleCard_encodings() {
	// What stands on the card is one text: a placing or a mark.
	for _, s := range []string{"3214", "Double Marked", "smudged"} {
		c, err := placing.ParseCard(s)
		fmt.Println(c, err)
	}
	j, err := json.Marshal(map[string]placing.Card{"7": {Order: placing.MustParseOrder("3-2-1-4")}, "8": {Mark: placing.Blank}, "9": {}})
	fmt.Printf("%s, %v\n", j, err)
	column, err := placing.Card{Mark: placing.Unreadable}.Value()
	fmt.Printf("%q, %v\n", column, err)
	column, err = placing.Card{}.Value()
	fmt.Println(column, err)
	var c placing.Card
	fmt.Println(c.Scan("1-2-3-4"), c)
	// Output:
	// 3-2-1-4 <nil>
	// double-marked <nil>
	// unset order: "smudged": bad syntax; allowed: 2 to 12 exhibit numbers with hyphens between, each once, as 3-2-1-4
	// {"7":"3-2-1-4","8":"blank","9":""}, <nil>
	// "unreadable", <nil>
	// <nil> <nil>
	// <nil> 1-2-3-4
}

func ExamplePanel_MarshalJSON() {
	p, err := placing.NewPanel(placing.Vote{Order: placing.MustParseOrder("3-2-1-4"), Cuts: placing.MustParseCuts("2-8-2")}, placing.Vote{Order: placing.MustParseOrder("3-1-2-4"), Count: 2})
	if err != nil {
		fmt.Println(err)
		return
	}
	j, err := json.Marshal(p)
	fmt.Printf("%s, %v\n", j, err)
	var back placing.Panel
	fmt.Println(json.Unmarshal(j, &back), back.Equal(p), back.Officials())
	fmt.Println(json.Unmarshal([]byte(`[{"order":"321"},{"order":"3214"}]`), &back))
	// Output:
	// [{"order":"3-2-1-4","cuts":"2-8-2","count":1},{"order":"3-1-2-4","count":2}], <nil>
	// <nil> true 3
	// vote 2: order: 3-2-1-4: out of range; allowed: an order of 3 exhibits
}

func ExampleLimit_encodings() {
	l := placing.LimitExact
	line, err := l.AppendText([]byte("text: "))
	fmt.Printf("%s, %v\n", line, err)
	text, err := l.MarshalText()
	fmt.Printf("%q, %v\n", text, err)

	// A failed read leaves the value as it was.
	fmt.Println(l.UnmarshalText([]byte("nebraska")), l)
	fmt.Println(l.UnmarshalText([]byte("fifteen")))
	fmt.Println(l)

	// Output:
	// text: exact, <nil>
	// "exact", <nil>
	// <nil> nebraska
	// limit on cuts: "fifteen": unknown; allowed: sum, colorado, maryland, nebraska, exact
	// nebraska
}

func ExampleWords_encodings() {
	w := placing.WordsReasons
	line, err := w.AppendText([]byte("text: "))
	fmt.Printf("%s, %v\n", line, err)
	text, err := w.MarshalText()
	fmt.Printf("%q, %v\n", text, err)

	// A failed read leaves the value as it was.
	fmt.Println(w.UnmarshalText([]byte("colorado")), w)
	fmt.Println(w.UnmarshalText([]byte("loud")))
	fmt.Println(w)

	// Output:
	// text: reasons, <nil>
	// "reasons", <nil>
	// <nil> colorado
	// words for cuts: "loud": unknown; allowed: colorado, nebraska, reasons
	// colorado
}

func ExampleMark_encodings() {
	m := placing.DoubleMarked
	line, err := m.AppendText([]byte("text: "))
	fmt.Printf("%s, %v\n", line, err)
	text, err := m.MarshalText()
	fmt.Printf("%q, %v\n", text, err)

	// A failed read leaves the value as it was.
	fmt.Println(m.UnmarshalText([]byte("unreadable")), m)
	fmt.Println(m.UnmarshalText([]byte("smudged")))
	fmt.Println(m)

	// A database column holds the text, NULL for a value that is not set.
	column, err := m.Value()
	fmt.Printf("%q, %v\n", column, err)
	fmt.Println(m.Scan([]byte("blank")), m)
	// Output:
	// text: double-marked, <nil>
	// "double-marked", <nil>
	// <nil> unreadable
	// mark: "smudged": unknown; allowed: blank, double-marked, unreadable
	// unreadable
	// "unreadable", <nil>
	// <nil> blank
}

func ExamplePenalty_encodings() {
	p := placing.LowestScore
	line, err := p.AppendText([]byte("text: "))
	fmt.Printf("%s, %v\n", line, err)
	text, err := p.MarshalText()
	fmt.Printf("%q, %v\n", text, err)

	// A failed read leaves the value as it was.
	fmt.Println(p.UnmarshalText([]byte("zero points")), p)
	fmt.Println(p.UnmarshalText([]byte("minus five")))
	fmt.Println(p)

	// Output:
	// text: lowest score, <nil>
	// "lowest score", <nil>
	// <nil> zero points
	// penalty: "minus five": unknown; allowed: zero points, lowest score, refused
	// zero points
}
