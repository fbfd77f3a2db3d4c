// Package lines reads and writes sheets as lines of cells (RFC 4180), and rows by a
// table of columns, for every kind of sheet of the module. Errors name a line, and
// good rows count whatever stands beside them. No cell holds a line break: a quote
// that is not closed spoils its own line only, where encoding/csv would take the
// rest of the sheet for one cell.
package lines

import (
	"bytes"
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

// chunk is how much is read at a time.
const chunk = 32 << 10

// Block is a run of whole lines.
type Block struct {
	Text string
	Line int // number of the first line in it, from 1
}

// Next takes the next line that is not empty off the block, without its end, and
// gives its number. A line that is too long gives an error beside its number; ok is
// false at the end.
func (b *Block) Next() (line string, n int, ok bool, err error) {
	for b.Text != "" {
		end := strings.IndexByte(b.Text, '\n') + 1
		if end == 0 {
			end = len(b.Text)
		}
		line, b.Text = b.Text[:end], b.Text[end:]
		n = b.Line
		b.Line++
		if len(line) > Max {
			return "", n, true, refuse("over "+strconv.Itoa(Max)+" bytes", "lines up to 64 KiB", fault.ErrRange)
		}
		line = strings.TrimSuffix(strings.TrimSuffix(line, "\n"), "\r")
		if line != "" {
			return line, n, true, nil
		}
	}
	return "", n, false, nil
}

// Source divides an input into blocks.
type Source struct {
	r    io.Reader
	buf  []byte
	n    int   // bytes in buf that are not given yet
	line int   // lines given
	err  error // why there is no more; io.EOF at the end
}

// NewSource returns a source of blocks of some 64 KiB.
func NewSource(r io.Reader) *Source { return &Source{r: r, buf: make([]byte, 2*Max)} }

// Next returns the next block, as soon as there is a whole line. A byte order mark
// at the start is left out. An error of the input comes last, once, and then as at
// every end io.EOF; what the input broke off is no line.
func (s *Source) Next() (Block, error) {
	for idle := 0; s.err == nil; {
		n, err := s.r.Read(s.buf[s.n:min(s.n+chunk, len(s.buf))])
		from := s.n
		s.n, s.err = s.n+n, err
		if end := bytes.LastIndexByte(s.buf[from:s.n], '\n') + 1; end > 0 {
			return s.cut(from + end), nil
		}
		if s.n > Max+1 {
			s.n = Max + 1 // the rest of a line that is too long is not needed
		}
		if idle++; n > 0 {
			idle = 0
		}
		if idle == 100 {
			s.err = io.ErrNoProgress
		}
	}
	err := s.err
	if err == io.EOF && s.n > 0 {
		return s.cut(s.n), nil
	}
	s.n, s.err = 0, io.EOF
	return Block{Line: s.line + 1}, err
}

// cut gives the first bytes of what was read.
func (s *Source) cut(end int) Block {
	given := s.buf[:end]
	b := Block{Line: s.line + 1}
	s.line += bytes.Count(given, []byte("\n"))
	if b.Line == 1 {
		given = bytes.TrimPrefix(given, []byte("\uFEFF"))
	}
	b.Text = string(given)
	s.n = copy(s.buf, s.buf[end:s.n])
	return b
}

// Cells divides lines into cells.
type Cells struct {
	Comma byte // what stands between
	Trim  bool // take the blanks off around every cell
	cells []string
}

// Divide divides a line. The cells stay until the next call.
func (d *Cells) Divide(line string) ([]string, error) {
	if strings.IndexByte(line, '"') >= 0 {
		return d.quoted(line)
	}
	cells, comma, from := d.cells[:0], d.Comma, 0
	for i := range len(line) { // cells are short: looking at each byte beats a search
		if line[i] == comma {
			cells = append(cells, line[from:i])
			from = i + 1
		}
	}
	d.cells = append(cells, line[from:])
	if d.Trim {
		for i, cell := range d.cells {
			d.cells[i] = text.Trim(cell)
		}
	}
	return d.cells, nil
}

// quoted divides a line with quotes.
func (d *Cells) quoted(line string) ([]string, error) {
	d.cells = d.cells[:0]
	wrong := func(rest string) ([]string, error) {
		return nil, refuse("a stray or open quote at byte "+strconv.Itoa(len(line)-len(rest)+1), "quotes around a whole cell, doubled inside it, closed on the same line", fault.ErrSyntax)
	}
	for rest := line; ; {
		if d.Trim && d.Comma != '\t' {
			rest = strings.TrimLeft(rest, " \t")
		}
		var cell string
		if strings.HasPrefix(rest, `"`) {
			open := rest
			rest = rest[1:]
			for {
				i := strings.IndexByte(rest, '"')
				if i < 0 {
					return wrong(open)
				}
				cell, rest = cell+rest[:i], rest[i+1:]
				if !strings.HasPrefix(rest, `"`) {
					break
				}
				cell, rest = cell+`"`, rest[1:]
			}
			if d.Trim && d.Comma != '\t' {
				rest = strings.TrimLeft(rest, " \t")
			}
			if rest != "" && rest[0] != d.Comma {
				return wrong(open)
			}
		} else {
			end := strings.IndexByte(rest, d.Comma)
			if end < 0 {
				end = len(rest)
			}
			if i := strings.IndexByte(rest[:end], '"'); i >= 0 {
				return wrong(rest[i:])
			}
			cell, rest = rest[:end], rest[end:]
		}
		if d.Trim {
			cell = text.Trim(cell)
		}
		d.cells = append(d.cells, cell)
		if rest == "" {
			return d.cells, nil
		}
		rest = rest[1:]
	}
}

// Reader divides its input into lines and those into cells.
type Reader struct {
	source *Source
	block  Block
	cells  Cells
	n      int
}

// NewReader returns a reader of cells with comma between. With trim it takes the
// blanks off around every cell.
func NewReader(r io.Reader, comma byte, trim bool) *Reader {
	return &Reader{source: NewSource(r), cells: Cells{Comma: comma, Trim: trim}}
}

// Number returns the number of the line that Next spoke of last, from 1; 0 before
// the first.
func (l *Reader) Number() int { return l.n }

// Next returns the cells of the next line that is not empty; they stay until the
// next call. A line that cannot be divided gives a [*fault.FieldError], and the next
// call goes on after it. The errors of the input are those of [Source.Next].
func (l *Reader) Next() ([]string, error) {
	for {
		line, n, ok, err := l.block.Next()
		l.n = max(l.n, n)
		switch {
		case err != nil:
			return nil, err
		case ok:
			return l.cells.Divide(line)
		}
		if l.block, err = l.source.Next(); err != nil {
			if err != io.EOF {
				l.n = l.block.Line
			}
			l.block = Block{}
			return nil, err
		}
	}
}

// Take hands over the lines that have been read from the source and not been given, for
// a reader of blocks to go on from there with [Reader.Source].
func (l *Reader) Take() Block {
	b := l.block
	l.block = Block{}
	return b
}

// Source returns where the lines come from.
func (l *Reader) Source() *Source { return l.source }

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
