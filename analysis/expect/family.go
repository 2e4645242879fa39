package expect

import (
	"fmt"
	"math"
	"sync"

	"strokeledger/analysis/golf"
)

// The levels there are: 68 is below the published tour table's own sum on the
// reference course, so both ends are extrapolations.
const (
	MinLevel = float64(golf.MinTarget)
	MaxLevel = float64(golf.MaxTarget)
)

// family is every stored level with the published residual laid on, ready for
// reading. It is built once and never changes.
type family struct {
	t     []float64
	model []Table // the generative golfer alone
	level []Table // with the residual, put in order
	short []ShortTable
	sum   []float64 // each level's expected strokes on the reference course
	tour  Table
}

var (
	readTables = sync.OnceValue(loadTables)
	levels     = sync.OnceValue(loadFamily)
)

func loadFamily() *family {
	stored, err := Committed()
	if err != nil {
		panic("expect: the committed level file: " + err.Error())
	}
	return newFamily(stored)
}

func newFamily(stored []Stored) *family {
	f := &family{}
	for _, s := range stored {
		f.t = append(f.t, s.T)
		f.model = append(f.model, s.Table)
		f.short = append(f.short, s.Short)
	}
	zero := f.zero()
	rest := residual(&f.model[zero])
	for i := range f.model {
		f.level = append(f.level, withResidual(&f.model[i], &rest, f.t[i]))
	}
	putInOrder(f.level)
	f.tour = tourTable(&f.level[zero])
	card := ReferenceCourse()
	for i := range f.level {
		f.sum = append(f.sum, courseSum(&f.level[i], card))
	}
	return f
}

// zero is the level at skill coordinate 0, where the family meets the table.
func (f *family) zero() int {
	for i, t := range f.t {
		if t == 0 {
			return i
		}
	}
	panic("expect: the level file has no level at skill coordinate 0")
}

// place finds where value lies among ascending knots: the knot below and the
// share of the way to the next, held to the ends.
func place(knots []float64, value float64) (int, float64) {
	i := 0
	for i < len(knots)-2 && value >= knots[i+1] {
		i++
	}
	return i, min(max((value-knots[i])/(knots[i+1]-knots[i]), 0), 1)
}

func courseSum(t *Table, card []golf.CardHole) float64 {
	sum := 0.0
	for _, h := range card {
		sum += t.At(golf.Tee, h.Length)
	}
	return sum
}

// SkillOf returns the skill coordinate of level s, from 68 to 110.
func SkillOf(s float64) (float64, error) {
	if !(s >= MinLevel && s <= MaxLevel) {
		return 0, fmt.Errorf("level %g; allowed: %g to %g", s, MinLevel, MaxLevel)
	}
	f := levels()
	i, w := place(f.sum, s)
	return f.t[i] + w*(f.t[i+1]-f.t[i]), nil
}

// SkillRange returns the skill coordinates of the first and last stored level.
func SkillRange() (low, high float64) {
	f := levels()
	return f.t[0], f.t[len(f.t)-1]
}

// ModelStrokes returns the generative golfer's own expected strokes over a
// card at skill coordinate t, without the residual of the published table, and
// so what a simulation of many rounds must average. Outside SkillRange it is
// that of the nearer end.
func ModelStrokes(card []golf.CardHole, t float64) float64 {
	f := levels()
	i, w := place(f.t, t)
	low, high := courseSum(&f.model[i], card), courseSum(&f.model[i+1], card)
	return low + w*(high-low)
}

// residual is the published table less the golfer at skill 0, taken where the
// two agree in the order of lies and held constant outside.
func residual(golfer *Table) Table {
	var rest Table
	for _, lie := range golf.Lies[:golf.Recovery] {
		row, own := rest.Row(lie), golfer.Row(lie)
		for i := range row {
			row[i] = Tabulated(lie, YardNode(i)) - own[i]
		}
		hold(row[:], YardNode, residualRange[lie])
	}
	// No hole is so short: there what the table adds shrinks with the distance, as it
	// would otherwise outweigh skill.
	tees, first := rest.Row(golf.Tee), residualRange[golf.Tee][0]
	for i := range tees {
		tees[i] *= min(YardNode(i)/first, 1)
	}
	for i := range rest.Feet {
		rest.Feet[i] = Tabulated(golf.Green, FootNode(i)) - golfer.Feet[i]
	}
	hold(rest.Feet[:], FootNode, residualRange[golf.Green])
	return rest
}

// residualRange gives the yards (feet on the green) between which the published table counts for
// the family. Outside, the table contradicts the order of the lies: it has
// recovery at 10 yd at 3.45 and a bunker at 440 yd costlier than recovery.
var residualRange = map[golf.Lie][2]float64{
	golf.Tee:      {100, 600},
	golf.Fairway:  {20, 400},
	golf.Rough:    {20, 300},
	golf.Bunker:   {20, 300},
	golf.Recovery: {100, 300},
	golf.Green:    {0, 100},
}

// ResidualRange returns the yards, or feet on the green, between which the
// published table counts for the family of golfers.
func ResidualRange(lie golf.Lie) (low, high float64) {
	r := residualRange[lie]
	return r[0], r[1]
}

// hold replaces what lies outside a range with the value at its end. Both ends
// must be nodes.
func hold(row []float64, at func(int) float64, r [2]float64) {
	first, last := 0, len(row)-1
	for at(first) < r[0] {
		first++
	}
	for at(last) > r[1] {
		last--
	}
	for i := range row {
		row[i] = row[min(max(i, first), last)]
	}
}

// withResidual lays the residual on a level: whole at and below skill 0,
// fading above off the green, whole everywhere on the green. A residual kept
// at every level would carry the tour's own bump at 220 to 300 yd to golfers
// who do not reach so far.
func withResidual(own, rest *Table, t float64) Table {
	share := ResidualShare(golf.Tee, t)
	sum := *own
	for l := range sum.Yards {
		for i := range sum.Yards[l] {
			sum.Yards[l][i] += share * rest.Yards[l][i]
		}
	}
	for i := range sum.Feet {
		sum.Feet[i] += ResidualShare(golf.Green, t) * rest.Feet[i]
	}
	return sum
}

// ResidualShare returns how much of what the published table adds at skill 0 is
// laid on the golfer at skill coordinate t, 0 to 1.
func ResidualShare(lie golf.Lie, t float64) float64 {
	if lie == golf.Green || t <= 0 {
		return 1
	}
	return math.Exp(-(t / 0.4) * (t / 0.4))
}
