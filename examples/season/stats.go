package main

import (
	"fmt"
	"slices"
	"strings"

	"example.com/ribface/examples/internal/say"
	"example.com/ribface/placing"
	"example.com/ribface/placing/contest"
	"example.com/ribface/placing/season"
)

// statistics returns the calibration of every member, the placing classes and the
// agreement between members, for those who want figures.
func (s sheets) statistics(r *result) (string, error) {
	var b strings.Builder
	fmt.Fprintf(&b, "== Calibration over %s\n\n", say.Count(len(r.names), "contest", "contests"))
	for _, id := range r.whole.Members() {
		c, _ := r.whole.Calibration(id)
		b.WriteString(c.String())
	}
	if r.classes != "" {
		fmt.Fprintf(&b, "\n== The classes: cuts, and the share that reversed each pair of neighbors\n\n%s", r.classes)
	}
	err := s.agreement(&b)
	return b.String(), err
}

// follow writes how the placing classes of a contest went.
func follow(b *strings.Builder, name string, c *contest.Contest, standings contest.Standings, officials []contest.OfficialPlacing, placings []contest.PlacingCard) error {
	total := map[string]contest.Points{}
	for _, m := range standings.Members {
		total[m.Member.ID] = m.Total
	}
	officials = slices.Clone(officials)
	slices.SortFunc(officials, func(a, b contest.OfficialPlacing) int { return strings.Compare(a.Class, b.Class) })
	for _, key := range officials {
		o, _ := c.Official(key.Class)
		class := season.NewClassCards(o)
		for _, p := range placings {
			if p.Class != key.Class || !p.Card.Order.IsValid() {
				continue
			}
			item, err := c.Placing(p)
			if err != nil {
				return err
			}
			if err := class.Add(p.Card.Order, total[p.Member.ID].Sub(item.Points)); err != nil {
				return err
			}
		}
		fmt.Fprintf(b, "%s, %s: %v; difficulty %s, discrimination %s;", name, key.Class, o, class.Difficulty().Text(2), class.Discrimination().Text(2))
		for _, pair := range class.Pairs() {
			if pair.Neighbors {
				fmt.Fprintf(b, " %d-%d %s", pair.Upper, pair.Lower, pair.Share.Text(2))
			}
		}
		b.WriteByte('\n')
	}
	return nil
}

// agreement writes how well the members agree with each other on what they all
// graded.
func (s sheets) agreement(b *strings.Builder) error {
	b.WriteString("\n== Agreement between members\n\n")
	var marbling season.Judges
	for _, e := range s.estimates {
		if e.Facts.Marbling != 0 {
			if err := marbling.Add(fmt.Sprint(e.Contest, ", class ", e.Class, ", exhibit ", e.Exhibit), e.Member.ID, int64(e.Facts.Marbling)); err != nil {
				return err
			}
		}
	}
	if r := marbling.Ratings(); len(r.Exhibits) > 0 {
		i, err := r.Intraclass()
		if err != nil {
			return err
		}
		fmt.Fprintf(b, "marbling, %s, %s: intraclass correlation of one member %s, of their mean %s\n", say.Count(len(r.Exhibits), "carcass", "carcasses"), say.Count(len(r.Judges), "member", "members"), i.ICC21.Text(2), i.ICC2k.Text(2))
	}
	var w []string
	names, by := group(s.placings, func(p contest.PlacingCard) string { return p.Contest })
	for _, name := range names {
		var one season.Judges
		classes, _ := group(by[name], func(p contest.PlacingCard) string { return p.Class })
		for _, p := range by[name] {
			if p.Class == classes[0] {
				if err := addPlaces(&one, p.Member.ID, p.Card.Order); err != nil {
					return err
				}
			}
		}
		plain, _, err := one.Ratings().Concordance()
		if err != nil {
			return err
		}
		w = append(w, fmt.Sprintf("%s: %s", name, plain.Text(2)))
	}
	if w != nil {
		fmt.Fprintf(b, "placings of the first class, Kendall's W of the members: %s\n", strings.Join(w, ", "))
	}
	return nil
}

// addPlaces adds the places that a member gives.
func addPlaces(j *season.Judges, member string, o placing.Order) error {
	for place := 1; place <= o.Len(); place++ {
		if err := j.Add(fmt.Sprint("exhibit ", o.At(place)), member, int64(place)); err != nil {
			return err
		}
	}
	return nil
}
