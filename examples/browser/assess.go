// Command browser grades one carcass in a web page or in node. Built for js and
// wasm it gives the page an object "ribface" with two functions of text; built for
// anything else it is a filter from standard input to standard output, with the
// same JSON on both sides.
//
//	examples/browser/build.sh out     # ribface.wasm, wasm_exec.js, index.html
//	node examples/browser/check.mjs out
//	echo '{"Carcass": {...}}' | go run ./examples/browser
package main

import (
	"encoding/json"
	"errors"

	"example.com/ribface/grade"
	"example.com/ribface/maturity/cite"
)

// request is what the page sends.
type request struct {
	Edition grade.Edition // the current one when it is not set
	Carcass grade.Carcass
}

// answer is what it gets back: a graded carcass, or a Problem.
type answer struct {
	Edition    grade.Edition `json:",omitzero"`
	Maturity   string        `json:",omitzero"`
	Quality    grade.Quality `json:",omitzero"`
	YieldGrade int           `json:",omitzero"`
	Yield      string        `json:",omitzero"` // exact
	Steps      []cite.Step   `json:",omitzero"`
	Unusual    []string      `json:",omitzero"`
	Problem    *problem      `json:",omitzero"`
}

// problem says which field was refused.
type problem struct{ Field, Value, Allowed, Detail string }

// assess grades the carcass of a request.
func assess(in []byte) []byte {
	var r request
	err := json.Unmarshal(in, &r)
	if r.Edition == 0 {
		r.Edition = grade.Current
	}
	var a grade.Assessment
	if err == nil {
		a, err = r.Edition.Assess(r.Carcass)
	}
	out := answer{Problem: problemOf(err)}
	if err == nil {
		out = answer{
			Edition: r.Edition, Maturity: a.Maturity.String(), Quality: a.Quality,
			YieldGrade: a.Yield.Grade(), Yield: a.Yield.String(), Steps: a.Steps(), Unusual: r.Carcass.Measures.Unusual(),
		}
	}
	return marshal(out)
}

func problemOf(err error) *problem {
	var fe *grade.FieldError
	var pe *grade.ParseError
	switch {
	case err == nil:
		return nil
	case errors.As(err, &fe):
		return &problem{fe.Field, fe.Value, fe.Allowed, err.Error()}
	case errors.As(err, &pe):
		return &problem{pe.Kind, pe.Input, pe.Allowed, err.Error()}
	default:
		return &problem{Detail: err.Error()}
	}
}

// choices lists what the page offers to choose from.
func choices() []byte {
	var c struct {
		Editions []grade.Edition
		Sexes    []grade.Sex
		Firmness []grade.Firmness
		DarkCuts []grade.DarkCut
		Degrees  []grade.Degree
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
		b, _ = json.Marshal(answer{Problem: &problem{Detail: err.Error()}})
	}
	return b
}
