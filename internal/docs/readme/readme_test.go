// Package readme holds the test that keeps the README's program and its printed
// output true.
package readme

import (
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

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

// run runs a program that uses this checkout, in a folder of its own.
func run(t *testing.T, program string) string {
	t.Helper()
	if _, err := exec.LookPath("go"); err != nil || testing.Short() {
		t.Skip("needs the go command")
	}
	root, err := filepath.Abs("../../..")
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
		"main.go": program, "go.sum": string(sums),
		"go.mod": "module program\n" + requires + "\nrequire example.com/ribface v0.0.0\n\nreplace example.com/ribface => " + filepath.ToSlash(root) + "\n",
	} {
		if err := os.WriteFile(filepath.Join(dir, name), []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	c := exec.Command("go", "run", "-mod=mod", ".")
	c.Dir = dir
	got, err := c.CombinedOutput()
	if err != nil {
		t.Fatalf("%v\n%s", err, got)
	}
	return string(got)
}

func readme(t *testing.T) string {
	t.Helper()
	b, err := os.ReadFile("../../../README.md")
	if err != nil {
		t.Fatal(err)
	}
	return string(b)
}

// TestFirstProgram holds the first program to the output that is printed below it.
func TestFirstProgram(t *testing.T) {
	text := readme(t)
	if diff := cmp.Diff(block(t, text, "text"), run(t, block(t, text, "go"))); diff != "" {
		t.Errorf("README's output (-want +got):\n%s", diff)
	}
}

// TestContest holds the lines of a contest to the scores that stand behind them.
func TestContest(t *testing.T) {
	_, rest, _ := strings.Cut(readme(t), "```go\n")
	lines := block(t, rest, "go")
	got := run(t, `package main

import (
	"fmt"
	"strings"

	"example.com/ribface/placing"
	"example.com/ribface/placing/contest"
)

func main() {
`+lines+`}
`)
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
