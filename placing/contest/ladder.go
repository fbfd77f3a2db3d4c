package contest

import (
	"database/sql/driver"
	"slices"
	"strconv"

	"example.com/ribface/grade"
	"example.com/ribface/internal/text"
	"example.com/ribface/maturity"
	"example.com/ribface/maturity/cite"
	"example.com/ribface/placing"
)

// Ladder says what an answer loses: the answers that can be given stand on rungs
// from best to worst, each line between two rungs has a weight, and an answer
// loses the weights of the lines between it and the right one, up to the value of
// the item (the model of two published tables, see [PoultryCarcasses] and
// [CandledEggs]). No contest rule book with such a table for grades of beef was
// legible, so the caller gives the weights; the one table that was found is for
// yield grades in thirds, from a teaching deck, see [TaughtThirds]. The zero Ladder has no rungs and refuses every answer.
type Ladder[T comparable] struct {
	rungs []T
	depth []Points // the sum of the lines above each rung
	value Points
}

// NewLadder returns a ladder for items of the given value. There must be at least
// two rungs, all different, and one line fewer than rungs, each 0 to 1,000,000
// points; the value must be over 0 and no more than that.
func NewLadder[T comparable](value Points, rungs []T, lines []Points) (Ladder[T], error) {
	count := func(field string, n int, allowed string) error {
		return &FieldError{Field: field, Value: strconv.Itoa(n), Allowed: allowed, Err: ErrRange}
	}
	if err := checkValue("value of an item", value); err != nil {
		return Ladder[T]{}, err
	}
	if len(rungs) < 2 {
		return Ladder[T]{}, count("rungs", len(rungs), "two or more")
	}
	if len(lines) != len(rungs)-1 {
		return Ladder[T]{}, count("lines", len(lines), text.Count(len(rungs)-1, "line")+" for "+strconv.Itoa(len(rungs))+" rungs")
	}
	l := Ladder[T]{rungs: slices.Clone(rungs), depth: make([]Points, 1, len(rungs)), value: value}
	for i, w := range lines {
		if err := checkLoss("line "+strconv.Itoa(i+1), w); err != nil {
			return Ladder[T]{}, err
		}
		if slices.Contains(rungs[:i+1], rungs[i+1]) {
			return Ladder[T]{}, &FieldError{Field: "rung " + strconv.Itoa(i+2), Allowed: "each rung once", Err: ErrRepeated}
		}
		l.depth = append(l.depth, l.depth[i]+w)
	}
	return l, nil
}

// NewEvenLadder returns a ladder whose lines all have the same weight, as for so
// many points per third of a grade. The rules are those of [NewLadder].
func NewEvenLadder[T comparable](value, each Points, rungs []T) (Ladder[T], error) {
	return NewLadder(value, rungs, slices.Repeat([]Points{each}, max(len(rungs)-1, 0)))
}

// IsValid reports whether the ladder has rungs.
func (l Ladder[T]) IsValid() bool { return len(l.rungs) > 0 }

// Value returns the value of an item, which is the most that can be lost.
func (l Ladder[T]) Value() Points { return l.value }

// Rungs returns the rungs from best to worst, in a fresh slice.
func (l Ladder[T]) Rungs() []T { return slices.Clone(l.rungs) }

// GreatestLoss returns what the worst mistake loses.
func (l Ladder[T]) GreatestLoss() Points {
	if !l.IsValid() {
		return 0
	}
	return min(l.depth[len(l.depth)-1], l.value)
}

// Loss returns the points lost by an answer and how many lines lie between it and
// the key: over 0 for an answer that is better than the key. An answer or key that
// stands on no rung gives a [*FieldError].
func (l Ladder[T]) Loss(key, answer T) (lost Points, lines int, err error) {
	k, a := slices.Index(l.rungs, key), slices.Index(l.rungs, answer)
	if k < 0 {
		return 0, 0, &FieldError{Field: "key", Allowed: "a rung of the ladder", Err: ErrUnknown}
	}
	if a < 0 {
		return 0, 0, &FieldError{Field: "answer", Allowed: "a rung of the ladder", Err: ErrUnknown}
	}
	lost = l.depth[k] - l.depth[a]
	return min(max(lost, -lost), l.value), k - a, nil
}

// published builds a ladder of this package, whose parts the tests know to be in
// order.
func published(value int, rungs []string, lines ...Points) Ladder[string] {
	for i := range lines {
		lines[i] *= Point
	}
	l, _ := NewLadder(Points(value)*Point, rungs, lines)
	return l
}

// PoultryCarcasses returns the published ladder for ready-to-cook poultry
// carcasses and where it comes from: A to B 3 points, B to C 3, C to no grade 4,
// of 10. It is an example of the model and no table for beef.
func PoultryCarcasses() (Ladder[string], cite.Citation) {
	return published(10, []string{"A", "B", "C", "no grade"}, 3, 3, 4), cite.Citation{Standing: cite.Published, IDs: "psu-poultry"}
}

// CandledEggs returns the published ladder for candled eggs (page 140) and where
// it comes from: AA to A 1 point, A to B 1, B to inedible 3, of 5. It is an
// example of the model and no table for beef.
func CandledEggs() (Ladder[string], cite.Citation) {
	return published(5, []string{"AA", "A", "B", "inedible"}, 1, 1, 3), cite.Citation{Standing: cite.Published, IDs: "fl-ffa-2013"}
}

// CardQualities returns the 16 qualities of a published answer card, best first:
// thirds of Prime, Choice, Commercial and Utility, halves of Select and Standard
// (published: wa-ffa-card).
func CardQualities() []grade.Quality {
	var out []grade.Quality
	for _, g := range [...]grade.Grade{grade.Prime, grade.Choice, grade.Select, grade.Standard, grade.Commercial, grade.Utility} {
		for p := grade.High; p >= grade.Low; p-- {
			if p != grade.Average || g != grade.Select && g != grade.Standard {
				out = append(out, g.Part(p))
			}
		}
	}
	return out
}

// ChartQualities returns every quality that a carcass of one maturity group can
// get under the edition, best first, down to Canner and no grade; nothing for an
// edition or group that is not valid.
func ChartQualities(e grade.Edition, g maturity.Group) []grade.Quality {
	if !e.IsValid() || !g.IsValid() {
		return nil
	}
	out := []grade.Quality{grade.Canner.Part(grade.Whole), grade.NoGrade.Part(grade.Whole)}
	for line := range e.Lines() {
		if line.Group == g {
			out = append(out, line.Grade.Part(line.Part))
		}
	}
	slices.SortFunc(out, func(a, b grade.Quality) int { return b.Compare(a) })
	return out
}

// MarkRules say what an item without an answer scores. The zero MarkRules follow
// the published rule that a blank or a double mark loses the whole item.
type MarkRules struct {
	Blank      placing.Penalty // by default ZeroPoints (published: psu-poultry, fl-ffa-2013)
	Double     placing.Penalty // by default ZeroPoints (published: psu-poultry, fl-ffa-2013)
	Unreadable placing.Penalty // by default ZeroPoints (derived from the two above)
}

// Penalty returns what the rules give a mark, and where the default comes from;
// the Citation is zero where the rules choose for themselves. A mark that is not
// valid gives zeros.
func (r MarkRules) Penalty(m placing.Mark) (placing.Penalty, cite.Citation) {
	chosen, from := r.Blank, cite.Citation{Standing: cite.Published, IDs: "psu-poultry fl-ffa-2013"}
	switch m {
	case placing.Blank:
	case placing.DoubleMarked:
		chosen = r.Double
	case placing.Unreadable:
		chosen, from.Standing = r.Unreadable, cite.Derived
	default:
		return 0, cite.Citation{}
	}
	if chosen == 0 {
		return placing.ZeroPoints, from
	}
	return chosen, cite.Citation{}
}

// score returns what a mark scores on an item whose lowest score is given.
func (r MarkRules) score(m placing.Mark, lowest Points) (Points, error) {
	if !m.IsValid() {
		_, err := m.AppendText(nil)
		if m == 0 {
			err = &FieldError{Field: "answer", Allowed: "an answer or a mark", Err: ErrMissing}
		}
		return 0, err
	}
	switch p, _ := r.Penalty(m); p {
	case placing.ZeroPoints:
		return 0, nil
	case placing.LowestScore:
		return lowest, nil
	case placing.Refused:
		return 0, &FieldError{Field: "answer", Value: m.String(), Allowed: "one answer", Err: ErrMissing}
	default:
		_, err := p.AppendText(nil)
		return 0, err
	}
}

// QualityRule says how an estimate of a quality grade is scored. The zero
// QualityRule has no ladder and refuses every estimate.
type QualityRule struct {
	Ladder Ladder[grade.Quality]
	Marks  MarkRules
}

// place finds the rung of q: q itself, or its grade where the ladder has grades
// without parts.
func (r QualityRule) place(field string, q grade.Quality) (grade.Quality, error) {
	for _, q := range [...]grade.Quality{q, q.Grade().Part(grade.Whole)} {
		if slices.Contains(r.Ladder.rungs, q) {
			return q, nil
		}
	}
	allowed := "a rung of the ladder"
	for i, rung := range r.Ladder.rungs {
		if i == 0 {
			allowed = rung.String()
		} else {
			allowed += ", " + rung.String()
		}
	}
	return 0, &FieldError{Field: field, Value: q.String(), Allowed: allowed, Err: ErrUnknown}
}

// Loss returns the points lost by an answer and how many lines lie between it and
// the key: over 0 for an answer that is better than the key. Where the ladder has a
// grade as a whole, every part of it stands on that rung. An answer or key without
// a rung gives a [*FieldError] that lists the rungs.
func (r QualityRule) Loss(key, answer grade.Quality) (lost Points, lines int, err error) {
	k, err := r.place("official quality", key)
	if err != nil {
		return 0, 0, err
	}
	a, err := r.place("quality", answer)
	if err != nil {
		return 0, 0, err
	}
	return r.Ladder.Loss(k, a)
}

// Score returns the points of an answer: the value of the item less [QualityRule.Loss],
// or what the rules give its mark. An answer that says nothing is refused.
func (r QualityRule) Score(key grade.Quality, a Answer[grade.Quality]) (Points, error) {
	if !a.Given {
		return r.Marks.score(a.Mark, r.Ladder.value-r.Ladder.GreatestLoss())
	}
	lost, _, err := r.Loss(key, a.Value)
	if err != nil {
		return 0, err
	}
	return r.Ladder.value - lost, nil
}

// YieldStep is the fineness in which yield grades are answered. The zero YieldStep
// is not set.
type YieldStep uint8

// The steps.
const (
	WholeGrades YieldStep = 1 + iota // 1 to 5, decimals dropped (published: ext-sdsu-yield)
	// Thirds of a grade from 1.00 to 5.99, split at .34 and .67 (published:
	// wa-ffa-card). The bands have two decimals, so the yield is rounded to
	// hundredths first (derived).
	Thirds
	Tenths // of a grade, rounded (published: ga-ffa-2014 to the nearest tenth)
)

var yieldSteps = text.Enum{Kind: "yield step", Names: []string{"", "whole grades", "thirds", "tenths"}}

// IsValid reports whether s is one of the named steps.
func (s YieldStep) IsValid() bool { return yieldSteps.IsValid(int(s)) }

// String gives the name; "unset" for zero.
func (s YieldStep) String() string { return yieldSteps.String(int(s)) }

// ParseYieldStep reads the name of a step, as [YieldStep.String] writes it.
func ParseYieldStep(s string) (YieldStep, error) {
	v, err := yieldSteps.Parse(s)
	return YieldStep(v), err
}

// AppendText appends the name; the zero value is empty text.
func (s YieldStep) AppendText(b []byte) ([]byte, error) { return yieldSteps.Append(b, int(s)) }

// MarshalText gives the name; the zero value is empty text.
func (s YieldStep) MarshalText() ([]byte, error) { return s.AppendText(nil) }

// UnmarshalText reads a name. On error the receiver is left as it was.
func (s *YieldStep) UnmarshalText(b []byte) error { return text.Unmarshal(s, b, ParseYieldStep) }

// Value gives the name for a database.
func (s YieldStep) Value() (driver.Value, error) { return text.Value(s) }

// Scan reads a name from a database column that holds text.
func (s *YieldStep) Scan(src any) error { return text.Scan(s, yieldSteps.Kind, src) }

// YieldRule says how an estimate of a yield grade is scored. An answer n steps from
// the key loses n times Each, up to the value of the item; or, with a table Off, the
// n-th number of the table, and past its end the whole item; or, with WholeGrades and
// a ladder of the grades 1 to 5, the lines crossed. One table is published, for
// thirds ([TaughtThirds]); it is a teaching deck's and no contest rule book's, so the
// caller gives the points. The zero YieldRule refuses every estimate.
type YieldRule struct {
	Step     YieldStep
	Rounding grade.Rounding // to tenths, or to hundredths before thirds; not used for whole grades
	Value    Points         // value of an item, the most that can be lost
	Each     Points         // lost for each step; 0 with a table or a ladder
	Off      []Points       // lost for one step, two steps and so on, never less for more, and no more than the value; farther off loses the value
	Ladder   Ladder[int]    // only with WholeGrades: the five grades and the weights of the lines
	Marks    MarkRules
}

// TaughtThirds returns the published table of points for yield grades in thirds, and
// where it comes from: 10 for the right third, 8 for one off, 5 for two off, so a
// loss of 0, 2 and 5. It is from a teaching deck and no contest rule book. What three
// thirds off score was not printed; here it is nothing (our own). Yields are rounded
// to hundredths first, halves up (our own).
func TaughtThirds() (YieldRule, cite.Citation) {
	return YieldRule{Step: Thirds, Rounding: grade.HalfUp, Value: 10 * Point, Off: []Points{2 * Point, 5 * Point}},
		cite.Citation{Standing: cite.Published, IDs: "aged-yield-slides"}
}

// Check returns a [*FieldError] when the rule cannot be used: no step, a value not
// over 0, points below 0, no rounding where one is needed, a table that falls, passes
// the value or stands beside Each, or a ladder that goes with something else.
func (r YieldRule) Check() error {
	if err := yieldSteps.Check("yield step", int(r.Step)); err != nil {
		return err
	}
	if r.Step != WholeGrades && !r.Rounding.IsValid() {
		return &FieldError{Field: "rounding", Value: r.Rounding.String(), Allowed: "down, half up, half even", Err: ErrMissing}
	}
	if r.Ladder.IsValid() {
		rungs := r.Ladder.Rungs()
		slices.Sort(rungs)
		switch {
		case r.Step != WholeGrades || !slices.Equal(rungs, []int{1, 2, 3, 4, 5}):
			return &FieldError{Field: "ladder of yield grades", Allowed: "the grades 1 to 5, with whole grades", Err: ErrRange}
		case r.Each != 0 || len(r.Off) > 0 || r.Value != r.Ladder.value:
			return &FieldError{Field: "points for each step", Value: r.Each.String() + " of " + r.Value.String(), Allowed: "0, no table, and the value of the ladder, where there is one", Err: ErrRepeated}
		}
		return nil
	}
	if err := checkValue("value of an item", r.Value); err != nil {
		return err
	}
	least := Points(0)
	for i, p := range r.Off {
		if p < least || p > r.Value {
			return &FieldError{Field: "points for " + text.Count(i+1, "step") + " off", Value: p.String(), Allowed: least.String() + " to " + r.Value.String(), Err: ErrRange}
		}
		least = p
	}
	if len(r.Off) > 0 && r.Each != 0 {
		return &FieldError{Field: "points for each step", Value: r.Each.String(), Allowed: "0 with a table", Err: ErrRepeated}
	}
	return checkLoss("points for each step", r.Each)
}

// place counts the steps of a yield.
func (r YieldRule) place(y grade.Yield) int64 {
	switch r.Step {
	case Tenths:
		t, _ := y.Tenth(r.Rounding)
		return int64(t / (grade.OneGrade / 10))
	case Thirds:
		h, _ := y.Round(r.Rounding, 2)
		n := min(max(int64(h/(grade.OneGrade/100)), 100), 599)
		third := int64(0)
		if n%100 >= 34 {
			third++
		}
		if n%100 >= 67 {
			third++
		}
		return n/100*3 + third
	default:
		return int64(y.Grade())
	}
}

// Loss returns the points lost by an answer and how many steps it is off: over 0
// for an answer above the key. A rule that [YieldRule.Check] refuses gives its
// error.
func (r YieldRule) Loss(key, answer grade.Yield) (lost Points, steps int64, err error) {
	if err := r.Check(); err != nil {
		return 0, 0, err
	}
	lost, steps = r.loss(key, answer)
	return lost, steps, nil
}

// loss is Loss for a rule that is in order.
func (r *YieldRule) loss(key, answer grade.Yield) (lost Points, steps int64) {
	k, a := r.place(key), r.place(answer)
	if r.Ladder.IsValid() {
		lost, _, _ = r.Ladder.Loss(int(k), int(a))
		return lost, a - k
	}
	if n := max(a-k, k-a); len(r.Off) > 0 {
		switch {
		case n == 0:
			return 0, 0
		case n > int64(len(r.Off)):
			return r.Value, a - k
		}
		return r.Off[n-1], a - k
	}
	// A thousand steps are more than any two yields of the equation are apart; the
	// bound keeps the product from overflowing for anything else.
	return min(Points(min(max(a-k, k-a), 1_000))*min(r.Each, r.Value), r.Value), a - k
}

// Score returns the points of an answer: the value of the item less [YieldRule.Loss],
// or what the rules give its mark. An answer that says nothing is refused.
func (r YieldRule) Score(key grade.Yield, a Answer[grade.Yield]) (Points, error) {
	if err := r.Check(); err != nil {
		return 0, err
	}
	return r.score(key, a)
}

func (r *YieldRule) score(key grade.Yield, a Answer[grade.Yield]) (Points, error) {
	if !a.Given {
		lowest := Points(0)
		if r.Ladder.IsValid() {
			lowest = r.Value - r.Ladder.GreatestLoss()
		}
		return r.Marks.score(a.Mark, lowest)
	}
	lost, _ := r.loss(key, a.Value)
	return r.Value - lost, nil
}
