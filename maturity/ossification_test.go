package maturity_test

import (
	"slices"
	"testing"

	"example.com/ribface/internal/testkit/faulttest"
	"example.com/ribface/maturity"
	"example.com/ribface/maturity/cite"
	"github.com/google/go-cmp/cmp"
)

// TestOssificationPoints holds the points with their standing (uni-grading-slides
// for the first three; 70 and 90 from memory), and that the slice is fresh.
func TestOssificationPoints(t *testing.T) {
	slides := cite.Citation{Standing: cite.Published, IDs: "uni-grading-slides"}
	memory := cite.Citation{Standing: cite.Memory}
	want := []maturity.OssificationPoint{
		{maturity.A.At(0), 0, slides},
		{maturity.B.At(0), 10, slides},
		{maturity.C.At(0), 35, slides},
		{maturity.D.At(0), 70, memory},
		{maturity.E.At(0), 90, memory},
		{maturity.E.At(100), 100, cite.Citation{Standing: cite.Derived}},
	}
	if diff := cmp.Diff(want, slices.Collect(maturity.OssificationPoints())); diff != "" {
		t.Errorf("(-want +got)\n%s", diff)
	}
}

// TestFromOssification holds the straight lines between the points, each value
// worked out by hand.
func TestFromOssification(t *testing.T) {
	tests := []struct {
		percent int
		want    string
		reason  string
	}{
		{0, "A00", "first point"},
		{1, "A10", "ten units for each percent"},
		{9, "A90", "just below the second point"},
		{10, "B00", "second point"},
		{11, "B04", "four units for each percent"},
		{34, "B96", "just below the third point"},
		{35, "C00", "third point"},
		{36, "C03", "100 units over 35 percent: 2.857"},
		{37, "C06", "5.714"},
		{69, "C97", "97.143"},
		{70, "D00", "fourth point"},
		{71, "D05", "five units for each percent"},
		{90, "E00", "fifth point"},
		{99, "E90", "ten units for each percent"},
		{100, "E100", "the end of the scale"},
	}
	for _, tt := range tests {
		got, err := maturity.FromOssification(tt.percent)
		if err != nil || got.String() != tt.want {
			t.Errorf("%d%%: %v, %v; want %s: %s", tt.percent, got, err, tt.want, tt.reason)
		}
	}
	for percent, value := range map[int]string{-1: "-1%", 101: "101%"} {
		got, err := maturity.FromOssification(percent)
		if got != 0 {
			t.Errorf("%d%% gives %v", percent, got)
		}
		faulttest.Field(t, value, err, maturity.FieldError{Field: "ossification", Value: value, Allowed: "0% to 100%", Err: maturity.ErrRange})
	}
}

// TestOssification holds the way back at and between the points.
func TestOssification(t *testing.T) {
	tests := []struct {
		score   string
		percent int
		reason  string
	}{
		{"A00", 0, "first point"},
		{"A04", 0, "0.4"},
		{"A05", 1, "0.5 goes up"},
		{"A99", 10, "9.9"},
		{"B00", 10, "second point"},
		{"B01", 10, "10.25"},
		{"B02", 11, "10.5 goes up"},
		{"B50", 23, "22.5 goes up"},
		{"C00", 35, "third point"},
		{"C01", 35, "35.35"},
		{"C02", 36, "35.7"},
		{"D00", 70, "fourth point"},
		{"D50", 80, "half way"},
		{"E00", 90, "fifth point"},
		{"E100", 100, "the end of the scale"},
	}
	for _, tt := range tests {
		if got, ok := maturity.MustParse(tt.score).Ossification(); got != tt.percent || !ok {
			t.Errorf("%s: %d, %v; want %d: %s", tt.score, got, ok, tt.percent, tt.reason)
		}
	}
	for _, s := range []maturity.Score{0, 99, 601, maturity.A.At(101)} {
		if got, ok := s.Ossification(); got != 0 || ok {
			t.Errorf("%v gives %d, %v", s, got, ok)
		}
	}
}

// TestOssificationRoundTrip holds that every percent comes back from its score,
// and that both ways only rise.
func TestOssificationRoundTrip(t *testing.T) {
	var scores []maturity.Score
	for p := range 101 {
		s, err := maturity.FromOssification(p)
		if err != nil {
			t.Fatal(err)
		}
		scores = append(scores, s)
		if back, ok := s.Ossification(); back != p || !ok {
			t.Errorf("%d%% is %v, which is %d%%", p, s, back)
		}
	}
	if !slices.IsSorted(scores) {
		t.Error("more bone gives a younger score")
	}
	last := 0
	for s := maturity.A.At(0); s <= maturity.E.At(100); s++ {
		p, _ := s.Ossification()
		if p < last {
			t.Errorf("%v has less bone than the score before it", s)
		}
		last = p
	}
}
