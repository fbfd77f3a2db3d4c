// Package vectors makes the conformance vectors under testdata/vectors and reads them
// back: JSON files of inputs and results that an implementation in any language can be
// held against.
//
// The inputs come from the tables of the tests: the golden files, the reference rows,
// samples of the exhaustive sweeps. The results come from the public API. Tests read the
// files and compute them again, by the API here and in each package by the slow second
// implementation of its own tests.
package vectors

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
)

//go:generate go run ./gen

// Object is a JSON object. Every value in it is text, a list of objects or an object:
// numbers are decimal text, so that no reader takes them for floats.
type Object = map[string]any

// Vector is one case.
type Vector struct {
	From    string `json:"from"`              // the table that the inputs come from
	Edition string `json:"edition,omitempty"` // the editions of the standard that it holds for, with spaces between
	In      Object `json:"in"`
	Out     Object `json:"out"`

	// Source and Standing are those of the reference row that the inputs come from, and
	// Agrees is how far the figure printed there agrees with the result: rounding or no,
	// and left out where it does. Other vectors have none of the three: the rule of the
	// file stands behind them.
	Source   string `json:"source,omitempty"`
	Standing string `json:"standing,omitempty"`
	Agrees   string `json:"agrees,omitempty"`
}

// File is one file of vectors.
type File struct {
	Name    string   `json:"-"` // without .json
	About   string   `json:"about"`
	Rule    string   `json:"rule"`    // how the result follows from the inputs
	Source  string   `json:"source"`  // ids of sources.csv
	Vectors []Vector `json:"vectors"` // in a fixed order
	solve   func(Vector) (Object, error)
	inputs  func(*tables) ([]Vector, error)
}

// files lists every file of the folder.
var files = []File{
	maturityFile, ageFile,
	qualityFile, leanFile,
	yieldFile, shortcutFile, ribeyeFile, retailFile, metricFile,
	scoreFile, limitFile, spreadFile,
	classFile,
	spellingFile,
	ladderFile,
}

// Make makes the files from the tables of the folder testdata.
func Make(testdata string) ([]File, error) {
	t, err := readTables(testdata)
	if err != nil {
		return nil, err
	}
	out := slices.Clone(files)
	for i := range out {
		f := &out[i]
		if f.Vectors, err = f.inputs(t); err != nil {
			return nil, fmt.Errorf("%s: %w", f.Name, err)
		}
		for j := range f.Vectors {
			v := &f.Vectors[j]
			if v.Out, err = f.solve(*v); err != nil {
				return nil, fmt.Errorf("%s: %s: %v: %w", f.Name, v.From, v.In, err)
			}
		}
	}
	return out, nil
}

// Read reads a file of the folder of vectors.
func Read(dir, name string) (File, error) {
	i := slices.IndexFunc(files, func(f File) bool { return f.Name == name })
	if i < 0 {
		return File{}, fmt.Errorf("no file of vectors is named %q", name)
	}
	b, err := os.ReadFile(filepath.Join(dir, name+".json"))
	if err != nil {
		return File{}, err
	}
	f := files[i]
	d := json.NewDecoder(bytes.NewReader(b))
	d.DisallowUnknownFields()
	if err := d.Decode(&f); err != nil {
		return File{}, fmt.Errorf("%s: %w", name, err)
	}
	if len(f.Vectors) == 0 {
		return File{}, fmt.Errorf("%s: no vectors", name)
	}
	return f, nil
}

// Check computes a vector again by the public API.
func (f File) Check(v Vector) error {
	got, err := f.solve(v)
	if err != nil {
		return err
	}
	a, err := encode(got)
	if err != nil {
		return err
	}
	b, err := encode(v.Out)
	if err != nil {
		return err
	}
	if !bytes.Equal(a, b) {
		return fmt.Errorf("the library has %s, the file %s", a, b)
	}
	return nil
}

// Names lists the files.
func Names() []string {
	var all []string
	for _, f := range files {
		all = append(all, f.Name)
	}
	return all
}

// encode writes JSON on one line, members of objects in the order of their names.
func encode(v any) ([]byte, error) {
	var b bytes.Buffer
	e := json.NewEncoder(&b)
	e.SetEscapeHTML(false)
	err := e.Encode(v)
	return bytes.TrimSpace(b.Bytes()), err
}

// Bytes is the text of the file, one vector a line.
func (f File) Bytes() ([]byte, error) {
	var b bytes.Buffer
	b.WriteString("{\n")
	for _, head := range [][2]string{{"about", f.About}, {"rule", f.Rule}, {"source", f.Source}} {
		s, err := encode(head[1])
		if err != nil {
			return nil, err
		}
		fmt.Fprintf(&b, "%q: %s,\n", head[0], s)
	}
	b.WriteString("\"vectors\": [\n")
	for i, v := range f.Vectors {
		s, err := encode(v)
		if err != nil {
			return nil, err
		}
		b.Write(s)
		if i < len(f.Vectors)-1 {
			b.WriteByte(',')
		}
		b.WriteByte('\n')
	}
	b.WriteString("]\n}\n")
	return b.Bytes(), nil
}

// Text returns a text of the object; empty where it has none by that name.
func Text(o Object, name string) string {
	s, _ := o[name].(string)
	return s
}

// List returns a list of the object; nil where it has none by that name.
func List(o Object, name string) []Object {
	switch l := o[name].(type) {
	case []Object:
		return l
	case []any: // as encoding/json reads it
		var out []Object
		for _, x := range l {
			m, _ := x.(map[string]any)
			out = append(out, m)
		}
		return out
	}
	return nil
}

// reader reads texts of an object into values and keeps the first error.
type reader struct {
	o   Object
	err error
}

// get reads a text; an object without it leaves the zero value.
func get[T any](r *reader, name string, parse func(string) (T, error)) (v T) {
	s, ok := r.o[name].(string)
	if !ok || r.err != nil {
		return v
	}
	if v, r.err = parse(s); r.err != nil {
		r.err = fmt.Errorf("%s: %w", name, r.err)
	}
	return v
}

// only drops the empty texts of an object.
func only(o Object) Object {
	for k, v := range o {
		if v == "" {
			delete(o, k)
		}
	}
	return o
}

// cut reads the text between two marks.
func cut(s, before, after string) (string, error) {
	_, s, ok := strings.Cut(s, before)
	if ok {
		s, _, ok = strings.Cut(s, after)
	}
	if !ok {
		return "", errors.New("no " + before)
	}
	return strings.TrimSpace(s), nil
}
