package figures

import (
	"fmt"
	"math"

	"strokeledger/analysis/compare"
	"strokeledger/analysis/golf"
	"strokeledger/web/chart"
	"strokeledger/web/words"
)

// PuttLength names the lengths of putts that are counted together.
func PuttLength(h compare.Holed, in ComparisonInput) string {
	unit := in.Units.Green
	if h.To == 0 {
		return fmt.Sprintf("over %s %s", words.Plain(unit.In(h.From)), unit)
	}
	return fmt.Sprintf("%s to %s %s", words.Plain(unit.In(h.From)), words.Plain(unit.In(h.To)), unit)
}

// Putts is the share of putts holed, by length, as a picture and a table.
type Putts struct {
	Title       string     // of the picture and the table
	Summary     string     // which lengths are clearly behind the target, in a sentence
	Up          []AxisText // shares
	Along       []AxisText // lengths in the reader’s unit
	Target      string     // path of a golfer at the target
	Tour        string     // path of a tour player
	TargetText  string     // names the golfer at the target in a sentence
	TargetShort string     // heads that golfer's column
	Dots        []PuttDot  // one for each range of lengths that has putts
	Table       []PuttRow  // the same ranges of lengths
}

// PuttDot is the share holed from one range of lengths, with its 95% interval.
type PuttDot struct {
	X, Y      string // place of the dot
	High, Low string // ends of the interval, from the top
	Text      string // length and share, for the pointer
}

// PuttRow is one range of lengths in the table.
type PuttRow struct {
	Length   string // the range, in the reader’s unit
	At       string // address of its putts
	Holed    string // 4 of 9
	Share    string // percent
	Interval string // 95%
	Target   string // percent that a golfer at the target holes of these putts
	Tour     string // percent that a tour player holes of these putts
}

// The lengths at the two ends of the picture, in feet.
const (
	shortestFt = 1.5
	longestFt  = 60.0
)

// NewPutts makes the picture and table of the putts of all spans together.
func NewPutts(in ComparisonInput) Putts {
	p := Putts{Title: "Share of putts holed, by length", TargetText: words.A(in.Target) + " golfer", TargetShort: words.Capital(words.A(in.Target))}
	across := func(ft float64) float64 {
		return clipped(math.Log(ft/shortestFt) / math.Log(longestFt/shortestFt))
	}
	up := chart.Range{Low: 0, High: 1, Step: .25}
	for _, v := range up.Ticks() {
		p.Up = append(p.Up, AxisText{Place: up.Down(v), Text: words.Percent(v)})
	}
	for i, ft := range []float64{2, 3, 4, 6, 10, 15, 20, 30, 50} {
		p.Along = append(p.Along, AxisText{Place: chart.Percent(across(ft)), Text: words.Plain(in.Units.Green.In(golf.Feet.Of(ft))), Narrow: i%2 == 0})
	}
	var target, tour []chart.Place
	for ft := shortestFt; ft <= longestFt*1.001; ft *= 1.08 {
		target = append(target, chart.Place{X: across(ft), Y: 1 - in.Putter.MakeRate(ft)})
		tour = append(tour, chart.Place{X: across(ft), Y: 1 - in.Tour.MakeRate(ft)})
	}
	p.Target, p.Tour = chart.Line(target), chart.Line(tour)
	below := ""
	for _, h := range in.Curve {
		i, length := h.Interval(), PuttLength(h, in)
		p.Dots = append(p.Dots, PuttDot{chart.Percent(across(h.Length.Feet())), up.Down(h.Share()), up.Down(i.High), up.Down(i.Low), length + ": " + words.Percent(h.Share())})
		p.Table = append(p.Table, PuttRow{length, in.At.BehindPutts(h.String()), fmt.Sprintf("%d of %d", h.Made, h.Tried), words.Percent(h.Share()), words.Percent(i.Low) + " to " + words.Percent(i.High), words.Percent(h.By(in.Putter)), words.Percent(h.By(in.Tour))})
		if i.High < h.By(in.Putter) {
			below += ", " + length
		}
	}
	p.Summary = fmt.Sprintf("At no length are clearly fewer putts holed than by %s.", p.TargetText)
	if below != "" {
		p.Summary = fmt.Sprintf("Clearly fewer putts holed than by %s: %s.", p.TargetText, below[2:])
	}
	if len(p.Table) == 0 {
		p.Summary = "No putts in these spans."
	}
	return p
}
