package class_test

import (
	"encoding/json"
	"fmt"

	"example.com/ribface/placing/class"
)

// Every value that is stored or sent has a text; it is also what stands in JSON and in
// a column of a database. Reading takes the other spellings too.
func Example_encodings() {
	v := class.MustParseRanking("3 1=2 4")
	text, err := v.MarshalText()
	fmt.Printf("%q, %v\n", text, err)

	// A failed read leaves the value as it was.
	fmt.Println(v.UnmarshalText([]byte("4-3-2-1")), v)
	fmt.Println(v.UnmarshalText([]byte("1 1")))
	fmt.Println(v)

	j, err := json.Marshal(v)
	fmt.Printf("%s, %v\n", j, err)
	fmt.Println(json.Unmarshal([]byte(`"1 2 3 4"`), &v), v)

	column, err := v.Value()
	fmt.Printf("%q, %v\n", column, err)
	fmt.Println(v.Scan([]byte("3 1=2 4")), v)
	// Output:
	// "3 1=2 4", <nil>
	// <nil> 4 3 2 1
	// ranking: "1 1": repeated at "1"; allowed: each exhibit 1 to 2 once
	// 4 3 2 1
	// "4 3 2 1", <nil>
	// <nil> 1 2 3 4
	// "1 2 3 4", <nil>
	// <nil> 3 1=2 4
}
