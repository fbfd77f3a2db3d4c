package refs

import (
	"bytes"
	"encoding/csv"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"slices"

	"example.com/ribface/maturity/cite"
)

// sourceRows reads sources.csv, whose first column is id in place of source_id.
func sourceRows(dir string) ([]Row, error) {
	const name = "sources.csv"
	text, err := os.ReadFile(filepath.Join(dir, name))
	if err != nil {
		return nil, err
	}
	all, err := csv.NewReader(bytes.NewReader(text)).ReadAll()
	if err != nil {
		return nil, fmt.Errorf("%s: %w", name, err)
	}
	t := table{names: all[0]}
	for i, fields := range all[1:] {
		t.rows = append(t.rows, Row{name, i + 2, &t, fields})
	}
	return t.rows, nil
}

// Sources checks that package cite has every source of sources.csv, as it stands
// there, once, and no other.
func Sources(dir string) error {
	rows, err := sourceRows(dir)
	if err != nil {
		return err
	}
	seen := map[string]bool{}
	for _, r := range rows {
		id := r.Get("id")
		if seen[id] {
			err = errors.Join(err, fmt.Errorf("%s:%d: %s stands twice", r.File, r.Line, id))
		}
		seen[id] = true
		s, ok := cite.Lookup(id)
		if !ok {
			err = errors.Join(err, fmt.Errorf("%s:%d: %s is not in package cite; run go generate", r.File, r.Line, id))
			continue
		}
		want := [...]string{r.Get("title"), r.Get("issuer"), r.Get("date"), r.Get("url"), r.Get("standing")}
		if got := [...]string{s.Title, s.Issuer, s.Date, s.URL, s.Standing.String()}; got != want {
			err = errors.Join(err, fmt.Errorf("%s:%d: package cite has %q; run go generate", r.File, r.Line, got))
		}
	}
	return errors.Join(err, same("sources", len(slices.Collect(cite.Sources())), len(rows)))
}
