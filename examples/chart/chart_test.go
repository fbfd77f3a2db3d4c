package main

import (
	"bytes"
	"encoding/xml"
	"io"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"example.com/ribface/grade"
	"example.com/ribface/internal/golden"
	"example.com/ribface/maturity"
	"example.com/ribface/placing"
	"github.com/google/go-cmp/cmp"
)

// TestGolden draws the invented class by every edition and holds the pictures to
// those under testdata, which were looked at.
func TestGolden(t *testing.T) {
	for e := range grade.Editions() {
		dir := t.TempDir()
		chart, scores := filepath.Join(dir, "chart.svg"), filepath.Join(dir, "scores.svg")
		if err := run([]string{"-edition", e.String(), "-chart", chart, "-scores", scores}, io.Discard); err != nil {
			t.Fatal(err)
		}
		drawing(t, chart, "chart-"+e.String()+".svg")
		drawing(t, scores, "scores.svg")
	}
}

// TestCrowded draws exhibits on one point and in the corners of the chart, and
// cards below zero.
func TestCrowded(t *testing.T) {
	dir := t.TempDir()
	chart, scores := filepath.Join(dir, "chart.svg"), filepath.Join(dir, "scores.svg")
	if err := run([]string{"-class", "testdata/crowded.json", "-edition", "1987", "-chart", chart, "-scores", scores}, io.Discard); err != nil {
		t.Fatal(err)
	}
	drawing(t, chart, "crowded-chart.svg")
	drawing(t, scores, "crowded-scores.svg")
}

// drawing holds the file got to the picture of testdata, and to be well formed.
func drawing(t *testing.T, got, name string) {
	t.Helper()
	b, err := os.ReadFile(got)
	if err != nil {
		t.Fatal(err)
	}
	d := xml.NewDecoder(bytes.NewReader(b))
	for {
		if _, err := d.Token(); err == io.EOF {
			break
		} else if err != nil {
			t.Fatalf("%s: %v", name, err)
		}
	}
	golden.Compare(t, "testdata/"+name, string(b))
}

// TestCells holds the areas of the picture to the grades of the library: the part
// of the chart at a point is the quality of a carcass there.
func TestCells(t *testing.T) {
	for e := range grade.Editions() {
		all := cells(e)
		for g := range maturity.Groups() {
			for units := 0; units < 100; units += 7 {
				for m := grade.Devoid.At(0); m < grade.Abundant.At(100); m += 9 {
					c := grade.Carcass{Sex: grade.Steer, Maturity: maturity.Evidence{Skeletal: g.At(units), Lean: g.At(units)}, Marbling: m}
					want, err := e.Quality(c)
					if err != nil {
						t.Fatal(err)
					}
					var found []grade.Quality
					for _, cell := range all {
						if cell.Group == g && m >= cell.On(units) && m < cell.end(units) {
							found = append(found, cell.Grade.Part(cell.Part))
						}
					}
					if diff := cmp.Diff([]grade.Quality{want}, found); diff != "" {
						t.Fatalf("%v: %v at %v (-want +got):\n%s", e, m, g.At(units), diff)
					}
				}
			}
		}
	}
}

func TestFillsKeepTheirOrderInGrey(t *testing.T) {
	grey := func(g grade.Grade) int {
		var n int
		for i, weight := range []int{299, 587, 114} {
			var v int
			for _, c := range strings.ToLower(fills[g][1+2*i : 3+2*i]) {
				v = v*16 + strings.IndexRune("0123456789abcdef", c)
			}
			n += weight * v
		}
		return n / 1000
	}
	for _, column := range [][]grade.Grade{
		{grade.Utility, grade.Standard, grade.Select, grade.Choice, grade.Prime},
		{grade.Utility, grade.Standard, grade.Good, grade.Choice, grade.Prime},
		{grade.Cutter, grade.Utility, grade.Commercial},
	} {
		for i := 1; i < len(column); i++ {
			if d := grey(column[i-1]) - grey(column[i]); d < 5 {
				t.Errorf("%v is only %d of 255 darker than %v", column[i], d, column[i-1])
			}
		}
	}
}

func TestRefused(t *testing.T) {
	for _, tt := range []struct{ name, class, want string }{
		{"not JSON", `{`, "class:"},
		{"a field that is not known", `{"Cuts": "2-8-2"}`, "class:"},
		{"no official placing", `{"Name": "x"}`, "official placing: missing"},
		{"more exhibits than places", `{"Official": "1-2 cuts 3", "Exhibits": [{}]}`, "the official placing has 2 exhibits, the class 1"},
		{"an exhibit that cannot be graded", `{"Official": "1-2 cuts 3", "Exhibits": [{}, {}]}`, "exhibit 1: sex class: missing"},
	} {
		path := filepath.Join(t.TempDir(), "class.json")
		if err := os.WriteFile(path, []byte(tt.class), 0o666); err != nil {
			t.Fatal(err)
		}
		err := run([]string{"-class", path, "-chart", path + ".svg", "-scores", path + ".svg"}, io.Discard)
		if err == nil || !strings.Contains(err.Error(), tt.want) {
			t.Errorf("%s: %v, want %q in it", tt.name, err, tt.want)
		}
	}
	if err := run([]string{"-edition", "1976"}, io.Discard); err == nil {
		t.Error("an edition that there never was is drawn")
	}
	if err := run([]string{"-class", "no such file"}, io.Discard); err == nil {
		t.Error("a class that is not there is drawn")
	}
	six := Class{Official: mustOfficial(t, "1-2-3-4-5-6 cuts 1-1-1-1-1")}
	if _, err := scoreTable(six); err == nil || !strings.Contains(err.Error(), "fit a page") {
		t.Errorf("720 cards: %v", err)
	}
}

func mustOfficial(t *testing.T, s string) placing.Official {
	t.Helper()
	o, err := placing.ParseOfficial(s)
	if err != nil {
		t.Fatal(err)
	}
	return o
}
