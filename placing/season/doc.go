// Package season says how well members judge over a season: which way they
// lean on each trait and how far they scatter, how far they agree with the key
// beyond chance, how far with each other, and how hard the classes were.
//
// # Statistics
//
// [Errors] gives bias, spread, limits of agreement, mean absolute error, root mean
// square and correlation, which of ranks is Spearman's rho; [Agreement] Cohen's kappa,
// plain and weighted; [Ratings] the six intraclass correlations and Kendall's W of several
// judges on the same exhibits; [ClassCards] the difficulty and discrimination of a placing
// class and how often each pair was reversed. [Season] does all that concerns one
// member, for every member, in one pass over the cards.
//
// # Exactness
//
// Everything is summed up in whole numbers, so that parts of a season can be merged
// in any order with one result. A [Figure] is worked out from the exact sums and
// rounded once to a float64, a square root at 256 bits before that; figures that are
// put into the unit of a trait are divided once more. The same cards give the same
// bits on every processor.
//
// # Small samples
//
// With fewer observations than its function names, 2 to 10 by our own choice, a Figure
// has no value but a [Reason], TooFew; the one published hint is that 4 to 5 animals are
// enough to tell students apart (jds-1996-79-907). Where all values are alike, so that a
// correlation has no meaning, it is NoSpread.
//
// # Checked against
//
// These are tests of the package: the published data on six targets and four judges
// (psychbull-1979-86-420); the examples of rho (stat-spearman-example); two published tables each for kappa (test-kappa-events,
// dkpro-cohen1960), Kendall's W (doc-concordance-g08da, test-irr-anxiety), the
// intraclass correlations (test-icc-wines, test-irr-anxiety) and the limits of
// agreement (biochemmed-2015-25-141, lancet-1986-307). A module inside the
// repository compares every statistic with a general-purpose library on random
// data.
//
// # Encodings
//
// What the figures are has JSON names in lower case, and compares with package cmp without
// options. [Season], [Errors], [Agreement], [ClassCards] and [Judges] work and are no
// values: cmp does not compare them, and encoding/json refuses them with a
// [*placing.FieldError]. Keep the cards and keys, or the figures. Reasons and weights are
// settings and have text alone.
//
// Results are for teaching and analysis. Only authorized federal graders assign
// official grades.
package season
