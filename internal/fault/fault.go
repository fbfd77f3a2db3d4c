// Package fault holds the error types shared by every package of the module.
// The public packages export them under their own names as aliases, so that a
// caller can match an error with errors.As and errors.Is wherever it came from.
package fault

import (
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
	// ErrRange marks a value outside what is allowed, or finer than the unit holds.
	ErrRange = errors.New("out of range")
	// ErrRepeated marks a value given twice where it may stand once.
	ErrRepeated = errors.New("repeated")
)

// FieldError says which field was refused, the value it had and what is allowed.
type FieldError struct {
	Field   string // the field, in the words of the trade: "fat", "exhibit 3: ribeye"
	Value   string // the value as given; empty when it is missing
	Allowed string // what would be accepted
	Err     error  // one of the sentinels, or the error below it
}

// Error gives field, value, reason and what is allowed, in one line.
func (e *FieldError) Error() string {
	var b strings.Builder
	b.WriteString(e.Field)
	b.WriteString(": ")
	if e.Value != "" {
		b.WriteString(e.Value)
		b.WriteString(": ")
	}
	b.WriteString(e.Err.Error())
	if e.Allowed != "" {
		b.WriteString("; allowed: ")
		b.WriteString(e.Allowed)
	}
	return b.String()
}

// Unwrap returns the reason.
func (e *FieldError) Unwrap() error { return e.Err }

// In returns the error with its field put under a wider one, as
// "exhibit 3: fat". An error that is no FieldError becomes one.
func In(outer string, err error) error {
	if err == nil {
		return nil
	}
	var fe *FieldError
	if errors.As(err, &fe) {
		c := *fe
		c.Field = outer + ": " + fe.Field
		return &c
	}
	return &FieldError{Field: outer, Err: err}
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
	var b strings.Builder
	b.WriteString(e.Kind)
	b.WriteString(": ")
	b.WriteString(quote(e.Input))
	b.WriteString(": ")
	b.WriteString(e.Err.Error())
	if e.Part != "" && e.Part != e.Input {
		b.WriteString(" at ")
		b.WriteString(quote(e.Part))
	}
	if e.Allowed != "" {
		b.WriteString("; allowed: ")
		b.WriteString(e.Allowed)
	}
	return b.String()
}

// Unwrap returns the reason.
func (e *ParseError) Unwrap() error { return e.Err }

// Parse makes a ParseError that does not keep the caller's text alive.
func Parse(kind, input, part, allowed string, err error) error {
	return &ParseError{Kind: kind, Input: clip(input), Part: clip(part), Allowed: allowed, Err: err}
}

const most = 64

func clip(s string) string {
	if len(s) > most {
		s = s[:most]
	}
	return strings.Clone(s)
}

func quote(s string) string { return strconv.QuoteToASCII(s) }
