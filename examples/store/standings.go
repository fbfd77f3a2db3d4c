package main

import (
	"context"
	"database/sql"
	"fmt"
	"slices"
	"strings"

	"example.com/ribface/placing"
)

// Standings rank members and teams by the points of some classes.
type Standings struct {
	Classes []string `json:"classes"` // those that count
	Of      int      `json:"of"`      // the most that a member could score
	Members []Rank   `json:"members"`
	Teams   []Rank   `json:"teams"` // by the points of all their members
}

// Rank is one line of the standings. Those who tie share a rank, and the next is
// left out: 1, 2, 2, 4. They stand in order of name, numbers first.
type Rank struct {
	Rank     int    `json:"rank"`
	Name     string `json:"name"`
	Team     string `json:"team,omitempty"`     // of a member
	Division string `json:"division,omitempty"` // of a member
	Points   int    `json:"points"`
	Missing  int    `json:"missing,omitempty"` // classes without a card of the member; each scored 0
}

// View says which standings are wanted.
type View struct {
	Open        bool   // open classes count too; else only closed ones
	Division    string // only this division; empty for all
	From, Count int    // which lines: From is 1 for the first
}

// Standings reads the standings. Where no class counts, no one is ranked.
func (s *Store) Standings(ctx context.Context, v View) (Standings, error) {
	out := Standings{Members: []Rank{}, Teams: []Rank{}}
	tx, err := s.read.BeginTx(ctx, nil) // one moment for all that is read
	if err != nil {
		return out, err
	}
	defer func() { _ = tx.Rollback() }() // nothing was written
	out.Classes, err = list(ctx, tx, scanName, `SELECT name FROM class WHERE ? OR state = 'closed' ORDER BY name`, v.Open)
	if err != nil || len(out.Classes) == 0 {
		return out, err
	}
	out.Of = placing.FullScore * len(out.Classes)
	// Of the two sums that the tables keep, take the one that was asked for.
	points, cards := "closed_points", "closed_cards"
	if v.Open {
		points, cards = "points", "cards"
	}
	members, teams := "", "WHERE division = '*'"
	var args []any
	if v.Division != "" {
		all, err := list(ctx, tx, scanName, `SELECT DISTINCT division FROM member WHERE division <> '' ORDER BY division`)
		if err != nil {
			return out, err
		}
		if !slices.Contains(all, v.Division) {
			return out, &placing.FieldError{Field: "division", Value: v.Division, Allowed: strings.Join(all, ", "), Err: placing.ErrUnknown}
		}
		members, teams, args = "WHERE division = ?", "WHERE division = ?", []any{v.Division}
	}
	missing := fmt.Sprintf("%d - %s", len(out.Classes), cards)
	if out.Members, err = ranks(ctx, tx, v, points, "name, team, division, "+missing, "member "+members, args); err != nil {
		return out, err
	}
	out.Teams, err = ranks(ctx, tx, v, points, "name, '', '', 0", "team "+teams, args)
	return out, err
}

func scanName(name *string) []any { return []any{name} }

// ranks reads the lines of a table that is kept in order by an index, and counts
// how many stand over the first of them.
func ranks(ctx context.Context, tx *sql.Tx, v View, points, columns, from string, args []any) ([]Rank, error) {
	lines, err := list(ctx, tx, func(r *Rank) []any {
		return []any{&r.Points, &r.Name, &r.Team, &r.Division, &r.Missing}
	}, fmt.Sprintf(`SELECT %s, %s FROM %s ORDER BY %[1]s DESC, digits, name LIMIT %[4]d OFFSET %[5]d`, points, columns, from, v.Count, v.From-1), args...)
	if err != nil || len(lines) == 0 {
		return lines, err
	}
	over := fmt.Sprintf(`SELECT count(*) + 1 FROM (SELECT %s AS p FROM %s) WHERE p > %d`, points, from, lines[0].Points)
	if err := tx.QueryRowContext(ctx, over, args...).Scan(&lines[0].Rank); err != nil {
		return nil, err
	}
	for i := 1; i < len(lines); i++ {
		if lines[i].Rank = v.From + i; lines[i].Points == lines[i-1].Points {
			lines[i].Rank = lines[i-1].Rank
		}
	}
	return lines, nil
}
