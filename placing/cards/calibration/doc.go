// Package calibration says how well members judge over a season.
//
// Results are for teaching and analysis. Only authorised federal graders assign
// official grades.
package calibration
