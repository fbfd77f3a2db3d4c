package class

import (
	"cmp"

	"example.com/ribface/grade"
	"example.com/ribface/maturity/cite"
	"example.com/ribface/placing"
)

// Finding is where one exhibit is not what its rib shows: fatter or trimmer over
// the rest of the carcass than at the place of measurement, or heavier or lighter
// muscled than its ribeye says.
type Finding struct {
	Exhibit int    `json:"exhibit"`
	Fat     bool   `json:"fat"`   // it is about fat; else about muscling
	More    bool   `json:"more"`  // fatter or heavier muscled than the rib shows; else trimmer or lighter
	Sites   []Site `json:"sites"` // that say so, in the order of the walk

	// Usual are the least and the most by which the fat is usually adjusted, up
	// or down by 0.1 and 0.2 in (size published: ga-2004-yield-tutorial; by site
	// no figure is published), to be handed to [Class.Adjust] by a judge who
	// accepts one. Nothing is graded by them before. Both are zero for muscling,
	// which has no adjustment: the ribeye is measured.
	Usual [2]grade.Thickness `json:"usual,omitzero"`

	// Cite is where the direction of the adjustment comes from: up is official
	// (cfr-1965-53-p26), down is from memory. The zero Citation for muscling.
	Cite cite.Citation `json:"cite,omitzero"`
}

// String says it in one sentence, as "1 is fatter than its rib shows, over the
// rump and loin edge and in the brisket."
func (f Finding) String() string {
	way, shows := "trimmer than its rib shows", ""
	switch {
	case f.Fat && f.More:
		way = "fatter than its rib shows"
	case !f.Fat && f.More:
		way = "heavier muscled than its ribeye shows"
	case !f.Fat:
		way = "lighter muscled than its ribeye shows"
	}
	if where := where(f.Sites, 0); where != "" {
		shows = ", " + where
	}
	return itoa(f.Exhibit) + " is " + way + shows + "."
}

// Represent says whose rib does not speak for the whole carcass, by the walk as
// far as it goes: by exhibit, fat before muscling; nil where every rib does or
// nobody walked.
//
// At every site looked at, an exhibit moves by its place at the rib less its place
// at the site, ties sharing the middle of theirs: fat sites against the ranking by
// measured fat, the fattest first, muscling against the ranking by how far the
// ribeye is over the one that the weight requires, the largest first. The measured
// fat counts, not the adjusted. Where the moves over the sites of fat, or those
// over the sites of muscling, add up to one place or more a site, up or down, that
// is a finding; its sites are those where the exhibit moved that way.
//
// There is no finding for an exhibit whose move is only that of another going
// past it: one that also has one, moves the other way and in sum farther, and
// comes from over it to under it, or the other way, by places at the rib and mean
// places over the sites. To draw level is not to go past.
//
// That fat is judged against the rest of the carcass is official
// (cfr-1965-53-p26); the count of places is our own.
func (g Graded) Represent() []Finding {
	if g.Len() == 0 {
		return nil
	}
	fat, ribeye := make([]int, g.Len()), make([]int, g.Len())
	for i, e := range g.exhibits {
		need, _ := e.Carcass.Measures.Weight.RequiredRibeye()
		fat[i] = int(e.Carcass.Measures.Fat.Units())
		ribeye[i] = int(e.Carcass.Measures.Ribeye.Units() - need.Units())
	}
	byFat, _ := placing.RankScores(fat...)
	byRibeye, _ := placing.RankScores(ribeye...)
	var all []Finding
	fats, muscles := g.given.Walk.moves(byFat, true), g.given.Walk.moves(byRibeye, false)
	for e := range g.Len() {
		for _, m := range [...][]move{fats, muscles} {
			if m[e].way != 0 && !m[e].passed(m) {
				all = append(all, m[e].finding())
			}
		}
	}
	return all
}

// move is how an exhibit moves from the rib to the sites of fat or of muscling.
type move struct {
	exhibit    int
	fat        bool
	more, less []Site
	rib        placing.HalfPlaces // its place at the rib, times the sites
	shift      placing.HalfPlaces // places it moves up, added up over the sites
	way        int                // +1 or -1 where that comes to one place or more a site
}

// moves returns the moves of all exhibits, exhibit 1 first.
func (w Walk) moves(rib placing.Ranking, fat bool) []move {
	all := make([]move, rib.Len())
	for i := range all {
		m := &all[i]
		m.exhibit, m.fat = i+1, fat
		looks := placing.HalfPlaces(0)
		for s := range Sites() {
			order, ok := w.At(s)
			if !ok || s.Fat() != fat {
				continue
			}
			looks++
			by := rib.Place(i+1) - order.Place(i+1)
			m.shift += by
			switch {
			case by > 0:
				m.more = append(m.more, s)
			case by < 0:
				m.less = append(m.less, s)
			}
		}
		m.rib = looks * rib.Place(i+1)
		if max(m.shift, -m.shift) >= 2*looks {
			m.way = cmp.Compare(m.shift, 0)
		}
	}
	return all
}

// passed reports whether another exhibit, moving the other way and farther, went
// past this one. Looks are as many for both, so the sums compare like mean places.
func (m move) passed(all []move) bool {
	for _, o := range all {
		if o.way == -m.way && max(o.shift, -o.shift) > max(m.shift, -m.shift) &&
			cmp.Compare(m.rib, o.rib)*cmp.Compare(m.rib-m.shift, o.rib-o.shift) < 0 {
			return true
		}
	}
	return false
}

func (m move) finding() Finding {
	f := Finding{Exhibit: m.exhibit, Fat: m.fat, More: m.way > 0, Sites: m.less}
	least, most := grade.Inches(-0.1), grade.Inches(-0.2)
	from := cite.Citation{Standing: cite.Memory}
	if f.More {
		f.Sites = m.more
		least, most, from = grade.Inches(0.1), grade.Inches(0.2), cite.Citation{Standing: cite.Official, IDs: "cfr-1965-53-p26"}
	}
	if f.Fat {
		f.Usual, f.Cite = [2]grade.Thickness{least, most}, from
	}
	return f
}
