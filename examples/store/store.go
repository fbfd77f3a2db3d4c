package main

import (
	"context"
	"database/sql"
	"errors"
	"fmt"
	"strconv"
	"time"

	"example.com/ribface/placing"
	_ "modernc.org/sqlite" // the driver "sqlite"
)

// Store keeps keys, members and cards in a database file.
type Store struct{ write, read *sql.DB }

// Close closes the file.
func (s *Store) Close() error {
	var read error
	if s.read != nil {
		read = s.read.Close()
	}
	return errors.Join(read, s.write.Close())
}

// Class is a class with its key.
type Class struct {
	Official placing.Official `json:"official"`
	State    string           `json:"state"` // stateOpen or stateClosed
}

// A class is open until an official closes it. A closed class takes no cards,
// and the public sees what it scored.
const (
	stateOpen   = "open"
	stateClosed = "closed"
)

// Member is a person who hands in cards. Team and division may be empty.
type Member struct {
	Team     string `json:"team"`
	Division string `json:"division"`
}

// score is what a card scores: the published rules for marks, and no floor.
func score(o placing.Official, c placing.Card) (int, error) { return placing.CardRules{}.Score(o, c) }

// change is a transaction with the name of who makes it.
type change struct {
	*sql.Tx
	ctx context.Context
	by  string
}

// change runs f in a transaction. All that f does is kept, or nothing.
func (s *Store) change(ctx context.Context, by string, f func(change) error) error {
	tx, err := s.write.BeginTx(ctx, nil)
	if err != nil {
		return err
	}
	defer func() { _ = tx.Rollback() }() // does nothing after Commit
	if err := f(change{tx, ctx, by}); err != nil {
		return err
	}
	return tx.Commit()
}

func (c change) exec(query string, args ...any) error {
	_, err := c.ExecContext(c.ctx, query, args...)
	return err
}

// log adds a line to the log.
func (c change) log(what, class, member, old, new string) error {
	return c.exec(`INSERT INTO log (at, who, what, class, member, old, new) VALUES (?, ?, ?, ?, ?, ?, ?)`,
		time.Now().UTC().Format("2006-01-02T15:04:05.000Z"), c.by, what, class, member, old, new)
}

// querier is a database or a transaction.
type querier interface {
	QueryContext(ctx context.Context, query string, args ...any) (*sql.Rows, error)
	QueryRowContext(ctx context.Context, query string, args ...any) *sql.Row
}

// list returns the rows of a query; into says where the columns of one go.
func list[T any](ctx context.Context, q querier, into func(*T) []any, query string, args ...any) ([]T, error) {
	rows, err := q.QueryContext(ctx, query, args...)
	if err != nil {
		return nil, err
	}
	defer func() { _ = rows.Close() }() // a second close does nothing
	all := []T{}
	for rows.Next() {
		var v T
		if err := rows.Scan(into(&v)...); err != nil {
			return nil, err
		}
		all = append(all, v)
	}
	return all, rows.Err()
}

// found turns the error of a row that is not there into one that names it.
func found(err error, field, value string) error {
	if errors.Is(err, sql.ErrNoRows) {
		return &placing.FieldError{Field: field, Value: value, Allowed: "one that was entered", Err: errNotFound}
	}
	return err
}

// Class returns a class with its key.
func (s *Store) Class(ctx context.Context, class string) (Class, error) {
	return classIn(ctx, s.read, class)
}

func classIn(ctx context.Context, q querier, class string) (c Class, err error) {
	err = q.QueryRowContext(ctx, `SELECT official, state FROM class WHERE name = ?`, class).Scan(&c.Official, &c.State)
	return c, found(err, "class", class)
}

// SetOfficial enters the key of a class, or changes it and scores the cards that
// are in anew. They must be of its size.
func (s *Store) SetOfficial(ctx context.Context, by, class string, o placing.Official) error {
	return s.change(ctx, by, func(c change) error {
		old, err := classIn(ctx, c, class)
		if err != nil && !errors.Is(err, errNotFound) || old.Official == o {
			return err
		}
		if err := c.exec(`INSERT INTO class (name, official) VALUES (?, ?) ON CONFLICT DO UPDATE SET official = excluded.official`, class, o); err != nil {
			return err
		}
		cards, err := list(ctx, c, scanCard, `SELECT DISTINCT placing, mark FROM card WHERE class = ?`, class)
		if err != nil {
			return err
		}
		for _, card := range cards {
			points, err := score(o, card.Card())
			if err != nil {
				return &placing.FieldError{Field: "official", Value: o.String(), Allowed: fmt.Sprintf("%d exhibits, as on the cards that are in", old.Official.Order().Len()), Err: placing.ErrRange}
			}
			if err := c.exec(`UPDATE card SET score = ? WHERE class = ? AND placing IS ? AND mark IS ?`, points, class, card.placing, card.mark); err != nil {
				return err
			}
		}
		return c.log("key", class, "", text(old.Official), text(o))
	})
}

// SetState opens or closes a class.
func (s *Store) SetState(ctx context.Context, by, class, state string) error {
	return s.change(ctx, by, func(c change) error {
		old, err := classIn(ctx, c, class)
		if err != nil || old.State == state {
			return err
		}
		if err := c.exec(`UPDATE class SET state = ? WHERE name = ?`, state, class); err != nil {
			return err
		}
		return c.log("state", class, "", old.State, state)
	})
}

// SetMember enters the team and the division of a member, or changes them. A
// member need not be entered to hand in cards.
func (s *Store) SetMember(ctx context.Context, by, name string, m Member) error {
	return s.change(ctx, by, func(c change) error {
		var old Member
		err := c.QueryRowContext(ctx, `SELECT team, division FROM member WHERE name = ?`, name).Scan(&old.Team, &old.Division)
		if err != nil && !errors.Is(err, sql.ErrNoRows) || err == nil && old == m {
			return err
		}
		if err := c.exec(`INSERT INTO member (name, team, division) VALUES (?, ?, ?)
			ON CONFLICT DO UPDATE SET team = excluded.team, division = excluded.division`, name, m.Team, m.Division); err != nil {
			return err
		}
		return c.log("member", "", name, strconv.Quote(old.Team)+" "+strconv.Quote(old.Division), strconv.Quote(m.Team)+" "+strconv.Quote(m.Division))
	})
}

// SetCard enters a member's card for an open class, or changes it. The card has
// a placing or a mark: one with neither is an error.
func (s *Store) SetCard(ctx context.Context, by, class, member string, card placing.Card) error {
	if card == (placing.Card{}) {
		return &placing.FieldError{Field: "card", Allowed: "a placing or a mark", Err: placing.ErrMissing}
	}
	return s.change(ctx, by, func(c change) error {
		of, err := classIn(ctx, c, class)
		if err != nil {
			return err
		}
		if of.State == stateClosed {
			return &placing.FieldError{Field: "class", Value: class, Allowed: "a class that is open; an official can open it again", Err: errClosed}
		}
		points, err := score(of.Official, card)
		if err != nil {
			return err
		}
		old, err := cardIn(ctx, c, class, member)
		if err != nil && !errors.Is(err, errNotFound) || old == card {
			return err
		}
		if err := c.exec(`INSERT INTO member (name) VALUES (?) ON CONFLICT DO NOTHING`, member); err != nil {
			return err
		}
		if err := c.exec(`INSERT INTO card (class, member, placing, mark, score) VALUES (?, ?, ?, ?, ?)
			ON CONFLICT DO UPDATE SET placing = excluded.placing, mark = excluded.mark, score = excluded.score`,
			class, member, null(card.Order), null(card.Mark), points); err != nil {
			return err
		}
		return c.log("card", class, member, cardText(old), cardText(card))
	})
}

// Card returns a member's card for a class.
func (s *Store) Card(ctx context.Context, class, member string) (placing.Card, error) {
	return cardIn(ctx, s.read, class, member)
}

func cardIn(ctx context.Context, q querier, class, member string) (placing.Card, error) {
	var row cardRow
	err := q.QueryRowContext(ctx, `SELECT placing, mark FROM card WHERE class = ? AND member = ?`, class, member).Scan(scanCard(&row)...)
	return row.Card(), found(err, "card", class+"/"+member)
}

// cardRow is a card in the database, where one of the two is NULL.
type cardRow struct {
	placing sql.Null[placing.Order]
	mark    sql.Null[placing.Mark]
}

func scanCard(r *cardRow) []any { return []any{&r.placing, &r.mark} }

func (r cardRow) Card() placing.Card { return placing.Card{Order: r.placing.V, Mark: r.mark.V} }

// null is NULL for the zero value.
func null[T comparable](v T) sql.Null[T] {
	var zero T
	return sql.Null[T]{V: v, Valid: v != zero}
}

// text is the canonical text of a value; empty where it is not set.
func text(v interface{ MarshalText() ([]byte, error) }) string {
	b, _ := v.MarshalText() // what goes into the log was checked before
	return string(b)
}

// cardText is the placing or the mark.
func cardText(c placing.Card) string { return text(c.Order) + text(c.Mark) }

// Line is one line of the log: who changed what, and when.
type Line struct {
	ID     int64  `json:"id"`
	At     string `json:"at"`
	Who    string `json:"who"`
	What   string `json:"what"` // key, state, card, member or token
	Class  string `json:"class,omitempty"`
	Member string `json:"member,omitempty"`
	Old    string `json:"old"` // empty for what is new
	New    string `json:"new"`
}

// Log returns up to count lines of the log in order, those after the given one.
func (s *Store) Log(ctx context.Context, after int64, count int) ([]Line, error) {
	return list(ctx, s.read, func(l *Line) []any {
		return []any{&l.ID, &l.At, &l.Who, &l.What, &l.Class, &l.Member, &l.Old, &l.New}
	}, `SELECT id, at, who, what, class, member, old, new FROM log WHERE id > ? ORDER BY id LIMIT ?`, after, count)
}

// Healthy returns an error where the file can not be written to.
func (s *Store) Healthy(ctx context.Context) error {
	tx, err := s.write.BeginTx(ctx, nil) // takes the lock of a writer
	if err != nil {
		return err
	}
	return tx.Rollback()
}
