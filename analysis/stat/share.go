package stat

import (
	"math"

	"gonum.org/v1/gonum/stat/distuv"
)

// ShareInterval returns the score interval of a share of which hits of tries
// are known (Wilson, Journal of the American Statistical Association, 1927;
// from memory): the shares from which what was seen is no farther than chance
// allows. With no tries it is all of 0 to 1.
func ShareInterval(hits, tries int, confidence float64) Interval {
	if tries == 0 {
		return Interval{0, 1}
	}
	z := distuv.UnitNormal.Quantile(.5 + confidence/2)
	n := float64(tries)
	p := float64(hits) / n
	middle := (p + z*z/(2*n)) / (1 + z*z/n)
	reach := z * math.Sqrt(p*(1-p)/n+z*z/(4*n*n)) / (1 + z*z/n)
	i := Interval{middle - reach, middle + reach}
	if hits == 0 {
		i.Low = 0 // exactly, where the sum above may be off in the last digit
	}
	if hits == tries {
		i.High = 1
	}
	return i
}
