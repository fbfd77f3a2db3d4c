// Package testkit holds what the tests of several packages share.
package testkit

import "os"

// Exhaustive reports whether RIBFACE_EXHAUSTIVE is 1. Tests that count over a whole
// grid then go through all of it; without it they take a sample of the same grid,
// large enough to fail. .ci/run always sets it. A test that runs another program asks
// testing.Short whether it may.
func Exhaustive() bool { return os.Getenv("RIBFACE_EXHAUSTIVE") == "1" }
