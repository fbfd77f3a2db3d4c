package class_test

import (
	"encoding/json"
	"errors"
	"fmt"

	"example.com/ribface/placing"
	"example.com/ribface/placing/class"
)

// A value that is stored or sent has a text; it is also what stands in JSON and in a
// column of a database. Reading takes the other spellings too.
func Example_encodings() {
	v := class.FatRump
	text, err := v.MarshalText()
	fmt.Printf("%q, %v\n", text, err)

	// A failed read leaves the value as it was.
	fmt.Println(v.UnmarshalText([]byte("Fat_in-Brisket")), v)
	fmt.Println(errors.Is(v.UnmarshalText([]byte("fat over tail")), placing.ErrUnknown), v)

	j, err := json.Marshal(class.Walk{{Site: v, Order: class.MustParseRanking("3 1=2 4")}})
	fmt.Printf("%s, %v\n", j, err)

	column, err := v.Value()
	fmt.Printf("%q, %v\n", column, err)
	fmt.Println(v.Scan([]byte("muscling of loin")), v)
	// Output:
	// "fat over rump", <nil>
	// <nil> fat in brisket
	// true fat in brisket
	// [{"site":"fat in brisket","order":"3 1=2 4"}], <nil>
	// "fat in brisket", <nil>
	// <nil> muscling of loin
}
