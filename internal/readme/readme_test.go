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

func TestFirstProgram(t *testing.T) {
	if _, err := exec.LookPath("go"); err != nil || testing.Short() {
		t.Skip("needs the go command")
	}
	readme, err := os.ReadFile("../../README.md")
	if err != nil {
		t.Fatal(err)
	}
	// The go command runs here, inside the module, so that the program uses this
	// checkout.
	program := filepath.Join(t.TempDir(), "main.go")
	if err := os.WriteFile(program, []byte(block(t, string(readme), "go")), 0o644); err != nil {
		t.Fatal(err)
	}
	got, err := exec.Command("go", "run", program).CombinedOutput()
	if err != nil {
		t.Fatalf("%v\n%s", err, got)
	}
	if diff := cmp.Diff(block(t, string(readme), "text"), string(got)); diff != "" {
		t.Errorf("README's output (-want +got):\n%s", diff)
	}
}
