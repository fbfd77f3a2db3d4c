package main

import (
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

func needGo(t *testing.T) {
	t.Helper()
	if _, err := exec.LookPath("go"); err != nil || testing.Short() {
		t.Skip("asks the go command for the packages")
	}
}

// TestAPI holds that no exported symbol changes without the list of them, and
// the list not without the changelog.
func TestAPI(t *testing.T) {
	needGo(t)
	now, err := List("../../..")
	if err != nil {
		t.Fatal(err)
	}
	kept, err := os.ReadFile("../../../testdata/api.txt")
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(strings.Split(string(kept), "\n"), strings.Split(now, "\n")); diff != "" {
		t.Errorf("the exported API differs from testdata/api.txt. Where that is meant: run go generate ./internal/docs/apilist, say in CHANGELOG.md under Unreleased what changed, and set its API line to\n\nAPI: %s\n\n(-want +got)\n%s", Sum(now), diff)
	}
	changelog, err := os.ReadFile("../../../CHANGELOG.md")
	if err != nil {
		t.Fatal(err)
	}
	if got, want := mark(string(changelog)), Sum(string(kept)); got != want {
		t.Errorf("CHANGELOG.md carries the API mark %q. Say under its first heading what changed in the API, and set the line there to\n\nAPI: %s", got, want)
	}
}

// mark finds the API line in the newest section of the changelog: from the first
// second-level heading to the next.
func mark(changelog string) string {
	_, section, _ := strings.Cut("\n"+changelog, "\n## ")
	section, _, _ = strings.Cut(section, "\n## ")
	for line := range strings.Lines(section) {
		if m, ok := strings.CutPrefix(strings.TrimSpace(line), "API: "); ok {
			return m
		}
	}
	return ""
}

// TestMark holds where the mark is looked for.
func TestMark(t *testing.T) {
	for _, tt := range []struct{ name, in, want string }{
		{"newest section", "# C\n\n## Unreleased\n\nAPI: abc\n\n## v1\n\nAPI: old\n", "abc"},
		{"only in an older section", "# C\n\n## Unreleased\n\n## v1\n\nAPI: old\n", ""},
		{"before the sections", "# C\n\nAPI: x\n\n## Unreleased\n", ""},
	} {
		if got := mark(tt.in); got != tt.want {
			t.Errorf("%s: %q, want %q", tt.name, got, tt.want)
		}
	}
}

// TestList holds the form of each kind of symbol, and what is left out, on a
// small module.
func TestList(t *testing.T) {
	needGo(t)
	root := t.TempDir()
	for name, text := range map[string]string{
		"go.mod": "module example.com/small\n\ngo 1.24\n",
		"a/a.go": `package a

import "example.com/small/internal/hidden"

// Level is exported.
type Level uint8

const (
	Low Level = 1 + iota
	High
	unexported
)

const Word = "w"

var Table [2]int

type Alias = hidden.Error

type Box[T any] struct {
	Content T
	lid     bool
}

func (b Box[T]) Open() T { return b.Content }

type Opener interface{ Open() Level }

func (l *Level) Set(to int) error { return nil }
func (l Level) String() string    { return "" }
func (l Level) hidden()           {}

func Make(n ...int) (Box[Level], error) { return Box[Level]{}, nil }
func private()                          {}
`,
		"internal/hidden/h.go": "package hidden\n\ntype Error struct{ Field string }\n\nfunc (e *Error) Error() string { return e.Field }\n",
		"examples/x/x.go":      "package x\n\nfunc Shown() {}\n",
		"cmd/main.go":          "package main\n\nfunc Exported() {}\n\nfunc main() {}\n",
	} {
		p := filepath.Join(root, filepath.FromSlash(name))
		if err := os.MkdirAll(filepath.Dir(p), 0o755); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(p, []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	got, err := List(root)
	if err != nil {
		t.Fatal(err)
	}
	want := `a: const High Level = 2
a: const Low Level = 1
a: const Word untyped string = "w"
a: func Make(n ...int) (Box[Level], error)
a: method (*Level) Set(to int) error
a: method (*internal/hidden.Error) Error() string
a: method (Box[T]) Open() T
a: method (Level) String() string
a: type Alias = internal/hidden.Error
a: type Alias struct, Field string
a: type Box struct, Content T
a: type Box[T any] struct
a: type Level uint8
a: type Opener interface{Open() Level}
a: var Table [2]int
`
	if diff := cmp.Diff(strings.Split(want, "\n"), strings.Split(got, "\n")); diff != "" {
		t.Errorf("(-want +got)\n%s", diff)
	}
}
