package peers_test

import (
	"bytes"
	"encoding/csv"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"testing"

	"example.com/ribface/grade"
	"example.com/ribface/internal/compare/peers"
	"example.com/ribface/placing"
	"github.com/cockroachdb/apd/v3"
	gov "github.com/govalues/decimal"
	"github.com/shopspring/decimal"
)

func mustFloat(s string) float64 {
	f, err := strconv.ParseFloat(s, 64)
	if err != nil {
		panic(err)
	}
	return f
}

func mustApd(s string) *apd.Decimal {
	d, _, err := apd.NewFromString(s)
	if err != nil {
		panic(err)
	}
	return d
}

// onLine is every carcass of the grid on a whole grade; see peers.OnLine.
var onLine = func() []grade.Carcass {
	var cs []grade.Carcass
	for _, m := range peers.OnLine() {
		cs = append(cs, grade.Carcass{Measures: m})
	}
	return cs
}()

// TestExactAgree holds the five exact versions equal, value and whole grade, at
// the benchmarks' carcasses and at every carcass of the grid on a whole grade.
func TestExactAgree(t *testing.T) {
	cs := append(peers.Carcasses(4096), onLine...)
	shops := peers.Rows(cs, decimal.RequireFromString)
	govs := peers.Rows(cs, gov.MustParse)
	apds := peers.Rows(cs, mustApd)
	floats := peers.Rows(cs, mustFloat)
	var y, tmp apd.Decimal
	for i, c := range cs {
		want, err := c.Measures.Yield()
		if err != nil {
			t.Fatal(err)
		}
		shop := peers.Shopspring(&shops[i])
		if !shop.Equal(want.Decimal()) || peers.ShopspringGrade(shop) != want.Grade() {
			t.Fatalf("shopspring: %v, want %v", shop, want)
		}
		f, err := peers.FloatExact(&floats[i])
		if err != nil || f != want.Decimal().InexactFloat64() || peers.FloatGrade(f) != want.Grade() {
			t.Fatalf("exact float64: %v, %v, want %v", f, err, want)
		}
		g, err := peers.Govalues(&govs[i])
		if err != nil || g.Cmp(gov.MustParse(want.String())) != 0 || peers.GovaluesGrade(g) != want.Grade() {
			t.Fatalf("govalues: %v, %v, want %v", g, err, want)
		}
		if err := peers.Apd(&y, &tmp, &apds[i]); err != nil {
			t.Fatal(err)
		}
		if y.Cmp(mustApd(want.String())) != 0 {
			t.Fatalf("apd: %v, want %v", &y, want)
		}
		if whole, err := peers.ApdGrade(&y, &tmp); err != nil || whole != want.Grade() {
			t.Fatalf("apd: grade %d, %v, want %d", whole, err, want.Grade())
		}
	}
}

// TestFloatOnLine counts the wrong whole grades of the plain formula. On a
// processor that fuses products and sums the counts differ, so only the number
// of carcasses is held.
func TestFloatOnLine(t *testing.T) {
	if len(onLine) != 11_240 {
		t.Fatalf("%d carcasses stand on a whole grade, want 11240", len(onLine))
	}
	rows := peers.Rows(onLine, mustFloat)
	raw, kept := 0, 0
	for i, c := range onLine {
		want, _ := c.Measures.Yield()
		y := peers.Float(&rows[i])
		if y < want.Decimal().InexactFloat64() {
			raw++
		}
		if peers.FloatGrade(y) != want.Grade() {
			kept++
		}
	}
	t.Logf("float64: %d of %d under their whole grade, %d wrong after keeping to 1 to 5", raw, len(onLine), kept)
	if raw == 0 {
		t.Error("the plain formula is right at every carcass, which nobody has seen yet")
	}
}

func TestScoresAgree(t *testing.T) {
	for _, cuts := range []string{"2-8-2", "5-5-5", "0-13-2", "3-5-4"} {
		for order := range placing.Orders(4) {
			official, err := placing.NewOfficial(order, placing.MustParseCuts(cuts))
			if err != nil {
				t.Fatal(err)
			}
			os, cs, ds := slices(official)
			for card, want := range official.Scores() {
				if got := peers.PairScore(official, card); got != want {
					t.Fatalf("pairs: %v scores %d, want %d", card, got, want)
				}
				list := collect(card)
				if got := peers.SliceScore(os, cs, list); got != want {
					t.Fatalf("slices: %v scores %d, want %d", card, got, want)
				}
				if got := peers.DecimalScore(os, ds, list); !got.Equal(decimal.NewFromInt(int64(want))) {
					t.Fatalf("decimal: %v scores %v, want %d", card, got, want)
				}
			}
		}
	}
}

func slices(o placing.Official) (order, cuts []int, decimals []decimal.Decimal) {
	for c := range o.Cuts().All() {
		cuts = append(cuts, c)
		decimals = append(decimals, decimal.NewFromInt(int64(c)))
	}
	return collect(o.Order()), cuts, decimals
}

func collect(o placing.Order) (list []int) {
	for e := range o.Exhibits() {
		list = append(list, e)
	}
	return list
}

// TestAssessAgree holds the plain program to the library where it can be right:
// quality, and yield away from the whole grades.
func TestAssessAgree(t *testing.T) {
	cs := peers.Carcasses(4096)
	floats := peers.FloatCarcasses(cs)
	for i, c := range cs {
		a, err := grade.Current.Assess(c)
		if err != nil {
			t.Fatal(err)
		}
		overall, quality, yield := peers.FloatAssess(&floats[i])
		if d := overall - float64(a.Maturity.Units()); d < -0.5 || d > 0.5 {
			t.Fatalf("%+v: overall %v, want %v", c, overall, a.Maturity)
		}
		if got := peers.FloatQualities[quality]; got != a.Quality.String() {
			t.Fatalf("%+v: quality %v, want %v", c, got, a.Quality)
		}
		if a.Yield.Units()%grade.OneGrade != 0 && yield != a.Yield.Grade() {
			t.Fatalf("%+v: yield grade %d, want %d", c, yield, a.Yield.Grade())
		}
	}
}

// TestSpreadsheet lets a spreadsheet do the sums at every carcass on a whole
// grade, where one is installed, and counts its wrong grades.
func TestSpreadsheet(t *testing.T) {
	program, err := exec.LookPath("ssconvert")
	if err != nil {
		t.Skip("no ssconvert")
	}
	rows := sheet(t, program, onLine, true)
	raw, kept, shown := 0, 0, 0
	for i, row := range rows {
		want, _ := onLine[i].Measures.Yield()
		whole := strconv.FormatInt(want.Units()/grade.OneGrade, 10)
		if row[4] != whole {
			raw++
		}
		if row[5] != strconv.Itoa(want.Grade()) {
			kept++
		}
		if row[6] != whole {
			shown++
		}
	}
	t.Logf("spreadsheet: %d of %d wrong by INT, %d after keeping to 1 to 5, %d by INT of the sum rounded to 4 places", raw, len(rows), kept, shown)
	if shown != 0 {
		t.Errorf("rounding to 4 places first leaves %d wrong", shown)
	}
}

// sheet writes carcasses to a file, with formulas or with zeros in their place,
// lets the program compute it and reads the result.
func sheet(t testing.TB, program string, cs []grade.Carcass, formulas bool) [][]string {
	t.Helper()
	var b bytes.Buffer
	for i, c := range cs {
		n := i + 1
		y := fmt.Sprintf("2.5+2.5*A%d+0.2*B%d+0.0038*C%d-0.32*D%d", n, n, n, n)
		fmt.Fprintf(&b, "%s,%s,%s,%s,", c.Measures.Fat.Inches(), c.Measures.KPH.Percent(), c.Measures.Weight.Pounds(), c.Measures.Ribeye.SquareInches())
		if formulas {
			fmt.Fprintf(&b, "=INT(%s),\"=MIN(5,MAX(1,INT(%s)))\",\"=INT(ROUND(%s,4))\"\n", y, y, y)
		} else {
			fmt.Fprintln(&b, "0,0,0")
		}
	}
	dir := t.TempDir()
	in, out := filepath.Join(dir, "in.csv"), filepath.Join(dir, "out.csv")
	if err := os.WriteFile(in, b.Bytes(), 0o666); err != nil {
		t.Fatal(err)
	}
	if msg, err := exec.Command(program, "--recalc", in, out).CombinedOutput(); err != nil {
		t.Skipf("the spreadsheet failed: %v\n%s", err, msg)
	}
	text, err := os.ReadFile(out)
	if err != nil {
		t.Fatal(err)
	}
	rows, err := csv.NewReader(bytes.NewReader(text)).ReadAll()
	if err != nil || len(rows) != len(cs) {
		t.Fatalf("%d rows, %v", len(rows), err)
	}
	return rows
}
