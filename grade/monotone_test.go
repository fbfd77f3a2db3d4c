package grade_test

import (
	"fmt"
	"maps"
	"testing"

	"example.com/ribface/grade"
	"example.com/ribface/internal/testkit"
	"example.com/ribface/maturity"
	gocmp "github.com/google/go-cmp/cmp"
)

// quality grades a carcass that has bone and lean at one score.
func quality(t *testing.T, e grade.Edition, s grade.Sex, overall maturity.Score, m grade.Marbling, lean grade.Lean) grade.Quality {
	q, err := e.Quality(grade.Carcass{Sex: s, Maturity: maturity.Evidence{Skeletal: overall, Lean: overall}, Marbling: m, Lean: lean})
	if err != nil {
		t.Helper() // asked for every carcass it would take longer than the grade
		t.Fatal(err)
	}
	return q
}

// charts are the editions whose charts differ; those after 1997 keep its chart.
var charts = []grade.Edition{grade.Edition1975, grade.Edition1987, grade.Edition1997}

const (
	leastMarbling, mostMarbling = grade.Marbling(100), grade.Marbling(1100)
	youngest, oldest            = maturity.Score(100), maturity.Score(600)
)

// stride is the step through the scores or the marblings: n, and longer in a sample.
func stride(n maturity.Score) maturity.Score {
	if !testkit.Exhaustive() {
		return 7 * n
	}
	return n
}

// counts leaves of counts what a sample can be held to: what was met, not how often.
func counts(of map[string]int) map[string]int {
	if !testkit.Exhaustive() {
		for name := range of {
			of[name] = 1
		}
	}
	return of
}

// TestMoreMarblingNeverLowers holds over every chart, sex class, score, firmness
// and marbling that more marbling never lowers the grade of a carcass that is no
// dark cutter.
func TestMoreMarblingNeverLowers(t *testing.T) {
	for _, e := range charts {
		for s := range grade.Sexes() {
			for overall := youngest; overall <= oldest; overall += stride(17) {
				for firm := grade.Firmness(0); firm <= grade.Firm; firm++ {
					last := grade.Quality(0)
					for m := leastMarbling; m <= mostMarbling; m++ {
						q := quality(t, e, s, overall, m, grade.Lean{Firmness: firm})
						if q < last {
							t.Fatalf("%v %v %v %v: %v has %v, less marbling %v", e, s, overall, firm, m, q, last)
						}
						last = q
					}
				}
			}
		}
	}
}

// TestDarkCutterMayLoseByMarbling holds where more marbling lowers the grade of a
// dark cutter, and that it does nowhere else: at the line above Standard alone.
// The best Standard can lose half a grade and the carcass on the line above it a
// full one, so a dark cutter just over the line may end below one just under it.
// Below are the drops by edition and step of dark cutting, with how many of the
// scores have it; a third and two thirds go where the taught thirds go, and drop
// none but where Select is closed. Nothing is lost between Prime, Choice and Select, nor between
// Commercial and Utility.
func TestDarkCutterMayLoseByMarbling(t *testing.T) {
	got := map[string]int{}
	for _, e := range charts {
		for d := grade.DarkThird; d <= grade.DarkFull; d++ {
			for overall := youngest; overall <= oldest; overall += stride(1) {
				drops := 0
				last := grade.Quality(0)
				for m := leastMarbling; m <= mostMarbling; m++ {
					q := quality(t, e, grade.Steer, overall, m, grade.Lean{Dark: d})
					if q < last {
						drops++
						got[fmt.Sprintf("%v, %v, %v: %v to %v", e, overall.Group(), d, last, q)]++
						// The line: one point less makes it Standard.
						under, over := quality(t, e, grade.Steer, overall, m-1, grade.Lean{}), quality(t, e, grade.Steer, overall, m, grade.Lean{})
						if under.Grade() != grade.Standard || over.Grade() <= grade.Standard {
							t.Errorf("%v %v %v at %v: the drop is between %v and %v", e, overall, d, m, under, over)
						}
					}
					last = q
				}
				if drops > 1 {
					t.Errorf("%v %v %v: %d drops", e, overall, d, drops)
				}
			}
		}
	}
	want := map[string]int{}
	for _, e := range charts {
		groups := []maturity.Group{maturity.A, maturity.B}
		if e == grade.Edition1997 {
			groups = groups[:1]
		}
		for _, g := range groups {
			want[fmt.Sprintf("%v, %v, full: Average Standard to Low Standard", e, g)] = 100
		}
	}
	// With Select closed the line above Standard in B is that of Choice. One third
	// stays in High Standard on both sides of it.
	want["1997, B, two thirds: High Standard to Standard"] = 100
	want["1997, B, full: High Standard to Standard"] = 98
	if diff := gocmp.Diff(counts(want), counts(got)); diff != "" {
		t.Errorf("(-want +got)\n%s", diff)
	}
}

// TestOlderNeverRaises holds over every chart, sex class, firmness and marbling
// that an overall score one unit older never raises the grade of a carcass that
// is no dark cutter.
func TestOlderNeverRaises(t *testing.T) {
	for _, e := range charts {
		for s := range grade.Sexes() {
			for firm := grade.Firmness(0); firm <= grade.Firm; firm++ {
				for m := leastMarbling; m <= mostMarbling; m += grade.Marbling(stride(13)) {
					last := grade.Quality(255)
					for overall := youngest; overall <= oldest; overall++ {
						q := quality(t, e, s, overall, m, grade.Lean{Firmness: firm})
						if q > last {
							t.Fatalf("%v %v %v %v: %v has %v, one unit younger %v", e, s, m, firm, overall, q, last)
						}
						last = q
					}
				}
			}
		}
	}
}

// TestOlderDarkCutterMayGain holds where an overall score one unit older raises
// the grade of a dark cutter, and that it does nowhere else: within B, where the
// line above Standard rises with age and the carcass falls under it, losing half
// a grade in place of a full one; and, from 1997, from A99 to B00, where Choice is
// 200 points wide in place of 300 and a share of it is fewer points.
func TestOlderDarkCutterMayGain(t *testing.T) {
	got := map[string]int{}
	for _, e := range charts {
		for d := grade.DarkThird; d <= grade.DarkFull; d++ {
			for m := leastMarbling; m <= mostMarbling; m += grade.Marbling(stride(1)) {
				last := grade.Quality(255)
				for overall := youngest; overall <= oldest; overall++ {
					q := quality(t, e, grade.Steer, overall, m, grade.Lean{Dark: d})
					if q > last {
						where := overall.Group().String()
						if overall.Units() == 0 {
							where = (overall - 1).Group().String() + " to " + where
						}
						got[fmt.Sprintf("%v, %s, %v: %v to %v", e, where, d, last, q)]++
					}
					last = q
				}
			}
		}
	}
	want := map[string]int{
		"1997, A to B, one third: Average Choice to High Choice":  33,
		"1997, A to B, one third: Low Choice to Average Choice":   33,
		"1997, A to B, two thirds: Average Choice to High Choice": 50,
		"1997, A to B, two thirds: Low Choice to Average Choice":  66,
		"1997, A to B, full: Average Choice to High Choice":       50,
		"1997, A to B, full: Low Choice to Average Choice":        100,
		// The part of Standard that starts at the rising minimum has no name in B
		// from 1997; a dark Choice that falls into it comes back over Slight00.
		"1997, B, one third: Standard to High Standard":  16,
		"1997, B, two thirds: Standard to High Standard": 66,
		"1997, B, full: Standard to High Standard":       56,
	}
	for _, e := range charts[:2] {
		want[fmt.Sprintf("%v, B, full: Low Standard to Average Standard", e)] = 99
	}
	if diff := gocmp.Diff(counts(want), counts(got)); diff != "" {
		t.Errorf("(-want +got)\n%s", diff)
	}
}

// TestOlderSkeletonNeverRaises holds over bone and lean apart that an older
// skeleton never raises the grade of a carcass that is no dark cutter, with and
// without the age by teeth.
func TestOlderSkeletonNeverRaises(t *testing.T) {
	for _, e := range []grade.Edition{grade.Edition1987, grade.Edition2016, grade.Edition2017} {
		for s := range grade.Sexes() {
			for _, teeth := range []maturity.Teeth{0, maturity.Incisors(2), maturity.Incisors(4)} {
				for lean := youngest; lean <= oldest; lean += stride(40) {
					for m := leastMarbling; m <= mostMarbling; m += 97 {
						last := grade.Quality(255)
						for bone := youngest; bone <= oldest; bone++ {
							q, err := e.Quality(grade.Carcass{Sex: s, Maturity: maturity.Evidence{Skeletal: bone, Lean: lean, Teeth: teeth}, Marbling: m})
							if err != nil {
								t.Fatal(err)
							}
							if q > last {
								t.Fatalf("%v %v %v, lean %v, %v: bone %v has %v, one unit younger %v", e, s, teeth, lean, m, bone, q, last)
							}
							last = q
						}
					}
				}
			}
		}
	}
}

// TestOlderLeanMayGain holds that older lean raises a grade only where it crosses
// 40 units from bone, where the balance itself goes back (see the tests of
// maturity), and shows one such carcass.
func TestOlderLeanMayGain(t *testing.T) {
	gains := 0
	for bone := youngest; bone <= oldest; bone += stride(3) {
		for m := leastMarbling; m <= mostMarbling; m += 17 {
			last := grade.Quality(255)
			for lean := youngest; lean <= oldest; lean++ {
				q, err := grade.Current.Quality(grade.Carcass{Sex: grade.Steer, Maturity: maturity.Evidence{Skeletal: bone, Lean: lean}, Marbling: m})
				if err != nil {
					t.Fatal(err)
				}
				if q > last {
					gains++
					if gap := bone - lean; gap != 40 && gap != -41 {
						t.Fatalf("bone %v, %v: lean %v has %v, one unit younger %v", bone, m, lean, q, last)
					}
				}
				last = q
			}
		}
	}
	if gains == 0 {
		t.Error("no carcass gains, though the balance goes back")
	}
	c := carcass("A79", "Sl50")
	c.Maturity.Lean = maturity.B.At(19) // 40 apart: A99
	wantQuality(t, grade.Current, c, "High Select", "40 units apart")
	c.Maturity.Skeletal, c.Maturity.Lean = maturity.A.At(81), maturity.B.At(21) // 40 apart: B01
	wantQuality(t, grade.Current, c, "High Standard", "40 units apart")
	c.Maturity.Lean = maturity.B.At(22) // 41 apart: A91
	wantQuality(t, grade.Current, c, "High Select", "41 units apart, moved toward bone")
}

// TestFirmerNeverLowers holds over every chart, sex class, score and marbling
// that firmer lean never lowers the grade of a carcass that is no dark cutter,
// and that firm lean is graded as lean that nobody looked at.
func TestFirmerNeverLowers(t *testing.T) {
	for _, e := range charts {
		for s := range grade.Sexes() {
			for overall := youngest; overall <= oldest; overall += stride(7) {
				for m := leastMarbling; m <= mostMarbling; m += 3 {
					last := grade.Quality(0)
					for firm := grade.VerySoft; firm <= grade.Firm; firm++ {
						q := quality(t, e, s, overall, m, grade.Lean{Firmness: firm})
						if q < last {
							t.Fatalf("%v %v %v %v: %v has %v, softer %v", e, s, overall, m, firm, q, last)
						}
						last = q
					}
					if q := quality(t, e, s, overall, m, grade.Lean{}); q != last {
						t.Fatalf("%v %v %v %v: firm has %v, not looked at %v", e, s, overall, m, last, q)
					}
				}
			}
		}
	}
}

// TestFirmerDarkCutterMayLose holds that firmer lean lowers the grade of a dark
// cutter only where it lifts it from Standard, which loses half a grade, to a
// grade that loses a full one.
func TestFirmerDarkCutterMayLose(t *testing.T) {
	losses := map[grade.Grade]int{}
	for _, e := range charts {
		for d := grade.DarkThird; d <= grade.DarkFull; d++ {
			for overall := youngest; overall <= oldest; overall += stride(7) {
				for m := leastMarbling; m <= mostMarbling; m += 3 {
					last := grade.Quality(0)
					for firm := grade.VerySoft; firm <= grade.Firm; firm++ {
						q := quality(t, e, grade.Steer, overall, m, grade.Lean{Firmness: firm, Dark: d})
						if q < last {
							under := quality(t, e, grade.Steer, overall, m, grade.Lean{Firmness: firm - 1})
							over := quality(t, e, grade.Steer, overall, m, grade.Lean{Firmness: firm})
							losses[under.Grade()]++
							if over.Grade() <= under.Grade() {
								t.Fatalf("%v %v %v %v %v: from %v to %v", e, d, overall, m, firm, under, over)
							}
						}
						last = q
					}
				}
			}
		}
	}
	for g := range maps.Keys(losses) {
		if g != grade.Standard {
			t.Errorf("%d losses on leaving %v", losses[g], g)
		}
	}
	if losses[grade.Standard] == 0 {
		t.Error("no dark cutter loses by firmer lean")
	}
}

// TestDarkerNeverRaises holds over every chart, sex class, score and marbling
// that a darker cutter never has the higher grade, loses no more than one full
// grade, and that none falls out of the grades that it can lose in.
func TestDarkerNeverRaises(t *testing.T) {
	for _, e := range charts {
		for s := range grade.Sexes() {
			for overall := youngest; overall <= oldest; overall += stride(17) {
				for m := leastMarbling; m <= mostMarbling; m++ {
					before := quality(t, e, s, overall, m, grade.Lean{})
					last := before
					for d := grade.DarkThird; d <= grade.DarkFull; d++ {
						q := quality(t, e, s, overall, m, grade.Lean{Dark: d})
						if q > last {
							t.Fatalf("%v %v %v %v: %v has %v, lighter %v", e, s, overall, m, d, q, last)
						}
						last = q
					}
					switch from, to := before.Grade(), last.Grade(); from {
					case grade.Prime, grade.Choice, grade.Select, grade.Good:
						if to == from || to < grade.Standard {
							t.Fatalf("%v %v %v %v: a full reduction of %v gives %v", e, s, overall, m, before, last)
						}
					case grade.Standard, grade.Commercial:
						if to != from && to != grade.Utility {
							t.Fatalf("%v %v %v %v: a full reduction of %v gives %v", e, s, overall, m, before, last)
						}
					default:
						if last != before {
							t.Fatalf("%v %v %v %v: %v is reduced to %v", e, s, overall, m, before, last)
						}
					}
				}
			}
		}
	}
}
