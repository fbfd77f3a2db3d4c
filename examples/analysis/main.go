// Command analysis grades a sheet of carcasses and sums it up: how many fall in
// each trade tier and yield grade, the means of what was measured, and what the
// lot is worth on a price grid. It streams, so that a million carcasses take no
// more memory than a thousand.
//
// # Try it
//
// Make a sheet of invented carcasses and sum it up:
//
//	go run . -make 1000000 -seed 7 -out carcasses.csv
//	go run . -out graded.csv carcasses.csv
//
// Without a file it reads standard input:
//
//	go run . -make 5000 | go run .
//
// # What goes in
//
// A CSV sheet as package grade/sheet reads it: one carcass to a row, the unit in
// the name of the column, as fat_in or fat_mm. -extra keeps columns that the
// package does not know instead of refusing the sheet.
//
// # What comes out
//
// The summary goes to standard output. While it works, a line with the number of
// rows is kept up to date on standard error, and rows that cannot be graded are
// reported there, with line, column, value and what is allowed: the first 20, or
// as many as -bad says. Every refused row is counted, none is guessed at, and the
// rows after it are graded all the same. -out writes the graded rows as a sheet:
// all that was read, then overall maturity, quality, exact yield, whole yield
// grade and tier.
//
// Means are exact sums divided once, to the nearest unit shown; no float has a
// part in any figure. Prices are the averages of the public weekly report that package
// grade/price embeds (official: ams-ct155-2025-01-06), on a base that -base
// sets, added up as published (tx-grid-2014). They show how a grid works; a sale
// wants its own.
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
// Results are for teaching and analysis. Only authorised federal graders assign
// official grades.
package main

import (
	"errors"
	"flag"
	"fmt"
	"io"
	"os"

	"example.com/ribface/grade"
	"example.com/ribface/grade/price"
	"example.com/ribface/grade/sheet"
)

func main() {
	if err := run(os.Args[1:], os.Stdin, os.Stdout, os.Stderr); err != nil {
		if !errors.Is(err, flag.ErrHelp) {
			fmt.Fprintln(os.Stderr, "analysis:", err)
		}
		os.Exit(1)
	}
}

// settings are what the command line says.
type settings struct {
	make  int
	seed  uint64
	out   string
	extra bool
	bad   int
	rules grade.Rules
	terms price.Terms // of which only the base is set
	in    string      // empty for standard input
}

func parse(args []string, stderr io.Writer) (settings, error) {
	s := settings{rules: grade.Rules{Edition: grade.Current}}
	if err := s.terms.Base.UnmarshalText([]byte("300")); err != nil {
		return s, err
	}
	f := flag.NewFlagSet("analysis", flag.ContinueOnError)
	f.SetOutput(stderr)
	f.IntVar(&s.make, "make", 0, "write a sheet of `N` invented carcasses and stop")
	f.Uint64Var(&s.seed, "seed", 1, "the invented carcasses to make; another number gives others")
	f.StringVar(&s.out, "out", "", "write the graded rows, or the invented ones, to `FILE`")
	f.BoolVar(&s.extra, "extra", false, "keep columns that are not known")
	f.IntVar(&s.bad, "bad", 20, "report at most `N` refused rows one by one")
	f.TextVar(&s.rules.Edition, "edition", s.rules.Edition, "the edition of the standard, by `YEAR`")
	f.TextVar(&s.terms.Base, "base", s.terms.Base, "base price in `DOLLARS` per cwt of hot carcass weight")
	if err := f.Parse(args); err != nil {
		return s, err
	}
	if s.make < 0 || s.bad < 0 {
		return s, errors.New("-make and -bad want numbers of 0 or more")
	}
	if f.NArg() > 1 || s.make > 0 && f.NArg() > 0 {
		return s, errors.New("one sheet at a time, and none with -make")
	}
	s.in = f.Arg(0)
	return s, nil
}

func run(args []string, stdin io.Reader, stdout, stderr io.Writer) error {
	s, err := parse(args, stderr)
	if err != nil {
		return err
	}
	if s.make > 0 {
		return output(s.out, stdout, func(w io.Writer) error { return invent(w, s.make, s.seed) })
	}
	grid, err := price.New(price.Latest().Terms(s.terms.Base))
	if err != nil {
		return err
	}
	in := stdin
	if s.in != "" {
		f, err := os.Open(s.in)
		if err != nil {
			return err
		}
		defer func() { _ = f.Close() }() // it was read only
		if same(f, s.out) {
			return fmt.Errorf("%s: the sheet that is read cannot be written over", s.out)
		}
		in = f
	}
	r, err := sheet.Options{Extra: s.extra}.NewReader(in)
	if err != nil {
		return err
	}
	sum := &summary{}
	if s.out == "" {
		err = analyze(r, nil, s, grid, sum, stderr)
	} else {
		err = output(s.out, nil, func(w io.Writer) error { return analyze(r, w, s, grid, sum, stderr) })
	}
	if err != nil {
		return err
	}
	return sum.print(stdout, grid)
}

// same reports whether the name is that of the open file.
func same(f *os.File, name string) bool {
	a, err := f.Stat()
	if err != nil {
		return false
	}
	b, err := os.Stat(name)
	return err == nil && os.SameFile(a, b)
}

// output gives write the file of that name, or standard output without a name.
func output(name string, stdout io.Writer, write func(io.Writer) error) error {
	if name == "" {
		return write(stdout)
	}
	f, err := os.Create(name)
	if err != nil {
		return err
	}
	return errors.Join(write(f), f.Close())
}

// step is after how many rows the line on standard error is brought up to date.
const step = 50_000

// analyze grades the rows and adds them to the summary; graded rows go to out
// where there is one.
func analyze(r *sheet.Reader, out io.Writer, s settings, grid price.Grid, sum *summary, stderr io.Writer) error {
	var w *sheet.GradedWriter
	if out != nil {
		var err error
		if w, err = sheet.NewGradedWriter(out, r.Extra()...); err != nil {
			return err
		}
	}
	// What cannot be shown on the way stops nothing.
	say := func(format string, args ...any) { _, _ = fmt.Fprintf(stderr, format, args...) }
	for g, err := range r.Grade(s.rules) {
		if err != nil {
			var e *sheet.Error
			if !errors.As(err, &e) || !refused(e) {
				return err // of the rules, or of the input itself
			}
			if sum.refused++; sum.refused <= s.bad {
				say("\r%v\n", err)
			}
		} else {
			v, err := grid.Value(g.Assessment)
			if err != nil && !errors.Is(err, price.ErrNoPrice) {
				return err
			}
			sum.add(g.Assessment, v, err == nil)
			if w != nil {
				if err := w.Write(g); err != nil {
					return err
				}
			}
		}
		if rows := sum.graded + sum.refused; rows%step == 0 {
			say("\r%s rows, %s refused", grouped(rows), grouped(sum.refused))
		}
	}
	say("\r%s rows, %s refused\n", grouped(sum.graded+sum.refused), grouped(sum.refused))
	if w != nil {
		return w.Flush()
	}
	return nil
}

// refused reports whether the error is of a row, and not of the input.
func refused(e *sheet.Error) bool {
	var fe *grade.FieldError
	return errors.As(e.Err, &fe)
}
