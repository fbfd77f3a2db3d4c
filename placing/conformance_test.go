//go:build !mutation

// The references reach every package above this one, which would all be
// compiled again for each mutant.

package placing_test

import (
	"testing"

	"example.com/ribface/internal/refs"
)

// TestReferences holds the package against every published row that concerns it.
// The checks are in internal/refs, the rows in testdata/references.
func TestReferences(t *testing.T) { refs.Run(t, "placing", "../testdata/references") }
