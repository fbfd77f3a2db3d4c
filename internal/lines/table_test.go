package lines_test

import (
	"errors"
	"fmt"
	"io"
	"slices"
	"strconv"
	"strings"
	"testing"
	"testing/iotest"

	"example.com/ribface/internal/fault"
	"example.com/ribface/internal/lines"
	"github.com/google/go-cmp/cmp"
)

// pet is a row of the tests: a name and an age in years or months.
type pet struct {
	Name   string
	Months int
}

func number(s string) (int, error) {
	n, err := strconv.Atoi(s)
	if err != nil {
		return 0, fault.ErrSyntax
	}
	return n, nil
}

var pets = lines.Table[pet]{
	ID: func(p *pet) string { return p.Name },
	Columns: []lines.Column[pet]{
		{Name: "name", Fact: "name", Path: "name", Needed: true, Blank: true,
			Read: func(p *pet, s string) error {
				if p.Name = s; s == "" {
					return &fault.FieldError{Field: "other", Allowed: "a name", Err: fault.ErrMissing}
				}
				return nil
			},
			Write: func(b []byte, p *pet) ([]byte, error) { return lines.Append(b, p.Name, ',') }},
		{Name: "years old", Fact: "age", Path: "age", Allowed: "whole years", Read: func(p *pet, s string) error {
			n, err := number(s)
			p.Months = 12 * n
			return err
		}},
		{Name: "months old", Fact: "age", Path: "age",
			Read: func(p *pet, s string) (err error) {
				if p.Months, err = number(s); err != nil {
					return fault.Parse("months", s, "", "whole months", err)
				}
				return nil
			},
			Write: func(b []byte, p *pet) ([]byte, error) {
				if p.Months < 0 {
					return b, &fault.FieldError{Field: "age", Value: strconv.Itoa(p.Months), Err: fault.ErrRange}
				}
				return strconv.AppendInt(b, int64(p.Months), 10), nil
			}},
	},
}

func TestTableRead(t *testing.T) {
	tests := []struct {
		name, in string
		want     []string
	}{
		{"good", "NAME,Months_Old\n Rex ,24\n\n , \nTom,\n", []string{"{Rex 24}", "{Tom 0}"}},
		{"other unit", "years old,name,\n2,Rex,\n", []string{`p.csv, line 1, column 3: column: unknown; allowed: name, months old, years old`}},
		{"cells", "years old,name\n2,Rex,,\nx,\n3\n\"\n1,Tom\n", []string{"{Rex 24}",
			"p.csv, line 3, column 1 (years old): age: x: bad syntax; allowed: whole years; column 2 (name): name: missing; allowed: a name",
			"p.csv, line 4: row: 1 cell: bad syntax; allowed: 2 cells, one for each column",
			"p.csv, line 5: row: a stray or open quote at byte 1: bad syntax; allowed: quotes around a whole cell, doubled inside it, closed on the same line",
			"{Tom 12}"}},
		{"own words", "months old,name\nx,Rex\n", []string{"p.csv, line 2, id Rex, column 1 (months old): age: x: bad syntax; allowed: whole months"}},
		{"header", "age,name,sex,Years old,months old\n1,2\n", []string{"p.csv, line 1, column 1 (age): column: age: unknown; allowed: name, months old, years old; column 3 (sex): column: sex: unknown; allowed: the columns named above; column 5 (months old): age: months old: repeated; allowed: one column for it; column 4 is one"}},
		{"needed", "months old\n", []string{"p.csv, line 1: column: name: missing; allowed: a sheet that has it"}},
		{"empty", "", []string{"p.csv, line 1: header: missing; allowed: a first line with the headings of the columns"}},
		{"no header", "\"\n", []string{"p.csv, line 1: row: a stray or open quote at byte 1: bad syntax; allowed: quotes around a whole cell, doubled inside it, closed on the same line"}},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			var got []string
			for p, err := range pets.Read("p.csv", strings.NewReader(tt.in)) {
				var row *fault.RowError
				switch {
				case err == nil:
					got = append(got, fmt.Sprint(p))
				case !errors.As(err, &row) || row.Line == 0:
					t.Errorf("%v is of no row", err)
				default:
					got = append(got, err.Error())
				}
			}
			if d := cmp.Diff(tt.want, got); d != "" {
				t.Errorf("(-want +got):\n%s", d)
			}
		})
	}
	// Leaving ends it, after a good row and after a bad one.
	for range pets.Read("", strings.NewReader("name\nRex\nTom\n")) {
		break
	}
	for range pets.Read("", strings.NewReader("name,months old\n,x\nTom,1\n")) {
		break
	}
	// An input that breaks off, in the header and after it.
	gone := errors.New("disk gone")
	for in, want := range map[string]string{"": "p.csv, line 1: disk gone", "name\nRex\n": "p.csv, line 3: disk gone"} {
		var last error
		for _, err := range pets.Read("p.csv", io.MultiReader(strings.NewReader(in), iotest.ErrReader(gone))) {
			last = err
		}
		var row *fault.RowError
		if !errors.Is(last, gone) || errors.As(last, &row) || last.Error() != want {
			t.Errorf("%v, want %s", last, want)
		}
	}
	if err := lines.InputError("", 7, gone); err.Error() != "line 7: disk gone" {
		t.Error(err)
	}
}

func TestTableWrite(t *testing.T) {
	var out strings.Builder
	if err := pets.Write(&out, slices.Values([]pet{{"Rex", 24}, {"a,b", 0}})); err != nil {
		t.Fatal(err)
	}
	if d := cmp.Diff("name,months old\nRex,24\n\"a,b\",0\n", out.String()); d != "" {
		t.Errorf("(-want +got):\n%s", d)
	}
	err := pets.Write(io.Discard, slices.Values([]pet{{"Rex", 24}, {"Tom", -1}}))
	if err == nil || err.Error() != "line 3, id Tom, column 2 (months old): age: -1: out of range" {
		t.Error(err)
	}
	nameless := lines.Table[pet]{Columns: pets.Columns}
	if err := nameless.Write(io.Discard, slices.Values([]pet{{"Tom", -1}})); err == nil || err.Error() != "line 2, column 2 (months old): age: -1: out of range" {
		t.Error(err)
	}
	many := func(yield func(pet) bool) {
		for yield(pet{"Rex", 1}) {
		}
	}
	if err := pets.Write(full{}, many); !errors.Is(err, io.ErrShortBuffer) {
		t.Error(err)
	}
}

// full is an output that takes nothing.
type full struct{}

func (full) Write([]byte) (int, error) { return 0, io.ErrShortBuffer }

// TestHead holds what is known of a header.
func TestHead(t *testing.T) {
	h, wrong := lines.NewHead(pets.Columns, []string{"pen", " name ", "", "Months old"}, true)
	if wrong != nil || h.Find("age") != 3 || h.Find("pen") != -1 || h.Column(1).Name != "name" || h.Column(0) != nil {
		t.Errorf("%+v, %v", h, wrong)
	}
	if d := cmp.Diff([]int{0, 2}, h.Unread); d != "" {
		t.Errorf("(-want +got):\n%s", d)
	}
	if e := h.Wrong(-1, io.EOF); e.Column != 0 || e.Heading != "" {
		t.Errorf("%+v", e)
	}
	c := lines.Column[pet]{Fact: "age", Path: "age"}
	want := &fault.FieldError{Path: "age", Field: "age", Value: "-1", Allowed: "more", Err: fault.ErrRange}
	if d := cmp.Diff(error(want), c.Refuse("", &fault.FieldError{Value: "-1", Allowed: "more", Err: fault.ErrRange})); d != "" {
		t.Errorf("(-want +got):\n%s", d)
	}
}

// TestSourceStalls holds that an input that gives nothing for ever is given up.
func TestSourceStalls(t *testing.T) {
	s := lines.NewSource(stalled{})
	if _, err := s.Next(); err != io.ErrNoProgress {
		t.Error(err)
	}
	if _, err := s.Next(); err != io.EOF {
		t.Error(err)
	}
}

type stalled struct{}

func (stalled) Read([]byte) (int, error) { return 0, nil }

// TestTake holds that blocks go on where lines left off.
func TestTake(t *testing.T) {
	r := lines.NewReader(strings.NewReader("a\nb\nc\n"), ',', false)
	if cells, err := r.Next(); err != nil || cells[0] != "a" {
		t.Fatal(cells, err)
	}
	b := r.Take()
	if b.Text != "b\nc\n" || b.Line != 2 || r.Take().Text != "" {
		t.Errorf("%+v", b)
	}
	if _, err := r.Source().Next(); err != io.EOF {
		t.Error(err)
	}
}

// BenchmarkRead times one row of a table of six columns, four of them numbers, read
// from 64 KiB of text and more.
func BenchmarkRead(b *testing.B) {
	type row struct {
		name [2]string
		n    [4]int
	}
	var columns []lines.Column[row]
	for i := range 2 {
		columns = append(columns, lines.Column[row]{Name: "name " + strconv.Itoa(i), Fact: "name " + strconv.Itoa(i), Read: func(r *row, s string) error {
			r.name[i] = s
			return nil
		}})
	}
	for i := range 4 {
		columns = append(columns, lines.Column[row]{Name: "n" + strconv.Itoa(i), Fact: "n" + strconv.Itoa(i), Read: func(r *row, s string) (err error) {
			r.n[i], err = strconv.Atoi(s)
			return err
		}})
	}
	const rows = 10_000
	in := "name 0,name 1,n0,n1,n2,n3\n" + strings.Repeat("invented member,team 7,4,17,930,2\n", rows)
	b.ReportAllocs()
	for n := 0; n < b.N; n += rows {
		for _, err := range (lines.Table[row]{Columns: columns}).Read("", strings.NewReader(in)) {
			if err != nil {
				b.Fatal(err)
			}
		}
	}
}
