package vectors

import (
	"fmt"
	"strconv"
	"sync"

	"example.com/ribface/examples/prices"
	"example.com/ribface/grade"
	"example.com/ribface/maturity/cite"
	"example.com/ribface/placing"
	"example.com/ribface/placing/class"
	"example.com/ribface/placing/practice"
	"github.com/shopspring/decimal"
)

// policies are the named policies; value stands on the published grid of 2025-01-06
// with an invented base of 300.
var policies = sync.OnceValues(func() ([]class.Policy, error) {
	terms, err := prices.Read("", decimal.New(300, 0))
	return append(class.Policies(), class.ValuePolicy(terms)), err
})

func policyNamed(name string) (class.Policy, error) {
	all, err := policies()
	if err != nil {
		return class.Policy{}, err
	}
	for _, p := range all {
		if p.Name == name {
			return p, nil
		}
	}
	return class.Policy{}, fmt.Errorf("no policy %q", name)
}

// classOf reads the class of a vector of the file placings.
func classOf(in Object) (class.Class, error) {
	c := class.Class{Rules: grade.Rules{Edition: grade.Current}}
	for _, o := range List(in, "exhibits") {
		k, err := carcass(o)
		if err != nil {
			return c, err
		}
		n, err := strconv.Atoi(Text(o, "exhibit"))
		if err != nil {
			return c, err
		}
		c.Exhibits = append(c.Exhibits, class.Exhibit{Number: n, Carcass: k})
	}
	for _, o := range List(in, "walk") {
		r := &reader{o: o}
		c.Walk = append(c.Walk, class.Look{Site: get(r, "site", class.ParseSite), Order: get(r, "order", placing.ParseRanking)})
		if r.err != nil {
			return c, r.err
		}
	}
	return c, nil
}

// classObject is the other way round.
func classObject(c class.Class) Object {
	exhibits, walk := []Object{}, []Object{}
	for _, e := range c.Exhibits {
		k := e.Carcass
		o := Object{
			"exhibit": strconv.Itoa(e.Number), "sex": k.Sex.String(), "skeletal": k.Maturity.Skeletal.String(), "lean": k.Maturity.Lean.String(), "marbling": k.Marbling.String(),
			"fat_in": k.Measures.Fat.Inches().String(), "ribeye_sq_in": k.Measures.Ribeye.SquareInches().String(), "kph_percent": k.Measures.KPH.Percent().String(), "weight_lb": k.Measures.Weight.Pounds().String(),
		}
		if k.Lean.Firmness != 0 {
			o["firmness"] = k.Lean.Firmness.String()
		}
		if k.Lean.Color != 0 {
			o["color"] = k.Lean.Color.String()
		}
		if k.Lean.Texture != 0 {
			o["texture"] = k.Lean.Texture.String()
		}
		if k.Lean.Dark != 0 {
			o["dark"] = k.Lean.Dark.String()
		}
		exhibits = append(exhibits, o)
	}
	for _, l := range c.Walk {
		walk = append(walk, Object{"site": l.Site.String(), "order": l.Order.String()})
	}
	out := Object{"exhibits": exhibits}
	if len(walk) > 0 {
		out["walk"] = walk
	}
	return out
}

func ground(g class.Ground) string {
	if g == 0 {
		return "none"
	}
	return g.String()
}

// place places a class by a policy and proposes cuts for it.
func place(v Vector) (Object, error) {
	policy, err := policyNamed(Text(v.In, "policy"))
	if err != nil {
		return nil, err
	}
	c, err := classOf(v.In)
	if err != nil {
		return nil, err
	}
	g, err := c.Grade()
	if err != nil {
		return nil, err
	}
	p, err := g.Place(policy)
	if err != nil {
		return nil, err
	}
	pairs := []Object{}
	for _, d := range p.Decisions {
		o := Object{"over": strconv.Itoa(d.Upper), "under": strconv.Itoa(d.Lower), "ground": ground(d.Ground), "lead": d.Lead.String(), "tiers": strconv.Itoa(d.Tiers)}
		switch {
		case d.Firm:
			o["margin"] = "firm"
		case d.Ground != 0:
			o["margin"] = d.Margin.String()
		default:
			o["margin"] = "none"
		}
		pairs = append(pairs, o)
	}
	cuts, err := p.ProposeCuts(p.Order, 0)
	return Object{"order": p.Order.String(), "equal_orders": strconv.Itoa(p.Equal), "cycles": strconv.Itoa(len(p.Cycles)), "pairs": pairs, "cuts": cuts.Cuts.String(), "cuts_asked": strconv.Itoa(cuts.Asked)}, err
}

// drawnClass draws a class whose exhibits stand near each other and on the lines of the
// policies, with old ones, dark cutters and walks among them.
func drawnClass(s *sweep) class.Class {
	c := class.Class{Rules: grade.Rules{Edition: grade.Current}}
	n := 3 + s.next(3)
	for i := range n {
		o := Object{
			"sex": "steer", "lean": pick(s, "A40", "A50"), "skeletal": pick(s, "A40", "A50", "A50", "A50", "A60", "B30", "B40", "C30"),
			"marbling": (grade.Devoid.At(0) + grade.Marbling(270+10*s.next(45))).String(),
			"fat_in":   decimal.New(int64(10+5*s.next(22)), -2).String(), "ribeye_sq_in": pick(s, "11", "12.5", "13", "13", "13.5", "14.5"), "kph_percent": "2.5", "weight_lb": "800",
		}
		if d := pick(s, "", "", "", "", "", "", "one third", "two thirds", "full"); d != "" {
			o["dark"] = d
		}
		if d := pick(s, "", "", "fine", "tends to be fine"); d != "" {
			o["texture"] = d
		}
		k, err := carcass(o)
		if err != nil {
			panic(err) // the texts above are right
		}
		if i > 0 && s.next(4) == 0 {
			k.Marbling, k.Measures = c.Exhibits[i-1].Carcass.Marbling, c.Exhibits[i-1].Carcass.Measures
		}
		c.Exhibits = append(c.Exhibits, class.Exhibit{Number: i + 1, Carcass: k})
	}
	if s.next(2) == 0 {
		for site := range class.Sites() {
			if s.next(6) != 0 {
				continue
			}
			scores := make([]int, n)
			for i := range scores {
				scores[i] = s.next(n)
			}
			if r, err := placing.RankScores(scores...); err == nil {
				c.Walk = append(c.Walk, class.Look{Site: site, Order: r})
			}
		}
	}
	return c
}

// middles has the marbling in the middle of what is printed of a quality (our own).
var middles = map[string]string{"Low Prime": "SlAb50", "High Choice": "Md50", "Choice": "Mt50"}

// fairs reads the carcasses of fair-carcasses.csv as steers of A55 (our own), a class for
// each source, in the order in which they ranked.
func (t *tables) fairs() ([]Vector, error) {
	rows, err := t.rows("fair-carcasses.csv")
	if err != nil {
		return nil, err
	}
	var ids []string
	by := map[string]class.Class{}
	for _, r := range rows {
		id := r.Get("source_id")
		if _, ok := by[id]; !ok {
			ids = append(ids, id)
		}
		k, err := carcass(Object{
			"sex": "steer", "skeletal": "A55", "lean": "A55", "marbling": middles[r.Get("stated_quality")],
			"fat_in": r.Get("fat"), "ribeye_sq_in": r.Get("rea"), "kph_percent": r.Get("kph_derived"), "weight_lb": r.Get("hcw"),
		})
		if err != nil {
			return nil, err
		}
		c := by[id]
		c.Exhibits = append(c.Exhibits, class.Exhibit{Number: len(c.Exhibits) + 1, Carcass: k})
		by[id] = c
	}
	var all []Vector
	for _, id := range ids {
		all = append(all, Vector{From: "references/fair-carcasses.csv", In: classObject(by[id]), Source: id, Standing: cite.Derived.String()})
	}
	return all, nil
}

var classFile = maker{
	File: File{
		Name:   "placings",
		About:  "Classes placed by every named policy, with what each pair is decided by, the margin by which the two yields would have to move to turn it (firm where none turns it, none where the policy cannot tell), and the cuts proposed from the margins.",
		Rule:   "See the documents of DefaultPolicy, NotesPolicy, CutabilityPolicy, ValuePolicy, Graded.Decide, Graded.Place and Placing.ProposeCuts in package placing/class. A margin is exact to 0.00000001 of a grade. The policy value prices with references/price-report-2025-01-06.csv on an invented base of 300 a hundredweight.",
		Source: "uni-beef-judging-slides uni-carcass-placing-slides uni-placing-notes ams-ct155-2025-01-06",
	},
	solve: place,
	inputs: func(t *tables) ([]Vector, error) {
		classes, err := t.fairs()
		if err != nil {
			return nil, err
		}
		for seed := range uint64(24) {
			made, err := practice.Make(seed+1, practice.Spec{Exhibits: 4 + int(seed%8)/7})
			if err != nil {
				return nil, err
			}
			classes = append(classes, Vector{From: fmt.Sprintf("practice class of seed %d (invented)", seed+1), In: classObject(made.Graded.Class())})
		}
		s := sweep(12)
		for range 60 {
			classes = append(classes, Vector{From: "a sweep near the lines (invented)", In: classObject(drawnClass(&s))})
		}
		named, err := policies()
		if err != nil {
			return nil, err
		}
		var all []Vector
		for _, p := range named {
			for _, v := range classes {
				one := v
				one.Edition = grade.Current.String()
				one.In = Object{"policy": p.Name}
				for k, x := range v.In {
					one.In[k] = x
				}
				if p.Grid != nil {
					if _, err := place(one); err != nil {
						continue // the grid has no price for one of the carcasses
					}
				}
				all = append(all, one)
			}
		}
		return all, nil
	},
}
