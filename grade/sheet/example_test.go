package sheet_test

import (
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
2,heifer,A70,A60,Mt15,6.1,13.1,2,790
3,heifer,A70,A60,Mt15,0.61,13.1,2,790
`)
	r, err := sheet.NewReader(in)
	if err != nil {
		fmt.Println(err)
		return
	}
	for g, err := range r.Grade(grade.Rules{Edition: grade.Current}) {
		if err != nil {
			fmt.Println(err)
			continue
		}
		a := g.Assessment
		fmt.Println("carcass", g.ID, a.Maturity, a.Quality, a.Yield, a.Yield.Grade())
	}
	// Output:
	// carcass 1 A55 Low Choice 3.273 3
	// line 3, column 6 (fat_in): fat: 6.1 in: out of range; allowed: a number with at most 4 places, 0 to 3 in
	// carcass 3 A65 Average Choice 3.235 3
}

func ExampleNewReader() {
	_, err := sheet.NewReader(strings.NewReader("id,fat_in,fat_mm,kph_pct,ribeye_sq_in,weight_lb\n"))
	fmt.Println(err)
	_, err = sheet.NewReader(strings.NewReader("id,ribeye_sq_in,weight_lb\n"))
	fmt.Println(err)
	// Output:
	// line 1, column 3 (fat_mm): fat: fat_mm: repeated; allowed: one column for fat; column 2 is fat_in
	// line 1 (fat_in): fat: missing; allowed: fat, ribeye, KPH and weight together or none of them; line 1 (kph_pct): KPH: missing; allowed: fat, ribeye, KPH and weight together or none of them
}

// Columns that the package does not know are kept when the caller asks for it.
func ExampleOptions_NewReader() {
	in := "pen;id;sex;note\n4;17;steer;bruise on the round\n"
	r, err := sheet.Options{Comma: ';', Extra: true}.NewReader(strings.NewReader(in))
	fmt.Println(r.Extra(), err)
	for row, err := range r.Rows() {
		fmt.Println(row.ID, row.Carcass.Sex, row.Extra, err)
	}
	// Output:
	// [pen note] <nil>
	// 17 steer [4 bruise on the round] <nil>
}

func ExampleReader_Extra() {
	r, err := sheet.Options{Extra: true}.NewReader(strings.NewReader("pen,id,note\n"))
	fmt.Println(r.Extra(), err)
	// Output: [pen note] <nil>
}

// An empty cell leaves a field unset, and metric columns are read as such.
func ExampleReader_Rows() {
	in := "id,marbling,fat_mm,ribeye_sq_cm,kph_pct,weight_kg\n1,Sm40,11.43,80,2.5,372\n2,Mt10,,,,\n"
	r, err := sheet.NewReader(strings.NewReader(in))
	if err != nil {
		fmt.Println(err)
		return
	}
	for row, err := range r.Rows() {
		c := row.Carcass
		fmt.Println(row.Line, row.ID, c.Marbling, c.Measures.Fat, c.Measures.Ribeye, c.Measures.Weight, err)
	}
	// Output:
	// 2 1 Sm40 0.45 in 12.4 sq in 820.1196 lb <nil>
	// 3 2 Mt10 0 in 0 sq in 0 lb <nil>
}

// The errors of grading have line and column too.
func ExampleReader_Grade() {
	in := "id,sex,skeletal,lean,marbling,fat_in,ribeye_sq_in,kph_pct,weight_lb\n1,,A60,A50,Sm40,0.45,12.4,2.5,820\n"
	r, err := sheet.NewReader(strings.NewReader(in))
	if err != nil {
		fmt.Println(err)
		return
	}
	for g, err := range r.Grade(grade.Rules{Edition: grade.Current}) {
		fmt.Println(g.ID, err)
	}
	// Output:
	// 1 line 2, column 2 (sex): sex class: missing; allowed: steer, heifer, cow, bullock, bull
}

func ExampleError() {
	r, err := sheet.NewReader(strings.NewReader("id,marbling,teeth\n1,Sm4,12\n"))
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, err := range r.Rows() {
		var e *sheet.Error
		if errors.As(err, &e) {
			fmt.Println(e.Line, e.Column, e.Name, len(e.More))
		}
		var fe *grade.FieldError
		if errors.As(err, &fe) {
			fmt.Println(fe.Field, fe.Value, fe.Allowed, errors.Is(err, grade.ErrSyntax))
		}
		fmt.Println(err.Error())
		fmt.Println(e.Unwrap() == fe)
	}
	// Output:
	// 2 2 marbling 1
	// marbling Sm4 Devoid00 to Ab100 true
	// line 2, column 2 (marbling): marbling: Sm4: bad syntax; allowed: Devoid00 to Ab100; line 2, column 3 (teeth): teeth: 12: out of range; allowed: the count of permanent incisors, 0 to 8
	// true
}

func ExampleNewWriter() {
	w, err := sheet.NewWriter(os.Stdout, "pen")
	if err != nil {
		fmt.Println(err)
		return
	}
	row := sheet.Row{ID: "1", Carcass: grade.Carcass{
		Sex:      grade.Steer,
		Maturity: maturity.Evidence{Skeletal: maturity.A.At(60), Lean: maturity.A.At(50)},
		Marbling: grade.Small.At(40),
		Measures: grade.Measures{Fat: grade.Inches(0.45), Ribeye: grade.SquareInches(12.4), KPH: grade.Percent(2.5), Weight: grade.Pounds(820)},
	}, Extra: []string{"4, north"}}
	if err := w.Write(row); err != nil {
		fmt.Println(err)
	}
	row.Carcass.Measures.Fat = grade.Inches(-0.1)
	if err := w.Write(row); err != nil {
		fmt.Println(err)
	}
	if err := w.Flush(); err != nil {
		fmt.Println(err)
	}
	// Output:
	// line 3, column 11 (fat_in): fat: -0.1 in: out of range; allowed: 0 in to 3 in
	// id,sex,skeletal,lean,teeth,papers_months,marbling,firmness,dark,below_cutter,fat_in,fat_adjust_in,ribeye_sq_in,kph_pct,weight_lb,pen
	// 1,steer,A60,A50,,,Sm40,,,,0.45,,12.4,2.5,820,"4, north"
}

func ExampleOptions_NewWriter() {
	w, err := sheet.Options{Comma: '\t'}.NewWriter(os.Stdout, "id")
	fmt.Println(w, err)
	// Output: <nil> line 1, column 16 (id): column: id: repeated; allowed: each column once
}

// Write gives the rows to the output in larger pieces; Flush gives it the rest.
func ExampleWriter_Write() {
	w, err := sheet.Options{Comma: ';'}.NewWriter(os.Stdout)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(w.Write(sheet.Row{ID: "a;b"}))
	fmt.Println(w.Flush())
	// Output:
	// <nil>
	// id;sex;skeletal;lean;teeth;papers_months;marbling;firmness;dark;below_cutter;fat_in;fat_adjust_in;ribeye_sq_in;kph_pct;weight_lb
	// "a;b";;;;;;;;;;;;;;
	// <nil>
}

func ExampleWriter_Flush() {
	w, err := sheet.NewWriter(os.Stdout)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(w.Flush()) // a sheet without rows has its header
	// Output:
	// id,sex,skeletal,lean,teeth,papers_months,marbling,firmness,dark,below_cutter,fat_in,fat_adjust_in,ribeye_sq_in,kph_pct,weight_lb
	// <nil>
}

func ExampleNewGradedWriter() {
	w, err := sheet.NewGradedWriter(os.Stdout)
	if err != nil {
		fmt.Println(err)
		return
	}
	a, err := grade.Current.Assess(grade.Carcass{
		Sex:      grade.Steer,
		Maturity: maturity.Evidence{Skeletal: maturity.A.At(60), Lean: maturity.A.At(50)},
		Marbling: grade.Small.At(40),
		Measures: grade.Measures{Fat: grade.Inches(0.45), Ribeye: grade.SquareInches(12.4), KPH: grade.Percent(2.5), Weight: grade.Pounds(820)},
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	if err := w.Write(sheet.Graded{ID: "1", Assessment: a}); err != nil {
		fmt.Println(err)
	}
	if err := w.Flush(); err != nil {
		fmt.Println(err)
	}
	// Output:
	// id,sex,skeletal,lean,teeth,papers_months,marbling,firmness,dark,below_cutter,fat_in,fat_adjust_in,ribeye_sq_in,kph_pct,weight_lb,overall,quality,yield,yield_grade,tier
	// 1,steer,A60,A50,,,Sm40,,,,0.45,,12.4,2.5,820,A55,Low Choice,3.273,3,low choice
}

// A semicolon as divider and a column for the pen.
func ExampleOptions_NewGradedWriter() {
	w, err := sheet.Options{Comma: ';'}.NewGradedWriter(os.Stdout, "pen")
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(w.Flush())
	// Output:
	// id;sex;skeletal;lean;teeth;papers_months;marbling;firmness;dark;below_cutter;fat_in;fat_adjust_in;ribeye_sq_in;kph_pct;weight_lb;overall;quality;yield;yield_grade;tier;pen
	// <nil>
}

// An assessment that was not made by package grade is not written.
func ExampleGradedWriter_Write() {
	w, err := sheet.NewGradedWriter(os.Stdout)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(w.Write(sheet.Graded{ID: "1"}))
	// Output: line 2: assessment: missing; allowed: one with overall maturity and quality
}

func ExampleGradedWriter_Flush() {
	w, err := sheet.NewGradedWriter(os.Stdout)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(w.Flush())
	// Output:
	// id,sex,skeletal,lean,teeth,papers_months,marbling,firmness,dark,below_cutter,fat_in,fat_adjust_in,ribeye_sq_in,kph_pct,weight_lb,overall,quality,yield,yield_grade,tier
	// <nil>
}

func ExampleColumns() {
	for c := range sheet.Columns() {
		if c.Unit != "" {
			fmt.Printf("%s: %s, in %s\n", c.Name, c.Field, c.Unit)
		}
	}
	// Output:
	// papers_months: papers, in months
	// fat_in: fat, in in
	// fat_mm: fat, in mm
	// fat_cm: fat, in cm
	// fat_adjust_in: fat adjustment, in in
	// fat_adjust_mm: fat adjustment, in mm
	// fat_adjust_cm: fat adjustment, in cm
	// ribeye_sq_in: ribeye, in sq in
	// ribeye_sq_cm: ribeye, in sq cm
	// kph_pct: KPH, in %
	// weight_lb: weight, in lb
	// weight_kg: weight, in kg
}

// A row goes out and comes back as it was; its line is where it stood.
func ExampleRow() {
	row := sheet.Row{ID: "17", Carcass: grade.Carcass{Sex: grade.Heifer, Marbling: grade.Modest.At(10)}}
	var text strings.Builder
	w, err := sheet.NewWriter(&text)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(w.Write(row), w.Flush())
	r, err := sheet.NewReader(strings.NewReader(text.String()))
	if err != nil {
		fmt.Println(err)
		return
	}
	for back, err := range r.Rows() {
		fmt.Println(back.Line, back.ID, back.Carcass == row.Carcass, err)
	}
	// Output:
	// <nil> <nil>
	// 2 17 true <nil>
}

// Rows can be read for a while and graded from there on.
func ExampleReader() {
	in := "id,sex,skeletal,lean,marbling,fat_in,ribeye_sq_in,kph_pct,weight_lb\n1,steer,A60,A50,Sm40,0.45,12.4,2.5,820\n2,cow,D10,C50,Mt60,0.5,11.2,3,760\n"
	r, err := sheet.NewReader(strings.NewReader(in))
	if err != nil {
		fmt.Println(err)
		return
	}
	for row, err := range r.Rows() {
		fmt.Println(row.ID, row.Carcass.Sex, row.Carcass.Marbling, err)
		break
	}
	for g, err := range r.Grade(grade.Rules{Edition: grade.Current}) {
		fmt.Println(g.ID, g.Assessment.Quality, err)
	}
	// Output:
	// 1 steer Sm40 <nil>
	// 2 Low Commercial <nil>
}

func ExampleGraded() {
	a, err := grade.Current.Assess(grade.Carcass{
		Sex:      grade.Steer,
		Maturity: maturity.Evidence{Skeletal: maturity.A.At(60), Lean: maturity.A.At(50)},
		Marbling: grade.Small.At(40),
		Measures: grade.Measures{Fat: grade.Inches(0.45), Ribeye: grade.SquareInches(12.4), KPH: grade.Percent(2.5), Weight: grade.Pounds(820)},
	})
	g := sheet.Graded{ID: "1", Assessment: a}
	fmt.Println(g.ID, g.Assessment.Quality, g.Assessment.Yield.Grade(), err)
	// Output: 1 Low Choice 3 <nil>
}

// The exhibits of a class of two, with the pen in a column of its own.
func ExampleWriter() {
	w, err := sheet.NewWriter(os.Stdout, "pen")
	if err != nil {
		fmt.Println(err)
		return
	}
	for i, m := range []grade.Marbling{grade.Small.At(40), grade.Slight.At(90)} {
		row := sheet.Row{ID: fmt.Sprint(i + 1), Carcass: grade.Carcass{Sex: grade.Steer, Marbling: m}, Extra: []string{"north"}}
		if err := w.Write(row); err != nil {
			fmt.Println(err)
		}
	}
	if err := w.Flush(); err != nil {
		fmt.Println(err)
	}
	// Output:
	// id,sex,skeletal,lean,teeth,papers_months,marbling,firmness,dark,below_cutter,fat_in,fat_adjust_in,ribeye_sq_in,kph_pct,weight_lb,pen
	// 1,steer,,,,,Sm40,,,,,,,,,north
	// 2,steer,,,,,Sl90,,,,,,,,,north
}

// A sheet is read, graded and written in one pass, whatever its size.
func ExampleGradedWriter() {
	in := "pen;id;sex;skeletal;lean;marbling;fat_mm;ribeye_sq_cm;kph_pct;weight_kg\nnorth;1;steer;A60;A50;Sm40;11.43;80;2.5;372\n"
	o := sheet.Options{Comma: ';', Extra: true}
	r, err := o.NewReader(strings.NewReader(in))
	if err != nil {
		fmt.Println(err)
		return
	}
	w, err := sheet.NewGradedWriter(os.Stdout, r.Extra()...)
	if err != nil {
		fmt.Println(err)
		return
	}
	for g, err := range r.Grade(grade.Rules{Edition: grade.Current}) {
		if err == nil {
			err = w.Write(g)
		}
		if err != nil {
			fmt.Println(err)
		}
	}
	if err := w.Flush(); err != nil {
		fmt.Println(err)
	}
	// Output:
	// id,sex,skeletal,lean,teeth,papers_months,marbling,firmness,dark,below_cutter,fat_in,fat_adjust_in,ribeye_sq_in,kph_pct,weight_lb,overall,quality,yield,yield_grade,tier,pen
	// 1,steer,A60,A50,,,Sm40,,,,0.45,,12.4,2.5,820.1196,A55,Low Choice,3.27345448,3,low choice,north
}

// A column that is not known is refused unless the caller wants to keep it.
func ExampleOptions() {
	in := "id,pen\n1,north\n"
	for _, o := range []sheet.Options{{}, {Extra: true}} {
		r, err := o.NewReader(strings.NewReader(in))
		if err != nil {
			var fe *grade.FieldError
			fmt.Println(errors.As(err, &fe), fe.Value, fe.Err)
			continue
		}
		fmt.Println(r.Extra())
	}
	// Output:
	// true pen unknown
	// [pen]
}

func ExampleColumn() {
	for c := range sheet.Columns() {
		if c.Field == "ribeye" {
			fmt.Printf("%s holds %s\n", c.Name, c.Allowed)
		}
	}
	// Output:
	// ribeye_sq_in holds a number with at most 4 places, over 0 to 25 sq in
	// ribeye_sq_cm holds a number with at most 4 places, over 0 to 25 sq in (161.29 sq cm)
}
