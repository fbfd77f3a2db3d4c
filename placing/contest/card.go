package contest

import (
	"example.com/ribface/grade"
	"example.com/ribface/internal/fault"
	"example.com/ribface/maturity"
	"example.com/ribface/placing"
)

// Member is a person who hands in cards. It is comparable. The zero Member is no
// one.
type Member struct {
	ID       string `json:"id"`                // name or number, different for every member of a contest
	Team     string `json:"team,omitzero"`     // empty for an individual
	Division string `json:"division,omitzero"` // age division, as "junior"; empty where there is none
}

// Facts are what can be said of one carcass on a grading card (the rows of a
// published card, wa-ffa-card; bone and lean apart and the preliminary grade are
// for practice: common practice, no source). A fact whose value is zero was not
// given. Facts are comparable; the zero Facts say nothing.
type Facts struct {
	Skeletal maturity.Score  `json:"skeletal,omitzero"` // skeletal maturity, from the bone
	Lean     maturity.Score  `json:"lean,omitzero"`     // lean maturity, from color and texture
	Maturity maturity.Score  `json:"maturity,omitzero"` // overall maturity
	Marbling grade.Marbling  `json:"marbling,omitzero"` // in the ribeye
	Quality  grade.Quality   `json:"quality,omitzero"`  // quality grade
	Fat      grade.Thickness `json:"fat,omitzero"`      // adjusted fat
	Ribeye   grade.Area      `json:"ribeye,omitzero"`
	KPH      grade.Share     `json:"kph,omitzero"`
	Weight   grade.Weight    `json:"weight,omitzero"` // hot carcass weight
	Yield    grade.Yield     `json:"yield,omitzero"`  // yield grade with its decimals, -5.12 to 18.52

	// Preliminary is the preliminary yield grade of the adjusted fat, 2 to 9.5. Where
	// it is given and Fat is not, the fat is that of the preliminary grade.
	Preliminary grade.ShortcutYield `json:"preliminary,omitzero"`

	Marks Marks `json:"marks,omitzero"` // why facts were not given
}

// Marks say, fact by fact, what stands on a card where a value should: nothing
// marked, more than one thing, or what nobody can read. A mark together with a value
// of the same fact is refused. The zero Marks say nothing: what was not given was
// not asked for, or not entered.
type Marks struct {
	Skeletal    placing.Mark `json:"skeletal,omitzero"`
	Lean        placing.Mark `json:"lean,omitzero"`
	Maturity    placing.Mark `json:"maturity,omitzero"`
	Marbling    placing.Mark `json:"marbling,omitzero"`
	Quality     placing.Mark `json:"quality,omitzero"`
	Fat         placing.Mark `json:"fat,omitzero"`
	Ribeye      placing.Mark `json:"ribeye,omitzero"`
	KPH         placing.Mark `json:"kph,omitzero"`
	Weight      placing.Mark `json:"weight,omitzero"`
	Yield       placing.Mark `json:"yield,omitzero"`
	Preliminary placing.Mark `json:"preliminary,omitzero"`
}

// FactsOf returns the facts of a graded carcass, every one of them given but a
// lean maturity that nobody looked at.
func FactsOf(a grade.Assessment) (Facts, error) {
	m, err := a.Carcass.Adjusted()
	if err != nil {
		return Facts{}, err
	}
	return Facts{
		Skeletal:    a.Carcass.Maturity.Skeletal,
		Lean:        a.Carcass.Maturity.Lean,
		Maturity:    a.Maturity,
		Marbling:    a.Carcass.Marbling,
		Quality:     a.Quality,
		Fat:         m.Fat,
		Preliminary: m.Fat.Preliminary(),
		Ribeye:      m.Ribeye,
		KPH:         m.KPH,
		Weight:      m.Weight,
		Yield:       a.Yield,
	}, nil
}

// PlacingCard is a member's card for one placing class (the fields of a published
// card: ext-maryland-contests).
type PlacingCard struct {
	Contest string       `json:"contest,omitzero"` // empty where there is only one
	Class   string       `json:"class"`
	Member  Member       `json:"member"`
	Card    placing.Card `json:"card"`
}

// Estimate is a member's card for one exhibit of a grading class.
type Estimate struct {
	Contest string `json:"contest,omitzero"`
	Class   string `json:"class"`
	Exhibit int    `json:"exhibit"` // 1 to 60
	Member  Member `json:"member"`
	Facts   Facts  `json:"facts"`
}

// HandScore is a score that people gave: for a set of reasons, an examination, a
// set of questions or identification.
type HandScore struct {
	Contest   string       `json:"contest,omitzero"`
	Component string       `json:"component"`      // the component of the format that it counts for, as "reasons"
	Class     string       `json:"class,omitzero"` // the class it is about; empty where the component has none
	Member    Member       `json:"member"`
	Score     Points       `json:"score,omitzero"` // not set where there is a mark, or nothing
	Mark      placing.Mark `json:"mark,omitzero"`  // why there is no score
}

// OfficialPlacing is the official placing of one class with its cuts.
type OfficialPlacing struct {
	Contest string        `json:"contest,omitzero"`
	Class   string        `json:"class"`
	Order   placing.Order `json:"order"`
	Cuts    placing.Cuts  `json:"cuts"`
}

// OfficialFacts are the official facts of one exhibit of a grading class.
type OfficialFacts struct {
	Contest string `json:"contest,omitzero"`
	Class   string `json:"class"`
	Exhibit int    `json:"exhibit"` // 1 to 60
	Facts   Facts  `json:"facts"`
}

// maxExhibit is the greatest number of an exhibit in a grading class.
const maxExhibit = 60

// withFat puts in the fat of the preliminary grade, to the nearest 0.0001 in, where
// the facts have only this. A preliminary grade that no fat has gives a
// [*placing.FieldError].
func (f Facts) withFat() (Facts, error) {
	if f.Fat.IsSet() || !f.Preliminary.IsSet() {
		return f, nil
	}
	t, err := grade.FatForPreliminary(f.Preliminary)
	if err != nil {
		return f, fault.At("preliminary", "", err)
	}
	f.Fat = t
	return f, nil
}

// measures returns the four measures.
func (f Facts) measures() grade.Measures {
	return grade.Measures{Fat: f.Fat, Ribeye: f.Ribeye, KPH: f.KPH, Weight: f.Weight}
}

// measured reports whether all four measures were given.
func (f Facts) measured() bool {
	return f.Fat.IsSet() && f.Ribeye.IsSet() && f.KPH.IsSet() && f.Weight.IsSet()
}
