package main

import (
	"errors"
	"slices"
	"strings"

	"example.com/ribface/grade"
	"example.com/ribface/maturity"
	"example.com/ribface/placing/contest"
	"example.com/ribface/placing/season"
)

// result is a season, scored.
type result struct {
	names   []string // of the contests, in order of time
	members []*member
	pairs   []pair
	missed  []component // what all members together lost
	teams   []contest.TeamLine
	of      contest.Points // the most that a member could score in the last contest
	whole   *season.Season
	classes string // statistics of the placing classes
}

// member is what the season says of one member.
type member struct {
	contest.Member
	rank      int // over the season, by points scored
	scored    int64
	of        int64
	parts     []component // what it was scored and lost in
	last      *contest.Feedback
	lastRank  int // 0 without a card in the last contest
	lastTotal contest.Points
	figures   season.Calibration
	bias      []season.Figure // of yield, contest by contest
	spread    []season.Figure
}

// component is the points of one component over the season.
type component struct {
	name       string
	scored, of int64
	lastScored int64 // in the last contest
	lastOf     int64

	// What stands behind points lost: the measure that did most to a yield that was
	// off, or which way a quality grade was.
	behind map[string]int
}

// pair is one pair of exhibits of a placing class.
type pair struct {
	contest, class string
	upper, lower   int
	points         int // what it costs to reverse
	reversed       int // cards that did
	cards          int // cards with a placing
}

// points are whole points.
func points(n int) contest.Points { return contest.PointsOf(float64(n)) }

// units are points in whole numbers, to add up and to compare.
func units(p contest.Points) int64 { return p.Units() }

// ofUnits are points again.
func ofUnits(n int64) contest.Points { return contest.PointsUnits(n) }

// newRound puts one contest together of what its sheets have: 50 points for each
// placing class and set of reasons, 10 for each quality and yield. Two points are
// lost for each part of a quality grade and one for each tenth of a yield grade.
// Reasons break ties, then grading.
func newRound(name string, placings []contest.OfficialPlacing, facts []contest.OfficialFacts, scores []contest.HandScore) (*contest.Contest, error) {
	ladder, err := contest.NewEvenLadder(points(10), points(2), rungs())
	if err != nil {
		return nil, err
	}
	f := contest.Format{Name: name, TeamMembers: 4, Counting: 3}
	placed, _ := group(placings, func(p contest.OfficialPlacing) string { return p.Class })
	graded, _ := group(facts, func(f contest.OfficialFacts) string { return f.Class })
	spoken, _ := group(scores, func(h contest.HandScore) string { return h.Class })
	if len(placed) > 0 {
		f.Components = append(f.Components, contest.Component{Name: "placings", Kind: contest.KindPlacing, Classes: placed, Value: points(50 * len(placed))})
		f.TeamTies = append(f.TeamTies, contest.TieBreak{Components: []string{"placings"}, AllMembers: true})
	}
	if len(facts) > 0 {
		value := points(10 * len(facts))
		f.Components = append(f.Components,
			contest.Component{Name: "quality", Kind: contest.KindQuality, Classes: graded, Value: value},
			contest.Component{Name: "yield", Kind: contest.KindYield, Classes: graded, Value: value})
	}
	if len(scores) > 0 {
		f.Components = append(f.Components, contest.Component{Name: "reasons", Kind: contest.KindHand, Classes: spoken, Value: points(50 * len(spoken))})
		f.Ties = append(f.Ties, contest.TieBreak{Components: []string{"reasons"}})
		f.TeamTies = slices.Insert(f.TeamTies, 0, contest.TieBreak{Components: []string{"reasons"}})
	}
	if len(facts) > 0 {
		f.Ties = append(f.Ties, contest.TieBreak{Components: []string{"quality", "yield"}})
	}
	r := contest.Scoring{
		Quality: contest.QualityRule{Ladder: ladder},
		Yield:   contest.YieldRule{Step: contest.Tenths, Rounding: grade.HalfUp, Value: points(10), Each: points(1)},
	}
	return contest.NewContest(name, f, r, placings, facts)
}

// rungs are the qualities of young carcasses.
func rungs() []grade.Quality { return contest.ChartQualities(grade.Current, maturity.A) }

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

// result scores every contest.
func (s sheets) result() (*result, error) {
	_, officials := group(s.officials, func(o contest.OfficialPlacing) string { return o.Contest })
	_, facts := group(s.facts, func(o contest.OfficialFacts) string { return o.Contest })
	_, placings := group(s.placings, func(c contest.PlacingCard) string { return c.Contest })
	_, estimates := group(s.estimates, func(c contest.Estimate) string { return c.Contest })
	_, scores := group(s.scores, func(c contest.HandScore) string { return c.Contest })
	r := &result{}
	for _, list := range []func(func(string) bool){keys(officials), keys(facts), keys(placings), keys(estimates), keys(scores)} {
		for name := range list {
			if !slices.Contains(r.names, name) {
				r.names = append(r.names, name)
			}
		}
	}
	slices.Sort(r.names)
	if len(r.names) == 0 {
		return nil, errors.New("no contest: the sheets have no rows")
	}
	var err error
	if r.whole, err = season.NewSeason(rungs()); err != nil {
		return nil, err
	}
	var classes strings.Builder
	for at, name := range r.names {
		c, err := newRound(name, officials[name], facts[name], scores[name])
		if err != nil {
			return nil, err
		}
		tally, err := score(c, placings[name], estimates[name], scores[name])
		if err != nil {
			return nil, err
		}
		standings, err := tally.Standings(contest.View{})
		if err != nil {
			return nil, err
		}
		if err := follow(&classes, name, c, standings, officials[name], placings[name]); err != nil {
			return nil, err
		}
		r.hard(name, c, officials[name], placings[name])
		one, err := calibrate(c, placings[name], estimates[name])
		if err != nil {
			return nil, err
		}
		if err := r.whole.Merge(one); err != nil {
			return nil, err
		}
		last := at == len(r.names)-1
		if last {
			r.teams, r.of = standings.Teams, standings.Of
		}
		for _, line := range standings.Members {
			id := line.Member.ID
			own := func(m contest.Member) bool { return m.ID == id }
			f, err := c.Feedback(id,
				only(placings[name], func(c contest.PlacingCard) bool { return own(c.Member) }),
				only(estimates[name], func(c contest.Estimate) bool { return own(c.Member) }),
				only(scores[name], func(c contest.HandScore) bool { return own(c.Member) }))
			if err != nil {
				return nil, err
			}
			m := r.member(line.Member)
			for _, part := range []*[]component{&m.parts, &r.missed} {
				*part = addUp(*part, c.Format().Components, line, f, last)
			}
			if last {
				m.last, m.lastRank, m.lastTotal = &f, line.Rank, line.Total
			}
			bias, spread := yieldFigures(one, id)
			m.bias, m.spread = pad(m.bias, at, bias), pad(m.spread, at, spread)
		}
	}
	if len(r.members) == 0 {
		return nil, errors.New("no cards: the sheets have keys alone")
	}
	r.classes = classes.String()
	for _, m := range r.members {
		for _, part := range m.parts {
			m.scored += part.scored
			m.of += part.of
		}
		m.figures, _ = r.whole.Calibration(m.ID)
		m.bias, m.spread = upTo(m.bias, len(r.names)), upTo(m.spread, len(r.names))
	}
	r.rank()
	return r, nil
}

// keys yields the keys of a map, in no order.
func keys[T any](m map[string]T) func(func(string) bool) {
	return func(yield func(string) bool) {
		for k := range m {
			if !yield(k) {
				return
			}
		}
	}
}

// only returns the rows that are wanted.
func only[T any](rows []T, wanted func(T) bool) (out []T) {
	for _, row := range rows {
		if wanted(row) {
			out = append(out, row)
		}
	}
	return out
}

// member returns the member of the season, who may be new.
func (r *result) member(m contest.Member) *member {
	for _, known := range r.members {
		if known.ID == m.ID {
			return known
		}
	}
	r.members = append(r.members, &member{Member: m})
	return r.members[len(r.members)-1]
}

// rank puts the members in order of the points of the season, those who tie in
// order of their name.
func (r *result) rank() {
	slices.SortFunc(r.members, func(a, b *member) int {
		if a.scored != b.scored {
			if a.scored > b.scored {
				return -1
			}
			return 1
		}
		return strings.Compare(a.ID, b.ID)
	})
	for i, m := range r.members {
		m.rank = i + 1
		if i > 0 && m.scored == r.members[i-1].scored {
			m.rank = r.members[i-1].rank
		}
	}
}

// calibrate makes one contest a season of its own.
func calibrate(c *contest.Contest, placings []contest.PlacingCard, estimates []contest.Estimate) (*season.Season, error) {
	one, err := season.NewSeason(rungs())
	if err != nil {
		return nil, err
	}
	for _, p := range placings {
		o, _ := c.Official(p.Class) // scored, so it is there
		if err := one.Placing(p.Member.ID, o, p.Card); err != nil {
			return nil, err
		}
	}
	for _, e := range estimates {
		key, _ := c.Facts(e.Class, e.Exhibit)
		if err := one.Estimate(e.Member.ID, e.Facts, key); err != nil {
			return nil, err
		}
	}
	return one, nil
}

// yieldFigures returns bias and spread of a member's yield grades.
func yieldFigures(s *season.Season, id string) (bias, spread season.Figure) {
	c, _ := s.Calibration(id)
	for _, t := range c.Traits {
		if t.Trait == grade.TraitYield {
			return t.Bias, t.Spread
		}
	}
	none := season.Figure{Reason: season.TooFew}
	return none, none
}

// pad puts a figure at a place, with gaps before it where there is none.
func pad(figures []season.Figure, at int, f season.Figure) []season.Figure {
	return append(upTo(figures, at), f)
}

// upTo adds gaps up to a length.
func upTo(figures []season.Figure, n int) []season.Figure {
	for len(figures) < n {
		figures = append(figures, season.Figure{Reason: season.TooFew})
	}
	return figures
}

// addUp adds what one member scored in one contest to the components of a list.
func addUp(list []component, parts []contest.Component, line contest.MemberLine, f contest.Feedback, last bool) []component {
	for i, part := range parts {
		at := slices.IndexFunc(list, func(c component) bool { return c.name == part.Name })
		if at < 0 {
			at = len(list)
			list = append(list, component{name: part.Name, behind: map[string]int{}})
		}
		c := &list[at]
		c.scored += units(line.Scores[i])
		c.of += units(part.Value)
		if last {
			c.lastScored += units(line.Scores[i])
			c.lastOf += units(part.Value)
		}
		switch part.Kind {
		case contest.KindQuality:
			for _, q := range f.Quality {
				switch {
				case q.Lines > 0:
					c.behind["too good"]++
				case q.Lines < 0:
					c.behind["too low"]++
				}
			}
		case contest.KindYield:
			for _, y := range f.Yield {
				if parts := y.Split.Parts(); y.Steps != 0 && len(parts) > 0 {
					c.behind[parts[0].Name]++
				}
			}
		}
	}
	return list
}

// hard counts who reversed which pair of the placing classes of a contest.
func (r *result) hard(name string, c *contest.Contest, officials []contest.OfficialPlacing, placings []contest.PlacingCard) {
	for _, key := range officials {
		o, _ := c.Official(key.Class)
		seen := map[[2]int]*pair{}
		cards := 0
		var order [][2]int
		for _, p := range placings {
			if p.Class != key.Class || !p.Card.Order.IsValid() {
				continue
			}
			cards++
			for f := range o.Faults(p.Card.Order) {
				at := [2]int{f.Upper, f.Lower}
				if seen[at] == nil {
					seen[at] = &pair{contest: name, class: key.Class, upper: f.Upper, lower: f.Lower, points: f.Points}
					order = append(order, at)
				}
				seen[at].reversed++
			}
		}
		for _, at := range order {
			seen[at].cards = cards
			r.pairs = append(r.pairs, *seen[at])
		}
	}
}

// hardest returns the pairs that the greatest share of the cards reversed, of equal
// shares those that cost more, then in order of time.
func (r *result) hardest(most int) []pair {
	pairs := slices.Clone(r.pairs)
	slices.SortStableFunc(pairs, func(a, b pair) int {
		if d := b.reversed*a.cards - a.reversed*b.cards; d != 0 {
			return d
		}
		return b.points - a.points
	})
	return pairs[:min(most, len(pairs))]
}
