package golfer

import (
	"math"
	"testing"

	"strokeledger/analysis/expect"
	"strokeledger/analysis/golf"
)

// The committed level tables are the solution of the committed parameters.
func TestCommittedLevelsAreTheSolution(t *testing.T) {
	committed, err := expect.Committed()
	if err != nil {
		t.Fatal(err)
	}
	solved, err := Committed().SolveLevels(func(int, int) {})
	if err != nil {
		t.Fatal(err)
	}
	if len(solved) != len(committed) {
		t.Fatalf("%d levels, committed %d", len(solved), len(committed))
	}
	for i, s := range solved {
		if s.T != committed[i].T {
			t.Fatalf("level %d is at skill %g, committed %g", i, s.T, committed[i].T)
		}
		worst := 0.0
		for l := range s.Table.Yards {
			for k, e := range s.Table.Yards[l] {
				worst = math.Max(worst, math.Abs(e-committed[i].Table.Yards[l][k]))
			}
		}
		for k, e := range s.Table.Feet {
			worst = math.Max(worst, math.Abs(e-committed[i].Table.Feet[k]))
		}
		for l := range s.Short {
			for d := range s.Short[l] {
				for k, e := range s.Short[l][d] {
					worst = math.Max(worst, math.Abs(e-committed[i].Short[l][d][k]))
				}
			}
		}
		if worst > 1e-9 {
			t.Errorf("skill %g: %.3g off", s.T, worst)
		}
	}
}

// Numerical error against a grid with twice the nodes in every direction:
// .004 anywhere and .02 over a course.
func TestNumericalError(t *testing.T) {
	p := Committed()
	finer := newGrid(2)
	for _, skill := range []float64{0, .6, 1.4} {
		g, reference := p.Solve(skill), p.solveOn(finer, skill, nil)
		if miss := g.course(expect.ReferenceCourse()) - reference.course(expect.ReferenceCourse()); math.Abs(miss) > .02 {
			t.Errorf("skill %g: %.4f off over the course", skill, miss)
		}
		for _, lie := range golf.Lies {
			for x := 1.0; x <= 300; x += .37 {
				d := lie.Unit().Of(x)
				if miss := g.Strokes(lie, d) - reference.Strokes(lie, d); math.Abs(miss) > .004 {
					t.Errorf("skill %g, %s %g: %.4f off", skill, lie, x, miss)
				}
			}
		}
	}
}

// The grid of calibrations against the standard one: far less than the figures
// may be off.
func TestQuickGridIsNearTheStandardOne(t *testing.T) {
	p := Committed()
	for _, skill := range []float64{0, 1} {
		g, rough := p.Solve(skill), p.solveOn(quick, skill, nil)
		if miss := g.course(expect.ReferenceCourse()) - rough.course(expect.ReferenceCourse()); math.Abs(miss) > .04 {
			t.Errorf("skill %g: %.4f off over the course", skill, miss)
		}
		for _, lie := range golf.Lies {
			for x := 3.0; x <= 300; x += 7 {
				d := lie.Unit().Of(x)
				if miss := g.Strokes(lie, d) - rough.Strokes(lie, d); math.Abs(miss) > .01 {
					t.Errorf("skill %g, %s %g: %.4f off", skill, lie, x, miss)
				}
			}
		}
	}
}

// The weights of a stretch add up to 1 wherever it lies, also so far out that the
// density of a normal is 0 in this arithmetic, as past the hole of a golfer who never
// putts too far.
func TestWeightsAddUpFarOut(t *testing.T) {
	for _, from := range []float64{0, 4, 37, 60} {
		sum := 0.0
		for _, w := range truncated(from, from+3, 8).w {
			sum += w
		}
		if math.Abs(sum-1) > 1e-12 {
			t.Errorf("from %g spreads: weights add up to %g", from, sum)
		}
	}
}

// Reading a level between two stored ones is as good as solving it.
func TestBlendedLevelsAreNearSolvedOnes(t *testing.T) {
	p := Committed()
	skills := LevelSkills()
	for _, i := range []int{5, 15, 28, 40} {
		low, high, between := p.Solve(skills[i]), p.Solve(skills[i+1]), p.Solve((skills[i]+skills[i+1])/2)
		for _, lie := range golf.Lies {
			for _, x := range []float64{3, 10, 25, 60, 110, 150, 200, 300, 450} {
				d := lie.Unit().Of(x)
				if miss := (low.Strokes(lie, d)+high.Strokes(lie, d))/2 - between.Strokes(lie, d); math.Abs(miss) > .002 {
					t.Errorf("skill %g, %s %g: %.5f off", between.T, lie, x, miss)
				}
			}
		}
	}
}

// Everything that is played from somewhere is played to somewhere: visits add
// up to the expected strokes, which were computed the other way round.
func TestVisitsAddUpToExpectedStrokes(t *testing.T) {
	p := Committed()
	everywhere := func(From) bool { return true }
	for _, skill := range []float64{0, .5, 1.3} {
		g := p.Solve(skill)
		card := expect.ReferenceCourse()
		if strokes := g.Visits(card).Strokes(everywhere); math.Abs(strokes-g.course(card)) > 1e-6 {
			t.Errorf("skill %g: visits give %.8f, expected %.8f", skill, strokes, g.course(card))
		}
		better := p.Solve(skill - .2)
		if lost := g.Visits(card).Lost(better, everywhere); math.Abs(lost-(g.course(card)-better.course(card))) > 1e-6 {
			t.Errorf("skill %g: loses %.8f, gap %.8f", skill, lost, g.course(card)-better.course(card))
		}
	}
}

func BenchmarkSolve(b *testing.B) {
	p := Committed()
	for b.Loop() {
		p.Solve(.5)
	}
}
