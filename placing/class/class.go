package class

import (
	"iter"
	"slices"
	"strconv"

	"example.com/ribface/grade"
	"example.com/ribface/internal/fault"
	"example.com/ribface/placing"
)

// Exhibit is one carcass of a class with the number it is shown under.
type Exhibit struct {
	Number  int // from 1 to the number of exhibits
	Carcass grade.Carcass
}

// Class is a class of carcasses as it hangs: the evidence on every exhibit, what
// was found in walking over them, and what they are graded by. The zero Class has
// no exhibits and is refused.
type Class struct {
	Rules    grade.Rules // edition of the standard, and balancing of maturity
	Exhibits []Exhibit   // 2 to 12, numbered from 1 in any order
	Walk     Walk        // looks over the rest of the carcass; may be nil or half finished

	// Posted is one weight posted for the whole class, as the average of the
	// exhibits (published: amsa-committee). Where it is set it stands in for the
	// weight of every exhibit; zero leaves each its own.
	Posted grade.Weight
}

// Graded is a class with every exhibit graded. It is made by [Class.Grade]; the
// zero Graded has no exhibits.
type Graded struct {
	given    Class
	exhibits []Exhibit // by number, with the posted weight put in
	assessed []grade.Assessment
}

// Grade grades every exhibit. Exhibits must be numbered 1 to n, each number once,
// with n from 2 to 12; the first figure that is missing or impossible gives a
// [*placing.FieldError] whose field names the exhibit. With a posted weight an exhibit
// needs none of its own.
func (c Class) Grade() (Graded, error) {
	n := len(c.Exhibits)
	if n < placing.MinExhibits || n > placing.MaxExhibits {
		return Graded{}, &fault.FieldError{Field: "exhibits", Value: strconv.Itoa(n), Allowed: "2 to 12", Err: fault.ErrRange}
	}
	if err := c.Walk.Check(n); err != nil {
		return Graded{}, fault.In("walk", err)
	}
	g := Graded{given: c, exhibits: make([]Exhibit, n), assessed: make([]grade.Assessment, n)}
	g.given.Exhibits, g.given.Walk = slices.Clone(c.Exhibits), slices.Clone(c.Walk)
	for _, e := range c.Exhibits {
		if e.Number < 1 || e.Number > n {
			return Graded{}, &fault.FieldError{Field: "exhibit number", Value: strconv.Itoa(e.Number), Allowed: each(n), Err: fault.ErrRange}
		}
		if g.exhibits[e.Number-1].Number != 0 {
			return Graded{}, &fault.FieldError{Field: "exhibit number", Value: strconv.Itoa(e.Number), Allowed: each(n), Err: fault.ErrRepeated}
		}
		if c.Posted.IsSet() {
			e.Carcass.Measures.Weight = c.Posted
		}
		a, err := c.Rules.Assess(e.Carcass)
		if err != nil {
			return Graded{}, fault.In("exhibit "+strconv.Itoa(e.Number), err)
		}
		g.exhibits[e.Number-1], g.assessed[e.Number-1] = e, a
	}
	return g, nil
}

// Class returns the class as it was given.
func (g Graded) Class() Class {
	c := g.given
	c.Exhibits, c.Walk = slices.Clone(c.Exhibits), slices.Clone(c.Walk)
	return c
}

// Len returns the number of exhibits.
func (g Graded) Len() int { return len(g.exhibits) }

// Exhibits yields the exhibits by number, with the posted weight put in where
// there is one.
func (g Graded) Exhibits() iter.Seq[Exhibit] { return slices.Values(g.exhibits) }

// Assessment returns the graded carcass of an exhibit; the zero Assessment for a
// number that is not in the class.
func (g Graded) Assessment(exhibit int) grade.Assessment {
	if exhibit < 1 || exhibit > g.Len() {
		return grade.Assessment{}
	}
	return g.assessed[exhibit-1]
}

// Posted returns the weight that stands in for every exhibit's own; ok is false
// where each has its own.
func (g Graded) Posted() (w grade.Weight, ok bool) { return g.given.Posted, g.given.Posted.IsSet() }

// widestClass is the range of weights within which the exhibits of a class are
// chosen (published: amsa-committee).
const widestClass = 50 * 10_000 // 0.0001 lb

// Notes says in plain sentences what a reader of the results must know: that a
// posted weight stands in for the exhibits' own, that their own weights are
// farther apart than the 50 lb within which a class is chosen (published:
// amsa-committee), measures outside the usual, chine buttons of another maturity
// group than the skeleton was called, and what the walk lacks. It returns nil
// where there is nothing to say.
func (g Graded) Notes() []string {
	var notes []string
	if w, ok := g.Posted(); ok {
		notes = append(notes, "every exhibit is graded at the posted weight of "+w.String()+", not at its own")
	}
	var least, most grade.Weight
	for _, e := range g.given.Exhibits {
		if w := e.Carcass.Measures.Weight; w.IsSet() {
			if !least.IsSet() {
				least, most = w, w
			}
			if w.Compare(least) < 0 {
				least = w
			}
			if w.Compare(most) > 0 {
				most = w
			}
		}
	}
	if most.Units()-least.Units() > widestClass {
		notes = append(notes, "own weights run from "+least.String()+" to "+most.String()+"; classes are chosen within 50 lb")
	}
	for _, e := range g.exhibits {
		for _, note := range e.Carcass.Measures.Unusual() {
			notes = append(notes, "exhibit "+strconv.Itoa(e.Number)+": "+note)
		}
		if m := e.Carcass.Maturity; !m.Buttons.Goes(m.Skeletal) {
			notes = append(notes, "exhibit "+strconv.Itoa(e.Number)+": buttons "+m.Buttons.String()+" do not go with skeletal maturity "+m.Skeletal.String())
		}
	}
	if m := g.given.Walk.Missing(); len(g.given.Walk) > 0 && m != nil {
		note := "the walk is not finished; not looked at:"
		for i, s := range m {
			if i > 0 {
				note += ","
			}
			note += " " + s.String()
		}
		notes = append(notes, note)
	}
	return notes
}

// Adjustment is an adjustment of the fat of one exhibit, up or down.
type Adjustment struct {
	Exhibit int
	Fat     grade.Thickness // added to the measured fat; negative where the rest is trimmer
}

// Adjust returns the class with the fat of some exhibits adjusted, for the caller
// who accepts a proposal of [Representation.Proposals]: grade and place it again.
// The adjustment replaces one that the exhibit may have had; the class itself
// stays as it is. An exhibit that is not in the class or is given twice, and fat
// that the adjustment would take under 0 or over 3 in, give a [*placing.FieldError].
func (c Class) Adjust(adjustments ...Adjustment) (Class, error) {
	c.Exhibits, c.Walk = slices.Clone(c.Exhibits), slices.Clone(c.Walk)
	done := map[int]bool{}
	for _, a := range adjustments {
		at := slices.IndexFunc(c.Exhibits, func(e Exhibit) bool { return e.Number == a.Exhibit })
		if at < 0 {
			return Class{}, &fault.FieldError{Field: "adjustment: exhibit", Value: strconv.Itoa(a.Exhibit), Allowed: "an exhibit of the class", Err: fault.ErrUnknown}
		}
		if done[a.Exhibit] {
			return Class{}, &fault.FieldError{Field: "adjustment: exhibit", Value: strconv.Itoa(a.Exhibit), Allowed: "one adjustment for an exhibit", Err: fault.ErrRepeated}
		}
		done[a.Exhibit] = true
		e := &c.Exhibits[at]
		e.Carcass.FatAdjust = a.Fat
		carcass := e.Carcass
		if c.Posted.IsSet() {
			carcass.Measures.Weight = c.Posted
		}
		if _, err := carcass.Adjusted(); err != nil {
			return Class{}, fault.In("exhibit "+strconv.Itoa(a.Exhibit), err)
		}
	}
	return c, nil
}
