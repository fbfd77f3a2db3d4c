// Command gen writes the conformance tables to testdata/conformance.md, and their count
// into the README, between the marks conformance:begin and conformance:end. It is run by
// go generate in the folder above it.
package main

import (
	"log"
	"os"

	"example.com/ribface/internal/refs"
)

const (
	references = "../../testdata/references"
	page       = "../../testdata/conformance.md"
	readme     = "../../README.md"
)

func main() {
	log.SetFlags(0)
	count, tables, err := refs.Table(references)
	if err != nil {
		log.Fatal(err)
	}
	if err := os.WriteFile(page, []byte(tables), 0o644); err != nil {
		log.Fatal(err)
	}
	text, err := os.ReadFile(readme)
	if err != nil {
		log.Fatal(err)
	}
	out, err := refs.Place(string(text), count)
	if err != nil {
		log.Fatalf("%s: %v", readme, err)
	}
	if err := os.WriteFile(readme, []byte(out), 0o644); err != nil {
		log.Fatal(err)
	}
}
