package season

import (
	"maps"
	"math/big"
	"slices"
	"strconv"

	"example.com/ribface/internal/fault"
	"example.com/ribface/internal/text"
)

// Judges collects what several judges said of the same exhibits. Unlike the other
// collections of this package it keeps every value. The zero Judges have said nothing.
// A copy of Judges who have said something shares their values.
type Judges struct {
	worker
	said map[saying]int64
}

type saying struct{ exhibit, judge string }

// Add adds one value. A second one of the same judge for the same exhibit and a
// value beyond a trillion either way give a [*placing.FieldError].
func (j *Judges) Add(exhibit, judge string, value int64) error {
	if j == nil {
		return missing("judges")
	}
	if err := check("value", value); err != nil {
		return err
	}
	at := saying{exhibit, judge}
	if _, ok := j.said[at]; ok {
		return &fault.FieldError{Field: "exhibit " + strconv.Quote(exhibit), Value: "judge " + strconv.Quote(judge), Allowed: "one value of each judge", Err: fault.ErrRepeated}
	}
	if j.said == nil {
		j.said = map[saying]int64{}
	}
	j.said[at] = value
	return nil
}

// Merge adds what k has. A value that both have gives a [*placing.FieldError], and then
// nothing is added.
func (j *Judges) Merge(k Judges) error {
	if j == nil {
		return missing("judges")
	}
	for at := range k.said {
		if _, ok := j.said[at]; ok {
			return &fault.FieldError{Field: "judges", Allowed: "one value of each judge for each exhibit", Err: fault.ErrRepeated}
		}
	}
	if j.said == nil {
		j.said = map[saying]int64{}
	}
	maps.Copy(j.said, k.said)
	return nil
}

// Ratings is a full table of values: every judge of it saw every exhibit of it.
type Ratings struct {
	Exhibits []string  `json:"exhibits"`
	Judges   []string  `json:"judges"`
	Values   [][]int64 `json:"values"`        // by exhibit, then judge
	Left     []string  `json:"left,omitzero"` // judges who missed an exhibit and are left out
}

// Ratings returns the table of the judges who saw every exhibit, exhibits and
// judges in order of name.
func (j Judges) Ratings() Ratings {
	exhibits, judges := map[string]bool{}, map[string]int{}
	for at := range j.said {
		exhibits[at.exhibit] = true
		judges[at.judge]++
	}
	r := Ratings{Exhibits: slices.Sorted(maps.Keys(exhibits))}
	for _, name := range slices.Sorted(maps.Keys(judges)) {
		if judges[name] < len(exhibits) {
			r.Left = append(r.Left, name)
		} else {
			r.Judges = append(r.Judges, name)
		}
	}
	for _, e := range r.Exhibits {
		row := make([]int64, len(r.Judges))
		for i, name := range r.Judges {
			row[i] = j.said[saying{e, name}]
		}
		r.Values = append(r.Values, row)
	}
	return r
}

// size checks that the table is full and large enough.
func (r Ratings) size() (n, k int64, f Figure, err error) {
	n = int64(len(r.Values))
	for i, row := range r.Values {
		exhibit := "exhibit " + strconv.Itoa(i+1)
		if k = int64(len(r.Values[0])); int64(len(row)) != k {
			return 0, 0, Figure{}, &fault.FieldError{Field: exhibit, Value: text.Count(len(row), "value"), Allowed: strconv.FormatInt(k, 10) + ", one of each judge", Err: fault.ErrMissing}
		}
		for _, v := range row {
			if err := check(exhibit, v); err != nil {
				return 0, 0, Figure{}, err
			}
		}
	}
	f.N = int(n)
	if n < minExhibits || k < minJudges {
		f.Reason = TooFew
	}
	return n, k, f, nil
}

// Intraclass holds the six intraclass correlations of a table of ratings with the
// mean squares behind them (data published: psychbull-1979-86-420; formulas:
// stat-icc-doc). N is the number of exhibits in every figure.
type Intraclass struct {
	Between Figure `json:"between"` // mean square between exhibits
	Within  Figure `json:"within"`  // mean square within them
	Judges  Figure `json:"judges"`  // mean square of judges
	Error   Figure `json:"error"`   // mean square of what is left

	ICC11 Figure `json:"icc11"` // one judge, each exhibit judged by others
	ICC21 Figure `json:"icc21"` // one judge of many, all judging every exhibit
	ICC31 Figure `json:"icc31"` // one of these very judges
	ICC1k Figure `json:"icc1k"` // the mean of k judges, each exhibit judged by others
	ICC2k Figure `json:"icc2k"` // the mean of k judges of many
	ICC3k Figure `json:"icc3k"` // the mean of these very judges
}

// Intraclass returns the intraclass correlations; TooFew under 4 exhibits or
// 2 judges. Only Values are looked at. A row of another length gives a
// [*placing.FieldError].
func (r Ratings) Intraclass() (Intraclass, error) {
	n, k, f, err := r.size()
	if err != nil {
		return Intraclass{}, err
	}
	if !f.OK() {
		return Intraclass{f, f, f, f, f, f, f, f, f, f}, nil
	}
	var grand, squares wide
	columns := make([]wide, k)
	rows2, columns2 := integer(0), integer(0)
	for _, row := range r.Values {
		var sum wide
		for j, v := range row {
			sum.add(v, 1)
			columns[j].add(v, 1)
			squares.add(v, v)
		}
		grand.plus(sum)
		rows2.Add(rows2, mul(sum.big(), sum.big()))
	}
	for _, c := range columns {
		columns2.Add(columns2, mul(c.big(), c.big()))
	}
	N, K := integer(n), integer(k)
	grand2 := mul(grand.big(), grand.big())
	frac := func(num *big.Int, den ...*big.Int) *big.Rat { return new(big.Rat).SetFrac(num, mul(den...)) }
	// Each sum of squares over its degrees of freedom, on the denominator n*k.
	between := frac(sub(mul(N, rows2), grand2), N, K, integer(n-1))
	within := frac(sub(mul(K, squares.big()), rows2), K, N, integer(k-1))
	judges := frac(sub(mul(K, columns2), grand2), N, K, integer(k-1))
	residual := sub(mul(N, K, squares.big()), mul(N, rows2))
	residual.Sub(residual, mul(K, columns2)).Add(residual, grand2)
	rest := frac(residual, N, K, integer(n-1), integer(k-1))

	one, rk, rn := big.NewRat(1, 1), new(big.Rat).SetInt(K), new(big.Rat).SetInt(N)
	plus := func(a, b *big.Rat) *big.Rat { return new(big.Rat).Add(a, b) }
	less := func(a, b *big.Rat) *big.Rat { return new(big.Rat).Sub(a, b) }
	times := func(a, b *big.Rat) *big.Rat { return new(big.Rat).Mul(a, b) }
	over := func(a, b *big.Rat) *big.Rat { return new(big.Rat).Quo(a, b) }
	more := less(rk, one)
	shift := over(less(judges, rest), rn)
	return Intraclass{
		Between: f.rat(between, one), Within: f.rat(within, one), Judges: f.rat(judges, one), Error: f.rat(rest, one),
		ICC11: f.rat(less(between, within), plus(between, times(more, within))),
		ICC21: f.rat(less(between, rest), plus(plus(between, times(more, rest)), times(rk, shift))),
		ICC31: f.rat(less(between, rest), plus(between, times(more, rest))),
		ICC1k: f.rat(less(between, within), between),
		ICC2k: f.rat(less(between, rest), plus(between, shift)),
		ICC3k: f.rat(less(between, rest), between),
	}, nil
}

// Concordance returns Kendall's W of the judges, who are each reduced to the ranks
// that they give: without and with the correction for ties. It runs from 0 to 1
// (published: stat-kendall-w-help). It is TooFew under 4 exhibits or 2
// judges and NoSpread where every judge ties all exhibits. Only Values are looked at.
// A row of another length gives a [*placing.FieldError].
func (r Ratings) Concordance() (plain, corrected Figure, err error) {
	n, k, f, err := r.size()
	if err != nil || !f.OK() {
		return f, f, err
	}
	sums := make([]int64, n) // of doubled ranks
	ties := int64(0)         // sum of t^3 - t over the groups of t equal ranks
	for j := range k {
		column := make([]int64, n)
		for i, row := range r.Values {
			column[i] = row[j]
		}
		sorted := slices.Sorted(slices.Values(column))
		for i, v := range column {
			first, _ := slices.BinarySearch(sorted, v)
			after, _ := slices.BinarySearch(sorted, v+1)
			sums[i] += int64(first + 1 + after) // the mean rank of those that tie
			t := int64(after - first)
			ties += t*t - 1 // from each of its t members
		}
	}
	var total, squares wide
	for _, s := range sums {
		total.add(s, 1)
		squares.add(s, s)
	}
	// With doubled ranks: S = (n*squares - total^2) / 4n, W = 12 S / (k^2 (n^3-n) - k ties).
	s := mul(integer(3), spread(n, squares, total, total))
	full := mul(integer(n), integer(k), integer(k), integer(n*n*n-n))
	corrected = f.ratio(s, sub(full, mul(integer(n), integer(k), integer(ties))))
	if !corrected.OK() {
		return corrected, corrected, nil
	}
	return f.ratio(s, full), corrected, nil
}
