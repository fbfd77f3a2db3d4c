// Package everytype holds every exported type of a package to what the module
// promises of all of them. It finds the types by itself in the Go files, so that none
// can be forgotten:
//
//   - No method panics on a zero value, a nil pointer, or a value made by hand, with
//     arguments as odd; Must functions, and decoders of a nil pointer, may.
//   - fmt prints every value with every verb.
//   - cmp.Diff compares every value without options, and tells values apart that
//     differ by ==.
//   - JSON gives every value back unchanged, or an error; never another value.
//   - JSON names are in lower case, and a type that reads itself refuses a name that is
//     none of its own, or of a part of it.
//
// What works and is no value, which embeds [fault.Worker], is not compared, and JSON
// refuses it.
package everytype

import (
	"encoding"
	"encoding/json"
	"errors"
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"path/filepath"
	"reflect"
	"regexp"
	"slices"
	"strings"
	"testing"

	"example.com/ribface/internal/fault"
	"github.com/google/go-cmp/cmp"
)

// Run checks every exported type of the package in dir, which is "." for its own
// tests. There must be a value of each type among the values, or a pointer to one, and
// there may be several: odd ones, ones that are not valid, ones made by hand. Of a
// generic type there must be one instance. A function among the values is called as
// methods are. Values of the types of other packages serve as arguments only.
func Run(t *testing.T, dir string, values ...any) {
	t.Helper()
	for _, err := range Check(dir, values...) {
		t.Error(err)
	}
}

// Check is [Run] with what it finds.
func Check(dir string, values ...any) []error {
	names, err := Types(dir)
	if err != nil {
		return []error{err}
	}
	c := checker{values: map[reflect.Type][]reflect.Value{}, said: map[string]bool{}}
	found := map[string]bool{}
	for _, v := range values {
		r := reflect.ValueOf(v)
		t := r.Type()
		if t.Kind() == reflect.Func {
			c.funcs = append(c.funcs, r)
			continue
		}
		if t.Kind() == reflect.Pointer && t.Name() == "" {
			t = t.Elem()
			if r.IsNil() {
				r = reflect.Zero(t)
			} else {
				r = r.Elem()
			}
		}
		name, _, _ := strings.Cut(t.Name(), "[")
		if c.values[t] == nil {
			c.values[t] = []reflect.Value{reflect.Zero(t)}
			if slices.Contains(names, name) {
				c.types = append(c.types, t)
			}
		}
		found[name] = true
		c.values[t] = append(c.values[t], r)
	}
	for _, name := range names {
		if !found[name] {
			c.say("%s: there is no value of the exported type %s", dir, name)
		}
	}
	for _, t := range c.types {
		c.names(t)
		for _, v := range c.values[t] {
			c.print(v)
			c.methods(v)
			if works(t) {
				c.refused(v)
				continue
			}
			c.diff(v)
			c.json(v)
		}
		c.nilMethods(t)
	}
	for _, f := range c.funcs {
		c.call(f.Type().String(), f)
	}
	return c.all
}

// Types lists the exported types of the package in dir that have values: all but
// interfaces.
func Types(dir string) ([]string, error) {
	var names []string
	files, err := filepath.Glob(filepath.Join(dir, "*.go"))
	if err != nil || len(files) == 0 {
		return nil, fmt.Errorf("%s: no Go files: %w", dir, fs.ErrNotExist)
	}
	for _, name := range files {
		if strings.HasSuffix(name, "_test.go") {
			continue
		}
		f, err := parser.ParseFile(token.NewFileSet(), name, nil, parser.SkipObjectResolution)
		if err != nil {
			return nil, err
		}
		for _, d := range f.Decls {
			g, ok := d.(*ast.GenDecl)
			if !ok {
				continue
			}
			for _, s := range g.Specs {
				t, ok := s.(*ast.TypeSpec)
				if !ok || !t.Name.IsExported() {
					continue
				}
				if _, ok := t.Type.(*ast.InterfaceType); !ok {
					names = append(names, t.Name.Name)
				}
			}
		}
	}
	slices.Sort(names)
	return names, nil
}

type checker struct {
	types  []reflect.Type
	values map[reflect.Type][]reflect.Value
	funcs  []reflect.Value
	all    []error
	said   map[string]bool
}

func (c *checker) say(format string, args ...any) {
	err := fmt.Errorf(format, args...)
	if !c.said[err.Error()] {
		c.said[err.Error()] = true
		c.all = append(c.all, err)
	}
}

// try reports a panic of f.
func (c *checker) try(what func() string, f func()) {
	defer func() {
		if p := recover(); p != nil {
			c.say("%s panics: %v", what(), p)
		}
	}()
	f()
}

var (
	textMarshaler = reflect.TypeFor[encoding.TextMarshaler]()
	jsonMarshaler = reflect.TypeFor[json.Marshaler]()
	errorType     = reflect.TypeFor[error]()
	lowerName     = regexp.MustCompile(`^[a-z][a-z0-9_]*$`)
)

// names checks the JSON names of a struct that package json writes by its fields.
func (c *checker) names(t reflect.Type) {
	if t.Kind() != reflect.Struct || t.Implements(textMarshaler) || t.Implements(jsonMarshaler) || reflect.PointerTo(t).Implements(errorType) {
		return
	}
	for i := range t.NumField() {
		f := t.Field(i)
		name, _, _ := strings.Cut(f.Tag.Get("json"), ",")
		if f.IsExported() && !f.Anonymous && name != "-" && !lowerName.MatchString(name) {
			c.say("%v.%s has the JSON name %q, which is not in lower case", t, f.Name, name)
		}
	}
}

func (c *checker) print(v reflect.Value) {
	for _, verb := range []string{"%v", "%+v", "%#v", "%s", "%q", "%d", "%x", "%f", "%.2f", "%8.1f", "%-8s"} {
		c.try(func() string { return fmt.Sprintf("%s of a %v", verb, v.Type()) }, func() {
			if s := fmt.Sprintf(verb, v.Interface()); strings.Contains(s, "PANIC=") {
				c.say("%s of a %v panics: %s", verb, v.Type(), s)
			}
		})
	}
}

// works says whether the type works and is no value.
func works(t reflect.Type) bool {
	if t.Kind() != reflect.Struct {
		return false
	}
	for i := range t.NumField() {
		if f := t.Field(i); f.Anonymous && f.Type == reflect.TypeFor[fault.Worker]() {
			return true
		}
	}
	return false
}

// refused holds that what works has no JSON.
func (c *checker) refused(v reflect.Value) {
	if b, err := json.Marshal(v.Interface()); len(fault.Problems(err)) != 1 || !errors.Is(err, fault.ErrUnknown) {
		c.say("JSON of a %v is %s, %v", v.Type(), b, err)
	}
}

// diff compares a value with every other of its type.
func (c *checker) diff(v reflect.Value) {
	t := v.Type()
	c.try(func() string { return fmt.Sprintf("cmp.Diff of %v", t) }, func() {
		for i, w := range c.values[t] {
			a, b := v.Interface(), w.Interface()
			d := cmp.Diff(a, b)
			same := v.Comparable() && w.Comparable() && a == b
			switch {
			case same && d != "" && a == a:
				c.say("cmp.Diff of the same %v, %+v, is %s", t, a, d)
			case v.Comparable() && w.Comparable() && !same && d == "" && !hasEqual(t):
				c.say("cmp.Diff of %v finds nothing between %+v and %+v, number %d", t, a, b, i)
			}
			p, q := reflect.New(t), reflect.New(t)
			p.Elem().Set(v)
			q.Elem().Set(w)
			_ = cmp.Diff(p.Interface(), q.Interface())
		}
	})
}

// hasEqual says whether the type decides by itself what is equal.
func hasEqual(t reflect.Type) bool {
	_, ok := t.MethodByName("Equal")
	return ok
}

// json takes a value through JSON.
func (c *checker) json(v reflect.Value) {
	t := v.Type()
	if reflect.PointerTo(t).Implements(errorType) {
		return
	}
	c.try(func() string { return fmt.Sprintf("JSON of %v", t) }, func() {
		b, err := json.Marshal(v.Interface())
		if err != nil {
			return
		}
		back := reflect.New(t)
		if err := json.Unmarshal(b, back.Interface()); err != nil {
			c.say("JSON of a %v, %s, is not read back: %v", t, b, err)
			return
		}
		if d := cmp.Diff(v.Interface(), back.Elem().Interface()); d != "" {
			c.say("JSON of a %v, %s, comes back as another value: (-gone +back)\n%s", t, b, d)
		}
		if _, ok := back.Interface().(json.Unmarshaler); !ok {
			return
		}
		var tree any
		_ = json.Unmarshal(b, &tree) // which was read above
		objects(tree, func(object map[string]any) {
			object["misspelled"] = map[string]any{}
			b, _ := json.Marshal(tree)
			if json.Unmarshal(b, reflect.New(t).Interface()) == nil {
				c.say("JSON of a %v with a name that is none, %s, is read", t, b)
			}
			delete(object, "misspelled")
		})
	})
}

// objects calls f for every object in what package json has read.
func objects(v any, f func(map[string]any)) {
	switch v := v.(type) {
	case map[string]any:
		f(v)
		for _, part := range v {
			objects(part, f)
		}
	case []any:
		for _, part := range v {
			objects(part, f)
		}
	}
}

// methods calls every method that a pointer to the value has.
func (c *checker) methods(v reflect.Value) {
	p := reflect.New(v.Type())
	for i := range p.NumMethod() {
		p.Elem().Set(v)
		if m := p.Type().Method(i); !strings.HasPrefix(m.Name, "Must") {
			c.each(fmt.Sprintf("%v.%s", v.Type(), m.Name), p.Method(i), func() { p.Elem().Set(v) })
		}
	}
}

// nilMethods calls the methods of a pointer receiver on nil. What decodes has nothing
// to decode into, and may panic.
func (c *checker) nilMethods(t reflect.Type) {
	p := reflect.Zero(reflect.PointerTo(t))
	for i := range p.NumMethod() {
		m := p.Type().Method(i)
		_, ofValue := t.MethodByName(m.Name)
		if ofValue || strings.HasPrefix(m.Name, "Must") || strings.HasPrefix(m.Name, "Unmarshal") || m.Name == "Scan" {
			continue
		}
		c.each(fmt.Sprintf("%v.%s of a nil pointer", t, m.Name), p.Method(i), func() {})
	}
}

// calls bounds how often one method of one value is called.
const calls = 40

// call calls a function with many kinds of arguments.
func (c *checker) call(what string, f reflect.Value) { c.each(what, f, func() {}) }

func (c *checker) each(what string, f reflect.Value, before func()) {
	t := f.Type()
	n := t.NumIn()
	given := make([][]reflect.Value, n)
	product := 1
	for i := range n {
		in := t.In(i)
		if t.IsVariadic() && i == n-1 {
			in = in.Elem()
			given[i] = append(given[i], reflect.Value{}) // none
		}
		given[i] = append(given[i], c.arguments(in)...)
		product = min(product*len(given[i]), 1<<20)
	}
	for k := range min(product, calls) {
		args := make([]reflect.Value, 0, n)
		at := k
		if product > calls {
			at = k * (product/calls | 1)
		}
		for i := range n {
			a := given[i][at%len(given[i])]
			at /= len(given[i])
			if a.IsValid() {
				args = append(args, a)
			}
		}
		before()
		c.try(func() string { return what + "(" + show(args) + ")" }, func() {
			for _, out := range f.Call(args) {
				walk(out)
			}
		})
	}
}

func show(args []reflect.Value) string {
	var s []string
	for _, a := range args {
		text := "func"
		if a.Kind() != reflect.Func {
			text = fmt.Sprintf("%+v", a.Interface())
		}
		s = append(s, text[:min(len(text), 60)])
	}
	return strings.Join(s, ", ")
}

// walk runs a result that is an iterator, for a hundred turns.
func walk(out reflect.Value) {
	t := out.Type()
	if t.Kind() != reflect.Func || out.IsNil() || t.NumIn() != 1 || t.NumOut() != 0 || t.In(0).Kind() != reflect.Func {
		return
	}
	turns := 0
	out.Call([]reflect.Value{reflect.MakeFunc(t.In(0), func([]reflect.Value) []reflect.Value {
		turns++
		return []reflect.Value{reflect.ValueOf(turns < 100)}
	})})
}
