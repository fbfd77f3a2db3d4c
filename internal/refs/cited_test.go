package refs

import (
	"encoding/json"
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"os"
	"path/filepath"
	"reflect"
	"slices"
	"strconv"
	"strings"
	"testing"

	"example.com/ribface/grade"
	"example.com/ribface/grade/price"
	"example.com/ribface/internal/testkit"
	"example.com/ribface/internal/text"
	"example.com/ribface/maturity"
	"example.com/ribface/maturity/cite"
	"example.com/ribface/placing"
	"example.com/ribface/placing/class"
	"example.com/ribface/placing/contest"
	"example.com/ribface/placing/practice"
	"github.com/shopspring/decimal"
)

// cited collects every citation that values of the packages hold or give.
type cited struct {
	ids   map[string]string // by id, where it was found
	names map[string]bool   // what was looked at, as testdata/api.txt names it
	seen  map[any]bool      // values whose methods were called
}

var (
	citation = reflect.TypeFor[cite.Citation]()
	step     = reflect.TypeFor[cite.Step]()
)

// from walks a value that the named function or variable gave.
func (c *cited) from(name string, v any) {
	c.names[name] = true
	c.walk(name, reflect.ValueOf(v))
}

// short names a type as testdata/api.txt does, as "placing/class: Policy".
func short(t reflect.Type) (pkg, name string, ok bool) {
	pkg, ok = strings.CutPrefix(t.PkgPath(), "example.com/ribface/")
	return pkg, t.Name(), ok && t.Name() != ""
}

// walk looks through fields, elements and pointers, and calls every method without
// arguments that gives a citation or steps.
func (c *cited) walk(where string, v reflect.Value) {
	if !v.IsValid() {
		return
	}
	t := v.Type()
	if t == citation {
		for id := range strings.FieldsSeq(v.FieldByName("IDs").String()) {
			c.ids[id] = where
		}
		return
	}
	if pkg, name, ok := short(t); ok {
		where = pkg + ": " + name
		c.names[pkg+": type "+name] = true
		c.call(where, v)
	}
	switch t.Kind() {
	case reflect.Pointer, reflect.Interface:
		if !v.IsNil() {
			c.walk(where, v.Elem())
		}
	case reflect.Struct:
		for i := range t.NumField() {
			c.walk(where, v.Field(i))
		}
	case reflect.Slice, reflect.Array:
		for i := range v.Len() {
			c.walk(where, v.Index(i))
		}
	case reflect.Map:
		for it := v.MapRange(); it.Next(); {
			c.walk(where, it.Key())
			c.walk(where, it.Value())
		}
	}
}

func (c *cited) call(where string, v reflect.Value) {
	if !v.CanInterface() {
		return
	}
	t := v.Type()
	if t.Comparable() && v.Comparable() {
		if c.seen[v.Interface()] {
			return
		}
		c.seen[v.Interface()] = true
	}
	for i := range t.NumMethod() {
		m := t.Method(i)
		if m.Type.NumIn() != 1 {
			continue
		}
		gives := false
		for j := range m.Type.NumOut() {
			out := m.Type.Out(j)
			gives = gives || out == citation || out.Kind() == reflect.Slice && out.Elem() == step
		}
		if !gives {
			continue
		}
		pkg, name, _ := short(t)
		c.names[pkg+": method ("+name+") "+m.Name] = true
		for _, out := range v.Method(i).Call(nil) {
			c.walk(where+"."+m.Name, out)
		}
	}
}

// collected is what collect found, for the tests that look at it.
var collected *cited

// collect runs everything that cites.
func collect(t *testing.T) *cited {
	t.Helper()
	if collected != nil {
		return collected
	}
	c := &cited{map[string]string{}, map[string]bool{}, map[any]bool{}}
	must := func(err error) {
		if err != nil {
			t.Fatal(err)
		}
	}
	c.from("maturity: func OssificationPoints", slices.Collect(maturity.OssificationPoints()))
	var ages []maturity.Evidence
	for _, bone := range []string{"A50", "A80", "B90", "C50", "D50"} {
		for _, lean := range []string{"A00", "A55", "B45", "E50"} {
			e := maturity.Evidence{Skeletal: maturity.MustParse(bone), Lean: maturity.MustParse(lean)}
			papers, old := e, e
			papers.Papers, old.Teeth = 29, maturity.Incisors(4)
			ages = append(ages, e, papers, old)
		}
	}
	for tens := maturity.KeepUnits; tens <= maturity.TensTowardLean; tens++ {
		for lean := maturity.OldLeanMayCross; lean <= maturity.OldLeanStaysInB; lean++ {
			for _, e := range ages {
				for _, byAge := range []bool{false, true} {
					c.from("maturity: method (Balancing) Steps", maturity.Balancing{Tens: tens, OldLean: lean}.Steps(e, byAge))
				}
			}
		}
	}

	for color := grade.VeryDarkRed; color.IsValid(); color++ {
		c.from("grade: method (Color) Cite", color.Cite())
	}
	for texture := grade.VeryCoarse; texture.IsValid(); texture++ {
		c.from("grade: method (Texture) Cite", texture.Cite())
	}

	measures := grade.Measures{}
	var err error
	measures.Fat, err = grade.ParseThickness("0.5 in")
	must(err)
	measures.Ribeye, err = grade.ParseArea("13 sq in")
	must(err)
	measures.KPH, err = grade.ParseShare("2%")
	must(err)
	measures.Weight, err = grade.ParseWeight("800 lb")
	must(err)
	adjust, err := grade.ParseThickness("0.1 in")
	must(err)
	var graded []grade.Assessment
	step := grade.Marbling(300) // a sample; the rest is other numbers in the same steps
	if testkit.Exhaustive() {
		step = 100
	}
	for e := range grade.Editions() {
		c.from("grade: method (Edition) From", e)
		for l := range e.Lines() {
			c.from("grade: type Line", l)
		}
		for sex := range grade.Sexes() {
			for i := 0; i < len(ages); i += 7 {
				age := ages[i]
				for m := grade.Devoid.At(70); m <= grade.Abundant.At(70); m += step {
					for _, lean := range []grade.Lean{{}, {Firmness: grade.VerySoft}, {Firmness: grade.Firm, Dark: grade.DarkFull}, {BelowCutter: true}} {
						k := grade.Carcass{Sex: sex, Maturity: age, Marbling: m, Lean: lean, Measures: measures, FatAdjust: adjust}
						a, err := e.Assess(k)
						must(err)
						graded = append(graded, a)
						c.from("grade: method (Assessment) Steps", a.Steps())
					}
				}
			}
		}
	}
	// Names of the tables of retail cuts are ids, and so cite.
	for r := grade.RetailGuide; text.Named(r); r++ {
		c.ids[r.String()] = "grade: RetailTable"
	}

	base := decimal.New(20000, -2)
	for _, week := range []string{"2014-10-20", "2025-01-06"} {
		text, err := os.ReadFile(root + "/examples/prices/week-" + week + ".json")
		must(err)
		terms := price.Offer{Base: base}
		must(json.Unmarshal(text, &terms))
		c.from("grade/price: type Terms", terms)
		g, err := price.New(terms)
		must(err)
		for _, a := range graded[:len(graded)/4] {
			for _, attributes := range [][]price.Attribute{nil, price.AttributesOf(a)} {
				if v, err := g.Value(a, attributes...); err == nil {
					c.from("grade/price: method (Value) Steps", v.Steps())
				}
			}
		}
	}

	for m := placing.Blank; m.IsValid(); m++ {
		_, by := placing.CardRules{}.Penalty(m)
		c.from("placing: method (CardRules) Penalty", by)
		_, by = placing.CardRules{}.ItemPenalty(m)
		c.from("placing: method (CardRules) ItemPenalty", by)
	}
	for l := range placing.CutLimits() {
		c.from("placing: type CutLimit", l)
	}
	for w := placing.WordsColorado; text.Named(w); w++ {
		c.from("placing: type Words", w)
	}

	c.from("placing/class: func DefaultPolicy", class.DefaultPolicy())
	for s := range class.Sites() {
		c.from("placing/class: func Sites", s)
	}
	made, err := practice.Make(1, practice.Spec{})
	must(err)
	c.from("placing/practice: func Make", made)
	for _, order := range []string{"1 2 3 4", "4 3 2 1"} {
		k := made.Graded.Class()
		k.Walk = nil
		for s := range class.Sites() {
			r, err := placing.ParseRanking(order)
			must(err)
			if s.Fat() {
				k.Walk = append(k.Walk, class.Look{Site: s, Order: r})
			}
		}
		g, err := k.Grade()
		must(err)
		findings := g.Represent()
		if len(findings) == 0 {
			t.Error("no finding to look at")
		}
		c.from("placing/class: method (Graded) Represent", findings)
	}

	_, by := contest.TaughtThirds()
	c.from("placing/contest: func TaughtThirds", by)
	for _, name := range []string{"california-2012", "texas-about-2004", "kansas-state-horse-class"} {
		var f contest.Format
		text, err := os.ReadFile(root + "/examples/formats/" + name + ".json")
		must(err)
		must(json.Unmarshal(text, &f))
		c.from("placing/contest: type Format", f)
	}
	c.from("placing/practice: func Herds", slices.Collect(practice.Herds()))
	collected = c
	return c
}

// Every id that the packages cite when they run is a source, and every exported
// symbol with a citation in it was looked at.
func TestEveryCitedIDIsASource(t *testing.T) {
	c := collect(t)
	for id, where := range c.ids {
		if _, ok := cite.Lookup(id); !ok {
			t.Errorf("%s cites %q, which is no source", where, id)
		}
	}
	list, err := os.ReadFile(root + "/testdata/api.txt")
	if err != nil {
		t.Fatal(err)
	}
	n := 0
	for line := range strings.Lines(string(list)) {
		line = strings.TrimSpace(line)
		if strings.HasPrefix(line, "maturity/cite:") || !strings.Contains(line, "maturity/cite.Citation") && !strings.Contains(line, "maturity/cite.Step") {
			continue
		}
		n++
		if name := symbol(line); !c.names[name] {
			t.Errorf("%s was not looked at: %s", name, line)
		}
	}
	if n < 10 {
		t.Errorf("%d symbols with citations in testdata/api.txt", n)
	}
}

// symbol gives the name of what a line of testdata/api.txt declares.
func symbol(line string) string {
	pkg, rest, _ := strings.Cut(line, ": ")
	kind, rest, _ := strings.Cut(rest, " ")
	end := strings.IndexAny(rest, " ,(")
	if kind == "method" {
		close := strings.Index(rest, ") ") + 2
		end = close + strings.Index(rest[close:], "(")
		rest = strings.Replace(rest, "(*", "(", 1)
	}
	if end < 0 {
		end = len(rest)
	}
	return pkg + ": " + kind + " " + rest[:end]
}

// Every source that the code names in a string is one that it cites when it runs: the
// run above leaves nothing out.
func TestEveryNamedSourceIsCited(t *testing.T) {
	c := collect(t)
	err := filepath.WalkDir(root, func(path string, d fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		if d.IsDir() {
			if slices.Contains([]string{root + "/examples", root + "/internal", root + "/maturity/cite"}, path) {
				return filepath.SkipDir
			}
			return nil
		}
		if !strings.HasSuffix(path, ".go") || strings.HasSuffix(path, "_test.go") {
			return nil
		}
		parsed, err := parser.ParseFile(token.NewFileSet(), path, nil, 0)
		if err != nil {
			return err
		}
		ast.Inspect(parsed, func(n ast.Node) bool {
			lit, ok := n.(*ast.BasicLit)
			if !ok || lit.Kind != token.STRING {
				return true
			}
			text, _ := strconv.Unquote(lit.Value)
			for id := range strings.FieldsSeq(text) {
				if _, known := cite.Lookup(id); known && c.ids[id] == "" {
					t.Errorf("%s names %q, which no run cites", path, id)
				}
			}
			return true
		})
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
}

// An id that is no source is found wherever it stands: in a field, in a slice behind a
// pointer, in what a method gives.
func TestCitedFindsAnUnknownID(t *testing.T) {
	herds := slices.Collect(practice.Herds())
	herds[0].Means.IDs = "nowhere-1"
	policy := class.DefaultPolicy()
	policy.TiersCite.IDs = "nowhere-2 uni-placing-notes"
	c := &cited{map[string]string{}, map[string]bool{}, map[any]bool{}}
	c.from("test", &herds)
	c.from("test", map[string]any{"policy": policy})
	c.from("test", cites{})
	var unknown []string
	for id := range c.ids {
		if _, ok := cite.Lookup(id); !ok {
			unknown = append(unknown, id)
		}
	}
	slices.Sort(unknown)
	if got := fmt.Sprint(unknown); got != "[nowhere-1 nowhere-2 nowhere-3]" {
		t.Errorf("found %s", got)
	}
}

type cites struct{}

func (cites) Steps() []cite.Step { return []cite.Step{{Cite: cite.Citation{IDs: "nowhere-3"}}} }
