package maturity_test

import (
	"bytes"
	"fmt"
	"testing"

	"example.com/ribface/internal/testkit/golden"
	"example.com/ribface/maturity"
)

// TestGolden sweeps balancing, age, ossification and reading.
func TestGolden(t *testing.T) {
	var b bytes.Buffer
	points := func(yield func(maturity.Score) bool) {
		for g := range maturity.Groups() {
			for _, u := range []int{0, 15, 40, 55, 99} {
				if !yield(g.At(u)) {
					return
				}
			}
		}
		yield(maturity.E.At(100))
	}
	fmt.Fprintln(&b, "# balance: skeletal lean: units kept, tens toward bone, tens toward lean, old lean stays in B")
	for bone := range points {
		for lean := range points {
			fmt.Fprintf(&b, "%v %v:", bone, lean)
			for _, r := range []maturity.Balancing{{}, {Tens: maturity.TensTowardBone}, {Tens: maturity.TensTowardLean}, {OldLean: maturity.OldLeanStaysInB}} {
				s, err := r.Balance(bone, lean)
				fmt.Fprint(&b, " ", s)
				if err != nil {
					fmt.Fprint(&b, " ", err)
				}
			}
			fmt.Fprintln(&b)
		}
	}
	fmt.Fprintln(&b, "# score: number, months, ossification")
	for s := maturity.A.At(0); s <= maturity.E.At(100); s += 7 {
		months, ok := s.Months()
		percent, _ := s.Ossification()
		fmt.Fprintf(&b, "%v: %d, %v %v, %d\n", s, s.Number(), months, ok, percent)
	}
	fmt.Fprintln(&b, "# percent ossified")
	for p := -1; p <= 101; p += 3 {
		s, err := maturity.FromOssification(p)
		fmt.Fprintf(&b, "%d: %v %v\n", p, s, err)
	}
	fmt.Fprintln(&b, "# steps by age")
	for _, e := range []maturity.Evidence{
		{Skeletal: maturity.B.At(60), Lean: maturity.A.At(20)},
		{Skeletal: maturity.C.At(50), Lean: maturity.A.At(20)},
		{Skeletal: maturity.C.At(10), Lean: maturity.C.At(10), Teeth: maturity.Incisors(2)},
		{Skeletal: maturity.C.At(10), Lean: maturity.C.At(10), Teeth: maturity.Incisors(3)},
		{Skeletal: maturity.D.At(10), Lean: maturity.B.At(10), Papers: 29},
		{Skeletal: maturity.A.At(10)},
		{Skeletal: maturity.A.At(10), Lean: maturity.A.At(120)},
		{},
	} {
		s, err := maturity.Balancing{}.ByAge(e)
		fmt.Fprintf(&b, "%v %v\n", s, err)
		for _, step := range (maturity.Balancing{}).Steps(e, true) {
			fmt.Fprintln(&b, " ", step)
		}
	}
	fmt.Fprintln(&b, "# reading")
	for _, in := range []string{"A00", "A100", "E100", "C5", "A7x", "F20", "A101", "a50", "", "A 50", "B99", "A(150)"} {
		s, err := maturity.Parse(in)
		fmt.Fprintf(&b, "%q: %v %v\n", in, s, err)
	}
	golden.Compare(t, "../testdata/golden/maturity.txt", b.String())
}
