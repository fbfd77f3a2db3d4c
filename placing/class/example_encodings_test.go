package class_test

import (
	"fmt"

	"example.com/ribface/placing/class"
)

func ExampleRanking_encodings() {
	r := class.MustParseRanking("3 1=2 4")
	line, err := r.AppendText([]byte("text: "))
	fmt.Printf("%s, %v\n", line, err)
	text, err := r.MarshalText()
	fmt.Printf("%q, %v\n", text, err)

	// A failed read leaves the value as it was.
	fmt.Println(r.UnmarshalText([]byte("1 2 3")), r)
	fmt.Println(r.UnmarshalText([]byte("1 1")))
	fmt.Println(r)

	// A database column holds the text; sql.Null is for one that may be NULL.
	column, err := r.Value()
	fmt.Printf("%q, %v\n", column, err)
	fmt.Println(r.Scan([]byte("2=1")), r)
	// Output:
	// text: 3 1=2 4, <nil>
	// "3 1=2 4", <nil>
	// <nil> 1 2 3
	// ranking: "1 1": repeated at "1"; allowed: each exhibit 1 to 2 once
	// 1 2 3
	// "1 2 3", <nil>
	// <nil> 1=2
}

func ExampleSite_encodings() {
	s := class.FatRump
	line, err := s.AppendText([]byte("text: "))
	fmt.Printf("%s, %v\n", line, err)
	text, err := s.MarshalText()
	fmt.Printf("%q, %v\n", text, err)

	// A failed read leaves the value as it was.
	fmt.Println(s.UnmarshalText([]byte("fat in brisket")), s)
	fmt.Println(s.UnmarshalText([]byte("tail")))
	fmt.Println(s)

	// A database column holds the text; sql.Null is for one that may be NULL.
	column, err := s.Value()
	fmt.Printf("%q, %v\n", column, err)
	fmt.Println(s.Scan([]byte("muscling of loin")), s)
	// Output:
	// text: fat over rump, <nil>
	// "fat over rump", <nil>
	// <nil> fat in brisket
	// site: "tail": unknown; allowed: fat over round, fat over inside round, fat over rump, fat over hip, fat in cod or udder, fat in flank, fat over loin edge, fat over rib, fat over plate, fat over clod, fat over shoulder, fat over neck, fat in brisket, plumpness of round, length of round, width of round, cushion of round, muscling of loin, muscling of rib, muscling of clod
	// fat in brisket
	// "fat in brisket", <nil>
	// <nil> muscling of loin
}

func ExampleTrait_encodings() {
	t := class.TraitMarbling
	line, err := t.AppendText([]byte("text: "))
	fmt.Printf("%s, %v\n", line, err)
	text, err := t.MarshalText()
	fmt.Printf("%q, %v\n", text, err)

	// A failed read leaves the value as it was.
	fmt.Println(t.UnmarshalText([]byte("yield")), t)
	fmt.Println(t.UnmarshalText([]byte("hide")))
	fmt.Println(t)
	// Output:
	// text: marbling, <nil>
	// "marbling", <nil>
	// <nil> yield
	// trait: "hide": unknown; allowed: quality grade, dark cutting, marbling, yield, fat over the rib, ribeye, kidney, pelvic and heart fat, weight, skeletal maturity, chine buttons, lean maturity, lean color, lean texture, firmness, site
	// yield
}

func ExampleGround_encodings() {
	g := class.ByMarbling
	line, err := g.AppendText([]byte("text: "))
	fmt.Printf("%s, %v\n", line, err)
	text, err := g.MarshalText()
	fmt.Printf("%q, %v\n", text, err)

	// A failed read leaves the value as it was.
	fmt.Println(g.UnmarshalText([]byte("yield")), g)
	fmt.Println(g.UnmarshalText([]byte("luck")))
	fmt.Println(g)
	// Output:
	// text: marbling, <nil>
	// "marbling", <nil>
	// <nil> yield
	// ground: "luck": unknown; allowed: quality tier, yield advantage, bottom of the class, lean color, marbling, yield, muscling, trimness, Choice against Select, value, dark cutting, texture, firmness
	// yield
}
