// Package price turns a graded carcass into money: a base price, premiums and
// discounts for trade tier, yield, weight and defects, and the value per head,
// all in exact decimal dollars.
//
// # Grids
//
// [Terms] are a price grid as data: what is paid per cwt of hot carcass weight,
// and what is added or taken off. [New] checks them and makes a [Grid]; bands
// with a gap or an overlap between them are refused by name. [Grid.Value] prices
// one carcass by the additive method (published: tx-grid-2014): the base price,
// every premium and discount that applies, times the weight. The result explains
// itself line by line, see [Value.Steps].
//
// # Edges
//
// Price classes in print share an edge: 900 lb stands in the row 600-900 lb and
// in the row 900-1,000 lb. Nothing printed says which row owns it, so every grid
// says it: [Terms].WeightEdge and [Terms].YieldEdge give an inner edge to the
// band below it or to the band above it. The outer ends belong to the bands that
// they end. [Report.Terms] gives an edge of weight to the band below, because the
// last row is printed "over 1,050", and an edge of yield to the band above,
// because the last row is printed "5.0 and up" (both derived); set the fields
// otherwise where a buyer does otherwise.
//
// # Defects and programs
//
// A [Mark] is anything else that has a price of its own. [MarksOf] reads dark
// cutter, bullock, hardbone and over 30 months off the assessment; dairy-type,
// all natural and the like cannot be seen there and are given by the caller. A
// mark's amount is added to that of the tier, or stands in place of it where
// [MarkAmount].Instead says so. A dark cutter's quality grade is reduced already
// when it comes here; whether a buyer takes the discount besides or instead is
// for the grid to say.
//
// # Reports
//
// [Reports] yields what the public weekly report printed, with its date. The
// amounts are a market of one week and no rule: they show how a grid works, and
// a sale wants its own. Amounts of fat that the report gives for carcasses
// without a yield grade are not used.
//
// # Money and rounding
//
// An amount has at most 4 places and is under 10,000 dollars. Prices and values
// are exact; [Value.PerHead] has up to 10 places. Whatever is rounded takes a
// named [grade.Rounding]. No float has a part in it.
//
// Results are for teaching and analysis. Only authorised federal graders assign
// official grades.
package price
