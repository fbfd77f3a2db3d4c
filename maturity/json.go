package maturity

import "example.com/ribface/internal/text"

// UnmarshalJSON reads an object with the JSON names of the fields. The error tells of
// every field that cannot be read and of every name that is no field, each with its
// path; the receiver is then left as it was. Fields that are not there stay as they
// are.
func (e *Evidence) UnmarshalJSON(b []byte) error {
	v := *e
	err := text.Object(b, text.Member{Name: "skeletal", To: &v.Skeletal}, text.Member{Name: "lean", To: &v.Lean}, text.Member{Name: "teeth", To: &v.Teeth}, text.Member{Name: "buttons", To: &v.Buttons}, text.Member{Name: "papers", To: &v.Papers})
	if err == nil {
		*e = v
	}
	return err
}
