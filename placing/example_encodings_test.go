package placing_test

import (
	"encoding/json"
	"fmt"

	"example.com/ribface/placing"
)

func ExamplePanel_MarshalJSON() {
	p, err := placing.NewPanel(placing.Vote{Order: placing.MustParseOrder("3-2-1-4"), Cuts: placing.MustParseCuts("2-8-2")}, placing.Vote{Order: placing.MustParseOrder("3-1-2-4"), Count: 2})
	if err != nil {
		fmt.Println(err)
		return
	}
	j, err := json.Marshal(p)
	fmt.Printf("%s, %v\n", j, err)
	var back placing.Panel
	fmt.Println(json.Unmarshal(j, &back), back.Equal(p), back.Officials())
	fmt.Println(json.Unmarshal([]byte(`[{"order":"321"},{"order":"3214"}]`), &back))
	// Output:
	// [{"order":"3-2-1-4","cuts":"2-8-2","count":1},{"order":"3-1-2-4","count":2}], <nil>
	// <nil> true 3
	// vote 2: order: 3-2-1-4: out of range; allowed: an order of 3 exhibits
}

// Every value that is stored or sent has a text; it is also what stands in JSON and in
// a column of a database. Reading takes the other spellings too.
func Example_encodings() {
	var v placing.Official
	fmt.Println(v.UnmarshalText([]byte("3-2-1-4 cuts 2-8-2")))
	text, err := v.MarshalText()
	fmt.Printf("%q, %v\n", text, err)

	// A failed read leaves the value as it was.
	fmt.Println(v.UnmarshalText([]byte("3124 cuts 3-5-3")), v)
	fmt.Println(v.UnmarshalText([]byte("3-2-1-4 cuts 2-8")))
	fmt.Println(v)

	cards := map[string]placing.Card{"7": {Order: placing.MustParseOrder("3214")}, "8": {Mark: placing.Blank}, "9": {}}
	j, err := json.Marshal(cards)
	fmt.Printf("%s, %v\n", j, err)

	column, err := v.Value()
	fmt.Printf("%q, %v\n", column, err)
	fmt.Println(v.Scan([]byte("1-2 cuts 5")), v)
	// Output:
	// <nil>
	// "3-2-1-4 cuts 2-8-2", <nil>
	// <nil> 3-1-2-4 cuts 3-5-3
	// cuts: 2-8: out of range; allowed: 3 cuts for 4 exhibits
	// 3-1-2-4 cuts 3-5-3
	// {"7":"3-2-1-4","8":"blank","9":""}, <nil>
	// "3-1-2-4 cuts 3-5-3", <nil>
	// <nil> 1-2 cuts 5
}
