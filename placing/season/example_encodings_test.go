package season_test

import (
	"fmt"

	"example.com/ribface/placing/season"
)

func ExampleReason_encodings() {
	r := season.TooFew
	line, err := r.AppendText([]byte("text: "))
	fmt.Printf("%s, %v\n", line, err)
	text, err := r.MarshalText()
	fmt.Printf("%q, %v\n", text, err)
	fmt.Println(r.IsValid())
	// A failed read leaves the value as it was.
	fmt.Println(r.UnmarshalText([]byte("no spread")), r)
	fmt.Println(r.UnmarshalText([]byte("shy")))
	fmt.Println(r)

	// Output:
	// text: too few, <nil>
	// "too few", <nil>
	// true
	// <nil> no spread
	// reason: "shy": unknown; allowed: too few, no spread
	// no spread
}

func ExampleParseReason() {
	r, err := season.ParseReason("no spread")
	fmt.Println(r, err)
	_, err = season.ParseReason("shy")
	fmt.Println(err)
	// Output:
	// no spread <nil>
	// reason: "shy": unknown; allowed: too few, no spread
}

func ExampleWeights_encodings() {
	w := season.Linear
	line, err := w.AppendText([]byte("text: "))
	fmt.Printf("%s, %v\n", line, err)
	text, err := w.MarshalText()
	fmt.Printf("%q, %v\n", text, err)
	fmt.Println(w.IsValid())
	// A failed read leaves the value as it was.
	fmt.Println(w.UnmarshalText([]byte("quadratic")), w)
	fmt.Println(w.UnmarshalText([]byte("cubic")))
	fmt.Println(w)

	// Output:
	// text: linear, <nil>
	// "linear", <nil>
	// true
	// <nil> quadratic
	// weights: "cubic": unknown; allowed: unweighted, linear, quadratic
	// quadratic
}

func ExampleParseWeights() {
	w, err := season.ParseWeights("quadratic")
	fmt.Println(w, err)
	_, err = season.ParseWeights("cubic")
	fmt.Println(err)
	// Output:
	// quadratic <nil>
	// weights: "cubic": unknown; allowed: unweighted, linear, quadratic
}

func ExampleTrait_encodings() {
	t := season.TraitFat
	line, err := t.AppendText([]byte("text: "))
	fmt.Printf("%s, %v\n", line, err)
	text, err := t.MarshalText()
	fmt.Printf("%q, %v\n", text, err)
	fmt.Println(t.IsValid())
	// A failed read leaves the value as it was.
	fmt.Println(t.UnmarshalText([]byte("ribeye")), t)
	fmt.Println(t.UnmarshalText([]byte("color")))
	fmt.Println(t)

	// Output:
	// text: fat, <nil>
	// "fat", <nil>
	// true
	// <nil> ribeye
	// trait: "color": unknown; allowed: skeletal, lean, maturity, marbling, quality, fat, preliminary, ribeye, KPH, weight, yield
	// ribeye
}

func ExampleParseTrait() {
	t, err := season.ParseTrait("ribeye")
	fmt.Println(t, err)
	_, err = season.ParseTrait("color")
	fmt.Println(err)
	// Output:
	// ribeye <nil>
	// trait: "color": unknown; allowed: skeletal, lean, maturity, marbling, quality, fat, preliminary, ribeye, KPH, weight, yield
}
