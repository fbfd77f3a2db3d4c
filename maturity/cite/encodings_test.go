package cite_test

import (
	"testing"

	"example.com/ribface/internal/testkit/roundtrip"
	"example.com/ribface/maturity/cite"
)

func TestEncodings(t *testing.T) {
	roundtrip.Run(t, "Standing", cite.Official, roundtrip.Read[cite.Standing], roundtrip.Case[cite.Standing]{
		Texts: map[string]cite.Standing{
			"official": cite.Official, "published": cite.Published, "common-practice": cite.CommonPractice,
			"memory": cite.Memory, "derived": cite.Derived,
		},
		Bad:     []string{"unset", "Official!", "official -", "Standing(9)"},
		Invalid: []cite.Standing{cite.Derived + 1},
	})
	roundtrip.Run(t, "Citation", cite.Citation{Standing: cite.Derived}, roundtrip.Read[cite.Citation], roundtrip.Case[cite.Citation]{
		Texts: map[string]cite.Citation{
			"official: cfr-54-105":                    {Standing: cite.Official, IDs: "cfr-54-105"},
			"published: bif-yield, ga-ffa-2014":       {Standing: cite.Published, IDs: "bif-yield ga-ffa-2014"},
			"common-practice: quiz-quality-concepts":  {Standing: cite.CommonPractice, IDs: "quiz-quality-concepts"},
			"common practice, no source":              {Standing: cite.CommonPractice},
			"from memory":                             {Standing: cite.Memory},
			"memory: own-notes_A.1":                   {Standing: cite.Memory, IDs: "own-notes_A.1"},
			"derived":                                 {Standing: cite.Derived},
			"derived: ext-sdsu-yield, bif-yield, x-1": {Standing: cite.Derived, IDs: "ext-sdsu-yield bif-yield x-1"},
		},
		Aliases: map[string]cite.Citation{"no source given": {}},
		Bad: []string{
			"memory", "common-practice", "official:", "official: ", "official: a,b", "official: a,  b",
			"official: a, ", "official:a", "rumor: a", "official: a b", "unset", "official: a\u00e9",
		},
		Invalid: []cite.Citation{
			{IDs: "cfr-54-105"}, {Standing: cite.Derived + 1},
			{Standing: cite.Official, IDs: " a"}, {Standing: cite.Official, IDs: "a  b"}, {Standing: cite.Official, IDs: "a, b"},
		},
	})
}

// Every citation that a step of the library can carry is made of ids like those
// of the register, so each of them has to survive its text.
func TestCitationOfEverySource(t *testing.T) {
	for s := range cite.Sources() {
		c := cite.Citation{Standing: s.Standing, IDs: s.ID}
		got, err := roundtrip.Read[cite.Citation](c.String())
		if err != nil || got != c {
			t.Errorf("ParseCitation(%q) = %v, %v", c.String(), got, err)
		}
	}
}
