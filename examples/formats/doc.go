// Package formats has no code: it is a folder of contest formats as JSON, to be read
// into a [example.com/ribface/placing/contest.Format] and changed to suit. They are
// the contests whose components and values could all be read in their sources; sources
// that are only partly legible are silent on the rest of their tie-breaks.
//
//   - california-2012.json (published: cata-2012): 800 each, 2,400 a team.
//     Tie-breaks after the second were not legible.
//   - texas-about-2004.json (published: tx-ffa-slides): the total of 750 is derived.
//     Grading is published as one number for quality and yield together; the halves
//     are derived. Who counts of a team of 3 or 4 could not be read; all do here.
//   - kansas-state-horse-class.json (published: ksu-horse-judging): 400 and 200.
package formats
