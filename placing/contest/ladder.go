package contest

import (
	"slices"
	"strconv"
	"strings"

	"example.com/ribface/grade"
	"example.com/ribface/internal/fault"
	"example.com/ribface/internal/text"
	"example.com/ribface/maturity"
	"example.com/ribface/maturity/cite"
	"example.com/ribface/placing"
)

// Ladder says what an answer loses: the answers that can be given stand on rungs
// from best to worst, each line between two rungs has a weight, and an answer
// loses the weights of the lines between it and the right one, up to the value of
// the item (the model of two published tables, for poultry carcasses and for candled
// eggs: psu-poultry, fl-ffa-2013). No contest rule book with such a table for grades of beef was
// legible, so the caller gives the weights, as so many points per third of a grade; the
// one table that was found is for yield grades in thirds, from a teaching deck, see
// [TaughtThirds]. The zero Ladder has no rungs and refuses every answer.
type Ladder[T comparable] struct {
	Value Points   `json:"value"` // value of an item, the most that can be lost: over 0 to 1,000,000
	Rungs []T      `json:"rungs"` // two or more, all different, from best to worst
	Lines []Points `json:"lines"` // the weights from the top down, one fewer than rungs, each 0 to 1,000,000
}

// Check returns an error that tells of everything for which the ladder cannot be used,
// see [placing.Problems]: too few rungs, a rung twice, lines that do not go with them,
// weights and a value out of range.
func (l Ladder[T]) Check() error {
	count := func(field string, n int, allowed string) error {
		return &fault.FieldError{Path: field, Field: field, Value: strconv.Itoa(n), Allowed: allowed, Err: fault.ErrRange}
	}
	all := []error{checkValue("value", "value of an item", l.Value)}
	switch n := len(l.Rungs); {
	case n < 2:
		all = append(all, count("rungs", n, "two or more"))
	case len(l.Lines) != n-1:
		all = append(all, count("lines", len(l.Lines), text.Count(n-1, "line")+" for "+strconv.Itoa(n)+" rungs"))
	}
	for i, w := range l.Lines {
		all = append(all, checkLoss(nth("lines", i), "line "+strconv.Itoa(i+1), w))
	}
	for i, rung := range l.Rungs {
		if slices.Contains(l.Rungs[:i], rung) {
			all = append(all, &fault.FieldError{Path: nth("rungs", i), Field: "rung " + strconv.Itoa(i+1), Allowed: "each rung once", Err: fault.ErrRepeated})
		}
	}
	return fault.Join(all...)
}

// clone copies what a caller could change.
func (l Ladder[T]) clone() Ladder[T] {
	return Ladder[T]{l.Value, slices.Clone(l.Rungs), slices.Clone(l.Lines)}
}

// Loss returns the points lost by an answer and how many lines lie between it and
// the key: over 0 for an answer that is better than the key. An answer or key that
// stands on no rung gives a [*placing.FieldError], and a ladder that [Ladder.Check]
// refuses its error.
func (l Ladder[T]) Loss(key, answer T) (lost Points, lines int, err error) {
	k, a := slices.Index(l.Rungs, key), slices.Index(l.Rungs, answer)
	for _, of := range [...]struct {
		field string
		rung  int
	}{{"key", k}, {"answer", a}} {
		if of.rung < 0 {
			return Points{}, 0, &fault.FieldError{Field: of.field, Allowed: "a rung of the ladder", Err: fault.ErrUnknown}
		}
	}
	if err := l.Check(); err != nil {
		return Points{}, 0, err
	}
	return l.between(k, a), k - a, nil
}

// between returns the loss between two rungs of a ladder that is in order.
func (l *Ladder[T]) between(a, b int) Points {
	var sum int64
	for _, w := range l.Lines[min(a, b):max(a, b)] {
		sum += w.Units()
	}
	return PointsUnits(min(sum, l.Value.Units()))
}

// lowest returns what the worst mistake scores on a ladder that is in order; not set
// for the zero Ladder.
func (l *Ladder[T]) lowest() Points { return l.Value.Sub(l.between(0, len(l.Lines))) }

// CardQualities returns the 16 qualities of a published answer card, best first:
// thirds of Prime, Choice, Commercial and Utility, halves of Select and Standard
// (published: wa-ffa-card). They are what the card has room for and not all that the
// standard gives: a ladder of them has no rung for Utility and Standard without a part,
// for Average Standard, Cutter, Canner and no grade, so that official facts and answers
// of these are refused. [ChartQualities] has a rung for every grade; those of its list
// that [QualityRule.Loss] refuses are what a ladder leaves out.
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

// ChartQualities returns every quality that a carcass of the maturity groups can get
// under the edition, best first, down to Canner and no grade; of all groups where none
// is named, so that a ladder of them has a rung for every carcass. It returns nothing
// for an edition or group that is not valid.
func ChartQualities(e grade.Edition, groups ...maturity.Group) []grade.Quality {
	if !e.IsValid() || slices.ContainsFunc(groups, func(g maturity.Group) bool { return !g.IsValid() }) {
		return nil
	}
	out := []grade.Quality{grade.Canner.Part(grade.Whole), grade.NoGrade.Part(grade.Whole)}
	for line := range e.Lines() {
		if len(groups) == 0 || slices.Contains(groups, line.Group) {
			out = append(out, line.Grade.Part(line.Part))
		}
	}
	slices.SortFunc(out, func(a, b grade.Quality) int { return b.Compare(a) })
	return slices.Compact(out)
}

// markScore returns what a mark scores on an item whose lowest score is given.
func markScore(r placing.CardRules, m placing.Mark, lowest Points) (Points, error) {
	if !m.IsValid() {
		_, err := m.MarshalText()
		if m == 0 {
			err = &fault.FieldError{Field: "answer", Allowed: "an answer or a mark", Err: fault.ErrMissing}
		}
		return Points{}, err
	}
	switch p, _ := r.ItemPenalty(m); p {
	case placing.ZeroPoints:
		return whole(0), nil
	case placing.LowestScore:
		return lowest, nil
	case placing.Refused:
		return Points{}, &fault.FieldError{Field: "answer", Value: m.String(), Allowed: "one answer", Err: fault.ErrMissing}
	default:
		_, err := p.MarshalText()
		return Points{}, err
	}
}

// QualityRule says how an estimate of a quality grade is scored. The zero
// QualityRule has no ladder and refuses every estimate.
type QualityRule struct {
	Ladder Ladder[grade.Quality] `json:"ladder,omitzero"`
	Marks  placing.CardRules     `json:"marks,omitzero"`
}

// check refuses a ladder that is not in order.
func (r *QualityRule) check() error {
	if len(r.Ladder.Rungs) == 0 {
		return nil // which refuses every estimate
	}
	return fault.At("ladder", "", r.Ladder.Check())
}

// place finds the rung of q: q itself, or its grade where the ladder has grades
// without parts.
func (r *QualityRule) place(field string, q grade.Quality) (int, error) {
	rungs := r.Ladder.Rungs
	if i := slices.Index(rungs, q); i >= 0 {
		return i, nil
	}
	if i := slices.Index(rungs, q.Grade().Part(grade.Whole)); i >= 0 {
		return i, nil
	}
	allowed := "a rung of the ladder"
	if len(rungs) > 0 {
		names := make([]string, len(rungs))
		for i, rung := range rungs {
			names[i] = rung.String()
		}
		allowed = strings.Join(names, ", ")
	}
	return 0, &fault.FieldError{Field: field, Value: q.String(), Allowed: allowed, Err: fault.ErrUnknown}
}

// Loss returns the points lost by an answer and how many lines lie between it and
// the key: over 0 for an answer that is better than the key. Where the ladder has a
// grade as a whole, every part of it stands on that rung. An answer or key without
// a rung gives a [*placing.FieldError] that lists the rungs, and a ladder that
// [Ladder.Check] refuses its error.
func (r QualityRule) Loss(key, answer grade.Quality) (lost Points, lines int, err error) {
	if err := r.check(); err != nil {
		return Points{}, 0, err
	}
	return r.loss(key, answer)
}

// loss is Loss for a rule that is in order.
func (r *QualityRule) loss(key, answer grade.Quality) (lost Points, lines int, err error) {
	k, err := r.place("official quality", key)
	if err != nil {
		return Points{}, 0, err
	}
	a, err := r.place("quality", answer)
	if err != nil {
		return Points{}, 0, err
	}
	return r.Ladder.between(k, a), k - a, nil
}

// Score returns the points of an answer: the value of the item less [QualityRule.Loss],
// or, for the zero answer, what the rules give its mark. An answer with a mark, and
// neither answer nor mark, are refused.
func (r QualityRule) Score(key, answer grade.Quality, mark placing.Mark) (Points, error) {
	if err := r.check(); err != nil {
		return Points{}, err
	}
	return r.score(key, answer, mark)
}

func (r *QualityRule) score(key, answer grade.Quality, mark placing.Mark) (Points, error) {
	switch {
	case answer == 0:
		return markScore(r.Marks, mark, r.Ladder.lowest())
	case mark != 0:
		return Points{}, both("quality", answer.String(), mark)
	}
	lost, _, err := r.loss(key, answer)
	return r.Ladder.Value.Sub(lost), err
}

// both is the error for a value that stands with a mark.
func both(field, value string, m placing.Mark) error {
	return &fault.FieldError{Field: field, Value: value + " and " + m.String(), Allowed: "a value or a mark", Err: fault.ErrRepeated}
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

var yieldSteps = text.Enum[YieldStep]{Kind: "yield step", Names: []string{"", "whole grades", "thirds", "tenths"}}

// String gives the name; "unset" for zero.
func (s YieldStep) String() string { return yieldSteps.String(s) }

// MarshalText gives the name; the zero value is empty text.
func (s YieldStep) MarshalText() ([]byte, error) { return yieldSteps.Marshal(s) }

// UnmarshalText reads what [YieldStep.String] writes, in any case; empty text gives the
// zero value. On error the receiver is left as it was.
func (s *YieldStep) UnmarshalText(b []byte) error { return yieldSteps.Unmarshal(s, b) }

// YieldRule says how an estimate of a yield grade is scored. An answer n steps from
// the key loses n times Each, up to the value of the item; or, with a table Off, the
// n-th number of the table, and past its end the whole item; or, with WholeGrades and
// a ladder of the grades 1 to 5, the lines crossed. One table is published, for
// thirds ([TaughtThirds]); it is a teaching deck's and no contest rule book's, so the
// caller gives the points. The zero YieldRule refuses every estimate.
type YieldRule struct {
	Step     YieldStep         `json:"step"`
	Rounding grade.Rounding    `json:"rounding,omitzero"` // to tenths, or to hundredths before thirds; not used for whole grades
	Value    Points            `json:"value,omitzero"`    // value of an item, the most that can be lost; with a ladder the same as its value
	Each     Points            `json:"each,omitzero"`     // lost for each step; not set with a table or a ladder
	Off      []Points          `json:"off,omitzero"`      // lost for one step, two steps and so on, never less for more, and no more than the value; farther off loses the value
	Ladder   Ladder[int]       `json:"ladder,omitzero"`   // only with WholeGrades: the five grades and the weights of the lines
	Marks    placing.CardRules `json:"marks,omitzero"`
}

// TaughtThirds returns the published table of points for yield grades in thirds, and
// where it comes from: 10 for the right third, 8 for one off, 5 for two off, so a
// loss of 0, 2 and 5. It is from a teaching deck and no contest rule book. What three
// thirds off score was not printed; here it is nothing (our own). Yields are rounded
// to hundredths first, halves up (our own).
func TaughtThirds() (YieldRule, cite.Citation) {
	return YieldRule{Step: Thirds, Rounding: grade.HalfUp, Value: whole(10), Off: []Points{whole(2), whole(5)}},
		cite.Citation{Standing: cite.Published, IDs: "aged-yield-slides"}
}

// Check returns an error that tells of everything for which the rule cannot be used,
// see [placing.Problems]: no step, a value not over 0, points below 0, no rounding
// where one is needed, a table that falls, passes the value or stands beside Each, or
// a ladder that goes with something else.
func (r YieldRule) Check() error {
	step := fault.At("step", "", yieldSteps.Check("yield step", r.Step))
	var rounding error
	if (r.Step == Thirds || r.Step == Tenths) && !text.Named(r.Rounding) {
		rounding = &fault.FieldError{Path: "rounding", Field: "rounding", Value: r.Rounding.String(), Allowed: "down, half up, half even", Err: fault.ErrMissing}
	}
	if rungs := slices.Sorted(slices.Values(r.Ladder.Rungs)); len(rungs) > 0 {
		ladder := fault.At("ladder", "", r.Ladder.Check())
		if r.Step != WholeGrades || !slices.Equal(rungs, []int{1, 2, 3, 4, 5}) {
			ladder = &fault.FieldError{Path: "ladder", Field: "ladder of yield grades", Allowed: "the grades 1 to 5, with whole grades", Err: fault.ErrRange}
		}
		var each error
		if r.Each.IsSet() || len(r.Off) > 0 || r.Value != r.Ladder.Value {
			each = &fault.FieldError{Path: "each", Field: "points for each step", Value: r.Each.String() + " of " + r.Value.String(), Allowed: "unset, no table, and the value of the ladder, where there is one", Err: fault.ErrRepeated}
		}
		return fault.Join(step, rounding, ladder, each)
	}
	all := []error{step, rounding, checkValue("value", "value of an item", r.Value)}
	least := whole(0)
	for i, p := range r.Off {
		if p.Compare(least) < 0 || p.Compare(r.Value) > 0 {
			all = append(all, &fault.FieldError{Path: nth("off", i), Field: "points for " + text.Count(i+1, "step") + " off", Value: p.String(), Allowed: least.String() + " to " + r.Value.String(), Err: fault.ErrRange})
		}
		least = p
	}
	switch {
	case len(r.Off) == 0:
		all = append(all, checkLoss("each", "points for each step", r.Each))
	case r.Each.IsSet():
		all = append(all, &fault.FieldError{Path: "each", Field: "points for each step", Value: r.Each.String(), Allowed: "unset with a table", Err: fault.ErrRepeated})
	}
	return fault.Join(all...)
}

// place counts the steps of a yield.
func (r *YieldRule) place(y grade.Yield) int64 {
	switch r.Step {
	case Tenths:
		t, _ := y.Round(r.Rounding, 1)
		return t.Units() / (grade.OneGrade / 10)
	case Thirds:
		h, _ := y.Round(r.Rounding, 2)
		n := min(max(h.Units()/(grade.OneGrade/100), 100), 599)
		return n/100*3 + (n%100-1)/33 // .34 and .67 begin the upper two
	default:
		return int64(y.Grade())
	}
}

// Loss returns the points lost by an answer and how many steps it is off: over 0
// for an answer above the key. A rule that [YieldRule.Check] refuses gives its
// error.
func (r YieldRule) Loss(key, answer grade.Yield) (lost Points, steps int64, err error) {
	if err := r.ready(key); err != nil {
		return Points{}, 0, err
	}
	if !answer.IsSet() {
		return Points{}, 0, &fault.FieldError{Field: "yield", Allowed: "a yield grade", Err: fault.ErrMissing}
	}
	lost, steps = r.loss(key, answer)
	return lost, steps, nil
}

// ready refuses a rule that is not in order, and a key without a yield.
func (r *YieldRule) ready(key grade.Yield) error {
	if err := r.Check(); err != nil {
		return err
	}
	if !key.IsSet() {
		return &fault.FieldError{Field: "official yield", Allowed: "a yield grade", Err: fault.ErrMissing}
	}
	return nil
}

// loss is Loss for a rule that is in order.
func (r *YieldRule) loss(key, answer grade.Yield) (lost Points, steps int64) {
	k, a := r.place(key), r.place(answer)
	n := max(a-k, k-a)
	switch {
	case len(r.Ladder.Rungs) > 0:
		lost = r.Ladder.between(slices.Index(r.Ladder.Rungs, int(k)), slices.Index(r.Ladder.Rungs, int(a)))
	case len(r.Off) == 0:
		// A thousand steps are more than any two yields of the equation are apart; the
		// bound keeps the product from overflowing for anything else.
		value := r.Value.Units()
		lost = PointsUnits(min(min(n, 1_000)*min(r.Each.Units(), value), value))
	case n == 0:
		lost = whole(0)
	case n > int64(len(r.Off)):
		lost = r.Value
	default:
		lost = r.Off[n-1]
	}
	return lost, a - k
}

// Score returns the points of an answer: the value of the item less [YieldRule.Loss],
// or, for an answer that is not set, what the rules give its mark. An answer with a
// mark, and neither answer nor mark, are refused.
func (r YieldRule) Score(key, answer grade.Yield, mark placing.Mark) (Points, error) {
	if err := r.ready(key); err != nil {
		return Points{}, err
	}
	return r.score(key, answer, mark)
}

func (r *YieldRule) score(key, answer grade.Yield, mark placing.Mark) (Points, error) {
	switch {
	case !answer.IsSet() && len(r.Ladder.Rungs) > 0:
		return markScore(r.Marks, mark, r.Ladder.lowest())
	case !answer.IsSet():
		return markScore(r.Marks, mark, whole(0))
	case mark != 0:
		return Points{}, both("yield", answer.String(), mark)
	}
	lost, _ := r.loss(key, answer)
	return r.Value.Sub(lost), nil
}
