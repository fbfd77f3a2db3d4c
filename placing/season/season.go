package season

import (
	"database/sql/driver"
	"maps"
	"slices"
	"strconv"
	"strings"
	"text/tabwriter"

	"example.com/ribface/grade"
	"example.com/ribface/internal/text"
	"example.com/ribface/placing"
	"example.com/ribface/placing/contest"
)

// Trait is something that a member estimates on a carcass. The zero Trait is not
// set.
type Trait uint8

// The traits.
const (
	TraitSkeletal    Trait = 1 + iota // skeletal maturity, in units of a hundredth of a group
	TraitLean                         // lean maturity, in the same units
	TraitMaturity                     // overall maturity, in the same units
	TraitMarbling                     // in points of a hundredth of a degree
	TraitQuality                      // quality grade, in rungs of the season's ladder
	TraitFat                          // in inches
	TraitPreliminary                  // preliminary yield grade, in grades
	TraitRibeye                       // in square inches
	TraitKPH                          // in percent
	TraitWeight                       // hot carcass weight, in pounds
	TraitYield                        // yield grade with its decimals
)

// trait is what is known of a trait.
type trait struct {
	unit    string
	divisor int64 // integers in one unit
	shown   int   // decimals worth showing
	pair    func(card, key contest.Facts) (Pair, bool)
}

var traitNames = text.Enum{Kind: "trait", Names: []string{"", "skeletal", "lean", "maturity", "marbling", "quality", "fat", "preliminary", "ribeye", "KPH", "weight", "yield"}}

// both pairs two answers that are given.
func both[T ~int16 | ~int32 | ~int64 | ~uint8](card, key contest.Answer[T]) (Pair, bool) {
	return Pair{int64(card.Value), int64(key.Value)}, card.Given && key.Given
}

// preliminary pairs a preliminary grade with the official one, or with that of the
// official fat.
func preliminary(card, key contest.Facts) (Pair, bool) {
	if !key.Preliminary.Given && key.Fat.Given {
		key.Preliminary = contest.Give(key.Fat.Value.Preliminary())
	}
	return both(card.Preliminary, key.Preliminary)
}

var traits = [...]trait{
	TraitSkeletal:    {"units", 1, 1, func(c, k contest.Facts) (Pair, bool) { return both(c.Skeletal, k.Skeletal) }},
	TraitLean:        {"units", 1, 1, func(c, k contest.Facts) (Pair, bool) { return both(c.Lean, k.Lean) }},
	TraitMaturity:    {"units", 1, 1, func(c, k contest.Facts) (Pair, bool) { return both(c.Maturity, k.Maturity) }},
	TraitMarbling:    {"points", 1, 1, func(c, k contest.Facts) (Pair, bool) { return both(c.Marbling, k.Marbling) }},
	TraitQuality:     {"rungs", 1, 2, func(c, k contest.Facts) (Pair, bool) { return both(c.Quality, k.Quality) }},
	TraitFat:         {"in", int64(grade.Inch), 3, func(c, k contest.Facts) (Pair, bool) { return both(c.Fat, k.Fat) }},
	TraitPreliminary: {"grades", int64(grade.OneGrade), 2, preliminary},
	TraitRibeye:      {"sq in", int64(grade.SquareInch), 2, func(c, k contest.Facts) (Pair, bool) { return both(c.Ribeye, k.Ribeye) }},
	TraitKPH:         {"%", int64(grade.OnePercent), 2, func(c, k contest.Facts) (Pair, bool) { return both(c.KPH, k.KPH) }},
	TraitWeight:      {"lb", int64(grade.Pound), 1, func(c, k contest.Facts) (Pair, bool) { return both(c.Weight, k.Weight) }},
	TraitYield:       {"grades", int64(grade.OneGrade), 2, func(c, k contest.Facts) (Pair, bool) { return both(c.Yield, k.Yield) }},
}

// IsValid reports whether t is one of the named traits.
func (t Trait) IsValid() bool { return traitNames.IsValid(int(t)) }

// Unit returns the unit of the trait's errors, as "sq in"; empty for a trait that
// is not valid.
func (t Trait) Unit() string {
	if !t.IsValid() {
		return ""
	}
	return traits[t].unit
}

// String gives the name; "unset" for zero.
func (t Trait) String() string { return traitNames.String(int(t)) }

// ParseTrait reads the name of a trait, as [Trait.String] writes it.
func ParseTrait(s string) (Trait, error) {
	v, err := traitNames.Parse(s)
	return Trait(v), err
}

// AppendText appends the name; the zero value is empty text.
func (t Trait) AppendText(b []byte) ([]byte, error) { return traitNames.Append(b, int(t)) }

// MarshalText gives the name; the zero value is empty text.
func (t Trait) MarshalText() ([]byte, error) { return t.AppendText(nil) }

// UnmarshalText reads a name. On error the receiver is left as it was.
func (t *Trait) UnmarshalText(b []byte) error { return text.Unmarshal(t, b, ParseTrait) }

// Value gives the name for a database.
func (t Trait) Value() (driver.Value, error) { return text.Value(t) }

// Scan reads a name from a database column that holds text.
func (t *Trait) Scan(src any) error { return text.Scan(t, traitNames.Kind, src) }

// Season follows the members over many contests, in one pass. Make one with
// [NewSeason]; the zero Season has no rungs and refuses every card. It holds a
// bounded number of integer sums for each member, and two of them can be merged in
// any order with the same result.
type Season struct {
	rungs   []grade.Quality // best first
	members map[string]*member
}

// member is what is known of one member.
type member struct {
	errors  [TraitYield + 1]Errors
	quality Agreement
	yield   Agreement // of whole yield grades

	placings   int64
	right      int64 // pairs placed as the officials do
	wrong      int64
	lost, most int64 // points lost, and the most that could be
}

// NewSeason returns a Season without cards. The rungs are the quality grades in
// use, best first, as of [contest.CardQualities]: 2 to 64, each once. An error of one
// step of a third is then an error of one rung.
func NewSeason(rungs []grade.Quality) (*Season, error) {
	if n := len(rungs); n < 2 || n > maxCategories {
		return nil, &fault.FieldError{Field: "rungs", Value: strconv.Itoa(n), Allowed: "2 to 64", Err: fault.ErrRange}
	}
	for i, r := range rungs {
		if slices.Contains(rungs[:i], r) {
			return nil, &fault.FieldError{Field: "rungs", Value: r.String(), Allowed: "each quality once", Err: fault.ErrRepeated}
		}
	}
	return &Season{slices.Clone(rungs), map[string]*member{}}, nil
}

func (s *Season) member(id string) *member {
	m := s.members[id]
	if m == nil {
		m = &member{}
		m.quality, _ = NewAgreement(len(s.rungs))
		m.yield, _ = NewAgreement(5)
		s.members[id] = m
	}
	return m
}

// rung returns the category of a quality, 0 for the best.
func (s *Season) rung(field string, q grade.Quality) (int, error) {
	i := slices.Index(s.rungs, q)
	if i < 0 {
		return 0, &fault.FieldError{Field: field, Value: q.String(), Allowed: "a rung of the season", Err: fault.ErrUnknown}
	}
	return i, nil
}

// Estimate adds one grading card of a member with the official facts. Every trait
// that both give is added; marks and empty fields are passed over. A quality that
// is no rung and a value beyond a trillion give a [*placing.FieldError], and then nothing
// is added.
func (s *Season) Estimate(id string, card, key contest.Facts) error {
	var pairs [TraitYield + 1]Pair
	var given [TraitYield + 1]bool
	for t := TraitSkeletal; t <= TraitYield; t++ {
		pairs[t], given[t] = traits[t].pair(card, key)
		if given[t] {
			if err := check("estimate of "+t.String(), pairs[t].Estimate); err != nil {
				return err
			}
			if err := check("official "+t.String(), pairs[t].Truth); err != nil {
				return err
			}
		}
	}
	var answer, official int
	if given[TraitQuality] {
		var err error
		if answer, err = s.rung("quality", card.Quality.Value); err != nil {
			return err
		}
		if official, err = s.rung("official quality", key.Quality.Value); err != nil {
			return err
		}
		// Higher is better, as for the other traits.
		pairs[TraitQuality] = Pair{int64(-answer), int64(-official)}
	}
	m := s.member(id)
	for t := TraitSkeletal; t <= TraitYield; t++ {
		if given[t] {
			_ = m.errors[t].Add(pairs[t]) // in range, as checked above
		}
	}
	if given[TraitQuality] {
		_ = m.quality.Add(answer, official)
	}
	if given[TraitYield] {
		_ = m.yield.Add(card.Yield.Value.Grade()-1, key.Yield.Value.Grade()-1)
	}
	return nil
}

// Placing adds one placing card of a member. A card without a placing is passed
// over. A card that [placing.Official.Score] refuses gives a [*placing.FieldError].
func (s *Season) Placing(id string, o placing.Official, card placing.Card) error {
	if !card.Order.IsValid() {
		return nil
	}
	score, err := o.Score(card.Order)
	if err != nil {
		return err
	}
	wrong, _ := o.Order().Disagreements(card.Order)
	n := card.Order.Len()
	m := s.member(id)
	m.placings++
	m.wrong += int64(wrong)
	m.right += int64(n*(n-1)/2 - wrong)
	m.lost += int64(placing.FullScore - score)
	m.most += int64(o.Cuts().GreatestLoss())
	return nil
}

// Merge adds what u has seen. Other rungs give a [*placing.FieldError].
func (s *Season) Merge(u *Season) error {
	if !slices.Equal(s.rungs, u.rungs) {
		return &fault.FieldError{Field: "rungs", Allowed: "the same rungs in both", Err: fault.ErrRange}
	}
	for id, from := range u.members {
		m := s.member(id)
		for t := range m.errors {
			m.errors[t].Merge(from.errors[t])
		}
		_ = m.quality.Merge(from.quality) // of the same rungs
		_ = m.yield.Merge(from.yield)
		m.placings += from.placings
		m.right += from.right
		m.wrong += from.wrong
		m.lost += from.lost
		m.most += from.most
	}
	return nil
}

// Members returns the members who have handed in something, sorted.
func (s *Season) Members() []string { return slices.Sorted(maps.Keys(s.members)) }

// TraitFigures are the figures of one trait of one member, in the unit of the
// trait: those of [Errors] in the integers that the library holds, divided by the
// integers in one unit, which rounds once more.
type TraitFigures struct {
	Trait          Trait
	N              int
	Bias           Figure // over 0 for estimates that are too high
	Spread         Figure
	MeanAbsolute   Figure
	RootMeanSquare Figure
	Correlation    Figure
}

// GradeFigures are the figures on whole categories: rungs of quality or whole yield
// grades.
type GradeFigures struct {
	N         int
	Exact     Figure // share that is right
	OneOff    Figure // share that is right or one off
	Kappa     Figure // Cohen's kappa
	Linear    Figure // weighted kappa
	Quadratic Figure
}

// Calibration is what a season says of one member.
type Calibration struct {
	Member     string
	Traits     []TraitFigures // traits that were estimated, in the order of the constants
	Quality    GradeFigures
	YieldGrade GradeFigures
	Placings   int
	Tau        Figure // agreement with the official orders: pairs right less pairs wrong over all pairs, N of them
	Lost       Figure // points lost over the most that could be lost, 0.5 for a guesser; N placings
}

// Calibration returns what the season says of a member; ok is false for one who has
// handed in nothing.
func (s *Season) Calibration(id string) (c Calibration, ok bool) {
	m := s.members[id]
	if m == nil {
		return Calibration{}, false
	}
	c = Calibration{Member: id, Quality: m.quality.figures(), YieldGrade: m.yield.figures(), Placings: int(m.placings)}
	for t := TraitSkeletal; t <= TraitYield; t++ {
		if m.errors[t].n > 0 {
			c.Traits = append(c.Traits, m.errors[t].figures(t))
		}
	}
	if c.Tau = enough(m.placings, MinErrors); c.Tau.OK() {
		c.Tau.N = int(m.right + m.wrong)
	}
	c.Tau = c.Tau.ratio(integer(m.right-m.wrong), integer(m.right+m.wrong))
	c.Lost = enough(m.placings, MinErrors).ratio(integer(m.lost), integer(m.most))
	return c, true
}

func (a Agreement) figures() GradeFigures {
	return GradeFigures{a.N(), a.Within(0), a.Within(1), a.Kappa(Unweighted), a.Kappa(Linear), a.Kappa(Quadratic)}
}

func (s Errors) figures(t Trait) TraitFigures {
	per := func(f Figure) Figure {
		f.Value /= float64(traits[t].divisor)
		return f
	}
	return TraitFigures{t, s.N(), per(s.Bias()), per(s.Spread()), per(s.MeanAbsolute()), per(s.RootMeanSquare()), s.Correlation()}
}

// String gives the calibration as plain text: a table of traits in their units, one
// of grades, and a line on placings.
func (c Calibration) String() string {
	var b strings.Builder
	b.WriteString("member " + c.Member + "\n")
	w := tabwriter.NewWriter(&b, 0, 0, 2, ' ', tabwriter.AlignRight)
	row := func(cells ...string) { _, _ = w.Write([]byte("\t" + strings.Join(cells, "\t") + "\t\n")) }
	if len(c.Traits) > 0 {
		row("trait", "unit", "n", "bias", "spread", "mean absolute", "root mean square", "correlation")
	}
	for _, t := range c.Traits {
		d := traits[t.Trait].shown
		row(t.Trait.String(), t.Trait.Unit(), strconv.Itoa(t.N), signed(t.Bias, d), t.Spread.Text(d), t.MeanAbsolute.Text(d), t.RootMeanSquare.Text(d), t.Correlation.Text(2))
	}
	_ = w.Flush() // a Builder takes every write
	for i, g := range [...]struct {
		name string
		GradeFigures
	}{{"quality", c.Quality}, {"whole yield grade", c.YieldGrade}} {
		if i == 0 && c.Quality.N+c.YieldGrade.N > 0 {
			row("grade", "n", "right", "one off or right", "kappa", "linear", "quadratic")
		}
		if g.N > 0 {
			row(g.name, strconv.Itoa(g.N), g.Exact.Text(2), g.OneOff.Text(2), g.Kappa.Text(2), g.Linear.Text(2), g.Quadratic.Text(2))
		}
	}
	_ = w.Flush()
	if c.Placings > 0 {
		b.WriteString("  placings " + strconv.Itoa(c.Placings) + ": tau " + c.Tau.Text(2) + ", share of points lost " + c.Lost.Text(2) + "\n")
	}
	return b.String()
}

// signed writes a figure with its sign.
func signed(f Figure, decimals int) string {
	s := f.Text(decimals)
	if f.OK() && f.Value > 0 {
		return "+" + s
	}
	return s
}
