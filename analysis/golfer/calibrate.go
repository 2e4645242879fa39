package golfer

import (
	"fmt"
	"math"
	"math/rand/v2"

	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/optimize"

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

// Objective is what a calibration makes small: the sum of the squared misfits.
func (p Parameters) Objective() float64 {
	a := publishedAims()
	return sumOfSquares(a.misfits(&p, newLineup(&p)))
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
	grid   *grid
	from   Parameters // where every x is 0
	notify func(Progress)

	steps    int        // derivatives taken so far
	jacobian *mat.Dense // of the misfits, at x; a row a misfit, a column a free number
	misfit   []float64  // at x
	x        []float64  // where the last derivative was taken; nil before the first
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

// objective is what is made small, at x.
func (q *problem) objective(x []float64) float64 {
	p := q.at(x)
	return sumOfSquares(q.misfits(&p, p.lineupOn(q.grid, nil)))
}

// linearise works out the misfits and their derivatives at x, once for each x.
func (q *problem) linearise(x []float64) {
	if q.x != nil && equal(q.x, x) {
		return
	}
	p := q.at(x)
	here := p.lineupOn(q.grid, nil)
	q.x, q.misfit = append([]float64(nil), x...), q.misfits(&p, here)
	q.jacobian = mat.NewDense(len(q.misfit), len(x), nil)
	q.steps++
	said := Progress{Step: q.steps, Of: len(x), Objective: sumOfSquares(q.misfit)}
	parallel.DoTelling(len(x), func(i int) {
		moved := p.moved(q.free[i], derivativeStep)
		for row, m := range q.misfits(&moved, moved.lineupLike(here)) {
			q.jacobian.Set(row, i, (m-q.misfit[row])/derivativeStep)
		}
	}, func(done int) {
		said.Done = done
		q.notify(said)
	})
}

// equal reports whether two points of the same length are one.
func equal(a, b []float64) bool {
	for i := range a {
		if a[i] != b[i] {
			return false
		}
	}
	return true
}

// gradient writes the derivative of the objective at x into grad.
func (q *problem) gradient(grad, x []float64) {
	q.linearise(x)
	g := mat.NewVecDense(len(x), grad)
	g.MulVec(q.jacobian.T(), mat.NewVecDense(len(q.misfit), q.misfit))
	g.ScaleVec(2, g)
}

// hessian is that of the misfits made linear (Gauss-Newton), which is always
// positive definite here: the prior alone is.
func (q *problem) hessian(h *mat.SymDense, x []float64) {
	q.linearise(x)
	h.SymOuterK(2, q.jacobian.T())
}

// Calibrate fits the free numbers of the parameters to the published figures,
// starting from where they are, and tells notify how far it has come.
func (p Parameters) Calibrate(notify func(Progress)) (Parameters, error) {
	return p.fit(publishedAims(), notify)
}

// Refit fits the free numbers as Calibrate does, but to figures that are moved at
// random, each by its spread.
func (p Parameters) Refit(seed uint64, notify func(Progress)) (Parameters, error) {
	return p.fit(publishedAims().drawn(seed), notify)
}

// fit searches on a quick grid until steps gain little, and from there on the grid
// that counts until no step gains anything.
func (p Parameters) fit(a aims, notify func(Progress)) (Parameters, error) {
	p, err := p.search(&problem{aims: a, grid: quick, from: p, notify: notify}, optimize.FunctionConverge{Absolute: .05, Iterations: 1})
	if err != nil {
		return p, err
	}
	return p.search(&problem{aims: a, grid: standard, from: p, notify: notify}, optimize.FunctionConverge{Absolute: 1e-4, Iterations: 2})
}

// search is a Newton search on misfits made linear.
func (p Parameters) search(q *problem, end optimize.FunctionConverge) (Parameters, error) {
	result, err := optimize.Minimize(
		optimize.Problem{Func: q.objective, Grad: q.gradient, Hess: q.hessian},
		make([]float64, len(q.free)),
		&optimize.Settings{
			GradientThreshold: .01, // a step of 1 % then changes the objective by curvature alone
			Converger:         &end,
			Concurrent:        1,
		},
		&optimize.Newton{Linesearcher: &optimize.Backtracking{}},
	)
	if err != nil {
		return p, fmt.Errorf("the calibration stopped: %w", err)
	}
	return q.at(result.X).rounded(), nil
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
