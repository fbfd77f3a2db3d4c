package price

import (
	"cmp"

	"example.com/ribface/grade"
	"example.com/ribface/internal/text"
	"example.com/ribface/internal/text/fixed"
	"example.com/ribface/maturity"
	"example.com/ribface/maturity/cite"
	"github.com/shopspring/decimal"
)

// Value is what a grid pays for one carcass. Make one with [Grid.Value]. The zero
// Value is nothing for nothing.
type Value struct {
	grid     *grid
	tier     grade.Tier
	quality  grade.Quality
	maturity maturity.Score
	yield    grade.Yield
	weight   grade.Weight
	perCwt   int64 // in units of 0.0001 dollar

	yieldBand, weightBand int        // -1 where the grid has no bands
	attributes, read      attributes // all that apply; those read off the assessment
	instead               bool       // an attribute stands in place of the tier
}

// perHead is the value in units of 1e-10 dollar. It fits: a price is under eleven
// times 10,000 dollars, a weight under 214,749 lb.
func (v Value) perHead() int64 { return v.perCwt * v.weight.Units() }

// headPlaces is the number of decimals of a value per head: four of the price,
// four of the weight and two for the hundredweight.
const headPlaces = 2*places + 2

// PerCwt returns the price in dollars per cwt of hot carcass weight, exactly: the
// base with every premium and discount.
func (v Value) PerCwt() decimal.Decimal { return exact(v.perCwt, places) }

// PerHead returns the value of the carcass in dollars, exactly: the price times
// the hot carcass weight.
func (v Value) PerHead() decimal.Decimal { return exact(v.perHead(), headPlaces) }

// Weight returns the hot carcass weight that was priced.
func (v Value) Weight() grade.Weight { return v.weight }

// Cents returns the value of the carcass in dollars, rounded to the cent by r.
// An unset rounding gives a [*grade.FieldError].
func (v Value) Cents(r grade.Rounding) (decimal.Decimal, error) {
	return cents(v.perHead(), 100_000_000, r)
}

// PerLiveCwt returns what the value comes to per cwt of live weight, in dollars
// rounded to the cent by r (derived: ext-msu-p2556). A live weight that is not
// over the carcass weight and an unset rounding give a [*grade.FieldError].
func (v Value) PerLiveCwt(live grade.Weight, r grade.Rounding) (decimal.Decimal, error) {
	if !live.IsValid() || live.Units() <= v.weight.Units() {
		return decimal.Decimal{}, &grade.FieldError{Field: "live weight", Value: live.String(), Allowed: "over the carcass's " + v.weight.String(), Err: grade.ErrRange}
	}
	return cents(v.perHead(), 100*live.Units(), r)
}

func cents(n, d int64, r grade.Rounding) (decimal.Decimal, error) {
	n, err := divide(n, d, r)
	return decimal.New(n, -2), err
}

// Premium is one premium or discount that went into a value.
type Premium struct {
	Name   string          `json:"name"`   // as "tier select", "yield 2.5 to 3", "attribute dark cutter"
	Amount decimal.Decimal `json:"amount"` // dollars per cwt; a discount is negative
}

// Parts returns the premiums and discounts of the value, those of no amount too:
// tier, yield, weight, then the attributes. With the base they add up to
// [Value.PerCwt].
func (v Value) Parts() []Premium {
	var out []Premium
	for _, l := range v.lines() {
		out = append(out, Premium{l.Name, exact(l.n, places)})
	}
	return out
}

// line is a premium or discount with what explains it.
type line struct {
	cite.Step
	n int64
}

func (v Value) lines() (out []line) {
	g := v.grid
	if g == nil {
		return nil
	}
	add := func(name, rule, given string, n int64, by cite.Citation) {
		out = append(out, line{cite.Step{Name: name, Rule: rule, Given: given, Result: fixed.Plus(n, money(n, places)), Cite: by}, n})
	}
	from := g.terms.Cite
	if t := g.tiers[v.tier]; v.instead {
		add("tier "+v.tier.String(), "an attribute stands in place of the tier", v.quality.String(), 0, from)
	} else if t.priced {
		add("tier "+v.tier.String(), "by trade tier", v.quality.String(), t.n, from)
	}
	if v.yieldBand >= 0 {
		b := g.yield.all[v.yieldBand]
		add("yield "+b.name, "by yield, exact; a shared edge belongs to the "+g.yield.edge.String(), v.yield.String(), b.n, from)
	}
	if v.weightBand >= 0 {
		b := g.weight.all[v.weightBand]
		add("weight "+b.name, "by hot carcass weight; a shared edge belongs to the "+g.weight.edge.String(), v.weight.String(), b.n, from)
	}
	for m := range Attributes() {
		if !v.attributes.has(m) {
			continue
		}
		a, rule, by := g.attributes[m], "named by the caller", from
		if v.read.has(m) {
			rule, by = why[m].rule, why[m].cite
		}
		if !a.priced {
			rule += "; the grid has no price for it"
		}
		if a.instead {
			rule += "; in place of the tier"
		}
		add("attribute "+m.String(), rule, v.quality.String()+", "+v.maturity.String(), a.n, by)
	}
	return out
}

var (
	citeAdditive = cite.Citation{Standing: cite.Published, IDs: "tx-grid-2014"}
	citeHead     = cite.Citation{Standing: cite.Derived, IDs: "tx-grid-2014"}
)

// Steps explains the value line by line: the base, each premium and discount with
// the band or rule that it comes from, the price per cwt and the value per head,
// all exact. The zero Value has no steps.
func (v Value) Steps() []cite.Step {
	if v.grid == nil {
		return nil
	}
	t := &v.grid.terms
	steps := []cite.Step{{Name: "base", Rule: "dollars per cwt of hot carcass weight", Given: "grid " + t.Name, Result: money(v.grid.base, places), Cite: t.Cite}}
	lines := v.lines()
	for _, l := range lines {
		steps = append(steps, l.Step)
	}
	return append(steps,
		cite.Step{Name: "price per cwt", Rule: "base, premiums and discounts added up", Given: "base and " + text.Count(len(lines), "line"), Result: money(v.perCwt, places), Cite: citeAdditive},
		cite.Step{Name: "value per head", Rule: "price per cwt times hot carcass weight / 100", Given: money(v.perCwt, places) + " and " + v.weight.String(), Result: money(v.perHead(), headPlaces), Cite: citeHead},
	)
}

// Equal reports whether two values are of equal grids and say the same.
func (v Value) Equal(w Value) bool {
	g, h := Grid{v.grid}, Grid{w.grid}
	v.grid, w.grid = nil, nil
	return v == w && g.Equal(h)
}

// ByHead compares two values by what they come to per head; -1, 0 or +1 as a is
// worth less than, as much as or more than b.
func ByHead(a, b Value) int { return cmp.Compare(a.perHead(), b.perHead()) }

// ByCwt compares two values by their price per cwt, so that weight counts only
// through its premium or discount.
func ByCwt(a, b Value) int { return cmp.Compare(a.perCwt, b.perCwt) }

// PerHead returns what a weight comes to at a price per cwt, in dollars, exactly
// (published: ext-msu-p2556, for live and for carcass weight). A price that is
// too fine or too large and a weight that is not over 0 give a
// [*grade.FieldError].
func PerHead(perCwt decimal.Decimal, w grade.Weight) (decimal.Decimal, error) {
	n, err := units("price per cwt", perCwt)
	if err != nil {
		return decimal.Decimal{}, err
	}
	if err := over0("weight", w); err != nil {
		return decimal.Decimal{}, err
	}
	return exact(n*w.Units(), headPlaces), nil
}

// Dressing returns the dressing percent, 100 times hot carcass weight by live
// weight (published: ext-montana-2017), rounded by r to 0.0001 percent. Weights
// that are not over 0, a carcass heavier than the animal and an unset rounding
// give a [*grade.FieldError].
func Dressing(hot, live grade.Weight, r grade.Rounding) (grade.Share, error) {
	if err := over0("live weight", live); err != nil {
		return grade.Share{}, err
	}
	if err := over0("weight", hot); err != nil {
		return grade.Share{}, err
	}
	if hot.Units() > live.Units() {
		return grade.Share{}, &grade.FieldError{Field: "weight", Value: hot.String(), Allowed: "up to the live weight of " + live.String(), Err: grade.ErrRange}
	}
	return percent(hot.Units(), live.Units(), r)
}

// BreakEven returns the dressing percent at which a price per cwt of live weight
// and one per cwt of carcass weight pay the same (derived: mag-grid,
// uni-pricing-slides), rounded by r to 0.0001 percent. Prices that are not over 0,
// too fine or too large, a live price over the carcass price and an unset
// rounding give a [*grade.FieldError].
func BreakEven(live, carcass decimal.Decimal, r grade.Rounding) (grade.Share, error) {
	l, err := units("live price", live)
	if err != nil {
		return grade.Share{}, err
	}
	c, err := units("carcass price", carcass)
	if err != nil {
		return grade.Share{}, err
	}
	if l <= 0 || c < l {
		return grade.Share{}, &grade.FieldError{Field: "live price", Value: dollars(live), Allowed: "over 0.00, up to the carcass price of " + dollars(carcass), Err: grade.ErrRange}
	}
	return percent(l, c, r)
}

func over0(field string, w grade.Weight) error {
	switch {
	case w.Units() > 0:
		return nil
	case w.IsSet():
		return &grade.FieldError{Field: field, Value: w.String(), Allowed: "over 0 lb", Err: grade.ErrRange}
	}
	return &grade.FieldError{Field: field, Allowed: "over 0 lb", Err: grade.ErrMissing}
}

func percent(part, whole int64, r grade.Rounding) (grade.Share, error) {
	n, err := divide(1_000_000*part, whole, r)
	if err != nil {
		return grade.Share{}, err
	}
	return grade.ShareUnits(n), nil
}

// divide returns n/d rounded by r; d is over 0.
func divide(n, d int64, r grade.Rounding) (int64, error) {
	if !text.Named(r) {
		return 0, &grade.FieldError{Field: "rounding", Value: r.String(), Allowed: "down, half up, half even", Err: grade.ErrMissing}
	}
	return fixed.Divide(n, d, fixed.Rounding(r)), nil
}
