package main

import (
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"math/rand/v2"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"example.com/ribface/grade"
	"example.com/ribface/internal/golden"
	"github.com/google/go-cmp/cmp"
	"github.com/shopspring/decimal"
)

// command runs the program and gives what it printed.
func command(t *testing.T, stdin string, args ...string) (stdout, stderr string, err error) {
	t.Helper()
	var out, log strings.Builder
	err = run(args, strings.NewReader(stdin), &out, &log)
	return out.String(), log.String(), err
}

func hash(s string) string {
	sum := sha256.Sum256([]byte(s))
	return hex.EncodeToString(sum[:])
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
	spoil(10, ",A", ",a")                                   // a group that is none
	spoil(20, ",,", ",")                                    // a cell too few
	spoil(30, "invented", `"invented`)                      // a quote that is not closed
	spoil(40, ",heifer,", ",,")                             // graded on what is missing
	lines[50] = "7,steer,A50,A50,,,Sm40,,,,14,,12.4,,820\n" // millimeters in a column of inches, and no KPH
	return strings.Join(lines, "")
}

func TestGolden(t *testing.T) {
	in := spoiled(t)
	out := filepath.Join(t.TempDir(), "graded.csv")
	stdout, stderr, err := command(t, in, "-out", out)
	if err != nil {
		t.Fatal(err)
	}
	golden.Compare(t, "testdata/summary.golden", stdout)
	golden.Compare(t, "testdata/stderr.golden", stderr)
	graded, err := os.ReadFile(out)
	if err != nil {
		t.Fatal(err)
	}
	// The first rows to be read by a person, and all of them by their hash.
	lines := strings.SplitAfterN(string(graded), "\n", 22)
	golden.Compare(t, "testdata/graded.golden", strings.Join(lines[:21], "")+hash(string(graded))+"\n")
	if n := strings.Count(string(graded), "\n"); n != 1+3995 {
		t.Errorf("%d lines, want a header and 3,995 rows", n)
	}

	// The graded sheet, read again, gives the same summary of what was graded.
	again, _, err := command(t, string(graded), "-extra")
	if err != nil {
		t.Fatal(err)
	}
	want := strings.Replace(stdout, "refused               5", "refused               0", 1)
	if d := cmp.Diff(want, again); d != "" {
		t.Errorf("read again (-want +got):\n%s", d)
	}
}

func TestBadRowsAreCounted(t *testing.T) {
	in := spoiled(t)
	_, stderr, err := command(t, in, "-bad", "2")
	if err != nil {
		t.Fatal(err)
	}
	if n := strings.Count(stderr, "\rline "); n != 2 {
		t.Errorf("%d rows reported, want 2:\n%s", n, stderr)
	}
	if !strings.HasSuffix(stderr, "\r4,000 rows, 5 refused\n") {
		t.Errorf("stderr ends %q", stderr[max(0, len(stderr)-40):])
	}
}

func TestProgress(t *testing.T) {
	_, stderr, err := command(t, "id\n"+strings.Repeat("1\n", 100_001), "-bad", "0")
	if err != nil {
		t.Fatal(err)
	}
	const want = "\r50,000 rows, 50,000 refused\r100,000 rows, 100,000 refused\r100,001 rows, 100,001 refused\n"
	if d := cmp.Diff(want, stderr); d != "" {
		t.Errorf("(-want +got):\n%s", d)
	}
}

// The invented sheet has the same bytes on every machine.
func TestInvented(t *testing.T) {
	tests := []struct {
		reason string
		args   []string
		want   string // of the sheet; empty for any
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
	if out, _, err := command(t, "", "-make", "100", "-out", name); err != nil || out != "" {
		t.Fatalf("%q, %v", out, err)
	}
	if made, err := os.ReadFile(name); err != nil || hash(string(made)) != goldenDefault {
		t.Errorf("-out makes another sheet: %v", err)
	}
}

const (
	goldenSheet   = "fd3ebe28b6b761526294d084f6ec5bd57b5c72b47e2918487387ddad8dca2f36"
	goldenDefault = "bf11ba30ebcc382b51282e9b28597951da8871ae6fd215261b6194b31afdc2eb"
)

// The invented carcasses have the means of the audit that they are made from
// (published: nbqa-2016-inplant), the yield among them, which nobody put in.
func TestInventedMeans(t *testing.T) {
	const n = 20_000
	d := dice{rand.NewPCG(3, 0)}
	var s summary
	for range n {
		a, err := grade.Current.Assess(d.carcass())
		if err != nil {
			t.Fatal(err)
		}
		s.graded++
		s.tiers[a.Quality.Tier()][a.Yield.Grade()]++
		s.fat += int64(a.Carcass.Measures.Fat)
		s.ribeye += int64(a.Carcass.Measures.Ribeye)
		s.kph += int64(a.Carcass.Measures.KPH)
		s.weight += int64(a.Carcass.Measures.Weight)
		s.marbling += int64(a.Carcass.Marbling)
		s.yield += int64(a.Yield)
		if a.Carcass.Lean.Dark != 0 {
			s.dark++
		}
	}
	near := func(name string, got, want, within int64) {
		if got < want-within || got > want+within {
			t.Errorf("mean %s %d, want %d within %d", name, got, want, within)
		}
	}
	near("fat", s.fat/n, fat.mean, 50)
	near("ribeye", s.ribeye/n, ribeye.mean, 500)
	near("KPH", s.kph/n, kph.mean, 150)
	near("weight", s.weight/n, weight.mean, 20_000)
	near("marbling", s.marbling/n, int64(grade.Small.At(70)), 4)
	near("yield", s.yield/n/10_000_000, 31, 0) // 3.1
	near("dark cutters of 10,000", int64(s.dark)*10_000/n, 190, 30)

	// The means in the code are the audit's metric ones in customary units.
	for text, want := range map[string]int64{"1.42 cm": fat.mean, "0.28 cm": fat.spread} {
		if v, err := grade.ParseThickness(text); err != nil || int64(v)/10 != want/10 && int64(v+5)/10 != want/10 {
			t.Errorf("%s is %v, %v, not %d", text, v, err, want)
		}
	}
	for text, want := range map[string]int64{"89.5 sq cm": ribeye.mean, "6.92 sq cm": ribeye.spread} {
		if v, err := grade.ParseArea(text); err != nil || int64(v) != want {
			t.Errorf("%s is %d, %v, not %d", text, v, err, want)
		}
	}
	for text, want := range map[string]int64{"390.3 kg": weight.mean, "27.48 kg": weight.spread} {
		if v, err := grade.ParseWeight(text); err != nil || int64(v) != want {
			t.Errorf("%s is %d, %v, not %d", text, v, err, want)
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
	sheet := filepath.Join(dir, "sheet.csv")
	if err := os.WriteFile(sheet, []byte("id\n1\n"), 0o644); err != nil {
		t.Fatal(err)
	}
	tests := []struct {
		name, stdin string
		args        []string
		want        string
	}{
		{"flag", "", []string{"-nothing"}, "flag provided but not defined: -nothing"},
		{"negative", "", []string{"-make", "-1"}, "-make and -bad want numbers of 0 or more"},
		{"negative bad", "", []string{"-bad", "-1"}, "-make and -bad want numbers of 0 or more"},
		{"two sheets", "", []string{"a", "b"}, "one sheet at a time, and none with -make"},
		{"make and a sheet", "", []string{"-make", "1", "a"}, "one sheet at a time, and none with -make"},
		{"edition", "", []string{"-edition", "1980"}, `invalid value "1980" for flag -edition: edition: "1980": unknown; allowed: 1975, 1987, 1997, 2016, 2017`},
		{"no edition", "id\n1\n", []string{"-edition", ""}, "edition: missing; allowed: 1975, 1987, 1997, 2016, 2017"},
		{"base", "", []string{"-base", "0"}, "base: 0.00: out of range; allowed: over 0.00"},
		{"header", "pen\n1\n", nil, "line 1, column 1 (pen): column: pen: unknown; allowed: id, "},
		{"no such sheet", "", []string{filepath.Join(dir, "none.csv")}, "no such file or directory"},
		{"no such folder", "id\n1\n", []string{"-out", filepath.Join(dir, "none", "out.csv")}, "no such file or directory"},
		{"no such folder to make in", "", []string{"-make", "1", "-out", filepath.Join(dir, "none", "out.csv")}, "no such file or directory"},
		{"over the sheet", "", []string{"-out", sheet, sheet}, "cannot be written over"},
		{"extra column with the name of a result", "id,tier\n1,x\n", []string{"-extra", "-out", filepath.Join(dir, "out.csv")}, "line 1, column 21 (tier): column: tier: repeated; allowed: each column once"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			stdout, _, err := command(t, tt.stdin, tt.args...)
			if err == nil || !strings.Contains(err.Error(), tt.want) || stdout != "" {
				t.Errorf("%q, %v, want %s", stdout, err, tt.want)
			}
		})
	}
	if b, err := os.ReadFile(sheet); err != nil || string(b) != "id\n1\n" {
		t.Errorf("the sheet was written over: %q, %v", b, err)
	}
	// A sheet from a file, and one without a row.
	if out, _, err := command(t, "", sheet); err != nil || out != "carcasses graded           0\nrows refused               1\n" {
		t.Errorf("%q, %v", out, err)
	}
	// An input that breaks off is no end of the sheet.
	var stdout, stderr bytes.Buffer
	broken := errors.New("cable pulled")
	in := strings.NewReader("id,sex,skeletal,lean,marbling,fat_in,ribeye_sq_in,kph_pct,weight_lb\n1,steer,A60,A50,Sm40,0.45,12.4,2.5,820\n")
	if err := run(nil, &breaks{in, broken}, &stdout, &stderr); !errors.Is(err, broken) || stdout.Len() != 0 {
		t.Errorf("%q, %v", stdout.String(), err)
	}
	// An output that cannot be written.
	if err := run([]string{"-make", "1"}, in, failing{}, &stderr); !errors.Is(err, errFull) {
		t.Errorf("%v", err)
	}
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

var errFull = errors.New("disk full")

// failing is an output that takes nothing.
type failing struct{}

func (failing) Write([]byte) (int, error) { return 0, errFull }

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
}
