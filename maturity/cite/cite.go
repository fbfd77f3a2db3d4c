// Package cite names where a rule, a table cell or a figure of this module comes
// from and how far it can be trusted.
//
// A [Citation] pairs a [Standing] with the ids of one or more sources; [Lookup]
// turns an id into the full [Source], and [Sources] lists the whole register. A
// [Step] is one line of an explanation: the rule, the numbers put in, what came
// out, and the citation.
//
// # Standings
//
// [Official] is the text of the federal standard or of a federal notice.
// [Published] is a university, an extension service, a journal, a rule book or
// the trade press. [CommonPractice] is a rule of the trade that stands in no
// source, or only where no author is known. [Memory] is recalled and was not
// found. [Derived] is worked out from others and is never stronger than the
// weakest of them.
//
// # Zero values
//
// The zero Citation has no standing and prints as "no source given"; the zero
// Standing is not set.
//
// # Encodings and errors
//
// Standing and Citation read and write text, and so JSON, flags, logs and
// database columns, in the spelling of String; their zero value is empty text. A
// decode that fails leaves its receiver as it was. Errors are the FieldError
// and ParseError that the packages maturity, grade and placing export, with the
// same sentinels.
//
// The register is generated from the table of sources in the module's test data.
// It lists what was read and makes no claim about what was not.
package cite

import (
	"iter"
	"slices"
	"strings"

	"example.com/ribface/internal/fault"
	"example.com/ribface/internal/text"
)

//go:generate go run example.com/ribface/internal/refs/gensources

// Standing says how strong the ground under a rule is.
type Standing uint8

// The standings, strongest first. Derived is never stronger than the weakest
// thing it was derived from.
const (
	Official       Standing = 1 + iota // text of the federal standard or of a federal notice
	Published                          // university, extension, journal, rule book, trade press
	CommonPractice                     // common practice, no source
	Memory                             // recalled, not found in a source
	Derived                            // worked out from values that have one of the other standings
)

var standings = text.Enum[Standing]{Kind: "standing", Names: []string{"", "official", "published", "common-practice", "memory", "derived"}}

// String gives the name of the standing; "unset" for zero.
func (s Standing) String() string { return standings.String(s) }

// MarshalText gives the name; the zero value is empty text.
func (s Standing) MarshalText() ([]byte, error) { return standings.Marshal(s) }

// UnmarshalText reads what [Standing.String] writes, in any case; empty text gives the
// zero value. On error the receiver is left as it was.
func (s *Standing) UnmarshalText(b []byte) error { return standings.Unmarshal(s, b) }

// Citation is the ground for a rule: a standing and the ids of its sources.
// It is comparable. The zero value stands for no citation.
type Citation struct {
	Standing Standing `json:"standing"`
	IDs      string   `json:"ids"` // source ids divided by single spaces; empty where no source stands behind it
}

// String gives the standing in words and the source ids.
func (c Citation) String() string {
	switch {
	case c == Citation{}:
		return "no source given"
	case c.Standing == CommonPractice && c.IDs == "":
		return "common practice, no source"
	case c.Standing == Memory && c.IDs == "":
		return "from memory"
	case c.IDs == "":
		return c.Standing.String()
	default:
		return c.Standing.String() + ": " + strings.ReplaceAll(c.IDs, " ", ", ")
	}
}

// parseCitation reads what UnmarshalText reads.
func parseCitation(s string) (Citation, error) {
	switch s {
	case Citation{}.String():
		return Citation{}, nil
	case Citation{Standing: CommonPractice}.String():
		return Citation{Standing: CommonPractice}, nil
	case Citation{Standing: Memory}.String():
		return Citation{Standing: Memory}, nil
	}
	name, ids, _ := strings.Cut(s, ": ")
	standing, err := standings.Parse(name)
	if err != nil {
		pe := err.(*fault.ParseError) // Enum.Parse has no other error
		return Citation{}, fault.Parse("citation", s, name, pe.Allowed, pe.Err)
	}
	c := Citation{Standing: standing, IDs: strings.ReplaceAll(ids, ", ", " ")}
	if !idsWellFormed(c.IDs) || c.String() != s {
		return Citation{}, fault.Parse("citation", s, strings.TrimPrefix(s, name), citeForm, fault.ErrSyntax)
	}
	return c, nil
}

const citeForm = "a standing, or a standing, a colon and source ids with commas between"

// idsWellFormed reports whether ids is empty, or ids of letters, digits, points,
// hyphens and underscores divided by single spaces.
func idsWellFormed(ids string) bool {
	if ids == "" {
		return true
	}
	for id := range strings.SplitSeq(ids, " ") {
		if id == "" || strings.Trim(id, idBytes) != "" {
			return false
		}
	}
	return true
}

const idBytes = "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789._-"

// MarshalText gives what [Citation.String] gives; the zero value is empty text.
// Source ids without standing, and ids that are not divided by single spaces,
// give a FieldError.
func (c Citation) MarshalText() ([]byte, error) {
	if c == (Citation{}) {
		return nil, nil
	}
	if err := standings.Check("standing of a citation", c.Standing); err != nil {
		return nil, err
	}
	if !idsWellFormed(c.IDs) {
		return nil, &fault.FieldError{Field: "source ids of a citation", Value: c.IDs, Allowed: "ids divided by single spaces", Err: fault.ErrSyntax}
	}
	return []byte(c.String()), nil
}

// UnmarshalText reads a citation as [Citation.String] writes it: a standing, a
// colon, and source ids with commas between, as "official: cfr-54-105"; a
// standing alone; "common practice, no source", "from memory" or "no source
// given"; empty text gives the zero value. The ids need not be known to [Lookup]. On
// error the receiver is left as it was.
func (c *Citation) UnmarshalText(b []byte) error { return text.Unmarshal(c, b, parseCitation) }

// Sources looks up every id of the citation, in order. Ids that are not known
// are left out; the library's own citations have none.
func (c Citation) Sources() []Source {
	var out []Source
	for id := range strings.FieldsSeq(c.IDs) {
		if s, ok := Lookup(id); ok {
			out = append(out, s)
		}
	}
	return out
}

// Source is one published source.
type Source struct {
	ID       string   `json:"id"`
	Title    string   `json:"title"`
	Issuer   string   `json:"issuer"`
	Date     string   `json:"date"`          // as the source gives it; "undated" where it gives none
	URL      string   `json:"url,omitempty"` // empty where the source is named by title only
	Standing Standing `json:"standing"`
}

// Lookup finds a source by its id.
func Lookup(id string) (Source, bool) {
	i, ok := slices.BinarySearchFunc(sources[:], id, func(s Source, id string) int { return strings.Compare(s.ID, id) })
	if !ok {
		return Source{}, false
	}
	return sources[i], true
}

// Sources yields all sources in order of id.
func Sources() iter.Seq[Source] { return slices.Values(sources[:]) }

// Step is one line of an explanation.
type Step struct {
	Name   string   `json:"name"`   // what is being settled: "overall maturity", "kidney, pelvic and heart fat"
	Rule   string   `json:"rule"`   // the rule, in words
	Given  string   `json:"given"`  // the numbers put in
	Result string   `json:"result"` // what came out
	Cite   Citation `json:"cite"`   // where the rule comes from
}

// String gives the step on one line.
func (s Step) String() string {
	return s.Name + ": " + s.Given + " -> " + s.Result + " (" + s.Rule + "; " + s.Cite.String() + ")"
}
