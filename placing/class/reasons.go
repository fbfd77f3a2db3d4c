package class

import (
	"cmp"
	"slices"

	"example.com/ribface/grade"
	"example.com/ribface/internal/fault"
	"example.com/ribface/internal/text"
	"example.com/ribface/maturity"
	"example.com/ribface/placing"
)

// Heading is what a pair is placed on, and what its reasons are grouped by.
// Trimness, muscling and quality are the published headings (mu-beef-carcass-2015);
// cutability stands for the yield grade, which trimness and muscling come to. The
// zero Heading is none.
type Heading uint8

// The headings.
const (
	OnQuality    Heading = 1 + iota // quality grade, marbling, maturity and the lean
	OnCutability                    // yield grade, and weight by the yield equation
	OnTrimness                      // fat at the rib, over the sites, and inside
	OnMuscling                      // ribeye, and muscling over the sites
)

var headings = text.Enum[Heading]{Kind: "heading", Names: []string{"", "quality", "cutability", "trimness", "muscling"}, Zero: "none"}

// String gives the name; "none" for zero.
func (h Heading) String() string { return headings.String(h) }

// MarshalText gives the name; the zero value is empty text.
func (h Heading) MarshalText() ([]byte, error) { return headings.Marshal(h) }

// UnmarshalText reads what [Heading.String] writes, in any case; empty text gives the
// zero value. On error the receiver is left as it was.
func (h *Heading) UnmarshalText(b []byte) error { return headings.Unmarshal(h, b) }

// Size is how large a difference is to the eye. The zero Size is a difference that
// nobody sees, which is a fact and is never spoken.
type Size uint8

// The sizes.
const (
	SizeSlight Size = 1 + iota
	SizePlain
	SizeWide
)

var sizes = text.Enum[Size]{Kind: "size", Names: []string{"", "slight", "plain", "wide"}, Zero: "unseen"}

// String gives the name; "unseen" for zero.
func (s Size) String() string { return sizes.String(s) }

// MarshalText gives the name; the zero value is empty text.
func (s Size) MarshalText() ([]byte, error) { return sizes.Marshal(s) }

// UnmarshalText reads what [Size.String] writes, in any case; empty text gives the
// zero value. On error the receiver is left as it was.
func (s *Size) UnmarshalText(b []byte) error { return sizes.Unmarshal(s, b) }

// Fact is one comparison of two exhibits: in this trait the one is better than
// the other, with what each has. It is built from the data alone.
type Fact struct {
	Trait       grade.Trait `json:"trait"`
	Site        Site        `json:"site,omitzero"` // for grade.TraitSite
	Better      int         `json:"better"`        // the exhibit that is better in the trait
	Worse       int         `json:"worse"`         // the other
	BetterValue string      `json:"better_value"`
	WorseValue  string      `json:"worse_value"`

	// Weight is what the difference counts for, in yield grades; see
	// [Graded.Facts].
	Weight grade.Yield `json:"weight,omitzero"`
	Size   Size        `json:"size,omitzero"`
}

// Heading returns what the fact belongs to.
func (f Fact) Heading() Heading {
	switch {
	case f.Trait != grade.TraitSite:
		return traitTerms[f.Trait].on
	case f.Site.Fat():
		return OnTrimness
	case f.Site.IsValid():
		return OnMuscling
	default:
		return 0
	}
}

// String gives the fact as a phrase, as "3 has more marbling than 1, Sm60 against
// Sl80".
func (f Fact) String() string {
	words := traitTerms[f.Trait].better
	if f.Trait == grade.TraitSite {
		words = termOf(f.Site).better
	}
	if words == "" {
		return "unset"
	}
	return itoa(f.Better) + " has " + words + " than " + itoa(f.Worse) + ", " + f.BetterValue + " against " + f.WorseValue
}

// Support is the facts under one heading.
type Support struct {
	On    Heading `json:"on"`
	Facts []Fact  `json:"facts"` // the heaviest first, as [Graded.Facts] orders them
}

// PairReasons are the reasons for one pair of neighbors: a general statement,
// what supports it, and grants (published: usu-reasons-slides).
type PairReasons struct {
	Name     string   `json:"name,omitzero"` // "top pair", see placing.PairName
	Upper    int      `json:"upper"`         // stands over Lower in the order asked about
	Lower    int      `json:"lower"`         // the other
	Decision Decision `json:"decision"`      // what the policy says of the pair, also where it says the opposite

	// On is the general statement: what Upper is placed over Lower on. It is zero
	// where nothing that is seen speaks for Upper.
	On     Heading   `json:"on,omitzero"`
	Over   []Support `json:"over"`   // in which Upper is the better, On first
	Grants []Support `json:"grants"` // in which Lower is
}

// Reasons are the reasons for an order, pair by pair from the top, and what is
// wrong with the last exhibit: the order published for a set of reasons
// (ksu-horse-judging, usu-reasons-slides). [Reasons.Spoken] says them.
type Reasons struct {
	Order placing.Order `json:"order"`
	Sex   grade.Sex     `json:"sex,omitzero"` // of all exhibits; zero where they are mixed
	Pairs []PairReasons `json:"pairs"`
	Last  []Fact        `json:"last"` // what [Graded.Criticisms] says of the last exhibit
}

// darkText goes before the step of dark cutting in the value of a fact.
const darkText = "dark cutting "

// datum is one trait of one exhibit.
type datum struct {
	trait  grade.Trait
	site   Site
	text   string
	known  bool
	number int64 // the higher, the better
	counts int64 // what the number counts for, in units of a yield grade
	eye    int64 // the number as the eye has it
}

// data lists what is known of an exhibit, in the order of [Graded.Facts].
func (g Graded) data(exhibit int) []datum {
	a := g.assessed[exhibit-1]
	c, m, lean := a.Carcass, a.Carcass.Maturity, a.Carcass.Lean
	taken, _ := c.Adjusted()
	terms, _ := taken.Terms()
	marbling, dark := int64(c.Marbling), int64(lean.Dark)
	all := []datum{
		{grade.TraitQuality, 0, a.Quality.String(), true, int64(a.Quality), pointCounts * marbling, int64(a.Quality.Grade())},
		{grade.TraitDark, 0, darkText + lean.Dark.String(), true, -dark, -thirdCounts * dark, -dark},
		{grade.TraitMarbling, 0, c.Marbling.String(), true, marbling, pointCounts * marbling, marbling},
		{grade.TraitYield, 0, a.Yield.String(), true, -units(a.Yield), -units(a.Yield), -units(a.Yield)},
		{grade.TraitFat, 0, taken.Fat.String(), true, -taken.Fat.Units(), -units(terms.Fat), -taken.Fat.Units()},
		{grade.TraitRibeye, 0, taken.Ribeye.String(), true, taken.Ribeye.Units(), -units(terms.Ribeye), taken.Ribeye.Units()},
		{grade.TraitKPH, 0, taken.KPH.String(), true, -taken.KPH.Units(), -units(terms.KPH), -taken.KPH.Units()},
		{grade.TraitWeight, 0, taken.Weight.String(), true, -taken.Weight.Units(), -units(terms.Weight), 0},
		{grade.TraitSkeletal, 0, m.Skeletal.String(), true, -int64(m.Skeletal), 0, -int64(m.Skeletal.Group())},
		{grade.TraitButtons, 0, m.Buttons.String(), m.Buttons != 0, -int64(beyondA(m.Buttons)), 0, -int64(m.Buttons.Group())},
		{grade.TraitLean, 0, m.Lean.String(), m.Lean != 0, -int64(m.Lean), 0, -int64(m.Lean.Group())},
		{grade.TraitColor, 0, lean.Color.String(), lean.Color != 0, int64(lean.Color), 0, int64(lean.Color)},
		{grade.TraitTexture, 0, lean.Texture.String(), lean.Texture != 0, int64(lean.Texture), 0, int64(lean.Texture)},
		{grade.TraitFirmness, 0, lean.Firmness.String(), lean.Firmness != 0, int64(lean.Firmness), 0, int64(lean.Firmness)},
	}
	for s := range Sites() {
		d := datum{trait: grade.TraitSite, site: s}
		if r, ok := g.given.Walk.At(s); ok {
			place := r.Place(exhibit)
			d.number, d.text, d.known = int64(place), "place "+place.String()+" from the fattest", true
			if !s.Fat() {
				d.number, d.text = -d.number, "place "+place.String()+" from the heaviest"
			}
			d.eye = d.number
		}
		all = append(all, d)
	}
	return all
}

// beyondA is the percent of bone in the buttons, where it is beyond group A.
func beyondA(b maturity.Buttons) int {
	percent, _ := b.Percent()
	if b.Group() == maturity.A {
		return 0
	}
	return percent
}

// What the difference in quality counts for, in units of a yield grade: the
// advantages that lift a carcass over one, two and three tiers (uni-placing-notes
// for the first two, the last our own), a third of a tier for a third of dark
// cutting, and half a grade for a hundred points of marbling, our own.
var tiersCount = [...]int64{0, 150_000_000, 200_000_000, 300_000_000}

const (
	pointCounts = 500_000
	thirdCounts = 50_000_000
)

// weight is what the difference of two data of one trait counts for.
func (g Graded) weight(d, o datum, better, worse int) int64 {
	if d.trait == grade.TraitQuality {
		tiers := int(g.assessed[better-1].Quality.Tier()) - int(g.assessed[worse-1].Quality.Tier())
		return max(tiersCount[min(max(tiers, 0), len(tiersCount)-1)], d.counts-o.counts)
	}
	return d.counts - o.counts
}

func (g Graded) fact(d, o datum, better, worse int) Fact {
	f := Fact{Trait: d.trait, Site: d.site, Better: better, Worse: worse, BetterValue: d.text, WorseValue: o.text, Weight: yieldOf(g.weight(d, o, better, worse))}
	for _, least := range traitTerms[d.trait].seen {
		if d.eye-o.eye >= least {
			f.Size++
		}
	}
	return f
}

// Facts returns every trait in which the one exhibit is better than the other, by
// weight, the heaviest first; equal weights in the order quality grade, dark cutting,
// marbling, yield, fat, ribeye, KPH, weight, skeletal maturity, buttons, lean maturity,
// color, texture, firmness, sites, and those in the order of [Sites]. Traits that were
// not looked at in both give no fact, and nor do traits in which the two are equal.
// Buttons count by the percent of bone, 0 for all that speaks for group A.
//
// Weights are in yield grades, with the advantages and the exchange of
// [DefaultPolicy] whatever the policy. Yield counts as it is; fat, ribeye, kidney fat and
// weight by their terms of the yield equation; marbling at half a grade for 100
// points (our own); a third of dark cutting at 0.5 (our own); the quality grade at
// 1.5, 2 and 3 for one, two, and three or more tiers of the trade (the last our
// own, the others published: uni-placing-notes), and at no less than what the
// difference in marbling counts for. Maturity, the lean and the sites count 0, as no
// rule weighs them.
//
// Sizes are our own choice, slight, plain and wide from: 10, 40 and 150 points of
// marbling; 0.05, 0.1 and 0.3 in of fat; 0.4, 0.8 and 2.5 sq in of ribeye; 0.5, 1
// and 2 percent of kidney fat; 0.15, 0.5 and 1.5 yield grades. A third of dark
// cutting and a term of color, texture or firmness is plain; two thirds, and three
// terms, are wide. Parts of one quality grade are slight, the next grade plain,
// farther ones wide. One maturity group is plain and more are wide; ages inside
// one group are unseen. A place over a site is plain. Weight is unseen, since a
// contest posts it.
//
// Exhibits that are not in the class, or one and the same, give none.
func (g Graded) Facts(better, worse int) []Fact {
	if better < 1 || better > g.Len() || worse < 1 || worse > g.Len() {
		return nil
	}
	var all []Fact
	b := g.data(worse)
	for i, a := range g.data(better) {
		if a.known && b[i].known && a.number > b[i].number {
			all = append(all, g.fact(a, b[i], better, worse))
		}
	}
	byWeight(all)
	return all
}

// Criticisms returns the traits in which an exhibit is the worst of the class,
// alone, each as a fact against the exhibit that comes nearest, in the order of
// [Graded.Facts]. Of several that come equally near it is the one whose fact weighs
// least, then the lower number. An exhibit that is not in the
// class has none.
func (g Graded) Criticisms(exhibit int) []Fact {
	if exhibit < 1 || exhibit > g.Len() {
		return nil
	}
	class := make([][]datum, g.Len())
	for e := range class {
		class[e] = g.data(e + 1)
	}
	var all []Fact
	for i, own := range class[exhibit-1] {
		next := -1
		lighter := func(e, than int) bool {
			return g.weight(class[e][i], own, e+1, exhibit) < g.weight(class[than][i], own, than+1, exhibit)
		}
		for e := range class {
			o := class[e][i]
			if e == exhibit-1 {
				continue
			}
			if !own.known || !o.known || o.number <= own.number {
				next = -1
				break
			}
			if next < 0 || o.number < class[next][i].number || o.number == class[next][i].number && lighter(e, next) {
				next = e
			}
		}
		if next >= 0 {
			all = append(all, g.fact(class[next][i], own, next+1, exhibit))
		}
	}
	byWeight(all)
	return all
}

func byWeight(all []Fact) {
	slices.SortStableFunc(all, func(a, b Fact) int { return cmp.Compare(b.Weight.Units(), a.Weight.Units()) })
}

// weight is what the facts under a heading count for together.
func (s Support) weight() int64 {
	var all, most int64
	for _, f := range s.Facts {
		all += f.Weight.Units()
		most = max(most, f.Weight.Units())
	}
	if s.On == OnQuality || s.On == OnCutability {
		return most
	}
	return all
}

// seen reports whether any of the facts is seen.
func (s Support) seen() bool {
	return slices.ContainsFunc(s.Facts, func(f Fact) bool { return f.Size > 0 })
}

// grouped puts facts under their headings, the heaviest heading first.
func grouped(facts []Fact) []Support {
	var all []Support
	for h := OnQuality; h <= OnMuscling; h++ {
		s := Support{On: h}
		for _, f := range facts {
			if f.Heading() == h {
				s.Facts = append(s.Facts, f)
			}
		}
		if s.Facts != nil {
			all = append(all, s)
		}
	}
	slices.SortStableFunc(all, func(a, b Support) int { return cmp.Compare(b.weight(), a.weight()) })
	return all
}

// decidedOn is the heading that a ground of the policy speaks of. A ground that is
// not listed speaks of none, and the weights tell.
var decidedOn = map[Ground]Heading{
	ByTier: OnQuality, ByBottom: OnQuality, ByMarbling: OnQuality,
	ByColor: OnQuality, ByDark: OnQuality, ByTexture: OnQuality, ByFirmness: OnQuality,
	ByAdvantage: OnCutability, ByYield: OnCutability,
	ByMuscling: OnMuscling, ByTrimness: OnTrimness,
}

// general finds the general statement of a pair from what speaks for the upper.
func general(over []Support, d Decision, upper int) Heading {
	find := func(match func(Support) bool) Heading {
		if at := slices.IndexFunc(over, match); at >= 0 {
			return over[at].On
		}
		return 0
	}
	if d.Ground != 0 && d.Upper == upper {
		if h := find(func(s Support) bool { return s.On == decidedOn[d.Ground] }); h != 0 {
			return h
		}
	}
	value := func(s Support) bool { return s.seen() && (s.On == OnQuality || s.On == OnCutability) }
	return cmp.Or(find(value), find(Support.seen))
}

// Reasons returns the reasons for an order of the class, whoever made it: a
// committee, a member or the policy. The facts are the data's alone and always
// argue for the order that is asked about; where the policy says the opposite of a
// pair, what can be said for the upper is little and the grants are many.
//
// The general statement of a pair, [PairReasons.On], is found so. Where the policy
// puts the upper over, it is what its ground speaks of, if any fact stands under
// that heading: quality for a tier, the bottom, marbling, color, dark cutting,
// texture and firmness, cutability for a yield advantage and yield, trimness and
// muscling for themselves. For Choice against Select, for value, and elsewhere it
// is quality or cutability, the heavier of the two of which anything is seen; with
// neither, the heavier of trimness and muscling of which anything is seen; else
// none.
//
// Facts are grouped under their headings and each group is ordered as
// [Graded.Facts] orders. A heading weighs as much as its heaviest fact for quality
// and cutability, whose facts are one thing told twice, and as much as its facts
// together for trimness and muscling. The general statement comes first, then the
// heaviest, equal ones in the order quality, cutability, trimness, muscling.
// Grants are grouped in the same way without a general statement.
//
// An order of another size, the zero Graded and a policy that does not check give
// a [*placing.FieldError].
func (g Graded) Reasons(order placing.Order, p Policy) (Reasons, error) {
	n := g.Len()
	if order.Len() != n || n == 0 {
		return Reasons{}, &fault.FieldError{Path: "order", Field: "order", Value: order.String(), Allowed: "an order of the " + itoa(n) + " exhibits of the class", Err: fault.ErrRange}
	}
	r := Reasons{Order: order, Sex: g.exhibits[0].Carcass.Sex}
	if slices.ContainsFunc(g.exhibits, func(e Exhibit) bool { return e.Carcass.Sex != r.Sex }) {
		r.Sex = 0
	}
	for i := 1; i < n; i++ {
		u, l := order.At(i), order.At(i+1)
		d, err := g.Decide(p, u, l)
		if err != nil {
			return Reasons{}, err
		}
		r.Pairs = append(r.Pairs, g.reasonsFor(placing.PairName(i, n), u, l, d))
	}
	r.Last = g.Criticisms(order.At(n))
	return r, nil
}

// Why returns the reasons for putting one exhibit over another, whether or
// not they are neighbors, as [Graded.Reasons] gives them for neighbors, without a
// name. It is what a member who turned the pair needs to hear. An exhibit that is
// not in the class, one given twice, and a policy that does not check give a
// [*placing.FieldError].
func (g Graded) Why(p Policy, upper, lower int) (PairReasons, error) {
	d, err := g.Decide(p, upper, lower)
	if err != nil {
		return PairReasons{}, err
	}
	return g.reasonsFor("", upper, lower, d), nil
}

func (g Graded) reasonsFor(name string, upper, lower int, d Decision) PairReasons {
	r := PairReasons{Name: name, Upper: upper, Lower: lower, Decision: d, Over: grouped(g.Facts(upper, lower)), Grants: grouped(g.Facts(lower, upper))}
	r.On = general(r.Over, d, upper)
	if at := slices.IndexFunc(r.Over, func(s Support) bool { return s.On == r.On }); at > 0 {
		first := r.Over[at]
		copy(r.Over[1:at+1], r.Over[:at])
		r.Over[0] = first
	}
	return r
}
