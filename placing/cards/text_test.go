package cards_test

import (
	"database/sql"
	"database/sql/driver"
	"encoding"
	"errors"
	"testing"

	"example.com/ribface/placing/cards"
)

type coded interface {
	encoding.TextMarshaler
	encoding.TextAppender
	driver.Valuer
	String() string
}

type decoded interface {
	encoding.TextUnmarshaler
	sql.Scanner
}

// check sends one value through every encoding of its type.
func check[T comparable, P interface {
	*T
	decoded
}](t *testing.T, v T, text string, parse func(string) (T, error)) {
	t.Helper()
	c := any(v).(coded)
	if got := c.String(); got != text {
		t.Errorf("String: got %q, want %q", got, text)
	}
	if got, err := parse(text); got != v || err != nil {
		t.Errorf("parse %q: got %v, %v", text, got, err)
	}
	if b, err := c.MarshalText(); string(b) != text || err != nil {
		t.Errorf("MarshalText: got %q, %v", b, err)
	}
	if b, err := c.AppendText([]byte("x")); string(b) != "x"+text || err != nil {
		t.Errorf("AppendText: got %q, %v", b, err)
	}
	if got, err := c.Value(); got != text || err != nil {
		t.Errorf("Value: got %v, %v", got, err)
	}
	var back T
	if err := P(&back).UnmarshalText([]byte(text)); back != v || err != nil {
		t.Errorf("UnmarshalText: got %v, %v", back, err)
	}
	var scanned T
	if err := P(&scanned).Scan([]byte(text)); scanned != v || err != nil {
		t.Errorf("Scan: got %v, %v", scanned, err)
	}
	kept := v
	if err := P(&kept).UnmarshalText([]byte("?")); err == nil || kept != v {
		t.Errorf("a failed UnmarshalText left %v, %v", kept, err)
	}
	if err := P(&kept).Scan(nil); err == nil || kept != v {
		t.Errorf("a failed Scan left %v, %v", kept, err)
	}
}

func TestText(t *testing.T) {
	check(t, cards.KindPlacing, "placing", cards.ParseKind)
	check(t, cards.KindQuality, "quality", cards.ParseKind)
	check(t, cards.KindYield, "yield", cards.ParseKind)
	check(t, cards.KindHand, "by hand", cards.ParseKind)
	check(t, cards.WholeGrades, "whole grades", cards.ParseYieldStep)
	check(t, cards.Thirds, "thirds", cards.ParseYieldStep)
	check(t, cards.Tenths, "tenths", cards.ParseYieldStep)
	check(t, cards.ScoredShort, "missing members score 0", cards.ParseShortTeam)
	check(t, cards.Barred, "barred", cards.ParseShortTeam)
	check(t, 425*pt/10, "42.5", cards.ParsePoints)
	check(t, -3*pt, "-3", cards.ParsePoints)
	if cards.Kind(0).IsValid() || cards.Kind(5).IsValid() || cards.YieldStep(0).IsValid() || cards.YieldStep(4).IsValid() || cards.ShortTeam(2).IsValid() {
		t.Error("a value without a name is valid")
	}
	if got := cards.ShortTeam(2).String(); got != "rule for short teams(2)" {
		t.Errorf("got %q", got)
	}
	if got := (425 * pt / 10).Decimal().String(); got != "42.5" {
		t.Errorf("got %s", got)
	}
	_, err := cards.ParsePoints("1.00001")
	wantErr(t, err, `points: "1.00001": out of range; allowed: a number with at most 4 places`)
	inner := errors.New("inner")
	if err := (&cards.RowError{Line: 2, Err: inner}); !errors.Is(err, inner) || err.Error() != "line 2: inner" {
		t.Errorf("got %v", err)
	}
}
