package grade

import "example.com/ribface/internal/text"

// UnmarshalJSON reads an object with the JSON names of the fields. The error tells of
// every field that cannot be read and of every name that is no field, each with its
// path; the receiver is then left as it was. Fields that are not there stay as they
// are.
func (c *Carcass) UnmarshalJSON(b []byte) error {
	v := *c
	err := text.Object(b, text.Member{Name: "sex", To: &v.Sex}, text.Member{Name: "maturity", To: &v.Maturity}, text.Member{Name: "marbling", To: &v.Marbling},
		text.Member{Name: "lean", To: &v.Lean}, text.Member{Name: "measures", To: &v.Measures}, text.Member{Name: "fat_adjust", To: &v.FatAdjust})
	if err == nil {
		*c = v
	}
	return err
}

// UnmarshalJSON reads an object as [Carcass.UnmarshalJSON] does.
func (l *Lean) UnmarshalJSON(b []byte) error {
	v := *l
	err := text.Object(b, text.Member{Name: "firmness", To: &v.Firmness}, text.Member{Name: "dark", To: &v.Dark}, text.Member{Name: "color", To: &v.Color}, text.Member{Name: "texture", To: &v.Texture}, text.Member{Name: "below_cutter", To: &v.BelowCutter})
	if err == nil {
		*l = v
	}
	return err
}

// UnmarshalJSON reads an object as [Carcass.UnmarshalJSON] does.
func (m *Measures) UnmarshalJSON(b []byte) error {
	v := *m
	err := text.Object(b, text.Member{Name: "fat", To: &v.Fat}, text.Member{Name: "ribeye", To: &v.Ribeye}, text.Member{Name: "kph", To: &v.KPH}, text.Member{Name: "weight", To: &v.Weight})
	if err == nil {
		*m = v
	}
	return err
}
