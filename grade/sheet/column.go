package sheet

import (
	"iter"
	"slices"
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
	read  func(f *Mapping, row *Row, cell string) error
	write func(b []byte, row *Row) ([]byte, error) // nil for a spelling that is read only
	known []string                                 // headings of the trade without their unit, for Propose
}

// field is the column of one field of a carcass. A field that is not set is an empty cell.
func field[T comparable](c Column, path, known string, at func(*grade.Carcass) *T, read func(*Mapping, string) (T, error), write func([]byte, T) ([]byte, error)) column {
	return column{c, path, func(m *Mapping, row *Row, cell string) (err error) {
		*at(&row.Carcass), err = read(m, cell)
		return err
	}, func(b []byte, row *Row) ([]byte, error) {
		var unset T
		if v := *at(&row.Carcass); v != unset {
			return write(b, v)
		}
		return b, nil
	}, strings.Split(known, ", ")}
}

// plain is a way of reading to which the mapping does not matter.
func plain[T any](parse func(string) (T, error)) func(*Mapping, string) (T, error) {
	return func(_ *Mapping, cell string) (T, error) { return parse(cell) }
}

// columns is the one table of what the package knows, in the order in which it is
// written.
var columns = func() []column {
	lo, hi := grade.CarcassLimits().Least, grade.CarcassLimits().Most
	adjust := measured("fat_adjust", "fat adjustment", "fat_adjust", "fat adjustment, fat adjust, fat adj", []string{"in", "mm", "cm"},
		measure[grade.Thickness]{func(c *grade.Carcass) *grade.Thickness { return &c.FatAdjust }, grade.ThicknessUnits, grade.ParseThickness, grade.ThicknessUnits(-hi.Fat.Units()), hi.Fat})
	adjust[0].Allowed += ", leaving the fat " + lo.Fat.String() + " to " + hi.Fat.String()
	all := slices.Concat([]column{
		{Column{"id", "id", "", "one line of text"}, "", readID, writeID, strings.Split("id, tag, ear tag, eartag, animal, animal id, animal number, carcass, carcass id, carcass number, carcass no, nr, no, no., number, visual id, vid", ", ")},
		field(Column{"sex", "sex class", "", "steer, heifer, cow, bullock, bull; S, H or C"}, "sex", "sex, sex class, gender, class",
			func(c *grade.Carcass) *grade.Sex { return &c.Sex }, (*Mapping).sex, text.AppendName),
		field(Column{"skeletal", "skeletal maturity", "", "A00 to E100"}, "maturity.skeletal", "skeletal, skeletal maturity, skeletal mat, skel, bone, bone maturity",
			func(c *grade.Carcass) *maturity.Score { return &c.Maturity.Skeletal }, (*Mapping).maturity, appendScore),
		field(Column{"lean", "lean maturity", "", "A00 to E100"}, "maturity.lean", "lean, lean maturity, lean mat",
			func(c *grade.Carcass) *maturity.Score { return &c.Maturity.Lean }, (*Mapping).maturity, appendScore),
		{Column{"maturity", "overall maturity", "", "A00 to E100, for skeletal and lean alike"}, "maturity", func(f *Mapping, r *Row, cell string) error {
			s, err := f.maturity(cell)
			r.Carcass.Maturity.Skeletal, r.Carcass.Maturity.Lean = s, s
			return err
		}, nil, strings.Split("maturity, overall maturity, maturity score, carcass maturity, mat", ", ")},
		field(Column{"teeth", "teeth", "", "the count of permanent incisors, 0 to 8"}, "maturity.teeth", "teeth, incisors, permanent incisors",
			func(c *grade.Carcass) *maturity.Teeth { return &c.Maturity.Teeth }, (*Mapping).teeth, appendTeeth),
		field(Column{"papers_months", "papers", "months", "whole months, 1 to 600"}, "maturity.papers", "papers, verified age, age by papers",
			func(c *grade.Carcass) *maturity.Months { return &c.Maturity.Papers }, (*Mapping).papers, appendPapers),
		field(Column{"marbling", "marbling", "", "Devoid00 to Ab100, or a number where the mapping names its scale"}, "marbling", "marbling, marb, marbling score, marb score, marbling degree",
			func(c *grade.Carcass) *grade.Marbling { return &c.Marbling }, (*Mapping).marbling, appendMarbling),
		field(Column{"firmness", "firmness", "", "very soft, soft, moderately soft, slightly soft, slightly firm, moderately firm, firm"}, "lean.firmness", "firmness, lean firmness",
			func(c *grade.Carcass) *grade.Firmness { return &c.Lean.Firmness }, plain(grade.ParseFirmness), text.AppendName),
		field(Column{"dark", "dark cut", "", "none, one third, two thirds, full; 1/3, 2/3"}, "lean.dark", "dark, dark cut, dark cutter, dark cutting",
			func(c *grade.Carcass) *grade.DarkCut { return &c.Lean.Dark }, (*Mapping).dark, text.AppendName),
		field(Column{"below_cutter", "below Cutter", "", "yes, no"}, "lean.below_cutter", "below cutter",
			func(c *grade.Carcass) *bool { return &c.Lean.BelowCutter }, (*Mapping).yes, func(b []byte, _ bool) ([]byte, error) { return append(b, "yes"...), nil }),
	}, measured("fat", "fat", "measures.fat", "fat, ft, bf, backfat, back fat, fat thickness, fat depth, rib fat, 12th rib fat, 12th rib fat thickness, 12th rib backfat, subcutaneous fat",
		[]string{"in", "mm", "cm"}, measure[grade.Thickness]{func(c *grade.Carcass) *grade.Thickness { return &c.Measures.Fat }, grade.ThicknessUnits, grade.ParseThickness, lo.Fat, hi.Fat}),
		adjust,
		measured("ribeye", "ribeye", "measures.ribeye", "ribeye, rib eye, rea, ribeye area, rib eye area, lma, lm area, lm, longissimus muscle area, longissimus area, loin muscle area, loin eye area",
			[]string{"sq in", "sq cm"}, measure[grade.Area]{func(c *grade.Carcass) *grade.Area { return &c.Measures.Ribeye }, grade.AreaUnits, grade.ParseArea, lo.Ribeye, hi.Ribeye}),
		measured("kph", "KPH", "measures.kph", "kph, kph fat, kidney pelvic heart fat, kidney pelvic and heart fat, kidney pelvic heart",
			[]string{"%"}, measure[grade.Share]{func(c *grade.Carcass) *grade.Share { return &c.Measures.KPH }, grade.ShareUnits, grade.ParseShare, lo.KPH, hi.KPH}),
		measured("weight", "weight", "measures.weight", "weight, hcw, hot carcass weight, hot weight, hot carcass wt, hot wt, carcass weight, carcass wt, hcwt, wt",
			[]string{"lb", "kg"}, measure[grade.Weight]{func(c *grade.Carcass) *grade.Weight { return &c.Measures.Weight }, grade.WeightUnits, grade.ParseWeight, lo.Weight, hi.Weight}),
		[]column{
			{Column{"assumed", "assumed", "", "sex, maturity, kph, weight: what was assumed and not seen"}, "assumed", func(_ *Mapping, r *Row, cell string) error { return r.Assumed.UnmarshalText([]byte(cell)) },
				func(b []byte, r *Row) ([]byte, error) { return r.Assumed.append(b) }, nil},
			field(Column{"color", "lean color", "", "very dark red to light cherry red"}, "lean.color", "color, lean color",
				func(c *grade.Carcass) *grade.Color { return &c.Lean.Color }, plain(grade.ParseColor), text.AppendName),
			field(Column{"texture", "lean texture", "", "very coarse to fine"}, "lean.texture", "texture, lean texture",
				func(c *grade.Carcass) *grade.Texture { return &c.Lean.Texture }, plain(grade.ParseTexture), text.AppendName),
			field(Column{"buttons", "buttons", "", "0% to 100% ossified, or white and soft"}, "maturity.buttons", "buttons, chine buttons, ossification",
				func(c *grade.Carcass) *maturity.Buttons { return &c.Maturity.Buttons }, plain(maturity.ParseButtons), text.AppendName),
		})
	for _, name := range resultNames {
		all = append(all, column{Column{name, "result " + name, "", "the result of grading"}, "result." + name, func(*Mapping, *Row, string) error { return nil }, nil, nil})
	}
	return all
}()

// resultNames are the columns that a [GradedWriter] adds. In a graded sheet that is read
// again their cells are left, since it is graded again.
var resultNames = []string{"overall", "quality", "yield", "yield_grade", "tier", "flags"}

// find gives the first column that is what is looked for; nil for none.
func find(is func(c *column) bool) *column {
	for i := range columns {
		if is(&columns[i]) {
			return &columns[i]
		}
	}
	return nil
}

// known finds a column by its name; nil for none.
func known(name string) *column { return find(func(c *column) bool { return c.Name == name }) }

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
		for i := range columns[:len(columns)-len(resultNames)] {
			if !yield(columns[i].Column) {
				return
			}
		}
	}
}

// measure is how one measure is read and written.
type measure[T quantity] struct {
	at          func(*grade.Carcass) *T
	units       func(int64) T // of 0.0001
	parse       func(string, ...grade.Rounding) (T, error)
	least, most T
}

type quantity interface {
	Units() int64
	IsSet() bool
	IsValid() bool
	String() string
}

const places = 4

// measured are the columns of a measure, one for each unit. The first is written, and is
// of the customary unit.
func measured[T quantity](name, fact, path, known string, units []string, m measure[T]) (all []column) {
	least, most := m.least.Units(), m.most.Units()
	for _, unit := range units {
		heading := name + "_" + strings.NewReplacer(" ", "_", "%", "pct").Replace(unit)
		c := column{Column: Column{heading, fact, unit, "a number, " + m.least.String() + " to " + m.most.String()}, path: path}
		c.read = func(f *Mapping, row *Row, cell string) error {
			if unit == units[0] && !f.comma() {
				if n, err := fixed.Parse(cell, places); err == nil {
					if n < least || n > most {
						return grade.ErrRange
					}
					*m.at(&row.Carcass) = m.units(n)
					return nil
				}
			}
			v, err := m.value(f, f.number(cell), unit)
			if n := v.Units(); err == nil && (n < least || n > most) {
				err = grade.ErrRange
			}
			if err == nil {
				*m.at(&row.Carcass) = v
			}
			return err
		}
		all = append(all, c)
	}
	// The customary unit holds every number exactly.
	all[0].known = strings.Split(known, ", ")
	all[0].write = func(b []byte, row *Row) ([]byte, error) {
		v := *m.at(&row.Carcass)
		n := v.Units()
		if n == 0 && !v.IsSet() {
			return b, nil
		}
		if n < least || n > most || n == 0 && !v.IsValid() {
			return b, &grade.FieldError{Value: v.String(), Err: grade.ErrRange}
		}
		return fixed.Append(b, n, places), nil
	}
	return all
}

// value reads a number in the plain form.
func (m measure[T]) value(f *Mapping, cell, unit string) (T, error) {
	if last := cell[len(cell)-1]; last == '.' || last-'0' <= 9 {
		cell += " " + unit
	}
	if f.Surplus != 0 {
		return m.parse(cell, f.Surplus)
	}
	return m.parse(cell)
}

func readID(_ *Mapping, row *Row, cell string) error {
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

func (m *Mapping) teeth(cell string) (maturity.Teeth, error) {
	n, err := fixed.Parse(m.number(cell), 0)
	if err == nil && (n < 0 || n > 8) {
		err = grade.ErrRange
	}
	return maturity.Incisors(int(n)), err
}

func appendTeeth(b []byte, t maturity.Teeth) ([]byte, error) {
	if n, ok := t.Count(); ok {
		return append(b, '0'+byte(n)), nil
	}
	return b, &grade.FieldError{Value: t.String(), Err: grade.ErrRange}
}

func (m *Mapping) papers(cell string) (maturity.Months, error) {
	return maturity.ParseMonths(m.number(cell))
}

func appendPapers(b []byte, p maturity.Months) ([]byte, error) {
	if p.IsValid() {
		return strconv.AppendInt(b, int64(p), 10), nil
	}
	return b, &grade.FieldError{Value: p.String(), Err: grade.ErrRange}
}

// RowError is the error for a row of a sheet, and for its header. Its fields are File,
// Line (from 1; the header is line 1), ID, Column (from 1; 0 where the row as a whole
// is wrong or the sheet has no such column), Heading and Err, in most cases a
// [*grade.FieldError] with the field, the value as it stands in the cell and what is
// allowed. What else is wrong in the same row is in More, from left to right; All
// lists both. The sheets of package contest have the same error.
type RowError = fault.RowError
