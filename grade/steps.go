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
	t := trail{carcass: &a.Carcass, edition: a.Rules.Edition, steps: a.Rules.Maturity.Steps(a.Carcass.Maturity, a.Rules.Edition.ByAge())}
	if a.Rules.assess(&a.Carcass, &a, &t) != nil {
		return nil
	}
	return t.steps
}

// yield takes down how y comes from m, the measures as adjusted.
func (t *trail) yield(m Measures, y Yield) {
	if adj := t.carcass.FatAdjust; adj.Units() != 0 {
		t.add("adjusted fat", "fat elsewhere on the carcass that the rib does not show", t.carcass.Measures.Fat.String()+" with "+fixed.Signed(adj.Units(), places)+" in", m.Fat.String(), citeAdjust)
	}
	t.add("fat", "preliminary yield grade: 2.00 and 0.25 for every 0.1 in; a start, not part of the equation", m.Fat.String(), m.Fat.Preliminary().String(), citePrelim)
	need := m.Weight.required()
	t.add("ribeye for the weight", "11.0 sq in at 600 lb and 0.3 for every 25 lb; a guide, not part of the equation", m.Ribeye.String()+" at "+m.Weight.String(), need.String()+" expected, "+fixed.Signed(m.Ribeye.Units()-need.Units(), places)+" sq in", citeRequired)
	terms := m.terms()
	t.add("equation: start", "2.50", "every carcass", fixed.Signed(terms.Start.Units(), yieldPlaces), citeEquation)
	t.add("equation: fat", "+ 2.50 per in", m.Fat.String(), fixed.Signed(terms.Fat.Units(), yieldPlaces), citeEquation)
	t.add("equation: kidney, pelvic and heart fat", "+ 0.20 per percent", m.KPH.String(), fixed.Signed(terms.KPH.Units(), yieldPlaces), citeEquation)
	t.add("equation: hot carcass weight", "+ 0.0038 per lb", m.Weight.String(), fixed.Signed(terms.Weight.Units(), yieldPlaces), citeEquation)
	t.add("equation: ribeye", "- 0.32 per sq in", m.Ribeye.String(), fixed.Signed(terms.Ribeye.Units(), yieldPlaces), citeEquation)
	t.add("yield", "the sum, exact", "the five terms", y.String(), citeEquation)
	t.add("yield grade", "decimals dropped, then kept to 1 to 5", y.String(), strconv.Itoa(y.Grade()), citeWhole)
}
