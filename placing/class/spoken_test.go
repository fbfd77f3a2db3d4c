package class_test

import (
	"fmt"
	"math/rand/v2"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"example.com/ribface/grade"
	"example.com/ribface/internal/testkit"
	"example.com/ribface/internal/testkit/golden"
	"example.com/ribface/maturity"
	"example.com/ribface/placing"
	"example.com/ribface/placing/class"
)

var digits = regexp.MustCompile(`[0-9]+`)

// listener understands spoken reasons and holds every comparison to the data.
type listener struct {
	g      class.Graded
	places []class.Site // where somebody was trimmer, as it was named last
	told   map[string]bool
}

// measured returns what a trait is in one exhibit, the higher the better, straight
// from the carcass.
func measured(g class.Graded, e int, trait grade.Trait) int64 {
	a := g.Assessment(e)
	m, err := a.Carcass.Adjusted()
	if err != nil {
		panic(err)
	}
	switch trait {
	case grade.TraitMarbling:
		return int64(a.Carcass.Marbling)
	case grade.TraitYield:
		return -a.Yield.Units()
	case grade.TraitFat:
		return -m.Fat.Units()
	case grade.TraitRibeye:
		return m.Ribeye.Units()
	case grade.TraitKPH:
		return -m.KPH.Units()
	case grade.TraitColor:
		return int64(a.Carcass.Lean.Color)
	case grade.TraitTexture:
		return int64(a.Carcass.Lean.Texture)
	case grade.TraitFirmness:
		return int64(a.Carcass.Lean.Firmness)
	}
	panic(trait)
}

const nouns = `(?:inside round|round|rump|hip|loin edge|lower rib|plate|clod|shoulder|neck|cod or udder|cod|udder|flank|brisket)`

var (
	nounOnce = regexp.MustCompile(nouns)
	unseen   = regexp.MustCompile(`[0-9]\.[0-9]|[A-E][0-9]|%|  `)
	list     = nouns + `(?:, ` + nouns + `)*(?: and ` + nouns + `)?`
	nounOf   = map[string]class.Site{"round": class.FatRound, "inside round": class.FatInsideRound, "rump": class.FatRump, "hip": class.FatHip, "cod": class.FatCod, "udder": class.FatCod, "cod or udder": class.FatCod, "flank": class.FatFlank, "loin edge": class.FatLoinEdge, "lower rib": class.FatRib, "plate": class.FatPlate, "clod": class.FatClod, "shoulder": class.FatShoulder, "neck": class.FatNeck, "brisket": class.FatBrisket}
	roundOf  = map[string]class.Site{"plumper": class.RoundPlumpness, "longer": class.RoundLength, "wider": class.RoundWidth, "fuller": class.RoundCushion, "flattest": class.RoundPlumpness, "shortest": class.RoundLength, "narrowest": class.RoundWidth, "least full": class.RoundCushion}
	leanOf   = map[string]grade.Trait{"firmer": grade.TraitFirmness, "finer textured": grade.TraitTexture, "brighter colored": grade.TraitColor, "softest": grade.TraitFirmness, "coarsest": grade.TraitTexture, "darkest": grade.TraitColor}
	sizeOf   = map[string]class.Size{"slightly ": class.SizeSlight, "": class.SizePlain, "much ": class.SizeWide, "far ": class.SizeWide}
	opposite = `(slightly |far |)less fat opposite (?:the ribeye|a (slightly |much |)larger ribeye)`
	quality  = `((?:high |average |low )?(?:Prime|Choice|Select|Standard|Commercial|Utility|Cutter|Canner|no grade))`
	glue     = regexp.MustCompile(`^(?:had|showed|was|carried|also|and|that it|[ ,.])*$`)
)

func sitesIn(words string) (all []class.Site) {
	for _, n := range nounOnce.FindAllString(words, -1) {
		all = append(all, nounOf[n])
	}
	return all
}

// size holds a word of degree to the difference.
func (l *listener) size(trait grade.Trait, who, other int, word string, slight, plain, wide int64) error {
	by := measured(l.g, who, trait) - measured(l.g, other, trait)
	want := class.Size(0)
	for s, least := range []int64{slight, plain, wide} {
		if by >= least {
			want = class.Size(s + 1)
		}
	}
	if got := sizeOf[word]; got != want || want == 0 {
		return fmt.Errorf("%v of %d against %d differs by %d, called %q", trait, who, other, by, word)
	}
	return l.once(trait.String())
}

// once holds that a fact of a pair is told once.
func (l *listener) once(fact string) error {
	if l.told[fact] {
		return fmt.Errorf("%s is told twice", fact)
	}
	l.told[fact] = true
	return nil
}

func (l *listener) site(s class.Site, who, other int) error {
	r, ok := l.g.Class().Walk.At(s)
	if better := r.Place(who) - r.Place(other); !ok || s.Fat() && better <= 0 || !s.Fat() && better >= 0 {
		return fmt.Errorf("%v does not speak for %d over %d", s, who, other)
	}
	return l.once(s.String())
}

// says is a phrase with what it claims of who against other.
type says struct {
	phrase *regexp.Regexp
	check  func(l *listener, who, other int, m []string) error
}

// saidQuality reads a spoken quality: part may be left out.
func saidQuality(q grade.Quality, words string) bool {
	full := strings.ToLower(q.String())
	return strings.EqualFold(words, full) || strings.EqualFold(words, q.Grade().String())
}

var language = []says{
	{regexp.MustCompile(`(slightly|a little|a much higher degree of|a higher degree of|far|much|)( more)? ?marbling`), func(l *listener, who, other int, m []string) error {
		word := map[string]string{"slightly": "slightly ", "a little": "slightly ", "a much higher degree of": "much ", "far": "far ", "much": "much "}[m[1]]
		return l.size(grade.TraitMarbling, who, other, word, 10, 40, 150)
	}},
	{regexp.MustCompile(`(?:in )?a ((?:firmer|finer textured|brighter colored|, )+) ribeye`), func(l *listener, who, other int, m []string) error {
		for _, w := range strings.Split(m[1], ", ") {
			trait := leanOf[w]
			a, b := measured(l.g, who, trait), measured(l.g, other, trait)
			if a <= b || b == 0 {
				return fmt.Errorf("%s is not true of %d", w, who)
			}
			if err := l.once(w); err != nil {
				return err
			}
		}
		return nil
	}},
	{regexp.MustCompile(`younger (bone and lean|bone|lean)`), func(l *listener, who, other int, m []string) error {
		a, b := l.g.Assessment(who).Carcass.Maturity, l.g.Assessment(other).Carcass.Maturity
		if strings.Contains(m[1], "bone") && a.Skeletal.Group() >= b.Skeletal.Group() && (a.Buttons == 0 || a.Buttons.Group() >= b.Buttons.Group()) {
			return fmt.Errorf("the bone of %d is not of a younger group", who)
		}
		if strings.Contains(m[1], "lean") && (a.Lean == 0 || a.Lean.Group() >= b.Lean.Group()) {
			return fmt.Errorf("the lean of %d is not of a younger group", who)
		}
		return l.once("age")
	}},
	{regexp.MustCompile(opposite), func(l *listener, who, other int, m []string) error {
		if err := l.size(grade.TraitFat, who, other, m[1], 500, 1000, 3000); err != nil || !strings.Contains(m[0], "larger") {
			return err
		}
		return l.size(grade.TraitRibeye, who, other, m[2], 4000, 8000, 25_000)
	}},
	{regexp.MustCompile(`a (slightly |much |)larger ribeye`), func(l *listener, who, other int, m []string) error {
		return l.size(grade.TraitRibeye, who, other, m[1], 4000, 8000, 25_000)
	}},
	{regexp.MustCompile(`(slightly |much |)less (?:kidney, pelvic and heart|internal) fat`), func(l *listener, who, other int, m []string) error {
		return l.size(grade.TraitKPH, who, other, m[1], 5000, 10_000, 20_000)
	}},
	{regexp.MustCompile(`trimmer in the same places`), func(l *listener, who, other int, m []string) error {
		if len(l.places) < 3 {
			return fmt.Errorf("no places were named: %v", l.places)
		}
		for _, s := range l.places {
			if err := l.site(s, who, other); err != nil {
				return err
			}
		}
		return nil
	}},
	{regexp.MustCompile(`trimmer over the (` + list + `)(?: and carried less fat in the (` + list + `)|, carried less fat in the (` + list + `))?|less fat in the (` + list + `)`), func(l *listener, who, other int, m []string) error {
		l.places = nil
		for _, words := range m[1:] {
			l.places = append(l.places, sitesIn(words)...)
		}
		if !slices.IsSorted(sitesIn(m[1])) || len(l.places) == 0 {
			return fmt.Errorf("%v is not from the round down", l.places)
		}
		for _, s := range l.places {
			if err := l.site(s, who, other); err != nil {
				return err
			}
		}
		return nil
	}},
	{regexp.MustCompile(`a ((?:plumper|longer|wider|fuller|, )+) round`), func(l *listener, who, other int, m []string) error {
		for _, w := range strings.Split(m[1], ", ") {
			if err := l.site(roundOf[w], who, other); err != nil {
				return err
			}
		}
		return nil
	}},
	{regexp.MustCompile(`a thicker (loin and rib|loin|rib)|a meatier (clod)`), func(l *listener, who, other int, m []string) error {
		for word, s := range map[string]class.Site{"loin": class.MuscleLoin, "rib": class.MuscleRib, "clod": class.MuscleClod} {
			if strings.Contains(m[1]+m[2], word) {
				if err := l.site(s, who, other); err != nil {
					return err
				}
			}
		}
		return nil
	}},
	{regexp.MustCompile(`should (?:grade|make|reach) ` + quality + `(?:, (?:where|while) ([0-9]+)(, a dark cutter,|, the darker cutter,|) (?:is|has) ` + quality + `)?`), func(l *listener, who, other int, m []string) error {
		a, b := l.g.Assessment(who), l.g.Assessment(other)
		if a.Quality <= b.Quality || !saidQuality(a.Quality, m[1]) {
			return fmt.Errorf("%d grades %v and %d %v", who, a.Quality, other, b.Quality)
		}
		if m[2] != "" && (m[2] != strconv.Itoa(other) || !saidQuality(b.Quality, m[4]) || m[1] == m[4]) {
			return fmt.Errorf("%d is %v, not %s as in %q", other, b.Quality, m[4], m[0])
		}
		if err := l.darker(m[3], who, other); err != nil {
			return err
		}
		return l.once("quality grade")
	}},
	{regexp.MustCompile(`, and ([0-9]+) is (a dark cutter|the darker cutter)`), func(l *listener, who, other int, m []string) error {
		if m[1] != strconv.Itoa(other) {
			return fmt.Errorf("%q of %d", m[0], other)
		}
		return l.darker(m[2], who, other)
	}},
	{regexp.MustCompile(`should have the lower yield grade`), func(l *listener, who, other int, m []string) error {
		if measured(l.g, who, grade.TraitYield)-measured(l.g, other, grade.TraitYield) < 15_000_000 {
			return fmt.Errorf("the yield of %d is not seen to be lower", who)
		}
		return l.once("yield")
	}},
	{regexp.MustCompile(`, an advantage of (about half a yield grade|about a full yield grade|about a yield grade and a half|about two yield grades|more than two yield grades)`), func(l *listener, who, other int, m []string) error {
		ends := map[string][2]int64{"about half a yield grade": {35, 75}, "about a full yield grade": {75, 125}, "about a yield grade and a half": {125, 175}, "about two yield grades": {175, 225}, "more than two yield grades": {225, 10_000}}[m[1]]
		if by := measured(l.g, who, grade.TraitYield) - measured(l.g, other, grade.TraitYield); by < ends[0]*1_000_000 || by >= ends[1]*1_000_000 {
			return fmt.Errorf("%q of %d units", m[1], by)
		}
		return l.once("yield")
	}},
}

func (l *listener) darker(words string, who, other int) error {
	a, b := l.g.Assessment(who).Carcass.Lean.Dark, l.g.Assessment(other).Carcass.Lean.Dark
	switch {
	case words == "":
		return nil
	case a >= b, strings.Contains(words, "a dark cutter") != (a == 0):
		return fmt.Errorf("%q: %d cuts %v dark, %d %v", words, who, a, other, b)
	}
	return l.once("dark cutting")
}

// hear holds what is said of who against other.
func (l *listener) hear(text string, who, other int) error {
	for _, s := range language {
		for {
			at := s.phrase.FindStringIndex(text)
			if at == nil {
				break
			}
			if err := s.check(l, who, other, s.phrase.FindStringSubmatch(text[at[0]:at[1]])); err != nil {
				return fmt.Errorf("%w in %q", err, text)
			}
			text = text[:at[0]] + text[at[1]:]
		}
	}
	if !glue.MatchString(text) {
		return fmt.Errorf("left over: %q", text)
	}
	return nil
}

var (
	opening = regexp.MustCompile(`^I placed the (?:beef|steer|heifer|cow|bullock|bull) carcasses ([0-9, ]+)\.$`)
	pairOf  = `(?:(?:top|middle|bottom|second|third|fourth|fifth|sixth|seventh|eighth|ninth|tenth) )?pair`
	general = regexp.MustCompile(`^(?:(?:In (?:the|a close) ` + pairOf + ` )?I placed ([0-9]+) over ([0-9]+)(?: on ([a-z]+)|(, though I saw nothing that speaks for it)|(, with little to see between them))` +
		`|I then placed ([0-9]+) over ([0-9]+) in (?:the|a close) ` + pairOf + `, (?:again|this time) on ([a-z]+)` +
		`|In (?:the|a close) ` + pairOf + ` it was (?:again )?([a-z]+) that put ([0-9]+) over ([0-9]+)` +
		`|([0-9]+) goes over ([0-9]+)(?: on ([a-z]+)|(, though nothing that is seen speaks for it)|(, with little to see between them)))\.$`)
	grants  = regexp.MustCompile(`^I (?:grant|realize|admit) that ([0-9]+) (.*)\.$`)
	darkOne = regexp.MustCompile(`^([0-9]+) is (a dark cutter|the darker cutter)\.$`)
	about   = regexp.MustCompile(`^([0-9]+|It) (.*)\.$`)
	left    = regexp.MustCompile(`^That leaves ([0-9]+) last\. (.*)\.$`)
)

// pair holds one paragraph of a pair, and returns what it was placed on.
func (l *listener) pair(text string, upper, lower int) (on string, err error) {
	l.told = map[string]bool{}
	granted := 0
	for i, s := range strings.SplitAfter(text, ". ") {
		s = strings.TrimSpace(s)
		if i == 0 {
			m := general.FindStringSubmatch(s)
			if m == nil {
				return "", fmt.Errorf("no general statement: %q", s)
			}
			if n := digits.FindAllString(s, -1); len(n) != 2 || n[0] != strconv.Itoa(upper) || n[1] != strconv.Itoa(lower) {
				return "", fmt.Errorf("%q is not about %d over %d", s, upper, lower)
			}
			on = m[3] + m[8] + m[9] + m[14]
			continue
		}
		if m := grants.FindStringSubmatch(s); m != nil {
			granted++
			if m[1] != strconv.Itoa(lower) || granted > 1 || strings.Count(s, "that it") > 1 {
				return "", fmt.Errorf("granted to the wrong one or too much: %q", s)
			}
			l.told = map[string]bool{}
			if err := l.hear(m[2], lower, upper); err != nil {
				return "", err
			}
			continue
		}
		if m := darkOne.FindStringSubmatch(s); m != nil {
			if m[1] != strconv.Itoa(lower) {
				return "", fmt.Errorf("%q", s)
			}
			if err := l.darker(m[2], upper, lower); err != nil {
				return "", err
			}
			continue
		}
		m := about.FindStringSubmatch(s)
		if m == nil || m[1] != "It" && m[1] != strconv.Itoa(upper) || granted > 0 {
			return "", fmt.Errorf("%q is not about %d", s, upper)
		}
		if err := l.hear(m[2], upper, lower); err != nil {
			return "", err
		}
	}
	return on, nil
}

// lasts are what is said of the last exhibit, in the order of the checks below.
var lasts = []*regexp.Regexp{
	regexp.MustCompile(`lowest grading carcass`),
	regexp.MustCompile(`the least marbling`),
	regexp.MustCompile(`the ((?:softest|coarsest|darkest|, )+) lean`),
	regexp.MustCompile(`the oldest bone`),
	regexp.MustCompile(`the most fat opposite the (smallest )?ribeye`),
	regexp.MustCompile(`the smallest ribeye`),
	regexp.MustCompile(`the highest yield grade`),
	regexp.MustCompile(`the most (?:kidney, pelvic and heart|internal) fat`),
	regexp.MustCompile(`the most fat (?:over the (` + list + `))?(?: and )?(?:in the (` + list + `))?`),
	regexp.MustCompile(`the (flattest|shortest|narrowest|least full) round`),
	regexp.MustCompile(`the thinnest (loin|rib|clod)`),
}

var lastGlue = regexp.MustCompile(`^(?:It was the | ?[Oo]f the [a-z]+(?: it had )?|, with |I saw nothing in which it alone is the poorest of the [a-z]+| and |, )*$`)

// last holds the paragraph of the last exhibit: what it is called, it is alone.
func (l *listener) last(text string, who int) error {
	m := left.FindStringSubmatch(text)
	if m == nil || m[1] != strconv.Itoa(who) {
		return fmt.Errorf("%q is not about %d", text, who)
	}
	rest := m[2]
	alone := func(worse func(o int) bool, what string) error {
		for o := 1; o <= l.g.Len(); o++ {
			if o != who && !worse(o) {
				return fmt.Errorf("%d is not the worst in %s", who, what)
			}
		}
		return nil
	}
	trait := func(t grade.Trait) error {
		return alone(func(o int) bool { return measured(l.g, who, t) < measured(l.g, o, t) }, t.String())
	}
	site := func(s class.Site) error {
		r, ok := l.g.Class().Walk.At(s)
		return alone(func(o int) bool {
			c := r.Place(who) - r.Place(o)
			return ok && (s.Fat() && c < 0 || !s.Fat() && c > 0)
		}, s.String())
	}
	for _, s := range []struct {
		phrase *regexp.Regexp
		check  func(m []string) error
	}{
		{lasts[0], func([]string) error {
			return alone(func(o int) bool { return l.g.Assessment(who).Quality < l.g.Assessment(o).Quality }, "quality grade")
		}},
		{lasts[1], func([]string) error { return trait(grade.TraitMarbling) }},
		{lasts[2], func(m []string) error {
			for _, w := range strings.Split(m[1], ", ") {
				err := trait(leanOf[w])
				if w == "darkest" && err != nil {
					err = alone(func(o int) bool {
						return l.g.Assessment(who).Carcass.Lean.Dark > l.g.Assessment(o).Carcass.Lean.Dark
					}, "dark cutting")
				}
				if err != nil {
					return err
				}
			}
			return nil
		}},
		{lasts[3], func([]string) error {
			x := l.g.Assessment(who).Carcass.Maturity
			bone := alone(func(o int) bool { return x.Skeletal.Group() > l.g.Assessment(o).Carcass.Maturity.Skeletal.Group() }, "bone")
			if bone != nil {
				return alone(func(o int) bool { return x.Buttons.Group() > l.g.Assessment(o).Carcass.Maturity.Buttons.Group() }, "buttons")
			}
			return nil
		}},
		{lasts[4], func(m []string) error {
			if err := trait(grade.TraitFat); err != nil || m[1] == "" {
				return err
			}
			return trait(grade.TraitRibeye)
		}},
		{lasts[5], func([]string) error { return trait(grade.TraitRibeye) }},
		{lasts[6], func([]string) error { return trait(grade.TraitYield) }},
		{lasts[7], func([]string) error { return trait(grade.TraitKPH) }},
		{lasts[8], func(m []string) error {
			for _, words := range m[1:] {
				for _, s := range sitesIn(words) {
					if err := site(s); err != nil {
						return err
					}
				}
			}
			return nil
		}},
		{lasts[9], func(m []string) error { return site(roundOf[m[1]]) }},
		{lasts[10], func(m []string) error {
			return site(map[string]class.Site{"loin": class.MuscleLoin, "rib": class.MuscleRib, "clod": class.MuscleClod}[m[1]])
		}},
	} {
		for {
			at := s.phrase.FindStringIndex(rest)
			if at == nil {
				break
			}
			if err := s.check(s.phrase.FindStringSubmatch(rest)); err != nil {
				return fmt.Errorf("%w in %q", err, text)
			}
			rest = rest[:at[0]] + rest[at[1]:]
		}
	}
	if !lastGlue.MatchString(rest) {
		return fmt.Errorf("left over: %q of %q", rest, text)
	}
	return nil
}

// TestSpokenIsTrue listens to the reasons for random orders of random classes: it
// understands every sentence, holds every comparison to the data, and lets no fact
// of a pair pass twice, no number that a judge cannot see, and nothing over two
// minutes at 150 words a minute.
func TestSpokenIsTrue(t *testing.T) {
	classes := 5_000
	if !testkit.Exhaustive() {
		classes = 150
	}
	r := rand.New(rand.NewPCG(12, 3))
	for range classes {
		most := 5
		if r.IntN(5) == 0 {
			most = 12
		}
		c := anyClass(r, most)
		g := graded(t, c)
		order := anyOrder(r, g.Len())
		reasons, err := g.Reasons(order, class.DefaultPolicy())
		if err != nil {
			t.Fatal(err)
		}
		said := reasons.Spoken()
		text := strings.Join(said, "\n")
		if len(said) != g.Len()+1 || len(strings.Fields(text)) >= 300 || unseen.MatchString(text) {
			t.Fatalf("%d paragraphs, %d words:\n%s", len(said), len(strings.Fields(text)), text)
		}
		m := opening.FindStringSubmatch(said[0])
		if m == nil || strings.ReplaceAll(m[1], ", ", "-") != order.String() {
			t.Fatalf("%v: %q", order, said[0])
		}
		l := listener{g: g}
		for i, p := range reasons.Pairs {
			on, err := l.pair(said[i+1], p.Upper, p.Lower)
			if err != nil {
				t.Fatalf("%v\n%s\n%+v", err, text, c)
			}
			seen := func(all []class.Support) bool {
				return slices.ContainsFunc(all, func(s class.Support) bool {
					return slices.ContainsFunc(s.Facts, func(f class.Fact) bool { return f.Size > 0 })
				})
			}
			if at := slices.IndexFunc(p.Over, func(s class.Support) bool { return seen([]class.Support{s}) }); at >= 0 && p.Over[at].On.String() != on || strings.Contains(said[i+1], "close") != p.Decision.Close {
				t.Fatalf("%q, placed on %v, close %v", said[i+1], p.On, p.Decision.Close)
			}
			if (on == "") == seen(p.Over) {
				t.Fatalf("%q, and something is seen for %d: %v", said[i+1], p.Upper, seen(p.Over))
			}
			alone := listener{g: g}
			if _, err := alone.pair(p.Spoken(), p.Upper, p.Lower); err != nil {
				t.Fatalf("%v\n%s", err, p.Spoken())
			}
		}
		if err := l.last(said[g.Len()], order.At(g.Len())); err != nil {
			t.Fatalf("%v\n%s", err, text)
		}
	}
}

// TestSpokenByHand holds what the random classes rarely say.
func TestSpokenByHand(t *testing.T) {
	x := steer("Sm40", 0.4, 13, 2.5, 800)
	lighter, far := x, steer("SlAb40", 0.4, 13, 2.5, 800)
	lighter.Measures.Weight = grade.Pounds(700)
	dark := x
	dark.Lean.Dark = grade.DarkThird
	old := aged(steer("Tr50", 0.4, 13, 2.5, 800), maturity.D.At(50), maturity.D.At(50))
	oldDark := old
	oldDark.Lean.Dark = grade.DarkThird
	for _, tt := range []struct {
		name         string
		upper, lower grade.Carcass
		pair, alone  string
	}{
		{"two alike", x, x, "In a close pair I placed 1 over 2, with little to see between them.", "1 goes over 2, with little to see between them."},
		{"a yield that the weight alone makes", lighter, x, "I placed 1 over 2 on cutability. 1 should have the lower yield grade.", "1 goes over 2 on cutability. 1 should have the lower yield grade."},
		{"nothing for it", x, far, "I placed 1 over 2, though I saw nothing that speaks for it. I grant that 2 had a much higher degree of marbling and should grade Prime.", "1 goes over 2, though nothing that is seen speaks for it. I grant that 2 had a much higher degree of marbling and should grade Prime."},
		{"a dark cutter of the same grade", old, oldDark, "I placed 1 over 2 on quality. 2 is a dark cutter.", "1 goes over 2 on quality. 2 is a dark cutter."},
		{"a dark cutter", x, dark, "I placed 1 over 2 on quality. 1 should grade Choice, where 2, a dark cutter, is Select.", "1 goes over 2 on quality. 1 should grade Choice, where 2, a dark cutter, is Select."},
	} {
		r, err := graded(t, classOf(tt.upper, tt.lower)).Reasons(placing.MustParseOrder("1-2"), class.DefaultPolicy())
		if err != nil {
			t.Fatal(err)
		}
		if got := r.Spoken()[1]; got != tt.pair {
			t.Errorf("%s: %q, want %q", tt.name, got, tt.pair)
		}
		if got := r.Pairs[0].Spoken(); got != tt.alone {
			t.Errorf("%s alone: %q, want %q", tt.name, got, tt.alone)
		}
	}
}

// TestAdvantagesInWords holds from which difference in yield each size is said, both
// sides of the line, and that of many sites of fat four are named.
func TestAdvantagesInWords(t *testing.T) {
	said := func(c class.Class) string {
		r, err := graded(t, c).Reasons(placing.MustParseOrder("1-2"), class.DefaultPolicy())
		if err != nil {
			t.Fatal(err)
		}
		return r.Spoken()[1]
	}
	for _, tt := range []struct {
		fat        float64 // of the lower, where the upper has 0.4: 0.1 in is 0.25
		from, less string
	}{
		{0.54, "an advantage of about half a yield grade.", "should have the lower yield grade."},
		{0.7, "an advantage of about a full yield grade.", "about half a yield grade."},
		{0.9, "an advantage of about a yield grade and a half.", "about a full yield grade."},
		{1.1, "an advantage of about two yield grades.", "about a yield grade and a half."},
		{1.3, "an advantage of more than two yield grades.", "about two yield grades."},
	} {
		for fat, want := range map[float64]string{tt.fat: tt.from, tt.fat - 0.001: tt.less} {
			if got := said(classOf(rib("Sm40", 0.4, 13), rib("Sm40", fat, 13))); !strings.HasSuffix(got, want) {
				t.Errorf("%v in: %q, want %q", fat, got, want)
			}
		}
	}
	c := walked(classOf(rib("Sm40", 0.4, 13), rib("Sm40", 0.4, 13)), "fat over round: 2 1", "fat over rump: 2 1", "fat over loin edge: 2 1", "fat over rib: 2 1", "fat over plate: 2 1", "fat over clod: 2 1")
	if got, want := said(c), "I placed 1 over 2 on trimness. 1 was trimmer over the round, rump, loin edge and lower rib."; got != want {
		t.Errorf("%q, want %q", got, want)
	}
}

// hanging makes one of the invented carcasses of the golden sets.
func hanging(sex grade.Sex, marbling string, lean grade.Lean, fat, ribeye, kph float64) grade.Carcass {
	return grade.Carcass{
		Sex:      sex,
		Maturity: maturity.Evidence{Skeletal: maturity.A.At(60), Lean: maturity.A.At(50), Buttons: maturity.WhiteAndSoft},
		Marbling: grade.MustParseMarbling(marbling), Lean: lean,
		Measures: grade.Measures{Fat: grade.Inches(fat), Ribeye: grade.SquareInches(ribeye), KPH: grade.Percent(kph), Weight: grade.Pounds(800)},
	}
}

func walked(c class.Class, looks ...string) class.Class {
	for _, l := range looks {
		site, order, _ := strings.Cut(l, ": ")
		s, err := class.ParseSite(site)
		if err != nil {
			panic(err)
		}
		c.Walk = append(c.Walk, class.Look{Site: s, Order: class.MustParseRanking(order)})
	}
	return c
}

// TestSpokenGolden keeps three sets of reasons for invented classes, which were
// read aloud: a committee's placing of steers that the policy shares, a committee's
// placing of heifers with a top pair that the walk decides and a dark cutter, and a member's placing
// of the steers that goes against what the data say.
func TestSpokenGolden(t *testing.T) {
	steers := walked(classOf(
		hanging(grade.Steer, "Sm70", grade.Lean{Firmness: grade.ModeratelyFirm}, 0.45, 13.6, 2.5),
		hanging(grade.Steer, "Sl60", grade.Lean{Firmness: grade.SlightlyFirm}, 0.30, 14.4, 2),
		hanging(grade.Steer, "Md20", grade.Lean{Firmness: grade.Firm}, 0.70, 13.1, 3),
		hanging(grade.Steer, "Sm20", grade.Lean{Firmness: grade.ModeratelyFirm}, 0.80, 12.2, 3.5),
	), "plumpness of round: 2 1 3 4", "cushion of round: 2 1=3 4", "muscling of loin: 2 1 3 4", "fat over rump: 1 4 3 2", "fat in cod or udder: 1=4 3 2", "fat over loin edge: 4 1 3 2", "fat over clod: 1 4 3 2", "fat in brisket: 1 4 3 2")
	heifers := walked(classOf(
		hanging(grade.Heifer, "Sm60", grade.Lean{Firmness: grade.SlightlyFirm, Color: grade.DarkRed, Texture: grade.SlightlyCoarse, Dark: grade.DarkFull}, 0.55, 13.0, 2.5),
		hanging(grade.Heifer, "Mt30", grade.Lean{Firmness: grade.Firm, Color: grade.LightCherryRed, Texture: grade.Fine}, 0.45, 13.4, 2.5),
		hanging(grade.Heifer, "Mt30", grade.Lean{Firmness: grade.ModeratelyFirm, Color: grade.LightRed, Texture: grade.Fine}, 0.45, 13.3, 2.5),
		hanging(grade.Heifer, "Sl70", grade.Lean{Firmness: grade.ModeratelyFirm, Color: grade.LightRed, Texture: grade.Fine}, 0.30, 14.1, 2),
	), "fat over round: 1 3 2 4", "fat over rump: 3 1 2 4", "fat over loin edge: 3 1 2 4", "fat in brisket: 1 3 2 4", "plumpness of round: 4 2 3 1", "muscling of rib: 2 4 3 1")
	var b strings.Builder
	for _, s := range []struct {
		name  string
		class class.Class
		order string
	}{
		{"Steers, a committee's placing that the policy shares", steers, "3-1-2-4"},
		{"Heifers, a committee's placing: a top pair that the walk decides, and a dark cutter at the bottom", heifers, "2-3-4-1"},
		{"The steers again, a member's placing against the data", steers, "4-2-1-3"},
	} {
		r, err := graded(t, s.class).Reasons(placing.MustParseOrder(s.order), class.DefaultPolicy())
		if err != nil {
			t.Fatal(err)
		}
		said := r.Spoken()
		fmt.Fprintf(&b, "%s (invented), %d words\n\n%s\n\n\n", s.name, len(strings.Fields(strings.Join(said, " "))), strings.Join(said, "\n\n"))
	}
	golden.Compare(t, "testdata/spoken.txt", strings.TrimSuffix(b.String(), "\n\n"))
}
