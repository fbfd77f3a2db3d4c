package contest

import (
	"slices"
	"strconv"

	"example.com/ribface/internal/fault"
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

var kinds = text.Enum[Kind]{Kind: "kind of component", Names: []string{"", "placing", "quality", "yield", "by hand"}}

// String gives the name; "unset" for zero.
func (k Kind) String() string { return kinds.String(k) }

// MarshalText gives the name; the zero value is empty text.
func (k Kind) MarshalText() ([]byte, error) { return kinds.Marshal(k) }

// UnmarshalText reads what [Kind.String] writes, in any case; empty text gives the
// zero value. On error the receiver is left as it was.
func (k *Kind) UnmarshalText(b []byte) error { return kinds.Unmarshal(k, b) }

// Component is a part of a contest that is totaled, and may be ranked and used to
// break ties, on its own.
type Component struct {
	Name string `json:"name"`
	Kind Kind   `json:"kind"`
	// Classes are the classes whose cards count. Where there are none, a component
	// given by hand has one score without a class, and any other has the class of
	// its own name.
	Classes []string `json:"classes,omitzero"`
	Value   Points   `json:"value"` // the most that can be scored in all its classes together
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
	Components []string `json:"components"`
	// AllMembers makes a step for teams add up all members; else only the
	// counting ones. It means nothing in a step for individuals.
	AllMembers bool `json:"all_members,omitzero"`
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

var shortTeams = text.Enum[ShortTeam]{Kind: "rule for short teams", Names: []string{"", "barred"}, Zero: "missing members score 0"}

// String gives the rule in words.
func (s ShortTeam) String() string { return shortTeams.String(s) }

// MarshalText gives the rule in words; the zero value is empty text.
func (s ShortTeam) MarshalText() ([]byte, error) { return shortTeams.Marshal(s) }

// UnmarshalText reads what [ShortTeam.String] writes, in any case; empty text gives the
// zero value. On error the receiver is left as it was.
func (s *ShortTeam) UnmarshalText(b []byte) error { return shortTeams.Unmarshal(s, b) }

// Format is the form of a contest: what is scored, who counts and how ties are
// broken. The zero Format has no components and is refused.
type Format struct {
	Name        string        `json:"name,omitzero"`
	Components  []Component   `json:"components"`
	TeamMembers int           `json:"team_members,omitzero"` // the most members of a team; 0 for any number
	Counting    int           `json:"counting,omitzero"`     // how many of them count, the best; 0 for all
	Short       ShortTeam     `json:"short,omitzero"`        // what becomes of a short team
	Ties        []TieBreak    `json:"ties,omitzero"`         // steps for individuals, in order
	TeamTies    []TieBreak    `json:"team_ties,omitzero"`    // steps for teams, in order
	Cite        cite.Citation `json:"cite,omitzero"`
}

// maxComponents bounds the components of a format and the classes of one.
const maxComponents = 200

// Check returns an error that tells of everything for which the format cannot be used,
// with paths as "components[2].value"; see [placing.Problems]: no components, a
// component without name, kind or value or with the name of another, a class twice in
// one kind, a tie-break by an unknown component, more members counting than there are.
func (f Format) Check() error {
	var all []error
	add := func(path, name string, err error) { all = append(all, fault.At(path, name, err)) }
	if n := len(f.Components); n == 0 || n > maxComponents {
		return &fault.FieldError{Path: "components", Field: "components", Value: strconv.Itoa(n), Allowed: "1 to 200", Err: fault.ErrRange}
	}
	type counted struct {
		kind        Kind
		name, class string
	}
	seen, names := map[counted]bool{}, map[string]bool{}
	for i, c := range f.Components {
		path, field := nth("components", i), "component "+strconv.Quote(c.Name)
		err := checkName("component", c.Name, true)
		switch {
		case err != nil:
			add(path+".name", "", err)
			field = "component " + strconv.Itoa(i+1)
		case names[c.Name]:
			err = &fault.FieldError{Allowed: "each name once", Err: fault.ErrRepeated}
			add(path+".name", field, err)
		}
		names[c.Name] = true
		add(path+".kind", field, kinds.Check("kind", c.Kind))
		add(path, field, checkValue("value", "value", c.Value))
		if len(c.Classes) > maxComponents {
			add(path+".classes", field, &fault.FieldError{Field: "classes", Value: strconv.Itoa(len(c.Classes)), Allowed: "at most 200", Err: fault.ErrRange})
			continue
		}
		if err != nil && len(c.Classes) == 0 {
			continue // the class is that of the name
		}
		for j, class := range c.classes() {
			k := counted{c.Kind, "", class}
			if c.Kind == KindHand {
				k.name = c.Name
			}
			err := checkName("class", class, c.Kind != KindHand)
			if err == nil && seen[k] {
				err = &fault.FieldError{Field: "class", Value: class, Allowed: "each class in one component of a kind", Err: fault.ErrRepeated}
			}
			add(nth(path+".classes", j), field, err)
			seen[k] = true
		}
	}
	if f.TeamMembers < 0 {
		add("team_members", "", &fault.FieldError{Field: "team members", Value: strconv.Itoa(f.TeamMembers), Allowed: "0 or more", Err: fault.ErrRange})
	}
	if f.Counting < 0 || f.TeamMembers > 0 && f.Counting > f.TeamMembers {
		add("counting", "", &fault.FieldError{Field: "counting members", Value: strconv.Itoa(f.Counting), Allowed: "0 to the members of a team", Err: fault.ErrRange})
	}
	if f.Short != ScoredShort {
		add("short", "", shortTeams.Check("rule for short teams", f.Short))
	}
	all = append(all, f.checkTies("ties", "tie-break", f.Ties), f.checkTies("team_ties", "tie-break for teams", f.TeamTies))
	return fault.Join(all...)
}

func (f *Format) checkTies(path, field string, ties []TieBreak) error {
	var all []error
	for i, tie := range ties {
		_, err := f.find(tie.Components)
		all = append(all, fault.At(nth(path, i)+".components", field+" "+strconv.Itoa(i+1), err))
	}
	return fault.Join(all...)
}

// find returns the places of components by name.
func (f *Format) find(names []string) ([]int, error) {
	if len(names) == 0 {
		return nil, &fault.FieldError{Allowed: "one component or more", Err: fault.ErrMissing}
	}
	var all []error
	places := make([]int, len(names))
	seen := map[int]bool{}
	for i, n := range names {
		p := slices.IndexFunc(f.Components, func(c Component) bool { return c.Name == n })
		switch {
		case p < 0:
			all = append(all, &fault.FieldError{Path: nth("", i), Value: n, Allowed: "the name of a component", Err: fault.ErrUnknown})
		case seen[p]:
			all = append(all, &fault.FieldError{Path: nth("", i), Value: n, Allowed: "each component once", Err: fault.ErrRepeated})
		}
		places[i], seen[p] = p, true
	}
	if err := fault.Join(all...); err != nil {
		return nil, err
	}
	return places, nil
}
