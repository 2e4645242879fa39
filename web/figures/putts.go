package figures

import (
	"fmt"
	"math"

	"strokeledger/analysis/compare"
	"strokeledger/analysis/golf"
	"strokeledger/analysis/stat"
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
	Along       []AxisText // lengths in the player's unit
	Unit        string     // of the lengths, at the end of their axis
	Target      string     // path of a golfer at the target
	TargetText  string     // names the golfer at the target in a sentence
	TargetShort string     // heads that golfer's column
	Dots        []PuttDot
	LostHead    string // heads the strokes lost, with the golfer compared with
	Table       []PuttRow
	Lost        string // strokes lost for 18 holes with all putts; empty when there are none
}

// PuttDot is the share holed from one range of lengths, with its 95% interval.
type PuttDot struct {
	X, Y      string // place of the dot
	High, Low string // ends of the interval, from the top
	Text      string // length and share, for the pointer
}

// PuttRow is one range of lengths in the table.
type PuttRow struct {
	Length   string
	At       string // address of its putts
	Holed    string // 4 of 9
	Share    string // percent
	Interval string // 95%
	Target   string // percent that a golfer at the target holes of these putts
	Tour     string // percent that a tour player holes of these putts
	Lost     string // strokes lost for 18 holes; the rows add up to all putts
}

// The lengths at the two ends of the picture, in feet.
const (
	shortestFt = .8
	longestFt  = 60.0
)

// puttTicks are the lengths named along the axis, in the player's unit.
func puttTicks(unit golf.Unit) []float64 {
	if unit == golf.Metres {
		return []float64{.3, .5, 1, 1.5, 2, 3, 5, 10, 15}
	}
	return []float64{1, 2, 3, 4, 6, 10, 15, 20, 30, 50}
}

// NewPutts makes the picture and table of the putts of all spans together.
func NewPutts(in ComparisonInput) Putts {
	p := Putts{Title: "Share of putts holed, by length", TargetText: words.A(in.Target) + " golfer", TargetShort: words.Capital(words.A(in.Target)),
		Unit: in.Units.Green.String(), LostHead: "Lost to " + Against(in) + ", 18 holes"}
	up := chart.Range{Low: 0, High: 1, Step: .25}
	p.axes(in, up)
	lost, total := puttsLost(in)
	below := ""
	for i, h := range in.Curve {
		interval, length := h.Interval(), PuttLength(h, in)
		p.Dots = append(p.Dots, PuttDot{chart.Percent(puttAcross(h.Length.Feet())), up.Down(h.Share()), up.Down(interval.High), up.Down(interval.Low), length + ": " + words.Percent(h.Share())})
		p.Table = append(p.Table, PuttRow{length, in.At.BehindPutts(h.String()), fmt.Sprintf("%d of %d", h.Made, h.Tried), words.Percent(h.Share()), words.Percent(interval.Low) + " to " + words.Percent(interval.High),
			words.Percent(h.By(in.Putter)), words.Percent(h.By(in.Tour)), words.Signed(lost[i], 1)})
		if interval.High < h.By(in.Putter) {
			below += ", " + length
		}
	}
	switch {
	case len(p.Table) == 0:
		p.Summary = "No putts in these spans."
		return p
	case below != "":
		p.Summary = fmt.Sprintf("Clearly fewer putts holed than by %s: %s.", p.TargetText, below[2:])
	default:
		p.Summary = fmt.Sprintf("At no length are clearly fewer putts holed than by %s.", p.TargetText)
	}
	p.Lost = words.Signed(total, 1)
	return p
}

// puttAcross places a length along the axis, which is logarithmic.
func puttAcross(ft float64) float64 {
	return clipped(math.Log(ft/shortestFt) / math.Log(longestFt/shortestFt))
}

// axes fills in both axes and the curve of the golfer at the target.
func (p *Putts) axes(in ComparisonInput, up chart.Range) {
	for _, v := range up.Ticks() {
		p.Up = append(p.Up, AxisText{Place: up.Down(v), Text: words.Percent(v)})
	}
	for i, length := range puttTicks(in.Units.Green) {
		p.Along = append(p.Along, AxisText{Place: chart.Percent(puttAcross(in.Units.Green.Of(length).Feet())), Text: words.Plain(length), Narrow: i%2 == 0})
	}
	var target []chart.Place
	for ft := shortestFt; ft <= longestFt*1.001; ft *= 1.08 {
		target = append(target, chart.Place{X: puttAcross(ft), Y: 1 - in.Putter.MakeRate(ft)})
	}
	p.Target = chart.Line(target)
}

// puttsLost are the strokes lost for 18 holes with the putts of each length, in
// tenths, and their sum.
func puttsLost(in ComparisonInput) (each []float64, total float64) {
	holes, seen := 0.0, map[golf.RoundID]bool{}
	for _, c := range in.Sheet.Columns {
		for _, r := range c.Rounds {
			if !seen[r.ID] {
				seen[r.ID] = true
				holes += r.Holes
			}
		}
	}
	for _, h := range in.Curve {
		lost := 0.0
		for _, putt := range compare.PuttsBehind(in.Sheet.Columns, h) {
			lost += putt.Lost
		}
		each = append(each, lost/holes*18)
		total += lost / holes * 18
	}
	total = math.Round(total*10) / 10
	if len(each) == 0 {
		return nil, 0
	}
	return stat.RoundedTo(each, .1, total), total
}
