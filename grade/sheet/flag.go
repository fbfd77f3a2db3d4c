package sheet

import (
	"hash/maphash"
	"iter"
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
)

var flagNames = text.Enum[FlagKind]{Kind: "flag", Names: []string{"", "repeated id", "unusual fat", "unusual ribeye", "unusual KPH", "unusual weight", "weight unit", "KPH fraction"}}

// FlagKinds yields the kinds.
func FlagKinds() iter.Seq[FlagKind] { return flagNames.All() }

// String gives the name, as "repeated id"; "unset" for zero.
func (k FlagKind) String() string { return flagNames.String(k) }

// MarshalText gives the name; the zero value is empty text.
func (k FlagKind) MarshalText() ([]byte, error) { return flagNames.Marshal(k) }

// UnmarshalText reads what [FlagKind.String] writes, in any case; empty text gives the
// zero value. On error the receiver is left as it was.
func (k *FlagKind) UnmarshalText(b []byte) error { return flagNames.Unmarshal(k, b) }

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
		kind, _ := flagNames.Parse("unusual " + name) // the notes begin with these names
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
// list that fills, and the full one before it. As long as each id is greater than all
// before it, as most are in most sheets, none needs to be looked for.
type ids struct {
	seed        maphash.Seed
	greatest    string
	now, before list
}

// list holds ids in the order of their lines, and a table to look for them, from the
// first time that it is needed.
type list struct {
	all   []place
	table []uint32 // places in all, from 1; 0 where none is; at most half full
	built bool
}

// place is the hash of an id and its line.
type place struct {
	hash uint64
	line int
}

// see gives the line on which the id stood before, 0 for none, and remembers it.
func (s *ids) see(id string, line int) int {
	if len(s.now.all) == cap(s.now.all) {
		s.turn()
	}
	h := maphash.String(s.seed, id)
	if greater(id, s.greatest) {
		s.greatest = id
	} else if at := max(s.now.look(h), s.before.look(h)); at != 0 {
		return at
	}
	s.now.all = append(s.now.all, place{h, line})
	if s.now.built {
		s.now.put(len(s.now.all))
	}
	return 0
}

// greater reports whether an id is longer than another, or as long and after it.
func greater(a, b string) bool { return len(a) > len(b) || len(a) == len(b) && a > b }

// turn begins a list.
func (s *ids) turn() {
	if s.now.all == nil {
		s.seed = maphash.MakeSeed()
	}
	s.now, s.before = s.before, s.now
	if s.now.all == nil {
		s.now.all = make([]place, 0, idsKept)
	}
	s.now.all, s.now.built = s.now.all[:0], false
}

// look gives the line of an id, 0 for none.
func (l *list) look(hash uint64) int {
	if len(l.all) == 0 {
		return 0
	}
	if !l.built {
		if l.built = true; l.table == nil {
			l.table = make([]uint32, 2*idsKept)
		}
		clear(l.table)
		for i := range l.all {
			l.put(i + 1)
		}
	}
	at := *l.find(hash)
	if at == 0 {
		return 0
	}
	return l.all[at-1].line
}

// put enters a place of the list, from 1, into the table.
func (l *list) put(at int) { *l.find(l.all[at-1].hash) = uint32(at) }

// find gives where the hash is in the table, or the free place for it.
func (l *list) find(hash uint64) *uint32 {
	const mask = 2*idsKept - 1
	for i := hash & mask; ; i = (i + 1) & mask {
		if p := &l.table[i]; *p == 0 || l.all[*p-1].hash == hash {
			return p
		}
	}
}
