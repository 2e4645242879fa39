package analysis

import (
	"math"
	"testing"

	"strokeledger/analysis/golf"
)

// Every round of the span is there, and what it lost adds up: the bands to their part,
// the parts to everything; over the rounds it is what the report says.
func TestRoundsOfASpanAddUp(t *testing.T) {
	history := played(t, 84, 14)
	for i := range history {
		history[i].Round.Date = golf.Date{Year: 2026, Month: 5, Day: 1}.AddDays(i)
	}
	for i := range history[12].Round.Holes { // a round by its score alone
		h := &history[12].Round.Holes[i]
		h.ScoreOnly, h.Shots = 5, h.Shots[:1]
	}
	in := ReportInput{History: history, Span: golf.Span{From: history[4].Round.Date}, Target: 79, Boundary: golf.StandardBoundary}
	s, err := engine.SpanRounds(in)
	if err != nil || len(s.Rounds) != 10 {
		t.Fatalf("%d rounds, %v", len(s.Rounds), err)
	}
	report, err := engine.Report(in)
	if err != nil {
		t.Fatal(err)
	}
	mean := 0.
	for _, r := range s.Rounds {
		parts, bands := 0., map[golf.Category]float64{}
		for k, row := range s.Rows[1:] {
			if row.Whole() {
				parts += r.Lost(k + 1)
			} else {
				bands[row.Category] += r.Lost(k + 1)
			}
		}
		if math.Abs(parts-r.Lost(0)) > 1e-9 {
			t.Errorf("the parts of round %d come to %g, all to %g", r.ID, parts, r.Lost(0))
		}
		for k, row := range s.Rows[1:5] {
			if math.Abs(bands[row.Category]-r.Lost(k+1)) > 1e-9 {
				t.Errorf("round %d, %s: %g and %g", r.ID, row, bands[row.Category], r.Lost(k+1))
			}
		}
		mean += r.Lost(0) / 9
	}
	if got := report.Sheet.Columns[1].Cells[0].Mean; math.Abs(mean-got) > 1e-9 {
		t.Errorf("%g a round, the report says %g", mean, got)
	}
}
