package class_test

import (
	"errors"
	"slices"
	"strings"
	"testing"

	"example.com/ribface/placing"
	"example.com/ribface/placing/class"
)

func TestWalk(t *testing.T) {
	defer func() {
		if recover() == nil {
			t.Error("MustParseRanking took nonsense")
		}
	}()
	two, three := class.MustParseRanking("1 2"), class.MustParseRanking("1 2 3")
	tests := []struct {
		name string
		walk class.Walk
		want string
	}{
		{"no site", class.Walk{{Order: two}}, "look 1: site: missing; allowed: " + allSites()},
		{"no such site", class.Walk{{99, two}}, "look 1: site: site(99): unknown; allowed: " + allSites()},
		{"twice", class.Walk{{class.FatRump, two}, {class.FatRump, two}}, "look 2: site: fat over rump: repeated; allowed: every site once"},
		{"no ranking", class.Walk{{class.FatRump, placing.Ranking{}}}, "fat over rump: missing; allowed: a ranking of 2 exhibits"},
		{"another size", class.Walk{{class.FatRump, three}}, "fat over rump: 1 2 3: out of range; allowed: a ranking of 2 exhibits"},
	}
	for _, tt := range tests {
		wantError(t, tt.name, tt.want, tt.walk.Check(2))
	}
	w := class.Walk{{class.FatRump, two}, {class.MuscleLoin, two}}
	if err := w.Check(2); err != nil {
		t.Error(err)
	}
	if len(w.Missing()) != 18 || w.Missing()[0] != class.FatRound || slices.Contains(w.Missing(), class.FatRump) {
		t.Errorf("Missing() = %v", w.Missing())
	}
	var full class.Walk
	for s := range class.Sites() {
		full = append(full, class.Look{Site: s, Order: two})
	}
	if full.Missing() != nil || full.Check(2) != nil || len(full) != 20 {
		t.Errorf("full walk misses %v", full.Missing())
	}
	if r, ok := w.At(class.MuscleLoin); !ok || r != two {
		t.Errorf("At: %v, %v", r, ok)
	}
	if _, ok := w.At(class.FatNeck); ok {
		t.Error("At found a site that was not looked at")
	}
	for range class.Sites() {
		break
	}
	class.MustParseRanking("x")
}

func allSites() string {
	var names []string
	for s := range class.Sites() {
		names = append(names, s.String())
	}
	return strings.Join(names, ", ")
}

func TestSites(t *testing.T) {
	fat := 0
	for s := range class.Sites() {
		if s.Fat() {
			fat++
		}
		b, err := s.MarshalText()
		var back class.Site
		if err != nil || back.UnmarshalText(b) != nil || back != s || !s.IsValid() {
			t.Errorf("%v came back as %v", s, back)
		}
		v, err := s.Value()
		if err != nil || back.Scan(v) != nil || back != s {
			t.Errorf("%v through a database: %v, %v", s, back, err)
		}
	}
	if fat != 13 || !class.FatBrisket.Fat() || class.RoundPlumpness.Fat() || class.Site(0).Fat() {
		t.Errorf("%d sites of fat", fat)
	}
	if got := []string{class.FatRump.Cite().String(), class.MuscleClod.Cite().String(), class.Site(0).Cite().String(), class.Site(99).Cite().String()}; !slices.Equal(got, []string{"official: cfr-54-105, cfr-1965-53-p26", "common practice, no source", "no source given", "no source given"}) {
		t.Errorf("citations %v", got)
	}
	if _, err := class.ParseSite("fat over tail"); !errors.Is(err, placing.ErrUnknown) {
		t.Errorf("ParseSite: %v", err)
	}
}
