package grade_test

import (
	"os/exec"
	"strings"
	"testing"
	"unsafe"

	"example.com/ribface/grade"
	"example.com/ribface/maturity"
	"example.com/ribface/maturity/cite"
)

// TestSizes holds the sizes of the types that a program keeps by the million.
func TestSizes(t *testing.T) {
	for _, s := range []struct {
		name      string
		got, want uintptr
	}{
		{"Thickness", unsafe.Sizeof(grade.Inches(0)), 4},
		{"Area", unsafe.Sizeof(grade.SquareInches(0)), 4},
		{"Share", unsafe.Sizeof(grade.Percent(0)), 4},
		{"Weight", unsafe.Sizeof(grade.Pounds(0)), 4},
		{"Measures", unsafe.Sizeof(grade.Measures{}), 16},
		{"Yield", unsafe.Sizeof(grade.Grades(0)), 8},
		{"QuickYield", unsafe.Sizeof(grade.ShortcutGrades(0)), 8},
		{"Terms", unsafe.Sizeof(grade.Terms{}), 40},
		{"Marbling", unsafe.Sizeof(grade.Marbling(0)), 2},
		{"Degree", unsafe.Sizeof(grade.Degree(0)), 1},
		{"Grade", unsafe.Sizeof(grade.Grade(0)), 1},
		{"Quality", unsafe.Sizeof(grade.Quality(0)), 1},
		{"Edition", unsafe.Sizeof(grade.Edition(0)), 1},
		{"Sex", unsafe.Sizeof(grade.Sex(0)), 1},
		{"Lean", unsafe.Sizeof(grade.Lean{}), 5},
		{"Carcass", unsafe.Sizeof(grade.Carcass{}), 40},
		{"Rules", unsafe.Sizeof(grade.Rules{}), 3},
	} {
		if s.got != s.want {
			t.Errorf("%s has %d bytes, want %d", s.name, s.got, s.want)
		}
	}
}

// TestNoAllocation holds that grading asks for no memory, nor do the errors of
// the equation before they are read.
func TestNoAllocation(t *testing.T) {
	c := carcass("B40", "Md40")
	c.Lean = grade.Lean{Firmness: grade.ModeratelySoft, Dark: grade.DarkThird}
	c.Maturity.Teeth = maturity.Incisors(4)
	c.FatAdjust = grade.Inches(0.1)
	rules := grade.Rules{Edition: grade.Edition1997, Maturity: maturity.Balancing{Tens: maturity.TensTowardBone}}
	buffer := make([]byte, 0, 64)
	var sink int64
	for name, f := range map[string]func(){
		"Measures.Yield":    func() { y, _ := c.Measures.Yield(); sink += y.Units() },
		"Measures.Check":    func() { _ = c.Measures.Check() },
		"Measures.Terms":    func() { t, _ := c.Measures.Terms(); sink += t.Fat.Units() },
		"Measures.Shortcut": func() { q, _ := c.Measures.Shortcut(); sink += q.Total.Units() },
		"Yield.Grade":       func() { sink += int64(grade.YieldUnits(sink).Grade()) },
		"Yield.Round":       func() { y, _ := grade.Grades(2.952).Round(grade.HalfUp, 1); sink += y.Units() },
		"Edition.Assess":    func() { a, _ := grade.Current.Assess(c); sink += a.Yield.Units() },
		"Rules.Assess":      func() { a, _ := rules.Assess(c); sink += a.Yield.Units() },
		"Edition.Quality":   func() { q, _ := grade.Current.Quality(c); sink += int64(q) },
		"Rules.Overall":     func() { m, _ := grade.Rules{Edition: grade.Current}.Overall(c.Maturity); sink += int64(m) },
		"Degree.At":         func() { sink += int64(grade.Small.At(40)) },
		"ParseMarbling":     func() { m, _ := grade.ParseMarbling("Slightly Abundant 40"); sink += int64(m) },
		"ParseThickness":    func() { v, _ := grade.ParseThickness("0.45 in"); sink += v.Units() },
		"ParseWeight":       func() { v, _ := grade.ParseWeight("300 kg"); sink += v.Units() },
		"ParseYield":        func() { v, _ := grade.ParseYield("2.952"); sink += v.Units() },
		"AppendText": func() {
			b, _ := c.Measures.Fat.AppendText(buffer)
			b, _ = c.Marbling.AppendText(b)
			sink += int64(len(b))
		},
		"Inches": func() { sink += grade.Inches(0.6).Units() },
		"Lines": func() {
			for l := range grade.Current.Lines() {
				sink += int64(l.At)
			}
		},
	} {
		if n := testing.AllocsPerRun(100, f); n != 0 {
			t.Errorf("%s: %v allocations", name, n)
		}
	}
}

// TestYieldIsInlined asks the compiler whether Measures.Yield is still short
// enough to be inlined, which is what makes it as fast as a plain formula.
func TestYieldIsInlined(t *testing.T) {
	if testing.Short() {
		t.Skip("builds the package")
	}
	command, err := exec.LookPath("go")
	if err != nil {
		t.Skip("no go command")
	}
	out, err := exec.Command(command, "build", "-gcflags=-m", ".").CombinedOutput()
	if err != nil {
		t.Fatalf("%v\n%s", err, out)
	}
	for _, want := range []string{"can inline Measures.Yield", "can inline Yield.Grade"} {
		found := false
		for line := range strings.Lines(string(out)) {
			found = found || strings.HasSuffix(strings.TrimSpace(line), want)
		}
		if !found {
			t.Errorf("the compiler does not say %q", want)
		}
	}
}

// TestZeroValues holds what the zero value of every type is documented to be.
func TestZeroValues(t *testing.T) {
	for name, ok := range map[string]bool{
		"Thickness is not taken":         !grade.Thickness{}.IsSet() && !grade.Thickness{}.IsValid() && grade.Thickness{}.String() == "not taken",
		"Area is not taken":              !grade.Area{}.IsSet() && !grade.Area{}.IsValid() && grade.Area{}.String() == "not taken",
		"Share is not taken":             !grade.Share{}.IsSet() && !grade.Share{}.IsValid() && grade.Share{}.String() == "not taken",
		"Weight is not taken":            !grade.Weight{}.IsSet() && !grade.Weight{}.IsValid() && grade.Weight{}.String() == "not taken",
		"Yield is not set":               !grade.Yield{}.IsSet() && grade.Yield{}.String() == "unset" && grade.Yield{}.Grade() == 0,
		"ShortcutYield is not set":       !grade.ShortcutYield{}.IsSet() && grade.ShortcutYield{}.String() == "unset",
		"Degree is not set":              !grade.Degree(0).IsValid() && grade.Degree(0).String() == "unset",
		"Marbling is not set":            !grade.Marbling(0).IsValid() && grade.Marbling(0).String() == "unset",
		"MarblingScale is not set":       grade.MarblingScale(0).String() == "unset",
		"Grade is not set":               !grade.Grade(0).IsValid() && grade.Grade(0).String() == "unset",
		"Part is the whole":              grade.Part(0) == grade.Whole,
		"Quality is not set":             !grade.Quality(0).IsValid() && grade.Quality(0).String() == "unset",
		"Tier is not set":                !grade.Tier(0).IsValid() && grade.Tier(0).String() == "unset",
		"Edition is not set":             !grade.Edition(0).IsValid() && grade.Edition(0).String() == "unset",
		"Sex is not set":                 !grade.Sex(0).IsValid() && grade.Sex(0).String() == "unset",
		"Firmness was not looked at":     !grade.Firmness(0).IsValid() && grade.Firmness(0).String() == "unset",
		"DarkCut is none":                !grade.DarkCut(0).IsValid() && grade.DarkCut(0).String() == "none",
		"Rounding is not set":            grade.Rounding(0).String() == "unset",
		"RetailTable is not set":         grade.RetailTable(0).String() == "unset",
		"Measures are refused":           grade.Measures{}.Check() != nil,
		"Terms add up to nothing":        grade.Terms{}.Sum() == (grade.Yield{}),
		"an Assessment explains nothing": grade.Assessment{}.Steps() == nil,
		"a Line is flat at nothing":      grade.Line{}.On(50) == 0,
	} {
		if !ok {
			t.Errorf("zero value: not true that %s", name)
		}
	}
	if _, err := (grade.Rules{}).Assess(carcass("A50", "Sm40")); err == nil {
		t.Error("the zero Rules grade a carcass")
	}
	if _, err := grade.Current.Assess(grade.Carcass{}); err == nil {
		t.Error("the zero Carcass is graded")
	}
}

// TestMapKeys holds that every type compares with == and serves as a map key.
func TestMapKeys(t *testing.T) {
	a, err := grade.Current.Assess(carcass("A50", "Sm40"))
	if err != nil {
		t.Fatal(err)
	}
	values := []any{
		grade.Inches(1), grade.SquareInches(1), grade.Percent(1), grade.Pounds(1), grade.Grades(1), grade.ShortcutYieldUnits(1), grade.RetailGuide,
		grade.Small, grade.Small.At(0), grade.Slight300, grade.Prime, grade.Low, grade.Prime.Part(grade.Low), grade.PrimeTier, grade.Current,
		grade.Steer, grade.Firm, grade.DarkFull, grade.HalfUp, grade.Lean{}, grade.Measures{}, grade.Terms{}, grade.Shortcut{}, grade.Carcass{},
		grade.Rules{}, a, grade.Line{}, cite.Step{},
	}
	keys := map[any]int{}
	for i, v := range values {
		keys[v] = i
	}
	if len(keys) != len(values) {
		t.Errorf("%d keys for %d values", len(keys), len(values))
	}
	for i, v := range values {
		if keys[v] != i {
			t.Errorf("%T is not found again", v)
		}
	}
}
