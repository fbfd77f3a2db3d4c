// Command gen writes the conformance vectors under testdata/vectors. It is run by go
// generate in the folder above it.
package main

import (
	"log"
	"os"
	"path/filepath"

	"example.com/ribface/internal/refs/vectors"
)

const testdata = "../../../testdata"

func main() {
	log.SetFlags(0)
	files, err := vectors.Make(testdata)
	if err != nil {
		log.Fatal(err)
	}
	for _, f := range files {
		b, err := f.Bytes()
		if err != nil {
			log.Fatal(err)
		}
		if err := os.WriteFile(filepath.Join(testdata, "vectors", f.Name+".json"), b, 0o644); err != nil {
			log.Fatal(err)
		}
	}
}
