package main

import (
	"cmp"
	"math/big"
	"math/bits"
	"slices"
	"strings"

	"example.com/ribface/grade"
	"example.com/ribface/grade/price"
	"example.com/ribface/grade/sheet"
	"github.com/shopspring/decimal"
)

// summary is what is known of a lot. It has the same size whatever the lot's.
type summary struct {
	sheet.Counts
	by     string // the column of the groups
	all    tally
	groups map[string]*tally

	grid     *price.Grid // nil for no prices
	priced   int
	unpriced int
	weight   int64           // sum of the weights priced, in 0.0001 lb
	head     decimal.Decimal // sum of the values per head, exact
}

// tally counts the carcasses of one group.
type tally struct {
	n       int
	dark    int                     // dark cutters
	cells   [grade.Prime + 1][6]int // by quality grade and whole yield grade, 0 for not graded
	halves  [halves]int             // by half grades of the exact yield
	degrees [grade.Abundant + 1]int // by degree of marbling
	means   [len(figures)]moments
}

// halves is how many half grades the histogram has; those at the ends hold what is
// beyond too.
const halves = 14

// figure is something of which means are taken.
type figure struct {
	name   string // as a column of a sheet
	title  string
	places int32 // of its unit
	shown  int32 // decimals that are shown
}

var figures = [...]figure{
	{"fat_in", "fat, adjusted, in", 4, 3},
	{"ribeye_sq_in", "ribeye, sq in", 4, 2},
	{"kph_pct", "KPH, %", 4, 2},
	{"weight_lb", "hot carcass weight, lb", 4, 1},
	{"marbling", "marbling, Slight00 = 400", 0, 0},
	{"yield", "yield", 8, 3},
}

// mostGroups is how many groups are kept apart; the rows of more go into one.
const mostGroups = 1000

func (s *summary) add(key string, a *grade.Assessment) {
	s.all.add(a)
	if s.by == "" {
		return
	}
	if s.groups == nil {
		s.groups = map[string]*tally{}
	}
	t := s.groups[key]
	if t == nil && len(s.groups) >= mostGroups {
		key = "(all other groups)"
		t = s.groups[key]
	}
	if t == nil {
		t = &tally{}
		s.groups[key] = t
	}
	t.add(a)
}

func (s *summary) price(v price.Value, priced bool) {
	if !priced {
		s.unpriced++
		return
	}
	s.priced++
	s.weight += v.Weight().Units()
	s.head = s.head.Add(v.PerHead())
}

// names lists the groups in order, numbers by their value.
func (s *summary) names() []string {
	var names []string
	for name := range s.groups {
		names = append(names, name)
	}
	slices.SortFunc(names, func(a, b string) int {
		x, errX := decimal.NewFromString(a)
		y, errY := decimal.NewFromString(b)
		if errX == nil && errY == nil && !x.Equal(y) {
			return x.Cmp(y)
		}
		return cmp.Compare(a, b)
	})
	return names
}

func (t *tally) add(a *grade.Assessment) {
	t.n++
	t.cells[a.Quality.Grade()][a.Yield.Grade()]++
	c := &a.Carcass
	if c.Lean.Dark != 0 {
		t.dark++
	}
	fat := c.Measures.Fat
	if m, err := c.Adjusted(); err == nil {
		fat = m.Fat
	}
	if fat.IsSet() {
		t.means[0].add(fat.Units())
	}
	if v := c.Measures.Ribeye; v.IsSet() {
		t.means[1].add(v.Units())
	}
	if v := c.Measures.KPH; v.IsSet() {
		t.means[2].add(v.Units())
	}
	if v := c.Measures.Weight; v.IsSet() {
		t.means[3].add(v.Units())
	}
	if c.Marbling != 0 {
		t.means[4].add(int64(c.Marbling))
		t.degrees[c.Marbling.Degree()]++
	}
	if a.Yield.IsSet() {
		v := a.Yield.Units()
		t.means[5].add(v)
		t.halves[min(max(v, 0)/(grade.OneGrade/2), halves-1)]++
	}
}

// quality and yield count the carcasses of a grade.
func (t *tally) quality(g grade.Grade) (n int) {
	for _, c := range t.cells[g] {
		n += c
	}
	return n
}

func (t *tally) yield(y int) (n int) {
	for _, row := range t.cells {
		n += row[y]
	}
	return n
}

// grades lists the quality grades that occur, best first.
func (t *tally) grades() (all []grade.Grade) {
	for g := grade.Prime; g >= grade.NoGrade; g-- {
		if t.quality(g) > 0 {
			all = append(all, g)
		}
	}
	return all
}

// graded counts the carcasses with a quality grade and those with a yield.
func (t *tally) graded() (quality, yield int) { return t.n - t.quality(0), t.n - t.yield(0) }

// moments are the count of some values, their sum and the sum of their squares, all
// exact.
type moments struct {
	n      int
	sum    int64
	hi, lo uint64
}

func (m *moments) add(v int64) {
	m.n++
	m.sum += v
	u := uint64(max(v, -v))
	hi, lo := bits.Mul64(u, u)
	var carry uint64
	m.lo, carry = bits.Add64(m.lo, lo, 0)
	m.hi, _ = bits.Add64(m.hi, hi, carry)
}

// mean gives the mean with so many decimals, halves up; empty for no values.
func (m *moments) mean(t figure) string {
	if m.n == 0 {
		return ""
	}
	return decimal.New(mean(m.sum, int64(m.n)), -t.places).Round(t.shown).StringFixed(t.shown)
}

// spread gives the sample standard deviation with so many decimals; empty for fewer
// than two values. It is the root of (n sum of squares - square of sum) / (n (n - 1)).
func (m *moments) spread(t figure) string {
	if m.n < 2 {
		return ""
	}
	n := big.NewInt(int64(m.n))
	squares := new(big.Int).SetUint64(m.hi)
	squares.Lsh(squares, 64).Add(squares, new(big.Int).SetUint64(m.lo))
	sum := big.NewInt(m.sum)
	v := squares.Mul(squares, n)
	v.Sub(v, sum.Mul(sum, sum))
	// Two more digits than are shown, and 4 times under the root for its half.
	const more = 2
	for range 2 * more {
		v.Mul(v, big.NewInt(10))
	}
	v.Mul(v, big.NewInt(4)).Quo(v, new(big.Int).Mul(n, big.NewInt(int64(m.n)-1))).Sqrt(v)
	v.Add(v, big.NewInt(1)).Rsh(v, 1)
	return decimal.NewFromBigInt(v, -t.places-more).Round(t.shown).StringFixed(t.shown)
}

// mean divides a sum by n, halves up.
func mean(sum, n int64) int64 {
	q, rest := sum/n, sum%n
	if rest < 0 {
		q, rest = q-1, rest+n
	}
	if 2*rest >= n {
		q++
	}
	return q
}

// group finds what makes the groups: an extra column, one of the mapping, or one of
// the graded sheet.
func group(by string, extra []string, columns map[string]string) (func(*sheet.GradedRow) string, error) {
	for i, name := range extra {
		if strings.EqualFold(name, by) {
			return func(g *sheet.GradedRow) string { return strings.TrimSpace(g.Extra[i]) }, nil
		}
	}
	name := strings.ToLower(by)
	for heading, column := range columns {
		if strings.EqualFold(heading, by) {
			name = column
		}
	}
	switch name { // measures are written in the customary unit
	case "fat_mm", "fat_cm":
		name = "fat_in"
	case "fat_adjust_mm", "fat_adjust_cm":
		name = "fat_adjust_in"
	case "ribeye_sq_cm":
		name = "ribeye_sq_in"
	case "weight_kg":
		name = "weight_lb"
	}
	type g = *sheet.GradedRow
	yes := func(is bool) string {
		if is {
			return "yes"
		}
		return "no"
	}
	of := map[string]func(g) string{
		"id":            func(g g) string { return g.ID },
		"sex":           func(g g) string { return text(g.Assessment.Carcass.Sex) },
		"skeletal":      func(g g) string { return text(g.Assessment.Carcass.Maturity.Skeletal) },
		"lean":          func(g g) string { return text(g.Assessment.Carcass.Maturity.Lean) },
		"teeth":         func(g g) string { return text(g.Assessment.Carcass.Maturity.Teeth) },
		"papers_months": func(g g) string { return text(g.Assessment.Carcass.Maturity.Papers) },
		"marbling":      func(g g) string { return text(g.Assessment.Carcass.Marbling) },
		"degree":        func(g g) string { return text(g.Assessment.Carcass.Marbling.Degree()) },
		"firmness":      func(g g) string { return text(g.Assessment.Carcass.Lean.Firmness) },
		"dark":          func(g g) string { return text(g.Assessment.Carcass.Lean.Dark) },
		"fat_in":        func(g g) string { return text(g.Assessment.Carcass.Measures.Fat) },
		"fat_adjust_in": func(g g) string { return text(g.Assessment.Carcass.FatAdjust) },
		"ribeye_sq_in":  func(g g) string { return text(g.Assessment.Carcass.Measures.Ribeye) },
		"kph_pct":       func(g g) string { return text(g.Assessment.Carcass.Measures.KPH) },
		"weight_lb":     func(g g) string { return text(g.Assessment.Carcass.Measures.Weight) },
		"assumed":       func(g g) string { return text(g.Assumed) },
		"overall":       func(g g) string { return text(g.Assessment.Maturity) },
		"maturity":      func(g g) string { return text(g.Assessment.Maturity.Group()) },
		"quality":       func(g g) string { return text(g.Assessment.Quality) },
		"quality_grade": func(g g) string { return text(g.Assessment.Quality.Grade()) },
		"yield":         func(g g) string { return text(g.Assessment.Yield) },
		"yield_grade":   func(g g) string { return count(g.Assessment.Yield.Grade()) },
		"tier":          func(g g) string { return text(g.Assessment.Quality.Tier()) },
		"flagged":       func(g g) string { return yes(len(g.Flags) > 0) },
		"below_cutter":  func(g g) string { return yes(g.Assessment.Carcass.Lean.BelowCutter) },
	}
	if f := of[name]; f != nil {
		return f, nil
	}
	return nil, usage("-by: no column " + by + "; it wants one that is kept as it stands, or a column of the graded sheet")
}

// text gives the text of a value, empty for one that is not set.
func text(v interface{ MarshalText() ([]byte, error) }) string {
	b, err := v.MarshalText()
	if err != nil {
		return ""
	}
	return string(b)
}
