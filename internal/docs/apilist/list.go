package main

import (
	"bytes"
	"crypto/sha256"
	"errors"
	"fmt"
	"go/importer"
	"go/token"
	"go/types"
	"io"
	"os"
	"os/exec"
	"slices"
	"strings"
)

// List gives the exported symbols of every public package of the module whose
// root is given, one to a line, sorted. Commands and packages under internal or
// examples are left out. It asks the go command for the compiled packages and
// reads what they export.
func List(root string) (string, error) {
	packages, err := list(root, "-f", "{{if ne .Name \"main\"}}{{.ImportPath}} {{.Module.Path}}{{end}}")
	if err != nil {
		return "", err
	}
	exports, err := list(root, "-export", "-deps", "-f", "{{.ImportPath}} {{.Export}}")
	if err != nil {
		return "", err
	}
	load := importer.ForCompiler(token.NewFileSet(), "gc", func(p string) (io.ReadCloser, error) {
		return os.Open(exports[p])
	})
	var lines []string
	for p, module := range packages {
		short := strings.TrimPrefix(p, module+"/")
		if first, _, _ := strings.Cut(short, "/"); first == "internal" || first == "examples" {
			continue
		}
		pkg, err := load.Import(p)
		if err != nil {
			return "", err
		}
		lines = append(lines, symbols(pkg, short, module)...)
	}
	slices.Sort(lines)
	return strings.Join(slices.Compact(lines), "\n") + "\n", nil
}

// Sum is the short mark of a list that the changelog carries.
func Sum(list string) string { return fmt.Sprintf("%x", sha256.Sum256([]byte(list)))[:12] }

// list runs go list over all packages of the module and returns the two words of
// each line.
func list(root string, args ...string) (map[string]string, error) {
	c := exec.Command("go", append(append([]string{"list"}, args...), "./...")...)
	c.Dir = root
	out, err := c.Output()
	if exit := (*exec.ExitError)(nil); errors.As(err, &exit) {
		return nil, fmt.Errorf("go list: %w: %s", err, bytes.TrimSpace(exit.Stderr))
	}
	words := map[string]string{}
	for line := range strings.Lines(string(out)) {
		first, second, _ := strings.Cut(strings.TrimSpace(line), " ")
		if first != "" {
			words[first] = second
		}
	}
	return words, err
}

// symbols writes the exported symbols of one package. Packages of the module are
// named by their path in it, others by their whole path.
func symbols(pkg *types.Package, short, module string) []string {
	qualify := func(p *types.Package) string {
		if p == pkg {
			return ""
		}
		return strings.TrimPrefix(p.Path(), module+"/")
	}
	var lines []string
	add := func(format string, args ...any) {
		lines = append(lines, short+": "+fmt.Sprintf(format, args...))
	}
	show := func(t types.Type) string { return types.TypeString(t, qualify) }
	for _, name := range pkg.Scope().Names() {
		obj := pkg.Scope().Lookup(name)
		if !obj.Exported() {
			continue
		}
		switch o := obj.(type) {
		case *types.Const:
			add("const %s %s = %s", name, show(o.Type()), o.Val().ExactString())
		case *types.TypeName:
			kind := o.Type().Underlying()
			if o.IsAlias() {
				add("type %s = %s", name, show(types.Unalias(o.Type())))
			}
			if s, ok := kind.(*types.Struct); ok {
				if !o.IsAlias() {
					add("type %s%s struct", name, params(o.Type(), qualify))
				}
				for f := range s.Fields() {
					if f.Exported() {
						add("type %s struct, %s %s", name, f.Name(), show(f.Type()))
					}
				}
			} else if !o.IsAlias() {
				add("type %s%s %s", name, params(o.Type(), qualify), show(kind))
			}
			if types.IsInterface(kind) {
				continue
			}
			// The methods of a pointer are those of the value too.
			all := types.NewMethodSet(types.NewPointer(o.Type()))
			for m := range all.Methods() {
				if f := m.Obj().(*types.Func); f.Exported() {
					signature := f.Signature()
					receiver := show(signature.Recv().Type())
					add("method (%s) %s%s", receiver, f.Name(), strings.TrimPrefix(show(signature), "func"))
				}
			}
		case *types.Func:
			add("func %s%s", name, strings.TrimPrefix(show(o.Type()), "func"))
		case *types.Var:
			add("var %s %s", name, show(o.Type()))
		}
	}
	return lines
}

// params writes the type parameters of a generic type, with their constraints.
func params(t types.Type, qualify types.Qualifier) string {
	named, ok := t.(*types.Named)
	if !ok || named.TypeParams().Len() == 0 {
		return ""
	}
	var all []string
	for p := range named.TypeParams().TypeParams() {
		all = append(all, p.Obj().Name()+" "+types.TypeString(p.Constraint(), qualify))
	}
	return "[" + strings.Join(all, ", ") + "]"
}
