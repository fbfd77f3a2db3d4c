package main

import (
	"cmp"
	"fmt"
	"strings"

	"example.com/ribface/examples/internal/classfile"
	"example.com/ribface/examples/internal/say"
	"example.com/ribface/examples/prices"
	"example.com/ribface/grade"
	"example.com/ribface/grade/price"
	"example.com/ribface/maturity"
	"example.com/ribface/placing"
	"example.com/ribface/placing/class"
	"example.com/ribface/placing/contest"
	"github.com/shopspring/decimal"
)

// settled is a class that is graded, placed and scored: what all is written from.
type settled struct {
	day
	base     decimal.Decimal // price per cwt
	grid     price.Grid      // at that base
	given    placing.Cuts    // by a committee; not set without one
	graded   class.Graded
	placed   class.Placing // by the policy
	cuts     placing.CutProposal
	theirs   placing.CutProposal // of the officials
	official placing.Official
	scored   []scored
}

// scored is a card with its score and what it missed.
type scored struct {
	contest.PlacingCard
	score  int
	missed []contest.Missed
}

// settle grades and places the class, finds the official placing and scores the
// cards on it.
func settle(s settings, d day) (settled, error) {
	w := settled{day: d, base: s.base, given: s.cuts}
	terms, err := prices.Read("", s.base)
	if err != nil {
		return w, err
	}
	if w.grid, err = price.New(terms); err != nil {
		return w, err
	}
	if w.graded, err = d.class.Grade(); err != nil {
		return w, err
	}
	if w.placed, err = w.graded.Place(class.DefaultPolicy()); err != nil {
		return w, err
	}
	order := w.placed.Order
	switch {
	case d.order.IsValid():
		order = d.order
	case d.panel.Len() > 0:
		order = d.panel.Consensus().Order
	}
	if w.cuts, err = w.placed.ProposeCuts(order, 0); err != nil {
		return w, err
	}
	cuts := w.cuts.Cuts
	if d.panel.Len() > 0 {
		limit := placing.LimitExact
		if order.Len() == 4 {
			limit = placing.LimitColorado
		}
		if w.theirs, err = d.panel.ProposeCuts(order, limit); err != nil {
			return w, fmt.Errorf("officials: %w", err)
		}
		cuts = w.theirs.Cuts
	}
	if s.cuts.IsValid() {
		cuts = s.cuts
	}
	if w.official, err = placing.NewOfficial(order, cuts); err != nil {
		return w, fmt.Errorf("-cuts: %w", err)
	}
	for _, c := range d.cards {
		m := scored{PlacingCard: c}
		if m.score, err = (placing.CardRules{}).Score(w.official, c.Card); err != nil {
			return w, fmt.Errorf("card of %s: %w", c.Member.ID, err)
		}
		if m.missed, err = (contest.PlacingFeedback{Official: w.official, Card: c.Card}).Missed(w.graded, w.placed.Policy); err != nil {
			return w, err
		}
		w.scored = append(w.scored, m)
	}
	return w, nil
}

// name is what an exhibit is called.
func (w settled) name(exhibit int) string { return classfile.Name(w.names, exhibit) }

// card is a placing in the names of the exhibits.
func (w settled) card(o placing.Order) string { return classfile.Card(w.names, o) }

// over names a pair.
func (w settled) over(upper, lower int) string { return w.name(upper) + " over " + w.name(lower) }

// lead is the sentence that the reader came for: placing and cuts, who set them,
// and how well they agree.
func (w settled) lead() string {
	what, by := "Official placing ", "as a committee settled it"
	n := w.panel.Officials()
	switch {
	case w.order.IsValid() || w.given.IsValid():
	case n > 0:
		by = "by " + say.Count(n, "official", "officials")
		if n > 1 {
			by += ", " + w.agreement()
		}
	default:
		what, by = "Placing ", "by the rules of this program"
	}
	return what + w.card(w.official.Order()) + ", cuts " + w.official.Cuts().String() + ", " + by + "."
}

// agreement says how far the officials are together, by Kendall's W. The lines
// between the words are our own.
func (w settled) agreement() string {
	how := "who differ widely"
	switch c, ok := w.panel.Concordance(); {
	case !ok:
	case c == 1:
		how = "who all agree"
	case c >= 0.7:
		how = "who agree well"
	case c >= 0.4:
		how = "who agree in part"
	}
	if n := w.panel.Consensus().Count; n > 1 {
		how += fmt.Sprintf("; %d placings suit them equally, and the chair decides", n)
	}
	return how
}

// flags are what a coach must know of an exhibit beside its grades.
func (w settled) flags(exhibit int) string {
	a := w.graded.Assessment(exhibit)
	lean := a.Carcass.Lean
	var all []string
	if lean.Dark != 0 {
		part := lean.Dark.String()
		if lean.Dark == grade.DarkFull {
			part = "the whole"
		}
		all = append(all, "dark cutter, "+part)
	}
	if lean.Firmness != 0 && lean.Firmness < grade.SlightlyFirm {
		all = append(all, lean.Firmness.String())
	}
	if g := a.Maturity.Group(); g > maturity.A {
		all = append(all, g.String()+" maturity")
	}
	best, poorest := true, true
	for e := range w.graded.Exhibits() {
		if e.Number != exhibit {
			c := a.Yield.Compare(w.graded.Assessment(e.Number).Yield)
			best, poorest = best && c < 0, poorest && c > 0
		}
	}
	switch {
	case best:
		all = append(all, "best yield grade")
	case poorest:
		all = append(all, "poorest yield grade")
	}
	for _, f := range w.graded.Represent() {
		if f.Exhibit != exhibit {
			continue
		}
		f.Sites = nil
		is := strings.TrimSuffix(f.String(), " shows.")
		_, is, _ = strings.Cut(is, " is ")
		all = append(all, is)
	}
	return strings.Join(all, ", ")
}

// findings are those of the walk, in a sentence each.
func (w settled) findings() []string {
	if len(w.class.Walk) == 0 {
		return []string{"Nobody walked over these carcasses: the rib stands for the whole."}
	}
	var all []string
	for _, f := range w.graded.Represent() {
		all = append(all, classfile.Rename(w.names, f.String()))
	}
	if all == nil {
		all = []string{"Every rib shows what the rest of its carcass is."}
	}
	return all
}

// headline says in a few words what decided a pair of neighbors.
func (w settled) headline(upper, lower int) string {
	d, _ := w.placed.Decision(upper, lower)
	if d.Ground != 0 && d.Upper != upper {
		return "by the rules it is " + w.over(lower, upper) + ", on " + w.ground(d)
	}
	return w.ground(d)
}

// ground says what decided a pair, as a coach would.
func (w settled) ground(d class.Decision) string {
	u, l := w.graded.Assessment(d.Upper), w.graded.Assessment(d.Lower)
	grades := u.Quality.String() + " against " + l.Quality.String()
	yields := say.Tenth(u.Yield) + " against " + say.Tenth(l.Yield)
	switch d.Ground {
	case class.ByTier:
		return "quality: " + grades
	case class.ByAdvantage:
		return "cutability: yield " + yields + " outweighs " + l.Quality.String() + " against " + u.Quality.String()
	case class.ByBottom:
		return "quality: " + w.name(d.Lower) + " belongs at the bottom (" + cmp.Or(w.bottom(l), l.Quality.String()) + ")"
	case class.ByCeiling:
		if u.Quality.Grade() == grade.Choice {
			return "quality: a Choice at yield " + say.Tenth(u.Yield) + " stays over Select"
		}
		return "cutability: a lean Select goes over a Choice at yield " + say.Tenth(l.Yield)
	case class.ByMarbling:
		return "marbling: " + u.Carcass.Marbling.String() + " against " + l.Carcass.Marbling.String()
	case class.ByYield:
		return "cutability: yield " + yields
	case class.ByMuscling:
		return "muscling: heavier over the walk"
	case class.ByTrimness:
		return "trimness: less fat over the walk"
	case class.ByDark:
		return "color: less dark"
	case class.ByColor:
		return "color: brighter lean"
	case class.ByTexture:
		return "texture: finer lean"
	case class.ByFirmness:
		return "firmness: firmer lean"
	default:
		return "nothing tells them apart"
	}
}

// bottom says why a carcass goes under all others, beside its grade.
func (w settled) bottom(a grade.Assessment) string {
	switch p := w.placed.Policy; {
	case a.Carcass.Lean.Dark >= p.BottomDark:
		return "dark cutter"
	case a.Maturity.Group() >= p.BottomGroup:
		return a.Maturity.Group().String() + " maturity"
	}
	return ""
}

// near says whether a pair is close: by the official cut in the words of a
// published scale, or by the policy.
func (w settled) near(pair int) string {
	o := w.official
	cut := o.Cuts().At(pair)
	words, ok := placing.WordsColorado.Cut(cut)
	if !ok { // none, or more than the scale knows
		words = map[bool]string{true: "tied", false: "very easy"}[cut == 0]
	}
	words, _, _ = strings.Cut(words, ",")
	if d, _ := w.placed.Decision(o.Order().At(pair), o.Order().At(pair+1)); d.Close && words != "close" {
		words += ", close by the rules"
	}
	return words
}

// missed says what pairs a card turned, neighbors first and by their name, or why
// it has no placing.
func (w settled) missed(m scored) string {
	switch m.Card.Mark {
	case placing.DoubleMarked:
		return "more than one placing marked"
	case placing.Unreadable:
		return "no placing that can be read"
	}
	if !m.Card.Order.IsValid() {
		return "no placing marked"
	}
	if m.missed == nil {
		return "nothing"
	}
	o := w.official.Order()
	var near, far []string
	for _, f := range m.missed {
		if place := o.Place(f.Upper); o.Place(f.Lower) == place+1 && o.Len() > 2 {
			near = append(near, placing.PairName(place, o.Len()))
		} else {
			far = append(far, w.over(f.Upper, f.Lower))
		}
	}
	return strings.Join(append(near, far...), ", ")
}

// handedIn is what stands on a card.
func (w settled) handedIn(c placing.Card) string {
	switch {
	case c.Order.IsValid():
		return w.card(c.Order)
	case c.Mark == 0:
		return placing.Blank.String()
	}
	return c.Mark.String()
}
