// Package placing scores placings of a class against an official placing by the
// pairwise-cut score: 50 points, less for every pair of exhibits that a card has
// the wrong way round the cuts between the two. It is pure combinatorics and
// knows nothing of beef, so it serves any class that is placed.
//
//	official, err := placing.ParseOfficial("3-2-1-4 cuts 2-8-2")
//	score, err := official.Score(placing.MustParseOrder("1-3-2-4")) // 32
//
// # What it computes
//
// An [Order] is a placing: the exhibits 1 to n of one class from first to last,
// 2 to 12 of them. [Cuts] are the points between neighbors of the official
// placing, from the top pair down, one fewer than exhibits. [NewOfficial] joins
// the two into an [Official], which scores cards.
//
// [Official.Score] is the score of a card. [Official.Faults] says which pairs the
// card reversed and what each of them cost, which is what a coach tells a
// member. [Official.Scores] yields every possible card with its score: 24 for a
// class of four. [Official.Worst] is the lowest score that can be had and
// [Official.Mean] what a guesser gets on average.
//
// Published limits on cuts differ from each other and from the exact condition
// that no card goes below zero, which for cuts a, b and c is 3a + 4b + 3c <= 50.
// A [CutLimit] names one of them, and [CutLimit.Check] says which part of it was
// broken. [Cuts.NeverNegative] is the exact condition for any number of cuts. An
// Official does not hold its cuts to any limit by itself.
//
// How hard an official placing is, it says itself: [Official.Mistakes] scores the
// usual mistakes, [PairName] names the pairs as they are called, and
// [Official.Guessing] counts how many of all placings score well.
//
// [Words] puts a cut into the words of a published scale; the scales disagree, so
// the caller names one.
//
// A [Card] is what was handed in: an order, or a [Mark] that says why there is
// none. [CardRules] give the score of either. What blank, double-marked and
// unreadable cards score is published for some contests, and those are the
// defaults; a contest with other rules sets its own [Penalty].
//
// Where several officials place a class, a [Panel] holds their [Vote] values.
// [Panel.Consensus] is the order, or the orders, of least total pairwise
// disagreement with them; equal ones are counted, [Panel.Best] yields them all, and
// none is picked by chance. [Panel.Borda] and [Panel.Concordance] are other looks at
// the same votes, and [Panel.ProposeCuts] proposes cuts within a CutLimit and says for each
// pair what they rest on.
//
// [Order.Disagreements] counts the pairs that two orders put the other way
// round, [Order.Relabel] renumbers a class, and [Orders] yields all placings of a
// size. A [Ranking] is an order with ties, by one trait, and [Ranking.Against]
// compares two of them pair by pair; an order is compared with one by
// [Order.Ranking].
//
// # Units
//
// Scores and cuts are whole points. A cut is 0 to 50, and a cut of 0 makes its
// pair a tie for scoring. The full score, [FullScore], is 50. Exhibits and places
// count from 1. Means are decimals, because half points occur.
//
// # Zero values
//
// The zero Order, Ranking, Cuts and Official are not set: they print as "unset", are
// not valid, and a computation that needs them says that they are missing. CutLimit,
// Words, Mark and Penalty start at 1 with zero not set. The zero Card is a blank
// one. The zero CardRules are the published rules and raise no score to zero,
// because no source says to.
//
// Order, Ranking, Cuts, Official, Card and CardRules are small, hold no pointers and
// compare with ==, so they can be map keys.
//
// # Exactness
//
// Every score is a sum of whole numbers and so exact, whatever the processor. So
// is the consensus; only [Panel.Concordance], [Panel.MeanTau] and [Pairs.TauB], which
// describe agreement and decide nothing, are float64.
// Official keeps for each exhibit the sum of the cuts above it; a score is the
// sum over exhibits of that depth times how far the card moved the exhibit,
// which equals the sum over pairs and needs no loop over pairs.
//
// The module holds to integers because float64 is not exact where it counts. In
// the package grade, the plain float64 formula for the yield grade is wrong by a
// whole grade at 3,002 of the 55,928,223 carcasses with fat 0 to 2 in by 0.05,
// kidney fat 0 to 6 % by 0.5, weight 400 to 1,200 lb by 1 and ribeye 7 to 20 sq in
// by 0.1. A class placed on such numbers is placed wrong before the first card
// is scored: an exhibit with fat 0.60 in, kidney fat 1.5 %, weight 660 lb and
// ribeye 11.9 sq in is exactly 3.0000 and comes out in float64 as
// 2.9999999999999996, a grade 2, and one with fat 0.35 in, kidney fat 3.5 %,
// weight 915 lb and ribeye 11.1 sq in is exactly 4.0000 and comes out as
// 3.9999999999999996, a grade 3.
//
// # Rounding
//
// Nothing is rounded. [Official.Mean] ends in .0 or .5 and is a decimal for that
// reason. A score below zero stays below zero unless
// CardRules.FloorAtZero asks for more.
//
// # Errors
//
// A value that is missing or impossible gives a [*FieldError], which names the
// field, the value and what is allowed, as
//
//	cut 2: 80: out of range; allowed: 0 to 50
//
// Text that cannot be read gives a [*ParseError], which names the kind, the text
// and the wrong piece of it. Both wrap one of [ErrMissing], [ErrSyntax],
// [ErrUnknown], [ErrRange], [ErrPlaces] and [ErrRepeated] for errors.Is; the last is
// for an exhibit placed twice. Where several things are wrong, as with the votes of a
// panel, the error tells of all of them, and [Problems] lists them, each with its path
// in the input. Nothing panics but [MustParseOrder] and [MustParseCuts], which are for
// hard-coded text.
//
// A card of another size than the class is an error, and never a low score. A
// card that says two things, an order and a mark, is an error too.
//
// # Encodings
//
// Text is written in one canonical spelling: "3-2-1-4", "3 1=2 4", "2-8-2",
// "3-2-1-4 cuts 2-8-2", "double-marked". It is read in any that has one meaning, as
// "3214", "3, 2, 1, 4" and "Double marked"; see [ParseOrder], [ParseRanking],
// [ParseCuts] and [ParseOfficial]. What is data, Order, Ranking, Cuts, Official, Card
// and Mark, has text, and by it JSON, flag.TextVar and log/slog, and database columns
// of text by Value and Scan. The zero value is empty text, and NULL in a database. What
// is a setting, CutLimit, Words and Penalty, has text alone. CardRules, Fault, Mistake,
// Guessing, Vote, Pairs and the results of a panel are plain structs with JSON names in
// lower case. CardRules and the votes of a Panel are read by these, in any case: the
// error tells of every field that cannot be read and of every name that is no field, each
// with its path, and a name that is left out leaves its field as it was. A decode that
// fails leaves its receiver as it was.
//
// All types compare with package cmp without options, by an Equal method where fields
// are hidden.
//
// # Speed
//
// Scoring a card allocates nothing and takes time in proportion to the number of
// exhibits. Orders and Scores take one step for every placing, and placings grow
// as n factorial: 24 for four exhibits, 40,320 for eight, 479,001,600 for twelve.
// They are iterators, so a caller can stop early and nothing is stored.
//
// # Sources
//
// The score and the way to write orders and cuts are published
// (ext-maryland-contests, ext-nebraska-g2092), and the worked cards of the first
// are among the tests. The limits are published (ext-colorado-1-619,
// ext-maryland-contests, ext-nebraska-g2092, ext-nebraska-cards,
// ext-florida-4h334) but for the exact one, which is derived. What marks score is
// published for poultry and horse contests (ext-missouri-poultry,
// ksu-horse-judging) and taken over from there. [CutLimit.Cite], [Words.Cite] and
// [CardRules.Penalty] return the citation of what they hold, and the package
// maturity/cite turns it into titles.
//
// # Out of scope
//
// The package does not place a class: what makes one carcass better than another
// is a matter of packages that import it. It keeps no standings, breaks no ties
// between members and takes no scores of oral reasons, all of which are for
// placing/contest, and it does not decide what a judge may do at a contest. Scores are
// for teaching and contests; only authorized federal graders assign official grades.
package placing
