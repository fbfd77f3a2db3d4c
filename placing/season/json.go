package season

import "example.com/ribface/internal/fault"

// MarshalJSON refuses with a [*placing.FieldError]: a season is made of cards and keys,
// which can be kept.
func (s Season) MarshalJSON() ([]byte, error) { return nil, noJSON("season") }

// MarshalJSON refuses as [Season.MarshalJSON] does.
func (c ClassCards) MarshalJSON() ([]byte, error) { return nil, noJSON("class") }

// MarshalJSON refuses as [Season.MarshalJSON] does.
func (s Errors) MarshalJSON() ([]byte, error) { return nil, noJSON("errors") }

// MarshalJSON refuses as [Season.MarshalJSON] does.
func (a Agreement) MarshalJSON() ([]byte, error) { return nil, noJSON("agreement") }

// MarshalJSON refuses as [Season.MarshalJSON] does.
func (j Judges) MarshalJSON() ([]byte, error) { return nil, noJSON("judges") }

func noJSON(what string) error {
	return &fault.FieldError{Field: what, Allowed: "its cards and keys, or what it says of them, in its place", Err: fault.ErrUnknown}
}
