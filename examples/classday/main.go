// Command classday takes on a class of beef carcasses from beginning to end: it
// grades the exhibits, compares the rib with the walk over the rest of the carcass,
// places the class, sets cuts, gives reasons and scores the cards of a team.
//
//	go run ./examples/classday
//	go run ./examples/classday -class class.csv -walk walk.csv -cards cards.csv -posted "800 lb"
//	go run ./examples/classday -html day.html
//	go run ./examples/classday -full
//
// It prints one screen: the placing and cuts, who set them and how far they agree; a
// line for each exhibit; what decided each pair of neighbors and how near it was;
// what the walk found; the score of every member with the pairs missed.
//
// With -html it writes one page instead, which needs no network: the same at a
// glance, the carcasses drawn with what was seen at each site of the walk, the
// reasons as a member would say them, the score of every card, a slip for each member
// with what was missed and why, and blank cards to print. With -full it prints the
// work with rules and sources, or puts it at the end of the page: every step of every
// grade, what would turn a pair, and the value on a price grid.
//
// Without files it takes an invented class of four, with an invented walk, three
// invented officials and six invented cards. With -class it takes that class;
// -walk, -officials and -cards may come with it or be left out.
//
// # The files
//
// The class is a CSV sheet as package grade/sheet reads it, 2 to 12 carcasses, the
// unit in the name of a column, as fat_in or fat_mm; examples/chart takes the same
// file. An id of 1 to n is the exhibit's number; where the ids are names, as 101 to
// 104, the exhibits are called by them, and placings and rankings may be written in
// them.
//
// The walk has the columns site and ranking: a place of the carcass, and all
// exhibits from the fattest or the heaviest muscled, with an equals sign for a
// tie, as "3 1=2 4". Or it has the columns site and scores: a whole number for each
// exhibit, that of the first first, the fattest or the heaviest muscled the highest,
// as "7 7 9 4". The sites are those of package placing/class.
//
// The officials are a sheet as package placing/contest reads it: contest, class,
// placing, cuts, one official to a row.
//
// The cards are a sheet as package placing/contest reads it: contest, class,
// member, team, division, placing. All its cards are scored on this class.
//
// What is wrong in a file is reported with its line and column, and nothing is
// printed or written then.
//
// # The official placing
//
// Cards are scored on what the officials agree on best, with cuts from theirs.
// Without officials it is the placing that the policy gives, with cuts from its
// margins. -order and -cuts put what a committee has settled in their place.
// Reasons, cuts and what the cards missed follow the official placing, also where
// the policy would place the class otherwise.
//
// How far officials agree is said by Kendall's W: all agree at 1, agree well from
// 0.7, agree in part from 0.4 and differ widely below; these lines are our own. How
// near a pair is follows its official cut, in the words of a published scale
// (ext-colorado-1-619).
//
// Results are for teaching and analysis. Only authorized federal graders assign
// official grades.
package main

import (
	"embed"
	"errors"
	"flag"
	"fmt"
	"io"
	"os"
	"path/filepath"

	"example.com/ribface/grade"
	"example.com/ribface/placing"
	"github.com/shopspring/decimal"
)

//go:embed class.csv walk.csv officials.csv cards.csv
var invented embed.FS

func main() {
	if err := run(os.Args[1:], os.Stdout, os.Stderr); err != nil {
		if !errors.Is(err, flag.ErrHelp) {
			fmt.Fprintln(os.Stderr, "classday:", err)
		}
		os.Exit(1)
	}
}

// settings are what the command line says.
type settings struct {
	classFile, walkFile, officialsFile, cardsFile string
	posted                                        grade.Weight
	edition                                       grade.Edition
	base                                          decimal.Decimal
	order                                         string // in numbers or names
	cuts                                          placing.Cuts
	html                                          string
	full                                          bool
}

func parse(args []string, stderr io.Writer) (settings, error) {
	s := settings{edition: grade.Current, base: decimal.New(300, 0)}
	f := flag.NewFlagSet("classday", flag.ContinueOnError)
	f.SetOutput(stderr)
	f.StringVar(&s.classFile, "class", "", "CSV `FILE` of the carcasses; an invented class without it")
	f.StringVar(&s.walkFile, "walk", "", "CSV `FILE` of the walk over the carcasses")
	f.StringVar(&s.officialsFile, "officials", "", "CSV `FILE` of the officials' placings and cuts")
	f.StringVar(&s.cardsFile, "cards", "", "CSV `FILE` of placing cards")
	f.TextVar(&s.posted, "posted", s.posted, "one `WEIGHT` for all exhibits, as \"800 lb\"; 0 lb leaves each its own")
	f.TextVar(&s.edition, "edition", s.edition, "edition of the standard, by `YEAR`")
	f.TextVar(&s.base, "base", s.base, "base price in `DOLLARS` per cwt of hot carcass weight")
	f.StringVar(&s.order, "order", "", "official `PLACING`, as 3-1-2-4")
	f.TextVar(&s.cuts, "cuts", s.cuts, "official `CUTS`, as 3-2-5")
	f.StringVar(&s.html, "html", "", "`FILE` for a page to read and to print")
	f.BoolVar(&s.full, "full", false, "the work with its sources")
	if err := f.Parse(args); err != nil {
		return s, err
	}
	if f.NArg() > 0 {
		return s, fmt.Errorf("%s: files are given by -class, -walk, -officials and -cards", f.Arg(0))
	}
	if s.classFile == "" && s.walkFile+s.officialsFile+s.cardsFile != "" {
		return s, errors.New("-walk, -officials and -cards go with -class")
	}
	for _, in := range []string{s.classFile, s.walkFile, s.officialsFile, s.cardsFile} {
		if s.html != "" && in != "" && filepath.Clean(in) == filepath.Clean(s.html) {
			return s, fmt.Errorf("-html %s: that is a file to read", s.html)
		}
	}
	return s, nil
}

// run does the work; nothing is written when there is an error.
func run(args []string, stdout, stderr io.Writer) error {
	s, err := parse(args, stderr)
	if err != nil {
		return err
	}
	d, err := load(s)
	if err != nil {
		return err
	}
	w, err := settle(s, d)
	if err != nil {
		return err
	}
	text := ""
	if s.full {
		if text, err = work(w); err != nil {
			return err
		}
	}
	if s.html != "" {
		html, err := w.html(text)
		if err == nil {
			err = os.WriteFile(s.html, html, 0o666)
		}
		if err != nil {
			return err
		}
		text = s.html + " written\n"
	}
	if text == "" {
		text = w.screen()
	}
	_, err = io.WriteString(stdout, text)
	return err
}
