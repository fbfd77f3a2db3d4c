// Command gen writes the conformance table into the README, between the marks
// conformance:begin and conformance:end. It is run by go generate in the folder
// above it.
package main

import (
	"log"
	"os"

	"example.com/ribface/internal/conformance"
)

const (
	references = "../../testdata/references"
	readme     = "../../README.md"
)

func main() {
	log.SetFlags(0)
	table, err := conformance.Table(references)
	if err != nil {
		log.Fatal(err)
	}
	text, err := os.ReadFile(readme)
	if err != nil {
		log.Fatal(err)
	}
	out, err := conformance.Place(string(text), table)
	if err != nil {
		log.Fatalf("%s: %v", readme, err)
	}
	if err := os.WriteFile(readme, []byte(out), 0o644); err != nil {
		log.Fatal(err)
	}
}
