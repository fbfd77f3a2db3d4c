package cite_test

import (
	"fmt"

	"example.com/ribface/maturity/cite"
)

func ExampleStanding() {
	var s cite.Standing
	fmt.Println(cite.Official, s, cite.Official < cite.Memory)
	fmt.Println(s.UnmarshalText([]byte("common-practice")), s)
	fmt.Println(s.UnmarshalText([]byte("hearsay")))
	// Output:
	// official unset true
	// <nil> common-practice
	// standing: "hearsay": unknown; allowed: official, published, common-practice, memory, derived
}

func ExampleCitation() {
	fmt.Println(cite.Citation{Standing: cite.Published, IDs: "bif-yield ga-ffa-2014"})
	fmt.Println(cite.Citation{Standing: cite.CommonPractice})
	fmt.Println(cite.Citation{Standing: cite.Memory})
	fmt.Println(cite.Citation{})
	// Output:
	// published: bif-yield, ga-ffa-2014
	// common practice, no source
	// from memory
	// no source given
}

func ExampleCitation_Sources() {
	c := cite.Citation{Standing: cite.Official, IDs: "cfr-54-105 no-such-source"}
	for _, s := range c.Sources() {
		fmt.Println(s.Title, "|", s.Issuer, "|", s.Date)
	}
	// Output:
	// 7 CFR 54.105, specifications for yield grades of carcass beef | USDA | before 2016
}

func ExampleLookup() {
	s, ok := cite.Lookup("ext-maryland-contests")
	fmt.Println(s.Title, ok)
	_, ok = cite.Lookup("no-such-source")
	fmt.Println(ok)
	// Output:
	// Scoring of contests, training slides (page partly legible) true
	// false
}

func ExampleSource() {
	s, _ := cite.Lookup("cfr-54-105")
	fmt.Println(s.ID, s.Standing)
	fmt.Println(s.Title)
	fmt.Println(s.Issuer, s.Date)
	// Output:
	// cfr-54-105 official
	// 7 CFR 54.105, specifications for yield grades of carcass beef
	// USDA before 2016
}

func ExampleSources() {
	byStanding := map[cite.Standing]bool{}
	for s := range cite.Sources() {
		byStanding[s.Standing] = true
	}
	fmt.Println(byStanding[cite.Official], byStanding[cite.Published])
	// Output:
	// true true
}

func ExampleStep() {
	step := cite.Step{
		Name:   "fat",
		Rule:   "2.00 and 0.25 for every 0.1 in",
		Given:  "0.6 in",
		Result: "3.5",
		Cite:   cite.Citation{Standing: cite.Published, IDs: "ext-sdsu-yield"},
	}
	fmt.Println(step.String())
	// Output:
	// fat: 0.6 in -> 3.5 (2.00 and 0.25 for every 0.1 in; published: ext-sdsu-yield)
}
