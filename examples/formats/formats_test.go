package formats_test

import (
	"encoding/json"
	"os"
	"slices"
	"strings"
	"testing"

	"example.com/ribface/maturity/cite"
	"example.com/ribface/placing/contest"
	"github.com/google/go-cmp/cmp"
)

func read(t *testing.T, name string) contest.Format {
	t.Helper()
	text, err := os.ReadFile(name + ".json")
	if err != nil {
		t.Fatal(err)
	}
	var f contest.Format
	if err := json.Unmarshal(text, &f); err != nil {
		t.Fatalf("%s: %v", name, err)
	}
	return f
}

// TestPublishedFormats checks the totals that the sources state.
func TestPublishedFormats(t *testing.T) {
	for _, want := range []struct {
		name, source string
		total, team  float64
	}{
		{"california-2012", "cata-2012", 800, 2400},               // published: 800 each, 2,400 a team
		{"texas-about-2004", "tx-ffa-slides", 750, 3000},          // 750 derived
		{"kansas-state-horse-class", "ksu-horse-judging", 600, 0}, // published: 400 + 200
	} {
		t.Run(want.name, func(t *testing.T) {
			f := read(t, want.name)
			if err := f.Check(); err != nil {
				t.Error(err)
			}
			if _, known := cite.Lookup(want.source); !known || f.Cite != (cite.Citation{Standing: cite.Published, IDs: want.source}) {
				t.Errorf("cited as %v, want %s", f.Cite, want.source)
			}
			total := contest.PointsOf(0)
			for _, c := range f.Components {
				total = total.Add(c.Value)
			}
			counting := f.Counting
			if counting == 0 {
				counting = f.TeamMembers
			}
			if team := total.Units() * int64(counting); total != contest.PointsOf(want.total) || team != contest.PointsOf(want.team).Units() {
				t.Errorf("totals %v, and %d units for a team, want %v, %v", total, team, want.total, want.team)
			}
			if name := strings.ReplaceAll(strings.ToLower(f.Name), " ", "-"); name != want.name {
				t.Errorf("the file of %q has another name: %s", f.Name, want.name)
			}
			text, err := json.Marshal(f)
			if err != nil {
				t.Fatal(err)
			}
			var back contest.Format
			if err := json.Unmarshal(text, &back); err != nil {
				t.Fatal(err)
			}
			if d := cmp.Diff(f, back); d != "" {
				t.Errorf("through JSON (-want +got):\n%s", d)
			}
		})
	}
	if got := read(t, "kansas-state-horse-class").Components[1].Classes; !slices.Equal(got, []string{"class 1", "class 2", "class 3", "class 4"}) {
		t.Errorf("classes of reasons %q", got)
	}
	// California: quality and yield 40 each, 120 and 120 for a team (cata-2012).
	california := read(t, "california-2012")
	for _, c := range california.Components {
		if (c.Kind == contest.KindQuality || c.Kind == contest.KindYield) && c.Value.Units()*int64(california.Counting) != contest.PointsOf(120).Units() {
			t.Errorf("%s: %v each for a team", c.Name, c.Value)
		}
	}
}
