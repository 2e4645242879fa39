package golfer

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/mat"

	"strokeledger/analysis/golf"
	"strokeledger/analysis/parallel"
)

// Uncertain is how sure expected strokes are at one place: what they are, how
// far they move when every published figure moves by its spread, and how far
// they moved in one calibration to figures that were moved at random.
type Uncertain struct {
	Level   float64
	Lie     golf.Lie
	Far     float64 // yards off the green, feet on it
	Strokes float64
	SD      float64 // standard deviation, by the delta method
	Refit   float64 // moved in the refit
	Linear  float64 // what the delta method says of that refit
}

// RefitSeed is the seed of the one refit that checks the table of uncertainty.
const RefitSeed = 79

// The levels and places at which uncertainty is worked out.
var (
	watchedLevels = []float64{70, 75, 79, 85, 90, 100}
	watchedPlaces = []struct {
		lie golf.Lie
		far []float64
	}{
		{golf.Tee, []float64{160, 400, 500}},
		{golf.Fairway, []float64{20, 50, 100, 150, 200}},
		{golf.Rough, []float64{10, 20, 50, 100, 150, 200}},
		{golf.Bunker, []float64{10, 20, 150}},
		{golf.Recovery, []float64{150}},
		{golf.Green, []float64{3, 6, 10, 20, 40}},
	}
)

// watched are the expected strokes at every level and place of the table.
func (l *lineup) watched() []Uncertain {
	var all []Uncertain
	for _, level := range watchedLevels {
		for _, at := range watchedPlaces {
			for _, far := range at.far {
				all = append(all, Uncertain{Level: level, Lie: at.lie, Far: far, Strokes: l.level(level, at.lie, at.lie.Unit().Of(far))})
			}
		}
	}
	return all
}

// linear is the calibration made linear at its optimum: what each free number
// does to the misfits and to the expected strokes that are watched.
type linear struct {
	here     *lineup
	misfits  *mat.Dense // a row a misfit, a column a free number
	strokes  *mat.Dense // a row a place
	smallest float64    // the least that the objective changes when one number moves by the step, up or down
	weakest  free       // of which number
}

// linearised takes central differences with a step of each free number.
func (p *Parameters) linearised(step float64, notify func(done, of int)) *linear {
	a, here := publishedAims(), newLineup(p)
	best, watched := a.misfits(p, here), here.watched()
	lin := &linear{here: here, misfits: mat.NewDense(len(best), len(a.free), nil), strokes: mat.NewDense(len(watched), len(a.free), nil)}
	change := make([]float64, len(a.free))
	parallel.DoTelling(len(a.free), func(i int) {
		up, down := p.moved(a.free[i], step), p.moved(a.free[i], -step)
		high, low := up.lineupLike(here), down.lineupLike(here)
		above, below := a.misfits(&up, high), a.misfits(&down, low)
		for row := range best {
			lin.misfits.Set(row, i, (above[row]-below[row])/(2*step))
		}
		more, less := high.watched(), low.watched()
		for row := range watched {
			lin.strokes.Set(row, i, (more[row].Strokes-less[row].Strokes)/(2*step))
		}
		change[i] = math.Min(sumOfSquares(above), sumOfSquares(below)) - sumOfSquares(best)
	}, func(done int) { notify(done, len(a.free)) })
	lin.smallest = math.Inf(1)
	for i, c := range change {
		if c < lin.smallest {
			lin.smallest, lin.weakest = c, a.free[i]
		}
	}
	return lin
}

// uncertain works out the table: the covariance of the free numbers is the
// inverse of the Gauss-Newton Hessian, and the spread of expected strokes follows
// by the delta method. The refit moved every aim; the same draw through the
// linear calibration says what it should have come to.
func (lin *linear) uncertain(refit Parameters) ([]Uncertain, error) {
	var hessian mat.SymDense
	hessian.SymOuterK(1, lin.misfits.T())
	var chol mat.Cholesky
	if !chol.Factorize(&hessian) {
		return nil, fmt.Errorf("the calibration does not hold every number: its Hessian is singular")
	}
	step := lin.drawnStep(&chol)
	table, after := lin.here.watched(), newLineup(&refit).watched()
	for row := range table {
		g := mat.VecDenseCopyOf(lin.strokes.RowView(row))
		var x mat.VecDense
		if err := chol.SolveVecTo(&x, g); err != nil {
			return nil, err
		}
		table[row].SD = math.Sqrt(mat.Dot(g, &x))
		table[row].Refit = after[row].Strokes - table[row].Strokes
		table[row].Linear = mat.Dot(g, step)
	}
	return table, nil
}

// drawnStep is how far the free numbers go, by the linear calibration, when the
// aims are moved as in the refit.
func (lin *linear) drawnStep(chol *mat.Cholesky) *mat.VecDense {
	a := publishedAims()
	moved := a.drawn(RefitSeed)
	var by []float64
	for i, t := range a.targets {
		by = append(by, (moved.targets[i].Want-t.Want)/t.Spread)
	}
	by = append(by, moved.pull...)
	var right, step mat.VecDense
	right.MulVec(lin.misfits.T(), mat.NewVecDense(len(by), by))
	if err := chol.SolveVecTo(&step, &right); err != nil {
		panic("golfer: " + err.Error()) // the caller has factorised it
	}
	return &step
}

// Uncertainty works out how sure expected strokes are, with the refit that checks
// it, and tells notify how far it has come.
func (p Parameters) Uncertainty(refit Parameters, notify func(done, of int)) ([]Uncertain, error) {
	return p.linearised(uncertaintyStep, notify).uncertain(refit)
}

// uncertaintyStep is the share by which a number is moved for the table: large
// enough to tell whether the parameters are the optimum, small enough for a
// derivative.
const uncertaintyStep = .01
