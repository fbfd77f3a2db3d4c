package sheet

import (
	"iter"
	"strconv"
	"strings"

	"example.com/ribface/grade"
	"example.com/ribface/internal/fault"
	"example.com/ribface/internal/lines"
	"example.com/ribface/internal/text"
	"example.com/ribface/internal/text/fixed"
	"example.com/ribface/maturity"
)

// Column is a column that the package knows. Its name carries the unit.
type Column struct {
	Name    string `json:"name"`           // as it is written, and as a [Mapping] names it
	Field   string `json:"field"`          // the field of the carcass, in the words of the errors of package grade
	Unit    string `json:"unit,omitempty"` // the unit of a bare number; empty where the cell is no measure
	Allowed string `json:"allowed"`        // what a cell may hold, besides nothing
}

// column is a Column with the way its cells are read and written.
type column struct {
	Column
	path  string // the field of the carcass by its JSON names
	read  func(f *form, row *Row, cell string) error
	write func(b []byte, row *Row) ([]byte, error) // nil for a spelling that is read only
	known []string                                 // headings of the trade without their unit, for Propose
}

const places = 4

// numbers says what a measure may be.
func numbers[T interface{ String() string }](least, most T) string {
	return "a number, " + least.String() + " to " + most.String()
}

// columns is the one table of what the package knows, in the order in which it is
// written.
var columns = func() []column {
	lo, hi := grade.CarcassLimits().Least, grade.CarcassLimits().Most
	fat := measured(func(c *grade.Carcass) *grade.Thickness { return &c.Measures.Fat }, grade.ThicknessUnits, grade.ParseThickness, lo.Fat, hi.Fat)
	adjust := measured(func(c *grade.Carcass) *grade.Thickness { return &c.FatAdjust }, grade.ThicknessUnits, grade.ParseThickness, grade.ThicknessUnits(-hi.Fat.Units()), hi.Fat)
	ribeye := measured(func(c *grade.Carcass) *grade.Area { return &c.Measures.Ribeye }, grade.AreaUnits, grade.ParseArea, lo.Ribeye, hi.Ribeye)
	kph := measured(func(c *grade.Carcass) *grade.Share { return &c.Measures.KPH }, grade.ShareUnits, grade.ParseShare, lo.KPH, hi.KPH)
	weight := measured(func(c *grade.Carcass) *grade.Weight { return &c.Measures.Weight }, grade.WeightUnits, grade.ParseWeight, lo.Weight, hi.Weight)
	return append([]column{
		{Column{"id", "id", "", "one line of text"}, "", readID, writeID, []string{"id", "tag", "ear tag", "eartag", "animal", "animal id", "animal number", "carcass", "carcass id", "carcass number", "carcass no", "nr", "no", "no.", "number", "visual id", "vid"}},
		{Column{"sex", "sex class", "", "steer, heifer, cow, bullock, bull; S, H or C"}, "sex", readSex, func(b []byte, r *Row) ([]byte, error) { return text.AppendName(b, r.Carcass.Sex) }, []string{"sex", "sex class", "gender", "class"}},
		{Column{"skeletal", "skeletal maturity", "", "A00 to E100"}, "maturity.skeletal", func(f *form, r *Row, cell string) (err error) {
			r.Carcass.Maturity.Skeletal, err = f.maturity(cell)
			return err
		}, func(b []byte, r *Row) ([]byte, error) { return appendScore(b, r.Carcass.Maturity.Skeletal) }, []string{"skeletal", "skeletal maturity", "skeletal mat", "skel", "bone", "bone maturity"}},
		{Column{"lean", "lean maturity", "", "A00 to E100"}, "maturity.lean", func(f *form, r *Row, cell string) (err error) {
			r.Carcass.Maturity.Lean, err = f.maturity(cell)
			return err
		}, func(b []byte, r *Row) ([]byte, error) { return appendScore(b, r.Carcass.Maturity.Lean) }, []string{"lean", "lean maturity", "lean mat"}},
		{Column{"maturity", "overall maturity", "", "A00 to E100, for skeletal and lean alike"}, "maturity", func(f *form, r *Row, cell string) error {
			s, err := f.maturity(cell)
			r.Carcass.Maturity.Skeletal, r.Carcass.Maturity.Lean = s, s
			return err
		}, nil, []string{"maturity", "overall maturity", "maturity score", "carcass maturity", "mat"}},
		{Column{"teeth", "teeth", "", "the count of permanent incisors, 0 to 8"}, "maturity.teeth", readTeeth, writeTeeth, []string{"teeth", "incisors", "permanent incisors"}},
		{Column{"papers_months", "papers", "months", "whole months, 1 to 600"}, "maturity.papers", readPapers, writePapers, []string{"papers", "verified age", "age by papers"}},
		{Column{"marbling", "marbling", "", "Devoid00 to Ab100, or a number where the mapping names its scale"}, "marbling", func(f *form, r *Row, cell string) (err error) {
			r.Carcass.Marbling, err = f.marbling(cell)
			return err
		}, func(b []byte, r *Row) ([]byte, error) { return appendMarbling(b, r.Carcass.Marbling) }, []string{"marbling", "marb", "marbling score", "marb score", "marbling degree"}},
		{Column{"firmness", "firmness", "", "very soft, soft, moderately soft, slightly soft, slightly firm, moderately firm, firm"}, "lean.firmness", func(_ *form, r *Row, cell string) (err error) {
			r.Carcass.Lean.Firmness, err = grade.ParseFirmness(cell)
			return err
		}, func(b []byte, r *Row) ([]byte, error) { return text.AppendName(b, r.Carcass.Lean.Firmness) }, []string{"firmness", "lean firmness"}},
		{Column{"dark", "dark cut", "", "none, one third, two thirds, full; 1/3, 2/3"}, "lean.dark", readDark, func(b []byte, r *Row) ([]byte, error) { return text.AppendName(b, r.Carcass.Lean.Dark) }, []string{"dark", "dark cut", "dark cutter", "dark cutting"}},
		{Column{"below_cutter", "below Cutter", "", "yes, no"}, "lean.below_cutter", readBelow, writeBelow, []string{"below cutter"}},
		{Column{"fat_in", "fat", "in", numbers(lo.Fat, hi.Fat)}, "measures.fat", fat.read("in"), fat.write, []string{"fat", "ft", "bf", "backfat", "back fat", "fat thickness", "fat depth", "rib fat", "12th rib fat", "12th rib fat thickness", "12th rib backfat", "subcutaneous fat"}},
		{Column{"fat_mm", "fat", "mm", numbers(lo.Fat, hi.Fat)}, "measures.fat", fat.read("mm"), nil, nil},
		{Column{"fat_cm", "fat", "cm", numbers(lo.Fat, hi.Fat)}, "measures.fat", fat.read("cm"), nil, nil},
		{Column{"fat_adjust_in", "fat adjustment", "in", numbers(grade.ThicknessUnits(-hi.Fat.Units()), hi.Fat) + ", leaving the fat " + lo.Fat.String() + " to " + hi.Fat.String()}, "fat_adjust", adjust.read("in"), adjust.write, []string{"fat adjustment", "fat adjust", "fat adj"}},
		{Column{"fat_adjust_mm", "fat adjustment", "mm", numbers(grade.ThicknessUnits(-hi.Fat.Units()), hi.Fat)}, "fat_adjust", adjust.read("mm"), nil, nil},
		{Column{"fat_adjust_cm", "fat adjustment", "cm", numbers(grade.ThicknessUnits(-hi.Fat.Units()), hi.Fat)}, "fat_adjust", adjust.read("cm"), nil, nil},
		{Column{"ribeye_sq_in", "ribeye", "sq in", numbers(lo.Ribeye, hi.Ribeye)}, "measures.ribeye", ribeye.read("sq in"), ribeye.write, []string{"ribeye", "rib eye", "rea", "ribeye area", "rib eye area", "lma", "lm area", "lm", "longissimus muscle area", "longissimus area", "loin muscle area", "loin eye area"}},
		{Column{"ribeye_sq_cm", "ribeye", "sq cm", numbers(lo.Ribeye, hi.Ribeye)}, "measures.ribeye", ribeye.read("sq cm"), nil, nil},
		{Column{"kph_pct", "KPH", "%", numbers(lo.KPH, hi.KPH)}, "measures.kph", kph.read("%"), kph.write, []string{"kph", "kph fat", "kidney pelvic heart fat", "kidney pelvic and heart fat", "kidney pelvic heart"}},
		{Column{"weight_lb", "weight", "lb", numbers(lo.Weight, hi.Weight)}, "measures.weight", weight.read("lb"), weight.write, []string{"weight", "hcw", "hot carcass weight", "hot weight", "hot carcass wt", "hot wt", "carcass weight", "carcass wt", "hcwt", "wt"}},
		{Column{"weight_kg", "weight", "kg", numbers(lo.Weight, hi.Weight)}, "measures.weight", weight.read("kg"), nil, nil},
		{Column{"assumed", "assumed", "", "sex, maturity, kph, weight: what was assumed and not seen"}, "assumed", func(_ *form, r *Row, cell string) error { return r.Assumed.UnmarshalText([]byte(cell)) }, func(b []byte, r *Row) ([]byte, error) { return r.Assumed.append(b) }, nil},
		{Column{"color", "lean color", "", "very dark red to light cherry red"}, "lean.color", func(_ *form, r *Row, cell string) (err error) {
			r.Carcass.Lean.Color, err = grade.ParseColor(cell)
			return err
		}, func(b []byte, r *Row) ([]byte, error) { return text.AppendName(b, r.Carcass.Lean.Color) }, []string{"color", "lean color"}},
		{Column{"texture", "lean texture", "", "very coarse to fine"}, "lean.texture", func(_ *form, r *Row, cell string) (err error) {
			r.Carcass.Lean.Texture, err = grade.ParseTexture(cell)
			return err
		}, func(b []byte, r *Row) ([]byte, error) { return text.AppendName(b, r.Carcass.Lean.Texture) }, []string{"texture", "lean texture"}},
		{Column{"buttons", "buttons", "", "0% to 100% ossified, or white and soft"}, "maturity.buttons", func(_ *form, r *Row, cell string) (err error) {
			r.Carcass.Maturity.Buttons, err = maturity.ParseButtons(cell)
			return err
		}, func(b []byte, r *Row) ([]byte, error) { return r.Carcass.Maturity.Buttons.AppendText(b) }, []string{"buttons", "chine buttons", "ossification"}},
	}, results()...)
}()

// results are the columns that a [GradedWriter] adds. In a graded sheet that is read
// again their cells are left, since it is graded again.
func results() []column {
	var all []column
	for _, name := range [...]string{"overall", "quality", "yield", "yield_grade", "tier", "flags"} {
		all = append(all, column{Column{name, "result " + name, "", "the result of grading"}, "result." + name, func(*form, *Row, string) error { return nil }, nil, nil})
	}
	return all
}

// known finds a column by its name; nil for none.
func known(name string) *column {
	for i := range columns {
		if columns[i].Name == name {
			return &columns[i]
		}
	}
	return nil
}

// written are the columns of a written row.
var written = func() (all []lines.Column[Row]) {
	for i := range columns {
		if c := &columns[i]; c.write != nil {
			all = append(all, lines.Column[Row]{Name: c.Name, Fact: c.Field, Path: c.path, Allowed: c.Allowed, Write: c.write})
		}
	}
	return all
}()

var put = lines.NewWriter(written)

// Columns yields every column that can be read, in the order in which they are
// written. Where a measure has several columns, one for each unit, the first is the
// one that is written. The results of grading are not among them.
func Columns() iter.Seq[Column] {
	return func(yield func(Column) bool) {
		for i := range columns[:len(columns)-len(results())] {
			if !yield(columns[i].Column) {
				return
			}
		}
	}
}

// measure is how one measure is read and written, between two counts of 0.0001.
type measure[T quantity] struct {
	at          func(*grade.Carcass) *T
	units       func(int64) T
	parse       func(string, ...grade.Rounding) (T, error)
	least, most int64
}

type quantity interface {
	Units() int64
	IsSet() bool
	IsValid() bool
	AppendText([]byte) ([]byte, error)
}

func measured[T quantity](at func(*grade.Carcass) *T, units func(int64) T, parse func(string, ...grade.Rounding) (T, error), least, most T) measure[T] {
	return measure[T]{at, units, parse, least.Units(), most.Units()}
}

// read reads a number that is in the unit of its column, unless the cell has a unit of
// its own.
func (m measure[T]) read(unit string) func(*form, *Row, string) error {
	customary := unit == "in" || unit == "sq in" || unit == "%" || unit == "lb"
	return func(f *form, row *Row, cell string) error {
		if customary && !f.comma {
			if n, err := fixed.Parse(cell, places); err == nil {
				if n < m.least || n > m.most {
					return grade.ErrRange
				}
				*m.at(&row.Carcass) = m.units(n)
				return nil
			}
		}
		v, err := m.value(f, f.number(cell), unit)
		if err != nil {
			return err
		}
		if n := v.Units(); n < m.least || n > m.most {
			return grade.ErrRange
		}
		*m.at(&row.Carcass) = v
		return nil
	}
}

// value reads a number in the plain form.
func (m measure[T]) value(f *form, cell, unit string) (T, error) {
	if last := cell[len(cell)-1]; last == '.' || last-'0' <= 9 {
		cell += " " + unit
	}
	if f.surplus != 0 {
		return m.parse(cell, f.surplus)
	}
	return m.parse(cell)
}

// write writes the number in the customary unit, which the heading names.
func (m measure[T]) write(b []byte, row *Row) ([]byte, error) {
	v := *m.at(&row.Carcass)
	n := v.Units()
	if n == 0 && !v.IsSet() {
		return b, nil
	}
	if n < m.least || n > m.most || n == 0 && !v.IsValid() {
		text, err := v.AppendText(nil)
		if err != nil {
			return b, err
		}
		return b, &grade.FieldError{Value: string(text), Err: grade.ErrRange}
	}
	return fixed.Append(b, n, places), nil
}

func readID(_ *form, row *Row, cell string) error {
	if lines.Broken(cell) {
		return grade.ErrSyntax
	}
	row.ID = cell
	return nil
}

func writeID(b []byte, row *Row) ([]byte, error) {
	b, err := lines.Append(b, row.ID, ',')
	if err != nil {
		err = &grade.FieldError{Value: fault.Plain(row.ID), Err: err}
	}
	return b, err
}

// appendScore appends a maturity as [maturity.Score.AppendText] does, quickly.
func appendScore(b []byte, s maturity.Score) ([]byte, error) {
	if s >= 100 && s < 600 {
		return appendPoints(append(b, byte(s/100)+'A'-1), int(s)%100), nil
	}
	return s.AppendText(b)
}

// appendMarbling appends a marbling as [grade.Marbling.AppendText] does, quickly.
func appendMarbling(b []byte, m grade.Marbling) ([]byte, error) {
	if m >= 100 && m < 1100 {
		return appendPoints(append(b, degreeTexts[m/100]...), int(m)%100), nil
	}
	return m.AppendText(b)
}

func appendPoints(b []byte, n int) []byte { return append(b, '0'+byte(n/10), '0'+byte(n%10)) }

// degreeTexts are the short forms of the degrees of marbling.
var degreeTexts = func() (all [grade.Abundant + 1]string) {
	for d := range grade.Degrees() {
		all[d] = strings.TrimSuffix(d.At(0).String(), "00")
	}
	return all
}()

func readTeeth(f *form, row *Row, cell string) error {
	n, err := fixed.Parse(f.number(cell), 0)
	if err != nil {
		return err
	}
	if n < 0 || n > 8 {
		return grade.ErrRange
	}
	row.Carcass.Maturity.Teeth = maturity.Incisors(int(n))
	return nil
}

func writeTeeth(b []byte, row *Row) ([]byte, error) {
	t := row.Carcass.Maturity.Teeth
	if t == 0 {
		return b, nil
	}
	n, ok := t.Count()
	if !ok {
		return b, &grade.FieldError{Value: t.String(), Err: grade.ErrRange}
	}
	return append(b, '0'+byte(n)), nil
}

func readPapers(f *form, row *Row, cell string) error {
	p, err := maturity.ParseMonths(f.number(cell))
	row.Carcass.Maturity.Papers = p
	return err
}

func writePapers(b []byte, row *Row) ([]byte, error) {
	p := row.Carcass.Maturity.Papers
	if p == 0 {
		return b, nil
	}
	if !p.IsValid() {
		return b, &grade.FieldError{Value: p.String(), Err: grade.ErrRange}
	}
	return strconv.AppendInt(b, int64(p), 10), nil
}

func readBelow(_ *form, row *Row, cell string) error {
	yes, err := yesOrNo(cell)
	row.Carcass.Lean.BelowCutter = yes
	return err
}

func writeBelow(b []byte, row *Row) ([]byte, error) {
	if row.Carcass.Lean.BelowCutter {
		b = append(b, "yes"...)
	}
	return b, nil
}

// RowError is the error for a row of a sheet, and for its header. Its fields are File,
// Line (from 1; the header is line 1), ID, Column (from 1; 0 where the row as a whole
// is wrong or the sheet has no such column), Heading and Err, in most cases a
// [*grade.FieldError] with the field, the value as it stands in the cell and what is
// allowed. What else is wrong in the same row is in More, from left to right; All
// lists both. The sheets of package contest have the same error.
type RowError = fault.RowError
