package analysis

import (
	"math"
	"slices"
	"testing"

	"strokeledger/analysis/account"
	"strokeledger/analysis/compare"
	"strokeledger/analysis/golf"
)

// An overview says of the last ten rounds what the months of these rounds say: its
// leaks are the dearest bands of that column, and its doubles are the doubles of the
// column's rounds, each counted once wherever it is counted.
func TestOverviewAgreesWithTheMonths(t *testing.T) {
	e, history := engine, played(t, 92, 24)
	lesson := history[16].Round.Date
	o, err := e.Overview(OverviewInput{History: history, Target: 79, Boundary: golf.StandardBoundary, Lesson: lesson,
		Practice: []Practised{{From: history[20].Round.Date, Row: "putting"}, {From: history[0].Round.Date, Row: "putting"}, {From: lesson, Row: "nonsense"}}})
	if err != nil {
		t.Fatal(err)
	}
	spans := []golf.Span{{Last: 10, Before: true}, {Last: 10}}
	m, err := e.Months(MonthsInput{History: history, Choice: golf.Comparison{Spans: spans}, Target: 79, Boundary: golf.StandardBoundary})
	if err != nil {
		t.Fatal(err)
	}
	last := m.Sheet.Columns[1]
	dearest := math.Inf(1)
	for _, l := range o.Leaks {
		k := slices.Index(m.Sheet.Rows, l.Row)
		if l.Mean != last.Cells[k].Mean || l.Mean > dearest || l.Mean <= 0 {
			t.Errorf("%v loses %g, in the months %g, after %g", l.Row, l.Mean, last.Cells[k].Mean, dearest)
		}
		dearest = l.Mean
	}
	for k, r := range m.Sheet.Rows {
		if r.Band != (account.Band{}) && last.Cells[k].Mean > dearest && !slices.ContainsFunc(o.Leaks, func(l Leak) bool { return l.Row == r }) {
			t.Errorf("%v is dearer than what is named", r)
		}
	}
	doubles, kinds, began, holes := 0, 0, 0, 0
	for _, r := range last.Rounds {
		doubles += len(r.Account.Doubles)
	}
	for _, n := range o.Doubles.Kinds {
		kinds += n
	}
	for _, n := range o.Doubles.Began {
		began += n
	}
	for _, n := range o.Doubles.Holes {
		holes += n
	}
	if d := o.Doubles; d.Rounds != 10 || doubles == 0 || d.All != doubles || kinds != doubles || began != doubles || holes != doubles {
		t.Errorf("%d doubles: %+v", doubles, d)
	}
	if b := o.Lesson; !b.Known() || len(b.Before.Rounds) != 10 || len(b.Since.Rounds) != 8 || !b.Since.Cells[0].Change.Known || b.Since.Cells[0].Change.Mean != b.Since.Cells[0].Mean-b.Before.Cells[0].Mean {
		t.Errorf("%+v", b)
	}
	if p := o.Practice; !p[0].Known() || o.Sheet.Rows[p[0].Row] != (compare.Row{Category: golf.Putting}) || len(p[0].Since.Rounds) != 4 || p[1].Known() || p[2].Known() {
		t.Errorf("%+v", p)
	}
}

// Without a round there is nothing, and without a lesson no comparison.
func TestEmptyOverview(t *testing.T) {
	o, err := engine.Overview(OverviewInput{Target: 79, Boundary: golf.StandardBoundary})
	if err != nil || len(o.Leaks) != 0 || o.Lesson.Known() || o.Doubles.All != 0 {
		t.Errorf("%+v, %v", o, err)
	}
}

// How sure it is that a figure is not 0, against Student's t of a table: with ten
// values 2.262 standard errors are 95 %, 1.383 are 80 % (any table of the t
// distribution; from memory).
func TestApart(t *testing.T) {
	for errors, want := range map[float64]compare.Word{2.3: compare.Clear, 2.2: compare.Leaning, 1.4: compare.Leaning, 1.36: compare.Chance, -2.3: compare.Clear} {
		c := compare.Cell{Figure: compare.Figure{Known: true}}
		c.N, c.SD, c.Mean = 10, math.Sqrt(10), errors
		c.Interval = c.Around(2.262)
		if got := c.Apart(); got != want {
			t.Errorf("%g errors from 0: %d, want %d", errors, got, want)
		}
	}
	few := compare.Cell{Figure: compare.Figure{Known: true}}
	if few.N, few.Mean = 2, 9; few.Apart() != 0 {
		t.Error("two rounds have a word")
	}
}
