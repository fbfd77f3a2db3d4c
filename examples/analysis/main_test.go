package main

import (
	"bytes"
	"context"
	"crypto/sha256"
	"encoding/csv"
	"encoding/hex"
	"encoding/json"
	"encoding/xml"
	"errors"
	"flag"
	"io"
	"math/rand/v2"
	"os"
	"path/filepath"
	"strings"
	"syscall"
	"testing"

	"example.com/ribface/grade"
	"example.com/ribface/grade/sheet"
	"example.com/ribface/internal/testkit/golden"
	"github.com/google/go-cmp/cmp"
	"github.com/shopspring/decimal"
)

// command runs the program and gives what it printed.
func command(t *testing.T, stdin string, args ...string) (stdout, stderr string, err error) {
	t.Helper()
	var out, log strings.Builder
	err = run(context.Background(), args, strings.NewReader(stdin), &out, &log)
	return out.String(), log.String(), err
}

func hash(s string) string {
	sum := sha256.Sum256([]byte(s))
	return hex.EncodeToString(sum[:])
}

func content(t *testing.T, name string) string {
	t.Helper()
	b, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	return string(b)
}

const sheets = "../../grade/sheet/testdata/"

// TestFieldSheets grades the four sheets that people keep by one command each, and
// holds the graded sheet to what an independent reading in exact fractions gives.
func TestFieldSheets(t *testing.T) {
	for name, refused := range map[string]string{
		"plant":      "18 T017 BF missing, 34 T033 HCW out of range",
		"university": "10 U009 KPH, % missing",
		"europe":     "", "floats": "",
	} {
		t.Run(name, func(t *testing.T) {
			dir := t.TempDir()
			out, bad := filepath.Join(dir, "graded.csv"), filepath.Join(dir, "refused.csv")
			_, _, err := command(t, "", "-map", "maps/"+name+".json", "-out", out, "-refused", bad, sheets+name+".csv")
			if want := map[bool]int{true: 0, false: 3}[refused == ""]; status(err) != want {
				t.Fatalf("status %d, want %d: %v", status(err), want, err)
			}
			rows, err := csv.NewReader(strings.NewReader(content(t, out))).ReadAll()
			if err != nil {
				t.Fatal(err)
			}
			at := map[string]int{}
			for i, name := range rows[0] {
				at[name] = i
			}
			got := "id,quality_grade,yield,yield_grade\n"
			for _, row := range rows[1:] {
				words := strings.Fields(row[at["quality"]])
				got += strings.Join([]string{row[at["id"]], words[len(words)-1], row[at["yield"]], row[at["yield_grade"]]}, ",") + "\n"
				if assumed := row[at["assumed"]]; (assumed == "maturity kph") != (name == "plant") {
					t.Errorf("assumed %q", assumed)
				}
			}
			if d := cmp.Diff(strings.ReplaceAll(content(t, sheets+name+".expected.csv"), "\r", ""), got); d != "" {
				t.Errorf("(-want +got):\n%s", d)
			}
			reasons, err := csv.NewReader(strings.NewReader(content(t, bad))).ReadAll()
			if err != nil {
				t.Fatal(err)
			}
			var list []string
			for _, r := range reasons[1:] {
				if r[0] != sheets+name+".csv" {
					t.Errorf("file %s", r[0])
				}
				list = append(list, strings.Join([]string{r[1], r[2], r[4], r[7]}, " "))
			}
			if d := cmp.Diff(refused, strings.Join(list, ", ")); d != "" {
				t.Errorf("refused (-want +got):\n%s", d)
			}
			// The graded sheet is graded again to the same bytes, without a mapping.
			again := filepath.Join(dir, "again.csv")
			if _, _, err := command(t, "", "-out", again, out); err != nil {
				t.Fatal(err)
			}
			if d := cmp.Diff(content(t, out), content(t, again)); d != "" {
				t.Errorf("graded again (-want +got):\n%s", d)
			}
		})
	}
}

// spoiled is a sheet of 4,000 invented carcasses with bad rows among them.
func spoiled(t *testing.T) string {
	t.Helper()
	in, _, err := command(t, "", "-make", "4000", "-seed", "7")
	if err != nil {
		t.Fatal(err)
	}
	lines := strings.SplitAfter(in, "\n")
	spoil := func(n int, from, to string) {
		if !strings.Contains(lines[n], from) {
			t.Fatalf("line %d has no %q: %s", n+1, from, lines[n])
		}
		lines[n] = strings.Replace(lines[n], from, to, 1)
	}
	spoil(10, ",A", ",Q")                                       // a group that is none
	spoil(20, ",,", ",")                                        // a cell too few
	spoil(30, "invented", `"invented`)                          // a quote that is not closed
	spoil(40, ",heifer,", ",,")                                 // graded on what is missing
	lines[50] = "7,steer,A50,A50,,,Sm40,,,,14,,12.4,,820,,,,\n" // millimeters in a column of inches, and no KPH
	lines[60] = lines[59]                                       // a row twice
	return strings.Join(lines, "")
}

// TestPrices prices carcasses on a file of the caller's.
func TestPrices(t *testing.T) {
	name := filepath.Join(t.TempDir(), "county.json")
	if err := os.WriteFile(name, []byte(`{"name": "county sale", "tiers": [{"tier": "low choice", "amount": "2"}]}`), 0o600); err != nil {
		t.Fatal(err)
	}
	in := "sex,skeletal,lean,marbling,fat_in,ribeye_sq_in,kph_pct,weight_lb\nsteer,A60,A50,Sm40,0.5,13,2.5,800\n"
	stdout, _, err := command(t, in, "-base", "100", "-prices", name)
	if err != nil || !strings.Contains(stdout, "county sale, base 100.00 per cwt") || !strings.Contains(stdout, "816.00") {
		t.Errorf("%v:\n%s", err, stdout)
	}
}

func TestGolden(t *testing.T) {
	in := spoiled(t)
	dir := t.TempDir()
	name := func(s string) string { return filepath.Join(dir, s) }
	stdout, stderr, err := command(t, in, "-out", name("graded"), "-csv", name("csv"), "-json", name("json"), "-svg", name("svg"), "-refused", name("refused"), "-base", "300", "-by", "sex")
	if status(err) != 3 {
		t.Fatal(err)
	}
	golden.Compare(t, "testdata/summary.golden", stdout)
	golden.Compare(t, "testdata/told.golden", stderr)
	golden.Compare(t, "testdata/refused.golden", content(t, name("refused")))
	golden.Compare(t, "testdata/summary.csv", content(t, name("csv")))
	golden.Compare(t, "testdata/summary.json", content(t, name("json")))
	golden.Compare(t, "testdata/summary.svg", content(t, name("svg")))
	if err := xml.Unmarshal([]byte(content(t, name("svg"))), new(struct{})); err != nil {
		t.Error(err)
	}
	if !json.Valid([]byte(content(t, name("json")))) {
		t.Error("no JSON")
	}
	if _, err := csv.NewReader(strings.NewReader(content(t, name("csv")))).ReadAll(); err != nil {
		t.Error(err)
	}
	// The first rows to be read by a person, and all of them by their hash.
	graded := content(t, name("graded"))
	lines := strings.SplitAfterN(graded, "\n", 22)
	golden.Compare(t, "testdata/graded.golden", strings.Join(lines[:21], "")+hash(graded)+"\n")
	if n := strings.Count(graded, "\n"); n != 1+3995 {
		t.Errorf("%d lines, want a header and 3,995 rows", n)
	}
	entries, err := os.ReadDir(dir)
	if err != nil || len(entries) != 5 {
		t.Errorf("%d files are left, want 5: %v", len(entries), err)
	}
}

// TestParts sums up sheets of yield alone and of quality alone.
func TestParts(t *testing.T) {
	for name, tt := range map[string]struct{ in, told, want, none string }{
		"yield":   {"fat_in,ribeye_sq_in,kph_pct,weight_lb,pen\n0.45,12.4,2.5,820,4\n0.6,12.4,2.5,372,\n", "no quality grades: the sheet has no sex class", "yield                             2      2.609      0.939", "Choice"},
		"quality": {"sex,skeletal,lean,marbling,pen\nsteer,A60,A50,Sm40,4\nsteer,A60,A50,Pd10,10\n", "no yields: the sheet has no fat, ribeye, KPH, weight", "Choice                1   50.0%\n", "yield 1"},
	} {
		dir := t.TempDir()
		stdout, stderr, err := command(t, tt.in, "-by", "Pen", "-csv", filepath.Join(dir, "csv"), "-json", filepath.Join(dir, "json"), "-svg", filepath.Join(dir, "svg"), "-base", "300")
		if err != nil {
			t.Fatal(err)
		}
		table, _, _ := strings.Cut(stdout, "\nPen ") // the line of the groups has all names
		if !strings.Contains(stderr, tt.told) || !strings.Contains(stdout, tt.want) || strings.Contains(table, tt.none) {
			t.Errorf("%s:\n%s%s", name, stderr, stdout)
		}
		if strings.Contains(content(t, filepath.Join(dir, "csv")), "NaN") || !strings.Contains(content(t, filepath.Join(dir, "json")), `"by": "Pen"`) {
			t.Errorf("%s: %s", name, content(t, filepath.Join(dir, "csv")))
		}
	}
}

func TestTold(t *testing.T) {
	in := spoiled(t)
	_, stderr, err := command(t, in, "-bad", "2")
	if status(err) != 3 {
		t.Fatal(err)
	}
	if n := strings.Count(stderr, "refused: line "); n != 2 || !strings.Contains(stderr, "refused: 3 more\n") {
		t.Errorf("%d rows told, want 2:\n%s", n, stderr)
	}
	_, stderr, err = command(t, in, "-bad", "0")
	if status(err) != 3 || stderr != "refused: 5 more\nflagged: 1 more\n" {
		t.Errorf("%q, %v", stderr, err)
	}
}

func TestPropose(t *testing.T) {
	stdout, stderr, err := command(t, "", "-propose", sheets+"plant.csv")
	if err != nil {
		t.Fatal(err)
	}
	var m sheet.Mapping
	if err := json.Unmarshal([]byte(stdout), &m); err != nil || m.Columns["HCW"] != "weight_lb" {
		t.Errorf("%v, %v", m, err)
	}
	for _, want := range []string{"not placed: Lot\n", "lacking for yield: KPH; it may be assumed\n", "look: \"Marb\": numbers; name their scale"} {
		if !strings.Contains(stderr, want) {
			t.Errorf("no %q in:\n%s", want, stderr)
		}
	}
	// What is proposed for a sheet without doubt grades it.
	dir := t.TempDir()
	name := filepath.Join(dir, "map.json")
	if _, _, err := command(t, "", "-propose", "-out", name, sheets+"europe.csv"); err != nil {
		t.Fatal(err)
	}
	if stdout, _, err := command(t, "", "-map", name, sheets+"europe.csv"); err != nil || !strings.HasPrefix(stdout, "carcasses graded           60\n") {
		t.Errorf("%s, %v", stdout, err)
	}
	if _, _, err := command(t, "", "-propose"); err == nil {
		t.Error("a mapping for nothing")
	}
}

func TestGroups(t *testing.T) {
	in := "id,sex,skeletal,lean,marbling,fat_in,ribeye_sq_in,kph_pct,weight_lb,pen\n1,steer,A60,A50,Sm40,0.45,12.4,2.5,820,4\n"
	for by, want := range map[string]string{
		"PEN": "4", "id": "1", "sex": "steer", "skeletal": "A60", "lean": "A50", "teeth": "(empty)", "papers_months": "(empty)", "marbling": "Sm40", "degree": "Small",
		"firmness": "(empty)", "dark": "(empty)", "fat_in": "0.45 in", "fat_adjust_in": "(empty)", "ribeye_sq_in": "12.4 sq in", "kph_pct": "2.5%", "weight_lb": "820 lb",
		"assumed": "(empty)", "overall": "A55", "maturity": "A", "quality": "Low Choice", "quality_grade": "Choice", "yield": "3.273", "yield_grade": "3", "tier": "low choice", "flagged": "no", "below_cutter": "no", "Weight_KG": "820 lb", "fat_mm": "0.45 in", "fat_adjust_cm": "(empty)", "ribeye_sq_cm": "12.4 sq in",
	} {
		stdout, _, err := command(t, in, "-by", by)
		if err != nil {
			t.Fatal(err)
		}
		if !strings.Contains(stdout, "\n"+want+strings.Repeat(" ", 20-len(want)+9)+"1 ") {
			t.Errorf("by %s: no %s in\n%s", by, want, stdout)
		}
	}
	// A heading of the mapping is a column too.
	if stdout, _, err := command(t, "", "-map", "maps/plant.json", "-by", "tag", "../../grade/sheet/testdata/plant.csv"); status(err) != 3 || !strings.Contains(stdout, "\nT001 ") {
		t.Errorf("by tag: %v\n%s", err, stdout)
	}
	// Numbers stand in the order of their values, and groups over a thousand in one.
	var s summary
	s.by = "pen"
	for _, key := range []string{"10", "9", "b", "a", "9.0", ""} {
		s.add(key, &grade.Assessment{})
	}
	if d := cmp.Diff([]string{"", "9", "9.0", "10", "a", "b"}, s.names()); d != "" {
		t.Errorf("(-want +got):\n%s", d)
	}
	for i := range 2 * mostGroups {
		s.add("pen "+count(i), &grade.Assessment{})
	}
	if n := len(s.groups); n != mostGroups+1 {
		t.Errorf("%d groups", n)
	}
	if got := short("a very long name\tof a pen"); got != "a very long name of…" {
		t.Error(got)
	}
}

// The invented sheet has the same bytes on every machine.
func TestInvented(t *testing.T) {
	tests := []struct {
		reason string
		args   []string
		want   string // of the sheet
	}{
		{"the golden seed", []string{"-make", "20000", "-seed", "7"}, goldenSheet},
		{"the seed that is taken when none is given", []string{"-make", "100"}, goldenDefault},
		{"the same seed", []string{"-make", "100", "-seed", "1"}, goldenDefault},
	}
	for _, tt := range tests {
		got, _, err := command(t, "", tt.args...)
		if err != nil {
			t.Fatal(err)
		}
		// The marks for what was assumed came later; without them it is the sheet that
		// was made before.
		got = strings.ReplaceAll(strings.ReplaceAll(got, ",assumed\n", "\n"), ",\n", "\n")
		if h := hash(got); h != tt.want {
			t.Errorf("%s: hash %s, want %s; first rows:\n%s", tt.reason, h, tt.want, got[:min(len(got), 400)])
		}
	}
	a, _, _ := command(t, "", "-make", "1", "-seed", "1")
	b, _, _ := command(t, "", "-make", "1", "-seed", "2")
	if a == b {
		t.Error("two seeds give the same carcass")
	}
	if !strings.Contains(a, "\ninvented-0000001,") {
		t.Errorf("not marked as invented: %s", a)
	}
	name := filepath.Join(t.TempDir(), "made.csv")
	if out, _, err := command(t, "", "-make", "1", "-out", name); err != nil || out != "" || content(t, name) != a {
		t.Fatalf("%q, %v", out, err)
	}
}

const (
	goldenSheet   = "9c9402eeb8bbad6439a484fe3f9079479dcabd8d0d560a83f59e96e2dab688ce"
	goldenDefault = "44d4c9590e9c2f7e1e44945f8ca39ea9d4456142ec2534a92bcfd262a3896278"
)

// The invented carcasses have the means of the audit that they are made from
// (published: nbqa-2016-inplant), the yield among them, which nobody put in.
func TestInventedMeans(t *testing.T) {
	const n = 20_000
	d := dice{rand.NewPCG(3, 0)}
	var s tally
	for range n {
		c := d.carcass()
		c.FatAdjust = grade.Thickness{}
		a, err := grade.Current.Assess(c)
		if err != nil {
			t.Fatal(err)
		}
		s.add(&a)
	}
	near := func(name string, got, want, within int64) {
		if got < want-within || got > want+within {
			t.Errorf("mean %s %d, want %d within %d", name, got, want, within)
		}
	}
	near("fat", s.means[0].sum/n, fat.mean, 50)
	near("ribeye", s.means[1].sum/n, ribeye.mean, 500)
	near("KPH", s.means[2].sum/n, kph.mean, 150)
	near("weight", s.means[3].sum/n, weight.mean, 20_000)
	near("marbling", s.means[4].sum/n, int64(grade.Small.At(70)), 4)
	near("yield", s.means[5].sum/n/10_000_000, 31, 0) // 3.1
	near("dark cutters of 10,000", int64(s.dark)*10_000/n, 190, 30)

	// The means in the code are the audit's metric ones in customary units.
	for text, want := range map[string]int64{"1.42 cm": fat.mean, "0.28 cm": fat.spread} {
		if v, err := grade.ParseThickness(text); err != nil || v.Units() != want {
			t.Errorf("%s is %v, %v, not %d", text, v, err, want)
		}
	}
	for text, want := range map[string]int64{"89.5 sq cm": ribeye.mean, "6.92 sq cm": ribeye.spread} {
		if v, err := grade.ParseArea(text); err != nil || v.Units() != want {
			t.Errorf("%s is %v, %v, not %d", text, v, err, want)
		}
	}
	for text, want := range map[string]int64{"390.3 kg": weight.mean, "27.48 kg": weight.spread} {
		if v, err := grade.ParseWeight(text); err != nil || v.Units() != want {
			t.Errorf("%s is %v, %v, not %d", text, v, err, want)
		}
	}
	total := int64(0)
	for _, g := range degrees {
		total += g.of1000
	}
	if total != 1000 {
		t.Errorf("the degrees come to %d of 1000", total)
	}
}

func TestFails(t *testing.T) {
	dir := t.TempDir()
	name := filepath.Join(dir, "sheet.csv")
	write := func(name, text string) string {
		if err := os.WriteFile(name, []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
		return name
	}
	const good = "fat_in,ribeye_sq_in,kph_pct,weight_lb\n0.45,12.4,2.5,820\n"
	write(name, good)
	link, odd := filepath.Join(dir, "link.csv"), write(filepath.Join(dir, "map.json"), `{"separator": ":"}`)
	if err := os.Symlink(name, link); err != nil {
		t.Fatal(err)
	}
	out := filepath.Join(dir, "out.csv")
	tests := []struct {
		name, stdin string
		args        []string
		status      int
		want        string
	}{
		{"flag", "", []string{"-nothing"}, 2, "flag provided but not defined: -nothing"},
		{"help", "", []string{"-help"}, 2, flag.ErrHelp.Error()},
		{"negative", "", []string{"-make", "-1"}, 2, "-make and -bad want numbers of 0 or more"},
		{"negative bad", "", []string{"-bad", "-1"}, 2, "-make and -bad want numbers of 0 or more"},
		{"two sheets", "", []string{"a", "b"}, 2, "one sheet at a time, and none with -make"},
		{"make and a sheet", "", []string{"-make", "1", "a"}, 2, "one sheet at a time, and none with -make"},
		{"comma", "", []string{"-comma", "x"}, 2, "-comma wants a comma, a semicolon, a bar or a tab"},
		{"edition", "", []string{"-edition", "1980"}, 2, `invalid value "1980" for flag -edition`},
		{"no edition", good, []string{"-edition", ""}, 1, "edition: missing; allowed: 1975, 1987, 1997, 2016, 2017"},
		{"base", good, []string{"-base", "-1"}, 1, "base: -1.00: out of range; allowed: over 0.00"},
		{"prices without a base", good, []string{"-prices", name}, 2, "-prices wants a -base"},
		{"no such prices", good, []string{"-base", "300", "-prices", filepath.Join(dir, "none.json")}, 1, "no such file or directory"},
		{"over the prices", "", []string{"-base", "300", "-prices", odd, "-json", odd, name}, 2, "cannot be written over"},
		{"by", good, []string{"-by", "pen"}, 2, "-by: no column pen"},
		{"header", "drak\n1\n", nil, 1, "line 1, column 1 (drak): column: drak: unknown; allowed: dark"},
		{"lacks", "pen\n1\n", nil, 1, "line 1: header: missing; allowed: a column or an assumed value"},
		{"no such sheet", "", []string{filepath.Join(dir, "none.csv")}, 1, "no such file or directory"},
		{"no such mapping", good, []string{"-map", filepath.Join(dir, "none.json")}, 1, "no such file or directory"},
		{"bad mapping", good, []string{"-map", odd}, 1, `map.json: separator: ":": unknown`},
		{"no such folder", good, []string{"-out", filepath.Join(dir, "none", "out.csv")}, 1, "no such file or directory"},
		{"no such folder for the summary", good, []string{"-csv", filepath.Join(dir, "none", "out.csv")}, 1, "no such file or directory"},
		{"no such folder to make in", "", []string{"-make", "1", "-out", filepath.Join(dir, "none", "out.csv")}, 1, "no such file or directory"},
		{"over the sheet", "", []string{"-out", name, name}, 2, "is read, as " + name + ", and cannot be written over"},
		{"over the sheet by a link", "", []string{"-refused", link, name}, 2, "cannot be written over"},
		{"over the mapping", "", []string{"-map", odd, "-json", odd, name}, 2, "cannot be written over"},
		{"twice", "", []string{"-out", out, "-csv", out, name}, 2, "is written twice"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			stdout, _, err := command(t, tt.stdin, tt.args...)
			if err == nil || !strings.Contains(err.Error(), tt.want) || stdout != "" || status(err) != tt.status {
				t.Errorf("%q, %v, status %d, want %s", stdout, err, status(err), tt.want)
			}
		})
	}
	// What could not be finished leaves what was there, and nothing else.
	write(out, "old")
	if _, _, err := command(t, good, "-out", out, "-edition", ""); err == nil || content(t, out) != "old" {
		t.Errorf("%v, and the file holds %q", err, content(t, out))
	}
	if entries, _ := os.ReadDir(dir); len(entries) != 4 {
		t.Errorf("%d files in the folder, want 4", len(entries))
	}
	if content(t, name) != good {
		t.Error("the sheet was written over")
	}
	// Standard input and output that are files.
	in, err := os.OpenFile(name, os.O_RDWR, 0)
	if err != nil {
		t.Fatal(err)
	}
	defer func() { _ = in.Close() }()
	if err := run(context.Background(), []string{"-out", link}, in, io.Discard, io.Discard); status(err) != 2 {
		t.Errorf("over standard input: %v", err)
	}
	if err := run(context.Background(), []string{name}, strings.NewReader(""), in, io.Discard); status(err) != 2 {
		t.Errorf("standard output is the sheet: %v", err)
	}
	// Through a link the file itself is written, and what is no file on disk as it is.
	target := filepath.Join(dir, "target.csv")
	if err := errors.Join(os.Remove(link), os.Symlink(target, link)); err != nil {
		t.Fatal(err)
	}
	write(target, "old")
	if _, _, err := command(t, good, "-out", link); err != nil || !strings.Contains(content(t, target), "3.273") {
		t.Error(err)
	}
	if _, _, err := command(t, good, "-out", os.DevNull); err != nil {
		t.Error(err)
	}
	// A summary gives way to rows on standard output.
	stdout, stderr, err := command(t, good, "-out", "-")
	if err != nil || !strings.HasPrefix(stdout, "id,sex,") || !strings.Contains(stderr, "carcasses graded           1\n") {
		t.Errorf("%q, %q, %v", stdout, stderr, err)
	}
	// Rows of which none is good.
	if out, _, err := command(t, "id,fat_in,ribeye_sq_in,kph_pct,weight_lb\n1,,,,\n"); status(err) != 3 || out != "carcasses graded           0\nrows refused               1\n" {
		t.Errorf("%q, %v", out, err)
	}
	// An input that breaks off is no end of the sheet, nor is a context that is done.
	var out1, log bytes.Buffer
	broken := errors.New("cable pulled")
	if err := run(context.Background(), nil, &breaks{strings.NewReader(good), broken}, &out1, &log); !errors.Is(err, broken) || out1.Len() != 0 || status(err) != 1 {
		t.Errorf("%q, %v", out1.String(), err)
	}
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	if err := run(ctx, nil, strings.NewReader(good), &out1, &log); !errors.Is(err, context.Canceled) {
		t.Error(err)
	}
	// An output that cannot be written, and one whose reader has enough.
	for _, args := range [][]string{{"-make", "1"}, {"-propose"}, nil, {"-out", "-"}, {"-refused", "-"}, {"-csv", "-"}, {"-json", "-"}, {"-svg", "-"}} {
		in := strings.NewReader(good)
		if err := run(context.Background(), args, in, failing{syscall.EPIPE}, &log); !errors.Is(err, syscall.EPIPE) || status(err) != 1 {
			t.Errorf("%q: %v", args, err)
		}
	}
	for _, comma := range []string{"tab", "\t", `\t`} {
		if _, _, err := command(t, strings.ReplaceAll(good, ",", "\t"), "-comma", comma); err != nil {
			t.Errorf("%q: %v", comma, err)
		}
	}
	if status(nil) != 0 {
		t.Error("no error is no failure")
	}
}

// TestPipeCloses holds that a reader that has enough ends the work at once.
func TestPipeCloses(t *testing.T) {
	r, w, err := os.Pipe()
	if err != nil {
		t.Fatal(err)
	}
	rows := 0
	in := io.MultiReader(strings.NewReader("fat_in,ribeye_sq_in,kph_pct,weight_lb\n"), endless{&rows})
	done := make(chan error)
	go func() { done <- run(context.Background(), []string{"-out", "-"}, in, w, io.Discard) }()
	if _, err := io.ReadFull(r, make([]byte, 100)); err != nil {
		t.Fatal(err)
	}
	if err := r.Close(); err != nil {
		t.Fatal(err)
	}
	if err := <-done; !errors.Is(err, syscall.EPIPE) {
		t.Error(err)
	}
}

// endless gives rows without end.
type endless struct{ n *int }

func (e endless) Read(p []byte) (int, error) {
	const row = "0.45,12.4,2.5,820\n"
	n := 0
	for ; n+len(row) <= len(p); n += len(row) {
		copy(p[n:], row)
	}
	return n, nil
}

// breaks gives its input and then an error.
type breaks struct {
	in  *strings.Reader
	err error
}

func (b *breaks) Read(p []byte) (int, error) {
	if b.in.Len() == 0 {
		return 0, b.err
	}
	return b.in.Read(p)
}

// failing is an output that takes nothing.
type failing struct{ err error }

func (f failing) Write([]byte) (int, error) { return 0, f.err }

func TestFigures(t *testing.T) {
	for want, got := range map[string]string{
		"0": grouped(0), "999": grouped(999), "1,000": grouped(1000), "12,345,678": grouped(12345678),
		"33.3%": share(1, 3), "66.7%": share(2, 3), "0.1%": share(1, 2000), "0.0%": share(1, 2001), "100.0%": share(7, 7),
		"$1,234.50": dollars(decimal.New(12345, -1)), "-$1,234.56": dollars(decimal.New(-123456, -2)), "$0.00": dollars(decimal.Zero),
	} {
		if got != want {
			t.Errorf("%s, want %s", got, want)
		}
	}
	for _, tt := range []struct{ sum, n, want int64 }{{5, 2, 3}, {4, 3, 1}, {-5, 2, -2}, {-4, 3, -1}, {-5, 3, -2}, {0, 1, 0}} {
		if got := mean(tt.sum, tt.n); got != tt.want {
			t.Errorf("mean(%d, %d) = %d, want %d", tt.sum, tt.n, got, tt.want)
		}
	}
	// The sample standard deviation of 2, 4, 4, 4, 5, 5, 7, 9 is the root of 32/7,
	// 2.13809; that of two values is their difference over the root of 2.
	unit := figure{places: 4, shown: 3}
	for want, values := range map[string][]int64{"2.138": {2, 4, 4, 4, 5, 5, 7, 9}, "0.707": {1, 2}, "1.414": {-1, 1}, "": {7}, "0.000": {3, 3, 3}} {
		var m moments
		for _, v := range values {
			m.add(10_000 * v)
		}
		if got := m.spread(unit); got != want {
			t.Errorf("%d: %s, want %s", values, got, want)
		}
	}
	if (&moments{}).mean(unit) != "" {
		t.Error("a mean of nothing")
	}
}
