package class_test

import (
	"errors"
	"fmt"

	"example.com/ribface/grade/price"
	"example.com/ribface/placing"
	"example.com/ribface/placing/class"
)

func ExampleAdvantage() {
	for _, a := range class.DefaultPolicy().Advantages {
		fmt.Println("a yield lower by", a.Yield, "overcomes", a.Tiers, "of quality;", a.Cite)
	}
	// Output:
	// a yield lower by 1.5 overcomes 1 of quality; published: uni-placing-notes
	// a yield lower by 2 overcomes 2 of quality; published: uni-placing-notes
	// a yield lower by 3 overcomes 3 of quality; no source given
}

func ExampleCycle() {
	g, err := cycle().Grade()
	if err != nil {
		fmt.Println(err)
		return
	}
	p, err := g.Place(class.DefaultPolicy())
	for _, c := range p.Cycles {
		fmt.Println(c.Exhibits, c.Rings, len(c.Decisions), "pairs,", len(c.Against), "against the placing")
	}
	fmt.Println(err)
	// Output:
	// [1 2 3] [[1 2 3]] 3 pairs, 1 against the placing
	// <nil>
}

func ExampleDecision() {
	d, ok := examplePlacing().Decision(3, 1)
	fmt.Println(d.Upper, "over", d.Lower, "by", d.Ground, "margin", d.Margin, "close", d.Close, ok)
	// Output:
	// 3 over 1 by quality tier margin 1.322 close false true
}

func ExampleExhibit() {
	e := exampleClass().Exhibits[0]
	fmt.Println(e.Number, e.Carcass.Sex, e.Carcass.Marbling)
	// Output:
	// 1 steer Sm40
}

func ExampleFact() {
	f := exampleGraded().Facts(2, 1)[0]
	fmt.Println(f.Heading(), f.Trait, f.Better, f.BetterValue, f.Worse, f.WorseValue, f.Weight)
	// Output:
	// cutability yield 2 2.018 1 3.002 0.984
}

func ExampleGraded_Assessment() {
	g := exampleGraded()
	fmt.Println(g.Assessment(3).Quality, g.Assessment(9).Quality)
	// Output:
	// Average Choice unset
}

func ExampleLook() {
	l := class.Look{Site: class.FatRump, Order: class.MustParseRanking("1 4=3 2")}
	fmt.Println(l.Site, l.Order)
	// Output:
	// fat over rump 1 3=4 2
}

func ExampleReasons() {
	r, err := exampleGraded().Reasons(placing.MustParseOrder("3-1-2-4"), class.DefaultPolicy())
	fmt.Println(r.Order, r.Sex, len(r.Pairs), "pairs,", len(r.Last), "criticisms of the last", err)
	// Output:
	// 3-1-2-4 steer 3 pairs, 7 criticisms of the last <nil>
}

func ExamplePairReasons() {
	r, _ := exampleGraded().Reasons(placing.MustParseOrder("3-1-2-4"), class.DefaultPolicy())
	p := r.Pairs[0]
	fmt.Println(p.Name, p.Upper, p.Lower, p.On)
	fmt.Println("over:", p.Over[0].Facts[0])
	fmt.Println("granted:", p.Grants[0].Facts[0])
	fmt.Println(p.Spoken())
	// Output:
	// top pair 3 1 quality
	// over: 3 has a higher quality grade than 1, Average Choice against Low Choice
	// granted: 1 has a lower yield grade than 3, 3.002 against 3.48
	// 3 goes over 1 on quality. 3 had more marbling and should grade average Choice, where 1 is low Choice. 3 was also trimmer over the rump and carried less fat in the brisket. I grant that 1 had less fat opposite a slightly larger ribeye and should have the lower yield grade, and that it had a thicker loin.
}

func ExampleSupport() {
	p, _ := exampleGraded().Why(class.DefaultPolicy(), 1, 3)
	for _, s := range p.Over {
		fmt.Println(s.On, len(s.Facts))
	}
	// Output:
	// cutability 1
	// trimness 2
	// muscling 2
}

func ExampleHeading() {
	fmt.Println(class.OnQuality, class.Heading(0))
	// Output:
	// quality none
}

func ExampleSize() {
	fmt.Println(class.SizeSlight, class.SizePlain, class.SizeWide, class.Size(0))
	// Output:
	// slight plain wide unseen
}

func ExampleFinding() {
	f := exampleGraded().Represent()[0]
	fmt.Println(f.Exhibit, f.Fat, f.More, f.Sites)
	// Output:
	// 1 true true [fat over rump fat in brisket]
}

func ExamplePolicy_Steps() {
	for _, r := range class.DefaultPolicy().Steps()[:2] {
		fmt.Println(r.Name+":", r.Rule)
	}
	// Output:
	// bottom: standard and under goes to the bottom, whatever its yield
	// bottom: maturity C or older goes to the bottom
}

func ExampleReversal() {
	all, err := exampleGraded().Reversals(class.DefaultPolicy(), 1, 2)
	if err != nil {
		fmt.Println(err)
		return
	}
	r := all[0]
	fmt.Println(r.Exhibit, r.Trait, r.From, r.To, r.Effect, r.Order)
	// Output:
	// 2 marbling Sl60 Sm00 0.2 2-3-1-4
}

func ExampleSites() {
	n := 0
	for s := range class.Sites() {
		if s.Fat() {
			n++
		}
	}
	fmt.Println(n, "sites of fat")
	// Output:
	// 13 sites of fat
}

func ExampleParseSite() {
	fmt.Println(class.ParseSite("fat over rump"))
	_, err := class.ParseSite("tail")
	fmt.Println(errors.Is(err, placing.ErrUnknown))
	// Output:
	// fat over rump <nil>
	// true
}

func ExampleFieldError() {
	c := exampleClass()
	c.Exhibits[1].Number = 1
	_, err := c.Grade()
	var fe *placing.FieldError
	if errors.As(err, &fe) {
		fmt.Println(fe.Field, "|", fe.Value, "|", fe.Allowed)
	}
	// Output:
	// exhibit number | 1 | each exhibit 1 to 4 once
}

func ExampleParseError() {
	_, err := placing.ParseRanking("3 2=2 4")
	var pe *placing.ParseError
	if errors.As(err, &pe) {
		fmt.Println(pe.Kind, "|", pe.Input, "|", pe.Part, "|", pe.Allowed)
	}
	// Output:
	// ranking | 3 2=2 4 | 2 | each exhibit 1 to 4 once
}

func ExampleValuation() {
	grid, err := price.New(weekly())
	if err != nil {
		fmt.Println(err)
		return
	}
	v, err := exampleGraded().ByValue(grid, price.ByCwt, nil)
	fmt.Println(v.Order, err)
	for i, value := range v.Values {
		fmt.Println(i+1, value.PerCwt())
	}
	// Output:
	// 1=3 2 4 <nil>
	// 1 300
	// 2 273.52
	// 3 300
	// 4 246.62
}

func ExamplePast() {
	p := class.Past{Class: exampleGraded(), Order: placing.MustParseOrder("1-3-2")}
	_, err := class.Replay(class.Policies(), p)
	fmt.Println(err)
	// Output:
	// past class 1: order: 1-3-2: out of range; allowed: an order of the 4 exhibits
}

func ExampleRecord() {
	records, _ := class.Replay([]class.Policy{class.CutabilityPolicy()}, examplePast()...)
	r := records[0]
	fmt.Println(r.Lost, r.Pairs, r.Missed, r.Untold)
	// Output:
	// 12 12 3 0
}

func ExampleFitted() {
	fit, _ := class.Fit(class.DefaultPolicy(), examplePast()...)
	s := fit.Settings[0]
	fmt.Println(s.Setting, s.Value, s.Least, s.Most, s.Told)
	// Output:
	// advantage over 1 tier 0.4 0.1 0.4 true
}

func ExampleFitting() {
	fit, err := class.Fit(class.DefaultPolicy(), examplePast()...)
	fmt.Println(fit.Before, fit.Lost, len(fit.Settings), len(fit.Warnings), fit.Policy.Advantages[0].Yield, err)
	// Output:
	// 6 1 6 6 0.4 <nil>
}
