package practice_test

import (
	"fmt"

	"example.com/ribface/placing/practice"
)

func ExampleDifficulty_encodings() {
	d := practice.Hard
	line, err := d.AppendText([]byte("text: "))
	fmt.Printf("%s, %v\n", line, err)
	text, err := d.MarshalText()
	fmt.Printf("%q, %v\n", text, err)
	fmt.Println(d.IsValid())
	// A failed read leaves the value as it was.
	fmt.Println(d.UnmarshalText([]byte("easy")), d)
	fmt.Println(d.UnmarshalText([]byte("fiendish")))
	fmt.Println(d)

	// Output:
	// text: hard, <nil>
	// "hard", <nil>
	// true
	// <nil> easy
	// difficulty: "fiendish": unknown; allowed: hard, medium, easy
	// easy
}

func ExampleParseDifficulty() {
	d, err := practice.ParseDifficulty("easy")
	fmt.Println(d, err)
	_, err = practice.ParseDifficulty("fiendish")
	fmt.Println(err)
	// Output:
	// easy <nil>
	// difficulty: "fiendish": unknown; allowed: hard, medium, easy
}

func ExampleShape_encodings() {
	s := practice.ClosePairs
	line, err := s.AppendText([]byte("text: "))
	fmt.Printf("%s, %v\n", line, err)
	text, err := s.MarshalText()
	fmt.Printf("%q, %v\n", text, err)
	fmt.Println(s.IsValid())
	// A failed read leaves the value as it was.
	fmt.Println(s.UnmarshalText([]byte("clear steps")), s)
	fmt.Println(s.UnmarshalText([]byte("round")))
	fmt.Println(s)

	// Output:
	// text: close pairs, <nil>
	// "close pairs", <nil>
	// true
	// <nil> clear steps
	// shape: "round": unknown; allowed: close middle, close pairs, clear steps
	// clear steps
}

func ExampleParseShape() {
	s, err := practice.ParseShape("clear steps")
	fmt.Println(s, err)
	_, err = practice.ParseShape("round")
	fmt.Println(err)
	// Output:
	// clear steps <nil>
	// shape: "round": unknown; allowed: close middle, close pairs, clear steps
}
