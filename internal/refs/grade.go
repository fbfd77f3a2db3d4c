package refs

import (
	"errors"
	"fmt"
	"iter"
	"math/big"
	"slices"
	"strconv"
	"strings"
	"time"

	"example.com/ribface/grade"
	"example.com/ribface/maturity"
	"github.com/shopspring/decimal"
)

// editions reads the editions that a row is about.
func (r Row) editions(column string) ([]grade.Edition, error) {
	var out []grade.Edition
	for s := range strings.FieldsSeq(r.Get(column)) {
		e, err := grade.ParseEdition(s)
		if err != nil {
			return nil, err
		}
		out = append(out, e)
	}
	if len(out) == 0 {
		return nil, errors.New(column + ": none named")
	}
	return out, nil
}

// carcass is one with bone and lean at the same point and nothing wrong with it.
func carcass(s grade.Sex, at maturity.Score, m grade.Marbling) grade.Carcass {
	return grade.Carcass{Sex: s, Maturity: maturity.Evidence{Skeletal: at, Lean: at}, Marbling: m}
}

// isQuality compares a quality with a stated one, which may be a tier, a grade
// without its part, or both.
func isQuality(q grade.Quality, stated string) error {
	if t, err := grade.ParseTier(stated); err == nil {
		return same("tier", q.Tier(), t)
	}
	want, err := grade.ParseQuality(stated)
	if err != nil {
		return err
	}
	if want.Part() == grade.Whole {
		return same("grade", q.Grade(), want.Grade())
	}
	return same("quality", q, want)
}

// units gives the points that a printed maturity stands for: itself, or the
// whole group for a bare letter.
func units(s string) ([]maturity.Score, error) {
	if g, err := maturity.ParseGroup(s); err == nil {
		var all []maturity.Score
		for u := range 100 {
			all = append(all, g.At(u))
		}
		return all, nil
	}
	one, err := maturity.Parse(s)
	return []maturity.Score{one}, err
}

// points gives the marblings that a printed degree stands for.
func points(s string) ([]grade.Marbling, error) {
	if d, err := grade.ParseDegree(s); err == nil {
		var all []grade.Marbling
		for p := range 100 {
			all = append(all, d.At(p))
		}
		return all, nil
	}
	one, err := grade.ParseMarbling(s)
	return []grade.Marbling{one}, err
}

// span reads the columns from and to of a row of marblings. A span that is
// printed up to 100 ends at 99, since 100 is the next degree's 00; only Abundant
// has a point 100.
func (r Row) span() (from, to grade.Marbling, err error) {
	if from, err = grade.ParseMarbling(r.Get("from")); err != nil {
		return 0, 0, err
	}
	if to, err = grade.ParseMarbling(r.Get("to")); err != nil {
		return 0, 0, err
	}
	if strings.HasSuffix(r.Get("to"), "100") && to < grade.Abundant.At(100) {
		to--
	}
	return from, to, nil
}

func qualityExample(r Row) (Verdict, error) {
	editions, err := r.editions("edition")
	if err != nil {
		return 0, err
	}
	at, err := units(r.Get("overall"))
	if err != nil {
		return 0, err
	}
	marblings, err := points(r.Get("marbling"))
	if err != nil {
		return 0, err
	}
	for _, e := range editions {
		for _, s := range at {
			for _, m := range marblings {
				q, err := e.Quality(carcass(grade.Steer, s, m))
				if err != nil {
					return 0, err
				}
				if err := isQuality(q, r.Get("stated")); err != nil {
					return 0, fmt.Errorf("edition %v, %v with %v: %w", e, s, m, err)
				}
			}
		}
	}
	return Agrees, nil
}

// eachInA goes through the marblings of the row in every unit of A, in the
// editions that have Select. Every one must pass, and the one on either side of
// the span must not.
func (r Row) eachInA(pass func(grade.Quality) bool) (Verdict, error) {
	from, to, err := r.span()
	if err != nil {
		return 0, err
	}
	for e := grade.Edition1987; e <= grade.Current; e++ {
		for u := range 100 {
			for m := from - 1; m <= to+1 && m <= grade.Abundant.At(100); m++ {
				q, err := e.Quality(carcass(grade.Heifer, maturity.A.At(u), m))
				if err != nil {
					return 0, err
				}
				if inside := m >= from && m <= to; pass(q) != inside {
					return 0, fmt.Errorf("edition %v, A%02d with %v: the library has %v", e, u, m, q)
				}
			}
		}
	}
	return Agrees, nil
}

func third(r Row) (Verdict, error) {
	want, err := grade.ParseQuality(r.Get("stated"))
	if err != nil {
		return 0, err
	}
	return r.eachInA(func(q grade.Quality) bool { return q == want })
}

func tier(r Row) (Verdict, error) {
	want, err := grade.ParseTier(r.Get("stated"))
	if err != nil {
		return 0, err
	}
	return r.eachInA(func(q grade.Quality) bool { return q.Tier() == want })
}

// lines finds the lines of a grade in one group of an edition's chart.
func lines(e grade.Edition, group, of string) iter.Seq[grade.Line] {
	return func(yield func(grade.Line) bool) {
		for l := range e.Lines() {
			if l.Group.String() == group && l.Grade.String() == of && !yield(l) {
				return
			}
		}
	}
}

func gradeMinimum(r Row) (Verdict, error) {
	editions, err := r.editions("editions")
	if err != nil {
		return 0, err
	}
	for _, e := range editions {
		n := 0
		for l := range lines(e, r.Get("group"), r.Get("grade")) {
			if r.Get("part") != "closed" && l.Part.String() != r.Get("part") {
				continue
			}
			n++
			err := errors.Join(
				same("young end", l.On(0).String(), r.Get("young_end")),
				same("old end", l.On(100), grade.MustParseMarbling(r.Get("old_end"))),
				same("standing", l.Cite.Standing.String(), r.Get("standing")),
				same("sources", l.Cite.IDs, strings.Join(r.Sources(), " ")))
			if err != nil {
				return 0, fmt.Errorf("edition %v: %w", e, err)
			}
		}
		want := 1
		if r.Get("part") == "closed" {
			want = 0
		}
		if err := same("lines", n, want); err != nil {
			return 0, fmt.Errorf("edition %v: %w", e, err)
		}
	}
	return Agrees, nil
}

func firmnessMinimum(r Row) (Verdict, error) {
	editions, err := r.editions("editions")
	if err != nil {
		return 0, err
	}
	for _, e := range editions {
		n := 0
		for l := range lines(e, r.Get("group"), r.Get("grade")) {
			n++
			err := errors.Join(
				same("firmness", l.Firmness.String(), r.Get("stated")),
				same("standing", l.FirmnessCite.Standing.String(), r.Get("standing")),
				same("sources", l.FirmnessCite.IDs, strings.Join(r.Sources(), " ")))
			if err != nil {
				return 0, fmt.Errorf("edition %v: %w", e, err)
			}
			// A carcass one term softer does not make the grade.
			c := carcass(grade.Steer, l.Group.At(50), grade.Abundant.At(99))
			c.Lean.Firmness = l.Firmness
			c.Marbling = l.On(50)
			enough, err := e.Quality(c)
			if err != nil {
				return 0, err
			}
			c.Lean.Firmness--
			less, err := e.Quality(c)
			if err != nil {
				return 0, err
			}
			if err := errors.Join(same("grade when as firm", enough.Grade(), l.Grade), same("a lower grade when softer", less.Grade() < l.Grade, true)); err != nil {
				return 0, err
			}
		}
		if n == 0 {
			return 0, fmt.Errorf("edition %v: no line", e)
		}
	}
	return Agrees, nil
}

func sexClass(r Row) (Verdict, error) {
	sex, err := grade.ParseSex(r.Get("class"))
	if err != nil {
		return 0, err
	}
	open := map[grade.Grade]bool{}
	for at := maturity.A.At(0); at <= maturity.E.At(100); at += 10 {
		for m := grade.Devoid.At(0); m <= grade.Abundant.At(100); m += 10 {
			for _, below := range []bool{false, true} {
				c := carcass(sex, at, m)
				c.Lean.BelowCutter = below
				q, err := grade.Current.Quality(c)
				if err != nil {
					return 0, err
				}
				if q.Grade() != grade.NoGrade {
					open[q.Grade()] = true
				}
			}
		}
	}
	var names []string
	for g := grade.Prime; g > grade.NoGrade; g-- {
		if open[g] {
			names = append(names, g.String())
		}
	}
	return Agrees, same("grades", strings.Join(names, " "), strings.ReplaceAll(r.Get("grades"), "  ", " "))
}

func sexExample(r Row) (Verdict, error) {
	sex, err := grade.ParseSex(r.Get("class"))
	if err != nil {
		return 0, err
	}
	at, err := maturity.Parse(r.Get("skeletal"))
	if err != nil {
		return 0, err
	}
	m, err := grade.ParseMarbling(r.Get("marbling"))
	if err != nil {
		return 0, err
	}
	q, err := grade.Current.Quality(carcass(sex, at, m))
	if err != nil {
		return 0, err
	}
	return Agrees, same("quality", q.String(), r.Get("stated"))
}

func darkCutter(r Row) (Verdict, error) {
	editions, err := r.editions("editions")
	if err != nil {
		return 0, err
	}
	g, err := maturity.ParseGroup(r.Get("group"))
	if err != nil {
		return 0, err
	}
	m, err := grade.ParseMarbling(r.Get("marbling"))
	if err != nil {
		return 0, err
	}
	step, err := grade.ParseDarkCut(r.Get("step"))
	if err != nil {
		return 0, err
	}
	for _, e := range editions {
		c := carcass(grade.Steer, g.At(0), m)
		before, err := e.Quality(c)
		if err != nil {
			return 0, err
		}
		c.Lean.Dark = step
		after, err := e.Quality(c)
		if err != nil {
			return 0, err
		}
		if err := errors.Join(same("before", before.String(), r.Get("before")), isQuality(after, r.Get("stated"))); err != nil {
			return 0, fmt.Errorf("edition %v: %w", e, err)
		}
	}
	return Agrees, nil
}

func editionDate(r Row) (Verdict, error) {
	e, err := grade.ParseEdition(r.Get("edition"))
	if err != nil {
		return 0, err
	}
	stated, err := time.Parse(time.DateOnly, r.Get("date"))
	if err != nil {
		return 0, err
	}
	from, by := e.From()
	days := int(stated.Sub(from).Hours() / 24)
	if err := same("days past the first day in use", strconv.Itoa(days), r.Get("difference_days")); err != nil {
		return 0, err
	}
	if days != 0 {
		return Differs, nil
	}
	on, err := grade.EditionOn(from)
	if err != nil {
		return 0, err
	}
	// The day before belongs to the edition before, or to none.
	if earlier, err := grade.EditionOn(from.AddDate(0, 0, -1)); err == nil && earlier != e-1 {
		return 0, same("edition of the day before", earlier, e-1)
	}
	// One of the rows that agree is what the edition cites; the others add to it.
	if !slices.Contains(strings.Fields(by.IDs), strings.Join(r.Sources(), " ")) && by.IDs != "" {
		return Agrees, same("edition", on, e)
	}
	return Agrees, errors.Join(same("edition", on, e), same("standing", by.Standing.String(), r.Get("standing")))
}

func marblingDegree(r Row) (Verdict, error) {
	n, err := strconv.Atoi(r.Get("rank"))
	if err != nil {
		return 0, err
	}
	d, err := grade.ParseDegree(r.Get("degree"))
	if err != nil {
		return 0, err
	}
	short := Row{r.File, r.Line, &table{names: []string{"source_id", "standing"}}, []string{r.Get("short_source"), r.Get("short_standing")}}
	return Agrees, errors.Join(same("rank", int(d), n), same("short form", d.At(0).String(), r.Get("short")+"00"), short.Ground())
}

func marblingCount(r Row) (Verdict, error) {
	top, bottom := grade.Abundant, grade.PracticallyDevoid
	whole := true
	if s := r.Get("top"); s != "" {
		if d, err := grade.ParseDegree(s); err == nil {
			top = d
		} else if errors.Is(err, grade.ErrUnknown) {
			whole = false // a degree that no other source has
		} else {
			return 0, err
		}
	}
	if s := r.Get("bottom"); s != "" {
		d, err := grade.ParseDegree(s)
		if err != nil {
			return 0, err
		}
		bottom = d
	}
	n := int(top-bottom) + 1
	stated, err := strconv.Atoi(r.Get("stated"))
	if err != nil {
		return 0, err
	}
	if err := errors.Join(same("degrees", strconv.Itoa(n), r.Get("computed")), same("difference", strconv.Itoa(stated-n), r.Get("difference"))); err != nil {
		return 0, err
	}
	if n != stated || !whole {
		return Differs, nil
	}
	return Agrees, nil
}

func marblingUnits(r Row) (Verdict, error) {
	m, err := grade.ParseMarbling(r.Get("written"))
	if err != nil {
		return 0, err
	}
	return Agrees, same("read", m.String(), r.Get("read"))
}

func marblingScale(r Row) (Verdict, error) {
	d, err := grade.ParseDegree(r.Get("degree"))
	if err != nil {
		return 0, err
	}
	from, to := rat(r.Get("from")), rat(r.Get("to"))
	scale, top := grade.Slight300, int(new(big.Rat).Sub(to, from).Num().Int64()) // a footnote may give the foot alone, or tens
	switch r.Get("scale") {
	case "1 to 9.9":
		from, to, top = mul(from, rat("100")), mul(to, rat("100")), 90
	case "reversed": // one number a degree, counted from the other end
		from, to, top = mul(sub(rat("10"), from), rat("100")), mul(sub(rat("10"), to), rat("100")), 0
	case grade.Slight300.String():
	case grade.Slight400.String():
		scale = grade.Slight400
	default:
		return 0, fmt.Errorf("no scale %q", r.Get("scale"))
	}
	lo, _ := d.At(0).Number(scale)
	hi, _ := d.At(top).Number(scale)
	return Agrees, errors.Join(same("from", strconv.Itoa(lo), plain(from)), same("to", strconv.Itoa(hi), plain(to)))
}

// gradeCode counts the code along the parts of the grades in A of the oldest
// edition.
func gradeCode(r Row) (Verdict, error) {
	var ladder []grade.Line
	for l := range grade.Edition1975.Lines() {
		if l.Group == maturity.A && l.Part != grade.Whole {
			ladder = append(ladder, l)
		}
	}
	slices.SortFunc(ladder, func(a, b grade.Line) int { return a.At.Compare(b.At) })
	first := slices.IndexFunc(ladder, func(l grade.Line) bool { return l.Grade == grade.Standard && l.Part == grade.High })
	code, err := strconv.Atoi(r.Get("code"))
	if err != nil {
		return 0, err
	}
	if code < 8 || first+code-8 >= len(ladder) {
		return 0, fmt.Errorf("code %d is off the ladder", code)
	}
	l := ladder[first+code-8]
	return Agrees, same("code "+r.Get("code"), l.Grade.Part(l.Part).String(), r.Get("stated"))
}

// The coefficients for fat, KPH, weight and ribeye, without sign.
var (
	equationCoefficients = []string{"2.5", "0.2", "0.0038", "0.32"}
	shortcutCoefficients = []string{"2.5", "0.2", "0.0036", "0.30"}
	retailCoefficients   = []string{"5.78", "0.462", "0.0093", "0.74"}
)

func yieldExample(r Row) (Verdict, error) {
	m, err := r.measures()
	if err != nil {
		return 0, err
	}
	y, err := m.Yield()
	if err != nil {
		return 0, err
	}
	value, coefficients := ratio(y.Decimal()), equationCoefficients
	kind := r.Get("stated_kind")
	if kind == "shortcut" {
		q, err := m.Shortcut()
		if err != nil {
			return 0, err
		}
		value, coefficients = ratio(q.Total.Decimal()), shortcutCoefficients
	}
	if err := same("computed", plain(value), r.Get("computed")); err != nil {
		return 0, err
	}
	stated := r.Get("stated")
	if kind == "whole" {
		whole := big.NewRat(int64(y.Grade()), 1)
		if err := same("difference", plain(sub(rat(stated), whole)), r.Get("difference")); err != nil {
			return 0, err
		}
		return fit(stated, whole, new(big.Rat)), nil
	}
	if err := same("difference", plain(sub(rat(stated), value)), r.Get("difference")); err != nil {
		return 0, err
	}
	bound := new(big.Rat).Add(r.bound(coefficients...), half(stated))
	if err := same("bound", nearest(bound, 4).FloatString(4), r.Get("bound")); err != nil {
		return 0, err
	}
	return fit(stated, value, bound), nil
}

func borderline(r Row) (Verdict, error) {
	m, err := r.measures()
	if err != nil {
		return 0, err
	}
	y, err := m.Yield()
	if err != nil {
		return 0, err
	}
	q, err := m.Shortcut()
	if err != nil {
		return 0, err
	}
	if n := q.Total.Units(); n < grade.OneGrade || n >= 6*grade.OneGrade {
		return 0, fmt.Errorf("shortcut %v has no whole grade", q.Total)
	}
	return Agrees, errors.Join(
		same("whole grade", strconv.Itoa(y.Grade()), r.Get("stated")),
		same("upper side of the line", r.Get("line")[:1], r.Get("stated")),
		same("equation", y.String(), r.Get("equation")),
		same("shortcut", q.Total.String(), r.Get("shortcut")),
		same("whole grade of the shortcut", strconv.Itoa(grade.YieldUnits(q.Total.Units()).Grade()), r.Get("shortcut_whole")))
}

func wholeGrade(r Row) (Verdict, error) {
	y, err := grade.ParseYield(r.Get("yield"))
	if err != nil {
		return 0, err
	}
	stated, err := strconv.Atoi(r.Get("stated"))
	if err != nil {
		return 0, err
	}
	if err := same("difference", strconv.Itoa(stated-y.Grade()), r.Get("difference")); err != nil {
		return 0, err
	}
	if stated != y.Grade() {
		return Differs, nil
	}
	return Agrees, nil
}

func yieldAnswer(r Row) (Verdict, error) {
	switch r.Get("kind") {
	case "nearest tenth":
		y, err := grade.ParseYield(r.Get("from"))
		if err != nil {
			return 0, err
		}
		tenth, err := y.Round(grade.HalfUp, 1)
		if err != nil {
			return 0, err
		}
		return Agrees, same("tenth", tenth.String(), r.Get("stated"))
	case "third of a grade":
		// Every hundredth of the band falls in the stated third by plain division.
		third, err := strconv.Atoi(r.Get("stated"))
		if err != nil {
			return 0, err
		}
		for h := int64(100); h < 600; h++ {
			y := grade.YieldUnits(h * grade.OneGrade / 100)
			in := h%100 >= hundredths(r.Get("from")) && h%100 <= hundredths(r.Get("to"))
			if err := same(y.String()+" in the band", int(h%100*3/100)+1 == third, in); err != nil {
				return 0, err
			}
		}
		return Agrees, nil
	}
	return 0, fmt.Errorf("no check for %q", r.Get("kind"))
}

func hundredths(s string) int64 {
	y, err := grade.ParseYield("0" + s)
	if err != nil {
		panic(err)
	}
	return y.Units() / (grade.OneGrade / 100)
}

// slope finds how much a result moves for one unit of a measure, between the two
// ends of a span over which the result is linear.
func slope(term string, of func(grade.Measures) (*big.Rat, error)) (*big.Rat, error) {
	lo := grade.Measures{Fat: grade.Inches(0.5), Ribeye: grade.SquareInches(12), KPH: grade.Percent(2), Weight: grade.Pounds(600)}
	hi, span := lo, int64(1)
	switch term {
	case "fat":
		hi.Fat = grade.Inches(1.5)
	case "ribeye":
		hi.Ribeye = grade.SquareInches(13)
	case "KPH":
		hi.KPH = grade.Percent(3)
	case "weight":
		span = 250
		hi.Weight = grade.Pounds(850)
	default:
		return nil, fmt.Errorf("no term %q", term)
	}
	a, err := of(lo)
	if err != nil {
		return nil, err
	}
	b, err := of(hi)
	if err != nil {
		return nil, err
	}
	return new(big.Rat).Quo(sub(b, a), big.NewRat(span, 1)), nil
}

func yieldOf(m grade.Measures) (*big.Rat, error) {
	y, err := m.Yield()
	return ratio(y.Decimal()), err
}

func quickOf(m grade.Measures) (*big.Rat, error) {
	q, err := m.Shortcut()
	return ratio(q.Total.Decimal()), err
}

func retailOf(m grade.Measures) (*big.Rat, error) {
	s, err := m.RetailCuts()
	return ratio(s), err
}

func requiredOf(m grade.Measures) (*big.Rat, error) {
	a, err := m.Weight.RequiredRibeye()
	return ratio(a.SquareInches()), err
}

func coefficient(r Row) (Verdict, error) {
	of, ok := map[string]func(grade.Measures) (*big.Rat, error){"yield": yieldOf, "quick": quickOf, "retail": retailOf}[r.Get("equation")]
	if !ok {
		return 0, fmt.Errorf("no equation %q", r.Get("equation"))
	}
	var exact *big.Rat
	if term := r.Get("term"); term == "start" {
		// What is left of one carcass when its four terms are taken off.
		m := grade.Measures{Fat: grade.Inches(1), Ribeye: grade.SquareInches(10), KPH: grade.Percent(1), Weight: grade.Pounds(500)}
		v, err := of(m)
		if err != nil {
			return 0, err
		}
		exact = v
		for term, n := range map[string]string{"fat": "1", "ribeye": "10", "KPH": "1", "weight": "500"} {
			s, err := slope(term, of)
			if err != nil {
				return 0, err
			}
			exact = sub(exact, mul(s, rat(n)))
		}
	} else {
		s, err := slope(term, of)
		if err != nil {
			return 0, err
		}
		exact = new(big.Rat).Quo(s, rat(perUnit[r.Get("unit")]))
	}
	// Twelve places, halves away from zero, so that both signs round alike.
	places := func(n int) *big.Rat {
		if exact.Sign() < 0 {
			return new(big.Rat).Neg(nearest(abs(exact), n))
		}
		return nearest(exact, n)
	}
	value := rat(r.Get("value"))
	err := errors.Join(
		same("computed", plain(places(12)), r.Get("computed")),
		same("difference", plain(sub(value, places(12))), r.Get("difference")))
	switch {
	case err != nil:
		return 0, err
	case value.Cmp(exact) == 0:
		return Agrees, nil
	case value.Cmp(places(digits(r.Get("value")))) == 0:
		return Rounding, nil
	default:
		return Differs, nil
	}
}

func ruleOfThumb(r Row) (Verdict, error) {
	term, of := r.Get("of"), yieldOf
	if term == "required ribeye" {
		term, of = "weight", requiredOf
	}
	s, err := slope(term, of)
	if err != nil {
		return 0, err
	}
	n, _ := amount(r.Get("amount"))
	exact := abs(mul(s, rat(n)))
	stated := rat(r.Get("stated"))
	if err := errors.Join(same("exact", plain(exact), r.Get("exact")), same("difference", plain(sub(stated, exact)), r.Get("difference"))); err != nil {
		return 0, err
	}
	switch v := fit(r.Get("stated"), exact, new(big.Rat)); {
	case stated.Cmp(exact) == 0:
		return Agrees, nil
	case v == Agrees:
		return Rounding, nil
	default:
		return Differs, nil
	}
}

func preliminary(r Row) (Verdict, error) {
	t, err := grade.ParseThickness(r.Get("fat"))
	if err != nil {
		return 0, err
	}
	if err := same("preliminary", ratio(t.Preliminary().Decimal()).FloatString(2), r.Get("stated")); err != nil {
		return 0, err
	}
	back, err := grade.FatForPreliminary(t.Preliminary())
	if err != nil {
		return 0, err
	}
	return Agrees, same("fat", back, t)
}

func kphAdjustment(r Row) (Verdict, error) {
	k, err := grade.ParseShare(r.Get("kph"))
	if err != nil {
		return 0, err
	}
	q, err := grade.Measures{Fat: grade.Inches(0.5), Ribeye: grade.SquareInches(12), KPH: k, Weight: grade.Pounds(700)}.Shortcut()
	if err != nil {
		return 0, err
	}
	return Agrees, same("KPH", q.KPH.String(), strings.TrimPrefix(r.Get("stated"), "+"))
}

func requiredPrinted(r Row) (Verdict, error) {
	w, err := grade.ParseWeight(r.Get("hcw_lb"))
	if err != nil {
		return 0, err
	}
	a, err := w.RequiredRibeye()
	if err != nil {
		return 0, err
	}
	return Agrees, same("required", ratio(a.SquareInches()).FloatString(1), r.Get("required"))
}

// pound is a pound in the units of a weight.
const pound = 10_000

func requiredRibeye(r Row) (Verdict, error) {
	from, err := grade.ParseWeight(r.Get("from_lb"))
	if err != nil {
		return 0, err
	}
	to, err := grade.ParseWeight(r.Get("to_lb"))
	if err != nil {
		return 0, err
	}
	if from.Compare(to) > 0 {
		return 0, fmt.Errorf("%v to %v", from, to)
	}
	for n := from.Units(); n <= to.Units(); n += pound {
		w := grade.WeightUnits(n)
		a, err := w.RequiredRibeye()
		if err != nil {
			return 0, err
		}
		if err := same("required at "+w.String(), ratio(a.SquareInches()).FloatString(1), r.Get("required")); err != nil {
			return 0, err
		}
	}
	// The step is at the whole pound: one pound either side is in another row.
	for _, n := range []int64{from.Units() - pound, to.Units() + pound} {
		w := grade.WeightUnits(n)
		a, err := w.RequiredRibeye()
		if err != nil {
			return 0, err
		}
		if err := same("another step at "+w.String(), ratio(a.SquareInches()).FloatString(1) != r.Get("required"), true); err != nil {
			return 0, err
		}
	}
	return Agrees, nil
}

func quickBias(r Row) (Verdict, error) {
	w, err := grade.ParseWeight(r.Get("hcw_lb"))
	if err != nil {
		return 0, err
	}
	a, err := grade.ParseArea(r.Get("rea"))
	if err != nil {
		return 0, err
	}
	for n := range 3 { // fat and KPH drop out
		m := grade.Measures{Fat: grade.Inches(float64(n) / 4), Ribeye: a, KPH: grade.Percent(float64(n + 1)), Weight: w}
		q, err := quickOf(m)
		if err != nil {
			return 0, err
		}
		y, err := yieldOf(m)
		if err != nil {
			return 0, err
		}
		if err := same("bias", sub(q, y).FloatString(3), r.Get("bias")); err != nil {
			return 0, err
		}
		if err := same("bias to the last digit", sub(q, y).Cmp(rat(r.Get("bias"))), 0); err != nil {
			return 0, err
		}
	}
	return Agrees, nil
}

func retailExample(r Row) (Verdict, error) {
	m, err := r.measures()
	if err != nil {
		return 0, err
	}
	value, err := retailOf(m)
	if err != nil {
		return 0, err
	}
	stated := r.Get("stated")
	bound := new(big.Rat).Add(r.bound(retailCoefficients...), half(stated))
	err = errors.Join(
		same("computed", plain(value), r.Get("computed")),
		same("difference", plain(sub(rat(stated), value)), r.Get("difference")),
		same("bound", nearest(bound, 4).FloatString(4), r.Get("bound")))
	return fit(stated, value, bound), err
}

func retailClass(r Row) (Verdict, error) {
	table := grade.RetailGuide
	if ids := r.Sources(); len(ids) > 0 {
		for ; table.String() != ids[0]; table++ {
			if table > grade.RetailHandout {
				return 0, fmt.Errorf("no table %q", ids[0])
			}
		}
	}
	want, err := strconv.Atoi(r.Get("class"))
	if err != nil {
		return 0, err
	}
	from, to := r.Get("from"), r.Get("to")
	if from == "" {
		from = "0"
	}
	if to == "" {
		to = "100"
	}
	lo, err := decimal.NewFromString(from)
	if err != nil {
		return 0, err
	}
	hi, err := decimal.NewFromString(to)
	if err != nil {
		return 0, err
	}
	tenth, least := decimal.New(1, -1), decimal.New(1, -8)
	if strings.Contains(r.Get("note"), "stands in two rows") {
		hi = hi.Sub(tenth) // the upper edge belongs to the better class
	}
	in := func(s decimal.Decimal) bool {
		got, ok := table.Class(s)
		return ok && got == want
	}
	for s := lo; s.LessThanOrEqual(hi); s = s.Add(tenth) {
		if !in(s) {
			return 0, fmt.Errorf("%v is not in class %d", s, want)
		}
	}
	if r.Get("standing") == "memory" {
		return Agrees, nil // single values, not the ends of a class
	}
	// The figures are printed in tenths, so a class reaches half a tenth further.
	half := decimal.New(5, -2)
	below, above := lo.Sub(half), hi.Add(half).Sub(least)
	if r.Get("from") == "" {
		below = lo
	}
	if r.Get("to") == "" {
		above = hi
	}
	return Agrees, errors.Join(
		same("lowest share in the class", in(below), true),
		same("highest share in the class", in(above), true),
		same("share under the class", in(below.Sub(least)), false),
		same("share over the class", in(above.Add(least)), false))
}

// usual is a carcass to try a single measure on.
var usual = grade.Measures{Fat: grade.Inches(0.5), Ribeye: grade.SquareInches(13), KPH: grade.Percent(2), Weight: grade.Pounds(800)}

// with reads one measure of a row into the usual carcass and moves it by so many
// units of 0.0001.
func with(measure, s string, move int64) (grade.Measures, error) {
	m := usual
	switch measure {
	case "fat":
		v, err := grade.ParseThickness(s)
		m.Fat = grade.ThicknessUnits(v.Units() + move)
		return m, err
	case "ribeye", "REA":
		v, err := grade.ParseArea(s)
		m.Ribeye = grade.AreaUnits(v.Units() + move)
		return m, err
	case "KPH":
		v, err := grade.ParseShare(s)
		m.KPH = grade.ShareUnits(v.Units() + move)
		return m, err
	case "weight", "HCW":
		v, err := grade.ParseWeight(s)
		m.Weight = grade.WeightUnits(v.Units() + move)
		return m, err
	}
	return m, fmt.Errorf("no measure %q", measure)
}

func inputLimit(r Row) (Verdict, error) {
	what, kind, found := r.Get("measure"), r.Get("kind"), Agrees
	for _, end := range []struct {
		s    string
		past int64
	}{{r.Get("low"), -1}, {r.Get("high"), 1}} {
		at, err := with(what, end.s, 0)
		if err != nil {
			return 0, err
		}
		past, err := with(what, end.s, end.past)
		if err != nil {
			return 0, err
		}
		if err := at.Check(); err != nil {
			if kind == "met" && errors.Is(err, grade.ErrRange) {
				found = Differs // met by an audit, and taken for a slip of the pen
				continue
			}
			return 0, err
		}
		quiet := len(at.Unusual()) == 0
		switch kind {
		case "possible":
			err = same("refused past "+end.s, past.Check() != nil, true)
		case "usual":
			err = same("noted at "+end.s, quiet, true)
			if n, _ := amount(end.s); n != "0" {
				err = errors.Join(err, same("noted past "+end.s, len(past.Unusual()), 1))
			}
		case "teaching":
			err = same("noted at "+end.s, quiet, true)
		case "met":
		default:
			err = fmt.Errorf("no kind %q", kind)
		}
		if err != nil {
			return 0, err
		}
	}
	return found, nil
}

// printed gives a mean or extreme with the unit of its row.
func (r Row) printed(column string) string {
	if u := r.Get("unit"); u != "%" {
		return r.Get(column) + " " + u
	}
	return r.Get(column) + "%"
}

func auditSpread(r Row) (Verdict, error) {
	found := Agrees
	for _, column := range []string{"mean", "min", "max"} {
		s := r.Get(column)
		if s == "" {
			continue
		}
		if r.Get("trait") == "YG" {
			if _, err := grade.ParseYield(s); err != nil {
				return 0, err
			}
			continue
		}
		m, err := with(r.Get("trait"), r.printed(column), 0)
		if err != nil {
			return 0, err
		}
		if err := m.Check(); err != nil {
			if !errors.Is(err, grade.ErrRange) {
				return 0, err
			}
			found = Differs // met by an audit, and taken for a slip of the pen
		}
	}
	if sd := r.Get("sd"); sd != "" {
		return found, same("sd over 0", rat(sd).Sign(), 1)
	}
	return found, nil
}

func auditMean(r Row) (Verdict, error) {
	for column, what := range map[string]string{"hcw": "weight", "fat": "fat", "rea": "ribeye", "kph": "KPH"} {
		if r.Get(column) == "" {
			continue
		}
		m, err := with(what, r.Get(column), 0)
		if err != nil {
			return 0, err
		}
		if err := m.Check(); err != nil {
			return 0, err
		}
		if notes := m.Unusual(); len(notes) > 0 {
			return 0, fmt.Errorf("a mean of fed cattle is noted: %v", notes)
		}
	}
	if s := r.Get("marbling"); s != "" {
		if _, err := grade.ParseMarbling(s); err != nil {
			return 0, err
		}
	}
	// Shares add up to 100 as far as their rounding lets them.
	for _, columns := range [][]string{{"yg1_pct", "yg2_pct", "yg3_pct", "yg4_pct", "yg5_pct"}, {"prime_pct", "choice_pct", "select_pct", "other_pct"}} {
		if r.Get(columns[0]) == "" {
			continue
		}
		sum, slack := new(big.Rat), new(big.Rat)
		for _, c := range columns {
			sum.Add(sum, rat(r.Get(c)))
			slack.Add(slack, half(r.Get(c)))
		}
		if abs(sub(sum, rat("100"))).Cmp(slack) > 0 {
			return 0, fmt.Errorf("%v add up to %v", columns, sum.FloatString(2))
		}
	}
	if r.Get("audit") == "2011 instrument reprinted" {
		for _, o := range r.All() {
			if o.Get("audit") != "2011 instrument" {
				continue
			}
			was := func(column, by string) error {
				a, unit := amount(r.Get(column))
				b, of := amount(o.Get(column))
				return errors.Join(same("unit", unit, of), same(column+" against the row it reprints", plain(sub(rat(a), rat(b))), by))
			}
			return Differs, errors.Join(was("fat", "0.01"), was("rea", "0.06"))
		}
		return 0, errors.New("the row that it reprints is missing")
	}
	if r.Get("yield_grade") == "" || r.Get("fat") == "" || r.Get("kph") == "" {
		return Agrees, nil // the equation needs all four means
	}
	m, err := r.measures()
	if err != nil {
		return 0, err
	}
	value, err := yieldOf(m)
	if err != nil {
		return 0, err
	}
	stated := r.Get("yield_grade")
	return fit(stated, value, new(big.Rat).Add(r.bound(equationCoefficients...), half(stated))), nil
}

// lot grades a published lot end to end: see [Lot].
func lot(r Row) (Verdict, error) {
	l, err := Lot(r)
	if err != nil {
		return 0, err
	}
	a, err := grade.Edition1975.Assess(l)
	if err != nil {
		return 0, err
	}
	stated, err := strconv.Atoi(r.Get("stated_yield_grade"))
	if err != nil {
		return 0, err
	}
	err = errors.Join(
		same("computed", a.Yield.String(), r.Get("computed")),
		same("difference", strconv.Itoa(stated-a.Yield.Grade()), r.Get("difference")))
	if err != nil {
		return 0, err
	}
	if err := r.hot(l.Measures, stated); err != nil {
		return 0, err
	}
	if stated != a.Yield.Grade() {
		return Differs, nil
	}
	return Agrees, nil
}

// hot restores the hot weight of a carcass whose printed weight is chilled, hot less
// 2 1/2 %, and holds the whole grade against the stated one.
func (r Row) hot(m grade.Measures, stated int) (err error) {
	printed, unit := amount(r.Get("weight"))
	weight := nearest(mul(rat(printed), big.NewRat(40, 39)), 4).FloatString(4) + " " + unit
	if m.Weight, err = grade.ParseWeight(weight); err != nil {
		return err
	}
	y, err := m.Yield()
	return errors.Join(err, same("hot weight", weight, r.Get("hot_weight")),
		same("computed with hot weight", y.String(), r.Get("hot_computed")),
		same("whole grade with hot weight", y.Grade(), stated))
}

// Lot reads one of the published lots as a carcass: a steer with bone and lean at
// one point. The report gives maturity and marbling in thirds of a group and of a
// degree; each third is read as its middle, - as 17, the bare name as 50, + as 83
// (derived: no source gives the units), so A is A50 and A+, the oldest third of
// A, is A83. The columns maturity_read and marbling_read keep the reading.
func Lot(r Row) (grade.Carcass, error) {
	middle := func(s string) (name string, units int) {
		switch s[len(s)-1] {
		case '-':
			return s[:len(s)-1], 17
		case '+':
			return s[:len(s)-1], 83
		}
		return s, 50
	}
	name, u := middle(r.Get("maturity"))
	g, err := maturity.ParseGroup(name)
	if err != nil {
		return grade.Carcass{}, err
	}
	name, p := middle(r.Get("marbling"))
	d, err := grade.ParseDegree(name)
	if err != nil {
		return grade.Carcass{}, err
	}
	c := carcass(grade.Steer, g.At(u), d.At(p))
	if c.Measures, err = r.measures(); err != nil {
		return grade.Carcass{}, err
	}
	return c, errors.Join(
		same("maturity read", g.At(u).String(), r.Get("maturity_read")),
		same("marbling read", d.At(p).String(), r.Get("marbling_read")))
}
