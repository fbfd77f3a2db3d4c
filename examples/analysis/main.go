// Command analysis grades a sheet of carcasses in whatever form it is kept, and sums
// it up: shares by quality and yield grade, means with their spread, a histogram, by
// groups if wanted. It streams on all cores, so that a million carcasses take no more
// memory than a thousand.
//
// # Try it
//
// Look what the columns of a sheet seem to mean, confirm it in the file, and grade:
//
//	go run ./examples/analysis -propose sheet.csv > map.json
//	go run ./examples/analysis -map map.json -out graded.csv -refused refused.csv sheet.csv
//
// -propose writes a mapping to standard output, and to standard error what it could not
// place and what it doubts. Mappings for four kinds of sheet stand in the folder maps.
// Without -map the headings are those of package grade/sheet, as fat_in or fat_mm; a
// graded sheet has them, and can be graded again. Without a file it reads standard
// input:
//
//	go run ./examples/analysis -make 5000 | go run ./examples/analysis
//
// # What comes out
//
// The summary goes to standard output as text. -csv and -json write it for other
// programs, -svg draws it, and -by makes a group of the rows with the same cell in a
// column, of the sheet or of the results. -out writes the graded rows: all that was
// read, then overall maturity, quality, exact yield, whole yield grade, tier and flags.
// What was assumed is marked in the column assumed. -refused writes what is wrong with
// the rows that could not be graded, one line for each reason. The first 20 of them, or
// as many as -bad says, are told on standard error, and so are the flagged ones.
//
// A file is written whole or not at all: under another name first, and renamed at the
// end. "-" and /dev/stdout are standard output; the summary then goes to standard
// error. An output that is also an input is refused before anything is opened. A pipe
// that is closed ends the program. On a terminal a line tells how far it is.
//
// The status is 0 where all rows were graded, 1 where the work could not be done, 2 for
// a command line that is wrong, and 3 where rows were refused.
//
// Means are exact sums divided once, to the nearest unit shown, and spreads are sample
// standard deviations (n - 1) by whole numbers; no float has a part in any figure.
// -base prices the carcasses on the averages of a public weekly report (official:
// ams-ct155-2025-01-06), added up as published (tx-grid-2014). They show how a grid
// works; a sale wants its own, which -prices names: a JSON file as in examples/prices.
//
// # Invented carcasses
//
// -make N writes N carcasses that never were; their ids say so. Fat, ribeye, KPH
// and weight are spread independently about the means of a published audit
// (nbqa-2016-inplant) with the spreads of one published lot (jas-2020-skaa287,
// 24 steers, so narrower than a season's kill); marbling follows the audit's
// shares of the grades, split so that its mean is the audit's; dark cutters are
// as many as in the audit. Sex and maturity have no source: they are chosen so
// that every part of the grading is met. The same number and -seed give the same
// bytes on every machine.
//
// Results are for teaching and analysis. Only authorized federal graders assign
// official grades.
package main

import (
	"cmp"
	"context"
	"encoding/csv"
	"encoding/json"
	"errors"
	"flag"
	"fmt"
	"io"
	"os"
	"strconv"
	"strings"
	"syscall"

	"example.com/ribface/examples/prices"
	"example.com/ribface/grade"
	"example.com/ribface/grade/price"
	"example.com/ribface/grade/sheet"
	"github.com/shopspring/decimal"
)

func main() {
	err := run(context.Background(), os.Args[1:], os.Stdin, os.Stdout, os.Stderr)
	switch {
	case err == nil:
		return
	case errors.Is(err, flag.ErrHelp):
	case errors.Is(err, syscall.EPIPE): // whoever read has enough
	case errors.Is(err, errRefused): // told already
	default:
		fmt.Fprintln(os.Stderr, "analysis:", err)
	}
	os.Exit(status(err))
}

var (
	errRefused = errors.New("rows were refused")
	errUsage   = errors.New("see -help")
)

// status is the exit status for an outcome.
func status(err error) int {
	switch {
	case err == nil:
		return 0
	case errors.Is(err, errRefused):
		return 3
	case errors.Is(err, errUsage), errors.Is(err, flag.ErrHelp):
		return 2
	}
	return 1
}

// settings are what the command line says.
type settings struct {
	make       int
	seed       uint64
	propose    bool
	mapping    string // name of the file
	comma      string
	by         string
	bad        int
	rules      grade.Rules
	base       decimal.Decimal // zero for no prices
	pricesFile string          // "" for those of examples/prices
	in         string          // empty for standard input

	out, refused, csv, json, svg string
}

func parse(args []string, stderr io.Writer) (settings, error) {
	s := settings{rules: grade.Rules{Edition: grade.Current}}
	f := flag.NewFlagSet("analysis", flag.ContinueOnError)
	f.SetOutput(stderr)
	f.BoolVar(&s.propose, "propose", false, "propose a mapping for the sheet and stop")
	f.StringVar(&s.mapping, "map", "", "read what the columns mean from `FILE`")
	f.StringVar(&s.comma, "comma", "", "what divides the cells: a `SIGN`, comma, semicolon, bar or tab, whatever the mapping says")
	f.StringVar(&s.by, "by", "", "sum up by groups with the same cell in a `COLUMN`")
	f.StringVar(&s.out, "out", "", "write the graded rows, or what -make or -propose give, to `FILE`")
	f.StringVar(&s.refused, "refused", "", "write the refused rows with every reason to `FILE`")
	f.StringVar(&s.csv, "csv", "", "write the summary as CSV to `FILE`")
	f.StringVar(&s.json, "json", "", "write the summary as JSON to `FILE`")
	f.StringVar(&s.svg, "svg", "", "draw the summary into `FILE`")
	f.IntVar(&s.bad, "bad", 20, "tell at most `N` refused and N flagged rows one by one")
	f.TextVar(&s.rules.Edition, "edition", s.rules.Edition, "the edition of the standard, by `YEAR`")
	f.StringVar(&s.pricesFile, "prices", "", "take premiums and discounts from `FILE`, with -base")
	f.TextVar(&s.base, "base", s.base, "price the carcasses, with a base of `DOLLARS` per cwt of hot carcass weight")
	f.IntVar(&s.make, "make", 0, "write a sheet of `N` invented carcasses and stop")
	f.Uint64Var(&s.seed, "seed", 1, "the invented carcasses to make; another number gives others")
	if err := f.Parse(args); err != nil {
		return s, errors.Join(err, errUsage)
	}
	signs := map[string]string{"": "", "comma": ",", "semicolon": ";", "bar": "|", "tab": "\t", ",": ",", ";": ";", "|": "|", "\t": "\t", `\t`: "\t"}
	comma, ok := signs[s.comma]
	s.comma = comma
	switch {
	case !ok:
		return s, usage("-comma wants a comma, a semicolon, a bar or a tab")
	case s.make < 0 || s.bad < 0:
		return s, usage("-make and -bad want numbers of 0 or more")
	case s.pricesFile != "" && s.base.IsZero():
		return s, usage("-prices wants a -base")
	case f.NArg() > 1 || s.make > 0 && f.NArg() > 0:
		return s, usage("one sheet at a time, and none with -make; flags stand before it")
	}
	s.in = f.Arg(0)
	return s, nil
}

func usage(text string) error { return fmt.Errorf("%s; %w", text, errUsage) }

func run(ctx context.Context, args []string, stdin io.Reader, stdout, stderr io.Writer) error {
	s, err := parse(args, stderr)
	if err != nil {
		return err
	}
	names := []string{s.out, s.refused, s.csv, s.json, s.svg}
	if err := apart(names, []string{s.in, s.mapping, s.pricesFile}, stdin, stdout); err != nil {
		return err
	}
	if s.make > 0 {
		return whole(cmp.Or(s.out, "-"), stdout, func(w io.Writer) error { return invent(w, s.make, s.seed) })
	}
	in := stdin
	if s.in != "" {
		f, err := os.Open(s.in)
		if err != nil {
			return err
		}
		defer func() { _ = f.Close() }() // it was read only
		in = f
	}
	if s.propose {
		return whole(cmp.Or(s.out, "-"), stdout, func(w io.Writer) error { return propose(in, w, stderr) })
	}
	m, err := readMapping(s)
	if err != nil {
		return err
	}
	r, err := m.NewReader(s.in, in)
	if err != nil {
		return err
	}
	a := &analysis{settings: s, columns: m.Columns, reader: r, stderr: stderr, terminal: terminal(stderr)}
	if err := a.prepare(); err != nil {
		return err
	}
	// The files of rows are finished before the summary is shown.
	err = whole(s.out, stdout, func(out io.Writer) error {
		return whole(s.refused, stdout, func(refused io.Writer) error { return a.all(ctx, out, refused) })
	})
	if err != nil {
		return err
	}
	for _, f := range []struct {
		name  string
		write func(io.Writer) error
	}{{s.csv, a.sum.csv}, {s.json, a.sum.json}, {s.svg, a.sum.svg}} {
		if f.name == "" {
			continue
		}
		if err := whole(f.name, stdout, f.write); err != nil {
			return err
		}
	}
	text := stdout
	for _, name := range names {
		if standard(name) {
			text = stderr
		}
	}
	if err := a.sum.text(text); err != nil {
		return err
	}
	if a.sum.Refused > 0 {
		return errRefused
	}
	return nil
}

// propose writes a mapping for a person to confirm.
func propose(in io.Reader, out, stderr io.Writer) error {
	p, err := sheet.Propose(in)
	if err != nil {
		return err
	}
	if len(p.Unplaced) > 0 {
		_, _ = fmt.Fprintf(stderr, "not placed: %s\n", strings.Join(p.Unplaced, ", "))
	}
	for _, what := range p.Lacking {
		_, _ = fmt.Fprintf(stderr, "lacking for %s; it may be assumed\n", what)
	}
	for _, doubt := range p.Doubts {
		_, _ = fmt.Fprintf(stderr, "look: %s\n", doubt)
	}
	e := json.NewEncoder(out)
	e.SetIndent("", "  ")
	e.SetEscapeHTML(false)
	return e.Encode(p.Mapping)
}

// readMapping reads what the columns mean.
func readMapping(s settings) (m sheet.Mapping, err error) {
	if s.mapping != "" {
		b, err := os.ReadFile(s.mapping)
		if err != nil {
			return m, err
		}
		if err := json.Unmarshal(b, &m); err != nil {
			return m, fmt.Errorf("%s: %w", s.mapping, err)
		}
	}
	if s.comma != "" {
		m.Separator = s.comma
	}
	return m, nil
}

// analysis is one run over a sheet.
type analysis struct {
	settings
	columns  map[string]string // of the mapping
	reader   *sheet.Reader
	stderr   io.Writer
	terminal bool
	key      func(*sheet.GradedRow) string // the group of a row; nil without groups
	grid     *price.Grid
	sum      summary
}

// prepare says what is read and what is not, and finds the groups.
func (a *analysis) prepare() error {
	quality, yield := a.reader.Lacks()
	if extra := a.reader.Extra(); len(extra) > 0 {
		a.say("not read, kept as they stand: %s\n", strings.Join(extra, ", "))
	}
	if quality != nil {
		a.say("no quality grades: the sheet has no %s, and none is assumed\n", strings.Join(quality, ", "))
	}
	if yield != nil {
		a.say("no yields: the sheet has no %s, and none is assumed\n", strings.Join(yield, ", "))
	}
	if quality != nil && yield != nil && a.mapping == "" {
		a.say("-propose proposes what the columns mean, for -map\n")
	}
	a.sum.by = a.by
	if a.by != "" {
		var err error
		if a.key, err = group(a.by, a.reader.Extra(), a.columns); err != nil {
			return err
		}
	}
	if !a.base.IsZero() {
		grid, err := a.prices()
		if err != nil {
			return err
		}
		a.grid = &grid
		a.sum.grid = &grid
	}
	return nil
}

// prices makes the grid that was asked for.
func (a *analysis) prices() (price.Grid, error) {
	terms, err := prices.Read(a.pricesFile, a.base)
	if err != nil {
		return price.Grid{}, err
	}
	return price.New(terms)
}

// say tells something on standard error. What cannot be told stops nothing.
func (a *analysis) say(format string, args ...any) { _, _ = fmt.Fprintf(a.stderr, format, args...) }

// step is after how many rows the line on a terminal is brought up to date.
const step = 20_000

// all grades the rows and adds them to the summary; graded rows go to out and refused
// ones to refused, where there is one.
func (a *analysis) all(ctx context.Context, out, refused io.Writer) error {
	var w *sheet.GradedWriter
	if out != nil {
		var err error
		if w, err = sheet.NewGradedWriter(out, a.reader.Extra()...); err != nil {
			return err
		}
	}
	var reasons *csv.Writer
	if refused != nil {
		reasons = csv.NewWriter(refused)
		if err := reasons.Write([]string{"file", "line", "id", "column", "heading", "field", "value", "reason", "allowed"}); err != nil {
			return err
		}
	}
	rows, told := 0, 0
	for g, err := range a.reader.Grade(ctx, a.rules) {
		var bad *sheet.RowError
		switch {
		case err == nil:
			if err := a.add(&g, &told); err != nil {
				return err
			}
			if w != nil {
				if err := w.Write(g); err != nil {
					return err
				}
			}
		case errors.As(err, &bad) && g.Line > 0:
			if a.sum.Refused++; a.sum.Refused <= a.bad {
				a.say("%srefused: %v\n", a.wipe(), err)
			}
			if reasons != nil {
				for _, e := range bad.All() {
					if err := reasons.Write(reason(e)); err != nil {
						return err
					}
				}
			}
		default:
			return err // of the rules, of the header, or of the input itself
		}
		if rows++; a.terminal && rows%step == 0 {
			a.say("\r%s rows, %s refused", grouped(rows), grouped(a.sum.Refused))
		}
	}
	a.say("%s", a.wipe())
	if more := a.sum.Refused - a.bad; more > 0 {
		a.say("refused: %s more\n", grouped(more))
	}
	if more := a.reader.Counts().Flagged - told; more > 0 {
		a.say("flagged: %s more\n", grouped(more))
	}
	a.sum.Counts = a.reader.Counts()
	if reasons != nil {
		if reasons.Flush(); reasons.Error() != nil {
			return reasons.Error()
		}
	}
	if w != nil {
		return w.Flush()
	}
	return nil
}

// wipe clears the line on a terminal.
func (a *analysis) wipe() string {
	if a.terminal {
		return "\r\x1b[K"
	}
	return ""
}

// add adds a graded row to the summary.
func (a *analysis) add(g *sheet.GradedRow, told *int) error {
	if len(g.Flags) > 0 && *told < a.bad {
		*told++
		notes := make([]string, len(g.Flags))
		for i, f := range g.Flags {
			notes[i] = f.Note
		}
		id := ""
		if g.ID != "" {
			id = fmt.Sprintf(", id %q", g.ID)
		}
		a.say("%sflagged: line %d%s: %s\n", a.wipe(), g.Line, id, strings.Join(notes, "; "))
	}
	if a.grid != nil && g.Assessment.Quality != 0 && g.Assessment.Yield.IsSet() {
		v, err := a.grid.Value(g.Assessment)
		if err != nil && !errors.Is(err, price.ErrNoPrice) {
			return err
		}
		a.sum.price(v, err == nil)
	}
	key := ""
	if a.key != nil {
		key = a.key(g)
	}
	a.sum.add(key, &g.Assessment)
	return nil
}

// reason is the line of a refused row for one reason.
func reason(e *sheet.RowError) []string {
	line := []string{e.File, strconv.Itoa(e.Line), e.ID, "", e.Heading, "", "", "", ""}
	if e.Column > 0 {
		line[3] = strconv.Itoa(e.Column)
	}
	for _, p := range grade.Problems(e.Err) {
		line[5], line[6], line[8] = p.Field, p.Value, p.Allowed
		line[7] = p.Err.Error()
	}
	return line
}
