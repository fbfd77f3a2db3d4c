package class_test

import (
	"errors"
	"example.com/ribface/maturity"
	"slices"
	"strings"
	"testing"

	"example.com/ribface/grade"
	"example.com/ribface/placing"
	"example.com/ribface/placing/class"
	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

// look reads one trait straight from the data: the higher the number the better,
// and ok false where it was not looked at.
func look(g class.Graded, e int, t class.Trait, s class.Site) (number int64, shown string, ok bool) {
	a := g.Assessment(e)
	c := a.Carcass
	fat := c.Measures.Fat + c.FatAdjust
	switch t {
	case class.TraitQuality:
		return int64(a.Quality), a.Quality.String(), true
	case class.TraitColor:
		return -int64(c.Lean.Dark), "dark cutting " + c.Lean.Dark.String(), true
	case class.TraitMarbling:
		return int64(c.Marbling), c.Marbling.String(), true
	case class.TraitYield:
		return -int64(a.Yield), a.Yield.String(), true
	case class.TraitFat:
		return -int64(fat), fat.String(), true
	case class.TraitRibeye:
		return int64(c.Measures.Ribeye), c.Measures.Ribeye.String(), true
	case class.TraitKPH:
		return -int64(c.Measures.KPH), c.Measures.KPH.String(), true
	case class.TraitWeight:
		return -int64(c.Measures.Weight), c.Measures.Weight.String(), true
	case class.TraitSkeletal:
		return -int64(c.Maturity.Skeletal), c.Maturity.Skeletal.String(), true
	case class.TraitLean:
		return -int64(c.Maturity.Lean), c.Maturity.Lean.String(), c.Maturity.Lean != 0
	case class.TraitFirmness:
		return int64(c.Lean.Firmness), c.Lean.Firmness.String(), c.Lean.Firmness != 0
	}
	r, ok := g.Class().Walk.At(s)
	place := r.Place(e)
	if s.Fat() {
		return int64(place), "place " + place.String() + " from the fattest", ok
	}
	return -int64(place), "place " + place.String() + " from the heaviest", ok
}

// every yields every trait, and TraitSite once for every site.
func every(yield func(class.Trait, class.Site) bool) {
	for t := class.TraitQuality; t < class.TraitSite; t++ {
		if !yield(t, 0) {
			return
		}
	}
	for s := range class.Sites() {
		if !yield(class.TraitSite, s) {
			return
		}
	}
}

// TestReasonsHold checks every fact and every sentence against the data, and that
// nothing that speaks for the upper or the lower is left out.
func TestReasonsHold(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := drawClass(t, 5)
		if rapid.Bool().Draw(t, "a lean not looked at") {
			c.Exhibits[0].Carcass.Maturity.Lean = 0
			c.Exhibits[0].Carcass.Maturity.Papers = 20
			c.Exhibits[0].Carcass.Maturity.Skeletal = 150
		}
		g, p := placed(t, c)
		r, err := g.Reasons(p)
		if err != nil {
			t.Fatal(err)
		}
		var told []string
		check := func(facts []class.Fact, better, worse int, decided class.Trait) {
			first := 0
			if len(facts) > 0 && facts[0].Trait == decided {
				first = 1
			}
			i := 0
			for _, f := range facts {
				a, shownA, okA := look(g, f.Better, f.Trait, f.Site)
				b, shownB, okB := look(g, f.Worse, f.Trait, f.Site)
				if f.Better != better || f.Worse != worse || !okA || !okB || a <= b || f.BetterValue != shownA || f.WorseValue != shownB {
					t.Fatalf("%+v does not hold: %v %v, %v %v", f, a, shownA, b, shownB)
				}
				if i > first && facts[i-1].Weight < f.Weight || f.Weight < 0 {
					t.Fatalf("not by weight: %v", facts)
				}
				i++
				s := f.String()
				if !strings.HasPrefix(s, itoa(better)+" has ") || !strings.Contains(s, " than "+itoa(worse)+", ") || !strings.HasSuffix(s, shownA+" against "+shownB) {
					t.Fatalf("%q does not tell %+v", s, f)
				}
			}
			n := 0
			for trait, s := range every {
				a, _, okA := look(g, better, trait, s)
				b, _, okB := look(g, worse, trait, s)
				if okA && okB && a > b {
					n++
				}
			}
			if n != len(facts) {
				t.Fatalf("%d facts of %d: %v", len(facts), n, facts)
			}
		}
		for i, pair := range r.Pairs {
			if pair.Upper != p.Order.At(i+1) || pair.Lower != p.Order.At(i+2) {
				t.Fatalf("pair %d is %d over %d in %v", i+1, pair.Upper, pair.Lower, p.Order)
			}
			decided := map[class.Ground]class.Trait{class.ByTier: class.TraitQuality, class.ByAdvantage: class.TraitYield, class.ByBottom: class.TraitQuality, class.ByColor: class.TraitColor, class.ByMarbling: class.TraitMarbling, class.ByYield: class.TraitYield, class.ByDark: class.TraitColor, class.ByFirmness: class.TraitFirmness}[pair.Decision.Ground]
			check(pair.Over, pair.Upper, pair.Lower, decided)
			check(pair.Grants, pair.Lower, pair.Upper, 0)
			// Two of one grade are of two tiers where the bone keeps one out of top Choice.
			if told := slices.ContainsFunc(pair.Over, func(f class.Fact) bool { return f.Trait == decided }); told && pair.Over[0].Trait != decided {
				t.Fatalf("%v is not told first: %v", pair.Decision, pair.Over)
			}
			for _, f := range pair.Over {
				told = append(told, strings.ToUpper(pair.Name[:1])+pair.Name[1:]+": "+f.String()+".")
			}
			if len(pair.Over) == 0 {
				told = append(told, strings.ToUpper(pair.Name[:1])+pair.Name[1:]+": nothing in the data puts "+itoa(pair.Upper)+" over "+itoa(pair.Lower)+".")
			}
			for _, f := range pair.Grants {
				told = append(told, "Granted: "+f.String()+".")
			}
		}
		last := p.Order.At(p.Order.Len())
		faults := 0
		for trait, s := range every {
			own, _, ok := look(g, last, trait, s)
			for e := 1; ok && e <= g.Len(); e++ {
				o, _, okO := look(g, e, trait, s)
				ok = e == last || okO && o > own
			}
			if ok {
				faults++
			}
		}
		if faults != len(r.Last) {
			t.Fatalf("%d faults of %d: %v", len(r.Last), faults, r.Last)
		}
		for _, f := range r.Last {
			own, shown, _ := look(g, f.Exhibit, f.Trait, f.Site)
			next, nextShown, _ := look(g, f.Next, f.Trait, f.Site)
			if f.Exhibit != last || f.Value != shown || f.NextHas != nextShown || next <= own || f.Weight < 0 {
				t.Fatalf("%+v does not hold", f)
			}
			for e := 1; e <= g.Len(); e++ {
				if o, _, _ := look(g, e, f.Trait, f.Site); e != last && o < next {
					t.Fatalf("%+v: %d comes nearer", f, e)
				}
			}
			s := f.String()
			if !strings.HasPrefix(s, itoa(last)+" has the ") || !strings.HasSuffix(s, " of the class, "+shown+"; the next, "+itoa(f.Next)+", has "+nextShown) {
				t.Fatalf("%q does not tell %+v", s, f)
			}
			told = append(told, "Last: "+s+".")
		}
		want := append([]string{"The class is placed " + p.Order.String() + "."}, told...)
		if diff := cmp.Diff(want, r.Sentences(0)); diff != "" {
			t.Fatalf("sentences (-want +got):\n%s", diff)
		}
		for _, s := range r.Sentences(2) {
			if !slices.Contains(want, s) {
				t.Fatalf("%q is told only in short", s)
			}
		}
	})
}

func itoa(n int) string { return string(rune('0' + n)) }

// TestWordsGoWithTheDirection reads the word of comparison of every trait and
// site: a word for less where less is better, for more where more is.
func TestWordsGoWithTheDirection(t *testing.T) {
	less := []string{"less", "lower", "lighter", "younger", "sounder"}
	for trait, site := range every {
		better := class.Fact{Trait: trait, Site: site, Better: 1, Worse: 2}.String()
		worst := class.Fault{Trait: trait, Site: site, Exhibit: 1, Next: 2}.String()
		says := slices.ContainsFunc(less, func(w string) bool { return strings.Contains(better, " "+w+" ") })
		wanted := slices.Contains([]class.Trait{class.TraitColor, class.TraitYield, class.TraitFat, class.TraitKPH, class.TraitWeight, class.TraitSkeletal, class.TraitLean}, trait) || site.Fat()
		if says != wanted || strings.Contains(better, "unset") || strings.Contains(worst, "unset") {
			t.Errorf("%v %v: %q, %q", trait, site, better, worst)
		}
		if site.IsValid() {
			where := strings.Fields(site.String())
			if part := where[len(where)-1]; !strings.Contains(better, part) || !strings.Contains(worst, part) {
				t.Errorf("%v: %q, %q do not name it", site, better, worst)
			}
		}
	}
	if got := (class.Fact{}).String() + (class.Fault{}).String() + (class.Fact{Trait: class.TraitSite}).String()[:0]; got != "unsetunset" {
		t.Errorf("zero facts: %q", got)
	}
}

func TestReasonsOfFour(t *testing.T) {
	g, p := placed(t, four())
	r, err := g.Reasons(p)
	if err != nil {
		t.Fatal(err)
	}
	want := []string{
		"The class is placed 3-1-2-4.",
		"Top pair: 3 has a higher quality grade than 1, Average Choice against Low Choice.",
		"Top pair: 3 has more marbling than 1, Mt50 against Sm40.",
		"Granted: 1 has a lower yield grade than 3, 3.002 against 3.48.",
		"Granted: 1 has less fat over the rib than 3, 0.5 in against 0.6 in.",
		"Middle pair: 1 has a higher quality grade than 2, Low Choice against High Select.",
		"Middle pair: 1 has more marbling than 2, Sm40 against Sl60.",
		"Granted: 2 has a lower yield grade than 1, 2.018 against 3.002.",
		"Granted: 2 has less fat over the rib than 1, 0.3 in against 0.5 in.",
		"Bottom pair: 2 has a higher quality grade than 4, High Select against High Standard.",
		"Bottom pair: 2 has a lower yield grade than 4, 2.018 against 4.214.",
		"Last: 4 has the lowest quality grade of the class, High Standard; the next, 2, has High Select.",
		"Last: 4 has the highest yield grade of the class, 4.214; the next, 3, has 3.48.",
	}
	if diff := cmp.Diff(want, r.Sentences(2)); diff != "" {
		t.Errorf("sentences (-want +got):\n%s", diff)
	}
	if got := (class.Reasons{}).Sentences(0); got != nil {
		t.Errorf("the zero Reasons: %q", got)
	}
	for _, o := range []class.Placing{{}, {Order: placing.MustParseOrder("1-2-3")}} {
		if _, err := g.Reasons(o); !errors.Is(err, class.ErrRange) {
			t.Errorf("placing %v: %v", o.Order, err)
		}
	}
	if _, err := (class.Graded{}).Reasons(class.Placing{}); err == nil {
		t.Error("reasons for no class")
	}
	def := class.DefaultPolicy()
	if g.Facts(def, 0, 1) != nil || g.Facts(def, 1, 5) != nil || g.Facts(def, 5, 1) != nil || g.Facts(def, 1, 0) != nil || g.Facts(def, 2, 2) != nil || g.Faults(def, 0) != nil || g.Faults(def, 5) != nil {
		t.Error("facts of no exhibit")
	}
}

// TestFactWeights holds what differences count for: a tier 1.5, a point of marbling
// a hundredth of it, a third of dark cutting a third of it.
func TestFactWeights(t *testing.T) {
	c := four()
	third, full := steer("Sl60", 0.5, 13, 2.5, 800), steer("Sl60", 0.5, 13, 2.5, 800)
	third.Lean.Dark, full.Lean.Dark = grade.DarkThird, grade.DarkFull
	g := graded(t, c)
	darks := graded(t, classOf(third, full))
	for _, tt := range []struct {
		g             class.Graded
		better, worse int
		trait         class.Trait
		want          string
	}{
		{g, 3, 1, class.TraitQuality, "1.5"}, // one tier, and 110 points behind it
		{g, 3, 1, class.TraitMarbling, "0.55"},
		{g, 2, 4, class.TraitQuality, "1.5"}, // one tier, and 80 points
		{g, 2, 4, class.TraitMarbling, "0.4"},
		{g, 3, 2, class.TraitQuality, "2"}, // two tiers, and 190 points
		{g, 1, 3, class.TraitYield, "0.478"},
		{g, 1, 3, class.TraitFat, "0.25"},
		{darks, 1, 2, class.TraitColor, "1"},
	} {
		at := slices.IndexFunc(tt.g.Facts(class.DefaultPolicy(), tt.better, tt.worse), func(f class.Fact) bool { return f.Trait == tt.trait })
		if at < 0 {
			t.Errorf("%d over %d: no fact on %v", tt.better, tt.worse, tt.trait)
			continue
		}
		if f := tt.g.Facts(class.DefaultPolicy(), tt.better, tt.worse)[at]; f.Weight.String() != tt.want {
			t.Errorf("%v: weight %v, want %s", f, f.Weight, tt.want)
		}
	}
}

// TestNextOfEquals holds which of two that come equally near to the worst is named.
func TestNextOfEquals(t *testing.T) {
	g := graded(t, classOf(steer("Sl10", 0.5, 13, 2.5, 800), steer("Sm40", 0.4, 13, 2.5, 800), steer("Sm40", 0.3, 13, 2.5, 800)))
	for _, f := range g.Faults(class.DefaultPolicy(), 1) {
		if f.Trait == class.TraitMarbling && f.Next != 2 {
			t.Errorf("%v", f)
		}
	}
}

// TestNothingToSay has two alike.
func TestNothingToSay(t *testing.T) {
	x := steer("Sm40", 0.4, 13, 2.5, 800)
	g, p := placed(t, classOf(x, x))
	r, err := g.Reasons(p)
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff([]string{"The class is placed 1-2.", "The pair: nothing in the data puts 1 over 2."}, r.Sentences(0)); diff != "" {
		t.Errorf("sentences (-want +got):\n%s", diff)
	}
}

func TestTraits(t *testing.T) {
	for trait := class.TraitQuality; trait <= class.TraitSite; trait++ {
		b, err := trait.MarshalText()
		var back class.Trait
		if err != nil || back.UnmarshalText(b) != nil || back != trait || !trait.IsValid() {
			t.Errorf("%v came back as %v", trait, back)
		}
		v, err := trait.Value()
		if err != nil || back.Scan(v) != nil || back != trait {
			t.Errorf("%v through a database: %v, %v", trait, back, err)
		}
	}
	if _, err := class.ParseTrait("hair"); !errors.Is(err, class.ErrUnknown) {
		t.Errorf("ParseTrait: %v", err)
	}
}

func FuzzParseTrait(f *testing.F) {
	f.Add("marbling")
	f.Add("")
	f.Fuzz(func(t *testing.T, s string) {
		if v, err := class.ParseTrait(s); err == nil && v.String() != s || err != nil && v != 0 {
			t.Errorf("ParseTrait(%q) = %v, %v", s, v, err)
		}
	})
}

// TestReversals turns every pair by the change told, and not by one step less.
func TestReversals(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := drawClass(t, 4)
		g, p := placed(t, c)
		a := rapid.IntRange(1, g.Len()).Draw(t, "a")
		b := rapid.IntRange(1, g.Len()-1).Draw(t, "b")
		if b >= a {
			b++
		}
		all, err := g.Reversals(class.DefaultPolicy(), a, b)
		if err != nil {
			t.Fatal(err)
		}
		was, _ := p.Decision(a, b)
		if was.Ground == 0 {
			if all != nil {
				t.Fatalf("%v is turned by %v", was, all)
			}
			return
		}
		for i, r := range all {
			if i > 0 && all[i-1].Effect > r.Effect || r.Effect <= 0 {
				t.Fatalf("not by effect: %v", all)
			}
			changed := c
			changed.Exhibits = r.Exhibits
			h, q := placed(t, changed)
			now, _ := q.Decision(a, b)
			if now.Ground == 0 || now.Upper != was.Lower || q.Order != r.Order {
				t.Fatalf("%+v does not turn %v: %v, placed %v", r, was, now, q.Order)
			}
			before, after := g.Assessment(r.Exhibit).Carcass, h.Assessment(r.Exhibit).Carcass
			// Back by one step.
			less := slices.Clone(r.Exhibits)
			x := &less[r.Exhibit-1].Carcass
			switch r.Trait {
			case class.TraitMarbling:
				x.Marbling += one(before.Marbling - after.Marbling)
			case class.TraitFat:
				x.Measures.Fat += one(before.Measures.Fat - after.Measures.Fat)
			case class.TraitRibeye:
				x.Measures.Ribeye += one(before.Measures.Ribeye - after.Measures.Ribeye)
			case class.TraitKPH:
				x.Measures.KPH += one(before.Measures.KPH - after.Measures.KPH)
			case class.TraitWeight:
				if c.Posted != 0 {
					t.Fatal("weight turns a class with a posted one")
				}
				x.Measures.Weight += one(before.Measures.Weight - after.Measures.Weight)
			}
			changed.Exhibits = less
			_, q = placed(t, changed)
			if now, _ := q.Decision(a, b); now.Ground != 0 && now.Upper == was.Lower {
				t.Fatalf("%+v is not the smallest change", r)
			}
			from, to, _ := strings.Cut(r.From+"|"+r.To, "|")
			if from == to {
				t.Fatalf("%+v changes nothing", r)
			}
		}
	})
}

func one[T grade.Marbling | grade.Thickness | grade.Area | grade.Share | grade.Weight](n T) T {
	if n < 0 {
		return -1
	}
	return 1
}

func TestReversalsByHand(t *testing.T) {
	// Low Choice over Select with a lead of 1.0 against it: 0.5 short of turning.
	c := classOf(steer("Sm40", 0.8, 13, 2.5, 800), steer("Sl60", 0.4, 13, 2.5, 800))
	all, err := graded(t, c).Reversals(class.NotesPolicy(), 2, 1)
	if err != nil {
		t.Fatal(err)
	}
	var got []string
	for _, r := range all {
		got = append(got, itoa(r.Exhibit)+" "+r.Trait.String()+" "+r.From+" to "+r.To+", "+r.Change+", effect "+r.Effect.String()+", placed "+r.Order.String())
	}
	want := []string{
		"2 fat over the rib 0.4 in to 0.2 in, -0.2 in, effect 0.5, placed 2-1",
		"2 ribeye 13 sq in to 14.5625 sq in, +1.5625 sq in, effect 0.5, placed 2-1",
		"2 kidney, pelvic and heart fat 2.5% to 0%, -2.5%, effect 0.5, placed 2-1",
		"1 fat over the rib 0.8 in to 1 in, +0.2 in, effect 0.5, placed 2-1",
		"1 ribeye 13 sq in to 11.4375 sq in, -1.5625 sq in, effect 0.5, placed 2-1",
		"1 kidney, pelvic and heart fat 2.5% to 5%, +2.5%, effect 0.5, placed 2-1",
	}
	slices.Sort(got)
	if len(got) != 10 {
		t.Errorf("%d reversals:\n%s", len(got), strings.Join(got, "\n"))
	}
	for _, w := range append(want,
		"2 marbling Sl60 to Sm40, +80 points, effect 1.2, placed 2-1",
		"1 marbling Sm40 to Sl60, -80 points, effect 1.2, placed 2-1",
		"1 weight 800 lb to 931.579 lb, +131.579 lb, effect 0.5000002, placed 2-1",
		"2 weight 800 lb to 668.421 lb, -131.579 lb, effect 0.5000002, placed 2-1") {
		if !slices.Contains(got, w) {
			t.Errorf("missing %q in\n%s", w, strings.Join(got, "\n"))
		}
	}
	alike := classOf(c.Exhibits[0].Carcass, c.Exhibits[0].Carcass)
	if all, err := graded(t, alike).Reversals(class.NotesPolicy(), 1, 2); all != nil || err != nil {
		t.Errorf("two alike: %v, %v", all, err)
	}
	g := graded(t, c)
	_, err = g.Reversals(class.NotesPolicy(), 0, 1)
	wantError(t, "zero", "exhibit: 0: out of range; allowed: 1 to 2", err)
	_, err = g.Reversals(class.NotesPolicy(), 1, 3)
	wantError(t, "three", "exhibit: 3: out of range; allowed: 1 to 2", err)
	_, err = g.Reversals(class.NotesPolicy(), 2, 2)
	wantError(t, "twice", "exhibit: 2: repeated; allowed: two exhibits", err)
}

// TestReversalsInsideTheLimits has fat that an adjustment keeps from 0.
func TestReversalsInsideTheLimits(t *testing.T) {
	c := classOf(steer("Sm40", 0.8, 13, 2.5, 800), steer("Sl60", 0.4, 13, 2.5, 800))
	c.Exhibits[1].Carcass.FatAdjust = grade.Inches(-0.3) // 0.1 in: a lead of 1.75
	all, err := graded(t, c).Reversals(class.NotesPolicy(), 1, 2)
	if err != nil {
		t.Fatal(err)
	}
	for _, r := range all {
		if r.Exhibit == 2 && r.Trait == class.TraitFat && r.To != "0.5001 in" {
			t.Errorf("fat %+v", r)
		}
	}
	c.Exhibits[0].Carcass.FatAdjust = grade.Inches(2.1)
	if _, err := graded(t, c).Reversals(class.NotesPolicy(), 1, 2); err != nil {
		t.Error(err)
	}
}

// TestReversalsWithAdjustedFat holds the ends of the fat of an exhibit whose fat is
// adjusted: no adjusted fat under 0, none over 3 in.
func TestReversalsWithAdjustedFat(t *testing.T) {
	fat := func(c class.Class, upper, lower, exhibit int) string {
		t.Helper()
		all, err := graded(t, c).Reversals(class.NotesPolicy(), upper, lower)
		if err != nil {
			t.Fatal(err)
		}
		for _, r := range all {
			if r.Exhibit == exhibit && r.Trait == class.TraitFat {
				return r.To
			}
		}
		return "none"
	}
	// The lower one must come under 0.001 in, and has 0.2 in less than is measured.
	c := classOf(steer("Sm40", 0.001, 13, 2.5, 800), steer("Sm40", 0.9, 13, 2.5, 800))
	c.Exhibits[1].Carcass.FatAdjust = grade.Inches(-0.2)
	if got := fat(c, 1, 2, 2); got != "0.2009 in" {
		t.Errorf("nearly no fat: %s", got)
	}
	// No fat up to 3 in turns Prime over Select, three tiers apart.
	c = classOf(steer("SlAb20", 0.5, 13, 2.5, 800), steer("Sl40", 0.4, 13, 2.5, 800))
	c.Exhibits[0].Carcass.FatAdjust = grade.Inches(0.2)
	if got := fat(c, 1, 2, 1); got != "none" {
		t.Errorf("more than all the fat there can be: %s", got)
	}
}

// TestCouldReverse draws figures inside the tolerances: a pair that they turn is
// listed. And a pair that is listed turns at the ends of the tolerances.
func TestCouldReverse(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := drawClass(t, 4)
		tol := grade.Tolerances{
			Fat:      grade.Thickness(rapid.IntRange(0, 2).Draw(t, "± fat") * 500),
			Ribeye:   grade.Area(rapid.IntRange(0, 2).Draw(t, "± ribeye") * 5000),
			KPH:      grade.Share(rapid.IntRange(0, 1).Draw(t, "± KPH") * 5000),
			Weight:   grade.Weight(rapid.IntRange(0, 1).Draw(t, "± weight") * 100_000),
			Marbling: rapid.IntRange(0, 2).Draw(t, "± marbling") * 10,
			Maturity: rapid.IntRange(0, 1).Draw(t, "± maturity") * 10,
		}
		g, p := placed(t, c)
		listed, err := g.CouldReverse(class.DefaultPolicy(), tol)
		if err != nil {
			t.Fatal(err)
		}
		has := map[[2]int]bool{}
		for _, d := range listed {
			if was, _ := p.Decision(d.Upper, d.Lower); was != d || d.Ground == 0 {
				t.Fatalf("%v is listed as %v", was, d)
			}
			has[[2]int{d.Upper, d.Lower}] = true
		}
		within := func(n int32, name string) int32 {
			return rapid.SampledFrom([]int32{-n, 0, n}).Draw(t, name)
		}
		moved := c
		moved.Exhibits = slices.Clone(c.Exhibits)
		for i := range moved.Exhibits {
			x := &moved.Exhibits[i].Carcass
			x.Measures.Fat += grade.Thickness(within(int32(tol.Fat), "fat"))
			x.Measures.Ribeye += grade.Area(within(int32(tol.Ribeye), "ribeye"))
			x.Measures.KPH += grade.Share(within(int32(tol.KPH), "KPH"))
			x.Measures.Weight += grade.Weight(within(int32(tol.Weight), "weight"))
			x.Marbling += grade.Marbling(within(int32(tol.Marbling), "marbling"))
			x.Maturity.Skeletal += maturity.Score(within(int32(tol.Maturity), "skeletal"))
			x.Maturity.Lean += maturity.Score(within(int32(tol.Maturity), "lean"))
		}
		h, err := moved.Grade()
		if err != nil {
			return // beyond the end of a scale
		}
		q, err := h.Place(class.DefaultPolicy())
		if err != nil {
			t.Fatal(err)
		}
		for _, d := range p.Decisions {
			if d.Ground == 0 {
				continue
			}
			if now, _ := q.Decision(d.Upper, d.Lower); now.Ground != 0 && now.Upper != d.Upper && !has[[2]int{d.Upper, d.Lower}] {
				t.Fatalf("%v became %v within %+v and is not listed", d, now, tol)
			}
		}
		if tol == (grade.Tolerances{}) && listed != nil {
			t.Fatalf("without tolerances %v", listed)
		}
	})
}

func TestCouldReverseByHand(t *testing.T) {
	// 1 is 0.5 short of being turned by the yield, 40 points over Select, and
	// marbling of 2 is 40 points under Choice.
	c := classOf(steer("Sm40", 0.8, 13, 2.5, 800), steer("Sl60", 0.4, 13, 2.5, 800))
	tests := []struct {
		name string
		t    grade.Tolerances
		want bool
	}{
		{"both fats by half of it", grade.Tolerances{Fat: grade.Inches(0.1)}, true},
		{"a little less", grade.Tolerances{Fat: grade.Inches(0.0999)}, false},
		{"ribeyes", grade.Tolerances{Ribeye: grade.SquareInches(0.7813)}, true},
		{"a little less ribeye", grade.Tolerances{Ribeye: grade.SquareInches(0.7812)}, false},
		{"one falls to Select", grade.Tolerances{Marbling: 41}, true},
		{"neither leaves its grade", grade.Tolerances{Marbling: 40}, true},
		{"the marblings do not meet", grade.Tolerances{Marbling: 39}, false},
		{"weights by half of it", grade.Tolerances{Weight: grade.Pounds(65.7895)}, true},
		{"a little less weight", grade.Tolerances{Weight: grade.Pounds(65.7894)}, false},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			got, err := graded(t, c).CouldReverse(class.NotesPolicy(), tt.t)
			if err != nil || len(got) == 1 != tt.want {
				t.Errorf("got %v, %v", got, err)
			}
		})
	}
	c.Posted = grade.Pounds(800)
	got, err := graded(t, c).CouldReverse(class.NotesPolicy(), grade.Tolerances{Weight: grade.Pounds(300)})
	if err != nil || got != nil {
		t.Errorf("a posted weight is certain: %v, %v", got, err)
	}
	_, err = graded(t, c).CouldReverse(class.NotesPolicy(), grade.Tolerances{Fat: -1})
	wantError(t, "tolerance", "tolerance of fat: -0.0001 in: out of range; allowed: 0 in to 3 in", err)
	x := steer("Sm40", 0.4, 13, 2.5, 800)
	if got, err := graded(t, classOf(x, x)).CouldReverse(class.NotesPolicy(), grade.Tolerances{Fat: grade.Inches(0.1)}); err != nil || got != nil {
		t.Errorf("two alike: %v, %v", got, err)
	}
}
