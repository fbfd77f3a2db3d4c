// Package say holds words that the examples share: counts, yields as people read
// them, and the cautions.
package say

import (
	"fmt"
	"strings"

	"example.com/ribface/grade"
)

// Caution stands on every page.
const Caution = "For teaching and analysis. Only authorized federal graders assign official grades."

// Site goes with a caution wherever people are sent into a cooler.
const Site = "In coolers and plants the rules of the site come first."

// Count gives a number with its noun, as "1 class" or "3 classes".
func Count(n int, one, many string) string {
	if n == 1 {
		return "1 " + one
	}
	return fmt.Sprint(n, " ", many)
}

// Tenth gives a yield to one place, further decimals dropped, so that 2.96 never
// reads as 3.0.
func Tenth(y grade.Yield) string {
	return tenth(y, grade.Down)
}

// Nearest gives a yield to the nearest tenth, as contests score it.
func Nearest(y grade.Yield) string { return tenth(y, grade.HalfUp) }

func tenth(y grade.Yield, r grade.Rounding) string {
	d, err := y.Round(r, 1)
	if err != nil { // only for a rounding that is not set
		return y.String()
	}
	return d.Decimal().StringFixed(1)
}

// And joins words, as "fat", "fat and ribeye" or "fat, ribeye and KPH".
func And(words ...string) string {
	if n := len(words) - 1; n > 0 {
		return strings.Join(words[:n], ", ") + " and " + words[n]
	}
	return strings.Join(words, "")
}

// Wrap breaks words into lines of at most 78 characters, the later ones indented
// like the first word after the mark.
func Wrap(mark, words string) string {
	var b strings.Builder
	line := mark
	empty := true
	for _, w := range strings.Fields(words) {
		if !empty && len([]rune(line))+1+len([]rune(w)) > 78 {
			b.WriteString(line + "\n")
			line, empty = strings.Repeat(" ", len([]rune(mark))), true
		}
		if !empty {
			line += " "
		}
		line += w
		empty = false
	}
	return b.String() + line + "\n"
}

// words explains the trade's words to one who has never graded.
var words = map[string]string{
	"placing":       "the exhibits from the best to the last",
	"cuts":          "the points between neighbors in the placing, top pair first: what a card loses for having that pair the wrong way round; a small cut is a close pair",
	"card":          "a placing that a member hands in; a full score is 50",
	"edition":       "the federal standard as it was from some year on; the lines between grades have moved",
	"exhibit":       "one carcass of the class, by the number it hangs under",
	"quality grade": "how good the beef should eat, by marbling, maturity and firmness: Prime, Choice, Select, Standard, and others for old cattle; High, Average and Low are parts of a grade",
	"yield grade":   "how much trimmed meat to expect, 1 for the most to 5 for the least, from fat, ribeye, KPH and weight",
	"marbling":      "flecks of fat in the ribeye, as a degree and hundredths of it: Sm40 is Small and 40 hundredths",
	"maturity":      "how old the animal looks by bone and lean, A for the youngest to E, in hundredths",
	"fat":           "thickness of the fat opposite the ribeye, in inches",
	"ribeye":        "area of the muscle where the carcass is cut between the 12th and 13th rib, in square inches",
	"KPH":           "kidney, pelvic and heart fat, in percent of the carcass weight",
	"lean":          "the cut meat; its color and texture tell age too",
	"skeletal":      "age by bone and cartilage",
	"class":         "a few carcasses that hang side by side to be placed",
	"pair":          "two neighbors in the placing; the top pair are the first two",
	"officials":     "those who place the class first, each alone; what they agree on best is what cards are scored on",
	"close":         "a pair that officials may well differ on",
	"quality":       "the quality grade, how good the beef should eat: Prime, then Choice, then Select, then Standard, each with High, Average and Low",
	"yield":         "the yield grade to a tenth, further decimals dropped: how much trimmed meat to expect, 1 for the most to 5 for the least",
	"cutability":    "the same in one word: much trimmed meat, a low yield grade",
	"degrees":       "degrees of marbling from the least: Tr Traces, Sl Slight, Sm Small, Mt Modest, Md Moderate, SlAb Slightly Abundant, MAb Moderately Abundant",
	"walk":          "comparing the carcasses place by place from the round (the hind leg) down, for fat and muscle that the cut at the rib does not show",
	"dark cutter":   "a carcass whose lean is dark, which costs up to a grade",
	"posted weight": "one weight for all carcasses of a class, as if they weighed the same",
	"reasons":       "a spoken defense of a placing, scored by an official",
}

// Word explains one of the trade's words; a word that is not listed is empty.
func Word(word string) string { return words[word] }
