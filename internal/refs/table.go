package refs

import (
	"fmt"
	"strings"
)

// The marks between which the count stands in the README.
const (
	Begin = "<!-- conformance:begin -->"
	End   = "<!-- conformance:end -->"
)

// count is one line of the table.
type count struct {
	name, standing      string
	rows, derived       int
	agree, near, differ int
}

func (c *count) add(r Result) {
	c.rows++
	if r.Row.Get("standing") == "derived" {
		c.derived++
	}
	switch r.Verdict {
	case Agrees:
		c.agree++
	case Rounding:
		c.near++
	default:
		c.differ++
	}
}

// Table counts the rows in the folder by what they declare, which the tests that check
// them hold. It gives the count of all rows in one line, for the README, and the page of testdata/conformance.md, which counts the rows by their
// first source, federal sources first, in the order of sources.csv; rows without a
// source stand at the end, by standing. A row that no test checks is an error.
func Table(dir string) (line, page string, err error) {
	order, err := sourceRows(dir)
	if err != nil {
		return "", "", err
	}
	var lines []*count
	by := map[string]*count{}
	start := func(key, name, standing string) {
		by[key] = &count{name: name, standing: standing}
		lines = append(lines, by[key])
	}
	for _, want := range standings[:3] {
		for _, s := range order {
			if s.Get("standing") == want {
				start(s.Get("id"), "`"+s.Get("id")+"`", want)
			}
		}
	}
	for _, s := range standings[2:] {
		start("none "+s, "no source", s)
	}
	total := count{name: "**total**"}
	var differ strings.Builder
	for _, f := range files {
		results, err := f.Claim(dir)
		if err != nil {
			return "", "", err
		}
		for _, r := range results {
			if r.Err != nil {
				return "", "", r.Err
			}
			key := "none " + r.Row.Get("standing")
			if ids := r.Row.Sources(); len(ids) > 0 {
				key = ids[0]
			}
			by[key].add(r)
			if r.Verdict == Differs {
				fmt.Fprintf(&differ, "- `%s` line %d, %s: %s%s\n", f.Name, r.Row.Line, r.Row.Get("source_id"), r.Row.difference(), r.Row.Get("note"))
			}
			total.add(r)
		}
	}
	counted := fmt.Sprintf("%d rows of %d files in `testdata/references`, each checked by a test: %d agree, %d within the rounding of what is printed, %d differ and are kept with the reason", total.rows, len(files), total.agree, total.near, total.differ)
	var b strings.Builder
	b.WriteString("# Checked against\n\nWritten by `go generate ./internal/refs`; do not edit.\n\n" + counted + ".\n\n")
	b.WriteString("A row with several sources counts for the first. Derived rows are worked out from the source and not printed in it. Sources without a row ground rules and not figures. `references/README.md` says what the columns of the files and the standings mean.\n\n## Source by source\n\n")
	b.WriteString("| source | standing | rows checked | of these derived | agree | within rounding | differ, explained |\n|---|---|---:|---:|---:|---:|---:|\n")
	for _, c := range append(lines, &total) {
		if c.rows > 0 {
			fmt.Fprintf(&b, "| %s | %s | %d | %d | %d | %d | %d |\n", c.name, c.standing, c.rows, c.derived, c.agree, c.near, c.differ)
		}
	}
	b.WriteString("\n## Rows that differ, and why\n\n")
	b.WriteString(differ.String())
	return counted + " ([source by source](testdata/conformance.md)).\n", b.String(), nil
}

// difference says by how much a row is off, where it has the figures.
func (r Row) difference() string {
	for _, stated := range []string{"stated", "stated_yield_grade", "value"} {
		if r.Has(stated) && r.Has("difference") {
			return "stated " + r.Get(stated) + ", off by " + r.Get("difference") + "; "
		}
	}
	if r.Has("difference_days") {
		return "off by " + r.Get("difference_days") + " days; "
	}
	return ""
}

// Place puts the count between the marks of the text.
func Place(text, count string) (string, error) {
	before, rest, ok := strings.Cut(text, Begin+"\n")
	if !ok {
		return "", fmt.Errorf("no line %s", Begin)
	}
	_, after, ok := strings.Cut(rest, End)
	if !ok {
		return "", fmt.Errorf("no line %s after %s", End, Begin)
	}
	return before + Begin + "\n" + count + End + after, nil
}
