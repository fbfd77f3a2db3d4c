package roundtrip

import "testing"

// Check is [Value] for a value that has text and [Unwritable] for one that has
// none.
func Check[T Text, P Pointer[T]](v T, hasText bool, parse func(string) (T, error)) error {
	if hasText {
		return Value[T, P](v, parse)
	}
	return Unwritable(v, parse)
}

// Fuzz runs [Input], [JSON] and [Column] over arbitrary text, with receivers
// that hold the zero value and kept.
func Fuzz[T Text, P Pointer[T]](f *testing.F, parse func(string) (T, error), kept T, seeds ...string) {
	for _, s := range append(seeds, "", "unset", "none", "0", "\xff", `"`, "null", "1e9") {
		f.Add(s)
	}
	var zero T
	f.Fuzz(func(t *testing.T, s string) {
		for _, before := range []T{zero, kept} {
			errs := []error{
				Input[T, P](s, before, parse),
				JSON[T, P]([]byte(s), before, parse),
				Column[T, P](nil, before),
				Column[T, P](float64(len(s)), before),
				Column[T, P](len(s) > 3, before),
			}
			for _, err := range errs {
				if err != nil {
					t.Error(err)
				}
			}
		}
	})
}
