package forecast

import "testing"

// A target that is far out of reach has no chance, not one of two, and one that is
// always reached is certain; no shift of some strokes changes either.
func TestCurveOfATargetOutOfReach(t *testing.T) {
	for _, mean := range []int{106, 108, 110, 125} {
		scores := map[int]int{mean - 2: 20, mean - 1: 30, mean: 50, mean + 1: 30, mean + 2: 20}
		low, high := newCurve(scores, 80, alike), newCurve(scores, 2*float64(mean)-80, alike)
		for _, shift := range []float64{-3, 0, 4} {
			if low.at(shift) != 0 || high.at(shift) != 1 {
				t.Errorf("mean %d, shift %g: %g and %g, want 0 and 1", mean, shift, low.at(shift), high.at(shift))
			}
		}
	}
}
