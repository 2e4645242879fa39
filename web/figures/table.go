package figures

import (
	"fmt"
	"slices"
	"strings"

	"github.com/a-h/templ"

	"strokeledger/analysis/compare"
	"strokeledger/web/chart"
	"strokeledger/web/components"
)

// SpanTable is a table with a column for each span.
type SpanTable struct {
	Caption string          // what the figures are, over the table
	Kind    string          // heads the column of names: Part, Count, Pupil
	Heads   []SpanHead      // one a span
	Axis    components.Axis // over the bars of every column; zero for a table without bars
	Rows    []SpanRow       // in the order printed
	Foot    []SpanRow       // sums; none when there is nothing to sum
}

// SpanHead heads the column of a span.
type SpanHead struct {
	Name   string // of the span
	Rounds string // how many it holds
}

// SpanRow is one row of a table of spans.
type SpanRow struct {
	Name  string     // heads the row: a part of the game, a count or a pupil
	At    string     // address of the pupil that the row is about; empty for other rows
	Cells []SpanCell // one a span
}

// SpanCell is the figure of one row in one span.
type SpanCell struct {
	Head     string        // names the span where cells stand under each other
	Figure   string        // the figure, or why there is none
	None     bool          // there is no figure
	At       string        // address of the shots or holes behind it; empty for none
	Interval string        // 95%; empty when not known
	Behind   string        // how many shots or chances it is made of; empty when not counted
	Bar      chart.Bar     // strokes lost, on the axis of the table; empty for none
	Whisker  chart.Whisker // the 95% interval of the bar
}

// atFoot is the number of the row at the foot, which is the mean of all others.
const atFoot = -1

// mark says that the figures of a row add up to its last, and that the row at the
// foot is the mean of the others.
func (r SpanRow) mark(number, column int) templ.Attributes {
	all, mean := fmt.Sprintf("row-%d", number), fmt.Sprintf("column-%d", column)
	a := templ.Attributes{"data-part": mean}
	if number == atFoot {
		a = templ.Attributes{"data-mean": mean, "data-part": ""}
	}
	if column == len(r.Cells)-1 {
		a["data-sum"] = all
	} else {
		a["data-part"] = strings.TrimSpace(fmt.Sprint(a["data-part"], " ", all))
	}
	return a
}

// ChangeWords is a change from an earlier span and how sure it is; empty when the
// change is not known.
type ChangeWords struct {
	Figure string // signed
	Word   string // clear or leaning; empty when it could be chance
}

// NewChangeWords puts a change into words; write turns its amount into text.
func NewChangeWords(c compare.Change, write func(float64) string) ChangeWords {
	if !c.Known {
		return ChangeWords{}
	}
	return ChangeWords{write(c.Mean), Sure(c.Word)}
}

// ColumnTicks is how many figures the axis of a column has at most.
const ColumnTicks = 3

// WhiskerRoom is how many strokes the scale reaches beyond the bars, so that the
// wide interval of two rounds does not make every bar a speck.
const WhiskerRoom = 4

// SpanScale is the scale that all columns share.
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
	low, high := slices.Min(append(values, 0)), slices.Max(append(values, 0))
	for _, e := range ends {
		values = append(values, max(low-WhiskerRoom, min(high+WhiskerRoom, e)))
	}
	return chart.NewScale(values...).Fewer(ColumnTicks)
}

// EmptyBar is a bar that shows nothing but the axis.
var EmptyBar = chart.Bar{Empty: true}
