package contest_test

import (
	"bytes"
	"fmt"
	"io"
	"iter"
	"math/rand/v2"
	"slices"
	"testing"
	"time"

	"example.com/ribface/grade"
	"example.com/ribface/grade/sheet"
	"example.com/ribface/maturity"
	"example.com/ribface/placing"
	"example.com/ribface/placing/contest"
)

// big makes an invented contest of 12 placing classes and 12 grading classes of 10
// carcasses, and the cards of so many members in teams of four: 12 placings and 120
// estimates of quality and yield each.
func big(t testing.TB, members int) (*contest.Contest, []contest.PlacingCard, []contest.Estimate) {
	t.Helper()
	r := rand.New(rand.NewPCG(7, 11))
	rungs := contest.ChartQualities(grade.Current, maturity.A)
	ladder, err := evenLadder(pts(10), pts(2), rungs)
	if err != nil {
		t.Fatal(err)
	}
	orders := slices.Collect(placing.Orders(4))
	var placed, graded []string
	var officials []contest.OfficialPlacing
	var facts []contest.OfficialFacts
	fact := func() contest.Facts {
		return contest.Facts{Quality: rungs[r.IntN(len(rungs))], Yield: grade.YieldUnits(int64(r.IntN(500)) * grade.OneGrade / 100)}
	}
	for k := range 12 {
		placed, graded = append(placed, fmt.Sprint("class ", k+1)), append(graded, fmt.Sprint("grading ", k+1))
		officials = append(officials, contest.OfficialPlacing{Class: placed[k], Order: orders[r.IntN(24)], Cuts: placing.MustParseCuts("4-5-3")})
		for e := range 10 {
			facts = append(facts, contest.OfficialFacts{Class: graded[k], Exhibit: e + 1, Facts: fact()})
		}
	}
	c, err := contest.NewContest("", contest.Format{
		Components: []contest.Component{
			{Name: "placings", Kind: contest.KindPlacing, Classes: placed, Value: pts(600)},
			{Name: "quality", Kind: contest.KindQuality, Classes: graded, Value: pts(1200)},
			{Name: "yield", Kind: contest.KindYield, Classes: graded, Value: pts(1200)},
		},
		TeamMembers: 4, Counting: 3,
		Ties:     []contest.TieBreak{{Components: []string{"placings"}}},
		TeamTies: []contest.TieBreak{{Components: []string{"placings"}}},
	}, contest.Scoring{
		Quality: contest.QualityRule{Ladder: ladder},
		Yield:   contest.YieldRule{Step: contest.Tenths, Rounding: grade.HalfUp, Value: pts(10), Each: pts(1)},
	}, officials, facts)
	if err != nil {
		t.Fatal(err)
	}
	var placings []contest.PlacingCard
	var estimates []contest.Estimate
	for i := range members {
		m := contest.Member{ID: fmt.Sprint(i + 1), Team: fmt.Sprint("team ", i/4+1), Division: []string{"junior", "senior"}[i%2]}
		for k := range 12 {
			placings = append(placings, contest.PlacingCard{Class: placed[k], Member: m, Card: placing.Card{Order: orders[r.IntN(24)]}})
			for e := range 10 {
				estimates = append(estimates, contest.Estimate{Class: graded[k], Exhibit: e + 1, Member: m, Facts: fact()})
			}
		}
	}
	return c, placings, estimates
}

func run(t testing.TB, c *contest.Contest, placings []contest.PlacingCard, estimates []contest.Estimate) contest.Standings {
	tally := c.Tally()
	for i := range placings {
		item, err := c.Placing(placings[i])
		if err == nil {
			err = tally.Add(item)
		}
		if err != nil {
			t.Fatal(err)
		}
	}
	for i := range estimates {
		q, y, err := c.Estimate(estimates[i])
		if err == nil {
			err = tally.Add(q, y)
		}
		if err != nil {
			t.Fatal(err)
		}
	}
	s, err := tally.Standings(contest.View{})
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// TestShuffle: the order of the cards changes no byte of the standings.
func TestShuffle(t *testing.T) {
	c, placings, estimates := big(t, 40)
	want := run(t, c, placings, estimates).String()
	for seed := range uint64(5) {
		r := rand.New(rand.NewPCG(seed, 1))
		r.Shuffle(len(placings), func(i, j int) { placings[i], placings[j] = placings[j], placings[i] })
		r.Shuffle(len(estimates), func(i, j int) { estimates[i], estimates[j] = estimates[j], estimates[i] })
		if got := run(t, c, placings, estimates).String(); got != want {
			t.Fatalf("shuffle %d changed the standings", seed)
		}
	}
}

// BenchmarkContest scores and ranks a contest of 1,000 members, 12 placing classes
// and 12 grading classes of 10 carcasses: 12,000 placings, 120,000 cards with a
// quality and a yield each.
func BenchmarkContest(b *testing.B) {
	c, placings, estimates := big(b, 1000)
	b.ReportAllocs()
	for b.Loop() {
		if s := run(b, c, placings, estimates); len(s.Members) != 1000 || len(s.Teams) != 250 {
			b.Fatal("members or teams are missing")
		}
	}
}

// BenchmarkSheets times reading one row of each sheet of a contest beside one row of
// a sheet of carcasses, turn by turn, so that what else the machine does falls on all
// alike. It reports the nanoseconds and allocations of each.
func BenchmarkSheets(b *testing.B) {
	const rows = 10_000
	var kinds []string
	var reads []func(*testing.B)
	add := func(kind string, read func(*testing.B)) { kinds, reads = append(kinds, kind), append(reads, read) }
	carcasses, cards, keys, placed := carcassRows(b, rows), new(bytes.Buffer), new(bytes.Buffer), new(bytes.Buffer)
	facts := func(i int) contest.Facts {
		n := int64(i)
		return contest.Facts{Skeletal: maturity.A.At(20 + i%70), Lean: maturity.A.At(20 + i%60), Maturity: maturity.A.At(20 + i%65),
			Marbling: grade.Slight.At(i % 100), Quality: grade.Select.Part(grade.High), Fat: grade.ThicknessUnits(2000 + 500*(n%17)),
			Ribeye: grade.AreaUnits(100_000 + 1000*(n%71)), KPH: grade.ShareUnits(15_000 + 5000*(n%6)),
			Weight: grade.WeightUnits(6_000_000 + 10_000*(n%401)), Yield: grade.YieldUnits((200 + n%200) * grade.OneGrade / 100)}
	}
	who := func(i int) contest.Member {
		return contest.Member{ID: fmt.Sprint("member ", i/100), Team: fmt.Sprint("team ", i/400), Division: "senior"}
	}
	writeAll(b, contest.EstimateSheet(), cards, rows, func(i int) contest.Estimate {
		return contest.Estimate{Contest: "invented", Class: fmt.Sprint("class ", i/10%10), Exhibit: i%10 + 1, Member: who(i), Facts: facts(i)}
	})
	writeAll(b, contest.KeySheet(), keys, rows, func(i int) contest.OfficialFacts {
		return contest.OfficialFacts{Contest: "invented", Class: fmt.Sprint("class ", i/10), Exhibit: i%10 + 1, Facts: facts(i)}
	})
	writeAll(b, contest.PlacingSheet(), placed, rows, func(i int) contest.PlacingCard {
		return contest.PlacingCard{Contest: "invented", Class: fmt.Sprint("class ", i%10), Member: who(i), Card: placing.Card{Order: placing.MustParseOrder("3-2-1-4")}}
	})
	add("carcass", func(b *testing.B) {
		r, err := sheet.NewReader(bytes.NewReader(carcasses))
		if err != nil {
			b.Fatal(err)
		}
		readAll(b, rows, r.Rows())
	})
	add("estimate", func(b *testing.B) { readAll(b, rows, contest.EstimateSheet().Read(bytes.NewReader(cards.Bytes()))) })
	add("key", func(b *testing.B) { readAll(b, rows, contest.KeySheet().Read(bytes.NewReader(keys.Bytes()))) })
	add("placing", func(b *testing.B) { readAll(b, rows, contest.PlacingSheet().Read(bytes.NewReader(placed.Bytes()))) })
	took, turns := make([]time.Duration, len(reads)), 0
	for b.Loop() {
		turns++
		for i, read := range reads {
			start := time.Now()
			read(b)
			took[i] += time.Since(start)
		}
	}
	for i, kind := range kinds {
		b.ReportMetric(float64(took[i].Nanoseconds())/float64(turns*rows), kind+"-ns/row")
		b.ReportMetric(testing.AllocsPerRun(1, func() { reads[i](b) })/rows, kind+"-allocs/row")
	}
}

func readAll[T any](b *testing.B, want int, rows iter.Seq2[T, error]) {
	n := 0
	for _, err := range rows {
		if err != nil {
			b.Fatal(err)
		}
		n++
	}
	if n != want {
		b.Fatal(n, "rows")
	}
}

func writeAll[T any](b *testing.B, s contest.Sheet[T], w io.Writer, rows int, row func(int) T) {
	if err := s.Write(w, func(yield func(T) bool) {
		for i := 0; i < rows && yield(row(i)); i++ {
		}
	}); err != nil {
		b.Fatal(err)
	}
}

// carcassRows makes a sheet of carcasses.
func carcassRows(b *testing.B, rows int) []byte {
	var out bytes.Buffer
	w, err := sheet.NewWriter(&out)
	if err != nil {
		b.Fatal(err)
	}
	for i := range rows {
		n := int64(i)
		if err := w.Write(sheet.Row{ID: fmt.Sprint("x", 1_000_000+i), Carcass: grade.Carcass{Sex: grade.Steer,
			Maturity: maturity.Evidence{Skeletal: maturity.A.At(20 + i%70), Lean: maturity.A.At(20 + i%60)}, Marbling: grade.Slight.At(i % 100),
			Measures: grade.Measures{Fat: grade.ThicknessUnits(2000 + 500*(n%17)), Ribeye: grade.AreaUnits(100_000 + 1000*(n%71)),
				KPH: grade.ShareUnits(15_000 + 5000*(n%6)), Weight: grade.WeightUnits(6_000_000 + 10_000*(n%401))}}}); err != nil {
			b.Fatal(err)
		}
	}
	if err := w.Flush(); err != nil {
		b.Fatal(err)
	}
	return out.Bytes()
}
