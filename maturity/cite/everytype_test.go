package cite_test

import (
	"testing"

	"example.com/ribface/internal/testkit/everytype"
	"example.com/ribface/internal/testkit/roundtrip"
	"example.com/ribface/maturity/cite"
)

// TestEveryType holds every exported type to the promises of the module.
func TestEveryType(t *testing.T) {
	source, _ := cite.Lookup("cfr-54-105")
	everytype.Run(t, ".",
		cite.Official, cite.Standing(99), source,
		cite.Citation{Standing: cite.Memory}, cite.Citation{Standing: cite.Official, IDs: "cfr-54-105 no-such"}, cite.Citation{Standing: 99, IDs: "  "}, cite.Citation{IDs: "a"},
		cite.Step{Name: "n", Rule: "r", Given: "g", Result: "s", Cite: cite.Citation{Standing: cite.Memory}}, cite.Step{Cite: cite.Citation{Standing: 99}},
		roundtrip.Read[cite.Standing], roundtrip.Read[cite.Citation], cite.Lookup, cite.Sources,
	)
}
