package calibration_test

import (
	"database/sql"
	"database/sql/driver"
	"encoding"
	"testing"

	"example.com/ribface/placing/cards/calibration"
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
	check(t, calibration.TooFew, "too few", calibration.ParseReason)
	check(t, calibration.NoSpread, "no spread", calibration.ParseReason)
	check(t, calibration.Unweighted, "unweighted", calibration.ParseWeights)
	check(t, calibration.Linear, "linear", calibration.ParseWeights)
	check(t, calibration.Quadratic, "quadratic", calibration.ParseWeights)
	for tr, name := range map[calibration.Trait]string{
		calibration.TraitMaturity: "maturity", calibration.TraitMarbling: "marbling", calibration.TraitQuality: "quality", calibration.TraitFat: "fat",
		calibration.TraitRibeye: "ribeye", calibration.TraitKPH: "KPH", calibration.TraitWeight: "weight", calibration.TraitYield: "yield",
	} {
		check(t, tr, name, calibration.ParseTrait)
	}
	if calibration.Reason(0).IsValid() || calibration.Reason(3).IsValid() || calibration.Weights(0).IsValid() || calibration.Weights(4).IsValid() || calibration.Trait(0).IsValid() || calibration.Trait(9).IsValid() {
		t.Error("a value without a name is valid")
	}
}
