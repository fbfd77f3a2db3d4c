package refs

import (
	"fmt"
	"testing"
)

// Run holds a package against every published row that it answers for, each in a
// subtest of its file and line. The folder is that of the references.
func Run(t *testing.T, room, dir string) {
	rows := 0
	for f := range Files(room) {
		t.Run(f.Name, func(t *testing.T) {
			results, err := f.verify(dir)
			if err != nil {
				t.Fatal(err)
			}
			for _, r := range results {
				rows++
				t.Run(fmt.Sprint("line ", r.Row.Line), func(t *testing.T) {
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

// Rows reads a file of references for a test that checks its rows itself.
func Rows(t testing.TB, dir, name string) []Row {
	t.Helper()
	rows, err := Read(dir, name)
	if err != nil {
		t.Fatal(err)
	}
	return rows
}
