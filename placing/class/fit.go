package class

import (
	"slices"
	"sort"
	"strconv"

	"example.com/ribface/grade"
	"example.com/ribface/internal/fault"
	"example.com/ribface/internal/text"
	"example.com/ribface/internal/text/fixed"
	"example.com/ribface/placing"
)

// Past is a class that was placed, with what its committee made of it.
type Past struct {
	Class Graded        `json:"class"`
	Order placing.Order `json:"order"`
	Cuts  placing.Cuts  `json:"cuts,omitzero"` // zero where they are not known: every pair of neighbors then counts a point
}

// official checks the class against its placing.
func (p Past) official() (placing.Official, error) {
	n := p.Class.Len()
	if n == 0 {
		return placing.Official{}, &fault.FieldError{Path: "class", Field: "class", Allowed: "a class that Class.Grade has graded", Err: fault.ErrMissing}
	}
	if p.Order.Len() != n {
		return placing.Official{}, &fault.FieldError{Path: "order", Field: "order", Value: p.Order.String(), Allowed: "an order of the " + itoa(n) + " exhibits", Err: fault.ErrRange}
	}
	if !p.Cuts.IsValid() {
		even := slices.Repeat([]int{1}, n-1)
		p.Cuts, _ = placing.NewCuts(even...)
	}
	return placing.NewOfficial(p.Order, p.Cuts)
}

// checkPast returns the official placings of past classes.
func checkPast(past []Past) ([]placing.Official, error) {
	if len(past) == 0 {
		return nil, &fault.FieldError{Path: "past", Field: "past classes", Allowed: "one or more", Err: fault.ErrMissing}
	}
	officials := make([]placing.Official, len(past))
	var problems []error
	for i, p := range past {
		o, err := p.official()
		officials[i] = o
		problems = append(problems, fault.At(nth("past", i), "past class "+itoa(i+1), err))
	}
	return officials, fault.Join(problems...)
}

// UnmarshalJSON reads an object as the package says under Encodings, and grades the class.
func (p *Past) UnmarshalJSON(b []byte) error { return text.Struct(b, p) }

// Record is what a policy would have made of past classes.
type Record struct {
	Policy Policy `json:"policy"`
	Lost   int    `json:"lost"`   // points that its placings would have lost as cards
	Pairs  int    `json:"pairs"`  // pairs of exhibits in all classes
	Missed int    `json:"missed"` // of these, pairs that the policy decides the other way round
	Untold int    `json:"untold"` // pairs that it cannot tell apart
}

// Replay asks how each policy would have placed past classes: the points that its
// placings would have lost as cards, all classes together, and the pairs that it
// decides otherwise than the committees. Records are in the order of the policies.
//
// No past class, an order or cuts that do not go with the class, a policy that does
// not check and a grid without a price for an exhibit give a [*placing.FieldError];
// paths count both from 0, as "policies[1].close" and "past[3].order".
func Replay(policies []Policy, past ...Past) ([]Record, error) {
	officials, err := checkPast(past)
	problems := []error{err}
	for i, p := range policies {
		problems = append(problems, fault.At(nth("policies", i), "policy "+itoa(i+1), p.Check()))
	}
	if err := fault.Join(problems...); err != nil {
		return nil, err
	}
	records := make([]Record, len(policies))
	for i, p := range policies {
		r := &records[i]
		for j, c := range past {
			placed, err := c.Class.Place(p)
			if err != nil {
				problems = append(problems, fault.At(nth("past", j)+".class", "policy "+itoa(i+1)+": past class "+itoa(j+1), err))
				continue
			}
			r.Policy = placed.Policy
			score, _ := officials[j].Score(placed.Order)
			r.Lost += placing.FullScore - score
			for _, d := range placed.Decisions {
				r.Pairs++
				switch {
				case d.Ground == 0:
					r.Untold++
				case c.Order.Place(d.Upper) > c.Order.Place(d.Lower):
					r.Missed++
				}
			}
		}
	}
	if err := fault.Join(problems...); err != nil {
		return nil, err
	}
	return records, nil
}

// Fitted is one setting of a policy as past classes would have it.
type Fitted struct {
	Setting string      `json:"setting"` // as "advantage over 1 tier", "ceiling", "exchange" or "close"
	Value   grade.Yield `json:"value,omitzero"`

	// Least and Most are the ends of the values around Value that lose no more,
	// all other settings as fitted.
	Least grade.Yield `json:"least,omitzero"`
	Most  grade.Yield `json:"most,omitzero"`

	// Told is whether the classes say anything about the setting: some value that
	// was tried loses more, all other settings as fitted.
	Told bool `json:"told"`
}

// Fitting is a policy fitted to past classes.
type Fitting struct {
	Policy   Policy   `json:"policy"`            // with the values fitted
	Before   int      `json:"before"`            // points that the pairs of the policy lost as it was
	Lost     int      `json:"lost"`              // points that they lose fitted
	Settings []Fitted `json:"settings"`          // the advantages, the ceiling, the exchange, the margin of close pairs
	Warnings []string `json:"warnings,omitzero"` // what the classes cannot tell, in plain sentences; nil for nothing
}

// The values that Fit tries, in units.
func steps(from, to, by int64) []int64 {
	var all []int64
	for n := from; n <= to; n += by {
		all = append(all, n)
	}
	return all
}

// setting is one setting with the values to try, ascending, and the place of the
// policy's own among them.
type setting struct {
	name   string
	values []int64
	own    int
}

func newSetting(name string, own int64, tried []int64) setting {
	s := setting{name: name, values: tried}
	at, found := slices.BinarySearch(s.values, own)
	if !found {
		s.values = slices.Insert(s.values, at, own)
	}
	s.own = at
	return s
}

// away is how far a value is from the policy's own.
func (s *setting) away(i int) int64 {
	d := s.values[i] - s.values[s.own]
	return max(d, -d)
}

// cost joins points lost with the distance from the policy's own values, which
// decides between values that lose the same: it stays under 2^36.
func cost(points int, away int64) int64 { return int64(points)<<36 + away }

// fitter holds what every pair loses by the values of the settings that it turns
// on. The tables of the advantages have the indexes close, ceiling, advantage.
type fitter struct {
	policy     Policy
	advantages []setting
	ceiling    setting
	exchange   setting
	close      setting

	fixed  int       // lost by pairs that no setting turns
	tier   [][]int   // close, exchange: pairs of one tier
	gap    [][][]int // for each advantage, close*ceilings + ceiling, value
	single [][]int   // close, ceiling: pairs of Choice and Select that no advantage turns
}

// Fit finds the values of a policy's yield advantages, ceiling, exchange and close
// margin that lose fewest points on past classes, all of them together and exactly.
// A pair that the policy decides otherwise than the committee, or cannot tell
// apart, loses the cuts between the two exhibits, as it would on a card.
//
// It tries advantages from 0.1 to 5.0 and ceilings from 2.0 (or LeanSelect, where
// that is more) to 6.0, by 0.1; exchanges from 0.05 to 2.00 and close margins from
// 0.00 to 1.00, by 0.05; and the policy's own values. Advantages must rise. Of all
// combinations that lose the fewest points it takes the one nearest to the policy's
// own, by the sum of the differences, of equal ones the lowest values, in the order
// of close, ceiling, exchange, the last advantage and those before it. A ceiling is
// fitted where the policy has one, and the close margin where the walk decides.
//
// A warning says which settings no class turns on, and which ones the classes bound
// on one side only: more classes, or other ones, are needed to tell them.
//
// No past class, an order or cuts that do not go with the class, and a policy
// without an exchange give a [*placing.FieldError].
func Fit(p Policy, past ...Past) (Fitting, error) {
	officials, err := checkPast(past)
	problems := []error{fault.At("policy", "", p.Check()), err}
	if units(p.Exchange) == 0 {
		problems = append(problems, &fault.FieldError{Path: "policy.exchange", Field: "policy: exchange", Allowed: "a policy with an exchange", Err: fault.ErrMissing})
	}
	if err := fault.Join(problems...); err != nil {
		return Fitting{}, err
	}
	f := newFitter(p.clone())
	before := 0
	for i, c := range past {
		all, _ := c.Class.profiles(&f.policy) // no grid, no error
		before += f.add(all, officials[i])
	}
	at := f.solve()
	out := Fitting{Policy: f.with(at), Before: before, Lost: f.lost(at)}
	for i, s := range f.settings() {
		v, warning := f.span(at, i, s)
		out.Settings = append(out.Settings, v)
		if warning != "" {
			out.Warnings = append(out.Warnings, warning)
		}
	}
	return out, nil
}

func newFitter(p Policy) *fitter {
	f := &fitter{policy: p}
	tenth, twentieth := oneGrade/10, oneGrade/20
	for _, a := range p.Advantages {
		name := "advantage over " + strconv.Itoa(a.Tiers) + " tier"
		if a.Tiers > 1 {
			name += "s"
		}
		f.advantages = append(f.advantages, newSetting(name, units(a.Yield), steps(tenth, 5*oneGrade, tenth)))
	}
	f.ceiling = newSetting("ceiling", units(p.Ceiling), nil)
	if units(p.Ceiling) != 0 {
		least := fixed.Round(max(2*oneGrade, units(p.LeanSelect))+tenth-1, tenth, fixed.Down)
		f.ceiling = newSetting("ceiling", units(p.Ceiling), steps(least, 6*oneGrade, tenth))
	}
	f.exchange = newSetting("exchange", units(p.Exchange), steps(twentieth, 2*oneGrade, twentieth))
	f.close = newSetting("close", units(p.Close), nil)
	if p.Walk {
		f.close = newSetting("close", units(p.Close), steps(0, oneGrade, twentieth))
	}
	table := func(rows, columns int) [][]int {
		t := make([][]int, rows)
		for i := range t {
			t[i] = make([]int, columns)
		}
		return t
	}
	closes, ceilings := len(f.close.values), len(f.ceiling.values)
	f.tier, f.single = table(closes, len(f.exchange.values)), table(closes, ceilings)
	for _, a := range f.advantages {
		f.gap = append(f.gap, table(closes*ceilings, len(a.values)))
	}
	return f
}

// choice is the place of each setting among its values.
type choice struct {
	close, ceiling, exchange int
	advantages               []int
}

func (f *fitter) own() choice {
	c := choice{f.close.own, f.ceiling.own, f.exchange.own, make([]int, len(f.advantages))}
	for i := range f.advantages {
		c.advantages[i] = f.advantages[i].own
	}
	return c
}

// with returns the policy with the values chosen.
func (f *fitter) with(c choice) Policy {
	p := f.policy.clone()
	p.Close, p.Ceiling, p.Exchange = yieldOf(f.close.values[c.close]), yieldOf(f.ceiling.values[c.ceiling]), yieldOf(f.exchange.values[c.exchange])
	for i := range p.Advantages {
		p.Advantages[i].Yield = yieldOf(f.advantages[i].values[c.advantages[i]])
	}
	return p
}

// add enters every pair of a class and returns what the pairs lose by the policy's
// own values.
func (f *fitter) add(all []profile, o placing.Official) int {
	before := 0
	for i := range all {
		for j := range all[:i] {
			u, l := &all[i], &all[j]
			if o.Order().Place(u.number) > o.Order().Place(l.number) {
				u, l = l, u
			}
			points := 0
			for k := o.Order().Place(u.number); k < o.Order().Place(l.number); k++ {
				points += o.Cuts().At(k)
			}
			if !f.agrees(&f.policy, u, l) {
				before += points
			}
			f.enter(u, l, points)
		}
	}
	return before
}

func (f *fitter) agrees(p *Policy, u, l *profile) bool {
	d := p.prefer(u, l)
	return d.Ground != 0 && d.Upper == u.number
}

// enter adds the points that a pair loses wherever the committee's u over l is not
// what the policy says.
func (f *fitter) enter(u, l *profile, points int) {
	better, worse := u, l
	if better.tier > worse.tier {
		better, worse = l, u
	}
	favor, _ := u.walked(l)
	walks := f.policy.Walk && favor != 0
	pair := better.tier == worse.tier
	ceiling := units(f.policy.Ceiling) != 0 && better.choice && worse.selected && !pair
	advantage := slices.IndexFunc(f.policy.Advantages, func(a Advantage) bool { return worse.tier-better.tier <= a.Tiers })
	if u.bottom != l.bottom || !pair && !ceiling && advantage < 0 {
		if !f.agrees(&f.policy, u, l) {
			f.fixed += points
		}
		return
	}
	trial := f.policy.clone()
	// fill fills a row of a table: what the pair loses at each value. An advantage,
	// the ceiling and the exchange speak for one and the same of the two, the more
	// the higher they are, so the pair turns once at the most.
	fill := func(row []int, values []int64, set func(grade.Yield)) {
		agrees := func(i int) bool {
			set(yieldOf(values[i]))
			return f.agrees(&trial, u, l)
		}
		low, turn := agrees(0), len(values)
		if low != agrees(len(values)-1) {
			turn = sort.Search(len(values), func(i int) bool { return agrees(i) != low })
		}
		for i := range row {
			if low != (i < turn) {
				row[i] = points
			}
		}
	}
	add := func(row, more []int) {
		for i, n := range more {
			row[i] += n
		}
	}
	var last []int
	for k, v := range f.close.values {
		trial.Close = yieldOf(v)
		again := last != nil && !walks // the close margin has no part in it
		switch {
		case pair:
			if !again {
				last = make([]int, len(f.exchange.values))
				fill(last, f.exchange.values, func(y grade.Yield) { trial.Exchange = y })
			}
			add(f.tier[k], last)
		case advantage < 0:
			if !again {
				last = make([]int, len(f.ceiling.values))
				fill(last, f.ceiling.values, func(y grade.Yield) { trial.Ceiling = y })
			}
			add(f.single[k], last)
		default:
			n := len(f.advantages[advantage].values)
			if !again {
				last = make([]int, 0, len(f.ceiling.values)*n)
				var row []int
				for _, c := range f.ceiling.values {
					trial.Ceiling = yieldOf(c)
					if row == nil || ceiling {
						row = make([]int, n)
						fill(row, f.advantages[advantage].values, func(y grade.Yield) { trial.Advantages[advantage].Yield = y })
					}
					last = append(last, row...)
				}
			}
			for c := range f.ceiling.values {
				add(f.gap[advantage][k*len(f.ceiling.values)+c], last[c*n:(c+1)*n])
			}
		}
	}
}

// lost is what all pairs lose by the values chosen.
func (f *fitter) lost(c choice) int {
	sum := f.fixed + f.tier[c.close][c.exchange] + f.single[c.close][c.ceiling]
	for i, a := range c.advantages {
		sum += f.gap[i][c.close*len(f.ceiling.values)+c.ceiling][a]
	}
	return sum
}

// solve finds the values that cost least. For each close margin the exchange is
// found by itself; for each close margin and ceiling so are the advantages, one
// after the other, each above the one before.
func (f *fitter) solve() choice {
	best, least := f.own(), int64(-1)
	for k := range f.close.values {
		exchange, within := 0, int64(-1)
		for e, n := range f.tier[k] {
			if c := cost(n, f.exchange.away(e)); within < 0 || c < within {
				exchange, within = e, c
			}
		}
		for c := range f.ceiling.values {
			advantages, sum := f.rising(k*len(f.ceiling.values) + c)
			sum += within + cost(f.single[k][c], f.close.away(k)+f.ceiling.away(c))
			if least < 0 || sum < least {
				best, least = choice{k, c, exchange, advantages}, sum
			}
		}
	}
	return best
}

// rising finds the advantages that cost least at one close margin and ceiling.
func (f *fitter) rising(at int) ([]int, int64) {
	chosen := make([]int, len(f.advantages))
	if len(chosen) == 0 {
		return chosen, 0
	}
	// For each advantage and value: the least cost so far, -1 where the ones before
	// leave no room, and the value of the one before.
	costs, from := make([][]int64, len(chosen)), make([][]int, len(chosen))
	for i := range f.advantages {
		a := &f.advantages[i]
		costs[i], from[i] = make([]int64, len(a.values)), make([]int, len(a.values))
		for v := range a.values {
			c := cost(f.gap[i][at][v], a.away(v))
			if i > 0 {
				before := int64(-1)
				for w, x := range costs[i-1] {
					if f.advantages[i-1].values[w] < a.values[v] && x >= 0 && (before < 0 || x < before) {
						before, from[i][v] = x, w
					}
				}
				if before < 0 {
					c = -1
				} else {
					c += before
				}
			}
			costs[i][v] = c
		}
	}
	last := len(chosen) - 1
	least := int64(-1)
	for v, c := range costs[last] {
		if c >= 0 && (least < 0 || c < least) {
			least, chosen[last] = c, v
		}
	}
	for i := last; i > 0; i-- {
		chosen[i-1] = from[i][chosen[i]]
	}
	return chosen, least
}

// settings lists the settings that are fitted.
func (f *fitter) settings() []setting {
	all := slices.Clone(f.advantages)
	if len(f.ceiling.values) > 1 {
		all = append(all, f.ceiling)
	}
	all = append(all, f.exchange)
	if len(f.close.values) > 1 {
		all = append(all, f.close)
	}
	return all
}

// span says how far the i-th setting can move from its value, the others as they
// are, and warns of what the classes cannot tell.
func (f *fitter) span(c choice, i int, s setting) (Fitted, string) {
	c.advantages = slices.Clone(c.advantages)
	at := &c.close
	switch {
	case i < len(c.advantages):
		at = &c.advantages[i]
	case s.name == f.ceiling.name:
		at = &c.ceiling
	case s.name == f.exchange.name:
		at = &c.exchange
	}
	value := *at
	fewest := f.lost(c)
	losesMore := make([]bool, len(s.values))
	told := false
	for v := range s.values {
		*at = v
		losesMore[v] = f.lost(c) > fewest
		told = told || losesMore[v]
	}
	// An advantage stays between its neighbors.
	fits := func(v int) bool {
		if v < 0 || v >= len(s.values) || losesMore[v] {
			return false
		}
		return i >= len(c.advantages) ||
			(i == 0 || s.values[v] > f.advantages[i-1].values[c.advantages[i-1]]) &&
				(i == len(c.advantages)-1 || s.values[v] < f.advantages[i+1].values[c.advantages[i+1]])
	}
	least, most := value, value
	for fits(least - 1) {
		least--
	}
	for fits(most + 1) {
		most++
	}
	v := Fitted{Setting: s.name, Value: yieldOf(s.values[value]), Least: yieldOf(s.values[least]), Most: yieldOf(s.values[most]), Told: told}
	switch above, below := slices.Contains(losesMore[value:], true), slices.Contains(losesMore[:value], true); {
	case !told:
		return v, "No pair of these classes turns on the " + s.name + ": they cannot tell it."
	case !above:
		return v, "These classes set no upper bound to the " + s.name + "."
	case !below:
		return v, "These classes set no lower bound to the " + s.name + "."
	}
	return v, ""
}
