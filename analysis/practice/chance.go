package practice

import (
	"errors"
	"math"
	"slices"

	"strokeledger/analysis/golf"
	"strokeledger/analysis/golfer"
	"strokeledger/analysis/parallel"
)

// Chances are the chances that a try counts at each station of a drill, 0 to 1,
// for the golfer of a level from 68 to 110. Where a table has them, levels between
// whole ones lie on a straight line between these.
func (d Drill) Chances(of *golfer.Parameters, level float64) ([]float64, error) {
	if levels, ok := tabled(d, of); ok && level >= golf.MinTarget && level <= golf.MaxTarget {
		return levels.At(level), nil
	}
	return d.solve(of, level)
}

// solve works out the chances.
func (d Drill) solve(of *golfer.Parameters, level float64) ([]float64, error) {
	s, err := of.Striker(level)
	if err != nil {
		return nil, err
	}
	all := make([]float64, len(d.Stations))
	for i, station := range d.Stations {
		switch {
		case station.chance == nil:
			return nil, nil
		case i > 0 && station.Lie == d.Stations[i-1].Lie && station.Distance == d.Stations[i-1].Distance:
			all[i] = all[i-1]
		default:
			all[i] = station.chance(s)
		}
	}
	return all, nil
}

// solveAll works out the chances at every whole level from 68 to 110.
func (d Drill) solveAll(of *golfer.Parameters) (Levels, error) {
	all, faults := make(Levels, golf.MaxTarget-golf.MinTarget+1), make([]error, golf.MaxTarget-golf.MinTarget+1)
	parallel.Do(len(all), func(i int) { all[i], faults[i] = d.solve(of, float64(golf.MinTarget+i)) })
	return all, errors.Join(faults...)
}

// Chance is the mean of the stations' chances: the share of tries that count, over
// whole sets.
func Chance(chances []float64) float64 {
	sum := 0.0
	for _, c := range chances {
		sum += c
	}
	return sum / float64(len(chances))
}

// setTries is how many tries make a set of a drill with one station.
const setTries = 10

// Set is how many tries make a set of the drill.
func (d Drill) Set() int {
	if len(d.Stations) == 1 {
		return setTries
	}
	return len(d.Stations)
}

// counts is the distribution of how many of some tries count, from none to all of
// them. The tries go round the stations in turn.
func counts(chances []float64, tries int) []float64 {
	p := make([]float64, 1, tries+1)
	p[0] = 1
	for n := range tries {
		c := chances[n%len(chances)]
		p = append(p, 0)
		for k := n + 1; k > 0; k-- {
			p[k] = p[k]*(1-c) + p[k-1]*c
		}
		p[0] *= 1 - c
	}
	return p
}

// atLeast is the chance of k or more.
func atLeast(p []float64, k int) float64 {
	sum := 0.0
	for _, x := range slices.Backward(p[max(k, 0):]) {
		sum += x
	}
	return math.Min(sum, 1)
}
