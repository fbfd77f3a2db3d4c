package sheet_test

import (
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"os"
	"strings"

	"example.com/ribface/grade"
	"example.com/ribface/grade/sheet"
	"example.com/ribface/maturity"
)

// A sheet is graded row by row. One row is bad; the next follows all the same.
func Example() {
	in := strings.NewReader(`id,sex,skeletal,lean,marbling,fat_in,ribeye_sq_in,kph_pct,weight_lb
1,steer,A60,A50,Sm40,0.45,12.4,2.5,820
2,heifer,A70,A60,Mt15,6.1,13.1,,790
3,heifer,A70,A60,modest 15,.61,13.1,2%,790
`)
	r, err := sheet.NewReader(in)
	if err != nil {
		fmt.Println(err)
		return
	}
	for g, err := range r.Grade(context.Background(), grade.Rules{Edition: grade.Current}) {
		if err != nil {
			fmt.Println(err)
			continue
		}
		a := g.Assessment
		fmt.Println("carcass", g.ID, a.Maturity, a.Quality, a.Yield, a.Yield.Grade())
	}
	// Output:
	// carcass 1 A55 Low Choice 3.273 3
	// line 3, id 2, column 6 (fat_in): fat: 6.1: out of range; allowed: a number, 0 in to 3 in; column 8 (kph_pct): KPH: missing; allowed: 0% to 10%
	// carcass 3 A65 Average Choice 3.235 3
}

// A sheet as a plant keeps it: its own headings, S and H for the sex, marbling as a
// number, a point for what was not taken, no maturity and no KPH.
func ExampleMapping() {
	m := sheet.Mapping{
		Missing:  []string{"."},
		Columns:  map[string]string{"Tag": "id", "Sex": "sex", "HCW": "weight_lb", "BF": "fat_in", "REA": "ribeye_sq_in", "Marb": "marbling"},
		Marbling: grade.Slight400,
		Assumed:  sheet.Assumed{Maturity: maturity.A.At(50), KPH: grade.Percent(2.5)},
	}
	in := "Lot,Tag,Sex,HCW,BF,REA,Marb\n7,T001,S,779,.28,15.0,880\n7,T017,S,947,.,11.3,460\n"
	r, err := m.NewReader("plant.csv", strings.NewReader(in))
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println("not read:", r.Extra())
	for g, err := range r.Grade(context.Background(), grade.Rules{Edition: grade.Current}) {
		if err != nil {
			fmt.Println(err)
			continue
		}
		fmt.Println(g.ID, g.Assessment.Quality, g.Assessment.Yield, "assumed:", g.Assumed)
	}
	fmt.Println(m.Check())
	// Output:
	// not read: [Lot]
	// T001 Low Prime 1.8602 assumed: maturity kph
	// plant.csv, line 3, id T017, column 5 (BF): fat: missing; allowed: 0 in to 3 in
	// <nil>
}

// A mapping stands in a file of JSON. A name that is misspelled is an error.
func ExampleMapping_UnmarshalJSON() {
	var m sheet.Mapping
	err := json.Unmarshal([]byte(`{"separator": ";", "decimal": ",", "columns": {"Fett mm": "fat_mm"}, "maturity": "letter at 50"}`), &m)
	fmt.Println(m.Columns, m.Maturity, err)
	err = json.Unmarshal([]byte(`{"columns": {"Fett mm": "fat"}}`), &m)
	for _, p := range grade.Problems(err) {
		fmt.Println(p.Path, "-", p)
	}
	// Output:
	// map[Fett mm:fat_mm] letter at 50 <nil>
	// columns.Fett mm - column: fat: unknown; allowed: a column of ours with its unit, as weight_lb
}

func ExampleAssumed() {
	b, err := json.Marshal(sheet.Assumed{Sex: grade.Steer, KPH: grade.Percent(2.5)})
	fmt.Println(string(b), err)
	// Output:
	// {"sex":"steer","kph":"2.5%"} <nil>
}

// A person confirms what is proposed, and adds what no sheet can tell.
func ExamplePropose() {
	p, err := sheet.Propose(strings.NewReader("Tag,Pen,HCW,Fat (mm),REA\n1,3,812,11.4,84\n2,3,790,NA,90\n"))
	if err != nil {
		fmt.Println(err)
		return
	}
	b, err := json.Marshal(p.Mapping)
	fmt.Println(string(b), err)
	fmt.Println("not placed:", strings.Join(p.Unplaced, ", "))
	fmt.Println("lacking:", strings.Join(p.Lacking, ", "))
	fmt.Println(strings.Join(p.Doubts, "\n"))
	// Output:
	// {"separator":",","missing":["NA"],"columns":{"Fat (mm)":"fat_mm","HCW":"weight_lb","REA":"ribeye_sq_cm","Tag":"id"}} <nil>
	// not placed: Pen
	// lacking: quality: sex class, quality: skeletal maturity, quality: lean maturity, quality: marbling, yield: KPH
	// "HCW": no unit; taken for lb, since the middle of the cells is 812
	// missing: "NA" under "Fat (mm)" is taken for a mark
	// "REA": no unit; taken for sq cm, since the middle of the cells is 90
}

func ExampleProposal() {
	p, err := sheet.Propose(strings.NewReader("Animal;KPH %;Weight kg\n1;2,5;350,5\n"))
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(p.Mapping.Columns["Weight kg"], p.Doubts)
	// Output:
	// weight_kg [decimal sign: taken for a comma, as in 2 cells]
}

func ExampleNewReader() {
	_, err := sheet.NewReader(strings.NewReader("id,fat_in,fat_mm,drak\n"))
	fmt.Println(err)
	// Output:
	// line 1, column 3 (fat_mm): fat: fat_mm: repeated; allowed: one column for it; column 2 is one; column 4 (drak): column: drak: unknown; allowed: dark, or a heading that is not a letter away from it
}

// Rows reads without grading, and what was not taken stays unset.
func ExampleReader() {
	r, err := sheet.NewReader(strings.NewReader("id,pen,marbling,fat_in\n17,4,Sm40,\n"))
	if err != nil {
		fmt.Println(err)
		return
	}
	quality, yield := r.Lacks()
	fmt.Println("no quality for want of", quality)
	fmt.Println("no yield for want of", yield)
	for row, err := range r.Rows() {
		fmt.Println(row.Line, row.ID, row.Carcass.Marbling, row.Carcass.Measures.Fat, r.Extra(), row.Extra, err)
	}
	// Output:
	// no quality for want of [sex class skeletal maturity lean maturity]
	// no yield for want of [ribeye KPH weight]
	// 2 17 Sm40 not taken [pen] [4] <nil>
}

// A row that is possible and yet unlikely is graded and flagged.
func ExampleReader_Grade() {
	r, err := sheet.NewReader(strings.NewReader("id,fat_in,ribeye_sq_in,kph_pct,weight_lb\n1,0.45,12.4,0.025,372\n1,0.45,12.4,2.5,820\n"))
	if err != nil {
		fmt.Println(err)
		return
	}
	for g, err := range r.Grade(context.Background(), grade.Rules{Edition: grade.Current}) {
		fmt.Println(g.Assessment.Yield, err)
		for _, f := range g.Flags {
			fmt.Println(" ", f.Kind, "-", f.Note)
		}
	}
	c := r.Counts()
	fmt.Println(c.Graded, "graded,", c.Flagged, "flagged,", c.Flags[sheet.RepeatedID], "with an id that stood before")
	// Output:
	// 1.0756 <nil>
	//   unusual weight - weight 372 lb is outside the usual 400 lb to 1300 lb
	//   weight unit - weight 372 lb: are these kilograms?
	//   KPH fraction - KPH 0.025%: is this a fraction of 1?
	// 3.273 <nil>
	//   repeated id - id 1 stands on line 2 too
	// 2 graded, 2 flagged, 1 with an id that stood before
}

func ExampleCounts() {
	r, err := sheet.Mapping{Assumed: sheet.Assumed{KPH: grade.Percent(2.5)}}.NewReader("", strings.NewReader("id,fat_in,ribeye_sq_in,weight_lb\n1,0.45,12.4,820\n2,x,12.4,820\n"))
	if err != nil {
		fmt.Println(err)
		return
	}
	for range r.Grade(context.Background(), grade.Rules{Edition: grade.Current}) {
	}
	b, err := json.Marshal(r.Counts())
	fmt.Println(string(b), err)
	// Output:
	// {"graded":1,"refused":1,"flagged":0,"assumed":{"kph":1}} <nil>
}

// Every reason that a row is refused has its place.
func ExampleRowError() {
	r, err := sheet.Mapping{}.NewReader("lot7.csv", strings.NewReader("id,sex,fat_in\n9,ox,6.1\n"))
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, err := range r.Rows() {
		var row *sheet.RowError
		if !errors.As(err, &row) {
			continue
		}
		for _, e := range row.All() {
			for _, p := range grade.Problems(e.Err) {
				fmt.Println(e.File, e.Line, e.ID, e.Heading, "-", p.Path, p.Value, p.Err)
			}
		}
	}
	// Output:
	// lot7.csv 2 9 sex - sex ox unknown
	// lot7.csv 2 9 fat_in - measures.fat 6.1 out of range
}

func ExampleColumns() {
	for c := range sheet.Columns() {
		if c.Field == "fat" {
			fmt.Println(c.Name, c.Unit, "-", c.Allowed)
		}
	}
	// Output:
	// fat_in in - a number, 0 in to 3 in
	// fat_mm mm - a number, 0 in to 3 in
	// fat_cm cm - a number, 0 in to 3 in
}

func ExampleColumn() {
	for c := range sheet.Columns() {
		b, err := json.Marshal(c)
		fmt.Println(string(b), err)
		break
	}
	// Output:
	// {"name":"id","field":"id","allowed":"one line of text"} <nil>
}

func ExampleRow() {
	row := sheet.Row{ID: "17", Carcass: grade.Carcass{Sex: grade.Steer, Marbling: grade.Small.At(40)}}
	fmt.Println(row.ID, row.Carcass.Sex, row.Carcass.Marbling, row.Assumed, row.Carcass.Measures.Fat)
	b, err := json.Marshal(row)
	fmt.Println(string(b), err)
	// Output:
	// 17 steer Sm40 none not taken
	// {"id":"17","carcass":{"sex":"steer","marbling":"Sm40"}} <nil>
}

func ExampleWriter() {
	w, err := sheet.NewWriter(os.Stdout, "pen")
	if err != nil {
		fmt.Println(err)
		return
	}
	c := grade.Carcass{Sex: grade.Heifer, Measures: grade.Measures{Fat: grade.Millimeters(11), KPH: grade.Percent(2.5)}}
	fmt.Println(w.Write(sheet.Row{ID: "17", Carcass: c, Extra: []string{"4, north"}, Assumed: sheet.AssumedKPH}))
	c.Measures.Fat = grade.Inches(5)
	fmt.Println(w.Write(sheet.Row{ID: "18", Carcass: c, Extra: []string{"4, north"}}))
	fmt.Println(w.Flush())
	// Output:
	// <nil>
	// line 3, id 18, column 11 (fat_in): fat: 5 in: out of range; allowed: a number, 0 in to 3 in
	// id,sex,skeletal,lean,teeth,papers_months,marbling,firmness,dark,below_cutter,fat_in,fat_adjust_in,ribeye_sq_in,kph_pct,weight_lb,assumed,color,texture,buttons,pen
	// 17,heifer,,,,,,,,,0.4331,,,2.5,,kph,,,,"4, north"
	// <nil>
}

func ExampleNewWriter() {
	_, err := sheet.NewWriter(os.Stdout, "pen", "sex")
	fmt.Println(err)
	// Output:
	// line 1, column 21 (sex): column: sex: repeated; allowed: each column once
}

func ExampleGradedWriter() {
	w, err := sheet.NewGradedWriter(os.Stdout)
	if err != nil {
		fmt.Println(err)
		return
	}
	a, err := grade.Current.Assess(steer)
	fmt.Println(err, w.Write(sheet.GradedRow{ID: "1", Assessment: a}), w.Flush())
	// Output:
	// id,sex,skeletal,lean,teeth,papers_months,marbling,firmness,dark,below_cutter,fat_in,fat_adjust_in,ribeye_sq_in,kph_pct,weight_lb,assumed,color,texture,buttons,overall,quality,yield,yield_grade,tier,flags
	// 1,steer,A60,A50,,,Sm40,,,,0.45,,12.4,2.5,820,,,,,A55,Low Choice,3.273,3,low choice,
	// <nil> <nil> <nil>
}

func ExampleNewGradedWriter() {
	_, err := sheet.NewGradedWriter(os.Stdout, "tier")
	fmt.Println(err)
	// Output:
	// line 1, column 26 (tier): column: tier: repeated; allowed: each column once
}

func ExampleGradedRow() {
	a, err := grade.Current.Assess(steer)
	g := sheet.GradedRow{ID: "1", Assessment: a}
	fmt.Println(g.ID, g.Assessment.Quality, g.Assessment.Yield, g.Flags, err)
	// Output:
	// 1 Low Choice 3.273 [] <nil>
}

func ExampleFlag() {
	b, err := json.Marshal(sheet.Flag{Kind: sheet.RepeatedID, Note: "id 6 stands on line 7 too"})
	fmt.Println(string(b), err)
	// Output:
	// {"kind":"repeated id","note":"id 6 stands on line 7 too"} <nil>
}

func ExampleFlagKinds() {
	for k := range sheet.FlagKinds() {
		fmt.Println(k)
	}
	// Output:
	// repeated id
	// unusual fat
	// unusual ribeye
	// unusual KPH
	// unusual weight
	// weight unit
	// KPH fraction
}

// Settings and kinds read and write themselves as text.
func ExampleFlagKind() {
	k := sheet.WeightUnit
	b, err := k.MarshalText()
	fmt.Println(string(b), err, k.UnmarshalText([]byte("repeated id")), k)
	// Output:
	// weight unit <nil> <nil> repeated id
}

func ExampleMaturityScale() {
	s := sheet.LetterAt(50)
	point, ok := s.Point()
	fmt.Println(s, point, ok)
	b, err := s.MarshalText()
	fmt.Println(string(b), err, s.UnmarshalText([]byte("A00 = 100")), s)
	// Output:
	// letter at 50 50 true
	// letter at 50 <nil> <nil> A00 = 100
}

func ExampleLetterAt() {
	r, err := sheet.Mapping{Maturity: sheet.LetterAt(50)}.NewReader("", strings.NewReader("skeletal\nB\nA60\n"))
	if err != nil {
		fmt.Println(err)
		return
	}
	for row := range r.Rows() {
		fmt.Println(row.Carcass.Maturity.Skeletal)
	}
	// Output:
	// B50
	// A60
}

func ExampleAssumptions() {
	a := sheet.AssumedMaturity | sheet.AssumedKPH
	b, err := a.MarshalText()
	fmt.Println(string(b), err, a.UnmarshalText([]byte("sex")), a)
	// Output:
	// maturity kph <nil> <nil> sex
}
