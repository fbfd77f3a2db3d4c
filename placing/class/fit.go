package class

import (
	"slices"
	"sort"

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
		p.Cuts, _ = placing.NewCuts(slices.Repeat([]int{1}, n-1)...)
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

func newSetting(name string, own grade.Yield, tried []int64) setting {
	at, found := slices.BinarySearch(tried, units(own))
	if !found {
		tried = slices.Insert(tried, at, units(own))
	}
	return setting{name, tried, at}
}

// away is how far a value is from the policy's own.
func (s *setting) away(i int) int64 {
	d := s.values[i] - s.values[s.own]
	return max(d, -d)
}

// cost joins points lost with the distance from the policy's own values, which
// decides between values that lose the same: it stays under 2^36.
func cost(points int, away int64) int64 { return int64(points)<<36 + away }

// The settings that are fitted, by their place in a fitter; the advantages, as the
// policy has them, are last.
const (
	ceilingAt = iota
	exchangeAt
	closeAt
	advantageAt
)

// choice is the place of each setting among its values.
type choice []int

// fitter holds what every pair loses by the values of the settings that it turns on.
type fitter struct {
	policy   Policy
	settings []setting

	fixed  int       // lost by pairs that no setting turns
	tier   [][]int   // close, exchange: pairs of one tier
	single [][]int   // close, ceiling: pairs of Choice and Select that no advantage turns
	gap    [][][]int // advantage, close, and in one row ceiling by value of the advantage
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
	n := len(f.settings)
	for k := range n {
		i := (advantageAt + k) % n // the advantages first
		if len(f.settings[i].values) == 1 {
			continue
		}
		v, warning := f.span(at, i)
		out.Settings = append(out.Settings, v)
		if warning != "" {
			out.Warnings = append(out.Warnings, warning)
		}
	}
	return out, nil
}

func newFitter(p Policy) *fitter {
	tenth, twentieth := oneGrade/10, oneGrade/20
	var ceilings, closes []int64
	if units(p.Ceiling) != 0 {
		ceilings = steps(fixed.Round(max(2*oneGrade, units(p.LeanSelect))+tenth-1, tenth, fixed.Down), 6*oneGrade, tenth)
	}
	if p.Walk {
		closes = steps(0, oneGrade, twentieth)
	}
	f := &fitter{policy: p, settings: []setting{
		ceilingAt:  newSetting("ceiling", p.Ceiling, ceilings),
		exchangeAt: newSetting("exchange", p.Exchange, steps(twentieth, 2*oneGrade, twentieth)),
		closeAt:    newSetting("close", p.Close, closes),
	}}
	table := func(columns int) [][]int {
		t := make([][]int, len(f.settings[closeAt].values))
		for i := range t {
			t[i] = make([]int, columns)
		}
		return t
	}
	c := len(f.settings[ceilingAt].values)
	f.tier, f.single = table(len(f.settings[exchangeAt].values)), table(c)
	for _, a := range p.Advantages {
		s := newSetting("advantage over "+text.Count(a.Tiers, "tier"), a.Yield, steps(tenth, 5*oneGrade, tenth))
		f.settings, f.gap = append(f.settings, s), append(f.gap, table(c*len(s.values)))
	}
	return f
}

// with returns the policy with the values chosen.
func (f *fitter) with(c choice) Policy {
	value := func(i int) grade.Yield { return yieldOf(f.settings[i].values[c[i]]) }
	p := f.policy.clone()
	p.Close, p.Ceiling, p.Exchange = value(closeAt), value(ceilingAt), value(exchangeAt)
	for i := range p.Advantages {
		p.Advantages[i].Yield = value(advantageAt + i)
	}
	return p
}

// add enters every pair of a class and returns what the pairs lose by the policy's
// own values.
func (f *fitter) add(all []profile, o placing.Official) int {
	before := 0
	for i := 1; i < len(all); i++ {
		points := 0
		for j := i + 1; j <= len(all); j++ {
			u, l := &all[o.Order().At(i)-1], &all[o.Order().At(j)-1]
			points += o.Cuts().At(j - 1)
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
	// row is what the pair loses at each value of a setting. An advantage, the ceiling
	// and the exchange speak for one and the same of the two, the more the higher they
	// are, so the pair turns once at the most.
	row := func(setting int, set func(grade.Yield)) []int {
		values := f.settings[setting].values
		agrees := func(i int) bool {
			set(yieldOf(values[i]))
			return f.agrees(&trial, u, l)
		}
		low, turn := agrees(0), len(values)
		if low != agrees(len(values)-1) {
			turn = sort.Search(len(values), func(i int) bool { return agrees(i) != low })
		}
		lost := make([]int, len(values))
		for i := range lost {
			if low != (i < turn) {
				lost[i] = points
			}
		}
		return lost
	}
	var table [][]int
	var loses func() []int
	switch {
	case pair:
		table, loses = f.tier, func() []int { return row(exchangeAt, func(y grade.Yield) { trial.Exchange = y }) }
	case advantage < 0:
		table, loses = f.single, func() []int { return row(ceilingAt, func(y grade.Yield) { trial.Ceiling = y }) }
	default:
		table, loses = f.gap[advantage], func() (all []int) {
			var last []int
			for _, c := range f.settings[ceilingAt].values {
				trial.Ceiling = yieldOf(c)
				if last == nil || ceiling {
					last = row(advantageAt+advantage, func(y grade.Yield) { trial.Advantages[advantage].Yield = y })
				}
				all = append(all, last...)
			}
			return all
		}
	}
	var last []int
	for k, v := range f.settings[closeAt].values {
		trial.Close = yieldOf(v)
		if last == nil || walks { // else the close margin has no part in it
			last = loses()
		}
		for i, n := range last {
			table[k][i] += n
		}
	}
}

// lost is what all pairs lose by the values chosen.
func (f *fitter) lost(c choice) int {
	sum := f.fixed + f.tier[c[closeAt]][c[exchangeAt]] + f.single[c[closeAt]][c[ceilingAt]]
	for i, v := range c[advantageAt:] {
		sum += f.gapAt(i, c[closeAt], c[ceilingAt])[v]
	}
	return sum
}

// gapAt is what pairs lose at each value of an advantage, at one close margin and
// ceiling.
func (f *fitter) gapAt(advantage, close, ceiling int) []int {
	n := len(f.settings[advantageAt+advantage].values)
	return f.gap[advantage][close][ceiling*n:][:n]
}

// never costs more than any values that can be had.
const never = int64(1) << 62

// solve finds the values that cost least. For each close margin the exchange is
// found by itself; for each close margin and ceiling so are the advantages, one
// after the other, each above the one before.
func (f *fitter) solve() choice {
	var best choice
	least := never
	for k := range f.settings[closeAt].values {
		exchange, within := 0, never
		for e, n := range f.tier[k] {
			if c := cost(n, f.settings[exchangeAt].away(e)); c < within {
				exchange, within = e, c
			}
		}
		for c := range f.settings[ceilingAt].values {
			advantages, sum := f.rising(k, c)
			sum += within + cost(f.single[k][c], f.settings[closeAt].away(k)+f.settings[ceilingAt].away(c))
			if sum < least {
				best, least = append(choice{ceilingAt: c, exchangeAt: exchange, closeAt: k}, advantages...), sum
			}
		}
	}
	return best
}

// rising finds the advantages that cost least at one close margin and ceiling.
func (f *fitter) rising(close, ceiling int) ([]int, int64) {
	advantages := f.settings[advantageAt:]
	chosen := make([]int, len(advantages))
	if len(chosen) == 0 {
		return chosen, 0
	}
	// For each advantage and value: the least cost so far, never where the ones before
	// leave no room, and the value of the one before.
	costs, from := make([][]int64, len(chosen)), make([][]int, len(chosen))
	for i, a := range advantages {
		costs[i], from[i] = make([]int64, len(a.values)), make([]int, len(a.values))
		for v, n := range f.gapAt(i, close, ceiling) {
			costs[i][v] = cost(n, a.away(v))
			if i == 0 {
				continue
			}
			before := never
			for w, x := range costs[i-1] {
				if advantages[i-1].values[w] < a.values[v] && x < before {
					before, from[i][v] = x, w
				}
			}
			costs[i][v] = min(costs[i][v]+before, never)
		}
	}
	last := len(chosen) - 1
	least := slices.Min(costs[last])
	chosen[last] = slices.Index(costs[last], least)
	for i := last; i > 0; i-- {
		chosen[i-1] = from[i][chosen[i]]
	}
	return chosen, least
}

// span says how far the i-th setting can move from its value, the others as they
// are, and warns of what the classes cannot tell.
func (f *fitter) span(c choice, i int) (Fitted, string) {
	s := f.settings[i]
	value, fewest := c[i], f.lost(c)
	c = slices.Clone(c)
	losesMore := make([]bool, len(s.values))
	for v := range s.values {
		c[i] = v
		losesMore[v] = f.lost(c) > fewest
	}
	// An advantage stays between its neighbors.
	fits := func(v int) bool {
		if v < 0 || v >= len(s.values) || losesMore[v] {
			return false
		}
		return i < advantageAt ||
			(i == advantageAt || s.values[v] > f.settings[i-1].values[c[i-1]]) &&
				(i == len(c)-1 || s.values[v] < f.settings[i+1].values[c[i+1]])
	}
	least, most := value, value
	for fits(least - 1) {
		least--
	}
	for fits(most + 1) {
		most++
	}
	above, below := slices.Contains(losesMore[value:], true), slices.Contains(losesMore[:value], true)
	v := Fitted{s.name, yieldOf(s.values[value]), yieldOf(s.values[least]), yieldOf(s.values[most]), above || below}
	switch {
	case !v.Told:
		return v, "No pair of these classes turns on the " + s.name + ": they cannot tell it."
	case !above:
		return v, "These classes set no upper bound to the " + s.name + "."
	case !below:
		return v, "These classes set no lower bound to the " + s.name + "."
	}
	return v, ""
}
