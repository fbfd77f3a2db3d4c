package grade_test

import (
	"testing"
	"time"

	"example.com/ribface/grade"
	"example.com/ribface/internal/testkit/faulttest"
	"example.com/ribface/maturity"
	"example.com/ribface/maturity/cite"
	gocmp "github.com/google/go-cmp/cmp"
)

// TestEditions holds the editions in order of time, with their first days, and
// which let age count.
func TestEditions(t *testing.T) {
	type row struct {
		Name, From, Cite string
		ByAge            bool
	}
	want := []row{
		{"1975", "1976-02-23", "from memory", false},
		{"1987", "1987-11-23", "published: news-1987-09-28, news-1987-12-09", false},
		{"1997", "1997-01-31", "official: fr-1996-05-01", false},
		{"2016", "2016-03-01", "official: fr-2016-03-01", false},
		{"2017", "2017-12-18", "official: fr-2017-12-06", true},
	}
	var got []row
	for e := range grade.Editions() {
		from, c := e.From()
		got = append(got, row{e.String(), from.Format(time.DateOnly), c.String(), e.ByAge()})
		if !e.IsValid() || from.Location() != time.UTC {
			t.Errorf("%v: valid %v, in %v", e, e.IsValid(), from.Location())
		}
	}
	if diff := gocmp.Diff(want, got); diff != "" {
		t.Errorf("(-want +got)\n%s", diff)
	}
	n := 0
	for range grade.Editions() {
		if n++; n == 2 {
			break
		}
	}
	if n != 2 || grade.Current != grade.Edition2017 {
		t.Errorf("stopped after %d; current is %v", n, grade.Current)
	}
	for _, e := range []grade.Edition{0, 6, 255} {
		if from, c := e.From(); !from.IsZero() || c != (cite.Citation{}) || e.ByAge() || e.IsValid() {
			t.Errorf("%v is from %v, %v, by age %v", e, from, c, e.ByAge())
		}
	}
}

// TestEditionOn holds the first and the last day of every edition, and that the
// day is read in the time's own zone.
func TestEditionOn(t *testing.T) {
	for day, want := range map[string]grade.Edition{
		"1976-02-23": grade.Edition1975, "1987-09-23": grade.Edition1975, "1987-11-22": grade.Edition1975, "1987-11-23": grade.Edition1987, "1997-01-30": grade.Edition1987,
		"1997-01-31": grade.Edition1997, "2016-02-29": grade.Edition1997, "2016-03-01": grade.Edition2016, "2017-12-17": grade.Edition2016,
		"2017-12-18": grade.Edition2017, "2999-01-01": grade.Edition2017,
	} {
		for _, clock := range []string{"T00:00:00Z", "T23:59:59Z", "T00:00:00+14:00", "T23:59:59-12:00"} {
			at, err := time.Parse(time.RFC3339, day+clock)
			if err != nil {
				t.Fatal(err)
			}
			if got, err := grade.EditionOn(at); err != nil || got != want {
				t.Errorf("%v: %v, %v; want %v", at, got, err, want)
			}
		}
	}
	got, err := grade.EditionOn(time.Date(1976, time.February, 22, 23, 59, 59, 0, time.UTC))
	faulttest.Field(t, "before the first", err, grade.FieldError{Field: "date", Value: "1976-02-22", Allowed: "1976-02-23 or later", Err: grade.ErrRange})
	if got != 0 {
		t.Errorf("gives %v", got)
	}
	if got, err := grade.EditionOn(time.Time{}); err == nil || got != 0 {
		t.Errorf("the zero time gives %v", got)
	}
}

// TestOverall holds that an edition decides whether age counts, and the errors.
func TestOverall(t *testing.T) {
	ev := maturity.Evidence{Skeletal: maturity.B.At(40), Lean: maturity.B.At(60), Teeth: maturity.Incisors(2)}
	for e := range grade.Editions() {
		want := "B50"
		if e == grade.Edition2017 {
			want = "A99"
		}
		if got, err := (grade.Rules{Edition: e}).Overall(ev); err != nil || got.String() != want {
			t.Errorf("%v: %v, %v; want %s", e, got, err, want)
		}
	}
	r := grade.Rules{Edition: grade.Edition2016, Maturity: maturity.Balancing{Tens: maturity.TensTowardBone}}
	if got, err := r.Overall(maturity.Evidence{Skeletal: maturity.B.At(40), Lean: maturity.B.At(50)}); err != nil || got.String() != "B40" {
		t.Errorf("the balancing rules do not reach: %v, %v", got, err)
	}
	const allowed = "1975, 1987, 1997, 2016, 2017"
	got, err := grade.Rules{Edition: grade.Edition(0)}.Overall(ev)
	faulttest.Field(t, "unset", err, grade.FieldError{Field: "edition", Allowed: allowed, Err: grade.ErrMissing})
	if got != 0 {
		t.Errorf("gives %v", got)
	}
	_, err = grade.Rules{Edition: 6}.Overall(ev)
	faulttest.Field(t, "unnamed", err, grade.FieldError{Field: "edition", Value: "edition(6)", Allowed: allowed, Err: grade.ErrUnknown})
	_, err = grade.Rules{Edition: grade.Edition2016}.Overall(maturity.Evidence{})
	faulttest.Field(t, "evidence", err, grade.FieldError{Field: "skeletal maturity", Allowed: "A00 to E100", Err: grade.ErrMissing})
	_, err = grade.Rules{Edition: grade.Edition2017}.Overall(maturity.Evidence{Skeletal: 150})
	faulttest.Field(t, "evidence by age", err, grade.FieldError{Field: "lean maturity", Allowed: "A00 to E100", Err: grade.ErrMissing})
}
