package class

import (
	"cmp"
	"database/sql/driver"
	"slices"
	"strings"

	"example.com/ribface/grade"
	"example.com/ribface/internal/text"
	"example.com/ribface/placing"
)

// Trait is what a reason compares. The zero Trait is not set.
type Trait uint8

// The traits. TraitSite goes with a [Site] of the walk.
const (
	TraitQuality  Trait = 1 + iota // quality grade with its part
	TraitColor                     // dark cutting
	TraitMarbling                  // marbling
	TraitYield                     // exact yield
	TraitFat                       // fat over the rib, adjusted
	TraitRibeye                    // ribeye area
	TraitKPH                       // kidney, pelvic and heart fat
	TraitWeight                    // hot carcass weight, by the yield equation alone
	TraitSkeletal                  // skeletal maturity
	TraitLean                      // lean maturity
	TraitFirmness                  // firmness of the lean
	TraitSite                      // fat or muscling at a site of the walk
)

var traits = text.Enum{Kind: "trait", Names: []string{"", "quality grade", "lean color", "marbling", "yield", "fat over the rib", "ribeye", "kidney, pelvic and heart fat", "weight", "skeletal maturity", "lean maturity", "firmness", "site"}}

// IsValid reports whether t is one of the named traits.
func (t Trait) IsValid() bool { return traits.IsValid(int(t)) }

// String gives the name; "unset" for zero.
func (t Trait) String() string { return traits.String(int(t)) }

// ParseTrait reads the name of a trait, as [Trait.String] writes it.
func ParseTrait(s string) (Trait, error) {
	v, err := traits.Parse(s)
	return Trait(v), err
}

// AppendText appends the name; the zero value is empty text.
func (t Trait) AppendText(b []byte) ([]byte, error) { return traits.Append(b, int(t)) }

// MarshalText gives the name; the zero value is empty text.
func (t Trait) MarshalText() ([]byte, error) { return t.AppendText(nil) }

// UnmarshalText reads a name. On error the receiver is left as it was.
func (t *Trait) UnmarshalText(b []byte) error { return text.Unmarshal(t, b, ParseTrait) }

// Value gives the name for a database.
func (t Trait) Value() (driver.Value, error) { return text.Value(t) }

// Scan reads a name from a database column that holds text.
func (t *Trait) Scan(src any) error { return text.Scan(t, traits.Kind, src) }

// Words of comparison: by trait and by site, for the better of two and for the
// worst of a class. Terms on the rib, loin edge and lower rib, plumper round,
// larger ribeye, more marbling and firmer lean are from memory; the three groups
// they fall in, trimness, muscling and quality, are published (mu-beef-carcass-
// 2015), and so are the faults of a last-place carcass they resemble
// (ext-alabama-yanr79, for lamb).
var (
	betterWords = [...]string{
		TraitQuality: "a higher quality grade", TraitColor: "sounder lean color", TraitMarbling: "more marbling", TraitYield: "a lower yield grade",
		TraitFat: "less fat over the rib", TraitRibeye: "a larger ribeye", TraitKPH: "less kidney, pelvic and heart fat", TraitWeight: "a lighter weight by the yield equation",
		TraitSkeletal: "younger bone", TraitLean: "younger lean", TraitFirmness: "firmer lean", TraitSite: "",
	}
	worstWords = [...]string{
		TraitQuality: "the lowest quality grade", TraitColor: "the darkest lean", TraitMarbling: "the least marbling", TraitYield: "the highest yield grade",
		TraitFat: "the most fat over the rib", TraitRibeye: "the smallest ribeye", TraitKPH: "the most kidney, pelvic and heart fat", TraitWeight: "the heaviest weight by the yield equation",
		TraitSkeletal: "the oldest bone", TraitLean: "the oldest lean", TraitFirmness: "the softest lean", TraitSite: "",
	}
	siteWords = [...][2]string{
		FatRound: {"less fat over the round", "the most fat over the round"}, FatInsideRound: {"less fat over the inside round", "the most fat over the inside round"},
		FatRump: {"less fat over the rump", "the most fat over the rump"}, FatHip: {"less fat over the hip", "the most fat over the hip"},
		FatCod: {"less cod or udder fat", "the most cod or udder fat"}, FatFlank: {"less fat in the flank", "the most fat in the flank"},
		FatLoinEdge: {"less fat over the loin edge", "the most fat over the loin edge"}, FatRib: {"less fat down over the rib", "the most fat down over the rib"},
		FatPlate: {"less fat over the plate", "the most fat over the plate"}, FatClod: {"less fat over the clod", "the most fat over the clod"},
		FatShoulder: {"less fat over the shoulder", "the most fat over the shoulder"}, FatNeck: {"less fat over the neck", "the most fat over the neck"},
		FatBrisket: {"less fat in the brisket", "the most fat in the brisket"}, RoundPlumpness: {"a plumper round", "the flattest round"},
		RoundLength: {"a round filled out farther down", "the round least filled out"}, RoundWidth: {"a wider round", "the narrowest round"},
		RoundCushion: {"a fuller cushion of round", "the least cushion of round"}, MuscleLoin: {"a thicker loin", "the thinnest loin"},
		MuscleRib: {"a thicker rib", "the thinnest rib"}, MuscleClod: {"a meatier clod", "the lightest muscled clod"},
	}
)

// Fact is one comparison of two exhibits: in this trait the one is better than
// the other, with what each has. It is built from the data alone.
type Fact struct {
	Trait         Trait
	Site          Site // for TraitSite
	Better, Worse int  // exhibits
	BetterValue   string
	WorseValue    string

	// Weight is what the difference counts for, in yield grades: a term of the
	// yield equation for fat, ribeye, kidney fat and weight; the policy's own
	// exchange for quality, color and marbling. It is 0 for maturity, firmness and
	// sites, which no rule weighs.
	Weight grade.Yield
}

// String gives the fact as a phrase, as "3 has more marbling than 1, Sm60 against
// Sl80".
func (f Fact) String() string {
	words := ""
	switch {
	case f.Trait == TraitSite && f.Site.IsValid():
		words = siteWords[f.Site][0]
	case f.Trait.IsValid():
		words = betterWords[f.Trait]
	default:
		return "unset"
	}
	return itoa(f.Better) + " has " + words + " than " + itoa(f.Worse) + ", " + f.BetterValue + " against " + f.WorseValue
}

// Fault is a trait in which one exhibit is the worst of the class, alone.
type Fault struct {
	Trait   Trait
	Site    Site // for TraitSite
	Exhibit int
	Value   string
	Next    int    // the exhibit that comes nearest, of equal ones the lower number
	NextHas string // what that one has
	Weight  grade.Yield
}

// String gives the fault as a phrase, as "2 has the least marbling of the class,
// Sl10; the next, 4, has Sm20".
func (f Fault) String() string {
	words := ""
	switch {
	case f.Trait == TraitSite && f.Site.IsValid():
		words = siteWords[f.Site][1]
	case f.Trait.IsValid():
		words = worstWords[f.Trait]
	default:
		return "unset"
	}
	return itoa(f.Exhibit) + " has " + words + " of the class, " + f.Value + "; the next, " + itoa(f.Next) + ", has " + f.NextHas
}

// PairReasons are the reasons for one pair of neighbors.
type PairReasons struct {
	Name         string // "top pair", see PairName
	Upper, Lower int
	Decision     Decision // what the policy says of the pair, also where it says the opposite
	Over         []Fact   // in which Upper is the better: the one that decided first, then by weight
	Grants       []Fact   // in which Lower is, by weight
}

// Reasons are the reasons for a placing, pair by pair from the top, and what is
// wrong with the last exhibit: the order published for a set of reasons
// (ksu-horse-judging, usu-reasons-slides).
type Reasons struct {
	Order placing.Order
	Pairs []PairReasons
	Last  []Fault // by weight; nil where the last is the worst in nothing
}

// datum is one trait of one exhibit: the higher the number, the better.
type datum struct {
	trait  Trait
	site   Site
	number int64
	text   string
}

// data lists what is known of an exhibit, in the order of the traits.
func (g Graded) data(exhibit int) []datum {
	a := g.assessed[exhibit-1]
	c := a.Carcass
	m, _ := c.Adjusted()
	all := []datum{
		{TraitQuality, 0, int64(a.Quality), a.Quality.String()},
		{TraitColor, 0, -int64(c.Lean.Dark), "dark cutting " + c.Lean.Dark.String()},
		{TraitMarbling, 0, int64(c.Marbling), c.Marbling.String()},
		{TraitYield, 0, -int64(a.Yield), a.Yield.String()},
		{TraitFat, 0, -int64(m.Fat), m.Fat.String()},
		{TraitRibeye, 0, int64(m.Ribeye), m.Ribeye.String()},
		{TraitKPH, 0, -int64(m.KPH), m.KPH.String()},
		{TraitWeight, 0, -int64(m.Weight), m.Weight.String()},
		{TraitSkeletal, 0, -int64(c.Maturity.Skeletal), c.Maturity.Skeletal.String()},
		{TraitLean, 0, -int64(c.Maturity.Lean), c.Maturity.Lean.String()},
		{TraitFirmness, 0, int64(c.Lean.Firmness), c.Lean.Firmness.String()},
	}
	for s := range Sites() {
		if r, ok := g.given.Walk.At(s); ok {
			place := r.Place(exhibit)
			d := datum{TraitSite, s, int64(place), "place " + place.String() + " from the fattest"}
			if !s.Fat() {
				d.number, d.text = -d.number, "place "+place.String()+" from the heaviest"
			}
			all = append(all, d)
		}
	}
	return all
}

// known reports whether a datum was looked at in both exhibits.
func known(t Trait, a, b *datum) bool {
	return t != TraitLean && t != TraitFirmness || a.number != 0 && b.number != 0
}

// weight is what a difference in a trait counts for.
func (g Graded) weight(p *Policy, t Trait, better, worse int) grade.Yield {
	a, b := g.assessed[better-1], g.assessed[worse-1]
	m, _ := a.Carcass.Adjusted()
	n, _ := b.Carcass.Adjusted()
	x, _ := m.Terms()
	y, _ := n.Terms()
	terms := y.Sub(x)
	switch t {
	case TraitQuality:
		u, l := p.profile(a, nil, better), p.profile(b, nil, worse)
		// No less than the marbling behind it.
		return max(p.worth(max(l.tier-u.tier, 0)), p.marblingWorth(int(a.Carcass.Marbling-b.Carcass.Marbling)))
	case TraitColor:
		return p.colorWorth(int(b.Carcass.Lean.Dark) - int(a.Carcass.Lean.Dark))
	case TraitMarbling:
		return p.marblingWorth(int(a.Carcass.Marbling - b.Carcass.Marbling))
	case TraitYield:
		return b.Yield - a.Yield
	case TraitFat:
		return terms.Fat
	case TraitRibeye:
		return terms.Ribeye
	case TraitKPH:
		return terms.KPH
	case TraitWeight:
		return terms.Weight
	default:
		return 0
	}
}

// Facts returns every trait in which the one exhibit is better than the other, by
// weight, the heaviest first; equal weights in the order of the traits. Lean
// maturity and firmness that were not looked at give no fact, and nor do traits
// in which the two are equal. Exhibits that are not in the class, or one and the
// same, give none.
func (g Graded) Facts(p Policy, better, worse int) []Fact {
	if better < 1 || better > g.Len() || worse < 1 || worse > g.Len() || p.Check() != nil {
		return nil
	}
	var all []Fact
	a, b := g.data(better), g.data(worse)
	for i := range a {
		if a[i].number <= b[i].number || !known(a[i].trait, &a[i], &b[i]) {
			continue
		}
		all = append(all, Fact{Trait: a[i].trait, Site: a[i].site, Better: better, Worse: worse, BetterValue: a[i].text, WorseValue: b[i].text, Weight: g.weight(&p, a[i].trait, better, worse)})
	}
	slices.SortStableFunc(all, func(a, b Fact) int { return cmp.Compare(b.Weight, a.Weight) })
	return all
}

// Faults returns the traits in which an exhibit is the worst of the class, alone,
// by weight against the one that comes nearest.
func (g Graded) Faults(p Policy, exhibit int) []Fault {
	if exhibit < 1 || exhibit > g.Len() || p.Check() != nil {
		return nil
	}
	var all []Fault
	class := make([][]datum, g.Len())
	for e := range class {
		class[e] = g.data(e + 1)
	}
	for i, d := range class[exhibit-1] {
		f := Fault{Trait: d.trait, Site: d.site, Exhibit: exhibit, Value: d.text}
		var next datum
		for e := 1; e <= g.Len(); e++ {
			if e == exhibit {
				continue
			}
			o := class[e-1][i]
			if o.number <= d.number || !known(d.trait, &o, &d) {
				f.Next = 0
				break
			}
			if f.Next == 0 || o.number < next.number {
				f.Next, f.NextHas, next = e, o.text, o
			}
		}
		if f.Next != 0 {
			f.Weight = g.weight(&p, d.trait, f.Next, exhibit)
			all = append(all, f)
		}
	}
	slices.SortStableFunc(all, func(a, b Fault) int { return cmp.Compare(b.Weight, a.Weight) })
	return all
}

// deciding is the trait that stands for a ground. Muscling and trimness have
// several and none.
var deciding = [...]Trait{ByTier: TraitQuality, ByAdvantage: TraitYield, ByBottom: TraitQuality, ByColor: TraitColor, ByMarbling: TraitMarbling, ByYield: TraitYield, ByMuscling: 0, ByTrimness: 0, ByCeiling: 0, ByValue: 0, ByDark: TraitColor, ByTexture: 0, ByFirmness: TraitFirmness}

// Reasons returns the reasons for a placing of the class, from the data alone. A
// placing of another class size, or the zero one, gives a [*FieldError].
func (g Graded) Reasons(p Placing) (Reasons, error) {
	n := g.Len()
	if p.Order.Len() != n || n == 0 {
		return Reasons{}, &FieldError{Field: "placing", Value: p.Order.String(), Allowed: "a placing of the " + itoa(n) + " exhibits of the class", Err: ErrRange}
	}
	r := Reasons{Order: p.Order}
	for i := 1; i < n; i++ {
		u, l := p.Order.At(i), p.Order.At(i+1)
		d, _ := p.Decision(u, l)
		over := g.Facts(p.Policy, u, l)
		if at := slices.IndexFunc(over, func(f Fact) bool { return f.Trait == deciding[d.Ground] }); at > 0 {
			first := over[at]
			copy(over[1:at+1], over[:at])
			over[0] = first
		}
		r.Pairs = append(r.Pairs, PairReasons{Name: PairName(i, n), Upper: u, Lower: l, Decision: d, Over: over, Grants: g.Facts(p.Policy, l, u)})
	}
	r.Last = g.Faults(p.Policy, p.Order.At(n))
	return r, nil
}

// Sentences gives the reasons as plain sentences: the placing, then for each pair
// what puts the upper over, one sentence a fact, what is granted to the lower,
// and at last the faults of the last exhibit. No more than the given number of
// facts is told of each list, the heaviest first; 0 tells all.
func (r Reasons) Sentences(most int) []string {
	if len(r.Pairs) == 0 {
		return nil
	}
	cut := func(n int) int {
		if most <= 0 {
			return n
		}
		return min(n, most)
	}
	lines := []string{"The class is placed " + r.Order.String() + "."}
	for _, p := range r.Pairs {
		if len(p.Over) == 0 {
			lines = append(lines, heading(p.Name)+": nothing in the data puts "+itoa(p.Upper)+" over "+itoa(p.Lower)+".")
		}
		for _, f := range p.Over[:cut(len(p.Over))] {
			lines = append(lines, heading(p.Name)+": "+f.String()+".")
		}
		for _, f := range p.Grants[:cut(len(p.Grants))] {
			lines = append(lines, "Granted: "+f.String()+".")
		}
	}
	for _, f := range r.Last[:cut(len(r.Last))] {
		lines = append(lines, "Last: "+f.String()+".")
	}
	return lines
}

func heading(s string) string { return strings.ToUpper(s[:1]) + s[1:] }
