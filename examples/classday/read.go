package main

import (
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"strconv"
	"strings"

	"example.com/ribface/grade"
	"example.com/ribface/grade/sheet"
	"example.com/ribface/placing"
	"example.com/ribface/placing/class"
	"example.com/ribface/placing/contest"
)

// day is everything that was read.
type day struct {
	invented bool
	class    class.Class
	names    []string      // of the exhibits, by number; nil where their number is all
	panel    placing.Panel // of the officials; zero without any
	cards    []contest.PlacingCard
}

// load reads the files, or the invented ones.
func load(s settings) (day, error) {
	d := day{invented: s.classFile == ""}
	open := func(name string) (fs.File, error) { return os.Open(name) }
	if d.invented {
		open = invented.Open
		s.classFile, s.walkFile, s.officialsFile, s.cardsFile = "class.csv", "walk.csv", "officials.csv", "cards.csv"
		if !s.posted.IsSet() {
			s.posted = grade.Pounds(800)
		}
	}
	// each reads one file and puts its name before what is wrong in it.
	each := func(name string, read func(io.Reader) error) error {
		if name == "" {
			return nil
		}
		f, err := open(name)
		if err != nil {
			return err
		}
		defer func() { _ = f.Close() }() // it was read only
		if err := read(f); err != nil {
			return fmt.Errorf("%s: %w", name, err)
		}
		return nil
	}
	d.class = class.Class{Rules: grade.Rules{Edition: s.edition}, Posted: s.posted}
	if err := each(s.classFile, d.readClass); err != nil {
		return day{}, err
	}
	if err := each(s.walkFile, d.readWalk); err != nil {
		return day{}, err
	}
	if err := each(s.officialsFile, d.readOfficials); err != nil {
		return day{}, err
	}
	if err := each(s.cardsFile, d.readCards); err != nil {
		return day{}, err
	}
	return d, nil
}

// readClass reads the carcasses. All that is wrong is reported at once.
func (d *day) readClass(r io.Reader) error {
	rows, err := sheet.NewReader(r)
	if err != nil {
		return err
	}
	var wrong []error
	var ids []string
	numbered := true
	for row, err := range rows.Rows() {
		if err != nil {
			wrong = append(wrong, err)
			continue
		}
		n, err := strconv.Atoi(row.ID)
		numbered = numbered && err == nil
		ids = append(ids, row.ID)
		d.class.Exhibits = append(d.class.Exhibits, class.Exhibit{Number: n, Carcass: row.Carcass})
	}
	if wrong != nil {
		return errors.Join(wrong...)
	}
	if !numbered {
		d.names = ids
		for i := range d.class.Exhibits {
			d.class.Exhibits[i].Number = i + 1
		}
	}
	_, err = d.class.Grade()
	return err
}

// at puts line, column and name of a cell before what is wrong with it.
func at(line, column int, name string, err error) error {
	return fmt.Errorf("line %d, column %d (%s): %w", line, column, name, err)
}

// looks reads the second column of a walk, by its name.
var looks = map[string]func(string) (class.Ranking, error){"ranking": class.ParseRanking, "scores": parseScores}

// parseScores reads the scores of the exhibits, that of 1 first, with spaces
// between.
func parseScores(s string) (class.Ranking, error) {
	var scores []int
	for part := range strings.FieldsSeq(s) {
		n, err := strconv.Atoi(part)
		if err != nil {
			return class.Ranking{}, fmt.Errorf("scores: %q: no whole number; allowed: one score for each exhibit, that of 1 first, as 7 9 7 4", part)
		}
		scores = append(scores, n)
	}
	return class.RankScores(scores...)
}

// readWalk reads the sites with their rankings or scores.
func (d *day) readWalk(r io.Reader) error {
	in := csv.NewReader(r)
	in.FieldsPerRecord = -1
	header, err := in.Read()
	if err != nil && err != io.EOF {
		return err
	}
	const columns = "the columns are site,ranking or site,scores"
	if len(header) != 2 || header[0] != "site" || looks[header[1]] == nil {
		return errors.New("line 1: " + columns)
	}
	look := header[1]
	var wrong []error
	for {
		row, err := in.Read()
		if err == io.EOF {
			break
		}
		if err != nil {
			return err
		}
		line, _ := in.FieldPos(0)
		if len(row) != 2 {
			wrong = append(wrong, fmt.Errorf("line %d: %s; %s", line, count(len(row), "cell", "cells"), columns))
			continue
		}
		site, err := class.ParseSite(row[0])
		if err != nil {
			wrong = append(wrong, at(line, 1, "site", err))
			continue
		}
		order, err := looks[look](row[1])
		if err != nil {
			wrong = append(wrong, at(line, 2, look, err))
			continue
		}
		walk := append(d.class.Walk, class.Look{Site: site, Order: order})
		if err := walk.Check(len(d.class.Exhibits)); err != nil {
			column, name := 2, look
			if errors.Is(err, placing.ErrRepeated) {
				column, name = 1, "site"
			}
			wrong = append(wrong, at(line, column, name, err))
			continue
		}
		d.class.Walk = walk
	}
	return errors.Join(wrong...)
}

// readOfficials reads one vote to a row.
func (d *day) readOfficials(r io.Reader) error {
	var wrong []error
	var votes []placing.Vote
	for row, err := range contest.OfficialSheet().Read(r) {
		if err == nil && row.Order.Len() != len(d.class.Exhibits) {
			err = fmt.Errorf("official %d: %s places %d exhibits; the class has %d", len(votes)+1, row.Order, row.Order.Len(), len(d.class.Exhibits))
		}
		if err != nil {
			wrong = append(wrong, err)
			continue
		}
		votes = append(votes, placing.Vote{Order: row.Order, Cuts: row.Cuts})
	}
	if wrong != nil {
		return errors.Join(wrong...)
	}
	var err error
	d.panel, err = placing.NewPanel(votes...)
	return err
}

// readCards reads the placing cards and holds their size to the class.
func (d *day) readCards(r io.Reader) error {
	var wrong []error
	for card, err := range contest.PlacingSheet().Read(r) {
		if err != nil {
			wrong = append(wrong, err)
			continue
		}
		if o := card.Card.Order; o.IsValid() && o.Len() != len(d.class.Exhibits) {
			wrong = append(wrong, fmt.Errorf("card of %s: %s places %d exhibits; the class has %d", card.Member.ID, o, o.Len(), len(d.class.Exhibits)))
			continue
		}
		d.cards = append(d.cards, card)
	}
	return errors.Join(wrong...)
}
