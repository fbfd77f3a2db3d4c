package refs

import (
	"encoding/json"
	"errors"
	"fmt"
	"os"
	"slices"
	"strconv"
	"strings"

	"example.com/ribface/grade"
	"example.com/ribface/placing/contest"
)

// placingStatement holds that a statement has an id of its own, and that the pairs
// that show it can be built: every quality is one that the chart gives, every yield
// one that a carcass can have. Statements of maturity are checked on the chart.
// Whether a policy places classes so is tested with the policies: TestPublishedStatements
// of package class holds every row to the subtests that its column checks names.
func placingStatement(r Row) (Verdict, error) {
	for _, o := range r.All() {
		if o.Line != r.Line && (o.Get("id") == r.Get("id") || o.Get("statement") == r.Get("statement")) {
			return 0, fmt.Errorf("%s stands twice", r.Get("id"))
		}
	}
	if r.Get("statement") == "" || r.Get("id") == "" || r.Get("about") == "" || r.Get("checks") == "" {
		return 0, errors.New("no statement, id, subject or checks")
	}
	over, err := Carcasses(r.Get("over"))
	if err != nil {
		return 0, err
	}
	under, err := Carcasses(r.Get("under"))
	if err != nil {
		return 0, err
	}
	if (len(over) == 0) != (len(under) == 0) {
		return 0, errors.New("one side of the pair is missing")
	}
	if r.Get("id") == "old-not-shown" {
		for _, d := range []string{"Slight", "Small"} {
			all, err := points(d)
			if err != nil {
				return 0, err
			}
			at, err := units("B")
			if err != nil {
				return 0, err
			}
			for _, m := range all {
				for _, s := range at {
					q, err := grade.Current.Quality(carcass(grade.Steer, s, m))
					if err != nil {
						return 0, err
					}
					if err := same("grade", q.Grade(), grade.Standard); err != nil {
						return 0, err
					}
				}
			}
		}
	}
	return Agrees, nil
}

// Pair is a quality with a yield, as placing statements name them.
type Pair struct {
	Quality grade.Quality
	Yield   grade.Yield
}

// Carcasses reads qualities with their yields, as "Low Choice 3.5; Low Select 1.0".
func Carcasses(s string) ([]Pair, error) {
	if s == "" {
		return nil, nil
	}
	var out []Pair
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
		out = append(out, Pair{q, y})
	}
	return out, nil
}

// format reads a contest format that is published. The folder is as far away from
// the packages that check the row as from this one.
func format(name string) (contest.Format, error) {
	var f contest.Format
	text, err := os.ReadFile("../../examples/formats/" + name + ".json")
	if err != nil {
		return f, err
	}
	return f, json.Unmarshal(text, &f)
}

// contestFact holds what of a contest's rules the library can hold: sums, bands in
// order, limits that are possible, and who counts of a team.
func contestFact(r Row) (Verdict, error) {
	var parts []int
	if kind := r.Get("kind"); slices.Contains([]string{"sum", "band", "team", "total", "count"}, kind) {
		for s := range strings.FieldsSeq(r.Get("parts")) {
			n, err := strconv.Atoi(s)
			if err != nil {
				return 0, err
			}
			parts = append(parts, n)
		}
	}
	limits := strings.Split(r.Get("parts"), ";")
	switch r.Get("kind") {
	case "sum":
		total := 0
		for _, n := range parts {
			total += n
		}
		return Agrees, same("sum", strconv.Itoa(total), r.Get("stated"))
	case "band":
		// Bands rise in the order of the file, and none passes the value of a set.
		for _, o := range r.All() {
			if o.Get("kind") == "band" && o.Line < r.Line {
				words := strings.Fields(o.Get("parts"))
				last, err := strconv.Atoi(words[len(words)-1])
				if err != nil {
					return 0, err
				}
				if last > parts[0] {
					return 0, fmt.Errorf("the band before ends at %d", last)
				}
			}
		}
		return Agrees, same("band of a set of 50", slices.IsSorted(parts) && parts[len(parts)-1] <= 50, true)
	case "range":
		_, what, _ := strings.Cut(r.Get("fact"), ": ")
		for _, s := range limits {
			m, err := with(what, s, 0)
			if err != nil {
				return 0, err
			}
			if err := m.Check(); err != nil {
				return 0, err
			}
			if notes := m.Unusual(); len(notes) > 0 {
				return 0, fmt.Errorf("%v", notes)
			}
		}
		low, _ := amount(limits[0])
		high, _ := amount(limits[1])
		return Agrees, same("limits in order", rat(low).Cmp(rat(high)) < 0, true)
	case "percent":
		return Agrees, same("limits in order", rat(limits[0]).Cmp(rat(limits[1])) < 0 && rat(limits[1]).Cmp(rat("100")) <= 0, true)
	case "yield":
		y, err := grade.ParseYield(r.Get("parts"))
		if err != nil {
			return 0, err
		}
		return Agrees, same("whole grade of the most", y.Grade(), 2)
	case "quality":
		q, err := grade.ParseQuality(r.Get("parts"))
		if err != nil {
			return 0, err
		}
		return Agrees, same("tier", q.Tier(), grade.LowChoice)
	case "team":
		f, err := format("california-2012")
		if err != nil {
			return 0, err
		}
		return Agrees, errors.Join(same("members", f.TeamMembers, parts[0]), same("counting", f.Counting, parts[1]))
	case "tie":
		// The retail cuts that break the tie are there for any carcass that is graded.
		_, err := usual.RetailCuts()
		return Agrees, err
	case "total", "count":
		return Agrees, same("over 0", len(parts) == 1 && parts[0] > 0, true)
	case "rule":
		// Reasons are a component given by hand, which no placing has a part in.
		f, err := format("kansas-state-horse-class")
		if err != nil {
			return 0, err
		}
		by := slices.ContainsFunc(f.Components, func(c contest.Component) bool { return c.Name == "reasons" && c.Kind == contest.KindHand })
		return Agrees, same("a format with reasons by hand", by, true)
	}
	return 0, fmt.Errorf("no check for %q", r.Get("kind"))
}
