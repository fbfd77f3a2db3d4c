package grade_test

import (
	"encoding/json"
	"fmt"

	"example.com/ribface/grade"
)

// Every value that is stored or sent has a text; it is also what stands in JSON, where a
// measurement and a yield may be a bare number. A column of a database holds the number
// of a measurement, so that it sorts, the text of the others, and NULL for what was not
// taken.
func Example_encodings() {
	v := grade.Inches(0.6)
	text, err := v.MarshalText()
	fmt.Printf("%q, %v\n", text, err)

	// A failed read leaves the value as it was.
	fmt.Println(v.UnmarshalText([]byte("12.7 mm")), v)
	fmt.Println(v.UnmarshalText([]byte("0.6 lb")))
	fmt.Println(v)

	j, err := json.Marshal(v)
	fmt.Printf("%s, %v\n", j, err)
	fmt.Println(json.Unmarshal([]byte(`0.45`), &v), v)

	column, err := v.Value()
	fmt.Printf("%q, %v\n", column, err)
	fmt.Println(v.Scan([]byte("0.35")), v)
	column, err = grade.Thickness{}.Value()
	fmt.Println(column, err)
	column, err = grade.Small.At(40).Value()
	fmt.Println(column, err)
	// Output:
	// "0.6 in", <nil>
	// <nil> 0.5 in
	// thickness: "0.6 lb": unknown at "lb"; allowed: a number with at most 4 places, unit in or mm or cm
	// 0.5 in
	// "0.5 in", <nil>
	// <nil> 0.45 in
	// "0.45", <nil>
	// <nil> 0.35 in
	// <nil> <nil>
	// Sm40 <nil>
}
