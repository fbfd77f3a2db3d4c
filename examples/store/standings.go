package main

import (
	"example.com/ribface/placing"
	"example.com/ribface/placing/contest"
)

// standingsBody is the answer to a request for standings.
type standingsBody struct {
	Classes []string       `json:"classes"`
	Of      contest.Points `json:"of"`
	Members []memberLine   `json:"members"`
	Teams   []teamLine     `json:"teams"`
}

// memberLine is one member. Members who tie share a rank, and the next is left
// out: 1, 2, 2, 4.
type memberLine struct {
	Rank     int            `json:"rank"`
	Member   string         `json:"member"`
	Team     string         `json:"team,omitempty"`
	Division string         `json:"division,omitempty"`
	Points   contest.Points `json:"points"`
	Missing  []string       `json:"missing,omitempty"` // what was not handed in
}

type teamLine struct {
	Rank   int            `json:"rank"`
	Team   string         `json:"team"`
	Points contest.Points `json:"points"`
}

// standings ranks the members of a division, or all of them, over every class,
// and their teams by all members.
func standings(e Everything, rules placing.CardRules, division string) (standingsBody, error) {
	body := standingsBody{Classes: []string{}, Members: []memberLine{}, Teams: []teamLine{}}
	if len(e.Classes) == 0 {
		return body, nil
	}
	for _, c := range e.Classes {
		body.Classes = append(body.Classes, c.Class)
	}
	const component = "placing"
	format := contest.Format{Name: "contest", Components: []contest.Component{{
		Name: component, Kind: contest.KindPlacing, Classes: body.Classes,
		Value: placing.FullScore * contest.Point * contest.Points(len(e.Classes)),
	}}}
	built, err := contest.NewContest("", format, contest.Rules{Placing: rules}, e.Classes, nil)
	if err != nil {
		return body, err
	}
	tally := built.Tally()
	for _, m := range e.Members {
		if err := tally.Enter(m); err != nil {
			return body, err
		}
	}
	for _, c := range e.Cards {
		item, err := built.Placing(c)
		if err != nil {
			return body, err
		}
		if err := tally.Add(item); err != nil {
			return body, err
		}
	}
	s, err := tally.Standings(contest.View{Division: division})
	if err != nil {
		return body, err
	}
	body.Of = s.Of
	for _, l := range s.Members {
		body.Members = append(body.Members, memberLine{l.Rank, l.Member.ID, l.Member.Team, l.Member.Division, l.Total, l.Missing})
	}
	for _, l := range s.Teams {
		body.Teams = append(body.Teams, teamLine{l.Rank, l.Team, l.Total})
	}
	return body, nil
}
