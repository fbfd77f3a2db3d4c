package vectors

import (
	"fmt"
	"slices"
	"strconv"

	"example.com/ribface/grade"
	"example.com/ribface/maturity/cite"
	"example.com/ribface/placing/contest"
)

// oneLine is a ladder of the qualities that the chart of 2017 gives, 1 point a line of an
// item of 10: an example, no contest's table.
const oneLine = "qualities of 2017, 1 point a line of 10 (an example)"

// published is a published ladder and where it comes from. The two show the model and
// are no table for beef.
func published(name string) (contest.Ladder[string], cite.Citation, bool) {
	of := func(ids string, value float64, rungs []string, weights ...float64) (contest.Ladder[string], cite.Citation, bool) {
		var lines []contest.Points
		for _, w := range weights {
			lines = append(lines, contest.PointsOf(w))
		}
		return contest.Ladder[string]{Value: contest.PointsOf(value), Rungs: rungs, Lines: lines}, cite.Citation{Standing: cite.Published, IDs: ids}, true
	}
	switch name {
	case "ready-to-cook carcasses":
		return of("psu-poultry", 10, []string{"A", "B", "C", "no grade"}, 3, 3, 4)
	case "candled eggs":
		return of("fl-ffa-2013", 5, []string{"AA", "A", "B", "inedible"}, 1, 1, 3)
	}
	return contest.Ladder[string]{}, cite.Citation{}, false
}

func qualityLadder() contest.Ladder[grade.Quality] {
	rungs := contest.ChartQualities(grade.Edition2017)
	return contest.Ladder[grade.Quality]{Value: contest.PointsOf(10), Rungs: rungs, Lines: slices.Repeat([]contest.Points{contest.PointsOf(1)}, len(rungs)-1)}
}

var ladderFile = maker{
	File: File{
		Name:   "points",
		About:  "Points lost by an estimate, and by how many lines or steps it is off (over 0 where the answer is better than the key on a ladder, or the higher yield).",
		Rule:   "On a ladder the weights of the lines between key and answer, up to the value of the item. Yield grades in thirds: yields to hundredths, halves up; then the third of a grade from 1.00 to 5.99, split at .34 and .67; 2 points for one third off, 5 for two, the whole item of 10 for more.",
		Source: "psu-poultry fl-ffa-2013 aged-yield-slides",
	},
	solve: func(v Vector) (Object, error) {
		name, key, answer := Text(v.In, "ladder"), Text(v.In, "key"), Text(v.In, "answer")
		var lost contest.Points
		var off int64
		switch l, _, ok := published(name); {
		case ok:
			p, n, err := l.Loss(key, answer)
			if err != nil {
				return nil, err
			}
			lost, off = p, int64(n)
		case name == oneLine:
			r := &reader{o: v.In}
			k, a := get(r, "key", grade.ParseQuality), get(r, "answer", grade.ParseQuality)
			if r.err != nil {
				return nil, r.err
			}
			p, n, err := qualityLadder().Loss(k, a)
			if err != nil {
				return nil, err
			}
			lost, off = p, int64(n)
		case name == "yield grade in thirds":
			rule, _ := contest.TaughtThirds()
			k, err := grade.ParseYield(key)
			if err != nil {
				return nil, err
			}
			a, err := grade.ParseYield(answer)
			if err != nil {
				return nil, err
			}
			if lost, off, err = rule.Loss(k, a); err != nil {
				return nil, err
			}
		default:
			return nil, fmt.Errorf("no ladder %q", name)
		}
		return Object{"lost": lost.String(), "off": strconv.FormatInt(off, 10)}, nil
	},
	inputs: func(*tables) ([]Vector, error) {
		var all []Vector
		for _, name := range []string{"ready-to-cook carcasses", "candled eggs"} {
			l, by, _ := published(name)
			for i, key := range l.Rungs {
				for j, answer := range l.Rungs {
					v := Vector{From: "every pair of rungs", In: Object{"ladder": name, "key": key, "answer": answer}, Standing: cite.Derived.String(), Source: by.IDs}
					if j == i+1 {
						v.From, v.Standing = "references/grade-deductions.csv", by.Standing.String()
					}
					all = append(all, v)
				}
			}
		}
		l := qualityLadder()
		for i, key := range l.Rungs {
			for j, answer := range l.Rungs {
				if (i+2*j)%3 == 0 {
					all = append(all, Vector{From: "every third pair of rungs", In: Object{"ladder": oneLine, "key": key.String(), "answer": answer.String()}})
				}
			}
		}
		s := sweep(3)
		yields := []string{"1", "1.33", "1.335", "1.34", "1.66", "1.67", "2", "2.3333", "2.994", "2.995", "3", "3.5", "4.2", "5.5", "6.8", "0.4"}
		for _, key := range yields {
			for range 6 {
				all = append(all, Vector{From: "a sweep", In: Object{"ladder": "yield grade in thirds", "key": key, "answer": pick(&s, yields...)}})
			}
		}
		return all, nil
	},
}
