// Command chart writes one page about a class of beef carcasses: the grade chart of
// an edition with the class on it, marbling down the side and maturity across the
// top, and the score of every possible card.
//
//	go run ./examples/chart -html chart.html
//	go run ./examples/chart -class class.csv -order 3-1-4-2 -cuts 2-5-4 -html chart.html
//	go run ./examples/chart -edition 1987 -old -svg chart.svg
//
// Every line of the chart comes from the library, and its stroke says how strong
// the ground under it is. Groups A and B are drawn; C to E follow below with -old,
// or where a carcass of the class belongs there.
//
// The class is the CSV sheet that examples/classday reads: one carcass to a row, as
// package grade/sheet has them. Without a file the program takes an invented class.
// The official placing and its cuts come from -order and -cuts; without them they
// are those of the library's policy.
//
// Results are for teaching and analysis. Only authorized federal graders assign
// official grades.
package main

import (
	_ "embed"
	"errors"
	"flag"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"

	"example.com/ribface/examples/internal/classfile"
	"example.com/ribface/grade"
	"example.com/ribface/placing"
	"example.com/ribface/placing/class"
)

//go:embed class.csv
var invented string

func main() {
	if err := run(os.Args[1:], os.Stdout, os.Stderr); err != nil {
		if !errors.Is(err, flag.ErrHelp) {
			fmt.Fprintln(os.Stderr, "chart:", err)
		}
		os.Exit(1)
	}
}

// classed is a class with its official placing.
type classed struct {
	title    string
	graded   class.Graded
	names    []string // of the exhibits; nil where their number is all
	official placing.Official
}

// name returns what an exhibit is called.
func (c classed) name(exhibit int) string { return classfile.Name(c.names, exhibit) }

func run(args []string, stdout, stderr io.Writer) error {
	edition := grade.Current
	var posted grade.Weight
	var order placing.Order
	var cuts placing.Cuts
	flags := flag.NewFlagSet("chart", flag.ContinueOnError)
	flags.SetOutput(stderr)
	flags.TextVar(&edition, "edition", edition, "`year` of the edition: 1975, 1987, 1997, 2016 or 2017")
	from := flags.String("class", "", "CSV `file` of the class; an invented one without it")
	flags.TextVar(&posted, "posted", posted, "one `weight` for the whole class, as \"800 lb\"")
	flags.TextVar(&order, "order", order, "official `placing`, as 3-1-4-2")
	flags.TextVar(&cuts, "cuts", cuts, "official `cuts`, as 2-5-4")
	old := flags.Bool("old", false, "draw the groups C to E too")
	html := flags.String("html", "", "`file` for the page")
	svg := flags.String("svg", "", "`file` for the grade chart alone")
	if err := flags.Parse(args); err != nil {
		return err
	}
	if *html == "" && *svg == "" {
		*html = "chart.html"
	}
	c, err := load(*from, edition, posted, order, cuts)
	if err != nil {
		return err
	}
	picture := gradeChart(edition, c, *old)
	if *html != "" {
		page, err := write(edition, c, picture)
		if err != nil {
			return err
		}
		if err := save(stdout, *html, page); err != nil {
			return err
		}
	}
	if *svg != "" {
		return save(stdout, *svg, picture)
	}
	return nil
}

// save writes a file and says so.
func save(stdout io.Writer, name string, text []byte) error {
	if err := os.WriteFile(name, text, 0o666); err != nil {
		return err
	}
	_, err := fmt.Fprintf(stdout, "%s written\n", name)
	return err
}

// load reads a class and finds its official placing; an empty path stands for the
// invented class.
func load(path string, e grade.Edition, posted grade.Weight, order placing.Order, cuts placing.Cuts) (classed, error) {
	c := classed{title: "Heifers, practice class 3 (invented)"}
	var text io.Reader = strings.NewReader(invented)
	if path == "" && !order.IsValid() && !cuts.IsValid() {
		order, cuts = placing.MustParseOrder("3-1-4-2"), placing.MustParseCuts("2-5-4")
	}
	if path != "" {
		f, err := os.Open(path)
		if err != nil {
			return c, err
		}
		defer func() { _ = f.Close() }() // it was read only
		text, c.title = f, strings.TrimSuffix(filepath.Base(path), filepath.Ext(path))
	}
	exhibits, names, err := classfile.Read(text)
	if err == nil {
		c.names = names
		c.graded, err = classfile.Grade(exhibits, e, posted)
	}
	if err != nil {
		return c, fmt.Errorf("class: %w", err)
	}
	c.official, err = official(c.graded, order, cuts)
	return c, err
}

// official puts the official placing together; what is not given is that of the
// policy.
func official(g class.Graded, order placing.Order, cuts placing.Cuts) (placing.Official, error) {
	if order.IsValid() && order.Len() != g.Len() {
		return placing.Official{}, fmt.Errorf("-order %s: the class has %d exhibits", order, g.Len())
	}
	if order.IsValid() != cuts.IsValid() {
		return placing.Official{}, errors.New("-order and -cuts go together")
	}
	if !order.IsValid() {
		p, err := g.Place(class.DefaultPolicy())
		if err != nil {
			return placing.Official{}, err
		}
		proposal, err := p.ProposeCuts(p.Order, 0)
		if err != nil {
			return placing.Official{}, err
		}
		order, cuts = p.Order, proposal.Cuts
	}
	return placing.NewOfficial(order, cuts)
}
