package refs

import (
	"errors"
	"fmt"
	"math/big"
	"slices"
	"strconv"
	"strings"

	"example.com/ribface/grade"
	"example.com/ribface/maturity"
)

// Fair reads one of the carcasses of fair-carcasses.csv as a steer. Kidney fat is the
// derived step. Of the quality the third of a grade is printed: its middle is taken for
// the marbling, and A55 for the maturity (both our own).
func Fair(r Row) (grade.Carcass, error) {
	middles := map[string]grade.Marbling{"Low Prime": grade.SlightlyAbundant.At(50), "High Choice": grade.Moderate.At(50), "Choice": grade.Modest.At(50)}
	m, ok := middles[r.Get("stated_quality")]
	if !ok {
		return grade.Carcass{}, fmt.Errorf("no middle of %q", r.Get("stated_quality"))
	}
	c := carcass(grade.Steer, maturity.A.At(55), m)
	var err [4]error
	c.Measures.Fat, err[0] = grade.ParseThickness(r.Get("fat"))
	c.Measures.Ribeye, err[1] = grade.ParseArea(r.Get("rea"))
	c.Measures.KPH, err[2] = grade.ParseShare(r.Get("kph_derived"))
	c.Measures.Weight, err[3] = grade.ParseWeight(r.Get("hcw"))
	return c, errors.Join(err[:]...)
}

// fairCarcass holds the equation to a contest's stated yield grade. KPH is not
// printed; it is read as a step of half a percent, and no other step may give the
// stated hundredth. The column shortcut says whether some step gives it by the
// shortcut method.
func fairCarcass(r Row) (Verdict, error) {
	m := grade.Measures{}
	var err error
	if m.Fat, err = grade.ParseThickness(r.Get("fat")); err != nil {
		return 0, err
	}
	if m.Ribeye, err = grade.ParseArea(r.Get("rea")); err != nil {
		return 0, err
	}
	if m.Weight, err = grade.ParseWeight(r.Get("hcw")); err != nil {
		return 0, err
	}
	if _, err := grade.ParseQuality(r.Get("stated_quality")); err != nil {
		return 0, err
	}
	stated := r.Get("stated")
	var steps, shortcut []string
	for half := range 21 {
		kph := big.NewRat(int64(half), 2).FloatString(1) + "%"
		if m.KPH, err = grade.ParseShare(kph); err != nil {
			return 0, err
		}
		y, err := yieldOf(m)
		if err != nil {
			return 0, err
		}
		if kph == r.Get("kph_derived") {
			if err := same("computed", plain(y), r.Get("computed")); err != nil {
				return 0, err
			}
		}
		if fit(stated, y, new(big.Rat)) == Agrees {
			steps = append(steps, kph)
		}
		q, err := quickOf(m)
		if err != nil {
			return 0, err
		}
		if fit(stated, q, new(big.Rat)) == Agrees {
			shortcut = append(shortcut, kph)
		}
	}
	by := "no"
	if len(shortcut) > 0 {
		by = "yes"
	}
	// Places are counted from 1 without a gap within the contest.
	place := 0
	for _, o := range r.All() {
		if o.Get("source_id") == r.Get("source_id") {
			if place++; o.Line == r.Line {
				break
			}
		}
	}
	return Agrees, errors.Join(
		same("steps of KPH", strings.Join(steps, " "), r.Get("kph_derived")),
		same("by the shortcut method", by, r.Get("shortcut")),
		same("place", strconv.Itoa(place), r.Get("place")))
}

// usualRange holds that nothing in a usual range is pointed out as unusual, and that
// the average lies in it.
func usualRange(r Row) (Verdict, error) {
	low, high := r.Get("low"), r.Get("high")
	for _, s := range []string{low, r.Get("average"), high} {
		if s == "" {
			continue
		}
		m, err := with(r.Get("measure"), s, 0)
		if err != nil {
			return 0, err
		}
		if err := m.Check(); err != nil {
			return 0, err
		}
		if notes := m.Unusual(); len(notes) > 0 {
			return 0, fmt.Errorf("%s is noted: %v", s, notes)
		}
	}
	number := func(s string) *big.Rat {
		n, _ := amount(s)
		return rat(n)
	}
	at := number(low)
	if a := r.Get("average"); a != "" {
		at = number(a)
	}
	return Agrees, same("average in the range", number(low).Cmp(at) <= 0 && at.Cmp(number(high)) < 0, true)
}

// traits are those of trait-correlations.csv, in the order of its matrix.
var traits = []string{"weight", "fat", "ribeye", "marbling", "KPH"}

// traitCorrelation holds that means are usual, that the correlations can be those of
// one herd (every leading minor of their matrix is over 0), and that the kappas stand
// in the order that their weights give and leave a chance agreement between 0 and 1.
func traitCorrelation(r Row) (Verdict, error) {
	switch r.Get("kind") {
	case "spread":
		m, err := with(r.Get("x"), r.Get("mean"), 0)
		if err != nil {
			return 0, err
		}
		if notes := m.Unusual(); len(notes) > 0 {
			return 0, fmt.Errorf("a mean is noted: %v", notes)
		}
		mean, unit := amount(r.Get("mean"))
		sd, of := amount(r.Get("sd"))
		return Agrees, errors.Join(same("unit", unit, of), same("sd over 0 and under the mean", rat(sd).Sign() > 0 && rat(sd).Cmp(rat(mean)) < 0, true))
	case "correlation":
		matrix := make([][]*big.Rat, len(traits))
		for i := range traits {
			matrix[i] = make([]*big.Rat, len(traits))
			matrix[i][i] = big.NewRat(1, 1)
		}
		for _, o := range r.All() {
			if o.Get("kind") != "correlation" {
				continue
			}
			i, j := slices.Index(traits, o.Get("x")), slices.Index(traits, o.Get("y"))
			if i < 0 || j < 0 || matrix[i][j] != nil {
				return 0, fmt.Errorf("%s with %s: no trait, or twice", o.Get("x"), o.Get("y"))
			}
			v := rat(o.Get("stated"))
			matrix[i][j], matrix[j][i] = v, v
		}
		for i := range traits {
			for j := range traits {
				if matrix[i][j] == nil {
					return 0, fmt.Errorf("no correlation of %s and %s", traits[i], traits[j])
				}
			}
		}
		return Agrees, same("positive definite", definite(matrix), true)
	case "agreement":
		stated := map[string]*big.Rat{}
		for _, o := range r.All() {
			if o.Get("kind") == "agreement" {
				stated[o.Get("x")] = rat(o.Get("stated"))
			}
		}
		right, kappa, linear, quadratic := stated["right"], stated["kappa"], stated["linear kappa"], stated["quadratic kappa"]
		if len(stated) != 4 || right == nil || kappa == nil || linear == nil || quadratic == nil {
			return 0, errors.New("not the four figures of one table")
		}
		one := big.NewRat(1, 1)
		chance := new(big.Rat).Quo(sub(right, kappa), sub(one, kappa))
		return Agrees, errors.Join(
			same("kappas in order", kappa.Cmp(linear) < 0 && linear.Cmp(quadratic) < 0 && quadratic.Cmp(one) < 0, true),
			same("chance agreement between 0 and 1", chance.Sign() > 0 && chance.Cmp(one) < 0, true))
	}
	return 0, fmt.Errorf("no check for %q", r.Get("kind"))
}

// definite reports whether elimination of a symmetric matrix leaves only pivots over
// 0, exactly.
func definite(m [][]*big.Rat) bool {
	for k := range m {
		if m[k][k].Sign() <= 0 {
			return false
		}
		for i := k + 1; i < len(m); i++ {
			f := new(big.Rat).Quo(m[i][k], m[k][k])
			row := slices.Clone(m[i])
			for j := k; j < len(m); j++ {
				row[j] = sub(m[i][j], mul(f, m[k][j]))
			}
			m[i] = row
		}
	}
	return true
}

// fedCattle holds the round figure of 25 million a year between the least and the
// greatest of the years that were found.
func fedCattle(r Row) (Verdict, error) {
	low, high := rat(r.Get("millions")), rat(r.Get("millions"))
	for _, o := range r.All() {
		if v := rat(o.Get("millions")); v.Cmp(low) < 0 {
			low = v
		} else if v.Cmp(high) > 0 {
			high = v
		}
	}
	round := rat("25")
	return Agrees, same("25 million in the span", low.Cmp(round) <= 0 && round.Cmp(high) <= 0, true)
}
