package sheet

import (
	"iter"

	"example.com/ribface/grade"
)

// kind is what a column holds.
type kind uint8

const (
	extra kind = iota // a column that the package does not know
	id
	sex
	skeletal
	lean
	teeth
	papers
	marbling
	firmness
	dark
	belowCutter
	fat
	fatAdjust
	ribeye
	kph
	weight
	kinds
)

// Column is a column that the package knows. Its name carries the unit.
type Column struct {
	Name    string // as it stands in the header
	Field   string // the field of the carcass, in the words of the errors of package grade
	Unit    string // the unit of a bare number; empty where the cell is no measure
	Allowed string // what a cell may hold, besides nothing
}

// column is a Column with its kind.
type column struct {
	Column
	kind   kind
	metric bool // the unit is not the customary one, in which measures are counted
}

const number = "a number with at most 4 places, "

// columns holds every known column, in the order in which they are written;
// of the spellings of one kind the first is the one that is written.
var columns = [...]column{
	{Column{"id", "id", "", "one line of text"}, id, false},
	{Column{"sex", "sex class", "", "steer, heifer, cow, bullock, bull"}, sex, false},
	{Column{"skeletal", "skeletal maturity", "", "A00 to E100"}, skeletal, false},
	{Column{"lean", "lean maturity", "", "A00 to E100"}, lean, false},
	{Column{"teeth", "teeth", "", "the count of permanent incisors, 0 to 8"}, teeth, false},
	{Column{"papers_months", "papers", "months", "whole months, 1 to 600"}, papers, false},
	{Column{"marbling", "marbling", "", "Devoid00 to Ab100"}, marbling, false},
	{Column{"firmness", "firmness", "", "very soft, soft, moderately soft, slightly soft, slightly firm, moderately firm, firm"}, firmness, false},
	{Column{"dark", "dark cut", "", "none, one third, two thirds, full"}, dark, false},
	{Column{"below_cutter", "below Cutter", "", "yes, no"}, belowCutter, false},
	{Column{"fat_in", "fat", "in", number + "0 to 3 in"}, fat, false},
	{Column{"fat_mm", "fat", "mm", number + "0 to 3 in (76.2 mm)"}, fat, true},
	{Column{"fat_cm", "fat", "cm", number + "0 to 3 in (7.62 cm)"}, fat, true},
	{Column{"fat_adjust_in", "fat adjustment", "in", number + "-3 to 3 in, leaving the fat 0 to 3 in"}, fatAdjust, false},
	{Column{"fat_adjust_mm", "fat adjustment", "mm", number + "-3 to 3 in, leaving the fat 0 to 3 in"}, fatAdjust, true},
	{Column{"fat_adjust_cm", "fat adjustment", "cm", number + "-3 to 3 in, leaving the fat 0 to 3 in"}, fatAdjust, true},
	{Column{"ribeye_sq_in", "ribeye", "sq in", number + "over 0 to 25 sq in"}, ribeye, false},
	{Column{"ribeye_sq_cm", "ribeye", "sq cm", number + "over 0 to 25 sq in (161.29 sq cm)"}, ribeye, true},
	{Column{"kph_pct", "KPH", "%", number + "0 to 10%"}, kph, false},
	{Column{"weight_lb", "weight", "lb", number + "over 0 to 1800 lb"}, weight, false},
	{Column{"weight_kg", "weight", "kg", number + "over 0 to 1800 lb (816.4663 kg)"}, weight, true},
}

// written is the column that is written for each kind, and its place in a
// written sheet, counted from 1.
var written, place = func() (c [kinds]*column, at [kinds]int) {
	n := 0
	for i := range columns {
		if k := columns[i].kind; c[k] == nil {
			n++
			c[k], at[k] = &columns[i], n
		}
	}
	return c, at
}()

// kindOf finds the kind of a field by the name that errors of package grade use.
// The field that stands in no list is the adjusted fat.
func kindOf(field string) kind {
	for i := range columns {
		if columns[i].Field == field {
			return columns[i].kind
		}
	}
	return fatAdjust
}

// Columns yields every column that can be read, in the order in which they are
// written. Where a measure has several columns, one for each unit, the first is
// the one that is written.
func Columns() iter.Seq[Column] {
	return func(yield func(Column) bool) {
		for i := range columns {
			if !yield(columns[i].Column) {
				return
			}
		}
	}
}

// results are the columns that a [GradedWriter] adds.
var results = [...]string{"overall", "quality", "yield", "yield_grade", "tier"}

// qualityText spells every quality, so that writing makes no strings.
var qualityText = func() (t [256]string) {
	for q := range grade.Qualities() {
		t[q] = q.String()
	}
	return t
}()

// measures is the set of kinds that stand together or not at all.
const measures = 1<<fat | 1<<ribeye | 1<<kph | 1<<weight
