package lines_test

import (
	"bytes"
	"encoding/csv"
	"errors"
	"io"
	"slices"
	"strings"
	"testing"
	"testing/iotest"

	"example.com/ribface/internal/fault"
	"example.com/ribface/internal/lines"
	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

// line is what one call of Next gave.
type line struct {
	Number int
	Cells  []string
	Err    string
}

// drain reads to the end, and once more.
func drain(t testing.TB, r *lines.Reader) []line {
	t.Helper()
	var all []line
	for {
		cells, err := r.Next()
		if err == io.EOF {
			n := r.Number()
			if again, err := r.Next(); again != nil || err != io.EOF || r.Number() != n {
				t.Errorf("after the end: %v, %v, line %d", again, err, r.Number())
			}
			return all
		}
		l := line{Number: r.Number(), Cells: slices.Clone(cells)}
		if err != nil {
			l.Err = err.Error()
		}
		all = append(all, l)
	}
}

func TestNext(t *testing.T) {
	const quote, long = "row: a stray or open quote at byte ", "row: over 65536 bytes: out of range; allowed: lines up to 64 KiB"
	const allowed = ": bad syntax; allowed: quotes around a whole cell, doubled inside it, closed on the same line"
	full := strings.Repeat("x", lines.Max-1)
	tests := []struct {
		name, reason, in string
		comma            rune
		trim             bool
		want             []line
	}{
		{"nothing", "no line", "", ',', false, nil},
		{"ends", "with and without a carriage return, and none at the last", "a,b\nc,d\r\ne", ',', false, []line{{1, []string{"a", "b"}, ""}, {2, []string{"c", "d"}, ""}, {3, []string{"e"}, ""}}},
		{"empty lines", "skipped and counted", "\n\r\na\n\n", ',', false, []line{{3, []string{"a"}, ""}}},
		{"empty cells", "cells all the same", ",\n,,\n", ',', false, []line{{1, []string{"", ""}, ""}, {2, []string{"", "", ""}, ""}}},
		{"byte order mark", "left out before the first line only", "\uFEFFa\n\uFEFFb\n", ',', false, []line{{1, []string{"a"}, ""}, {2, []string{"\uFEFFb"}, ""}}},
		{"byte order mark before a quote", "left out first", "\uFEFF\"a\"\n", ',', false, []line{{1, []string{"a"}, ""}}},
		{"quotes", "around a cell, doubled inside", "\"a,b\",\"c\"\"d\"\r\n\"\"\n", ',', false, []line{{1, []string{"a,b", `c"d`}, ""}, {2, []string{""}, ""}}},
		{"semicolons", "the comma is then a part of the cell", "a,b;c\n\"d;e\";f\n", ';', false, []line{{1, []string{"a,b", "c"}, ""}, {2, []string{"d;e", "f"}, ""}}},
		{"spaces kept", "cells are as they stand", " a , b\t\n\"c \",d\n", ',', false, []line{{1, []string{" a ", " b\t"}, ""}, {2, []string{"c ", "d"}, ""}}},
		{"spaces taken off", "around every cell, in quotes too", " a , b\t\n \"c \",d \n", ',', true, []line{{1, []string{"a", "b"}, ""}, {2, []string{"c", "d"}, ""}}},
		{"quotes out of place", "each spoils its own line", "\"a\nb\"c\n\"d\"e,\n \"f\"\ng\n", ',', false, []line{
			{1, nil, quote + "1" + allowed}, {2, nil, quote + "2" + allowed}, {3, nil, quote + "1" + allowed}, {4, nil, quote + "2" + allowed}, {5, []string{"g"}, ""}}},
		{"long lines", "the longest, one byte more, and one that fills the room several times", full + "\n" + full + "x\n" + strings.Repeat(full, 3) + "\nb", ',', false, []line{
			{1, []string{full}, ""}, {2, nil, long}, {3, nil, long}, {4, []string{"b"}, ""}}},
		{"long at the end", "without an end of line", "a\n" + full + "xx", ',', false, []line{{1, []string{"a"}, ""}, {2, nil, long}}},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			for _, in := range []io.Reader{strings.NewReader(tt.in), iotest.OneByteReader(strings.NewReader(tt.in))} {
				if d := cmp.Diff(tt.want, drain(t, lines.NewReader(in, byte(tt.comma), tt.trim))); d != "" {
					t.Errorf("%s (-want +got):\n%s", tt.reason, d)
				}
			}
		})
	}
}

// TestNextBroken checks that an error of the input comes once, after the whole
// lines, and that what it broke off is no line.
func TestNextBroken(t *testing.T) {
	gone := errors.New("disk gone")
	r := lines.NewReader(io.MultiReader(strings.NewReader("a\nb"), iotest.ErrReader(gone)), ',', false)
	if d := cmp.Diff([]line{{1, []string{"a"}, ""}, {2, nil, "disk gone"}}, drain(t, r)); d != "" {
		t.Errorf("(-want +got):\n%s", d)
	}
}

func TestCount(t *testing.T) {
	if err := lines.Count(3, 3); err != nil {
		t.Error(err)
	}
	var fe *fault.FieldError
	if err := lines.Count(1, 2); !errors.As(err, &fe) || *fe != (fault.FieldError{Field: "row", Value: "1 cell", Allowed: "2 cells, one for each column", Err: fault.ErrSyntax}) {
		t.Errorf("%v", err)
	}
}

// TestAppend holds that what is written is what encoding/csv writes, and is read
// back as it was; a line break is refused.
func TestAppend(t *testing.T) {
	if b, err := lines.Append([]byte("a,"), `\.`, ','); string(b) != `a,"\."` || err != nil {
		t.Errorf("the end-of-data mark: %q, %v", b, err)
	}
	rapid.Check(t, func(t *rapid.T) {
		cells := rapid.SliceOfN(rapid.OneOf(rapid.String(), rapid.StringOfN(rapid.SampledFrom([]rune("a ,;\"\\.\t")), 0, 5, -1)), 1, 4).Draw(t, "cells")
		comma := rapid.SampledFrom([]rune(",;\t|")).Draw(t, "comma")
		var b []byte
		for i, cell := range cells {
			if i > 0 {
				b = append(b, byte(comma))
			}
			n := len(b)
			var err error
			b, err = lines.Append(b, cell, byte(comma))
			if lines.Broken(cell) {
				if err != fault.ErrSyntax || len(b) != n {
					t.Fatalf("%q: wrote %q, %v", cell, b[n:], err)
				}
				return
			}
			if err != nil {
				t.Fatal(err)
			}
		}
		var want bytes.Buffer
		w := csv.NewWriter(&want)
		w.Comma = comma
		_ = w.Write(cells)
		w.Flush()
		if len(cells) == 1 && cells[0] == "" {
			return // an empty line, which encoding/csv writes as a pair of quotes
		}
		if string(b)+"\n" != want.String() {
			t.Fatalf("wrote %q, encoding/csv writes %q", b, want.String())
		}
		got, err := lines.NewReader(bytes.NewReader(append(b, '\n')), byte(comma), false).Next()
		if strings.HasPrefix(cells[0], "\uFEFF") {
			return // read as a byte order mark
		}
		if err != nil || !slices.Equal(got, cells) {
			t.Fatalf("%q came back as %q, %v", cells, got, err)
		}
	})
}

// FuzzNext: nothing panics, every line is counted once, and a line that both can
// read has the cells that encoding/csv gives it.
func FuzzNext(f *testing.F) {
	f.Add("a,b\n\"c,d\",e\r\n\nf\"\n")
	f.Add("\uFEFFa\n\"\n")
	f.Fuzz(func(t *testing.T, in string) {
		last := 0
		for _, l := range drain(t, lines.NewReader(strings.NewReader(in), ',', false)) {
			if l.Number <= last || l.Number > strings.Count(in, "\n")+1 {
				t.Fatalf("line %d after %d", l.Number, last)
			}
			last = l.Number
			if l.Err != "" || slices.ContainsFunc(l.Cells, lines.Broken) {
				continue
			}
			var b []byte
			for i, c := range l.Cells {
				if i > 0 {
					b = append(b, ',')
				}
				b, _ = lines.Append(b, c, ',')
			}
			got, err := csv.NewReader(bytes.NewReader(append(b, '\n'))).Read()
			if len(b) > 1 && (err != nil || !slices.Equal(got, l.Cells)) {
				t.Fatalf("%q, encoding/csv has %q, %v", l.Cells, got, err)
			}
		}
	})
}
