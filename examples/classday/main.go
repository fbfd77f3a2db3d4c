// Command classday takes on a class of beef carcasses from beginning to end and
// prints a class sheet: it grades the exhibits and shows the work, compares the
// rib with the walk over the rest of the carcass, places the class by a policy,
// proposes cuts, gives reasons, asks what would turn a pair, compares the placing
// with the value on a price grid, and scores the cards of a team.
//
//	go run ./examples/classday
//	go run ./examples/classday -class class.csv -walk walk.csv -cards cards.csv -posted "800 lb"
//
// Without files it takes an invented class of four, with an invented walk, three
// invented officials and six invented cards. With -class it takes that class;
// -walk, -officials and -cards may come with it or be left out.
//
// # The files
//
// The class is a CSV sheet as package grade/sheet reads it, 2 to 12 carcasses,
// the unit in the name of a column, as fat_in or fat_mm. An id of 1 to n is the
// exhibit's number; where the ids are names, the exhibits are numbered as they
// stand.
//
// The walk has the columns site and ranking: a place of the carcass, and all
// exhibits from the fattest or the heaviest muscled, with an equals sign for a
// tie, as "3 1=2 4". Or it has the columns site and scores: a whole number for each
// exhibit, that of 1 first, the fattest or the heaviest muscled the highest, as
// "7 7 9 4". The sites are those of package placing/class.
//
// The officials are a sheet as package placing/contest reads it: contest, class,
// placing, cuts, one official to a row.
//
// The cards are a sheet as package placing/contest reads it: contest, class,
// member, team, division, placing. All its cards are scored on this class.
//
// What is wrong in a file is reported with its line and column, and nothing is
// printed then.
//
// # The official placing
//
// Cards are scored on what the officials agree on best, with cuts from theirs.
// Without officials it is the placing that the policy gives, with cuts from its
// margins. -order and -cuts put what a committee has settled in their place.
// Reasons, cuts and what the cards missed follow the official placing, also where
// the policy would place the class otherwise.
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
	order                                         placing.Order
	cuts                                          placing.Cuts
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
	f.TextVar(&s.order, "order", s.order, "official `PLACING`, as 3-1-2-4")
	f.TextVar(&s.cuts, "cuts", s.cuts, "official `CUTS`, as 3-2-5")
	if err := f.Parse(args); err != nil {
		return s, err
	}
	if f.NArg() > 0 {
		return s, fmt.Errorf("%s: files are given by -class, -walk, -officials and -cards", f.Arg(0))
	}
	if s.classFile == "" && s.walkFile+s.officialsFile+s.cardsFile != "" {
		return s, errors.New("-walk, -officials and -cards go with -class")
	}
	return s, nil
}

// run does the work; nothing is written to stdout when there is an error.
func run(args []string, stdout, stderr io.Writer) error {
	s, err := parse(args, stderr)
	if err != nil {
		return err
	}
	d, err := load(s)
	if err != nil {
		return err
	}
	text, err := report(s, d)
	if err != nil {
		return err
	}
	_, err = io.WriteString(stdout, text)
	return err
}
