package sheet_test

import (
	"bytes"
	"encoding/csv"
	"errors"
	"io"
	"runtime"
	"strings"
	"testing"
	"testing/iotest"

	"example.com/ribface/grade"
	"example.com/ribface/grade/sheet"
	"example.com/ribface/maturity"
	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

const full = "id,sex,skeletal,lean,teeth,papers_months,marbling,firmness,dark,below_cutter,fat_in,fat_adjust_in,ribeye_sq_in,kph_pct,weight_lb\n"

// steer is the carcass of most tests.
var steer = grade.Carcass{
	Sex:      grade.Steer,
	Maturity: maturity.Evidence{Skeletal: maturity.A.At(60), Lean: maturity.A.At(50)},
	Marbling: grade.Small.At(40),
	Measures: grade.Measures{Fat: 4500, Ribeye: 124_000, KPH: 25_000, Weight: 8_200_000},
}

// read gives the rows of a sheet and the text of every error.
func read(t *testing.T, o sheet.Options, text string) (rows []sheet.Row, errs []string) {
	t.Helper()
	r, err := o.NewReader(strings.NewReader(text))
	if err != nil {
		t.Fatal(err)
	}
	for row, err := range r.Rows() {
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

func TestReadColumns(t *testing.T) {
	tests := []struct {
		name, reason, text string
		options            sheet.Options
		want               []sheet.Row
	}{
		{"usual", "the example of the package documentation", "id,sex,skeletal,lean,marbling,fat_in,ribeye_sq_in,kph_pct,weight_lb\n1,steer,A60,A50,Sm40,0.45,12.4,2.5,820\n", sheet.Options{}, []sheet.Row{{Line: 2, ID: "1", Carcass: steer}}},
		{"any order", "columns may stand in any order", "weight_lb,marbling,kph_pct,ribeye_sq_in,fat_in,lean,skeletal,sex\n820,Small40,2.50,12.4000,.45,A50,A60,steer\n820,Sm40,2.5,12.4,0.45,A50,A60,steer\n", sheet.Options{}, []sheet.Row{{Line: 3, Carcass: steer}}},
		{"metric", "11.43 mm is 0.45 in, 79.9998 sq cm is 12.39999 sq in, 372 kg is 820.11961 lb", "fat_mm,ribeye_sq_cm,kph_pct,weight_kg\n11.43,79.9998,2.5,372\n", sheet.Options{}, []sheet.Row{{Line: 2, Carcass: grade.Carcass{Measures: grade.Measures{Fat: 4500, Ribeye: 124_000, KPH: 25_000, Weight: 8_201_196}}}}},
		{"centimeters", "1.143 cm is 0.45 in, 0.254 cm is 0.1 in", "fat_cm,fat_adjust_cm,ribeye_sq_in,kph_pct,weight_lb\n1.143,-0.254,12.4,2.5,820\n", sheet.Options{}, []sheet.Row{{Line: 2, Carcass: grade.Carcass{Measures: steer.Measures, FatAdjust: -1000}}}},
		{"adjustment in mm", "2.54 mm is 0.1 in", "fat_in,fat_adjust_mm,ribeye_sq_in,kph_pct,weight_lb\n0.45,2.54,12.4,2.5,820\n", sheet.Options{}, []sheet.Row{{Line: 2, Carcass: grade.Carcass{Measures: steer.Measures, FatAdjust: 1000}}}},
		{"every field", "all columns filled", full + "x 1,cow,C20,B90,8,600,Md00,slightly firm,two thirds,yes,0,0.2,25,10,1800\n", sheet.Options{}, []sheet.Row{{Line: 2, ID: "x 1", Carcass: grade.Carcass{
			Sex:      grade.Cow,
			Maturity: maturity.Evidence{Skeletal: maturity.C.At(20), Lean: maturity.B.At(90), Teeth: maturity.Incisors(8), Papers: 600},
			Marbling: grade.Moderate.At(0), Lean: grade.Lean{Firmness: grade.SlightlyFirm, Dark: grade.DarkTwoThirds, BelowCutter: true},
			Measures: grade.Measures{Ribeye: 250_000, KPH: 100_000, Weight: 18_000_000}, FatAdjust: 2000,
		}}}},
		{"empty cells", "a row of nothing is a row with nothing set", full + ",,,,,,,,,,,,,,\n", sheet.Options{}, []sheet.Row{{Line: 2}}},
		{"no defect", "none and no are the zero values, no permanent incisors is not", full + ",,,,0,1,,,none,no,,,,,\n", sheet.Options{}, []sheet.Row{{Line: 2, Carcass: grade.Carcass{Maturity: maturity.Evidence{Teeth: maturity.Incisors(0), Papers: 1}}}}},
		{"blank lines and line ends", "blank lines are skipped and counted, the last line needs no end", "id\r\n\r\n7\r\n\n8", sheet.Options{}, []sheet.Row{{Line: 3, ID: "7"}, {Line: 5, ID: "8"}}},
		{"byte order mark", "spreadsheets put one in front", "\uFEFFid\n7\n", sheet.Options{}, []sheet.Row{{Line: 2, ID: "7"}}},
		{"quotes", "a cell with the comma stands in quotes, also after a byte order mark", "\uFEFF\"id\",\"sex\"\n\"pen 3, \"\"red\"\"\",\"heifer\"\n", sheet.Options{}, []sheet.Row{{Line: 2, ID: `pen 3, "red"`, Carcass: grade.Carcass{Sex: grade.Heifer}}}},
		{"semicolon", "another divider, for which a comma is text", "id;sex\na,b;heifer\n\"a;b\";\n", sheet.Options{Comma: ';'}, []sheet.Row{{Line: 2, ID: "a,b", Carcass: grade.Carcass{Sex: grade.Heifer}}, {Line: 3, ID: "a;b"}}},
		{"tab", "another divider", "id\tsex\n1\theifer\n", sheet.Options{Comma: '\t'}, []sheet.Row{{Line: 2, ID: "1", Carcass: grade.Carcass{Sex: grade.Heifer}}}},
		{"bar", "another divider", "id|sex\n1|heifer\n", sheet.Options{Comma: '|'}, []sheet.Row{{Line: 2, ID: "1", Carcass: grade.Carcass{Sex: grade.Heifer}}}},
		{"extra columns", "kept as they stand, in order", "pen,id,note\n 4,1,\"a \"\"b\"\"\"\n,2,\n", sheet.Options{Extra: true}, []sheet.Row{{Line: 2, ID: "1", Extra: []string{" 4", `a "b"`}}, {Line: 3, ID: "2", Extra: []string{"", ""}}}},
		{"header alone", "a sheet without rows", "id\n", sheet.Options{}, nil},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			rows, errs := read(t, tt.options, tt.text)
			if tt.name == "any order" {
				// A number without a digit before the point is refused.
				want := []string{`line 2, column 5 (fat_in): fat: .45: bad syntax; allowed: a number with at most 4 places, 0 to 3 in`}
				if d := cmp.Diff(want, errs); d != "" {
					t.Errorf("errors (-want +got):\n%s", d)
				}
			} else if errs != nil {
				t.Errorf("errors: %q", errs)
			}
			if d := cmp.Diff(tt.want, rows); d != "" {
				t.Errorf("%s (-want +got):\n%s", tt.reason, d)
			}
		})
	}
}

func TestReadBadRows(t *testing.T) {
	const good = "9,steer,A60,A50,,,Sm40,,,,0.45,,12.4,2.5,820\n"
	tests := []struct {
		name, reason, row string
		want              string
	}{
		{"sex", "an unknown class", "1,ox,,,,,,,,,,,,,", "line 2, column 2 (sex): sex class: ox: unknown; allowed: steer, heifer, cow, bullock, bull"},
		{"skeletal", "no such group", "1,,F10,,,,,,,,,,,,", "line 2, column 3 (skeletal): skeletal maturity: F10: unknown; allowed: A00 to E100"},
		{"lean", "no units", "1,,,A,,,,,,,,,,,", "line 2, column 4 (lean): lean maturity: A: bad syntax; allowed: A00 to E100"},
		{"teeth over", "nine incisors", "1,,,,9,,,,,,,,,,", "line 2, column 5 (teeth): teeth: 9: out of range; allowed: the count of permanent incisors, 0 to 8"},
		{"teeth under", "less than none", "1,,,,-1,,,,,,,,,,", "line 2, column 5 (teeth): teeth: -1: out of range; allowed: the count of permanent incisors, 0 to 8"},
		{"teeth text", "no number", "1,,,,two,,,,,,,,,,", "line 2, column 5 (teeth): teeth: two: bad syntax; allowed: the count of permanent incisors, 0 to 8"},
		{"papers zero", "no papers is an empty cell", "1,,,,,0,,,,,,,,,", "line 2, column 6 (papers_months): papers: 0 months: out of range; allowed: whole months, 1 to 600"},
		{"papers over", "over 50 years", "1,,,,,601,,,,,,,,,", "line 2, column 6 (papers_months): papers: 601 months: out of range; allowed: whole months, 1 to 600"},
		{"papers far over", "the type does not hold it, and it must not wrap", "1,,,,,65566,,,,,,,,,", "line 2, column 6 (papers_months): papers: 65566 months: out of range; allowed: whole months, 1 to 600"},
		{"papers far under", "the type does not hold it, and it must not wrap", "1,,,,,-65506,,,,,,,,,", "line 2, column 6 (papers_months): papers: -65506 months: out of range; allowed: whole months, 1 to 600"},
		{"papers part", "not whole months", "1,,,,,14.5,,,,,,,,,", "line 2, column 6 (papers_months): papers: 14.5 months: out of range; allowed: whole months, 1 to 600"},
		{"marbling", "no such degree", "1,,,,,,Xx40,,,,,,,,", "line 2, column 7 (marbling): marbling: Xx40: unknown; allowed: Devoid00 to Ab100"},
		{"firmness", "no such term", "1,,,,,,,hard,,,,,,,", "line 2, column 8 (firmness): firmness: hard: unknown; allowed: very soft, soft, moderately soft, slightly soft, slightly firm, moderately firm, firm"},
		{"dark", "no such step", "1,,,,,,,,half,,,,,,", "line 2, column 9 (dark): dark cut: half: unknown; allowed: none, one third, two thirds, full"},
		{"below cutter", "neither yes nor no", "1,,,,,,,,,true,,,,,", "line 2, column 10 (below_cutter): below Cutter: true: unknown; allowed: yes, no"},
		{"fat over", "over 3 in", "1,,,,,,,,,,3.0001,,12.4,2.5,820", "line 2, column 11 (fat_in): fat: 3.0001 in: out of range; allowed: a number with at most 4 places, 0 to 3 in"},
		{"fat under", "less than no fat", "1,,,,,,,,,,-0.0001,,12.4,2.5,820", "line 2, column 11 (fat_in): fat: -0.0001 in: out of range; allowed: a number with at most 4 places, 0 to 3 in"},
		{"fat too fine", "more places than the unit holds", "1,,,,,,,,,,0.45001,,12.4,2.5,820", "line 2, column 11 (fat_in): fat: 0.45001 in: out of range; allowed: a number with at most 4 places, 0 to 3 in"},
		{"fat far over", "the type does not hold it, and it must not wrap", "1,,,,,,,,,,429496.7296,,12.4,2.5,820", "line 2, column 11 (fat_in): fat: 429496.7296 in: out of range; allowed: a number with at most 4 places, 0 to 3 in"},
		{"fat far under", "the type does not hold it, and it must not wrap", "1,,,,,,,,,,-429496.7296,,12.4,2.5,820", "line 2, column 11 (fat_in): fat: -429496.7296 in: out of range; allowed: a number with at most 4 places, 0 to 3 in"},
		{"fat with a unit", "the unit stands in the header", "1,,,,,,,,,,0.45 in,,12.4,2.5,820", "line 2, column 11 (fat_in): fat: 0.45 in: bad syntax; allowed: a number with at most 4 places, 0 to 3 in"},
		{"fat with a quote mark", "the unit stands in the header", "1,,,,,,,,,,\"0.45\"\"\",,12.4,2.5,820", "line 2, column 11 (fat_in): fat: 0.45\": bad syntax; allowed: a number with at most 4 places, 0 to 3 in"},
		{"fat ends in a point", "a point wants digits", "1,,,,,,,,,,1.,,12.4,2.5,820", "line 2, column 11 (fat_in): fat: 1.: bad syntax; allowed: a number with at most 4 places, 0 to 3 in"},
		{"adjustment over", "adjusted fat over 3 in", "1,,,,,,,,,,0.45,2.5501,12.4,2.5,820", "line 2, column 12 (fat_adjust_in): fat adjustment: 2.5501 in: out of range; allowed: a number with at most 4 places, -3 to 3 in, leaving the fat 0 to 3 in"},
		{"adjustment under", "adjusted fat under 0", "1,,,,,,,,,,0.45,-0.4501,12.4,2.5,820", "line 2, column 12 (fat_adjust_in): fat adjustment: -0.4501 in: out of range; allowed: a number with at most 4 places, -3 to 3 in, leaving the fat 0 to 3 in"},
		{"ribeye zero", "no ribeye is no measure", "1,,,,,,,,,,0.45,,0,2.5,820", "line 2, column 13 (ribeye_sq_in): ribeye: 0 sq in: out of range; allowed: a number with at most 4 places, over 0 to 25 sq in"},
		{"ribeye over", "over 25 sq in", "1,,,,,,,,,,0.45,,25.0001,2.5,820", "line 2, column 13 (ribeye_sq_in): ribeye: 25.0001 sq in: out of range; allowed: a number with at most 4 places, over 0 to 25 sq in"},
		{"KPH over", "over 10%", "1,,,,,,,,,,0.45,,12.4,10.0001,820", "line 2, column 14 (kph_pct): KPH: 10.0001 %: out of range; allowed: a number with at most 4 places, 0 to 10%"},
		{"weight over", "over 1,800 lb", "1,,,,,,,,,,0.45,,12.4,2.5,1800.0001", "line 2, column 15 (weight_lb): weight: 1800.0001 lb: out of range; allowed: a number with at most 4 places, over 0 to 1800 lb"},
		{"weight grouped", "no grouping", "1,,,,,,,,,,0.45,,12.4,2.5,\"1,020\"", "line 2, column 15 (weight_lb): weight: 1,020: bad syntax; allowed: a number with at most 4 places, over 0 to 1800 lb"},
		{"some measures", "an empty cell is not taken for zero", "1,,,,,,,,,,,,12.4,,820", "line 2, column 11 (fat_in): fat: missing; allowed: a number with at most 4 places, 0 to 3 in; line 2, column 14 (kph_pct): KPH: missing; allowed: a number with at most 4 places, 0 to 10%"},
		{"adjustment alone", "nothing to adjust", "1,,,,,,,,,,,0.1,,,", "line 2, column 11 (fat_in): fat: missing; allowed: a number with at most 4 places, 0 to 3 in; line 2, column 13 (ribeye_sq_in): ribeye: missing; allowed: a number with at most 4 places, over 0 to 25 sq in; line 2, column 14 (kph_pct): KPH: missing; allowed: a number with at most 4 places, 0 to 10%; line 2, column 15 (weight_lb): weight: missing; allowed: a number with at most 4 places, over 0 to 1800 lb"},
		{"several", "all that is wrong is reported, each once, from left to right", "1,ox,,,,,,,,,x,0.1,30,2.5,820", "line 2, column 2 (sex): sex class: ox: unknown; allowed: steer, heifer, cow, bullock, bull; line 2, column 11 (fat_in): fat: x: bad syntax; allowed: a number with at most 4 places, 0 to 3 in; line 2, column 13 (ribeye_sq_in): ribeye: 30 sq in: out of range; allowed: a number with at most 4 places, over 0 to 25 sq in"},
		{"adjustment unread", "a bad adjustment is reported once", "1,,,,,,,,,,0.45,x,12.4,2.5,820", "line 2, column 12 (fat_adjust_in): fat adjustment: x: bad syntax; allowed: a number with at most 4 places, -3 to 3 in, leaving the fat 0 to 3 in"},
		{"adjustment with a bad ribeye", "the adjustment is looked at beside the fat alone", "1,,,,,,,,,,0.45,-2,30,2.5,820", "line 2, column 12 (fat_adjust_in): fat adjustment: -2 in: out of range; allowed: a number with at most 4 places, -3 to 3 in, leaving the fat 0 to 3 in; line 2, column 13 (ribeye_sq_in): ribeye: 30 sq in: out of range; allowed: a number with at most 4 places, over 0 to 25 sq in"},
		{"adjustment with fat over", "the fat is at fault, not the adjustment", "1,,,,,,,,,,4,-2,12.4,2.5,820", "line 2, column 11 (fat_in): fat: 4 in: out of range; allowed: a number with at most 4 places, 0 to 3 in"},
		{"adjustment with fat missing", "the fat is at fault, not the adjustment", "1,,,,,,,,,,,-2,12.4,2.5,820", "line 2, column 11 (fat_in): fat: missing; allowed: a number with at most 4 places, 0 to 3 in"},
		{"adjustment with fat unread", "the fat is at fault, not the adjustment", "1,,,,,,,,,,x,-2,12.4,2.5,820", "line 2, column 11 (fat_in): fat: x: bad syntax; allowed: a number with at most 4 places, 0 to 3 in"},
		{"short", "a cell too few", "1,,,,,,,,,,,,,", "line 2: row: 14 cells: bad syntax; allowed: 15 cells, one for each column"},
		{"long", "a cell too many", "1,,,,,,,,,,,,,,,", "line 2: row: 16 cells: bad syntax; allowed: 15 cells, one for each column"},
		{"stray quote", "a quote inside a cell", `1,st"eer,,,,,,,,,,,,,`, "line 2: row: a stray or open quote at byte 5: bad syntax; allowed: quotes around a whole cell, doubled inside it, closed on the same line"},
		{"open quote", "spoils its own line only", `1,"steer,,,,,,,,,,,,,`, "line 2: row: a stray or open quote at byte 23: bad syntax; allowed: quotes around a whole cell, doubled inside it, closed on the same line"},
		{"line break in the id", "a carriage return is a line break", "a\rb,,,,,,,,,,,,,,", `line 2, column 1 (id): id: "a\rb": bad syntax; allowed: one line of text`},
		{"clipped", "a long value is cut at 64 bytes", "1," + strings.Repeat("x", 65) + ",,,,,,,,,,,,,", "line 2, column 2 (sex): sex class: " + strings.Repeat("x", 64) + ": unknown; allowed: steer, heifer, cow, bullock, bull"},
		{"not printable", "shown in quotes", "1,\x01\xff,,,,,,,,,,,,,", `line 2, column 2 (sex): sex class: "\x01\xff": unknown; allowed: steer, heifer, cow, bullock, bull`},
		{"bad bytes", "shown in quotes", "1,\xff,,,,,,,,,,,,,", `line 2, column 2 (sex): sex class: "\xff": unknown; allowed: steer, heifer, cow, bullock, bull`},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			rows, errs := read(t, sheet.Options{}, full+tt.row+"\n"+good)
			if d := cmp.Diff([]string{tt.want}, errs); d != "" {
				t.Errorf("%s (-want +got):\n%s", tt.reason, d)
			}
			if d := cmp.Diff([]sheet.Row{{Line: 3, ID: "9", Carcass: steer}}, rows); d != "" {
				t.Errorf("the row after it (-want +got):\n%s", d)
			}
		})
	}
}

func TestReadMetricErrors(t *testing.T) {
	const tail = ",80,2.5,372\n"
	const allowed = "; allowed: a number with at most 4 places, 0 to 3 in (76.2 mm)"
	rows, errs := read(t, sheet.Options{}, "fat_mm,ribeye_sq_cm,kph_pct,weight_kg\n76.2"+tail+"76.2013"+tail+"11 mm"+tail+"11.43210"+tail+"11.43211"+tail+"11."+tail+"x1"+tail+"9999999999"+tail)
	want := []string{
		"line 3, column 1 (fat_mm): fat: 76.2013 mm: out of range" + allowed,
		"line 4, column 1 (fat_mm): fat: 11 mm: bad syntax" + allowed,
		"line 6, column 1 (fat_mm): fat: 11.43211 mm: out of range" + allowed,
		"line 7, column 1 (fat_mm): fat: 11.: bad syntax" + allowed,
		"line 8, column 1 (fat_mm): fat: x1: bad syntax" + allowed,
		"line 9, column 1 (fat_mm): fat: 9999999999 mm: out of range" + allowed,
	}
	if d := cmp.Diff(want, errs); d != "" {
		t.Errorf("errors (-want +got):\n%s", d)
	}
	// 76.2 mm is 3 in, the most; 11.4321 mm is 0.45008 in.
	if len(rows) != 2 || rows[0].Carcass.Measures.Fat != 30_000 || rows[1].Carcass.Measures.Fat != 4501 {
		t.Errorf("%+v", rows)
	}
}

func TestReadLimits(t *testing.T) {
	// Both ends of every range that a cell may have, beside the bad rows above.
	rows, errs := read(t, sheet.Options{}, full+
		"1,,,,0,1,,,,,3,-3,25,10,1800\n"+
		"2,,,,8,600,,,,,0,3,0.0001,0,0.0001\n"+
		strings.Repeat("x", 65530)+"\n"+ // 65,531 bytes: read, and too few cells
		strings.Repeat("x", 65535)+"\n"+
		strings.Repeat("x", 65536)+"\n"+ // a byte too long
		strings.Repeat("x", 200_000)+"\n"+
		"3,,,,,,,,,,,,,,\n")
	want := []sheet.Row{
		{Line: 2, ID: "1", Carcass: grade.Carcass{Maturity: maturity.Evidence{Teeth: maturity.Incisors(0), Papers: 1}, Measures: grade.Measures{Fat: 30_000, Ribeye: 250_000, KPH: 100_000, Weight: 18_000_000}, FatAdjust: -30_000}},
		{Line: 3, ID: "2", Carcass: grade.Carcass{Maturity: maturity.Evidence{Teeth: maturity.Incisors(8), Papers: 600}, Measures: grade.Measures{Ribeye: 1, Weight: 1}, FatAdjust: 30_000}},
		{Line: 8, ID: "3"},
	}
	if d := cmp.Diff(want, rows); d != "" {
		t.Errorf("rows (-want +got):\n%s", d)
	}
	const few, long = ": row: 1 cell: bad syntax; allowed: 15 cells, one for each column", ": row: over 65536 bytes: out of range; allowed: lines up to 64 KiB"
	if d := cmp.Diff([]string{"line 4" + few, "line 5" + few, "line 6" + long, "line 7" + long}, errs); d != "" {
		t.Errorf("errors (-want +got):\n%s", d)
	}
}

func TestReadHeader(t *testing.T) {
	const names = "id, sex, skeletal, lean, teeth, papers_months, marbling, firmness, dark, below_cutter, fat_in, fat_mm, fat_cm, fat_adjust_in, fat_adjust_mm, fat_adjust_cm, ribeye_sq_in, ribeye_sq_cm, kph_pct, weight_lb, weight_kg"
	tests := []struct {
		name, reason, text string
		options            sheet.Options
		want               string
		is                 error
	}{
		{"empty", "no header", "", sheet.Options{}, "line 1: header: missing; allowed: the names of the columns, as id,fat_in,ribeye_sq_in,kph_pct,weight_lb", grade.ErrMissing},
		{"blank lines", "no header", "\n\r\n", sheet.Options{}, "line 2: header: missing; allowed: the names of the columns, as id,fat_in,ribeye_sq_in,kph_pct,weight_lb", grade.ErrMissing},
		{"unknown", "it may be a known one misspelled", "id,fat,sex\n", sheet.Options{}, "line 1, column 2 (fat): column: fat: unknown; allowed: " + names, grade.ErrUnknown},
		{"capitals", "one spelling", "\nID\n", sheet.Options{}, "line 2, column 1 (ID): column: ID: unknown; allowed: " + names, grade.ErrUnknown},
		{"two", "all that is wrong is named", "x,id,y\n", sheet.Options{}, "line 1, column 1 (x): column: x: unknown; allowed: " + names + "; line 1, column 3 (y): column: y: unknown; allowed: " + names, grade.ErrUnknown},
		{"no name", "a column without a name", "id,,sex\n", sheet.Options{Extra: true}, "line 1, column 2: column: missing; allowed: a name", grade.ErrMissing},
		{"twice", "a column twice", "id,sex,id\n", sheet.Options{}, "line 1, column 3 (id): id: id: repeated; allowed: one column for id; column 1 is id", sheet.ErrRepeated},
		{"two units", "a measure in two units", "fat_in,ribeye_sq_in,kph_pct,weight_lb,fat_mm\n", sheet.Options{}, "line 1, column 5 (fat_mm): fat: fat_mm: repeated; allowed: one column for fat; column 1 is fat_in", sheet.ErrRepeated},
		{"extra twice", "an extra column twice", "id,pen,pen\n", sheet.Options{Extra: true}, "line 1, column 3 (pen): column: pen: repeated; allowed: each column once", sheet.ErrRepeated},
		{"extra broken", "an extra column with a line break in its name", "id,pe\rn\n", sheet.Options{Extra: true}, `line 1, column 2 ("pe\rn"): column: "pe\rn": bad syntax; allowed: one line of text`, grade.ErrSyntax},
		{"extra alone", "nothing of a carcass", "pen,note\n", sheet.Options{Extra: true}, "line 1: header: missing; allowed: one known column or more: " + names, grade.ErrMissing},
		{"some measures", "an unset fat would read as no fat", "id,ribeye_sq_in,weight_lb\n", sheet.Options{}, "line 1 (fat_in): fat: missing; allowed: fat, ribeye, KPH and weight together or none of them; line 1 (kph_pct): KPH: missing; allowed: fat, ribeye, KPH and weight together or none of them", grade.ErrMissing},
		{"open quote", "the header cannot be divided", "\"id,sex\n1,steer\n", sheet.Options{}, "line 1: row: a stray or open quote at byte 9: bad syntax; allowed: quotes around a whole cell, doubled inside it, closed on the same line", grade.ErrSyntax},
		{"comma", "no divider", "id\n", sheet.Options{Comma: '.'}, "comma: '.': unknown; allowed: comma, semicolon, tab or bar", grade.ErrUnknown},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			r, err := tt.options.NewReader(strings.NewReader(tt.text))
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
}

func TestReadExtraErrors(t *testing.T) {
	rows, errs := read(t, sheet.Options{Extra: true}, "id,pen,fat_adjust_mm\n1,a\rb,\n2,,0.1\n3,,\n")
	if d := cmp.Diff([]sheet.Row{{Line: 4, ID: "3", Extra: []string{""}}}, rows); d != "" {
		t.Errorf("rows (-want +got):\n%s", d)
	}
	want := []string{
		`line 2, column 2 (pen): column: "a\rb": bad syntax`,
		"line 3 (fat_in): fat: missing; allowed: a number with at most 4 places, 0 to 3 in",
	}
	if d := cmp.Diff(want, errs); d != "" {
		t.Errorf("errors (-want +got):\n%s", d)
	}
}

func TestReaderExtra(t *testing.T) {
	r, err := sheet.Options{Extra: true}.NewReader(strings.NewReader("pen,id,note\n"))
	if err != nil {
		t.Fatal(err)
	}
	got := r.Extra()
	if d := cmp.Diff([]string{"pen", "note"}, got); d != "" {
		t.Errorf("(-want +got):\n%s", d)
	}
	got[0] = "changed"
	if r.Extra()[0] != "pen" {
		t.Error("Extra hands out its storage")
	}
}

var errDisk = errors.New("disk gone")

func TestReadInputError(t *testing.T) {
	in := io.MultiReader(strings.NewReader("id\n1\n2"), iotest.ErrReader(errDisk))
	r, err := sheet.NewReader(in)
	if err != nil {
		t.Fatal(err)
	}
	var got []string
	for row, err := range r.Rows() {
		if err != nil {
			var e *sheet.Error
			if !errors.Is(err, errDisk) || !errors.As(err, &e) || e.Line != 3 || e.Column != 0 {
				t.Errorf("error %v", err)
			}
			got = append(got, err.Error())
			continue
		}
		got = append(got, row.ID)
	}
	// The 2 may be the start of 20: it is not given as a row.
	if d := cmp.Diff([]string{"1", "line 3: disk gone"}, got); d != "" {
		t.Errorf("(-want +got):\n%s", d)
	}
	for range r.Rows() {
		t.Error("a row after the end")
	}
	if _, err := sheet.NewReader(iotest.ErrReader(errDisk)); !errors.Is(err, errDisk) || err.Error() != "line 1: disk gone" {
		t.Errorf("NewReader: %v", err)
	}
}

func TestRowsCanBeTakenUpAgain(t *testing.T) {
	r, err := sheet.NewReader(strings.NewReader("id\n1\n2\n3\n"))
	if err != nil {
		t.Fatal(err)
	}
	var got []string
	for row := range r.Rows() {
		got = append(got, row.ID)
		break
	}
	for g, err := range r.Grade(grade.Rules{Edition: grade.Current}) {
		got = append(got, g.ID+" "+err.Error())
		break
	}
	for row := range r.Rows() {
		got = append(got, row.ID)
	}
	if d := cmp.Diff([]string{"1", "2 line 3 (sex): sex class: missing; allowed: steer, heifer, cow, bullock, bull", "3"}, got); d != "" {
		t.Errorf("(-want +got):\n%s", d)
	}
}

func TestGrade(t *testing.T) {
	in := "note,id,sex,skeletal,lean,teeth,marbling,firmness,fat_mm,fat_adjust_in,ribeye_sq_in,kph_pct,weight_lb\n" +
		"a,1,steer,A60,A50,,Sm40,,11.43,,12.4,2.5,820\n" +
		"b,2,,A60,A50,,Sm40,,11.43,,12.4,2.5,820\n" +
		"c,3,steer,A60,,3,Sm40,,11.43,,12.4,2.5,820\n" +
		"d,4,steer,A60,A50,,Sm40,,,,,,\n" +
		"e,5,steer,A60,A50,,Sm4,,11.43,,12.4,2.5,820\n" +
		"f,6,bull,A60,A50,,Sm40,,11.43,,12.4,2.5,820\n"
	r, err := sheet.Options{Extra: true}.NewReader(strings.NewReader(in))
	if err != nil {
		t.Fatal(err)
	}
	var out strings.Builder
	w, err := sheet.Options{Comma: ';'}.NewGradedWriter(&out, r.Extra()...)
	if err != nil {
		t.Fatal(err)
	}
	var errs []string
	for g, err := range r.Grade(grade.Rules{Edition: grade.Current}) {
		if err != nil {
			errs = append(errs, g.ID+": "+err.Error())
			if g.Assessment != (grade.Assessment{}) {
				t.Errorf("a bad row has an assessment: %+v", g)
			}
			continue
		}
		if want := map[string]int{"1": 2, "6": 7}[g.ID]; g.Line != want {
			t.Errorf("carcass %s on line %d, want %d", g.ID, g.Line, want)
		}
		if err := w.Write(g); err != nil {
			t.Fatal(err)
		}
	}
	if err := w.Flush(); err != nil {
		t.Fatal(err)
	}
	wantErrs := []string{
		"2: line 3, column 3 (sex): sex class: missing; allowed: steer, heifer, cow, bullock, bull",
		"3: line 4, column 5 (lean): lean maturity: missing; allowed: A00 to E100",
		"4: line 5, column 11 (ribeye_sq_in): ribeye: missing; allowed: over 0 sq in to 25 sq in",
		"5: line 6, column 7 (marbling): marbling: Sm4: bad syntax; allowed: Devoid00 to Ab100",
	}
	if d := cmp.Diff(wantErrs, errs); d != "" {
		t.Errorf("errors (-want +got):\n%s", d)
	}
	// 2.50 + 2.50 x 0.45 + 0.20 x 2.5 + 0.0038 x 820 - 0.32 x 12.4 = 3.273.
	want := strings.ReplaceAll(strings.TrimSuffix(full, "\n")+",overall,quality,yield,yield_grade,tier,note\n", ",", ";") +
		"1;steer;A60;A50;;;Sm40;;;;0.45;;12.4;2.5;820;A55;Low Choice;3.273;3;low choice;a\n" +
		"6;bull;A60;A50;;;Sm40;;;;0.45;;12.4;2.5;820;A55;No grade;3.273;3;below standard;f\n"
	if d := cmp.Diff(want, out.String()); d != "" {
		t.Errorf("sheet (-want +got):\n%s", d)
	}
	// The graded sheet reads back, its results as extra columns.
	rows, errs := read(t, sheet.Options{Comma: ';', Extra: true}, out.String())
	if errs != nil || len(rows) != 2 || rows[0].Carcass != steer {
		t.Errorf("read back %+v, %q", rows, errs)
	}
	if d := cmp.Diff([]string{"A55", "No grade", "3.273", "3", "below standard", "f"}, rows[1].Extra); d != "" {
		t.Errorf("extra (-want +got):\n%s", d)
	}
}

func TestGradeRules(t *testing.T) {
	for name, rules := range map[string]grade.Rules{
		"edition: missing; allowed: 1975, 1987, 1997, 2016, 2017":                          {},
		"rules: old lean: old lean(9): unknown; allowed: OldLeanMayCross, OldLeanStaysInB": {Edition: grade.Current, Maturity: maturity.Rules{OldLean: 9}},
	} {
		r, err := sheet.NewReader(strings.NewReader("id\n1\n2\n"))
		if err != nil {
			t.Fatal(err)
		}
		n := 0
		for g, err := range r.Grade(rules) {
			n++
			if err == nil || err.Error() != name || g.ID != "" {
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
	tests := []struct {
		name, reason string
		row          sheet.Row
		want         string
	}{
		{"id", "a line break", with(func(r *sheet.Row) { r.ID = "a\nb" }), `line 2, column 1 (id): id: "a\nb": bad syntax; allowed: one line of text`},
		{"sex", "no class", with(func(r *sheet.Row) { r.Carcass.Sex = 6 }), "line 2, column 2 (sex): sex class: sex class(6): unknown; allowed: steer, heifer, cow, bullock, bull"},
		{"skeletal", "impossible units", with(func(r *sheet.Row) { r.Carcass.Maturity.Skeletal = maturity.A.At(101) }), "line 2, column 3 (skeletal): skeletal maturity: A(101): out of range; allowed: A00 to E100"},
		{"lean", "impossible units", with(func(r *sheet.Row) { r.Carcass.Maturity.Lean = maturity.A.At(101) }), "line 2, column 4 (lean): lean maturity: A(101): out of range; allowed: A00 to E100"},
		{"teeth", "an impossible count", with(func(r *sheet.Row) { r.Carcass.Maturity.Teeth = maturity.Incisors(9) }), "line 2, column 5 (teeth): teeth: 9 permanent incisors: out of range; allowed: the count of permanent incisors, 0 to 8"},
		{"papers", "too old", with(func(r *sheet.Row) { r.Carcass.Maturity.Papers = 601 }), "line 2, column 6 (papers_months): papers: 601 months: out of range; allowed: whole months, 1 to 600"},
		{"marbling", "impossible points", with(func(r *sheet.Row) { r.Carcass.Marbling = grade.Small.At(101) }), "line 2, column 7 (marbling): marbling: Sm(101): out of range; allowed: Devoid00 to Ab100"},
		{"firmness", "no term", with(func(r *sheet.Row) { r.Carcass.Lean.Firmness = 8 }), "line 2, column 8 (firmness): firmness: firmness(8): unknown; allowed: very soft, soft, moderately soft, slightly soft, slightly firm, moderately firm, firm"},
		{"dark", "no step", with(func(r *sheet.Row) { r.Carcass.Lean.Dark = 4 }), "line 2, column 9 (dark): dark cut: dark cut(4): unknown; allowed: none, one third, two thirds, full"},
		{"fat", "over 3 in", with(func(r *sheet.Row) { r.Carcass.Measures.Fat = 30_001 }), "line 2, column 11 (fat_in): fat: 3.0001 in: out of range; allowed: 0 in to 3 in"},
		{"adjustment", "over 3 in", with(func(r *sheet.Row) { r.Carcass.FatAdjust = 30_001 }), "line 2, column 12 (fat_adjust_in): fat adjustment: 3.0001 in: out of range; allowed: -3 in to 3 in"},
		{"adjusted", "under 0", with(func(r *sheet.Row) { r.Carcass.FatAdjust = -4501 }), "line 2, column 12 (fat_adjust_in): adjusted fat: -0.0001 in: out of range; allowed: 0 in to 3 in"},
		{"ribeye", "missing beside other measures", with(func(r *sheet.Row) { r.Carcass.Measures.Ribeye = 0 }), "line 2, column 13 (ribeye_sq_in): ribeye: missing; allowed: over 0 sq in to 25 sq in"},
		{"KPH", "not a number", with(func(r *sheet.Row) { r.Carcass.Measures.KPH = -1 << 31 }), "line 2, column 14 (kph_pct): KPH: not a number: out of range; allowed: 0% to 10%"},
		{"weight", "missing beside other measures", with(func(r *sheet.Row) { r.Carcass.Measures.Weight = 0 }), "line 2, column 15 (weight_lb): weight: missing; allowed: over 0 lb to 1800 lb"},
		{"adjustment alone", "nothing to adjust", with(func(r *sheet.Row) { r.Carcass.Measures, r.Carcass.FatAdjust = grade.Measures{}, 1 }), "line 2, column 13 (ribeye_sq_in): ribeye: missing; allowed: over 0 sq in to 25 sq in"},
		{"no extra cell", "a cell for every extra column", with(func(r *sheet.Row) { r.Extra = nil }), "line 2: row: 0 extra cells: bad syntax; allowed: 1, one for each extra column"},
		{"extra cells", "a column for every extra cell", with(func(r *sheet.Row) { r.Extra = []string{"x", "y"} }), "line 2: row: 2 extra cells: bad syntax; allowed: 1, one for each extra column"},
		{"extra broken", "a line break", with(func(r *sheet.Row) { r.Extra = []string{"x\n"} }), `line 2, column 16: extra cell: "x\n": bad syntax; allowed: one line of text`},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			var out strings.Builder
			w, err := sheet.NewWriter(&out, "note")
			if err != nil {
				t.Fatal(err)
			}
			err = w.Write(tt.row)
			var e *sheet.Error
			if !errors.As(err, &e) {
				t.Fatalf("Write = %v", err)
			}
			if d := cmp.Diff(tt.want, err.Error()); d != "" {
				t.Errorf("%s (-want +got):\n%s", tt.reason, d)
			}
			if err := w.Write(sheet.Row{ID: "2", Carcass: grade.Carcass{Lean: grade.Lean{BelowCutter: true}}, Extra: []string{"a,b"}}); err != nil {
				t.Error(err)
			}
			if err := w.Flush(); err != nil {
				t.Error(err)
			}
			if d := cmp.Diff(strings.TrimSuffix(full, "\n")+",note\n2,,,,,,,,,yes,,,,,,\"a,b\"\n", out.String()); d != "" {
				t.Errorf("sheet (-want +got):\n%s", d)
			}
		})
	}
}

func TestWriteNamesTheExtraCell(t *testing.T) {
	w, err := sheet.NewWriter(io.Discard, "pen", "note", "buyer")
	if err != nil {
		t.Fatal(err)
	}
	err = w.Write(sheet.Row{Extra: []string{"", "", "a\r"}})
	if want := `line 2, column 18: extra cell: "a\r": bad syntax; allowed: one line of text`; err == nil || err.Error() != want {
		t.Errorf("%v, want %s", err, want)
	}
}

func TestWriteLine(t *testing.T) {
	w, err := sheet.NewWriter(io.Discard)
	if err != nil {
		t.Fatal(err)
	}
	for range 3 {
		if err := w.Write(sheet.Row{Carcass: steer}); err != nil {
			t.Fatal(err)
		}
	}
	// The header and three rows are written: the bad one would be line 5.
	if err := w.Write(sheet.Row{ID: "\n"}); err == nil || err.Error() != `line 5, column 1 (id): id: "\n": bad syntax; allowed: one line of text` {
		t.Error(err)
	}
	if err := w.Write(sheet.Row{Extra: []string{""}}); err == nil || err.Error() != "line 5: row: 1 extra cell: bad syntax; allowed: 0, one for each extra column" {
		t.Error(err)
	}
	if err := w.Write(sheet.Row{Carcass: grade.Carcass{FatAdjust: 1}}); err == nil || err.Error() != "line 5, column 13 (ribeye_sq_in): ribeye: missing; allowed: over 0 sq in to 25 sq in" {
		t.Error(err)
	}
}

func TestNewWriterErrors(t *testing.T) {
	tests := []struct {
		name, reason string
		extra        []string
		rows, graded string // wanted errors, empty for none
	}{
		{"none", "no extra column", nil, "", ""},
		{"empty", "a column without a name", []string{"a", ""}, "line 1, column 17: column: missing; allowed: a name", "line 1, column 22: column: missing; allowed: a name"},
		{"broken", "a line break", []string{"a\n"}, `line 1, column 16 ("a\n"): column: "a\n": bad syntax; allowed: one line of text`, `line 1, column 21 ("a\n"): column: "a\n": bad syntax; allowed: one line of text`},
		{"twice", "a column twice", []string{"a", "a"}, "line 1, column 17 (a): column: a: repeated; allowed: each column once", "line 1, column 22 (a): column: a: repeated; allowed: each column once"},
		{"known", "a name of the package, also one that is not written", []string{"fat_mm"}, "line 1, column 16 (fat_mm): column: fat_mm: repeated; allowed: each column once", "line 1, column 21 (fat_mm): column: fat_mm: repeated; allowed: each column once"},
		{"result", "a result stands in a graded sheet only", []string{"tier"}, "", "line 1, column 21 (tier): column: tier: repeated; allowed: each column once"},
	}
	text := func(err error) string {
		if err == nil {
			return ""
		}
		return err.Error()
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			_, err := sheet.NewWriter(io.Discard, tt.extra...)
			if d := cmp.Diff(tt.rows, text(err)); d != "" {
				t.Errorf("%s (-want +got):\n%s", tt.reason, d)
			}
			_, err = sheet.NewGradedWriter(io.Discard, tt.extra...)
			if d := cmp.Diff(tt.graded, text(err)); d != "" {
				t.Errorf("%s, graded (-want +got):\n%s", tt.reason, d)
			}
		})
	}
	const comma = `comma: '\n': unknown; allowed: comma, semicolon, tab or bar`
	if _, err := (sheet.Options{Comma: '\n'}).NewWriter(io.Discard); text(err) != comma {
		t.Error(err)
	}
	if _, err := (sheet.Options{Comma: '\n'}).NewGradedWriter(io.Discard); text(err) != comma {
		t.Error(err)
	}
}

func TestGradedWriterRefuses(t *testing.T) {
	a, err := grade.Current.Assess(steer)
	if err != nil {
		t.Fatal(err)
	}
	noQuality, noMaturity, bad := a, a, a
	noQuality.Quality, noMaturity.Maturity, bad.Carcass.Sex = 0, 0, 9
	for name, g := range map[string]sheet.Graded{
		"line 2: assessment: missing; allowed: one with overall maturity and quality":                          {Assessment: noQuality},
		"line 2: assessment: missing; allowed: one with overall maturity and quality ":                         {Assessment: noMaturity},
		"line 2, column 2 (sex): sex class: sex class(9): unknown; allowed: steer, heifer, cow, bullock, bull": {Assessment: bad},
		"line 2: row: 1 extra cell: bad syntax; allowed: 0, one for each extra column":                         {Assessment: a, Extra: []string{""}},
	} {
		w, err := sheet.NewGradedWriter(io.Discard)
		if err != nil {
			t.Fatal(err)
		}
		if err := w.Write(g); err == nil || err.Error() != strings.TrimSpace(name) {
			t.Errorf("Write = %v, want %s", err, name)
		}
	}
	w, err := sheet.NewGradedWriter(io.Discard, "pen")
	if err != nil {
		t.Fatal(err)
	}
	const want = `line 2, column 21: extra cell: "\r": bad syntax; allowed: one line of text`
	if err := w.Write(sheet.Graded{Assessment: a, Extra: []string{"\r"}}); err == nil || err.Error() != want {
		t.Errorf("Write = %v, want %s", err, want)
	}
}

func TestWriteEmpty(t *testing.T) {
	var out strings.Builder
	w, err := sheet.NewWriter(&out)
	if err != nil {
		t.Fatal(err)
	}
	if err := w.Flush(); err != nil || w.Flush() != nil {
		t.Fatal(err)
	}
	if d := cmp.Diff(full, out.String()); d != "" {
		t.Errorf("a sheet without rows has a header, once (-want +got):\n%s", d)
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
	// Rows of 45 bytes: the header's 142 and 726 rows make the first 32 KiB, and
	// the error comes when the second such piece cannot be written.
	if !errors.Is(err, errDisk) || n < 1000 || n > 2500 {
		t.Errorf("after %d rows: %v", n, err)
	}
	if err := w.Write(sheet.Row{}); !errors.Is(err, errDisk) {
		t.Errorf("the error does not stay: %v", err)
	}
	if err := w.Flush(); !errors.Is(err, errDisk) {
		t.Errorf("the error does not stay: %v", err)
	}
}

func TestWriteStreams(t *testing.T) {
	var out bytes.Buffer
	w, err := sheet.NewWriter(&out)
	if err != nil {
		t.Fatal(err)
	}
	const row = "1,steer,A60,A50,,,Sm40,,,,0.45,,12.4,2.5,820\n"
	written := 0
	for n := len(full); ; {
		if err := w.Write(sheet.Row{ID: "1", Carcass: steer}); err != nil {
			t.Fatal(err)
		}
		if n += len(row); n >= 32<<10 {
			written = n
			break
		}
		if out.Len() != 0 {
			t.Fatalf("written after %d bytes", n)
		}
	}
	if out.Len() != written {
		t.Errorf("%d bytes are written of %d", out.Len(), written)
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
		if rapid.Bool().Draw(t, "marbled") {
			c.Marbling = grade.Marbling(rapid.IntRange(100, 1100).Draw(t, "marbling"))
		}
		if rapid.Bool().Draw(t, "measured") {
			c.Measures = grade.Measures{
				Fat:    grade.Thickness(rapid.IntRange(0, 30_000).Draw(t, "fat")),
				Ribeye: grade.Area(rapid.IntRange(1, 250_000).Draw(t, "ribeye")),
				KPH:    grade.Share(rapid.IntRange(0, 100_000).Draw(t, "KPH")),
				Weight: grade.Weight(rapid.IntRange(1, 18_000_000).Draw(t, "weight")),
			}
			c.FatAdjust = grade.Thickness(rapid.IntRange(-int(c.Measures.Fat), 30_000-int(c.Measures.Fat)).Draw(t, "adjustment"))
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
		o := sheet.Options{Comma: rapid.SampledFrom([]rune{0, ',', ';', '\t', '|'}).Draw(t, "comma"), Extra: true}
		rows := rapid.SliceOf(rapid.Custom(func(t *rapid.T) sheet.Row {
			return sheet.Row{ID: line().Draw(t, "id"), Carcass: carcasses().Draw(t, "carcass"), Extra: []string{line().Draw(t, "note"), line().Draw(t, "pen")}}
		})).Draw(t, "rows")
		var buf bytes.Buffer
		w, err := o.NewWriter(&buf, "note", " pen;\"\t,|")
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
		r, err := o.NewReader(&buf)
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
		c := csv.NewReader(strings.NewReader(text))
		c.Comma = max(o.Comma, ',')
		if o.Comma == '\t' {
			c.Comma = '\t'
		}
		cells, err := c.ReadAll()
		if err != nil {
			t.Fatal(err)
		}
		var same strings.Builder
		cw := csv.NewWriter(&same)
		cw.Comma = c.Comma
		if err := cw.WriteAll(cells); err != nil {
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
		if d := cmp.Diff(full+strings.TrimSuffix(want.String(), "\n")+",,,,,,,,,,,,,\n", got.String()); d != "" {
			t.Errorf("(-want +got):\n%s", d)
		}
	})
}

// FuzzRead reads any text. What is read writes back to a sheet that reads the
// same; and lines without a quote have the cells that encoding/csv gives them.
func FuzzRead(f *testing.F) {
	f.Add(full + "1,steer,A60,A50,0,14,Sm40,firm,full,no,0.45,0.1,12.4,2.5,820\n")
	f.Add("id,note\n1,\"a\n2,b\n")
	f.Add("fat_mm,ribeye_sq_cm,kph_pct,weight_kg,x\r\n11.43,80,2.5,371.9,\r\n")
	f.Add("id,a\n1,\r\n\r\n2,\r")
	f.Fuzz(func(t *testing.T, in string) {
		o := sheet.Options{Extra: true}
		r, err := o.NewReader(strings.NewReader(in))
		if err != nil {
			return
		}
		names := []string{"x"}
		if len(r.Extra()) > 0 {
			names = names[:0]
			for i := range r.Extra() {
				names = append(names, "x"+strings.Repeat("x", i))
			}
		}
		var buf bytes.Buffer
		w, err := o.NewWriter(&buf, names...)
		if err != nil {
			t.Fatal(err)
		}
		var rows []sheet.Row
		last := 0
		for row, err := range r.Rows() {
			if row.Line <= last {
				t.Fatalf("line %d after %d", row.Line, last)
			}
			last = row.Line
			if err != nil {
				var e *sheet.Error
				if !errors.As(err, &e) || e.Line != row.Line {
					t.Fatalf("line %d: error %v", row.Line, err)
				}
				continue
			}
			if row.Extra == nil {
				row.Extra = []string{""}
			}
			if err := w.Write(row); err != nil {
				t.Fatalf("cannot write %+v: %v", row, err)
			}
			row.Line = len(rows) + 2
			rows = append(rows, row)
		}
		if err := w.Flush(); err != nil {
			t.Fatal(err)
		}
		back, err := o.NewReader(&buf)
		if err != nil {
			t.Fatal(err)
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

// FuzzCells compares the cells of a sheet of text with those of encoding/csv.
func FuzzCells(f *testing.F) {
	f.Add("id,a,b\n1,,\r\n2,x y,é\n\n3,,")
	f.Add("id\n1,2\n3\n")
	f.Fuzz(func(t *testing.T, in string) {
		if strings.ContainsAny(in, "\"\r") || len(in) > 1000 || strings.HasPrefix(in, "\uFEFF") {
			t.Skip("quotes and line breaks in cells are where the two differ")
		}
		c := csv.NewReader(strings.NewReader(in))
		c.FieldsPerRecord = -1
		want, err := c.ReadAll()
		if err != nil || len(want) == 0 || want[0][0] != "id" {
			t.Skip("no sheet")
		}
		r, err := sheet.Options{Extra: true}.NewReader(strings.NewReader(in))
		if err != nil {
			t.Skip("no sheet")
		}
		if len(r.Extra())+1 != len(want[0]) {
			t.Skip("known columns other than id")
		}
		i := 1
		for row, err := range r.Rows() {
			if len(want[i]) != len(want[0]) {
				if err == nil {
					t.Fatalf("row %d: no error for %q", i, want[i])
				}
			} else if d := cmp.Diff(want[i], append([]string{row.ID}, row.Extra...)); d != "" || err != nil {
				t.Fatalf("row %d (-want +got):\n%s%v", i, d, err)
			}
			i++
		}
		if i != len(want) {
			t.Fatalf("%d rows of %d", i, len(want))
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

// endless gives the same row again and again, so many times.
type endless struct {
	row  string
	left int
	rest string
}

func (e *endless) Read(p []byte) (int, error) {
	n := 0
	for n < len(p) {
		if e.rest == "" {
			if e.left == 0 {
				break
			}
			e.left--
			e.rest = e.row
		}
		c := copy(p[n:], e.rest)
		n, e.rest = n+c, e.rest[c:]
	}
	if n == 0 {
		return 0, io.EOF
	}
	return n, nil
}

// TestMemoryIsFlat streams two sheets, one a hundred times as long, and compares
// what the heap holds at their ends.
func TestMemoryIsFlat(t *testing.T) {
	held := func(rows int) uint64 {
		in := io.MultiReader(strings.NewReader(full), &endless{row: "1,steer,A60,A50,0,14,Sm40,firm,full,no,0.45,0.1,12.4,2.5,820\n", left: rows})
		r, err := sheet.NewReader(in)
		if err != nil {
			t.Fatal(err)
		}
		w, err := sheet.NewGradedWriter(io.Discard)
		if err != nil {
			t.Fatal(err)
		}
		n := 0
		var m runtime.MemStats
		for g, err := range r.Grade(grade.Rules{Edition: grade.Current}) {
			if err != nil {
				t.Fatal(err)
			}
			if err := w.Write(g); err != nil {
				t.Fatal(err)
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
	short, long := held(1000), held(100_000)
	if long > short+64<<10 {
		t.Errorf("the heap holds %d bytes after 1,000 rows and %d after 100,000", short, long)
	}
}

func TestRowAllocations(t *testing.T) {
	const rows = 1000
	in := full + strings.Repeat("1,steer,A60,A50,0,14,Sm40,firm,full,no,0.45,0.1,12.4,2.5,820\n", rows)
	got := testing.AllocsPerRun(5, func() {
		r, err := sheet.NewReader(strings.NewReader(in))
		if err != nil {
			t.Fatal(err)
		}
		w, err := sheet.NewGradedWriter(io.Discard)
		if err != nil {
			t.Fatal(err)
		}
		for g, err := range r.Grade(grade.Rules{Edition: grade.Current}) {
			if err != nil {
				t.Fatal(err)
			}
			if err := w.Write(g); err != nil {
				t.Fatal(err)
			}
		}
	})
	// One for the text of the row and one for its id, and some for the sheet.
	if got > 2*rows+200 {
		t.Errorf("%v allocations for %d rows", got, rows)
	}
}

func TestZeroValues(t *testing.T) {
	var r sheet.Reader
	for range r.Rows() {
		t.Error("a row of nothing")
	}
	for range r.Grade(grade.Rules{Edition: grade.Current}) {
		t.Error("a graded row of nothing")
	}
	if r.Extra() != nil {
		t.Error("extra columns of nothing")
	}
	var w sheet.Writer
	if err := w.Write(sheet.Row{}); err == nil || err.Error() != "line 1: writer: missing; allowed: one made by NewWriter" || w.Flush() != nil {
		t.Error(err)
	}
	var g sheet.GradedWriter
	if err := g.Write(sheet.Graded{}); err == nil || err.Error() != "line 1: writer: missing; allowed: one made by NewGradedWriter" || g.Flush() != nil {
		t.Error(err)
	}
}
