// Package golden compares what a test made with a file that was looked at.
package golden

import (
	"flag"
	"os"
	"testing"

	"github.com/google/go-cmp/cmp"
)

var update = flag.Bool("update-golden", false, "write the golden files anew")

// Compare compares the text byte for byte with the file; the path is from the
// folder of the test. Files are the same for every processor. Nothing but the file
// is needed, so that a binary built with go test -c and run in that folder can
// check any target. With the flag -update-golden the file is written first.
func Compare(t testing.TB, path, got string) {
	t.Helper()
	if *update {
		if err := os.WriteFile(path, []byte(got), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	if string(want) != got {
		t.Errorf("%s; to accept: go test -update-golden (-want +got):\n%s", path, cmp.Diff(string(want), got))
	}
}
