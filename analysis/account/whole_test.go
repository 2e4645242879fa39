package account

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"strokeledger/analysis/expect"
	"strokeledger/analysis/golf"
	"strokeledger/analysis/golf/golftest"
)

// In whole strokes a round is what its holes add up to, what was lost is still the
// score less the target, and nothing but picked-up holes changes.
func TestWholeStrokesAddUp(t *testing.T) {
	fixed, err := expect.Level(84)
	if err != nil {
		t.Fatal(err)
	}
	rapid.Check(t, func(t *rapid.T) {
		r := golftest.Rounds().Draw(t, "round")
		exact := Of(r, Terms{Lens: fixed, Fixed: fixed, Boundary: 50 * golf.Yard})
		whole := exact.InWholeStrokes()
		sum := 0.0
		for i, h := range whole.Holes {
			sum += h.Score
			if h.Score != float64(h.Whole) || math.Abs(h.Score-exact.Holes[i].Score) > .5+1e-9 || !h.PickedUp && h.Lost != exact.Holes[i].Lost {
				t.Fatalf("hole %d: %+v from %+v", h.Number, h, exact.Holes[i])
			}
		}
		for _, d := range whole.Doubles {
			for _, h := range whole.Holes {
				if h.Number == d.Hole && h.Whole != d.Score {
					t.Fatalf("a double of %d on a hole of %d", d.Score, h.Whole)
				}
			}
		}
		l := whole.Lost
		parts := l.Tee + l.Approach + l.ShortGame + l.Putting + l.Undetailed + l.Course + l.PickedUp
		if math.Abs(whole.Score-sum) > 1e-9 || math.Abs(whole.Score-float64(exact.Whole())) > 1e-9 || math.Abs(l.Total-parts) > 1e-9 || math.Abs(l.Total-(whole.Score-whole.Expected)) > 1e-9 {
			t.Fatalf("%+v: score %g, holes %g", l, whole.Score, sum)
		}
	})
}
