package refs

import (
	"fmt"
	"testing"
)

// Check works out what a row states, and says how far it fits.
type Check func(Row) (Verdict, error)

// Run holds a package against every published row that it answers for, by a check for
// each file, each row in a subtest of its file and line. The folder is that of the
// references.
func Run(t *testing.T, room, dir string, checks map[string]Check) {
	for f := range Files(room) {
		t.Run(f.Name, func(t *testing.T) {
			check := checks[f.Name]
			if check == nil {
				t.Fatal("no check")
			}
			results, err := f.verify(dir, check)
			if err != nil {
				t.Fatal(err)
			}
			for _, r := range results {
				t.Run(fmt.Sprint("line ", r.Row.Line), func(t *testing.T) {
					if r.Err != nil {
						t.Error(r.Err)
					}
				})
			}
		})
		delete(checks, f.Name)
	}
	for name := range checks {
		t.Errorf("%s is not registered for %s", name, room)
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
