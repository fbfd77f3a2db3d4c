package grade

import (
	"database/sql/driver"
	"iter"
	"slices"
	"strconv"

	"example.com/ribface/internal/text"
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

var factors = text.Enum{Kind: "factor", Names: []string{"", "fat", "ribeye", "KPH", "weight"}}

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
func (f Factor) IsValid() bool { return factors.IsValid(int(f)) }

// String gives the name, as [FieldError] uses it; "unset" for zero.
func (f Factor) String() string { return factors.String(int(f)) }

// ParseFactor reads the name of a factor, as [Factor.String] writes it.
func ParseFactor(s string) (Factor, error) {
	v, err := factors.Parse(s)
	return Factor(v), err
}

// AppendText appends the name; the zero value is empty text.
func (f Factor) AppendText(b []byte) ([]byte, error) { return factors.Append(b, int(f)) }

// MarshalText gives the name; the zero value is empty text.
func (f Factor) MarshalText() ([]byte, error) { return f.AppendText(nil) }

// UnmarshalText reads a name. On error the receiver is left as it was.
func (f *Factor) UnmarshalText(b []byte) error { return text.Unmarshal(f, b, ParseFactor) }

// Value gives the name for a database.
func (f Factor) Value() (driver.Value, error) { return text.Value(f) }

// Scan reads a name from a database column that holds text.
func (f *Factor) Scan(src any) error { return text.Scan(f, factors.Kind, src) }

// factor is what the equation and the limits say of one measure.
type factor struct {
	q      *quantity
	lo, hi int32
	coef   int64 // 1e-8 of a grade per 0.0001 of the unit
}

var factorTable = [...]factor{
	FatFactor:    {&thicknesses, 0, int32(maxFat), yieldFat},
	RibeyeFactor: {&areas, 1, int32(maxRibeye), -yieldRibeye},
	KPHFactor:    {&shares, 0, int32(maxKPH), yieldKPH},
	WeightFactor: {&weights, 1, int32(maxWeight), yieldWeight},
}

// with returns the measures with the factor at n times 0.0001 of its unit.
func (m Measures) with(f Factor, n int32) Measures {
	switch f {
	case FatFactor:
		m.Fat = Thickness(n)
	case RibeyeFactor:
		m.Ribeye = Area(n)
	case KPHFactor:
		m.KPH = Share(n)
	default:
		m.Weight = Weight(n)
	}
	return m
}

// YieldLine is a line between two whole yield grades, as seen from a carcass.
type YieldLine struct {
	At    Yield // the line, a whole number of grades
	Grade int   // the whole grade on the other side of it
	Away  Yield // the line less the yield: what a change must reach, or on the way to the better go beyond
}

// Better returns the line to the next better whole grade, the one with the lower
// number. The yield must come under the line: one that is on it has 0 to go and
// is still over it. ok is false for a grade 1.
func (y Yield) Better() (line YieldLine, ok bool) {
	g := y.Grade()
	if g == 1 {
		return YieldLine{}, false
	}
	at := Yield(g) * OneGrade
	return YieldLine{At: at, Grade: g - 1, Away: at - y}, true
}

// Worse returns the line to the next worse whole grade, the one with the higher
// number. A yield on the line is in that grade already, so what is away is always
// over 0. ok is false for a grade 5.
func (y Yield) Worse() (line YieldLine, ok bool) {
	g := y.Grade()
	if g == 5 {
		return YieldLine{}, false
	}
	at := Yield(g+1) * OneGrade
	return YieldLine{At: at, Grade: g + 1, Away: at - y}, true
}

// OnLine is the value of one factor that puts a carcass exactly on a yield, with
// everything else as it is, and the nearest values of 4 places on both sides.
type OnLine struct {
	Factor Factor
	Line   Yield // the yield aimed at

	// Num and Den are the exact value as a fraction in lowest terms, in the unit
	// of the factor: inches, square inches, percent or pounds. Den is over 0. For
	// weight the fraction is usually no finite decimal, because of the 0.0038.
	Num, Den int64

	// Reach has the nearest value whose yield is on the line or over it, Under the
	// nearest whose yield is under it. Under is the zero Measures where the limits
	// of the factor end on the line.
	Under, Reach Measures
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
	if err := factors.Check("factor", int(f)); err != nil {
		return OnLine{}, err
	}
	t := factorTable[f]
	if err := m.with(f, t.hi).Check(); err != nil {
		return OnLine{}, err
	}
	if line > 100*OneGrade || line < -100*OneGrade {
		return OnLine{}, &FieldError{Field: "line", Value: line.String(), Allowed: "-100 to 100", Err: ErrRange}
	}
	left := int64(line - m.with(f, 0).terms().Sum())
	num, den := left, t.coef*10_000
	if den < 0 {
		num, den = -num, -den
	}
	g := gcd(num, den)
	o := OnLine{Factor: f, Line: line, Num: num / g, Den: den / g}
	// The value lies from down to down+1 on the grid, and on down where exact.
	down, rest := floorDiv(left, t.coef)
	if down < int64(t.lo) || down > int64(t.hi) || down == int64(t.hi) && rest != 0 {
		return OnLine{}, &FieldError{Field: f.String(), Value: o.value() + " for a yield of " + line.String(), Allowed: t.q.string(t.lo) + " to " + t.q.string(t.hi), Err: ErrRange}
	}
	up := down
	if rest != 0 {
		up++
	}
	under, reach := up-1, up
	if t.coef < 0 {
		under, reach = down+1, down
	}
	if under >= int64(t.lo) && under <= int64(t.hi) {
		o.Under = m.with(f, int32(under))
	}
	o.Reach = m.with(f, int32(reach))
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

// floorDiv divides toward minus infinity.
func floorDiv(a, b int64) (q, rest int64) {
	q, rest = a/b, a%b
	if rest != 0 && (rest < 0) != (b < 0) {
		q--
		rest += b
	}
	return q, rest
}

// QualityChange is a point of the marbling scale at which the quality of a
// carcass changes.
type QualityChange struct {
	At      Marbling // the nearest marbling that has the other quality
	Points  int      // how far it is from the carcass, negative for less marbling
	Quality Quality  // the quality at that marbling
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

// Tolerances say how far an estimate may be off, to either side. A zero
// tolerance takes the estimate as exact. Negative ones, and ones wider than the
// whole range of what they stand for, are refused.
type Tolerances struct {
	Fat      Thickness // of the fat, adjusted; 0 to 3 in
	Ribeye   Area      // 0 to 25 sq in
	KPH      Share     // 0 to 10%
	Weight   Weight    // 0 to 1,800 lb
	Marbling int       // points, 0 to 1,000
	Maturity int       // units, of the skeletal and of the lean score alike; 0 to 500
}

// Check returns a [*FieldError] for the first tolerance that is negative or too
// wide; nil when there is none.
func (t Tolerances) Check() error {
	for f, n := range [...]int32{FatFactor: int32(t.Fat), RibeyeFactor: int32(t.Ribeye), KPHFactor: int32(t.KPH), WeightFactor: int32(t.Weight)} {
		if f == 0 {
			continue
		}
		w := factorTable[f]
		if n < 0 || n > w.hi {
			return &FieldError{Field: "tolerance of " + Factor(f).String(), Value: w.q.string(n), Allowed: w.q.string(0) + " to " + w.q.string(w.hi), Err: ErrRange}
		}
	}
	if t.Marbling < 0 || t.Marbling > 1000 {
		return &FieldError{Field: "tolerance of marbling", Value: strconv.Itoa(t.Marbling), Allowed: "0 to 1000 points", Err: ErrRange}
	}
	if t.Maturity < 0 || t.Maturity > 500 {
		return &FieldError{Field: "tolerance of maturity", Value: strconv.Itoa(t.Maturity), Allowed: "0 to 500 units", Err: ErrRange}
	}
	return nil
}

// Span returns the leanest and the fattest measures within the tolerances: least
// fat, KPH and weight with the largest ribeye, and the other way round. No
// measure leaves the limits of [Measures]. Bad measures and bad tolerances give a
// [*FieldError].
func (t Tolerances) Span(m Measures) (leanest, fattest Measures, err error) {
	if err := t.Check(); err != nil {
		return Measures{}, Measures{}, err
	}
	if err := m.Check(); err != nil {
		return Measures{}, Measures{}, err
	}
	leanest = Measures{Fat: max(m.Fat-t.Fat, 0), Ribeye: min(m.Ribeye+t.Ribeye, maxRibeye), KPH: max(m.KPH-t.KPH, 0), Weight: max(m.Weight-t.Weight, 1)}
	fattest = Measures{Fat: min(m.Fat+t.Fat, maxFat), Ribeye: max(m.Ribeye-t.Ribeye, 1), KPH: min(m.KPH+t.KPH, maxKPH), Weight: min(m.Weight+t.Weight, maxWeight)}
	return leanest, fattest, nil
}

// QualityRange is one quality that an estimate allows, with the marbling, within
// the tolerance, that can have it.
type QualityRange struct {
	Quality     Quality
	Least, Most Marbling
}

// Estimate is what can be said of a carcass whose figures are estimates.
type Estimate struct {
	Least, Most Yield          // the exact ends of the range of the yield, both possible
	Grades      []int          // the whole yield grades possible, ascending
	Qualities   []QualityRange // the qualities possible, best first
}

// Estimate returns the exact range of the yield, the whole yield grades and the
// quality grades that are possible when every figure of the carcass may be off by
// its tolerance. Every combination is tried for the quality, so that the list is
// complete and holds nothing impossible: skeletal and lean maturity vary apart
// from each other, and a lean maturity that was left out stays so. The ends of a
// scale are kept to. Bad tolerances, and what [Rules.Assess] refuses, give a
// [*FieldError].
func (r Rules) Estimate(c Carcass, t Tolerances) (Estimate, error) {
	if err := t.Check(); err != nil {
		return Estimate{}, err
	}
	if _, err := r.Assess(c); err != nil {
		return Estimate{}, err
	}
	m, _ := c.Adjusted()
	leanest, fattest, _ := t.Span(m)
	e := Estimate{Least: leanest.terms().Sum(), Most: fattest.terms().Sum()}
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
