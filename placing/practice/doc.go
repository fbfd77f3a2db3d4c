// Package practice makes invented classes of beef carcasses to practice on, with
// their answer key.
//
// No carcass of a class is real. Its measures are drawn from the means of published
// audits of fed cattle and published spreads, each trait on its own, which real
// carcasses do not do. The key is what this library grades and places; it is no
// official grade and no committee's placing.
//
// # Seeds
//
// A class comes from a seed by whole numbers alone, so that one seed and one [Spec]
// give one class on every processor. A later version of the library may give
// another class for a seed where the change log says so.
//
// Results are for teaching and analysis. Only authorised federal graders assign
// official grades.
package practice
