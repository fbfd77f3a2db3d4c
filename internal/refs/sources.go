package refs

import (
	"bytes"
	"encoding/csv"
	"fmt"
	"os"
	"path/filepath"
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

// standingOf gives the standing of every source of sources.csv.
func standingOf(dir string) (map[string]string, error) {
	rows, err := sourceRows(dir)
	by := make(map[string]string, len(rows))
	for _, r := range rows {
		by[r.Get("id")] = r.Get("standing")
	}
	return by, err
}
