package figures

import (
	"fmt"
	"math"
	"strings"

	"strokeledger/analysis/compare"
	"strokeledger/analysis/golf"
	"strokeledger/analysis/golfer"
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
	Unit        string     // of the lengths, at the end of their axis
	Target      string     // path of a golfer at the target
	TargetText  string     // names the golfer at the target in a sentence
	TargetShort string     // heads that golfer's column
	Dots        []PuttDot  // one for each range of lengths that has putts
	Table       []PuttRow  // the same ranges of lengths
	LostHead    string     // heads the strokes lost, with the golfer compared with
	Lost        string     // strokes lost for 18 holes with all putts; empty when there are none
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
	Lost     string // strokes lost for 18 holes; the rows add up to all putts
	LostOf   Voucher
}

// The lengths at the two ends of the picture, in feet.
const (
	shortestFt = .8
	longestFt  = 60.0
)

// NewPutts makes the picture and table of the putts of all spans together.
func NewPutts(in ComparisonInput) Putts {
	p := Putts{Title: "Share of putts holed, by length", TargetText: words.A(in.Target) + " golfer", TargetShort: words.Capital(words.A(in.Target)),
		Unit: in.Units.Green.String(), LostHead: "Lost to " + Against(in)}
	for _, v := range puttShares.Ticks() {
		p.Up = append(p.Up, AxisText{Place: puttShares.Down(v), Text: words.Percent(v)})
	}
	for i, length := range puttTicks(in.Units.Green) {
		p.Along = append(p.Along, AxisText{Place: chart.Percent(alongPutts(in.Units.Green.Of(length).Feet())), Text: words.Plain(length), Narrow: i%2 == 0})
	}
	p.Target = puttLine(in.Putter)
	all := together(in)
	lost, total := puttsLost(in, all)
	for i, h := range in.Curve {
		p.Dots, p.Table = append(p.Dots, newPuttDot(h, in)), append(p.Table, newPuttRow(h, in))
		p.Table[i].Lost, p.Table[i].LostOf = words.Signed(lost[i], 1), puttVoucher(in, h, all, lost[i])
	}
	if len(p.Table) > 0 {
		p.Lost = words.Signed(total, 1)
	}
	p.Summary = puttSummary(in, p.TargetText)
	return p
}

// puttTicks are the lengths named along the axis, in the reader’s unit.
func puttTicks(unit golf.Unit) []float64 {
	if unit == golf.Metres {
		return []float64{.3, .5, 1, 1.5, 2, 3, 5, 10, 15}
	}
	return []float64{1, 2, 3, 4, 6, 10, 15, 20, 30, 50}
}

// puttsLost are the strokes lost for 18 holes with the putts of each length, in
// tenths that add up to those of all putts.
func puttsLost(in ComparisonInput, all *compare.Column) (each []float64, total float64) {
	holes := all.Detail
	for _, h := range in.Curve {
		lost := 0.0
		for _, putt := range compare.PuttsBehind(in.Sheet.Columns, h) {
			lost += putt.Lost
		}
		each = append(each, lost/holes*18)
		total += lost / holes * 18
	}
	if len(each) == 0 {
		return nil, 0
	}
	total = Tenth(total)
	return Tenths(each, total), total
}

// together is all spans as one: their rounds, each once, and the holes of these.
func together(in ComparisonInput) *compare.Column {
	all, seen := &compare.Column{}, map[golf.RoundID]bool{}
	for _, c := range in.Sheet.Columns {
		for _, r := range c.Rounds {
			if !seen[r.ID] {
				seen[r.ID] = true
				all.Detail += r.Holes
				all.Rounds = append(all.Rounds, r)
			}
		}
	}
	return all
}

// puttVoucher is that of what the putts of a length lost, as it is printed.
func puttVoucher(in ComparisonInput, h compare.Holed, all *compare.Column, printed float64) Voucher {
	lost := LostTogether(compare.PuttsBehind(in.Sheet.Columns, h))
	return Voucher{Name: PuttLength(h, in), Working: perHoles(LostWords(lost), lost, all, printed), At: in.At.BehindPutts(h.String()), What: words.Plural(h.Tried, "putt", "putts")}
}

// puttShares is the scale of the shares holed.
var puttShares = chart.Range{Low: 0, High: 1, Step: .25}

// alongPutts is how far from the left a length in feet stands: the same ratio of
// lengths takes the same room.
func alongPutts(ft float64) float64 {
	return clipped(math.Log(ft/shortestFt) / math.Log(longestFt/shortestFt))
}

// puttLine is the path of the share that a putter holes.
func puttLine(p golfer.Putter) string {
	var places []chart.Place
	for ft := shortestFt; ft <= longestFt*1.001; ft *= 1.08 {
		places = append(places, chart.Place{X: alongPutts(ft), Y: 1 - p.MakeRate(ft)})
	}
	return chart.Line(places)
}

func newPuttDot(h compare.Holed, in ComparisonInput) PuttDot {
	i := h.Interval()
	return PuttDot{X: chart.Percent(alongPutts(h.Length.Feet())), Y: puttShares.Down(h.Share()), High: puttShares.Down(i.High), Low: puttShares.Down(i.Low),
		Text: PuttLength(h, in) + ": " + words.Percent(h.Share())}
}

func newPuttRow(h compare.Holed, in ComparisonInput) PuttRow {
	i := h.Interval()
	return PuttRow{Length: PuttLength(h, in), At: in.At.BehindPutts(h.String()), Holed: fmt.Sprintf("%d of %d", h.Made, h.Tried),
		Share: words.Percent(h.Share()), Interval: words.Percent(i.Low) + " to " + words.Percent(i.High),
		Target: words.Percent(h.By(in.Putter)), Tour: words.Percent(h.By(in.Tour))}
}

// puttSummary says at which lengths clearly fewer putts were holed than by the
// golfer named: where the whole interval lies below that golfer's share.
func puttSummary(in ComparisonInput, golfer string) string {
	var below []string
	for _, h := range in.Curve {
		if h.Interval().High < h.By(in.Putter) {
			below = append(below, PuttLength(h, in))
		}
	}
	switch {
	case len(in.Curve) == 0:
		return "No putts in these spans."
	case len(below) == 0:
		return fmt.Sprintf("At no length are clearly fewer putts holed than by %s.", golfer)
	default:
		return fmt.Sprintf("Clearly fewer putts holed than by %s: %s.", golfer, strings.Join(below, ", "))
	}
}
