package main

import (
	"bytes"
	"encoding/xml"
	"io"
	"math"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"example.com/ribface/grade"
	"example.com/ribface/internal/testkit/golden"
	"example.com/ribface/maturity"
	"github.com/google/go-cmp/cmp"
)

// TestGolden draws the invented class by every edition and holds the pictures and
// the page to those under testdata, which were looked at.
func TestGolden(t *testing.T) {
	for e := range grade.Editions() {
		golden.Compare(t, "testdata/chart-"+e.String()+".svg", wellFormed(t, output(t, "-svg", "-edition", e.String())))
	}
	golden.Compare(t, "testdata/chart.html", output(t, "-html"))
}

// TestCrowded draws exhibits on one point and in the corners of the chart, C to E
// among them, and names of three digits.
func TestCrowded(t *testing.T) {
	got := wellFormed(t, output(t, "-svg", "-edition", "1987", "-class", "testdata/crowded.csv"))
	golden.Compare(t, "testdata/crowded.svg", got)
	for _, want := range []string{">Cutter<", ">over 96 months<", ">101<", ">105<"} {
		if !strings.Contains(got, want) {
			t.Errorf("no %s", want)
		}
	}
	page := output(t, "-html", "-class", "testdata/crowded.csv", "-order", "3-1-4-2-5", "-cuts", "1-12-2-0")
	for _, want := range []string{`Official placing <span class="whole">103-101-104-102-105</span>, cuts <span class="whole">1-12-2-0</span>.`, "105 placed first", "<strong>103-101-104-102-105</strong>"} {
		if !strings.Contains(page, want) {
			t.Errorf("no %q on the page", want)
		}
	}
	if !strings.Contains(output(t, "-svg", "-old"), "Commercial<") || strings.Contains(output(t, "-svg"), "Commercial<") {
		t.Error("the groups C to E are drawn with -old and only then")
	}
}

// output runs the command with one file and returns what it wrote there.
func output(t *testing.T, args ...string) string {
	t.Helper()
	file := filepath.Join(t.TempDir(), "out")
	if err := run(append([]string{args[0], file}, args[1:]...), io.Discard, io.Discard); err != nil {
		t.Fatal(err)
	}
	b, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	return string(b)
}

func wellFormed(t *testing.T, s string) string {
	t.Helper()
	d := xml.NewDecoder(bytes.NewReader([]byte(s)))
	for {
		if _, err := d.Token(); err == io.EOF {
			return s
		} else if err != nil {
			t.Fatal(err)
		}
	}
}

// TestOrientation: marbling grows upward and maturity to the right, as in the
// federal figure, and the chart is no wider than a phone.
func TestOrientation(t *testing.T) {
	if a, b := at(grade.Small.At(0), maturity.A, 50), at(grade.Modest.At(0), maturity.A, 50); a.Y <= b.Y || a.X != b.X {
		t.Errorf("Small at %v, Modest at %v", a, b)
	}
	if a, b := at(grade.Small.At(0), maturity.A, 50), at(grade.Small.At(0), maturity.B, 0); a.X >= b.X || a.Y != b.Y {
		t.Errorf("A at %v, B at %v", a, b)
	}
	if width > 390*px {
		t.Errorf("%v pixels wide", width)
	}
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

// channels returns the red, green and blue of a fill.
func channels(t *testing.T, fill string) (c [3]float64) {
	t.Helper()
	for i := range c {
		v, err := strconv.ParseUint(fill[1+2*i:3+2*i], 16, 8)
		if err != nil {
			t.Fatal(err)
		}
		c[i] = float64(v)
	}
	return c
}

// TestFillsInGray: a grade is darker than the next one down by enough to see
// without color, and light enough to write on: 4.5 to 1 (WCAG 2.1, 1.4.3).
func TestFillsInGray(t *testing.T) {
	gray := func(g grade.Grade) float64 {
		c := channels(t, fills[g])
		return 0.299*c[0] + 0.587*c[1] + 0.114*c[2]
	}
	for _, column := range [][]grade.Grade{
		{grade.Utility, grade.Standard, grade.Select, grade.Choice, grade.Prime},
		{grade.Utility, grade.Standard, grade.Good, grade.Choice, grade.Prime},
		{grade.Cutter, grade.Utility, grade.Commercial},
	} {
		for i := 1; i < len(column); i++ {
			if d := gray(column[i-1]) - gray(column[i]); d < 12 {
				t.Errorf("%v is only %.0f of 255 darker than %v", column[i], d, column[i-1])
			}
		}
	}
	luminance := func(fill string) float64 {
		sum := 0.0
		for i, v := range channels(t, fill) {
			v /= 255
			if v <= 0.04045 {
				v /= 12.92
			} else {
				v = math.Pow((v+0.055)/1.055, 2.4)
			}
			sum += []float64{0.2126, 0.7152, 0.0722}[i] * v
		}
		return sum
	}
	for g, fill := range fills {
		if r := (luminance(fill) + 0.05) / (luminance("#16191c") + 0.05); r < 4.5 {
			t.Errorf("words on %v have a contrast of %.1f", g, r)
		}
	}
}

func TestRefused(t *testing.T) {
	const head = "id,sex,skeletal,lean,marbling,fat_in,ribeye_sq_in,kph_pct,weight_lb\n"
	for _, tt := range []struct {
		name, class string
		args        []string
		want        string
	}{
		{"an unknown column", "id,shade\n", nil, "class: "},
		{"an empty class", head, nil, "class: "},
		{"an exhibit that cannot be graded", head + "1,steer,A60,A50,Sm40,0.5,12,2,800\n2,steer,A60,A50,,0.5,12,2,800\n", nil, "marbling: missing"},
		{"an order of another size", "", []string{"-order", "1-2", "-cuts", "3"}, "-order 1-2: the class has 4 exhibits"},
		{"an order without cuts", "", []string{"-order", "1-2-3-4"}, "-order and -cuts go together"},
		{"cuts for another size", "", []string{"-order", "1-2-3-4", "-cuts", "3-3"}, "cuts"},
		{"an edition that there never was", "", []string{"-edition", "1976"}, "1976"},
		{"a class that is not there", "", []string{"-class", "no such file"}, "no such file"},
		{"nowhere to write", "", []string{"-html", "no such folder/x"}, "no such folder"},
	} {
		dir := t.TempDir()
		args := append([]string{"-html", filepath.Join(dir, "x.html")}, tt.args...)
		if tt.class != "" {
			file := filepath.Join(dir, "class.csv")
			if err := os.WriteFile(file, []byte(tt.class), 0o666); err != nil {
				t.Fatal(err)
			}
			args = append(args, "-class", file)
		}
		err := run(args, io.Discard, io.Discard)
		if err == nil || !strings.Contains(err.Error(), tt.want) {
			t.Errorf("%s: %v, want %q in it", tt.name, err, tt.want)
		}
	}
}

// TestLargeClass: a class whose cards do not fit a page has a page all the same.
func TestLargeClass(t *testing.T) {
	var b strings.Builder
	b.WriteString("id,sex,skeletal,lean,marbling,fat_in,ribeye_sq_in,kph_pct,weight_lb\n")
	for i := range 6 {
		b.WriteString(strconv.Itoa(i+1) + ",steer,A60,A50,Sm" + strconv.Itoa(10+10*i) + ",0.5,12,2,800\n")
	}
	file := filepath.Join(t.TempDir(), "six.csv")
	if err := os.WriteFile(file, []byte(b.String()), 0o666); err != nil {
		t.Fatal(err)
	}
	page := output(t, "-html", "-class", file, "-order", "1-2-3-4-5-6", "-cuts", "1-1-1-1-1")
	if !strings.Contains(page, "A class of 6 has too many cards for a page. The lowest score is 15") || !strings.Contains(page, "<title>six</title>") {
		t.Error("the page does not say why it has no cards")
	}
}
