package class

import "example.com/ribface/internal/fault"

// FieldError is the error for a value that a computation refuses. Its fields
// are Field (as "exhibit 3: fat"), Value (as given; empty when missing), Allowed
// (what would be accepted) and Err (one of the sentinels below). The packages
// maturity, grade and placing use the same type.
type FieldError = fault.FieldError

// ParseError is the error for text that cannot be read. Its fields are Kind
// (what was wanted), Input (the text, cut at 64 bytes), Part (the wrong piece),
// Allowed and Err. The packages maturity, grade and placing use the same type.
type ParseError = fault.ParseError

// Sentinels for errors.Is.
var (
	ErrMissing  = fault.ErrMissing  // needed and not given, as an exhibit left out of a ranking
	ErrSyntax   = fault.ErrSyntax   // text without the form of the wanted value
	ErrUnknown  = fault.ErrUnknown  // well formed, but names nothing known
	ErrRange    = fault.ErrRange    // outside what is allowed
	ErrRepeated = fault.ErrRepeated // given twice, as a site walked twice
)
