// Command practice makes invented classes of beef carcasses to practice on: a sheet
// for the members and, apart from it, the key with the work and the reasons.
//
//	go run ./examples/practice -seed 7 -difficulty hard
//	go run ./examples/practice -seed 7 -difficulty hard -key
//	go run ./examples/practice -seed 7 -classes 5 -html sheets.html
//	go run ./examples/practice -seed 7 -classes 5 -html keys.html -key -full
//
// The same seed and the same flags make the same classes on every machine, so that
// a coach need not keep the key: the command with -key gives it again. -csv FILE
// writes one class as the file that examples/chart and examples/classday read.
//
// # Invented
//
// No carcass is real. Traits are drawn around published means with published
// spreads, and go together as in a trial of 703 carcasses, in which what goes
// together with marbling is overstated; see package placing/practice. The key is
// the placing of the library's policy and no committee's.
//
// Results are for teaching and analysis. Only authorized federal graders assign
// official grades.
package main

import (
	"bytes"
	"errors"
	"flag"
	"fmt"
	"io"
	"os"
	"slices"
	"strings"

	"example.com/ribface/examples/internal/classfile"
	"example.com/ribface/placing/practice"
)

func main() {
	if err := run(os.Args[1:], os.Stdout, os.Stderr); err != nil {
		if !errors.Is(err, flag.ErrHelp) {
			fmt.Fprintln(os.Stderr, "practice:", err)
		}
		os.Exit(1)
	}
}

// mostClasses is the largest set.
const mostClasses = 50

func run(args []string, stdout, stderr io.Writer) error {
	var spec practice.Spec
	flags := flag.NewFlagSet("practice", flag.ContinueOnError)
	flags.SetOutput(stderr)
	seed := flags.Uint64("seed", 1, "`number` that the first class comes from; the next has the next number")
	classes := flags.Int("classes", 1, "`number` of classes in the set")
	flags.IntVar(&spec.Exhibits, "exhibits", 4, "`number` of carcasses in a class")
	flags.IntVar(&spec.LeastGrades, "grades", 0, "at least this `number` of different quality grades")
	flags.TextVar(&spec.Difficulty, "difficulty", spec.Difficulty, "hard, medium or easy; any without it")
	flags.TextVar(&spec.Shape, "shape", spec.Shape, "close middle, close pairs or clear steps; any without it")
	herd := flags.String("herd", "", "`words` of the name of the herd to draw from, as \"trial\"")
	key := flags.Bool("key", false, "print the key in place of the sheet for members")
	full := flags.Bool("full", false, "with -key: show the work with its sources")
	html := flags.String("html", "", "`file` for a page of the same to print")
	csv := flags.String("csv", "", "`file` for the class, as examples/chart reads it")
	if err := flags.Parse(args); err != nil {
		return err
	}
	switch {
	case flags.NArg() > 0:
		return fmt.Errorf("%q: no arguments are taken, only flags", flags.Arg(0))
	case *classes < 1 || *classes > mostClasses:
		return fmt.Errorf("-classes %d: allowed: 1 to %d", *classes, mostClasses)
	case *full && !*key:
		return errors.New("-full goes with -key")
	case *csv != "" && *classes > 1:
		return errors.New("-csv writes one class")
	}
	var err error
	if spec.Herd, err = find(*herd); err != nil {
		return err
	}
	var set []practice.Invented
	for n := range uint64(*classes) {
		c, err := practice.Make(*seed+n, spec)
		if err != nil {
			return err
		}
		set = append(set, c)
	}
	if *csv != "" {
		var b bytes.Buffer
		if err := classfile.Write(&b, slices.Collect(set[0].Graded.Exhibits())); err != nil {
			return err
		}
		if err := os.WriteFile(*csv, b.Bytes(), 0o666); err != nil {
			return err
		}
	}
	sheets, err := sheetsOf(set, *key, *full)
	if err != nil {
		return err
	}
	if *html != "" {
		if err := os.WriteFile(*html, asPage(sheets, *key), 0o666); err != nil {
			return err
		}
		_, err = fmt.Fprintf(stdout, "%s written\n", *html)
		return err
	}
	_, err = io.WriteString(stdout, asText(sheets, *key))
	return err
}

// find returns the one herd whose name has the words, or none to leave the choice
// to the library.
func find(words string) (practice.Herd, error) {
	var found []practice.Herd
	var names []string
	for h := range practice.Herds() {
		names = append(names, h.Name)
		if words != "" && strings.Contains(h.Name, words) {
			found = append(found, h)
		}
	}
	switch {
	case words == "":
		return practice.Herd{}, nil
	case len(found) != 1:
		return practice.Herd{}, fmt.Errorf("-herd %q: %d herds have these words; there are: %s", words, len(found), strings.Join(names, "; "))
	}
	return found[0], nil
}
