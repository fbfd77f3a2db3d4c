package golden

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// record is a test that keeps what is said against it.
type record struct {
	testing.TB
	said string
}

func (r *record) Helper() {}

func (r *record) Errorf(format string, args ...any) { r.said += fmt.Sprintf(format, args...) }

func (r *record) Fatal(args ...any) { panic(fmt.Sprint(args...)) }

func TestCompare(t *testing.T) {
	path := filepath.Join(t.TempDir(), "text")
	if err := os.WriteFile(path, []byte("one\ntwo\n"), 0o644); err != nil {
		t.Fatal(err)
	}
	for _, tt := range []struct {
		name, got, want string
	}{
		{"the same text passes", "one\ntwo\n", ""},
		{"a line end counts", "one\ntwo", "-update-golden"},
		{"another text is shown with the way to accept it", "one\n2\n", "text; to accept: go test -update-golden (-want +got):"},
	} {
		r := &record{TB: t}
		Compare(r, path, tt.got)
		if (r.said == "") != (tt.want == "") || !strings.Contains(r.said, tt.want) {
			t.Errorf("%s: says %q, want %q in it", tt.name, r.said, tt.want)
		}
	}
}

func TestNoFile(t *testing.T) {
	defer func() {
		if recover() == nil {
			t.Error("a file that is not there is taken")
		}
	}()
	Compare(&record{TB: t}, filepath.Join(t.TempDir(), "none"), "")
}
