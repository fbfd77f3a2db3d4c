package main

import (
	"fmt"
	"slices"
	"strings"

	"example.com/ribface/grade"
	"example.com/ribface/maturity"
	"example.com/ribface/placing"
	"example.com/ribface/placing/contest"
	"example.com/ribface/placing/season"
)

// page is what the program prints, and what it draws.
type page struct {
	text  string
	leans []lean
}

// lean is one member's bias in yield, contest by contest.
type lean struct {
	member string
	bias   []season.Figure
	spread []season.Figure
}

// newRound puts one contest together of what its sheets have: 50 points for each
// placing class and set of reasons, 10 for each quality and yield. Two points are
// lost for each part of a quality grade and one for each tenth of a yield grade.
// Reasons break ties, then grading.
func newRound(name string, placings []contest.OfficialPlacing, facts []contest.OfficialFacts, scores []contest.HandScore) (*contest.Contest, error) {
	ladder, err := contest.NewEvenLadder(10*contest.Point, 2*contest.Point, rungs())
	if err != nil {
		return nil, err
	}
	points := func(n int) contest.Points { return contest.Points(n) * contest.Point }
	f := contest.Format{Name: name, TeamMembers: 4, Counting: 3}
	placed, _ := group(placings, func(p contest.OfficialPlacing) string { return p.Class })
	graded, _ := group(facts, func(f contest.OfficialFacts) string { return f.Class })
	spoken, _ := group(scores, func(h contest.HandScore) string { return h.Class })
	f.Components = []contest.Component{{Name: "placings", Kind: contest.KindPlacing, Classes: placed, Value: points(50 * len(placed))}}
	if len(facts) > 0 {
		value := points(10 * len(facts))
		f.Components = append(f.Components,
			contest.Component{Name: "quality", Kind: contest.KindQuality, Classes: graded, Value: value},
			contest.Component{Name: "yield", Kind: contest.KindYield, Classes: graded, Value: value})
	}
	if len(scores) > 0 {
		f.Components = append(f.Components, contest.Component{Name: "reasons", Kind: contest.KindHand, Classes: spoken, Value: points(50 * len(spoken))})
		f.Ties = append(f.Ties, contest.TieBreak{Components: []string{"reasons"}})
		f.TeamTies = append(f.TeamTies, contest.TieBreak{Components: []string{"reasons"}})
	}
	if len(facts) > 0 {
		f.Ties = append(f.Ties, contest.TieBreak{Components: []string{"quality", "yield"}})
	}
	f.TeamTies = append(f.TeamTies, contest.TieBreak{Components: []string{"placings"}, AllMembers: true})
	r := contest.Rules{
		Quality: contest.QualityRule{Ladder: ladder},
		Yield:   contest.YieldRule{Step: contest.Tenths, Rounding: grade.HalfUp, Value: 10 * contest.Point, Each: contest.Point},
	}
	return contest.NewContest(name, f, r, placings, facts)
}

// rungs are the qualities of young carcasses.
func rungs() []grade.Quality { return contest.ChartQualities(grade.Current, maturity.A) }

// page scores every contest and writes the page.
func (s sheets) page(member string) (page, error) {
	names, officials := group(s.officials, func(o contest.OfficialPlacing) string { return o.Contest })
	_, facts := group(s.facts, func(o contest.OfficialFacts) string { return o.Contest })
	_, placings := group(s.placings, func(c contest.PlacingCard) string { return c.Contest })
	_, estimates := group(s.estimates, func(c contest.Estimate) string { return c.Contest })
	_, scores := group(s.scores, func(c contest.HandScore) string { return c.Contest })
	if len(names) == 0 {
		return page{}, fmt.Errorf("%s: no contest", sheetNames[3])
	}
	whole, err := season.NewSeason(rungs())
	if err != nil {
		return page{}, err
	}
	var b strings.Builder
	bias, spread := map[string][]season.Figure{}, map[string][]season.Figure{}
	var classes strings.Builder
	var last *contest.Contest
	for at, name := range names {
		c, err := newRound(name, officials[name], facts[name], scores[name])
		if err != nil {
			return page{}, err
		}
		last = c
		tally, err := score(c, placings[name], estimates[name], scores[name])
		if err != nil {
			return page{}, err
		}
		standings, err := tally.Standings(contest.View{})
		if err != nil {
			return page{}, err
		}
		if err := follow(&classes, name, c, standings, officials[name], placings[name]); err != nil {
			return page{}, err
		}
		// Each contest is a season of its own, merged into the whole.
		one, err := season.NewSeason(rungs())
		if err != nil {
			return page{}, err
		}
		for _, p := range placings[name] {
			o, _ := c.Official(p.Class)
			if err := one.Placing(p.Member.ID, o, p.Card); err != nil {
				return page{}, err
			}
		}
		for _, e := range estimates[name] {
			key, _ := c.Facts(e.Class, e.Exhibit)
			if err := one.Estimate(e.Member.ID, e.Facts, key); err != nil {
				return page{}, err
			}
		}
		if err := whole.Merge(one); err != nil {
			return page{}, err
		}
		for _, id := range one.Members() {
			calibrated, _ := one.Calibration(id)
			for _, t := range calibrated.Traits {
				if t.Trait == season.TraitYield {
					bias[id] = pad(bias[id], at, t.Bias)
					spread[id] = pad(spread[id], at, t.Spread)
				}
			}
		}
		if at < len(names)-1 {
			continue
		}
		fmt.Fprintf(&b, "== Standings of %s, of %v points\n\n%v", name, standings.Of, standings)
		alone, err := tally.Standings(contest.View{Components: []string{"placings"}})
		if err != nil {
			return page{}, err
		}
		fmt.Fprintf(&b, "\n== Its placings alone, of %v points\n\n%v", alone.Of, alone)
	}
	other := func(m contest.Member) bool { return m.ID != member }
	name := names[len(names)-1]
	feedback, err := last.Feedback(member,
		slices.DeleteFunc(slices.Clone(placings[name]), func(c contest.PlacingCard) bool { return other(c.Member) }),
		slices.DeleteFunc(slices.Clone(estimates[name]), func(c contest.Estimate) bool { return other(c.Member) }),
		slices.DeleteFunc(slices.Clone(scores[name]), func(c contest.HandScore) bool { return other(c.Member) }))
	if err != nil {
		return page{}, err
	}
	if feedback.Of == 0 {
		return page{}, fmt.Errorf("member %q has no cards in %s", member, name)
	}
	fmt.Fprintf(&b, "\n== What member %s missed in %s\n\n%v", member, name, feedback)
	fmt.Fprintf(&b, "\n== Calibration over %s\n\n", count(len(names), "contest", "contests"))
	var leans []lean
	for _, id := range whole.Members() {
		c, _ := whole.Calibration(id)
		b.WriteString(c.String())
		leans = append(leans, lean{id, pad(bias[id], len(names), season.Figure{})[:len(names)], pad(spread[id], len(names), season.Figure{})[:len(names)]})
	}
	fmt.Fprintf(&b, "\n== The classes: cuts, and the share that reversed each pair of neighbors\n\n%s", classes.String())
	if err := s.agreement(&b); err != nil {
		return page{}, err
	}
	return page{b.String(), leans}, nil
}

// pad puts a figure at a place, with gaps before it where there is none.
func pad(figures []season.Figure, at int, f season.Figure) []season.Figure {
	for len(figures) < at {
		figures = append(figures, season.Figure{Reason: season.TooFew})
	}
	return append(figures, f)
}

// score tallies the cards of one contest.
func score(c *contest.Contest, placings []contest.PlacingCard, estimates []contest.Estimate, scores []contest.HandScore) (*contest.Tally, error) {
	tally := c.Tally()
	for _, p := range placings {
		item, err := c.Placing(p)
		if err == nil {
			err = tally.Add(item)
		}
		if err != nil {
			return nil, err
		}
	}
	for _, e := range estimates {
		quality, yield, err := c.Estimate(e)
		if err == nil {
			err = tally.Add(quality, yield)
		}
		if err != nil {
			return nil, err
		}
	}
	for _, h := range scores {
		item, err := c.Hand(h)
		if err == nil {
			err = tally.Add(item)
		}
		if err != nil {
			return nil, err
		}
	}
	return tally, nil
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
		class := season.NewClass(o)
		for _, p := range placings {
			if p.Class != key.Class || !p.Card.Order.IsValid() {
				continue
			}
			item, err := c.Placing(p)
			if err != nil {
				return err
			}
			if err := class.Add(p.Card.Order, total[p.Member.ID]-item.Points); err != nil {
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
	marbling := season.NewJudges()
	for _, e := range s.estimates {
		if e.Facts.Marbling.Given {
			if err := marbling.Add(fmt.Sprint(e.Contest, ", class ", e.Class, ", exhibit ", e.Exhibit), e.Member.ID, int64(e.Facts.Marbling.Value)); err != nil {
				return err
			}
		}
	}
	if r := marbling.Ratings(); len(r.Exhibits) > 0 {
		i, err := r.Intraclass()
		if err != nil {
			return err
		}
		fmt.Fprintf(b, "marbling, %s, %s: intraclass correlation of one member %s, of their mean %s\n", count(len(r.Exhibits), "carcass", "carcasses"), count(len(r.Judges), "member", "members"), i.ICC21.Text(2), i.ICC2k.Text(2))
	}
	var w []string
	names, by := group(s.placings, func(p contest.PlacingCard) string { return p.Contest })
	for n, name := range names {
		one := season.NewJudges()
		classes, _ := group(by[name], func(p contest.PlacingCard) string { return p.Class })
		for _, p := range by[name] {
			if p.Class == classes[0] {
				if err := addPlaces(one, p.Member.ID, p.Card.Order); err != nil {
					return err
				}
			}
		}
		plain, _, err := one.Ratings().Concordance()
		if err != nil {
			return err
		}
		w = append(w, fmt.Sprintf("%d: %s", n+1, plain.Text(2)))
	}
	fmt.Fprintf(b, "placings of the first class, Kendall's W of the members by contest: %s\n", strings.Join(w, ", "))
	return nil
}

// addPlaces adds the places that a member gives.
func addPlaces(j season.Judges, member string, o placing.Order) error {
	for place := 1; place <= o.Len(); place++ {
		if err := j.Add(fmt.Sprint("exhibit ", o.At(place)), member, int64(place)); err != nil {
			return err
		}
	}
	return nil
}

func count(n int, one, many string) string {
	if n == 1 {
		return "1 " + one
	}
	return fmt.Sprint(n, " ", many)
}
