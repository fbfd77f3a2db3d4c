package contest_test

import (
	"encoding/json"
	"errors"
	"fmt"
	"os"
	"slices"
	"strconv"
	"strings"
	"testing"

	"example.com/ribface/grade"
	"example.com/ribface/internal/refs"
	"example.com/ribface/placing/contest"
)

// TestReferences holds the package against every published row that concerns it, in
// testdata/references.
func TestReferences(t *testing.T) {
	refs.Run(t, "placing/contest", "../../testdata/references", map[string]refs.Check{
		"contest-facts.csv": contestFact,
	})
}

// format reads a contest format that is published.
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
func contestFact(r refs.Row) (refs.Verdict, error) {
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
		return refs.Agrees, refs.Same("sum", strconv.Itoa(total), r.Get("stated"))
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
		return refs.Agrees, refs.Same("band of a set of 50", slices.IsSorted(parts) && parts[len(parts)-1] <= 50, true)
	case "range":
		_, what, _ := strings.Cut(r.Get("fact"), ": ")
		for _, s := range limits {
			m, err := usualBut(what, s)
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
		low, _ := refs.Amount(limits[0])
		high, _ := refs.Amount(limits[1])
		return refs.Agrees, refs.Same("limits in order", refs.Rat(low).Cmp(refs.Rat(high)) < 0, true)
	case "percent":
		return refs.Agrees, refs.Same("limits in order", refs.Rat(limits[0]).Cmp(refs.Rat(limits[1])) < 0 && refs.Rat(limits[1]).Cmp(refs.Rat("100")) <= 0, true)
	case "yield":
		y, err := grade.ParseYield(r.Get("parts"))
		if err != nil {
			return 0, err
		}
		return refs.Agrees, refs.Same("whole grade of the most", y.Grade(), 2)
	case "quality":
		q, err := grade.ParseQuality(r.Get("parts"))
		if err != nil {
			return 0, err
		}
		return refs.Agrees, refs.Same("tier", q.Tier(), grade.LowChoice)
	case "team":
		f, err := format("california-2012")
		if err != nil {
			return 0, err
		}
		return refs.Agrees, errors.Join(refs.Same("members", f.TeamMembers, parts[0]), refs.Same("counting", f.Counting, parts[1]))
	case "tie":
		// The retail cuts that break the tie are there for any carcass that is graded.
		_, err := usual.RetailCuts()
		return refs.Agrees, err
	case "total", "count":
		return refs.Agrees, refs.Same("over 0", len(parts) == 1 && parts[0] > 0, true)
	case "rule":
		// Reasons are a component given by hand, which no placing has a part in.
		f, err := format("kansas-state-horse-class")
		if err != nil {
			return 0, err
		}
		by := slices.ContainsFunc(f.Components, func(c contest.Component) bool { return c.Name == "reasons" && c.Kind == contest.KindHand })
		return refs.Agrees, refs.Same("a format with reasons by hand", by, true)
	}
	return 0, fmt.Errorf("no check for %q", r.Get("kind"))
}

// usual is a carcass to try a single measure on.
var usual = grade.Measures{Fat: grade.Inches(0.5), Ribeye: grade.SquareInches(13), KPH: grade.Percent(2), Weight: grade.Pounds(800)}

// usualBut reads one measure of a row into the usual carcass.
func usualBut(measure, s string) (m grade.Measures, err error) {
	m = usual
	switch measure {
	case "fat":
		m.Fat, err = grade.ParseThickness(s)
	case "REA", "ribeye":
		m.Ribeye, err = grade.ParseArea(s)
	case "KPH":
		m.KPH, err = grade.ParseShare(s)
	case "HCW", "weight":
		m.Weight, err = grade.ParseWeight(s)
	default:
		err = fmt.Errorf("no measure %q", measure)
	}
	return m, err
}
