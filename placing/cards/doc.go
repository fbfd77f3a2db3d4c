// Package cards takes over when the cards are handed in: it reads and writes them,
// scores them, ranks members and teams, and tells each member what was missed.
//
// Results are for teaching and analysis. Only authorised federal graders assign
// official grades.
package cards
