package docs

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/google/go-cmp/cmp"
)

// words holds the packages whose comment has to be a whole page.
var words = map[string]bool{"maturity": true, "grade": true, "placing": true}

// mostUnshown is how many symbols of the whole module may be without a checked
// Example.
const mostUnshown = 0

const leastWords, mostWords = 800, 1500

// TestEveryNameIsShown fails when an exported name of a public package has no
// documentation, when a symbol has no Example, when an Example has no checked
// output, or when a main package has too short or too long a page. Run it with -v
// to read the counts.
func TestEveryNameIsShown(t *testing.T) {
	pkgs, err := Packages(root)
	if err != nil {
		t.Fatal(err)
	}
	if len(pkgs) < 4 {
		t.Fatalf("only %d packages found", len(pkgs))
	}
	unshown := 0
	for _, p := range pkgs {
		t.Log(p)
		if len(p.Undocumented) > 0 || len(p.Unchecked) > 0 {
			t.Errorf("%s: undocumented %q, Examples without checked output %q", p.Dir, p.Undocumented, p.Unchecked)
		}
		unshown += len(p.Unshown)
		if words[p.Dir] && (p.Words < leastWords || p.Words > mostWords) {
			t.Errorf("%s: the package comment has %d words, %d to %d are wanted", p.Dir, p.Words, leastWords, mostWords)
		}
	}
	if unshown > mostUnshown {
		t.Errorf("%d symbols without an Example, at most %d are allowed", unshown, mostUnshown)
	}
}

// TestFindings holds the counter to a small package with one of everything.
func TestFindings(t *testing.T) {
	root := t.TempDir()
	for name, text := range map[string]string{
		"internal/hidden/a.go": "package hidden\nfunc Hidden() {}\n",
		"nested/go.mod":        "module nested\n",
		"nested/a.go":          "package nested\nfunc Nested() {}\n",
		"command/main.go":      "package main\nfunc Main() {}\n",
		"a/a.go": `// Package a has four words.
package a

// T is documented.
type T int

// C is documented.
const C T = 1

const D T = 2

const (
	E T = 3 // documented by its line
	f T = 4
)

// F is documented.
func F() {}

func G() {}

// M is documented.
func (T) M() {}

// N is documented.
func (T) N() {}

// String is documented.
func (T) String() string { return "" }

func (T) O() {}

// U is documented.
type U int

// M is documented.
func (U) M() {}
`,
		"a/a_test.go": `package a_test

import "fmt"

func ExampleT_all() {
	var t a.T
	t.M()
	fmt.Println(t)
	// Output:
	// x
}

func ExampleF() {
	a.F()
	// Output:
}

func ExampleG() {
	a.G()
}
`,
	} {
		path := filepath.Join(root, name)
		if err := os.MkdirAll(filepath.Dir(path), 0o777); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(path, []byte(text), 0o666); err != nil {
			t.Fatal(err)
		}
	}
	got, err := Packages(root)
	if err != nil {
		t.Fatal(err)
	}
	want := []Package{{
		Dir: "a", Words: 5, Symbols: 9, Own: 2,
		Undocumented: []string{"T: D", "G", "T.O"},
		Unshown:      []string{"G", "U", "U.M"},
		Unchecked:    []string{"ExampleG"},
	}}
	sortNames := cmp.Transformer("sorted", func(s []string) map[string]bool {
		m := map[string]bool{}
		for _, n := range s {
			m[n] = true
		}
		return m
	})
	if diff := cmp.Diff(want, got, sortNames); diff != "" {
		t.Errorf("findings (-want +got):\n%s", diff)
	}
}
