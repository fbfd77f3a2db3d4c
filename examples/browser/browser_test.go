//go:build !js

package main

import (
	"bytes"
	"encoding/json"
	"errors"
	"os"
	"os/exec"
	"strings"
	"testing"

	"example.com/ribface/grade"
	"example.com/ribface/internal/testkit"
	"github.com/google/go-cmp/cmp"
)

const steer = `{"carcass": {"sex": "steer", "maturity": {"skeletal": "A90", "lean": "A30"}, "marbling": "Sm40",
	"measures": {"fat": "0.60 in", "ribeye": 11.9, "kph": "1.5%", "weight": "660 lb"}}}`

func TestAssess(t *testing.T) {
	low := grade.Choice.Part(grade.Low)
	missing := func(path, field, allowed string) problem {
		return problem{path, field, "", allowed, field + ": missing; allowed: " + allowed}
	}
	noFat, noKPH := missing("measures.fat", "fat", "0 in to 3 in"), missing("measures.kph", "KPH", "0% to 10%")
	for _, tt := range []struct {
		name, in string
		want     answer
	}{
		{"the edition in use", steer, answer{Edition: grade.Current, Maturity: "A70", Quality: low, YieldGrade: 3, Yield: "3"}},
		{"an old edition", `{"edition": "1975",` + steer[1:], answer{Edition: grade.Edition1975, Maturity: "A70", Quality: low, YieldGrade: 3, Yield: "3"}},
		{"a note on an unusual measure", strings.Replace(steer, "660", "1400", 1), answer{Edition: grade.Current, Maturity: "A70", Quality: low, YieldGrade: 5, Yield: "5.812", Unusual: []string{"weight 1400 lb is outside the usual 400 lb to 1300 lb"}}},
		{"names in any case", strings.NewReplacer("carcass", "Carcass", "sex", "Sex", "fat", "Fat").Replace(steer), answer{Edition: grade.Current, Maturity: "A70", Quality: low, YieldGrade: 3, Yield: "3"}},
		{"measures that nobody took", `{"carcass":{"sex":"steer","maturity":{"skeletal":"A60","lean":"A50"},"marbling":"Mt20","measures":{"ribeye":11.9,"weight":660}}}`, answer{Problems: []problem{noFat, noKPH}}},
		{"a misspelled name", strings.Replace(steer, "fat", "fet", 1), answer{Problems: []problem{
			{"measures.fet", "name", "fet", "fat, ribeye, kph, weight", "name: fet: unknown; allowed: fat, ribeye, kph, weight"}, noFat}}},
		{"text that is no marbling, and no fat", strings.NewReplacer("Sm40", "Xx40", `"fat": "0.60 in",`, "").Replace(steer), answer{Problems: []problem{
			{"marbling", "marbling", `"Xx40"`, "Devoid00 to Ab100", `marbling: "Xx40": unknown; allowed: Devoid00 to Ab100`}, noFat}}},
		{"no JSON", `{`, answer{Problems: []problem{{Detail: "unexpected end of JSON input"}}}},
	} {
		var got answer
		if err := json.Unmarshal(assess([]byte(tt.in)), &got); err != nil {
			t.Fatal(err)
		}
		if (len(got.Steps) > 0) != (len(tt.want.Problems) == 0) {
			t.Errorf("%s: %d steps", tt.name, len(got.Steps))
		}
		got.Steps = nil
		if d := cmp.Diff(tt.want, got); d != "" {
			t.Errorf("%s (-want +got):\n%s", tt.name, d)
		}
	}
	var got answer
	if err := json.Unmarshal(assess([]byte(`{"carcass": {}}`)), &got); err != nil || len(got.Problems) != 8 {
		t.Errorf("nothing sent: %d problems, %v; want 8", len(got.Problems), err)
	}
}

func TestChoices(t *testing.T) {
	const want = `{"editions":["1975","1987","1997","2016","2017"],"sexes":["steer","heifer","cow","bullock","bull"],` +
		`"firmness":["very soft","soft","moderately soft","slightly soft","slightly firm","moderately firm","firm"],` +
		`"dark_cuts":["one third","two thirds","full"],` +
		`"degrees":["Devoid","Practically Devoid","Traces","Slight","Small","Modest","Moderate","Slightly Abundant","Moderately Abundant","Abundant"]}`
	if got := string(choices()); got != want {
		t.Errorf("choices:\n%s\nwant\n%s", got, want)
	}
	if got := string(marshal(func() {})); !strings.Contains(got, "unsupported type") {
		t.Errorf("what cannot be written gives %s", got)
	}
}

type broken struct{}

func (broken) Read([]byte) (int, error)  { return 0, errors.New("broken") }
func (broken) Write([]byte) (int, error) { return 0, errors.New("broken") }

func TestFilter(t *testing.T) {
	var out bytes.Buffer
	if err := filter(strings.NewReader(steer), &out); err != nil || !strings.Contains(out.String(), `"quality":"Low Choice"`) {
		t.Errorf("%s, %v", &out, err)
	}
	if filter(broken{}, &out) == nil || filter(strings.NewReader(steer), broken{}) == nil {
		t.Error("a broken stream is no error")
	}
}

// TestWasm builds the page and grades a carcass in node, where node is installed. A
// sample compiles the program for wasm and leaves the linking, packing and running.
func TestWasm(t *testing.T) {
	if testing.Short() {
		t.Skip("builds for wasm")
	}
	if !testkit.Exhaustive() {
		c := exec.Command("go", "build", "-trimpath", "-o", os.DevNull, ".")
		c.Env = append(os.Environ(), "GOOS=js", "GOARCH=wasm")
		if b, err := c.CombinedOutput(); err != nil {
			t.Errorf("%v\n%s", err, b)
		}
		return
	}
	if _, err := exec.LookPath("node"); err != nil {
		t.Skip("no node")
	}
	dir := t.TempDir()
	b, err := exec.Command("./build.sh", dir).CombinedOutput()
	t.Logf("%s", b)
	if err != nil {
		t.Fatal(err)
	}
	b, err = exec.Command("node", "check.mjs", dir).CombinedOutput()
	t.Logf("%s", b)
	if err != nil {
		t.Fatal(err)
	}
}
