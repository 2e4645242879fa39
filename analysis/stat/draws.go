package stat

import (
	"math/rand/v2"
	"slices"
)

// Draws are units drawn anew from n, with replacement, some times over. They
// may be shared between goroutines.
type Draws struct {
	n  int
	at []int32 // places of the units, one draw after the other
}

// NewDraws draws from n units, so many times.
func NewDraws(rng *rand.Rand, n, times int) Draws {
	d := Draws{n, make([]int32, n*times)}
	for i := range d.at {
		d.at[i] = int32(rng.IntN(n))
	}
	return d
}

// Each passes every draw: the places of its units.
func (d Draws) Each(do func(drawn []int32)) {
	for at := d.at; len(at) > 0; at = at[d.n:] {
		do(at[:d.n])
	}
}

// Bootstrap returns what a statistic of the drawn units came to in every draw,
// in ascending order.
func (d Draws) Bootstrap(statistic func(drawn []int32) float64) []float64 {
	results := make([]float64, 0, len(d.at)/d.n)
	d.Each(func(drawn []int32) { results = append(results, statistic(drawn)) })
	slices.Sort(results)
	return results
}
