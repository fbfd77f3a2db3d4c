// Package docs holds what is printed of the module to the module: the programs of the
// README and what they print, the list of the exported API, documentation and an
// Example for every exported name, the table of mutation survivors.
package docs

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

// API gives the exported symbols of every public package of the module whose
// root is given, one to a line, sorted. Commands and packages under internal or
// examples are left out. It asks the go command for the compiled packages and
// reads what they export.
func API(root string) (string, error) {
	c := exec.Command("go", "list", "-export", "-deps", "-f", "{{.ImportPath}}\t{{.Export}}\t{{with .Module}}{{if .Main}}{{.Path}}{{end}}{{end}}\t{{.Name}}", "./...")
	c.Dir = root
	out, err := c.Output()
	if exit := (*exec.ExitError)(nil); errors.As(err, &exit) {
		return "", fmt.Errorf("go list: %w: %s", err, bytes.TrimSpace(exit.Stderr))
	} else if err != nil {
		return "", err
	}
	exports, public := map[string]string{}, map[string]string{} // by package: the file, the module
	for line := range strings.Lines(string(out)) {
		words := strings.Split(strings.TrimSuffix(line, "\n"), "\t")
		p, module := words[0], words[2]
		exports[p] = words[1]
		first, _, _ := strings.Cut(strings.TrimPrefix(p, module+"/"), "/")
		if module != "" && words[3] != "main" && first != "internal" && first != "examples" {
			public[p] = module
		}
	}
	load := importer.ForCompiler(token.NewFileSet(), "gc", func(p string) (io.ReadCloser, error) {
		return os.Open(exports[p])
	})
	var lines []string
	for p, module := range public {
		pkg, err := load.Import(p)
		if err != nil {
			return "", err
		}
		lines = append(lines, symbols(pkg, strings.TrimPrefix(p, module+"/"), module)...)
	}
	slices.Sort(lines)
	return strings.Join(slices.Compact(lines), "\n") + "\n", nil
}

// Sum is the short mark of a list that the changelog carries.
func Sum(list string) string { return fmt.Sprintf("%x", sha256.Sum256([]byte(list)))[:12] }

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
