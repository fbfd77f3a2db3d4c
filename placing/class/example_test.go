package class_test

import (
	"encoding/json"
	"fmt"

	"example.com/ribface/grade"
	"example.com/ribface/maturity"
	"example.com/ribface/placing"
	"example.com/ribface/placing/class"
)

// exampleClass is an invented class of four steers.
func exampleClass() class.Class {
	young := maturity.Evidence{Skeletal: maturity.A.At(60), Lean: maturity.A.At(50)}
	exhibit := func(number int, m grade.Marbling, fat, ribeye, kph float64) class.Exhibit {
		return class.Exhibit{Number: number, Carcass: grade.Carcass{
			Sex: grade.Steer, Maturity: young, Marbling: m,
			Measures: grade.Measures{Fat: grade.Inches(fat), Ribeye: grade.SquareInches(ribeye), KPH: grade.Percent(kph)},
		}}
	}
	return class.Class{
		Rules:  grade.Rules{Edition: grade.Current},
		Posted: grade.Pounds(800),
		Exhibits: []class.Exhibit{
			exhibit(1, grade.Small.At(40), 0.50, 13.4, 2.5),
			exhibit(2, grade.Slight.At(60), 0.30, 14.6, 2.0),
			exhibit(3, grade.Modest.At(50), 0.60, 13.0, 3.0),
			exhibit(4, grade.Traces.At(80), 0.70, 11.8, 3.5),
		},
		Walk: class.Walk{
			{Site: class.FatRump, Order: class.MustParseRanking("1 4 3 2")},
			{Site: class.FatBrisket, Order: class.MustParseRanking("1 3=4 2")},
			{Site: class.MuscleLoin, Order: class.MustParseRanking("2 1 3 4")},
		},
	}
}

func exampleGraded() class.Graded {
	g, err := exampleClass().Grade()
	if err != nil {
		panic(err)
	}
	return g
}

func examplePlacing() class.Placing {
	p, err := exampleGraded().Place(class.DefaultPolicy())
	if err != nil {
		panic(err)
	}
	return p
}

func Example() {
	g, err := exampleClass().Grade()
	if err != nil {
		fmt.Println(err)
		return
	}
	p, err := g.Place(class.DefaultPolicy())
	if err != nil {
		fmt.Println(err)
		return
	}
	cuts, _ := p.ProposeCuts(p.Order, placing.LimitColorado)
	fmt.Println(p.Order, "cuts", cuts.Cuts)
	for e := range p.Order.Exhibits() {
		a := g.Assessment(e)
		fmt.Println(e, a.Quality, a.Yield)
	}
	// Output:
	// 3-1-2-4 cuts 3-2-8
	// 3 Average Choice 3.48
	// 1 Low Choice 3.002
	// 2 High Select 2.018
	// 4 High Standard 4.214
}

func ExampleClass() {
	c := exampleClass()
	c.Exhibits[3].Carcass.Measures.Ribeye = grade.Area{}
	_, err := c.Grade()
	fmt.Println(err)
	// Output: exhibit 4: ribeye: missing; allowed: 1 sq in to 25 sq in
}

func ExampleClass_Grade() {
	g, err := exampleClass().Grade()
	fmt.Println(g.Len(), g.Assessment(2).Quality, err)
	// Output: 4 High Select <nil>
}

func ExampleClass_Adjust() {
	c := exampleClass()
	adjusted, err := c.Adjust(1, grade.Inches(0.2))
	if err != nil {
		fmt.Println(err)
		return
	}
	before, _ := c.Grade()
	after, _ := adjusted.Grade()
	fmt.Println(before.Assessment(1).Yield, "becomes", after.Assessment(1).Yield)
	// Output: 3.002 becomes 3.502
}

func ExampleGraded() {
	g := exampleGraded()
	fmt.Println(g.Len(), g.Class().Posted, len(g.Class().Walk))
	for e := range g.Exhibits() {
		fmt.Println(e.Number, e.Carcass.Marbling, e.Carcass.Measures.Weight)
	}
	// Output:
	// 4 800 lb 3
	// 1 Sm40 800 lb
	// 2 Sl60 800 lb
	// 3 Mt50 800 lb
	// 4 Tr80 800 lb
}

func ExampleGraded_Cautions() {
	c := exampleClass()
	c.Walk = nil
	g, _ := c.Grade()
	fmt.Println(g.Cautions()[0])
	// Output: every exhibit is graded at the posted weight of 800 lb, not at its own
}

func ExampleGraded_Represent() {
	for _, f := range exampleGraded().Represent() {
		fmt.Println(f)
		fmt.Println("usual:", f.Usual[0], "to", f.Usual[1], f.Cite)
	}
	// Output:
	// 1 is fatter than its rib shows, over the rump and in the brisket.
	// usual: 0.1 in to 0.2 in official: cfr-1965-53-p26
}

func ExampleGraded_Place() {
	p, err := exampleGraded().Place(class.DefaultPolicy())
	fmt.Println(p.Order, p.Equal, len(p.Cycles), err)
	// Output: 3-1-2-4 1 0 <nil>
}

func ExamplePlacing() {
	p := examplePlacing()
	d, _ := p.Decision(1, 2)
	fmt.Println(d)
	fmt.Println(len(p.Decisions), "pairs,", len(p.Neighbors()), "of neighbors")
	// Output:
	// 1 over 2 by quality tier, 1 tier better in quality, yield higher by 0.984; margin 0.598
	// 6 pairs, 3 of neighbors
}

// A cycle: Prime over top Choice, top Choice over low Choice, and low Choice over
// Prime by its yield.
func ExamplePlacing_String() {
	p, _ := func() (class.Placing, error) {
		g, err := cycle().Grade()
		if err != nil {
			return class.Placing{}, err
		}
		return g.Place(class.DefaultPolicy())
	}()
	fmt.Println(p.Order)
	fmt.Println(p)
	// Output:
	// 1-2-3
	// 1 over 2 by quality tier, 1 tier better in quality, yield higher by 1.2; margin 0.3.
	// 2 over 3 by quality tier, 1 tier better in quality, yield higher by 1; margin 0.5.
	// The policy runs in a cycle: 1 over 2, 2 over 3 and 3 over 1.
	// In the cycle: 1 over 2 by quality tier, 1 tier better in quality, yield higher by 1.2; margin 0.3.
	// In the cycle: 3 over 1 by yield advantage, 2 tiers lower in quality, yield lower by 2.2; margin 0.2, close.
	// In the cycle: 2 over 3 by quality tier, 1 tier better in quality, yield higher by 1; margin 0.5.
	// Resolved by the least total margin against it: the placing goes against 3 over 1 (margin 0.2).
}

func ExampleDefaultPolicy() {
	for _, r := range class.DefaultPolicy().Steps() {
		fmt.Println(r.Name+":", r.Cite)
	}
	// Output:
	// bottom: published: uni-beef-judging-slides
	// bottom: published: uni-carcass-placing-slides
	// bottom: from memory
	// quality: published: uni-placing-notes
	// top Choice: common practice, no source
	// yield advantage: published: uni-placing-notes
	// yield advantage: published: uni-placing-notes
	// yield advantage: no source given
	// Choice against Select: published: uni-beef-judging-slides
	// Choice against Select: published: uni-beef-judging-slides
	// within a tier: no source given
	// within a tier: published: uni-beef-judging-slides
	// close: no source given
	// walk: published: uni-beef-judging-slides
}

// A policy of one's own: quality alone, with all of Choice as one tier.
func ExamplePolicy() {
	p := class.Policy{
		Name: "quality alone",
		Tiers: [][]grade.Tier{
			{grade.PrimeTier}, {grade.TopChoice, grade.LowChoice}, {grade.SelectTier}, {grade.StandardTier}, {grade.BelowStandard},
		},
		Ties: []class.Ground{class.ByYield, class.ByMarbling},
	}
	placed, err := exampleGraded().Place(p)
	fmt.Println(placed.Order, err)
	// Output: 1-3-2-4 <nil>
}

func ExamplePolicy_Check() {
	p := class.DefaultPolicy()
	p.Advantages[1].Yield = grade.Grades(1)
	fmt.Println(p.Check())
	// Output: policy: advantage 2: yield: 1: out of range; allowed: over 1.5, up to 10
}

func ExampleGround() {
	fmt.Println(class.ByTier, class.Ground(0))
	// Output: quality tier unset
}

func ExampleDecision_String() {
	for _, d := range examplePlacing().Neighbors() {
		fmt.Println(d)
	}
	// Output:
	// 3 over 1 by quality tier, 1 tier better in quality, yield higher by 0.478; margin 1.322
	// 1 over 2 by quality tier, 1 tier better in quality, yield higher by 0.984; margin 0.598
	// 2 over 4 by bottom of the class, 1 tier better in quality, yield lower by 2.196; no yield could turn it
}

func ExampleGraded_Reasons() {
	// What a committee settled, which is not what the policy would do.
	r, err := exampleGraded().Reasons(placing.MustParseOrder("1-3-2-4"), class.DefaultPolicy())
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, p := range r.Pairs {
		fmt.Println(p.Name, p.Upper, "over", p.Lower, "on", p.On)
	}
	// Output:
	// top pair 1 over 3 on cutability
	// middle pair 3 over 2 on quality
	// bottom pair 2 over 4 on quality
}

func ExampleReasons_Spoken() {
	r, _ := exampleGraded().Reasons(placing.MustParseOrder("3-1-2-4"), class.DefaultPolicy())
	for _, s := range r.Spoken() {
		fmt.Println(s)
	}
	// Output:
	// I placed the steer carcasses 3, 1, 2, 4.
	// In the top pair I placed 3 over 1 on quality. 3 had more marbling and should grade average Choice, where 1 is low Choice. 3 was also trimmer over the rump and carried less fat in the brisket. I grant that 1 had less fat opposite a slightly larger ribeye and should have the lower yield grade, and that it had a thicker loin.
	// I then placed 1 over 2 in the middle pair, again on quality. 1 showed a higher degree of marbling and should make Choice, while 2 is Select. I realize that 2 had less fat opposite a larger ribeye and should have the lower yield grade, and that it was trimmer over the rump and carried less fat in the brisket.
	// In the bottom pair it was again quality that put 2 over 4. 2 had more marbling and should reach Select, where 4 is Standard. 2 also had far less fat opposite a much larger ribeye and less kidney, pelvic and heart fat. It was trimmer over the rump, carried less fat in the brisket and had a thicker loin.
	// That leaves 4 last. It was the lowest grading carcass of the four, with the most fat opposite the smallest ribeye, the most internal fat and the thinnest loin.
}

func ExampleGraded_Why() {
	// A member had 2 over 3.
	p, err := exampleGraded().Why(class.DefaultPolicy(), 3, 2)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(p.Spoken())
	// Output:
	// 3 goes over 2 on quality. 3 had a much higher degree of marbling and should grade Choice, where 2 is Select. I grant that 2 had far less fat opposite a larger ribeye and less kidney, pelvic and heart fat, and should have the lower yield grade, and that it was trimmer over the rump and carried less fat in the brisket.
}

func ExampleGraded_Facts() {
	for _, f := range exampleGraded().Facts(1, 3) {
		fmt.Println(f.Heading(), f.Trait, f.BetterValue, "against", f.WorseValue, "counts", f.Weight, f.Size)
	}
	// Output:
	// cutability yield 3.002 against 3.48 counts 0.478 slight
	// trimness fat 0.5 in against 0.6 in counts 0.25 plain
	// muscling ribeye 13.4 sq in against 13 sq in counts 0.128 slight
	// trimness KPH 2.5% against 3% counts 0.1 slight
	// muscling site place 2 from the heaviest against place 3 from the heaviest counts 0 plain
}

func ExampleFact_String() {
	fmt.Println(exampleGraded().Facts(2, 1)[1])
	// Output: 2 has less fat over the rib than 1, 0.3 in against 0.5 in
}

func ExampleGraded_Criticisms() {
	for _, f := range exampleGraded().Criticisms(4) {
		fmt.Println(f)
	}
	// Output:
	// 2 has a higher quality grade than 4, High Select against High Standard
	// 3 has a lower yield grade than 4, 3.48 against 4.214
	// 2 has more marbling than 4, Sl60 against Tr80
	// 3 has a larger ribeye than 4, 13 sq in against 11.8 sq in
	// 3 has less fat over the rib than 4, 0.6 in against 0.7 in
	// 3 has less kidney, pelvic and heart fat than 4, 3% against 3.5%
	// 3 has a thicker loin than 4, place 3 from the heaviest against place 4 from the heaviest
}

func ExampleGraded_Reversals() {
	all, err := exampleGraded().Reversals(class.DefaultPolicy(), 1, 2)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, r := range all[:3] {
		fmt.Printf("%d: %v %s to %s (%s), placed %v\n", r.Exhibit, r.Trait, r.From, r.To, r.Change, r.Order)
	}
	// Output:
	// 2: marbling Sl60 to Sm00 (+40 points), placed 2-3-1-4
	// 1: marbling Sm40 to Sl99 (-41 points), placed 3-2-1-4
	// 1: fat 0.5 in to 0.7392 in (+0.2392 in), placed 3-2-1-4
}

func ExampleGraded_CouldReverse() {
	could, err := exampleGraded().CouldReverse(class.DefaultPolicy(), grade.Tolerances{Fat: grade.Inches(0.1), KPH: grade.Percent(0.5)})
	for _, d := range could {
		fmt.Println(d)
	}
	fmt.Println(err)
	// Output:
	// 3 over 2 by quality tier, 2 tiers better in quality, yield higher by 1.462; margin 0.238, close
	// <nil>
}

func ExampleMustParseRanking() {
	fmt.Println(class.MustParseRanking("2 1"))
	// Output: 2 1
}

func ExampleWalk() {
	w := exampleClass().Walk
	r, ok := w.At(class.FatRump)
	fmt.Println(r, ok, w.Check(4), len(w.Missing()), "sites missing")
	// Output: 1 4 3 2 true <nil> 17 sites missing
}

func ExampleSite_LookFor() {
	sentence, from := class.FatRound.LookFor()
	fmt.Println(sentence)
	fmt.Println(from)
	// Output:
	// Look for lean that shows through on the outside of the round; the more purple or blue shows, the less fat lies over it.
	// common practice, no source
}

func ExampleSite() {
	s, err := class.ParseSite("fat over rump")
	fmt.Println(s, s.Fat(), s.IsValid(), err)
	fmt.Println(s.Cite())
	n := 0
	for range class.Sites() {
		n++
	}
	fmt.Println(n, "sites")
	// Output:
	// fat over rump true true <nil>
	// official: cfr-54-105, cfr-1965-53-p26
	// 20 sites
}

func ExampleGraded_Decide() {
	d, err := exampleGraded().Decide(class.DefaultPolicy(), 2, 1)
	fmt.Println(d, err)
	// Output: 1 over 2 by quality tier, 1 tier better in quality, yield higher by 0.984; margin 0.598 <nil>
}

func ExampleGraded_Splits() {
	splits, err := exampleGraded().Splits(class.DefaultPolicy(), class.CutabilityPolicy())
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, s := range splits {
		fmt.Println(s[0].Upper, "and", s[0].Lower)
		for _, d := range s {
			fmt.Println(" ", d)
		}
	}
	// Output:
	// 1 and 2
	//   1 over 2 by quality tier, 1 tier better in quality, yield higher by 0.984; margin 0.598
	//   2 over 1 by yield, of one tier, yield lower by 0.984; margin 0.984
	// 3 and 1
	//   3 over 1 by quality tier, 1 tier better in quality, yield higher by 0.478; margin 1.322
	//   1 over 3 by yield, of one tier, yield lower by 0.478; margin 0.478
	// 3 and 2
	//   3 over 2 by quality tier, 2 tiers better in quality, yield higher by 1.462; margin 0.238, close
	//   2 over 3 by yield, of one tier, yield lower by 1.462; margin 1.462
}

func ExamplePolicies() {
	for _, p := range class.Policies() {
		placed, err := exampleGraded().Place(p)
		fmt.Println(placed.Order, p.Name, err)
	}
	// Output:
	// 3-1-2-4 coach <nil>
	// 3-1-2-4 course notes <nil>
	// 2-1-3-4 strict cutability <nil>
}

func ExampleNotesPolicy() {
	placed, err := exampleGraded().Place(class.NotesPolicy())
	fmt.Println(placed.Order, placed.Neighbors()[1], err)
	// Output:
	// 3-1-2-4 1 over 2 by quality tier, 1 tier better in quality, yield higher by 0.984; margin 0.516 <nil>
}

func ExampleCutabilityPolicy() {
	placed, err := exampleGraded().Place(class.CutabilityPolicy())
	fmt.Println(placed.Order, placed.Neighbors()[0], err)
	// Output:
	// 2-1-3-4 2 over 1 by yield, of one tier, yield lower by 0.984; margin 0.984 <nil>
}

func ExampleValuePolicy() {
	placed, err := exampleGraded().Place(class.ValuePolicy(weekly()))
	fmt.Println(placed.Order, placed.Neighbors()[1], err)
	// Output:
	// 3-1-2-4 1 over 2 by value, yield higher by 0.984; no yield could turn it <nil>
}

func ExamplePolicy_IsZero() {
	fmt.Println(class.Policy{Name: "mine"}.IsZero(), class.DefaultPolicy().IsZero())
	// Output: true false
}

// A policy is kept as text. A setting with a name that is not known is refused.
func ExamplePolicy_UnmarshalJSON() {
	b, err := json.Marshal(class.DefaultPolicy())
	var p class.Policy
	fmt.Println(err, json.Unmarshal(b, &p), p.Name, p.Ties)
	err = json.Unmarshal([]byte(`{"name":"mine","exchnage":"0.5","ties":["luck"]}`), &p)
	for _, problem := range placing.Problems(err) {
		fmt.Println(problem.Path, problem.Err)
	}
	fmt.Println(p.Name)
	// Output:
	// <nil> <nil> coach [lean color texture firmness]
	// ties[0] unknown
	// exchnage unknown
	// coach
}

// examplePast are two invented classes with what a committee made of them.
func examplePast() []class.Past {
	return []class.Past{
		{Class: exampleGraded(), Order: placing.MustParseOrder("1-3-2-4"), Cuts: placing.MustParseCuts("3-4-5")},
		{Class: exampleGraded(), Order: placing.MustParseOrder("1-2-3-4")},
	}
}

func ExampleReplay() {
	records, err := class.Replay(class.Policies(), examplePast()...)
	for _, r := range records {
		fmt.Println(r.Policy.Name, "loses", r.Lost, "points and misses", r.Missed, "of", r.Pairs, "pairs")
	}
	fmt.Println(err)
	// Output:
	// coach loses 6 points and misses 3 of 12 pairs
	// course notes loses 6 points and misses 3 of 12 pairs
	// strict cutability loses 12 points and misses 3 of 12 pairs
	// <nil>
}

func ExampleFit() {
	fit, err := class.Fit(class.DefaultPolicy(), examplePast()...)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(fit.Before, "points, fitted", fit.Lost)
	for _, s := range fit.Settings[:2] {
		fmt.Println(s.Setting, s.Value, "as well from", s.Least, "to", s.Most)
	}
	fmt.Println(fit.Warnings[0])
	// Output:
	// 6 points, fitted 1
	// advantage over 1 tier 0.4 as well from 0.1 to 0.4
	// advantage over 2 tiers 2 as well from 0.5 to 2.9
	// These classes set no lower bound to the advantage over 1 tier.
}
