package cite_test

import (
	"encoding/csv"
	"errors"
	"os"
	"slices"
	"strings"
	"testing"
	"unsafe"

	"example.com/ribface/internal/fault"
	"example.com/ribface/internal/testkit/roundtrip"
	"example.com/ribface/maturity/cite"
	"github.com/google/go-cmp/cmp"
)

// TestStanding writes and reads back every standing, and refuses every number
// that is none.
func TestStanding(t *testing.T) {
	for s := cite.Standing(0); s < 255; s++ {
		named := s >= cite.Official && s <= cite.Derived
		err := roundtrip.Unwritable(s, roundtrip.Read[cite.Standing])
		if named || s == 0 {
			err = roundtrip.Value[cite.Standing](s, roundtrip.Read[cite.Standing])
		}
		if err != nil {
			t.Error(err)
		}
	}
	if !slices.IsSorted([]cite.Standing{0, cite.Official, cite.Published, cite.CommonPractice, cite.Memory, cite.Derived}) {
		t.Error("the standings are not in order")
	}
}

// TestCitationString holds every form of the words, also of citations that have
// no text.
func TestCitationString(t *testing.T) {
	tests := []struct {
		name string
		c    cite.Citation
		want string
	}{
		{"zero", cite.Citation{}, "no source given"},
		{"common practice alone", cite.Citation{Standing: cite.CommonPractice}, "common practice, no source"},
		{"common practice with a source", cite.Citation{Standing: cite.CommonPractice, IDs: "a"}, "common-practice: a"},
		{"memory alone", cite.Citation{Standing: cite.Memory}, "from memory"},
		{"memory with a source", cite.Citation{Standing: cite.Memory, IDs: "a"}, "memory: a"},
		{"derived alone", cite.Citation{Standing: cite.Derived}, "derived"},
		{"official alone", cite.Citation{Standing: cite.Official}, "official"},
		{"two sources", cite.Citation{Standing: cite.Official, IDs: "a b"}, "official: a, b"},
		{"source without standing", cite.Citation{IDs: "a"}, "unset: a"},
		{"unnamed standing", cite.Citation{Standing: 9}, "standing(9)"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			if diff := cmp.Diff(tt.want, tt.c.String()); diff != "" {
				t.Errorf("(-want +got)\n%s", diff)
			}
		})
	}
}

// TestParseCitationErrors holds which part of a bad citation is named.
func TestParseCitationErrors(t *testing.T) {
	const standings, form = "official, published, common-practice, memory, derived", "a standing, or a standing, a colon and source ids with commas between"
	tests := []struct {
		name, in, part, allowed string
		err                     error
	}{
		{"unknown standing", "rumor: a", "rumor", standings, fault.ErrUnknown},
		{"no standing", ": a", "", standings, fault.ErrSyntax},
		{"comma without space", "official: a,b", ": a,b", form, fault.ErrSyntax},
		{"memory has words of its own", "memory", "", form, fault.ErrSyntax},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			got, err := roundtrip.Read[cite.Citation](tt.in)
			var pe *fault.ParseError
			want := fault.ParseError{Kind: "citation", Input: tt.in, Part: tt.part, Allowed: tt.allowed, Err: tt.err}
			if got != (cite.Citation{}) || !errors.As(err, &pe) || *pe != want {
				t.Errorf("%v, %#v; want %#v", got, err, want)
			}
		})
	}
	for _, tt := range []struct {
		name string
		c    cite.Citation
		want fault.FieldError
	}{
		{"ids without standing", cite.Citation{IDs: "a"}, fault.FieldError{Field: "standing of a citation", Allowed: standings, Err: fault.ErrMissing}},
		{"unnamed standing", cite.Citation{Standing: 6}, fault.FieldError{Field: "standing of a citation", Value: "standing(6)", Allowed: standings, Err: fault.ErrUnknown}},
		{"two spaces", cite.Citation{Standing: cite.Memory, IDs: "a  b"}, fault.FieldError{Field: "source ids of a citation", Value: "a  b", Allowed: "ids divided by single spaces", Err: fault.ErrSyntax}},
	} {
		t.Run(tt.name, func(t *testing.T) {
			b, err := tt.c.MarshalText()
			var fe *fault.FieldError
			if b != nil || !errors.As(err, &fe) || *fe != tt.want {
				t.Errorf("%q, %#v; want %#v", b, err, tt.want)
			}
		})
	}
}

// TestSources compares the table with the file it is made from: sorted by id, no
// id twice, nothing lost, each found by its id.
func TestSources(t *testing.T) {
	f, err := os.Open("../../testdata/references/sources.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	var want []cite.Source
	for _, r := range rows[1:] {
		standing, err := roundtrip.Read[cite.Standing](r[5])
		if err != nil {
			t.Fatalf("%s: %v", r[0], err)
		}
		want = append(want, cite.Source{ID: r[0], Title: r[1], Issuer: r[2], Date: r[3], URL: r[4], Standing: standing})
	}
	slices.SortFunc(want, func(a, b cite.Source) int { return strings.Compare(a.ID, b.ID) })
	got := slices.Collect(cite.Sources())
	if diff := cmp.Diff(want, got); diff != "" {
		t.Errorf("(-want +got)\n%s", diff)
	}
	for i, s := range got {
		if i > 0 && got[i-1].ID == s.ID {
			t.Errorf("%s is there twice", s.ID)
		}
		if found, ok := cite.Lookup(s.ID); !ok || found != s {
			t.Errorf("Lookup(%q) gives %v, %v", s.ID, found, ok)
		}
	}
	for _, id := range []string{"", "nothing", "zzz", want[0].ID + " "} {
		if s, ok := cite.Lookup(id); ok || s != (cite.Source{}) {
			t.Errorf("Lookup(%q) gives %v", id, s)
		}
	}
}

// TestCitationSources holds that ids are looked up in order and unknown ones are
// left out.
func TestCitationSources(t *testing.T) {
	for _, tt := range []struct {
		name, ids string
		want      []string
	}{
		{"none", "", nil},
		{"order of the citation", "cfr-54-105 bif-yield", []string{"cfr-54-105", "bif-yield"}},
		{"unknown left out", "cfr-54-105 nothing bif-yield", []string{"cfr-54-105", "bif-yield"}},
		{"only unknown", "nothing", nil},
	} {
		t.Run(tt.name, func(t *testing.T) {
			var got []string
			for _, s := range (cite.Citation{Standing: cite.Official, IDs: tt.ids}).Sources() {
				got = append(got, s.ID)
			}
			if diff := cmp.Diff(tt.want, got); diff != "" {
				t.Errorf("(-want +got)\n%s", diff)
			}
		})
	}
}

// TestStep holds the one line of a step.
func TestStep(t *testing.T) {
	s := cite.Step{Name: "fat", Rule: "2.50 per in", Given: "0.6 in", Result: "1.5", Cite: cite.Citation{Standing: cite.Official, IDs: "cfr-54-105"}}
	if diff := cmp.Diff("fat: 0.6 in -> 1.5 (2.50 per in; official: cfr-54-105)", s.String()); diff != "" {
		t.Errorf("(-want +got)\n%s", diff)
	}
}

// TestStructure holds sizes, zero values and that every type is a map key.
func TestStructure(t *testing.T) {
	if n := unsafe.Sizeof(cite.Standing(0)); n != 1 {
		t.Errorf("Standing has %d bytes", n)
	}
	if s := cite.Standing(0); s.String() != "unset" {
		t.Errorf("zero Standing: %v", s)
	}
	if c := (cite.Citation{}); c.String() != "no source given" || c.Sources() != nil {
		t.Errorf("zero Citation: %v", c)
	}
	if s := (cite.Step{}); s.String() != ":  ->  (; no source given)" {
		t.Errorf("zero Step: %q", s)
	}
	keys := map[any]int{cite.Official: 1, cite.Citation{}: 2, cite.Source{}: 3, cite.Step{}: 4}
	if len(keys) != 4 || keys[cite.Citation{}] != 2 {
		t.Errorf("the keys are not apart: %v", keys)
	}
	var sink int
	if n := testing.AllocsPerRun(100, func() {
		if _, ok := cite.Lookup("cfr-54-105"); ok {
			sink++
		}
	}); n != 0 {
		t.Errorf("Lookup: %v allocations", n)
	}
}

func FuzzCitation(f *testing.F) {
	roundtrip.Fuzz(f, roundtrip.Read[cite.Citation], cite.Citation{Standing: cite.Official, IDs: "a b"}, "official: a, b", "from memory", "derived", "no source given", "common practice, no source", "memory: x", "official: a,b")
}
