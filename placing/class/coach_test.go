package class_test

import (
	"slices"
	"strings"
	"testing"

	"example.com/ribface/grade"
	"example.com/ribface/internal/refs"
	"example.com/ribface/maturity"
	"example.com/ribface/maturity/cite"
	"example.com/ribface/placing"
	"example.com/ribface/placing/class"
	"github.com/google/go-cmp/cmp"
)

// rib makes an invented steer of 800 lb with 2.5% of kidney fat: its yield is
// 6.04 + 2.5 fat - 0.32 ribeye.
func rib(marbling string, fat, ribeye float64) grade.Carcass {
	return steer(marbling, fat, ribeye, 2.5, 800)
}

// aged gives a carcass the bone and lean of another age.
func aged(c grade.Carcass, skeletal, lean maturity.Score) grade.Carcass {
	c.Maturity = maturity.Evidence{Skeletal: skeletal, Lean: lean}
	return c
}

// darkened makes a dark cutter.
func darkened(c grade.Carcass, d grade.DarkCut) grade.Carcass {
	c.Lean.Dark = d
	return c
}

// TestCoach has invented classes with the placing that any coach would give, each
// with the reason in one line.
func TestCoach(t *testing.T) {
	tests := []struct {
		reason string
		want   string
		class  class.Class
	}{
		{
			"a quality class: alike in cutability, they go by quality from Prime down to Select", "4-2-1-3",
			classOf(rib("Sm50", 0.45, 13.0), rib("Mt60", 0.45, 13.0), rib("Sl30", 0.45, 13.0), rib("SlAb40", 0.45, 13.0)),
		},
		{
			"all low Choice and alike in marbling: the class is decided on cutability, 2.4, 2.9, 3.5, 4.3", "3-1-4-2",
			classOf(rib("Sm40", 0.45, 13.3), rib("Sm50", 0.80, 12.0), rib("Sm40", 0.35, 14.2), rib("Sm50", 0.60, 12.7)),
		},
		{
			"all Select: cutability again, whatever a few points of marbling say", "2-4-1-3",
			classOf(rib("Sl70", 0.50, 13.0), rib("Sl60", 0.20, 15.0), rib("Sl80", 0.75, 12.2), rib("Sl50", 0.30, 14.0)),
		},
		{
			"Standard hangs last however trim it is", "1-4-2-3",
			classOf(rib("Mt40", 0.50, 13.5), rib("Sl40", 0.50, 13.2), rib("Tr60", 0.10, 16.0), rib("Sm60", 0.50, 13.5)),
		},
		{
			"a wasty low Choice of yield grade 4 goes under a trim Select, the two lean ones of Choice stay on top", "2-3-4-1",
			classOf(rib("Sm60", 0.85, 12.0), rib("Mt50", 0.40, 14.0), rib("Sm40", 0.40, 13.8), rib("Sl50", 0.25, 14.5)),
		},
		{
			"a Choice of yield grade 3.4 is fat, but not fat enough for any Select to beat it", "1-2-3-4",
			classOf(rib("Mt30", 0.45, 13.8), rib("Sm30", 0.60, 12.9), rib("Sl80", 0.10, 15.8), rib("Sl40", 0.40, 13.3)),
		},
		{
			"a Prime of yield grade 5 is overdone: all the sound ones of Choice, more than two grades trimmer, go over it", "2-1-3-4",
			classOf(rib("Mt70", 0.45, 13.6), rib("Md40", 0.40, 13.8), rib("Sm70", 0.35, 13.8), rib("SlAb60", 1.30, 11.5)),
		},
		{
			"a Prime of 3.5 keeps the top over trim ones of Choice, a grade lower in yield", "3-1-2-4",
			classOf(rib("Mt60", 0.35, 14.0), rib("Sm50", 0.30, 14.2), rib("SlAb50", 0.65, 13.0), rib("Sl20", 0.45, 13.2)),
		},
		{
			"a full dark cutter hangs last, though its marbling was the most of the class", "2-4-3-1",
			classOf(darkened(rib("Md60", 0.40, 14.0), grade.DarkFull), rib("Mt20", 0.45, 13.6), rib("Sl60", 0.50, 13.2), rib("Sm40", 0.45, 13.4)),
		},
		{
			"hard bone goes to the bottom with any marbling", "3-1-4-2",
			classOf(rib("Sm60", 0.40, 13.8), aged(rib("Md50", 0.30, 14.5), maturity.C.At(60), maturity.B.At(80)), rib("Mt40", 0.45, 13.6), rib("Sl30", 0.50, 13.0)),
		},
		{
			"Small marbling with B bone is Standard: it belongs in the bottom pair, over the Traces one by its marbling", "2-1-4-3",
			classOf(rib("Sl70", 0.60, 12.5), rib("Sm40", 0.50, 13.3), rib("Tr40", 0.35, 13.5), aged(rib("Sm50", 0.35, 13.5), maturity.B.At(40), maturity.B.At(30))),
		},
		{
			"two alike at the rib: over the carcass the second is the trimmer and the heavier in the round, so it wins the close pair", "1-3-2-4",
			func() class.Class {
				c := classOf(rib("Md20", 0.45, 13.8), rib("Sm50", 0.50, 13.3), rib("Sm50", 0.50, 13.2), rib("Sl20", 0.80, 12.0))
				for _, s := range []class.Site{class.FatRound, class.FatRump, class.FatLoinEdge} {
					c.Walk = append(c.Walk, class.Look{Site: s, Order: class.MustParseRanking("4 2 1=3")})
				}
				for _, s := range []class.Site{class.RoundPlumpness, class.MuscleLoin} {
					c.Walk = append(c.Walk, class.Look{Site: s, Order: class.MustParseRanking("1 3 2 4")})
				}
				return c
			}(),
		},
		{
			"five hang: Prime, two of Choice by their yields, a lean Select over the fat low Choice", "5-2-4-3-1",
			classOf(rib("Sm40", 0.90, 12.2), rib("Mt40", 0.40, 13.9), rib("Sl70", 0.30, 14.0), rib("Mt30", 0.65, 13.2), rib("SlAb30", 0.55, 13.5)),
		},
	}
	for _, tt := range tests {
		t.Run(tt.reason, func(t *testing.T) {
			g, p := placed(t, tt.class)
			if p.Order.String() != tt.want {
				t.Errorf("placed %v, want %s:", p.Order, tt.want)
				for e := 1; e <= g.Len(); e++ {
					t.Log(e, g.Assessment(e).Quality, g.Assessment(e).Yield)
				}
				t.Log(p)
			}
			if p.Cycles != nil {
				t.Errorf("cycles %v", p.Cycles)
			}
			cuts, err := p.ProposeCuts(p.Order, 0)
			if err != nil {
				t.Fatal(err)
			}
			if last := p.Neighbors()[g.Len()-2]; last.Firm && cuts.Cuts.At(g.Len()-1) < 2 {
				t.Errorf("an obvious bottom, cuts %v", cuts.Cuts)
			}
		})
	}
}

// TestPublishedStatements holds every published statement on how classes are placed
// to the policy that claims it. The statements are the rows of placing-statements.csv;
// each names its checks, which are the subtests below, and a check that is missing, or
// that no row names, fails. The pairs that a row gives are placed too, by the default
// policy.
func TestPublishedStatements(t *testing.T) {
	ran := map[string][]string{} // by the id of the row
	check := func(id, name string, f func(*testing.T)) {
		if id != "" {
			ran[id] = append(ran[id], name)
		}
		t.Run(name, f)
	}
	def := class.DefaultPolicy()
	value := class.ValuePolicy(weekly())
	// An empty id is of a statement of other files, or of a rule of our own.
	over := func(id, name string, p class.Policy, u, l grade.Carcass, ground class.Ground) {
		check(id, name, func(t *testing.T) {
			for _, c := range []class.Class{classOf(u, l), classOf(l, u)} {
				d, err := graded(t, c).Decide(p, 1, 2)
				if err != nil || d.Ground != ground || c.Exhibits[d.Upper-1].Carcass != u {
					t.Errorf("%v, %v", d, err)
				}
			}
		})
	}
	// uni-beef-judging-slides (published): carcasses are ranked on value.
	over("value", "value, against yield", value, rib("Sm20", 0.55, 13.0), rib("Sl80", 0.40, 13.5), class.ByValue)
	over("value", "value, against quality", value, rib("Sm20", 0.40, 13.5), rib("Mt20", 0.85, 12.0), class.ByValue)

	// The same: Choice of yield grade 3.5 or better is normally preferred to Select
	// of yield grade 1 or 2. 3.59 is 3.5, since tenths drop decimals.
	over("choice-over-lean-select", "Choice of 3.5", def, rib("Sm10", 0.684, 13.0), rib("Sl90", 0.30, 14.0), class.ByTier)
	over("choice-over-lean-select", "Choice of 3.59 and Select of 1.5", def, rib("Sm10", 0.684, 13.0), rib("Sl90", 0.20, 15.6), class.ByCeiling)
	over("choice-over-lean-select", "top Choice of 3.59 and Select of 1.5", def, rib("Mt10", 0.684, 13.0), rib("Sl90", 0.10, 15.9), class.ByCeiling)
	// The same: Select goes over Choice where the Choice is yield grade 3.6 or higher.
	over("lean-select-over-fat-choice", "Select over Choice of 3.6", def, rib("Sl10", 0.44, 13.0), rib("Sm90", 0.688, 13.0), class.ByCeiling)
	over("lean-select-over-fat-choice", "Select over Choice of 4.9", def, rib("Sl10", 0.44, 13.0), rib("Sm90", 1.20, 13.0), class.ByAdvantage)
	over("lean-select-over-fat-choice", "but no Select of yield grade 3", def, rib("Sm10", 0.80, 13.0), rib("Sl90", 0.45, 13.0), class.ByTier)

	// The same: B with Slight or Small is Standard and belongs in the bottom pair.
	older := aged(rib("Sm60", 0.20, 15.0), maturity.B.At(40), maturity.B.At(40))
	over("old-not-shown", "B with Small", def, rib("Sl10", 0.90, 12.0), older, class.ByBottom)
	older.Marbling = grade.MustParseMarbling("Sl60")
	over("old-not-shown", "B with Slight", def, rib("Sl10", 0.90, 12.0), older, class.ByBottom)

	// uni-carcass-placing-slides (published): C or older goes to the bottom.
	over("old-to-bottom", "C", def, rib("Sl10", 0.90, 12.0), aged(rib("SlAb60", 0.20, 15.0), maturity.C.At(20), maturity.C.At(20)), class.ByBottom)
	// The same: marbling is the primary indicator of quality where maturity is alike.
	over("quality-and-yield", "marbling", def, rib("Md10", 0.50, 13.0), rib("Sm90", 0.50, 13.0), class.ByTier)
	over("quality-and-yield", "marbling within a tier", def, rib("Sm90", 0.50, 13.0), rib("Sm10", 0.50, 13.0), class.ByMarbling)
	// The same: very heavy and very light carcasses are discounted; 600 to 800 lb
	// fits. The grid takes off by the hundredweight.
	value.ByCwt = true
	over("quality-and-yield", "very heavy", value, rib("Sm20", 0.50, 13.0), steer("Sm20", 0.50, 18.0, 2.5, 1150), class.ByValue)
	over("quality-and-yield", "very light", value, rib("Sm20", 0.50, 13.0), steer("Sm20", 0.50, 9.0, 2.5, 480), class.ByValue)

	// A class all of Choice or all of Select is decided on cutability; a quality
	// class has pairs alike in cutability and unlike in quality
	// (uni-beef-judging-slides, published).
	strict := class.CutabilityPolicy()
	over("one-grade-class", "all Choice", strict, rib("Sm10", 0.40, 13.0), rib("Md90", 0.45, 13.0), class.ByYield)
	over("one-grade-class", "all Select", strict, rib("Sl10", 0.40, 13.0), rib("Sl90", 0.45, 13.0), class.ByYield)
	over("one-grade-class", "all Select, by the default too", def, rib("Sl10", 0.30, 13.0), rib("Sl90", 0.60, 13.0), class.ByYield)
	over("one-grade-class", "a quality pair", def, rib("Mt10", 0.50, 13.0), rib("Sm10", 0.45, 13.0), class.ByTier)

	// uni-placing-notes (published, of low authority): 1.5 lifts over one tier, 2.0
	// over two; between them, over two, quality stays (derived).
	for _, p := range []class.Policy{def, class.NotesPolicy()} {
		over("", "1.5 over one tier, "+p.Name, p, rib("Mt10", 0.40, 13.0), rib("SlAb10", 1.00, 13.0), class.ByAdvantage)
		over("", "under 1.5, "+p.Name, p, rib("SlAb10", 0.99, 13.0), rib("Mt10", 0.40, 13.0), class.ByTier)
		over("", "2.0 over two tiers, "+p.Name, p, rib("Sm10", 0.40, 13.0), rib("SlAb10", 1.20, 13.0), class.ByAdvantage)
		over("", "1.9 over two tiers, "+p.Name, p, rib("SlAb10", 1.16, 13.0), rib("Sm10", 0.40, 13.0), class.ByTier)
	}
	// Our own: 3.0 over three; by the notes three are never overcome.
	over("", "3.0 over three tiers", def, rib("Sl10", 0.20, 13.0), rib("SlAb10", 1.40, 13.0), class.ByAdvantage)
	over("", "under 3.0", def, rib("SlAb10", 1.39, 13.0), rib("Sl10", 0.20, 13.0), class.ByTier)
	over("", "three by the notes", class.NotesPolicy(), rib("SlAb10", 1.40, 13.0), rib("Sl10", 0.20, 13.0), class.ByTier)

	// Common practice, no source: top Choice asks for group A.
	over("top-choice-in-a", "top Choice asks for A", def, rib("Mt00", 0.60, 13.0), aged(rib("Md90", 0.50, 13.0), maturity.B.At(20), maturity.B.At(10)), class.ByTier)
	// From memory: a dark cutter of two thirds or the whole of a grade goes to the
	// bottom, one of a third does not.
	over("dark-to-bottom", "dark by two thirds", def, rib("Sl10", 0.90, 12.0), darkened(rib("Md60", 0.30, 14.0), grade.DarkTwoThirds), class.ByBottom)
	over("dark-to-bottom", "dark by a third", def, darkened(rib("Md60", 0.30, 14.0), grade.DarkThird), rib("Sl10", 0.90, 12.0), class.ByTier)

	// uni-beef-judging-slides (published): a common class is one Select of yield
	// grade 1 or 2, one Choice of 4, two Choice of 1 or 2: Select over the fat Choice
	// in the bottom pair, the top pair by cutability or quality.
	check("common-class", "the common class", func(t *testing.T) {
		_, p := placed(t, classOf(rib("Sm50", 0.80, 12.6), rib("Sl50", 0.30, 14.4), rib("Sm60", 0.35, 14.0), rib("Sm40", 0.35, 14.0)))
		if p.Order != placing.MustParseOrder("3-4-2-1") {
			t.Errorf("placed %v", p.Order)
		}
	})

	// Every term that is published has a fact of a reason under its heading. A sirloin is
	// looked at with the loin.
	site := func(s class.Site) class.Fact { return class.Fact{Trait: grade.TraitSite, Site: s} }
	trait := func(t grade.Trait) class.Fact { return class.Fact{Trait: t} }
	facts := map[string]map[string]class.Fact{
		"terms-trimness": {
			"ribeye": trait(grade.TraitFat), "lower rib": site(class.FatRib), "round": site(class.FatRound), "sirloin": site(class.FatHip), "loin edge": site(class.FatLoinEdge), "rib": site(class.FatRib),
			"chuck": site(class.FatClod), "brisket": site(class.FatBrisket), "kidney": trait(grade.TraitKPH), "pelvic and heart fat": trait(grade.TraitKPH), "cod or udder": site(class.FatCod),
		},
		"terms-muscling": {
			"ribeye": trait(grade.TraitRibeye), "round": site(class.RoundPlumpness), "sirloin": site(class.MuscleLoin), "short loin": site(class.MuscleLoin), "rib": site(class.MuscleRib), "chuck": site(class.MuscleClod),
		},
		"terms-quality": {"marbling": trait(grade.TraitMarbling), "color": trait(grade.TraitColor), "texture": trait(grade.TraitTexture), "firmness": trait(grade.TraitFirmness)},
	}
	rows := refs.Rows(t, "../../testdata/references", "placing-statements.csv")
	for _, r := range rows {
		id := r.Get("id")
		if terms := facts[id]; terms != nil {
			check(id, "a fact for every term", func(t *testing.T) {
				heading := map[string]class.Heading{"terms-trimness": class.OnTrimness, "terms-muscling": class.OnMuscling, "terms-quality": class.OnQuality}[id]
				stated := strings.Split(r.Get("statement"), ", ")
				for _, term := range stated {
					if f, ok := terms[term]; !ok || f.Heading() != heading {
						t.Errorf("%s: %v, under %v", term, ok, f.Heading())
					}
				}
				if len(stated) != len(terms) {
					t.Errorf("%d terms, %d facts", len(stated), len(terms))
				}
			})
		}
		uppers, err := statedPairs(r.Get("over"))
		if err != nil {
			t.Fatal(err)
		}
		lowers, err := statedPairs(r.Get("under"))
		if err != nil {
			t.Fatal(err)
		}
		if len(uppers) > 0 {
			check(id, "the pairs of the row", func(t *testing.T) {
				for _, u := range uppers {
					for _, l := range lowers {
						d, err := graded(t, classOf(shown(t, l), shown(t, u))).Decide(def, 1, 2)
						if err != nil || d.Upper != 2 || d.Ground == 0 {
							t.Errorf("%v %v over %v %v: %v, %v", u.Quality, u.Yield, l.Quality, l.Yield, d, err)
						}
					}
				}
			})
		}
	}
	check("round-shows-lean", "what to look for on the round", func(t *testing.T) {
		sentence, from := class.FatRound.LookFor()
		if !strings.Contains(sentence, "the more purple or blue shows, the less fat") || from.Standing != cite.CommonPractice {
			t.Errorf("%q (%v)", sentence, from)
		}
	})
	check("buttons", "white and soft buttons", func(t *testing.T) {
		if b := maturity.WhiteAndSoft; b.Group() != maturity.A || !b.Goes(maturity.A.At(99)) || b.Goes(maturity.B.At(0)) {
			t.Errorf("%v go with %v", b, b.Group())
		}
	})
	for _, r := range rows {
		want := strings.Split(r.Get("checks"), "; ")
		got := ran[r.Get("id")]
		delete(ran, r.Get("id"))
		slices.Sort(want)
		slices.Sort(got)
		if diff := cmp.Diff(want, got); diff != "" {
			t.Errorf("%s line %d, %s: checks (-named by the row +run):\n%s", r.File, r.Line, r.Get("id"), diff)
		}
	}
	for id := range ran {
		t.Errorf("%s: checks of a row that there is not", id)
	}
}

// shown makes a steer of the quality and the yield, at the first marbling and age of a
// net that give the quality: its yield is 0.92 + 2.5 fat.
func shown(t *testing.T, p statedPair) grade.Carcass {
	t.Helper()
	for _, at := range []maturity.Score{maturity.A.At(55), maturity.C.At(50)} {
		for m := grade.Devoid.At(0); m <= grade.Abundant.At(100); m += 10 {
			c := aged(rib(m.String(), 0, 16.0), at, at)
			c.Measures.Fat = grade.ThicknessUnits((p.Yield.Units() - 92_000_000) / 25_000)
			a, err := grade.Current.Assess(c)
			if err == nil && a.Quality == p.Quality && a.Yield == p.Yield {
				return c
			}
		}
	}
	t.Fatalf("no carcass of %v %v", p.Quality, p.Yield)
	return grade.Carcass{}
}
