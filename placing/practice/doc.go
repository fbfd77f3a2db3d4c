// Package practice makes invented classes of beef carcasses to practice on, with
// their answer key.
//
// No carcass of a class is real. Its traits are drawn around published means with
// published spreads, and go together as in a trial of 703 carcasses: a fat carcass
// has the smaller ribeye and the more marbling, more often than not. How marbling
// goes together with the rest is overstated in that trial; see [Herds]. The key is
// what this library grades and places; it is no official grade and no committee's
// placing.
//
// # Seeds
//
// A class comes from a seed by whole numbers alone, so that one seed and one [Spec]
// give one class on every processor. A later version of the library may give
// another class for a seed where the change log says so.
//
// Results are for teaching and analysis. Only authorized federal graders assign
// official grades.
package practice
