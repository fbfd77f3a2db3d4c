package classfile

import (
	"bytes"
	"encoding/csv"
	"fmt"
	"io"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"example.com/ribface/placing"
)

// Name gives the name of an exhibit: the one of the file, or its number.
func Name(names []string, exhibit int) string {
	if names == nil {
		return strconv.Itoa(exhibit)
	}
	return names[exhibit-1]
}

// Card gives a placing in the names of the exhibits, as "103-101-102-104", or as
// "lot 3, lot 1" where names have blanks or hyphens in them.
func Card(names []string, o placing.Order) string {
	var all []string
	for e := range o.Exhibits() {
		all = append(all, Name(names, e))
	}
	if slices.ContainsFunc(all, func(name string) bool { return strings.ContainsAny(name, " -") }) {
		return strings.Join(all, ", ")
	}
	return strings.Join(all, "-")
}

var number = regexp.MustCompile(`\b\d+\b`)

// Rename puts the names of exhibits for their numbers into words that have no other
// numbers, as rankings, findings of a walk and spoken reasons.
func Rename(names []string, words string) string {
	if names == nil {
		return words
	}
	return number.ReplaceAllStringFunc(words, func(s string) string {
		n, err := strconv.Atoi(s)
		if err != nil || n < 1 || n > len(names) {
			return s
		}
		return names[n-1]
	})
}

// Numbers turns a placing or a ranking that is written in the names of the exhibits
// into numbers, as "103-101-102" into "3-1-2". Words in which no exhibit is named are
// returned as they are, and those in which some are and some are not are refused.
func Numbers(names []string, words string) (string, error) {
	apart := func(r rune) bool { return strings.ContainsRune("-=,; \t", r) }
	var out strings.Builder
	named, other := 0, ""
	for rest := words; rest != ""; {
		end := strings.IndexFunc(rest, apart)
		switch {
		case end == 0:
			out.WriteByte(rest[0])
			rest = rest[1:]
			continue
		case end < 0:
			end = len(rest)
		}
		word := rest[:end]
		rest = rest[end:]
		if i := slices.Index(names, word); i >= 0 {
			named++
			word = strconv.Itoa(i + 1)
		} else {
			other = word
		}
		out.WriteString(word)
	}
	switch {
	case named == 0:
		return words, nil
	case other != "":
		return "", fmt.Errorf("%q: %s is no exhibit; allowed: the names %s", words, other, strings.Join(names, ", "))
	}
	return out.String(), nil
}

// NumberPlacings reads a CSV sheet and returns it with the names of exhibits in its
// column "placing" turned into numbers, on the same lines. Without names, and where
// it is no such sheet, it is returned as it is.
func NumberPlacings(names []string, r io.Reader) (io.Reader, error) {
	text, err := io.ReadAll(r)
	if err != nil || names == nil {
		return bytes.NewReader(text), err
	}
	in := csv.NewReader(bytes.NewReader(text))
	in.FieldsPerRecord = -1
	var out bytes.Buffer
	w := csv.NewWriter(&out)
	column := -1
	for {
		row, err := in.Read()
		if err == io.EOF && column >= 0 {
			w.Flush()
			return &out, w.Error()
		}
		if err == nil && column < 0 {
			column = slices.Index(row, "placing")
		}
		if err != nil || column < 0 {
			return bytes.NewReader(text), nil // the reader of the sheet says what is wrong
		}
		line, _ := in.FieldPos(0)
		for w.Flush(); bytes.Count(out.Bytes(), []byte("\n")) < line-1; {
			out.WriteByte('\n') // an empty line
		}
		if column < len(row) {
			if row[column], err = Numbers(names, row[column]); err != nil {
				return nil, fmt.Errorf("line %d, column %d (placing): %w", line, column+1, err)
			}
		}
		_ = w.Write(row) // a Buffer takes every write
	}
}
