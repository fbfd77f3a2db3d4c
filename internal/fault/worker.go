package fault

// Worker marks a type that works and is no value, as a reader, a contest or a season: it
// gathers or hands out, is not stored, and is not compared. A type embeds it under an
// unexported name of its package.
type Worker struct{}

// MarshalJSON refuses with a [*FieldError]: what works is not stored.
func (Worker) MarshalJSON() ([]byte, error) {
	return nil, &FieldError{Field: "what works and is no value", Allowed: "in its place what it was made of, or what it gives", Err: ErrUnknown}
}
