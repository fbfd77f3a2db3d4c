package conformance

import (
	"iter"
	"slices"
)

// File is one file of references and who checks it.
type File struct {
	Name string
	Room string // the package whose test runs the check, as "grade"
	Test string // the test of that package, for a file checked there; empty for one checked here

	check func(Row) (Verdict, error)
}

// files lists every file of testdata/references but sources.csv, which [Sources]
// checks.
var files = []File{
	{"age-rules.csv", "maturity", "", ageRule},
	{"balance-vectors.csv", "maturity", "", balanceVector},
	{"group-months.csv", "maturity", "", groupMonths},
	{"maturity-examples.csv", "maturity", "", maturityExample},
	{"maturity-scales.csv", "maturity", "", maturityScale},
	{"ossification.csv", "maturity", "", ossification},

	{"audit-means.csv", "grade", "", auditMean},
	{"audit-spreads.csv", "grade", "", auditSpread},
	{"borderline-carcasses.csv", "grade", "", borderline},
	{"coefficients.csv", "grade", "", coefficient},
	{"dark-cutters.csv", "grade", "", darkCutter},
	{"editions.csv", "grade", "", editionDate},
	{"firmness-minima.csv", "grade", "", firmnessMinimum},
	{"grade-codes.csv", "grade", "", gradeCode},
	{"grade-minima.csv", "grade", "", gradeMinimum},
	{"input-limits.csv", "grade", "", inputLimit},
	{"kph-adjustment.csv", "grade", "", kphAdjustment},
	{"lots-with-quality.csv", "grade", "", lot},
	{"marbling-counts.csv", "grade", "", marblingCount},
	{"marbling-degrees.csv", "grade", "", marblingDegree},
	{"marbling-scales.csv", "grade", "", marblingScale},
	{"marbling-units.csv", "grade", "", marblingUnits},
	{"preliminary-grade.csv", "grade", "", preliminary},
	{"quality-edges-derived.csv", "grade", "", qualityExample},
	{"quality-examples.csv", "grade", "", qualityExample},
	{"quick-bias.csv", "grade", "", quickBias},
	{"required-ribeye-printed.csv", "grade", "", requiredPrinted},
	{"required-ribeye.csv", "grade", "", requiredRibeye},
	{"retail-classes.csv", "grade", "", retailClass},
	{"retail-cut-examples.csv", "grade", "", retailExample},
	{"rules-of-thumb.csv", "grade", "", ruleOfThumb},
	{"sex-classes.csv", "grade", "", sexClass},
	{"sex-examples.csv", "grade", "", sexExample},
	{"thirds.csv", "grade", "", third},
	{"tiers.csv", "grade", "", tier},
	{"whole-grade.csv", "grade", "", wholeGrade},
	{"yield-answers.csv", "grade", "", yieldAnswer},
	{"yield-examples.csv", "grade", "", yieldExample},

	{"card-rules.csv", "placing", "", cardRule},
	{"cut-baseline.csv", "placing", "", cutBaseline},
	{"cut-limits.csv", "placing", "", cutLimit},
	{"placing-examples.csv", "placing", "", placingExample},
	{"placing-facts.csv", "placing", "", placingFact},
	{"words-for-cuts.csv", "placing", "", wordsForCut},

	// Checked by a test of the package that uses them, which reads the file.
	{"grade-deductions.csv", "placing/cards", "TestGradeDeductions", nil},
	{"price-examples.csv", "grade/price", "TestPublishedExamples", nil},
	{"price-report-2014-10-20.csv", "grade/price", "TestPublishedReports", nil},
	{"price-report-2025-01-06.csv", "grade/price", "TestPublishedReports", nil},
	{"statistics-examples.csv", "placing", "TestStatisticsExamples", nil},
	{"trade-offs.csv", "placing/class", "TestTradeOffs", nil},
}

// pending lists the files whose test is not written yet.
var pending = []string{
	"grade-deductions.csv",
	"price-examples.csv",
	"price-report-2014-10-20.csv",
	"price-report-2025-01-06.csv",
	"statistics-examples.csv",
	"trade-offs.csv",
}

// Files yields the files that the test of one package answers for.
func Files(room string) iter.Seq[File] {
	return func(yield func(File) bool) {
		for _, f := range files {
			if f.Room == room && f.Test == "" && !yield(f) {
				return
			}
		}
	}
}

// All returns every registered file.
func All() []File { return slices.Clone(files) }
