// Package grade turns what is seen and measured on a ribbed beef carcass into
// its quality grade and yield grade, exactly and with every step explained.
//
//	a, err := grade.Current.Assess(carcass)
//	fmt.Println(a.Maturity, a.Quality, a.Yield.Grade()) // A70 Low Choice 3
//	for _, step := range a.Steps() {
//		fmt.Println(step)
//	}
//
// Results are for teaching and analysis. Only authorized federal graders assign
// official grades. In coolers and plants the rules of the site come first.
//
// # What it computes
//
// A [Carcass] holds the evidence: sex class, maturity, marbling, firmness, dark
// cutting and four [Measures]. [Edition.Assess] grades it and returns an
// [Assessment], whose Steps list each rule with the numbers put in, what came
// out and the source of the rule. [Edition.Quality] and [Measures.Yield] are the
// halves on their own.
//
// The quality grade is the best grade that is open to the sex class and the
// overall maturity, and whose least marbling and firmness are met; a value on a
// line meets it. A dark cutter then loses up to one full grade in Prime, Choice
// and Select, up to half a grade in Standard and Commercial, and nothing below.
//
// The yield grade is the federal equation
//
//	2.50 + 2.50 fat + 0.20 KPH + 0.0038 weight - 0.32 ribeye
//
// with fat in inches, kidney, pelvic and heart fat (KPH) in percent of carcass
// weight, hot carcass weight in pounds and ribeye in square inches.
// [Yield.Grade] is the whole grade 1 to 5; the [Yield] itself stays exact and
// may lie below 1 or above 5. [Measures.Terms] splits it over the four measures.
//
// The standard has changed, and an [Edition] is data, not code: 1975, 1987,
// 1997, 2016 and 2017. [EditionOn] finds the one in use on a day, [Current] is
// the newest, and [Edition.Lines] yields every line of the grade chart with its
// own citation. Teeth and papers count from 2017 on.
//
// [Measures.Shortcut] is the method taught for work without a calculator. It
// differs from the equation and has a type without a whole grade,
// because it never sets one. [Measures.RetailCuts] estimates the share of
// closely trimmed retail cuts.
//
// [Measures.Solve] answers what would have to change: the value of one measure
// that puts the carcass exactly on a yield. [Rules.QualityChanges] lists the
// marbling at which the quality changes, and [Rules.Estimate] says which grades
// are possible when the figures are estimates with [Tolerances].
//
// # Units
//
// [Thickness], [Area], [Share] and [Weight] are integers of 0.0001 inch, square
// inch, percent and pound, made by functions that name the unit: [Inches],
// [Millimeters], [SquareInches], [SquareCentimeters], [Percent], [Pounds],
// [Kilograms], and the Parse functions. An inch is 25.4 mm, a pound 0.45359237 kg;
// metric input goes to the nearest 0.0001 of the customary unit in one step. A decimal
// comes in by its text, as ParseThickness(d.String() + " in"). Metric decimals alone have
// functions: they fit with any number of places and come back, as
// KilogramsDecimal(w.Kilograms()) does.
//
// A [Marbling] is a degree and points into it, as Small 40, one small integer
// like the maturity score. Md is Moderate and Mt is Modest. Two numeric scales
// are in print, on which a bare 400 is Small 00 or Slight 00; a
// [MarblingScale] names the one that is meant.
//
// # Zero values
//
// The zero [Thickness], [Area], [Share] and [Weight] were not taken, and the zero
// [Yield] and [ShortcutYield] are not set; every computation refuses them by name.
// [Inches] of 0 is a taken zero, which is a possible fat and KPH and an impossible
// ribeye and weight; IsSet tells the two apart. Enumerations start at 1, and their
// zero is not set: the zero [Sex], [Edition] and [Marbling] are refused by field
// name. Where zero means something it says so: the zero [Firmness] was not looked at
// and is taken to go with the marbling, the zero [DarkCut] is no dark cutter, the
// zero [Part] is the whole grade. The zero [Carcass] is refused by every missing
// field, and the zero [Rules] because they have no edition.
//
// All values compare with ==, serve as map keys and go through cmp.Diff without
// options.
//
// # Exactness
//
// A yield is an integer of 1e-8 of a grade, and the equation is integer
// arithmetic without any rounding. No float64 is on the way to a grade, so a
// carcass gets the same grade on every processor.
//
// Take all carcasses with fat 0.00 to 2.00 in by 0.05, KPH
// 0.0 to 6.0 % by 0.5, weight 400 to 1,200 lb by 1 and ribeye 7.0 to 20.0 sq in by
// 0.1: 55,928,223 of them. The formula in float64, written left to right as
// above, with each input the nearest float64 to its decimal text, and math.Floor
// for the whole grade, is wrong at 3,002 of them, and rounded down to a tenth at
// 36,560 (amd64 without fused operations). Only carcasses that stand exactly on a
// grade can get the wrong one, there are 11,240 of these, and every one of the
// 3,002 comes out one grade too low. Two of them:
//
//	fat 0.60  KPH 1.5  weight 660  ribeye 11.9   exact 3   float64 2.9999999999999996, grade 2
//	fat 0.35  KPH 3.5  weight 915  ribeye 11.1   exact 4   float64 3.9999999999999996, grade 3
//
// The claim is that the obvious float64 code is wrong, not that no float64 code
// can be right: rounding to whole units of 0.0001 first repairs it, which is
// fixed point by a detour.
//
// A float may still come in through [Inches] and its like. It goes to the nearest
// 0.0001 of the customary unit once, at the door. NaN, infinities and numbers that do
// not fit become an invalid measure that every computation refuses by name. Text in the
// customary unit with more than four places is refused with [ErrPlaces], and rounded
// where the caller names a [Rounding].
//
// # Rounding
//
// Each rounding has a name and is defined for halves and negative numbers.
// [Yield.Grade] drops decimals toward minus infinity and then keeps the number
// to 1 to 5. [Yield.Round] takes [Down], toward minus infinity; [HalfUp], halves
// toward plus infinity; [HalfEven], halves to the even digit. There is no
// default: an unset Rounding is refused. Metric input rounds halves away from
// zero at 0.0001 of the customary unit. Package fmt drops the decimals of a yield
// that is printed to fewer places, so that 2.96 as %.1f is 2.9, and takes a
// measurement to the nearest.
//
// # Errors
//
// A missing or impossible value gives a [*FieldError] that names the field, the
// value and what is allowed, as
//
//	fat: -0.1 in: out of range; allowed: 0 in to 3 in
//
// and no grade. All that is wrong with a carcass is told at once: [Problems] lists
// it, each with its Path by the JSON names, as "measures.fat". Text that cannot be
// read gives a [*ParseError] that names the wrong piece. Both wrap one of
// [ErrMissing], [ErrSyntax], [ErrUnknown], [ErrRange], [ErrPlaces] and [ErrRepeated]
// for errors.Is. A measure that is possible and yet far from usual is
// no error; [Measures.Unusual] points it out. Nothing panics but
// [MustParseMarbling].
//
// # Encodings
//
// Every value type writes text in one canonical spelling with its unit: "0.6 in",
// "Sm40", "Low Choice". It reads more: any case, blanks, and the further spellings
// that are listed at each Parse function, where one meaning is possible; where two
// are it refuses, as "Sm5" and the sex class "B". So it works with encoding/json,
// flag.TextVar and log/slog. What is not set is empty text.
//
// What is stored and sent also reads and writes database columns, by Value and Scan.
// Measurements and yields are numbers there, which a numeric column holds and sorts;
// what is not set is NULL, and NULL is read as it. Settings ([Rounding], [Trait],
// [MarblingScale], [RetailTable]) have text alone.
//
// Numbers are also read from bare JSON numbers in the customary unit, never through a
// float64. JSON names are in lower case. A Carcass with a name that is no field is
// refused, every problem with its path, and one that is left out was not taken. A decode
// that fails leaves its receiver as it was.
//
// # Sources
//
// Every line of the chart and every step carries a [cite.Citation]: a standing,
// from official to memory, and the ids of its sources, which [cite.Lookup] turns
// into titles. The yield equation is official (cfr-54-105). Of the chart, the
// lines of Choice and Select in B in 1987 and the dark-cutting rule are official
// (cfr-1987-54-p51, cfr-1965-53-p26), most of A is published, the thirds of
// Commercial are derived from the text of 1965 to 1975 (cfr-1965-53-p25), and the
// minima of Commercial and Utility are from memory and say so. Where sources disagree the
// choice is written at the type that makes it.
//
// # Out of scope
//
// The package sees no pictures and measures nothing. It knows nothing of prices
// (grade/price), of files (grade/sheet), or of classes and contests (placing and
// the packages below it), and imports never go back. It grades steers, heifers, cows, bullocks and bulls by the standard for
// carcass beef, and neither veal nor calves, nor other countries' schemes. It
// does not apply the requirements of any branded program.
package grade
