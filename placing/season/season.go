package season

import (
	"maps"
	"slices"
	"strconv"
	"strings"
	"text/tabwriter"

	"example.com/ribface/grade"
	"example.com/ribface/internal/fault"
	"example.com/ribface/placing"
	"example.com/ribface/placing/contest"
)

// pair is an estimate with the truth that it is held against.
type pair struct{ estimate, truth int64 }

// trait is what is known of a trait that a member estimates on a carcass.
type trait struct {
	unit    string
	divisor int64 // integers in one unit
	shown   int   // decimals worth showing
	pair    func(card, key contest.Facts) (pair, bool)
}

// both pairs two answers that are given.
func both[T ~int16 | ~int32 | ~int64 | ~uint8](card, key T) (pair, bool) {
	return pair{int64(card), int64(key)}, card != 0 && key != 0
}

// measured pairs two numbers that are set.
func measured[T interface {
	IsSet() bool
	Units() int64
}](card, key T) (pair, bool) {
	return pair{card.Units(), key.Units()}, card.IsSet() && key.IsSet()
}

// preliminary pairs a preliminary grade with the official one, or with that of the
// official fat.
func preliminary(card, key contest.Facts) (pair, bool) {
	if !key.Preliminary.IsSet() && key.Fat.IsSet() {
		key.Preliminary = key.Fat.Preliminary()
	}
	return measured(card.Preliminary, key.Preliminary)
}

// unitsPerOne is how many units of a measurement there are in one inch, square inch,
// percent or pound.
const unitsPerOne = 10_000

var traits = [...]trait{
	grade.TraitSkeletal:    {"units", 1, 1, func(c, k contest.Facts) (pair, bool) { return both(c.Skeletal, k.Skeletal) }},
	grade.TraitLean:        {"units", 1, 1, func(c, k contest.Facts) (pair, bool) { return both(c.Lean, k.Lean) }},
	grade.TraitMaturity:    {"units", 1, 1, func(c, k contest.Facts) (pair, bool) { return both(c.Maturity, k.Maturity) }},
	grade.TraitMarbling:    {"points", 1, 1, func(c, k contest.Facts) (pair, bool) { return both(c.Marbling, k.Marbling) }},
	grade.TraitQuality:     {"rungs", 1, 2, func(c, k contest.Facts) (pair, bool) { return both(c.Quality, k.Quality) }},
	grade.TraitFat:         {"in", unitsPerOne, 3, func(c, k contest.Facts) (pair, bool) { return measured(c.Fat, k.Fat) }},
	grade.TraitPreliminary: {"grades", grade.OneGrade, 2, preliminary},
	grade.TraitRibeye:      {"sq in", unitsPerOne, 2, func(c, k contest.Facts) (pair, bool) { return measured(c.Ribeye, k.Ribeye) }},
	grade.TraitKPH:         {"%", unitsPerOne, 2, func(c, k contest.Facts) (pair, bool) { return measured(c.KPH, k.KPH) }},
	grade.TraitWeight:      {"lb", unitsPerOne, 1, func(c, k contest.Facts) (pair, bool) { return measured(c.Weight, k.Weight) }},
	grade.TraitYield:       {"grades", grade.OneGrade, 2, func(c, k contest.Facts) (pair, bool) { return measured(c.Yield, k.Yield) }},
}

// worker is embedded by what works and is no value.
type worker = fault.Worker

// Season follows the members over many contests, in one pass. Make one with
// [NewSeason]; the zero Season has no rungs and refuses every card. It holds a
// bounded number of integer sums for each member, and two of them can be merged in
// any order with the same result.
type Season struct {
	worker
	rungs   []grade.Quality // best first
	members map[string]*member
}

// member is what is known of one member.
type member struct {
	errors  [grade.TraitYield + 1]Errors
	quality Agreement
	yield   Agreement // of whole yield grades

	placings   int64
	right      int64 // pairs placed as the officials do
	wrong      int64
	lost, most int64 // points lost, and the most that could be
}

// NewSeason returns a Season without cards. The rungs are the quality grades in
// use, best first, as of [contest.ChartQualities]: 2 to 64, each once, each one that
// can be met on a card or in a key. An error of one step of a third is then an error
// of one rung.
func NewSeason(rungs []grade.Quality) (*Season, error) {
	if n := len(rungs); n < 2 || n > maxCategories {
		return nil, &fault.FieldError{Field: "rungs", Value: strconv.Itoa(n), Allowed: "2 to 64", Err: fault.ErrRange}
	}
	for i, r := range rungs {
		if slices.Contains(rungs[:i], r) {
			return nil, &fault.FieldError{Field: "rungs", Value: r.String(), Allowed: "each quality once", Err: fault.ErrRepeated}
		}
	}
	return &Season{rungs: slices.Clone(rungs), members: map[string]*member{}}, nil
}

// made reports whether NewSeason has made the season.
func (s *Season) made() bool { return s != nil && s.members != nil }

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
	if !s.made() {
		return missing("season")
	}
	var pairs [grade.TraitYield + 1]pair
	var given [grade.TraitYield + 1]bool
	var refused error
	refuse := func(err error) {
		if err != nil {
			refused = fault.Join(refused, err)
		}
	}
	for t := grade.TraitSkeletal; t <= grade.TraitYield; t++ {
		pairs[t], given[t] = traits[t].pair(card, key)
		if given[t] {
			refuse(check("estimate of "+t.String(), pairs[t].estimate))
			refuse(check("official "+t.String(), pairs[t].truth))
		}
	}
	var answer, official int
	if given[grade.TraitQuality] {
		var wrong, off error
		answer, wrong = s.rung("quality", card.Quality)
		official, off = s.rung("official quality", key.Quality)
		refuse(wrong)
		refuse(off)
		// Higher is better, as for the other traits.
		pairs[grade.TraitQuality] = pair{int64(-answer), int64(-official)}
	}
	if refused != nil {
		return refused
	}
	m := s.member(id)
	for t := grade.TraitSkeletal; t <= grade.TraitYield; t++ {
		if given[t] {
			_ = m.errors[t].Add(pairs[t].estimate, pairs[t].truth) // in range, as checked above
		}
	}
	if given[grade.TraitQuality] {
		_ = m.quality.Add(answer, official)
	}
	if given[grade.TraitYield] {
		_ = m.yield.Add(card.Yield.Grade()-1, key.Yield.Grade()-1)
	}
	return nil
}

// Placing adds one placing card of a member. A card without a placing is passed
// over. A card that [placing.Official.Score] refuses gives a [*placing.FieldError].
func (s *Season) Placing(id string, o placing.Official, card placing.Card) error {
	if !s.made() {
		return missing("season")
	}
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

// Merge adds what u has seen; nil has seen nothing. Other rungs give a
// [*placing.FieldError].
func (s *Season) Merge(u *Season) error {
	if u == nil {
		return nil
	}
	if !s.made() {
		return missing("season")
	}
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
func (s *Season) Members() []string {
	if s == nil {
		return nil
	}
	return slices.Sorted(maps.Keys(s.members))
}

// TraitFigures are the figures of one trait of one member, in the unit of the
// trait: maturity in hundredths of a group, marbling in hundredths of a degree, the
// quality grade in rungs of the season, fat in inches, ribeye in square inches, KPH in
// percent, weight in pounds, yield and preliminary yield in grades. They are those of
// [Errors] in the integers that the library holds, divided by the integers in one
// unit, which rounds once more. The N of each is the number of estimates.
type TraitFigures struct {
	Trait          grade.Trait `json:"trait"`
	Bias           Figure      `json:"bias"` // over 0 for estimates that are too high
	Spread         Figure      `json:"spread"`
	Lower          Figure      `json:"lower"` // lower limit of agreement: the bias less 1.96 times the spread
	Upper          Figure      `json:"upper"` // upper limit: the bias plus 1.96 times the spread
	MeanAbsolute   Figure      `json:"mean_absolute"`
	RootMeanSquare Figure      `json:"root_mean_square"`
	Correlation    Figure      `json:"correlation"`
}

// GradeFigures are the figures on whole categories: rungs of quality or whole yield
// grades. The N of each is the number of exhibits.
type GradeFigures struct {
	Exact     Figure `json:"exact"`   // share that is right
	OneOff    Figure `json:"one_off"` // share that is right or one off
	Kappa     Figure `json:"kappa"`   // Cohen's kappa
	Linear    Figure `json:"linear"`  // weighted kappa
	Quadratic Figure `json:"quadratic"`
}

// Calibration is what a season says of one member.
type Calibration struct {
	Member     string         `json:"member"`
	Traits     []TraitFigures `json:"traits"` // traits that were estimated, in the order of the constants
	Quality    GradeFigures   `json:"quality"`
	YieldGrade GradeFigures   `json:"yield_grade"`
	Tau        Figure         `json:"tau"`  // agreement with the official orders: pairs right less pairs wrong over all pairs, N of them; TooFew under 3 placings
	Lost       Figure         `json:"lost"` // points lost over the most that could be lost, 0.5 for a guesser; N placings, TooFew under 3
}

// Calibration returns what the season says of a member; ok is false for one who has
// handed in nothing.
func (s *Season) Calibration(id string) (c Calibration, ok bool) {
	if s == nil || s.members[id] == nil {
		return Calibration{}, false
	}
	m := s.members[id]
	c = Calibration{Member: id, Quality: m.quality.figures(), YieldGrade: m.yield.figures()}
	for t := grade.TraitSkeletal; t <= grade.TraitYield; t++ {
		if m.errors[t].n > 0 {
			c.Traits = append(c.Traits, m.errors[t].figures(t))
		}
	}
	if c.Tau = enough(m.placings, minErrors); c.Tau.OK() {
		c.Tau.N = int(m.right + m.wrong)
	}
	c.Tau = c.Tau.ratio(integer(m.right-m.wrong), integer(m.right+m.wrong))
	c.Lost = enough(m.placings, minErrors).ratio(integer(m.lost), integer(m.most))
	return c, true
}

func (a Agreement) figures() GradeFigures {
	return GradeFigures{a.Within(0), a.Within(1), a.Kappa(), a.LinearKappa(), a.QuadraticKappa()}
}

func (s Errors) figures(t grade.Trait) TraitFigures {
	per := func(f Figure) Figure {
		f.Value /= float64(traits[t].divisor)
		return f
	}
	lower, upper := s.Limits()
	return TraitFigures{t, per(s.Bias()), per(s.Spread()), per(lower), per(upper), per(s.MeanAbsolute()), per(s.RootMeanSquare()), s.Correlation()}
}

// String gives the calibration as plain text: a table of traits in their units, one
// of grades, and a line on placings.
func (c Calibration) String() string {
	var b strings.Builder
	b.WriteString("member " + c.Member + "\n")
	w := tabwriter.NewWriter(&b, 0, 0, 2, ' ', tabwriter.AlignRight)
	row := func(cells ...string) { _, _ = w.Write([]byte("\t" + strings.Join(cells, "\t") + "\t\n")) }
	if len(c.Traits) > 0 {
		row("trait", "unit", "n", "bias", "spread", "lower limit", "upper limit", "mean absolute", "root mean square", "correlation")
	}
	for _, t := range c.Traits {
		is := trait{shown: 2}
		if t.Trait != 0 && t.Trait <= grade.TraitYield {
			is = traits[t.Trait]
		}
		d := is.shown
		row(t.Trait.String(), is.unit, strconv.Itoa(t.Bias.N), t.Bias.signed(d), t.Spread.Text(d), t.Lower.signed(d), t.Upper.signed(d), t.MeanAbsolute.Text(d), t.RootMeanSquare.Text(d), t.Correlation.Text(2))
	}
	_ = w.Flush() // a Builder takes every write
	for i, g := range [...]struct {
		name string
		GradeFigures
	}{{"quality", c.Quality}, {"whole yield grade", c.YieldGrade}} {
		if i == 0 && c.Quality.Exact.N+c.YieldGrade.Exact.N > 0 {
			row("grade", "n", "right", "one off or right", "kappa", "linear", "quadratic")
		}
		if g.Exact.N > 0 {
			row(g.name, strconv.Itoa(g.Exact.N), g.Exact.Text(2), g.OneOff.Text(2), g.Kappa.Text(2), g.Linear.Text(2), g.Quadratic.Text(2))
		}
	}
	_ = w.Flush()
	if c.Lost.N > 0 {
		b.WriteString("  placings " + strconv.Itoa(c.Lost.N) + ": tau " + c.Tau.Text(2) + ", share of points lost " + c.Lost.Text(2) + "\n")
	}
	return b.String()
}
