package golfer

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/mat"
)

// valley is a problem whose lowest point, 1 in every number, lies at the end of a
// curved and narrow valley with a nearly flat floor (the function of H. H. Rosenbrock,
// 1960, chained through n numbers), which ripples.
func valley(n int, ripple float64) *problem {
	const contradiction = 3
	misses := func(x []float64) []float64 {
		var all []float64
		for i := range n - 1 {
			wave := ripple * math.Sin(2*math.Pi*(x[i]-1)/.02)
			floor := 10 * (x[i+1] - x[i]*x[i])
			all = append(all, floor+wave+contradiction, floor-contradiction, 1-x[i])
		}
		return all
	}
	q := &problem{notify: func(Progress) {}, misses: func(x *mat.VecDense) []float64 { return misses(x.RawVector().Data) }}
	q.around = func(x *mat.VecDense) func(int, float64) []float64 {
		return func(i int, by float64) []float64 {
			moved := append([]float64(nil), x.RawVector().Data...)
			moved[i] += by
			return misses(moved)
		}
	}
	for range n {
		q.prior = append(q.prior, 1)
	}
	return q
}

func TestSearchEndsAtTheLowestPoint(t *testing.T) {
	for _, ripple := range []float64{0, .0005, .001, .002} {
		q := valley(6, ripple)
		end := q.search(1e-4)
		for i, x := range end.x.RawVector().Data {
			if math.Abs(x-1) > .05 {
				t.Errorf("ripples of %g: number %d ends at %.4f after %d derivatives, objective %.3g", ripple, i, x, q.taken, end.objective)
			}
		}
		t.Logf("ripples of %g: %d derivatives, objective %.3g", ripple, q.taken, end.objective)
	}
}
