package fixed_test

import (
	"errors"
	"math"
	"math/big"
	"regexp"
	"strings"
	"testing"

	"example.com/ribface/internal/fault"
	"example.com/ribface/internal/fixed"
	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

// TestParse holds the form of a number, on both sides of each rule.
func TestParse(t *testing.T) {
	tests := []struct {
		name, reason string
		in           string
		places       int
		want         int64
		err          error
	}{
		{"zero", "the least number there is", "0", 4, 0, nil},
		{"whole", "no point is needed", "12", 4, 120_000, nil},
		{"all places", "as fine as the unit", "1.2345", 4, 12_345, nil},
		{"fewer places", "the rest are zeros", "1.2", 4, 12_000, nil},
		{"zeros behind the places", "they change nothing", "1.23450000", 4, 12_345, nil},
		{"digit behind the places", "finer than the unit holds", "1.23451", 4, 0, fault.ErrRange},
		{"late digit behind the places", "each digit is looked at", "1.234500001", 4, 0, fault.ErrRange},
		{"no places", "the unit itself", "7", 0, 7, nil},
		{"no places, zero behind", "a zero is not finer", "7.0", 0, 7, nil},
		{"no places, digit behind", "finer than the unit holds", "7.1", 0, 0, fault.ErrRange},
		{"eight places", "the most in use", "0.00000001", 8, 1, nil},
		{"minus", "the one sign", "-0.5", 4, -5_000, nil},
		{"minus zero", "is zero", "-0", 4, 0, nil},
		{"leading zeros", "count for nothing", "007.5", 1, 75, nil},
		{"ten digits", "the most before the point", "9999999999", 4, 99_999_999_990_000, nil},
		{"ten digits and eight places", "the most there is", "-9999999999.99999999", 8, -999_999_999_999_999_999, nil},
		{"eleven digits", "one too many", "10000000000", 4, 0, fault.ErrRange},
		{"minus and ten digits", "the sign is no digit", "-9999999999", 0, -9_999_999_999, nil},
		{"minus and eleven digits", "one too many", "-10000000000", 0, 0, fault.ErrRange},
		{"24 bytes", "the longest text", "0000000001.2000000000000", 1, 12, nil},
		{"25 bytes", "one too long", "0000000001.20000000000000", 1, 0, fault.ErrSyntax},
		{"empty", "no digit", "", 4, 0, fault.ErrSyntax},
		{"lone minus", "no digit", "-", 4, 0, fault.ErrSyntax},
		{"plus", "only minus is a sign", "+1", 4, 0, fault.ErrSyntax},
		{"two signs", "one is enough", "--1", 4, 0, fault.ErrSyntax},
		{"no digit before the point", "a digit stands on both sides", ".5", 4, 0, fault.ErrSyntax},
		{"no digit behind the point", "a digit stands on both sides", "5.", 4, 0, fault.ErrSyntax},
		{"lone point", "no digit", ".", 4, 0, fault.ErrSyntax},
		{"two points", "one is enough", "1.2.3", 4, 0, fault.ErrSyntax},
		{"comma", "no other decimal sign", "1,5", 4, 0, fault.ErrSyntax},
		{"exponent", "not read", "1e3", 4, 0, fault.ErrSyntax},
		{"exponent behind the point", "not read", "1.5e3", 4, 0, fault.ErrSyntax},
		{"byte before the digits", "just below 0 in the byte order", "/1", 4, 0, fault.ErrSyntax},
		{"byte behind the digits", "just above 9 in the byte order", "1:", 4, 0, fault.ErrSyntax},
		{"byte below 0 behind the point", "just below 0", "1./", 4, 0, fault.ErrSyntax},
		{"byte above 9 behind the point", "just above 9", "1.:", 4, 0, fault.ErrSyntax},
		{"space before", "not trimmed", " 1", 4, 0, fault.ErrSyntax},
		{"space behind", "not trimmed", "1 ", 4, 0, fault.ErrSyntax},
		{"typographic minus", "only the hyphen is a sign", "\u22121", 4, 0, fault.ErrSyntax},
		{"other digits", "only the ten of ASCII", "\u0661", 4, 0, fault.ErrSyntax},
		{"too fine and then a letter", "bad form wins over a fine digit", "1.00001x", 4, 0, fault.ErrSyntax},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			got, err := fixed.Parse(tt.in, tt.places)
			if got != tt.want || err != tt.err {
				t.Errorf("Parse(%q, %d) = %d, %v; want %d, %v: %s", tt.in, tt.places, got, err, tt.want, tt.err, tt.reason)
			}
			if got, err := fixed.Parse([]byte(tt.in), tt.places); got != tt.want || err != tt.err {
				t.Errorf("Parse of the bytes %q = %d, %v; want %d, %v", tt.in, got, err, tt.want, tt.err)
			}
		})
	}
}

// TestAppend holds the shortest text and the text with at least some places.
func TestAppend(t *testing.T) {
	tests := []struct {
		name   string
		n      int64
		places int
		min    int
		want   string
	}{
		{"zero", 0, 4, 0, "0"},
		{"zero with two places", 0, 4, 2, "0.00"},
		{"no places", 42, 0, 0, "42"},
		{"whole", 120_000, 4, 0, "12"},
		{"whole with one place", 120_000, 4, 1, "12.0"},
		{"shortest", 12_300, 4, 0, "1.23"},
		{"min shorter than needed", 12_345, 4, 2, "1.2345"},
		{"min as needed", 12_300, 4, 2, "1.23"},
		{"min longer than needed", 12_300, 4, 3, "1.230"},
		{"all places", 12_300, 4, 4, "1.2300"},
		{"zeros inside", 10_001, 4, 0, "1.0001"},
		{"below one", 5, 4, 0, "0.0005"},
		{"minus", -5_000, 4, 0, "-0.5"},
		{"minus with two places", -5_000, 4, 2, "-0.50"},
		{"least int64", math.MinInt64, 8, 0, "-92233720368.54775808"},
		{"greatest int64", math.MaxInt64, 8, 0, "92233720368.54775807"},
		{"ten", 10, 0, 0, "10"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			if diff := cmp.Diff("kept "+tt.want, string(fixed.AppendMin([]byte("kept "), tt.n, tt.places, tt.min))); diff != "" {
				t.Errorf("AppendMin: (-want +got)\n%s", diff)
			}
			if tt.min == 0 {
				if diff := cmp.Diff("kept "+tt.want, string(fixed.Append([]byte("kept "), tt.n, tt.places))); diff != "" {
					t.Errorf("Append: (-want +got)\n%s", diff)
				}
				if diff := cmp.Diff(tt.want, fixed.String(tt.n, tt.places)); diff != "" {
					t.Errorf("String: (-want +got)\n%s", diff)
				}
			}
		})
	}
}

var form = regexp.MustCompile(`^-?[0-9]+(\.[0-9]+)?$`)

// readSlow reads what Parse reads, by a regular expression and big.Rat.
func readSlow(s string, places int) (int64, error) {
	if len(s) > 24 || !form.MatchString(s) {
		// Parse counts digits before it looks behind them.
		if digits := strings.TrimPrefix(s, "-"); len(s) <= 24 && len(digits)-len(strings.TrimLeft(digits, "0123456789")) > 10 {
			return 0, fault.ErrRange
		}
		return 0, fault.ErrSyntax
	}
	whole, _, _ := strings.Cut(strings.TrimPrefix(s, "-"), ".")
	r, ok := new(big.Rat).SetString(s)
	if !ok {
		return 0, fault.ErrSyntax
	}
	r.Mul(r, new(big.Rat).SetInt(new(big.Int).Exp(big.NewInt(10), big.NewInt(int64(places)), nil)))
	if len(whole) > 10 || !r.IsInt() {
		return 0, fault.ErrRange
	}
	return r.Num().Int64(), nil
}

// FuzzParse compares Parse with the slow reader, and writes and reads again what
// was read.
func FuzzParse(f *testing.F) {
	for _, s := range []string{"0", "1.5", "-0.0001", "9999999999.99999999", "12345678901", "1e5", "1.00000000", "-"} {
		f.Add(s, uint8(4))
	}
	f.Fuzz(func(t *testing.T, s string, p uint8) {
		places := int(p % 9)
		got, err := fixed.Parse(s, places)
		want, wantErr := readSlow(s, places)
		if got != want || !errors.Is(err, wantErr) {
			t.Fatalf("Parse(%q, %d) = %d, %v; the slow reader %d, %v", s, places, got, err, want, wantErr)
		}
		if err != nil {
			return
		}
		if back, err := fixed.Parse(fixed.String(got, places), places); back != got || err != nil {
			t.Fatalf("%d came back from its text as %d, %v", got, back, err)
		}
	})
}

// TestTextIsShortest holds for drawn numbers that the text reads back, is no
// longer than any other, and that more places only add zeros.
func TestTextIsShortest(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		places := rapid.IntRange(0, 8).Draw(t, "places")
		n := rapid.Int64Range(-999_999_999_999_999_999, 999_999_999_999_999_999).Draw(t, "n")
		s := fixed.String(n, places)
		if len(strings.TrimPrefix(strings.Split(s, ".")[0], "-")) > 10 {
			t.Skip("more digits than Parse reads")
		}
		if back, err := fixed.Parse(s, places); back != n || err != nil {
			t.Fatalf("%q reads as %d, %v; want %d", s, back, err, n)
		}
		if strings.Contains(s, ".") && strings.HasSuffix(s, "0") {
			t.Fatalf("%q ends in a zero", s)
		}
		least := rapid.IntRange(0, places).Draw(t, "min")
		long := string(fixed.AppendMin(nil, n, places, least))
		if !strings.HasPrefix(long, s) || strings.Trim(strings.TrimPrefix(long, s), ".0") != "" {
			t.Fatalf("%q with at least %d places is %q", s, least, long)
		}
	})
}
