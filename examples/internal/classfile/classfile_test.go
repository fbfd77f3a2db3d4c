package classfile_test

import (
	"bytes"
	"io"
	"slices"
	"strings"
	"testing"
	"testing/iotest"

	"example.com/ribface/examples/internal/classfile"
	"example.com/ribface/grade"
	"example.com/ribface/placing"
	"example.com/ribface/placing/class"
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
	if w := g.Class().Posted; w != grade.Pounds(850) {
		t.Errorf("posted %v", w)
	}
	_, _, err = classfile.Read(strings.NewReader(head + "1,ox,A60,A50,Sm40,0.5,12,2,800\n2,steer,Z60,A50,Sm40,0.5,12,2,800\n"))
	if err == nil || !strings.Contains(err.Error(), "line 2") || !strings.Contains(err.Error(), "line 3") {
		t.Errorf("%v, want both lines", err)
	}
}

// TestNames: numbers are named and names numbered, and what is half one and half the
// other is refused.
func TestNames(t *testing.T) {
	names := []string{"101", "102", "7", "blue"}
	for _, tt := range []struct{ words, want string }{
		{"101-7-102", "1-3-2"}, {"7 101=102", "3 1=2"}, {"blue, 7", "4, 3"}, {"1-2-3", "1-2-3"}, {"double-marked", "double-marked"}, {"", ""},
	} {
		if got, err := classfile.Numbers(names, tt.words); err != nil || got != tt.want {
			t.Errorf("%q: %q, %v, want %q", tt.words, got, err, tt.want)
		}
	}
	if got, err := classfile.Numbers(names, "7-1-2"); err == nil || !strings.Contains(err.Error(), "is no exhibit; allowed: the names 101, 102, 7, blue") {
		t.Errorf("%q, %v", got, err)
	}
	if got := classfile.Rename(names, "3 is trimmer than 12; 1=2"); got != "7 is trimmer than 12; 101=102" {
		t.Error(got)
	}
	if got := classfile.Rename(nil, "3 over 1"); got != "3 over 1" {
		t.Error(got)
	}
	o := placing.MustParseOrder("3-1-2")
	for want, names := range map[string][]string{"3-1-2": nil, "7-101-102": names, "lot 3, lot 1, lot 2": {"lot 1", "lot 2", "lot 3"}} {
		if got := classfile.Card(names, o); got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
}

// TestNumberPlacings: rows stay on their lines, and what is no sheet of placings is
// left alone.
func TestNumberPlacings(t *testing.T) {
	names := []string{"101", "102"}
	for in, want := range map[string]string{
		"member,placing\n\nAda,102-101\nBo,blank\nCy\n": "member,placing\n\nAda,2-1\nBo,blank\nCy\n",
		"member,order\nAda,102-101\n":                   "member,order\nAda,102-101\n",
		"":                                              "",
		"placing\n\"102\n":                              "placing\n\"102\n",
	} {
		r, err := classfile.NumberPlacings(names, strings.NewReader(in))
		if err != nil {
			t.Fatal(err)
		}
		got, err := io.ReadAll(r)
		if err != nil || string(got) != want {
			t.Errorf("%q: %q, %v, want %q", in, got, err, want)
		}
	}
	if _, err := classfile.NumberPlacings(names, strings.NewReader("member,placing\n\nAda,102-1\n")); err == nil || !strings.Contains(err.Error(), "line 3, column 2 (placing)") {
		t.Errorf("%v", err)
	}
	if _, err := classfile.NumberPlacings(names, iotest.ErrReader(io.ErrUnexpectedEOF)); err != io.ErrUnexpectedEOF {
		t.Errorf("%v", err)
	}
}

// TestWalk: rankings by number, by name and by scores are one walk; all that is wrong
// is told with its place.
func TestWalk(t *testing.T) {
	names := []string{"101", "102", "103"}
	var want class.Walk
	for i, text := range []string{
		"site,ranking\nfat over rump,2 1=3\nmuscling of loin,3 2 1\n",
		"site,ranking\nfat over rump,102 101=103\nmuscling of loin,103 102 101\n",
		"site,scores\nfat over rump,1 2 1\nmuscling of loin,-1 0 5\n",
	} {
		got, err := classfile.ReadWalk(strings.NewReader(text), 3, names)
		if err != nil {
			t.Fatal(err)
		}
		if i == 0 {
			want = got
		}
		if !slices.Equal(want, got) || len(got) != 2 {
			t.Errorf("%q: %v, want %v", text, got, want)
		}
	}
	_, err := classfile.ReadWalk(strings.NewReader("site,ranking\nfat over tail,1 2 3\nfat over rump,101 2 3\nfat over hip,1 2\nfat over rump,1 2 3\nfat over rump,1 2 3\nfat,1,2\n"), 3, names)
	for _, want := range []string{"line 2, column 1 (site)", "line 3, column 2 (ranking)", "line 4, column 2 (ranking)", "line 6, column 1 (site)", "line 7: 3 cells"} {
		if err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%v, want %s", err, want)
		}
	}
}
