package refs

import (
	"errors"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"example.com/ribface/grade"
	"example.com/ribface/placing/class"
)

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
func tradeOff(r Row) (Verdict, error) {
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
		err = same("standing", p.TiersCite.Standing.String(), r.Get("standing"))
		for _, q := range qualities {
			err = errors.Join(err, same(q.String()+" in the tier", slices.Contains(p.Tiers[at-1], q.Tier()), true))
		}
		return Agrees, err
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
		return Agrees, errors.Join(
			same("tiers overcome", overcomes(y.Units()), want),
			same("tiers overcome by less", overcomes(y.Units()-1), want-1))
	case "advantage of 1.5 to under 2.0 against two tiers":
		return Agrees, errors.Join(
			same("answer", value, "quality first"),
			same("two tiers overcome", overcomes(grade.OneGrade*2-1) >= 2, false))
	case "Standard in a class":
		return Agrees, errors.Join(
			same("answer", value, "goes to the bottom"),
			same("bottom", p.Bottom, grade.StandardTier),
			same("standing", p.BottomCite.Standing.String(), r.Get("standing")))
	}
	return 0, fmt.Errorf("no check for %q", fact)
}
