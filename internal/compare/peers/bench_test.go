package peers_test

import (
	"fmt"
	"os/exec"
	"strconv"
	"testing"
	"time"

	"example.com/ribface/grade"
	"example.com/ribface/internal/compare/peers"
	"example.com/ribface/placing"
	"github.com/cockroachdb/apd/v3"
	gov "github.com/govalues/decimal"
	"github.com/shopspring/decimal"
)

// many is a power of two, so that an index wraps by a mask.
const many = 4096

var (
	sinkInt   int
	sinkFloat float64
	sinkFat   grade.Thickness
	sinkAny   any
)

// BenchmarkYield times the yield equation with its whole grade, inputs already in
// the type of each implementation.
func BenchmarkYield(b *testing.B) {
	cs := peers.Carcasses(many)
	b.Run("impl=float64", func(b *testing.B) {
		rows := peers.Rows(cs, mustFloat)
		b.ReportAllocs()
		b.ResetTimer()
		sum := 0
		for i := range b.N {
			sum += peers.FloatGrade(peers.Float(&rows[i&(many-1)]))
		}
		sinkInt = sum
	})
	b.Run("impl=float64 exact", func(b *testing.B) {
		rows := peers.Rows(cs, mustFloat)
		b.ReportAllocs()
		b.ResetTimer()
		sum := 0
		for i := range b.N {
			y, err := peers.FloatExact(&rows[i&(many-1)])
			if err != nil {
				b.Fatal(err)
			}
			sum += peers.FloatGrade(y)
		}
		sinkInt = sum
	})
	b.Run("impl=ribface", func(b *testing.B) {
		b.ReportAllocs()
		b.ResetTimer()
		sum := 0
		for i := range b.N {
			y, err := cs[i&(many-1)].Measures.Yield()
			if err != nil {
				b.Fatal(err)
			}
			sum += y.Grade()
		}
		sinkInt = sum
	})
	b.Run("impl=govalues", func(b *testing.B) {
		rows := peers.Rows(cs, gov.MustParse)
		b.ReportAllocs()
		b.ResetTimer()
		sum := 0
		for i := range b.N {
			y, err := peers.Govalues(&rows[i&(many-1)])
			if err != nil {
				b.Fatal(err)
			}
			sum += peers.GovaluesGrade(y)
		}
		sinkInt = sum
	})
	b.Run("impl=apd", func(b *testing.B) {
		rows := peers.Rows(cs, mustApd)
		var y, t apd.Decimal
		b.ReportAllocs()
		b.ResetTimer()
		sum := 0
		for i := range b.N {
			if err := peers.Apd(&y, &t, &rows[i&(many-1)]); err != nil {
				b.Fatal(err)
			}
			g, err := peers.ApdGrade(&y, &t)
			if err != nil {
				b.Fatal(err)
			}
			sum += g
		}
		sinkInt = sum
	})
	b.Run("impl=shopspring", func(b *testing.B) {
		rows := peers.Rows(cs, decimal.RequireFromString)
		b.ReportAllocs()
		b.ResetTimer()
		sum := 0
		for i := range b.N {
			sum += peers.ShopspringGrade(peers.Shopspring(&rows[i&(many-1)]))
		}
		sinkInt = sum
	})
}

// BenchmarkSpreadsheet times a spreadsheet program on a file of carcasses, reading
// and writing included, once with three formulas a carcass and once with numbers
// in their place: the difference is what the formulas cost. It needs ssconvert.
func BenchmarkSpreadsheet(b *testing.B) {
	program, err := exec.LookPath("ssconvert")
	if err != nil {
		b.Skip("no ssconvert")
	}
	cs := peers.Carcasses(4 * many)
	for _, formulas := range []bool{true, false} {
		b.Run(fmt.Sprintf("formulas=%v", formulas), func(b *testing.B) {
			for b.Loop() {
				sinkInt = len(sheet(b, program, cs, formulas))
			}
			b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N)/float64(len(cs)), "ns/carcass")
		})
	}
}

// BenchmarkParse times reading one measure from text.
func BenchmarkParse(b *testing.B) {
	var texts [many]string
	for i, c := range peers.Carcasses(many) {
		switch i % 4 {
		case 0:
			texts[i] = c.Measures.Fat.Inches().String()
		case 1:
			texts[i] = c.Measures.Ribeye.SquareInches().String()
		case 2:
			texts[i] = c.Measures.KPH.Percent().String()
		default:
			texts[i] = c.Measures.Weight.Pounds().String()
		}
	}
	b.Run("impl=strconv.ParseFloat", func(b *testing.B) {
		b.ReportAllocs()
		for i := range b.N {
			f, err := strconv.ParseFloat(texts[i&(many-1)], 64)
			if err != nil {
				b.Fatal(err)
			}
			sinkFloat = f
		}
	})
	b.Run("impl=ribface", func(b *testing.B) {
		b.ReportAllocs()
		for i := range b.N {
			v, err := grade.ParseThickness(texts[i&(many-1)])
			if err != nil {
				b.Fatal(err)
			}
			sinkFat = v
		}
	})
	b.Run("impl=ribface,unit", func(b *testing.B) {
		var units [many]string
		for i, s := range texts {
			units[i] = s + " in"
		}
		b.ReportAllocs()
		b.ResetTimer()
		for i := range b.N {
			v, err := grade.ParseThickness(units[i&(many-1)])
			if err != nil {
				b.Fatal(err)
			}
			sinkFat = v
		}
	})
	b.Run("impl=govalues", func(b *testing.B) {
		b.ReportAllocs()
		for i := range b.N {
			if _, err := gov.Parse(texts[i&(many-1)]); err != nil {
				b.Fatal(err)
			}
		}
	})
	b.Run("impl=apd", func(b *testing.B) {
		var d apd.Decimal
		b.ReportAllocs()
		for i := range b.N {
			if _, _, err := d.SetString(texts[i&(many-1)]); err != nil {
				b.Fatal(err)
			}
		}
	})
	b.Run("impl=shopspring", func(b *testing.B) {
		b.ReportAllocs()
		for i := range b.N {
			if _, err := decimal.NewFromString(texts[i&(many-1)]); err != nil {
				b.Fatal(err)
			}
		}
	})
}

// BenchmarkScore times the score of one card of four exhibits.
func BenchmarkScore(b *testing.B) {
	official, err := placing.ParseOfficial("3-2-1-4 cuts 2-8-2")
	if err != nil {
		b.Fatal(err)
	}
	var cards []placing.Order
	var lists [][]int
	for card := range placing.Orders(4) {
		cards, lists = append(cards, card), append(lists, collect(card))
	}
	order, cuts, decimals := slices(official)
	b.Run("impl=ribface", func(b *testing.B) {
		b.ReportAllocs()
		for i := range b.N {
			s, err := official.Score(cards[i&15])
			if err != nil {
				b.Fatal(err)
			}
			sinkInt += s
		}
	})
	b.Run("impl=pairs of ints", func(b *testing.B) {
		b.ReportAllocs()
		for i := range b.N {
			sinkInt += peers.SliceScore(order, cuts, lists[i&15])
		}
	})
	b.Run("impl=pairs of shopspring", func(b *testing.B) {
		b.ReportAllocs()
		for i := range b.N {
			sinkAny = peers.DecimalScore(order, decimals, lists[i&15])
		}
	})
}

// BenchmarkAssess times a whole carcass: maturity, quality and yield. The plain
// program knows group A and one edition and checks nothing.
func BenchmarkAssess(b *testing.B) {
	cs := peers.Carcasses(many)
	floats := peers.FloatCarcasses(cs)
	b.Run("impl=float64,unchecked", func(b *testing.B) {
		b.ReportAllocs()
		for i := range b.N {
			_, q, y := peers.FloatAssess(&floats[i&(many-1)])
			sinkInt += q + y
		}
	})
	b.Run("impl=ribface", func(b *testing.B) {
		b.ReportAllocs()
		for i := range b.N {
			a, err := grade.Current.Assess(cs[i&(many-1)])
			if err != nil {
				b.Fatal(err)
			}
			sinkInt += int(a.Quality) + a.Yield.Grade()
		}
	})
	b.Run("impl=ribface,explained", func(b *testing.B) {
		b.ReportAllocs()
		for i := range b.N {
			a, err := grade.Current.Assess(cs[i&(many-1)])
			if err != nil {
				b.Fatal(err)
			}
			sinkInt += len(a.Steps())
		}
	})
	rows := peers.Rows(cs, decimal.RequireFromString)
	b.Run("impl=shopspring,unchecked", func(b *testing.B) {
		b.ReportAllocs()
		for i := range b.N {
			_, q, _ := peers.FloatAssess(&floats[i&(many-1)])
			sinkInt += q + peers.ShopspringGrade(peers.Shopspring(&rows[i&(many-1)]))
		}
	})
}

// BenchmarkGrow shows how each batch operation grows with n: the time for one
// item stays the same, so the whole is linear in the number of items.
func BenchmarkGrow(b *testing.B) {
	for n := 1; n <= 1_000_000; n *= 10 {
		b.Run(fmt.Sprintf("op=assess/n=%d", n), func(b *testing.B) {
			cs := peers.Carcasses(n)
			out := make([]grade.Assessment, n)
			b.ResetTimer()
			for range b.N {
				for i := range cs {
					a, err := grade.Current.Assess(cs[i])
					if err != nil {
						b.Fatal(err)
					}
					out[i] = a
				}
			}
			perItem(b, n)
		})
	}
	items := 2
	for n := 3; n <= 10; n++ {
		items *= n
		b.Run(fmt.Sprintf("op=orders/n=%d", n), func(b *testing.B) {
			for range b.N {
				for o := range placing.Orders(n) {
					sinkInt += o.At(1)
				}
			}
			perItem(b, items)
		})
		b.Run(fmt.Sprintf("op=scores/n=%d", n), func(b *testing.B) {
			points := make([]int, n-1)
			for i := range points {
				points[i] = 2
			}
			cuts, err := placing.NewCuts(points...)
			if err != nil {
				b.Fatal(err)
			}
			list := make([]int, n)
			for i := range list {
				list[i] = i + 1
			}
			order, err := placing.NewOrder(list...)
			if err != nil {
				b.Fatal(err)
			}
			official, err := placing.NewOfficial(order, cuts)
			if err != nil {
				b.Fatal(err)
			}
			b.ResetTimer()
			for range b.N {
				for _, s := range official.Scores() {
					sinkInt += s
				}
			}
			perItem(b, items)
		})
	}
}

func perItem(b *testing.B, n int) {
	b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N)/float64(n), "ns/item")
}

// BenchmarkYear grades as many carcasses as a year of federally inspected steers
// and heifers, in one goroutine, keeping whole grades only.
func BenchmarkYear(b *testing.B) {
	const year = 25_000_000 // about, from memory
	cs := peers.Carcasses(many)
	for b.Loop() {
		for i := range year {
			a, err := grade.Current.Assess(cs[i&(many-1)])
			if err != nil {
				b.Fatal(err)
			}
			sinkInt += a.Yield.Grade()
		}
	}
	b.ReportMetric(year*float64(b.N)/b.Elapsed().Seconds(), "carcasses/s")
	b.ReportMetric((b.Elapsed() / time.Duration(b.N)).Seconds(), "s/year")
}
