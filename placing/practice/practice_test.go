package practice_test

import (
	"crypto/sha256"
	"errors"
	"fmt"
	"slices"
	"strconv"
	"strings"
	"testing"

	"example.com/ribface/grade"
	"example.com/ribface/grade/price"
	"example.com/ribface/internal/refs"
	"example.com/ribface/internal/testkit/faulttest"
	"example.com/ribface/internal/testkit/golden"
	"example.com/ribface/maturity"
	"example.com/ribface/placing"
	"example.com/ribface/placing/class"
	"example.com/ribface/placing/contest"
	"example.com/ribface/placing/practice"
	"github.com/google/go-cmp/cmp"
	"github.com/shopspring/decimal"
	"pgregory.net/rapid"
)

func herds() []practice.Herd { return slices.Collect(practice.Herds()) }

// TestSeed pins whole classes: the same seed gives the same class on every
// processor.
func TestSeed(t *testing.T) {
	for _, tt := range []struct {
		name string
		seed uint64
		spec practice.Spec
	}{
		{"plain", 7, practice.Spec{}},
		{"hard, close pairs", 1 << 63, practice.Spec{Difficulty: practice.Hard, Shape: practice.ClosePairs, LeastCut: 1}},
		{"six, three grades, wide", 2026, practice.Spec{Exhibits: 6, LeastGrades: 3, Spread: 150, Herd: herds()[0]}},
	} {
		t.Run(tt.name, func(t *testing.T) {
			c, err := practice.Make(tt.seed, tt.spec)
			faulttest.Text(t, err, "")
			got := c.String() + c.Official.String() + "\n"
			file := "testdata/" + strings.ReplaceAll(strings.ReplaceAll(tt.name, ", ", "-"), " ", "-") + ".txt"
			golden.Compare(t, file, got)
		})
	}
}

// TestManySeeds pins 300 classes by the hash of their text, so that a change of the
// draws too small for the classes above shows too.
func TestManySeeds(t *testing.T) {
	h := sha256.New()
	for seed := range uint64(300) {
		spec := practice.Spec{}
		if seed%3 == 0 {
			spec.Shape = practice.CloseMiddle
		}
		c, err := practice.Make(seed, spec)
		faulttest.Text(t, err, "")
		_, _ = fmt.Fprint(h, c, c.Official) // a hash takes every write
		if cuts := c.Official.Cuts(); spec.Shape != 0 && (cuts.At(2) >= cuts.At(1) || cuts.At(2) >= cuts.At(3)) {
			t.Errorf("seed %d: cuts %v have no close middle", seed, cuts)
		}
	}
	golden.Compare(t, "testdata/seeds.txt", fmt.Sprintf("%x\n", h.Sum(nil)))
}

// TestLightHerd holds a class to the least weight that is drawn, 400 lb in its
// middle, and takes the widest spread that a trait may have.
func TestLightHerd(t *testing.T) {
	h := herds()[0]
	h.Weight, h.WeightSpread = grade.Pounds(300), grade.Pounds(0)
	c, err := practice.Make(1, practice.Spec{Herd: h})
	faulttest.Text(t, err, "")
	for e := range c.Graded.Exhibits() {
		if w := e.Carcass.Measures.Weight; w.Compare(grade.Pounds(375)) < 0 || w.Compare(grade.Pounds(425)) > 0 {
			t.Errorf("exhibit %d: %v", e.Number, w)
		}
	}
	h = herds()[0]
	h.FatSpread = grade.Inches(3)
	_, err = practice.Make(1, practice.Spec{Herd: h})
	faulttest.Text(t, err, "")
}

// TestHerds holds the herds against the published audits, spreads and the trial.
func TestHerds(t *testing.T) {
	read := func(name string) []refs.Row { return refs.Rows(t, "../../testdata/references", name) }
	// traits puts measures as they are printed, by trait, into a herd's own.
	traits := func(of map[string]string) (m grade.Measures) {
		t.Helper()
		var errs [4]error
		m.Weight, errs[0] = grade.ParseWeight(of["HCW"])
		m.Fat, errs[1] = grade.ParseThickness(of["fat"])
		m.Ribeye, errs[2] = grade.ParseArea(of["REA"])
		m.KPH, errs[3] = grade.ParseShare(of["KPH"])
		if err := errors.Join(errs[:]...); err != nil {
			t.Fatal(err)
		}
		return m
	}
	trial := func(column string) map[string]string {
		of := map[string]string{}
		for _, row := range read("trait-correlations.csv") {
			if row.Get("kind") == "spread" {
				of[map[string]string{"weight": "HCW", "fat": "fat", "ribeye": "REA", "KPH": "KPH"}[row.Get("x")]] = row.Get(column)
			}
		}
		return of
	}
	spread := map[string]string{}
	for _, row := range read("audit-spreads.csv") {
		if row.Get("subject") == "24 Angus steers" {
			spread[row.Get("trait")] = strings.ReplaceAll(row.Get("sd")+" "+row.Get("unit"), " %", "%")
		}
	}
	of := func(h practice.Herd, means, spreads grade.Measures) practice.Herd {
		h.Weight, h.Fat, h.Ribeye, h.KPH = means.Weight, means.Fat, means.Ribeye, means.KPH
		h.WeightSpread, h.FatSpread, h.RibeyeSpread, h.KPHSpread = spreads.Weight, spreads.Fat, spreads.Ribeye, spreads.KPH
		h.MarblingSpread = 127
		return h
	}
	steers := traits(spread)
	found := 0
	for i, h := range herds() {
		cited := "published: jas-2020-skaa287"
		var want practice.Herd
		if i == 0 {
			found++
			cited = "derived: marbling-trial-2010"
			want = of(h, traits(trial("mean")), traits(trial("sd")))
			want.Marbling = herds()[1].Marbling
		}
		for _, row := range read("audit-means.csv") {
			if row.Get("source_id") != h.Means.IDs {
				continue
			}
			found++
			want = of(h, traits(map[string]string{"HCW": row.Get("hcw"), "fat": row.Get("fat"), "REA": row.Get("rea"), "KPH": row.Get("kph")}), steers)
			m, err := grade.ParseMarbling(row.Get("marbling"))
			faulttest.Text(t, err, "")
			want.Marbling = m
		}
		if d := cmp.Diff(want, h); d != "" {
			t.Errorf("%s (-want +got):\n%s", h.Name, d)
		}
		if h.Spreads.String() != cited || h.Marblings.String() != "derived: nbqa-2016-inplant" || h.Correlations.String() != "derived: marbling-trial-2010" || i > 0 && h.Means.Standing.String() != "published" {
			t.Errorf("%s: cited as %v, %v, %v, %v", h.Name, h.Means, h.Spreads, h.Marblings, h.Correlations)
		}
	}
	if found != 4 {
		t.Errorf("%d herds found in the references, want 4", found)
	}
}

// TestWanted: whatever is asked for is what comes.
func TestWanted(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		spec := practice.Spec{
			Difficulty:  practice.Difficulty(rapid.IntRange(0, 3).Draw(t, "difficulty")),
			Shape:       practice.Shape(rapid.IntRange(0, 3).Draw(t, "shape")),
			LeastCut:    rapid.IntRange(0, 1).Draw(t, "least cut"),
			LeastGrades: rapid.IntRange(0, 2).Draw(t, "grades"),
			Herd:        rapid.SampledFrom(herds()).Draw(t, "herd"),
		}
		c, err := practice.Make(rapid.Uint64().Draw(t, "seed"), spec)
		if err != nil {
			t.Fatal(err)
		}
		cuts := c.Official.Cuts()
		total := cuts.Total()
		a, b, d := cuts.At(1), cuts.At(2), cuts.At(3)
		ok := map[practice.Difficulty]bool{0: true, practice.Hard: total <= 8, practice.Medium: total >= 9 && total <= 12, practice.Easy: total >= 13}[spec.Difficulty] &&
			map[practice.Shape]bool{0: true, practice.CloseMiddle: b < a && b < d, practice.ClosePairs: b > a && b > d, practice.ClearSteps: max(a, b, d)-min(a, b, d) <= 1}[spec.Shape] &&
			min(a, b, d) >= spec.LeastCut && cuts.NeverNegative()
		if !ok {
			t.Fatalf("asked for %+v, got cuts %v", spec, cuts)
		}
		// The key is what the library says of the class, asked again.
		g, err := c.Graded.Class().Grade()
		if err != nil {
			t.Fatal(err)
		}
		p, err := g.Place(class.DefaultPolicy())
		if err != nil {
			t.Fatal(err)
		}
		if p.Order != c.Official.Order() || len(p.Cycles) > 0 || p.Equal != 1 {
			t.Fatalf("placed %v, key %v", p.Order, c.Official)
		}
		grades := map[grade.Grade]bool{}
		var least, most int64
		for e := range c.Graded.Exhibits() {
			m := e.Carcass.Measures
			if m.Fat.Units()%500 != 0 || m.Ribeye.Units()%1000 != 0 || m.KPH.Units()%5000 != 0 || m.Weight.Units()%10_000 != 0 || e.Carcass.Marbling%10 != 0 {
				t.Fatalf("measures off their steps: %+v", m)
			}
			if w := m.Weight.Units(); least == 0 || w < least {
				least = w
			}
			most = max(most, m.Weight.Units())
			grades[c.Graded.Assessment(e.Number).Quality.Grade()] = true
			if s := e.Carcass.Maturity.Skeletal; s < maturity.A.At(30) || s > maturity.A.At(70) {
				t.Fatalf("skeletal %v", s)
			}
		}
		if most-least > 50*10_000 {
			t.Fatalf("weights %v to %v", least, most)
		}
		if len(grades) < spec.LeastGrades {
			t.Fatalf("%d grades, want %d", len(grades), spec.LeastGrades)
		}
		for _, d := range p.Neighbors() {
			if d.Ground == 0 {
				t.Fatalf("a pair that cannot be told apart: %v", d)
			}
		}
	})
}

func TestSpread(t *testing.T) {
	grades := func(spread int) (n int) {
		for seed := range uint64(60) {
			c, err := practice.Make(seed, practice.Spec{Spread: spread})
			faulttest.Text(t, err, "")
			seen := map[grade.Quality]bool{}
			for i := range 4 {
				seen[c.Graded.Assessment(i+1).Quality] = true
			}
			n += len(seen)
		}
		return n
	}
	narrow, usual, wide := grades(30), grades(100), grades(250)
	if narrow >= usual || usual >= wide {
		t.Errorf("different qualities in 60 classes: %d, %d, %d, want them to rise with the spread", narrow, usual, wide)
	}
}

func TestRefused(t *testing.T) {
	herd := func(change func(*practice.Herd), grades ...int) practice.Spec {
		s := practice.Spec{Herd: herds()[0]}
		change(&s.Herd)
		for _, n := range grades {
			s.LeastGrades = n
		}
		return s
	}
	for _, tt := range []struct {
		name string
		spec practice.Spec
		want string
	}{
		{"one exhibit", practice.Spec{Exhibits: 1}, "exhibits: 1: out of range; allowed: 2 to 12"},
		{"thirteen", practice.Spec{Exhibits: 13}, "exhibits: 13: out of range; allowed: 2 to 12"},
		{"spread", practice.Spec{Spread: 401}, "spread: 401: out of range; allowed: 1 to 400"},
		{"spread below 0", practice.Spec{Spread: -1}, "spread: -1: out of range; allowed: 1 to 400"},
		{"grades", practice.Spec{LeastGrades: 5}, "least grades: 5: out of range; allowed: 0 to 4"},
		{"cut", practice.Spec{LeastCut: 9}, "least cut: 9: out of range; allowed: 0 to 8"},
		{"difficulty", practice.Spec{Difficulty: 4}, "difficulty: difficulty(4): unknown; allowed: hard, medium, easy"},
		{"shape", practice.Spec{Shape: 4}, "shape: shape(4): unknown; allowed: close middle, close pairs, clear steps"},
		{"shape of five", practice.Spec{Exhibits: 5, Shape: practice.ClearSteps}, "shape: clear steps: out of range; allowed: none but in a class of four"},
		{"hard with great cuts", practice.Spec{Difficulty: practice.Hard, LeastCut: 3}, "least cut: 3 in a class of 4, hard: out of range; allowed: one that the size, the difficulty and the shape of the class leave room for"},
		{"a shape without room", practice.Spec{Shape: practice.ClosePairs, LeastCut: 5}, "least cut: 5 in a class of 4, close pairs: out of range; allowed: one that the size, the difficulty and the shape of the class leave room for"},
		{"a cut in every pair of seven", practice.Spec{Exhibits: 7, LeastCut: 1}, "least cut: 1 in a class of 7: out of range; allowed: one that the size, the difficulty and the shape of the class leave room for"},
		{"an easy class of eight", practice.Spec{Exhibits: 8, Difficulty: practice.Easy}, "difficulty: easy: out of range; allowed: hard or medium in a class of eight or more"},
		{"grades that steers do not have", practice.Spec{Exhibits: 6, LeastGrades: 5}, "least grades: 5: out of range; allowed: up to 4, which the marbling of the herd can have"},
		{"grades further away than any draw", herd(func(h *practice.Herd) { h.Marbling, h.MarblingSpread = grade.MustParseMarbling("Sm50"), 5 }, 2), "least grades: 2: out of range; allowed: up to 1, which the marbling of the herd can have"},
		{"grades without spread", herd(func(h *practice.Herd) { h.MarblingSpread = 0 }, 2), "least grades: 2: out of range; allowed: up to 1, which the marbling of the herd can have"},
		{"a grid without a price", practice.Spec{Sex: grade.Bull, Policy: class.ValuePolicy(price.Offer{Name: "five tiers", Base: decimal.New(300, 0), Tiers: []price.TierAmount{{Tier: grade.PrimeTier}, {Tier: grade.TopChoice}, {Tier: grade.LowChoice}, {Tier: grade.SelectTier}, {Tier: grade.StandardTier}}})}, each(4, ": tier: below standard: no price; allowed: prime, top choice, low choice, select, standard")},
		{"sex", practice.Spec{Sex: 9}, each(4, ": sex class: sex class(9): unknown; allowed: steer, heifer, cow, bullock, bull")},
		{"policy", practice.Spec{Policy: class.Policy{Tiers: [][]grade.Tier{}}}, ""},
		{"herd without fat", herd(func(h *practice.Herd) { h.Fat = grade.ThicknessUnits(-1) }), "herd: fat: -0.0001 in: out of range; allowed: 0 in to 3 in"},
		{"herd without marbling", herd(func(h *practice.Herd) { h.Marbling = 0 }), "herd: marbling: missing; allowed: Devoid00 to Ab100"},
		{"herd with a spread below 0", herd(func(h *practice.Herd) { h.WeightSpread = grade.WeightUnits(-1) }), "herd: spread of weight: out of range; allowed: 0 to the greatest value of the trait"},
		{"herd too wide", herd(func(h *practice.Herd) { h.MarblingSpread = 1001 }), "herd: spread of marbling: out of range; allowed: 0 to the greatest value of the trait"},
	} {
		t.Run(tt.name, func(t *testing.T) {
			_, err := practice.Make(1, tt.spec)
			if tt.want == "" {
				if err == nil {
					t.Error("taken")
				}
				return
			}
			faulttest.Text(t, err, tt.want)
		})
	}
	for _, edge := range []practice.Spec{{Exhibits: 2}, {Exhibits: 12}, {Spread: 1}, {Spread: 400}, {LeastGrades: 4, Spread: 400}, {Exhibits: 2, LeastCut: 8}, {LeastCut: 3},
		// Cuts that use up all the points there are.
		{Exhibits: 5, Difficulty: practice.Hard, LeastCut: 2},
		// Marbling of 95 and more is read as the next degree.
		herd(func(h *practice.Herd) { h.Marbling, h.MarblingSpread = grade.MustParseMarbling("Sl94"), 1 }, 2)} {
		_, err := practice.Make(1, edge)
		faulttest.Text(t, err, "")
	}
	// A policy that looks at marbling alone, and a herd that has one marbling.
	level := herd(func(h *practice.Herd) { h.MarblingSpread = 0 })
	level.Policy = class.NotesPolicy()
	level.Policy.Ties = []class.Ground{class.ByMarbling}
	_, err := practice.Make(1, level)
	faulttest.Text(t, err, "herd: spread of marbling: none: out of range; allowed: some, for a policy that looks at nothing else within a tier")
	// Select is nearly six standard deviations away: possible, and never met.
	never := herd(func(h *practice.Herd) { h.Marbling, h.MarblingSpread = grade.MustParseMarbling("Sm23"), 5 }, 2)
	_, err = practice.Make(1, never)
	faulttest.Text(t, err, "spec: seed 1: out of range; allowed: a class that 20,000 draws can give")
}

// TestDifficultyOfLargeClasses makes a class of every difficulty that a size has.
func TestDifficultyOfLargeClasses(t *testing.T) {
	for n := 5; n <= 12; n++ {
		for d := practice.Hard; d <= practice.Easy; d++ {
			if d == practice.Easy && n > 7 {
				continue
			}
			c, err := practice.Make(uint64(n), practice.Spec{Exhibits: n, Difficulty: d})
			if err != nil {
				t.Errorf("%d exhibits, %v: %v", n, d, err)
				continue
			}
			p, err := c.Placing.ProposeCuts(c.Placing.Order, 0)
			faulttest.Text(t, err, "")
			hard, easy := p.Asked <= 8, p.Asked >= 13
			if hard != (d == practice.Hard) || easy != (d == practice.Easy) {
				t.Errorf("%d exhibits, %v: a total of %d was asked for", n, d, p.Asked)
			}
		}
	}
}

// TestKey: the facts and the key of a class make a contest that scores its own key
// in full.
func TestKey(t *testing.T) {
	c, err := practice.Make(3, practice.Spec{})
	faulttest.Text(t, err, "")
	if d := cmp.Diff(contest.OfficialPlacing{Class: "invented class 3", Order: c.Official.Order(), Cuts: c.Official.Cuts()}, c.Key(), cmp.AllowUnexported(placing.Order{}, placing.Cuts{})); d != "" {
		t.Errorf("(-want +got):\n%s", d)
	}
	facts := c.Facts()
	if len(facts) != 4 {
		t.Fatalf("%d facts", len(facts))
	}
	for i, f := range facts {
		a := c.Graded.Assessment(i + 1)
		if f.Class != "invented class 3" || f.Exhibit != i+1 || f.Facts.Yield != a.Yield || f.Facts.Quality != a.Quality {
			t.Errorf("facts %+v", f)
		}
	}
	if c.Seed != 3 || c.Draws < 1 || c.Spec.Exhibits != 4 || c.Spec.Spread != 100 || c.Spec.Sex != grade.Steer || c.Spec.Rules.Edition != grade.Current {
		t.Errorf("class %d, %d draws, spec %+v", c.Seed, c.Draws, c.Spec)
	}
}

// each is the text of an error that tells the same of every exhibit.
func each(n int, what string) string {
	all := make([]string, n)
	for i := range all {
		all[i] = "exhibit " + strconv.Itoa(i+1) + what
	}
	return strings.Join(all, "\n")
}
