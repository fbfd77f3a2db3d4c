package everytype_test

import (
	"io"
	"iter"
	"strings"
	"testing"

	"example.com/ribface/internal/everytype"
)

type (
	Good     struct{ n int }
	Hidden   struct{ n int }
	Zero     struct{ At *int }
	Odd      struct{ Names []string }
	Nil      struct{ n int }
	Sequence struct{ n int }
	Printed  struct{ Next *Printed }
	Unequal  struct{ n int }
)

func (g Good) Equal(h Good) bool { return g == h }
func (g *Good) Set(n int, r io.Reader) {
	if g != nil {
		g.n = n
		_, _ = r.Read(nil)
	}
}
func (g Good) All(yield func(int) bool)   { yield(g.n) }
func (z Zero) Get() int                   { return *z.At }
func (o Odd) First() string               { return o.Names[0] }
func (n *Nil) Get() int                   { return n.n }
func (n Nil) Equal(m Nil) bool            { return n == m }
func (s Sequence) Equal(t Sequence) bool  { return s == t }
func (s Sequence) All() iter.Seq[int]     { return func(func(int) bool) { panic("no sequence") } }
func (p Printed) String() string          { return p.Next.String() }
func (u Unequal) Equal(Unequal) bool      { return false }
func (p *Nil) UnmarshalText([]byte) error { p.n = 1; return nil }

// TestBroken holds that each promise that is broken is found, and nothing else.
func TestBroken(t *testing.T) {
	n := 1
	var got []string
	for _, err := range everytype.Broken("testdata", Good{}, Hidden{}, Zero{&n}, Odd{[]string{"a"}}, &Nil{}, Sequence{}, Printed{}, Unequal{}) {
		line, _, _ := strings.Cut(err.Error(), "\n")
		if len(got) == 0 || got[len(got)-1] != line {
			got = append(got, line)
		}
	}
	all := "\n" + strings.Join(got, "\n") + "\n"
	for _, want := range []string{
		"\neverytype_test.Hidden.cmp.Diff: panic: cannot handle unexported field",
		"\n*everytype_test.Zero.Get: panic: runtime error: invalid memory address",
		"\n*everytype_test.Odd.First: panic: runtime error: index out of range [0]",
		"\n*everytype_test.Nil.Get: panic: runtime error: invalid memory address",
		"\n*everytype_test.Sequence.All: panic: no sequence",
		"\n*everytype_test.Printed.String: panic: ",
		"\neverytype_test.Printed.fmt: panic: %!v(PANIC=",
		"\neverytype_test.Unequal: a value that does not equal itself:",
		"\nForgotten: no value of it to try\n",
	} {
		if !strings.Contains(all, want) {
			t.Errorf("not found: %q in%s", want, all)
		}
	}
	for _, not := range []string{"Good", "Alias", "Interface", "inner", "UnmarshalText"} {
		if strings.Contains(all, not) {
			t.Errorf("%s is told of in%s", not, all)
		}
	}
	for _, dir := range []string{"none", "."} {
		if errs := everytype.Broken(dir); len(errs) != 1 || !strings.Contains(errs[0].Error(), "no exported type") {
			t.Errorf("%s: %v", dir, errs)
		}
	}
}
