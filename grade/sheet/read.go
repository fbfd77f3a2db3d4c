package sheet

import (
	"errors"
	"io"
	"iter"
	"math"
	"slices"
	"strconv"
	"strings"

	"example.com/ribface/grade"
	"example.com/ribface/internal/fixed"
	"example.com/ribface/internal/lines"
	"example.com/ribface/maturity"
)

// Options are the choices about the form of a sheet. The zero Options are a
// sheet divided by commas in which every column must be known.
type Options struct {
	// Comma divides the cells: comma, semicolon, tab or bar. Zero is a comma.
	Comma rune

	// Extra keeps columns that the package does not know, as they stand, in
	// [Row.Extra]. Without it such a column is an error of the header, since it
	// may be a known one misspelled.
	Extra bool
}

func (o Options) comma() (rune, error) {
	switch o.Comma {
	case 0:
		return ',', nil
	case ',', ';', '\t', '|':
		return o.Comma, nil
	}
	return 0, &grade.FieldError{Field: "comma", Value: strconv.QuoteRuneToASCII(o.Comma), Allowed: "comma, semicolon, tab or bar", Err: grade.ErrUnknown}
}

// Row is one row of a sheet: a carcass with its number or name.
type Row struct {
	Line    int           // line of the file that it was read from; not written
	ID      string        // the carcass's number or name, one line of text; may be empty
	Carcass grade.Carcass // fields whose cells are empty are not set
	Extra   []string      // cells of the extra columns, in the order of [Reader.Extra]; nil without any
}

// Graded is one row of a sheet with its assessment, which holds the carcass.
type Graded struct {
	Line       int      // line of the file that it was read from; not written
	ID         string   // the carcass's number or name, one line of text; may be empty
	Extra      []string // cells of the extra columns; nil without any
	Assessment grade.Assessment
}

// Reader reads a sheet row by row. Make one with [NewReader]. The zero Reader has
// no rows.
type Reader struct {
	lines *lines.Reader
	cols  []column
	at    [kinds]int // place of each kind in cols, from 1; 0 where it is not there
	extra []string
}

// NewReader reads the header of a sheet with the default options. See
// [Options.NewReader].
func NewReader(r io.Reader) (*Reader, error) { return Options{}.NewReader(r) }

// NewReader reads the header of a sheet. The columns may stand in any order and
// all may be left out but these: there is at least one known column, and of fat,
// ribeye, KPH and weight either all four or none, so that no carcass is graded on
// a measure that nobody took. A byte order mark before the header is left out.
//
// A header that is missing, has an unknown column, a column twice or a measure in
// two units gives an [*Error] that names every such column.
func (o Options) NewReader(r io.Reader) (*Reader, error) {
	comma, err := o.comma()
	if err != nil {
		return nil, err
	}
	s := &Reader{lines: lines.NewReader(r, comma, false)}
	names, err := s.lines.Next()
	if err == io.EOF {
		return nil, &Error{Line: max(s.lines.Number(), 1), Err: &grade.FieldError{Field: "header", Allowed: "the names of the columns, as id,fat_in,ribeye_sq_in,kph_pct,weight_lb", Err: grade.ErrMissing}}
	}
	if err != nil {
		return nil, s.whole(err)
	}
	if err := s.header(names, o.Extra); err != nil {
		return nil, err
	}
	return s, nil
}

// header takes the names of the columns.
func (s *Reader) header(names []string, keep bool) error {
	var errs []*Error
	refuse := func(column int, name, field, value, allowed string, err error) {
		errs = append(errs, &Error{Line: s.lines.Number(), Column: column, Name: name, Err: &grade.FieldError{Field: field, Value: value, Allowed: allowed, Err: err}})
	}
	var seen uint
	for i, name := range names {
		col := column{Column: Column{Name: strings.Clone(name), Field: "column"}}
		for k := range columns {
			if columns[k].Name == name {
				col = columns[k]
			}
		}
		switch {
		case name == "":
			refuse(i+1, "", "column", "", "a name", grade.ErrMissing)
		case col.kind == extra && !keep:
			refuse(i+1, clip(name), "column", clip(name), everyName(), grade.ErrUnknown)
		case col.kind == extra && slices.Contains(s.extra, name):
			refuse(i+1, clip(name), "column", clip(name), "each column once", ErrRepeated)
		case col.kind == extra && lines.Broken(name):
			refuse(i+1, clip(name), "column", clip(name), "one line of text", grade.ErrSyntax)
		case col.kind == extra:
			s.extra = append(s.extra, col.Name)
		case seen&(1<<col.kind) != 0:
			refuse(i+1, name, col.Field, name, "one column for "+col.Field+"; column "+strconv.Itoa(s.at[col.kind])+" is "+names[s.at[col.kind]-1], ErrRepeated)
		default:
			seen |= 1 << col.kind
			s.at[col.kind] = i + 1
		}
		s.cols = append(s.cols, col)
	}
	whole := len(errs) == 0
	for k := fat; k < kinds && whole; k++ {
		if measures&(1<<k) != 0 && seen&measures != 0 && seen&(1<<k) == 0 {
			refuse(0, written[k].Name, written[k].Field, "", "fat, ribeye, KPH and weight together or none of them", grade.ErrMissing)
		}
	}
	if seen == 0 && len(errs) == 0 {
		refuse(0, "", "header", "", "one known column or more: "+everyName(), grade.ErrMissing)
	}
	return join(errs)
}

// everyName lists the names of the columns.
func everyName() string {
	var names []string
	for i := range columns {
		names = append(names, columns[i].Name)
	}
	return strings.Join(names, ", ")
}

// join makes one error of all that are wrong in a row.
func join(errs []*Error) error {
	if len(errs) == 0 {
		return nil
	}
	errs[0].More = errs[1:len(errs):len(errs)]
	if len(errs) == 1 {
		errs[0].More = nil
	}
	return errs[0]
}

// Extra returns the names of the extra columns, in order, in a fresh slice.
func (s *Reader) Extra() []string { return slices.Clone(s.extra) }

// Rows yields the rows that are left, one pair for each. A row in which something
// is wrong comes as an [*Error], with a Row that has the line and, where it can be
// read, the ID; the rows after it come as usual. An error of the input itself
// comes last. Rows can be left and taken up again; it never starts over.
//
// An empty cell leaves its field unset. The four measures are given together or
// not at all, so that an empty cell is never taken for zero. A cell with a line
// break is not read: a quote that is not closed spoils its own line only. Lines
// of nothing are skipped, and a line over 64 KiB is an error.
func (s *Reader) Rows() iter.Seq2[Row, error] {
	return func(yield func(Row, error) bool) {
		for s.lines != nil {
			cells, err := s.lines.Next()
			if err == io.EOF {
				return
			}
			row := Row{Line: s.lines.Number()}
			if err != nil {
				err = s.whole(err)
			} else {
				err = s.row(cells, &row)
			}
			if !yield(row, err) {
				return
			}
		}
	}
}

// Grade yields the rows that are left, each graded by the rules. It is
// [Reader.Rows] with the error of [grade.Rules.Assess] put in its place in the
// sheet. Rules that are not valid give one error and no row.
func (s *Reader) Grade(rules grade.Rules) iter.Seq2[Graded, error] {
	return func(yield func(Graded, error) bool) {
		// Any evidence will do: what is refused is the rules.
		young := maturity.A.At(50)
		if _, err := rules.Overall(maturity.Evidence{Skeletal: young, Lean: young}); err != nil {
			yield(Graded{}, err)
			return
		}
		for row, err := range s.Rows() {
			g := Graded{Line: row.Line, ID: row.ID, Extra: row.Extra}
			if err == nil {
				if g.Assessment, err = rules.Assess(row.Carcass); err != nil {
					err = s.locate(row.Line, err)
				}
			}
			if !yield(g, err) {
				return
			}
		}
	}
}

// locate puts an error of package grade in its place in the sheet.
func (s *Reader) locate(line int, err error) error {
	var fe *grade.FieldError
	errors.As(err, &fe)
	k := kindOf(fe.Field)
	e := &Error{Line: line, Column: s.at[k], Name: written[k].Name, Err: fe}
	if e.Column != 0 {
		e.Name = s.cols[e.Column-1].Name
	}
	return e
}

// whole is the error for the line at hand as a whole.
func (s *Reader) whole(err error) error { return &Error{Line: s.lines.Number(), Err: err} }

// row reads the cells of one row.
func (s *Reader) row(cells []string, row *Row) error {
	if err := lines.Count(len(cells), len(s.cols)); err != nil {
		return s.whole(err)
	}
	var errs []*Error
	refuse := func(i int, err error) {
		col := &s.cols[i]
		e := reason(col.Field, cells[i], col.Allowed, err)
		if col.Unit != "" && errors.Is(err, grade.ErrRange) {
			e.Value += " " + col.Unit
		}
		errs = append(errs, &Error{Line: row.Line, Column: i + 1, Name: col.Name, Err: e})
	}
	if len(s.extra) > 0 {
		row.Extra = make([]string, 0, len(s.extra))
	}
	c := &row.Carcass
	var given uint
	for i, cell := range cells {
		col := &s.cols[i]
		if col.kind == extra {
			if lines.Broken(cell) {
				refuse(i, grade.ErrSyntax)
			}
			row.Extra = append(row.Extra, strings.Clone(cell))
			continue
		}
		if cell == "" {
			continue
		}
		given |= 1 << col.kind
		var err error
		switch col.kind {
		case id:
			if lines.Broken(cell) {
				err = grade.ErrSyntax
				break
			}
			row.ID = strings.Clone(cell)
		case sex:
			c.Sex, err = grade.ParseSex(cell)
		case skeletal:
			c.Maturity.Skeletal, err = maturity.Parse(cell)
		case lean:
			c.Maturity.Lean, err = maturity.Parse(cell)
		case teeth:
			c.Maturity.Teeth, err = parseTeeth(cell)
		case papers:
			c.Maturity.Papers, err = parsePapers(cell)
		case marbling:
			c.Marbling, err = grade.ParseMarbling(cell)
		case firmness:
			c.Lean.Firmness, err = grade.ParseFirmness(cell)
		case dark:
			c.Lean.Dark, err = grade.ParseDarkCut(cell)
		case belowCutter:
			c.Lean.BelowCutter, err = parseYes(cell)
		case fat:
			c.Measures.Fat, err = measure(cell, col, grade.ParseThickness)
		case fatAdjust:
			c.FatAdjust, err = measure(cell, col, grade.ParseThickness)
		case ribeye:
			c.Measures.Ribeye, err = measure(cell, col, grade.ParseArea)
		case kph:
			c.Measures.KPH, err = measure(cell, col, grade.ParseShare)
		case weight:
			c.Measures.Weight, err = measure(cell, col, grade.ParseWeight)
		}
		if err != nil {
			refuse(i, err)
		}
	}
	if given&(measures|1<<fatAdjust) != 0 && (given&measures != measures || possible(c) != nil) {
		s.measures(c, given, refuse, &errs)
	}
	if len(errs) > 0 {
		slices.SortStableFunc(errs, func(a, b *Error) int { return a.Column - b.Column })
		*row = Row{Line: row.Line, ID: row.ID}
	}
	return join(errs)
}

// possible checks measures that are given, with the adjustment.
func possible(c *grade.Carcass) error {
	if c.FatAdjust == 0 {
		if _, err := c.Measures.Yield(); err == nil { // the quickest check
			return nil
		}
	}
	_, err := c.Adjusted()
	return err
}

// measures refuses each measure that is missing or impossible, unless its cell
// was refused already.
func (s *Reader) measures(c *grade.Carcass, given uint, refuse func(int, error), errs *[]*Error) {
	refused := func(k kind) bool {
		return slices.ContainsFunc(*errs, func(e *Error) bool { return e.Column == s.at[k] })
	}
	// Each measure is looked at beside three that are possible.
	good := grade.Measures{Ribeye: grade.SquareInch, Weight: grade.Pound}
	fine := true
	for k := fat; k < kinds; k++ {
		m := good
		switch k {
		case fat:
			m.Fat = c.Measures.Fat
		case fatAdjust:
			continue
		case ribeye:
			m.Ribeye = c.Measures.Ribeye
		case kph:
			m.KPH = c.Measures.KPH
		case weight:
			m.Weight = c.Measures.Weight
		}
		switch {
		case s.at[k] == 0:
			// The sheet has an adjustment and no measures.
			*errs = append(*errs, s.locate(s.lines.Number(), &grade.FieldError{Field: written[k].Field, Allowed: written[k].Allowed, Err: grade.ErrMissing}).(*Error))
			return
		case refused(k):
			fine = fine && k != fat
		case given&(1<<k) == 0:
			refuse(s.at[k]-1, grade.ErrMissing)
			fine = fine && k != fat
		case m.Check() != nil:
			refuse(s.at[k]-1, grade.ErrRange)
			fine = fine && k != fat
		}
	}
	if fine && c.FatAdjust != 0 && !refused(fatAdjust) {
		good.Fat = c.Measures.Fat
		if possible(&grade.Carcass{Measures: good, FatAdjust: c.FatAdjust}) != nil {
			refuse(s.at[fatAdjust]-1, grade.ErrRange)
		}
	}
}

// measure reads a bare number that is in the unit of its column. A measure in a
// customary unit is a count of 0.0001 of it; parse reads one in a metric unit.
func measure[T ~int32](cell string, col *column, parse func(string) (T, error)) (T, error) {
	if !col.metric {
		n, err := fixed.Parse(cell, 4)
		if err == nil && (n <= math.MinInt32 || n >= math.MaxInt32) {
			err = grade.ErrRange
		}
		return T(n), err
	}
	if end := cell[len(cell)-1]; end-'0' > 9 {
		return 0, grade.ErrSyntax // a unit belongs in the header
	}
	return parse(cell + " " + col.Unit)
}

func parseTeeth(cell string) (maturity.Teeth, error) {
	n, err := fixed.Parse(cell, 0)
	if err != nil {
		return 0, err
	}
	if n < 0 || n > 8 {
		return 0, grade.ErrRange
	}
	return maturity.Incisors(int(n)), nil
}

func parsePapers(cell string) (maturity.Months, error) {
	n, err := fixed.Parse(cell, 0)
	if err != nil {
		return 0, err
	}
	if n == 0 {
		return 0, grade.ErrRange
	}
	p := maturity.Months(max(min(n, math.MaxInt16), -1))
	return p, checkPapers(p)
}

// checkPapers checks the age by papers beside a bone and lean that are possible.
func checkPapers(p maturity.Months) error {
	return maturity.Evidence{Skeletal: maturity.A.At(0), Lean: maturity.A.At(0), Papers: p}.Check(false)
}

func parseYes(cell string) (bool, error) {
	switch cell {
	case "yes":
		return true, nil
	case "no":
		return false, nil
	}
	return false, grade.ErrUnknown
}
