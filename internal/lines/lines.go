// Package lines reads comma-separated text (RFC 4180) one line at a time, for
// sheets whose errors name a line and whose good rows count whatever stands
// beside them. No cell holds a line break: a quote that is not closed spoils its
// own line only, where encoding/csv would take the rest of the sheet for one cell.
package lines

import (
	"bufio"
	"bytes"
	"encoding/csv"
	"errors"
	"io"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"

	"example.com/ribface/internal/fault"
	"example.com/ribface/internal/text"
)

// Max is the greatest length of a line in bytes, with its end.
const Max = 64 << 10

// Reader divides its input into lines and those into cells.
type Reader struct {
	r     *bufio.Reader
	comma byte
	trim  bool
	cells []string
	n     int
	err   error // why there are no more lines; io.EOF at the end

	// Lines with a quote are divided by encoding/csv, which gets one line at a
	// time with an end of input after each.
	quoted *csv.Reader
	rest   bytes.Reader
}

// NewReader returns a reader of cells with commas, or what is given in their
// place, between. With trim it takes the space off around every cell.
func NewReader(r io.Reader, comma rune, trim bool) *Reader {
	l := &Reader{r: bufio.NewReaderSize(r, Max), comma: byte(comma), trim: trim}
	l.quoted = csv.NewReader(&l.rest)
	l.quoted.Comma = comma
	l.quoted.ReuseRecord = true
	l.quoted.FieldsPerRecord = -1
	l.quoted.TrimLeadingSpace = trim
	return l
}

// Number returns the number of the line that Next spoke of last, from 1; 0 before
// the first.
func (l *Reader) Number() int { return l.n }

// Next returns the cells of the next line that is not empty; they stay until the
// next call. A byte order mark before the first is left out. A line that cannot be
// divided gives a [*fault.FieldError], and the next call goes on after it. An error
// of the input comes last, once, and then as at every end io.EOF.
func (l *Reader) Next() ([]string, error) {
	for l.err == nil {
		line, err := l.r.ReadSlice('\n')
		long := false
		for err == bufio.ErrBufferFull {
			long = true
			_, err = l.r.ReadSlice('\n')
		}
		l.err = err
		if err != nil && (err != io.EOF || len(line) == 0) {
			break // what the input broke off is no line
		}
		l.n++
		if long {
			return nil, refuse("over "+strconv.Itoa(Max)+" bytes", "lines up to 64 KiB", fault.ErrRange)
		}
		if l.n == 1 {
			line = bytes.TrimPrefix(line, []byte("\uFEFF"))
		}
		if bytes.IndexByte(line, '"') >= 0 {
			return l.divide(line)
		}
		line = bytes.TrimSuffix(bytes.TrimSuffix(line, []byte("\n")), []byte("\r"))
		if len(line) > 0 {
			return l.plain(string(line)), nil
		}
	}
	err := l.err
	if err != io.EOF {
		l.n, l.err = l.n+1, io.EOF
	}
	return nil, err
}

// divide divides a line with quotes.
func (l *Reader) divide(line []byte) ([]string, error) {
	l.rest.Reset(line)
	cells, err := l.quoted.Read()
	if err != nil {
		var pe *csv.ParseError
		errors.As(err, &pe)
		return nil, refuse("a stray or open quote at byte "+strconv.Itoa(pe.Column), "quotes around a whole cell, doubled inside it, closed on the same line", fault.ErrSyntax)
	}
	if l.trim {
		for i := range cells {
			cells[i] = strings.TrimSpace(cells[i])
		}
	}
	return cells, nil
}

// plain divides a line without quotes.
func (l *Reader) plain(line string) []string {
	l.cells = l.cells[:0]
	for more := true; more; {
		i := strings.IndexByte(line, l.comma)
		cell := line
		if more = i >= 0; more {
			cell, line = line[:i], line[i+1:]
		}
		if l.trim {
			cell = strings.TrimSpace(cell)
		}
		l.cells = append(l.cells, cell)
	}
	return l.cells
}

// refuse is the error for a line as a whole.
func refuse(value, allowed string, err error) error {
	return &fault.FieldError{Field: "row", Value: value, Allowed: allowed, Err: err}
}

// Count refuses a line of so many cells in a sheet of so many columns; nil where
// they are as many.
func Count(cells, columns int) error {
	if cells == columns {
		return nil
	}
	return refuse(text.Count(cells, "cell"), text.Count(columns, "cell")+", one for each column", fault.ErrSyntax)
}

// Append adds a cell to b, in quotes where it needs them. A cell with a line
// break, which Next would not read, gives fault.ErrSyntax.
func Append(b []byte, cell string, comma byte) ([]byte, error) {
	if !special(cell, comma) {
		return append(b, cell...), nil
	}
	if Broken(cell) {
		return b, fault.ErrSyntax
	}
	b = append(b, '"')
	for {
		i := strings.IndexByte(cell, '"')
		if i < 0 {
			break
		}
		b = append(append(b, cell[:i]...), `""`...)
		cell = cell[i+1:]
	}
	return append(append(b, cell...), '"'), nil
}

// Broken reports whether text has a line break.
func Broken(s string) bool { return strings.IndexByte(s, '\r') >= 0 || strings.IndexByte(s, '\n') >= 0 }

// special follows encoding/csv: a cell with the comma, a quote or a line break, one
// that starts with a space, and the end-of-data mark of one database.
func special(cell string, comma byte) bool {
	if cell == `\.` {
		return true
	}
	for i := range len(cell) {
		if b := cell[i]; b == comma || b == '"' || b == '\r' || b == '\n' {
			return true
		}
	}
	first, _ := utf8.DecodeRuneInString(cell)
	return unicode.IsSpace(first)
}
