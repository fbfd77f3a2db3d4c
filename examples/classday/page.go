package main

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"example.com/ribface/examples/internal/cards"
	"example.com/ribface/examples/internal/classfile"
	"example.com/ribface/examples/internal/page"
	"example.com/ribface/examples/internal/say"
	"example.com/ribface/placing"
	"example.com/ribface/placing/class"
)

// words are those of the first screen and the first page, which a beginner need not
// know.
var words = []string{"class", "exhibit", "placing", "pair", "cuts", "close", "card", "officials", "quality", "yield", "cutability", "marbling", "degrees", "fat", "ribeye", "KPH", "maturity", "dark cutter", "walk", "reasons", "edition", "posted weight"}

// glance starts a page with what the reader came for.
func (w settled) glance() *page.Page {
	p := page.New(w.title)
	p.Lead(w.lead())
	graded := "Graded by the " + w.class.Rules.Edition.String() + " edition of the federal standard"
	if posted := w.class.Posted; posted.IsSet() {
		graded += ", all at one posted weight of " + posted.String()
	}
	p.Note(graded + ".")

	p.Head("The carcasses, best first")
	t := page.Table{Caption: "Yield to a tenth, further decimals dropped; fat in inches, ribeye in square inches, KPH in percent", Heads: []string{"No.", "quality", "yield", "marbling", "fat", "ribeye", "KPH"}, Numbers: []int{2, 4, 5, 6}}
	for n := range w.official.Order().Exhibits() {
		a := w.graded.Assessment(n)
		m := a.Carcass.Measures
		t.Rows = append(t.Rows, []string{w.name(n), a.Quality.String(), say.Tenth(a.Yield), a.Carcass.Marbling.String(), fmt.Sprintf("%.2f", m.Fat), fmt.Sprintf("%.1f", m.Ribeye), fmt.Sprintf("%.1f", m.KPH)})
		t.Notes = append(t.Notes, w.flags(n))
	}
	p.Table(t)

	p.Head("The pairs, and what decided them")
	o := w.official.Order()
	t = page.Table{Caption: "Each pair of neighbors with its cut, how near it is, and what decided it", Heads: []string{"pair", "cut", "how near", "what decided"}, Numbers: []int{1}}
	for i := 1; i < o.Len(); i++ {
		t.Rows = append(t.Rows, []string{w.over(o.At(i), o.At(i+1)), fmt.Sprint(w.official.Cuts().At(i)), w.near(i), w.headline(o.At(i), o.At(i+1))})
	}
	p.Table(t)

	p.Head("What the walk found")
	p.List(w.findings()...)

	if w.scored == nil {
		return p
	}
	p.Head("The members")
	t = page.Table{Caption: "Scores of the cards, the best first, and the pairs missed", Heads: []string{"member", "card", "score", "missed"}, Numbers: []int{2}}
	sorted := slices.SortedStableFunc(slices.Values(w.scored), func(a, b scored) int { return cmp.Compare(b.score, a.score) })
	for _, m := range sorted {
		t.Rows = append(t.Rows, []string{m.Member.ID, w.handedIn(m.Card), fmt.Sprint(m.score), w.missed(m)})
	}
	p.Table(t)
	return p
}

// screen is the first screen as text.
func (w settled) screen() string {
	p := w.glance()
	p.Head("In plain words")
	p.Screen("A class is a few carcasses to place from best to last. Quality is how good the beef should eat: Prime, then Choice, Select, Standard. Yield tells how much trimmed meat to expect, 1 the most and 5 the least, further decimals dropped; cutability is the same in a word. Marbling is flecks of fat in the ribeye, from Slight (Sl) over Small (Sm) and Modest (Mt) to Moderate (Md) and more, with hundredths of a degree. Fat is inches over the ribeye, the muscle at the rib; ribeye is its square inches; KPH is kidney, pelvic and heart fat in percent.")
	p.Screen("The walk compares the carcasses place by place, as the rump, where the cut at the rib does not show. Cuts are the points between neighbors: a card loses them for a pair the wrong way round. A full card is 50; a small cut is a close pair.")
	flags := ""
	for n := range w.official.Order().Exhibits() {
		flags += w.flags(n) + "\n"
	}
	for _, f := range []struct{ mark, means string }{
		{"dark cutter", "A dark cutter has dark lean, which costs it up to a grade, in thirds."},
		{" maturity", "Maturity is how old the animal looks by bone and lean, A the youngest to E."},
		{"soft", "Lean should be firm; soft lean can cost a grade."},
	} {
		if strings.Contains(flags, f.mark) {
			p.Screen(f.means)
		}
	}
	p.Screen("")
	p.Screen("More: -full the work and its sources; -html FILE a page to read and print.")
	return p.Text()
}

// html is the page; the work may be empty.
func (w settled) html(work string) ([]byte, error) {
	p := w.glance()
	p.Words(words...)
	if notes := w.graded.Cautions(); notes != nil {
		p.Fold("Notes on the grading", func() { p.List(notes...) })
	}
	p.Sheet("Reasons, as a member might say them")
	r, err := w.graded.Reasons(w.official.Order(), w.placed.Policy)
	if err != nil {
		return nil, err
	}
	for _, said := range r.Spoken() {
		p.Say(classfile.Rename(w.names, said))
	}
	p.Head("The score of every card")
	members := map[placing.Order][]string{}
	for _, m := range w.scored {
		if m.Card.Order.IsValid() {
			members[m.Card.Order] = append(members[m.Card.Order], m.Member.ID)
		}
	}
	if err := cards.Write(p, w.official, w.names, members); err != nil {
		return nil, err
	}
	w.pictures(p)
	if w.scored != nil {
		p.Sheet("A slip for each member")
		for _, m := range w.scored {
			p.Box(func() { w.slip(p, m) })
		}
	}
	p.Sheet("Blank cards")
	const blanks = 4
	for range blanks {
		p.Box(func() {
			p.Sub("Placing card: " + w.title)
			p.Say("Name: ____________________ Team:\u00a0____________________")
			p.Table(page.PlacingTable("Write the number of an exhibit under each place, the best first", w.graded.Len(), false))
		})
	}
	if work != "" {
		p.Sheet("The work and its sources")
		p.Pre(work)
	}
	return p.HTML(), nil
}

// slip tells one member what was missed, what it cost, and why.
func (w settled) slip(p *page.Page, m scored) {
	name := m.Member.ID
	if m.Member.Team != "" {
		name += ", " + m.Member.Team
	}
	p.Sub(name)
	p.Say(fmt.Sprintf("Your card: %s. Score %d of %d. Official: %s, cuts %s.", w.handedIn(m.Card), m.score, placing.FullScore, w.card(w.official.Order()), w.official.Cuts()))
	if !m.Card.Order.IsValid() {
		p.Say("A card without one clear placing cannot be judged pair by pair.")
		return
	}
	if m.missed == nil {
		p.Say("Nothing missed.")
		return
	}
	var all []string
	for _, f := range m.missed {
		all = append(all, fmt.Sprintf("%s, which cost %s: %s", w.over(f.Upper, f.Lower), say.Count(f.Points, "point", "points"), classfile.Rename(w.names, f.Why.Spoken())))
	}
	p.List(all...)
}

// pictures draws the carcasses with what the walk saw.
func (w settled) pictures(p *page.Page) {
	p.Sheet("The carcasses, seen from outside")
	if len(w.class.Walk) == 0 {
		p.Say("Nobody walked over these carcasses.")
		return
	}
	p.Say("Each hangs by its hind leg. A circle is a place where fat was compared, a square one where muscle was. The number is the place among the class: 1 is the trimmest or the heaviest muscled, and a tie has an equals sign. Light is better and dark is poorer. A ring around a mark: there the carcass is not what its rib shows.")
	p.Figures(func() {
		for n := range w.official.Order().Exhibits() {
			p.Figure(w.draw(n), "")
		}
	})
	p.Fold("The walk, site by site", func() {
		t := page.Table{Caption: "From the fattest or the heaviest muscled; = is a tie", Heads: []string{"site", "ranking"}}
		for site := range class.Sites() {
			if order, ok := w.class.Walk.At(site); ok {
				t.Rows = append(t.Rows, []string{site.String(), classfile.Rename(w.names, order.String())})
			}
		}
		p.Table(t)
	})
}
