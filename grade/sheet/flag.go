package sheet

import (
	"hash/maphash"
	"iter"
	"strconv"
	"strings"

	"example.com/ribface/grade"
	"example.com/ribface/internal/text"
)

// Flag says what is possible in a row that was graded and yet unlikely.
type Flag struct {
	Kind FlagKind `json:"kind"`
	Note string   `json:"note"` // one line for people, with the value
}

// FlagKind is a kind of [Flag]. The zero FlagKind is not set.
type FlagKind uint8

// The kinds. What is usual is the range of [grade.Measures.Unusual].
const (
	RepeatedID FlagKind = 1 + iota // an earlier row has the same id
	UnusualFat
	UnusualRibeye
	UnusualKPH
	UnusualWeight
	WeightUnit  // a weight under 500 lb in a column of pounds, or over 1,300 lb in one of kilograms: it may be in the other unit (our own figures)
	KPHFraction // KPH over 0 and at most 0.1 percent: it may be a fraction of 1 (our own figure)

	flagKinds
)

var flagNames = text.Enum{Kind: "flag", Names: []string{"", "repeated id", "unusual fat", "unusual ribeye", "unusual KPH", "unusual weight", "weight unit", "KPH fraction"}}

// FlagKinds yields the kinds.
func FlagKinds() iter.Seq[FlagKind] {
	return func(yield func(FlagKind) bool) {
		for k := RepeatedID; k < flagKinds; k++ {
			if !yield(k) {
				return
			}
		}
	}
}

// IsValid reports whether k is one of the kinds.
func (k FlagKind) IsValid() bool { return flagNames.IsValid(int(k)) }

// String gives the name, as "repeated id"; "unset" for zero.
func (k FlagKind) String() string { return flagNames.String(int(k)) }

// ParseFlagKind reads a name, as [FlagKind.String] writes it.
func ParseFlagKind(s string) (FlagKind, error) {
	v, err := flagNames.Parse(s)
	return FlagKind(v), err
}

// AppendText appends the name; the zero value is empty text.
func (k FlagKind) AppendText(b []byte) ([]byte, error) { return flagNames.Append(b, int(k)) }

// MarshalText gives the name; the zero value is empty text.
func (k FlagKind) MarshalText() ([]byte, error) { return k.AppendText(nil) }

// UnmarshalText reads a name. On error the receiver is left as it was.
func (k *FlagKind) UnmarshalText(b []byte) error { return text.Unmarshal(k, b, ParseFlagKind) }

var (
	lightPounds  = grade.Pounds(500)
	heavyPounds  = grade.Pounds(1300)
	leastPercent = grade.Percent(0.1)
)

// flags gives what is unlikely in measures; kilograms says what unit the column of
// weights has.
func flags(m *grade.Measures, kilograms bool) (all []Flag) {
	for _, note := range m.Unusual() {
		name, _, _ := strings.Cut(note, " ")
		kind, _ := ParseFlagKind("unusual " + name) // the notes begin with these names
		all = append(all, Flag{kind, note})
	}
	switch w := m.Weight; {
	case !w.IsSet():
	case !kilograms && w.Compare(lightPounds) < 0:
		all = append(all, Flag{WeightUnit, "weight " + w.String() + ": are these kilograms?"})
	case kilograms && w.Compare(heavyPounds) > 0:
		all = append(all, Flag{WeightUnit, "weight " + w.Kilograms().StringFixed(1) + " kg: are these pounds?"})
	}
	if k := m.KPH; k.Units() > 0 && k.Compare(leastPercent) <= 0 {
		all = append(all, Flag{KPHFraction, "KPH " + k.String() + ": is this a fraction of 1?"})
	}
	return all
}

// idsKept is how many ids are remembered at least.
const idsKept = 1 << 16

// ids remembers the latest ids of a sheet, in memory that does not grow with it: a
// table that fills, and the full one before it. The zero ids has no tables yet.
type ids struct {
	seed        maphash.Seed
	now, before table
}

// table holds ids by their hashes, 40 bits of one, and in the 24 bits under them how
// many lines after from the id stands; 0 is a free place. It is at most half full.
type table struct {
	places  []uint64
	from, n int
}

const lineBits = 24

// see gives the line on which the id stood before, 0 for none, and remembers it.
func (s *ids) see(id string, line int) int {
	if s.now.n == idsKept || line-s.now.from >= 1<<lineBits || s.now.places == nil {
		s.turn(line)
	}
	h := maphash.String(s.seed, id)
	at := s.now.find(h)
	if *at != 0 {
		return s.now.from + int(*at&(1<<lineBits-1))
	}
	if s.before.places != nil {
		if old := *s.before.find(h); old != 0 {
			return s.before.from + int(old&(1<<lineBits-1))
		}
	}
	*at = h>>lineBits<<lineBits | uint64(line-s.now.from)
	s.now.n++
	return 0
}

// turn begins a new table with the line.
func (s *ids) turn(line int) {
	switch {
	case s.now.places == nil:
		s.seed = maphash.MakeSeed()
	case s.before.places == nil:
		s.before = s.now
		s.now.places = nil
	default:
		s.now, s.before = s.before, s.now
		clear(s.now.places)
	}
	if s.now.places == nil {
		s.now.places = make([]uint64, 2*idsKept)
	}
	s.now.from, s.now.n = line-1, 0
}

// find gives the place of a hash, or the free one for it.
func (t *table) find(hash uint64) *uint64 {
	const mask = 2*idsKept - 1
	for i := hash & mask; ; i = (i + 1) & mask {
		if p := &t.places[i]; *p == 0 || *p>>lineBits == hash>>lineBits {
			return p
		}
	}
}

func repeated(id string, line int) Flag {
	return Flag{RepeatedID, "id " + id + " stands on line " + strconv.Itoa(line) + " too"}
}
