package aim

import (
	"math"

	"strokeledger/analysis/stat"
)

// Misses are how often shots with a club ended where, by the words of a player who
// notes them.
type Misses struct{ Left, Middle, Right int }

// Shots is how many there are.
func (m Misses) Shots() int { return m.Left + m.Middle + m.Right }

// How far off the middle a player begins to speak of a miss, in spreads: the middle
// of what is thought of before the first word, and the spread of its logarithm. This
// program's choice.
const (
	missFrom       = .7
	missFromSpread = .5
)

// The grid on which the bias and the start of a miss are weighed, in spreads.
const (
	biasMost, biasStep = 4., .02
	fromLow, fromHigh  = .1, 2.5
	fromStep           = .1
)

// AfterMisses is the pattern when words of misses are known too: the sideways bias
// by an ordered probit of left, middle and right, on a grid, from what was thought
// of it before. The spreads stay what they were.
func (l Level) AfterMisses(p Pattern, m Misses) Pattern {
	if m.Shots() == 0 {
		return p
	}
	sd := l.sideSD * factor(p.Wide)
	before, spread := p.Side/sd, 1/math.Sqrt(meanWeight)
	if p.Balls > 0 {
		spread = (p.SideIn.High - p.SideIn.Low) / 2 / stat.NormalQuantile(.5+sure/2) / sd
	}
	weights := biasWeights(m, before, spread)
	p.Side, p.SideIn = mean(weights)*sd, scaled(within(weights), sd)
	p.Shots = m.Shots()
	return p
}

// biasOf is the bias at place i of the grid.
func biasOf(i int) float64 { return -biasMost + float64(i)*biasStep }

// biasWeights are how likely each bias of the grid is; they add up to 1.
func biasWeights(m Misses, before, spread float64) []float64 {
	n := int(math.Round(2*biasMost/biasStep)) + 1
	logs := make([][]float64, 0, 32)
	most := math.Inf(-1)
	for from := fromLow; from <= fromHigh; from += fromStep {
		z := math.Log(from/missFrom) / missFromSpread
		row := make([]float64, n)
		for i := range row {
			bias := biasOf(i)
			left, right := stat.NormalCDF(-from-bias), stat.NormalCDF(bias-from)
			d := (bias - before) / spread
			row[i] = -z*z/2 - math.Log(from) - d*d/2 + times(m.Left, left) + times(m.Right, right) + times(m.Middle, 1-left-right)
			most = max(most, row[i])
		}
		logs = append(logs, row)
	}
	weights, sum := make([]float64, n), 0.0
	for _, row := range logs {
		for i, x := range row {
			w := math.Exp(x - most)
			weights[i] += w
			sum += w
		}
	}
	for i := range weights {
		weights[i] /= sum
	}
	return weights
}

// times is n times the logarithm of a chance.
func times(n int, chance float64) float64 {
	if n == 0 {
		return 0
	}
	return float64(n) * math.Log(max(chance, 1e-300))
}

// mean is that of the biases by their weights.
func mean(weights []float64) float64 {
	sum := 0.0
	for i, w := range weights {
		sum += w * biasOf(i)
	}
	return sum
}

// within is the interval of 95 % of the biases.
func within(weights []float64) stat.Interval {
	in, sum := stat.Interval{Low: math.NaN()}, 0.0
	for i, w := range weights {
		sum += w
		if math.IsNaN(in.Low) && sum >= (1-sure)/2 {
			in.Low = biasOf(i)
		}
		if sum >= (1+sure)/2 {
			in.High = biasOf(i)
			break
		}
	}
	return in
}
