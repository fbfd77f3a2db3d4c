package fixed_test

import (
	"errors"
	"fmt"
	"math"
	"math/big"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"example.com/ribface/internal/fault"
	"example.com/ribface/internal/text/fixed"
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
		{"digit behind the places", "finer than the unit holds", "1.23451", 4, 0, fault.ErrPlaces},
		{"late digit behind the places", "each digit is looked at", "1.234500001", 4, 0, fault.ErrPlaces},
		{"no places", "the unit itself", "7", 0, 7, nil},
		{"no places, zero behind", "a zero is not finer", "7.0", 0, 7, nil},
		{"no places, digit behind", "finer than the unit holds", "7.1", 0, 0, fault.ErrPlaces},
		{"eight places", "the most in use", "0.00000001", 8, 1, nil},
		{"minus", "the one sign", "-0.5", 4, -5_000, nil},
		{"minus zero", "is zero", "-0", 4, 0, nil},
		{"leading zeros", "count for nothing", "007.5", 1, 75, nil},
		{"ten digits", "the most before the point", "9999999999", 4, 99_999_999_990_000, nil},
		{"ten digits and eight places", "the most there is", "-9999999999.99999999", 8, -999_999_999_999_999_999, nil},
		{"eleven digits", "one too many", "10000000000", 4, 0, fault.ErrRange},
		{"minus and ten digits", "the sign is no digit", "-9999999999", 0, -9_999_999_999, nil},
		{"minus and eleven digits", "one too many", "-10000000000", 0, 0, fault.ErrRange},
		{"32 bytes", "the longest text", "0000000001.200000000000000000000", 1, 12, nil},
		{"33 bytes", "one too long", "0000000001.2000000000000000000000", 1, 0, fault.ErrSyntax},
		{"a digit behind the kept ones", "none is lost", "0000000001.00000000000000000001", 8, 0, fault.ErrPlaces},
		{"empty", "no digit", "", 4, 0, fault.ErrSyntax},
		{"lone minus", "no digit", "-", 4, 0, fault.ErrSyntax},
		{"plus", "the other sign", "+1", 4, 10_000, nil},
		{"minus behind plus", "one is enough", "+-1", 4, 0, fault.ErrSyntax},
		{"two signs", "one is enough", "--1", 4, 0, fault.ErrSyntax},
		{"no digit before the point", "one on either side will do", ".5", 4, 5_000, nil},
		{"no digit behind the point", "one on either side will do", "5.", 4, 50_000, nil},
		{"lone point", "no digit", ".", 4, 0, fault.ErrSyntax},
		{"two points", "one is enough", "1.2.3", 4, 0, fault.ErrSyntax},
		{"comma", "no other decimal sign", "1,5", 4, 0, fault.ErrSyntax},
		{"exponent", "as programs write it", "1e3", 4, 10_000_000, nil},
		{"exponent and plus", "as programs write it", "1E+03", 4, 10_000_000, nil},
		{"exponent below 0", "as programs write it", "4.5E-01", 4, 4_500, nil},
		{"exponent without digits", "it has one at least", "1e", 4, 0, fault.ErrSyntax},
		{"exponent with a sign alone", "it has a digit", "1e+", 4, 0, fault.ErrSyntax},
		{"exponent of four digits", "it has three bytes at most", "1e1000", 4, 0, fault.ErrSyntax},
		{"exponent of 100", "one too large", "1e100", 4, 0, fault.ErrSyntax},
		{"exponent of 99", "too large for the units", "1e99", 4, 0, fault.ErrRange},
		{"zero with an exponent", "is zero", "0e99", 4, 0, nil},
		{"exponent of -99", "finer than the unit", "1e-99", 4, 0, fault.ErrPlaces},
		{"zero with an exponent below 0", "is zero", "0e-99", 4, 0, nil},
		{"exponent that takes the places", "nothing is left behind", "120e-1", 0, 12, nil},
		{"beyond 10^18", "no int64 is asked for it", "9999999999e9", 0, 0, fault.ErrRange},
		{"one beyond 10^18", "an int64 would hold it", "1000000001e9", 0, 0, fault.ErrRange},
		{"10^18", "the most there is", "1e18", 0, 1_000_000_000_000_000_000, nil},
		{"exponent behind the point", "as programs write it", "1.5e3", 4, 15_000_000, nil},
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

var form = regexp.MustCompile(`^[+-]?(([0-9]+)\.?[0-9]*|\.[0-9]+)([eE]([+-]?[0-9]{1,2}|[0-9]{3}))?$`)

// slowNumber reads what Read reads, by a regular expression and big.Rat.
func slowNumber(s string) (*big.Rat, error) {
	if len(s) > 32 {
		return nil, fault.ErrSyntax
	}
	// Read counts digits before it looks behind them.
	digits := strings.TrimLeft(s, "0123456789")
	if s != "" && (s[0] == '-' || s[0] == '+') {
		digits = s[:1] + strings.TrimLeft(s[1:], "0123456789")
	}
	if len(s)-len(digits) > 10 {
		return nil, fault.ErrRange
	}
	m := form.FindStringSubmatch(s)
	if m == nil {
		return nil, fault.ErrSyntax
	}
	if e, _ := strconv.Atoi(m[4]); e > 99 {
		return nil, fault.ErrSyntax
	}
	r, ok := new(big.Rat).SetString(s)
	if !ok {
		return nil, fault.ErrSyntax
	}
	return r, nil
}

// readSlow reads what Parse reads.
func readSlow(s string, places int) (int64, error) {
	r, err := slowNumber(s)
	if err != nil {
		return 0, err
	}
	r.Mul(r, tenTo(places))
	switch {
	case r.Num().CmpAbs(new(big.Int).Mul(r.Denom(), big.NewInt(1e18))) > 0:
		return 0, fault.ErrRange
	case !r.IsInt():
		return 0, fault.ErrPlaces
	}
	return r.Num().Int64(), nil
}

func tenTo(n int) *big.Rat {
	r := new(big.Rat).SetInt(new(big.Int).Exp(big.NewInt(10), big.NewInt(int64(max(n, -n))), nil))
	if n < 0 {
		r.Inv(r)
	}
	return r
}

// roundSlow rounds to a whole number.
func roundSlow(v *big.Rat, r fixed.Rounding) *big.Int {
	floor := new(big.Int).Div(v.Num(), v.Denom()) // Euclid: toward minus infinity for a positive denominator
	rest := new(big.Rat).Sub(v, new(big.Rat).SetInt(floor))
	half := rest.Cmp(big.NewRat(1, 2))
	up := half > 0
	if half == 0 {
		switch r {
		case fixed.HalfUp:
			up = true
		case fixed.HalfEven:
			up = floor.Bit(0) == 1
		case fixed.HalfAway:
			up = v.Sign() > 0
		}
	}
	if up && r != fixed.Down {
		floor.Add(floor, big.NewInt(1))
	}
	return floor
}

var everyRounding = []fixed.Rounding{fixed.Down, fixed.HalfUp, fixed.HalfEven, fixed.HalfAway}

// compareUnits holds a number in units, by every rounding, against fractions.
func compareUnits(n fixed.Number, exact *big.Rat, places int, den uint64) error {
	want := new(big.Rat).Mul(exact, tenTo(places))
	want.Quo(want, new(big.Rat).SetInt(new(big.Int).SetUint64(den)))
	most := new(big.Rat).SetInt64(1e18)
	far := n.Digits != 0 && places-n.Places >= 20
	for _, r := range everyRounding {
		rounded := roundSlow(want, r)
		got, err := n.Units(places, den, r)
		large := new(big.Rat).Abs(want).Cmp(most) > 0
		switch {
		case (large || far) && err == fault.ErrRange:
		case err != nil || got != rounded.Int64() || !rounded.IsInt64():
			return fmt.Errorf("%+v times 10^%d by %d, rounding %d: %d, %v; want %v", n, places, den, r, got, err, rounded)
		}
	}
	got, err := n.Units(places, den, fixed.Exact)
	switch {
	case far && err == fault.ErrRange, new(big.Rat).Abs(want).Cmp(most) > 0 && err != nil:
	case want.IsInt() && (err != nil || got != want.Num().Int64()), !want.IsInt() && err != fault.ErrPlaces:
		return fmt.Errorf("%+v times 10^%d by %d, exactly: %d, %v; want %v", n, places, den, got, err, want)
	}
	return nil
}

// TestUnits holds drawn numbers in the units of every measurement, from text and from
// decimals, against fractions, with halves and what lies a little beside them.
func TestUnits(t *testing.T) {
	type unit struct {
		places int
		den    uint64
	}
	rapid.Check(t, func(t *rapid.T) {
		u := rapid.SampledFrom([]unit{{4, 1}, {5, 254}, {6, 254}, {8, 64_516}, {12, 45_359_237}, {8, 1}, {0, 1}, {0, 2}, {3, 1 << 63}}).Draw(t, "unit")
		s := rapid.StringMatching(`[+-]?[0-9]{0,10}(\.[0-9]{0,20})?([eE][+-]?[0-9]{1,2})?`).Draw(t, "text")
		if rapid.Bool().Draw(t, "near a half") {
			// half a unit, with digits far behind
			h := new(big.Rat).SetFrac64(2*rapid.Int64Range(-1000, 1000).Draw(t, "n")+1, 2)
			h.Mul(h, new(big.Rat).SetInt(new(big.Int).SetUint64(u.den))).Mul(h, tenTo(-u.places))
			s = strings.TrimRight(h.FloatString(20), "0") + rapid.SampledFrom([]string{"", "0000001"}).Draw(t, "more")
		}
		exact, wantErr := slowNumber(s)
		n, err := fixed.Read(s)
		if err != wantErr {
			t.Fatalf("Read(%q): %v, want %v", s, err, wantErr)
		}
		if err != nil {
			return
		}
		if err := compareUnits(n, exact, u.places, u.den); err != nil {
			t.Fatalf("%q: %v", s, err)
		}
	})
}

// TestDecimal holds the parts of decimals, to both ends of what is taken, against
// fractions.
func TestDecimal(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		exponent := rapid.Int32Range(-110, 20).Draw(t, "exponent")
		digits := rapid.StringMatching(`-?[1-9][0-9]{0,125}`).Draw(t, "coefficient")
		c, _ := new(big.Int).SetString(digits, 10)
		n, ok := fixed.Decimal(c, exponent)
		if want := exponent >= -99 && exponent <= 10 && c.BitLen() <= 400; ok != want {
			t.Fatalf("%v with exponent %d: taken %v", c, exponent, ok)
		}
		if !ok {
			return
		}
		exact := new(big.Rat).Mul(new(big.Rat).SetInt(c), tenTo(int(exponent)))
		if err := compareUnits(n, exact, 8, 1); err != nil {
			t.Fatal(err)
		}
		if err := compareUnits(n, exact, 12, 45_359_237); err != nil {
			t.Fatal(err)
		}
	})
	for _, n := range []fixed.Number{{Digits: 5, Places: 5, More: true}, {Digits: 5, Places: 99}, {Neg: true, Digits: 5, Places: 30}, {Digits: 999_999_999_999_999_999, Places: 18, More: true}, {Digits: 999_999_999_999_999_999, Places: 20}, {Digits: 999_999_999_999_999_999}} {
		exact := new(big.Rat).Mul(new(big.Rat).SetInt64(int64(n.Digits)), tenTo(-n.Places))
		if n.Neg {
			exact.Neg(exact)
		}
		if n.More {
			exact.Add(exact, tenTo(-40))
		}
		for _, den := range []uint64{1, 254, 1 << 63} {
			if err := compareUnits(n, exact, 4, den); err != nil {
				t.Error(err)
			}
		}
	}
	if _, ok := fixed.Decimal(new(big.Int).Lsh(big.NewInt(1), 400), 0); ok {
		t.Error("401 bits are taken")
	}
	if n, ok := fixed.Decimal(big.NewInt(0), 10); !ok || n.Digits != 0 || n.More {
		t.Errorf("zero: %+v, %v", n, ok)
	}
	most := big.NewInt(999_999_999_999_999_999)
	if n, ok := fixed.Decimal(most, -8); !ok || n.Digits != 999_999_999_999_999_999 || n.More {
		t.Errorf("18 digits: %+v, %v", n, ok)
	}
	if n, ok := fixed.Decimal(most.Add(most, big.NewInt(2)), -8); !ok || n.Digits != 100_000_000_000_000_000 || !n.More {
		t.Errorf("19 digits: %+v, %v", n, ok)
	}
}

// TestDivide holds the divisions against fractions, with halves on both sides of 0.
func TestDivide(t *testing.T) {
	for d := int64(1); d <= 12; d++ {
		for n := int64(-60); n <= 60; n++ {
			for _, r := range everyRounding {
				want := roundSlow(big.NewRat(n, d), r)
				if got := fixed.Divide(n, d, r); got != want.Int64() {
					t.Fatalf("Divide(%d, %d, %d) = %d, want %v", n, d, r, got, want)
				}
				if got := fixed.Round(n, d, r); got != want.Int64()*d {
					t.Fatalf("Round(%d, %d, %d) = %d, want %v times %d", n, d, r, got, want, d)
				}
			}
			for _, by := range []int64{d, -d} {
				q, rest := fixed.FloorDiv(n, by)
				if want := roundSlow(big.NewRat(n, by), fixed.Down); q != want.Int64() || q*by+rest != n {
					t.Fatalf("FloorDiv(%d, %d) = %d, %d; want %v", n, by, q, rest, want)
				}
			}
		}
	}
}

// TestSigned holds the sign of both sides of 0.
func TestSigned(t *testing.T) {
	for n, want := range map[int64]string{-5_000: "-0.5", 0: "+0", 5_000: "+0.5"} {
		if got := fixed.Signed(n, 4); got != want {
			t.Errorf("Signed(%d) = %q, want %q", n, got, want)
		}
		if got := fixed.Plus(n, fixed.String(n, 4)+" in"); got != want+" in" {
			t.Errorf("Plus(%d) = %q, want %q", n, got, want+" in")
		}
	}
}

// FuzzParse compares Parse with the slow reader, and writes and reads again what
// was read.
func FuzzParse(f *testing.F) {
	for _, s := range []string{"0", "1.5", "-0.0001", "9999999999.99999999", "12345678901", "1e5", "1.00000000", "-", "+.5", "5.", "1E-05", "0e99", "1e10", "1e1000", "0000000001.00000000000000000001"} {
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
		text := fixed.String(got, places)
		if whole, _, _ := strings.Cut(strings.TrimPrefix(text, "-"), "."); len(whole) > 10 {
			return // an exponent makes what plain text may not have
		}
		if back, err := fixed.Parse(text, places); back != got || err != nil {
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
