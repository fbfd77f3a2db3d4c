// Package price turns a graded carcass into money: a base price, premiums and
// discounts for trade tier, yield, weight and defects, and the value per head,
// all in exact decimal dollars.
//
// # Grids
//
// An [Offer] is a price grid as data: what is paid per cwt of hot carcass weight,
// and what is added or taken off. [New] checks them and makes a [Grid]; bands
// with a gap or an overlap between them are refused by name. [Grid.Value] prices
// one carcass by the additive method (published: tx-grid-2014): the base price,
// every premium and discount that applies, times the weight. The result explains
// itself line by line, see [Value.Steps].
//
//	base                 300.00   dollars per cwt
//	tier select          -28.25
//	yield 2.5 to 3        +1.38   the carcass has 2.764
//	weight 600 to 900 lb  +0.00   the carcass has 880 lb
//	price per cwt        273.13
//	value per head     2,403.544  273.13 times 8.80 cwt
//
// That is a made-up carcass on the averages of the report and a base of 300.00;
// no itemized example with an answer was found in print.
//
// # Bands
//
// A [Band] runs from From to To in the exact units of package grade, and one
// whose To is zero has no upper end. Bands may be given in any order. What is
// under the lowest band or over the highest has no price: the grid refuses it
// rather than guess. Yields are the exact values of the federal equation, so that
// 2.4999 and 2.5 can stand in different bands; a yield under 1 counts as 1,
// because the whole grade is kept to 1 to 5. A grid without tiers, without yield
// bands or without weight bands makes no difference for what it leaves out.
//
// # Edges
//
// Price classes in print share an edge: 900 lb stands in the row 600-900 lb and
// in the row 900-1,000 lb. Nothing printed says which row owns it, so every grid
// says it: [Offer].WeightEdge and [Offer].YieldEdge give an inner edge to the
// band below it or to the band above it. The outer ends belong to the bands that
// they end.
//
// # Attributes
//
// An [Attribute] is anything else that has a price of its own: a defect, a kind of cattle
// or a program. [AttributesOf] reads dark cutter, bullock, hardbone and over 30 months off
// the assessment; dairy-type, all natural and the like cannot be seen there and are given
// by the caller. An attribute's amount is added to that of the tier, or stands in place of it where
// [AttributeAmount].Instead says so. A dark cutter's quality grade is reduced already
// when it comes here; whether a buyer takes the discount besides or instead is
// for the grid to say.
//
// A tier that the grid does not name has no price and is refused with [ErrNoPrice].
//
// An attribute that [AttributesOf] reads and the grid does not price adds nothing, and the
// explanation says so. An attribute that the caller names has to be priced.
//
// # Live animals
//
// [Dressing] gives the dressing percent, [BreakEven] the one at which a live and
// a carcass price pay the same, [Value.PerLiveCwt] what a carcass value comes to
// per cwt of live weight, and [PerHead] a weight at a price.
//
// # Order of a class
//
// [ByHead] and [ByCwt] compare two values, as slices.SortFunc wants it; exhibits of
// equal value share a place. Value is not merit: per head, weight decides most classes,
// and a placing by merit comes from package placing/class.
//
// # Prices
//
// The package has no prices of its own: terms come from the caller, as from a JSON
// file. Two weeks of the public weekly report are such files in the repository, under
// examples/prices (official: ams-ct155-2025-01-06; published: ams-ct169-2014-10-20).
// A market of one week is no rule; a sale wants its own amounts.
//
// # Money and rounding
//
// An amount has at most 4 places and is under 10,000 dollars. Prices and values
// are exact; [Value.PerHead] has up to 10 places. Whatever is rounded takes a
// named [grade.Rounding]. No float has a part in it.
//
// # Zero values, copies and errors
//
// The zero [Offer] has no base and makes no grid; the zero [Grid] prices nothing;
// the zero [Value] is nothing for nothing; the zero [Attribute] and [Edge] are not
// set. A Grid keeps copies of its terms and hands out copies, and is safe for use
// by many goroutines. Errors are [*grade.FieldError] with the entry, the value
// and what is allowed; [New] tells all that is wrong at once, see [grade.Problems].
// errors.Is tells [ErrGap], [ErrOverlap], [grade.ErrRepeated] and
// [ErrNoPrice] apart. Nothing panics.
//
// # Encodings
//
// An [Offer] is a JSON object with names in lower case. It is read by them, in any case,
// down to the entries of its lists: the error tells of every field that cannot be read and
// of every name that is no field, each with its path; the receiver is then left as it was.
// A name that is left out leaves its field as it was. A [Grid] is written as its offer and
// made of it again, so both come back from JSON unchanged or with an error. A [Value] is
// refused: keep the grid and the assessment.
//
// Results are for teaching and analysis. Only authorized federal graders assign
// official grades.
package price
