package testkit_test

import (
	"encoding/json"
	"errors"
	"fmt"
	"iter"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"example.com/ribface/internal/fault"
	"example.com/ribface/internal/testkit/everytype"
	"github.com/google/go-cmp/cmp"
)

// source is the Go file that stands for the package of the types below.
const source = `package fake

type Good struct{}
type hidden struct{}
type Asker interface{}
type Alias = Good
type ( Generic[T any] struct{} )
`

func fake(t *testing.T, source string) string {
	t.Helper()
	dir := t.TempDir()
	if err := os.WriteFile(filepath.Join(dir, "fake.go"), []byte(source), 0o600); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(filepath.Join(dir, "fake_test.go"), []byte("package fake\n\ntype InTest int\n"), 0o600); err != nil {
		t.Fatal(err)
	}
	return dir
}

func TestTypes(t *testing.T) {
	got, err := everytype.Types(fake(t, source))
	if err != nil {
		t.Fatal(err)
	}
	if d := cmp.Diff([]string{"Alias", "Generic", "Good"}, got); d != "" {
		t.Errorf("(-want +got)\n%s", d)
	}
	if _, err := everytype.Types(t.TempDir()); err == nil {
		t.Error("no error without files")
	}
}

// Good keeps every promise.
type Good struct {
	N    int    `json:"n"`
	Note string `json:"note"`
}

func (g Good) All() iter.Seq[int] {
	return func(yield func(int) bool) {
		for i := range g.N {
			if !yield(i) {
				return
			}
		}
	}
}
func (g Good) Forever() iter.Seq[int] {
	return func(yield func(int) bool) {
		for yield(0) {
		}
	}
}
func (g *Good) Name(of func(int) bool, more ...Good) string {
	if g == nil || of(1) {
		return ""
	}
	return g.Note + fmt.Sprint(len(more))
}
func (g Good) MustPanic()      { panic("it must") }
func (g *Good) Scan(any) error { g.N = 0; return errors.New("nothing to scan") }

// The types that break one promise each.
type (
	Nil      struct{ N *int }
	Pointer  struct{ N int }
	Argument struct{ N int }
	Prints   struct{ n int }
	Hidden   struct{ n int }
	Silent   struct{ n int }
	Upper    struct{ Name int }
	Untagged struct {
		Name int `json:"theName"`
	}
	Lossy   struct{ N int }
	Unread  struct{ N int }
	Loop    struct{ N int }
	Failing struct{ N int }
	Lax     struct {
		Parts []Good `json:"parts"`
	}
	Written struct {
		fault.Worker
		_ int
	}
	Works struct {
		fault.Worker
		_ func()
	}
)

func (n Nil) Value() int                    { return *n.N }
func (p *Pointer) Value() int               { return p.N }
func (Argument) Of(n []int) int             { return n[0] }
func (Prints) Format(fmt.State, rune)       { panic("no") }
func (Prints) Equal(Prints) bool            { return true }
func (Silent) Equal(Silent) bool            { return false }
func (Lossy) MarshalJSON() ([]byte, error)  { return []byte("1"), nil }
func (l *Lossy) UnmarshalJSON([]byte) error { l.N = 7; return nil }
func (Unread) MarshalJSON() ([]byte, error) { return []byte("1"), nil }
func (*Unread) UnmarshalJSON([]byte) error  { return errors.New("no") }
func (Loop) All() iter.Seq[int] {
	return func(yield func(int) bool) { yield(0); yield(1); panic("turn") }
}
func (Failing) MarshalJSON() ([]byte, error) { panic("json") }
func (l *Lax) UnmarshalJSON(b []byte) error {
	type plain Lax
	return json.Unmarshal(b, (*plain)(l))
}
func (Written) MarshalJSON() ([]byte, error) { return []byte("{}"), nil }

func TestBroken(t *testing.T) {
	one := 1
	for _, tt := range []struct {
		value any
		want  string // a part of what is said; empty for nothing
	}{
		{Good{N: 200, Note: "a"}, ""},
		{Nil{&one}, "Value() panics"},
		{Pointer{1}, "Value of a nil pointer() panics"},
		{Argument{1}, "Of([]) panics"},
		{Prints{1}, "%v of a testkit_test.Prints panics"},
		{Hidden{1}, "cmp.Diff of testkit_test.Hidden panics"},
		{Silent{1}, "cmp.Diff of the same testkit_test.Silent"},
		{Upper{1}, `Name has the JSON name ""`},
		{Untagged{1}, `Name has the JSON name "theName"`},
		{Lossy{1}, "comes back as another value"},
		{Unread{1}, "is not read back: no"},
		{Loop{1}, "All() panics: turn"},
		{Failing{1}, "JSON of testkit_test.Failing panics: json"},
		{Lax{[]Good{{}}}, `with a name that is none, {"parts":[{"misspelled":{},"n":0,"note":""}]}, is read`},
		{Written{}, "JSON of a testkit_test.Written is {}, <nil>"},
		{&Works{}, ""},
		{func(n int) int { return 1 / n }, "panics: runtime error: integer divide by zero"},
	} {
		name := strings.TrimPrefix(fmt.Sprintf("%T", tt.value), "*")
		_, name, _ = strings.Cut(name, ".")
		if name == "" {
			name = "Good"
		}
		values := []any{tt.value}
		if name == "Good" {
			values = append(values, Good{})
		}
		said := errors.Join(everytype.Check(fake(t, "package fake\n\ntype "+name+" int\n"), values...)...)
		switch {
		case tt.want == "" && said != nil:
			t.Errorf("%T: %v", tt.value, said)
		case tt.want != "" && (said == nil || !strings.Contains(said.Error(), tt.want)):
			t.Errorf("%T: %v; want %q in it", tt.value, said, tt.want)
		}
	}
	if errs := everytype.Check(fake(t, "package fake\n\ntype Good int\ntype Other int\n"), Good{}); len(errs) != 1 || !strings.Contains(errs[0].Error(), "no value of the exported type Other") {
		t.Errorf("a type without value: %v", errs)
	}
}
