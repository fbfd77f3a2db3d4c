package grade_test

import (
	"math"
	"testing"

	"example.com/ribface/grade"
	"example.com/ribface/internal/testkit/faulttest"
	"example.com/ribface/maturity"
)

// TestAdjusted holds the fat adjustment at both ends, before and after.
func TestAdjusted(t *testing.T) {
	with := func(fat, adjust grade.Thickness) grade.Carcass {
		c := carcass("A50", "Sm00")
		c.Measures.Fat, c.FatAdjust = fat, adjust
		return c
	}
	for _, tt := range []struct {
		name        string
		fat, adjust grade.Thickness
		want        grade.Thickness
	}{
		{"none", grade.Inches(0.6), grade.Inches(0), grade.Inches(0.6)}, {"up", grade.Inches(0.6), grade.Inches(0.1), grade.Inches(0.7)}, {"down", grade.Inches(0.6), grade.Inches(-0.1), grade.Inches(0.5)},
		{"down to nothing", grade.Inches(0.6), grade.Inches(-0.6), grade.Inches(0)}, {"up to the most", grade.Inches(2), grade.Inches(1), grade.Inches(3)},
		{"the most at once", grade.Inches(0), grade.Inches(3), grade.Inches(3)}, {"the least at once", grade.Inches(3), grade.Inches(-3), grade.Inches(0)},
	} {
		t.Run(tt.name, func(t *testing.T) {
			c := with(tt.fat, tt.adjust)
			want := c.Measures
			want.Fat = tt.want
			got, err := c.Adjusted()
			if err != nil || got != want {
				t.Errorf("%+v, %v; want %+v", got, err, want)
			}
			y, err := want.Yield()
			if err != nil {
				t.Fatal(err)
			}
			a, err := grade.Current.Assess(c)
			if err != nil || a.Yield != y || a.Carcass != c {
				t.Errorf("Assess: %v, %v; want yield %v and the carcass as given", a.Yield, err, y)
			}
		})
	}
	const adjustments, fats = "-3 in to 3 in", "0 in to 3 in"
	for _, tt := range []struct {
		name string
		c    grade.Carcass
		want grade.FieldError
	}{
		{"bad measures first", with(grade.ThicknessUnits(-1), grade.Inches(4)), grade.FieldError{Field: "fat", Value: "-0.0001 in", Allowed: fats, Err: grade.ErrRange}},
		{"bad measures, no adjustment", with(grade.Inches(3.0001), grade.Inches(0)), grade.FieldError{Field: "fat", Value: "3.0001 in", Allowed: fats, Err: grade.ErrRange}},
		{"adjustment over 3 in", with(grade.Inches(0), grade.Inches(3.0001)), grade.FieldError{Field: "fat adjustment", Value: "3.0001 in", Allowed: adjustments, Err: grade.ErrRange}},
		{"adjustment under -3 in", with(grade.Inches(3), grade.Inches(-3.0001)), grade.FieldError{Field: "fat adjustment", Value: "-3.0001 in", Allowed: adjustments, Err: grade.ErrRange}},
		{"adjustment not a number", with(grade.Inches(0.6), grade.Inches(math.NaN())), grade.FieldError{Field: "fat adjustment", Value: "not a number", Allowed: adjustments, Err: grade.ErrRange}},
		{"below nothing", with(grade.Inches(0.6), grade.Inches(-0.6001)), grade.FieldError{Field: "adjusted fat", Value: "-0.0001 in", Allowed: fats, Err: grade.ErrRange}},
		{"over the most", with(grade.Inches(2.0001), grade.Inches(1)), grade.FieldError{Field: "adjusted fat", Value: "3.0001 in", Allowed: fats, Err: grade.ErrRange}},
	} {
		t.Run(tt.name, func(t *testing.T) {
			m, err := tt.c.Adjusted()
			faulttest.Field(t, "Adjusted", err, tt.want)
			a, err := grade.Current.Assess(tt.c)
			faulttest.Field(t, "Assess", err, tt.want)
			if m != (grade.Measures{}) || a != (grade.Assessment{}) {
				t.Errorf("beside the error: %+v, %+v", m, a)
			}
		})
	}
}

// TestAssess holds the whole of one assessment.
func TestAssess(t *testing.T) {
	c := carcass("A50", "Sm40")
	c.Maturity.Lean = maturity.A.At(70)
	r := grade.Rules{Edition: grade.Edition1997, Maturity: maturity.Balancing{Tens: maturity.TensTowardLean}}
	got, err := r.Assess(c)
	if err != nil {
		t.Fatal(err)
	}
	want := grade.Assessment{Carcass: c, Rules: r, Maturity: maturity.A.At(60), Quality: grade.Choice.Part(grade.Low), Yield: grade.Grades(3)}
	if got != want {
		t.Errorf("got %+v, want %+v", got, want)
	}
	c.Sex = grade.Bull
	if a, err := r.Assess(c); err != nil || a.Quality.String() != "No grade" || a.Yield != grade.Grades(3) || a.Maturity != maturity.A.At(60) {
		t.Errorf("a bull: %+v, %v", a, err)
	}
}
