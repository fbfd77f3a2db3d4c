package grade_test

import (
	"strings"
	"testing"

	"example.com/ribface/internal/refs/vectors"
	"example.com/ribface/maturity"
)

// TestVectors holds the published vectors of quality to the charts of
// testdata/charts.txt, read the slow way.
func TestVectors(t *testing.T) {
	charts := slowCharts(t)
	terms := map[string]int{"": 0, "very soft": 1, "soft": 2, "moderately soft": 3, "slightly soft": 4, "slightly firm": 5, "moderately firm": 6, "firm": 7}
	dark := map[string]int{"": 0, "one third": 1, "two thirds": 2, "full": 3}
	degrees := strings.NewReplacer("Practically Devoid", "PD", "Devoid", "De", "Slightly Abundant", "SlAb", "Slight", "Sl", "Traces", "Tr",
		"Moderately Abundant", "MAb", "Abundant", "Ab", "Modest", "Mt", "Moderate", "Md", "Small", "Sm")
	type place struct {
		edition, sex string
		age          int
	}
	type column struct {
		grades []slowGrade
		units  int
	}
	columns := map[place]column{} // many vectors are of one
	for _, name := range []string{"quality", "quality-lean"} {
		f, err := vectors.Read("../testdata/vectors", name)
		if err != nil {
			t.Fatal(err)
		}
		for _, v := range f.Vectors {
			text := func(name string) string { return vectors.Text(v.In, name) }
			firm, known := terms[text("firmness")]
			cut, knownToo := dark[text("dark")]
			if !known || !knownToo {
				t.Fatalf("%v", v.In)
			}
			for edition := range strings.FieldsSeq(v.Edition) {
				// Overall maturity is held to fractions by the vectors of maturity.
				age := int(maturity.MustParse(vectors.Text(v.Out, "maturity")) - maturity.A.At(0))
				q := slowAsk{text("sex"), age, slowMarbling(degrees.Replace(text("marbling"))), firm, cut, false}
				if q.sex == "bullock" { // graded by the lines of A where the bone is A or B00, whatever the age comes to
					age = int(maturity.MustParse(text("skeletal")) - maturity.A.At(0))
				}
				at := place{edition, q.sex, age}
				c, ok := columns[at]
				if !ok {
					c.grades, c.units = slowColumn(charts[edition], q.sex, age)
					columns[at] = c
				}
				if want := q.grade(c.grades, c.units); vectors.Text(v.Out, "quality") != want {
					t.Errorf("edition %s, %v: %v, slowly %s", edition, v.In, v.Out, want)
				}
			}
		}
	}
}
