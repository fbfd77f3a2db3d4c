// Package class takes on a class of beef carcasses the way a coach or an
// official does: grade every exhibit, walk over the carcasses, ask whether the
// rib speaks for the rest, place the class by a policy, propose cuts, and give
// reasons.
//
// Results are for teaching and analysis. Only authorized federal graders assign
// official grades.
//
// # The way of the work
//
// A [Class] holds the exhibits, one weight posted for all of them where there is
// one, and a [Walk]. [Class.Grade] gives a [Graded] class, from which the rest is
// asked:
//
//   - [Graded.Represent] compares the rib with the walk and says in a sentence
//     whose rib does not speak for the carcass, and by how much its fat is usually
//     adjusted. Nothing is graded by that until the caller hands it to
//     [Class.Adjust].
//   - [Graded.Place] places the class by a [Policy], [Graded.Decide] one pair.
//   - [Placing.ProposeCuts] proposes cuts for the placing. What cuts would do, the
//     package placing tells of any official placing.
//   - [Graded.Reasons] gives the reasons for any order, a committee's or a
//     member's as well as the policy's: facts first, as data, and
//     [Reasons.Spoken] as a member would say them. [Graded.Why] does so for one
//     pair.
//   - [Graded.Reversals] and [Graded.CouldReverse] ask what would turn a pair.
//
// # The posted weight
//
// A contest posts one weight for the class (published: amsa-committee).
// Class.Posted is that weight: it stands in for every exhibit's own, and
// [Graded.Cautions] says so.
//
// # The walk
//
// A judge compares all exhibits over one site of the carcass before going to the
// next, from the round down. A [Look] is one site with a [placing.Ranking] of all
// exhibits, ties allowed, written "3 1=2 4"; [placing.RankScores] takes scores
// instead. A walk may stop anywhere; [Walk.Missing] says what it lacks and
// [Site.LookFor] what to look for. Color, texture and firmness of the lean and the
// chine buttons are part of the carcass.
//
// # Policy, margins and cycles
//
// A [Policy] is data, and every rule of it has its source and standing;
// [Policy.Steps] tells them. [DefaultPolicy] places as a coach would; beside it
// stand [NotesPolicy], the course notes, [CutabilityPolicy], strict cutability, and
// [ValuePolicy], value on a price grid. [Graded.Splits] says in which pairs of a
// class policies differ.
//
// [Graded.Decide] says how a pair is decided, in full, with its margin: how far the
// yields would have to move to turn the pair. A pair that no yield can turn is firm.
// A policy with trade-offs can run in a cycle; the placing is then the order with
// the least total margin against it, which never goes against a firm decision, and
// the result names the cycle, the pairs in it and those gone against. A policy that
// weighs everything by one exchange, as value or cutability, has no cycles.
//
// Exhibits with new numbers are placed as before, but for exhibits that the policy
// cannot tell apart: those go by number, and their [Decision] has no ground.
//
// Improving one trait of an exhibit (marbling, fat, ribeye, kidney fat, weight,
// bone, firmness, less dark cutting) never turns a decision of the default policy
// against it, with these exceptions. One is a dark cutter whose own quality grade
// comes out lower, as more marbling, younger bone or firmer lean can bring about.
// The others come up into a better tier, where other rules hold: against one of the
// tier that it leaves over which it had 300 points of marbling or more, which only
// soft or old carcasses have; from Select into Choice with a yield of 3.6 or more,
// against a lean Select; and into the tier of one that it went over by its yield.
// Nor does improving lower the exhibit's place, unless an exception holds or the
// exhibit is in a cycle before or after. Younger lean is not on the list, since the
// taught balancing of bone and lean can make the overall maturity older by it.
//
// # Past classes
//
// [Replay] asks how many points policies would have lost on classes that a committee
// has placed, and [Fit] which values of a policy's settings would have lost fewest,
// with the range that does as well and a warning where the classes cannot tell.
//
// # Exactness
//
// Grades, yields, margins and places are whole numbers. Kendall's tau is the one
// float, a statistic that decides nothing.
//
// # Errors
//
// What is refused gives a [*placing.FieldError] or a [*placing.ParseError], and
// [placing.Problems] lists all that is wrong. Paths follow the JSON names, as
// "exhibits[2].measures.fat". Nothing panics but [MustParseRanking].
//
// # Encodings
//
// Everything goes through encoding/json, by names in lower case. A [Class], an [Exhibit]
// and a [Past] are read by them, in any case, down to the parts in them: the error tells
// of every field that cannot be read and of every name that is no field, each with its
// path; the receiver is then left as it was. A name that is left out leaves its field as
// it was. A [Policy] is read so too, but starts from nothing. [Site], which a walk
// is written in, has text and SQL besides. [Ground], [Heading] and [Size] are settings
// and words of the package, with String and text alone. A [Graded] class is written as its [Class] and graded again when it is read;
// a [Valuation] is refused, since a value rests on a whole grid.
//
// # Out of scope
//
// Cards and scores of people are in the package placing and the ones below it.
// The words of the reasons are terms of the trade, published lists first and some
// from memory, and the delivery of reasons is left to the speaker.
package class
