package contest

import (
	"strconv"

	"example.com/ribface/internal/fault"
)

// RowError says where in a sheet something was refused.
type RowError struct {
	Line   int    // line of the sheet, from 1
	Column int    // column, from 1; 0 when the whole line is meant
	Name   string // name of the column; empty when the whole line is meant
	Err    error  // what was refused, a [*placing.FieldError] or a [*placing.ParseError] in most cases
}

// Error gives line, column, name and reason, in one line.
func (e *RowError) Error() string {
	if e == nil {
		return "no error"
	}
	s := "line " + strconv.Itoa(e.Line)
	if e.Column > 0 {
		s += ", column " + strconv.Itoa(e.Column)
	}
	if e.Name != "" {
		s += " (" + e.Name + ")"
	}
	if e.Err == nil {
		return s + ": refused"
	}
	return s + ": " + e.Err.Error()
}

// Unwrap returns what was refused.
func (e *RowError) Unwrap() error {
	if e == nil {
		return nil
	}
	return e.Err
}

// Equal reports whether two errors say the same of the same place.
func (e *RowError) Equal(f *RowError) bool {
	if e == nil || f == nil {
		return e == f
	}
	return e.Error() == f.Error()
}

// inMember says whose card an error is about.
func inMember(m Member, err error) error {
	return fault.In("member "+strconv.Quote(m.ID), err)
}

func inClass(name string, err error) error { return fault.In("class "+strconv.Quote(name), err) }

// nth is the path of one of a list.
func nth(list string, i int) string { return list + "[" + strconv.Itoa(i) + "]" }
