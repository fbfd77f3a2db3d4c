package sheet

import (
	"errors"
	"strconv"
	"strings"

	"example.com/ribface/grade"
	"example.com/ribface/internal/fault"
)

// Error says where in a sheet something is wrong. It wraps a [*grade.FieldError]
// with the field, the value as it stands in the cell and what is allowed, or the
// error of the input itself.
type Error struct {
	Line   int    // line of the file, from 1; the header is line 1
	Column int    // column, from 1; 0 when the row as a whole is wrong or the column is not in the sheet
	Name   string // name of the column; empty when the row as a whole is wrong
	Err    error

	More []*Error // what else is wrong in the same row, from left to right
}

// Error gives line, column and name, then the reason; all that is wrong in the
// row, divided by semicolons.
func (e *Error) Error() string {
	var b strings.Builder
	e.write(&b)
	for _, m := range e.More {
		b.WriteString("; ")
		m.write(&b)
	}
	return b.String()
}

func (e *Error) write(b *strings.Builder) {
	b.WriteString("line ")
	b.WriteString(strconv.Itoa(e.Line))
	if e.Column != 0 {
		b.WriteString(", column ")
		b.WriteString(strconv.Itoa(e.Column))
	}
	if e.Name != "" {
		b.WriteString(" (")
		b.WriteString(e.Name)
		b.WriteString(")")
	}
	b.WriteString(": ")
	b.WriteString(e.Err.Error())
}

// Unwrap returns the reason.
func (e *Error) Unwrap() error { return e.Err }

// ErrRepeated marks a column that stands twice, and a measure given in two units.
var ErrRepeated = fault.ErrRepeated

// reason makes the error for one field: what err says, with the field and the
// value as they stand in the sheet.
func reason(field, value, allowed string, err error) *grade.FieldError {
	var fe *grade.FieldError
	var pe *grade.ParseError
	switch {
	case errors.As(err, &fe):
		err = fe.Err
	case errors.As(err, &pe):
		err = pe.Err
	}
	return &grade.FieldError{Field: field, Value: clip(value), Allowed: allowed, Err: err}
}

// clip cuts a value at 64 bytes, keeps the sheet's memory free, and puts what is
// no plain printable text in quotes.
func clip(s string) string {
	const most = 64
	if len(s) > most {
		s = s[:most]
	}
	for _, r := range s {
		if r == '\uFFFD' || !strconv.IsPrint(r) {
			return strconv.QuoteToASCII(s)
		}
	}
	return strings.Clone(s)
}
