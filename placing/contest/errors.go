package contest

import (
	"strconv"

	"example.com/ribface/internal/fault"
)

// FieldError is the error for a value that is refused. Its fields are Field, Value,
// Allowed and Err (one of the sentinels below). The packages maturity, grade and
// placing use the same type.
type FieldError = fault.FieldError

// ParseError is the error for text that cannot be read. Its fields are Kind,
// Input, Part, Allowed and Err. The packages maturity, grade and placing use the
// same type.
type ParseError = fault.ParseError

// Sentinels for errors.Is.
var (
	ErrMissing  = fault.ErrMissing  // needed and not given
	ErrSyntax   = fault.ErrSyntax   // text without the form of the wanted value
	ErrUnknown  = fault.ErrUnknown  // well formed, but names nothing known
	ErrRange    = fault.ErrRange    // outside what is allowed, or finer than the unit holds
	ErrRepeated = fault.ErrRepeated // given twice, as two cards of one member for one class
)

// RowError says where in a sheet something was refused.
type RowError struct {
	Line   int    // line of the sheet, from 1
	Column int    // column, from 1; 0 when the whole line is meant
	Name   string // name of the column; empty when the whole line is meant
	Err    error  // what was refused, a [*FieldError] or a [*ParseError] in most cases
}

// Error gives line, column, name and reason, in one line.
func (e *RowError) Error() string {
	s := "line " + strconv.Itoa(e.Line)
	if e.Column > 0 {
		s += ", column " + strconv.Itoa(e.Column)
	}
	if e.Name != "" {
		s += " (" + e.Name + ")"
	}
	return s + ": " + e.Err.Error()
}

// Unwrap returns what was refused.
func (e *RowError) Unwrap() error { return e.Err }

// inField puts the field of an error under a wider one.
func inField(outer string, err error) error { return fault.In(outer, err) }

// inMember says whose card an error is about.
func inMember(m Member, err error) error {
	return fault.In("member "+strconv.Quote(m.ID), err)
}
