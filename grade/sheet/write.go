package sheet

import (
	"io"
	"strconv"

	"example.com/ribface/grade"
	"example.com/ribface/internal/fixed"
	"example.com/ribface/internal/lines"
	"example.com/ribface/internal/text"
)

// Writer writes rows to a sheet, measures in inches, square inches, percent and
// pounds, which hold them exactly. Make one with [NewWriter], and call
// [Writer.Flush] at the end. The zero Writer refuses every row.
type Writer struct {
	w     io.Writer
	buf   []byte
	comma byte
	line  int // lines written, the header among them
	extra int
	err   error // of the output; it stays
}

// NewWriter returns a writer with the default options. See [Options.NewWriter].
func NewWriter(w io.Writer, extra ...string) (*Writer, error) {
	return Options{}.NewWriter(w, extra...)
}

// NewWriter returns a writer of a sheet with one column for every field and then
// the extra ones. An extra name that is empty, repeated, not one line, or that of
// a known column gives an [*Error]. Of the options only the comma matters.
func (o Options) NewWriter(w io.Writer, extra ...string) (*Writer, error) {
	return o.writer(w, nil, extra)
}

func (o Options) writer(w io.Writer, results, extra []string) (*Writer, error) {
	comma, err := o.comma()
	if err != nil {
		return nil, err
	}
	s := &Writer{w: w, comma: byte(comma), line: 1, extra: len(extra)}
	var names []string
	for k := id; k < kinds; k++ {
		names = append(names, written[k].Name)
	}
	names = append(names, results...)
	taken := map[string]bool{}
	for i := range columns {
		taken[columns[i].Name] = true
	}
	for _, name := range results {
		taken[name] = true
	}
	for i, name := range extra {
		refuse := func(allowed string, err error) (*Writer, error) {
			return nil, &Error{Line: 1, Column: len(names) + i + 1, Name: clip(name), Err: &grade.FieldError{Field: "column", Value: clip(name), Allowed: allowed, Err: err}}
		}
		switch {
		case name == "":
			return refuse("a name", grade.ErrMissing)
		case lines.Broken(name):
			return refuse("one line of text", grade.ErrSyntax)
		case taken[name]:
			return refuse("each column once", ErrRepeated)
		}
		taken[name] = true
	}
	for i, name := range append(names, extra...) {
		if i > 0 {
			s.buf = append(s.buf, s.comma)
		}
		s.buf, _ = lines.Append(s.buf, name, s.comma) // no name is broken
	}
	s.buf = append(s.buf, '\n')
	return s, nil
}

// flushAt is how much is gathered before it is written.
const flushAt = 32 << 10

// Write writes one row. A row with an invalid field, with some of the four
// measures impossible, with line breaks in its text or with more or fewer extra
// cells than there are extra columns gives an [*Error] and is not written; the
// writer can go on. An error of the output stays.
func (s *Writer) Write(row Row) error {
	if s.w == nil {
		return noOutput("NewWriter")
	}
	b, err := s.row(s.buf, row.ID, &row.Carcass)
	if err != nil {
		return err
	}
	return s.end(b, row.Extra, place[weight])
}

// noOutput is the error for a writer that has nothing to write to.
func noOutput(maker string) error {
	return &Error{Line: 1, Err: &grade.FieldError{Field: "writer", Allowed: "one made by " + maker, Err: grade.ErrMissing}}
}

// Flush writes what is left. It returns the first error of the output.
func (s *Writer) Flush() error {
	if s.err == nil && len(s.buf) > 0 {
		_, s.err = s.w.Write(s.buf)
		s.buf = s.buf[:0]
	}
	return s.err
}

// end adds the extra cells after so many columns, and the end of the line.
func (s *Writer) end(b []byte, extra []string, cols int) error {
	if len(extra) != s.extra {
		return &Error{Line: s.line + 1, Err: &grade.FieldError{Field: "row", Value: text.Count(len(extra), "extra cell"), Allowed: strconv.Itoa(s.extra) + ", one for each extra column", Err: grade.ErrSyntax}}
	}
	for i, cell := range extra {
		var err error
		if b, err = lines.Append(append(b, s.comma), cell, s.comma); err != nil {
			return &Error{Line: s.line + 1, Column: cols + i + 1, Err: reason("extra cell", cell, "one line of text", err)}
		}
	}
	s.buf = append(b, '\n')
	s.line++
	if len(s.buf) >= flushAt {
		return s.Flush()
	}
	return s.err
}

// row adds the cells of a carcass to b.
func (s *Writer) row(b []byte, name string, c *grade.Carcass) ([]byte, error) {
	refuse := func(k kind, value string, err error) ([]byte, error) {
		return nil, &Error{Line: s.line + 1, Column: place[k], Name: written[k].Name, Err: reason(written[k].Field, value, written[k].Allowed, err)}
	}
	b, err := lines.Append(b, name, s.comma)
	if err != nil {
		return refuse(id, name, err)
	}
	b = append(b, s.comma)
	if b, err = c.Sex.AppendText(b); err != nil {
		return refuse(sex, c.Sex.String(), err)
	}
	b = append(b, s.comma)
	if b, err = c.Maturity.Skeletal.AppendText(b); err != nil {
		return refuse(skeletal, c.Maturity.Skeletal.String(), err)
	}
	b = append(b, s.comma)
	if b, err = c.Maturity.Lean.AppendText(b); err != nil {
		return refuse(lean, c.Maturity.Lean.String(), err)
	}
	b = append(b, s.comma)
	if c.Maturity.Teeth != 0 {
		n, ok := c.Maturity.Teeth.Count()
		if !ok {
			return refuse(teeth, c.Maturity.Teeth.String(), grade.ErrRange)
		}
		b = append(b, '0'+byte(n))
	}
	b = append(b, s.comma)
	if c.Maturity.Papers != 0 {
		if err := checkPapers(c.Maturity.Papers); err != nil {
			return refuse(papers, c.Maturity.Papers.String(), err)
		}
		b = strconv.AppendInt(b, int64(c.Maturity.Papers), 10)
	}
	b = append(b, s.comma)
	if b, err = c.Marbling.AppendText(b); err != nil {
		return refuse(marbling, c.Marbling.String(), err)
	}
	b = append(b, s.comma)
	if b, err = c.Lean.Firmness.AppendText(b); err != nil {
		return refuse(firmness, c.Lean.Firmness.String(), err)
	}
	b = append(b, s.comma)
	if b, err = c.Lean.Dark.AppendText(b); err != nil {
		return refuse(dark, c.Lean.Dark.String(), err)
	}
	b = append(b, s.comma)
	if c.Lean.BelowCutter {
		b = append(b, "yes"...)
	}
	m := &c.Measures
	if *m == (grade.Measures{}) && c.FatAdjust == 0 {
		return append(b, s.comma, s.comma, s.comma, s.comma, s.comma), nil
	}
	if err := possible(c); err != nil {
		return nil, s.locate(err)
	}
	b = append(b, s.comma)
	b = fixed.Append(b, int64(m.Fat), 4)
	b = append(b, s.comma)
	if c.FatAdjust != 0 {
		b = fixed.Append(b, int64(c.FatAdjust), 4)
	}
	b = append(b, s.comma)
	b = fixed.Append(b, int64(m.Ribeye), 4)
	b = append(b, s.comma)
	b = fixed.Append(b, int64(m.KPH), 4)
	b = append(b, s.comma)
	return fixed.Append(b, int64(m.Weight), 4), nil
}

// locate puts an error of package grade in its place in the sheet.
func (s *Writer) locate(err error) error {
	k := kindOf(err.(*grade.FieldError).Field)
	return &Error{Line: s.line + 1, Column: place[k], Name: written[k].Name, Err: err}
}

// GradedWriter writes graded rows to a sheet: the columns of a [Writer], then
// overall (maturity), quality, yield (exact), yield_grade (1 to 5) and tier.
// Make one with [NewGradedWriter], and call [GradedWriter.Flush] at the end. The
// zero GradedWriter refuses every row.
type GradedWriter struct{ w Writer }

// NewGradedWriter returns a writer with the default options. See
// [Options.NewGradedWriter].
func NewGradedWriter(w io.Writer, extra ...string) (*GradedWriter, error) {
	return Options{}.NewGradedWriter(w, extra...)
}

// NewGradedWriter returns a writer of graded rows. The errors are those of
// [Options.NewWriter]; the names of the results are known columns here.
func (o Options) NewGradedWriter(w io.Writer, extra ...string) (*GradedWriter, error) {
	s, err := o.writer(w, results[:], extra)
	if err != nil {
		return nil, err
	}
	return &GradedWriter{*s}, nil
}

// Write writes one graded row. The errors are those of [Writer.Write], and one
// for an Assessment that was not made by package grade.
func (s *GradedWriter) Write(g Graded) error {
	if s.w.w == nil {
		return noOutput("NewGradedWriter")
	}
	a := &g.Assessment
	b, err := s.w.row(s.w.buf, g.ID, &a.Carcass)
	if err != nil {
		return err
	}
	if !a.Quality.IsValid() || !a.Maturity.IsValid() {
		return &Error{Line: s.w.line + 1, Err: &grade.FieldError{Field: "assessment", Allowed: "one with overall maturity and quality", Err: grade.ErrMissing}}
	}
	comma := s.w.comma
	b = append(b, comma)
	b, _ = a.Maturity.AppendText(b)
	b = append(b, comma)
	b = append(b, qualityText[a.Quality]...)
	b = append(b, comma)
	b, _ = a.Yield.AppendText(b)
	b = append(b, comma, '0'+byte(a.Yield.Grade()), comma)
	b, _ = a.Quality.Tier().AppendText(b)
	return s.w.end(b, g.Extra, place[weight]+len(results))
}

// Flush writes what is left. It returns the first error of the output.
func (s *GradedWriter) Flush() error { return s.w.Flush() }
