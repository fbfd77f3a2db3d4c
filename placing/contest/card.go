package contest

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
// published card, wa-ffa-card; bone and lean apart and the preliminary grade are
// for practice: common practice, no source). The zero Facts say nothing.
type Facts struct {
	Skeletal Answer[maturity.Score]  // skeletal maturity, from the bone
	Lean     Answer[maturity.Score]  // lean maturity, from color and texture
	Maturity Answer[maturity.Score]  // overall maturity
	Marbling Answer[grade.Marbling]  // in the ribeye
	Quality  Answer[grade.Quality]   // quality grade
	Fat      Answer[grade.Thickness] // adjusted fat, 0 to 3 in
	Ribeye   Answer[grade.Area]      // over 0 to 25 sq in
	KPH      Answer[grade.Share]     // 0 to 10 percent
	Weight   Answer[grade.Weight]    // hot carcass weight, over 0 to 1,800 lb
	Yield    Answer[grade.Yield]     // yield grade with its decimals, -5.5 to 18.84

	// Preliminary is the preliminary yield grade of the adjusted fat, 2 to 9.5. Where
	// it is given and Fat is not, the fat is that of the preliminary grade.
	Preliminary Answer[grade.QuickYield]
}

// FactsOf returns the facts of a graded carcass, every one of them given but a
// lean maturity that nobody looked at.
func FactsOf(a grade.Assessment) (Facts, error) {
	m, err := a.Carcass.Adjusted()
	if err != nil {
		return Facts{}, err
	}
	f := Facts{
		Skeletal:    Give(a.Carcass.Maturity.Skeletal),
		Maturity:    Give(a.Maturity),
		Marbling:    Give(a.Carcass.Marbling),
		Quality:     Give(a.Quality),
		Fat:         Give(m.Fat),
		Preliminary: Give(m.Fat.Preliminary()),
		Ribeye:      Give(m.Ribeye),
		KPH:         Give(m.KPH),
		Weight:      Give(m.Weight),
		Yield:       Give(a.Yield),
	}
	if lean := a.Carcass.Maturity.Lean; lean != 0 {
		f.Lean = Give(lean)
	}
	return f, nil
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

// withFat puts in the fat of the preliminary grade, to the nearest 0.0001 in, where
// the facts have only this. A preliminary grade that no fat has gives a
// [*FieldError].
func (f Facts) withFat() (Facts, error) {
	if f.Fat.Given || !f.Preliminary.Given {
		return f, nil
	}
	t, err := grade.FatForPreliminary(f.Preliminary.Value)
	if err != nil {
		return f, err
	}
	f.Fat = Give(t)
	return f, nil
}

// measures returns the four measures, those that were not given as zero.
func (f Facts) measures() grade.Measures {
	return grade.Measures{Fat: f.Fat.Value, Ribeye: f.Ribeye.Value, KPH: f.KPH.Value, Weight: f.Weight.Value}
}

// measured reports whether all four measures were given.
func (f Facts) measured() bool {
	return f.Fat.Given && f.Ribeye.Given && f.KPH.Given && f.Weight.Given
}
