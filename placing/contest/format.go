package contest

import (
	"database/sql/driver"
	"strconv"

	"example.com/ribface/internal/text"
	"example.com/ribface/maturity/cite"
)

// Kind says what a component of a contest is made of. The zero Kind is not set.
type Kind uint8

// The kinds.
const (
	KindPlacing Kind = 1 + iota // placing classes, 50 points each
	KindQuality                 // estimates of quality grades
	KindYield                   // estimates of yield grades
	KindHand                    // scores that people give: reasons, questions, examination, identification
)

var kinds = text.Enum{Kind: "kind of component", Names: []string{"", "placing", "quality", "yield", "by hand"}}

// IsValid reports whether k is one of the named kinds.
func (k Kind) IsValid() bool { return kinds.IsValid(int(k)) }

// String gives the name; "unset" for zero.
func (k Kind) String() string { return kinds.String(int(k)) }

// ParseKind reads the name of a kind, as [Kind.String] writes it.
func ParseKind(s string) (Kind, error) {
	v, err := kinds.Parse(s)
	return Kind(v), err
}

// AppendText appends the name; the zero value is empty text.
func (k Kind) AppendText(b []byte) ([]byte, error) { return kinds.Append(b, int(k)) }

// MarshalText gives the name; the zero value is empty text.
func (k Kind) MarshalText() ([]byte, error) { return k.AppendText(nil) }

// UnmarshalText reads a name. On error the receiver is left as it was.
func (k *Kind) UnmarshalText(b []byte) error { return text.Unmarshal(k, b, ParseKind) }

// Value gives the name for a database.
func (k Kind) Value() (driver.Value, error) { return text.Value(k) }

// Scan reads a name from a database column that holds text.
func (k *Kind) Scan(src any) error { return text.Scan(k, kinds.Kind, src) }

// Component is a part of a contest that is totaled, and may be ranked and used to
// break ties, on its own.
type Component struct {
	Name string
	Kind Kind
	// Classes are the classes whose cards count. Where there are none, a component
	// given by hand has one score without a class, and any other has the class of
	// its own name.
	Classes []string
	Value   Points // the most that can be scored in all its classes together
}

// classes returns the classes whose cards count.
func (c *Component) classes() []string {
	switch {
	case len(c.Classes) > 0:
		return c.Classes
	case c.Kind == KindHand:
		return []string{""}
	default:
		return []string{c.Name}
	}
}

// TieBreak is one step in breaking ties: the greater sum over the components goes
// first.
type TieBreak struct {
	Components []string
	// AllMembers makes a step for teams add up all members; else only the
	// counting ones. It means nothing in a step for individuals.
	AllMembers bool
}

// ShortTeam says what becomes of a short team. The zero ShortTeam is ScoredShort.
//
// A team is short when it has fewer members than count ([Format].Counting). Where
// the format names no counting number, all members count, and a team is short when
// it has fewer than [Format].TeamMembers; where that is 0 too, no team is short.
type ShortTeam uint8

// The rules for short teams.
const (
	ScoredShort ShortTeam = iota // ranked; a missing member scores 0 (published: nc-ffa-2015)
	Barred                       // listed after the ranked teams and not ranked (published: ok-ffa-livestock); see [Tally.Standings] for the order
)

var shortTeams = text.Enum{Kind: "rule for short teams", Names: []string{"", "barred"}, Zero: "missing members score 0"}

// IsValid reports whether s is one of the two rules.
func (s ShortTeam) IsValid() bool { return s <= Barred }

// String gives the rule in words.
func (s ShortTeam) String() string { return shortTeams.String(int(s)) }

// ParseShortTeam reads a rule, as [ShortTeam.String] writes it.
func ParseShortTeam(s string) (ShortTeam, error) {
	v, err := shortTeams.Parse(s)
	return ShortTeam(v), err
}

// AppendText appends the rule in words.
func (s ShortTeam) AppendText(b []byte) ([]byte, error) {
	if s == ScoredShort {
		return append(b, shortTeams.Zero...), nil
	}
	return shortTeams.Append(b, int(s))
}

// MarshalText gives the rule in words.
func (s ShortTeam) MarshalText() ([]byte, error) { return s.AppendText(nil) }

// UnmarshalText reads what [ParseShortTeam] reads. On error the receiver is left as
// it was.
func (s *ShortTeam) UnmarshalText(b []byte) error { return text.UnmarshalSet(s, b, ParseShortTeam) }

// Value gives the rule for a database.
func (s ShortTeam) Value() (driver.Value, error) { return text.Value(s) }

// Scan reads a rule from a database column that holds text.
func (s *ShortTeam) Scan(src any) error { return text.Scan(s, shortTeams.Kind, src) }

// Format is the form of a contest: what is scored, who counts and how ties are
// broken. The zero Format has no components and is refused.
type Format struct {
	Name        string
	Components  []Component
	TeamMembers int        // the most members of a team; 0 for any number
	Counting    int        // how many of them count, the best; 0 for all
	Short       ShortTeam  // what becomes of a short team
	Ties        []TieBreak // steps for individuals, in order
	TeamTies    []TieBreak // steps for teams, in order
	Cite        cite.Citation
}

// Total returns the most that one member can score.
func (f Format) Total() Points {
	var t Points
	for _, c := range f.Components {
		t += c.Value
	}
	return t
}

// TeamTotal returns the most that a team can score: the total of the counting
// members; 0 where any number counts.
func (f Format) TeamTotal() Points {
	if f.Counting > 0 {
		return f.Total() * Points(f.Counting)
	}
	return f.Total() * Points(f.TeamMembers)
}

// maxComponents bounds the components of a format and the classes of one.
const maxComponents = 200

// Check returns a [*FieldError] when the format cannot be used: no components, a
// component without name, kind or value or with the name of another, a class twice
// in one kind, a tie-break by an unknown component, more members counting than
// there are.
func (f Format) Check() error {
	if n := len(f.Components); n == 0 || n > maxComponents {
		return &FieldError{Field: "components", Value: strconv.Itoa(n), Allowed: "1 to 200", Err: ErrRange}
	}
	type counted struct {
		kind        Kind
		name, class string
	}
	seen, names := map[counted]bool{}, map[string]bool{}
	for _, c := range f.Components {
		field := "component " + strconv.Quote(c.Name)
		if err := checkName("component", c.Name, true); err != nil {
			return err
		}
		if names[c.Name] {
			return &FieldError{Field: field, Allowed: "each name once", Err: ErrRepeated}
		}
		names[c.Name] = true
		if err := kinds.Check(field+": kind", int(c.Kind)); err != nil {
			return err
		}
		if err := checkValue(field+": value", c.Value); err != nil {
			return err
		}
		if len(c.Classes) > maxComponents {
			return &FieldError{Field: field + ": classes", Value: strconv.Itoa(len(c.Classes)), Allowed: "at most 200", Err: ErrRange}
		}
		for _, class := range c.classes() {
			if err := checkName(field+": class", class, c.Kind != KindHand); err != nil {
				return err
			}
			k := counted{c.Kind, "", class}
			if c.Kind == KindHand {
				k.name = c.Name
			}
			if seen[k] {
				return &FieldError{Field: field + ": class", Value: class, Allowed: "each class in one component of a kind", Err: ErrRepeated}
			}
			seen[k] = true
		}
	}
	switch {
	case f.TeamMembers < 0:
		return &FieldError{Field: "team members", Value: strconv.Itoa(f.TeamMembers), Allowed: "0 or more", Err: ErrRange}
	case f.Counting < 0 || f.TeamMembers > 0 && f.Counting > f.TeamMembers:
		return &FieldError{Field: "counting members", Value: strconv.Itoa(f.Counting), Allowed: "0 to the members of a team", Err: ErrRange}
	case !f.Short.IsValid():
		return shortTeams.Check("rule for short teams", int(f.Short))
	}
	if err := f.checkTies("tie-break", f.Ties); err != nil {
		return err
	}
	return f.checkTies("tie-break for teams", f.TeamTies)
}

func (f *Format) checkTies(field string, ties []TieBreak) error {
	for i, tie := range ties {
		if _, err := f.find(field+" "+strconv.Itoa(i+1), tie.Components); err != nil {
			return err
		}
	}
	return nil
}

// find returns the places of components by name.
func (f *Format) find(field string, names []string) ([]int, error) {
	if len(names) == 0 {
		return nil, &FieldError{Field: field, Allowed: "one component or more", Err: ErrMissing}
	}
	at := make([]int, len(names))
	seen := map[int]bool{}
	for i, n := range names {
		at[i] = -1
		for j := range f.Components {
			if f.Components[j].Name == n {
				at[i] = j
			}
		}
		if at[i] < 0 {
			return nil, &FieldError{Field: field, Value: n, Allowed: "the name of a component", Err: ErrUnknown}
		}
		if seen[at[i]] {
			return nil, &FieldError{Field: field, Value: n, Allowed: "each component once", Err: ErrRepeated}
		}
		seen[at[i]] = true
	}
	return at, nil
}

// PublishedFormats returns the contests whose components and values could all be
// read in their sources, each with its citation. Sources that are only partly
// legible are silent on the rest of their tie-breaks.
func PublishedFormats() []Format {
	numbered := func(name string, n int) []string {
		out := make([]string, n)
		for i := range out {
			out[i] = name + " " + strconv.Itoa(i+1)
		}
		return out
	}
	from := func(ids string) cite.Citation { return cite.Citation{Standing: cite.Published, IDs: ids} }
	return []Format{
		{
			// 800 each, 2,400 a team; tie-breaks after the second not legible.
			Name: "California 2012",
			Components: []Component{
				{"beef carcasses", KindPlacing, nil, 50 * Point},
				{"pork carcasses", KindPlacing, nil, 50 * Point},
				{"wholesale cuts", KindPlacing, nil, 50 * Point},
				{"retail cuts", KindPlacing, numbered("retail cuts", 2), 100 * Point},
				{"value pricing beef", KindHand, nil, 50 * Point},
				{"keep-cull", KindHand, nil, 50 * Point},
				{"questions", KindHand, numbered("questions", 2), 100 * Point},
				{"retail identification", KindHand, nil, 180 * Point},
				{"quality grading", KindQuality, nil, 40 * Point},
				{"yield grading", KindYield, nil, 40 * Point},
				{"examination", KindHand, nil, 90 * Point},
			},
			TeamMembers: 4, Counting: 3,
			Ties:     []TieBreak{{Components: []string{"retail identification"}}, {Components: []string{"questions"}}},
			TeamTies: []TieBreak{{Components: []string{"retail identification"}}, {Components: []string{"questions"}}},
			Cite:     from("cata-2012"),
		},
		{
			// The total of 750 is derived. Grading is published as one number
			// for quality and yield together; the halves are derived. Who counts of
			// a team of 3 or 4 could not be read; all do here.
			Name: "Texas about 2004",
			Components: []Component{
				{"examination", KindHand, nil, 40 * Point},
				{"identification", KindHand, nil, 240 * Point},
				{"quality grading", KindQuality, numbered("grading", 2), 60 * Point},
				{"yield grading", KindYield, numbered("grading", 2), 60 * Point},
				{"placings", KindPlacing, numbered("placing", 6), 300 * Point},
				{"questions", KindHand, nil, 50 * Point},
			},
			TeamMembers: 4,
			Cite:        from("tx-ffa-slides"),
		},
		{
			Name: "Kansas State horse class",
			Components: []Component{
				{"placings", KindPlacing, numbered("class", 8), 400 * Point},
				{"reasons", KindHand, numbered("class", 4), 200 * Point},
			},
			Cite: from("ksu-horse-judging"),
		},
	}
}
