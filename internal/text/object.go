package text

import (
	"bytes"
	"encoding"
	"encoding/json"
	"maps"
	"reflect"
	"slices"
	"strconv"
	"strings"

	"example.com/ribface/internal/fault"
)

// Struct reads a JSON object into the fields of a struct by their JSON names, in any
// case; null and names that are not there change nothing, and the fields of an embedded
// struct count as the struct's own. It goes down into structs and lists, but for those
// that have a reading of their own, as UnmarshalJSON or UnmarshalText, and for structs
// with fields that have no JSON name. The error tells of every field that cannot be read
// and of every name that is none of the struct's, each with its path. On error the
// struct is left as it was.
func Struct[T any](b []byte, dst *T) error {
	read := *dst
	all, _ := fields(reflect.ValueOf(&read).Elem())
	err := object(b, all)
	if err == nil {
		*dst = read
	}
	return err
}

// Made reads JSON into what a value is made of, strictly as [Struct] does, and makes the
// value of it; null changes nothing. On error the value is left as it was.
func Made[From, To any](b []byte, dst *To, by func(From) (To, error)) error {
	if isNull(b) {
		return nil
	}
	var from From
	if err := value(b, reflect.ValueOf(&from).Elem()); err != nil {
		return readable(err, "list", b)
	}
	made, err := by(from)
	if err == nil {
		*dst = made
	}
	return err
}

// field is one named part of an object and where it goes.
type field struct {
	name string
	to   reflect.Value
}

// fields are those of a struct; ok is false where one of them has no JSON name.
func fields(v reflect.Value) (all []field, ok bool) {
	all = make([]field, 0, v.NumField())
	for i := range v.NumField() {
		f, to := v.Type().Field(i), v.Field(i)
		name, _, _ := strings.Cut(f.Tag.Get("json"), ",")
		if f.Anonymous && name == "" && to.Kind() == reflect.Struct {
			inner, ok := fields(to)
			if !ok {
				return nil, false
			}
			all = append(all, inner...)
			continue
		}
		if name == "" || name == "-" || !f.IsExported() {
			return nil, false
		}
		all = append(all, field{name, to})
	}
	return all, true
}

// value reads JSON into whatever it is; the error may be one of package json.
func value(b []byte, to reflect.Value) error {
	at := to.Addr().Interface()
	switch at.(type) {
	case json.Unmarshaler, encoding.TextUnmarshaler:
		return json.Unmarshal(b, at)
	}
	switch to.Kind() {
	case reflect.Slice:
		return list(b, to)
	case reflect.Struct:
		if all, ok := fields(to); ok {
			return object(b, all)
		}
	}
	return json.Unmarshal(b, at)
}

// object reads a JSON object into its fields. On error they are partly read.
func object(b []byte, all []field) error {
	if isNull(b) {
		return nil
	}
	var raw map[string]json.RawMessage
	if err := json.Unmarshal(b, &raw); err != nil {
		return &fault.FieldError{Field: "object", Value: fault.Clip(string(b)), Allowed: "a JSON object with " + allowed(all), Err: fault.ErrSyntax}
	}
	names := slices.AppendSeq(make([]string, 0, len(raw)), maps.Keys(raw))
	slices.Sort(names)
	var wrong []error
	for _, f := range all {
		for _, name := range names {
			r, ok := raw[name]
			if !ok || !strings.EqualFold(name, f.name) {
				continue
			}
			if err := value(r, f.to); err != nil {
				wrong = append(wrong, fault.At(f.name, "", readable(err, f.name, r)))
			}
			delete(raw, name)
		}
	}
	for _, name := range names {
		if _, ok := raw[name]; ok {
			wrong = append(wrong, &fault.FieldError{Path: name, Field: "name", Value: fault.Clip(name), Allowed: allowed(all), Err: fault.ErrUnknown})
		}
	}
	return fault.Join(wrong...)
}

// allowed lists the names of the fields.
func allowed(all []field) string {
	names := make([]string, len(all))
	for i, f := range all {
		names[i] = f.name
	}
	return strings.Join(names, ", ")
}

// list reads a JSON array into a slice.
func list(b []byte, to reflect.Value) error {
	var raw []json.RawMessage
	if err := json.Unmarshal(b, &raw); err != nil || isNull(b) {
		return err
	}
	read := reflect.MakeSlice(to.Type(), len(raw), len(raw))
	var wrong []error
	for i, r := range raw {
		if err := value(r, read.Index(i)); err != nil {
			wrong = append(wrong, fault.At("["+strconv.Itoa(i)+"]", "", readable(err, "element "+strconv.Itoa(i+1), r)))
		}
	}
	to.Set(read)
	return fault.Join(wrong...)
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

func isNull(b []byte) bool { return string(bytes.TrimSpace(b)) == "null" }
