// Package testdata declares the names that the test has values of, and one more.
package testdata

type (
	Good      struct{}
	Hidden    struct{}
	Zero      struct{}
	Odd       struct{}
	Nil       struct{}
	Sequence  struct{}
	Printed   struct{}
	Unequal   struct{}
	Forgotten struct{}
)

type Alias = Good

type Interface interface{ M() }

type inner struct{}
