package stat

import (
	"math"

	"gonum.org/v1/gonum/stat"
)

// BootstrapInterval reads an interval off ascending bootstrap results of n
// units. Plain percentiles are too narrow for few units, by the factor
// sqrt((n-1)/n) and for want of the tails of Student's t; so wider percentiles
// are read: those at which a normal has what t with n - 1 degrees has, times
// sqrt(n/(n-1)) (Hesterberg, What Teachers Should Know About the Bootstrap,
// 2015; from memory). n must be 2 or more.
func BootstrapInterval(ascending []float64, n int, confidence float64) Interval {
	reach := math.Sqrt(float64(n)/float64(n-1)) * TQuantile(.5+confidence/2, float64(n-1))
	return Interval{
		stat.Quantile(NormalCDF(-reach), stat.LinInterp, ascending, nil),
		stat.Quantile(NormalCDF(reach), stat.LinInterp, ascending, nil),
	}
}
