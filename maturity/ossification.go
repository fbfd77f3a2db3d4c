package maturity

import (
	"iter"
	"slices"
	"strconv"

	"example.com/ribface/internal/text/fixed"
	"example.com/ribface/maturity/cite"
)

// OssificationPoint ties a score to the percent of the thoracic buttons that has
// turned to bone.
type OssificationPoint struct {
	Score   Score         `json:"score"`
	Percent int           `json:"percent"`
	Cite    cite.Citation `json:"cite"`
}

var ossification = [...]OssificationPoint{
	{A.At(0), 0, cite.Citation{Standing: cite.Published, IDs: "uni-grading-slides"}},
	{B.At(0), 10, cite.Citation{Standing: cite.Published, IDs: "uni-grading-slides"}},
	{C.At(0), 35, cite.Citation{Standing: cite.Published, IDs: "uni-grading-slides"}},
	{D.At(0), 70, cite.Citation{Standing: cite.Memory}},
	{E.At(0), 90, cite.Citation{Standing: cite.Memory}},
	{E.At(100), 100, cite.Citation{Standing: cite.Derived}},
}

// OssificationPoints yields the points of the scale: 0, 10 and
// 35 percent for A00, B00 and C00 are published (uni-grading-slides), 70 and 90
// for D00 and E00 are from memory, 100 for E100 is the end of the scale.
func OssificationPoints() iter.Seq[OssificationPoint] { return slices.Values(ossification[:]) }

// FromOssification returns the skeletal score that goes with the percent of the
// thoracic buttons that has turned to bone, 0 to 100, by straight lines between
// the [OssificationPoints], rounded half up to a unit (derived). Buttons are the
// weightiest of the skeletal signs and not the only one (published:
// enc-maturity), so this is a start for the eye and no finding.
func FromOssification(percent int) (Score, error) {
	if percent < 0 || percent > 100 {
		return 0, &FieldError{Field: "ossification", Value: strconv.Itoa(percent) + "%", Allowed: "0% to 100%", Err: ErrRange}
	}
	i := 1
	for percent > ossification[i].Percent {
		i++
	}
	lo, hi := ossification[i-1], ossification[i]
	span, wide := hi.Percent-lo.Percent, int(hi.Score-lo.Score)
	return lo.Score + Score(share(wide*(percent-lo.Percent), span)), nil
}

// Ossification returns the percent of the thoracic buttons that goes with the
// score, by the same straight lines, rounded half up to a whole percent
// (derived). It reports false for a score that is not valid.
func (s Score) Ossification() (percent int, ok bool) {
	if !s.IsValid() {
		return 0, false
	}
	i := 1
	for s > ossification[i].Score {
		i++
	}
	lo, hi := ossification[i-1], ossification[i]
	span, wide := hi.Percent-lo.Percent, int(hi.Score-lo.Score)
	return lo.Percent + share(span*int(s-lo.Score), wide), true
}

// share is n/d, halves up.
func share(n, d int) int { return int(fixed.Divide(int64(n), int64(d), fixed.HalfUp)) }
