package cards

import (
	"example.com/ribface/grade"
	"example.com/ribface/maturity"
	"example.com/ribface/placing"
)

// Member is a person who hands in cards. It is comparable. The zero Member is no
// one.
type Member struct {
	ID       string // name or number, different for every member of a contest
	Team     string // empty for an individual
	Division string // age division, as "junior"; empty where there is none
}

// Answer is what a card holds for one item: a value, or the mark that says why
// there is none. The zero Answer says nothing: the item was not asked for, or not
// entered.
type Answer[T comparable] struct {
	Value T            // what was written, when Given
	Given bool         // a value was written
	Mark  placing.Mark // why there is no value; zero when there is one
}

// Give returns the answer that holds v.
func Give[T comparable](v T) Answer[T] { return Answer[T]{Value: v, Given: true} }

// Facts are what can be said of one carcass on a grading card (the rows of a
// published card: wa-ffa-card). The zero Facts say nothing.
type Facts struct {
	Maturity Answer[maturity.Score]  // overall maturity
	Marbling Answer[grade.Marbling]  // in the ribeye
	Quality  Answer[grade.Quality]   // quality grade
	Fat      Answer[grade.Thickness] // adjusted fat, 0 to 3 in
	Ribeye   Answer[grade.Area]      // over 0 to 25 sq in
	KPH      Answer[grade.Share]     // 0 to 10 percent
	Weight   Answer[grade.Weight]    // hot carcass weight, over 0 to 1,800 lb
	Yield    Answer[grade.Yield]     // yield grade with its decimals, -5.5 to 18.84
}

// FactsOf returns the facts of a graded carcass, every one of them given.
func FactsOf(a grade.Assessment) (Facts, error) {
	m, err := a.Carcass.Adjusted()
	if err != nil {
		return Facts{}, err
	}
	return Facts{
		Maturity: Give(a.Maturity),
		Marbling: Give(a.Carcass.Marbling),
		Quality:  Give(a.Quality),
		Fat:      Give(m.Fat),
		Ribeye:   Give(m.Ribeye),
		KPH:      Give(m.KPH),
		Weight:   Give(m.Weight),
		Yield:    Give(a.Yield),
	}, nil
}

// PlacingCard is a member's card for one placing class (the fields of a published
// card: ext-maryland-contests).
type PlacingCard struct {
	Contest string // empty where there is only one
	Class   string
	Member  Member
	Card    placing.Card
}

// Estimate is a member's card for one exhibit of a grading class.
type Estimate struct {
	Contest string
	Class   string
	Exhibit int // 1 to 60
	Member  Member
	Facts   Facts
}

// HandScore is a score that people gave: for a set of reasons, an examination, a
// set of questions or identification.
type HandScore struct {
	Contest   string
	Component string // the component of the format that it counts for, as "reasons"
	Class     string // the class it is about; empty where the component has none
	Member    Member
	Score     Answer[Points]
}

// OfficialPlacing is the official placing of one class with its cuts.
type OfficialPlacing struct {
	Contest string
	Class   string
	Order   placing.Order
	Cuts    placing.Cuts
}

// OfficialFacts are the official facts of one exhibit of a grading class.
type OfficialFacts struct {
	Contest string
	Class   string
	Exhibit int // 1 to 60
	Facts   Facts
}

// MaxExhibit is the greatest number of an exhibit in a grading class.
const MaxExhibit = 60

// measures returns the four measures, those that were not given as zero.
func (f Facts) measures() grade.Measures {
	return grade.Measures{Fat: f.Fat.Value, Ribeye: f.Ribeye.Value, KPH: f.KPH.Value, Weight: f.Weight.Value}
}

// measured reports whether all four measures were given.
func (f Facts) measured() bool {
	return f.Fat.Given && f.Ribeye.Given && f.KPH.Given && f.Weight.Given
}
