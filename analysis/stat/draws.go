package stat

import (
	"math"
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

// Interval returns the bootstrap interval of a statistic of the drawn units.
// Plain percentiles are too narrow for few units, by the factor sqrt((n-1)/n)
// and for want of the tails of Student's t; so wider percentiles are read: those
// at which a normal has what t with n - 1 degrees has, times sqrt(n/(n-1))
// (Hesterberg, What Teachers Should Know About the Bootstrap, 2015; from
// memory). There must be 2 units or more.
func (d Draws) Interval(confidence float64, statistic func(drawn []int32) float64) Interval {
	n := float64(d.n)
	reach := math.Sqrt(n/(n-1)) * TQuantile(.5+confidence/2, n-1)
	place := NormalCDF(-reach) * float64(len(d.at)/d.n)
	low, high := newTail(place), newTail(place)
	d.Each(func(drawn []int32) {
		x := statistic(drawn)
		low.add(x)
		high.add(-x)
	})
	return Interval{low.at(place), -high.at(place)}
}

// tail keeps the lowest of many values, ascending: a quantile near an end asks
// for no more, and sorting all of them would take most of the time.
type tail struct {
	lowest []float64
	most   int
}

// newTail has room for what is read at a place.
func newTail(place float64) tail {
	most := int(place) + 2
	return tail{make([]float64, 0, most+1), most}
}

func (t *tail) add(x float64) {
	if len(t.lowest) == t.most && x >= t.lowest[t.most-1] {
		return
	}
	i, _ := slices.BinarySearch(t.lowest, x)
	t.lowest = slices.Insert(t.lowest, i, x)
	t.lowest = t.lowest[:min(len(t.lowest), t.most)]
}

// at reads between the values around a place, counted from 1; before the first
// it is the first.
func (t *tail) at(place float64) float64 {
	if place <= 1 {
		return t.lowest[0]
	}
	k := int(place)
	return t.lowest[k-1] + (place-float64(k))*(t.lowest[k]-t.lowest[k-1])
}
