//go:build !js

package main

import (
	"bytes"
	"encoding/json"
	"errors"
	"os/exec"
	"strings"
	"testing"

	"example.com/ribface/grade"
)

const steer = `{"Carcass": {"Sex": "steer", "Maturity": {"Skeletal": "A90", "Lean": "A30"}, "Marbling": "Sm40",
	"Measures": {"Fat": "0.60 in", "Ribeye": 11.9, "KPH": "1.5%", "Weight": "660 lb"}}}`

func TestAssess(t *testing.T) {
	for _, tt := range []struct {
		name, in string
		want     answer
	}{
		{"the edition in use", steer, answer{Edition: grade.Current, Maturity: "A70", Quality: grade.Choice.Part(grade.Low), YieldGrade: 3, Yield: "3"}},
		{"an old edition", `{"Edition": "1975",` + steer[1:], answer{Edition: grade.Edition1975, Maturity: "A70", Quality: grade.Choice.Part(grade.Low), YieldGrade: 3, Yield: "3"}},
		{"a note on an unusual measure", strings.Replace(steer, "660", "1400", 1), answer{Edition: grade.Current, Maturity: "A70", Quality: grade.Choice.Part(grade.Low), YieldGrade: 5, Yield: "5.812", Unusual: []string{"weight 1400 lb is outside the usual 400 lb to 1300 lb"}}},
		{"a missing field", `{}`, answer{Problem: &problem{"sex class", "", "steer, heifer, cow, bullock, bull", "sex class: missing; allowed: steer, heifer, cow, bullock, bull"}}},
		{"text that is no marbling", strings.Replace(steer, "Sm40", "Xx40", 1), answer{Problem: &problem{"marbling", "Xx40", "Devoid00 to Ab100", `marbling: "Xx40": unknown at "Xx"; allowed: Devoid00 to Ab100`}}},
		{"no JSON", `{`, answer{Problem: &problem{Detail: "unexpected end of JSON input"}}},
	} {
		var got answer
		if err := json.Unmarshal(assess([]byte(tt.in)), &got); err != nil {
			t.Fatal(err)
		}
		if (len(got.Steps) > 0) != (tt.want.Problem == nil) {
			t.Errorf("%s: %d steps", tt.name, len(got.Steps))
		}
		got.Steps = nil
		a, _ := json.Marshal(got)
		b, _ := json.Marshal(tt.want)
		if !bytes.Equal(a, b) {
			t.Errorf("%s:\n%s, want\n%s", tt.name, a, b)
		}
	}
}

func TestChoices(t *testing.T) {
	const want = `{"Editions":["1975","1987","1997","2016","2017"],"Sexes":["steer","heifer","cow","bullock","bull"],` +
		`"Firmness":["very soft","soft","moderately soft","slightly soft","slightly firm","moderately firm","firm"],` +
		`"DarkCuts":["one third","two thirds","full"],` +
		`"Degrees":["Devoid","Practically Devoid","Traces","Slight","Small","Modest","Moderate","Slightly Abundant","Moderately Abundant","Abundant"]}`
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
	if err := filter(strings.NewReader(steer), &out); err != nil || !strings.Contains(out.String(), `"Quality":"Low Choice"`) {
		t.Errorf("%s, %v", &out, err)
	}
	if filter(broken{}, &out) == nil || filter(strings.NewReader(steer), broken{}) == nil {
		t.Error("a broken stream is no error")
	}
}

// TestWasm builds the page and grades a carcass in node, where node is installed.
func TestWasm(t *testing.T) {
	if testing.Short() {
		t.Skip("builds for wasm")
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
