package grade_test

import (
	"slices"
	"testing"

	"example.com/ribface/grade"
	"example.com/ribface/internal/testkit/faulttest"
	gocmp "github.com/google/go-cmp/cmp"
)

// TestGradeOrder holds the grades, worst first, and their names.
func TestGradeOrder(t *testing.T) {
	want := []string{"unset", "No grade", "Canner", "Cutter", "Utility", "Commercial", "Standard", "Good", "Select", "Choice", "Prime", "grade(11)"}
	for i, name := range want {
		g := grade.Grade(i)
		if g.String() != name || g.IsValid() != (i >= 1 && i <= 10) {
			t.Errorf("Grade(%d) is %q, valid %v", i, g, g.IsValid())
		}
	}
	if grade.Prime != 10 || grade.NoGrade != 1 {
		t.Error("the constants have moved")
	}
}

// TestPart holds the parts and what a grade makes of them.
func TestPart(t *testing.T) {
	for p, name := range map[grade.Part]string{grade.Whole: "whole", grade.Low: "Low", grade.Average: "Average", grade.High: "High", 4: "part of a grade(4)"} {
		if p.String() != name {
			t.Errorf("Part(%d) is %q", p, p)
		}
	}
	for g := grade.Grade(0); g <= 12; g++ {
		for p := grade.Part(0); p <= 5; p++ {
			q := g.Part(p)
			ok := g.IsValid() && p <= grade.High && (g != grade.NoGrade || p == grade.Whole)
			switch {
			case !ok && (q != 0 || q.IsValid()):
				t.Errorf("%v of %v is %v", p, g, q)
			case ok && (!q.IsValid() || q.Grade() != g || q.Part() != p || int(q) != int(g)*4+int(p)):
				t.Errorf("%v of %v is %v: %v, %v", p, g, q, q.Grade(), q.Part())
			}
		}
	}
}

// TestQuality holds the words and the validity of every number that a Quality
// can hold.
func TestQuality(t *testing.T) {
	valid := map[grade.Quality]bool{}
	last := grade.Quality(0)
	for q := range grade.Qualities() {
		if q <= last {
			t.Errorf("%v comes after %v", q, last)
		}
		valid[q], last = true, q
	}
	if len(valid) != 37 || last != grade.Prime.Part(grade.High) {
		t.Errorf("%d qualities up to %v, want 37 up to High Prime", len(valid), last)
	}
	n := 0
	for range grade.Qualities() {
		if n++; n == 3 {
			break
		}
	}
	if n != 3 {
		t.Errorf("stopped after %d", n)
	}
	for i := range 256 {
		q := grade.Quality(i)
		if q.IsValid() != valid[q] {
			t.Errorf("Quality(%d) is valid: %v", i, q.IsValid())
		}
		if !valid[q] && q != 0 {
			if q.String() != "Quality(?)" {
				t.Errorf("Quality(%d) is %q", i, q)
			}
			_, err := q.AppendText(nil)
			faulttest.Field(t, "AppendText", err, grade.FieldError{Field: "quality", Value: "Quality(?)", Allowed: "a grade and a part of it", Err: grade.ErrUnknown})
		}
	}
	for q, want := range map[grade.Quality]string{
		0: "unset", grade.NoGrade.Part(grade.Whole): "No grade", grade.Utility.Part(grade.Whole): "Utility",
		grade.Choice.Part(grade.Low): "Low Choice", grade.Choice.Part(grade.Average): "Average Choice", grade.Choice.Part(grade.High): "High Choice", grade.Choice.Part(grade.Whole): "Choice",
	} {
		if q.String() != want {
			t.Errorf("%d is %q, want %q", q, q, want)
		}
	}
	if c := grade.Choice; c.Part(grade.Low).Compare(c.Part(grade.High)) != -1 || c.Part(grade.Low).Compare(grade.Select.Part(grade.High)) != 1 || c.Part(grade.Low).Compare(c.Part(grade.Low)) != 0 {
		t.Error("Compare is out of order")
	}
	if !slices.IsSortedFunc([]grade.Quality{grade.Select.Part(grade.High), grade.Choice.Part(grade.Whole), grade.Choice.Part(grade.Low)}, grade.Quality.Compare) {
		t.Error("a grade without part does not come before its parts")
	}
}

// TestParseQuality holds the spellings and the reasons.
func TestParseQuality(t *testing.T) {
	const allowed = "a grade (No grade, Canner, Cutter, Utility, Commercial, Standard, Good, Select, Choice, Prime), with Low, Average or High before it where it is split"
	for _, tt := range []struct {
		name, in string
		want     grade.Quality
		err      error
	}{
		{"with part", "Low Choice", grade.Choice.Part(grade.Low), nil},
		{"grade alone", "Choice", grade.Choice.Part(grade.Whole), nil},
		{"minus", "Choice-", grade.Choice.Part(grade.Low), nil},
		{"plus", "Choice+", grade.Choice.Part(grade.High), nil},
		{"plus on the shortest", "Good+", grade.Good.Part(grade.High), nil},
		{"no grade", "No grade", grade.NoGrade.Part(grade.Whole), nil},
		{"empty", "", 0, grade.ErrSyntax},
		{"sign alone", "+", 0, grade.ErrUnknown},
		{"sign on no grade", "No grade-", 0, grade.ErrUnknown},
		{"sign on a part", "Low Choice+", 0, grade.ErrUnknown},
		{"two signs", "Choice++", 0, grade.ErrUnknown},
		{"another sign", "Choice*", 0, grade.ErrUnknown},
		{"sign on nothing known", "Chuck+", 0, grade.ErrUnknown},
		{"part of no grade", "Low No grade", 0, grade.ErrUnknown},
		{"words for zero", "unset", 0, grade.ErrUnknown},
		{"words for the invalid", "Quality(?)", 0, grade.ErrUnknown},
	} {
		t.Run(tt.name, func(t *testing.T) {
			got, err := grade.ParseQuality(tt.in)
			if got != tt.want {
				t.Errorf("%q is %v, want %v", tt.in, got, tt.want)
			}
			if tt.err != nil {
				faulttest.Parse(t, tt.name, err, grade.ParseError{Kind: "quality", Input: tt.in, Allowed: allowed, Err: tt.err})
			} else if err != nil {
				t.Error(err)
			}
		})
	}
}

// TestTier holds the tier of every quality.
func TestTier(t *testing.T) {
	of := map[grade.Grade]grade.Tier{
		grade.NoGrade: grade.BelowStandard, grade.Canner: grade.BelowStandard, grade.Cutter: grade.BelowStandard, grade.Utility: grade.BelowStandard,
		grade.Commercial: grade.BelowStandard, grade.Standard: grade.StandardTier, grade.Good: grade.SelectTier, grade.Select: grade.SelectTier, grade.Prime: grade.PrimeTier,
	}
	for q := range grade.Qualities() {
		want := of[q.Grade()]
		if q.Grade() == grade.Choice {
			want = grade.LowChoice
			if q.Part() == grade.Average || q.Part() == grade.High {
				want = grade.TopChoice
			}
		}
		if got := q.Tier(); got != want {
			t.Errorf("%v is in tier %v, want %v", q, got, want)
		}
	}
	if got := grade.Quality(0).Tier(); got != 0 {
		t.Errorf("the unset quality is in tier %v", got)
	}
	names := []string{"unset", "below standard", "standard", "select", "low choice", "top choice", "prime", "tier(7)"}
	var got []string
	for i := range names {
		got = append(got, grade.Tier(i).String())
	}
	if diff := gocmp.Diff(names, got); diff != "" {
		t.Errorf("(-want +got)\n%s", diff)
	}
}
