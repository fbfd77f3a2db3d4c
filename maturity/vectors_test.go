package maturity_test

import (
	"testing"

	"example.com/ribface/internal/refs/vectors"
	"example.com/ribface/maturity"
)

// balancings are the choices in balancing, by the name that a result has.
var balancings = map[string]maturity.Balancing{
	"default":             {},
	"tens_toward_bone":    {Tens: maturity.TensTowardBone},
	"tens_toward_lean":    {Tens: maturity.TensTowardLean},
	"old_lean_stays_in_b": {OldLean: maturity.OldLeanStaysInB},
}

// TestVectors holds the published vectors of balancing and age to slowBalance.
func TestVectors(t *testing.T) {
	units := func(o vectors.Object, name string) int {
		return int(maturity.MustParse(vectors.Text(o, name)) - maturity.A.At(0))
	}
	f, err := vectors.Read("../testdata/vectors", "maturity")
	if err != nil {
		t.Fatal(err)
	}
	for _, v := range f.Vectors {
		for name := range v.Out {
			rules, ok := balancings[name]
			if want := slowBalance(units(v.In, "skeletal"), units(v.In, "lean"), rules); !ok || units(v.Out, name) != want {
				t.Errorf("%v: %s, slowly A00 and %d units", v, name, want)
			}
		}
	}
	if f, err = vectors.Read("../testdata/vectors", "maturity-by-age"); err != nil {
		t.Fatal(err)
	}
	young := 0
	for _, v := range f.Vectors {
		want := slowBalance(units(v.In, "skeletal"), units(v.In, "lean"), maturity.Balancing{})
		teeth, months := vectors.Text(v.In, "incisors"), vectors.Text(v.In, "months")
		if teeth == "0" || teeth == "1" || teeth == "2" || len(months) == 1 || len(months) == 2 && months < "30" {
			if units(v.In, "skeletal") < 300 {
				want = min(want, 99)
				young++
			}
		}
		if units(v.Out, "overall") != want {
			t.Errorf("%v: slowly A00 and %d units", v, want)
		}
	}
	if young == 0 || young == len(f.Vectors) {
		t.Errorf("%d of %d young", young, len(f.Vectors))
	}
}
