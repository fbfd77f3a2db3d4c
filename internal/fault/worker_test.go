package fault_test

import (
	"encoding/json"
	"testing"

	"example.com/ribface/internal/fault"
	"example.com/ribface/internal/testkit/faulttest"
)

// TestWorker holds what is said of the JSON of what works, and that it can be copied.
func TestWorker(t *testing.T) {
	type worker = fault.Worker
	type tally struct {
		worker
		N int
	}
	one := &tally{N: 7}
	copied := *one
	for _, v := range []any{one, copied, []tally{copied}} {
		_, err := json.Marshal(v)
		faulttest.All(t, "a tally", err, " | what works and is no value: unknown; allowed: in its place what it was made of, or what it gives")
	}
}
