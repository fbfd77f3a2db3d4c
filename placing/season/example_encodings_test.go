package season_test

import (
	"encoding/json"
	"fmt"

	"example.com/ribface/placing/season"
)

func ExampleParseTrait() {
	t, err := season.ParseTrait("ribeye")
	fmt.Println(t, err)
	_, err = season.ParseTrait("color")
	fmt.Println(err)
	// Output:
	// ribeye <nil>
	// trait: "color": unknown; allowed: skeletal, lean, maturity, marbling, quality, fat, preliminary, ribeye, KPH, weight, yield
}

// A setting has a text, which is also what stands in JSON.
func Example_encodings() {
	v := season.Linear
	text, err := v.MarshalText()
	fmt.Printf("%q, %v\n", text, err)

	// A failed read leaves the value as it was.
	fmt.Println(v.UnmarshalText([]byte("quadratic")), v)
	fmt.Println(v.UnmarshalText([]byte("cubic")))
	fmt.Println(v)

	j, err := json.Marshal(v)
	fmt.Printf("%s, %v\n", j, err)
	fmt.Println(json.Unmarshal([]byte(`"unweighted"`), &v), v)
	// Output:
	// "linear", <nil>
	// <nil> quadratic
	// weights: "cubic": unknown; allowed: unweighted, linear, quadratic
	// quadratic
	// "quadratic", <nil>
	// <nil> unweighted
}
