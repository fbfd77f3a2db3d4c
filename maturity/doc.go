// Package maturity holds the physiological maturity of beef carcasses: the
// groups A to E with their units, the balancing of skeletal and lean maturity
// into overall maturity, age by teeth or papers, and the ages and signs that go
// with the groups.
//
//	s, err := maturity.Balance(maturity.A.At(90), maturity.A.At(30)) // A70
//
// Results are for teaching and analysis. Only authorized federal graders assign
// official grades. In coolers and plants the rules of the site come first.
//
// # What it computes
//
// A [Score] is a point on the maturity scale: a [Group] and units into it, as
// A70. [Group.At] makes one, [Parse] reads one.
//
// [Balance] combines the skeletal score and the lean score into the overall
// score. The federal text has no arithmetic for it; it says that bone gets
// slightly more weight and that the overall score is never more than one full
// group from bone. The arithmetic here is the one taught to judges: the mean
// when the two are 40 units apart or less; the mean moved 10 units toward bone
// when they are farther apart; then held to within 100 units of bone; then, with
// bone C15 or older, held at C00 or older. A half unit goes to bone.
//
// No source settles what becomes of the units, or of much older lean on bone in
// B. [Balancing] names these choices, and the zero value has the defaults: units stay
// as they come out, and the arithmetic may carry bone in B into C.
//
// [Evidence] holds all that is known of the age of one carcass. [Balancing.ByAge]
// gives the overall score where teeth and papers count, as they do from 18
// December 2017: two permanent incisors or fewer, or verified papers for less
// than 30 months, put the carcass in group A unless its skeleton is in D or E.
// [Balancing.ByBone] gives the score from skeleton and lean alone, as before that
// day. [Balancing.Steps] explains either of them, line by line, with the rule, the
// numbers put in and the source. The package grade picks the right one for an
// edition of the standard.
//
// [Group.Months] and [Score.Months] give the approximate age, and
// [FromOssification] and [Score.Ossification] the share of the thoracic buttons
// that has turned to bone. They help the eye and decide nothing.
//
// # Units
//
// A Score is one small integer: 100 for A00, one for every unit, 600 for E100.
// Unit 100 of a group and unit 00 of the next are the same point and print as
// the later: A100 is B00. So scores compare with < and ==, sort with
// [Score.Compare], and work as map keys. [Score.Number] is the same integer as
// the one that research reports print for the group times 100.
//
// [Months] are whole months. [Teeth] count permanent incisors, 0 to 8.
// Ossification is in whole percent.
//
// # Zero values
//
// The zero Group and the zero Score are not set: they print as "unset", are not
// valid, and every computation refuses them by the name of the field. The zero
// Teeth means that nobody looked, which differs from a mouth without permanent
// incisors, Incisors(0). The zero Months means that there are no papers. The
// zero [Tens] and the zero [OldLean] are the defaults named above, and so are
// valid.
//
// A score asked for with impossible units, as A.At(150), is kept as an invalid
// value that remembers what was asked: it prints as A(150), and every
// computation refuses it with that text. It never turns into another point, and
// the same holds for Incisors(9).
//
// # Exactness
//
// All arithmetic is on integers, so the same evidence gives the same score on
// every processor. No float64 is on any way to a score. That matters where a
// carcass stands on a line: in the package grade, whose yield equation is the
// part with decimals, the plain float64 formula gives a wrong whole grade at
// 3,002 of the 55,928,223 carcasses of a grid (fat 0 to 2 inches by 0.05, kidney
// fat 0 to 6 percent by 0.5, weight 400 to 1,200 pounds by 1, ribeye 7 to 20
// square inches by 0.1). Fat 0.60 in, kidney fat 1.5 %, weight 660 lb and ribeye
// 11.9 sq in are exactly 3.0000 and come out in float64 as 2.9999999999999996,
// grade 2; fat 0.35 in, kidney fat 3.5 %, weight 915 lb and ribeye 11.1 sq in are
// exactly 4.0000 and come out as 3.9999999999999996, grade 3. A mean of two
// maturity scores has the same trap in small: A70 and A75 have no whole unit
// between them, and a rounding that is not named would send the same pair up in
// one program and down in another.
//
// # Rounding
//
// Balancing rounds in one place: the mean of two scores that are an odd number
// of units apart goes to the unit nearer to bone (derived). Under
// [TensTowardBone] and [TensTowardLean] the result is a ten: the nearest that
// keeps the limits of [Balance], a five toward the one named (from memory, and
// weak). Ages drop their decimals.
// Ossification rounds half up, to a unit or to a whole percent.
//
// # Errors
//
// A value that is missing or impossible gives a [*FieldError], which names the
// field, the value and what is allowed. Text that cannot be read gives a
// [*ParseError], which names the kind, the text, the wrong piece of it and what
// is allowed. Both wrap one of [ErrMissing], [ErrSyntax], [ErrUnknown] and
// [ErrRange] for errors.Is. All that is wrong with evidence is told at once;
// [Problems] lists it, each with its Path by the JSON names. Bad syntax and an unknown name are different: "A7"
// has not the form of a score, "F20" has it and names no group.
//
// Nothing panics but [MustParse], which is for hard-coded text.
//
// # Encodings
//
// Every value type encodes itself as text, and so works with encoding/json, with
// flag.TextVar, with log/slog and as a key of a JSON object. There is one
// canonical spelling, the one of String; text of any case and with blanks is read,
// and the other spellings that are listed at each Parse function. The zero value is empty text. Months
// and Teeth are also read from a bare JSON number, which counts months and
// teeth.
//
// The same types, but for the settings [Tens] and [OldLean], read and write database
// columns of text through Value and Scan; Scan takes string and []byte alike, and
// Months and Teeth also take an integer. What is not set is NULL, and NULL is read as
// it. [Evidence] is a JSON object, read by the names of its fields in any case: the error
// tells of every field that cannot be read and of every name that is no field, each with
// its path, and a name that is left out leaves its field as it was. A decode that fails
// leaves its receiver as it was.
//
// JSON names are in lower case. [Evidence] with a name that is no field is refused.
//
// # Sources
//
// Each rule carries a [cite.Citation], a standing with the ids of its sources,
// and [cite.Lookup] gives the full source. The groups and the limit of one full
// group from bone are official (cfr-1965-53-general, ams-maturity-slides), and
// so is the day on which teeth and papers began to count (fr-2017-12-06). The
// arithmetic of balancing is common practice among those who teach it
// (quiz-quality-concepts). That two incisors or fewer are under 30 months is
// published (checkoff-maturity-under30, bif-quality), and so is the bar on
// skeletons in D and E (ext-tamu-maturity-2018). The share of ossified buttons
// is published up to C00 (uni-grading-slides) and from memory above it.
//
// # Out of scope
//
// The package knows nothing of marbling, weights or grades, which are in the
// package grade, and nothing of contests. It does not look at pictures, does not
// judge whether papers are genuine, and does not know the ossification score of
// other countries' schemes.
package maturity
