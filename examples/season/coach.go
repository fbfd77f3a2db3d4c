package main

import (
	"fmt"
	"sort"
	"strings"

	"example.com/ribface/examples/internal/page"
	"example.com/ribface/examples/internal/say"
)

// invented stands on every page of an invented season.
const invented = "Invented: no member, team or carcass is real."

// percent is a share in whole percent, to the nearest.
func percent(part, whole int64) int64 {
	if whole == 0 {
		return 0
	}
	return (200*part/whole + 1) / 2
}

// place gives a rank, as "3rd".
func place(n int) string {
	end := "th"
	if n%100 < 11 || n%100 > 13 {
		switch n % 10 {
		case 1:
			end = "st"
		case 2:
			end = "nd"
		case 3:
			end = "rd"
		}
	}
	return fmt.Sprint(n, end)
}

// coach writes the page for the coach: who stands where, who leans which way, what
// the team misses most, and the hardest pairs.
func (r *result) coach(note string) *page.Page {
	last := r.names[len(r.names)-1]
	p := page.New("The season so far: " + say.Count(len(r.names), "contest", "contests"))
	if note != "" {
		p.Note(note)
	}
	lead := fmt.Sprintf("%s leads with %s points.", r.members[0].ID, ofUnits(r.members[0].scored))
	if missed := r.mostMissed(); len(missed) > 0 {
		lead += fmt.Sprintf(" The members lose most in %s.", missed[0].name)
	}
	p.Lead(lead)
	p.Head("Who stands where")
	t := page.Table{
		Caption: "Points of the season and of " + last,
		Heads:   []string{"rank", "member", "team", "season", "last"},
		Numbers: []int{3, 4},
	}
	for _, m := range r.members {
		row := []string{fmt.Sprint(m.rank), m.ID, m.Team, ofUnits(m.scored).String(), ""}
		if m.lastRank > 0 {
			row[4] = m.lastTotal.String()
		}
		t.Rows = append(t.Rows, row)
	}
	p.Table(t)
	if len(r.teams) > 1 {
		var teams []string
		for _, team := range r.teams {
			teams = append(teams, fmt.Sprintf("%s %s", team.Team, team.Total))
		}
		p.Say("Teams in " + last + ", the best three counting: " + say.And(teams...) + ".")
	}
	r.leans(p)
	r.misses(p)
	if pairs := r.hardest(5); len(pairs) > 0 {
		p.Head("The hardest pairs")
		var items []string
		for _, h := range pairs {
			items = append(items, fmt.Sprintf("%s, %s: %d over %d reversed on %d of %s, %s.", h.contest, h.class, h.upper, h.lower, h.reversed, say.Count(h.cards, "card", "cards"), say.Count(h.points, "point", "points")))
		}
		p.List(items...)
	}
	return p
}

// leans writes who leans which way.
func (r *result) leans(p *page.Page) {
	t := page.Table{
		Caption: "Mean error of each member",
		Heads:   []string{"member", "marbling", "fat", "ribeye", "KPH", "yield"},
		Numbers: []int{1, 2, 3, 4, 5},
	}
	any := false
	for _, m := range r.members {
		cells := m.cells()
		any = any || strings.Join(cells, "") != ""
		t.Rows = append(t.Rows, append([]string{m.ID}, cells...))
	}
	if !any {
		return
	}
	p.Head("Who leans which way")
	p.Table(t)
	p.Note("Mean error, + too much and - too little: marbling in hundredths of a degree, fat in inches, ribeye in square inches, KPH in percent, yield in grades. \"True\" is no lean to speak of.")
}

// lost is what was lost in a component.
func (c component) lost() int64 { return c.of - c.scored }

// mostMissed lists the components in which points were lost, the greatest share
// first.
func (r *result) mostMissed() []component {
	parts := only(r.missed, func(c component) bool { return c.lost() != 0 })
	sort.SliceStable(parts, func(i, j int) bool { return parts[i].lost()*parts[j].of > parts[j].lost()*parts[i].of })
	return parts
}

// misses writes what the team misses most.
func (r *result) misses(p *page.Page) {
	p.Head("What is missed most")
	var items []string
	for _, c := range r.mostMissed() {
		line := fmt.Sprintf("%s: %d of 100 points lost", c.name, percent(c.lost(), c.of))
		if behind := c.words(); behind != "" {
			line += "; " + behind
		}
		items = append(items, line+".")
	}
	if items == nil {
		p.Say("Nothing: every card scored in full.")
	}
	p.List(items...)
}

// words say what stands behind the points lost, most often first.
func (c component) words() string {
	type cause struct {
		name string
		n    int
	}
	var causes []cause
	total := 0
	for name, n := range c.behind {
		causes = append(causes, cause{name, n})
		total += n
	}
	sort.Slice(causes, func(i, j int) bool {
		if causes[i].n != causes[j].n {
			return causes[i].n > causes[j].n
		}
		return causes[i].name < causes[j].name
	})
	var words []string
	for _, x := range causes {
		words = append(words, fmt.Sprintf("%s in %d", x.name, x.n))
	}
	if words == nil {
		return ""
	}
	return fmt.Sprintf("of %s, %s", say.Count(total, "miss", "misses"), say.And(words...))
}
