package grade_test

import (
	"fmt"
	"testing"

	"example.com/ribface/grade"
	"example.com/ribface/internal/testkit/faulttest"
	"example.com/ribface/internal/testkit/roundtrip"
	"example.com/ribface/maturity/cite"
)

func TestLeanEncodings(t *testing.T) {
	roundtrip.Run(t, "Color", grade.LightRed, grade.ParseColor, roundtrip.Case[grade.Color]{
		Texts:   map[string]grade.Color{"very dark red": grade.VeryDarkRed, "slightly light red": grade.SlightlyLightRed, "light cherry red": grade.LightCherryRed},
		Aliases: map[string]grade.Color{"Dark red": grade.DarkRed, "Light-Cherry Red": grade.LightCherryRed},
		Bad:     []string{"unset", "red", "cherry"}, Invalid: []grade.Color{grade.LightCherryRed + 1},
	})
	roundtrip.Run(t, "Texture", grade.Coarse, grade.ParseTexture, roundtrip.Case[grade.Texture]{
		Texts:   map[string]grade.Texture{"very coarse": grade.VeryCoarse, "tends to be fine": grade.TendsToBeFine, "fine": grade.Fine},
		Aliases: map[string]grade.Texture{"Fine": grade.Fine, " very COARSE": grade.VeryCoarse},
		Bad:     []string{"unset", "smooth", "tends"}, Invalid: []grade.Texture{grade.Fine + 1},
	})
}

func FuzzColor(f *testing.F) {
	roundtrip.Fuzz(f, grade.ParseColor, grade.DarkRed, "light red", "light cherry red")
}

func FuzzTexture(f *testing.F) {
	roundtrip.Fuzz(f, grade.ParseTexture, grade.Coarse, "fine", "tends to be fine")
}

// TestColorAndTextureMoveNoGrade grades one carcass with every color and texture.
func TestColorAndTextureMoveNoGrade(t *testing.T) {
	for _, dark := range []grade.DarkCut{0, grade.DarkTwoThirds} {
		c := exampleCarcass()
		c.Lean.Dark = dark
		want, err := grade.Current.Assess(c)
		if err != nil {
			t.Fatal(err)
		}
		for color := grade.Color(0); color <= grade.LightCherryRed; color++ {
			for texture := grade.Texture(0); texture <= grade.Fine; texture++ {
				c.Lean.Color, c.Lean.Texture = color, texture
				got, err := grade.Current.Assess(c)
				if err != nil || got.Quality != want.Quality || got.Yield != want.Yield || got.Maturity != want.Maturity {
					t.Errorf("%v, %v: %v %v %v, %v", color, texture, got.Quality, got.Yield, got.Maturity, err)
				}
			}
		}
	}
	c := exampleCarcass()
	c.Lean.Color = grade.LightCherryRed + 1
	_, err := grade.Current.Assess(c)
	faulttest.Field(t, "color", err, grade.FieldError{Field: "lean color", Value: "lean color(9)", Allowed: "very dark red, dark red, moderately dark red, slightly dark red, slightly light red, moderately light red, light red, light cherry red", Err: grade.ErrUnknown})
	c.Lean.Color, c.Lean.Texture = 0, grade.Fine+1
	_, err = grade.Current.Assess(c)
	faulttest.Field(t, "texture", err, grade.FieldError{Field: "lean texture", Value: "lean texture(6)", Allowed: "very coarse, coarse, slightly coarse, tends to be fine, fine", Err: grade.ErrUnknown})
}

// TestTermsSayWhereTheyComeFrom holds the standing of every term, and that a value
// that is no term has none.
func TestTermsSayWhereTheyComeFrom(t *testing.T) {
	colors := map[grade.Color]cite.Standing{grade.LightCherryRed: cite.Published, grade.ModeratelyLightRed: cite.Published, grade.SlightlyLightRed: cite.Official}
	for c := grade.VeryDarkRed; c <= grade.LightCherryRed; c++ {
		want := cite.Memory
		if s, ok := colors[c]; ok {
			want = s
		}
		if got := c.Cite().Standing; got != want {
			t.Errorf("%v: %v, want %v", c, got, want)
		}
	}
	for x := grade.VeryCoarse; x <= grade.Fine; x++ {
		want := cite.Memory
		if x >= grade.TendsToBeFine {
			want = cite.Official
		}
		if got := x.Cite().Standing; got != want {
			t.Errorf("%v: %v, want %v", x, got, want)
		}
	}
	if (grade.Color(0).Cite() != cite.Citation{}) || (grade.Texture(0).Cite() != cite.Citation{}) {
		t.Error("the zero value has a source")
	}
}

func ExampleColor() {
	fmt.Println(grade.LightCherryRed, grade.LightCherryRed > grade.DarkRed, grade.LightCherryRed.IsValid())
	fmt.Println(grade.LightCherryRed.Cite())
	// Output:
	// light cherry red true true
	// published: enc-quality
}

func ExampleParseColor() {
	fmt.Println(grade.ParseColor("slightly light red"))
	// Output:
	// slightly light red <nil>
}

func ExampleTexture() {
	fmt.Println(grade.Fine, grade.Fine > grade.Coarse, grade.Fine.IsValid())
	fmt.Println(grade.Coarse.Cite())
	// Output:
	// fine true true
	// from memory
}

func ExampleParseTexture() {
	fmt.Println(grade.ParseTexture("tends to be fine"))
	// Output:
	// tends to be fine <nil>
}
