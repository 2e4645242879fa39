package stat

import (
	"math"

	"gonum.org/v1/gonum/stat/distuv"
)

// NormalCDF returns the chance that a standard normal number is at most z.
func NormalCDF(z float64) float64 { return .5 * math.Erfc(-z/math.Sqrt2) }

// NormalQuantile returns the value that a standard normal number stays below with
// chance p.
func NormalQuantile(p float64) float64 { return distuv.UnitNormal.Quantile(p) }

// ChiSquaredQuantile returns the value that a sum of df squares of standard normal
// numbers stays below with chance p.
func ChiSquaredQuantile(p, df float64) float64 {
	return distuv.ChiSquared{K: df}.Quantile(p)
}
