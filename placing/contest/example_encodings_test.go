package contest_test

import (
	"fmt"

	"example.com/ribface/placing/contest"
)

func ExampleKind_encodings() {
	k := contest.KindPlacing
	line, err := k.AppendText([]byte("text: "))
	fmt.Printf("%s, %v\n", line, err)
	text, err := k.MarshalText()
	fmt.Printf("%q, %v\n", text, err)
	fmt.Println(k.IsValid())
	// A failed read leaves the value as it was.
	fmt.Println(k.UnmarshalText([]byte("by hand")), k)
	fmt.Println(k.UnmarshalText([]byte("oral")))
	fmt.Println(k)

	// Output:
	// text: placing, <nil>
	// "placing", <nil>
	// true
	// <nil> by hand
	// kind of component: "oral": unknown; allowed: placing, quality, yield, by hand
	// by hand
}

func ExampleParseKind() {
	k, err := contest.ParseKind("by hand")
	fmt.Println(k, err)
	_, err = contest.ParseKind("oral")
	fmt.Println(err)
	// Output:
	// by hand <nil>
	// kind of component: "oral": unknown; allowed: placing, quality, yield, by hand
}

func ExampleYieldStep_encodings() {
	y := contest.Tenths
	line, err := y.AppendText([]byte("text: "))
	fmt.Printf("%s, %v\n", line, err)
	text, err := y.MarshalText()
	fmt.Printf("%q, %v\n", text, err)
	fmt.Println(y.IsValid())
	// A failed read leaves the value as it was.
	fmt.Println(y.UnmarshalText([]byte("thirds")), y)
	fmt.Println(y.UnmarshalText([]byte("halves")))
	fmt.Println(y)

	// Output:
	// text: tenths, <nil>
	// "tenths", <nil>
	// true
	// <nil> thirds
	// yield step: "halves": unknown; allowed: whole grades, thirds, tenths
	// thirds
}

func ExampleParseYieldStep() {
	y, err := contest.ParseYieldStep("thirds")
	fmt.Println(y, err)
	_, err = contest.ParseYieldStep("halves")
	fmt.Println(err)
	// Output:
	// thirds <nil>
	// yield step: "halves": unknown; allowed: whole grades, thirds, tenths
}

func ExampleShortTeam_encodings() {
	s := contest.Barred
	line, err := s.AppendText([]byte("text: "))
	fmt.Printf("%s, %v\n", line, err)
	text, err := s.MarshalText()
	fmt.Printf("%q, %v\n", text, err)
	fmt.Println(s.IsValid())
	// A failed read leaves the value as it was.
	fmt.Println(s.UnmarshalText([]byte("missing members score 0")), s)
	fmt.Println(s.UnmarshalText([]byte("excused")))
	fmt.Println(s)

	// Output:
	// text: barred, <nil>
	// "barred", <nil>
	// true
	// <nil> missing members score 0
	// rule for short teams: "excused": unknown; allowed: missing members score 0, barred
	// missing members score 0
}

func ExampleParseShortTeam() {
	s, err := contest.ParseShortTeam("missing members score 0")
	fmt.Println(s, err)
	_, err = contest.ParseShortTeam("excused")
	fmt.Println(err)
	// Output:
	// missing members score 0 <nil>
	// rule for short teams: "excused": unknown; allowed: missing members score 0, barred
}

func ExamplePoints_encodings() {
	p := contest.PointsOf(45.5)
	line, err := p.AppendText([]byte("text: "))
	fmt.Printf("%s, %v\n", line, err)
	text, err := p.MarshalText()
	fmt.Printf("%q, %v\n", text, err)

	// A failed read leaves the value as it was.
	fmt.Println(p.UnmarshalText([]byte("7.25")), p)
	fmt.Println(p.UnmarshalText([]byte("seven")))
	fmt.Println(p)

	// A database column holds the number, NULL for points that are not set.
	column, err := p.Value()
	fmt.Printf("%q, %v\n", column, err)
	fmt.Println(p.Scan([]byte("7.25")), p)
	// Output:
	// text: 45.5, <nil>
	// "45.5", <nil>
	// <nil> 7.25
	// points: "seven": bad syntax; allowed: a number with at most 4 places
	// 7.25
	// "7.25", <nil>
	// <nil> 7.25
}

func ExampleParsePoints() {
	p, err := contest.ParsePoints("7.25")
	fmt.Println(p, err)
	_, err = contest.ParsePoints("seven")
	fmt.Println(err)
	// Output:
	// 7.25 <nil>
	// points: "seven": bad syntax; allowed: a number with at most 4 places
}
