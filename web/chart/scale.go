// Package chart turns numbers into marks: places in percent, so that text and
// strokes keep their size, with no colour but by class. It knows no golf.
package chart

import (
	"math"
	"strconv"
)

// Scale lays an interval that holds zero over a width of 100 %.
type Scale struct {
	Low, High float64 // the values at the left and at the right
	Step      float64 // between ticks: 1, 2 or 5 times a power of ten
}

// mostTicks is the largest number of ticks on an axis, zero among them.
const mostTicks = 8

// margin is how much of a step is left free beyond the outermost value.
const margin = .25

// NewScale makes the scale that holds zero and every value.
func NewScale(values ...float64) Scale {
	s := Scale{Low: 0, High: 0}
	for _, v := range values {
		if !math.IsNaN(v) && !math.IsInf(v, 0) {
			s.Low, s.High = min(s.Low, v), max(s.High, v)
		}
	}
	if s.High-s.Low < .5 {
		s.Low, s.High = s.Low-.25, s.High+.25
	}
	s.Step = step((s.High - s.Low) / mostTicks)
	s.Low -= margin * s.Step
	s.High += margin * s.Step
	return s
}

// Fixed makes a scale that is the same on every page, whatever its values: from
// low to high, with half a step free beyond them. A bar that leaves it is cut.
func Fixed(low, high, every float64) Scale {
	return Scale{Low: low - every/2, High: high + every/2, Step: every}
}

// step is the smallest of 1, 2, 5 times a power of ten that is at least x.
func step(x float64) float64 {
	power := math.Pow(10, math.Floor(math.Log10(x)))
	for _, m := range []float64{1, 2, 5} {
		if m*power >= x*(1-1e-9) {
			return m * power
		}
	}
	return 10 * power
}

// Percent returns where a value stands, as an attribute.
func (s Scale) Percent(v float64) string { return Percent((v - s.Low) / (s.High - s.Low)) }

// Percent writes a share as a percentage with at most two decimals.
func Percent(share float64) string {
	if math.IsNaN(share) || math.IsInf(share, 0) {
		share = 0
	}
	return strconv.FormatFloat(math.Round(share*1e4)/1e2, 'f', -1, 64) + "%"
}

// Ticks lists the values at which the scale is marked.
func (s Scale) Ticks() []float64 {
	var all []float64
	for i := math.Ceil(s.Low / s.Step); i*s.Step <= s.High; i++ {
		all = append(all, i*s.Step+0) // + 0 takes the sign off a negative zero
	}
	return all
}

// Bar is a bar from zero: where it begins, how wide it is, and whether it
// stands for something won back.
type Bar struct {
	X, Width string
	Won      bool
	Empty    bool
	Cut      string // where it leaves the scale, percent; empty for a bar that ends on it
}

// Bar returns the bar of a value, cut where it leaves the scale.
func (s Scale) Bar(v float64) Bar {
	drawn := min(max(v, s.Low), s.High)
	width := math.Abs(drawn) / (s.High - s.Low)
	b := Bar{X: s.Percent(min(drawn, 0)), Width: Percent(width), Won: v < 0}
	b.Empty = b.Width == "0%"
	if v < s.Low || v > s.High {
		b.Cut = s.Percent(drawn)
	}
	return b
}
