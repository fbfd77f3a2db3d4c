package cite_test

import (
	"encoding/json"
	"fmt"

	"example.com/ribface/maturity/cite"
)

// A citation has a text, which is also what stands in JSON.
func Example_encodings() {
	v := cite.Citation{Standing: cite.Official, IDs: "cfr-54-105"}
	text, err := v.MarshalText()
	fmt.Printf("%q, %v\n", text, err)

	// A failed read leaves the value as it was.
	fmt.Println(v.UnmarshalText([]byte("published: bif-yield, ga-ffa-2014")), v)
	fmt.Println(v.UnmarshalText([]byte("official: ")))
	fmt.Println(v)

	j, err := json.Marshal(v)
	fmt.Printf("%s, %v\n", j, err)
	fmt.Println(json.Unmarshal([]byte(`"official: cfr-54-102"`), &v), v)
	// Output:
	// "official: cfr-54-105", <nil>
	// <nil> published: bif-yield, ga-ffa-2014
	// citation: "official: ": bad syntax at ": "; allowed: a standing, or a standing, a colon and source ids with commas between
	// published: bif-yield, ga-ffa-2014
	// "published: bif-yield, ga-ffa-2014", <nil>
	// <nil> official: cfr-54-102
}
