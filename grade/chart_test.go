package grade_test

import (
	"fmt"
	"strings"
	"testing"

	"example.com/ribface/grade"
	"example.com/ribface/maturity/cite"
	gocmp "github.com/google/go-cmp/cmp"
)

// The lines of the chart, column by column: group, grade, part, least marbling,
// whether it rises over the group, least firmness. The sources of each are in the
// references (maturity-and-quality, 4.2 to 4.4).
const (
	columnA1975 = `
A Prime Low SlAb00, moderately firm
A Prime Average MAb00, moderately firm
A Prime High Ab00, moderately firm
A Choice Low Sm00, slightly soft
A Choice Average Mt00, slightly soft
A Choice High Md00, slightly soft
A Good Low Sl00, moderately soft
A Good Average Sl34, moderately soft
A Good High Sl67, moderately soft
A Standard Low PD00, soft
A Standard Average PD67, soft
A Standard High Tr34, soft
A Utility whole Devoid00, soft
A Cutter whole Devoid00, unset`
	columnA1987 = `
A Prime Low SlAb00, moderately firm
A Prime Average MAb00, moderately firm
A Prime High Ab00, moderately firm
A Choice Low Sm00, slightly soft
A Choice Average Mt00, slightly soft
A Choice High Md00, slightly soft
A Select Low Sl00, moderately soft
A Select High Sl50, moderately soft
A Standard Low PD00, soft
A Standard Average PD67, soft
A Standard High Tr34, soft
A Utility whole Devoid00, soft
A Cutter whole Devoid00, unset`
	columnB1975 = `
B Prime Low SlAb00 rising, firm
B Prime Average MAb00 rising, firm
B Prime High Ab00 rising, firm
B Choice Low Sm00 rising, slightly firm
B Choice Average Mt00 rising, slightly firm
B Choice High Md00 rising, slightly firm
B Good Low Sl00 rising, slightly soft
B Good Average Sl34 rising, slightly soft
B Good High Sl67 rising, slightly soft
B Standard Low PD00 rising, moderately soft
B Standard Average PD67 rising, moderately soft
B Standard High Tr34 rising, moderately soft
B Utility whole Devoid00, soft
B Cutter whole Devoid00, unset`
	columnB1987 = `
B Prime Low SlAb00 rising, firm
B Prime Average MAb00 rising, firm
B Prime High Ab00 rising, firm
B Choice Low Sm00 rising, slightly firm
B Choice Average Mt00 rising, slightly firm
B Choice High Md00 rising, slightly firm
B Select Low Sl00 rising, slightly soft
B Select High Sl50 rising, slightly soft
B Standard Low PD00 rising, moderately soft
B Standard Average PD67 rising, moderately soft
B Standard High Tr34 rising, moderately soft
B Utility whole Devoid00, soft
B Cutter whole Devoid00, unset`
	columnB1997 = `
B Prime Low SlAb00 rising, firm
B Prime Average MAb00 rising, firm
B Prime High Ab00 rising, firm
B Choice Low Mt00, slightly firm
B Choice Average Mt00 rising, slightly firm
B Choice High Md00 rising, slightly firm
B Standard whole PD00 rising, moderately soft
B Standard High Sl00, moderately soft
B Utility whole Devoid00, soft
B Cutter whole Devoid00, unset`
	columnsCDE = `
C Commercial Low Sm00 rising, slightly firm
C Commercial Average Mt00 rising, slightly firm
C Commercial High Md00 rising, slightly firm
C Utility whole PD00 rising, moderately soft
C Cutter whole Devoid00, unset
D Commercial Low Mt00 rising, moderately firm
D Commercial Average Md00 rising, moderately firm
D Commercial High SlAb00 rising, moderately firm
D Utility whole Tr00 rising, slightly soft
D Cutter whole Devoid00, unset
E Commercial Low Md00 rising, firm
E Commercial Average SlAb00 rising, firm
E Commercial High MAb00 rising, firm
E Utility whole Sl00 rising, slightly firm
E Cutter whole Devoid00, unset`
)

// TestLines holds every line of every edition's chart: 1975 calls Select Good,
// 1997 asks for Modest in Choice B and closes Select to B, and nothing moves
// after that.
func TestLines(t *testing.T) {
	of := map[grade.Edition]string{
		grade.Edition1975: columnA1975 + columnB1975 + columnsCDE,
		grade.Edition1987: columnA1987 + columnB1987 + columnsCDE,
		grade.Edition1997: columnA1987 + columnB1997 + columnsCDE,
		grade.Edition2016: columnA1987 + columnB1997 + columnsCDE,
		grade.Edition2017: columnA1987 + columnB1997 + columnsCDE,
	}
	for e := range grade.Editions() {
		t.Run(e.String(), func(t *testing.T) {
			var got strings.Builder
			for l := range e.Lines() {
				rising := ""
				if l.Rises {
					rising = " rising"
				}
				fmt.Fprintf(&got, "\n%v %v %v %v%s, %v", l.Group, l.Grade, l.Part, l.At, rising, l.Firmness)
				for _, c := range []cite.Citation{l.Cite, l.FirmnessCite} {
					if known := len(c.Sources()); known != len(strings.Fields(c.IDs)) {
						t.Errorf("%v %v: %v has an unknown source", l.Group, l.Grade, c)
					}
				}
				if l.Cite.Standing == 0 || (l.FirmnessCite.Standing != 0) != (l.Firmness != 0) {
					t.Errorf("%v %v: cited as %v and %v", l.Group, l.Grade, l.Cite, l.FirmnessCite)
				}
			}
			if diff := gocmp.Diff(strings.Split(of[e], "\n"), strings.Split(got.String(), "\n")); diff != "" {
				t.Errorf("(-want +got)\n%s", diff)
			}
		})
	}
	for _, e := range []grade.Edition{0, 6} {
		for l := range e.Lines() {
			t.Fatalf("%v has the line %v", e, l)
		}
	}
}

// TestLinesStop holds that a loop over the lines may stop at each of them.
func TestLinesStop(t *testing.T) {
	total := 0
	for range grade.Current.Lines() {
		total++
	}
	for stop := 1; stop <= total; stop++ {
		n := 0
		for range grade.Current.Lines() {
			if n++; n == stop {
				break
			}
		}
		if n != stop {
			t.Fatalf("stopped after %d, want %d", n, stop)
		}
	}
}

// TestLineOn holds a flat and a rising line at both ends of a group.
func TestLineOn(t *testing.T) {
	flat, rising := grade.Line{At: grade.Small.At(0)}, grade.Line{At: grade.Small.At(0), Rises: true}
	for units, want := range map[int][2]string{0: {"Sm00", "Sm00"}, 1: {"Sm00", "Sm01"}, 99: {"Sm00", "Sm99"}, 100: {"Sm00", "Mt00"}} {
		if got := [2]string{flat.On(units).String(), rising.On(units).String()}; got != want {
			t.Errorf("%d units: %v, want %v", units, got, want)
		}
	}
}
