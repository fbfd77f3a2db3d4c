package contest_test

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"slices"
	"strconv"
	"strings"
	"testing"
	"testing/iotest"
	"unsafe"

	"example.com/ribface/grade"
	"example.com/ribface/grade/sheet"
	"example.com/ribface/internal/testkit/faulttest"
	"example.com/ribface/maturity"
	"example.com/ribface/placing"
	"example.com/ribface/placing/contest"
	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

// drain reads a sheet into rows and the text of errors.
func drain[T any](s contest.Sheet[T], text string) (rows []T, errs []string) {
	for row, err := range s.Read(strings.NewReader(text)) {
		if err != nil {
			errs = append(errs, err.Error())
			continue
		}
		rows = append(rows, row)
	}
	return rows, errs
}

// quote is the error for a quote out of place.
func quote(at string) string {
	return ": row: a stray or open quote at byte " + at + ": bad syntax; allowed: quotes around a whole cell, doubled inside it, closed on the same line"
}

func TestReadPlacings(t *testing.T) {
	ada := contest.Member{ID: "7", Team: "North Fork", Division: "senior"}
	order := placing.Card{Order: placing.MustParseOrder("3-2-1-4")}
	tests := []struct {
		name, reason, in string
		want             []contest.PlacingCard
		errs             []string
	}{
		{"every column", "the order in which they are written",
			"contest,class,member,team,division,placing\ninvented spring,beef 1,7,North Fork,senior,3-2-1-4\n",
			[]contest.PlacingCard{{"invented spring", "beef 1", ada, order}}, nil},
		{"other order, few columns", "only class, member and placing are needed; letters may be capitals",
			"Placing,MEMBER,class\n3-2-1-4,7,beef 1",
			[]contest.PlacingCard{{Class: "beef 1", Member: contest.Member{ID: "7"}, Card: order}}, nil},
		{"marks", "each mark, and an empty placing, which is the zero card",
			"class,member,placing\nb,1,blank\nb,2,double-marked\nb,3,unreadable\nb,4,\n",
			[]contest.PlacingCard{
				{Class: "b", Member: contest.Member{ID: "1"}, Card: placing.Card{Mark: placing.Blank}},
				{Class: "b", Member: contest.Member{ID: "2"}, Card: placing.Card{Mark: placing.DoubleMarked}},
				{Class: "b", Member: contest.Member{ID: "3"}, Card: placing.Card{Mark: placing.Unreadable}},
				{Class: "b", Member: contest.Member{ID: "4"}},
			}, nil},
		{"quotes, spaces, empty lines, byte order mark, line ends of two bytes", "as spreadsheets write them",
			"\ufeffclass, member ,placing\r\n\r\n \"b, \"\"top\"\" \", 7 ,\"3-2-1-4\"\r\n",
			[]contest.PlacingCard{{Class: `b, "top"`, Member: contest.Member{ID: "7"}, Card: order}}, nil},
		{"no class in the first row", "a name is asked for before there is one to compare with",
			"class,member,placing\n,1,3-2-1-4\n", nil, []string{"line 2, column 1 (class): class: missing; allowed: a name or number"}},
		{"bad rows", "none of them stops the rest, and an open quote spoils its own line only",
			"class,member,placing\n" +
				"b,1,3-2-1-1\n" + // exhibit twice
				",,x\n" + // three bad fields
				"b,2\n" + // too few
				"b,3,3-2-1-4,x\n" + // too many
				"b,\"4,3-2-1-4\n" + // quote not closed
				"b,4\"4,3-2-1-4\n" + // quote inside
				"b,\"4\" x,3-2-1-4\n" + // text after a quote
				"b,\"4\" ,3-2-1-4\n" + // a space after a quote is passed over
				"b,4\x01,3-2-1-4\n" +
				"b,4\xff,3-2-1-4\n" +
				"b," + strings.Repeat("n", 257) + ",3-2-1-4\n" +
				"b," + strings.Repeat("n", 1<<16) + ",3-2-1-4\n" +
				"b," + strings.Repeat("n", 256) + ",3-2-1-4\n",
			[]contest.PlacingCard{{Class: "b", Member: contest.Member{ID: "4"}, Card: order}, {Class: "b", Member: contest.Member{ID: strings.Repeat("n", 256)}, Card: order}},
			[]string{
				"line 2, column 3 (placing): placing: 3-2-1-1: repeated; allowed: each exhibit 1 to 4 once",
				"line 3, column 1 (class): class: missing; allowed: a name or number; column 2 (member): member: missing; allowed: a name or number; " +
					"column 3 (placing): placing: x: bad syntax; allowed: 2 to 12 exhibit numbers with hyphens between, each once, as 3-2-1-4",
				"line 4: row: 2 cells: bad syntax; allowed: 3 cells, one for each column",
				"line 5: row: 4 cells: bad syntax; allowed: 3 cells, one for each column",
				"line 6" + quote("3"),
				"line 7" + quote("4"),
				"line 8" + quote("3"),
				`line 10, column 2 (member): member: "4\x01": bad syntax; allowed: no control characters`,
				`line 11, column 2 (member): member: "4\xff": bad syntax; allowed: UTF-8 text`,
				"line 12, column 2 (member): member: " + strings.Repeat("n", 64) + ": out of range; allowed: at most 256 bytes",
				"line 13: row: over 65536 bytes: out of range; allowed: lines up to 64 KiB",
			}},
		{"nothing", "a sheet has a header", "", nil,
			[]string{"line 1: header: missing; allowed: a first line with the headings of the columns"}},
		{"column left out", "placing is needed", "class,member\n", nil,
			[]string{"line 1: column: placing: missing; allowed: a sheet that has it"}},
		{"unknown column", "ends the reading: nothing is dropped in silence", "class,member,placing,remark\nb,1,1-2-3-4,x\n", nil,
			[]string{`line 1, column 4 (remark): column: remark: unknown; allowed: contest, class, member, team, division, placing`}},
		{"column twice", "which one would count", "class,member,placing,class\n", nil,
			[]string{"line 1, column 4 (class): class: class: repeated; allowed: one column for it; column 1 is one"}},
		{"bad header", "a quote left open", "class,\"member,placing\n", nil,
			[]string{"line 1" + quote("7")}},
		{"header too long", "the line is bounded", strings.Repeat("x", 1<<17) + "\n", nil,
			[]string{"line 1: row: over 65536 bytes: out of range; allowed: lines up to 64 KiB"}},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			rows, errs := drain(contest.PlacingSheet(), tt.in)
			if d := cmp.Diff(tt.want, rows); d != "" {
				t.Errorf("%s: rows (-want +got):\n%s", tt.reason, d)
			}
			if d := cmp.Diff(tt.errs, errs); d != "" {
				t.Errorf("%s: errors (-want +got):\n%s", tt.reason, d)
			}
		})
	}
}

func TestReadEstimates(t *testing.T) {
	const head = "class,exhibit,member,maturity,marbling,quality,"
	who := contest.Member{ID: "7"}
	tests := []struct {
		name, reason, in string
		want             []contest.Estimate
		errs             []string
	}{
		{"every fact", "customary units",
			head + "fat_in,ribeye_sq_in,kph_pct,weight_lb,yield\nb,1,7,A70,Sm40,Choice-,0.45,12.4,2.5,842,2.99\n",
			[]contest.Estimate{{Class: "b", Exhibit: 1, Member: who, Facts: contest.Facts{
				Maturity: maturity.A.At(70), Marbling: grade.Small.At(40), Quality: grade.Choice.Part(grade.Low),
				Fat: grade.ThicknessUnits(4500), Ribeye: grade.AreaUnits(124000), KPH: grade.ShareUnits(25000),
				Weight: grade.WeightUnits(8420000), Yield: grade.YieldUnits(299 * grade.OneGrade / 100),
			}}}, nil},
		{"bone and lean apart, preliminary grade", "as estimated one by one",
			"class,exhibit,member,skeletal,lean,preliminary\nb,1,7,A60,B10,3.1\nb,2,7,blank,,unreadable\n",
			[]contest.Estimate{
				{Class: "b", Exhibit: 1, Member: who, Facts: contest.Facts{Skeletal: maturity.A.At(60), Lean: maturity.B.At(10), Preliminary: grade.ShortcutYieldUnits(310_000_000)}},
				{Class: "b", Exhibit: 2, Member: who, Facts: contest.Facts{Marks: contest.Marks{Skeletal: placing.Blank, Preliminary: placing.Unreadable}}},
			}, nil},
		{"metric", "turned into the nearest 0.0001 of the customary unit",
			"class,exhibit,member,fat_mm,ribeye_sq_cm,weight_kg\nb,60,7,12.7,64.516,45.359237\n",
			[]contest.Estimate{{Class: "b", Exhibit: 60, Member: who, Facts: contest.Facts{Fat: grade.Inches(0.5), Ribeye: grade.SquareInches(10), Weight: grade.Pounds(100)}}}, nil},
		{"metric at the greatest", "76.2 mm is 3 in, 161.29 sq cm is 25 sq in",
			"class,exhibit,member,fat_mm,ribeye_sq_cm\nb,60,7,76.2,161.29\n",
			[]contest.Estimate{{Class: "b", Exhibit: 60, Member: who, Facts: contest.Facts{Fat: grade.Inches(3), Ribeye: grade.SquareInches(25)}}}, nil},
		{"centimeters", "1 cm is 0.3937 in",
			"class,exhibit,member,fat_cm,ribeye_sq_cm,weight_kg\nb,60,7,1,64.516,45.3593\n",
			[]contest.Estimate{{Class: "b", Exhibit: 60, Member: who, Facts: contest.Facts{
				Fat: grade.ThicknessUnits(3937), Ribeye: grade.AreaUnits(100000), Weight: grade.WeightUnits(1000001),
			}}}, nil},
		{"millimeters", "the third unit of fat", "class,exhibit,member,fat_mm\nb,1,7,12.7\n",
			[]contest.Estimate{{Class: "b", Exhibit: 1, Member: who, Facts: contest.Facts{Fat: grade.ThicknessUnits(5000)}}}, nil},
		{"marks and nothing", "an empty field says nothing, blank says no answer",
			"class,exhibit,member,quality,yield,fat_in\nb,1,7,blank,,double-marked\n",
			[]contest.Estimate{{Class: "b", Exhibit: 1, Member: who, Facts: contest.Facts{
				Marks: contest.Marks{Quality: placing.Blank, Fat: placing.DoubleMarked},
			}}}, nil},
		{"edges of measures", "both sides of the limits of the measures and of the yields they give",
			"class,exhibit,member,fat_in,ribeye_sq_in,kph_pct,weight_lb,yield\n" +
				"b,1,1,0,1,0,100,-5.12\nb,1,2,3,25,10,1800,18.52\n" +
				"b,1,3,-0.0001,0.9999,-0.0001,99.9999,-5.13\nb,1,4,3.0001,25.0001,10.0001,1800.0001,18.53\n",
			[]contest.Estimate{
				{Class: "b", Exhibit: 1, Member: contest.Member{ID: "1"}, Facts: contest.Facts{Fat: grade.ThicknessUnits(0), Ribeye: grade.SquareInches(1), KPH: grade.Percent(0), Weight: grade.Pounds(100), Yield: grade.Grades(-5.12)}},
				{Class: "b", Exhibit: 1, Member: contest.Member{ID: "2"}, Facts: contest.Facts{Fat: grade.Inches(3), Ribeye: grade.SquareInches(25), KPH: grade.Percent(10), Weight: grade.Pounds(1800), Yield: grade.Grades(18.52)}},
			},
			[]string{
				"line 4, column 4 (fat_in): fat: -0.0001: out of range; allowed: 0 in to 3 in; " +
					"column 5 (ribeye_sq_in): ribeye: 0.9999: out of range; allowed: 1 sq in to 25 sq in; " +
					"column 6 (kph_pct): KPH: -0.0001: out of range; allowed: 0% to 10%; " +
					"column 7 (weight_lb): weight: 99.9999: out of range; allowed: 100 lb to 1800 lb; " +
					"column 8 (yield): yield: -5.13: out of range; allowed: -5.12 to 18.52",
				"line 5, column 4 (fat_in): fat: 3.0001: out of range; allowed: 0 in to 3 in; " +
					"column 5 (ribeye_sq_in): ribeye: 25.0001: out of range; allowed: 1 sq in to 25 sq in; " +
					"column 6 (kph_pct): KPH: 10.0001: out of range; allowed: 0% to 10%; " +
					"column 7 (weight_lb): weight: 1800.0001: out of range; allowed: 100 lb to 1800 lb; " +
					"column 8 (yield): yield: 18.53: out of range; allowed: -5.12 to 18.52",
			}},
		{"bad facts", "each is named", "class,exhibit,member,maturity,marbling,quality,yield\nb,0,7,F10,Sm4,Best,x3\nb,01,7,,,,\nb,61,7,,,,\nb,,7,,,,\n", nil,
			[]string{
				"line 2, column 2 (exhibit): exhibit: 0: out of range; allowed: 1 to 60; column 4 (maturity): maturity: F10: unknown; allowed: A00 to E100; " +
					"column 5 (marbling): marbling: Sm4: bad syntax; allowed: two digits after the name, Devoid00 to Ab100; " +
					"column 6 (quality): quality: Best: unknown; allowed: a grade (No grade, Canner, Cutter, Utility, Commercial, Standard, Good, Select, Choice, Prime), with Low, Average or High before it where it is split; " +
					"column 7 (yield): yield: x3: bad syntax; allowed: a number with at most 8 places",
				"line 3, column 2 (exhibit): exhibit: 01: bad syntax; allowed: 1 to 60",
				"line 4, column 2 (exhibit): exhibit: 61: out of range; allowed: 1 to 60",
				"line 5, column 2 (exhibit): exhibit: bad syntax; allowed: 1 to 60",
			}},
		{"one fact in two units", "which one would count", "class,exhibit,member,fat_in,fat_mm\n", nil,
			[]string{"line 1, column 5 (fat_mm): fat: fat_mm: repeated; allowed: one column for it; column 4 is one"}},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			rows, errs := drain(contest.EstimateSheet(), tt.in)
			if d := cmp.Diff(tt.want, rows); d != "" {
				t.Errorf("%s: rows (-want +got):\n%s", tt.reason, d)
			}
			if d := cmp.Diff(tt.errs, errs); d != "" {
				t.Errorf("%s: errors (-want +got):\n%s", tt.reason, d)
			}
		})
	}
}

// TestReadStops checks that a reader's error comes last and that a caller may stop
// at any row or error.
func TestReadStops(t *testing.T) {
	broken := errors.New("broken")
	in := io.MultiReader(strings.NewReader("class,member,placing\nb,1,1-2\n"), iotest.ErrReader(broken))
	var got []error
	for _, err := range contest.PlacingSheet().Read(in) {
		got = append(got, err)
	}
	if len(got) != 2 || got[0] != nil || !errors.Is(got[1], broken) {
		t.Errorf("got %v, want a row and the reader's error", got)
	}
	n := 0
	for _, err := range contest.PlacingSheet().Read(strings.NewReader("class,member,placing\nb,1,1-2\nb,1\nb,1,x\nb,2,1-2\n")) {
		n++
		_ = err
		if n == 1 {
			break
		}
	}
	for stop, text := range []string{"b,1\n", "b,1,x\n"} {
		for _, err := range contest.PlacingSheet().Read(strings.NewReader("class,member,placing\n" + text + "b,2,1-2\n")) {
			if n++; err == nil {
				t.Errorf("stop %d: want an error first", stop)
			}
			break
		}
	}
	if n != 3 {
		t.Errorf("got %d rows, want one each time", n)
	}
}

func write[T any](s contest.Sheet[T], rows ...T) (string, error) {
	var b bytes.Buffer
	err := s.Write(&b, slices.Values(rows))
	return b.String(), err
}

func TestWriteRefuses(t *testing.T) {
	who := contest.Member{ID: "7"}
	est := func(f contest.Facts) error {
		_, err := write(contest.EstimateSheet(), contest.Estimate{Class: "b", Exhibit: 1, Member: who, Facts: f})
		return err
	}
	pl := func(c placing.Card, who contest.Member) error {
		_, err := write(contest.PlacingSheet(), contest.PlacingCard{Class: "b", Member: who, Card: c})
		return err
	}
	key := func(k contest.OfficialPlacing) error {
		_, err := write(contest.OfficialSheet(), k)
		return err
	}
	two, cuts := placing.MustParseOrder("1-2"), placing.MustParseCuts("3")
	tests := []struct {
		name, reason string
		err          error
		want         string
	}{
		{"placing and mark", "only one is read back", pl(placing.Card{Order: two, Mark: placing.Blank}, who),
			"line 2, column 6 (placing): card: 1-2 and blank: repeated; allowed: a placing or a mark"},
		{"bad mark", "it has no name", pl(placing.Card{Mark: 9}, who),
			"line 2, column 6 (placing): mark: mark(9): unknown; allowed: blank, double-marked, unreadable"},
		{"no member", "it is needed", pl(placing.Card{}, contest.Member{}), "line 2, column 3 (member): member: missing; allowed: a name or number"},
		{"outer space", "it would be read without", pl(placing.Card{}, contest.Member{ID: "7 "}), `line 2, column 3 (member): member: "7 ": bad syntax; allowed: no space before or after`},
		{"byte order mark", "it would be read without in the first line", pl(placing.Card{}, contest.Member{ID: "\ufeff7"}), `line 2, column 3 (member): member: "\ufeff7": bad syntax; allowed: no control characters`},
		{"no placing", "an official placing is needed", key(contest.OfficialPlacing{Class: "b", Cuts: cuts}), "line 2, column 3 (placing): placing: missing; allowed: a placing, as 3-2-1-4"},
		{"no cuts", "they are needed", key(contest.OfficialPlacing{Class: "b", Order: two}), "line 2, column 4 (cuts): cuts: missing; allowed: cuts, as 2-8-2"},
		{"value and mark", "only one is read back", est(contest.Facts{Fat: grade.Inches(0), Marks: contest.Marks{Fat: placing.Blank}}),
			"line 2, column 12 (fat_in): fat: 0 in and blank: repeated; allowed: a value or a mark"},
		{"fat", "out of range", est(contest.Facts{Fat: grade.ThicknessUnits(-1)}), "line 2, column 12 (fat_in): fat: -0.0001 in: out of range; allowed: 0 in to 3 in"},
		{"quality unknown", "no such part", est(contest.Facts{Quality: grade.Quality(7)}), "line 2, column 11 (quality): quality: Quality(?): unknown; allowed: a grade and a part of it"},
		{"preliminary too low", "under that of no fat", est(contest.Facts{Preliminary: grade.ShortcutYieldUnits(199_999_999)}), "line 2, column 13 (preliminary): preliminary yield grade: 1.99999999: out of range; allowed: 2 to 9.5"},
		{"marbling bad", "140 points", est(contest.Facts{Marbling: grade.Small.At(140)}), "line 2, column 10 (marbling): marbling: Sm(140): out of range; allowed: Devoid00 to Ab100"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			if tt.err == nil || tt.err.Error() != tt.want {
				t.Errorf("%s: got %v, want %s", tt.reason, tt.err, tt.want)
			}
			var re *sheet.RowError
			if !errors.As(tt.err, &re) || re.Line != 2 {
				t.Errorf("got %#v, want a RowError of line 2", tt.err)
			}
		})
	}
	if _, err := write(contest.EstimateSheet(), contest.Estimate{Class: "b", Exhibit: 61, Member: who}); err == nil || err.Error() != "line 2, column 3 (exhibit): exhibit: 61: out of range; allowed: 1 to 60" {
		t.Errorf("got %v, want exhibit 61 refused", err)
	}
	var none contest.Sheet[int]
	if _, err := write(none); err == nil || err.Error() != "column: missing; allowed: a sheet with columns" {
		t.Errorf("got %v, want a sheet without columns refused", err)
	}
	if _, errs := drain(none, "a\n"); len(errs) != 1 || errs[0] != "line 1, column 1 (a): column: a: unknown" {
		t.Errorf("got %v, want a sheet without columns refused", errs)
	}
	long := contest.PlacingCard{Class: strings.Repeat("b", 256), Member: who}
	var rows []contest.PlacingCard
	for range 1000 {
		rows = append(rows, long)
	}
	if err := contest.PlacingSheet().Write(full{}, slices.Values(rows)); err == nil || err.Error() != "full" {
		t.Errorf("got %v, want the writer's error", err)
	}
}

func TestColumns(t *testing.T) {
	want := "contest, class, exhibit, member, team, division, skeletal, lean, maturity, marbling, quality, fat_in, preliminary, ribeye_sq_in, kph_pct, weight_lb, yield, fat_mm, fat_cm, ribeye_sq_cm, weight_kg"
	if d := cmp.Diff(want, contest.EstimateSheet().Columns()); d != "" {
		t.Errorf("(-want +got):\n%s", d)
	}
}

type full struct{}

func (full) Write([]byte) (int, error) { return 0, errors.New("full") }

// answer draws a value, its mark or neither into the fields of both.
func answer[T any](t *rapid.T, name string, v *rapid.Generator[T], value *T, mark *placing.Mark) {
	switch k := rapid.IntRange(0, 9).Draw(t, name); k {
	case 0:
	case 1, 2, 3:
		*mark = placing.Mark(k)
	default:
		*value = v.Draw(t, name)
	}
}

// counted draws a value of so many units.
func counted[T any](least, most int64, of func(int64) T) *rapid.Generator[T] {
	return rapid.Map(rapid.Int64Range(least, most), of)
}

var names = rapid.Custom(func(t *rapid.T) string {
	return rapid.StringMatching(`[A-Za-z0-9é,"']([A-Za-z0-9 é,"'#;]{0,8}[A-Za-z0-9é,"'])?`).Draw(t, "name")
})

var members = rapid.Custom(func(t *rapid.T) contest.Member {
	m := contest.Member{ID: names.Draw(t, "id")}
	if rapid.Bool().Draw(t, "team") {
		m.Team, m.Division = names.Draw(t, "team"), names.Draw(t, "division")
	}
	return m
})

func TestRoundTrip(t *testing.T) {
	qualities := slices.Collect(grade.Qualities())
	scores := rapid.Custom(func(t *rapid.T) maturity.Score { return maturity.Score(rapid.IntRange(100, 600).Draw(t, "n")) })
	facts := rapid.Custom(func(t *rapid.T) (f contest.Facts) {
		m := &f.Marks
		answer(t, "skeletal", scores, &f.Skeletal, &m.Skeletal)
		answer(t, "lean", scores, &f.Lean, &m.Lean)
		answer(t, "maturity", scores, &f.Maturity, &m.Maturity)
		answer(t, "marbling", counted(100, 1100, func(n int64) grade.Marbling { return grade.Marbling(n) }), &f.Marbling, &m.Marbling)
		answer(t, "quality", rapid.SampledFrom(qualities), &f.Quality, &m.Quality)
		answer(t, "fat", counted(0, 30_000, grade.ThicknessUnits), &f.Fat, &m.Fat)
		answer(t, "preliminary", counted(200_000_000, 950_000_000, grade.ShortcutYieldUnits), &f.Preliminary, &m.Preliminary)
		answer(t, "ribeye", counted(10_000, 250_000, grade.AreaUnits), &f.Ribeye, &m.Ribeye)
		answer(t, "kph", counted(0, 100_000, grade.ShareUnits), &f.KPH, &m.KPH)
		answer(t, "weight", counted(1_000_000, 18_000_000, grade.WeightUnits), &f.Weight, &m.Weight)
		answer(t, "yield", counted(-512_000_000, 1_852_000_000, grade.YieldUnits), &f.Yield, &m.Yield)
		return f
	})
	orders := slices.Collect(placing.Orders(4))
	rapid.Check(t, func(t *rapid.T) {
		est := rapid.SliceOfN(rapid.Custom(func(t *rapid.T) contest.Estimate {
			return contest.Estimate{Contest: names.Draw(t, "contest"), Class: names.Draw(t, "class"), Exhibit: rapid.IntRange(1, 60).Draw(t, "exhibit"), Member: members.Draw(t, "member"), Facts: facts.Draw(t, "facts")}
		}), 0, 3).Draw(t, "estimates")
		same(t, contest.EstimateSheet(), est)
		key := rapid.SliceOfN(rapid.Custom(func(t *rapid.T) contest.OfficialFacts {
			return contest.OfficialFacts{Class: names.Draw(t, "class"), Exhibit: rapid.IntRange(1, 60).Draw(t, "exhibit"), Facts: facts.Draw(t, "facts")}
		}), 0, 3).Draw(t, "key")
		same(t, contest.KeySheet(), key)
		pl := rapid.SliceOfN(rapid.Custom(func(t *rapid.T) contest.PlacingCard {
			var c placing.Card
			answer(t, "placing", rapid.SampledFrom(orders), &c.Order, &c.Mark)
			return contest.PlacingCard{Class: names.Draw(t, "class"), Member: members.Draw(t, "member"), Card: c}
		}), 0, 3).Draw(t, "placings")
		same(t, contest.PlacingSheet(), pl)
		hand := rapid.SliceOfN(rapid.Custom(func(t *rapid.T) contest.HandScore {
			h := contest.HandScore{Component: names.Draw(t, "component"), Class: names.Draw(t, "class"), Member: members.Draw(t, "member")}
			answer(t, "score", counted(-9_000_000, 9_000_000, contest.PointsUnits), &h.Score, &h.Mark)
			return h
		}), 0, 3).Draw(t, "hand")
		same(t, contest.HandSheet(), hand)
		off := rapid.SliceOfN(rapid.Custom(func(t *rapid.T) contest.OfficialPlacing {
			return contest.OfficialPlacing{Class: names.Draw(t, "class"), Order: rapid.SampledFrom(orders).Draw(t, "order"), Cuts: placing.MustParseCuts(fmt.Sprintf("%d-5-3", rapid.IntRange(0, 50).Draw(t, "cut")))}
		}), 0, 3).Draw(t, "official")
		same(t, contest.OfficialSheet(), off)
	})
}

// same checks that rows are read back as they were written, and that writing them
// again gives the same bytes.
func same[T comparable](t *rapid.T, s contest.Sheet[T], rows []T) {
	text, err := write(s, rows...)
	if err != nil {
		t.Fatal(err)
	}
	got, errs := drain(s, text)
	if len(errs) > 0 || !slices.Equal(rows, got) {
		t.Fatalf("wrote %+v as\n%s\nread back %+v, errors %v", rows, text, got, errs)
	}
	if again, err := write(s, got...); err != nil || again != text {
		t.Fatalf("wrote\n%s\nthen\n%s, %v", text, again, err)
	}
}

func FuzzEstimateSheet(f *testing.F) {
	f.Add("class,exhibit,member,fat_in,quality\nb,1,7,0.45,Low Choice\n")
	f.Add("class,exhibit,member,weight_kg,yield\n\"b, 1\",2,7,380.5,3.12\n")
	f.Add("\ufeffclass,exhibit,member,marbling\r\n b ,3,\"a\"\"b\",Sm40\r\nb,x,1,\n")
	f.Fuzz(func(t *testing.T, in string) {
		s := contest.EstimateSheet()
		rows, _ := drain(s, in)
		text, err := write(s, rows...)
		if err != nil {
			t.Fatalf("read what cannot be written: %+v: %v", rows, err)
		}
		if again, errs := drain(s, text); len(errs) > 0 || !slices.Equal(rows, again) {
			t.Fatalf("wrote %q, read back %+v, errors %v", text, again, errs)
		}
	})
}

func FuzzPlacingSheet(f *testing.F) {
	f.Add("class,member,placing\nb,7,3-2-1-4\nb,8,blank\n")
	f.Add("class,member,placing\n\"b\n,8,blank\n")
	f.Fuzz(func(t *testing.T, in string) {
		s := contest.PlacingSheet()
		rows, _ := drain(s, in)
		text, err := write(s, rows...)
		if err != nil {
			t.Fatalf("read what cannot be written: %+v: %v", rows, err)
		}
		if again, errs := drain(s, text); len(errs) > 0 || !slices.Equal(rows, again) {
			t.Fatalf("wrote %q, read back %+v, errors %v", text, again, errs)
		}
	})
}

// TestLongestLine: a line of 65,536 bytes with its end is read, one byte more is not.
func TestLongestLine(t *testing.T) {
	const row = "b,1,1-2"
	pad := strings.Repeat(" ", 1<<16-len(row)-1)
	rows, errs := drain(contest.PlacingSheet(), "class,member,placing\n"+pad+row+"\n "+pad+row+"\n"+row+"\n")
	if len(rows) != 2 {
		t.Errorf("%d rows, want the first and the last", len(rows))
	}
	if d := cmp.Diff([]string{"line 3: row: over 65536 bytes: out of range; allowed: lines up to 64 KiB"}, errs); d != "" {
		t.Errorf("(-want +got):\n%s", d)
	}
}

// TestManyNames holds that names come back as they are however many a sheet has, and
// that a name which comes again is held once.
func TestManyNames(t *testing.T) {
	const members = 5_000
	var b strings.Builder
	b.WriteString("class,member,team,placing\n")
	for round := range 2 {
		for i := range members {
			fmt.Fprintf(&b, "class %d,%d,team %d,1-2-3-4\n", round, i, i/4)
		}
	}
	n, last := 0, ""
	for card, err := range contest.PlacingSheet().Read(strings.NewReader(b.String())) {
		faulttest.Text(t, err, "")
		want := contest.Member{ID: strconv.Itoa(n % members), Team: "team " + strconv.Itoa(n%members/4)}
		if card.Class != "class "+strconv.Itoa(n/members) || card.Member != want {
			t.Fatalf("row %d: %+v", n, card)
		}
		if n%4 != 0 && unsafe.StringData(card.Member.Team) != unsafe.StringData(last) {
			t.Fatalf("row %d: the team is held anew", n)
		}
		n, last = n+1, card.Member.Team
	}
	if n != 2*members {
		t.Errorf("%d rows", n)
	}
}
