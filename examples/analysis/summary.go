package main

import (
	"fmt"
	"io"
	"strconv"
	"strings"

	"example.com/ribface/grade"
	"example.com/ribface/grade/price"
	"github.com/shopspring/decimal"
)

// summary is what is known of a lot. It has the same size whatever the lot's.
type summary struct {
	graded, refused int

	tiers [grade.PrimeTier + 1][6]int // carcasses by tier and whole yield grade
	dark  int

	// Sums, in the units of package grade. A sum of a million carcasses is under
	// a thousandth of what they hold.
	fat, ribeye, kph, weight, marbling, yield int64

	priced int
	cwt    int64           // sum of the weights priced
	head   decimal.Decimal // sum of the values per head, exact
}

func (s *summary) add(a grade.Assessment, v price.Value, priced bool) {
	s.graded++
	s.tiers[a.Quality.Tier()][a.Yield.Grade()]++
	c := &a.Carcass
	if c.Lean.Dark != 0 {
		s.dark++
	}
	s.fat += int64(c.Measures.Fat + c.FatAdjust)
	s.ribeye += int64(c.Measures.Ribeye)
	s.kph += int64(c.Measures.KPH)
	s.weight += int64(c.Measures.Weight)
	s.marbling += int64(c.Marbling)
	s.yield += int64(a.Yield)
	if priced {
		s.priced++
		s.cwt += int64(v.Weight())
		s.head = s.head.Add(v.PerHead())
	}
}

// print writes the summary.
func (s *summary) print(out io.Writer, grid price.Grid) error {
	w := &strings.Builder{}
	line := func(name, value string) { fmt.Fprintf(w, "%-26s %s\n", name, value) }
	line("carcasses graded", grouped(s.graded))
	line("rows refused", grouped(s.refused))
	if s.graded == 0 {
		_, err := io.WriteString(out, w.String())
		return err
	}
	line("dark cutters", grouped(s.dark)+", "+share(s.dark, s.graded))

	fmt.Fprintf(w, "\n%-16s %11s %7s", "tier", "carcasses", "share")
	for y := 1; y <= 5; y++ {
		fmt.Fprintf(w, " %11s", "yield "+strconv.Itoa(y))
	}
	fmt.Fprintln(w)
	var all [6]int
	for t := grade.PrimeTier; t >= grade.BelowStandard; t-- {
		n := 0
		for y, c := range s.tiers[t] {
			n += c
			all[y] += c
		}
		s.row(w, t.String(), n, s.tiers[t])
	}
	s.row(w, "all", s.graded, all)
	fmt.Fprintf(w, "%-16s %11s %7s", "share", "", "")
	for y := 1; y <= 5; y++ {
		fmt.Fprintf(w, " %11s", share(all[y], s.graded))
	}
	fmt.Fprint(w, "\n\n")

	n := int64(s.graded)
	yield, err := grade.Yield(mean(s.yield, n)).Round(grade.HalfUp, 4)
	if err != nil {
		return err
	}
	line("mean fat, adjusted", grade.Thickness(mean(s.fat, n)).String())
	line("mean ribeye", grade.Area(mean(s.ribeye, n)).String())
	line("mean KPH", grade.Share(mean(s.kph, n)).String())
	line("mean hot carcass weight", grade.Weight(mean(s.weight, n)).String())
	line("mean marbling", grade.Marbling(mean(s.marbling, n)).String())
	line("mean yield", yield.String())

	t := grid.Terms()
	fmt.Fprintln(w)
	line("grid", t.Name+", base "+t.Base.StringFixed(2)+" per cwt")
	line("carcasses priced", grouped(s.priced))
	line("without a price", grouped(s.graded-s.priced))
	if s.priced > 0 {
		cwt := decimal.New(s.cwt, -6)
		line("total value", dollars(s.head))
		line("mean value per head", dollars(s.head.DivRound(decimal.NewFromInt(int64(s.priced)), 2)))
		line("mean price per cwt", dollars(s.head.DivRound(cwt, 2)))
	}
	_, err = io.WriteString(out, w.String())
	return err
}

func (s *summary) row(w *strings.Builder, name string, n int, by [6]int) {
	fmt.Fprintf(w, "%-16s %11s %7s", name, grouped(n), share(n, s.graded))
	for y := 1; y <= 5; y++ {
		fmt.Fprintf(w, " %11s", grouped(by[y]))
	}
	fmt.Fprintln(w)
}

// mean divides a sum by n, halves up.
func mean(sum, n int64) int64 {
	q, rest := sum/n, sum%n
	if rest < 0 {
		q, rest = q-1, rest+n
	}
	if 2*rest >= n {
		q++
	}
	return q
}

// share gives part of n in percent with one place, halves up.
func share(part, n int) string {
	tenths := int(mean(1000*int64(part), int64(n)))
	return strconv.Itoa(tenths/10) + "." + strconv.Itoa(tenths%10) + "%"
}

// dollars writes an amount to the cent.
func dollars(d decimal.Decimal) string {
	whole, cents, _ := strings.Cut(d.Abs().StringFixed(2), ".")
	sign := ""
	if d.IsNegative() {
		sign = "-"
	}
	return sign + "$" + thousands(whole) + "." + cents
}

// grouped writes a count with a comma between every three digits.
func grouped(n int) string { return thousands(strconv.Itoa(n)) }

func thousands(s string) string {
	for i := len(s) - 3; i > 0; i -= 3 {
		s = s[:i] + "," + s[i:]
	}
	return s
}
