package analysis

import (
	"time"

	"strokeledger/analysis/compare"
	"strokeledger/analysis/golf"
)

// usualReport is the span of a report unless another is chosen: as many rounds
// as a player's form is taken over.
var usualReport = golf.Span{Last: compare.FormRounds}

// beforeAll stands for the span before one that has none: no round is in it.
var beforeAll = golf.Month(1, time.January)

// ReportInput is what a report on a player is made of.
type ReportInput struct {
	History  []golf.Played // all rounds, in the order of their days
	Span     golf.Span     // the zero value for the last rounds of the player's form
	Target   float64       // the player's
	Boundary golf.Distance // the player's
}

// Report answers "how did this player play in a span?", beside the span of as
// long before.
type Report struct {
	Months // of the span before and the span
	Span   golf.Span
}

// Report works out a report. Targets outside golf.MinTarget to golf.MaxTarget
// are an error.
func (e *Engine) Report(in ReportInput) (Report, error) {
	span := in.Span
	if span == (golf.Span{}) {
		span = usualReport
	}
	before, ok := span.Earlier()
	if !ok {
		before = beforeAll
	}
	m, err := e.Months(MonthsInput{History: in.History, Choice: golf.Comparison{Spans: []golf.Span{before, span}}, Target: in.Target, Boundary: in.Boundary})
	return Report{m, span}, err
}

// Now is the span of the report, Before the one before it.
func (r *Report) Now() *compare.Column { return &r.Sheet.Columns[1] }

// Before is the span before that of the report.
func (r *Report) Before() *compare.Column { return &r.Sheet.Columns[0] }
