package grade

import (
	"database/sql/driver"
	"iter"
	"time"

	"example.com/ribface/internal/text"
	"example.com/ribface/maturity/cite"
)

// Edition is an edition of the federal standard for grades of carcass beef. The
// zero Edition is not set. Editions are ordered in time.
type Edition uint8

// The editions.
const (
	// Edition1975 was in use from 1976: flat lines in group A, conformation
	// dropped, the fourth grade called Good (published: tamu-ansc627-2015,
	// news-1976-06-19).
	Edition1975 Edition = 1 + iota
	// Edition1987 calls Good Select, with the same minima (official:
	// cfr-1987-54-p51). It was in use from 23 November 1987; 23 September is the
	// day of the Federal Register page (published: news-1987-09-28,
	// news-1987-12-09).
	Edition1987
	// Edition1997 asks for Modest in Choice B and closes Select to B (official:
	// fr-1996-01-30). It was put off from 1 July 1996 to 31 January 1997
	// (official: fr-1996-05-01).
	Edition1997
	// Edition2016 takes up heavier weight examples; the minima stay (official:
	// fr-2016-03-01).
	Edition2016
	// Edition2017 lets teeth or verified papers settle the age (official:
	// fr-2017-12-06); the minima stay.
	Edition2017

	// Current is the newest edition that this library knows.
	Current = Edition2017
)

// edition is what one edition says.
type edition struct {
	name  string
	from  time.Time     // first day in use
	dated cite.Citation // where that day comes from
	chart *chart
	byAge bool // teeth and papers count
}

func day(y int, m time.Month, d int) time.Time { return time.Date(y, m, d, 0, 0, 0, 0, time.UTC) }

var editions = [...]edition{
	Edition1975: {"1975", day(1976, time.February, 23), cite.Citation{Standing: cite.Memory}, &chart1975, false},
	Edition1987: {"1987", day(1987, time.November, 23), cite.Citation{Standing: cite.Published, IDs: "news-1987-09-28 news-1987-12-09"}, &chart1987, false},
	Edition1997: {"1997", day(1997, time.January, 31), cite.Citation{Standing: cite.Official, IDs: "fr-1996-05-01"}, &chart1997, false},
	Edition2016: {"2016", day(2016, time.March, 1), cite.Citation{Standing: cite.Official, IDs: "fr-2016-03-01"}, &chart1997, false},
	Edition2017: {"2017", day(2017, time.December, 18), cite.Citation{Standing: cite.Official, IDs: "fr-2017-12-06"}, &chart1997, true},
}

var editionNames = text.Enum[Edition]{Kind: "edition", Names: []string{"", "1975", "1987", "1997", "2016", "2017"}}

// Editions yields the editions from the oldest to the newest.
func Editions() iter.Seq[Edition] { return editionNames.All() }

// EditionOn returns the edition in use on the day of t, in t's own time zone. A
// day before the oldest edition gives a [*FieldError].
func EditionOn(t time.Time) (Edition, error) {
	y, m, d := t.Date()
	on := day(y, m, d)
	for e := Current; e >= Edition1975; e-- {
		if !on.Before(editions[e].from) {
			return e, nil
		}
	}
	return 0, &FieldError{Field: "date", Value: on.Format(time.DateOnly), Allowed: editions[Edition1975].from.Format(time.DateOnly) + " or later", Err: ErrRange}
}

// From returns the first day on which the edition was in use, and where that day
// comes from: for 1975 it is from memory, for 1987 published, for the later ones
// official. An edition that is not valid gives the zero Time.
func (e Edition) From() (time.Time, cite.Citation) {
	if !e.IsValid() {
		return time.Time{}, cite.Citation{}
	}
	return editions[e].from, editions[e].dated
}

// ByAge reports whether teeth and papers may settle the age under the edition.
func (e Edition) ByAge() bool { return e.IsValid() && editions[e].byAge }

// IsValid reports whether e is one of the editions.
func (e Edition) IsValid() bool { return e-1 < Current }

// String gives the year; "unset" for zero.
func (e Edition) String() string { return editionNames.String(e) }

// ParseEdition reads the year of an edition, as [Edition.String] writes it.
func ParseEdition(s string) (Edition, error) { return editionNames.Parse(s) }

// MarshalText gives the year; the zero value is empty text.
func (e Edition) MarshalText() ([]byte, error) { return editionNames.Marshal(e) }

// UnmarshalText reads a year. On error the receiver is left as it was.
func (e *Edition) UnmarshalText(b []byte) error { return editionNames.Unmarshal(e, b) }

// Value gives the year for a database.
func (e Edition) Value() (driver.Value, error) { return editionNames.Value(e) }

// Scan reads a year from a database column that holds text.
func (e *Edition) Scan(src any) error { return editionNames.Scan(e, src) }
