package sheet

import (
	"bufio"
	"bytes"
	"encoding/csv"
	"errors"
	"io"
	"strconv"
	"strings"

	"example.com/ribface/grade"
)

// maxLine is the greatest length of a line, with its end.
const maxLine = 64 << 10

// lines divides its input into lines and those into cells.
type lines struct {
	r     *bufio.Reader
	comma byte
	cells []string
	n     int   // number of the line that was read last
	err   error // why there are no more lines; io.EOF at the end

	// Lines with a quote are divided by encoding/csv, which gets one line at a
	// time with an end of input after each, so that a quote that is not closed
	// spoils its own line only.
	quoted *csv.Reader
	rest   []byte // of the line at hand, not yet given to quoted
}

func newLines(r io.Reader, comma rune) *lines {
	l := &lines{r: bufio.NewReaderSize(r, maxLine), comma: byte(comma)}
	l.quoted = csv.NewReader(l)
	l.quoted.Comma = comma
	l.quoted.ReuseRecord = true
	l.quoted.FieldsPerRecord = -1
	return l
}

// Read gives the line at hand to encoding/csv.
func (l *lines) Read(p []byte) (int, error) {
	if len(l.rest) == 0 {
		return 0, io.EOF
	}
	n := copy(p, l.rest)
	l.rest = l.rest[n:]
	return n, nil
}

// next returns the cells of the next line that is not empty; they stay until the
// next call. The error is io.EOF at the end and an *Error otherwise.
func (l *lines) next() ([]string, error) {
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
			return nil, l.whole("over "+strconv.Itoa(maxLine)+" bytes", "lines up to 64 KiB", grade.ErrRange)
		}
		if l.n == 1 {
			line = bytes.TrimPrefix(line, []byte("\uFEFF"))
		}
		if bytes.IndexByte(line, '"') >= 0 {
			l.rest = line
			cells, err := l.quoted.Read()
			if err != nil {
				var pe *csv.ParseError
				errors.As(err, &pe)
				return nil, l.whole("a stray or open quote at byte "+strconv.Itoa(pe.Column), "quotes around a whole cell, doubled inside it, closed on the same line", grade.ErrSyntax)
			}
			return cells, nil
		}
		line = bytes.TrimSuffix(bytes.TrimSuffix(line, []byte("\n")), []byte("\r"))
		if len(line) > 0 {
			return l.plain(string(line)), nil
		}
	}
	if l.err == io.EOF {
		return nil, io.EOF
	}
	err := &Error{Line: l.n + 1, Err: l.err}
	l.err = io.EOF
	return nil, err
}

// plain divides a line without quotes.
func (l *lines) plain(line string) []string {
	l.cells = l.cells[:0]
	for {
		i := strings.IndexByte(line, l.comma)
		if i < 0 {
			l.cells = append(l.cells, line)
			return l.cells
		}
		l.cells = append(l.cells, line[:i])
		line = line[i+1:]
	}
}

// whole is the error for a line as a whole.
func (l *lines) whole(value, allowed string, err error) error {
	return &Error{Line: l.n, Err: &grade.FieldError{Field: "row", Value: value, Allowed: allowed, Err: err}}
}
