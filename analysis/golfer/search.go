package golfer

import (
	"math"

	"gonum.org/v1/gonum/mat"

	"strokeledger/analysis/parallel"
)

// derivativeStep is the share by which a number is moved to either side to take a
// derivative. It is wide on purpose: the nodes of a long shot stand some yards apart,
// and as they pass over the hole expected strokes ripple a little. Some mixtures of
// numbers are held a thousand times less than others, so that the ripples in
// the strong ones hide all that is known of the weak ones, and with slopes over a tiny step a
// search stops on the floor of a valley far from its lowest point.
const derivativeStep = .01

// problem is a sum of squares that a search makes small: x is how far some numbers
// stand from where it begins.
type problem struct {
	prior  []float64                                          // by number: how far it may wander before that counts
	misses func(x *mat.VecDense) []float64                    // the misfits, whose squares are added up
	around func(x *mat.VecDense) func(int, float64) []float64 // the same around x, where one number is moved by so much
	notify func(Progress)

	taken    int           // so far, derivatives
	jacobian *mat.Dense    // of the misfits, where the last derivative was taken; a row a misfit, a column a number
	hessian  *mat.SymDense // of the same place, of half the objective: Gauss and Newton's
	damping  float64       // of the last step, see damped
}

// Progress is how far a search has come.
type Progress struct {
	Step      int     // full derivatives taken
	Done, Of  int     // numbers of this derivative
	Objective float64 // at its start: the sum of the squared misfits
}

// spot is where a search is: how far the numbers stand, and what is missed there.
type spot struct {
	x, misfit *mat.VecDense
	objective float64 // infinite where nothing can be measured
}

// spot measures what is missed at x.
func (q *problem) spot(x *mat.VecDense) spot {
	misfit := q.misses(x)
	objective := sumOfSquares(misfit)
	if math.IsNaN(objective) {
		objective = math.Inf(1)
	}
	return spot{x, mat.NewVecDense(len(misfit), misfit), objective}
}

// beyond is the spot that lies a share of a step beyond another.
func (q *problem) beyond(from spot, share float64, step mat.Vector) spot {
	var x mat.VecDense
	x.AddScaledVec(from.x, share, step)
	return q.spot(&x)
}

// linearise works out the derivatives of the misfits at a spot, and from them the
// Gauss-Newton Hessian.
func (q *problem) linearise(at spot) {
	n, moved := len(q.prior), q.around(at.x)
	q.taken++
	said := Progress{Step: q.taken, Of: n, Objective: at.objective}
	q.jacobian = mat.NewDense(at.misfit.Len(), n, nil)
	parallel.DoTelling(n, func(i int) {
		above, below := moved(i, derivativeStep), moved(i, -derivativeStep)
		for row := range above {
			q.jacobian.Set(row, i, (above[row]-below[row])/(2*derivativeStep))
		}
	}, func(done int) {
		said.Done = done
		q.notify(said)
	})
	q.hessian = mat.NewSymDense(n, nil)
	q.hessian.SymOuterK(1, q.jacobian.T())
}

// The range of the damping, and the factor from one that is tried to the next.
const (
	leastDamping, firstDamping, mostDamping = 1e-5, 1, 1e6

	dampingFactor = 4
)

// damped are the factors of the Hessian when the distance from a spot is added to
// the objective, in units of the priors and times the damping: Levenberg and
// Marquardt's. With more of it steps are shorter, and turn to where the
// objective falls fastest.
func (q *problem) damped(damping float64) *mat.Cholesky {
	h := mat.NewSymDense(len(q.prior), nil)
	h.CopySym(q.hessian)
	for i, prior := range q.prior {
		h.SetSym(i, i, h.At(i, i)+damping/(prior*prior))
	}
	var factors mat.Cholesky
	if !factors.Factorize(h) {
		panic("golfer: a misfit of a calibration is not a number")
	}
	return &factors
}

// against is the step that the linear picture takes against some misfits.
func (q *problem) against(misfit mat.Vector, factors *mat.Cholesky) *mat.VecDense {
	var gradient, step mat.VecDense
	gradient.MulVec(q.jacobian.T(), misfit)
	if err := factors.SolveVecTo(&step, &gradient); err != nil {
		panic("golfer: " + err.Error()) // it has been factorised
	}
	step.ScaleVec(-1, &step)
	return &step
}

// How the curve of the misfits along a step is measured, and how much of the step it
// may come to for the two together to be tried.
const (
	curvePart = .1
	curveMost = .75
)

// bent is a step with what follows from the curve of the misfits along it, the
// geodesic acceleration of M. K. Transtrum and J. P. Sethna (2012); nil where the curve
// is too strong for that.
func (q *problem) bent(from spot, step *mat.VecDense, factors *mat.Cholesky) *mat.VecDense {
	near := q.beyond(from, curvePart, step)
	var along, curve mat.VecDense
	along.MulVec(q.jacobian, step)
	curve.SubVec(near.misfit, from.misfit)
	curve.AddScaledVec(&curve, -curvePart, &along)
	curve.ScaleVec(1/(curvePart*curvePart), &curve)
	bend := q.against(&curve, factors)
	if size := mat.Norm(bend, 2); !(size < curveMost*mat.Norm(step, 2)) {
		return nil
	}
	bend.AddVec(bend, step)
	return bend
}

// steps are the steps worth trying from a spot at a damping: by the linear picture,
// and the same bent.
func (q *problem) steps(from spot, damping float64) []*mat.VecDense {
	factors := q.damped(damping)
	step := q.against(from.misfit, factors)
	if bent := q.bent(from, step, factors); bent != nil {
		return []*mat.VecDense{step, bent}
	}
	return []*mat.VecDense{step}
}

// step goes from a spot with the damping that lowers the objective most: from the
// last one that did, to less for as long as that gets better, or else to more. A
// derivative costs as much as dozens of spots, so that trying a few is cheap. It returns
// the spot itself when none is lower.
func (q *problem) step(from spot) spot {
	best, damping := from, q.damping
	try := func(d float64) float64 {
		lowest := math.Inf(1)
		for _, s := range q.steps(from, d) {
			next := q.beyond(from, 1, s)
			if next.objective < best.objective {
				best, damping = next, d
			}
			lowest = min(lowest, next.objective)
		}
		return lowest
	}
	first := try(q.damping)
	for _, factor := range []float64{1. / dampingFactor, dampingFactor} {
		last := first
		for d := q.damping * factor; d >= leastDamping && d <= mostDamping; d *= factor {
			reached := try(d)
			if reached >= last && (factor < 1 || best.objective < from.objective) {
				break
			}
			last = reached
		}
		if last < first {
			break
		}
	}
	q.damping = damping
	return best
}

// further goes on in the direction that led from one spot to another, twice as far
// each time, for as long as the objective falls: in a curved valley linear pictures
// take one small step after the other the same way.
func (q *problem) further(from, to spot) spot {
	var direction mat.VecDense
	direction.SubVec(to.x, from.x)
	best := to
	for share := .5; share < 100; share *= 2 {
		next := q.beyond(to, share, &direction)
		if next.objective >= best.objective {
			break
		}
		best = next
	}
	return best
}

// usedAgain is the part of the objective that a step must take off for its linear
// picture to be used for another.
const usedAgain = .1

// search goes from x = 0 until a fresh linear picture gains less than least, and
// returns where it ends.
func (q *problem) search(least float64) spot {
	q.damping = firstDamping
	at := q.spot(mat.NewVecDense(len(q.prior), nil))
	for {
		start := at
		q.linearise(at)
		for gain := math.Inf(1); gain > usedAgain*at.objective; {
			next := q.step(at)
			gain = at.objective - next.objective
			at = next
		}
		at = q.further(start, at)
		if start.objective-at.objective < least {
			return at
		}
	}
}
