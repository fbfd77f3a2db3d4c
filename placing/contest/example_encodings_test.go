package contest_test

import (
	"encoding/json"
	"fmt"

	"example.com/ribface/placing/contest"
)

func ExampleParsePoints() {
	p, err := contest.ParsePoints("7.25")
	fmt.Println(p, err)
	_, err = contest.ParsePoints("seven")
	fmt.Println(err)
	// Output:
	// 7.25 <nil>
	// points: "seven": bad syntax; allowed: a number with at most 4 places
}

// Points have a text; in JSON they are a bare number or the text. A column of a database
// holds the number, and NULL for points that are not set.
func Example_encodings() {
	v := contest.PointsOf(45.5)
	text, err := v.MarshalText()
	fmt.Printf("%q, %v\n", text, err)

	// A failed read leaves the value as it was.
	fmt.Println(v.UnmarshalText([]byte("7.25")), v)
	fmt.Println(v.UnmarshalText([]byte("seven")))
	fmt.Println(v)

	j, err := json.Marshal(v)
	fmt.Printf("%s, %v\n", j, err)
	fmt.Println(json.Unmarshal([]byte(`"7"`), &v), v)

	column, err := v.Value()
	fmt.Printf("%q, %v\n", column, err)
	fmt.Println(v.Scan([]byte("6.5")), v)
	// Output:
	// "45.5", <nil>
	// <nil> 7.25
	// points: "seven": bad syntax; allowed: a number with at most 4 places
	// 7.25
	// 7.25, <nil>
	// <nil> 7
	// "7", <nil>
	// <nil> 6.5
}
