package season

import "example.com/ribface/internal/fault"

// FieldError is the error for a value that is refused. The packages maturity,
// grade, placing and cards use the same type.
type FieldError = fault.FieldError

// ParseError is the error for text that cannot be read. The packages maturity,
// grade, placing and cards use the same type.
type ParseError = fault.ParseError

// Sentinels for errors.Is.
var (
	ErrMissing  = fault.ErrMissing  // needed and not given
	ErrSyntax   = fault.ErrSyntax   // text without the form of the wanted value
	ErrUnknown  = fault.ErrUnknown  // well formed, but names nothing known
	ErrRange    = fault.ErrRange    // outside what is allowed
	ErrRepeated = fault.ErrRepeated // given twice, as two values of one judge for one exhibit
)
