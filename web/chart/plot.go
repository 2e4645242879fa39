package chart

import (
	"math"
	"strconv"
	"strings"
)

// Range is a scale that need not hold zero: up is more.
type Range struct {
	Low, High float64 // the values at its two ends
	Step      float64 // between ticks: 1, 2 or 5 times a power of ten
}

// NewRange makes the scale of values, with about that many ticks at most. What is
// not a finite number does not count.
func NewRange(ticks int, values ...float64) Range {
	r := Range{math.Inf(1), math.Inf(-1), 1}
	for _, v := range values {
		if !math.IsNaN(v) && !math.IsInf(v, 0) {
			r.Low, r.High = min(r.Low, v), max(r.High, v)
		}
	}
	if r.Low > r.High {
		r.Low, r.High = 0, 1
	}
	if r.High-r.Low < 1 {
		middle := (r.High + r.Low) / 2
		r.Low, r.High = middle-.5, middle+.5
	}
	r.Step = step((r.High - r.Low) / float64(ticks))
	r.Low -= margin * r.Step
	r.High += margin * r.Step
	return r
}

// Share returns how far up a value stands, 0 to 1.
func (r Range) Share(v float64) float64 { return (v - r.Low) / (r.High - r.Low) }

// Down returns how far from the top a value stands, as an attribute.
func (r Range) Down(v float64) string { return Percent(1 - r.Share(v)) }

// Across returns how far from the left a value stands, as an attribute.
func (r Range) Across(v float64) string { return Percent(r.Share(v)) }

// Ticks lists the values at which the scale is marked.
func (r Range) Ticks() []float64 { return Scale(r).Ticks() }

// Place is a point of a picture: shares from the left and from the top.
type Place struct {
	X float64 // 0 at the left, 1 at the right
	Y float64 // 0 at the top, 1 at the bottom
}

// Line is the path through places, in a view box of 100 by 100.
func Line(places []Place) string {
	var b strings.Builder
	for i, p := range places {
		b.WriteByte("ML"[min(i, 1)])
		b.WriteString(hundredths(p.X))
		b.WriteByte(' ')
		b.WriteString(hundredths(p.Y))
	}
	return b.String()
}

// Area is the closed path along the upper places and back along the lower.
func Area(upper, lower []Place) string {
	if len(upper) == 0 {
		return ""
	}
	all := append([]Place(nil), upper...)
	for i := len(lower) - 1; i >= 0; i-- {
		all = append(all, lower[i])
	}
	return Line(all) + "Z"
}

func hundredths(share float64) string {
	if math.IsNaN(share) || math.IsInf(share, 0) {
		share = 0
	}
	return strconv.FormatFloat(math.Round(share*1e4)/1e2, 'f', -1, 64)
}

// Fewer returns the scale with at most that many ticks, zero among them.
func (s Scale) Fewer(most int) Scale {
	for len(s.Ticks()) > most {
		s.Step = step(s.Step * 1.5)
	}
	return s
}

// Whisker is an interval beside its bar: the whole of it, and the part that
// lies inside a solid bar.
type Whisker struct {
	Known      bool   // there is an interval to draw
	X1, X2     string // where it begins and ends, percent from the left
	Low, High  bool   // that end lies on the scale, and has its mark
	Inside     bool   // part of it lies in the bar, and is drawn again in a light line
	InX1, InX2 string // where that part begins and ends; empty unless Inside
	InLow      bool   // that part begins with the mark of the low end
}

// Whisker returns the whisker of a bar with its interval, cut at the ends of
// the scale.
func (s Scale) Whisker(v, low, high float64) Whisker {
	if math.IsNaN(low) || math.IsNaN(high) {
		return Whisker{}
	}
	w := Whisker{Known: true, Low: low >= s.Low, High: high <= s.High}
	low, high = max(low, s.Low), min(high, s.High)
	w.X1, w.X2 = s.Percent(low), s.Percent(high)
	if in := min(v, high); v > 0 && in > max(low, 0) {
		w.Inside = true
		w.InX1, w.InX2, w.InLow = s.Percent(max(low, 0)), s.Percent(in), w.Low && low > 0
	}
	return w
}
