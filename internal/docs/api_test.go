package docs

import (
	"os"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

// TestAPI holds that no exported symbol changes without the list of them, and
// the list not without the changelog.
func TestAPI(t *testing.T) {
	needGo(t)
	now, err := API(root)
	if err != nil {
		t.Fatal(err)
	}
	kept, err := os.ReadFile(root + "/testdata/api.txt")
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(strings.Split(string(kept), "\n"), strings.Split(now, "\n")); diff != "" {
		t.Errorf("the exported API differs from testdata/api.txt. Where that is meant: run go generate ./internal/docs/apilist, say in CHANGELOG.md under Unreleased what changed, and set its API line to\n\nAPI: %s\n\n(-want +got)\n%s", Sum(now), diff)
	}
	changelog, err := os.ReadFile(root + "/CHANGELOG.md")
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
