package maturity_test

import (
	"testing"
	"unsafe"

	"example.com/ribface/maturity"
	"example.com/ribface/maturity/cite"
)

// TestSizes holds the sizes of the types that a program keeps by the million.
func TestSizes(t *testing.T) {
	for _, s := range []struct {
		name      string
		got, want uintptr
	}{
		{"Group", unsafe.Sizeof(maturity.Group(0)), 1},
		{"Score", unsafe.Sizeof(maturity.Score(0)), 2},
		{"Months", unsafe.Sizeof(maturity.Months(0)), 2},
		{"Teeth", unsafe.Sizeof(maturity.Teeth(0)), 1},
		{"Rules", unsafe.Sizeof(maturity.Balancing{}), 2},
		{"Evidence", unsafe.Sizeof(maturity.Evidence{}), 8},
	} {
		if s.got != s.want {
			t.Errorf("%s has %d bytes, want %d", s.name, s.got, s.want)
		}
	}
}

// TestNoAllocation holds that nothing on the way to an overall score asks for
// memory.
func TestNoAllocation(t *testing.T) {
	e := maturity.Evidence{Skeletal: maturity.B.At(20), Lean: maturity.A.At(60), Teeth: maturity.Incisors(2), Papers: 40}
	var sink maturity.Score
	buffer := make([]byte, 0, 64)
	for name, f := range map[string]func(){
		"At":      func() { sink += maturity.B.At(20) },
		"Balance": func() { s, _ := maturity.Balance(e.Skeletal, e.Lean); sink += s },
		"Rules":   func() { s, _ := maturity.Balancing{Tens: 1, OldLean: 1}.Balance(e.Skeletal, e.Lean); sink += s },
		"ByAge":   func() { s, _ := maturity.Balancing{}.ByAge(e); sink += s },
		"ByBone":  func() { s, _ := maturity.Balancing{}.ByBone(e); sink += s },
		"Check": func() {
			if e.Check(true) != nil {
				sink++
			}
		},
		"Parse":           func() { s, _ := maturity.Parse("B50"); sink += s },
		"AppendText":      func() { b, _ := e.Skeletal.AppendText(buffer); sink += maturity.Score(len(b)) },
		"FromOssfication": func() { s, _ := maturity.FromOssification(40); sink += s },
		"Groups": func() {
			for g := range maturity.Groups() {
				sink += maturity.Score(g)
			}
		},
	} {
		if n := testing.AllocsPerRun(100, f); n != 0 {
			t.Errorf("%s: %v allocations", name, n)
		}
	}
	_ = sink
}

// TestZeroValues holds what the zero value of every type is documented to be.
func TestZeroValues(t *testing.T) {
	if g := maturity.Group(0); g.IsValid() || g.String() != "unset" {
		t.Errorf("Group: %v", g)
	}
	if s := maturity.Score(0); s.IsValid() || s.String() != "unset" || s.Group() != 0 || s.Units() != 0 || s.Number() != 0 {
		t.Errorf("Score: %v", s)
	}
	if m := maturity.Months(0); m.IsValid() || m.String() != "none" {
		t.Errorf("Months: %v", m)
	}
	if n := maturity.Teeth(0); n.IsValid() || n.String() != "not looked at" || n == maturity.Incisors(0) {
		t.Errorf("Teeth: %v", n)
	}
	if (maturity.Balancing{}) != (maturity.Balancing{Tens: maturity.KeepUnits, OldLean: maturity.OldLeanMayCross}) {
		t.Error("Rules: the zero is not the default")
	}
	if e := (maturity.Evidence{}); e.Check(true) == nil || e.Under30() {
		t.Error("Evidence: the zero passes")
	}
	if p := (maturity.OssificationPoint{}); p.Score.IsValid() || p.Cite != (cite.Citation{}) {
		t.Error("OssificationPoint")
	}
}

// TestMapKeys holds that every type compares with == and serves as a map key.
func TestMapKeys(t *testing.T) {
	keys := map[any]int{
		maturity.A: 1, maturity.A.At(0): 2, maturity.Months(1): 3, maturity.Incisors(0): 4, maturity.TensTowardBone: 5,
		maturity.OldLeanStaysInB: 6, maturity.Balancing{}: 7, maturity.Evidence{}: 8, maturity.OssificationPoint{}: 9,
	}
	if len(keys) != 9 || keys[maturity.A.At(0)] != 2 || keys[maturity.Evidence{}] != 8 {
		t.Errorf("the keys are not apart: %v", keys)
	}
}
