package placing_test

import (
	"strconv"
	"testing"

	"example.com/ribface/internal/conformance"
)

// TestReferences holds the package against every published row that concerns it.
// The checks are in internal/conformance, the rows in testdata/references.
func TestReferences(t *testing.T) {
	rows := 0
	for f := range conformance.Files("placing") {
		t.Run(f.Name, func(t *testing.T) {
			results, err := f.Verify("../testdata/references")
			if err != nil {
				t.Fatal(err)
			}
			for _, r := range results {
				rows++
				t.Run("line "+strconv.Itoa(r.Row.Line), func(t *testing.T) {
					if r.Err != nil {
						t.Error(r.Err)
					}
				})
			}
		})
	}
	if rows == 0 {
		t.Error("no rows")
	}
}
