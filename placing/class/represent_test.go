package class_test

import (
	"slices"
	"testing"

	"example.com/ribface/grade"
	"example.com/ribface/maturity/cite"
	"example.com/ribface/placing/class"
	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

// TestRepresent holds a class by hand. Rib fat from the fattest: 4 3 1 2. Exhibit 1
// stands first at the rump and the loin edge, third at the rib, and pushes 4 and 3
// down, so that only 1 is a finding.
func TestRepresent(t *testing.T) {
	got := graded(t, four()).Represent()
	want := []class.Finding{{
		Exhibit: 1, Fat: true, More: true, Sites: []class.Site{class.FatRump, class.FatLoinEdge},
		Usual: [2]grade.Thickness{grade.Inches(0.1), grade.Inches(0.2)},
		Cite:  cite.Citation{Standing: cite.Official, IDs: "cfr-1965-53-p26"},
	}}
	if d := cmp.Diff(want, got); d != "" {
		t.Fatalf("(-want +got):\n%s", d)
	}
	// The judge accepts one; nothing was graded by it before.
	c, err := four().Adjust(got[0].Exhibit, got[0].Usual[1])
	if err != nil || c.Exhibits[0].Carcass.FatAdjust != grade.Inches(0.2) {
		t.Errorf("accepted: %+v, %v", c.Exhibits[0], err)
	}
}

// TestRepresentBothWays has two exhibits change places everywhere, of which neither
// is the cause: both are findings, with the sentence that each makes.
func TestRepresentBothWays(t *testing.T) {
	c := classOf(steer("Sm40", 0.5, 12.9, 2.5, 700), steer("Sm40", 0.4, 13, 2.5, 900))
	c.Walk = class.Walk{
		{Site: class.FatBrisket, Order: class.MustParseRanking("2 1")},
		{Site: class.FatCod, Order: class.MustParseRanking("2 1")},
		{Site: class.FatHip, Order: class.MustParseRanking("2 1")},
		{Site: class.RoundWidth, Order: class.MustParseRanking("2 1")},
		{Site: class.MuscleLoin, Order: class.MustParseRanking("2 1")},
	}
	sentences := func(c class.Class) (all []string) {
		for _, f := range graded(t, c).Represent() {
			all = append(all, f.String())
		}
		return all
	}
	// The ribeye of 1 is the smaller, and for its weight the larger.
	want := []string{
		"1 is trimmer than its rib shows, over the hip and in the cod or udder and brisket.",
		"1 is lighter muscled than its ribeye shows, through the round and loin.",
		"2 is fatter than its rib shows, over the hip and in the cod or udder and brisket.",
		"2 is heavier muscled than its ribeye shows, through the round and loin.",
	}
	if d := cmp.Diff(want, sentences(c)); d != "" {
		t.Errorf("(-want +got):\n%s", d)
	}
	for _, f := range graded(t, c).Represent() {
		switch {
		case !f.Fat && (f.Usual != [2]grade.Thickness{} || f.Cite != cite.Citation{}):
			t.Errorf("%v has an adjustment", f)
		case f.Fat && !f.More && (f.Cite.Standing != cite.Memory || f.Usual[0] != grade.Inches(-0.1) || f.Usual[1] != grade.Inches(-0.2)):
			t.Errorf("down: %+v", f)
		}
	}
	// The measured fat counts, not the adjusted.
	d, err := c.Adjust(2, grade.Inches(0.2))
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(want, sentences(d)); diff != "" {
		t.Errorf("adjusted (-want +got):\n%s", diff)
	}
	c.Walk = nil
	if got := sentences(c); got != nil {
		t.Errorf("no walk: %v", got)
	}
	if got := (class.Graded{}).Represent(); got != nil {
		t.Errorf("no class: %v", got)
	}
	if got := (class.Finding{Exhibit: 1}).String(); got != "1 is lighter muscled than its ribeye shows." {
		t.Errorf("no sites: %q", got)
	}
}

// TestPassed holds whose move is only that of another going past it.
func TestPassed(t *testing.T) {
	tests := []struct {
		name  string
		fats  []float64 // of the exhibits at the rib
		looks [2]string
		want  []int // exhibits with a finding
	}{
		{"the first sinks to the last, and the others rise by that", []float64{0.8, 0.6, 0.4, 0.2}, [2]string{"2 3 4 1", "2 3 4 1"}, []int{1}},
		{"the last rises to the first, and the others sink by that", []float64{0.8, 0.6, 0.4, 0.2}, [2]string{"4 1 2 3", "4 1 2 3"}, []int{4}},
		{"one that moves as far is no cause", []float64{0.8, 0.6}, [2]string{"2 1", "2 1"}, []int{1, 2}},
		{"who stays ahead has not passed", []float64{0.8, 0.6, 0.4, 0.2}, [2]string{"1 4 3 2", "1 4 3 2"}, []int{2, 4}},
		{"level at the rib, to leave from there is not to pass", []float64{0.6, 0.6, 0.4, 0.2, 0.1}, [2]string{"1 3 2 4 5", "1 3 2 4 5"}, []int{2}},
		{"the first draws level with the last", []float64{0.8, 0.6, 0.5, 0.4, 0.2}, [2]string{"2 3 1=5 4", "2 3 1=5 4"}, []int{1, 5}},
		{"the last draws level with the first", []float64{0.8, 0.6, 0.5, 0.4, 0.2}, [2]string{"2 1=5 3 4", "2 1=5 3 4"}, []int{1, 5}},
		{"half a place a site is none", []float64{0.8, 0.6}, [2]string{"1=2", "1=2"}, nil},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			var c []grade.Carcass
			for _, f := range tt.fats {
				c = append(c, steer("Sm40", f, 13, 2.5, 800))
			}
			walked := classOf(c...)
			walked.Walk = class.Walk{{Site: class.FatRump, Order: class.MustParseRanking(tt.looks[0])}, {Site: class.FatBrisket, Order: class.MustParseRanking(tt.looks[1])}}
			var got []int
			for _, f := range graded(t, walked).Represent() {
				got = append(got, f.Exhibit)
			}
			if d := cmp.Diff(tt.want, got); d != "" {
				t.Errorf("(-want +got):\n%s", d)
			}
		})
	}
}

// TestRepresentHolds counts the places of every finding again.
func TestRepresentHolds(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := drawClass(t, 6)
		g := graded(t, c)
		// ahead counts twice the places of an exhibit from the top, by how many
		// are over it and how many are level.
		ahead := func(e int, higher func(a, b int) int) (place int) {
			for o := 1; o <= g.Len(); o++ {
				if o != e {
					place += 1 + higher(o, e)
				}
			}
			return place + 2
		}
		rib := func(fat bool) func(a, b int) int {
			value := func(e int) int64 {
				m := g.Assessment(e).Carcass.Measures
				if fat {
					return m.Fat.Units()
				}
				need, _ := m.Weight.RequiredRibeye()
				return m.Ribeye.Units() - need.Units()
			}
			return func(a, b int) int {
				switch x, y := value(a), value(b); {
				case x > y:
					return 1
				case x < y:
					return -1
				}
				return 0
			}
		}
		for _, f := range g.Represent() {
			shift, looks := 0, 0
			var sites []class.Site
			for s := range class.Sites() {
				order, ok := c.Walk.At(s)
				if !ok || s.Fat() != f.Fat {
					continue
				}
				looks++
				by := ahead(f.Exhibit, rib(f.Fat)) - ahead(f.Exhibit, func(a, b int) int {
					return min(max(int(order.Place(b)-order.Place(a)), -1), 1)
				})
				shift += by
				if by > 0 == f.More && by != 0 {
					sites = append(sites, s)
				}
			}
			if looks == 0 || f.More && shift < 2*looks || !f.More && shift > -2*looks || !slices.Equal(sites, f.Sites) {
				t.Fatalf("%+v: a shift of %d half places over %d sites, at %v", f, shift, looks, sites)
			}
		}
	})
}
