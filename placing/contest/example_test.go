package contest_test

import (
	"encoding/json"
	"errors"
	"fmt"
	"log"
	"os"
	"slices"
	"strings"

	"example.com/ribface/grade"
	"example.com/ribface/grade/sheet"
	"example.com/ribface/maturity"
	"example.com/ribface/placing"
	"example.com/ribface/placing/contest"
)

func init() { log.SetFlags(0) }

// Invented members of an invented contest.
var (
	ada = contest.Member{ID: "7", Team: "North Fork", Division: "senior"}
	ben = contest.Member{ID: "8", Team: "North Fork", Division: "senior"}
)

// thirds is a ladder of the qualities on a card: two points for each third, at most ten,
// numbers of our own.
func thirds() contest.Ladder[grade.Quality] {
	rungs := contest.CardQualities()
	return contest.Ladder[grade.Quality]{Value: contest.PointsOf(10), Rungs: rungs, Lines: slices.Repeat([]contest.Points{contest.PointsOf(2)}, len(rungs)-1)}
}

// invented is a contest of one placing class, one grading class of one carcass and
// one set of reasons.
func invented() *contest.Contest {
	fair, err := contest.NewContest("invented fair",
		contest.Format{
			Components: []contest.Component{
				{Name: "placing", Kind: contest.KindPlacing, Classes: []string{"beef"}, Value: contest.PointsOf(50)},
				{Name: "quality", Kind: contest.KindQuality, Classes: []string{"coolers"}, Value: contest.PointsOf(10)},
				{Name: "yield", Kind: contest.KindYield, Classes: []string{"coolers"}, Value: contest.PointsOf(10)},
				{Name: "reasons", Kind: contest.KindHand, Classes: []string{"beef"}, Value: contest.PointsOf(50)},
			},
			TeamMembers: 4, Counting: 3,
			Ties: []contest.TieBreak{{Components: []string{"reasons"}}},
		},
		contest.Scoring{
			Quality: contest.QualityRule{Ladder: thirds()},
			Yield:   contest.YieldRule{Step: contest.Tenths, Rounding: grade.HalfUp, Value: contest.PointsOf(10), Each: contest.PointsOf(1)},
		},
		[]contest.OfficialPlacing{{Contest: "invented fair", Class: "beef", Order: placing.MustParseOrder("3-2-1-4"), Cuts: placing.MustParseCuts("2-8-2")}},
		[]contest.OfficialFacts{{Contest: "invented fair", Class: "coolers", Exhibit: 1, Facts: official()}},
	)
	if err != nil {
		log.Fatal(err)
	}
	return fair
}

func official() contest.Facts {
	return contest.Facts{
		Quality: grade.Choice.Part(grade.Low),
		Fat:     grade.Inches(0.6), Ribeye: grade.SquareInches(11.9),
		KPH: grade.Percent(1.5), Weight: grade.Pounds(660),
	}
}

func adasPlacing() contest.PlacingCard {
	return contest.PlacingCard{Contest: "invented fair", Class: "beef", Member: ada, Card: placing.Card{Order: placing.MustParseOrder("2-3-4-1")}}
}

func adasEstimate() contest.Estimate {
	return contest.Estimate{Contest: "invented fair", Class: "coolers", Exhibit: 1, Member: ada, Facts: contest.Facts{
		Quality: grade.Choice.Part(grade.Average),
		Fat:     grade.Inches(0.5), Ribeye: grade.SquareInches(12.9), KPH: grade.Percent(2.5),
		Yield: grade.Grades(2.7),
	}}
}

func adasReasons() contest.HandScore {
	return contest.HandScore{Contest: "invented fair", Component: "reasons", Class: "beef", Member: ada, Score: contest.PointsOf(41)}
}

// A whole contest: cards in, standings out, and what one member missed.
func Example() {
	fair := invented()
	sheet := "contest,class,member,team,division,placing\n" +
		"invented fair,beef,7,North Fork,senior,2-3-4-1\n" +
		"invented fair,beef,8,North Fork,senior,3-2-4-4\n" + // exhibit 4 twice
		"invented fair,beef,9,Elk River,senior,3-2-1-4\n"
	tally := fair.Tally()
	for card, err := range contest.PlacingSheet().Read(strings.NewReader(sheet)) {
		if err != nil {
			fmt.Println(err)
			continue
		}
		item, err := fair.Placing(card)
		if err == nil {
			err = tally.Add(item)
		}
		if err != nil {
			fmt.Println(err)
		}
	}
	standings, err := tally.Standings(contest.View{Components: []string{"placing"}})
	if err != nil {
		log.Fatal(err)
	}
	fmt.Print(standings)

	feedback, err := fair.Feedback("7", []contest.PlacingCard{adasPlacing()}, []contest.Estimate{adasEstimate()}, nil)
	if err != nil {
		log.Fatal(err)
	}
	fmt.Print(feedback)
	// Output:
	// line 3, column 6 (placing): placing: 3-2-4-4: repeated; allowed: each exhibit 1 to 4 once
	// rank  member  team        division  total  placing
	// 1     9       Elk River   senior       50       50
	// 2     7       North Fork  senior       46       46
	//
	// rank  team        counting  total  placing
	// 1     Elk River   9            50       50
	// 2     North Fork  7            46       46
	// member 7: 61 of 70 points on these cards
	// class beef: placed 2-3-4-1, official 3-2-1-4 cuts 2-8-2: 46
	//   3 goes over 2: reversed, costs 2
	//   1 goes over 4: reversed, costs 2
	// class coolers, exhibit 1: quality Average Choice, official Low Choice: 1 line too good, loses 2
	// class coolers, exhibit 1: yield 2.7, official 3: 3 steps too low, loses 3
	//   ribeye -0.32
	//   fat -0.25
	//   KPH +0.2
	//   arithmetic and rounding +0.07
}

func ExampleSheet() {
	sheet := contest.PlacingSheet()
	fmt.Println(sheet.Columns())
	var rows []contest.PlacingCard
	for row, err := range sheet.Read(strings.NewReader("Class,Member,Placing\nbeef,7,2-3-4-1\nbeef,8,first\nbeef,9,blank\n")) {
		if err != nil {
			fmt.Println(err)
			continue
		}
		rows = append(rows, row)
	}
	if err := sheet.Write(os.Stdout, slices.Values(rows)); err != nil {
		fmt.Println(err)
	}
	// Output:
	// contest, class, member, team, division, placing
	// line 3, column 3 (Placing): placing: first: bad syntax; allowed: 2 to 12 exhibit numbers with hyphens between, each once, as 3-2-1-4
	// contest,class,member,team,division,placing
	// ,beef,7,,,2-3-4-1
	// ,beef,9,,,blank
}

func ExamplePlacingSheet() {
	if err := contest.PlacingSheet().Write(os.Stdout, slices.Values([]contest.PlacingCard{adasPlacing()})); err != nil {
		fmt.Println(err)
	}
	// Output:
	// contest,class,member,team,division,placing
	// invented fair,beef,7,North Fork,senior,2-3-4-1
}

func ExampleEstimateSheet() {
	in := "class,exhibit,member,quality,fat_mm,weight_kg,yield\ncoolers,1,7,Choice-,12.7,380,2.7\ncoolers,2,7,blank,,,\n"
	var rows []contest.Estimate
	for row, err := range contest.EstimateSheet().Read(strings.NewReader(in)) {
		if err != nil {
			fmt.Println(err)
			continue
		}
		rows = append(rows, row)
	}
	if err := contest.EstimateSheet().Write(os.Stdout, slices.Values(rows)); err != nil {
		fmt.Println(err)
	}
	// Output:
	// contest,class,exhibit,member,team,division,skeletal,lean,maturity,marbling,quality,fat_in,preliminary,ribeye_sq_in,kph_pct,weight_lb,yield
	// ,coolers,1,7,,,,,,,Low Choice,0.5,,,,837.7566,2.7
	// ,coolers,2,7,,,,,,,blank,,,,,,
}

func ExampleHandSheet() {
	if err := contest.HandSheet().Write(os.Stdout, slices.Values([]contest.HandScore{adasReasons()})); err != nil {
		fmt.Println(err)
	}
	// Output:
	// contest,component,class,member,team,division,score
	// invented fair,reasons,beef,7,North Fork,senior,41
}

func ExampleOfficialSheet() {
	for row, err := range contest.OfficialSheet().Read(strings.NewReader("class,placing,cuts\nbeef,3-2-1-4,2-8-2\n")) {
		fmt.Println(row.Class, row.Order, row.Cuts, err)
	}
	// Output:
	// beef 3-2-1-4 2-8-2 <nil>
}

func ExampleKeySheet() {
	for row, err := range contest.KeySheet().Read(strings.NewReader("class,exhibit,quality,yield\ncoolers,1,Low Choice,3.12\n")) {
		fmt.Println(row.Class, row.Exhibit, row.Facts.Quality, row.Facts.Yield, err)
	}
	// Output:
	// coolers 1 Low Choice 3.12 <nil>
}

func ExampleRowError() {
	for _, err := range contest.PlacingSheet().Read(strings.NewReader("class,member,placing\n,7,1-2-3-3\n")) {
		var row *sheet.RowError
		if errors.As(err, &row) {
			fmt.Println(row.Line)
			for _, p := range row.All() {
				fmt.Println(p.Column, p.Heading, "-", p.Err)
			}
		}
	}
	// Output:
	// 2
	// 1 class - class: missing; allowed: a name or number
	// 3 placing - placing: 1-2-3-3: repeated; allowed: each exhibit 1 to 4 once
}

func ExamplePoints() {
	p := contest.PointsOf(3).Add(contest.PointsOf(0.25))
	fmt.Println(p, p.Decimal(), p.Units(), p.Compare(contest.PointsUnits(30_000)))
	fmt.Printf("%.1f\n", p)

	// Points that are not set are no 0 points.
	var none contest.Points
	fmt.Println(none, none.IsSet(), contest.PointsOf(0), contest.PointsOf(0).IsSet())
	// Output:
	// 3.25 3.25 32500 1
	// 3.3
	// unset false 0 true
}

func ExampleMember() {
	fmt.Printf("%+v\n", ada)
	// Output:
	// {ID:7 Team:North Fork Division:senior}
}

func ExampleMarks() {
	// The fat was read, a mark stands for the marbling, and nobody asked for the rest.
	f := contest.Facts{Fat: grade.Inches(0.45), Marks: contest.Marks{Marbling: placing.Blank}}
	j, err := json.Marshal(f)
	fmt.Printf("%s, %v\n", j, err)
	fmt.Println(f.Fat.IsSet(), f.Ribeye.IsSet(), f.Marks.Marbling)
	// Output:
	// {"fat":"0.45 in","marks":{"marbling":"blank"}}, <nil>
	// true false blank
}

func ExampleFacts() {
	f := official()
	fmt.Println(f.Quality, f.Fat, f.Ribeye, f.KPH, f.Weight, f.Yield.IsSet())
	// Output:
	// Low Choice 0.6 in 11.9 sq in 1.5% 660 lb false
}

func ExampleFactsOf() {
	a, err := grade.Current.Assess(grade.Carcass{
		Sex:      grade.Steer,
		Maturity: maturity.Evidence{Skeletal: maturity.A.At(60), Lean: maturity.A.At(40)},
		Marbling: grade.Small.At(40),
		Measures: grade.Measures{Fat: grade.Inches(0.6), Ribeye: grade.SquareInches(11.9), KPH: grade.Percent(1.5), Weight: grade.Pounds(660)},
	})
	if err != nil {
		log.Fatal(err)
	}
	f, err := contest.FactsOf(a)
	fmt.Println(f.Quality, f.Yield, f.Maturity, err)
	// Output:
	// Low Choice 3 A50 <nil>
}

func ExamplePlacingCard() {
	card := adasPlacing()
	fmt.Println(card.Class, card.Member.ID, card.Card.Order)
	// Output:
	// beef 7 2-3-4-1
}

func ExampleEstimate() {
	e := adasEstimate()
	fmt.Println(e.Class, e.Exhibit, e.Member.ID, e.Facts.Quality, e.Facts.Yield)
	// Output:
	// coolers 1 7 Average Choice 2.7
}

func ExampleHandScore() {
	h := adasReasons()
	fmt.Println(h.Component, h.Class, h.Member.ID, h.Score)
	// Output:
	// reasons beef 7 41
}

func ExampleOfficialPlacing() {
	o := contest.OfficialPlacing{Class: "beef", Order: placing.MustParseOrder("3-2-1-4"), Cuts: placing.MustParseCuts("2-8-2")}
	fmt.Println(o.Class, o.Order, o.Cuts)
	// Output:
	// beef 3-2-1-4 2-8-2
}

func ExampleOfficialFacts() {
	o := contest.OfficialFacts{Class: "coolers", Exhibit: 1, Facts: official()}
	fmt.Println(o.Class, o.Exhibit, o.Facts.Quality)
	// Output:
	// coolers 1 Low Choice
}

func ExampleLadder() {
	l := contest.Ladder[string]{Value: contest.PointsOf(10), Rungs: []string{"Prime", "Choice", "Select"}, Lines: []contest.Points{contest.PointsOf(2), contest.PointsOf(5)}}
	fmt.Println(l.Loss("Prime", "Select"))

	// Two points for each third of a grade.
	fmt.Println(thirds().Loss(grade.Choice.Part(grade.Low), grade.Choice.Part(grade.High)))
	// Output:
	// 7 -2 <nil>
	// 4 2 <nil>
}

func ExampleLadder_Check() {
	l := contest.Ladder[string]{Value: contest.PointsOf(10), Rungs: []string{"Prime", "Choice", "Select"}, Lines: []contest.Points{contest.PointsOf(2)}}
	fmt.Println(l.Check())
	// Output:
	// lines: 1: out of range; allowed: 2 lines for 3 rungs
}

func ExampleLadder_UnmarshalJSON() {
	l := contest.Ladder[grade.Quality]{Value: contest.PointsOf(10), Rungs: []grade.Quality{grade.Prime.Part(grade.Low), grade.Choice.Part(grade.High)}, Lines: []contest.Points{contest.PointsOf(2.5)}}
	j, err := json.Marshal(contest.Scoring{Quality: contest.QualityRule{Ladder: l}})
	fmt.Printf("%s, %v\n", j, err)
	var back contest.Scoring
	fmt.Println(json.Unmarshal(j, &back), back.Quality.Ladder.Rungs)
	fmt.Println(json.Unmarshal([]byte(`{"quality":{"lader":null}}`), &back))
	// Output:
	// {"quality":{"ladder":{"value":10,"rungs":["Low Prime","High Choice"],"lines":[2.5]}}}, <nil>
	// <nil> [Low Prime High Choice]
	// name: lader: unknown; allowed: ladder, marks
}

func ExamplePointsOf() {
	fmt.Println(contest.PointsOf(41.5), contest.PointsOf(0), contest.PointsOf(1.00004))
	// Output:
	// 41.5 0 1
}

func ExamplePointsUnits() {
	fmt.Println(contest.PointsUnits(415_000), contest.PointsUnits(-1))
	// Output:
	// 41.5 -0.0001
}

func ExamplePoints_Sub() {
	var none contest.Points
	fmt.Println(contest.PointsOf(50).Sub(contest.PointsOf(7.5)), contest.PointsOf(50).Sub(none))
	// Output:
	// 42.5 unset
}

func ExamplePoints_Format() {
	fmt.Printf("%v %q %.0f %6.2f %#v\n", contest.PointsOf(7.5), contest.PointsOf(7.5), contest.PointsOf(7.5), contest.PointsOf(7.5), contest.PointsOf(7.5))
	// Output:
	// 7.5 "7.5" 8   7.50 contest.PointsUnits(75000)
}

func ExamplePoints_UnmarshalJSON() {
	var p contest.Points
	for _, in := range []string{`41.5`, `"7"`, `null`, `"many"`} {
		fmt.Println(json.Unmarshal([]byte(in), &p), p)
	}
	j, err := json.Marshal(p)
	fmt.Printf("%s, %v\n", j, err)
	// Output:
	// <nil> 41.5
	// <nil> 7
	// <nil> 7
	// points: "many": bad syntax; allowed: a number with at most 4 places 7
	// 7, <nil>
}

func ExampleFacts_UnmarshalJSON() {
	var f contest.Facts
	err := json.Unmarshal([]byte(`{"fat":"0.45 in","ribeye":12.4,"quality":"Ch-","marks":{"kph":"blank"}}`), &f)
	fmt.Println(f.Fat, f.Ribeye, f.Quality, f.KPH, f.Marks.KPH, err)
	err = json.Unmarshal([]byte(`{"fat":"thick","ribey":12.4}`), &f)
	for _, p := range placing.Problems(err) {
		fmt.Println(p.Path, "-", p.Err)
	}
	// Output:
	// 0.45 in 12.4 sq in Low Choice not taken blank <nil>
	// fat - bad syntax
	// ribey - unknown
}

func ExampleCardQualities() {
	all := contest.CardQualities()
	fmt.Println(len(all), all[0], all[5], all[15])
	// Output:
	// 16 High Prime Low Choice Low Utility
}

func ExampleChartQualities() {
	for _, q := range contest.ChartQualities(grade.Current, maturity.C) {
		fmt.Println(q)
	}
	// Output:
	// High Commercial
	// Average Commercial
	// Low Commercial
	// Utility
	// Cutter
	// Canner
	// No grade
}

func ExampleQualityRule() {
	rule := contest.QualityRule{Ladder: thirds()}
	low, selected := grade.Choice.Part(grade.Low), grade.Select.Part(grade.Low)
	fmt.Println(rule.Loss(low, selected))
	fmt.Println(rule.Score(low, selected, 0))
	fmt.Println(rule.Score(low, 0, placing.Blank))

	// What the standard gives and this card has no rung for.
	for _, q := range contest.ChartQualities(grade.Current) {
		if _, _, err := rule.Loss(q, q); err != nil {
			fmt.Println(q)
		}
	}
	// Output:
	// 4 -2 <nil>
	// 6 <nil>
	// 0 <nil>
	// Average Standard
	// Standard
	// Utility
	// Cutter
	// Canner
	// No grade
}

func ExampleYieldStep() {
	for s := contest.WholeGrades; s <= contest.Tenths; s++ {
		fmt.Println(s)
	}
	// Output:
	// whole grades
	// thirds
	// tenths
}

func ExampleYieldRule() {
	// Half a point for each tenth, at most ten: numbers of our own.
	rule := contest.YieldRule{Step: contest.Tenths, Rounding: grade.HalfUp, Value: contest.PointsOf(10), Each: contest.PointsOf(0.5)}
	fmt.Println(rule.Check())
	fmt.Println(rule.Loss(grade.Grades(3.12), grade.Grades(2.7)))
	fmt.Println(rule.Score(grade.Grades(3.12), grade.Grades(2.7), 0))
	rule.Rounding = 0
	fmt.Println(rule.Check())
	// Output:
	// <nil>
	// 2 -4 <nil>
	// 8 <nil>
	// rounding: unset: missing; allowed: down, half up, half even
}

// A table of points that a teaching deck prints: the answer is two thirds off.
func ExampleTaughtThirds() {
	rule, source := contest.TaughtThirds()
	key, _ := grade.ParseYield("2.40")
	answer, _ := grade.ParseYield("3.10")
	fmt.Println(rule.Loss(key, answer))
	fmt.Println(rule.Score(key, answer, 0))
	fmt.Println(source)
	// Output:
	// 5 2 <nil>
	// 5 <nil>
	// published: aged-yield-slides
}

func ExampleKind() {
	for k := contest.KindPlacing; k <= contest.KindHand; k++ {
		fmt.Println(k)
	}
	// Output:
	// placing
	// quality
	// yield
	// by hand
}

func ExampleComponent() {
	c := contest.Component{Name: "grading", Kind: contest.KindQuality, Classes: []string{"coolers 1", "coolers 2"}, Value: contest.PointsOf(60)}
	fmt.Println(c.Name, c.Kind, c.Classes, c.Value)
	// Output:
	// grading quality [coolers 1 coolers 2] 60
}

func ExampleTieBreak() {
	// First the reasons of the counting members, then those of the whole team.
	for _, t := range []contest.TieBreak{{Components: []string{"reasons"}}, {Components: []string{"reasons"}, AllMembers: true}} {
		fmt.Println(t.Components, t.AllMembers)
	}
	// Output:
	// [reasons] false
	// [reasons] true
}

func ExampleShortTeam() {
	fmt.Println(contest.ScoredShort)
	fmt.Println(contest.Barred)
	// Output:
	// missing members score 0
	// barred
}

func ExampleFormat() {
	f := contest.Format{
		Components: []contest.Component{
			{Name: "placings", Kind: contest.KindPlacing, Classes: []string{"beef", "ribs"}, Value: contest.PointsOf(100)},
			{Name: "examination", Kind: contest.KindHand, Value: contest.PointsOf(40)},
		},
		TeamMembers: 4, Counting: 3,
	}
	fmt.Println(f.Check())
	f.Counting = 5
	fmt.Println(f.Check())
	// Output:
	// <nil>
	// counting members: 5: out of range; allowed: 0 to the members of a team
}

func ExampleScoring() {
	// Placings follow the published rules; a double mark scores the lowest.
	p, from := contest.Scoring{}.Placing.Penalty(placing.DoubleMarked)
	fmt.Println(p, from)
	// Output:
	// lowest score published: ext-missouri-poultry
}

func ExampleContest() {
	c := invented()
	fmt.Println(c.Format().Counting, c.Scoring().Yield.Each)
	fmt.Println(c.Official("beef"))
	facts, ok := c.Facts("coolers", 1)
	fmt.Println(facts.Quality, facts.Yield, ok)
	// Output:
	// 3 1
	// 3-2-1-4 cuts 2-8-2 true
	// Low Choice 3 true
}

func ExampleNewContest() {
	_, err := contest.NewContest("invented fair", contest.Format{
		Components: []contest.Component{{Name: "beef", Kind: contest.KindPlacing, Value: contest.PointsOf(50)}},
	}, contest.Scoring{}, nil, nil)
	fmt.Println(err)
	// Output:
	// class "beef": official placing: missing; allowed: one for each class
}

func ExampleContest_Placing() {
	item, err := invented().Placing(adasPlacing())
	fmt.Println(item.Component, item.Points, "of", item.Of, err)
	// Output:
	// placing 46 of 50 <nil>
}

func ExampleContest_Estimate() {
	quality, yield, err := invented().Estimate(adasEstimate())
	fmt.Println(quality.Component, quality.Points, "of", quality.Of)
	fmt.Println(yield.Component, yield.Points, "of", yield.Of, err)
	// Output:
	// quality 8 of 10
	// yield 7 of 10 <nil>
}

func ExampleContest_Hand() {
	c := invented()
	item, err := c.Hand(adasReasons())
	fmt.Println(item.Component, item.Points, "of", item.Of, err)
	over := adasReasons()
	over.Score = contest.PointsOf(51)
	_, err = c.Hand(over)
	fmt.Println(err)
	// Output:
	// reasons 41 of 50 <nil>
	// member "7": reasons: 51: out of range; allowed: 0 to 50
}

func ExampleItem() {
	item, err := invented().Placing(adasPlacing())
	fmt.Println(item.IsValid(), item.Member.ID, item.Class, item.Exhibit, item.Points, err)
	fmt.Println(contest.Item{}.IsValid())
	// Output:
	// true 7 beef 0 46 <nil>
	// false
}

func ExampleContest_Tally() {
	s, err := invented().Tally().Standings(contest.View{})
	fmt.Println(len(s.Members), s.Of, err)
	// Output:
	// 0 120 <nil>
}

func ExampleTally() {
	c := invented()
	tally := c.Tally()
	item, err := c.Placing(adasPlacing())
	if err != nil {
		log.Fatal(err)
	}
	fmt.Println(tally.Add(item))
	fmt.Println(tally.Add(item))
	fmt.Println(tally.Enter(ben))
	fmt.Println(tally.Divisions())
	s, err := tally.Standings(contest.View{})
	fmt.Println(len(s.Members), err)
	// Output:
	// <nil>
	// member "7": placing: class "beef": repeated; allowed: one card for each class
	// <nil>
	// [senior]
	// 2 <nil>
}

func ExampleView() {
	c := invented()
	tally := c.Tally()
	for _, score := range []contest.HandScore{adasReasons(), {Contest: "invented fair", Component: "reasons", Class: "beef", Member: ben, Score: contest.PointsOf(41)}} {
		item, err := c.Hand(score)
		if err == nil {
			err = tally.Add(item)
		}
		if err != nil {
			log.Fatal(err)
		}
	}
	s, err := tally.Standings(contest.View{Division: "senior", Components: []string{"reasons"}})
	if err != nil {
		log.Fatal(err)
	}
	fmt.Print(s)
	// Output:
	// rank        member  team        division  total  reasons
	// 1     tied  7       North Fork  senior       41       41
	// 1     tied  8       North Fork  senior       41       41
	//
	// rank  team        counting  total  reasons
	// 1     North Fork  7, 8         82       82
}

func ExampleStandings() {
	c := invented()
	tally := c.Tally()
	item, err := c.Placing(adasPlacing())
	if err == nil {
		err = tally.Add(item)
	}
	if err != nil {
		log.Fatal(err)
	}
	s, err := tally.Standings(contest.View{})
	if err != nil {
		log.Fatal(err)
	}
	fmt.Println(s.Components, s.Of)
	fmt.Print(s)
	// Output:
	// [placing quality yield reasons] 120
	// rank  member  team        division  total  placing  quality  yield  reasons
	// 1     7       North Fork  senior       46       46        0      0        0
	//
	// rank  team        counting  total  placing  quality  yield  reasons
	// 1     North Fork  7            46       46        0      0        0
}

func ExampleMemberLine() {
	tally := invented().Tally()
	if err := tally.Enter(ada); err != nil {
		log.Fatal(err)
	}
	s, err := tally.Standings(contest.View{})
	if err != nil {
		log.Fatal(err)
	}
	for _, m := range s.Members {
		fmt.Println(m.Rank, m.Tied, m.Member.ID, m.Total, m.Missing)
	}
	// Output:
	// 1 false 7 0 [placing: class "beef" quality: class "coolers" yield: class "coolers" reasons: class "beef"]
}

func ExampleTeamLine() {
	tally := invented().Tally()
	if err := errors.Join(tally.Enter(ada), tally.Enter(ben)); err != nil {
		log.Fatal(err)
	}
	s, err := tally.Standings(contest.View{})
	if err != nil {
		log.Fatal(err)
	}
	for _, t := range s.Teams {
		fmt.Println(t.Rank, t.Team, t.Total, t.Counting, t.Short)
	}
	// Output:
	// 1 North Fork 0 [7 8] true
}

func ExampleContest_Feedback() {
	f, err := invented().Feedback("7", []contest.PlacingCard{adasPlacing()}, []contest.Estimate{adasEstimate()}, []contest.HandScore{adasReasons()})
	if err != nil {
		log.Fatal(err)
	}
	fmt.Print(f)
	// Output:
	// member 7: 102 of 120 points on these cards
	// class beef: placed 2-3-4-1, official 3-2-1-4 cuts 2-8-2: 46
	//   3 goes over 2: reversed, costs 2
	//   1 goes over 4: reversed, costs 2
	// class coolers, exhibit 1: quality Average Choice, official Low Choice: 1 line too good, loses 2
	// class coolers, exhibit 1: yield 2.7, official 3: 3 steps too low, loses 3
	//   ribeye -0.32
	//   fat -0.25
	//   KPH +0.2
	//   arithmetic and rounding +0.07
	// reasons: class "beef": 41 of 50
}

func ExampleFeedback() {
	f, err := invented().Feedback("7", nil, []contest.Estimate{adasEstimate()}, nil)
	if err != nil {
		log.Fatal(err)
	}
	fmt.Println(f.Member.Team, f.Scored, f.Of, len(f.Quality), len(f.Yield))
	fmt.Print(f)
	// Output:
	// North Fork 15 20 1 1
	// member 7: 15 of 20 points on these cards
	// class coolers, exhibit 1: quality Average Choice, official Low Choice: 1 line too good, loses 2
	// class coolers, exhibit 1: yield 2.7, official 3: 3 steps too low, loses 3
	//   ribeye -0.32
	//   fat -0.25
	//   KPH +0.2
	//   arithmetic and rounding +0.07
}

func ExamplePlacingFeedback() {
	f, err := invented().Feedback("7", []contest.PlacingCard{adasPlacing()}, nil, nil)
	if err != nil {
		log.Fatal(err)
	}
	p := f.Placings[0]
	fmt.Println(p.Class, p.Official, p.Card.Order, p.Scored)
	for _, v := range p.Faults {
		fmt.Println(v.Upper, "over", v.Lower, "costs", v.Points)
	}
	// Output:
	// beef 3-2-1-4 cuts 2-8-2 2-3-4-1 46
	// 3 over 2 costs 2
	// 1 over 4 costs 2
}

func ExampleEstimateFeedback() {
	f, err := invented().Feedback("7", nil, []contest.Estimate{adasEstimate()}, nil)
	if err != nil {
		log.Fatal(err)
	}
	q, y := f.Quality[0], f.Yield[0]
	fmt.Println(q.Exhibit, q.Key, q.Answer, q.Off, q.Lost)
	fmt.Println(y.Exhibit, y.Key, y.Answer, y.Off, y.Lost, y.Split.Ribeye)
	// Output:
	// 1 Low Choice Average Choice 1 2
	// 1 3 2.7 -3 3 -0.32
}

func ExampleSplitYield() {
	split, err := contest.SplitYield(official(), adasEstimate().Facts)
	fmt.Println(split.Error, err)
	// Output:
	// -0.3 <nil>
}

func ExampleYieldSplit() {
	split, err := contest.SplitYield(official(), adasEstimate().Facts)
	if err != nil {
		log.Fatal(err)
	}
	fmt.Println(split.IsValid(), split.Error)
	for name, yield := range split.Parts() {
		fmt.Println(name, yield)
	}
	// Output:
	// true -0.3
	// ribeye -0.32
	// fat -0.25
	// KPH 0.2
	// arithmetic and rounding 0.07
	// weight 0
}
