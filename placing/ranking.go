package placing

import (
	"cmp"
	"database/sql/driver"
	"math"
	"slices"
	"strconv"
	"strings"

	"example.com/ribface/internal/fault"
	"example.com/ribface/internal/text"
)

// Ranking is an order of all exhibits of a class in one respect, with ties: what a
// judge notes who compares all of them by one trait. A placing has no ties and is an
// [Order]. A Ranking is comparable with ==. The zero Ranking is not set.
type Ranking struct {
	n uint8
	// group is, for exhibit e at e-1, the number of its group of ties from the
	// top, from 1.
	group [MaxExhibits]uint8
}

// NewRanking returns the ranking of the groups from the top, each group holding
// the exhibits that are tied. Together they must be the exhibits 1 to n, each
// once, 2 to 12 of them; an empty group is refused.
func NewRanking(groups ...[]int) (Ranking, error) {
	n := 0
	for _, g := range groups {
		n += len(g)
	}
	if n < MinExhibits || n > MaxExhibits {
		return Ranking{}, &FieldError{Field: "ranking", Value: text.Count(n, "exhibit"), Allowed: "2 to 12 exhibits", Err: ErrRange}
	}
	r := Ranking{n: uint8(n)}
	for i, g := range groups {
		if len(g) == 0 {
			return Ranking{}, &FieldError{Field: "ranking", Value: "group " + strconv.Itoa(i+1) + " is empty", Allowed: "one exhibit or more in each group", Err: ErrMissing}
		}
		for _, e := range g {
			if err := r.put(e, i+1); err != nil {
				return Ranking{}, &FieldError{Field: "ranking", Value: "exhibit " + strconv.Itoa(e), Allowed: each(n), Err: err}
			}
		}
	}
	return r, nil
}

func (r *Ranking) put(e, group int) error {
	switch {
	case e < 1 || e > int(r.n):
		return ErrRange
	case r.group[e-1] != 0:
		return ErrRepeated
	}
	r.group[e-1] = uint8(group)
	return nil
}

// RankScores returns the ranking by whole-number scores, those of exhibit 1
// first: the highest score is at the top and equal scores tie. A number of scores
// other than 2 to 12 gives a [*FieldError].
func RankScores(scores ...int) (Ranking, error) {
	if len(scores) < MinExhibits || len(scores) > MaxExhibits {
		return Ranking{}, &FieldError{Field: "scores", Value: text.Count(len(scores), "score"), Allowed: "2 to 12, one for each exhibit", Err: ErrRange}
	}
	r := Ranking{n: uint8(len(scores))}
	levels := slices.Compact(slices.Sorted(slices.Values(scores)))
	for e, v := range scores {
		at, _ := slices.BinarySearch(levels, v)
		r.group[e] = uint8(len(levels) - at)
	}
	return r, nil
}

// Ranking returns the order as a ranking without ties; the zero Ranking for the zero
// Order.
func (o Order) Ranking() Ranking {
	r := Ranking{n: uint8(o.Len())}
	for p := 1; p <= o.Len(); p++ {
		r.group[o.At(p)-1] = uint8(p)
	}
	return r
}

// dashes are read as hyphens.
var dashes = strings.NewReplacer("\u2010", "-", "\u2011", "-", "\u2013", "-")

// ParseRanking reads a ranking written from the top with single spaces between
// and an equals sign for a tie, as "3 1=2 4": 3 is first, 1 and 2 are tied, 4 is
// last. Tied exhibits may stand in any order. More blanks, also around the equals
// sign, are passed over; commas, hyphens or dashes may stand for the spaces, but no
// two kinds in one text; for up to nine exhibits without a tie there may be nothing
// between, as "3124". No signs, no leading zeros.
func ParseRanking(s string) (Ranking, error) {
	const allowed = "2 to 12 exhibit numbers from the top, each once, a space or = for level between, as 3 1=2 4"
	if o, err := ParseOrder(s); err == nil {
		return o.Ranking(), nil
	}
	in := dashes.Replace(s)
	var groups []string
	switch {
	case strings.Contains(in, "-"):
		groups = strings.Split(in, "-")
	case strings.Contains(in, ","):
		groups = strings.Split(in, ",")
	default: // blanks, of which those around an equals sign divide nothing
		in = strings.Join(strings.Fields(strings.ReplaceAll(in, "=", " = ")), " ")
		groups = strings.Split(strings.ReplaceAll(in, " = ", "="), " ")
	}
	n := len(groups) + strings.Count(in, "=")
	if n > MaxExhibits {
		return Ranking{}, fault.Parse("ranking", s, "", allowed, ErrRange)
	}
	r := Ranking{n: uint8(n)}
	for i, g := range groups {
		for part := range strings.SplitSeq(g, "=") {
			part = text.Trim(part)
			e, err := strconv.Atoi(part)
			if err != nil || strconv.Itoa(e) != part {
				return Ranking{}, fault.Parse("ranking", s, part, allowed, ErrSyntax)
			}
			if err := r.put(e, i+1); err != nil {
				return Ranking{}, fault.Parse("ranking", s, part, each(n), err)
			}
		}
	}
	if n < MinExhibits {
		return Ranking{}, fault.Parse("ranking", s, "", allowed, ErrRange)
	}
	return r, nil
}

// Len returns the number of exhibits; 0 for the zero Ranking.
func (r Ranking) Len() int { return int(r.n) }

// IsValid reports whether the ranking is set.
func (r Ranking) IsValid() bool { return r.n > 0 }

// Equal reports whether r == s.
func (r Ranking) Equal(s Ranking) bool { return r == s }

// Groups returns the groups of tied exhibits from the top, exhibits ascending, in
// fresh slices.
func (r Ranking) Groups() [][]int {
	var all [][]int
	for e, g := range r.group[:r.n] {
		for len(all) < int(g) {
			all = append(all, nil)
		}
		all[g-1] = append(all[g-1], e+1)
	}
	return all
}

// HalfPlaces counts places of a ranking in halves, since tied exhibits share the
// middle of their places: two that tie for the second are both at place 2 1/2,
// which is 5 half places. The zero HalfPlaces is no place at all.
type HalfPlaces int

// String gives the places in their shortest form, as "2.5" or "-1".
func (h HalfPlaces) String() string {
	s := strconv.Itoa(int(h / 2))
	if h%2 == 0 {
		return s
	}
	if h == -1 {
		s = "-0"
	}
	return s + ".5"
}

// Place returns the place of an exhibit from the top, ties sharing the middle of
// theirs; 0 for an exhibit that is not in the ranking.
func (r Ranking) Place(exhibit int) HalfPlaces {
	if exhibit < 1 || exhibit > r.Len() {
		return 0
	}
	h := HalfPlaces(1)
	for _, g := range r.group[:r.n] {
		h += HalfPlaces(1 + cmp.Compare(r.group[exhibit-1], g))
	}
	return h
}

// Pairs counts what two rankings make of every pair of exhibits. The zero Pairs
// counts nothing.
type Pairs struct {
	Same     int `json:"same"`      // both put the pair the same way round
	Reversed int `json:"reversed"`  // they put it opposite ways round
	TiedHere int `json:"tied_here"` // tied in the first ranking alone
	TiedThen int `json:"tied_then"` // in the second alone
	TiedBoth int `json:"tied_both"` // in both
}

// Against compares two rankings pair by pair. Rankings of different sizes, or
// not set, give a [*FieldError].
func (r Ranking) Against(s Ranking) (Pairs, error) {
	if r.Len() != s.Len() || !r.IsValid() {
		return Pairs{}, &FieldError{Field: "ranking", Value: s.String(), Allowed: "a ranking of " + strconv.Itoa(r.Len()) + " exhibits", Err: ErrRange}
	}
	var p Pairs
	for a := range r.Len() {
		for b := a + 1; b < r.Len(); b++ {
			switch x, y := cmp.Compare(r.group[a], r.group[b]), cmp.Compare(s.group[a], s.group[b]); {
			case x == 0 && y == 0:
				p.TiedBoth++
			case x == 0:
				p.TiedHere++
			case y == 0:
				p.TiedThen++
			case x == y:
				p.Same++
			default:
				p.Reversed++
			}
		}
	}
	return p, nil
}

// TauB returns Kendall's tau-b of the two rankings,
// (P - Q) / sqrt((P+Q+T)(P+Q+U)), where P are the pairs the same way round, Q
// those reversed, T and U those tied in the one alone (published:
// stat-kendalltau-doc): 1 for the same ranking, -1 for the opposite one. It is a
// statistic that decides nothing. ok is false where one of the rankings has
// all exhibits tied.
func (p Pairs) TauB() (tau float64, ok bool) {
	pq := p.Same + p.Reversed
	a, b := pq+p.TiedHere, pq+p.TiedThen
	if a == 0 || b == 0 {
		return 0, false
	}
	return float64(p.Same-p.Reversed) / math.Sqrt(float64(a)*float64(b)), true
}

// String gives the ranking from the top, tied exhibits ascending, as "3 1=2 4";
// "unset" for zero.
func (r Ranking) String() string { return text.String(r) }

// AppendText appends the ranking as [Ranking.String] writes it; the zero value is
// empty text.
func (r Ranking) AppendText(b []byte) ([]byte, error) {
	for i, g := range r.Groups() {
		for j, e := range g {
			switch {
			case j > 0:
				b = append(b, '=')
			case i > 0:
				b = append(b, ' ')
			}
			b = strconv.AppendInt(b, int64(e), 10)
		}
	}
	return b, nil
}

// MarshalText gives the ranking; the zero value is empty text.
func (r Ranking) MarshalText() ([]byte, error) { return r.AppendText(nil) }

// UnmarshalText reads what [ParseRanking] reads; empty text gives the zero value.
// On error the receiver is left as it was.
func (r *Ranking) UnmarshalText(b []byte) error { return text.Unmarshal(r, b, ParseRanking) }

// Value gives the text for a database; NULL for the zero Ranking.
func (r Ranking) Value() (driver.Value, error) { return text.Value(r) }

// Scan reads a database column that holds text; NULL gives the zero Ranking. On error
// the receiver is left as it was.
func (r *Ranking) Scan(src any) error { return text.Scan(r, "ranking", src) }
