package classfile_test

import (
	"bytes"
	"strings"
	"testing"

	"example.com/ribface/examples/internal/classfile"
	"example.com/ribface/grade"
	"github.com/google/go-cmp/cmp"
)

const head = "id,sex,skeletal,lean,marbling,fat_in,ribeye_sq_in,kph_pct,weight_lb\n"

func TestNumbersAndNames(t *testing.T) {
	for _, tt := range []struct {
		name, rows string
		names      []string
		numbers    []int
	}{
		{"numbers in any order", "2,steer,A60,A50,Sm40,0.5,12,2,800\n1,steer,A60,A50,Sm40,0.5,12,2,800\n", nil, []int{2, 1}},
		{"101 and on", "101,steer,A60,A50,Sm40,0.5,12,2,800\n102,steer,A60,A50,Sm40,0.5,12,2,800\n", []string{"101", "102"}, []int{1, 2}},
		{"names", "red,steer,A60,A50,Sm40,0.5,12,2,800\n7,steer,A60,A50,Sm40,0.5,12,2,800\n", []string{"red", "7"}, []int{1, 2}},
	} {
		exhibits, names, err := classfile.Read(strings.NewReader(head + tt.rows))
		if err != nil {
			t.Fatal(err)
		}
		var numbers []int
		for _, e := range exhibits {
			numbers = append(numbers, e.Number)
		}
		if d := cmp.Diff(tt.names, names); d != "" {
			t.Errorf("%s: names (-want +got):\n%s", tt.name, d)
		}
		if d := cmp.Diff(tt.numbers, numbers); d != "" {
			t.Errorf("%s: numbers (-want +got):\n%s", tt.name, d)
		}
	}
	if a, b := classfile.Name(nil, 3), classfile.Name([]string{"red", "blue"}, 2); a != "3" || b != "blue" {
		t.Errorf("%s, %s", a, b)
	}
}

// TestBack: a class that is written is read back as it was, and graded.
func TestBack(t *testing.T) {
	const rows = "1,steer,A60,A50,Sm40,0.5,12,2,800\n2,heifer,A70,A50,Md40,0.6,12.5,2.5,790\n"
	exhibits, _, err := classfile.Read(strings.NewReader(head + rows))
	if err != nil {
		t.Fatal(err)
	}
	var b bytes.Buffer
	if err := classfile.Write(&b, exhibits); err != nil {
		t.Fatal(err)
	}
	again, _, err := classfile.Read(&b)
	if err != nil {
		t.Fatal(err)
	}
	if d := cmp.Diff(exhibits, again); d != "" {
		t.Errorf("(-want +got):\n%s", d)
	}
	g, err := classfile.Grade(again, grade.Current, grade.Pounds(850))
	if err != nil {
		t.Fatal(err)
	}
	if w, ok := g.Posted(); !ok || w != grade.Pounds(850) {
		t.Errorf("posted %v", w)
	}
	_, _, err = classfile.Read(strings.NewReader(head + "1,ox,A60,A50,Sm40,0.5,12,2,800\n2,steer,Z60,A50,Sm40,0.5,12,2,800\n"))
	if err == nil || !strings.Contains(err.Error(), "line 2") || !strings.Contains(err.Error(), "line 3") {
		t.Errorf("%v, want both lines", err)
	}
}
