package maturity_test

import (
	"fmt"

	"example.com/ribface/maturity"
)

func ExampleGroup_encodings() {
	g := maturity.B
	line, err := g.AppendText([]byte("text: "))
	fmt.Printf("%s, %v\n", line, err)
	text, err := g.MarshalText()
	fmt.Printf("%q, %v\n", text, err)

	// A failed read leaves the value as it was.
	fmt.Println(g.UnmarshalText([]byte("C")), g)
	fmt.Println(g.UnmarshalText([]byte("F")))
	fmt.Println(g)

	// A database column holds the text, and NULL for a value that is not set.
	column, err := g.Value()
	fmt.Printf("%q, %v\n", column, err)
	fmt.Println(g.Scan([]byte("D")), g)
	// Output:
	// text: B, <nil>
	// "B", <nil>
	// <nil> C
	// maturity group: "F": unknown; allowed: A, B, C, D, E
	// C
	// "C", <nil>
	// <nil> D
}

func ExampleScore_encodings() {
	s := maturity.A.At(70)
	line, err := s.AppendText([]byte("text: "))
	fmt.Printf("%s, %v\n", line, err)
	text, err := s.MarshalText()
	fmt.Printf("%q, %v\n", text, err)

	// A failed read leaves the value as it was.
	fmt.Println(s.UnmarshalText([]byte("B05")), s)
	fmt.Println(s.UnmarshalText([]byte("F20")))
	fmt.Println(s)

	// A database column holds the text, and NULL for a value that is not set.
	column, err := s.Value()
	fmt.Printf("%q, %v\n", column, err)
	fmt.Println(s.Scan([]byte("E100")), s)
	// Output:
	// text: A70, <nil>
	// "A70", <nil>
	// <nil> B05
	// maturity: "F20": unknown at "F"; allowed: A00 to E100
	// B05
	// "B05", <nil>
	// <nil> E100
}

func ExampleMonths_encodings() {
	m := maturity.Months(29)
	line, err := m.AppendText([]byte("text: "))
	fmt.Printf("%s, %v\n", line, err)
	text, err := m.MarshalText()
	fmt.Printf("%q, %v\n", text, err)

	// A failed read leaves the value as it was.
	fmt.Println(m.UnmarshalText([]byte("30 months")), m)
	fmt.Println(m.UnmarshalText([]byte("30 years")))
	fmt.Println(m)

	// JSON may hold the text in quotes, or a bare number.
	fmt.Println(m.UnmarshalJSON([]byte("27")), m)

	// A database column holds the text, or an integer, and NULL for a value that is not set.
	column, err := m.Value()
	fmt.Printf("%q, %v\n", column, err)
	fmt.Println(m.Scan([]byte("28 months")), m)
	fmt.Println(m.Scan(int64(26)), m)
	// Output:
	// text: 29 months, <nil>
	// "29 months", <nil>
	// <nil> 30 months
	// age: "30 years": bad syntax; allowed: 1 to 600 months
	// 30 months
	// <nil> 27 months
	// "27 months", <nil>
	// <nil> 28 months
	// <nil> 26 months
}

func ExampleTeeth_encodings() {
	t := maturity.Incisors(2)
	line, err := t.AppendText([]byte("text: "))
	fmt.Printf("%s, %v\n", line, err)
	text, err := t.MarshalText()
	fmt.Printf("%q, %v\n", text, err)

	// A failed read leaves the value as it was.
	fmt.Println(t.UnmarshalText([]byte("4 permanent incisors")), t)
	fmt.Println(t.UnmarshalText([]byte("9")))
	fmt.Println(t)

	// JSON may hold the text in quotes, or a bare number.
	fmt.Println(t.UnmarshalJSON([]byte("3")), t)

	// A database column holds the text, or an integer, and NULL for a value that is not set.
	column, err := t.Value()
	fmt.Printf("%q, %v\n", column, err)
	fmt.Println(t.Scan([]byte("0")), t)
	fmt.Println(t.Scan(int64(1)), t)
	// Output:
	// text: 2 permanent incisors, <nil>
	// "2 permanent incisors", <nil>
	// <nil> 4 permanent incisors
	// teeth: "9": out of range; allowed: 0 to 8
	// 4 permanent incisors
	// <nil> 3 permanent incisors
	// "3 permanent incisors", <nil>
	// <nil> 0 permanent incisors
	// <nil> 1 permanent incisor
}

func ExampleTens_encodings() {
	t := maturity.TensTowardBone
	line, err := t.AppendText([]byte("text: "))
	fmt.Printf("%s, %v\n", line, err)
	text, err := t.MarshalText()
	fmt.Printf("%q, %v\n", text, err)

	// A failed read leaves the value as it was.
	fmt.Println(t.UnmarshalText([]byte("toward lean")), t)
	fmt.Println(t.UnmarshalText([]byte("up")))
	fmt.Println(t)
	// Output:
	// text: toward bone, <nil>
	// "toward bone", <nil>
	// <nil> toward lean
	// tens: "up": unknown; allowed: keep units, toward bone, toward lean
	// toward lean
}

func ExampleOldLean_encodings() {
	o := maturity.OldLeanStaysInB
	line, err := o.AppendText([]byte("text: "))
	fmt.Printf("%s, %v\n", line, err)
	text, err := o.MarshalText()
	fmt.Printf("%q, %v\n", text, err)

	// A failed read leaves the value as it was.
	fmt.Println(o.UnmarshalText([]byte("")), o)
	fmt.Println(o.UnmarshalText([]byte("stays in C")))
	fmt.Println(o)
	// Output:
	// text: stays in B, <nil>
	// "stays in B", <nil>
	// <nil> may cross
	// old lean: "stays in C": unknown; allowed: may cross, stays in B
	// may cross
}
