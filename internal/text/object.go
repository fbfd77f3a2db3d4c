package text

import (
	"bytes"
	"encoding/json"
	"slices"
	"strings"

	"example.com/ribface/internal/fault"
)

// Member is one named part of a JSON object and where it goes.
type Member struct {
	Name string
	To   any // a pointer
}

// Object reads a JSON object into its members; null and members that are not there
// change nothing. Names are matched in any case. The error tells of every member that
// cannot be read and of every name that is not one of them, each with its path; the
// members are then partly read, so that a caller reads into a copy.
func Object(b []byte, members ...Member) error {
	if string(bytes.TrimSpace(b)) == "null" {
		return nil
	}
	var raw map[string]json.RawMessage
	if err := json.Unmarshal(b, &raw); err != nil {
		return &fault.FieldError{Field: "object", Value: fault.Clip(string(b)), Allowed: "a JSON object with " + names(members), Err: fault.ErrSyntax}
	}
	var all []error
	for _, m := range members {
		for _, name := range sorted(raw) {
			if !strings.EqualFold(name, m.Name) {
				continue
			}
			if err := json.Unmarshal(raw[name], m.To); err != nil {
				all = append(all, fault.At(m.Name, "", readable(err, m.Name, raw[name])))
			}
			delete(raw, name)
		}
	}
	for _, name := range sorted(raw) {
		all = append(all, &fault.FieldError{Path: name, Field: "name", Value: fault.Clip(name), Allowed: names(members), Err: fault.ErrUnknown})
	}
	return fault.Join(all...)
}

// readable names the field of an error of package json, which speaks of Go types.
func readable(err error, name string, raw json.RawMessage) error {
	for _, p := range fault.Problems(err) {
		if p.Field == "" {
			return &fault.FieldError{Field: name, Value: fault.Clip(string(raw)), Allowed: "text in quotes, or a number where the field is one", Err: fault.ErrSyntax}
		}
	}
	return err
}

func sorted(m map[string]json.RawMessage) []string {
	all := make([]string, 0, len(m))
	for name := range m {
		all = append(all, name)
	}
	slices.Sort(all)
	return all
}

func names(members []Member) string {
	all := make([]string, len(members))
	for i, m := range members {
		all[i] = m.Name
	}
	return strings.Join(all, ", ")
}
