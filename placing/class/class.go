package class

import (
	"encoding/json"
	"iter"
	"slices"
	"strconv"

	"example.com/ribface/grade"
	"example.com/ribface/internal/fault"
	"example.com/ribface/internal/text"
	"example.com/ribface/placing"
)

// Exhibit is one carcass of a class with the number it is shown under.
type Exhibit struct {
	Number  int           `json:"number"` // from 1 to the number of exhibits
	Carcass grade.Carcass // in JSON its fields stand beside the number
}

// flatExhibit is an Exhibit as JSON has it.
type flatExhibit struct {
	Number int `json:"number"`
	grade.Carcass
}

// MarshalJSON writes one object with the number and the fields of the carcass.
func (e Exhibit) MarshalJSON() ([]byte, error) {
	return json.Marshal(flatExhibit{e.Number, e.Carcass})
}

// Class is a class of carcasses as it hangs: the evidence on every exhibit, what
// was found in walking over them, and what they are graded by. The zero Class has
// no exhibits and is refused.
type Class struct {
	Rules    grade.Rules `json:"rules"`         // edition of the standard, and balancing of maturity
	Exhibits []Exhibit   `json:"exhibits"`      // 2 to 12, numbered from 1 in any order
	Walk     Walk        `json:"walk,omitzero"` // looks over the rest of the carcass; may be nil or half finished

	// Posted is one weight posted for the whole class, as the average of the
	// exhibits (published: amsa-committee). Where it is set it stands in for the
	// weight of every exhibit; zero leaves each its own.
	Posted grade.Weight `json:"posted,omitzero"`
}

// Graded is a class with every exhibit graded. It is made by [Class.Grade]; the
// zero Graded has no exhibits. In JSON it is the class, which is graded again when it
// is read; null for the zero Graded.
type Graded struct {
	given    Class
	exhibits []Exhibit // by number, with the posted weight put in
	assessed []grade.Assessment
}

// UnmarshalJSON reads an object as the package says under Encodings.
func (c *Class) UnmarshalJSON(b []byte) error { return text.Struct(b, c) }

// UnmarshalJSON reads an object as the package says under Encodings.
func (e *Exhibit) UnmarshalJSON(b []byte) error {
	f := flatExhibit{e.Number, e.Carcass}
	err := text.Struct(b, &f)
	e.Number, e.Carcass = f.Number, f.Carcass
	return err
}

// Grade grades every exhibit. Exhibits must be numbered 1 to n, each number once,
// with n from 2 to 12. With a posted weight, which has the limits of a carcass's, an
// exhibit needs none of its own.
//
// Everything that is missing or impossible gives a [*placing.FieldError], and
// [placing.Problems] lists them all: the rules, the posted weight, the exhibits as
// they come, the walk. A path follows the JSON names and counts the exhibits as they
// come from 0, as "exhibits[2].measures.fat"; a field names the exhibit by
// its number, as "exhibit 3: fat".
func (c Class) Grade() (Graded, error) {
	n := len(c.Exhibits)
	if n < placing.MinExhibits || n > placing.MaxExhibits {
		return Graded{}, &fault.FieldError{Path: "exhibits", Field: "exhibits", Value: strconv.Itoa(n), Allowed: "2 to 12", Err: fault.ErrRange}
	}
	rules := c.checkRules()
	posted := c.checkPosted()
	problems := []error{rules, posted}
	by, stand := c.Rules, c.Posted // what the exhibits are held to
	if rules != nil {
		by = grade.Rules{Edition: grade.Current} // which asks for least
	}
	if posted != nil {
		stand = grade.CarcassLimits().Least.Weight
	}
	g := Graded{given: c.clone(), exhibits: make([]Exhibit, n), assessed: make([]grade.Assessment, n)}
	for i, e := range c.Exhibits {
		at := nth("exhibits", i)
		if stand.IsSet() {
			e.Carcass.Measures.Weight = stand
		}
		a, err := by.Assess(e.Carcass)
		problems = append(problems, fault.At(at, "exhibit "+strconv.Itoa(e.Number), err))
		number := &fault.FieldError{Path: at + ".number", Field: "exhibit number", Value: strconv.Itoa(e.Number), Allowed: each(n)}
		switch {
		case e.Number < 1 || e.Number > n:
			number.Err = fault.ErrRange
			problems = append(problems, number)
		case g.exhibits[e.Number-1].Number != 0:
			number.Err = fault.ErrRepeated
			problems = append(problems, number)
		default:
			g.exhibits[e.Number-1], g.assessed[e.Number-1] = e, a
		}
	}
	problems = append(problems, fault.At("walk", "walk", c.Walk.Check(n)))
	if err := fault.Join(problems...); err != nil {
		return Graded{}, err
	}
	return g, nil
}

// path is the path of the carcass of an exhibit of the class.
func (g Graded) path(exhibit int) string {
	at := slices.IndexFunc(g.given.Exhibits, func(e Exhibit) bool { return e.Number == exhibit })
	return nth("exhibits", at)
}

func each(n int) string { return "each exhibit 1 to " + strconv.Itoa(n) + " once" }

// checkRules refuses an edition and balancing rules that are none.
func (c Class) checkRules() error {
	var edition error
	if e := c.Rules.Edition; !e.IsValid() {
		refused := &fault.FieldError{Path: "rules.edition", Field: "edition", Allowed: named(slices.Collect(grade.Editions()), ", "), Err: fault.ErrMissing}
		if e != 0 {
			refused.Value, refused.Err = e.String(), fault.ErrUnknown
		}
		edition = refused
	}
	return fault.Join(edition, fault.At("rules.maturity", "", c.Rules.Maturity.Check()))
}

// checkPosted refuses a posted weight that no carcass can have.
func (c Class) checkPosted() error {
	limits := grade.CarcassLimits()
	least, most := limits.Least.Weight, limits.Most.Weight
	if !c.Posted.IsSet() || c.Posted.Compare(least) >= 0 && c.Posted.Compare(most) <= 0 {
		return nil
	}
	return &fault.FieldError{Path: "posted", Field: "posted weight", Value: c.Posted.String(), Allowed: least.String() + " to " + most.String(), Err: fault.ErrRange}
}

// Class returns the class as it was given.
func (g Graded) Class() Class { return g.given.clone() }

// Equal reports whether two are of the same class: the same rules, exhibits, walk and
// posted weight as given.
func (g Graded) Equal(h Graded) bool {
	a, b := g.given, h.given
	return a.Rules == b.Rules && a.Posted == b.Posted && slices.Equal(a.Exhibits, b.Exhibits) && slices.Equal(a.Walk, b.Walk)
}

// MarshalJSON gives the class; null for the zero Graded.
func (g Graded) MarshalJSON() ([]byte, error) {
	if g.Len() == 0 {
		return []byte("null"), nil
	}
	return json.Marshal(g.given)
}

// UnmarshalJSON reads a class and grades it as [Class.Grade] does; null changes
// nothing. On error the receiver is left as it was.
func (g *Graded) UnmarshalJSON(b []byte) error { return text.Made(b, g, Class.Grade) }

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

// widestClass is the range of weights within which the exhibits of a class are
// chosen (published: amsa-committee).
const widestClass = 50 * 10_000 // 0.0001 lb

// Cautions says in plain sentences what a reader of the results must know: that a
// posted weight stands in for the exhibits' own, that their own weights are
// farther apart than the 50 lb within which a class is chosen (published:
// amsa-committee), measures outside the usual, chine buttons of another maturity
// group than the skeleton was called, and what the walk lacks. It returns nil
// where there is nothing to say.
func (g Graded) Cautions() []string {
	var all []string
	if w := g.given.Posted; w.IsSet() {
		all = append(all, "every exhibit is graded at the posted weight of "+w.String()+", not at its own")
	}
	var own []grade.Weight
	for _, e := range g.given.Exhibits {
		if w := e.Carcass.Measures.Weight; w.IsSet() {
			own = append(own, w)
		}
	}
	slices.SortFunc(own, grade.Weight.Compare)
	if n := len(own); n > 0 && own[n-1].Units()-own[0].Units() > widestClass {
		all = append(all, "own weights run from "+own[0].String()+" to "+own[n-1].String()+"; classes are chosen within 50 lb")
	}
	for _, e := range g.exhibits {
		for _, note := range e.Carcass.Measures.Unusual() {
			all = append(all, "exhibit "+strconv.Itoa(e.Number)+": "+note)
		}
		if m := e.Carcass.Maturity; !m.Buttons.Goes(m.Skeletal) {
			all = append(all, "exhibit "+strconv.Itoa(e.Number)+": buttons "+m.Buttons.String()+" do not go with skeletal maturity "+m.Skeletal.String())
		}
	}
	if m := g.given.Walk.Missing(); len(g.given.Walk) > 0 && m != nil {
		all = append(all, "the walk is not finished; not looked at: "+named(m, ", "))
	}
	return all
}

// Adjust returns the class with the fat of one exhibit adjusted, up or down, for the
// caller who accepts a proposal of [Graded.Represent]: grade and place it again. The
// adjustment replaces one that the exhibit may have had, and an unset one takes that
// away; the class itself stays as it is. An exhibit that is not in the class, and fat
// that the adjustment would take out of the limits of [grade.CarcassLimits], give a
// [*placing.FieldError]; [placing.Problems] lists them all.
func (c Class) Adjust(exhibit int, fat grade.Thickness) (Class, error) {
	at := slices.IndexFunc(c.Exhibits, func(e Exhibit) bool { return e.Number == exhibit })
	if at < 0 {
		return Class{}, &fault.FieldError{Path: "exhibit", Field: "adjustment: exhibit", Value: itoa(exhibit), Allowed: "an exhibit of the class", Err: fault.ErrUnknown}
	}
	c = c.clone()
	c.Exhibits[at].Carcass.FatAdjust = fat
	stands := c.Exhibits[at].Carcass
	if c.Posted.IsSet() {
		stands.Measures.Weight = c.Posted
	}
	if _, err := stands.Adjusted(); err != nil {
		return Class{}, fault.At(nth("exhibits", at), "exhibit "+itoa(exhibit), err)
	}
	return c, nil
}

// clone returns the class with lists of its own.
func (c Class) clone() Class {
	c.Exhibits, c.Walk = slices.Clone(c.Exhibits), slices.Clone(c.Walk)
	return c
}
