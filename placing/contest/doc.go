// Package contest takes over when the cards of a judging contest are handed in: it
// reads and writes them as sheets, scores them, ranks members and teams, and tells
// each member what was missed and why.
//
// # The way of a contest
//
// A [Format] says what is scored, who counts and how ties are broken; [Scoring] says
// what an answer loses. [NewContest] puts them together with the official answers
// and checks that the items add up to the stated values. [Contest.Placing],
// [Contest.Estimate] and [Contest.Hand] score one card each; a [Tally] adds the
// items up, and [Tally.Standings] ranks them. [Contest.Feedback] is for one member;
// [PlacingFeedback.Missed] adds why the official placing has a pair the other way,
// from the graded class of package class.
//
// # Sheets
//
// [PlacingSheet], [EstimateSheet], [HandSheet], [OfficialSheet] and [KeySheet] read
// and write comma-separated text, one row on each line. The header gives the unit:
// fat_in and fat_mm are the same fact in two units. A row that cannot be read gives
// a *RowError of package grade/sheet with its line and column, and the rows after it
// are read all the same. What is written is read back as it was.
//
// # What an estimate loses
//
// No contest rule book with a legible table of points for grades of beef was found,
// so the caller gives one: a [Ladder], where each line between two answers has a
// weight and an answer loses those that it crosses, up to the value of the item; or,
// for yield grades, so many points for each step, or a table of them ([YieldRule]).
// One published table is at hand to be named: that for yield grades in thirds, from a
// teaching deck ([TaughtThirds]).
//
// # Cards without an answer
//
// A card or an item may be blank, double-marked or unreadable. What it then scores
// is a named rule, [placing.CardRules], with published defaults: one for placings,
// another for estimates. An empty field of a grading card is none of the three: it says
// nothing, and the standings list it as missing.
//
// # Teams and ties
//
// The best k of m members count ([Format].Counting of TeamMembers), anew in every
// [View], so that a division of the contest or of ages has its own. Tie-breaks are
// an ordered list of sums of components; for teams, of the counting members or of
// all. A tie that no step breaks stays a tie: the rank is shared and the next one is
// left out. What a team of too few scores is a rule too ([ShortTeam]).
//
// The order in which cards are added changes nothing. Where two cards exclude each
// other, as two placings of one class, the one that comes second is refused with an
// error.
//
// # Exactness
//
// [Points] are whole numbers of 0.0001 of a point, and no float has a part in any
// score. The error of a yield estimate is split exactly ([SplitYield]): the parts
// add up to it to the last digit.
//
// # Zero values and errors
//
// What was not given is zero: a fact of [Facts], [Points] that are not set. A mark in
// the place of a fact stands in [Marks]. The zero [Item] is nothing scored, the zero
// [View] is everyone over everything. Errors are [*placing.FieldError] and
// [*placing.ParseError] with the sentinels of package placing under them. They tell of
// everything that is wrong at once, each with its path in the input, as
// "facts[2].facts.quality"; [placing.Problems] lists them. Nothing panics.
//
// # Encodings
//
// Points have text, bare numbers in JSON and numbers in a database, NULL where they
// are not set. Cards, keys, rules with their ladders and formats are structs with JSON
// names in lower case. They are read by these, in any case, down to the parts in them: the
// error tells of every field that cannot be read and of every name that is no field, each
// with its path; the receiver is then left as it was. A name that is left out leaves its
// field as it was. What is read is checked where it is used ([NewContest]). Kinds, steps and
// rules for short teams are settings and have text alone. All values compare with package
// cmp without options. [Contest], [Tally] and [Sheet] work and are no values: cmp does not
// compare them, and encoding/json refuses them with a [*placing.FieldError]. Keep what
// they are made of, or what they give.
//
// # Further packages
//
// Package season follows members over a season; package practice makes
// invented classes with their key.
//
// Results are for teaching and analysis. Only authorized federal graders assign
// official grades.
package contest
