package grid

import (
	"math"
	"runtime"
	"strconv"
	"sync"
	"testing"

	"example.com/ribface/grade"
	"github.com/google/go-cmp/cmp"
)

// classes are the three classifications of one value.
type classes struct{ Whole, FloorTenth, HalfUp int }

func classify(y float64) classes {
	tenths := float64(y * 10)
	return classes{int(math.Floor(y)), int(math.Floor(tenths)), int(math.Floor(tenths + 0.5))}
}

// differ counts, for each classification, whether two values fall apart.
func (c *classes) differ(a, b classes) {
	if a.Whole != b.Whole {
		c.Whole++
	}
	if a.FloorTenth != b.FloorTenth {
		c.FloorTenth++
	}
	if a.HalfUp != b.HalfUp {
		c.HalfUp++
	}
}

func (c *classes) add(d classes) {
	c.Whole += d.Whole
	c.FloorTenth += d.FloorTenth
	c.HalfUp += d.HalfUp
}

// Inputs that float programs often have: the index times the step, or the step
// added up.
type inputs struct {
	fat [fats]float64
	kph [kphs]float64
	hcw [weights]float64
	rea [ribeyes]float64
}

func indexTimesStep() (in inputs) {
	for i := range in.fat {
		in.fat[i] = float64(i) * 0.05
	}
	for i := range in.kph {
		in.kph[i] = float64(i) * 0.5
	}
	for i := range in.hcw {
		in.hcw[i] = 400 + float64(i)
	}
	for i := range in.rea {
		in.rea[i] = 7.0 + float64(float64(i)*0.1)
	}
	return in
}

func accumulated() (in inputs) {
	fill := func(to []float64, x, step float64) {
		for i := range to {
			to[i] = x
			x += step
		}
	}
	fill(in.fat[:], 0, 0.05)
	fill(in.kph[:], 0, 0.5)
	fill(in.hcw[:], 400, 1)
	fill(in.rea[:], 7.0, 0.1)
	return in
}

// single is the equation in float32 throughout, unfused.
func single(fat, kph, hcw, rea float32) float32 {
	return 2.50 + float32(2.50*fat) + float32(0.20*kph) + float32(0.0038*hcw) - float32(0.32*rea)
}

// classifySingle takes the float32 result apart in float64.
func classifySingle(y float32) classes { return classify(float64(y)) }

// paths is what TestOtherPaths counts.
type paths struct {
	Index, Accumulated, Single classes // wrong

	Fixed int // wrong half-up tenths by strconv with one digit

	UnfusedAdds, UnfusedAll, AddsAll classes // pairs that fall apart
	NotAllAlike, SomeWrong           int     // whole grades of the three

	Window, WindowOnLine int // wrong, and on a whole grade, among usual fed cattle
}

func (p *paths) add(q paths) {
	p.Index.add(q.Index)
	p.Accumulated.add(q.Accumulated)
	p.Single.add(q.Single)
	p.Fixed += q.Fixed
	p.UnfusedAdds.add(q.UnfusedAdds)
	p.UnfusedAll.add(q.UnfusedAll)
	p.AddsAll.add(q.AddsAll)
	p.NotAllAlike += q.NotAllAlike
	p.SomeWrong += q.SomeWrong
	p.Window += q.Window
	p.WindowOnLine += q.WindowOnLine
}

func (p *paths) count(t *testing.T, k int, index, sum *inputs) {
	for f := range fats {
		for w := range weights {
			for r := range ribeyes {
				yield, err := measures(f, k, w, r).Yield()
				if err != nil {
					t.Error(err)
					return
				}
				e, err := ask(yield, false)
				if err != nil {
					t.Error(err)
					return
				}
				want := classes{e.floor, e.floorTenth, e.halfUp}
				fat, kph, hcw, rea := fatAt20[f], kphAt(k), weightAt(w), ribeyes10[r]
				a, b, c := unfused(fat, kph, hcw, rea), addsFused(fat, kph, hcw, rea), allFused(fat, kph, hcw, rea)
				ca, cb, cc := classify(a), classify(b), classify(c)
				p.UnfusedAdds.differ(ca, cb)
				p.UnfusedAll.differ(ca, cc)
				p.AddsAll.differ(cb, cc)
				if ca.Whole != cb.Whole || cb.Whole != cc.Whole {
					p.NotAllAlike++
				}
				if ca.Whole != want.Whole || cb.Whole != want.Whole || cc.Whole != want.Whole {
					p.SomeWrong++
				}
				p.Index.differ(want, classify(unfused(index.fat[f], index.kph[k], index.hcw[w], index.rea[r])))
				p.Accumulated.differ(want, classify(unfused(sum.fat[f], sum.kph[k], sum.hcw[w], sum.rea[r])))
				p.Single.differ(want, classifySingle(single(float32(fat), float32(kph), float32(hcw), float32(rea))))
				// One digit can only go wrong where the exact value is a tie. A zero with
				// a minus is a zero.
				if yield.Units()%(grade.OneGrade/20) == 0 {
					var buf [24]byte
					if text := string(strconv.AppendFloat(buf[:0], a, 'f', 1, 64)); text != tenthText(e.halfUp) && text != "-0.0" {
						p.Fixed++
					}
				}
				// Fat 0.20-1.00, KPH 1.5-4.0, weight 600-1,000, ribeye 10-17.
				if f >= 4 && f <= 20 && k >= 3 && k <= 8 && w >= 200 && w <= 600 && r >= 30 && r <= 100 {
					if yield.Units()%grade.OneGrade == 0 {
						p.WindowOnLine++
					}
					if ca.Whole != want.Whole {
						p.Window++
					}
				}
			}
		}
	}
}

func tenthText(n int) string {
	sign := ""
	if n < 0 {
		sign, n = "-", -n
	}
	return sign + strconv.Itoa(n/10) + "." + strconv.Itoa(n%10)
}

var (
	fatAt20   = func() (out [fats]float64) { fill(out[:], fatAt); return out }()
	ribeyes10 = func() (out [ribeyes]float64) { fill(out[:], ribeyeAt); return out }()
)

func fill(to []float64, at func(int) float64) {
	for i := range to {
		to[i] = at(i)
	}
}

// TestOtherPaths counts the other float paths on the whole grid, and where the
// three ways of fusing fall apart.
func TestOtherPaths(t *testing.T) {
	if !*whole {
		t.Skip("needs -grid")
	}
	index, sum := indexTimesStep(), accumulated()
	var got paths
	var mu sync.Mutex
	var wg sync.WaitGroup
	next := make(chan int)
	for range runtime.GOMAXPROCS(0) {
		wg.Add(1)
		go func() {
			defer wg.Done()
			for k := range next {
				var p paths
				p.count(t, k, &index, &sum)
				mu.Lock()
				got.add(p)
				mu.Unlock()
			}
		}()
	}
	for k := range kphs {
		next <- k
	}
	close(next)
	wg.Wait()
	want := paths{
		Index:        classes{3_820, 43_014, 41_999},
		Accumulated:  classes{1_329, 13_695, 13_667},
		Single:       classes{1_210, 32_590, 32_282},
		Fixed:        61_933,
		UnfusedAdds:  classes{1_491, 14_585, 14_358},
		UnfusedAll:   classes{2_881, 24_091, 23_671},
		AddsAll:      classes{1_524, 10_560, 10_413},
		NotAllAlike:  2_948,
		SomeWrong:    5_081,
		Window:       173,
		WindowOnLine: 588,
	}
	if d := cmp.Diff(want, got); d != "" {
		t.Errorf("(-want +got):\n%s", d)
	}
}
