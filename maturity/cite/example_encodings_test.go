package cite_test

import (
	"fmt"

	"example.com/ribface/maturity/cite"
)

func ExampleStanding_encodings() {
	s := cite.Official
	line, err := s.AppendText([]byte("text: "))
	fmt.Printf("%s, %v\n", line, err)
	text, err := s.MarshalText()
	fmt.Printf("%q, %v\n", text, err)

	// A failed read leaves the value as it was.
	fmt.Println(s.UnmarshalText([]byte("published")), s)
	fmt.Println(s.UnmarshalText([]byte("rumor")))
	fmt.Println(s)

	// Output:
	// text: official, <nil>
	// "official", <nil>
	// <nil> published
	// standing: "rumor": unknown; allowed: official, published, common-practice, memory, derived
	// published
}

func ExampleCitation_encodings() {
	c := cite.Citation{Standing: cite.Official, IDs: "cfr-54-105"}
	line, err := c.AppendText([]byte("text: "))
	fmt.Printf("%s, %v\n", line, err)
	text, err := c.MarshalText()
	fmt.Printf("%q, %v\n", text, err)

	// A failed read leaves the value as it was.
	fmt.Println(c.UnmarshalText([]byte("published: bif-yield, ga-ffa-2014")), c)
	fmt.Println(c.UnmarshalText([]byte("official: ")))
	fmt.Println(c)

	// Output:
	// text: official: cfr-54-105, <nil>
	// "official: cfr-54-105", <nil>
	// <nil> published: bif-yield, ga-ffa-2014
	// citation: "official: ": bad syntax at ": "; allowed: a standing, or a standing, a colon and source ids with commas between
	// published: bif-yield, ga-ffa-2014
}
