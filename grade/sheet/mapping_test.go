package sheet_test

import (
	"encoding/json"
	"errors"
	"io"
	"strings"
	"testing"
	"testing/iotest"

	"example.com/ribface/grade"
	"example.com/ribface/grade/sheet"
	"example.com/ribface/internal/testkit/roundtrip"
	"example.com/ribface/maturity"
	"github.com/google/go-cmp/cmp"
)

// TestMappingJSON holds that a mapping is read and written, and what is refused.
func TestMappingJSON(t *testing.T) {
	m := sheet.Mapping{
		Separator: "\t", Decimal: ",", Missing: []string{".", "NA"},
		Columns:  map[string]string{"HCW": "weight_lb", "Tag": "id"},
		Marbling: grade.Slight400, Maturity: sheet.LetterAt(50), Surplus: grade.HalfEven,
		Assumed: sheet.Assumed{Sex: grade.Steer, Maturity: maturity.A.At(50), KPH: grade.Percent(2.5), Weight: grade.Pounds(800)},
	}
	const text = `{"separator":"\t","decimal":",","missing":[".","NA"],"columns":{"HCW":"weight_lb","Tag":"id"},"marbling":"Slight00 = 400","maturity":"letter at 50","assumed":{"sex":"steer","maturity":"A50","kph":"2.5%","weight":"800 lb"},"surplus":"half even"}`
	b, err := json.Marshal(m)
	if err != nil || string(b) != text {
		t.Errorf("%s, %v", b, err)
	}
	var got sheet.Mapping
	if err := json.Unmarshal(b, &got); err != nil {
		t.Fatal(err)
	}
	if d := cmp.Diff(m, got); d != "" {
		t.Errorf("(-want +got):\n%s", d)
	}
	if b, err := json.Marshal(sheet.Mapping{}); err != nil || string(b) != "{}" {
		t.Errorf("the zero Mapping is %s, %v", b, err)
	}
	const form = "; allowed: an object with separator, decimal, missing, columns, marbling, maturity, assumed and surplus"
	for in, want := range map[string]string{
		`{"assumd":{}}`:                  `mapping: unknown field "assumd": bad syntax` + form,
		`[]`:                             `mapping: cannot unmarshal array into Go value of type sheet.plain: bad syntax` + form,
		`{"maturity":"A"}`:               `maturity scale: "A": unknown; allowed: "A00 = 100", or "letter at" with points from 0 to 99`,
		`{"columns":{"HCW":"weight"}}`:   `column: weight: unknown; allowed: a column of ours with its unit, as weight_lb`,
		`{"assumed":{"sex":"ox"}}`:       `sex class: "ox": unknown; allowed: steer, heifer, cow, bullock, bull`,
		`{"assumed":{"kph":"25 %"}}`:     `KPH: 25%: out of range; allowed: a number, 0% to 10%`,
		`{"surplus":"up","decimal":","}`: `rounding: "up": unknown; allowed: down, half up, half even`,
	} {
		got := m
		err := json.Unmarshal([]byte(in), &got)
		if err == nil || err.Error() != want {
			t.Errorf("%s: %v, want %s", in, err, want)
		}
		if d := cmp.Diff(m, got); d != "" {
			t.Errorf("%s changed the mapping (-want +got):\n%s", in, d)
		}
	}
}

// TestMappingCheck holds that all that is wrong is told, with its path.
func TestMappingCheck(t *testing.T) {
	m := sheet.Mapping{
		Separator: ":", Decimal: "'", Marbling: 9, Maturity: 2, Surplus: 9,
		Columns: map[string]string{" ": "id", "HCW": "hot", "A": "fat_in", "B": "fat_mm", "Q": "quality"},
		Assumed: sheet.Assumed{Sex: 9, Maturity: maturity.A.At(101), KPH: grade.Percent(-1), Weight: grade.Pounds(1)},
	}
	var got []string
	for _, p := range grade.Problems(m.Check()) {
		got = append(got, p.Path+": "+p.Error())
	}
	want := []string{
		`separator: separator: ":": unknown; allowed: comma, semicolon, tab or bar`,
		`decimal: decimal sign: "'": unknown; allowed: point or comma`,
		`columns. : heading: missing; allowed: a heading of the sheet`,
		`columns.B: fat: B: repeated; allowed: one column for it; "A" is one`,
		`columns.HCW: column: hot: unknown; allowed: a column of ours with its unit, as weight_lb`,
		`columns.Q: column: quality: unknown; allowed: a column of ours with its unit, as weight_lb`,
		`marbling: marbling scale: marbling scale(9): unknown; allowed: a scale of package grade`,
		`maturity: maturity scale: maturity scale(2): unknown; allowed: "A00 = 100", or "letter at" with points from 0 to 99`,
		`surplus: rounding: rounding(9): unknown; allowed: a rounding of package grade`,
		`assumed.sex: sex class: sex class(9): unknown; allowed: steer, heifer, cow, bullock, bull; S, H or C`,
		`assumed.maturity: maturity: A(101): out of range; allowed: A00 to E100`,
		`assumed.kph: KPH: -1%: out of range; allowed: a number, 0% to 10%`,
		`assumed.weight: weight: 1 lb: out of range; allowed: a number, 100 lb to 1800 lb`,
	}
	if d := cmp.Diff(want, got); d != "" {
		t.Errorf("(-want +got):\n%s", d)
	}
	for _, a := range []sheet.Assumed{{}, {KPH: grade.Percent(0), Weight: grade.Pounds(100)}, {KPH: grade.Percent(10), Weight: grade.Pounds(1800)}} {
		if err := (sheet.Mapping{Assumed: a}).Check(); err != nil {
			t.Error(err)
		}
	}
	heavy := sheet.Assumed{KPH: grade.ShareUnits(100_001), Weight: grade.WeightUnits(18_000_001)}
	if all := grade.Problems(sheet.Mapping{Assumed: heavy}.Check()); len(all) != 2 {
		t.Errorf("over the most: %v", all)
	}
}

func TestMaturityScale(t *testing.T) {
	for in, want := range map[string]sheet.MaturityScale{"": 0, "A00 = 100": sheet.MaturityNumbers, " a00 =  100": sheet.MaturityNumbers, "letter at 0": sheet.LetterAt(0), "Letter at 99": sheet.LetterAt(99)} {
		got := sheet.MaturityNumbers
		if err := got.UnmarshalText([]byte(in)); err != nil || got != want {
			t.Errorf("%q is %v, %v", in, got, err)
		}
	}
	if s, err := roundtrip.Read[sheet.MaturityScale]("letter with points"); s != 0 || err != nil {
		t.Errorf("%v, %v", s, err)
	}
	for _, in := range []string{"letter", "letter at 100", "letter at x", "B00 = 100"} {
		if s, err := roundtrip.Read[sheet.MaturityScale](in); s != 0 || !errors.Is(err, grade.ErrUnknown) {
			t.Errorf("%q is %v, %v", in, s, err)
		}
	}
	for s, want := range map[sheet.MaturityScale]string{0: "letter with points", sheet.MaturityNumbers: "A00 = 100", sheet.LetterAt(7): "letter at 7", sheet.LetterAt(-1): "maturity scale(2)", sheet.LetterAt(100): "maturity scale(2)", 255: "maturity scale(255)"} {
		if s.String() != want {
			t.Errorf("%v, want %s", s, want)
		}
		b, err := s.MarshalText()
		switch {
		case s == 0 && (string(b) != "" || err != nil):
			t.Errorf("zero is %q, %v", b, err)
		case !strings.HasPrefix(want, "maturity") && s != 0 && (string(b) != want || err != nil):
			t.Errorf("%v is %q, %v", s, b, err)
		case strings.HasPrefix(want, "maturity") && !errors.Is(err, grade.ErrUnknown):
			t.Errorf("%v is %q, %v", s, b, err)
		}
	}
	if p, ok := sheet.LetterAt(0).Point(); p != 0 || !ok {
		t.Errorf("%d, %v", p, ok)
	}
	if p, ok := sheet.MaturityNumbers.Point(); p != 0 || ok {
		t.Errorf("%d, %v", p, ok)
	}
}

func TestAssumptions(t *testing.T) {
	for a := range sheet.Assumptions(16) {
		b, err := a.MarshalText()
		var back sheet.Assumptions
		if err != nil || back.UnmarshalText(b) != nil || back != a {
			t.Errorf("%v: %q, %v, back %v", a, b, err, back)
		}
		if p, err := roundtrip.Read[sheet.Assumptions](a.String()); err != nil || p != a {
			t.Errorf("%v: %v, %v", a, p, err)
		}
	}
	if s := (sheet.AssumedSex | sheet.AssumedWeight).String(); s != "sex weight" {
		t.Error(s)
	}
	if _, err := sheet.Assumptions(16).MarshalText(); !errors.Is(err, grade.ErrUnknown) || sheet.Assumptions(16).String() != "assumed(16)" {
		t.Error(err)
	}
	if _, err := roundtrip.Read[sheet.Assumptions](" "); !errors.Is(err, grade.ErrSyntax) {
		t.Error(err)
	}
	if _, err := roundtrip.Read[sheet.Assumptions]("sex hair"); !errors.Is(err, grade.ErrUnknown) {
		t.Error(err)
	}
}

func TestFlagKind(t *testing.T) {
	n := 0
	for k := range sheet.FlagKinds() {
		b, err := k.MarshalText()
		var back sheet.FlagKind
		if err != nil || back.UnmarshalText(b) != nil || back != k {
			t.Errorf("%v: %q, %v, back %v", k, b, err, back)
		}
		if n++; n == 7 {
			break
		}
	}
	if n != 7 {
		t.Errorf("%d kinds", n)
	}
	if _, err := roundtrip.Read[sheet.FlagKind]("odd"); !errors.Is(err, grade.ErrUnknown) {
		t.Error(err)
	}
	for range sheet.FlagKinds() {
		n++
	}
	if n != 14 {
		t.Errorf("%d kinds", n-7)
	}
}

// TestPropose holds what is proposed for the four sheets and for strange ones.
func TestPropose(t *testing.T) {
	scale := func(heading string) string {
		return `"` + heading + `": numbers; name their scale under marbling: Slight00 = 300 or Slight00 = 400`
	}
	for _, name := range []string{"plant", "university", "europe", "floats"} {
		m, in := field(t, name)
		got, err := sheet.Propose(strings.NewReader(string(in)))
		if err != nil {
			t.Fatal(err)
		}
		want := sheet.Proposal{Mapping: m}
		if m.Separator == "" {
			want.Mapping.Separator = ","
		}
		switch name {
		case "plant": // what nobody can know from the sheet is not proposed
			want.Mapping.Marbling, want.Mapping.Assumed = 0, sheet.Assumed{}
			want.Unplaced = []string{"Lot"}
			want.Lacking = []string{"quality: skeletal maturity", "quality: lean maturity", "yield: KPH"}
			want.Doubts = []string{
				`"HCW": no unit; taken for lb, since the middle of the cells is 795`,
				`"BF": no unit; taken for in, since the middle of the cells is 0.56`,
				`missing: "." under "BF" is taken for a mark`,
				`"REA": no unit; taken for sq in, since the middle of the cells is 12.9`,
				scale("Marb"),
				"cannot be read: line 34, id T033, column 4 (HCW): weight: 9: out of range; allowed: a number, 100 lb to 1800 lb",
			}
		case "university":
			want.Unplaced = []string{"Treatment", "Notes"}
			want.Doubts = []string{`"Skeletal maturity": numbers; taken for the scale with A00 = 100`, `missing: "NA" under "KPH, %" is taken for a mark`}
		case "europe":
			want.Doubts = []string{"decimal sign: taken for a comma, as in 240 cells"}
		case "floats": // the headings are ours, and are named all the same
			want.Mapping.Columns = map[string]string{}
			for _, h := range []string{"id", "sex", "skeletal", "lean", "marbling", "fat_in", "ribeye_sq_in", "kph_pct", "weight_lb"} {
				want.Mapping.Columns[h] = h
			}
			want.Doubts = []string{`"fat_in": more than 4 places; taken for noise and rounded half even`}
		}
		if d := cmp.Diff(want, got); d != "" {
			t.Errorf("%s (-want +got):\n%s", name, d)
		}
	}
	tests := []struct {
		name, in string
		want     sheet.Proposal
	}{
		{"metric by the look", "Tag,BF,REA,HCW\n1,11.4,80,372\n2,12,85,380\n3,x\n\"\n", sheet.Proposal{
			Mapping: sheet.Mapping{Separator: ",", Columns: map[string]string{"Tag": "id", "BF": "fat_mm", "REA": "ribeye_sq_cm", "HCW": "weight_kg"}},
			Lacking: []string{"quality: sex class", "quality: skeletal maturity", "quality: lean maturity", "quality: marbling", "yield: KPH"},
			Doubts: []string{
				`"BF": no unit; taken for mm, since the middle of the cells is 12`, `"REA": no unit; taken for sq cm, since the middle of the cells is 85`, `"HCW": no unit; taken for kg, since the middle of the cells is 380`,
				"cannot be read: line 4: row: 2 cells: bad syntax; allowed: 4 cells, one for each column"}}},
		{"no rows", "Ear_Tag|BF [cm]|LMA (sq. cm)|Hot Carcass Weight - lbs|Live weight (lb)", sheet.Proposal{
			Mapping:  sheet.Mapping{Separator: "|", Columns: map[string]string{"Ear_Tag": "id", "BF [cm]": "fat_cm", "LMA (sq. cm)": "ribeye_sq_cm", "Hot Carcass Weight - lbs": "weight_lb"}},
			Unplaced: []string{"Live weight (lb)"},
			Lacking:  []string{"quality: sex class", "quality: skeletal maturity", "quality: lean maturity", "quality: marbling", "yield: KPH"}}},
		{"looks at their ends", "BF,REA,HCW\n3,25,450\n3,25,450\n", sheet.Proposal{
			Mapping: sheet.Mapping{Separator: ",", Columns: map[string]string{"BF": "fat_mm", "REA": "ribeye_sq_in", "HCW": "weight_lb"}},
			Lacking: []string{"quality: sex class", "quality: skeletal maturity", "quality: lean maturity", "quality: marbling", "yield: KPH"},
			Doubts:  []string{`"BF": no unit; taken for mm, since the middle of the cells is 3`, `"REA": no unit; taken for sq in, since the middle of the cells is 25`, `"HCW": no unit; taken for lb, since the middle of the cells is 450`}}},
		{"looks past their ends", "BF,REA,HCW\n2.9,26,449\n2.9,26,449\n", sheet.Proposal{
			Mapping: sheet.Mapping{Separator: ",", Columns: map[string]string{"BF": "fat_in", "REA": "ribeye_sq_cm", "HCW": "weight_kg"}},
			Lacking: []string{"quality: sex class", "quality: skeletal maturity", "quality: lean maturity", "quality: marbling", "yield: KPH"},
			Doubts:  []string{`"BF": no unit; taken for in, since the middle of the cells is 2.9`, `"REA": no unit; taken for sq cm, since the middle of the cells is 26`, `"HCW": no unit; taken for kg, since the middle of the cells is 449`}}},
		{"no unit and no number", "HCW\nheavy\n", sheet.Proposal{
			Mapping: sheet.Mapping{Separator: ",", Columns: map[string]string{"HCW": "weight_lb"}},
			Lacking: []string{"quality: sex class", "quality: skeletal maturity", "quality: lean maturity", "quality: marbling", "yield: fat", "yield: ribeye", "yield: KPH"},
			Doubts:  []string{`"HCW": no unit; taken for lb`, "cannot be read: line 2, column 1 (HCW): weight: heavy: bad syntax; allowed: a number, 100 lb to 1800 lb"}}},
		{"letters, both signs, twice, odd unit", "Maturity;KPH;Fat mm;BF (mm);REA (acres);Marb\nA;2,5;11.4;3;1;400\nB;2.5;11;3;1;-\n", sheet.Proposal{
			Mapping:  sheet.Mapping{Separator: ";", Missing: []string{"-"}, Columns: map[string]string{"Maturity": "maturity", "KPH": "kph_pct", "Fat mm": "fat_mm", "Marb": "marbling"}},
			Unplaced: []string{"BF (mm)", "REA (acres)"},
			Lacking:  []string{"quality: sex class", "yield: ribeye", "yield: weight"},
			Doubts: []string{
				"decimal sign: 1 cell with a comma and 2 cells with a point; taken for a point",
				`"Maturity": letters alone; name the points they stand for under maturity, as "letter at 50"`,
				`"BF (mm)": a second column for fat, after "Fat mm"`,
				`"REA (acres)": acres is no unit of ribeye`,
				`missing: "-" under "Marb" is taken for a mark`,
				scale("Marb"),
				"cannot be read: line 2, column 2 (KPH): KPH: 2,5: bad syntax; allowed: a number, 0% to 10%"}}},
		{"nothing known", "Pen,Note\n1,2\n", sheet.Proposal{
			Mapping:  sheet.Mapping{Separator: ","},
			Unplaced: []string{"Pen", "Note"},
			Lacking:  []string{"quality: sex class", "quality: skeletal maturity", "quality: lean maturity", "quality: marbling", "yield: fat", "yield: ribeye", "yield: KPH", "yield: weight"},
			Doubts:   []string{"no heading is known; columns wants a heading of the sheet with a column of ours for each"}}},
		{"results of grading", "id,Yield\n1,2.5\n", sheet.Proposal{
			Mapping:  sheet.Mapping{Separator: ",", Columns: map[string]string{"id": "id"}},
			Unplaced: []string{"Yield"},
			Lacking:  []string{"quality: sex class", "quality: skeletal maturity", "quality: lean maturity", "quality: marbling", "yield: fat", "yield: ribeye", "yield: KPH", "yield: weight"}}},
		{"near ours", "drak\n1\n", sheet.Proposal{
			Mapping:  sheet.Mapping{Separator: ","},
			Unplaced: []string{"drak"},
			Doubts:   []string{"no heading is known; columns wants a heading of the sheet with a column of ours for each", "line 1, column 1 (drak): column: drak: unknown; allowed: dark, o"}}},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			got, err := sheet.Propose(strings.NewReader(tt.in))
			if err != nil {
				t.Fatal(err)
			}
			if d := cmp.Diff(tt.want, got); d != "" {
				t.Errorf("(-want +got):\n%s", d)
			}
		})
	}
	long := strings.Repeat("x", 70_000) + "\n"
	for in, want := range map[io.Reader]string{
		strings.NewReader(""):      "line 1: header: missing; allowed: a first line with the headings of the columns",
		strings.NewReader("\n"):    "line 1: header: missing; allowed: a first line with the headings of the columns",
		strings.NewReader("\"a\n"): "line 1: row: a stray or open quote at byte 1: bad syntax; allowed: quotes around a whole cell, doubled inside it, closed on the same line",
		strings.NewReader(long):    "line 1: row: over 65536 bytes: out of range; allowed: lines up to 64 KiB",
		iotest.ErrReader(errDisk):  "line 1: disk gone",
	} {
		if p, err := sheet.Propose(in); err == nil || err.Error() != want || p.Mapping.Columns != nil {
			t.Errorf("%v, want %s", err, want)
		}
	}
}
