package sheet_test

import (
	"bytes"
	"context"
	"encoding/csv"
	"errors"
	"io"
	"runtime"
	"strconv"
	"strings"
	"testing"
	"testing/iotest"

	"example.com/ribface/grade"
	"example.com/ribface/grade/sheet"
	"example.com/ribface/internal/testkit"
	"example.com/ribface/internal/testkit/faulttest"
	"example.com/ribface/maturity"
	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

const full = "id,sex,skeletal,lean,teeth,papers_months,marbling,firmness,dark,below_cutter,fat_in,fat_adjust_in,ribeye_sq_in,kph_pct,weight_lb,assumed,color,texture,buttons\n"

// good is the row of most tests, and steer its carcass.
const good = "1,steer,A60,A50,,,Sm40,,,,0.45,,12.4,2.5,820,,,,\n"

var steer = grade.Carcass{
	Sex:      grade.Steer,
	Maturity: maturity.Evidence{Skeletal: maturity.A.At(60), Lean: maturity.A.At(50)},
	Marbling: grade.Small.At(40),
	Measures: grade.Measures{Fat: grade.Inches(0.45), Ribeye: grade.SquareInches(12.4), KPH: grade.Percent(2.5), Weight: grade.Pounds(820)},
}

var rules = grade.Rules{Edition: grade.Current}

// open reads a header that is good.
func open(t testing.TB, m sheet.Mapping, text string) *sheet.Reader {
	t.Helper()
	r, err := m.NewReader("", strings.NewReader(text))
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// read gives the rows of a sheet and the text of every error.
func read(t testing.TB, m sheet.Mapping, text string) (rows []sheet.Row, errs []string) {
	t.Helper()
	for row, err := range open(t, m, text).Rows() {
		if err != nil {
			errs = append(errs, err.Error())
			if row.Carcass != (grade.Carcass{}) || row.Extra != nil {
				t.Errorf("a bad row has a carcass or extra cells: %+v", row)
			}
			continue
		}
		rows = append(rows, row)
	}
	return rows, errs
}

// one reads the only row of a sheet with the two lines.
func one(t testing.TB, m sheet.Mapping, header, row string) grade.Carcass {
	t.Helper()
	rows, errs := read(t, m, header+"\n"+row+"\n")
	if len(rows) != 1 || errs != nil {
		t.Fatalf("%q: %d rows, %q", row, len(rows), errs)
	}
	return rows[0].Carcass
}

func TestReadForm(t *testing.T) {
	heifer := grade.Carcass{Sex: grade.Heifer}
	tests := []struct {
		name, reason, text string
		mapping            sheet.Mapping
		want               []sheet.Row
	}{
		{"usual", "the example of the package documentation", "id,sex,skeletal,lean,marbling,fat_in,ribeye_sq_in,kph_pct,weight_lb\n1,steer,A60,A50,Sm40,0.45,12.4,2.5,820\n", sheet.Mapping{}, []sheet.Row{{Line: 2, ID: "1", Carcass: steer}}},
		{"any order and case", "columns may stand in any order, headings in any case", "Weight_LB,marbling,KPH pct,ribeye_sq_in,fat_in,lean,skeletal,SEX\n820,small 40,2.50,12.4000,.45,A50,A60,Steer\n", sheet.Mapping{}, []sheet.Row{{Line: 2, Carcass: steer}}},
		{"every field", "all columns filled", full + "x 1,cow,C20,B90,8,600,Md00,slightly firm,two thirds,yes,0,0.2,25,10,1800,maturity kph,light cherry red,fine,10% ossified\n", sheet.Mapping{}, []sheet.Row{{Line: 2, ID: "x 1", Assumed: sheet.AssumedMaturity | sheet.AssumedKPH, Carcass: grade.Carcass{
			Sex:      grade.Cow,
			Maturity: maturity.Evidence{Skeletal: maturity.C.At(20), Lean: maturity.B.At(90), Teeth: maturity.Incisors(8), Papers: 600, Buttons: maturity.Ossified(10)},
			Marbling: grade.Moderate.At(0), Lean: grade.Lean{Firmness: grade.SlightlyFirm, Dark: grade.DarkTwoThirds, Color: grade.LightCherryRed, Texture: grade.Fine, BelowCutter: true},
			Measures:  grade.Measures{Fat: grade.Inches(0), Ribeye: grade.SquareInches(25), KPH: grade.Percent(10), Weight: grade.Pounds(1800)},
			FatAdjust: grade.Inches(0.2),
		}}}},
		{"no measure is no zero", "an empty cell is not taken", "fat_in,weight_lb\n,820\n0,\n", sheet.Mapping{}, []sheet.Row{{Line: 2, Carcass: grade.Carcass{Measures: grade.Measures{Weight: grade.Pounds(820)}}}, {Line: 3, Carcass: grade.Carcass{Measures: grade.Measures{Fat: grade.Inches(0)}}}}},
		{"no defect", "none and no are the zero values, no permanent incisors is not", full + ",,,,0,1,,,none,no,,,,,,,,,\n", sheet.Mapping{}, []sheet.Row{{Line: 2, Carcass: grade.Carcass{Maturity: maturity.Evidence{Teeth: maturity.Incisors(0), Papers: 1}}}}},
		{"overall maturity", "one maturity stands for both", "maturity\nB10\n", sheet.Mapping{}, []sheet.Row{{Line: 2, Carcass: grade.Carcass{Maturity: maturity.Evidence{Skeletal: maturity.B.At(10), Lean: maturity.B.At(10)}}}}},
		{"blank lines and line ends", "lines of nothing are skipped and counted, the last line needs no end", "id,sex\r\n\r\n7,\r\n ,\t\n\n8,", sheet.Mapping{}, []sheet.Row{{Line: 3, ID: "7"}, {Line: 6, ID: "8"}}},
		{"byte order mark", "spreadsheets put one in front", "\uFEFFid\n7\n", sheet.Mapping{}, []sheet.Row{{Line: 2, ID: "7"}}},
		{"quotes", "a cell with the comma stands in quotes, also after a byte order mark", "\uFEFF\"id\",\"sex\"\n\"pen 3, \"\"red\"\"\",\"heifer\"\n", sheet.Mapping{}, []sheet.Row{{Line: 2, ID: `pen 3, "red"`, Carcass: heifer}}},
		{"semicolon", "another separator, for which a comma is text", "id;sex\na,b;heifer\n\"a;b\";\n", sheet.Mapping{Separator: ";"}, []sheet.Row{{Line: 2, ID: "a,b", Carcass: heifer}, {Line: 3, ID: "a;b"}}},
		{"tab", "another separator", "id\tsex\n1\theifer\n", sheet.Mapping{Separator: "\t"}, []sheet.Row{{Line: 2, ID: "1", Carcass: heifer}}},
		{"bar", "another separator", "id|sex\n1|heifer\n", sheet.Mapping{Separator: "|"}, []sheet.Row{{Line: 2, ID: "1", Carcass: heifer}}},
		{"cells too many", "empty ones after the last column are left out", "id,sex\n1,heifer,, \n", sheet.Mapping{}, []sheet.Row{{Line: 2, ID: "1", Carcass: heifer}}},
		{"extra columns", "kept as they stand, in order", "pen,id,note\n 4,1,\"a \"\"b\"\"\"\n,2,\n", sheet.Mapping{}, []sheet.Row{{Line: 2, ID: "1", Extra: []string{" 4", `a "b"`}}, {Line: 3, ID: "2", Extra: []string{"", ""}}}},
		{"mapped", "headings of the sheet", "Sex; Tag ;REA\nH;1;80,0\n", sheet.Mapping{Separator: ";", Decimal: ",", Columns: map[string]string{"rea": "ribeye_sq_cm", "TAG": "id"}}, []sheet.Row{{Line: 2, ID: "1", Extra: []string{"H"}, Carcass: grade.Carcass{Measures: grade.Measures{Ribeye: grade.SquareCentimeters(80)}}}}},
		{"header alone", "a sheet without rows", "id\n", sheet.Mapping{}, nil},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			rows, errs := read(t, tt.mapping, tt.text)
			if errs != nil {
				t.Errorf("errors: %q", errs)
			}
			if d := cmp.Diff(tt.want, rows); d != "" {
				t.Errorf("%s (-want +got):\n%s", tt.reason, d)
			}
		})
	}
}

// TestCells holds the spellings of a cell that have one meaning.
func TestCells(t *testing.T) {
	comma := sheet.Mapping{Decimal: ","}
	numbers := sheet.Mapping{Marbling: grade.Slight400, Maturity: sheet.MaturityNumbers}
	rounded := sheet.Mapping{Surplus: grade.HalfEven, Marbling: grade.Slight300, Maturity: sheet.MaturityNumbers}
	fat := func(v grade.Thickness) grade.Carcass { return grade.Carcass{Measures: grade.Measures{Fat: v}} }
	ribeye := func(v grade.Area) grade.Carcass { return grade.Carcass{Measures: grade.Measures{Ribeye: v}} }
	kph := func(v grade.Share) grade.Carcass { return grade.Carcass{Measures: grade.Measures{KPH: v}} }
	weight := func(v grade.Weight) grade.Carcass { return grade.Carcass{Measures: grade.Measures{Weight: v}} }
	bone := func(v maturity.Score) grade.Carcass {
		return grade.Carcass{Maturity: maturity.Evidence{Skeletal: v}}
	}
	marbled := func(v grade.Marbling) grade.Carcass { return grade.Carcass{Marbling: v} }
	tests := []struct {
		column, cell string
		mapping      sheet.Mapping
		want         grade.Carcass
	}{
		{"fat_in", " 0.52 ", sheet.Mapping{}, fat(grade.Inches(0.52))},
		{"fat_in", ".45", sheet.Mapping{}, fat(grade.Inches(0.45))},
		{"fat_in", "+0.1", sheet.Mapping{}, fat(grade.Inches(0.1))},
		{"fat_in", "4.5E-01", sheet.Mapping{}, fat(grade.Inches(0.45))},
		{"fat_in", "0.4500000", sheet.Mapping{}, fat(grade.Inches(0.45))},
		{"fat_in", "0.45 in", sheet.Mapping{}, fat(grade.Inches(0.45))},
		{"fat_in", "0 in", sheet.Mapping{}, fat(grade.Inches(0))}, // the ends of the limits, the slower way
		{"fat_in", "3 in", sheet.Mapping{}, fat(grade.Inches(3))},
		{"fat_in", "\u00a00.45", sheet.Mapping{}, fat(grade.Inches(0.45))},
		{"fat_in", "0.76000000000000301", rounded, fat(grade.Inches(0.76))},
		{"fat_in", "0,45", comma, fat(grade.Inches(0.45))},
		{"fat_in", ",45", comma, fat(grade.Inches(0.45))},
		{"fat_in", "1", comma, fat(grade.Inches(1))},
		{"fat_mm", "11.43", sheet.Mapping{}, fat(grade.Inches(0.45))},
		{"fat_mm", "11,43", comma, fat(grade.Inches(0.45))},
		{"fat_mm", "11.43210001", sheet.Mapping{}, fat(grade.ThicknessUnits(4501))}, // 11.4321 mm is 0.45008 in
		{"fat_cm", "1.143", sheet.Mapping{}, fat(grade.Inches(0.45))},
		{"fat_cm", "11.43mm", sheet.Mapping{}, fat(grade.Inches(0.45))}, // a cell's own unit is the nearer one
		{"fat_adjust_in", "-0.1", sheet.Mapping{}, grade.Carcass{FatAdjust: grade.Inches(-0.1)}},
		{"fat_adjust_mm", "2.54", sheet.Mapping{}, grade.Carcass{FatAdjust: grade.Inches(0.1)}},
		{"fat_adjust_cm", "0.254", sheet.Mapping{}, grade.Carcass{FatAdjust: grade.Inches(0.1)}},
		{"ribeye_sq_in", "12.", sheet.Mapping{}, ribeye(grade.SquareInches(12))},
		{"ribeye_sq_cm", "79.9998", sheet.Mapping{}, ribeye(grade.SquareInches(12.4))}, // 12.39999 sq in
		{"kph_pct", "2.5%", sheet.Mapping{}, kph(grade.Percent(2.5))},
		{"kph_pct", "2,5 %", comma, kph(grade.Percent(2.5))},
		{"weight_lb", "820.", sheet.Mapping{}, weight(grade.Pounds(820))},
		{"weight_lb", "1,020", sheet.Mapping{}, weight(grade.Pounds(1020))},
		{"weight_lb", "1,020.5", sheet.Mapping{}, weight(grade.Pounds(1020.5))},
		{"weight_lb", "1 020", sheet.Mapping{}, weight(grade.Pounds(1020))},
		{"weight_lb", "1'020", sheet.Mapping{}, weight(grade.Pounds(1020))},
		{"weight_lb", "1,020 lb", sheet.Mapping{}, weight(grade.Pounds(1020))},
		{"weight_lb", "1.020,5", comma, weight(grade.Pounds(1020.5))},
		{"weight_lb", "+1.020", comma, weight(grade.Pounds(1020))},
		{"weight_kg", "372", sheet.Mapping{}, weight(grade.Pounds(820.1196))}, // 820.11961 lb
		{"marbling", "small 40", sheet.Mapping{}, marbled(grade.Small.At(40))},
		{"marbling", "SLAB 80", sheet.Mapping{}, marbled(grade.SlightlyAbundant.At(80))},
		{"marbling", "Moderately Abundant 0", sheet.Mapping{}, marbled(grade.ModeratelyAbundant.At(0))},
		{"marbling", "540", numbers, marbled(grade.Small.At(40))},
		{"marbling", "540.0", numbers, marbled(grade.Small.At(40))},
		{"marbling", "5.4E+02", numbers, marbled(grade.Small.At(40))},
		{"marbling", "Sm40", numbers, marbled(grade.Small.At(40))},
		{"marbling", "439.99999999", rounded, marbled(grade.Small.At(40))},
		{"skeletal", "A60", sheet.Mapping{}, bone(maturity.A.At(60))},
		{"skeletal", "a 60", sheet.Mapping{}, bone(maturity.A.At(60))},
		{"skeletal", "E100", sheet.Mapping{}, bone(maturity.E.At(100))},
		{"skeletal", "160", numbers, bone(maturity.A.At(60))},
		{"skeletal", "600", numbers, bone(maturity.E.At(100))},
		{"skeletal", "A60", numbers, bone(maturity.A.At(60))},
		{"skeletal", "B", sheet.Mapping{Maturity: sheet.LetterAt(50)}, bone(maturity.B.At(50))},
		{"skeletal", "b", sheet.Mapping{Maturity: sheet.LetterAt(0)}, bone(maturity.B.At(0))},
		{"sex", "S", sheet.Mapping{}, grade.Carcass{Sex: grade.Steer}},
		{"sex", "hfr", sheet.Mapping{}, grade.Carcass{Sex: grade.Heifer}},
		{"sex", "cow", sheet.Mapping{}, grade.Carcass{Sex: grade.Cow}},
		{"sex", "BULLOCK", sheet.Mapping{}, grade.Carcass{Sex: grade.Bullock}},
		{"teeth", "2.0", sheet.Mapping{}, grade.Carcass{Maturity: maturity.Evidence{Teeth: maturity.Incisors(2)}}},
		{"papers_months", "14", sheet.Mapping{}, grade.Carcass{Maturity: maturity.Evidence{Papers: 14}}},
		{"firmness", "Slightly Firm", sheet.Mapping{}, grade.Carcass{Lean: grade.Lean{Firmness: grade.SlightlyFirm}}},
		{"dark", "2/3", sheet.Mapping{}, grade.Carcass{Lean: grade.Lean{Dark: grade.DarkTwoThirds}}},
		{"dark", "Full", sheet.Mapping{}, grade.Carcass{Lean: grade.Lean{Dark: grade.DarkFull}}},
		{"dark", "No", sheet.Mapping{}, grade.Carcass{}},
		{"below_cutter", "Y", sheet.Mapping{}, grade.Carcass{Lean: grade.Lean{BelowCutter: true}}},
		{"fat_in", "\u00a0", sheet.Mapping{}, grade.Carcass{}}, // a blank that no break parts says nothing
		{"fat_in", "na", sheet.Mapping{Missing: []string{".", " NA"}}, grade.Carcass{}},
	}
	for _, tt := range tests {
		t.Run(tt.column+" "+tt.cell, func(t *testing.T) {
			got := one(t, tt.mapping, "id,"+tt.column, `1,"`+tt.cell+`"`)
			if d := cmp.Diff(tt.want, got); d != "" {
				t.Errorf("(-want +got):\n%s", d)
			}
		})
	}
}

// TestBadCells holds what a cell gets that cannot be read; the row after it counts.
func TestBadCells(t *testing.T) {
	comma := sheet.Mapping{Decimal: ","}
	numbers := sheet.Mapping{Marbling: grade.Slight400, Maturity: sheet.MaturityNumbers}
	const fat, sex, age = "; allowed: a number, 0 in to 3 in", "; allowed: steer, heifer, cow, bullock, bull; S, H or C", "; allowed: A00 to E100"
	const marbling = "; allowed: Devoid00 to Ab100, or a number where the mapping names its scale"
	tests := []struct {
		column, cell string
		mapping      sheet.Mapping
		want         string // after the column
	}{
		{"sex", "ox", sheet.Mapping{}, "sex class: ox: unknown" + sex},
		{"sex", "B", sheet.Mapping{}, "sex class: B: unknown" + sex},
		{"skeletal", "F10", sheet.Mapping{}, "skeletal maturity: F10: unknown" + age},
		{"skeletal", "Ax5", sheet.Mapping{}, "skeletal maturity: Ax5: unknown" + age},
		{"skeletal", "A5x", sheet.Mapping{}, "skeletal maturity: A5x: unknown" + age},
		{"skeletal", "A", sheet.Mapping{}, "skeletal maturity: A: bad syntax" + age},
		{"skeletal", "160", sheet.Mapping{}, "skeletal maturity: 160: bad syntax" + age},
		{"skeletal", "99", numbers, "skeletal maturity: 99: out of range" + age},
		{"skeletal", "1600000000", numbers, "skeletal maturity: 1600000000: out of range" + age},
		{"skeletal", "160.5", numbers, "skeletal maturity: 160.5: too many places" + age},
		{"skeletal", "1-0", numbers, "skeletal maturity: 1-0: bad syntax" + age},
		{"skeletal", "F", sheet.Mapping{Maturity: sheet.LetterAt(50)}, "skeletal maturity: F: unknown" + age},
		{"maturity", "x", sheet.Mapping{}, "overall maturity: x: unknown; allowed: A00 to E100, for skeletal and lean alike"},
		{"teeth", "9", sheet.Mapping{}, "teeth: 9: out of range; allowed: the count of permanent incisors, 0 to 8"},
		{"teeth", "two", sheet.Mapping{}, "teeth: two: bad syntax; allowed: the count of permanent incisors, 0 to 8"},
		{"papers_months", "0", sheet.Mapping{}, "papers: 0: out of range; allowed: whole months, 1 to 600"},
		{"papers_months", "65566", sheet.Mapping{}, "papers: 65566: out of range; allowed: whole months, 1 to 600"},
		{"marbling", "Xx40", sheet.Mapping{}, "marbling: Xx40: unknown" + marbling},
		{"marbling", "400", sheet.Mapping{}, "marbling: 400: bad syntax" + marbling},
		{"marbling", "40x", numbers, "marbling: 40x: bad syntax" + marbling},
		{"marbling", "1101", numbers, "marbling: 1101: out of range" + marbling},
		{"firmness", "hard", sheet.Mapping{}, "firmness: hard: unknown; allowed: very soft, soft, moderately soft, slightly soft, slightly firm, moderately firm, firm"},
		{"dark", "yes", sheet.Mapping{}, "dark cut: yes: unknown; allowed: none, one third, two thirds, full; 1/3, 2/3"},
		{"below_cutter", "true", sheet.Mapping{}, "below Cutter: true: unknown; allowed: yes, no"},
		{"fat_in", "3.0001", sheet.Mapping{}, "fat: 3.0001: out of range" + fat},
		{"fat_in", "-0.0001", sheet.Mapping{}, "fat: -0.0001: out of range" + fat},
		{"fat_in", "0.45001", sheet.Mapping{}, "fat: 0.45001: too many places" + fat},
		{"fat_in", "429496.7296", sheet.Mapping{}, "fat: 429496.7296: out of range" + fat},
		{"fat_in", "0.45 sq in", sheet.Mapping{}, "fat: 0.45 sq in: unknown" + fat},
		{"fat_in", "0,45", sheet.Mapping{}, "fat: 0,45: bad syntax" + fat},
		{"fat_in", "0,450", sheet.Mapping{}, "fat: 0,450: bad syntax" + fat},
		{"fat_in", "0.45", comma, "fat: 0.45: bad syntax" + fat},
		{"fat_in", "0,4.5", comma, "fat: 0,4.5: bad syntax" + fat},
		{"fat_in", "x", sheet.Mapping{}, "fat: x: bad syntax" + fat},
		{"fat_mm", "76.3", sheet.Mapping{}, "fat: 76.3: out of range" + fat},
		{"fat_adjust_in", "-3.0001", sheet.Mapping{}, "fat adjustment: -3.0001: out of range; allowed: a number, -3 in to 3 in, leaving the fat 0 in to 3 in"},
		{"ribeye_sq_in", "0", sheet.Mapping{}, "ribeye: 0: out of range; allowed: a number, 1 sq in to 25 sq in"},
		{"kph_pct", "10.0001", sheet.Mapping{}, "KPH: 10.0001: out of range; allowed: a number, 0% to 10%"},
		{"weight_lb", "9", sheet.Mapping{}, "weight: 9: out of range; allowed: a number, 100 lb to 1800 lb"},
		{"weight_lb", "10,20", sheet.Mapping{}, "weight: 10,20: bad syntax; allowed: a number, 100 lb to 1800 lb"},
		{"assumed", "feet", sheet.Mapping{}, "assumed: feet: unknown; allowed: sex, maturity, kph, weight: what was assumed and not seen"},
		{"sex", strings.Repeat("x", 65), sheet.Mapping{}, "sex class: " + strings.Repeat("x", 64) + ": unknown" + sex},
		{"sex", "\x01\xff", sheet.Mapping{}, `sex class: "\x01\xff": unknown` + sex},
	}
	for _, tt := range tests {
		t.Run(tt.column+" "+tt.cell, func(t *testing.T) {
			rows, errs := read(t, tt.mapping, "id,"+tt.column+"\n1,\""+tt.cell+"\"\n2,\n")
			if d := cmp.Diff([]string{"line 2, id 1, column 2 (" + tt.column + "): " + tt.want}, errs); d != "" {
				t.Errorf("(-want +got):\n%s", d)
			}
			if len(rows) != 1 || rows[0].ID != "2" {
				t.Errorf("the row after it: %+v", rows)
			}
		})
	}
}

func TestGrade(t *testing.T) {
	in := "note,id,sex,skeletal,lean,teeth,marbling,firmness,fat_mm,fat_adjust_in,ribeye_sq_in,kph_pct,weight_lb\n" +
		"a,1,steer,A60,A50,,Sm40,,11.43,,12.4,2.5,820\n" +
		"b,2,,A60,A50,,Sm40,,11.43,,12.4,2.5,820\n" +
		"c,3,steer,A60,,3,Sm40,,11.43,,12.4,2.5,820\n" +
		"d,4,steer,A60,A50,,Sm40,,,,,,\n" +
		"e,5,ox,A60,A50,,Sm4,,11.43,-2,12.4,,820\n" +
		"f,6,bull,A60,A50,,Sm40,,11.43,,12.4,2.5,820\n" +
		"g,7,steer,A60,A50,,Sm40,,11.43,-0.46,12.4,2.5,820\n" +
		"h,6,heifer,A60,A50,,Sm40,,11.43,0.1,12.4,0.025,372\n"
	r, err := sheet.Mapping{}.NewReader("lot.csv", strings.NewReader(in))
	if err != nil {
		t.Fatal(err)
	}
	var out strings.Builder
	w, err := sheet.NewGradedWriter(&out, r.Extra()...)
	if err != nil {
		t.Fatal(err)
	}
	var errs []string
	var notes []sheet.Flag
	for g, err := range r.Grade(context.Background(), rules) {
		if err != nil {
			errs = append(errs, err.Error())
			if g.Assessment != (grade.Assessment{}) || g.Line == 0 || g.ID == "" || g.Extra != nil {
				t.Errorf("a bad row is more than its line and id: %+v", g)
			}
			continue
		}
		notes = append(notes, g.Flags...)
		if err := w.Write(g); err != nil {
			t.Fatal(err)
		}
	}
	if err := w.Flush(); err != nil {
		t.Fatal(err)
	}
	wantErrs := []string{
		"lot.csv, line 3, id 2, column 3 (sex): sex class: missing; allowed: steer, heifer, cow, bullock, bull",
		"lot.csv, line 4, id 3, column 5 (lean): lean maturity: missing; allowed: A00 to E100",
		"lot.csv, line 5, id 4, column 9 (fat_mm): fat: missing; allowed: 0 in to 3 in; column 11 (ribeye_sq_in): ribeye: missing; allowed: 1 sq in to 25 sq in; column 12 (kph_pct): KPH: missing; allowed: 0% to 10%; column 13 (weight_lb): weight: missing; allowed: 100 lb to 1800 lb",
		"lot.csv, line 6, id 5, column 3 (sex): sex class: ox: unknown; allowed: steer, heifer, cow, bullock, bull; S, H or C; column 7 (marbling): marbling: Sm4: bad syntax; allowed: Devoid00 to Ab100, or a number where the mapping names its scale; column 12 (kph_pct): KPH: missing; allowed: 0% to 10%",
		"lot.csv, line 8, id 7, column 10 (fat_adjust_in): adjusted fat: -0.01 in: out of range; allowed: 0 in to 3 in",
	}
	if d := cmp.Diff(wantErrs, errs); d != "" {
		t.Errorf("errors (-want +got):\n%s", d)
	}
	// 2.50 + 2.50 x 0.45 + 0.20 x 2.5 + 0.0038 x 820 - 0.32 x 12.4 = 3.273.
	want := strings.TrimSuffix(full, "\n") + ",overall,quality,yield,yield_grade,tier,flags,note\n" +
		"1,steer,A60,A50,,,Sm40,,,,0.45,,12.4,2.5,820,,,,,A55,Low Choice,3.273,3,low choice,,a\n" +
		"6,bull,A60,A50,,,Sm40,,,,0.45,,12.4,2.5,820,,,,,A55,No grade,3.273,3,below standard,,f\n" +
		"6,heifer,A60,A50,,,Sm40,,,,0.45,0.1,12.4,0.025,372,,,,,A55,Low Choice,1.3256,1,low choice,unusual weight; weight unit; KPH fraction; repeated id,h\n"
	if d := cmp.Diff(want, out.String()); d != "" {
		t.Errorf("sheet (-want +got):\n%s", d)
	}
	wantNotes := []sheet.Flag{
		{Kind: sheet.UnusualWeight, Note: "weight 372 lb is outside the usual 400 lb to 1300 lb"},
		{Kind: sheet.WeightUnit, Note: "weight 372 lb: are these kilograms?"},
		{Kind: sheet.KPHFraction, Note: "KPH 0.025%: is this a fraction of 1?"},
		{Kind: sheet.RepeatedID, Note: "id 6 stands on line 7 too"},
	}
	if d := cmp.Diff(wantNotes, notes); d != "" {
		t.Errorf("flags (-want +got):\n%s", d)
	}
	counts := sheet.Counts{Graded: 3, Refused: 5, Flagged: 1, Flags: map[sheet.FlagKind]int{sheet.UnusualWeight: 1, sheet.WeightUnit: 1, sheet.KPHFraction: 1, sheet.RepeatedID: 1}}
	if d := cmp.Diff(counts, r.Counts()); d != "" {
		t.Errorf("counts (-want +got):\n%s", d)
	}
	for range r.Grade(context.Background(), rules) {
		t.Error("a row after the end")
	}
	// The graded sheet is graded again to the same sheet.
	var again strings.Builder
	r = open(t, sheet.Mapping{}, out.String())
	if w, err = sheet.NewGradedWriter(&again, r.Extra()...); err != nil {
		t.Fatal(err)
	}
	for g, err := range r.Grade(context.Background(), rules) {
		if err != nil {
			t.Fatal(err)
		}
		if err := w.Write(g); err != nil {
			t.Fatal(err)
		}
	}
	if err := w.Flush(); err != nil {
		t.Fatal(err)
	}
	if d := cmp.Diff(want, again.String()); d != "" {
		t.Errorf("graded again (-want +got):\n%s", d)
	}
}

// TestGradeParts grades sheets of yield alone and of quality alone, with what is
// assumed, and one of neither.
func TestGradeParts(t *testing.T) {
	yield := "fat_in,ribeye_sq_in,kph_pct,weight_lb\n"
	tests := []struct {
		name, text string
		mapping    sheet.Mapping
		quality    []string // lacking
		yield      []string
		want       []string
	}{
		{"yield alone", yield + "0.45,12.4,2.5,820\n.,12.4,2.5,820\n", sheet.Mapping{Missing: []string{"."}}, []string{"sex class", "skeletal maturity", "lean maturity", "marbling"}, nil,
			[]string{"unset 3.273 none", "line 3, column 1 (fat_in): fat: missing; allowed: 0 in to 3 in"}},
		{"quality alone", "sex,skeletal,lean,marbling\nsteer,A60,A50,Sm40\nsteer,A60,A50,\n", sheet.Mapping{}, nil, []string{"fat", "ribeye", "KPH", "weight"},
			[]string{"Low Choice unset none", "line 3, column 4 (marbling): marbling: missing; allowed: Devoid00 to Ab100"}},
		{"no lean, teeth", "sex,skeletal,teeth,marbling\nsteer,A60,2,Sm40\nsteer,A60,,Sm40\n", sheet.Mapping{}, nil, []string{"fat", "ribeye", "KPH", "weight"},
			[]string{"Low Choice unset none", "line 3: lean maturity: missing; allowed: A00 to E100"}},
		{"overall", "sex,maturity,marbling\nsteer,B60,Sm40\nsteer,,Sm40\n", sheet.Mapping{}, nil, []string{"fat", "ribeye", "KPH", "weight"},
			[]string{"High Standard unset none", "line 3, column 2 (maturity): skeletal maturity: missing; allowed: A00 to E100"}},
		{"all assumed", "marbling,fat_in,ribeye_sq_in\nSm40,0.45,12.4\n", sheet.Mapping{Assumed: sheet.Assumed{Sex: grade.Steer, Maturity: maturity.A.At(50), KPH: grade.Percent(2.5), Weight: grade.Pounds(820)}}, nil, nil,
			[]string{"Low Choice 3.273 sex maturity kph weight"}},
		{"assumed where missing", "sex,lean,marbling,fat_in,ribeye_sq_in,kph_pct,weight_lb\nsteer,A60,Sm40,0.45,12.4,,820\nsteer,A60,Sm40,0.45,12.4,2,820\n", sheet.Mapping{Assumed: sheet.Assumed{Sex: grade.Cow, Maturity: maturity.A.At(50), KPH: grade.Percent(2.5)}}, nil, nil,
			[]string{"Low Choice 3.273 maturity kph", "Low Choice 3.173 maturity"}},
		{"quality cannot be", "sex,skeletal,lean,marbling,fat_in,ribeye_sq_in\nox,A60,A50,Sm40,x,12\n", sheet.Mapping{}, nil, []string{"KPH", "weight"},
			[]string{"line 2, column 1 (sex): sex class: ox: unknown; allowed: steer, heifer, cow, bullock, bull; S, H or C; column 5 (fat_in): fat: x: bad syntax; allowed: a number, 0 in to 3 in"}},
		{"neither", "id,HCW\n1,820\n", sheet.Mapping{}, []string{"sex class", "skeletal maturity", "lean maturity", "marbling"}, []string{"fat", "ribeye", "KPH", "weight"},
			[]string{"line 1: header: missing; allowed: a column or an assumed value for all that is needed; for quality it lacks sex class, skeletal maturity, lean maturity, marbling, for yield fat, ribeye, KPH, weight"}},
		{"ids that fall and come again", "id,marbling\n10,Sm40\n9,Sm40\n10,Sm50\n", sheet.Mapping{Assumed: sheet.Assumed{Sex: grade.Steer, Maturity: maturity.A.At(50)}}, nil, []string{"fat", "ribeye", "KPH", "weight"},
			[]string{"Low Choice unset sex maturity", "Low Choice unset sex maturity", "Low Choice unset sex maturity; id 10 stands on line 2 too"}},
		{"a tenth of a percent", yield + "0.45,12.4,0.1,820\n0.45,12.4,0.1001,820\n", sheet.Mapping{}, []string{"sex class", "skeletal maturity", "lean maturity", "marbling"}, nil,
			[]string{"unset 2.793 none; KPH 0.1%: is this a fraction of 1?", "unset 2.79302 none"}},
		{"kilograms", "fat_mm,ribeye_sq_cm,kph_pct,weight_kg\n11,80,2.5,600\n", sheet.Mapping{}, []string{"sex class", "skeletal maturity", "lean maturity", "marbling"}, nil,
			[]string{"unset 5.14128968 none; weight 1322.7736 lb is outside the usual 400 lb to 1300 lb; weight 600.0 kg: are these pounds?"}},
		{"kilograms first", "weight_kg,fat_mm,ribeye_sq_cm,kph_pct\n600,11,80,2.5\n", sheet.Mapping{}, []string{"sex class", "skeletal maturity", "lean maturity", "marbling"}, nil,
			[]string{"unset 5.14128968 none; weight 1322.7736 lb is outside the usual 400 lb to 1300 lb; weight 600.0 kg: are these pounds?"}},
		{"500 lb and less", yield + "0.45,12.4,2.5,500\n0.45,12.4,2.5,499.9\n", sheet.Mapping{}, []string{"sex class", "skeletal maturity", "lean maturity", "marbling"}, nil,
			[]string{"unset 2.057 none", "unset 2.05662 none; weight 499.9 lb: are these kilograms?"}},
		{"1300 lb in kilograms and more", "fat_in,ribeye_sq_in,kph_pct,weight_kg\n0.45,12.4,2.5,589.6701\n0.45,12.4,2.5,589.7\n", sheet.Mapping{}, []string{"sex class", "skeletal maturity", "lean maturity", "marbling"}, nil,
			[]string{"unset 5.097 none", "unset 5.0972508 none; weight 1300.066 lb is outside the usual 400 lb to 1300 lb; weight 589.7 kg: are these pounds?"}},
		{"pounds that are headed kilograms", "weight_kg,BF,REA,KPH\n400,11,80,2.5\n", sheet.Mapping{Columns: map[string]string{"weight_kg": "weight_lb", "BF": "fat_mm", "REA": "ribeye_sq_cm", "KPH": "kph_pct"}}, []string{"sex class", "skeletal maturity", "lean maturity", "marbling"}, nil,
			[]string{"unset 1.63475 none; weight 400 lb: are these kilograms?"}},
		{"no bone in the first column", "skeletal,lean,sex,marbling\n,A50,steer,Sm40\n", sheet.Mapping{}, nil, []string{"fat", "ribeye", "KPH", "weight"},
			[]string{"line 2, column 1 (skeletal): skeletal maturity: missing; allowed: A00 to E100"}},
		{"by column", "note,maturity,sex,marbling\na\rb,F10,ox,Sm40\n", sheet.Mapping{}, nil, []string{"fat", "ribeye", "KPH", "weight"},
			[]string{`line 2, column 1 (note): cell: "a\rb": bad syntax; allowed: one line of text; column 2 (maturity): overall maturity: F10: unknown; allowed: A00 to E100, for skeletal and lean alike; column 3 (sex): sex class: ox: unknown; allowed: steer, heifer, cow, bullock, bull; S, H or C`}},
		{"no lean, papers", "sex,skeletal,papers_months,marbling\nsteer,A60,20,Sm40\n", sheet.Mapping{}, nil, []string{"fat", "ribeye", "KPH", "weight"},
			[]string{"Low Choice unset none"}},
		{"mapped kilograms", "Hot kg,BF,REA,KPH\n600,11,80,2.5\n", sheet.Mapping{Columns: map[string]string{"hot KG": "weight_kg", "BF": "fat_mm", "REA": "ribeye_sq_cm", "KPH": "kph_pct"}}, []string{"sex class", "skeletal maturity", "lean maturity", "marbling"}, nil,
			[]string{"unset 5.14128968 none; weight 1322.7736 lb is outside the usual 400 lb to 1300 lb; weight 600.0 kg: are these pounds?"}},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			r := open(t, tt.mapping, tt.text)
			quality, yield := r.Lacks()
			if d := cmp.Diff([][]string{tt.quality, tt.yield}, [][]string{quality, yield}); d != "" {
				t.Errorf("lacks (-want +got):\n%s", d)
			}
			w, err := sheet.NewGradedWriter(io.Discard, r.Extra()...)
			if err != nil {
				t.Fatal(err)
			}
			var got []string
			for g, err := range r.Grade(context.Background(), rules) {
				if err != nil {
					got = append(got, err.Error())
					continue
				}
				if err := w.Write(g); err != nil {
					t.Error(err)
				}
				text := g.Assessment.Quality.String() + " " + g.Assessment.Yield.String() + " " + g.Assumed.String()
				for _, f := range g.Flags {
					text += "; " + f.Note
				}
				got = append(got, text)
			}
			if d := cmp.Diff(tt.want, got); d != "" {
				t.Errorf("(-want +got):\n%s", d)
			}
		})
	}
}

func TestReadHeader(t *testing.T) {
	bare := sheet.Mapping{Columns: map[string]string{"HCW": "weight_lb", "BF": "fat_in"}}
	tests := []struct {
		name, reason, text string
		mapping            sheet.Mapping
		want               string
		is                 error
	}{
		{"empty", "no header", "", sheet.Mapping{}, "line 1: header: missing; allowed: a first line with the headings of the columns", grade.ErrMissing},
		{"blank lines", "no header", "\n\r\n", sheet.Mapping{}, "line 2: header: missing; allowed: a first line with the headings of the columns", grade.ErrMissing},
		{"misspelled", "another letter", "id,dork\n", sheet.Mapping{}, "line 1, column 2 (dork): column: dork: unknown; allowed: dark, or a heading that is not a letter away from it", grade.ErrUnknown},
		{"exchanged", "two letters exchanged", "drak\n", sheet.Mapping{}, "line 1, column 1 (drak): column: drak: unknown; allowed: dark, or a heading that is not a letter away from it", grade.ErrUnknown},
		{"too few", "a letter left out", "Marbing\n", sheet.Mapping{}, "line 1, column 1 (Marbing): column: Marbing: unknown; allowed: marbling, or a heading that is not a letter away from it", grade.ErrUnknown},
		{"too many", "a letter more", "leann\n", sheet.Mapping{}, "line 1, column 1 (leann): column: leann: unknown; allowed: lean, or a heading that is not a letter away from it", grade.ErrUnknown},
		{"twice", "a column twice", "id,sex,id\n", sheet.Mapping{}, "line 1, column 3 (id): id: id: repeated; allowed: one column for it; column 1 is one", grade.ErrRepeated},
		{"two units", "a measure in two units", "fat_in,fat_mm\n", sheet.Mapping{}, "line 1, column 2 (fat_mm): fat: fat_mm: repeated; allowed: one column for it; column 1 is one", grade.ErrRepeated},
		{"two maturities", "overall and skeletal", "lean,maturity\n", sheet.Mapping{}, "line 1, column 2 (maturity): overall maturity: maturity: repeated; allowed: overall maturity, or skeletal and lean", grade.ErrRepeated},
		{"two maturities, overall first", "overall in the first column", "maturity,lean\n", sheet.Mapping{}, "line 1, column 1 (maturity): overall maturity: maturity: repeated; allowed: overall maturity, or skeletal and lean", grade.ErrRepeated},
		{"two maturities, skeletal first", "skeletal in the first column", "skeletal,maturity\n", sheet.Mapping{}, "line 1, column 2 (maturity): overall maturity: maturity: repeated; allowed: overall maturity, or skeletal and lean", grade.ErrRepeated},
		{"mapped heading missing", "every heading of the mapping has to stand there", "id,hcw\n", bare, "line 1: column: BF: missing; allowed: a sheet that has it", grade.ErrMissing},
		{"mapped headings missing", "all are told", "id\n", bare, "line 1: column: BF: missing; allowed: a sheet that has it; column: HCW: missing; allowed: a sheet that has it", grade.ErrMissing},
		{"open quote", "the header cannot be divided", "\"id,sex\n1,steer\n", sheet.Mapping{}, "line 1: row: a stray or open quote at byte 1: bad syntax; allowed: quotes around a whole cell, doubled inside it, closed on the same line", grade.ErrSyntax},
		{"mapping", "a mapping that is wrong", "id\n", sheet.Mapping{Separator: "."}, `separator: ".": unknown; allowed: comma, semicolon, tab or bar`, grade.ErrUnknown},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			r, err := tt.mapping.NewReader("", strings.NewReader(tt.text))
			if err == nil || r != nil {
				t.Fatalf("NewReader = %v, %v", r, err)
			}
			if d := cmp.Diff(tt.want, err.Error()); d != "" {
				t.Errorf("%s (-want +got):\n%s", tt.reason, d)
			}
			var fe *grade.FieldError
			if !errors.Is(err, tt.is) || !errors.As(err, &fe) {
				t.Errorf("error %v is not %v with a field", err, tt.is)
			}
		})
	}
	// Short names, and two letters that are not just exchanged, are not near.
	if got := open(t, sheet.Mapping{}, "sax,dakx\n").Extra(); len(got) != 2 {
		t.Errorf("extra %q", got)
	}
	// A heading near one of ours is as good as any where ours stands too.
	if got := open(t, sheet.Mapping{}, "dark,dork\n").Extra(); len(got) != 1 {
		t.Errorf("extra %q", got)
	}
}

// TestHostile holds what forty inputs get that are wrong in some way, or strange.
func TestHostile(t *testing.T) {
	const head = "id,fat_in,ribeye_sq_in,kph_pct,weight_lb\n"
	const quote = ": bad syntax; allowed: quotes around a whole cell, doubled inside it, closed on the same line"
	const long = "row: over 65536 bytes: out of range; allowed: lines up to 64 KiB"
	const none = "header: missing; allowed: a column or an assumed value for all that is needed; for quality it lacks sex class, skeletal maturity, lean maturity, marbling, for yield "
	const all = none + "fat, ribeye, KPH, weight"
	const fat = "column 2 (fat_in): fat: "
	const fatIn = "; allowed: a number, 0 in to 3 in"
	tests := []struct {
		name, in string
		want     []string
	}{
		{"nothing", "", []string{"line 1: header: missing; allowed: a first line with the headings of the columns"}},
		{"a byte order mark alone", "\uFEFF", []string{"line 1: header: missing; allowed: a first line with the headings of the columns"}},
		{"line ends alone", "\n\n\r\n", []string{"line 3: header: missing; allowed: a first line with the headings of the columns"}},
		{"a header alone", head, nil},
		{"no rows but blanks", head + ",,,,\n , ,,,\n\n", nil},
		{"zero bytes", "\x00\x00\n\x00\n", []string{"line 1: " + all}},
		{"two-byte text", "\xff\xfei\x00d\x00\n\x00", []string{"line 1: " + all}},
		{"a page of the web", "<!DOCTYPE html>\n<html>\n", []string{"line 1: " + all}},
		{"a packed spreadsheet", "PK\x03\x04\x14\x00\x08\n", []string{"line 1: " + all}},
		{"one long line", strings.Repeat("x", 200_000), []string{"line 1: " + long}},
		{"a long row", head + strings.Repeat("x", 200_000) + "\n1,0.45,12.4,2.5,820\n", []string{"line 2: " + long, "1: 3.273"}},
		{"a long row without end", head + strings.Repeat("x", 70_000), []string{"line 2: " + long}},
		{"old line ends", "id,fat_in\r1,0.45\r", []string{"line 1: " + all}},
		{"an open quote", head + "\"1,0.45,12.4,2.5,820\n2,0.45,12.4,2.5,820\n", []string{"line 2: row: a stray or open quote at byte 1" + quote, "2: 3.273"}},
		{"a stray quote", head + "1,0.4\"5,12.4,2.5,820\n", []string{"line 2: row: a stray or open quote at byte 6" + quote}},
		{"text after a quote", head + "\"1\"x,0.45,12.4,2.5,820\n", []string{"line 2: row: a stray or open quote at byte 1" + quote}},
		{"a break in quotes", head + "\"1\n2\",0.45,12.4,2.5,820\n", []string{"line 2: row: a stray or open quote at byte 1" + quote, "line 3: row: a stray or open quote at byte 2" + quote}},
		{"a cell too few", head + "1,0.45,12.4,2.5\n", []string{"line 2: row: 4 cells: bad syntax; allowed: 5 cells, one for each column"}},
		{"a cell too many", head + "1,0.45,12.4,2.5,820,x\n", []string{"line 2: row: 6 cells: bad syntax; allowed: 5 cells, one for each column"}},
		{"the other separator", strings.ReplaceAll(head, ",", ";") + "1;0.45;12.4;2.5;820\n", []string{"line 1: " + all}},
		{"the header again", head + "1,0.45,12.4,2.5,820\n" + head, []string{"1: 3.273", "line 3, id id, column 2 (fat_in): fat: fat_in: bad syntax" + fatIn + "; column 3 (ribeye_sq_in): ribeye: ribeye_sq_in: bad syntax; allowed: a number, 1 sq in to 25 sq in; column 4 (kph_pct): KPH: kph_pct: bad syntax; allowed: a number, 0% to 10%; column 5 (weight_lb): weight: weight_lb: bad syntax; allowed: a number, 100 lb to 1800 lb"}},
		{"a total below", head + "1,0.45,12.4,2.5,820\nMean,0.45,12.4,2.5,\n", []string{"1: 3.273", "line 3, id Mean, column 5 (weight_lb): weight: missing; allowed: 100 lb to 1800 lb"}},
		{"a break in an id", head + "a\rb,0.45,12.4,2.5,820\n", []string{`line 2, column 1 (id): id: "a\rb": bad syntax; allowed: one line of text`}},
		{"not a number", head + "1,NaN,12.4,2.5,820\n", []string{"line 2, id 1, " + fat + "NaN: bad syntax" + fatIn}},
		{"infinity", head + "1,Inf,12.4,2.5,820\n", []string{"line 2, id 1, " + fat + "Inf: bad syntax" + fatIn}},
		{"a spreadsheet's error", head + "1,#DIV/0!,12.4,2.5,820\n", []string{"line 2, id 1, " + fat + "#DIV/0!: unknown" + fatIn}},
		{"a date", head + "1,4-May,12.4,2.5,820\n", []string{"line 2, id 1, " + fat + "4-May: unknown" + fatIn}},
		{"a formula", head + "=1+1,=A1,12.4,2.5,820\n", []string{"line 2, id =1+1, " + fat + "=A1: bad syntax" + fatIn}},
		{"a thousand digits", head + "1," + strings.Repeat("9", 1000) + ",12.4,2.5,820\n", []string{"line 2, id 1, " + fat + strings.Repeat("9", 64) + ": bad syntax" + fatIn}},
		{"a huge exponent", head + "1,1e99,12.4,2.5,820\n", []string{"line 2, id 1, " + fat + "1e99: out of range" + fatIn}},
		{"a tiny exponent", head + "1,1e-99,12.4,2.5,820\n", []string{"line 2, id 1, " + fat + "1e-99: too many places" + fatIn}},
		{"other digits", head + "1,\u0661,12.4,2.5,820\n", []string{"line 2, id 1, " + fat + "\u0661: bad syntax" + fatIn}},
		{"a dash that is no minus", head + "1,\u22120.1,12.4,2.5,820\n", []string{"line 2, id 1, " + fat + "\u22120.1: bad syntax" + fatIn}},
		{"minus nothing", head + "1,-0,12.4,2.5,820\n", []string{"1: 2.148"}},
		{"millimeters for inches", head + "1,11.4,12.4,2.5,820\n", []string{"line 2, id 1, " + fat + "11.4: out of range" + fatIn}},
		{"kilograms for pounds", head + "1,0.45,12.4,2.5,372\n", []string{"1: 1.5706 (unusual weight, weight unit)"}},
		{"a fraction for percent", head + "1,0.45,12.4,0.025,820\n", []string{"1: 2.778 (KPH fraction)"}},
		{"an id twice", head + "1,0.45,12.4,2.5,820\n1,0.45,12.4,2.5,820\n", []string{"1: 3.273", "1: 3.273 (repeated id)"}},
		{"a missing mark that is not named", head + "1,.,12.4,2.5,820\n", []string{"line 2, id 1, " + fat + ".: bad syntax" + fatIn}},
		{"ten thousand headings", "id" + strings.Repeat(",sex", 10_000) + "\n", []string{"line 1, column 3 (sex): sex class: sex: repeated; allowed: one column for it; column 2 is one; column 4 (sex): sex class: sex: repeated; allowed: one column for it; column 2 is one; column 5 (sex): sex class: sex: repeated; allowed: one column for it; column 2 is one; column 6 (sex): sex class: sex: repeated; allowed: one column for it; column 2 is one; column 7 (sex): sex class: sex: repeated; allowed: one column for it; column 2 is one; column 8 (sex): sex class: sex: repeated; allowed: one column for it; column 2 is one; and 9993 more"}},
		{"a heading in control characters", "\x1b[2J\n", []string{"line 1: " + all}},
	}
	if len(tests) < 40 {
		t.Errorf("%d inputs, want 40", len(tests))
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			var got []string
			if len(tt.in) > 1<<20 {
				t.Fatal("the input is not small")
			}
			r, err := sheet.NewReader(strings.NewReader(tt.in))
			if err != nil {
				got = append(got, err.Error())
			} else {
				for g, err := range r.Grade(context.Background(), rules) {
					switch {
					case err != nil:
						got = append(got, err.Error())
					case g.Flags != nil:
						var kinds []string
						for _, f := range g.Flags {
							kinds = append(kinds, f.Kind.String())
						}
						got = append(got, g.ID+": "+g.Assessment.Yield.String()+" ("+strings.Join(kinds, ", ")+")")
					default:
						got = append(got, g.ID+": "+g.Assessment.Yield.String())
					}
				}
			}
			if d := cmp.Diff(tt.want, got); d != "" {
				t.Errorf("(-want +got):\n%s", d)
			}
		})
	}
}

// TestExtra holds the names of columns that are not read.
func TestExtra(t *testing.T) {
	m := sheet.Mapping{Columns: map[string]string{"Tag": "id"}}
	r := open(t, m, "Tag,Pen,pen,,yield,\"a\rb\",\n")
	got := r.Extra()
	want := []string{"Pen", "pen (column 3)", "(column 4)", "yield (column 5)", "a b (column 6)", "(column 7)"}
	if d := cmp.Diff(want, got); d != "" {
		t.Errorf("(-want +got):\n%s", d)
	}
	if _, err := sheet.NewGradedWriter(io.Discard, got...); err != nil {
		t.Error(err)
	}
	marks := []string{" na "}
	if open(t, sheet.Mapping{Missing: marks}, "id\n"); marks[0] != " na " {
		t.Errorf("the caller's marks become %q", marks)
	}
	got[0] = "changed"
	if r.Extra()[0] != "Pen" {
		t.Error("Extra hands out its storage")
	}
	_, errs := read(t, sheet.Mapping{}, "id,pen\n1,a\rb\n")
	if d := cmp.Diff([]string{`line 2, id 1, column 2 (pen): cell: "a\rb": bad syntax; allowed: one line of text`}, errs); d != "" {
		t.Errorf("(-want +got):\n%s", d)
	}
}

var errDisk = errors.New("disk gone")

func TestReadInputError(t *testing.T) {
	for _, graded := range []bool{false, true} {
		in := io.MultiReader(strings.NewReader(full+good+"2"), iotest.ErrReader(errDisk))
		r, err := sheet.Mapping{}.NewReader("a.csv", in)
		if err != nil {
			t.Fatal(err)
		}
		var got []string
		add := func(id string, err error) {
			if err != nil {
				var e *sheet.RowError
				if !errors.Is(err, errDisk) || errors.As(err, &e) {
					t.Errorf("error %v", err)
				}
				id = err.Error()
			}
			got = append(got, id)
		}
		if graded {
			for g, err := range r.Grade(context.Background(), rules) {
				add(g.ID, err)
			}
		} else {
			for row, err := range r.Rows() {
				add(row.ID, err)
			}
		}
		// The 2 may be the start of 20: it is not given as a row.
		if d := cmp.Diff([]string{"1", "a.csv, line 3: disk gone"}, got); d != "" {
			t.Errorf("(-want +got):\n%s", d)
		}
		for range r.Rows() {
			t.Error("a row after the end")
		}
	}
	if _, err := sheet.NewReader(iotest.ErrReader(errDisk)); !errors.Is(err, errDisk) || err.Error() != "line 1: disk gone" {
		t.Errorf("NewReader: %v", err)
	}
}

func TestRowsCanBeTakenUpAgain(t *testing.T) {
	r := open(t, sheet.Mapping{}, "id\n1\n2\n3\n")
	var got []string
	for row := range r.Rows() {
		got = append(got, row.ID)
		break
	}
	for row := range r.Rows() {
		got = append(got, row.ID)
	}
	if d := cmp.Diff([]string{"1", "2", "3"}, got); d != "" {
		t.Errorf("(-want +got):\n%s", d)
	}
}

// TestGradeOrder holds that the rows of many blocks come in order whatever the cores,
// that leaving ends it, and that a context does.
func TestGradeOrder(t *testing.T) {
	const rows = 8_000 // ten blocks
	in := string(benchSheet(t, rows))
	for _, cores := range []int{1, 2, 5} {
		defer runtime.GOMAXPROCS(runtime.GOMAXPROCS(cores))
		line := 1
		for g, err := range open(t, sheet.Mapping{}, in).Grade(context.Background(), rules) {
			if line++; err != nil || g.Line != line {
				t.Fatalf("line %d, want %d: %v", g.Line, line, err)
			}
		}
		if line != rows+1 {
			t.Errorf("%d rows, want %d", line-1, rows)
		}
		r := open(t, sheet.Mapping{}, in)
		for range r.Grade(context.Background(), rules) {
			break
		}
		for range r.Grade(context.Background(), rules) {
			t.Fatal("a row after Grade was left")
		}
		ctx, cancel := context.WithCancel(context.Background())
		defer cancel()
		n := 0
		var last error
		for _, err := range open(t, sheet.Mapping{}, in).Grade(ctx, rules) {
			last = err
			if n++; n == 100 {
				cancel()
			}
		}
		if n != 101 || last != context.Canceled {
			t.Errorf("%d rows and then %v", n-1, last)
		}
		n = 0
		for _, err := range open(t, sheet.Mapping{}, in).Grade(ctx, rules) {
			if n++; err != context.Canceled {
				t.Errorf("%v", err)
			}
		}
		if n != 1 {
			t.Errorf("%d answers of a context that is done", n)
		}
	}
	// A sheet without a row, and a context that is done.
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	for g, err := range open(t, sheet.Mapping{}, full+",,,,\n").Grade(ctx, rules) {
		if g.Line != 0 || err != context.Canceled {
			t.Errorf("%+v, %v", g, err)
		}
	}
}

// TestRepeatedFar holds how far back an id is known.
func TestRepeatedFar(t *testing.T) {
	const kept = 1 << 16
	var b strings.Builder
	b.WriteString("id,fat_in,ribeye_sq_in,kph_pct,weight_lb\n")
	add := func(id int) {
		text := []byte("0000000,0.45,12.4,2.5,820\n")
		for at := 6; id > 0; at, id = at-1, id/10 {
			text[at] += byte(id % 10)
		}
		b.Write(text)
	}
	for id := range 3*kept + 1 {
		add(id)
	}
	add(2 * kept)     // the last table
	add(kept + 1)     // the one before it
	add(1)            // none
	add(2*kept + 100) // the last table again
	var got []string
	for g, err := range open(t, sheet.Mapping{}, b.String()).Grade(context.Background(), rules) {
		if err != nil {
			t.Fatal(err)
		}
		for _, f := range g.Flags {
			got = append(got, f.Note)
		}
	}
	want := []string{"id 0131072 stands on line 131074 too", "id 0131172 stands on line 131174 too"}
	if d := cmp.Diff(want, got); d != "" {
		t.Errorf("(-want +got):\n%s", d)
	}
}

func TestGradeRules(t *testing.T) {
	for name, rules := range map[string]grade.Rules{
		"edition: missing; allowed: 1975, 1987, 1997, 2016, 2017":                          {},
		"rules: old lean: old lean(9): unknown; allowed: OldLeanMayCross, OldLeanStaysInB": {Edition: grade.Current, Maturity: maturity.Balancing{OldLean: 9}},
	} {
		n := 0
		for g, err := range open(t, sheet.Mapping{}, "id\n1\n2\n").Grade(context.Background(), rules) {
			n++
			if err == nil || g.ID != "" {
				t.Errorf("Grade = %+v, %v, want %s", g, err, name)
			}
		}
		if n != 1 {
			t.Errorf("%d errors, want 1", n)
		}
	}
}

func TestWriteRefuses(t *testing.T) {
	with := func(f func(*sheet.Row)) sheet.Row {
		row := sheet.Row{ID: "1", Carcass: steer, Extra: []string{"x"}}
		f(&row)
		return row
	}
	const age = ": out of range; allowed: A00 to E100"
	tests := []struct {
		name string
		row  sheet.Row
		want string
	}{
		{"id", with(func(r *sheet.Row) { r.ID = "a\nb" }), `line 2, id "a\nb", column 1 (id): id: "a\nb": bad syntax; allowed: one line of text`},
		{"sex", with(func(r *sheet.Row) { r.Carcass.Sex = 6 }), "line 2, id 1, column 2 (sex): sex class: sex class(6): unknown; allowed: steer, heifer, cow, bullock, bull; S, H or C"},
		{"skeletal", with(func(r *sheet.Row) { r.Carcass.Maturity.Skeletal = maturity.A.At(101) }), "line 2, id 1, column 3 (skeletal): skeletal maturity: A(101)" + age},
		{"lean", with(func(r *sheet.Row) { r.Carcass.Maturity.Lean = maturity.A.At(101) }), "line 2, id 1, column 4 (lean): lean maturity: A(101)" + age},
		{"teeth", with(func(r *sheet.Row) { r.Carcass.Maturity.Teeth = maturity.Incisors(9) }), "line 2, id 1, column 5 (teeth): teeth: 9 permanent incisors: out of range; allowed: the count of permanent incisors, 0 to 8"},
		{"papers", with(func(r *sheet.Row) { r.Carcass.Maturity.Papers = 601 }), "line 2, id 1, column 6 (papers_months): papers: 601 months: out of range; allowed: whole months, 1 to 600"},
		{"marbling", with(func(r *sheet.Row) { r.Carcass.Marbling = grade.Small.At(101) }), "line 2, id 1, column 7 (marbling): marbling: Sm(101): out of range; allowed: Devoid00 to Ab100, or a number where the mapping names its scale"},
		{"firmness", with(func(r *sheet.Row) { r.Carcass.Lean.Firmness = 8 }), "line 2, id 1, column 8 (firmness): firmness: firmness(8): unknown; allowed: very soft, soft, moderately soft, slightly soft, slightly firm, moderately firm, firm"},
		{"dark", with(func(r *sheet.Row) { r.Carcass.Lean.Dark = 4 }), "line 2, id 1, column 9 (dark): dark cut: dark cut(4): unknown; allowed: none, one third, two thirds, full; 1/3, 2/3"},
		{"fat", with(func(r *sheet.Row) { r.Carcass.Measures.Fat = grade.Inches(3.0001) }), "line 2, id 1, column 11 (fat_in): fat: 3.0001 in: out of range; allowed: a number, 0 in to 3 in"},
		{"adjustment", with(func(r *sheet.Row) { r.Carcass.FatAdjust = grade.Inches(3.0001) }), "line 2, id 1, column 12 (fat_adjust_in): fat adjustment: 3.0001 in: out of range; allowed: a number, -3 in to 3 in, leaving the fat 0 in to 3 in"},
		{"KPH", with(func(r *sheet.Row) { r.Carcass.Measures.KPH = grade.Percent(1e12) }), "line 2, id 1, column 14 (kph_pct): KPH: over 214748 %: out of range; allowed: a number, 0% to 10%"},
		{"assumed", with(func(r *sheet.Row) { r.Assumed = 16 }), "line 2, id 1, column 16 (assumed): assumed: assumed(16): unknown; allowed: sex, maturity, kph, weight: what was assumed and not seen"},
		{"no extra cell", with(func(r *sheet.Row) { r.Extra = nil }), "line 2, id 1: row: 0 extra cells: bad syntax; allowed: 1, one for each extra column"},
		{"extra broken", with(func(r *sheet.Row) { r.Extra = []string{"x\n"} }), `line 2, id 1, column 20: extra cell: "x\n": bad syntax; allowed: one line of text`},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			var out strings.Builder
			w, err := sheet.NewWriter(&out, "note")
			if err != nil {
				t.Fatal(err)
			}
			err = w.Write(tt.row)
			var e *sheet.RowError
			if !errors.As(err, &e) {
				t.Fatalf("Write = %v", err)
			}
			if d := cmp.Diff(tt.want, err.Error()); d != "" {
				t.Errorf("(-want +got):\n%s", d)
			}
			if err := w.Write(sheet.Row{ID: "2", Carcass: grade.Carcass{Maturity: maturity.Evidence{Skeletal: maturity.E.At(100)}, Marbling: grade.Abundant.At(100), Lean: grade.Lean{BelowCutter: true}}, Extra: []string{"a,b"}}); err != nil {
				t.Error(err)
			}
			if err := w.Flush(); err != nil {
				t.Error(err)
			}
			if d := cmp.Diff(strings.TrimSuffix(full, "\n")+",note\n2,,E100,,,,Ab100,,,yes,,,,,,,,,,\"a,b\"\n", out.String()); d != "" {
				t.Errorf("sheet (-want +got):\n%s", d)
			}
		})
	}
}

// TestWriteSecondExtra: an extra cell is named by its own column.
func TestWriteSecondExtra(t *testing.T) {
	w, err := sheet.NewWriter(io.Discard, "note", "pen")
	faulttest.Text(t, err, "")
	faulttest.Text(t, w.Write(sheet.Row{ID: "1", Carcass: steer, Extra: []string{"x", "y\n"}}),
		`line 2, id 1, column 21: extra cell: "y\n": bad syntax; allowed: one line of text`)
}

func TestNewWriterErrors(t *testing.T) {
	for want, extra := range map[string][]string{
		"line 1, column 21: column: missing; allowed: a name":                             {"a", ""},
		`line 1, column 20 ("a\n"): column: "a\n": bad syntax; allowed: one line of text`: {"a\n"},
		"line 1, column 21 (A): column: A: repeated; allowed: each column once":           {"a", "A"},
		"line 1, column 20 (fat_mm): column: fat_mm: repeated; allowed: each column once": {"fat_mm"},
		"line 1, column 20 (tier): column: tier: repeated; allowed: each column once":     {"tier"},
	} {
		if _, err := sheet.NewWriter(io.Discard, extra...); err == nil || err.Error() != want {
			t.Errorf("%v, want %s", err, want)
		}
		if _, err := sheet.NewGradedWriter(io.Discard, extra...); err == nil {
			t.Errorf("%q are written in a graded sheet", extra)
		}
	}
}

func TestGradedWriterRefuses(t *testing.T) {
	a, err := grade.Current.Assess(steer)
	if err != nil {
		t.Fatal(err)
	}
	none, noMaturity, bad := a, a, a
	none.Quality, none.Yield, noMaturity.Maturity, bad.Carcass.Sex = 0, grade.Yield{}, 0, 9
	const lacks = "assessment: missing; allowed: one with overall maturity and quality, with a yield, or with both"
	for _, tt := range []struct {
		want string
		g    sheet.GradedRow
	}{
		{"line 2: " + lacks, sheet.GradedRow{Assessment: none}},
		{"line 2, id x: " + lacks, sheet.GradedRow{ID: "x", Assessment: noMaturity}},
		{"line 2, column 2 (sex): sex class: sex class(9): unknown; allowed: steer, heifer, cow, bullock, bull; S, H or C", sheet.GradedRow{Assessment: bad}},
		{"line 2: row: 1 extra cell: bad syntax; allowed: 0, one for each extra column", sheet.GradedRow{Assessment: a, Extra: []string{""}}},
		{"line 2: flag: flag(9): unknown; allowed: repeated id, unusual fat, unusual ribeye, unusual KPH, unusual weight, weight unit, KPH fraction", sheet.GradedRow{Assessment: a, Flags: []sheet.Flag{{Kind: 9}}}},
	} {
		w, err := sheet.NewGradedWriter(io.Discard)
		if err != nil {
			t.Fatal(err)
		}
		if err := w.Write(tt.g); err == nil || err.Error() != tt.want {
			t.Errorf("Write = %v, want %s", err, tt.want)
		}
	}
}

// failing is an output that takes so many bytes and then fails.
type failing int

func (f *failing) Write(b []byte) (int, error) {
	*f -= failing(len(b))
	if *f < 0 {
		return 0, errDisk
	}
	return len(b), nil
}

func TestWriteOutputError(t *testing.T) {
	room := failing(64 << 10)
	w, err := sheet.NewWriter(&room)
	if err != nil {
		t.Fatal(err)
	}
	n := 0
	for ; n < 10_000 && err == nil; n++ {
		err = w.Write(sheet.Row{ID: "1", Carcass: steer})
	}
	// Rows of 46 bytes: some 710 make the first 32 KiB, and the error comes when the
	// second such piece cannot be written.
	if !errors.Is(err, errDisk) || n < 1000 || n > 2500 {
		t.Errorf("after %d rows: %v", n, err)
	}
	for range 2000 {
		if err := w.Write(sheet.Row{}); !errors.Is(err, errDisk) {
			t.Fatalf("the error does not stay: %v", err)
		}
	}
	if err := w.Flush(); !errors.Is(err, errDisk) {
		t.Errorf("the error does not stay: %v", err)
	}
}

// carcasses draws any carcass that can be written.
func carcasses() *rapid.Generator[grade.Carcass] {
	return rapid.Custom(func(t *rapid.T) grade.Carcass {
		score := rapid.Custom(func(t *rapid.T) maturity.Score {
			if rapid.Bool().Draw(t, "set") {
				return maturity.Score(rapid.IntRange(100, 600).Draw(t, "score"))
			}
			return 0
		})
		taken := func(name string) bool { return rapid.Bool().Draw(t, name+" taken") }
		c := grade.Carcass{
			Sex: grade.Sex(rapid.IntRange(0, 5).Draw(t, "sex")),
			Maturity: maturity.Evidence{
				Skeletal: score.Draw(t, "skeletal"),
				Lean:     score.Draw(t, "lean"),
				Teeth:    maturity.Teeth(rapid.IntRange(0, 9).Draw(t, "teeth")),
				Papers:   maturity.Months(rapid.IntRange(0, 600).Draw(t, "papers")),
			},
			Lean: grade.Lean{
				Firmness:    grade.Firmness(rapid.IntRange(0, 7).Draw(t, "firmness")),
				Dark:        grade.DarkCut(rapid.IntRange(0, 3).Draw(t, "dark")),
				BelowCutter: rapid.Bool().Draw(t, "below Cutter"),
			},
		}
		if taken("marbling") {
			c.Marbling = grade.Marbling(rapid.IntRange(100, 1100).Draw(t, "marbling"))
		}
		if taken("fat") {
			c.Measures.Fat = grade.ThicknessUnits(rapid.Int64Range(0, 30_000).Draw(t, "fat"))
		}
		if taken("ribeye") {
			c.Measures.Ribeye = grade.AreaUnits(rapid.Int64Range(10_000, 250_000).Draw(t, "ribeye"))
		}
		if taken("KPH") {
			c.Measures.KPH = grade.ShareUnits(rapid.Int64Range(0, 100_000).Draw(t, "KPH"))
		}
		if taken("weight") {
			c.Measures.Weight = grade.WeightUnits(rapid.Int64Range(1_000_000, 18_000_000).Draw(t, "weight"))
		}
		if taken("adjustment") {
			c.FatAdjust = grade.ThicknessUnits(rapid.Int64Range(-30_000, 30_000).Draw(t, "adjustment"))
		}
		return c
	})
}

// line draws one line of text, with what CSV finds hard more often than usual.
func line() *rapid.Generator[string] {
	return rapid.OneOf(rapid.StringMatching(`[ ,;|\t"a\\.é]*`), rapid.String().Filter(func(s string) bool { return !strings.ContainsAny(s, "\r\n") }))
}

func TestRoundTrip(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		rows := rapid.SliceOf(rapid.Custom(func(t *rapid.T) sheet.Row {
			return sheet.Row{
				ID:      "x" + strings.TrimSpace(line().Draw(t, "id")),
				Carcass: carcasses().Draw(t, "carcass"),
				Assumed: sheet.Assumptions(rapid.IntRange(0, 15).Draw(t, "assumed")),
				Extra:   []string{line().Draw(t, "note"), line().Draw(t, "pen")},
			}
		})).Draw(t, "rows")
		var buf bytes.Buffer
		w, err := sheet.NewWriter(&buf, "note", "pen;\"\t,|")
		if err != nil {
			t.Fatal(err)
		}
		for i := range rows {
			rows[i].Line = i + 2
			if err := w.Write(rows[i]); err != nil {
				t.Fatal(err)
			}
		}
		if err := w.Flush(); err != nil {
			t.Fatal(err)
		}
		text := buf.String()
		r, err := sheet.NewReader(&buf)
		if err != nil {
			t.Fatal(err)
		}
		got := []sheet.Row{}
		for row, err := range r.Rows() {
			if err != nil {
				t.Fatal(err)
			}
			got = append(got, row)
		}
		if d := cmp.Diff(rows, got); d != "" {
			t.Fatalf("(-want +got):\n%s", d)
		}
		// What encoding/csv makes of the same cells is the same sheet.
		cells, err := csv.NewReader(strings.NewReader(text)).ReadAll()
		if err != nil {
			t.Fatal(err)
		}
		var same strings.Builder
		if err := csv.NewWriter(&same).WriteAll(cells); err != nil {
			t.Fatal(err)
		}
		if d := cmp.Diff(same.String(), text); d != "" {
			t.Fatalf("encoding/csv writes it otherwise (-want +got):\n%s", d)
		}
	})
}

// FuzzWriteText compares the quoting of one cell with encoding/csv.
func FuzzWriteText(f *testing.F) {
	for _, s := range []string{"", "a", `\.`, " a", "\u00a0a", "a,b", `a"b`, `"`, `""`, "a\rb", "a\nb", "\xff", "\x85", "\u0085"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, cell string) {
		var got strings.Builder
		w, err := sheet.NewWriter(&got)
		if err != nil {
			t.Fatal(err)
		}
		err = w.Write(sheet.Row{ID: cell})
		if broken := strings.ContainsAny(cell, "\r\n"); broken || err != nil {
			if !broken || err == nil {
				t.Fatalf("Write(%q) = %v", cell, err)
			}
			return
		}
		if err := w.Flush(); err != nil {
			t.Fatal(err)
		}
		var want strings.Builder
		cw := csv.NewWriter(&want)
		if err := cw.Write([]string{cell, ""}); err != nil {
			t.Fatal(err)
		}
		cw.Flush()
		if d := cmp.Diff(full+strings.TrimSuffix(want.String(), "\n")+",,,,,,,,,,,,,,,,,\n", got.String()); d != "" {
			t.Errorf("(-want +got):\n%s", d)
		}
	})
}

// FuzzRead reads any text. What is read writes back to a sheet that reads the same.
func FuzzRead(f *testing.F) {
	f.Add(full + "1,steer,A60,A50,0,14,Sm40,firm,full,no,0.45,0.1,12.4,2.5,820,kph,dark red,coarse,white and soft\n")
	f.Add("id,note\n1,\"a\n2,b\n")
	f.Add("fat_mm,ribeye_sq_cm,kph_pct,weight_kg,x\r\n11.43,80,2.5,371.9,\r\n")
	f.Add("id,a\n1,\r\n\r\n2,\r")
	f.Fuzz(func(t *testing.T, in string) {
		r, err := sheet.NewReader(strings.NewReader(in))
		if err != nil {
			return
		}
		names := append(r.Extra(), "last")
		var buf bytes.Buffer
		w, err := sheet.NewWriter(&buf, names...)
		if err != nil {
			t.Skip("an extra column called last")
		}
		var rows []sheet.Row
		last := 0
		for row, err := range r.Rows() {
			if row.Line <= last {
				t.Fatalf("line %d after %d", row.Line, last)
			}
			last = row.Line
			if err != nil {
				var e *sheet.RowError
				if !errors.As(err, &e) || e.Line != row.Line {
					t.Fatalf("line %d: error %v", row.Line, err)
				}
				continue
			}
			row.Extra = append(row.Extra, "x")
			if err := w.Write(row); err != nil {
				t.Fatalf("cannot write %+v: %v", row, err)
			}
			row.Line = len(rows) + 2
			rows = append(rows, row)
		}
		if err := w.Flush(); err != nil {
			t.Fatal(err)
		}
		back, err := sheet.NewReader(&buf)
		if err != nil {
			t.Skip("an extra column near one of ours")
		}
		i := 0
		for row, err := range back.Rows() {
			if err != nil || i == len(rows) || cmp.Diff(rows[i], row) != "" {
				t.Fatalf("read back %+v, %v", row, err)
			}
			i++
		}
		if i != len(rows) {
			t.Fatalf("%d rows back of %d", i, len(rows))
		}
	})
}

// FuzzCells reads one cell of any text under every column and in several forms. It
// gives a carcass or an error, and never a measure beyond its limits.
func FuzzCells(f *testing.F) {
	for _, s := range []string{"", "A60", "160", "1,020.5", "4,5E-01", "2.5%", "Sm40", "'", "-.", "\u00a0", "12 in"} {
		f.Add(s)
	}
	forms := []sheet.Mapping{{}, {Decimal: ",", Missing: []string{"."}, Surplus: grade.HalfEven, Marbling: grade.Slight300, Maturity: sheet.LetterAt(50)}, {Marbling: grade.Slight400, Maturity: sheet.MaturityNumbers, Surplus: grade.Down}}
	f.Fuzz(func(t *testing.T, cell string) {
		if strings.ContainsAny(cell, "\"\n") || len(cell) > 1000 {
			t.Skip("no cell")
		}
		for c := range sheet.Columns() {
			for _, m := range forms {
				rows, errs := read(t, m, "x,"+c.Name+"\n1,\""+cell+"\"\n")
				if len(rows)+len(errs) != 1 {
					t.Fatalf("%s %q: %d rows and %q", c.Name, cell, len(rows), errs)
				}
				if len(rows) == 0 {
					continue
				}
				w, err := sheet.NewWriter(io.Discard)
				if err != nil {
					t.Fatal(err)
				}
				rows[0].Extra = nil
				if err := w.Write(rows[0]); err != nil {
					t.Fatalf("%s %q cannot be written: %v", c.Name, cell, err)
				}
			}
		}
	})
}

func TestColumns(t *testing.T) {
	var names []string
	for c := range sheet.Columns() {
		names = append(names, c.Name)
		if c.Field == "" || c.Allowed == "" {
			t.Errorf("%s: no field or nothing allowed", c.Name)
		}
		if len(names) == 3 {
			break
		}
	}
	if d := cmp.Diff([]string{"id", "sex", "skeletal"}, names); d != "" {
		t.Errorf("(-want +got):\n%s", d)
	}
}

// endless gives rows with ids that rise, so many of them.
type endless struct {
	left, id int
	rest     string
}

func (e *endless) Read(p []byte) (int, error) {
	n := 0
	for n < len(p) {
		if e.rest == "" {
			if e.left == 0 {
				break
			}
			e.left--
			e.id++
			e.rest = strconv.Itoa(e.id) + ",steer,A60,A50,0,14,Sm40,firm,full,no,0.45,0.1,12.4,2.5,820,,,,\n"
		}
		c := copy(p[n:], e.rest)
		n, e.rest = n+c, e.rest[c:]
	}
	if n == 0 {
		return 0, io.EOF
	}
	return n, nil
}

// TestMemoryIsFlat streams two sheets, one twice as long, and compares what the heap
// holds at their ends. Both are longer than the ids that are remembered.
func TestMemoryIsFlat(t *testing.T) {
	held := func(rows int) uint64 {
		in := io.MultiReader(strings.NewReader(full), &endless{left: rows})
		r, err := sheet.NewReader(in)
		if err != nil {
			t.Fatal(err)
		}
		n := 0
		var m runtime.MemStats
		for g, err := range r.Grade(context.Background(), rules) {
			if err != nil || g.Flags != nil {
				t.Fatal(g, err)
			}
			if n++; n == rows {
				runtime.GC()
				runtime.ReadMemStats(&m)
			}
		}
		if n != rows {
			t.Fatalf("%d rows of %d", n, rows)
		}
		return m.HeapAlloc
	}
	rows := 10_000 // a leak of 26 bytes a row shows
	if testkit.Exhaustive() {
		rows = 150_000
	}
	short, long := held(rows), held(2*rows)
	if long > short+256<<10 {
		t.Errorf("the heap holds %d bytes after %d rows and %d after twice as many", short, rows, long)
	}
}

func TestRowAllocations(t *testing.T) {
	const rows = 10_000
	in := string(benchSheet(t, rows))
	got := testing.AllocsPerRun(3, func() {
		if err := gradeAll(strings.NewReader(in), io.Discard); err != nil {
			t.Fatal(err)
		}
	})
	if got > rows/10 {
		t.Errorf("%v allocations for %d rows", got, rows)
	}
}

func TestZeroValues(t *testing.T) {
	var r sheet.Reader
	for range r.Rows() {
		t.Error("a row of nothing")
	}
	for range r.Grade(context.Background(), rules) {
		t.Error("a graded row of nothing")
	}
	if quality, yield := r.Lacks(); r.Extra() != nil || quality != nil || yield != nil || r.Counts().Graded != 0 {
		t.Error("columns of nothing")
	}
	var w sheet.Writer
	if err := w.Write(sheet.Row{}); err == nil || err.Error() != "line 1: writer: missing; allowed: one made by NewWriter" || w.Flush() != nil {
		t.Error(err)
	}
	var g sheet.GradedWriter
	if err := g.Write(sheet.GradedRow{}); err == nil || err.Error() != "line 1: writer: missing; allowed: one made by NewGradedWriter" || g.Flush() != nil {
		t.Error(err)
	}
}
