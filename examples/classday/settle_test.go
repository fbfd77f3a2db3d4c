package main

import (
	"slices"
	"strings"
	"testing"

	"example.com/ribface/grade"
	"example.com/ribface/maturity"
	"example.com/ribface/placing"
	"example.com/ribface/placing/class"
	"github.com/shopspring/decimal"
)

// carcass is a young steer of a pair; change makes it another one. Its yield is
// 1.88 and 2.5 for every inch of fat.
func carcass(marbling grade.Marbling, fat float64, change func(*grade.Carcass)) grade.Carcass {
	c := grade.Carcass{
		Sex:      grade.Steer,
		Maturity: maturity.Evidence{Skeletal: maturity.A.At(60), Lean: maturity.A.At(60)},
		Marbling: marbling,
		Measures: grade.Measures{Fat: grade.Inches(fat), Ribeye: grade.SquareInches(13), KPH: grade.Percent(2.5), Weight: grade.Pounds(800)},
	}
	if change != nil {
		change(&c)
	}
	return c
}

// TestHeadlines tells for every ground what decided a pair, and flags what a coach
// must know.
func TestHeadlines(t *testing.T) {
	small, modest, slight := grade.Small.At(40), grade.Modest.At(20), grade.Slight.At(60)
	dark := func(d grade.DarkCut) func(*grade.Carcass) { return func(c *grade.Carcass) { c.Lean.Dark = d } }
	old := func(g maturity.Group) func(*grade.Carcass) {
		return func(c *grade.Carcass) {
			c.Maturity = maturity.Evidence{Skeletal: g.At(20), Lean: g.At(20)}
		}
	}
	firm := func(f grade.Firmness) func(*grade.Carcass) { return func(c *grade.Carcass) { c.Lean.Firmness = f } }
	fat, muscle := class.Look{Site: class.FatRump, Order: class.MustParseRanking("2 1")}, class.Look{Site: class.MuscleLoin, Order: class.MustParseRanking("1 2")}
	for _, tt := range []struct {
		name         string
		upper, lower grade.Carcass
		walk         class.Walk
		want         string
		flags        [2]string
	}{
		{"tier", carcass(modest, 0.5, nil), carcass(small, 0.4, nil), nil, "quality: Average Choice against Low Choice", [2]string{"poorest yield grade", "best yield grade"}},
		{"advantage", carcass(small, 0.2, nil), carcass(modest, 0.9, nil), nil, "cutability: yield 2.3 against 4.1 outweighs Average Choice against Low Choice", [2]string{"best yield grade", "poorest yield grade"}},
		{"bottom, Standard", carcass(slight, 0.5, nil), carcass(grade.Traces.At(60), 0.2, nil), nil, "quality: 2 belongs at the bottom (High Standard)", [2]string{"poorest yield grade", "best yield grade"}},
		{"bottom, dark", carcass(small, 0.5, nil), carcass(small, 0.5, dark(grade.DarkFull)), nil, "quality: 2 belongs at the bottom (dark cutter)", [2]string{"", "dark cutter, the whole"}},
		{"bottom, old", carcass(modest, 0.5, old(maturity.B)), carcass(grade.Moderate.At(20), 0.5, old(maturity.C)), nil, "quality: 2 belongs at the bottom (C maturity)", [2]string{"B maturity", "C maturity"}},
		{"ceiling, Choice", carcass(small, 0.65, nil), carcass(slight, 0.04, nil), nil, "quality: a Choice at yield 3.5 stays over Select", [2]string{"poorest yield grade", "best yield grade"}},
		{"ceiling, Select", carcass(slight, 0.4, nil), carcass(small, 0.9, nil), nil, "cutability: a lean Select goes over a Choice at yield 4.1", [2]string{"best yield grade", "poorest yield grade"}},
		{"marbling", carcass(grade.Small.At(90), 0.5, nil), carcass(grade.Small.At(10), 0.5, nil), nil, "marbling: Sm90 against Sm10", [2]string{}},
		{"yield", carcass(small, 0.3, nil), carcass(small, 0.6, nil), nil, "cutability: yield 2.6 against 3.3", [2]string{"best yield grade", "poorest yield grade"}},
		{"trimness", carcass(small, 0.5, nil), carcass(small, 0.5, nil), class.Walk{fat}, "trimness: less fat over the walk", [2]string{"", ""}},
		{"muscling", carcass(small, 0.5, nil), carcass(small, 0.5, nil), class.Walk{muscle}, "muscling: heavier over the walk", [2]string{"", ""}},
		{"dark", carcass(small, 0.5, nil), carcass(small, 0.5, dark(grade.DarkThird)), nil, "", [2]string{"", "dark cutter, one third"}},
		{"color", carcass(small, 0.5, func(c *grade.Carcass) { c.Lean.Color = grade.LightCherryRed }), carcass(small, 0.5, func(c *grade.Carcass) { c.Lean.Color = grade.LightCherryRed - 1 }), nil, "color: brighter lean", [2]string{}},
		{"texture", carcass(small, 0.5, func(c *grade.Carcass) { c.Lean.Texture = grade.Fine }), carcass(small, 0.5, func(c *grade.Carcass) { c.Lean.Texture = grade.Fine - 1 }), nil, "texture: finer lean", [2]string{}},
		{"firmness", carcass(small, 0.5, firm(grade.Firm)), carcass(small, 0.5, firm(grade.SlightlySoft)), nil, "firmness: firmer lean", [2]string{"", "slightly soft"}},
		{"nothing", carcass(small, 0.5, nil), carcass(small, 0.5, nil), nil, "nothing tells them apart", [2]string{}},
	} {
		w, err := settle(settings{base: decimal.New(300, 0)}, day{class: class.Class{Rules: grade.Rules{Edition: grade.Current}, Walk: tt.walk, Exhibits: []class.Exhibit{{Number: 1, Carcass: tt.upper}, {Number: 2, Carcass: tt.lower}}}})
		if err != nil {
			t.Fatalf("%s: %v", tt.name, err)
		}
		if o := w.official.Order(); o.At(1) != 1 {
			t.Errorf("%s: placed %s by %v", tt.name, o, w.placed.Decisions)
		}
		if got := w.headline(1, 2); got != tt.want && tt.want != "" {
			t.Errorf("%s: %q, want %q", tt.name, got, tt.want)
		}
		if got := w.headline(2, 1); tt.want != "" && tt.want != "nothing tells them apart" && got != "by the rules it is 1 over 2, on "+tt.want {
			t.Errorf("%s, turned: %q", tt.name, got)
		}
		for i, want := range tt.flags {
			if got := w.flags(i + 1); tt.walk == nil && got != want {
				t.Errorf("%s: flags of %d: %q, want %q", tt.name, i+1, got, want)
			}
		}
	}
}

// TestFlagsExplained: the screen explains the words of flags where there are such.
func TestFlagsExplained(t *testing.T) {
	words := []string{"A dark cutter has", "Maturity is how old", "Lean should be firm"}
	odd := func(c *grade.Carcass) {
		c.Lean = grade.Lean{Dark: grade.DarkThird, Firmness: grade.Soft}
		c.Maturity = maturity.Evidence{Skeletal: maturity.B.At(20), Lean: maturity.B.At(20)}
	}
	for _, change := range []func(*grade.Carcass){nil, odd} {
		w, err := settle(settings{base: decimal.New(300, 0)}, day{class: class.Class{Rules: grade.Rules{Edition: grade.Current}, Exhibits: []class.Exhibit{
			{Number: 1, Carcass: carcass(grade.Modest.At(40), 0.5, nil)}, {Number: 2, Carcass: carcass(grade.Modest.At(40), 0.5, change)}}}})
		if err != nil {
			t.Fatal(err)
		}
		screen := w.screen()
		for _, word := range words {
			if strings.Contains(screen, word) != (change != nil) {
				t.Errorf("%q, flags %q", word, w.flags(2))
			}
		}
	}
}

// TestAgreement puts Kendall's W into words; two who are opposed have 0.
func TestAgreement(t *testing.T) {
	for _, tt := range []struct{ votes, want string }{
		{"1-2-3-4 1-2-3-4 1-2-3-4", "who all agree"},
		{"1-2-3-4 1-2-3-4 2-1-3-4", "who agree well"},
		{"1-2-3-4 2-1-4-3 4-1-2-3", "who agree in part"},
		{"1-2-3-4 4-3-2-1 1-2-4-3", "who differ widely"},
		{"1-2-3-4 4-3-2-1", "who differ widely; 24 placings suit them equally, and the chair decides"},
	} {
		var votes []placing.Vote
		for o := range strings.FieldsSeq(tt.votes) {
			votes = append(votes, placing.Vote{Order: placing.MustParseOrder(o), Cuts: placing.MustParseCuts("2-3-2")})
		}
		panel, err := placing.NewPanel(votes...)
		if err != nil {
			t.Fatal(err)
		}
		w := settled{day: day{panel: panel}}
		if got := w.agreement(); got != tt.want {
			c, _ := panel.Concordance()
			t.Errorf("%s: %q at %v, want %q", tt.votes, got, c, tt.want)
		}
	}
}

// TestNear follows the official cut, where the scale has words for it or not.
func TestNear(t *testing.T) {
	official, err := placing.ParseOfficial("1-2-3-4-5-6 cuts 0-3-5-8-9")
	if err != nil {
		t.Fatal(err)
	}
	w := settled{official: official}
	var got []string
	for i := 1; i <= 5; i++ {
		got = append(got, w.near(i))
	}
	if want := []string{"tied", "close", "moderate", "very easy", "very easy"}; !slices.Equal(got, want) {
		t.Errorf("%v, want %v", got, want)
	}
	w.placed = class.Placing{Decisions: []class.Decision{{Upper: 3, Lower: 4, Close: true}}}
	if got := w.near(3); got != "moderate, close by the rules" {
		t.Error(got)
	}
}

// TestMarks: 1 is the trimmest and the heaviest muscled, ties say so, and the names
// of one side stand apart.
func TestMarks(t *testing.T) {
	var walk class.Walk
	for site := range class.Sites() {
		walk = append(walk, class.Look{Site: site, Order: class.MustParseRanking("1 2=3 4")})
	}
	var all []class.Exhibit
	for n := range 4 {
		all = append(all, class.Exhibit{Number: n + 1, Carcass: carcass(grade.Small.At(40), 0.5, nil)})
	}
	w, err := settle(settings{base: decimal.New(300, 0)}, day{class: class.Class{Rules: grade.Rules{Edition: grade.Current}, Walk: walk, Exhibits: all}})
	if err != nil {
		t.Fatal(err)
	}
	for exhibit, want := range map[int][2]string{1: {"4", "1"}, 2: {"2=", "2="}, 4: {"1", "4"}} {
		marks := w.marks(exhibit)
		if len(marks) != len(places) {
			t.Fatalf("%d marks, want %d", len(marks), len(places))
		}
		for i, m := range marks {
			number := want[1]
			if m.site.Fat() {
				number = want[0]
			}
			if m.number != number || m.name == "" {
				t.Errorf("%d, %s: %q, want %q", exhibit, m.site, m.number, number)
			}
			for _, n := range marks[i+1:] {
				if d := n.nameY - m.nameY; n.left == m.left && d < apart*10 {
					t.Errorf("%s and %s stand %v apart", m.name, n.name, d)
				}
				dx, dy := int(m.at.X-n.at.X), int(m.at.Y-n.at.Y)
				if dx*dx+dy*dy < 200*200 {
					t.Errorf("the marks of %s and %s touch", m.name, n.name)
				}
			}
		}
	}
}
