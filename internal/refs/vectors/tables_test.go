package vectors

import (
	"bufio"
	"fmt"
	"os"
	"path/filepath"
	"strconv"
	"strings"

	"example.com/ribface/grade"
	"example.com/ribface/internal/refs"
	"example.com/ribface/maturity"
)

// tables are the tables of the tests that inputs are taken from.
type tables struct {
	references string
	golden     []Vector // the carcasses of golden/carcasses.txt
}

// rows reads a file of references.
func (t *tables) rows(name string) ([]refs.Row, error) {
	return refs.Read(t.references, name)
}

// stated makes a vector of a row, with the source and the standing of the row and how far
// the figure printed in it agrees.
func stated(r refs.Row, in Object) Vector {
	v := Vector{From: fmt.Sprintf("references/%s line %d", r.File, r.Line), In: only(in), Standing: r.Get("standing")}
	if id := r.Get("source_id"); id != "none" {
		v.Source = id
	}
	if r.Has("agrees") && r.Get("agrees") != "yes" {
		v.Agrees = r.Get("agrees")
	}
	return v
}

// number takes the unit off a measure.
func number(s string) string {
	s, _, _ = strings.Cut(strings.TrimSuffix(s, "%"), " ")
	return s
}

func readTables(testdata string) (*tables, error) {
	t := &tables{references: filepath.Join(testdata, "references")}
	f, err := os.Open(filepath.Join(testdata, "golden", "carcasses.txt"))
	if err != nil {
		return nil, err
	}
	defer func() { _ = f.Close() }() // only read
	lines := bufio.NewScanner(f)
	lines.Buffer(nil, 1<<20)
	for n := 1; lines.Scan(); n++ {
		line := lines.Text()
		if strings.HasPrefix(line, " ") {
			continue // a step
		}
		in, ok, err := goldenCarcass(line)
		if err != nil {
			return nil, fmt.Errorf("golden/carcasses.txt line %d: %w", n, err)
		}
		if ok {
			t.golden = append(t.golden, Vector{From: fmt.Sprintf("golden/carcasses.txt line %d", n), In: in})
		}
	}
	return t, lines.Err()
}

// goldenCarcass reads the inputs of a line of the golden carcasses. Those that are
// refused are left out, and so is the finding below Cutter, which the line does not show.
func goldenCarcass(line string) (in Object, ok bool, err error) {
	given, _, _ := strings.Cut(line, " adj ")
	given, measures, ok := strings.Cut(given, " | ")
	if !ok {
		return nil, false, fmt.Errorf("%q has no measures", line)
	}
	if strings.Contains(line, "refused") || strings.Contains(line, "Canner") {
		return nil, false, nil
	}
	words := strings.Fields(given)
	bone, lean, _ := strings.Cut(words[2], "/")
	in = Object{"sex": words[1], "skeletal": bone, "lean": lean, "marbling": words[7]}
	if n, err := strconv.Atoi(words[4]); err == nil && n > 0 {
		in["incisors"] = strconv.Itoa(n - 1) // the line counts from 1, 0 being not looked at
	}
	if words[6] != "0" {
		in["months"] = words[6]
	}
	firm, err := cut(given, " firm ", " dark ")
	if err != nil {
		return nil, false, err
	}
	_, dark, _ := strings.Cut(given, " dark ")
	if firm != "unset" {
		in["firmness"] = firm
	}
	if dark != "none" {
		in["dark"] = dark
	}
	// "0.65 in 13.4 sq in 0% 924 lb"
	m := strings.Fields(measures)
	in["fat_in"], in["ribeye_sq_in"], in["kph_percent"], in["weight_lb"] = m[0], m[2], strings.TrimSuffix(m[5], "%"), m[6]
	return in, true, nil
}

// sweep draws numbers that are the same everywhere, from 0 up to but not n.
type sweep uint64

func (s *sweep) next(n int) int {
	*s = *s*6364136223846793005 + 1442695040888963407
	return int(uint64(*s) >> 33 % uint64(n))
}

func pick[T any](s *sweep, of ...T) T { return of[s.next(len(of))] }

// carcass reads a carcass.
func carcass(o Object) (grade.Carcass, error) {
	r := &reader{o: o}
	c := grade.Carcass{
		Sex: get(r, "sex", grade.ParseSex),
		Maturity: maturity.Evidence{
			Skeletal: get(r, "skeletal", maturity.Parse),
			Lean:     get(r, "lean", maturity.Parse),
			Teeth:    get(r, "incisors", maturity.ParseTeeth),
			Papers:   get(r, "months", maturity.ParseMonths),
		},
		Marbling: get(r, "marbling", grade.ParseMarbling),
		Lean: grade.Lean{
			Firmness: get(r, "firmness", grade.ParseFirmness),
			Color:    get(r, "color", grade.ParseColor),
			Texture:  get(r, "texture", grade.ParseTexture),
			Dark:     get(r, "dark", grade.ParseDarkCut),
		},
		Measures: measuresOf(r),
	}
	return c, r.err
}

func measuresOf(r *reader) grade.Measures {
	return grade.Measures{
		Fat:    get(r, "fat_in", func(s string) (grade.Thickness, error) { return grade.ParseThickness(s) }),
		Ribeye: get(r, "ribeye_sq_in", func(s string) (grade.Area, error) { return grade.ParseArea(s) }),
		KPH:    get(r, "kph_percent", func(s string) (grade.Share, error) { return grade.ParseShare(s) }),
		Weight: get(r, "weight_lb", func(s string) (grade.Weight, error) { return grade.ParseWeight(s) }),
	}
}

func measures(o Object) (grade.Measures, error) {
	r := &reader{o: o}
	m := measuresOf(r)
	return m, r.err
}
