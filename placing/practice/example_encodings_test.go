package practice_test

import (
	"encoding/json"
	"fmt"

	"example.com/ribface/placing/practice"
)

// A setting has a text, which is also what stands in JSON.
func Example_encodings() {
	v := practice.Hard
	text, err := v.MarshalText()
	fmt.Printf("%q, %v\n", text, err)

	// A failed read leaves the value as it was.
	fmt.Println(v.UnmarshalText([]byte("easy")), v)
	fmt.Println(v.UnmarshalText([]byte("fiendish")))
	fmt.Println(v)

	j, err := json.Marshal(v)
	fmt.Printf("%s, %v\n", j, err)
	fmt.Println(json.Unmarshal([]byte(`"medium"`), &v), v)
	// Output:
	// "hard", <nil>
	// <nil> easy
	// difficulty: "fiendish": unknown; allowed: hard, medium, easy
	// easy
	// "easy", <nil>
	// <nil> medium
}
