package placing_test

import (
	"testing"

	"example.com/ribface/placing"
)

var sinkScore int

// BenchmarkScore times the scoring of a card of four exhibits.
func BenchmarkScore(b *testing.B) {
	official, err := placing.NewOfficial(placing.MustParseOrder("3-2-1-4"), placing.MustParseCuts("2-8-2"))
	if err != nil {
		b.Fatal(err)
	}
	var cards []placing.Order
	for o := range placing.Orders(4) {
		cards = append(cards, o)
	}
	b.ReportAllocs()
	b.ResetTimer()
	sum := 0
	for i := range b.N {
		s, err := official.Score(cards[i&15])
		if err != nil {
			b.Fatal(err)
		}
		sum += s
	}
	sinkScore = sum
}
