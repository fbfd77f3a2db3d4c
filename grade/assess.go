package grade

import (
	"example.com/ribface/internal/fault"
	"example.com/ribface/internal/text"
	"example.com/ribface/maturity"
)

// Rules are what a carcass is graded by: the edition of the standard and the
// choices in balancing maturity that no source settles. The zero Rules have no
// edition, and every computation refuses them.
type Rules struct {
	Edition  Edition            `json:"edition"`
	Maturity maturity.Balancing `json:"maturity,omitzero"`
}

// Assessment is a graded carcass. It keeps what it was made from, so that it can
// explain itself; see [Assessment.Steps].
type Assessment struct {
	Carcass  Carcass        `json:"carcass"`
	Rules    Rules          `json:"rules"`
	Maturity maturity.Score `json:"maturity"` // overall maturity
	Quality  Quality        `json:"quality"`  // NoGrade for a carcass that is eligible for none
	Yield    Yield          `json:"yield"`    // exact; its whole grade is Yield.Grade()
}

// Assess grades the carcass under the edition with the default balancing rules.
// See [Rules.Assess].
func (e Edition) Assess(c Carcass) (a Assessment, err error) {
	err = Rules{Edition: e}.assess(&c, &a, nil)
	return a, err
}

// Overall returns the overall maturity of the evidence: by [maturity.Balancing.ByAge]
// where the edition lets teeth and papers count, by [maturity.Balancing.ByBone]
// elsewhere. An unset edition and bad evidence give a [*FieldError].
func (r Rules) Overall(ev maturity.Evidence) (maturity.Score, error) {
	if !r.Edition.IsValid() {
		return 0, editionNames.Check("edition", r.Edition)
	}
	if editions[r.Edition].byAge {
		return r.Maturity.ByAge(ev)
	}
	return r.Maturity.ByBone(ev)
}

// Assess grades the carcass: overall maturity, quality grade and yield grade, in
// the order in which a person works. A bull gets NoGrade and a yield; bulls and
// bullocks may carry a yield grade (published: meatmentor-102).
//
// An error tells of every field that is missing or impossible, each as a
// [*FieldError] with its path in the carcass, as "measures.fat"; [Problems] lists
// them. The Assessment is then the zero value.
func (r Rules) Assess(c Carcass) (a Assessment, err error) {
	err = r.assess(&c, &a, nil)
	return a, err
}

// assess grades c into a, which an error leaves as it is; t takes down each step, and
// a nil t takes down nothing.
func (r Rules) assess(c *Carcass, a *Assessment, t *trail) error {
	overall, q, ok := r.judge(c, t)
	if !ok {
		return r.Check(*c)
	}
	m := c.Measures
	if c.FatAdjust.n != 0 {
		var err error
		if m, err = c.Adjusted(); err != nil {
			return err
		}
	}
	y, err := m.Yield()
	if err != nil {
		return r.Check(*c)
	}
	if t != nil {
		t.yield(m, y)
	}
	a.Carcass, a.Rules, a.Maturity, a.Quality, a.Yield = *c, r, overall, q, y
	return nil
}

// Check returns an error that tells of everything that keeps [Rules.Assess] from
// grading the carcass; nil when there is nothing.
func (r Rules) Check(c Carcass) error {
	_, fat := c.Adjusted()
	return fault.Join(r.checkQuality(&c), fat)
}

// checkQuality is Check without the measures.
func (r Rules) checkQuality(c *Carcass) error {
	age := r.Maturity.Check()
	if err := c.Maturity.Check(r.Edition.ByAge()); err != nil {
		age = fault.Join(age, fault.At("maturity", "", err))
	}
	return fault.Join(
		editionNames.Check("edition", r.Edition),
		fault.At("sex", "", sexes.Check("sex class", c.Sex)),
		age,
		fault.At("marbling", "", c.Marbling.Check("marbling")),
		seen("lean.firmness", &firmnesses, c.Lean.Firmness),
		seen("lean.dark", &darkCuts, c.Lean.Dark),
		seen("lean.color", &colors, c.Lean.Color),
		seen("lean.texture", &textures, c.Lean.Texture),
	)
}

// seen checks a finding that need not be there.
func seen[T ~uint8](path string, e *text.Enum[T], v T) error {
	if v == 0 {
		return nil
	}
	return fault.At(path, "", e.Check(e.Kind, v))
}
