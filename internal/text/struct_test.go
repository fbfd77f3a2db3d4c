package text_test

import (
	"encoding/json"
	"testing"

	"example.com/ribface/internal/fault"
	"example.com/ribface/internal/text"
	"github.com/google/go-cmp/cmp"
)

// pack is a struct with a list and a part that reads itself.
type pack struct {
	Name  string  `json:"name,omitzero"`
	Lead  tint    `json:"lead"`
	Tints []tint  `json:"tints"`
	Boxes []*pack `json:"boxes,omitzero"`
	Sizes []int   `json:"sizes"`
}

func (p *pack) UnmarshalJSON(b []byte) error { return text.Struct(b, p) }

// tint is read by its name.
type tint int

func (c *tint) UnmarshalText(b []byte) error {
	return text.Unmarshal(c, b, func(s string) (tint, error) {
		v, err := colors.Parse(s)
		return tint(v), err
	})
}

// TestStruct holds what is read, and every problem that is told.
func TestStruct(t *testing.T) {
	var p pack
	in := `{"NAME":"a","lead":"red","tints":["green","red"],"boxes":[{"name":"b","tints":null},null],"sizes":[]}`
	if err := json.Unmarshal([]byte(in), &p); err != nil {
		t.Fatal(err)
	}
	if d := cmp.Diff(pack{"a", 1, []tint{2, 1}, []*pack{{Name: "b"}, nil}, []int{}}, p); d != "" {
		t.Errorf("(-want +got):\n%s", d)
	}
	for in, want := range map[string][]string{
		`null`: nil,
		`{}`:   nil,
		`[1]`:  {`: object: [1]: bad syntax; allowed: a JSON object with name, lead, tints, boxes, sizes`},
		`{"tints":["red","blue",7],"lead":"x","size":1}`: {
			`lead: color: "x": unknown; allowed: red, green`,
			`tints[1]: color: "blue": unknown; allowed: red, green`,
			`tints[2]: element 3: 7: bad syntax; allowed: text in quotes, or a number where the field is one`,
			`size: name: size: unknown; allowed: name, lead, tints, boxes, sizes`,
		},
		`{"boxes":[{"boxes":[{"sizes":[1,"2"]}]}]}`: {`boxes[0].boxes[0].sizes[1]: element 2: "2": bad syntax; allowed: text in quotes, or a number where the field is one`},
		`{"tints":{}}`: {`tints: tints: {}: bad syntax; allowed: text in quotes, or a number where the field is one`},
	} {
		kept := p
		var got []string
		for _, f := range fault.Problems(json.Unmarshal([]byte(in), &kept)) {
			got = append(got, f.Path+": "+f.Error())
		}
		if d := cmp.Diff(want, got); d != "" {
			t.Errorf("%s: problems (-want +got):\n%s", in, d)
		}
		if d := cmp.Diff(p, kept); d != "" {
			t.Errorf("%s changes the receiver:\n%s", in, d)
		}
	}
}
