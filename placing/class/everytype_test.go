package class_test

import (
	"testing"

	"example.com/ribface/grade"
	"example.com/ribface/grade/price"
	"example.com/ribface/internal/testkit/everytype"
	"example.com/ribface/internal/testkit/roundtrip"
	"example.com/ribface/maturity/cite"
	"example.com/ribface/placing"
	"example.com/ribface/placing/class"
)

// TestEveryType holds every exported type to what the module promises of all: no
// method panics on any value, package cmp compares the values, and JSON gives them
// back unchanged or fails.
func TestEveryType(t *testing.T) {
	g, p := placed(t, four())
	_, round := placed(t, cycle())
	odd := class.DefaultPolicy() // no policy that checks
	odd.Tiers, odd.Advantages[0].Yield, odd.Ties = odd.Tiers[1:], grade.Grades(-1), []class.Ground{class.ByTier}
	nameless := class.DefaultPolicy()
	nameless.Ties[0] = 99
	cuts, err1 := p.ProposeCuts(p.Order, 0)
	reasons, err2 := g.Reasons(p.Order, class.DefaultPolicy())
	turns, err3 := g.Reversals(class.DefaultPolicy(), 1, 2)
	splits, err4 := graded(t, cycle()).Splits(class.Policies()...)
	value, err5 := g.ByValue(grid(t), price.ByHead, nil)
	past := class.Past{Class: g, Order: placing.MustParseOrder("3-1-2-4"), Cuts: placing.MustParseCuts("2-3-5")}
	records, err6 := class.Replay(class.Policies(), past)
	fitting, err7 := class.Fit(class.DefaultPolicy(), past)
	for _, err := range []error{err1, err2, err3, err4, err5, err6, err7} {
		if err != nil {
			t.Fatal(err)
		}
	}
	official, err := placing.NewOfficial(past.Order, past.Cuts)
	if err != nil {
		t.Fatal(err)
	}
	// Values of a hand that fit nothing together.
	hand := class.Placing{Order: placing.MustParseOrder("2-1"), Decisions: []class.Decision{{Upper: 7, Lower: -1, Ground: 99, Firm: true}}, Cycles: []class.Cycle{{Rings: [][3]int{{9, 9, 9}}}}}
	fact := class.Fact{Trait: 99, Site: 99, Better: -3, Worse: 40, Size: 99}
	said := class.Reasons{
		Order: placing.MustParseOrder("1-2"), Sex: 99,
		Pairs: []class.PairReasons{{On: 99, Over: []class.Support{{On: 99, Facts: []class.Fact{fact, {Trait: grade.TraitSite, Size: class.SizeWide}}}}}, {}, {}},
		Last:  []class.Fact{fact, {Trait: grade.TraitSite, Site: 99, Size: class.SizePlain}, {Trait: grade.TraitQuality, Size: class.SizeWide, BetterValue: "none"}},
	}
	everytype.Run(t, ".",
		four(), four().Exhibits[0], four().Walk, four().Walk[0], class.Look{Site: 99}, class.Walk{{Site: 99}, {}}, class.Exhibit{Number: -1},
		class.Class{Exhibits: []class.Exhibit{{}, {Number: 7}}, Posted: grade.Pounds(-1)}, g, g.Represent()[0], class.Finding{Exhibit: -1, Sites: []class.Site{99, 0}},
		class.DefaultPolicy(), class.NotesPolicy(), valuePolicy(), odd, nameless, odd.Advantages[0],
		p, hand, round, p.Decisions[0], round.Cycles[0], splits[0], cuts,
		past, records[0], fitting, fitting.Settings[0],
		reasons, said, reasons.Pairs[0], said.Pairs[0], reasons.Pairs[0].Over[0], reasons.Pairs[0].Over[0].Facts[0], fact, turns[0], value,
		class.MustParseRanking("3 1=2 4"),
		class.ByYield, class.Ground(99), class.OnMuscling, class.Heading(99), class.SizeWide, class.Size(99), class.FatRump, class.Site(99),

		roundtrip.Read[class.Ground], class.ParseSite, roundtrip.Read[class.Heading], roundtrip.Read[class.Size],
		class.Replay, class.Fit, class.Sites, class.Policies, class.ValuePolicy,

		official, past.Order, past.Cuts, placing.LimitColorado, grid(t), weekly(), price.ByHead,
		grade.Tolerances{Fat: grade.Inches(0.1), Marbling: 20}, grade.Tolerances{Marbling: -1}, cite.Citation{},
	)
}
