// Command chart draws two pictures as SVG: the grade chart of an edition with a
// class plotted on it, and the score of every possible card of the class.
//
//	go run ./examples/chart -edition 1987 -chart chart.svg -scores scores.svg
//	go run ./examples/chart -class myclass.json
//
// Every line of the chart comes from the library, and its stroke says how strong
// the ground under it is. The class is read from JSON; without a file the program
// draws an invented one.
package main

import (
	_ "embed"
	"encoding/json"
	"errors"
	"flag"
	"fmt"
	"io"
	"os"
	"strings"

	"example.com/ribface/grade"
	"example.com/ribface/placing"
)

// Class is what the pictures are drawn from.
type Class struct {
	Name     string
	Official placing.Official
	Exhibits []grade.Carcass
}

//go:embed class.json
var invented string

func main() {
	if err := run(os.Args[1:], os.Stderr); err != nil {
		if !errors.Is(err, flag.ErrHelp) {
			fmt.Fprintln(os.Stderr, "chart:", err)
		}
		os.Exit(1)
	}
}

func run(args []string, stderr io.Writer) error {
	edition := grade.Current
	flags := flag.NewFlagSet("chart", flag.ContinueOnError)
	flags.SetOutput(stderr)
	flags.TextVar(&edition, "edition", edition, "`year` of the edition: 1975, 1987, 1997, 2016 or 2017")
	from := flags.String("class", "", "JSON `file` of the class; an invented one without it")
	chart := flags.String("chart", "chart.svg", "`file` for the grade chart")
	scores := flags.String("scores", "scores.svg", "`file` for the score table")
	if err := flags.Parse(args); err != nil {
		return err
	}
	class, err := load(*from)
	if err != nil {
		return err
	}
	picture, err := gradeChart(edition, class)
	if err != nil {
		return err
	}
	table, err := scoreTable(class)
	if err != nil {
		return err
	}
	return errors.Join(os.WriteFile(*chart, picture, 0o666), os.WriteFile(*scores, table, 0o666))
}

// load reads a class; an empty path stands for the invented one.
func load(path string) (Class, error) {
	text := invented
	if path != "" {
		b, err := os.ReadFile(path)
		if err != nil {
			return Class{}, err
		}
		text = string(b)
	}
	var c Class
	d := json.NewDecoder(strings.NewReader(text))
	d.DisallowUnknownFields()
	if err := d.Decode(&c); err != nil {
		return Class{}, fmt.Errorf("class: %w", err)
	}
	if n := c.Official.Order().Len(); n != len(c.Exhibits) {
		return Class{}, fmt.Errorf("class: the official placing has %d exhibits, the class %d", n, len(c.Exhibits))
	}
	return c, nil
}
