package grade

import "example.com/ribface/internal/fault"

// FieldError is the error for a value that a computation refuses. Its fields
// are Path (the field by the JSON names of the input, as "measures.fat"; may be empty),
// Field (as "fat" or "ribeye"), Value (as given; empty when missing),
// Allowed (what would be accepted) and Err (one of the sentinels below). The
// packages maturity and placing use the same type.
type FieldError = fault.FieldError

// ParseError is the error for text that cannot be read. Its fields are Kind
// (what was wanted), Input (the text, cut at 64 bytes), Part (the wrong piece),
// Allowed and Err. The packages maturity and placing use the same type.
type ParseError = fault.ParseError

// Sentinels for errors.Is. Bad syntax and an unknown value are different: "Sm4"
// does not have the form of a marbling score, "Xx40" has it and names no degree.
var (
	ErrMissing = fault.ErrMissing // needed and not given
	ErrSyntax  = fault.ErrSyntax  // text without the form of the wanted value
	ErrUnknown = fault.ErrUnknown // well formed, but names nothing known
	ErrRange   = fault.ErrRange   // outside what is allowed
	ErrPlaces  = fault.ErrPlaces  // a number with more decimals than the value holds

	ErrRepeated = fault.ErrRepeated // given twice where it may stand once
)

// Problems lists every problem that an error of this module tells of, in order,
// however it is wrapped or joined; nil for no error. A [*ParseError] becomes a
// FieldError named for its kind, and any other error one with that error as reason.
func Problems(err error) []*FieldError { return fault.Problems(err) }
