package grade_test

import (
	"slices"
	"testing"

	"example.com/ribface/grade"
	"example.com/ribface/internal/testkit/faulttest"
	gocmp "github.com/google/go-cmp/cmp"
)

// TestTrapMdIsModerate holds that Md is Moderate and Mt is Modest, in every
// spelling, and never the other way round (published: ttu-maturity-dental).
func TestTrapMdIsModerate(t *testing.T) {
	for in, want := range map[string]grade.Marbling{
		"Md40": grade.Moderate.At(40), "Moderate40": grade.Moderate.At(40), "Moderate 40": grade.Moderate.At(40),
		"Mt40": grade.Modest.At(40), "Modest40": grade.Modest.At(40), "Modest 40": grade.Modest.At(40),
		"MdAb40": grade.ModeratelyAbundant.At(40), "MAb40": grade.ModeratelyAbundant.At(40),
	} {
		if got, err := grade.ParseMarbling(in); err != nil || got != want || grade.MustParseMarbling(in) != want {
			t.Errorf("%q is %v, %v; want %v", in, got, err, want)
		}
	}
	if grade.Modest.At(40).String() != "Mt40" || grade.Moderate.At(40).String() != "Md40" || grade.Modest >= grade.Moderate {
		t.Error("Modest and Moderate are mixed up")
	}
}

// TestDegrees holds the ten degrees, least first, with their short forms.
func TestDegrees(t *testing.T) {
	var got []string
	for d := range grade.Degrees() {
		got = append(got, d.String()+" "+d.At(5).String())
		if !d.IsValid() {
			t.Errorf("%v is not valid", d)
		}
	}
	want := []string{
		"Devoid Devoid05", "Practically Devoid PD05", "Traces Tr05", "Slight Sl05", "Small Sm05", "Modest Mt05",
		"Moderate Md05", "Slightly Abundant SlAb05", "Moderately Abundant MAb05", "Abundant Ab05",
	}
	if diff := gocmp.Diff(want, got); diff != "" {
		t.Errorf("(-want +got)\n%s", diff)
	}
	n := 0
	for range grade.Degrees() {
		if n++; n == 2 {
			break
		}
	}
	if n != 2 || grade.Degree(0).IsValid() || grade.Degree(11).IsValid() {
		t.Errorf("stopped after %d", n)
	}
}

// TestMarbling holds what a point says at the ends of the scale and of degrees.
func TestMarbling(t *testing.T) {
	for _, tt := range []struct {
		name   string
		m      grade.Marbling
		valid  bool
		degree grade.Degree
		points int
		text   string
	}{
		{"zero", 0, false, 0, 0, "unset"},
		{"least", grade.Devoid.At(0), true, grade.Devoid, 0, "Devoid00"},
		{"below", grade.Devoid.At(0) - 1, false, 0, 0, "?(99)"},
		{"last point of a degree", grade.Small.At(99), true, grade.Small, 99, "Sm99"},
		{"end of a degree", grade.Small.At(100), true, grade.Modest, 0, "Mt00"},
		{"highest", grade.Abundant.At(100), true, grade.Abundant, 100, "Ab100"},
		{"last but one", grade.Abundant.At(99), true, grade.Abundant, 99, "Ab99"},
		{"above", grade.Abundant.At(100) + 1, false, 0, 0, "?(1101)"},
		{"impossible points", grade.Small.At(140), false, 0, 0, "Sm(140)"},
		{"negative points", grade.Small.At(-1), false, 0, 0, "Sm(-1)"},
		{"no degree", grade.Degree(0).At(40), false, 0, 0, "?(40)"},
		{"unknown degree", grade.Degree(11).At(40), false, 0, 0, "?(40)"},
	} {
		t.Run(tt.name, func(t *testing.T) {
			if tt.m.IsValid() != tt.valid || tt.m.Degree() != tt.degree || tt.m.Points() != tt.points || tt.m.String() != tt.text {
				t.Errorf("valid %v, %v, %d, %q", tt.m.IsValid(), tt.m.Degree(), tt.m.Points(), tt.m)
			}
			err := tt.m.Check("marbling of exhibit 2")
			if (err == nil) != tt.valid {
				t.Errorf("Check: %v", err)
			}
		})
	}
	const allowed = "Devoid00 to Ab100"
	faulttest.Field(t, "unset", grade.Marbling(0).Check("m"), grade.FieldError{Field: "m", Allowed: allowed, Err: grade.ErrMissing})
	faulttest.Field(t, "impossible", grade.Small.At(140).Check("m"), grade.FieldError{Field: "m", Value: "Sm(140)", Allowed: allowed, Err: grade.ErrRange})
	_, err := grade.Small.At(140).AppendText(nil)
	faulttest.Field(t, "AppendText", err, grade.FieldError{Field: "marbling", Value: "Sm(140)", Allowed: allowed, Err: grade.ErrRange})
	_, err = grade.ParseMarbling("Xx40")
	faulttest.Parse(t, "unknown", err, grade.ParseError{Kind: "marbling", Input: "Xx40", Part: "Xx", Allowed: allowed, Err: grade.ErrUnknown})
	defer func() {
		if r, ok := recover().(error); !ok || r.Error() != err.Error() {
			t.Errorf("MustParseMarbling panics with %v", r)
		}
	}()
	grade.MustParseMarbling("Xx40")
}

// TestMarblingCompare holds the order, with invalid marblings first.
func TestMarblingCompare(t *testing.T) {
	list := []grade.Marbling{grade.Abundant.At(100), grade.Small.At(0), 0, grade.Slight.At(99), grade.Small.At(140), grade.Slight.At(100)}
	slices.SortFunc(list, grade.Marbling.Compare)
	want := []grade.Marbling{grade.Small.At(140), 0, grade.Slight.At(99), grade.Small.At(0), grade.Small.At(0), grade.Abundant.At(100)}
	if diff := gocmp.Diff(want, list); diff != "" {
		t.Errorf("(-want +got)\n%s", diff)
	}
}

// TestMarblingScales holds both numeric scales at their ends: a bare 400 is
// Small00 on one (bif-marbling times 100) and Slight00 on the other (from
// memory).
func TestMarblingScales(t *testing.T) {
	for _, tt := range []struct {
		scale    grade.MarblingScale
		of400    grade.Marbling
		lo, hi   int
		loTooLow string
		allowed  string
	}{
		{grade.Slight300, grade.Small.At(0), 0, 1000, "-1", "0 to 1000 on the scale with Slight00 = 300"},
		{grade.Slight400, grade.Slight.At(0), 100, 1100, "99", "100 to 1100 on the scale with Slight00 = 400"},
	} {
		t.Run(tt.scale.String(), func(t *testing.T) {
			if got, err := tt.scale.Marbling(400); err != nil || got != tt.of400 {
				t.Errorf("400 is %v, %v; want %v", got, err, tt.of400)
			}
			for n := tt.lo; n <= tt.hi; n++ {
				m, err := tt.scale.Marbling(n)
				if err != nil || int(m) != n-tt.lo+100 {
					t.Fatalf("%d is %v, %v", n, m, err)
				}
				if back, ok := m.Number(tt.scale); back != n || !ok {
					t.Fatalf("%d is %v, which is %d, %v", n, m, back, ok)
				}
			}
			got, err := tt.scale.Marbling(tt.lo - 1)
			faulttest.Field(t, "below", err, grade.FieldError{Field: "marbling number", Value: tt.loTooLow, Allowed: tt.allowed, Err: grade.ErrRange})
			if got != 0 {
				t.Errorf("below gives %v", got)
			}
			if got, err := tt.scale.Marbling(tt.hi + 1); err == nil || got != 0 {
				t.Errorf("%d is %v", tt.hi+1, got)
			}
		})
	}
	const scales = "Slight00 = 300, Slight00 = 400"
	got, err := grade.MarblingScale(0).Marbling(400)
	faulttest.Field(t, "unset", err, grade.FieldError{Field: "marbling scale", Allowed: scales, Err: grade.ErrMissing})
	if got != 0 {
		t.Errorf("gives %v", got)
	}
	_, err = grade.MarblingScale(3).Marbling(400)
	faulttest.Field(t, "unnamed", err, grade.FieldError{Field: "marbling scale", Value: "marbling scale(3)", Allowed: scales, Err: grade.ErrUnknown})
	for _, tt := range []struct {
		m grade.Marbling
		s grade.MarblingScale
	}{{0, grade.Slight300}, {99, grade.Slight400}, {1101, grade.Slight300}, {grade.Small.At(0), 0}, {grade.Small.At(0), 3}} {
		if n, ok := tt.m.Number(tt.s); n != 0 || ok {
			t.Errorf("%v on %v is %d", tt.m, tt.s, n)
		}
	}
}
