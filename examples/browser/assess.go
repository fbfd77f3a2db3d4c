// Command browser grades one carcass in a web page or in node. Built for js and
// wasm it gives the page an object "ribface" with two functions of text; built for
// anything else it is a filter from standard input to standard output, with the
// same JSON on both sides.
//
//	examples/browser/build.sh out     # ribface.wasm, wasm_exec.js, index.html
//	node examples/browser/check.mjs out
//	echo '{"carcass": {...}}' | go run ./examples/browser
package main

import (
	"encoding/json"
	"slices"
	"strings"

	"example.com/ribface/grade"
	"example.com/ribface/maturity/cite"
)

// request is what the page sends.
type request struct {
	Edition grade.Edition `json:"edition"` // the current one when it is not set
	Carcass grade.Carcass `json:"carcass"`
}

// answer is what it gets back: a graded carcass, or everything that is wrong.
type answer struct {
	Edition    grade.Edition `json:"edition,omitzero"`
	Maturity   string        `json:"maturity,omitzero"`
	Quality    grade.Quality `json:"quality,omitzero"`
	YieldGrade int           `json:"yield_grade,omitzero"`
	Yield      string        `json:"yield,omitzero"` // exact
	Steps      []cite.Step   `json:"steps,omitzero"`
	Unusual    []string      `json:"unusual,omitzero"`
	Problems   []problem     `json:"problems,omitzero"`
}

// problem says which field was refused: by its path in the request, where it has one,
// and in words.
type problem struct {
	Path    string `json:"path"`
	Field   string `json:"field"`
	Value   string `json:"value"`
	Allowed string `json:"allowed"`
	Detail  string `json:"detail"`
}

// assess grades the carcass of a request.
func assess(in []byte) []byte {
	r, refused, err := read(in)
	if err != nil {
		return marshal(answer{Problems: []problem{{Detail: err.Error()}}})
	}
	a, err := r.Edition.Assess(r.Carcass)
	// What could not be read is missing now, which is not worth telling twice.
	for _, p := range grade.Problems(err) {
		if !slices.ContainsFunc(refused, func(q problem) bool { return q.Path == p.Path }) {
			refused = append(refused, problemOf(p))
		}
	}
	if len(refused) > 0 {
		return marshal(answer{Problems: refused})
	}
	return marshal(answer{
		Edition: r.Edition, Maturity: a.Maturity.String(), Quality: a.Quality,
		YieldGrade: a.Yield.Grade(), Yield: a.Yield.String(), Steps: a.Steps(), Unusual: r.Carcass.Measures.Unusual(),
	})
}

// read reads a request and tells of every field that it cannot read, as if each had
// not been sent; the error is for what is no JSON at all.
func read(in []byte) (r request, refused []problem, err error) {
	var raw struct {
		Edition json.RawMessage `json:"edition"`
		Carcass any             `json:"carcass"`
	}
	if err := json.Unmarshal(in, &raw); err != nil {
		return r, nil, err
	}
	r.Edition = grade.Current
	if len(raw.Edition) > 0 {
		var e grade.Edition
		if err := json.Unmarshal(raw.Edition, &e); err != nil {
			refused = append(refused, problem{Path: "edition", Field: "edition", Value: string(raw.Edition), Allowed: "a year", Detail: err.Error()})
		} else if e != 0 {
			r.Edition = e
		}
	}
	for raw.Carcass != nil {
		b, err := json.Marshal(raw.Carcass)
		if err == nil {
			err = json.Unmarshal(b, &r.Carcass)
		}
		before := len(refused)
		for _, p := range grade.Problems(err) {
			if refused = append(refused, problemOf(p)); !remove(raw.Carcass, p.Path) {
				return r, refused, nil
			}
		}
		if len(refused) == before {
			break
		}
	}
	return r, refused, nil
}

// remove takes a field out of an object by its path.
func remove(v any, path string) bool {
	object, ok := v.(map[string]any)
	if !ok {
		return false
	}
	name, rest, deeper := strings.Cut(path, ".")
	for key, below := range object {
		if strings.EqualFold(key, name) {
			if deeper && remove(below, rest) {
				return true
			}
			delete(object, key)
			return true
		}
	}
	return false
}

func problemOf(p *grade.FieldError) problem {
	return problem{p.Path, p.Field, p.Value, p.Allowed, p.Error()}
}

// choices lists what the page offers to choose from.
func choices() []byte {
	var c struct {
		Editions []grade.Edition  `json:"editions"`
		Sexes    []grade.Sex      `json:"sexes"`
		Firmness []grade.Firmness `json:"firmness"`
		DarkCuts []grade.DarkCut  `json:"dark_cuts"`
		Degrees  []grade.Degree   `json:"degrees"`
	}
	for e := range grade.Editions() {
		c.Editions = append(c.Editions, e)
	}
	for s := range grade.Sexes() {
		c.Sexes = append(c.Sexes, s)
	}
	for d := range grade.Degrees() {
		c.Degrees = append(c.Degrees, d)
	}
	for f := grade.VerySoft; f.IsValid(); f++ {
		c.Firmness = append(c.Firmness, f)
	}
	for d := grade.DarkThird; d.IsValid(); d++ {
		c.DarkCuts = append(c.DarkCuts, d)
	}
	return marshal(c)
}

// marshal writes what always can be written.
func marshal(v any) []byte {
	b, err := json.Marshal(v)
	if err != nil {
		b, _ = json.Marshal(answer{Problems: []problem{{Detail: err.Error()}}})
	}
	return b
}
