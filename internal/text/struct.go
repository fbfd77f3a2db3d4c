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
// [Object] does; the elements of a list have their place in the path. On error the
// struct is left as it was.
func Struct[T any](b []byte, dst *T) error {
	read := *dst
	v := reflect.ValueOf(&read).Elem()
	var members []Member
	for i := range v.NumField() {
		name, _, _ := strings.Cut(v.Type().Field(i).Tag.Get("json"), ",")
		m := Member{name, v.Field(i).Addr().Interface()}
		if v.Field(i).Kind() == reflect.Slice {
			m.To = &list{v.Field(i)}
		}
		members = append(members, m)
	}
	err := Object(b, members...)
	if err == nil {
		*dst = read
	}
	return err
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
