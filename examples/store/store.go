package main

import (
	"context"
	"database/sql"
	"errors"
	"fmt"
	"net/url"

	"example.com/ribface/placing"
	"example.com/ribface/placing/contest"
	_ "modernc.org/sqlite" // the driver "sqlite"
)

// schema makes the tables. The library's values are kept as text in their own
// spelling, so that a person who opens the file can read them.
const schema = `
CREATE TABLE IF NOT EXISTS class (
	name     TEXT NOT NULL PRIMARY KEY,
	official TEXT NOT NULL
) STRICT;
CREATE TABLE IF NOT EXISTS member (
	name     TEXT NOT NULL PRIMARY KEY,
	team     TEXT NOT NULL,
	division TEXT NOT NULL
) STRICT;
CREATE TABLE IF NOT EXISTS card (
	class   TEXT NOT NULL REFERENCES class (name),
	member  TEXT NOT NULL,
	placing TEXT,
	mark    TEXT,
	PRIMARY KEY (class, member),
	CHECK ((placing IS NULL) <> (mark IS NULL))
) STRICT;`

// Store keeps classes and cards in a database file.
type Store struct{ db *sql.DB }

// Open opens the file, making it where there is none.
func Open(ctx context.Context, path string) (*Store, error) {
	dsn := "file:" + (&url.URL{Path: path}).EscapedPath() + "?_pragma=foreign_keys(1)&_pragma=busy_timeout(5000)&_pragma=journal_mode(WAL)&_pragma=synchronous(FULL)&_txlock=immediate"
	db, err := sql.Open("sqlite", dsn)
	if err != nil {
		return nil, err
	}
	// One connection: writers queue here and never find the file locked.
	db.SetMaxOpenConns(1)
	if _, err := db.ExecContext(ctx, schema); err != nil {
		return nil, errors.Join(fmt.Errorf("making the tables: %w", err), db.Close())
	}
	return &Store{db}, nil
}

// Close closes the file.
func (s *Store) Close() error { return s.db.Close() }

// errNotFound marks a class or card that nobody has entered.
var errNotFound = errors.New("not found")

// SetOfficial enters the official placing of a class, or changes it. Cards that
// are in already must be of its size.
func (s *Store) SetOfficial(ctx context.Context, class string, o placing.Official) error {
	tx, err := s.db.BeginTx(ctx, nil)
	if err != nil {
		return err
	}
	defer func() { _ = tx.Rollback() }() // does nothing after Commit
	rows, err := tx.QueryContext(ctx, `SELECT DISTINCT placing FROM card WHERE class = ? AND placing IS NOT NULL`, class)
	if err != nil {
		return err
	}
	defer func() { _ = rows.Close() }() // a second close does nothing
	for rows.Next() {
		var card placing.Order
		if err := rows.Scan(&card); err != nil {
			return err
		}
		if _, err := o.Score(card); err != nil {
			return &placing.FieldError{Field: "official", Value: o.String(), Allowed: fmt.Sprintf("%d exhibits, as on the cards that are in", card.Len()), Err: placing.ErrRange}
		}
	}
	if err := rows.Err(); err != nil {
		return err
	}
	if _, err := tx.ExecContext(ctx, `INSERT INTO class (name, official) VALUES (?, ?) ON CONFLICT (name) DO UPDATE SET official = excluded.official`, class, o); err != nil {
		return err
	}
	return tx.Commit()
}

// Official returns the official placing of a class.
func (s *Store) Official(ctx context.Context, class string) (placing.Official, error) {
	var o placing.Official
	err := s.db.QueryRowContext(ctx, `SELECT official FROM class WHERE name = ?`, class).Scan(&o)
	if errors.Is(err, sql.ErrNoRows) {
		err = fmt.Errorf("class %q: %w", class, errNotFound)
	}
	return o, err
}

// SetCard enters a member's card for a class, or changes it, and returns what it
// scores.
func (s *Store) SetCard(ctx context.Context, rules placing.CardRules, class, member string, c placing.Card) (score int, err error) {
	if c == (placing.Card{}) {
		c.Mark = placing.Blank
	}
	tx, err := s.db.BeginTx(ctx, nil)
	if err != nil {
		return 0, err
	}
	defer func() { _ = tx.Rollback() }() // does nothing after Commit
	var o placing.Official
	err = tx.QueryRowContext(ctx, `SELECT official FROM class WHERE name = ?`, class).Scan(&o)
	if errors.Is(err, sql.ErrNoRows) {
		return 0, fmt.Errorf("class %q: %w", class, errNotFound)
	}
	if err != nil {
		return 0, err
	}
	if score, err = rules.Score(o, c); err != nil {
		return 0, err
	}
	_, err = tx.ExecContext(ctx, `INSERT INTO card (class, member, placing, mark) VALUES (?, ?, ?, ?)
		ON CONFLICT (class, member) DO UPDATE SET placing = excluded.placing, mark = excluded.mark`,
		class, member, null(c.Order), null(c.Mark))
	if err != nil {
		return 0, err
	}
	return score, tx.Commit()
}

// Card returns a member's card for a class.
func (s *Store) Card(ctx context.Context, class, member string) (placing.Card, error) {
	var order sql.Null[placing.Order]
	var mark sql.Null[placing.Mark]
	err := s.db.QueryRowContext(ctx, `SELECT placing, mark FROM card WHERE class = ? AND member = ?`, class, member).Scan(&order, &mark)
	if errors.Is(err, sql.ErrNoRows) {
		err = fmt.Errorf("card of %q for class %q: %w", member, class, errNotFound)
	}
	return placing.Card{Order: order.V, Mark: mark.V}, err
}

// SetMember enters the team and the age division of a member, or changes them.
// Either may be empty. A member need not be entered to hand in cards.
func (s *Store) SetMember(ctx context.Context, m contest.Member) error {
	_, err := s.db.ExecContext(ctx, `INSERT INTO member (name, team, division) VALUES (?, ?, ?)
		ON CONFLICT (name) DO UPDATE SET team = excluded.team, division = excluded.division`, m.ID, m.Team, m.Division)
	return err
}

// Everything is what the standings are made of, at one moment.
type Everything struct {
	Classes []contest.OfficialPlacing
	Members []contest.Member
	Cards   []contest.PlacingCard
}

// Everything reads the whole contest, each list in order of its names.
func (s *Store) Everything(ctx context.Context) (Everything, error) {
	var e Everything
	tx, err := s.db.BeginTx(ctx, nil)
	if err != nil {
		return e, err
	}
	defer func() { _ = tx.Rollback() }() // nothing was written
	err = eachRow(ctx, tx, `SELECT name, official FROM class ORDER BY name`, func(rows *sql.Rows) error {
		var c contest.OfficialPlacing
		var o placing.Official
		err := rows.Scan(&c.Class, &o)
		c.Order, c.Cuts = o.Order(), o.Cuts()
		e.Classes = append(e.Classes, c)
		return err
	})
	if err != nil {
		return e, err
	}
	err = eachRow(ctx, tx, `SELECT name, team, division FROM member ORDER BY name`, func(rows *sql.Rows) error {
		var m contest.Member
		err := rows.Scan(&m.ID, &m.Team, &m.Division)
		e.Members = append(e.Members, m)
		return err
	})
	if err != nil {
		return e, err
	}
	err = eachRow(ctx, tx, `SELECT class, member, coalesce(team, ''), coalesce(division, ''), placing, mark
		FROM card LEFT JOIN member ON name = member ORDER BY class, member`, func(rows *sql.Rows) error {
		var c contest.PlacingCard
		var order sql.Null[placing.Order]
		var mark sql.Null[placing.Mark]
		err := rows.Scan(&c.Class, &c.Member.ID, &c.Member.Team, &c.Member.Division, &order, &mark)
		c.Card = placing.Card{Order: order.V, Mark: mark.V}
		e.Cards = append(e.Cards, c)
		return err
	})
	return e, err
}

// eachRow calls f for every row of a query.
func eachRow(ctx context.Context, tx *sql.Tx, query string, f func(*sql.Rows) error) error {
	rows, err := tx.QueryContext(ctx, query)
	if err != nil {
		return err
	}
	defer func() { _ = rows.Close() }() // a second close does nothing
	for rows.Next() {
		if err := f(rows); err != nil {
			return err
		}
	}
	return rows.Err()
}

// null is NULL for the zero value.
func null[T comparable](v T) sql.Null[T] {
	var zero T
	return sql.Null[T]{V: v, Valid: v != zero}
}
