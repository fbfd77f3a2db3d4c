package main

import (
	"bytes"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"example.com/ribface/placing/contest"
)

// sheets is what the sheets hold.
type sheets struct {
	placings  []contest.PlacingCard
	estimates []contest.Estimate
	scores    []contest.HandScore
	officials []contest.OfficialPlacing
	facts     []contest.OfficialFacts
}

// files are the sheets as text, by the names below.
type files [5][]byte

var sheetNames = [len(files{})]string{"placings.csv", "estimates.csv", "scores.csv", "officials.csv", "facts.csv"}

// write turns a season into sheets.
func (s sheets) write() (f files, err error) {
	return f, errors.Join(
		write(&f[0], contest.PlacingSheet(), s.placings),
		write(&f[1], contest.EstimateSheet(), s.estimates),
		write(&f[2], contest.HandSheet(), s.scores),
		write(&f[3], contest.OfficialSheet(), s.officials),
		write(&f[4], contest.KeySheet(), s.facts),
	)
}

func write[T any](to *[]byte, sheet contest.Sheet[T], rows []T) error {
	var b bytes.Buffer
	err := sheet.Write(&b, slices.Values(rows))
	*to = b.Bytes()
	return err
}

// read turns sheets into a season. Every row that cannot be read is named.
func (f files) read() (s sheets, err error) {
	return s, errors.Join(
		read(sheetNames[0], f[0], contest.PlacingSheet(), &s.placings),
		read(sheetNames[1], f[1], contest.EstimateSheet(), &s.estimates),
		read(sheetNames[2], f[2], contest.HandSheet(), &s.scores),
		read(sheetNames[3], f[3], contest.OfficialSheet(), &s.officials),
		read(sheetNames[4], f[4], contest.KeySheet(), &s.facts),
	)
}

func read[T any](name string, text []byte, sheet contest.Sheet[T], to *[]T) error {
	if text == nil {
		return nil // not there
	}
	var errs []error
	for row, err := range sheet.Read(bytes.NewReader(text)) {
		if err != nil {
			errs = append(errs, fmt.Errorf("%s: %w", name, err))
			continue
		}
		*to = append(*to, row)
	}
	return errors.Join(errs...)
}

// save writes the sheets to a directory.
func (f files) save(dir string) error {
	for i, name := range sheetNames {
		if err := os.WriteFile(filepath.Join(dir, name), f[i], 0o666); err != nil {
			return err
		}
	}
	return nil
}

// load reads the sheets of a directory. One that is not there is left out, as for a
// season without reasons.
func load(dir string) (f files, err error) {
	found := false
	for i, name := range sheetNames {
		text, err := os.ReadFile(filepath.Join(dir, name))
		switch {
		case err == nil:
			f[i], found = text, true
		case !errors.Is(err, fs.ErrNotExist):
			return files{}, err
		}
	}
	if !found {
		return files{}, fmt.Errorf("%s: none of the sheets %s is there", dir, strings.Join(sheetNames[:], ", "))
	}
	return f, nil
}
