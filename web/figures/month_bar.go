package figures

import (
	"strokeledger/analysis/compare"
	"strokeledger/web/chart"
	"strokeledger/web/components"
	"strokeledger/web/words"
)

// MonthBar is strokes lost on the fixed axis of the months, with their interval.
// Its places are percentages from the left.
type MonthBar struct {
	Bar     chart.Bar // up to the end of the axis
	CutAt   string    // where a longer bar is cut; empty when it ends on the axis
	Whisker chart.Whisker
	Less    bool // the interval goes on beyond the left end
	More    bool // and beyond the right end
}

// The axis of the months is the same on every page, so that a stroke is as wide
// on each: from 3 strokes won back to 8 lost, with room for arrows.
var (
	monthScale = chart.Scale{Low: -3.5, High: 8.5, Step: 2}
	monthEnds  = chart.Scale{Low: -3, High: 8, Step: 2}
)

// MonthAxis is the axis of the months, with its figures at −2, 0, +2, +4 and +6.
func MonthAxis() components.Axis {
	a := components.NewAxis(monthScale, words.Tick)
	a.Ticks = a.Ticks[:len(a.Ticks)-1] // +8 would stand on the arrows
	a.Grid = a.Grid[:len(a.Grid)-1]
	return a
}

// NewMonthBar draws a known loss as it is printed, with the interval of its cell.
func NewMonthBar(printed float64, c compare.Cell) MonthBar {
	drawn := max(monthEnds.Low, min(monthEnds.High, printed))
	m := MonthBar{Bar: monthScale.Bar(drawn)}
	if drawn != printed {
		m.CutAt = monthScale.Percent(drawn * .92)
	}
	if c.HasInterval() {
		low, high := c.Interval.Low, c.Interval.High
		m.Less, m.More = low < monthEnds.Low, high > monthEnds.High
		within := func(v float64) float64 { return max(monthEnds.Low, min(monthEnds.High, v)) }
		m.Whisker = monthScale.Whisker(drawn, within(low), within(high))
	}
	return m
}

// EmptyMonthBar shows nothing but the axis.
var EmptyMonthBar = MonthBar{Bar: EmptyBar}

// barClass is how a bar is drawn: solid when lost, hollow when won back.
func barClass(b chart.Bar) string {
	if b.Won {
		return "won-mark"
	}
	return "lost-mark"
}
