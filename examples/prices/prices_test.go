package prices_test

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"example.com/ribface/examples/prices"
	"example.com/ribface/grade"
	"example.com/ribface/grade/price"
	"example.com/ribface/internal/refs"
	"github.com/google/go-cmp/cmp"
	"github.com/shopspring/decimal"
)

// TestPublishedReports makes the grids again from the references, row by row, and
// compares them with the files.
func TestPublishedReports(t *testing.T) {
	for _, tt := range []struct{ week, reference string }{
		{"2014-10-20", "price-report-2014-10-20.csv"}, // ams-ct169-2014-10-20
		{"2025-01-06", "price-report-2025-01-06.csv"}, // ams-ct155-2025-01-06
	} {
		t.Run(tt.week, func(t *testing.T) {
			base := decimal.New(300, 0)
			want := price.Offer{Name: "week of " + tt.week, Base: base, YieldEdge: price.EdgeUpper, WeightEdge: price.EdgeLower}
			for _, row := range refs.Rows(t, "../../testdata/references", tt.reference) {
				add(t, &want, row)
			}
			got, err := prices.Read("week-"+tt.week+".json", base)
			if err != nil {
				t.Fatal(err)
			}
			if d := cmp.Diff(want, got); d != "" {
				t.Errorf("(-want +got):\n%s", d)
			}
			// Every report makes a grid without gap or overlap.
			if _, err := price.New(got); err != nil {
				t.Error(err)
			}
		})
	}
}

// add puts one row of a report into the terms.
func add(t *testing.T, terms *price.Offer, row refs.Row) {
	t.Helper()
	if err := terms.Cite.UnmarshalText([]byte(row.Get("standing") + ": " + row.Get("source_id"))); err != nil {
		t.Fatal(err)
	}
	average := decimal.RequireFromString(row.Get("average"))
	if row.Has("low") {
		low, high := decimal.RequireFromString(row.Get("low")), decimal.RequireFromString(row.Get("high"))
		if average.LessThan(low) || average.GreaterThan(high) {
			t.Errorf("line %d: the average is outside the range", row.Line)
		}
	}
	category := strings.ReplaceAll(row.Get("category"), ",", "")
	from, to, _ := strings.Cut(strings.TrimPrefix(strings.TrimSuffix(category, " and up"), "over "), "-")
	switch row.Get("group") {
	case "quality":
		tiers := map[string][]grade.Tier{"Prime": {grade.PrimeTier}, "Choice": {grade.TopChoice, grade.LowChoice}, "Select": {grade.SelectTier}, "Standard": {grade.StandardTier}}[category]
		if tiers == nil {
			t.Errorf("line %d: category %q", row.Line, category)
		}
		for _, tier := range tiers {
			terms.Tiers = append(terms.Tiers, price.TierAmount{Tier: tier, Amount: average})
		}
	case "yield":
		b := price.Band[grade.Yield]{Amount: average}
		if err := b.From.UnmarshalText([]byte(from)); err != nil {
			t.Fatal(err)
		}
		if err := b.To.UnmarshalText([]byte(to)); err != nil {
			t.Fatal(err)
		}
		terms.Yield = append(terms.Yield, b)
	case "weight":
		b := price.Band[grade.Weight]{Amount: average}
		if err := b.From.UnmarshalText([]byte(from + " lb")); err != nil {
			t.Fatal(err)
		}
		if to != "" {
			to += " lb"
		}
		if err := b.To.UnmarshalText([]byte(to)); err != nil {
			t.Fatal(err)
		}
		terms.Weight = append(terms.Weight, b)
	default:
		m, err := price.ParseAttribute(row.Get("category"))
		if err != nil {
			t.Fatal(err)
		}
		terms.Attributes = append(terms.Attributes, price.AttributeAmount{Attribute: m, Amount: average, Instead: m == price.Hardbone})
	}
}

// TestRead has the file inside the program, one of the caller's, and files that
// are no terms.
func TestRead(t *testing.T) {
	base := decimal.New(250, 0)
	inside, err := prices.Read("", base)
	if err != nil {
		t.Fatal(err)
	}
	named, err := prices.Read("week-2025-01-06.json", base)
	if err != nil {
		t.Fatal(err)
	}
	if d := cmp.Diff(named, inside); d != "" || !inside.Base.Equal(base) {
		t.Errorf("(-named +inside):\n%s", d)
	}
	bad := filepath.Join(t.TempDir(), "bad.json")
	if err := os.WriteFile(bad, []byte(`{"tires":[]}`), 0o600); err != nil {
		t.Fatal(err)
	}
	for _, file := range []string{bad, filepath.Join(t.TempDir(), "none.json")} {
		if _, err := prices.Read(file, base); err == nil {
			t.Errorf("%s: no error", file)
		}
	}
}
