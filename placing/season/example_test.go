package season_test

import (
	"errors"
	"fmt"
	"log"

	"example.com/ribface/grade"
	"example.com/ribface/placing"
	"example.com/ribface/placing/contest"
	"example.com/ribface/placing/season"
)

// Estimates of ribeye against the official ones, in hundredths of a square inch:
// invented.
var ribeyes = []pair{{Estimate: 1250, Truth: 1190}, {Estimate: 1320, Truth: 1310}, {Estimate: 1180, Truth: 1200}, {Estimate: 1450, Truth: 1400}, {Estimate: 1390, Truth: 1360}, {Estimate: 1280, Truth: 1290}}

func sums() season.Errors {
	var s season.Errors
	for _, p := range ribeyes {
		if err := s.Add(p.Estimate, p.Truth); err != nil {
			log.Fatal(err)
		}
	}
	return s
}

func ExampleErrors() {
	s := sums()
	fmt.Println(s.Bias().N, "estimates")
	fmt.Println("bias", s.Bias())
	fmt.Println("spread", s.Spread())
	fmt.Println(s.Limits())
	fmt.Println("mean absolute", s.MeanAbsolute())
	fmt.Println("root mean square", s.RootMeanSquare())
	fmt.Println("correlation", s.Correlation())

	// Two halves of a season merge into the whole.
	twice := sums()
	twice.Merge(s)
	fmt.Println(twice.Bias().N, twice.Bias() == season.Figure{Value: s.Bias().Value, N: 12})
	// Output:
	// 6 estimates
	// bias 20.000
	// spread 32.249
	// -43.208 83.208
	// mean absolute 30.000
	// root mean square 35.590
	// correlation 0.947
	// 12 true
}

func ExampleFigure() {
	var s season.Errors
	fmt.Println(s.Add(3, 2))
	few := s.Bias() // one estimate is too few to speak of a bias
	fmt.Println(few.OK(), few, few.N, few.Reason)
	full := sums()
	fmt.Println(full.Bias().OK(), full.Bias().Text(1))
	// Output:
	// <nil>
	// false too few (1) 1 too few
	// true 20.0
}

func ExampleReason() {
	var s season.Errors
	for range 5 {
		if err := s.Add(3, 2); err != nil {
			log.Fatal(err)
		}
	}
	fmt.Println(s.Correlation().Reason == season.NoSpread, s.Correlation())
	// Output:
	// true no spread (5)
}

// Spearman's rho is the correlation of ranks: here those of the ribeyes above.
func ExampleErrors_Correlation() {
	var ranks season.Errors
	for _, p := range []pair{{Estimate: 2, Truth: 1}, {Estimate: 4, Truth: 4}, {Estimate: 1, Truth: 2}, {Estimate: 6, Truth: 6}, {Estimate: 5, Truth: 5}, {Estimate: 3, Truth: 3}} {
		if err := ranks.Add(p.Estimate, p.Truth); err != nil {
			log.Fatal(err)
		}
	}
	fmt.Println("values", sums().Correlation())
	fmt.Println("ranks", ranks.Correlation())
	// Output:
	// values 0.947
	// ranks 0.943
}

// agreed is a textbook table of two categories: 20 and 15 alike, 5 and 10
// not.
func agreed() season.Agreement {
	a, err := season.NewAgreement(2)
	if err != nil {
		log.Fatal(err)
	}
	for _, cell := range []struct{ answer, key, n int }{{0, 0, 20}, {0, 1, 5}, {1, 0, 10}, {1, 1, 15}} {
		for range cell.n {
			if err := a.Add(cell.answer, cell.key); err != nil {
				log.Fatal(err)
			}
		}
	}
	return a
}

func ExampleAgreement() {
	a := agreed()
	fmt.Println(a.Within(0).N, a.Count(1, 0), a.Within(0), a.Kappa(), a.LinearKappa(), a.QuadraticKappa())
	b := agreed()
	fmt.Println(b.Merge(a), b.Within(0).N, b.Kappa())
	fmt.Println(a.Add(2, 0))
	// Output:
	// 50 10 0.700 0.400 0.400 0.400
	// <nil> 100 0.400
	// category: 2: out of range; allowed: 0 to 1
}

func ExampleNewAgreement() {
	_, err := season.NewAgreement(1)
	fmt.Println(err)
	// Output:
	// categories: 1: out of range; allowed: 2 to 64
}

// panel holds the six targets and four judges of a published table
// (psychbull-1979-86-420).
func panel() season.Ratings {
	return season.Ratings{Values: [][]int64{{9, 2, 5, 8}, {6, 1, 3, 2}, {8, 4, 6, 8}, {7, 1, 2, 6}, {10, 5, 6, 9}, {6, 2, 4, 7}}}
}

func ExampleRatings() {
	i, err := panel().Intraclass()
	fmt.Println(i.ICC11.Text(4), i.ICC2k.Text(4), err)
	plain, corrected, err := panel().Concordance()
	fmt.Println(plain.Text(4), corrected.Text(4), err)
	// Output:
	// 0.1657 0.6201 <nil>
	// 0.8554 0.8870 <nil>
}

func ExampleIntraclass() {
	i, err := panel().Intraclass()
	if err != nil {
		log.Fatal(err)
	}
	for _, f := range []season.Figure{i.Between, i.Within, i.Judges, i.Error, i.ICC11, i.ICC21, i.ICC31, i.ICC1k, i.ICC2k, i.ICC3k} {
		fmt.Println(f.Text(4))
	}
	// Output:
	// 11.2417
	// 6.2639
	// 32.4861
	// 1.0194
	// 0.1657
	// 0.2898
	// 0.7148
	// 0.4428
	// 0.6201
	// 0.9093
}

func ExampleJudges() {
	j := season.Judges{}
	fmt.Println(j.Add("carcass 1", "ada", 41), j.Add("carcass 1", "ben", 44), j.Add("carcass 2", "ada", 52))
	fmt.Println(j.Add("carcass 1", "ada", 43))
	more := season.Judges{}
	fmt.Println(more.Add("carcass 2", "ben", 50), j.Merge(more))
	fmt.Printf("%+v\n", j.Ratings())
	// Output:
	// <nil> <nil> <nil>
	// exhibit "carcass 1": judge "ada": repeated; allowed: one value of each judge
	// <nil> <nil>
	// {Exhibits:[carcass 1 carcass 2] Judges:[ada ben] Values:[[41 44] [52 50]] Left:[]}
}

// pens is an invented official placing.
func pens() placing.Official {
	o, err := placing.NewOfficial(placing.MustParseOrder("3-2-1-4"), placing.MustParseCuts("2-8-2"))
	if err != nil {
		log.Fatal(err)
	}
	return o
}

// placed is a class with five cards.
func placed() season.ClassCards {
	c := season.NewClassCards(pens())
	for i, card := range []string{"3-2-1-4", "2-3-4-1", "3-1-2-4", "4-2-3-1", "2-3-1-4"} {
		// The second value is what the member scored on the rest of the contest.
		if err := c.Add(placing.MustParseOrder(card), contest.PointsOf(float64(280-20*i))); err != nil {
			log.Fatal(err)
		}
	}
	return c
}

func ExampleClassCards() {
	c := placed()
	fmt.Println(c.Exact().N, "cards")
	fmt.Println("exact", c.Exact(), "mean", c.MeanScore(), "difficulty", c.Difficulty(), "discrimination", c.Discrimination())
	for _, p := range c.Pairs() {
		if p.Neighbors {
			fmt.Println(p.Upper, "over", p.Lower, "cut", p.Points, "reversed by", p.Share)
		}
	}
	fmt.Println(c.Merge(placed()), c.Exact().N)
	// Output:
	// 5 cards
	// exact 0.200 mean 42.000 difficulty 0.182 discrimination 0.392
	// 3 over 2 cut 2 reversed by 0.600
	// 2 over 1 cut 8 reversed by 0.200
	// 1 over 4 cut 2 reversed by 0.400
	// <nil> 10
}

func ExampleNewClassCards() {
	var none placing.Official
	c := season.NewClassCards(none)
	fmt.Println(c.Add(placing.MustParseOrder("1-2-3-4"), contest.PointsOf(0)))
	// Output:
	// official placing: missing; allowed: an order of 2 to 12 exhibits
}

func ExamplePairShare() {
	for _, p := range placed().Pairs() {
		fmt.Println(p.Upper, p.Lower, p.Points, p.Neighbors, p.Share)
	}
	// Output:
	// 3 2 2 true 0.600
	// 3 1 10 false 0.000
	// 3 4 12 false 0.200
	// 2 1 8 true 0.200
	// 2 4 10 false 0.200
	// 1 4 2 true 0.400
}

// invented is a season of one member and twelve carcasses.
func invented() *season.Season {
	rungs := contest.CardQualities()
	s, err := season.NewSeason(rungs)
	if err != nil {
		log.Fatal(err)
	}
	o := pens()
	for i := range 12 {
		key := contest.Facts{Quality: rungs[3+i%4], Fat: grade.Inches(0.40 + 0.02*float64(i)), Yield: grade.YieldUnits(int64(25+i) * grade.OneGrade / 10)}
		card := contest.Facts{Quality: rungs[3+i%3], Fat: grade.Inches(0.45 + 0.02*float64(i)), Yield: grade.YieldUnits(int64(26+i+i%2) * grade.OneGrade / 10)}
		if err := errors.Join(s.Estimate("7", card, key), s.Placing("7", o, placing.Card{Order: placing.MustParseOrder("2-3-1-4")})); err != nil {
			log.Fatal(err)
		}
	}
	return s
}

func ExampleSeason() {
	s := invented()
	fmt.Println(s.Members())
	c, ok := s.Calibration("7")
	fmt.Println(ok)
	fmt.Print(c)
	fmt.Println(s.Merge(invented()))
	twice, _ := s.Calibration("7")
	fmt.Println(twice.Lost.N)
	// Output:
	// [7]
	// true
	// member 7
	//             trait    unit   n    bias  spread  lower limit  upper limit  mean absolute  root mean square  correlation
	//     quality grade   rungs  12   +0.50    1.45        -2.33        +3.33           1.17              1.47         0.00
	//               fat      in  12  +0.050   0.000       +0.050       +0.050          0.050             0.050         1.00
	//             yield  grades  12   +0.15    0.05        +0.05        +0.25           0.15              0.16         0.99
	//                 grade   n  right  one off or right  kappa  linear  quadratic
	//               quality  12   0.25              0.67   0.00    0.00       0.00
	//     whole yield grade  12   0.83              1.00   0.64    0.64       0.64
	//   placings 12: tau 0.67, share of points lost 0.05
	// <nil>
	// 24
}

func ExampleNewSeason() {
	_, err := season.NewSeason([]grade.Quality{grade.Choice.Part(grade.Low)})
	fmt.Println(err)
	// Output:
	// rungs: 1: out of range; allowed: 2 to 64
}

func ExampleCalibration() {
	c, _ := invented().Calibration("7")
	fmt.Println(c.Member, c.Lost.N, c.Tau, c.Lost)
	// Output:
	// 7 12 0.667 0.045
}

func ExampleTraitFigures() {
	c, _ := invented().Calibration("7")
	for _, t := range c.Traits {
		fmt.Println(t.Trait, t.Bias.N, t.Bias, t.Spread, t.MeanAbsolute, t.RootMeanSquare, t.Correlation)
	}
	// Output:
	// quality grade 12 0.500 1.446 1.167 1.472 0.000
	// fat 12 0.050 0.000 0.050 0.050 1.000
	// yield 12 0.150 0.052 0.150 0.158 0.990
}

func ExampleGradeFigures() {
	c, _ := invented().Calibration("7")
	fmt.Println(c.Quality.Exact.N, c.Quality.Exact, c.Quality.OneOff, c.Quality.Kappa, c.Quality.Linear, c.Quality.Quadratic)
	// Output:
	// 12 0.250 0.667 0.000 0.000 0.000
}

func ExampleFieldError() {
	var s season.Errors
	err := s.Add(2_000_000_000_000, 0)
	var fe *placing.FieldError
	fmt.Println(errors.As(err, &fe), fe.Field, fe.Allowed, errors.Is(err, placing.ErrRange))
	// Output:
	// true estimate -1,000,000,000,000 to 1,000,000,000,000 true
}
