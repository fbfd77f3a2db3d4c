// Package everytype holds every exported type of a package to what the module
// promises of all of them: no method panics on a zero value, a hand-made one or a nil
// pointer, and package cmp compares the values without options. It reads the names of
// the types from the source, so that none can be forgotten.
package everytype

import (
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"io"
	"maps"
	"math"
	"path/filepath"
	"reflect"
	"runtime/debug"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

// Run fails for every promise that is broken, see [Broken].
func Run(t *testing.T, dir string, values ...any) {
	t.Helper()
	for _, err := range Broken(dir, values...) {
		t.Error(err)
	}
}

// Broken takes one value or more of every exported type of the package in the folder,
// and the zero value and odd values of each of them besides, through every exported
// method and through package cmp. It returns what panics, what does not equal itself,
// and the types of which there is no value. A type that is used by pointer is given as
// a pointer. Aliases and interfaces are left out.
func Broken(dir string, values ...any) (broken []error) {
	names, err := types(dir)
	if err != nil {
		return []error{err}
	}
	seen := map[reflect.Type]bool{}
	for _, v := range values {
		val := reflect.ValueOf(v)
		typ := val.Type()
		if typ.Kind() == reflect.Pointer {
			typ = typ.Elem()
			val = val.Elem()
		}
		name, _, _ := strings.Cut(typ.Name(), "[")
		delete(names, name)
		all := []reflect.Value{val}
		if !seen[typ] {
			seen[typ] = true
			all = append(all, reflect.Zero(typ), odd(typ, 0), odd(typ, 1), odd(typ, 2))
			broken = append(broken, nilPointer(typ)...)
		}
		for _, val := range all {
			broken = append(broken, methods(val)...)
			broken = append(broken, compare(val)...)
		}
	}
	for _, name := range slices.Sorted(maps.Keys(names)) {
		broken = append(broken, fmt.Errorf("%s: no value of it to try", name))
	}
	return broken
}

// types finds the exported types that the package in the folder declares.
func types(dir string) (map[string]bool, error) {
	files, err := filepath.Glob(filepath.Join(dir, "*.go"))
	names := map[string]bool{}
	for _, file := range files {
		if strings.HasSuffix(file, "_test.go") {
			continue
		}
		f, err := parser.ParseFile(token.NewFileSet(), file, nil, parser.SkipObjectResolution)
		if err != nil {
			return nil, err
		}
		ast.Inspect(f, func(n ast.Node) bool {
			if s, ok := n.(*ast.TypeSpec); ok && s.Name.IsExported() && s.Assign == token.NoPos {
				if _, isInterface := s.Type.(*ast.InterfaceType); !isInterface {
					names[s.Name.Name] = true
				}
			}
			_, isFunc := n.(*ast.FuncDecl)
			return !isFunc
		})
	}
	if err == nil && len(names) == 0 {
		err = fmt.Errorf("%s: no exported type", dir)
	}
	return names, err
}

// odd makes an odd value of the type, of several kinds. Hidden fields stay zero.
func odd(t reflect.Type, kind int) reflect.Value {
	v := reflect.New(t).Elem()
	switch t.Kind() {
	case reflect.Bool:
		v.SetBool(kind != 1)
	case reflect.Int, reflect.Int8, reflect.Int16, reflect.Int32, reflect.Int64:
		v.SetInt([]int64{-1, math.MinInt64 >> (64 - t.Bits()), math.MaxInt64 >> (64 - t.Bits())}[kind])
	case reflect.Uint, reflect.Uint8, reflect.Uint16, reflect.Uint32, reflect.Uint64:
		v.SetUint([]uint64{1, 7, math.MaxUint64 >> (64 - t.Bits())}[kind])
	case reflect.Float32, reflect.Float64:
		v.SetFloat([]float64{-1, math.Inf(1), 1e300}[kind])
	case reflect.String:
		v.SetString([]string{"", "\x00\xff\n", strings.Repeat("é ", 40)}[kind])
	case reflect.Slice:
		for range kind {
			v.Set(reflect.Append(v, odd(t.Elem(), kind)))
		}
	case reflect.Array:
		for i := range t.Len() {
			v.Index(i).Set(odd(t.Elem(), kind))
		}
	case reflect.Struct:
		for i := range t.NumField() {
			if t.Field(i).IsExported() {
				v.Field(i).Set(odd(t.Field(i).Type, kind))
			}
		}
	case reflect.Pointer:
		if kind > 0 {
			v.Set(reflect.New(t.Elem()))
		}
	case reflect.Func:
		// One that gives zero values and, as a sequence, nothing.
		v.Set(reflect.MakeFunc(t, func([]reflect.Value) (out []reflect.Value) {
			for i := range t.NumOut() {
				out = append(out, reflect.Zero(t.Out(i)))
			}
			return out
		}))
	case reflect.Interface:
		for _, known := range []any{strings.NewReader("a,b\n1\n"), io.Discard, fmt.Errorf("odd")} {
			if reflect.TypeOf(known).Implements(t) && (kind > 0 || t.NumMethod() > 0 && t != errorType) {
				v.Set(reflect.ValueOf(known))
				break
			}
		}
	}
	return v
}

var errorType = reflect.TypeFor[error]()

// decoders are not called on nil, which has no room for what they read.
var decoders = []string{"UnmarshalText", "UnmarshalJSON", "Scan"}

// nilPointer calls the methods that only a pointer has on a nil one.
func nilPointer(t reflect.Type) (broken []error) {
	p := reflect.PointerTo(t)
	for i := range p.NumMethod() {
		m := p.Method(i)
		if _, ofValue := t.MethodByName(m.Name); !ofValue && !slices.Contains(decoders, m.Name) {
			broken = append(broken, call(reflect.Zero(p), m)...)
		}
	}
	return broken
}

// methods calls every method of a value and of a pointer to it.
func methods(v reflect.Value) (broken []error) {
	p := reflect.PointerTo(v.Type())
	for i := range p.NumMethod() {
		to := reflect.New(v.Type()) // a copy for each, since a method may write to it
		to.Elem().Set(v)
		broken = append(broken, call(to, p.Method(i))...)
	}
	return append(broken, attempt(v.Type(), "fmt", func() {
		for _, format := range []string{"%v", "%+v", "%#v", "%s", "%q", "%d", "%x", "%f", "%.1f", "%+8.2f", "%-8v", "%.40f"} {
			if out := fmt.Sprintf(format, v.Interface()); strings.Contains(out, "(PANIC=") {
				panic(out) // package fmt catches panics
			}
		}
	})...)
}

// call calls a method with several kinds of arguments. Format is left to package fmt,
// which alone can make its first.
func call(to reflect.Value, m reflect.Method) (broken []error) {
	if m.Name == "Format" {
		return nil
	}
	for kind := range 4 {
		args := []reflect.Value{to}
		for i := 1; i < m.Type.NumIn(); i++ {
			in := m.Type.In(i)
			if kind == 3 && in.Kind() != reflect.Interface && in.Kind() != reflect.Func {
				args = append(args, reflect.Zero(in))
			} else {
				args = append(args, odd(in, kind%3))
			}
		}
		broken = append(broken, attempt(to.Type(), m.Name, func() {
			out := m.Func.Call
			if m.Type.IsVariadic() {
				out = m.Func.CallSlice
			}
			for _, v := range out(args) {
				take(v)
			}
		})...)
		if broken != nil || m.Type.NumIn() == 1 {
			break
		}
	}
	return broken
}

// take takes a few values from a sequence, and the text of an error.
func take(v reflect.Value) {
	if err, ok := v.Interface().(error); ok && err != nil {
		_ = err.Error()
	}
	if !v.Type().CanSeq() && !v.Type().CanSeq2() || v.Kind() != reflect.Func {
		return
	}
	n := 0
	if v.Type().CanSeq() {
		for range v.Seq() {
			if n++; n == 3 {
				return
			}
		}
		return
	}
	for range v.Seq2() {
		if n++; n == 3 {
			return
		}
	}
}

// compare compares a value with itself and with the zero value, by package cmp
// without options; by pointer where the pointer alone has an Equal method.
func compare(v reflect.Value) (broken []error) {
	t := v.Type()
	a, b, zero := v, v, reflect.Zero(t)
	_, byPointer := reflect.PointerTo(t).MethodByName("Equal")
	if _, byValue := t.MethodByName("Equal"); byPointer && !byValue {
		a, b, zero = reflect.New(t), reflect.New(t), reflect.New(t)
		a.Elem().Set(v)
		b.Elem().Set(v)
	}
	panics := attempt(t, "cmp.Diff", func() {
		if d := cmp.Diff(a.Interface(), b.Interface()); d != "" {
			broken = append(broken, fmt.Errorf("%v: a value that does not equal itself:\n%s", t, d))
		}
		_ = cmp.Diff(zero.Interface(), a.Interface())
	})
	return append(broken, panics...)
}

// attempt turns a panic into an error.
func attempt(t reflect.Type, what string, do func()) (broken []error) {
	defer func() {
		if r := recover(); r != nil {
			broken = append(broken, fmt.Errorf("%v.%s: panic: %v\n%s", t, what, r, where()))
		}
	}()
	do()
	return nil
}

// where gives the lines of the stack that are of this module.
func where() string {
	var lines []string
	for line := range strings.SplitSeq(string(debug.Stack()), "\n") {
		if strings.Contains(line, "ribface") && !strings.Contains(line, "everytype") {
			lines = append(lines, line)
		}
	}
	return strings.Join(lines[:min(4, len(lines))], "\n")
}
