package class_test

import (
	"encoding/json"
	"slices"
	"strconv"
	"testing"

	"example.com/ribface/grade"
	"example.com/ribface/internal/refs/vectors"
	"example.com/ribface/placing"
	"example.com/ribface/placing/class"
)

// vectorClass reads the class of a vector.
func vectorClass(t *testing.T, in vectors.Object) class.Class {
	t.Helper()
	var exhibits []any
	for _, o := range vectors.List(in, "exhibits") {
		exhibits = append(exhibits, map[string]any{
			"number": json.Number(vectors.Text(o, "exhibit")), "sex": o["sex"], "marbling": o["marbling"],
			"maturity": map[string]any{"skeletal": o["skeletal"], "lean": o["lean"]},
			"lean":     map[string]any{"firmness": o["firmness"], "color": o["color"], "texture": o["texture"], "dark": o["dark"]},
			"measures": map[string]any{"fat": o["fat_in"], "ribeye": o["ribeye_sq_in"], "kph": o["kph_percent"], "weight": o["weight_lb"]},
		})
	}
	text, err := json.Marshal(map[string]any{"rules": map[string]any{"edition": grade.Current}, "exhibits": exhibits, "walk": in["walk"]})
	if err != nil {
		t.Fatal(err)
	}
	var c class.Class
	if err := json.Unmarshal(text, &c); err != nil {
		t.Fatal(err)
	}
	return c
}

// TestVectors holds the published vectors of placings by the default policy to the
// second implementation of TestSecondImplementation: decisions, margins, orders, cuts.
func TestVectors(t *testing.T) {
	f, err := vectors.Read("../../testdata/vectors", "placings")
	if err != nil {
		t.Fatal(err)
	}
	classes, margins := 0, map[string]int{}
	for _, v := range f.Vectors {
		if vectors.Text(v.In, "policy") != class.DefaultPolicy().Name {
			continue
		}
		classes++
		c := vectorClass(t, v.In)
		g, p := placed(t, c)
		look := secondLook(g)
		for _, pair := range vectors.List(v.Out, "pairs") {
			u, l := look[place(t, pair, "over")-1], look[place(t, pair, "under")-1]
			side, ground := secondChoice(u, l)
			name := ground.String()
			if ground == 0 {
				name = "none"
			}
			if side != 1 && ground != 0 || name != vectors.Text(pair, "ground") || l.tier-u.tier != place(t, pair, "tiers") || grade.YieldUnits(l.yield-u.yield).String() != vectors.Text(pair, "lead") {
				t.Errorf("%s: %v, second: %d by %v", v.From, pair, side, ground)
			}
			switch margin := vectors.Text(pair, "margin"); margin {
			case "firm":
				margins[margin]++
				if secondMargin(u, l) >= 0 {
					t.Errorf("%s: %v can be turned", v.From, pair)
				}
			case "none":
				margins[margin]++
				if ground != 0 {
					t.Errorf("%s: %v is told apart", v.From, pair)
				}
			default:
				margins["yields"]++
				y, err := grade.ParseYield(margin)
				// The second margin is that of yields that turn the pair; on a line that
				// belongs to neither side it is up to two units more.
				if m, second := y.Units(), secondMargin(u, l); err != nil || second < 0 || second-m > 2 || m > max(second, 1) {
					t.Errorf("%s: %v, second: %d units, %v", v.From, pair, second, err)
				}
			}
		}
		if order := vectors.Text(v.Out, "order"); order != secondOrder(look, p).String() {
			t.Errorf("%s: order %s, second: %v", v.From, order, secondOrder(look, p))
		}
		asked, cuts := secondCuts(p.Neighbors())
		got, err := placing.ParseCuts(vectors.Text(v.Out, "cuts"))
		if err != nil || !slices.Equal(slices.Collect(got.All()), cuts) || vectors.Text(v.Out, "cuts_asked") != strconv.Itoa(asked) {
			t.Errorf("%s: cuts %v, %v; second: %v of %d", v.From, got, err, cuts, asked)
		}
	}
	if classes < 50 || margins["firm"] == 0 || margins["none"] == 0 || margins["yields"] == 0 {
		t.Errorf("%d classes, margins %v", classes, margins)
	}
}

// place reads a whole number of a vector.
func place(t *testing.T, o vectors.Object, name string) int {
	t.Helper()
	n, err := strconv.Atoi(vectors.Text(o, name))
	if err != nil {
		t.Fatal(err)
	}
	return n
}

// TestVectorsByYield holds the vectors of strict cutability to its one sentence: the lower
// yield goes over, and of equal yields the more marbling. The margin is the lead, and of
// equal yields the least there is.
func TestVectorsByYield(t *testing.T) {
	f, err := vectors.Read("../../testdata/vectors", "placings")
	if err != nil {
		t.Fatal(err)
	}
	grounds := map[string]int{}
	for _, v := range f.Vectors {
		if vectors.Text(v.In, "policy") != class.CutabilityPolicy().Name {
			continue
		}
		c := vectorClass(t, v.In)
		look := secondLook(graded(t, c))
		for _, pair := range vectors.List(v.Out, "pairs") {
			u, l := look[place(t, pair, "over")-1], look[place(t, pair, "under")-1]
			ground := "none"
			switch {
			case u.yield < l.yield:
				ground = class.ByYield.String()
			case u.yield == l.yield && u.marbling > l.marbling:
				ground = class.ByMarbling.String()
			case u.yield != l.yield || u.marbling != l.marbling:
				t.Errorf("%s: %v the wrong way round", v.From, pair)
			}
			if vectors.Text(pair, "ground") != ground || vectors.Text(pair, "lead") != grade.YieldUnits(l.yield-u.yield).String() {
				t.Errorf("%s: %v, second: by %s", v.From, pair, ground)
			}
			if margin := vectors.Text(pair, "margin"); ground == class.ByYield.String() && margin != vectors.Text(pair, "lead") {
				t.Errorf("%s: %v, margin is not the lead", v.From, pair)
			}
			grounds[ground]++
		}
	}
	if len(grounds) != 3 {
		t.Errorf("grounds %v", grounds)
	}
}
