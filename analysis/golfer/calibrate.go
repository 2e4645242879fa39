package golfer

import (
	"math"
	"math/rand/v2"

	"gonum.org/v1/gonum/mat"

	"strokeledger/analysis/parallel"
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

// derivativeStep is the share by which a number is moved to take a derivative.
const derivativeStep = 1e-5

// problem is the calibration as an optimiser sees it: x is how far each free
// number stands from the first parameters.
type problem struct {
	aims
	from   Parameters // where every x is 0
	notify func(Progress)

	steps    int          // derivatives taken so far
	jacobian *mat.Dense   // of the misfits, where the last derivative was taken; a row a misfit, a column a free number
	hessian  mat.Cholesky // of the same place, of half the objective
}

// Progress is how far a calibration has come.
type Progress struct {
	Step      int     // full derivatives taken
	Done, Of  int     // solutions of this derivative
	Objective float64 // at its start, see Parameters.Objective
}

// at returns the parameters that x stands for.
func (q *problem) at(x []float64) Parameters {
	p := q.from
	for i, f := range q.free {
		p = p.moved(f, x[i])
	}
	return p
}

// misfitsAt are the misfits at x.
func (q *problem) misfitsAt(x []float64) []float64 {
	p := q.at(x)
	return q.misfits(&p, p.lineupOn(quick, nil))
}

// linearise works out the derivatives of the misfits at x, and from them the
// Gauss-Newton Hessian, which is always positive definite here: the prior alone is.
func (q *problem) linearise(x []float64) {
	p := q.at(x)
	here := p.lineupOn(quick, nil)
	misfit := q.misfits(&p, here)
	q.jacobian = mat.NewDense(len(misfit), len(x), nil)
	q.steps++
	said := Progress{Step: q.steps, Of: len(x), Objective: sumOfSquares(misfit)}
	parallel.DoTelling(len(x), func(i int) {
		moved := p.moved(q.free[i], derivativeStep)
		for row, m := range q.misfits(&moved, moved.lineupLike(here)) {
			q.jacobian.Set(row, i, (m-misfit[row])/derivativeStep)
		}
	}, func(done int) {
		said.Done = done
		q.notify(said)
	})
	var hessian mat.SymDense
	hessian.SymOuterK(1, q.jacobian.T())
	if !q.hessian.Factorize(&hessian) {
		panic("golfer: the Hessian of a calibration is not positive definite")
	}
}

// step goes from x, where the misfits are known, to the optimum of the linear
// picture, or as far towards it as the objective falls. It returns x and the misfits
// as they were when it does not fall.
func (q *problem) step(x, misfit []float64) ([]float64, []float64) {
	var gradient, full mat.VecDense
	gradient.MulVec(q.jacobian.T(), mat.NewVecDense(len(misfit), misfit))
	if err := q.hessian.SolveVecTo(&full, &gradient); err != nil {
		panic("golfer: " + err.Error())
	}
	for share := 1.0; share > .05; share /= 2 {
		next := make([]float64, len(x))
		for i := range x {
			next[i] = x[i] - share*full.AtVec(i)
		}
		if m := q.misfitsAt(next); sumOfSquares(m) < sumOfSquares(misfit) {
			return next, m
		}
	}
	return x, misfit
}

// further goes on from x in the direction that led there, twice as far each time, for
// as long as the objective falls: in a curved valley linear pictures take one small
// step after the other the same way.
func (q *problem) further(from, x, misfit []float64) ([]float64, []float64) {
	direction := make([]float64, len(x))
	for i := range x {
		direction[i] = x[i] - from[i]
	}
	for share := .5; share < 100; share *= 2 {
		next := make([]float64, len(x))
		for i := range x {
			next[i] = x[i] + share*direction[i]
		}
		m := q.misfitsAt(next)
		if sumOfSquares(m) >= sumOfSquares(misfit) {
			break
		}
		x, misfit = next, m
	}
	return x, misfit
}

// search is a Gauss-Newton search from x = 0 that ends when a fresh linear picture
// gains less than least. As a derivative costs as much as a hundred solutions, a
// picture is used for as long as its steps gain a part of what its first one did.
func (q *problem) search(least float64) Parameters {
	x := make([]float64, len(q.free))
	misfit := q.misfitsAt(x)
	for {
		start, from := sumOfSquares(misfit), x
		q.linearise(x)
		for gain, first := math.Inf(1), 0.0; gain > max(first/20, least/10); first = max(first, gain) {
			before := sumOfSquares(misfit)
			x, misfit = q.step(x, misfit)
			gain = before - sumOfSquares(misfit)
		}
		x, misfit = q.further(from, x, misfit)
		if start-sumOfSquares(misfit) < least {
			return q.at(x).rounded()
		}
	}
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
	return (&problem{aims: a, from: p, notify: notify}).search(least)
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
