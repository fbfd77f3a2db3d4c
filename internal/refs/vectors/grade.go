package vectors

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"example.com/ribface/grade"
	"example.com/ribface/internal/text"
	"example.com/ribface/maturity"
	"github.com/shopspring/decimal"
)

// inEditions grades the carcass in every edition and gives a vector for each run of
// editions with one result.
func inEditions(from string, in Object) ([]Vector, error) {
	c, err := carcass(in)
	if err != nil {
		return nil, err
	}
	var all []Vector
	was := ""
	for e := range grade.Editions() {
		a, err := quality(e, c)
		if err != nil {
			return nil, err
		}
		if now := fmt.Sprint(a); now == was {
			all[len(all)-1].Edition += " " + e.String()
		} else {
			all = append(all, Vector{From: from, Edition: e.String(), In: in})
			was = now
		}
	}
	return all, nil
}

func quality(e grade.Edition, c grade.Carcass) (Object, error) {
	at, err := grade.Rules{Edition: e}.Overall(c.Maturity)
	if err != nil {
		return nil, err
	}
	q, err := e.Quality(c)
	return Object{"maturity": at.String(), "quality": q.String(), "tier": q.Tier().String()}, err
}

// solveQuality grades in every edition that the vector names; all must agree.
func solveQuality(v Vector) (Object, error) {
	c, err := carcass(v.In)
	if err != nil {
		return nil, err
	}
	var out Object
	for name := range strings.FieldsSeq(v.Edition) {
		e, err := grade.ParseEdition(name)
		if err != nil {
			return nil, err
		}
		got, err := quality(e, c)
		if err != nil {
			return nil, err
		}
		if out != nil && fmt.Sprint(out) != fmt.Sprint(got) {
			return nil, fmt.Errorf("edition %s has %v, the one before %v", name, got, out)
		}
		out = got
	}
	return out, nil
}

const qualityRule = "The best grade open to the sex class whose line the marbling reaches at the overall maturity; its part by the part's line. Lines run straight from the young to the old end of a group, see references/grade-minima.csv. Open are all grades but to cows Prime and to bullocks Commercial, Cutter and Canner. A bull has no grade, and neither has a bullock with skeletal maturity over B00; other bullocks are graded by the lines of A."

var qualityFile = File{
	Name:   "quality",
	About:  "Quality grades on both sides of every line, in every edition, for every sex class, with bone and lean alike; then a part of the golden carcasses.",
	Rule:   qualityRule,
	Source: "ext-tamu-quality-es cfr-1987-54-p51 reprint-bullock-choice",
	solve:  solveQuality,
	inputs: func(t *tables) ([]Vector, error) {
		var all []Vector
		for sex := range grade.Sexes() {
			for _, at := range []maturity.Score{maturity.A.At(0), maturity.A.At(99), maturity.B.At(0), maturity.B.At(55), maturity.B.At(99), maturity.C.At(33), maturity.E.At(100)} {
				was := ""
				for m := grade.Devoid.At(0); m <= grade.Abundant.At(100); m++ {
					in := Object{"sex": sex.String(), "skeletal": at.String(), "lean": at.String(), "marbling": m.String()}
					c := grade.Carcass{Sex: sex, Maturity: maturity.Evidence{Skeletal: at, Lean: at}, Marbling: m}
					now := ""
					for e := range grade.Editions() {
						q, err := e.Quality(c)
						if err != nil {
							return nil, err
						}
						now += q.String() + ";"
					}
					if now != was && was != "" {
						below := Object{"sex": sex.String(), "skeletal": at.String(), "lean": at.String(), "marbling": (m - 1).String()}
						for _, in := range []Object{below, in} {
							some, err := inEditions("every marbling and maturity", in)
							if err != nil {
								return nil, err
							}
							all = append(all, some...)
						}
					}
					was = now
				}
			}
		}
		for i, g := range t.golden {
			if i%8 != 0 || Text(g.In, "firmness")+Text(g.In, "dark") != "" {
				continue
			}
			in := Object{}
			for _, k := range []string{"sex", "skeletal", "lean", "marbling", "incisors", "months"} {
				in[k] = Text(g.In, k)
			}
			some, err := inEditions(g.From, only(in))
			if err != nil {
				return nil, err
			}
			all = append(all, some...)
		}
		return all, nil
	},
}

var leanFile = File{
	Name:   "quality-lean",
	About:  "Quality grades with firmness and dark cutting.",
	Rule:   qualityRule + " A grade asks for its firmness too, see references/firmness-minima.csv; a carcass kept out by firmness alone stands at the top of the grade it reaches. A dark cutter loses so many thirds of the most that its grade can lose (a whole grade of Prime, Choice, Good or Select; half of Standard or Commercial; nothing of others), counted as its place in the grade, 0 at the foot and 1 at the top; what is under 0 goes on from the top of the next grade.",
	Source: "cfr-1965-53-p26 cfr-1987-54-p51",
	solve:  solveQuality,
	inputs: func(t *tables) ([]Vector, error) {
		var all []Vector
		rows, err := t.rows("dark-cutters.csv")
		if err != nil {
			return nil, err
		}
		for _, r := range rows {
			at := r.Get("group") + "00"
			v := stated(r, Object{"sex": "steer", "skeletal": at, "lean": at, "marbling": r.Get("marbling"), "dark": r.Get("step")})
			v.Edition = r.Get("editions")
			if _, err := solveQuality(v); err != nil { // one result for all editions named, or one each
				for e := range strings.FieldsSeq(v.Edition) {
					one := v
					one.Edition = e
					all = append(all, one)
				}
				continue
			}
			all = append(all, v)
		}
		for i, g := range t.golden {
			if Text(g.In, "firmness")+Text(g.In, "dark") == "" || i%2 != 0 {
				continue
			}
			in := Object{}
			for _, k := range []string{"sex", "skeletal", "lean", "marbling", "incisors", "months", "firmness", "dark"} {
				in[k] = Text(g.In, k)
			}
			some, err := inEditions(g.From, only(in))
			if err != nil {
				return nil, err
			}
			all = append(all, some...)
		}
		return all, nil
	},
}

// float64Grade is the whole grade as the plain formula has it. Products are wrapped, so
// that no processor fuses them with the sums.
func float64Grade(fat, kph, weight, ribeye float64) int {
	y := 2.5 + float64(2.5*fat)
	y += float64(0.2 * kph)
	y += float64(0.0038 * weight)
	y -= float64(0.32 * ribeye)
	return int(math.Floor(y))
}

// measuresOnly are the inputs of the equation.
func measuresOnly(o Object) Object {
	out := Object{}
	for _, k := range []string{"fat_in", "ribeye_sq_in", "kph_percent", "weight_lb"} {
		out[k] = Text(o, k)
	}
	return out
}

// measuredRows takes the measures of reference files whose rows are in customary units.
func (t *tables) measuredRows(names ...string) ([]Vector, error) {
	var all []Vector
	for _, name := range names {
		rows, err := t.rows(name)
		if err != nil {
			return nil, err
		}
		for _, r := range rows {
			kph := "kph"
			if !r.Has(kph) {
				kph = "kph_derived"
			}
			if !strings.HasSuffix(r.Get("fat"), " in") || !strings.HasSuffix(r.Get("rea"), " sq in") || !strings.HasSuffix(r.Get("hcw"), " lb") || r.Get(kph) == "" {
				continue
			}
			all = append(all, stated(r, Object{"fat_in": number(r.Get("fat")), "ribeye_sq_in": number(r.Get("rea")), "kph_percent": number(r.Get(kph)), "weight_lb": number(r.Get("hcw"))}))
		}
	}
	return all, nil
}

var yieldFile = File{
	Name:   "yield",
	About:  "The yield equation, the whole grade, and the yield to tenths in three roundings. The carcasses of the last table stand exactly on a grade, and the formula in float64, left to right, puts each of them one grade too low.",
	Rule:   "2.50 + 2.50 fat + 0.20 kidney, pelvic and heart fat + 0.0038 weight - 0.32 ribeye, exactly; the whole grade drops the decimals toward minus infinity and is kept to 1 to 5. down is toward minus infinity, half_up sends halves toward plus infinity, half_even to the even digit.",
	Source: "cfr-54-105 ext-sdsu-yield",
	solve: func(v Vector) (Object, error) {
		m, err := measures(v.In)
		if err != nil {
			return nil, err
		}
		y, err := m.Yield()
		if err != nil {
			return nil, err
		}
		out := Object{"yield": y.String(), "grade": strconv.Itoa(y.Grade())}
		for name, r := range map[string]grade.Rounding{"tenth_down": grade.Down, "tenth_half_up": grade.HalfUp, "tenth_half_even": grade.HalfEven} {
			tenth, err := y.Round(r, 1)
			if err != nil {
				return nil, err
			}
			out[name] = tenth.String()
		}
		return out, nil
	},
	inputs: func(t *tables) ([]Vector, error) {
		all, err := t.measuredRows("borderline-carcasses.csv", "yield-examples.csv", "fair-carcasses.csv")
		if err != nil {
			return nil, err
		}
		for i, g := range t.golden {
			if i%5 == 0 {
				all = append(all, Vector{From: g.From, In: measuresOnly(g.In)})
			}
		}
		// A net of the grid that internal/grid goes through as a whole.
		for fat := 0; fat <= 200; fat += 5 {
			for kph := 0; kph <= 60; kph += 5 {
				for weight := 400; weight <= 1200; weight += 10 {
					// The ribeye that makes the yield whole, in tenths, where there is one.
					for tenths := 70; tenths <= 200; tenths++ {
						n := int64(25_000) + int64(250*fat) + int64(200*kph) + int64(38*weight) - int64(320*tenths)
						if n%10_000 != 0 || n < 20_000 || n > 50_000 || (fat+kph+weight/10+tenths)%3 != 0 {
							continue
						}
						if float64Grade(float64(fat)/100, float64(kph)/10, float64(weight), float64(tenths)/10) == int(n/10_000) {
							continue
						}
						all = append(all, Vector{From: "internal/grid", In: Object{
							"fat_in": decimal.New(int64(fat), -2).String(), "kph_percent": decimal.New(int64(kph), -1).String(),
							"weight_lb": strconv.Itoa(weight), "ribeye_sq_in": decimal.New(int64(tenths), -1).String(),
						}})
					}
				}
			}
		}
		return all, nil
	},
}

// sameInputs are measures from the references and the golden carcasses.
func sameInputs(references ...string) func(*tables) ([]Vector, error) {
	return func(t *tables) ([]Vector, error) {
		all, err := t.measuredRows(references...)
		if err != nil {
			return nil, err
		}
		for i, g := range t.golden {
			if i%10 == 3 {
				all = append(all, Vector{From: g.From, In: measuresOnly(g.In)})
			}
		}
		return all, nil
	}
}

var shortcutFile = File{
	Name:   "shortcut",
	About:  "The shortcut method of the yield grade, step by step. It never sets a grade.",
	Rule:   "Preliminary 2.00 + 0.25 for every 0.1 in of fat; 0.3 for every sq in under the required ribeye; 0.1 for every 0.5 percent of kidney, pelvic and heart fat over 3.5. Required ribeye: 11.0 sq in at 600 lb and 0.3 for every 25 lb, to the lower tenth.",
	Source: "ext-sdsu-yield",
	solve: func(v Vector) (Object, error) {
		m, err := measures(v.In)
		if err != nil {
			return nil, err
		}
		s, err := m.Shortcut()
		return Object{"preliminary": s.Preliminary.String(), "required_ribeye_sq_in": s.Required.SquareInches().String(), "ribeye": s.Ribeye.String(), "kph": s.KPH.String(), "total": s.Total.String()}, err
	},
	inputs: sameInputs("borderline-carcasses.csv", "yield-examples.csv"),
}

var ribeyeFile = File{
	Name:   "required-ribeye",
	About:  "The ribeye area that goes with a hot carcass weight: the ends of every printed bin, then every 7 lb of what is allowed.",
	Rule:   "11.0 sq in at 600 lb and 0.3 for every 25 lb, to the lower tenth.",
	Source: "ext-sdsu-yield",
	solve: func(v Vector) (Object, error) {
		r := &reader{o: v.In}
		w := measuresOf(r).Weight
		if r.err != nil {
			return nil, r.err
		}
		a, err := w.RequiredRibeye()
		return Object{"required_ribeye_sq_in": a.SquareInches().String()}, err
	},
	inputs: func(t *tables) ([]Vector, error) {
		rows, err := t.rows("required-ribeye.csv")
		if err != nil {
			return nil, err
		}
		var all []Vector
		for _, r := range rows {
			for _, end := range []string{"from_lb", "to_lb"} {
				all = append(all, stated(r, Object{"weight_lb": r.Get(end)}))
			}
		}
		for lb := 100; lb <= 1800; lb += 7 {
			all = append(all, Vector{From: "golden/grade.txt", In: Object{"weight_lb": strconv.Itoa(lb)}})
		}
		return all, nil
	},
}

var retailFile = File{
	Name:   "retail-cuts",
	About:  "The share of boneless, closely trimmed retail cuts from the round, loin, rib and chuck, and the class 1 to 5 by three published tables; empty in a gap of the table.",
	Rule:   "51.34 - 5.78 fat - 0.462 kidney, pelvic and heart fat - 0.0093 weight + 0.74 ribeye, in percent, exactly; the class by the share rounded half up to a tenth.",
	Source: "ext-montana-2017 asweb-121 aged-yield-slides uni-slaughter-handout",
	solve: func(v Vector) (Object, error) {
		m, err := measures(v.In)
		if err != nil {
			return nil, err
		}
		share, err := m.RetailCuts()
		if err != nil {
			return nil, err
		}
		out := Object{"percent": share.String()}
		for t := grade.RetailGuide; text.Named(t); t++ {
			class := ""
			if n, ok := t.Class(share); ok {
				class = strconv.Itoa(n)
			}
			out[t.String()] = class
		}
		return out, nil
	},
	inputs: sameInputs("retail-cut-examples.csv"),
}

var metricFile = File{
	Name:   "metric",
	About:  "Metric measures in customary units and back.",
	Rule:   "1 in is 25.4 mm, 1 sq in 6.4516 sq cm, 1 lb 0.45359237 kg. In: to the nearest 0.0001 of the customary unit, halves away from zero. Back: to the decimals shown.",
	Source: "",
	solve: func(v Vector) (Object, error) {
		var in, back fmt.Stringer
		var err error
		s := Text(v.In, "value")
		switch unit := Text(v.In, "unit"); unit {
		case "mm":
			var x grade.Thickness
			x, err = grade.ParseThickness(s + " mm")
			in, back = x.Inches(), x.Millimeters()
		case "sq cm":
			var x grade.Area
			x, err = grade.ParseArea(s + " sq cm")
			in, back = x.SquareInches(), x.SquareCentimeters()
		case "kg":
			var x grade.Weight
			x, err = grade.ParseWeight(s + " kg")
			in, back = x.Pounds(), x.Kilograms()
		default:
			return nil, fmt.Errorf("unit %q", unit)
		}
		return Object{"customary": in.String(), "metric": back.String()}, err
	},
	inputs: func(t *tables) ([]Vector, error) {
		var all []Vector
		s := sweep(254)
		for _, u := range []struct {
			unit string
			most int
		}{{"mm", 760}, {"sq cm", 1600}, {"kg", 8000}} {
			for _, fixed := range []string{"0.1", "1", "2.54", "6.4516", "12.7", "25.4", "45.359237", "15.00127", "76.2"} {
				all = append(all, Vector{From: "golden/grade.txt", In: Object{"value": fixed, "unit": u.unit}})
			}
			for range 60 {
				all = append(all, Vector{From: "a sweep", In: Object{"value": decimal.New(int64(1+s.next(u.most)), -1).String(), "unit": u.unit}})
			}
		}
		return all, nil
	},
}
