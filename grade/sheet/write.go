package sheet

import (
	"io"
	"strconv"
	"strings"

	"example.com/ribface/grade"
	"example.com/ribface/internal/fault"
	"example.com/ribface/internal/lines"
	"example.com/ribface/internal/text"
	"example.com/ribface/internal/text/fixed"
)

// Writer writes rows to a sheet with our own headings and commas between the cells,
// measures in inches, square inches, percent and pounds, which hold them exactly. Make
// one with [NewWriter], and call [Writer.Flush] at the end. The zero Writer refuses
// every row.
type Writer struct {
	worker
	w     io.Writer
	buf   []byte
	line  int // lines written, the header among them
	cols  int // columns before the extra ones
	extra int
	row   Row   // the one at hand
	err   error // of the output; it stays
}

// NewWriter returns a writer of a sheet with one column for every field and then the
// extra ones. An extra name that is empty, repeated, not one line, or that of a column
// of ours gives a [*RowError].
func NewWriter(w io.Writer, extra ...string) (*Writer, error) {
	return newWriter(w, nil, extra)
}

func newWriter(w io.Writer, more, extra []string) (*Writer, error) {
	var names []string
	for _, c := range written {
		names = append(names, c.Name)
	}
	names = append(names, more...)
	s := &Writer{w: w, line: 1, cols: len(names), extra: len(extra)}
	taken := ours()
	var wrong []*RowError
	for i, name := range extra {
		refuse := func(allowed string, err error) {
			wrong = append(wrong, &RowError{Column: s.cols + i + 1, Heading: fault.Plain(name), Err: &grade.FieldError{Field: "column", Value: fault.Plain(name), Allowed: allowed, Err: err}})
		}
		switch {
		case name == "":
			refuse("a name", grade.ErrMissing)
		case lines.Broken(name):
			refuse("one line of text", grade.ErrSyntax)
		case taken[strings.ToLower(name)]:
			refuse("each column once", grade.ErrRepeated)
		}
		taken[strings.ToLower(name)] = true
	}
	if len(wrong) > 0 {
		return nil, fault.Row("", 1, "", wrong)
	}
	for i, name := range append(names, extra...) {
		if i > 0 {
			s.buf = append(s.buf, ',')
		}
		s.buf, _ = lines.Append(s.buf, name, ',') // no name is broken
	}
	s.buf = append(s.buf, '\n')
	return s, nil
}

// flushAt is how much is gathered before it is written.
const flushAt = 32 << 10

// Write writes one row. A row that could not be read back, with an invalid field, a
// measure beyond its limits, a line break in its text, or more or fewer extra cells
// than there are extra columns, gives a [*RowError] and is not written; the writer can
// go on. An error of the output stays.
func (s *Writer) Write(row Row) error {
	if s == nil {
		s = &Writer{}
	}
	s.row = row
	b, err := s.put("NewWriter")
	if err != nil {
		return err
	}
	return s.end(b)
}

// refuse is the error for the row that would be written next.
func (s *Writer) refuse(e *RowError) error {
	return fault.Row("", s.line+1, s.row.ID, []*RowError{e})
}

// put adds the cells of the row at hand to what is gathered.
func (s *Writer) put(maker string) ([]byte, error) {
	if s.w == nil {
		return nil, s.refuse(&RowError{Err: &grade.FieldError{Field: "writer", Allowed: "one made by " + maker, Err: grade.ErrMissing}})
	}
	b, at, err := put.Put(s.buf, &s.row)
	if err != nil {
		c := &written[at]
		return nil, s.refuse(&RowError{Column: at + 1, Heading: c.Name, Err: c.Refuse("", err)})
	}
	return b, nil
}

// end adds the extra cells and the end of the line.
func (s *Writer) end(b []byte) error {
	row := &s.row
	if len(row.Extra) != s.extra {
		return s.refuse(&RowError{Err: &grade.FieldError{Field: "row", Value: text.Count(len(row.Extra), "extra cell"), Allowed: strconv.Itoa(s.extra) + ", one for each extra column", Err: grade.ErrSyntax}})
	}
	for i, cell := range row.Extra {
		var err error
		if b, err = lines.Append(append(b, ','), cell, ','); err != nil {
			return s.refuse(&RowError{Column: s.cols + i + 1, Err: &grade.FieldError{Field: "extra cell", Value: fault.Plain(cell), Allowed: "one line of text", Err: err}})
		}
	}
	s.buf = append(b, '\n')
	s.line++
	if len(s.buf) >= flushAt {
		return s.Flush()
	}
	return s.err
}

// Flush writes what is left. It returns the first error of the output.
func (s *Writer) Flush() error {
	if s == nil {
		return nil
	}
	if s.err == nil && len(s.buf) > 0 {
		_, s.err = s.w.Write(s.buf)
	}
	s.buf = s.buf[:0]
	return s.err
}

// GradedWriter writes graded rows to a sheet: the columns of a [Writer], then
// overall (maturity), quality, yield (exact), yield_grade (1 to 5), tier and flags
// (what is unlikely, with semicolons between), then the extra ones. What the sheet was
// not graded for is empty. Make one with [NewGradedWriter], and call
// [GradedWriter.Flush] at the end. The zero GradedWriter refuses every row.
type GradedWriter struct {
	worker
	w Writer
}

// NewGradedWriter returns a writer of graded rows. The errors are those of
// [NewWriter].
func NewGradedWriter(w io.Writer, extra ...string) (*GradedWriter, error) {
	s, err := newWriter(w, resultNames, extra)
	if err != nil {
		return nil, err
	}
	return &GradedWriter{w: *s}, nil
}

// qualityText and tierText spell every quality and its tier.
var qualityText, tierText = func() (quality, tier [256]string) {
	for q := range grade.Qualities() {
		quality[q], tier[q] = q.String(), q.Tier().String()
	}
	return quality, tier
}()

const yieldPlaces = 8

// Write writes one graded row. The errors are those of [Writer.Write], and one for an
// Assessment without a grade.
func (s *GradedWriter) Write(g GradedRow) error {
	if s == nil {
		s = &GradedWriter{}
	}
	a := &g.Assessment
	s.w.row = Row{Line: g.Line, ID: g.ID, Carcass: a.Carcass, Assumed: g.Assumed, Extra: g.Extra}
	b, err := s.w.put("NewGradedWriter")
	if err != nil {
		return err
	}
	if a.Quality != 0 && (!a.Quality.IsValid() || !a.Maturity.IsValid()) || a.Quality == 0 && !a.Yield.IsSet() {
		return s.w.refuse(&RowError{Err: &grade.FieldError{Field: "assessment", Allowed: "one with overall maturity and quality, with a yield, or with both", Err: grade.ErrMissing}})
	}
	b = append(b, ',')
	if a.Quality != 0 {
		b, _ = appendScore(b, a.Maturity)
	}
	b = append(append(b, ','), qualityText[a.Quality]...)
	b = append(b, ',')
	if a.Yield.IsSet() {
		b = append(fixed.Append(b, a.Yield.Units(), yieldPlaces), ',', '0'+byte(a.Yield.Grade()))
	} else {
		b = append(b, ',')
	}
	b = append(b, ',')
	b = append(b, tierText[a.Quality]...)
	b = append(b, ',')
	for i, f := range g.Flags {
		if i > 0 {
			b = append(b, "; "...)
		}
		if b, err = flagNames.Append(b, f.Kind); err != nil {
			return s.w.refuse(&RowError{Err: err})
		}
	}
	return s.w.end(b)
}

// Flush writes what is left. It returns the first error of the output.
func (s *GradedWriter) Flush() error {
	if s == nil {
		return nil
	}
	return s.w.Flush()
}
