package grade

import (
	"example.com/ribface/internal/fault"
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
	err = Rules{Edition: e}.assess(&c, &a)
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
	err = r.assess(&c, &a)
	return a, err
}

// assess grades c into a zero a, which an error leaves as it is.
func (r Rules) assess(c *Carcass, a *Assessment) error {
	var f finding
	if !r.judge(c, &f) {
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
	a.Carcass, a.Rules, a.Maturity, a.Quality, a.Yield = *c, r, f.overall, f.quality, y
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
	var edition, sex, marbling, firmness, dark, color, texture error
	if !r.Edition.IsValid() {
		edition = editionNames.Check("edition", r.Edition)
	}
	if !c.Sex.IsValid() {
		sex = fault.At("sex", "", sexes.Check("sex class", c.Sex))
	}
	age := r.Maturity.Check()
	if err := c.Maturity.Check(r.Edition.ByAge()); err != nil {
		age = fault.Join(age, fault.At("maturity", "", err))
	}
	if !c.Marbling.IsValid() {
		marbling = fault.At("marbling", "", c.Marbling.Check("marbling"))
	}
	if c.Lean.Firmness > Firm {
		firmness = fault.At("lean.firmness", "", firmnesses.Check("firmness", c.Lean.Firmness))
	}
	if c.Lean.Dark > DarkFull {
		dark = fault.At("lean.dark", "", darkCuts.Check("dark cut", c.Lean.Dark))
	}
	if c.Lean.Color > LightCherryRed {
		color = fault.At("lean.color", "", colors.Check(colors.Kind, c.Lean.Color))
	}
	if c.Lean.Texture > Fine {
		texture = fault.At("lean.texture", "", textures.Check(textures.Kind, c.Lean.Texture))
	}
	return fault.Join(edition, sex, age, marbling, firmness, dark, color, texture)
}
