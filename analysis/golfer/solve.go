package golfer

import (
	"math"

	"strokeledger/analysis/expect"
	"strokeledger/analysis/golf"
)

// Golfer is one member of the family, at one skill coordinate, with every
// stroke's outcome worked out and expected strokes solved from them.
type Golfer struct {
	T      float64 // the skill coordinate: 0 about a tour player, 1 about a 90 golfer
	skills *skills
	grid   *grid
	steps  []step    // the outcome of a stroke from each state
	e      []float64 // expected strokes from each state
}

// settled is the largest change of a sweep at which the solution stands.
const settled = 1e-12

// Solve works out the golfer at skill coordinate t. The aim is fixed, so that
// expected strokes are linear in themselves, E = c + P E: one pass builds the
// sparse P, then Gauss-Seidel sweeps in ascending distance settle E within a
// few passes.
func (p *Parameters) Solve(t float64) *Golfer { return p.solveOn(standard, t, nil) }

// solveLike solves the golfer at another's skill coordinate and takes over the
// strokes that the two play alike: most of them, where only one number differs.
func (p *Parameters) solveLike(other *Golfer) *Golfer { return p.solveOn(other.grid, other.T, other) }

// solveOn solves on a grid that may be finer than the standard one, with the help
// of another golfer or nil. The green comes first, since nothing leads back from
// it.
func (p *Parameters) solveOn(grid *grid, t float64, other *Golfer) *Golfer {
	n := grid.states()
	g := &Golfer{T: t, skills: p.at(t), grid: grid, steps: make([]step, n), e: make([]float64, n)}
	for i := range g.e {
		g.e[i] = 3
	}
	if other != nil {
		copy(g.e, other.e)
	}
	tally := newTally(grid)
	for i := range n {
		from := grid.place(i)
		if other != nil && g.skills.playsLike(other.skills, from) {
			g.steps[i] = other.steps[i]
		} else if from.Lie == golf.Green {
			g.steps[i] = g.skills.puttStep(tally, from.Distance.Feet())
		} else {
			g.steps[i] = g.skills.strokeStep(tally, from.Lie, from.Distance.Yards(), 0)
		}
	}
	g.settle(grid.greenOrder)
	g.settle(grid.courseOrder)
	return g
}

// playsLike reports whether two golfers play the same stroke from a place.
func (s *skills) playsLike(other *skills, from From) bool {
	if from.Lie == golf.Green {
		return s.putt(from.Distance.Feet()) == other.putt(from.Distance.Feet())
	}
	yd := from.Distance.Yards()
	return s.ground == other.ground && s.flight(from.Lie, yd, 0) == other.flight(from.Lie, yd, 0)
}

// settle sweeps over some states until none of them moves.
func (g *Golfer) settle(order []int) {
	for change := 1.0; change > settled; {
		change = 0
		for _, i := range order {
			e, self := g.steps[i].value(i, g.e)
			e /= 1 - self
			change = max(change, math.Abs(e-g.e[i]))
			g.e[i] = e
		}
	}
}

// value is the cost of a step and of all that follows, apart from the chance
// that it leads back to state self.
func (s *step) value(self int, e []float64) (sum, back float64) {
	sum = s.cost
	for _, m := range s.to {
		if int(m.state) == self {
			back = m.chance
			continue
		}
		sum += m.chance * e[m.state]
	}
	return sum, back
}

// Strokes returns the golfer's own expected strokes from a lie, before any
// residual of the published table is added.
func (g *Golfer) Strokes(lie golf.Lie, d golf.Distance) float64 {
	i, w := g.grid.locate(lie, lie.Unit().In(d))
	return g.e[i] + w*(g.e[i+1]-g.e[i])
}

// Table returns the golfer's own expected strokes at every node of the stored
// grid.
func (g *Golfer) Table() expect.Table {
	var t expect.Table
	for _, lie := range golf.Lies[:golf.Recovery] {
		row := t.Row(lie)
		for i := range row {
			row[i] = g.e[g.grid.state(lie, i*g.grid.density)]
		}
	}
	for i := range t.Feet {
		t.Feet[i] = g.e[g.grid.state(golf.Green, i*g.grid.density)]
	}
	return t
}

// MakeRate returns the chance that a putt of ft feet is holed.
func (g *Golfer) MakeRate(ft float64) float64 { return g.skills.putt(ft).made() }
