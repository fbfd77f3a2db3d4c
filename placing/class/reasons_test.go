package class_test

import (
	"slices"
	"strconv"
	"strings"
	"testing"

	"example.com/ribface/grade"
	"example.com/ribface/maturity"
	"example.com/ribface/placing/class"
	"pgregory.net/rapid"
)

func itoa(n int) string { return strconv.Itoa(n) }

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
			if i > 0 && all[i-1].Effect.Compare(r.Effect) > 0 || r.Effect.Units() <= 0 {
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
			case grade.TraitMarbling:
				x.Marbling += grade.Marbling(one(int64(before.Marbling - after.Marbling)))
			case grade.TraitFat:
				x.Measures.Fat = grade.ThicknessUnits(back(before.Measures.Fat, after.Measures.Fat))
			case grade.TraitRibeye:
				x.Measures.Ribeye = grade.AreaUnits(back(before.Measures.Ribeye, after.Measures.Ribeye))
			case grade.TraitKPH:
				x.Measures.KPH = grade.ShareUnits(back(before.Measures.KPH, after.Measures.KPH))
			case grade.TraitWeight:
				if c.Posted.IsSet() {
					t.Fatal("weight turns a class with a posted one")
				}
				x.Measures.Weight = grade.WeightUnits(back(before.Measures.Weight, after.Measures.Weight))
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

// one is the sign of a change that is none of 0.
func one(n int64) int64 {
	if n < 0 {
		return -1
	}
	return 1
}

// back is the count of a changed measure one unit nearer to what it was.
func back(before, after interface{ Units() int64 }) int64 {
	return after.Units() + one(before.Units()-after.Units())
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
		"2 fat 0.4 in to 0.2 in, -0.2 in, effect 0.5, placed 2-1",
		"2 ribeye 13 sq in to 14.5625 sq in, +1.5625 sq in, effect 0.5, placed 2-1",
		"2 KPH 2.5% to 0%, -2.5%, effect 0.5, placed 2-1",
		"1 fat 0.8 in to 1 in, +0.2 in, effect 0.5, placed 2-1",
		"1 ribeye 13 sq in to 11.4375 sq in, -1.5625 sq in, effect 0.5, placed 2-1",
		"1 KPH 2.5% to 5%, +2.5%, effect 0.5, placed 2-1",
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
		if r.Exhibit == 2 && r.Trait == grade.TraitFat && r.To != "0.5001 in" {
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
			if r.Exhibit == exhibit && r.Trait == grade.TraitFat {
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
			Fat:      grade.ThicknessUnits(int64(rapid.IntRange(0, 2).Draw(t, "± fat") * 500)),
			Ribeye:   grade.AreaUnits(int64(rapid.IntRange(0, 2).Draw(t, "± ribeye") * 5000)),
			KPH:      grade.ShareUnits(int64(rapid.IntRange(0, 1).Draw(t, "± KPH") * 5000)),
			Weight:   grade.WeightUnits(int64(rapid.IntRange(0, 1).Draw(t, "± weight") * 100_000)),
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
		within := func(n int64, name string) int64 {
			return rapid.SampledFrom([]int64{-n, 0, n}).Draw(t, name)
		}
		moved := c
		moved.Exhibits = slices.Clone(c.Exhibits)
		for i := range moved.Exhibits {
			x := &moved.Exhibits[i].Carcass
			x.Measures.Fat = grade.ThicknessUnits(x.Measures.Fat.Units() + within(tol.Fat.Units(), "fat"))
			x.Measures.Ribeye = grade.AreaUnits(x.Measures.Ribeye.Units() + within(tol.Ribeye.Units(), "ribeye"))
			x.Measures.KPH = grade.ShareUnits(x.Measures.KPH.Units() + within(tol.KPH.Units(), "KPH"))
			x.Measures.Weight = grade.WeightUnits(x.Measures.Weight.Units() + within(tol.Weight.Units(), "weight"))
			x.Marbling += grade.Marbling(within(int64(tol.Marbling), "marbling"))
			x.Maturity.Skeletal += maturity.Score(within(int64(tol.Maturity), "skeletal"))
			x.Maturity.Lean += maturity.Score(within(int64(tol.Maturity), "lean"))
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
	_, err = graded(t, c).CouldReverse(class.NotesPolicy(), grade.Tolerances{Fat: grade.ThicknessUnits(-1)})
	wantError(t, "tolerance", "tolerance of fat: -0.0001 in: out of range; allowed: 0 in to 3 in", err)
	x := steer("Sm40", 0.4, 13, 2.5, 800)
	if got, err := graded(t, classOf(x, x)).CouldReverse(class.NotesPolicy(), grade.Tolerances{Fat: grade.Inches(0.1)}); err != nil || got != nil {
		t.Errorf("two alike: %v, %v", got, err)
	}
}
