package months

import (
	"slices"
	"testing"

	"strokeledger/analysis/compare"
	"strokeledger/analysis/golf"
	"strokeledger/analysis/stat"
)

// The file has a line for each figure of each span, with unrounded numbers and
// nothing where nothing is known.
func TestMonthsTable(t *testing.T) {
	in := moved(2, [5]float64{-.25}, [5]compare.Word{compare.Leaning})
	for i := range in.Sheet.Columns {
		in.Sheet.Columns[i].Measures = make([]compare.Cell, len(compare.Measures))
		in.Sheet.Columns[i].Detail = 35
	}
	in.Sheet.Columns[0].Cells[0].N = 1 // too few for an interval
	june := &in.Sheet.Columns[1]
	june.Cells[0].Interval = stat.Interval{Low: .125, High: 2}
	june.PlaysTo[golf.Putting] = compare.PlaysTo{Rounds: 5, Level: compare.Level{Value: 85.5}, Low: compare.Level{Value: 80}, High: compare.Level{Value: 91}}
	table := MonthsTable(in)
	if want := 1 + 2*(5+len(compare.Measures)) + 1; len(table) != want {
		t.Fatalf("%d lines, want %d", len(table), want)
	}
	for i, line := range table {
		if len(line) != len(table[0]) {
			t.Errorf("line %d has %d columns, not %d", i+1, len(line), len(table[0]))
		}
	}
	for _, want := range [][]string{
		{"2026-05", "2026-05-01", "2026-05-31", "2", "35", "lost all", "strokes per 18 holes", "10", "4", "", "", "", ""},
		{"2026-06", "2026-06-01", "2026-06-30", "2", "35", "lost all", "strokes per 18 holes", "10", "3.75", "0.125", "2", "-0.25", "leaning"},
		{"2026-06", "2026-06-01", "2026-06-30", "2", "35", "fairways", "share", "0", "", "", "", "", ""},
		{"2026-06", "2026-06-01", "2026-06-30", "2", "35", "plays to putting", "level", "", "85.5", "80", "91", "", ""},
	} {
		if !slices.ContainsFunc(table, func(line []string) bool { return slices.Equal(line, want) }) {
			t.Errorf("no line %q", want)
		}
	}
}
