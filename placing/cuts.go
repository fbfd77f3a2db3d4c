package placing

import (
	"database/sql/driver"
	"iter"
	"strconv"

	"example.com/ribface/internal/fault"
	"example.com/ribface/internal/text"
	"example.com/ribface/maturity/cite"
)

// FullScore is the score of a card that agrees with the official placing
// (published: ext-nebraska-g2092, ext-maryland-contests).
const FullScore = 50

// maxCut bounds one cut: a cut of more than the full score has no meaning.
const maxCut = FullScore

// Cuts are the points between neighbors of an official placing, from the top
// pair down: one fewer than exhibits. It is comparable with ==. The zero Cuts
// are not set.
type Cuts struct {
	n    uint8
	each [MaxExhibits - 1]uint8
}

// NewCuts returns the cuts. There must be 1 to 11 of them, each 0 to 50. A cut
// of 0 makes the pair a tie for scoring (derived). Published limits are stricter;
// see [CutLimit].
func NewCuts(points ...int) (Cuts, error) {
	if len(points) < MinExhibits-1 || len(points) > MaxExhibits-1 {
		return Cuts{}, &FieldError{Field: "cuts", Value: text.Count(len(points), "cut"), Allowed: "1 to 11 cuts, one fewer than exhibits", Err: ErrRange}
	}
	c := Cuts{n: uint8(len(points))}
	for i, p := range points {
		if p < 0 || p > maxCut {
			return Cuts{}, &FieldError{Field: "cut " + strconv.Itoa(i+1), Value: strconv.Itoa(p), Allowed: "0 to 50", Err: ErrRange}
		}
		c.each[i] = uint8(p)
	}
	return c, nil
}

// ParseCuts reads cuts from the top pair down with hyphens, as "2-8-2"
// (published: ext-maryland-contests, ext-nebraska-g2092). Commas or blanks may stand
// for the hyphens, as in [ParseOrder]. Digits with nothing between are one cut, as
// "12"; what is then over 50 is refused, since 282 might be 2-8-2 or 28-2.
func ParseCuts(s string) (Cuts, error) {
	const allowed = "1 to 11 cuts of 0 to 50 with hyphens between, as 2-8-2"
	var list [MaxExhibits - 1]int
	n, bad, err := numbers(s, list[:], false)
	if err != nil {
		return Cuts{}, fault.Parse("cuts", s, bad, allowed, err)
	}
	var c Cuts
	for _, v := range list[:n] {
		if v > maxCut {
			return Cuts{}, fault.Parse("cuts", s, strconv.Itoa(v), allowed, ErrRange)
		}
		c.each[c.n] = uint8(v)
		c.n++
	}
	return c, nil
}

// MustParseCuts is [ParseCuts] for hard-coded text; it panics on an error.
func MustParseCuts(s string) Cuts {
	c, err := ParseCuts(s)
	if err != nil {
		panic(err)
	}
	return c
}

// Len returns the number of cuts, one fewer than exhibits; 0 for the zero Cuts.
func (c Cuts) Len() int { return int(c.n) }

// Equal reports whether c == d.
func (c Cuts) Equal(d Cuts) bool { return c == d }

// IsValid reports whether the cuts are set.
func (c Cuts) IsValid() bool { return c.n > 0 }

// At returns a cut, 1 for the top pair. A number outside 1 to Len gives 0.
func (c Cuts) At(i int) int {
	if i < 1 || i > c.Len() {
		return 0
	}
	return int(c.each[i-1])
}

// All yields the cuts from the top pair down.
func (c Cuts) All() iter.Seq[int] {
	return func(yield func(int) bool) {
		for i := 1; i <= c.Len(); i++ {
			if !yield(c.At(i)) {
				return
			}
		}
	}
}

// Total returns the sum of the cuts.
func (c Cuts) Total() int {
	t := 0
	for v := range c.All() {
		t += v
	}
	return t
}

// GreatestLoss returns the points lost by the full reversal, which is the worst
// card: the sum of k(n-k) times the k-th cut, 3a + 4b + 3c for four exhibits
// (derived).
func (c Cuts) GreatestLoss() int {
	n, loss := c.Len()+1, 0
	for k := 1; k < n; k++ {
		loss += k * (n - k) * c.At(k)
	}
	return loss
}

// NeverNegative reports whether no card can score below zero: the greatest loss
// is at most 50, which for four exhibits is 3a + 4b + 3c <= 50 (derived, exact).
func (c Cuts) NeverNegative() bool { return c.GreatestLoss() <= FullScore }

// String gives the cuts with hyphens, as "2-8-2"; "unset" for zero.
func (c Cuts) String() string { return text.String(c) }

// AppendText appends the cuts with hyphens; the zero value is empty text.
func (c Cuts) AppendText(b []byte) ([]byte, error) {
	return appendHyphened(b, c.Len(), c.At), nil
}

// MarshalText gives the cuts with hyphens; the zero value is empty text.
func (c Cuts) MarshalText() ([]byte, error) { return c.AppendText(nil) }

// UnmarshalText reads what [ParseCuts] reads; empty text gives the zero value. On
// error the receiver is left as it was.
func (c *Cuts) UnmarshalText(b []byte) error { return text.Unmarshal(c, b, ParseCuts) }

// Value gives the text for a database; NULL for the zero value.
func (c Cuts) Value() (driver.Value, error) { return text.Value(c) }

// Scan reads a database column that holds text; NULL gives the zero value.
func (c *Cuts) Scan(src any) error { return text.Scan(c, "cuts", src) }

// CutLimit is a rule on cuts for a class of four. The published ones differ from
// each other and from the exact condition [Cuts.NeverNegative], so a caller
// names the one to keep. The zero CutLimit is not set.
type CutLimit uint8

// The limits.
const (
	// LimitSum is a sum of 15 or less and nothing else (published:
	// ext-florida-4h334). It lets negative scores through.
	LimitSum CutLimit = 1 + iota
	// LimitColorado is a sum of 15 or less, a middle cut of 5 or less at a sum
	// of 15 and of 8 or less at 14, single cuts of 8 or less (published:
	// ext-colorado-1-619).
	LimitColorado
	// LimitMaryland is LimitColorado without the limit on single cuts
	// (published: ext-maryland-contests). Cuts of zero get past it: 0-12-1,
	// 0-13-0 and 1-12-0 go negative.
	LimitMaryland
	// LimitNebraska is a sum of 15 or less and single cuts of 8 or less
	// (published: ext-nebraska-g2092, ext-nebraska-cards). It lets negative
	// scores through, as for 3-8-4.
	LimitNebraska
	// LimitExact is the exact condition that no card goes negative (derived).
	LimitExact
)

var limits = text.Enum[CutLimit]{Kind: "limit on cuts", Names: []string{"", "sum", "colorado", "maryland", "nebraska", "exact"}}

var limitCites = [...]cite.Citation{
	LimitSum:      {Standing: cite.Published, IDs: "ext-florida-4h334"},
	LimitColorado: {Standing: cite.Published, IDs: "ext-colorado-1-619"},
	LimitMaryland: {Standing: cite.Published, IDs: "ext-maryland-contests"},
	LimitNebraska: {Standing: cite.Published, IDs: "ext-nebraska-g2092 ext-nebraska-cards"},
	LimitExact:    {Standing: cite.Derived},
}

// CutLimits yields the limits.
func CutLimits() iter.Seq[CutLimit] { return limits.All() }

// String gives the name of the limit; "unset" for zero.
func (l CutLimit) String() string { return limits.String(l) }

// MarshalText gives the name; the zero value is empty text.
func (l CutLimit) MarshalText() ([]byte, error) { return limits.Marshal(l) }

// UnmarshalText reads what [CutLimit.String] writes, in any case; empty text gives the
// zero value. On error the receiver is left as it was.
func (l *CutLimit) UnmarshalText(b []byte) error { return limits.Unmarshal(l, b) }

// Cite returns where the limit comes from; the zero Citation for a limit that is
// not set.
func (l CutLimit) Cite() cite.Citation {
	if !limits.Valid(l) {
		return cite.Citation{}
	}
	return limitCites[l]
}

// Check returns nil when the cuts keep the limit, and a [*FieldError] that says
// which part of it was broken. The published limits speak of three cuts only;
// any other number of cuts is refused by all but LimitExact.
func (l CutLimit) Check(c Cuts) error {
	if err := limits.Check("limit", l); err != nil {
		return err
	}
	if !c.IsValid() {
		return &FieldError{Field: "cuts", Allowed: "1 to 11 cuts", Err: ErrMissing}
	}
	broken := func(field, allowed string) error {
		return &FieldError{Field: field, Value: c.String(), Allowed: allowed + " (" + l.Cite().String() + ")", Err: ErrRange}
	}
	sum, middle := c.Total(), c.At(2)
	single := l == LimitColorado || l == LimitNebraska // cuts are limited one by one
	bySum := l == LimitColorado || l == LimitMaryland  // the middle cut is limited by the sum
	switch {
	case l == LimitExact && c.NeverNegative():
		return nil
	case l == LimitExact:
		return broken("greatest loss", "at most 50, so that no card scores below zero; it is "+strconv.Itoa(c.GreatestLoss()))
	case c.Len() != 3:
		return broken("cuts", "three cuts")
	case sum > 15:
		return broken("sum of cuts", "15 or less")
	case single && c.At(1) > 8:
		return broken("top cut", "8 or less")
	case single && middle > 8:
		return broken("middle cut", "8 or less")
	case single && c.At(3) > 8:
		return broken("bottom cut", "8 or less")
	case bySum && sum == 15 && middle > 5:
		return broken("middle cut", "5 or less at a sum of 15")
	case bySum && sum == 14 && middle > 8:
		return broken("middle cut", "8 or less at a sum of 14")
	default:
		return nil
	}
}
