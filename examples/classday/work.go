package main

import (
	"fmt"
	"strings"

	"example.com/ribface/examples/internal/say"
	"example.com/ribface/grade"
	"example.com/ribface/grade/price"
	"example.com/ribface/maturity/cite"
	"example.com/ribface/placing"
	"example.com/ribface/placing/class"
	"github.com/shopspring/decimal"
)

// width is the most characters on a line.
const width = 100

// lines is the work as it is written.
type lines struct{ strings.Builder }

// head starts a section.
func (p *lines) head(title string) {
	fmt.Fprintf(&p.Builder, "\n%s\n%s\n", title, strings.Repeat("-", len(title)))
}

// line writes one line.
func (p *lines) line(format string, args ...any) {
	fmt.Fprintf(&p.Builder, strings.TrimRight(format, " ")+"\n", args...)
}

// wrap writes text over as many lines as it takes, the later ones indented.
func (p *lines) wrap(first, rest, text string) {
	at := first
	for i, word := range strings.Fields(text) {
		switch {
		case i == 0:
			at += word
		case len(at)+1+len(word) > width:
			p.WriteString(at + "\n")
			at = rest + word
		default:
			at += " " + word
		}
	}
	p.WriteString(at + "\n")
}

// say writes a sentence as one point of a list.
func (p *lines) say(text string) { p.wrap("  - ", "    ", text) }

// step writes one step of the work with its rule and source under it.
func (p *lines) step(s cite.Step) {
	what := s.Result
	if s.Given != "" {
		what = s.Given + " -> " + s.Result
	}
	p.wrap("  "+s.Name+": ", "      ", what)
	p.wrap("      rule: ", "            ", s.Rule+" ["+s.Cite.String()+"]")
}

// workOf is what the work is written from.
type workOf struct {
	lines
	settled
}

// work writes the whole work with its sources.
func work(s settled) (string, error) {
	w := &workOf{settled: s}
	w.opening()
	w.overview()
	w.grading()
	if err := w.walked(); err != nil {
		return "", err
	}
	w.policy()
	w.cutting()
	if err := w.reasons(); err != nil {
		return "", err
	}
	if err := w.whatIf(); err != nil {
		return "", err
	}
	if err := w.value(); err != nil {
		return "", err
	}
	w.scores()
	w.closing()
	return w.String(), nil
}

func (w *workOf) opening() {
	w.line("THE WORK AND ITS SOURCES")
	w.line("========================")
	if w.invented {
		w.wrap("", "", "Bent Fork, beef carcasses. An invented class: the place, the carcasses, the members and their cards never were.")
	}
	w.wrap("", "", "For teaching and analysis. Only authorized federal graders assign official grades.")
	w.wrap("", "", "Graded by the "+w.class.Rules.Edition.String()+" edition of the federal standard. In square brackets: where a rule comes from and how far it can be trusted.")
	for _, n := range w.graded.Cautions() {
		w.wrap("Note: ", "      ", n+".")
	}
	for i, n := range w.names {
		w.line("Exhibit %d is %s.", i+1, n)
	}
}

func (w *workOf) overview() {
	w.head("1. The class at a glance")
	w.line("%2s  %-8s %-8s %-9s %-8s %-11s %-6s %-7s %-16s %-8s %s", "", "sex", "maturity", "marbling", "fat", "ribeye", "KPH", "weight", "quality", "yield", "grade")
	for e := range w.graded.Exhibits() {
		a := w.graded.Assessment(e.Number)
		m := e.Carcass.Measures
		w.line("%2d  %-8s %-8s %-9s %-8s %-11s %-6s %-7s %-16s %-8s %d", e.Number, e.Carcass.Sex, a.Maturity, e.Carcass.Marbling, m.Fat, m.Ribeye, m.KPH, m.Weight, a.Quality, a.Yield, a.Yield.Grade())
	}
	w.line("")
	w.wrap("", "", "Yield is the federal equation, exact; the grade drops its decimals. The shortcut method by hand never sets a grade; here it gives:")
	for e := range w.graded.Exhibits() {
		m, _ := e.Carcass.Adjusted()
		q, err := m.Shortcut()
		if err != nil {
			continue
		}
		y := w.graded.Assessment(e.Number).Yield
		note := ""
		if quick := grade.YieldUnits(q.Total.Units()); quick.Grade() != y.Grade() {
			note = fmt.Sprintf("  (would read as a %d; the grade is %d)", quick.Grade(), y.Grade())
		}
		w.line("%2d  fat %s, ribeye %s for %s expected, KPH %s: shortcut %s, equation %s%s", e.Number, q.Preliminary, m.Ribeye, q.Required, q.KPH, q.Total, y, note)
	}
}

func (w *workOf) grading() {
	w.head("2. The work, exhibit by exhibit")
	for n := 1; n <= w.graded.Len(); n++ {
		if n > 1 {
			w.line("")
		}
		a := w.graded.Assessment(n)
		w.line("Exhibit %d: %s, yield grade %d", n, a.Quality, a.Yield.Grade())
		for _, s := range a.Steps() {
			w.step(s)
		}
	}
}

func (w *workOf) walked() error {
	w.head("3. The walk, and whether the rib tells the truth")
	if len(w.class.Walk) == 0 {
		w.line("Nobody walked over these carcasses. The rib stands for the whole.")
		return nil
	}
	w.line("%-24s %s", "site", "from the fattest, or the heaviest muscled")
	for site := range class.Sites() {
		if order, ok := w.class.Walk.At(site); ok {
			w.line("%-24s %s", site, order)
		}
	}
	w.line("")
	adjusted := false
	for _, f := range w.graded.Represent() {
		w.say(f.String())
		if !f.Fat {
			continue
		}
		adjusted = true
		way := "down"
		if f.More {
			way = "up"
		}
		w.say(fmt.Sprintf("Proposed: adjust the fat of %d %s; %s to %s is usual [%s; size published: ga-2004-yield-tutorial]. The judge decides; this sheet grades without it.", f.Exhibit, way, f.Usual[0], f.Usual[1], f.Cite))
		for _, by := range f.Usual {
			if err := w.adjust(f.Exhibit, by); err != nil {
				return err
			}
		}
	}
	if !adjusted {
		w.say("No adjustment of fat is proposed.")
	}
	return nil
}

// adjust says what an adjustment of fat would come to.
func (w *workOf) adjust(exhibit int, by grade.Thickness) error {
	changed, err := w.class.Adjust(exhibit, by)
	if err != nil {
		w.say(fmt.Sprintf("Adjusted by %s: %v.", by, err))
		return nil
	}
	g, err := changed.Grade()
	if err != nil {
		return err
	}
	placed, err := g.Place(w.placed.Policy)
	if err != nil {
		return err
	}
	y := g.Assessment(exhibit).Yield
	w.say(fmt.Sprintf("Adjusted by %s: yield %s, grade %d, and the class is placed %s.", by, y, y.Grade(), placed.Order))
	return nil
}

func (w *workOf) policy() {
	w.head("4. The placing")
	w.line("Policy: %s.", w.placed.Policy.Name)
	for _, r := range w.placed.Policy.Steps() {
		w.say(r.Name + ": " + r.Rule + " [" + r.Cite.String() + "].")
	}
	w.line("")
	w.line("Placed %s.", w.placed.Order)
	for line := range strings.SplitSeq(w.placed.String(), "\n") {
		w.say(line)
	}
	for _, d := range w.placed.Decisions {
		if d.Close {
			w.say(fmt.Sprintf("Close: %d and %d. Expect officials to differ.", d.Upper, d.Lower))
		}
	}
}

func (w *workOf) cutting() {
	w.head("5. Cuts, and the officials")
	var margins []string
	for _, m := range w.cuts.Weights {
		margins = append(margins, m.String())
	}
	w.wrap("", "", fmt.Sprintf("Proposed: %s, from margins of %s yield grades between neighbors. Total %d of 5 for a hard class to 15 for a very placeable one [published: amsa-committee; the step between is our own].", w.cuts.Cuts, strings.Join(margins, ", "), w.cuts.Total))
	w.officials()
	o := w.official
	w.line("")
	switch {
	case w.order.IsValid() || w.given.IsValid():
		w.line("Official, as given: %s.", o)
	case w.panel.Len() > 0:
		w.line("Official, from the officials: %s.", o)
	default:
		w.line("Taken as official here, from the policy: %s.", o)
	}
	for i := 1; i <= o.Cuts().Len(); i++ {
		words := ""
		if s, ok := placing.WordsColorado.Cut(o.Cuts().At(i)); ok {
			words = ", " + s + " [" + placing.WordsColorado.Cite().String() + "]"
		}
		w.say(fmt.Sprintf("%s, %d over %d: %d%s.", placing.PairName(i, o.Order().Len()), o.Order().At(i), o.Order().At(i+1), o.Cuts().At(i), words))
	}
	if !o.Cuts().NeverNegative() {
		w.say("With these cuts a card can score below zero.")
	}
	w.line("")
	w.line("What the usual mistakes would score:")
	for _, m := range o.Mistakes() {
		w.line("  %-30s %-28s %3d", m.Name, m.Card, m.Score)
	}
	g := o.Guessing()
	w.wrap("", "", fmt.Sprintf("One who guesses loses %s points on average. Of all %d placings %d score above 40 and %d above 45; the lowest scores %d.", decimal.New(placing.FullScore, 0).Sub(o.Mean()), g.Placings, g.Above40, g.Above45, o.Worst()))
}

// officials tells what the officials make of the class.
func (w *workOf) officials() {
	if w.panel.Len() == 0 {
		return
	}
	w.line("")
	w.line("%s, each alone:", say.Count(w.panel.Officials(), "official", "officials"))
	for v := range w.panel.Votes() {
		w.line("  %s cuts %s", v.Order, v.Cuts)
	}
	c := w.panel.Consensus()
	text := fmt.Sprintf("They agree best on %s; counted over all of them, pairs the other way round: %d", c.Order, c.Disagreement)
	if c.Count > 1 {
		text += fmt.Sprintf("; %d orders are as good, and the chair decides", c.Count)
	}
	w.wrap("", "", text+" [least total disagreement, published: stat-kemeny-example].")
	if coefficient, ok := w.panel.Concordance(); ok {
		tau, _ := w.panel.MeanTau()
		w.wrap("", "", fmt.Sprintf("Agreement: Kendall's W %.2f, mean tau %.2f; 1 is full agreement.", coefficient, tau))
	}
	w.line("Cuts from theirs: %s.", w.theirs.Cuts)
	for _, p := range w.theirs.Pairs {
		w.say(fmt.Sprintf("%d over %d: %d for, %d against, %d to %d points, mean %s.", p.Upper, p.Lower, p.For, p.Against, p.Least, p.Most, p.Mean))
	}
}

func (w *workOf) reasons() error {
	w.head("6. Reasons")
	r, err := w.graded.Reasons(w.official.Order(), w.placed.Policy)
	if err != nil {
		return err
	}
	w.line("For the official placing %s, as a member might say them:", r.Order)
	for _, said := range r.Spoken() {
		w.line("")
		w.wrap("  ", "  ", said)
	}
	w.line("")
	w.line("From the data, what counts most first:")
	const most = 5
	facts := func(all []class.Fact, before string) {
		for _, f := range all[:min(len(all), most)] {
			w.say(before + f.String() + ".")
		}
	}
	for _, p := range r.Pairs {
		w.line("")
		w.line("%s, %d over %d, on %s:", strings.ToUpper(p.Name[:1])+p.Name[1:], p.Upper, p.Lower, p.On)
		for _, s := range p.Over {
			facts(s.Facts, "")
		}
		if p.Over == nil {
			w.say("nothing in the data.")
		}
		for _, s := range p.Grants {
			facts(s.Facts, "granted: ")
		}
		if p.Decision.Ground != 0 && p.Decision.Upper != p.Upper {
			w.say("The policy has it the other way: " + p.Decision.String() + ".")
		}
	}
	w.line("")
	w.line("Last, %d:", r.Order.At(r.Order.Len()))
	facts(r.Last, "")
	if r.Last == nil {
		w.say("the worst of the class in nothing alone.")
	}
	return nil
}

func (w *workOf) whatIf() error {
	w.head("7. What if")
	w.line("How far each is from the lines:")
	for n := 1; n <= w.graded.Len(); n++ {
		a := w.graded.Assessment(n)
		m, err := a.Carcass.Adjusted()
		if err != nil {
			return err
		}
		var parts []string
		if l, ok := a.Yield.Better(); ok {
			parts = append(parts, fmt.Sprintf("%s over yield grade %d%s", grade.YieldUnits(-l.Away.Units()), l.Grade, fatFor(m, l.At)))
		}
		if l, ok := a.Yield.Worse(); ok {
			parts = append(parts, fmt.Sprintf("%s under yield grade %d%s", l.Away, l.Grade, fatFor(m, l.At)))
		}
		changes, err := a.Rules.QualityChanges(a.Carcass)
		if err != nil {
			return err
		}
		for i, c := range changes {
			if c.Points < 0 && (i+1 == len(changes) || changes[i+1].Points > 0) || c.Points > 0 && (i == 0 || changes[i-1].Points < 0) {
				parts = append(parts, fmt.Sprintf("%s of marbling to %s", points(c.Points), c.Quality))
			}
		}
		w.wrap(fmt.Sprintf("  %d: ", n), "     ", strings.Join(parts, "; ")+".")
	}
	w.line("")
	w.line("The smallest change that would turn each pair of neighbors, for the lower one and the upper one:")
	for _, d := range w.placed.Neighbors() {
		all, err := w.graded.Reversals(w.placed.Policy, d.Upper, d.Lower)
		if err != nil {
			return err
		}
		told := map[int]bool{}
		for _, r := range all {
			if told[r.Exhibit] {
				continue
			}
			told[r.Exhibit] = true
			w.say(fmt.Sprintf("%d over %d: %s of %d from %s to %s (%s); the class would then be placed %s.", d.Upper, d.Lower, r.Trait, r.Exhibit, r.From, r.To, r.Change, r.Order))
		}
		switch {
		case d.Ground == 0:
			w.say(fmt.Sprintf("%d and %d: the policy cannot tell them apart; any change would.", d.Upper, d.Lower))
		case all == nil:
			w.say(fmt.Sprintf("%d over %d: no one measure, and no marbling, could turn it.", d.Upper, d.Lower))
		}
	}
	w.line("")
	tol := grade.Tolerances{Fat: grade.Inches(0.05), Ribeye: grade.SquareInches(0.5), KPH: grade.Percent(0.5), Marbling: 20, Maturity: 10}
	w.wrap("", "", fmt.Sprintf("If all of it were estimates, good to %s of fat, %s of ribeye, %s KPH, %d points of marbling and %d of maturity:", tol.Fat, tol.Ribeye, tol.KPH, tol.Marbling, tol.Maturity))
	for n := 1; n <= w.graded.Len(); n++ {
		a := w.graded.Assessment(n)
		e, err := a.Rules.Estimate(a.Carcass, tol)
		if err != nil {
			return err
		}
		var qualities []string
		for _, q := range e.Qualities {
			qualities = append(qualities, q.Quality.String())
		}
		w.wrap(fmt.Sprintf("  %d: ", n), "     ", fmt.Sprintf("yield %s to %s, grade %s; %s.", e.Least, e.Most, or(e.Grades), strings.Join(qualities, " or ")))
	}
	could, err := w.graded.CouldReverse(w.placed.Policy, tol)
	if err != nil {
		return err
	}
	var pairs []string
	for _, d := range could {
		pairs = append(pairs, fmt.Sprintf("%d over %d", d.Upper, d.Lower))
	}
	if pairs == nil {
		w.line("No pair could then go the other way.")
	} else {
		w.wrap("", "", "Pairs that could then go the other way: "+strings.Join(pairs, ", ")+".")
	}
	return nil
}

// fatFor says what fat would put the carcass on a line of yield.
func fatFor(m grade.Measures, line grade.Yield) string {
	o, err := m.Solve(grade.TraitFat, line)
	if err != nil {
		return ""
	}
	v, _ := o.Exact() // for fat it is always finite
	return fmt.Sprintf(" (fat of %s in would be on the line)", v)
}

func (w *workOf) value() error {
	w.head("8. Value")
	terms := w.grid.Offer()
	w.wrap("", "", fmt.Sprintf("At a base of $%s per cwt with the averages printed for the %s [%s]. One week's market and no rule.", w.base, terms.Name, terms.Cite))
	v, err := w.graded.ByValue(w.grid, price.ByHead, nil)
	if err != nil {
		w.wrap("", "", "Not every exhibit has a price on this grid: "+err.Error()+".")
		return nil
	}
	for i, x := range v.Values {
		cents, err := x.Cents(grade.HalfUp)
		if err != nil {
			return err
		}
		var parts []string
		for _, p := range x.Parts() {
			if !p.Amount.IsZero() {
				parts = append(parts, p.Name+" "+p.Amount.StringFixed(2))
			}
		}
		if parts == nil {
			parts = []string{"no premium or discount"}
		}
		w.wrap(fmt.Sprintf("  %d: ", i+1), "     ", fmt.Sprintf("$%s per cwt, $%s a head; %s.", x.PerCwt().StringFixed(2), cents.StringFixed(2), strings.Join(parts, ", ")))
	}
	pairs, err := w.placed.Order.Ranking().Against(v.Order)
	if err != nil {
		return err
	}
	w.wrap("", "", fmt.Sprintf("By value: %s (= is equal). Placed: %s. Of the pairs %d go the same way, %d the other, %d are of equal value.", v.Order, w.placed.Order, pairs.Same, pairs.Reversed, pairs.TiedThen))
	return nil
}

func (w *workOf) scores() {
	if w.scored == nil {
		return
	}
	w.head("9. The cards")
	w.line("Official: %s.", w.official)
	for _, c := range w.scored {
		name := c.Member.ID
		if c.Member.Team != "" {
			name += ", " + c.Member.Team
		}
		w.line("")
		if !c.Card.Order.IsValid() {
			mark := c.Card.Mark
			if mark == 0 {
				mark = placing.Blank
			}
			penalty, from := placing.CardRules{}.Penalty(mark)
			w.wrap("", "  ", fmt.Sprintf("%s: %s, scores %d: %s [%s].", name, mark, c.score, penalty, from))
			continue
		}
		w.line("%s: %s, scores %d", name, c.Card.Order, c.score)
		for _, m := range c.missed {
			w.say(m.String())
		}
		if c.missed == nil {
			w.say("nothing missed.")
		}
	}
}

func (w *workOf) closing() {
	w.head("Cautions")
	w.say("Results are for teaching and analysis. Only authorized federal graders assign official grades.")
	w.say("In coolers and plants the rules of the site come first: stay off the moving rail, no knives, touch nothing, dress for the cold, and report illness before going in.")
}

func numbers(all []int) string {
	var names []string
	for _, n := range all {
		names = append(names, fmt.Sprint(n))
	}
	return strings.Join(names, ", ")
}

// points is a change of marbling with its sign.
func points(n int) string {
	if n == 1 || n == -1 {
		return fmt.Sprintf("%+d point", n)
	}
	return fmt.Sprintf("%+d points", n)
}

func or(all []int) string { return strings.ReplaceAll(numbers(all), ", ", " or ") }
