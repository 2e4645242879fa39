package stat

import (
	"gonum.org/v1/gonum/stat/distuv"
)

// CountInterval returns the exact interval of how many events are expected where
// so many independent ones were counted (F. Garwood, Biometrika 28, 1936; from
// memory): the expectations under which so many or so few are not too rare.
func CountInterval(events int, confidence float64) Interval {
	tail := (1 - confidence) / 2
	i := Interval{High: distuv.Gamma{Alpha: float64(events) + 1, Beta: 1}.Quantile(1 - tail)}
	if events > 0 {
		i.Low = distuv.Gamma{Alpha: float64(events), Beta: 1}.Quantile(tail)
	}
	return i
}

// RatesP returns the exact chance of two counts at least so far apart where
// independent events happen at the same rate in both: given how many there are
// together, those of the first are binomial (J. Przyborowski and H. Wilenski,
// Biometrika 31, 1940; from memory). It is two-sided, twice the smaller tail. The
// exposures, such as holes, must be more than 0.
func RatesP(a, b int, exposureA, exposureB float64) float64 {
	first := distuv.Binomial{N: float64(a + b), P: exposureA / (exposureA + exposureB)}
	return twice(first.CDF(float64(a)), 1-first.CDF(float64(a-1)))
}

// SharesP returns the exact chance of two shares at least so far apart where both
// are the same: Fisher's test, two-sided, twice the smaller tail (R. A. Fisher,
// The Design of Experiments, 1935; from memory). Both need a try.
func SharesP(hitsA, triesA, hitsB, triesB int) float64 {
	hits := hitsA + hitsB
	// chances of each number of hits in the first, as multiples of that of hitsA
	below, here, above := 0.0, 1.0, 0.0
	up := func(k int) float64 { // from k hits in the first to k + 1
		return float64((hits-k)*(triesA-k)) / float64((k+1)*(triesB-hits+k+1))
	}
	for k, weight := hitsA, 1.0; k < min(hits, triesA); k++ {
		weight *= up(k)
		above += weight
	}
	for k, weight := hitsA, 1.0; k > max(0, hits-triesB); k-- {
		weight /= up(k - 1)
		below += weight
	}
	all := below + here + above
	return twice((below+here)/all, (here+above)/all)
}

// twice is the chance of both tails, each as rare as the smaller.
func twice(a, b float64) float64 { return min(1, 2*min(a, b)) }
