package fault

import (
	"slices"
	"strconv"
	"strings"
)

// RowError says what is wrong with one row of a sheet, whatever kind of sheet it
// is. A row in which several things are wrong has one RowError, with the others in
// More.
type RowError struct {
	File    string // name of the sheet; empty where none was given
	Line    int    // line of the sheet, from 1
	ID      string // whose row it is, as it stands there; empty where that is not known
	Column  int    // column, from 1; 0 where the row as a whole is meant or there is no such column
	Heading string // heading of the column, as it stands there; empty without a column
	Err     error  // what is wrong, in most cases a [*FieldError]

	More []*RowError // what else is wrong in the same row, from left to right; empty inside More
}

// mostTold is how many things that are wrong in one row a message tells.
const mostTold = 6

// Error gives file, line and identity, then for each thing that is wrong column,
// heading, value, reason and what is allowed. Of more than six things the first six
// are told and the others counted.
func (e *RowError) Error() string {
	if e == nil {
		return "no error"
	}
	var b strings.Builder
	if e.File != "" {
		b.WriteString(e.File + ", ")
	}
	b.WriteString("line " + strconv.Itoa(e.Line))
	if e.ID != "" {
		b.WriteString(", id " + Plain(e.ID))
	}
	for i, p := range e.All() {
		if i == mostTold {
			b.WriteString("; and " + strconv.Itoa(len(e.More)+1-mostTold) + " more")
			break
		}
		if i == 0 && p.Column != 0 {
			b.WriteString(", ")
		}
		if i > 0 {
			b.WriteString("; ")
		}
		if p.Column != 0 {
			b.WriteString("column " + strconv.Itoa(p.Column))
			if p.Heading != "" {
				b.WriteString(" (" + Plain(p.Heading) + ")")
			}
		}
		if i == 0 || p.Column != 0 {
			b.WriteString(": ")
		}
		b.WriteString(reason(p.Err))
	}
	return b.String()
}

// All lists every thing that is wrong in the row, the first one first.
func (e *RowError) All() []*RowError {
	if e == nil {
		return nil
	}
	return append([]*RowError{e}, e.More...)
}

// Unwrap returns everything that is wrong in the row.
func (e *RowError) Unwrap() []error {
	var all []error
	for _, p := range e.All() {
		if p.Err != nil {
			all = append(all, p.Err)
		}
	}
	return all
}

// Row makes one error of what is wrong in a row, and gives each its file, line and
// identity; nil for nothing.
func Row(file string, line int, id string, wrong []*RowError) error {
	if len(wrong) == 0 {
		return nil
	}
	for _, p := range wrong {
		p.File, p.Line, p.ID = strings.Clone(file), line, Plain(id)
	}
	wrong[0].More = wrong[1:len(wrong):len(wrong)]
	return wrong[0]
}

// Plain gives text from outside as a message can hold it: cut at 64 bytes, apart
// from the memory it came from, and in quotes where it is not plain printable text.
func Plain(s string) string {
	s = Clip(s)
	for _, r := range s {
		if r == '\uFFFD' || !strconv.IsPrint(r) {
			return strconv.QuoteToASCII(s)
		}
	}
	return s
}

// Equal reports whether two errors say the same of the same row, with the same
// reasons.
func (e *RowError) Equal(f *RowError) bool {
	if e == nil || f == nil {
		return e == f
	}
	return e.File == f.File && e.Line == f.Line && e.ID == f.ID && e.Column == f.Column && e.Heading == f.Heading &&
		sameReason(e.Err, f.Err) && slices.EqualFunc(e.More, f.More, (*RowError).Equal)
}

// sameReason compares what two errors say.
func sameReason(a, b error) bool {
	x, okX := a.(*FieldError)
	y, okY := b.(*FieldError)
	if okX && okY {
		return x.Equal(*y)
	}
	return reason(a) == reason(b)
}
