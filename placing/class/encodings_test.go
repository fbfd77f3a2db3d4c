package class_test

import (
	"encoding/json"
	"testing"

	"example.com/ribface/internal/testkit/roundtrip"
	"example.com/ribface/placing/class"
	"github.com/google/go-cmp/cmp"
)

func TestEncodings(t *testing.T) {
	roundtrip.Run(t, "Site", class.FatNeck, class.ParseSite, roundtrip.Case[class.Site]{
		Texts:   map[string]class.Site{"fat over rump": class.FatRump, "muscling of clod": class.MuscleClod},
		Aliases: map[string]class.Site{" Fat over Rump ": class.FatRump, "fat_over-rump": class.FatRump},
		Bad:     []string{"rump", "fat over tail", "unset", "3"},
		Invalid: []class.Site{21, 99},
	})
	roundtrip.Run(t, "Ground", class.ByYield, roundtrip.Read[class.Ground], roundtrip.Case[class.Ground]{
		Texts:   map[string]class.Ground{"quality tier": class.ByTier, "Choice against Select": class.ByCeiling, "firmness": class.ByFirmness},
		Aliases: map[string]class.Ground{"choice-against-select": class.ByCeiling},
		Bad:     []string{"luck", "unset", "1"},
		Invalid: []class.Ground{14, 99},
	})
	roundtrip.Run(t, "Heading", class.OnQuality, roundtrip.Read[class.Heading], roundtrip.Case[class.Heading]{
		Texts:   map[string]class.Heading{"cutability": class.OnCutability, "muscling": class.OnMuscling},
		Aliases: map[string]class.Heading{"Trimness": class.OnTrimness, "none": 0},
		Bad:     []string{"charm", "unset"},
		Invalid: []class.Heading{5, 99},
	})
	roundtrip.Run(t, "Size", class.SizeSlight, roundtrip.Read[class.Size], roundtrip.Case[class.Size]{
		Texts:   map[string]class.Size{"plain": class.SizePlain, "wide": class.SizeWide},
		Aliases: map[string]class.Size{"WIDE": class.SizeWide, "unseen": 0},
		Bad:     []string{"huge", "unset"},
		Invalid: []class.Size{4, 99},
	})
}

func FuzzParseSite(f *testing.F) {
	roundtrip.Fuzz(f, class.ParseSite, class.FatNeck, "fat over rump", "Fat_over-rump")
}

// FuzzClassJSON reads a class from whatever it is given. What can be read and graded
// comes back as it was.
func FuzzClassJSON(f *testing.F) {
	b, err := json.Marshal(four())
	if err != nil {
		f.Fatal(err)
	}
	for _, s := range []string{string(b), "{}", "null", "[]", `{"exhibits":[{"number":1},{}],"walk":[{"site":"fat over rump","order":"1=2"}]}`, `{"exhibits":null,"posted":"363 kg"}`} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		var c class.Class
		if json.Unmarshal([]byte(s), &c) != nil {
			if d := cmp.Diff(class.Class{}, c); d != "" {
				t.Errorf("a failed reading changed the class:\n%s", d)
			}
			return
		}
		g, err := c.Grade()
		if err != nil {
			return
		}
		b, err := json.Marshal(g)
		if err != nil {
			t.Fatal(err)
		}
		var back class.Graded
		if err := json.Unmarshal(b, &back); err != nil || !back.Equal(g) {
			t.Errorf("%s comes back as %v, %v", b, back, err)
		}
	})
}
