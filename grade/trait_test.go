package grade_test

import (
	"encoding/json"
	"errors"
	"testing"

	"example.com/ribface/grade"
	"github.com/google/go-cmp/cmp"
)

// TestTraitText pins the name of every trait, and brings each back from its text and
// from JSON.
func TestTraitText(t *testing.T) {
	want := map[grade.Trait]string{
		grade.TraitSkeletal: "skeletal maturity", grade.TraitLean: "lean maturity", grade.TraitMaturity: "maturity", grade.TraitMarbling: "marbling", grade.TraitQuality: "quality grade",
		grade.TraitFat: "fat", grade.TraitPreliminary: "preliminary", grade.TraitRibeye: "ribeye", grade.TraitKPH: "KPH", grade.TraitWeight: "weight", grade.TraitYield: "yield",
		grade.TraitButtons: "chine buttons", grade.TraitColor: "lean color", grade.TraitTexture: "lean texture", grade.TraitFirmness: "firmness", grade.TraitDark: "dark cutting", grade.TraitSite: "site",
		0: "unset", grade.TraitSite + 1: "trait(18)", 255: "trait(255)",
	}
	got := map[grade.Trait]string{}
	for trait := range want {
		got[trait] = trait.String()
		b, err := json.Marshal(trait)
		if trait > grade.TraitSite {
			if !errors.Is(err, grade.ErrUnknown) {
				t.Errorf("%v is written as %s, %v", trait, b, err)
			}
			continue
		}
		for _, before := range []grade.Trait{0, grade.TraitSite} {
			back := before
			if again := json.Unmarshal(b, &back); err != nil || again != nil || back != trait {
				t.Errorf("%v is written as %s, %v, and came back as %v, %v", trait, b, err, back, again)
			}
		}
	}
	if d := cmp.Diff(want, got); d != "" {
		t.Errorf("names (-want +got):\n%s", d)
	}
	for in, want := range map[string]grade.Trait{" Fat": grade.TraitFat, "kph": grade.TraitKPH, "Quality_Grade": grade.TraitQuality, "dark  cutting": grade.TraitDark, "": 0} {
		got := grade.TraitSite
		if err := got.UnmarshalText([]byte(in)); err != nil || got != want {
			t.Errorf("%q is read as %v, %v", in, got, err)
		}
	}
	for in, want := range map[string]error{"hair": grade.ErrUnknown, "F": grade.ErrUnknown, "unset": grade.ErrUnknown, "6": grade.ErrUnknown, " ": grade.ErrSyntax} {
		got := grade.TraitSite
		if err := got.UnmarshalText([]byte(in)); !errors.Is(err, want) || got != grade.TraitSite {
			t.Errorf("%q is read as %v, %v", in, got, err)
		}
	}
}
