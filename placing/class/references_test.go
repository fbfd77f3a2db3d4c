package class_test

import (
	"errors"
	"fmt"
	"slices"
	"strconv"
	"strings"
	"testing"

	"example.com/ribface/grade"
	"example.com/ribface/internal/refs"
	"example.com/ribface/maturity"
	"example.com/ribface/placing/class"
)

// TestReferences holds the package against every published row that concerns it, in
// testdata/references.
func TestReferences(t *testing.T) {
	refs.Run(t, "placing/class", "../../testdata/references", map[string]refs.Check{
		"placing-statements.csv": placingStatement,
		"trade-offs.csv":         tradeOff,
	})
}

// tierWords are the qualities that the course notes put in one tier.
var tierWords = map[string][]grade.Quality{
	"Prime":                   {grade.Prime.Part(grade.High), grade.Prime.Part(grade.Low)},
	"high and average Choice": {grade.Choice.Part(grade.High), grade.Choice.Part(grade.Average)},
	"low Choice":              {grade.Choice.Part(grade.Low)},
	"Select":                  {grade.Select.Part(grade.High), grade.Select.Part(grade.Low)},
	"Standard":                {grade.Standard.Part(grade.High), grade.Standard.Part(grade.Low)},
	"Commercial and Utility":  {grade.Commercial.Part(grade.High), grade.Commercial.Part(grade.Low), grade.Utility.Part(grade.Whole)},
}

// tradeOff holds the policy of the course notes to the course notes.
func tradeOff(r refs.Row) (refs.Verdict, error) {
	p := class.NotesPolicy()
	fact, value := r.Get("fact"), r.Get("value")
	if n, ok := strings.CutPrefix(fact, "tier "); ok {
		at, err := strconv.Atoi(n)
		if err != nil {
			return 0, err
		}
		qualities, ok := tierWords[value]
		if !ok || at > len(p.Tiers) {
			return 0, fmt.Errorf("no tier %d, %q", at, value)
		}
		err = refs.Same("standing", p.TiersCite.Standing.String(), r.Get("standing"))
		for _, q := range qualities {
			err = errors.Join(err, refs.Same(q.String()+" in the tier", slices.Contains(p.Tiers[at-1], q.Tier()), true))
		}
		return refs.Agrees, err
	}
	// overcomes is the most tiers that a yield advantage overcomes.
	overcomes := func(y int64) (tiers int) {
		for _, a := range p.Advantages {
			if y >= a.Yield.Units() {
				tiers = max(tiers, a.Tiers)
			}
		}
		return tiers
	}
	switch fact {
	case "yield grade advantage that may overcome one tier", "yield grade advantage that may overcome two tiers":
		want := 1
		if strings.HasSuffix(fact, "two tiers") {
			want = 2
		}
		y, err := grade.ParseYield(value)
		if err != nil {
			return 0, err
		}
		return refs.Agrees, errors.Join(
			refs.Same("tiers overcome", overcomes(y.Units()), want),
			refs.Same("tiers overcome by less", overcomes(y.Units()-1), want-1))
	case "advantage of 1.5 to under 2.0 against two tiers":
		return refs.Agrees, errors.Join(
			refs.Same("answer", value, "quality first"),
			refs.Same("two tiers overcome", overcomes(grade.OneGrade*2-1) >= 2, false))
	case "Standard in a class":
		return refs.Agrees, errors.Join(
			refs.Same("answer", value, "goes to the bottom"),
			refs.Same("bottom", p.Bottom, grade.StandardTier),
			refs.Same("standing", p.BottomCite.Standing.String(), r.Get("standing")))
	}
	return 0, fmt.Errorf("no check for %q", fact)
}

// placingStatement holds that a statement has an id of its own, and that the pairs
// that show it can be built: every quality is one that the chart gives, every yield
// one that a carcass can have. Statements of maturity are checked on the chart.
// Whether a policy places classes so is tested with the policies: TestPublishedStatements
// of package class holds every row to the subtests that its column checks names.
func placingStatement(r refs.Row) (refs.Verdict, error) {
	for _, o := range r.All() {
		if o.Line != r.Line && (o.Get("id") == r.Get("id") || o.Get("statement") == r.Get("statement")) {
			return 0, fmt.Errorf("%s stands twice", r.Get("id"))
		}
	}
	if r.Get("statement") == "" || r.Get("id") == "" || r.Get("about") == "" || r.Get("checks") == "" {
		return 0, errors.New("no statement, id, subject or checks")
	}
	over, err := statedPairs(r.Get("over"))
	if err != nil {
		return 0, err
	}
	under, err := statedPairs(r.Get("under"))
	if err != nil {
		return 0, err
	}
	if (len(over) == 0) != (len(under) == 0) {
		return 0, errors.New("one side of the pair is missing")
	}
	if r.Get("id") == "old-not-shown" {
		for i := range 100 * 100 {
			for _, d := range []grade.Degree{grade.Slight, grade.Small} {
				at := maturity.B.At(i / 100)
				q, err := grade.Current.Quality(grade.Carcass{Sex: grade.Steer, Maturity: maturity.Evidence{Skeletal: at, Lean: at}, Marbling: d.At(i % 100)})
				if err := errors.Join(err, refs.Same("grade", q.Grade(), grade.Standard)); err != nil {
					return 0, err
				}
			}
		}
	}
	return refs.Agrees, nil
}

// statedPair is a quality with a yield, as placing statements name them.
type statedPair struct {
	Quality grade.Quality
	Yield   grade.Yield
}

// statedPairs reads qualities with their yields, as "Low Choice 3.5; Low Select 1.0".
func statedPairs(s string) ([]statedPair, error) {
	if s == "" {
		return nil, nil
	}
	var out []statedPair
	for one := range strings.SplitSeq(s, "; ") {
		i := strings.LastIndexByte(one, ' ')
		if i < 0 {
			return nil, fmt.Errorf("%q is no quality with a yield", one)
		}
		q, err := grade.ParseQuality(one[:i])
		if err != nil {
			return nil, err
		}
		y, err := grade.ParseYield(one[i+1:])
		if err != nil {
			return nil, err
		}
		out = append(out, statedPair{q, y})
	}
	return out, nil
}

// fair reads one of the carcasses of fair-carcasses.csv as a steer. Kidney fat is the
// derived step. Of the quality the third of a grade is printed: its middle is taken for
// the marbling, and A55 for the maturity (both our own).
func fair(r refs.Row) (grade.Carcass, error) {
	middles := map[string]grade.Marbling{"Low Prime": grade.SlightlyAbundant.At(50), "High Choice": grade.Moderate.At(50), "Choice": grade.Modest.At(50)}
	m, ok := middles[r.Get("stated_quality")]
	if !ok {
		return grade.Carcass{}, fmt.Errorf("no middle of %q", r.Get("stated_quality"))
	}
	c := grade.Carcass{Sex: grade.Steer, Maturity: maturity.Evidence{Skeletal: maturity.A.At(55), Lean: maturity.A.At(55)}, Marbling: m}
	var err [4]error
	c.Measures.Fat, err[0] = grade.ParseThickness(r.Get("fat"))
	c.Measures.Ribeye, err[1] = grade.ParseArea(r.Get("rea"))
	c.Measures.KPH, err[2] = grade.ParseShare(r.Get("kph_derived"))
	c.Measures.Weight, err[3] = grade.ParseWeight(r.Get("hcw"))
	return c, errors.Join(err[:]...)
}
