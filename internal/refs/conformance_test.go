package refs

import (
	"go/ast"
	"go/parser"
	"go/token"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"

	"example.com/ribface/grade"
	"github.com/google/go-cmp/cmp"
)

const (
	root       = "../.."
	references = root + "/testdata/references"
)

// Every file of references is registered, and nothing else is.
func TestEveryFileIsRegistered(t *testing.T) {
	found, err := filepath.Glob(references + "/*.csv")
	if err != nil {
		t.Fatal(err)
	}
	var onDisk []string
	for _, f := range found {
		if name := filepath.Base(f); name != "sources.csv" {
			onDisk = append(onDisk, name)
		}
	}
	var registered []string
	for _, f := range All() {
		registered = append(registered, f.Name)
		if f.Room == "" && len(f.elsewhere) == 0 {
			t.Errorf("%s: wants a package or a test", f.Name)
		}
	}
	slices.Sort(registered)
	if d := cmp.Diff(onDisk, registered); d != "" {
		t.Errorf("registered files (-on disk +registered):\n%s", d)
	}
}

// Every row of every file says where it comes from and how far it fits, and a test of
// another package checks it.
func TestEveryRowIsClaimed(t *testing.T) {
	for _, f := range All() {
		results, err := f.Claim(references)
		if err != nil {
			t.Error(err)
		}
		for _, r := range results {
			if r.Err != nil {
				t.Error(r.Err)
			}
		}
	}
}

// A claim notices a row without a check, a declaration that is none, a difference
// without a reason and a source that is not known.
func TestClaim(t *testing.T) {
	dir := t.TempDir()
	sources := "id,standing\ncfr-54-105,official\n"
	if err := os.WriteFile(filepath.Join(dir, "sources.csv"), []byte(sources), 0o666); err != nil {
		t.Fatal(err)
	}
	text := "agrees,note,about,source_id,standing\n" +
		"yes,,x,cfr-54-105,official\n" +
		"yes,,y,cfr-54-105,official\n" +
		"maybe,,x,cfr-54-105,official\n" +
		"no,,x,cfr-54-105,official\n" +
		"yes,,x,nowhere,official\n"
	if err := os.WriteFile(filepath.Join(dir, "rows.csv"), []byte(text), 0o666); err != nil {
		t.Fatal(err)
	}
	f := File{Name: "rows.csv", elsewhere: []Test{{Column: "about", Values: []string{"x"}}}}
	results, err := f.Claim(dir)
	if err != nil {
		t.Fatal(err)
	}
	for i, want := range []string{"", "no test checks the row", `agrees: "maybe" is none of`, "differs without a reason", `source "nowhere" is not in sources.csv`} {
		if err := results[i].Err; (err == nil) != (want == "") || err != nil && !strings.Contains(err.Error(), want) {
			t.Errorf("line %d: %v; want %q", i+2, err, want)
		}
	}
	// The check finds another verdict than the row declares.
	f = File{Name: "rows.csv", Room: "room"}
	results, err = f.verify(dir, func(Row) (Verdict, error) { return Rounding, nil })
	if err != nil || results[0].Err == nil || !strings.Contains(results[0].Err.Error(), "found rounding, the row says yes") {
		t.Errorf("%v, %v", results[0].Err, err)
	}
}

// Every package that files are registered for runs their checks, and a file that has
// tests of its own names tests that exist and read the file.
func TestElsewhere(t *testing.T) {
	for _, f := range All() {
		if f.Room != "" && !testNames(t, filepath.Join(root, f.Room), "TestReferences", strconv.Quote(f.Room)) {
			t.Errorf("%s: package %s has no TestReferences that runs the checks of %[2]s", f.Name, f.Room)
		}
		for _, e := range f.elsewhere {
			if !testNames(t, filepath.Join(root, e.Room), e.Name, f.Name) {
				t.Errorf("%s: package %s has no %s that reads it", f.Name, e.Room, e.Name)
			}
		}
	}
}

// testNames reports whether a test file of the folder declares the test and holds the
// text in a string.
func testNames(t *testing.T, dir, test, text string) bool {
	t.Helper()
	return slices.ContainsFunc(testFiles(t, dir), func(f testFile) bool {
		return f.declares[test] && slices.ContainsFunc(f.strings, func(s string) bool { return strings.Contains(s, text) })
	})
}

// testFile is what a test file declares and the strings in it.
type testFile struct {
	declares map[string]bool
	strings  []string
}

var parsedFiles = map[string][]testFile{}

// testFiles reads the test files of a folder, once.
func testFiles(t *testing.T, dir string) []testFile {
	t.Helper()
	if files, ok := parsedFiles[dir]; ok {
		return files
	}
	paths, err := filepath.Glob(dir + "/*_test.go")
	if err != nil {
		t.Fatal(err)
	}
	for _, path := range paths {
		parsed, err := parser.ParseFile(token.NewFileSet(), path, nil, 0)
		if err != nil {
			t.Fatal(err)
		}
		f := testFile{declares: map[string]bool{}}
		ast.Inspect(parsed, func(n ast.Node) bool {
			switch n := n.(type) {
			case *ast.FuncDecl:
				f.declares[n.Name.Name] = true
			case *ast.BasicLit:
				if n.Kind == token.STRING {
					f.strings = append(f.strings, n.Value)
				}
			}
			return true
		})
		parsedFiles[dir] = append(parsedFiles[dir], f)
	}
	return parsedFiles[dir]
}

// Every line of the grade chart has a row, under every edition.
func TestEveryLineHasARow(t *testing.T) {
	type cell struct{ edition, group, grade, part string }
	rows := map[cell]int{}
	all, err := Read(references, "grade-minima.csv")
	if err != nil {
		t.Fatal(err)
	}
	for _, r := range all {
		for e := range strings.FieldsSeq(r.Get("editions")) {
			rows[cell{e, r.Get("group"), r.Get("grade"), r.Get("part")}]++
		}
	}
	firm := map[cell]int{}
	if all, err = Read(references, "firmness-minima.csv"); err != nil {
		t.Fatal(err)
	}
	for _, r := range all {
		for e := range strings.FieldsSeq(r.Get("editions")) {
			firm[cell{e, r.Get("group"), r.Get("grade"), ""}]++
		}
	}
	lines := 0
	for e := range grade.Editions() {
		for l := range e.Lines() {
			lines++
			if n := rows[cell{e.String(), l.Group.String(), l.Grade.String(), l.Part.String()}]; n != 1 {
				t.Errorf("edition %v, %v %v %v: %d rows", e, l.Group, l.Grade, l.Part, n)
			}
			want := 1
			if l.Firmness == 0 {
				want = 0
			}
			if n := firm[cell{e.String(), l.Group.String(), l.Grade.String(), ""}]; n != want {
				t.Errorf("edition %v, firmness of %v %v: %d rows", e, l.Group, l.Grade, n)
			}
		}
	}
	if lines == 0 {
		t.Error("no lines")
	}
}

// The tables of testdata/conformance.md and the count of the README are those that the
// rows give.
func TestTables(t *testing.T) {
	count, page, err := Table(references)
	if err != nil {
		t.Fatal(err)
	}
	kept, err := os.ReadFile(root + "/testdata/conformance.md")
	if err != nil {
		t.Fatal(err)
	}
	if d := cmp.Diff(page, string(kept)); d != "" {
		t.Errorf("testdata/conformance.md is stale; run go generate ./... (-want +got):\n%s", d)
	}
	readme, err := os.ReadFile(root + "/README.md")
	if err != nil {
		t.Fatal(err)
	}
	want, err := Place(string(readme), count)
	if err != nil {
		t.Fatal(err)
	}
	if d := cmp.Diff(want, string(readme)); d != "" {
		t.Errorf("README is stale; run go generate ./... (-want +got):\n%s", d)
	}
	if strings.Count(count, "\n") != 1 {
		t.Errorf("the count is more than a line: %q", count)
	}
}

func TestPlace(t *testing.T) {
	got, err := Place("a\n"+Begin+"\nold\n"+End+"\nb\n", "new\n")
	if err != nil {
		t.Fatal(err)
	}
	if d := cmp.Diff("a\n"+Begin+"\nnew\n"+End+"\nb\n", got); d != "" {
		t.Errorf("(-want +got):\n%s", d)
	}
	for _, text := range []string{"", Begin + "\n", End + "\n" + Begin + "\n"} {
		if _, err := Place(text, ""); err == nil {
			t.Errorf("Place(%q): no error", text)
		}
	}
}
