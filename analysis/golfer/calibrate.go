package golfer

import (
	"math"
	"math/rand/v2"

	"gonum.org/v1/gonum/mat"
)

// aims are what a calibration draws the golfer to: the published figures, and
// where each free number is expected for want of a figure.
type aims struct {
	targets []Target
	free    []free
	pull    []float64 // by free number: where it is drawn to, from its start, in units of its prior
}

// publishedAims draws to the figures as they are printed and the numbers to where
// they start.
func publishedAims() aims {
	all := freeNumbers()
	return aims{Targets(), all, make([]float64, len(all))}
}

// drawn moves every aim at random by its own spread: the published figures as
// they might have come out, and another opinion of where the numbers start.
func (a aims) drawn(seed uint64) aims {
	rng := rand.New(rand.NewPCG(seed, 0))
	moved := aims{append([]Target(nil), a.targets...), a.free, append([]float64(nil), a.pull...)}
	for i := range moved.targets {
		moved.targets[i].Want += rng.NormFloat64() * moved.targets[i].Spread
	}
	for i := range moved.pull {
		moved.pull[i] += rng.NormFloat64()
	}
	return moved
}

// misfits are the targets' misses in units of their spreads, and then each free
// number's distance from where it is drawn to in units of its prior.
func (a *aims) misfits(p *Parameters, l *lineup) []float64 {
	all := make([]float64, 0, len(a.targets)+len(a.free))
	for _, t := range a.targets {
		all = append(all, (t.measure(l)-t.Want)/t.Spread)
	}
	for i, f := range a.free {
		all = append(all, p.away(f)/f.prior()-a.pull[i])
	}
	return all
}

// Objective is what a calibration makes small: the sum of the squared misfits, on
// the quick grid.
func (p Parameters) Objective() float64 {
	a := publishedAims()
	return sumOfSquares(a.misfits(&p, p.lineupOn(quick, nil)))
}

// sumOfSquares adds up the squares of some numbers, 0 for none.
func sumOfSquares(xs []float64) float64 {
	sum := 0.0
	for _, x := range xs {
		sum += x * x
	}
	return sum
}

// Calibrate fits the free numbers of the parameters to the published figures,
// starting from where they are, and tells notify how far it has come.
func (p Parameters) Calibrate(notify func(Progress)) Parameters {
	return p.fit(publishedAims(), leastGain, notify)
}

// Refit fits the free numbers as Calibrate does, but to figures that are moved at
// random, each by its spread; it need not end as near to the optimum.
func (p Parameters) Refit(seed uint64, notify func(Progress)) Parameters {
	return p.fit(publishedAims().drawn(seed), refitGain, notify)
}

// What a linear picture must gain for the search to go on, in the squares of
// spreads. Past it, expected strokes move by a small part of how sure they are.
const (
	leastGain = .05
	refitGain = 1
)

// fit searches on the quick grid.
func (p Parameters) fit(a aims, least float64, notify func(Progress)) Parameters {
	at := func(x *mat.VecDense) Parameters {
		moved := p
		for i, f := range a.free {
			moved = moved.moved(f, x.AtVec(i))
		}
		return moved
	}
	q := problem{notify: notify,
		misses: func(x *mat.VecDense) []float64 {
			here := at(x)
			return a.misfits(&here, here.lineupOn(quick, nil))
		},
		around: func(x *mat.VecDense) func(int, float64) []float64 {
			here := at(x)
			lineup := here.lineupOn(quick, nil)
			return func(i int, by float64) []float64 {
				moved := here.moved(a.free[i], by)
				return a.misfits(&moved, moved.lineupLike(lineup))
			}
		},
	}
	for _, f := range a.free {
		q.prior = append(q.prior, f.prior())
	}
	return at(q.search(least).x).rounded()
}

// rounded keeps as many digits as the file needs to be read by people; they
// are far finer than the targets can tell.
func (p Parameters) rounded() Parameters {
	for i := range p {
		p[i] = Skill{significant(p[i].Base), math.Round(p[i].Slope*1e6) / 1e6, math.Round(p[i].Curve*1e6) / 1e6}
	}
	return p
}

// significant rounds to six significant digits.
func significant(x float64) float64 {
	scale := math.Pow(10, 6-math.Ceil(math.Log10(math.Abs(x))))
	return math.Round(x*scale) / scale
}
