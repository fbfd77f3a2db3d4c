package text_test

import (
	"encoding/json"
	"errors"
	"strings"
	"testing"

	"example.com/ribface/internal/fault"
	"example.com/ribface/internal/text"
	"github.com/google/go-cmp/cmp"
)

// pack is a struct with lists, parts and a part that reads itself.
type pack struct {
	Name  string   `json:"name,omitzero"`
	Lead  tint     `json:"lead"`
	Tints []tint   `json:"tints"`
	Boxes []*pack  `json:"boxes,omitzero"`
	Sizes []int    `json:"sizes"`
	Sides []side   `json:"sides"`
	Rows  [][]side `json:"rows"`
	Bare  bare     `json:"bare"`
	Wraps wrapped  `json:"wraps"`
}

func (p *pack) UnmarshalJSON(b []byte) error { return text.Struct(b, p) }

// side has no reading of its own.
type side struct {
	Top   tint `json:"top"`
	Inner part `json:"inner"`
	part
}

type part struct {
	Size int `json:"size"`
}

// bare has fields without JSON names, and is left to package json.
type bare struct {
	part
	A    int
	Skip int `json:"-"`
}

// wrapped has such a field inside an embedded struct.
type wrapped struct{ bare }

// tint is read by its name.
type tint int

func (c *tint) UnmarshalText(b []byte) error {
	return text.Unmarshal(c, b, func(s string) (tint, error) {
		v, err := colors.Parse(s)
		return tint(v), err
	})
}

const members = "name, lead, tints, boxes, sizes, sides, rows, bare, wraps"

// TestStruct holds what is read, and every problem that is told.
func TestStruct(t *testing.T) {
	var p pack
	in := `{"NAME":"a","lead":"red","tints":["green","red"],"boxes":[{"name":"b","tints":null},null],"sizes":[],
		"sides":[{"top":"green","size":7,"inner":{"Size":8}},{}],"rows":[[{"size":9}],null],"bare":{"a":1,"size":2,"-":3,"none":4},"wraps":{"A":5,"none":4}}`
	if err := json.Unmarshal([]byte(in), &p); err != nil {
		t.Fatal(err)
	}
	want := pack{
		Name: "a", Lead: 1, Tints: []tint{2, 1}, Boxes: []*pack{{Name: "b"}, nil}, Sizes: []int{},
		Sides: []side{{2, part{8}, part{7}}, {}}, Rows: [][]side{{{part: part{9}}}, nil}, Bare: bare{part{2}, 1, 0}, Wraps: wrapped{bare{A: 5}},
	}
	if d := cmp.Diff(want, p, cmp.AllowUnexported(side{}, bare{}, wrapped{})); d != "" {
		t.Errorf("(-want +got):\n%s", d)
	}
	long := strings.Repeat("x", 100)
	for in, want := range map[string][]string{
		`null`:             nil,
		`{}`:               nil,
		`{"bare":{"b":1}}`: nil,
		`[1]`:              {`: object: [1]: bad syntax; allowed: a JSON object with ` + members},
		`"` + long + `"`:   {`: object: "` + long[:63] + `: bad syntax; allowed: a JSON object with ` + members},
		`{"tints":["red","blue",7],"lead":"x","size":1,"b":2}`: {
			`lead: color: "x": unknown; allowed: red, green`,
			`tints[1]: color: "blue": unknown; allowed: red, green`,
			`tints[2]: element 3: 7: bad syntax; allowed: text in quotes, or a number where the field is one`,
			`b: name: b: unknown; allowed: ` + members,
			`size: name: size: unknown; allowed: ` + members,
		},
		`{"boxes":[{"boxes":[{"sizes":[1,"2"]}]}]}`: {`boxes[0].boxes[0].sizes[1]: element 2: "2": bad syntax; allowed: text in quotes, or a number where the field is one`},
		`{"tints":{}}`: {`tints: tints: {}: bad syntax; allowed: text in quotes, or a number where the field is one`},
		`{"sides":[{},{"top":"blue","inner":{"sise":1},"size":"1"},7]}`: {
			`sides[1].top: color: "blue": unknown; allowed: red, green`,
			`sides[1].inner.sise: name: sise: unknown; allowed: size`,
			`sides[1].size: size: "1": bad syntax; allowed: text in quotes, or a number where the field is one`,
			`sides[2]: object: 7: bad syntax; allowed: a JSON object with top, inner, size`,
		},
		`{"rows":[[],[{},{"top":"blue"}],7]}`: {
			`rows[1][1].top: color: "blue": unknown; allowed: red, green`,
			`rows[2]: element 3: 7: bad syntax; allowed: text in quotes, or a number where the field is one`,
		},
		`{"bare":{"a":"x"}}`: {`bare: bare: {"a":"x"}: bad syntax; allowed: text in quotes, or a number where the field is one`},
	} {
		kept := p
		var got []string
		for _, f := range fault.Problems(json.Unmarshal([]byte(in), &kept)) {
			got = append(got, f.Path+": "+f.Error())
		}
		if d := cmp.Diff(want, got); d != "" {
			t.Errorf("%s: problems (-want +got):\n%s", in, d)
		}
		if d := cmp.Diff(p, kept, cmp.AllowUnexported(side{}, bare{}, wrapped{})); d != "" {
			t.Errorf("%s changes the receiver:\n%s", in, d)
		}
	}
}

// TestMade holds what a value is made of, and that only what is made changes it.
func TestMade(t *testing.T) {
	sum := func(all []part) (int, error) {
		n := 0
		for _, p := range all {
			n += p.Size
		}
		if n > 9 {
			return n, errors.New("too many")
		}
		return n, nil
	}
	for in, want := range map[string]string{
		`[{"size":3},{"size":4}]`: "", `[]`: "", `[{"size":9},{"size":1}]`: "value: too many", ` null `: "",
		`[{"size":3},{"sise":4}]`: "name: sise: unknown; allowed: size", `7`: "list: 7: bad syntax; allowed: text in quotes, or a number where the field is one",
	} {
		got, told := -1, ""
		for _, p := range fault.Problems(text.Made([]byte(in), &got, sum)) {
			told += p.Error()
		}
		made := map[string]int{`[{"size":3},{"size":4}]`: 7, `[]`: 0}
		n, ok := made[in]
		if !ok {
			n = -1
		}
		if told != want || got != n {
			t.Errorf("%s: %d, %q; want %d, %q", in, got, told, n, want)
		}
	}
}
