package months

import (
	"strconv"

	"strokeledger/analysis/compare"
	"strokeledger/analysis/golf"
	"strokeledger/web/figures"
	"strokeledger/web/words"
)

// MonthsTable is a comparison as the lines of a CSV file: one line for each span
// and figure, with unrounded numbers, empty where nothing is known.
func MonthsTable(in figures.ComparisonInput) [][]string {
	table := [][]string{{"span", "from", "to", "rounds", "holes", "figure", "unit", "shots", "value", "low_95", "high_95", "change", "change_is"}}
	for _, c := range in.Sheet.Columns {
		head := []string{c.Span.String(), c.Span.From.String(), c.Span.To.String(), strconv.Itoa(len(c.Rounds)), exact(c.Detail)}
		write := func(figure, unit string, cell compare.Cell) {
			row := append(append([]string{}, head...), figure, unit, strconv.Itoa(cell.Shots), "", "", "", "", words.Certainty(cell.Change.Word))
			if cell.Known {
				row[8] = exact(cell.Mean)
			}
			if cell.HasInterval() {
				row[9], row[10] = exact(cell.Interval.Low), exact(cell.Interval.High)
			}
			if cell.Change.Known {
				row[11] = exact(cell.Change.Mean)
			}
			table = append(table, row)
		}
		for k, row := range in.Sheet.Rows {
			write("lost "+row.String(), "strokes per 18 holes", c.Cells[k])
		}
		for k, m := range compare.Measures {
			unit := "per 18 holes"
			if m.Share {
				unit = "share"
			}
			write(m.Name, unit, c.Measures[k])
		}
		for _, part := range golf.Categories {
			if p := c.PlaysTo[part]; p.Known() {
				table = append(table, append(append([]string{}, head...), "plays to "+part.String(), "level", "",
					exact(p.Level.Value), exact(p.Low.Value), exact(p.High.Value), "", ""))
			}
		}
	}
	return table
}

func exact(x float64) string { return strconv.FormatFloat(x, 'f', -1, 64) }
