package practice_test

import (
	"database/sql"
	"database/sql/driver"
	"encoding"
	"testing"

	"example.com/ribface/placing/cards/practice"
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
	check(t, practice.Hard, "hard", practice.ParseDifficulty)
	check(t, practice.Medium, "medium", practice.ParseDifficulty)
	check(t, practice.Easy, "easy", practice.ParseDifficulty)
	check(t, practice.CloseMiddle, "close middle", practice.ParseShape)
	check(t, practice.ClosePairs, "close pairs", practice.ParseShape)
	check(t, practice.ClearSteps, "clear steps", practice.ParseShape)
	if practice.Difficulty(0).IsValid() || practice.Difficulty(4).IsValid() || practice.Shape(0).IsValid() || practice.Shape(4).IsValid() {
		t.Error("a value without a name is valid")
	}
}
