package grade

import (
	"example.com/ribface/maturity"
)

// Rules are what a carcass is graded by: the edition of the standard and the
// choices in balancing maturity that no source settles. The zero Rules have no
// edition, and every computation refuses them.
type Rules struct {
	Edition  Edition
	Maturity maturity.Rules
}

// Assessment is a graded carcass. It keeps what it was made from, so that it can
// explain itself; see [Assessment.Steps].
type Assessment struct {
	Carcass  Carcass
	Rules    Rules
	Maturity maturity.Score // overall maturity
	Quality  Quality        // NoGrade for a carcass that is eligible for none
	Yield    Yield          // exact; its whole grade is Yield.Grade()
}

// Assess grades the carcass under the edition with the default balancing rules.
// See [Rules.Assess].
func (e Edition) Assess(c Carcass) (Assessment, error) { return Rules{Edition: e}.Assess(c) }

// Quality returns the quality grade of the carcass under the edition with the
// default balancing rules. Its measures are not looked at. See [Rules.Quality].
func (e Edition) Quality(c Carcass) (Quality, error) { return Rules{Edition: e}.Quality(c) }

// Maturity returns the overall maturity of the evidence under the edition with
// the default balancing rules. See [Rules.Overall].
func (e Edition) Maturity(ev maturity.Evidence) (maturity.Score, error) {
	return Rules{Edition: e}.Overall(ev)
}

// Overall returns the overall maturity of the evidence: by [maturity.Rules.ByAge]
// where the edition lets teeth and papers count, by [maturity.Rules.ByBone]
// elsewhere. An unset edition and bad evidence give a [*FieldError].
func (r Rules) Overall(ev maturity.Evidence) (maturity.Score, error) {
	if !r.Edition.IsValid() {
		return 0, editionNames.Check("edition", int(r.Edition))
	}
	if editions[r.Edition].byAge {
		return r.Maturity.ByAge(ev)
	}
	return r.Maturity.ByBone(ev)
}

// Assess grades the carcass: overall maturity, quality grade and yield grade, in
// the order in which a person works. A bull gets NoGrade and a yield (common
// practice, no source).
//
// The first field that is missing or impossible gives a [*FieldError] that names
// it, and the Assessment is then the zero value.
func (r Rules) Assess(c Carcass) (Assessment, error) {
	var f finding
	if err := r.judge(&c, &f); err != nil {
		return Assessment{}, err
	}
	m := c.Measures
	if c.FatAdjust != 0 {
		var err error
		if m, err = c.Adjusted(); err != nil {
			return Assessment{}, err
		}
	}
	y, err := m.Yield()
	if err != nil {
		return Assessment{}, m.Check()
	}
	return Assessment{Carcass: c, Rules: r, Maturity: f.overall, Quality: f.quality, Yield: y}, nil
}

// Quality returns the quality grade of the carcass; its measures are not looked
// at. The rule: the first grade, from the best down, that is open to the sex
// class and the overall maturity and whose least marbling and firmness are met
// (official in principle: cfr-1965-53-general); a value on a line meets it
// (derived). A dark cutter is then reduced, see [DarkCut].
//
// The reduction is measured on the carcass's own place between the line it met
// and the next line above, and carried down to the same kind of place in the
// grade below (derived), so that among carcasses of one grade more marbling
// never gives the lower result. A step up in grade may: the best Standard can
// lose half a grade and the lowest of the grade above it a full one, so more
// marbling, younger bone or firmer lean can leave a dark cutter lower.
//
// A bullock whose skeleton is past the line between A and B is no bullock by the
// standard (official: cfr-post1975-p24) and gets NoGrade. The first field that is
// missing or impossible gives a [*FieldError] that names it.
func (r Rules) Quality(c Carcass) (Quality, error) {
	var f finding
	if err := r.judge(&c, &f); err != nil {
		return 0, err
	}
	return f.quality, nil
}

// finding is what judge found, with enough of the way for an explanation.
type finding struct {
	overall maturity.Score
	quality Quality
	group   maturity.Group // the column of the chart that was read
	units   int            // units into it
	byLine  *row           // the best row met by marbling alone and open to the class; nil for none
	met     *row           // the row met by firmness too
	before  Quality        // the quality before dark cutting
}

// oldestBullock is the greatest skeletal score of a bullock.
const oldestBullock = maturity.Score(200)

// judge finds the quality grade of c into a zero f.
func (r Rules) judge(c *Carcass, f *finding) error {
	var err error
	if !c.Sex.IsValid() {
		return sexes.Check("sex class", int(c.Sex))
	}
	if f.overall, err = r.Overall(c.Maturity); err != nil {
		return err
	}
	if !c.Marbling.IsValid() {
		return c.Marbling.Check("marbling")
	}
	if c.Lean.Firmness > Firm {
		return firmnesses.Check("firmness", int(c.Lean.Firmness))
	}
	if c.Lean.Dark > DarkFull {
		return darkCuts.Check("dark cut", int(c.Lean.Dark))
	}
	if c.Lean.Color > LightCherryRed {
		return colors.Check(colors.Kind, int(c.Lean.Color))
	}
	if c.Lean.Texture > Fine {
		return textures.Check(textures.Kind, int(c.Lean.Texture))
	}
	f.group, f.units = f.overall.Group(), f.overall.Units()
	f.quality, f.before = Quality(NoGrade)<<2, Quality(NoGrade)<<2
	switch {
	case c.Sex == Bullock && c.Maturity.Skeletal > oldestBullock:
		return nil
	case c.Sex == Bullock:
		f.group, f.units = maturity.A, 0
	}
	rows := editions[r.Edition].chart[f.group]
	var at int
	for i := range rows {
		row := &rows[i]
		if c.Marbling < row.min.on(f.units) || !c.Sex.open(row.grade) {
			continue
		}
		if f.byLine == nil {
			f.byLine = row
		}
		if c.Lean.Firmness != 0 && c.Lean.Firmness < row.firm {
			continue
		}
		f.met, at = row, i
		break
	}
	if f.met == nil {
		return nil // a bull, or a bullock too soft for Utility
	}
	g := f.met.grade
	if g == Cutter && c.Lean.BelowCutter {
		g = Canner
	}
	f.before = g.Part(f.met.part(c.Marbling, f.units))
	f.quality = f.before
	if c.Lean.Dark != 0 {
		f.quality = darken(rows, at, c, f.units, f.before)
	}
	return nil
}

// span is the width of a grade that has no line above it: three degrees, as
// Choice has and as lie between the lines of Utility and Commercial (derived).
const span = 300

// darken returns the quality of rows[at] after the reduction for a dark cutter.
//
// Places are counted in parts of 6*width of the grade, so that every step of the
// reduction (thirds of a grade or of half a grade) is a whole number of parts.
func darken(rows []row, at int, c *Carcass, units int, before Quality) Quality {
	var sixths int
	switch rows[at].grade {
	case Prime, Choice, Select, Good:
		sixths = 2 * int(c.Lean.Dark)
	case Standard, Commercial:
		sixths = int(c.Lean.Dark)
	default:
		return before
	}
	lo, width := bounds(rows, at, c.Sex, units)
	place := 6 * int(min(c.Marbling-lo, width-1))
	place -= sixths * int(width)
	if place >= 0 {
		return rows[at].grade.Part(rows[at].part(lo+Marbling(place/6), units))
	}
	// The same place, counted from the foot of the grade below, which is open to
	// every class that the grade itself is open to.
	below := at + 1
	lower, wide := bounds(rows, below, c.Sex, units)
	place += 6 * int(width)
	m := lower + Marbling(place*int(wide)/(6*int(width)))
	return rows[below].grade.Part(rows[below].part(m, units))
}

// bounds returns the least marbling of rows[i] and how far it is to the next
// open line above.
func bounds(rows []row, i int, s Sex, units int) (lo, width Marbling) {
	lo = rows[i].min.on(units)
	for j := i - 1; j >= 0; j-- {
		if s.open(rows[j].grade) {
			return lo, rows[j].min.on(units) - lo
		}
	}
	return lo, span
}
