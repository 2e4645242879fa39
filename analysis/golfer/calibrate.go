package golfer

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/optimize"

	"strokeledger/analysis/parallel"
)

// free is one number that a calibration moves.
type free struct {
	key    key
	number moves // one of base, slope and curve
}

// freeNumbers lists them: bases, slopes and curves that the specs leave free.
func freeNumbers() []free {
	var all []free
	for k, s := range specs {
		for _, m := range []moves{base, slope, curve} {
			if s.free&m != 0 {
				all = append(all, free{key(k), m})
			}
		}
	}
	return all
}

// Name says which number it is.
func (f free) String() string {
	return specs[f.key].name + map[moves]string{base: "", slope: ", slope", curve: ", curve"}[f.number]
}

// moved returns the parameters with one number moved by a share of the skill:
// a base by that share of itself, a slope or a curve by the addition that moves
// the skill at t = 1 by that share.
func (p Parameters) moved(f free, share float64) Parameters {
	switch f.number {
	case base:
		p[f.key].Base *= math.Exp(share)
	case slope:
		p[f.key].Slope += share
	case curve:
		p[f.key].Curve += share
	}
	return p
}

// away is how far a number stands from where calibrations start, as a share.
func (p *Parameters) away(f free) float64 {
	k, s := p[f.key], specs[f.key].start
	switch f.number {
	case base:
		return math.Log(k.Base / s.Base)
	case slope:
		return k.Slope - s.Slope
	default:
		return k.Curve - s.Curve
	}
}

// priorSpread is how far the prior lets a number wander before it counts as much as one
// target missed by its spread.
var priorSpread = map[moves]float64{base: .3, slope: .3, curve: .15}

// misfits are the targets' misses in units of their spreads, and then each free
// number's distance from its start in units of the prior's.
func (p *Parameters) misfits(targets []Target) []float64 {
	l := newLineup(p)
	all := make([]float64, 0, len(targets)+int(parameterCount))
	for _, t := range targets {
		all = append(all, (t.measure(l)-t.Want)/t.Spread)
	}
	for _, f := range freeNumbers() {
		all = append(all, p.away(f)/priorSpread[f.number])
	}
	return all
}

// Objective is what a calibration makes small: the sum of the squared misfits.
func (p Parameters) Objective() float64 { return sumOfSquares(p.misfits(Targets())) }

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
	from    Parameters // where every x is 0
	free    []free     // the numbers that move, one a place of x
	targets []Target
	notify  func(Progress)

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
	return sumOfSquares(p.misfits(q.targets))
}

// linearise works out the misfits and their derivatives at x, once for each x.
func (q *problem) linearise(x []float64) {
	if q.x != nil && equal(q.x, x) {
		return
	}
	p := q.at(x)
	q.x, q.misfit = append([]float64(nil), x...), p.misfits(q.targets)
	q.jacobian = mat.NewDense(len(q.misfit), len(x), nil)
	q.steps++
	said := Progress{Step: q.steps, Of: len(x), Objective: sumOfSquares(q.misfit)}
	parallel.DoTelling(len(x), func(i int) {
		moved := p.moved(q.free[i], derivativeStep)
		for row, m := range moved.misfits(q.targets) {
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

// Calibrate fits the free numbers of the parameters to the targets, starting
// from where they are, and tells notify how far it has come. It is a Newton
// search on misfits made linear; it ends when no step gains anything.
func (p Parameters) Calibrate(notify func(Progress)) (Parameters, error) {
	q := &problem{from: p, free: freeNumbers(), targets: Targets(), notify: notify}
	result, err := optimize.Minimize(
		optimize.Problem{Func: q.objective, Grad: q.gradient, Hess: q.hessian},
		make([]float64, len(q.free)),
		&optimize.Settings{
			GradientThreshold: .02, // a step of 1 % then changes the objective by curvature alone
			Converger:         &optimize.FunctionConverge{Absolute: 1e-4, Iterations: 2},
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
