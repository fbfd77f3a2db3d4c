package main

import (
	"fmt"
	"math"

	"example.com/ribface/examples/internal/say"
	"example.com/ribface/grade"
	"example.com/ribface/placing/season"
)

// leanings are the traits in which members lean, with the words for it. A lean is told
// where it is at least the slight one, in the unit of the trait, and twice what
// chance would give: our own choice.
var leanings = []struct {
	trait     grade.Trait
	name      string
	decimals  int
	slight    float64
	high, low string // how a member is told, with the amount in place of %s
}{
	{grade.TraitMarbling, "marbling", 0, 5, "You call marbling too high, by %s hundredths of a degree.", "You call marbling too low, by %s hundredths of a degree."},
	{grade.TraitFat, "fat", 2, 0.02, "You read fat too thick, by %s in.", "You read fat too thin, by %s in."},
	{grade.TraitRibeye, "ribeye", 1, 0.1, "You read the ribeye too large, by %s sq in.", "You read the ribeye too small, by %s sq in."},
	{grade.TraitKPH, "KPH", 1, 0.1, "You call too much KPH, by %s percent.", "You call too little KPH, by %s percent."},
	{grade.TraitYield, "yield", 1, 0.1, "Your yield grades come out too high, by %s.", "Your yield grades come out too low, by %s."},
}

// lean is a member's mean error in a trait.
type lean struct {
	known bool // enough estimates to say
	off   float64
}

// leanIn says which way a member leans in a trait; off is 0 for no lean to speak of.
func leanIn(c season.Calibration, trait grade.Trait, slight float64) lean {
	for _, t := range c.Traits {
		if t.Trait != trait || !t.Bias.OK() || !t.Spread.OK() {
			continue
		}
		chance := 2 * t.Spread.Value / math.Sqrt(float64(t.Bias.N))
		if size := math.Abs(t.Bias.Value); size < slight || size < chance {
			return lean{known: true}
		}
		return lean{true, t.Bias.Value}
	}
	return lean{}
}

// cells are the leans of a member as a row of the coach's table.
func (m *member) cells() (out []string) {
	for _, l := range leanings {
		switch is := leanIn(m.figures, l.trait, l.slight); {
		case !is.known:
			out = append(out, "")
		case is.off == 0:
			out = append(out, "true")
		default:
			out = append(out, fmt.Sprintf("%+.*f", l.decimals, is.off))
		}
	}
	return out
}

// told are the leans of a member in sentences.
func (m *member) told() (out []string) {
	var straight []string
	for _, l := range leanings {
		switch is := leanIn(m.figures, l.trait, l.slight); {
		case !is.known:
		case is.off > 0:
			out = append(out, fmt.Sprintf(l.high, fmt.Sprintf("%.*f", l.decimals, is.off)))
		case is.off < 0:
			out = append(out, fmt.Sprintf(l.low, fmt.Sprintf("%.*f", l.decimals, -is.off)))
		default:
			straight = append(straight, l.name)
		}
	}
	if straight != nil {
		out = append(out, "No lean to speak of in "+say.And(straight...)+".")
	}
	return out
}
