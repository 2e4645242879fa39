package forecast

import (
	"math"

	"strokeledger/analysis/stat"
)

// curve is the chance of a target as a smooth function of how many strokes a round
// is worse than those that were played: a probit regression, quadratic, over the
// simulated rounds.
type curve struct {
	level, slope, bend float64 // of the probit at no shift, a stroke and a stroke squared

	// settled is a chance of 0 or 1 that no shift of a few strokes changes, and certain
	// which; the rest is not known then.
	settled, certain bool
}

// How far the rounds are shifted for the regression, in strokes.
const (
	mostShift = 8.
	shiftStep = .25
)

// newCurve fits the curve to scores, whole numbers, whose counts it reads as evenly
// spread over a stroke. It passes through the chance of the scores as they are, unless
// that is 0 or 1. widens is the multiple by which scores spread wider about their mean
// after a shift: without it, the chance of a target far below the mean would seem to
// change faster than it does.
func newCurve(scores map[int]int, target float64, widens func(shift float64) float64) curve {
	below := cumulated(scores)
	target = math.Floor(target+1e-9) + .5
	mean := below.mean()
	var sums [5]float64 // of the weights times powers of the shift
	var right [3]float64
	for s := -mostShift; s <= mostShift; s += shiftStep {
		p := below.at(mean + (target-mean-s)/widens(s))
		if p < 1e-4 || p > 1-1e-4 {
			continue
		}
		z := stat.NormalQuantile(p)
		weight := math.Exp(-z*z) / (p * (1 - p))
		power := weight
		for i := range sums {
			if i < len(right) {
				right[i] += power * z
			}
			sums[i] += power
			power *= s
		}
	}
	c := solved(sums, right)
	if c.settled {
		c.certain = below.at(target) > half
		return c
	}
	if p := below.at(target); p > 1e-4 && p < 1-1e-4 {
		c.level = stat.NormalQuantile(p)
	}
	return c
}

// solved is the least-squares parabola of the sums; where they say nothing, it is
// settled.
func solved(s [5]float64, r [3]float64) curve {
	det := func(a, b, c, d, e, f, g, h, i float64) float64 {
		return a*(e*i-f*h) - b*(d*i-f*g) + c*(d*h-e*g)
	}
	d := det(s[0], s[1], s[2], s[1], s[2], s[3], s[2], s[3], s[4])
	if s[0] == 0 || math.Abs(d) < 1e-12 {
		return curve{settled: true}
	}
	return curve{
		level: det(r[0], s[1], s[2], r[1], s[2], s[3], r[2], s[3], s[4]) / d,
		slope: det(s[0], r[0], s[2], s[1], r[1], s[3], s[2], r[2], s[4]) / d,
		bend:  det(s[0], s[1], r[0], s[1], s[2], r[1], s[2], s[3], r[2]) / d,
	}
}

// at is the chance when rounds are some strokes worse. Where the parabola would turn
// it goes on straight.
func (c curve) at(shift float64) float64 {
	switch {
	case c.certain:
		return 1
	case c.settled:
		return 0
	}
	return stat.NormalCDF(c.probit(shift))
}

func (c curve) probit(shift float64) float64 {
	limited := min(max(shift, -mostShift), mostShift)
	if c.bend != 0 {
		if turn := -c.slope / (2 * c.bend); math.Abs(turn) < mostShift && (shift-turn)*turn > 0 {
			limited = turn
		}
	}
	z := c.level + c.slope*limited + c.bend*limited*limited
	return z + (c.slope+2*c.bend*limited)*(shift-limited)
}

// distribution is the share of rounds at or below a score, as a polygon.
type distribution struct {
	low   int
	share []float64 // at low - .5, low + .5 and so on
}

func cumulated(scores map[int]int) distribution {
	low, high, n := math.MaxInt, math.MinInt, 0
	for s, k := range scores {
		low, high, n = min(low, s), max(high, s), n+k
	}
	d := distribution{low, []float64{0}}
	sum := 0
	for s := low; s <= high; s++ {
		sum += scores[s]
		d.share = append(d.share, float64(sum)/float64(n))
	}
	return d
}

// mean is that of the scores.
func (d distribution) mean() float64 {
	sum := 0.0
	for i := 1; i < len(d.share); i++ {
		sum += (d.share[i] - d.share[i-1]) * float64(d.low+i-1)
	}
	return sum
}

// at reads the polygon.
func (d distribution) at(score float64) float64 {
	x := score - float64(d.low) + .5
	switch {
	case x <= 0:
		return 0
	case x >= float64(len(d.share)-1):
		return 1
	}
	i := int(x)
	return d.share[i] + (x-float64(i))*(d.share[i+1]-d.share[i])
}
