package docs

import (
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

const root = "../.."

// block returns the text of the first fenced block of the given language.
func block(t *testing.T, text, language string) string {
	t.Helper()
	_, rest, ok := strings.Cut(text, "```"+language+"\n")
	if !ok {
		t.Fatalf("README has no %s block", language)
	}
	body, _, ok := strings.Cut(rest, "```")
	if !ok {
		t.Fatalf("README's %s block does not end", language)
	}
	return body
}

// needGo skips a test that cannot or should not run the go command.
func needGo(t *testing.T) {
	t.Helper()
	if _, err := exec.LookPath("go"); err != nil || testing.Short() {
		t.Skip("runs the go command")
	}
}

func readme(t *testing.T) string {
	t.Helper()
	b, err := os.ReadFile(root + "/README.md")
	if err != nil {
		t.Fatal(err)
	}
	return string(b)
}

// TestPrograms holds the first program of the README to the output that is printed
// below it, and the lines of a contest to the scores that stand behind them. Both are
// built at once, in a module of their own that uses this checkout.
func TestPrograms(t *testing.T) {
	needGo(t)
	text := readme(t)
	_, rest, _ := strings.Cut(text, "```go\n")
	here, err := filepath.Abs(root)
	if err != nil {
		t.Fatal(err)
	}
	sums, err := os.ReadFile(filepath.Join(root, "go.sum"))
	if err != nil {
		t.Fatal(err)
	}
	module, err := os.ReadFile(filepath.Join(root, "go.mod"))
	if err != nil {
		t.Fatal(err)
	}
	_, requires, _ := strings.Cut(string(module), "\n")
	dir := t.TempDir()
	for name, text := range map[string]string{
		"go.sum":        string(sums),
		"go.mod":        "module program\n" + requires + "\nrequire example.com/ribface v0.0.0\n\nreplace example.com/ribface => " + filepath.ToSlash(here) + "\n",
		"first/main.go": block(t, text, "go"),
		"contest/main.go": `package main

import (
	"fmt"
	"strings"

	"example.com/ribface/placing"
	"example.com/ribface/placing/contest"
)

func main() {
` + block(t, rest, "go") + `}
`,
	} {
		path := filepath.Join(dir, filepath.FromSlash(name))
		if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(path, []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	run := func(name string, args ...string) string {
		t.Helper()
		c := exec.Command(name, args...)
		c.Dir = dir
		got, err := c.CombinedOutput()
		if err != nil {
			t.Fatalf("%v\n%s", err, got)
		}
		return string(got)
	}
	built := filepath.Join(dir, "built") + string(filepath.Separator)
	run("go", "build", "-mod=mod", "-ldflags=-s -w", "-o", built, "./...")
	if diff := cmp.Diff(block(t, text, "text"), run(built+"first")); diff != "" {
		t.Errorf("README's output (-want +got):\n%s", diff)
	}
	got := run(built + "contest")
	for _, want := range []string{"Ada Quill      50", "Bo Thistle     49", "Cy Marsh        0"} {
		if !strings.Contains(got, want) {
			t.Errorf("no %q in\n%s", want, got)
		}
	}
}

// TestLength keeps the page short enough to be read to its end.
func TestLength(t *testing.T) {
	if n := strings.Count(readme(t), "\n"); n > 180 {
		t.Errorf("README has %d lines, at most 180 are wanted", n)
	}
}
