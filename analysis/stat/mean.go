package stat

import (
	"math"
	"slices"
	"sync"

	"gonum.org/v1/gonum/stat"
	"gonum.org/v1/gonum/stat/distuv"
)

// Interval is where a figure lies with the confidence that was asked for.
type Interval struct{ Low, High float64 }

// Sample sums up some values: how many, their mean and their standard
// deviation (with n - 1).
type Sample struct {
	N        int
	Mean, SD float64
}

// Of sums up values. The deviation of fewer than two is 0.
func Of(values []float64) Sample {
	switch len(values) {
	case 0:
		return Sample{}
	case 1:
		return Sample{N: 1, Mean: values[0]}
	}
	mean, sd := stat.MeanStdDev(values, nil)
	return Sample{len(values), mean, sd}
}

// Interval returns the t interval of the mean. ok is false for fewer than two
// values.
func (s Sample) Interval(confidence float64) (i Interval, ok bool) {
	if s.N < 2 {
		return Interval{}, false
	}
	return s.Around(TQuantile(.5+confidence/2, float64(s.N-1))), true
}

// Around is the interval of the mean that reaches so many standard errors to
// each side. N must be 2 or more.
func (s Sample) Around(errors float64) Interval {
	reach := errors * s.SD / math.Sqrt(float64(s.N))
	return Interval{s.Mean - reach, s.Mean + reach}
}

// TQuantile returns the value that Student's t with df degrees of freedom
// stays below with chance p.
func TQuantile(p, df float64) float64 {
	if df > keptFreedom || df != math.Trunc(df) {
		return tQuantile(p, df)
	}
	key := [2]float64{p, df}
	if known, ok := quantiles.Load(key); ok {
		return known.(float64)
	}
	q := tQuantile(p, df)
	quantiles.Store(key, q)
	return q
}

func tQuantile(p, df float64) float64 { return distuv.StudentsT{Sigma: 1, Nu: df}.Quantile(p) }

// keptFreedom is up to how many degrees of freedom quantiles are kept: finding one is
// slow, and the spans of rounds that pages ask about are few.
const keptFreedom = 100

var quantiles sync.Map // float64 by p and whole df

// Difference is how one mean differs from another.
type Difference struct {
	Mean  float64 // of the second sample less that of the first
	Error float64 // standard error
	T, DF float64
	P     float64 // two-sided chance of so large a difference where there is none
}

// Welch compares two means whose spreads may differ (Welch's test). ok is false
// when a sample has fewer than two values or neither spreads at all.
func Welch(a, b Sample) (d Difference, ok bool) {
	if a.N < 2 || b.N < 2 || a.SD == 0 && b.SD == 0 {
		return Difference{Mean: b.Mean - a.Mean}, false
	}
	va, vb := a.SD*a.SD/float64(a.N), b.SD*b.SD/float64(b.N)
	d = Difference{Mean: b.Mean - a.Mean, Error: math.Sqrt(va + vb)}
	d.T = d.Mean / d.Error
	d.DF = (va + vb) * (va + vb) / (va*va/float64(a.N-1) + vb*vb/float64(b.N-1))
	d.P = 2 * distuv.StudentsT{Sigma: 1, Nu: d.DF}.CDF(-math.Abs(d.T))
	return d, true
}

// Interval returns where the difference lies.
func (d Difference) Interval(confidence float64) Interval {
	reach := TQuantile(.5+confidence/2, d.DF) * d.Error
	return Interval{d.Mean - reach, d.Mean + reach}
}

// Median returns the middle one of values, and the mean of the two middle ones
// where their number is even. There must be one or more.
func Median(values []float64) float64 {
	sorted := slices.Sorted(slices.Values(values))
	half := len(sorted) / 2
	if len(sorted)%2 == 1 {
		return sorted[half]
	}
	return (sorted[half-1] + sorted[half]) / 2
}
