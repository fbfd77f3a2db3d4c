package class

import (
	"cmp"
	"slices"
	"strings"

	"example.com/ribface/grade"
	"example.com/ribface/placing"
)

// A set of reasons is given in under two minutes (published: ext-kentucky-asc166).
// That a member says 150 words a minute is from memory.
const (
	wordsAMinute = 150
	mostWords    = 2 * wordsAMinute
)

// Spoken gives the reasons as a member would say them, a paragraph for the
// opening, for each pair from the top, and for the last exhibit. The opening names
// the placing. A pair has a general statement, then what decided, then what else
// speaks for the upper, and at last one or two grants. Sites of the carcass are
// named together from the round down, of those of fat the first four.
//
// Only what is seen is said: differences of a [Size], and nothing by number but
// the exhibits and whole or half yield grades. The quality grade stands with the
// marbling behind it and the yield grade with the fat and the ribeye behind it, so
// that nothing counts twice. Where nothing seen speaks for the upper, it says that.
//
// It stays under two minutes at 150 words a minute. A class whose reasons run
// longer drops, in this order and for all pairs alike, what else speaks for the
// upper, the grants, and what decided, as far as needed.
//
// The zero Reasons says nothing.
func (r Reasons) Spoken() []string {
	var said []string
	for brief := range 4 {
		if said = r.say(brief); countWords(said) < mostWords {
			break
		}
	}
	return said
}

func countWords(lines []string) (n int) {
	for _, l := range lines {
		n += len(strings.Fields(l))
	}
	return n
}

// say gives the reasons; the higher brief is, the less it says of each pair.
func (r Reasons) say(brief int) []string {
	if len(r.Pairs) == 0 {
		return nil
	}
	kind := "beef"
	if r.Sex != 0 {
		kind = r.Sex.String()
	}
	order, _ := r.Order.MarshalText()
	s := speaker{reasons: r, brief: brief}
	said := []string{"I placed the " + kind + " carcasses " + strings.ReplaceAll(string(order), "-", ", ") + "."}
	for i := range r.Pairs {
		said = append(said, s.pair(i))
	}
	return append(said, s.last())
}

// speaker keeps what was said before.
type speaker struct {
	reasons  Reasons
	brief    int
	on       Heading // of the pair before
	grants   int     // given so far
	places   string  // where an exhibit was trimmer, as it was named last
	internal bool    // kidney, pelvic and heart fat were named in full
}

// Spoken says the reasons for the pair in one paragraph, as [Reasons.Spoken] does
// for a pair of a set.
func (p PairReasons) Spoken() string {
	var s speaker
	said := itoa(p.Upper) + " goes over " + itoa(p.Lower)
	switch on := p.spokenOn(); {
	case on != 0:
		said += " on " + on.String() + "."
	case slices.ContainsFunc(p.Grants, Support.seen):
		said += ", though nothing that is seen speaks for it."
	default:
		said += ", with little to see between them."
	}
	return s.support(said, p, 0)
}

// spokenOn is the general statement, or, where nothing is seen of that, the first
// heading of which anything is.
func (p PairReasons) spokenOn() Heading {
	if at := slices.IndexFunc(p.Over, Support.seen); at >= 0 {
		return p.Over[at].On
	}
	return 0
}

// pair says the reasons for the pair at i.
func (s *speaker) pair(i int) string {
	p := s.reasons.Pairs[i]
	on := p.spokenOn()
	said := s.support(s.general(i, on), p, i)
	s.on = on
	return said
}

// support adds to a general statement what decided, what else speaks for the
// upper, and grants.
func (s *speaker) support(said string, p PairReasons, i int) string {
	up, low := sideOf(p.Upper, p.Lower, p.Over), sideOf(p.Lower, p.Upper, p.Grants)
	if first, rest := s.argue(up, p.spokenOn(), i); s.brief < 3 && first != "" {
		said += " " + first
		if s.brief < 1 {
			said += strings.Join(append([]string{""}, rest...), " ")
		}
	}
	s.remember(said, up)
	if g := s.grant(low); s.brief < 2 && g != "" {
		said += " " + g
	}
	s.remember(said, low)
	return said
}

var ordinals = [...]string{"", "first", "second", "third", "fourth", "fifth", "sixth", "seventh", "eighth", "ninth", "tenth", "eleventh"}

// general is the general statement of a pair.
func (s *speaker) general(i int, on Heading) string {
	p, n := s.reasons.Pairs[i], s.reasons.Order.Len()
	name := strings.TrimPrefix(placing.PairName(i+1, n), "the ")
	if strings.HasPrefix(name, "pair ") {
		name = ordinals[i+1] + " pair"
	}
	where := "the " + name
	if p.Decision.Close {
		where = "a close " + name
	}
	u, l := itoa(p.Upper), itoa(p.Lower)
	placed := "In " + where + " I placed " + u + " over " + l
	if where == "the pair" {
		placed = "I placed " + u + " over " + l
	}
	again := ""
	if on == s.on {
		again = "again "
	}
	switch {
	case on == 0 && slices.ContainsFunc(p.Grants, Support.seen):
		return placed + ", though I saw nothing that speaks for it."
	case on == 0:
		return placed + ", with little to see between them."
	case i == 0:
		return placed + " on " + on.String() + "."
	case i == n-2:
		return "In " + where + " it was " + again + on.String() + " that put " + u + " over " + l + "."
	default:
		return "I then placed " + u + " over " + l + " in " + where + ", " + cmp.Or(again, "this time ") + "on " + on.String() + "."
	}
}

// side is what is seen for one exhibit against another.
type side struct {
	who, other int
	facts      []Fact
}

func sideOf(who, other int, supports []Support) side {
	s := side{who: who, other: other}
	for _, p := range supports {
		for _, f := range p.Facts {
			if f.Size > 0 {
				s.facts = append(s.facts, f)
			}
		}
	}
	return s
}

// has returns the fact in a trait; its Size is 0 where there is none.
func (s side) has(t grade.Trait) Fact {
	if at := slices.IndexFunc(s.facts, func(f Fact) bool { return f.Trait == t }); at >= 0 {
		return s.facts[at]
	}
	return Fact{}
}

// sees reports whether there is a fact in any of the traits.
func (s side) sees(traits ...grade.Trait) bool {
	return slices.ContainsFunc(s.facts, func(f Fact) bool { return slices.Contains(traits, f.Trait) })
}

// lean joins the words for what is seen of the lean.
func (s side) lean(firmness, texture, color string) string {
	var words []string
	for i, t := range [...]grade.Trait{grade.TraitFirmness, grade.TraitTexture, grade.TraitColor} {
		if s.sees(t) {
			words = append(words, [...]string{firmness, texture, color}[i])
		}
	}
	return strings.Join(words, ", ")
}

// grading returns the quality grades of the two, without their parts where the grades
// differ.
func (s side) grading() (better, worse grade.Quality) {
	f := s.has(grade.TraitQuality)
	better, _ = grade.ParseQuality(f.BetterValue)
	worse, _ = grade.ParseQuality(f.WorseValue)
	if better.Grade() != worse.Grade() {
		better, worse = better.Grade().Part(grade.Whole), worse.Grade().Part(grade.Whole)
	}
	return better, worse
}

// sites returns the sites of fat or of muscling, from the round down.
func (s side) sites(fat bool) []Site {
	var all []Site
	for _, f := range s.facts {
		if f.Trait == grade.TraitSite && f.Site.Fat() == fat {
			all = append(all, f.Site)
		}
	}
	slices.Sort(all)
	return all
}

// weight adds up what the facts in some traits count for.
func (s side) weight(traits ...grade.Trait) (sum int64) {
	for _, f := range s.facts {
		if slices.Contains(traits, f.Trait) {
			sum += f.Weight.Units()
		}
	}
	return sum
}

// predicate is a verb with what goes after it.
type predicate struct{ verb, object string }

func (p predicate) String() string { return p.verb + " " + p.object }

// predicates says the items with one verb; nil for none.
func predicates(verb string, items []string) []predicate {
	if items == nil {
		return nil
	}
	return []predicate{{verb, series(items)}}
}

// also puts "also" where a person says it.
func also(words string) string {
	if rest, ok := strings.CutPrefix(words, "was "); ok {
		return "was also " + rest
	}
	return "also " + words
}

// argue says what decided in one sentence and what else speaks for the exhibit.
func (s *speaker) argue(a side, on Heading, i int) (first string, rest []string) {
	quality, rib := s.quality(a, i), s.rib(a)
	outside, muscle := s.outside(a), s.muscle(a)
	var lead, more []predicate
	tail := ""
	switch on {
	case OnQuality:
		lead, more = quality, slices.Concat(rib, outside, muscle)
		tail = a.grades(len(quality) > 0, i)
	case OnCutability:
		lead, more = rib, slices.Concat(outside, muscle, quality)
		tail = a.advantage(len(rib) > 0)
	case OnMuscling:
		lead, more = slices.Concat(muscle, rib, outside), quality
	default:
		lead, more = slices.Concat(outside, rib, muscle), quality
	}
	switch {
	case lead != nil:
		first = itoa(a.who) + " " + join(lead) + tail + "."
	case tail != "":
		first = itoa(a.who) + " " + tail + "."
	case a.sees(grade.TraitDark) && on == OnQuality:
		first = itoa(a.other) + " is " + a.dark() + "."
	}
	for at := 0; at < len(more); {
		// Two in a sentence, but all places where it is trimmer in one.
		to := min(at+2, len(more))
		switch {
		case to == len(more):
		case more[to-1].verb == "was":
			to--
		case more[at].verb == "was" && more[at+1].verb == "carried":
			to++
		}
		sentence, subject := join(more[at:to]), "It "
		if at == 0 {
			sentence = also(sentence)
			if first == "" || on == OnQuality { // the other one may stand between
				subject = itoa(a.who) + " "
			}
		}
		rest = append(rest, subject+sentence+".")
		at = to
	}
	return first, rest
}

// join puts predicates of one subject together.
func join(all []predicate) string {
	var parts []string
	for i, p := range all {
		if i > 0 && p.verb == all[i-1].verb {
			parts[len(parts)-1] += ", and " + p.object
			continue
		}
		parts = append(parts, p.String())
	}
	return series(parts)
}

var (
	slightly = [...]string{SizeSlight: "slightly ", SizePlain: "", SizeWide: "much "}
	far      = [...]string{SizeSlight: "slightly ", SizePlain: "", SizeWide: "far "}
	marbled  = [...][3]string{
		SizeSlight: {"slightly more marbling", "a little more marbling", "slightly more marbling"},
		SizePlain:  {"more marbling", "a higher degree of marbling", "more marbling"},
		SizeWide:   {"a much higher degree of marbling", "far more marbling", "much more marbling"},
	}
)

// quality says what is better of the marbling, the lean and the bone.
func (s *speaker) quality(a side, i int) []predicate {
	var items []string
	lean := a.lean("firmer", "finer textured", "brighter colored")
	ribeye := "a " + lean + " ribeye"
	switch m := a.has(grade.TraitMarbling).Size; {
	case m > 0 && lean != "":
		items = append(items, marbled[m][i%3]+" in "+ribeye)
	case m > 0:
		items = append(items, marbled[m][i%3])
	case lean != "":
		items = append(items, ribeye)
	}
	var younger []string
	if a.sees(grade.TraitSkeletal, grade.TraitButtons) {
		younger = append(younger, "bone")
	}
	if a.sees(grade.TraitLean) {
		younger = append(younger, "lean")
	}
	if younger != nil {
		items = append(items, "younger "+series(younger))
	}
	return predicates([...]string{"had", "showed", "had"}[i%3], items)
}

// dark says what the other is, where it cuts darker.
func (s side) dark() string {
	switch f := s.has(grade.TraitDark); {
	case f.Size == 0:
		return ""
	case f.BetterValue == darkText+grade.DarkCut(0).String():
		return "a dark cutter"
	default:
		return "the darker cutter"
	}
}

// grades says what the two grade, after what is behind it where that was said.
func (s side) grades(after bool, i int) string {
	other, dark, graded := itoa(s.other), s.dark(), s.sees(grade.TraitQuality)
	switch {
	case !graded && after && dark != "":
		return ", and " + other + " is " + dark
	case !graded:
		return ""
	case dark != "":
		other += ", " + dark + ","
	}
	x, y := s.grading()
	is := " is "
	if y.Grade() == grade.NoGrade {
		is = " has "
	}
	verb := [...]string{"should grade ", "should make ", "should reach "}[i%3]
	if after {
		verb = " and " + verb
	}
	return verb + sayQuality(x) + ", " + [...]string{"where ", "while ", "where "}[i%3] + other + is + sayQuality(y)
}

// advantage says by how much the yield grade is the lower, after what is behind
// it where that was said.
func (s side) advantage(after bool) string {
	if !after {
		return lowerYield
	}
	for _, l := range [...]struct {
		from  int64
		words string
	}{
		{225_000_000, "more than two yield grades"},
		{175_000_000, "about two yield grades"},
		{125_000_000, "about a yield grade and a half"},
		{75_000_000, "about a full yield grade"},
		{35_000_000, "about half a yield grade"},
	} {
		if units(s.has(grade.TraitYield).Weight) >= l.from {
			return ", an advantage of " + l.words
		}
	}
	return " and " + lowerYield
}

const lowerYield = "should have the lower yield grade"

// rib says what is better of the fat at the rib, the ribeye and the fat inside;
// slightly less fat inside only where there is nothing else.
func (s *speaker) rib(a side) []predicate {
	fat, eye, kph := a.has(grade.TraitFat).Size, a.has(grade.TraitRibeye).Size, a.has(grade.TraitKPH).Size
	var items []string
	switch {
	case fat > 0 && eye > 0:
		items = append(items, far[fat]+"less fat opposite a "+slightly[eye]+"larger ribeye")
	case fat > 0:
		items = append(items, far[fat]+"less fat opposite the ribeye")
	case eye > 0:
		items = append(items, "a "+slightly[eye]+"larger ribeye")
	}
	if kph > SizeSlight || kph == SizeSlight && items == nil {
		items = append(items, slightly[kph]+"less "+s.inside())
	}
	return predicates("had", items)
}

// inside names kidney, pelvic and heart fat, in full once.
func (s *speaker) inside() string {
	if s.internal {
		return "internal fat"
	}
	return wholeInside
}

const wholeInside = "kidney, pelvic and heart fat"

// mostSites is how many sites of fat are named, the first ones.
const mostSites = 4

// outside says where the exhibit is trimmer; in the same places, where those are
// three or more and were the last that were named.
func (s *speaker) outside(a side) []predicate {
	all, sites := s.trimmer(a)
	if all != nil && sites > 2 && join(all) == s.places {
		return []predicate{{"was", "trimmer in the same places"}}
	}
	return all
}

// trimmer names the places in which the exhibit is trimmer, and counts them.
func (s *speaker) trimmer(a side) (all []predicate, sites int) {
	var over, in []Site
	for _, site := range a.sites(true) {
		if termOf(site).in {
			in = append(in, site)
		} else if len(over) < mostSites {
			over = append(over, site)
		}
	}
	if over != nil {
		all = append(all, predicate{"was", "trimmer " + where(over, s.reasons.Sex)})
	}
	if in != nil {
		all = append(all, predicate{"carried", "less fat " + where(in, s.reasons.Sex)})
	}
	return all, len(over) + len(in)
}

// remember keeps what was named last in what is said of a pair.
func (s *speaker) remember(said string, a side) {
	if all, _ := s.trimmer(a); all != nil && strings.Contains(said, all[0].object) {
		s.places = join(all)
	}
	s.internal = s.internal || strings.Contains(said, wholeInside)
}

// muscle says where the exhibit is the heavier muscled.
func (s *speaker) muscle(a side) []predicate {
	var items []string
	sites := a.sites(false)
	for i := 0; i < len(sites); i++ {
		words := siteTerms[sites[i]].better
		// The traits of the round, and what is thicker, are said in one.
		if sites[i] < MuscleLoin && i+1 < len(sites) && sites[i+1] < MuscleLoin {
			words = strings.TrimSuffix(words, " round") + ", " + strings.TrimPrefix(siteTerms[sites[i+1]].better, "a ")
			for i++; i+1 < len(sites) && sites[i+1] < MuscleLoin; i++ {
			}
		} else if sites[i] == MuscleLoin && i+1 < len(sites) && sites[i+1] == MuscleRib {
			words += " and rib"
			i++
		}
		items = append(items, words)
	}
	return predicates("had", items)
}

// grant says what is granted to the lower, two things at most.
func (s *speaker) grant(a side) string {
	type thing struct {
		weight int64
		words  string
	}
	var things []thing
	add := func(weight int64, all []predicate, grades string) {
		words := join(all)
		switch {
		case words == "" || grades == "":
			words += grades
		case strings.Contains(words, " and less "):
			words += ", and " + grades
		default:
			words += " and " + grades
		}
		if words != "" {
			things = append(things, thing{weight, words})
		}
	}
	quality, yield := "", ""
	if a.sees(grade.TraitQuality) {
		x, _ := a.grading()
		quality = "should grade " + sayQuality(x)
	}
	if a.sees(grade.TraitYield) {
		yield = lowerYield
	}
	add(max(a.weight(grade.TraitQuality), a.weight(grade.TraitMarbling)), s.quality(a, 0), quality)
	add(max(a.weight(grade.TraitYield), a.weight(grade.TraitFat, grade.TraitRibeye, grade.TraitKPH)), s.rib(a), yield)
	add(0, s.outside(a), "")
	add(0, s.muscle(a), "")
	if things == nil {
		return ""
	}
	slices.SortStableFunc(things, func(a, b thing) int { return cmp.Compare(b.weight, a.weight) })
	words := things[0].words
	if len(things) > 1 {
		words += ", and that it " + things[1].words
	}
	verb := [...]string{"grant", "realize", "admit"}[s.grants%3]
	s.grants++
	return "I " + verb + " that " + itoa(a.who) + " " + words + "."
}

var counts = [...]string{"none", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve"}

// mostFaults is how many things are said of the last exhibit.
const mostFaults = 4

// last says what is wrong with the last exhibit.
func (s *speaker) last() string {
	n := s.reasons.Order.Len()
	a := sideOf(s.reasons.Order.At(n), 0, []Support{{Facts: s.reasons.Last}})
	left := "That leaves " + itoa(a.who) + " last."
	var items []string
	add := func(words string) {
		if len(items) < mostFaults {
			items = append(items, words)
		}
	}
	quality := a.sees(grade.TraitQuality)
	if !quality && a.sees(grade.TraitMarbling) {
		add("the least marbling")
	}
	switch lean := a.lean("softest", "coarsest", "darkest"); {
	case lean != "":
		add("the " + lean + " lean")
	case a.sees(grade.TraitDark):
		add("the darkest lean")
	}
	if a.sees(grade.TraitSkeletal, grade.TraitButtons) {
		add("the oldest bone")
	}
	switch fat, eye := a.sees(grade.TraitFat), a.sees(grade.TraitRibeye); {
	case fat && eye:
		add("the most fat opposite the smallest ribeye")
	case fat:
		add("the most fat opposite the ribeye")
	case eye:
		add("the smallest ribeye")
	case a.sees(grade.TraitYield):
		add("the highest yield grade")
	}
	if a.sees(grade.TraitKPH) {
		add("the most " + s.inside())
	}
	if sites := a.sites(true); sites != nil {
		add("the most fat " + where(sites[:min(len(sites), mostSites)], s.reasons.Sex))
	}
	for _, site := range a.sites(false) {
		add("the " + termOf(site).worst + " " + termOf(site).noun)
	}
	switch {
	case quality && items != nil:
		return left + " It was the lowest grading carcass of the " + counts[n] + ", with " + series(items) + "."
	case quality:
		return left + " It was the lowest grading carcass of the " + counts[n] + "."
	case items != nil:
		return left + " Of the " + counts[n] + " it had " + series(items) + "."
	default:
		return left + " I saw nothing in which it alone is the poorest of the " + counts[n] + "."
	}
}
