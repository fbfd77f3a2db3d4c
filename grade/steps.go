package grade

import (
	"strconv"

	"example.com/ribface/internal/text/fixed"
	"example.com/ribface/maturity/cite"
)

// The ground under the steps that no line of the chart carries.
var (
	citeEquation = federal("cfr-54-105")
	citePrelim   = published("ext-sdsu-yield aged-quality-yield-slides")
	citeAdjust   = federal("cfr-1965-53-p26")
	citeWhole    = published("ext-sdsu-yield")
	citeRequired = published("ext-sdsu-yield")
	citeSexes    = published("export-classes montana-specs")
	citeCow      = federal("cfr-1965-53-prime cfr-1965-53-classes")
	citeBullock  = published("export-classes tamu-ansc627-2015 meatmentor-102")
	citeOldBull  = federal("cfr-post1975-p24")
	citeBull     = published("export-classes meatmentor-102")
	citeFirst    = federal("cfr-1965-53-general")
	citeAssumed  = published("tamu-ansc627-2015")
	citeDark     = federal("cfr-1965-53-p26")
	citeCanner   = memory
)

// Steps explains the assessment line by line, in the order in which a person
// works: age, maturity, sex class, marbling, firmness, dark cutting, then fat,
// ribeye, kidney fat and weight, and the yield grade. Each step has its rule, the
// numbers put in, what came out and where the rule comes from. The zero
// Assessment has no steps.
func (a Assessment) Steps() []cite.Step {
	var f finding
	if !a.Rules.judge(&a.Carcass, &f) {
		return nil
	}
	m, err := a.Carcass.Adjusted()
	if err != nil {
		return nil
	}
	steps := a.Rules.Maturity.Steps(a.Carcass.Maturity, a.Rules.Edition.ByAge())
	steps = append(steps, a.qualitySteps(&f)...)
	return append(steps, a.yieldSteps(m)...)
}

func (a Assessment) qualitySteps(f *finding) []cite.Step {
	c := a.Carcass
	var steps []cite.Step
	add := func(name, rule, given, result string, from cite.Citation) {
		steps = append(steps, cite.Step{Name: name, Rule: rule, Given: given, Result: result, Cite: from})
	}
	switch {
	case c.Sex == Bull:
		add("sex class", "bulls are open to no quality grade", c.Sex.String(), f.quality.String(), citeBull)
		return steps
	case c.Sex == Bullock && c.Maturity.Skeletal > oldestBullock:
		add("sex class", "a bullock's skeleton is not past the line between A and B", "bullock, skeletal "+c.Maturity.Skeletal.String(), f.quality.String(), citeOldBull)
		return steps
	case c.Sex == Bullock:
		add("sex class", "Prime, Choice, Select, Standard and Utility, by the lines of A", "bullock", "graded in column A", citeBullock)
	case c.Sex == Cow:
		add("sex class", "cows are not eligible for Prime", "cow", "all but Prime", citeCow)
	default:
		add("sex class", "open to every grade", c.Sex.String(), "all grades", citeSexes)
	}
	where := c.Marbling.String() + " in " + f.overall.String()
	if c.Sex == Bullock {
		where = c.Marbling.String() + " in column A"
	}
	if f.byLine != nil {
		q := f.byLine.grade.Part(f.byLine.part(c.Marbling, f.units))
		rule := f.byLine.grade.String() + " needs " + f.byLine.min.on(f.units).String() + " or more, edition " + a.Rules.Edition.String()
		if q.Part() == f.byLine.first {
			add("marbling", rule, where, q.String(), f.byLine.min.cite)
		} else {
			add("marbling", rule, where, f.byLine.grade.String(), f.byLine.min.cite)
			e := f.byLine.startOf(q.Part())
			add("part of the grade", q.String()+" starts at "+e.on(f.units).String(), where, q.String(), e.cite)
		}
	}
	firm, met := c.Lean.Firmness, f.before
	if met.Grade() == Canner {
		met = Cutter.Part(Whole) // the finding that makes it Canner has its own step
	}
	switch {
	case firm == 0:
		add("firmness", "the chart takes firmness to go with marbling", "not looked at", met.String(), citeAssumed)
	case f.met == nil:
		add("firmness", "no grade open to the class is met", firm.String(), f.quality.String(), citeFirst)
	case f.met != f.byLine:
		add("firmness", f.byLine.grade.String()+" needs "+f.byLine.firm.String()+" or firmer; the next grade down that is met", firm.String(), met.String(), f.byLine.firmCite)
	case f.met.firm == 0:
		add("firmness", f.met.grade.String()+" has no known least firmness", firm.String(), met.String(), citeFirst)
	default:
		add("firmness", f.met.grade.String()+" needs "+f.met.firm.String()+" or firmer", firm.String(), met.String(), f.met.firmCite)
	}
	if f.met != nil && f.met.grade == Cutter && c.Lean.BelowCutter {
		add("below Cutter", "the judge's own finding; no minimum is published", "below Cutter", f.before.String(), citeCanner)
	}
	if c.Lean.Dark != 0 {
		rule := "no reduction below Standard and Commercial"
		switch f.before.Grade() {
		case Prime, Choice, Select, Good:
			rule = "Prime, Choice and Select lose up to one full grade; " + c.Lean.Dark.String() + " of it here"
		case Standard, Commercial:
			rule = "Standard and Commercial lose up to half a grade; " + c.Lean.Dark.String() + " of it here"
		}
		add("dark cutter", rule, f.before.String(), f.quality.String(), citeDark)
	}
	return steps
}

// startOf returns the edge at which the average or high part starts.
func (r *row) startOf(p Part) edge {
	if p == Average {
		return r.average
	}
	return r.high
}

func (a Assessment) yieldSteps(m Measures) []cite.Step {
	var steps []cite.Step
	add := func(name, rule, given, result string, from cite.Citation) {
		steps = append(steps, cite.Step{Name: name, Rule: rule, Given: given, Result: result, Cite: from})
	}
	if adj := a.Carcass.FatAdjust; adj.Units() != 0 {
		add("adjusted fat", "fat elsewhere on the carcass that the rib does not show", a.Carcass.Measures.Fat.String()+" with "+fixed.Signed(adj.Units(), places)+" in", m.Fat.String(), citeAdjust)
	}
	add("fat", "preliminary yield grade: 2.00 and 0.25 for every 0.1 in; a start, not part of the equation", m.Fat.String(), m.Fat.Preliminary().String(), citePrelim)
	need := m.Weight.required()
	add("ribeye for the weight", "11.0 sq in at 600 lb and 0.3 for every 25 lb; a guide, not part of the equation", m.Ribeye.String()+" at "+m.Weight.String(), need.String()+" expected, "+fixed.Signed(m.Ribeye.Units()-need.Units(), places)+" sq in", citeRequired)
	t := m.terms()
	add("equation: start", "2.50", "every carcass", fixed.Signed(t.Start.Units(), yieldPlaces), citeEquation)
	add("equation: fat", "+ 2.50 per in", m.Fat.String(), fixed.Signed(t.Fat.Units(), yieldPlaces), citeEquation)
	add("equation: kidney, pelvic and heart fat", "+ 0.20 per percent", m.KPH.String(), fixed.Signed(t.KPH.Units(), yieldPlaces), citeEquation)
	add("equation: hot carcass weight", "+ 0.0038 per lb", m.Weight.String(), fixed.Signed(t.Weight.Units(), yieldPlaces), citeEquation)
	add("equation: ribeye", "- 0.32 per sq in", m.Ribeye.String(), fixed.Signed(t.Ribeye.Units(), yieldPlaces), citeEquation)
	sum := t.Sum()
	add("yield", "the sum, exact", "the five terms", sum.String(), citeEquation)
	add("yield grade", "decimals dropped, then kept to 1 to 5", sum.String(), strconv.Itoa(sum.Grade()), citeWhole)
	return steps
}
