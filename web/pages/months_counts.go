package pages

import (
	"fmt"
	"math"
	"strings"

	"strokeledger/analysis/compare"
	"strokeledger/analysis/golf"
)

// countTables are the tables of plain numbers: their heading and their measures
// with the words of their rows.
var countTables = []struct {
	caption string
	rows    [][2]string
	folded  int // rows after the first that open with it
}{
	{"Doubles for 18 holes: of which kind, and where they began", [][2]string{
		{"doubles", "Doubles"}, {"compound", "Compound"}, {"single", "Single error"}, {"separate", "Separate errors"}, {"leak", "Leak, no error"},
		{"root tee", "Began off the tee"}, {"root approach", "Began on the approach"}, {"root short game", "Began in the short game"}, {"root putting", "Began on the green"},
		{"compounding", "Compounding, strokes"}}, 8},
	{"Counts for 18 holes, and shares of chances", [][2]string{
		{"fairways", "Fairways hit"}, {"greens", "Greens hit"}, {"up and down", "Up and down"}, {"putts", "Putts"},
		{"three-putts", "Three-putts"}, {"penalties", "Penalty strokes"}}, 0},
}

// ShortPutts is the measure of putts of 6 ft and less in an address; a golfer
// stands beside it.
const ShortPutts = "six feet"

func (m *Months) counts(q AskedMonths) []MonthTable {
	var all []MonthTable
	for _, table := range countTables {
		t := MonthTable{Caption: table.caption, Kind: "Count", Heads: m.heads(q), Since: m.Since}
		for i, row := range table.rows {
			if made := countRow(q, row[0], row[1]); i > 0 && i <= table.folded {
				t.Rows[0].Bands = append(t.Rows[0].Bands, made)
			} else {
				t.Rows = append(t.Rows, made)
			}
		}
		all = append(all, t)
	}
	last := &all[len(all)-1]
	last.Rows = append(last.Rows, shortPuttRow(q))
	return all
}

func countRow(q AskedMonths, measure, name string) MonthRow {
	k := compare.MeasureAt(measure)
	share := compare.Measures[k].Share
	write, change := plainCount, oneDecimal
	if share {
		write, change = percent, points
	}
	if measure == "compounding" {
		write = oneDecimal
	}
	r := MonthRow{Name: name}
	for i, c := range q.Sheet.Columns {
		cell := c.Measures[k]
		made := MonthCell{Head: capital(spanName(q, i)), Figure: "no round", None: true}
		if cell.Known {
			made.Figure, made.At, made.None = write(cell.Mean), q.At.BehindMeasure(i+1, measure), false
			made.Change = changeWords(cell.Change, change)
			if share {
				made.Behind = plural(cell.Shots, "chance", "chances")
			}
			if cell.Mean == 0 {
				made.At = ""
			}
		} else if len(c.Rounds) > 0 {
			made.Figure = "no chance"
		}
		if cell.HasInterval && cell.Interval.Low < cell.Interval.High {
			low, high := cell.Interval.Low, cell.Interval.High
			if measure != "compounding" {
				low = max(low, 0)
			}
			if share {
				high = min(high, 1)
			}
			made.Interval = write(low) + " to " + write(high)
		}
		r.Cells = append(r.Cells, made)
		r.Since = changeWords(cell.Since, change)
	}
	return r
}

// shortPuttRow is the share of putts of 6 ft and less that went in, beside what
// the golfer of the target holes of the very same putts.
func shortPuttRow(q AskedMonths) MonthRow {
	r := MonthRow{Name: "Holed from six feet and in"}
	for i, c := range q.Sheet.Columns {
		made := MonthCell{Head: capital(spanName(q, i)), Figure: "no putt", None: true}
		if s := c.Short; s.Tried > 0 {
			interval := s.Interval()
			made.None = false
			made.Figure, made.Interval = percent(s.Share()), percent(interval.Low)+" to "+percent(interval.High)
			made.Behind = fmt.Sprintf("%d of %d; a %s golfer %s", s.Made, s.Tried, plain(q.Target), percent(s.By(q.Putter)))
			made.At = q.At.BehindMeasure(i+1, ShortPutts)
		}
		r.Cells = append(r.Cells, made)
	}
	return r
}

func plainCount(x float64) string { return fmt.Sprintf("%.1f", x) }

func percent(x float64) string { return fmt.Sprintf("%.0f%%", math.Round(100*x)) }

// points writes a change of a share.
func points(x float64) string {
	text := signed(100*x, 0)
	if strings.TrimLeft(text, "+"+minus) == "1" {
		return text + " point"
	}
	return text + " points"
}

// golfFeet writes a length of putt in the player's unit.
func golfFeet(ft float64, q AskedMonths) string { return plain(q.Units.Green.In(golf.Feet.Of(ft))) }

// puttLength names the lengths that are told together.
func puttLength(h compare.Holed, q AskedMonths) string {
	unit := q.Units.Green
	if h.To == 0 {
		return fmt.Sprintf("over %s %s", plain(unit.In(h.From)), unit)
	}
	return fmt.Sprintf("%s to %s %s", plain(unit.In(h.From)), plain(unit.In(h.To)), unit)
}

// roundChoices lists the rounds of the spans, and those left out, the latest
// first.
func roundChoices(q AskedMonths) []RoundChoice {
	var all []RoundChoice
	for _, r := range q.Rounds {
		all = append(all, RoundChoice{ID: fmt.Sprint(r.ID), Out: r.Out,
			Name: fmt.Sprintf("%s, %s", shortDay(r.Day), joined(r.Course, r.Score))})
	}
	return all
}

// RoundOf is a round that the spans hold, or that was left out of them.
type RoundOf struct {
	ID     golf.RoundID
	Day    golf.Date
	Course string
	Score  string
	Out    bool
}
