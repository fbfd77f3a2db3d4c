package refs

import (
	"iter"
	"slices"
)

// File is one file of references and who checks it.
type File struct {
	Name string
	Room string // the package whose TestReferences checks every row, as "grade"; empty for a file checked elsewhere

	elsewhere []Test // that check the rows in place of it, or besides
}

// Test is a test of another package that reads rows of a file and checks them.
type Test struct {
	Room   string // the package, as "grade/price"
	Name   string // the test
	Column string // the column that says which rows are checked; empty for all
	Values []string
}

// covers reports whether the test checks the row.
func (t Test) covers(r Row) bool {
	return t.Column == "" || slices.Contains(t.Values, r.Get(t.Column))
}

// files lists every file of testdata/references but sources.csv, which package cite is
// made from.
var files = []File{
	{Name: "age-rules.csv", Room: "maturity"},
	{Name: "balance-vectors.csv", Room: "maturity"},
	{Name: "group-months.csv", Room: "maturity"},
	{Name: "maturity-examples.csv", Room: "maturity"},
	{Name: "maturity-scales.csv", Room: "maturity"},
	{Name: "ossification.csv", Room: "maturity"},

	{Name: "audit-means.csv", Room: "grade"},
	{Name: "audit-spreads.csv", Room: "grade"},
	{Name: "borderline-carcasses.csv", Room: "grade"},
	{Name: "coefficients.csv", Room: "grade"},
	{Name: "dark-cutters.csv", Room: "grade"},
	{Name: "editions.csv", Room: "grade"},
	{Name: "fair-carcasses.csv", Room: "grade"},
	{Name: "fed-cattle.csv", Room: "grade"},
	{Name: "firmness-minima.csv", Room: "grade"},
	{Name: "grade-codes.csv", Room: "grade"},
	{Name: "grade-minima.csv", Room: "grade"},
	{Name: "input-limits.csv", Room: "grade"},
	{Name: "kph-adjustment.csv", Room: "grade"},
	{Name: "lots-with-quality.csv", Room: "grade"},
	{Name: "marbling-counts.csv", Room: "grade"},
	{Name: "marbling-degrees.csv", Room: "grade"},
	{Name: "marbling-scales.csv", Room: "grade"},
	{Name: "marbling-units.csv", Room: "grade"},
	{Name: "preliminary-grade.csv", Room: "grade"},
	{Name: "quality-edges-derived.csv", Room: "grade"},
	{Name: "quality-examples.csv", Room: "grade"},
	{Name: "quick-bias.csv", Room: "grade"},
	{Name: "required-ribeye-printed.csv", Room: "grade"},
	{Name: "required-ribeye.csv", Room: "grade"},
	{Name: "retail-classes.csv", Room: "grade"},
	{Name: "retail-cut-examples.csv", Room: "grade"},
	{Name: "rules-of-thumb.csv", Room: "grade"},
	{Name: "sex-classes.csv", Room: "grade"},
	{Name: "sex-examples.csv", Room: "grade"},
	{Name: "thirds.csv", Room: "grade"},
	{Name: "tiers.csv", Room: "grade"},
	{Name: "trait-correlations.csv", Room: "grade"},
	{Name: "usual-ranges.csv", Room: "grade"},
	{Name: "whole-grade.csv", Room: "grade"},
	{Name: "yield-answers.csv", Room: "grade"},
	{Name: "yield-examples.csv", Room: "grade"},

	{Name: "card-rules.csv", Room: "placing"},
	{Name: "cut-baseline.csv", Room: "placing"},
	{Name: "cut-limits.csv", Room: "placing"},
	{Name: "placing-examples.csv", Room: "placing"},
	{Name: "placing-facts.csv", Room: "placing"},
	{Name: "words-for-cuts.csv", Room: "placing"},

	{Name: "placing-statements.csv", Room: "placing/class", elsewhere: []Test{{Room: "placing/class", Name: "TestPublishedStatements"}}},
	{Name: "trade-offs.csv", Room: "placing/class"},

	{Name: "contest-facts.csv", Room: "placing/contest"},

	// Checked by a test of the package that uses them, which reads the file.
	{Name: "grade-deductions.csv", elsewhere: []Test{{Room: "placing/contest", Name: "TestGradeDeductions"}}},
	{Name: "price-examples.csv", elsewhere: []Test{{Room: "grade/price", Name: "TestPublishedExamples"}}},
	{Name: "price-report-2014-10-20.csv", elsewhere: []Test{{Room: "examples/prices", Name: "TestPublishedReports"}}},
	{Name: "price-report-2025-01-06.csv", elsewhere: []Test{{Room: "examples/prices", Name: "TestPublishedReports"}}},
	{Name: "statistics-examples.csv", elsewhere: []Test{
		{Room: "placing", Name: "TestReferencesConsensus", Column: "statistic", Values: []string{"borda", "kemeny"}},
		{Room: "placing", Name: "TestReferencesTau", Column: "statistic", Values: []string{"kendall tau-b"}},
		{Room: "placing/season", Name: "TestStatisticsExamples", Column: "statistic", Values: []string{"spearman", "icc", "kendall W", "cohen kappa", "quadratic kappa", "limits of agreement"}},
	}},
}

// Files yields the files that the test of one package answers for.
func Files(room string) iter.Seq[File] {
	return func(yield func(File) bool) {
		for _, f := range files {
			if f.Room == room && !yield(f) {
				return
			}
		}
	}
}

// All returns every registered file.
func All() []File { return slices.Clone(files) }
