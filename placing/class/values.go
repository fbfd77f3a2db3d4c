package class

import (
	"example.com/ribface/grade"
	"example.com/ribface/internal/fixed"
)

// yield is a number of grades in units of 1e-8, for sums and differences.
type yield int64

const oneGrade yield = grade.OneGrade

func of(y grade.Yield) yield { return yield(y.Units()) }

// String gives the number in its shortest form.
func (y yield) String() string { return fixed.String(int64(y), 8) }
