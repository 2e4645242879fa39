package months

import (
	"fmt"
	"strings"

	"strokeledger/analysis"
	"strokeledger/web/figures"
	"strokeledger/web/words"
)

// CountFold is a table of counts that opens under its heading.
type CountFold struct {
	Name  string // of the table
	Said  string // the figures of its first count
	Table figures.FigureTable
}

const shortPuttsName = "Holed from six feet or less"

// counts are the tables of counts.
func counts(in figures.ComparisonInput) []CountFold {
	var all []CountFold
	written := make([][]float64, len(in.Sheet.Columns))
	for i := range written {
		written[i] = figures.PrintedMeasures(in.Sheet, i)
	}
	for _, group := range figures.CountGroups {
		f := CountFold{Name: group.Name, Table: figures.NewFigureTable(in, "Counts for 18 holes, and shares of chances, with a 95% interval", "Count")}
		for _, count := range group.Counts {
			row := countRow(in, count, written)
			figures.MarkCount(&row, count.Measure)
			f.Table.Rows = append(f.Table.Rows, row)
		}
		f.Said = saidOf(f.Table.Rows[0])
		all = append(all, f)
	}
	last := &all[len(all)-1].Table
	last.Rows = append(last.Rows, shortPuttRow(in))
	return all
}

// saidOf reads out the figures of a row: doubles 2.0, 3.6, 2.6.
func saidOf(r figures.FigureRow) string {
	var each []string
	for _, c := range r.Cells {
		each = append(each, c.Figure)
	}
	return strings.ToLower(r.Name) + " " + strings.Join(each, ", ")
}

// countRow is the row of one measure, with its figures as they are written by
// column.
func countRow(in figures.ComparisonInput, count figures.Count, written [][]float64) figures.FigureRow {
	w, r, p := figures.WriterOf(count.Measure), figures.FigureRow{Name: count.Name, Detail: count.Detail}, figures.NewPair(in)
	for i := range in.Sheet.Columns {
		r.Cells = append(r.Cells, countCell(in, i, count, written[i][w.K]))
	}
	if p.Known {
		if change := in.Sheet.Columns[p.Now].Measures[w.K].Change; change.Known {
			r.Moved, r.Word = w.Change(written[p.Before][w.K], written[p.Now][w.K]), figures.Sure(change.Word)
		}
	}
	return r
}

// countCell is a measure in column i, with its figure as it is written.
func countCell(in figures.ComparisonInput, i int, count figures.Count, written float64) figures.FigureCell {
	w, c := figures.WriterOf(count.Measure), in.Sheet.Columns[i]
	cell := c.Measures[w.K]
	switch {
	case len(c.Rounds) == 0:
		return figures.FigureCell{Figure: "no rounds", None: true}
	case !cell.Known:
		return figures.FigureCell{Figure: "no chances", None: true}
	}
	made := figures.FigureCell{Figure: w.Write(written), Voucher: figures.CountVoucher(in, i, count, written).InRow(in, i)}
	interval, chances := "", ""
	if w.Share {
		chances = words.Plural(cell.Shots, "chance", "chances")
	}
	if cell.HasInterval() && cell.Interval.Low < cell.Interval.High {
		low, high := cell.Interval.Low, cell.Interval.High
		if count.Measure != "compounding" {
			low = max(low, 0)
		}
		if w.Share {
			high = min(high, 1)
		}
		interval = w.Write(low) + " to " + w.Write(high)
	}
	made.Note = words.Joined(interval, chances)
	return made
}

// shortPuttRow is the share of putts of 6 ft or less that were holed, beside the
// share that a golfer at the target holes of the same putts.
func shortPuttRow(in figures.ComparisonInput) figures.FigureRow {
	r := figures.FigureRow{Name: shortPuttsName}
	for i, c := range in.Sheet.Columns {
		made := figures.FigureCell{Figure: "no putts", None: true}
		if s := c.Short; s.Tried > 0 {
			made = figures.FigureCell{Figure: words.Percent(s.Share()), Voucher: figures.Voucher{Name: fmt.Sprintf("%s, %s", shortPuttsName, figures.SpanName(in, i)), At: in.At.BehindMeasure(i+1, analysis.ShortPutts), What: "the putts",
				Working: fmt.Sprintf("%d of %d putts in %s: %s", s.Made, s.Tried, words.Plural(len(c.Rounds), "round", "rounds"), words.Percent(s.Share()))}.InRow(in, i),
				Note: fmt.Sprintf("%d of %d; %s golfer %s", s.Made, s.Tried, words.A(in.Target), words.Percent(s.By(in.Putter)))}
		}
		r.Cells = append(r.Cells, made)
	}
	return r
}

// roundChoices lists the rounds of the spans, and those left out, the latest
// first.
func roundChoices(in figures.ComparisonInput) []RoundChoice {
	var all []RoundChoice
	for _, r := range in.Rounds {
		score := ""
		if !r.Out {
			score = fmt.Sprintf("%.0f", r.Score) + words.OnHoles(r.Holes)
		}
		all = append(all, RoundChoice{ID: fmt.Sprint(r.ID), Out: r.Out,
			Name: fmt.Sprintf("%s, %s", words.ShortDay(r.Day), words.Joined(r.Course, score))})
	}
	return all
}
