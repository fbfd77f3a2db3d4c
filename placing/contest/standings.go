package contest

import (
	"cmp"
	"fmt"
	"maps"
	"slices"
	"strconv"
	"strings"
	"unicode/utf8"

	"example.com/ribface/internal/fault"
	"example.com/ribface/internal/text"
)

// Tally adds up the items of a contest and ranks members and teams. Make one with
// [Contest.Tally]. It is not safe for use by several goroutines at once.
type Tally struct {
	worker
	contest *Contest
	members map[string]*record
	last    [2]int // slots that were found last, of the first and second items
}

// record is what one member has so far.
type record struct {
	member Member
	scores []int64  // by component, in units of points
	seen   []uint64 // by slot, a bit for each exhibit
}

// Tally returns an empty tally.
func (c *Contest) Tally() *Tally {
	return &Tally{contest: c.ready(), members: map[string]*record{}}
}

// made is the error for a tally that no contest has made.
func (t *Tally) made() error {
	if t == nil || t.contest == nil {
		return &fault.FieldError{Field: "tally", Allowed: "one made by Contest.Tally", Err: fault.ErrMissing}
	}
	return nil
}

// Enter makes a member known who may have handed in nothing. A member who is known
// already, with another team or division, gives a [*placing.FieldError]; a team or
// division that is empty is taken from the other.
func (t *Tally) Enter(m Member) error {
	if err := t.made(); err != nil {
		return err
	}
	_, err := t.enter(m)
	return err
}

// entry is what one item has changed.
type entry struct {
	*record
	fresh  bool   // the member was not known
	before Member // what was known
	slot   int
	bit    uint64
	points int64
}

// enter finds the record of a member, or makes one.
func (t *Tally) enter(m Member) (entry, error) {
	e := entry{record: t.members[m.ID]}
	if e.record != nil {
		if e.before = e.member; e.member == m {
			return e, nil
		}
	}
	if err := fault.Join(fault.At("member.id", "", checkName("member", m.ID, true)), fault.At("member.team", "", checkName("team", m.Team, false)), fault.At("member.division", "", checkName("division", m.Division, false))); err != nil {
		return e, inMember(m, err)
	}
	if e.record == nil {
		e.fresh, e.record = true, &record{m, make([]int64, len(t.contest.format.Components)), make([]uint64, len(t.contest.slots))}
		t.members[m.ID] = e.record
		return e, nil
	}
	for _, w := range [...]struct{ name, old, new string }{{"team", e.before.Team, m.Team}, {"division", e.before.Division, m.Division}} {
		if w.old != w.new && w.old != "" && w.new != "" {
			return e, inMember(m, &fault.FieldError{Path: "member." + w.name, Field: w.name, Value: strconv.Quote(w.new), Allowed: strconv.Quote(w.old) + ", as on the member's other cards", Err: fault.ErrRepeated})
		}
	}
	e.member.Team, e.member.Division = cmp.Or(e.before.Team, m.Team), cmp.Or(e.before.Division, m.Division)
	return e, nil
}

// Add adds items, all or none of them; zero Items are skipped. An item that the
// member has already, as from a second card for one class, one that the contest
// does not have, points that are not set or that no card of it can score, and a
// member in two teams or divisions are refused. After an error the tally is as it
// was: a member of whom nothing was added is not known.
func (t *Tally) Add(items ...Item) error {
	if err := t.made(); err != nil {
		return err
	}
	var room [4]entry
	added := room[:0]
	var refused error
	for i := range items {
		item := &items[i]
		if !item.IsValid() {
			continue
		}
		if e, err := t.add(item, &t.last[i%len(t.last)]); err != nil {
			refused = fault.Join(refused, fault.At(nth("items", i), "", err))
		} else {
			added = append(added, e)
		}
	}
	if refused != nil {
		for _, e := range slices.Backward(added) {
			t.undo(e)
		}
	}
	return refused
}

// add adds one item.
func (t *Tally) add(item *Item, last *int) (entry, error) {
	refuse := func(e *fault.FieldError) (entry, error) { return entry{}, inMember(item.Member, e) }
	n, ok := t.slot(item, last)
	if !ok || item.Exhibit < 0 || item.Exhibit > maxExhibit || t.contest.slots[n].exhibits&(1<<item.Exhibit) == 0 {
		return refuse(&fault.FieldError{Field: item.where(), Allowed: "an item of the contest", Err: fault.ErrUnknown})
	}
	if s := &t.contest.slots[n]; !item.Points.IsSet() || item.Points.Units() < s.least || item.Points.Units() > s.of {
		e := &fault.FieldError{Path: "points", Field: item.where() + ": points", Allowed: PointsUnits(s.least).String() + " to " + PointsUnits(s.of).String(), Err: fault.ErrMissing}
		if item.Points.IsSet() {
			e.Value, e.Err = item.Points.String(), fault.ErrRange
		}
		return refuse(e)
	}
	e, err := t.enter(item.Member)
	if err != nil {
		return entry{}, err
	}
	if e.seen[n]&(1<<item.Exhibit) != 0 {
		t.undo(e)
		return refuse(&fault.FieldError{Field: item.where(), Allowed: "one card for each class", Err: fault.ErrRepeated})
	}
	e.slot, e.bit, e.points = n, 1<<item.Exhibit, item.Points.Units()
	e.seen[n] |= e.bit
	e.scores[t.contest.slots[n].component] += e.points
	return e, nil
}

// undo takes back what an item has changed, the last one first.
func (t *Tally) undo(e entry) {
	if e.fresh {
		delete(t.members, e.member.ID)
		return
	}
	e.member = e.before
	e.seen[e.slot] &^= e.bit
	e.scores[t.contest.slots[e.slot].component] -= e.points
}

// slot finds the slot of an item, where it was last time if it can.
func (t *Tally) slot(item *Item, last *int) (int, bool) {
	c := t.contest
	if *last < len(c.slots) {
		if s := &c.slots[*last]; s.class == item.Class && c.format.Components[s.component].Name == item.Component {
			return *last, true
		}
	}
	at, ok := c.part[item.Component]
	if !ok {
		return 0, false
	}
	n, ok := c.slotAt[slotKey{at, item.Class}]
	if ok {
		*last = n
	}
	return n, ok
}

// where names an item in words.
func (i Item) where() string {
	s := i.Component
	if i.Class != "" && i.Class != i.Component {
		s += ": class " + strconv.Quote(i.Class)
	}
	if i.Exhibit != 0 {
		s += ": exhibit " + strconv.Itoa(i.Exhibit)
	}
	return s
}

// Divisions returns the age divisions of the members so far, sorted, without the
// empty one.
func (t *Tally) Divisions() []string {
	if t == nil {
		return nil
	}
	seen := map[string]bool{}
	for _, r := range t.members {
		seen[r.member.Division] = true
	}
	delete(seen, "")
	return slices.Sorted(maps.Keys(seen))
}

// View says which standings are wanted. The zero View is everyone over the whole
// contest, with the tie-breaks of the format.
type View struct {
	Division   string   `json:"division,omitzero"`   // only members of this age division; empty for all
	Components []string `json:"components,omitzero"` // only these components; empty for all, with the tie-breaks of the format

	// Ties and TeamTies are the tie-breaks of a view of some components, for
	// which the format has none. They are not looked at in a view of all.
	Ties     []TieBreak `json:"ties,omitzero"`
	TeamTies []TieBreak `json:"team_ties,omitzero"`
}

// Standings are members and teams in order of rank. Whatever the order in which
// cards were added, the same cards give the same standings.
type Standings struct {
	Components []string     `json:"components"` // what was counted, in the order of the format
	Of         Points       `json:"of"`         // the most that one member could score
	Members    []MemberLine `json:"members"`
	Teams      []TeamLine   `json:"teams"`
}

// MemberLine is one member in the standings.
type MemberLine struct {
	Rank   int      `json:"rank"`          // 1 for the best; members who tie share the rank, and the next is skipped
	Tied   bool     `json:"tied,omitzero"` // another member has the same rank: no tie-break told them apart
	Member Member   `json:"member"`
	Total  Points   `json:"total"`
	Scores []Points `json:"scores"` // by component, as in Standings.Components

	// ByTieBreak is the number of the tie-break, from 1, that put the member
	// over the next one of the same total; 0 where none was needed or none told.
	ByTieBreak int `json:"by_tie_break,omitzero"`
	// Missing lists what the member did not hand in or left without any mark, each
	// of which scored 0.
	Missing []string `json:"missing,omitzero"`
}

// TeamLine is one team in the standings.
type TeamLine struct {
	Rank       int      `json:"rank"` // as for a member; 0 for a team that is barred
	Tied       bool     `json:"tied,omitzero"`
	Team       string   `json:"team"`
	Total      Points   `json:"total"`                 // of the counting members
	Scores     []Points `json:"scores"`                // of the counting members, by component
	ByTieBreak int      `json:"by_tie_break,omitzero"` // as for a member
	Counting   []string `json:"counting"`              // the members who count, best first
	Others     []string `json:"others,omitzero"`       // the others, best first
	Short      bool     `json:"short,omitzero"`        // fewer members than count
}

// contender is a line being ranked: its total, then the sums of the tie-breaks, and
// the name that orders what is printed on one rank.
type contender struct {
	sums []int64
	name string
	rec  *record
	team *TeamLine
}

// step is what one sum of a contender adds up.
type step struct {
	components []int
	all        bool // over all members of a team, not the counting ones
}

// Standings ranks members and teams.
//
// Members are ordered by total, then by the tie-breaks in turn; those still equal
// share a rank and stand in order of ID: IDs of digits alone before all others, by
// the number that they write and of one number the shorter first; and else by their
// bytes.
//
// The first members of a team in that order count, as many as the format says, and
// all where it names no number; so among members who tie the lower ID counts. Teams
// are ordered by the total of the counting members, then by the steps for teams, each
// the sum over the counting members or, where it says so, over all; those still equal
// share a rank and stand in order of their name, as IDs do.
//
// A team that is barred ([ShortTeam]) stands after every ranked team, with rank 0, not
// tied and without a tie-break. Barred teams stand among themselves in the same order:
// by total, by the steps for teams, by name. They take no rank from the others.
//
// An unknown division or component, a bad tie-break and a team of more members than
// the format allows give a [*placing.FieldError].
func (t *Tally) Standings(v View) (Standings, error) {
	if err := t.made(); err != nil {
		return Standings{}, err
	}
	f := &t.contest.format
	ties, teamTies := f.Ties, f.TeamTies
	parts := make([]int, len(f.Components))
	for i := range parts {
		parts[i] = i
	}
	if len(v.Components) > 0 {
		var err error
		if parts, err = f.find(v.Components); err != nil {
			err = fault.At("components", "view", err)
		}
		ties, teamTies = v.Ties, v.TeamTies
		if err := fault.Join(err, f.checkTies("ties", "tie-break", ties), f.checkTies("team_ties", "tie-break for teams", teamTies)); err != nil {
			return Standings{}, err
		}
		slices.Sort(parts)
	}
	if v.Division != "" && !slices.Contains(t.Divisions(), v.Division) {
		return Standings{}, &fault.FieldError{Path: "division", Field: "division", Value: strconv.Quote(v.Division), Allowed: strings.Join(t.Divisions(), ", "), Err: fault.ErrUnknown}
	}
	s := Standings{Of: whole(0)}
	for _, p := range parts {
		s.Components = append(s.Components, f.Components[p].Name)
		s.Of = s.Of.Add(f.Components[p].Value)
	}
	steps := f.steps(parts, ties)
	var field []contender
	for id, r := range t.members {
		if v.Division == "" || r.member.Division == v.Division {
			field = append(field, contender{sums(steps, r.scores, r.scores), id, r, nil})
		}
	}
	rank(field, func(c contender, rank int, tied bool, by int) {
		s.Members = append(s.Members, MemberLine{rank, tied, c.rec.member, PointsUnits(c.sums[0]), pick(c.rec.scores, parts), by, t.missing(c.rec, parts)})
	})
	var err error
	if s.Teams, err = t.teams(s.Members, parts, f.steps(parts, teamTies)); err != nil {
		return Standings{}, err
	}
	return s, nil
}

// teams ranks the teams of members who are in order of rank.
func (t *Tally) teams(members []MemberLine, parts []int, steps []step) ([]TeamLine, error) {
	f := &t.contest.format
	byTeam := map[string][]*record{}
	for _, m := range members {
		if m.Member.Team != "" {
			byTeam[m.Member.Team] = append(byTeam[m.Member.Team], t.members[m.Member.ID])
		}
	}
	var field, barred []contender
	for _, name := range slices.Sorted(maps.Keys(byTeam)) {
		team := byTeam[name]
		if f.TeamMembers > 0 && len(team) > f.TeamMembers {
			return nil, &fault.FieldError{Field: "team " + strconv.Quote(name), Value: text.Count(len(team), "member"), Allowed: "at most " + strconv.Itoa(f.TeamMembers), Err: fault.ErrRange}
		}
		line := &TeamLine{Team: name, Short: len(team) < cmp.Or(f.Counting, f.TeamMembers)}
		counting, all := make([]int64, len(f.Components)), make([]int64, len(f.Components))
		for i, r := range team {
			counts := f.Counting == 0 || i < f.Counting
			if counts {
				line.Counting = append(line.Counting, r.member.ID)
			} else {
				line.Others = append(line.Others, r.member.ID)
			}
			for c, p := range r.scores {
				if all[c] += p; counts {
					counting[c] += p
				}
			}
		}
		c := contender{sums: sums(steps, counting, all), name: name, team: line}
		line.Total, line.Scores = PointsUnits(c.sums[0]), pick(counting, parts)
		if line.Short && f.Short == Barred {
			barred = append(barred, c)
		} else {
			field = append(field, c)
		}
	}
	var out []TeamLine
	rank(field, func(c contender, rank int, tied bool, by int) {
		c.team.Rank, c.team.Tied, c.team.ByTieBreak = rank, tied, by
		out = append(out, *c.team)
	})
	rank(barred, func(c contender, _ int, _ bool, _ int) { out = append(out, *c.team) })
	return out, nil
}

// rank sorts the field and hands out the ranks.
func rank(field []contender, out func(c contender, rank int, tied bool, by int)) {
	slices.SortFunc(field, func(a, b contender) int {
		return cmp.Or(slices.Compare(b.sums, a.sums), compareNames(a.name, b.name))
	})
	same := func(i, j int) bool {
		return i >= 0 && j < len(field) && slices.Equal(field[i].sums, field[j].sums)
	}
	place := 0
	for i, c := range field {
		if !same(i-1, i) {
			place = i + 1
		}
		by := 0
		for i+1 < len(field) && !same(i, i+1) && c.sums[by] == field[i+1].sums[by] {
			by++
		}
		out(c, place, same(i-1, i) || same(i, i+1), by)
	}
}

// compareNames puts numbers before names, and numbers in order of what they count: 03
// before 7 before 10. Of equal numbers the one with fewer zeros in front is first.
func compareNames(a, b string) int {
	number := func(s string) (digits string, size int) {
		if strings.Trim(s, "0123456789") == "" {
			digits = strings.TrimLeft(s, "0")
			return digits, len(digits)
		}
		return s, 1 << 10 // longer than any name
	}
	da, na := number(a)
	db, nb := number(b)
	return cmp.Or(cmp.Compare(na, nb), strings.Compare(da, db), cmp.Compare(len(a), len(b)))
}

// steps are the total over some components and tie-breaks that were checked.
func (f *Format) steps(parts []int, ties []TieBreak) []step {
	out := []step{{parts, false}}
	for _, tie := range ties {
		components, _ := f.find(tie.Components)
		out = append(out, step{components, tie.AllMembers})
	}
	return out
}

// sums adds up the scores by component of the counting members, or of all.
func sums(steps []step, counting, all []int64) []int64 {
	out := make([]int64, len(steps))
	for i, step := range steps {
		from := counting
		if step.all {
			from = all
		}
		for _, c := range step.components {
			out[i] += from[c]
		}
	}
	return out
}

func pick(scores []int64, parts []int) []Points {
	out := make([]Points, len(parts))
	for i, p := range parts {
		out[i] = PointsUnits(scores[p])
	}
	return out
}

// missing lists what a member has not handed in.
func (t *Tally) missing(r *record, parts []int) []string {
	var out []string
	for n, s := range t.contest.slots {
		lacks := s.exhibits &^ r.seen[n]
		if lacks == 0 || !slices.Contains(parts, s.component) {
			continue
		}
		item := Item{Component: t.contest.format.Components[s.component].Name, Class: s.class}
		if lacks == s.exhibits {
			out = append(out, item.where())
			continue
		}
		for e := 1; e <= maxExhibit; e++ {
			if lacks&(1<<e) != 0 {
				item.Exhibit = e
				out = append(out, item.where())
			}
		}
	}
	return out
}

// String gives the standings as plain text: a table of members, then one of teams.
// Members and teams on one rank are marked "tied", a rank won by a tie-break says
// by which, and a barred team has no rank.
func (s Standings) String() string {
	rows := [][]string{append([]string{"rank", "", "member", "team", "division", "total"}, s.Components...)}
	row := func(rank int, tied bool, by int, cells []string, scores []Points) {
		place, note := "-", ""
		if rank > 0 {
			place = strconv.Itoa(rank)
		}
		switch {
		case tied:
			note = "tied"
		case by > 0:
			note = "by tie-break " + strconv.Itoa(by)
		}
		cells = append([]string{place, note}, cells...)
		for _, p := range scores {
			cells = append(cells, p.String())
		}
		rows = append(rows, cells)
	}
	for _, m := range s.Members {
		row(m.Rank, m.Tied, m.ByTieBreak, []string{m.Member.ID, m.Member.Team, m.Member.Division, m.Total.String()}, m.Scores)
	}
	out := table(rows, 5)
	if len(s.Teams) == 0 {
		return out
	}
	rows = [][]string{append([]string{"rank", "", "team", "counting", "others", "total"}, s.Components...)}
	for _, t := range s.Teams {
		row(t.Rank, t.Tied, t.ByTieBreak, []string{t.Team, strings.Join(t.Counting, ", "), strings.Join(t.Others, ", "), t.Total.String()}, t.Scores)
	}
	return out + "\n" + table(rows, 5)
}

// table lines up cells: text to the left, and from the given column numbers to the
// right. A column of empty cells is left out; a row may be shorter than another.
func table(rows [][]string, numbers int) string {
	var wide []int
	for i := len(rows) - 1; i >= 0; i-- { // the headings last, which make no column
		for c, cell := range rows[i] {
			if c == len(wide) {
				wide = append(wide, 0)
			}
			if i > 0 || wide[c] > 0 {
				wide[c] = max(wide[c], utf8.RuneCountInString(cell))
			}
		}
	}
	var b strings.Builder
	for _, row := range rows {
		line := ""
		for c, cell := range row {
			switch {
			case wide[c] > 0 && c < numbers:
				line += fmt.Sprintf("%-*s  ", wide[c], cell)
			case wide[c] > 0:
				line += fmt.Sprintf("%*s  ", wide[c], cell)
			}
		}
		b.WriteString(strings.TrimRight(line, " ") + "\n")
	}
	return b.String()
}
