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

// linear is the calibration made linear at some parameters: what each free number
// does to the misfits and to the expected strokes that are watched.
type linear struct {
	misfit  []float64    // there
	misfits *mat.Dense   // derivatives: a row a misfit, a column a free number
	strokes *mat.Dense   // derivatives: a row a place
	hessian mat.Cholesky // of half the objective
	change  []float64    // the least that the objective changes when a number moves by the step, up or down
}

// uncertaintyStep is the share by which a number is moved for the table, to either
// side.
const uncertaintyStep = .01

// linearised takes central differences with that step of each free number.
func (p *Parameters) linearised(notify func(done, of int)) (*linear, error) {
	a, here := publishedAims(), p.lineupOn(quick, nil)
	lin := &linear{misfit: a.misfits(p, here)}
	lin.misfits = mat.NewDense(len(lin.misfit), len(a.free), nil)
	lin.strokes = mat.NewDense(len(here.watched()), len(a.free), nil)
	lin.change = make([]float64, len(a.free))
	parallel.DoTelling(len(a.free), func(i int) {
		up, down := p.moved(a.free[i], uncertaintyStep), p.moved(a.free[i], -uncertaintyStep)
		high, low := up.lineupLike(here), down.lineupLike(here)
		above, below := a.misfits(&up, high), a.misfits(&down, low)
		for row := range above {
			lin.misfits.Set(row, i, (above[row]-below[row])/(2*uncertaintyStep))
		}
		lin.change[i] = math.Min(sumOfSquares(above), sumOfSquares(below)) - sumOfSquares(lin.misfit)
		more, less := high.watched(), low.watched()
		for row := range more {
			lin.strokes.Set(row, i, (more[row].Strokes-less[row].Strokes)/(2*uncertaintyStep))
		}
	}, func(done int) { notify(done, len(a.free)) })
	var hessian mat.SymDense
	hessian.SymOuterK(1, lin.misfits.T())
	if !lin.hessian.Factorize(&hessian) {
		return nil, fmt.Errorf("the calibration does not hold every number: its Hessian is singular")
	}
	return lin, nil
}

// newton is how far the free numbers go, by the linear calibration, when its misfits
// are these.
func (lin *linear) newton(misfit []float64) *mat.VecDense {
	var right, step mat.VecDense
	right.MulVec(lin.misfits.T(), mat.NewVecDense(len(misfit), misfit))
	if err := lin.hessian.SolveVecTo(&step, &right); err != nil {
		panic("golfer: " + err.Error()) // linearised has factorised it
	}
	step.ScaleVec(-1, &step)
	return &step
}

// unfinished is what the search for the optimum has left: what the objective would
// still fall by the linear calibration, and the largest move of watched expected
// strokes in their own spreads.
func (lin *linear) unfinished(table []Uncertain) (gain, move float64) {
	step := lin.newton(lin.misfit)
	var change, strokes mat.VecDense
	change.MulVec(lin.misfits, step)
	gain = mat.Dot(&change, &change)
	strokes.MulVec(lin.strokes, step)
	for i, u := range table {
		move = math.Max(move, math.Abs(strokes.AtVec(i))/u.SD)
	}
	return gain, move
}

// uncertain works out the table: the covariance of the free numbers is the
// inverse of the Gauss-Newton Hessian, and the spread of expected strokes follows
// by the delta method. The refit moved every aim; the same draw through the
// linear calibration says what it should have come to.
func (lin *linear) uncertain(p, refit Parameters) ([]Uncertain, error) {
	table, after := newLineup(&p).watched(), newLineup(&refit).watched()
	step := lin.newton(drawnMisfits())
	for row := range table {
		g := mat.VecDenseCopyOf(lin.strokes.RowView(row))
		var x mat.VecDense
		if err := lin.hessian.SolveVecTo(&x, g); err != nil {
			return nil, err
		}
		table[row].SD = math.Sqrt(mat.Dot(g, &x))
		table[row].Refit = after[row].Strokes - table[row].Strokes
		table[row].Linear = mat.Dot(g, step)
		for _, x := range []*float64{&table[row].Strokes, &table[row].SD, &table[row].Refit, &table[row].Linear} {
			*x = math.Round(*x*1e4) / 1e4 // as the file keeps them
		}
	}
	return table, nil
}

// drawnMisfits are what moving the aims as in the refit adds to the misfits.
func drawnMisfits() []float64 {
	a := publishedAims()
	moved := a.drawn(RefitSeed)
	var all []float64
	for i, t := range a.targets {
		all = append(all, (t.Want-moved.targets[i].Want)/t.Spread)
	}
	for _, pull := range moved.pull {
		all = append(all, -pull)
	}
	return all
}

// Uncertainty works out how sure expected strokes are, with the refit that checks
// it, and tells notify how far it has come.
func (p Parameters) Uncertainty(refit Parameters, notify func(done, of int)) ([]Uncertain, error) {
	lin, err := p.linearised(notify)
	if err != nil {
		return nil, err
	}
	return lin.uncertain(p, refit)
}

// SpreadsApart returns how far two sets of parameters are apart in what matters: the
// largest difference of expected strokes at the places of the committed table, in the
// spreads that it gives them.
func (p Parameters) SpreadsApart(other Parameters) float64 {
	own, theirs, far := newLineup(&p).watched(), newLineup(&other).watched(), 0.0
	for i, u := range committedUncertainty() {
		far = math.Max(far, math.Abs(own[i].Strokes-theirs[i].Strokes)/u.SD)
	}
	return far
}
