package figures

import (
	"strokeledger/analysis/compare"
	"strokeledger/web/chart"
	"strokeledger/web/components"
	"strokeledger/web/words"
)

// SpanTable is rows with a cell for each span.
type SpanTable struct {
	Caption string
	Kind    string // what a row is
	Heads   []SpanHead
	Since   string
	Axis    components.Axis
	Rows    []SpanRow
	Foot    []SpanRow
}

// SpanHead heads the column of a span.
type SpanHead struct{ Name, Rounds string }

// SpanRow is one row, with its bands.
type SpanRow struct {
	Name  string
	At    string // address of whom it is about, empty for nobody
	Cells []SpanCell
	Since ChangeWords
	Bands []SpanRow
}

// SpanCell is a figure of one span.
type SpanCell struct {
	Head     string // the span, where cells stand under each other
	Figure   string
	None     bool   // the figure says that there is none
	At       string // address of what is behind it; empty for nothing
	Interval string
	Behind   string // how many shots
	Change   ChangeWords
	Bar      chart.Bar
	Whisker  chart.Whisker
	Reach    Reach
}

// ChangeWords is a change and how sure it is.
type ChangeWords struct{ Figure, Word, Class string }

// NewChangeWords words a change, its amount written by write; empty while the
// change is not known.
func NewChangeWords(c compare.Change, write func(float64) string) ChangeWords {
	if !c.Known {
		return ChangeWords{}
	}
	return ChangeWords{write(c.Mean), words.Certainty(c.Word), [...]string{"", "clear", "leaning", "chance"}[c.Word]}
}

// ColumnTicks is how many figures the axis of a narrow column has.
const ColumnTicks = 3

// WhiskerRoom is how far beyond the bars the scale goes for their whiskers, in
// strokes; an interval of two rounds would make every bar a speck.
const WhiskerRoom = 4

// SpanScale is the one scale of every column.
func SpanScale(s compare.Sheet) chart.Scale {
	var values, ends []float64
	for _, c := range s.Columns {
		for k, cell := range c.Cells {
			if k == 0 || !cell.Known {
				continue // the sum stands without a bar
			}
			values = append(values, cell.Mean)
			if cell.HasInterval() {
				ends = append(ends, cell.Interval.Low, cell.Interval.High)
			}
		}
	}
	low, high := 0.0, 0.0
	for _, v := range values {
		low, high = min(low, v), max(high, v)
	}
	for _, e := range ends {
		values = append(values, max(low-WhiskerRoom, min(high+WhiskerRoom, e)))
	}
	return chart.NewScale(values...).Fewer(ColumnTicks)
}

// EmptyBar is a bar that shows nothing but the axis.
var EmptyBar = chart.Bar{Empty: true}
