package maturity_test

import (
	"encoding/json"
	"fmt"

	"example.com/ribface/maturity"
)

// Every value that is stored or sent has a text; it is also what stands in JSON and in
// a column of a database. Reading takes the other spellings too. Months, Teeth and
// Buttons also read a bare number.
func Example_encodings() {
	v := maturity.A.At(70)
	text, err := v.MarshalText()
	fmt.Printf("%q, %v\n", text, err)

	// A failed read leaves the value as it was.
	fmt.Println(v.UnmarshalText([]byte("b05")), v)
	fmt.Println(v.UnmarshalText([]byte("F20")))
	fmt.Println(v)

	j, err := json.Marshal(v)
	fmt.Printf("%s, %v\n", j, err)
	fmt.Println(json.Unmarshal([]byte(`"E100"`), &v), v)

	column, err := v.Value()
	fmt.Printf("%q, %v\n", column, err)
	fmt.Println(v.Scan([]byte("A55")), v)
	// Output:
	// "A70", <nil>
	// <nil> B05
	// maturity: "F20": unknown at "F"; allowed: A00 to E100
	// B05
	// "B05", <nil>
	// <nil> E100
	// "E100", <nil>
	// <nil> A55
}
