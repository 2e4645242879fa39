package figures

import (
	"fmt"
	"math"

	"strokeledger/analysis/compare"
	"strokeledger/analysis/golf"
	"strokeledger/web/chart"
	"strokeledger/web/words"
)

// PuttFeet writes a length of putt in the player's unit.
func PuttFeet(ft float64, q ComparisonInput) string {
	return words.Plain(q.Units.Green.In(golf.Feet.Of(ft)))
}

// PuttLength names the lengths that are told together.
func PuttLength(h compare.Holed, q ComparisonInput) string {
	unit := q.Units.Green
	if h.To == 0 {
		return fmt.Sprintf("over %s %s", words.Plain(unit.In(h.From)), unit)
	}
	return fmt.Sprintf("%s to %s %s", words.Plain(unit.In(h.From)), words.Plain(unit.In(h.To)), unit)
}

// Putts is the share of putts that went in, by length.
type Putts struct {
	Title, Say  string
	Up, Along   []AxisText
	Target      string // path of the target's golfer
	Tour        string
	TargetText  string
	Points      []PuttPoint
	Table       []PuttRow
	TargetShort string // heading of its column
}

// PuttPoint is one length with its interval.
type PuttPoint struct{ X, Y, High, Low, Text string }

// PuttRow is the table beside the picture.
type PuttRow struct{ Length, At, Holed, Share, Interval, Target, Tour string }

// The lengths that the picture holds, in feet.
const (
	shortestFt = 1.5
	longestFt  = 60.0
)

// NewPutts makes the picture and table of putts holed in all spans together.
func NewPutts(q ComparisonInput) Putts {
	p := Putts{Title: "Share of putts holed, by length", TargetText: "the " + words.Plain(q.Target), TargetShort: "A " + words.Plain(q.Target)}
	across := func(ft float64) float64 {
		return clipped(math.Log(ft/shortestFt) / math.Log(longestFt/shortestFt))
	}
	up := chart.Range{Low: 0, High: 1, Step: .25}
	for _, v := range up.Ticks() {
		p.Up = append(p.Up, AxisText{Place: up.Down(v), Text: words.Percent(v)})
	}
	for i, ft := range []float64{2, 3, 4, 6, 10, 15, 20, 30, 50} {
		length := PuttFeet(ft, q)
		p.Along = append(p.Along, AxisText{Place: chart.Percent(across(ft)), Text: length, Narrow: i%2 == 0})
	}
	var target, tour []chart.Place
	for ft := shortestFt; ft <= longestFt*1.001; ft *= 1.08 {
		target = append(target, chart.Place{X: across(ft), Y: 1 - q.Putter.MakeRate(ft)})
		tour = append(tour, chart.Place{X: across(ft), Y: 1 - q.Tour.MakeRate(ft)})
	}
	p.Target, p.Tour = chart.Line(target), chart.Line(tour)
	below := ""
	for _, h := range q.Curve {
		i, length := h.Interval(), PuttLength(h, q)
		p.Points = append(p.Points, PuttPoint{chart.Percent(across(h.Length.Feet())), up.Down(h.Share()), up.Down(i.High), up.Down(i.Low), length + ": " + words.Percent(h.Share())})
		p.Table = append(p.Table, PuttRow{length, q.At.BehindPutts(h.String()), fmt.Sprintf("%d of %d", h.Made, h.Tried), words.Percent(h.Share()), words.Percent(i.Low) + " to " + words.Percent(i.High), words.Percent(h.By(q.Putter)), words.Percent(h.By(q.Tour))})
		if i.High < h.By(q.Putter) {
			below += ", " + length
		}
	}
	p.Say = fmt.Sprintf("Within reach of the %s golfer at every length.", words.Plain(q.Target))
	if below != "" {
		p.Say = fmt.Sprintf("Fewer than the %s golfer holes, beyond chance: %s.", words.Plain(q.Target), below[2:])
	}
	if len(p.Table) == 0 {
		p.Say = "No putt in these spans."
	}
	return p
}
