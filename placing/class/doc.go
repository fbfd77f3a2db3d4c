// Package class takes on a class of beef carcasses the way a coach or an
// official does: grade every exhibit, walk over the carcasses, ask whether the
// rib speaks for the rest, place the class by a policy, propose cuts, and give
// reasons.
//
// Results are for teaching and analysis. Only authorised federal graders assign
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
//   - [Graded.Place] places the class by a [Policy].
//   - [Placing.ProposeCuts], [Mistakes] and [DifficultyOf] turn the placing into
//     cuts and say what they would do.
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
// [Graded.Notes] says so.
//
// # The walk
//
// A judge compares all exhibits over one site of the carcass before going to the
// next, from the round down. A [Look] is one site with a [Ranking] of all
// exhibits, ties allowed, written "3 1=2 4"; [RankScores] takes scores instead. A
// walk may stop anywhere; [Walk.Missing] says what it lacks and [Site.LookFor] what
// to look for. Color, texture and firmness of the lean and the chine buttons are
// part of the carcass.
//
// # Policy, margins and cycles
//
// A [Policy] is data. The default puts the quality tier first and lets an
// advantage in yield go over one tier (1.5) or two (2.0), from course notes of
// low authority; see [DefaultPolicy] for every rule and its standing. Each pair is
// decided with a margin in yield grades, exact. A policy with trade-offs can run
// in a cycle; the placing is then the order with the least total margin against
// it, and the result names the cycle, the pairs in it and those gone against.
//
// Exhibits with new numbers are placed as before, but for exhibits that the policy
// cannot tell apart: those go by number, and their [Decision] has no ground.
//
// Improving one trait of an exhibit (marbling, fat, ribeye, kidney fat, weight,
// bone, firmness, lean color) never turns a decision against it, with one
// exception: a dark cutter whose own quality grade comes out lower, as more
// marbling, younger bone or firmer lean can bring about. Nor does it lower the
// exhibit's place, unless that exception holds or the exhibit is in a cycle
// before or after; in cycles no such case is known, and none was met in a search
// of 1.5 million classes. Younger lean is not on the list, since the taught
// balancing of bone and lean can make the overall maturity older by it.
//
// # Exactness
//
// Grades, yields, margins and places are whole numbers. Kendall's tau is the one
// float, a statistic that decides nothing.
//
// # Errors
//
// What is refused gives a [*FieldError] or a [*ParseError]. Nothing panics but
// [MustParseRanking].
//
// # Out of scope
//
// Cards and scores of people are in the package placing and the ones below it.
// The words of the reasons are terms of the trade, published lists first and some
// from memory, and the delivery of reasons is left to the speaker.
package class
