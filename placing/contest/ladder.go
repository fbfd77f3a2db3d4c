package contest

import (
	"encoding/json"
	"fmt"
	"slices"
	"strconv"

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
// legible, so the caller gives the weights; the one table that was found is for
// yield grades in thirds, from a teaching deck, see [TaughtThirds]. The zero Ladder has
// no rungs and refuses every answer.
type Ladder[T comparable] struct {
	rungs []T
	depth []int64 // the sum of the lines above each rung, in units
	value Points
}

// NewLadder returns a ladder for items of the given value. There must be at least
// two rungs, all different, and one line fewer than rungs, each 0 to 1,000,000
// points; the value must be over 0 and no more than that.
func NewLadder[T comparable](value Points, rungs []T, lines []Points) (Ladder[T], error) {
	count := func(field string, n int, allowed string) error {
		return &fault.FieldError{Path: field, Field: field, Value: strconv.Itoa(n), Allowed: allowed, Err: fault.ErrRange}
	}
	all := []error{checkValue("value", "value of an item", value)}
	switch {
	case len(rungs) < 2:
		all = append(all, count("rungs", len(rungs), "two or more"))
	case len(lines) != len(rungs)-1:
		all = append(all, count("lines", len(lines), text.Count(len(rungs)-1, "line")+" for "+strconv.Itoa(len(rungs))+" rungs"))
	}
	l := Ladder[T]{rungs: slices.Clone(rungs), depth: make([]int64, 1, len(rungs)+1), value: value}
	for i, w := range lines {
		all = append(all, checkLoss(nth("lines", i), "line "+strconv.Itoa(i+1), w))
		l.depth = append(l.depth, l.depth[i]+w.Units())
	}
	for i := range rungs {
		if slices.Contains(rungs[:i], rungs[i]) {
			all = append(all, &fault.FieldError{Path: nth("rungs", i), Field: "rung " + strconv.Itoa(i+1), Allowed: "each rung once", Err: fault.ErrRepeated})
		}
	}
	if err := fault.Join(all...); err != nil {
		return Ladder[T]{}, err
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

// Lines returns the weights of the lines from the top down, in a fresh slice.
func (l Ladder[T]) Lines() []Points {
	var out []Points
	for i := 1; i < len(l.depth); i++ {
		out = append(out, PointsUnits(l.depth[i]-l.depth[i-1]))
	}
	return out
}

// Equal reports whether two ladders have the same rungs, lines and value.
func (l Ladder[T]) Equal(m Ladder[T]) bool {
	return l.value == m.value && slices.Equal(l.rungs, m.rungs) && slices.Equal(l.depth, m.depth)
}

// ladderJSON is what a ladder is in JSON.
type ladderJSON[T comparable] struct {
	Value Points   `json:"value"`
	Rungs []T      `json:"rungs"`
	Lines []Points `json:"lines"`
}

// MarshalJSON gives value, rungs and lines; null for the zero Ladder. Rungs of a type
// that does not come back from JSON as it was are an error.
func (l Ladder[T]) MarshalJSON() ([]byte, error) {
	if !l.IsValid() {
		return []byte("null"), nil
	}
	b, err := json.Marshal(ladderJSON[T]{l.value, l.rungs, l.Lines()})
	if err != nil {
		return nil, err
	}
	var back Ladder[T]
	if err := back.UnmarshalJSON(b); err != nil || !back.Equal(l) {
		return nil, &fault.FieldError{Field: "rungs", Value: fmt.Sprintf("of type %T", l.rungs[0]), Allowed: "rungs of a type that JSON keeps", Err: fault.ErrUnknown}
	}
	return b, nil
}

// UnmarshalJSON reads what MarshalJSON gives, held to the rules of [NewLadder]; null
// changes nothing. On error the receiver is left as it was.
func (l *Ladder[T]) UnmarshalJSON(b []byte) error {
	return text.Made(b, l, func(in ladderJSON[T]) (Ladder[T], error) { return NewLadder(in.Value, in.Rungs, in.Lines) })
}

// Rungs returns the rungs from best to worst, in a fresh slice.
func (l Ladder[T]) Rungs() []T { return slices.Clone(l.rungs) }

// GreatestLoss returns what the worst mistake loses; not set for the zero Ladder.
func (l Ladder[T]) GreatestLoss() Points {
	if !l.IsValid() {
		return Points{}
	}
	return PointsUnits(min(l.depth[len(l.depth)-1], l.value.Units()))
}

// Loss returns the points lost by an answer and how many lines lie between it and
// the key: over 0 for an answer that is better than the key. An answer or key that
// stands on no rung gives a [*placing.FieldError].
func (l Ladder[T]) Loss(key, answer T) (lost Points, lines int, err error) {
	k, a := slices.Index(l.rungs, key), slices.Index(l.rungs, answer)
	if k < 0 {
		return Points{}, 0, &fault.FieldError{Field: "key", Allowed: "a rung of the ladder", Err: fault.ErrUnknown}
	}
	if a < 0 {
		return Points{}, 0, &fault.FieldError{Field: "answer", Allowed: "a rung of the ladder", Err: fault.ErrUnknown}
	}
	between := l.depth[k] - l.depth[a]
	return PointsUnits(min(max(between, -between), l.value.Units())), k - a, nil
}

// CardQualities returns the 16 qualities of a published answer card, best first:
// thirds of Prime, Choice, Commercial and Utility, halves of Select and Standard
// (published: wa-ffa-card). They are what the card has room for and not all that the
// standard gives: a ladder of them has no rung for Utility and Standard without a part,
// for Average Standard, Cutter, Canner and no grade; [QualityRule.LeavesOut] lists
// what a ladder leaves out. [ChartQualities] has a rung for every grade.
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

// LeavesOut returns the qualities, best first, that a carcass can get under the
// edition and that have no rung on the ladder: official facts and answers of these are
// refused. A ladder of [ChartQualities] of all groups leaves nothing out.
func (r QualityRule) LeavesOut(e grade.Edition) []grade.Quality {
	var out []grade.Quality
	for _, q := range ChartQualities(e) {
		if _, err := r.place("", q); err != nil {
			out = append(out, q)
		}
	}
	return out
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
	return 0, &fault.FieldError{Field: field, Value: q.String(), Allowed: allowed, Err: fault.ErrUnknown}
}

// Loss returns the points lost by an answer and how many lines lie between it and
// the key: over 0 for an answer that is better than the key. Where the ladder has a
// grade as a whole, every part of it stands on that rung. An answer or key without
// a rung gives a [*placing.FieldError] that lists the rungs.
func (r QualityRule) Loss(key, answer grade.Quality) (lost Points, lines int, err error) {
	k, err := r.place("official quality", key)
	if err != nil {
		return Points{}, 0, err
	}
	a, err := r.place("quality", answer)
	if err != nil {
		return Points{}, 0, err
	}
	return r.Ladder.Loss(k, a)
}

// Score returns the points of an answer: the value of the item less [QualityRule.Loss],
// or, for the zero answer, what the rules give its mark. An answer with a mark, and
// neither answer nor mark, are refused.
func (r QualityRule) Score(key, answer grade.Quality, mark placing.Mark) (Points, error) {
	if answer == 0 {
		return markScore(r.Marks, mark, r.Ladder.value.Sub(r.Ladder.GreatestLoss()))
	}
	if mark != 0 {
		return Points{}, both("quality", answer.String(), mark)
	}
	lost, _, err := r.Loss(key, answer)
	return r.Ladder.value.Sub(lost), err
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
	if r.Ladder.IsValid() {
		var ladder, each error
		if rungs := slices.Sorted(slices.Values(r.Ladder.rungs)); r.Step != WholeGrades || !slices.Equal(rungs, []int{1, 2, 3, 4, 5}) {
			ladder = &fault.FieldError{Path: "ladder", Field: "ladder of yield grades", Allowed: "the grades 1 to 5, with whole grades", Err: fault.ErrRange}
		}
		if r.Each.IsSet() || len(r.Off) > 0 || r.Value != r.Ladder.value {
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
func (r YieldRule) place(y grade.Yield) int64 {
	switch r.Step {
	case Tenths:
		t, _ := y.Round(r.Rounding, 1)
		return t.Units() / (grade.OneGrade / 10)
	case Thirds:
		h, _ := y.Round(r.Rounding, 2)
		n := min(max(h.Units()/(grade.OneGrade/100), 100), 599)
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
		return Points{}, 0, err
	}
	for _, y := range [...]struct {
		field string
		y     grade.Yield
	}{{"official yield", key}, {"yield", answer}} {
		if !y.y.IsSet() {
			return Points{}, 0, &fault.FieldError{Field: y.field, Allowed: "a yield grade", Err: fault.ErrMissing}
		}
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
			return whole(0), 0
		case n > int64(len(r.Off)):
			return r.Value, a - k
		}
		return r.Off[n-1], a - k
	}
	// A thousand steps are more than any two yields of the equation are apart; the
	// bound keeps the product from overflowing for anything else.
	value := r.Value.Units()
	return PointsUnits(min(min(max(a-k, k-a), 1_000)*min(r.Each.Units(), value), value)), a - k
}

// Score returns the points of an answer: the value of the item less [YieldRule.Loss],
// or, for an answer that is not set, what the rules give its mark. An answer with a
// mark, and neither answer nor mark, are refused.
func (r YieldRule) Score(key, answer grade.Yield, mark placing.Mark) (Points, error) {
	if err := r.Check(); err != nil {
		return Points{}, err
	}
	if !key.IsSet() {
		return Points{}, &fault.FieldError{Field: "official yield", Allowed: "a yield grade", Err: fault.ErrMissing}
	}
	return r.score(key, answer, mark)
}

func (r *YieldRule) score(key, answer grade.Yield, mark placing.Mark) (Points, error) {
	if !answer.IsSet() {
		lowest := whole(0)
		if r.Ladder.IsValid() {
			lowest = r.Value.Sub(r.Ladder.GreatestLoss())
		}
		return markScore(r.Marks, mark, lowest)
	}
	if mark != 0 {
		return Points{}, both("yield", answer.String(), mark)
	}
	lost, _ := r.loss(key, answer)
	return r.Value.Sub(lost), nil
}
