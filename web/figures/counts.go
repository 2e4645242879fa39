package figures

import (
	"fmt"

	"strokeledger/analysis/compare"
	"strokeledger/web/words"
)

// CountGroup is the counts that one table shows.
type CountGroup struct {
	Name   string // of the table
	Counts []Count
}

// Count is a measure of rounds with its name.
type Count struct {
	Measure string // as compare.Measures names it
	Name    string
	Detail  bool // it splits up the count above it
}

// CountGroups lists the tables of counts.
var CountGroups = []CountGroup{
	{"Doubles", []Count{
		{"doubles", "Doubles", false}, {"compound", "Compound", true}, {"single", "Single error", true}, {"separate", "Separate errors", true}, {"leak", "Leak, no error", true},
		{"root tee", "Began off the tee", true}, {"root approach", "Began on the approach", true}, {"root short game", "Began in the short game", true}, {"root putting", "Began on the green", true},
		{"compounding", "Compounding, strokes", false}}},
	{"Fairways, greens, putts, penalties", []Count{
		{"fairways", "Fairways hit", false}, {"greens", "Greens hit", false}, {"up and down", "Up and down", false}, {"putts", "Putts", false},
		{"three-putts", "Three-putts", false}, {"penalties", "Penalty strokes", false}}},
}

// CountWriter writes the figures of one measure.
type CountWriter struct {
	K     int                  // place in compare.Measures
	Share bool                 // a share of chances, not a count
	Write func(float64) string // writes its figure
	Moved func(float64) string // writes its change
}

// WriterOf is the writer of a measure.
func WriterOf(measure string) CountWriter {
	w := CountWriter{K: compare.MeasureAt(measure), Write: func(x float64) string { return fmt.Sprintf("%.1f", x) }, Moved: words.OneDecimal}
	if w.Share = compare.Measures[w.K].Share; w.Share {
		w.Write, w.Moved = words.Percent, words.Points
	}
	if measure == "compounding" {
		w.Write = words.OneDecimal
	}
	return w
}

// Change writes how a figure moved: what is printed now, less what was printed
// before.
func (w CountWriter) Change(before, now float64) string { return w.Moved(now - before) }
