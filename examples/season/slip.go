package main

import (
	"fmt"
	"sort"

	"example.com/ribface/examples/internal/page"
	"example.com/ribface/examples/internal/say"
	"example.com/ribface/placing/contest"
)

// miss is one thing that a member lost points by.
type miss struct {
	words string
	lost  int64
}

// slip writes the page for one member.
func (r *result) slip(m *member, note string) *page.Page {
	last := r.names[len(r.names)-1]
	p := page.New(m.ID + ": your season")
	if note != "" {
		p.Note(note)
	}
	p.Lead(fmt.Sprintf("You are %s of %d over %s, with %s of %s points.", place(m.rank), len(r.members), say.Count(len(r.names), "contest", "contests"), ofUnits(m.scored), ofUnits(m.of)))
	t := page.Table{Caption: "Your points, of how many", Heads: []string{"part", "season", "of", "last contest", "of"}, Numbers: []int{1, 2, 3, 4}}
	for _, c := range m.parts {
		row := []string{c.name, ofUnits(c.scored).String(), ofUnits(c.of).String(), "", ""}
		if c.lastOf > 0 {
			row[3], row[4] = ofUnits(c.lastScored).String(), ofUnits(c.lastOf).String()
		}
		t.Rows = append(t.Rows, row)
	}
	p.Table(t)
	if told := m.told(); told != nil {
		p.Head("Which way you lean")
		p.List(told...)
	}
	p.Head("What you missed in " + last)
	switch misses := missed(m.last); {
	case m.last == nil:
		p.Say("You handed in no cards.")
	case misses == nil:
		p.Say("Nothing. Every card scored in full.")
	default:
		var items []string
		for i, x := range misses {
			if i == 8 {
				items = append(items, fmt.Sprintf("And %s more.", say.Count(len(misses)-i, "thing", "things")))
				break
			}
			items = append(items, x.words)
		}
		p.List(items...)
	}
	return p
}

// missed lists what was missed, the most costly first, in the order of the cards where
// it cost the same.
func missed(f *contest.Feedback) (out []miss) {
	if f == nil {
		return nil
	}
	add := func(lost int64, format string, args ...any) {
		if lost > 0 {
			out = append(out, miss{fmt.Sprintf(format, args...) + ": " + pointsLost(lost) + ".", lost})
		}
	}
	for _, c := range f.Placings {
		if !c.Card.Order.IsValid() {
			add(units(points(50))-units(c.Scored), "Class %s: no placing that counts", c.Class)
		}
		for _, x := range c.Faults {
			add(units(points(x.Points)), "Class %s: %d goes over %d; you had it the other way", c.Class, x.Upper, x.Lower)
		}
	}
	for _, q := range f.Quality {
		if q.Answer == 0 {
			add(units(q.Lost), "Class %s, exhibit %d: %s; you gave no quality grade that counts", q.Class, q.Exhibit, q.Key)
			continue
		}
		add(units(q.Lost), "Class %s, exhibit %d: %s; you said %s", q.Class, q.Exhibit, q.Key, q.Answer)
	}
	for _, y := range f.Yield {
		if !y.Answer.IsSet() {
			add(units(y.Lost), "Class %s, exhibit %d: yield grade %s; you gave none that counts", y.Class, y.Exhibit, say.Nearest(y.Key))
			continue
		}
		why := ""
		for name := range y.Split.Parts() {
			why = ", most of it by " + name
			break
		}
		add(units(y.Lost), "Class %s, exhibit %d: yield grade %s; you said %s%s", y.Class, y.Exhibit, say.Nearest(y.Key), say.Nearest(y.Answer), why)
	}
	sort.SliceStable(out, func(i, j int) bool { return out[i].lost > out[j].lost })
	return out
}

// pointsLost is a cost in words.
func pointsLost(lost int64) string {
	if p := ofUnits(lost); p == points(1) {
		return "1 point"
	} else {
		return p.String() + " points"
	}
}
