// Package maturity holds the physiological maturity of beef carcasses: the groups
// A to E with their units, the balancing of skeletal and lean maturity into
// overall maturity, age by teeth or papers, and the signs that go with each
// group.
//
// Results are for teaching and analysis. Only authorised federal graders assign
// official grades.
package maturity
