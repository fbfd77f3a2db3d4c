// Command apilist writes testdata/api.txt: every exported symbol of every public
// package of the module, sorted, with the types of its parts and the values of
// its constants. The standard library is the only thing it needs. It is run by go
// generate.
package main

import (
	"log"
	"os"

	"example.com/ribface/internal/docs"
)

//go:generate go run .

func main() {
	log.SetFlags(0)
	list, err := docs.API("../../..")
	if err != nil {
		log.Fatal(err)
	}
	if err := os.WriteFile("../../../testdata/api.txt", []byte(list), 0o644); err != nil {
		log.Fatal(err)
	}
}
