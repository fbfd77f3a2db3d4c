package maturity

import (
	"database/sql/driver"
	"strconv"

	"example.com/ribface/internal/fault"
	"example.com/ribface/internal/text"
	"example.com/ribface/internal/text/fixed"
	"example.com/ribface/maturity/cite"
)

// Months is an age in whole months. Zero is not given.
type Months int16

// Months returns the ages between which the group is usually met. The oldest
// group has no upper end; to is 0 for it. A carcass under 9 months is veal or
// calf, outside the beef standard (from memory). The ages are approximate
// (official: ams-maturity-slides).
func (g Group) Months() (from, to Months) {
	if !g.IsValid() {
		return 0, 0
	}
	return groupMonths[g], groupMonths[g+1]
}

var groupMonths = [...]Months{A: 9, B: 30, C: 42, D: 72, E: 96, E + 1: 0}

// Months returns the approximate age that goes with the score, by straight lines
// between the ages of the groups' ends (derived from ams-maturity-slides), in
// whole months, decimals dropped. It reports false for a score in E, where no
// upper age is published, and for one that is not valid.
func (s Score) Months() (Months, bool) {
	from, to := s.Group().Months()
	if to == 0 {
		return 0, false
	}
	return from + (to-from)*Months(s.Units())/100, true
}

// Teeth is the count of permanent incisors that have come through, as seen at
// slaughter. The zero Teeth means that nobody looked; a mouth without permanent
// incisors is Incisors(0).
type Teeth int8

// Incisors returns the count as evidence. Cattle have 0 to 8 permanent incisors;
// any other count gives an invalid value that every computation refuses by field
// name.
func Incisors(n int) Teeth {
	if n < 0 || n > 8 {
		return Teeth(-1 - min(max(n, 0), 100))
	}
	return Teeth(n + 1)
}

// Count returns the count; ok is false when nobody looked or the count is
// impossible.
func (t Teeth) Count() (n int, ok bool) {
	if !t.IsValid() {
		return 0, false
	}
	return int(t) - 1, true
}

const (
	notLooked   = "not looked at"
	teethPlural = " permanent incisors"
	teethOne    = "1 permanent incisor"
)

// IsValid reports whether somebody looked and the count is possible.
func (t Teeth) IsValid() bool { return t >= 1 && t <= 9 }

// String gives the count in words, as "2 permanent incisors"; "not looked at" for
// zero. A value made from an impossible count shows what was asked, up to 100.
func (t Teeth) String() string {
	n := int(t) - 1
	switch {
	case t == 0:
		return notLooked
	case t == -1:
		return "a negative count of permanent incisors"
	case t < -9:
		n = -int(t) - 1 // what Incisors was asked for
	case t < 0:
		return "Teeth(" + strconv.Itoa(int(t)) + ")" // no count gives these
	}
	if n == 1 {
		return teethOne
	}
	return strconv.Itoa(n) + teethPlural
}

// number takes one of the words off the end of the text, and the blanks before it.
func number(in string, words ...string) string {
	for _, w := range words {
		if before, ok := text.CutSuffixFold(in, w); ok {
			return text.Trim(before)
		}
	}
	return in
}

// ParseTeeth reads a count as [Teeth.String] writes it, as "2 permanent incisors"
// or "not looked at", in any case, "2 incisors", or a bare number 0 to 8.
func ParseTeeth(s string) (Teeth, error) {
	in := text.Trim(s)
	if text.SameWords(in, notLooked) {
		return 0, nil
	}
	n, err := fixed.Parse(number(in, "permanent incisors", "permanent incisor", "incisors", "incisor"), 0)
	if err == nil && (n < 0 || n > 8) {
		err = ErrRange
	}
	if err != nil {
		return 0, fault.Parse("teeth", s, "", "0 to 8", err)
	}
	return Incisors(int(n)), nil
}

// MarshalText gives the count in words; the zero value is empty text.
func (t Teeth) MarshalText() ([]byte, error) { return words(t, t.check) }

func (t Teeth) check() error {
	return &FieldError{Field: "teeth", Value: t.String(), Allowed: "0 to 8", Err: ErrRange}
}

// words gives the text of a value, nothing for zero, and an error for one that is not
// valid.
func words[T interface {
	comparable
	IsValid() bool
	String() string
}](v T, refuse func() error) ([]byte, error) {
	var zero T
	switch {
	case v == zero:
		return nil, nil
	case !v.IsValid():
		return nil, refuse()
	}
	return []byte(v.String()), nil
}

// UnmarshalText reads what [ParseTeeth] reads; empty text gives the zero value.
// On error the receiver is left as it was.
func (t *Teeth) UnmarshalText(b []byte) error { return text.Unmarshal(t, b, ParseTeeth) }

// UnmarshalJSON reads the text in quotes, or a bare count. On error the receiver
// is left as it was.
func (t *Teeth) UnmarshalJSON(b []byte) error { return text.UnmarshalJSON(t, b) }

// Value gives the count in words for a database.
func (t Teeth) Value() (driver.Value, error) { return text.Value(t) }

// Scan reads a count from a database column that holds text or an integer.
func (t *Teeth) Scan(src any) error { return text.Scan(t, "teeth", src) }

// ageLimit is the age under which teeth or papers put a carcass in group A.
const ageLimit Months = 30

// greatestMonths bounds the age that papers may state: no cow is 50 years old.
const greatestMonths Months = 600

var (
	citeAge    = cite.Citation{Standing: cite.Official, IDs: "fr-2017-12-06"}
	citeUnder  = cite.Citation{Standing: cite.Published, IDs: "news-2017-maturity checkoff-maturity-under30 ext-tamu-maturity-2018 bif-quality"}
	citeOldDE  = cite.Citation{Standing: cite.Published, IDs: "ext-tamu-maturity-2018"}
	citeAgeOne = cite.Citation{Standing: cite.Derived, IDs: "news-2017-maturity"}
)

// Evidence is what is known of the age of one carcass. The colors of a dark cutter
// are not read as age (official: cfr-1965-53-p25).
type Evidence struct {
	Skeletal Score `json:"skeletal,omitzero"` // bones and cartilages; always needed
	Lean     Score `json:"lean,omitzero"`     // color and texture of the lean; may be left out only when teeth or papers settle the age
	Teeth    Teeth `json:"teeth,omitzero"`    // permanent incisors, where somebody looked
	// Buttons are what was seen of the thoracic buttons. They are a part of what
	// Skeletal was called by, so they settle nothing by themselves; see
	// [Buttons.Goes] for whether the two go together.
	Buttons Buttons `json:"buttons,omitzero"`
	Papers  Months  `json:"papers,omitzero"` // age by documents verified under a federal program, where there are any
}

// UnmarshalJSON reads an object as the package says under Encodings.
func (e *Evidence) UnmarshalJSON(b []byte) error { return text.Struct(b, e) }

// Under30 reports whether teeth or papers show an age under 30 months: two
// permanent incisors or fewer (published: checkoff-maturity-under30,
// bif-quality), or papers for less than 30 months. Either is enough, also where
// the other says more (published: news-2017-maturity; one talk report that gives
// three incisors to 24-30 months, news-2021-dentition, is not followed).
func (e Evidence) Under30() bool {
	return e.Teeth >= 1 && e.Teeth <= 3 || e.Papers > 0 && e.Papers < ageLimit
}

// Check returns an error that tells of every field that is missing or impossible;
// nil when there is none. byAge says whether teeth and papers may settle the age.
func (e Evidence) Check(byAge bool) error {
	if e.plain() {
		return nil
	}
	skeletal := fault.At("skeletal", "", e.Skeletal.Check("skeletal maturity"))
	var teeth, papers, buttons, lean error
	if e.Buttons != 0 && !e.Buttons.IsValid() {
		buttons = fault.At("buttons", "", e.Buttons.check())
	}
	if e.Teeth < 0 || e.Teeth > 9 {
		teeth = fault.At("teeth", "", e.Teeth.check())
	}
	if e.Papers < 0 || e.Papers > greatestMonths {
		papers = &FieldError{Path: "papers", Field: "papers", Value: e.Papers.String(), Allowed: "1 to 600 months, 0 for none", Err: ErrRange}
	}
	if e.Lean != 0 || !byAge || !e.Under30() || e.Skeletal >= firstD {
		lean = fault.At("lean", "", e.Lean.Check("lean maturity"))
	}
	return fault.Join(skeletal, lean, teeth, buttons, papers)
}

const (
	lastA  = Score(199)
	firstB = Score(200)
	firstD = Score(400)
)

// ByAge returns the overall maturity when teeth and papers count, as they do
// from 18 December 2017 (official: fr-2017-12-06).
//
// With teeth or papers under 30 months and a skeleton younger than D00 the
// carcass is in group A. Its units do not matter for the grade, since every line
// in A is flat; the balanced score is kept where it lies in A, and A99 stands in
// for it elsewhere (derived: no source gives the units). Lean may be left out then:
// the skeletal score stands for both, so that the result is the skeletal score
// where that lies in A, and A99 where it does not. Under a rounding to tens A99 is
// a bound like the others of [Balance], which a ten must keep: C50 gives A90, and
// A27 without lean gives A20.
//
// A skeleton in D or E is not opened to the young grades by its age (published:
// ext-tamu-maturity-2018); it is balanced as without teeth or papers, as is a
// carcass of 30 months or more. Both need lean.
//
// The errors are those of [Evidence.Check].
func (r Balancing) ByAge(e Evidence) (Score, error) { return r.by(e, true) }

// ByBone returns the overall maturity from skeletal and lean alone, as before 18
// December 2017; teeth and papers are checked and then left aside. The errors
// are those of [Evidence.Check].
func (r Balancing) ByBone(e Evidence) (Score, error) { return r.by(e, false) }

func (r Balancing) by(e Evidence, byAge bool) (Score, error) {
	if e.plain() && r.named() {
		return r.balance(e.Skeletal, e.Lean, oldestScore, nil), nil
	}
	if err := fault.Join(e.Check(byAge), r.Check()); err != nil {
		return 0, err
	}
	return r.overall(e, byAge, nil), nil
}

// plain reports whether the evidence is bone and lean alone, both possible, and
// perhaps buttons.
func (e Evidence) plain() bool {
	return e.Skeletal.IsValid() && e.Lean.IsValid() && e.Teeth == 0 && e.Papers == 0 && e.Buttons <= WhiteAndSoft
}

// named reports whether the rules are named choices.
func (r Balancing) named() bool { return r.Tens <= TensTowardLean && r.OldLean <= OldLeanStaysInB }

// Steps explains the overall maturity of the evidence, line by line; byAge says
// whether teeth and papers count. Evidence that does not check gives no steps.
func (r Balancing) Steps(e Evidence, byAge bool) []cite.Step {
	if e.Check(byAge) != nil || !r.named() {
		return nil
	}
	var t trail
	r.overall(e, byAge, &t)
	return t.steps
}

// overall finds the overall maturity of evidence that checks; t takes down each step,
// a nil t nothing.
func (r Balancing) overall(e Evidence, byAge bool, t *trail) Score {
	switch {
	case e.Teeth == 0 && e.Papers == 0:
	case !byAge:
		t.age(e, "in use from 18 December 2017 only", "left aside", citeAge)
	case !e.Under30():
		t.age(e, "30 months or more: skeletal and lean decide", "balanced", citeAgeOne)
	case e.Skeletal >= firstD:
		t.age(e, oldBone, "balanced", citeOldDE)
	default:
		t.age(e, "two permanent incisors or fewer, or papers under 30 months: group A", "A", citeUnder)
		lean := e.Lean
		if lean == 0 {
			lean = e.Skeletal
		}
		s := r.balance(e.Skeletal, lean, lastA, nil)
		if t != nil {
			t.add("units within A do not move a line; the balanced score where it lies in A, else A99", "skeletal "+e.Skeletal.String()+", lean "+e.Lean.String(), s, cite.Citation{Standing: cite.Derived})
		}
		return s
	}
	return r.balance(e.Skeletal, e.Lean, oldestScore, t)
}

const oldBone = "a skeleton in D or E is not opened to the young grades by an age under 30 months"

// age takes down what teeth and papers did.
func (t *trail) age(e Evidence, rule, result string, c cite.Citation) {
	if t == nil {
		return
	}
	given := "teeth " + e.Teeth.String() + ", papers " + e.Papers.String()
	if rule == oldBone {
		given += ", skeletal " + e.Skeletal.String()
	}
	t.steps = append(t.steps, cite.Step{Name: "age by teeth or papers", Rule: rule, Given: given, Result: result, Cite: c})
}

// IsValid reports whether m is an age that papers may state, 1 to 600 months.
func (m Months) IsValid() bool { return m > 0 && m <= greatestMonths }

// String gives the age in words, as "29 months"; "none" for zero.
func (m Months) String() string {
	if m == 0 {
		return "none"
	}
	return text.Count(int(m), "month")
}

const monthsAllowed = "1 to 600 months"

// ParseMonths reads an age as [Months.String] writes it, as "29 months" or
// "none", in any case, "29 mo", or a bare number of months. Ages over 600 months are
// refused.
func ParseMonths(s string) (Months, error) {
	in := text.Trim(s)
	if text.SameWords(in, "none") {
		return 0, nil
	}
	n, err := fixed.Parse(number(in, "months", "month", "mos", "mo"), 0)
	if err == nil && (n < 1 || n > int64(greatestMonths)) {
		err = ErrRange
	}
	if err != nil {
		return 0, fault.Parse("age", s, "", monthsAllowed, err)
	}
	return Months(n), nil
}

// MarshalText gives the age in words; the zero value is empty text.
func (m Months) MarshalText() ([]byte, error) { return words(m, m.check) }

func (m Months) check() error {
	return &FieldError{Field: "age", Value: m.String(), Allowed: monthsAllowed, Err: ErrRange}
}

// UnmarshalText reads what [ParseMonths] reads; empty text gives the zero value.
// On error the receiver is left as it was.
func (m *Months) UnmarshalText(b []byte) error { return text.Unmarshal(m, b, ParseMonths) }

// UnmarshalJSON reads the text in quotes, or a bare number of months. On error
// the receiver is left as it was.
func (m *Months) UnmarshalJSON(b []byte) error { return text.UnmarshalJSON(m, b) }

// Value gives the age in words for a database.
func (m Months) Value() (driver.Value, error) { return text.Value(m) }

// Scan reads an age from a database column that holds text or an integer.
func (m *Months) Scan(src any) error { return text.Scan(m, "age", src) }
