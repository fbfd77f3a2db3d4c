package contest

import (
	"strconv"

	"example.com/ribface/internal/fault"
)

// inMember says whose card an error is about.
func inMember(m Member, err error) error {
	return fault.In("member "+strconv.Quote(m.ID), err)
}

func inClass(name string, err error) error { return fault.In("class "+strconv.Quote(name), err) }

// nth is the path of one of a list.
func nth(list string, i int) string { return list + "[" + strconv.Itoa(i) + "]" }
