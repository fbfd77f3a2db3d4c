// Package sheet reads and writes sheets of carcasses: CSV files with one carcass
// to a row, whose column names carry the unit. It streams, so that a sheet of a
// million carcasses needs no more memory than one of ten.
//
//	id,sex,skeletal,lean,marbling,fat_in,ribeye_sq_in,kph_pct,weight_lb
//	1,steer,A60,A50,Sm40,0.45,12.4,2.5,820
//
// A sheet is read, graded and written in one loop:
//
//	r, err := sheet.NewReader(in)
//	w, err := sheet.NewGradedWriter(out, r.Extra()...)
//	for g, err := range r.Grade(grade.Rules{Edition: grade.Current}) {
//		// report err, or use g.Assessment
//		err = w.Write(g)
//	}
//	err = w.Flush()
//
// # Columns
//
// A sheet has a header and any of these columns, in any order:
//
//	id             number or name of the carcass, one line of text
//	sex            steer, heifer, cow, bullock, bull
//	skeletal       skeletal maturity, as A70
//	lean           lean maturity, as A70
//	teeth          permanent incisors, 0 to 8; empty when nobody looked
//	papers_months  age by verified papers, 1 to 600; empty without papers
//	marbling       as Sm40; also in full, as Small40
//	firmness       a term, as slightly firm; empty when nobody looked
//	dark           one third, two thirds, full; none or empty for no dark cutter
//	below_cutter   yes; no or empty otherwise
//	fat_in         fat opposite the ribeye; or fat_mm, fat_cm
//	fat_adjust_in  adjustment for fat elsewhere; or fat_adjust_mm, fat_adjust_cm
//	ribeye_sq_in   ribeye area; or ribeye_sq_cm
//	kph_pct        kidney, pelvic and heart fat, percent of carcass weight
//	weight_lb      hot carcass weight; or weight_kg
//
// [Columns] yields the same list. The terms are those of the packages maturity
// and grade. Numbers are bare, with at most 4 places: the unit stands in the
// header, once, and a measure in two units is an error. Metric numbers are turned
// into the nearest 0.0001 of the customary unit.
//
// The spelling of a name is exact: lower case, with underscores. A sheet is
// divided by commas, or by what [Options].Comma says: a semicolon, a tab or a
// bar. Numbers have a point and no grouping whatever the divider is. A byte order
// mark before the header and a carriage return before the end of a line are left
// out, as spreadsheets write both.
//
// # What may be left out
//
// An empty cell, or a column that is not there, leaves its field unset, and
// grading then refuses the carcass by the missing field. Fat, ribeye, KPH and
// weight are given together or not at all, in the header and in each row, because
// an unset fat or KPH would read as zero and give a wrong yield grade without any
// error.
//
// A column that is not known is an error of the header, since it may be a known
// one misspelled; [Options].Extra keeps it instead, cell by cell as it stands.
//
// No column has to be there, the id neither. Two rows may have the same id: a
// stream that remembers every id would not be flat in memory.
//
// # What a cell may hold
//
// Every cell is checked when it is read, so that a wrong figure is found where it
// stands and not in the sum: fat 0 to 3 in, ribeye over 0 to 25 sq in, KPH 0 to
// 10%, weight over 0 to 1,800 lb, an adjustment that leaves the fat 0 to 3 in,
// 0 to 8 incisors, 1 to 600 months. These are the limits of package grade, which
// keep the published extremes inside (derived: nbqa-2016-cows). A number with
// more places than four is refused and not rounded. A number that ends in its
// unit is refused too: the unit stands in the header.
//
// # Errors
//
// What is wrong with a header stops the reading. What is wrong with a row does
// not: it comes as an [*Error] with the line, the number and name of the column,
// and inside it a [*grade.FieldError] with the field, the value and what is
// allowed; all bad cells of a row are reported at once, and the next row follows.
// [Reader.Grade] gives the errors of grading the same form.
//
// A cell cannot have a line break in it. That is narrower than the CSV of RFC
// 4180, and it keeps a quote that somebody forgot to close from swallowing the
// rows after it: it spoils its own line only.
//
// # Writing
//
// [Writer] writes rows, [GradedWriter] writes them with overall maturity,
// quality, exact yield, whole yield grade and trade tier. Both write every known
// column, measures in inches, square inches, percent and pounds, which hold them
// exactly: what is written reads back as the same carcass. A graded sheet reads
// back with [Options].Extra.
//
// Text in a cell is quoted as encoding/csv quotes it. Line breaks in text are
// refused, since they would not be read back. A row that is refused is not
// written and the writer goes on; an error of the output stays, and the caller
// gets it again from Flush.
//
// # Speed and memory
//
// Reading, grading and writing a row takes less than twice the time that
// encoding/csv alone takes to read and write it, and two allocations: the text of
// the line and the id. BenchmarkSheet compares them. Lines are read through a
// buffer of 64 KiB, and a longer line is an error.
//
// # Zero values
//
// The zero [Row] and [Graded] are rows with nothing set. The zero [Options] are a
// sheet divided by commas in which every column is known. A [Reader], a [Writer]
// and a [GradedWriter] come from their constructors and are for one goroutine at
// a time; the zero Reader has no rows, and the zero writers refuse every row.
//
// Results are for teaching and analysis. Only authorised federal graders assign
// official grades.
package sheet
