package class

import (
	"cmp"
	"fmt"
	"math/bits"
	"slices"
	"strconv"
	"strings"

	"example.com/ribface/grade"
	"example.com/ribface/internal/fault"
	"example.com/ribface/internal/ordering"
	"example.com/ribface/placing"
)

// Cycle is a set of exhibits that the policy runs in a cycle: from each of them
// a chain of preferences leads to every other and back.
type Cycle struct {
	Exhibits  []int      `json:"exhibits"`  // in the order of the placing
	Rings     [][3]int   `json:"rings"`     // the cycles of three in it: the first over the second, the second over the third, the third over the first
	Decisions []Decision `json:"decisions"` // what the policy says of every pair in it
	Against   []Decision `json:"against"`   // those that the placing goes against
}

// Placing is a placed class. It is made by [Graded.Place].
type Placing struct {
	Order  placing.Order `json:"order"`
	Policy Policy        `json:"policy"`

	// Decisions hold what the policy says of every pair, in the order of the
	// placing: the pairs of the first exhibit first.
	Decisions []Decision `json:"decisions"`

	Cycles []Cycle `json:"cycles,omitzero"` // none for most classes

	// Against is the total margin of the preferences that the order goes
	// against; 0 without a cycle. Equal is the number of orders that share that
	// least total, at least 1.
	Against grade.Yield `json:"against,omitzero"`
	Equal   int         `json:"equal"`
}

// firmCost is what it costs to go against one firm decision: more than to go against
// all others together, which are 65 at the most and under 1,000 grades each.
const firmCost = 100_000 * oneGrade

// Place places the class by the policy.
//
// Every pair is decided on its own, as [Graded.Decide] says. A policy with trade-offs
// may run in a cycle: Prime over top Choice, top Choice over low Choice, and low
// Choice over Prime by its yield. The placing is the order with the least total
// margin against it, exactly, for every size of class; without a cycle that is the
// order the pairs give. A firm decision is never gone against.
//
// Among equal orders the one counts that puts the better exhibit first: better
// tier, then less dark, more marbling, lower yield, heavier muscled and trimmer, as
// ByMuscling and ByTrimness have it, and at last the lower number. So the numbers
// matter only for exhibits that the policy cannot tell apart, and such a pair has a
// [Decision] without ground.
//
// The zero Graded, a policy that does not check and a grid without a price for an
// exhibit give a [*placing.FieldError].
func (g Graded) Place(p Policy) (Placing, error) {
	if g.Len() == 0 {
		return Placing{}, &fault.FieldError{Field: "class", Allowed: "a class that Class.Grade has graded", Err: fault.ErrMissing}
	}
	if err := p.Check(); err != nil {
		return Placing{}, err
	}
	p = p.clone()
	profiles, err := g.profiles(&p)
	if err != nil {
		return Placing{}, err
	}
	return p.place(profiles), nil
}

func (p Policy) place(profiles []profile) Placing {
	slices.SortFunc(profiles, func(a, b profile) int {
		if c := cmp.Compare(a.tier, b.tier); c != 0 {
			return c
		}
		for _, g := range [...]Ground{ByDark, ByMarbling, ByYield, ByMuscling, ByTrimness} {
			if c := b.by(&a, g); c != 0 {
				return c
			}
		}
		return cmp.Compare(a.number, b.number)
	})
	n := len(profiles)
	var costs ordering.Costs
	for i := range profiles {
		for j := range profiles[:i] {
			d := p.prefer(&profiles[i], &profiles[j])
			u, l := i, j
			if d.Upper != profiles[i].number {
				u, l = j, i
			}
			costs[l][u] = units(d.Margin)
			if d.Firm {
				costs[l][u] = firmCost
			}
		}
	}
	table := ordering.Solve(n, &costs)
	placed := make([]profile, 0, n)
	for order := range table.All() {
		for _, i := range order {
			placed = append(placed, profiles[i])
		}
		break
	}
	out := Placing{Policy: p, Against: yieldOf(table.Cost()), Equal: int(table.Count())}
	numbers := make([]int, n)
	for i := range placed {
		numbers[i] = placed[i].number
		for j := i + 1; j < n; j++ {
			out.Decisions = append(out.Decisions, p.prefer(&placed[i], &placed[j]))
		}
	}
	out.Order, _ = placing.NewOrder(numbers...)
	out.cycles()
	return out
}

// cycles finds the sets in which everyone reaches everyone.
func (p *Placing) cycles() {
	n := p.Order.Len()
	var beats [ordering.Max]uint // by place in the order from 0, whom each is preferred to, by bits
	for _, d := range p.Decisions {
		if d.Ground != 0 {
			beats[p.Order.Place(d.Upper)-1] |= 1 << (p.Order.Place(d.Lower) - 1)
		}
	}
	reach := beats
	for k := range n {
		for i := range n {
			if reach[i]&(1<<k) != 0 {
				reach[i] |= reach[k]
			}
		}
	}
	var done uint
	for i := range n {
		if done&(1<<i) != 0 || reach[i]&(1<<i) == 0 {
			continue
		}
		var set uint
		for j := range n {
			if reach[i]&(1<<j) != 0 && reach[j]&(1<<i) != 0 {
				set |= 1 << j
			}
		}
		done |= set
		p.Cycles = append(p.Cycles, p.cycle(set, beats))
	}
}

func (p *Placing) cycle(set uint, beats [ordering.Max]uint) Cycle {
	var c Cycle
	members := make([]int, 0, bits.OnesCount(set))
	for i := range p.Order.Len() {
		if set&(1<<i) != 0 {
			members = append(members, i)
			c.Exhibits = append(c.Exhibits, p.Order.At(i+1))
		}
	}
	for _, d := range p.Decisions {
		if d.Ground == 0 || !slices.Contains(c.Exhibits, d.Upper) || !slices.Contains(c.Exhibits, d.Lower) {
			continue
		}
		c.Decisions = append(c.Decisions, d)
		if p.Order.Place(d.Upper) > p.Order.Place(d.Lower) {
			c.Against = append(c.Against, d)
		}
	}
	for a, i := range members {
		for _, j := range members[a+1:] {
			for _, k := range members[a+1:] {
				if beats[i]&(1<<j) != 0 && beats[j]&(1<<k) != 0 && beats[k]&(1<<i) != 0 {
					c.Rings = append(c.Rings, [3]int{p.Order.At(i + 1), p.Order.At(j + 1), p.Order.At(k + 1)})
				}
			}
		}
	}
	return c
}

// Decision returns what the policy says of two exhibits; ok is false for a pair
// that is not in the class.
func (p Placing) Decision(a, b int) (d Decision, ok bool) {
	for _, d := range p.Decisions {
		if d.Upper == a && d.Lower == b || d.Upper == b && d.Lower == a {
			return d, true
		}
	}
	return Decision{}, false
}

// Neighbors returns the decisions on the pairs that stand next to each other, the
// top pair first: where the cuts lie. The placing never goes against one of them,
// since switching the two would leave less against it.
func (p Placing) Neighbors() []Decision {
	var all []Decision
	for i := 1; i < p.Order.Len(); i++ {
		d, _ := p.Decision(p.Order.At(i), p.Order.At(i+1))
		all = append(all, d)
	}
	return all
}

// String says how the pairs were decided and how cycles were resolved, a plain
// sentence on each line; "unset" for the zero Placing. Where the rules come from is
// told by [Policy.Steps].
func (p Placing) String() string {
	if !p.Order.IsValid() {
		return "unset"
	}
	var lines []string
	for _, d := range p.Neighbors() {
		lines = append(lines, d.String()+".")
	}
	for _, c := range p.Cycles {
		var parts []string
		for _, r := range c.Rings {
			parts = append(parts, fmt.Sprintf("%d over %d, %d over %d and %d over %d", r[0], r[1], r[1], r[2], r[2], r[0]))
		}
		lines = append(lines, "The policy runs in a cycle: "+strings.Join(parts, "; ")+".")
		for _, d := range c.Decisions {
			lines = append(lines, "In the cycle: "+d.String()+".")
		}
		parts = parts[:0]
		for _, d := range c.Against {
			parts = append(parts, fmt.Sprintf("%d over %d (margin %s)", d.Upper, d.Lower, d.Margin))
		}
		lines = append(lines, "Resolved by the least total margin against it: the placing goes against "+strings.Join(parts, ", ")+".")
	}
	if p.Equal > 1 {
		lines = append(lines, itoa(p.Equal)+" orders are equal by that count; the better exhibit by tier, lean color, marbling, yield, muscling and trimness goes first.")
	}
	return strings.Join(lines, "\n")
}

func itoa(n int) string { return strconv.Itoa(n) }

// Policies returns the named policies that need nothing but a class, in fresh
// slices: [DefaultPolicy], [NotesPolicy] and [CutabilityPolicy]. [ValuePolicy] asks
// for a grid besides.
func Policies() []Policy { return []Policy{DefaultPolicy(), NotesPolicy(), CutabilityPolicy()} }

// Splits returns the pairs of the class on which the policies differ: not all put
// the same exhibit over, or some can tell the two apart and some cannot. Of each pair
// it is what each policy says of it, in the order of the policies. Pairs are in the
// order of their numbers; nil where the policies agree throughout.
//
// Fewer than two policies, one that does not check, and a grid without a price for
// an exhibit give a [*placing.FieldError].
func (g Graded) Splits(policies ...Policy) ([][]Decision, error) {
	if len(policies) < 2 {
		return nil, &fault.FieldError{Path: "policies", Field: "policies", Value: itoa(len(policies)), Allowed: "two or more", Err: fault.ErrRange}
	}
	looks := make([][]profile, len(policies))
	var problems []error
	for i := range policies {
		err := fault.At(nth("policies", i), "", policies[i].Check())
		if err == nil {
			looks[i], err = g.profiles(&policies[i])
		}
		problems = append(problems, fault.In("policy "+itoa(i+1), err))
	}
	if err := fault.Join(problems...); err != nil {
		return nil, err
	}
	var all [][]Decision
	for a := range g.Len() {
		for b := a + 1; b < g.Len(); b++ {
			pair := make([]Decision, len(policies))
			for i := range policies {
				pair[i] = policies[i].prefer(&looks[i][a], &looks[i][b])
			}
			if slices.ContainsFunc(pair, func(d Decision) bool { return d.Upper != pair[0].Upper || (d.Ground == 0) != (pair[0].Ground == 0) }) {
				all = append(all, pair)
			}
		}
	}
	return all, nil
}
