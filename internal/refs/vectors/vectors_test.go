package vectors

import (
	"fmt"
	"math/big"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"

	"example.com/ribface/internal/refs"
	"example.com/ribface/internal/testkit/golden"
	"example.com/ribface/internal/testkit/roundtrip"
	"example.com/ribface/maturity/cite"
	"github.com/google/go-cmp/cmp"
)

const (
	testdata = "../../../testdata"
	folder   = testdata + "/vectors"
)

// mostBytes keeps the folder small enough to take along.
const mostBytes = 2_000_000

var kept = map[string]File{}

// keptFile reads a file of the folder, once for all tests.
func keptFile(t *testing.T, name string) File {
	t.Helper()
	f, ok := kept[name]
	if !ok {
		var err error
		if f, err = Read(folder, name); err != nil {
			t.Fatal(err)
		}
		kept[name] = f
	}
	return f
}

// The files are those that the tables give today, and no others lie beside them.
func TestFilesAreFresh(t *testing.T) {
	files, err := makeFiles(testdata)
	if err != nil {
		t.Fatal(err)
	}
	want := []string{"README.md"}
	size := 0
	for _, f := range files {
		made, err := f.Bytes()
		if err != nil {
			t.Fatal(err)
		}
		golden.Compare(t, filepath.Join(folder, f.Name+".json"), string(made))
		size += len(made)
		want = append(want, f.Name+".json")
	}
	if size > mostBytes {
		t.Errorf("%d bytes, at most %d wanted", size, mostBytes)
	}
	entries, err := os.ReadDir(folder)
	if err != nil {
		t.Fatal(err)
	}
	var got []string
	for _, e := range entries {
		got = append(got, e.Name())
	}
	slices.Sort(want)
	if d := cmp.Diff(want, got); d != "" {
		t.Errorf("files (-want +got):\n%s", d)
	}
}

// Every vector that is read back comes out the same by the public API, says where it is
// from, and names sources that there are.
func TestReadBack(t *testing.T) {
	for _, m := range files {
		name := m.Name
		f := keptFile(t, name)
		if f.About == "" || f.Rule == "" {
			t.Errorf("%s: says nothing of itself", name)
		}
		for _, id := range strings.Fields(f.Source) {
			if _, ok := cite.Lookup(id); !ok {
				t.Errorf("%s: no source %s", name, id)
			}
		}
		seen := map[string]bool{}
		for i, v := range f.Vectors {
			if err := m.check(v); err != nil {
				t.Errorf("%s, vector %d, %v: %v", name, i+1, v.In, err)
			}
			for _, id := range strings.Fields(v.Source) {
				if _, ok := cite.Lookup(id); !ok {
					t.Errorf("%s, vector %d: no source %s", name, i+1, id)
				}
			}
			if _, err := roundtrip.Read[cite.Standing](v.Standing); v.Standing != "" && err != nil {
				t.Errorf("%s, vector %d: %v", name, i+1, err)
			}
			if v.From == "" {
				t.Errorf("%s, vector %d: from nowhere", name, i+1)
			}
			seen[fmt.Sprint(v.Out)] = true
		}
		if len(seen) < 2 {
			t.Errorf("%s: one result for all", name)
		}
	}
}

// A result that is changed, a text that cannot be read and a file that is not there are
// found.
func TestFindsDifferences(t *testing.T) {
	for _, m := range files {
		name := m.Name
		v := keptFile(t, name).Vectors[0]
		for k := range v.Out {
			changed := Object{}
			for key, x := range v.Out {
				changed[key] = x
			}
			changed[k] = "something else"
			if v := (Vector{From: v.From, Edition: v.Edition, In: v.In, Out: changed}); m.check(v) == nil {
				t.Errorf("%s: a changed %s is not found", name, k)
			}
		}
	}
	if _, err := Read(folder, "nothing"); err == nil {
		t.Error("read a file that there is not")
	}
}

func number4(t *testing.T, o Object, name string) *big.Rat {
	t.Helper()
	r, ok := new(big.Rat).SetString(Text(o, name))
	if !ok {
		t.Fatalf("%s: %v", name, o)
	}
	return r
}

// sum adds products of a coefficient and a number.
func sum(start string, terms ...any) *big.Rat {
	out, _ := new(big.Rat).SetString(start)
	for i := 0; i < len(terms); i += 2 {
		c, _ := new(big.Rat).SetString(terms[i].(string))
		out.Add(out, new(big.Rat).Mul(c, terms[i+1].(*big.Rat)))
	}
	return out
}

// floor drops decimals after so many places, toward minus infinity.
func floor(x *big.Rat, places int64) *big.Rat {
	scale := new(big.Int).Exp(big.NewInt(10), big.NewInt(places), nil)
	n := new(big.Rat).Mul(x, new(big.Rat).SetInt(scale))
	return new(big.Rat).SetFrac(new(big.Int).Div(n.Num(), n.Denom()), scale)
}

// Yields, shortcut, required ribeye, retail cuts and conversions are those of fractions,
// worked out from the rule alone.
func TestFractions(t *testing.T) {
	read := func(name string) []Vector { return keptFile(t, name).Vectors }
	equal := func(v Vector, name string, want *big.Rat) {
		t.Helper()
		if number4(t, v.Out, name).Cmp(want) != 0 {
			t.Errorf("%v: %s is %s, fractions have %s", v.In, name, Text(v.Out, name), want.FloatString(12))
		}
	}
	required := func(v Vector) *big.Rat {
		return floor(sum("11", "0.012", sum("-600", "1", number4(t, v.In, "weight_lb"))), 1)
	}
	on := 0
	for _, v := range read("yield") {
		fat, ribeye, kph, weight := number4(t, v.In, "fat_in"), number4(t, v.In, "ribeye_sq_in"), number4(t, v.In, "kph_percent"), number4(t, v.In, "weight_lb")
		y := sum("2.5", "2.5", fat, "0.2", kph, "0.0038", weight, "-0.32", ribeye)
		equal(v, "yield", y)
		whole := floor(y, 0)
		if one := big.NewRat(1, 1); whole.Cmp(one) < 0 {
			whole = one
		}
		if five := big.NewRat(5, 1); whole.Cmp(five) > 0 {
			whole = five
		}
		equal(v, "grade", whole)
		equal(v, "tenth_down", floor(y, 1))
		up := floor(sum("0.05", "1", y), 1)
		equal(v, "tenth_half_up", up)
		even := up
		if tenths := new(big.Rat).Mul(up, big.NewRat(10, 1)); new(big.Rat).Sub(up, y).Cmp(big.NewRat(1, 20)) == 0 && tenths.Num().Bit(0) == 1 {
			even = floor(y, 1)
		}
		equal(v, "tenth_half_even", even)
		if v.From == "internal/grid" {
			f := func(r *big.Rat) float64 { x, _ := r.Float64(); return x }
			if !y.IsInt() || float64Grade(f(fat), f(kph), f(weight), f(ribeye)) != int(whole.Num().Int64())-1 {
				t.Errorf("%v: not on a line that float64 misses", v.In)
			}
			on++
		}
	}
	if on < 100 {
		t.Errorf("%d carcasses on a line that float64 misses", on)
	}
	for _, v := range read("shortcut") {
		need := required(v)
		equal(v, "required_ribeye_sq_in", need)
		equal(v, "preliminary", sum("2", "2.5", number4(t, v.In, "fat_in")))
		equal(v, "ribeye", sum("0", "0.3", need, "-0.3", number4(t, v.In, "ribeye_sq_in")))
		equal(v, "kph", sum("-0.7", "0.2", number4(t, v.In, "kph_percent")))
		equal(v, "total", sum("1.3", "2.5", number4(t, v.In, "fat_in"), "0.3", need, "-0.3", number4(t, v.In, "ribeye_sq_in"), "0.2", number4(t, v.In, "kph_percent")))
	}
	for _, v := range read("required-ribeye") {
		equal(v, "required_ribeye_sq_in", required(v))
	}
	for _, v := range read("retail-cuts") {
		equal(v, "percent", sum("51.34", "-5.78", number4(t, v.In, "fat_in"), "-0.462", number4(t, v.In, "kph_percent"), "-0.0093", number4(t, v.In, "weight_lb"), "0.74", number4(t, v.In, "ribeye_sq_in")))
	}
	for _, v := range read("metric") {
		per, _ := new(big.Rat).SetString(map[string]string{"mm": "25.4", "sq cm": "6.4516", "kg": "0.45359237"}[Text(v.In, "unit")])
		in := floor(new(big.Rat).Add(new(big.Rat).Quo(number4(t, v.In, "value"), per), big.NewRat(1, 20_000)), 4) // none below zero
		equal(v, "customary", in)
		equal(v, "metric", new(big.Rat).Mul(in, per))
	}
}

// Points are the sums of weights that the reference rows give, line by line, and thirds
// those of fractions.
func TestPointsBySums(t *testing.T) {
	f := keptFile(t, "points")
	rows, err := refs.Read(testdata+"/references", "grade-deductions.csv")
	if err != nil {
		t.Fatal(err)
	}
	rungs, weights := map[string][]string{}, map[string][]int{}
	for _, r := range rows {
		name := r.Get("ladder")
		n, err := strconv.Atoi(r.Get("weight"))
		if err != nil {
			t.Fatal(err)
		}
		if upper, lower, ok := strings.Cut(r.Get("line"), " to "); ok {
			if rungs[name] == nil {
				rungs[name] = []string{upper}
			}
			rungs[name] = append(rungs[name], lower)
		}
		weights[name] = append(weights[name], n)
	}
	third := func(s string) int64 {
		x, _ := new(big.Rat).SetString(s)
		hundredths := new(big.Rat).Mul(floor(sum("0.005", "1", x), 2), big.NewRat(100, 1)).Num().Int64()
		n := hundredths % 100
		switch whole := 3 * (hundredths / 100); {
		case hundredths < 100:
			return 3
		case hundredths > 599:
			return 17
		case n < 34:
			return whole
		case n < 67:
			return whole + 1
		default:
			return whole + 2
		}
	}
	capped := 0
	for _, v := range f.Vectors {
		name, key, answer := Text(v.In, "ladder"), Text(v.In, "key"), Text(v.In, "answer")
		lost, off := 0, 0
		switch {
		case name == "yield grade in thirds":
			off = int(third(answer) - third(key))
			if n := max(off, -off); n < len(weights[name]) {
				lost = weights[name][n]
			} else {
				lost = 10
			}
		case rungs[name] != nil:
			k, a := slices.Index(rungs[name], key), slices.Index(rungs[name], answer)
			off = k - a
			for _, w := range weights[name][min(k, a):max(k, a)] {
				lost += w
			}
		default: // 1 point a line, 10 at the most
			n, err := strconv.Atoi(Text(v.Out, "off"))
			if err != nil {
				t.Fatal(err)
			}
			if off, lost = n, max(n, -n); lost > 10 {
				lost = 10
				capped++
			}
		}
		if Text(v.Out, "lost") != strconv.Itoa(lost) || Text(v.Out, "off") != strconv.Itoa(off) {
			t.Errorf("%v: %v, by sums %d and %d off", v.In, v.Out, lost, off)
		}
	}
	if capped == 0 || len(weights) != 3 {
		t.Errorf("%d capped, weights %v", capped, weights)
	}
}
