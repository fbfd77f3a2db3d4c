package sheet_test

import (
	"bytes"
	"context"
	"encoding/csv"
	"io"
	"testing"

	"example.com/ribface/grade"
	"example.com/ribface/grade/sheet"
	"example.com/ribface/maturity"
)

// benchRows is the size of the benchmark's sheet; times are per row.
const benchRows = 100_000

// benchSheet makes a sheet of plausible carcasses by a fixed rule.
func benchSheet(b testing.TB, rows int) []byte {
	var buf bytes.Buffer
	w, err := sheet.NewWriter(&buf)
	if err != nil {
		b.Fatal(err)
	}
	state := uint32(2463534242)
	next := func(n uint32) int {
		state ^= state << 13
		state ^= state >> 17
		state ^= state << 5
		return int(state % n)
	}
	for i := range rows {
		c := grade.Carcass{
			Sex:      grade.Steer + grade.Sex(next(2)),
			Maturity: maturity.Evidence{Skeletal: maturity.A.At(20 + next(70)), Lean: maturity.A.At(20 + next(70))},
			Marbling: grade.Slight.At(next(100)) + grade.Marbling(100*next(4)),
			Measures: grade.Measures{
				Fat:    grade.ThicknessUnits(int64(2000 + 500*next(17))),
				Ribeye: grade.AreaUnits(int64(100_000 + 1000*next(71))),
				KPH:    grade.ShareUnits(int64(15_000 + 5000*next(6))),
				Weight: grade.WeightUnits(int64(6_000_000 + 10_000*next(401))),
			},
		}
		id := []byte("x1000000")
		for at, n := len(id)-1, i; n > 0; at, n = at-1, n/10 {
			id[at] = '0' + byte(n%10)
		}
		if err := w.Write(sheet.Row{ID: string(id), Carcass: c}); err != nil {
			b.Fatal(err)
		}
	}
	if err := w.Flush(); err != nil {
		b.Fatal(err)
	}
	return buf.Bytes()
}

// BenchmarkSheet times one row: impl=csv is encoding/csv alone reading and
// writing the rows, impl=rows this package reading and writing them, impl=graded
// this package reading, grading and writing them with their results, on as many
// cores as -cpu says.
func BenchmarkSheet(b *testing.B) {
	in := benchSheet(b, benchRows)
	run := func(name string, f func() error) {
		b.Run("impl="+name, func(b *testing.B) {
			b.ReportAllocs()
			for n := 0; n < b.N; n += benchRows {
				if err := f(); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
	run("csv", func() error {
		r, w := csv.NewReader(bytes.NewReader(in)), csv.NewWriter(io.Discard)
		r.ReuseRecord = true
		for {
			cells, err := r.Read()
			if err == io.EOF {
				break
			}
			if err != nil {
				return err
			}
			if err := w.Write(cells); err != nil {
				return err
			}
		}
		w.Flush()
		return w.Error()
	})
	run("rows", func() error {
		r, err := sheet.NewReader(bytes.NewReader(in))
		if err != nil {
			return err
		}
		w, err := sheet.NewWriter(io.Discard)
		if err != nil {
			return err
		}
		for row, err := range r.Rows() {
			if err != nil {
				return err
			}
			if err := w.Write(row); err != nil {
				return err
			}
		}
		return w.Flush()
	})
	run("graded", func() error { return gradeAll(bytes.NewReader(in), io.Discard) })
}

// gradeAll reads, grades and writes a sheet in which every row is good.
func gradeAll(in io.Reader, out io.Writer) error {
	r, err := sheet.NewReader(in)
	if err != nil {
		return err
	}
	w, err := sheet.NewGradedWriter(out)
	if err != nil {
		return err
	}
	for g, err := range r.Grade(context.Background(), grade.Rules{Edition: grade.Current}) {
		if err != nil {
			return err
		}
		if err := w.Write(g); err != nil {
			return err
		}
	}
	return w.Flush()
}
