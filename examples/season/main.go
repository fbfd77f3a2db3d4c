// Command season follows the members of two invented teams through a season of
// eight contests. It prints a page for the coach: who stands where, who leans which
// way, what the team misses most, and the hardest pairs. With -member it prints the
// page for one member.
//
//	go run ./examples/season
//	go run ./examples/season -member N3
//	go run ./examples/season -html pages
//	go run ./examples/season -stats
//	go run ./examples/season -seed 12 -cards sheets
//
// # What goes in
//
// Every card goes through CSV sheets as package placing/contest reads them, so that a
// coach can put in sheets of his own: -cards DIR writes those of the season there,
// and -from DIR reads them instead of inventing any. The sheets are placings.csv,
// estimates.csv, scores.csv (of reasons), and the keys officials.csv and facts.csv.
// A sheet that is not there is left out. Contests are taken in order of name, so
// that a date at the start of it puts them in order of time.
//
// # What comes out
//
// Plain words; -stats adds bias, spread, correlation, kappa and the rest. -html DIR
// writes coach.html and a page for each member, each one file that prints. -svg FILE
// draws each member's bias in yield over time.
//
// # Invented
//
// No member, team or carcass is real. Carcasses come from package practice; each
// member sees them with a lean and a scatter of his own, and the lean wears off over
// the season. The points are numbers of our own.
// The same seed gives the same bytes on every machine.
//
// Results are for teaching and analysis. Only authorized federal graders assign
// official grades.
package main

import (
	"errors"
	"flag"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"example.com/ribface/examples/internal/say"
	"example.com/ribface/placing/season"
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
	id := flags.String("member", "", "`id` of the member whose page is printed; the coach's without it")
	stats := flags.Bool("stats", false, "add the statistics")
	html := flags.String("html", "", "`directory` for the pages; it must exist")
	picture := flags.String("svg", "", "`file` for the drawing of each member's bias in yield")
	to := flags.String("cards", "", "`directory` to write the sheets to; it must exist")
	from := flags.String("from", "", "`directory` to read the sheets from instead of inventing any")
	if err := flags.Parse(args); err != nil {
		return err
	}
	if flags.NArg() > 0 {
		return fmt.Errorf("%q: no arguments are taken, only flags", flags.Arg(0))
	}
	note := invented
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
	r, err := s.result()
	if err != nil {
		return err
	}
	figures := ""
	if *stats {
		if figures, err = s.statistics(r); err != nil {
			return err
		}
	}
	if *picture != "" {
		if err := os.WriteFile(*picture, draw(r.members, len(r.names)), 0o666); err != nil {
			return err
		}
	}
	if *html != "" {
		return r.save(stdout, *html, note, figures)
	}
	text := r.coach(note)
	if *id != "" {
		m := r.find(*id)
		if m == nil {
			return fmt.Errorf("member %q has no cards in the season; there are: %s", *id, strings.Join(r.ids(), ", "))
		}
		text = r.slip(m, note)
		if *stats {
			figures = m.figures.String()
		}
	}
	out := text.Text()
	if figures != "" {
		out += "\n" + figures
	}
	_, err = io.WriteString(stdout, out)
	return err
}

// find returns a member, or nil.
func (r *result) find(id string) *member {
	for _, m := range r.members {
		if m.ID == id {
			return m
		}
	}
	return nil
}

// ids lists the members in order of rank.
func (r *result) ids() (out []string) {
	for _, m := range r.members {
		out = append(out, m.ID)
	}
	return out
}

// drawn reports whether there is a figure to draw of the member.
func (m *member) drawn() bool {
	return slices.ContainsFunc(m.bias, func(f season.Figure) bool { return f.OK() })
}

// save writes the pages, the coach's with the names of the others.
func (r *result) save(stdout io.Writer, dir, note, figures string) error {
	write := func(name string, text []byte) error { return os.WriteFile(filepath.Join(dir, name), text, 0o666) }
	var links [][2]string
	for i, m := range r.members {
		p := r.slip(m, note)
		if m.drawn() {
			p.Head("Your yield grades, contest by contest")
			p.Figure(draw([]*member{m}, len(r.names)), drawn)
		}
		p.Words("placing", "quality grade", "yield grade", "marbling", "fat", "ribeye", "KPH", "reasons")
		if figures != "" {
			p.Fold("The statistics", func() { p.Pre(m.figures.String()) })
		}
		name := fmt.Sprintf("member-%d.html", i+1)
		if err := write(name, p.HTML()); err != nil {
			return err
		}
		links = append(links, [2]string{m.ID, name})
	}
	p := r.coach(note)
	p.Head("A page for each member")
	p.Links(links...)
	p.Words("placing", "quality grade", "yield grade", "marbling", "fat", "ribeye", "KPH", "reasons")
	if slices.ContainsFunc(r.members, (*member).drawn) {
		p.Fold("The drawing of yield grades, contest by contest", func() { p.Figure(draw(r.members, len(r.names)), drawn) })
	}
	if figures != "" {
		p.Fold("The statistics", func() { p.Pre(figures) })
	}
	if err := write("coach.html", p.HTML()); err != nil {
		return err
	}
	_, err := fmt.Fprintf(stdout, "%s and %s written\n", filepath.Join(dir, "coach.html"), say.Count(len(links), "member's page", "members' pages"))
	return err
}

// drawn explains the drawing.
const drawn = "Estimate less official yield grade: over the middle line is too high. The shade holds about two thirds of the estimates of a contest."

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
