package docs

import (
	"fmt"
	"go/ast"
	"go/doc"
	"go/parser"
	"go/token"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"
)

// Package is what was found in one package: how many exported symbols there are, which
// have no documentation and which no checked Example.
//
// Functions, types and methods count; constants and variables count for their
// documentation alone, since an Example of their type shows them. A function or
// type has an Example when one with checked output bears its name or uses it; a
// method when its type has one. The methods of package fmt and of the encodings need
// none: one Example of a package shows them all.
type Package struct {
	Dir          string   // relative to the root of the module
	Words        int      // of the package comment
	Symbols      int      // exported functions, types and methods
	Own          int      // of them, those with an Example of their own name
	Undocumented []string // exported names without documentation, constants and variables too
	Unshown      []string // symbols without a checked Example
	Unchecked    []string // Examples without checked output, which never run
}

// Packages reads every public package under root: all but those under internal,
// examples and testdata, and those of nested modules.
func Packages(root string) ([]Package, error) {
	var out []Package
	err := filepath.WalkDir(root, func(path string, d fs.DirEntry, err error) error {
		if err != nil || !d.IsDir() {
			return err
		}
		switch name := d.Name(); {
		case path == root:
		case name == "internal", name == "examples", name == "testdata", strings.HasPrefix(name, "."), strings.HasPrefix(name, "_"):
			return fs.SkipDir
		default:
			if _, err := os.Stat(filepath.Join(path, "go.mod")); err == nil {
				return fs.SkipDir
			}
		}
		p, found, err := read(root, path)
		if found {
			out = append(out, p)
		}
		return err
	})
	return out, err
}

// read reads one folder; found is false when it holds no package to import.
func read(root, dir string) (p Package, found bool, err error) {
	names, err := filepath.Glob(filepath.Join(dir, "*.go"))
	if err != nil {
		return p, false, err
	}
	fset := token.NewFileSet()
	var files, tests []*ast.File
	for _, name := range names {
		f, err := parser.ParseFile(fset, name, nil, parser.ParseComments)
		if err != nil {
			return p, false, err
		}
		if strings.HasSuffix(name, "_test.go") {
			tests = append(tests, f)
		} else if f.Name.Name != "main" {
			files = append(files, f)
		}
	}
	if len(files) == 0 {
		return p, false, nil
	}
	rel, err := filepath.Rel(root, dir)
	if err != nil {
		return p, false, err
	}
	pkg, err := doc.NewFromFiles(fset, files, filepath.ToSlash(rel))
	if err != nil {
		return p, false, err
	}
	c := counter{Package: Package{Dir: filepath.ToSlash(rel), Words: len(strings.Fields(pkg.Doc))}, called: map[string]map[string]bool{}}
	if pkg.Doc == "" {
		c.Undocumented = append(c.Undocumented, "package "+pkg.Name)
	}
	c.examples(doc.Examples(tests...))
	c.values("", pkg.Consts, pkg.Vars)
	for _, f := range pkg.Funcs {
		c.symbol(f.Name, "", f.Doc)
	}
	for _, t := range pkg.Types {
		c.symbol(t.Name, "", t.Doc)
		c.values(t.Name, t.Consts, t.Vars)
		for _, f := range t.Funcs {
			c.symbol(f.Name, "", f.Doc)
		}
		for _, m := range t.Methods {
			c.symbol(t.Name, m.Name, m.Doc)
		}
	}
	return c.Package, true, nil
}

type counter struct {
	Package
	called map[string]map[string]bool // Example name, and what its body calls
}

func (c *counter) examples(all []*doc.Example) {
	for _, e := range all {
		if e.Output == "" && !e.EmptyOutput {
			c.Unchecked = append(c.Unchecked, "Example"+e.Name)
			continue
		}
		calls := map[string]bool{}
		ast.Inspect(e.Code, func(n ast.Node) bool {
			if s, ok := n.(*ast.SelectorExpr); ok {
				calls[s.Sel.Name] = true
			}
			return true
		})
		c.called[e.Name] = calls
	}
}

// everywhere holds the methods that many types have and that one Example of a package
// shows.
var everywhere = map[string]bool{
	"String": true, "GoString": true, "Format": true, "Equal": true, "AppendText": true, "MarshalText": true, "UnmarshalText": true,
	"MarshalJSON": true, "UnmarshalJSON": true, "Value": true, "Scan": true,
}

// symbol counts one function, type or method of a type.
func (c *counter) symbol(name, method, comment string) {
	c.Symbols++
	own, full := name, name
	if method != "" {
		own, full = name+"_"+method, name+"."+method
	}
	if strings.TrimSpace(comment) == "" {
		c.Undocumented = append(c.Undocumented, full)
	}
	shown := everywhere[method]
	for example, calls := range c.called {
		if example == own || isSuffixed(example, own) {
			c.Own++
			return
		}
		if method != "" && (example == name || strings.HasPrefix(example, name+"_")) || calls[name] {
			shown = true
		}
	}
	if !shown {
		c.Unshown = append(c.Unshown, full)
	}
}

// isSuffixed reports whether the Example is one more of the same symbol, as
// "Score_sorting" is of Score.
func isSuffixed(example, own string) bool {
	rest, ok := strings.CutPrefix(example, own+"_")
	return ok && rest != "" && strings.ToLower(rest[:1]) == rest[:1]
}

// values looks for constants and variables without documentation: neither on
// the group nor on the name.
func (c *counter) values(of string, groups ...[]*doc.Value) {
	for _, values := range groups {
		for _, v := range values {
			if strings.TrimSpace(v.Doc) != "" {
				continue
			}
			for _, spec := range v.Decl.Specs {
				s, ok := spec.(*ast.ValueSpec)
				if !ok || s.Doc != nil || s.Comment != nil {
					continue
				}
				for _, n := range s.Names {
					if n.IsExported() {
						c.Undocumented = append(c.Undocumented, strings.TrimPrefix(of+": "+n.Name, ": "))
					}
				}
			}
		}
	}
}

// String gives the counts on one line, and the names below it.
func (p Package) String() string {
	var b strings.Builder
	fmt.Fprintf(&b, "%-18s %5d words  %4d symbols  %3d undocumented  %4d with an Example of their own, %4d shown in one of their type, %3d without",
		p.Dir, p.Words, p.Symbols, len(p.Undocumented), p.Own, p.Symbols-p.Own-len(p.Unshown), len(p.Unshown))
	for _, list := range []struct {
		what  string
		names []string
	}{{"undocumented", p.Undocumented}, {"without Example", p.Unshown}, {"Example without output", p.Unchecked}} {
		names := slices.Clone(list.names)
		slices.Sort(names)
		for _, n := range names {
			fmt.Fprintf(&b, "\n    %s: %s", list.what, n)
		}
	}
	return b.String()
}
