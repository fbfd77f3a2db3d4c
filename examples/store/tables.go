package main

import (
	"context"
	"database/sql"
	"errors"
	"fmt"
	"net/url"
	"os"

	"example.com/ribface/placing"
)

// version is the number of the tables below. A file with another is refused.
const version = 1

// tables makes the tables. The library's values are kept as text in their own
// spelling, so that a person who opens the file can read them.
//
// Every member has two sums: over all classes, and over the closed ones, which
// are those that the public sees. A team has the same for each division, and
// under the division '*' for all of its members. Triggers keep the sums, within
// the transaction of the card that changes them, so a read adds nothing up.
const tables = `
CREATE TABLE class (
	name     TEXT NOT NULL PRIMARY KEY,
	official TEXT NOT NULL,
	state    TEXT NOT NULL DEFAULT 'open' CHECK (state IN ('open', 'closed'))
) STRICT;

CREATE TABLE member (
	name          TEXT NOT NULL PRIMARY KEY,
	digits        TEXT AS (iif(name GLOB '*[^0-9]*', '99', printf('%02d%s-%02d', length(ltrim(name, '0')), ltrim(name, '0'), length(name)))), -- puts 9 and 09 before 10, and numbers before names
	team          TEXT NOT NULL DEFAULT '',
	division      TEXT NOT NULL DEFAULT '',
	points        INTEGER NOT NULL DEFAULT 0,
	cards         INTEGER NOT NULL DEFAULT 0,
	closed_points INTEGER NOT NULL DEFAULT 0,
	closed_cards  INTEGER NOT NULL DEFAULT 0
) STRICT;
CREATE INDEX member_rank ON member (points DESC, digits, name);
CREATE INDEX member_rank_division ON member (division, points DESC, digits, name);
CREATE INDEX member_closed_rank ON member (closed_points DESC, digits, name);
CREATE INDEX member_closed_rank_division ON member (division, closed_points DESC, digits, name);

CREATE TABLE card (
	class   TEXT NOT NULL REFERENCES class (name),
	member  TEXT NOT NULL REFERENCES member (name),
	placing TEXT,
	mark    TEXT,
	score   INTEGER NOT NULL,
	PRIMARY KEY (class, member),
	CHECK ((placing IS NULL) <> (mark IS NULL))
) STRICT, WITHOUT ROWID;

CREATE TABLE team (
	name          TEXT NOT NULL,
	digits        TEXT AS (iif(name GLOB '*[^0-9]*', '99', printf('%02d%s-%02d', length(ltrim(name, '0')), ltrim(name, '0'), length(name)))),
	division      TEXT NOT NULL,
	members       INTEGER NOT NULL,
	points        INTEGER NOT NULL,
	closed_points INTEGER NOT NULL,
	PRIMARY KEY (name, division)
) STRICT;
CREATE INDEX team_rank ON team (division, points DESC, digits, name);
CREATE INDEX team_closed_rank ON team (division, closed_points DESC, digits, name);

CREATE TRIGGER card_new AFTER INSERT ON card BEGIN
	SELECT RAISE(ABORT, 'the class is closed') FROM class WHERE name = NEW.class AND state = 'closed';
	UPDATE member SET points = points + NEW.score, cards = cards + 1 WHERE name = NEW.member;
END;
CREATE TRIGGER card_score AFTER UPDATE OF score ON card WHEN NEW.score <> OLD.score BEGIN
	UPDATE member SET points = points + NEW.score - OLD.score WHERE name = NEW.member;
	UPDATE member SET closed_points = closed_points + NEW.score - OLD.score
		WHERE name = NEW.member AND (SELECT state FROM class WHERE name = NEW.class) = 'closed';
END;
CREATE TRIGGER class_closed AFTER UPDATE OF state ON class WHEN NEW.state = 'closed' AND OLD.state = 'open' BEGIN
	UPDATE member SET closed_points = closed_points + card.score, closed_cards = closed_cards + 1
		FROM card WHERE card.class = NEW.name AND card.member = member.name;
END;
CREATE TRIGGER class_opened AFTER UPDATE OF state ON class WHEN NEW.state = 'open' AND OLD.state = 'closed' BEGIN
	UPDATE member SET closed_points = closed_points - card.score, closed_cards = closed_cards - 1
		FROM card WHERE card.class = NEW.name AND card.member = member.name;
END;
CREATE TRIGGER member_points AFTER UPDATE OF points, closed_points ON member WHEN NEW.team <> '' BEGIN
	UPDATE team SET points = points + NEW.points - OLD.points, closed_points = closed_points + NEW.closed_points - OLD.closed_points
		WHERE name = NEW.team AND division IN ('*', NEW.division);
END;
CREATE TRIGGER member_new AFTER INSERT ON member WHEN NEW.team <> '' BEGIN
	INSERT INTO team (name, division, members, points, closed_points)
		SELECT NEW.team, column1, 1, NEW.points, NEW.closed_points FROM (VALUES ('*'), (NEW.division)) WHERE true
		ON CONFLICT DO UPDATE SET members = members + 1, points = points + excluded.points, closed_points = closed_points + excluded.closed_points;
END;
CREATE TRIGGER member_moved AFTER UPDATE OF team, division ON member BEGIN
	UPDATE team SET members = members - 1, points = points - OLD.points, closed_points = closed_points - OLD.closed_points
		WHERE name = OLD.team AND division IN ('*', OLD.division);
	DELETE FROM team WHERE name = OLD.team AND members = 0;
	INSERT INTO team (name, division, members, points, closed_points)
		SELECT NEW.team, column1, 1, NEW.points, NEW.closed_points FROM (VALUES ('*'), (NEW.division)) WHERE NEW.team <> ''
		ON CONFLICT DO UPDATE SET members = members + 1, points = points + excluded.points, closed_points = closed_points + excluded.closed_points;
END;

CREATE TABLE token (
	name TEXT NOT NULL PRIMARY KEY,
	role TEXT NOT NULL CHECK (role IN ('clerk', 'official')),
	hash BLOB NOT NULL CHECK (length(hash) = 32)
) STRICT;

CREATE TABLE log (
	id     INTEGER PRIMARY KEY AUTOINCREMENT,
	at     TEXT NOT NULL,
	who    TEXT NOT NULL,
	what   TEXT NOT NULL CHECK (what IN ('key', 'state', 'card', 'member', 'token')),
	class  TEXT NOT NULL,
	member TEXT NOT NULL,
	old    TEXT NOT NULL,
	new    TEXT NOT NULL
) STRICT;
CREATE TRIGGER log_update BEFORE UPDATE ON log BEGIN SELECT RAISE(ABORT, 'the log is only added to'); END;
CREATE TRIGGER log_delete BEFORE DELETE ON log BEGIN SELECT RAISE(ABORT, 'the log is only added to'); END;`

// Open opens the file, making it where there is none, for its owner alone.
func Open(ctx context.Context, path string) (*Store, error) {
	f, err := os.OpenFile(path, os.O_CREATE|os.O_RDWR, 0o600)
	if err != nil {
		return nil, err
	}
	if err := f.Close(); err != nil {
		return nil, err
	}
	// One connection writes: writers queue here and never find the file locked. A
	// write is on the disk before it is acknowledged (synchronous=FULL).
	s := &Store{}
	if s.write, err = connect(path, 1, "_pragma=foreign_keys(1)", "_pragma=journal_mode(WAL)", "_pragma=synchronous(FULL)", "_txlock=immediate"); err != nil {
		return nil, err
	}
	if s.read, err = connect(path, 4, "mode=ro"); err != nil {
		return nil, errors.Join(err, s.Close())
	}
	if err := s.makeTables(ctx); err != nil {
		return nil, errors.Join(fmt.Errorf("%s: %w", path, err), s.Close())
	}
	return s, nil
}

func connect(path string, most int, options ...string) (*sql.DB, error) {
	dsn := "file:" + (&url.URL{Path: path}).EscapedPath() + "?_pragma=busy_timeout(5000)"
	for _, o := range options {
		dsn += "&" + o
	}
	db, err := sql.Open("sqlite", dsn)
	if err == nil {
		db.SetMaxOpenConns(most)
	}
	return db, err
}

// makeTables makes the tables in a new file and refuses a file of another kind.
func (s *Store) makeTables(ctx context.Context) error {
	tx, err := s.write.BeginTx(ctx, nil)
	if err != nil {
		return err
	}
	defer func() { _ = tx.Rollback() }() // does nothing after Commit
	var has, count int
	if err := tx.QueryRowContext(ctx, `SELECT user_version, (SELECT count(*) FROM sqlite_schema) FROM pragma_user_version`).Scan(&has, &count); err != nil {
		return err
	}
	if has == version {
		return nil
	}
	if count > 0 {
		return &placing.FieldError{Field: "tables", Value: fmt.Sprintf("version %d", has), Allowed: fmt.Sprintf("version %d, or a new file", version), Err: placing.ErrRange}
	}
	if _, err := tx.ExecContext(ctx, tables+fmt.Sprintf("PRAGMA user_version = %d;", version)); err != nil {
		return fmt.Errorf("making the tables: %w", err)
	}
	return tx.Commit()
}
