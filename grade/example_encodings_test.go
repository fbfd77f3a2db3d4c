package grade_test

import (
	"fmt"

	"example.com/ribface/grade"
)

func ExampleThickness_encodings() {
	t := grade.Inches(0.6)
	line, err := t.AppendText([]byte("text: "))
	fmt.Printf("%s, %v\n", line, err)
	text, err := t.MarshalText()
	fmt.Printf("%q, %v\n", text, err)

	// A failed read leaves the value as it was.
	fmt.Println(t.UnmarshalText([]byte("12.7 mm")), t)
	fmt.Println(t.UnmarshalText([]byte("0.6 lb")))
	fmt.Println(t)

	// JSON may hold the text in quotes, or a bare number.
	fmt.Println(t.UnmarshalJSON([]byte("0.45")), t)

	// A database column holds the number, and NULL for a value that is not set.
	column, err := t.Value()
	fmt.Printf("%q, %v\n", column, err)
	fmt.Println(t.Scan([]byte("0.35")), t)
	// Output:
	// text: 0.6 in, <nil>
	// "0.6 in", <nil>
	// <nil> 0.5 in
	// thickness: "0.6 lb": unknown at "lb"; allowed: a number with at most 4 places, unit in or mm or cm
	// 0.5 in
	// <nil> 0.45 in
	// "0.45", <nil>
	// <nil> 0.35 in
}

func ExampleArea_encodings() {
	a := grade.SquareInches(12.4)
	line, err := a.AppendText([]byte("text: "))
	fmt.Printf("%s, %v\n", line, err)
	text, err := a.MarshalText()
	fmt.Printf("%q, %v\n", text, err)

	// A failed read leaves the value as it was.
	fmt.Println(a.UnmarshalText([]byte("80 sq cm")), a)
	fmt.Println(a.UnmarshalText([]byte("12.4 in")))
	fmt.Println(a)

	// JSON may hold the text in quotes, or a bare number.
	fmt.Println(a.UnmarshalJSON([]byte("13.05")), a)

	// A database column holds the number, and NULL for a value that is not set.
	column, err := a.Value()
	fmt.Printf("%q, %v\n", column, err)
	fmt.Println(a.Scan([]byte("11.9")), a)
	// Output:
	// text: 12.4 sq in, <nil>
	// "12.4 sq in", <nil>
	// <nil> 12.4 sq in
	// area: "12.4 in": unknown at "in"; allowed: a number with at most 4 places, unit sq in or sq cm
	// 12.4 sq in
	// <nil> 13.05 sq in
	// "13.05", <nil>
	// <nil> 11.9 sq in
}

func ExampleShare_encodings() {
	s := grade.Percent(2.5)
	line, err := s.AppendText([]byte("text: "))
	fmt.Printf("%s, %v\n", line, err)
	text, err := s.MarshalText()
	fmt.Printf("%q, %v\n", text, err)

	// A failed read leaves the value as it was.
	fmt.Println(s.UnmarshalText([]byte("3.0")), s)
	fmt.Println(s.UnmarshalText([]byte("2.5 in")))
	fmt.Println(s)

	// JSON may hold the text in quotes, or a bare number.
	fmt.Println(s.UnmarshalJSON([]byte("2")), s)

	// A database column holds the number, and NULL for a value that is not set.
	column, err := s.Value()
	fmt.Printf("%q, %v\n", column, err)
	fmt.Println(s.Scan([]byte("1.5%")), s)
	// Output:
	// text: 2.5%, <nil>
	// "2.5%", <nil>
	// <nil> 3%
	// share: "2.5 in": unknown at "in"; allowed: a number with at most 4 places, unit %
	// 3%
	// <nil> 2%
	// "2", <nil>
	// <nil> 1.5%
}

func ExampleWeight_encodings() {
	w := grade.Pounds(842)
	line, err := w.AppendText([]byte("text: "))
	fmt.Printf("%s, %v\n", line, err)
	text, err := w.MarshalText()
	fmt.Printf("%q, %v\n", text, err)

	// A failed read leaves the value as it was.
	fmt.Println(w.UnmarshalText([]byte("380 kg")), w)
	fmt.Println(w.UnmarshalText([]byte("842 stone")))
	fmt.Println(w)

	// JSON may hold the text in quotes, or a bare number.
	fmt.Println(w.UnmarshalJSON([]byte("660")), w)

	// A database column holds the number, and NULL for a value that is not set.
	column, err := w.Value()
	fmt.Printf("%q, %v\n", column, err)
	fmt.Println(w.Scan([]byte("701.5 lb")), w)
	// Output:
	// text: 842 lb, <nil>
	// "842 lb", <nil>
	// <nil> 837.7566 lb
	// weight: "842 stone": unknown at "stone"; allowed: a number with at most 4 places, unit lb or kg
	// 837.7566 lb
	// <nil> 660 lb
	// "660", <nil>
	// <nil> 701.5 lb
}

func ExampleYield_encodings() {
	y := grade.Grades(1.5)
	line, err := y.AppendText([]byte("text: "))
	fmt.Printf("%s, %v\n", line, err)
	text, err := y.MarshalText()
	fmt.Printf("%q, %v\n", text, err)

	// A failed read leaves the value as it was.
	fmt.Println(y.UnmarshalText([]byte("3.1")), y)
	fmt.Println(y.UnmarshalText([]byte("3.1 lb")))
	fmt.Println(y)

	// JSON may hold the text in quotes, or a bare number.
	fmt.Println(y.UnmarshalJSON([]byte("-0.5")), y)

	// A database column holds the text, and NULL for a value that is not set.
	column, err := y.Value()
	fmt.Printf("%q, %v\n", column, err)
	fmt.Println(y.Scan([]byte("2.952")), y)
	// Output:
	// text: 1.5, <nil>
	// "1.5", <nil>
	// <nil> 3.1
	// yield: "3.1 lb": bad syntax; allowed: a number with at most 8 places
	// 3.1
	// <nil> -0.5
	// "-0.5", <nil>
	// <nil> 2.952
}

func ExampleShortcutYield_encodings() {
	q := grade.Inches(0.6).Preliminary()
	line, err := q.AppendText([]byte("text: "))
	fmt.Printf("%s, %v\n", line, err)
	text, err := q.MarshalText()
	fmt.Printf("%q, %v\n", text, err)

	// A failed read leaves the value as it was.
	fmt.Println(q.UnmarshalText([]byte("2.75")), q)
	fmt.Println(q.UnmarshalText([]byte("2.7.5")))
	fmt.Println(q)

	// JSON may hold the text in quotes, or a bare number.
	fmt.Println(q.UnmarshalJSON([]byte("3.25")), q)

	// A database column holds the text, and NULL for a value that is not set.
	column, err := q.Value()
	fmt.Printf("%q, %v\n", column, err)
	fmt.Println(q.Scan([]byte("3.05")), q)
	// Output:
	// text: 3.5, <nil>
	// "3.5", <nil>
	// <nil> 2.75
	// shortcut yield: "2.7.5": bad syntax; allowed: a number with at most 8 places
	// 2.75
	// <nil> 3.25
	// "3.25", <nil>
	// <nil> 3.05
}

func ExampleRetailTable_encodings() {
	t := grade.RetailGuide
	line, err := t.AppendText([]byte("text: "))
	fmt.Printf("%s, %v\n", line, err)
	text, err := t.MarshalText()
	fmt.Printf("%q, %v\n", text, err)

	// A failed read leaves the value as it was.
	fmt.Println(t.UnmarshalText([]byte("aged-yield-slides")), t)
	fmt.Println(t.UnmarshalText([]byte("table 1")))
	fmt.Println(t)
	// Output:
	// text: asweb-121, <nil>
	// "asweb-121", <nil>
	// <nil> aged-yield-slides
	// retail table: "table 1": unknown; allowed: asweb-121, aged-yield-slides, uni-slaughter-handout
	// aged-yield-slides
}

func ExampleRounding_encodings() {
	r := grade.HalfUp
	line, err := r.AppendText([]byte("text: "))
	fmt.Printf("%s, %v\n", line, err)
	text, err := r.MarshalText()
	fmt.Printf("%q, %v\n", text, err)

	// A failed read leaves the value as it was.
	fmt.Println(r.UnmarshalText([]byte("down")), r)
	fmt.Println(r.UnmarshalText([]byte("up")))
	fmt.Println(r)
	// Output:
	// text: half up, <nil>
	// "half up", <nil>
	// <nil> down
	// rounding: "up": unknown; allowed: down, half up, half even
	// down
}

func ExampleDegree_encodings() {
	d := grade.SlightlyAbundant
	line, err := d.AppendText([]byte("text: "))
	fmt.Printf("%s, %v\n", line, err)
	text, err := d.MarshalText()
	fmt.Printf("%q, %v\n", text, err)

	// A failed read leaves the value as it was.
	fmt.Println(d.UnmarshalText([]byte("Modest")), d)
	fmt.Println(d.UnmarshalText([]byte("Fat")))
	fmt.Println(d)

	// A database column holds the text, and NULL for a value that is not set.
	column, err := d.Value()
	fmt.Printf("%q, %v\n", column, err)
	fmt.Println(d.Scan([]byte("Small")), d)
	// Output:
	// text: Slightly Abundant, <nil>
	// "Slightly Abundant", <nil>
	// <nil> Modest
	// degree of marbling: "Fat": unknown; allowed: Devoid, Practically Devoid, Traces, Slight, Small, Modest, Moderate, Slightly Abundant, Moderately Abundant, Abundant
	// Modest
	// "Modest", <nil>
	// <nil> Small
}

func ExampleMarbling_encodings() {
	m := grade.Small.At(40)
	line, err := m.AppendText([]byte("text: "))
	fmt.Printf("%s, %v\n", line, err)
	text, err := m.MarshalText()
	fmt.Printf("%q, %v\n", text, err)

	// A failed read leaves the value as it was.
	fmt.Println(m.UnmarshalText([]byte("Slightly Abundant 05")), m)
	fmt.Println(m.UnmarshalText([]byte("Xx40")))
	fmt.Println(m)

	// A database column holds the text, and NULL for a value that is not set.
	column, err := m.Value()
	fmt.Printf("%q, %v\n", column, err)
	fmt.Println(m.Scan([]byte("Md99")), m)
	// Output:
	// text: Sm40, <nil>
	// "Sm40", <nil>
	// <nil> SlAb05
	// marbling: "Xx40": unknown at "Xx"; allowed: Devoid00 to Ab100
	// SlAb05
	// "SlAb05", <nil>
	// <nil> Md99
}

func ExampleMarblingScale_encodings() {
	s := grade.Slight300
	line, err := s.AppendText([]byte("text: "))
	fmt.Printf("%s, %v\n", line, err)
	text, err := s.MarshalText()
	fmt.Printf("%q, %v\n", text, err)

	// A failed read leaves the value as it was.
	fmt.Println(s.UnmarshalText([]byte("Slight00 = 400")), s)
	fmt.Println(s.UnmarshalText([]byte("400")))
	fmt.Println(s)
	// Output:
	// text: Slight00 = 300, <nil>
	// "Slight00 = 300", <nil>
	// <nil> Slight00 = 400
	// marbling scale: "400": unknown; allowed: Slight00 = 300, Slight00 = 400
	// Slight00 = 400
}

func ExampleGrade_encodings() {
	g := grade.Choice
	line, err := g.AppendText([]byte("text: "))
	fmt.Printf("%s, %v\n", line, err)
	text, err := g.MarshalText()
	fmt.Printf("%q, %v\n", text, err)

	// A failed read leaves the value as it was.
	fmt.Println(g.UnmarshalText([]byte("Prime")), g)
	fmt.Println(g.UnmarshalText([]byte("Fancy")))
	fmt.Println(g)

	// A database column holds the text, and NULL for a value that is not set.
	column, err := g.Value()
	fmt.Printf("%q, %v\n", column, err)
	fmt.Println(g.Scan([]byte("No grade")), g)
	// Output:
	// text: Choice, <nil>
	// "Choice", <nil>
	// <nil> Prime
	// grade: "Fancy": unknown; allowed: No grade, Canner, Cutter, Utility, Commercial, Standard, Good, Select, Choice, Prime
	// Prime
	// "Prime", <nil>
	// <nil> No grade
}

func ExamplePart_encodings() {
	p := grade.Low
	line, err := p.AppendText([]byte("text: "))
	fmt.Printf("%s, %v\n", line, err)
	text, err := p.MarshalText()
	fmt.Printf("%q, %v\n", text, err)

	// A failed read leaves the value as it was.
	fmt.Println(p.UnmarshalText([]byte("High")), p)
	fmt.Println(p.UnmarshalText([]byte("Top")))
	fmt.Println(p)

	// A database column holds the text, and NULL for a value that is not set.
	column, err := p.Value()
	fmt.Printf("%q, %v\n", column, err)
	fmt.Println(p.Scan([]byte("Average")), p)
	// Output:
	// text: Low, <nil>
	// "Low", <nil>
	// <nil> High
	// part of a grade: "Top": unknown; allowed: whole, Low, Average, High
	// High
	// "High", <nil>
	// <nil> Average
}

func ExampleQuality_encodings() {
	q := grade.Choice.Part(grade.Low)
	line, err := q.AppendText([]byte("text: "))
	fmt.Printf("%s, %v\n", line, err)
	text, err := q.MarshalText()
	fmt.Printf("%q, %v\n", text, err)

	// A failed read leaves the value as it was.
	fmt.Println(q.UnmarshalText([]byte("Select+")), q)
	fmt.Println(q.UnmarshalText([]byte("Upper Choice")))
	fmt.Println(q)

	// A database column holds the text, and NULL for a value that is not set.
	column, err := q.Value()
	fmt.Printf("%q, %v\n", column, err)
	fmt.Println(q.Scan([]byte("Utility")), q)
	// Output:
	// text: Low Choice, <nil>
	// "Low Choice", <nil>
	// <nil> High Select
	// quality: "Upper Choice": unknown; allowed: a grade (No grade, Canner, Cutter, Utility, Commercial, Standard, Good, Select, Choice, Prime), with Low, Average or High before it where it is split
	// High Select
	// "High Select", <nil>
	// <nil> Utility
}

func ExampleTier_encodings() {
	t := grade.TopChoice
	line, err := t.AppendText([]byte("text: "))
	fmt.Printf("%s, %v\n", line, err)
	text, err := t.MarshalText()
	fmt.Printf("%q, %v\n", text, err)

	// A failed read leaves the value as it was.
	fmt.Println(t.UnmarshalText([]byte("prime")), t)
	fmt.Println(t.UnmarshalText([]byte("best")))
	fmt.Println(t)

	// A database column holds the text, and NULL for a value that is not set.
	column, err := t.Value()
	fmt.Printf("%q, %v\n", column, err)
	fmt.Println(t.Scan([]byte("select")), t)
	// Output:
	// text: top choice, <nil>
	// "top choice", <nil>
	// <nil> prime
	// tier: "best": unknown; allowed: below standard, standard, select, low choice, top choice, prime
	// prime
	// "prime", <nil>
	// <nil> select
}

func ExampleEdition_encodings() {
	e := grade.Edition1997
	line, err := e.AppendText([]byte("text: "))
	fmt.Printf("%s, %v\n", line, err)
	text, err := e.MarshalText()
	fmt.Printf("%q, %v\n", text, err)

	// A failed read leaves the value as it was.
	fmt.Println(e.UnmarshalText([]byte("1987")), e)
	fmt.Println(e.UnmarshalText([]byte("1988")))
	fmt.Println(e)

	// A database column holds the text, and NULL for a value that is not set.
	column, err := e.Value()
	fmt.Printf("%q, %v\n", column, err)
	fmt.Println(e.Scan([]byte("2017")), e)
	// Output:
	// text: 1997, <nil>
	// "1997", <nil>
	// <nil> 1987
	// edition: "1988": unknown; allowed: 1975, 1987, 1997, 2016, 2017
	// 1987
	// "1987", <nil>
	// <nil> 2017
}

func ExampleSex_encodings() {
	s := grade.Heifer
	line, err := s.AppendText([]byte("text: "))
	fmt.Printf("%s, %v\n", line, err)
	text, err := s.MarshalText()
	fmt.Printf("%q, %v\n", text, err)

	// A failed read leaves the value as it was.
	fmt.Println(s.UnmarshalText([]byte("cow")), s)
	fmt.Println(s.UnmarshalText([]byte("ox")))
	fmt.Println(s)

	// A database column holds the text, and NULL for a value that is not set.
	column, err := s.Value()
	fmt.Printf("%q, %v\n", column, err)
	fmt.Println(s.Scan([]byte("steer")), s)
	// Output:
	// text: heifer, <nil>
	// "heifer", <nil>
	// <nil> cow
	// sex class: "ox": unknown; allowed: steer, heifer, cow, bullock, bull
	// cow
	// "cow", <nil>
	// <nil> steer
}

func ExampleFirmness_encodings() {
	f := grade.Firm
	line, err := f.AppendText([]byte("text: "))
	fmt.Printf("%s, %v\n", line, err)
	text, err := f.MarshalText()
	fmt.Printf("%q, %v\n", text, err)

	// A failed read leaves the value as it was.
	fmt.Println(f.UnmarshalText([]byte("slightly soft")), f)
	fmt.Println(f.UnmarshalText([]byte("hard")))
	fmt.Println(f)

	// A database column holds the text, and NULL for a value that is not set.
	column, err := f.Value()
	fmt.Printf("%q, %v\n", column, err)
	fmt.Println(f.Scan([]byte("moderately firm")), f)
	// Output:
	// text: firm, <nil>
	// "firm", <nil>
	// <nil> slightly soft
	// firmness: "hard": unknown; allowed: very soft, soft, moderately soft, slightly soft, slightly firm, moderately firm, firm
	// slightly soft
	// "slightly soft", <nil>
	// <nil> moderately firm
}

func ExampleDarkCut_encodings() {
	d := grade.DarkThird
	line, err := d.AppendText([]byte("text: "))
	fmt.Printf("%s, %v\n", line, err)
	text, err := d.MarshalText()
	fmt.Printf("%q, %v\n", text, err)

	// A failed read leaves the value as it was.
	fmt.Println(d.UnmarshalText([]byte("two thirds")), d)
	fmt.Println(d.UnmarshalText([]byte("half")))
	fmt.Println(d)

	// A database column holds the text, and NULL for a value that is not set.
	column, err := d.Value()
	fmt.Printf("%q, %v\n", column, err)
	fmt.Println(d.Scan([]byte("none")), d)
	// Output:
	// text: one third, <nil>
	// "one third", <nil>
	// <nil> two thirds
	// dark cut: "half": unknown; allowed: none, one third, two thirds, full
	// two thirds
	// "two thirds", <nil>
	// <nil> none
}

func ExampleFactor_encodings() {
	f := grade.FatFactor
	line, err := f.AppendText([]byte("text: "))
	fmt.Printf("%s, %v\n", line, err)
	text, err := f.MarshalText()
	fmt.Printf("%q, %v\n", text, err)

	// A failed read leaves the value as it was.
	fmt.Println(f.UnmarshalText([]byte("ribeye")), f)
	fmt.Println(f.UnmarshalText([]byte("price")))
	fmt.Println(f)
	// Output:
	// text: fat, <nil>
	// "fat", <nil>
	// <nil> ribeye
	// factor: "price": unknown; allowed: fat, ribeye, KPH, weight
	// ribeye
}
