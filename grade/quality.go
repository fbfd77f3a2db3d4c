package grade

import "example.com/ribface/maturity"

// Quality returns the quality grade of the carcass under the edition with the
// default balancing rules. Its measures are not looked at. See [Rules.Quality].
func (e Edition) Quality(c Carcass) (Quality, error) { return Rules{Edition: e}.Quality(c) }

// Quality returns the quality grade of the carcass; its measures are not looked
// at. The rule: the first grade, from the best down, that is open to the sex
// class and the overall maturity and whose least marbling and firmness are met
// (official in principle: cfr-1965-53-general); a value on a line meets it
// (derived). A dark cutter is then reduced, see [DarkCut].
//
// The reduction is measured on the chart (derived). A grade in one column, at the
// carcass's units, runs from its minimum to the minimum of the next grade above it
// in the column, whether the sex class may have that grade or not; the uppermost
// grade of a column is 300 points wide, three degrees, as Prime and Commercial are
// split into three. The carcass's place is its marbling less the minimum, but no
// more than the width less 1, over the width. From it the reduction is taken, as a
// fraction: a third, two thirds or the whole of 1 in Prime, Choice, Select and Good,
// of 1/2 in Standard and Commercial. What is left is the place in the same grade; a
// place under 0 becomes 1 more in the next grade down. The part is the best one
// whose edge the place reaches. Where thirds of a whole grade are lost, from Prime,
// Choice, Select or Good, an average or high edge printed at the first whole point
// at or over a third or two thirds of the width (as 67 and 134 of the 200 points of
// Standard in A) is taken to stand at that third, so that Slight00 less a third is
// High Standard.
//
// So among carcasses of one grade more marbling never gives the lower result. A
// step up in grade may: the best Standard can lose half a grade and the lowest of
// the grade above it a full one, so more marbling, younger bone or firmer lean can
// leave a dark cutter lower.
//
// A bullock whose skeleton is past the line between A and B is no bullock by the
// standard (official: cfr-post1975-p24) and gets NoGrade. The errors are those of
// [Rules.Assess] but for the measures.
func (r Rules) Quality(c Carcass) (Quality, error) {
	var f finding
	if !r.judge(&c, &f) {
		return 0, r.checkQuality(&c)
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

// judge finds the quality grade of c into a zero f; ok is false for evidence that
// [Rules.Check] refuses, which then tells of it.
func (r Rules) judge(c *Carcass, f *finding) (ok bool) {
	lean := &c.Lean
	if !c.Sex.IsValid() || !c.Marbling.IsValid() || lean.Firmness > Firm || lean.Dark > DarkFull || lean.Color > LightCherryRed || lean.Texture > Fine {
		return false
	}
	var err error
	if f.overall, err = r.Overall(c.Maturity); err != nil {
		return false
	}
	f.group = f.overall.Group()
	f.units = f.overall.Number() - int(f.group.At(0))
	f.quality, f.before = Quality(NoGrade)<<2, Quality(NoGrade)<<2
	switch {
	case c.Sex == Bullock && c.Maturity.Skeletal > oldestBullock:
		return true
	case c.Sex == Bullock:
		f.group, f.units = maturity.A, 0
	}
	rows := editions[r.Edition].chart[f.group]
	if f.group == maturity.A {
		// Every line of A is flat, so that marbling alone finds the row, unless the sex
		// class or the firmness closes it.
		young := &young[r.Edition]
		met := &rows[young.row[c.Marbling]]
		if openTo[c.Sex]>>met.grade&1 != 0 && (c.Lean.Firmness == 0 || c.Lean.Firmness >= met.firm) {
			f.byLine, f.met, f.before = met, met, young.quality[c.Marbling]
			f.quality = f.before
			if c.Lean.Dark != 0 {
				f.quality = darken(rows, int(young.row[c.Marbling]), c, f.units, f.before)
			}
			return true
		}
	}
	var byLine, met *row
	at, m, units, firm, open := 0, c.Marbling, f.units, c.Lean.Firmness, openTo[c.Sex]
	for i := range rows {
		row := &rows[i]
		if m < row.min.on(units) || open>>row.grade&1 == 0 {
			continue
		}
		if byLine == nil {
			byLine = row
		}
		if firm != 0 && firm < row.firm {
			continue
		}
		met, at = row, i
		break
	}
	f.byLine, f.met = byLine, met
	if f.met == nil {
		return true // a bull, or a bullock too soft for Utility
	}
	g := f.met.grade
	if g == Cutter && c.Lean.BelowCutter {
		g = Canner
	}
	f.before = Quality(g)<<2 | Quality(f.met.part(c.Marbling, f.units))
	f.quality = f.before
	if c.Lean.Dark != 0 {
		f.quality = darken(rows, at, c, f.units, f.before)
	}
	return true
}

// span is the width of a grade that has no line above it: three degrees (derived:
// cfr-1965-53-p25, where each further degree is a third of Prime and of Commercial).
const span = 300

// darken returns the quality of rows[at] after the reduction for a dark cutter.
//
// Places are counted in parts of 6*width of the grade, so that every step of the
// reduction (thirds of a grade or of half a grade) is a whole number of parts.
func darken(rows []row, at int, c *Carcass, units int, before Quality) Quality {
	var sixths int
	thirds := false
	switch rows[at].grade {
	case Prime, Choice, Select, Good:
		sixths, thirds = 2*int(c.Lean.Dark), true
	case Standard, Commercial:
		sixths = int(c.Lean.Dark)
	default:
		return before
	}
	lo, width := bounds(rows, at, units)
	place := 6*int(min(c.Marbling-lo, width-1)) - sixths*int(width)
	if place < 0 {
		// The grade below is open to every class that the grade itself is open to.
		at++
		place += 6 * int(width)
	}
	return rows[at].grade.Part(partAt(rows, at, place, 6*int(width), units, thirds))
}

// partAt returns the part of rows[at] at the place num/den of its width; with thirds,
// an edge that is a third of the width or two, rounded up, is held as that third.
func partAt(rows []row, at, num, den, units int, thirds bool) Part {
	r := &rows[at]
	lo, width := bounds(rows, at, units)
	reached := func(e edge, n int) bool {
		if e.at == 0 {
			return false
		}
		need := 3 * int(e.on(units)-lo)
		if third := n * int(width); thirds && need >= third && need < third+3 {
			need = third
		}
		return 3*num*int(width) >= need*den
	}
	switch {
	case reached(r.high, 2):
		return High
	case reached(r.average, 1):
		return Average
	default:
		return r.first
	}
}

// bounds returns the least marbling of rows[i] and how far it is to the line above.
func bounds(rows []row, i, units int) (lo, width Marbling) {
	lo = rows[i].min.on(units)
	if i == 0 {
		return lo, span
	}
	return lo, rows[i-1].min.on(units) - lo
}
