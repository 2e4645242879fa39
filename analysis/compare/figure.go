package compare

import (
	"math"

	"strokeledger/analysis/golf"
	"strokeledger/analysis/stat"
)

// wholeRound is how many holes a round has for its figures to stand as they
// are.
const wholeRound = 18

// Figure is an average over rounds, for 18 holes or as a share. Its sample
// carries how sure it is: N rounds, and the deviation of one round.
type Figure struct {
	stat.Sample
	Known bool // there is anything to average; the rest is 0 otherwise

	events events // of a count or a share
}

// perRound averages values of rounds for 18 holes. Where every round is whole
// that is their mean, and its error that of a mean; otherwise whole rounds are
// drawn anew, weighted by their holes.
func perRound(values, holes []float64, d resampled) Figure {
	for _, h := range holes {
		if h != wholeRound {
			return ratio(values, holes, wholeRound, d)
		}
	}
	return Figure{Sample: stat.Of(values), Known: len(values) > 0}
}

// ratio is the sum of values over that of chances, times scale, with an error
// from whole rounds drawn anew. The variance that a bootstrap finds is short by
// (n-1)/n (Efron and Tibshirani, An Introduction to the Bootstrap, 1993; from
// memory).
func ratio(values, chances []float64, scale float64, d resampled) Figure {
	value, chance := sums(values, chances)
	if chance == 0 {
		return Figure{}
	}
	n := len(values)
	f := Figure{Sample: stat.Sample{N: n, Mean: scale * value / chance}, Known: true}
	if n < minForInterval {
		return f
	}
	// the deviation of one round, of which the error of the average follows
	f.SD = math.Sqrt(d.variance(values, chances, scale) * float64(n) / float64(n-1) * float64(n))
	return f
}

// variance is how much the ratio of ratio varies from one draw of the rounds to the
// next; draws without a chance are left out. It goes through the draws once
// (Welford's method).
func (d resampled) variance(values, chances []float64, scale float64) float64 {
	mean, square, count := 0.0, 0.0, 0.0
	d.Each(func(drawn []int32) {
		value, chance := 0.0, 0.0
		for _, i := range drawn {
			value += values[i]
			chance += chances[i]
		}
		if chance == 0 {
			return // none of the drawn rounds had a chance
		}
		count++
		away := scale*value/chance - mean
		mean += away / count
		square += away * (scale*value/chance - mean)
	})
	return square / count
}

// sums adds up values and chances.
func sums(values, chances []float64) (value, chance float64) {
	for i := range values {
		value += values[i]
		chance += chances[i]
	}
	return value, chance
}

// Word says how sure a change is. The zero value says nothing: there are too few
// rounds, or no round differs from another.
type Word uint8

// The words, with the chance of so large a change where there is none.
const (
	Clear   Word = iota + 1 // under .05
	Leaning                 // under .20
	Chance                  // otherwise
)

// The chances below which a change is clear or leaning. The first is the common
// one in statistics; the second is this program's choice.
const (
	clearAt   = .05
	leaningAt = .20
)

const (
	minForWord     = 3 // rounds on each side of a change that has a word
	minForInterval = 2 // rounds of an average that has an interval
)

// Change is how a figure differs from that of another span.
type Change struct {
	Known bool      // both spans have the figure
	Mean  float64   // of this span less that of the other; of losses, negative is better
	Word  Word      // how sure it is; 0 with a note
	Thin  golf.Thin // why a known change has no word
}

// changeOf compares two figures by Welch's test, which does not take both spans to
// vary alike (B. L. Welch, Biometrika 34, 1947; from memory). The word of a count
// or a share is by the exact test of independent events where that is less sure.
func changeOf(from, to Figure) Change {
	if !from.Known || !to.Known {
		return Change{}
	}
	c := Change{Known: true, Mean: to.Mean - from.Mean}
	if c.Thin = golf.Enough(golf.ThinChange, min(from.N, to.N), minForWord); c.Thin.Any() {
		return c
	}
	d, differ := stat.Welch(from.Sample, to.Sample)
	p, counted := from.events.chance(to.events)
	if !differ && !counted {
		return c // no round differs from another, on either side
	}
	if differ {
		p = max(p, d.P)
	}
	c.Word = wordOf(p)
	return c
}

// wordOf words the chance of so large a change where there is none.
func wordOf(p float64) Word {
	switch {
	case p < clearAt:
		return Clear
	case p < leaningAt:
		return Leaning
	default:
		return Chance
	}
}
