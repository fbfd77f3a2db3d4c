package class

// Decide returns what the policy says of two exhibits of the class, in either
// order. An exhibit that is not in the class, one given twice, and a policy that
// does not check give a [*FieldError].
func (g Graded) Decide(p Policy, a, b int) (Decision, error) {
	for _, e := range [...]int{a, b} {
		if e < 1 || e > g.Len() {
			return Decision{}, &FieldError{Field: "exhibit", Value: itoa(e), Allowed: "1 to " + itoa(g.Len()), Err: ErrRange}
		}
	}
	if a == b {
		return Decision{}, &FieldError{Field: "exhibit", Value: itoa(b), Allowed: "two exhibits", Err: ErrRepeated}
	}
	if err := p.Check(); err != nil {
		return Decision{}, err
	}
	return g.decide(&p, a, b), nil
}
