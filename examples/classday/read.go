package main

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	"example.com/ribface/examples/internal/classfile"
	"example.com/ribface/grade"
	"example.com/ribface/placing"
	"example.com/ribface/placing/class"
	"example.com/ribface/placing/contest"
)

// day is everything that was read.
type day struct {
	title    string
	invented bool
	class    class.Class
	names    []string      // of the exhibits, by number; nil where their number is all
	panel    placing.Panel // of the officials; zero without any
	cards    []contest.PlacingCard
	order    placing.Order // settled by a committee; not set without one
}

// load reads the files, or the invented ones.
func load(s settings) (day, error) {
	d := day{invented: s.classFile == "", title: strings.TrimSuffix(filepath.Base(s.classFile), filepath.Ext(s.classFile))}
	open := func(name string) (fs.File, error) { return os.Open(name) }
	if d.invented {
		d.title = "Bent Fork, beef carcasses (invented)"
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
	if s.order != "" {
		numbers, err := classfile.Numbers(d.names, s.order)
		if err == nil {
			d.order, err = placing.ParseOrder(numbers)
		}
		if err == nil && d.order.Len() != len(d.class.Exhibits) {
			err = fmt.Errorf("the class has %d exhibits", len(d.class.Exhibits))
		}
		if err != nil {
			return day{}, fmt.Errorf("-order %s: %w", s.order, err)
		}
	}
	return d, nil
}

// readClass reads the carcasses. All that is wrong is reported at once.
func (d *day) readClass(r io.Reader) error {
	var err error
	if d.class.Exhibits, d.names, err = classfile.Read(r); err != nil {
		return err
	}
	_, err = d.class.Grade()
	return err
}

// readWalk reads the sites with their rankings or scores.
func (d *day) readWalk(r io.Reader) (err error) {
	d.class.Walk, err = classfile.ReadWalk(r, len(d.class.Exhibits), d.names)
	return err
}

// readOfficials reads one vote to a row.
func (d *day) readOfficials(r io.Reader) error {
	r, err := classfile.NumberPlacings(d.names, r)
	if err != nil {
		return err
	}
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
	d.panel, err = placing.NewPanel(votes...)
	return err
}

// readCards reads the placing cards and holds their size to the class.
func (d *day) readCards(r io.Reader) error {
	r, err := classfile.NumberPlacings(d.names, r)
	if err != nil {
		return err
	}
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
