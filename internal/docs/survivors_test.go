package docs

import (
	"os"
	"regexp"
	"strings"
	"testing"
)

// Every row of the table of mutation survivors names a file that there is and functions
// in it.
func TestMutationSurvivors(t *testing.T) {
	table, err := os.ReadFile(root + "/testdata/mutation-survivors.md")
	if err != nil {
		t.Fatal(err)
	}
	place := regexp.MustCompile("`([a-z/]+\\.go)`, ((?:`\\w+`(?:, )?)+)")
	function := regexp.MustCompile("`(\\w+)`")
	rows := 0
	for line := range strings.Lines(string(table)) {
		if !strings.HasPrefix(line, "| `") {
			continue
		}
		rows++
		places := place.FindAllStringSubmatch(line, -1)
		if places == nil {
			t.Errorf("no file with a function: %s", line)
		}
		for _, p := range places {
			code, err := os.ReadFile(root + "/" + p[1])
			if err != nil {
				t.Error(err)
				continue
			}
			for _, f := range function.FindAllStringSubmatch(p[2], -1) {
				if !regexp.MustCompile(`func (\([^)]*\) )?` + f[1] + `[\[(]`).Match(code) {
					t.Errorf("%s has no function %s", p[1], f[1])
				}
			}
		}
	}
	if rows < 10 {
		t.Errorf("%d rows", rows)
	}
}
