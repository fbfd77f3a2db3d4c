// Package grade turns what is seen and measured on a ribbed beef carcass into its
// quality grade and yield grade, exactly and with every step explained.
//
// Results are for teaching and analysis. Only authorised federal graders assign
// official grades.
package grade
