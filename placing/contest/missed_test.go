package contest_test

import (
	"fmt"
	"testing"

	"example.com/ribface/grade"
	"example.com/ribface/internal/testkit/faulttest"
	"example.com/ribface/maturity"
	"example.com/ribface/placing"
	"example.com/ribface/placing/class"
	"example.com/ribface/placing/contest"
	"github.com/google/go-cmp/cmp"
)

// hanging is an invented class of four steers, which the policy places 3-1-2-4.
func hanging() class.Graded {
	c := class.Class{Rules: grade.Rules{Edition: grade.Current}, Posted: grade.Pounds(800)}
	for i, x := range []struct {
		marbling         grade.Marbling
		fat, ribeye, kph float64
	}{
		{grade.Small.At(40), 0.50, 13.4, 2.5},
		{grade.Slight.At(60), 0.30, 14.6, 2.0},
		{grade.Modest.At(50), 0.60, 13.0, 3.0},
		{grade.Traces.At(80), 0.70, 11.8, 3.5},
	} {
		c.Exhibits = append(c.Exhibits, class.Exhibit{Number: i + 1, Carcass: grade.Carcass{
			Sex: grade.Steer, Maturity: maturity.Evidence{Skeletal: maturity.A.At(60), Lean: maturity.A.At(50)}, Marbling: x.marbling,
			Measures: grade.Measures{Fat: grade.Inches(x.fat), Ribeye: grade.SquareInches(x.ribeye), KPH: grade.Percent(x.kph)},
		}})
	}
	g, err := c.Grade()
	if err != nil {
		panic(err)
	}
	return g
}

func missed(t *testing.T, official, card string) []contest.Missed {
	t.Helper()
	o, err := placing.ParseOfficial(official)
	if err != nil {
		t.Fatal(err)
	}
	all, err := contest.PlacingFeedback{Official: o, Card: placing.Card{Order: placing.MustParseOrder(card)}}.Missed(hanging(), class.DefaultPolicy())
	if err != nil {
		t.Fatal(err)
	}
	return all
}

// TestMissed holds that the reasons are those for the official placing, whoever
// made it: a committee that has 1 over 3 against the policy is argued for.
func TestMissed(t *testing.T) {
	var got []string
	for _, m := range missed(t, "1-3-2-4 cuts 2-4-5", "3-2-1-4") {
		got = append(got, m.String())
	}
	want := []string{
		"1 over 3, costs 2: 1 goes over 3 on cutability. 1 had less fat opposite a slightly larger ribeye, an advantage of about half a yield grade. I grant that 3 had more marbling and should grade average Choice.",
		"1 over 2, costs 6: 1 goes over 2 on quality. 1 had more marbling and should grade Choice, where 2 is Select. I grant that 2 had less fat opposite a larger ribeye and should have the lower yield grade.",
	}
	if d := cmp.Diff(want, got); d != "" {
		t.Errorf("(-want +got):\n%s", d)
	}
}

// TestMissedEverything turns every official placing of the class upside down: the
// pairs and costs are those of the official placing, and no reason argues for the
// card.
func TestMissedEverything(t *testing.T) {
	for order := range placing.Orders(4) {
		for card := range placing.Orders(4) {
			o, err := placing.NewOfficial(order, placing.MustParseCuts("2-8-2"))
			if err != nil {
				t.Fatal(err)
			}
			var faults []placing.Fault
			for _, m := range missed(t, o.String(), card.String()) {
				faults = append(faults, m.Fault)
				if m.Why.Upper != m.Upper || m.Why.Lower != m.Lower {
					t.Errorf("%v, card %v: %+v", order, card, m)
				}
				for _, s := range m.Why.Over {
					for _, f := range s.Facts {
						if order.Place(f.Better) > order.Place(f.Worse) {
							t.Errorf("%v, card %v: %v", order, card, f)
						}
					}
				}
			}
			var want []placing.Fault
			for f := range o.Faults(card) {
				want = append(want, f)
			}
			if d := cmp.Diff(want, faults); d != "" {
				t.Errorf("%v, card %v (-want +got):\n%s", order, card, d)
			}
		}
	}
}

func TestMissedRefused(t *testing.T) {
	o, err := placing.ParseOfficial("1-2-3 cuts 2-2")
	if err != nil {
		t.Fatal(err)
	}
	_, err = contest.PlacingFeedback{Official: o}.Missed(hanging(), class.DefaultPolicy())
	faulttest.Field(t, "size", err, placing.FieldError{Field: "class", Value: "4 exhibits", Allowed: "the 3 of the official placing", Err: placing.ErrRange})
	if o, err = placing.ParseOfficial("1-2-3-4 cuts 2-2-2"); err != nil {
		t.Fatal(err)
	}
	if all, err := (contest.PlacingFeedback{Official: o, Card: placing.Card{Mark: placing.Blank}}).Missed(hanging(), class.DefaultPolicy()); all != nil || err != nil {
		t.Errorf("a blank card: %v, %v", all, err)
	}
	if _, err := (contest.PlacingFeedback{Official: o, Card: placing.Card{Order: placing.MustParseOrder("2-1-3-4")}}).Missed(hanging(), class.Policy{}); err == nil {
		t.Error("no policy")
	}
}

func ExamplePlacingFeedback_Missed() {
	o, _ := placing.ParseOfficial("3-1-2-4 cuts 3-4-5")
	card := contest.PlacingFeedback{Official: o, Card: placing.Card{Order: placing.MustParseOrder("1-3-2-4")}}
	all, err := card.Missed(hanging(), class.DefaultPolicy())
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, m := range all {
		fmt.Println(m.Points, "points:", m.Why.Spoken())
	}
	// Output:
	// 3 points: 3 goes over 1 on quality. 3 had more marbling and should grade average Choice, where 1 is low Choice. I grant that 1 had less fat opposite a slightly larger ribeye and should have the lower yield grade.
}

func ExampleMissed() {
	o, _ := placing.ParseOfficial("3-1-2-4 cuts 3-4-5")
	all, _ := contest.PlacingFeedback{Official: o, Card: placing.Card{Order: placing.MustParseOrder("1-3-2-4")}}.Missed(hanging(), class.DefaultPolicy())
	fmt.Println(all[0].Upper, "over", all[0].Lower, "on", all[0].Why.On, "costs", all[0].Points)
	// Output:
	// 3 over 1 on quality costs 3
}
