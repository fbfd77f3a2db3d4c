package text

import (
	"bytes"
	"encoding/json"
	"reflect"
	"strconv"
	"strings"

	"example.com/ribface/internal/fault"
)

// Struct reads a JSON object into the fields of a struct by their JSON names, as
// [Object] does; the elements of a list have their place in the path, and the fields
// of an embedded struct count as the struct's own. On error the struct is left as it
// was.
func Struct[T any](b []byte, dst *T) error {
	read := *dst
	err := Object(b, fields(reflect.ValueOf(&read).Elem())...)
	if err == nil {
		*dst = read
	}
	return err
}

// fields are the members of a struct.
func fields(v reflect.Value) (members []Member) {
	for i := range v.NumField() {
		f, to := v.Type().Field(i), v.Field(i)
		if f.Anonymous {
			members = append(members, fields(to)...)
			continue
		}
		name, _, _ := strings.Cut(f.Tag.Get("json"), ",")
		m := Member{name, to.Addr().Interface()}
		if to.Kind() == reflect.Slice {
			m.To = &list{to}
		}
		members = append(members, m)
	}
	return members
}

// List reads a JSON array into a slice. The error tells of every element that cannot
// be read, with its place as the path; null changes nothing.
func List[T any](b []byte, dst *[]T) error {
	read := *dst
	err := (&list{reflect.ValueOf(&read).Elem()}).UnmarshalJSON(b)
	if err == nil {
		*dst = read
	}
	return readable(err, "list", b)
}

// list reads a JSON array into a slice.
type list struct{ to reflect.Value }

// UnmarshalJSON reads the array; the error tells of every element that cannot be read.
func (l *list) UnmarshalJSON(b []byte) error {
	var raw []json.RawMessage
	if err := json.Unmarshal(b, &raw); err != nil {
		return err
	}
	if string(bytes.TrimSpace(b)) == "null" {
		return nil
	}
	read := reflect.MakeSlice(l.to.Type(), len(raw), len(raw))
	var all []error
	for i, r := range raw {
		if err := json.Unmarshal(r, read.Index(i).Addr().Interface()); err != nil {
			all = append(all, fault.At("["+strconv.Itoa(i)+"]", "", readable(err, "element "+strconv.Itoa(i+1), r)))
		}
	}
	l.to.Set(read)
	return fault.Join(all...)
}
