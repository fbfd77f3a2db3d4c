package placing

import (
	"database/sql/driver"
	"iter"
	"strconv"
	"strings"

	"example.com/ribface/internal/fault"
	"example.com/ribface/internal/text"
	"github.com/shopspring/decimal"
)

// Official is an official placing with its cuts, ready to score cards. It is
// comparable with == and holds no pointers. The zero Official is not set and
// refuses every card.
type Official struct {
	order Order
	cuts  Cuts
	// depth is, for each exhibit, the sum of the cuts above it in the order. It
	// has a slot for every value of four bits, so that no index is out of range.
	depth [16]int16
	// base is FullScore less the depths times the official places, so that a
	// card's score is base plus its depths times its own places.
	base int32
}

// NewOfficial returns the official placing. The cuts must be one fewer than the
// exhibits. They are not held to any published limit here; see [CutLimit.Check].
func NewOfficial(order Order, cuts Cuts) (Official, error) {
	if !order.IsValid() {
		return Official{}, &FieldError{Path: "order", Field: "official placing", Allowed: "an order of 2 to 12 exhibits", Err: ErrMissing}
	}
	if cuts.Len() != order.Len()-1 {
		value, reason := cuts.String(), ErrRange
		if !cuts.IsValid() {
			value, reason = "", ErrMissing
		}
		return Official{}, &FieldError{Path: "cuts", Field: "cuts", Value: value, Allowed: text.Count(order.Len()-1, "cut") + " for " + strconv.Itoa(order.Len()) + " exhibits", Err: reason}
	}
	o := Official{order: order, cuts: cuts, base: FullScore}
	depth := 0
	for p := 1; p <= order.Len(); p++ {
		depth += cuts.At(p - 1)
		o.depth[order.At(p)] = int16(depth)
		o.base -= int32(depth * p)
	}
	return o, nil
}

// Order returns the official order.
func (o Official) Order() Order { return o.order }

// Cuts returns the cuts.
func (o Official) Cuts() Cuts { return o.cuts }

// Equal reports whether o == p.
func (o Official) Equal(p Official) bool { return o == p }

// IsValid reports whether the official placing is set.
func (o Official) IsValid() bool { return o.order.IsValid() }

// String gives order and cuts, as "3-2-1-4 cuts 2-8-2"; "unset" for zero.
func (o Official) String() string { return text.String(o) }

// ParseOfficial reads an order, the word cuts and the cuts, as "3-2-1-4 cuts 2-8-2":
// order and cuts as [ParseOrder] and [ParseCuts] read them, the word in any case, and
// a comma or colon next to it passed over. Here the order tells how many cuts there
// are, so that they may be written without anything between where each is under 10:
// "3214 cuts 282". The errors are those of [ParseOrder], [ParseCuts] and
// [NewOfficial].
func ParseOfficial(s string) (Official, error) {
	const word = "cuts"
	at := 0
	for at < len(s) && (at+len(word) > len(s) || !strings.EqualFold(s[at:at+len(word)], word)) {
		at++
	}
	if at == len(s) {
		return Official{}, fault.Parse("official placing", s, "", "an order and its cuts, as 3-2-1-4 cuts 2-8-2", ErrSyntax)
	}
	o, err := ParseOrder(strings.TrimRight(s[:at], " ,:"))
	if err != nil {
		return Official{}, err
	}
	rest := strings.TrimLeft(s[at+len(word):], " ,:")
	if digits := text.Trim(rest); len(digits) == o.Len()-1 && len(digits) > 1 && strings.Trim(digits, "0123456789") == "" {
		rest = strings.Join(strings.Split(digits, ""), "-")
	}
	c, err := ParseCuts(rest)
	if err != nil {
		return Official{}, err
	}
	return NewOfficial(o, c)
}

// AppendText appends order and cuts, as "3-2-1-4 cuts 2-8-2"; the zero value is
// empty text.
func (o Official) AppendText(b []byte) ([]byte, error) {
	if !o.IsValid() {
		return b, nil
	}
	b, _ = o.order.AppendText(b)
	return o.cuts.AppendText(append(b, " cuts "...))
}

// MarshalText gives order and cuts; the zero value is empty text.
func (o Official) MarshalText() ([]byte, error) { return o.AppendText(nil) }

// UnmarshalText reads what [ParseOfficial] reads; empty text gives the zero
// value. On error the receiver is left as it was.
func (o *Official) UnmarshalText(b []byte) error { return text.Unmarshal(o, b, ParseOfficial) }

// Value gives the text for a database; NULL for the zero value.
func (o Official) Value() (driver.Value, error) { return text.Value(o) }

// Scan reads a database column that holds text; NULL gives the zero value.
func (o *Official) Scan(src any) error { return text.Scan(o, "official placing", src) }

// Score returns the pairwise-cut score of a card: 50, less for every pair that
// the card reverses the sum of the cuts between the two (published:
// ext-maryland-contests). It may be negative when the cuts allow it; no source
// says to floor it, see [CardRules]. A card of another size gives a
// [*FieldError].
//
// The sum over pairs is computed as the sum over exhibits of the cuts above it
// times how far the card moved it (derived; the tests hold the two equal).
func (o Official) Score(card Order) (int, error) {
	n := uint(card.packed & 15)
	if n != uint(o.order.packed&15) || n == 0 {
		return 0, o.refuse(card)
	}
	score := o.base
	rest := card.packed >> 4
	for p := int32(1); p <= int32(n); p++ {
		score += p * int32(o.depth[rest&15])
		rest >>= 4
	}
	return int(score), nil
}

func (o Official) refuse(card Order) error {
	if !o.IsValid() {
		return &FieldError{Field: "official placing", Allowed: "an order of 2 to 12 exhibits", Err: ErrMissing}
	}
	return sizeError("card", card, o.order.Len())
}

// Fault is a pair of exhibits that a card has the wrong way round.
type Fault struct {
	Upper  int `json:"upper"`  // the exhibit that is officially over the other
	Lower  int `json:"lower"`  // the other
	Points int `json:"points"` // what the reversal costs: the cuts between the two
}

// Faults yields the pairs that the card reverses, with what each costs, in the
// order of the official placing: pairs of the first exhibit first. A pair with no
// cut between it is yielded with 0 points. A card that [Official.Score] refuses
// yields nothing.
func (o Official) Faults(card Order) iter.Seq[Fault] {
	return func(yield func(Fault) bool) {
		if card.Len() != o.order.Len() {
			return
		}
		for i := 1; i <= card.Len(); i++ {
			upper := o.order.At(i)
			for j := i + 1; j <= card.Len(); j++ {
				lower := o.order.At(j)
				if card.Place(upper) > card.Place(lower) && !yield(Fault{upper, lower, int(o.depth[lower] - o.depth[upper])}) {
					return
				}
			}
		}
	}
}

// Scores yields every possible card with its score, in the order of [Orders].
func (o Official) Scores() iter.Seq2[Order, int] {
	return func(yield func(Order, int) bool) {
		for card := range Orders(o.order.Len()) {
			s, _ := o.Score(card)
			if !yield(card, s) {
				return
			}
		}
	}
}

// Worst returns the lowest score any card can get, that of the full reversal; 0
// for the zero Official.
func (o Official) Worst() int {
	if !o.IsValid() {
		return 0
	}
	return FullScore - o.cuts.GreatestLoss()
}

// Mean returns the mean score over all placings, which is what a guesser gets on
// average: half way from the full score to the lowest (derived); 0 for the zero
// Official.
func (o Official) Mean() decimal.Decimal {
	if !o.IsValid() {
		return decimal.Zero
	}
	return decimal.New(int64(FullScore+o.Worst())*5, -1)
}
