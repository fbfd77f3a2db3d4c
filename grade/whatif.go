package grade

import (
	"iter"
	"slices"
	"strconv"
	"strings"

	"example.com/ribface/internal/fault"
	"example.com/ribface/internal/text"
	"example.com/ribface/internal/text/fixed"
	"example.com/ribface/maturity"
	"github.com/shopspring/decimal"
)

// Factor is one of the four measures behind a yield grade. The zero Factor is
// not set.
type Factor uint8

// The four factors.
const (
	FatFactor    Factor = 1 + iota // fat, adjusted
	RibeyeFactor                   // ribeye area; the only one that lowers the yield grade
	KPHFactor                      // kidney, pelvic and heart fat
	WeightFactor                   // hot carcass weight
)

var factors = text.Enum[Factor]{Kind: "factor", Names: []string{"", "fat", "ribeye", "KPH", "weight"}}

// Factors yields the four factors, in the order of [Measures].
func Factors() iter.Seq[Factor] {
	return func(yield func(Factor) bool) {
		for f := FatFactor; f <= WeightFactor; f++ {
			if !yield(f) {
				return
			}
		}
	}
}

// IsValid reports whether f is one of the four factors.
func (f Factor) IsValid() bool { return factors.Valid(f) }

// String gives the name, as [FieldError] uses it; "unset" for zero.
func (f Factor) String() string { return factors.String(f) }

// ParseFactor reads the name of a factor, as [Factor.String] writes it.
func ParseFactor(s string) (Factor, error) { return factors.Parse(s) }

// MarshalText gives the name; the zero value is empty text.
func (f Factor) MarshalText() ([]byte, error) { return factors.Marshal(f) }

// UnmarshalText reads a name. On error the receiver is left as it was.
func (f *Factor) UnmarshalText(b []byte) error { return factors.Unmarshal(f, b) }

// factor is what the equation and the limits say of one measure.
type factor struct {
	q      *quantity
	lo, hi int64
	coef   int64 // 1e-8 of a grade per 0.0001 of the unit
}

var factorTable = [...]factor{
	FatFactor:    {&thicknesses, minFat, maxFat, yieldFat},
	RibeyeFactor: {&areas, minRibeye, maxRibeye, -yieldRibeye},
	KPHFactor:    {&shares, minKPH, maxKPH, yieldKPH},
	WeightFactor: {&weights, minWeight, maxWeight, yieldWeight},
}

// with returns the measures with the factor at n times 0.0001 of its unit.
func (m Measures) with(f Factor, n int64) Measures {
	switch f {
	case FatFactor:
		m.Fat = ThicknessUnits(n)
	case RibeyeFactor:
		m.Ribeye = AreaUnits(n)
	case KPHFactor:
		m.KPH = ShareUnits(n)
	default:
		m.Weight = WeightUnits(n)
	}
	return m
}

// units returns the factor in 0.0001 of its unit.
func (m Measures) units(f Factor) int64 {
	return [...]int64{0, m.Fat.Units(), m.Ribeye.Units(), m.KPH.Units(), m.Weight.Units()}[f]
}

// YieldLine is a line between two whole yield grades, as seen from a carcass.
type YieldLine struct {
	At    Yield `json:"at"`    // the line, a whole number of grades
	Grade int   `json:"grade"` // the whole grade on the other side of it
	Away  Yield `json:"away"`  // the line less the yield: what a change must reach, or on the way to the better go beyond
}

// Better returns the line to the next better whole grade, the one with the lower
// number. The yield must come under the line: one that is on it has 0 to go and
// is still over it. ok is false for a grade 1 and a yield that is not set.
func (y Yield) Better() (line YieldLine, ok bool) {
	g := y.Grade()
	if g <= 1 {
		return YieldLine{}, false
	}
	return y.line(g, g-1), true
}

func (y Yield) line(at, grade int) YieldLine {
	l := YieldUnits(int64(at) * OneGrade)
	return YieldLine{At: l, Grade: grade, Away: l.Sub(y)}
}

// Worse returns the line to the next worse whole grade, the one with the higher
// number. A yield on the line is in that grade already, so what is away is always
// over 0. ok is false for a grade 5 and a yield that is not set.
func (y Yield) Worse() (line YieldLine, ok bool) {
	g := y.Grade()
	if g == 5 || g == 0 {
		return YieldLine{}, false
	}
	return y.line(g+1, g+1), true
}

// OnLine is the value of one factor that puts a carcass exactly on a yield, with
// everything else as it is, and the nearest values of 4 places on both sides.
type OnLine struct {
	Factor Factor `json:"factor"`
	Line   Yield  `json:"line"` // the yield aimed at

	// Num and Den are the exact value as a fraction in lowest terms, in the unit
	// of the factor: inches, square inches, percent or pounds. Den is over 0. For
	// weight the fraction is usually no finite decimal, because of the 0.0038.
	Num int64 `json:"num"`
	Den int64 `json:"den"`

	// Reach has the nearest value whose yield is on the line or over it, Under the
	// nearest whose yield is under it. Under is the zero Measures where the limits
	// of the factor end on the line.
	Under Measures `json:"under,omitzero"`
	Reach Measures `json:"reach"`
}

// Exact returns the exact value in the unit of the factor; ok is false where no
// finite decimal has it, and the value is then the nearest of 12 places.
func (o OnLine) Exact() (value decimal.Decimal, ok bool) {
	if o.Den == 0 {
		return decimal.Zero, false
	}
	d := o.Den
	for d%2 == 0 {
		d /= 2
	}
	for d%5 == 0 {
		d /= 5
	}
	return decimal.New(o.Num, 0).DivRound(decimal.New(o.Den, 0), 12), d == 1
}

// String gives factor, exact value and line, as "fat 0.42 in for 3"; a value
// without a finite decimal is a fraction, as "weight 13500/19 lb for 3".
func (o OnLine) String() string {
	if !o.Factor.IsValid() {
		return "unset"
	}
	return o.Factor.String() + " " + o.value() + " for " + o.Line.String()
}

func (o OnLine) value() string {
	q := factorTable[o.Factor].q
	v, ok := o.Exact()
	number := v.String()
	if !ok {
		number = strconv.FormatInt(o.Num, 10) + "/" + strconv.FormatInt(o.Den, 10)
	}
	return number + q.space + q.units[0].name
}

// Solve returns the value of one factor that puts the yield exactly on the given
// line, the other three measures being as they are; what m holds for the factor
// itself is not looked at. Any yield will do as the line, not only a whole grade.
//
// A line that no value within the limits of [Measures] reaches gives a
// [*FieldError] that names the factor, the value it would take, and the limits. A
// bad measure among the other three, a factor that is not set, and a line beyond
// 100 grades give one too.
func (m Measures) Solve(f Factor, line Yield) (OnLine, error) {
	if err := factors.Check("factor", f); err != nil {
		return OnLine{}, err
	}
	t := factorTable[f]
	if err := m.with(f, t.hi).Check(); err != nil {
		return OnLine{}, err
	}
	if n := line.Units(); !line.IsSet() || n > 100*OneGrade || n < -100*OneGrade {
		e := &FieldError{Field: "line", Allowed: "-100 to 100", Err: ErrMissing}
		if line.IsSet() {
			e.Value, e.Err = line.String(), ErrRange
		}
		return OnLine{}, e
	}
	left := line.Units() - m.with(f, 0).terms().Sum().Units()
	num, den := left, t.coef*unitOf
	if den < 0 {
		num, den = -num, -den
	}
	g := gcd(num, den)
	o := OnLine{Factor: f, Line: line, Num: num / g, Den: den / g}
	// The value lies from down to down+1 on the grid, and on down where exact.
	down, rest := fixed.FloorDiv(left, t.coef)
	if down < t.lo || down > t.hi || down == t.hi && rest != 0 {
		return OnLine{}, &FieldError{Field: f.String(), Value: o.value() + " for a yield of " + line.String(), Allowed: t.q.amount(t.lo) + " to " + t.q.amount(t.hi), Err: ErrRange}
	}
	up := down
	if rest != 0 {
		up++
	}
	under, reach := up-1, up
	if t.coef < 0 {
		under, reach = down+1, down
	}
	if under >= t.lo && under <= t.hi {
		o.Under = m.with(f, under)
	}
	o.Reach = m.with(f, reach)
	return o, nil
}

// gcd returns the greatest common divisor of a and b > 0.
func gcd(a, b int64) int64 {
	if a < 0 {
		a = -a
	}
	for a != 0 {
		a, b = b%a, a
	}
	return b
}

// QualityChange is a point of the marbling scale at which the quality of a
// carcass changes.
type QualityChange struct {
	At      Marbling `json:"at"`      // the nearest marbling that has the other quality
	Points  int      `json:"points"`  // how far it is from the carcass, negative for less marbling
	Quality Quality  `json:"quality"` // the quality at that marbling
}

// QualityChanges returns every change of quality along the marbling scale with
// everything else as it is, from the least marbling to the most: under the
// carcass's own marbling the points at which less marbling changes the quality,
// over it those at which more does. The two nearest changes are the last with
// negative Points and the first with positive Points. A carcass that nothing but
// another maturity or sex class can move, as a bull, gives none. The errors are
// those of [Rules.Quality].
func (r Rules) QualityChanges(c Carcass) ([]QualityChange, error) {
	own, err := r.Quality(c)
	if err != nil {
		return nil, err
	}
	var all []QualityChange
	at := c.Marbling
	walk := func(to, step Marbling) {
		last := own
		for c.Marbling = at; c.Marbling != to; {
			c.Marbling += step
			q, _ := r.Quality(c)
			if q != last {
				all = append(all, QualityChange{At: c.Marbling, Points: int(c.Marbling - at), Quality: q})
				last = q
			}
		}
	}
	walk(Devoid.At(0), -1)
	slices.Reverse(all)
	walk(Abundant.At(100), +1)
	return all, nil
}

// Tolerances say how far an estimate may be off, to either side. A tolerance that is
// not set or zero takes the estimate as exact. Negative ones, and ones wider than the
// whole range of what they stand for, are refused.
type Tolerances struct {
	Fat      Thickness `json:"fat,omitzero"`      // of the fat, adjusted; 0 to 3 in
	Ribeye   Area      `json:"ribeye,omitzero"`   // 0 to 25 sq in
	KPH      Share     `json:"kph,omitzero"`      // 0 to 10%
	Weight   Weight    `json:"weight,omitzero"`   // 0 to 1,800 lb
	Marbling int       `json:"marbling,omitzero"` // points, 0 to 1,000
	Maturity int       `json:"maturity,omitzero"` // units, of the skeletal and of the lean score alike; 0 to 500
}

// measures is what the four measures of the tolerances are kept as.
func (t Tolerances) measures() [WeightFactor + 1]uint32 {
	return [...]uint32{FatFactor: t.Fat.n, RibeyeFactor: t.Ribeye.n, KPHFactor: t.KPH.n, WeightFactor: t.Weight.n}
}

// Check returns an error that tells of every tolerance that is negative or too wide;
// nil when there is none.
func (t Tolerances) Check() error {
	var all []error
	for f, n := range t.measures() {
		if n != 0 {
			w := factorTable[f]
			all = append(all, w.q.check(strings.ToLower(Factor(f).String()), "tolerance of "+Factor(f).String(), n, 0, w.hi))
		}
	}
	number := func(name string, n, most int, unit string) {
		if n < 0 || n > most {
			all = append(all, &FieldError{Path: name, Field: "tolerance of " + name, Value: strconv.Itoa(n), Allowed: "0 to " + strconv.Itoa(most) + unit, Err: ErrRange})
		}
	}
	number("marbling", t.Marbling, 1000, " points")
	number("maturity", t.Maturity, 500, " units")
	return fault.Join(all...)
}

// Span returns the leanest and the fattest measures within the tolerances: least
// fat, KPH and weight with the largest ribeye, and the other way round. No
// measure leaves the limits of [Measures]. Bad measures and bad tolerances give an
// error that tells of each.
func (t Tolerances) Span(m Measures) (leanest, fattest Measures, err error) {
	if err := fault.Join(fault.At("tolerances", "", t.Check()), fault.At("measures", "", m.Check())); err != nil {
		return Measures{}, Measures{}, err
	}
	for f, n := range t.measures() {
		if f == 0 {
			continue
		}
		w, by := factorTable[f], int64(0)
		if n != 0 {
			by = count(n)
		}
		at := m.units(Factor(f))
		low, high := max(at-by, w.lo), min(at+by, w.hi)
		if w.coef < 0 {
			low, high = high, low
		}
		leanest, fattest = leanest.with(Factor(f), low), fattest.with(Factor(f), high)
	}
	return leanest, fattest, nil
}

// QualityRange is one quality that an estimate allows, with the marbling, within
// the tolerance, that can have it.
type QualityRange struct {
	Quality Quality  `json:"quality"`
	Least   Marbling `json:"least"`
	Most    Marbling `json:"most"`
}

// Possible is what can be said of a carcass whose figures are estimates.
type Possible struct {
	Least     Yield          `json:"least"` // the exact ends of the range of the yield, both possible
	Most      Yield          `json:"most"`
	Grades    []int          `json:"grades"`    // the whole yield grades possible, ascending
	Qualities []QualityRange `json:"qualities"` // the qualities possible, best first
}

// Estimate returns the exact range of the yield, the whole yield grades and the
// quality grades that are possible when every figure of the carcass may be off by
// its tolerance. Every combination is tried for the quality, so that the list is
// complete and holds nothing impossible: skeletal and lean maturity vary apart
// from each other, and a lean maturity that was left out stays so. The ends of a
// scale are kept to. Bad tolerances, and what [Rules.Assess] refuses, give a
// [*FieldError].
func (r Rules) Estimate(c Carcass, t Tolerances) (Possible, error) {
	if err := fault.At("tolerances", "", t.Check()); err != nil {
		return Possible{}, err
	}
	if _, err := r.Assess(c); err != nil {
		return Possible{}, err
	}
	m, _ := c.Adjusted()
	leanest, fattest, _ := t.Span(m)
	e := Possible{Least: leanest.terms().Sum(), Most: fattest.terms().Sum()}
	for g := e.Least.Grade(); g <= e.Most.Grade(); g++ {
		e.Grades = append(e.Grades, g)
	}
	var found [256]QualityRange
	lo, hi := max(c.Marbling-Marbling(t.Marbling), Devoid.At(0)), min(c.Marbling+Marbling(t.Marbling), Abundant.At(100))
	r.ages(c.Maturity, t.Maturity, func(ev maturity.Evidence) {
		c.Maturity = ev
		for c.Marbling = lo; c.Marbling <= hi; c.Marbling++ {
			q, _ := r.Quality(c)
			f := &found[q]
			if f.Quality == 0 {
				*f = QualityRange{q, c.Marbling, c.Marbling}
			}
			f.Least, f.Most = min(f.Least, c.Marbling), max(f.Most, c.Marbling)
		}
	})
	for i := range found {
		if f := found[len(found)-1-i]; f.Quality != 0 {
			e.Qualities = append(e.Qualities, f)
		}
	}
	return e, nil
}

// ages calls try with one evidence for every overall score within the tolerance,
// apart for skeletons to both sides of the limit for bullocks.
func (r Rules) ages(ev maturity.Evidence, units int, try func(maturity.Evidence)) {
	first, last := maturity.A.At(0), maturity.E.At(100) // 100 and 600
	var seen [2][601]bool
	around := func(s maturity.Score) (lo, hi maturity.Score) {
		if s == 0 {
			return 0, 0
		}
		return max(s-maturity.Score(units), first), min(s+maturity.Score(units), last)
	}
	boneLo, boneHi := around(ev.Skeletal)
	leanLo, leanHi := around(ev.Lean)
	for ev.Skeletal = boneLo; ev.Skeletal <= boneHi; ev.Skeletal++ {
		for ev.Lean = leanLo; ev.Lean <= leanHi; ev.Lean++ {
			s, err := r.Overall(ev)
			if err != nil {
				continue // a skeleton too old for teeth alone, and no lean score
			}
			old := 0
			if ev.Skeletal > oldestBullock {
				old = 1
			}
			if seen[old][s] {
				continue
			}
			seen[old][s] = true
			try(ev)
		}
	}
}
