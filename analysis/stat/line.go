package stat

import (
	"math"

	"gonum.org/v1/gonum/stat"
)

// Line is a straight line y = Start + Slope·x fitted by least squares.
type Line struct {
	Start, Slope           float64
	StartError, SlopeError float64 // standard errors
	SD                     float64 // residual standard deviation, with n - 2
	DF                     int     // n - 2
	MeanX, SquaresX        float64 // of the x: mean, and sum of squares about it
	RSquared               float64
}

// FitLine fits a line to three points or more, whose x are not all the same.
func FitLine(x, y []float64) Line {
	l := Line{DF: len(x) - 2}
	l.Start, l.Slope = stat.LinearRegression(x, y, nil, false)
	l.RSquared = stat.RSquared(x, y, nil, l.Start, l.Slope)
	var residuals, raw float64
	l.MeanX = stat.Mean(x, nil)
	for i := range x {
		r, d := y[i]-l.Start-l.Slope*x[i], x[i]-l.MeanX
		residuals, l.SquaresX, raw = residuals+r*r, l.SquaresX+d*d, raw+x[i]*x[i]
	}
	l.SD = math.Sqrt(residuals / float64(l.DF))
	l.SlopeError = l.SD / math.Sqrt(l.SquaresX)
	l.StartError = l.SlopeError * math.Sqrt(raw/float64(len(x)))
	return l
}
