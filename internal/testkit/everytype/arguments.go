package everytype

import (
	"bytes"
	"errors"
	"io"
	"math"
	"reflect"
	"strings"
)

// state is a fmt.State that asks for something.
type state struct {
	bytes.Buffer
	width, precision int
	flags            string
}

func (s *state) Width() (int, bool)     { return s.width, s.width != 0 }
func (s *state) Precision() (int, bool) { return s.precision, s.precision >= 0 }
func (s *state) Flag(c int) bool        { return strings.IndexByte(s.flags, byte(c)) >= 0 }

// odd are arguments for parameters of the basic kinds and of the interfaces of the
// standard library, each where it fits.
func odd() []any {
	return []any{
		&state{precision: -1}, &state{width: 8, precision: 1, flags: "-+#"}, &state{precision: 3}, strings.NewReader("a,b\n1,2\n"), io.Discard, errors.New("odd"),
		[]byte(nil), []byte(""), []byte("1"), []byte(`"1"`), []byte("null"), []byte("{"), []byte(`{"a":1}`), []byte("\xff"),
		"", "1", "a", "unset", "\xff", strings.Repeat("x", 100), 'v', 'f', 'q', 'd',
		0, 1, -1, 7, math.MaxInt, math.MinInt, 0.0, 1.5, math.NaN(), math.Inf(1), math.Inf(-1), true, false,
	}
}

// arguments are values for a parameter: the zero value, the values of the type among
// those of the test, and odd ones.
func (c *checker) arguments(t reflect.Type) []reflect.Value {
	var all []reflect.Value
	switch t.Kind() {
	case reflect.Func:
		// What is called back gets zero values, so that a predicate says no.
		return []reflect.Value{reflect.MakeFunc(t, func([]reflect.Value) []reflect.Value {
			var out []reflect.Value
			for i := range t.NumOut() {
				out = append(out, reflect.Zero(t.Out(i)))
			}
			return out
		})}
	case reflect.Interface:
		for _, v := range odd() {
			if reflect.TypeOf(v).AssignableTo(t) {
				all = append(all, reflect.ValueOf(v).Convert(t))
			}
		}
		for _, of := range c.types {
			if of.AssignableTo(t) {
				all = append(all, c.values[of][len(c.values[of])-1].Convert(t))
			}
		}
		if t.NumMethod() == 0 || t == errorType || len(all) == 0 {
			all = append(all, reflect.Zero(t)) // nil has nothing to write to or to read from
		}
		return all
	case reflect.Pointer:
		for _, v := range c.values[t.Elem()] {
			p := reflect.New(t.Elem())
			p.Elem().Set(v)
			all = append(all, p)
		}
		return append(all, reflect.Zero(t))
	case reflect.Slice:
		some := reflect.Zero(t)
		for _, v := range c.arguments(t.Elem()) {
			some = reflect.Append(some, v)
		}
		all = append(all, reflect.Zero(t), reflect.MakeSlice(t, 0, 0), some)
		if n := some.Len(); n > 1 {
			all = append(all, some.Slice(n-1, n))
		}
	case reflect.Array:
		one := reflect.New(t).Elem()
		for i, v := range c.arguments(t.Elem()) {
			if i < t.Len() {
				one.Index(i).Set(v)
			}
		}
		all = append(all, reflect.Zero(t), one)
	default:
		all = append(all, reflect.Zero(t))
	}
	all = append(all, c.values[t]...)
	for _, v := range odd() {
		if r := reflect.ValueOf(v); r.Kind() == t.Kind() && r.CanConvert(t) || numeric(r.Kind()) && numeric(t.Kind()) && r.Kind() == reflect.Int {
			all = append(all, r.Convert(t))
		}
	}
	return all
}

// numeric says whether the kind is one of the integers.
func numeric(k reflect.Kind) bool { return k >= reflect.Int && k <= reflect.Uint64 }
