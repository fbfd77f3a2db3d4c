package placing

import (
	"example.com/ribface/internal/text"
	"example.com/ribface/maturity/cite"
)

// Words names a published scale that puts cuts into words. The scales disagree
// at 3 and at 5 and 6, so a caller names one. The zero Words are not set.
type Words uint8

// The scales.
const (
	WordsColorado Words = 1 + iota // bands for 1-3, 4-5 and 6-8 (published: ext-colorado-1-619)
	WordsNebraska                  // bands for 1-2, 3-4, 5-6 and 7-8 (published: ext-nebraska-cards)
	WordsReasons                   // bands for 1-2, 3-4 and 5 and over (common practice: instr-reasons-scores)
)

var wordScales = text.Enum[Words]{Kind: "words for cuts", Names: []string{"", "colorado", "nebraska", "reasons"}}

// band is one band of a scale: the greatest cut in it and the words.
type band struct {
	to    int
	words string
}

var wordBands = [...][]band{
	WordsColorado: {{3, "close, difficult"}, {5, "moderate"}, {8, "very easy"}},
	WordsNebraska: {{2, "difficult"}, {4, "challenging but sortable"}, {6, "relatively easy"}, {8, "extremely easy"}},
	WordsReasons:  {{2, "tough pair"}, {4, "logical, recognizable differences"}, {maxCut, "very easy, obvious faults"}},
}

var wordCites = [...]cite.Citation{
	WordsColorado: {Standing: cite.Published, IDs: "ext-colorado-1-619"},
	WordsNebraska: {Standing: cite.Published, IDs: "ext-nebraska-cards"},
	WordsReasons:  {Standing: cite.CommonPractice, IDs: "instr-reasons-scores"},
}

// String gives the name of the scale; "unset" for zero.
func (w Words) String() string { return wordScales.String(w) }

// MarshalText gives the name; the zero value is empty text.
func (w Words) MarshalText() ([]byte, error) { return wordScales.Marshal(w) }

// UnmarshalText reads what [Words.String] writes, in any case; empty text gives the
// zero value. On error the receiver is left as it was.
func (w *Words) UnmarshalText(b []byte) error { return wordScales.Unmarshal(w, b) }

// Cite returns where the scale comes from; the zero Citation for one that is not
// set.
func (w Words) Cite() cite.Citation {
	if !wordScales.Valid(w) {
		return cite.Citation{}
	}
	return wordCites[w]
}

// Cut returns the scale's words for a cut. ok is false for a cut the scale has no
// words for: 0, over 8 on two of the scales, and any cut on a scale that is not
// set.
func (w Words) Cut(points int) (words string, ok bool) {
	if !wordScales.Valid(w) || points < 1 {
		return "", false
	}
	for _, b := range wordBands[w] {
		if points <= b.to {
			return b.words, true
		}
	}
	return "", false
}
