package golfer

import (
	"math"
	"testing"

	"strokeledger/analysis/expect"
	"strokeledger/analysis/golf"
)

// Putts solved alone are those of the whole golfer, and rise with the spread of the
// start line.
func TestPuttingAlone(t *testing.T) {
	of := Committed()
	for _, level := range []float64{72, 79, 90} {
		skill, err := expect.SkillOf(level)
		if err != nil {
			t.Fatal(err)
		}
		whole, putter := of.Solve(skill), of.Putter(skill)
		alone, wider, narrower := putter.Solve(), putter.WithSpread(1.2).Solve(), putter.WithSpread(.8).Solve()
		for _, ft := range []float64{1, 3, 6, 10, 20, 40, 80} {
			if got, want := alone.Strokes(ft), whole.Strokes(golf.Green, golf.Distance(ft)*golf.Foot); math.Abs(got-want) > 1e-9 {
				t.Errorf("a %g from %g ft: %g, want %g", level, ft, got, want)
			}
			if wider.Strokes(ft) < alone.Strokes(ft) || narrower.Strokes(ft) > alone.Strokes(ft) {
				t.Errorf("a %g from %g ft: %g, %g, %g", level, ft, narrower.Strokes(ft), alone.Strokes(ft), wider.Strokes(ft))
			}
		}
		if got, want := putter.WithSpread(1.2).StartLineSpread(6), 1.2*putter.StartLineSpread(6); math.Abs(got-want) > 1e-12 {
			t.Errorf("%g, want %g", got, want)
		}
	}
}

func BenchmarkPutting(b *testing.B) {
	of := Committed()
	for b.Loop() {
		of.Putter(.5).Solve()
	}
}
