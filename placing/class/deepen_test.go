package class

import (
	"testing"

	"example.com/ribface/placing"
)

// TestDeepenBottom holds what an obvious bottom gets, and from which cut.
func TestDeepenBottom(t *testing.T) {
	for _, tt := range []struct{ name, cuts, want string }{
		{"enough", "1-1-2", "1-1-2"},
		{"from the largest, first", "6-3-1", "5-3-2"},
		{"from the largest, last", "3-2-6-1", "3-2-5-2"},
		{"of equal ones nearest the middle", "4-4-1", "4-3-2"},
		{"of equal ones as near, the upper", "2-4-4-1", "2-3-4-2"},
		{"of equal ones the nearest of many", "3-1-3-3-3-1", "3-1-2-3-3-2"},
		{"two points, one after the other", "4-4-0", "3-3-2"},
		{"two points from one cut", "2-6-2-0", "2-4-2-2"},
		{"no last points in a class of six", "1-1-1-1-0", "1-1-1-1-0"},
		{"one point to give", "1-2-1-1-0", "1-1-1-1-1"},
		{"last points in a class of seven", "1-1-1-1-1-0", "1-1-0-0-1-2"},
		{"all that there is", "0-1-0-0-0-0", "0-0-0-0-0-1"},
		{"one pair", "1", "1"},
	} {
		t.Run(tt.name, func(t *testing.T) {
			if got := deepenBottom(placing.MustParseCuts(tt.cuts)); got.String() != tt.want {
				t.Errorf("%s gives %v, want %s", tt.cuts, got, tt.want)
			}
		})
	}
}
