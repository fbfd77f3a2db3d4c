// Package vectors reads the conformance vectors under testdata/vectors: JSON files of
// inputs and results that an implementation in any language can be held against.
//
// The tests here make the files. The inputs come from the tables of the tests: the golden
// files, the reference rows, samples of the exhaustive sweeps. The results come from the
// public API. Tests read the files and compute them again, by the API here and in each
// package by the slow second implementation of its own tests.
package vectors

import (
	"bytes"
	"encoding/json"
	"fmt"
	"os"
	"path/filepath"
)

//go:generate go test -run TestFilesAreFresh -update-golden .

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
}

// Read reads a file of the folder of vectors.
func Read(dir, name string) (File, error) {
	b, err := os.ReadFile(filepath.Join(dir, name+".json"))
	if err != nil {
		return File{}, err
	}
	f := File{Name: name}
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
