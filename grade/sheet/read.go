package sheet

import (
	"context"
	"io"
	"iter"
	"maps"
	"runtime"
	"slices"
	"strconv"
	"strings"
	"sync"

	"example.com/ribface/grade"
	"example.com/ribface/internal/fault"
	"example.com/ribface/internal/lines"
	"example.com/ribface/internal/text"
	"example.com/ribface/maturity"
)

// Row is one row of a sheet: a carcass with its number or name.
type Row struct {
	Line    int           `json:"line,omitzero"`    // line of the sheet that it was read from; not written
	ID      string        `json:"id,omitzero"`      // the carcass's number or name, one line of text; may be empty
	Carcass grade.Carcass `json:"carcass,omitzero"` // fields whose cells are missing are not set, unless they are assumed
	Assumed Assumptions   `json:"assumed,omitzero"` // what was assumed and not seen
	Extra   []string      `json:"extra,omitempty"`  // cells of the extra columns, in the order of [Reader.Extra]; nil without any
}

// GradedRow is one row of a sheet with its assessment, which holds the carcass.
type GradedRow struct {
	Line    int         `json:"line,omitzero"`    // line of the sheet that it was read from; not written
	ID      string      `json:"id,omitzero"`      // the carcass's number or name, one line of text; may be empty
	Assumed Assumptions `json:"assumed,omitzero"` // what was assumed and not seen
	Extra   []string    `json:"extra,omitempty"`  // cells of the extra columns; nil without any

	// Assessment has no maturity and quality where the sheet is of yield alone, and no
	// yield where it is of quality alone.
	Assessment grade.Assessment `json:"assessment"`

	Flags []Flag `json:"flags,omitempty"` // what is possible and yet unlikely; nil for nothing
}

// Counts says how many rows of a sheet were read so far.
type Counts struct {
	Graded  int                 `json:"graded"`
	Refused int                 `json:"refused"`
	Flagged int                 `json:"flagged"`           // of the graded ones
	Assumed map[Assumptions]int `json:"assumed,omitempty"` // graded rows by what was assumed in them
	Flags   map[FlagKind]int    `json:"flags,omitempty"`   // graded rows by what is unlikely in them
}

// worker is embedded by what works and is no value.
type worker = fault.Worker

// Reader reads a sheet. Make one with [NewReader] or [Mapping.NewReader]. The zero
// Reader has no rows.
type Reader struct {
	worker
	file    string
	mapping Mapping
	head    *lines.Head[Row]
	line    int // of the header
	extra   []string
	comma   byte
	input   *lines.Reader
	ended   bool

	quality, yield []string // what is lacking for them; nil where they are graded
	kilograms      bool     // the unit of the column of weights

	rows   []result // the block at hand
	batch  []result // rows of it that were not given
	ids    ids
	counts Counts
}

// result is a row that was read, and graded.
type result struct {
	row   Row
	done  grade.Assessment
	flags []Flag
	err   error
}

// NewReader reads the header of a sheet with our own headings. See
// [Mapping.NewReader].
func NewReader(r io.Reader) (*Reader, error) { return Mapping{}.NewReader("", r) }

// NewReader reads the header of a sheet. The name of the file is for errors and may be
// empty. Columns may stand in any order. Those that are not read are kept, cell by
// cell: [Reader.Extra] lists them.
//
// An error of the mapping is that of [Mapping.Check]. A [*RowError] tells of every
// heading that is wrong: one that the mapping names and the sheet does not have, two
// for one fact, and, where the headings are ours, one that is a letter away from a
// heading of ours that is not there, as drak.
func (m Mapping) NewReader(file string, r io.Reader) (*Reader, error) {
	if err := m.Check(); err != nil {
		return nil, err
	}
	m.Missing = slices.Clone(m.Missing)
	for i, mark := range m.Missing {
		m.Missing[i] = text.Trim(mark)
	}
	s := &Reader{file: file, mapping: m, comma: ','}
	if m.Separator != "" {
		s.comma = m.Separator[0]
	}
	s.input = lines.NewReader(r, s.comma, false)
	headings, err := s.input.Next()
	if err != nil {
		return nil, lines.HeaderError(file, s.input.Number(), err)
	}
	s.line = s.input.Number()
	head, wrong := lines.NewHead(s.mapping.compile(), headings, true)
	s.head = head
	if len(m.Columns) == 0 {
		wrong = append(wrong, s.misspelled()...)
	}
	if at := head.Find("maturity"); at >= 0 && (head.Find("maturity.skeletal") >= 0 || head.Find("maturity.lean") >= 0) {
		wrong = append(wrong, head.Wrong(at, &grade.FieldError{Field: "overall maturity", Value: fault.Plain(head.Headings[at]), Allowed: "overall maturity, or skeletal and lean", Err: grade.ErrRepeated}))
	}
	if err := fault.Row(file, s.line, "", wrong); err != nil {
		return nil, err
	}
	at := head.Find("measures.weight")
	s.kilograms = slices.Contains(slices.Collect(maps.Values(m.Columns)), "weight_kg") || len(m.Columns) == 0 && at >= 0 && text.SameWords(head.Headings[at], "weight_kg")
	s.extra = s.names()
	s.lacking()
	return s, nil
}

// compile makes the columns that the mapping names.
func (m *Mapping) compile() (all []lines.Column[Row]) {
	add := func(heading string, c *column, needed bool) {
		all = append(all, lines.Column[Row]{Name: heading, Fact: c.Field, Path: c.path, Needed: needed, Allowed: c.Allowed, Read: func(row *Row, cell string) error {
			if max(cell[0]-'!', cell[len(cell)-1]-'!') > '~'-'!' { // an end that is no visible ASCII
				if cell = text.Trim(cell); cell == "" {
					return nil
				}
			}
			if len(m.Missing) > 0 && m.absent(cell) {
				return nil
			}
			return c.read(m, row, cell)
		}})
	}
	for _, heading := range slices.Sorted(maps.Keys(m.Columns)) {
		add(text.Trim(heading), known(m.Columns[heading]), true)
	}
	if len(m.Columns) == 0 {
		for i := range columns {
			add(columns[i].Name, &columns[i], false)
		}
	}
	return all
}

// misspelled finds headings that are a letter away from one of ours.
func (s *Reader) misspelled() (wrong []*RowError) {
	for _, i := range s.head.Unread {
		heading := s.head.Headings[i]
		if c := find(func(c *column) bool { return s.head.Find(c.path) < 0 && near(strings.ToLower(heading), c.Name) }); c != nil {
			wrong = append(wrong, s.head.Wrong(i, &grade.FieldError{Field: "column", Value: fault.Plain(heading), Allowed: c.Name + ", or a heading that is not a letter away from it", Err: grade.ErrUnknown}))
		}
	}
	return wrong
}

// near reports whether a name of four letters or more has one letter too many, too
// few, another one, or two exchanged.
func near(a, b string) bool {
	if min(len(a), len(b)) < 4 {
		return false
	}
	for a != "" && b != "" && a[0] == b[0] {
		a, b = a[1:], b[1:]
	}
	for a != "" && b != "" && a[len(a)-1] == b[len(b)-1] {
		a, b = a[:len(a)-1], b[:len(b)-1]
	}
	return max(len(a), len(b)) <= 1 || len(a) == 2 && len(b) == 2 && a[0] == b[1] && a[1] == b[0]
}

// ours holds the names of our columns.
func ours() map[string]bool {
	all := map[string]bool{}
	for i := range columns {
		all[columns[i].Name] = true
	}
	return all
}

// names gives the names of the extra columns. A heading that is empty, that stands
// before, or that is one of ours in a written sheet gets its place behind it.
func (s *Reader) names() (names []string) {
	taken := ours()
	for _, i := range s.head.Unread {
		name := s.head.Headings[i]
		if name == "" || taken[strings.ToLower(name)] || lines.Broken(name) {
			name = text.Trim(strings.NewReplacer("\r", " ", "\n", " ").Replace(name) + " (column " + strconv.Itoa(i+1) + ")")
		}
		taken[strings.ToLower(name)] = true
		names = append(names, name)
	}
	return names
}

// lacking finds what keeps the sheet from being graded.
func (s *Reader) lacking() {
	need := func(lacks *[]string, name string, assumed bool, paths ...string) {
		if !assumed && !slices.ContainsFunc(paths, func(path string) bool { return s.head.Find(path) >= 0 }) {
			*lacks = append(*lacks, name)
		}
	}
	a := &s.mapping.Assumed
	need(&s.quality, "sex class", a.Sex != 0, "sex")
	need(&s.quality, "skeletal maturity", a.Maturity != 0, "maturity.skeletal", "maturity")
	need(&s.quality, "lean maturity", a.Maturity != 0, "maturity.lean", "maturity.teeth", "maturity.papers", "maturity")
	need(&s.quality, "marbling", false, "marbling")
	need(&s.yield, "fat", false, "measures.fat")
	need(&s.yield, "ribeye", false, "measures.ribeye")
	need(&s.yield, "KPH", a.KPH.IsSet(), "measures.kph")
	need(&s.yield, "weight", a.Weight.IsSet(), "measures.weight")
}

// Extra returns the names of the columns that are not read, in order, in a fresh
// slice. A name that is empty, stands twice or is one of ours in a written sheet has
// its place behind it, as "yield (column 9)".
func (s *Reader) Extra() []string {
	if s == nil {
		return nil
	}
	return slices.Clone(s.extra)
}

// Lacks names what the sheet has neither a column nor an assumed value for, and what
// therefore cannot be graded: quality, yield, or neither where both are nil.
func (s *Reader) Lacks() (quality, yield []string) {
	if s == nil {
		return nil, nil
	}
	return slices.Clone(s.quality), slices.Clone(s.yield)
}

// Counts returns how many rows [Reader.Grade] has given so far.
func (s *Reader) Counts() Counts {
	if s == nil {
		return Counts{}
	}
	c := s.counts
	c.Assumed, c.Flags = maps.Clone(c.Assumed), maps.Clone(c.Flags)
	return c
}

// next gives the next block of rows.
func (s *Reader) next() (lines.Block, error) {
	if s.input == nil || s.ended {
		return lines.Block{}, io.EOF
	}
	if b := s.input.Take(); b.Text != "" {
		return b, nil
	}
	b, err := s.input.Source().Next()
	if err != nil {
		s.ended = true
		if err != io.EOF {
			err = lines.InputError(s.file, b.Line, err)
		}
	}
	return b, err
}

// Rows yields the rows that are left. A row in which something is wrong comes as a
// [*RowError] that tells of every cell that is, with a Row that has the line and,
// where it can be read, the ID; the rows after it come as usual. An error of the input
// itself comes last and is no RowError. Rows can be left and taken up again; it never
// starts over.
//
// A missing cell leaves its field unset, which grading refuses by name. Lines in which
// no cell holds anything are skipped.
func (s *Reader) Rows() iter.Seq2[Row, error] {
	return func(yield func(Row, error) bool) {
		if s == nil {
			return
		}
		cells := lines.Cells{Comma: s.comma}
		for {
			for len(s.batch) > 0 {
				r := s.batch[0]
				s.batch = s.batch[1:]
				if !yield(r.row, r.err) {
					return
				}
			}
			block, err := s.next()
			if err != nil {
				if err != io.EOF {
					yield(Row{}, err)
				}
				return
			}
			s.rows = s.read(&cells, block, s.rows[:0], nil)
			s.batch = s.rows
		}
	}
}

// Grade yields the rows that are left, each graded by the rules, in the order of the
// sheet. It reads, grades and checks on all cores, with a few blocks of rows on their
// way at a time, whatever the size of the sheet. The rows come on the goroutine of the
// caller, and the input is read on it too.
//
// A sheet is graded for quality where it has, or has assumed values for, sex, maturity
// and marbling, and for yield where it has fat, ribeye, KPH and weight; [Reader.Lacks]
// says what it has not. What the sheet is graded for, every row needs. A row that
// cannot be graded comes as a [*RowError] that tells of every reason, with a Graded
// that has the line and the ID.
//
// One error that is no RowError comes last: of rules that are not valid, of the
// context when it is done, and of the input itself. A sheet that lacks both gives one
// RowError for its header and no row. A Grade that is left before its end has read
// ahead, and the reader has no rows after it.
func (s *Reader) Grade(ctx context.Context, rules grade.Rules) iter.Seq2[GradedRow, error] {
	return func(yield func(GradedRow, error) bool) {
		if s == nil {
			return
		}
		// Any evidence will do: what is refused is the rules.
		young := maturity.A.At(50)
		_, err := rules.Overall(maturity.Evidence{Skeletal: young, Lean: young})
		if err == nil && s.quality != nil && s.yield != nil {
			need := "a column or an assumed value for all that is needed; for quality it lacks " + strings.Join(s.quality, ", ") + ", for yield " + strings.Join(s.yield, ", ")
			err = fault.Row(s.file, s.line, "", []*RowError{{Err: &grade.FieldError{Field: "header", Allowed: need, Err: grade.ErrMissing}}})
		}
		if err != nil {
			yield(GradedRow{}, err)
			return
		}
		defer func() { s.ended = true }()
		for batch, err := range s.batches(ctx, &rules) {
			s.repeats(batch)
			for i := range batch {
				if err := ctx.Err(); err != nil {
					yield(GradedRow{}, err)
					return
				}
				r := &batch[i]
				g := GradedRow{Line: r.row.Line, ID: r.row.ID}
				if r.err == nil {
					g.Assumed, g.Extra, g.Assessment, g.Flags = r.row.Assumed, r.row.Extra, r.done, r.flags
				}
				s.count(&g, r.err)
				if !yield(g, r.err) {
					return
				}
			}
			if err != nil {
				yield(GradedRow{}, err)
				return
			}
		}
	}
}

// repeats flags the rows whose ids stood before. It goes over them in one sweep, in
// which the looks into a large table do not wait for each other.
func (s *Reader) repeats(rows []result) {
	for i := range rows {
		r := &rows[i]
		if r.err != nil || r.row.ID == "" {
			continue
		}
		if line := s.ids.see(r.row.ID, r.row.Line); line != 0 {
			r.flags = append(r.flags, Flag{RepeatedID, "id " + r.row.ID + " stands on line " + strconv.Itoa(line) + " too"})
		}
	}
}

// count adds a row to the counts.
func (s *Reader) count(g *GradedRow, err error) {
	c := &s.counts
	if err != nil {
		c.Refused++
		return
	}
	c.Graded++
	if g.Assumed != 0 {
		tally(&c.Assumed, g.Assumed)
	}
	if len(g.Flags) > 0 {
		c.Flagged++
	}
	for _, f := range g.Flags {
		tally(&c.Flags, f.Kind)
	}
}

func tally[K comparable](counts *map[K]int, k K) {
	if *counts == nil {
		*counts = map[K]int{}
	}
	(*counts)[k]++
}

// job is a block on its way through a worker.
type job struct {
	block lines.Block
	rows  []result
	done  chan struct{}
}

// batches yields the graded rows of block after block, in order. What it yields stays
// until the next.
func (s *Reader) batches(ctx context.Context, rules *grade.Rules) iter.Seq2[[]result, error] {
	return func(yield func([]result, error) bool) {
		workers := runtime.GOMAXPROCS(0)
		jobs := make(chan *job, workers+1)
		var group sync.WaitGroup
		defer group.Wait()
		defer close(jobs)
		for range workers {
			group.Add(1)
			go func() {
				defer group.Done()
				cells := lines.Cells{Comma: s.comma}
				for j := range jobs {
					if ctx.Err() == nil {
						j.rows = s.read(&cells, j.block, j.rows[:0], rules)
					}
					j.done <- struct{}{}
				}
			}()
		}
		ring := make([]job, workers+1) // each with a block on its way, or with the rows that were yielded last
		for i := range ring {
			ring[i].done = make(chan struct{}, 1)
		}
		var end error
		for begun, given := 0, 0; ; given++ {
			for end == nil && begun-given < len(ring) {
				j := &ring[begun%len(ring)]
				if j.block, end = s.next(); end == nil {
					jobs <- j
					begun++
				}
			}
			if given == begun {
				if end != io.EOF {
					yield(nil, end)
				}
				return
			}
			j := &ring[given%len(ring)]
			<-j.done
			if !yield(j.rows, ctx.Err()) || ctx.Err() != nil {
				return
			}
		}
	}
}

// read reads the rows of a block, and grades them where there are rules.
func (s *Reader) read(cells *lines.Cells, block lines.Block, out []result, rules *grade.Rules) []result {
	rows := strings.Count(block.Text, "\n") + 1
	out = slices.Grow(out, rows)
	width := len(s.head.Unread)
	extra := make([]string, 0, rows*width)
	size := 0
	for {
		line, n, ok, err := block.Next()
		if !ok {
			break
		}
		var row []string
		if err == nil {
			row, err = cells.Divide(line)
		}
		if err == nil && lines.Blank(row) {
			continue
		}
		out = append(out, result{})
		r := &out[len(out)-1]
		r.row.Line = n
		if err != nil {
			r.err = fault.Row(s.file, n, "", []*RowError{{Err: err}})
			continue
		}
		wrong := s.head.Read(row, &r.row)
		if width > 0 && len(row) >= len(s.head.Headings) {
			from := len(extra)
			for _, i := range s.head.Unread {
				if lines.Broken(row[i]) {
					wrong = append(wrong, s.head.Wrong(i, &grade.FieldError{Field: "cell", Value: fault.Plain(row[i]), Allowed: "one line of text", Err: grade.ErrSyntax}))
				}
				extra = append(extra, row[i])
				size += len(row[i])
			}
			r.row.Extra = extra[from:len(extra):len(extra)]
		}
		size += len(r.row.ID)
		s.assume(&r.row)
		if rules != nil && (len(wrong) == 0 || wrong[0].Column > 0) {
			wrong = s.grade(r, rules, wrong)
		}
		if len(wrong) > 0 {
			slices.SortStableFunc(wrong, func(a, b *RowError) int { return a.Column - b.Column })
			r.err = fault.Row(s.file, n, r.row.ID, wrong)
			r.row = Row{Line: n, ID: r.row.ID}
		}
	}
	detach(out, size)
	return out
}

// detach keeps the texts of rows apart from the block that they were read from.
func detach(rows []result, size int) {
	if size == 0 {
		return
	}
	var b strings.Builder
	b.Grow(size)
	for i := range rows {
		b.WriteString(rows[i].row.ID)
		for _, cell := range rows[i].row.Extra {
			b.WriteString(cell)
		}
	}
	all := b.String()
	take := func(s *string) { *s, all = all[:len(*s)], all[len(*s):] }
	for i := range rows {
		take(&rows[i].row.ID)
		for k := range rows[i].row.Extra {
			take(&rows[i].row.Extra[k])
		}
	}
}

// assume fills what the row does not have.
func (s *Reader) assume(row *Row) {
	a, c := &s.mapping.Assumed, &row.Carcass
	assume(row, AssumedSex, &c.Sex, a.Sex)
	assume(row, AssumedMaturity, &c.Maturity.Skeletal, a.Maturity)
	assume(row, AssumedMaturity, &c.Maturity.Lean, a.Maturity)
	assume(row, AssumedKPH, &c.Measures.KPH, a.KPH)
	assume(row, AssumedWeight, &c.Measures.Weight, a.Weight)
}

func assume[T comparable](row *Row, what Assumptions, to *T, value T) {
	var unset T
	if *to == unset && value != unset {
		*to = value
		row.Assumed |= what
	}
}

// grade grades a row for what the sheet has, and adds what keeps it from that to what
// is wrong already.
func (s *Reader) grade(r *result, rules *grade.Rules, wrong []*RowError) []*RowError {
	c := &r.row.Carcass
	var err error
	a := &r.done
	switch {
	case s.quality == nil && s.yield == nil:
		*a, err = rules.Assess(*c)
	case s.yield == nil:
		a.Carcass, a.Rules = *c, *rules
		var m grade.Measures
		if m, err = c.Adjusted(); err == nil {
			a.Yield, err = m.Yield()
		}
	default:
		a.Carcass, a.Rules = *c, *rules
		if a.Quality, err = rules.Quality(*c); err == nil {
			a.Maturity, err = rules.Overall(c.Maturity)
		}
	}
	if err == nil && len(wrong) == 0 {
		r.flags = flags(&c.Measures, s.kilograms)
		return nil
	}
	for _, p := range fault.Problems(err) {
		at := s.head.Find(p.Path)
		if at < 0 && (p.Path == "maturity.skeletal" || p.Path == "maturity.lean") {
			at = s.head.Find("maturity")
		}
		if at < 0 || !slices.ContainsFunc(wrong, func(e *RowError) bool { return e.Column == at+1 }) {
			wrong = append(wrong, s.head.Wrong(at, p))
		}
	}
	return wrong
}
