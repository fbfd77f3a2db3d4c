package main

import (
	"fmt"
	"math/rand/v2"

	"example.com/ribface/grade"
	"example.com/ribface/placing"
	"example.com/ribface/placing/class"
	"example.com/ribface/placing/contest"
	"example.com/ribface/placing/practice"
)

// The form of every contest of the season.
const (
	contests  = 8
	carcasses = 6 // in the grading class
)

var placed = []string{"beef 1", "beef 2", "beef 3"}

// eye is how an invented member sees: leans and scatters in thousandths of the unit
// of the trait, marbling in points.
type eye struct {
	contest.Member
	fat, ribeye, kph, weight, marbling int64 // lean at the start of the season
	scatter                            int64 // percent of the usual scatter
	reasons                            int64 // mean score of a set of reasons
}

// eyes are the invented members, in two teams of places that are nowhere.
var eyes = []eye{
	{contest.Member{ID: "N1", Team: "North Fork", Division: "senior"}, 80, 0, 0, 0, 10, 60, 43},
	{contest.Member{ID: "N2", Team: "North Fork", Division: "senior"}, 0, -600, 100, 0, -15, 70, 41},
	{contest.Member{ID: "N3", Team: "North Fork", Division: "junior"}, -100, 500, -200, 10000, 25, 120, 36},
	{contest.Member{ID: "N4", Team: "North Fork", Division: "junior"}, 30, 200, 300, 0, -30, 160, 33},
	{contest.Member{ID: "E1", Team: "Elk Draw", Division: "senior"}, 20, 100, 0, -5000, 0, 50, 45},
	{contest.Member{ID: "E2", Team: "Elk Draw", Division: "senior"}, -60, -200, 150, 0, 20, 90, 40},
	{contest.Member{ID: "E3", Team: "Elk Draw", Division: "junior"}, 140, -300, 0, 0, 0, 110, 37},
}

// judge draws whole numbers for what members see and do.
type judge struct{ pcg *rand.PCG }

func (j judge) below(n int64) int64 { return int64(j.pcg.Uint64() >> 32 * uint64(n) >> 32) }

// off returns a number around 0 with about the standard deviation: the sum of
// twelve even draws.
func (j judge) off(spread int64) int64 {
	sum := int64(0)
	for range 12 {
		sum += j.below(2001) - 1000
	}
	return sum * spread / 2000
}

// sees returns the carcass as the member sees it in a contest, 0 for the first, read
// to the steps that people use. The lean wears off to a third of it.
func (e eye) sees(j judge, c grade.Carcass, contest int64) grade.Carcass {
	seen := func(v, lean, scatter, step, least, most int64) int64 {
		lean = lean * (3*contests - 2*contest) / (3 * contests)
		v += lean + j.off(scatter*e.scatter/100)
		return min(max((v+step/2)/step*step, least), most)
	}
	m := &c.Measures
	m.Fat = grade.ThicknessUnits(seen(m.Fat.Units(), e.fat*10, 600, 500, 500, 25_000))
	m.Ribeye = grade.AreaUnits(seen(m.Ribeye.Units(), e.ribeye*10, 6000, 1000, 60_000, 240_000))
	m.KPH = grade.ShareUnits(seen(m.KPH.Units(), e.kph*10, 3000, 5000, 5000, 60_000))
	m.Weight = grade.WeightUnits(seen(m.Weight.Units(), e.weight*10, 60_000, 10_000, 4_000_000, 14_000_000))
	c.Marbling = grade.Marbling(seen(int64(c.Marbling), e.marbling, 35, 10, int64(grade.PracticallyDevoid.At(0)), int64(grade.Abundant.At(0))))
	return c
}

// invent makes the sheets of a season.
func invent(seed uint64) (files, error) {
	j := judge{rand.NewPCG(seed, 8)}
	var s sheets
	for n := range int64(contests) {
		name := fmt.Sprintf("invented contest %d", n+1)
		shapes := []practice.Spec{{Difficulty: practice.Easy}, {Shape: practice.CloseMiddle}, {Difficulty: practice.Hard}}
		for i, spec := range shapes {
			made, err := practice.Make(j.pcg.Uint64(), spec)
			if err != nil {
				return files{}, err
			}
			key := made.Key()
			key.Contest, key.Class = name, placed[i]
			s.officials = append(s.officials, key)
			for _, e := range eyes {
				order, err := e.place(j, made.Graded.Class(), n)
				if err != nil {
					return files{}, err
				}
				card := placing.Card{Order: order}
				if j.below(60) == 0 {
					card = placing.Card{Mark: placing.DoubleMarked}
				}
				s.placings = append(s.placings, contest.PlacingCard{Contest: name, Class: placed[i], Member: e.Member, Card: card})
			}
		}
		made, err := practice.Make(j.pcg.Uint64(), practice.Spec{Exhibits: carcasses, LeastGrades: 2, Spread: 130})
		if err != nil {
			return files{}, err
		}
		for _, f := range made.Facts() {
			f.Contest, f.Class = name, "coolers"
			s.facts = append(s.facts, f)
		}
		for _, e := range eyes {
			for x := range made.Graded.Exhibits() {
				seen := e.sees(j, x.Carcass, n)
				a, err := grade.Current.Assess(seen)
				if err != nil {
					return files{}, err
				}
				f, err := contest.FactsOf(a)
				if err != nil {
					return files{}, err
				}
				// The weight is posted, maturity and preliminary grade are not asked for, and the
				// yield is written in tenths.
				f.Skeletal, f.Lean, f.Maturity = 0, 0, 0
				f.Weight, f.Preliminary = grade.Weight{}, grade.ShortcutYield{}
				if f.Yield, err = a.Yield.Round(grade.HalfUp, 1); err != nil {
					return files{}, err
				}
				if j.below(80) == 0 {
					f.Quality, f.Marks.Quality = 0, placing.Blank
				}
				s.estimates = append(s.estimates, contest.Estimate{Contest: name, Class: "coolers", Exhibit: x.Number, Member: e.Member, Facts: f})
			}
			score := min(max(e.reasons+n/2+j.off(2), 0), 50)
			s.scores = append(s.scores, contest.HandScore{Contest: name, Component: "reasons", Class: placed[0], Member: e.Member, Score: points(int(score))})
		}
	}
	return s.write()
}

// place returns the order in which the member places what he sees.
func (e eye) place(j judge, c class.Class, contest int64) (placing.Order, error) {
	for i := range c.Exhibits {
		c.Exhibits[i].Carcass = e.sees(j, c.Exhibits[i].Carcass, contest)
	}
	g, err := c.Grade()
	if err != nil {
		return placing.Order{}, err
	}
	p, err := g.Place(class.DefaultPolicy())
	return p.Order, err
}
