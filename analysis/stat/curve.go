package stat

import (
	"errors"
	"slices"

	"gonum.org/v1/gonum/interp"
)

// Curve is a smooth function through given points that rises and falls only
// where they do (Fritsch and Butland 1984): never beyond the values of the two
// points around.
type Curve struct {
	through   interp.FritschButland
	low, high float64
}

// NewCurve returns the curve through the points (x[i], y[i]); x must rise
// strictly and hold two points at least.
func NewCurve(x, y []float64) (Curve, error) {
	c := Curve{}
	if len(x) < 2 || len(x) != len(y) {
		return c, errors.New("a curve needs two points at least, and as many values as places")
	}
	for i := range x[1:] {
		if !(x[i+1] > x[i]) {
			return c, errors.New("the places of a curve must rise strictly")
		}
	}
	c.low, c.high = x[0], x[len(x)-1]
	return c, c.through.Fit(slices.Clone(x), slices.Clone(y))
}

// At reads the curve; outside its points it stays at the nearest.
func (c Curve) At(x float64) float64 {
	return c.through.Predict(min(max(x, c.low), c.high))
}
