package lines

import (
	"bufio"
	"errors"
	"fmt"
	"io"
	"iter"
	"strconv"
	"strings"

	"example.com/ribface/internal/fault"
	"example.com/ribface/internal/text"
)

// Column is one column of a sheet whose rows are read into a T.
type Column[T any] struct {
	Name    string // its heading; case, and what stands between words, do not matter in reading
	Fact    string // what it says, in the words of errors; of several columns for one fact, as in several units, a sheet has one
	Path    string // the field it is kept in, by its JSON names; may be empty
	Needed  bool   // a sheet has to have it
	Blank   bool   // Read gets empty cells too; without it they say nothing
	Allowed string // what a cell may hold; empty to tell what the reason of Read does

	Read  func(row *T, cell string) error
	Write func(b []byte, row *T) ([]byte, error) // nil for a column that is read and not written
}

// Refuse gives the error for a cell: what err says, with the field and the value as
// they stand in the sheet, and the value that err has where the cell is empty.
func (c *Column[T]) Refuse(cell string, err error) error {
	out := &fault.FieldError{Path: c.Path, Field: c.Fact, Value: fault.Plain(cell), Allowed: c.Allowed, Err: err}
	var fe *fault.FieldError
	var pe *fault.ParseError
	allowed := ""
	switch {
	case errors.As(err, &fe):
		out.Err, allowed = fe.Err, fe.Allowed
		if cell == "" {
			out.Value = fe.Value
		}
	case errors.As(err, &pe):
		out.Err, allowed = pe.Err, pe.Allowed
	}
	if out.Allowed == "" {
		out.Allowed = allowed
	}
	return out
}

// Head is a header with the columns that its headings name.
type Head[T any] struct {
	Headings []string // as they stand, without the blanks around them
	Unread   []int    // the places, from 0, of the headings that name no column
	columns  []Column[T]
	at       []int     // for each heading the place of its column, -1 for none
	steps    []step[T] // what is done with the cells, for speed
}

// step reads one cell.
type step[T any] struct {
	read  func(*T, string) error
	cell  int
	blank bool
}

// NewHead finds the columns of a header. Where unread columns are not to be kept, a
// heading that names no column is wrong. Wrong is also a heading for a fact that
// stands already, and a needed column that does not.
func NewHead[T any](columns []Column[T], headings []string, keep bool) (*Head[T], []*fault.RowError) {
	h := &Head[T]{columns: columns}
	var wrong []*fault.RowError
	refuse := func(column int, heading string, e fault.FieldError) {
		e.Value = heading
		wrong = append(wrong, &fault.RowError{Column: column, Heading: heading, Err: &e})
	}
	facts := map[string]int{} // the column, from 1, that says it
	listed := false
	for i, heading := range headings {
		heading = strings.Clone(text.Trim(heading))
		at := find(columns, heading)
		h.Headings, h.at = append(h.Headings, heading), append(h.at, at)
		switch {
		case at < 0 && keep:
			h.Unread = append(h.Unread, i)
		case at < 0:
			e := fault.FieldError{Field: "column", Allowed: "the columns named above", Err: fault.ErrUnknown}
			if !listed {
				e.Allowed = Names(columns)
			}
			listed = true
			refuse(i+1, fault.Plain(heading), e)
		case facts[columns[at].Fact] != 0:
			first := facts[columns[at].Fact]
			refuse(i+1, fault.Plain(heading), fault.FieldError{Field: columns[at].Fact, Allowed: "one column for it; column " + strconv.Itoa(first) + " is one", Err: fault.ErrRepeated})
		default:
			facts[columns[at].Fact] = i + 1
			h.steps = append(h.steps, step[T]{columns[at].Read, i, columns[at].Blank})
		}
	}
	for i := range columns {
		if c := &columns[i]; c.Needed && facts[c.Fact] == 0 {
			facts[c.Fact] = -1
			wrong = append(wrong, &fault.RowError{Err: &fault.FieldError{Field: "column", Value: c.Name, Allowed: "a sheet that has it", Err: fault.ErrMissing}})
		}
	}
	return h, wrong
}

func find[T any](columns []Column[T], heading string) int {
	for i := range columns {
		if columns[i].Name == heading {
			return i
		}
	}
	for i := range columns {
		if text.SameWords(columns[i].Name, heading) && heading != "" {
			return i
		}
	}
	return -1
}

// Names lists the headings of the columns, those that are written before those that
// are read only.
func Names[T any](columns []Column[T]) string {
	var names []string
	for _, c := range Written(columns) {
		names = append(names, c.Name)
	}
	for _, c := range columns {
		if c.Write == nil {
			names = append(names, c.Name)
		}
	}
	return strings.Join(names, ", ")
}

// Find gives the place, from 0, of the column that is kept in the field of that path;
// -1 where the sheet has none.
func (h *Head[T]) Find(path string) int {
	for i, at := range h.at {
		if at >= 0 && h.columns[at].Path == path {
			return i
		}
	}
	return -1
}

// Column returns the column at a place, from 0; nil for one that is not read.
func (h *Head[T]) Column(i int) *Column[T] {
	if at := h.at[i]; at >= 0 {
		return &h.columns[at]
	}
	return nil
}

// Read reads the cells of a line into row, and gives all that is wrong with them.
// Cells of columns that are not read are left alone, and empty cells after the last
// column too.
func (h *Head[T]) Read(cells []string, row *T) (wrong []*fault.RowError) {
	for len(cells) > len(h.at) && text.Trim(cells[len(cells)-1]) == "" {
		cells = cells[:len(cells)-1]
	}
	if err := Count(len(cells), len(h.at)); err != nil {
		return []*fault.RowError{{Err: err}}
	}
	for i := range h.steps {
		s := &h.steps[i]
		cell := cells[s.cell]
		if cell == "" && !s.blank {
			continue
		}
		if err := s.read(row, cell); err != nil {
			wrong = append(wrong, h.Wrong(s.cell, h.Column(s.cell).Refuse(cell, err)))
		}
	}
	return wrong
}

// Wrong says that something is wrong in the column at a place, from 0; under 0 in
// none.
func (h *Head[T]) Wrong(i int, err error) *fault.RowError {
	if i < 0 {
		return &fault.RowError{Err: err}
	}
	return &fault.RowError{Column: i + 1, Heading: h.Headings[i], Err: err}
}

// Blank reports whether no cell of a line holds anything.
func Blank(cells []string) bool {
	for _, c := range cells {
		if text.Trim(c) != "" {
			return false
		}
	}
	return true
}

// Written gives the columns that are written.
func Written[T any](columns []Column[T]) (all []Column[T]) {
	for _, c := range columns {
		if c.Write != nil {
			all = append(all, c)
		}
	}
	return all
}

// Writer appends rows, with commas between the cells.
type Writer[T any] []func(b []byte, row *T) ([]byte, error)

// NewWriter returns a writer of columns that are all written.
func NewWriter[T any](written []Column[T]) (w Writer[T]) {
	for _, c := range written {
		w = append(w, c.Write)
	}
	return w
}

// Put appends a row. With an error comes the place, from 0, of the column that could
// not be read back.
func (w Writer[T]) Put(b []byte, row *T) (out []byte, at int, err error) {
	for i, write := range w {
		if i > 0 {
			b = append(b, ',')
		}
		if b, err = write(b, row); err != nil {
			return b, i, err
		}
	}
	return b, 0, nil
}

// Table is a kind of sheet that has the columns of one table and no others.
type Table[T any] struct {
	Columns []Column[T]
	ID      func(*T) string // whose row it is; nil where rows have no names
}

func (t Table[T]) id(row *T) string {
	if t.ID == nil {
		return ""
	}
	return t.ID(row)
}

// Read yields the rows of a sheet in order. The columns may stand in any order and
// leave out those that are not needed. A header in which something is wrong ends the
// reading, since no row could then be trusted. A row that cannot be read does not: it
// comes as the zero T with a [*fault.RowError] that tells of every cell that is wrong,
// and the next row follows. Lines of nothing are skipped. An error of the input comes
// last and is no RowError. The sheet is read line by line and never held as a whole.
func (t Table[T]) Read(file string, r io.Reader) iter.Seq2[T, error] {
	return func(yield func(T, error) bool) {
		var row, zero T
		in := NewReader(r, ',', true)
		headings, err := in.Next()
		if err != nil {
			yield(zero, HeaderError(file, in.Number(), err))
			return
		}
		head, wrong := NewHead(t.Columns, headings, false)
		if err := fault.Row(file, in.Number(), "", wrong); err != nil {
			yield(zero, err)
			return
		}
		for {
			cells, err := in.Next()
			if err == io.EOF {
				return
			}
			row = zero
			switch {
			case err == nil:
				if Blank(cells) {
					continue
				}
				wrong = head.Read(cells, &row)
			case isRow(err):
				wrong = []*fault.RowError{{Err: err}}
			default:
				yield(zero, InputError(file, in.Number(), err))
				return
			}
			if err := fault.Row(file, in.Number(), t.id(&row), wrong); err != nil {
				if !yield(zero, err) {
					return
				}
			} else if !yield(row, nil) {
				return
			}
		}
	}
}

// isRow tells a line that cannot be divided from an input that cannot be read.
func isRow(err error) bool {
	var fe *fault.FieldError
	return errors.As(err, &fe)
}

// HeaderError is the error for an input whose first line gave err.
func HeaderError(file string, line int, err error) error {
	switch {
	case err == io.EOF:
		err = &fault.FieldError{Field: "header", Allowed: "a first line with the headings of the columns", Err: fault.ErrMissing}
	case !isRow(err):
		return InputError(file, line, err)
	}
	return fault.Row(file, max(line, 1), "", []*fault.RowError{{Err: err}})
}

// InputError says where an input broke off.
func InputError(file string, line int, err error) error {
	if file != "" {
		file += ", "
	}
	return fmt.Errorf("%sline %d: %w", file, line, err)
}

// Write writes a header with every column that is written, then the rows. What it
// writes, Read reads back as it was. It stops at the first row with a value that
// could not be read back, with a [*fault.RowError] that gives the line it would have
// had, and at an error of the output.
func (t Table[T]) Write(w io.Writer, rows iter.Seq[T]) error {
	out := bufio.NewWriter(w)
	columns := Written(t.Columns)
	put := NewWriter(columns)
	var b []byte
	for i, c := range columns {
		if i > 0 {
			b = append(b, ',')
		}
		b = append(b, c.Name...)
	}
	_, _ = out.Write(append(b, '\n')) // an error stays and is returned below
	line := 1
	for row := range rows {
		line++
		b, at, err := put.Put(b[:0], &row)
		if err != nil {
			wrong := &fault.RowError{Column: at + 1, Heading: columns[at].Name, Err: err}
			return errors.Join(fault.Row("", line, t.id(&row), []*fault.RowError{wrong}), out.Flush())
		}
		if _, err := out.Write(append(b, '\n')); err != nil {
			return err
		}
	}
	return out.Flush()
}
