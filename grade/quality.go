package grade

import (
	"example.com/ribface/maturity"
	"example.com/ribface/maturity/cite"
)

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
	_, q, ok := r.judge(&c, nil)
	if !ok {
		return 0, r.checkQuality(&c)
	}
	return q, nil
}

// none is the quality of a carcass that is eligible for no grade.
const none = Quality(NoGrade) << 2

// oldestBullock is the greatest skeletal score of a bullock.
const oldestBullock = maturity.Score(200)

// judge finds the overall maturity and the quality grade of c, and t takes down each
// step; a nil t takes down nothing. ok is false for evidence that [Rules.Check]
// refuses, which then tells of it.
func (r Rules) judge(c *Carcass, t *trail) (overall maturity.Score, q Quality, ok bool) {
	lean := &c.Lean
	if !c.Sex.IsValid() || !c.Marbling.IsValid() || lean.Firmness > Firm || lean.Dark > DarkFull || lean.Color > LightCherryRed || lean.Texture > Fine {
		return 0, 0, false
	}
	overall, err := r.Overall(c.Maturity)
	if err != nil {
		return 0, 0, false
	}
	group, open := overall.Group(), openTo[c.Sex]
	if c.Sex == Bullock {
		group = maturity.A
		if c.Maturity.Skeletal > oldestBullock {
			open = 0
		}
	}
	if t != nil {
		t.class(overall, open)
	}
	if open == 0 {
		return overall, none, true
	}
	rows, at, units := editions[r.Edition].chart[group], 0, 0
	if group == maturity.A { // where every line is flat
		at, q = int(young[r.Edition].row[c.Marbling]), young[r.Edition].quality[c.Marbling]
	} else {
		units = int(overall - group.At(0))
		for c.Marbling < rows[at].min.on(units) {
			at++
		}
		q = rows[at].quality(c.Marbling, units)
	}
	for open>>rows[at].grade&1 == 0 {
		at++
		q = rows[at].quality(c.Marbling, units)
	}
	byLine, met := &rows[at], &rows[at]
	if t != nil {
		t.marbling(byLine, q, units)
	}
	if lean.Firmness != 0 && lean.Firmness < met.firm {
		for at < len(rows) && (lean.Firmness < rows[at].firm || open>>rows[at].grade&1 == 0) {
			at++
		}
		met, q = nil, none // a bullock too soft for Utility
		if at < len(rows) {
			met = &rows[at]
			q = met.quality(c.Marbling, units)
		}
	}
	if t != nil {
		t.firmness(byLine, met, q)
	}
	if lean.BelowCutter && q.Grade() == Cutter {
		q = Quality(Canner) << 2
		if t != nil {
			t.belowCutter(q)
		}
	}
	if lean.Dark != 0 {
		q = darken(rows, at, c, units, q, t)
	}
	return overall, q, true
}

// span is the width of a grade that has no line above it: three degrees (derived:
// cfr-1965-53-p25, where each further degree is a third of Prime and of Commercial).
const span = 300

// darken returns the quality q, of rows[at], after the reduction for a dark cutter.
//
// Places are counted in parts of 6*width of the grade, so that every step of the
// reduction (thirds of a grade or of half a grade) is a whole number of parts.
func darken(rows []row, at int, c *Carcass, units int, q Quality, t *trail) Quality {
	sixths, thirds, rule := 0, false, "no reduction below Standard and Commercial"
	switch q.Grade() {
	case Prime, Choice, Select, Good:
		sixths, thirds, rule = 2*int(c.Lean.Dark), true, "Prime, Choice and Select lose up to one full grade; "
	case Standard, Commercial:
		sixths, rule = int(c.Lean.Dark), "Standard and Commercial lose up to half a grade; "
	}
	before := q
	if sixths != 0 {
		lo, width := bounds(rows, at, units)
		place := 6*int(min(c.Marbling-lo, width-1)) - sixths*int(width)
		if place < 0 {
			// The grade below is open to every class that the grade itself is open to.
			at++
			place += 6 * int(width)
		}
		q = rows[at].grade.Part(partAt(rows, at, place, 6*int(width), units, thirds))
	}
	if t != nil {
		if sixths != 0 {
			rule += c.Lean.Dark.String() + " of it here"
		}
		t.add("dark cutter", rule, before.String(), q.String(), citeDark)
	}
	return q
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

// trail takes down what judge and the yield equation do. A nil trail takes down
// nothing.
type trail struct {
	carcass *Carcass
	edition Edition
	where   string // the marbling, and the column it is read in
	steps   []cite.Step
}

// class takes down what the sex class may have, and where its marbling is read.
func (t *trail) class(overall maturity.Score, open uint16) {
	c := t.carcass
	t.where = c.Marbling.String() + " in " + overall.String()
	rule, given, result, from := "open to every grade", c.Sex.String(), "all grades", citeSexes
	switch {
	case c.Sex == Bull:
		rule, result, from = "bulls are open to no quality grade", none.String(), citeBull
	case open == 0:
		rule, from = "a bullock's skeleton is not past the line between A and B", citeOldBull
		given, result = given+", skeletal "+c.Maturity.Skeletal.String(), none.String()
	case c.Sex == Bullock:
		t.where = c.Marbling.String() + " in column A"
		rule, result, from = "Prime, Choice, Select, Standard and Utility, by the lines of A", "graded in column A", citeBullock
	case c.Sex == Cow:
		rule, result, from = "cows are not eligible for Prime", "all but Prime", citeCow
	}
	t.add("sex class", rule, given, result, from)
}

// marbling takes down the best row that marbling alone meets, and the edge from which
// its part q runs.
func (t *trail) marbling(byLine *row, q Quality, units int) {
	from := byLine.startOf(q.Part())
	rule, result := byLine.grade.String()+" needs "+byLine.min.on(units).String()+" or more, edition "+t.edition.String(), q.String()
	if from == &byLine.min {
		t.add("marbling", rule, t.where, result, from.cite)
		return
	}
	t.add("marbling", rule, t.where, byLine.grade.String(), byLine.min.cite)
	t.add("part of the grade", result+" starts at "+from.on(units).String(), t.where, result, from.cite)
}

// firmness takes down the row that firmness meets too; nil for none.
func (t *trail) firmness(byLine, met *row, q Quality) {
	firm := t.carcass.Lean.Firmness
	rule, given, from := byLine.grade.String()+" needs "+byLine.firm.String()+" or firmer", firm.String(), byLine.firmCite
	switch {
	case firm == 0:
		rule, given, from = "the chart takes firmness to go with marbling", "not looked at", citeAssumed
	case met == nil:
		rule, from = "no grade open to the class is met", citeFirst
	case met != byLine:
		rule += "; the next grade down that is met"
	case met.firm == 0:
		rule, from = met.grade.String()+" has no known least firmness", citeFirst
	}
	t.add("firmness", rule, given, q.String(), from)
}

func (t *trail) add(name, rule, given, result string, from cite.Citation) {
	t.steps = append(t.steps, cite.Step{Name: name, Rule: rule, Given: given, Result: result, Cite: from})
}

func (t *trail) belowCutter(q Quality) {
	t.add("below Cutter", "the judge's own finding; no minimum is published", "below Cutter", q.String(), citeCanner)
}
