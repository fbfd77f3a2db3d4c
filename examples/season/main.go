// Command season follows the members of two invented teams through a season of
// eight contests: the cards are handed in, scored and ranked, one member is told
// what was missed, and a page says who leans which way and by how much.
//
//	go run ./examples/season
//	go run ./examples/season -member N3 -svg bias.svg
//	go run ./examples/season -seed 12 -cards sheets
//
// # What goes in
//
// Every card goes through CSV sheets as package placing/contest reads them, so that a
// coach can put in sheets of his own: -cards DIR writes those of the season there,
// and -from DIR reads them instead of inventing any. The sheets are placings.csv,
// estimates.csv, scores.csv (of reasons), and the keys officials.csv and facts.csv. A
// season without grading or reasons has sheets of a header alone. Contests are taken
// in order of name, so that a date at the start of it puts them in order of time.
//
// # What comes out
//
// Standings of the last contest, overall and of the placings alone; what one member
// missed in it, pair by pair and grade by grade, with the error of every yield
// estimate split into what fat, ribeye, KPH and weight did; and the calibration over
// the season. -svg FILE draws each member's bias in yield over time.
//
// # Invented
//
// No member, team or carcass is real. Carcasses come from package practice; each
// member sees them with a lean and a scatter of his own, and the lean wears off over
// the season. The points are numbers of our own.
// The same seed gives the same bytes on every machine.
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
	"slices"
)

func main() {
	if err := run(os.Args[1:], os.Stdout, os.Stderr); err != nil {
		if !errors.Is(err, flag.ErrHelp) {
			fmt.Fprintln(os.Stderr, "season:", err)
		}
		os.Exit(1)
	}
}

func run(args []string, stdout, stderr io.Writer) error {
	flags := flag.NewFlagSet("season", flag.ContinueOnError)
	flags.SetOutput(stderr)
	seed := flags.Uint64("seed", 1, "`number` that the invented season comes from")
	member := flags.String("member", "N1", "`id` of the member who is told what was missed")
	svg := flags.String("svg", "", "`file` for the drawing of each member's bias; none without it")
	to := flags.String("cards", "", "`directory` to write the sheets to; it must exist")
	from := flags.String("from", "", "`directory` to read the sheets from instead of inventing any")
	if err := flags.Parse(args); err != nil {
		return err
	}
	if flags.NArg() > 0 {
		return fmt.Errorf("%q: no arguments are taken, only flags", flags.Arg(0))
	}
	note := "Invented: no member, team or carcass is real."
	sheets, err := files{}, error(nil)
	if *from != "" {
		note = ""
		sheets, err = load(*from)
	} else {
		sheets, err = invent(*seed)
	}
	if err != nil {
		return err
	}
	if *to != "" {
		if err := sheets.save(*to); err != nil {
			return err
		}
	}
	s, err := sheets.read()
	if err != nil {
		return err
	}
	p, err := s.page(*member)
	if err != nil {
		return err
	}
	if *svg != "" {
		if err := os.WriteFile(*svg, draw(p.leans, note), 0o666); err != nil {
			return err
		}
	}
	if note != "" {
		p.text = note + "\n\n" + p.text
	}
	_, err = io.WriteString(stdout, p.text)
	return err
}

// group puts rows together by key, keys in order.
func group[T any](rows []T, key func(T) string) (keys []string, by map[string][]T) {
	by = map[string][]T{}
	for _, r := range rows {
		k := key(r)
		if by[k] == nil {
			keys = append(keys, k)
		}
		by[k] = append(by[k], r)
	}
	slices.Sort(keys)
	return keys, by
}
