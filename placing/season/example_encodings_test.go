package season_test

import (
	"encoding/json"
	"fmt"

	"example.com/ribface/placing/season"
)

// A setting has a text, which is also what stands in JSON.
func Example_encodings() {
	v := season.TooFew
	text, err := v.MarshalText()
	fmt.Printf("%q, %v\n", text, err)

	// A failed read leaves the value as it was.
	fmt.Println(v.UnmarshalText([]byte("no spread")), v)
	fmt.Println(v.UnmarshalText([]byte("too many")))
	fmt.Println(v)

	j, err := json.Marshal(v)
	fmt.Printf("%s, %v\n", j, err)
	fmt.Println(json.Unmarshal([]byte(`"too few"`), &v), v)
	// Output:
	// "too few", <nil>
	// <nil> no spread
	// reason: "too many": unknown; allowed: too few, no spread
	// no spread
	// "no spread", <nil>
	// <nil> too few
}
