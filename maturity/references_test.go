package maturity_test

import (
	"strconv"
	"testing"

	"example.com/ribface/internal/refs"
	"example.com/ribface/maturity"
)

// TestReferences holds the package against every published row that concerns it, in
// testdata/references.
func TestReferences(t *testing.T) {
	refs.Run(t, "maturity", "../testdata/references", map[string]refs.Check{
		"age-rules.csv":         ageRule,
		"balance-vectors.csv":   balanceVector,
		"group-months.csv":      groupMonths,
		"maturity-examples.csv": maturityExample,
		"maturity-scales.csv":   maturityScale,
		"ossification.csv":      ossification,
	})
}

// pair reads the skeletal and the lean score of a row.
func pair(r refs.Row) (bone, lean maturity.Score, err error) {
	if bone, err = maturity.Parse(r.Get("skeletal")); err != nil {
		return 0, 0, err
	}
	lean, err = maturity.Parse(r.Get("lean"))
	return bone, lean, err
}

func maturityExample(r refs.Row) (refs.Verdict, error) {
	bone, lean, err := pair(r)
	if err != nil {
		return 0, err
	}
	got, err := maturity.Balance(bone, lean)
	if err != nil {
		return 0, err
	}
	if err := refs.Same("overall", got.String(), r.Get("computed")); err != nil {
		return 0, err
	}
	stated, err := maturity.Parse(r.Get("stated"))
	if err != nil {
		return 0, err
	}
	if err := refs.Same("difference in units", strconv.Itoa(int(stated-got)), r.Get("difference")); err != nil {
		return 0, err
	}
	if stated != got {
		return refs.Differs, nil
	}
	return refs.Agrees, nil
}

func balanceVector(r refs.Row) (refs.Verdict, error) {
	bone, lean, err := pair(r)
	if err != nil {
		return 0, err
	}
	got, err := maturity.Balance(bone, lean)
	if err != nil {
		return 0, err
	}
	return refs.Agrees, refs.Same("overall", got.String(), r.Get("overall"))
}

func groupMonths(r refs.Row) (refs.Verdict, error) {
	if r.Get("group") == "veal or calf" {
		from, _ := maturity.A.Months()
		return refs.Agrees, refs.Same("youngest", strconv.Itoa(int(from)), r.Get("to_months"))
	}
	g, err := maturity.ParseGroup(r.Get("group"))
	if err != nil {
		return 0, err
	}
	from, to := g.Months()
	last := strconv.Itoa(int(to))
	if to == 0 {
		last = ""
	}
	if err := refs.Same("from", strconv.Itoa(int(from)), r.Get("from_months")); err != nil {
		return 0, err
	}
	return refs.Agrees, refs.Same("to", last, r.Get("to_months"))
}

func ossification(r refs.Row) (refs.Verdict, error) {
	s, err := maturity.Parse(r.Get("point"))
	if err != nil {
		return 0, err
	}
	percent, ok := s.Ossification()
	if !ok {
		return 0, refs.Same("a percent for "+s.String(), false, true)
	}
	if err := refs.Same("percent", strconv.Itoa(percent), r.Get("percent")); err != nil {
		return 0, err
	}
	back, err := maturity.FromOssification(percent)
	if err != nil {
		return 0, err
	}
	if err := refs.Same("point", back, s); err != nil {
		return 0, err
	}
	for p := range maturity.OssificationPoints() {
		if p.Score == s {
			return refs.Agrees, refs.Same("standing", p.Cite.Standing.String(), r.Get("standing"))
		}
	}
	return 0, refs.Same("a listed point "+s.String(), false, true)
}

func maturityScale(r refs.Row) (refs.Verdict, error) {
	s, err := maturity.Parse(r.Get("point"))
	if err != nil {
		return 0, err
	}
	n := refs.Rat(r.Get("number"))
	if r.Get("scale") == "1 to 6" {
		n = refs.Mul(n, refs.Rat("100"))
	}
	return refs.Agrees, refs.Same("number", strconv.Itoa(s.Number()), refs.Plain(n))
}

func ageRule(r refs.Row) (refs.Verdict, error) {
	bone, lean, err := pair(r)
	if err != nil {
		return 0, err
	}
	e := maturity.Evidence{Skeletal: bone, Lean: lean}
	if t := r.Get("teeth"); t != "" {
		n, err := strconv.Atoi(t)
		if err != nil {
			return 0, err
		}
		e.Teeth = maturity.Incisors(n)
	}
	if m := r.Get("months"); m != "" {
		n, err := strconv.Atoi(m)
		if err != nil {
			return 0, err
		}
		e.Papers = maturity.Months(n)
	}
	got, err := maturity.Balancing{}.ByAge(e)
	if err != nil {
		return 0, err
	}
	if err := refs.Same("group", got.Group().String(), r.Get("computed")); err != nil {
		return 0, err
	}
	if r.Get("computed") != r.Get("stated") {
		return refs.Differs, nil
	}
	return refs.Agrees, nil
}
