// Package placing scores placings of a class of exhibits against an official
// placing by the pairwise-cut score. It is pure combinatorics and knows nothing
// of beef.
package placing
