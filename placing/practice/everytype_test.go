package practice_test

import (
	"testing"

	"example.com/ribface/internal/testkit/everytype"
	"example.com/ribface/internal/testkit/faulttest"
	"example.com/ribface/placing/practice"
)

// TestEveryType holds every exported type to what the module promises of all.
func TestEveryType(t *testing.T) {
	c, err := practice.Make(3, practice.Spec{})
	faulttest.Text(t, err, "")
	everytype.Run(t, ".", c, c.Spec, c.Spec.Herd, practice.Spec{Exhibits: -1, Spread: 1 << 30, LeastCut: -5}, herds()[0], practice.Hard, practice.CloseMiddle)
}
