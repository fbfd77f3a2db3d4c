// Package sheet reads the sheets of carcasses that people keep, grades them, and
// writes them. A sheet has a header and one carcass to a row. It streams on all cores,
// so that a million carcasses need no more memory than a thousand.
//
//	Tag;Sex;Marb;BF;REA;HCW
//	T001;S;540;.28;15.0;779
//
// What the columns of a sheet mean, a [Mapping] says. It is data, and stands in a file
// of JSON beside the sheet:
//
//	{
//	  "separator": ";",
//	  "columns": {"Tag": "id", "Sex": "sex", "Marb": "marbling",
//	              "BF": "fat_in", "REA": "ribeye_sq_in", "HCW": "weight_lb"},
//	  "marbling": "Slight00 = 400",
//	  "assumed": {"maturity": "A50", "kph": "2.5%"}
//	}
//
// A sheet is graded and written in one loop:
//
//	r, err := mapping.NewReader("lot7.csv", in)
//	w, err := sheet.NewGradedWriter(out, r.Extra()...)
//	for g, err := range r.Grade(ctx, grade.Rules{Edition: grade.Current}) {
//		var row *sheet.RowError
//		if errors.As(err, &row) {
//			// a row that is refused; the next follows
//		} else if err != nil {
//			// the end: of the input, or of the context
//		} else {
//			err = w.Write(g)
//		}
//	}
//	err = w.Flush()
//
// # Columns
//
// These are our columns; [Columns] yields the same list, with what a cell may hold:
//
//	id             number or name of the carcass, one line of text
//	sex            steer, heifer, cow, bullock, bull
//	skeletal       skeletal maturity, as A70
//	lean           lean maturity, as A70
//	maturity       overall maturity, taken for both; or the two above
//	teeth          permanent incisors, 0 to 8; missing when nobody looked
//	papers_months  age by verified papers, 1 to 600; missing without papers
//	marbling       as Sm40
//	firmness       a term, as slightly firm; missing when nobody looked
//	dark           one third, two thirds, full; none or missing for no dark cutter
//	below_cutter   yes; no or missing otherwise
//	fat_in         fat opposite the ribeye; or fat_mm, fat_cm
//	fat_adjust_in  adjustment for fat elsewhere; or fat_adjust_mm, fat_adjust_cm
//	ribeye_sq_in   ribeye area; or ribeye_sq_cm
//	kph_pct        kidney, pelvic and heart fat, percent of carcass weight
//	weight_lb      hot carcass weight; or weight_kg
//	assumed        what was assumed and not seen: sex, maturity, kph, weight
//	color          color of the lean, a term, as light cherry red; moves no grade
//	texture        texture of the lean, a term, as fine; moves no grade
//	buttons        chine buttons, as 10% ossified or white and soft; settle nothing
//
// The terms are those of the packages maturity and grade. The zero Mapping reads a
// sheet that has our own headings; a heading a letter away from one of ours is then an
// error, so that a misspelled dark is no column for notes. A column that is not read is
// kept, cell by cell as it stands, and [Reader.Extra] lists it.
//
// [Propose] reads a sheet and proposes a mapping, with what it could not place and
// what it doubts. Nothing is guessed without it.
//
// # What a cell may hold
//
// Blanks around a cell do not matter, nor does the case of letters. Numbers may stand
// as .45, 820., +0.1, 4.5E-01 and 2.5%, with groups of three as 1,020, and with the
// unit behind, which then counts. With a decimal comma they are 0,45 and 1.020. Digits
// that are not grouped in threes are no number: 0,45 is an error where the decimal sign
// is a point, and never 45.
//
// Degrees of marbling are names, Small 40 or SM40 or Sm 40, or numbers on the scale that
// the mapping names. Maturity is A60; with the scale of the mapping 160, or a letter
// alone. Sex is a name, or S, H or C; B is none, since it may be a bull or a bullock.
//
// A measure in metric units goes to the nearest 0.0001 of the customary unit, in one
// step, halves away from zero. A number with more places than that in a customary unit
// is refused, unless the mapping says how surplus places are rounded.
//
// Every cell is held to the limits of package grade, [grade.CarcassLimits], where it is
// read: a weight of 9 lb is a slip and not a small carcass.
//
// # What is missing
//
// An empty cell, or one with a mark for missing, leaves its field unset: not taken, and
// not zero. A sheet is graded for yield where it has fat, ribeye, KPH and weight, and
// for quality where it has sex, maturity and marbling, each from a column or assumed
// for the whole sheet; [Reader.Lacks] names what is lacking. What a sheet is graded for,
// every row needs: one without KPH is refused by name in a sheet of yields, and not
// graded on less.
//
// An assumed value stands wherever the sheet has none, and the row says so, in
// [Row.Assumed] and in the column assumed.
//
// # Errors
//
// A row in which something is wrong comes as a [*RowError], and the rows after it come
// as usual. It has the file, the line and the id, and for each thing that is wrong the
// column, the heading and a [*grade.FieldError] with the field, the value and what is
// allowed. Of more than six the message tells six. What is wrong with a header is a
// RowError too, and stops the reading. An error that is no RowError is of the input, of
// the rules or of the context, and comes last.
//
// A cell cannot have a line break in it. That is narrower than the CSV of RFC 4180, and
// it keeps a quote that somebody forgot to close from swallowing the rows after it: it
// spoils its own line only. Lines in which no cell holds anything are skipped, and so
// are empty cells after the last column. A line over 64 KiB is refused.
//
// # What is unlikely
//
// A row that is possible and yet unlikely is graded and has a [Flag]: an id that stood
// before, a measure outside the usual range, a weight that may be in the other unit,
// KPH that may be a fraction. [Reader.Counts] has them in sum. An id is compared with
// at least the 65,536 before it, so that memory stays flat.
//
// # Writing
//
// [Writer] writes rows, [GradedWriter] writes them with overall maturity, quality,
// exact yield, whole yield grade, tier and flags. Both write every column of ours with
// commas between, measures in inches, square inches, percent and pounds, which hold
// them exactly: what is written reads back as the same carcass, and a graded sheet can
// be graded again. Text in a cell is quoted as encoding/csv quotes it. A row that is
// refused is not written and the writer goes on; an error of the output stays, and the
// caller gets it again from Flush.
//
// # Zero values
//
// The zero [Row] and [GradedRow] are rows with nothing set. A [Reader], a [Writer] and a
// [GradedWriter] come from their constructors and are for one goroutine at a time; the
// zero Reader has no rows, and the zero writers refuse every row. They work and are no
// values: package cmp does not compare them, and encoding/json refuses them with a
// [*grade.FieldError].
//
// Results are for teaching and analysis. Only authorized federal graders assign
// official grades.
package sheet
