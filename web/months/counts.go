package months

import (
	"fmt"

	"strokeledger/analysis"
	"strokeledger/analysis/compare"
	"strokeledger/web/figures"
	"strokeledger/web/words"
)

// countTables are the tables of counts: a caption, and for each row the name of
// its measure and its text.
var countTables = []struct {
	caption string
	rows    [][2]string
	folded  int // rows after the first that open with it
}{
	{"Doubles per 18 holes, by kind and by where they began", [][2]string{
		{"doubles", "Doubles"}, {"compound", "Compound"}, {"single", "Single error"}, {"separate", "Separate errors"}, {"leak", "Leak, no error"},
		{"root tee", "Began off the tee"}, {"root approach", "Began on the approach"}, {"root short game", "Began in the short game"}, {"root putting", "Began on the green"},
		{"compounding", "Compounding, strokes"}}, 8},
	{"Counts per 18 holes, and shares of chances", [][2]string{
		{"fairways", "Fairways hit"}, {"greens", "Greens hit"}, {"up and down", "Up and down"}, {"putts", "Putts"},
		{"three-putts", "Three-putts"}, {"penalties", "Penalty strokes"}}, 0},
}

const shortPuttsName = "Holed from six feet or less"

func (m *ComparisonPage) counts(in figures.ComparisonInput) []figures.SpanTable {
	var all []figures.SpanTable
	for _, table := range countTables {
		t := figures.SpanTable{Caption: table.caption, Kind: "Count", Heads: m.heads(in), Since: m.Since}
		for i, row := range table.rows {
			if made := countRow(in, row[0], row[1]); i > 0 && i <= table.folded {
				t.Rows[0].Bands = append(t.Rows[0].Bands, made)
			} else {
				t.Rows = append(t.Rows, made)
			}
		}
		all = append(all, t)
	}
	last := &all[len(all)-1]
	last.Rows = append(last.Rows, shortPuttRow(in))
	return all
}

// countRow is the row of one measure.
func countRow(in figures.ComparisonInput, measure, name string) figures.SpanRow {
	k := compare.MeasureAt(measure)
	w := countWriter{measure: measure, share: compare.Measures[k].Share, write: plainCount, change: words.OneDecimal}
	if w.share {
		w.write, w.change = words.Percent, words.Points
	}
	if measure == "compounding" {
		w.write = words.OneDecimal
	}
	r := figures.SpanRow{Name: name}
	for i := range in.Sheet.Columns {
		r.Cells = append(r.Cells, w.cell(in, i, k))
		r.Since = figures.NewChangeWords(in.Sheet.Columns[i].Measures[k].Since, w.change)
	}
	return r
}

// countWriter writes the figures of one measure.
type countWriter struct {
	measure string
	share   bool                 // a share of chances, not a count
	write   func(float64) string // writes its figure
	change  func(float64) string // writes its change
}

// cell is measure k in column i.
func (w countWriter) cell(in figures.ComparisonInput, i, k int) figures.SpanCell {
	c := in.Sheet.Columns[i]
	cell := c.Measures[k]
	made := figures.SpanCell{Head: words.Capital(figures.SpanName(in, i)), Figure: "no rounds", None: true}
	if cell.Known {
		made.Figure, made.At, made.None = w.write(cell.Mean), in.At.BehindMeasure(i+1, w.measure), false
		made.Change = figures.NewChangeWords(cell.Change, w.change)
		if w.share {
			made.Behind = words.Plural(cell.Shots, "chance", "chances")
		}
		if cell.Mean == 0 {
			made.At = ""
		}
	} else if len(c.Rounds) > 0 {
		made.Figure = "no chances"
	}
	if cell.HasInterval() && cell.Interval.Low < cell.Interval.High {
		low, high := cell.Interval.Low, cell.Interval.High
		if w.measure != "compounding" {
			low = max(low, 0)
		}
		if w.share {
			high = min(high, 1)
		}
		made.Interval = w.write(low) + " to " + w.write(high)
	}
	return made
}

// shortPuttRow is the share of putts of 6 ft or less that were holed, beside the
// share that a golfer at the target holes of the same putts.
func shortPuttRow(in figures.ComparisonInput) figures.SpanRow {
	r := figures.SpanRow{Name: shortPuttsName}
	for i, c := range in.Sheet.Columns {
		made := figures.SpanCell{Head: words.Capital(figures.SpanName(in, i)), Figure: "no putts", None: true}
		if s := c.Short; s.Tried > 0 {
			interval := s.Interval()
			made.None = false
			made.Figure, made.Interval = words.Percent(s.Share()), words.Percent(interval.Low)+" to "+words.Percent(interval.High)
			made.Behind = fmt.Sprintf("%d of %d; %s golfer %s", s.Made, s.Tried, words.A(in.Target), words.Percent(s.By(in.Putter)))
			made.At = in.At.BehindMeasure(i+1, analysis.ShortPutts)
		}
		r.Cells = append(r.Cells, made)
	}
	return r
}

func plainCount(x float64) string { return fmt.Sprintf("%.1f", x) }

// roundChoices lists the rounds of the spans, and those left out, the latest
// first.
func roundChoices(in figures.ComparisonInput) []RoundChoice {
	var all []RoundChoice
	for _, r := range in.Rounds {
		score := ""
		if !r.Out {
			score = fmt.Sprintf("%.0f", r.Score)
		}
		all = append(all, RoundChoice{ID: fmt.Sprint(r.ID), Out: r.Out,
			Name: fmt.Sprintf("%s, %s", words.ShortDay(r.Day), words.Joined(r.Course, score))})
	}
	return all
}
