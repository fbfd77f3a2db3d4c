package practice

import (
	"cmp"
	mathbits "math/bits"
	"math/rand/v2"
	"slices"
	"strconv"
	"strings"

	"example.com/ribface/grade"
	"example.com/ribface/internal/fault"
	"example.com/ribface/internal/text"
	"example.com/ribface/internal/text/fixed"
	"example.com/ribface/maturity"
	"example.com/ribface/placing"
	"example.com/ribface/placing/class"
	"example.com/ribface/placing/contest"
)

// Difficulty is how hard a class is to place, by the total of its cuts. In a class of
// five and more, whose cuts cannot carry such totals without negative cards, it
// goes by the total that [class.Placing.ProposeCuts] asks for. The zero Difficulty
// is any.
type Difficulty uint8

// The difficulties. A committee gives 15 for a very placeable class and 5 for a
// hard one (published: amsa-committee); the bands between are derived.
const (
	Hard   Difficulty = 1 + iota // a total of 8 or less
	Medium                       // 9 to 12
	Easy                         // 13 or more; not in a class of eight or more
)

var difficulties = text.Enum[Difficulty]{Kind: "difficulty", Names: []string{"", "hard", "medium", "easy"}}

// bands are the least and greatest totals of each difficulty.
var bands = [...]struct{ least, most int }{{0, placing.FullScore}, Hard: {0, 8}, Medium: {9, 12}, Easy: {13, placing.FullScore}}

// String gives the name; "unset" for zero.
func (d Difficulty) String() string { return difficulties.String(d) }

// MarshalText gives the name; the zero value is empty text.
func (d Difficulty) MarshalText() ([]byte, error) { return difficulties.Marshal(d) }

// UnmarshalText reads what [Difficulty.String] writes, in any case; empty text gives the
// zero value. On error the receiver is left as it was.
func (d *Difficulty) UnmarshalText(b []byte) error { return difficulties.Unmarshal(d, b) }

// Shape is which pairs of a class of four are close. The zero Shape is any.
type Shape uint8

// The shapes of a good class (published: ext-judging-contests-101). A pair is
// closer than another where its cut is the smaller (derived).
const (
	CloseMiddle Shape = 1 + iota // clear top, close middle, clear bottom: the middle cut is the smallest
	ClosePairs                   // close top pair and close bottom pair: the middle cut is the greatest
	ClearSteps                   // clear steps throughout: the cuts are at most one apart
)

var shapes = text.Enum[Shape]{Kind: "shape", Names: []string{"", "close middle", "close pairs", "clear steps"}}

// String gives the name; "unset" for zero.
func (s Shape) String() string { return shapes.String(s) }

// MarshalText gives the name; the zero value is empty text.
func (s Shape) MarshalText() ([]byte, error) { return shapes.Marshal(s) }

// UnmarshalText reads what [Shape.String] writes, in any case; empty text gives the
// zero value. On error the receiver is left as it was.
func (s *Shape) UnmarshalText(b []byte) error { return shapes.Unmarshal(s, b) }

// fits reports whether the cuts have the shape.
func (s Shape) fits(c placing.Cuts) bool {
	top, middle, bottom := c.At(1), c.At(2), c.At(3)
	switch s {
	case CloseMiddle:
		return middle < top && middle < bottom
	case ClosePairs:
		return middle > top && middle > bottom
	case ClearSteps:
		return max(top, middle, bottom)-min(top, middle, bottom) <= 1
	default:
		return true
	}
}

// Spec is the class that is wanted. The zero Spec is four steers of the newest herd
// of [Herds], graded by the current edition and placed by the default policy, of
// any difficulty.
type Spec struct {
	Exhibits    int          `json:"exhibits,omitzero"`     // 2 to 12; 0 for 4
	Herd        Herd         `json:"herd,omitzero"`         // what carcasses are drawn from; zero for the newest of Herds
	Spread      int          `json:"spread,omitzero"`       // percent of the herd's spread, 1 to 400; 0 for 100: the more, the wider the range of grades
	LeastGrades int          `json:"least_grades,omitzero"` // at least so many different quality grades, 0 to the exhibits
	Difficulty  Difficulty   `json:"difficulty,omitzero"`   // zero for any
	Shape       Shape        `json:"shape,omitzero"`        // zero for any; only for a class of four
	LeastCut    int          `json:"least_cut,omitzero"`    // no cut smaller than this, 0 to 8
	Sex         grade.Sex    `json:"sex,omitzero"`          // zero for steers
	Rules       grade.Rules  `json:"rules,omitzero"`        // zero for the current edition
	Policy      class.Policy `json:"policy,omitzero"`       // zero for the default policy
}

// Invented is an invented class with its key.
type Invented struct {
	Seed     uint64           `json:"seed,omitzero"`
	Spec     Spec             `json:"spec,omitzero"` // as asked for, with the zero values filled in
	Graded   class.Graded     `json:"graded,omitzero"`
	Placing  class.Placing    `json:"placing,omitzero"`
	Official placing.Official `json:"official,omitzero"` // the placing and the proposed cuts
	Draws    int              `json:"draws,omitzero"`    // classes drawn until one was as wanted
}

// widest is the range of weights in a class, in pounds (published: amsa-committee).
const widest = 50

// mostDraws bounds the search for a class that is as wanted.
const mostDraws = 20_000

// Make makes the class of a seed: it draws classes until one is as wanted. Weights
// are within 50 lb of each other (published: amsa-committee); fat is in steps of
// 0.05 in, ribeye of 0.1 sq in, KPH of 0.5 percent, weight of 1 lb and marbling of
// 10 points, as people read them (common practice, no source). A class that the
// policy places in a cycle, or with a pair that it cannot tell apart, is drawn
// again.
//
// A value of the Spec that is out of range gives a [*placing.FieldError] before anything is
// drawn, as do values that contradict each other: cuts that are too many for the
// size, the difficulty or the shape, more grades than the marbling of the herd can
// have, an easy class of eight or more, and a herd without spread for a policy that
// tells nothing else apart. So does a Spec for which 20,000 draws gave no class.
func Make(seed uint64, spec Spec) (Invented, error) {
	spec, err := spec.fill()
	if err != nil {
		return Invented{}, err
	}
	d := draw{rand.NewPCG(seed, 0x7269_6266_6163_6500)}
	for n := 1; n <= mostDraws; n++ {
		g, err := d.class(spec).Grade()
		if err != nil {
			return Invented{}, err
		}
		if !spec.spread(g) {
			continue
		}
		p, err := g.Place(spec.Policy)
		if err != nil {
			return Invented{}, err
		}
		// A pair that nothing decides may stand either way round, so that two orders
		// are equal.
		if len(p.Cycles) > 0 || p.Equal != 1 {
			continue
		}
		proposal, _ := p.ProposeCuts(p.Order, 0) // of a placed class, within no limit of the caller's
		total := proposal.Total
		if spec.Exhibits > mostCarried {
			total = proposal.Asked
		}
		if !spec.wanted(total, proposal.Cuts) {
			continue
		}
		o, err := placing.NewOfficial(p.Order, proposal.Cuts)
		return Invented{Seed: seed, Spec: spec, Graded: g, Placing: p, Official: o, Draws: n}, err
	}
	return Invented{}, &fault.FieldError{Field: "spec", Value: "seed " + strconv.FormatUint(seed, 10), Allowed: "a class that 20,000 draws can give", Err: fault.ErrRange}
}

// fill puts the defaults in and checks the rest.
func (s Spec) fill() (Spec, error) {
	s.Exhibits, s.Spread, s.Sex = cmp.Or(s.Exhibits, 4), cmp.Or(s.Spread, 100), cmp.Or(s.Sex, grade.Steer)
	s.Rules, s.Herd = cmp.Or(s.Rules, grade.Rules{Edition: grade.Current}), cmp.Or(s.Herd, herds[len(herds)-1])
	if s.Policy.IsZero() {
		s.Policy = class.DefaultPolicy()
	}
	if err := s.Herd.check(); err != nil {
		return Spec{}, fault.In("herd", err)
	}
	for _, is := range [...]struct {
		field          string
		n, least, most int
	}{
		{"exhibits", s.Exhibits, placing.MinExhibits, placing.MaxExhibits},
		{"spread", s.Spread, 1, 400},
		{"least grades", s.LeastGrades, 0, s.Exhibits},
		{"least cut", s.LeastCut, 0, 8},
	} {
		if is.n < is.least || is.n > is.most {
			return Spec{}, &fault.FieldError{Field: is.field, Value: strconv.Itoa(is.n), Allowed: strconv.Itoa(is.least) + " to " + strconv.Itoa(is.most), Err: fault.ErrRange}
		}
	}
	if s.Difficulty > Easy {
		return Spec{}, difficulties.Check("difficulty", s.Difficulty)
	}
	if s.Shape > ClearSteps {
		return Spec{}, shapes.Check("shape", s.Shape)
	}
	if s.Shape != 0 && s.Exhibits != 4 {
		return Spec{}, &fault.FieldError{Field: "shape", Value: s.Shape.String(), Allowed: "none but in a class of four", Err: fault.ErrRange}
	}
	if err := s.Policy.Check(); err != nil {
		return Spec{}, err
	}
	return s, s.contradiction()
}

const (
	mostCarried = 4 // exhibits of the largest class whose cuts carry every total from 5 to 15
	mostEasy    = 7 // exhibits of the largest class that is easy: in a larger one neighbors stand too near
)

// contradiction refuses what no draw could give.
func (s *Spec) contradiction() error {
	if s.Difficulty == Easy && s.Exhibits > mostEasy {
		return &fault.FieldError{Field: "difficulty", Value: s.Difficulty.String(), Allowed: "hard or medium in a class of eight or more", Err: fault.ErrRange}
	}
	if !s.possibleCuts() {
		value := strconv.Itoa(s.LeastCut) + " in a class of " + strconv.Itoa(s.Exhibits)
		if s.Difficulty != 0 {
			value += ", " + s.Difficulty.String()
		}
		if s.Shape != 0 {
			value += ", " + s.Shape.String()
		}
		return &fault.FieldError{Field: "least cut", Value: value, Allowed: "one that the size, the difficulty and the shape of the class leave room for", Err: fault.ErrRange}
	}
	if n := s.possibleGrades(); s.LeastGrades > n {
		return &fault.FieldError{Field: "least grades", Value: strconv.Itoa(s.LeastGrades), Allowed: "up to " + strconv.Itoa(n) + ", which the marbling of the herd can have", Err: fault.ErrRange}
	}
	blind := s.Policy.Grid == nil && s.Policy.Exchange.Units() == 0
	for _, g := range s.Policy.Ties {
		blind = blind && slices.Contains([]class.Ground{class.ByMarbling, class.ByDark, class.ByColor, class.ByTexture, class.ByFirmness}, g)
	}
	if least, most := s.marblings(); blind && least == most {
		return &fault.FieldError{Field: "herd: spread of marbling", Value: "none", Allowed: "some, for a policy that looks at nothing else within a tier", Err: fault.ErrRange}
	}
	return nil
}

// possibleCuts reports whether any cuts that the limits allow are as asked for.
func (s *Spec) possibleCuts() bool {
	each := slices.Repeat([]int{s.LeastCut}, s.Exhibits-1)
	if s.Exhibits > mostCarried {
		// The total that is asked for is at least that of the cuts.
		cuts, _ := placing.NewCuts(each...)
		return cuts.NeverNegative() && cuts.Total() <= bands[s.Difficulty].most
	}
	limit := placing.LimitExact
	if s.Exhibits == 4 {
		limit = placing.LimitColorado
	}
	for {
		cuts, _ := placing.NewCuts(each...)
		if limit.Check(cuts) == nil && cuts.Total() <= 15 && s.wanted(cuts.Total(), cuts) {
			return true
		}
		// The next cuts, as an odometer from the least cut to 15.
		i := 0
		for i < len(each) && each[i] == 15 {
			each[i] = s.LeastCut
			i++
		}
		if i == len(each) {
			return false
		}
		each[i]++
	}
}

// marblings returns the least and the most marbling that a draw can give.
func (s *Spec) marblings() (least, most grade.Marbling) {
	far := func(sigmas int64) grade.Marbling {
		n := int64(s.Herd.Marbling) + sigmas*(int64(s.Herd.MarblingSpread)*int64(s.Spread)/100)
		return grade.Marbling(kept((n+5)/10*10, int64(grade.PracticallyDevoid.At(0)), int64(grade.Abundant.At(90))))
	}
	return far(-6), far(6)
}

// possibleGrades counts the quality grades that a draw can give.
func (s *Spec) possibleGrades() int {
	seen := map[grade.Grade]bool{}
	least, most := s.marblings()
	for m := least; m <= most; m += 10 {
		q, err := s.Rules.Quality(grade.Carcass{Sex: s.Sex, Maturity: maturity.Evidence{Skeletal: maturity.A.At(50), Lean: maturity.A.At(50)}, Marbling: m})
		if err != nil {
			return s.Exhibits // drawing tells what is wrong
		}
		seen[q.Grade()] = true
	}
	return len(seen)
}

// spread reports whether the class has enough different grades.
func (s *Spec) spread(g class.Graded) bool {
	seen := map[grade.Grade]bool{}
	for i := range g.Len() {
		seen[g.Assessment(i+1).Quality.Grade()] = true
	}
	return len(seen) >= s.LeastGrades
}

// wanted reports whether the cuts, and the total that counts, are as asked for.
func (s *Spec) wanted(total int, c placing.Cuts) bool {
	for v := range c.All() {
		if v < s.LeastCut {
			return false
		}
	}
	band := bands[s.Difficulty]
	return total >= band.least && total <= band.most && s.Shape.fits(c)
}

// draw makes whole numbers from the bits of a generator whose stream is fixed.
type draw struct{ pcg *rand.PCG }

// below returns a number from 0 to n - 1, each as often but for one part in 2^64/n.
func (d draw) below(n int64) int64 {
	hi, _ := mathbits.Mul64(d.pcg.Uint64(), uint64(n))
	return int64(hi)
}

// one is one standard deviation of what [draw.normal] returns, to one part in
// 10^10.
const one = 1 << 16

// normal returns a number around 0: the sum of twelve even draws, which comes close
// to a normal one and never goes beyond six standard deviations.
func (d draw) normal() int64 {
	sum := int64(0)
	for range 3 {
		for v, i := d.pcg.Uint64(), 0; i < 4; v, i = v>>16, i+1 {
			sum += int64(v & (one - 1))
		}
	}
	return sum - 6*(one-1)
}

func kept(n, least, most int64) int64 { return min(max(n, least), most) }

// correlate returns traits that go together, in parts of [one] and never beyond six
// standard deviations, from traits each drawn on its own.
func correlate(alone [traits]int64) (out [traits]int64) {
	for i, row := range together {
		sum := int64(one / 2)
		for j, c := range row {
			sum += c * alone[j]
		}
		out[i] = kept(sum>>16, -6*one, 6*one)
	}
	return out
}

// read returns the value of a trait that is so many parts of [one] standard
// deviation off its mean, as people read it: in whole steps, and kept to what is
// drawn.
func read(trait int, mean, spread, off int64) int64 {
	t := drawn[trait]
	n := mean + (off*spread+one/2)>>16
	return kept(fixed.Round(n, t.step, fixed.HalfUp), t.least, t.most)
}

// class draws one class. The weight of its middle comes first, and the other traits
// of every exhibit go together with that.
func (d draw) class(s Spec) class.Class {
	means, spreads := s.Herd.means(), s.Herd.spreads()
	for i := range spreads {
		spreads[i] = spreads[i] * int64(s.Spread) / 100
	}
	heavy := d.normal()
	middle := read(weight, means[weight], spreads[weight], heavy)
	c := class.Class{Rules: s.Rules}
	for n := range s.Exhibits {
		skeletal := maturity.A.At(int(30 + 10*d.below(5)))
		lean := maturity.A.At(int(30 + 10*d.below(5)))
		alone := [traits]int64{weight: heavy}
		for i := weight + 1; i < traits; i++ {
			alone[i] = d.normal()
		}
		var v [traits]int64
		for i, off := range correlate(alone) {
			v[i] = read(i, means[i], spreads[i], off)
		}
		v[weight] = middle + (d.below(widest+1)-widest/2)*unit
		k := carcass(v)
		k.Sex = s.Sex
		k.Maturity = maturity.Evidence{Skeletal: skeletal, Lean: lean}
		c.Exhibits = append(c.Exhibits, class.Exhibit{Number: n + 1, Carcass: k})
	}
	return c
}

// Facts returns the official facts of the exhibits, as for a grading class.
func (c Invented) Facts() []contest.OfficialFacts {
	var out []contest.OfficialFacts
	for i := range c.Graded.Len() {
		f, _ := contest.FactsOf(c.Graded.Assessment(i + 1)) // graded, so in order
		out = append(out, contest.OfficialFacts{Class: c.Name(), Exhibit: i + 1, Facts: f})
	}
	return out
}

// Key returns the official placing with its cuts, as for a placing class.
func (c Invented) Key() contest.OfficialPlacing {
	return contest.OfficialPlacing{Class: c.Name(), Order: c.Official.Order(), Cuts: c.Official.Cuts()}
}

// Name returns the name of the class, which says that it is invented, as "invented
// class 7" for seed 7.
func (c Invented) Name() string { return "invented class " + strconv.FormatUint(c.Seed, 10) }

// String gives the class as plain text: what hangs there, without the key.
func (c Invented) String() string {
	var b strings.Builder
	b.WriteString(c.Name() + ": no carcass of it is real\n")
	for e := range c.Graded.Exhibits() {
		k := e.Carcass
		b.WriteString("exhibit " + strconv.Itoa(e.Number) + ": " + k.Sex.String() + ", skeletal " + k.Maturity.Skeletal.String() + ", lean " + k.Maturity.Lean.String() +
			", marbling " + k.Marbling.String() + ", fat " + k.Measures.Fat.String() + ", ribeye " + k.Measures.Ribeye.String() +
			", KPH " + k.Measures.KPH.String() + ", weight " + k.Measures.Weight.String() + "\n")
	}
	return b.String()
}
