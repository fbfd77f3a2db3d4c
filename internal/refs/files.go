package refs

import (
	"iter"
	"slices"
)

// File is one file of references and who checks it.
type File struct {
	Name string
	Room string // the package whose test runs the check, as "grade"; empty for a file checked elsewhere

	check     func(Row) (Verdict, error)
	elsewhere []Test // that check the rows in place of check, or more of them than it does
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

// files lists every file of testdata/references but sources.csv, which [Sources]
// checks.
var files = []File{
	{"age-rules.csv", "maturity", ageRule, nil},
	{"balance-vectors.csv", "maturity", balanceVector, nil},
	{"group-months.csv", "maturity", groupMonths, nil},
	{"maturity-examples.csv", "maturity", maturityExample, nil},
	{"maturity-scales.csv", "maturity", maturityScale, nil},
	{"ossification.csv", "maturity", ossification, nil},

	{"audit-means.csv", "grade", auditMean, nil},
	{"audit-spreads.csv", "grade", auditSpread, nil},
	{"borderline-carcasses.csv", "grade", borderline, nil},
	{"coefficients.csv", "grade", coefficient, nil},
	{"dark-cutters.csv", "grade", darkCutter, nil},
	{"editions.csv", "grade", editionDate, nil},
	{"fair-carcasses.csv", "grade", fairCarcass, nil},
	{"fed-cattle.csv", "grade", fedCattle, nil},
	{"firmness-minima.csv", "grade", firmnessMinimum, nil},
	{"grade-codes.csv", "grade", gradeCode, nil},
	{"grade-minima.csv", "grade", gradeMinimum, nil},
	{"input-limits.csv", "grade", inputLimit, nil},
	{"kph-adjustment.csv", "grade", kphAdjustment, nil},
	{"lots-with-quality.csv", "grade", lot, nil},
	{"marbling-counts.csv", "grade", marblingCount, nil},
	{"marbling-degrees.csv", "grade", marblingDegree, nil},
	{"marbling-scales.csv", "grade", marblingScale, nil},
	{"marbling-units.csv", "grade", marblingUnits, nil},
	{"preliminary-grade.csv", "grade", preliminary, nil},
	{"quality-edges-derived.csv", "grade", qualityExample, nil},
	{"quality-examples.csv", "grade", qualityExample, nil},
	{"quick-bias.csv", "grade", quickBias, nil},
	{"required-ribeye-printed.csv", "grade", requiredPrinted, nil},
	{"required-ribeye.csv", "grade", requiredRibeye, nil},
	{"retail-classes.csv", "grade", retailClass, nil},
	{"retail-cut-examples.csv", "grade", retailExample, nil},
	{"rules-of-thumb.csv", "grade", ruleOfThumb, nil},
	{"sex-classes.csv", "grade", sexClass, nil},
	{"sex-examples.csv", "grade", sexExample, nil},
	{"thirds.csv", "grade", third, nil},
	{"tiers.csv", "grade", tier, nil},
	{"trait-correlations.csv", "grade", traitCorrelation, nil},
	{"usual-ranges.csv", "grade", usualRange, nil},
	{"whole-grade.csv", "grade", wholeGrade, nil},
	{"yield-answers.csv", "grade", yieldAnswer, nil},
	{"yield-examples.csv", "grade", yieldExample, nil},

	{"card-rules.csv", "placing", cardRule, nil},
	{"cut-baseline.csv", "placing", cutBaseline, nil},
	{"cut-limits.csv", "placing", cutLimit, nil},
	{"placing-examples.csv", "placing", placingExample, nil},
	{"placing-facts.csv", "placing", placingFact, nil},
	{"words-for-cuts.csv", "placing", wordsForCut, nil},

	{"placing-statements.csv", "placing/class", placingStatement, []Test{{Room: "placing/class", Name: "TestPublishedStatements"}}},
	{"trade-offs.csv", "placing/class", tradeOff, nil},

	{"contest-facts.csv", "placing/contest", contestFact, nil},

	// Checked by a test of the package that uses them, which reads the file.
	{"grade-deductions.csv", "", nil, []Test{{Room: "placing/contest", Name: "TestGradeDeductions"}}},
	{"price-examples.csv", "", nil, []Test{{Room: "grade/price", Name: "TestPublishedExamples"}}},
	{"price-report-2014-10-20.csv", "", nil, []Test{{Room: "examples/prices", Name: "TestPublishedReports"}}},
	{"price-report-2025-01-06.csv", "", nil, []Test{{Room: "examples/prices", Name: "TestPublishedReports"}}},
	{"statistics-examples.csv", "", nil, []Test{
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
