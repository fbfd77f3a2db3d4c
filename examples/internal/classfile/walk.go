package classfile

import (
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"strconv"
	"strings"

	"example.com/ribface/examples/internal/say"
	"example.com/ribface/placing"
	"example.com/ribface/placing/class"
)

// looks reads the second column of a walk, by its name.
var looks = map[string]func(names []string, cell string) (placing.Ranking, error){
	"ranking": func(names []string, cell string) (placing.Ranking, error) {
		numbers, err := Numbers(names, cell)
		if err != nil {
			return placing.Ranking{}, err
		}
		return placing.ParseRanking(numbers)
	},
	"scores": func(_ []string, cell string) (placing.Ranking, error) { return parseScores(cell) },
}

// parseScores reads the scores of the exhibits, that of the first first, with
// spaces between.
func parseScores(s string) (placing.Ranking, error) {
	var scores []int
	for part := range strings.FieldsSeq(s) {
		n, err := strconv.Atoi(part)
		if err != nil {
			return placing.Ranking{}, fmt.Errorf("scores: %q: no whole number; allowed: one score for each exhibit, that of 1 first, as 7 9 7 4", part)
		}
		scores = append(scores, n)
	}
	return placing.RankScores(scores...)
}

// ReadWalk reads the walk over a class of n exhibits: a CSV sheet with the columns
// site and ranking, or site and scores. A site is one of package placing/class. A
// ranking has all exhibits, the fattest or the heaviest muscled first, with an equals
// sign for a tie, as "3 1=2 4"; exhibits may stand there by their names. Scores are a
// whole number for each exhibit, that of the first first, the fattest or the heaviest
// muscled the highest, as "7 7 9 4". All that is wrong is reported at once, with line
// and column.
func ReadWalk(r io.Reader, n int, names []string) (class.Walk, error) {
	in := csv.NewReader(r)
	in.FieldsPerRecord = -1
	header, err := in.Read()
	if err != nil && err != io.EOF {
		return nil, err
	}
	const columns = "the columns are site,ranking or site,scores"
	if len(header) != 2 || header[0] != "site" || looks[header[1]] == nil {
		return nil, errors.New("line 1: " + columns)
	}
	look := header[1]
	var walk class.Walk
	var wrong []error
	for {
		row, err := in.Read()
		if err == io.EOF {
			break
		}
		if err != nil {
			return nil, err
		}
		line, _ := in.FieldPos(0)
		at := func(column int, err error) {
			name := []string{"site", look}[column-1]
			wrong = append(wrong, fmt.Errorf("line %d, column %d (%s): %w", line, column, name, err))
		}
		if len(row) != 2 {
			wrong = append(wrong, fmt.Errorf("line %d: %s; %s", line, say.Count(len(row), "cell", "cells"), columns))
			continue
		}
		site, err := class.ParseSite(row[0])
		if err != nil {
			at(1, err)
			continue
		}
		order, err := looks[look](names, row[1])
		if err != nil {
			at(2, err)
			continue
		}
		longer := append(walk, class.Look{Site: site, Order: order})
		if err := longer.Check(n); err != nil {
			column := 2
			if errors.Is(err, placing.ErrRepeated) {
				column = 1
			}
			at(column, err)
			continue
		}
		walk = longer
	}
	return walk, errors.Join(wrong...)
}
