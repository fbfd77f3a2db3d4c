package price

import (
	"cmp"
	"errors"
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"example.com/ribface/grade"
	"example.com/ribface/internal/fault"
	"example.com/ribface/internal/text/fixed"
	"example.com/ribface/maturity/cite"
	"github.com/shopspring/decimal"
)

// Sentinels for errors.Is, beside those of package grade.
var (
	ErrGap     = errors.New("gap")      // between two bands
	ErrOverlap = errors.New("overlap")  // of two bands
	ErrNoPrice = errors.New("no price") // the grid has none for it
)

// Band is a premium or discount for a span of yields or of weights.
type Band[T edged] struct {
	From   T               `json:"from"`
	To     T               `json:"to,omitzero"` // over From; not set for a band without upper end
	Amount decimal.Decimal `json:"amount"`      // dollars per cwt; a discount is negative
}

// edged is what has bands: exact yields and hot carcass weights.
type edged interface {
	grade.Yield | grade.Weight
	fmt.Stringer
	IsSet() bool
	Units() int64
}

// String names the band by its ends, as "900 lb to 1000 lb".
func (b Band[T]) String() string {
	if !b.To.IsSet() {
		return b.From.String() + " and over"
	}
	return b.From.String() + " to " + b.To.String()
}

// TierAmount is the premium or discount of a trade tier.
type TierAmount struct {
	Tier   grade.Tier      `json:"tier"`
	Amount decimal.Decimal `json:"amount"` // dollars per cwt; a discount is negative
}

// AttributeAmount is the premium or discount of an attribute.
type AttributeAmount struct {
	Attribute Attribute       `json:"attribute"`
	Amount    decimal.Decimal `json:"amount"`           // dollars per cwt; a discount is negative
	Instead   bool            `json:"instead,omitzero"` // it stands in place of the tier's amount; else it is added to it
}

// Offer is a price grid as data. Amounts are dollars per cwt of hot carcass
// weight with at most 4 places, under 10,000 either way. The zero Offer has no
// base and makes no grid.
type Offer struct {
	Name string          `json:"name"`          // for explanations, as "week of 2025-01-06"
	Base decimal.Decimal `json:"base"`          // the price before any premium or discount; over 0
	Cite cite.Citation   `json:"cite,omitzero"` // where the amounts come from; zero for those of one's own

	// Tiers has one entry for every tier that is bought. Without any, tiers have
	// no price of their own and none is refused.
	Tiers []TierAmount `json:"tiers,omitempty"`

	// Yield and Weight are bands in any order that meet end to end; the edges
	// say who owns an inner end. Without any, yield or weight has no price of
	// its own and none is refused. Yields are exact, and one under 1 counts as 1,
	// as it does for the whole grade.
	Yield      []Band[grade.Yield]  `json:"yield,omitempty"`
	YieldEdge  Edge                 `json:"yield_edge,omitzero"`
	Weight     []Band[grade.Weight] `json:"weight,omitempty"`
	WeightEdge Edge                 `json:"weight_edge,omitzero"`

	// Attributes prices the attributes. One that the caller of [Grid.Value] names must
	// stand here; one that is read off the assessment may be without price.
	Attributes []AttributeAmount `json:"attributes,omitempty"`
}

// Grid is a checked price grid. Make one with [New]. The zero Grid prices
// nothing.
type Grid struct{ g *grid }

// grid holds amounts in units of 0.0001 dollar.
type grid struct {
	terms      Offer
	base       int64
	tiers      [grade.PrimeTier + 1]amount
	yield      bands
	weight     bands
	attributes [NonHormoneTreated + 1]amount
}

type amount struct {
	n       int64
	priced  bool
	instead bool
}

// bands are in order, without gap or overlap. The zero bands make no difference.
type bands struct {
	all  []band
	edge Edge
	span string // what they cover
}

type band struct {
	from, to int64 // units; to is open for a band without upper end
	n        int64
	name     string
}

// open is the upper end of a band that has none.
const open = math.MaxInt64

// places is the number of decimals of an amount, and mostDollars its bound.
const (
	places      = 4
	mostDollars = 10_000
)

// New checks the terms and makes a grid of them. It keeps nothing of the
// caller's slices.
//
// An amount that is too fine or too large, a tier or attribute that is unknown or
// priced twice, a band that ends before it starts, and bands with a gap or an
// overlap give an error that tells of each with its path, as "tiers[2].amount"; see
// [grade.Problems]. errors.Is finds [ErrGap], [ErrOverlap] and [grade.ErrRepeated].
func New(t Offer) (Grid, error) {
	g := &grid{terms: t.clone()}
	var all []error
	refuse := func(path string, err error) { all = append(all, fault.At(path, "", err)) }
	var err error
	if g.base, err = units("base", t.Base); err == nil && g.base <= 0 {
		err = &grade.FieldError{Field: "base", Value: dollars(t.Base), Allowed: "over 0.00", Err: grade.ErrRange}
	}
	refuse("base", err)
	for i, e := range t.Tiers {
		at := "tiers[" + strconv.Itoa(i) + "]"
		if !e.Tier.IsValid() {
			refuse(at+".tier", &grade.FieldError{Field: "tiers", Value: e.Tier.String(), Allowed: "below standard to prime", Err: grade.ErrUnknown})
		} else {
			refuse(at+".amount", g.tiers[e.Tier].set("tier "+e.Tier.String(), e.Amount, false))
		}
	}
	for i, e := range t.Attributes {
		at := "attributes[" + strconv.Itoa(i) + "]"
		if !e.Attribute.IsValid() {
			refuse(at+".attribute", &grade.FieldError{Field: "attributes", Value: e.Attribute.String(), Allowed: attributeNames.Allowed(), Err: grade.ErrUnknown})
		} else {
			refuse(at+".amount", g.attributes[e.Attribute].set("attribute "+e.Attribute.String(), e.Amount, e.Instead))
		}
	}
	g.yield, err = inOrder("yield", t.Yield, t.YieldEdge)
	refuse("", err)
	g.weight, err = inOrder("weight", t.Weight, t.WeightEdge)
	refuse("", err)
	if err := fault.Join(all...); err != nil {
		return Grid{}, err
	}
	return Grid{g}, nil
}

// clone returns the terms in fresh slices.
func (t Offer) clone() Offer {
	t.Tiers, t.Yield, t.Weight, t.Attributes = slices.Clone(t.Tiers), slices.Clone(t.Yield), slices.Clone(t.Weight), slices.Clone(t.Attributes)
	return t
}

func (a *amount) set(field string, d decimal.Decimal, instead bool) error {
	if a.priced {
		return &grade.FieldError{Field: field, Value: dollars(d), Allowed: "one amount", Err: grade.ErrRepeated}
	}
	n, err := units(field, d)
	*a = amount{n, true, instead}
	return err
}

// units turns an amount into units of 0.0001 dollar.
func units(field string, d decimal.Decimal) (int64, error) {
	const allowed = "amounts under 10,000 with at most 4 places"
	n, ok := fixed.Decimal(d.Coefficient(), d.Exponent())
	if !ok {
		return 0, &grade.FieldError{Field: field, Value: "a decimal with exponent far out of range", Allowed: allowed, Err: grade.ErrRange}
	}
	v, err := n.Units(places, 1, fixed.Exact)
	if err == nil && (v >= mostDollars*10_000 || v <= -mostDollars*10_000) {
		err = grade.ErrRange
	}
	if err != nil {
		return 0, &grade.FieldError{Field: field, Value: dollars(d), Allowed: allowed, Err: err}
	}
	return v, nil
}

// inOrder checks the bands of a name, puts them in order and sees that they meet.
func inOrder[T edged](name string, list []Band[T], edge Edge) (bands, error) {
	if len(list) == 0 {
		return bands{}, nil
	}
	field := name + " band"
	var all []error
	if !edgeNames.Valid(edge) {
		all = append(all, fault.At(name+"_edge", field+" edge", edgeNames.Check("owner", edge)))
	}
	order := make([]int, len(list)) // of the bands by their start
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(list[a].From.Units(), list[b].From.Units()) })
	var below Band[T]
	out := bands{edge: edge, span: Band[T]{From: list[order[0]].From, To: list[order[len(order)-1]].To}.String()}
	for k, i := range order {
		b := list[i]
		path := name + "[" + strconv.Itoa(i) + "]"
		refuse := func(of, value, allowed string, err error) {
			all = append(all, &grade.FieldError{Path: path + of, Field: field + " " + b.String(), Value: value, Allowed: allowed, Err: err})
		}
		n, err := units(field+" "+b.String(), b.Amount)
		all = append(all, fault.At(path+".amount", "", err))
		w, weighed := any(b.From).(grade.Weight)
		from, to := b.From.Units(), b.To.Units()
		allowed := "a start at " + below.To.String() + ", the end of " + below.String()
		switch {
		case !b.From.IsSet():
			refuse(".from", "", "a start of 0 or more", grade.ErrMissing)
		case weighed && !w.IsValid() || from < 0 || b.To.IsSet() && to <= from:
			refuse("", "", "a start of 0 or more and an end over it, or none", grade.ErrRange)
		case k == 0: // nothing is below
		case !below.To.IsSet():
			refuse(".from", "", "no band over "+below.String(), ErrOverlap)
		case from > below.To.Units():
			refuse(".from", "a start at "+b.From.String(), allowed, ErrGap)
		case from < below.To.Units():
			refuse(".from", "a start at "+b.From.String(), allowed, ErrOverlap)
		}
		if !b.To.IsSet() {
			to = open
		}
		below, out.all = b, append(out.all, band{from, to, n, b.String()})
	}
	return out, fault.Join(all...)
}

// find returns the place of the band that v stands in, or -1.
func (b *bands) find(v int64) int {
	for i := range b.all {
		at := &b.all[i]
		if v >= at.from && (v < at.to || v == at.to && (b.edge == EdgeLower || i == len(b.all)-1)) {
			return i
		}
	}
	return -1
}

// Offer returns the terms of the grid, in fresh slices; the zero Offer for the
// zero Grid.
func (g Grid) Offer() Offer {
	if g.g == nil {
		return Offer{}
	}
	return g.g.terms.clone()
}

// Equal reports whether two grids have the same name, the same source and the same
// amounts, in whatever order their terms were given.
func (g Grid) Equal(h Grid) bool {
	a, b := g.g, h.g
	if a == b || a == nil || b == nil {
		return a == b
	}
	return a.terms.Name == b.terms.Name && a.terms.Cite == b.terms.Cite && a.terms.YieldEdge == b.terms.YieldEdge && a.terms.WeightEdge == b.terms.WeightEdge &&
		a.base == b.base && a.tiers == b.tiers && a.attributes == b.attributes && slices.Equal(a.yield.all, b.yield.all) && slices.Equal(a.weight.all, b.weight.all)
}

// Value prices a carcass: base, tier, yield band, weight band and attributes, added
// up, times the hot carcass weight. The attributes are those given and those of
// [AttributesOf], each once.
//
// An assessment that is not set gives a [*grade.FieldError]. A tier, a yield, a
// weight or a given attribute that the grid has no price for gives one too, for which
// errors.Is finds [ErrNoPrice]; a tier needs none where an attribute stands in its
// place, and an attribute that nobody named may be without one.
func (g Grid) Value(a grade.Assessment, given ...Attribute) (Value, error) {
	if g.g == nil {
		return Value{}, &grade.FieldError{Field: "grid", Allowed: "one made by New", Err: grade.ErrMissing}
	}
	if !a.Quality.IsValid() || !a.Yield.IsSet() {
		return Value{}, &grade.FieldError{Field: "assessment", Allowed: "one with a quality grade and a yield", Err: grade.ErrMissing}
	}
	p := g.g
	v := Value{grid: p, tier: a.Quality.Tier(), quality: a.Quality, maturity: a.Maturity, yield: a.Yield, weight: a.Carcass.Measures.Weight, perCwt: p.base}
	if err := over0("weight", v.weight); err != nil {
		return Value{}, err
	}
	v.read = attributesOf(&a)
	v.attributes = v.read
	for _, m := range given {
		if !m.IsValid() {
			return Value{}, attributeNames.Check("attribute", m)
		}
		if !p.attributes[m].priced {
			return noPrice("attribute", m, cmp.Or(strings.Join(priced[Attribute](p.attributes[:]), ", "), "no attribute"))
		}
		v.attributes |= 1 << m
	}
	for m := DairyType; m <= NonHormoneTreated; m++ {
		if v.attributes.has(m) {
			v.perCwt += p.attributes[m].n
			v.instead = v.instead || p.attributes[m].instead
		}
	}
	if t := &p.tiers[v.tier]; !v.instead {
		if !t.priced && len(p.terms.Tiers) > 0 {
			names := priced[grade.Tier](p.tiers[:])
			slices.Reverse(names) // the best first
			return noPrice("tier", v.tier, strings.Join(names, ", "))
		}
		v.perCwt += t.n
	}
	if v.yieldBand = p.yield.find(max(v.yield.Units(), grade.OneGrade)); v.yieldBand >= 0 {
		v.perCwt += p.yield.all[v.yieldBand].n
	} else if p.yield.all != nil {
		return noPrice("yield", v.yield, p.yield.span)
	}
	if v.weightBand = p.weight.find(v.weight.Units()); v.weightBand >= 0 {
		v.perCwt += p.weight.all[v.weightBand].n
	} else if p.weight.all != nil {
		return noPrice("weight", v.weight, p.weight.span)
	}
	return v, nil
}

func noPrice(field string, value fmt.Stringer, allowed string) (Value, error) {
	return Value{}, &grade.FieldError{Field: field, Value: value.String(), Allowed: allowed, Err: ErrNoPrice}
}

// priced names what has a price.
func priced[T interface {
	~uint8
	fmt.Stringer
}](amounts []amount) (names []string) {
	for i := range amounts {
		if amounts[i].priced {
			names = append(names, T(i).String())
		}
	}
	return names
}

// dollars writes an amount with at least two places, exactly.
func dollars(d decimal.Decimal) string {
	for p := int32(2); ; p++ {
		if d.Truncate(p).Equal(d) {
			return d.StringFixed(p)
		}
	}
}

// money writes n units of 10^-scale dollar with at least two places.
func money(n int64, scale int) string { return string(fixed.AppendMin(nil, n, scale, 2)) }

// exact returns n units of 10^-scale as a decimal without needless zeros.
func exact(n int64, scale int32) decimal.Decimal {
	for ; scale > 0 && n%10 == 0; scale-- {
		n /= 10
	}
	return decimal.New(n, -scale)
}
