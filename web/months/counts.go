package months

import (
	"fmt"

	"strokeledger/analysis"
	"strokeledger/analysis/compare"
	"strokeledger/web/figures"
	"strokeledger/web/words"
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

func (m *ComparisonPage) counts(q figures.ComparisonInput) []figures.SpanTable {
	var all []figures.SpanTable
	for _, table := range countTables {
		t := figures.SpanTable{Caption: table.caption, Kind: "Count", Heads: m.heads(q), Since: m.Since}
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

func countRow(q figures.ComparisonInput, measure, name string) figures.SpanRow {
	k := compare.MeasureAt(measure)
	share := compare.Measures[k].Share
	write, change := plainCount, words.OneDecimal
	if share {
		write, change = words.Percent, words.Points
	}
	if measure == "compounding" {
		write = words.OneDecimal
	}
	r := figures.SpanRow{Name: name}
	for i, c := range q.Sheet.Columns {
		cell := c.Measures[k]
		made := figures.SpanCell{Head: words.Capital(figures.SpanName(q, i)), Figure: "no round", None: true}
		if cell.Known {
			made.Figure, made.At, made.None = write(cell.Mean), q.At.BehindMeasure(i+1, measure), false
			made.Change = figures.NewChangeWords(cell.Change, change)
			if share {
				made.Behind = words.Plural(cell.Shots, "chance", "chances")
			}
			if cell.Mean == 0 {
				made.At = ""
			}
		} else if len(c.Rounds) > 0 {
			made.Figure = "no chance"
		}
		if cell.HasInterval() && cell.Interval.Low < cell.Interval.High {
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
		r.Since = figures.NewChangeWords(cell.Since, change)
	}
	return r
}

const shortPuttsName = "Holed from six feet and in"

// shortPuttRow is the share of putts of 6 ft and less that went in, beside what
// the golfer of the target holes of the very same putts.
func shortPuttRow(q figures.ComparisonInput) figures.SpanRow {
	r := figures.SpanRow{Name: shortPuttsName}
	for i, c := range q.Sheet.Columns {
		made := figures.SpanCell{Head: words.Capital(figures.SpanName(q, i)), Figure: "no putt", None: true}
		if s := c.Short; s.Tried > 0 {
			interval := s.Interval()
			made.None = false
			made.Figure, made.Interval = words.Percent(s.Share()), words.Percent(interval.Low)+" to "+words.Percent(interval.High)
			made.Behind = fmt.Sprintf("%d of %d; a %s golfer %s", s.Made, s.Tried, words.Plain(q.Target), words.Percent(s.By(q.Putter)))
			made.At = q.At.BehindMeasure(i+1, analysis.ShortPutts)
		}
		r.Cells = append(r.Cells, made)
	}
	return r
}

func plainCount(x float64) string { return fmt.Sprintf("%.1f", x) }

// roundChoices lists the rounds of the spans, and those left out, the latest
// first.
func roundChoices(q figures.ComparisonInput) []RoundChoice {
	var all []RoundChoice
	for _, r := range q.Rounds {
		score := ""
		if !r.Out {
			score = fmt.Sprintf("%.0f", r.Score)
		}
		all = append(all, RoundChoice{ID: fmt.Sprint(r.ID), Out: r.Out,
			Name: fmt.Sprintf("%s, %s", words.ShortDay(r.Day), words.Joined(r.Course, score))})
	}
	return all
}
