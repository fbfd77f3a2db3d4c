package class_test

import (
	"errors"
	"reflect"
	"slices"
	"testing"

	"example.com/ribface/grade"
	"example.com/ribface/maturity"
	"example.com/ribface/placing"
	"example.com/ribface/placing/class"
	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

func TestGradeRefuses(t *testing.T) {
	good := steer("Sm40", 0.4, 13, 2.5, 800)
	numbered := func(numbers ...int) class.Class {
		c := class.Class{Rules: grade.Rules{Edition: grade.Current}}
		for _, n := range numbers {
			c.Exhibits = append(c.Exhibits, class.Exhibit{Number: n, Carcass: good})
		}
		return c
	}
	bad := numbered(2, 1)
	bad.Exhibits[0].Carcass.Measures.Ribeye = grade.Area{}
	light := numbered(1, 2)
	light.Exhibits[1].Carcass.Measures.Weight = grade.Weight{}
	posted := numbered(1, 2)
	posted.Posted = grade.Pounds(-800)
	noRules := numbered(1, 2)
	noRules.Rules = grade.Rules{}
	walk := numbered(1, 2)
	walk.Walk = class.Walk{{Site: class.FatRump}}
	many := make([]int, 13)
	for i := range many {
		many[i] = i + 1
	}
	tests := []struct {
		name string
		c    class.Class
		want string
	}{
		{"no exhibits", class.Class{}, "exhibits: 0: out of range; allowed: 2 to 12"},
		{"one", numbered(1), "exhibits: 1: out of range; allowed: 2 to 12"},
		{"thirteen", numbered(many...), "exhibits: 13: out of range; allowed: 2 to 12"},
		{"a number too low", numbered(1, 0), "exhibit number: 0: out of range; allowed: each exhibit 1 to 2 once"},
		{"a number too high", numbered(1, 3), "exhibit number: 3: out of range; allowed: each exhibit 1 to 2 once"},
		{"a number twice", numbered(2, 2), "exhibit number: 2: repeated; allowed: each exhibit 1 to 2 once"},
		{"a measure missing", bad, "exhibit 2: ribeye: missing; allowed: 1 sq in to 25 sq in"},
		{"no weight", light, "exhibit 2: weight: missing; allowed: 100 lb to 1800 lb"},
		{"a posted weight that is none", posted, "posted weight: -800 lb: out of range; allowed: 100 lb to 1800 lb"},
		{"no edition", noRules, "edition: missing; allowed: 1975, 1987, 1997, 2016, 2017"},
		{"a bad walk", walk, "walk: fat over rump: missing; allowed: a ranking of 2 exhibits"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			g, err := tt.c.Grade()
			wantError(t, tt.name, tt.want, err)
			if g.Len() != 0 {
				t.Errorf("%d exhibits with an error", g.Len())
			}
			var fe *placing.FieldError
			if !errors.As(err, &fe) {
				t.Errorf("%T is no FieldError", err)
			}
		})
	}
	if _, err := numbered(many[:12]...).Grade(); err != nil {
		t.Errorf("twelve: %v", err)
	}
	// With a posted weight no exhibit needs one of its own.
	light.Posted = grade.Pounds(800)
	if g := graded(t, light); g.Assessment(1) != g.Assessment(2) {
		t.Error("the posted weight is not the weight of all")
	}
	for _, w := range []float64{100, 1800} {
		light.Posted = grade.Pounds(w)
		if _, err := light.Grade(); err != nil {
			t.Errorf("posted %v: %v", light.Posted, err)
		}
	}
}

func TestGraded(t *testing.T) {
	c := four()
	slices.Reverse(c.Exhibits)
	g := graded(t, c)
	var numbers []int
	for e := range g.Exhibits() {
		numbers = append(numbers, e.Number)
		if e.Carcass.Measures.Weight != grade.Pounds(800) || g.Assessment(e.Number).Carcass != e.Carcass {
			t.Errorf("exhibit %d is graded at %v", e.Number, e.Carcass.Measures.Weight)
		}
	}
	if diff := cmp.Diff([]int{1, 2, 3, 4}, numbers); diff != "" {
		t.Errorf("numbers (-want +got):\n%s", diff)
	}
	if g.Assessment(0) != (grade.Assessment{}) || g.Assessment(5) != (grade.Assessment{}) {
		t.Error("an assessment of no exhibit")
	}
	want := four()
	slices.Reverse(want.Exhibits)
	if diff := cmp.Diff(want, g.Class()); diff != "" {
		t.Errorf("Class (-want +got):\n%s", diff)
	}
	// What was handed in or out is not the class's own.
	c.Exhibits[0].Number, c.Walk[0].Site = 9, class.FatNeck
	out := g.Class()
	out.Exhibits[0].Number, out.Walk[0].Site = 9, class.FatNeck
	if again := g.Class(); again.Exhibits[0].Number != 4 || again.Walk[0].Site != class.FatRump {
		t.Errorf("changed from outside: %+v", again.Exhibits[0])
	}
}

func TestCautions(t *testing.T) {
	c := four()
	c.Walk = nil
	if diff := cmp.Diff([]string{"every exhibit is graded at the posted weight of 800 lb, not at its own"}, graded(t, c).Cautions()); diff != "" {
		t.Errorf("posted (-want +got):\n%s", diff)
	}
	c.Posted = grade.Weight{}
	if notes := graded(t, c).Cautions(); notes != nil {
		t.Errorf("notes without a need: %q", notes)
	}
	c.Exhibits[0].Carcass.Measures.Weight = grade.Pounds(840)
	if notes := graded(t, c).Cautions(); notes != nil {
		t.Errorf("50 lb apart: %q", notes)
	}
	c.Exhibits[0].Carcass.Measures.Weight = grade.Pounds(840.0001)
	c.Exhibits[1].Carcass.Measures.Fat = grade.Inches(2.2)
	c.Exhibits[2].Carcass.Maturity.Buttons = maturity.WhiteAndSoft // goes with A60
	c.Exhibits[3].Carcass.Maturity.Buttons = maturity.Ossified(20)
	for s := range class.Sites() {
		if s != class.FatCod && s != class.MuscleClod {
			c.Walk = append(c.Walk, class.Look{Site: s, Order: class.MustParseRanking("1 2 3 4")})
		}
	}
	want := []string{
		"own weights run from 790 lb to 840.0001 lb; classes are chosen within 50 lb",
		"exhibit 2: fat 2.2 in is outside the usual 0 in to 2 in",
		"exhibit 4: buttons 20% ossified do not go with skeletal maturity A60",
		"the walk is not finished; not looked at: fat in cod or udder, muscling of clod",
	}
	if diff := cmp.Diff(want, graded(t, c).Cautions()); diff != "" {
		t.Errorf("notes (-want +got):\n%s", diff)
	}
	c.Exhibits[2].Carcass.Measures.Weight = grade.Weight{}
	c.Posted = grade.Pounds(800)
	if n := graded(t, c).Cautions(); n[1] != want[0] {
		t.Errorf("an exhibit without a weight of its own: %q", n)
	}
}

func TestAdjust(t *testing.T) {
	c := four()
	d, err := c.Adjust(3, grade.Inches(0.1))
	if err != nil {
		t.Fatal(err)
	}
	if d, err = d.Adjust(1, grade.Inches(-0.2)); err != nil {
		t.Fatal(err)
	}
	if c.Exhibits[2].Carcass.FatAdjust.IsSet() || d.Exhibits[2].Carcass.FatAdjust != grade.Inches(0.1) || d.Exhibits[0].Carcass.FatAdjust != grade.Inches(-0.2) {
		t.Errorf("adjusted %+v of %+v", d.Exhibits, c.Exhibits)
	}
	before, after := graded(t, c), graded(t, d)
	if got := after.Assessment(3).Yield.Sub(before.Assessment(3).Yield); got != grade.Grades(0.25) {
		t.Errorf("0.1 in moves the yield by %v", got)
	}
	if got := before.Assessment(1).Yield.Sub(after.Assessment(1).Yield); got != grade.Grades(0.5) {
		t.Errorf("-0.2 in moves the yield by %v", got)
	}
	// A second adjustment replaces the first.
	if e, err := d.Adjust(3, grade.Thickness{}); err != nil || e.Exhibits[2].Carcass.FatAdjust.IsSet() || e.Exhibits[0].Carcass.FatAdjust != grade.Inches(-0.2) {
		t.Errorf("adjusted again: %+v, %v", e.Exhibits, err)
	}
	noWeight := four()
	noWeight.Exhibits[0].Carcass.Measures.Weight = grade.Weight{}
	if _, err := noWeight.Adjust(1, grade.Inches(0.1)); err != nil {
		t.Errorf("posted weight: %v", err)
	}
	_, err = c.Adjust(5, grade.Inches(0.1))
	wantError(t, "not in the class", "adjustment: exhibit: 5: unknown; allowed: an exhibit of the class", err)
	_, err = c.Adjust(2, grade.Inches(-0.31))
	wantError(t, "under no fat", "exhibit 2: adjusted fat: -0.01 in: out of range; allowed: 0 in to 3 in", err)
}

// TestPostedStandsIn leaves the weights out: whatever is asked of the class, the
// posted weight answers as if every exhibit had it for its own.
func TestPostedStandsIn(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		with := drawClass(t, 4)
		with.Posted = grade.Pounds(800)
		without := with
		without.Exhibits = slices.Clone(with.Exhibits)
		for i := range with.Exhibits {
			with.Exhibits[i].Carcass.Measures.Weight = with.Posted
			without.Exhibits[i].Carcass.Measures.Weight = grade.WeightUnits(0)
		}
		var told [2][]any
		for i, c := range []class.Class{with, without} {
			// Adjusting one asks for no weight of its own.
			adjusted, err := c.Adjust(1, grade.Inches(0.1))
			if err != nil {
				t.Fatal(err)
			}
			for _, c := range []class.Class{c, adjusted} {
				g, p := placed(t, c)
				cuts, err1 := p.ProposeCuts(p.Order, 0)
				all, err2 := g.Reversals(class.DefaultPolicy(), 1, 2)
				could, err3 := g.CouldReverse(class.DefaultPolicy(), grade.Tolerances{Fat: grade.Inches(0.1), Weight: grade.Pounds(20)})
				reasons, err4 := g.Reasons(p.Order, class.DefaultPolicy())
				splits, err5 := g.Splits(class.Policies()...)
				told[i] = append(told[i], p.Order, p.Decisions, cuts, could, g.Represent(), reasons.Pairs, reasons.Last, splits, g.Cautions(), slices.Collect(g.Exhibits()))
				for _, r := range all {
					told[i] = append(told[i], r.Exhibit, r.Trait, r.From, r.To, r.Effect, r.Order)
				}
				if err := errors.Join(err1, err2, err3, err4, err5); err != nil {
					t.Fatal(err)
				}
				if !g.Class().Posted.IsSet() {
					t.Fatal("no posted weight")
				}
			}
		}
		if !reflect.DeepEqual(told[0], told[1]) { // asked first, for it is ten times as fast
			if diff := cmp.Diff(told[0], told[1]); diff != "" {
				t.Fatalf("with the weights and without (-with +without):\n%s", diff)
			}
		}
	})
}
