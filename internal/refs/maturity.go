package refs

import (
	"strconv"

	"example.com/ribface/maturity"
)

// pair reads the skeletal and the lean score of a row.
func (r Row) pair() (bone, lean maturity.Score, err error) {
	if bone, err = maturity.Parse(r.Get("skeletal")); err != nil {
		return 0, 0, err
	}
	lean, err = maturity.Parse(r.Get("lean"))
	return bone, lean, err
}

func maturityExample(r Row) (Verdict, error) {
	bone, lean, err := r.pair()
	if err != nil {
		return 0, err
	}
	got, err := maturity.Balance(bone, lean)
	if err != nil {
		return 0, err
	}
	if err := same("overall", got.String(), r.Get("computed")); err != nil {
		return 0, err
	}
	stated, err := maturity.Parse(r.Get("stated"))
	if err != nil {
		return 0, err
	}
	if err := same("difference in units", strconv.Itoa(int(stated-got)), r.Get("difference")); err != nil {
		return 0, err
	}
	if stated != got {
		return Differs, nil
	}
	return Agrees, nil
}

func balanceVector(r Row) (Verdict, error) {
	bone, lean, err := r.pair()
	if err != nil {
		return 0, err
	}
	got, err := maturity.Balance(bone, lean)
	if err != nil {
		return 0, err
	}
	return Agrees, same("overall", got.String(), r.Get("overall"))
}

func groupMonths(r Row) (Verdict, error) {
	if r.Get("group") == "veal or calf" {
		from, _ := maturity.A.Months()
		return Agrees, same("youngest", strconv.Itoa(int(from)), r.Get("to_months"))
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
	if err := same("from", strconv.Itoa(int(from)), r.Get("from_months")); err != nil {
		return 0, err
	}
	return Agrees, same("to", last, r.Get("to_months"))
}

func ossification(r Row) (Verdict, error) {
	s, err := maturity.Parse(r.Get("point"))
	if err != nil {
		return 0, err
	}
	percent, ok := s.Ossification()
	if !ok {
		return 0, same("a percent for "+s.String(), false, true)
	}
	if err := same("percent", strconv.Itoa(percent), r.Get("percent")); err != nil {
		return 0, err
	}
	back, err := maturity.FromOssification(percent)
	if err != nil {
		return 0, err
	}
	if err := same("point", back, s); err != nil {
		return 0, err
	}
	for p := range maturity.OssificationPoints() {
		if p.Score == s {
			return Agrees, same("standing", p.Cite.Standing.String(), r.Get("standing"))
		}
	}
	return 0, same("a listed point "+s.String(), false, true)
}

func maturityScale(r Row) (Verdict, error) {
	s, err := maturity.Parse(r.Get("point"))
	if err != nil {
		return 0, err
	}
	n := rat(r.Get("number"))
	if r.Get("scale") == "1 to 6" {
		n = mul(n, rat("100"))
	}
	return Agrees, same("number", strconv.Itoa(s.Number()), plain(n))
}

func ageRule(r Row) (Verdict, error) {
	bone, lean, err := r.pair()
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
	if err := same("group", got.Group().String(), r.Get("computed")); err != nil {
		return 0, err
	}
	if r.Get("computed") != r.Get("stated") {
		return Differs, nil
	}
	return Agrees, nil
}
