package sheet_test

import (
	"bytes"
	"context"
	"encoding/json"
	"errors"
	"os"
	"strconv"
	"strings"
	"testing"

	"example.com/ribface/grade"
	"example.com/ribface/grade/sheet"
	"github.com/google/go-cmp/cmp"
)

// field reads one of the four sheets of testdata, which are invented carcasses in
// forms that people keep, with its mapping.
func field(t testing.TB, name string) (m sheet.Mapping, in []byte) {
	t.Helper()
	b, err := os.ReadFile("../../examples/analysis/maps/" + name + ".json")
	if err != nil {
		t.Fatal(err)
	}
	if err := json.Unmarshal(b, &m); err != nil {
		t.Fatal(err)
	}
	if in, err = os.ReadFile("testdata/" + name + ".csv"); err != nil {
		t.Fatal(err)
	}
	return m, in
}

// TestFieldSheets grades the four sheets. What they should give stands beside them: an
// independent reading in exact fractions.
func TestFieldSheets(t *testing.T) {
	tests := []struct {
		name    string
		refused []string
		assumed map[sheet.Assumptions]int
		extra   []string
		flags   map[sheet.FlagKind]int
	}{
		{"plant", []string{
			"plant.csv, line 18, id T017, column 5 (BF): fat: missing; allowed: 0 in to 3 in",
			"plant.csv, line 34, id T033, column 4 (HCW): weight: 9: out of range; allowed: a number, 100 lb to 1800 lb",
		}, map[sheet.Assumptions]int{sheet.AssumedMaturity | sheet.AssumedKPH: 58}, []string{"Lot"}, nil},
		{"university", []string{
			"university.csv, line 10, id U009, column 9 (KPH, %): KPH: missing; allowed: 0% to 10%",
		}, nil, []string{"Treatment", "Notes"}, nil},
		{"europe", nil, nil, nil, nil},
		{"floats", nil, nil, nil, nil},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			m, in := field(t, tt.name)
			expected, err := os.ReadFile("testdata/" + tt.name + ".expected.csv")
			if err != nil {
				t.Fatal(err)
			}
			r, err := m.NewReader(tt.name+".csv", bytes.NewReader(in))
			if err != nil {
				t.Fatal(err)
			}
			got, refused := "id,quality_grade,yield,yield_grade\n", []string(nil)
			for g, err := range r.Grade(context.Background(), grade.Rules{Edition: grade.Current}) {
				var row *sheet.RowError
				switch {
				case errors.As(err, &row):
					refused = append(refused, err.Error())
				case err != nil:
					t.Fatal(err)
				default:
					a := g.Assessment
					got += strings.Join([]string{g.ID, a.Quality.Grade().String(), a.Yield.String(), strconv.Itoa(a.Yield.Grade())}, ",") + "\n"
				}
			}
			if d := cmp.Diff(strings.ReplaceAll(string(expected), "\r", ""), got); d != "" {
				t.Errorf("(-want +got):\n%s", d)
			}
			if d := cmp.Diff(tt.refused, refused); d != "" {
				t.Errorf("refused (-want +got):\n%s", d)
			}
			if d := cmp.Diff(tt.extra, r.Extra()); d != "" {
				t.Errorf("extra (-want +got):\n%s", d)
			}
			want := sheet.Counts{Graded: strings.Count(got, "\n") - 1, Refused: len(tt.refused), Assumed: tt.assumed, Flags: tt.flags}
			if d := cmp.Diff(want, r.Counts()); d != "" {
				t.Errorf("counts (-want +got):\n%s", d)
			}
		})
	}
}
