// Package classfile reads and writes the files of a class that the examples share:
// the carcasses as package grade/sheet has them, one to a row, and the walk over
// them. Exhibits may have names, as 101 to 104.
package classfile

import (
	"errors"
	"io"
	"strconv"

	"example.com/ribface/grade"
	"example.com/ribface/grade/sheet"
	"example.com/ribface/placing/class"
)

// Read reads a class. An id of 1 to n is the exhibit's number; where the ids are
// names, the exhibits are numbered as they stand and the names are returned. All
// that is wrong is reported at once.
func Read(r io.Reader) (exhibits []class.Exhibit, names []string, err error) {
	rows, err := sheet.NewReader(r)
	if err != nil {
		return nil, nil, err
	}
	var wrong []error
	numbered := true
	for row, err := range rows.Rows() {
		if err != nil {
			wrong = append(wrong, err)
			continue
		}
		n, err := strconv.Atoi(row.ID)
		numbered = numbered && err == nil
		names = append(names, row.ID)
		exhibits = append(exhibits, class.Exhibit{Number: n, Carcass: row.Carcass})
	}
	if wrong != nil {
		return nil, nil, errors.Join(wrong...)
	}
	for i := range exhibits {
		numbered = numbered && exhibits[i].Number >= 1 && exhibits[i].Number <= len(exhibits)
	}
	if numbered {
		return exhibits, nil, nil
	}
	for i := range exhibits {
		exhibits[i].Number = i + 1
	}
	return exhibits, names, nil
}

// Write writes a class.
func Write(w io.Writer, exhibits []class.Exhibit) error {
	out, err := sheet.NewWriter(w)
	if err != nil {
		return err
	}
	for _, e := range exhibits {
		if err := out.Write(sheet.Row{ID: strconv.Itoa(e.Number), Carcass: e.Carcass}); err != nil {
			return err
		}
	}
	return out.Flush()
}

// Grade grades a class by an edition of the standard, at a posted weight where one
// is given.
func Grade(exhibits []class.Exhibit, e grade.Edition, posted grade.Weight) (class.Graded, error) {
	return class.Class{Rules: grade.Rules{Edition: e}, Posted: posted, Exhibits: exhibits}.Grade()
}
