// Package statcheck compares every statistic of the calibration package with the
// same quantity put together from a general-purpose statistics library, on random
// data. It is a module of its own so that the library stays out of users' builds.
package statcheck

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/stat"
)

// Column returns the values as floats.
func Column(values []int64) []float64 {
	out := make([]float64, len(values))
	for i, v := range values {
		out[i] = float64(v)
	}
	return out
}

// Ranks returns mean ranks by comparing every two values.
func Ranks(x []float64) []float64 {
	out := make([]float64, len(x))
	for i, a := range x {
		out[i] = 1
		for j, b := range x {
			switch {
			case b < a:
				out[i]++
			case b == a && i != j:
				out[i] += 0.5
			}
		}
	}
	return out
}

// Rho is the library's correlation of mean ranks.
func Rho(x, y []float64) float64 { return stat.Correlation(Ranks(x), Ranks(y), nil) }

// TauB is the library's correlation of the signs of all differences in both
// directions, which is tau-b: the signs have mean 0.
func TauB(x, y []float64) float64 {
	var a, b []float64
	for i := range x {
		for j := range x {
			if i != j {
				a = append(a, sign(x[i]-x[j]))
				b = append(b, sign(y[i]-y[j]))
			}
		}
	}
	return stat.Correlation(a, b, nil)
}

func sign(d float64) float64 {
	switch {
	case d > 0:
		return 1
	case d < 0:
		return -1
	default:
		return 0
	}
}

// TauA is the library's own Kendall correlation, which is tau-b where nothing ties.
func TauA(x, y []float64) float64 { return stat.Kendall(x, y, nil) }

// RootMeanSquare is the root of the mean squared error, by a norm of the library.
func RootMeanSquare(e []float64) float64 {
	return mat.Norm(mat.NewVecDense(len(e), e), 2) / math.Sqrt(float64(len(e)))
}

// MeanAbsolute is the mean size of the errors.
func MeanAbsolute(e []float64) float64 {
	return mat.Norm(mat.NewVecDense(len(e), slices.Clone(e)), 1) / float64(len(e))
}

// Kappa is 1 less the observed over the expected weighted disagreement, by the
// library's matrices: the expected counts are the outer product of the margins.
func Kappa(counts *mat.Dense, weight func(steps float64) float64) float64 {
	k, _ := counts.Dims()
	ones := mat.NewVecDense(k, nil)
	weights := mat.NewDense(k, k, nil)
	for i := range k {
		ones.SetVec(i, 1)
		for j := range k {
			weights.Set(i, j, weight(float64(i-j)))
		}
	}
	var rows, columns mat.VecDense
	rows.MulVec(counts, ones)
	columns.MulVec(counts.T(), ones)
	var expected, observed mat.Dense
	expected.Outer(1/mat.Sum(counts), &rows, &columns)
	expected.MulElem(&expected, weights)
	observed.MulElem(counts, weights)
	return 1 - mat.Sum(&observed)/mat.Sum(&expected)
}

// QuadraticKappa is the quadratic kappa by another way: twice the covariance over
// the two variances and the squared difference of the means.
func QuadraticKappa(x, y []float64) float64 {
	mx, vx := stat.PopMeanVariance(x, nil)
	my, vy := stat.PopMeanVariance(y, nil)
	n := float64(len(x))
	cov := stat.Covariance(x, y, nil) * (n - 1) / n
	return 2 * cov / (vx + vy + (mx-my)*(mx-my))
}

// MeanSquares are those of a table of exhibits by judges, from the library's
// variances: between exhibits, within them, of judges, and the residual after
// both.
func MeanSquares(table [][]float64) (between, within, judges, rest float64) {
	n, k := len(table), len(table[0])
	var rowMeans, rowVariances []float64
	for _, row := range table {
		rowMeans = append(rowMeans, stat.Mean(row, nil))
		rowVariances = append(rowVariances, stat.Variance(row, nil))
	}
	var columnMeans []float64
	columns := make([][]float64, k)
	for j := range k {
		for _, row := range table {
			columns[j] = append(columns[j], row[j])
		}
		columnMeans = append(columnMeans, stat.Mean(columns[j], nil))
	}
	var residuals []float64
	grand := stat.Mean(rowMeans, nil)
	for i, row := range table {
		for j, v := range row {
			residuals = append(residuals, v-rowMeans[i]-columnMeans[j]+grand)
		}
	}
	between = float64(k) * stat.Variance(rowMeans, nil)
	within = stat.Mean(rowVariances, nil)
	judges = float64(n) * stat.Variance(columnMeans, nil)
	rest = stat.PopVariance(residuals, nil) * float64(n*k) / float64((n-1)*(k-1))
	return between, within, judges, rest
}

// W is Kendall's W, without and with the correction for ties: the variance of the
// rank sums over the greatest it could be without ties, and over the number of
// judges times the sum of the variances of their ranks.
func W(table [][]float64) (plain, corrected float64) {
	n, k := len(table), len(table[0])
	sums := make([]float64, n)
	total := 0.0
	for j := range k {
		var column []float64
		for _, row := range table {
			column = append(column, row[j])
		}
		ranks := Ranks(column)
		total += stat.Variance(ranks, nil)
		for i, r := range ranks {
			sums[i] += r
		}
	}
	v := stat.Variance(sums, nil)
	untied := float64(n*(n+1)) / 12 // variance of 1 to n, with n - 1
	return v / (float64(k*k) * untied), v / (float64(k) * total)
}
