package class

import (
	"cmp"

	"example.com/ribface/grade"
	"example.com/ribface/internal/text"
	"example.com/ribface/maturity/cite"
)

// RibeyeBasis says how the ribeyes of a class are ranked. The zero RibeyeBasis
// stands for RibeyeForWeight.
type RibeyeBasis uint8

// The two ways. With a posted weight they give one ranking.
const (
	RibeyeForWeight RibeyeBasis = 1 + iota // by what the ribeye is over or under the one the weight requires
	RibeyeAsIs                             // by the area alone
)

var ribeyeBases = text.Enum{Kind: "ribeye basis", Names: []string{"", "for the weight", "as is"}}

// String gives the name; "unset" for zero.
func (b RibeyeBasis) String() string { return ribeyeBases.String(int(b)) }

// Drift says which way a carcass differs over the rest of it from what the rib
// shows. The zero Drift is none: the rib tells the truth.
type Drift uint8

// The two ways.
const (
	MoreElsewhere Drift = 1 + iota // fatter, or heavier muscled, over the rest
	LessElsewhere                  // trimmer, or lighter muscled, over the rest
)

var drifts = text.Enum{Kind: "drift", Names: []string{"", "more elsewhere", "less elsewhere"}}

// String gives the name; "as at the rib" for zero.
func (d Drift) String() string {
	if d == 0 {
		return "as at the rib"
	}
	return drifts.String(int(d))
}

// Standing compares where one exhibit stands at the rib with where it stands
// over the sites that were looked at.
type Standing struct {
	More, Less []Site     // sites at which it stands higher than at the rib, fatter or heavier muscled, and lower
	Shift      HalfPlaces // places it stands higher, added up over the sites; negative for lower
	Looks      int        // sites looked at
	Drift      Drift      // which way, where Shift comes to one place or more a site

	// Passed is, for an exhibit that drifts, others that drift the opposite way,
	// farther, and past it. An order shows only who passed whom: where one
	// exhibit moves up three places, three others move down one, and theirs is no
	// finding of its own.
	Passed []int
}

// SiteAgreement compares the ranking at one site with the one at the rib: fat
// sites with the measured fat, muscling with the ribeye.
type SiteAgreement struct {
	Look
	Pairs Pairs // the rib first
}

// Representation says whether the rib speaks for the whole carcass.
type Representation struct {
	Basis  RibeyeBasis // how the ribeyes are ranked
	Fat    Ranking     // fattest first, by the fat as measured at the rib, without any adjustment
	Ribeye Ranking     // largest first, by the basis
	Sites  []SiteAgreement
	// FatStandings and MuscleStandings hold one Standing for each exhibit,
	// exhibit 1 first.
	FatStandings, MuscleStandings []Standing
	Missing                       []Site // sites not looked at
}

// Represent compares what the rib shows of fat and muscling with the walk over
// the rest of the carcass, ribeyes ranked by the basis. The measured fat counts,
// not the adjusted. A walk that is not finished is compared as far as it goes. The
// method is our own: places and how far they move; that fat is judged against the
// rest of the carcass is official (cfr-1965-53-p26). A basis that is not named
// gives a [*FieldError].
func (g Graded) Represent(basis RibeyeBasis) (Representation, error) {
	if basis == 0 {
		basis = RibeyeForWeight
	}
	if err := ribeyeBases.Check("ribeye basis", int(basis)); err != nil {
		return Representation{}, err
	}
	n := g.Len()
	fat, ribeye := make([]grade.Thickness, n), make([]grade.Area, n)
	for i, e := range g.exhibits {
		fat[i], ribeye[i] = e.Carcass.Measures.Fat, e.Carcass.Measures.Ribeye
		if basis == RibeyeForWeight {
			need, _ := e.Carcass.Measures.Weight.RequiredRibeye()
			ribeye[i] -= need
		}
	}
	if n == 0 {
		return Representation{Basis: basis}, nil
	}
	r := Representation{Basis: basis, Fat: rank(fat), Ribeye: rank(ribeye), Missing: g.given.Walk.Missing()}
	for s := range Sites() {
		order, ok := g.given.Walk.At(s)
		if !ok {
			continue
		}
		rib := r.Ribeye
		if s.Fat() {
			rib = r.Fat
		}
		pairs, _ := rib.Against(order)
		r.Sites = append(r.Sites, SiteAgreement{Look{s, order}, pairs})
	}
	r.FatStandings, r.MuscleStandings = r.standings(r.Fat, true), r.standings(r.Ribeye, false)
	return r, nil
}

func (r Representation) standings(rib Ranking, fat bool) []Standing {
	all := make([]Standing, rib.Len())
	for i := range all {
		s := &all[i]
		for _, l := range r.Sites {
			if l.Site.Fat() != fat {
				continue
			}
			s.Looks++
			move := rib.Place(i+1) - l.Order.Place(i+1)
			s.Shift += move
			switch {
			case move > 0:
				s.More = append(s.More, l.Site)
			case move < 0:
				s.Less = append(s.Less, l.Site)
			}
		}
		switch one := HalfPlaces(2 * s.Looks); {
		case s.Looks == 0:
		case s.Shift >= one:
			s.Drift = MoreElsewhere
		case s.Shift <= -one:
			s.Drift = LessElsewhere
		}
	}
	for i := range all {
		for j := range all {
			if all[i].Drift != 0 && all[j].Drift != 0 && all[i].Drift != all[j].Drift && passed(rib, all, i, j) {
				all[i].Passed = append(all[i].Passed, j+1)
			}
		}
	}
	return all
}

// passed reports whether exhibit j, moving farther than i, went past it, from over
// it to under it or the other way. To come level, or to leave from there, is not
// to pass.
func passed(rib Ranking, all []Standing, i, j int) bool {
	if abs(all[j].Shift) <= abs(all[i].Shift) {
		return false
	}
	// Looks are as many for both, so the sums compare like the mean places.
	looks := HalfPlaces(all[i].Looks)
	here, there := looks*rib.Place(i+1), looks*rib.Place(j+1)
	return cmp.Compare(here, there)*cmp.Compare(here-all[i].Shift, there-all[j].Shift) < 0
}

func abs(h HalfPlaces) HalfPlaces { return max(h, -h) }

// MeanTau returns Kendall's tau-b between rib and site, averaged over the sites
// of fat or of muscling where it can be worked out. It is a statistic for the
// class as a whole: near 1 the rib speaks for the carcass. ok is false where no
// site has one.
func (r Representation) MeanTau(fat bool) (tau float64, ok bool) {
	n := 0
	for _, s := range r.Sites {
		if t, found := s.Pairs.TauB(); found && s.Site.Fat() == fat {
			tau += t
			n++
		}
	}
	if n == 0 {
		return 0, false
	}
	return tau / float64(n), true
}

// Proposal is a proposal to adjust the fat of one exhibit, with the usual size.
// Nothing is graded by it before the caller accepts; see [Class.Adjust].
type Proposal struct {
	Exhibit     int
	Up          bool            // the rest is fatter than the rib shows: adjust up; else down
	Least, Most grade.Thickness // the usual size, 0.1 to 0.2 in (published: ga-2004-yield-tutorial)
	Sites       []Site          // the sites that speak for it
	Cite        cite.Citation   // for the direction: up is official, down is from memory
}

// Proposals returns the adjustments of fat that the walk speaks for: up for an
// exhibit that is one place or more a site fatter over the rest than at the rib
// (official in direction: cfr-1965-53-p26), down for one that is trimmer (from
// memory), and none for one whose move is that of another going past it. The
// usual size is 0.1 to 0.2 in (published: ga-2004-yield-tutorial); no figure by
// site is published. Muscling has no adjustment: the ribeye is measured.
func (r Representation) Proposals() []Proposal {
	var all []Proposal
	for i, s := range r.FatStandings {
		if s.Drift == 0 || s.Passed != nil {
			continue
		}
		p := Proposal{Exhibit: i + 1, Up: s.Drift == MoreElsewhere, Least: grade.Inch / 10, Most: grade.Inch / 5}
		if p.Up {
			p.Sites, p.Cite = append([]Site(nil), s.More...), cite.Citation{Standing: cite.Official, IDs: "cfr-1965-53-p26"}
		} else {
			p.Sites, p.Cite = append([]Site(nil), s.Less...), cite.Citation{Standing: cite.Memory}
		}
		all = append(all, p)
	}
	return all
}
