package placing

import "example.com/ribface/internal/fault"

// FieldError is the error for a value that a computation refuses. Its fields
// are Path (the field by the JSON names of the input, as "measures.fat"; may be empty),
// Field (as "cuts" or "card"), Value (as given; empty when missing), Allowed
// (what would be accepted) and Err (one of the sentinels below). The packages
// maturity and grade use the same type.
type FieldError = fault.FieldError

// ParseError is the error for text that cannot be read. Its fields are Kind
// (what was wanted), Input (the text, cut at 64 bytes), Part (the wrong piece),
// Allowed and Err. The packages maturity and grade use the same type.
type ParseError = fault.ParseError

// Sentinels for errors.Is.
var (
	ErrMissing  = fault.ErrMissing  // needed and not given, as an exhibit left out of an order
	ErrSyntax   = fault.ErrSyntax   // text without the form of the wanted value
	ErrUnknown  = fault.ErrUnknown  // well formed, but names nothing known
	ErrRange    = fault.ErrRange    // outside what is allowed
	ErrPlaces   = fault.ErrPlaces   // a number with more decimals than the value holds
	ErrRepeated = fault.ErrRepeated // given twice, as an exhibit placed twice
)

// Problems lists every problem that an error of this module tells of, in order,
// however it is wrapped or joined; nil for no error. A [*ParseError] becomes a
// FieldError named for its kind, and any other error one with that error as reason.
func Problems(err error) []*FieldError { return fault.Problems(err) }
