package vectors

import (
	"example.com/ribface/grade"
	"example.com/ribface/maturity"
)

// balanceRules are the choices in balancing, by the name that a result has.
var balanceRules = []struct {
	Name  string
	Rules maturity.Balancing
}{
	{"default", maturity.Balancing{}},
	{"tens_toward_bone", maturity.Balancing{Tens: maturity.TensTowardBone}},
	{"tens_toward_lean", maturity.Balancing{Tens: maturity.TensTowardLean}},
	{"old_lean_stays_in_b", maturity.Balancing{OldLean: maturity.OldLeanStaysInB}},
}

var maturityFile = maker{
	File: File{
		Name:   "maturity",
		About:  "Overall maturity from skeletal and lean maturity, by the default rules and by the three choices that no source settles.",
		Rule:   "The mean, a half unit toward bone; 10 units toward bone where the two are more than 40 apart; within 100 of bone; C00 or older with bone C15 or older. By old_lean_stays_in_b B99 or younger with bone under C00. By tens_toward_bone and tens_toward_lean to the nearest ten, a 5 toward the score named, or to the younger ten where that score is the 5; a ten that breaks a limit or is older than both gives way to the other.",
		Source: "ams-maturity-slides cfr-1965-53-general quiz-quality-concepts",
	},
	solve: func(v Vector) (Object, error) {
		r := &reader{o: v.In}
		bone, lean := get(r, "skeletal", maturity.Parse), get(r, "lean", maturity.Parse)
		out := Object{}
		for _, by := range balanceRules {
			s, err := by.Rules.Balance(bone, lean)
			if err != nil {
				return nil, err
			}
			out[by.Name] = s.String()
		}
		return out, r.err
	},
	inputs: func(t *tables) ([]Vector, error) {
		var all []Vector
		for _, name := range []string{"balance-vectors.csv", "maturity-examples.csv"} {
			rows, err := t.rows(name)
			if err != nil {
				return nil, err
			}
			for _, r := range rows {
				all = append(all, stated(r, Object{"skeletal": r.Get("skeletal"), "lean": r.Get("lean")}))
			}
		}
		// The net of golden/maturity.txt.
		var net []maturity.Score
		for g := range maturity.Groups() {
			for _, u := range []int{0, 15, 40, 55, 99} {
				net = append(net, g.At(u))
			}
		}
		net = append(net, maturity.E.At(100))
		for _, bone := range net {
			for _, lean := range net {
				all = append(all, Vector{From: "golden/maturity.txt", In: Object{"skeletal": bone.String(), "lean": lean.String()}})
			}
		}
		return all, nil
	},
}

var ageFile = maker{
	File: File{
		Name:   "maturity-by-age",
		About:  "Overall maturity where permanent incisors or papers may settle the age, as in the edition of 2017.",
		Rule:   "Two permanent incisors or fewer, or papers for under 30 months, hold the balanced score at A99 or younger where the skeleton is younger than D00; either is enough. Without them, or with an older skeleton, the score is the balanced one.",
		Source: "checkoff-maturity-under30 bif-quality news-2017-maturity",
	},
	solve: func(v Vector) (Object, error) {
		c, err := carcass(v.In)
		if err != nil {
			return nil, err
		}
		s, err := maturity.Balancing{}.ByAge(c.Maturity)
		return Object{"overall": s.String()}, err
	},
	inputs: func(t *tables) ([]Vector, error) {
		rows, err := t.rows("age-rules.csv")
		if err != nil {
			return nil, err
		}
		var all []Vector
		for _, r := range rows {
			all = append(all, stated(r, Object{"skeletal": r.Get("skeletal"), "lean": r.Get("lean"), "incisors": r.Get("teeth"), "months": r.Get("months")}))
		}
		for _, v := range t.golden {
			if Text(v.In, "incisors")+Text(v.In, "months") != "" && len(all) < 200 {
				all = append(all, Vector{From: v.From, In: only(Object{"skeletal": v.In["skeletal"], "lean": v.In["lean"], "incisors": Text(v.In, "incisors"), "months": Text(v.In, "months")})})
			}
		}
		for i := range all {
			all[i].Edition = grade.Edition2017.String() // the first that reads teeth and papers
		}
		return all, nil
	},
}
