// Package refs holds the library against the published references under
// testdata/references, row by row.
//
// Every file of that folder is registered in [Files] with the package whose
// TestReferences checks its rows, or with the name of another test that does. Each row
// is checked there, beside the code it speaks of, and nowhere else. A row says
// where it comes from (source_id, standing) and, in its column agrees, how far it
// fits: yes, within the rounding of what is printed, or no. A row that does not
// fit stays in the file, with its difference, and the check asserts that
// difference to the last digit.
package refs

import (
	"bytes"
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"slices"
	"strings"
)

//go:generate go run ./gen

// Verdict says how a row fits the library.
type Verdict uint8

// The verdicts.
const (
	Agrees   Verdict = 1 + iota // equal at the printed digits
	Rounding                    // different, within what the rounding of the printed figures allows
	Differs                     // neither; kept and explained
)

func (v Verdict) String() string {
	return [...]string{"unset", "yes", "rounding", "no"}[v]
}

// verdict reads the column agrees. A file without the column agrees throughout.
func verdict(s string) (Verdict, error) {
	switch s {
	case "yes", "":
		return Agrees, nil
	case "rounding":
		return Rounding, nil
	case "no":
		return Differs, nil
	}
	return 0, fmt.Errorf("agrees: %q is none of yes, rounding, no", s)
}

// Row is one row of a reference file.
type Row struct {
	File   string
	Line   int
	table  *table
	fields []string
}

type table struct {
	names []string
	rows  []Row
}

// Get returns the field under a heading. It panics for a heading that the file
// does not have: that is a fault of the check, not of the row.
func (r Row) Get(name string) string {
	i := slices.Index(r.table.names, name)
	if i < 0 {
		panic("conformance: " + r.File + " has no column " + name)
	}
	return r.fields[i]
}

// Has reports whether the file has the heading.
func (r Row) Has(name string) bool { return slices.Contains(r.table.names, name) }

// All returns every row of the same file.
func (r Row) All() []Row { return r.table.rows }

// Sources returns the ids of the sources of the row; none for a row without.
func (r Row) Sources() []string {
	return idsOf(r.Get("source_id"))
}

func idsOf(source string) []string {
	if source == "none" {
		return nil
	}
	return strings.Fields(source)
}

// Declared returns what the row says of its own fit.
func (r Row) Declared() (Verdict, error) {
	if !r.Has("agrees") {
		return Agrees, nil
	}
	return verdict(r.Get("agrees"))
}

// Read reads a file of references.
func Read(dir, name string) ([]Row, error) {
	text, err := os.ReadFile(filepath.Join(dir, name))
	if err != nil {
		return nil, err
	}
	c := csv.NewReader(bytes.NewReader(text))
	var t table
	for {
		fields, err := c.Read()
		if err == io.EOF {
			break
		}
		if err != nil {
			return nil, fmt.Errorf("%s: %w", name, err)
		}
		if t.names == nil {
			t.names = fields
			continue
		}
		line, _ := c.FieldPos(0)
		t.rows = append(t.rows, Row{name, line, &t, fields})
	}
	if len(t.rows) == 0 {
		return nil, fmt.Errorf("%s: no rows", name)
	}
	for _, need := range []string{"source_id", "standing"} {
		if !slices.Contains(t.names, need) {
			return nil, fmt.Errorf("%s: no column %s", name, need)
		}
	}
	return t.rows, nil
}

// standings are the standings from the strongest to the weakest.
var standings = []string{"official", "published", "common-practice", "memory", "derived"}

// Ground checks where a figure comes from: ids of sources that sources.csv of the folder
// has, with blanks between, or none, and a standing that is not stronger than the weakest
// of them. A figure without a source may only be memory, common practice or derived.
func Ground(dir, ids, standing string) error {
	known, err := standingOf(dir)
	if err != nil {
		return err
	}
	return ground(known, ids, standing)
}

func ground(sources map[string]string, source, stated string) error {
	standing := slices.Index(standings, stated)
	if standing < 0 {
		return fmt.Errorf("standing %q is none of %s", stated, strings.Join(standings, ", "))
	}
	ids := idsOf(source)
	if len(ids) == 0 && standing < slices.Index(standings, "common-practice") {
		return fmt.Errorf("standing %s without a source", standings[standing])
	}
	for _, id := range ids {
		of, ok := sources[id]
		if !ok {
			return fmt.Errorf("source %q is not in sources.csv", id)
		}
		if standing < slices.Index(standings, of) {
			return fmt.Errorf("standing %s is stronger than that of %s, %s", standings[standing], id, of)
		}
	}
	return nil
}

// Result is one row with its verdict.
type Result struct {
	Row     Row
	Verdict Verdict
	Err     error // the row is not as it says, or the library is not as the row says
}

// Claim takes every row of a file in the folder as it declares itself: its
// ground holds, a test checks it, and a row that differs says why. The check itself is not
// run here but by the test that claims the row, which fails where it finds another
// verdict; see [Run].
func (f File) Claim(dir string) ([]Result, error) {
	rows, err := Read(dir, f.Name)
	if err != nil {
		return nil, err
	}
	known, err := standingOf(dir)
	if err != nil {
		return nil, err
	}
	out := make([]Result, len(rows))
	for i, r := range rows {
		verdict, err := r.Declared()
		out[i] = Result{Row: r, Verdict: verdict}
		if f.Room == "" && !slices.ContainsFunc(f.elsewhere, func(t Test) bool { return t.covers(r) }) {
			err = errors.Join(err, errors.New("no test checks the row"))
		}
		if verdict == Differs && r.Get("note") == "" {
			err = errors.Join(err, errors.New("differs without a reason"))
		}
		out[i].fail(errors.Join(ground(known, r.Get("source_id"), r.Get("standing")), err))
	}
	return out, nil
}

// verify runs the check of every row, which must find what the row declares.
func (f File) verify(dir string, check Check) ([]Result, error) {
	out, err := f.Claim(dir)
	if err != nil {
		return nil, err
	}
	for i, r := range out {
		if r.Err != nil {
			continue
		}
		found, err := check(r.Row)
		if err == nil && found != r.Verdict {
			err = fmt.Errorf("agrees: found %v, the row says %v", found, r.Verdict)
		}
		out[i].fail(err)
	}
	return out, nil
}

func (r *Result) fail(err error) {
	if err != nil {
		r.Err = fmt.Errorf("%s:%d: %w", r.Row.File, r.Row.Line, err)
	}
}

// Same fails when what was found is not what the row says.
func Same[T comparable](what string, got, want T) error {
	if got == want {
		return nil
	}
	return fmt.Errorf("%s: the library has %v, the row %v", what, got, want)
}
