package vectors

import (
	"bytes"
	"errors"
	"fmt"
	"strings"
)

// maker makes one file of vectors.
type maker struct {
	File
	solve  func(Vector) (Object, error)
	inputs func(*tables) ([]Vector, error)
}

// files lists every file of the folder.
var files = []maker{
	maturityFile, ageFile,
	qualityFile, leanFile,
	yieldFile, shortcutFile, ribeyeFile, retailFile, metricFile,
	scoreFile, limitFile, spreadFile,
	classFile,
	spellingFile,
	ladderFile,
}

// makeFiles makes the files from the tables of the folder testdata.
func makeFiles(testdata string) ([]File, error) {
	t, err := readTables(testdata)
	if err != nil {
		return nil, err
	}
	var out []File
	for _, m := range files {
		f := m.File
		if f.Vectors, err = m.inputs(t); err != nil {
			return nil, fmt.Errorf("%s: %w", f.Name, err)
		}
		for j := range f.Vectors {
			v := &f.Vectors[j]
			if v.Out, err = m.solve(*v); err != nil {
				return nil, fmt.Errorf("%s: %s: %v: %w", f.Name, v.From, v.In, err)
			}
		}
		out = append(out, f)
	}
	return out, nil
}

// check computes a vector again by the public API.
func (m maker) check(v Vector) error {
	got, err := m.solve(v)
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
