// Package fault holds the error types shared by every package of the module.
// The packages maturity, grade and placing export them under their own names as
// aliases, so that a caller can match an error with errors.As and errors.Is
// wherever it came from.
package fault

import (
	"cmp"
	"errors"
	"strconv"
	"strings"
)

// The reasons an input can be refused. Every error of the module wraps one.
var (
	// ErrMissing marks a value that is needed and was not given.
	ErrMissing = errors.New("missing")
	// ErrSyntax marks text that does not have the form of the wanted value.
	ErrSyntax = errors.New("bad syntax")
	// ErrUnknown marks text or a code that is well formed but names nothing known.
	ErrUnknown = errors.New("unknown")
	// ErrRange marks a value outside what is allowed.
	ErrRange = errors.New("out of range")
	// ErrPlaces marks a number with more decimals than the value holds.
	ErrPlaces = errors.New("too many places")
	// ErrRepeated marks a value given twice where it may stand once.
	ErrRepeated = errors.New("repeated")
)

// FieldError says which field was refused, the value it had and what is allowed.
type FieldError struct {
	Path    string // where the field stands in the input, by its JSON names: "exhibits[2].measures.fat"; empty where there is no input to point into
	Field   string // the field, in the words of the trade: "fat", "exhibit 3: ribeye"
	Value   string // the value as given; empty when it is missing
	Allowed string // what would be accepted
	Err     error  // one of the sentinels, or the error below it
}

// Error gives field, value, reason and what is allowed, in one line.
func (e *FieldError) Error() string {
	if e == nil {
		return "no error"
	}
	return line(cmp.Or(e.Field, "value"), e.Value, reason(e.Err), e.Allowed)
}

// line is the text of an error.
func line(field, value, reason, allowed string) string {
	if value != "" {
		value += ": "
	}
	if allowed != "" {
		allowed = "; allowed: " + allowed
	}
	return field + ": " + value + reason + allowed
}

func reason(err error) string {
	if err == nil {
		return "refused"
	}
	return err.Error()
}

// Unwrap returns the reason.
func (e *FieldError) Unwrap() error {
	if e == nil {
		return nil
	}
	return e.Err
}

// Equal reports whether two errors say the same of the same field, with the same
// reason.
func (e FieldError) Equal(f FieldError) bool {
	return e.Path == f.Path && e.Field == f.Field && e.Value == f.Value && e.Allowed == f.Allowed && reason(e.Err) == reason(f.Err)
}

// In is [At] without a path.
func In(name string, err error) error { return At("", name, err) }

// At returns the error with every field in it put under a wider one: path
// "exhibits[2]" and name "exhibit 3" turn "measures.fat" and "fat" into
// "exhibits[2].measures.fat" and "exhibit 3: fat". Either may be empty and is then
// left out. An error that is no FieldError becomes one; nil stays nil.
func At(path, name string, err error) error {
	var all []error
	for _, p := range Problems(err) {
		c := *p
		c.Path = join(path, p.Path, ".")
		c.Field = join(name, p.Field, ": ")
		all = append(all, &c)
	}
	return Join(all...)
}

func join(outer, inner, between string) string {
	switch {
	case outer == "":
		return inner
	case inner == "":
		return outer
	case between == "." && inner[0] == '[':
		return outer + inner
	}
	return outer + between + inner
}

// Join returns one error for all that are not nil: nil for none, the error itself
// for one.
func Join(all ...error) error {
	var first error
	n := 0
	for _, err := range all {
		if err != nil {
			first = err
			n++
		}
	}
	if n > 1 {
		return errors.Join(all...)
	}
	return first
}

// Problems lists every problem that an error tells of, in order, however it is
// wrapped or joined. A [ParseError] becomes a FieldError named for its kind; an
// error that is neither becomes one that holds its text as the reason.
func Problems(err error) []*FieldError {
	switch e := err.(type) {
	case nil:
		return nil
	case *FieldError:
		if e == nil {
			return nil
		}
		return []*FieldError{e}
	case *ParseError:
		if e == nil {
			return nil
		}
		return []*FieldError{{Field: e.Kind, Value: quote(e.Input), Allowed: e.Allowed, Err: e.Err}}
	case interface{ Unwrap() []error }:
		var all []*FieldError
		for _, below := range e.Unwrap() {
			all = append(all, Problems(below)...)
		}
		return all
	}
	var fe *FieldError
	var pe *ParseError
	if errors.As(err, &fe) || errors.As(err, &pe) {
		return Problems(errors.Unwrap(err))
	}
	return []*FieldError{{Err: err}}
}

// ParseError says which text could not be read as which kind of value.
type ParseError struct {
	Kind    string // what was wanted: "marbling", "thickness"
	Input   string // the text, cut at 64 bytes
	Part    string // the piece of it that is wrong; empty when it is the whole
	Allowed string // what would be accepted
	Err     error  // one of the sentinels
}

// Error gives kind, text, wrong part, reason and what is allowed, in one line.
func (e *ParseError) Error() string {
	if e == nil {
		return "no error"
	}
	why := reason(e.Err)
	if e.Part != "" && e.Part != e.Input {
		why += " at " + quote(e.Part)
	}
	return line(cmp.Or(e.Kind, "text"), quote(e.Input), why, e.Allowed)
}

// Unwrap returns the reason.
func (e *ParseError) Unwrap() error {
	if e == nil {
		return nil
	}
	return e.Err
}

// Equal reports whether two errors say the same of the same text, with the same
// reason.
func (e ParseError) Equal(f ParseError) bool {
	return e.Kind == f.Kind && e.Input == f.Input && e.Part == f.Part && e.Allowed == f.Allowed && reason(e.Err) == reason(f.Err)
}

// Parse makes a ParseError that does not keep the caller's text alive.
func Parse(kind, input, part, allowed string, err error) error {
	return &ParseError{Kind: kind, Input: Clip(input), Part: Clip(part), Allowed: allowed, Err: err}
}

const most = 64

// Clip cuts a text at 64 bytes and frees it of what it was cut from.
func Clip(s string) string {
	if len(s) > most {
		s = s[:most]
	}
	return strings.Clone(s)
}

func quote(s string) string { return strconv.QuoteToASCII(s) }
