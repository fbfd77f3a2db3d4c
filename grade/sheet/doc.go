// Package sheet reads and writes sheets of carcasses: CSV files with one carcass
// to a row, whose column names carry the unit. It streams, so that a sheet of a
// million carcasses needs no more memory than one of ten.
//
//	id,sex,skeletal,lean,marbling,fat_in,ribeye_sq_in,kph_pct,weight_lb
//	1,steer,A60,A50,Sm40,0.45,12.4,2.5,820
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
// Results are for teaching and analysis. Only authorised federal graders assign
// official grades.
package sheet
